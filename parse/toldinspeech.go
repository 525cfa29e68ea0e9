package parse

import "strings"

// A recogniser writes the names of hives small, and nothing marks them. They are found by what is said of words
// that may be names, wherever these stand.

// spokenName is a word that running speech may tell of a hive.
type spokenName struct {
	weight int  // of what speaks for it, as far as it was weighed
	most   int  // that what was not may add
	alone  bool // it can hardly be but a name
	heads  bool // a line begins with it that tells of a hive
}

// isHive reports whether enough speaks for a word: by itself, beside another of which it is sure, or where several
// words that can hardly be but names begin a line each.
func (n spokenName) isHive(sure, several bool) bool {
	mayHead := n.heads && (n.weight > 0 || n.alone && n.weight == 0)
	switch {
	case n.weight > enough:
		return true
	case sure && (n.weight == enough || n.alone && n.weight > 0 || mayHead && (n.alone || n.weight == enough-1)):
		return true
	}
	return several && mayHead
}

// spokenAt is a mention of such a word that is to be weighed.
type spokenAt struct {
	token int
	most  int // that it may weigh
}

// toldInSpeech are names that running speech without capitals tells of hives: words that no rule knows, and
// those that people have, of which enough is said that is said of hives. Most notes of running speech have none:
// what is said of a word is only weighed where it may be enough, or all is where one is sure.
func (r *reader) toldInSpeech(toks []token) (names []string) {
	r.introducedAt = nil
	if r.front.marks&capital != 0 {
		return nil
	}
	found, left := r.mentionedInSpeech(toks)
	several := r.linesHeaded(toks, found, true)
	left = r.weighSpeech(toks, found, left, false)
	sure := false
	for _, n := range found {
		sure = sure || n.weight > enough
	}
	if !sure && !several {
		return nil
	}
	r.linesHeaded(toks, found, false)
	r.weighSpeech(toks, found, left, true)
	for name, n := range found {
		if n.isHive(sure, several) {
			names = append(names, name)
		}
	}
	return names
}

// mentionedInSpeech are the words of running speech that may be names, and where what speaks for them is to be weighed.
func (r *reader) mentionedInSpeech(toks []token) (found map[string]spokenName, at []spokenAt) {
	found, at = map[string]spokenName{}, r.spoken[:0]
	for i := range toks {
		begin, alone := -1, r.isNameAlone(&toks[i])
		if alone || i <= longestGreeting || toks[i].pause == none && r.says(toks[i-1], "the") {
			begin = r.introduced(toks, i, len(r.introducedAt) > 0)
		}
		if begin < 0 && !r.mayBeCalled(toks, i, alone) {
			continue
		}
		introduced := begin >= 0
		if !introduced {
			begin = i
		}
		name := strings.ToLower(r.text[toks[begin].start:toks[i].end])
		n := found[name]
		n.alone = n.alone || alone
		if introduced {
			r.introducedAt = append(r.introducedAt, toks[begin].start)
			n.weight += 2 * enough
		} else {
			at = append(at, spokenAt{i, r.mostSpoken(toks, i)})
			n.most += at[len(at)-1].most
		}
		found[name] = n
	}
	r.spoken = at
	return found, at
}

// weighSpeech weighs the mentions of words that what is left of them may make sure, or all, and returns the others.
func (r *reader) weighSpeech(toks []token, found map[string]spokenName, at []spokenAt, all bool) (left []spokenAt) {
	left = at[:0]
	for _, m := range at {
		name := strings.ToLower(r.text[toks[m.token].start:toks[m.token].end])
		n := found[name]
		if !all && n.weight+n.most <= enough {
			left = append(left, m)
			continue
		}
		n.weight, n.most = n.weight+r.weighSpoken(toks, m.token), n.most-m.most
		found[name] = n
	}
	return left
}

// mostSpoken is the most that what speaks for the word at token i may weigh.
func (r *reader) mostSpoken(toks []token, i int) int {
	most := enough
	r.mention = mention{reader: r, toks: toks, i: i, end: i + 1}
	if r.mention.given() {
		most = 4 * enough
	}
	if r.saidTwice(toks, i) {
		most += enough
	}
	return most
}

// linesHeaded marks the words with which lines begin that tell of a hive, and reports whether more than one of them
// can hardly be but a name, of which alone it may be asked: so each hive has a line. Not of what is typed: words are
// there that no rule knows.
func (r *reader) linesHeaded(toks []token, found map[string]spokenName, alone bool) (several bool) {
	for i := range toks {
		if toks[i].pause > none && toks[i].pause < line {
			return false
		}
	}
	first := ""
	for i := range toks {
		if i > 1 && toks[i].pause < line && toks[i-1].pause < line || !r.atHead(toks, i) {
			continue // as most
		}
		name := strings.ToLower(r.text[toks[i].start:toks[i].end])
		n := found[name]
		if alone && !n.alone || !r.headsLine(toks, i) {
			continue
		}
		n.heads = true
		found[name] = n
		if n.alone {
			several = several || first != "" && first != name
			first = name
		}
	}
	return several
}

// atHead reports whether a line begins with the word at token i, or with one that turns to it: "now juniper".
func (r *reader) atHead(toks []token, i int) bool {
	return i == 0 || toks[i].pause >= line || (i == 1 || toks[i-1].pause >= line) && r.among(&toks[i-1], turnWords)
}

// headsLine reports whether the word at token i, at the head of a line, may be a name of which the line tells as of
// a hive. A plant must be said to have its turn: "quince first".
func (r *reader) headsLine(toks []token, i int) bool {
	if toks[i].has(coloned) || !r.mayBeCalled(toks, i, r.isNameAlone(&toks[i])) || !r.talksOfHive(toks, i+1, ownParagraph) || r.isPerson(toks, i, i+1) {
		return false
	}
	return !r.isPlant(toks, i, i+1) || i+1 < len(toks) && r.says(toks[i+1], "first", "next", "now")
}

// isNameAlone reports whether a word can hardly be but a name: people are called by it, or no rule knows it.
func (r *reader) isNameAlone(t *token) bool {
	return r.givenNames.has(t.id) || r.unheardOf(t) || t.id == idUnknown && t.lists == 1<<speltRight
}

// mayBeCalled reports whether a hive may be called by the word at token i: one that people are called by, a plant,
// or a word that no rule knows alone. Alone tells that it can hardly be but a name.
func (r *reader) mayBeCalled(toks []token, i int, alone bool) bool {
	t := &toks[i]
	if !alone && !(t.id == idUnknown && r.saidTwice(toks, i)) && !r.isNameToo(toks, i) {
		return false
	}
	_, leads := r.leadIns[r.text[t.start:t.end]]
	return !leads // "second stop the quarry"
}

// isNameToo reports whether the word at token i is a plant, and meant as no plant, or a word that no rule knows alone.
func (r *reader) isNameToo(toks []token, i int) bool {
	t, best := &toks[i], r.lex.matcher.alone(toks[i].id)
	plant := t.lists.has(plantNames) || best.kinds.has(kPlant)
	if !plant && (best != senseless || t.lists&^callable != 0) || t.end-t.start < 4 || t.has(digits) {
		return false
	}
	if r.numbers.of(t.id).kind != notNumber || r.dates.of(t.id).kind != notDate {
		return false
	}
	if plant {
		return !r.meantAsWord(toks, i, i+1)
	}
	return !inflected(r.text[t.start:t.end])
}

// callable are the lists of words after which hives are called too.
const callable = 1<<speltRight | 1<<placesNear | 1<<plantNames

// weighSpoken weighs what speaks for a word at token i as a hive's name.
func (r *reader) weighSpoken(toks []token, i int) int {
	end := i + 1
	if i > 0 && toks[i].pause == none && r.says(toks[i-1], "the", "a", "an", "my", "our", "his", "some", "this", "that") {
		return 0 // a thing, "down at the boatyard"
	}
	if r.isPerson(toks, i, end) || r.titledRun(toks, i) {
		return -2 * enough
	}
	if toks[i].has(coloned) && i > 1 && toks[i].pause == none && r.says(toks[i-1], "to") && !r.says(toks[i-2], "on", "over", "back", "across", "along", "round", "down", "up", "next") {
		return 0 // a heading, "steps to reproduce:"
	}
	toks[i].flags |= capital
	r.mention = mention{reader: r, toks: toks, i: i, end: end}
	weight := r.mention.weigh()
	toks[i].flags &^= capital
	if weight < 0 {
		return weight
	}
	weight = max(weight, r.weighTurn(toks, i, end))
	if r.saidTwice(toks, i) {
		weight += enough
	}
	return weight
}

// weighTurn weighs a word in running speech by whether the talk turns to it, or something is done to it.
func (r *reader) weighTurn(toks []token, i, end int) int {
	behind := end < len(toks) && toks[end].pause <= comma
	head := i == 0 || toks[i].pause >= line
	switch {
	case i > 0 && toks[i].pause == none && r.tended(toks, i):
		return enough - 1
	case !r.talksOfHive(toks, end, nextSentences):
		return 0
	case i > 0 && toks[i].pause <= comma && r.ledToInSpeech(toks, i):
		return enough - 1
	case !r.talksOfHive(toks, end, ownSentence):
		return 0
	case behind && (toks[end].lists.has(being) || r.says(toks[end], "'s", "first", "next", "now")) && (head || !r.says(toks[i-1], "in", "at", "from", "near", "of")):
		return enough - 1 // and not "my friend in croydon has"
	case i > 0 && toks[i].pause == none && (r.opensBefore(toks, i) || r.barsBefore(toks, i)):
		return enough - 1
	case head || r.turnedTo(toks, i):
		return 1
	}
	return 0
}

// ledToInSpeech reports the same as ledTo over what speakers put before a name: "started with um juniper".
func (r *reader) ledToInSpeech(toks []token, i int) bool {
	for k := i; k > 0; k-- {
		if !r.says(toks[k-1], hesitations...) {
			return toks[k].pause == none && r.ledTo(toks[:k+1], k)
		}
	}
	return false
}

// saidTwice reports whether the word at token i is said again at once with a verb behind it: "banjo banjo's
// booming", "babcia um babcia is weak".
func (r *reader) saidTwice(toks []token, i int) bool {
	k := i + 1
	for k < len(toks) && toks[k].pause <= comma && (r.says(toks[k], hesitations...) || r.says(toks[k], "though", "and", "well", "now")) {
		k++
	}
	if k+1 >= len(toks) || toks[k].pause > comma || r.text[toks[k].start:toks[k].end] != r.text[toks[i].start:toks[i].end] {
		return false
	}
	return toks[k+1].lists.has(being) || r.says(toks[k+1], "'s", "did", "looks", "went", "came", "seems")
}
