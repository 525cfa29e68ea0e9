package parse

import (
	"slices"
	"strconv"
	"strings"
)

// A word for the bars in hand may stand for what a deed took: "bar nine was ripe, so that
// one came home with me", "wax moth on bars 11 and 12, so we removed those two bars".

// takesHeld gives a deed the bars in hand where a word before or behind its verb stands for
// them.
func (r *reader) takesHeld(c *clause, d *deed, i, end int) {
	switch d.do {
	case "harvest", "remove_bar", "move_bar", "free_comb", "straighten":
	default:
		return
	}
	if len(d.bars) > 0 || len(r.bars) == 0 || r.inHand != thisLine && r.inHand != awaiting {
		return
	}
	word := r.heldBehind(c, d, i, end)
	if word == nil && d.do == "harvest" && d.count == nil && r.sameSentence {
		word = r.heldBefore(c, i)
	}
	if word != nil {
		d.bars = slices.Clone(r.bars)
		d.use(word)
	}
}

// heldBehind is the word for the bars in hand behind the verb at item i: "we harvested
// both", "removed those two bars"; nil where there is none.
func (r *reader) heldBehind(c *clause, d *deed, i, end int) *item {
	counted := d.count == nil || int(d.count.lo) == len(r.bars)
	for k := i + 1; counted && len(r.bars) > 1 && k < len(c.items) && k <= i+2 && c.items[k].pause == none; k++ {
		if it := &c.items[k]; it.isWord4("those", "these", "both", "them") || int(howManyOf(it.text)) == len(r.bars) {
			return it
		}
	}
	if d.do != "harvest" || d.count != nil {
		return nil
	}
	for k := i + 1; k < end; k++ {
		it := &c.items[k]
		if !it.used && (it.is(kEach) || k == i+1 && (int(howManyOf(it.text)) == len(r.bars) || it.isWord4("it", "them", "these", "those"))) {
			return it
		}
	}
	return nil
}

// heldBefore is the word for the bars in hand shortly before the verb at item i; nil where
// there is none.
func (r *reader) heldBefore(c *clause, i int) *item {
	for k := i - 1; k >= 0 && k >= i-6; k-- {
		if it := &c.items[k]; r.isWord(it, "that one", "this one", "it", "both", "they", "those", "that") && !it.is(kBars) {
			return it
		}
	}
	return nil
}

// namesTaken gives the deed told right before the bars that a clause names, as many as were counted
// there: "harvested three bars, that's eight nine and ten", "took two bars off six and seven".
func (r *reader) namesTaken(c *clause) {
	if r.spokeOf.deed != r.sentenceNo || r.lastDeed == "" {
		return
	}
	k := 0
	for k < len(c.items) && (c.items[k].any4(kArt, kBe, kPron, kThen) || c.items[k].isWord2("those", "namely")) {
		k++
	}
	if k == len(c.items) || !c.items[k].is(kBars) || len(c.items[k].bars) < 2 || c.next(k) != &noItem && c.next(k).pause == none && !c.next(k).any(kMeasure, kWord) {
		return
	}
	bars := c.items[k].bars
	count, _ := r.cur.get(r.paths.under(r.lastDeed, "count"))
	_, named := r.cur.get(r.paths.under(r.lastDeed, "bars"))
	takes := strings.HasPrefix(r.lastDeed, "actions.harvest") || strings.HasPrefix(r.lastDeed, "actions.remove_bar")
	if takes && !named && count == strconv.Itoa(len(bars)) {
		c.items[k].used, c.items[k].taken = true, true
		r.cur.put(r.paths.under(r.lastDeed, "bars"), joinBars(bars), r.why("bars-named", "", &c.items[k]))
	}
}
