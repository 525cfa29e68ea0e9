package parse

import (
	"slices"
	"strings"
)

// A recogniser writes names small. Those of people, after whom hives are called, tell
// themselves where the talk turns to a hive.

// spokenNames are the given names in small letters that are told as those of hives: behind
// "hive", alone on a line, or in a note that has no others at the head of one in its turn,
// "now naomi". What is told of them further on is weighed by toldInSpeech.
func (r *reader) spokenNames(toks []token, byWord bool) (names []string) {
	if !r.front.given {
		return nil
	}
	for i := range toks {
		t := &toks[i]
		if !r.givenNames.has(t.id) || t.has(capital) {
			continue
		}
		name := strings.ToLower(r.text[t.start:t.end])
		if !slices.Contains(names, name) && r.spokenAsHive(toks, i, byWord) {
			names = append(names, name)
		}
	}
	return names
}

// spokenAsHive reports whether the given name at token i is told so: "this is doris", "over to maeve", "dora
// first".
func (r *reader) spokenAsHive(toks []token, i int, byWord bool) bool {
	if i > 0 && toks[i].pause == none && toks[i-1].id == r.hiveID {
		return true
	}
	end := i + 1
	if i > 1 && toks[i].pause == none && toks[i-1].pause == none && r.says(toks[i-1], "is") && r.says(toks[i-2], "this") && (end == len(toks) || toks[end].pause >= line) {
		return r.talksOfHive(toks, end, nextSentences) // "right this is doris"
	}
	if i > 1 && toks[i].pause == none && r.says(toks[i-1], "to") && r.says(toks[i-2], "over", "on", "across", "along") {
		return !byWord && r.talksOfHive(toks, end, ownSentence)
	}
	turned := i > 0 && toks[i].pause == none && r.among(&toks[i-1], turnWords)
	if head := i == 0 || toks[i].pause >= line; !head && !(turned && (i == 1 || toks[i-1].pause >= line)) {
		return false
	}
	if end == len(toks) || toks[end].pause >= line {
		return r.talksOfHive(toks, end, nextSentences)
	}
	return !byWord && !r.says(toks[end], "you") && (turned || r.says(toks[end], "first", "next")) && r.talksOfHive(toks, end, ownSentence)
}

// inItsTurn reports whether a given name at item i heads its line, as the names of hives do,
// behind nothing but a word that turns to it.
func (r *reader) inItsTurn(items []item, i int) bool {
	it := &items[i]
	if it.to != it.from+1 || !r.givenNames.has(r.mended[it.from].id) {
		return false
	}
	return i == 0 || i == 1 && it.pause == none && r.isWord(&items[0], r.wordsOf[turnWords]...) || i > 1 && items[i-1].is(kBe) && items[i-2].text == "this" || i > 0 && it.pause == none && items[i-1].any(kTo, kFrom)
}
