package parse

// What is said of a name as a verdict by itself: that it is as it always is, that nothing is wanting, what a
// relief it was.

// judged reports whether a sentence begins with the run and is a verdict on it, and the talk goes on about
// a hive: "Juniper is Juniper", "Juniper wants for nothing", "Juniper, what a relief after that!"
func (m *mention) judged() bool {
	if m.byWord || !m.headsSentence() || m.plural(m.toks, m.end) || m.commonWord() {
		return false
	}
	m.placed = (m.isItself(m.toks, m.i, m.end) || m.lacksNothing(m.toks, m.end) || m.exclaimedOver(m.toks, m.end)) && m.tells(nextSentences)
	return m.placed
}

// isItself reports whether a run is said to be what it is: "Juniper is Juniper", "Juniper being Juniper".
func (r *reader) isItself(toks []token, i, end int) bool {
	k, n := end, end-i
	if k+1 < len(toks) && r.says(toks[k], "will", "is", "was") && r.says(toks[k+1], "always", "still", "just", "be", "being") {
		k++
	}
	if k+n >= len(toks) || toks[end].pause > none || !r.says(toks[k], "is", "'s", "was", "be", "being", "always", "still", "just", "remains") {
		return false
	}
	for j := i; j < end; j++ {
		k++
		if toks[k].pause > none || !toks[k].has(capital) || !r.says(toks[k], r.text[toks[j].start:toks[j].end]) {
			return false
		}
	}
	k++
	return k == len(toks) || toks[k].pause > none || r.says(toks[k], "as", "again", "and", "still")
}

// lacksNothing reports whether it is told behind a name that nothing is wanting: "wants for nothing",
// "lacked nothing", "needs nothing from me".
func (r *reader) lacksNothing(toks []token, k int) bool {
	if k+1 >= len(toks) || toks[k].pause > none || !r.among(&toks[k], wanting) {
		return false
	}
	if k++; r.says(toks[k], "for", "of") && k+1 < len(toks) && toks[k].pause == none {
		k++
	}
	return toks[k].pause == none && r.says(toks[k], "nothing", "naught", "nought", "nowt", "little")
}

// exclaimedOver reports whether a cry about it follows a name and a comma: "Juniper, what a relief after
// that!", "Juniper, oh dear", "Juniper, how she has grown!"
func (r *reader) exclaimedOver(toks []token, k int) bool {
	if k+1 >= len(toks) || toks[k].pause != comma || toks[k+1].pause > none {
		return false
	}
	return r.says(toks[k], "what", "such") && r.says(toks[k+1], "a", "an") || r.says(toks[k], "oh", "ah", "ach") && r.says(toks[k+1], "dear", "my", "what") || r.says(toks[k], "how") && toks[k+1].lists&(1<<being) == 0 && !r.says(toks[k+1], "do", "does", "did", "many", "much", "about")
}
