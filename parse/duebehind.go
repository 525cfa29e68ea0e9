package parse

import (
	"slices"
	"strings"
)

// dueBehind reads the day of what is to be done where it is told behind it, with a verb that only
// points back: "needs fondant, will give it on Friday".
func (r *reader) dueBehind(c *clause) {
	if c.when == nil || c.when.ago || c.when.today || !strings.HasPrefix(r.lastDeed, "plans.") || r.spokeOf.deed < r.sentenceNo-1 || !againOnly(c) {
		return
	}
	if _, told := r.cur.get(r.lastDeed + ".due"); told {
		return
	}
	r.dueOn(r.lastDeed, c, &deed{due: c.when}, r.why("due", "", &c.items[0]))
}

// againOnly reports whether a verb and "it" or "them" are all of a clause but for when and how.
func againOnly(c *clause) bool {
	verb, thing := false, false
	for i := range c.items {
		it := &c.items[i]
		switch {
		case it.is(kDo):
			verb, thing = true, thing || strings.HasSuffix(it.text, " it") || strings.Contains(it.text, " them")
		case it.isWord4("it", "them", "that", "those"):
			thing = true
		case it.anyOf(ofAnything):
			return false
		}
	}
	return verb && thing
}

// ofAnything are the kinds of words that a deed of its own is done to, or with.
var ofAnything = setOf(kBars, kBar, kSubstance, kMeasure, kQueen, kName, kHive, kFixture, kContent, kCell, kNo, kUndone)

// lookAfter puts how long a hive is to be let be behind the look that is to be had then, whose day
// it tells: "leave that one alone for three weeks, then have a look".
func (r *reader) lookAfter(items []item) []item {
	for k := 1; k+2 < len(items); k++ {
		dur, look := &items[k], &items[k+2]
		if !dur.is(kDur) || dur.dur.days == 0 || !items[k+1].is(kThen) || items[k+1].pause > comma || !strings.HasSuffix(items[k+1].text, "then") || !look.is(kDo) || look.pause > none {
			continue
		}
		if rule := r.rule(look, kDo); rule.Value != "inspect" || rule.Form != "todo" || hasKind(items[k+3:sentenceEnd(items, k+2)], kDate) || !r.letBe(items[sentenceStart(items, k):k]) {
			continue
		}
		moved := *dur
		moved.pause, moved.kinds, moved.says = none, setOf(kDate), senseless
		details := *dur.details
		details.day = both(dur.dur.from(r.today, 1))
		details.day.ahead, details.day.length = true, dur.dur.days
		moved.details = r.lex.detail(&details)
		items = slices.Insert(items, k+3, moved)
		from := k
		if items[k-1].text == "for" {
			from--
		}
		items = slices.Delete(items, from, k+1)
	}
	return items
}

// letBe reports whether a statement begins with a word for leaving the hive alone, of today on.
func (r *reader) letBe(items []item) bool {
	for k := range items {
		for word := range strings.FieldsSeq(items[k].text) {
			if slices.Contains(r.wordsOf[waiting], word) {
				return true
			}
		}
		if k > 4 || items[k].anyOf(foundThings) {
			return false
		}
	}
	return false
}
