package parse

import "strings"

// focus is how surely the talk turns to the one of a name where it stands.
type focus uint8

const (
	noFocus  focus = iota
	headed         // it begins a sentence, where every word has a capital
	turnedTo       // the words before it turn to it: "time for Juniper", "began with Juniper"
)

// focusOn tells whether the talk turns to a name, and goes on about what is found in
// a hive.
func (r *reader) focusOn(toks []token, i, end int) focus {
	begins := i == 0 || toks[i].pause >= stop && !r.joinedOn(toks, i) || r.text[toks[i-1].end] == ';'
	turns := noFocus
	switch {
	case i == 0 && (r.openedNote(toks, end) || toks[i].has(capital) && r.titlesNote(toks, end)):
		return turnedTo
	case begins && r.doesAsHive(toks, i, end):
		turns = headed
		if i == 0 && toks[end].pause == none {
			turns = turnedTo // "Hazel made it through the winter", at the head of the note
		}
	case !begins && r.saidThat(toks, i) && r.doesAsHive(toks, i, end):
		turns = headed
	case !begins && r.ledTo(toks, i) && r.leftAt(toks, end) && !(r.says(toks[i-1], "in") && r.ofSomebody(toks, i-1)), r.exclaimed(toks, i, end):
		turns = turnedTo
	}
	if turns == noFocus || !r.talksOfHive(toks, end, nextSentences) {
		return noFocus
	}
	return turns
}

// joinedOn reports whether "and" or the like joins the sentence of the name that begins it
// to the one before, in which the talk may have been of something else.
func (r *reader) joinedOn(toks []token, i int) bool {
	return i > 0 && toks[i].pause >= stop && strings.ContainsFunc(r.text[toks[i-1].end:toks[i].start], isLetter)
}

// openedNote reports whether the note begins with a name and the day, or "again": "Juniper,
// 14 May."
func (r *reader) openedNote(toks []token, end int) bool {
	if end >= len(toks) {
		return false
	}
	k := end
	if toks[end].pause == none {
		if kind := r.dates.of(toks[end].id).kind; !toks[end].has(digits) && kind != weekdayWord && kind != monthWord {
			return r.says(toks[end], "again") || r.thisTime(toks, end)
		}
		for ; k < len(toks) && toks[k].pause == none; k++ {
			if !toks[k].has(digits) && r.dates.of(toks[k].id).kind == notDate {
				return false
			}
		}
		return k < len(toks) && toks[k].pause >= stop && (k > end+1 || strings.ContainsAny(r.text[toks[end].start:toks[end].end], "/.-")) // "Juniper 14/5."
	}
	for ; k < len(toks) && (k == end || toks[k].pause == none); k++ {
		if !toks[k].has(digits) && r.dates.of(toks[k].id).kind == notDate {
			return false
		}
	}
	return toks[end].pause == comma && k > end+1 && k < len(toks) && toks[k].pause == stop
}

// thisTime reports whether all that is said behind a name is that its turn is now: "Juniper this
// time; the others will keep".
func (r *reader) thisTime(toks []token, end int) bool {
	k := end + 1
	if end > 0 && r.among(&toks[end-1], weatherNouns) {
		return false // "Frost this morning, the bees were quiet"
	}
	if r.says(toks[end], "this") && k < len(toks) && toks[k].pause == none && r.says(toks[k], "time", "evening", "afternoon", "morning") {
		k++
	} else if !r.says(toks[end], "today", "tonight", "only") {
		return false
	}
	return k < len(toks) && toks[k].pause >= comma
}

// doesAsHive reports whether a sentence that begins with a name goes on as one about a
// hive may: with what hives do, whose turn it is, or the speaker's "I".
func (r *reader) doesAsHive(toks []token, i, end int) bool {
	if end >= len(toks) {
		return false
	}
	if k := behindComma(toks, end); k > 0 && (toks[k].lists.has(hiveDoings) || toks[k].lists.has(being)) && r.talksOfHive(toks, k, ownSentence) {
		return true // "Juniper, next to that rabble, stayed calm"
	}
	next := &toks[end]
	switch {
	case r.plural(toks, end), r.says(*next, "next") && end+1 < len(toks) && r.says(toks[end+1], "door"):
		return false
	case next.pause > none:
		dashed := next.pause == comma && strings.ContainsAny(r.text[toks[end-1].end:next.start], "-–—") && r.talksOfHive(toks, end, ownSentence)
		return dashed || r.headline(toks, i, end) || next.pause >= stop && (i == 0 || toks[i].pause >= line) && (next.pause >= line || r.talksOfHive(toks, end, ownLine)) || toks[end-1].has(coloned) && !r.ranksName(toks, i, end) || next.pause == comma && (r.dates.of(next.id).kind != notDate || next.has(digits))
	case next.lists.has(being):
		return r.isHowHivesAre(toks, i, end) || r.ate(toks, end) || r.ownsParts(toks, end)
	case next.lists.has(hiveDoings), next.lists.has(moving), r.ate(toks, end), r.ownsParts(toks, end):
		return true
	}
	return r.says(*next, "first", "next", "again", "after", "i", "we") || i > 0 && toks[i].pause == blank && r.verbOfOne(toks, end)
}

// ranksName reports whether a run is a label of its rank for the name behind it: "Favourite: Juniper."
func (r *reader) ranksName(toks []token, i, end int) bool {
	if r.says(toks[end], "the") && end+1 < len(toks) && toks[end+1].pause == none {
		end++
	}
	named := r.properRun(toks, end)
	return end == i+1 && named > end && (named == len(toks) || toks[named].pause >= stop) && r.among(&toks[i], favourites)
}

// verbOfOne reports whether a token may be a verb of which one is the subject, by its ending,
// and a word that stands behind verbs follows: "Copper closes the month".
func (r *reader) verbOfOne(toks []token, k int) bool {
	word := r.text[toks[k].start:toks[k].end]
	for _, nouns := range []string{"ers", "ors", "ists", "ions", "ings", "ends", "ows"} {
		if strings.HasSuffix(word, nouns) {
			return false // "Regular sufferers of this page"
		}
	}
	if toks[k].has(capital) || len(word) < 4 || !strings.HasSuffix(word, "ed") && (!strings.HasSuffix(word, "s") || strings.HasSuffix(word, "ss")) {
		return false
	}
	return toks[k].lists&unnamed == 0 && k+1 < len(toks) && !r.says(toks[k+1], "are", "were", "have", "of", "know", "and", "who", "that", "will")
}

// isHowHivesAre reports whether what a name is said to be or have is told of hives: "was
// packed", "had her feeder half full", and not "was late again with the cake". At the
// head of a line, and behind a verdict of a few words, the sentences behind may tell it:
// "Juniper is ticking over. No eggs."
func (r *reader) isHowHivesAre(toks []token, i, end int) bool {
	k := beFollows(toks, end)
	if k >= 0 && r.ownsSubject(toks, k) {
		return false
	}
	if k < 0 || r.fares(toks, end) || (i == 0 || toks[i].pause >= line || stopsWithin(toks, k, 5)) && !r.joinedOn(toks, i) && r.talksOfHive(toks, end, nextSentences) {
		return k >= 0
	}
	return r.saidOfColony(toks, k)
}

// stopsWithin reports whether the sentence ends within n words from token k.
func stopsWithin(toks []token, k, n int) bool {
	for end := k + n; k < len(toks) && k <= end; k++ {
		if toks[k].pause >= stop {
			return true
		}
	}
	return k == len(toks)
}

// ofHives are the kinds of words for what only a hive has.
var ofHives = setOf(kFixture, kCell, kBar, kComb, kBrood)

// headline reports whether a line begins with a name and a few words that end the
// sentence: "Green, then."
func (r *reader) headline(toks []token, i, end int) bool {
	if i > 0 && toks[i].pause < line || toks[end].pause != comma {
		return false
	}
	for k := end + 1; k < len(toks) && k <= end+3; k++ {
		if toks[k].pause > none {
			return toks[k].pause >= stop
		}
	}
	return false
}

// titlesNote reports whether what stands behind the name at the head of a note tells in a few
// bits, and no verb, which of the visits it is: "Green, third visit, a beginner's diary."
func (r *reader) titlesNote(toks []token, end int) bool {
	told := false
	if end == len(toks) || toks[end].pause != comma {
		return false
	}
	for k := end; k < len(toks) && k < end+12; k++ {
		if k > end && toks[k].pause >= stop {
			return told
		}
		if toks[k].id == r.hiveID || toks[k].lists.has(being) && toks[k].id != r.words.ownID || toks[k].lists.has(handles) || r.says(toks[k], "you", "your", "i", "we", "my") {
			return false
		}
		told = told || k > end && toks[k].pause == none && r.isNumber(&toks[k-1]) && r.says(toks[k], "go", "visit", "look", "inspection", "check", "opening", "week", "entry", "time", "session", "attempt", "release", "edition", "instalment", "bulletin", "report", "round", "season")
		told = told || toks[k].pause == none && k > end && r.isNumber(&toks[k]) && r.says(toks[k-1], "visit", "week", "inspection", "entry", "day", "number", "no", "look")
	}
	return false
}

// ledTo reports whether the words before a name turn the talk to it: a lead-in that
// begins a sentence, or one that stands behind a word of its own.
func (r *reader) ledTo(toks []token, i int) bool {
	for k := i - 1; k >= 0 && k >= i-2 && toks[k+1].pause == none; k-- {
		before, leads := r.leadIns[strings.ToLower(r.text[toks[k].start:toks[k].end])]
		if !leads {
			return false
		}
		if k == 0 || toks[k].pause >= stop || r.says(toks[k], "to") && r.walkedBefore(toks, k) {
			return true
		}
		if r.says(toks[k-1], before...) {
			return true
		}
	}
	return false
}

// leftAt reports whether the talk of a name stops behind it: at a pause, or a word for
// when or in what turn.
func (r *reader) leftAt(toks []token, end int) bool {
	if end >= len(toks) || toks[end].pause > none {
		return true
	}
	next := &toks[end]
	return next.lists.has(being) || r.dates.of(next.id).kind != notDate || r.says(*next, "first", "next", "again", "after", "before", "by", "tonight", "together", "there", "all", "i")
}

// isPerson reports whether the words around a name tell that it is a person's.
func (r *reader) isPerson(toks []token, i, end int) bool {
	said := func(k int, words ...string) bool { return k >= 0 && k < len(toks) && r.says(toks[k], words...) }
	switch close := end < len(toks) && toks[end].pause == none; {
	case i > 0 && toks[i].pause == none && toks[i-1].lists.has(kin):
		return !(said(i-1, "neighbour", "neighbor", "sister", "daughter") && said(i-2, "her", "its", "their") && r.isHowHivesAre(toks, i-2, end)) // "my husband Peter", not "her neighbour Tansy is queenless"
	case close && said(end, "and") && said(end+1, "i") && !r.relates(toks, end+2) && !(i > 1 && toks[i].pause == none && (said(i-2, "i", "we") || said(i-1, "was", "is"))), said(i-1, "and") && said(i-2, "i", "me"):
		return true // "Sarah and I", and not "I adore Juniper and I fear Tansy", "Mine was Juniper and I …"
	case close && said(end, "writing", "speaking", "typing", "dictating") && (end+1 == len(toks) || toks[end+1].pause > none):
		return true // "Nora writing."
	case close && said(end, "was", "got") && said(end+1, "stung"):
		return true // bees sting people, not hives
	case close && said(end, "came", "went", "popped", "dropped") && said(end+1, "round", "over", "along", "by"):
		return true
	case close && said(end, "came", "walked", "went", "drove") && said(end+1, "with") && said(end+2, "me", "us"):
		return true // "Maud came with me"
	case close && r.keepsBees(toks, end), close && r.actsAsPerson(toks, end), close && r.doesAsKeeper(toks, end), close && r.hisAre(toks, end):
		return true
	case i > 0 && toks[i].pause == none && r.among(&toks[i-1], addressing):
		return true // "I must ask Sarah"
	case close && said(end, "for") && end+1 < len(toks) && r.among(&toks[end+1], meals):
		return true // "went round to Walter for tea"
	case close && r.tellsOfKin(toks, end):
		return true // "Margaret had us in fits over her brother's bees"
	case close && r.lostHis(toks, end):
		return true // "Walter at the road end has lost his to the wasps"
	case close && r.hasHisOwn(toks, end):
		return true // "Walter has nosema in two of his"
	case close && r.isOfMine(toks, end):
		return true // "Nora is my best friend"
	case close && said(end, "at") && said(end+1, "number", "no") && end+2 < len(toks) && r.isNumber(&toks[end+2]):
		return true // "Walter at number 9 has lost two"
	case close && said(end, "'s", "is", "was") && said(end+1, "sorting", "getting", "finding", "sending", "bringing", "lending", "giving") && said(end+2, "me", "us"):
		return true // "Dara's sorting me a queen"
	case close && said(end, "next") && said(end+1, "door"), close && said(end, "from") && said(end+1, "next") && said(end+2, "door"):
		return true // "Lad next door wraps his in carpet", "Nora from next door"
	case close && toks[end].has(capital) && said(end, "bee", "beekeepers", "group", "club", "society", "association"):
		return true // "Sandy Lane Bee Group"
	case end+1 < len(toks) && toks[end].pause == comma && strings.HasSuffix(r.text[:toks[end].start], "(") && said(end, "plot", "flat", "allotment") && r.isNumber(&toks[end+1]):
		return true // "Walter (plot 12) has lost his"
	case close && said(end, "who", "whose"), close && toks[end].id == r.words.ownID && said(end+1, "lot") && !r.doneToMe(toks, min(end+2, len(toks))) && (r.givenNames.has(toks[i].id) || end+2 == len(toks) || !toks[end+2].lists.has(being)):
		return true // "Pauline's lot"
	}
	for k := end; k < len(toks) && k < end+6 && toks[k].pause == none && !toks[k].lists.has(being) && !(said(k, "and") && i > 0 && toks[i].pause == none) && !said(k, "for", "you", "i", "we", "they", "he", "she"); k++ {
		if toks[k].lists.has(speaking) {
			return true // "Vernon from the next plot says"
		}
	}
	return false
}

// relates reports whether what is told from token k on is how two get on, as is told of a hive in jest:
// "Juniper and I are no longer on speaking terms".
func (r *reader) relates(toks []token, k int) bool {
	for last := k + 9; k < len(toks) && k < last && toks[k].pause < stop; k++ {
		if r.among(&toks[k], relations) {
			return r.talksOfHive(toks, k, nextSentences)
		}
	}
	return false
}

// actsAsPerson reports whether what people do at a hive is told of a name: "Nora did the
// counting", "Nora spotted the queen".
func (r *reader) actsAsPerson(toks []token, end int) bool {
	if end+1 >= len(toks) || toks[end+1].pause > none {
		return false
	}
	if r.says(toks[end], "did") {
		return r.says(toks[end+1], "the")
	}
	return r.among(&toks[end], noticing) && r.says(toks[end+1], "the", "a", "an", "her", "our", "it", "out", "one", "two", "three", "four", "five", "six")
}

// doesAsKeeper reports whether what keepers do, and no hive does, is told of a name: "Walter never
// treats", "Walter also buys new queens".
func (r *reader) doesAsKeeper(toks []token, end int) bool {
	for end < len(toks) && toks[end].pause == none && r.says(toks[end], "never", "always", "also", "only", "just", "still", "usually", "even", "sometimes", "now") {
		end++
	}
	return end < len(toks) && toks[end].pause == none && r.among(&toks[end], keepersDo)
}

// hasHisOwn reports whether it is told of a name what hives of his own have: "Walter has nosema in two
// of his", "Nora lost three of hers".
func (r *reader) hasHisOwn(toks []token, end int) bool {
	if !r.says(toks[end], "has", "had", "'s", "lost", "found", "got", "made", "took", "split") {
		return false
	}
	for k := end + 1; k+1 < len(toks) && k < end+8 && toks[k+1].pause == none; k++ {
		if r.says(toks[k], "of", "in", "with", "from") && r.says(toks[k+1], "his", "hers", "theirs") && (k+2 == len(toks) || toks[k+2].pause > none || r.says(toks[k+2], "already", "too", "and", "last", "this") || !r.says(toks[k+1], "his") || toks[k+2].id == r.hivesID || toks[k+2].id == r.hiveID) {
			return true
		}
	}
	return false
}

// tellsOfKin reports whether kin of the one of a name are told of in the sentence: "Margaret had us in fits
// over her brother's bees".
func (r *reader) tellsOfKin(toks []token, end int) bool {
	for k := end; k+1 < len(toks) && k < end+10 && toks[k].pause == none; k++ {
		if r.says(toks[k], "her", "his") && toks[k+1].lists.has(kin) && toks[k+1].pause == none {
			return true
		}
	}
	return false
}

// lostHis reports whether it is told of a name, over where he lives, that he lost his: "Walter at the
// road end has lost his to the wasps".
func (r *reader) lostHis(toks []token, end int) bool {
	for k := end; k+1 < len(toks) && k < end+8 && (k == end || toks[k].pause == none); k++ {
		if !r.says(toks[k], "lost", "loses") || toks[k+1].pause > none {
			continue
		}
		his := k + 1
		if r.says(toks[his], "all", "both", "two", "three", "half") && his+2 < len(toks) {
			his++
		}
		if r.says(toks[his], "of") && his+1 < len(toks) {
			his++
		}
		if his > k+1 && (toks[his].id == r.hivesID || toks[his].id == r.coloniesID) {
			return true // "Dara lost two colonies to the heat"
		}
		return r.says(toks[his], "his", "theirs") && (his+1 == len(toks) || toks[his+1].pause > none || r.says(toks[his+1], "to", "in", "over", "last", "this", "already", "as", "and", "bees", "hives", "colonies", "colony"))
	}
	return false
}

// isOfMine reports whether a name is said to be that of one's kin, friend or mentor: "Nora is my best
// friend".
func (r *reader) isOfMine(toks []token, end int) bool {
	if !r.says(toks[end], "is", "was", "'s") || end+2 >= len(toks) || !r.says(toks[end+1], "my", "our") {
		return false
	}
	for k := end + 2; k < len(toks) && k < end+4 && toks[k].pause == none; k++ {
		if toks[k].lists.has(kin) {
			return true
		}
	}
	return false
}

// hisAre reports whether more than one of what a name has are told of, his bees or hives: "Gareth's
// across the brook are robbing".
func (r *reader) hisAre(toks []token, end int) bool {
	if toks[end].id != r.words.ownID {
		return false
	}
	for k := end + 1; k < len(toks) && k < end+6 && toks[k].pause == none; k++ {
		if r.says(toks[k], "are", "were", "have") {
			return k > end+1 && (toks[end+1].lists.has(standing) || r.says(toks[end+1], "over", "across", "down", "up", "in", "on", "from"))
		}
	}
	return false
}

// keepsBees reports whether what a keeper does with a hive, or has for one, is told of a
// name: "Walter requeened the colony", "Walter has a queen for us".
func (r *reader) keepsBees(toks []token, end int) bool {
	last := end + 1
	if last >= len(toks) || toks[last].pause > none || r.ate(toks, end) || r.tookAsColony(toks, end) || r.droppedMites(toks, end) {
		return false
	}
	for _, n := range r.lex.matcher.longest(toks[:last], end, nil).rules {
		if r.kindOf[n] == kDo && (!toks[end].lists.has(hiveDoings) || r.says(toks[end], "requeened")) && !toks[end].lists.has(being) && (r.says(toks[last], "the", "my", "our", "them", "it", "both") || r.isNumber(&toks[last]) && !r.says(toks[last], "to", "for", "and", "by")) {
			return true
		}
	}
	if !r.says(toks[end], "has", "had", "'s") {
		return false
	}
	for k := last; k+1 < len(toks) && k < end+6 && toks[k+1].pause == none; k++ {
		if r.says(toks[k], "for") && r.says(toks[k+1], "us", "me") {
			return r.lex.matcher.longest(toks[:k], k-1, nil).kinds.meet(setOf(kQueen, kBar, kBars, kSubstance, kCell, kFixture))
		}
	}
	return false
}
