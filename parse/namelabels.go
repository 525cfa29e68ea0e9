package parse

import (
	"strings"
	"unicode"
)

// Labels that may name a hive: what stands behind one at the head of a line.

// labelEnd is the token behind the colon of a label that goes on in an aside behind its
// name: "Gasworks, top end of the yard: heavy"; 0 where there is none.
func (r *reader) labelEnd(toks []token, end int) int {
	if toks[end].pause != comma {
		return 0
	}
	bracketed := strings.Contains(r.text[toks[end-1].end:toks[end].start], "(") // "Sandra (a long story, that): calm"
	for k := end; k+1 < len(toks) && k < end+12 && (k == end || toks[k].pause < comma || bracketed && toks[k].pause == comma); k++ {
		if toks[k].has(coloned) || bracketed && strings.Contains(r.text[toks[k].end:toks[k+1].start], "):") {
			return k + 1
		}
	}
	return 0
}

// anyNameAlone reports whether a name with a colon has a line of its own, "Juno:", with what
// is found in a hive below.
func (r *reader) anyNameAlone(toks []token) bool {
	for _, row := range r.rows {
		if last := toks[row.to-1]; last.has(coloned) && row.to-row.from <= 3 && r.properRun(toks, row.from) == row.to && r.talksOfHive(toks, row.to, nextSentences) {
			return true
		}
	}
	return false
}

// labelsLine reports whether a run is the label of a line, "Known issue: …", in a note that
// has the names of its hives on lines of their own.
func (r *reader) labelsLine(toks []token, i, end int) bool {
	if !r.namesAlone || !toks[end-1].has(coloned) || end == len(toks) || toks[end].pause >= line || i > 0 && toks[i].pause < line {
		return false
	}
	last := toks[end-1]
	return !r.plantOrColour(last) && !last.lists.has(placesNear) && !last.lists.has(plantNames) && !r.givenNames.has(last.id)
}

// hiveLabel reports whether a hive named by the word heads a line of its own before that
// of token i: "Quarry hive: …", "H2: …".
func (r *reader) hiveLabel(toks []token, i int) bool {
	for k := range i {
		if toks[k].pause < line && k > 0 {
			continue
		}
		for j := k; j < i && j < k+4 && (j == k || toks[j].pause == none); j++ {
			if toks[j].has(coloned) {
				last := toks[j].id
				return last == r.hiveID || last == r.colonyID || j > 0 && (toks[j-1].id == r.hiveID || toks[j-1].id == r.hID)
			}
		}
	}
	return false
}

// dayBehind is the token of the line below where a day and no more stands between a name
// and it: "Quince, Tuesday 12 May"; 0 where it does not.
func (r *reader) dayBehind(toks []token, end int) int {
	k, day := end, false
	for ; k < len(toks) && toks[k].pause < line; k++ {
		kind := r.dates.of(toks[k].id).kind
		day = day || kind == weekdayWord || kind == monthWord
		if kind != weekdayWord && kind != monthWord && !toks[k].has(digits) {
			return 0
		}
	}
	if !day || k == len(toks) || k-end > 4 {
		return 0
	}
	return k
}

// allCapitals reports whether a run is written in capitals.
func (r *reader) allCapitals(toks []token, i, end int) bool {
	text := r.text[toks[i].start:toks[end-1].end]
	return len(text) > 2 && strings.IndexFunc(text, func(c rune) bool { return c != unicode.ToUpper(c) }) < 0
}

// listsPeople reports whether the names of people, and nothing of a hive, stand behind a
// label.
func (r *reader) listsPeople(toks []token, k int) bool {
	end := r.properRun(toks, k)
	if end == k || r.plantOrColour(toks[k]) || r.talksOfHive(toks, k, ownSentence) {
		return false
	}
	return end == len(toks) || toks[end].pause > none || r.says(toks[end], "and", "+", "&", "plus", "with")
}
