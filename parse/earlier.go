package parse

import (
	"strings"

	"barwise/colony"
)

// earlierDeed writes a deed of an earlier day as an event, where the record keeps one.
func (r *reader) earlierDeed(c *clause, d *deed) {
	event := d.traits().event
	if event == "" {
		return
	}
	if d.do == "inspect" && !r.lastLooked(c, d.at) {
		return
	}
	path := r.earlier(c, event, d.rule, d.due, d.items...)
	r.lastDeed = "earlier." + d.do
	if d.do == "requeen" { // "requeened ten days ago. She's marked green"
		r.sheLast, r.spokeOf.queen = true, r.sentenceNo
	}
	why := source{spans: r.spanOf(d.items...), rule: d.rule}
	if d.count != nil && d.do == "add_bar" {
		r.putCount(path, *d.count, why)
	}
	if d.size != nil {
		r.cur.put(path+".amount", formatNumber(d.size.amount.lo), why)
		r.cur.put(path+".unit", d.size.unit, why)
	}
	if d.what != "" {
		r.cur.put(path+".what", d.what, why)
	}
}

// lastLooked: an earlier inspection counts only when that is the point.
func (r *reader) lastLooked(c *clause, at int) bool {
	for k := 0; k <= at; k++ {
		if tellsLast(c.items[k].text) {
			return true
		}
	}
	return false
}

// tellsLast reports whether words are of the last time: "last inspected", "our last visit
// was".
func tellsLast(text string) bool {
	first, rest, _ := strings.Cut(text, " ")
	return strings.HasPrefix(first, "last") || strings.HasPrefix(rest, "last ")
}

// earlier writes an event of an earlier day and returns its path.
func (r *reader) earlier(c *clause, event, rule string, on *day, items ...*item) string {
	return r.toldOfThen(c, event, "yes", rule, on, items...)
}

// toldOfThen writes that an event of an earlier day took place, or that it did not.
func (r *reader) toldOfThen(c *clause, event, value, rule string, on *day, items ...*item) string {
	first := r.paths.under("earlier", event)
	path := first
	if _, ok := r.cur.get(path); ok && on != nil {
		if old, dated := r.cur.get(r.paths.under(path, "on")); dated && old != on.past.String() {
			path = r.cur.deed(first)
		}
	}
	if r.cur.deeds[first] == 0 {
		r.cur.deeds[first] = 1
	}
	why := r.why(rule, c.cue, items...)
	if c.doubt != "" {
		why.doubts = append(why.doubts, "hedged: "+c.doubt)
	}
	r.cur.put(path, value, why)
	var date colony.Date
	switch {
	case on != nil && !on.week:
		date = on.past
	case c.when != nil && !c.when.week && !c.when.ahead:
		date = c.when.past
	case !c.pastOn.IsZero():
		date = c.pastOn
	}
	if (value == "yes" || on != nil && (on.weekday || on.ago)) && !date.IsZero() && date.Compare(r.today) <= 0 {
		r.cur.put(r.paths.under(path, "on"), date.String(), source{spans: why.spans, rule: rule})
	}
	return path
}

// earlierFindings reads sightings of an earlier day.
func (r *reader) earlierFindings(c *clause) {
	noun, named := r.queenNoun(c)
	if named {
		r.sheLast, r.spokeOf.queen = true, r.sentenceNo
	}
	for i := range c.items {
		it := &c.items[i]
		if it.used {
			continue
		}
		if _, ok := r.cur.get("earlier.queen_seen"); ok && it.is(kShe) && noun < 0 && !c.has(kSeen) && !c.has(kContent) {
			r.earlierBar(c, "earlier.queen_seen") // "last time I saw her she was on bar nine"
			continue
		}
		switch {
		case i == noun && !c.hasAny(kSeen, kUnseen, kNo, kNot) && r.queenPlaced(c, noun):
			path := r.earlier(c, "queen_seen", "queen", c.when, it) // "last time the queen was on bar four"
			r.earlierBar(c, path)
		case it.is(kShe) && noun < 0 && r.afterDay(c, i) && !c.hasAny(kSeen, kUnseen, kNo, kNot) && r.shePlaced(c):
			r.sheLast, r.spokeOf.queen = true, r.sentenceNo
			path := r.earlier(c, "queen_seen", "queen", c.when, it) // "last time she was on bar four"
			r.earlierBar(c, path)
		case it.is(kUnseen) && (noun >= 0 || r.herself(c)):
			r.toldOfThen(c, "queen_seen", "no", "queen", c.when, append(r.pick(c, noun), it)...) // "last time I did not see her"
		case it.is(kSeen) && (noun >= 0 || r.herself(c) || it.is(kPast) && r.sheLast && !c.has(kContent)): // "Queen: not seen. Last seen 5 April"
			on, _ := r.dateNear(c, i)
			path := r.earlier(c, "queen_seen", "queen", on, append(r.pick(c, noun), it)...)
			r.earlierBar(c, path)
		case r.value(it, kContent) == "eggs" && (c.has(kSeen) || c.has(kHave) || c.has(kBe)):
			path := r.earlier(c, "eggs_seen", "eggs", nil, it)
			r.earlierBar(c, path)
		case r.swarmedAt(c, i):
			r.earlier(c, "swarmed", "swarmed", nil, it)
		}
	}
}

// afterDay reports whether an earlier day stands before item i, in its clause or right before that:
// "last Sunday | she was on bar four".
func (r *reader) afterDay(c *clause, i int) bool {
	return hasKind(c.items[:i], kPast) || hasKind(c.items[:i], kDate) || i == 0 && r.before(c, 0).is(kDate)
}

// earlierBar writes where she, or what was told, was then.
func (r *reader) earlierBar(c *clause, path string) {
	for i := range c.items {
		if it := &c.items[i]; it.is(kBars) && len(it.bars) == 1 && !it.taken {
			r.cur.put(path+".bar", joinBars(it.bars), source{spans: r.spanOf(it), rule: "earlier"})
			it.used = true
			return
		}
	}
}
