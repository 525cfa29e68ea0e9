package parse

import "strings"

// A hive that is named beside a deed is the one that it was done to, one that something
// came from or went to, or begins what is said of itself.

// lookedAt: "I'll look at hive three again", "clean the floor of the yard hive on
// Sunday", "take honey from the yard hive on Sunday" name the hive inside the plan.
func (r *reader) lookedAt(items []item, i int) bool {
	k := i - 1
	for k >= 0 && (items[k].any3(kArt, kOn, kFrom) || items[k].text == "into") && items[k+1].pause == none {
		k--
	}
	if k > 1 && items[k].is(kOf) && items[k-1].is(kFixture) && items[k].pause == none && items[k+1].pause == none {
		k -= 2
	}
	if k > 0 && items[k].is(kFixture) && items[k+1].is(kOn) {
		k-- // "reduce the entrance on Teasel"
	}
	if k < 0 || !items[k].is(kDo) || r.rule(&items[k], kDo).Form != "todo" {
		return false
	}
	if k < i-1 {
		return true
	}
	if k == 0 && items[i].pause == none && !items[0].is(kState) {
		return dayEnds(items, i+1) && hasAhead(items[i+1:min(len(items), i+4)]) // "Feed hive three tomorrow"
	}
	return k > 0 && items[i].pause == none && items[k-1].any(kWill, kPlan) && dayEnds(items, i+1)
}

// dayEnds reports whether a day follows, or nothing: "I'll inspect hive five on Friday", "… hive five
// again on Friday".
func dayEnds(items []item, i int) bool {
	if i+1 < len(items) && items[i].isWord2("again", "once more") && items[i].pause == none {
		i++
	}
	if i+1 < len(items) && items[i].is(kOn) && items[i].pause == none {
		i++
	}
	return i == len(items) || items[i].pause > none || items[i].is(kDate)
}

// doneTo reports whether the hive at item i is the object of a verb that begins what is
// said of it: "I fed hive two", "then treated Juniper", "gave hive two a litre of syrup".
func (r *reader) doneTo(items []item, i int) bool {
	if r.unitedFirst(items, i) {
		return true
	}
	k := i - 1
	for k >= 0 && items[k].is(kArt) && items[k+1].pause == none {
		k--
	}
	if k < 0 || items[k+1].pause > none {
		return false
	}
	gives := r.toGive(items, k, i)
	switch {
	case gives && k > 0 && items[k].pause == none && items[k-1].any(kPlan, kWill):
		return true
	case !gives && !items[k].is(kDo):
		return false
	}
	undone := k > 0 && items[k-1].is(kUndone) && items[k].pause == none // "I did not feed hive five on Friday"
	if verb := r.rule(&items[k], kDo); !gives && (verb.Form != "done" && verb.Form != "todo" && !undone || traitsOf(verb.Value).hive != tendedTo && !r.gaveFood(items, k, i)) {
		return false
	}
	for k > 0 && items[k].pause == none && (items[k-1].any6(kPron, kHave, kAdv, kOn, kUndone, kDate) || items[k-1].any(kPlan, kWill) || items[k-1].text == "never") {
		k--
	}
	return k == 0 || items[k].pause >= comma || items[k-1].any3(kAnd, kThen, kBut) || r.begins(items, k)
}

// toGive reports whether the hive at item i is to be given food or bars by the verb at item k: "need to give
// hive two a litre of syrup on Friday", "must get hive two three more bars".
func (r *reader) toGive(items []item, k, i int) bool {
	if !items[k].isWord3("give", "get", "bring") {
		return false
	}
	for n := i + 1; n < len(items) && n < i+5 && items[n].pause == none; n++ {
		if items[n].any3(kSubstance, kMeasure, kBar) && !items[n].is(kBars) {
			return true
		}
	}
	return false
}

// unitedFirst reports whether the hive at item i, before which none was named, is united with
// another named behind it, and so is the one that is spoken of: "on Wednesday we shall unite
// hive two with hive six".
func (r *reader) unitedFirst(items []item, i int) bool {
	if r.named || i+2 >= len(items) || items[i+1].pause > none || !items[i+1].is(kTo) && !items[i+1].isWord4("onto", "with", "into", "in") {
		return false
	}
	k := i - 1
	for k >= 0 && items[k].is(kArt) && items[k+1].pause == none {
		k--
	}
	if k < 0 || items[k+1].pause > none || !items[k].is(kDo) || r.rule(&items[k], kDo).Value != "unite" {
		return false
	}
	other := i + 2
	for other+1 < len(items) && items[other].is(kArt) {
		other++
	}
	return items[other].is(kName)
}

// gaveFood reports whether a hive at item i was given a feed, or bars of the keeper's own:
// "gave hive two a litre of syrup", "gave hive two three new bars".
func (r *reader) gaveFood(items []item, verb, i int) bool {
	if !items[verb].isWord2("gave", "given") {
		return false
	}
	for k := i + 1; k < len(items) && k <= i+4 && items[k].pause == none; k++ {
		if items[k].any(kMeasure, kSubstance) || strings.HasSuffix(items[k].text, "smoke") || k+1 < len(items) && items[k+1].is(kBar) && (!r.named || r.isWord(&items[k], r.wordsOf[newOnes]...)) {
			return true
		}
	}
	return false
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
	named, inHand := r.handBefore(items[:i])
	prev := &items[k]
	text := prev.text
	switch {
	case r.doneTo(items, i):
		return false
	case named && items[i].name == inHand && prev.is(kDo):
		return true // "we will inspect hive 5 again on 7 June", of hive 5
	case named && items[i].name == inHand && r.isWord(prev, r.wordsOf[lettingBe]...) && items[i].pause == none:
		return true // "I am going to leave Juniper shut and look in on the 3rd", of Juniper
	case prev.is(kOn) && k > 0 && items[k-1].is(kDo) && r.rule(&items[k-1], kDo).Value == "inspect":
		return false
	case text == "back to" || k > 0 && items[k-1].text == "back", text == "to" && (r.walksOn(items, k-1) || r.putInPlace(items, k-1)):
		return false
	case text == "took" && (i+1 == len(items) || items[i+1].pause > none || items[i+1].isWord5("last", "first", "next", "while", "myself")):
		return false // "I took Juniper last: light on stores"
	case text == "for" && k > 0 && items[k-1].text == "as" && (k == 1 || items[k-1].pause >= stop):
		return false // "As for Juniper, calm"
	case prev.is(kTo) && r.timeGiven(items, k):
		return false // "I gave the afternoon to the west hive"
	case k > 0 && items[k-1].pause < comma && r.says(r.mended[items[k-1].to-1], r.wordsOf[feelings]...):
		return false // "I was less taken with Juniper"
	case text == "of" && k > 0 && items[k-1].pause < stop && r.says(r.mended[items[k-1].to-1], "opposite", "reverse", "equal", "image", "match"):
		return true // "Tansy is the opposite of Juniper"
	case r.compares(prev), prev.is(kOn) && k > 0 && r.compares(&items[k-1]):
		return true
	case text == "off" && k > 0 && items[k-1].is(kDo) && r.rule(&items[k-1], kDo).Value == "split":
		return true // "this one was split off hive 2"
	case text == "of" && k > 0 && !items[k-1].any5(kBar, kBars, kBees, kContent, kNum):
		return false // "the side of the plum hive"
	case named && prev.is(kFrom) && k > 0 && prev.pause == none && (items[k-1].any4(kBar, kBars, kBees, kQueen) || k > 2 && items[k-1].is(kContent) && items[k-2].is(kOf) && items[k-3].is(kBar)):
		return true // "three bars from hive eight went in"
	case prev.any(kTo, kFrom), text == "with", text == "of", text == "for", text == "onto":
		return r.deedBefore(items, k)
	}
	if !prev.is(kDo) {
		return false
	}
	switch hive := traitsOf(r.rule(prev, kDo).Value).hive; {
	case hive == joinedTo:
		return true
	case !r.named:
		return false
	case hive == lookedInto, hive == tendedTo, hive == openedAt:
		return r.toBeDoneTo(items, i, prev)
	}
	return true
}

// handBefore tells whether a hive has been named before some items end, on their line or on one before, and which
// is in hand there.
func (r *reader) handBefore(items []item) (named bool, inHand string) {
	for k := len(items) - 1; k >= 0; k-- {
		if items[k].is(kName) {
			return true, items[k].name
		}
	}
	return r.named, r.cur.hive
}

// timeGiven reports whether all that was given before the "to" at item k is time or attention: "I gave
// the afternoon to the west hive", "devoted an hour to Juniper".
func (r *reader) timeGiven(items []item, k int) bool {
	if k == 0 {
		return false
	}
	last := r.mended[items[k-1].to-1]
	return r.says(last, r.wordsOf[givenTimes]...) && !items[k-1].any(kBar, kBars, kSubstance)
}

// walksOn reports whether the "on" at item k, with "to" behind it, turns the talk to the next
// hive, and tells of nothing that was moved there: "gave it a feed on to hive four".
func (r *reader) walksOn(items []item, k int) bool {
	if k < 0 || items[k].text != "on" || items[k+1].pause > none {
		return false
	}
	for k--; k >= 0 && items[k+1].pause < comma; k-- {
		switch it := &items[k]; {
		case it.is(kName):
			return true
		case it.is(kDo):
			return it.text != "put" && r.rule(it, kDo).Value != "move_bar"
		}
	}
	return true
}

// putInPlace reports whether what was put somewhere has its place told right before the "over" at item
// k, so that "to" behind it turns the talk to the next hive: "a bar added after bar nine over to hive
// five".
func (r *reader) putInPlace(items []item, k int) bool {
	return k > 1 && items[k].text == "over" && items[k].pause == none && items[k-1].any(kBar, kBars) && items[k-2].any(kAfter, kFore) && !(k > 2 && items[k-3].is(kFrom))
}

// compares reports whether a word likens what is told to another hive: "fewer than in
// hive two".
func (r *reader) compares(it *item) bool { return it.isWord4("than", "like", "unlike", "as") }

// toBeDoneTo reports whether a verb of what is to be done takes another hive of the note
// for its object: "must feed hive 2 on Sunday", said of hive 3.
func (r *reader) toBeDoneTo(items []item, i int, verb *item) bool {
	return r.byHive[items[i].name] != nil && r.rule(verb, kDo).Form == "todo" && !r.twofold(verb)
}

// deedBefore reports whether the hive behind item k is where a deed carries something to
// or from.
func (r *reader) deedBefore(items []item, k int) bool {
	into := items[k].text == "into" || items[k].is(kTo) && k > 0 && items[k-1].is(kBar)
	for ; k >= 0; k-- {
		if items[k].is(kDo) {
			for rule := range r.senses(&items[k]) {
				switch {
				case traitsOf(rule.Value).carries:
					return true
				case rule.Value == "split":
					return into
				}
			}
		}
		if items[k].pause >= stop || items[k].is(kName) && !(k > 0 && items[k-1].any3(kDo, kArt, kFrom)) {
			return false
		}
	}
	return false
}

// hiveArgument takes the hive at item k into the deed of the verb at item i.
func (r *reader) hiveArgument(c *clause, d *deed, i, k int) {
	it := &c.items[k]
	if !r.argument(c.items, k) && k == 0 {
		return
	}
	prev := &c.items[k-1]
	if prev.is(kArt) && k >= 2 {
		prev = &c.items[k-2]
	}
	it.used = true
	d.items = append(d.items, it)
	switch {
	case r.byHive[it.name] != nil && it.name != r.cur.hive && (d.doneToHive(prev) || prev.is(kDo) && c.next(k).is(kFixture) && c.next(k).pause == none):
		d.hives = []string{it.name}
	case it.name == r.cur.hive: // this hive itself
	case prev.is(kFrom):
		d.fromHive = it.name
	case d.do == "unite" && prev.is(kDo):
		if k+1 < len(c.items) && (c.items[k+1].is(kTo) || c.items[k+1].isWord4("onto", "with", "into", "in")) {
			d.fromHive = it.name
		} else {
			d.toHive = it.name
		}
	default:
		d.toHive = it.name
	}
	if d.do == "remove_bar" && d.toHive != "" {
		d.do = "move_bar" // "took bars four and five over to the Castle hive"
	}
	if d.do == "add_bar" && d.toHive != "" && !r.ownBars(c.items[k:]) && (len(d.bars) > 0 || r.named && c.items[i].isWord4("given", "gave", "give", "donated")) {
		d.do = "move_bar"
	}
}

// doneToHive reports whether a deed on another hive takes the hive itself for its
// object: "I'll look at hive three again", "feed hive two", "harvest from Primrose". One
// that stands before a fixture has it: "clean hive two's floor".
func (d *deed) doneToHive(prev *item) bool {
	switch d.traits().hive {
	case lookedInto:
		return true
	case tendedTo:
		return prev.is(kDo)
	case robbedOf:
		return prev.is(kFrom)
	}
	return false
}

// addsElsewhere reports whether bars of the keeper's own go into another hive that was told,
// whose deed it is: "must add two bars to hive 3". What was given came from the one in hand.
func (r *reader) addsElsewhere(verb *item, d *deed) bool {
	return d.do == "add_bar" && d.toHive != "" && d.toHive != r.cur.hive && len(d.bars) == 0 && r.byHive[d.toHive] != nil
}

// ownBars reports whether bars that are given behind the name of a hive are none that another
// hive had: "give Juniper two more bars", "gave Juniper an empty bar".
func (r *reader) ownBars(items []item) bool {
	for k := 1; k < len(items) && k < 5 && items[k].pause == none; k++ {
		if items[k].any(kBar, kBars) || r.emptyBar(&items[k]) {
			return (r.emptyBar(&items[k]) || r.isWord(&items[k-1], r.wordsOf[newOnes]...)) && !(k+1 < len(items) && items[k+1].is(kOf))
		}
	}
	return false
}

// inEach writes a deed of several hives to each of them: "treated hives 1 and
// 3".
func (r *reader) inEach(c *clause, d *deed) {
	here, hives := r.cur, d.hives
	for _, name := range hives {
		if b := r.byHive[name]; b != nil {
			one := *d
			one.hives = nil
			r.cur = b
			r.settleDeed(c, &one)
		}
	}
	r.cur = here
}
