package parse

// Bars told by their number with the word "number": "bar number one honey, number two pollen".

// tellsBarsBySign reports whether "number" stands behind the word for a bar, before it stands
// alone: what it numbers then are bars.
func (r *reader) tellsBarsBySign(toks []token) bool {
	if !r.onFront(r.numberID) {
		return false
	}
	for i := range toks {
		if toks[i].id != r.numberID || i+1 == len(toks) || toks[i+1].pause > none {
			continue
		}
		before := i > 0 && toks[i].pause == none
		switch {
		case before && r.barNouns.has(toks[i-1].id):
			return true
		case !before && !(i+2 < len(toks) && r.hiveWords.has(toks[i+2].id)): // but "number one hive"
			return false
		}
	}
	return false
}

// tellsCombsByNumber reports whether the note tells combs by "number" alone: what is said of each number is
// said of combs and of no hive: "Number nine came up heavy with honey. On number five there was brood."
func (r *reader) tellsCombsByNumber(toks []token) bool {
	if !r.onFront(r.numberID) || r.front.words.has(r.hivesID) || r.front.words.has(r.coloniesID) {
		return false
	}
	combs := false
	for i := range toks {
		if i+1 == len(toks) || toks[i+1].pause > none || !r.isNumber(&toks[i+1]) {
			continue
		}
		if r.barNouns.has(toks[i].id) {
			return false // who says "bar 4" for a bar says something else by "number 4"
		}
		if toks[i].id != r.numberID {
			continue
		}
		q, _ := r.numbers.read(r.text, toks, i+1)
		if q.lo > maxBar || toks[i+1].has(coloned) || i > 0 && toks[i].pause == none && r.numberedWords.has(toks[i-1].id) || !r.saidOfComb(toks, i+2) || r.openedNumber(toks, i) {
			return false
		}
		combs = true
	}
	return combs
}

// saidOfComb reports whether what is found on a comb is told in the sentence that goes on at token k, and
// nothing of a hive's bees: "Number nine came up heavy with capped honey".
func (r *reader) saidOfComb(toks []token, k int) bool {
	found := false
	for from := k; k < len(toks) && (k == from || toks[k].pause < stop); k++ {
		kinds := r.lex.matcher.longest(toks, k, nil).kinds
		if kinds.meet(ofWhole) || toks[k].id == r.numberID {
			return false
		}
		found = found || kinds.meet(setOf(kContent, kStage, kComb))
	}
	return found
}

// numberedBar reports whether "number" and a number behind it at item i name a bar, in a note
// that has told some so: what stands behind is said of bars and not of a hive.
func (r *reader) numberedBar(items []item, i int) bool {
	if numberOfBar(items, i) {
		return true
	}
	if !r.manner.barsBySign || items[i].text != "number" || i+2 >= len(items) || !barNumber(&items[i+1]) || items[i+1].pause > none {
		return false
	}
	before := i - 1
	if before > 0 && items[before].is(kArt) {
		before--
	}
	if i > 0 && items[i].pause == none && (items[i-1].any3(kHive, kQueen, kBar) || r.isWord(&items[before], "in", "inside", "into")) {
		return false
	}
	for k := i + 2; k < len(items) && k < i+9 && items[k].pause <= comma; k++ {
		switch it := &items[k]; {
		case it.any5(kContent, kComb, kFull, kState, kSame):
			return true
		case it.any6(kBar, kHive, kStrength, kTemper, kStores, kDo):
			return false
		}
	}
	return false
}

// numberOfBar reports whether the word for a bar stands behind "number" and its number at item i,
// and no number of its own behind it: "number three frame is eggs".
func numberOfBar(items []item, i int) bool {
	if items[i].text != "number" || i+2 >= len(items) || !barNumber(&items[i+1]) || items[i+1].pause > none {
		return false
	}
	bar := &items[i+2]
	return bar.is(kBar) && !bar.plural && bar.pause == none && (i+3 == len(items) || !barNumber(&items[i+3]))
}
