package parse

import (
	"fmt"
	"slices"
	"sort"
	"strings"
)

// suspects are the mishearings that begin with one word.
type suspects struct {
	heard   []suspect // the longest first
	alone   bool      // one is that word alone
	seconds uint64    // a bit for the low six bits of each second word
}

// suspect is a mishearing with what tells most of them off at once: its second word, none
// where it has no second word, and a bit for the low six bits of each word that may stand
// before it and behind it where no pause parts them.
type suspect struct {
	second         wordID
	before, behind uint64
	*heard
}

// anyWord are the bits of all words.
const anyWord = ^uint64(0)

// bitOf is the bit of a word beside a suspect, and those of all words where a pause parts the two
// or the word is not the one that stands in the text.
func bitOf(t *token, parted bool) uint64 {
	if parted || t.end == t.start {
		return anyWord
	}
	return 1 << (t.id & 63)
}

// mayBegin reports whether one of them can begin at token i: at most tokens it is
// plain that none does.
func (s *suspects) mayBegin(toks []token, i int) bool {
	return s.alone || i+1 < len(toks) && s.seconds>>(toks[i+1].id&63)&1 != 0
}

func (s *suspects) add(h *heard, l *lexicon) {
	of := suspect{idUnknown, anyWord, anyWord, h}
	if !h.rule.Series {
		of.before = h.before.bits(l)
	}
	if len(h.words) == 1 {
		s.alone = true
		if !h.rule.Series {
			of.behind = h.after.bits(l)
		}
	} else {
		of.second = h.words[1]
		s.seconds |= 1 << (of.second & 63)
	}
	s.heard = append(s.heard, of)
}

// heard is a mishearing, compiled.
type heard struct {
	rule          *mishearing
	words         []wordID
	said          []wordID
	before, after *context
	then          *context // of the word behind the next
	not, unless   *context
	unended       *context // of a series
	number        bool     // a number was said
	dotted        bool     // a full stop must follow
}

// context is a set of words of which one must stand next to a mishearing.
type context struct {
	words      []wordID // few, so that going through them is quickest
	number     bool
	share      bool // a fraction in digits
	bar        bool // a bar's number right behind its letter: b6
	start, end bool
	comma      bool // a comma stands on that side
}

// addMishearings compiles the mishearings, of each first word the longest first.
func (l *lexicon) addMishearings(list []mishearing) error {
	l.sounds = map[wordID]float64{}
	for i := range list {
		m := &list[i]
		for _, h := range m.Heard {
			c := &heard{rule: m, dotted: m.Dotted, before: l.context(m.Before), after: l.context(m.After), then: l.context(m.Then), not: l.context(m.Not), unless: l.context(m.Unless), unended: l.context(m.Unended)}
			for w := range strings.FieldsSeq(h) {
				c.words = l.graph.asRead(c.words, w)
			}
			for w := range strings.FieldsSeq(m.Said) {
				c.said = l.graph.asRead(c.said, w)
			}
			if len(c.words) == 0 || len(c.said) == 0 {
				return fmt.Errorf("own word %q for %q: both need a word", h, m.Said)
			}
			first := c.words[0]
			if n := l.numbers.of(c.said[0]); n.kind == unitWord {
				c.number = true
				if m.Series {
					l.sounds[first] = n.value
				}
			}
			l.mishearings = grown(l.mishearings, first)
			l.mishearings[first].add(c, l)
		}
	}
	for _, s := range l.mishearings {
		hs := s.heard
		sort.SliceStable(hs, func(a, b int) bool { return len(hs[a].words) > len(hs[b].words) })
	}
	return nil
}

// context compiles the words of which one must stand beside a mishearing; nil asks for
// none.
func (l *lexicon) context(words []string) *context {
	if len(words) == 0 {
		return nil
	}
	c := &context{}
	for _, w := range words {
		switch w {
		case "<n>":
			c.number = true
		case "<share>":
			c.share = true
		case "<bar>":
			c.bar = true
		case "<comma>":
			c.comma = true
		case "<start>":
			c.start = true
		case "<end>":
			c.end = true
		default:
			c.words = l.graph.asRead(c.words, w)
		}
	}
	return c
}

// bits are those of the words that satisfy the context; of all words where it asks for none or
// for more than the word beside it.
func (c *context) bits(l *lexicon) (bits uint64) {
	if c == nil || c.bar {
		return anyWord
	}
	bits = 1 << idUnknown // never none, since an edge or a comma may do
	for _, id := range c.words {
		bits |= 1 << (id & 63)
	}
	if c.share {
		bits |= 1<<idFraction | 1<<idVulgar
	}
	if c.number {
		bits |= 1<<idNumber | l.numbers.counting
	}
	return bits
}

// fits reports whether a token satisfies the context; nil is the edge of the line,
// which does so where edge says that the context asks for it.
func (c *context) fits(l *lexicon, t *token, edge, pausedOff bool) bool {
	if pausedOff && (c.start || c.end) {
		return true
	}
	if t == nil {
		return edge
	}
	if slices.Contains(c.words, t.id) {
		return true
	}
	if c.bar && t.id == idNumber && t.has(glued) || c.share && (t.id == idFraction || t.id == idVulgar) {
		return true
	}
	if !c.number {
		return false
	}
	k := l.numbers.of(t.id).kind
	return t.id == idNumber || k == unitWord || k == tensWord
}

// numbersBars reports whether the tokens before token i number bars: "bar 4",
// "bars 1-3 and 5".
func (l *lexicon) numbersBars(toks []token, i int) bool {
	k := i - 1
	for k > 0 && toks[k].pause <= comma && (toks[k].id == idNumber || toks[k].id == idDash || l.numbers.is(toks, k, andWord)) {
		k--
	}
	return k >= 0 && k < i-1 && l.barNouns.has(toks[k].id)
}

// mend returns the tokens of a text with what was meant, flagged, in place of misheard
// words. Most lines have none, and come back as they are; others are appended to
// room.
func (l *lexicon) mend(text string, toks []token, room *[]token) []token {
	start, out := len(*room), *room
	from := 0 // of the tokens that are not yet handed on
	for i := 0; i < len(toks); i++ {
		if t := &toks[i]; !t.has(doubtful) || !l.mishearings[t.id].mayBegin(toks, i) {
			continue // as most words
		}
		var before *token
		if i > from {
			before = &toks[i-1]
		} else if len(out) > start {
			before = &out[len(out)-1]
		}
		h := l.misheardAt(text, toks, i, before)
		if h == nil {
			continue
		}
		out = append(out, toks[from:i]...)
		n := len(h.words)
		f := misheard
		if h.rule.Sure || toks[i+n-1].has(respelt) {
			f = respelt
		}
		for k, id := range h.said {
			t := token{id: id, start: toks[i].start, end: toks[i+n-1].end, flags: f | cased | l.words.marks[id] | toks[i].flags&(capital|bullet|glued) | toks[i+n-1].flags&(asked|coloned)}
			if k == 0 {
				t.pause = toks[i].pause
			}
			out = append(out, t)
		}
		from = i + n
		i = from - 1
	}
	if from == 0 {
		return toks
	}
	*room = append(out, toks[from:]...)
	return (*room)[start:]
}

// countsBar reports whether "a bar" or "one bar" stands before token i, which then
// is no number: "gave one bar to hive three".
func (l *lexicon) countsBar(toks []token, i int) bool {
	if i < 2 || !l.numbers.combWords.has(toks[i-1].id) || toks[i-1].pause > none {
		return false
	}
	switch k := l.numbers.of(toks[i-2].id).kind; {
	case k == articleWord || k == ordinalWord: // "from the third bar to the seventh"
		return true
	case k == unitWord || toks[i-2].id == idNumber: // not of "bar one bar to"
		return i == 2 || toks[i-2].pause > none || !l.numbers.barWords.has(toks[i-3].id)
	}
	return false
}

// pointsAtBar reports whether "that bar" or its like stands before token i, which then is no
// number: "drone brood on that bar too", "gave this bar to Rowan".
func (l *lexicon) pointsAtBar(toks []token, i int) bool {
	if i < 2 || toks[i-1].pause > none || toks[i].pause > none || !l.numbers.barWords.has(toks[i-1].id) {
		return false
	}
	switch l.words.words[toks[i-2].id] {
	case "that", "this":
		return i == 2 || toks[i-2].pause > none || l.words.words[toks[i-3].id] != "after" // "after that bar to"
	case "same", "each", "every", "which":
		return true
	}
	return false
}

// misheardAt is what was misheard at token i, or nil; before is the token before
// it as it was mended, nil at the start of the line.
func (l *lexicon) misheardAt(text string, toks []token, i int, before *token) *heard {
	second, ahead, behind := idUnknown, anyWord, anyWord
	if toks[i].pause >= colon && toks[i].lists&anyAnswer != 0 && before != nil && before.has(coloned|asked) && before.end > before.start {
		return nil // "Nectar: n"
	}
	if i+1 < len(toks) {
		second, behind = toks[i+1].id, bitOf(&toks[i+1], toks[i+1].pause > none)
	}
	if before != nil {
		ahead = bitOf(before, toks[i].pause > none)
	}
	heard := l.mishearings[toks[i].id].heard
	for k := range heard {
		h := &heard[k]
		if h.before&ahead == 0 || h.behind&behind == 0 || h.second != idUnknown && h.second != second {
			continue // as most
		}
		if h.spelt(toks, i) && l.fitsAround(h.heard, text, toks, i, before) {
			return h.heard
		}
	}
	return nil
}

// spelt reports whether the words from token i on are those that a mishearing is of.
func (h *heard) spelt(toks []token, i int) bool {
	n := len(h.words)
	if i+n > len(toks) {
		return false
	}
	for k := 1; k < n; k++ { // the first is the token's own
		if toks[i+k].id != h.words[k] || toks[i+k].pause != none {
			return false
		}
	}
	if h.dotted && !toks[i+n-1].has(respelt) {
		return false
	}
	return !(h.number && toks[i].pause >= colon && toks[i].has(capital)) // "Hive: Tin" is a name
}

// fitsAround reports whether a mishearing fits the words around those of it, which begin at token
// i.
func (l *lexicon) fitsAround(h *heard, text string, toks []token, i int, before *token) bool {
	if h.rule.Series {
		return l.fitsSeries(h, text, toks, i, before)
	}
	n := len(h.words)
	if before != nil && before.end == before.start && toks[i].has(capital) {
		before = nil // the heading of a column
	}
	if h.before != nil && !(h.before.comma && toks[i].pause == comma) && !(h.before.bar && l.numbersBars(toks, i)) && !h.before.fits(l, before, h.before.start, toks[i].pause >= colon) {
		return false
	}
	var next *token
	if i+n < len(toks) {
		next = &toks[i+n]
	}
	if next != nil && next.end == next.start && next.pause >= colon {
		next = nil // the heading of a column
	}
	if h.after != nil && !h.after.end && !h.after.comma && next != nil && (next.pause == comma || next.pause > comma && !h.rule.Sure) && !toks[i+n-1].has(coloned) {
		return false // "bar 12 is half drawn, brood on five bars" is no drone brood
	}
	if h.after != nil && !(h.after.comma && next != nil && next.pause == comma) && !h.after.fits(l, next, h.after.end, next != nil && next.pause >= colon) {
		return false
	}
	if h.then != nil && (i+n+1 >= len(toks) || toks[i+n].pause > none || !h.then.fits(l, &toks[i+n+1], false, false)) {
		return false
	}
	if h.number && (l.numbers.of(toks[i].id).kind == toWord && l.countsBar(toks, i) || l.pointsAtBar(toks, i)) {
		return false
	}
	if h.unless != nil && before != nil && h.unless.fits(l, before, false, false) {
		return false
	}
	return h.not == nil || next == nil || !h.not.fits(l, next, false, false)
}
