package parse

import (
	"slices"
	"strings"
)

// A recogniser writes names small. Those of people, after whom hives are called, tell
// themselves where the talk turns to a hive.

// spokenNames are the given names in small letters that are told as those of hives: behind
// "hive", alone on a line, or in a note that has no others at the head of one in its turn,
// "now naomi".
func (r *reader) spokenNames(toks []token, byWord bool) (names []string) {
	if !r.front.given {
		return nil
	}
	for i := range toks {
		t := &toks[i]
		if !r.givenNames.has(t.id) || t.has(capital) || !r.spokenAsHive(toks, i, byWord) {
			continue
		}
		if name := strings.ToLower(r.text[t.start:t.end]); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

func (r *reader) spokenAsHive(toks []token, i int, byWord bool) bool {
	if i > 0 && toks[i].pause == none && toks[i-1].id == r.hiveID {
		return true
	}
	turned := i > 0 && toks[i].pause == none && r.says(toks[i-1], turnWords...)
	if head := i == 0 || toks[i].pause >= line; !head && !(turned && (i == 1 || toks[i-1].pause >= line)) {
		return false
	}
	end := i + 1
	if end == len(toks) || toks[end].pause >= line {
		return r.talksOfHive(toks, end, nextSentences)
	}
	return !byWord && !r.says(toks[end], "you") && (turned || r.says(toks[end], "first", "next")) && r.talksOfHive(toks, end, ownSentence)
}

// turnWords stand before the name of the hive whose turn it is.
var turnWords = []string{"now", "then", "next", "and", "right", "ok", "okay", "so"}

// inItsTurn reports whether a given name at item i heads its line, as the names of hives do,
// behind nothing but a word that turns to it.
func (r *reader) inItsTurn(items []item, i int) bool {
	it := &items[i]
	return it.to == it.from+1 && r.givenNames.has(r.mended[it.from].id) && (i == 0 || i == 1 && it.pause == none && r.isWord(&items[0], turnWords...))
}
