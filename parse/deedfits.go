package parse

import (
	"slices"
	"strings"
)

// fitting is a verb with what stands around it, while it is being settled which
// deed it is.
type fitting struct {
	*reader
	c    *clause
	d    *deed
	i    int // the verb
	rule *rule
	text string // of the verb
	args []item // behind it
	pre  []item // before it
}

func (f *fitting) has(k kind) bool { return hasKind(f.args, k) }

// fitsBy holds, for each deed of the rule files, whether the words around a
// verb are those of the deed. A verb of several deeds settles here which one it
// is: what is cut loose is comb, syrup that is given is a feed.
var fitsBy = map[string]func(*fitting) bool{
	"add_bar": (*fitting).addBar, "remove_bar": (*fitting).removeBar, "move_bar": (*fitting).moveBar,
	"harvest": (*fitting).harvest, "feed": (*fitting).feed, "treat": (*fitting).treat,
	"mark_queen": (*fitting).markQueen, "clip_queen": (*fitting).clipQueen, "release_queen": (*fitting).releaseQueen,
	"requeen": func(*fitting) bool { return true }, "split": (*fitting).split, "unite": (*fitting).unite,
	"cut_cells": (*fitting).cutCells, "straighten": (*fitting).straighten, "trim_comb": (*fitting).trimComb,
	"free_comb": (*fitting).freeComb, "open": (*fitting).fixture, "close": (*fitting).fixture, "reduce": (*fitting).fixture,
	"clean_floor": (*fitting).cleanFloor, "smoke": (*fitting).smoke, "inspect": (*fitting).inspect,
}

// fits reports whether the objects of the verb at item i are those of the
// rule's deed.
func (r *reader) fits(c *clause, d *deed, i, end int, rule *rule) bool {
	r.fit = fitting{reader: r, c: c, d: d, i: i, rule: rule, text: c.items[i].text, args: c.items[i+1 : end], pre: c.items[:i]}
	return rule.fits != nil && rule.fits(&r.fit)
}

func (f *fitting) addBar() bool {
	if f.c.items[f.i].text == "gave" && len(f.args) > 0 && f.args[0].isWord3("up", "us", "me") && f.gaveUp() {
		f.d.do = "harvest"
		return true
	}
	s := f.substanceIn(f.args, "")
	if s == nil && f.rule.Form == "done" && (f.c.mood == planned || hasKind(f.pre, kMeasure)) {
		s = f.substanceGiven()
	}
	if s == nil && f.rule.Form == "done" {
		s = f.substanceOf()
	}
	if s != nil && !f.has(kBars) && !f.has(kQueen) && !(f.looseBars(f.args) && f.has(kFrom) && f.has(kName)) { // but "a bar from hive 4 and a litre of syrup"
		f.d.do = s.Value
		return true
	}
	if f.has(kFixture) || f.has(kMite) || f.c.placed || f.harvestGave() {
		return false
	}
	if f.moreFood() || f.measureGiven() {
		f.d.do = "feed"
		return true
	}
	if f.text == "received" {
		return f.looseBars(f.args) // "it received two bars from hive 2"
	}
	return f.givenAway() || f.looseBars(f.args) || f.soManyBehind() || f.whichBars() || f.barsAdded(f.c, f.i) || f.barsDone() || f.has(kBars) && f.has(kName) || f.soManyBars()
}

// soManyBars reports whether so many are added of what the sentence spoke of before, bars, and counts
// them: "I should have added bars by now, so I'm adding two on Wednesday".
func (f *fitting) soManyBars() bool {
	if len(f.args) == 0 || !barNumber(&f.args[0]) || f.args[0].any(kBars, kMeasure) || f.args[0].pause > none || f.has(kCell) || f.has(kContent) {
		return false
	}
	if next := at(f.args, 1); next != &noItem && next.pause == none && !next.any6(kDate, kOn, kAfter, kThen, kNow, kAdv) && !next.isWord4("in", "more", "today", "back") {
		return false
	}
	bars := false
	for k := range f.told {
		it := &f.told[k]
		if it.start >= f.c.items[f.i].start {
			break
		}
		if it.any6(kSubstance, kContent, kCell, kMeasure, kFixture, kComb) {
			bars = false
		}
		bars = bars || it.is(kBar) && it.plural && !it.is(kBars)
	}
	if bars {
		count := f.args[0].n
		f.d.count = &count
		f.d.use(&f.args[0])
	}
	return bars
}

// moreFood reports whether so many more were given of what the bees were fed with, and not of bars:
// "fed 2 litres on Thursday, all gone. Gave them 2 more."
func (f *fitting) moreFood() bool {
	fed := f.lastDeed == "earlier.feed" || f.lastDeed == "actions.feed" && f.spokeOf.deed >= f.sentenceNo-1
	return fed && f.wordIn(f.args, "more") && !f.has(kBar)
}

// measureGiven reports whether the bees were given so much, which can only be food: "they finished the
// fondant so I gave them another half kilo".
func (f *fitting) measureGiven() bool {
	if !strings.HasPrefix(f.text, "gave them") && !strings.HasPrefix(f.text, "gave it") || f.has(kContent) || f.has(kBar) {
		return false
	}
	for k := range f.args {
		if it := &f.args[k]; it.is(kMeasure) {
			next := at(f.args, k+1)
			_, length := it.size.mm()
			return !length && (next == &noItem || next.pause > none || !next.is(kOf))
		}
	}
	return false
}

// movedItself reports whether it is the brood or the bees that have moved: "the brood has moved back
// two bars", "they have moved up a bar".
func (f *fitting) movedItself() bool {
	k := f.i - 1
	for k > 0 && f.pre[k].any(kHave, kAdv) && f.c.items[k+1].pause == none {
		k--
	}
	if k < 0 || f.c.items[k+1].pause > none || !f.c.items[f.i].isWord2("moved", "shifted") || f.has(kBars) && !f.has(kTo) {
		return false
	}
	return f.pre[k].any3(kContent, kBees, kQueen) && !f.pre[k].isWord2("it", "them") || f.pre[k].text == "cluster"
}

// givenAway: "bar six is sealed brood, and I gave that one to the elm hive" gives the bar in
// hand.
func (f *fitting) givenAway() bool {
	if f.rule.Form != "done" || len(f.args) == 0 || !f.c.items[f.i].isWord3("gave", "given", "donated") || !f.isWord(&f.args[0], "it", "that", "this", "them", "those", "that one", "this one") {
		return false
	}
	k := 1
	for k < len(f.args) && (f.args[k].is(kBar) || f.args[k].text == "one") {
		k++
	}
	if k+1 >= len(f.args) || !f.args[k].is(kTo) {
		return false
	}
	if f.args[k+1].is(kArt) && k+2 < len(f.args) {
		k++
	}
	var bars []int
	if f.sameSentence {
		bars = f.bars
	}
	for i := range f.pre {
		if f.pre[i].is(kBars) {
			bars = f.pre[i].bars // "bar 7 capped brood, gave that bar to hive 5"
		}
	}
	if !f.args[k+1].is(kName) || len(bars) == 0 {
		return false
	}
	f.d.bars = slices.Clone(bars)
	return true
}

// harvestGave: "we harvested four bars, which gave 7 kg", or "gave me 7 kg".
func (f *fitting) harvestGave() bool {
	args := f.args
	if len(args) > 1 && args[0].isWord2("me", "us") {
		args = args[1:]
	}
	return len(args) > 0 && args[0].is(kMeasure) && f.c.items[0].isWord3("which", "they", "it") && strings.HasPrefix(f.lastDeed, "actions.harvest")
}

// soManyBehind reports whether so many, of what is not said, were put behind a bar, which are bars:
// "so I hung one, behind bar 10", "put two in after 9".
func (f *fitting) soManyBehind() bool {
	args := f.args
	if len(args) > 0 && args[0].isWord2("in", "them") {
		args = args[1:]
	}
	if len(args) < 3 || args[0].pause > none || hasKind(f.told, kFixture) || hasKind(f.told, kQueen) || args[0].text != "another" && !(args[0].is(kNum) && args[0].n.whole() && args[0].n.lo < manyBars) {
		return false
	}
	k := 1
	for k < len(args) && args[k].isWord3("in", "more", "one") && args[k].pause == none {
		k++
	}
	if k+1 >= len(args) || !args[k].is(kAfter) || args[k].pause > comma || !args[k+1].is(kBars) || args[k+1].pause > none {
		return false
	}
	f.d.count = &quantity{lo: max(args[0].n.lo, 1)}
	args[0].used = true
	return true
}

// barsDone: "three bars added", "three bars added at the back".
func (f *fitting) barsDone() bool {
	n := behindBars(f.pre, len(f.pre)-1) + 1
	return n > 1 && f.rule.Form == "done" && f.pre[n-1].is(kBar) && (f.pre[n-2].any(kNum, kComb) || f.isWord(&f.pre[n-2], f.wordsOf[newOnes]...)) && f.c.items[f.i].pause == none && !hasKind(f.pre, kPron) && !f.has(kContent)
}

func (f *fitting) moveBar() bool {
	if f.c.items[f.i].isWord2("bring", "brought") && !f.has(kBars) && !f.has(kFrom) && !hasFixture(f.reader, f.args, "follower") && !hasFixture(f.reader, f.pre, "follower") && !(f.lastFixture == "follower" && len(f.args) > 0 && f.args[0].text == "it" && f.has(kTo)) {
		return false // "must bring a spare bar"
	}
	if f.movedItself() {
		return false
	}
	if (strings.Contains(f.text, "went ") || strings.Contains(f.text, "gone ")) && f.looseBars(f.args) && !f.has(kTo) {
		return false // "I went over every comb": what goes itself stands before
	}
	if f.barsPutIn() {
		f.d.do = "add_bar"
		return true
	}
	follower := hasFixture(f.reader, f.args, "follower") || hasFixture(f.reader, f.pre, "follower") && !hasKind(f.pre, kBars) && !hasKind(f.pre, kDo)
	if !follower && hasFixture(f.reader, f.pre, "follower") && !hasKind(f.pre, kDo) && len(f.args) > 0 { // "follower was behind 5, now moved back one"
		follower = f.args[0].isWord5("back", "forward", "forwards", "backwards", "up")
	}
	if !follower && hasKind(f.told, kFixture) && f.goesOn(f.c.items, f.i) { // "the follower was behind bar 12 and has been moved to bar 10"
		follower = hasFixture(f.reader, f.pre, "follower") || f.lastFixture == "follower"
	}
	if !follower && f.lastFixture == "follower" && len(f.args) > 0 { // "Follower: behind bar 12; moved to bar 10"
		follower = f.args[0].text == "it" || len(f.pre) == 0 && f.args[0].any(kTo, kAfter)
	}
	if n := len(f.pre); !follower && n > 1 && f.pre[n-1].is(kPron) {
		follower = f.value(&f.pre[n-2], kFixture) == "follower" // "left it like that, the follower I moved back"
	}
	if follower {
		f.d.do = "move_follower"
		return true
	}
	return f.has(kBars) || f.looseBars(f.args) || f.itBar(f.args) && (f.has(kTo) || f.has(kName)) || f.barsUndergo() || f.barsAdded(f.c, f.i) && f.has(kName)
}

// barsPutIn reports whether bars that are counted went in by what else is said of moving
// them: "shoved two bars in", "pushed two bars in after 9".
func (f *fitting) barsPutIn() bool {
	for k := 0; k+1 < len(f.args) && f.args[k].pause == none && !f.args[k].is(kBars); k++ {
		if in := f.args[k+1]; f.args[k].is(kBar) && in.text == "in" && in.pause == none {
			return k+2 == len(f.args) || f.args[k+2].pause > none || f.args[k+2].any5(kAfter, kTween, kFore, kOn, kDate)
		}
	}
	return false
}

func (f *fitting) harvest() bool {
	if f.text == "came off" && !f.honeyTaken() {
		return false
	}
	if strings.HasPrefix(f.text, "yielded") || strings.HasPrefix(f.text, "surrendered") || strings.HasPrefix(f.text, "parted") {
		return f.gaveUp()
	}
	return f.honeyTaken() || f.has(kBars) || f.looseBars(f.args) || f.has(kMeasure) || f.itBar(f.args) ||
		strings.Contains(f.text, "honey") || f.hiveAndDay() || len(f.args) <= 2 && !f.has(kBees) && !f.has(kSign) && f.text != "crushed"
}

// gaveUp: "Juniper gave us two bars of honey", "it yielded 4 kg", and no gift of brood or to
// another hive.
func (f *fitting) gaveUp() bool {
	n := len(f.pre)
	for n > 0 && f.pre[n-1].any4(kAdv, kHave, kThen, kAnd) {
		n--
	}
	who := f.before(f.c, n)
	whose := who.any3(kName, kBees, kHive) || who.isWord5("it", "they", "she", "which", "bees")
	for k := range f.args {
		if it := &f.args[k]; it.is(kContent) && !f.isHoney(it) || it.any3(kCell, kQueen, kName) {
			return false
		}
	}
	return whose && (f.looseBars(f.args) || f.has(kBars) || f.has(kContent) || weighs(f.args))
}

func (f *fitting) isHoney(it *item) bool {
	what := f.value(it, kContent)
	return what == "honey" || what == "capped_honey"
}

// hiveAndDay reports whether a hive and at most a day follow the verb.
func (f *fitting) hiveAndDay() bool {
	return f.has(kName) && allOf(f.args, setOf(kFrom, kArt, kName, kDate, kOn, kAdv))
}

// feed: to fill, top up, leave or pour is to feed only where food or the
// feeder is the object.
func (f *fitting) feed() bool {
	if strings.HasPrefix(f.text, "fill") || strings.HasPrefix(f.text, "top") || strings.HasSuffix(f.text, " in") || f.text == "left" || f.text == "poured" || f.text == "laid" {
		if f.lastFixture == "feeder" && hasKind(f.args, kMeasure) {
			return true // "feeder half empty, topped it up with a litre"
		}
		return f.substanceIn(f.args, "feed") != nil || f.foodLaid() || strings.Contains(f.text, "feeder") || hasFixture(f.reader, f.args, "feeder") && f.text != "left"
	}
	noun := f.text == "feed" && f.i > 0 && f.c.items[f.i-1].any3(kArt, kOf, kNo) && !f.c.items[f.i-1].any(kTo, kUndone)
	return !noun && !f.othersFed()
}

// othersFed: "then I fed the hens", "fed my own household".
func (f *fitting) othersFed() bool {
	k := 0
	for k < len(f.args) && f.args[k].pause == none && (f.args[k].is(kArt) || f.args[k].isWord3("own", "other", "poor")) {
		k++
	}
	return k > 0 && k < len(f.args) && f.args[k].pause == none && f.isWord(&f.args[k], f.wordsOf[otherMouths]...)
}

// treat: to hang, apply, trickle or spray is to treat only where a medicine is
// the object.
func (f *fitting) treat() bool {
	if len(f.args) > 0 && f.args[0].isWord5("myself", "ourselves", "yourself", "himself", "herself") {
		return false // "I treated myself to a cake"
	}
	if slices.Contains(f.wordsOf[applying], f.text) {
		return f.substanceIn(f.args, "treat") != nil || f.substanceIn(f.pre, "treat") != nil
	}
	switch f.text {
	case "dosed", "dose":
		return f.substanceIn(f.args, "treat") != nil || f.itThem(f.args) || f.has(kHive) || f.has(kName) // and not "the sheep were dosed"
	}
	return true
}

// markQueen: "a new marked queen" tells how she is, not what was done.
func (f *fitting) markQueen() bool {
	if f.queenMarked() {
		return true
	}
	if f.adjective() {
		return false
	}
	return f.herQueen(f.c, f.i, f.args) || strings.Contains(f.text, " her")
}

// adjective reports whether the verb stands between an article and its noun: "a blue
// marked queen", "a new clipped 2025 queen".
func (f *fitting) adjective() bool {
	n := len(f.pre)
	if n > 1 && f.pre[n-1].is(kColour) && f.pre[n-2].is(kArt) && f.c.items[f.i].pause == none {
		n--
	}
	return n > 0 && f.c.items[f.i].pause == none && (f.pre[n-1].is(kArt) || f.pre[n-1].isWord5("new", "young", "old", "nice", "fine"))
}

func (f *fitting) clipQueen() bool {
	if f.adjective() && f.pre[len(f.pre)-1].text != "her" {
		return false
	}
	return f.herQueen(f.c, f.i, f.args) || f.c.mood == planned && f.queenUndergoes() || f.doneToday(verbChain(f.c.items, f.i)) || strings.Contains(f.text, "wing") || f.text == "clip her" || strings.Contains(f.text, "queen")
}

func (f *fitting) releaseQueen() bool {
	return strings.Contains(f.text, "her") || strings.Contains(f.text, "queen") || strings.Contains(f.text, "cage") || f.queenUndergoes() || f.herQueen(f.c, f.i, f.args) || f.has(kQueen)
}

func (f *fitting) split() bool {
	return !f.has(kContent) || f.has(kBees) || f.has(kHive) || strings.HasSuffix(f.text, " them") || strings.HasSuffix(f.text, " it")
}

func (f *fitting) unite() bool {
	return f.has(kName) || f.has(kHive) || f.has(kBees) || f.wordIn(f.args, "two", "both", "colonies", "nuc") || (len(f.args) <= 1 || f.c.mood == planned && f.rule.Form == "done") && f.text != "joined"
}

func (f *fitting) cutCells() bool {
	switch {
	case hasFixture(f.reader, f.args, "entrance") && !f.has(kCell):
		f.d.do = "reduce" // "cut the entrance down"
		return f.fixture()
	case f.wordIn(f.args, "loose", "free", "away", "clear") && !f.has(kCell):
		f.d.do = "free_comb"
		return true
	case f.cellsUndergo(), f.has(kCell), f.wordIn(f.args, "cups"):
		return true
	case f.cellsPointedAt():
		return true
	case f.spokeOf.cells != f.sentenceNo && f.itTakenOut():
		f.d.do = "remove_bar"
		if f.toEat() {
			f.d.do = "harvest"
		}
		return true
	case !f.cellTalk:
		return false
	}
	if len(f.args) > 3 && f.args[0].is(kArt) && f.args[1].is(kNum) && f.args[2].is(kOn) && f.args[3].is(kBars) {
		return true // "cut out the four on bar six"
	}
	some := f.args
	if len(some) > 0 && some[0].text == "all" {
		some = some[1:]
	}
	if len(some) > 2 && barNumber(&some[0]) && (some[1].any(kOn, kFrom) || some[1].text == "off") && some[2].is(kBars) {
		return true // "cut out 2 on b7", "cut all six from bar nine", "cut two off bar six"
	}
	if len(f.args) > 1 && barNumber(&f.args[0]) && f.args[1].is(kHave) && f.args[1].text == "with" && !f.has(kBars) {
		return true // "I cut out three with a knife that had seen better days"
	}
	counted := f.has(kNum) && !f.has(kBars) && !f.has(kMeasure) && len(f.args) <= 5
	return counted || f.has(kStage) || f.itThem(f.args) || f.wordIn(f.args, "ones", "rest", "others", "all three", "all four", "both", "all two", "all five") ||
		f.spokeOf.cells >= f.sentenceNo-1 && f.wordIn(f.args, "both of them", "all of them", "every one", "each one", "the lot", "the lot of them", "the pair of them")
}

// cellsPointedAt reports whether the verb itself points back at cells, the last that was told: "two
// cells on bar 7, knocked them down", "a sealed cell on bar 7. I took it out."
func (f *fitting) cellsPointedAt() bool {
	_, object, points := strings.Cut(f.text, " ")
	if f.lastCells != nil && len(f.lastCells.bars) > 0 && !slices.Equal(f.lastCells.bars, f.bars) {
		return false // "two cells on bar 7. Wax moth on bar 10, took it out."
	}
	return points && f.cellTalk && f.spokeOf.cells >= f.sentenceNo-1 && !f.has(kBars) && !hasKind(f.pre, kBars) &&
		(strings.HasPrefix(object, "it ") || strings.HasPrefix(object, "them ") || strings.HasPrefix(object, "those ") || strings.HasPrefix(object, "these "))
}

func (f *fitting) straighten() bool {
	return len(f.bars) > 0 || f.has(kBars) || f.has(kBar) || hasKind(f.pre, kBars) || f.combUndergoes()
}

func (f *fitting) trimComb() bool {
	return !f.has(kCell) && (f.has(kBars) || f.has(kBar) || f.itBar(f.args) || f.text != "shaved")
}

func (f *fitting) freeComb() bool {
	return f.has(kBars) || f.has(kBar) || f.itBar(f.args) || strings.Contains(f.text, " it") || len(f.bars) > 0 && !f.has(kQueen) || f.combUndergoes() || len(f.args) == 0 && f.i > 1 && f.pre[0].is(kBars) && f.pre[f.i-1].is(kComb) // "b5 stuck to the wall, cut free"
}

func (f *fitting) smoke() bool {
	if f.i > 0 && f.text == "smoke" && f.isWord(&f.c.items[f.i-1], "more", "less", "much", "some", "of", "the", "no") {
		return false // "with more smoke and more patience"
	}
	return f.text != "smoke" || f.c.mood == planned || f.i == 0
}

// inspect: a look is worth recording only as a plan, or as the last one.
func (f *fitting) inspect() bool {
	ahead := f.c.when != nil && !f.c.when.ago && !f.c.when.today
	if strings.HasPrefix(f.text, "open it") && (f.lastFixture == "entrance" || f.lastFixture == "floor") {
		f.d.do = "open_" + f.lastFixture // "shut the entrance, open it again on Sunday"
		return true
	}
	switch {
	case f.c.mood == past, f.rule.Form == "done" && f.lastLooked(f.c, f.i):
		return true
	case len(f.args) > 1 && f.args[0].text == "at" && f.args[1].any(kArt, kAmount) && !kindsOf(f.args).meet(ofTheHive):
		return false // "I shall look at a smear under the microscope"
	case f.wordIn(f.args, "after all"):
		return false // "I will look at it after all", now
	case f.text == "come back" && f.comesToDo():
		return false // "I'll come back on Friday and harvest bar 9"
	case f.isNoun(), anotherLook(f.text) && (f.c.mood != planned || f.i == 0) && (f.i > 0 || !ahead):
		return false // "need a sanity check", "another visit from the wasps"
	case f.rule.Form == "doing" && hasKind(f.pre, kQueen):
		return false // "another new queen going in on Thursday"
	case f.rule.Form == "doing" && ahead, f.rule.Form == "todo" && f.c.when != nil && f.c.when.ahead:
		return true
	case f.rule.Form == "todo" && ahead && f.i > 0 && f.pre[f.i-1].isWord2("i", "we") && f.c.items[f.i].pause == none && (f.wordIn(f.args, "again", "once more") || strings.HasSuffix(f.text, " again") || f.text == "inspect" && f.i == 1 && hasKind(f.args, kDate)):
		return true // "I inspect them again on Wednesday", "we inspect on Friday"
	}
	return f.c.mood == planned || f.imperative(f.c, f.i)
}

// comesToDo reports whether something else is to be done behind the verb, for which one comes.
func (f *fitting) comesToDo() bool {
	for k := f.i + 1; k < len(f.c.items); k++ {
		if it := &f.c.items[k]; it.is(kDo) && f.reader.rule(it, kDo).Form == "todo" && f.reader.rule(it, kDo).Value != "inspect" {
			return true
		}
	}
	return false
}

// ofTheHive are the kinds of words for what is looked at in a hive.
var ofTheHive = setOf(kHive, kHives, kName, kPron, kBees, kShe, kBars, kBar, kQueen, kContent, kCell, kFixture, kBrood, kStores, kOther)
