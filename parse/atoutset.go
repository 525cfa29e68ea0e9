package parse

import "strings"

// The hive that a note in running speech begins with, where nothing leads to its name but that it comes
// first: "badger this evening", "barnaby um they're calm", "the paddock tonight".

// saidAtOutset reports whether the word at token i, the first of the note or behind "the", is the name of its
// hive. Given tells that people are called by it.
func (r *reader) saidAtOutset(toks []token, i int, given bool) bool {
	if !given && !r.mayStandFirst(toks, i) || r.hiveSoon(toks) {
		return false
	}
	k, again := i+1, false
	for k < len(toks) && toks[k].pause <= comma && (r.says(toks[k], hesitations...) || i == 0 && r.saidAgain(toks, k)) {
		again = true
		k++
	}
	if k+1 >= len(toks) {
		return false
	}
	if i == 0 && again && toks[k].pause <= comma && (r.handOver(toks, k) || given && (toks[k].lists.has(hiveDoings) || r.says(toks[k], "last", "again", "quick"))) {
		return true // "barnaby um they're calm", "gertrude gertrude last look"
	}
	end := r.visitEnd(toks, k)
	ownLine := given && toks[k].pause >= line
	return (ownLine || end > k && !r.isPerson(toks, i, end)) && r.talksOfHive(toks, end, nextSentences)
}

// hiveSoon reports whether the first line of a note has the word for a hive, which then is told with it.
func (r *reader) hiveSoon(toks []token) bool {
	for k := 0; k < len(toks) && k < longestGreeting && (k == 0 || toks[k].pause < line); k++ {
		if toks[k].id == r.hiveID {
			return true
		}
	}
	return false
}

// mayStandFirst reports whether a hive may be called by the word at token i that begins a note and that is no given
// name: a plant, a word that no rule knows, or behind "the" where it stands. One that ends as "muggy" tells of the day.
func (r *reader) mayStandFirst(toks []token, i int) bool {
	plant := toks[i].lists.has(plantNames) || r.lex.matcher.alone(toks[i].id).kinds.has(kPlant)
	day := i == 0 && strings.HasSuffix(r.text[toks[i].start:toks[i].end], "y")
	return plant || i > 0 && toks[i].lists.has(placesNear) || !day && r.isNameToo(toks, i)
}

// saidAgain reports whether token k is the first word of the note once more.
func (r *reader) saidAgain(toks []token, k int) bool {
	return r.text[toks[k].start:toks[k].end] == r.text[toks[0].start:toks[0].end]
}

// visitEnd is where words end that tell which visit it is, "this evening", "first proper look of the year", "again",
// from token k on; k itself where none do.
func (r *reader) visitEnd(toks []token, k int) int {
	end := k
	for end < len(toks) && end < k+6 && toks[end].pause <= comma && r.among(&toks[end], ofVisits) {
		end++
	}
	if end == k+1 && !r.says(toks[k], "today", "tonight", "again", "first", "yesterday", "now") {
		return k // "this is", "was a", "on four"
	}
	return end
}
