package parse

import "slices"

// More bars of which holds what was told of others: "bars eight and nine are full of honey, ten
// too".

// alsoOn puts bars behind which "too" stands to those that were told of right before them.
func (r *reader) alsoOn(items []item) []item {
	for i := 2; i+1 < len(items); i++ {
		if !items[i].is(kBars) || items[i].taken {
			continue
		}
		end := r.tooAt(items, i+1)
		first := tooBegins(items, i)
		if end == 0 || first == 0 {
			continue
		}
		old := toldJustBefore(items, first)
		if old < 0 {
			continue
		}
		more := &items[old]
		more.bars = slices.Concat(more.bars, items[i].bars)
		slices.Sort(more.bars)
		more.bars, more.ranged, more.plural = slices.Compact(more.bars), false, true
		items = slices.Delete(items, first, end)
		i = first - 1
	}
	return items
}

// tooAt is where "too", or "has too", that ends what is said and begins at item k, ends; 0 where
// it does not stand there.
func (r *reader) tooAt(items []item, k int) int {
	if k+1 < len(items) && items[k].any(kBe, kHave) && items[k].pause == none {
		k++
	}
	if k >= len(items) || items[k].pause > none || !r.isWord(&items[k], r.wordsOf[andSo]...) {
		return 0
	}
	if k++; k < len(items) && items[k].pause == none && !items[k].any3(kAnd, kBut, kThen) {
		return 0 // "bar nine too small"
	}
	return k
}

// tooBegins is where it begins to be told of the bars at item i: at a pause or "and"; 0 where
// they stand behind another word.
func tooBegins(items []item, i int) int {
	if items[i-1].is(kAnd) && items[i].pause == none {
		return i - 1
	}
	if items[i].pause >= comma {
		return i
	}
	return 0
}

// toldJustBefore is the item of the bars of which something is told in the statement that ends
// before item first; -1 where they are none, or only where something went.
func toldJustBefore(items []item, first int) int {
	told := false
	for k := first - 1; k >= 0; k-- {
		it := &items[k]
		if it.is(kBars) {
			led := k > 0 && items[k-1].any6(kTo, kAfter, kTween, kFrom, kFore, kOf)
			if led || it.taken || !told && !foundOn(items, k) {
				return -1
			}
			return k
		}
		if it.any3(kQueen, kShe, kName) || it.pause > stop {
			return -1
		}
		told = told || it.anyOf(foundThings) || it.any3(kState, kFull, kDo)
	}
	return -1
}

// foundOn reports whether the bars at item k are those on which something was found that is named
// before them: "eggs on bar four".
func foundOn(items []item, k int) bool {
	if k < 2 || !items[k-1].is(kOn) {
		return false
	}
	for k -= 2; k >= 0 && !items[k].any(kQueen, kShe); k-- {
		if items[k].anyOf(foundThings) {
			return true
		}
		if items[k].pause >= stop {
			break
		}
	}
	return false
}

// tooTold reports whether the number, or the list that it begins, is of bars of which holds too
// what was told of others: "bars eight and nine are full of honey, ten too".
func (n *bareNumber) tooTold() bool {
	if !hasKind(n.before, kBars) || n.close && !n.prev.is(kAnd) {
		return false
	}
	k := n.i + 1
	for k+1 < len(n.items) && n.items[k].pause <= comma && (n.items[k].is(kAnd) && barNumber(&n.items[k+1]) || barNumber(&n.items[k])) {
		k++
	}
	return n.tooAt(n.items, k) > 0
}
