package parse

import "strings"

// A hive that the note tells of once and in passing: "So, Juniper.", "What a to-do with
// the red one today", "Sat by the chapel bees for a while".

// exclaimed reports whether a name is a sentence by itself behind a word or two that
// draw breath: "So, Juniper.", "Right then, Juniper!"; that of a plant may do without.
func (r *reader) exclaimed(toks []token, i, end int) bool {
	if end < len(toks) && toks[end].pause < stop || i == 0 {
		return false
	}
	if toks[i].pause >= stop {
		return toks[i].lists.has(plantNames) && end == i+1
	}
	for k := i - 1; k >= 0 && k >= i-3; k-- {
		if !toks[k].lists.has(breaths) {
			return false
		}
		if k == 0 || toks[k].pause >= stop {
			return true
		}
	}
	return false
}

// plantAsName reports whether a plant has a capital where the plant itself would have
// none: amid a sentence, in no longer name, and before nothing that it yields.
func (r *reader) plantAsName(toks []token, i, end int) bool {
	if i == 0 || toks[i].pause >= stop || toks[i].pause == none && (toks[i-1].has(capital) && i > 1 && toks[i-1].pause < stop || r.says(toks[i-1], r.wordsOf[ofPeople]...) || i > 1 && r.says(toks[i-2], "according", "thanks")) {
		return false
	}
	best := r.lex.matcher.longest(toks, i, nil)
	if known := best.end == end && best.kinds.has(kPlant); !known && (end > i+1 || !toks[i].lists.has(plantNames)) {
		return false
	}
	if end == len(toks) || toks[end].pause > none {
		return true
	}
	next := r.lex.matcher.longest(toks, end, nil)
	return !toks[end].has(capital) && toks[end].id != r.words.ownID && !next.kinds.has(kContent) && !next.kinds.has(kForage)
}

// loneOne is the hive told by colour, place or plant in the opening sentences of the
// note: "had the yellow one open", "by the chapel lot".
func (r *reader) loneOne(toks []token) (one calledOne, found bool) {
	for i := range toks {
		if i > 0 && toks[i].pause >= stop && i > longestOpening {
			break
		}
		if toks[i].id != r.theID || i+2 >= len(toks) || toks[i+1].pause > none || toks[i+2].pause > none {
			continue
		}
		end, name := r.oneAt(toks, i)
		if name == "" {
			end, name = r.lotAt(toks, i)
		}
		if name == "" {
			continue
		}
		if r.withinHive(toks, 0, i+1) || end+1 < len(toks) && toks[end].pause == none && toks[end+1].pause == none && r.withinHive(toks, end+1, end+2) {
			break // "the red one on bar four"
		}
		if r.talksOfHive(toks, end, nextSentences) {
			return calledOne{strings.ToLower(r.text[toks[i].start:toks[end-1].end]), name}, true
		}
	}
	return one, false
}

// withinHive reports whether what only a hive has is named from one token to another, behind
// which "the red one" may be a queen or a cell.
func (r *reader) withinHive(toks []token, from, to int) bool {
	for i := from; i < to; i++ {
		if toks[i].id != idUnknown && r.lex.matcher.longest(toks, i, nil).kinds.meet(foundInHives) {
			return true
		}
	}
	return false
}

// foundInHives are the kinds of words for what is found in a hive.
var foundInHives = setOf(kBar, kBars, kQueen, kCell, kComb, kContent, kMite)

// longestOpening is how many words the first sentences of a note have in which its hive
// is told.
const longestOpening = 25

// lotAt reads "the chapel lot", "the orchard bees" at token i, as oneAt does.
func (r *reader) lotAt(toks []token, i int) (end int, name string) {
	t := toks[i+1]
	switch {
	case !r.saysBees(toks[i+2]):
		return i, ""
	case t.lists.has(placesNear), r.plantOrColour(t), r.says(toks[i+2], "lot") && i > 0 && toks[i].pause == none && r.placedLot(toks, i):
		return i + 3, strings.ToLower(r.text[t.start:t.end])
	}
	return i, ""
}

// placedLot reports whether a word that is none of the trade stands behind a word
// of place or of going somewhere: "by the pigeon-loft lot".
func (r *reader) placedLot(toks []token, i int) bool {
	return r.mayName(toks, i+1) && toks[i-1].lists&(1<<standing|1<<visitLinks) != 0
}

// nameLone gives the one hive of a note, of which something is told and which nothing turned to by its
// name, the one name of a hive that the note has: "The question is whether Juniper is provided for. Bars eight to ten are full."
func (r *reader) nameLone() {
	if r.onlyName == nil || len(r.all) != 1 || r.all[0].hive != "" {
		return
	}
	b := r.all[0]
	if len(b.entries) == r.weatherOf(b) {
		return
	}
	b.hive, b.spans = r.onlyName.name, append(b.spans, r.onlyName.at)
	b.flag("hive", "named, and not turned to", "")
}
