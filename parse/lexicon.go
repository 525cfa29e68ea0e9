package parse

import (
	"fmt"
	"sort"
	"strings"
)

// lexicon is everything that the rule files say, ready for use. It does not
// change after it is made.
type lexicon struct {
	slips         *slips
	words         *vocabulary
	rules         []rule
	kindOf        []kind // of each rule
	graph         *graph
	numbers       *numbers
	dates         *dates
	measures      *measures
	mishearings   []suspects         // by first word
	sounds        map[wordID]float64 // the numbers that words sound like, which a series may call for
	nearDays      wordSet            // about, around: "the 20th" may follow, but no share
	datedDeeds    wordSet            // fed, treated: a day may follow, but no share
	hiveWords     wordSet            // hive, h: the name of one follows
	numberedWords wordSet            // "no. 4" follows
	linkWords     wordSet            // and, so: may join a sentence to the one before it
	behindSo      wordSet            // far, is: "so" before it joins nothing
	barNouns      wordSet            // bar, comb: numbers behind it are those of bars
	givenNames    wordSet            // those of people
	columns       columns
	longestPlant  int // tokens in which the name of a plant may stand, no fewer

	wordsOf            [listCount][]string // of the lists behind givenNames
	likeOf             [listCount]likes    // what those are like
	leadIns, opposites map[string][]string // the word tables of these names
	strokes            strokes
	known              knownHives
	lineWords          []lineWords // bits of the words, by wordID

	denial, seen, queenCups, queenCells, openBrood, cappedBrood, planning, added, moved, harvested, fed, followerBoard, bareComb, sideFront *sense // of the rules of these names

	hiveID, colonyID, hivesID, coloniesID, hID, hvID, theID, forID, oneID, nucID, splitID, numberID wordID
	nthIDs                                                                                          []wordID // of the places in an order: first, second
}

// newLexicon makes ready what the rule files say; errors name the file and the rule.
func newLexicon(f ruleFile) (*lexicon, error) {
	l := &lexicon{words: newVocabulary(), rules: f.Rule, leadIns: f.LeadIn.Words, opposites: f.Opposite.Words, strokes: f.Stroke}
	l.strokes.makeCodes()
	l.words.addContractions(f.Contraction)
	if err := l.addRules(); err != nil {
		return nil, err
	}
	if err := l.addNumbers(f.Number); err != nil {
		return nil, err
	}
	if err := l.addDates(f.Date); err != nil {
		return nil, err
	}
	var err error
	if l.columns, err = newColumns(f.Column); err != nil {
		return nil, err
	}
	l.addMeasures()
	l.addSets(&f)
	lists, err := newLists(f.List)
	if err != nil {
		return nil, err
	}
	mishearings := f.Mishearing
	for _, a := range f.Abbreviation {
		mishearings = append(mishearings, a.mishearings()...)
		for short := range a.Words {
			lists[short] |= 1 << shortForms
		}
	}
	if err := l.addMishearings(mishearings); err != nil {
		return nil, err
	}
	l.words.addLists(lists)
	l.slips = newSlips(l.words, lists)
	l.markWords()
	l.words.addPhrases(lists, &splitter{slips: l.slips, words: l.words})
	l.words.pack()
	if err := l.addLineWords(); err != nil {
		return nil, err
	}
	l.forgetPhrases()
	return l, nil
}

// addRules takes the ways of saying of the rules, and names the senses that the code asks for.
func (l *lexicon) addRules() error {
	l.graph = newGraph(l.words)
	for i := range l.rules {
		l.kindOf = append(l.kindOf, l.rules[i].Kind)
		if l.kindOf[i] == kDo {
			l.rules[i].fits = fitsBy[l.rules[i].Value]
		}
		for _, say := range l.rules[i].Say {
			if l.kindOf[i] == kPlant {
				l.longestPlant = max(l.longestPlant, strings.Count(say, " ")+strings.Count(say, "-")+strings.Count(say, "'")+2) // one may be an adverb
			}
			if err := l.graph.add(say, int16(i)); err != nil {
				return fmt.Errorf("rules/%s: rule %q: %w", l.rules[i].file, l.rules[i].ID, err)
			}
		}
	}
	l.sideFront = l.senseNamed("side-front")
	l.followerBoard, l.bareComb = l.senseNamed("follower"), l.senseNamed("comb-bare")
	l.denial, l.seen, l.queenCups = l.senseNamed("denial"), l.senseNamed("seen"), l.senseNamed("queen-cups")
	l.queenCells, l.openBrood, l.cappedBrood = l.senseNamed("queen-cells"), l.senseNamed("larvae"), l.senseNamed("capped-brood")
	l.harvested, l.fed = l.senseNamed("harvest-done"), l.senseNamed("feed-done")
	l.added, l.moved, l.planning = l.senseNamed("add-done"), l.senseNamed("move-done"), l.senseNamed("plan")
	return nil
}

// numberKindNames are the names of the kinds of number words in the rule files.
var numberKindNames = map[string]numberKind{"unit": unitWord, "tens": tensWord, "scale": scaleWord, "ordinal": ordinalWord,
	"part": partWord, "group": groupWord, "about": aboutWord, "and": andWord, "article": articleWord,
	"percent": percentWord, "of": ofWord, "or": orWord, "to": toWord, "point": pointWord, "between": betweenWord, "odd": oddWord}

func (l *lexicon) addNumbers(parts []part) error {
	l.numbers = &numbers{soID: l.words.add("so"), topID: l.words.add("top"), inID: l.words.add("in"), perID: l.words.add("per"), centID: l.words.add("cent")}
	l.numbers.months = func(t token) bool { return l.dates.of(t.id).kind == monthWord }
	return eachPart(parts, func(kindName, word string, value float64) bool {
		k, ok := numberKindNames[kindName]
		id := l.words.add(word)
		l.numbers.kinds = grown(l.numbers.kinds, id)
		l.numbers.kinds[id] = numberWord{k, value}
		switch k {
		case ordinalWord:
			l.nthIDs = append(l.nthIDs, id)
		case unitWord, tensWord:
			l.numbers.counting |= 1 << (id & 63)
		}
		return ok
	})
}

// dateKindNames are the names of the kinds of date words in the rule files.
var dateKindNames = map[string]dateKind{"weekday": weekdayWord, "month": monthWord, "span": spanWord, "short span": shortSpanWord, "ago": agoWord, "in": inWord,
	"next": nextWord, "last": lastWord, "this": thisWord, "on": onWord, "from": fromWord, "today": todayWord,
	"yesterday": yesterdayWord, "tomorrow": tomorrowWord, "before": beforeWord, "after": afterWord,
	"weekend": weekendWord, "end": endWord, "day part": dayPartWord, "the": theWord, "now": nowWord, "time": timeWord}

func (l *lexicon) addDates(parts []part) error {
	l.dates = &dates{numbers: l.numbers, againID: l.words.add("again"), slashID: l.words.add("/")}
	return eachPart(parts, func(kindName, word string, value float64) bool {
		k, ok := dateKindNames[kindName]
		id := l.words.add(word)
		l.dates.kinds = grown(l.dates.kinds, id)
		l.dates.kinds[id] = dateWord{k, int(value)}
		return ok
	})
}

func (l *lexicon) addMeasures() {
	l.measures = &measures{numbers: l.numbers, moreID: l.words.add("more")}
	for word, unit := range unitNames {
		id := l.words.add(word)
		l.measures.units = grown(l.measures.units, id)
		l.measures.units[id] = unit
	}
}

// addSets makes sets of the lists that mended words are asked of too, which stand in
// no list, and numbers the words that are asked about one by one.
func (l *lexicon) addSets(f *ruleFile) {
	set := func(of list) wordSet { return l.words.addAll(f.wordsOf(of)...) }
	l.graph.loose = set(looseWords)
	l.numbers.dimension, l.numbers.combWords, l.numbers.barWords, l.numbers.combsTold = set(dimensions), set(oneComb), set(countedOff), set(combsTold)
	l.dates.orders, l.datedDeeds, l.nearDays = set(orders), set(datedDeeds), set(aboutDays)
	l.dates.weekly, l.dates.deadlines, l.dates.counted = set(weekly), set(deadlines), set(countedOfADay)
	l.linkWords = l.words.addAll("and", "so")
	l.behindSo = l.words.addAll("far", "that", "long", "many", "much", "is", "are", "was", "were", "has", "have", "does", "do", "did", "will", "too")
	l.barNouns, l.hiveWords, l.numberedWords = set(barNouns), set(hiveNouns), set(numberedThings)
	l.givenNames = set(givenNames)
	l.hiveID, l.colonyID, l.hID, l.theID, l.forID = l.words.add("hive"), l.words.add("colony"), l.words.add("h"), l.words.add("the"), l.words.add("for")
	l.numberID = l.words.add("number")
	l.hvID, l.hivesID, l.coloniesID, l.oneID = l.words.add("hv"), l.words.add("hives"), l.words.add("colonies"), l.words.add("one")
	l.nucID, l.splitID = l.words.add("nuc"), l.words.add("split")
	for of := givenNames + 1; of < listCount; of++ {
		l.wordsOf[of] = f.wordsOf(of)
		l.likeOf[of] = likesOf(l.wordsOf[of])
	}
}

// senseNamed is the sense of the rule of a name; without one it is senseless.
func (l *lexicon) senseNamed(id string) *sense {
	for i := range l.rules {
		if r := &l.rules[i]; r.ID == id {
			return senseOf(int16(i), r.Kind)
		}
	}
	return senseless
}

// inList reports whether a word, in lower case, stands in a list.
func (l *lexicon) inList(of list, word string) bool { return l.words.find(word).lists.has(of) }

// forgetPhrases drops what the rules need no more once they are compiled: the
// tens of thousands of phrases would be passed by the collector of garbage again
// and again.
func (l *lexicon) forgetPhrases() {
	for i := range l.rules {
		r := &l.rules[i]
		r.Say, r.Yes, r.No, r.Why = nil, nil, nil, ""
	}
}

// markWords marks the words that a number or a date begins with and those that go
// on with one, so that most words are not asked; those that may be misheard; and
// the adverbs that stand anywhere.
func (l *lexicon) markWords() {
	l.words.marks = make([]mark, len(l.words.words))
	for id := idUnknown + 1; id < firstWordID; id++ {
		l.words.mark(id, numeral|following|dating)
	}
	for id := range l.graph.behindSlots() {
		l.words.mark(id, following)
	}
	for id := firstWordID; int(id) < len(l.words.words); id++ {
		t := token{id: id}
		number, date := l.numbers.of(t.id).kind, l.dates.of(t.id)
		if number.begins() || date.stands() {
			l.words.mark(id, numeral)
		} else if date.leads() {
			l.words.mark(id, leading)
		}
		if number != notNumber || date.kind != notDate || id == l.numbers.perID || id == l.measures.moreID {
			l.words.mark(id, dating)
		}
		if number != notNumber || date.kind != notDate || l.measures.unit([]token{t}, 0) != "" || id == l.measures.moreID || l.graph.loose.has(id) {
			l.words.mark(id, following)
		}
		if int(id) < len(l.mishearings) && l.mishearings[id].heard != nil {
			l.words.mark(id, doubtful)
		}
		if l.graph.loose.has(id) {
			l.words.mark(id, loose)
		}
	}
}

// eachPart hands every word of the number or date grammar to add, in a fixed
// order; add reports whether it knows the kind.
func eachPart(parts []part, add func(kindName, word string, value float64) bool) error {
	for _, p := range parts {
		words := make([]string, 0, len(p.Words))
		for w := range p.Words {
			words = append(words, w)
		}
		sort.Strings(words)
		for _, w := range words {
			if !add(p.Kind, w, p.Words[w]) {
				return fmt.Errorf("rules/numbers.toml: unknown kind %q", p.Kind)
			}
		}
	}
	return nil
}

func grown[T any](list []T, id wordID) []T {
	for int(id) >= len(list) {
		var zero T
		list = append(list, zero)
	}
	return list
}
