package parse

import (
	"slices"
	"strings"
)

// bareNumber is a number without a noun, and what stands beside it.
type bareNumber struct {
	*reader
	items      []item
	i          int
	before     []item // with references in place of words
	prev, next *item  // nil at the ends
	close      bool   // nothing parts it from what stands before it
}

// bareBar tells whether a number without a noun names a bar: behind "on" where
// bars are being numbered, or where it is the next in the count and a finding
// follows.
func (r *reader) bareBar(items []item, i int, before []item) bool {
	n := bareNumber{reader: r, items: items, i: i, before: before}
	if len(before) > 0 {
		n.prev = &before[len(before)-1]
		n.close = items[i].pause == none
	}
	if i+1 < len(items) {
		n.next = &items[i+1]
	}
	switch {
	case items[i].n.ordinal:
		return false
	case i == 0 && r.barLines.listed, r.laid.endOf(i) > 0:
		return true
	case n.pairOpens(), n.rangeOpens(), n.spanOpens(), n.risingTold(), n.lineAlone(), n.placesRise(), n.asMany():
		return true
	case n.herBar():
		return true
	case n.tellsCells():
		return false
	case countsBars(items, i), n.followerBy():
		return false
	case n.speaks():
		return true
	case n.takesTold(), n.takesSeveral():
		return true
	case n.counts():
		return false
	case n.fronted(), n.bracketed(), n.sided(), n.ofTold(), n.tooTold():
		return true
	case n.prev != nil && n.prev.is(kOn) && n.ends() && !through(n.items[n.i].text) && (countedBefore(r, before) || r.countsOnly() && !n.pastTheBees()):
		return false // "capped honey on seven bars, pollen on two"
	case n.close && (n.placed() || n.spanBehind() || n.listBehind()):
		return true
	case !r.listing:
		return false
	case n.close && (n.undergoes() || n.leftBe()):
		return true
	case n.close && n.prev.any3(kOn, kAfter, kTween):
		return !n.prev.isWord2("for", "at")
	}
	return n.goesOn()
}

// leftBe reports whether a bar among others that were taken was left, with the reason or what it
// is like behind it: "took 9 and 10, and left 11 because it is only half capped".
func (n *bareNumber) leftBe() bool {
	if !n.isWord(n.prev, n.wordsOf[sparing]...) || n.next == nil || n.items[n.i].n.lo < 2 {
		return false
	}
	return n.isWord(n.next, "because", "as", "since", "for", "alone", "where", "which", "till", "until", "to")
}

// noItem stands where there is none; nothing writes to it.
var noItem = item{says: senseless, details: &noDetails}

// back is the item k places before the number.
func (n *bareNumber) back(k int) *item {
	if k > len(n.before) {
		return &noItem
	}
	return &n.before[len(n.before)-k]
}

func (n *bareNumber) ends() bool { return n.next == nil || n.next.pause >= comma }

func (n *bareNumber) ranged() bool { return n.items[n.i].n.hi > n.items[n.i].n.lo }

// rangeOpens: a sentence that begins "4-8 brood".
func (n *bareNumber) rangeOpens() bool {
	it := &n.items[n.i]
	if it.pause >= stop && n.ranged() && !it.n.or && n.next != nil && n.next.pause == none && n.next.is(kNum) && n.next.n.share && n.i+2 < len(n.items) && n.items[n.i+2].is(kContent) {
		return true // "12 to 14 two thirds capped honey"
	}
	return it.pause >= stop && n.ranged() && !it.n.or && n.next != nil && n.next.pause <= comma && (n.next.any3(kContent, kComb, kFull) || heavyLeaf(n.next)) && !strings.Contains(n.next.text, "egg") &&
		(n.i+2 == len(n.items) || !n.items[n.i+2].any3(kBar, kOf, kHive))
}

// pairOpens: a line that begins "13 + 14 empty comb", a sentence that begins "Six and seven
// have sealed brood".
func (n *bareNumber) pairOpens() bool {
	if n.i+3 >= len(n.items) || n.i > 0 && n.items[n.i].pause < stop {
		return false
	}
	first, and, other, what := n.items[n.i].n.lo, &n.items[n.i+1], &n.items[n.i+2], &n.items[n.i+3]
	if !and.is(kAnd) || !barNumber(other) || other.n.lo <= first || what.pause > none {
		return false
	}
	if n.isWord(what, pluralVerbs...) {
		otherHives := n.cur.hive != "" && n.cur.hive[0] <= '9'
		return !otherHives && n.i+4 < len(n.items) && n.items[n.i+4].any4(kContent, kComb, kFull, kAmount)
	}
	if n.i > 0 || !what.any3(kContent, kComb, kFull) {
		return false
	}
	if n.listing || and.isWord2("+", "&") {
		return true
	}
	successive := first > 1 && other.n.lo == first+1 // "nine and ten capped honey", which no two numbers count
	return and.text == "and" && successive && !what.is(kBar) && !strings.Contains(what.text, "egg")
}

// speaks: "twelve they've made a start", "three's got a bit of sealed brood".
func (n *bareNumber) speaks() bool {
	if n.next == nil {
		return false
	}
	if n.next.is(kQueen) && n.nextLine(n.items, n.i, n.before) && !n.next.plural && (n.i+2 == len(n.items) || !n.items[n.i+2].any(kCell, kCellKind, kStage)) {
		return true // "eight queen, blue dot"
	}
	if _, long := n.next.size.mm(); long && n.next.is(kMeasure) && n.next.pause == none && n.nextLine(n.items, n.i, n.before) {
		return true // "seventeen six inches deep"
	}
	return n.nextLine(n.items, n.i, n.before) && (n.next.any4(kPron, kSeen, kWord, kThere) || n.next.pause == none && (n.next.any(kArt, kAsk) || n.next.text == "at")) && !n.next.any4(kUnit, kCell, kMite, kOf) ||
		n.listing && n.next.start == n.items[n.i].end && n.next.any(kBe, kHave) && n.items[n.i].n.lo > 1
}

// ofTold: "bars five and six went in a week ago, five is half drawn".
func (n *bareNumber) ofTold() bool {
	it := &n.items[n.i]
	if n.next == nil || n.next.pause > none || n.ranged() || !barNumber(it) {
		return false
	}
	broke := n.prev != nil && n.prev.any(kAnd, kBut) && n.value(n.next, kComb) == "broken=yes" && !n.next.isWord2("broken", "collapsed")
	if broke {
		return n.amongTold() // "bars 5 to 7 are cross comb and 6 broke off"
	}
	k := n.i + 1
	for k < len(n.items) && n.items[k].pause == none && n.items[k].any4(kBe, kAdv, kArt, kAmount) {
		k++
	}
	if k == len(n.items) || n.items[k].pause > none {
		return false
	}
	apart := k > n.i+1 && n.items[k].is(kPattern) && (it.pause >= comma || n.prev != nil && n.prev.is(kBut))
	if !apart && (!n.next.any(kBe, kHave) || !n.items[k].any6(kComb, kNum, kContent, kStage, kFull, kPattern)) {
		return false // but "bars 5 to 9 capped brood, though 8 was rather gappy", "bars 5 to 9 sealed brood, 8 a bit gappy"
	}
	return n.amongTold()
}

// amongTold reports whether the first bars named before that include the number are several.
func (n *bareNumber) amongTold() bool {
	bar := int(n.items[n.i].n.lo)
	for k := range n.before {
		if slices.Contains(n.before[k].bars, bar) {
			return len(n.before[k].bars) > 1
		}
	}
	return false
}

// followerBy: "follower moved back two" tells by how many bars it went.
func (n *bareNumber) followerBy() bool {
	return n.close && n.prev.isWord4("back", "forward", "forwards", "backwards") && n.items[n.i].n.lo < manyBars && hasFixture(n.reader, n.before, "follower") && n.ends()
}

// takesTold: "honey on eleven and twelve, and I harvested twelve for the fair".
func (n *bareNumber) takesTold() bool {
	if !n.close || !n.prev.is(kDo) || n.ranged() || !traitsOf(n.rule(n.prev, kDo).Value).bars {
		return false
	}
	leaves := n.next != nil && (n.next.is(kBut) || n.next.is(kAnd) && n.i+2 < len(n.items) && n.items[n.i+2].any(kDo, kPron)) // "I straightened nine but left ten"
	if !n.ends() && !leaves && (n.next.pause > none || !n.next.isWord5("for", "as", "because", "since", "to")) {
		return false
	}
	return n.amongTold()
}

// takesSeveral: "took out ten and eleven", where numbers that go up are no count.
func (n *bareNumber) takesSeveral() bool {
	if !n.close || !n.prev.is(kDo) || n.ranged() || !barNumber(&n.items[n.i]) || !traitsOf(n.rule(n.prev, kDo).Value).bars || n.prev.is(kSeen) {
		return false
	}
	end, many := risingNumbers(n.items, n.i)
	if many < 2 || end == len(n.items) || n.items[end].pause > comma {
		return many > 1
	}
	named := n.items[end].is(kBar) && end+1 < len(n.items) && barNumber(&n.items[end+1]) // "took nine and ten bar eleven …"
	return named || !n.items[end].anyOf(counted) || n.isWord(&n.items[end], n.wordsOf[offWords]...)
}

// counted are the kinds of words that a number before them counts.
var counted = setOf(kCell, kCellKind, kMite, kSign, kBar, kUnit, kQueen, kWord, kDo, kOf)

// counts reports whether the number counts the word behind it.
func (n *bareNumber) counts() bool {
	if n.next != nil && (n.next.isWord2("either", "neither") || n.next.pause == none && n.givenNames.has(n.mended[n.next.from].id)) {
		return false // "no eggs on seven either", "a cup on eight nell thought it was an acorn"
	}
	if k := n.i + 2; n.next != nil && n.next.pause == none && n.next.any(kAdv, kAmount) && k < len(n.items) && n.items[k].pause == none && n.items[k].any(kCell, kCellKind) {
		return true // "two wee play cups"
	}
	if n.next != nil && n.next.pause == none && (n.next.is(kBees) && ofBees(n.next.text) || n.close && n.prev.is(kOn) && n.back(2).is(kSign) && n.next.isWord3("larvae", "grubs", "pupae")) {
		return true // "deformed wings on two bees", "sacbrood on two larvae"
	}
	return n.next != nil && n.next.pause == none && (n.next.anyOf(counted) || n.next.is(kStage) && !n.next.is(kComb) && !n.emptyBar() && !n.sealedBar())
}

// emptyBar: "honey on 9 and 10, 11 empty", but not "three queen cells, two empty".
func (n *bareNumber) emptyBar() bool {
	if !n.listing || !n.next.is(kState) || hasKind(n.before, kCell) || hasKind(n.before, kCellKind) {
		return false
	}
	k := n.i + 2
	return k >= len(n.items) || n.items[k].pause >= comma || n.items[k].any3(kAnd, kBut, kNum)
}

// ofBees reports whether words name bees, and do not only stand for them.
func ofBees(text string) bool {
	return text == "bee" || strings.HasSuffix(text, "bees") || strings.HasSuffix(text, "workers")
}

// tellsCells: "three queen cells, two are sealed" speaks of two of the cells.
func (n *bareNumber) tellsCells() bool {
	k := n.i + 1
	for k < len(n.items) && n.items[k].pause == none && n.items[k].any5(kBe, kAdv, kOf, kPron, kBees) {
		k++
	}
	if k == n.i+1 || k == len(n.items) || !n.items[k].is(kStage) || n.items[k].is(kContent) {
		return false
	}
	for b := len(n.before) - 1; b > 0 && !n.before[b].is(kContent); b-- {
		if counted := &n.before[b-1]; n.before[b].any(kCell, kCellKind) && barNumber(counted) {
			return n.items[n.i].n.lo <= counted.n.lo
		}
	}
	return false
}

// fronted: "she's on six", "On 4, a patch of brood."
func (n *bareNumber) fronted() bool {
	if !n.close || !n.prev.is(kOn) {
		return false
	}
	if at := n.back(3); n.back(2).is(kBe) && n.prev.text == "on" && n.back(2).pause == none && n.items[n.i].pause == none && (at.any(kContent, kCell) || at.is(kStage) && n.back(4).is(kArt)) {
		return true // "the honey's on nine and ten", "the sealed's on six"
	}
	return n.back(2).is(kBe) && n.back(3).any(kShe, kQueen) ||
		n.prev.text == "on" && n.prev.pause >= stop && n.next != nil && (n.next.pause == comma || n.next.any(kContent, kComb))
}

// sided: "eggs on both sides of six" where bars are numbered.
func (n *bareNumber) sided() bool {
	return n.close && n.prev.is(kOf) && n.back(2).is(kSide) && n.ends() && (len(n.bars) > 0 || hasKind(n.before, kBars))
}

// bracketed: "sealed brood (7, 8)" where bars are numbered.
func (n *bareNumber) bracketed() bool {
	at := n.items[n.i].start
	return n.listing && n.prev != nil && n.prev.is(kContent) && at > 0 && n.text[at-1] == '('
}

// isOnBars are the kinds of what can be on the bar whose number stands behind "on".
var isOnBars = setOf(kContent, kQueen, kSeen, kCell, kComb, kQueenIs, kDot, kPattern)

// placed reports whether the words right before the number make it a place, in a
// list of bars or not.
func (n *bareNumber) placed() bool {
	switch prev := n.prev; {
	case prev.is(kOn) && prev.text == "on" && n.back(2).anyOf(isOnBars):
		return true
	case prev.is(kContent) && n.ranged() && !n.items[n.i].n.or && (through(n.items[n.i].text) || n.likeThis()):
		return true // "capped brood six to nine good and solid"
	case prev.is(kContent) && n.ranged() && n.listing && n.next != nil && n.next.is(kAnd) && n.i+2 < len(n.items) && n.items[n.i+2].any3(kArt, kQueen, kShe):
		return true // "sealed brood six through eight and the queen's on five"
	case prev.is(kContent) && n.ends() && (n.ranged() && !n.items[n.i].n.or || n.listing):
		return true
	case prev.is(kContent) && n.ranged() && !n.items[n.i].n.or && n.next != nil && n.next.pause == none && n.exceptAt(n.next) && n.i+2 < len(n.items) && barNumber(&n.items[n.i+2]):
		return true // "CB 4-9 except 7"
	case prev.is(kComb) && strings.HasSuffix(prev.text, " comb") && (n.ends() && n.ranged() && !n.items[n.i].n.or || n.pairEnds()):
		return true // "cross comb 8+9", "old comb 1-3"
	case prev.is(kContent) && n.listing && n.plainList(n.items, n.i):
		return true // "capped brood 7 and 8 both sides"
	case prev.is(kOf) && n.back(2).is(kPlace) && n.listing:
		return true // "drone brood along the bottom of nine"
	case prev.text == "as" && n.back(2).is(kSame):
		return true // "six same as five"
	case prev.isWord2("not", "but not") && (n.back(2).is(kBars) || n.back(2).is(kBut) && n.back(3).is(kBars)) && n.ends():
		return true // "eggs on three and four, not five"
	case prev.any(kAfter, kTween) && deedNear(n.before):
		return true
	case prev.is(kTo) && n.back(2).is(kBars) && n.back(3).is(kDo):
		return true // "moved bar ten to seven"
	}
	return n.prev.is(kFrom) && n.ranged() && n.back(2).is(kContent) // "brood from 4 to 9"
}

// pairEnds reports whether the number and another end the phrase: "8+9", "8 and 9".
func (n *bareNumber) pairEnds() bool {
	k := n.i + 2
	return n.plainList(n.items, n.i) && n.items[n.i+1].pause == none && n.items[k].pause == none && n.items[k].n.lo > n.items[n.i].n.lo && (k+1 == len(n.items) || n.items[k+1].pause >= comma)
}

// likeThis reports whether the range is followed by what the content before it is like, or by
// another content and its own bars: "four to six kind of spotty", "four to six and honey on seven".
func (n *bareNumber) likeThis() bool {
	k := n.i + 1
	for k < len(n.items) && n.items[k].is(kAdv) && n.items[k].pause == none {
		k++
	}
	if k >= len(n.items) || n.items[k].pause > none {
		return false
	}
	if n.items[k].any3(kPattern, kSide, kPlace) {
		return true
	}
	return k+2 < len(n.items) && k == n.i+1 && n.items[k].is(kAnd) && n.items[k+1].is(kContent) && n.items[k+2].pause == none && (n.items[k+2].is(kOn) || barNumber(&n.items[k+2]))
}

// manyBars is a number that counts more bars than anybody moves at once (common
// practice; no source): behind such a verb it names one.
const manyBars = 8

// undergoes: "removed nine and ten", "cut seven free", "trimmed the bottom off
// 11".
func (n *bareNumber) undergoes() bool {
	if n.prev.is(kDo) {
		several := n.plainList(n.items, n.i) || n.next != nil && n.next.pause <= comma && barNumber(n.next) // not "cut three. Two cups"
		high := n.items[n.i].n.lo >= manyBars && (n.ends() || n.next.any3(kDate, kAnd, kPlan))              // "I've harvested fourteen"
		return (several || high) && traitsOf(n.rule(n.prev, kDo).Value).bars || n.next != nil && (n.next.isWord3("free", "loose", "straight") || n.next.text == "out" && !hasKind(n.before, kCell))
	}
	return n.prev.text == "off" && deedNear(n.before)
}

// leadsToNumber are the kinds of words that a number behind them belongs to.
var leadsToNumber = setOf(kArt, kNum, kOf, kHave, kTo, kOn)

// goesOn reports whether the number is the next in a list of bars, and heads what
// is said of it.
func (n *bareNumber) goesOn() bool {
	it, list := &n.items[n.i], n.plainList(n.items, n.i)
	span := n.next != nil && n.dashOrTo(n.next) && n.i+2 < len(n.items) && barNumber(&n.items[n.i+2])                                    // "thirteen down to nine"
	leaves := n.next != nil && n.next.is(kBut) && n.exceptAt(n.next) && n.ranged() && n.i+2 < len(n.items) && barNumber(&n.items[n.i+2]) // "four to nine except seven"
	heads := n.next != nil && n.next.pause <= comma && (list || n.takenBack() || heavyLeaf(n.next) || span || leaves || n.next.any(kContent, kComb, kFull, kHave, kBe, kAmount, kPattern, kSame, kNum, kStage, kAdv, kNo, kArt, kSide, kThere, kNow))
	if it.pause >= stop || n.prev == nil {
		return heads || n.next != nil && it.colon
	}
	if n.close && n.prev.is(kFrom) && (it.n.hi > 0 || n.next != nil && n.dashOrTo(n.next)) {
		return true
	}
	follows := n.follows(int(it.n.lo), n.before)
	if it.pause >= comma || n.prev.any(kAnd, kThen) {
		has := n.listing && n.next != nil && n.next.isWord5("has", "holds", "contains", "is", "was") // "bars 1 and 2 honey; 4 has brood"
		return heads && (follows || n.ranged() || list || has)
	}
	if list && n.i+3 < len(n.items) && n.items[n.i+3].any(kContent, kComb) && !n.prev.anyOf(leadsToNumber) && !n.prev.is(kDo) {
		return true
	}
	closes := !n.prev.is(kAdv) || n.prev.isWord3("as well", "too", "again")
	heads = heads || n.listing && n.next != nil && n.next.pause == none && (n.next.any(kShe, kSeen) || n.next.isWord2("i", "we")) // "seven all brood eight I can see her"
	return heads && follows && closes && !n.prev.any(kArt, kNum, kOf, kHave, kBe, kNo, kDo, kTo)
}

// takenBack: "thirteen no sorry fourteen is bare".
func (n *bareNumber) takenBack() bool {
	k := n.i + 2
	if !n.next.is(kRepair) || k+1 >= len(n.items) || !barNumber(&n.items[k]) || n.items[n.i].pause < stop {
		return false
	}
	return n.items[k+1].any6(kBe, kHave, kContent, kComb, kFull, kSame)
}

// nextLine reports whether a number begins a line, and is the neighbour of the
// bar last spoken of in lines that each begin with theirs.
func (r *reader) nextLine(items []item, i int, before []item) bool {
	head := items[i].pause >= line || len(before) == 1 && before[0].is(kAnd) && before[0].pause >= line
	n := int(items[i].n.lo)
	return head && r.listing && r.last > 0 && items[i].n.hi == 0 && items[i].n.whole() && (n == r.last+1 || n == r.last-1)
}

// deedNear reports whether a deed or a bar stands a few words back: "added a
// bar between 8 and 9".
func deedNear(before []item) bool {
	for k := len(before) - 1; k >= 0 && k >= len(before)-6; k-- {
		if before[k].any3(kDo, kBar, kFixture) {
			return true
		}
		if before[k].pause >= stop {
			return false
		}
	}
	return false
}

// follows reports whether a bar is the next in the count, up or down, from
// those named last; at the start of a count any bar is.
func (r *reader) follows(n int, before []item) bool {
	lo, hi := r.last, r.last
	if len(r.bars) > 0 {
		lo, hi = slices.Min(r.bars), slices.Max(r.bars)
	}
	steps, near := 0, false
	for i := len(before) - 1; i >= 0; i-- {
		if before[i].any3(kNext, kPrev, kSkip) {
			steps++
		}
		if !before[i].is(kBars) || i > 0 && before[i-1].text == "as" {
			continue // "same as five" counts nothing
		}
		if len(before[i].bars) > 1 && n == slices.Max(before[i].bars)+1 && i < len(before)-1 {
			return true // "two to six except four brood, four is pollen, seven has nectar"
		}
		if i < len(before)-1 && leftOut(before[i].bars, n) {
			return true // "two to eight except five, and five is all pollen"
		}
		if len(before[i].bars) > 0 && !near {
			near = true
			lo, hi = slices.Min(before[i].bars)+steps*r.step, slices.Max(before[i].bars)+steps*r.step
		}
	}
	return hi == 0 || n == lo-1 || n == hi+1 || n == hi-1 && hi == lo
}

// leftOut reports whether a number lies inside a list of bars that goes without it.
func leftOut(bars []int, n int) bool {
	return len(bars) > 1 && n > slices.Min(bars) && n < slices.Max(bars) && !slices.Contains(bars, n)
}

// heavyLeaf reports whether words tell of a weight of stores: "heavy with honey".
func heavyLeaf(it *item) bool { return it.is(kLeaf) && strings.HasPrefix(it.text, "heavy ") }

// through reports whether a number's words are a range that names bars wherever it stands:
// "nine through eleven", not "two to three".
func through(words string) bool {
	return strings.Contains(words, " through ") || strings.Contains(words, " thru ")
}

// plainList reports whether the number is one of several joined by "and".
func (r *reader) plainList(items []item, i int) bool {
	return i+2 < len(items) && items[i+1].is(kAnd) && barNumber(&items[i+2])
}
