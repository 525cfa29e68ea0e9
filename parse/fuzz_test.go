package parse

import (
	"flag"
	"math"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"barwise/colony"
)

// seedNotes adds every note of the corpus, and some that tear at the edges.
func seedNotes(f *testing.F) {
	paths, err := filepath.Glob("../testdata/notes/*.gold")
	if err != nil || len(paths) == 0 {
		f.Fatalf("no notes to begin with: %v", err)
	}
	for _, path := range paths {
		for _, c := range readGold(f, path) {
			f.Add(c.note)
		}
	}
	for _, s := range []string{"", " ", "\n\n\n", "\ufeffbar four eggs", "bar\r\nfour\r\neggs", "bar \x00 four \x1b[31m eggs", "bar four ’s eggs’",
		"bar \xff\xfe four", "b4-b2", "bars 9 to 1", "bar 99999999999999999999 eggs", "bar 0 eggs", "½½½", "1/0", "31/31/9999", "29 february",
		"bars 1 to 100000 eggs", "e\u0301ggs on bar four", "– – –", "bar four 1.2.3.4.5", "no no no no", "sorry", "scratch that", "same again", "bar four eggs no sorry",
		"bar and and saw but yesterday and , fed two", "Yesterday no sorry Sunday", "yesterday time does not need no sorry it's Sunday", "0.1A Cups",
		"Hive,6th\nr,u", "bar\u00a04  eggs\r\nshe\u2019s here \u200b", "bar  brood   stores\r\n4    eggs    \u201chon\u00ady"} {
		f.Add(s)
	}
}

// FuzzTokens holds that tokens lie inside the text, in order, on the edges of
// its letters, and do not overlap.
func FuzzTokens(f *testing.F) {
	seedNotes(f)
	l := sharedParser().lexicon
	f.Fuzz(func(t *testing.T, text string) {
		s := splitter{slips: l.slips, words: l.words}
		end := int32(0)
		for i, tok := range s.tokens(nil, text, 0, blank) {
			switch {
			case tok.start < end || tok.end <= tok.start || int(tok.end) > len(text):
				t.Fatalf("token %d at [%d,%d] behind %d of %d bytes", i, tok.start, tok.end, end, len(text))
			case !onEdge(text, int(tok.start)) || !onEdge(text, int(tok.end)):
				t.Fatalf("token %d at [%d,%d] cuts a letter of %q", i, tok.start, tok.end, text)
			case int(tok.id) >= len(l.words.words) || tok.id < 0:
				t.Fatalf("token %d is word %d of %d", i, tok.id, len(l.words.words))
			}
			end = tok.end
		}
	})
}

// onEdge reports whether a letter begins at i or the text ends there; a broken
// byte is a letter of its own.
func onEdge(text string, i int) bool {
	if i == len(text) || utf8.RuneStart(text[i]) {
		return true
	}
	for from := i - 1; from >= 0 && from > i-utf8.UTFMax; from-- {
		if utf8.RuneStart(text[from]) {
			_, size := utf8.DecodeRuneInString(text[from:])
			return from+size <= i
		}
	}
	return true
}

// FuzzParse holds what every reading promises, whatever the text.
func FuzzParse(f *testing.F) {
	seedNotes(f)
	p := sharedParser()
	f.Fuzz(func(t *testing.T, text string) { checkReading(t, p, text) })
}

// checkReading reads the text and holds the promises of a reading.
func checkReading(t *testing.T, p *Parser, text string) {
	t.Helper()
	note := &colony.Note{Text: text, Given: may14, Hash: "n"}
	got := p.Parse(note)
	if len(got) == 0 {
		t.Fatal("no inspection")
	}
	for i := range got {
		checkInspection(t, text, &got[i])
	}
	if again := p.Parse(note); !reflect.DeepEqual(got, again) {
		t.Fatalf("read otherwise the second time:\n%+v\n%+v", got, again)
	}
	fresh := parserOf(p.lexicon, func(*lexicon) {})
	if first := fresh.Parse(note); !reflect.DeepEqual(got, first) {
		t.Fatalf("a reader that has read before reads otherwise:\n%+v\n%+v", got, first)
	}
	for _, r := range p.Explain(note) {
		if r.Inspection < 0 || r.Inspection >= len(got) {
			t.Fatalf("the reason for %s is of inspection %d of %d", r.Path, r.Inspection, len(got))
		}
	}
}

// phrasebook is every way of saying of the rules, with numbers, days, bars and
// the marks between them.
func phrasebook() []string {
	book := strings.Split("bar four|bars two to six|b7|hive three|the blue hive|next one|five|23|half|a third|two litres|ten days ago|on Sunday|30 May|no|sorry|and|but|.|.|,|,|?|:|\n|\n\n|(|)", "|")
	f, err := loadRules()
	if err != nil {
		panic(err)
	}
	for _, r := range f.Rule {
		for _, say := range r.Say {
			all := spellings(say)
			book = append(book, all[0], all[len(all)-1])
		}
	}
	return book
}

// compose strings phrases together, two bytes a phrase.
func compose(book []string, picks []byte) string {
	var b strings.Builder
	for ; len(picks) > 1; picks = picks[2:] {
		b.WriteString(book[(int(picks[0])<<8|int(picks[1]))%len(book)])
		b.WriteByte(' ')
	}
	return b.String()
}

// FuzzPhrases holds the promises for notes made of the words that the rules
// know, which letters changed at random seldom hit.
func FuzzPhrases(f *testing.F) {
	p := sharedParser()
	book := phrasebook()
	r := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		f.Add(randomBytes(r, 2+r.IntN(60)))
	}
	f.Fuzz(func(t *testing.T, picks []byte) {
		if len(picks) > 400 {
			return
		}
		text := compose(book, picks)
		checkReading(t, p, text)
	})
}

func randomBytes(r *rand.Rand, n int) []byte {
	out := make([]byte, n)
	for i := range out {
		out[i] = byte(r.Uint32())
	}
	return out
}

// TestWordSalad is a short run of FuzzPhrases; a failing note is named by its seed.
func TestWordSalad(t *testing.T) {
	p := sharedParser()
	book := phrasebook()
	for seed := range uint64(*salad) {
		r := rand.New(rand.NewPCG(seed, 7))
		text := compose(book, randomBytes(r, 2+r.IntN(80)))
		t.Run(strconv.FormatUint(seed, 10), func(t *testing.T) { checkReading(t, p, text) })
	}
}

var salad = flag.Int("salad", 300, "how many random notes TestWordSalad reads")

func checkInspection(t *testing.T, text string, ins *colony.Inspection) {
	t.Helper()
	for _, l := range colony.Leaves(ins) {
		field, err := colony.FieldOf(l.Path)
		if err != nil {
			t.Fatalf("leaf %s: %v", l.Path, err)
		}
		if err := field.Check(l.Value); err != nil {
			t.Fatalf("leaf %s: %v", l.Path, err)
		}
		if v, err := strconv.ParseFloat(l.Value, 64); err == nil && field.Kind == colony.Number && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Fatalf("leaf %s is %s", l.Path, l.Value)
		}
	}
	for _, g := range ins.Evidence {
		if _, ok := colony.Get(ins, g.Path); !ok {
			t.Fatalf("evidence for %s, which is not there", g.Path)
		}
		for _, s := range g.Spans {
			if s[0] < 0 || s[1] <= s[0] || s[1] > len(text) || !onEdge(text, s[0]) || !onEdge(text, s[1]) {
				t.Fatalf("evidence for %s at %v of %d bytes", g.Path, s, len(text))
			}
		}
	}
	for _, c := range ins.Check {
		if c.Path == "" || c.Why == "" {
			t.Fatalf("a flag without path or reason: %+v", c)
		}
	}
	for _, r := range ins.Remarks {
		if !strings.Contains(text, r) {
			t.Fatalf("the remark %q is not in the speaker's words", r)
		}
	}
}

// unrelated is said in a kitchen.
const unrelated = "The kettle is on."

// FuzzUnrelated holds that a sentence of something else, on a line of its own,
// changes no leaf of the rest.
func FuzzUnrelated(f *testing.F) {
	seedNotes(f)
	p := sharedParser()
	f.Fuzz(func(t *testing.T, text string) {
		if strings.TrimSpace(text) == "" {
			return
		}
		plain := leafLists(p, text)
		if added := leafLists(p, text+"\n"+unrelated); !slices.EqualFunc(plain, added, slices.Equal) {
			t.Fatalf("with an unrelated line behind:\n%v\n%v", plain, added)
		}
	})
}

func leafLists(p *Parser, text string) [][]colony.Leaf {
	var out [][]colony.Leaf
	for _, ins := range p.Parse(&colony.Note{Text: text, Given: may14}) {
		out = append(out, colony.Leaves(&ins))
	}
	return out
}

// TestUnrelatedLines puts the sentence before, behind and as a paragraph into
// every note of the corpus.
func TestUnrelatedLines(t *testing.T) {
	p := sharedParser()
	paths, err := filepath.Glob("../testdata/notes/*.gold")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		for _, c := range readGold(t, path) {
			plain := leafLists(p, c.note)
			for where, text := range map[string]string{
				"behind": c.note + unrelated + "\n", "behind a blank line": c.note + "\n" + unrelated + "\n", "before": unrelated + "\n" + c.note,
			} {
				if got := leafLists(p, text); !slices.EqualFunc(plain, got, slices.Equal) {
					t.Errorf("%s %s: an unrelated line %s changes the reading:\n%v\n%v\n%s", filepath.Base(path), c.id, where, plain, got, c.note)
				}
			}
		}
	}
}
