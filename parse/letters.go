package parse

import (
	"slices"
	"strings"
)

// letterNames are the letters by which the note names hives, "hive M", after which a
// capital alone is the hive; never "I".
func (r *reader) letterNames(toks []token) (names []string) {
	at := capitalLetters(toks)
	if len(at) == 0 {
		return nil
	}
	names = append(r.letterHeads(toks, at), r.codeNames(toks, at)...)
	if !r.onFront(r.hiveID, r.colonyID) {
		return names
	}
	names = append(names, r.hiveCodes(toks, at)...)
	for _, i := range at {
		t := &toks[i]
		if i == 0 || t.has(glued) || t.pause > none || toks[i-1].id != r.hiveID && toks[i-1].id != r.colonyID {
			continue
		}
		if name := strings.ToLower(r.text[t.start:t.end]); name != "i" && (name != "a" || i+1 == len(toks) || toks[i+1].pause > none || toks[i+1].lists.has(being)) {
			names = append(names, name)
		}
	}
	if len(names) > 0 {
		names = append(names, r.lettersWithin(toks, at)...)
	}
	return names
}

// capitalLetters are the tokens of one letter with a capital.
func capitalLetters(toks []token) (at []int) {
	for i := range toks {
		if t := &toks[i]; t.end-t.start == 1 && t.has(capital) {
			at = append(at, i)
		}
	}
	return at
}

// otherLetter reports whether a token behind "hive" is a letter other than "a", so that "hive
// a" is a hive of the page too, also where a recogniser wrote them small.
func (r *reader) otherLetter(t *token) bool {
	return t.end-t.start == 1 && t.pause == none && t.id != idNumber && !r.says(*t, "a", "i")
}

// lettersWithin are the letters behind "in", "to" or "from", by which a note that names its
// hives so goes on without the word: "in hive D …, whereas in F …".
func (r *reader) lettersWithin(toks []token, at []int) (names []string) {
	for _, i := range at {
		t := &toks[i]
		if i > 0 && !t.has(glued) && t.pause == none && !r.says(*t, "i", "a") && r.says(toks[i-1], "in", "to", "from") {
			names = append(names, strings.ToLower(r.text[t.start:t.end]))
		}
	}
	return names
}

// codeNames are codes of a letter and a number by which two hives or more are told at the heads
// of sentences, "K1 strong. K2 weak", or one of which there is news, "Notes on T9". What
// shorthand has for bars, hives or contents is none, but no sealed brood has a number.
func (r *reader) codeNames(toks []token, at []int) (names []string) {
	for _, i := range at {
		if i+2 >= len(toks) {
			break
		}
		t, number := &toks[i], &toks[i+1]
		if number.id != idNumber || !number.has(glued) || r.says(*t, "a", "f", "i") || r.shortLetter(r.strings.lower(r.text[t.start:t.end])) && !r.says(*t, "s") {
			continue
		}
		news := i > 0 && t.pause == none && toks[i-1].lists.has(visitLinks) && (i == 1 || toks[i-2].lists.has(visits) || r.says(toks[i-2], "notes"))
		if (i == 0 || t.pause >= stop || news) && r.talksOfHive(toks, i+2, nextSentences) {
			names = append(names, r.strings.lower(r.text[t.start:number.end]))
		}
		if news {
			return names
		}
	}
	if len(names) < 2 {
		return nil
	}
	return names
}

// hiveCodes are the codes of a letter and a number behind the word for a hive: "Hive C7 first", "Hive
// D2: calm". With more behind it, what a letter of shorthand stands before may be a bar: "Elder
// hive B1-2 honey".
func (r *reader) hiveCodes(toks []token, at []int) (names []string) {
	for _, i := range at {
		if i == 0 || i+1 == len(toks) {
			continue
		}
		t, number, end := &toks[i], &toks[i+1], i+2
		if toks[i-1].id != r.hiveID && toks[i-1].id != r.colonyID || t.pause > none || number.id != idNumber || !number.has(glued) {
			continue
		}
		alone := end == len(toks) || toks[end].pause > none || toks[end].lists.has(being) || r.says(toks[end], "first", "next", "last", "again", "today", "and", "on", "with", "in", "at", "this", "then")
		if alone && (!r.says(*t, "b", "f") || i == 1 || toks[i-1].pause >= stop) {
			names = append(names, r.strings.lower(r.text[t.start:number.end]))
		}
	}
	return names
}

// letterHeads are the letters from A on, two or more, that head what is told of a hive each:
// "A: eggs on 3 … B: eggs on 4". In other letters shorthand has its labels.
func (r *reader) letterHeads(toks []token, at []int) (names []string) {
	for _, i := range at {
		if letter := byte('a' + len(names)); i+1 < len(toks) && r.letterHead(toks, i, letter) {
			names = append(names, string(letter))
		}
	}
	if len(names) < 2 {
		return nil
	}
	return names
}

// letterHead reports whether the capital at token i is a letter that heads what is told of a
// hive.
func (r *reader) letterHead(toks []token, i int, letter byte) bool {
	t, next := &toks[i], &toks[i+1]
	if r.text[t.start]|0x20 != letter || i > 0 && t.pause < stop {
		return false
	}
	return (t.has(coloned) || t.pause >= line && next.pause > none || next.lists.has(being)) && r.talksOfHive(toks, i+1, nextSentences)
}

// shortLetter reports whether a letter stands for a bar or for what is found on one as well.
func (r *reader) shortLetter(letter string) bool {
	return slices.Contains(r.wordsOf[shortLetters], letter)
}

// letterAlone reports whether a capital at item i, by which a hive is named elsewhere, stands
// for the hive: not in "hive M" itself, nor where "A" is a word.
func (r *reader) letterAlone(items []item, i int) bool {
	it := &items[i]
	if i > 0 && it.pause == none && items[i-1].any(kHive, kBar) {
		return false
	}
	if i+1 < len(items) && items[i+1].is(kNum) && items[i+1].start == it.end {
		return false // "B4" is a bar
	}
	if r.letterList(items, i) {
		return true // "A, B and C today"
	}
	heads := it.pause >= line && (i+1 == len(items) || items[i+1].pause > none)
	if r.shortLetter(it.text) && i > 0 && it.pause < stop && !items[i-1].any4(kTo, kFrom, kAnd, kDo) && !r.isWord(&items[i-1], "with", "in", "into", "at", "but", "so", "than") {
		return false // "b5 E"
	}
	listed := i+2 < len(items) && items[i+1].is(kAnd) && items[i+2].text == "b" && items[i+2].has(capital)
	return it.has(capital) && (it.text != "a" || it.colon || heads || listed || i+1 < len(items) && items[i+1].pause == none && items[i+1].any(kBe, kHave) || i > 0 && it.pause == none && items[i-1].any(kTo, kFrom))
}

// letterList reports whether item i stands in a list of letters from A on, by which hives are named,
// at the head of a sentence: "A, B and C today, in that order".
func (r *reader) letterList(items []item, i int) bool {
	for i > 0 && items[i].pause < stop && (items[i-1].end-items[i-1].start == 1 || items[i-1].is(kAnd)) {
		i--
	}
	for n, closed := byte(0), false; i < len(items); n++ {
		if it := &items[i]; it.end-it.start != 1 || r.text[it.start] != 'A'+n || n == 0 && i > 0 && it.pause < stop {
			return false
		}
		if i++; closed {
			return true
		}
		switch {
		case i == len(items):
			return false
		case items[i].is(kAnd) && items[i].pause <= comma:
			closed = true
			i++
		case items[i].pause != comma:
			return false
		}
	}
	return false
}

// behindLetter are the kinds of words that stand behind the letter of a hive, and never behind "a".
var behindLetter = setOf(kBe, kHave, kThen, kBars, kPron, kThere)

// letterA reports whether the "a" at item i, behind "hive", is its letter: "hive a has", "hive a they are
// calm", not "opened the hive a bit".
func (r *reader) letterA(items []item, i int) bool {
	if items[i].has(capital) || i+1 == len(items) || items[i+1].pause >= comma || r.letterSettled(items, i+1) {
		return true
	}
	next := &items[i+1]
	return next.pause == none && (next.anyOf(behindLetter) || next.text == "queenright" || next.text == "queenless") ||
		i+2 < len(items) && next.is(kQueen) && items[i+2].any(kSeen, kUnseen)
}

// letterSettled reports whether what stands at item k, behind "hive a", shows that a letter was said: the
// speaker asks for it or makes sure, "hive a, is it, yeah, a", or goes on to a bar, "hive a bar three eggs".
func (r *reader) letterSettled(items []item, k int) bool {
	if k+1 >= len(items) || items[k].pause > none {
		return false
	}
	return items[k].any(kAsk, kYes) || items[k].is(kBar) && items[k+1].pause == none && barNumber(&items[k+1])
}
