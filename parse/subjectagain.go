package parse

// A subject that an aside parts from its verb, "the queen, who had hidden from me in May,
// was on bar six", is said again in front of the verb: the aside then has its own mood, and
// what is told of the subject stands together.

// ofSubject are the kinds of words that such a subject is made of.
var ofSubject = setOf(kArt, kQueen, kBars, kBar, kOn, kComb, kAdv, kFixture, kName, kDot)

// actors are those of which it has one at least, and actorsVerb those of its verb.
var (
	actors     = setOf(kQueen, kBars, kFixture, kName, kDot)
	actorsVerb = setOf(kBe, kHave)
)

// longestSubject and longestAside are the numbers of items that are sought for a subject and
// its aside: speech without pauses may go on for ever.
const (
	longestSubject = 5
	longestAside   = 30
)

// again is where a subject stands anew: which items of the sentence it repeats, and where
// it lies among those that are read.
type again struct{ from, at, n int }

// subjectsAgain returns the items of a sentence with each subject said again behind an aside
// that parts it from its verb, and where these are.
func (r *reader) subjectsAgain(items []item) ([]item, []again) {
	var read []item
	var said []again
	copied := 0
	for i := 1; i < len(items); i++ {
		if it := &items[i]; it.pause != comma && !it.any(kThen, kWord) || !items[i-1].anyOf(ofSubject) || !r.asideBegins(items, i) {
			continue
		}
		from := r.subjectBefore(items, i)
		if from < 0 {
			continue
		}
		verb := r.verbBehindAside(items, i, hasKind(items[from:i], kQueen))
		if verb < 0 {
			continue
		}
		read = append(read, items[copied:verb]...)
		said = append(said, again{from, len(read), i - from})
		read = append(read, items[from:i]...)
		read[len(read)-(i-from)].pause, items[verb].pause = colon, none
		copied, i = verb, verb
	}
	if said == nil {
		return items, nil
	}
	return append(read, items[copied:]...), said
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
		if items[k].anyOf(actors) {
			return from
		}
	}
	return -1
}

// verbBehindAside is the verb of the subject behind the aside that begins at item i: behind
// a comma, or where the aside has a verb of its own and ends with a day gone by. A queen
// needs none where her bar is told: "the queen, who has a blue dot, on bar six".
func (r *reader) verbBehindAside(items []item, i int, queen bool) int {
	verbs, then := 0, false
	for k := i + 1; k < len(items) && k <= i+longestAside && items[k].pause <= comma; k++ {
		it := &items[k]
		if it.pause == comma && items[i].pause == comma {
			if it.any(kBe, kHave) || queen && it.is(kOn) && k+1 < len(items) && items[k+1].is(kBars) {
				return k
			}
			if queen && it.is(kNum) {
				continue // "two combs further on"
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
		if it.is(kContent) {
			if v := r.value(it, kContent); v == "brood" || v == "capped_brood" {
				brood = i
			}
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
func useSpoken(spoken, read []item, said []again) {
	copied := 0 // of the items read so far, those said again
	for k := 0; k < len(read); k++ {
		if len(said) > 0 && said[0].at == k {
			for n := range said[0].n {
				was := &spoken[said[0].from+n]
				was.used = was.used || read[k+n].used
			}
			copied += said[0].n
			k += said[0].n - 1
			said = said[1:]
			continue
		}
		was := &spoken[k-copied]
		was.used = was.used || read[k].used
	}
}
