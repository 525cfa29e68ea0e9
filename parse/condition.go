package parse

// takeBackPlans takes back what a condition behind it makes no plan: "feed them if they
// are light".
func (r *reader) takeBackPlans(list []clause) {
	for i := len(list) - 1; i > 0; i-- {
		if list[i].mood != unasked || list[i-1].mood != planned || r.leadsOn(list, i) {
			continue // "going to treat on wednesday if i have to i'll do it in the dark"
		}
		if list[i].items[0].pause == none && r.conditional(&list[i]) && !r.looksWhether(&list[i-1]) {
			list[i-1].mood = unasked
		}
	}
}

// leadsOn reports whether the condition at list[i] is one of what follows it: what "I" or
// "we" will do then stands behind it.
func (r *reader) leadsOn(list []clause, i int) bool {
	for k := 3; k < len(list[i].items); k++ {
		if r.weWill(list[i].items, k) {
			return true
		}
	}
	if i+1 == len(list) {
		return false
	}
	first := &list[i+1].items[0]
	return first.pause <= comma && (r.weWill(list[i+1].items, 0) || first.text == "we'll")
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
