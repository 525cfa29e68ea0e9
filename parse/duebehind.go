package parse

import "strings"

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
