package parse

// Combs with nothing in them, or with nothing in a part of them.

// empty reads "empty" of a bar in hand: drawn comb with nothing in it where
// its comb was spoken of, else no comb at all.
func (s *scan) empty(i int) bool {
	it, r := s.at(i), s.r
	if it.text == "empty" && !it.used && s.emptyPart(i) {
		return true
	}
	if it.text != "empty" || it.used || s.cellAhead(i) >= 0 || s.isState(i) || s.ofTheRest(i) {
		return false
	}
	if next := s.at(i + 1); next != nil && next.pause == none && next.any6(kWord, kContent, kCell, kBar, kHive, kName) && !(next.is(kName) && s.at(i-1).is(kBe)) {
		return false // "two empty bars", "the empty hive"
	}
	first := s.at(0)
	if first.any(kBut, kAnd) && i > 1 {
		first = s.at(1)
	}
	if r.spokeOf.cells == r.sentenceNo && len(s.found) == 0 && first.isWord5("it", "they", "which", "both", "all") {
		return true // "a queen cup on bar eight, it is empty"
	}
	bars := s.combBars(i)
	if len(bars) == 0 || s.no >= 0 || s.lastCell() != nil {
		return false
	}
	if s.combSpoken || r.sameSentence && (r.tells(bars[0], "comb.old") || r.tells(bars[0], "comb.new") || r.tells(bars[0], "comb.drawn")) {
		s.found = append(s.found, s.r.newFinding(&finding{class: ofComb, what: "empty", present: true, at: i, items: s.r.these(it), rule: "empty-comb", bars: bars, located: true}))
		return true
	}
	r.comb(bars, "size", "bare", r.why("comb-bare", "", it))
	s.touch()
	return true
}

// emptyPart reads how much of a comb is empty: "bar 9 half honey half empty", "b9 honey 50%,
// rest bare", "b9 1/2 empty", where the rest may go without a share.
func (s *scan) emptyPart(i int) bool {
	if !s.headed || len(s.r.bars) != 1 || s.no >= 0 {
		return false
	}
	behind := s.at(i + 1)
	before := s.before.hasCover && s.onlyBetween(s.before.at, i, kAdv, kOf, kBe, kPron)
	after := behind != nil && behind.is(kNum) && behind.n.share && behind.pause == none && s.closes(i+1)
	other := s.emptyOther(i)
	if !before && !after && other == nil && !(s.ofTheRest(i) && s.partTold()) {
		return false
	}
	f := s.r.newFinding(&finding{class: ofComb, what: "empty", present: true, at: i, items: s.r.these(s.at(i)), rule: "empty-comb"})
	switch {
	case before:
		f.cover, f.hasCover = s.before.cover, true
		f.items = append(f.items, s.before.items...)
	case after:
		f.cover, f.hasCover = behind.n.lo, true
		f.items = append(f.items, behind)
	case other != nil:
		f.side, other.used = "one", true
		f.items = append(f.items, other)
	default:
		s.at(i - 1).used = true
	}
	s.before = modifiers{}
	s.found = append(s.found, f)
	return true
}

// emptyOther is the word for the other side, which is empty where something is on one: "nectar
// one side, other side empty"; nil where none stands beside item i.
func (s *scan) emptyOther(i int) *item {
	n := len(s.found) - 1
	if n < 0 || s.found[n].class != ofComb || s.found[n].side != "one" || s.found[n].at < s.boundAt() {
		return nil
	}
	for _, k := range [...]int{i - 1, i + 1} {
		if it := s.at(k); it != nil && (it.is(kOther) || it.text == "other") && s.at(max(i, k)).pause == none {
			return it
		}
	}
	return nil
}

// partTold reports whether what was found last fills a part of the comb.
func (s *scan) partTold() bool {
	n := len(s.found) - 1
	if n < 0 || s.found[n].at < s.boundAt() {
		return false
	}
	of := s.found[n]
	return of.class == ofComb && of.present && (of.hasCover || of.amount != "" || of.place != "" || of.side == "one")
}

// barNothing takes "nothing" for a bare bar where it is all that is told of one: "bar nine nothing,
// bar eight nectar".
func (r *reader) barNothing(items []item) {
	for i := 1; i < len(items); i++ {
		it := &items[i]
		if it.text != "nothing" || it.pause > colon || !items[i-1].is(kBars) {
			continue
		}
		if next := at(items, i+1); next == &noItem || next.pause > none || next.any5(kBars, kBar, kEnd, kName, kHive) || next.isWord2("yet", "there") {
			it.kinds, it.says = setOf(kComb), r.bareComb
		}
	}
}
