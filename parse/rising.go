package parse

// Lists of numbers that go up, as those of bars do: "six seven and eight".

// upward is such a list as far as it was read.
type upward struct {
	last float64
	many int // bars that it names
}

// add takes a further number or range, and reports whether it is one of bars and above the
// last: "six to eight" are three more.
func (l *upward) add(it *item) bool {
	if !barNumber(it) || it.n.lo <= l.last {
		return false
	}
	l.last = max(it.n.lo, it.n.hi)
	l.many += int(l.last-it.n.lo) + 1
	return true
}

// risingNumbers is where a list of numbers that go up ends that begins at item i, and how many
// they are: "took out ten and eleven". None is a range, and no pause need part them.
func risingNumbers(items []item, i int) (end, many int) {
	var list upward
	for k := i; k < len(items) && (k == i || items[k].pause <= comma); k++ {
		it := &items[k]
		if it.text == "and" && list.many > 0 {
			continue
		}
		if it.n.hi > 0 || !list.add(it) {
			break
		}
		end = k + 1
	}
	return end, list.many
}

// listedSoMany is where a list of just so many bars that begins behind a comma at item from
// ends, with nothing that they count behind them; 0 where there is none: "…, four, five and
// six". Ranges may be among them, and pauses part them.
func listedSoMany(items []item, from, many int) int {
	if from >= len(items) || items[from].pause != comma && items[from].pause != colon {
		return 0
	}
	var list upward
	k := from
	for ; k < len(items) && list.many < many; k++ {
		it := &items[k]
		if it.is(kAnd) && list.many > 0 && it.pause <= comma {
			continue
		}
		if run := list.many > 0 && it.pause == none && !items[k-1].is(kAnd); run || it.pause > colon || !list.add(it) {
			return 0
		}
	}
	if list.many != many || k < len(items) && items[k].pause == none && !items[k].any6(kAnd, kBut, kThen, kBe, kHave, kOn) {
		return 0
	}
	return k
}
