package parse

import "slices"

// What is counted first and then named by number: "two bare bars at the back, ten and
// eleven", "three bars of capped brood, four, five and six".

// apposed puts the numbers of bars that were counted right before them behind their noun,
// and what the bars are like behind those: "bars ten and eleven bare at the back".
func (r *reader) apposed(items []item) []item {
	for i := 0; i+4 < len(items); i++ {
		if !items[i].is(kNum) || !countsSome(&items[i]) {
			continue
		}
		noun := r.ofTheBars(items, i+1)
		for noun < len(items) && noun <= i+2 && items[noun].pause == none && !items[noun].is(kBar) && (items[noun].any(kComb, kState) || r.isWord(&items[noun], r.wordsOf[newOnes]...)) {
			noun++
		}
		if noun == len(items) || !items[noun].is(kBar) || !items[noun].plural || items[noun].pause > none {
			continue
		}
		from := noun + 1
		verb := from < len(items) && items[from].isWord4("are", "were", "have", "had") && items[from].pause == none
		for from < len(items) && from <= noun+5 && items[from].pause == none && (items[from].anyOf(toldOfCounted) || verb && items[from].anyOf(toldByVerb)) {
			from++
		}
		end := listedSoMany(items, from, int(items[i].n.lo))
		if verb && end > 0 && end < len(items) && items[end].pause <= comma && items[end].any4(kBe, kHave, kContent, kComb) {
			continue // "two bars are bare, nine and ten are full"
		}
		if end == 0 || from == noun+1 && noun == i+1 || countsOthers(items, end) { // "four bars, 14 through 17" is read as it stands
			continue
		}
		told := slices.Clone(items[noun+1 : from])
		if !items[i+1].is(kOf) {
			told = append(slices.Clone(items[i+1:noun]), told...)
		}
		bars := append([]item{items[noun]}, items[from:end]...)
		bars[0].pause, bars[1].pause = items[i].pause, none
		n := copy(items[i:], bars)
		n += copy(items[i+n:], told)
		items = slices.Delete(items, i+n, end)
		i += n - 1
	}
	return items
}

// ofTheBars is where the noun of what is counted begins at item k: behind "of the" in "two of the
// bars".
func (r *reader) ofTheBars(items []item, k int) int {
	if k+2 < len(items) && items[k].is(kOf) && items[k].pause == none && items[k+1].is(kArt) && items[k+2].is(kBar) && items[k+1].pause == none {
		return k + 2
	}
	return k
}

// countsOthers reports whether more bars are counted from item k on: "…, and two of honey".
func countsOthers(items []item, k int) bool {
	for k < len(items) && items[k].pause <= comma && items[k].is(kAnd) {
		k++
	}
	return k+1 < len(items) && items[k].pause <= comma && items[k].is(kNum) && items[k+1].any(kOf, kBar) && items[k+1].pause == none
}

// toldOfCounted are the kinds of words that tell what the bars counted hold and where they are.
var toldOfCounted = setOf(kOf, kContent, kStage, kSide, kPlace, kAdv, kPattern)

// toldByVerb are those of what they are or have: "two bars are wavy, nine and ten".
var toldByVerb = setOf(kBe, kHave, kComb, kState, kFull, kArt, kAmount, kNum, kAnd)

// countsSome reports whether a number counts a few bars.
func countsSome(it *item) bool {
	return it.n.whole() && !it.n.article && !it.n.share && !it.n.ordinal && it.n.hi == 0 && it.n.lo >= 2 && it.n.lo <= maxBar
}
