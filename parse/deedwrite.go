package parse

import (
	"slices"
	"strings"
)

// settleDeed decides whether the deed was done, is planned, was done earlier or
// not at all, and writes it.
func (r *reader) settleDeed(c *clause, d *deed) {
	rule := r.senseOf(&c.items[d.at], d)
	it := &c.items[d.at]
	before := r.beforeVerb(c, d.at)
	if r.addsElsewhere(it, d) {
		d.hives, d.toHive = []string{d.toHive}, ""
	}
	if len(d.hives) > 0 {
		r.inEach(c, d)
		return
	}
	r.namedBefore(d)
	event := d.traits().event
	undone := c.undone && hasKind(c.items[:d.at], kUndone)
	if undone && r.wouldHave(c, d.at) {
		it.used = true
		return // "I would have treated in July" tells of no year's lack
	}
	then := c.mood == past && (c.has(kPast) || strings.Contains(c.cue, "last")) || c.when != nil && c.when.week && !c.when.ahead // "not treated this year"
	switch {
	case event != "" && ((undone || before == kNo) && (then || d.dueGoneBy(c)) || before == kNo && c.mood == past):
		r.toldOfThen(c, event, "no", d.rule, d.due, d.items...)
	case undone, before == kUndone, before == kNo, r.toNone(c, d.at):
		it.used = true
		return
	case c.mood == asserted && it.colon && d.what != "" && (d.due == nil || d.due.today):
		r.write("actions", c, d) // "Treatment: formic acid"
	case c.mood == planned || c.mood == asserted && rule.Form == "todo" && !r.twofold(it) && (r.imperative(c, d.at) || before == kPlan):
		r.write("plans", c, d)
	case c.mood == asserted && d.due != nil && (d.due.ahead || d.due.weekday) && r.getsDone(c, d.at):
		r.write("plans", c, d)
	case c.mood == asserted && d.due != nil && !d.due.ago && !d.due.today && rule.Form == "todo" && !r.twofold(it) && d.at > 0 && c.items[d.at-1].isWord2("i", "we"):
		r.write("plans", c, d) // "on 3 June we treat"
	case c.mood == past || d.due != nil && d.due.ago || d.due != nil && !d.due.today && !d.due.ahead && (rule.Form == "done" || before == kHave):
		r.earlierDeed(c, d)
	case d.due != nil && (d.due.ahead || d.due.weekday && rule.Form == "todo" && !r.twofold(it) || rule.Form == "doing" && !d.due.today) && rule.Form != "done":
		r.write("plans", c, d)
	case c.mood == asserted && rule.Form == "todo" && d.due == nil && r.doneNow(c, d):
		r.write("actions", c, d) // "I harvest bar 12"
	case rule.Form == "done" || before == kHave || r.twofold(it) || rule.Form == "doing" && d.due == nil && (r.asWeSpeak(c, d.at) || r.byDoing(c, d.at)):
		r.write("actions", c, d)
	}
}

// doneNow reports whether a verb in the present tells what its speaker does in this visit: to
// certain bars, to a part of the hive, to its queen, or with so much of something, and not
// what they do as a rule.
func (r *reader) doneNow(c *clause, d *deed) bool {
	who := d.at - 1
	if d.do == "inspect" || who < 0 || !c.items[who].isWord2("i", "we") || c.items[d.at].pause > none || c.next(d.at).text == "for" || who > 0 && c.items[who-1].isWord3("which", "that", "what") || c.has(kIf) && !c.items[who].is(kIf) {
		return false
	}
	for k := range r.told {
		if it := &r.told[k]; r.isWord(it, r.wordsOf[habits]...) || it.is(kPast) || it.is(kDate) && !it.day.today || k+1 < len(r.told) && r.told[k].text == "when" && r.told[k+1].any(kBees, kArt) {
			return false // "I always reduce the entrance", "when they swarm I add two bars"
		}
	}
	next := c.next(d.at)
	if next.is(kArt) && next.pause == none {
		next = c.next(d.at + 1)
	}
	return d.what != "" || strings.HasSuffix(c.items[d.at].text, " her") || len(d.bars) > 0 || d.count != nil || d.size != nil || d.do == "smoke" || next.is(kFixture) || next.is(kQueen) && !next.plural || next.isWord2("her", "it")
}

// getsDone reports whether the verb at item i tells what is to happen to somebody: "Clover
// gets requeened next week".
func (r *reader) getsDone(c *clause, i int) bool {
	return i > 0 && c.items[i-1].isWord4("get", "gets", "getting", "be")
}

// dueGoneBy reports whether right behind a deed that was not done stands a day gone by:
// "didn't feed them on Sunday".
func (d *deed) dueGoneBy(c *clause) bool {
	if d.do == "inspect" || d.due == nil || !d.due.weekday && !d.due.ago || d.due.today || d.due.ahead || c.mood == planned || c.has(kWill) || strings.Contains(c.cue, "would") || strings.HasPrefix(c.cue, "don't") || strings.HasPrefix(c.cue, "do not") {
		return false
	}
	for k := d.at + 1; k < len(c.items); k++ {
		switch it := &c.items[k]; {
		case it.is(kDate):
			return true
		case it.pause > none || !it.any6(kPron, kShe, kOn, kArt, kBees, kSubstance) && !it.is(kName):
			return false
		}
	}
	return false
}

// namedBefore takes the food or medicine that the sentence named before it came to the
// deed: "formic acid's gone in, treated today".
func (r *reader) namedBefore(d *deed) {
	if d.what != "" || !d.traits().substance {
		return
	}
	for k := range r.told {
		it := &r.told[k]
		if it.start >= d.items[0].start {
			return
		}
		if !it.is(kSubstance) || it.used || k > 0 && r.told[k-1].is(kNo) || r.rule(it, kSubstance).Value != d.do {
			continue
		}
		d.what, d.items = r.substance(it), append(d.items, it)
		return
	}
}

// toNone: "cut none of them", "added no bars".
func (r *reader) toNone(c *clause, at int) bool {
	if at+1 == len(c.items) {
		return false
	}
	next := &c.items[at+1]
	return next.pause == none && next.any(kNo, kNot) && next.isWord5("none", "none of", "no", "not one", "nothing")
}

// asWeSpeak: "I'm feeding them a litre" is said while it is done.
func (r *reader) asWeSpeak(c *clause, at int) bool {
	for at > 0 && c.items[at-1].is(kAdv) {
		at--
	}
	return at > 1 && c.mood == asserted && c.when == nil && c.doubt == "" && c.items[at-1].isWord4("'m", "am", "'re", "are") && c.items[at-2].isWord2("i", "we")
}

// byDoing reports whether a verb tells by what a thing was done: "I made room by adding two bars".
func (r *reader) byDoing(c *clause, at int) bool {
	if c.mood != asserted || r.before(c, at).text != "by" {
		return false
	}
	ours := false
	for k := range r.told {
		it := &r.told[k]
		if it.start >= c.items[at].start {
			break
		}
		if it.any4(kWill, kPlan, kSay, kUndone) || it.any(kNo, kIf) || r.isWord(it, r.wordsOf[habits]...) {
			return false // "one makes room by adding bars"
		}
		ours = ours || it.isWord2("i", "we") || k == 0 && it.is(kDo) && r.rule(it, kDo).Form == "done"
	}
	return ours
}

// senseOf is the rule by which a verb was taken for the deed.
func (r *reader) senseOf(it *item, d *deed) *rule {
	first := r.rule(it, kDo)
	for _, n := range it.says.rules {
		if r.rules[n].ID == d.rule {
			return &r.rules[n]
		}
	}
	return first
}

// wouldHave reports whether what was not done is what might have been or was not meant to
// be: "I'd have fed them in May", "we are not planning to split them this year".
func (r *reader) wouldHave(c *clause, at int) bool {
	for k := at - 1; k >= 0 && k >= at-4; k-- {
		if it := &c.items[k]; it.is(kUndone) {
			return strings.HasSuffix(it.text, "have") || strings.HasSuffix(it.text, "'ve") || strings.HasSuffix(it.text, "ing to")
		}
	}
	return false
}

// managed reports whether an adverb tells that what follows was done: "I had to remove it".
func (r *reader) managed(it *item) bool {
	rule := r.rule(it, kAdv)
	return rule != nil && rule.Form == "managed"
}

// beforeVerb is the cue right before the verb, over adverbs.
func (r *reader) beforeVerb(c *clause, at int) kind {
	for k := at - 1; k >= 0 && k >= at-3; k-- {
		it := &c.items[k]
		switch {
		case r.managed(it), it.text == "did" && k > 0 && c.items[k-1].isWord2("i", "we"):
			return kHave // "I had to remove it", "I did remove it": it was done
		case it.is(kUndone):
			return kUndone
		case it.is(kNo):
			return kNo
		case it.is(kPlan):
			return kPlan
		case it.is(kHave):
			return kHave
		}
		if !it.any5(kAdv, kWill, kShe, kPron, kBe) {
			break
		}
	}
	if r.managedAsWell(c, at) {
		return kHave
	}
	return noKind
}

// managedAsWell reports whether the verb at item i goes on behind "and" with what was done: "all I did was
// harvest two bars and open the floor", "I had to feed them and reduce the entrance".
func (r *reader) managedAsWell(c *clause, i int) bool {
	if r.rule(&c.items[i], kDo).Form != "todo" {
		return false
	}
	verb := beginsAt(r.told, c.items[i].start)
	if verb < 2 || !r.told[verb-1].is(kAnd) || r.told[verb].pause > none || r.told[verb-1].pause > comma {
		return false
	}
	for k := verb - 2; k >= 0; k-- {
		switch it := &r.told[k]; {
		case r.managed(it):
			return true
		case it.any6(kPlan, kWill, kBe, kIf, kAsk, kNo) || it.any(kUndone, kUnsure) || it.is(kPron) && it.isWord4("i", "we", "you", "he") || it.is(kDate) && !it.day.today || r.told[k+1].pause > comma:
			return false
		}
	}
	return false
}

// write puts the deed into actions or plans.
func (r *reader) write(list string, c *clause, d *deed) {
	if d.do == "inspect" && list != "plans" {
		return
	}
	r.spokeOf.deed = r.sentenceNo
	b := r.cur
	if d.do == "free_comb" || d.do == "straighten" || d.do == "trim_comb" {
		r.barsInHand(d) // "I cut bar six free, and bar eight's stuck too, I cut that one free as well"
	}
	key := r.paths.under(list, d.do)
	if path, again := r.repeated(key, d); again {
		for _, it := range d.items {
			it.used = true
		}
		r.details(path, list, c, d)
		return
	}
	path := b.deed(key)
	why := r.why(d.rule, c.cue, d.items...)
	if c.doubt != "" && (list == "actions" || c.doubt == c.cue) {
		why.doubts = append(why.doubts, "hedged: "+c.doubt)
	}
	b.put(path, "yes", why)
	r.lastDeed = path
	r.details(path, list, c, d)
	r.consequences(list, d, why)
	r.bothFixtures(list, c, d)
	if d.do == "mark_queen" && list == "actions" {
		r.paint(c, d)
	}
}

// paint reads the colour she was marked with: "put a white spot on her",
// "painted the queen blue".
func (r *reader) paint(c *clause, d *deed) {
	for k := d.at; k < len(c.items) && k <= d.at+5; k++ {
		it := &c.items[k]
		colour := r.value(it, kColour)
		if k == d.at {
			colour = colourWithin(it.text)
		}
		if markColours[colour] {
			it.used = true
			r.setAfter("queen.colour", colour, r.why(d.rule, c.cue, it))
			return
		}
	}
}

// colourWithin is the colour of a mark that a way of saying names, as in "put a
// white spot on her"; "" for none.
func colourWithin(text string) string {
	for word := range strings.FieldsSeq(text) {
		if markColours[word] {
			return word
		}
	}
	return ""
}

// repeated: the same deed told twice is one; two that differ are two.
func (r *reader) repeated(key string, d *deed) (string, bool) {
	if r.cur.deeds[key] == 0 {
		return "", false
	}
	if d.traits().twice {
		what, _ := r.cur.get(r.paths.under(key, "what"))
		amount, _ := r.cur.get(r.paths.under(key, "amount"))
		bar, one := r.cur.get(r.paths.under(key, "bar"))
		if !one {
			bar, _ = r.cur.get(r.paths.under(key, "bars"))
		}
		same := (d.what == "" || what == d.what) && (d.size == nil || amount == "" && d.do == "harvest" || amount == formatNumber(d.size.amount.lo)) &&
			(len(d.bars) == 0 || bar == joinBars(d.bars)) && d.count == nil
		more := r.lastDeed == key && r.spokeOf.deed == r.sentenceNo && d.size != nil && amount == "" && what == "" && (d.do == "feed" || d.do == "treat") // "feed on Friday, 1 l syrup"
		return key, same || more || d.do == "harvest" && r.toldBare(key)
	}
	return key, true
}

// toldBare reports whether nothing is told yet of how much was taken and of which bars: "we
// took their honey. I harvested bars ten and eleven, seven pounds".
func (r *reader) toldBare(key string) bool {
	for _, detail := range []string{"count", "bar", "bars", "amount"} {
		if _, told := r.cur.get(r.paths.under(key, detail)); told {
			return false
		}
	}
	return true
}

// details writes what was said of the deed.
func (r *reader) details(path, list string, c *clause, d *deed) {
	b := r.cur
	why := source{spans: r.spanOf(d.items...), rule: d.rule}
	if d.traits().ofQueen {
		d.bars, d.count = nil, nil
	}
	r.barsInHand(d)
	if d.do == "split" && d.toHive == "" {
		d.count = nil // of bars that went somewhere
	}
	switch len(d.bars) {
	case 0:
	case 1:
		b.put(r.paths.under(path, "bar"), joinBars(d.bars), why)
		if d.do != "cut_cells" {
			d.count = nil
		}
	default:
		b.put(r.paths.under(path, "bars"), joinBars(d.bars), why)
		if d.do != "add_bar" && d.do != "cut_cells" { // of which other things are counted
			d.count = &quantity{lo: float64(len(d.bars))}
		}
	}
	if d.count != nil {
		r.putCount(path, *d.count, why)
	}
	if d.to > 0 {
		b.put(r.paths.under(path, "to"), formatNumber(float64(d.to)), why)
	}
	if d.fromHive != "" {
		b.put(r.paths.under(path, "from_hive"), d.fromHive, why)
	}
	if d.toHive != "" {
		b.put(r.paths.under(path, "to_hive"), d.toHive, why)
	}
	if d.direction != "" {
		b.put(r.paths.under(path, "direction"), d.direction, why)
	}
	if d.size != nil {
		b.put(r.paths.under(path, "amount"), formatNumber(d.size.amount.lo), why)
		b.put(r.paths.under(path, "unit"), d.size.unit, why)
		if d.size.amount.approx {
			b.flag(path+".amount", "an estimate", "")
		}
	}
	if d.what != "" {
		b.put(r.paths.under(path, "what"), d.what, why)
	}
	switch list {
	case "plans":
		r.dueOn(path, c, d, why)
	case "actions":
		r.give(d, why)
	}
}

// barsInHand gives a deed that named no bars those that are spoken of.
func (r *reader) barsInHand(d *deed) {
	if len(d.bars) > 0 {
		return
	}
	inHand := r.inHand == thisLine || r.inHand == awaiting && d.count == nil
	switch d.do {
	case "straighten", "trim_comb", "free_comb":
		itThere := r.inHand == thisText && len(r.bars) == 1 && r.combAmiss(r.bars[0]) && (r.hadObject(d.items[0]) || len(r.told) > 0 && r.told[0].is(kThen)) // a line further on: "so I cut it free"
		if (inHand || itThere) && len(r.bars) == 1 && d.count == nil {
			d.bars = r.bars
		}
	case "cut_cells": // a count is of the cells
		if inHand && len(r.bars) == 1 && (r.sameSentence || r.cellsTold(r.bars[0])) {
			d.bars = r.bars
		}
	case "remove_bar", "move_bar":
		if inHand && d.count == nil {
			d.bars = r.bars
		}
	}
}

// combAmiss reports whether the comb of a bar was told to be stuck or crooked.
func (r *reader) combAmiss(bar int) bool {
	return r.tells(bar, "comb.attached") || r.tells(bar, "comb.cross") || r.tells(bar, "comb.straight")
}

// cellsTold reports whether queen cells were told of a bar.
func (r *reader) cellsTold(bar int) bool {
	head := r.barPath(bar, "queen_cells.")
	return slices.ContainsFunc(r.cur.entries, func(e entry) bool { return strings.HasPrefix(e.text, head) })
}

// nextTime: "mark the queen next time" is for no day.
func (r *reader) nextTime(c *clause) bool {
	for k := range c.items {
		if it := &c.items[k]; it.is(kPlan) && strings.HasPrefix(it.text, "next ") {
			return true
		}
	}
	return false
}

// dueOn writes the day of a plan: its own, its clause's, or that of the plans before it.
func (r *reader) dueOn(path string, c *clause, d *deed, why source) {
	due := d.due
	if due == nil && c.when != nil && !c.when.ago {
		due = c.when
	}
	if due == nil && c.mood == planned && r.planDay != nil && !r.nextTime(c) {
		due = r.planDay
	}
	if due == nil || due.week || due.today && r.nextTime(c) { // "straighten it next time, it's too hot today"
		return
	}
	r.cur.put(r.paths.under(path, "due"), due.future.String(), why)
	if due.weak {
		r.cur.flag(path+".due", "the day can be read in two ways", "")
	}
}

// consequences are states that a deed of today leaves behind.
func (r *reader) consequences(list string, d *deed, why source) {
	if list != "actions" {
		return
	}
	why.doubts = nil
	switch d.do {
	case "mark_queen":
		r.setAfter("queen.marked", "yes", why)
		r.sheLast = true
	case "clip_queen":
		r.setAfter("queen.clipped", "yes", why)
		r.sheLast = true
	case "requeen", "release_queen":
		r.sheLast = true
	}
}

func (r *reader) setAfter(path, value string, why source) {
	r.cur.drop(path)
	r.cur.put(path, value, why)
}
