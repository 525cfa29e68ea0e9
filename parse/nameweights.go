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
	for end < len(toks) && toks[end].pause == none && r.among(&toks[end], verdictAdverbs) {
		end++
	}
	next := beFollows(toks, end) + 1
	if next > 0 && next < len(toks) && toks[next].pause == none && r.says(toks[next], "had") {
		next++ // "Juniper has had a poor week"
	}
	for next > 0 && next < len(toks) && toks[next].pause == none && r.among(&toks[next], verdictAdverbs) {
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
	if i+1 == len(toks) || !toks[i+1].has(capital) || toks[i+1].pause > none || toks[i+1].has(glued) {
		return false
	}
	if !r.mayName(toks, i+1) {
		return toks[i].has(capital) && toks[i+1].lists.has(placesNear) && r.mayName(toks, i) // "Compost Corner"
	}
	if toks[i].pause < stop && toks[i].has(capital) && toks[i+1].lists.has(placesNear) || r.says(toks[i], "long", "high", "low", "far", "home") && toks[i+1].lists.has(placesNear) {
		return true // "the Long Meadow colony"
	}
	if (i == 0 || toks[i].pause >= line) && toks[i].has(capital) && toks[i+1].has(coloned) && r.among(&toks[i], nameEpithets) && r.talksOfHive(toks, i+2, ownSentence) {
		return true // "Long Acre: …"
	}
	if toks[i].lists&unnamed != 0 {
		return false
	}
	if toks[i+1].lists.has(placesNear) && !toks[i].lists.has(plainWords) && r.numbers.of(toks[i].id).kind == notNumber && r.dates.of(toks[i].id).kind == notDate {
		return true // "Stone Lane has eggs"
	}
	best := r.lex.matcher.alone(toks[i].id)
	for _, n := range best.rules {
		if !ofPlaces.has(r.kindOf[n]) {
			return false
		}
	}
	return best != senseless
}

// monthInName reports whether a month begins a name of two: "June Bug is still mean", "requeen June
// Bug", and not "in June Juniper was weak".
func (r *reader) monthInName(toks []token, i int) bool {
	if r.dates.of(toks[i].id).kind != monthWord || i+1 == len(toks) || !toks[i+1].has(capital) || toks[i+1].pause > none || toks[i+1].has(glued) || !r.mayName(toks, i+1) {
		return false
	}
	return i == 0 || toks[i].pause >= stop || r.tended(toks, i) || r.opensBefore(toks, i)
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
	for k+2 < len(toks) && toks[k+2].pause == none && r.says(toks[k+1], "not", "n't", "nearly", "almost", "just", "only", "still", "now", "fully", "all", "well") {
		k++ // "Manuka's not out yet"
	}
	if k+3 < len(toks) && toks[k+2].pause == none && toks[k+3].pause == none && r.says(toks[k+2], "this") && r.says(toks[k+3], "year", "season", "spring", "summer") {
		return r.among(&toks[k+1], plantsDid) // "the lime was poor this year"
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
	return r.says(toks[k+1], "on", "out", "over") && (k+2 == len(toks) || toks[k+2].pause > none || toks[k+2].lists.has(standing) || r.says(toks[k+2], "and", "now", "again", "yet", "along", "in", "all", "on", "up", "down"))
}

// weighSubject weighs a run that begins a sentence: as a heading of its own, or by what is
// said of it.
func (m *mention) weighSubject() int {
	toks, end := m.toks, m.end
	if weight, found := m.weighHeading(); found {
		return weight
	}
	if end == len(toks) {
		return 0
	}
	if k := m.labelEnd(toks, end); k > 0 && m.talksOfHive(toks, k, ownSentence) {
		return enough // "Gasworks, top end of the yard: heavy on stores"
	}
	if m.about {
		return enough - 1
	}
	if m.calledColony(toks, end) {
		return enough // "Juno, my one and only colony"
	}
	if m.pause() >= line && (m.isSubject(toks, m.i, end) || m.iDid(toks, end) || m.placeName(toks, m.i)) && m.tells(ownLine) {
		return enough // "Aspen is the one to watch. I found three queen cells …"
	}
	if m.behind(0, "first", "next") || m.inTurn(toks, end) {
		return enough - 1
	}
	if m.behind(0, "swarmed") || m.fliesAsBees(toks, end) && m.tells(nextSentences) || m.pause() >= line && m.ate(toks, end) {
		return enough // "Juniper received a litre of syrup"
	}
	be := beFollows(toks, end)
	if be < 0 || m.ownsSubject(toks, be) || m.plural(toks, end) && m.says(toks[be], "are", "were") {
		return 0 // "Onions are in, and the bees …"
	}
	if m.fares(toks, end) {
		return enough // "Juniper is doing well", "Juniper is a different matter"
	}
	return m.weighPredicate(be)
}

// weighHeading weighs a run that begins a line as its heading or label; found tells that it
// is one.
func (m *mention) weighHeading() (weight int, found bool) {
	toks, end := m.toks, m.end
	if m.pause() < line && !m.numberedLine() || end == len(toks) {
		return 0, false
	}
	next := toks[end].pause
	switch {
	case m.arrowed() && m.talksOfHive(toks, end, ownSentence):
		return enough, true // "Maple → eggs on bar 5"
	case m.coloned() && end-m.i <= 2:
		if m.listsPeople(toks, end) || m.abstract() {
			return 0, true // "Stewards: Nora + Piet"
		}
		return enough, true
	case next >= line && (linesAfter(toks, end) || m.tells(ownSentence) || end+1 < len(toks) && m.barNouns.has(toks[end].id) && m.isNumber(&toks[end+1])):
		return enough, true
	case next == comma && strings.ContainsAny(m.text[toks[end-1].end:toks[end].start], "-–—") && m.tells(ownSentence):
		return enough, true // "Maple - BIAS on five bars"
	case m.datedHeading():
		return enough, true // "QUINCE, Tuesday 12 May"
	case next == colon && m.text[toks[end-1].end] == ';' && m.tells(ownLine):
		return enough, true // "Alder; eggs bar 6; quiet"
	}
	return 0, false
}

// numberedLine reports whether nothing but its number in a list stands before the run in its line:
// "2) Maple - eggs on bar 5".
func (m *mention) numberedLine() bool {
	number := m.i - 1
	return number >= 0 && m.toks[number].has(digits) && (number == 0 || m.toks[number].pause >= line) && strings.ContainsAny(m.text[m.toks[number].end:m.toks[m.i].start], ").") && m.tells(ownSentence)
}

// arrowed reports whether an arrow parts the run from what is told of it.
func (m *mention) arrowed() bool {
	rest := strings.TrimLeft(m.text[m.toks[m.end-1].end:], " ")
	for _, arrow := range [...]string{"→", "⇒", "➔", "➜", "->", "=>", "-->", "> "} {
		if strings.HasPrefix(rest, arrow) {
			return true
		}
	}
	return false
}

// datedHeading reports whether a day follows the run, and what is told of a hive.
func (m *mention) datedHeading() bool {
	day := m.dayBehind(m.toks, m.end)
	return day > 0 && (m.plantOrColour(m.toks[m.i]) || m.allCapitals(m.toks, m.i, m.end)) && m.talksOfHive(m.toks, day, nextSentences)
}

// weighPredicate weighs what stands in the sentence from its verb, the token k, on.
func (m *mention) weighPredicate(k int) int {
	toks := m.toks
	for last := k + 14; k < len(toks) && k < last && toks[k].pause < stop; k++ {
		if w := m.weighSaid(toks, k); w > 0 {
			return w
		}
		if m.says(toks[k], "inspection", "examination") {
			return enough - 1 // "Juniper had her first full inspection"
		}
		if k > 1 && m.barsInUse(toks, k) && m.says(toks[k-2], "has", "had", "on") {
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

// isAHive reports whether a name is said to be a hive: "Juniper is the best hive I've ever had",
// "Juniper's a joy, my only colony".
func (r *reader) isAHive(toks []token, end int) bool {
	if beFollows(toks, end) != end {
		return false
	}
	for k := end + 1; k < len(toks) && k < end+8 && toks[k].pause < stop; k++ {
		if r.says(toks[k], "in", "of", "at", "from", "to", "into", "and", "but") {
			return false
		}
		if k > end+1 && (toks[k].id == r.hiveID || toks[k].id == r.colonyID) {
			return k+1 == len(toks) || toks[k+1].pause > none || r.says(toks[k+1], "i", "we", "that", "which", "here", "this", "by", "now", "of")
		}
	}
	return false
}

// calledColony reports whether an aside behind a name says that it is a colony's: "Juno,
// my one and only colony".
func (r *reader) calledColony(toks []token, end int) bool {
	if toks[end].pause != comma {
		return r.isAHive(toks, end)
	}
	for k := end; k < len(toks) && k < end+8 && (k == end || toks[k].pause < comma); k++ {
		if toks[k].id == r.hiveID || toks[k].id == r.colonyID || r.says(toks[k], "one") && k > end+1 && r.says(toks[k-1], "only") {
			return true
		}
	}
	return false
}
