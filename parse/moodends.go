package parse

import "strings"

// A clause without a cue of its own is told as the one before it was: of an earlier day, of
// what is to be done, or asked. Here is told where that ends.

// resets reports whether a clause ends the mood that the one before carried on.
func (r *reader) resets(c *clause, carried mood) bool {
	first := &c.items[0]
	switch {
	case carried == unasked && r.askedOnly && !first.any(kAnd, kOr):
		return true
	case first.is(kName) && carried == planned && r.hasDeed(c):
		return r.toldDone(c) // "mark her next time then the corner hive … gave it a litre"
	case first.any(kName, kBars), first.is(kAnd) && c.next(0).is(kBars) && carried != planned:
		return true
	}
	switch carried {
	case past:
		return r.endsPast(c)
	case planned:
		return first.is(kBut) || r.endsPlan(c)
	case unasked:
		return r.endsUnasked(c)
	}
	return first.is(kBut)
}

// endsPast reports whether a clause behind one of an earlier day tells how it is now.
func (r *reader) endsPast(c *clause) bool {
	first, second := &c.items[0], c.next(0)
	if first.is(kAnd) && second.is(kPron) && r.isWord(c.next(1), "intend", "intend to", "will", "shall", "must", "need to", "mean to", "'ll") {
		return true // "(last year they were calm), and I intend to requeen them"
	}
	who, verb := first, second
	if first.any(kAnd, kBut) {
		who, verb = second, c.next(1)
	}
	switch {
	case first.pause == comma && r.isWord(first, presentVerbs...):
		return true // "bar 9, which I put in a fortnight ago, is half built"
	case who.isWord3("it", "they", "that") && verb.isWord4("is", "'s", "are", "'re"):
		return true // "put it in two weeks ago, and it is about two thirds drawn"
	case first.pause == colon && first.any4(kArt, kQueen, kBees, kComb) && !c.has(kPast) && c.when == nil:
		return true // "it was requeened a fortnight ago; the new queen is on bar five"
	case first.is(kAnd) && second.isWord4("is", "are", "has", "have"):
		return true // "was honey last time and is sealed brood now"
	case first.is(kAnd) && second.is(kShe) && c.next(1).isWord2("is", "'s"):
		return true // "put a queen in ten days ago and she's laying on bar four"
	case first.is(kAnd) && (r.standsSo(c.items, 1) || thereUpon(c.items, 1)), nowThere(c.items):
		return true // "…, which I put in on Thursday, and there's no comb on bar 8"
	case first.is(kThen) && first.text == "so" && (second.is(kPron) || second.isWord2("we'll", "i'll") || r.weWill(c.items, 1)):
		return true
	}
	for k := range c.items {
		if it := &c.items[k]; it.is(kNow) || it.is(kDate) && it.day.today {
			return true
		}
	}
	return false
}

// endsPlan reports whether a clause behind a plan tells what was done or found.
func (r *reader) endsPlan(c *clause) bool {
	if c.items[0].pause >= comma && r.wholeFinding(c.items, 0) {
		return true // "feed again on Friday; feeder empty"
	}
	for k := range c.items {
		it := &c.items[k]
		if r.doneAlready(c, k) {
			return true // "will feed again on Friday, narrowed the entrance"
		}
		if (it.any5(kContent, kTemper, kSign, kQueen, kBrood) || it.is(kComb) && c.items[0].any(kPron, kArt)) && !r.hasDeed(c) {
			return true
		}
	}
	return false
}

// toldDone reports whether a clause has a verb for what was done and no word of a plan.
func (r *reader) toldDone(c *clause) bool {
	for k := range c.items {
		if it := &c.items[k]; it.is(kDo) && !it.is(kState) && r.rule(it, kDo).Form == "done" && !r.twofold(it) {
			return !c.has(kPlan)
		}
	}
	return false
}

// endsUnasked reports whether a clause behind a question, a condition or hearsay asserts
// again.
func (r *reader) endsUnasked(c *clause) bool {
	first := &c.items[0]
	if first.is(kThere) || first.is(kNo) && c.has(kSign) || first.any(kNo, kLeaf) && (c.has(kThere) || first.pause >= colon && strings.HasPrefix(first.text, "there ")) || first.is(kPlan) && strings.HasPrefix(first.text, "next ") {
		return true // "… no foulbrood here", "next time I need to add a bar"
	}
	if first.is(kAnd) && first.pause == comma && c.next(0).isWord2("i", "we") && r.isWord(c.next(1), "'m", "am", "'re", "are") && c.next(2).text == "going to" && c.has(kDate) && r.hasDeed(c) && !c.has(kIf) {
		return true // "a queen is on order, and I'm going to requeen on Thursday"
	}
	if first.pause >= colon && first.any(kWill, kPlan) && first.isWord2("will", "shall") && c.has(kDate) && r.hasDeed(c) {
		return true // "they will manage if left in peace; will inspect in a fortnight"
	}
	for k := range c.items {
		it := &c.items[k]
		if it.is(kYes) {
			return true
		}
		if it.is(kDate) && it.day.today && r.hasDeed(c) && first.is(kAnd) {
			return true // "what you taught me, and made the split this morning"
		}
	}
	if first.text == "and so" && c.next(0).isWord2("i", "we") && r.hasDeed(c) && !c.hasAny(kIf, kPlan, kWill) {
		return true // "my father would have hung another, and so I hung one"
	}
	if first.text == "so" && (c.next(0).isWord4("i", "we", "we'll", "i'll") || r.weWill(c.items, 1)) && !c.has(kIf) {
		return true // "he says they want room, so I am going to add a bar"
	}
	if first.isWord2("though", "although") && c.has(kSign) && !c.has(kBars) {
		return false // "the hive next door was not opened, though wasps were about it"
	}
	return first.any(kBut, kNow) || first.is(kWhole) && first.isWord5("in my own", "in mine", "in ours", "in my own hive", "in my own hives")
}

// pastLooking reports whether clause i, behind what anybody sees who looks in some way, tells what was
// found: "you can see them if you hold it up to the sun, and the queen was on six".
func (r *reader) pastLooking(list []clause, i int) bool {
	k := i - 1
	if k > 0 && len(list[k].items) == 1 {
		k-- // "if you tilt | it"
	}
	if k < 0 || !list[k].items[0].is(kIf) || list[k].next(0).text != "you" && !strings.HasPrefix(list[k].items[0].text, "if you") {
		return false
	}
	items := list[i].items
	if items[0].any(kAnd, kBut) {
		items = items[1:]
	}
	return r.foundInPast(items)
}

// nowThere reports whether a clause begins with "there is", in the present.
func nowThere(items []item) bool {
	if items[0].is(kAnd) && len(items) > 1 {
		items = items[1:]
	}
	text := items[0].text
	if !strings.HasPrefix(text, "there") {
		return false
	}
	if items[0].is(kThere) && len(items) > 1 {
		text += " " + items[1].text
	}
	return strings.HasPrefix(text, "there's") || strings.HasPrefix(text, "there is") || strings.HasPrefix(text, "there are") || strings.HasPrefix(text, "there 's")
}

// foundOnOpening reports whether clause i, behind a deed of an earlier day, tells how a part of the hive
// was when it was opened, which is today: "last week I fed a litre, and the feeder was empty when I
// lifted the lid".
func (r *reader) foundOnOpening(list []clause, i int) bool {
	if i == 0 || i+1 >= len(list) || !r.hasDeed(&list[i-1]) || !list[i].has(kFixture) || !list[i].items[0].any3(kAnd, kBut, kFixture) {
		return false
	}
	return r.onOpening(list[i+1].items)
}
