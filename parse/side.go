package parse

import "strings"

func (s *scan) side(i int) {
	it := s.at(i)
	value := s.r.value(it, kSide)
	if next := s.at(i + 1); s.bars != nil && s.barsAt == i-1 || s.r.isWord(it, "both") && next != nil && next.any3(kBe, kHave, kFull) {
		return // "both full of honey" are the bars, "three combs at the back are capped honey"
	}
	if prev := s.at(i - 1); s.r.isWord(it, "both") && it.pause == none && prev != nil && prev.is(kBars) && len(prev.bars) == 2 && s.headed {
		return // "bars 11 and 12 both empty comb"
	}
	if prev := s.at(i - 1); s.r.isWord(it, "both") && prev != nil && prev.is(kOn) && len(s.r.bars) == 2 {
		it.used = true
		return // "bars 10 and 11, there's nectar in both"
	}
	last := s.lastFound(i)
	if last == nil || last.class != ofComb || last.side != "" && !(value == "both" && last.side == "one") && !s.turns(i) {
		if s.contentAhead(i) {
			s.before.side, s.before.at = value, i
			s.before.items = append(s.before.items, it)
			it.used = true
		}
		return
	}
	if s.turns(i) && s.leadsTo(i, kHave, kBe, kThere, kArt, kAmount, kNum, kPattern, kAdv, kOf, kPron) != nil {
		s.before.side, s.before.at = value, i
		s.before.items = append(s.before.items, it)
		it.used = true
		return
	}
	it.used = true
	if last.side == "one" && value == "both" {
		last.side = ""
	}
	s.spreadBack(last, func(f *finding) {
		if f.side == "" {
			f.side = value
			f.items = append(f.items, it)
		}
	})
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

// otherSide is the side that was not named: the opposite of front and back,
// else one side.
func (s *scan) otherSide(i int) {
	it := s.at(i)
	if next := s.at(i + 1); next != nil && next.is(kWord) && next.pause == none && s.r.isWord(next, "way", "day", "one", "hive") {
		return // "the other way round"
	}
	it.used = true
	side := "one"
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
	if last != nil && last.class == ofComb && last.side == "" && !(s.turns(i) && s.leadsTo(i, kHave, kBe, kThere, kArt, kAmount, kNum, kPattern, kAdv, kOf, kPron) != nil) {
		s.spreadBack(last, func(f *finding) {
			if f.side == "" {
				f.side = side
				f.items = append(f.items, it)
			}
		})
		return
	}
	if s.contentAhead(i) {
		s.before.side, s.before.at = side, i
		s.before.items = append(s.before.items, it)
	}
}

func (s *scan) place(i int) {
	it := s.at(i)
	value := s.r.value(it, kPlace)
	last := s.lastFound(i)
	lead := s.leadsTo(i, kOf, kArt, kAdv, kAmount, kNum, kPattern, kStage, kColour)
	band := value == "edge" && lead != nil && s.bandWord(it)
	if (last == nil || last.class != ofComb || last.place != "" || band || s.turns(i) && lead != nil && it.pause > none) && lead != nil {
		s.before.place, s.before.at = value, i
		s.before.items = append(s.before.items, it)
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

// bandWord: "a band of", "rim of", "edged with" take the noun behind them.
func (s *scan) bandWord(it *item) bool {
	text := it.text
	return strings.HasSuffix(text, " of") || strings.HasSuffix(text, " with") || strings.HasSuffix(text, " by")
}
