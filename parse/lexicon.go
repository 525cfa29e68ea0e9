package parse

import (
	"fmt"
	"slices"
	"sort"
	"strings"
)

// lexicon is everything that the rule files say, ready for use. It does not
// change after it is made.
type lexicon struct {
	slips         *slips
	words         *vocabulary
	rules         []rule
	kindOf        []kind // of each rule
	graph         *graph
	numbers       *numbers
	dates         *dates
	measures      *measures
	mishearings   []suspects // by first word
	byWords       wordSet    // by, since: a day may follow
	datedDeeds    wordSet    // fed, treated: a day may follow, but no share
	hiveWords     wordSet    // hive, h: the name of one follows
	numberedWords wordSet    // that "no. 4" follows
	barNouns      wordSet    // bar, comb: numbers behind it are those of bars
	longestKey    int        // of those that begin a table's heading row, in bytes

	denial, seen, queenCups *sense // of the rules of these names

	hiveID, colonyID, hivesID, coloniesID, hID, hvID, theID, forID wordID
}

// suspects are the mishearings that begin with one word.
type suspects struct {
	heard   []*heard // the longest first
	alone   bool     // one is that word alone
	seconds uint64   // a bit for the low six bits of each second word
}

// mayBegin reports whether one of them can begin at token i: at most tokens it is
// plain that none does.
func (s *suspects) mayBegin(toks []token, i int) bool {
	return s.alone || i+1 < len(toks) && s.seconds>>(toks[i+1].id&63)&1 != 0
}

func (s *suspects) add(h *heard) {
	s.heard = append(s.heard, h)
	if len(h.words) == 1 {
		s.alone = true
	} else {
		s.seconds |= 1 << (h.words[1] & 63)
	}
}

// heard is a mishearing, compiled.
type heard struct {
	rule          *mishearing
	words         []wordID
	said          []wordID
	before, after *context
	not, unless   *context
	number        bool // a number was said
	dotted        bool // a full stop must follow
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

func newLexicon(f ruleFile) (*lexicon, error) {
	l := &lexicon{words: newVocabulary(), rules: f.Rule}
	l.words.addContractions(f.Contraction)
	l.graph = newGraph(l.words)
	for i := range l.rules {
		l.kindOf = append(l.kindOf, l.rules[i].Kind)
		for _, say := range l.rules[i].Say {
			if err := l.graph.add(say, int16(i)); err != nil {
				return nil, fmt.Errorf("rules/%s: rule %q: %w", l.rules[i].file, l.rules[i].ID, err)
			}
		}
	}
	l.denial, l.seen, l.queenCups = l.senseNamed("denial"), l.senseNamed("seen"), l.senseNamed("queen-cups")
	numberKinds := map[string]numberKind{"unit": unitWord, "tens": tensWord, "scale": scaleWord, "ordinal": ordinalWord,
		"part": partWord, "group": groupWord, "about": aboutWord, "and": andWord, "article": articleWord,
		"percent": percentWord, "of": ofWord, "or": orWord, "to": toWord, "point": pointWord, "between": betweenWord, "odd": oddWord}
	l.numbers = &numbers{}
	if err := eachPart(f.Number, func(kindName, word string, value float64) bool {
		k, ok := numberKinds[kindName]
		id := l.words.add(word)
		l.numbers.kinds = grown(l.numbers.kinds, id)
		l.numbers.kinds[id] = numberWord{k, value}
		return ok
	}); err != nil {
		return nil, err
	}
	dateKinds := map[string]dateKind{"weekday": weekdayWord, "month": monthWord, "span": spanWord, "short span": shortSpanWord, "ago": agoWord, "in": inWord,
		"next": nextWord, "last": lastWord, "this": thisWord, "on": onWord, "from": fromWord, "today": todayWord,
		"yesterday": yesterdayWord, "tomorrow": tomorrowWord, "before": beforeWord, "after": afterWord,
		"weekend": weekendWord, "end": endWord, "day part": dayPartWord, "the": theWord, "now": nowWord, "time": timeWord}
	l.dates = &dates{numbers: l.numbers, againID: l.words.add("again"), slashID: l.words.add("/"),
		orders: l.words.addAll("todo", "do", "need", "plan", "plans", "next", "remember", "must", "should", "add", "feed", "check", "recheck", "put", "remove", "move", "treat", "inspect", "harvest", "look", "give", "take", "split", "unite")}
	if err := eachPart(f.Date, func(kindName, word string, value float64) bool {
		k, ok := dateKinds[kindName]
		id := l.words.add(word)
		l.dates.kinds = grown(l.dates.kinds, id)
		l.dates.kinds[id] = dateWord{k, int(value)}
		return ok
	}); err != nil {
		return nil, err
	}
	l.measures = &measures{numbers: l.numbers, moreID: l.words.add("more")}
	for word, unit := range unitNames {
		id := l.words.add(word)
		l.measures.units = grown(l.measures.units, id)
		l.measures.units[id] = unit
	}
	l.numbers.soID = l.words.add("so")
	l.numbers.inID = l.words.add("in")
	l.numbers.dimension = l.words.addAll("wide", "deep", "long", "by", "across", "x", "high", "tall", "down", "of")
	l.graph.loose = l.words.addAll("actually", "really", "just", "still", "quite", "very", "already", "nicely", "clearly", "right",
		"completely", "now", "only", "pretty", "rather", "definitely", "all")
	l.numbers.combWords = l.words.addAll("bar", "frame", "comb")
	l.barNouns = l.words.addAll("bar", "bars", "comb", "combs", "frame", "frames")
	l.numbers.barWords = l.words.addAll("bar", "bars", "b", "frame", "frames", "comb", "combs", "hive", "h")
	l.numbers.months = func(t token) bool { return l.dates.of(t.id).kind == monthWord }
	l.hiveID, l.colonyID, l.hID, l.theID, l.forID = l.words.add("hive"), l.words.add("colony"), l.words.add("h"), l.words.add("the"), l.words.add("for")
	l.hiveWords = l.words.addAll("hive", "h", "hv")
	l.numberedWords = l.words.addAll("hive", "hives", "h", "hv", "beehive", "colony", "colonies", "nuc", "stock", "box", "bar", "bars", "comb", "combs", "frame", "frames", "queen", "apiary", "site", "stand")
	l.hvID, l.hivesID, l.coloniesID = l.words.add("hv"), l.words.add("hives"), l.words.add("colonies")
	l.datedDeeds = l.words.addAll("fed", "treated", "split", "swarmed", "requeened", "united", "inspected", "visited", "checked", "hived", "harvested")
	l.byWords = l.words.addAll("by", "since", "until", "till")
	lists, err := newLists(f.List)
	if err != nil {
		return nil, err
	}
	mishearings := f.Mishearing
	for _, a := range f.Abbreviation {
		mishearings = append(mishearings, a.mishearings()...)
		for short := range a.Words {
			lists[short] |= 1 << shortForms
		}
	}
	if err := l.addMishearings(mishearings); err != nil {
		return nil, err
	}
	for word, in := range lists {
		if in.has(tableKeys) {
			l.longestKey = max(l.longestKey, len(word))
		}
	}
	l.words.addLists(lists)
	l.slips = newSlips(l.words, lists)
	l.markWords()
	l.words.addPhrases(lists, &splitter{slips: l.slips, words: l.words})
	l.words.pack()
	l.forgetPhrases()
	return l, nil
}

// senseNamed is the sense of the rule of a name; without one it is senseless.
func (l *lexicon) senseNamed(id string) *sense {
	for i := range l.rules {
		if r := &l.rules[i]; r.ID == id {
			return senseOf(int16(i), r.Kind)
		}
	}
	return senseless
}

// inList reports whether a word, in lower case, stands in a list.
func (l *lexicon) inList(of list, word string) bool { return l.words.find(word).lists.has(of) }

// forgetPhrases drops what the rules need no more once they are compiled: the
// tens of thousands of phrases would be passed by the collector of garbage again
// and again.
func (l *lexicon) forgetPhrases() {
	for i := range l.rules {
		r := &l.rules[i]
		r.Say, r.Yes, r.No, r.Why = nil, nil, nil, ""
	}
}

// markWords marks the words that a number or a date begins with and those that go
// on with one, so that most words are not asked; those that may be misheard; and
// the adverbs that stand anywhere.
func (l *lexicon) markWords() {
	l.words.marks = make([]mark, len(l.words.words))
	for id := idUnknown + 1; id < firstWordID; id++ {
		l.words.mark(id, numeral|following|dating)
	}
	for id := range l.graph.behindSlots() {
		l.words.mark(id, following)
	}
	for id := firstWordID; int(id) < len(l.words.words); id++ {
		t := token{id: id}
		number, date := l.numbers.of(t.id).kind, l.dates.of(t.id)
		if number.begins() || date.stands() {
			l.words.mark(id, numeral)
		} else if date.leads() {
			l.words.mark(id, leading)
		}
		if number != notNumber || date.kind != notDate {
			l.words.mark(id, dating)
		}
		if number != notNumber || date.kind != notDate || l.measures.unit([]token{t}, 0) != "" || id == l.measures.moreID || l.graph.loose.has(id) {
			l.words.mark(id, following)
		}
		if int(id) < len(l.mishearings) && l.mishearings[id].heard != nil {
			l.words.mark(id, doubtful)
		}
		if l.graph.loose.has(id) {
			l.words.mark(id, loose)
		}
	}
}

// eachPart hands every word of the number or date grammar to add, in a fixed
// order; add reports whether it knows the kind.
func eachPart(parts []part, add func(kindName, word string, value float64) bool) error {
	for _, p := range parts {
		words := make([]string, 0, len(p.Words))
		for w := range p.Words {
			words = append(words, w)
		}
		sort.Strings(words)
		for _, w := range words {
			if !add(p.Kind, w, p.Words[w]) {
				return fmt.Errorf("rules/numbers.toml: unknown kind %q", p.Kind)
			}
		}
	}
	return nil
}

func grown[T any](list []T, id wordID) []T {
	for int(id) >= len(list) {
		var zero T
		list = append(list, zero)
	}
	return list
}

func (l *lexicon) addMishearings(list []mishearing) error {
	for i := range list {
		m := &list[i]
		for _, h := range m.Heard {
			c := &heard{rule: m, dotted: m.Dotted, before: l.context(m.Before), after: l.context(m.After), not: l.context(m.Not), unless: l.context(m.Unless)}
			for w := range strings.FieldsSeq(h) {
				c.words = l.graph.asRead(c.words, w)
			}
			for w := range strings.FieldsSeq(m.Said) {
				c.said = l.graph.asRead(c.said, w)
			}
			if len(c.words) == 0 || len(c.said) == 0 {
				return fmt.Errorf("own word %q for %q: both need a word", h, m.Said)
			}
			c.number = l.numbers.of(c.said[0]).kind == unitWord
			first := c.words[0]
			l.mishearings = grown(l.mishearings, first)
			l.mishearings[first].add(c)
		}
	}
	for _, s := range l.mishearings {
		hs := s.heard
		sort.SliceStable(hs, func(a, b int) bool { return len(hs[a].words) > len(hs[b].words) })
	}
	return nil
}

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

// mend returns the tokens with what was meant, flagged, in place of misheard
// words. Most lines have none, and come back as they are; others are appended to
// room.
func (l *lexicon) mend(toks []token, room *[]token) []token {
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
		h := l.misheardAt(toks, i, before)
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
	case k == articleWord:
		return true
	case k == unitWord || toks[i-2].id == idNumber: // not of "bar one bar to"
		return i == 2 || toks[i-2].pause > none || !l.numbers.barWords.has(toks[i-3].id)
	}
	return false
}

// misheardAt is what was misheard at token i, or nil; before is the token before
// it as it was mended, nil at the start of the line.
func (l *lexicon) misheardAt(toks []token, i int, before *token) *heard {
candidates:
	for _, h := range l.mishearings[toks[i].id].heard {
		n := len(h.words)
		if i+n > len(toks) {
			continue
		}
		for k := 1; k < n; k++ { // the first is the token's own
			if toks[i+k].id != h.words[k] || toks[i+k].pause != none {
				continue candidates
			}
		}
		if h.dotted && !toks[i+n-1].has(respelt) {
			continue
		}
		if h.before != nil && !(h.before.comma && toks[i].pause == comma) && !(h.before.bar && l.numbersBars(toks, i)) && !h.before.fits(l, before, h.before.start, toks[i].pause >= colon) {
			continue
		}
		var next *token
		if i+n < len(toks) {
			next = &toks[i+n]
		}
		if h.after != nil && !(h.after.comma && next != nil && next.pause == comma) && !h.after.fits(l, next, h.after.end, next != nil && next.pause >= colon) {
			continue
		}
		if h.number && l.numbers.of(toks[i].id).kind == toWord && l.countsBar(toks, i) {
			continue
		}
		if h.unless != nil && before != nil && h.unless.fits(l, before, false, false) {
			continue
		}
		if h.not != nil && next != nil && h.not.fits(l, next, false, false) {
			continue
		}
		return h
	}
	return nil
}
