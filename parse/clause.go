package parse

import (
	"strings"

	"barwise/colony"
)

// mood says how a clause is meant.
type mood uint8

const (
	asserted mood = iota
	planned       // to be done
	past          // of an earlier day
	unasked       // a condition, question, general statement, or not known: no leaf
)

// clause is a run of items with one mood.
type clause struct {
	items       []item
	mood        mood
	cue         string // the words that set the mood
	doubt       string // a hedge: its words
	undone      bool   // deeds of this clause were not done
	theirs      bool
	when        *day // a date named in the clause
	pastOn      colony.Date
	queenUnsure bool
	heading     bool // the mood was set by a heading
	asks        bool // the mood is that of a question
	alone       bool // the mood holds for this clause only
	placed      bool // a bar's putting-in was read
}

// clauses cuts a sentence where a new statement begins. Punctuation may be
// missing: a bar, a subject with its verb, a deed or a cue begins one.
func (r *reader) clauses(items []item) []clause {
	var out []clause
	from := 0
	for i := 1; i <= len(items); i++ {
		if i == len(items) || r.begins(items, i) {
			out = append(out, clause{items: items[from:i]})
			from = i
		}
	}
	return out
}

// begins reports whether a clause begins at item i.
func (r *reader) begins(items []item, i int) bool {
	it, prev := &items[i], &items[i-1]
	switch {
	case it.pause >= colon:
		return !(prev.colon && prev.any(kBars, kName, kQueen, kStores, kBees, kMethod, kMite, kBrood, kContent, kFixture, kCell, kSign, kStrength, kHive, kDo))
	case it.is(kName):
		return !r.argument(items, i) && !r.lookedAt(items, i)
	case it.is(kBars):
		return r.heads(items, i)
	case it.any(kNext, kPrev, kSkip) && !it.any(kPlan, kDate):
		return !prev.any(kAnd, kThen, kOn, kTo)
	case it.is(kBut):
		return !r.notOnly(items, i) && !r.onlySo(items, i)
	case it.is(kThen):
		return !prev.any(kAnd) && !r.soMuch(items, i)
	case it.is(kAnd):
		return i+1 < len(items) && (r.opens(items, i+1, it) || r.datedTurn(items, i+1) || items[i+1].is(kNow) && r.backToNow(items, i+1))
	}
	if it.pause == comma && r.backToNow(items, i) {
		return true
	}
	if prev.any(kAnd, kBut, kThen, kIf, kAsk, kMaybe, kSay, kUnsure, kPast, kNow) && it.pause == none {
		return false
	}
	return r.opens(items, i, prev)
}

// datedTurn: "and on Thursday I'm going to …".
func (r *reader) datedTurn(items []item, i int) bool {
	if items[i].is(kOn) {
		i++
	}
	return i+1 < len(items) && items[i].is(kDate) && items[i+1].is(kPron) && items[i].pause == none && items[i+1].pause == none
}

// soMuch: "so calm that …" begins nothing.
func (r *reader) soMuch(items []item, i int) bool {
	if !r.isWord(&items[i], "so") || i+1 >= len(items) || items[i].pause > none {
		return false
	}
	return items[i-1].any(kBe, kHave, kAdv) || items[i+1].any(kTemper, kStrength, kAmount)
}

// onlySo: "stores only fair", "just four".
func (r *reader) onlySo(items []item, i int) bool {
	return items[i].pause == none && i+1 < len(items) && items[i+1].pause == none && r.isWord(&items[i], "only") && items[i+1].any(kStored, kNum, kTemper, kStrength, kAmount, kFull, kComb)
}

// backToNow: after something of an earlier day, a comma and "today" begin
// anew.
func (r *reader) backToNow(items []item, i int) bool {
	now := false
	for k := i; k < len(items) && k <= i+4; k++ {
		now = now || items[k].is(kNow) || items[k].is(kDate) && items[k].day.today
	}
	for k := i - 1; now && k >= 0 && items[k+1].pause < stop; k-- {
		if items[k].is(kPast) || items[k].is(kDate) && items[k].day.ago {
			return true
		}
	}
	return false
}

// notOnly: "not only eggs but larvae" is one statement.
func (r *reader) notOnly(items []item, i int) bool {
	for k := i - 1; k >= 0 && k >= i-5; k-- {
		if r.isWord(&items[k], "not only", "not just", "not merely") {
			return true
		}
	}
	return false
}

// deedSince reports whether a deed stands in the statement before item i, which
// a date may then belong to.
func (r *reader) deedSince(items []item, i int) bool {
	for k := i - 1; k >= 0 && k >= i-6 && items[k+1].pause < comma; k-- {
		if items[k].any(kDo, kPlan) {
			return true
		}
	}
	return false
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
		if items[k].any(kQueen, kShe, kMite, kSign, kContent) {
			return r.isWord(&items[i], "saw", "found", "spotted", "met", "seen", "noticed")
		}
	}
	return false
}

// orderAt: "check them on the twenty-eighth" is an order to oneself where a day
// ahead or "again" follows.
func (r *reader) orderAt(items []item, i int) bool {
	if r.rule(&items[i], kDo).Form != "todo" || r.twofold(&items[i]) {
		return false
	}
	if i > 0 && items[i-1].is(kBe) || items[i].any(kState, kStage) {
		return false
	}
	for k := i + 1; k < len(items) && k <= i+5 && items[k].pause < colon; k++ {
		if items[k].is(kDate) && !items[k].day.ago && !items[k].day.today || r.isWord(&items[k], "again") {
			return true
		}
	}
	return false
}

// leadIn reports whether only a date and its little words stand before item i
// in the sentence: "on 17 May, I gave them a bar".
func (r *reader) leadIn(items []item, i int) bool {
	dated := false
	for k := i - 1; k >= 0 && items[k+1].pause < stop; k-- {
		if !items[k].any(kDate, kOn, kAnd, kThen, kNow, kPast, kAdv, kArt, kDur, kFore) {
			return false
		}
		dated = dated || items[k].any(kDate, kPast, kDur)
	}
	return dated
}

// opens reports whether the item can begin a statement of its own.
func (r *reader) opens(items []item, i int, prev *item) bool {
	it := &items[i]
	needs := prev.any(kArt, kOn, kOf, kFrom, kTo, kAfter, kTween, kFore, kWithX, kNo, kUndone, kPlan, kWill, kDo, kSay, kMaybe, kUnsure, kUnseen) && it.pause == none
	switch {
	case it.is(kAsk):
		return !prev.any(kPron, kShe, kWill, kBe, kThere, kBars, kQueen, kBees, kContent, kCell, kFixture, kStores, kWord, kThen, kSeen) || it.pause > none
	case it.is(kUndone) && prev.is(kDo) && it.pause == none:
		return false
	case it.is(kLeaf) && it.pause == none && r.isWord(prev, "it", "them"):
		return true
	case it.is(kYes):
		return !prev.any(kFixture, kContent) && it.pause == none || it.pause > none
	case it.is(kOn) && r.datedTurn(items, i) && it.pause == none && !r.deedSince(items, i):
		return true
	case it.is(kDo) && it.is(kState) && !needs && !prev.any(kBe, kFixture, kPron, kHave, kAdv, kAnd) && r.fixtureBehind(items, i):
		return true
	case it.is(kSeen) && !needs && !prev.any(kPron, kShe, kHave, kBe, kQueen, kAnd, kAdv, kWill, kNo, kThere) && r.seesHer(items, i):
		return true
	case it.is(kPlan) && it.pause == none && r.isWord(it, "next time", "next visit", "next week", "next inspection") && r.deedSince(items, i) && prev.any(kQueen, kFixture, kBars, kBees, kBar, kShe):
		return false // "mark the queen next time"
	case it.any(kPlan, kIf, kUnsure, kSay, kTheirs, kUndone):
		return !prev.any(kPron, kShe, kWill, kBe) || it.pause > none
	case it.is(kPron) && (r.leadIn(items, i) || i > 1 && prev.is(kDate) && items[i-2].is(kOn) && it.pause == none && prev.pause == none && !r.deedSince(items, i-2) || prev.is(kQueen) && it.pause == none || r.isWord(prev, "whom", "that", "what")):
		return false
	case it.is(kPron):
		return !needs && !prev.any(kHave) || it.pause > none
	case it.is(kShe):
		return !needs && !prev.any(kSeen, kBe, kHave, kQueenIs, kDot, kColour) && i+1 < len(items) && items[i+1].any(kBe, kHave, kSeen, kUnseen, kQueenIs, kWill)
	case it.is(kQueen):
		return !needs && !prev.is(kNum) && !prev.any(kSeen, kBe, kHave, kAdv)
	case it.is(kMaybe):
		return !prev.any(kPron, kBe, kHave) && !needs
	case it.is(kDo) && r.orderAt(items, i) && !prev.any(kPron, kShe, kWill, kPlan, kTo, kAnd, kUndone, kNo, kAdv, kArt, kOf):
		return true
	case it.is(kDo) && prev.is(kFixture) && it.pause == none:
		return false
	case it.is(kDo):
		return r.rule(it, kDo).Form == "done" && !needs && !it.any(kQueenIs, kState, kStage, kSeen, kComb) && !prev.any(kPron, kShe, kHave, kBe, kAdv, kNum)
	case it.is(kBees), it.is(kFixture), it.is(kStores):
		return !needs && it.pause > none
	}
	return false
}

// heads reports whether a reference to bars begins what is said of them; if
// not, it says where something before it was.
func (r *reader) heads(items []item, i int) bool {
	if i == 0 {
		return true
	}
	prev := &items[i-1]
	if prev.is(kYes) && i > 1 {
		prev = &items[i-2]
	}
	if prev.colon && prev.any(kContent, kCell, kSign, kQueen, kSeen, kComb) && !r.findingBehind(items, i+1) {
		return false // "larvae: bar six"
	}
	if prev.is(kBe) && i > 1 && items[i-2].any(kContent, kQueen) && r.closed(items, i) {
		return false // "the brood nest is bars four to six"
	}
	if items[i].pause == none && prev.any(kContent, kCell) && r.closed(items, i) && r.segmentFinding(items, i) {
		return false // "eggs on bar four, sealed brood bars five and six"
	}
	if prev.any(kCell, kSign, kContent) && items[i].pause == comma && r.closed(items, i) && !r.barBefore(items, i) && i > 0 {
		return false // "one sealed cell, bar five."
	}
	if prev.any(kSeen, kQueen, kQueenIs, kDot) && items[i].pause == comma && r.closed(items, i) {
		return false // "queen still there, bar five, white mark"
	}
	if items[i].pause == none && prev.any(kContent, kCell) && r.shortRef(&items[i]) && r.postposed(items, i) {
		return false
	}
	if items[i].pause >= colon {
		return true
	}
	if prev.any(kAnd, kThen, kBut, kAdv, kArt) && i >= 2 && items[i].pause == none {
		if items[i-2].any(kDo, kBars) && prev.is(kArt) {
			return false
		}
		if prev.is(kAnd) && items[i-2].is(kBars) && !r.heads(items, i-2) {
			return false
		}
		if !prev.is(kArt) {
			return true
		}
		if items[i-2].any(kOn, kFrom) {
			return r.frontedBar(items, i-2)
		}
		prev = &items[i-2]
	}
	if prev.is(kComb) && items[i].pause == none && strings.HasSuffix(prev.text, "off") {
		return false // "one comb had dropped off bar eight"
	}
	if items[i].pause == none && prev.is(kSeen) && endsOnPlace(prev.text) {
		return false // "strolling across bar four"
	}
	if items[i].pause == none && prev.is(kSeen) && i+1 < len(items) && items[i+1].any(kNo, kShe, kBees, kPron, kTemper) {
		return false // "queen seen bar six no queen cells"
	}
	if items[i].pause == none && prev.any(kContent, kCell, kSign, kSeen, kQueen, kQueenIs, kDot, kPattern, kPlace) && r.closed(items, i) && !r.barBefore(items, i) {
		return false
	}
	if items[i].pause == none && prev.any(kOn, kOf, kFrom, kTo, kAfter, kFore, kTween, kDo, kIf, kAsk, kUnsure, kPlan) {
		return prev.any(kOn, kFrom) && r.frontedBar(items, i-1)
	}
	return true
}

// segmentFinding reports whether the words since the last comma begin with a
// finding, not with a bar.
func (r *reader) segmentFinding(items []item, i int) bool {
	k := i
	for k > 0 && items[k].pause < comma {
		k--
	}
	return k > 0 && items[k].pause == comma && items[k].any(kContent, kCell, kPattern, kAmount, kNum, kStage)
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
	return first > 0 && items[first].pause == none && items[first-1].any(kContent, kCell, kSeen, kQueen)
}

// closed reports whether a reference to bars ends its phrase.
func (r *reader) closed(items []item, i int) bool {
	return i+1 >= len(items) || items[i+1].pause >= comma || items[i+1].any(kColour, kQueenIs, kDot) && !items[i+1].is(kContent)
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
	if on > 0 && items[on-1].is(kAnd) {
		pause = max(pause, items[on-1].pause)
	}
	if pause > none && (r.findingBehind(items, on+2) || on+3 < len(items) && items[on+1].is(kArt) && r.findingBehind(items, on+3)) {
		return true // "eggs on bar three, on bar four sealed brood"
	}
	for k := on - 1; k >= 0; k-- {
		it := &items[k]
		if it.is(kBars) && r.heads(items, k) && items[on].pause > none {
			return true
		}
		if it.any(kContent, kCell, kSign, kQueen, kSeen, kUnseen, kComb, kShe, kDo, kNo, kMite, kPattern, kStage, kLeaf, kMaybe) {
			if it.is(kContent) && items[on].pause == none && r.frontedStyle(items, k) && r.findingBehind(items, on+2) {
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
			return k < i && r.frontedBar(items, k-1) && items[k+1].pause == none
		}
	}
	return false
}

// findingBehind reports whether a finding follows before the next pause.
func (r *reader) findingBehind(items []item, i int) bool {
	for ; i < len(items) && items[i].pause == none; i++ {
		if items[i].any(kContent, kCell, kComb) {
			return true
		}
		if items[i].is(kBars) {
			return false
		}
	}
	return false
}

// lookedAt: "I'll look at hive three again" names the hive inside the plan.
func (r *reader) lookedAt(items []item, i int) bool {
	k := i - 1
	for k >= 0 && items[k].any(kArt, kOn) && items[k+1].pause == none {
		k--
	}
	return k >= 0 && k < i-1 && items[k].is(kDo) && r.rule(&items[k], kDo).Form == "todo"
}

// argument reports whether a hive's name is part of what is said of another:
// moved to hive two, united with hive nine, from hive six.
func (r *reader) argument(items []item, i int) bool {
	k := i - 1
	for k >= 0 && items[k].any(kArt, kAdv) && items[k+1].pause == none {
		k--
	}
	if k < 0 || items[k+1].pause >= stop {
		return false
	}
	prev := &items[k]
	text := prev.text
	switch {
	case prev.is(kOn) && k > 0 && items[k-1].is(kDo) && r.rule(&items[k-1], kDo).Value == "inspect":
		return false
	case text == "back to" || k > 0 && r.isWord(&items[k-1], "back"):
		return false
	case text == "than", text == "like":
		return true
	case prev.any(kTo, kFrom), text == "with", text == "of", text == "for", text == "onto":
		return r.deedBefore(items, k)
	}
	if prev.is(kDo) && !r.named && r.rule(prev, kDo).Value != "unite" {
		return false
	}
	if prev.is(kDo) {
		switch r.rule(prev, kDo).Value {
		case "unite":
			return true
		case "inspect", "open", "treat", "feed", "requeen", "split":
			return false
		}
		return true
	}
	return false
}

func (r *reader) deedBefore(items []item, k int) bool {
	for ; k >= 0; k-- {
		if items[k].is(kDo) {
			for _, rule := range r.senses(&items[k]) {
				switch rule.Value {
				case "add_bar", "move_bar", "remove_bar", "unite":
					return true
				}
			}
		}
		if items[k].pause >= stop || items[k].is(kName) && !(k > 0 && items[k-1].is(kDo)) {
			return false
		}
	}
	return false
}

// judge gives each clause its mood. Questions, conditions and hearsay reach on
// until a bar, a hive, "but" or a full stop; the past until "now"; a plan as
// long as deeds follow.
func (r *reader) judge(list []clause) {
	r.dayHeading(list)
	all := asserted
	carried, cue := asserted, ""
	var pastOn colony.Date
	asked := false
	if n := len(list); n > 0 {
		last := list[n-1].items
		asked = last[len(last)-1].asked
	}
	tag := len(list) > 1 && len(list[len(list)-1].items) <= 6 && !hasKind(list[0].items[:1], kAsk)
	if asked && !tag && !r.selfAnswered(list) {
		all = unasked
	}
	for i := range list {
		c := &list[i]
		first := &c.items[0]
		if carried != asserted && r.resets(c, carried) {
			carried, cue = asserted, ""
		}
		r.cues(c)
		switch {
		case all == unasked, asked && tag && i == len(list)-1:
			c.mood, c.cue = unasked, "?"
		case c.mood == asserted && c.when != nil && (c.when.ago || r.sawOn(c)):
			c.mood = past
		}
		if (c.mood == asserted || carried == unasked && c.mood == planned) && carried != asserted && (!first.is(kName) || carried == planned) {
			c.mood, c.cue = carried, cue
			if carried == past {
				c.pastOn = pastOn
			}
		}
		if c.mood == asserted && r.heading != asserted {
			c.mood, c.heading = r.heading, true
		}
		if c.mood == past && c.when != nil && !c.when.week {
			pastOn = c.when.past
		}
		r.askedOnly = c.asks
		if c.mood != asserted && !c.alone {
			carried, cue = c.mood, c.cue
		}
	}
	// a condition that trails its plan takes it back
	for i := len(list) - 1; i > 0; i-- {
		if list[i].mood == unasked && list[i].items[0].pause == none && r.conditional(&list[i]) && list[i-1].mood == planned && !r.looksWhether(&list[i-1]) {
			list[i-1].mood = unasked
		}
	}
}

// dayHeading: "Sat: put two bars in" is a plan for that day.
func (r *reader) dayHeading(list []clause) {
	if len(list) < 2 || len(list[0].items) != 1 || !list[0].items[0].is(kDate) || !list[0].items[0].colon {
		return
	}
	for k := range list[1].items {
		if it := &list[1].items[k]; it.is(kDo) && (r.rule(it, kDo).Form == "todo" || r.twofold(it)) {
			d := list[0].items[0].day
			list[1].mood, list[1].when = planned, &d
			list[0].items[0].used = true
			return
		}
	}
}

// looksWhether: "look again if there is a young queen" is a look, whatever
// comes of it.
func (r *reader) looksWhether(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDo) {
			return r.rule(&c.items[k], kDo).Value == "inspect"
		}
	}
	return false
}

// sawOn: "Thomas saw eggs on Friday" is of an earlier day.
func (r *reader) sawOn(c *clause) bool {
	seen := false
	for k := range c.items {
		it := &c.items[k]
		seen = seen || it.is(kSeen) && r.isWord(it, "saw", "found", "spotted", "met", "seen")
		if (seen || k > 0 && c.items[k-1].is(kOn) && k <= 3 && hasKind(c.items, kSeen)) && it.is(kDate) && it.day.weekday && it.day.future.AddDays(-7) != r.today {
			return true
		}
	}
	return false
}

func (r *reader) conditional(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kIf) && k <= 1 {
			text := c.items[k].text
			return text == "if" || text == "unless" || text == "provided" || text == "only if" || text == "provided that"
		}
	}
	return false
}

// selfAnswered: "Is that a cell? Yes" are two sentences; a question mark in
// brackets behind a finding ("eggs?") is only a doubt.
func (r *reader) selfAnswered(list []clause) bool {
	for i := range list {
		for k := range list[i].items {
			if list[i].items[k].is(kAsk) {
				return false
			}
		}
	}
	return len(list[len(list)-1].items) <= 3 && len(list) == 1 && hasKind(list[0].items, kBars)
}

func (r *reader) resets(c *clause, carried mood) bool {
	first := &c.items[0]
	if carried == unasked && r.askedOnly && !first.any(kAnd, kOr) {
		return true
	}
	if first.is(kName) && carried == planned && r.hasDeed(c) {
		return false
	}
	if first.any(kName) || first.is(kBars) || carried == unasked && first.is(kThere) {
		return true
	}
	if first.is(kAnd) && len(c.items) > 1 && c.items[1].is(kBars) && carried != planned {
		return true
	}
	for k := range c.items {
		it := &c.items[k]
		if it.is(kYes) && carried == unasked {
			return true
		}
		if carried == past && first.is(kThen) && r.isWord(first, "so") && len(c.items) > 1 && c.items[1].is(kPron) {
			return true
		}
		if carried == past && (it.is(kNow) || it.is(kDate) && it.day.today) {
			return true
		}
		if carried == planned && it.is(kDo) && r.rule(it, kDo).Form == "done" && !r.twofold(it) && k > 0 && c.items[k-1].is(kPron) {
			return true
		}
		if carried == planned && (it.any(kContent, kTemper, kSign, kQueen) && !r.hasDeed(c)) {
			return true
		}
	}
	return first.is(kBut) && carried != past || carried == unasked && first.is(kNow)
}

func (r *reader) hasDeed(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDo) {
			return true
		}
	}
	return false
}

// twofold deeds read the same done and to be done: put, cut, split, set.
func (r *reader) twofold(it *item) bool {
	done, todo := false, false
	for _, n := range it.rules {
		if rule := &r.rules[n]; rule.Kind == kDo {
			done = done || rule.Form == "done"
			todo = todo || rule.Form == "todo"
		}
	}
	return done && todo
}

// cues reads the clause's own cues.
func (r *reader) cues(c *clause) {
	for k := range c.items {
		it := &c.items[k]
		words := r.text[it.start:it.end]
		switch {
		case it.is(kDate) && c.when == nil:
			if it.day.ago && r.placedBefore(c, k) || k+1 < len(c.items) && r.isWord(&c.items[k+1], "'s") {
				continue
			}
			d := it.day
			c.when = &d
		case it.is(kTheirs), it.is(kSay):
			c.mood, c.cue = unasked, words
			it.used = false
		case it.is(kUnsure):
			if r.value(it, kUnsure) == "queen" {
				c.queenUnsure = true
			} else {
				c.mood, c.cue, c.alone = unasked, words, true
			}
		case it.is(kIf) && c.mood != unasked && !(it.is(kUnsure)):
			if r.plainWhen(c, k) {
				continue
			}
			c.mood, c.cue = unasked, words
		case it.is(kAsk) && k <= 1 && c.mood == asserted && !(k == 1 && c.items[0].any(kPron, kShe, kQueen, kContent, kStores, kBees, kCell)):
			c.mood, c.cue, c.asks = unasked, words, true
		case it.is(kUndone) && r.doesFollow(c, k):
			c.undone, c.cue = true, words
		case it.is(kPlan) && c.mood == asserted && (r.hasDeed(c) || it.colon):
			c.mood, c.cue = planned, words
		case it.is(kPlan) && c.mood == asserted && r.sureFuture(it):
			c.mood, c.cue, c.alone = unasked, words, true
		case it.is(kSeen) && k > 0 && r.isWord(&c.items[k-1], "last", "last time i"):
			c.mood, c.cue = past, words
		case it.is(kPast) && (r.thisMonth(it) || r.monthAhead(c, it)):
		case it.is(kPast) && c.mood == asserted && !(k+1 < len(c.items) && r.isWord(&c.items[k+1], "'s", "s")):
			c.mood, c.cue = past, words
		}
		if it.is(kMaybe) && c.doubt == "" {
			c.doubt = words
		}
	}
}

// thisMonth: "wasps already, in June" said in June is said of now.
func (r *reader) thisMonth(it *item) bool {
	w := r.dates.of(r.mended[it.to-1])
	return it.to-it.from == 2 && w.kind == monthWord && w.value == int(r.today.Month)
}

// monthAhead: "treat in December" is to come; only a deed done or a sighting
// puts a bare month behind us.
func (r *reader) monthAhead(c *clause, it *item) bool {
	if r.dates.of(r.mended[it.to-1]).kind != monthWord {
		return false
	}
	for k := range c.items {
		if d := &c.items[k]; d.is(kSeen) || d.is(kDo) && r.rule(d, kDo).Form == "done" {
			return false
		}
	}
	return true
}

// sureFuture: a clause about what is to come that names no deed of the trade
// says nothing of today.
func (r *reader) sureFuture(it *item) bool {
	return r.isWord(it, "next time", "next visit", "going to", "will", "'ll", "shall", "must", "should", "need to", "needs to", "want to", "wants to", "hope to", "hoping to", "have to", "time to", "next inspection", "would like to", "i'd like to", "ought to")
}

// placedBefore: the date belongs to a bar's putting-in.
func (r *reader) placedBefore(c *clause, k int) bool {
	bars := false
	for i := 0; i < k; i++ {
		bars = bars || c.items[i].is(kBars)
		if bars && k-i <= 3 && r.placedRule(&c.items[i]) != nil {
			return true
		}
	}
	return false
}

// plainWhen: "when I arrived" tells the time and sets no condition, unless
// something is to come.
func (r *reader) plainWhen(c *clause, k int) bool {
	text := c.items[k].text
	if strings.HasSuffix(text, "long as") && !hasKind(c.items, kPlan) {
		return true
	}
	if text != "when" && text != "once" && text != "as soon as" && text != "until" && text != "whenever" {
		return false
	}
	for i := range c.items {
		if c.items[i].any(kPlan, kWill) || c.items[i].is(kDate) && c.items[i].day.ahead {
			return false
		}
	}
	return true
}

// doesFollow reports whether a deed that is not done follows the cue.
func (r *reader) doesFollow(c *clause, k int) bool {
	for i := k + 1; i < len(c.items) && i <= k+4; i++ {
		if c.items[i].is(kDo) {
			return true
		}
		if c.items[i].any(kContent, kCell, kSign) {
			return false
		}
	}
	return false
}
