package parse

import "slices"

// A subject that an aside parts from its verb, "the queen, who had hidden from me in May,
// was on bar six", is said again in front of the verb: the aside then has its own mood, and
// what is told of the subject stands together.

// ofSubject are the kinds of words that such a subject is made of.
var ofSubject = setOf(kArt, kQueen, kBars, kBar, kOn, kComb, kAdv, kFixture, kName)

// longestSubject is the number of items that are sought for a subject.
const longestSubject = 5

// subjectsAgain returns the items of a sentence with each subject said again behind an aside
// that parts it from its verb.
func (r *reader) subjectsAgain(items []item) []item {
	for i := 1; i < len(items); i++ {
		if !r.asideBegins(items, i) {
			continue
		}
		from, verb := r.subjectBefore(items, i), r.verbBehindAside(items, i)
		if from < 0 || verb < 0 {
			continue
		}
		again := slices.Clone(items[from:i])
		again[0].pause = colon
		items = slices.Concat(items[:verb], again, items[verb:])
		i = verb + len(again)
		items[i].pause = none
	}
	return items
}

// asideBegins reports whether an aside begins at item i: with a relative, or between commas
// with what was or was not seen, or a day gone by.
func (r *reader) asideBegins(items []item, i int) bool {
	if items[i].pause == comma && items[i].any3(kTo, kOn, kFrom) && i+1 < len(items) && items[i+1].pause == none {
		return r.isWord(&items[i+1], relatives...) // "into which I had put syrup"
	}
	if items[i].any(kThen, kWord) && r.isWord(&items[i], relatives...) {
		return i+1 < len(items) && items[i+1].pause == none
	}
	return items[i].pause == comma && items[i].any4(kUnseen, kSeen, kPast, kDot)
}

// subjectBefore is where the subject begins that ends before item i; -1 where none does.
func (r *reader) subjectBefore(items []item, i int) int {
	from := i
	for from > 0 && i-from < longestSubject && items[from-1].anyOf(ofSubject) && (from == i || items[from].pause == none) {
		from--
	}
	if from == i || from > 0 && items[from].pause == none && !items[from-1].anyOf(joiners) {
		return -1
	}
	for k := from; k < i; k++ {
		if items[k].any4(kQueen, kBars, kFixture, kName) {
			return from
		}
	}
	return -1
}

// verbBehindAside is the verb of the subject behind the aside that begins at item i: behind
// a comma, or where the aside has a verb of its own and ends with a day gone by.
func (r *reader) verbBehindAside(items []item, i int) int {
	verbs, then := 0, false
	for k := i + 1; k < len(items) && items[k].pause <= comma; k++ {
		it := &items[k]
		if it.pause == comma && items[i].pause == comma {
			if it.any(kBe, kHave) {
				return k
			}
			return -1
		}
		if it.is(kBe) && then && verbs > 0 && it.pause == none {
			return k
		}
		if it.any3(kBe, kHave, kUnseen) {
			verbs++
		}
		then = it.is(kPast) || it.is(kDate) && it.day.ago
	}
	return -1
}

// broodAgain puts the brood told before in place of "it" behind bars of its own: "brood on
// bars two to seven, and on four it is sealed".
func (r *reader) broodAgain(items []item) {
	brood := -1
	for i := range items {
		it := &items[i]
		if v := r.value(it, kContent); v == "brood" || v == "capped_brood" {
			brood = i
		}
		if brood < 0 || i < 3 || i+2 >= len(items) || it.text != "it" || it.pause > comma || !items[i-1].is(kBars) || !items[i-2].is(kOn) {
			continue
		}
		if items[i-2].pause == none && !items[i-3].any3(kAnd, kBut, kAdv) || !items[i+1].is(kBe) || !items[i+2].any5(kStage, kPattern, kFull, kAdv, kAmount) {
			continue
		}
		again := items[brood]
		again.from, again.to, again.start, again.end, again.pause = it.from, it.to, it.start, it.end, none
		items[i] = again
	}
}

// useSpoken marks the items that were spoken as used where what was read in their stead
// was.
func useSpoken(spoken, read []item) {
	for i := range spoken {
		for k := range read {
			if read[k].used && read[k].start == spoken[i].start {
				spoken[i].used = true
			}
		}
	}
}
