package parse

// When a bar was put in.

// placements reads "put in five days ago" of the bars in hand; it comes before
// the deeds, which would take it for one of today.
func (r *reader) placements(c *clause) {
	if !c.has(kDate) {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kComb) || it.used {
			continue
		}
		rule := r.placedRule(it)
		if rule == nil {
			continue
		}
		when, w := r.dateNear(c, i)
		if when == nil || !(w.day.ago || w.day.past.Compare(r.today) <= 0 && !w.day.ahead) || w.day.week {
			continue
		}
		if hasKind(c.items[:i], kSubstance) && !hasKind(c.items[:i], kBars) {
			continue // "the thymol went in on the second"
		}
		bars := r.barsOf(c, i)
		if len(bars) == 0 {
			continue
		}
		why := r.why(rule.ID, "", it, w)
		r.comb(bars, "../placed", w.day.past.String(), why)
		r.inHand = thisLine
		c.placed = true
		if c.when != nil && *c.when == w.day {
			c.when = nil
			if c.mood == past {
				c.mood = asserted
			}
		}
	}
}

func (r *reader) placedRule(it *item) *rule {
	for _, n := range it.says.rules {
		if rule := &r.rules[n]; rule.Kind == kComb && rule.Value == "../placed" {
			return rule
		}
	}
	return nil
}

// dateNear is the date within a few words of item i.
func (r *reader) dateNear(c *clause, i int) (*day, *item) {
	for k := i + 1; k < len(c.items) && k <= i+4; k++ {
		if it := &c.items[k]; it.is(kDate) {
			return &it.day, it
		}
	}
	return nil, nil
}

// barsOf are the numbered bars that the words at item i are about: named
// before them in the clause, or in hand.
func (r *reader) barsOf(c *clause, i int) []int {
	for k := i - 1; k >= 0; k-- {
		if it := &c.items[k]; it.is(kBars) {
			return it.bars
		}
		if c.items[k].is(kDo) && !c.items[k].is(kComb) {
			return nil
		}
	}
	for k := i + 1; k < len(c.items) && k <= i+2; k++ {
		if c.items[k].is(kBars) {
			return c.items[k].bars
		}
		if c.items[k].is(kBar) || c.items[k].is(kNum) {
			return nil
		}
	}
	if r.inHand == thisLine || r.inHand == awaiting {
		return r.bars
	}
	return nil
}
