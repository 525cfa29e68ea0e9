package parse

import "strings"

// moreBars reads a second bar told without its verb: "put a bar in after six and
// another after eight".
func (r *reader) moreBars(c *clause) {
	if !strings.HasPrefix(r.lastDeed, "actions.add_bar") && !strings.HasPrefix(r.lastDeed, "plans.add_bar") || r.deedSentence != r.sentenceNo {
		return
	}
	list, _, _ := strings.Cut(r.lastDeed, ".")
	for i := range c.items {
		it := &c.items[i]
		counted := it.is(kNum) && it.n.lo == 1 && i+1 < len(c.items) && (c.items[i+1].is(kBar) || i+2 < len(c.items) && c.items[i+2].is(kBar))
		if i+1 < len(c.items) && r.isWord(it, "another") && c.items[i+1].is(kNum) && c.items[i+1].n.lo > 1 {
			continue // "another two bars", a deed of its own
		}
		if !r.isWord(it, "another") && !counted || it.used {
			continue
		}
		if next := i + 1; !counted && next < len(c.items) && c.items[next].pause == none && c.items[next].is(kWord) {
			continue // "another story"
		}
		d := r.newDeed(&deed{do: "add_bar", at: i, items: r.these(it), rule: "add-done", count: &quantity{lo: 1}})
		it.used = true
		for k := i + 1; k < len(c.items) && k <= i+5; k++ {
			if ref := &c.items[k]; ref.is(kBars) && c.items[k-1].is(kAfter) {
				d.to = ref.bars[0]
				ref.used, ref.taken = true, true
				d.items = append(d.items, ref)
			}
		}
		r.write(list, c, d)
	}
}

// barsToo reads the bars that were given along with food: "added two bars and a litre of
// syrup", "gave them a pint of syrup and two bars".
func (r *reader) barsToo(c *clause, d *deed) {
	if deedTraits[d.do].bars || !r.adds(&c.items[d.at]) {
		return
	}
	for i := d.at + 1; i+1 < len(c.items); i++ {
		bar := i + 1
		for bar < len(c.items) && (c.items[bar].is(kComb) || r.isWord(&c.items[bar], "more", "new", "empty", "fresh")) && !c.items[bar].is(kBar) {
			bar++
		}
		if it := &c.items[i]; !it.is(kNum) || it.used || !it.n.whole() || bar == len(c.items) || !c.items[bar].is(kBar) || c.items[bar].is(kBars) || c.items[bar].used {
			continue
		}
		if !c.items[i-1].is(kAnd) && !(bar+1 < len(c.items) && c.items[bar+1].is(kAnd)) {
			continue
		}
		more := r.newDeed(&deed{do: "add_bar", at: d.at, items: r.these(&c.items[d.at]), rule: d.rule, count: &c.items[i].n, due: d.due})
		for k := i; k <= bar; k++ {
			more.use(&c.items[k])
		}
		r.settleDeed(c, more)
		return
	}
}

// adds reports whether a verb is one of putting in bars too.
func (r *reader) adds(verb *item) bool {
	for rule := range r.senses(verb) {
		if rule.Value == "add_bar" {
			return true
		}
	}
	return false
}

// followerWent reads "follower forward two bars, now behind bar 12", which does
// without a verb.
func (r *reader) followerWent(c *clause) {
	if c.has(kDo) {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kFixture) || r.value(it, kFixture) != "follower" || i+2 >= len(c.items) || !r.isWord(&c.items[i+1], "back", "forward", "forwards") || !barNumber(&c.items[i+2]) {
			continue
		}
		d := r.newDeed(&deed{do: "move_follower", at: i, items: r.these(it), rule: "move-done"})
		r.argue(c, d, i, len(c.items))
		it.used = true
		list := "actions"
		if c.mood == planned {
			list = "plans"
		}
		r.write(list, c, d)
		return
	}
}

// barsIn reads bars added without a verb: "four new bars in after bar
// fourteen", "next time: one bar in between four and five".
func (r *reader) barsIn(c *clause) {
	if !c.has(kBar) || !c.hasAny(kAfter, kTween) || c.hasAny(kDo, kContent, kCell) || c.mood != asserted && c.mood != planned {
		return
	}
	for i := range c.items {
		count := &c.items[i]
		if !barNumber(count) && !(count.is(kNum) && count.n.article && count.n.whole()) || count.used {
			continue
		}
		k := i + 1
		for k < len(c.items) && c.items[k].any(kComb, kAdv) && !r.isWord(&c.items[k], "in") {
			k++
		}
		at := r.inPlace(c.items, k)
		if at < 0 {
			continue
		}
		d := r.newDeed(&deed{do: "add_bar", at: i, rule: "add-done", count: &count.n, to: c.items[at].bars[0]})
		for j := i; j <= at; j++ {
			c.items[j].used = true
			d.items = append(d.items, &c.items[j])
		}
		c.items[at].taken = true
		list := "actions"
		if c.mood == planned {
			list = "plans"
			d.due = c.when
		}
		r.write(list, c, d)
		return
	}
}

// inPlace is where "bars in after bar fourteen", "bar in between four and five"
// name their place, from the word for a bar on; -1 where they do not.
func (r *reader) inPlace(items []item, bar int) int {
	if bar+2 >= len(items) || !items[bar].is(kBar) {
		return -1
	}
	k := bar + 1
	if r.isWord(&items[k], "in") {
		k++
	} else if !strings.HasPrefix(items[k].text, "in ") {
		return -1
	}
	if k+1 < len(items) && items[k].any(kAfter, kTween) && items[k+1].is(kBars) {
		return k + 1
	}
	return -1
}

// bareFood reads "so she got half a litre of syrup", "care given: 1 kg
// fondant": an amount of food in a clause without another verb was fed.
func (r *reader) bareFood(c *clause) {
	if c.mood == unasked || c.undone || c.has(kDo) && !r.givenWord(c) || c.has(kBars) || c.has(kNo) {
		return
	}
	for i := range c.items {
		d := r.helping(c, i, "feed", kOf, kArt, kComb, kAdv, kNum, kTo)
		if d == nil {
			d = r.measured(c, i)
		}
		if d == nil {
			d = r.gotOne(c, i)
		}
		switch {
		case d == nil:
			continue
		case r.fedThen(c):
			d.due = c.when
			r.earlierDeed(c, d)
		case c.mood == planned:
			d.due = c.when
			r.write("plans", c, d)
		default:
			r.write("actions", c, d)
		}
	}
}

// foodAhead: "they shall have a litre of syrup", where the word at item k tells what is to
// come.
func (r *reader) foodAhead(c *clause, k int) bool {
	_, verb := strings.CutSuffix(c.items[k].text, " to have") // "they are to have"
	if !verb && !r.isWord(&c.items[k], "shall", "will", "'ll", "next time", "next visit") {
		return false
	}
	for k++; k+1 < len(c.items) && c.items[k].pause == none; k++ {
		it := &c.items[k]
		if it.is(kMeasure) {
			food := c.next(k)
			if food.is(kOf) {
				food = c.next(k + 1)
			}
			return verb && food.is(kSubstance) && r.rule(food, kSubstance).Value == "feed"
		}
		verb = verb || it.is(kHave) || r.isWord(it, "get", "receive", "have")
		if !it.any5(kHave, kAdv, kArt, kPron, kBees) && !r.isWord(it, "get", "receive") {
			return false
		}
	}
	return false
}

// fedThen reports whether food in a clause without a verb of feeding was given on an
// earlier day: "they had two litres on Tuesday".
func (r *reader) fedThen(c *clause) bool {
	return c.mood == past || c.when != nil && c.when.weekday && !r.opening && c.mood == asserted
}

// measured is the deed that a food or medicine at item i and an amount right
// behind it tell of: "oxalic acid, 30 ml".
func (r *reader) measured(c *clause, i int) *deed {
	if i+1 >= len(c.items) || !c.items[i].is(kSubstance) || c.items[i].used || !c.items[i+1].is(kMeasure) || c.items[i+1].used {
		return nil
	}
	rule, size := r.rule(&c.items[i], kSubstance), c.items[i+1].size
	if _, length := size.mm(); length {
		return nil
	}
	return &deed{do: rule.Value, at: i, items: []*item{&c.items[i], &c.items[i+1]}, rule: rule.ID, size: &size, what: r.substance(&c.items[i])}
}

// gotOne is the deed that "they got a pollen patty" tells of; nil for none.
func (r *reader) gotOne(c *clause, i int) *deed {
	if i == 0 || i+2 >= len(c.items) || !r.isWord(&c.items[i], "got", "did get") || !c.items[i-1].any3(kBees, kShe, kName) && !r.isWord(&c.items[i-1], "it") || !c.items[i+1].is(kArt) {
		return nil
	}
	it := &c.items[i+2]
	if !it.is(kSubstance) || it.used || it.text == "feed" || r.rule(it, kSubstance).Value != "feed" {
		return nil
	}
	return r.newDeed(&deed{do: "feed", at: i, items: r.these(it), rule: r.rule(it, kSubstance).ID, what: r.substance(it)})
}

// helping is the deed that an amount at item i and a food or medicine behind it
// tell of, over words of the given kinds; nil where they do not.
func (r *reader) helping(c *clause, i int, do string, over ...kind) *deed {
	it := &c.items[i]
	if !it.is(kMeasure) || it.used {
		return nil
	}
	k := i + 1
	for k < len(c.items) && c.items[k].anyOf(setOf(over...)) {
		k++
	}
	if k >= len(c.items) || !c.items[k].is(kSubstance) || c.items[k].used || r.rule(&c.items[k], kSubstance).Value != do {
		return nil
	}
	size := it.size
	return r.newDeed(&deed{do: do, at: i, items: r.these(it, &c.items[k]), rule: r.rule(&c.items[k], kSubstance).ID, size: &size, what: r.substance(&c.items[k])})
}

func (r *reader) givenWord(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDo) && !r.isWord(&c.items[k], "given", "had", "got", "fed", "trickled", "dribbled", "applied") {
			return false
		}
	}
	return true
}

// moreFood reads a second helping told without its verb: "two litres of syrup
// and then half a kilo of fondant".
func (r *reader) moreFood(c *clause) {
	list, do, _ := strings.Cut(r.lastDeed, ".")
	do, _, _ = strings.Cut(do, "#")
	if !deedTraits[do].substance {
		return
	}
	for i := range c.items {
		d := r.helping(c, i, do, kOf)
		if d == nil && list != "earlier" {
			d = r.oneMore(c, i, do)
		}
		if d == nil {
			continue
		}
		if list == "earlier" && !r.dated(c, d) {
			continue
		}
		for _, it := range d.items {
			it.used = true
		}
		switch {
		case list == "actions" && r.fedThen(c):
			d.due = c.when
			r.earlierDeed(c, d)
		case list != "earlier":
			r.write(list, c, d)
		case d.due.today:
			r.write("actions", c, d)
		default:
			r.earlierDeed(c, d)
		}
	}
}

// oneMore is the deed that "and a pollen patty" adds; nil for none.
func (r *reader) oneMore(c *clause, i int, do string) *deed {
	if i+2 >= len(c.items) || !c.items[i].is(kAnd) || !c.items[i+1].is(kArt) || !c.items[i+2].is(kSubstance) || c.items[i+2].used || r.deedSentence != r.sentenceNo {
		return nil
	}
	it := &c.items[i+2]
	if r.rule(it, kSubstance).Value != do {
		return nil
	}
	return r.newDeed(&deed{do: do, at: i, items: r.these(it), rule: r.rule(it, kSubstance).ID, what: r.substance(it)})
}

// dated gives a helping the day that follows it: "a quart on Monday and a quart
// today".
func (r *reader) dated(c *clause, d *deed) bool {
	for k := d.at + 1; k < len(c.items) && k <= d.at+5; k++ {
		if it := &c.items[k]; it.is(kDate) && !it.used {
			d.due = &it.day
			d.items = append(d.items, it)
			return true
		}
	}
	return false
}
