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
	items []item
	gist
	mood        mood
	cue         string // the words that set the mood
	doubt       string // a hedge: its words
	undone      bool   // deeds of this clause were not done
	when        *day   // a date named in the clause
	pastOn      colony.Date
	queenUnsure bool
	heading     bool // the mood was set by a heading
	asks        bool // the mood is that of a question
	alone       bool // the mood holds for this clause only
	placed      bool // a bar's putting-in was read
}

func newClause(items []item) clause { return clause{items: items, gist: gistOf(items)} }

// has reports whether an item of the clause is of the kind.
func (c *clause) has(k kind) bool { return c.kinds.has(k) }

// next is the item behind that at k, or one of no kind.
func (c *clause) next(k int) *item {
	if k+1 >= len(c.items) {
		return &noItem
	}
	return &c.items[k+1]
}

// before is the item before that at k, or one of no kind.
func (c *clause) before(k int) *item {
	if k == 0 {
		return &noItem
	}
	return &c.items[k-1]
}

// hasAny reports whether an item of the clause is of one of the kinds.
func (c *clause) hasAny(a, b kind, more ...kind) bool {
	return c.kinds.meet(two(a, b)) || c.kinds.hasOne(more)
}

// clauses cuts a sentence where a new statement begins, and appends the clauses
// to out. Punctuation may be missing: a bar, a subject with its verb, a deed or a
// cue begins one.
func (r *reader) clauses(items []item, out []clause) []clause {
	for from := 0; from < len(items); {
		end := r.clauseEnd(items, from)
		out = append(out, newClause(items[from:end]))
		from = end
	}
	return out
}

// clauseEnd is where the clause that begins at an item of a sentence ends.
func (r *reader) clauseEnd(items []item, from int) int {
	for i := from + 1; i < len(items); i++ {
		it := &items[i]
		mayBegin := it.pause > none || it.anyOf(beginners) || items[i-1].is(kBars) || r.askAll // most words cannot
		if mayBegin && r.begins(items, i) {
			return i
		}
	}
	return len(items)
}

// gotTo reports whether a clause begins with "gotta" and what is to be done.
func (r *reader) gotTo(c *clause) bool {
	if len(c.items) < 3 || c.items[0].text != "got" || !c.items[1].is(kTo) || c.items[1].start > c.items[0].end {
		return false
	}
	for rule := range r.senses(&c.items[2]) {
		if rule.Form == "todo" {
			return true
		}
	}
	return false
}

// judge gives each clause its mood. Questions, conditions and hearsay reach on
// until a bar, a hive, "but" or a full stop; the past until "now"; a plan as
// long as deeds follow.
func (r *reader) judge(list []clause) {
	r.dayHeading(list)
	whole, tag := r.askedParts(list)
	carried, cue := asserted, ""
	var pastOn colony.Date
	for i := range list {
		c := &list[i]
		if carried != asserted && r.endsMood(list, i, carried) {
			carried, cue = asserted, ""
		}
		r.ownMood(list, i)
		if whole || tag && i == len(list)-1 {
			c.mood, c.cue = unasked, "?"
		} else {
			r.moodOfDay(list, i, carried)
		}
		if (c.mood == asserted || carried == unasked && c.mood == planned) && carried != asserted && (!c.items[0].is(kName) || carried == planned) {
			c.mood, c.cue = carried, cue
			if carried == past {
				c.pastOn = pastOn
			}
		}
		if c.mood == asserted && r.heading != asserted && (!r.headedHere || c.hasAny(kDo, kSubstance)) {
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
	r.takeBackUntold(list)
	r.takeBackPlans(list)
}

// endsMood reports whether the mood of the clauses before ends at clause i: "if they have eggs,
// leave them. Bar four has …", "the queen, which was on bar five last week, is on bar three".
func (r *reader) endsMood(list []clause, i int, carried mood) bool {
	first := &list[i].items[0]
	switch carried {
	case past:
		if r.foundOnOpening(list, i) {
			return true
		}
		aside := i > 0 && first.pause == comma && first.anyOf(afterAside) && list[i-1].items[0].isWord3("which", "who", "whom")
		if aside || r.pastDeedTold(list, i) {
			return true
		}
	case unasked:
		if r.plansAnew(list, i) || r.tellsAnew(list, i) || r.behindLeadIn(list, i) || r.pastLooking(list, i) || first.pause >= comma && i > 0 && youAsked(list[i-1].items) {
			return true
		}
	case planned:
		if r.doneBehindDay(list, i) {
			return true
		}
	}
	return r.resets(&list[i], carried)
}

// ownMood gives clause i the mood that its words tell, or those of the clause behind it:
// "remind me to feed them", "when it gets up to twelve degrees I will have a look", "come back
// if there is chalkbrood".
func (r *reader) ownMood(list []clause, i int) {
	c := &list[i]
	first := &c.items[0]
	if c.kinds.meet(cueing) {
		r.cues(c)
	}
	if c.mood == asserted && i+1 < len(list) && r.remindsOf(&list[i+1]) {
		c.mood, c.cue = planned, r.quote(&list[i+1].items[0])
	}
	if first.is(kIf) && c.mood == asserted && (i == 0 || !list[i-1].has(kDate)) && r.leadsOn(list, i) {
		c.mood, c.cue = unasked, r.quote(first)
	}
	if c.mood == asserted && r.gotTo(c) {
		c.mood, c.cue = planned, r.text[first.start:c.items[1].end]
	}
	if first.is(kDo) && c.mood == asserted && r.orders(c, 0) {
		c.mood, c.cue = planned, r.text[first.start:first.end]
		if i+1 < len(list) && r.conditional(&list[i+1]) && !r.leadsOn(list, i+1) {
			c.mood = unasked
		}
	}
}

// moodOfDay makes the past of what clause i tells of another day: "eggs on bar four last week".
func (r *reader) moodOfDay(list []clause, i int, carried mood) {
	c := &list[i]
	switch {
	case c.mood == asserted && c.when != nil && (c.when.ago && !r.visitTold(c) || r.sawOn(c)) && !(carried == unasked && i > 0 && list[i-1].items[0].is(kIf)):
		c.mood = past
	case c.mood == past && strings.HasSuffix(c.cue, " day") && !strings.HasPrefix(c.cue, "the other") && dayNamed(list[:i]) != nil:
		c.pastOn = dayNamed(list[:i]).past
	case c.mood == asserted && i > 0 && r.tellsOfThen(c, &list[i-1]):
		c.mood, c.pastOn = past, list[i-1].when.past
	}
}

// youAsked reports whether a clause only says what the reader of a letter asked after.
func youAsked(items []item) bool {
	return items[0].is(kSay) && strings.HasPrefix(items[0].text, "you ask") && len(items) <= 5
}

// leadsIn are words that begin a clause before the main one, whoever is spoken of in it.
var leadsIn = []string{"having", "whatever", "despite", "in spite", "contrary", "however", "no", "as", "after", "though", "although", "when"}

// behindLeadIn reports whether clause i is the main one, behind another that says what
// somebody holds and leads in to it: "whatever my wife told you, I did not feed them",
// "having done what the inspector told me to do, I washed half a cup of bees".
func (r *reader) behindLeadIn(list []clause, i int) bool {
	first := &list[i].items[0]
	if first.pause != comma || !first.isWord2("i", "we") || list[i].has(kIf) || !r.isWord(&list[0].items[0], leadsIn...) {
		return false
	}
	others := false
	for k := range list[:i] {
		if k > 0 && list[k].items[0].pause >= comma && list[k].items[0].is(kPron) {
			return false
		}
		others = others || list[k].hasAny(kSay, kTheirs)
		if list[k].has(kIf) && k > 0 {
			return false
		}
	}
	return others
}

// plansAnew reports whether a clause behind hearsay, a question, or a condition and what would
// follow from it, tells what its speaker means to do: "my neighbour's swarmed I need to feed
// them on Sunday", "if it holds I will feed them need to clean the floor on Sunday".
func (r *reader) plansAnew(list []clause, i int) bool {
	c := &list[i]
	first, own := &c.items[0], r.weWill(c.items, 0)
	if !own && first.is(kDate) && first.day.ahead {
		own = r.weWill(c.items, 1)
	}
	if !own && first.is(kOn) && c.next(0).is(kDate) && !c.next(0).day.ago {
		own = r.weWill(c.items, 2)
	}
	lead := first
	if first.is(kThen) && len(c.items) > 1 {
		lead = &c.items[1] // "Dad says feed them so remind me to do it on Friday"
	}
	own = own || lead.is(kPlan) && strings.HasPrefix(lead.text, "remind ")
	mine := own && r.wordIn(c.items, "this lot", "this", "these", "mine", "ours")
	if mine && first.pause == none && !c.has(kIf) && r.hasDeed(c) {
		return true // "my neighbour's are calm I need to requeen this lot"
	}
	if own && first.pause == colon && !c.has(kIf) && c.has(kDate) && r.hasDeed(c) && r.saidOut(list[:i]) {
		return true // "my uncle would kill such a colony; on Friday I will unite it"
	}
	if first.pause > none || !own && !(first.is(kPlan) && first.isWord6("need to", "must", "shall", "will", "i'll", "we'll")) || c.has(kIf) || !c.has(kDate) || !r.hasDeed(c) {
		return false
	}
	for k := i - 1; k >= 0; k-- {
		before := &list[k]
		if before.has(kIf) {
			return i-k > 1 && !r.weWill(before.items, len(before.items)-1)
		}
		if before.items[0].pause >= stop {
			break
		}
	}
	return len(list[i-1].items) > 2
}

// saidOut reports whether what some clauses tell of what others say or would do is told before they
// end, and nothing stands under a condition: not in "he told me: I will feed them on Friday".
func (r *reader) saidOut(list []clause) bool {
	for k := range list {
		if list[k].has(kIf) {
			return false
		}
	}
	last := list[len(list)-1].items
	return !last[len(last)-1].is(kSay)
}

// doneBehindDay reports whether what was done begins a clause behind a plan that ends with
// its day: "need to narrow the entrance on Saturday treated with oxalic acid".
func (r *reader) doneBehindDay(list []clause, i int) bool {
	first, before := &list[i].items[0], list[i-1].items
	last := &before[len(before)-1]
	return first.is(kDo) && first.pause == none && list[i].next(0).kinds != kinds{} && r.rule(first, kDo).Form == "done" && !r.twofold(first) && last.is(kDate) && !last.day.ago && !last.day.today
}

// remindsOf reports whether a clause only tells that the one before is to be remembered:
// "another litre for them on Thursday, remind me".
func (r *reader) remindsOf(c *clause) bool {
	return len(c.items) == 1 && c.items[0].is(kPlan) && r.rule(&c.items[0], kPlan).Form == "after"
}

// dayNamed is the day that the last of some clauses to name one names; nil for none.
func dayNamed(list []clause) *day {
	for i := len(list) - 1; i >= 0; i-- {
		if list[i].when != nil {
			return list[i].when
		}
	}
	return nil
}

// askedParts reports whether a whole sentence is asked, or only a tag behind it: "she was
// on bar four, wasn't she?"
func (r *reader) askedParts(list []clause) (whole, tag bool) {
	switch last := list[len(list)-1].items; {
	case !last[len(last)-1].asked:
		return false, false
	case len(list) > 1 && len(last) <= 6 && !list[0].items[0].is(kAsk) && !last[0].is(kIf) && !r.isWord(&list[0].items[0], asking...):
		return false, true
	case r.selfAnswered(list) && len(r.ahead) > 0 && r.untold(r.ahead):
		return true, false // "b6 larvae? could not tell"
	case r.selfAnswered(list):
		list[0].doubt = "?"
		return false, false
	}
	return true, false
}

// asking are verbs that a question begins with, whoever is its subject: "would a bar of
// eggs save them, if I shook it?"
var asking = []string{"would", "could", "should", "shall", "will", "can", "do", "does", "did", "may", "might", "must"}

// visitTold: "I visited my two hives yesterday" in the opening words tells when
// the inspection was.
func (r *reader) visitTold(c *clause) bool {
	if !r.opening || r.sentenceNo > 2 || c.when.past.Compare(r.today.AddDays(-2)) < 0 {
		return false
	}
	for k := range c.items {
		if c.items[k].lists.has(visiting) {
			return r.onlyVisits(c)
		}
	}
	return false
}

// dayHeading: "Sat: put two bars in", "to do Sat: +2 bars" are plans for that day.
func (r *reader) dayHeading(list []clause) {
	if len(list) < 2 || len(list[0].items) > 3 || len(list[0].items) > 1 && !list[0].items[0].is(kPlan) {
		return
	}
	head := &list[0].items[len(list[0].items)-1]
	if !head.is(kDate) || !head.colon || head.day.today {
		return
	}
	if head.day.ahead && r.barsToGoIn(&list[1]) {
		list[1].mood, list[1].when = planned, &head.day
		head.used = true
		return // "Next week: two more bars in after 9"
	}
	for k := range list[1].items {
		if it := &list[1].items[k]; it.is(kDo) && !it.is(kDot) && (r.rule(it, kDo).Form == "todo" || r.twofold(it) || list[0].items[0].is(kPlan)) {
			list[1].mood, list[1].when = planned, &head.day
			head.used = true
			return
		}
	}
}

// lastVisit: "last inspected on the 16th, when we saw her" goes on about that day.
func (r *reader) lastVisit(c *clause) bool {
	for k := range c.items {
		if it := &c.items[k]; it.is(kDo) && r.rule(it, kDo).Value == "inspect" && tellsLast(it.text) {
			return c.when != nil
		}
	}
	return false
}

// daysGoneBy reports whether a clause names an earlier day: "I had not been in since the
// ninth, when I put two bars in".
func daysGoneBy(c *clause) bool {
	return c.when != nil && !c.when.ahead && !c.when.today && !c.when.weekday
}

// sawOn: "Thomas saw eggs on Friday", "queen seen on 19/4", "on the 3rd the board had nine
// mites", "Friday I saw her" are of an earlier day.
func (r *reader) sawOn(c *clause) bool {
	at := 0
	if c.items[0].is(kOn) && c.next(0).is(kDate) {
		at = 1
	}
	if it := &c.items[at]; it.is(kDate) && c.next(at).isWord2("i", "we") && c.next(at+1).isWord4("saw", "found", "spotted", "met") && c.next(at).pause <= comma &&
		(at == 0 && it.day.weekday || !r.opening && daysGoneBy(c) && it.day.past != r.today) {
		return true
	}
	if it := &c.items[at]; it.is(kDate) && it.day.weekday && it.day.future.AddDays(-7) != r.today && r.herOf(c, at+1) && (!r.opening || hasToday(r.told)) {
		return true
	}
	if on := c.next(0); c.items[0].is(kOn) && on.is(kDate) && c.hasAny(kMite, kMethod) && daysGoneBy(c) && on.day.past != r.today && c.next(1).pause == none {
		return true
	}
	seen := false
	for k := range c.items {
		it := &c.items[k]
		seen = seen || it.is(kSeen) && (r.isWord(it, r.wordsOf[havingSeen]...) || strings.HasPrefix(it.text, "did "))
		here := it.is(kSeen) && strings.HasPrefix(it.text, "is ") && !hasKind(c.items[:k], kQueen)
		if here {
			return false // "on Sunday my son is here"
		}
		if seen && k > 0 && it.is(kDate) && c.items[k-1].is(kOn) && !it.day.today && !it.day.ahead && !it.day.week && it.day.past != r.today {
			return true
		}
		if (seen || k > 0 && c.items[k-1].is(kOn) && k <= 3 && c.has(kSeen)) && it.is(kDate) && it.day.weekday && it.day.future.AddDays(-7) != r.today {
			return true
		}
	}
	return false
}

// herOf reports whether it is told from item k on where the queen was, or how: "the queen was on
// bar six".
func (r *reader) herOf(c *clause, k int) bool {
	if k < len(c.items) && c.items[k].is(kArt) {
		k++
	}
	return k+1 < len(c.items) && c.items[k].any(kQueen, kShe) && c.items[k].pause <= comma && c.items[k+1].text == "was"
}

// hasToday reports whether some items tell of today, beside another day.
func hasToday(items []item) bool {
	for k := range items {
		if items[k].is(kDate) && items[k].day.today {
			return true
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
	for _, n := range it.says.rules {
		if rule := &r.rules[n]; rule.Kind == kDo {
			done = done || rule.Form == "done"
			todo = todo || rule.Form == "todo"
		}
	}
	return done && todo
}
