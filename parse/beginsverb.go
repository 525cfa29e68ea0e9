package parse

import "strings"

// A verb may begin a statement by itself, as orders and sightings do in notes, or end the one
// whose object stands before it.

// deedSince reports whether a deed stands in the statement before item i, which
// a date may then belong to.
func (r *reader) deedSince(items []item, i int) bool {
	return kindBefore(items, i, 6, comma, setOf(kDo, kPlan))
}

// fixtureBehind reports whether the verb's object is an entrance or a floor.
func (r *reader) fixtureBehind(items []item, i int) bool {
	for k := i + 1; k < len(items) && k <= i+2; k++ {
		if items[k].is(kFixture) {
			return true
		}
	}
	return false
}

// seesHer: "saw the old queen" begins a statement without its subject.
func (r *reader) seesHer(items []item, i int) bool {
	for k := i + 1; k < len(items) && k <= i+3; k++ {
		if items[k].any5(kQueen, kShe, kMite, kSign, kContent) {
			return r.isWord(&items[i], r.wordsOf[seeingHer]...)
		}
	}
	return false
}

// orderAt: "check them on the twenty-eighth" is an order to oneself where a day
// ahead or "again" follows.
func (r *reader) orderAt(items []item, i int) bool {
	if r.rule(&items[i], kDo).Form != "todo" || r.twofold(&items[i]) || r.headsNote(items, i) || anotherLook(items[i].text) {
		return false
	}
	if i > 0 && items[i-1].is(kBe) || items[i].any(kState, kStage) {
		return false
	}
	for k := i + 1; k < len(items) && k <= i+5 && items[k].pause < colon; k++ {
		if items[k].is(kDate) && !items[k].day.ago && !items[k].day.today || items[k].text == "again" || items[k].is(kPlan) && strings.HasPrefix(items[k].text, "next ") {
			return true
		}
	}
	return false
}

// ofDates are the kinds of words that tell when, and of the little words beside
// them.
var ofDates = setOf(kDate, kOn, kAnd, kThen, kNow, kPast, kAdv, kArt, kDur, kFore)

// leadIn reports whether only a date and its little words stand before item i
// in the sentence: "on 17 May, I gave them a bar".
func (r *reader) leadIn(items []item, i int) bool {
	dated := false
	for k := i - 1; k >= 0 && items[k+1].pause < stop; k-- {
		if !items[k].anyOf(ofDates) {
			return false
		}
		dated = dated || items[k].any3(kDate, kPast, kDur)
	}
	return dated
}

// objectless reports whether a verb is the end of its statement but for a date.
func (r *reader) objectless(items []item, i int) bool {
	return i+1 == len(items) || items[i+1].pause > none || items[i+1].any(kDate, kAnd) || items[i+1].isWord2("while", "whilst")
}

// noObject are the kinds of words behind a verb that are no object of it.
var noObject = setOf(kDate, kAnd, kBut, kNow, kThere, kWhole, kAdv)

// lookedInVain reports whether a subject and its not having seen anything end the
// statement: what they did not see stands before.
func (r *reader) lookedInVain(items []item, i int) bool {
	k := i + 1
	if k >= len(items) || !items[k].any3(kUnseen, kNot, kNo) || items[k].pause > none || r.bareNo(&items[k]) {
		return false
	}
	return k+1 == len(items) || items[k+1].pause > none || items[k+1].anyOf(noObject) || items[k+1].text == "yet"
}

// ownDeed reports whether a verb of doing ends the statement at item i, at most
// behind "have".
func (r *reader) ownDeed(items []item, i int) bool {
	if i < len(items) && items[i].is(kHave) {
		i++
	}
	return i < len(items) && items[i].is(kDo) && items[i].pause == none && r.objectless(items, i)
}

// barsFirst reports whether bars, and "both" at most, stand before a subject
// whose verb takes them for its object.
func (r *reader) barsFirst(items []item, i int) bool {
	bars, k := i-1, i+1
	if bars > 0 && items[bars].text == "both" {
		bars--
	}
	if bars > 0 && items[bars].pause == none && !items[bars-1].any3(kAnd, kThen, kBut) {
		return false
	}
	for k < len(items) && items[k].any3(kPron, kHave, kAdv) {
		k++
	}
	return items[bars].is(kBars) && k < len(items) && items[k].is(kDo) && items[k].pause == none && traitsOf(r.rule(&items[k], kDo).Value).bars &&
		(r.objectless(items, k) || items[k+1].any4(kTo, kAfter, kFore, kTween) || items[k+1].isWord3("because", "since", "as"))
}
