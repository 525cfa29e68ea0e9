package parse

import (
	"math/bits"
	"slices"
	"strings"
)

// placing is a rule by which a reference to bars says where something before it was.
type placing struct {
	behind kinds // of the item before it
	pause  pause // between the two
	asks   func(barsAt) bool
}

// anyPause stands in a rule for whatever pause there is, and for none.
const anyPause = blank + 1

// placings are the rules that hold where a label or a sentence may end before the bars.
var placings = [...]placing{
	{setOf(kContent, kCell, kSign, kQueen, kSeen, kComb), anyPause, barsAt.answersLabel},
	{setOf(kBe), anyPause, barsAt.areTheNest},
	{setOf(kContent, kCell, kStage, kCellKind), none, barsAt.endsFinding},
	{setOf(kContent), none, barsAt.listedWithPattern},
	{setOf(kContent), none, barsAt.endsOther},
	{setOf(kContent), none, barsAt.leadsToQueen},
	{setOf(kCell, kSign, kContent), comma, barsAt.endsAnew},
	{setOf(kBees), comma, barsAt.endsSign},
	{setOf(kQueen), none, barsAt.thereSheIs},
	{setOf(kContent), none, barsAt.leadsToMuch},
	{setOf(kContent), none, barsAt.leadsToMore},
	{setOf(kStage, kCellKind), comma, barsAt.endsCells},
	{setOf(kStage, kCellKind), none, barsAt.endsCells},
	{setOf(kStage), none, barsAt.endsCounted},
	{setOf(kSeen, kQueen, kQueenIs, kDot), comma, barsAt.ends},
	{setOf(kShe), none, barsAt.whereSheWas},
	{setOf(kComb), none, barsAt.endsComb},
	{setOf(kPattern), comma, barsAt.endsPattern},
	{setOf(kContent, kCell), none, barsAt.shortAndLast},
	{setOf(kContent), none, barsAt.eachBehindContent},
}

// closePlacings are those that hold within a phrase, over an article as well.
var closePlacings = [...]placing{
	{setOf(kComb), none, barsAt.fellOff},
	{setOf(kSeen), none, barsAt.seenAcross},
	{placedBehind, none, barsAt.endsAnew},
}

// placedBehind are the kinds of what is told before the bars that it is on.
var placedBehind = setOf(kContent, kCell, kSign, kSeen, kQueen, kQueenIs, kDot, kPattern, kPlace)

// placingsOf and closePlacingsOf tell which of the rules are for an item.
var (
	placingsOf      = byKindOf(len(placings), func(row int) kinds { return placings[row].behind })
	closePlacingsOf = byKindOf(len(closePlacings), func(row int) kinds { return closePlacings[row].behind })
)

// tellsWhere reports whether one of some rules holds.
func (b barsAt) tellsWhere(by []placing, of *byKind) bool {
	pause := b.items[b.i].pause
	for due := of.due(b.prev.kinds); due != 0; due &= due - 1 {
		p := &by[bits.TrailingZeros64(due)]
		if (p.pause == pause || p.pause == anyPause) && p.asks(b) {
			return true
		}
	}
	return false
}

// answersLabel: "larvae: bar six".
func (b barsAt) answersLabel() bool { return b.prev.colon && !b.findingBehind(b.items, b.i+1) }

// areTheNest: "the brood nest is bars four to six".
func (b barsAt) areTheNest() bool {
	return b.i > 1 && b.items[b.i-2].any(kContent, kQueen) && b.ends()
}

// endsComb: "cross comb 8+9".
func (b barsAt) endsComb() bool {
	return strings.HasSuffix(b.prev.text, " comb") && (b.i == 1 || b.prev.pause >= comma) && b.endsAnew()
}

// whereSheWas: "found her b4, white dot".
func (b barsAt) whereSheWas() bool {
	return b.prev.text == "her" && b.prev.pause == none && b.before(2).is(kSeen) && b.ends()
}

// ends: "queen still there, bar five, white mark".
func (b barsAt) ends() bool { return b.closed(b.items, b.i) }

// endsAnew: "one sealed cell, bar five", where no bars were named before.
func (b barsAt) endsAnew() bool { return b.ends() && !b.barBefore(b.items, b.i) }

// endsSign: "deformed wings on three bees, bar 5".
func (b barsAt) endsSign() bool {
	return b.i > 3 && b.items[b.i-2].is(kNum) && b.items[b.i-3].is(kOn) && b.items[b.i-4].is(kSign) && b.endsAnew()
}

// endsFinding: "eggs on bar four, sealed brood bars five and six", "eggs bar 4, sealed
// bars 5-6".
func (b barsAt) endsFinding() bool { return b.ends() && b.segmentFinding(b.items, b.i) }

// endsCells: "Queen cells: 2, sealed, bar 8", "2 queen cells with jelly, bar 8", "three
// swarm cells, sealed, bar 6", "QC sealed b5".
func (b barsAt) endsCells() bool {
	return b.endsAnew() && (labelledCells(b.items[:b.i]) || b.i > 1 && b.items[b.i-2].is(kCell))
}

// endsCounted: "one charged bar six", cells of which the line before told.
func (b barsAt) endsCounted() bool {
	return b.i == 2 && b.before(2).is(kNum) && b.before(2).n.whole() && b.ends()
}

// endsPattern: "the sealed brood is spotty, bars 5 and 7".
func (b barsAt) endsPattern() bool { return b.endsAnew() && b.i > 1 && b.items[b.i-2].is(kBe) }

// listedWithPattern: "pollen on five then it's capped brood six to nine good and solid".
func (b barsAt) listedWithPattern() bool {
	next := b.next(1)
	if next.is(kAdv) && next.pause == none {
		next = b.next(2) // "four to six kind of spotty"
	}
	return next.any5(kPattern, kSide, kPlace, kTemper, kStrength) && len(b.next(0).bars) > 2 && b.postposed(b.items, b.i)
}

// endsOther: "bar three eggs capped brood six to eight", where the bar named before has its own, and "twelve
// is where it starts capped brood twelve down to nine", where it is named again.
func (b barsAt) endsOther() bool {
	bars, before := b.next(0).bars, b.before(2)
	if len(bars) < 2 || !b.barBefore(b.items, b.i) || !b.ends() && (!b.next(1).any3(kPattern, kSide, kPlace) || b.next(1).pause > none || b.next(2).any6(kContent, kComb, kOf, kStage, kCell, kAnd) && b.next(2).pause == none) {
		return false
	}
	k := b.i - 1
	for k > 0 && !b.items[k].is(kBars) {
		k--
	}
	again := k < b.i-2 && len(b.items[k].bars) == 1 && slices.Contains(bars, b.items[k].bars[0])
	return again || before.any4(kContent, kSide, kPlace, kPattern) || before.is(kComb) && !before.is(kStage)
}

// leadsToQueen: "eggs on four and five sealed brood six through eight and the queen's on
// five".
func (b barsAt) leadsToQueen() bool {
	return b.next(1).is(kAnd) && b.next(2).any3(kArt, kQueen, kShe) && b.postposed(b.items, b.i)
}

// thereSheIs: "there's a virgin queen bar four and no eggs yet".
func (b barsAt) thereSheIs() bool {
	k := b.i - 2
	for k > 0 && b.items[k].any(kArt, kQueenIs) && b.items[k+1].pause == none {
		k--
	}
	return k > 0 && k < b.i-1 && b.items[k].is(kBe) && b.items[k-1].is(kThere) && b.next(1).is(kAnd) && len(b.next(0).bars) == 1
}

// leadsToMuch: "capped brood bars 7 and 8 both sides".
func (b barsAt) leadsToMuch() bool {
	return howMuchBehind(b.items, b.i) && !b.barBefore(b.items, b.i)
}

// leadsToMore: "capped brood four to six and honey on seven", "capped brood bars three to five and
// two empty cups on bar six".
func (b barsAt) leadsToMore() bool {
	if !b.next(1).is(kAnd) || b.barBefore(b.items, b.i) {
		return false
	}
	what := 2
	for b.next(what).any5(kNum, kStage, kCellKind, kAmount, kArt) && !b.next(what).any(kContent, kCell) && b.next(what).pause == none {
		what++
	}
	more := b.next(what + 1)
	return b.next(what).any(kContent, kCell) && b.next(what).pause == none && (more.is(kOn) || more.is(kBars)) && more.pause == none
}

// shortAndLast: "E b3 CB b4", where the bars stand behind what they hold.
func (b barsAt) shortAndLast() bool {
	return b.shortRef(b.next(0)) && b.postposed(b.items, b.i)
}

// eachBehindContent: "eggs bar three open brood bars three and four".
func (b barsAt) eachBehindContent() bool {
	return b.postposed(b.items, b.i) && b.eachBehind(b.items, b.i)
}

// fellOff: "one comb had dropped off bar eight".
func (b barsAt) fellOff() bool {
	return strings.HasSuffix(b.prev.text, "off") && !b.ownVerb(b.items, b.i)
}

// seenAcross: "strolling across bar four", "queen seen bar six no queen cells".
func (b barsAt) seenAcross() bool {
	return endsOnPlace(b.prev.text) || b.next(1).any5(kNo, kShe, kBees, kPron, kTemper)
}
