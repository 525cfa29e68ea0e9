package parse

import "slices"

// What is looked for and not found, "looked for queen cells on bars five to eight and found
// none", is denied where it stands: the answer moves before it.

// ofSearch are the kinds of words that stand between what is looked for and the answer.
var ofSearch = setOf(kOn, kBars, kBar, kArt, kAnd, kOr, kBut, kCell, kCellKind, kStage, kSign, kContent, kQueen, kLeaf, kAmount, kWhole, kEach, kPron, kSeen, kAdv, kDur)

// ofSought are the kinds of what is looked for.
var ofSought = setOf(kCell, kContent, kSign, kQueen, kStage, kCellKind, kMite, kLeaf)

// soughtItems moves the answer of a search before what was looked for.
func (r *reader) soughtItems(items []item) []item {
	for i := 1; i < len(items); i++ {
		if !items[i].is(kOn) || items[i].text != "for" || items[i].pause > none || !r.seeks(items, i) {
			continue
		}
		thing := i + 1
		for thing < len(items) && items[thing].any3(kArt, kAdv, kAmount) && items[thing].pause == none {
			thing++
		}
		if thing == len(items) || items[thing].pause > none || !items[thing].anyOf(ofSought) {
			continue
		}
		from, to := r.fruitless(items, thing+1)
		if from < 0 {
			continue
		}
		no := items[to-1]
		no.kinds, no.says, no.pause = setOf(kNo), r.denial, none
		items[i] = no
		items = slices.Delete(items, i+1, thing)
		gone := thing - i - 1
		items = r.dropReply(items, from-gone, to-gone, comma)
	}
	return items
}

// seeks reports whether a verb of looking leads to "for" at item i, at most with a place
// between.
func (r *reader) seeks(items []item, i int) bool {
	for k := i - 1; k >= 0 && i-k <= 4; k-- {
		if r.isWord(&items[k], r.wordsOf[seeking]...) {
			return k == 0 || !items[k-1].any4(kUndone, kPlan, kWill, kIf)
		}
		if !items[k].any5(kOn, kBars, kEach, kAdv, kWhole) || items[k+1].pause > none {
			return false
		}
	}
	return false
}

// fruitless finds the answer that a search was in vain, from item k on: none of its own
// objects behind it, and nothing else told before it.
func (r *reader) fruitless(items []item, k int) (from, to int) {
	for last := k + longestAside; k < len(items) && k < last && items[k].pause < stop; k++ {
		it := &items[k]
		if it.any3(kUnseen, kNo, kNot) || r.isWord(it, r.wordsOf[nothingFound]...) {
			to = k + 1
			if to < len(items) && items[to].isWord5("one", "luck", "joy", "there", "at all") {
				to++
			}
			if to < len(items) && items[to].pause == none && !items[to].any3(kAnd, kBut, kBars) {
				return -1, -1
			}
			return k, to
		}
		if !it.anyOf(ofSearch) {
			break
		}
	}
	return -1, -1
}
