package parse

import (
	"strconv"
	"strings"
)

// The board under the screened floor: how long it lay there, and how many mites fell on it.

// boardTime reports whether a length of time stands in the clause: "drop 18 in
// 3 days".
func (r *reader) boardTime(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDur) || c.items[k].is(kDate) && c.items[k].day.length > 0 {
			return true
		}
	}
	return false
}

// boardToldOf reports whether it is told behind the board at item i, in words that boardGave
// settled, what it held: "the board there gave 41 over four days".
func (r *reader) boardToldOf(c *clause, i int) bool {
	next := c.next(i)
	return next.any(kBe, kAdv) && next.says == senseless && r.boardTime(c)
}

// boardDays is for how many days mites fell on a board, 0 where it is not told.
func (r *reader) boardDays(c *clause) int {
	for k := range c.items {
		it := &c.items[k]
		text := it.text
		switch {
		case it.is(kDur) && it.dur.days > 0:
			it.used = true
			c.usePer(k)
			return it.dur.days
		case it.is(kDate) && it.day.length > 0:
			it.used = true
			return it.day.length
		case text == "overnight":
			it.used = true
			return 1
		case text == "daily" || (text == "day" || text == "d") && k > 0 && (c.items[k-1].is(kArt) && text == "day" || c.items[k-1].isWord2("per", "/")):
			it.used = true
			c.usePer(k)
			return 1
		}
	}
	return 0
}

// boardLay is for how many days the board lay, told before the clause that counts: "the board
// had been under hive six for a week, and when I pulled it there were ten mites"; else 0.
func (r *reader) boardLay(c *clause) int {
	board := false
	for k := range r.told {
		it := &r.told[k]
		switch {
		case it.start >= c.items[0].start, it.is(kNum) && it.n.lo > 1:
			return 0
		case it.is(kMethod):
			board = true
		case board && it.is(kDur) && it.dur.days > 0 && k > 0 && (r.told[k-1].isWord3("for", "over", "after") || strings.HasSuffix(r.told[k-1].text, "in")):
			it.used = true
			return it.dur.days
		case board && it.is(kDate) && it.day.length > 0:
			it.used = true
			return it.day.length
		case board && it.is(kDate) && k > 0 && r.told[k-1].text == "since" && it.day.past.Compare(r.today) < 0:
			it.used = true
			return r.today.Sub(it.day.past)
		}
	}
	return 0
}

// boardGave lets a number that tells what a board held stand behind its verb: "the mite board
// yielded 14 in four days".
func (r *reader) boardGave(items []item) {
	for i := 0; i+2 < len(items); i++ {
		if !items[i].is(kMethod) || r.value(&items[i], kMethod) != "drop" {
			continue
		}
		verb := i + 1
		for verb < len(items) && (items[verb].any(kThere, kAdv) || items[verb].isWord4("underneath", "below", "beneath", "again")) && !items[verb].is(kDo) && items[verb].pause == none {
			verb++
		}
		if verb+1 >= len(items) || items[verb].pause > none || !r.isWord(&items[verb], r.wordsOf[boardVerbs]...) || !barNumber(&items[verb+1]) || items[verb+1].pause > none {
			continue
		}
		timed := false
		for k := verb + 2; k < len(items) && k < verb+5 && items[k].pause == none; k++ {
			timed = timed || items[k].is(kDur) || items[k].is(kDate) && items[k].day.length > 0 || items[k].is(kMite)
		}
		if timed {
			items[verb].kinds, items[verb].says = setOf(kBe), senseless
			for k := i + 1; k < verb; k++ {
				items[k].kinds, items[k].says = setOf(kAdv), senseless
			}
		}
	}
}

// boardLabels lets the count of mites go on behind a label that tells the time as well: "mite
// drop (48h): 14", "mites per day: 4".
func boardLabels(items []item) {
	for i := 2; i < len(items); i++ {
		it, last := &items[i], &items[i-1]
		if it.pause != colon || !last.colon || !it.is(kNum) && !it.any(kNo, kNot) {
			continue
		}
		k := i - 1
		if !last.is(kDur) && !last.isWord2("day", "d") {
			continue
		}
		for k > 0 && (items[k].any3(kDur, kArt, kOn) || items[k].isWord4("day", "d", "per", "/")) {
			k--
		}
		if k >= i-3 && items[k].any(kMethod, kMite) {
			last.colon, it.pause = false, none
		}
	}
}

// boardTally lets what was counted stand with mites where a sentence tells how long a board lay
// before it, or of a board for mites, and a verb counts something with no noun: "the board had
// been in for three days and we counted 24", "I pulled the mite board and counted 54 on it".
func (r *reader) boardTally(items []item) {
	for i := range items {
		if !items[i].is(kMethod) || r.value(&items[i], kMethod) != "drop" || items[i].is(kDo) {
			continue
		}
		from := i
		for from > 0 && items[from].pause < stop {
			from--
		}
		timed := r.sureMethod(&items[i])
		for k := from; k < len(items) && (k == from || items[k].pause < stop) && !items[k].anyOf(offBoard); k++ {
			it := &items[k]
			if timed = timed || it.is(kDur) && it.dur.days > 0 || it.is(kDate) && (it.day.length > 0 || k > 0 && items[k-1].text == "since"); !timed || k < i+2 || !it.is(kNum) {
				continue
			}
			if verb := r.tallied(items, i, k); verb != nil {
				verb.kinds, verb.says = setOf(kMite), senseless
			}
			break
		}
	}
}

// offBoard are the kinds of words behind which a number counts no mites of a board, or those are
// counted by name.
var offBoard = setOf(kMite, kBars, kBar, kContent, kCell, kSign, kFixture)

// tallied is the verb that counts the number at item k behind a board, where no noun is counted
// with it; nil where there is none: "counted 24 on it", "I made it thirty", "40 counted".
func (r *reader) tallied(items []item, board, k int) *item {
	if n := &items[k].n; n.share || n.article || n.ordinal || !n.whole() {
		return nil
	}
	next := &noItem
	if k+1 < len(items) {
		next = &items[k+1]
	}
	if next.pause == none && next.isWord3("counted", "found", "fallen") {
		return next
	}
	last := &items[k-1]
	alone := next.pause >= comma || next == &noItem || next.any5(kThere, kAnd, kAdv, kThen, kPron)
	if !alone || items[k].pause > none || k-1 <= board && !last.is(kHave) {
		return nil
	}
	if last.text == "it" && k > 1 && items[k-2].isWord3("made", "make", "call") || r.isWord(last, r.wordsOf[tallying]...) && !last.is(kBars) {
		return last
	}
	return nil
}

// boardLayBehind writes for how many days the board lay that was counted before: "there were forty
// mites on the board, it had been in for a week".
func (r *reader) boardLayBehind(c *clause) {
	_, counted := r.cur.get("mites.count")
	if _, told := r.cur.get("mites.days"); told || !counted || c.hasAny(kQueen, kShe, kBar, kBars, kFixture, kSubstance) || !c.items[0].any4(kPron, kThen, kArt, kAnd) {
		return
	}
	for k := 2; k < len(c.items); k++ {
		it := &c.items[k]
		if it.is(kDur) && it.dur.days > 0 && (strings.HasSuffix(c.items[k-1].text, "in") || c.items[k-1].text == "for" && strings.HasSuffix(c.items[k-2].text, "in")) {
			it.used = true
			r.cur.put("mites.days", strconv.Itoa(it.dur.days), r.why("mites", "", it))
			return
		}
	}
}
