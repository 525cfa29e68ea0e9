package parse

// A deed that is taken back by telling what was done instead.

// redone is the deed by which the one before "no" is taken back: "I closed the entrance
// no I didn't close it I reduced it"; 0 where there is none.
func redone(items []item, no int) int {
	old := doneBefore(items, no)
	for i := no + 1; old >= 0 && i < len(items) && i <= no+7 && items[i].pause <= comma; i++ {
		if items[i].is(kDo) && (items[i-1].is(kPron) || i == no+1) {
			if i == no+1 && (i+1 == len(items) || items[i+1].pause > none || items[i+1].text != items[old+1].text) {
				return 0
			}
			if i+1 < len(items) && items[i+1].pause == none && !items[i+1].any(kPron, kFixture) || items[i].text == items[old].text {
				return 0
			}
			return i
		}
		if !items[i].any5(kPron, kUndone, kNot, kDo, kFixture) {
			return 0
		}
	}
	return 0
}

// doneBefore is the deed done to a fixture right before item i; -1 where there is none.
func doneBefore(items []item, i int) int {
	if i > 2 && items[i-1].is(kFixture) && items[i-2].is(kDo) && items[i-1].pause == none && items[i-3].any3(kPron, kThen, kAnd) {
		return i - 2
	}
	return -1
}

// didInstead puts the deed at item i in the place of the one before "no"; what it was done
// to stays.
func didInstead(items []item, no, i int) []item {
	fresh, rest := items[i], i+1
	fresh.mended, fresh.pause = true, items[no-2].pause
	if rest < len(items) && items[rest].pause == none {
		rest++ // "it", or the same fixture again
	}
	items[no-2] = fresh
	return append(items[:no], items[rest:]...)
}
