package parse

import "strings"

// What a clause begins with where the talk turns to a hive or bars, or is joined on.

// turnsTo tells whether item i begins a clause where it names a hive or bars, leads on to them
// or joins what follows, and where more than a comma stands before it; unknown of others.
func (r *reader) turnsTo(items []item, i int) verdict {
	switch it := &items[i]; {
	case it.pause >= colon:
		asked := i <= 5 && youAsked(items[:i]) // "you ask after the queen: she was raised in 2025"
		return verdictOf(asked || !labelsNext(&items[i-1], it))
	case it.is(kName):
		return verdictOf(r.nameBegins(items, i))
	case it.is(kBars):
		return verdictOf(r.barsBegin(items, i))
	case it.any3(kNext, kPrev, kSkip) && !it.any(kPlan, kDate):
		return verdictOf(stepBegins(items, i))
	case it.is(kBut):
		return verdictOf(r.butBegins(items, i))
	case it.is(kThen):
		return verdictOf(r.thenBegins(items, i))
	case it.is(kAnd):
		return verdictOf(i+1 < len(items) && r.andBegins(items, i))
	}
	return unknown
}

// labelling are the kinds of words that a colon makes the label of what follows.
var labelling = setOf(kBars, kName, kQueen, kStores, kBees, kMethod, kMite, kBrood, kContent, kFixture, kCell, kSign, kStrength, kHive, kDo, kBring, kPast)

// labelsNext reports whether an item is the label of the next, which so belongs to it.
func labelsNext(it, next *item) bool {
	return it.colon && (it.anyOf(labelling) || it.is(kComb) && next.is(kBars))
}

func (r *reader) nameBegins(items []item, i int) bool {
	it, prev := &items[i], &items[i-1]
	if it.several() {
		return it.pause > none || !prev.any5(kDo, kOn, kOf, kTo, kArt)
	}
	return !r.argument(items, i) && !r.lookedAt(items, i) && !r.doneTo(items, i)
}

func (r *reader) barsBegin(items []item, i int) bool {
	prev := &items[i-1]
	if items[i].pause == none && (prev.is(kPast) || prev.is(kDate) && prev.day.ago) && !r.toldBefore(items, i-1) {
		return false // "last time bar eight had eggs"
	}
	if prev.is(kPlan) && items[i].pause == none && strings.HasPrefix(prev.text, "next ") && hasKind(items[:i-1], kDo) {
		return true // "mark her next time bar two honey"
	}
	return r.heads(items, i)
}

// stepBegins reports whether "next bar" or the like begins a clause.
func stepBegins(items []item, i int) bool {
	prev := &items[i-1]
	if prev.any4(kAnd, kThen, kOn, kTo) || saysSoOf(prev) || asAre(items, i) {
		return false
	}
	return !(prev.is(kBars) && (i == 1 || prev.pause >= comma) && strings.HasPrefix(items[i].text, "and "))
}

func (r *reader) butBegins(items []item, i int) bool {
	if items[i].pause == none && items[i-1].any(kBut, kAsk) {
		return false // "but just a small patch"
	}
	if items[i].text == "though" && behindThough(items, i) {
		return false
	}
	return !r.notOnly(items, i) && !r.onlySo(items, i) && !onlyShare(items, i)
}

// behindThough reports whether the bars behind "though" at item i are those of what stands before
// it: "eggs though on bar three", "the queen's there though on bar two".
func behindThough(items []item, i int) bool {
	if items[i].pause > none || i+2 >= len(items) || !items[i+1].is(kOn) || !items[i+2].is(kBars) {
		return false
	}
	if items[i-1].any(kContent, kCell) {
		return items[i+1].pause == none
	}
	seen := items[i-1].any5(kSeen, kQueen, kShe, kThere, kSign)
	return seen && items[i+1].pause <= comma && (i+3 == len(items) || items[i+3].pause > none || !items[i+3].anyOf(foundThere) && !items[i+3].any4(kBe, kHave, kQueen, kNo))
}

func (r *reader) thenBegins(items []item, i int) bool {
	it, prev := &items[i], &items[i-1]
	switch {
	case r.whichAreOn(items, i), prev.is(kSeen) && it.isWord4("afterwards", "after", "later", "again"):
		return false // "two cells which hang on bar 9", "seen afterwards, bar 5"
	case it.pause == none && (prev.any(kBe, kWill) || prev.is(kBars) && it.text == "which"), prev.is(kAnd):
		return false
	case it.text == "then" && (i+1 == len(items) || items[i+1].pause >= comma):
		return false
	}
	return !r.soMuch(items, i)
}

// andBegins reports whether what "and" joins is a clause of its own.
func (r *reader) andBegins(items []item, i int) bool {
	it, next := &items[i], &items[i+1]
	switch {
	case r.opens(items, i+1, it), r.comesIn(items, i+1), r.standsSo(items, i+1):
		return true
	case r.datedTurn(items, i+1), placedTurn(items, i+1), r.wentOnTo(items, i+1), r.andOtherDay(items, i), r.andWhole(items, i):
		return true
	case isByNow(items, i+1), thereUpon(items, i+1) && r.deedDoneThen(items[:i]):
		return true
	case hasDay(items[:i]) && r.deedDoneThen(items[:i]) && r.foundWhenOpened(items[i+1:]):
		return true
	case it.pause == comma && (queenTurn(items, i) || nowThere(items[i+1:]) && hasDay(items[:i])):
		return true
	}
	return (next.is(kNow) || next.is(kDate) && next.day.today) && r.backToNow(items, i+1)
}

// foundWhenOpened reports whether how a part of the hive was is told, and behind it that it was opened:
// "the feeder was empty when I lifted the lid".
func (r *reader) foundWhenOpened(items []item) bool {
	if len(items) < 6 || !items[0].is(kFixture) || !items[1].is(kBe) {
		return false
	}
	for k := 2; k+2 < len(items) && k < 6 && items[k].pause == none; k++ {
		if r.onOpening(items[k:]) {
			return true
		}
	}
	return false
}

// onOpening reports whether "when I opened up" begins some items.
func (r *reader) onOpening(items []item) bool {
	return len(items) > 2 && items[0].text == "when" && items[0].pause == none && items[1].isWord2("i", "we") && r.isWord(&items[2], r.wordsOf[liftingLids]...)
}
