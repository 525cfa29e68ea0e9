package parse

import (
	"iter"
	"strings"
)

// deed is something done or to be done, on its way to the record.
type deed struct {
	do        string
	at        int // its verb in the clause
	items     []*item
	rule      string
	count     *quantity
	bars      []int
	to        int
	fromHive  string
	toHive    string
	direction string
	size      *measure
	what      string
	due       *day
	hives     []string // of a deed done to several

	like   *traits // once they are asked for
	likeOf string  // the deed that has them
}

// deeds reads what was done or is to be done in a clause.
func (r *reader) deeds(c *clause) {
	for i := 0; i < len(c.items); i++ {
		it := &c.items[i]
		if it.used || !it.is(kDo) && !it.isWord2("went in", "went") || r.addedThere(c, i) || !it.is(kDo) || c.fitFor(i) {
			continue
		}
		if d := r.deed(c, i); d != nil {
			r.settleDeed(c, d)
			r.barsToo(c, d)
			r.foodToo(c, d)
		}
	}
	if c.has(kSubstance) || r.askAll {
		r.moreFood(c)
	}
	r.moreBars(c)
	if c.has(kSubstance) || r.askAll {
		r.bareFood(c)
	}
}

// fitFor reports whether the verb at item i tells only what the bees are or are not fit for:
// "too weak to split", "strong enough to split".
func (c *clause) fitFor(i int) bool {
	if i < 2 || c.items[i-1].text != "to" || c.items[i].pause > none {
		return false
	}
	fit := i - 2
	if fit > 0 && c.items[fit].text == "enough" {
		return c.items[fit-1].any(kStrength, kTemper)
	}
	return fit > 0 && c.items[fit-1].text == "too" && c.items[fit].pause == none
}

// spareCells uses up cells of which only is told that none was cut: "cut no cells" does not tell
// that there are none.
func spareCells(items []item) {
	for k := range items {
		it := &items[k]
		if it.pause > none && k > 0 || k > 0 && !it.any6(kCell, kCellKind, kStage, kArt, kOf, kAdv) || k == 0 && !it.isWord3("no", "none", "none of") {
			return
		}
		if it.is(kCell) {
			for j := range items[:k+1] {
				items[j].used = true
			}
			return
		}
	}
}

// noneUnderwent reports whether the verb at item i tells that nothing was done to cells or
// bars: "no cells were cut out", "none of the cells was taken down".
func (r *reader) noneUnderwent(c *clause, i int) bool {
	k := verbChain(c.items, i)
	if k < 1 || k == i-1 || !c.items[k].any(kCell, kBar) || !passive(c.items[k+1:i]) || r.rule(&c.items[i], kDo).Form != "done" {
		return false
	}
	no := k - 1
	for no > 0 && c.items[no].any4(kArt, kCellKind, kStage, kOf) {
		no--
	}
	if !c.items[no].any(kNo, kNot) {
		return false
	}
	spareCells(c.items[no : k+1])
	return true
}

// senses are the deeds that a verb can stand for, in the order in which they
// are tried.
func (r *reader) senses(it *item) iter.Seq[*rule] {
	return func(yield func(*rule) bool) {
		for _, n := range it.says.rules {
			if r.kindOf[n] == kDo && !yield(&r.rules[n]) {
				return
			}
		}
	}
}

// end is where the deed's arguments end: the next verb, or the clause.
func (r *reader) argumentsEnd(c *clause, i int) int {
	for k := i + 1; k < len(c.items); k++ {
		it := &c.items[k]
		if it.is(kDo) && r.verbAnew(c, i, k) {
			return k
		}
		if it.is(kAnd) && k > i+1 && hasStill(c.items[k+1:]) {
			return k // "gave up five bars and still has four bars of honey"
		}
		if it.is(kNo) && k > i+1 && strings.HasPrefix(it.text, "there") {
			return k // "took out bar fifteen, there was no comb on it"
		}
		if c.items[k-1].is(kBars) && r.describesBars(c.items, k) || placedContent(c.items, k) {
			return k
		}
		if it.is(kQueen) && k > i+3 && it.pause > none || r.fixtureIs(c.items, k) {
			return k
		}
	}
	return len(c.items)
}

// verbAnew reports whether the verb at item k is of no deed that the verb at item i tells: "moved
// it back three bars and put two new ones in", "made the split moved bars seven and nine".
func (r *reader) verbAnew(c *clause, i, k int) bool {
	it, prev := &c.items[k], &c.items[k-1]
	done := func() bool { return r.rule(it, kDo).Form == "done" }
	if it.pause >= colon || k > i+1 && !it.used && !it.any3(kState, kComb, kQueenIs) && !it.isWord2("free", "loose") {
		return true
	}
	puts := it.is(kComb) && r.value(it, kComb) == "../placed"
	switch {
	case k == i+1:
		verb := c.items[i].text
		onIt := puts && it.pause == none && (strings.HasSuffix(verb, " them") || strings.HasSuffix(verb, " it")) // "split it gave two bars to hive nine"
		return (onIt || strings.HasPrefix(verb, "made ")) && done()
	case prev.is(kAnd):
		return puts && done() || it.is(kState) && r.fixtureBehind(c.items, k) // "put three bars in and reduced the entrance"
	}
	return k == i+2 && puts && it.pause == none && prev.isWord2("it", "them") && done()
}

// toldOfContent are the kinds of words that stand between the head of a finding and its
// content, and between that and its bars.
var toldOfContent = setOf(kBe, kNo, kArt, kAmount, kAdv, kStage, kPattern, kNum, kOn)

// placedContent reports whether something else that is on bars is told from item k on:
// "fed 2 l, brood on bars 3 to 7", "added a bar, there is honey on 8 to 10".
func placedContent(items []item, k int) bool {
	if items[k].pause == comma && items[k].is(kNo) && k+1 < len(items) && items[k+1].is(kContent) {
		return true // "fed 2 l, no eggs"
	}
	if head := &items[k]; head.pause != comma && !head.any(kThere, kAnd) && !(items[k-1].is(kMeasure) && head.is(kContent)) || head.is(kOn) {
		return false
	}
	content := false
	for n := k; n < len(items) && (n == k || items[n].pause == none); n++ {
		it := &items[n]
		if content && it.is(kBars) {
			return true
		}
		if n <= k+1 && it.any(kThere, kAnd) {
			continue
		}
		if !it.anyOf(toldOfContent) && !it.is(kContent) {
			return false
		}
		content = content || it.is(kContent)
	}
	return false
}

// fixtureIs reports whether how a part of the hive was found begins at item k: "fed them, and
// the feeder was half full".
func (r *reader) fixtureIs(items []item, k int) bool {
	be := k + 1
	if be+1 >= len(items) || !items[k].is(kFixture) || !items[be].is(kBe) || items[be].pause > none {
		return false
	}
	return hasKind(items[be+1:min(be+4, len(items))], kState)
}

// hasStill reports whether items begin with "has" or "still have", of which somebody is the
// subject before.
func hasStill(items []item) bool {
	k := 0
	for k < len(items) && items[k].any(kAdv, kNow) && items[k].pause == none && !items[k].is(kHave) {
		k++
	}
	return k < len(items) && items[k].pause == none && (items[k].text == "has" || items[k].text == "have")
}

// describesBars reports whether what was on the bars just named follows, as in
// "harvested bars 14 and 15, both full of capped honey".
func (r *reader) describesBars(items []item, k int) bool {
	if items[k].pause != comma && !items[k].is(kEach) && !items[k].isWord2("all", "both") {
		return false
	}
	for end := min(len(items), k+7); k < end; k++ {
		switch it := &items[k]; {
		case it.any6(kBars, kDo, kMeasure, kTo, kAfter, kDate):
			return false
		case it.is(kContent):
			return true
		}
	}
	return false
}

// deed reads the verb at item i with its arguments; nil where nothing was done.
func (r *reader) deed(c *clause, i int) *deed {
	end := r.argumentsEnd(c, i)
	isSo := i > 0 && c.items[i].is(kState) && c.items[i-1].any(kBe, kFixture) // "the floor's closed no mice"
	if end > i+1 && !isSo && (c.items[i+1].isWord6("nothing", "none", "no", "n", "nil", "nowt") || c.items[i+1].is(kNum) && c.items[i+1].n == quantity{bare: true}) {
		c.items[i].used = true // "fed nothing", "removed 0 bars"
		if r.value(&c.items[i], kDo) == "cut_cells" && c.before(i).any4(kPron, kAdv, kHave, kAnd) {
			spareCells(c.items[i+1 : end])
		}
		return nil
	}
	if r.noneUnderwent(c, i) {
		c.items[i].used = true // "no cells were cut out"
		return nil
	}
	if i >= 2 && c.items[i-1].is(kBe) && c.items[i-2].isWord3("nothing", "none", "nobody") {
		c.items[i].used = true // "nothing was harvested"
		return nil
	}
	for rule := range r.senses(&c.items[i]) {
		d := r.newDeed(&deed{do: rule.Value, at: i, items: r.these(&c.items[i]), rule: rule.ID})
		if r.fits(c, d, i, end, rule) {
			r.argue(c, d, i, end)
			r.takesHeld(c, d, i, end)
			return d
		}
	}
	return nil
}
