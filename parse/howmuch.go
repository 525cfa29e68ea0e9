package parse

import "strings"

// number keeps a count for the noun behind it, or takes a share.
func (s *scan) number(i int) {
	it := s.at(i)
	if it.n.share && (s.moreCells(i) || s.moreOfComb(i) || s.partOfComb(i)) {
		return
	}
	if it.n.share || it.n.lo > 0 && it.n.lo < 1 && it.n.hi == 0 { // "sealed brood 0.7"
		s.share(i, it.n.lo)
		return
	}
	if s.zeroOf(i) {
		s.denial(i)
		return
	}
	if s.num != nil && s.numAt == i-1 && it.n.article || s.moreCells(i) || s.soManyOfThem(i) {
		return
	}
	s.num, s.numAt = &it.n, i
	s.onAsMany(i)
}

// zeroOf reports whether the number at item i says that there is none of what follows: "0 QCs",
// "0 sealed cells".
func (s *scan) zeroOf(i int) bool {
	it := s.at(i)
	return it.n.lo == 0 && it.n.hi == 0 && !it.n.article && it.n.whole() && s.leadsTo(i, kStage, kCellKind, kQueen) != nil
}

// partOfComb: "bar seven half a comb, nectar in it" is half drawn, "half a comb of nectar" half full.
func (s *scan) partOfComb(i int) bool {
	it, next, bar := s.at(i), s.at(i+1), i-1
	for bar > 0 && s.at(bar).any5(kBe, kHave, kAdv, kMaybe, kAmount) {
		bar--
	}
	if !strings.HasSuffix(it.text, " a comb") || bar < 0 || !s.at(bar).is(kBars) || next != nil && next.is(kOf) && next.pause == none {
		return false
	}
	bars := s.r.barsOf(s.c, i)
	if len(bars) == 0 {
		return false
	}
	s.r.comb(bars, "drawn", formatNumber(round2(it.n.lo)), s.r.why("drawn", "", it))
	it.used = true
	s.touch()
	return true
}

// onAsMany: "brood on seven bars and honey on four", "bees on nine bars, eggs and
// larvae on six" count the bars of what stands before a number alone.
func (s *scan) onAsMany(i int) {
	on, next := s.at(i-1), s.at(i+1)
	if on == nil || !on.is(kOn) || len(s.found) == 0 || next != nil && next.pause < comma && !next.is(kOf) && !next.isWord3("more", "of them", "others") {
		return
	}
	last := s.found[len(s.found)-1]
	if last.at != i-2 || last.class != ofComb || !last.present {
		return
	}
	if s.ofAll(i) || len(s.found) > 1 && s.found[len(s.found)-2].counted.lo > 0 || countedBefore(s.r, s.c.items[:i]) || s.r.countsOnly() {
		s.spreadBack(last, func(f *finding) { f.counted = s.at(i).n })
	}
}

// ofAll: "sealed brood on five of them", "eggs on six of the bars".
func (s *scan) ofAll(i int) bool {
	k := i + 1
	for s.at(k) != nil && s.at(k).pause == none && s.at(k).any(kOf, kArt) {
		k++
	}
	it := s.at(k)
	return it != nil && s.at(i).n.lo > 1 && s.at(i).n.whole() && (it.is(kBar) && k > i+1 || it.isWord2("of them", "them"))
}

// butOnly reports whether "but" leads from item at, or the bars behind it, to how much there
// is of it at item i: "honey on bar four, but only a little". Where it leads elsewhere,
// lastFound finds nothing.
func (s *scan) butOnly(at, i int) bool {
	return at < i && hasKind(s.c.items[at:i], kBut) && s.onlyBetween(at, i, kOn, kBars, kArt, kBut, kAdv)
}

// stageSoon reports whether a stage of cells follows from item k on, over the verb and little
// words.
func (s *scan) stageSoon(k int) bool {
	for s.at(k) != nil && s.at(k).pause == none && s.at(k).any3(kHave, kBe, kAdv) {
		k++
	}
	return s.at(k) != nil && s.at(k).pause == none && s.at(k).is(kStage)
}

// moreOfComb: "capped brood 45% on bar four, 60% on bar five" tells how much of the same is
// on another comb.
func (s *scan) moreOfComb(i int) bool {
	on, bars, n := s.at(i+1), s.at(i+2), len(s.found)-1
	if n < 0 || on == nil || bars == nil || !on.any(kOn, kOf) || !bars.is(kBars) || on.pause > none {
		return false
	}
	if then := s.at(i + 3); then != nil && then.pause < comma && !(on.is(kOn) && then.any(kAnd, kBut)) {
		return false // "20% pollen, and 60% of bar four is honey", "60% of bar four and half of bar five honey"
	}
	it, last := s.at(i), s.found[n]
	k := i - 1
	for k > last.at && s.at(k).any3(kAnd, kBut, kAdv) {
		k--
	}
	if last.class != ofComb || !last.present || !last.hasCover || k == i-1 && it.pause < comma {
		return false
	}
	switch {
	case s.at(k).is(kBars):
		for j := last.at + 1; j < k; j++ {
			if !s.at(j).any6(kNum, kOn, kOf, kAdv, kFull, kArt) && !s.at(j).is(kComb) && !s.r.isWord(s.at(j), s.r.wordsOf[covering]...) {
				return false
			}
		}
	case k == last.at && s.headed && len(s.r.bars) > 0: // "bar four 45% capped brood, 60% on bar five"
		last.bars, last.located = s.r.bars, true
	default:
		return false
	}
	s.found = append(s.found, s.r.newFinding(&finding{class: ofComb, what: last.what, present: true, extent: extent{cover: it.n.lo, hasCover: true}, at: i, items: s.r.these(it), rule: last.rule}))
	return true
}

// share takes a share of the comb: of the content before it or behind it, or of
// what is drawn.
func (s *scan) share(i int, v float64) {
	it := s.at(i)
	next := s.at(i + 1)
	k := i + 1
	for ; next != nil && next.any3(kArt, kOf, kAdv) && !next.is(kContent) && k < i+3; k++ {
		next = s.at(k + 1)
	}
	if last := s.lastFound(i); last != nil && !last.hasCover && last.class == ofComb && next != nil && next.isWord2("comb", "side") && s.at(i-1).text == "the" && last.at == i-2 {
		last.cover, last.hasCover = v, true // "sealed brood the half of the comb"
		last.items = append(last.items, it, next)
		next.used = true
		return
	}
	if s.judgedAt(i, v, next) {
		return
	}
	if next != nil && next.isWord3("comb", "bar", "frame") && (s.shareOfComb(i) || s.combIs(i, v, k)) {
		return
	}
	if next != nil && next.is(kComb) && strings.HasPrefix(s.r.value(next, kComb), "drawn") && next.pause == none {
		s.before = modifiers{extent: extent{cover: v, hasCover: true}, items: s.r.these(it), at: i}
		return
	}
	if last := s.lastFound(i); last != nil && !last.hasCover && last.class == ofComb && !(next != nil && next.any(kContent, kFull) && next.pause == none && s.before.set()) {
		if !(next != nil && next.is(kFull) && next.pause == none && s.fullLeadsOn(i+1)) {
			last.cover, last.hasCover = v, true
			last.items = append(last.items, it)
			return
		}
	}
	s.before.cover, s.before.hasCover, s.before.at = v, true, i
	s.before.items = append(s.before.items, it)
}

// judgedAt: "sealed brood on bars four and five, and on five I would put it at 85 per
// cent of the comb" is the share of what was just said to be there.
func (s *scan) judgedAt(i int, v float64, next *item) bool {
	r := s.r
	sure := s.tellsExtent(i)
	if len(s.found) > 0 || !s.c.has(kMaybe) && !sure || !r.sameSentence && !sure || len(r.bars) == 0 || next != nil && next.pause == none && !next.isWord6("comb", "it", "side", "face", "each", "each comb") {
		return false
	}
	for _, b := range r.bars {
		said := r.saidOf.about(b)
		if len(said) == 0 || said[len(said)-1].class != ofComb || said[len(said)-1].hasCover {
			return false
		}
	}
	w := r.why("share", "", s.at(i), next)
	if s.c.doubt != "" {
		w.doubts = append(w.doubts, "hedged: "+s.c.doubt)
	}
	for _, b := range r.bars {
		said := r.saidOf.about(b)
		r.cur.put(r.paths.under(r.barPath(b, said[len(said)-1].what), "cover"), formatNumber(v), w)
	}
	return true
}

// tellsExtent reports whether the share at item i is of an area spoken of right before:
// "its area I put at half the comb", "it covers half the face".
func (s *scan) tellsExtent(i int) bool {
	for k := max(0, i-6); k < i; k++ {
		if s.r.isWord(s.at(k), "area", "extent", "coverage", "cover", "covers", "covered", "covering") {
			return true
		}
	}
	return false
}

// combIs: "half the comb is nectar", "80 percent of the comb is under sealed brood" give
// the share of what is named behind the comb at item k.
func (s *scan) combIs(i int, v float64, k int) bool {
	at := k
	for k++; s.at(k) != nil && s.at(k).pause == none && (s.at(k).any4(kBe, kAdv, kArt, kFull) || s.r.isWord(s.at(k), "covered", "under", "in", "filled", "with", "taken up", "by")); k++ {
	}
	if k == at+1 || !s.at(at+1).is(kBe) || s.at(k) == nil || s.at(k).pause > none || !s.at(k).is(kContent) {
		return false
	}
	s.before.cover, s.before.hasCover, s.before.at = v, true, i
	s.before.items = append(s.before.items, s.at(i))
	s.combSpoken = true
	for j := at; j < k; j++ {
		s.at(j).used = true
	}
	return true
}

// shareOfComb: "sealed brood, tight, about half the comb" is the share that the brood
// covers.
func (s *scan) shareOfComb(i int) bool {
	last := s.lastFound(i)
	if last == nil || last.hasCover || last.class != ofComb {
		return false
	}
	covers := i
	for covers-1 > last.at && s.at(covers-1).any(kAdv, kMaybe) {
		covers--
	}
	if covers-2 > last.at && s.at(covers-1).isWord2("up", "over") {
		covers--
	}
	if covers-1 > last.at && s.r.isWord(s.at(covers-1), s.r.wordsOf[covering]...) {
		covers-- // "sealed brood covers perhaps half the comb"
		if covers-1 > last.at && s.at(covers-1).isWord2("that", "which") {
			covers-- // "brood that covers half the comb"
		}
	}
	if !s.onlyBetween(last.at, covers, kAdv, kMaybe, kPattern, kSide, kPlace, kBe, kOn) {
		return false
	}
	for k := i + 1; k < len(s.c.items) && s.at(k).pause == none; k++ {
		if s.at(k).any3(kContent, kBe, kFull) || !s.at(k).is(kBar) && strings.HasPrefix(s.r.value(s.at(k), kComb), "drawn") {
			return false // "half the comb is nectar"
		}
	}
	last.cover, last.hasCover = s.at(i).n.lo, true
	last.items = append(last.items, s.at(i))
	return true
}

// fullLeadsOn reports whether "full of" leads on to a content.
func (s *scan) fullLeadsOn(i int) bool {
	for k := i + 1; k < len(s.c.items) && k <= i+3; k++ {
		it := s.at(k)
		if it.is(kContent) {
			return true
		}
		if it.pause > none || !it.any5(kOf, kArt, kAdv, kPattern, kStage) {
			return false
		}
	}
	return false
}

// full reads "full of", "wall to wall": the whole comb is of what stands with it.
func (s *scan) full(i int) {
	it := s.at(i)
	wall, after := false, false
	for _, n := range it.says.rules {
		rule := &s.r.rules[n]
		wall = wall || rule.Kind == kFull && rule.Value == "wall"
		after = after || rule.Kind == kFull && rule.Form == "after"
	}
	leads := s.fullLeadsOn(i)
	if !after && !wall && !leads {
		return
	}
	last := s.lastFound(i)
	if !leads && last != nil && last.class == ofComb {
		if !last.hasCover {
			last.cover, last.hasCover = 1, true
		}
		if wall && last.brood() || last.cover == 1 && last.pattern == "" && (strings.Contains(it.text, "full") || strings.HasSuffix(it.text, "edge to edge") || strings.HasSuffix(it.text, "end to end") || strings.HasSuffix(it.text, "corner to corner")) && strings.HasSuffix(last.what, "brood") {
			last.pattern = "solid" // "capped brood full both sides"
		}
		last.items = append(last.items, it)
		return
	}
	if !leads {
		if last == nil && wall {
			s.wholeOfBefore(it)
		}
		return
	}
	if !s.before.hasCover || s.before.at != i-1 {
		s.before.cover, s.before.hasCover = 1, true
		wall = wall || s.broodAhead(i)
	}
	if wall {
		s.before.pattern = "solid"
	}
	s.before.items = append(s.before.items, it)
	s.before.at = i
}

// broodAhead reports whether brood, and not eggs, is what a comb is said to be full
// of at item i. "All sealed brood" tells what is on it and nothing of gaps.
func (s *scan) broodAhead(i int) bool {
	if !strings.Contains(s.at(i).text, "full") {
		return false
	}
	to := s.leadsTo(i, kOf, kArt, kAdv, kPattern, kStage)
	return to != nil && strings.HasSuffix(s.r.value(to, kContent), "brood")
}

// wholeOfBefore: "that's sealed brood", and in a clause of its own "it goes wall to
// wall".
func (s *scan) wholeOfBefore(it *item) {
	r := s.r
	f := r.lastContent
	if f == nil || s.headed || f.hasCover || !f.present || !r.sameSentence || !s.at(0).isWord3("it", "they", "that") && !s.at(0).is(kAnd) || s.c.hasAny(kFixture, kStores, kBees, kBars) {
		return
	}
	it.used = true
	f.cover, f.hasCover = 1, true
	if f.brood() {
		f.pattern = "solid"
	}
	r.record(f)
}

// isState reports whether a word such as "full" speaks of a feeder.
func (s *scan) isState(i int) bool {
	if prev := s.at(i - 1); s.headed && prev != nil && prev.is(kContent) {
		return false // "1 sealed honey, full"
	}
	for k := max(0, i-4); k < i; k++ {
		if s.at(k).any3(kFixture, kStores, kStored) && !(k > 0 && s.at(k-1).is(kComb) && s.at(k).pause == none) { // but "straight enough full of nectar"
			return true
		}
	}
	return false
}

// amount reads "plenty of", "a little": how much there is of what stands with it.
func (s *scan) amount(i int) {
	it := s.at(i)
	value := s.r.value(it, kAmount)
	if value == "much" && s.notSoMuch(i) {
		value = "little"
	}
	if to := s.leadsTo(i, kColour, kAdv); to != nil && it.text == "little" && (s.r.value(to, kContent) == "open_brood" || s.r.value(to, kContent) == "eggs") {
		return // "little white grubs" are small, not few
	}
	if to := s.leadsTo(i, kOf, kArt, kAdv, kPattern, kStage, kColour, kFull, kNum, kAnd, kAmount); to != nil && !to.isWord2("cells", "cell") {
		s.before.amount, s.before.at = value, i
		s.before.items = append(s.before.items, it)
		return
	}
	if next := s.at(i + 1); next != nil && next.is(kPattern) && next.pause == none && value == "little" {
		return // "a bit spotty" is a degree
	}
	if s.elsewhereToo(i, value) || s.amountOfElse(i) {
		return
	}
	if last, next := s.lastFound(i), s.at(i+1); last != nil && next != nil && last.class == ofComb && last.amount == "" && (next.text == "it" || next.isWord2("them", "these") && next.pause == none && s.onlyBetween(last.at, i, kAnd, kOn, kBars) && (s.at(i+2) == nil || s.at(i+2).pause > none)) {
		last.amount = value // "capped brood and lots of it"
		last.items = append(last.items, it)
		return
	}
	if last, next := s.lastFound(i), s.at(i+1); last != nil && last.class == ofComb && last.amount == "" && (it.pause == comma || s.limits(i)) && (next == nil || next.pause >= comma) && s.onlyBetween(last.at, i, kOn, kBars, kAnd, kAdv) {
		last.amount = value // "pollen on bar 8, a little", "sealed brood on bar three just a patch"
		last.items = append(last.items, it)
		return
	}
	if last := s.lastFound(i); last != nil && last.class == ofComb && last.amount == "" && (last.at == i-1 || it.pause <= comma && s.onlyBetween(last.at, i, kAdv, kBe, kArt) || s.butOnly(last.at, i)) {
		last.amount = value
		last.items = append(last.items, it)
	}
}

// notSoMuch reports whether a denial is of the amount at item i alone, and ends it: "bar four hasn't
// got much honey" has a little.
func (s *scan) notSoMuch(i int) bool {
	k := i - 1
	for k >= 0 && s.at(k+1).pause == none && (s.at(k).any3(kAdv, kHave, kArt) || s.at(k).isWord2("got", "so")) {
		k--
	}
	if k < 0 || s.at(k+1).pause > none || !s.at(k).any(kNo, kNot) || !strings.Contains(s.at(k).text, "not") && !strings.Contains(s.at(k).text, "n't") {
		return false
	}
	s.at(k).used = true
	s.no = -1
	return true
}

// limits reports whether the amount at item i is said to be all that there is: "just a patch", "and
// only a little".
func (s *scan) limits(i int) bool {
	first, _, _ := strings.Cut(s.at(i).text, " ")
	prev := s.at(i - 1)
	return first == "just" || first == "only" || prev != nil && prev.isWord2("just", "only")
}

// amountOfElse: "empty comb, plenty of room for her", "bit of a job to lift".
func (s *scan) amountOfElse(i int) bool {
	next := s.at(i + 1)
	if next != nil && next.is(kArt) && next.pause == none {
		next = s.at(i + 2)
	}
	return next != nil && next.is(kWord) && next.pause == none && strings.HasSuffix(s.at(i).text, " of")
}

// elsewhereToo: "no eggs on bar eight but lots on seven" says the content once
// for both.
func (s *scan) elsewhereToo(i int, amount string) bool {
	on, bars := s.at(i+1), s.at(i+2)
	f, here := s.r.lastContent, s.r.sameSentence
	if last := s.lastFound(i); last != nil && last.at < i && last.class == ofComb && (s.headed || hasKind(s.c.items[last.at:i], kBars)) {
		f, here = last, true // "honey on bars 3 and 4, lots on 4"
	}
	if on == nil || bars == nil || !on.is(kOn) || !bars.is(kBars) || f == nil || !here {
		return false
	}
	s.found = append(s.found, s.r.newFinding(&finding{class: ofComb, what: f.what, present: true, extent: extent{amount: amount}, at: i, items: s.r.these(s.at(i)), rule: f.rule}))
	return true
}
