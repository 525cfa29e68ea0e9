package parse

import "strings"

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
	for end < len(toks) && toks[end].pause == none && r.says(toks[end], r.wordsOf[verdictAdverbs]...) {
		end++
	}
	next := beFollows(toks, end) + 1
	if next > 0 && next < len(toks) && toks[next].pause == none && r.says(toks[next], "had") {
		next++ // "Juniper has had a poor week"
	}
	for next > 0 && next < len(toks) && toks[next].pause == none && r.says(toks[next], r.wordsOf[verdictAdverbs]...) {
		next++
	}
	if next == 0 || next >= len(toks) {
		return false
	}
	if toks[next].lists.has(faring) {
		return true
	}
	the := r.says(toks[next], "the") && !r.says(toks[next-1], "are", "were") // "the dahlias are the best for years"
	if !r.says(toks[next], "a") && !the || toks[next].pause > none {
		return false
	}
	for k := next + 1; k < len(toks) && k <= next+2 && toks[k].pause == none; k++ {
		if toks[k].lists.has(faring) || toks[k].lists.has(verdicts) || r.says(toks[next-1], "had") && r.says(toks[k], "week", "month", "season", "winter", "spring", "summer", "year", "time") {
			return true // "a different matter", "a sadder tale"
		}
	}
	return false
}

// theNamed reports whether "the" or "to the" begins a sentence before a name: "The Sundial
// is weak", "To the Quince at noon".
func (r *reader) theNamed(toks []token, i, end int) bool {
	k := i - 1
	if k < 0 || r.plural(toks, end) || toks[i].pause > none || !r.says(toks[k], "the") {
		return false
	}
	if k > 0 && toks[k].pause == none && r.says(toks[k-1], "to") {
		if end < len(toks) && toks[end].pause > none {
			return false // "To the Committee, and for the notice board"
		}
		k--
	}
	return k == 0 || toks[k].pause >= stop
}

// plural reports whether a name ends as that of a family does, "the Dawsons", and neither
// as "Mavis" and "Magnus" do nor before a verb for one.
func (r *reader) plural(toks []token, end int) bool {
	last := toks[end-1]
	if r.text[last.end-1] != 's' || strings.IndexByte("siuy", r.text[last.end-2]) >= 0 {
		return false
	}
	return end == len(toks) || toks[end].pause > none || !r.says(toks[end], "is", "was", "has", "'s")
}

// placeName reports whether a word of place begins a name of two: "Top Terrace".
func (r *reader) placeName(toks []token, i int) bool {
	if i+1 == len(toks) || !toks[i+1].has(capital) || toks[i+1].pause > none || toks[i+1].has(glued) || !r.mayName(toks, i+1) {
		return false
	}
	if r.says(toks[i], r.wordsOf[twins]...) && (toks[i+1].has(coloned) || r.twinNamed(toks, i+1)) {
		return true
	}
	if toks[i].pause < stop && toks[i].has(capital) && toks[i+1].lists.has(placesNear) || r.says(toks[i], r.wordsOf[twins]...) && toks[i+1].lists.has(placesNear) || r.says(toks[i], "long", "high", "low", "far", "home") && toks[i+1].lists.has(placesNear) {
		return true // "the Long Meadow colony"
	}
	if toks[i].lists&unnamed != 0 {
		return false
	}
	if toks[i+1].lists.has(placesNear) && !toks[i].lists.has(plainWords) && r.numbers.of(toks[i].id).kind == notNumber && r.dates.of(toks[i].id).kind == notDate {
		return true // "Stone Lane has eggs"
	}
	best := r.lex.matcher.longest(toks[:i+1], i, nil)
	for _, n := range best.rules {
		if !ofPlaces.has(r.kindOf[n]) {
			return false
		}
	}
	return best.end > i
}

// twinNamed reports whether the name at token k stands behind another of twins too.
func (r *reader) twinNamed(toks []token, k int) bool {
	name := r.text[toks[k].start:toks[k].end]
	for j := 1; j < len(toks); j++ {
		if toks[j].pause == none && r.says(toks[j], name) && r.says(toks[j-1], r.wordsOf[twins]...) && toks[j-1].has(capital) && toks[j-1].id != toks[k-1].id {
			return true
		}
	}
	return false
}

// ofPlaces are the kinds of words that can begin the name of a place.
var ofPlaces = setOf(kPlace, kSide, kFixture, kStrength, kComb, kFull)

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
		switch traitsOf(r.rules[n].Value).hive {
		case tendedTo, lookedInto, joinedTo:
			return true
		}
	}
	return false
}

// oneOf reports whether "the new one" or the like stands behind a name and a comma.
func (r *reader) oneOf(toks []token, end int) bool {
	return end+2 < len(toks) && toks[end].pause == comma && r.says(toks[end], "the") && r.says(toks[end+2], "one")
}

// flowers reports whether a plant is told to be in flower from token k on.
func (r *reader) flowers(toks []token, k int) bool {
	if k+1 >= len(toks) || toks[k].pause > none || toks[k+1].pause > none || !r.says(toks[k], "'s", "is", "are", "was", "were") {
		return false
	}
	if k+3 < len(toks) && toks[k+2].pause == none && toks[k+3].pause == none && r.says(toks[k+2], "this") && r.says(toks[k+3], "year", "season", "spring", "summer") {
		return r.says(toks[k+1], "poor", "good", "late", "early", "wonderful", "hopeless", "excellent", "over", "generous", "slow") // "the lime was poor this year"
	}
	if r.says(toks[k], "was", "were") {
		return false
	}
	if r.says(toks[k+1], "flowering", "blooming", "blossoming") {
		return true
	}
	if r.says(toks[k+1], "in") {
		return k+2 < len(toks) && r.says(toks[k+2], "flower", "bloom", "blossom")
	}
	return r.says(toks[k+1], "on", "out", "over") && (k+2 == len(toks) || toks[k+2].pause > none || r.says(toks[k+2], "and", "now", "again"))
}

// weigh adds up what the words around a run say for a hive's name; about tells that the
// text behind it is about a hive.
func (r *reader) weigh(toks []token, i, end int, byWord, about bool) int {
	in := func(k int, of list) bool { return k >= 0 && k < len(toks) && toks[k].lists.has(of) }
	is := func(k int, words ...string) bool { return k >= 0 && k < len(toks) && r.says(toks[k], words...) }
	if toks[i].pause == none && i > 0 && toks[i-1].lists&anyTitle != 0 && !(is(i-1, "old") && is(i-2, "poor", "good", "dear")) || in(end, handles) && toks[end].pause == none {
		return -2 * enough
	}
	prev, before := i-1, i-2
	if prev == 0 && toks[i].pause == none && is(prev, "well", "hey", "ah", "oh", "hullo", "hiya", "morning", "evening") && (end == len(toks) || toks[end].pause >= comma) {
		return -2 * enough // "Well Nora.", who is spoken to
	}
	_, passed := r.barsPassed(toks, i, end)
	switch {
	case r.flowers(toks, end):
		return -2 * enough // "Ironbark's out and the nectar is pouring in"
	case !byWord && i > 0 && toks[i-1].pause >= line && toks[i].pause == none && is(i-1, "the") && toks[end-1].has(coloned) && end < len(toks) && r.talksOfHive(toks, end, ownSentence):
		return enough // "The Duchess: 31 kg, honey on eight bars"
	case passed && !byWord, !byWord && r.tipsScale(toks, end):
		return enough // "two bars went from Juniper to Tansy", "Juniper came to 24 kilos"
	case r.contrasted(toks, end):
		return 0
	case r.labelsLine(toks, i, end):
		return -2 * enough
	case is(end, "'s") && is(end+1, "yard", "garden", "apiary", "field", "orchard", "place", "house", "farm", "allotment", "shed") && is(prev, "in", "at", "from", "to"):
		return -2 * enough // "her mother sits in Ivo's yard"
	case is(prev, "the") && strings.HasPrefix(r.text[toks[end-1].end-1:], "s' "):
		return -2 * enough // "the Methodists' bees"
	case r.ownedElsewhere(toks, end):
		return -2 * enough
	case end+1 < len(toks) && toks[end].pause == none && toks[end+1].pause == none && toks[end].lists&unnamed == 0 && toks[end].flags&capital == 0 && toks[end+1].id == r.hiveID:
		return -2 * enough // "back to Quince tree hive"
	case is(prev, "to") && is(before, "thanks", "thank"), end+1 < len(toks) && toks[end].id == r.words.ownID && is(end+1, "notes", "note", "diary", "report", "letter", "log", "column", "corner", "journal", "jottings", "page", "notebook"):
		return -2 * enough // "thanks to Nora", "Nora's notes"
	case !byWord && r.inHiveList(toks, i, end):
		return enough // "three colonies: Juniper, Tansy and Marigold"
	case (i == 0 || toks[i].pause >= colon) && !byWord:
		return r.weighSubject(toks, i, end, about)
	case byWord && i > 0 && toks[i].pause >= line && toks[end-1].has(coloned) && end-i <= 2 && end < len(toks) && r.hiveLabel(toks, i) && !r.listsPeople(toks, end) && r.talksOfHive(toks, end, ownSentence):
		return enough // "Quarry hive: …" and below "Clover: queen not seen"
	case i > 0 && toks[i].pause >= stop && r.fares(toks, end), r.tended(toks, i):
		return enough - 1 // "Medlar is another story", "fed Medlar"
	case i == 1 && toks[i].pause == comma && end < len(toks) && toks[end].pause == comma && r.says(toks[0], "right"):
		return enough - 1 // "Right, Juniper, …"
	case r.theNamed(toks, i, end) && beFollows(toks, end) == end && r.talksOfHive(toks, end, ownSentence):
		return enough - 1 // "The Sundial is weak"
	case r.theNamed(toks, i, end) && beFollows(toks, end) == end:
		return 1
	case is(prev, "the") && !r.plural(toks, end) && (is(before, "to") && (before == 0 || toks[before].pause >= stop) && (end == len(toks) || toks[end].pause != comma) || is(before, "from") || is(before, "of") && in(i-3, hiveParts)):
		return enough - 1 // "To the Sundial after breakfast", "two bars from the Sundial"
	case r.thenComes(toks, i, end) && (r.oneOf(toks, end) || behindComma(toks, end) == 0 && end < len(toks) && toks[end].pause == comma && r.talksOfHive(toks, end, nextSentences)), r.firstComes(toks, i, end):
		return enough // "Then Medlar, the new one", "Then Medlar, our youngest. Four seams"
	case is(prev, "the") && end < len(toks) && r.saysBees(toks[end]) && toks[end].pause == none:
		return enough // "the Orchard lot"
	case i == 1 && is(prev, "the") && is(end, "saga", "story", "tale", "chronicle", "chronicles") && toks[end].pause == none && r.talksOfHive(toks, end, nextSentences):
		return enough // "The Sundial saga, part four. They swarmed …"
	case is(prev, "how", "whether") && (beFollows(toks, end) == end || is(end, "does", "did", "fares", "fared", "goes", "gets", "got")):
		return enough // "how Juniper was"
	case is(prev, "about", "of") && toks[end-1].has(coloned) && r.talksOfHive(toks, end, nextSentences):
		return enough // "the stories about Juniper: I went in this afternoon"
	case r.thenComes(toks, i, end):
		return enough - 1
	}
	return r.weighLead(toks, i, end)
}

// weighLead adds up what the words right before a run, and the ones they lean on, say for a
// hive's name.
func (r *reader) weighLead(toks []token, i, end int) int {
	in := func(k int, of list) bool { return k >= 0 && k < len(toks) && toks[k].lists.has(of) }
	is := func(k int, words ...string) bool { return k >= 0 && k < len(toks) && r.says(toks[k], words...) }
	prev, before := i-1, i-2
	switch {
	case toks[i].pause == comma && is(prev, "two", "three", "four", "pair", "both", "hives", "colonies") && r.fares(toks, end):
		return enough // "of the two, Juniper is the stronger"
	case toks[i].pause == comma && (end >= len(toks) || toks[end].pause == comma) && r.hiveBefore(toks, i):
		return enough // "the strongest hive, Juniper, …"
	case toks[i].pause == comma && end < len(toks) && toks[end].pause == comma && (is(prev, "mine", "ours") && is(before, "of") || is(prev, "other") && is(before, "the", "my", "our")) && r.talksOfHive(toks, end, nextSentences):
		return enough // "one of mine, Juniper, was mean. The other, Tansy, …"
	case is(prev, "with", "into", "onto", "to") && toks[i].pause == none && r.unitedNear(toks, prev):
		return enough // "unite her with Tansy"
	case is(prev, "with") && is(before, "day", "trouble"):
		return enough // "no trouble with Juniper"
	case is(prev, "after", "about") && is(before, "asked", "ask", "asking", "asks"):
		return enough - 1 // "you asked after Juniper"
	case in(prev, meetings):
		return enough - 1
	case is(prev, "the") && toks[i].pause == none && is(before, "opened", "opening", "inspected", "visited") && r.talksOfHive(toks, end, nextSentences):
		return enough // "opened the Endeavour first: eggs on bar 3"
	case in(prev, openings) && r.namesAThing(toks, prev):
		return -2 * enough // "one mite, which they have named Kevin"
	case in(prev, openings):
		return enough
	case in(before, namings) && in(prev, namedOnes):
		return enough // "we call her Juniper"
	case is(prev, "neighbour", "neighbor") && is(before, "her", "its", "their") && r.isHowHivesAre(toks, i, end):
		return enough // "her neighbour Tansy is queenless"
	case is(prev, "gave") && r.givenTime(toks, end):
		return enough - 1 // "gave Juniper half an hour"
	case is(prev, "for", "because", "since", "but", "and", "though", "although", "while", "so") && r.doneToMe(toks, end) && r.talksOfHive(toks, end, nextSentences):
		return enough - 1 // "I am sore, for Juniper has paid me back"
	case is(prev, "namely"), is(end, "on") && is(end+1, "the") && is(end+2, "label"):
		return enough // "one colony, namely Juniper", "Juniper on the label"
	case is(prev, "as") && (is(before, "known") || is(i-3, "known")), is(prev, "name") && is(before, "with", "of", "the"):
		return enough // "the colony known as Juniper", "a hive by the name of Juniper"
	case is(prev, "came") && is(before, "next", "then", "last", "first"):
		return enough // "next came Juniper"
	case is(prev, "for") && is(before, "as") && r.talksOfHive(toks, end, ownSentence):
		return enough // "As for Juniper, calm"
	case is(prev, "for") && is(before, "as"), is(prev, "to") && r.walkedBefore(toks, prev):
		return enough - 1 // "as for Juniper", "walked down to Juniper"
	case (is(prev, "and", "so") || toks[i].pause == comma) && r.fares(toks, end):
		return enough - 1 // "the first look of the year, and Juniper is alive"
	case (is(prev, "and") || toks[i].pause == comma) && beFollows(toks, end) == end && end+1 < len(toks) && toks[end+1].pause == none && r.weighSaid(toks, end+1) > 0:
		return enough - 1 // "no wind, and Juniper was bearding"
	case is(prev, "of") && in(before, hiveParts):
		return enough // "the roof of Juniper"
	case is(prev, "at", "on", "round", "around", "outside") && is(end, "'s") && r.toldNear(toks, prev, setOf(kSign)):
		return enough // "wasps at Juniper's front door"
	case is(prev, "in") && prev > 0 && toks[i].pause == none && (r.toldNear(toks, prev, setOf(kSign, kContent, kCell, kQueen, kSeen)) || r.barBeforeIn(toks, i)):
		return enough // "no cells in Juniper"
	case is(prev, "in") && toks[i].pause == none && end < len(toks) && toks[end].pause == comma && r.startsBefore(toks, prev, 4) && r.talksOfHive(toks, end, ownSentence):
		return enough - 1 // "no such luck in Tansy, queen not seen"
	case is(prev, "in") && (i == 1 || toks[prev].pause >= stop || is(before, "but")):
		return enough - 1
	case is(end, "went") && is(end+1, "for") && (is(end+2, "me") || is(end+2, "us")):
		return enough // "and Teak went for me"
	case is(prev, "had") && is(end, "open"), is(prev, "off") && is(before, "lid", "roof", "cover"):
		return enough // "had Juniper open", "had the lid off Juniper"
	case is(prev, "on", "of", "from", "for") && toks[i].pause == none && (r.toldNear(toks, prev, setOf(kMethod)) || is(prev, "from") && is(before, "bees")):
		return enough // "a sugar roll on Juniper", "washed bees from Juniper"
	case is(end, "'s") && in(end+1, hiveParts) && is(prev, "at", "on", "outside", "round", "around", "under", "in"):
		return enough // "they queued at Juniper's door"
	case in(prev, visitLinks):
		for k := before; k >= 0 && k >= i-4; k-- {
			if in(k, visits) {
				return enough // "had a look in at Juniper"
			}
		}
	}
	return 0
}

// weighSubject weighs a name that begins a sentence by what is said of it: a
// heading of its own, or a verb of being and a word for bees.
func (r *reader) weighSubject(toks []token, i, end int, about bool) int {
	if toks[i].pause >= line && end < len(toks) {
		if toks[end-1].has(coloned) && end-i <= 2 {
			if r.listsPeople(toks, end) {
				return 0 // "Stewards: Nora + Piet"
			}
			return enough
		}
		if toks[end].pause >= line && (linesAfter(toks, end) || r.talksOfHive(toks, end, ownSentence) || end+1 < len(toks) && r.barNouns.has(toks[end].id) && r.isNumber(&toks[end+1])) {
			return enough
		}
		if toks[end].pause == comma && strings.ContainsAny(r.text[toks[end-1].end:toks[end].start], "-–—") && r.talksOfHive(toks, end, ownSentence) {
			return enough // "Maple - BIAS on five bars"
		}
		if k := r.dayBehind(toks, end); k > 0 && (r.plantOrColour(toks[i]) || r.allCapitals(toks, i, end)) && r.talksOfHive(toks, k, nextSentences) {
			return enough // "QUINCE, Tuesday 12 May"
		}
		if end < len(toks) && toks[end].pause == colon && r.text[toks[end-1].end] == ';' && r.talksOfHive(toks, end, ownLine) {
			return enough // "Alder; eggs bar 6; quiet"
		}
	}
	if end == len(toks) {
		return 0
	}
	if k := r.labelEnd(toks, end); k > 0 && r.talksOfHive(toks, k, ownSentence) {
		return enough // "Gasworks, top end of the yard: heavy on stores"
	}
	if about {
		return enough - 1
	}
	if r.calledColony(toks, end) {
		return enough // "Juno, my one and only colony"
	}
	if toks[i].pause >= line && (r.isSubject(toks, i, end) || r.iDid(toks, end) || r.placeName(toks, i)) && r.talksOfHive(toks, end, ownLine) {
		return enough // "Aspen is the one to watch. I found three queen cells …"
	}
	if r.says(toks[end], "first", "next") || r.inTurn(toks, end) {
		return enough - 1
	}
	if r.says(toks[end], "swarmed") || toks[i].pause >= line && r.ate(toks, end) {
		return enough // "Juniper received a litre of syrup"
	}
	k := beFollows(toks, end)
	if k < 0 || r.plural(toks, end) && r.says(toks[k], "are", "were") {
		return 0 // "Onions are in, and the bees …"
	}
	if r.fares(toks, end) {
		return enough // "Juniper is doing well", "Juniper is a different matter"
	}
	for last := k + 14; k < len(toks) && k < last && toks[k].pause < stop; k++ {
		if w := r.weighSaid(toks, k); w > 0 {
			return w
		}
		if r.says(toks[k], "inspection", "examination") {
			return enough - 1 // "Juniper had her first full inspection"
		}
		if k+2 < len(toks) && toks[k].pause == none && r.says(toks[k-1], "has", "had", "on") && r.isNumber(&toks[k]) && r.barNouns.has(toks[k+1].id) && r.says(toks[k+2], "in", "of", "covered", "drawn") {
			return enough // "Juniper has ten bars in use"
		}
	}
	return 0
}

// iDid reports whether the speaker's deed follows a name: "Juniper I split".
func (r *reader) iDid(toks []token, end int) bool {
	return end+1 < len(toks) && toks[end].pause == none && r.says(toks[end], "i", "we") &&
		(r.weighSaid(toks, end+1) == enough || r.says(toks[end+1], "found", "left", "saved"))
}

// headsParagraph reports whether a name is a sentence at the head of a paragraph about a
// hive, behind its number in a list or not: "2. Mill Race. Requeened on Tuesday."
func (r *reader) headsParagraph(toks []token, i, end int) bool {
	if end >= len(toks) || toks[end].pause != stop {
		return false
	}
	head := i == 0 || toks[i].pause >= line || toks[i-1].has(digits) && (i == 1 || toks[i-1].pause >= line)
	return head && r.talksOfHive(toks, end, ownLine)
}

// calledColony reports whether an aside behind a name says that it is a colony's: "Juno,
// my one and only colony".
func (r *reader) calledColony(toks []token, end int) bool {
	if toks[end].pause != comma {
		return false
	}
	for k := end; k < len(toks) && k < end+8 && (k == end || toks[k].pause < comma); k++ {
		if toks[k].id == r.hiveID || toks[k].id == r.colonyID {
			return true
		}
	}
	return false
}
