package parse

import (
	"slices"
	"strings"
)

// Lists and ranges of bars: bars one to four, six and eight.

// countedOn reports whether the number at item k counts what is on the bars behind
// it: "one on b3", "1 sealed on b6", "1 capped (b6)".
func (r *reader) countedOn(items []item, k int) bool {
	if !items[k].is(kNum) {
		return false
	}
	kind := k+1 < len(items) && items[k+1].any(kStage, kCellKind, kCell) && items[k+1].pause == none
	if kind {
		k++
	}
	if moreBehind(items, k) {
		return true // "a bar after 8 and one after 12"
	}
	on := k+1 < len(items) && items[k+1].is(kOn) && items[k+1].pause == none
	if on && items[k+1].text == "on" && k+2 < len(items) && barNumber(&items[k+2]) && items[k+2].pause == none {
		return true // "3 cups on 4, 2 on 7"
	}
	if on {
		k++
	}
	return (kind || on) && k+1 < len(items) && items[k+1].is(kBar) && (items[k+1].pause == none || kind && !on && r.text[items[k+1].start-1] == '(')
}

// moreBehind reports whether the number at item k counts bars that went behind another than
// the bar just named: "a bar after 8 and one after 12", "two after 6, one after 10".
func moreBehind(items []item, k int) bool {
	if k < 3 || k+2 >= len(items) || items[k].n.lo >= manyBars || !items[k+1].is(kAfter) || items[k+1].pause > none {
		return false
	}
	last := &items[k-3]
	if items[k].pause == comma {
		last = &items[k-2]
	}
	return last.is(kAfter) && (items[k+2].is(kBar) || barNumber(&items[k+2]))
}

// barList is a list of the numbers of bars, while it is read.
type barList struct {
	*reader
	items    []item
	bars     []int
	plural   bool // its noun is, or what stands in it tells that it goes on
	closed   bool // by "and"
	excepted bool // bars were, by "except"
}

// joint is what joins a number to the list before it.
type joint uint8

const (
	apart     joint = iota // the list ends before it
	listed                 // a comma, or nothing
	closing                // "and": of a plain list it is the last
	exception              // "except"
)

// numberList reads the numbers of bars from item j on: 3, 3-5 and 8, nine ten
// and eleven, two to six except four.
func (r *reader) numberList(items []item, j int, plural bool) ([]int, int) {
	r.falls = false
	l := barList{reader: r, items: items, bars: spread(r.barLists.take(usualBars)[:0], items[j].n), plural: plural}
	laid := r.laid.endOf(j)
	for j++; j < len(items) && j != laid; {
		sep := &items[j]
		if sep.pause > comma || l.closed && !l.excepted && sep.pause == comma && barNumber(sep) {
			break // "nectar on 8 and 9, 10 half built"
		}
		if l.closed && !l.excepted && sep.pause == none && barNumber(sep) && int(sep.n.lo) < l.bars[len(l.bars)-1] {
			break // "queen cells on four five and six one on each"
		}
		if sep.pause == comma && barNumber(sep) && r.inBrackets(sep) {
			break // "capped cells on b3 (2)"
		}
		if sep.pause == none && j+2 < len(items) && byWord(&items[j+1]) && items[j+2].any(kNum, kMeasure) {
			break // "b11 6 x 4 in"
		}
		if end := l.rangeAt(j); end >= j {
			if end == j {
				break
			}
			j = end
			continue
		}
		k, how := l.jointAt(j)
		if how == apart || !l.goesOnAt(k, how, sep.pause == comma) {
			break
		}
		if how == exception {
			drop := spread(nil, items[k].n)
			l.bars = slices.DeleteFunc(l.bars, func(b int) bool { return slices.Contains(drop, b) })
		} else {
			l.bars = spread(l.bars, items[k].n)
		}
		l.excepted = l.excepted || how == exception
		l.closed = l.closed || how != listed
		j = k + 1
	}
	return l.bars, j
}

// rangeAt takes the end of a range that begins with the list's last number, told with
// its noun or from the far end, and returns where it ends: j where the list does, and -1
// where none is told.
func (l *barList) rangeAt(j int) int {
	if !l.dashOrTo(&l.items[j]) {
		return -1
	}
	sep, near := &l.items[j], l.bars[len(l.bars)-1]
	number := func(k int) bool {
		return k < len(l.items) && barNumber(&l.items[k])
	}
	switch {
	case number(j+1) && strings.HasSuffix(sep.text, " to") && l.items[j+1].pause == none && int(l.items[j+1].n.lo) > near: // "bar two right through to nine"
		l.bars = spread(l.bars, quantity{lo: float64(near), hi: l.items[j+1].n.lo})
		return j + 2
	case number(j+2) && l.items[j+1].is(kBar) && l.items[j+1].pause == none:
		far := int(l.items[j+2].n.lo)
		opens := j < 3 || !l.items[j-3].any4(kDo, kOf, kArt, kTo)
		if far < near && (sep.isWord2("-", "–") || len(l.bars) == 1 && opens && sep.isWord3("to", "down to", "back to")) { // "b10-b6", "from bar ten down to bar six"
			near, far, l.falls = far, near, true
		}
		if far <= near {
			return j
		}
		l.bars = spread(l.bars, quantity{lo: float64(near), hi: float64(far)})
		return j + 3
	case number(j+1) && l.items[j+1].pause == none && int(l.items[j+1].n.lo) < near && l.plural && len(l.bars) == 1 && !(j > 2 && l.items[j-3].is(kDo)):
		l.falls = true
		l.bars = spread(nil, quantity{lo: l.items[j+1].n.lo, hi: float64(near)}) // "three to one"
		return j + 2
	}
	return -1
}

// jointAt is what joins the number at item k to the list that goes on at item j.
func (l *barList) jointAt(j int) (k int, how joint) {
	items, sep := l.items, &l.items[j]
	switch {
	case sep.is(kBut) && l.exceptAt(sep):
		k = j + 1
		if k < len(items) && items[k].is(kBar) {
			k++
		}
		return k, exception
	case sep.is(kBar) && sep.pause <= comma && l.shortList(items, j):
		return j + 1, listed
	case sep.is(kBar) && l.eachNamed(j):
		l.plural = true
		return j + 1, listed
	case l.onBoth(items, j) > 0:
		l.plural = true
		return l.onBoth(items, j), listed
	case sep.is(kAnd):
		if l.closed && sep.pause == comma && j+1 < len(items) && (items[j+1].is(kBar) || l.excepted) {
			return j, apart // "eggs on bars 5, 6 and 7, and bars 8 and 9 are …"
		}
		k = j + 1
		if l.barWithArticle(items, k) {
			k++ // "the bar four and the bar five"
		}
		if k < len(items) && items[k].is(kBar) && l.pairOfBars(items, k-1) {
			l.plural = true
			k++
		}
		return k, closing
	case barNumber(sep) && j > 1 && items[j-2].is(kOn) && sep.pause == none && j+1 < len(items) && items[j+1].any(kBe, kHave):
		return j, apart // "she's on seven six is just eggs"
	case barNumber(sep) && (l.plural || l.risingTo(items, j, l.bars)) && len(l.bars) < 30:
		l.plural = true
		return j, listed
	}
	return j, apart
}

// goesOnAt reports whether the number at item k is the next of the list.
func (l *barList) goesOnAt(k int, how joint, afterComma bool) bool {
	items := l.items
	switch {
	case k >= len(items) || !barNumber(&items[k]) || items[k].n.ordinal || items[k].n.approx || items[k].n.lo > maxBar:
		return false
	case k+1 < len(items) && (byWord(&items[k+1]) || l.countedOn(items, k) || afterComma && stillAt(items, k)):
		return false // "b7 22 x 18 cm", "one on b3 and two on b4"
	case items[k].pause > comma || how == closing && items[k].pause != none:
		return false
	case !l.listGoesOn(items, k, l.plural, how == closing, afterComma, l.bars):
		return false
	}
	// "honey on ten and eleven but bar twelve is bare", "behind bar nine and bar nine is bare"
	return slices.Contains(l.bars, int(items[k].n.lo)) == (how == exception)
}

// stillAt reports whether the number at item k counts cells whose stage stands behind a
// little word: "b7, one still sealed".
func stillAt(items []item, k int) bool {
	return k+2 < len(items) && items[k+1].is(kAdv) && items[k+2].is(kStage) && items[k+1].pause == none && items[k+2].pause == none
}

// dashOrTo joins the ends of a range whose noun is said twice: b3-b7, "bar
// three to bar seven".
func (r *reader) dashOrTo(it *item) bool {
	if it.pause > none || it.is(kTo) {
		return it.pause == none
	}
	switch it.text {
	case "-", "–", "through", "thru", "until", "till", "down to", "back to", "on to":
		return true
	}
	return false
}

// pairOfBars: "took out bar fifteen and bar sixteen" is a list; "eggs on bar
// four and bar five is capped" is not.
func (r *reader) pairOfBars(items []item, and int) bool {
	k := and - 2
	for k >= 0 && items[k].any3(kBar, kNum, kAnd) {
		k--
	}
	if items[and+1].plural && items[k+1].is(kBar) && !items[k+1].plural && !(k >= 0 && items[k].is(kDo)) {
		return false // "cut two out of bar five and bars six and seven have …"
	}
	if k > 0 && items[k].any(kOn, kOf) && items[k-1].any3(kContent, kCell, kSide) && and+3 < len(items) && items[and+3].text == "had" {
		return false // "eggs on bar four, and bar five had larvae"
	}
	if k >= 0 && items[k].any(kOn, kAfter) && and+3 < len(items) && items[and+3].pause == none && items[and+3].any4(kBe, kHave, kContent, kComb) &&
		!slices.Contains(pluralVerbs, items[and+3].text) {
		return false // "on bar 6 and bar 7 are eggs" is of both
	}
	return and+2 < len(items) && barNumber(&items[and+2])
}

// risingTo: "bar four five and six" is a list although the noun is singular.
func (r *reader) risingTo(items []item, j int, bars []int) bool {
	n := bars[len(bars)-1]
	for ; j < len(items) && barNumber(&items[j]) && items[j].pause == none && int(items[j].n.lo) == n+1; j++ {
		n++
	}
	last := bars[len(bars)-1]
	if n > last+1 && (j == len(items) || items[j].pause >= comma || items[j].any5(kContent, kComb, kFull, kPattern, kAmount)) {
		return true // "capped brood bar 5 6 7.", "bar five six seven sealed brood"
	}
	return n > last && j+1 < len(items) && items[j].is(kAnd) && barNumber(&items[j+1]) && int(items[j+1].n.lo) == n+1
}

// shortList: "b5, b6." lists bars where a pause follows, and "b13, b12 nectar"
// where nothing before them can be the first one's.
func (r *reader) shortList(items []item, j int) bool {
	if items[j].end-items[j].start != 1 || j+1 >= len(items) || !barNumber(&items[j+1]) || items[j+1].start != items[j].end {
		return false
	}
	end := j + 2
	for end+1 < len(items) && items[end].is(kBar) && items[end].pause <= comma && items[end].end-items[end].start == 1 && barNumber(&items[end+1]) {
		end += 2 // "E b3 b4 b5."
	}
	if end+2 < len(items) && items[end].is(kAnd) && items[end+1].is(kBar) && barNumber(&items[end+2]) && items[end].pause == none {
		end += 3 // "b6 b7 and b8."
	}
	if end >= len(items) || items[end].pause >= comma || items[end].any3(kTo, kFrom, kDo) {
		return true // "moved b6 b7 b8 to h3"
	}
	if items[j].pause == none && items[end].any(kPattern, kSide) && (end+1 == len(items) || items[end+1].pause >= comma) {
		return true // "CB b4 b5 patchy"
	}
	first := j
	for first > 0 && items[first].any(kBar, kNum) && (items[first-1].any(kBar, kNum)) {
		first--
	}
	return items[first].pause >= colon || first == 0 || items[j].pause == none && r.listedBehind(items, first, end)
}

// eachNamed: "bar ten bar eleven and bar twelve is" lists bars that rise by one, each with its
// noun, the last behind "and".
func (l *barList) eachNamed(j int) bool {
	items, n := l.items, l.bars[len(l.bars)-1]
	for n++; j+2 < len(items) && items[j].is(kBar) && !items[j].plural && items[j].pause <= comma && barNumber(&items[j+1]) && items[j+1].pause == none && int(items[j+1].n.lo) == n; n++ {
		j += 2
	}
	return j+2 < len(items) && items[j].is(kAnd) && items[j].text == "and" && items[j+1].is(kBar) && items[j+1].pause == none && barNumber(&items[j+2]) && int(items[j+2].n.lo) == n
}

// listedBehind: "eggs b5 b6 sealed brood b3" lists the bars from item first to end, where
// each thing of the sentence stands before its bars.
func (r *reader) listedBehind(items []item, first, end int) bool {
	if items[first].pause > none || !items[first-1].any(kContent, kCell) {
		return false
	}
	thing, next := r.thingsAt(items, end)
	if next == 0 || next+1 >= len(items) || !thing.any(kContent, kCell) || !items[next].is(kBar) || items[next].pause > none || !barNumber(&items[next+1]) {
		return false
	}
	for k := first; k > 0 && items[k].pause < stop; k-- {
		if items[k].is(kBar) {
			first = k
		}
	}
	return first > 0 && items[first].pause == none && items[first-1].anyOf(placedBehind)
}

// exceptAt reports whether bars are taken out of a range by an item: "four to nine except
// seven".
func (r *reader) exceptAt(it *item) bool {
	return it.is(kBut) && r.isWord(it, r.wordsOf[excepting]...)
}

// listGoesOn tells whether the number at k is another bar of the list or
// counts what follows it ("bar six and two queen cells").
func (r *reader) listGoesOn(items []item, k int, plural, closing, afterComma bool, bars []int) bool {
	n := items[k].n
	if k+1 < len(items) && items[k+1].pause == none {
		next := &items[k+1]
		if closing && afterComma && next.isWord4("is", "was", "has", "'s") {
			return false // "cross comb on bars six and seven, and five is bent"
		}
		if next.any6(kCell, kStage, kCellKind, kUnit, kMite, kSign) && !next.any(kComb, kState) && !plural {
			return false
		}
		if next.any3(kCell, kCellKind, kMite) || next.is(kSign) && !(plural && closing && len(bars) == 1 && int(n.lo) == bars[0]+1) || next.is(kStage) && k+2 < len(items) && items[k+2].any(kCell, kCellKind) {
			return false
		}
		if next.is(kStage) && !next.is(kComb) && !closing && !afterComma && len(bars) > 0 && int(n.lo) < bars[len(bars)-1]-1 {
			return false // "b6 2 capped"
		}
		if next.is(kStage) && afterComma && !closing && !next.any3(kComb, kState, kContent) && len(bars) > 0 && int(n.lo) < bars[len(bars)-1]-1 {
			return false // "one hatched cell on b8, one torn down next to it"
		}
		if next.is(kBar) && !(k+2 < len(items) && barNumber(&items[k+2])) {
			return false // "bars three and four, two bars of honey"
		}
	}
	if plural {
		return true
	}
	// "bar four and five": singular, but rising by one is a list all the same.
	return closing && len(bars) > 0 && int(n.lo) == bars[len(bars)-1]+1 && !afterComma
}

// usualBars is how many bars a list has at most, but for a few.
const usualBars = 4

// spread adds the bars of a number or a range to a list, each once.
func spread(bars []int, q quantity) []int {
	lo, hi := int(q.lo), int(q.lo)
	if q.hi > q.lo && !q.or {
		hi = min(int(q.hi), lo+60)
	} else if q.or {
		hi = int(q.hi)
	}
	for b := lo; b <= hi; b++ {
		if !slices.Contains(bars, b) {
			bars = append(bars, b)
		}
	}
	return bars
}
