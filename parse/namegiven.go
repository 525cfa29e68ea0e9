package parse

// A hive's name that is given to it in so many words: "I have called the hive Depot", "the
// hive I call Quarto", "Big Kev (that's the hive, not my uncle)", "that's Walnut in the book".

// given reports whether a run is told outright to be the name of a hive.
func (m *mention) given() bool {
	return m.joined() && (m.hiveGiven() || m.hiveCalled() || m.inBook()) || m.isTheHive() || m.isItsName()
}

// hiveGiven reports whether a verb of naming gives the run to a hive that stands between them:
// "called the hive Depot", "christened this little colony Depot".
func (m *mention) hiveGiven() bool {
	last := m.i - 1
	if last < 1 || !m.isHiveNoun(last) || m.toks[last].pause > none {
		return false
	}
	for k := last - 1; k >= 0 && k >= last-4 && m.toks[k+1].pause == none; k-- {
		if m.toks[k].lists.has(namings) {
			return last-k > 1 // not "the so called colony Depot"
		}
	}
	return false
}

// hiveCalled reports whether a verb of naming stands before the run, and the hive that it names
// before that: "the hive I call Quarto", "a colony called Quarto", "the hive is called Quarto".
func (m *mention) hiveCalled() bool {
	if !m.beforeIn(1, namings) {
		return false
	}
	for k := m.i - 2; k >= 0 && k >= m.i-8 && m.toks[k+1].pause < comma; k-- {
		if m.isHiveNoun(k) {
			return !m.withinIt(k)
		}
		if m.toks[k].has(capital) && !m.says(m.toks[k], "i") || m.isAThing(m.toks, k) {
			return false // "the hive, and a cat that we call Quarto"
		}
	}
	return false
}

// withinIt reports whether the hive at token k is but where that is which has the name: "the queen
// in this hive is called Beatrix".
func (m *mention) withinIt(k int) bool {
	for j := k - 1; j > 0 && j >= k-4 && m.toks[j+1].pause == none; j-- {
		if m.says(m.toks[j], "in", "of", "from", "inside") {
			return m.isAThing(m.toks, j-1)
		}
	}
	return false
}

// callsOther reports whether a verb of naming at token k has something else for its object than a
// hive: "a dog called Biscuit", "the queen in this hive is called Beatrix", and not "the kids named it
// Juniper".
func (m *mention) callsOther(k int) bool {
	named := k < m.i-1 || m.says(m.toks[k], "call", "calls") // what stands before it names
	for j := k - 1; j >= 0 && j >= k-8 && m.toks[j+1].pause < stop; j-- {
		if m.isHiveNoun(j) {
			return m.withinIt(j)
		}
		names := named && (j == k-1 || m.says(m.toks[j+1], "voted", "decided", "chose", "all"))
		if !names && m.among(&m.toks[j], otherMouths) || m.lex.matcher.alone(m.toks[j].id).kinds.has(kQueen) {
			return true
		}
	}
	return false
}

// calledUp reports whether the verb right before the run is all that a sentence has before it: "I
// called Phil".
func (m *mention) calledUp() bool {
	k := m.i - 2
	return k >= 0 && m.beforeIn(1, namings) && m.says(m.toks[k], "i", "we") && (k == 0 || m.toks[k].pause >= stop)
}

// isAThing reports whether a token is a word for what is found in a hive and has a name of its
// own, as queens have: "a queen in the hive called Beatrix".
func (r *reader) isAThing(toks []token, k int) bool {
	return r.lex.matcher.alone(toks[k].id).kinds.meet(setOf(kQueen, kBees, kSign, kMite))
}

// isHiveNoun reports whether a token is the word for a hive by itself.
func (m *mention) isHiveNoun(k int) bool {
	return m.toks[k].id == m.hiveID || m.toks[k].id == m.colonyID || m.toks[k].id == m.nucID
}

// calledBehind reports whether the hive at item i is told behind it to have a name, so that what stands before
// it only describes it: "our school colony is called Juniper", "the roof hive, which we call Juniper".
func (r *reader) calledBehind(items []item, i int) bool {
	toks, k := r.mended, int(items[i].to)
	if k >= len(toks) || toks[k].pause > comma {
		return false
	}
	if !toks[k].lists.has(being) && toks[k].lists&(1<<namings) == 0 && !r.says(toks[k], "which", "that", "we", "i", "goes", "known", "who", "they") {
		return false
	}
	for last := k + 8; k+1 < len(toks) && k < last && toks[k+1].pause < stop; k++ {
		led := toks[k].lists.has(namings) || r.says(toks[k], "of", "as") && r.says(toks[k-1], "name", "known")
		if led && toks[k+1].pause == none && toks[k+1].has(capital) {
			return true
		}
		if toks[k+1].has(capital) && !r.says(toks[k+1], "i") {
			return false
		}
	}
	return false
}

// theirsBehind reports whether the hive at item i is told behind it to be somebody else's: "the log hive of our
// neighbour".
func (r *reader) theirsBehind(items []item, i int) bool {
	toks, k := r.mended, int(items[i].to)
	if k+2 >= len(toks) || !r.says(toks[k], "of") || toks[k].pause > none || !r.says(toks[k+1], "my", "our", "the", "a") {
		return false
	}
	return toks[k+2].pause == none && (toks[k+2].lists.has(kin) || r.says(toks[k+2], "neighbour", "neighbor", "neighbours", "neighbors", "uncle", "aunt", "friend", "cousin"))
}

// inBook reports whether the run is what the hive is written down as: "that's Walnut in the
// book", "she is Walnut on the lid", "down as Walnut in my records".
func (m *mention) inBook() bool {
	if m.before(1, "as") && m.before(2, "down") {
		return true // "down as Walnut"
	}
	if !m.before(1, "'s", "is", "as", "says", "was", "it") || !m.behind(0, "in", "on") || m.end+2 >= len(m.toks) {
		return false
	}
	k := m.end + 1
	return m.says(m.toks[k], "the", "my", "our") && m.toks[k].pause == none && m.toks[k+1].pause == none && m.among(&m.toks[k+1], labelled)
}

// isTheHive reports whether an aside says of the run that it is the hive: "Big Kev today
// (that's the hive, not my uncle)", "Quarto, which is the hive by the gate".
func (m *mention) isTheHive() bool {
	toks, k := m.toks, m.end
	for k < len(toks) && k <= m.end+2 && toks[k].pause == none {
		k++
	}
	if k+3 >= len(toks) || k > m.end+2 || toks[k].pause != comma || !m.says(toks[k], "that", "which", "this") {
		return false
	}
	if k++; toks[k].pause > none || !m.says(toks[k], "'s", "is", "was", "being") {
		return false
	}
	if k++; toks[k].pause > none || !m.says(toks[k], "the", "my", "our", "a") {
		return false
	}
	for last := k + 3; k+1 < len(toks) && k < last && toks[k+1].pause == none; k++ {
		if m.isHiveNoun(k + 1) {
			return k+2 == len(toks) || toks[k+2].pause > none || toks[k+2].lists&(1<<standing|1<<visitLinks|1<<being) != 0 || m.says(toks[k+2], "that", "which", "not", "i", "we")
		}
	}
	return false
}

// isItsName reports whether the run is said to be what a hive is called: "Quarto is the name of
// my hive", "Quarto is what we call the hive".
func (m *mention) isItsName() bool {
	if m.end+4 >= len(m.toks) || !m.behind(0, "is", "'s", "was") || !m.behindPause(none) {
		return false
	}
	named := m.behind(1, "the", "our", "my") && m.behind(2, "name") || m.behind(1, "what")
	for k := m.end + 2; named && k < len(m.toks) && k < m.end+8 && m.toks[k].pause == none; k++ {
		if m.isHiveNoun(k) {
			return m.saidBefore(m.toks, k, 3, namings) || m.says(m.toks[k-1], "the", "my", "our", "this") && m.behind(2, "name")
		}
	}
	return false
}

// addBesideWord adds the names that stand beside the word for a hive, and so may stand for the hive
// without it: "Wharf hive: calm. Depot hive: cross. Fed Wharf". Plants and places are in the
// garden as well, and of a person more is told.
func (r *reader) addBesideWord(toks []token, found properNames, names map[string]bool) {
	for i := range toks {
		if toks[i].id != r.hiveID && toks[i].id != r.colonyID {
			continue
		}
		for _, k := range [...]int{i - 1, i + 1} {
			if k < 0 || k == len(toks) || toks[max(i, k)].pause > none || !toks[k].has(capital) || k > 0 && toks[k-1].has(capital) && toks[k].pause == none && k < i || !r.mayName(toks, k) {
				continue
			}
			name := r.strings.lower(r.text[toks[k].start:toks[k].end])
			known := r.plantOrColour(toks[k]) || toks[k].lists&(1<<placesNear|1<<plantNames|1<<noNames|1<<softNames|1<<plainWords) != 0
			if n, ok := found[name]; ok && !known && n.weight >= 0 {
				names[name] = true
			}
		}
	}
}
