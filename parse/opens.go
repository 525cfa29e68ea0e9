package parse

import (
	"math/bits"
	"slices"
	"strings"
)

// An item opens a statement of its own, or does not, by the kinds that it is of and
// by what stands around it. The rules of opensBy are asked in their order, each only
// of an item of its kinds, until one knows.

// opener is an item that may open a statement.
type opener struct {
	*item
	items []item
	i     int   // its place in them
	prev  *item // before it
	needs bool  // prev needs more behind it, which so opens nothing
}

// next is the item k places behind, or one of no kind.
func (o *opener) next(k int) *item {
	if o.i+k >= len(o.items) {
		return &noItem
	}
	return &o.items[o.i+k]
}

// verdict is what a rule says of an item.
type verdict uint8

const (
	unknown verdict = iota
	doesOpen
	doesNot
)

func verdictOf(opens bool) verdict {
	if opens {
		return doesOpen
	}
	return doesNot
}

// opensBy are the rules by which an item opens a statement or does not.
var opensBy = [...]struct {
	of  kinds // only an item of one of these kinds is asked
	ask func(*reader, *opener) verdict
}{
	{setOf(kAsk), (*reader).opensAsking},
	{setOf(kUndone), (*reader).opensUndone},
	{setOf(kThere, kNo), (*reader).opensThere},
	{setOf(kLeaf), (*reader).opensLeaf},
	{setOf(kYes), (*reader).opensYes},
	{setOf(kOn), (*reader).opensOnDay},
	{setOf(kState), (*reader).opensState},
	{setOf(kSeen), (*reader).opensSeen},
	{setOf(kPlan, kWill, kMaybe), (*reader).opensPlan},
	{setOf(kPlan, kIf, kUnsure, kSay, kTheirs, kUndone), (*reader).opensCue},
	{setOf(kPron), (*reader).opensSubject},
	{setOf(kShe), (*reader).opensShe},
	{setOf(kQueen), (*reader).opensQueen},
	{setOf(kMaybe), (*reader).opensMaybe},
	{setOf(kDo), (*reader).opensDeed},
	{setOf(kBees, kFixture, kStores), (*reader).opensNoun},
	{setOf(kDate), (*reader).opensDay},
	{setOf(kBrood, kContent, kAmount), (*reader).opensBrood},
}

// openRules tells which rules of opensBy are for a word, and openers for which words
// there are any.
var (
	openRules = byKindOf(len(opensBy), func(row int) kinds { return opensBy[row].of })
	openers   = openRules.all()
)

// incomplete words need more behind them, which so opens nothing.
var incomplete = setOf(kArt, kOn, kOf, kFrom, kTo, kAfter, kTween, kFore, kWithX, kNo, kUndone, kPlan, kWill, kDo, kSay, kMaybe, kUnsure, kUnseen)

// opens reports whether the item can begin a statement of its own.
func (r *reader) opens(items []item, i int, prev *item) bool {
	it := &items[i]
	if !it.anyOf(openers) {
		return false
	}
	if prev.is(kSign) && sawSoMany(items, i) || it.isWord2("it", "them") && r.endsBehind(items, i, offWords) {
		return false // "wasps, I saw four", "took three combs off it, 11 lb"
	}
	o := &r.opener
	o.item, o.items, o.i, o.prev = it, items, i, prev
	o.needs = it.pause == none && prev.anyOf(incomplete)
	untold := prev.is(kDo) && i > 1 && items[i-2].is(kUndone) // "I didn't feed them they've plenty"
	if o.needs && (untold || prev.any(kOn, kUndone)) && it.isWord3("i", "we", "they") {
		o.needs = false // "and beetles inside I will feed them": a subject is no object
	}
	if o.needs && prev.is(kUnseen) && i > 2 && items[i-2].is(kPron) && items[i-3].any(kQueen, kShe) && it.any3(kStores, kBees, kFixture) {
		o.needs = false // "the queen I didn't see stores are fair": what was not seen stands before
	}
	for due := openRules.due(it.kinds); due != 0; due &= due - 1 {
		if v := opensBy[bits.TrailingZeros64(due)].ask(r, o); v != unknown {
			return v == doesOpen
		}
	}
	return false
}

// endsBehind reports whether item i ends its phrase right behind a word of a list.
func (r *reader) endsBehind(items []item, i int, of list) bool {
	ends := i+1 == len(items) || items[i+1].pause > none
	return ends && i > 0 && items[i].pause == none && r.isWord(&items[i-1], r.wordsOf[of]...)
}

// builtNone reports whether a denial at item i is what the bees before it have built: "if they
// have drawn no cells".
func builtNone(items []item, i int) bool {
	return i > 2 && items[i].pause == none && items[i-1].isWord4("drawn", "built", "started", "made") && items[i-2].is(kHave) && items[i-3].any(kPron, kBees)
}

// sawSoMany reports whether it is told at item i how many were seen of what stands before:
// "hive beetles, I saw four", "saw three of them on bar 2".
func sawSoMany(items []item, i int) bool {
	if items[i].isWord2("i", "we") && i+1 < len(items) {
		i++
	}
	if i+1 == len(items) || !items[i].is(kSeen) || !items[i+1].is(kNum) || items[i+1].n.article || items[i+1].pause > none {
		return false
	}
	return i+2 == len(items) || items[i+2].pause >= comma || items[i+2].any3(kOf, kOn, kPlace) || slices.Contains(prepositionsOfShelter, items[i+2].text)
}

func (r *reader) opensAsking(o *opener) verdict {
	if o.pause == none && o.prev.is(kWord) && strings.HasSuffix(o.text, " you") && o.next(1).is(kSeen) && o.next(1).pause == none {
		return doesOpen // "the rest nectar Piet can you see her"
	}
	return verdictOf(o.pause > none || !o.prev.anyOf(notAsked))
}

// notAsked are the kinds of words behind which a verb asks nothing.
var notAsked = setOf(kPron, kShe, kWill, kBe, kThere, kBars, kQueen, kBees, kContent, kCell, kFixture, kStores, kWord, kThen, kSeen, kSign)

func (r *reader) opensUndone(o *opener) verdict {
	if o.prev.is(kDo) && o.pause == none {
		return doesNot
	}
	return unknown
}

func (r *reader) opensThere(o *opener) verdict {
	if o.pause > none {
		return unknown
	}
	there := strings.HasPrefix(o.text, "there") && !o.needs
	switch {
	case there && o.is(kThere) && r.placedAhead(o.items, o.i):
		return doesOpen // "bar three has pollen there's a few eggs on bar four"
	case o.is(kNo) && r.bareNo(o.item) && o.next(1).is(kSign) && r.afterOthers(o.items, o.i):
		return doesOpen // "my neighbour's bees had foulbrood no foulbrood here"
	case there && r.signAhead(o.items, o.i) && !(o.prev.is(kBars) && o.i > 1 && o.items[o.i-2].is(kOn) && r.frontedBar(o.items, o.i-2)):
		return doesOpen // "bar eight nectar there are ants on the wire"
	case there && o.is(kThere) && r.broughtAhead(o.items, o.i):
		return doesOpen // "I didn't open that one there's pollen going in"
	case there && nowThere(o.items[o.i:]) && dayGoneBefore(o.items, o.i):
		return doesOpen // "bar nine I put that in last Sunday and there's still no comb on it"
	}
	return unknown
}

// dayGoneBefore reports whether an earlier day, and at most "and" or "but", stands right
// before item i.
func dayGoneBefore(items []item, i int) bool {
	if i > 1 && items[i-1].any(kAnd, kBut) {
		i--
	}
	return items[i-1].is(kDate) && items[i-1].day.ago
}

func (r *reader) opensLeaf(o *opener) verdict {
	if o.pause == none && o.prev.isWord2("it", "them") {
		return doesOpen
	}
	if o.pause == none && !o.needs && strings.HasPrefix(r.rule(o.item, kLeaf).ID, "temperature") && o.prev.any3(kWord, kDo, kNow) && !r.isWord(o.prev, r.wordsOf[toDegrees]...) && planSince(o.items, o.i) {
		return doesOpen // "so I'll be brief eleven degrees and cloudy"
	}
	return unknown
}

// planSince reports whether a word of a plan stands before item i, and no pause between.
func planSince(items []item, i int) bool {
	return kindBefore(items, i, i, comma, setOf(kPlan, kWill))
}

func (r *reader) opensYes(o *opener) verdict {
	return verdictOf(o.pause > none || !o.prev.any(kFixture, kContent, kComb))
}

func (r *reader) opensOnDay(o *opener) verdict {
	if o.pause > none || !o.next(1).any(kDate, kPast) || r.foodGoes(o.items, o.i) {
		return unknown
	}
	if r.datedTurn(o.items, o.i) && !r.deedSince(o.items, o.i) && !o.prev.lists.has(swarming) {
		return doesOpen
	}
	return unknown
}

// foodGoes reports whether the day behind item i is that on which food or medicine goes on, and
// not of what follows: "formic acid goes on Friday I saw no queen".
func (r *reader) foodGoes(items []item, i int) bool {
	return i > 1 && items[i-2].is(kSubstance) && items[i-1].pause == none && r.isWord(&items[i-1], r.wordsOf[goingOn]...)
}

func (r *reader) opensState(o *opener) verdict {
	switch {
	case !o.is(kDo) || o.needs:
	case o.prev.is(kFixture) && o.next(1).is(kFixture) && strings.HasPrefix(o.next(1).text, "the "):
		return doesOpen // "closed the floor reduced the entrance"
	case !o.prev.any6(kBe, kFixture, kPron, kHave, kAdv, kAnd) && r.fixtureBehind(o.items, o.i):
		return doesOpen
	}
	return unknown
}

// beforePast are the kinds of words that a verb of an earlier sighting goes on from.
var beforePast = setOf(kPron, kShe, kHave, kBe, kAnd, kThen, kAdv)

func (r *reader) opensSeen(o *opener) verdict {
	switch {
	case o.is(kPast):
		return verdictOf(!o.prev.anyOf(beforePast)) // "no sign of the queen last saw her on the 2nd"
	case !o.needs && !o.prev.anyOf(seers) && r.seesHer(o.items, o.i):
		return doesOpen
	case o.prev.is(kAnd) && o.i > 1 && o.items[o.i-2].any5(kContent, kCell, kSide, kPlace, kPattern) && r.seesHer(o.items, o.i):
		return doesOpen // "emerging brood and see the queen is here"
	}
	return unknown
}

// seers are the kinds of words that a verb of seeing belongs to.
var seers = setOf(kPron, kShe, kHave, kBe, kQueen, kAnd, kAdv, kWill, kNo, kThere)

func (r *reader) opensPlan(o *opener) verdict {
	switch {
	case r.toBeDone(o.items, o.i):
		return doesNot
	case !o.is(kPlan) || o.pause > none:
		return unknown
	case o.item.isWord4("next time", "next visit", "next week", "next inspection") && r.deedSince(o.items, o.i) && o.prev.any6(kQueen, kFixture, kBars, kBees, kBar, kShe):
		return doesNot // "mark the queen next time"
	case strings.HasSuffix(o.text, "planned"):
		return doesNot // "treatment with thymol planned for the twentieth"
	}
	return unknown
}

func (r *reader) opensCue(o *opener) verdict {
	if o.pause > none {
		return doesOpen
	}
	if o.is(kTheirs) && (o.prev.text == "than" || strings.HasPrefix(o.text, "in ") || strings.HasPrefix(o.text, "of ") && o.prev.is(kNum)) || o.is(kSay) && (strings.HasPrefix(o.text, "is ") || atLarge(o.text)) {
		return doesNot // "foulbrood is said to be over the river"
	}
	return verdictOf(!o.prev.any4(kPron, kShe, kWill, kBe))
}

// opensSubject: "I", "we" or "they" opens a statement unless what they did has its
// object before it.
func (r *reader) opensSubject(o *opener) verdict {
	items, i, prev, close := o.items, o.i, o.prev, o.pause == none
	beside := close && (o.needs || prev.is(kHave)) // which opens nothing
	switch {
	case beside && !prev.is(kState): // as an object does not
		return doesNot
	case r.leadIn(items, i), close && prev.is(kQueen), prev.isWord3("whom", "that", "what"):
		return doesNot
	case close && prev.is(kDate) && i > 1 && items[i-2].is(kOn) && prev.pause == none && !r.deedSince(items, i-2):
		return verdictOf(r.foodGoes(items, i-2))
	case close && (prev.is(kFixture) || prev.is(kAdv) && i > 1 && items[i-2].is(kFixture)) && r.ownDeed(items, i+1):
		return doesNot // "the entrance I've reduced", "the floor also I have closed"
	case close && r.value(prev, kFixture) == "follower" && (r.value(o.next(1), kDo) == "move_bar" || o.next(1).is(kHave) && r.value(o.next(2), kDo) == "move_bar"):
		return doesNot // "the follower I moved two bars back"
	case close && prev.is(kFixture) && o.next(1).isWord3("found", "left", "kept") && (o.next(2).is(kState) || o.next(2).is(kAdv) && o.next(3).is(kState)):
		return doesNot // "the entrance I found still reduced"
	case close && prev.is(kBar) && i > 1 && items[i-2].isWord2("this", "that") && r.ownDeed(items, i+1):
		return doesNot // "mould on bar 12, and this bar I took away"
	case close && r.barsFirst(items, i):
		return doesNot // "bars eleven and twelve both I have removed"
	case close && prev.is(kContent) && (o.next(1).is(kBring) || o.next(1).is(kBe) && o.next(2).is(kBring)):
		return doesNot // "yellow pollen they are bringing"
	case close && o.next(1).anyOf(carrying) && r.plantBefore(items, i):
		return doesNot // "from the lime trees they are bringing in nectar"
	case close && prev.any3(kCell, kContent, kSign) && o.next(1).is(kHave) && o.next(2).is(kSeen) && r.objectless(items, i+2):
		return doesNot // "two empty cups I have found"
	case prev.any4(kCell, kContent, kSign, kLeaf) && r.lookedInVain(items, i):
		return doesNot // "wasps I have not seen any"
	case prev.is(kAmount) && strings.HasSuffix(prev.text, " of"):
		return doesNot // "and plenty of it"
	case prev.is(kState) && i > 1 && items[i-2].is(kBe):
		return doesOpen // "the floor was closed i opened it"
	case close && prev.is(kState) && r.leftSo(items, i-1):
		return doesOpen // "left the entrance reduced i'll look again on friday"
	}
	return verdictOf(!beside)
}

// leftSo reports whether the state at item k is the one that a fixture before it was left in: "left the
// floor open", "I left it reduced", "entrance left closed".
func (r *reader) leftSo(items []item, k int) bool {
	for n := k - 1; n >= max(0, k-3) && items[n+1].pause == none; n-- {
		if r.isWord(&items[n], "left", "leave", "kept", "keep") {
			return true
		}
		if !items[n].any6(kFixture, kArt, kPron, kAdv, kBees, kShe) {
			return false
		}
	}
	return false
}

// carrying are the kinds of verbs of what bees bring home.
var carrying = setOf(kBe, kBring, kForage)

// plantBefore reports whether the words before item i, back to the last pause, tell
// only from which plant something comes.
func (r *reader) plantBefore(items []item, i int) bool {
	plant := false
	for k := i - 1; k >= 0; k-- {
		switch {
		case items[k].is(kPlant):
			plant = true
		case items[k].is(kFrom), items[k].text == "off":
			return plant
		case !items[k].any(kArt, kAdv, kWord, kPlace) || items[k].pause > none:
			return false
		}
	}
	return false
}

func (r *reader) opensMaybe(o *opener) verdict {
	next, close := o.next(1), o.pause == none
	if close && (o.i+1 == len(o.items) || next.pause >= stop) {
		return doesNot // "foulbrood could not be ruled out"
	}
	if close && o.prev.any4(kContent, kCell, kBrood, kWhole) && next.any6(kOn, kPlace, kBars, kPattern, kNum, kFull) {
		return doesNot // "two supersedure cells I reckon on bar five"
	}
	return verdictOf(!o.needs && !o.prev.any3(kPron, kBe, kHave))
}

func (r *reader) opensDeed(o *opener) verdict {
	if o.is(kDot) && o.pause == none && o.prev.is(kColour) {
		return doesNot // "new queen put in today white dot"
	}
	items, i, prev, close := o.items, o.i, o.prev, o.pause == none
	goesOn := o.needs || o.any5(kQueenIs, kState, kStage, kSeen, kComb) || prev.any6(kPron, kShe, kHave, kBe, kAdv, kNum)
	switch {
	case close && prev.is(kBar) && !prev.is(kBars) && !prev.plural && prev.pause == comma && r.objectless(items, i) && barsAtHead(items, i-1):
		return doesNot // "b7 comb fell off, bar removed"
	case close && goesOn && prev.anyOf(leadToOrders):
		return doesNot // as most
	case o.pause == comma && r.deedAnew(items, i):
		return doesOpen
	case close && prev.is(kDate) && !prev.day.today && r.twofold(o.item) && r.leadIn(items, i):
		return doesNot // "tomorrow split them"
	case o.text == "came out":
		return doesNot // "bar 12 came out and went on the fire"
	case !prev.anyOf(leadToOrders) && r.orderAt(items, i):
		return doesOpen
	case o.pause == comma && prev.any(kContent, kComb) && r.objectless(items, i) && traitsOf(r.rule(o.item, kDo).Value).bars && barsAtHead(items, i):
		return doesNot // "12 empty comb, removed"
	case close && prev.is(kSubstance) && r.objectless(items, i):
		return doesNot // "1 litre of syrup fed today"
	case close && prev.is(kContent) && i > 2 && items[i-2].is(kOf) && items[i-3].is(kBar):
		return doesNot // "two bars of honey taken"
	case close && prev.is(kContent) && o.item.text == "left":
		return doesNot // "a little brood left on bar eight"
	case close && prev.is(kFixture), close && r.onlyCells(items[:i]) && r.objectless(items, i):
		return doesNot // "two sealed cells on bar 5 cut out"
	case close && prev.is(kBars) && (prev.pause >= stop || i > 1 && items[i-2].is(kName)) && (r.objectless(items, i) || o.next(1).any(kTo, kAfter) && traitsOf(r.rule(o.item, kDo).Value).bars):
		return doesNot // "bar nine removed", "bars four and five moved to hive three"
	case o.pause == comma && o.is(kQueenIs) && o.next(1).any(kArt, kShe) && !o.needs:
		return verdictOf(o.next(1).is(kShe) || o.next(2).is(kQueen)) // "bar 12 is half drawn, marked the queen"
	case goesOn:
		return doesNot
	}
	return verdictOf(r.rule(o.item, kDo).Form == "done")
}

// leadToOrders are the kinds of words behind which a verb is no order to oneself.
var leadToOrders = setOf(kPron, kShe, kWill, kPlan, kTo, kAnd, kUndone, kNo, kAdv, kArt, kOf, kSubstance)

func (r *reader) opensNoun(o *opener) verdict {
	if o.is(kStores) && o.pause == none && o.prev.any(kBars, kContent) && o.next(1).any(kBe, kStored) {
		return doesOpen // "capped brood on bar three stores are low"
	}
	if prev := o.i - 1; !o.needs && o.pause == none && prev > 2 && o.prev.is(kUnseen) && o.items[prev-1].is(kPron) && o.items[prev-2].any(kQueen, kShe) && o.next(1).any(kBe, kStored) {
		return doesOpen // "the queen I didn't see stores are fair"
	}
	if o.is(kFixture) && o.is(kPlace) && o.pause == comma && o.prev.is(kContent) && (o.i+1 == len(o.items) || o.next(1).pause >= comma) {
		return doesNot // "drone brood, bottom"
	}
	return verdictOf(!o.needs && o.pause > none)
}

// opensDay: "bees are quiet in ten days we will check again".
func (r *reader) opensDay(o *opener) verdict {
	return verdictOf(o.pause == none && o.day.ahead && r.weWill(o.items, o.i+1) && !o.prev.any(kPlan, kDo))
}

func (r *reader) opensBrood(o *opener) verdict {
	switch {
	case o.prev.is(kPlan) && o.is(kContent) && o.next(1).is(kOn) && strings.HasPrefix(o.prev.text, "next ") && r.deedSince(o.items, o.i-1):
		return doesOpen // "i'll mark her next time eggs on bar six"
	case o.pause > none || !o.prev.any(kSubstance, kDate):
		return doesNot
	}
	// "I'll treat next week with thymol brood's on bars three to seven"
	return verdictOf(o.next(1).is(kBe) && o.next(2).any(kOn, kBars) && r.deedSince(o.items, o.i))
}
