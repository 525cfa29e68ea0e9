package parse

import "slices"

// Deeds that a label names, with what was done behind it: "Harvest: 2 bars, 3 kg", "Bars
// added: 2", "Feed given: 2 lb fondant", "OA trickle 35 ml".

// countedOrWeighed are the kinds of words that tell how much of it was done.
var countedOrWeighed = setOf(kNum, kMeasure, kBars)

// deedLabels gives such labels the words of a sentence.
func (r *reader) deedLabels(items []item) []item {
	for i := 0; i < len(items); i++ {
		it := &items[i]
		if !it.any(kBar, kDo) {
			continue // as most words
		}
		switch heads := i == 0 || it.pause >= stop; {
		case (heads || items[i-1].is(kName)) && it.is(kBar) && it.plural && i+2 < len(items):
			countBefore(items, i)
		case it.is(kDo) && i > 0 && it.pause == none && items[i-1].is(kSubstance) && it.isWord3("trickle", "dribble", "vape") && !(i > 1 && items[i-2].any(kTo, kPlan)):
			if i+1 < len(items) && items[i+1].is(kMeasure) && items[i+1].pause <= comma {
				items = slices.Delete(items, i, i+1)
			}
		case !heads && !(it.colon && headsLabel(items, i)) || !it.is(kDo) || i+1 == len(items):
		case it.text == "feed" && items[i+1].isWord2("given", "supplied") && items[i+1].pause == none && items[i+1].colon:
			items[i+1].pause, items[i+1].marks = it.pause, it.marks
			items = slices.Delete(items, i, i+1)
		case it.colon && r.labelsDone(items, i):
			it.kinds, it.says = setOf(kDo), r.harvested
			if it.text == "feed" {
				it.says = r.fed
			}
		}
	}
	return items
}

// headsLabel reports whether nothing but little words that lead on stands before a label at item
// i in its sentence: "then the harvest: four bars".
func headsLabel(items []item, i int) bool {
	for ; i > 0 && items[i].pause < stop; i-- {
		if !items[i-1].any4(kThen, kArt, kAnd, kNow) {
			return false
		}
	}
	return true
}

// labelsDone reports whether the verb at item i is a label with bars or amounts behind it and
// no day to come.
func (r *reader) labelsDone(items []item, i int) bool {
	next := &items[i+1]
	if !items[i].isWord2("harvest", "feed") || !next.any3(kMeasure, kBars, kNum) || next.is(kNum) && !(i+2 < len(items) && items[i+2].any(kBar, kBars)) {
		return false
	}
	for k := i + 1; k < len(items) && items[k].pause < stop; k++ {
		if items[k].any(kDate, kPlan) || items[k].is(kSubstance) {
			return false
		}
	}
	return true
}

// countBefore puts the number of bars before them where it stands behind what was done:
// "bars added 2".
func countBefore(items []item, i int) {
	do, count := &items[i+1], &items[i+2]
	if !do.is(kDo) || do.pause > none || !do.isWord3("added", "removed", "harvested") || !barNumber(count) || count.n.hi > 0 || count.n.lo >= manyBars || count.pause > colon || count.pause > none && !do.colon || i+3 < len(items) && (items[i+3].pause == none || items[i+3].is(kNum)) {
		return
	}
	n, bars := *count, items[i]
	n.pause, n.marks, bars.pause = bars.pause, n.marks|bars.marks&bullet, none
	verb := *do
	verb.colon = false
	items[i], items[i+1], items[i+2] = n, bars, verb
}
