package parse

import "strings"

// Where a run may stand for a hive by nothing but its place in a sentence that tells of one: as the
// subject of what colonies do or are, as what a keeper works on, as the owner of a part.

// stands is what the place of a run weighs, where no word near it told whose name it is.
func (m *mention) stands() int {
	switch {
	case m.byWord || m.plural(m.toks, m.end) || m.commonWord():
		return 0
	case m.ownsPartOf(setOf(kFixture)):
		m.placed = true
		return enough
	case m.stungMe(), m.tellsOfColony(), m.isTopic(), m.workedOn(), m.ownsPartOf(hivesOwn):
		m.placed = true
		return enough - 1
	case !m.givenName() && (m.standsAside() || m.wayLeadsTo() || m.isSuchAOne()):
		m.placed = true
	}
	return 0
}

// stungMe reports whether the run stung the writer, as only bees do: "Juniper stung me twice".
func (m *mention) stungMe() bool {
	return m.headsSentence() && m.behindPause(none) && m.behind(0, "stung", "stings") && m.behind(1, "me", "us")
}

// standsAside reports whether it is told behind a comma where the one of the run stands, and the talk goes on
// about a hive: "Larkin, at the far end, wants nothing. Five bars of brood."
func (m *mention) standsAside() bool {
	return m.headsSentence() && m.behindPause(comma) && (m.behindIn(0, standing) || m.behind(1, "paces", "yards", "metres", "steps", "doors", "along", "down")) && m.tells(nextSentences)
}

// isSuchAOne reports whether the run is said to be the one of some look, and the talk goes on about a hive:
// "Dauntless is the green one with the leaky lid. She has thirteen bars in use."
func (m *mention) isSuchAOne() bool {
	if !m.headsSentence() || !m.is() || !m.behind(1, "the") {
		return false
	}
	for k := m.end + 2; k < len(m.toks) && k < m.end+5 && m.toks[k].pause == none; k++ {
		if m.says(m.toks[k], "one") {
			return m.tells(nextSentences)
		}
	}
	return false
}

// wayLeadsTo reports whether the way to the run heads a sentence, and the talk goes on about a hive: "Then
// over the brook to the Cellar. Queen seen."
func (m *mention) wayLeadsTo() bool {
	k := m.i - 1
	if m.before(1, "the") {
		k--
	}
	if k < 1 || !m.joined() || !m.says(m.toks[k], "to") {
		return false
	}
	for j := k - 1; j >= 0 && j >= k-6 && m.toks[j+1].pause == none; j-- {
		if m.says(m.toks[j], "over", "across", "down", "up", "along", "through", "past", "round", "back", "on") {
			return m.startsBefore(m.toks, j, 2) && m.tells(nextSentences)
		}
	}
	return false
}

// commonWord reports whether the run may be a word of the language that has its capital from the
// head of the sentence alone: one by its ending, "Gardening", "Conclusion", or one that the note
// writes small elsewhere.
func (m *mention) commonWord() bool {
	if m.among(&m.toks[m.i], weatherNouns) {
		return true
	}
	if m.end > m.i+1 || !m.headsSentence() || m.plantOrColour(m.toks[m.i]) || m.givenName() {
		return false
	}
	if m.abstract() {
		return true
	}
	word := m.text[m.toks[m.i].start:m.toks[m.i].end]
	for k := range m.toks {
		if t := &m.toks[k]; !t.has(capital) && int(t.end-t.start) == len(word) && m.says(*t, word) {
			return true
		}
	}
	return false
}

// abstract reports whether the run is one word that ends as those for what is no thing do: "Learned",
// "Conclusion".
func (m *mention) abstract() bool {
	word := m.strings.lower(m.text[m.toks[m.i].start:m.toks[m.i].end])
	for _, ending := range abstractEndings {
		if len(word) > len(ending)+2 && strings.HasSuffix(word, ending) {
			return m.end == m.i+1 && !m.givenName()
		}
	}
	return false
}

// abstractEndings are those of words for what is no thing.
var abstractEndings = [...]string{"tion", "sion", "ness", "ment", "ship", "hood", "ology", "ing", "ed"}

// headsPart reports whether the run begins a line as the subject of a sentence, and the talk goes on
// about a hive: "Bravo took losses over the winter. No eggs."
func (m *mention) headsPart() bool {
	return m.i > 0 && m.pause() >= line && !m.plural(m.toks, m.end) && !m.commonWord() && m.goesOnAsSubject() && m.tells(nextSentences)
}

// goesOnAsSubject reports whether a verb stands behind the run that one may be the subject of, over an
// adverb or an aside: "Tarragon by contrast is a lamb", "Juniper, for once, has behaved".
func (m *mention) goesOnAsSubject() bool {
	k := m.end
	if aside := behindComma(m.toks, k); aside > 0 {
		k = aside
	} else if m.behind(0, "by") && m.behind(1, "contrast", "comparison") || m.behind(0, "and") && m.behind(1, "i") && m.relates(m.toks, k+2) {
		k += 2
	}
	for k < len(m.toks) && m.toks[k].pause == none && m.among(&m.toks[k], verdictAdverbs) {
		k++
	}
	if k == m.end && m.verbless(k) {
		return true
	}
	return k < len(m.toks) && (m.toks[k].pause == none || k > m.end) && !m.ownsSubject(m.toks, k) && (m.isColonyVerb(k) || m.verbOfOne(m.toks, k) || m.toks[k].lists.has(moving))
}

// verbless reports whether what is told of the run at the head of a line has no verb of its own: "Juniper on
// top form", "Juniper living up to the name".
func (m *mention) verbless(k int) bool {
	if k+1 >= len(m.toks) || m.toks[k].pause > none || m.toks[k].has(capital) {
		return false
	}
	word := m.text[m.toks[k].start:m.toks[k].end]
	return m.says(m.toks[k], "on") && m.says(m.toks[k+1], "top", "good", "great", "fine", "fair", "its", "her", "his", "the") || len(word) > 5 && strings.HasSuffix(word, "ing") && !m.says(m.toks[k], "during", "nothing", "something", "everything", "evening", "morning", "writing")
}

// headsSentence reports whether the run begins a sentence.
func (m *mention) headsSentence() bool { return m.i == 0 || m.pause() >= stop }

// tellsOfColony reports whether the run is the subject of a sentence, or of a clause in one, that
// tells of a colony: "Teapot had six seams", "Hammer, meanwhile, has not touched the syrup",
// "Behind the shed, Hatbox is on nine bars".
func (m *mention) tellsOfColony() bool {
	head := m.i
	if m.before(1, "the") && m.joined() {
		head--
	}
	clause := head == 0 || m.toks[head].pause >= comma || m.among(&m.toks[head-1], joiningClauses)
	verb := m.verbBehind(m.end)
	getting := m.end
	if m.behind(0, "is", "'s", "was") {
		getting++ // "Curlew is getting a pint of syrup"
	}
	if clause && m.behindPause(none) && getting < len(m.toks) && m.says(m.toks[getting], "got", "gets", "getting") && (m.givenToBees(getting+1) || m.givesTime(m.toks, m.end+1)) {
		return true // "So Curlew got a litre of syrup"
	}
	return clause && verb > 0 && (m.i == 0 || m.pause() != stop || verb > m.end || m.namedAgain() || m.behind(1, "n't", "not", "got")) && m.saidOfColony(m.toks, verb)
}

// namedAgain reports whether the note has the run elsewhere too: what heads a sentence and is told of
// once may be any word.
func (m *mention) namedAgain() bool {
	word := m.text[m.toks[m.i].start:m.toks[m.i].end]
	for k := range m.toks {
		if k != m.i && m.toks[k].has(capital) && m.says(m.toks[k], word) {
			return true
		}
	}
	return false
}

// isTopic reports whether the run stands before a comma as what a sentence is about that tells of a
// hive: "Mare, I found the queen on 4"; or with its article alone at the head of a line: "The Boxcar.
// These ones are hot."
func (m *mention) isTopic() bool {
	if m.behindPause(comma) && m.headsSentence() && m.i > 0 {
		until := stop
		if m.behind(0, "i", "we") {
			until = comma // "Edith, I fear, flew at me"
		}
		return (!m.toks[m.end].has(capital) || m.says(m.toks[m.end], "i")) && !m.says(m.toks[m.end], "you", "your", "and", "or", "who", "whose", "our", "my", "the", "a", "they", "she", "he", "it", "this", "that", "these", "there", "bees", "how") && m.tells(stretch{words: 14, pause: until, pauses: 1})
	}
	return m.before(1, "the") && m.joined() && m.end < len(m.toks) && m.toks[m.end].pause >= stop && (m.i == 1 || m.toks[m.i-1].pause >= line) && m.tells(nextSentences)
}

// saidOfColony reports whether a sentence tells of a colony from its verb on.
func (r *reader) saidOfColony(toks []token, verb int) bool {
	for k := verb; k < len(toks) && k < verb+14 && (k == verb || toks[k].pause < stop); k++ {
		if r.weighSaid(toks, k) > 0 || toks[k].lists&(1<<faring|1<<swarming) != 0 || r.lex.matcher.longest(toks, k, nil).kinds.meet(ofHives) {
			return true
		}
	}
	return false
}

// verbBehind is the verb that a colony may be the subject of, over what stands between it and the
// name at token k: an aside, an adverb, a word of place; 0 where there is none.
func (m *mention) verbBehind(k int) int {
	if k < len(m.toks) && m.toks[k].pause == comma && m.says(m.toks[k], "who", "whose", "which") {
		return 0 // "Dennis, who had left his gloves, …"
	}
	first := k
	if m.setOff() && m.isColonyVerb(k) {
		return k // "The other one, Birdbath, is healthy"
	}
	if aside := behindComma(m.toks, k); aside > 0 {
		first = aside
	}
	for k = first; k < len(m.toks) && k < first+6 && (m.toks[k].pause == none || k == first && k > m.end); k++ {
		between := m.among(&m.toks[k], betweenVerbs)
		if !between && m.isColonyVerb(k) {
			return k
		}
		if k == first && !between {
			return 0
		}
	}
	return 0
}

// isColonyVerb reports whether a token is a verb of which colonies are subjects, or one that helps it.
func (m *mention) isColonyVerb(k int) bool {
	if m.ownsSubject(m.toks, k) {
		return false
	}
	if k+1 < len(m.toks) && m.says(m.toks[k+1], "after") || m.says(m.toks[k], "can", "did", "got", "gets") {
		return false // "the one that Gerald looks after"
	}
	if k+1 < len(m.toks) && m.says(m.toks[k+1], "n't", "not") {
		return true // "won't", "has not"
	}
	return m.toks[k].lists&(1<<being|1<<hiveDoings) != 0 || m.among(&m.toks[k], colonyVerbs)
}

// ownsSubject reports whether token k is "'s" that makes an owner of a name, and what is hers or his has
// the verb: "Thornley's syrup is dear".
func (r *reader) ownsSubject(toks []token, k int) bool {
	if !r.says(toks[k], "'s") || k+1 < len(toks) && (r.lex.matcher.longest(toks, k+1, nil).kinds.meet(hivesOwn) || r.saysBees(toks[k+1])) {
		return false
	}
	for j := k + 2; j < len(toks) && j < k+5 && toks[j].pause == none; j++ {
		if toks[j].lists.has(being) && !r.says(toks[j], "'s") {
			return true
		}
	}
	return false
}

// ownsPartOf reports whether something of a hive is the run's: "Custard's entrance".
func (m *mention) ownsPartOf(of kinds) bool {
	return m.behind(0, "'s") && m.behindPause(none) && m.end+1 < len(m.toks) && m.toks[m.end+1].pause == none && m.lex.matcher.longest(m.toks, m.end+1, nil).kinds.meet(of)
}

// workedOn reports whether the run is amid a sentence what a keeper works on or where something
// goes on that does so in a hive: "robbing going on at Badger", "gave Dumpling a litre of syrup",
// "Up the hill to Sputnik. Eggs on bar 3."
func (m *mention) workedOn() bool {
	k := m.i - 1
	if k < 0 || m.toks[m.i].pause > none || m.behind(0, "'s") || m.allCapitals(m.toks, m.i, m.end) || m.farOff() {
		return false
	}
	if m.says(m.toks[k], "gave", "give") {
		return m.givenToBees(m.end)
	}
	if k > 0 && m.says(m.toks[k], "the") && m.toks[k].pause == none {
		k-- // "In the Major the queen sits on 5"
	}
	if !m.among(&m.toks[k], colonyLinks) || m.ofSomebody(m.toks, k) {
		return false
	}
	if k > 0 && m.toks[k-1].lists.has(being) && !m.toldNear(m.toks, k-1, setOf(kQueen, kContent, kCell)) {
		return false // "as Sue is in Madeira"
	}
	for j := k - 1; j >= 0 && j >= k-5 && m.toks[j+1].pause < stop && !m.says(m.toks[k], "to"); j-- {
		if m.weighSaid(m.toks, j) > 0 || j == k-1 && m.says(m.toks[j], "none", "nothing", "nil") {
			return true
		}
	}
	near := m.startsBefore(m.toks, k, 2) || m.startsBefore(m.toks, k, 6) && m.end < len(m.toks) && m.toks[m.end].pause >= stop
	return near && m.tells(ownSentence)
}

// ofSomebody reports whether what stands before token k, which says where, is somebody else or his, or
// was kept or lost, or is over there: "a guy in Ottermere had it", "his own bees in Ottermere", "Dwayne's
// bees over in Ottermere", "lost a colony to wax moth at Ottermere".
func (r *reader) ofSomebody(toks []token, k int) bool {
	if k > 0 && toks[k].pause == none && r.says(toks[k-1], "over", "out") {
		return true
	}
	for j := k - 1; j >= 0 && j >= k-7 && toks[j+1].pause == none; j-- {
		switch near := j >= k-4; {
		case j < k-1 && r.says(toks[j], "kept", "keeps", "lost"), j == k-1 && r.among(&toks[j], yards), near && r.says(toks[j], "own"):
			return true
		case near && (r.among(&toks[j], otherKeepers) || toks[j].lists.has(kin)):
			return true
		}
	}
	return false
}

// farOff reports whether the run is the name of a place on the map, or one that is told to be at a
// distance: "foulbrood at Sallow Farm", "chalkbrood at Gorse Bank, four miles away".
func (m *mention) farOff() bool {
	if m.among(&m.toks[m.end-1], mapWords) || m.behindIn(0, placesNear) && m.toks[m.end].has(capital) && m.behindPause(none) {
		return true
	}
	for k := m.end; k < len(m.toks) && k < m.end+5 && m.toks[k].pause < stop; k++ {
		if m.says(m.toks[k], "mile", "miles") || m.lex.matcher.longest(m.toks, k, nil).kinds.has(kTheirs) {
			return true
		}
	}
	return false
}

// givenToBees reports whether what bees are given stands from a token on: "gave Dumpling a litre of
// syrup".
func (m *mention) givenToBees(from int) bool {
	for k := from; k < len(m.toks) && k < from+6 && m.toks[k].pause == none; k++ {
		if m.lex.matcher.longest(m.toks, k, nil).kinds.meet(setOf(kFixture, kSubstance, kBar, kBars)) || m.says(m.toks[k], "smoke") {
			return true
		}
	}
	return false
}
