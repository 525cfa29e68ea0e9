package parse

import (
	"slices"
	"strings"
)

// refer replaces the words that name bars and hives by references, and gives
// bare numbers in a list of bars their noun.
func (r *reader) refer(items []item) []item {
	n := 0 // items that are kept, at the head of the list
	for i := 0; i < len(items); n++ {
		if r.mayRefer(items, i) {
			if it, back, next := r.reference(items, i, items[:n]); next > i {
				n -= back
				items[n] = *it
				i = next
				continue
			}
		}
		if n < i {
			items[n] = items[i]
		}
		i++
	}
	return items[:n]
}

// mayRefer reports whether a reference can begin at item i; at
// most words it cannot.
func (r *reader) mayRefer(items []item, i int) bool {
	it := &items[i]
	return it.anyOf(toRefer) || i+1 < len(items) && items[i+1].is(kNum) || it.text == "#" || r.severalSpoken || r.byNumber || r.askAll
}

// reference reads a reference to bars or hives that begins at item i; back is how
// many items before it belong to it. It is good until the next is read, as are those
// of the functions below.
func (r *reader) reference(items []item, i int, before []item) (ref *item, back, next int) {
	if i+2 < len(items) && items[i].is(kWhole) && items[i+1].is(kFrom) && items[i+2].is(kNum) && items[i+2].n.hi > items[i+2].n.lo && endsOnBar(items[i].text) {
		items[i].kinds, items[i].says = setOf(kBar), senseless // "on every bar from two to eight"
	}
	if items[i].anyOf(beginsBars) || items[i].text == "#" {
		if ref, next := r.barRef(items, i, before); next > i {
			return ref, 0, next
		}
	}
	if i+1 < len(items) && items[i+1].is(kNum) && r.namesHives(items, i) {
		ref, next = r.severalHives(items, i)
		return ref, 0, next
	}
	if r.loneNumber(items, i) {
		ref = r.merged(items, i, i+2, nil)
		return r.asHive(ref, formatNumber(items[i+1].n.lo)), 0, i + 2
	}
	if items[i].is(kHive) {
		ref, back, next = r.hiveRef(items, i, before)
		if next+1 < len(items) && items[next].is(kOf) && items[next+1].capital && items[next+1].lists.has(titles) {
			ref.kinds = setOf(kTheirs) // "hive 7 of Mr. Alder"
		}
		return ref, back, next
	}
	return nil, 0, i
}

// toRefer are the kinds of what begins a reference, unless a number stands behind.
var toRefer = beginsBars.or(setOf(kWhole, kHive))

// referring are the kinds of words without which no line refers to bars or hives.
var referring = setOf(kBar, kNum, kHive)

// endsOnBar reports whether the last word of a text is one for bars.
func endsOnBar(text string) bool {
	switch text[strings.LastIndexByte(text, ' ')+1:] {
	case "bar", "bars", "comb", "combs", "frame", "frames":
		return true
	}
	return false
}

// beginsBars are the kinds that a reference to bars can begin with.
var beginsBars = setOf(kBar, kNum, kDate) // a date may be a bar: "on the fifth"

// maxBar bounds what can be a bar's number when no noun says so.
const maxBar = 40

func barNumber(it *item) bool {
	return it.is(kNum) && !it.n.share && !it.n.article && it.n.whole() && it.n.lo >= 1 && it.n.lo <= 99
}

// barRef reads a reference to bars that starts at item i.
func (r *reader) barRef(items []item, i int, before []item) (*item, int) {
	it := &items[i]
	switch {
	case it.is(kBar):
		if i+1 < len(items) && strings.HasPrefix(items[i+1].text, "between") && deedNear(before) {
			return nil, i // "two bars between nine and ten"
		}
		return r.namedBar(items, i)
	case hashNumber(items, i) && (r.listed || r.listing && i > 0):
		return r.namedBar(items, i)
	case it.is(kNum) && it.n.ordinal && it.n.lo == 1 && i+2 < len(items) && barNumber(&items[i+1]) && items[i+2].is(kBar) && items[i+2].pause == none:
		return r.merged(items, i, i+3, spread(nil, quantity{lo: 1, hi: items[i+1].n.lo})), i + 3 // "the first three bars"
	case it.is(kNum) && it.n.ordinal && i+1 < len(items) && items[i+1].is(kBar) && !items[i+1].plural && items[i+1].pause == none && it.n.lo <= maxBar:
		if i+2 < len(items) && barNumber(&items[i+2]) && items[i+2].pause == none {
			return nil, i
		}
		r.byOrder = true
		if last, end := r.toOrdinal(items, i+2, int(it.n.lo)); end > 0 {
			return r.merged(items, i, end, spread(nil, quantity{lo: it.n.lo, hi: float64(last)})), end
		}
		return r.merged(items, i, i+2, []int{int(it.n.lo)}), i + 2
	case it.any(kNum, kDate) && it.n.ordinal && r.ordinalsAhead(items, i) > 0:
		end := r.ordinalsAhead(items, i)
		r.byOrder = true
		return r.merged(items, i, end, r.ordinalBars(items[i:end])), end
	case r.byOrder && it.any(kNum, kDate) && it.n.ordinal:
		bars, next := r.nthBars(items, i, before)
		if len(bars) == 0 {
			return nil, i
		}
		return r.merged(items, i, next, bars), next
	case barNumber(it) && it.n.lo <= maxBar && !it.n.approx && r.bareBar(items, i, before):
		if len(before) > 1 && r.isWord(&before[len(before)-1], "as") {
			return r.merged(items, i, i+1, spread(nil, it.n)), i + 1 // "six same as five, seven …"
		}
		bars, next := r.numberList(items, i, true)
		if len(bars) == 0 {
			return nil, i
		}
		r.listing = true // "eggs on five and six", then "four has sealed brood"
		return r.merged(items, i, next, bars), next
	}
	return nil, i
}

// hashNumber reports whether a number sign and its number stand at item i.
func hashNumber(items []item, i int) bool {
	return items[i].text == "#" && i+1 < len(items) && barNumber(&items[i+1]) && items[i+1].start == items[i].end
}

// namedBar reads "bar four", "bars three to seven and nine", "b4".
func (r *reader) namedBar(items []item, i int) (*item, int) {
	it := &items[i]
	short := it.end-it.start == 1
	j := i + 1
	if j < len(items) && items[j].is(kWord) && items[j].text == "#" {
		j++
	}
	fromTo := j+1 < len(items) && items[j].is(kFrom) && barNumber(&items[j+1]) && (items[j+1].n.hi > items[j+1].n.lo || j+2 < len(items) && r.dashOrTo(&items[j+2]))
	if fromTo {
		j++ // "every bar from 3 through 11"
	}
	if j >= len(items) || !barNumber(&items[j]) || items[j].pause > none && !(items[j].pause == comma) {
		return nil, i
	}
	if j+2 < len(items) && byWord(&items[j+1]) && items[j+2].any(kNum, kMeasure) {
		return nil, i // "bar fifteen comb eight by seven inches"
	}
	if short && items[j].start != it.end && r.text[it.end] != '.' && !spacedLetter(items, i) { // "b4", "b. 4", "B 4: honey"
		return nil, i
	}
	if items[j].n.ordinal || i > 0 && items[i-1].any(kSame, kArt) && !it.plural && j+1 < len(items) && items[j+1].any3(kStage, kCell, kCellKind) && (items[i-1].is(kSame) || r.isWord(&items[i-1], "this", "that", "same", "the same")) {
		return nil, i // "on the same bar one hatched cell"
	}
	plural := it.plural || short || fromTo
	bars, next := r.numberList(items, j, plural)
	if len(bars) == 0 {
		return nil, i
	}
	r.listing = true
	ref := r.merged(items, i, next, bars)
	ref.plural = it.plural
	ref.ranged = items[j].n.hi > items[j].n.lo && next == j+1 || next == j+4 && r.dashOrTo(&items[j+1])
	return ref, next
}

// spacedLetter reports whether a letter for bars that begins a phrase has its number
// behind a space: "B 4: honey", but "B 4 stings" is a hive's.
func spacedLetter(items []item, i int) bool {
	number := &items[i+1]
	if items[i].pause < comma || number.pause > none || i+2 == len(items) {
		return false
	}
	return number.colon || !items[i+2].anyOf(counted)
}

// merged is the item of the words of items i to next.
func (r *reader) merged(items []item, i, next int, bars []int) *item {
	ref := &r.ref
	*ref = items[i]
	ref.kinds = kinds{}
	ref.kinds.add(kBars)
	ref.says = senseless
	ref.to, ref.end = items[next-1].to, items[next-1].end
	ref.text = r.strings.lower(r.text[ref.start:ref.end])
	ref.lists = r.words.find(ref.text).lists
	ref.colon, ref.asked = items[next-1].colon, items[next-1].asked
	for k := i; k < next; k++ {
		ref.misheard = ref.misheard || items[k].misheard
		ref.misspelt = ref.misspelt || items[k].misspelt
	}
	ref.bars = bars
	return ref
}

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
	on := k+1 < len(items) && items[k+1].is(kOn) && items[k+1].pause == none
	if on {
		k++
	}
	return (kind || on) && k+1 < len(items) && items[k+1].is(kBar) && (items[k+1].pause == none || kind && !on && r.text[items[k+1].start-1] == '(')
}

// numberList reads the numbers of bars from item j on: 3, 3-5 and 8, nine ten
// and eleven, two to six except four.
func (r *reader) numberList(items []item, j int, plural bool) ([]int, int) {
	bars := spread(r.barLists.take(usualBars)[:0], items[j].n)
	j++
	closed, excepted := false, false // by an "and", by an "except"
	for j < len(items) {
		sep := &items[j]
		k := j
		closing := false
		except := false
		switch {
		case sep.pause > comma, closed && !excepted && sep.pause == comma && barNumber(sep):
			return bars, j // "nectar on 8 and 9, 10 half built"
		case sep.is(kBut) && r.exceptAt(sep):
			k, except = j+1, true
			if k < len(items) && items[k].is(kBar) {
				k++
			}
		case sep.is(kBar) && sep.pause <= comma && r.shortList(items, j):
			k = j + 1
		case r.dashOrTo(sep) && r.fromTheTo(items, j):
			bars = spread(bars, quantity{lo: float64(bars[0]), hi: items[j+3].n.lo})
			j += 4
			continue
		case r.onBoth(items, j) > 0:
			k, plural = r.onBoth(items, j), true
		case r.dashOrTo(sep) && j+1 < len(items) && items[j+1].is(kBar) && j+2 < len(items) && barNumber(&items[j+2]) && items[j+1].pause == none:
			near, far := bars[len(bars)-1], int(items[j+2].n.lo)
			opens := j < 3 || !items[j-3].any4(kDo, kOf, kArt, kTo)
			if far < near && (r.isWord(sep, "-", "–") || len(bars) == 1 && opens && r.isWord(sep, "to", "down to", "back to")) { // "b10-b6", "from bar ten down to bar six"
				near, far = far, near
			}
			if far <= near {
				return bars, j
			}
			bars = spread(bars, quantity{lo: float64(near), hi: float64(far)})
			j += 3
			continue
		case r.dashOrTo(sep) && j+1 < len(items) && barNumber(&items[j+1]) && items[j+1].pause == none && int(items[j+1].n.lo) < bars[len(bars)-1] && plural && len(bars) == 1 && !(j > 2 && items[j-3].is(kDo)):
			bars = spread(nil, quantity{lo: items[j+1].n.lo, hi: float64(bars[0])}) // "three to one"
			j += 2
			continue
		case sep.is(kAnd):
			if closed && sep.pause == comma && j+1 < len(items) && (items[j+1].is(kBar) || excepted) {
				return bars, j // "eggs on bars 5, 6 and 7, and bars 8 and 9 are …"
			}
			k, closing = j+1, true
			if r.barWithArticle(items, k) {
				k++ // "the bar four and the bar five"
			}
			if k < len(items) && items[k].is(kBar) && r.pairOfBars(items, k-1) {
				plural = true
				k++
			}
		case barNumber(sep) && j > 1 && items[j-2].is(kOn) && sep.pause == none && j+1 < len(items) && items[j+1].any(kBe, kHave):
			return bars, j // "she's on seven six is just eggs"
		case barNumber(sep) && (plural || r.risingTo(items, j, bars)) && len(bars) < 30:
			plural = true
		default:
			return bars, j
		}
		if k+1 < len(items) && (byWord(&items[k+1]) || r.countedOn(items, k)) {
			return bars, j // "b7 22 x 18 cm", "one on b3 and two on b4"
		}
		if k >= len(items) || !barNumber(&items[k]) || items[k].n.ordinal || items[k].n.approx || items[k].n.lo > maxBar {
			return bars, j
		}
		if items[k].pause > comma || closing && items[k].pause != none {
			return bars, j
		}
		if !r.listGoesOn(items, k, plural, closing, sep.pause == comma, bars) {
			return bars, j
		}
		if slices.Contains(bars, int(items[k].n.lo)) != except {
			return bars, j // "honey on ten and eleven but bar twelve is bare", "behind bar nine and bar nine is bare"
		}
		if except {
			drop := spread(nil, items[k].n)
			bars = slices.DeleteFunc(bars, func(b int) bool { return slices.Contains(drop, b) })
		} else {
			bars = spread(bars, items[k].n)
		}
		excepted = excepted || except
		closed = closed || closing || except
		j = k + 1
	}
	return bars, j
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
	if k >= 0 && items[k].any(kOn, kAfter) && and+3 < len(items) && items[and+3].pause == none && items[and+3].any4(kBe, kHave, kContent, kComb) &&
		!r.isWord(&items[and+3], "are", "have", "were", "hold", "had") {
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
	if end >= len(items) || items[end].pause >= comma {
		return true
	}
	if items[j].pause == none {
		return false
	}
	first := j
	for first > 0 && items[first].any(kBar, kNum) && (items[first-1].any(kBar, kNum)) {
		first--
	}
	return items[first].pause >= colon || first == 0
}

func (r *reader) exceptAt(it *item) bool {
	return r.isWord(it, "but", "except", "except for", "excepting", "apart from", "other than", "save for")
}

// listGoesOn tells whether the number at k is another bar of the list or
// counts what follows it ("bar six and two queen cells").
func (r *reader) listGoesOn(items []item, k int, plural, closing, afterComma bool, bars []int) bool {
	n := items[k].n
	if k+1 < len(items) && items[k+1].pause == none {
		next := &items[k+1]
		if next.any6(kCell, kStage, kCellKind, kUnit, kMite, kSign) && !next.any(kComb, kState) && !plural {
			return false
		}
		if next.any4(kCell, kCellKind, kMite, kSign) || next.is(kStage) && k+2 < len(items) && items[k+2].any(kCell, kCellKind) {
			return false
		}
		if next.is(kStage) && !next.is(kComb) && !closing && !afterComma && len(bars) > 0 && int(n.lo) < bars[len(bars)-1]-1 {
			return false // "b6 2 capped"
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
