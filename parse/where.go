package parse

import (
	"slices"
	"strconv"
)

// bar takes a reference to bars: the head of what follows, or the place of
// what went before.
func (s *scan) bar(i int) {
	it, r := s.at(i), s.r
	if it.taken {
		return
	}
	it.used = true
	if it.mended {
		r.mendedBars = append(r.mendedBars, it.bars...)
	}
	waiting := s.found[s.bound:]
	if s.barsAlike(i) || s.onOneOf(i) || len(waiting) == 0 && s.alsoOn(i) {
		return
	}
	head := s.headsHere(i, waiting)
	if !head {
		s.placeOn(i, waiting)
	}
	s.settle(waiting)
	s.bound = len(s.found)
	r.take(it.bars, len(it.bars) == 1)
	r.inHand = thisLine
	r.sameSentence = true
	s.headed, s.sideFirst = head, ""
	r.headedBars = head
	if s.before.hasCover && s.shareOfBar(i) {
		s.before.at = i // "a third of bar five is honey"
		s.shareHereToo(i)
	} else {
		s.before = modifiers{}
	}
	s.no = -1
	if head && len(waiting) == 0 {
		r.inHand = awaiting
		s.goesOn(i)
	}
}

// barsAlike copies to the bars at item i what was said of others: "as are 7 and 8".
func (s *scan) barsAlike(i int) bool {
	if !asAre(s.c.items, i) {
		return false
	}
	s.alike(i, s.at(i-1))
	return true
}

// headsHere reports whether the bars at item i begin what is said of them; if not, they are
// those of the findings that wait for bars.
func (s *scan) headsHere(i int, waiting []*finding) bool {
	if i == 0 || s.r.heads(s.c.items, i) {
		placesThem := len(waiting) > 0 && !s.headed && s.at(i).pause == none && s.closes(i) // "eggs b5", "drone brood bar nine."
		if !placesThem {
			return true
		}
	}
	return s.combOfAnother(i, waiting) || s.shareOfAnother(i, waiting) || s.anotherCell(i, waiting)
}

// combOfAnother: "beetles everywhere, and the comb of bar 2 …".
func (s *scan) combOfAnother(i int, waiting []*finding) bool {
	ofBar := i > 1 && s.at(i-1).is(kOf) && s.at(i-2).is(kBar) && s.at(i).pause == none
	return ofBar && len(waiting) > 0 && s.pausedBetween(waiting[len(waiting)-1].at, i)
}

// shareOfAnother: "a third of bar five is honey and half of bar six is pollen".
func (s *scan) shareOfAnother(i int, waiting []*finding) bool {
	return (s.headed || len(waiting) == 0) && s.before.hasCover && s.shareOfBar(i) && s.contentAhead(i)
}

// anotherCell: "on bar 5 a capped cell and on bar 6 another".
func (s *scan) anotherCell(i int, waiting []*finding) bool {
	return len(waiting) > 0 && waiting[len(waiting)-1].class == ofCells && s.countsMore(i+1)
}

// placeOn gives the findings that wait for bars those at item i: "eggs and larvae on bar 5".
func (s *scan) placeOn(i int, waiting []*finding) {
	it := s.at(i)
	bars := it.bars
	if s.thereToo(i) {
		bars = append(slices.Clone(s.r.bars), bars...)
	}
	for _, f := range s.reaches(waiting, i) {
		if f.whole && !f.present && !s.onlyBetween(f.at, i, kWhole, kOn, kArt, kAdv) {
			continue // "not an egg anywhere the queen is on bar three"
		}
		if s.partedFrom(f, i) {
			continue
		}
		f.bars, f.located = bars, true
		f.items = append(f.items, it)
	}
}

// partedFrom reports whether a sign about the hive is parted from the bars at item i by a comma
// and by what those bars are named for: "ants on the stand, and the comb on bar 3 is broken".
func (s *scan) partedFrom(f *finding, i int) bool {
	if f.class != ofSign || !f.present || !hiveSigns[f.what] && !offComb[f.what] {
		return false
	}
	named := false
	for k := i - 1; k > f.at; k-- {
		named = named || s.at(k).any3(kContent, kBar, kComb)
		if named && s.at(k).pause >= comma {
			return true
		}
	}
	return false
}

// goesOn carries what the sentence began with on to further bars, of which it tells
// only how much and where: "Eggs b5 (both sides), b6 (one side)", "Brood: bar 4, patchy;
// bar 6, solid".
func (s *scan) goesOn(i int) {
	f := s.r.labelled
	if f == nil || i > 0 || s.at(0).pause != comma && !(s.at(0).pause <= colon && f.items[0].colon) {
		return
	}
	for k := i + 1; k < len(s.c.items); k++ {
		it := s.at(k)
		if k > i+1 && it.pause == comma && it.any(kHave, kWithX) {
			break // "patchy, with drone brood"
		}
		if !it.anyOf(extents) || it.is(kNum) && !it.n.share {
			return
		}
	}
	twin := *f
	twin.bars, twin.located, twin.extent, twin.at, twin.items = s.at(i).bars, true, extent{}, i, append(s.r.these(s.at(i)), f.items...)
	s.found = append(s.found, &twin)
	s.bound = len(s.found)
}

// extents are the kinds of words that tell how much there is and where.
var extents = setOf(kNum, kSide, kFull, kAmount, kPattern, kPlace, kAdv, kOn, kOf)

// alsoOn: "eggs on bar five and on bar six" places the same on both.
func (s *scan) alsoOn(i int) bool {
	on, and, it := s.at(i-1), s.at(i-2), s.at(i)
	if on == nil || and == nil || !on.is(kOn) || !and.is(kAnd) || len(s.found) == 0 || !s.closes(i) {
		return false
	}
	last := s.found[len(s.found)-1]
	if len(last.bars) == 0 || !s.onlyBetween(last.at, i, kOn, kBars, kAnd, kThere, kAdv) {
		return false
	}
	s.spreadBack(last, func(f *finding) {
		f.bars = append(slices.Clone(f.bars), it.bars...)
		f.items = append(f.items, it)
	})
	s.r.take(it.bars, len(it.bars) == 1)
	return true
}

// onOneOf: "honey on bars nine and ten, on ten at the top" tells more of one of the bars that
// were named together.
func (s *scan) onOneOf(i int) bool {
	it, on, n := s.at(i), s.at(i-1), len(s.found)-1
	if n < 0 || on == nil || !on.is(kOn) || on.pause != comma && (on.pause > none || !s.at(i-2).any(kAnd, kBut)) {
		return false
	}
	last := s.found[n]
	whole := last.bars
	if len(whole) == 0 && s.headed {
		whole = s.r.bars
	}
	if last.class != ofComb || !last.present || len(it.bars) >= len(whole) {
		return false
	}
	for _, b := range it.bars {
		if !slices.Contains(whole, b) {
			return false
		}
	}
	k := i + 1
	for ; k < len(s.c.items) && (k == i+1 || s.at(k).pause < comma); k++ {
		if more := s.at(k); !more.anyOf(extents) && !more.is(kArt) && more.text != "only" || more.is(kNum) && !more.n.share && !more.is(kSide) && !more.n.article {
			return false
		}
	}
	if k == i+1 {
		return false
	}
	last.bars, last.located = whole, true
	twin := *last
	twin.bars, twin.extent, twin.at, twin.items = it.bars, extent{}, i, append(s.r.these(it), last.items...)
	s.settle(s.found[s.bound:])
	s.found = append(s.found, &twin)
	s.bound = len(s.found)
	it.used = true
	s.before, s.no = modifiers{}, -1
	return true
}

// thereToo: "eggs there and on bar five" places them on the bar in hand as well.
func (s *scan) thereToo(i int) bool {
	return i > 2 && s.at(i-1).is(kOn) && s.at(i-2).is(kAnd) && (s.at(i-3).is(kThere) || s.at(i-3).is(kBar) && s.here) && len(s.r.bars) == 1
}

// barelyApart reports whether only a comma and little words part two findings
// of a clause that named no bar before.
func (s *scan) barelyApart(a, b *finding) bool {
	if s.headed || a.class != b.class || a.ofItself() && s.pausedBetween(a.at, b.at) {
		return false // "two bees with deformed wings, sacbrood on bar six", "ants, sacbrood on bar six"
	}
	return s.onlyBetween(a.at, b.at, kAnd, kOr, kAdv, kArt, kPattern, kAmount, kNum, kFull, kNo, kStage, kCellKind, kPlace, kSide, kContent, kBut)
}

// onSoMany: "brood on five bars" counts the bars of what stands before.
func (s *scan) onSoMany(i int) {
	waiting := s.found[s.bound:]
	for k, f := range waiting {
		if k < len(waiting)-1 && f.amount != "" {
			continue // "a little capped brood, honey on three bars"
		}
		if f.class == ofComb && !f.located && f.list == waiting[len(waiting)-1].list {
			f.counted = s.at(i).n
			f.items = append(f.items, s.at(i))
		}
	}
}

// barsOfBefore: "honey 3 bars, pollen 2 bars" counts the bars of what stands
// right before, where nothing follows that they could be bars of.
func (s *scan) barsOfBefore(i int) bool {
	next := s.at(i + 1)
	if next != nil && next.pause < comma && !next.is(kAnd) || s.headed || len(s.found) == 0 {
		return false
	}
	f := s.found[len(s.found)-1]
	if f.class != ofComb || !f.present || f.located || f.counted.lo > 0 || f.at != i-2 && !s.spreadOver(f.at+1, i-1) {
		return false
	}
	n := *s.num
	s.spreadBack(f, func(f *finding) {
		f.counted = n
		f.items = append(f.items, s.at(i-1), s.at(i))
	})
	s.num = nil
	return true
}

// spreadOver reports whether the items from one to before another tell that what stands
// before them lies over so many bars: "brood spread across six bars", "brood in five bars".
func (s *scan) spreadOver(from, to int) bool {
	if from < to && s.at(from).isWord6("spread", "spreads", "stretches", "stretching", "runs", "running") {
		from++
	}
	return from+1 == to && s.at(from).isWord5("over", "across", "along", "through", "in")
}

// reaches are the findings that a place named behind them belongs to: back to
// where denial turns into finding ("no eggs, no larvae, sealed brood on bar
// four").
func (s *scan) reaches(waiting []*finding, i int) []*finding {
	waiting = s.pastCounted(s.pastHer(waiting, i), len(s.at(i).bars))
	if s.headed {
		return s.afterTurn(waiting)
	}
	for k := len(waiting) - 1; k > 0; k-- {
		if waiting[k-1].class == ofSign && waiting[k].class == ofComb && s.r.sameSentence && s.r.bars != nil {
			return waiting[k:] // "bar 4 has eggs, so it's laying workers, and drone brood over five and six"
		}
		if waiting[k-1].present != waiting[k].present || waiting[k-1].list != waiting[k].list && !s.barelyApart(waiting[k-1], waiting[k]) {
			return waiting[k:]
		}
	}
	return waiting
}

// pastCounted leaves out what is on so many bars, where another number of bars is named, and
// what stands with it before the last pause: "five bars of sealed brood and plenty of pollen,
// and honey on bars 9 and 10". What is joined to it right before the bars was not counted.
func (s *scan) pastCounted(waiting []*finding, bars int) []*finding {
	last := len(waiting) - 1
	if last < 1 || waiting[last].class != ofComb {
		return waiting
	}
	for k := last - 1; k >= 0; k-- {
		f := waiting[k]
		if f.class != ofComb || f.counted.lo == 0 || f.counted.hi > 0 || int(f.counted.lo) == bars || len(f.bars) > 0 {
			continue
		}
		from := k + 1
		for n := last; n > from; n-- {
			if s.pausedBetween(waiting[n-1].at, waiting[n].at) {
				from = n
				break
			}
		}
		for n := from; n <= last; n++ {
			waiting[n].counted = quantity{}
		}
		return waiting[from:]
	}
	return waiting
}

// afterTurn are the findings behind the last comma, or else the last "and", of a
// clause that began with bars of its own: "bars 5 and 6 sealed brood, and eggs on
// bar 7". All of them are where nothing parts them.
func (s *scan) afterTurn(waiting []*finding) []*finding {
	if n := len(waiting) - 1; n > 0 && !s.adjacentAnd(waiting[n-1].at, waiting[n].at) {
		return waiting[n:]
	}
	turn := 0
	for k := len(waiting) - 1; k > 0; k-- {
		if s.pausedBetween(waiting[k-1].at, waiting[k].at) {
			return waiting[k:]
		}
		if turn == 0 {
			turn = k
		}
	}
	return waiting[turn:]
}

// pastHer leaves out what a pause parts from the queen, where the place is hers:
// "all stages of brood, and the queen on bar 6", "eggs on five bars, QS on bar 6".
func (s *scan) pastHer(waiting []*finding, i int) []*finding {
	for k := i - 1; k >= 0; k-- {
		if !s.at(k).is(kQueen) && !s.at(k).lists.has(queenInView) {
			continue
		}
		for n, f := range waiting {
			if f.at < k && (s.headed || s.pausedBetween(f.at, k)) {
				continue
			}
			return waiting[n:]
		}
		return nil
	}
	return waiting
}

// pausedBetween reports whether a pause parts two items of the clause.
func (s *scan) pausedBetween(from, to int) bool {
	for k := from + 1; k <= to && k < len(s.c.items); k++ {
		if s.at(k).pause >= comma {
			return true
		}
	}
	return false
}

// closes reports whether the reference ends its phrase: a pause, the end, or
// another reference follows: "capped brood 7 and 8".
func (s *scan) closes(i int) bool {
	next := s.at(i + 1)
	return next == nil || next.pause >= comma || next.any(kBars, kAnd, kBut, kThen, kColour, kDot, kQueenIs, kQueen)
}

// take puts bars in hand and learns the direction of travel.
func (r *reader) take(bars []int, single bool) {
	if len(bars) == 0 {
		return
	}
	first, last := bars[0], bars[len(bars)-1]
	if r.last != 0 && first != r.last {
		if first > r.last {
			r.step = 1
		} else if first == r.last-1 || single && r.step < 0 {
			r.step = -1
		}
	}
	if r.last == 0 && r.endsRow(first) {
		r.step = -1 // "nine bars in use, bar nine is bare, the next one has honey"
	}
	r.bars, r.last, r.skippedTo = bars, last, 0
}

// endsRow reports whether a bar is known to be the last of the hive, so that the count goes
// down from it.
func (r *reader) endsRow(bar int) bool {
	if bar <= 1 {
		return false
	}
	for _, path := range [...]string{"bars_total", "follower.bar"} {
		if v, ok := r.cur.get(path); ok && v == strconv.Itoa(bar) {
			return true
		}
	}
	return false
}

// besideHer is the queen's bar where a content is said to lie beside her, else
// 0.
func (s *scan) besideHer(i int) int {
	next, her := s.at(i+1), s.at(i+2)
	if next == nil || her == nil || !her.is(kShe) || !next.any(kAfter, kOn) && !next.isWord3("around", "round", "near") {
		return 0
	}
	v, _ := s.r.cur.get("queen.bar")
	n, _ := strconv.Atoi(v)
	return n
}
