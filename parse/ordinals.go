package parse

import "slices"

// ordinalsAhead is the end of a list of places in the order that a word for bars
// closes: "the fourth and fifth bars", "the third to the seventh combs"; 0 where there
// is none.
func (r *reader) ordinalsAhead(items []item, i int) int {
	k, nths := i+1, 1
	for k < len(items) && items[k].pause <= comma {
		it := &items[k]
		switch {
		case it.any(kNum, kDate) && it.n.ordinal && it.n.lo <= maxBar:
			nths++
		case it.is(kBar):
			if nths < 2 || k+1 < len(items) && barNumber(&items[k+1]) && items[k+1].pause == none {
				return 0
			}
			return k + 1
		case it.any(kAnd, kArt) || r.dashOrTo(it):
		default:
			return 0
		}
		k++
	}
	return 0
}

// ordinalBars are the bars of such a list.
func (r *reader) ordinalBars(items []item) []int {
	var bars []int
	for k := range items {
		it := &items[k]
		if !it.any(kNum, kDate) || !it.n.ordinal {
			continue
		}
		nth := int(it.n.lo)
		from := k - 1
		if from > 0 && items[from].is(kArt) {
			from--
		}
		if from > 0 && r.dashOrTo(&items[from]) && len(bars) > 0 && bars[len(bars)-1] < nth {
			bars = spread(bars, quantity{lo: float64(bars[len(bars)-1]), hi: float64(nth)})
			continue
		}
		bars = append(bars, nth)
	}
	return bars
}

// toOrdinal reads the far end of "the second comb to the eighth" behind the near one:
// the bar, and where it ends; 0 where there is none.
func (r *reader) toOrdinal(items []item, k, near int) (bar, end int) {
	if k >= len(items) || !r.dashOrTo(&items[k]) {
		return 0, 0
	}
	if k++; k < len(items) && items[k].is(kArt) && !items[k].is(kNum) {
		k++
	}
	if k >= len(items) || !items[k].any(kNum, kDate) || !items[k].n.ordinal || items[k].n.lo > maxBar || int(items[k].n.lo) <= near {
		return 0, 0
	}
	bar = int(items[k].n.lo)
	if k++; k < len(items) && items[k].is(kBar) && items[k].pause == none {
		k++
	}
	return bar, k
}

// nthBars are the bars of a note that tells them by their order: "the first comb
// is honey, the second pollen, the third and fourth …".
func (r *reader) nthBars(items []item, i int, before []item) (bars []int, next int) {
	if r.cellTalk || !r.nthHeads(items[i], before) {
		return nil, i
	}
	for next = i; next < len(items) && items[next].n.ordinal && items[next].n.lo <= maxBar; {
		bars = append(bars, int(items[next].n.lo))
		if next++; next < len(items) && items[next].pause == none && items[next].text == "one" {
			next++
		}
		if next < len(items) && items[next].pause <= comma && items[next].n.ordinal && int(items[next].n.lo) == bars[len(bars)-1]+1 && !items[next].is(kDate) {
			continue // "third fourth and fifth"
		}
		and := next
		for next < len(items) && (items[next].is(kAnd) && next == and || items[next].text == "the") {
			next++
		}
		if next == and || next == len(items) || !items[next].n.ordinal {
			next = and
			break
		}
	}
	told := next < len(items) && items[next].pause <= comma && items[next].any(kContent, kComb, kFull, kHave, kBe, kAmount, kPattern, kSame, kStage, kNo, kAdv, kThere)
	told = told || next+1 < len(items) && items[next].n.share && items[next+1].any(kFull, kContent, kComb) // "the fourth half full of honey"
	told = told || len(bars) == 1 && next < len(items) && items[next].pause <= comma && items[next].anyOf(behindNth) && r.nextNth(bars[0], before)
	if !told && !items[i].is(kDate) { // "on the fifth" needs no word behind it
		return nil, i
	}
	return bars, next
}

// besideNth reports whether a bar's place in the order tells where a deed puts another:
// "added a bar after the seventh".
func besideNth(items []item, i int, before []item) bool {
	n := len(before)
	if n < 2 || before[n-1].text != "the" || !before[n-2].any3(kAfter, kFore, kTween) || !deedNear(before) {
		return false
	}
	return i+1 == len(items) || items[i+1].pause > none || items[i+1].any3(kAnd, kDate, kThen)
}

// nthHeads reports whether a bar's place in the order is the next, and begins
// what is said of it.
func (r *reader) nthHeads(nth item, before []item) bool {
	end := len(before) - 1
	parted := nth.pause >= comma || nth.is(kDate)
	if end >= 0 && !parted && before[end].text == "the" {
		parted = before[end].pause >= comma
		end--
	}
	return (parted || end < 0 || !before[end].anyOf(leadsToNumber) && !before[end].is(kBe)) && r.follows(int(nth.n.lo), before[:end+1])
}

// nextInOrder reports whether "the" and a place in the order begin a statement behind
// numbered bars, and the place is the next: "bars one to three are honey; the fourth is
// pollen".
func (r *reader) nextInOrder(nth item, before []item) bool {
	end := len(before) - 1
	if end < 0 || !nth.n.ordinal || nth.pause > none || before[end].text != "the" || before[end].pause < comma {
		return false
	}
	bars := r.bars
	for k := range before {
		if len(before[k].bars) > 0 {
			bars = before[k].bars
		}
	}
	return len(bars) > 1 && int(nth.n.lo) == slices.Max(bars)+1
}
