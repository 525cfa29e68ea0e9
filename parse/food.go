package parse

import "strings"

// moreBars reads a second bar told without its verb: "put a bar in after six and
// another after eight".
func (r *reader) moreBars(c *clause) {
	if !strings.HasPrefix(r.lastDeed, "actions.add_bar") && !strings.HasPrefix(r.lastDeed, "plans.add_bar") || r.spokeOf.deed != r.sentenceNo {
		return
	}
	if !c.hasAny(kDo, kMeasure, kSubstance, kAfter) {
		return // the bar is told of, "that leaves a bar"
	}
	list, _, _ := strings.Cut(r.lastDeed, ".")
	for i := range c.items {
		it := &c.items[i]
		counted := it.is(kNum) && it.n.lo == 1 && i+1 < len(c.items) && (c.items[i+1].is(kBar) || i+2 < len(c.items) && c.items[i+2].is(kBar))
		alike := countsBehind(c, i)
		if i+1 < len(c.items) && it.text == "another" && c.items[i+1].is(kNum) && c.items[i+1].n.lo > 1 {
			continue // "another two bars", a deed of its own
		}
		if it.text != "another" && !counted && !alike || it.used {
			continue
		}
		if next := i + 1; !counted && !alike && next < len(c.items) && c.items[next].pause == none && c.items[next].is(kWord) {
			continue // "another story"
		}
		d := r.newDeed(&deed{do: "add_bar", at: i, items: r.these(it), rule: "add-done", count: &quantity{lo: 1}})
		if alike {
			d.count = &it.n // "and two after bar 12"
		}
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

// countsBehind reports whether the number at item i counts more bars, by the bar that they
// went behind: "and two after bar 12".
func countsBehind(c *clause, i int) bool {
	it := &c.items[i]
	more := it.is(kNum) && it.n.whole() && it.n.lo < manyBars && i > 1 && (c.items[i-1].is(kAnd) || it.pause == comma)
	return more && c.next(i).is(kAfter) && c.next(i).pause == none && c.next(i+1).is(kBars)
}

// foodToo reads the food that was given along with bars: "put two bars in behind bar six, and a
// litre of syrup", "a bar from hive four and a litre of syrup".
func (r *reader) foodToo(c *clause, d *deed) {
	if d.do != "add_bar" {
		return
	}
	list, do, _ := strings.Cut(r.lastDeed, ".")
	if !strings.HasPrefix(do, "add_bar") || r.spokeOf.deed != r.sentenceNo || list != "actions" && list != "plans" {
		return
	}
	for i := d.at + 1; i < len(c.items); i++ {
		if i > d.at+1 && !c.items[i-1].any(kAnd, kWithX) && !c.items[i-1].isWord2("with", "plus") {
			continue
		}
		if food := r.helping(c, i, "feed", kOf); food != nil {
			for _, it := range food.items {
				it.used = true
			}
			food.due = d.due
			r.write(list, c, food)
			return
		}
	}
}

// barsToo reads the bars that were given along with food: "added two bars and a litre of
// syrup", "gave them a pint of syrup and two bars".
func (r *reader) barsToo(c *clause, d *deed) {
	if d.traits().bars || !r.adds(&c.items[d.at]) {
		return
	}
	for i := d.at + 1; i+1 < len(c.items); i++ {
		bar := i + 1
		for bar < len(c.items) && (c.items[bar].is(kComb) || r.isWord(&c.items[bar], r.wordsOf[newOnes]...)) && !c.items[bar].is(kBar) {
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
		if !it.is(kFixture) || r.value(it, kFixture) != "follower" {
			continue
		}
		way := i + 1
		if way < len(c.items) && c.items[way].isWord5("went", "goes", "gone", "comes", "came") {
			way++
		}
		if way+1 >= len(c.items) || !c.items[way].isWord3("back", "forward", "forwards") || !barNumber(&c.items[way+1]) {
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

// feedOf makes plain words of "feed of" where a hive got so much of a food: "it got a bucket
// feed of four pints of syrup".
func (r *reader) feedOf(items []item) {
	for i := 1; i+2 < len(items); i++ {
		it, of := &items[i], &items[i+1]
		if it.text != "feed" || !it.is(kDo) || it.pause > none || of.pause > none || !of.is(kOf) || !items[i+2].any(kMeasure, kSubstance) {
			continue
		}
		k := i - 1
		for k > 0 && k > i-4 && items[k+1].pause == none && !items[k].any(kHave, kDo) && !items[k].isWord2("got", "received") {
			k--
		}
		if k < i-1 && (items[k].is(kHave) || items[k].isWord2("got", "received") || items[k].is(kDo) && strings.HasPrefix(items[k].text, "gave")) {
			it.kinds, it.says, of.kinds, of.says = setOf(kAdv), senseless, setOf(kAdv), senseless
		}
	}
}
