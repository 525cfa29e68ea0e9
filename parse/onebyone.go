package parse

import (
	"slices"
	"strconv"
)

// Hives that were named together, "the fig hive and the plum hive", are told one by one by
// their places in that list: "The former is strong, … The latter is queenless", "The first
// …, the second …", and of two "the other one".

// placesInList are the words for a hive's place in a list.
var placesInList = map[string]func(n int) int{
	"former": func(int) int { return 0 },
	"first":  func(int) int { return 0 },
	"second": func(int) int { return 1 },
	"third":  func(int) int { return 2 },
	"fourth": func(int) int { return 3 },
	"last":   func(n int) int { return n - 1 },
	"latter": func(n int) int { return n - 1 },
	"middle": func(n int) int {
		if n%2 == 0 {
			return -1
		}
		return n / 2
	},
}

// oneByOne makes references of such words at the heads of sentences.
func (r *reader) oneByOne(items []item) []item {
	inHand := r.cur.hive
	var named []string // in this line
	for i := 0; i < len(items); i++ {
		it := &items[i]
		if it.is(kName) {
			if at := r.placeOf(it.name); at >= 0 && headsTurn(items, i) {
				it.name = r.atOnce.last[at] // "the middle one"
			}
			if !it.several() {
				named = append(named, it.name)
				if !r.argument(items, i) {
					inHand = it.name
				}
			}
			continue
		}
		if !it.isWord3("the", "the other", "other") || !headsTurn(items, i) && !goesOnInTurn(items, i) {
			continue
		}
		if name, end := r.turnAt(items, i, inHand, named); name != "" {
			items[i] = *r.asHive(r.merged(items, i, end, nil), name)
			items = slices.Delete(items, i+1, end)
			inHand = name
		}
	}
	return items
}

// hiveNames are the names of the hives told so far, each once: those of the note, at most
// three, and those named in the line.
func (r *reader) hiveNames(inLine []string) (named []string) {
	for _, b := range r.all[:min(len(r.all), 3)] {
		if b.hive != "" {
			named = append(named, b.hive)
		}
	}
	for _, name := range inLine {
		if !slices.Contains(named, name) {
			named = append(named, name)
		}
	}
	return named
}

// placeOf is where in the list the hive stands that a word tells by its place; -1 where there
// is none.
func (r *reader) placeOf(word string) int {
	place := placesInList[word]
	if place == nil || len(r.atOnce.last) < 2 || word == "latter" && len(r.atOnce.last) > 2 {
		return -1
	}
	if at := place(len(r.atOnce.last)); at < len(r.atOnce.last) {
		return at
	}
	return -1
}

// goesOnInTurn reports whether "the latter" stands at item i behind a comma: "the former is calm, the latter is not".
func goesOnInTurn(items []item, i int) bool {
	if i > 0 && items[i].text == "the other" && items[i].pause == none && items[i-1].isWord4("that", "while", "whereas", "whilst") {
		return true // "I remembered that the other one was short of room"
	}
	return items[i].text == "the" && i+1 < len(items) && items[i+1].isWord2("former", "latter")
}

// headsTurn reports whether item i begins a sentence, at most behind "and" or "but".
func headsTurn(items []item, i int) bool {
	if i == 0 || items[i].pause >= stop {
		return true
	}
	return items[i].pause == none && items[i-1].any3(kAnd, kBut, kThen) && (i == 1 || items[i-1].pause >= stop)
}

// turnAt is the hive that the words from item i on point at, and where they end; "" where
// they point at none.
func (r *reader) turnAt(items []item, i int, inHand string, named []string) (name string, end int) {
	word := i
	if items[word].is(kArt) && items[word].text == "the" && word+1 < len(items) && items[word+1].pause == none {
		word++
	}
	noun := word + 1
	hive := noun < len(items) && items[noun].pause == none && items[noun].is(kHive)
	one := noun < len(items) && items[noun].pause == none && items[noun].text == "one"
	end = noun
	if hive || one {
		end++
	}
	if !r.tellsOfTurn(items, end) {
		return "", i
	}
	if items[word].isWord2("the other", "other") && (hive || one) {
		return r.otherThan(inHand, named), end
	}
	if word == i {
		return "", i
	}
	if at := r.placeOf(items[word].text); at >= 0 {
		return r.atOnce.last[at], end
	}
	if n := int(items[word].n.lo); hive && items[word].is(kNum) && r.byHive[strconv.Itoa(n-1)] != nil {
		return strconv.Itoa(n), end // "Hive 2 is calm. The third hive has eggs."
	}
	return "", i
}

// tellsOfTurn reports whether what is told at item k can be told of a hive: a verb, or an
// aside behind a comma.
func (r *reader) tellsOfTurn(items []item, k int) bool {
	if k >= len(items) || items[k].pause > comma {
		return false
	}
	return items[k].pause == comma || items[k].any4(kBe, kHave, kLeaf, kSeen) || r.isWord(&items[k], r.wordsOf[toldOneByOne]...)
}

// otherThan is the one of two hives that is not in hand; "" where there are not two.
func (r *reader) otherThan(inHand string, named []string) string {
	two := r.atOnce.last
	if len(two) != 2 {
		two = r.hiveNames(named)
	}
	if len(two) != 2 || !slices.Contains(two, inHand) {
		return ""
	}
	if two[0] == inHand {
		return two[1]
	}
	return two[0]
}
