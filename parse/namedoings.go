package parse

// What is told of a name that is told of hives and hardly of people: what it weighs, what
// it has eaten, what bars came and went, what is hers in the sentence behind.

// tipsScale reports whether a name is told to weigh so much: "Feijoa came to 24 kilos",
// "Otto went to 20 kg".
func (r *reader) tipsScale(toks []token, end int) bool {
	if end >= len(toks) || toks[end].pause > none || !r.among(&toks[end], weighing) {
		return false
	}
	for k := end + 2; k < len(toks) && k < end+8 && toks[k].pause == none; k++ {
		if mass := kilograms[unitNames[r.text[toks[k].start:toks[k].end]]]; mass > 0.1 && r.isNumber(&toks[k-1]) {
			return k+1 == len(toks) || toks[k+1].pause > none || !r.says(toks[k+1], "of")
		}
	}
	return false
}

func (r *reader) isNumber(t *token) bool {
	return t.has(digits) || r.numbers.of(t.id).kind != notNumber
}

// ate reports whether a name is told to have eaten what hives are fed with or live on:
// "Ruth has eaten the fondant", "Otto finished off her syrup".
func (r *reader) ate(toks []token, end int) bool {
	k := end
	for k < len(toks) && k < end+3 && toks[k].pause == none && r.says(toks[k], "has", "have", "had", "'s", "already", "all", "nearly", "almost", "also", "only", "just", "now") {
		k++
	}
	if k == len(toks) || toks[k].pause > none || !r.among(&toks[k], eating) {
		return false
	}
	for last := k + 7; k < len(toks) && k < last && toks[k].pause == none; k++ {
		if r.lex.matcher.longest(toks, k, nil).kinds.meet(setOf(kSubstance, kStores, kFixture, kContent)) {
			return true
		}
	}
	return false
}

// tookAsColony reports whether a name took what only a colony takes: "Juniper took a knock", "Juniper
// took the syrup".
func (r *reader) tookAsColony(toks []token, end int) bool {
	if !r.says(toks[end], "took") {
		return false
	}
	for k := end + 1; k < len(toks) && k < end+5 && toks[k].pause == none; k++ {
		if r.among(&toks[k], takenByColonies) || r.lex.matcher.longest(toks, k, nil).kinds.has(kSubstance) {
			return true
		}
	}
	return false
}

// droppedMites reports whether it is told of a name how many mites it dropped: "Juniper dropped nine mites
// in three days".
func (r *reader) droppedMites(toks []token, end int) bool {
	if !r.says(toks[end], "dropped", "drops", "shed", "sheds") {
		return false
	}
	for k := end + 1; k < len(toks) && k < end+5 && toks[k].pause == none; k++ {
		if r.lex.matcher.longest(toks, k, nil).kinds.has(kMite) {
			return true
		}
	}
	return false
}

// fliesAsBees reports whether it is told of a name how its bees fly or forage: "Juniper flew
// freely", and not "Concorde flew over".
func (r *reader) fliesAsBees(toks []token, end int) bool {
	if end+1 >= len(toks) || toks[end].pause > none || !r.among(&toks[end], asBeesFly) {
		return false
	}
	return toks[end+1].pause > none || !r.among(&toks[end+1], flownPast)
}

// ownsParts reports whether the sentence behind that of a name begins with something of
// a hive that is hers or his: "Greta sulks. Her queen was on bar three".
func (r *reader) ownsParts(toks []token, end int) bool {
	k := end
	for k < len(toks) && k < end+16 && toks[k].pause < stop {
		k++
	}
	if k+1 >= len(toks) || toks[k].pause < stop || toks[k].pause == blank || toks[k+1].pause > none || !r.says(toks[k], "her", "his", "their", "its") {
		return false
	}
	for j := k + 1; j < len(toks) && j <= k+2 && toks[j].pause == none; j++ {
		if r.lex.matcher.longest(toks, j, nil).kinds.meet(hivesOwn) {
			return true
		}
	}
	return false
}

// hivesOwn are the kinds of words for what is a hive's.
var hivesOwn = setOf(kFixture, kCell, kBar, kBars, kComb, kBrood, kQueen, kStores)

// barsPassed reports whether bars are told to have gone from the one of a name or to
// it; sure tells that it is told both whence and where: "Four bars went from Loretta to
// Emmylou".
func (r *reader) barsPassed(toks []token, i, end int) (passed, sure bool) {
	if i < 3 || toks[i].pause > none || !r.says(toks[i-1], "from", "to", "into", "of") {
		return false, false
	}
	from := r.says(toks[i-1], "from", "of")
	sure = from && end < len(toks) && toks[end].pause == none && r.says(toks[end], "to", "into")
	for k := i - 2; k > 0 && k > i-9 && toks[k+1].pause == none; k-- {
		sure = sure || !from && r.says(toks[k], "from", "of")
		if !r.among(&toks[k], passing) {
			continue
		}
		for j := k - 1; j >= 0 && j >= k-7 && toks[j+1].pause == none; j-- {
			if r.barNouns.has(toks[j].id) {
				return true, sure
			}
		}
	}
	return false, false
}

// saidThat reports whether a name is what something is said or thought of: "you will not
// believe that Red builds like mad", "I think Juniper is about to swarm".
func (r *reader) saidThat(toks []token, i int) bool {
	if i > 2 && toks[i-1].pause == none && r.says(toks[i-1], "that") {
		i-- // and not "the one that Gerald minds"
	}
	return i > 1 && toks[i].pause == none && r.among(&toks[i-1], thinking)
}
