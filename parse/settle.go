package parse

import "strings"

// settle places findings whose clause named no bar behind them: on the bar in
// hand, or in the colony as a whole.
func (s *scan) settle(waiting []*finding) {
	r := s.r
	ofColony := false // "no eggs" has begun to tell of all bars, not of the one in hand
	for _, f := range waiting {
		if f.located || len(f.bars) > 0 {
			continue
		}
		switch {
		case f.counted.lo > 0 || f.whole || s.whole || r.wholeSentence && !s.headed || s.compared():
		case f.class == ofSign && s.aboutHive(f):
			if !f.present {
				r.spokeOf.noSign = r.sentenceNo
			}
		case s.headed:
			f.bars = r.bars
		case f.class == ofComb && (!f.present || f.rule == "all-stages") && !s.here && r.onlyHers(): // "virgin queen on bar three, no eggs", "QS b4, BIAS"
		case f.rule == "all-stages" && !s.here && s.at(0).pause >= stop && (!r.headedBars || r.hersBefore()): // "Chalkbrood on bar 5. BIAS.", "Queen on bar 5, blue dot. BIAS."
		case !f.present && f.class == ofCells && (!r.headedBars || s.startsThere()) && !s.here: // "sealed brood on bars six to eight, no queen cells"
		case s.deniedApart(f): // "capped brood on bars five and six, no eggs"
		case r.inHand == noBar || len(r.bars) == 0:
		case f.class == ofSign:
			if s.here || !hiveSigns[f.what] && s.leansBack() || r.inHand >= thisLine && r.inHand != thisText && r.sameSentence && r.headedBars && !hiveSigns[f.what] {
				f.bars = r.bars
			}
		case s.here || r.inHand == awaiting:
			f.bars = r.bars
		case r.inHand == thisLine && r.sameSentence:
			f.bars = r.bars
		case r.inHand != noBar && s.allThose():
			f.bars = r.bars
		case r.inHand == thisLine && f.present && !ofColony && !s.speaksOfColony() && r.spokeOf.queen != r.sentenceNo && (r.headedBars || !s.thereIs()):
			f.bars = r.bars
			f.doubts = append(f.doubts, "bar taken from the sentence before")
		case r.inHand == thisText && s.leansBack():
			f.bars = r.bars
			f.doubts = append(f.doubts, "bar taken from the line before")
		}
		ofColony = ofColony || f.class == ofComb && !f.present && len(f.bars) == 0
		f.located = true
	}
}

// deniedApart reports whether a content is denied behind a pause and bars that head nothing,
// and so of the colony; "took out bar nine, no brood" tells of that bar.
func (s *scan) deniedApart(f *finding) bool {
	r := s.r
	if f.present || f.class != ofComb || r.headedBars || s.here || r.spokeOf.deed == r.sentenceNo && f.what != "eggs" {
		return false
	}
	k := f.at
	for k > 0 && s.at(k).pause < comma && !s.at(k).is(kBars) {
		k--
	}
	return s.at(k).pause >= comma
}

// onlyHers reports whether the bar in hand was named for the queen alone.
func (r *reader) onlyHers() bool {
	return r.spokeOf.queen == r.sentenceNo && r.barIsHers()
}

// hersBefore reports whether it was so named in the sentence before.
func (r *reader) hersBefore() bool {
	return (r.sheLast || r.spokeOf.queen > 0 && r.spokeOf.queen == r.sentenceNo-1) && r.barIsHers()
}

// barIsHers reports whether the bar in hand is one on which nothing but the queen was told.
func (r *reader) barIsHers() bool {
	return !r.headedBars && len(r.bars) == 1 && len(r.saidOf.about(r.bars[0])) == 0
}

// aboutHive reports whether a sign is one of the hive, whatever bar is in hand:
// what no bar can show, and what is denied in words of its own.
func (s *scan) aboutHive(f *finding) bool {
	if !f.present && !s.headed && (s.r.spokeOf.noSign == s.r.sentenceNo || hasKind(s.r.told, kTheirs)) {
		return true // "no foul smell, I had a good sniff, and no ropy larva", "hers has mites but there's no chalkbrood here"
	}
	ofBar := s.r.sameSentence && s.r.headedBars // "bar 6: patchy, but no foul smell"
	if f.present && !ofBar && !s.headed && !s.here && strings.HasPrefix(s.at(f.at).text, "bee") && hasKind(s.c.items[:f.at], kPron) {
		return true // "brood on bars 5 and 6, and I saw two bees with deformed wings"
	}
	switch {
	case offComb[f.what], f.what == "wasps", s.offBars(f.at):
		return true
	case s.here && f.present && ofBar && f.what != "dead_bees", s.r.spokeOf.thatBar == s.r.sentenceNo:
		return false // "bar seven there's ants on it"
	case f.what == "foul_smell" && !f.present:
		return !ofBar
	case !f.present && (s.startsThere() || s.at(0).is(kNo) && s.at(0).pause == none):
		return true // "there is no wax moth"
	case s.headed:
		denied := !f.present && f.what != "small_hive_beetle" // "bar 9 mould no mice no dysentery"
		return hiveSigns[f.what] && !s.here && (denied || s.combBefore(f))
	}
	return hiveSigns[f.what] || !f.present && !s.here && !ofBar
}

// offBars reports whether what is told at item i is in a place of the hive that is no comb:
// "on the floor chalk mummies", "burr comb under the lid".
func (s *scan) offBars(i int) bool {
	for k := max(1, i-4); k < len(s.c.items) && k <= i+5; k++ {
		place := k
		for place > 1 && s.at(place-1).is(kArt) {
			place--
		}
		if lead := s.at(place - 1); (lead.is(kOn) || s.r.isWord(lead, s.r.wordsOf[upOrUnder]...)) && s.r.isWord(s.at(k), s.r.wordsOf[besideCombs]...) {
			return true
		}
	}
	return false
}

// offComb are signs that no bar can show.
var offComb = map[string]bool{"robbing": true, "mice": true, "bearding": true, "queenless_roar": true}

// combBefore reports whether the clause has said what is on the comb already, so
// that ants and the like are an afterthought.
func (s *scan) combBefore(f *finding) bool {
	for _, other := range s.found {
		if other.class == ofComb && other.at < f.at {
			return true
		}
	}
	return s.combSpoken // "bar 11 is bare, a few beetles"
}

// hiveSigns are seen about the hive; the bar in hand has no part in them.
var hiveSigns = map[string]bool{"wasps": true, "ants": true, "dead_bees": true, "dysentery": true, "small_hive_beetle": true}

// speaksOfColony: "eggs and larvae present", "we saw eggs".
func (s *scan) speaksOfColony() bool {
	for k := range s.c.items {
		it := s.at(k)
		if it.any3(kSeen, kPron, kBees) && !s.here {
			text := it.text
			return text != "it"
		}
	}
	return false
}

// thereIs: "there were eggs" begins a sentence about the colony, where the bar
// in hand only placed the queen or the like.
func (s *scan) thereIs() bool {
	return len(s.c.items) > 1 && s.at(0).text == "there" && s.at(1).is(kBe)
}

// startsThere reports whether the clause begins with "there is", or "and there's no" that
// goes on about no bar.
func (s *scan) startsThere() bool {
	first := s.at(0)
	if first.is(kAnd) && len(s.c.items) > 1 && !s.here {
		first = s.at(1)
	}
	return strings.HasPrefix(first.text, "there")
}

// leansBack: a line that begins with "and", "it" or "there" goes on about the
// bar in hand.
func (s *scan) leansBack() bool {
	first, told := s.at(0), s.r.told
	text := first.text
	if n := len(told); n > 2 && (told[0].is(kNum) && told[0].n.share && told[1].is(kOf) && told[2].isWord2("it", "that") || told[n-1].is(kBe) && told[n-2].text == "it" && told[n-2].pause == none) {
		return true // "two thirds of it, I'd say", "old black comb it is"
	}
	return first.is(kAnd) || text == "it" || text == "also"
}

// allThose reports whether the clause begins with bars named before, as many as it
// tells: "We took bars 8 and 9. Both were capped honey", "they were full of pollen".
func (s *scan) allThose() bool {
	r, first, next := s.r, s.at(0), s.at(1)
	if len(r.bars) < 2 || next == nil || next.pause > none || !next.any3(kBe, kHave, kFull) {
		return false
	}
	switch {
	case first.isWord3("they", "these", "those"): // the bees have honey, but are not honey
		after := s.at(2)
		return r.spokeOf.deed == r.sentenceNo-1 && next.is(kBe) && after != nil && after.any4(kFull, kContent, kAmount, kAdv)
	case first.isWord2("both", "both of them"):
		return len(r.bars) == 2
	case first.is(kEach):
		n := r.numbers.of(r.mended[first.to-1].id)
		return n.kind != unitWord || int(n.value) == len(r.bars)
	}
	return false
}

// compared: "less nectar than next door" is said of the colony.
func (s *scan) compared() bool {
	for k := 0; !s.headed && k < len(s.c.items); k++ {
		if s.c.items[k].text == "than" {
			return true
		}
	}
	return false
}

// wholeAt: "no eggs anywhere" is said of the colony; the cue covers the
// findings just named, or what follows where none is.
func (s *scan) wholeAt(i int) {
	it := s.at(i)
	if next := s.at(i + 1); next != nil && next.pause == none && next.is(kWord) && it.isWord3("in all", "all", "in total") {
		return // "pollen in all colours"
	}
	if next := s.at(i + 1); next != nil && next.pause == none && next.is(kShe) && it.isWord4("all round", "all around", "all about", "around") {
		return // "with eggs all round her"
	}
	if strings.HasPrefix(it.text, "that ") && (s.r.sameSentence && s.r.headedBars || s.no < 0) {
		return // "bar four has brood but no eggs that I could see"
	}
	it.used = true
	n := len(s.found)
	if n > s.bound && s.headed && s.found[n-1].present && it.isWord2("throughout", "all through") {
		return // "bar 7, sealed brood throughout": of its comb
	}
	if n == s.bound {
		s.whole = true
		return
	}
	for k := s.found[n-1].at + 1; k < i; k++ {
		if s.at(k).any4(kLeaf, kBees, kQueen, kTemper) {
			return // "brood on bar five, and drones on every comb"
		}
	}
	if s.ofThoseTold(i) {
		for k := s.bound; k < n; k++ {
			s.found[k].bars, s.found[k].located = s.r.bars, true
		}
		return
	}
	for k := n - 1; k >= s.bound && (s.found[k].list == s.found[n-1].list || s.deniedWith(s.found[k], s.found[k+1])); k-- {
		s.found[k].whole = true
	}
}

// deniedWith reports whether one finding is denied right before another: "no eggs no
// larvae anywhere".
func (s *scan) deniedWith(a, b *finding) bool {
	return !a.present && !b.present && s.onlyBetween(a.at, b.at, kNo, kAdv, kAnd, kOr)
}

// ofThoseTold reports whether "on any of them" at item i, behind what is denied, means the
// bars that the sentence has told: "the nest is bars four to six, no eggs on any of them".
func (s *scan) ofThoseTold(i int) bool {
	words := s.at(i).text
	these := strings.HasSuffix(words, " of these") || strings.HasSuffix(words, " of those")
	them := strings.HasSuffix(words, " of them") || strings.HasSuffix(words, " of em")
	if !these && !(them && s.r.sameSentence) || len(s.r.bars) < 2 || s.r.inHand == noBar {
		return false
	}
	for _, f := range s.found[s.bound:] {
		if f.present || f.located {
			return false
		}
	}
	return true
}
