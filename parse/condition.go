package parse

// takeBackPlans takes back what a condition behind it makes no plan: "feed them if they
// are light".
func (r *reader) takeBackPlans(list []clause) {
	for i := len(list) - 1; i > 0; i-- {
		if list[i].mood != unasked || list[i-1].mood != planned && !r.orderedFor(&list[i-1]) || r.leadsOn(list, i) {
			continue // "going to treat on wednesday if i have to i'll do it in the dark"
		}
		if list[i].items[0].pause == none && r.conditional(&list[i]) && !r.looksWhether(&list[i-1]) {
			list[i-1].mood = unasked
		}
	}
}

// orderedFor reports whether a clause orders something to be done on a day to come: "treat them
// tomorrow".
func (r *reader) orderedFor(c *clause) bool {
	if first := &c.items[0]; c.mood != asserted || !first.is(kDo) || first.any6(kMethod, kMite, kState, kFixture, kSign, kSky) {
		return false
	}
	return r.rule(&c.items[0], kDo).Form == "todo" && hasAhead(c.items)
}

// leadsOn reports whether the condition at list[i] is one of what follows it: what "I", "we"
// or "they" will do then stands behind it, or it says only that something is left undone: "if I
// don't they starve".
func (r *reader) leadsOn(list []clause, i int) bool {
	c := &list[i]
	for k := 3; k < len(c.items); k++ {
		if r.weWill(c.items, k) {
			return true
		}
	}
	for k := 2; k < len(c.items) && k <= 3; k++ {
		if c.items[k].is(kUndone) && (k+1 == len(c.items) && i+1 < len(list) || c.next(k).any4(kArt, kBees, kPron, kShe)) {
			return true
		}
	}
	for k := i + 1; k < len(list) && k <= i+2; k++ {
		first := &list[k].items[0]
		if first.pause > comma || k > i+1 && first.pause > none {
			break
		}
		willBe := first.is(kWill) && list[k-1].items[len(list[k-1].items)-1].is(kThere) // "there will be none left"
		if willBe || r.weWill(list[k].items, 0) || first.text == "we'll" {
			return true
		}
	}
	return false
}

// looksWhether: "look again if there is a young queen" is a look, whatever
// comes of it.
func (r *reader) looksWhether(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDo) {
			return r.rule(&c.items[k], kDo).Value == "inspect"
		}
	}
	return false
}

// conditional reports whether a clause sets a condition.
func (r *reader) conditional(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kIf) && k <= 1 {
			text := c.items[k].text
			return text == "if" || text == "unless" || text == "provided" || text == "only if" || text == "provided that"
		}
	}
	return false
}
