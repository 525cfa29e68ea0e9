package parse

// What stands around a name, by which it is weighed.

// inHiveList reports whether a name is in a list of names behind a word for hives, "we have
// two hives, Juniper and Tansy".
func (r *reader) inHiveList(toks []token, i, end int) bool {
	listed := end < len(toks) && (toks[end].pause == comma && toks[end].has(capital) || r.says(toks[end], "and"))
	k := i
	for k > 0 && i-k < 24 {
		switch prev := toks[k-1]; {
		case prev.id == r.hivesID || prev.id == r.coloniesID || (toks[k].pause == comma || prev.has(coloned) || r.says(toks[k], "are")) && r.countsOwn(toks, k-1):
			return listed || k < i
		case toks[k].pause >= stop && !prev.has(coloned):
			return false
		case prev.has(capital) || r.says(prev, "and", "on", "the", "site", "here", "in", "all", "are", "namely", "at", "called", "named") || prev.has(coloned) && k < i:
			k--
		default:
			return (listed || k < i) && toks[k].pause == comma && r.hivesSomewhere(toks, k)
		}
	}
	return false
}

// hivesSomewhere reports whether hives, and where they are, stand before the comma at token k: "two
// colonies at the edge of the field, Juniper and Tansy".
func (r *reader) hivesSomewhere(toks []token, k int) bool {
	for j := k - 1; j >= 0 && j > k-9; j-- {
		if toks[j].id == r.hivesID || toks[j].id == r.coloniesID {
			return j > 0 && r.isNumber(&toks[j-1]) || j > 0 && r.says(toks[j-1], "my", "our", "the", "these", "both")
		}
		if toks[j].pause > none || toks[j].lists.has(being) || toks[j].has(capital) {
			return false
		}
	}
	return false
}

// countsOwn reports whether token k counts what the writer keeps: "I have just the two, Salt and
// Pepper", "looked at all three, …".
func (r *reader) countsOwn(toks []token, k int) bool {
	if k == 0 || toks[k].pause > none {
		return false
	}
	if r.says(toks[k], "both") {
		return r.says(toks[k-1], "at", "through", "into")
	}
	return r.says(toks[k], "two", "three", "four", "five", "pair") && (r.says(toks[k-1], "the", "my", "our", "all") || toks[k].has(coloned) && r.says(toks[k-1], "have", "keep", "run", "are", "got"))
}

// toldNear reports whether what is found in a hive or about it, of some kinds, is told
// right before token k.
func (r *reader) toldNear(toks []token, k int, of kinds) bool {
	for from := k - 1; from >= 0 && from >= k-3 && toks[from+1].pause == none; from-- {
		if r.lex.matcher.longest(toks[:k], from, nil).kinds.meet(of) {
			return true
		}
	}
	return false
}

// unitedNear reports whether colonies are told to be united right before token k.
func (r *reader) unitedNear(toks []token, k int) bool {
	return r.saidBefore(toks, k, 3, uniting)
}

// saidBefore reports whether a word of a list stands among the n right before token k, with
// no pause between.
func (r *reader) saidBefore(toks []token, k, n int, of list) bool {
	for j := k - 1; j >= 0 && j >= k-n && toks[j+1].pause == none; j-- {
		if r.among(&toks[j], of) {
			return true
		}
	}
	return false
}

// startsBefore reports whether a sentence begins no more than n words before token k.
func (r *reader) startsBefore(toks []token, k, n int) bool {
	for j := k; j >= 0 && j > k-n; j-- {
		if j == 0 || toks[j].pause >= stop {
			return true
		}
	}
	return false
}

// barBeforeIn reports whether a bar by its number stands before "in" and a name: "eggs on bar
// 3 in Juniper", not "comb 9 in wide".
func (r *reader) barBeforeIn(toks []token, i int) bool {
	return i > 3 && r.isNumber(&toks[i-2]) && r.barNouns.has(toks[i-3].id) && toks[i-2].pause == none && toks[i-1].pause == none && !r.numbers.dimension.has(toks[i].id)
}

// namesAThing reports whether what is called by a name at token k is told in a relative
// clause, and is no colony.
func (r *reader) namesAThing(toks []token, k int) bool {
	if !r.says(toks[k], "named", "called") {
		return false
	}
	which := false
	for j := k - 1; j >= 0 && j >= k-10 && toks[j+1].pause < stop; j-- {
		if toks[j].id == r.hiveID || toks[j].id == r.colonyID {
			return false
		}
		which = which || r.says(toks[j], "which")
	}
	return which
}

// givesTime reports whether a while or a look is what a name was given.
func (r *reader) givesTime(toks []token, end int) bool {
	for k := end; k < len(toks) && k < end+4 && toks[k].pause == none; k++ {
		if r.among(&toks[k], givenTimes) {
			return true
		}
	}
	return false
}

// ownedElsewhere reports whether bees are somebody's who lives at a distance: "Stan's
// bees over the road".
func (r *reader) ownedElsewhere(toks []token, end int) bool {
	if r.countsTheirs(toks, end) {
		return true
	}
	if end+2 >= len(toks) || toks[end].id != r.words.ownID || !r.says(toks[end+1], "bees", "hives", "own") && toks[end+1].id != r.hiveID {
		return false
	}
	if r.says(toks[end+1], "own") || r.says(toks[end+2], "over", "across", "down", "up", "out") {
		return true // "the verger's own bees", "Stan's bees over in Ottermere"
	}
	for _, n := range r.lex.matcher.longest(toks, end+2, nil).rules {
		if r.kindOf[n] == kTheirs {
			return true
		}
	}
	return false
}

// countsTheirs reports whether it is told of somebody's colonies by their number how they did: "Nora's both
// died", "Stan's last two came through".
func (r *reader) countsTheirs(toks []token, end int) bool {
	if end+2 >= len(toks) || !r.says(toks[end], "'s") || toks[end].pause > none {
		return false
	}
	k := end + 1
	for k+1 < len(toks) && k < end+4 && toks[k].pause == none && (r.says(toks[k], "both", "all", "last", "only", "other", "own", "half", "of") || r.numbers.of(toks[k].id).kind == unitWord) {
		k++
	}
	return k > end+1 && toks[k].pause == none && r.among(&toks[k], losses)
}

// contrasted reports whether what somebody has is told of nobody else's hive by the
// sentence behind it: "Hank has wax moth. None in here."
func (r *reader) contrasted(toks []token, end int) bool {
	if end >= len(toks) || toks[end].pause > none || !r.says(toks[end], "has", "had", "'s", "got", "lost") {
		return false
	}
	k := end
	for k < len(toks) && toks[k].pause < stop {
		k++
	}
	if k == len(toks) || toks[k].pause == blank || !r.says(toks[k], "none", "no", "not", "nothing") {
		return false
	}
	for k++; k < len(toks) && toks[k].pause < stop; k++ {
		if r.says(toks[k], "here", "mine", "ours") {
			return true
		}
	}
	return false
}

// hiveBefore reports whether a hive is spoken of in the words before a comma, with no
// verb since: "the hive by the far gate, Juniper, …".
func (r *reader) hiveBefore(toks []token, i int) bool {
	for k := i - 1; k >= 0 && k >= i-6; k-- {
		if toks[k].id == r.hiveID || toks[k].id == r.colonyID {
			return true
		}
		if toks[k].pause >= comma || toks[k].lists.has(being) {
			return false
		}
	}
	return false
}

// walkedBefore reports whether the way to somewhere is told right before token i:
// "strolled over to", "turned next to".
func (r *reader) walkedBefore(toks []token, i int) bool {
	return r.saidBefore(toks, i, 2, walking)
}
