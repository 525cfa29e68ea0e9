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

// partLabels parts the labels of a line from the answers before them: "Eggs: y  Larvae: n",
// "Queen seen? Y (b6)  Eggs? Y", "eggs y larvae y queen n".
func (r *reader) partLabels(toks []token) {
	if !haveLabels(toks) {
		return // as most lines
	}
	letters, sure := 0, false
	for k := 1; k < len(toks); k++ {
		if toks[k-1].end == toks[k-1].start {
			continue // the heading of a column, not a label
		}
		answer := toks[k].lists&anyAnswer != 0
		if !answer && !toks[k].has(coloned|asked) && !toks[k-1].has(asked) {
			continue
		}
		if toks[k-1].has(asked) && toks[k].id == idNumber && toks[k].pause == stop && toks[k-1].lists.has(labels) {
			toks[k-1].flags, toks[k].pause = toks[k-1].flags&^asked|coloned, colon // "Temper? 2"
		}
		if toks[k].has(coloned) && toks[k].pause == none && r.barsBehindLabel(toks, k-1) {
			toks[k].pause = stop
		}
		if r.answerLetter(&toks[k]) && toks[k].pause == none && toks[k-1].id >= firstWordID {
			letters++
			sure = sure || r.text[toks[k].start]|0x20 == 'y' || k+1 == len(toks) || toks[k+1].pause >= comma // "eggs n larvae n brood" joins them
		}
		if k+1 < len(toks) && toks[k+1].pause < stop && toks[k-1].has(coloned|asked) && labelAt(toks, k+1) {
			toks[k+1].pause = stop
		}
	}
	r.partSpoken(toks)
	if letters < leastLetters || !sure {
		return
	}
	for k := 1; k+1 < len(toks); k++ {
		if r.answerLetter(&toks[k]) && toks[k].pause == none && toks[k+1].pause == none && toks[k].start-toks[k-1].end <= 1 {
			toks[k+1].pause = comma
		}
	}
}

// partSpoken parts things that are answered in turn with yes and no, as they are said: "wasps yes ants no".
func (r *reader) partSpoken(toks []token) {
	for from := 0; from+3 < len(toks); from++ {
		if from > 0 && toks[from].pause == none {
			continue
		}
		var begins []int // of those behind the first
		end := r.spokenAnswer(toks, from)
		for end > 0 && end < len(toks) && toks[end].pause == none {
			begins = append(begins, end)
			end = r.spokenAnswer(toks, end)
		}
		if end == 0 {
			continue // "eggs no larvae on four yes I saw"
		}
		for _, k := range begins {
			toks[k].pause = comma
		}
	}
}

// spokenAnswer is where a word or two with "yes" or "no" behind end, which begin at token k; 0 where they do
// not.
func (r *reader) spokenAnswer(toks []token, k int) int {
	for end := k + 1; end < len(toks) && end <= k+2 && toks[end].pause == none; end++ {
		if r.says(toks[end], "yes", "no", "none") {
			return end + 1
		}
	}
	return 0
}

// haveLabels reports whether some words answer a label or may be one.
func haveLabels(toks []token) bool {
	for k := range toks {
		if toks[k].lists&anyAnswer != 0 || toks[k].has(coloned|asked) {
			return true
		}
	}
	return false
}

// barsBehindLabel reports whether bars, and a label before them, end at token i: "Eggs: b4-6"
// before "Larvae: b5".
func (r *reader) barsBehindLabel(toks []token, i int) bool {
	k := i
	for k > 0 && !toks[k].has(coloned) && (toks[k].id == idNumber || toks[k].id == idDash || r.barNouns.has(toks[k].id) || r.says(toks[k], "b", "&", "+", "and")) {
		k--
	}
	return k < i && toks[k].has(coloned) && toks[k+1].id != idNumber
}

// leastLetters is the number of answers of one letter in a line by which it is a form's,
// where no signs part them from their labels.
const leastLetters = 3

// answerLetter reports whether a token is "y" or "n".
func (r *reader) answerLetter(t *token) bool {
	return t.lists&anyAnswer != 0 && t.end-t.start == 1 && isASCIILetter(r.text[t.start])
}

// labelAt reports whether a label of a few words begins at token i.
func labelAt(toks []token, i int) bool {
	for k := i; k < len(toks) && k < i+longestLabel && (k == i || toks[k].pause == none); k++ {
		if toks[k].has(coloned | asked) {
			return true
		}
	}
	return false
}

// answers turns a form's "Queen cells: N", "Eggs - no" and "larvae? yes" into
// what they say: a no moves before its label, a yes goes.
func (r *reader) answers(items []item) []item {
	if len(items) > 0 && tickMark(&items[0]) {
		return r.ticked(items)
	}
	r.deniedInTurn(items)
	spokenForm(items)
	ticks := false
	for k := range items {
		ticks = ticks || tickMark(&items[k])
	}
	for k := 1; k < len(items); k++ {
		label, it := &items[k-1], &items[k]
		if it.lists&anyAnswer == 0 && !label.asked && !(ticks && it.text == "x") {
			continue
		}
		if label.asked && label.any3(kStores, kBees, kFixture) && it.any4(kStored, kTemper, kStrength, kState) && it.pause < line {
			label.asked, label.colon, it.pause = false, true, colon // "Stores? Adequate"
		}
		yes, no := r.answer(items, k, ticks)
		if !yes && !no {
			continue
		}
		from := labelStart(items, k)
		if from < 0 && no && seenOrNot(items, k) {
			from, items[k-2].pause = k-2, max(items[k-2].pause, comma)
		}
		if from < 0 {
			if no {
				undo(items, k)
			}
			continue
		}
		if from == k-1 {
			r.nameLabel(label)
		}
		label.colon, label.asked = false, false
		if k+1 < len(items) {
			items[k+1].pause = max(items[k+1].pause, comma)
		}
		switch {
		case !yes:
			r.denyLabel(items, from, k)
		case from == k-1 && label.is(kQueen): // "Queen: yes" is that she was seen
			it.kinds, it.says, it.pause = setOf(kSeen), r.seen, none
		case foundSomewhere(items, from, k): // "Q ✓ b5, eggs ✓"
			it.kinds, it.says, it.pause = setOf(kWhole), senseless, none
		default:
			label.colon = label.is(kCell) && k+1 < len(items) && items[k+1].pause == comma && hasKind(items[k+1:], kCell) // "Queen cells? Y, two sealed cells on bar 5"
			items = slices.Delete(items, k, k+1)
			k--
		}
	}
	return items
}

// foundSomewhere reports whether a content that begins at from, and is said at item k to be
// there, is not on the bars that were named before it.
func foundSomewhere(items []item, from, k int) bool {
	return hasKind(items[:from], kBars) && !items[0].is(kBars) && items[from].pause >= comma && items[k-1].is(kContent) && (k+1 == len(items) || !items[k+1].is(kBars))
}

// denyLabel moves the no at item k before its label, which begins at from.
func (r *reader) denyLabel(items []item, from, k int) {
	no := items[k]
	no.kinds, no.says = setOf(kNo), r.denial
	no.start = items[from].start // its words are the label and the answer
	no.pause, no.colon = items[from].pause, false
	no.marks = no.marks&^bullet | items[from].marks&bullet
	copy(items[from+1:k+1], items[from:k])
	items[from], items[from+1].pause = no, none
}

// formLabels are the kinds of words that labels of a form are made of.
var formLabels = setOf(kContent, kCell, kStage, kCellKind, kSign, kQueen, kSeen, kLeaf)

// spokenForm parts the labels of a form that is spoken in one breath, each from the answer to
// the one before: "eggs yes larvae yes capped brood no queen cells none". "No" is the answer
// to what stands before it only where what stands behind has its own, or nothing does.
func spokenForm(items []item) {
	answer := func(k int) bool {
		return items[k].lists&anyAnswer != 0 && items[k].pause == none && items[k].text[0] < utf8.RuneSelf
	}
	yes := 0
	for k := 1; k < len(items); k++ {
		if answer(k) && items[k].text == "yes" && items[k-1].anyOf(formLabels) {
			yes++
		}
	}
	if yes < 2 {
		return
	}
	for k := 1; k < len(items); k++ {
		if !answer(k) || !items[k-1].anyOf(formLabels) {
			continue
		}
		next := k + 1
		for next < len(items) && items[next].pause == none && items[next].anyOf(formLabels) {
			next++
		}
		if items[k].text != "yes" && k+1 < len(items) && items[k+1].pause < comma && (next == k+1 || next == len(items) || !answer(next)) {
			continue
		}
		from := k - 1
		for from > 0 && items[from].pause == none && items[from-1].anyOf(formLabels) {
			from--
		}
		items[from].pause = max(items[from].pause, comma)
		if k+1 < len(items) && !items[k+1].any4(kOn, kBar, kBars, kNum) {
			items[k+1].pause = max(items[k+1].pause, comma)
		}
	}
}

// deniedInTurn parts a list of which each thing is denied behind its name, in one breath: "mice no
// wasps no". That the last word is a "no" tells such a list from "no mice no wasps".
func (r *reader) deniedInTurn(items []item) {
	for from := 0; from < len(items); {
		end, denied := r.deniedRun(items, from)
		if denied > 1 && items[end-1].is(kNo) && items[from].anyOf(formLabels) {
			for k := from + 1; k < end; k++ {
				items[k].pause = none
				if items[k-1].is(kNo) {
					items[k].pause = comma
				}
			}
			items[from].pause = max(items[from].pause, comma)
		}
		from = max(end, from+1)
	}
}

// deniedRun is where the words from an item on end that are said in one breath and are nothing but
// things and a "no" behind some of them, and how many have one.
func (r *reader) deniedRun(items []item, from int) (end, denied int) {
	last := false // whether the word before is a "no"
	for end = from; end < len(items); end++ {
		it := &items[end]
		if end > from && (it.start != items[end-1].end+1 || r.text[items[end-1].end] != ' ') {
			break
		}
		no := it.is(kNo) && r.bareNo(it)
		if no && last || !no && !it.anyOf(formLabels) {
			break
		}
		if last = no; no {
			denied++
		}
	}
	return end, denied
}

// seenOrNot reports whether the answer at item k stands without a sign behind whether the queen
// was seen: "temper gentle queen sighted no".
func seenOrNot(items []item, k int) bool {
	return k > 1 && items[k-1].is(kSeen) && items[k-1].pause == none && items[k].pause == none && items[k-2].is(kQueen) && !(k > 2 && items[k-2].pause == none && items[k-3].any(kNo, kUndone))
}

// shortLabel reports whether a word that tells a stage stands for the brood of it as a label,
// "Capped: y".
func shortLabel(it *item) bool {
	return it.is(kStage) && it.isWord3("capped", "sealed", "open")
}

// nameLabel makes of a label that is cut short what it stands for: "Capped: y", "Cells? N".
func (r *reader) nameLabel(it *item) {
	switch {
	case shortLabel(it) && it.text == "open":
		it.kinds, it.says = setOf(kContent), r.openBrood
	case shortLabel(it):
		it.kinds, it.says = setOf(kContent), r.cappedBrood
	case it.is(kCell) && it.text == "cells":
		it.kinds, it.says = setOf(kCell), r.queenCells
	}
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

// answer reports whether the item at k answers the label before it, and how. Beside ticks an x
// is a cross.
func (r *reader) answer(items []item, k int, ticks bool) (yes, no bool) {
	it, label := &items[k], &items[k-1]
	yes, no = it.lists.has(yesAnswers), it.lists.has(noAnswers)
	cross := ticks && it.text == "x"
	if !yes && !no && !cross {
		return false, false
	}
	ends := k+1 == len(items) || items[k+1].pause >= comma
	letter := it.text == "y" || it.text == "n"
	switch {
	case cross && ends:
		return false, true
	case tickMark(it), label.text == "=":
	case !ends:
		return false, false
	case label.colon, label.asked, letter && it.pause == none:
	case dashed(r.text, label, it), strings.Contains(parting(r.text, label, it), "("):
	case no && it.text == "no" && seenOrNot(items, k):
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
		known = known || from == k-1 && shortLabel(&items[from]) || items[from].any(kContent, kCell, kSign, kQueen, kQueenIs, kSeen, kLeaf, kMite, kBees)
		if items[from].any3(kBars, kDo, kPlan) && !(from == k-1 && items[from].is(kQueenIs) && (from == 0 || items[from].pause >= stop)) {
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
