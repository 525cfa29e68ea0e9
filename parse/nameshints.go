package parse

// linesAfter reports whether a text follows a line that is only a name: a
// heading has one, a signature has not.
func linesAfter(toks []token, end int) bool {
	n := 0
	for k := end; k < len(toks); k++ {
		if k > end && toks[k].pause >= line {
			break
		}
		n++
	}
	return n >= 5
}

// fares reports whether it is told how the one of a name is doing.
func (r *reader) fares(toks []token, end int) bool {
	next := beFollows(toks, end) + 1
	if next == 0 || next >= len(toks) {
		return false
	}
	return toks[next].lists.has(faring) || next+1 < len(toks) && toks[next].pause == none && r.says(toks[next], "a") && toks[next+1].lists.has(faring)
}

// tended reports whether a name is the object of what is done to a hive: "fed Medlar",
// "must treat Medlar".
func (r *reader) tended(toks []token, i int) bool {
	if i == 0 || toks[i].pause > none {
		return false
	}
	for _, n := range r.lex.matcher.longest(toks[:i], i-1, nil).rules {
		if r.kindOf[n] != kDo {
			continue
		}
		switch r.rules[n].Value {
		case "feed", "treat", "split", "requeen", "inspect", "unite":
			return true
		}
	}
	return false
}

// oneOf reports whether "the new one" or the like stands behind a name and a comma.
func (r *reader) oneOf(toks []token, end int) bool {
	return end+2 < len(toks) && toks[end].pause == comma && r.says(toks[end], "the") && r.says(toks[end+2], "one")
}

// labelEnd is the token behind the colon of a label that goes on in an aside behind its
// name: "Gasworks, top end of the yard: heavy"; 0 where there is none.
func labelEnd(toks []token, end int) int {
	if toks[end].pause != comma {
		return 0
	}
	for k := end; k+1 < len(toks) && k < end+8 && (k == end || toks[k].pause < comma); k++ {
		if toks[k].has(coloned) {
			return k + 1
		}
	}
	return 0
}
