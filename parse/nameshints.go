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
	if toks[next].lists.has(faring) {
		return true
	}
	if !r.says(toks[next], "a") || toks[next].pause > none {
		return false
	}
	for k := next + 1; k < len(toks) && k <= next+2 && toks[k].pause == none; k++ {
		if toks[k].lists.has(faring) || toks[k].lists.has(verdicts) {
			return true // "a different matter", "a sadder tale"
		}
	}
	return false
}

// theNamed reports whether "the" or "to the" begins a sentence before a name: "The Sundial
// is weak", "To the Quince at noon".
func (r *reader) theNamed(toks []token, i, end int) bool {
	k := i - 1
	if k < 0 || r.plural(toks[end-1]) || toks[i].pause > none || !r.says(toks[k], "the") {
		return false
	}
	if k > 0 && toks[k].pause == none && r.says(toks[k-1], "to") {
		k--
	}
	return k == 0 || toks[k].pause >= stop
}

// plural reports whether a name ends as that of a family does: "the Dawsons".
func (r *reader) plural(last token) bool { return r.text[last.end-1] == 's' }

// placeName reports whether a word of place begins a name of two: "Top Terrace".
func (r *reader) placeName(toks []token, i int) bool {
	if i+1 == len(toks) || !toks[i+1].has(capital) || toks[i+1].pause > none || toks[i+1].has(glued) || !r.mayName(toks, i+1) || toks[i].lists&unnamed != 0 {
		return false
	}
	best := r.lex.matcher.longest(toks[:i+1], i, nil)
	for _, n := range best.rules {
		if !placed.has(r.kindOf[n]) {
			return false
		}
	}
	return best.end > i
}

// placed are the kinds of words that can begin the name of a place.
var placed = setOf(kPlace, kSide, kFixture, kStrength, kComb, kFull)

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
