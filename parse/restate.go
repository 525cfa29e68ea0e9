package parse

import "slices"

// notThatBut reports whether a no takes back an amount, a number or bars by naming them
// again: "a litre, no, not a litre, half a litre".
func notThatBut(items []item, k int) bool {
	if k+3 >= len(items) || !items[k+1].is(kNo) {
		return false
	}
	was, is := &items[k+2], &items[k+3]
	return was.is(kBars) && is.is(kBars) || was.is(kNum) && is.is(kNum) || was.any3(kMeasure, kUnit, kWord) && is.is(kMeasure) // "not a" takes its article
}

// belied is the item behind "but no," or "but it is not," from which it is told what
// something is that was first taken for another thing: "I thought it was honey, but no,
// it's nectar"; 0 where "but" at item k is none such.
func belied(items []item, k int) int {
	thought, denied := false, false
	for i := k - 1; i >= 0 && items[i+1].pause < stop; i-- {
		thought = thought || items[i].is(kMaybe)
	}
	for i := k + 1; thought && i+1 < len(items) && i <= k+4; i++ {
		if denied && items[i].pause == comma && items[i].is(kPron) && items[i+1].is(kBe) {
			return i
		}
		if items[i].pause > none || !items[i].any4(kPron, kBe, kNo, kNot) {
			break
		}
		denied = denied || items[i].any(kNo, kNot)
	}
	return 0
}

// deniedAgain is the item behind a repair that tells what something is, where first it is
// said once more what it is not: "a white dot, no, it's not white at all, it's yellow"; 0
// where that is not so.
func (r *reader) deniedAgain(items []item, cue int) int {
	i, denied := cue+1, false
	for ; i < len(items) && items[i].any6(kPron, kShe, kBe, kNo, kNot, kArt) && !items[i].any3(kNum, kBars, kContent); i++ {
		denied = denied || items[i].any(kNo, kNot)
	}
	if !denied || i == len(items) {
		return 0
	}
	was := &items[i]
	slot, ok := slotOf(was, slots)
	if !ok || !saidBefore(items, cue, was, slot) {
		return 0
	}
	for k := i + 1; k < len(items) && k < i+8 && items[k].pause <= comma; k++ {
		is := &items[k]
		if (is.is(slot) || slot == kNum && is.any(kBars, kName)) && !(slot == kNum && is.n.article) {
			if is.text == was.text {
				return 0
			}
			return k
		}
		if !is.any6(kPron, kShe, kBe, kArt, kAdv, kBut) && !is.any(kRepair, kOn) && !is.isWord5("at", "all", "at all", "bar", "hive") {
			return 0
		}
	}
	return 0
}

// saidBefore reports whether the same was said right before a repair.
func saidBefore(items []item, cue int, was *item, slot kind) bool {
	for k := cue - 1; k >= 0 && k >= cue-reach; k-- {
		it := &items[k]
		if it.is(slot) {
			return it.text == was.text
		}
		if slot == kNum && it.is(kBars) {
			return len(it.bars) == 1 && float64(it.bars[0]) == was.n.lo
		}
		if slot == kNum && it.is(kName) {
			return it.name == formatNumber(was.n.lo)
		}
	}
	return false
}

// toldWithNoun are the kinds of what stands before queen cells or a sign and belongs to
// them: how many, which and of what stage.
var toldWithNoun = setOf(kNum, kArt, kStage, kCellKind, kAmount, kAdv)

// nounBehind is the item of queen cells or a sign that the phrase from item i on leads
// to; -1 where there is none, or nothing is told with it.
func nounBehind(items []item, i int) int {
	told := false
	for k := i; k < len(items) && k < i+9 && items[k].pause < stop; k++ {
		switch it := &items[k]; {
		case it.any(kCell, kSign):
			if told {
				return k
			}
			return -1
		case !it.anyOf(toldWithNoun) && !it.any4(kRepair, kPron, kBe, kThere):
			return -1
		case it.any(kNum, kStage) && !it.is(kRepair):
			told = true
		}
	}
	return -1
}

// nounBefore is the item of the same queen cells or sign before a repair; -1 where there
// is none.
func (r *reader) nounBefore(items []item, cue int, of *item) int {
	for k := cue - 1; k >= 0 && k >= cue-reach; k-- {
		it := &items[k]
		if it.is(kCell) && of.is(kCell) || it.is(kSign) && of.is(kSign) && r.value(it, kSign) == r.value(of, kSign) {
			return k
		}
		if it.pause >= stop || it.any5(kCell, kSign, kContent, kQueen, kNum) {
			return -1 // "three cells on bar six, and on bar nine two, no, make that four"
		}
	}
	return -1
}

// restated puts the phrase behind a repair in the place of the one before it, where it
// says anew how many queen cells or of what stage, or how many of a sign: "one capped
// queen cell, no, it's one charged queen cell". Bars named between the two stay, unless
// they are named again.
func (r *reader) restated(items []item, cue int) ([]item, bool) {
	noun := nounBehind(items, cue+1)
	if noun < 0 {
		return stagedAnew(items, cue)
	}
	end := r.nounBefore(items, cue, &items[noun])
	if end < 0 {
		return items, false
	}
	at := end
	for at > 0 && items[at].pause == none && items[at-1].anyOf(toldWithNoun) {
		at--
	}
	from := cue + 1
	for !items[from].anyOf(toldWithNoun) || items[from].is(kRepair) {
		from++
	}
	items[from].pause, items[from].mended, items[noun].mended = items[at].pause, true, true
	kept := slices.Clone(items[end+1 : cue])
	if noun+2 < len(items) && items[noun+1].is(kOn) && items[noun+2].is(kBars) {
		kept = nil
	}
	return append(items[:at], slices.Concat(items[from:noun+1], kept, items[noun+1:])...), true
}

// stagedAnew puts a count and stage of cells behind a repair in the place of those before
// it, where the noun is left out: "one sealed on bar eight, no, sorry, two sealed on eight".
func stagedAnew(items []item, cue int) ([]item, bool) {
	counted := func(k int) bool {
		return k >= 0 && k+3 < len(items) && items[k].is(kNum) && items[k+1].is(kStage) && items[k+2].is(kOn) && items[k+3].is(kBars)
	}
	if at := cue - 4; counted(at) && counted(cue+1) {
		items[cue+1].pause, items[cue+1].mended = items[at].pause, true
		return slices.Delete(items, at, cue+1), true
	}
	return items, false
}
