package parse

import (
	"slices"
	"strings"
)

// A hive among others is told without the word for it by its colour or by where it
// stands: "The white one is weak", "The fence one", "The one by the shed I only
// watched". Whether a note does so is settled on its first page.

// calledOne is such a way of telling a hive, in lower case, and the hive's name.
type calledOne struct{ words, name string }

// calledOnes are the hives that the note tells so where it turns to them: at the head
// of a sentence, and going on about what is found in a hive. One alone does not do,
// unless another hive is named.
func (r *reader) calledOnes(toks []token) []calledOne {
	if ones := r.onesTurnedTo(toks); len(ones) > 1 || len(r.names) > 0 || r.namedByWord(toks, false) || len(ones) == 1 && r.opposites[ones[0].name] != nil {
		return ones
	}
	if one, found := r.loneOne(toks); found {
		return []calledOne{one}
	}
	return nil
}

// onesTurnedTo are the hives told so to which the talk turns.
func (r *reader) onesTurnedTo(toks []token) (ones []calledOne) {
	if !r.onFront(r.oneID, r.nucID, r.splitID, r.hiveID) {
		return nil
	}
	for i := range toks {
		if toks[i].id != r.theID {
			continue
		}
		end, name := r.oneAt(toks, i)
		if name == "" {
			continue
		}
		turned := r.onIt(toks, i) || i == 0 || toks[i].pause >= stop || r.says(toks[i-1], "then", "now", "next", "and") || r.turnsHere(toks, i) || toks[i].pause == none && toks[i-1].lists.has(openings)
		if !turned || !r.talksOfHive(toks, end, nextSentences) && !slices.Contains(r.hivesOfPage().before, name) {
			continue
		}
		one := calledOne{strings.ToLower(r.text[toks[i].start:toks[end-1].end]), name}
		if !slices.Contains(ones, one) {
			ones = append(ones, one)
		}
	}
	return ones
}

// onIt reports whether it is told at token i what was found on or in a hive, which so begins
// what is said of it: "and on the Mill one there was robbing".
func (r *reader) onIt(toks []token, i int) bool {
	return i > 1 && toks[i].pause == none && r.says(toks[i-1], "on", "in", "at") && (toks[i-1].pause >= stop || r.says(toks[i-2], "and", "but", "while", "whereas"))
}

// turnsHere reports whether nothing but words of a round of visits stands before token i
// in its sentence: "then across to", "last of all".
func (r *reader) turnsHere(toks []token, i int) bool {
	for k := i; k > 0 && toks[k].pause < stop; k-- {
		if i-k > 5 || !r.says(toks[k-1], r.wordsOf[rounds]...) {
			return false
		}
	}
	return true
}

// oneAt reads "the white one" or "the one by the shed" at token i: where it ends, and
// the hive's name; "" where it is neither.
func (r *reader) oneAt(toks []token, i int) (end int, name string) {
	if r.behindNumber(toks, i) {
		return i, ""
	}
	if i+3 > len(toks) || toks[i+1].pause > none || toks[i+2].pause > none {
		return i, ""
	}
	if r.says(toks[i+1], "nuc", "split") && beFollows(toks, i+2) == i+2 && r.talksOfHive(toks, i+2, ownSentence) {
		return i + 2, strings.ToLower(r.text[toks[i+1].start:toks[i+1].end])
	}
	if r.says(toks[i+2], "one") && (r.plantOrColour(toks[i+1]) || toks[i+1].lists.has(plantNames) || r.says(toks[i+1], r.wordsOf[rowPlaces]...) || toks[i+1].lists.has(placesNear) || r.opposed(r.strings.lower(r.text[toks[i+1].start:toks[i+1].end])) || toks[i+1].has(capital) && r.mayName(toks, i+1)) {
		return i + 3, strings.ToLower(r.text[toks[i+1].start:toks[i+1].end])
	}
	if i+4 <= len(toks) && r.handed(toks, i+1) && toks[i+3].pause == none && r.says(toks[i+3], "one") {
		return i + 4, strings.ToLower(r.text[toks[i+1].start:toks[i+2].end]) // "the right-hand one"
	}
	hive := toks[i+1].id == r.hiveID && !r.says(toks[i+2], "at", "above", "below")
	if !hive && !r.says(toks[i+1], "one") || !toks[i+2].lists.has(standing) {
		return i, ""
	}
	from := i + 3
	for from < len(toks) && toks[from].pause == none && r.says(toks[from], "to", "of", "the", "my", "our") {
		from++
	}
	if from == len(toks) || toks[from].pause > none || r.says(toks[from], "it", "that", "this", "them", "her", "him", "me", "us") || toks[from].lists.has(hiveParts) || r.numbers.of(toks[from].id).kind != notNumber {
		return i, "" // "the one by the entrance" is a bar
	}
	if hive && !r.plantOrColour(toks[from]) && toks[from].lists&(1<<placesNear|1<<plantNames) == 0 {
		return i, "" // "the hive by itself"
	}
	end = from + 1
	for end < len(toks) && end < from+2 && toks[end].pause == none && r.mayName(toks, end) && !strings.HasSuffix(r.text[toks[end].start:toks[end].end], "ed") {
		end++
	}
	if hive && (r.namedBehind(toks, end) || len(r.names) > 0 && !r.talksOfHive(toks, end, ownSentence)) {
		return i, ""
	}
	return end, strings.ToLower(r.text[toks[from].start:toks[end-1].end])
}

// behindNumber reports whether a hive is numbered right before token i, so that what begins there tells
// which it is: "hive number six the one behind the maize".
func (r *reader) behindNumber(toks []token, i int) bool {
	if i < 2 || toks[i].pause > comma || toks[i-1].pause > none || !r.isNumber(&toks[i-1]) {
		return false
	}
	k := i - 2
	if k > 0 && toks[k].id == r.numberID && toks[k].pause == none {
		k--
	}
	return r.hiveWords.has(toks[k].id)
}

// handed reports whether "left-hand" or "right hand" stands at token i.
func (r *reader) handed(toks []token, i int) bool {
	return r.says(toks[i], "left", "right") && r.says(toks[i+1], "hand") && toks[i+1].pause == none
}

// namedBehind reports whether a hive that was told by its place is told by its name in the words
// behind: "the hive by the gate, Juniper, …", "… (hive 3) …", "… is called Juniper".
func (r *reader) namedBehind(toks []token, end int) bool {
	for k := end; k < len(toks) && k < end+6 && toks[k].pause < stop; k++ {
		if toks[k].id == r.hiveID || toks[k].lists.has(namings) || toks[k].has(capital) && toks[k].pause == comma || r.says(toks[k], "known") {
			return true
		}
	}
	return false
}

// opposed reports whether the page tells the hive opposite to the one of a word by the word
// for a hive: "the bottom one", and elsewhere "the top hive".
func (r *reader) opposed(word string) bool {
	others := r.opposites[word]
	return others != nil && slices.ContainsFunc(r.hivesOfPage().before, func(of string) bool { return slices.Contains(others, of) })
}

// pageHives are the hives that a page tells by what stands beside the word for one.
type pageHives struct {
	sought      bool     // they are as below
	before      []string // words right before it, in lower case: "the top hive"
	otherLetter bool     // than "a" stands behind it
}

// hivesOfPage finds them where they are asked for, once a page: most never are.
func (r *reader) hivesOfPage() *pageHives {
	p := &r.pageHives
	if p.sought {
		return p
	}
	*p = pageHives{sought: true}
	hive, colony := r.hiveID, r.colonyID
	for i := range r.toks {
		t := &r.toks[i]
		if t.id != hive && t.id != colony {
			continue // as most words
		}
		if i > 0 && t.pause == none {
			before := r.toks[i-1]
			p.before = append(p.before, r.strings.lower(r.text[before.start:before.end]))
		}
		if t.id == hive && i+1 < len(r.toks) && r.otherLetter(&r.toks[i+1]) {
			p.otherLetter = true
		}
	}
	return p
}

// nameOnes makes references of the words by which the note calls its hives.
func (r *reader) nameOnes(items []item) []item {
	for i := 0; i < len(items) && len(r.ones) > 0; i++ {
		for _, one := range r.ones {
			end := r.spells(items, i, one.words)
			if end == i {
				continue
			}
			items[i] = *r.asHive(r.merged(items, i, end, nil), one.name)
			items = slices.Delete(items, i+1, end)
			break
		}
	}
	return items
}

// spells is the index behind the items from i on that spell some words in lower case;
// i where they do not.
func (r *reader) spells(items []item, i int, words string) int {
	for end := i + 1; end <= len(items); end++ {
		text := r.text[items[i].start:items[end-1].end]
		if len(text) > len(words) {
			break
		}
		if strings.EqualFold(text, words) {
			return end
		}
	}
	return i
}
