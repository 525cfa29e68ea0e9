package parse

import (
	"slices"
	"strconv"
	"strings"
)

// scan reads what a clause found on the combs, from left to right.
type scan struct {
	r     *reader
	c     *clause
	found []*finding
	list  int

	headed bool // the clause named its bars before the finding
	bound  int  // findings up to here have their bars
	whole  bool
	here   bool // "on it", "there": the bar in hand

	no     int // item of the denial in force, -1 none
	noLast int // last finding it denied
	noCue  string
	denier *item // the words of the last denial

	num        *quantity // a count waiting for its noun
	numAt      int
	bars       *quantity // a number of bars: "five bars of …"
	barsAt     int
	before     modifiers // said before their noun
	cells      []*finding
	kindAt     string
	stageAt    string
	stageIx    int
	stageNum   *quantity
	combSpoken bool // the clause said what the comb is like
	stageItem  *item
	kindItem   *item
}

// modifiers wait for the noun they describe.
type modifiers struct {
	cover    float64
	hasCover bool
	amount   string
	pattern  string
	side     string
	place    string
	items    []*item
	at       int
}

func (m *modifiers) set() bool {
	return m.hasCover || m.amount != "" || m.pattern != "" || m.side != "" || m.place != ""
}

func (r *reader) scan(c *clause) {
	s := &scan{r: r, c: c, no: -1, stageIx: -1}
	for i := range c.items {
		if !c.items[i].used || c.items[i].any(kBars, kSide) {
			s.item(i)
		}
	}
	s.finish()
}

func (s *scan) at(i int) *item {
	if i < 0 || i >= len(s.c.items) {
		return nil
	}
	return &s.c.items[i]
}

func (s *scan) item(i int) {
	it := s.at(i)
	r := s.r
	switch {
	case it.is(kBars):
		s.bar(i)
	case it.is(kState) && s.empty(i):
	case it.any(kNext, kPrev, kSkip):
		s.step(i)
	case it.is(kWhole):
		s.wholeAt(i)
	case it.is(kSame) && !s.contentFollows(i):
		s.same(i)
	case it.is(kNo) && !it.is(kContent) && !it.is(kComb):
		s.no, s.noLast, s.noCue = i, i, r.text[it.start:it.end]
	case it.is(kEnd):
		r.inHand = noBar
	case it.is(kBut):
		s.no = -1
		if i == 0 && r.exceptAt(it) {
			s.except()
		}
	case it.is(kNum):
		s.number(i)
	case it.is(kBar) && i > 0 && r.isWord(s.at(i-1), "that", "this", "same", "the same", "it"):
		s.here = true
	case it.is(kBar) && s.num != nil && s.numAt == i-1:
		s.bars, s.barsAt, s.num = s.num, i, nil
	case it.is(kBrood):
		s.broodPattern(i)
	case it.is(kFull) && !s.isState(i):
		s.full(i)
	case it.is(kContent):
		s.content(i)
	case it.any(kCell, kCellKind) || it.is(kStage) && s.stageMatters(i):
		s.cell(i)
	case it.is(kSign):
		s.sign(i)
	case it.is(kComb) && s.comb(i):
	case it.is(kAmount):
		s.amount(i)
	case it.is(kPattern):
		s.pattern(i)
	case it.is(kSide):
		s.side(i)
	case it.is(kOther):
		s.otherSide(i)
	case it.is(kPlace):
		s.place(i)
	case it.is(kMeasure):
		s.length(i)
	case it.is(kLeaf) && r.rule(it, kLeaf).ID == "bars-total":
		s.onSoMany(i)
	case it.is(kThere):
		if next := s.at(i + 1); !r.isWord(it, "there") || next == nil || !next.any(kBe, kHave, kOn) {
			s.here = true
		}
	case it.is(kNot):
		s.noneAtAll(i)
	case it.is(kStage) && s.restage(i):
	case it.is(kStage) && r.topic == "brood":
		s.stagedBrood(i)
	case it.is(kEach):
		it.used = true
	}
}

// bar takes a reference to bars: the head of what follows, or the place of
// what went before.
func (s *scan) bar(i int) {
	it, r := s.at(i), s.r
	if it.taken {
		return
	}
	it.used = true
	if as := s.at(i - 1); as != nil && s.r.isWord(as, "as") && s.headed && i >= 2 && s.at(i-2).is(kBars) {
		s.copyFrom(s.r.saidOf[it.bars[0]], as) // "bar six: as bar five"
		return
	}
	waiting := s.found[s.bound:]
	head := i == 0 || r.heads(s.c.items, i)
	if head && len(waiting) > 0 && !s.headed && s.closes(i) && it.pause == none {
		head = false // "eggs b5", "drone brood bar nine."
	}
	if !head {
		for _, f := range s.reaches(waiting) {
			f.bars, f.located = it.bars, true
			f.items = append(f.items, it)
		}
	}
	s.settle(waiting)
	s.bound = len(s.found)
	r.take(it.bars, len(it.bars) == 1)
	r.inHand = thisLine
	r.sameSentence = true
	s.headed = head
	r.headedBars = head
	s.before = modifiers{}
	s.no = -1
	if head && len(waiting) == 0 {
		r.inHand = awaiting
	}
}

// wholeAt: "no eggs anywhere" is said of the colony; the cue covers the
// findings just named, or what follows where none is.
func (s *scan) wholeAt(i int) {
	it := s.at(i)
	if next := s.at(i + 1); next != nil && next.pause == none && next.is(kWord) && s.r.isWord(it, "in all", "all", "in total") {
		return // "pollen in all colours"
	}
	it.used = true
	n := len(s.found)
	if n == s.bound {
		s.whole = true
		return
	}
	for k := n - 1; k >= s.bound && s.found[k].list == s.found[n-1].list; k-- {
		s.found[k].whole = true
	}
}

// compared: "less nectar than next door" is said of the colony.
func (s *scan) compared() bool {
	for k := range s.c.items {
		if s.r.isWord(s.at(k), "than") && !s.headed {
			return true
		}
	}
	return false
}

// barelyApart reports whether only a comma and little words part two findings
// of a clause that named no bar before.
func (s *scan) barelyApart(a, b *finding) bool {
	if s.headed || a.class != b.class {
		return false
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

// reaches are the findings that a place named behind them belongs to: back to
// where denial turns into finding ("no eggs, no larvae, sealed brood on bar
// four").
func (s *scan) reaches(waiting []*finding) []*finding {
	for k := len(waiting) - 1; k > 0; k-- {
		if waiting[k-1].present != waiting[k].present || waiting[k-1].list != waiting[k].list && !s.barelyApart(waiting[k-1], waiting[k]) {
			return waiting[k:]
		}
	}
	return waiting
}

// closes reports whether the reference ends its phrase: a pause, the end, or
// another reference follows.
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
	r.bars, r.last = bars, last
}

// step moves to the next bar in the direction of travel.
func (s *scan) step(i int) {
	it, r := s.at(i), s.r
	if r.last == 0 {
		return
	}
	it.used = true
	s.settle(s.found[s.bound:])
	s.bound = len(s.found)
	switch {
	case it.is(kSkip):
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
	r.inHand = awaiting
	r.stepped = true
	s.headed = true
	s.no = -1
	s.before = modifiers{}
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
			s.r.cur.drop("bars." + strconv.Itoa(b) + "." + f.what)
			next.used, next.taken = true, true
			s.r.take([]int{b}, true)
			s.r.inHand = thisLine
		}
	}
}

// empty reads "empty" of a bar in hand: drawn comb with nothing in it where
// its comb was spoken of, else no comb at all.
func (s *scan) empty(i int) bool {
	it, r := s.at(i), s.r
	if !r.isWord(it, "empty") || it.used || s.cellAhead(i) >= 0 || s.isState(i) {
		return false
	}
	if next := s.at(i + 1); next != nil && next.pause == none && next.any(kWord, kContent, kCell) {
		return false
	}
	bars := s.combBars(i)
	if len(bars) == 0 || s.no >= 0 || s.lastCell(i) != nil {
		return false
	}
	if s.combSpoken {
		s.found = append(s.found, &finding{class: ofComb, what: "empty", present: true, at: i, items: []*item{it}, rule: "empty-comb", bars: bars, located: true})
		return true
	}
	r.comb(bars, "size", "bare", r.why("comb-bare", "", it))
	s.touch()
	return true
}

func (s *scan) contentFollows(i int) bool {
	for k := i + 1; k < len(s.c.items); k++ {
		it := s.at(k)
		if it.any(kContent) && !it.is(kSame) {
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
	if next := s.at(i + 1); next != nil && next.pause == none && next.any(kWord, kDate, kBar) && !r.isWord(next, "both", "as", "for", "again", "three") {
		return // "the same day"
	}
	it.used = true
	from := r.lastFind
	if next := s.at(i + 1); next != nil && next.is(kBars) && r.isWord(it, "so is", "so are") {
		next.used, next.taken = true, true
		r.take(next.bars, len(next.bars) == 1)
		s.copyFrom(from, it)
		return
	}
	for k := i + 1; k < len(s.c.items) && k <= i+3; k++ {
		if ref := s.at(k); ref.is(kBars) {
			from = r.saidOf[ref.bars[0]]
			ref.used, ref.taken = true, true
		}
	}
	s.copyFrom(from, it)
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

// number keeps a count for the noun behind it, or takes a share.
func (s *scan) number(i int) {
	it := s.at(i)
	if it.n.share {
		s.share(i, it.n.lo)
		return
	}
	if s.num != nil && s.numAt == i-1 && it.n.article || s.moreCells(i) {
		return
	}
	q := it.n
	s.num, s.numAt = &q, i
	if on := s.at(i - 1); on != nil && on.is(kOn) && len(s.found) > 1 && (s.at(i+1) == nil || s.at(i+1).pause >= comma) {
		if last := s.found[len(s.found)-1]; last.at == i-2 && s.found[len(s.found)-2].counted.lo > 0 {
			last.counted = q
		}
	}
}

// moreCells: "three queen cells on bar seven and one on bar nine".
func (s *scan) moreCells(i int) bool {
	on, bars := s.at(i+1), s.at(i+2)
	last := s.lastCell(i)
	if on == nil || bars == nil || last == nil || !on.is(kOn) || !bars.is(kBars) || !last.present || s.at(i).n.article {
		return false
	}
	s.found = append(s.found, &finding{class: ofCells, what: last.what, kind: last.kind, present: true, count: s.at(i).n, hasCount: true, at: i, items: []*item{s.at(i)}, rule: last.rule, form: "more"})
	return true
}

// share takes a share of the comb: of the content before it or behind it, or of
// what is drawn.
func (s *scan) share(i int, v float64) {
	it := s.at(i)
	next := s.at(i + 1)
	for k := i + 1; next != nil && next.any(kArt, kOf, kAdv) && !next.is(kContent) && k < i+3; k++ {
		next = s.at(k + 1)
	}
	if next != nil && next.is(kComb) && strings.HasPrefix(s.r.value(next, kComb), "drawn") && next.pause == none && !(next.is(kBar) && !s.combHere(next)) {
		s.before = modifiers{cover: v, hasCover: true, items: []*item{it}, at: i}
		return
	}
	if last := s.lastFound(i); last != nil && !last.hasCover && last.class == ofComb && !(next != nil && next.any(kContent, kFull) && next.pause == none && (s.before.set() || s.sharedBefore())) {
		if !(next != nil && next.is(kFull) && next.pause == none && s.fullLeadsOn(i+1)) {
			last.cover, last.hasCover = v, true
			last.items = append(last.items, it)
			return
		}
	}
	s.before.cover, s.before.hasCover, s.before.at = v, true, i
	s.before.items = append(s.before.items, it)
}

// sharedBefore: the clause puts shares before their nouns ("half honey half
// nectar").
func (s *scan) sharedBefore() bool {
	for _, f := range s.found {
		if f.hasCover && f.form == "before" {
			return true
		}
	}
	return false
}

func (s *scan) combHere(it *item) bool { return true }

// fullLeadsOn reports whether "full of" leads on to a content.
func (s *scan) fullLeadsOn(i int) bool {
	for k := i + 1; k < len(s.c.items) && k <= i+3; k++ {
		it := s.at(k)
		if it.is(kContent) {
			return true
		}
		if it.pause > none || !it.any(kOf, kArt, kAdv, kPattern, kStage) {
			return false
		}
	}
	return false
}

// lastFound is the finding just before item i that a modifier can belong to.
func (s *scan) lastFound(i int) *finding {
	if len(s.found) == 0 {
		return nil
	}
	f := s.found[len(s.found)-1]
	for k := f.at + 1; k < i; k++ {
		it := s.at(k)
		if it.any(kBars) && !it.taken && s.headed {
			return nil
		}
		if it.any(kBut, kDo, kQueen) {
			return nil
		}
	}
	return f
}

func (s *scan) full(i int) {
	it := s.at(i)
	rule := s.r.rule(it, kFull)
	wall := rule.Value == "wall"
	leads := s.fullLeadsOn(i)
	if rule.Form != "after" && !wall && !leads {
		return
	}
	last := s.lastFound(i)
	if !leads && last != nil && last.class == ofComb {
		if !last.hasCover {
			last.cover, last.hasCover = 1, true
		}
		if wall && last.brood() {
			last.pattern = "solid"
		}
		last.items = append(last.items, it)
		return
	}
	if !leads {
		return
	}
	if !s.before.hasCover || s.before.at != i-1 {
		s.before.cover, s.before.hasCover = 1, true
	}
	if wall {
		s.before.pattern = "solid"
	}
	s.before.items = append(s.before.items, it)
	s.before.at = i
}

// isState reports whether a word such as "full" speaks of a feeder.
func (s *scan) isState(i int) bool {
	for k := max(0, i-4); k < i; k++ {
		if s.at(k).any(kFixture, kStores, kStored) {
			return true
		}
	}
	return false
}

// leadsTo reports whether a content follows, over words that can stand
// between a modifier and its noun.
func (s *scan) leadsTo(i int, over ...kind) *item {
	for k := i + 1; k < len(s.c.items) && k <= i+4; k++ {
		it := s.at(k)
		if it.pause > none {
			return nil
		}
		if it.any(kContent, kCell, kSign) {
			return it
		}
		if !it.any(over...) {
			return nil
		}
	}
	return nil
}

func (s *scan) amount(i int) {
	it := s.at(i)
	value := s.r.value(it, kAmount)
	if to := s.leadsTo(i, kColour, kAdv); to != nil && s.r.isWord(it, "little") && (s.r.value(to, kContent) == "open_brood" || s.r.value(to, kContent) == "eggs") {
		return // "little white grubs" are small, not few
	}
	if to := s.leadsTo(i, kOf, kArt, kAdv, kPattern, kStage, kColour, kFull, kNum, kAnd, kAmount); to != nil && !s.r.isWord(to, "cells", "cell") {
		s.before.amount, s.before.at = value, i
		s.before.items = append(s.before.items, it)
		return
	}
	if s.elsewhereToo(i, value) {
		return
	}
	if last, next := s.lastFound(i), s.at(i+1); last != nil && next != nil && last.class == ofComb && last.amount == "" && s.r.isWord(next, "it") {
		last.amount = value // "capped brood and lots of it"
		last.items = append(last.items, it)
		return
	}
	if last := s.lastFound(i); last != nil && last.class == ofComb && last.amount == "" && (last.at == i-1 || it.pause <= comma && s.onlyBetween(last.at, i, kAdv, kBe, kArt)) {
		last.amount = value
		last.items = append(last.items, it)
	}
}

// elsewhereToo: "no eggs on bar eight but lots on seven" says the content once
// for both.
func (s *scan) elsewhereToo(i int, amount string) bool {
	on, bars := s.at(i+1), s.at(i+2)
	f := s.r.lastContent
	if on == nil || bars == nil || !on.is(kOn) || !bars.is(kBars) || f == nil || !s.r.sameSentence {
		return false
	}
	s.found = append(s.found, &finding{class: ofComb, what: f.what, present: true, amount: amount, at: i, items: []*item{s.at(i)}, rule: f.rule})
	return true
}

func (s *scan) onlyBetween(from, to int, allowed ...kind) bool {
	for k := from + 1; k < to; k++ {
		if !s.at(k).any(allowed...) {
			return false
		}
	}
	return true
}

// plainPraise are words that speak of a laying pattern only right beside
// brood.
var plainPraise = map[string]bool{"good": true, "nice": true, "lovely": true, "beautiful": true, "even": true, "grand": true,
	"perfect": true, "excellent": true, "super": true, "evenly": true, "gorgeous": true, "bonny": true, "cracking": true, "smashing": true, "sparse": true, "ragged": true, "here and there": true, "dense": true, "packed tight": true}

func (s *scan) pattern(i int) {
	it := s.at(i)
	value := s.r.value(it, kPattern)
	if strings.Contains(s.r.text[it.start:it.end], "laying pattern") && !s.headed {
		s.r.leaf("brood_pattern", value, s.r.rule(it, kPattern).ID, "", s.c.doubt, it)
		return
	}
	if next := s.at(i + 1); next != nil && next.is(kBrood) && next.pause == none {
		return // "solid laying pattern" is read with its noun
	}
	if to := s.leadsTo(i, kOf, kArt, kAdv, kPattern, kNum, kStage, kAmount, kFull); to != nil && to.is(kContent) && s.broodItem(to) {
		if last := s.lastFound(i); last == nil || last.pattern != "" || !last.brood() || it.pause > none || s.adjacentAnd(last.at, i) || last.at != i-1 {
			s.before.pattern, s.before.at = value, i
			s.before.items = append(s.before.items, it)
			return
		}
	}
	last := s.lastFound(i)
	if last == nil && len(s.found) == 0 {
		s.patternOfBefore(i, value)
		return
	}
	if last == nil || !last.brood() {
		return
	}
	plain := plainPraise[it.text]
	if plain && !s.onlyBetween(last.at, i, kAdv, kBe, kBars, kOn, kSide, kFull, kNum, kAnd, kPattern, kArt) {
		return
	}
	if next := s.at(i + 1); plain && next != nil && next.pause == none && next.any(kWord, kBar, kComb, kContent) {
		return
	}
	s.spreadSame(last, func(f *finding) {
		if f.brood() && f.pattern == "" {
			f.pattern = value
			f.items = append(f.items, it)
		}
	})
}

// patternOfBefore: "but it looks spotty to me" speaks of the brood named in
// the clause before.
func (s *scan) patternOfBefore(i int, value string) {
	it, r := s.at(i), s.r
	f := r.prevBrood
	if f == nil || !r.sameSentence && !s.leansBack() || plainPraise[it.text] {
		return
	}
	for k := range s.c.items {
		if s.at(k).any(kQueen, kBees, kTemper, kStores, kCell, kFixture) {
			return
		}
	}
	for _, b := range f.bars {
		r.cur.put("bars."+strconv.Itoa(b)+"."+f.what+".pattern", value, r.why(r.rule(it, kPattern).ID, "", it))
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
	for k := a.at + 1; k < b.at; k++ {
		if !s.at(k).any(kAnd, kContent) {
			return false
		}
	}
	for k := a.at + 1; k <= b.at; k++ {
		if s.at(k).pause > none {
			return false
		}
	}
	return a.side == "" && a.place == "" && a.pattern == "" && !a.hasCover && a.amount == ""
}

func (s *scan) side(i int) {
	it := s.at(i)
	value := s.r.value(it, kSide)
	if next := s.at(i + 1); s.bars != nil && s.barsAt == i-1 || s.r.isWord(it, "both") && next != nil && next.any(kBe, kHave) {
		return // "three combs at the back are capped honey"
	}
	last := s.lastFound(i)
	if last == nil || last.class != ofComb || last.side != "" && !s.turns(i) {
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
	return prev != nil && prev.any(kAnd, kThen, kBut)
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

func (s *scan) content(i int) {
	it, r := s.at(i), s.r
	rule := r.rule(it, kContent)
	if s.elsewhere(i) || rule.ID == "empty-comb" && s.lastCell(i) != nil {
		it.used = it.used || rule.ID == "empty-comb"
		return
	}
	if r.isWord(it, "the nest") && !hasKind(s.c.items, kBars) {
		return
	}
	if it.colon && i == 0 && it.pause >= line && rule.Value == "brood" {
		r.topic, it.used = "brood", true // a heading, not a finding
		return
	}
	denied := s.denies(i)
	besideHer := s.besideHer(i)
	s.list++
	if s.joins(i) {
		s.list--
	}
	for what := range strings.FieldsSeq(rule.Value) {
		f := &finding{class: ofComb, what: s.staged(what, i), present: !denied, at: i, items: []*item{it}, rule: rule.ID, list: s.list}
		s.describe(f, i)
		if denied {
			f.cue = s.noCue
			f.items = append(f.items, s.denier)
		}
		if besideHer > 0 {
			f.bars, f.located = []int{besideHer}, true
		}
		s.found = append(s.found, f)
	}
	s.before = modifiers{}
	s.num = nil
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

// staged applies a stage said apart from its noun: "sealed and open brood".
func (s *scan) staged(what string, i int) string {
	prev := s.at(i - 1)
	if prev == nil || !prev.is(kStage) || prev.used || s.at(i).pause > none {
		return what
	}
	stage := s.r.value(prev, kStage)
	switch {
	case what == "brood" && stage == "capped":
		prev.used = true
		return "capped_brood"
	case what == "brood" && stage == "charged":
		prev.used = true
		return "open_brood"
	case what == "honey" && stage == "capped":
		prev.used = true
		return "capped_honey"
	}
	return what
}

// elsewhere: contents that are spoken of without having been found: honey to
// harvest, pollen on the wing.
func (s *scan) elsewhere(i int) bool {
	it := s.at(i)
	next := s.at(i + 1)
	text := it.text
	if next != nil && next.is(kBe) && s.at(i+2) != nil && s.r.isWord(s.at(i+2), "ready", "ripe", "theirs", "delicious") {
		return true
	}
	if text == "drone" && (next == nil || !next.any(kBe) && next.pause == none && !next.any(kAnd, kOn, kPlace)) && !(next == nil && i > 0) {
		return next != nil
	}
	if next != nil && next.pause == none && next.any(kWord, kDo) {
		switch next.text {
		case "day", "house", "room", "extractor", "tin", "pot", "sacs", "sac", "baskets", "substitute", "cakes", "pots", "jars'", "farm", "shop", "frame's", "knife", "trap's", "jar", "jars", "bucket", "buckets", "bread", "bee", "bees", "eater", "super", "supers", "show", "cake", "smell", "comb's", "box", "box's", "harvest", "crop", "flow", "trap", "eating", "sandwich", "sandwiches", "loaf", "patty", "season", "check", "spoon", "colour":
			return true
		}
	}
	return false
}

// joins reports whether the content at i is joined to the one before by "and".
func (s *scan) joins(i int) bool {
	if len(s.found) == 0 {
		return false
	}
	last := s.found[len(s.found)-1]
	if last.at < s.boundAt() {
		return false
	}
	for k := last.at + 1; k < i; k++ {
		if !s.at(k).any(kAnd, kOr, kAdv, kArt, kPattern, kAmount, kNum, kFull) {
			return false
		}
	}
	return s.at(i).pause <= comma
}

func (s *scan) boundAt() int {
	if s.bound == 0 || s.bound > len(s.found) {
		return 0
	}
	return s.found[s.bound-1].at
}

// describe gives the finding what was said before it.
func (s *scan) describe(f *finding, i int) {
	m := &s.before
	if m.set() {
		f.cover, f.hasCover, f.amount, f.pattern, f.side, f.place = m.cover, m.hasCover, m.amount, m.pattern, m.side, m.place
		f.items = append(f.items, m.items...)
		if m.hasCover {
			f.form = "before"
		}
	} else if n := len(s.found); n > 0 && s.joins(i) {
		last := s.found[n-1]
		if last.form != "before" && last.amount != "" && last.class == f.class && last.at > 0 && s.amountLeads(last) {
			f.amount = last.amount
		}
	}
	if s.num != nil && s.bars != nil && s.numAt > s.barsAt && s.at(s.numAt+1) != nil && s.r.isWord(s.at(s.numAt+1), "more") {
		s.bars, s.barsAt = s.num, s.numAt+1 // "five bars of brood, two more of honey"
	}
	if n, bar := s.at(i+1), s.at(i+2); s.at(i).colon && n != nil && bar != nil && n.is(kNum) && bar.is(kBar) {
		f.counted = n.n // "sealed brood: 7 bars"
		f.items = append(f.items, n, bar)
		return
	}
	if next := s.at(i + 1); next != nil && next.is(kBar) && next.pause == none && s.num != nil && s.numAt == i-1 && !s.num.article {
		f.counted = *s.num // "seven brood bars"
		f.items = append(f.items, s.at(s.numAt), next)
		return
	}
	if s.bars != nil && s.near(s.barsAt, i) {
		f.counted = *s.bars
		f.items = append(f.items, s.at(s.barsAt-1), s.at(s.barsAt))
	} else if n := len(s.found); n > 0 && s.found[n-1].counted.lo > 0 && s.joins(i) {
		f.counted = s.found[n-1].counted
	}
	if s.c.doubt != "" {
		f.doubts = append(f.doubts, "hedged: "+s.c.doubt)
	}
}

// amountLeads: "a few eggs and larvae" says few of both only where the amount
// stands first; each speaker means the nearest, so it is not carried.
func (s *scan) amountLeads(*finding) bool { return false }

// near reports whether "of", "with" or "have" at most stand between a number of
// bars and the content.
func (s *scan) near(from, to int) bool {
	for k := from + 1; k < to; k++ {
		if !s.at(k).any(kOf, kHave, kAdv, kPattern, kOn, kArt, kStage, kAmount, kFull, kAnd, kContent, kBe, kThere, kBut, kPron, kSide, kPlace) {
			return false
		}
	}
	return to-from <= 7
}

// denies decides whether the denial in force reaches the finding at i. It
// does over bare nouns joined by "or", "and" or commas in a list with "or"; a
// noun with its own article, count, amount or place ends it.
func (s *scan) denies(i int) bool {
	if s.no < 0 {
		return s.deniedAfter(i)
	}
	commas := false
	for k := s.noLast + 1; k < i; k++ {
		it := s.at(k)
		switch {
		case it.pause == comma && k > s.no+1:
			commas = true
		case it.pause > comma:
			s.no = -1
			return s.deniedAfter(i)
		}
		ok := it.any(kOr, kAnd, kContent, kCell, kSign, kStage, kCellKind, kAdv, kColour, kPattern, kAmount, kOf, kNo) || it.is(kArt) && !it.n.article || it.is(kSeen) || it.is(kComb) && !it.is(kSame)
		if s.noLast > s.no && it.any(kAmount, kPattern) || it.is(kArt) && k > s.no+2 && s.noLast > s.no {
			ok = false
		}
		if it.is(kNum) && it.n.article && k == s.no+1 {
			ok = true
		}
		if !ok {
			s.no = -1
			return s.deniedAfter(i)
		}
	}
	if s.at(i).pause == comma && i > s.no+1 {
		commas = true
	}
	if s.noLast > s.no { // a further noun
		joined := s.at(i - 1)
		if commas && !s.orAhead(i) && !(joined.is(kOr)) {
			s.no = -1
			return s.deniedAfter(i)
		}
		if joined.is(kAnd) && !s.bareBehind(i) {
			s.no = -1
			return s.deniedAfter(i)
		}
		if !commas && !joined.any(kOr, kAnd, kStage, kCellKind, kNo) {
			s.no = -1
			return s.deniedAfter(i)
		}
	}
	s.noLast = i
	s.denier = s.at(s.no)
	s.denier.used = true
	return true
}

func (s *scan) orAhead(i int) bool {
	for k := i; k < len(s.c.items) && k <= i+6; k++ {
		if s.at(k).is(kOr) {
			return true
		}
		if !s.at(k).any(kContent, kAnd, kCell, kSign, kStage, kCellKind) {
			return false
		}
	}
	return false
}

func (s *scan) bareBehind(i int) bool {
	next := s.at(i + 1)
	return next == nil || next.pause > none || !next.any(kPlace, kSide, kFull, kBe, kHave, kNum, kAmount)
}

// deniedAfter: "drone brood none", "eggs not seen", "larvae: no".
func (s *scan) deniedAfter(i int) bool {
	for k := i + 1; k < len(s.c.items) && k <= i+3; k++ {
		it := s.at(k)
		if it.is(kNot) || it.is(kUnseen) && !it.used && !s.r.bareQNS(s.c, k) {
			it.used = true
			s.noCue = s.r.text[it.start:it.end]
			s.denier = it
			return true
		}
		if it.is(kNo) && s.r.bareNo(it) && s.at(i).colon {
			next := s.at(k + 1)
			s.denier = it
			return next == nil || next.pause > none
		}
		if !it.any(kBe, kAdv, kOr, kContent, kThere) {
			return false
		}
	}
	return false
}

// noneAtAll: "bar fifteen: none" says that no comb hangs there.
func (s *scan) noneAtAll(i int) {
	it := s.at(i)
	if s.headed && i == len(s.c.items)-1 && i <= 1 && len(s.r.bars) > 0 {
		s.r.comb(s.r.bars, "size", "bare", s.r.why("comb-bare", "", it))
		s.touch()
	}
}

// restage: "honey, capped", "brood on bars three to five, all sealed".
func (s *scan) restage(i int) bool {
	last := s.lastFound(i)
	if last == nil || last.class != ofComb || !s.onlyBetween(last.at, i, kBars, kAdv, kBe, kOn, kFull, kYes, kSide) {
		return false
	}
	to := map[string]string{"honey capped": "capped_honey", "honey charged": "nectar", "brood capped": "capped_brood", "brood charged": "open_brood"}[last.what+" "+s.r.value(s.at(i), kStage)]
	if to == "" {
		return false
	}
	last.what = to
	last.items = append(last.items, s.at(i))
	return true
}

// stagedBrood reads "sealed" below a heading that says brood.
func (s *scan) stagedBrood(i int) {
	it := s.at(i)
	what := map[string]string{"capped": "capped_brood", "charged": "open_brood"}[s.r.value(it, kStage)]
	if what == "" {
		return
	}
	f := &finding{class: ofComb, what: what, present: true, at: i, items: []*item{it}, rule: s.r.rule(it, kStage).ID, list: s.list}
	s.describe(f, i)
	s.found = append(s.found, f)
	s.before = modifiers{}
}

// finish gives every finding left over its place and records them all.
func (s *scan) finish() {
	r := s.r
	s.here = s.here || r.hereColon
	s.settle(s.found[s.bound:])
	r.hereColon = s.here
	for _, f := range s.found {
		r.record(f)
		if f.class == ofComb || f.class == ofCells {
			r.remember(f)
		}
		if f.class == ofComb {
			r.lastContent = f
		}
		if f.class == ofSign && f.present && !f.hasCount {
			r.lastSign = f.what
		}
		if f.class == ofCells && f.present {
			r.lastCells = f
		}
		if f.class == ofComb && f.brood() && f.present {
			r.prevBrood = f
		}
	}
	s.shareOfBefore()
	if len(s.found) > 0 && r.inHand == awaiting {
		r.inHand = thisLine
	}
}

// shareOfBefore: "bars 9 to 12 honey, 12 only half full": a bar named again with
// a share alone says how much of what it holds.
func (s *scan) shareOfBefore() {
	r := s.r
	if !s.before.hasCover || len(s.found) > 0 || !s.headed || s.combSpoken {
		return
	}
	for _, b := range r.bars {
		said := r.saidOf[b]
		if len(said) == 0 || said[len(said)-1].class != ofComb || said[len(said)-1].hasCover {
			continue
		}
		r.cur.put("bars."+strconv.Itoa(b)+"."+said[len(said)-1].what+".cover", formatNumber(s.before.cover), r.why("share", "", s.before.items...))
	}
}

// remember keeps what was said of a bar for "same again".
func (r *reader) remember(f *finding) {
	for _, b := range f.bars {
		if r.saidBar != b {
			if len(r.saidOf[b]) == 0 || r.inHand != thisLine {
				r.saidOf[b] = nil
			}
			r.saidBar = b
		}
		r.saidOf[b] = append(r.saidOf[b], f)
	}
	if len(f.bars) > 0 {
		r.lastFind = r.saidOf[f.bars[len(f.bars)-1]]
	}
}

// settle places findings whose clause named no bar behind them: on the bar in
// hand, or in the colony as a whole.
func (s *scan) settle(waiting []*finding) {
	r := s.r
	for _, f := range waiting {
		if f.located || len(f.bars) > 0 {
			continue
		}
		switch {
		case f.counted.lo > 0 || f.whole || s.whole || r.wholeSentence && !s.headed || s.compared():
		case s.headed:
			f.bars = r.bars
		case r.inHand == noBar || len(r.bars) == 0:
		case f.class == ofSign:
			if s.here || s.leansBack() || r.inHand >= thisLine && r.inHand != thisText && r.sameSentence && r.headedBars && !hiveSigns[f.what] {
				f.bars = r.bars
			}
		case s.here || r.inHand == awaiting:
			f.bars = r.bars
		case r.inHand == thisLine && r.sameSentence:
			f.bars = r.bars
		case r.inHand == thisLine && f.present && !s.speaksOfColony():
			f.bars = r.bars
			f.doubts = append(f.doubts, "bar taken from the sentence before")
		case r.inHand == thisText && s.leansBack():
			f.bars = r.bars
			f.doubts = append(f.doubts, "bar taken from the line before")
		}
		f.located = true
	}
}

// hiveSigns are seen about the hive; the bar in hand has no part in them.
var hiveSigns = map[string]bool{"wasps": true, "robbing": true, "ants": true, "mice": true, "bearding": true, "dead_bees": true,
	"dysentery": true, "queenless_roar": true, "small_hive_beetle": true}

// speaksOfColony: "eggs and larvae present", "we saw eggs".
func (s *scan) speaksOfColony() bool {
	for k := range s.c.items {
		it := s.at(k)
		if it.any(kSeen, kPron, kBees) && !s.here {
			text := it.text
			return text != "it"
		}
	}
	return false
}

// leansBack: a line that begins with "and", "it" or "there" goes on about the
// bar in hand.
func (s *scan) leansBack() bool {
	first := s.at(0)
	text := first.text
	return first.is(kAnd) || text == "it" || text == "also"
}
