package parse

import "strings"

// Speech that is written without stops: a statement begins where its head stands, a place
// with its verb or what is on its way in, and what stands before it is whole.

// unstopped parts the statements of a line that its speaker's stops would part.
func (r *reader) unstopped(items []item) {
	from := 0 // of the statement in hand
	for i := 1; i < len(items); i++ {
		it := &items[i]
		if it.pause > none {
			from = i
			continue
		}
		if !it.anyOf(unstopping) {
			continue // as most
		}
		if begin := theseAre(items, from, i); begin > from {
			items[begin].pause, from = colon, begin
			continue
		}
		switch {
		case it.is(kOn) && r.placeAnew(items, from, i):
		case it.is(kTemper) && deniedBefore(items, from, i) && !(i+1 < len(items) && items[i+1].pause == none && items[i+1].any3(kBees, kQueen, kContent)):
			// "no queen cells gentle"
		case (it.is(kNow) || it.is(kDate) && it.day.today) && r.todayAnew(items, i):
		case it.any3(kBees, kFixture, kStores) && r.nounAnew(items, from, i):
			// "bar 5 has sealed brood solid bees are working the clover"
		case it.is(kBring):
			begin := r.cargoAnew(items, from, i)
			if begin > from {
				items[begin].pause, from = colon, begin
			}
			continue
		default:
			continue
		}
		it.pause, from = colon, i
	}
}

// theseAre is where "these are" begins before the temper at item i, and so the bees are spoken of
// anew: "bar five larvae these are a bit nervous"; from where it does not.
func theseAre(items []item, from, i int) int {
	if !items[i].is(kTemper) {
		return from
	}
	k := i - 1
	for k > from && items[k].any(kAdv, kAmount) && items[k+1].pause == none {
		k--
	}
	if k > from && items[k].isWord2("are", "were") && items[k].pause == none && items[k-1].isWord2("these", "those") {
		return k - 1
	}
	return from
}

// nounAnew reports whether the bees, a fixture or the stores at item i are the subject of a
// verb behind what is whole.
func (r *reader) nounAnew(items []item, from, i int) bool {
	it := &items[i]
	if it.is(kPron) || strings.HasPrefix(it.text, "they") || i+2 >= len(items) || !items[i+1].is(kBe) || items[i+1].pause > none || items[i-1].anyOf(leadToNoun) {
		return false
	}
	placed := i > from+1 && items[i-1].is(kBars) && items[i-2].is(kOn) // which may lead to it: "on bar 5 bees are …"
	return !placed || !items[max(i-3, 0)].is(kAnd) && !r.frontedBar(items, i-2)
}

// unstopping are the kinds of words without which nothing is to be parted.
var unstopping = setOf(kOn, kTemper, kBring, kNow, kDate, kBees, kFixture, kStores)

// leadToNoun are the kinds of words that the noun behind them, the subject of a verb, goes
// on from.
var leadToNoun = incomplete.or(setOf(kAnd, kOr, kBut, kThen, kIf, kAsk, kHave, kBe, kThere, kName, kPast, kNow, kDate, kAdv, kWord, kAmount, kNum, kPron, kColour, kEach))

// todayAnew reports whether today with its subject stands at item i behind another day:
// "I requeened them on Wednesday today I saw her".
func (r *reader) todayAnew(items []item, i int) bool {
	if i+2 >= len(items) || items[i+1].pause > none || !items[i+1].any3(kPron, kShe, kQueen) || items[i-1].anyOf(joiners) || items[i-1].anyOf(incomplete) {
		return false
	}
	return r.backToNow(items, i)
}

// placeAnew reports whether "on bar six" at item i begins what is said of that bar, where
// what stands before it has bars of its own: "bars 7 to 9 have brood with honey in the
// corners on bar 6 I found her".
func (r *reader) placeAnew(items []item, from, i int) bool {
	if i+2 >= len(items) || !items[i+1].is(kBars) || items[i+1].pause > none || items[i+2].pause > none || items[i-1].anyOf(leadToPlaceOf) || !r.tellsVerb(items, i+2) {
		return false
	}
	told := false
	for k := i - 1; k >= from; k-- {
		if !items[k].is(kBars) {
			told = told || items[k].anyOf(hangsThere)
			continue
		}
		return told && (r.heads(items, k) || k > from && items[k-1].is(kOn) && r.frontedBar(items, k-1))
	}
	return false
}

// leadToPlaceOf are the kinds of words whose place the bars behind them are.
var leadToPlaceOf = incomplete.or(setOf(kBe, kSeen, kQueen, kShe, kAnd, kOr, kBut, kThen, kHave, kPron, kThere))

// tellsVerb reports whether a verb of finding or being stands at item k, behind a place, and
// then what is there: "I found", "there were", "are many eggs".
func (r *reader) tellsVerb(items []item, k int) bool {
	if items[k].is(kThere) {
		return true
	}
	be := items[k].is(kBe)
	if !be && !items[k].is(kPron) {
		return false
	}
	for n := k + 1; n < len(items) && n <= k+5 && items[n].pause == none; n++ {
		switch it := &items[n]; {
		case be && it.any(kContent, kCell), !be && it.any4(kSeen, kUnseen, kHave, kUnsure):
			return true
		case be && !it.any6(kAmount, kNum, kArt, kStage, kAdv, kCellKind) && !it.any(kColour, kWord), !be && !it.any5(kAdv, kEach, kPron, kMaybe, kWord):
			return false
		}
	}
	return false
}

// deniedBefore reports whether a denial of cells or the like ends before item i.
func deniedBefore(items []item, from, i int) bool {
	for k := i - 1; k >= from; k-- {
		switch it := &items[k]; {
		case it.is(kNo):
			return k < i-1
		case !it.any6(kCell, kCellKind, kStage, kContent, kSign, kOr):
			return false
		}
	}
	return false
}

// cargoAnew is where "ivy nectar is coming in" begins, whose verb is item i, if it begins
// anew behind what is whole; else 0.
func (r *reader) cargoAnew(items []item, from, i int) int {
	begin, cargo := i, 0
	for begin > from && items[begin].pause == none {
		it := &items[begin-1]
		if it.is(kPlant) && begin-1 > from && (r.worksOn(items[from:begin]) || r.plantBefore(items[:begin], begin)) {
			break // "bees are working the lime nectar coming in"
		}
		if it.is(kContent) || cargo == 0 && it.is(kForage) {
			cargo = begin - 1
		} else if !(cargo == 0 && it.any(kBe, kAdv)) && !(cargo > 0 && it.any5(kColour, kPlant, kAmount, kForage, kArt)) {
			break
		}
		begin--
	}
	if cargo == 0 || begin == from || items[begin].pause > none || items[begin-1].anyOf(leadToCargo) {
		return 0
	}
	if prev := &items[begin-1]; prev.is(kBars) && r.heads(items, begin-1) || begin == cargo && prev.is(kWord) {
		return 0 // "logwood nectar coming in"
	}
	return begin
}

// leadToCargo are the kinds of words that what is carried in belongs to.
var leadToCargo = incomplete.or(setOf(kBe, kHave, kSeen, kAnd, kOr, kBut, kThen, kPron, kShe, kThere, kBees, kNum, kIf, kAsk, kPast, kDate, kBring))

// tellsAnew reports whether a clause behind hearsay, a question or what holds in general
// tells what its speaker did or saw, where no stop parts the two: "should I give them more room
// I saw the queen on bar 4".
func (r *reader) tellsAnew(list []clause, i int) bool {
	c, before := &list[i], &list[i-1]
	first := &c.items[0]
	if first.pause > none || len(before.items) < 3 || c.has(kIf) || before.has(kIf) && !strings.HasPrefix(before.items[0].text, "should ") {
		return false // "if it is cold the bees were right", "he says I fed them"
	}
	k := 1
	for k < len(c.items) && c.items[k].any(kHave, kAdv) {
		k++
	}
	if k == len(c.items) || !r.isWord(first, "i", "we") {
		return false
	}
	it := &c.items[k]
	return it.is(kDo) && r.rule(it, kDo).Form == "done" || it.is(kSeen) && !r.isWord(it, "see")
}
