package parse

import "strings"

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

func (r *reader) scan(c *clause) {
	s := &scan{r: r, c: c, found: r.found[:0], no: -1, stageIx: -1}
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

// scanned are the kinds that [scan.item] knows.
var scanned = setOf(kBars, kState, kNext, kPrev, kSkip, kWhole, kSame, kNo, kEnd, kBut, kNum, kBar, kBrood, kFull, kContent, kCell, kCellKind,
	kStage, kSign, kComb, kAmount, kPattern, kSide, kOther, kPlace, kMeasure, kLeaf, kThere, kNot, kEach)

func (s *scan) item(i int) {
	it := s.at(i)
	r := s.r
	switch {
	case it.is(kBars):
		s.bar(i)
	case it.is(kState) && s.empty(i):
	case it.any3(kNext, kPrev, kSkip):
		s.step(i)
	case it.is(kWhole):
		s.wholeAt(i)
	case it.is(kSame) && (!s.contentFollows(i) || s.at(i+1).is(kAnd) && s.headed):
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
		s.thatBar(i)
	case it.is(kBar) && s.num != nil && s.numAt == i-1 && s.barsOfBefore(i):
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
		if next := s.at(i + 1); !r.isWord(it, "there") || next == nil || !next.any3(kBe, kHave, kOn) {
			s.here = true
		}
	case it.is(kNot):
		s.noneAtAll(i)
	case it.is(kStage) && s.restage(i):
	case it.is(kStage) && s.toldApart(i):
	case it.is(kStage) && (r.topic == "brood" || s.sealedOn(i) || s.amongBrood(i)):
		s.stagedBrood(i)
	case it.is(kEach):
		it.used = true
		s.here = s.here || strings.HasPrefix(it.text, "in ") || strings.HasPrefix(it.text, "on ")
		s.allOf(i)
	}
}

// thatBar: the bar in hand is meant, and heads what follows where nothing was
// said before it: "on the same bar there was no foul smell".
func (s *scan) thatBar(i int) {
	s.here = true
	if r := s.r; len(r.bars) == 1 && r.inHand != noBar && i == 2 && s.at(0).is(kOn) {
		s.headed, r.headedBars, r.sameSentence = true, true, true
		r.inHand, r.thatBarSentence = thisLine, r.sentenceNo
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
		if it.any(kBut, kQueen) || it.is(kDo) && !it.is(kStage) { // "brood, closed and without gaps"
			return nil
		}
	}
	return f
}

// leadsTo reports whether a content follows, over words that can stand
// between a modifier and its noun.
func (s *scan) leadsTo(i int, over ...kind) *item {
	between := setOf(over...)
	for k := i + 1; k < len(s.c.items) && k <= i+4; k++ {
		it := s.at(k)
		if it.pause > none {
			return nil
		}
		if it.any3(kContent, kCell, kSign) {
			return it
		}
		if !it.anyOf(between) {
			return nil
		}
	}
	return nil
}

func (s *scan) onlyBetween(from, to int, allowed ...kind) bool {
	set := setOf(allowed...)
	for k := from + 1; k < to; k++ {
		if !s.at(k).anyOf(set) {
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
	if prev := s.at(f.at - 1); prev != nil && s.at(f.at).pause == none && ((prev.any(kWord, kFrom) && !s.r.isWord(prev, "less", "more", "fewer")) || s.r.isWord(prev, "for")) {
		return true
	}
	next, last := s.at(f.at+1), s.at(f.at+2)
	switch {
	case next == nil || next.pause > none:
		return false
	case next.is(kBe): // "the honey is dark like coffee"
		return last != nil && (last.any3(kWord, kColour, kFill) || s.r.isWord(last, "like", "dark", "light"))
	}
	return next.any(kWord, kIf) && !s.r.isWord(next, "than") || s.r.isWord(next, "for")
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
