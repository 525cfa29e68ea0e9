package parse

import (
	"slices"
	"strings"

	"barwise/colony"
)

// properNames finds the names that the note's first page gives its hives without
// the word hive: "opened Juniper", "Clementine was bursting at the seams". A name is
// weighed by the words around it; people are told from hives by their titles
// and by what they do.
func (r *reader) properNames(toks []token) map[string]bool {
	r.shortNames, r.unsureNames, r.onlyName = nil, nil, nil
	byWord := r.namedByWord(toks)
	spoken := r.spokenNames(toks, byWord)
	lines := append(r.lineNames(toks), r.labelNames(toks)...)
	if lines == nil && spoken == nil && r.front.marks&capital == 0 {
		return nil
	}
	if byWord {
		lines = nil
	}
	lines = append(lines, spoken...)
	r.smallNames = len(lines) > 0
	r.namesAlone = r.anyNameAlone(toks)
	found := r.foundNames(toks, byWord)
	if !byWord {
		lines = append(lines, r.placeNames(toks, len(found) > 0)...)
		r.smallNames = len(lines) > 0
	}
	lines = append(lines, r.letterNames(toks)...)
	if len(found) == 0 && len(lines) == 0 {
		return nil
	}
	names := found.hives(byWord)
	if !byWord {
		r.shortNames = found.short(names)
	}
	if byWord {
		r.addBesideWord(toks, found, names)
	}
	r.unsureNames = found.unsure(names)
	r.onlyName = found.only(names)
	for _, name := range lines {
		names[name] = true
	}
	return names
}

// foundNames are the runs of words that may name a hive, with what speaks for each.
func (r *reader) foundNames(toks []token, byWord bool) properNames {
	var found properNames
	before, first, last := "", 0, 0 // the run before, where it began and ended
	for i := 0; i < len(toks); i++ {
		if !toks[i].has(capital) {
			continue
		}
		end := r.properRun(toks, i)
		if end == i {
			continue
		}
		if !titledRun(toks, i) {
			name := r.strings.lower(r.text[toks[i].start:toks[end-1].end])
			if found == nil {
				found = properNames{}
			}
			n := found[name]
			if n.at == (colony.Span{}) {
				n.at = colony.Span{int(toks[i].start), int(toks[end-1].end)}
			}
			r.weighRun(&n, toks, i, end, byWord)
			if i == last+1 && before != name && first > 0 && toks[first].pause == none && toks[last].pause == none && toks[i].pause == none && r.says(toks[last], "and", "or") {
				n.beside = before // "gave Juniper and Tansy a look"
			}
			found[name] = n
			before, first, last = name, i, end
		}
		i = end - 1
	}
	return found
}

// titledRun reports whether the title of a person stands before the run that begins at token i: "the late
// Mr Rowan" tells nothing of whose name Rowan is elsewhere.
func titledRun(toks []token, i int) bool {
	return i > 0 && toks[i].pause == none && toks[i-1].lists.has(personTitles)
}

// weighRun adds to a name what speaks for it where it stands.
func (r *reader) weighRun(n *properName, toks []token, i, end int, byWord bool) {
	if r.isPerson(toks, i, end) {
		n.weight -= 2 * enough
	}
	about := !byWord && (r.ofMine(toks, i, end) || r.headsParagraph(toks, i, end))
	r.mention = mention{reader: r, toks: toks, i: i, end: end, byWord: byWord, about: about}
	n.weight += r.mention.weigh()
	n.hinted = n.hinted || about || r.mention.placed || !byWord && r.spokenOf(toks, i, end)
	n.given = n.given || end == i+1 && r.givenNames.has(toks[i].id)
	if byWord {
		return
	}
	n.heads = n.heads || r.mention.headsPart()
	n.focus = max(n.focus, r.focusOn(toks, i, end))
	n.amid = n.amid || i > 0 && toks[i].pause < stop
	n.plant = n.plant || r.plantAsName(toks, i, end) && r.talksOfHive(toks, max(i-10, 0), nextSentences)
}

// spokenOf reports whether a name stands where that of a hive does in a note that names
// its hives: "Lightning was another story", "In Marigold …", "Then Juniper, …", "fed
// Juniper".
func (r *reader) spokenOf(toks []token, i, end int) bool {
	subject := r.isSubject(toks, i, end) && r.isHowHivesAre(toks, i, end)
	passed, _ := r.barsPassed(toks, i, end)
	return subject || r.followedByFinding(toks, i, end) || r.toldAlongside(toks, i, end) || passed || r.movedTo(toks, i, end) || r.tended(toks, i) || r.beginsWithIn(toks, i) || r.inTurn(toks, end) || r.thenComes(toks, i, end) || r.theNamed(toks, i, end) || r.headsAside(toks, i, end)
}

// headsAside reports whether a name and what is told of a thing by the way head a line: "Juniper,
// which I took on from a friend, I requeened".
func (r *reader) headsAside(toks []token, i, end int) bool {
	head := i == 0 || toks[i].pause >= line
	return head && end < len(toks) && toks[end].pause == comma && r.says(toks[end], "which") && r.talksOfHive(toks, end, ownLine)
}

// followedByFinding reports whether what is found in a hive stands right behind a name and a
// comma, at the head of a sentence or behind "in" and a few words: "Juniper, eggs on bar 5",
// "no such luck in Tansy, queen not seen".
func (r *reader) followedByFinding(toks []token, i, end int) bool {
	if end >= len(toks) || toks[end].pause != comma || r.says(toks[end], "they", "she", "it", "these", "bees") || r.weighSaid(toks, end) == 0 {
		return false
	}
	return i == 0 || toks[i].pause >= stop || toks[i].pause == none && r.says(toks[i-1], "in") && r.startsBefore(toks, i-1, 4)
}

// toldAlongside reports whether what hives are or have is told of a name behind a comma or
// "and": "Juniper was calm, Tansy was edgy and Sorrel has eggs".
func (r *reader) toldAlongside(toks []token, i, end int) bool {
	joined := i > 0 && (toks[i].pause == comma || toks[i].pause == none && r.says(toks[i-1], "and"))
	return joined && beFollows(toks, end) == end && end+1 < len(toks) && toks[end+1].pause == none && r.weighSaid(toks, end+1) > 0
}

// movedTo reports whether bars were moved to the one of a name, or brood was given to it: "I
// moved bars 4 and 5 to Juniper", "we gave two bars of brood to Juniper".
func (r *reader) movedTo(toks []token, i, end int) bool {
	if i < 4 || !r.says(toks[i-1], "to", "into") || toks[i].pause > none || end < len(toks) && toks[end].pause == none {
		return false
	}
	number, brood := false, false
	for k := i - 2; k >= 0 && k >= i-12 && toks[k+1].pause < stop; k-- {
		number = number || r.isNumber(&toks[k])
		brood = brood || r.says(toks[k], "brood", "eggs", "larvae")
		if brood && number && r.says(toks[k], "gave", "donated", "lent", "given") {
			return true
		}
		if r.says(toks[k], "moved", "shifted", "transferred") {
			return number && r.barNouns.has(toks[k+1].id)
		}
	}
	return false
}

func anyCapital(toks []token) bool {
	for i := range toks {
		if toks[i].has(capital) {
			return true
		}
	}
	return false
}

// lineNames are the names in lower case that stand alone on lines which end in a
// colon, "nettle:", with what is found in a hive below: the first line, or several,
// since "gear:" may be one.
func (r *reader) lineNames(toks []token) (names []string) {
	for _, row := range r.rows {
		first, last := toks[row.from], toks[row.to-1]
		if row.to-row.from > 2 || !last.has(coloned) || first.has(capital) || !r.mayName(toks, row.from) || !r.mayName(toks, row.to-1) || row.to == len(toks) || !r.talksOfHive(toks, row.to, ownSentence) {
			continue
		}
		if name := r.strings.lower(r.text[first.start:last.end]); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) == 1 && !strings.HasPrefix(names[0], strings.ToLower(r.text[toks[0].start:toks[0].end])) {
		return nil
	}
	return names
}

// labelNames are the names in lower case that begin lines with a colon behind them, "maple:
// bias", where several do with what is found in a hive: one may be a label of anything.
func (r *reader) labelNames(toks []token) (names []string) {
	for _, row := range r.rows {
		label := toks[row.from]
		if row.to-row.from < 2 || !label.has(coloned) || label.has(capital) || !r.mayName(toks, row.from) || !r.talksOfHive(toks, row.from+1, ownSentence) {
			continue
		}
		if name := r.strings.lower(r.text[label.start:label.end]); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) < 2 {
		return nil
	}
	return names
}

// placeNames are the names in lower case of hives that are told by where they stand or
// came from: "The church lot are weak", and where another has a name, "The allotment is
// a different story".
func (r *reader) placeNames(toks []token, others bool) (names []string) {
	for i := 0; i+2 < len(toks); i++ {
		the, name := &toks[i], &toks[i+1]
		if the.id != r.theID || the.has(misspelt) || name.has(capital) || name.pause > none || !r.mayName(toks, i+1) || !r.turnsHere(toks, i) {
			continue
		}
		end := i + 2
		if r.says(toks[end], r.wordsOf[lots]...) || end+2 < len(toks) && toks[end].pause == none && r.mayName(toks, end) && r.says(toks[end+1], r.wordsOf[lots]...) {
			if !r.says(toks[end], r.wordsOf[lots]...) {
				end++ // "the lemon tree mob"
			}
			if !r.lotTold(toks, end, others) {
				continue
			}
		} else if !others || !r.fares(toks, end) || toks[end+1].lists.has(faring) || !r.talksOfHive(toks, end, nextSentences) {
			continue
		}
		names = append(names, r.strings.lower(r.text[name.start:toks[end-1].end]))
	}
	return names
}

// saysBees reports whether a token is a word for the bees of a hive behind its name: "the
// Orchard bees", "the Orchard lot".
func (r *reader) saysBees(t token) bool {
	return r.says(t, r.wordsOf[ownBees]...) || r.says(t, r.wordsOf[lots]...)
}

// lotTold reports whether it goes on behind a lot's name at token end as about a hive.
func (r *reader) lotTold(toks []token, end int, others bool) bool {
	next := end + 1
	if toks[end].pause > none || next >= len(toks) {
		return false
	}
	told := beFollows(toks, next) == next || r.says(toks[next], "have") || others && toks[next].pause == comma
	return told && r.talksOfHive(toks, next, nextSentences)
}

// wordNames reports whether a word before "hive" names it.
func (r *reader) wordNames(t token) bool {
	if t.lists.has(noNames) || r.numbers.of(t.id).kind != notNumber || r.dates.of(t.id).kind != notDate {
		return false
	}
	return t.id == idUnknown || r.plantOrColour(t) || r.lex.matcher.longest([]token{t}, 0, nil).end == 0
}

func (r *reader) plantOrColour(t token) bool {
	best := r.lex.matcher.longest([]token{t}, 0, nil)
	for _, n := range best.rules {
		if k := r.kindOf[n]; k == kPlant || k == kColour {
			return true
		}
	}
	return false
}

// isSubject reports whether a run begins a sentence and a verb of being
// follows.
func (r *reader) isSubject(toks []token, i, end int) bool {
	k := beFollows(toks, end)
	if i > 0 && toks[i].pause < colon || k < 0 {
		return false
	}
	switch strings.ToLower(r.text[toks[k].start:toks[k].end]) {
	case "'s", "are", "were", "have": // a hive is one
		return false
	}
	return true
}

// beginsWithIn reports whether a sentence begins with "in", "at", "with" or "from" and
// the run.
func (r *reader) beginsWithIn(toks []token, i int) bool {
	k := i - 1
	if i == 0 || toks[i].pause > none || !r.says(toks[k], "in", "at", "with", "from") {
		return false
	}
	if k > 0 && toks[k].pause == none && r.says(toks[k-1], "over", "across", "down", "up", "back") {
		k-- // "Over at Juniper it's another tale"
	}
	return k == 0 || toks[k].pause >= stop
}

// beFollows is the index of the verb of being or having behind a name, over an
// aside in commas or brackets; -1 where there is none.
func beFollows(toks []token, end int) int {
	k := end
	for k < len(toks) && k < end+16 && toks[k].pause == comma && !toks[k].lists.has(being) {
		for k++; k < len(toks) && k < end+16 && toks[k].pause < comma; k++ {
		}
	}
	if k >= len(toks) || toks[k].pause >= stop || !toks[k].lists.has(being) {
		return -1
	}
	return k
}

// properRun is the end of a run of up to three words that may be a proper
// name: capitals, and no word of the trade or of grammar.
func (r *reader) properRun(toks []token, i int) int {
	end := r.plantName(toks, i)
	if end > i {
		return end
	}
	if r.placeName(toks, i) || r.epithet(toks, i) || r.monthInName(toks, i) {
		end = i + 1 // "Top Terrace", "Old Tom"
		if toks[end].lists.has(placesNear) && !r.mayName(toks, end) {
			return end + 1 // "Compost Corner", and a corner elsewhere is a comb's
		}
	}
	if end == i && (r.capitalWithin(toks, i) && r.capitalWithin(toks, i+1) || r.pairWithin(toks, i) || r.titledHead(toks, i)) {
		end = i + 2 // "fed the Signal Box"
	}
	for end < len(toks) && end < i+3 && toks[end].has(capital) && (end == i || toks[end].pause == none && !toks[end].has(glued)) && (r.mayName(toks, end) || end > i && r.capitalWithin(toks, end)) {
		end++
	}
	if end == i+1 && i > 0 && end < len(toks) && r.says(toks[i-1], "the") && toks[i].pause == none && toks[end].has(capital) && toks[end].pause == none && toks[end].lists.has(titles) {
		end++ // "the Tin Lady"
	}
	if end == i+1 && r.mayName(toks, i) && end < len(toks) && toks[i].pause >= line && toks[end].has(coloned) && toks[end].pause == none && !toks[end].has(glued) && r.mayName(toks, end) && r.lex.matcher.longest(toks, i, nil).end <= end {
		end++ // "Lemon tree: quiet"
	}
	return end
}

// pairWithin reports whether the two words at token i, which begin a sentence, stand amid another with
// capitals: "Fair Isle is all colours", and elsewhere "I'll mark Fair Isle's queen".
func (r *reader) pairWithin(toks []token, i int) bool {
	if i+1 >= len(toks) || i > 0 && toks[i].pause < stop || !r.capitalWithin(toks, i+1) || toks[i].has(glued) {
		return false
	}
	first, second := r.text[toks[i].start:toks[i].end], r.text[toks[i+1].start:toks[i+1].end]
	for k := 1; k+1 < len(toks); k++ {
		if toks[k].id == toks[i].id && r.capitalWithin(toks, k) && r.capitalWithin(toks, k+1) && r.text[toks[k].start:toks[k].end] == first && r.text[toks[k+1].start:toks[k+1].end] == second {
			return true
		}
	}
	return false
}

// titledHead reports whether the title of a person and a name begin a sentence, and neither something that
// is hers or his nor what people do follows: "Aunt Clara swarmed on Wednesday".
func (r *reader) titledHead(toks []token, i int) bool {
	end := i + 2
	if i > 0 && toks[i].pause < stop || end >= len(toks) || toks[i].lists&anyTitle == 0 || !r.capitalWithin(toks, i+1) || toks[end].pause > none || toks[end].has(capital) {
		return false
	}
	return !r.says(toks[end], "'s") && toks[end].lists&(1<<handles|1<<speaking) == 0 && !r.isPerson(toks, i, end) && (beFollows(toks, end) == end || toks[end].lists.has(swarming))
}

// capitalWithin reports whether a word has a capital amid a sentence, where only names have one, and is
// neither a day, a number, an abbreviation nor a word for a hive or a bar: "Petty Cash", "Ward Sister".
func (r *reader) capitalWithin(toks []token, k int) bool {
	if k == 0 || k >= len(toks) || !toks[k].has(capital) || toks[k].pause > none || toks[k].has(glued) {
		return false
	}
	t := toks[k]
	if r.allCapitals(toks, k, k+1) || t.end-t.start < 2 || r.isCalendarWord(t) || r.numbers.of(t.id).kind != notNumber || t.lists&(1<<feasts|1<<personTitles|1<<noNames|1<<plainWords) != 0 || r.hiveWords.has(t.id) || r.barNouns.has(t.id) {
		return false
	}
	return true
}

// isCalendarWord reports whether a token is a day of the week or a month.
func (r *reader) isCalendarWord(t token) bool {
	kind := r.dates.of(t.id).kind
	return kind == weekdayWord || kind == monthWord
}

// opensBefore reports whether a word that stands before the name of a hive is there, "opened", "opened
// up", "I have called the hive".
func (r *reader) opensBefore(toks []token, i int) bool {
	if i > 1 && toks[i].pause == none && (r.says(toks[i-1], "up") || toks[i-1].id == r.hiveID) {
		i-- // and its article
		if i > 1 && toks[i].id == r.hiveID {
			i--
		}
	}
	if i > 1 && toks[i].pause == none && r.says(toks[i-1], "through", "into", "inside") && toks[i-2].lists.has(visits) {
		return true
	}
	return toks[i-1].lists&(1<<openings|1<<namings) != 0
}

// epithet reports whether "old" or the like begins a sentence, or is opened or tended, and belongs to the
// name behind it: "Old Tom was last".
func (r *reader) epithet(toks []token, i int) bool {
	k := i + 1
	if k == len(toks) || !toks[k].has(capital) || toks[k].pause > none || toks[k].has(glued) || i > 0 && toks[i].pause < stop && !r.tended(toks, i) && !r.opensBefore(toks, i) || !r.says(toks[i], "old", "big", "little", "young", "wee", "auld") || !r.mayName(toks, k) {
		return false
	}
	return true
}

// plantName is the end of the name of a plant in two words or three, "Sweet William"; i
// where there is none.
func (r *reader) plantName(toks []token, i int) int {
	if !anyCapital(toks[i+1 : min(i+r.longestPlant, len(toks))]) {
		return i // as behind most words
	}
	best := r.lex.matcher.longest(toks, i, nil)
	if best.end < i+2 || !best.kinds.has(kPlant) || !toks[best.end-1].has(capital) {
		return i
	}
	return best.end
}

// anyTitle are the lists of words that stand before the names of people.
const anyTitle = 1<<titles | 1<<personTitles

// unnamed are the lists of words that stand in no name.
const unnamed = 1<<noNames | 1<<plainHeadings | anyTitle | 1<<feasts

// mayName reports whether a word may stand in a proper name: it is none of the trade, of
// numbers or of days.
func (r *reader) mayName(toks []token, i int) bool {
	t := toks[i]
	if t.lists&unnamed != 0 || t.lists.has(plainWords) && (i == 0 || t.pause > comma) && !r.wordWithin(toks, i) || t.end-t.start < 3 && !r.says(t, "st") {
		return false
	}
	if r.dates.of(t.id).kind != notDate || r.numbers.of(t.id).kind != notNumber {
		return false
	}
	if t.id == idUnknown {
		return true
	}
	best := r.lex.matcher.longest(toks[:i+1], i, nil)
	if best.end == i {
		return true
	}
	homely := false
	for _, n := range best.rules {
		if k := r.kindOf[n]; homelyNames.has(k) || k == kDo && best.kinds.has(kDot) {
			homely = true
		} else if k != kPlant && k != kColour {
			return false
		}
	}
	return !homely || r.capitalWithin(toks, i) || toks[i].pause >= line && beFollows(toks, i+1) >= 0 || (i == 0 || toks[i].pause >= stop) && r.wordWithin(toks, i)
}

// homelyNames are the kinds of words that hives are called by as well, where they have a capital amid a
// sentence: "started with Sunshine", "Dot", "Mild".
var homelyNames = setOf(kSky, kTemper, kStrength, kDot, kWind)

// wordWithin reports whether the word at token i, which begins a sentence, has its capital amid another.
func (r *reader) wordWithin(toks []token, i int) bool {
	word := r.text[toks[i].start:toks[i].end]
	for k := range toks {
		if k > 0 && toks[k].id == toks[i].id && toks[k].pause == none && !toks[k-1].has(capital) && r.text[toks[k].start:toks[k].end] == word {
			return !r.allCapitals(toks, k, k+1)
		}
	}
	return false
}

// says reports whether a token is one of some words.
func (r *reader) says(t token, words ...string) bool {
	text := r.text[t.start:t.end]
	for _, word := range words {
		if len(text) == len(word) && text[0]|0x20 == word[0]|0x20 && strings.EqualFold(text, word) { // few begin alike
			return true
		}
	}
	return false
}
