package parse

import "slices"

// beforeOrders are the kinds of words that can stand before the verb of an order.
var beforeOrders = setOf(kAnd, kThen, kAdv, kNum, kBut, kDate, kSubstance)

// imperative: an order to oneself, "check again in three weeks".
func (r *reader) imperative(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if onDay := c.items[k].any(kOn, kArt) && c.next(k).any3(kDate, kOn, kArt); !onDay && !c.items[k].anyOf(beforeOrders) {
			return false // but "on 3 June, add two bars"
		}
	}
	if c.when != nil && !c.when.ago && !c.when.today {
		return true
	}
	for k := i + 1; k < len(c.items); k++ {
		if c.items[k].text == "again" {
			return true
		}
	}
	return false
}

// orders reports whether the verb at item i begins a sentence that gives an order,
// no day said: "Add two bars." Words that are as often nouns give none: "Harvest,
// bar 12".
func (r *reader) orders(c *clause, i int) bool {
	it := &c.items[i]
	if it.pause < stop || it.any6(kMethod, kMite, kState, kFixture, kSign, kSky) || it.to == it.from+1 && i+1 == len(c.items) {
		return false
	}
	if hasKind(c.items[i+1:], kBe) || slices.ContainsFunc(c.items[i:], func(it item) bool { return it.colon }) {
		return false // "Check eggs: none"
	}
	if it.text == "visit" && c.next(i).any(kOf, kTo) && !hasAhead(c.items) {
		return false // "Visit of the linden hive": today's
	}
	rule := r.rule(it, kDo)
	return rule.Form == "todo" && !r.twofold(it) && !traitsOf(rule.Value).noun
}
