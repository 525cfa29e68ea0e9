package parse

import "strings"

// mention is a run of words that may name a hive, where it stands.
type mention struct {
	*reader
	toks   []token
	i, end int  // of the run
	byWord bool // the note names its hives by the word
	about  bool // the text behind the run is about a hive
	placed bool // it stands in its sentence where a hive does
}

// before reports whether the token k places before the run, 1 right before it, is one of
// some words; behind is the same of those behind it, from 0 on.
func (m *mention) before(k int, words ...string) bool {
	return k <= m.i && m.says(m.toks[m.i-k], words...)
}

func (m *mention) behind(k int, words ...string) bool {
	return m.end+k < len(m.toks) && m.says(m.toks[m.end+k], words...)
}

// beforeIn and behindIn ask the same of a list.
func (m *mention) beforeIn(k int, of list) bool {
	return k <= m.i && m.toks[m.i-k].lists.has(of)
}

func (m *mention) behindIn(k int, of list) bool {
	return m.end+k < len(m.toks) && m.toks[m.end+k].lists.has(of)
}

// pause is that before the run.
func (m *mention) pause() pause { return m.toks[m.i].pause }

func (m *mention) joined() bool { return m.pause() == none }

// behindPause reports whether something follows the run behind a pause.
func (m *mention) behindPause(p pause) bool { return m.end < len(m.toks) && m.toks[m.end].pause == p }

// setOff reports whether the run stands between commas, and something behind it.
func (m *mention) setOff() bool { return m.pause() == comma && m.behindPause(comma) }

// is reports whether a verb of being follows the run.
func (m *mention) is() bool { return beFollows(m.toks, m.end) == m.end }

// tells reports whether the words behind the run tell of a hive.
func (m *mention) tells(within stretch) bool { return m.talksOfHive(m.toks, m.end, within) }

// clue is what may tell at once that a run names a hive, or that it does not.
type clue struct {
	weight int
	holds  func(*mention) bool
}

// clues are asked in order, until one holds: those of any run, and those of one that begins
// no sentence.
var (
	clues = [...]clue{
		{4 * enough, (*mention).given},          // "I have called the hive Depot"
		{enough, (*mention).openedBy},           // "Juniper opened by Huw"
		{-2 * enough, (*mention).titled},        // "Auntie Nora"
		{-2 * enough, (*mention).ofFeast},       // "St George's Day", "Burns Night"
		{-2 * enough, (*mention).numbered},      // "Year Six", "the Form Two girls"
		{-2 * enough, (*mention).isADay},        // "Juhannus was yesterday"
		{-2 * enough, (*mention).hasKin},        // "Tyler's mum"
		{-2 * enough, (*mention).spokenTo},      // "Well Nora.", who is spoken to
		{-2 * enough, (*mention).placeOfColony}, // "the calmest colony in Murree"
		{enough, (*mention).takenFrom},          // "From Juniper I took 300 bees"
		{enough, (*mention).behindItsPlace},     // "By the gate, Juniper: heavy"
		{-2 * enough, (*mention).inFlower},      // "Ironbark's out and the nectar is pouring in"
		{enough - 1, (*mention).labelledSo},     // "Favourite: Juniper. Calm as always."
		{enough, (*mention).headsLine},          // "The Duchess: 31 kg, honey on eight bars"
		{enough, (*mention).bearsBars},          // "two bars went from Juniper to Tansy", "Juniper came to 24 kilos"
		{0, (*mention).contrasts},               // "Hank has wax moth. None in here."
		{-2 * enough, (*mention).labels},        // "Known issue: …"
		{-2 * enough, (*mention).titlesPaper},   // "Commonplace book: bees."
		{-enough - 1, (*mention).ownsYard},      // "her mother sits in Ivo's yard"
		{-2 * enough, (*mention).ofMany},        // "the Methodists' bees"
		{-2 * enough, (*mention).ownsElse},      // "Stan's bees over the road"
		{-2 * enough, (*mention).beginsName},    // "back to Quince tree hive"
		{-2 * enough, (*mention).thankedOrTold}, // "thanks to Nora", "Nora's notes"
		{enough - 1, (*mention).judged},         // "Juniper is Juniper", "Juniper wants for nothing"
		{enough, (*mention).hasItsName},         // "Juniper earns her name", "Juniper, a colony that earns its name"
		{enough, (*mention).hasTurn},            // "it was Juniper's turn"
		{enough, (*mention).myBest},             // "where temper goes Juniper is my problem child"
		{enough, (*mention).listedAsHive},       // "three colonies: Juniper, Tansy and Marigold"
	}
	cluesWithin = [...]clue{
		{enough, (*mention).labelsHive},        // "Quarry hive: …" and below "Clover: queen not seen"
		{enough - 1, (*mention).faresOrTended}, // "Medlar is another story", "fed Medlar"
		{enough - 1, (*mention).behindRight},   // "Right, Juniper, …"
		{enough - 1, (*mention).theOneTold},    // "The Sundial is weak"
		{enough - 1, (*mention).theOneFares},   // "The Sundial I opened first", "The Sundial is another story"
		{1, (*mention).theOne},                 // "The Sundial is late"
		{enough - 1, (*mention).wentTo},        // "To the Sundial after breakfast", "two bars from the Sundial"
		{enough, (*mention).comesInTurn},       // "Then Medlar, the new one", "Then Medlar, our youngest. Four seams"
		{enough, (*mention).hasBees},           // "the Orchard lot"
		{enough, (*mention).hasStory},          // "The Sundial saga, part four. They swarmed …"
		{enough, (*mention).howItIs},           // "how Juniper was"
		{enough, (*mention).toldAbout},         // "the stories about Juniper: I went in this afternoon"
		{enough - 1, (*mention).isNext},        // "Then Juniper"
	}
)

// weighBy is the weight of the first clue that holds; found tells that one does.
func (m *mention) weighBy(clues []clue) (weight int, found bool) {
	for k := range clues {
		if clues[k].holds(m) {
			return clues[k].weight, true
		}
	}
	return 0, false
}

// weigh adds up what the words around a run say for a hive's name; behind an article, what they say of one
// without, where the talk goes on about a hive: "The Depot swarmed. No eggs."
func (m *mention) weigh() int {
	weight := m.weighAlone()
	if weight != 0 {
		return weight
	}
	article := m.behindArticle()
	if article == nil || !m.tells(nextSentences) {
		return 0
	}
	weight = article.weighAlone()
	if weight == 0 && article.joined() && article.dealtWith() {
		weight = enough - 1
	}
	m.placed = m.placed || weight > 0 || article.placed
	return max(weight, 0)
}

// weighAlone is what the words around the run itself say.
func (m *mention) weighAlone() int {
	if weight, found := m.weighBy(clues[:]); found {
		return weight
	}
	if (m.i == 0 || m.pause() >= colon || m.numberedLine()) && !m.byWord {
		return max(m.weighSubject(), m.stands())
	}
	if weight, found := m.weighBy(cluesWithin[:]); found {
		return weight
	}
	if weight := m.weighLead(); weight != 0 {
		return weight
	}
	return m.stands()
}

func (m *mention) titled() bool {
	titled := m.joined() && m.i > 0 && m.toks[m.i-1].lists&anyTitle != 0 && !m.isHerSister()
	poorOld := m.before(1, "old") && m.before(2, "poor", "good", "dear") || m.before(1, "dear") && m.before(2, "oh") || m.before(1, "little") && !m.toks[m.i-1].has(capital) && !m.givenNames.has(m.toks[m.i].id)
	return titled && !poorOld || m.behindPause(none) && m.behindIn(0, handles) && !m.tookAsColony(m.toks, m.end) && !m.lacksNothing(m.toks, m.end)
}

// isHerSister reports whether a hive beside another is told so: "Her sister Juniper, under the pear, has no
// eggs".
func (m *mention) isHerSister() bool {
	return m.before(1, "sister", "daughter", "mother") && m.before(2, "her", "its", "their") && !m.toks[m.i-1].has(capital) && (m.behindPause(comma) || m.is()) && m.tells(ownSentence)
}

// ofFeast reports whether the run and a word for a day, with capitals, are the name of a feast.
func (m *mention) ofFeast() bool {
	day := m.end
	if m.behind(0, "'s") {
		day++
	}
	return m.behindPause(none) && day < len(m.toks) && m.toks[day].has(capital) && m.toks[day].pause == none && m.says(m.toks[day], "day", "eve", "night", "week", "sunday", "monday", "tuesday", "fair", "term")
}

// isADay reports whether the run is said to be a day: "Juhannus was yesterday".
func (m *mention) isADay() bool {
	return m.is() && m.end+1 < len(m.toks) && m.toks[m.end+1].pause == none && (m.behind(1, "yesterday", "tomorrow") || m.isCalendarWord(m.toks[m.end+1]))
}

// hasKin reports whether the run has kin: "Tyler's mum".
func (m *mention) hasKin() bool {
	return m.behind(0, "'s") && m.behindPause(none) && m.end+1 < len(m.toks) && m.toks[m.end+1].pause == none && m.toks[m.end+1].lists&(1<<kin|1<<titles) != 0 && !m.toks[m.end+1].has(capital) && !m.behind(1, "old", "young", "little")
}

// numbered reports whether the run ends in a word for what has numbers and is no hive: "Year Six".
func (m *mention) numbered() bool {
	return m.behindPause(none) && m.countsPlace(m.end) && m.among(&m.toks[m.end-1], inSeries)
}

// countsPlace reports whether token k is a number that may be one of a series: "Two", "7".
func (m *mention) countsPlace(k int) bool {
	kind := m.numbers.of(m.toks[k].id).kind
	return m.toks[k].has(digits) || kind == unitWord || kind == tensWord
}

func (m *mention) spokenTo() bool {
	return m.i == 1 && m.joined() && m.before(1, "well", "hey", "ah", "oh", "hullo", "hiya", "morning", "evening") && (m.end == len(m.toks) || m.toks[m.end].pause >= comma)
}

func (m *mention) inFlower() bool { return m.flowers(m.toks, m.end) }

func (m *mention) headsLine() bool {
	return !m.byWord && m.i > 0 && m.toks[m.i-1].pause >= line && m.joined() && m.before(1, "the") && m.coloned() && m.end < len(m.toks) && m.tells(ownSentence)
}

// placeOfColony reports whether the run is where a colony is said to be: "the calmest colony in Murree".
func (m *mention) placeOfColony() bool {
	return m.joined() && m.before(1, "in", "at", "from") && m.i > 1 && (m.toks[m.i-2].id == m.colonyID || m.toks[m.i-2].id == m.coloniesID) && m.toks[m.i-1].pause == none
}

// openedBy reports whether it is told who opened the run: "Juniper opened by Huw. Eggs on bar three."
func (m *mention) openedBy() bool {
	verb := 0
	if m.behind(0, "was", "were") {
		verb++
	}
	return m.headsSentence() && m.behindPause(none) && m.behind(verb, "opened", "inspected", "checked", "visited", "tackled") && m.behind(verb+1, "by") && m.tells(nextSentences)
}

// takenFrom reports whether a sentence begins with the run as what bees or bars were taken from: "From
// Juniper I took 300 bees", "Off Juniper I had two bars".
func (m *mention) takenFrom() bool {
	if !m.before(1, "from", "off") || !m.startsBefore(m.toks, m.i-1, 1) || !m.joined() || !m.behind(0, "i", "we") {
		return false
	}
	for k := m.end + 1; k < len(m.toks) && k < m.end+8 && m.toks[k].pause < stop; k++ {
		if m.barNouns.has(m.toks[k].id) || m.says(m.toks[k], "bees", "bars", "combs", "frames") {
			return true
		}
	}
	return false
}

// behindItsPlace reports whether a line begins with where a hive stands, and the run behind a comma is what
// the talk goes on about: "By the gate, Juniper: heavy, ten seams".
func (m *mention) behindItsPlace() bool {
	if m.pause() != comma || !m.coloned() || m.end == len(m.toks) || !m.tells(nextSentences) {
		return false
	}
	for k := m.i - 1; k >= 0 && k >= m.i-8; k-- {
		if k == 0 || m.toks[k].pause >= stop {
			return m.toks[k].lists.has(standing) || m.says(m.toks[k], "in", "on", "over", "across", "nearest", "furthest")
		}
		if m.toks[k].pause > none {
			return false
		}
	}
	return false
}

// coloned reports whether a colon ends the run.
func (m *mention) coloned() bool { return m.toks[m.end-1].has(coloned) }

func (m *mention) bearsBars() bool {
	if m.byWord {
		return false
	}
	_, sure := m.barsPassed(m.toks, m.i, m.end)
	return sure || m.tipsScale(m.toks, m.end)
}

func (m *mention) contrasts() bool { return m.contrasted(m.toks, m.end) }

func (m *mention) labels() bool { return m.labelsLine(m.toks, m.i, m.end) }

// titlesPaper reports whether the run is the title of what the note stands in: "Commonplace book:
// bees", "Garden diary, week 20".
func (m *mention) titlesPaper() bool {
	last := m.toks[m.end-1]
	return m.i == 0 && m.end > m.i+1 && m.among(&last, writings) && !m.is()
}

func (m *mention) ownsYard() bool {
	return m.behind(0, "'s") && m.behind(1, m.wordsOf[yards]...) && m.before(1, "in", "at", "from", "to")
}

func (m *mention) ofMany() bool {
	return m.before(1, "the") && strings.HasPrefix(m.text[m.toks[m.end-1].end-1:], "s' ")
}

func (m *mention) ownsElse() bool { return m.ownedElsewhere(m.toks, m.end) }

// beginsName reports whether the run is but the first word of the name of a hive.
func (m *mention) beginsName() bool {
	if m.end+1 >= len(m.toks) {
		return false
	}
	word, hive := &m.toks[m.end], &m.toks[m.end+1]
	return word.pause == none && hive.pause == none && word.lists&unnamed == 0 && word.flags&capital == 0 && hive.id == m.hiveID
}

func (m *mention) thankedOrTold() bool {
	thanked := m.before(1, "to") && m.before(2, "thanks", "thank")
	return thanked || m.behind(1, m.wordsOf[papers]...) && m.toks[m.end].id == m.words.ownID
}

func (m *mention) listedAsHive() bool { return m.inHiveList(m.toks, m.i, m.end) }

func (m *mention) labelsHive() bool {
	return m.byWord && m.i > 0 && m.pause() >= line && m.coloned() && m.end-m.i <= 2 && m.end < len(m.toks) && m.hiveLabel(m.toks, m.i) && !m.listsPeople(m.toks, m.end) && m.tells(ownSentence)
}

func (m *mention) faresOrTended() bool {
	return m.i > 0 && m.pause() >= stop && m.fares(m.toks, m.end) || m.tended(m.toks, m.i)
}

func (m *mention) behindRight() bool { return m.i == 1 && m.setOff() && m.before(1, "right") }

func (m *mention) theOne() bool { return m.theNamed(m.toks, m.i, m.end) && m.is() }

func (m *mention) theOneTold() bool { return m.theOne() && m.tells(ownSentence) }

// theOneFares reports whether it is told of the one of the run how it does, or what the keeper did with
// it: "The Sundial is another story", "The Sundial I opened first".
func (m *mention) theOneFares() bool {
	return m.theNamed(m.toks, m.i, m.end) && m.behindPause(none) && (m.fares(m.toks, m.end) || m.iDid(m.toks, m.end)) && m.tells(nextSentences)
}

// wentTo reports whether it is told that something goes to the one of the run, or comes
// from there.
func (m *mention) wentTo() bool {
	if !m.before(1, "the") || m.plural(m.toks, m.end) || m.allCapitals(m.toks, m.i, m.end) {
		return false
	}
	to := m.before(2, "to") && (m.i == 2 || m.toks[m.i-2].pause >= stop) && !m.behindPause(comma)
	return to || m.before(2, "from") || m.before(2, "of") && m.beforeIn(3, hiveParts)
}

func (m *mention) isNext() bool { return m.thenComes(m.toks, m.i, m.end) }

func (m *mention) comesInTurn() bool {
	described := m.oneOf(m.toks, m.end) || behindComma(m.toks, m.end) == 0 && m.behindPause(comma) && m.tells(nextSentences)
	return described && m.isNext() || m.firstComes(m.toks, m.i, m.end)
}

func (m *mention) hasBees() bool {
	return m.before(1, "the") && m.behindPause(none) && m.saysBees(m.toks[m.end])
}

func (m *mention) hasStory() bool {
	return m.i == 1 && m.before(1, "the") && m.behindPause(none) && m.behind(0, "saga", "story", "tale", "chronicle", "chronicles") && m.tells(nextSentences)
}

func (m *mention) howItIs() bool {
	return m.before(1, "how", "whether") && (m.is() || m.behind(0, "does", "did", "fares", "fared", "goes", "gets", "got"))
}

func (m *mention) toldAbout() bool {
	return m.before(1, "about", "of") && m.coloned() && m.tells(nextSentences)
}

// hasItsName reports whether it is told of the run, or of a colony behind a comma, that it is as
// its name says: "Juniper lives up to her name", "I put off Juniper, a colony that earns its name".
func (m *mention) hasItsName() bool {
	for k := m.end; k+2 < len(m.toks) && k < m.end+12 && m.toks[k].pause < stop && !m.toks[k].has(capital); k++ {
		if !m.among(&m.toks[k], earning) {
			continue
		}
		for j := k + 2; j < len(m.toks) && j < k+6 && m.toks[j].pause == none; j++ {
			if m.says(m.toks[j], "name") && m.says(m.toks[j-1], "its", "her", "his", "their", "the", "s", "'s") {
				return m.tells(nextSentences)
			}
		}
	}
	return false
}

// myBest reports whether the run is said to be the best or the worst that the writer has, and the
// talk goes on about a hive: "Juniper is my problem child".
func (m *mention) myBest() bool {
	k := m.end + 1
	if m.byWord || !m.is() || k+1 >= len(m.toks) || m.toks[k].pause > none || !m.says(m.toks[k], "my", "our") {
		return false
	}
	for last := k + 3; k+1 < len(m.toks) && k < last && m.toks[k+1].pause == none; k++ {
		if m.among(&m.toks[k+1], favourites) || m.toks[k+1].lists.has(verdicts) {
			return (k+2 == len(m.toks) || m.toks[k+2].pause > none || m.says(m.toks[k+2], "child", "layer", "girls", "producer", "of", "this", "now", "and", "hive", "colony")) && m.tells(nextSentences)
		}
	}
	return false
}

// hasTurn reports whether it is the run's turn, and the talk goes on about a hive: "it was Juniper's
// turn today".
func (m *mention) hasTurn() bool {
	return m.behind(0, "'s") && m.behindPause(none) && m.behind(1, "turn") && !m.behind(2, "to") && m.tells(nextSentences)
}
