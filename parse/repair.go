package parse

import (
	"slices"
	"strings"
)

// mending are the kinds of words that take back what was said.
var mending = setOf(kScratch, kRepair, kNo)

// repair mends what the speaker took back: "bar five no sorry bar six", "three
// no four", "scratch that". The new word takes the place of the last one of
// its kind; what it replaced stays in the evidence and the leaf is flagged.
func (r *reader) repair(items []item) []item {
	for k := 0; k < len(items); k++ {
		if !items[k].anyOf(mendsAt) {
			continue
		}
		if mended, ok := r.mendAt(items, k); ok {
			items, k = mended, -1
		}
	}
	return items
}

// mendsAt are the kinds of words that can be a cue to mend.
var mendsAt = mending.or(setOf(kComb, kBut))

// mendAt mends what item k takes back, if it is a cue that does.
func (r *reader) mendAt(items []item, k int) ([]item, bool) {
	it := &items[k]
	if it.anyOf(mending) && (!it.is(kNo) || r.bareNo(it)) && listAgain(items, k) {
		return slices.Delete(items, k, k+4), true
	}
	if it.is(kRepair) || it.is(kNo) && r.bareNo(it) {
		if from := r.deniedAgain(items, k); from > 0 {
			return r.replace(items, k, from, false)
		}
	}
	switch {
	case it.is(kScratch):
		return r.scratch(items, k), true
	case it.text == "hang on" && cellsHang(items, k):
		it.kinds, it.says = setOf(kOn), senseless
	case it.is(kRepair) && r.answersSelf(items, k):
		it.kinds, it.says, it.pause = setOf(kYes), senseless, max(it.pause, comma)
	case it.is(kComb) && r.noComb(items, k):
		items[k+1].pause = items[k-1].pause
		return slices.Delete(items, k-1, k+1), true
	case it.is(kBut):
		if from := belied(items, k); from > 0 {
			return r.replace(items, k, from, false)
		}
	case it.is(kRepair) && misspoken(items, k):
		return slices.Delete(items, k-1, k+1), true
	case (it.is(kRepair) || it.is(kNo) && r.bareNo(it)) && butNotThat(items, k):
		return slices.Delete(items, k, k+3), true
	case it.is(kRepair) && otherEnd(items, k):
		return slices.Delete(items, k, k+3), true
	case it.is(kRepair):
		if mended, ok := r.restated(items, k); ok {
			return mended, true
		}
		if deed := redone(items, k); deed > 0 {
			return didInstead(items, k, deed), true
		}
		return r.replace(items, k, k+1, false)
	case it.is(kNo) && r.bareNo(it) && answeredNo(items, k):
		items[k+1].pause = items[k-2].pause
		return slices.Delete(items, k-2, k+1), true
	case it.is(kNo) && r.bareNo(it):
		if from := sawNot(items, k); from >= 0 {
			return takeOut(items, from, k+3, colon), true
		}
		if deed := redone(items, k); deed > 0 {
			return didInstead(items, k, deed), true
		}
		if notThatBut(items, k) {
			return r.replace(items, k, k+3, false)
		}
		return r.replace(items, k, k+1, true)
	}
	return items, false
}

// listAgain reports whether a list of two bars is told anew behind item k, with one of the two in
// it, and takes it: "on bars nine and ten, no, nine and eleven".
func listAgain(items []item, k int) bool {
	if k == 0 || k+3 >= len(items) || !items[k+2].is(kAnd) || items[k+3].pause > none || !barNumber(&items[k+1]) || !barNumber(&items[k+3]) {
		return false
	}
	old := &items[k-1]
	first, last := int(items[k+1].n.lo), int(items[k+3].n.lo)
	if !old.is(kBars) || old.ranged || len(old.bars) != 2 || old.bars[0] != first && old.bars[1] != last {
		return false
	}
	old.bars, old.mended = []int{first, last}, true
	return true
}

// misspoken reports whether the word that item k takes back is none of the trade, behind one that
// asks for what is told right: "capped blood I mean brood".
func misspoken(items []item, k int) bool {
	return k > 1 && k+1 < len(items) && items[k].pause == none && items[k-1].is(kWord) && items[k-1].pause == none && items[k-2].any(kStage, kCellKind) && items[k+1].any(kContent, kCell)
}

// butNotThat reports whether a bar is taken back behind item k from the bars told before it, and
// takes it from them: "bars three to six capped brood, hang on, not six".
func butNotThat(items []item, k int) bool {
	if k == 0 || k+2 >= len(items) || items[k+1].text != "not" || !barNumber(&items[k+2]) || items[k+2].pause > none {
		return false
	}
	for i := k - 1; i >= 0 && i >= k-reach; i-- {
		old := &items[i]
		if !old.is(kBars) {
			continue
		}
		at := slices.Index(old.bars, int(items[k+2].n.lo))
		if at < 0 || len(old.bars) < 2 {
			return false
		}
		old.bars, old.mended = slices.Delete(slices.Clone(old.bars), at, at+1), true
		return true
	}
	return false
}

// sawNot is where what was seen or done begins that a bare "no" at item k takes back, with "I
// didn't" behind it: "saw the queen no I didn't that was a drone"; -1 where nothing is.
func sawNot(items []item, k int) int {
	if k+2 >= len(items) || items[k].pause > comma || !items[k+1].isWord2("i", "we") || items[k+1].pause > comma || !items[k+2].is(kUndone) || items[k+2].pause > none || !strings.HasPrefix(items[k+2].text, "did") {
		return -1
	}
	if next := at(items, k+3); next != &noItem && next.pause == none && !next.isWord4("that", "it", "so", "there") && !next.is(kThen) {
		return -1
	}
	for i := k - 1; i >= 0 && i >= k-reach && !items[i].any(kBars, kName); i-- {
		if items[i].any(kSeen, kDo) {
			for i > 0 && items[i].pause == none && items[i-1].any3(kPron, kAdv, kHave) {
				i--
			}
			return i
		}
		if items[i].pause >= stop {
			break
		}
	}
	return -1
}

// takeOut takes out the items that a speaker takes back. What follows stands behind the pause
// that they stood behind, and at least behind another: "saw the queen no I didn't".
func takeOut(items []item, from, end int, least pause) []item {
	first := items[from].pause
	items = slices.Delete(items, from, end)
	if from < len(items) {
		items[from].pause = max(items[from].pause, first, least)
	}
	return items
}

// otherEnd reports whether a range of bars gets another end behind item k, and gives it:
// "moved bar two to seven no sorry to eight".
func otherEnd(items []item, k int) bool {
	if k == 0 || k+2 >= len(items) || !items[k-1].is(kBars) || !items[k-1].ranged || !items[k+1].is(kTo) || !barNumber(&items[k+2]) {
		return false
	}
	first, last := items[k-1].bars[0], int(items[k+2].n.lo)
	if last <= first {
		return false
	}
	items[k-1].bars, items[k-1].mended = spread(nil, quantity{lo: float64(first), hi: float64(last)}), true
	return true
}

// cellsHang reports whether item k tells where queen cells are and takes nothing back:
// "two sealed cells hang on bar 9".
func cellsHang(items []item, k int) bool {
	return k > 0 && k+1 < len(items) && items[k].pause == none && items[k+1].pause == none && items[k+1].is(kBars) && items[k-1].any3(kCell, kThen, kPron)
}

// answersSelf reports whether "no it's" answers a question of the same sentence, and
// takes nothing back: "is that a queen cell on six no it's an empty cup".
func (r *reader) answersSelf(items []item, k int) bool {
	if !items[k].isWord5("no it's", "no it is", "no that's", "no that is", "no there's") {
		return false
	}
	for k--; k >= 0 && items[k+1].pause < stop; k-- {
		if items[k].is(kAsk) {
			return true
		}
	}
	return false
}

// answeredNo reports whether the "no" at item k answers what was asked aloud right before,
// and is said again with what was asked for: "is that mice, no, no mice".
func answeredNo(items []item, k int) bool {
	return k > 1 && k+2 < len(items) && items[k-2].is(kAsk) && items[k+1].is(kNo) && items[k+2].text == items[k-1].text
}

func (r *reader) bareNo(it *item) bool {
	return it.end-it.start == 2 && r.text[it.start]|0x20 == 'n'
}

// scratch drops the last thing said: back to the bar, the pause or the
// beginning.
func (r *reader) scratch(items []item, k int) []item {
	from := k
	for from > 0 && from > k-reach {
		from--
		if items[from].any(kBars, kName) || items[from].pause >= comma || items[from].any(kAnd, kThen) {
			break
		}
	}
	if k+1 < len(items) { // what follows may show what is meant
		if mended, ok := r.replace(items, k, k+1, false); ok {
			return mended
		}
	}
	if items = takeOut(items, from, k+1, none); from < len(items) {
		items[from].mended = true
	}
	return items
}

// noComb reports whether "no comb" between two bars takes back the first, where combs are
// what the bars are called: "comb three no comb four is honey".
func (r *reader) noComb(items []item, k int) bool {
	if it := &items[k]; it.text != "no comb" || it.pause > none || k == 0 || k+2 >= len(items) || items[k+1].pause > none {
		return false
	}
	bar, next := &items[k-1], &items[k+1]
	return bar.is(kBars) && strings.HasPrefix(bar.text, "comb ") && len(bar.bars) == 1 && next.is(kBars) && len(next.bars) == 1 && !strings.HasPrefix(next.text, "comb") && items[k+2].any4(kBe, kHave, kContent, kFull)
}
