package parse

import "strings"

// Findings dictated one behind the other without a stroke: where what was said is
// whole and what follows tells its own place or state, a pause parts the two, as a
// writer's semicolon would: "honey on 9 and 10 chalkbrood on bar 8".

// runOn parts the statements of a line that run on into each other.
func (r *reader) runOn(items []item) {
	from := 0
	for i := 1; i < len(items); i++ {
		if items[i].pause > none || items[i].any(kThen, kBut) {
			from = i
			continue
		}
		if items[i].anyOf(mayPart) {
			if pause := r.partedByDay(items, from, i); pause > none {
				items[i].pause, from = pause, i
				continue
			}
		}
		if !items[i].anyOf(ownBeginners) && !items[i].lists.has(swarming) {
			continue // as most words
		}
		if before := &items[i-1]; before.anyOf(leadOn) && !before.anyOf(mayEnd) {
			continue // as behind most others
		}
		if items[i].is(kBar) && items[i].plural && i+1 < len(items) && barNumber(&items[i-1]) && barNumber(&items[i+1]) && namesSoMany(items, i+1, int(items[i-1].n.lo)) {
			continue // "brood on five bars four to eight"
		}
		if pause := r.partedAt(items, from, i); pause > none {
			items[i].pause, from = pause, i
		}
	}
}

// mayPart are the kinds of words at which a statement may begin whatever stands before it.
var mayPart = setOf(kDate, kPast, kNow, kOn, kSeen, kUnseen)

// partedByDay is the pause before such a word at item i: it tells the day of what follows, or of
// now what was told of the time before, or each place has what is found behind it. None where it
// parts nothing.
func (r *reader) partedByDay(items []item, from, i int) pause {
	switch {
	case items[i].any4(kDate, kPast, kNow, kOn) && r.dayOfNext(items, from, i), seenOtherwise(items, from, i):
		return stop
	case items[i].text == "on" && eachPlaceFirst(items, from, i):
		return colon
	}
	return none
}

// eachPlaceFirst reports whether a statement begins with a place, and what is found stands behind
// it and behind each of those to its end, of which one is at item i: "on bar two I've got honey
// on bar three pollen".
func eachPlaceFirst(items []item, from, i int) bool {
	if i < max(from+3, placeEnd(items, from)) || placeEnd(items, from) == 0 || placeEnd(items, i) == 0 || from > 0 && items[from].pause < colon {
		return false
	}
	told := false
	for k := placeEnd(items, from); k < len(items) && items[k].pause == none; k++ {
		if end := placeEnd(items, k); end > 0 {
			if !told {
				return false
			}
			told, k = false, end-1
			continue
		}
		told = told || items[k].any6(kContent, kCell, kSign, kComb, kQueen, kShe) && !items[k].any(kOn, kBar)
	}
	return told
}

// placeEnd is where "on bar two", "on two", "on bar two and on bar three" or "on bars two and
// three", that begins at item k, ends; 0 where it does not stand there.
func placeEnd(items []item, k int) int {
	if items[k].text != "on" {
		return 0
	}
	n := k + 1
	if n < len(items) && items[n].text == "the" && items[n].pause == none {
		n++
	}
	plural := false
	if n < len(items) && items[n].is(kBar) && items[n].pause == none {
		plural = items[n].plural
		n++
	}
	if n >= len(items) || !barNumber(&items[n]) && !(plural && items[n].n.hi > items[n].n.lo) || items[n].pause > none {
		return 0
	}
	and := n+2 < len(items) && items[n+1].text == "and" && items[n+1].pause == none && items[n+2].pause == none
	if and && plural && barNumber(&items[n+2]) {
		return n + 3
	}
	if and && items[n+2].text == "on" {
		return placeEnd(items, n+2)
	}
	if n+1 < len(items) && items[n+1].pause == none && (items[n+1].anyOf(counted) && !items[n+1].is(kQueen) || items[n+1].any3(kBees, kAnd, kNum)) {
		return 0 // "on two bars", "on three and four"
	}
	return n + 1
}

// dayOfNext reports whether the day at item i is that of what the speaker goes on to say he
// did or will do, and not of what was said before: "no cells now last Sunday I fed them",
// "I gave them a kilo in two weeks I must look again".
func (r *reader) dayOfNext(items []item, from, i int) bool {
	day := i
	for day < len(items) && items[day].any(kNow, kOn) && !items[day].any(kDate, kPast) && day < i+2 {
		day++
	}
	if day+2 >= len(items) || !items[day].is(kDate) || items[day+1].pause > none || !items[day+1].isWord2("i", "we") {
		return false
	}
	if items[i-1].any3(kFore, kAfter, kFrom) || items[i-1].isWord4("till", "until", "by", "since") {
		return false // "no need to look before Friday I'll be away"
	}
	before := kindsOf(items[from:i])
	if items[day].day.ago {
		did := day + 2
		if items[did].is(kHave) && did+1 < len(items) {
			did++
		}
		return items[did].is(kDo) && !before.meet(dayOfDeed) && before.meet(deedOrFinding)
	}
	return !items[day].day.today && r.weWill(items, day+1) && !before.meet(daysAhead) && before.has(kSubstance)
}

// seenOtherwise reports whether item i tells of now whether something was seen, behind what
// is said of the time before: "she was seen last time not sighted today".
func seenOtherwise(items []item, from, i int) bool {
	return items[i].any(kSeen, kUnseen) && items[i-1].is(kPast) && kindsOf(items[from:i]).meet(sights)
}

// sights are the kinds of words that tell whether something was seen.
var sights = setOf(kSeen, kUnseen)

var (
	dayOfDeed     = setOf(kDo, kDate, kPast)
	daysAhead     = setOf(kPlan, kWill, kDate, kIf, kUndone)
	deedOrFinding = foundThings.or(setOf(kDo, kStored, kTemper, kBees, kLeaf, kSeen, kUnseen, kState))
)

// partedAt is the pause that parts item i, with which a statement can begin, from the one
// that began at from.
func (r *reader) partedAt(items []item, from, i int) pause {
	switch {
	case r.belongsBack(items, i), !r.wholeBefore(items, from, i):
		return none
	case r.tellsOwn(items, i), r.barAnew(items, i):
		return colon
	case r.looseAnew(items, from, i):
		return stop // "took out bar 13 no eggs": none at all
	}
	return none
}

// belongsBack reports whether the word at item i tells more of what stands before it:
// "sealed brood on bars 5 and 6 scattered eggs on bar 7", "floor closed honey on 9".
func (r *reader) belongsBack(items []item, i int) bool {
	switch it := &items[i]; {
	case it.is(kPattern):
		return items[i-1].is(kContent) && r.brooding(&items[i-1]) || i+1 < len(items) && items[i+1].pause == none && !r.brooding(&items[i+1])
	case it.is(kState):
		return items[i-1].any(kFixture, kBe)
	case it.is(kComb) && !it.any(kBar, kContent):
		return !isThing(it)
	case it.is(kNo):
		return builtNone(items, i)
	}
	from, to := items[i-1].end, items[i].start
	likened := to-from >= int32(len(likeness)) && strings.Contains(r.text[from:to], likeness) // "running on the comb like ants at a picnic"
	return likened || items[i].is(kArt) && !items[i].any(kNum, kAmount)
}

// likeness is what stands between two words of which one is like the other; between most
// there is but a space.
const likeness = " like "

// isThing reports whether an item names something that is found, and does not only tell
// what a comb is like.
func isThing(it *item) bool {
	return it.any3(kContent, kCell, kSign) || it.is(kComb) && (strings.HasSuffix(it.text, "comb") || strings.HasPrefix(it.text, "festoon"))
}

// ownBeginners are the kinds of words that a statement of its own begins with.
var ownBeginners = foundThings.or(besideThings).or(setOf(kNo, kBrood, kStores, kFixture, kBar, kLeaf, kBees, kDo, kQueen, kSky, kBring, kMeasure, kMethod))

// foundThings are the kinds of what is found in a hive, and besideThings of the words that
// stand before them.
var (
	foundThings  = setOf(kContent, kCell, kSign, kComb)
	besideThings = setOf(kNum, kArt, kAmount, kStage, kPattern, kCellKind, kColour, kPlant)
)

// onward is what stands from an item on.
type onward struct {
	items []item
	i     int
}

// next is the item k places behind, or one of no kind where a pause stands before it.
func (a onward) next(k int) *item {
	if a.i+k >= len(a.items) || a.items[a.i+k].pause > none {
		return &noItem
	}
	return &a.items[a.i+k]
}

// tellsOwn reports whether a finding that begins at item i tells where it is, or how.
func (r *reader) tellsOwn(items []item, i int) bool {
	from := onward{items, i}
	is := 1 // where it is told how something is
	if from.next(1).is(kBe) {
		is = 2
	}
	how := from.next(is)
	switch it := &items[i]; {
	case it.lists.has(swarming):
		return true
	case it.is(kDo):
		return r.deedOfOwn(from)
	case it.is(kQueen):
		return from.next(1).any3(kSeen, kUnseen, kQueenIs) // "moved bar 12 to 8 queen not seen"
	case it.is(kSky) && !it.is(kStored):
		return true
	case it.is(kLeaf) && !it.is(kStored):
		first, _, _ := strings.Cut(it.text, " ")
		return first != "on" && first != "say" && first != "running" // "14 bars in use", but "a virgin running about"
	case it.is(kBees) && it.text == "bees":
		return from.next(1).is(kTemper) || from.next(1).any4(kBe, kAmount, kArt, kAdv) && from.next(2).is(kTemper) // "bees a bit grumpy"
	case it.is(kMethod):
		return from.next(1).any(kNum, kMeasure) // "follower moved to nine sugar shake half a cup nineteen mites"
	case it.is(kMeasure):
		return from.next(1).is(kSubstance) && r.isWord(from.next(2), r.wordsOf[servedUp]...) // "eggs on bar four one kilo fondant given"
	case it.is(kBrood):
		return how.is(kPattern) // "brood pattern good"
	case it.is(kStores):
		return how.is(kStored) // "stores light"
	case it.is(kFixture):
		return r.fixtureOfOwn(it, how, from.next(is+1))
	case it.is(kBring):
		thing, _ := r.thingsAt(items, i+1)
		return thing != nil && thing.is(kContent) // "bringing in yellow pollen"
	}
	return r.placeOfOwn(from)
}

// deedOfOwn reports whether a verb that stands behind something whole is a deed of its own:
// "brood on five split the hive", "half a kilo fondant given swept floor", "wasps at the
// entrance opened the entrance".
func (r *reader) deedOfOwn(from onward) bool {
	i, items, next := from.i, from.items, from.next(1)
	deed := r.rule(&items[i], kDo)
	bare := items[i-1].is(kNum) && items[i-2].is(kOn) && !next.is(kDate) && (next.kinds != kinds{} || strings.Contains(items[i].text, " them "))
	fed := items[i-1].any(kDo, kSubstance) && next.is(kFixture)
	return (bare || fed) && deed.Form == "done" || doneAnew(deed, next, from.next(2))
}

// fixtureOfOwn reports whether it is told of a fixture how it is: "follower moved to nine",
// "follower's behind bar 12", "feeder was half full".
func (r *reader) fixtureOfOwn(fixture, how, behind *item) bool {
	if r.value(fixture, kFixture) == "follower" {
		return how.is(kDo) && behind.any(kTo, kAfter) || how.is(kAfter) && behind.any(kBar, kNum)
	}
	return how.is(kState) && !behind.is(kFixture) || how.is(kNum) && behind.is(kState)
}

// placeOfOwn reports whether things are named with where they are: "honey on 9".
func (r *reader) placeOfOwn(from onward) bool {
	items, i := from.items, from.i
	thing, end := r.thingsAt(items, i)
	if end == 0 {
		return false
	}
	if items[i].is(kSign) && items[i-1].is(kNum) {
		return true // "brood on five smells foul": the number is a place
	}
	from.i = end
	for from.next(0).any4(kFull, kSide, kPlace, kPattern) && from.next(1).any5(kOn, kFull, kSide, kPlace, kPattern) {
		from.i++ // "capped brood both sides on bar 5"
	}
	where, at, behind := from.next(0), from.next(1), from.next(2)
	if where.is(kOn) && at.text == "the" && behind.is(kBar) {
		at, behind = behind, from.next(3) // "eggs on the bar four"
	}
	switch {
	case where.is(kOn) && at.is(kBar) && barNumber(behind), where.is(kOn) && barNumber(at) && !behind.any(kBar, kUnit):
		return true // "eggs on bar 4", "honey on 9", "deformed wings on two bees"
	case where.is(kPlace) && at.is(kOf) && behind.any(kBar, kNum):
		return true // "drone brood on the bottom of bar 9"
	case where.is(kLeaf) && strings.HasPrefix(where.text, "on "):
		return thing.is(kContent) // "brood on five bars"
	case where.is(kBring):
		return thing.is(kContent) // "orange pollen coming in"
	}
	return thing.is(kSign) && where.is(kOn) && (at.is(kFixture) || at.is(kArt) && behind.is(kWord)) // "ants on the stand"
}

// doneAnew reports whether a verb of what was done has its object, the two items behind
// it, with its article.
func doneAnew(deed *rule, object, noun *item) bool {
	return deed.Form == "done" && (object.is(kFixture) && strings.HasPrefix(object.text, "the ") || object.is(kArt) && noun.is(kQueen) || object.is(kLeaf))
}

// thingsAt is the last of the things found that are named from item i on, and where their
// names end; 0 where none is named: "a few eggs and larvae".
func (r *reader) thingsAt(items []item, i int) (thing *item, end int) {
	for k := i; k < len(items) && (k == i || items[k].pause == none); k++ {
		switch it := &items[k]; {
		case isThing(it):
			thing, end = it, k+1
		case it.is(kNo) && k == i, it.anyOf(besideThings), it.is(kAnd) && end == k && k > i:
		default:
			return thing, end
		}
	}
	return thing, end
}

// barAnew reports whether a bar that what follows tells of is named by noun and number at
// item i: "moved bar 12 to 8 bar 11 is bare", but not "saw the queen blue dot bar 4".
func (r *reader) barAnew(items []item, i int) bool {
	if !items[i].is(kBar) || items[i].end-items[i].start == 1 || i+1 == len(items) || !barNumber(&items[i+1]) || items[i+1].pause > none {
		return false
	}
	if last := &items[i-1]; last.is(kNum) && items[i-2].is(kBar) || !last.any6(kNum, kDo, kDot, kColour, kState, kFixture) && last.text != "in" {
		return false // "bar 3 bar 4 bar 5 eggs"
	}
	next := i + 2
	return items[i-1].is(kNum) || next < len(items) && items[next].pause == none && items[next].any6(kBe, kHave, kContent, kComb, kFull, kPattern)
}

// looseAnew reports whether something without a place, denied or told with how much of it
// there is, stands at item i and can be on none of the bars named before: "took out bar 13
// no queen cells", "fed 2 litres no eggs".
func (r *reader) looseAnew(items []item, from, i int) bool {
	it, set := &items[i], kindsOf(items[from:i])
	if (set.has(kBar) || set.has(kOn) && set.has(kNum)) && !set.has(kDo) || !it.any(kNo, kAmount) || it.is(kOr) {
		return false
	}
	thing, end := r.thingsAt(items, i)
	if end == 0 {
		return it.is(kUnseen) && it.is(kNo) // "marked the queen no sign of disease"
	}
	return it.is(kNo) || thing.is(kSign)
}

// leadOn are the kinds of words that what stands behind them belongs to.
var leadOn = incomplete.or(besideThings).or(setOf(kAnd, kOr, kBut, kThen, kBe, kHave, kThere, kAdv, kFull, kSeen, kPron, kShe, kIf, kAsk, kHive, kName, kState, kEach, kSame, kRepair, kTheirs))

// mayEnd are those that can end what is said all the same, with what stands before them.
var mayEnd = setOf(kBar, kNum, kState, kPattern, kDo, kDot, kComb, kSeen, kUnseen, kColour, kWord, kSign, kHive)

// wholeBefore reports whether items from..i say all that they have to say.
func (r *reader) wholeBefore(items []item, from, i int) bool {
	last := &items[i-1]
	before := &noItem
	if i-2 >= from {
		before = &items[i-2]
	}
	ends := !last.anyOf(leadOn)
	switch {
	case last.is(kBar) && last.is(kComb) && items[i].is(kNum):
		ends = before.any(kComb, kArt) && (countsCells(items, i+1) || i+1 < len(items) && items[i+1].is(kSign)) // "running on the comb one sealed cell on bar 7"
	case last.is(kBar):
		named := items[i].is(kNum) && !countsCells(items, i+1) && !(i+1 < len(items) && items[i+1].anyOf(counted)) // "the bars three to five"
		ends = (barNumber(before) || before.is(kArt)) && !named                                                    // "added two bars one sealed cell on bar 7"
	case last.is(kNum):
		ends = i-2 >= from && (r.placeNumber(items, i-1) || items[i].is(kFixture) && numbersDone(items[from:i]))
	case last.is(kState):
		spoken := before.is(kBe) && last.text == "empty" && !items[i].is(kComb)                                  // "bar 11 is empty eggs on bar 4"
		off := r.isWord(last, r.wordsOf[offWords]...) && kindsOf(items[from:i]).has(kDo)                         // "took bar 13 out"
		ends = spoken || off || before.is(kFixture) || before.is(kNum) && i-3 >= from && items[i-3].is(kFixture) // "feeder half full"
	case last.is(kPattern):
		ends = before.is(kBrood) || before.is(kContent) && r.brooding(before) || r.placeNumber(items, i-2) && !r.brooding(&items[i]) // "capped brood on bar 5 solid eggs on bar 4"
	case last.is(kDot):
		ends = true
	case last.is(kDo):
		ends = r.deedEnds(items, i-1)
	case last.is(kComb):
		in := last.is(kOn) && last.text == "in" && before.is(kBar) && !items[i].is(kArt) && kindsOf(items[from:i]).has(kDo) // "put two empty bars in"
		ends = in || !last.is(kOn) && (!r.looks(last) || strings.HasSuffix(last.text, "comb"))                              // "eggs on bar 4 and a palm-sized patch of brood on bar 5"
	case last.any(kSeen, kUnseen):
		ends = before.is(kQueen)
	case last.is(kColour):
		ends = before.any(kQueenIs, kDot)
	case last.is(kBring):
		ends = before.is(kContent)
	case last.is(kHive):
		ends = i-3 >= from && before.is(kArt) && items[i-3].is(kDo) // "split the hive"
	case r.isWord(last, r.wordsOf[offWords]...) && kindsOf(items[from:i]).has(kDo):
		ends = true // "took 3 kg of honey off"
	case last.is(kWord):
		ends = before.any3(kArt, kUnseen, kNo) && !items[i].is(kSky) // "ants on the stand", but "the sky overcast"
	case last.is(kSign):
		ends = !items[i].is(kNum) // "sacbrood one cell on bar five"
	}
	return ends && tellsEnough(items[from:i], &items[i])
}

// brooding reports whether a word names brood, or tells what it is like.
func (r *reader) brooding(it *item) bool {
	return it.any(kPattern, kStage) || strings.HasSuffix(r.value(it, kContent), "brood")
}

// placing are the kinds of words that the bar behind them is the place of, or the object.
var leadToPlace = setOf(kOn, kAfter, kTo, kTween, kFore, kFrom, kOf, kDo)

// placeNumber reports whether the number at item k ends a place, and so counts nothing
// behind it: "on bar 4", "after 6", "took out bars 13 and 14", "on 9 and 10".
func (r *reader) placeNumber(items []item, k int) bool {
	if k < 1 || !barNumber(&items[k]) {
		return false
	}
	at := k
	if k > 2 && items[k-1].is(kAnd) && barNumber(&items[k-2]) && max(items[k-2].n.lo, items[k-2].n.hi) < items[k].n.lo {
		at = k - 2
	}
	listed := at < k
	if at > 1 && items[at-1].is(kBar) {
		lead := at - 2
		if lead > 0 && items[lead].text == "the" {
			lead-- // "on the bars three to five"
		}
		return (!listed || items[at-1].plural || items[k].n.lo == items[at].n.lo+1) && items[lead].anyOf(leadToPlace)
	}
	return items[at-1].any5(kOn, kAfter, kTo, kTween, kFore) && (!listed || items[k].n.lo == items[at].n.lo+1)
}

// deedEnds reports whether the verb at item k has had its object: "cut bar 10 free",
// "split them", "floor closed".
func (r *reader) deedEnds(items []item, k int) bool {
	if k > 0 && items[k-1].is(kFixture) || k > 2 && r.placeNumber(items, k-1) && items[k-3].is(kDo) {
		return true
	}
	if k > 1 && items[k-1].is(kSubstance) && items[k-2].is(kMeasure) {
		return true // "one kilo fondant given"
	}
	return strings.HasSuffix(items[k].text, " them") || strings.HasPrefix(items[k].text, "gave them ")
}

// numbersDone reports whether numbers that go up end the items, behind what was done to the
// bars that they name: "harvested ten eleven twelve".
func numbersDone(items []item) bool {
	for k := len(items) - 2; k > 0; k-- {
		if items[k-1].is(kDo) {
			end, many := risingNumbers(items, k)
			return many > 1 && end == len(items)
		}
	}
	return false
}

// tellsEnough reports whether items say more than what is found, before one that begins anew:
// things alone may still wait for their bars.
func tellsEnough(items []item, next *item) bool {
	set := kindsOf(items)
	switch {
	case set.meet(toldAlone):
		return true
	case set.has(kBar), set.has(kNum) && set.has(kOn):
		return set.meet(foundThings) || set.has(kMeasure) || set.has(kState)
	}
	// "no queen cells cross comb on bar 9", but "no eggs no larvae"
	return set.has(kNo) && (set.meet(foundThings) || set.has(kWord)) && (next.is(kComb) && isThing(next) || next.is(kContent) && set.has(kCell) || next.lists.has(swarming))
}

// toldAlone are the kinds of words that tell something without bars.
var toldAlone = setOf(kDo, kLeaf, kTemper, kSky, kFixture, kBrood, kQueen, kStores, kBring, kSign, kUnseen, kShe)
