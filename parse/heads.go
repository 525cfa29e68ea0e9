package parse

import (
	"math/bits"
	"strings"
)

var (
	// placedBehind are the kinds of what is told before the bars that it is on.
	placedBehind = setOf(kContent, kCell, kSign, kSeen, kQueen, kQueenIs, kDot, kPattern, kPlace)
	// leadToBars are the kinds of words that the bars behind them belong to.
	leadToBars = setOf(kOn, kOf, kFrom, kTo, kAfter, kFore, kTween, kDo, kIf, kAsk, kUnsure, kPlan)
	// hangsThere are the kinds of what can be on a bar that is named behind it.
	hangsThere = setOf(kContent, kCell, kSign, kQueen, kSeen, kUnseen, kComb, kShe, kDo, kNo, kMite, kPattern, kStage, kLeaf, kMaybe)
)

// barsAt is a reference to bars, with what stands around it.
type barsAt struct {
	*reader
	items []item
	i     int   // its place in them
	prev  *item // before it
}

// next is the item k places behind, or one of no kind.
func (b barsAt) next(k int) *item {
	if b.i+k >= len(b.items) {
		return &noItem
	}
	return &b.items[b.i+k]
}

// heads reports whether a reference to bars begins what is said of them; if
// not, it says where something before it was.
func (r *reader) heads(items []item, i int) bool {
	if i == 0 {
		return true
	}
	b := barsAt{r, items, i, &items[i-1]}
	it := &items[i]
	switch {
	case it.laid != notLaid:
		return it.laid == beforeTheir
	case it.colon && it.pause == comma:
		return true // "queen clipped, bar 3: pollen"
	case it.pause == none && i > 1 && len(it.bars) > 1 && barNumber(b.prev) && b.prev.pause == none && int(b.prev.n.lo) == len(it.bars) && items[i-2].is(kDo) && traitsOf(r.rule(&items[i-2], kDo).Value).bars:
		return false // "harvested three bars six seven and eight"
	case it.pause == none && b.prev.text == "not" && i > 1 && (items[i-2].any(kBars, kBut) || b.prev.pause == comma):
		return false // "eggs on bars three and four, not five"
	case it.pause == none && i > 1 && b.prev.isWord3("up", "us", "me") && items[i-2].text == "gave":
		return false // "hive two gave us bars five and six"
	case it.pause == none && i > 1 && b.prev.text == "off" && items[i-2].is(kCell) && b.prev.pause == none:
		return false // "cut two cells off bar five"
	case it.pause == comma && b.prev.anyOf(hangsThere) && r.inBrackets(it):
		return false // "2 charged (b5)"
	case it.pause == none && b.prev.is(kAsk) && (b.prev.text == "shall we" || i > 1 && b.prev.is(kSeen) && items[i-2].any3(kContent, kCell, kQueen)):
		return true // "brood is there bar seven …"
	case it.pause == none && b.prev.is(kDo) && r.rule(b.prev, kDo).Value == "smoke" && b.prev.text != "smoke":
		return true // "gave them a puff bar one is honey"
	case it.pause == none && b.prev.is(kDo) && r.hadObject(b.prev) && r.rule(b.prev, kDo).Value != "add_bar":
		return true // "bar 4 curved straightened it bars 5 and 6 cross comb"
	case i > 1 && items[i-2].is(kSame) && b.prev.text == "as", r.sameFor(items, i) >= 0:
		return false // "the same as five", "same as four for five"
	case it.pause == none && b.prev.isWord3("ditto", "same", "same as") && b.prev.is(kSame) && (i+1 == len(items) || items[i+1].pause >= comma):
		return false // "b5 ditto b3"
	case it.pause == none && (saysSoOf(b.prev) || asAre(items, i) || r.exceptAt(b.prev) && b.prev.text != "but"):
		return false // "so are bars six and seven", "except bar six"
	}
	if i > 1 && (b.prev.is(kYes) || items[i-2].is(kSeen) && b.prev.isWord4("afterwards", "later", "again", "after")) {
		b.prev = &items[i-2]
	}
	if r.onlyThere(items, i-1) {
		return false
	}
	if b.tellsWhere(placings[:], placingsOf) {
		return false
	}
	if it.pause >= colon {
		return true
	}
	if b.prev.any5(kAnd, kThen, kBut, kAdv, kArt) && i >= 2 && it.pause == none {
		switch before := &items[i-2]; {
		case !b.prev.is(kArt):
			return !b.prev.is(kAnd) || !before.is(kBars) || r.heads(items, i-2) || r.ownVerb(items, i) // "follower behind bar nine, and bar nine is bare"
		case before.any(kDo, kBars):
			return false
		case before.any(kOn, kFrom):
			return r.frontedBar(items, i-2)
		}
		b.prev = &items[i-2]
	}
	switch {
	case b.tellsWhere(closePlacings[:], closePlacingsOf):
		return false
	case b.prev.isWord2("back to", "on to") && !deedNear(items[:i-1]):
		return true // "bar one honey back to bar five"
	case it.pause == none && b.prev.anyOf(leadToBars):
		return b.prev.any(kOn, kFrom) && r.frontedBar(items, i-1)
	}
	return true
}

// hadObject reports whether a verb holds the pronoun that is its object: "straightened it",
// "cut it free".
func (r *reader) hadObject(deed *item) bool {
	for k := deed.from + 1; k < deed.to; k++ {
		if r.says(r.mended[k], "it", "them", "that", "those") {
			return true
		}
	}
	return false
}

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
	{setOf(kContent), none, barsAt.leadsToQueen},
	{setOf(kCell, kSign, kContent), comma, barsAt.endsAnew},
	{setOf(kBees), comma, barsAt.endsSign},
	{setOf(kQueen), none, barsAt.thereSheIs},
	{setOf(kContent), none, barsAt.leadsToMuch},
	{setOf(kContent), none, barsAt.leadsToMore},
	{setOf(kStage, kCellKind), comma, barsAt.endsCells},
	{setOf(kStage, kCellKind), none, barsAt.endsCells},
	{setOf(kSeen, kQueen, kQueenIs, kDot), comma, barsAt.ends},
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

// ownVerb reports whether the bar at item i is the subject of a verb, or of its being full or
// bare, that stands right behind it, and what came before is not.
func (r *reader) ownVerb(items []item, i int) bool {
	next := i + 1
	if next == len(items) || items[next].pause > none {
		return false
	}
	if len(items[i].bars) > 1 { // "eggs on bars 4 and 5, and bars 8 and 9 are half honey"
		return items[i-1].is(kAnd) && items[i-1].pause == comma && r.isWord(&items[next], "are", "were", "have", "had", "hold", "held", "contain")
	}
	if items[next].is(kFull) && at(items, next+1).is(kOf) || items[next].is(kComb) && r.closed(items, next) {
		return true // "eggs on bar four and bar seven full of honey"
	}
	return r.isWord(&items[next], "is", "was", "'s", "has", "had", "holds", "contains", "looks") || items[i-1].pause == comma && items[next].any(kBe, kHave)
}

// howMuchBehind reports whether nothing but how much and where follows a
// reference to bars in its phrase.
func howMuchBehind(items []item, i int) bool {
	k := i + 1
	for k < len(items) && items[k].pause == none && items[k].any4(kSide, kPlace, kFull, kPattern) && !items[k].any(kContent, kComb) {
		k++
	}
	return k > i+1 && (k == len(items) || items[k].pause >= comma || items[k].is(kBars))
}

// labelledCells reports whether the items are a form's answer about queen cells.
func labelledCells(items []item) bool {
	for k := len(items) - 1; k >= 0 && k >= len(items)-5; k-- {
		if items[k].is(kCell) && items[k].colon {
			return true
		}
	}
	return false
}

// segmentFinding reports whether the words since the last comma begin with a
// finding, not with a bar.
func (r *reader) segmentFinding(items []item, i int) bool {
	k := i
	for k > 0 && items[k].pause < comma {
		k--
	}
	return k > 0 && (items[k].pause == comma || items[k].pause == colon) && items[k].any6(kContent, kCell, kPattern, kAmount, kNum, kStage)
}

// endsOnPlace reports whether a phrase ends on a word of place.
func endsOnPlace(text string) bool {
	switch text[strings.LastIndexByte(text, ' ')+1:] {
	case "on", "across", "over", "about", "along":
		return true
	}
	return false
}

// shortRef is a bar written "b4".
func (r *reader) shortRef(it *item) bool {
	return r.text[it.start]|0x20 == 'b' && it.end > it.start+1 && isDigit(r.text[it.start+1])
}

// postposed reports whether the sentence puts its bars behind what they hold.
func (r *reader) postposed(items []item, i int) bool {
	first := i
	for k := i - 1; k >= 0 && items[k+1].pause < stop; k-- {
		if items[k].is(kBars) {
			first = k
		}
	}
	if first > 1 && items[first-1].is(kOn) && items[first-1].pause == none {
		first--
	}
	return first > 0 && items[first].pause == none && items[first-1].any4(kContent, kCell, kSeen, kQueen)
}

// eachBehind reports whether from item i on every reference to bars stands behind a
// content, and the last of them ends the phrase.
func (r *reader) eachBehind(items []item, i int) bool {
	for k := i; k < len(items) && (k == i || items[k].pause == none); k++ {
		switch {
		case !items[k].is(kBars):
			continue
		case !items[k-1].is(kContent):
			return false
		case r.closed(items, k) || items[k+1].is(kBrood):
			return true
		}
	}
	return false
}

// closed reports whether a reference to bars ends its phrase.
func (r *reader) closed(items []item, i int) bool {
	if i+1 < len(items) && items[i+1].pause == none && items[i+1].isWord4("only", "too", "as well", "again") {
		i++ // "capped brood bars 4 and 5 only"
	}
	if i > 0 && i+1 < len(items) && items[i-1].any3(kCell, kStage, kCellKind) && items[i+1].is(kUndone) && strings.HasPrefix(items[i+1].text, "left") {
		return true // "one sealed cell bar six left alone"
	}
	return i+1 >= len(items) || items[i+1].pause >= comma || items[i+1].any3(kColour, kQueenIs, kDot) && !items[i+1].is(kContent)
}

// barBefore reports whether bars were named earlier in the sentence, so that a
// further one begins anew.
func (r *reader) barBefore(items []item, i int) bool {
	for k := i - 1; k >= 0 && items[k+1].pause < stop; k-- {
		if items[k].is(kBars) {
			return !items[i-1].any(kSeen, kQueen)
		}
	}
	return false
}

// frontedBar reports whether "on bar six" begins what is said, as in "on bar
// six I found her": nothing that could hang there stands before it.
func (r *reader) frontedBar(items []item, on int) bool {
	pause := items[on].pause
	counted := on == 1 && items[0].is(kNum) || on == 2 && items[0].is(kNum) && items[1].isWord3("more", "others", "further")
	if counted && pause == none && r.sentenceNo-r.cellsSentence == 1 && r.closed(items, on+1) {
		return false // "two sealed cells on bar four. Another on bar six"
	}
	if on > 0 && items[on-1].is(kAnd) {
		pause = max(pause, items[on-1].pause)
	}
	if pause > none && (r.findingBehind(items, on+2) || on+3 < len(items) && items[on+1].is(kArt) && r.findingBehind(items, on+3)) {
		return true // "eggs on bar three, on bar four sealed brood"
	}
	if on > 0 && items[on-1].is(kAnd) && placedTurn(items, on) {
		return true // "bar two has eggs and on bar three a little brood"
	}
	for k := on - 1; k >= 0; k-- {
		it := &items[k]
		if it.is(kBars) && r.heads(items, k) && items[on].pause > none {
			return true
		}
		if it.anyOf(hangsThere) {
			if it.any3(kContent, kCell, kStage) && items[on].pause == none && r.frontedStyle(items, k) && r.findingBehind(items, on+2) {
				return true // "on bar three I have eggs on bar four larvae"
			}
			return false
		}
		if items[k+1].pause >= colon {
			return true
		}
	}
	return true
}

// frontedStyle reports whether the sentence puts "on bar three" before what is
// found there.
func (r *reader) frontedStyle(items []item, i int) bool {
	for k := i; k > 0 && items[k].pause < stop; k-- {
		if items[k].is(kBars) && items[k-1].is(kOn) {
			opens := k == 1 || items[k-1].pause >= stop // "On bar three, brood and on bar four pollen."
			return k < i && r.frontedBar(items, k-1) && (items[k+1].pause == none || opens && items[k+1].pause == comma)
		}
	}
	return false
}

// findingBehind reports whether a finding follows before the next pause.
func (r *reader) findingBehind(items []item, i int) bool {
	for ; i < len(items) && items[i].pause == none; i++ {
		if items[i].any3(kContent, kCell, kComb) {
			return true
		}
		if items[i].is(kBars) {
			return false
		}
	}
	return false
}

// inBrackets reports whether brackets hold the item and nothing else.
func (r *reader) inBrackets(it *item) bool {
	return it.start > 0 && int(it.end) < len(r.text) && r.text[it.start-1] == '(' && r.text[it.end] == ')'
}
