package parse

import "strings"

// Names of two words and three, told by their capitals alone, on either side of the word for a hive: "the
// Night Shift hive", "Hive: Old Forge".

// capitalsBefore reads the name before "hive" whose words have capitals amid a sentence, whatever they mean
// elsewhere: "the Night Shift hive", "Cold Comfort hive", "the Duke of Quern hive"; 0 where it is none, or
// one that is told by its words.
func (r *reader) capitalsBefore(before []item) (string, int) {
	back := 0
	for k := len(before) - 1; k >= 0 && back < 3; k-- {
		it := &before[k]
		of := back > 0 && it.text == "of" && it.pause == none && k > 0 && before[k-1].has(capital)
		if !of && (!inCapitals(r.text[it.start:it.end]) || it.anyOf(grammarKinds) || it.any(kName, kHive) || r.cardinal(it) || r.isCalendarWord(r.mended[it.from])) {
			break
		}
		back++
		if it.pause > none {
			break
		}
	}
	if back > 0 && !r.mayBegin(before, len(before)-back) {
		back-- // "Opened Cold Comfort hive"
	}
	if back == 0 || r.manner.shouted || before[max(len(before)-back-1, 0)].lists.has(personTitles) {
		return "", 0
	}
	k := len(before) - back
	first := &before[k]
	if back == 1 && (k == 0 || first.pause > none || first.lists.has(noNames)) {
		return "", 0
	}
	return r.strings.lower(r.text[first.start:before[len(before)-1].end]), back
}

// capitalsBehind is the end of a name of two words or three with capitals behind "hive" at item i, whatever
// they mean elsewhere: "hive Night Shift", "Hive: Old Forge"; 0 where there is none.
func (r *reader) capitalsBehind(items []item, i int) int {
	if r.manner.shouted {
		return 0
	}
	first := i + 1
	if items[i].colon && first < len(items) && items[first].text == "the" {
		first++ // "Hive: The Old Forge"
	}
	end := first
	for ; end < len(items) && end < first+3; end++ {
		it := &items[end]
		labelled := end == i+1 && items[i].colon
		if it.pause > none && !labelled || !inCapitals(r.text[it.start:it.end]) || it.anyOf(untitled) || r.cardinal(it) {
			break
		}
	}
	if end == first || !strings.Contains(r.text[items[first].start:items[end-1].end], " ") {
		return 0
	}
	return end
}

// untitled are the kinds of grammar and of words that tell of a hive right behind it, "Hive Fig Queen seen".
var untitled = grammarKinds.or(setOf(kQueen, kBar, kBars, kHive, kHives, kName, kStage, kContent, kCell, kMite, kSeen, kUnseen, kMeasure))

// cardinal reports whether a number is written in an item, and not one that was only heard for a word.
func (r *reader) cardinal(it *item) bool {
	kind := r.numbers.of(r.words.find(r.strings.lower(r.text[it.start:it.end])).id).kind
	return it.is(kNum) && !it.n.ordinal && kind != notNumber
}

// mayBegin reports whether item k, which has a capital, may be the first word of a name: any amid a
// sentence, and of those that begin one none that does so before names.
func (r *reader) mayBegin(before []item, k int) bool {
	it := &before[k]
	if k > 0 && it.pause == none {
		return true
	}
	return !it.is(kDo) && (it.lists&(1<<plainWords|anyTitle) == 0 || r.isWord(it, r.wordsOf[nameAdjectives]...))
}

// inCapitals reports whether each word of a text begins with a capital and goes on in small letters.
func inCapitals(text string) bool {
	for word := range strings.FieldsSeq(text) {
		if word[0] < 'A' || word[0] > 'Z' || len(word) < 2 || word[1] < 'a' || word[1] > 'z' {
			return false
		}
	}
	return true
}
