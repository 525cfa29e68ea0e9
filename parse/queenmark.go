package parse

import (
	"strconv"
	"strings"
)

// markIs reads the colour of a mark just spoken of: "her dot is half gone but it's
// yellow still".
func (r *reader) markIs(c *clause) {
	if !r.markLast || !c.has(kColour) || !c.has(kBe) {
		return
	}
	colour := -1
	for k := range c.items {
		switch it := &c.items[k]; {
		case it.is(kColour) && colour < 0:
			colour = k
		case !it.any4(kBut, kAnd, kBe, kAdv) && !it.isWord2("it", "that"):
			return
		}
	}
	if _, told := r.cur.get("queen.colour"); colour < 1 || told || r.spokeOf.queen != r.sentenceNo || !markColours[r.value(&c.items[colour], kColour)] {
		return
	}
	r.leaf("queen.colour", r.value(&c.items[colour], kColour), "queen-colour", "", c.doubt, &c.items[colour])
}

// paintTold reads the colour that she was marked with where it is a sentence of its own: "So I
// marked her. Blue, for the year."
func (r *reader) paintTold(c *clause) {
	colour := &c.items[0]
	if !colour.is(kColour) || r.lastDeed != "actions.mark_queen" || r.spokeOf.deed != r.sentenceNo-1 || !allOf(c.items[1:], lightBehindDay.or(setOf(kOn, kNow))) || !markColours[r.value(colour, kColour)] {
		return
	}
	if _, told := r.cur.get("queen.colour"); !told {
		r.leaf("queen.colour", r.value(colour, kColour), "queen-colour", "", c.doubt, colour)
	}
}

// sheIsNow reads the colour that she has since she was marked: "we marked her and she's white
// now".
func (r *reader) sheIsNow(c *clause) {
	if !c.has(kColour) || !c.has(kBe) || !c.hasAny(kShe, kQueen) || r.lastDeed != "actions.mark_queen" || r.spokeOf.deed < r.sentenceNo-1 {
		return
	}
	if _, told := r.cur.get("queen.colour"); told || !allOf(c.items, sheIsWords) {
		return
	}
	for k := range c.items {
		if it := &c.items[k]; it.is(kBe) && !it.isWord4("is", "'s", "was", "being") {
			return // "she went white with fright"
		}
		if it := &c.items[k]; it.is(kColour) && c.before(k).any4(kBe, kAdv, kNow, kArt) && markColours[r.value(it, kColour)] {
			r.leaf("queen.colour", r.value(it, kColour), "queen-colour", "", c.doubt, it)
			return
		}
	}
}

// sheIsWords are the kinds of words that tell the colour of her mark as hers.
var sheIsWords = setOf(kShe, kQueen, kBe, kColour, kNow, kAdv, kAnd, kThen, kArt, kDot)

// onlyAttributes: a clause right behind the queen's that holds nothing but
// what she carries ("blue dot", "not clipped").
func (r *reader) onlyAttributes(c *clause) bool {
	some := false
	for i := range c.items {
		it := &c.items[i]
		switch {
		case it.any(kQueenIs, kDot):
			some = true
		case it.is(kDo) && (r.value(it, kDo) == "requeen" || r.value(it, kDo) == "release_queen"): // "gave them a new queen with a red dot"
		case it.any(kContent, kCell, kSign, kBees, kTemper, kDo, kMite, kForage) && !it.any4(kQueenIs, kDot, kColour, kState):
			return some
		}
	}
	return some
}

// carriedOnly reports whether the items tell of nothing but what the queen carries.
func carriedOnly(items []item) bool {
	return allOf(items, setOf(kQueenIs, kDot, kColour, kAdv, kArt, kHave))
}

// attributes reads her mark, its colour, clipping, year.
func (r *reader) attributes(c *clause, noun int) {
	for i := range c.items {
		it := &c.items[i]
		if it.used && !it.is(kQueenIs) {
			continue
		}
		switch {
		case it.is(kQueenIs) && !it.used:
			r.queenIs(c, i)
		case it.is(kDot) && !it.used && howMarkIs(c.items, i):
			it.used = true // how it is tells whether she has one
		case it.is(kDot) && !it.used:
			if v, ok := r.cur.get("queen.marked"); !ok || v == "yes" {
				r.markedBy(c, i)
			}
		case it.is(kColour):
			r.queenColour(c, i, noun)
		case it.is(kNum) && it.n.lo >= 1990 && it.n.lo < 2100 && (noun >= 0 && i > noun-4 || c.next(i).is(kQueen) || hasKind(c.items[:i], kShe)) && r.yearHere(c, i):
			r.leaf("queen.year", formatNumber(it.n.lo), "queen-year", "", c.doubt, it)
		case i+2 < len(c.items) && c.items[i+2].is(kQueen) && it.isWord4("this year", "last year", "this season", "last season") && c.items[i+1].text == "'s" && !(i > 0 && c.items[i-1].isWord2("was", "were")):
			year := r.today.Year
			if strings.HasPrefix(it.text, "last") {
				year--
			}
			it.used = true
			r.leaf("queen.year", strconv.Itoa(year), "queen-year", "", c.doubt, it)
		}
	}
}

// howMarkIs reports whether it is told right behind the mark at item i how it is: "the mark
// has rubbed off altogether".
func howMarkIs(items []item, i int) bool {
	for k := i + 1; k < len(items) && items[k].pause == none; k++ {
		if items[k].is(kQueenIs) {
			return k > i+1 && items[k-1].any3(kBe, kHave, kAdv)
		}
		if !items[k].any3(kBe, kHave, kAdv) {
			break
		}
	}
	return false
}

// yearHere: a year stands with the queen, not with a date.
func (r *reader) yearHere(c *clause, i int) bool {
	return c.items[i].end-c.items[i].start >= 4
}

func (r *reader) queenIs(c *clause, i int) {
	it := &c.items[i]
	for _, n := range it.says.rules {
		rule := &r.rules[n]
		if rule.Kind != kQueenIs || rule.Needs == "dot" && !hasKind(c.items[:i], kDot) {
			continue
		}
		r.setQueen(c, i, rule)
	}
}

// setQueen writes what a word says of her: marked, clipped, old.
func (r *reader) setQueen(c *clause, i int, rule *rule) {
	it := &c.items[i]
	k := i - 1
	for k > 0 && (c.items[k].is(kAdv) || c.items[k].isWord2("yet", "been")) {
		k--
	}
	denied := k >= 0 && c.items[k].any(kNo, kUndone)
	for leaf, more := "", rule.Value; more != ""; { // "marked=yes worn=yes"
		leaf, more, _ = strings.Cut(more, " ")
		name, value, _ := strings.Cut(leaf, "=")
		if denied {
			value = notSo(name, value)
		}
		if name == "marked" && value == "no" {
			if _, painted := r.cur.get("actions.mark_queen"); painted {
				it.used = true
				continue // "no mark, so I marked her": as she was before
			}
		}
		r.leaf(r.paths.under("queen", name), value, rule.ID, "", c.doubt, it)
	}
	if colour, _, _ := strings.Cut(it.text, " "); rule.ID == "mark-worn" && markColours[colour] {
		r.leaf("queen.colour", colour, "queen-colour", "", c.doubt, it) // "yellow spot gone rather faint"
	}
}

// markedBy reads a dot on her, or that she has none.
func (r *reader) markedBy(c *clause, i int) {
	it := &c.items[i]
	k := i - 1
	for k > 0 && c.items[k].any3(kHave, kArt, kColour) {
		k--
	}
	if k >= 0 && c.items[k].is(kNo) {
		r.leaf("queen.marked", "no", "unmarked", "", c.doubt, it, &c.items[i-1])
		return
	}
	r.leaf("queen.marked", "yes", "dot", "", c.doubt, it)
}

var markColours = map[string]bool{"white": true, "yellow": true, "red": true, "green": true, "blue": true}

// queenColour reads a colour as that of her mark, where a mark or she is near.
func (r *reader) queenColour(c *clause, i, noun int) {
	it := &c.items[i]
	value := r.value(it, kColour)
	if !markColours[value] || it.used {
		return
	}
	near := false
	for k := max(0, i-4); k < len(c.items) && k <= i+3; k++ {
		if k != i && c.items[k].any(kDot, kQueenIs) {
			near = true
		}
		if c.items[k].any3(kContent, kForage, kBring) && k > i {
			if k == i+1 && !(i > 0 && c.items[i-1].any(kQueenIs, kDot)) { // but "marked yellow eggs on bar four"
				return
			}
			break
		}
	}
	if !near && !(noun >= 0 && (i >= noun && i-noun <= 4 || i == noun-1)) && !(len(c.items) <= 2 && r.sheLast) {
		return
	}
	if i+1 < len(c.items) && c.items[i+1].pause == none && c.items[i+1].any3(kContent, kHive, kWord) && !c.items[i+1].is(kDot) && !near {
		return
	}
	r.leaf("queen.colour", value, "queen-colour", "", c.doubt, it)
	if _, ok := r.cur.get("queen.marked"); !ok {
		r.leaf("queen.marked", "yes", "queen-colour", "", c.doubt, it)
	}
}
