package parse

// Whose turn it is in a round of the hives: what is said of a name before it and behind.

// inTurn reports whether a name is followed by its place in a round of visits:
// "Dolly first, then", "Dolly went first", "Dolly last: calm".
func (r *reader) inTurn(toks []token, end int) bool {
	if end+1 < len(toks) && toks[end].pause == none && r.says(toks[end], "went", "came", "was", "comes", "goes") {
		end++
		if r.says(toks[end], "last") {
			return r.endsTurn(toks, end)
		}
	}
	if end < len(toks) && r.says(toks[end], "only") && r.plural(toks, end) && end+1 < len(toks) && toks[end+1].pause < stop {
		return false // "Figures only, since …"
	}
	return end < len(toks) && toks[end].pause == none && (r.says(toks[end], "first", "next", "only") && r.endsTurn(toks, end) || r.says(toks[end], "last") && toks[end].has(coloned))
}

// endsTurn reports whether a word of order ends what is said of whose turn it is.
func (r *reader) endsTurn(toks []token, k int) bool {
	return k+1 == len(toks) || toks[k+1].pause > none || r.says(toks[k+1], "this", "today")
}

// thenComes reports whether a name is the next of a round: "Then Juniper, who is another
// matter".
func (r *reader) thenComes(toks []token, i, end int) bool {
	if i > 0 && r.says(toks[i-1], "then") && toks[i-1].pause == comma && (end >= len(toks) || toks[end].pause >= stop) {
		return true // "Quarry first, then Larch."
	}
	if i == 0 || i > 1 && toks[i-1].pause < stop && !(r.says(toks[i-1], "the") && toks[i-2].pause >= stop) && !r.says(toks[i-1], "left", "leaves", "all") || end < len(toks) && toks[end].pause != comma && toks[end].pause < stop && beFollows(toks, end) != end {
		return false
	}
	if k := i - 1; r.says(toks[k], "the") && k > 0 && toks[i].pause == none && !r.plural(toks, end) {
		i = k // "Then the Endeavour, where …"
	}
	if k := i - 3; k >= 0 && (k == 0 || toks[k].pause >= stop) && r.says(toks[k], "last", "first") && r.says(toks[k+1], "of") && r.says(toks[k+2], "all") && toks[i].pause <= comma {
		return true // "Last of all Juniper, who …"
	}
	if k := i - 1; r.says(toks[k], "left", "leaves") && k > 0 && r.says(toks[k-1], "which", "that") && toks[i].pause == none {
		return k == 1 || toks[k-1].pause >= stop // "Which left Juniper."
	}
	return r.says(toks[i-1], "then", "now", "finally", "lastly", "meanwhile", "leaving") || r.firstComes(toks, i, end)
}

// firstComes reports whether a name has its place in a round said before it: "First, Juniper,
// our pride and joy: heaving".
func (r *reader) firstComes(toks []token, i, end int) bool {
	return i > 0 && (i == 1 || toks[i-1].pause >= stop) && toks[i].pause <= comma && r.says(toks[i-1], "first", "firstly", "second", "secondly", "third", "thirdly", "next", "last") &&
		(r.talksOfHive(toks, end, ownSentence) || end < len(toks) && toks[end].pause >= comma && r.talksOfHive(toks, end, nextSentences))
}

// behindComma is the token behind the aside in commas or brackets that begins at a token; 0
// where none does.
func behindComma(toks []token, end int) int {
	if end >= len(toks) || toks[end].pause != comma {
		return 0
	}
	for k := end + 1; k < len(toks) && k < end+16 && toks[k].pause < stop; k++ {
		if toks[k].pause == comma {
			return k
		}
	}
	return 0
}
