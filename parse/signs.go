package parse

import (
	"slices"
	"strings"
)

// Signs of pests, disease and trouble, and how many of each.

// sign reads a sign of pest, disease or trouble, with its count.
func (s *scan) sign(i int) {
	it, r := s.at(i), s.r
	rule := r.rule(it, kSign)
	if it.from > 0 && it.pause == none && s.r.words.words[s.r.mended[it.from-1].id] == "like" {
		return // "running like ants"
	}
	if i > 1 && it.pause == none && s.at(i-1).text == "about" && s.r.isWord(s.at(i-2), s.r.wordsOf[tellingOf]...) {
		return // "what he had to say about laying workers"
	}
	if next := s.at(i + 1); next != nil && next.pause == none && r.isWord(next, r.wordsOf[behindSigns]...) && !s.denies(i) {
		return // "had its foulbrood check" tells of no finding
	}
	if s.lookedFor(i) && !s.denies(i) && !hasKind(s.c.items[i:], kNum) {
		return
	}
	if rule.Form == "eggs" {
		s.severalEggs(i)
		return
	}
	denied := s.denies(i) || i > 0 && s.at(i-1).text == "nothing"
	if denied && s.denier == nil {
		s.denier = s.at(i - 1)
	}
	if !s.joins(i) {
		s.list++
	}
	f := s.r.newFinding(&finding{class: ofSign, what: rule.Value, present: !denied, at: i, items: s.r.these(it), rule: rule.ID, list: s.list})
	if denied {
		f.cue = s.noCue
		f.items = append(f.items, s.denier)
	} else {
		s.signCount(f, i)
	}
	if s.c.doubt != "" {
		f.doubts = append(f.doubts, "hedged: "+s.c.doubt)
	}
	s.found = append(s.found, f)
	if f.present && s.labels(i) {
		r.labelled = f
	}
	s.num = nil
	s.before = modifiers{}
}

// ofItself reports whether a finding is a sign that was counted, or is one of the hive, and
// so goes with none behind a comma: "ants about, sacbrood on bar six".
func (f *finding) ofItself() bool {
	return f.class == ofSign && (f.hasCount || hiveSigns[f.what])
}

// lookedFor reports whether a sign is one of those that were looked for, which tells of no
// finding: "checked for wasps and mice".
func (s *scan) lookedFor(i int) bool {
	k := i - 1
	for k > 0 && s.at(k).any3(kSign, kAnd, kOr) {
		k--
	}
	return k > 0 && s.at(k).text == "for" && s.r.isWord(s.at(k-1), s.r.wordsOf[lookingFor]...)
}

// signCount gives a sign the number that counts it, from before or behind.
func (s *scan) signCount(f *finding, i int) {
	it := s.at(i)
	if offComb[f.what] && f.what != "mice" {
		return // nobody counts beards
	}
	if next := s.at(i + 1); next != nil && next.is(kBar) && next.pause == none {
		return // "two mouldy bars" counts bars
	}
	if s.num != nil && strings.HasPrefix(it.text, "with ") && i-s.numAt <= 4 && i > s.numAt+1 && s.at(i-1).is(kWord) && s.at(i-1).pause == none && barNumber(s.at(s.numAt)) {
		f.count, f.hasCount = *s.num, true // "one poor creature with deformed wings"
		f.items = append(f.items, s.at(s.numAt))
		return
	}
	if s.num != nil && !s.num.article && !s.num.ordinal && s.num.whole() && !s.countedSign(s.numAt) && !s.pointedOne(s.numAt) && s.onlyBetween(s.numAt, i, kAdv, kBees, kHave, kOf, kPattern, kAmount, kStage, kArt, kComb, kWord, kCell) && i-s.numAt <= 4 {
		f.count, f.hasCount = *s.num, true
		f.items = append(f.items, s.at(s.numAt))
		return
	}
	// "chalkbrood on bar six, ten mummies", "small hive beetles, I counted nine"
	for k := i + 1; k < len(s.c.items) && k <= i+8; k++ {
		it := s.at(k)
		if it.is(kNum) && !it.n.article && !it.n.share && it.n.whole() {
			if s.countsSign(i, k) {
				f.count, f.hasCount = it.n, true
				if s.at(k-1).colon && k == i+1 {
					f.hasCount, f.present = it.n.lo > 0, it.n.lo > 0 // "beetles: 11", "wasps: nil"
				}
				f.items = append(f.items, it)
			}
			return
		}
		if it.any4(kSign, kContent, kCell, kDo) {
			return
		}
	}
}

// pointedOne reports whether the number at item k is "one" behind a word that points: "this one
// has sacbrood" counts nothing.
func (s *scan) pointedOne(k int) bool {
	return k > 0 && s.at(k).pause == none && s.at(k).text == "one" && s.at(k-1).isWord6("this", "that", "other", "next", "last", "which")
}

// countedSign reports whether the number at item k counts the sign found last: "deformed
// wings on two bees, chalkbrood on bar 8".
func (s *scan) countedSign(k int) bool {
	n := len(s.found)
	return n > 0 && s.found[n-1].class == ofSign && slices.Contains(s.found[n-1].items, s.at(k))
}

// countsSign reports whether the number at item k counts the sign at item i before
// it.
func (s *scan) countsSign(i, k int) bool {
	it, prev, next := s.at(k), s.at(k-1), s.at(k+1)
	if k == i+2 && prev.isWord2("x", "×") || k == i+1 && prev.colon {
		return true // "small hive beetle x12", "beetles: 11"
	}
	if next != nil && k == i+2 && prev.is(kOn) && next.pause == none && (next.is(kBees) && ofBees(next.text) || next.isWord3("larvae", "grubs", "pupae")) {
		return true // "deformed wings on two bees", "sacbrood on two larvae"
	}
	if after := s.at(k + 2); next != nil && k == i+1 && it.pause == none && next.pause == none && next.is(kBees) && ofBees(next.text) && (after == nil || after.pause > none) {
		return true // "DWV 2-3 bees"
	}
	if s.postposedCount(i, k) {
		it.used = true
		return true
	}
	switch {
	case strings.HasPrefix(prev.text, "count"), s.countAside(i, k), prev.is(kSeen) && sawSoMany(s.c.items, k-1):
		return true
	case it.n.approx:
		return next == nil || next.any6(kAnd, kMaybe, kNo, kBut, kPron, kThere) || next.pause > none
	}
	return next == nil && prev.pause == none && prev.is(kWord) && k == i+1
}

// countAside reports whether the number at item k stands by itself behind a comma
// or a dash: "chalk mummies on the floor, 14", "wasps, nine of them".
func (s *scan) countAside(i, k int) bool {
	it, next := s.at(k), s.at(k+1)
	if only := s.at(k - 1); it.pause == none && only.isWord2("just", "only") && only.pause == comma && k <= i+5 && next == nil {
		return true // "wax moth on bar nine, just one"
	}
	switch {
	case it.pause == comma && k <= i+6 && next != nil && next.is(kOf) && s.at(k+2) != nil && s.at(k+2).any(kPron, kBees):
		return true // "beetles hiding under the lid, fifteen of them"
	case it.pause != comma || k > i+4:
		return false
	case next == nil || next.any(kCell, kOf) || next.is(kWhole) && next.pause == none:
		return true
	case k != i+1:
		return false
	}
	return next.pause == comma && !s.r.listing || next.pause > none && dashed(s.r.text, s.at(i), it)
}

// dashed reports whether a dash parts two items, as a label from its answer.
func dashed(text string, a, b *item) bool { return strings.ContainsAny(parting(text, a, b), "-–—") }

// parting is the text that parts two items; "" where one was moved before the other.
func parting(text string, a, b *item) string {
	if b.start < a.end {
		return ""
	}
	return text[a.end:b.start]
}

// postposedCount reports whether the number at item k counts the sign before it:
// "perforated caps two cells", "chalk mummies five on the floor", "dead bees at
// the entrance thirty".
func (s *scan) postposedCount(i, k int) bool {
	next, after := s.at(k+1), s.at(k+2)
	ofThem := next != nil && next.is(kOf) && next.pause == none && after != nil && after.any(kPron, kBees)
	if prev := s.at(k - 1); ofThem && s.at(k).pause == none && s.r.isWord(prev, s.r.wordsOf[reckoning]...) && s.onlyBetween(i, k, kWord, kPron, kSeen, kHave, kArt) {
		return true // "wasp grubs dad says four of them"
	}
	switch {
	case s.at(k).pause > none || !s.onlyBetween(i, k, kOn, kArt, kFixture):
		return false
	case next == nil:
		return k > i+1 || i == 0
	case next.pause > none:
		return false
	case ofThem, next.isWord3("counted", "numbers", "nos"), next.text == "in" && after != nil && after.text == "number":
		return true // "wasps at the door six of them", "hive beetles three numbers"
	case next.isWord2("cell", "cells"):
		return k == i+1 && (after == nil || after.pause > none || after.any(kOn, kSign, kNo))
	}
	return k == i+1 && (next.is(kOn) && after != nil && after.is(kFixture) || next.isWord3("under", "beneath", "behind") && !s.r.listing)
}
