package parse

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// anyAnswer are the lists of what answers a label.
const anyAnswer = 1<<yesAnswers | 1<<noAnswers

// longestLabel is how many items a label may have before its answer.
const longestLabel = 5

// answers turns a form's "Queen cells: N", "Eggs - no" and "larvae? yes" into
// what they say: a no moves before its label, a yes goes.
func (r *reader) answers(items []item) []item {
	if len(items) > 0 && tickMark(&items[0]) {
		return r.ticked(items)
	}
	for k := 1; k < len(items); k++ {
		if items[k].lists&anyAnswer == 0 && !items[k-1].asked {
			continue
		}
		if items[k-1].asked && items[k-1].any3(kStores, kBees, kFixture) && items[k].any4(kStored, kTemper, kStrength, kState) && items[k].pause < line {
			items[k-1].asked, items[k-1].colon, items[k].pause = false, true, colon // "Stores? Adequate"
		}
		yes, no := r.answer(items, k)
		if !yes && !no {
			continue
		}
		from := labelStart(items, k)
		if from < 0 {
			if no {
				undo(items, k)
			}
			continue
		}
		it := items[k]
		items[k-1].colon, items[k-1].asked = false, false
		if k+1 < len(items) {
			items[k+1].pause = max(items[k+1].pause, comma)
		}
		if yes && from == k-1 && items[from].is(kQueen) { // "Queen: yes" is that she was seen
			items[k].kinds, items[k].says, items[k].pause = setOf(kSeen), r.seen, none
			continue
		}
		if yes {
			if items[k-1].is(kCell) && k+1 < len(items) && items[k+1].pause == comma && hasKind(items[k+1:], kCell) {
				items[k-1].colon = true // "Queen cells? Y, two sealed cells on bar 5"
			}
			items = append(items[:k], items[k+1:]...)
			k--
			continue
		}
		it.kinds, it.says = setOf(kNo), r.denial
		it.start = items[from].start // its words are the label and the answer
		it.pause, it.colon = items[from].pause, false
		it.marks = it.marks&^bullet | items[from].marks&bullet
		copy(items[from+1:k+1], items[from:k])
		items[from], items[from+1].pause = it, none
	}
	return items
}

// undo makes no deed of one that the answer at item k denies: "Fed today ✗", "Bars
// added: no".
func undo(items []item, k int) {
	for d := k - 1; d >= 0 && d >= k-longestLabel; d-- {
		if it := &items[d]; it.is(kDo) {
			it.kinds, it.says = setOf(kWord), senseless
			items[k].used = true
			return
		}
		if items[d].pause >= comma && d < k-1 {
			return
		}
	}
}

// tickMark reports whether an item is a tick or a cross.
func tickMark(it *item) bool {
	return it.lists&anyAnswer != 0 && it.text[0] >= utf8.RuneSelf
}

// ticked turns the ticks and crosses before what they stand for into what they say:
// "✓ eggs", "✗ queen".
func (r *reader) ticked(items []item) []item {
	for k := 0; k+1 < len(items); k++ {
		it, next := &items[k], &items[k+1]
		switch {
		case !tickMark(it):
			continue
		case it.lists.has(noAnswers):
			it.kinds, it.says = setOf(kNo), r.denial
		case next.is(kQueen):
			it.kinds, it.says = setOf(kSeen), r.seen
		default:
			next.pause = it.pause
			items = slices.Delete(items, k, k+1)
			continue
		}
		next.pause = none
	}
	return items
}

// answer reports whether the item at k answers the label before it, and how.
func (r *reader) answer(items []item, k int) (yes, no bool) {
	it, label := &items[k], &items[k-1]
	yes, no = it.lists.has(yesAnswers), it.lists.has(noAnswers)
	if !yes && !no {
		return false, false
	}
	ends := k+1 == len(items) || items[k+1].pause >= comma
	letter := it.text == "y" || it.text == "n"
	switch {
	case tickMark(it), label.text == "=":
	case !ends:
		return false, false
	case label.colon, label.asked, letter && it.pause == none:
	case dashed(r.text, label, it), strings.Contains(parting(r.text, label, it), "("):
	case it.pause == none && !it.is(kNum) && label.pause >= comma && (k+1 == len(items) || !items[k+1].any(kBars, kNum) || items[k+1].pause >= stop): // "eggs no, larvae yes"
	default:
		return false, false
	}
	return yes, no
}

// labelStart is where the label before the answer at k begins, or -1 where the
// words before it name nothing that can be there or not.
func labelStart(items []item, k int) int {
	known := false
	for from := k - 1; from >= 0 && from >= k-longestLabel; from-- {
		known = known || items[from].any(kContent, kCell, kSign, kQueen, kQueenIs, kSeen, kLeaf, kMite, kBees)
		if items[from].any3(kBars, kDo, kPlan) && !(from == 0 && k == 1 && items[from].is(kQueenIs)) {
			return -1
		}
		if from == 0 || items[from].pause >= comma {
			if !known {
				return -1
			}
			return from
		}
	}
	return -1
}
