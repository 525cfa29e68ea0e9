package parse

import (
	"slices"
	"strconv"
	"strings"
)

// bar takes a reference to bars: the head of what follows, or the place of
// what went before.
func (s *scan) bar(i int) {
	it, r := s.at(i), s.r
	if it.taken && !s.takenHolds(i) {
		return
	}
	it.used = true
	if it.mended {
		r.mendedBars = append(r.mendedBars, it.bars...)
	}
	if as := s.at(i - 1); as != nil && s.r.isWord(as, "as") && s.headed && i >= 2 && s.at(i-2).is(kBars) {
		s.copyFrom(s.r.saidOf.about(it.bars[0]), as) // "bar six: as bar five"
		return
	}
	waiting := s.found[s.bound:]
	if len(waiting) == 0 && s.alsoOn(i) {
		return
	}
	head := i == 0 || r.heads(s.c.items, i)
	if head && len(waiting) > 0 && !s.headed && s.closes(i) && it.pause == none {
		head = false // "eggs b5", "drone brood bar nine."
	}
	if !head && i > 1 && s.at(i-1).is(kOf) && s.at(i-2).is(kBar) && it.pause == none {
		head = len(waiting) > 0 && s.pausedBetween(waiting[len(waiting)-1].at, i) // "beetles everywhere, and the comb of bar 2 …"
	}
	if !head {
		bars := it.bars
		if s.thereToo(i) {
			bars = append(slices.Clone(r.bars), bars...)
		}
		for _, f := range s.reaches(waiting, i) {
			f.bars, f.located = bars, true
			f.items = append(f.items, it)
		}
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
	} else {
		s.before = modifiers{}
	}
	s.no = -1
	if head && len(waiting) == 0 {
		r.inHand = awaiting
		s.goesOn(i)
	}
}

// goesOn carries what the sentence began with on to further bars, of which it tells
// only how much and where: "Eggs b5 (both sides), b6 (one side)".
func (s *scan) goesOn(i int) {
	f := s.r.labelled
	if f == nil || i > 0 || s.at(0).pause != comma && !(s.at(0).pause == none && f.items[0].colon) {
		return
	}
	for k := i + 1; k < len(s.c.items); k++ {
		if it := s.at(k); !it.anyOf(extents) || it.is(kNum) && !it.n.share {
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

// shareOfBar reports whether the share before the bars at item i is one of them.
func (s *scan) shareOfBar(i int) bool {
	of := s.at(i - 1)
	return of != nil && (s.before.at == i-1 && strings.HasSuffix(of.text, " of") || s.before.at == i-2 && of.is(kOf))
}

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

// thereToo: "eggs there and on bar five" places them on the bar in hand as well.
func (s *scan) thereToo(i int) bool {
	return i > 2 && s.at(i-1).is(kOn) && s.at(i-2).is(kAnd) && (s.at(i-3).is(kThere) || s.at(i-3).is(kBar) && s.here) && len(s.r.bars) == 1
}

// takenHolds: what was on bars that are gone can be told behind them.
func (s *scan) takenHolds(i int) bool {
	if s.r.deedSentence != s.r.sentenceNo || i+1 >= len(s.c.items) || !s.r.describesBars(s.c.items, i+1) {
		return false
	}
	_, do, _ := strings.Cut(s.r.lastDeed, ".")
	return do == "harvest" || do == "remove_bar"
}

// barelyApart reports whether only a comma and little words part two findings
// of a clause that named no bar before.
func (s *scan) barelyApart(a, b *finding) bool {
	if s.headed || a.class != b.class || a.class == ofSign && a.hasCount && s.pausedBetween(a.at, b.at) {
		return false // "two bees with deformed wings, sacbrood on bar six"
	}
	return s.onlyBetween(a.at, b.at, kAnd, kOr, kAdv, kArt, kPattern, kAmount, kNum, kFull, kNo, kStage, kCellKind, kPlace, kSide, kContent, kBut)
}

// onSoMany: "brood on five bars" counts the bars of what stands before.
func (s *scan) onSoMany(i int) {
	waiting := s.found[s.bound:]
	for _, f := range waiting {
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
	if f.class != ofComb || !f.present || f.located || f.counted.lo > 0 || f.at != i-2 {
		return false
	}
	f.counted = *s.num
	f.items = append(f.items, s.at(i-1), s.at(i))
	s.num = nil
	return true
}

// reaches are the findings that a place named behind them belongs to: back to
// where denial turns into finding ("no eggs, no larvae, sealed brood on bar
// four").
func (s *scan) reaches(waiting []*finding, i int) []*finding {
	waiting = s.pastHer(waiting, i)
	if s.headed {
		return s.afterTurn(waiting)
	}
	for k := len(waiting) - 1; k > 0; k-- {
		if waiting[k-1].present != waiting[k].present || waiting[k-1].list != waiting[k].list && !s.barelyApart(waiting[k-1], waiting[k]) {
			return waiting[k:]
		}
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
// another reference follows, at most behind how much and where: "capped brood 7
// and 8 both sides".
func (s *scan) closes(i int) bool {
	for next := s.at(i + 1); next != nil && next.pause == none && next.any3(kSide, kPlace, kFull) && !next.any(kContent, kState); next = s.at(i + 1) {
		i++
	}
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
	r.bars, r.last = bars, last
}

// step moves to the next bar in the direction of travel.
func (s *scan) step(i int) {
	it, r := s.at(i), s.r
	back := it.is(kPrev) == (r.step > 0)
	if r.last == 0 || back && r.last <= 1 || it.is(kSkip) && r.step < 0 && r.last <= 2 {
		return // no bar hangs there
	}
	it.used = true
	waiting := s.found[s.bound:]
	there := waiting[len(waiting):]
	if on := s.at(i - 1); on != nil && on.is(kOn) {
		there = s.reaches(waiting, i)
	}
	s.settle(waiting[:len(waiting)-len(there)])
	s.bound = len(s.found)
	switch {
	case it.is(kSkip) && !s.tellsWhy(i):
		r.last += r.step
		r.inHand = thisLine
		r.bars = []int{r.last + r.step}
		r.last += r.step
	case it.is(kPrev):
		r.bars = []int{r.last - r.step}
		r.last -= r.step
	default:
		r.bars = []int{r.last + r.step}
		r.last += r.step
	}
	for _, f := range there { // "lots of larvae on the next one"
		f.bars, f.located = r.bars, true
	}
	r.inHand = awaiting
	if len(there) > 0 {
		r.inHand = thisLine
	}
	r.stepped = true
	s.headed, s.sideFirst = true, ""
	s.no = -1
	s.before = modifiers{}
}

// tellsWhy: "skip one because it's stuck to the wall" goes on about the bar that
// is left out.
func (s *scan) tellsWhy(i int) bool {
	next := int(s.at(i).to)
	if next >= len(s.r.mended) {
		return false
	}
	switch s.r.words.words[s.r.mended[next].id] {
	case "because", "cause", "cos", "since", "as", "which", "that", "it":
		return s.r.mended[next].pause <= comma
	}
	return false
}

// except takes a bar out of what was just said of several: "bars one to three
// capped honey except two".
func (s *scan) except() {
	f, next := s.r.lastContent, s.at(1)
	if f == nil || next == nil || len(f.bars) < 2 {
		return
	}
	out := next.bars
	if barNumber(next) && next.is(kNum) {
		out = []int{int(next.n.lo)}
	}
	for _, b := range out {
		if slices.Contains(f.bars, b) {
			s.r.cur.drop(s.r.barPath(b, f.what))
			next.used, next.taken = true, true
			s.r.take([]int{b}, true)
			s.r.inHand = thisLine
		}
	}
}

func (s *scan) contentFollows(i int) bool {
	for k := i + 1; k < len(s.c.items); k++ {
		it := s.at(k)
		if it.is(kContent) && !it.is(kSame) {
			return true
		}
		if it.is(kBars) {
			return false
		}
	}
	return false
}

// same copies what was said of the bar before, or of the bar named after "as".
func (s *scan) same(i int) {
	it, r := s.at(i), s.r
	ofBar := i > 0 && s.at(i-1).any3(kBars, kAdv, kBut) && s.onlyBetween(-1, i, kBars, kBe, kAdv, kBut) && s.headed // "bar five just the same, bless them"
	if next := s.at(i + 1); next != nil && next.pause == none && next.any3(kWord, kDate, kBar) && !(ofBar && next.is(kWord) && !r.isWord(next, "colour", "color", "size", "shape", "way", "time", "place", "week", "day", "age", "length")) && !r.isWord(next, "both", "as", "for", "again", "three") {
		return // "the same day"
	}
	if strings.Contains(it.text, "so ") {
		s.soAre(i)
		return
	}
	from := s.saidLast()
	it.used = true
	for k := i + 1; k < len(s.c.items) && k <= i+3; k++ {
		ref := s.at(k)
		if ref.any(kNext, kPrev) && s.onlyBetween(i, k, kAdv, kOn, kArt, kAnd) {
			s.step(k) // "same again on the next one"
		}
		if ref.is(kBars) {
			from = r.saidOf.about(ref.bars[0])
			ref.used, ref.taken = true, true
		}
	}
	s.copyFrom(from, it)
}

// soAre copies what was just said to the bars behind "and so are"; "and so do I"
// copies nothing.
func (s *scan) soAre(i int) {
	it, next := s.at(i), s.at(i+1)
	if next == nil || !next.is(kBars) {
		return
	}
	s.settle(s.found[s.bound:])
	from := s.saidLast()
	it.used, next.used, next.taken = true, true, true
	s.r.take(next.bars, len(next.bars) == 1)
	s.copyFrom(from, it)
}

// saidLast is what was said of the bar that was spoken of last, in this clause or
// before it.
func (s *scan) saidLast() []*finding {
	var here []*finding
	for k := len(s.found) - 1; k >= 0; k-- {
		f := s.found[k]
		if len(f.bars) == 0 || len(here) > 0 && !slices.Equal(f.bars, here[0].bars) {
			break
		}
		here = append(here, f)
	}
	if len(here) == 0 {
		return s.r.lastFind
	}
	slices.Reverse(here)
	return here
}

// copyFrom writes what was said of another bar to the bars in hand.
func (s *scan) copyFrom(from []*finding, it *item) {
	r := s.r
	if len(from) == 0 || len(r.bars) == 0 {
		return
	}
	for _, f := range from {
		twin := *f
		twin.bars, twin.located = slices.Clone(r.bars), true
		twin.items = []*item{it}
		twin.doubts = []string{"copied from another bar"}
		if f.class == ofComb {
			s.found = append(s.found, &twin)
		}
	}
	s.bound = len(s.found)
}

// besideHer is the queen's bar where a content is said to lie beside her, else
// 0.
func (s *scan) besideHer(i int) int {
	next, her := s.at(i+1), s.at(i+2)
	if next == nil || her == nil || !her.is(kShe) || !next.any(kAfter, kOn) && !s.r.isWord(next, "around", "round", "near") {
		return 0
	}
	v, _ := s.r.cur.get("queen.bar")
	n, _ := strconv.Atoi(v)
	return n
}

// shareOfBefore: "bars 9 to 12 honey, 12 only half full": a bar named again with
// a share alone says how much of what it holds.
func (s *scan) shareOfBefore() {
	r := s.r
	if !s.before.hasCover || len(s.found) > 0 || !s.headed || s.combSpoken {
		return
	}
	for _, b := range r.bars {
		said := r.saidOf.about(b)
		if len(said) == 0 || said[len(said)-1].class != ofComb || said[len(said)-1].hasCover {
			continue
		}
		r.cur.put(r.paths.under(r.barPath(b, said[len(said)-1].what), "cover"), formatNumber(s.before.cover), r.why("share", "", s.before.items...))
	}
}

// fewSaid is the number of findings that there is room for when a bar is spoken
// of; most hold no more.
const fewSaid = 2

// remember keeps what was said of a bar for "same again".
func (r *reader) remember(f *finding) {
	for _, b := range f.bars {
		said := r.saidOf.about(b)
		if r.saidBar != b {
			if len(said) == 0 || r.inHand != thisLine {
				said = r.said.take(fewSaid)[:0]
			}
			r.saidBar = b
		}
		r.lastFind = append(said, f)
		r.saidOf.keep(b, r.lastFind)
	}
}

// talk is what was said of each bar, by its number.
type talk [][]*finding

func (t talk) about(bar int) []*finding {
	if bar < len(t) {
		return t[bar]
	}
	return nil
}

func (t *talk) keep(bar int, said []*finding) {
	for len(*t) <= bar {
		*t = append(*t, nil)
	}
	(*t)[bar] = said
}

func (t *talk) forget() {
	clear(*t)
	*t = (*t)[:0]
}
