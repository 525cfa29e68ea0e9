package parse

import "strings"

// refer replaces the words that name bars and hives by references, and gives
// bare numbers in a list of bars their noun.
func (r *reader) refer(items []item) []item {
	n := 0 // items that are kept, at the head of the list
	for i := 0; i < len(items); n++ {
		if k := r.nextToRefer(items, i); k > i {
			if n < i {
				copy(items[n:], items[i:k])
			}
			if n, i = n+k-i, k; i == len(items) {
				break
			}
		}
		if it, back, next := r.reference(items, i, items[:n]); next > i {
			n -= back
			items[n] = *it
			i = next
			continue
		}
		if n < i {
			items[n] = items[i]
		}
		i++
	}
	return items[:n]
}

// nextToRefer is the first item from i on at which a reference can begin; at most words
// none can.
func (r *reader) nextToRefer(items []item, i int) int {
	if r.askAll || i == 0 && r.manner.hivesByCount {
		return i
	}
	for ; i < len(items); i++ {
		if it := &items[i]; it.anyOf(toRefer) || i+1 < len(items) && items[i+1].is(kNum) || it.text == "#" {
			return i
		}
	}
	return i
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
			if r.herOne(before) && !r.findingBehind(items, next) {
				on := &before[len(before)-1]
				on.kinds, on.says, on.text, ref.pause = setOf(kOn), senseless, "on", none
			}
			if n := len(before) - 1; n >= 0 && items[i].is(kBar) && (items[i+1].pause == comma || len(ref.bars) > 1 && items[i+1].pause == none) && before[n].is(kNum) && int(before[n].n.lo) == len(ref.bars) && before[n].n.whole() {
				ref.start, ref.from, ref.pause, ref.ranged = before[n].start, before[n].from, before[n].pause, false
				return ref, 1, next // "four bars, 14 through 17", "brood on five bars four to eight"
			}
			return ref, 0, next
		}
	}
	if i+1 < len(items) && items[i+1].is(kNum) && r.namesHives(items, i) {
		ref, next = r.severalHives(items, i)
		return ref, 0, next
	}
	if r.numberedBar(items, i) {
		if bars, next := r.numberList(items, i+1, true); len(bars) > 0 {
			r.listing = true
			if numberOfBar(items, i) {
				next++
			}
			return r.merged(items, i, next, bars), 0, next
		}
	}
	if r.loneNumber(items, i) {
		ref = r.merged(items, i, i+2, nil)
		return r.asHive(ref, formatNumber(items[i+1].n.lo)), 0, i + 2
	}
	if r.manner.hivesByCount && r.countHead(items, i) {
		return r.asHive(r.merged(items, i, i+1, nil), formatNumber(items[i].n.lo)), 0, i + 1
	}
	if items[i].is(kHive) {
		ref, back, next = r.hiveRef(items, i, before)
		if next+1 < len(items) && items[next].is(kOf) && items[next+1].has(capital) && items[next+1].lists&anyTitle != 0 {
			ref.kinds = setOf(kTheirs) // "hive 7 of Mr. Alder"
		}
		return ref, back, next
	}
	return nil, 0, i
}

// herOne reports whether the words end on where the queen is, which the bar behind them
// names: "the queen's on this one, bar five".
func (r *reader) herOne(before []item) bool {
	n := len(before)
	if n < 2 || !before[n-1].isWord4("on this one", "on that one", "on this", "on it") {
		return false
	}
	return before[n-2].is(kBe) && n > 2 && before[n-3].any(kQueen, kShe) || before[n-2].any3(kQueen, kShe, kSeen)
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
		return r.namedBar(items, i, before)
	case hashNumber(items, i) && !(r.manner.hivesByNumber && it.pause >= stop) && (r.barLines.listed || r.listing && i > 0):
		return r.namedBar(items, i, before)
	case it.is(kNum) && it.n.ordinal && it.n.lo == 1 && i+2 < len(items) && barNumber(&items[i+1]) && items[i+2].is(kBar) && items[i+2].pause == none:
		return r.merged(items, i, i+3, spread(nil, quantity{lo: 1, hi: items[i+1].n.lo})), i + 3 // "the first three bars"
	case it.is(kNum) && it.n.ordinal && i+1 < len(items) && items[i+1].is(kBar) && !items[i+1].plural && items[i+1].pause == none && it.n.lo <= maxBar:
		if i+2 < len(items) && barNumber(&items[i+2]) && items[i+2].pause == none {
			return nil, i
		}
		r.manner.barsByOrder, r.listing = true, true
		if last, end := r.toOrdinal(items, i+2, int(it.n.lo)); end > 0 {
			return r.merged(items, i, end, spread(nil, quantity{lo: it.n.lo, hi: float64(last)})), end
		}
		return r.merged(items, i, i+2, []int{int(it.n.lo)}), i + 2
	case it.any(kNum, kDate) && it.n.ordinal && r.ordinalsAhead(items, i) > 0:
		end := r.ordinalsAhead(items, i)
		r.manner.barsByOrder = true
		return r.merged(items, i, end, r.ordinalBars(items[i:end])), end
	case r.manner.barsByOrder && it.any(kNum, kDate) && it.n.ordinal && it.n.lo <= maxBar && besideNth(items, i, before):
		return r.merged(items, i, i+1, []int{int(it.n.lo)}), i + 1
	case (r.manner.barsByOrder || r.nextInOrder(items[i], before)) && it.any(kNum, kDate) && it.n.ordinal:
		bars, next := r.nthBars(items, i, before)
		if len(bars) == 0 {
			return nil, i
		}
		return r.merged(items, i, next, bars), next
	case barNumber(it) && it.n.bare && it.n.lo <= maxBar && r.cellsThere(before):
		return r.merged(items, i, i+1, spread(nil, it.n)), i + 1
	case barNumber(it) && it.n.lo <= maxBar && !it.n.approx && !(len(before) > 1 && byWord(&before[len(before)-1])) && r.bareBar(items, i, before):
		if len(before) > 1 && before[len(before)-1].text == "as" {
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

// cellsThere reports whether a number of cells and "on" stand right before a number, which
// so names their bar: "sealed cells, four on 5 and one on 8".
func (r *reader) cellsThere(before []item) bool {
	last := len(before) - 1
	return last > 0 && before[last].pause == none && before[last].text == "on" && barNumber(&before[last-1]) && hasKind(before[:last-1], kCell)
}

// hashNumber reports whether a number sign and its number stand at item i.
func hashNumber(items []item, i int) bool {
	return items[i].text == "#" && i+1 < len(items) && barNumber(&items[i+1]) && items[i+1].start == items[i].end
}

// namedBar reads "bar four", "bars three to seven and nine", "b4".
func (r *reader) namedBar(items []item, i int, before []item) (*item, int) {
	it := &items[i]
	short := it.end-it.start == 1
	j := i + 1
	fromTo := j+1 < len(items) && items[j].is(kFrom) && barNumber(&items[j+1]) && (items[j+1].n.hi > items[j+1].n.lo || j+2 < len(items) && r.dashOrTo(&items[j+2]))
	if fromTo {
		j++ // "every bar from 3 through 11"
	}
	if j >= len(items) || !barNumber(&items[j]) || items[j].pause > comma {
		return nil, i
	}
	if j+1 < len(items) && items[j].pause == comma && items[j+1].pause == none && (items[j+1].is(kOf) || i > 0 && items[i-1].is(kArt) && items[j+1].any4(kSign, kCell, kCellKind, kStage)) {
		return nil, i // "two bars, one of honey", "running on the comb, two queen cups"
	}
	if j+2 < len(items) && byWord(&items[j+1]) && items[j+2].any(kNum, kMeasure) && !(items[j+2].is(kNum) && (hasKind(before, kCell) || countsCells(items, j+3))) {
		return nil, i // "bar fifteen comb eight by seven inches", but not "sealed cells: b5 x1"
	}
	if short && items[j].start != it.end && r.text[it.end] != '.' && !spacedLetter(items, i) { // "b4", "b. 4", "B 4: honey"
		return nil, i
	}
	if items[j].n.ordinal || i > 0 && items[i-1].any(kSame, kArt) && !it.plural && j+1 < len(items) && items[j+1].any3(kStage, kCell, kCellKind) && items[i-1].isWord5("this", "that", "same", "the same", "the very same") {
		return nil, i // "on the same bar one hatched cell"
	}
	plural := it.plural || short || fromTo
	bars, next := r.numberList(items, j, plural)
	if len(bars) == 0 || items[j].pause == comma && r.countedOthers(before, bars) {
		return nil, i
	}
	r.listing = true
	ref := r.merged(items, i, next, bars)
	ref.plural = it.plural
	ref.ranged = items[j].n.hi > items[j].n.lo && next == j+1 || next == j+4 && r.dashOrTo(&items[j+1])
	ref.falling = r.falls
	return ref, next
}

// countedOthers reports whether a number counts the noun behind it, and the bars behind a
// comma are not those: "brood 5 bars, 2 empty", but "four bars, 14 through 17".
func (r *reader) countedOthers(before []item, bars []int) bool {
	if len(before) == 0 {
		return false
	}
	count := &before[len(before)-1]
	return barNumber(count) && count.n.bare && int(count.n.lo) != len(bars)
}

// countsCells reports whether a word for queen cells stands at item i: "b5 x3 play cups".
func countsCells(items []item, i int) bool {
	return i < len(items) && items[i].pause == none && (items[i].any(kCell, kCellKind) || i+1 < len(items) && items[i].is(kStage) && items[i+1].any(kCell, kCellKind))
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
		ref.marks |= items[k].marks & (misheard | misspelt)
	}
	ref.bars, ref.falling = bars, false
	return ref
}

// ofIt reads "it" as the content that was named last, where it is told how much of it is
// on another bar: "bar nine is full of nectar and ten is half full of it".
func (r *reader) ofIt(items []item) {
	for i := 2; i < len(items); i++ {
		it, of := &items[i], &items[i-1]
		if !it.is(kPron) || it.text != "it" || it.pause > none || !of.any3(kOf, kFull, kAmount) || !strings.HasSuffix(of.text, "of") {
			continue
		}
		if i+1 < len(items) && items[i+1].pause == none && items[i+1].any4(kContent, kStage, kBe, kNum) {
			continue // "bar four two thirds of it sealed brood"
		}
		elsewhere := i+2 < len(items) && items[i+1].is(kOn) && items[i+2].is(kBars)
		for k := i - 1; k >= 0 && items[k+1].pause < stop && !items[k].any6(kCell, kSign, kQueen, kDo, kNo, kSubstance); k-- {
			if items[k].is(kContent) {
				if elsewhere {
					it.kinds, it.says = items[k].kinds, items[k].says
				}
				break
			}
			elsewhere = elsewhere || items[k].is(kBars) && k > 0 && !items[k-1].is(kOn)
		}
	}
}
