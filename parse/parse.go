package parse

import (
	"maps"
	"slices"
	"sync"
	"time"

	"barwise/colony"
)

// version of the rules; it rises when a note may be read otherwise than before.
const version = "21"

// Version names the version of the rules, which is kept with each reading.
func Version() string { return version }

// Parser reads notes. It is safe for concurrent use.
type Parser struct {
	lexicon *lexicon
	readers sync.Pool
}

// New makes a parser from the built-in rules and the keeper's own words. An
// error means that the rules or the own words are broken, never that a person
// spoke oddly.
func New(own colony.OwnWords) (*Parser, error) {
	f, err := loadRules()
	if err != nil {
		return nil, err
	}
	addOwnWords(&f, own)
	l, err := newLexicon(f)
	if err != nil {
		return nil, err
	}
	l.known = newKnownHives(own.Hives)
	p := &Parser{lexicon: l}
	p.readers.New = func() any { return newReader(l) }
	return p, nil
}

// Parse reads a note into the inspections it tells of, in the order spoken; a
// note with words in it gives at least one.
func (p *Parser) Parse(note *colony.Note) []colony.Inspection {
	r := p.readers.Get().(*reader)
	defer p.readers.Put(r)
	r.start(note)
	r.read()
	out := make([]colony.Inspection, len(r.all))
	for i, b := range r.all {
		b.inspection(&out[i], note, i+1)
		r.note.ground(&out[i])
	}
	return out
}

// Reason tells for one leaf which words it rests on, which rule took them and
// which cue judged them. What several rules say together has the name of its
// subject for a rule: incoming, mites, fixture, queen-colour.
type Reason struct {
	Inspection int // index among the note's inspections
	Path       string
	Value      string
	Spans      []colony.Span
	Words      string
	Rule       string
	Cue        string
}

// Explain gives the reason for every leaf of the note, in the order in which
// they were read.
func (p *Parser) Explain(note *colony.Note) []Reason {
	r := p.readers.Get().(*reader)
	defer p.readers.Put(r)
	r.start(note)
	r.read()
	var out []Reason
	for i, b := range r.all {
		for _, e := range b.entries {
			out = append(out, Reason{i, e.text, e.value, r.note.spans(slices.Clone(e.spans)), r.quoted(e.spans), e.rule, e.cue})
		}
	}
	return out
}

func newReader(l *lexicon) *reader {
	r := &reader{lexicon: l, memory: memory{byHive: map[string]*builder{}}}
	r.paths = newPaths()
	r.front.words.in = make([]bool, len(l.words.words))
	r.split.words, r.split.slips, r.split.hives, r.split.numbered = l.words, l.slips, l.hiveWords, l.numberedWords
	r.split.numbers, r.split.strokes, r.split.beforeWhich = l.numbers, l.strokes, l.wordsOf[beforeWhich]
	r.split.links, r.split.behindSo, r.split.soID = l.linkWords, l.behindSo, l.numbers.soID
	r.lex = lexer{lexicon: l, matcher: newMatcher(l.graph, l.kindOf), ref: r}
	return r
}

// start readies the reader for a note.
func (r *reader) start(note *colony.Note) {
	r.clear()
	r.note = r.tidy(note.Text)
	r.unshout(&r.note)
	r.text, r.lex.text = r.note.text, r.note.text
	r.parted = separatorsIn(&r.note, r.parted[:0])
	r.cur = r.builder()
	r.cur.at = note.Given
	r.cur.atFrom = "given"
	if note.Given.IsZero() {
		r.cur.atFrom = ""
	}
	r.all = append(r.all, r.cur)
	r.today = colony.DateOf(note.Given)
	if note.Given.IsZero() {
		r.today = colony.DateOf(note.Taken)
	}
	r.opening = true
	r.step, r.outset = 1, 1
	if note.Hive != "" {
		r.cur.hive = note.Hive
		r.byHive[note.Hive] = r.cur
		r.named = true
	}
	r.pauses = r.silences(note.Words)
	r.barLines.numbered = numberedLines(r.text)
}

// silence is the gap between timed words, in seconds, that counts as weak
// punctuation (common practice in speech segmentation; no source).
const silence = 0.6

func (r *reader) silences(words []colony.TimedWord) []int32 {
	var out []int32
	for i := 1; i < len(words); i++ {
		if words[i].From-words[i-1].To >= silence {
			out = append(out, int32(r.note.inText(words[i].Span[0])))
		}
	}
	return out
}

// atDay keeps the clock of t on another day; a clock that nobody gave is noon.
func atDay(t time.Time, d colony.Date) time.Time {
	if t.IsZero() {
		return time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC)
	}
	h, m, s := t.Clock()
	return time.Date(d.Year, d.Month, d.Day, h, m, s, 0, t.Location())
}

func (r *reader) quoted(spans []colony.Span) string {
	out := ""
	for i, s := range spans {
		if i > 0 {
			out += " … "
		}
		out += r.inNote(s[0], s[1])
	}
	return out
}

// addOwnWords turns the keeper's own words into rules.
func addOwnWords(f *ruleFile, own colony.OwnWords) {
	for _, heard := range slices.Sorted(maps.Keys(own.Aliases)) {
		said := own.Aliases[heard]
		f.Mishearing = append(f.Mishearing, mishearing{Heard: []string{heard}, Said: said, Why: "the keeper's own alias"})
	}
	if len(own.Plants) > 0 {
		f.Rule = append(f.Rule, rule{ID: "own-plants", Kind: kPlant, Value: "=", Say: own.Plants, file: "own words"})
	}
}
