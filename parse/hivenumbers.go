package parse

// A hive is told by its number behind the word for it, "hive 4", "Hive no. 4", "H4",
// and by its number alone in a note that tells its hives apart so: "No. 4: calm". Which
// of the two a note does is settled on its first page.

// namedByWord reports whether the note names its hives with the word hive
// ("hive 3", "H2", "the orchard hive"); then a capital at the head of a
// sentence is no hive's. Besides those whose names with capitals stand before the word, "the Salt Box
// hive", it asks for others.
func (r *reader) namedByWord(toks []token, besides bool) bool {
	if !r.onFront(r.hiveID, r.colonyID, r.hvID, r.hID) {
		return false
	}
	for i := range toks {
		named := false
		switch t := &toks[i]; t.id {
		case r.hiveID, r.colonyID:
			named = t.has(coloned) && (t.id == r.hiveID || i+1 < len(toks) && toks[i+1].flags&(capital|digits) != 0) || r.hiveNameAt(toks, i+1) || t.id == r.hiveID && i > 1 && t.pause == none && r.wordNames(toks[i-1]) && !(besides && toks[i-1].has(capital))
		case r.hvID:
			named = r.hiveNameAt(toks, i+1)
		case r.hID:
			named = i+1 < len(toks) && toks[i+1].pause <= comma && toks[i+1].has(digits) && toks[i+1].has(glued)
		}
		if named && !r.outOf(toks, i) {
			return true
		}
	}
	return false
}

// outOf reports whether what is told of comes out of the hive at token i: "a bar out of hive 3" is given to one
// that may have another name.
func (r *reader) outOf(toks []token, i int) bool {
	return i > 0 && toks[i].pause == none && (r.says(toks[i-1], "from", "off") || i > 1 && r.says(toks[i-1], "of") && r.says(toks[i-2], "out"))
}

// hiveNameAt reports whether a hive's number, letter or name stands at token i.
func (r *reader) hiveNameAt(toks []token, i int) bool {
	if i >= len(toks) || toks[i].pause > comma {
		return false
	}
	if toks[i].pause == comma && i+1 < len(toks) && toks[i+1].pause == none {
		return false // "a small colony, 5 seams"
	}
	t := toks[i]
	if t.lists.has(numberSigns) && i+1 < len(toks) && toks[i+1].has(digits) {
		return true // "Hive no. 12"
	}
	letter := t.end-t.start == 1 && t.has(capital) && r.text[t.start] != 'I'
	return t.has(digits) || letter || r.numbers.of(t.id).kind == unitWord || t.has(capital) && t.pause == none && r.mayName(toks, i)
}

// tellsByNumber reports whether the note tells hives apart by number alone: "No. 4: calm",
// "in the number two".
func (r *reader) tellsByNumber(toks []token) bool {
	if !r.front.lists.has(numberSigns) && !r.askAll {
		return false
	}
	first := ""
	for i := 0; i+1 < len(toks); i++ {
		t, n := &toks[i], &toks[i+1]
		if !t.lists.has(numberSigns) || n.pause > none || !n.has(digits) && r.numbers.of(n.id).kind != unitWord {
			continue
		}
		if r.text[t.start] == '#' {
			if i > 0 && t.pause < colon || !r.saidOfHive(toks, i+2) {
				continue // "#3 capped brood" is a bar
			}
		} else if r.text[t.end] != '.' && !n.has(coloned) && !r.says(*t, "number") || i > 0 && t.pause == none && r.numberedWords.has(toks[i-1].id) && !r.hiveWords.has(toks[i-1].id) {
			continue // "no 4 bars", "bar no. 4"
		}
		if i == 0 && i+2 < len(toks) && toks[i+2].pause >= colon && r.talksOfHive(toks, i+2, nextSentences) || r.namedNumber(toks, i) || r.openedNumber(toks, i) || i > 0 && t.pause == none && r.text[t.end] == '.' && t.has(capital) && toks[i-1].lists.has(visits) {
			return true // "I only opened No. 3"
		}
		switch number := r.text[n.start:n.end]; first {
		case "", number:
			first = number
		default:
			return true
		}
	}
	return false
}

// tellsByCount reports whether two lines or more begin with numbers in words, from one on, that are
// sentences of their own, and tell of a hive each: "One. Nine bars in use. … Two. Temper fine. …"
func (r *reader) tellsByCount(toks []token) bool {
	count := 0
	for _, row := range r.rows {
		if row.to-row.from < 2 || toks[row.from+1].pause < stop {
			continue
		}
		number := r.numbers.of(toks[row.from].id)
		if number.kind == unitWord && number.value == float64(count+1) && r.lineOfHive(toks[row.from+1:row.to]) {
			count++
		}
	}
	return count > 1
}

// lineOfHive reports whether a line says of a hive what is not said of a bar.
func (r *reader) lineOfHive(toks []token) bool {
	for k := range toks {
		if r.lex.matcher.longest(toks, k, nil).kinds.meet(ofWhole) {
			return true
		}
	}
	return false
}

// countHead reports whether the number at item i is a sentence of its own at the head of a line.
func (r *reader) countHead(items []item, i int) bool {
	it := &items[i]
	return i == 0 && len(items) > 1 && it.is(kNum) && it.has(capital) && it.n.bare && items[1].pause >= stop
}

// saidOfHive reports whether the sentence that goes on at token k says of a hive's bees what
// is not said of a bar, or numbers a bar itself.
func (r *reader) saidOfHive(toks []token, k int) bool {
	for ; k < len(toks) && toks[k].pause < stop; k++ {
		for _, n := range r.lex.matcher.longest(toks, k, nil).rules {
			if ofWhole.has(r.kindOf[n]) {
				return true
			}
		}
	}
	return false
}

// ofWhole are the kinds of words for what a hive has and no bar, a bar among them.
var ofWhole = setOf(kStrength, kTemper, kBar, kStores, kLeaf)

// namedNumber reports whether "Number" and the number behind it at token i are spoken
// of as a hive's name is: with a capital amid the sentence, as in "gave Number 3 an
// hour", or as one that fares well or ill.
func (r *reader) namedNumber(toks []token, i int) bool {
	end := i + 2
	if !toks[i].has(capital) || !r.says(toks[i], "number") || end == len(toks) {
		return false
	}
	if i > 0 && toks[i].pause == none || r.fares(toks, end) || r.inTurn(toks, end) {
		return true
	}
	if toks[i].pause >= line && toks[i+1].has(coloned) && (r.saidOfHive(toks, end) || r.says(toks[end], "i", "we")) {
		return true // "Number 5: I opened twenty drone cells"
	}
	return toks[i].pause >= stop && toks[end].pause == comma && beFollows(toks, end) > end // "Number 4, by the compost, was observed"
}

// openedNumber reports whether the number whose sign is token i is that of the hive with which a
// note that names none begins: "Got to number four at last.", "I had the lid off number one.",
// "Number six this evening, sheep being done."
func (r *reader) openedNumber(toks []token, i int) bool {
	if !r.says(toks[i], "number") || i >= r.rows[0].to || r.namedByWord(toks, false) {
		return false
	}
	for stops, k := 0, 1; k <= i; k++ {
		if toks[k].pause >= stop {
			stops++
		}
		if stops > 1 {
			return false
		}
	}
	end := i + 2
	ends := end == len(toks) || toks[end].pause > none
	timed := !ends && (r.says(toks[end], "again", "today", "tonight", "this", "finally", "first", "before", "after", "with", "while", "since", "because", "for") || r.says(toks[end], "at") && end+1 < len(toks) && r.says(toks[end+1], "last"))
	if r.holdsBrood(toks, end) {
		return false
	}
	if i > 0 && toks[i].pause == none && !(timed && r.says(toks[i-1], "and", "but", "so")) {
		return (ends || timed) && r.leadsToOpened(toks, i) && r.talksOfHive(toks, end, nextSentences)
	}
	return timed && r.talksOfHive(toks, end, nextSentences)
}

// holdsBrood reports whether brood or food is told in the sentence that goes on at token k, as of a bar:
// "Got to number four at last, full of honey".
func (r *reader) holdsBrood(toks []token, k int) bool {
	for ; k < len(toks) && toks[k].pause < stop; k++ {
		if r.lex.matcher.longest(toks, k, nil).kinds.meet(setOf(kContent, kStage)) {
			return true
		}
	}
	return false
}

// leadsToOpened reports whether the words before token i tell of getting to a hive or into it: "got
// round to", "the lid off", "had a look in at".
func (r *reader) leadsToOpened(toks []token, i int) bool {
	if r.opensBefore(toks, i) {
		return true
	}
	if !r.says(toks[i-1], "to", "off", "at", "in", "into", "on", "through", "over") {
		return false
	}
	for k := i - 2; k >= 0 && k > i-6; k-- {
		if toks[k].lists.has(visits) || r.says(toks[k], "got", "get", "getting", "round", "came") {
			return true
		}
		if toks[k+1].pause > none {
			return false
		}
	}
	return false
}

// labelledNumber reports whether a number with its sign stands behind the word for a
// hive at item i: "hive no. 4".
func (r *reader) labelledNumber(items []item, i int) bool {
	if i+2 >= len(items) || !barNumber(&items[i+2]) {
		return false
	}
	sign, number := &items[i+1], &items[i+2]
	return (sign.lists.has(numberSigns) || sign.text == "#") && sign.pause == none && (number.pause == none || sign.colon && number.pause == colon)
}

// loneNumber reports whether the number of a hive begins at item i without the word for
// one: in a note that tells its hives so, and at the head of a sentence in one that
// speaks of several, "Number two: …".
func (r *reader) loneNumber(items []item, i int) bool {
	sign := &items[i]
	if !sign.lists.has(numberSigns) || i+1 == len(items) || !barNumber(&items[i+1]) || items[i+1].pause > none {
		return false
	}
	spelt, labels, behind := sign.text == "number", items[i+1].colon, &noItem
	if i+2 < len(items) {
		behind = &items[i+2]
	}
	ofOther := i > 0 && sign.pause == none && items[i-1].any4(kBar, kQueen, kHive, kComb) && !items[i-1].is(kDo) || behind.is(kOf)
	if r.numberedBar(items, i) {
		return false
	}
	if r.manner.hivesByNumber && !ofOther && (spelt || labels || r.text[sign.end] == '.' || sign.text == "#") {
		return true
	}
	if r.manner.hivesByNumber && i > 0 && sign.pause == none && r.turnsBack(items, i-1) {
		return true // "back to No 1"
	}
	if (spelt || r.text[sign.end] == '.') && !ofOther && sign.pause >= stop && behind.is(kBe) && temperTold(items, i+3) {
		return true // "Number four is cross"
	}
	if spelt && sign.pause >= blank && !r.front.words.has(r.hiveID) && (i+2 == len(items) || behind.pause >= line || behind.pause == none && behind.any4(kBees, kBar, kLeaf, kSky)) {
		return true // "okay number nine they're packed", the first that is said
	}
	several := r.manner.severalHives && sign.pause >= stop || len(r.names) > 0 && sign.pause >= line
	return several && spelt && (labels && i+2 < len(items) || behind.is(kBe)) || spelt && r.front.words.has(r.hiveID) && r.numberInTurn(items, i)
}

// temperTold reports whether a temper or a strength, which no bar has, is told in the sentence from
// item k on.
func temperTold(items []item, k int) bool {
	for from := k; k < len(items) && (k == from || items[k].pause < comma); k++ {
		if items[k].any(kTemper, kStrength) {
			return true
		}
		if items[k].any3(kContent, kOn, kBars) {
			return false
		}
	}
	return false
}

// numberInTurn reports whether whose turn it is stands beside the number whose sign is item i,
// at the head of a line: "number four next", "number eight last of all", "now number eight
// honey on bar nine".
func (r *reader) numberInTurn(items []item, i int) bool {
	head := i
	for head > 0 && items[head].pause <= comma && r.isWord(&items[head-1], "and", "then", "and then", "now", "next", "so", "lastly", "finally", "last of all") {
		head--
	}
	turn := i + 2
	if items[head].pause < line || turn >= len(items) || items[turn].pause > none {
		return false
	}
	return items[turn].isWord4("now", "next", "then", "last") || items[turn].text == "last of all" || barTold(items, turn)
}

// barTold reports whether something from item k on is said to be on a bar, or on it: "honey on
// bar nine", "bar nine honey".
func barTold(items []item, k int) bool {
	for from := k; k+1 < len(items) && items[k].pause == none; k++ {
		if it := &items[k]; it.is(kBar) {
			return !it.plural && barNumber(&items[k+1]) && items[k+1].pause == none && (k == from || items[k-1].is(kOn))
		} else if !it.any6(kContent, kStage, kAmount, kQueen, kOn, kPattern) {
			return false
		}
	}
	return false
}

// spokenH reports whether the "h" at item i is short for hive before a number said in words, "h five is
// bursting", and neither an hour, "two h five", nor a letter spelt out, "h two o".
func spokenH(items []item, i int) bool {
	if i > 0 && items[i].pause == none && items[i-1].is(kNum) {
		return false
	}
	next := at(items, i+2)
	return items[i+1].pause == none && (next.pause > none || len(next.text) != 1)
}
