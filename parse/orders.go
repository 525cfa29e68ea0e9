package parse

import "strings"

// beforeOrders are the kinds of words that can stand before the verb of an order.
var beforeOrders = setOf(kAnd, kThen, kAdv, kNum, kBut, kDate, kSubstance)

// imperative: an order to oneself, "check again in three weeks".
func (r *reader) imperative(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if k == 0 && c.items[0].is(kName) && !c.items[0].several() && c.items[0].colon {
			continue // "Hive 3: inspect on Friday"
		}
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
	for k := i; k < len(c.items); k++ {
		if c.items[k].colon || k > i && c.items[k].is(kBe) {
			return false // "Check eggs: none"
		}
	}
	if it.text == "visit" && c.next(i).any(kOf, kTo) && !hasAhead(c.items) {
		return false // "Visit of the linden hive": today's
	}
	rule := r.rule(it, kDo)
	return rule.Form == "todo" && !r.twofold(it) && !traitsOf(rule.Value).noun
}

// anotherLook reports whether a look is named by a noun, which is had only where a day says so: "another
// look in ten days".
func anotherLook(text string) bool {
	return strings.HasPrefix(text, "another ") || strings.HasPrefix(text, "a second ") || strings.HasPrefix(text, "the second ")
}

// headsNote reports whether the item is the noun of a heading: "Field visit 28
// January".
func (r *reader) headsNote(items []item, i int) bool {
	return i == 1 && items[0].is(kWord) && items[0].has(capital) && items[0].pause >= stop && items[1].pause == none &&
		items[1].isWord4("visit", "inspection", "check", "review")
}

// isNoun reports whether the verb is a noun here: that of a heading, or one with an
// article and an unknown word right before it.
func (f *fitting) isNoun() bool {
	n := len(f.pre)
	return f.headsNote(f.c.items, f.i) ||
		n > 1 && f.pre[n-1].is(kNext) && f.pre[n-2].isWord3("at", "by", "before") || // "at the next visit we must reduce the entrance"
		n > 1 && f.pre[n-1].is(kWord) && f.pre[n-2].is(kArt) && f.c.items[f.i].pause == none && f.pre[n-1].pause == none
}
