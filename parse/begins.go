package parse

import "strings"

// Sets of kinds that are asked about at every word.
var (
	// joiners begin a statement that goes on behind them.
	joiners = setOf(kAnd, kBut, kThen, kIf, kAsk, kMaybe, kSay, kUnsure, kPast, kNow)
	// turns are what a clause can begin with whether or not it opens a statement.
	turns = setOf(kName, kBars, kNext, kPrev, kSkip, kBut, kThen, kAnd)
	// beginners are what a clause can begin with where no pause stands before it.
	beginners = turns.or(openers).or(setOf(kPast, kNow, kDate))
	// unusual and unusualBefore are the kinds of words, and of those before them, for which
	// begins has more rules than that some words open a statement.
	unusual       = turns.or(setOf(kPast, kNow, kDate, kFixture))
	unusualBefore = setOf(kUndone, kTemper, kNow)
)

// begins reports whether a clause begins at item i.
func (r *reader) begins(items []item, i int) bool {
	it, prev := &items[i], &items[i-1]
	if prev.is(kBars) && r.pointsBack(items, i) {
		return true
	}
	if it.pause == none && !it.anyOf(unusual) && !prev.anyOf(unusualBefore) { // as for most words
		return it.laid != behindTheir && !prev.anyOf(joiners) && r.opens(items, i, prev)
	}
	if it.laid == behindTheir {
		return false
	}
	if it.pause == none && it.anyOf(runningIn) && r.runsInto(items, i) {
		return true
	}
	if it.anyOf(ofDays) && (it.is(kPast) && it.pause <= comma && thenOtherwise(items, i) || r.thenTold(items, i)) {
		return true
	}
	if prev.is(kTemper) && it.is(kPron) && it.pause == none && i+2 < len(items) && items[i+1].is(kBe) && items[i+2].any(kPast, kDate) {
		return false // "proper terrors they were last September"
	}
	if it.pause == none && !it.anyOf(turns) {
		forNow := prev.is(kNow) && it.is(kPlan) && i > 1 && items[i-2].any(kOn, kState) // "closed it for now remind me to open it", "it is open right now remind me to close it"
		return (forNow || !prev.anyOf(joiners)) && r.opens(items, i, prev)
	}
	if turn := r.turnsTo(items, i); turn != unknown {
		return turn == doesOpen
	}
	if it.pause == comma && r.beginsBehindComma(items, i) {
		return true
	}
	return (it.pause > none || !prev.anyOf(joiners)) && r.opens(items, i, prev)
}

// runningIn are the kinds of words that can begin a clause where no pause stands before them.
var runningIn = setOf(kNow, kIf, kAnd, kDo, kDate)

// runsInto reports whether a clause begins at item i where no pause stands before it, by
// what is said right before and behind.
func (r *reader) runsInto(items []item, i int) bool {
	it, prev, next := &items[i], &items[i-1], &noItem
	if i+1 < len(items) {
		next = &items[i+1]
	}
	switch {
	case it.is(kNow) && i+2 < len(items) && next.is(kIf) && next.pause == none && (items[i+2].text == "you" || strings.HasPrefix(next.text, "if you")):
		return true // "larvae on bar six now if you ever see that"
	case it.is(kIf) && prev.is(kNow) && i == 2 && items[0].is(kName):
		return true // "hive eleven now if I can find my glasses"
	case it.is(kAnd) && r.foundInPast(items[i+1:]) && ifYou(items[:i]):
		return true // "you can see them if you hold it up to the sun and the queen was on six"
	case it.is(kAnd) && prev.is(kUnsure) && next.is(kDo) && r.rule(next, kDo).Form == "todo":
		return true // "queen not looked for and treat these on Friday"
	case prev.is(kUndone) && it.is(kDo) && i > 1 && items[i-2].any3(kCell, kStage, kCellKind) && strings.HasPrefix(prev.text, "lef"):
		return true // "two sealed cells left alone inspect again on Sunday"
	case (it.is(kNow) || it.is(kDate) && it.day.today) && i+2 < len(items) && next.any3(kShe, kPron, kQueen) && items[i+2].is(kBe) && !prev.anyOf(joiners) && r.backToNow(items, i):
		return true // "last time she was on bar two today she's on three"
	case it.is(kDate) && it.day.today && next.is(kUnseen) && !prev.anyOf(joiners.without(setOf(kPast, kNow))) && r.backToNow(items, i):
		return true // "the queen was on bar four last time today no sign of her"
	}
	return false
}

// ifYou reports whether the items end with a condition that anybody may set: "if you squint".
func ifYou(items []item) bool {
	for k := len(items) - 1; k > 0 && k > len(items)-8 && items[k].pause == none; k-- {
		if items[k].text == "you" && items[k-1].is(kIf) || items[k].is(kIf) && strings.HasPrefix(items[k].text, "if you") {
			return true
		}
	}
	return false
}

// foundInPast reports whether some items begin with what was found: "the queen was", "we saw".
func (r *reader) foundInPast(items []item) bool {
	for k := 1; k < len(items) && k <= 3 && items[k].pause == none; k++ {
		if items[0].any6(kArt, kQueen, kShe, kBees, kThere, kPron) && (strings.HasPrefix(items[k].text, "was") || items[k].isWord4("were", "saw", "had", "found")) {
			return items[0].text != "you"
		}
	}
	return false
}

// beginsBehindComma reports whether a comma alone parts a clause that begins at item i.
func (r *reader) beginsBehindComma(items []item, i int) bool {
	it, prev := &items[i], &items[i-1]
	switch {
	case it.is(kBe) && prev.is(kDate) && prev.day.ago:
		return true // "bar 9, which I put in a fortnight ago, is half built"
	case r.behindAside(items, i):
		return true // "bars 12 and 13, which I had meant to take, are half full"
	case r.wholeFinding(items, i) && (r.behindOtherDay(items, i) || r.partsFrom(items, i)):
		return true // "feed again on Friday, feeder empty", "no eggs, cross comb on bar 10"
	case r.bracketOfThen(items, i):
		return true // "queen not found (eggs were seen on Monday)"
	case it.any(kSubstance, kMeasure) && foodOnDay(items[:i]):
		return true // "OA Fri, syrup Sat"
	case it.is(kNum) && i+2 < len(items) && items[i+1].is(kBar) && items[i+2].is(kDo) && items[i+2].pause == none && r.rule(&items[i+2], kDo).Form == "done":
		return true // "follower back 1, one bar added"
	}
	asTold := it.text == "as" && i+1 < len(items) && items[i+1].any(kShe, kPron) // "we closed it, as she told us to"
	return asTold || r.backToNow(items, i) || placedTurn(items, i)
}

// wentOnTo reports whether the keeper goes on to other bars at item i, of which it is then
// told what they were like: "and to bar 7, where there was brood".
func (r *reader) wentOnTo(items []item, i int) bool {
	return i+2 < len(items) && items[i].text == "to" && items[i+1].is(kBars) && items[i+2].pause == comma && r.isWord(&items[i+2], "where", "which", "that")
}

// foodOnDay reports whether the items end with food or medicine, how much of it and a day
// ahead, and nothing else since the last pause.
func foodOnDay(items []item) bool {
	last := len(items) - 1
	if !items[last].is(kDate) || items[last].day.ago || items[last].day.today {
		return false
	}
	food := false
	for k := last - 1; k >= 0 && items[k+1].pause == none && items[k].any5(kSubstance, kMeasure, kOf, kArt, kOn); k-- {
		food = food || items[k].is(kSubstance)
	}
	return food
}

// pointsBack: "I will remove bars ten and eleven these are empty comb" begins anew
// with what the bars just named are.
func (r *reader) pointsBack(items []item, i int) bool {
	be := i + 1
	if be < len(items) && !items[be].is(kBe) && items[be].isWord2("one", "ones") {
		be++
	}
	return be+1 < len(items) && items[be].is(kBe) && items[be+1].any3(kContent, kComb, kFull) && items[i].isWord4("these", "those", "this", "that")
}

// datedTurn: "and on Thursday I'm going to …", "and come Friday we'll …".
func (r *reader) datedTurn(items []item, i int) bool {
	if items[i].is(kOn) || items[i].text == "come" {
		i++
	}
	if i < len(items) && items[i].is(kPast) && strings.HasPrefix(items[i].text, "last ") && hasDay(items[:i]) {
		return i+1 < len(items) && items[i+1].any(kPron, kShe) // "… on the 2nd, and last time I added a bar"
	}
	if i+1 < len(items) && items[i].is(kDate) && items[i+1].is(kDo) && items[i+1].pause == none && items[i].day.ahead && hasAhead(items[:i]) {
		return true // "on Friday I will feed them and tomorrow treat them"
	}
	subject := i+1 < len(items) && (items[i+1].is(kPron) && items[i+1].text != "it" || r.weWill(items, i+1))
	return subject && items[i].is(kDate) && items[i].pause == none && items[i+1].pause == none
}

// hasAhead reports whether a day to come is named.
func hasAhead(items []item) bool {
	for k := range items {
		if it := &items[k]; it.is(kDate) && !it.day.ago && !it.day.today {
			return true
		}
	}
	return false
}

// hasDay reports whether a day or a word of the past is named.
func hasDay(items []item) bool {
	return kindsOf(items).meet(ofDays)
}

// ofDays are the kinds of words that tell of a day.
var ofDays = setOf(kDate, kPast)

// placedTurn: "and on bar four I counted …", "and on bar three there's a little brood", "and, on bar
// five, the queen".
func placedTurn(items []item, i int) bool {
	if herThere(items, i) {
		return true
	}
	if i+2 >= len(items) || !items[i].is(kOn) || !items[i+1].is(kBars) || items[i+1].pause > none || items[i+2].pause > none {
		return false
	}
	return items[i+2].is(kPron) || items[i].pause == none && tellsThere(items, i+2)
}

// thereUpon: "last Sunday I requeened them, and there on bar six was the new queen" turns from
// what was done then to what was found.
func thereUpon(items []item, i int) bool {
	return i+3 < len(items) && items[i].text == "there" && items[i+1].is(kOn) && items[i+2].is(kBars) && items[i+3].is(kBe) && items[i+3].pause == none
}

// deedDoneThen reports whether something was done before, and not only looked at.
func (r *reader) deedDoneThen(items []item) bool {
	for k := len(items) - 1; k >= 0; k-- {
		if items[k].is(kDo) && r.rule(&items[k], kDo).Value != "inspect" {
			return true
		}
		if items[k].pause >= stop {
			break
		}
	}
	return false
}

// leadToFinding are the kinds of words between a place and what is found there.
var leadToFinding = setOf(kThere, kBe, kArt, kAmount, kStage, kNum, kAdv, kOf)

// tellsThere reports whether a finding begins at item k that has no place of its own behind
// it, as in "eggs on bar two and on bar three honey on bar four".
func tellsThere(items []item, k int) bool {
	for k < len(items) && (items[k].anyOf(leadToFinding) || items[k].is(kAnd) && items[k-1].is(kNum) && k+1 < len(items) && items[k+1].any(kNum, kSign)) && !items[k].is(kContent) {
		if items[k].pause > none {
			return false
		}
		k++
	}
	if k == len(items) || items[k].pause > none || !items[k].any3(kContent, kCell, kSign) {
		return false
	}
	return k+1 == len(items) || items[k+1].pause > none || !items[k+1].any(kOn, kBars)
}

// queenTurn reports whether "and the queen" at item i goes on about her behind what could
// not be told: "couldn't tell whether there were eggs, and the queen kept out of sight".
func queenTurn(items []item, i int) bool {
	return i+3 < len(items) && items[i+1].is(kArt) && items[i+2].is(kQueen) && items[i+3].any4(kUnseen, kSeen, kBe, kHave) && hasKind(items[:i], kUnsure)
}

// weWill reports whether "I will", "we'll" or the like stands at item i.
func (r *reader) weWill(items []item, i int) bool {
	if i < len(items) && items[i].is(kPlan) && (strings.HasPrefix(items[i].text, "we ") || strings.HasPrefix(items[i].text, "i ")) {
		return true
	}
	if i+1 < len(items) && items[i].is(kPlan) && items[i].text == "we'll" {
		return items[i+1].text != "see"
	}
	return i+1 < len(items) && items[i].is(kPron) && items[i+1].any(kWill, kPlan)
}

// standsSo: "and the feeder's empty already" tells how a fixture is now, "and the
// pattern overall is even" how she lays.
func (r *reader) standsSo(items []item, i int) bool {
	if i+1 < len(items) && items[i].is(kBe) && items[i+1].is(kBring) {
		return true // "eggs on bar two, and is bringing in pollen"
	}
	if i < len(items) && items[i].is(kArt) {
		i++
	}
	if i+1 < len(items) && items[i].is(kBrood) && items[i+1].any(kBe, kWhole) {
		return true
	}
	return r.undergoes(items, i) || i+2 == len(items) && items[i].is(kFixture) && items[i+1].is(kDo) || i+1 < len(items) && items[i].is(kFixture) && (items[i+1].isWord2("is", "'s") || strings.HasSuffix(items[i].text, "'s"))
}

// placedAhead reports whether "there is" leads on to a content and then to bars of
// its own.
func (r *reader) placedAhead(items []item, i int) bool {
	content := false
	for k := i + 1; k < len(items) && k <= i+10 && items[k].pause == none; k++ {
		switch it := &items[k]; {
		case it.is(kBars):
			return content && items[k-1].is(kOn)
		case it.is(kContent):
			content = true
		case it.anyOf(turnsAway):
			return false
		}
	}
	return false
}

// broughtAhead reports whether "there is" leads on to something that is carried in.
func (r *reader) broughtAhead(items []item, i int) bool {
	for k := i + 1; k < len(items) && k <= i+7 && items[k].pause == none; k++ {
		if items[k].is(kBring) {
			return items[k-1].any3(kContent, kPlant, kForage)
		}
		if !items[k].any(kBe, kArt, kAmount, kColour, kContent, kPlant, kForage, kAdv, kOf, kNum) {
			return false
		}
	}
	return false
}

// turnsAway are what ends the search for the place of a content.
var turnsAway = setOf(kThere, kQueen, kShe, kDo, kBut, kThen, kPron)

// afterOthers reports whether somebody else's bees were spoken of shortly before.
func (r *reader) afterOthers(items []item, i int) bool {
	return kindBefore(items, i, 8, stop, setOf(kTheirs))
}

// signAhead reports whether "there are" and no more stand before a sign or queen
// cells.
func (r *reader) signAhead(items []item, i int) bool {
	for k := i + 1; k < len(items) && k <= i+4 && items[k].pause == none; k++ {
		if items[k].any(kSign, kCell) {
			return true
		}
		if !items[k].any(kBe, kArt, kNum, kAmount, kNo, kAdv, kStage, kCellKind) {
			return false
		}
	}
	return false
}

// barsAtHead reports whether the phrase before the last comma begins with bars.
func barsAtHead(items []item, i int) bool {
	for i--; i > 0 && items[i].pause < comma; i-- {
	}
	return i >= 0 && items[i].is(kBars)
}

// comesIn: "and lime nectar is coming in".
func (r *reader) comesIn(items []item, i int) bool {
	if i > 1 && items[i-2].any(kPlant, kColour) {
		return false // "yellow and grey pollen is coming in"
	}
	for k := i; k+1 < len(items) && k <= i+4 && (k == i || items[k].pause == none); k++ {
		if v := r.value(&items[k], kContent); v == "nectar" || v == "pollen" {
			return items[k+1].is(kBe) && k+2 < len(items) && items[k+2].is(kBring)
		}
		if !items[k].any5(kPlant, kColour, kArt, kAmount, kAdv) {
			return false
		}
	}
	return false
}

// soMuch: "so calm that …" begins nothing.
func (r *reader) soMuch(items []item, i int) bool {
	if items[i].text != "so" || i+1 >= len(items) || items[i].pause > none {
		return false
	}
	return items[i-1].any3(kBe, kHave, kAdv) || items[i+1].any4(kTemper, kStrength, kAmount, kPattern)
}

// whichAreOn reports whether a relative clause tells no more than the bars that what
// stands before it is on.
func (r *reader) whichAreOn(items []item, i int) bool {
	on := i + 1
	if on < len(items) && (items[on].is(kBe) || items[on].isWord5("hangs", "hung", "sit", "sits", "sat")) {
		on++
	}
	if items[i-1].is(kFixture) && items[i].isWord2("which", "that") {
		on = min(on+1, len(items)-1)
		return items[on].is(kAfter) || items[on-1].is(kAfter) // "the follower, which stands behind bar 16"
	}
	return on+1 < len(items) && items[on].is(kOn) && items[on+1].is(kBars) && items[i-1].any3(kCell, kContent, kSign) && items[i].isWord2("which", "that")
}

// looks reports whether a word tells of size or age, of a comb or of whatever it
// stands before.
func (r *reader) looks(it *item) bool {
	switch r.value(it, kComb) {
	case "size=small", "size=large", "new=yes", "old=yes":
		return true
	}
	return false
}
