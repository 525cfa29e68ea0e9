package parse

import (
	"slices"
	"strings"
)

// pattern gives how brood is laid, "solid", "patchy", to the brood that it stands with,
// before or behind.
func (s *scan) pattern(i int) {
	it := s.at(i)
	value := s.r.value(it, kPattern)
	if s.patternOfColony(i) {
		s.layingPattern(i, value)
		return
	}
	if s.patternOfNext(i) || s.patternAhead(i, value) {
		return
	}
	if i > 0 && s.at(i-1).any(kNo, kNot) && it.lists.has(plainPraise) {
		return // "not good"
	}
	last := s.lastFound(i)
	if last == nil && len(s.found) == 0 && s.r.spokeOf.pattern == s.r.sentenceNo {
		s.layingPattern(i, value) // "the brood pattern is not good, it is patchy"
		return
	}
	if last == nil && len(s.found) == 0 {
		s.patternOfBefore(i, value)
		return
	}
	if last == nil || !last.brood() || i > 0 && s.at(i-1).is(kLeaf) && it.pause == none { // "drones all over the place"
		return
	}
	if s.patternOn(i, last, value) {
		return
	}
	plain := it.lists.has(plainPraise)
	if plain && i > 0 && s.at(i-1).text == "as" {
		return // "as good as a signature"
	}
	if plain && !s.onlyBetween(last.at, i, kAdv, kBe, kBars, kOn, kSide, kFull, kNum, kAnd, kPattern, kArt) {
		return
	}
	if next := s.at(i + 1); plain && next != nil && next.pause == none && next.any4(kWord, kBar, kComb, kContent) {
		return
	}
	s.spreadSame(last, func(f *finding) {
		if f.brood() && f.pattern == "" {
			f.pattern = value
			f.items = append(f.items, it)
		}
	})
}

// layingPattern writes the pattern at item i as that of the colony.
func (s *scan) layingPattern(i int, value string) {
	s.r.leaf("brood_pattern", value, s.r.rule(s.at(i), kPattern).ID, "", s.c.doubt, s.at(i))
}

// patternOfColony reports whether the pattern at item i is how the queen lays, wherever: "a good
// laying pattern", "the queen is laying in a good solid pattern".
func (s *scan) patternOfColony(i int) bool {
	it, laying := s.at(i), s.at(i-1)
	if s.headed {
		return false
	}
	if strings.Contains(it.text, "laying pattern") || strings.Contains(it.text, "brood pattern") && s.ofColony(i) {
		return true
	}
	return laying != nil && it.pause == none && laying.isWord3("laying", "lays", "laid") && s.layerSubject(i)
}

// patternOfNext reports whether the word behind item i takes it up: "solid laying pattern" is read
// with its noun, and "super spotty" and "a good half" are degrees.
func (s *scan) patternOfNext(i int) bool {
	next := s.at(i + 1)
	return next != nil && next.pause == none && (next.is(kBrood) || s.at(i).lists.has(plainPraise) && (next.is(kPattern) || next.is(kNum) && next.n.share))
}

// patternAhead keeps the pattern at item i for the brood behind it, "patchy sealed brood", if it is
// not that of the brood right before.
func (s *scan) patternAhead(i int, value string) bool {
	it := s.at(i)
	to := s.leadsTo(i, kOf, kArt, kAdv, kPattern, kNum, kStage, kAmount, kFull)
	if to == nil || !to.is(kContent) || !s.broodItem(to) || i > 0 && s.at(i-1).isWord4("looks", "look", "looked", "looking") && len(s.found) > 0 {
		return false
	}
	last := s.lastFound(i)
	if last != nil && last.pattern == "" && last.brood() && it.pause == none && !s.adjacentAnd(last.at, i) && last.at == i-1 {
		return false
	}
	s.before.pattern, s.before.at = value, i
	s.before.items = append(s.before.items, it)
	return true
}

// ofColony reports whether the brood pattern at item i is told by itself: not of brood of one
// stage or on bars, nor of what follows.
func (s *scan) ofColony(i int) bool {
	if next := s.at(i + 1); next != nil && next.pause == none && next.any4(kOf, kOn, kContent, kBars) {
		return false
	}
	last := s.lastFound(i)
	if last == nil || !last.brood() {
		return true
	}
	stages := 0
	for _, f := range s.found {
		if f.brood() && f.present {
			stages++
		}
	}
	return !last.located && len(last.bars) == 0 && stages > 1
}

// patternOn: "capped brood on 4 to 6 (spotty on 6)" tells of one of the bars.
func (s *scan) patternOn(i int, last *finding, value string) bool {
	on, bars, r := s.at(i+1), s.at(i+2), s.r
	if on == nil || bars == nil || !on.is(kOn) || !bars.is(kBars) || on.pause > none || len(r.bars) < 2 {
		return false
	}
	for _, b := range bars.bars {
		if !slices.Contains(r.bars, b) || len(bars.bars) == len(r.bars) {
			return false
		}
	}
	bars.used, bars.taken = true, true
	for _, b := range bars.bars {
		r.cur.put(r.barPath(b, r.paths.under(last.what, "pattern")), value, r.why(r.rule(s.at(i), kPattern).ID, "", s.at(i)))
	}
	return true
}

// patternOfBefore: "but it looks spotty to me" speaks of the brood named in
// the clause before.
func (s *scan) patternOfBefore(i int, value string) {
	it, r := s.at(i), s.r
	f := r.prevBrood
	if f == nil || s.headed && len(r.bars) > 0 && !slices.Contains(f.bars, r.bars[0]) || !r.sameSentence && !s.leansBack() || it.lists.has(plainPraise) {
		return
	}
	for k := range s.c.items {
		if s.at(k).any6(kQueen, kBees, kTemper, kStores, kCell, kFixture) {
			return
		}
	}
	bars := f.bars
	k := i - 1
	for k > 0 && s.at(k).pause == none && s.at(k).any6(kAdv, kBe, kArt, kWord, kThere, kAmount) {
		k--
	}
	if k >= 0 && it.pause == none && s.at(k).is(kBars) && s.headed && len(r.bars) > 0 { // "b3 to b6 sealed brood, b4 spotty" tells of b4 alone
		bars = r.bars
	}
	if len(bars) == len(f.bars) {
		f.pattern = value // for "same again"
	}
	for _, b := range bars {
		if !slices.Contains(f.bars, b) {
			continue
		}
		r.cur.put(r.barPath(b, r.paths.under(f.what, "pattern")), value, r.why(r.rule(it, kPattern).ID, "", it))
	}
}

func (s *scan) adjacentAnd(from, to int) bool {
	for k := from + 1; k <= to; k++ {
		if s.at(k).is(kAnd) {
			return true
		}
	}
	return false
}

func (s *scan) broodItem(it *item) bool {
	v := s.r.value(it, kContent)
	return strings.Contains(v, "brood") || v == "eggs"
}

// spreadBack applies a modifier to the last finding, and to those joined to
// it by "and".
func (s *scan) spreadBack(last *finding, apply func(*finding)) {
	for _, f := range s.found {
		if f == last || f.list == last.list && f.class == last.class && len(f.bars) == len(last.bars) && f.at != last.at && s.bareList(f, last) || f.at == last.at {
			apply(f)
		}
	}
}

// spreadSame applies a modifier to the findings of the same words ("E+L").
func (s *scan) spreadSame(last *finding, apply func(*finding)) {
	for _, f := range s.found {
		if f == last || f.at == last.at && f.class == last.class {
			apply(f)
		}
	}
}

// bareList reports whether only "and" and commas stand between two findings.
func (s *scan) bareList(a, b *finding) bool {
	if b.at >= len(s.c.items) {
		return false // carried over from another clause
	}
	if !s.onlyBetween(a.at, b.at, kAnd, kContent) {
		return false
	}
	for k := a.at + 1; k <= b.at; k++ {
		if s.at(k).pause > none {
			return false
		}
	}
	return a.side == "" && a.place == "" && a.pattern == "" && !a.hasCover && a.amount == ""
}

// layerSubject reports whether the queen is told right before the verb before item i, and no
// brood or bars behind her.
func (s *scan) layerSubject(i int) bool {
	for k := i - 2; k >= 0 && k >= i-5; k-- {
		if s.at(k).any(kQueen, kShe) {
			rest := s.c.items[k+1:]
			return !hasKind(rest, kBars) && !hasKind(rest, kContent)
		}
	}
	return false
}

// broodPattern reads the laying pattern of the colony as a whole, or of the
// bars in hand where brood was just spoken of there.
func (s *scan) broodPattern(i int) {
	it, r := s.at(i), s.r
	for _, k := range []int{i + 1, i + 2, i + 3, i + 4, i - 1, i - 2} {
		p := s.at(k)
		if p == nil || p.used || !p.is(kPattern) && !(k > i && p.isWord4("poor", "bad", "terrible", "dreadful")) {
			continue
		}
		if k > i && s.at(k-1).any(kNo, kNot) && p.lists.has(plainPraise) {
			continue // "the brood pattern is not good, it is patchy"
		}
		if k > i && !s.onlyBetween(i, k, kBe, kAdv, kWhole, kOn, kThere, kMaybe, kPron, kWill, kWord, kNo, kPattern) {
			continue
		}
		if last := s.lastFound(i); last != nil && s.patternIsOf(last, i) {
			last.pattern = r.patternOf(p)
			last.items = append(last.items, it, p)
			it.used, p.used = true, true
			return
		}
		r.leaf("brood_pattern", r.patternOf(p), r.rule(it, kBrood).ID, "", s.c.doubt, it, p)
		return
	}
	r.spokeOf.pattern = r.sentenceNo
}

// patternIsOf reports whether the pattern at item i is that of brood found on bars:
// those that head the clause, or whose pattern hangs on them, "the pattern being
// tight".
func (s *scan) patternIsOf(f *finding, i int) bool {
	it, next := s.at(i), s.at(i+1)
	if !f.brood() || f.pattern != "" || s.whole || it.pause > comma || strings.Contains(it.text, "verall") || strings.Contains(it.text, "laying") {
		return false
	}
	return s.headed || len(f.bars) > 0 && next != nil && next.text == "being"
}

// patternOf is the pattern that a word means behind "the brood pattern is": a poor one
// is patchy.
func (r *reader) patternOf(it *item) string {
	if it.is(kPattern) {
		return r.value(it, kPattern)
	}
	return "patchy"
}
