package parse

import (
	"slices"
	"strings"
)

// Bars that went or were carried somewhere are told as bars that were put there: "two
// bars went in behind 4", "bar 4 went across to the plum hive".

// barsWent makes a verb of such words, one of putting in or moving, and puts "were" before
// it where the bars stand there.
func (r *reader) barsWent(items []item) []item {
	for i := 0; i < len(items); i++ {
		it := &items[i]
		if !it.lists.has(going) {
			continue
		}
		if r.carriesBars(items, i) {
			it.kinds, it.says = setOf(kDo), r.moved
			continue
		}
		subject := barsBefore(items, i)
		verb := r.wentWhere(items, i)
		if subject < 0 || verb == nil || verb == r.added && items[subject].is(kBars) {
			continue // that "bar 9 went in on Monday" is when it was put in
		}
		if items[i-1].is(kAnd) { // "I lifted out and" tells no more
			items = slices.Delete(items, subject+1, i)
			i = subject + 1
			it = &items[i]
		}
		were := *it
		were.kinds, were.says, were.text, were.end, were.lists = setOf(kBe), senseless, "were", were.start, 0
		it.kinds, it.says, it.pause = setOf(kDo), verb, none
		items = slices.Insert(items, i, were)
		i++
	}
	return items
}

// gotBars makes a verb of putting in of "got" where bars from a hive are what somebody got:
// "got a bar of brood from Juniper".
func (r *reader) gotBars(items []item) {
	for i := range items {
		if !items[i].isWord2("got", "gets") || i > 0 && items[i].pause < comma && !items[i-1].any4(kPron, kBees, kName, kAnd) {
			continue
		}
		k, bars := i+1, false
		for k < len(items) && items[k].pause == none && (items[k].any6(kNum, kArt, kBar, kOf, kContent, kPattern) || items[k].text == "another") && !items[k].is(kBars) {
			bars = bars || items[k].is(kBar)
			k++
		}
		if bars && k < len(items) && items[k].is(kFrom) && items[k].pause == none && (k+1 < len(items) && items[k+1].is(kName) || k+2 < len(items) && items[k+1].is(kArt) && items[k+2].is(kName)) {
			items[i].kinds, items[i].says = setOf(kDo), r.added
		}
	}
}

// carriesBars: "carried bar 4 over to the plum hive".
func (r *reader) carriesBars(items []item, i int) bool {
	end := i + 1
	for end < len(items) && end < i+4 && items[end].pause == none && items[end].any4(kNum, kArt, kBar, kBars) {
		end++
	}
	return end > i+1 && items[end-1].any(kBar, kBars) && items[i].text == "carried" && r.toHive(items, end)
}

// wentWhere is the verb that going at item i stands for: to a hive is moved, in is added;
// nil for neither.
func (r *reader) wentWhere(items []item, i int) *sense {
	switch {
	case r.toHive(items, i+1):
		return r.moved
	case inside(items[i].text) || i+1 < len(items) && items[i+1].pause == none && inside(items[i+1].text) && items[i].isWord2("went", "gone"):
		return r.added
	}
	return nil
}

// barsTo puts the verb that "b5 and b6 to H2" and "b11 → b9" do without before the bars.
func (r *reader) barsTo(items []item) []item {
	for i := 1; i+1 < len(items); i++ {
		end := r.wayEnd(items, i)
		if end == 0 || end < len(items) && items[end].pause == none {
			continue
		}
		from, bars := i, false
		for from > 0 && (from == i || items[from].pause == none) && items[from-1].anyOf(carried) {
			from--
			bars = bars || items[from].any(kBars, kBar)
		}
		if !bars || from > 0 && (items[from].pause < comma || items[from-1].is(kDo)) {
			continue
		}
		verb := items[from]
		verb.kinds, verb.says, verb.text, verb.end, verb.lists = setOf(kDo), r.moved, "moved", verb.start, 0
		items[from].pause = none
		items = slices.Insert(items, from, verb)
		i = end
	}
	return items
}

// carried are the kinds of words for what is carried elsewhere: "2 bars of sealed brood".
var carried = setOf(kBars, kBar, kAnd, kNum, kArt, kOf, kContent, kStage)

// wayEnd is the end of the way to a hive that begins at item i, or of an arrow and a bar
// there; 0 for neither.
func (r *reader) wayEnd(items []item, i int) int {
	switch {
	case strings.HasPrefix(items[i].text, "→") || strings.HasPrefix(items[i].text, "-") || strings.HasPrefix(items[i].text, "="):
		if items[i].is(kTo) && items[i+1].any(kBars, kName) {
			return i + 2
		}
	case items[i].is(kTo) && r.toHive(items, i):
		k := i + 1
		for !items[k].any(kName, kHive) {
			k++
		}
		if items[k].is(kName) {
			return k + 1
		}
	}
	return 0
}

// toHive reports whether the way to a hive follows from item i on: "over to the plum hive".
func (r *reader) toHive(items []item, i int) bool {
	for i < len(items) && items[i].pause == none && r.isWord(&items[i], "over", "across", "straight", "down", "on", "back", "right") {
		i++
	}
	if i+2 < len(items) && items[i].is(kFrom) && items[i+1].any4(kName, kShe, kPron, kHive) {
		i += 2 // "from Juniper to Tansy"
	}
	if i == len(items) || !items[i].is(kTo) || items[i].pause > none {
		return false
	}
	if i++; i < len(items) && items[i].is(kArt) {
		i++
	}
	return i < len(items) && items[i].any(kName, kHive)
}

// barsBefore is the item of the bars that went, before item i: "two empty bars", "a bar from
// hive 1", "bar 5, queen and all,", "bar 4 I lifted out and"; -1 where there are none.
func barsBefore(items []item, i int) int {
	k := verbChain(items, i)
	switch {
	case k == i-1 && k >= 0 && items[i].pause == comma:
		k = beforeAside(items, k)
	case k > 1 && items[k].is(kAnd) && items[k+1].pause == none:
		k = liftedBefore(items, k)
	}
	k = behindBars(items, k)
	if k < 0 || !items[k].any(kBars, kBar) || k > 0 && items[k-1].any4(kOn, kFrom, kAfter, kDo) && !(items[k].is(kBars) && hasItsObject(&items[k-1])) {
		return -1
	}
	return k
}

// liftedBefore is the item of the bars in "bar 4 I lifted out and", which ends with item
// and; where it is not so, that item.
func liftedBefore(items []item, and int) int {
	for k := and - 1; k > 0 && and-k < 5 && items[k].pause == none; k-- {
		if items[k].is(kPron) && items[k-1].any(kBars, kBar) {
			return k - 1
		}
	}
	return and
}

// hasItsObject reports whether a verb has its object with it, so that bars behind it
// begin anew: "split them, bars 6 and 7 went to Juniper", but not "gave them bar 6".
func hasItsObject(it *item) bool {
	verb, rest, _ := strings.Cut(it.text, " ")
	return it.is(kDo) && rest == "them" && !slices.Contains([]string{"gave", "give", "given", "giving"}, verb)
}
