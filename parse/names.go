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
	byWord := r.namedByWord(toks, false)
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
		if !r.namedByWord(toks, true) {
			r.foundNames(toks, false).addSure(names)
		}
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
	before, first, last := "", -1, 0 // the run before, where it began and ended
	for i := 0; i < len(toks); i++ {
		if !toks[i].has(capital) {
			continue
		}
		end := r.properRun(toks, i)
		if end == i {
			continue
		}
		if !r.titledRun(toks, i) {
			name := r.strings.lower(r.text[toks[i].start:toks[end-1].end])
			if found == nil {
				found = properNames{}
			}
			n := found[name]
			if n.at == (colony.Span{}) {
				n.at = colony.Span{int(toks[i].start), int(toks[end-1].end)}
			}
			r.weighRun(&n, toks, i, end, byWord)
			if before != name && first >= 0 && r.besideRun(toks, first, last, i) {
				n.beside = before
			}
			found[name] = n
			before, first, last = name, i, end
		}
		i = end - 1
	}
	return found
}

// besideRun reports whether the run at token i is joined to the one of the tokens before: "gave Juniper and
// Tansy a look", "Juniper, the Depot".
func (r *reader) besideRun(toks []token, first, last, i int) bool {
	if i == last+1 && r.says(toks[last], "and", "or") {
		within := first > 0 && toks[first].pause == none || !r.givenNames.has(toks[first].id)
		return within && toks[last].pause == none && toks[i].pause == none
	}
	listed := i == last && toks[i].pause == comma || i == last+1 && toks[last].pause == comma && r.says(toks[last], "the") && toks[i].pause == none
	return listed && first > 0 && toks[first].pause < stop
}

// titledRun reports whether the title of a person stands before the run that begins at token i: "the late
// Mr Rowan" tells nothing of whose name Rowan is elsewhere. "Oh dear" is none.
func (r *reader) titledRun(toks []token, i int) bool {
	if i == 0 || toks[i].pause > none || !toks[i-1].lists.has(personTitles) {
		return false
	}
	return i == 1 || !r.says(toks[i-2], "oh")
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
	if article := r.mention.behindArticle(); article != nil && article.headsSentence() {
		n.heads = n.heads || article.headsPart()
		n.focus = max(n.focus, r.focusOn(toks, article.i, end))
	}
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
		if r.among(&toks[end], lots) || end+2 < len(toks) && toks[end].pause == none && r.mayName(toks, end) && r.among(&toks[end+1], lots) {
			if !r.among(&toks[end], lots) {
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
	return r.among(&t, ownBees) || r.among(&t, lots)
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

// among reports whether a token is one of the words of a list: what none of them is like in its first letter and its
// length is none, as most.
func (r *reader) among(t *token, of list) bool {
	return r.likeOf[of].has(r.text[t.start:t.end]) && r.says(*t, r.wordsOf[of]...)
}

// likes tells by their first letters and lengths what words are like.
type likes uint64

func (l likes) has(word string) bool { return l>>likeOf(word)&1 != 0 }

// likeOf numbers what a word is like; what stands for nothing in the text is like no word.
func likeOf(word string) uint {
	if word == "" {
		return 64
	}
	return (uint(word[0]&31) + 5*uint(len(word))) & 63
}

// likesOf are those of some words.
func likesOf(words []string) (l likes) {
	for _, word := range words {
		l |= 1 << likeOf(word)
	}
	return l
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
