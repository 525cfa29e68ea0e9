package parse

import (
	"slices"
	"strings"
)

// Findings that are complete in themselves: what is told before them, of another day or of
// what was done, does not reach into them.

// wholeFinding reports whether the phrase at item i, up to the next pause, is a finding
// that needs nothing before it: "feeder empty", "no queen cells", "eggs on bar 4".
func (r *reader) wholeFinding(items []item, i int) bool {
	switch first := &items[i]; {
	case first.any(kBut, kAnd):
		return false
	case first.text == "swarmed": // of an earlier day, whatever it is told behind
		return true
	case !first.anyOf(findingHeads):
		return false
	}
	p := phraseAt(items, i)
	for k := range p {
		if p[k].any6(kPlan, kIf, kWill, kAsk, kUnsure, kPast) || r.isDeed(&p[k]) || p[k].is(kDate) {
			return false
		}
	}
	return findingAtHead(p) || ownBars(p) || countsNoun(p) || countsBarsOf(p) || r.signPlaced(p) || brought(p)
}

// findingHeads are the kinds of words that a finding can begin with.
var findingHeads = beforeBars.or(beforeCargo).or(setOf(kLeaf, kStrength, kSky, kTemper, kUnseen, kFixture, kBees, kStores, kBrood, kQueen, kBring, kForage, kBe))

// findingAtHead reports whether a phrase is a finding by what it begins with: "queenright",
// "entrance reduced", "stores light", "no queen cells".
func findingAtHead(p []item) bool {
	first, second := &p[0], at(p, 1)
	switch {
	case first.is(kLeaf):
		return !strings.HasPrefix(first.text, "on ") && !strings.HasPrefix(first.text, "up to ")
	case first.any3(kStrength, kSky, kTemper) && !first.is(kContent):
		return true
	case first.is(kUnseen) && len(p) == 1: // "QNS"
		return true
	case first.is(kFixture) && second.is(kAdv):
		return at(p, 2).any4(kState, kNum, kFull, kStored)
	case first.is(kFixture):
		return second.any6(kBe, kState, kAfter, kNum, kFull, kStored)
	case first.any3(kBees, kStores, kBrood):
		return len(p) > 1
	case first.is(kQueen):
		return second.any6(kSeen, kUnseen, kBe, kQueenIs, kDot, kNot)
	case first.is(kNo):
		return second.any6(kContent, kCell, kSign, kStage, kCellKind, kQueen)
	}
	return false
}

// phraseAt are the items from i to the next pause.
func phraseAt(items []item, i int) []item {
	end := i + 1
	for end < len(items) && items[end].pause == none {
		end++
	}
	return items[i:end]
}

// at is the item k of some, or one of no kind.
func at(items []item, k int) *item {
	if k >= len(items) {
		return &noItem
	}
	return &items[k]
}

// isDeed reports whether an item is a verb of doing, and no state that something is in.
func (r *reader) isDeed(it *item) bool {
	return it.is(kDo) && !it.is(kBring) && !it.any6(kState, kQueenIs, kStage, kSeen, kDot, kSky) && (!it.is(kComb) || r.value(it, kComb) == "../placed")
}

// beforeBars are the kinds of words for what is on bars, and of those that describe it.
var beforeBars = setOf(kContent, kCell, kSign, kComb, kStage, kCellKind, kAmount, kPattern, kNum, kArt, kAdv, kAnd, kNo, kOf, kFull, kColour, kBar)

// ownBars reports whether a phrase begins with something and the bars that it is on:
// "a little nectar on bar 2", "cross comb on bar 10".
func ownBars(p []item) bool {
	told := p[0].is(kLeaf) // "drones on bar 9"
	for k := range p {
		if told && (p[k].any(kOn, kOf) && at(p, k+1).is(kBars) || p[k].is(kLeaf) && strings.HasPrefix(p[k].text, "on ")) {
			return true // "eggs on bar 4", "brood on five bars"
		}
		if !p[k].anyOf(beforeBars) && !(told && p[k].any3(kLeaf, kSide, kPlace)) {
			return false
		}
		told = told || p[k].any4(kContent, kCell, kSign, kComb)
	}
	return false
}

// countsNoun reports whether a phrase begins with a number or an amount of cells or of a
// sign: "two queen cups", "a few small hive beetles".
func countsNoun(p []item) bool {
	if !p[0].any(kNum, kAmount) {
		return false
	}
	for k := 1; k < len(p) && k < 5; k++ {
		if p[k].any(kCell, kSign) {
			return true
		}
		if !p[k].any5(kStage, kCellKind, kAdv, kOf, kNum) {
			return false
		}
	}
	return false
}

// signPlaced reports whether a phrase is a sign and where in the hive it was seen: "wasps at
// the entrance", "deformed wings on two bees".
func (r *reader) signPlaced(p []item) bool {
	what := r.value(&p[0], kSign)
	return p[0].is(kSign) && (at(p, 1).is(kOn) || offComb[what] || hiveSigns[what])
}

// countsBarsOf reports whether a phrase counts the bars of something: "six bars of brood".
func countsBarsOf(p []item) bool {
	return len(p) > 3 && p[0].is(kNum) && p[1].is(kBar) && p[2].is(kOf) && p[3].is(kContent)
}

// brought reports whether a phrase is what is carried in: "ivy nectar coming in".
func brought(p []item) bool {
	cargo := false
	for k := range p {
		if p[k].is(kBring) && (k > 0 || len(p) == 1) {
			return cargo
		}
		if p[k].is(kBring) {
			return hasKind(p, kContent) || hasKind(p, kForage) // "bringing in willow pollen"
		}
		if !p[k].anyOf(beforeCargo) && !p[k].any3(kContent, kForage, kBe) {
			return false
		}
		cargo = cargo || p[k].any(kContent, kForage)
	}
	return false
}

// deedAnew reports whether a deed with its object begins at item i behind a comma, where
// what stands before is whole: "no drones, added a bar last week", "fed them, remove bar 13
// next time".
func (r *reader) deedAnew(items []item, i int) bool {
	if !r.isDeed(&items[i]) || len(phraseAt(items, i)) < 2 || r.objectless(items, i) {
		return false
	}
	return r.wholeBehind(items, i)
}

// wholeBehind reports whether the phrase that ends before item i, but for a hive's name at
// its head, is a whole finding or a deed.
func (r *reader) wholeBehind(items []item, i int) bool {
	before := phraseBefore(items, i)
	if before[0].is(kName) && len(before) > 1 {
		before = before[1:]
	}
	return r.tellsDeed(before) && !before[0].any(kBars, kPron) || r.wholeFinding(before, 0)
}

// thenTold reports whether how it was on an earlier day is told from item i on, behind a
// whole phrase and a comma: "no drones, last week they had eggs on bar 4".
func (r *reader) thenTold(items []item, i int) bool {
	day := &items[i]
	if day.pause != comma || !day.is(kPast) && !(day.is(kDate) && day.day.ago) || i+2 >= len(items) {
		return false
	}
	return items[i+1].pause == none && items[i+1].any5(kPron, kShe, kBees, kQueen, kThere) && r.wholeBehind(items, i)
}

// andOtherDay reports whether "and" at item i leads on to what was or will be done or seen on
// another day, behind a finding of today or, for an order, behind what was done: "eggs on bar
// 4 and added a bar last week", "fed them and take out bar 13 next time".
func (r *reader) andOtherDay(items []item, i int) bool {
	verb := i + 1
	if items[verb].pause > none || !r.isDeed(&items[verb]) && !(items[verb].is(kSeen) && r.seesHer(items, verb)) {
		return false
	}
	behind := phraseAt(items, verb)[1:]
	ahead := hasKind(behind, kPlan) || hasAhead(behind)
	if !ahead && !hasDay(behind) {
		return false
	}
	before := phraseBefore(items, i)
	if before[0].is(kBars) && !slices.ContainsFunc(before, func(it item) bool { return it.any6(kPast, kDate, kDo, kPlan, kWill, kIf) }) {
		return true
	}
	done := func(it item) bool { return it.is(kDo) && r.rule(&it, kDo).Form == "done" && !r.twofold(&it) }
	order := ahead && r.isDeed(&items[verb]) && r.rule(&items[verb], kDo).Form == "todo"
	return r.wholeFinding(before, 0) || order && slices.ContainsFunc(before, done)
}

// andWhole reports whether "and" at item i leads on to a finding of its own, of which what
// stands before is no part: a state behind a deed, something on bars of its own behind other
// bars. "Fed them and stores light", "bars 4 to 6 larvae and festooning on bar 11".
func (r *reader) andWhole(items []item, i int) bool {
	p, before := phraseAt(items, i+1), phraseBefore(items, i)
	if p[0].pause > none || !p[0].any(kFixture, kStores) && !before[0].is(kBars) || !r.wholeFinding(items, i+1) {
		return false
	}
	if p[0].any(kFixture, kStores) && r.tellsDeed(before) {
		return true
	}
	return ownBars(p) && before[0].is(kBars) && !sameNoun(p, before)
}

// behindOtherDay reports whether a deed of another day ends before item i: "need to add a
// bar next week, 14 bars in use", "added a bar last week, feeder empty".
func (r *reader) behindOtherDay(items []item, i int) bool {
	deed, day := false, false
	for k := i - 1; k >= 0 && items[k+1].pause < colon; k-- {
		it := &items[k]
		deed = deed || r.isDeed(it)
		day = day || it.any3(kPlan, kPast, kWill) || it.is(kDate) && !it.day.today || it.text == "again"
	}
	return deed && day
}

// pastDeedTold reports whether a finding of today follows a deed of another day: "added a
// bar last week, stores light". Where the day stands first, it may frame what follows too.
func (r *reader) pastDeedTold(list []clause, i int) bool {
	before := &list[i-1]
	if list[i].items[0].pause < comma || before.items[0].any3(kDate, kPast, kOn) || before.has(kSeen) {
		return false
	}
	return r.tellsDeed(before.items) && r.wholeFinding(list[i].items, 0)
}

// partsFrom reports whether the whole finding at item i begins a statement of its own behind
// a comma: it tells of bars of its own or of what is carried in, or the phrase before is a
// deed, and it is no part of a list. "No queen cells, cross comb on bar 10", "added two
// bars, wasps at the entrance", but "two cups, one sealed cell on bar 7".
func (r *reader) partsFrom(items []item, i int) bool {
	if prev := &items[i-1]; prev.anyOf(incomplete) && !prev.any(kDo, kUnseen) || prev.any(kHave, kBe) {
		return false
	}
	p, before := phraseAt(items, i), phraseBefore(items, i)
	own, deed := ownBars(p) || countsBarsOf(p), r.tellsDeed(before)
	switch {
	case brought(p):
		return deed || hasKind(before, kBring) || hasKind(before, kBars) || !sameNoun(p, before)
	case hasKind(before, kBring), own && (hasKind(before, kBars) || countsBarsOf(before)), deed && p[0].is(kNo):
		return true
	}
	return deed && !(hasKind(p, kCell) && hasKind(before, kCell)) || own && !sameNoun(p, before)
}

// tellsDeed reports whether a phrase tells what was done or that they swarmed: "fed them",
// "closed the floor".
func (r *reader) tellsDeed(p []item) bool {
	for k := range p {
		if r.isDeed(&p[k]) {
			return true
		}
	}
	return p[0].text == "swarmed" || p[0].is(kDo) && at(p, 1).any3(kFixture, kArt, kShe)
}

// doneAlready reports whether the verb at item k, of a clause behind a plan, tells what was
// done: "will feed again on Friday, narrowed the entrance".
func (r *reader) doneAlready(c *clause, k int) bool {
	it := &c.items[k]
	switch {
	case !it.is(kDo) || r.rule(it, kDo).Form != "done" || r.twofold(it):
		return false
	case k > 0:
		return c.items[k-1].is(kPron)
	case it.pause < comma || c.heading:
		return false
	}
	return c.next(0).any6(kArt, kPron, kFixture, kQueen, kHave, kLeaf) || strings.Contains(it.text, " the ") || strings.Contains(it.text, " them ")
}

// phraseSoFar are the items from the last pause up to item i, which may begin the phrase.
func phraseSoFar(items []item, i int) []item {
	if items[i].pause >= comma {
		return nil
	}
	return phraseBefore(items, i)
}

// sentenceStart is the first item of the sentence in which item i stands.
func sentenceStart(items []item, i int) int {
	for i > 0 && items[i].pause < stop {
		i--
	}
	return i
}

// sentenceEnd is the end of that sentence.
func sentenceEnd(items []item, i int) int {
	for i++; i < len(items) && items[i].pause < stop; i++ {
	}
	return i
}

// phraseBefore are the items from the pause before last up to item i.
func phraseBefore(items []item, i int) []item {
	from := i - 1
	for from > 0 && items[from].pause < comma {
		from--
	}
	return items[from:i]
}

// sameNoun reports whether two phrases name things of the same family, which may so be a
// list.
func sameNoun(a, b []item) bool {
	for _, k := range [...]kind{kContent, kCell, kSign, kComb, kForage} {
		if hasKind(a, k) && hasKind(b, k) {
			return true
		}
	}
	return false
}
