package parse

import (
	"slices"
	"strings"
)

// What is said of one bar is said of another as well: the next one, the same again, so
// is bar six.

// step moves to the next bar in the direction of travel.
func (s *scan) step(i int) {
	it, r := s.at(i), s.r
	back := it.is(kPrev) == (r.step > 0)
	if r.last == 0 || back && r.last <= 1 || it.is(kSkip) && r.step < 0 && r.last <= 2 {
		return // no bar hangs there
	}
	it.used = true
	shared := s.goesOnTo(i)
	waiting := s.found[s.bound:]
	there := waiting[len(waiting):]
	if on := s.at(i - 1); on != nil && on.is(kOn) {
		there = s.reaches(waiting, i)
	}
	s.settle(waiting[:len(waiting)-len(there)])
	s.bound = len(s.found)
	switch {
	case r.skippedTo == r.last && r.inHand == awaiting && it.is(kNext):
		// "skip one, the next one has eggs": it is that one already
	case it.is(kSkip) && !s.tellsWhy(i):
		r.bars = []int{r.last + 2*r.step}
		r.last += 2 * r.step
		r.skippedTo = r.last
	case it.is(kPrev):
		r.bars = []int{r.last - r.step}
		r.last -= r.step
	default:
		s.stepOn(i)
	}
	for _, f := range there { // "lots of larvae on the next one"
		f.bars, f.located = r.bars, true
	}
	r.inHand = awaiting
	r.stepped = true
	s.headed, s.sideFirst = true, ""
	s.no = -1
	s.before = modifiers{}
	s.shareWith(shared, it)
}

// goesOnTo is what was said of the bar in hand where it is said in the same breath of the
// next, at item i, of which nothing else is told: "eggs on bar 8 and the one behind it".
func (s *scan) goesOnTo(i int) []*finding {
	it, k := s.at(i), i-1
	if k >= 0 && s.at(k).is(kOn) {
		k--
	}
	joined := strings.HasPrefix(it.text, "and ") || k >= 0 && s.at(k).is(kAnd)
	if !joined || it.is(kSkip) {
		return nil
	}
	for k := i + 1; k < len(s.c.items); k++ {
		if next := s.at(k); !next.is(kAdv) && !next.isWord3("too", "as well", "also") && !(k == i+1 && next.text == "one") {
			return nil
		}
	}
	if s.goesOnBehind() {
		return nil // "and the next one no eggs"
	}
	s.settle(s.found[s.bound:])
	s.bound = len(s.found)
	return s.saidLast()
}

// goesOnBehind reports whether the sentence goes on behind the clause, with other than a bar.
func (s *scan) goesOnBehind() bool {
	r, next := s.r, int(s.at(len(s.c.items)-1).to)
	if next >= len(r.mended) || r.mended[next].pause >= stop {
		return false
	}
	return r.words.words[r.mended[next].id] != "bar"
}

// stepOn takes the next bar in the direction of travel, or the next several: "the next two",
// "the next one and the one after that".
func (s *scan) stepOn(i int) {
	r := s.r
	bars := r.bars[:0:0]
	if s.togetherWith(i) {
		bars = slices.Clone(r.bars)
	}
	for range s.nextHowMany(i) {
		if r.last+r.step < 1 {
			break
		}
		r.last += r.step
		bars = append(bars, r.last)
	}
	r.bars = bars
}

// togetherWith reports whether the next, at item i, is told together with the bar named
// right before it: "the next one and the one after that", "bar 4 and the next are bare".
func (s *scan) togetherWith(i int) bool {
	k := i - 1
	if k > 0 && s.at(k).is(kAnd) {
		k--
	} else if !strings.HasPrefix(s.at(i).text, "and ") {
		return false
	}
	return k >= 0 && (s.at(k).is(kNext) || s.at(k).is(kBars) && len(s.found) == 0 && i+1 < len(s.c.items))
}

// nextHowMany is how many bars "the next" at item i is said of.
func (s *scan) nextHowMany(i int) int {
	switch {
	case strings.Contains(s.at(i).text, " two "):
		return 2
	case strings.Contains(s.at(i).text, " three "):
		return 3
	}
	count := s.at(i + 1)
	if count == nil || !barNumber(count) || count.pause > none || count.n.ordinal || count.n.hi > 0 || count.n.lo >= manyBars || count.n.lo < 2 {
		return 1
	}
	count.used = true
	if noun := s.at(i + 2); noun != nil && noun.is(kBar) && noun.pause == none {
		noun.used = true
	}
	return int(count.n.lo)
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
	if next := s.at(i + 1); next != nil && next.pause == none && next.any3(kWord, kDate, kBar) && !(ofBar && next.is(kWord) && !r.isWord(next, r.wordsOf[likenesses]...)) && !next.isWord5("both", "as", "for", "again", "three") {
		return // "the same day"
	}
	if prev := s.at(i - 1); it.text == "do" && prev != nil && it.pause == none && prev.any5(kPron, kNo, kBees, kShe, kAdv) {
		return // "I never do", and no ditto
	}
	if saysSoOf(it) || s.dittoFor(i) {
		s.soAre(i)
		return
	}
	if s.ofTheSame(i) || s.likewise(i) {
		it.used = true
		return
	}
	to := s.sameTo(i)
	if to != nil {
		s.settle(s.found[s.bound:])
	}
	from, like := s.saidLast(), r.combOf
	it.used = true
	for k := i + 1; k < len(s.c.items) && k <= i+3; k++ {
		ref := s.at(k)
		if ref.any(kNext, kPrev) && s.onlyBetween(i, k, kAdv, kOn, kArt, kAnd) {
			s.step(k) // "same again on the next one"
		}
		if ref.is(kBars) && ref != to {
			if said := r.saidOf.about(ref.bars[0]); len(said) > 0 || len(from) == 0 || !slices.Contains(from[0].bars, ref.bars[0]) {
				from = said
			}
			like = ref.bars[0]
			ref.used, ref.taken = true, true
		}
	}
	if to != nil {
		to.used, to.taken = true, true
		r.take(to.bars, len(to.bars) == 1)
		r.inHand = thisLine
	}
	if len(from) == 0 {
		s.copyComb(like, it) // what is on a comb is what is meant, where that was told
	}
	s.copyFrom(from, it)
}

// copiedOfComb is what a comb can share with another.
var copiedOfComb = [...]string{"size", "drawn", "new", "old", "straight", "cross", "width_mm", "depth_mm", "length_mm"}

// copyComb writes what was said of the comb on bar like to the bars in hand: "bar six is
// bare, bar seven the same".
func (s *scan) copyComb(like int, it *item) {
	r := s.r
	if like == 0 || len(r.bars) == 0 || slices.Contains(r.bars, like) {
		return
	}
	for _, name := range copiedOfComb {
		if value, ok := r.cur.get(r.barPath(like, r.paths.under("comb", name))); ok {
			w := r.why("same-again", "", it)
			w.doubts = append(w.doubts, "copied from another bar")
			r.comb(r.bars, name, value, w)
		}
	}
}

// sameTo is the reference to the bars that "same" at item i is said of where they stand
// behind it: "same as four for bar five"; nil where none does.
func (s *scan) sameTo(i int) *item {
	for k := i + 2; k < len(s.c.items) && k <= i+4; k++ {
		if s.r.sameFor(s.c.items, k) == i {
			return s.at(k)
		}
	}
	return nil
}

// sameFor is where "same" stands that is said of the bars at item i: "same again for bar
// five", "same as four on bar five"; -1 where it is not so.
func (r *reader) sameFor(items []item, i int) int {
	k := i - 2
	if k < 0 || !items[i].is(kBars) || items[i].pause > none || items[i-1].pause > none || !items[i-1].isWord3("for", "on", "in") {
		return -1
	}
	if k > 1 && items[k].is(kBars) && items[k-1].text == "as" {
		k -= 2
	}
	if !items[k].is(kSame) || items[k].any(kSide, kOther) || k > 0 && items[k-1].is(kBars) || r.findingBehind(items, i+1) {
		return -1
	}
	return k
}

// ofTheSame: "grubs at the back of the same" names the bar in hand once more.
func (s *scan) ofTheSame(i int) bool {
	of := s.at(i - 1)
	return of != nil && of.any(kOf, kOn) && s.at(i).pause == none && i > 1 && s.at(i-2).any(kSide, kPlace, kContent)
}

// likewise: "bar six has sealed brood, likewise scattered" tells by itself what it is like.
func (s *scan) likewise(i int) bool {
	next := s.at(i + 1)
	return s.at(i).text == "likewise" && next != nil && next.pause == none && next.any6(kPattern, kContent, kComb, kStage, kFull, kAmount)
}

// dittoFor: "b2 sealed stores, ditto b3" says it of the bar behind; "b5 ditto b3" of the one
// before.
func (s *scan) dittoFor(i int) bool {
	it, next := s.at(i), s.at(i+1)
	return it.pause == comma && it.text == "ditto" && next != nil && next.is(kBars) && next.pause == none && len(s.found) > s.bound && s.closes(i+1)
}

// saysSoOf reports whether a word says the same of the bar behind it: "and so is bar 5".
func saysSoOf(it *item) bool {
	return it.is(kSame) && strings.Contains(it.text, "so ")
}

// asAre reports whether the bar at item i is said to be as those before it: "bars 4 and 5 are
// honey, as are 7 and 8".
func asAre(items []item, i int) bool {
	return i > 2 && items[i-1].is(kBe) && items[i-2].text == "as" && items[i].pause == none && items[i-1].pause == none
}

// soAre copies what was just said to the bars behind "and so are"; "and so do I"
// copies nothing.
func (s *scan) soAre(i int) {
	it, next := s.at(i), s.at(i+1)
	if next == nil || !next.any3(kBars, kNext, kPrev) {
		return
	}
	it.used = true
	s.alike(i+1, it)
}

// alike writes what was just said to the bars at item i too, or to the next bar, by the word
// it.
func (s *scan) alike(i int, it *item) {
	s.settle(s.found[s.bound:])
	from, ref := s.saidLast(), s.at(i)
	ref.used = true
	if ref.is(kBars) {
		ref.taken = true
		s.r.take(ref.bars, len(ref.bars) == 1)
	} else {
		s.step(i)
	}
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
	s.shareWith(from, it, "copied from another bar")
	s.bound = len(s.found)
}

// shareWith writes what was said of another bar to the bars in hand, by the word it, with
// the doubts that there are of it.
func (s *scan) shareWith(from []*finding, it *item, doubts ...string) {
	for _, f := range from {
		twin := *f
		twin.bars, twin.located = slices.Clone(s.r.bars), true
		twin.items = []*item{it}
		twin.doubts = doubts
		if f.class == ofComb {
			s.found = append(s.found, &twin)
		}
	}
}

// fewSaid is the number of findings that there is room for when a bar is spoken
// of; most hold no more.
const fewSaid = 2

// remember keeps what was said of a bar for "same again".
func (r *reader) remember(f *finding) {
	anew := len(f.bars) > 0 && r.saidBar != f.bars[0]
	if len(f.bars) > 0 {
		r.combOf = 0
	}
	for _, b := range f.bars {
		said := r.saidOf.about(b)
		if anew && (len(said) == 0 || r.inHand != thisLine) {
			said = r.said.take(fewSaid)[:0]
		}
		r.saidBar = f.bars[0]
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
