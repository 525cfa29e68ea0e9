package parse

import "strings"

// toldInSpeech are names that running speech without capitals tells of hives: words that no rule knows, and
// those that people have, of which enough is said that is said of hives.
func (r *reader) toldInSpeech(toks []token) (names []string) {
	r.introducedAt = nil
	if r.front.marks&capital != 0 {
		return nil
	}
	found := map[string]spokenName{}
	introduced, sure := false, false
	for i := range toks {
		begin, weight := r.introduced(toks, i, introduced), 2*enough
		if begin >= 0 {
			introduced = true
			r.introducedAt = append(r.introducedAt, toks[begin].start)
		} else {
			if begin, weight = i, 0; !r.mayBeCalled(toks, i) {
				continue
			}
			weight = r.weighSpoken(toks, i)
		}
		name := strings.ToLower(r.text[toks[begin].start:toks[i].end])
		n := found[name]
		n.weight, n.alone = n.weight+weight, n.alone || r.isNameAlone(&toks[i])
		found[name] = n
		sure = sure || n.weight > enough
	}
	heads, several := r.linesHeaded(toks)
	for name, n := range found {
		beside := sure && (n.weight == enough || n.alone && (n.weight > 0 || heads[name] && n.weight == 0) || heads[name] && n.weight == enough-1)
		listed := several && heads[name] && (n.weight > 0 || n.alone && n.weight == 0)
		if n.weight > enough || beside || listed {
			names = append(names, name)
		}
	}
	return names
}

// spokenName is a word that running speech may tell of a hive.
type spokenName struct {
	weight int  // of what speaks for it
	alone  bool // it can hardly be but a name
}

// linesHeaded are the words that may be names with which lines begin that tell of a hive; several tells that more
// than one of them can hardly be but a name, and so each hive has a line.
func (r *reader) linesHeaded(toks []token) (heads map[string]bool, several bool) {
	heads = map[string]bool{}
	alone := map[string]bool{}
	for i := range toks {
		if toks[i].pause > none && toks[i].pause < line {
			return nil, false // typed, and words may be so that no rule knows
		}
		head := i == 0 || toks[i].pause >= line || (i == 1 || toks[i-1].pause >= line) && r.says(toks[i-1], r.wordsOf[turnWords]...)
		if !head || toks[i].has(coloned) || !r.mayBeCalled(toks, i) || r.isPlant(toks, i, i+1) && !(i+1 < len(toks) && r.says(toks[i+1], "first", "next", "now")) || !r.talksOfHive(toks, i+1, ownParagraph) || r.isPerson(toks, i, i+1) {
			continue
		}
		name := strings.ToLower(r.text[toks[i].start:toks[i].end])
		heads[name] = true
		if r.isNameAlone(&toks[i]) {
			alone[name] = true
		}
	}
	return heads, len(alone) > 1
}

// isNameAlone reports whether a word can hardly be but a name: people are called by it, or no rule knows it.
func (r *reader) isNameAlone(t *token) bool {
	return r.givenNames.has(t.id) || r.unheardOf(t) || t.id == idUnknown && t.lists == 1<<speltRight
}

// mayBeCalled reports whether a hive may be called by the word at token i: one that people are called by, a plant,
// or a word that no rule knows alone.
func (r *reader) mayBeCalled(toks []token, i int) bool {
	t := &toks[i]
	if _, leads := r.leadIns[r.text[t.start:t.end]]; leads {
		return false // "second stop the quarry"
	}
	if r.isNameAlone(t) || t.id == idUnknown && r.saidTwice(toks, i) {
		return true
	}
	if t.end-t.start < 4 || t.has(digits) || r.numbers.of(t.id).kind != notNumber || r.dates.of(t.id).kind != notDate {
		return false
	}
	if r.isPlant(toks, i, i+1) {
		return !r.meantAsWord(toks, i, i+1)
	}
	return t.lists&^callable == 0 && r.lex.matcher.longest(toks[:i+1], i, nil).end == i && !inflected(r.text[t.start:t.end])
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
		if !r.says(toks[k-1], "um", "uh", "er") {
			return toks[k].pause == none && r.ledTo(toks[:k+1], k)
		}
	}
	return false
}

// saidTwice reports whether the word at token i is said again at once with a verb behind it: "banjo banjo's
// booming", "babcia um babcia is weak".
func (r *reader) saidTwice(toks []token, i int) bool {
	k := i + 1
	for k < len(toks) && toks[k].pause <= comma && r.says(toks[k], "um", "uh", "er", "though", "and", "well", "now") {
		k++
	}
	if k+1 >= len(toks) || toks[k].pause > comma || r.text[toks[k].start:toks[k].end] != r.text[toks[i].start:toks[i].end] {
		return false
	}
	return toks[k+1].lists.has(being) || r.says(toks[k+1], "'s", "did", "looks", "went", "came", "seems")
}
