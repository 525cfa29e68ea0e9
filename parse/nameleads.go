package parse

import "math/bits"

// lead is a way in which the words right before a run, or what stands around it, lead to a
// hive's name.
type lead struct {
	weight int
	first  []string            // of two words before the run; nil for any
	last   []string            // of them, right before it; nil for any
	also   func(*mention) bool // nil where nothing else must hold
}

// leads are asked in order, until one holds.
var leads = [...]lead{
	// "the strongest hive, Juniper, …"
	{weight: enough, also: (*mention).apposed},
	// "the other one, Tansy, is healthy"
	{weight: enough, first: []string{"other", "second", "third", "last", "next"}, last: []string{"one"}, also: (*mention).setOffAndTold},
	// "The second, Tansy, I requeened"
	{weight: enough, also: (*mention).apposedToPlace},
	// "unite her with Tansy"
	{weight: enough, last: []string{"with", "into", "onto", "to"}, also: (*mention).united},
	// "no trouble with Juniper"
	{weight: enough, first: []string{"day", "trouble"}, last: []string{"with"}},
	// "less taken with Juniper", "I'm proud of Juniper"
	{weight: enough, last: []string{"with", "of", "about", "by", "at", "for"}, also: (*mention).feltAbout},
	// "next to it is Juniper"
	{weight: enough - 1, last: []string{"is", "was", "comes", "came", "stands", "sits"}, also: (*mention).placedBefore},
	// "you asked after Juniper"
	{weight: enough - 1, first: []string{"asked", "ask", "asking", "asks"}, last: []string{"after", "about"}},
	// "I went down to see Juniper"
	{weight: enough - 1, also: (*mention).met},
	// "opened the Endeavour first: eggs on bar 3"
	{weight: enough, first: []string{"opened", "opening", "inspected", "visited"}, last: []string{"the"}, also: (*mention).joinedAndTold},
	// "one mite, which they have named Kevin"
	{weight: -2 * enough, also: (*mention).ofAThing},
	// "we opened Juniper first"
	{weight: enough, also: (*mention).opened},
	// "we call her Juniper"
	{weight: enough, also: (*mention).calledSo},
	// "her neighbour Tansy is queenless"
	{weight: enough, first: []string{"her", "its", "their"}, last: []string{"neighbour", "neighbor", "sister", "daughter"}, also: (*mention).isAsHivesAre},
	// "gave Juniper half an hour"
	{weight: enough - 1, last: []string{"gave"}, also: (*mention).givenTime},
	// "I am sore, for Juniper has paid me back"
	{weight: enough - 1, also: (*mention).doneToMeAndTold},
	// "one colony, namely Juniper"
	{weight: enough, last: []string{"namely"}},
	// "Juniper on the label"
	{weight: enough, also: (*mention).onLabel},
	// "the colony known as Juniper"
	{weight: enough, last: []string{"as"}, also: (*mention).knownAs},
	// "a hive by the name of Juniper"
	{weight: enough, first: []string{"with", "of", "the"}, last: []string{"name"}},
	// "next came Juniper"
	{weight: enough, first: []string{"next", "then", "last", "first"}, last: []string{"came"}},
	// "As for Juniper, calm"
	{weight: enough, first: []string{"as"}, last: []string{"for"}, also: (*mention).toldHere},
	// "Act two, Juniper. Calm."
	{weight: enough, also: (*mention).countedAhead},
	// "as for Juniper"
	{weight: enough - 1, first: []string{"as"}, last: []string{"for"}},
	// "walked down to Juniper"
	{weight: enough - 1, last: []string{"to"}, also: (*mention).walkedTo},
	// "the first look of the year, and Juniper is alive"
	{weight: enough - 1, also: (*mention).faresToo},
	// "the roof of Juniper", "on bar 2 of Juniper", "the queen of Juniper"
	{weight: enough, last: []string{"of"}, also: (*mention).hasPart},
	// "added one bar to Juniper"
	{weight: enough, last: []string{"to"}, also: (*mention).barsGiven},
	// "harvested bar eight from Juniper"
	{weight: enough, last: []string{"from"}, also: (*mention).barsTaken},
	// "had the afternoon for Juniper", "gave an hour to Juniper"
	{weight: enough, last: []string{"for", "to", "with"}, also: (*mention).hasTime},
	// "no cells in Juniper"
	{weight: enough, last: []string{"in"}, also: (*mention).foundIn},
	// "In Juniper all is well"
	{weight: enough - 1, last: []string{"in"}, also: (*mention).inAtHead},
	// "and Teak went for me"
	{weight: enough, also: (*mention).wentForUs},
	// "had Juniper open"
	{weight: enough, last: []string{"had"}, also: (*mention).wasOpen},
	// "had the lid off Juniper"
	{weight: enough, first: []string{"lid", "roof", "cover"}, last: []string{"off"}},
	// "a sugar roll on Juniper"
	{weight: enough, last: []string{"on", "of", "from", "for"}, also: (*mention).tested},
	// "washed bees from Juniper"
	{weight: enough, first: []string{"bees"}, last: []string{"from"}, also: (*mention).joined},
	// "they queued at Juniper's door"
	{weight: enough, last: []string{"at", "on", "outside", "round", "around", "under", "in"}, also: (*mention).ownsPart},
	// "when I lifted Juniper's roof"
	{weight: enough, last: []string{"lifted", "raised", "opened", "off", "under", "beneath", "inside", "tapped", "hefted", "shut", "closed"}, also: (*mention).ownsPart},
	// "worked Juniper from the back"
	{weight: enough, also: (*mention).goneThrough},
	// "my one colony is Juniper"
	{weight: enough, last: []string{"is", "was"}, also: (*mention).myColonyIs},
	// "had a look in at Juniper"
	{weight: enough, also: (*mention).visited},
	// "Last of the morning was the Depot. They are packed."
	{weight: enough - 1, also: (*mention).wasTheOne},
	// "Mine was Juniper and I drew the short straw"
	{weight: enough - 1, first: []string{"mine", "ours"}, last: []string{"was", "is"}, also: (*mention).mineWas},
	// "I took Juniper while she held the smoker"
	{weight: enough - 1, last: []string{"took", "did", "do", "doing"}, also: (*mention).takenInTurn},
	// "Update on Juniper. Eggs on bar 3."
	{weight: enough - 1, also: (*mention).titledAbout},
}

// holds reports whether a lead is there whose last word is.
func (l *lead) holds(m *mention) bool {
	return (l.first == nil || m.before(2, l.first...)) && (l.also == nil || l.also(m))
}

const _ = uint(64 - len(leads)) // a bit each

// leadsBehind are the leads, a bit each, that a word right before the run may make, and under no word those that any
// may.
var leadsBehind = func() map[string]uint64 {
	behind := map[string]uint64{}
	for k, l := range leads {
		if l.last == nil {
			behind[""] |= 1 << k
		}
		for _, word := range l.last {
			behind[word] |= 1 << k
		}
	}
	return behind
}()

// weighLead is what the words right before, and the ones they lean on, say.
func (m *mention) weighLead() int {
	due := leadsBehind[""]
	if m.i > 0 {
		last := &m.toks[m.i-1]
		due |= leadsBehind[m.strings.lower(m.text[last.start:last.end])]
	}
	for ; due != 0; due &= due - 1 {
		if l := &leads[bits.TrailingZeros64(due)]; l.holds(m) {
			return l.weight
		}
	}
	return 0
}

// behindArticle is the run with its article, of which may be asked what is asked of one that has none:
// "fed the Signal Box"; nil where it has none.
func (m *mention) behindArticle() *mention {
	back := 1
	if m.i > 1 && !m.toks[m.i-1].has(capital) && m.toks[m.i-1].pause == none && m.before(1, "little", "old", "poor", "big", "good", "dear", "young", "brave", "mighty") {
		back = 2 // "the little Juniper, with her five bars of bees"
	}
	if !m.joined() || !m.before(back, "the") || m.plural(m.toks, m.end) || m.byWord {
		return nil
	}
	article := *m
	article.i -= back
	return &article
}

// dealtWith reports whether the run is what a keeper tends or turns to.
func (m *mention) dealtWith() bool {
	return m.tended(m.toks, m.i) || m.before(1, "to") && m.walkedTo() || m.united()
}

func (m *mention) apposed() bool {
	if m.pause() == comma && m.i > 0 && m.behindPause(stop) && m.toks[m.i-1].id == m.hiveID {
		return true // "the one hive, Juniper."
	}
	return m.pause() == comma && (m.end >= len(m.toks) || m.setOff()) && m.hiveBefore(m.toks, m.i)
}

// apposedToPlace reports whether the run is said behind a comma of whose place in a round a sentence begins
// with: "The second, Tansy, I requeened".
func (m *mention) apposedToPlace() bool {
	the := m.i - 2
	return m.setOff() && the >= 0 && m.says(m.toks[the], "the") && (the == 0 || m.toks[the].pause >= stop) && m.before(1, "first", "second", "third", "fourth", "fifth", "last", "next", "other") && m.tells(nextSentences)
}

func (m *mention) setOffAndTold() bool { return m.setOff() && m.tells(nextSentences) }

func (m *mention) united() bool { return m.joined() && m.unitedNear(m.toks, m.i-1) }

func (m *mention) met() bool {
	return m.beforeIn(1, meetings) || m.before(1, "off") && m.before(2, "put", "putting") && m.joined() || m.before(1, "up") && m.before(2, "write", "writing", "wrote") && m.joined() // "I had put off Juniper", "writing up Juniper"
}

func (m *mention) joinedAndTold() bool { return m.joined() && m.tells(nextSentences) }

func (m *mention) ofAThing() bool { return m.opened() && m.namesAThing(m.toks, m.i-1) }

func (m *mention) opened() bool {
	if m.before(1, "old") && m.before(2, "poor", "good", "dear") && m.beforeIn(3, openings) {
		return true // "opened poor old Juniper"
	}
	return m.beforeIn(1, openings) && !(m.beforeIn(1, namings) && m.callsOther(m.i-1)) && !m.calledUp() && !m.ownsOther()
}

// ownsOther reports whether something that is no hive's is the run's: "over the wall into Hodgson's plum
// tree".
func (m *mention) ownsOther() bool {
	return m.behind(0, "'s") && m.behindPause(none) && m.end+1 < len(m.toks) && m.toks[m.end+1].pause == none &&
		!m.ownsPartOf(hivesOwn) && !m.saysBees(m.toks[m.end+1]) && !m.behindIn(1, hiveParts)
}

func (m *mention) calledSo() bool {
	return m.beforeIn(2, namings) && m.beforeIn(1, namedOnes) && !m.callsOther(m.i-2)
}

func (m *mention) isAsHivesAre() bool { return m.isHowHivesAre(m.toks, m.i, m.end) }

func (m *mention) givenTime() bool { return m.givesTime(m.toks, m.end) }

func (m *mention) doneToMeAndTold() bool {
	return m.i > 0 && m.among(&m.toks[m.i-1], joiningClauses) && m.doneToMe(m.toks, m.end) && m.tells(nextSentences)
}

func (m *mention) onLabel() bool {
	return m.behind(0, "on") && m.behind(1, "the") && m.behind(2, "label")
}

func (m *mention) knownAs() bool {
	return m.before(2, "known") || m.before(3, "known") || m.before(4, "known")
}

func (m *mention) toldHere() bool { return m.tells(ownSentence) }

// feltAbout reports whether the run is what a keeper has feelings about, and the talk goes on about a
// hive: "I was less taken with Juniper. Three seams of bees."
func (m *mention) feltAbout() bool {
	return m.joined() && !m.givenName() && m.saidBefore(m.toks, m.i-1, 2, feelings) && m.tells(nextSentences)
}

// placedBefore reports whether the run ends a sentence that begins with where the next hive is, or
// whose turn it is: "Next to it is Juniper."
func (m *mention) placedBefore() bool {
	if !m.joined() || m.end < len(m.toks) && m.toks[m.end].pause < comma || !m.tells(nextSentences) {
		return false
	}
	for k := m.i - 2; k >= 0 && k >= m.i-9 && m.toks[k+1].pause == none; k-- {
		if k == 0 || m.toks[k].pause >= stop {
			if m.says(m.toks[k], "the") {
				k++ // "The first we opened was Juniper"
			}
			m.placed = m.toks[k].lists.has(standing) || m.says(m.toks[k], "next", "then", "last", "first", "second", "third", "in", "after", "finally")
			return m.placed
		}
	}
	return false
}

// goneThrough reports whether the run is what a keeper goes through from one end: "I worked Juniper from
// the back".
func (m *mention) goneThrough() bool {
	return m.joined() && m.behindPause(none) && m.behind(0, "from") && m.behind(1, "the") && m.behind(2, "back", "front", "far", "entrance") && m.tells(nextSentences)
}

// wasTheOne reports whether a sentence ends in whose turn it was, and the talk goes on about a hive: "Last of
// the morning was the Depot. They are packed."
func (m *mention) wasTheOne() bool {
	m.placed = m.joined() && m.before(1, "the") && m.before(2, "was", "is", "came", "comes") && m.end < len(m.toks) && m.toks[m.end].pause >= stop && !m.plural(m.toks, m.end) && m.tells(nextSentences)
	return m.placed
}

// takenInTurn reports whether the run is what a keeper took on, and not along: "I took Juniper while Bob
// held the smoker".
func (m *mention) takenInTurn() bool {
	m.placed = m.joined() && !m.givenName() && (!m.behindPause(none) || m.behind(0, "while", "first", "next", "myself", "on", "after", "before", "alone", "today", "this", "last", "and")) && m.tells(nextSentences)
	return m.placed
}

func (m *mention) mineWas() bool {
	m.placed = m.joinedAndTold()
	return m.placed
}

// labelledSo reports whether the run is what a label of its rank names, and the talk goes on about a hive:
// "Favourite: Juniper. Calm as always."
func (m *mention) labelledSo() bool {
	label := m.i - 1
	if m.before(1, "the") && m.joined() {
		label--
	}
	if label < 0 || !m.toks[label].has(coloned) || m.end == len(m.toks) || m.toks[m.end].pause < comma || m.givenName() {
		return false
	}
	word := m.toks[label]
	m.placed = (m.among(&word, favourites) || word.lists.has(verdicts) || m.says(word, "first", "second", "third", "next", "last", "then", "finally")) && m.tells(nextSentences)
	return m.placed
}

// givenName reports whether the run is a name that people have.
func (m *mention) givenName() bool { return m.end == m.i+1 && m.givenNames.has(m.toks[m.i].id) }

// titledAbout reports whether the note begins with a few words that end in a name, of which the talk goes on
// as of a hive: "Update on Juniper. Eggs on bar 3.", "A visit to the Committee, held in the rain".
func (m *mention) titledAbout() bool {
	k := m.i - 1
	if m.before(1, "the") {
		k--
	}
	if k < 1 || k > 5 || m.byWord || m.end == len(m.toks) || m.behindPause(none) && !m.behind(0, "this", "today", "on", "at", "in", "as", "for", "from") || !m.says(m.toks[k], "on", "of", "about", "to", "at", "in") || m.givenName() {
		return false
	}
	for j := 1; j <= m.i; j++ {
		if m.toks[j].pause > none || m.says(m.toks[j], "i", "we") {
			return false
		}
	}
	return m.tells(nextSentences)
}

// myColonyIs reports whether a hive of the writer's is said to be the run: "my one colony is Juniper".
func (m *mention) myColonyIs() bool {
	hive := m.i - 2
	if hive < 1 || !m.joined() || !m.isHiveNoun(hive) {
		return false
	}
	for k := hive - 1; k >= 0 && k >= hive-3 && m.toks[k+1].pause == none; k-- {
		if m.says(m.toks[k], "my", "our", "name") {
			return true
		}
	}
	return false
}

// countedAhead reports whether a line begins with a thing and its number, and the run behind a comma is
// what it stands for, of which the talk goes on: "Act two, Juniper. Calm."
func (m *mention) countedAhead() bool {
	thing := m.i - 2
	if m.joined() && m.before(1, "is", "was") {
		thing-- // "Bed two is Juniper"
	} else if m.pause() != comma {
		return false
	}
	return thing >= 0 && (thing == 0 || m.toks[thing].pause >= stop) && m.toks[thing+1].pause == none && m.isNumber(&m.toks[thing+1]) &&
		!m.isNumber(&m.toks[thing]) && m.dates.of(m.toks[thing].id).kind == notDate && m.end < len(m.toks) && (m.toks[m.end].pause >= comma || m.behind(0, "and", "who")) && m.tells(nextSentences)
}

func (m *mention) walkedTo() bool { return m.walkedBefore(m.toks, m.i-1) }

func (m *mention) faresToo() bool {
	return (m.before(1, "and", "so") || m.pause() == comma) && m.fares(m.toks, m.end)
}

func (m *mention) hasPart() bool {
	if m.beforeIn(2, hiveParts) {
		return true
	}
	bar := m.i > 2 && m.isNumber(&m.toks[m.i-2]) && m.barNouns.has(m.toks[m.i-3].id)
	return m.joined() && m.tells(ownSentence) && (bar || m.i > 1 && m.lex.matcher.alone(m.toks[m.i-2].id).kinds.has(kQueen))
}

// barsTaken reports whether a bar is told to be taken from the run: "harvested bar eight from Juniper".
func (m *mention) barsTaken() bool {
	bar := false
	for k := m.i - 2; k >= 0 && k >= m.i-8 && m.toks[k+1].pause == none; k-- {
		bar = bar || m.barNouns.has(m.toks[k].id)
		if bar && m.lex.matcher.longest(m.toks[:m.i-1], k, nil).kinds.has(kDo) {
			return m.joined()
		}
	}
	return false
}

// barsGiven reports whether so many bars are told to be added to the run: "added one bar to Juniper".
func (m *mention) barsGiven() bool {
	bar := m.i - 2
	if bar < 2 || !m.joined() || !m.barNouns.has(m.toks[bar].id) || m.givenName() {
		return false
	}
	for k := bar - 1; k >= 0 && k >= bar-4 && m.toks[k+1].pause == none; k-- {
		if m.says(m.toks[k], "added", "gave", "put", "moved", "add", "give", "move") {
			return true
		}
	}
	return false
}

// hasTime reports whether a keeper has time for the run, and the talk goes on about a hive: "I had the
// afternoon for Juniper. Eight seams of bees."
func (m *mention) hasTime() bool {
	return m.joined() && m.i > 1 && m.saidBefore(m.toks, m.i-1, 1, givenTimes) && (!m.before(1, "with") || m.startsBefore(m.toks, m.i-2, 3)) && m.tells(nextSentences)
}

func (m *mention) foundIn() bool {
	return m.i > 1 && m.joined() && !m.ofSomebody(m.toks, m.i-1) && (m.toldNear(m.toks, m.i-1, setOf(kSign, kContent, kCell, kQueen, kSeen)) || m.barBeforeIn(m.toks, m.i))
}

func (m *mention) inAtHead() bool {
	return m.i == 1 || m.toks[m.i-1].pause >= stop || m.before(2, "but")
}

func (m *mention) wentForUs() bool {
	return m.behind(0, "went") && m.behind(1, "for") && m.behind(2, "me", "us")
}

func (m *mention) wasOpen() bool { return m.behind(0, "open") }

func (m *mention) tested() bool { return m.joined() && m.toldNear(m.toks, m.i-1, setOf(kMethod)) }

func (m *mention) ownsPart() bool { return m.behind(0, "'s") && m.behindIn(1, hiveParts) }

func (m *mention) visited() bool {
	if !m.beforeIn(1, visitLinks) || m.before(1, "with") && !m.before(2, m.wordsOf[settingOut]...) {
		return false // "began with Juniper", and not "had a look at it with Phil"
	}
	if m.before(1, "in", "with") && m.i > 4 && m.before(2, "back", "front", "entrance") && m.before(3, "the") && m.before(4, "from", "at") && m.beforeIn(5, visits) {
		return true // "Started from the back in Juniper"
	}
	for back := 2; back <= 4 && back <= m.i && m.toks[m.i-back+1].pause == none; back++ {
		if m.beforeIn(back, visits) && !(m.before(1, "in") && m.before(back, "roof", "lid", "front", "back", "took", "did")) {
			return true
		}
	}
	return false
}
