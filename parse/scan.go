package parse

import (
	"math/bits"
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
	sideFirst  string // the side that was named before what it holds
	combSpoken bool   // the clause said what the comb is like
	stageItem  *item
	kindItem   *item
}

// extent is how much of a comb holds a content, and where on it.
type extent struct {
	cover    float64
	hasCover bool
	amount   string
	pattern  string
	side     string
	place    string
}

// modifiers wait for the noun they describe.
type modifiers struct {
	extent
	items []*item
	at    int
}

func (m *modifiers) set() bool { return m.extent != extent{} }

// scan reads what the clause found.
func (r *reader) scan(c *clause) {
	s := &r.scanner
	*s = scan{}
	s.r, s.c, s.found, s.no, s.stageIx = r, c, r.found[:0], -1, -1
	for i := range c.items {
		it := &c.items[i]
		if (!it.used || it.any(kBars, kSide)) && (it.anyOf(scanned) || r.askAll) {
			s.item(i)
		}
	}
	s.finish()
	r.found = s.found
}

func (s *scan) at(i int) *item {
	if i < 0 || i >= len(s.c.items) {
		return nil
	}
	return &s.c.items[i]
}

// scanBy are the rules by which the words of a clause are read: of the rules for its
// kinds, in this order, a word is taken by the first that takes it.
var scanBy = [...]struct {
	of   kinds
	take func(*scan, int) bool
}{
	{setOf(kBars), always((*scan).bar)},
	{setOf(kState), (*scan).empty},
	{setOf(kNext, kPrev, kSkip), always((*scan).step)},
	{setOf(kWhole), always((*scan).wholeAt)},
	{setOf(kSame), (*scan).sameAgain},
	{setOf(kNo), (*scan).denial},
	{setOf(kEnd), always((*scan).lastBar)},
	{setOf(kBut), always((*scan).turn)},
	{setOf(kNum), always((*scan).number)},
	{setOf(kBar), (*scan).barNoun},
	{setOf(kBrood), always((*scan).broodPattern)},
	{setOf(kFull), (*scan).fullOf},
	{setOf(kContent), always((*scan).content)},
	{setOf(kCell, kCellKind), always((*scan).cell)},
	{setOf(kStage), (*scan).stageOfCell},
	{setOf(kSign), always((*scan).sign)},
	{setOf(kComb), (*scan).comb},
	{setOf(kAmount), always((*scan).amount)},
	{setOf(kPattern), always((*scan).pattern)},
	{setOf(kSide), always((*scan).side)},
	{setOf(kOther), always((*scan).otherSide)},
	{setOf(kPlace), always((*scan).place)},
	{setOf(kMeasure), always((*scan).length)},
	{setOf(kLeaf), (*scan).barsTotal},
	{setOf(kThere), always((*scan).there)},
	{setOf(kNot), always((*scan).noneAtAll)},
	{setOf(kStage), (*scan).restage},
	{setOf(kStage), (*scan).toldApart},
	{setOf(kStage), (*scan).stageOfBrood},
	{setOf(kEach), always((*scan).each)},
}

// always makes a rule of one that takes every word of its kinds.
func always(read func(*scan, int)) func(*scan, int) bool {
	return func(s *scan, i int) bool {
		read(s, i)
		return true
	}
}

// scanRules tells which rules of scanBy are for a word, and scanned for which words
// there are any.
var (
	scanRules = byKindOf(len(scanBy), func(row int) kinds { return scanBy[row].of })
	scanned   = scanRules.all()
)

func (s *scan) item(i int) {
	for due := scanRules.due(s.at(i).kinds); due != 0; due &= due - 1 {
		if scanBy[bits.TrailingZeros64(due)].take(s, i) {
			return
		}
	}
}

func (s *scan) sameAgain(i int) bool {
	if s.contentFollows(i) && !(s.at(i+1).is(kAnd) && s.headed) {
		return false
	}
	s.same(i)
	return true
}

// denial puts itself in force: "no eggs".
func (s *scan) denial(i int) bool {
	it := s.at(i)
	if s.notThere(i) {
		return true
	}
	s.no, s.noLast, s.noCue = i, i, s.r.text[it.start:it.end]
	return true
}

// lastBar: "that's the last one".
func (s *scan) lastBar(int) { s.r.inHand = noBar }

// turn ends a denial, and may except bars: "but", "except bar six".
func (s *scan) turn(i int) {
	s.no = -1
	if i == 0 && s.r.exceptAt(s.at(i)) {
		s.except()
	}
}

// barNoun: "on that bar", "five bars of …".
func (s *scan) barNoun(i int) bool {
	switch {
	case i > 0 && s.at(i-1).isWord5("that", "this", "same", "the same", "it"):
		s.thatBar(i)
	case s.num == nil || s.numAt != i-1:
		return false
	case s.barsOfBefore(i):
	default:
		s.bars, s.barsAt, s.num = s.num, i, nil
	}
	return true
}

func (s *scan) fullOf(i int) bool {
	if s.isState(i) {
		return false
	}
	s.full(i)
	return true
}

func (s *scan) stageOfCell(i int) bool {
	if !s.stageMatters(i) {
		return false
	}
	s.cell(i)
	return true
}

func (s *scan) stageOfBrood(i int) bool {
	if s.r.topic != "brood" && !s.sealedOn(i) && !s.amongBrood(i) {
		return false
	}
	s.stagedBrood(i)
	return true
}

// barsTotal: "eggs on five of them".
func (s *scan) barsTotal(i int) bool {
	if s.r.rule(s.at(i), kLeaf).ID != "bars-total" {
		return false
	}
	s.onSoMany(i)
	return true
}

// there means the bar in hand, but not in "there is", nor does "here" at the head of a
// statement.
func (s *scan) there(i int) {
	if next := s.at(i + 1); s.at(i).text != "there" || next == nil || !next.any3(kBe, kHave, kOn) {
		s.here = true
	}
}

// each: "on both of them".
func (s *scan) each(i int) {
	it := s.at(i)
	it.used = true
	s.here = s.here || strings.HasPrefix(it.text, "in ") || strings.HasPrefix(it.text, "on ")
	s.allOf(i)
}

// thatBar: the bar in hand is meant, and heads what follows where nothing was
// said before it: "on the same bar there was no foul smell".
func (s *scan) thatBar(i int) {
	s.here = true
	if r := s.r; len(r.bars) == 1 && r.inHand != noBar && i == 2 && s.at(0).is(kOn) {
		s.headed, r.headedBars, r.sameSentence = true, true, true
		r.inHand, r.spokeOf.thatBar = thisLine, r.sentenceNo
	}
}

// lastFound is the finding just before item i that a modifier can belong to.
func (s *scan) lastFound(i int) *finding {
	if len(s.found) == 0 {
		return nil
	}
	f := s.found[len(s.found)-1]
	for k := f.at + 1; k < i; k++ {
		it := s.at(k)
		if it.is(kBars) && !it.taken && s.headed {
			return nil
		}
		if it.is(kQueen) || it.is(kBut) && !onlyShare(s.c.items, k) || it.is(kDo) && !it.is(kStage) { // "brood, closed and without gaps"
			return nil
		}
	}
	return f
}

// leadsTo reports whether a content follows, over words that can stand
// between a modifier and its noun.
func (s *scan) leadsTo(i int, over ...kind) *item {
	for k := i + 1; k < len(s.c.items) && k <= i+4; k++ {
		it := s.at(k)
		if it.pause > none {
			return nil
		}
		if it.any3(kContent, kCell, kSign) {
			return it
		}
		if !it.kinds.hasOne(over) {
			return nil
		}
	}
	return nil
}

func (s *scan) onlyBetween(from, to int, allowed ...kind) bool {
	for k := from + 1; k < to; k++ {
		if !s.c.items[k].kinds.hasOne(allowed) {
			return false
		}
	}
	return true
}

// onlyNamed reports whether honey is spoken of without having been found on any
// comb: "honey for the show", "a beer from honey", "honey waits for no man".
func (s *scan) onlyNamed(f *finding) bool {
	if f.what != "honey" || !f.present || len(f.bars) > 0 || f.counted.lo > 0 || f.amount != "" || f.hasCover || f.whole {
		return false
	}
	if prev := s.at(f.at - 1); prev != nil && s.at(f.at).pause == none && ((prev.any(kWord, kFrom) && !prev.isWord3("less", "more", "fewer")) || prev.text == "for") {
		return true
	}
	next, last := s.at(f.at+1), s.at(f.at+2)
	switch {
	case next == nil || next.pause > none:
		return false
	case next.is(kBe): // "the honey is dark like coffee"
		return last != nil && (last.any3(kWord, kColour, kFill) || last.isWord3("like", "dark", "light"))
	}
	return next.any(kWord, kIf) && next.text != "than" || next.text == "for"
}

// finish gives every finding left over its place and records them all.
func (s *scan) finish() {
	r := s.r
	s.here = s.here || r.hereColon
	s.settle(s.found[s.bound:])
	r.hereColon = s.here
	for _, f := range s.found {
		if s.onlyNamed(f) {
			continue
		}
		r.record(f)
		if f.class == ofComb || f.class == ofCells {
			r.remember(f)
		}
		if f.class == ofComb {
			r.lastContent = f
		}
		if f.class == ofSign && f.present && !f.hasCount && !offComb[f.what] {
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
