package parse

import "strings"

// side reads on which side of the comb something is: what was found last, or what
// follows.
func (s *scan) side(i int) {
	it := s.at(i)
	value := s.r.value(it, kSide)
	if value == "counted" { // "eggs 1 side"
		value = map[float64]string{1: "one", 2: "both"}[it.n.lo]
	}
	if value == "" || strings.HasSuffix(value, " end") || it.text == "back" && !s.endsSide(i) {
		return
	}
	if next := s.at(i + 1); s.bars != nil && s.barsAt == i-1 || it.text == "both" && next != nil && (next.any3(kBe, kHave, kFull) || next.text == "cases") {
		return // "both full of honey" are the bars, "three combs at the back are capped honey"
	}
	if prev := s.at(i - 1); it.text == "both" && it.pause == none && prev != nil && prev.is(kBars) && len(prev.bars) == 2 && s.headed {
		return // "bars 11 and 12 both empty comb"
	}
	if next := s.at(i + 1); it.text == "both" && it.pause >= comma && next != nil && next.is(kNum) && next.n.share && next.pause == none && len(s.r.bars) == 2 {
		return // "bars 9 and 10 nectar, both half full"
	}
	if next := s.at(i + 1); it.text == "both" && it.pause >= comma && next != nil && next.is(kStage) && next.pause == none && len(s.r.bars) == 2 {
		return // "bars 3 and 4 are honey, both capped"
	}
	if it.text == "both" && s.bothOfTwo(i) {
		it.used = true
		return
	}
	if prev := s.at(i - 1); it.text == "both" && prev != nil && it.pause == none {
		if (prev.is(kOn) || prev.isWord4("through", "across", "throughout", "over")) && len(s.r.bars) == 2 {
			it.used = true
			return // "bars 10 and 11, there's nectar in both"
		}
		if prev.is(kPron) && prev.text != "it" {
			return // "we both saw eggs"
		}
	}
	if value == "both" && s.sideOfBefore(it) {
		return
	}
	last := s.lastFound(i)
	if last == nil || last.class != ofComb || last.side != "" && !(value == "both" && last.side == "one") && !s.turns(i) {
		s.sideAhead(i, value)
		return
	}
	if s.turns(i) && s.leadsTo(i, kHave, kBe, kThere, kArt, kAmount, kNum, kPattern, kAdv, kOf, kPron) != nil {
		s.sideAhead(i, value)
		return
	}
	it.used = true
	if last.side == "one" && value == "both" {
		last.side = ""
	}
	s.sideBehind(last, value, it)
}

// bothOfTwo reports whether "both" at item i counts two things on a comb, and names no sides of
// it: "both eggs and larvae", "eggs and larvae both".
func (s *scan) bothOfTwo(i int) bool {
	behind := i + 1
	for ; s.pairs(behind) && !s.at(behind).is(kAnd); behind++ {
	}
	if s.pairs(behind) && behind > i+1 && s.at(behind-1).is(kContent) {
		and := behind
		for behind++; s.pairs(behind) && !s.at(behind).is(kContent); behind++ {
		}
		return s.pairs(behind) && behind > and
	}
	last, and, first := s.at(i-1), s.at(i-2), s.at(i-3)
	next := s.at(i + 1)
	return first != nil && first.is(kContent) && and.is(kAnd) && last.is(kContent) && s.at(i).pause == none && (next == nil || next.pause >= stop)
}

// pairs reports whether item k, with no pause before it, is one of those that tell two things:
// "a little nectar and pollen".
func (s *scan) pairs(k int) bool {
	it := s.at(k)
	return it != nil && it.pause == none && (it.anyOf(pairing) || it.text == "some")
}

// pairing are the kinds of words that tell two things on a comb.
var pairing = setOf(kContent, kAnd, kAmount, kArt, kAdv, kStage, kNum, kPattern)

// endsSide reports whether a word that is no side elsewhere is one: it stands right
// behind a content and ends what is said, as in "eggs front, larvae back".
func (s *scan) endsSide(i int) bool {
	last, next := s.lastFound(i), s.at(i+1)
	return last != nil && last.class == ofComb && last.at == i-1 && len(s.r.bars) > 0 && (next == nil || next.pause >= comma)
}

// sideBehind gives a side to what was named before it.
func (s *scan) sideBehind(last *finding, side string, it *item) {
	s.spreadBack(last, func(f *finding) {
		if f.side == "" {
			f.side = side
			f.items = append(f.items, it)
		}
	})
}

// sideAhead gives a side to the contents that follow, if any do.
func (s *scan) sideAhead(i int, side string) {
	if !s.contentAhead(i) {
		return
	}
	it := s.at(i)
	s.before.side, s.before.at = side, i
	s.before.items = append(s.before.items, it)
	s.sideFirst, it.used = side, true
}

// sideOfBefore: "sealed brood", and in a clause of its own "the same on the other
// side".
func (s *scan) sideOfBefore(it *item) bool {
	r := s.r
	if len(s.found) > 0 || s.headed || len(r.lastFind) == 0 || s.c.has(kContent) || s.c.has(kCell) || s.c.has(kComb) || !strings.Contains(it.text, "same") {
		return false
	}
	it.used = true
	for _, f := range r.lastFind {
		if f.class == ofComb && f.present {
			f.side = "both"
			for _, b := range f.bars {
				r.cur.drop(r.barPath(b, f.what+".side"))
				r.cur.put(r.barPath(b, f.what+".side"), "both", r.why("side-both", "", it))
			}
		}
	}
	return true
}

// turns reports whether the phrase at i begins a new turn: "and on the back …",
// ", on the other …".
func (s *scan) turns(i int) bool {
	if s.at(i).pause > none {
		return true
	}
	prev := s.at(i - 1)
	return prev != nil && prev.any3(kAnd, kThen, kBut)
}

func (s *scan) contentAhead(i int) bool {
	for k := i + 1; k < len(s.c.items) && k <= i+6; k++ {
		if s.at(k).is(kContent) {
			return true
		}
	}
	return false
}

// otherHalf: "half capped honey, and the other half pollen" names no side.
func (s *scan) otherHalf(i int) bool {
	next, noun := s.at(i+1), s.at(i+2)
	if next == nil || !s.at(i).isWord2("other", "the other") || !next.is(kNum) || !next.n.share || next.pause > none || noun != nil && noun.isWord2("side", "face") {
		return false
	}
	last := s.lastFound(i)
	return s.sideFirst == "" && (last == nil || last.side == "")
}

// otherSide is the side that was not named: the opposite of front and back,
// else "other", which is kept as one side unless the first holds the same.
func (s *scan) otherSide(i int) {
	it := s.at(i)
	if s.otherHalf(i) {
		return // "half capped honey, and the other half pollen"
	}
	if next := s.at(i + 1); next != nil && next.pause == none && next.any(kBar, kHive) {
		return // "eggs on bar three, and the other bars honey"
	}
	it.used = true
	side := "other"
	for k := len(s.found) - 1; k >= 0; k-- {
		switch s.found[k].side {
		case "front":
			side = "back"
		case "back":
			side = "front"
		case "":
			continue
		}
		break
	}
	last := s.lastFound(i)
	leads := s.turns(i) && s.leadsTo(i, kHave, kBe, kThere, kArt, kAmount, kNum, kPattern, kAdv, kOf, kPron) != nil
	if s.r.rule(it, kOther).Form == "turn" {
		leads, s.here = true, true // "flip it" says nothing of what went before, and stays on the bar
	}
	if last != nil && last.class == ofComb && last.side == "" && s.sideFirst == "" && !leads {
		s.sideBehind(last, side, it)
		return
	}
	s.sideAhead(i, side)
}

// place reads where on the comb something is: what was found last, or what follows.
func (s *scan) place(i int) {
	it := s.at(i)
	value := s.r.value(it, kPlace)
	last := s.lastFound(i)
	if s.placeFirst(i) {
		s.before.place, s.before.at = value, i
		s.before.items = append(s.before.items, it)
		return
	}
	lead := s.leadsTo(i, kOf, kArt, kAdv, kAmount, kNum, kPattern, kStage, kColour)
	band := value == "edge" && lead != nil && s.bandWord(it)
	if (last == nil || last.class != ofComb || last.place != "" || band || s.turns(i) && lead != nil && it.pause > none) && lead != nil {
		s.before.place, s.before.at = value, i
		s.before.items = append(s.before.items, it)
		return
	}
	if last != nil && last.class == ofComb && last.place == "edge" && value != "edge" && last.at == i-1 && it.pause == none {
		last.place, last.items = value, append(last.items, it) // "a band of honey along the top"
		return
	}
	if last != nil && last.class == ofComb && last.place == "" {
		s.spreadSame(last, func(f *finding) {
			if f.place == "" {
				f.place = value
				f.items = append(f.items, it)
			}
		})
	}
}

// placeFirst reports whether a place begins what is told, and what is found there stands
// behind a verb: "sealed brood, and at the top is honey".
func (s *scan) placeFirst(i int) bool {
	k := i
	for k > 0 && s.at(k).pause == none && s.at(k-1).any(kOn, kArt) {
		k--
	}
	if s.at(i+1) != nil && s.at(i+1).is(kThere) && s.at(i+1).pause == none {
		i++
	}
	if be := s.at(i + 1); k > 0 && s.at(k).pause == none && !s.at(k-1).any(kAnd, kBut) || be == nil || be.pause > none || !be.any(kBe, kSeen) && !s.r.isWord(be, s.r.wordsOf[lying]...) {
		return false
	}
	return s.leadsTo(i+1, kOf, kArt, kAdv, kAmount, kNum, kPattern, kStage, kColour, kPlace) != nil
}

// bandWord: "a band of", "rim of", "edged with" take the noun behind them.
func (s *scan) bandWord(it *item) bool {
	text := it.text
	return strings.HasSuffix(text, " of") || strings.HasSuffix(text, " with") || strings.HasSuffix(text, " by")
}
