package parse

import "strings"

// Which words may be a name: capitals, and no words of the trade or of grammar, in runs of up to three.

func anyCapital(toks []token) bool {
	for i := range toks {
		if toks[i].has(capital) {
			return true
		}
	}
	return false
}

// wordNames reports whether a word before "hive" names it.
func (r *reader) wordNames(t token) bool {
	if t.lists.has(noNames) || r.numbers.of(t.id).kind != notNumber || r.dates.of(t.id).kind != notDate {
		return false
	}
	return t.id == idUnknown || r.plantOrColour(t) || r.lex.matcher.alone(t.id) == senseless
}

func (r *reader) plantOrColour(t token) bool {
	return r.lex.matcher.alone(t.id).kinds.meet(calledAfter)
}

// properRun is the end of a run of up to three words that may be a proper
// name: capitals, and no word of the trade or of grammar.
func (r *reader) properRun(toks []token, i int) int {
	end := r.plantName(toks, i)
	if end > i {
		return end
	}
	if i+1 < len(toks) && toks[i+1].has(capital) {
		end = r.headOfRun(toks, i)
		if end == i+1 && toks[end].lists.has(placesNear) && !r.mayName(toks, end) {
			return end + 1 // "Compost Corner", and a corner elsewhere is a comb's
		}
	}
	for end < len(toks) && end < i+3 && toks[end].has(capital) && (end == i || toks[end].pause == none && !toks[end].has(glued)) && (r.mayName(toks, end) || end > i && r.endsPair(toks, end)) {
		end++
	}
	if of := r.nameOf(toks, i, end); of > 0 {
		return of
	}
	if end == i+1 && end < len(toks) && toks[end].pause == none && r.goesOnOddly(toks, i) {
		end++
	}
	return end
}

// headOfRun is the end of what may begin a name of several words, the second of which has a capital, and would be
// none by itself: "Old" in "Old Tom", "the Signal Box" whole; i where nothing does.
func (r *reader) headOfRun(toks []token, i int) int {
	if r.placeName(toks, i) || r.epithet(toks, i) || r.monthInName(toks, i) {
		return i + 1 // "Top Terrace", "Old Tom"
	}
	if (r.capitalWithin(toks, i) && !r.deedWord(toks, i) || r.epithetWithin(toks, i)) && r.endsPair(toks, i+1) || r.pairWithin(toks, i) || r.titledHead(toks, i) {
		return i + 2 // "fed the Signal Box"
	}
	return i
}

// goesOnOddly reports whether the word behind a name of one belongs to it that would not elsewhere: "the Tin Lady",
// "Lemon tree: quiet".
func (r *reader) goesOnOddly(toks []token, i int) bool {
	next := &toks[i+1]
	if i > 0 && toks[i].pause == none && next.has(capital) && next.lists.has(titles) && r.says(toks[i-1], "the") {
		return true
	}
	return toks[i].pause >= line && next.has(coloned) && !next.has(glued) && r.mayName(toks, i) && r.mayName(toks, i+1) && r.lex.matcher.longest(toks, i, nil).end <= i+1
}

// nameOf is the end of a name of which the run at token i is the first part, "Rose of Sharon", "Bit of
// Rough", "Attila the Hen", "the Parson's Nose"; 0 where it is none, as in "roof of Juniper".
func (r *reader) nameOf(toks []token, i, end int) int {
	last := max(end, i+1) + 1
	if end > i+1 || last >= len(toks) || !r.says(toks[last-1], "of", "the", "'s") || toks[last-1].pause > none || toks[last].pause > none {
		return 0
	}
	if owner := r.says(toks[last-1], "'s"); owner && (i == 0 || !r.says(toks[i-1], "the") || !r.endsPair(toks, last)) || !owner && toks[last-1].has(capital) || r.says(toks[last-1], "the") && !r.mayName(toks, i) {
		return 0
	}
	if r.says(toks[last], "the") && last+1 < len(toks) && toks[last].pause == none {
		last++
	}
	first := &toks[i]
	amid := i > 0 && r.capitalWithin(toks, i)
	if first.lists&(1<<plainWords|1<<hiveParts|1<<visits) != 0 || r.among(first, visitNouns) || r.among(first, writings) || !amid && (i > 0 && first.pause < stop || r.deedWord(toks, i)) || !r.endsPair(toks, last) || r.tradeWord(toks, i) || r.tradeWord(toks, last) {
		return 0
	}
	return last + 1
}

// endsPair reports whether a word with a capital may be the second of a name of two.
func (r *reader) endsPair(toks []token, k int) bool {
	return r.capitalWithin(toks, k) && !toks[k].lists.has(plainWords) && !r.says(toks[k], "bee", "bees")
}

// pairWithin reports whether the two words at token i, which begin a sentence, stand amid another with
// capitals: "Fair Isle is all colours", and elsewhere "I'll mark Fair Isle's queen".
func (r *reader) pairWithin(toks []token, i int) bool {
	if i+1 >= len(toks) || i > 0 && toks[i].pause == none || !r.endsPair(toks, i+1) || toks[i].has(glued) {
		return false
	}
	if r.describes(toks, i) {
		return true
	}
	first, second := r.text[toks[i].start:toks[i].end], r.text[toks[i+1].start:toks[i+1].end]
	for _, k := range r.amid(toks, first) {
		if k+1 < len(toks) && r.text[toks[k].start:toks[k].end] == first && r.text[toks[k+1].start:toks[k+1].end] == second && r.capitalWithin(toks, k) && r.capitalWithin(toks, k+1) {
			return true
		}
	}
	return false
}

// describes reports whether the word at token i, which begins a sentence, may be the first of a name of two
// words by its kind, "Night Shift had two litres of syrup", and is none that a sentence begins with before
// a name, "Opened Juniper", "Poor Juniper".
func (r *reader) describes(toks []token, i int) bool {
	t := &toks[i]
	if r.says(*t, "lost", "second", "last", "first", "other") && t.has(capital) {
		return toks[i+1].has(coloned) || beFollows(toks, i+2) == i+2 // "Lost Cause is thriving", and not "Lost Juniper to wasps"
	}
	plain := t.lists.has(plainWords) && !r.among(t, nameAdjectives) || strings.HasSuffix(r.text[t.start:t.end], "ly") || r.among(t, concerning)
	if plain || !t.has(capital) || t.lists&(anyTitle|1<<feasts) != 0 || r.isCalendarWord(*t) || r.numbers.of(t.id).kind != notNumber || r.hiveWords.has(t.id) || r.allCapitals(toks, i, i+1) {
		return false
	}
	best := r.lex.matcher.alone(t.id)
	return !best.kinds.meet(grammarKinds) && !best.kinds.meet(tradeKinds) && !best.kinds.has(kDo)
}

// titledHead reports whether the title of a person and a name begin a sentence, and neither something that
// is hers or his nor what people do follows: "Aunt Clara swarmed on Wednesday". Of a lady or a gentleman
// what only colonies are must be told: "Mrs Tiggy, poor old thing, is dwindling".
func (r *reader) titledHead(toks []token, i int) bool {
	end := i + 2
	if i > 0 && toks[i].pause < stop || end >= len(toks) || toks[i].lists&anyTitle == 0 || !r.capitalWithin(toks, i+1) || toks[end].has(capital) && !r.says(toks[end], "i") {
		return false
	}
	if toks[i].lists.has(personTitles) && !toks[i+1].has(coloned) {
		verb := beFollows(toks, end)
		return verb >= 0 && (r.isAsColonies(toks, verb+1) || r.fares(toks, end) || r.inTurn(toks, end)) || r.turnTold(toks, end)
	}
	if toks[end].pause > none {
		return r.exclaimedOver(toks, end) && r.talksOfHive(toks, end, nextSentences)
	}
	if r.says(toks[end], "'s") {
		return end+1 < len(toks) && toks[end+1].pause == none && r.lex.matcher.longest(toks, end+1, nil).kinds.meet(setOf(kTemper, kStrength)) // "Aunty Pearl's booming"
	}
	did := r.iDid(toks, end) || r.says(toks[end], "i", "we") && end+1 < len(toks) && r.says(toks[end+1], "opened", "took", "inspected", "visited", "did")
	fares := beFollows(toks, end) == end || toks[end].lists.has(swarming) || r.lex.matcher.longest(toks, end, nil).kinds.meet(setOf(kTemper, kStrength))
	return toks[end].lists&(1<<handles|1<<speaking) == 0 && !r.isPerson(toks, i, end) && (did || fares || r.turnTold(toks, end))
}

// turnTold reports whether it is told behind a name that its turn came, and the talk goes on about a hive: "Miss
// Ivy first, because she hates to wait. Calm."
func (r *reader) turnTold(toks []token, end int) bool {
	return toks[end].pause == none && r.inTurn(toks, end) && r.talksOfHive(toks, end, nextSentences)
}

// isAsColonies reports whether what is told up to the end of a sentence is what colonies are or have, or
// whose turn it was to be opened.
func (r *reader) isAsColonies(toks []token, k int) bool {
	for last := k + 8; k < len(toks) && k < last && toks[k].pause < stop; k++ {
		if r.lex.matcher.longest(toks, k, nil).kinds.meet(setOf(kStrength, kTemper, kStores, kStored, kContent, kCell)) || r.says(toks[k], "first", "last", "lid", "roof", "opened") || r.says(toks[k], "come") && k+1 < len(toks) && r.says(toks[k+1], "on", "through") {
			return true
		}
	}
	return false
}

// capitalWithin reports whether a word has a capital amid a sentence, where only names have one, and is
// neither a day, a number, an abbreviation nor a word for a hive or a bar: "Petty Cash", "Ward Sister".
func (r *reader) capitalWithin(toks []token, k int) bool {
	if k == 0 || k >= len(toks) || !toks[k].has(capital) || toks[k].pause > none || toks[k].has(glued) || r.manner.shouted {
		return false
	}
	t := toks[k]
	if r.allCapitals(toks, k, k+1) || t.end-t.start < 2 || r.isCalendarWord(t) || r.numbered(toks, k) || t.lists&(1<<feasts|1<<personTitles) != 0 || r.hiveWords.has(t.id) || r.barNouns.has(t.id) || r.among(&t, peoples) {
		return false
	}
	return !r.lex.matcher.alone(t.id).kinds.meet(grammarKinds)
}

// numbered reports whether a number is that of something: "Bar Seven", "Year Six".
func (r *reader) numbered(toks []token, k int) bool {
	switch r.numbers.of(toks[k].id).kind {
	case unitWord, tensWord, ordinalWord:
	default:
		return false
	}
	before := &toks[k-1]
	return r.says(toks[k], "one") || r.barNouns.has(before.id) || r.hiveWords.has(before.id) || before.has(capital)
}

// epithetWithin reports whether a word that describes has a capital amid a sentence: "gave the First Mate
// fondant", "then to the Old Manse".
func (r *reader) epithetWithin(toks []token, k int) bool {
	return k > 0 && toks[k].has(capital) && toks[k].pause == none && !r.allCapitals(toks, k, k+1) && !toks[k].lists.has(personTitles) && (r.among(&toks[k], nameEpithets) || r.says(toks[k], "first", "second", "last", "new", "good", "best", "other"))
}

// isCalendarWord reports whether a token is a day of the week or a month.
func (r *reader) isCalendarWord(t token) bool {
	kind := r.dates.of(t.id).kind
	return kind == weekdayWord || kind == monthWord
}

// epithet reports whether "old" or the like begins a sentence, or is opened or tended, and belongs to the
// name behind it: "Old Tom was last".
func (r *reader) epithet(toks []token, i int) bool {
	k := i + 1
	if k == len(toks) || !toks[k].has(capital) || toks[k].pause > none || toks[k].has(glued) || i > 0 && toks[i].pause < stop && !r.tended(toks, i) && !r.opensBefore(toks, i) || !r.says(toks[i], "old", "big", "little", "young", "wee", "auld") || !r.mayName(toks, k) {
		return false
	}
	return true
}

// plantName is the end of the name of a plant in two words or three, "Sweet William"; i
// where there is none.
func (r *reader) plantName(toks []token, i int) int {
	if !anyCapital(toks[i+1 : min(i+r.longestPlant, len(toks))]) {
		return i // as behind most words
	}
	best := r.lex.matcher.longest(toks, i, nil)
	if best.end < i+2 || !best.kinds.has(kPlant) || !toks[best.end-1].has(capital) {
		return i
	}
	return best.end
}

// anyTitle are the lists of words that stand before the names of people.
const anyTitle = 1<<titles | 1<<personTitles

// unnamed are the lists of words that stand in no name.
const unnamed = 1<<noNames | 1<<plainHeadings | anyTitle | 1<<feasts

// mayName reports whether a word may stand in a proper name: it is none of the trade, of
// numbers or of days.
func (r *reader) mayName(toks []token, i int) bool {
	return (r.capitalByNature(toks, i) || r.mayNameByKind(toks, i)) && !r.among(&toks[i], peoples)
}

// mayNameByKind reports the same of a word whose capital alone does not tell it.
func (r *reader) mayNameByKind(toks []token, i int) bool {
	t := toks[i]
	if t.lists&unnamed != 0 || t.lists.has(plainWords) && (i == 0 || t.pause > comma) || t.end-t.start < 3 && !r.says(t, "st") && !r.shortName(t) {
		return false
	}
	if r.dates.of(t.id).kind != notDate || r.numbers.of(t.id).kind != notNumber {
		return false
	}
	if t.id == idUnknown {
		return true
	}
	best := r.lex.matcher.alone(t.id)
	if best == senseless {
		return true
	}
	homely := false
	for _, n := range best.rules {
		if k := r.kindOf[n]; homelyNames.has(k) || k == kDo && best.kinds.has(kDot) {
			homely = true
		} else if k != kPlant && k != kColour {
			return false
		}
	}
	return !homely || r.capitalWithin(toks, i) && t.lists&(1<<noNames|1<<plainWords) == 0 || toks[i].pause >= line && beFollows(toks, i+1) >= 0 || (i == 0 || toks[i].pause >= stop) && r.wordWithin(toks, i)
}

// capitalByNature reports whether a word of any kind has a capital amid a sentence, as names have, here
// or, where it begins one, elsewhere in the note, and is none that keepers write so: "we opened Sugar",
// "Sugar is calm … fed Sugar".
func (r *reader) capitalByNature(toks []token, i int) bool {
	t := &toks[i]
	if r.rankAlone(toks, i) || toks[i].lists.has(titles) && r.isItself(toks, i, i+1) {
		return true
	}
	if t.end-t.start < 3 || t.lists&anyTitle != 0 {
		return false
	}
	within, begins := false, i == 0 || t.pause >= stop
	if t.lists&(1<<plainWords|1<<plainHeadings) != 0 {
		within = r.reached(toks, i) || begins && r.reachedElsewhere(toks, i)
	} else {
		within = r.capitalWithin(toks, i) && !r.joinsOn(toks, i-1) || begins && r.wordWithin(toks, i)
	}
	return within && !r.tradeWord(toks, i)
}

// reached reports whether a word with a capital stands where a hive does that something is done to or
// comes to: "fed Sunny", "went into Sunny".
func (r *reader) reached(toks []token, i int) bool {
	return r.capitalWithin(toks, i) && (r.tended(toks, i) || r.opensBefore(toks, i) || r.says(toks[i-1], "in", "into", "of", "with", "from", "for", "at") && !toks[i-1].has(capital))
}

// reachedElsewhere reports whether the word at token i, which begins a sentence, is so reached in another.
func (r *reader) reachedElsewhere(toks []token, i int) bool {
	word := r.text[toks[i].start:toks[i].end]
	for _, k := range r.amid(toks, word) {
		if r.text[toks[k].start:toks[k].end] == word && r.reached(toks, k) {
			return true
		}
	}
	return false
}

// tradeWord reports whether a word is one of the trade.
func (r *reader) tradeWord(toks []token, i int) bool {
	return r.lex.matcher.alone(toks[i].id).kinds.meet(tradeKinds) || r.says(toks[i], "bee", "bees")
}

// deedWord reports whether a word is a deed: "in Opened Juniper".
func (r *reader) deedWord(toks []token, i int) bool {
	return r.lex.matcher.alone(toks[i].id).kinds.has(kDo)
}

// shortName reports whether a word of two letters may be a name: one with a capital and a vowel, of which the
// rules know nothing, "Jo", "Al".
func (r *reader) shortName(t token) bool {
	word := r.text[t.start:t.end]
	return len(word) == 2 && t.has(capital) && word[1] >= 'a' && word[1] <= 'z' && strings.ContainsAny(word, "AEIOUYaeiouy") && (t.id == idUnknown || r.givenNames.has(t.id)) && t.lists == 0
}

// joinsOn reports whether a word joins the sentence that it begins to the one before, whose head may
// follow with its capital: "Then Chalkbrood, three mummies".
func (r *reader) joinsOn(toks []token, k int) bool {
	if r.says(toks[k], "and") && k > 0 && toks[k].pause == none {
		k-- // "Oh and"
	}
	return (k == 0 || toks[k].pause >= stop) && r.says(toks[k], "then", "also", "and", "oh", "next", "now", "so")
}

// rankAlone reports whether a rank stands with no name behind it: "Captain is calm", and not "Captain Bell
// is calm".
func (r *reader) rankAlone(toks []token, i int) bool {
	if !toks[i].has(capital) || !toks[i].lists.has(titles) {
		return false
	}
	named := i+1 < len(toks) && toks[i+1].pause == none && toks[i+1].has(capital)
	return !named && r.among(&toks[i], ranks)
}

// tradeKinds are the kinds of words of the trade that keepers write with capitals amid a sentence.
var tradeKinds = setOf(kQueen, kBar, kBars, kHive, kHives, kStage, kCell, kMite, kSign, kStores, kDo)

// grammarKinds are those of words that are no names, "Her Ladyship".
var grammarKinds = setOf(kNo, kNot, kYes, kPast, kNow, kPlan, kIf, kAsk, kSay, kBe, kHave, kWill, kPron, kShe, kOn, kOf, kTo, kFrom, kAfter, kFore, kTween, kWithX, kThere, kArt, kAnd, kOr, kBut, kThen)

// homelyNames are the kinds of words that hives are called by as well, where they have a capital amid a
// sentence: "started with Sunshine", "Dot", "Mild".
var homelyNames = setOf(kSky, kTemper, kStrength, kDot, kWind)

// wordWithin reports whether the word at token i, which begins a sentence, has its capital amid another.
func (r *reader) wordWithin(toks []token, i int) bool {
	word := r.text[toks[i].start:toks[i].end]
	for _, k := range r.amid(toks, word) {
		if !toks[k-1].has(capital) && r.text[toks[k].start:toks[k].end] == word {
			return !r.allCapitals(toks, k, k+1)
		}
	}
	return false
}

// amidPage are the words of a page that have a capital amid a sentence, few of so many tokens.
type amidPage struct {
	of       int // tokens, as far as the page was cut
	tokens   []int
	initials letters // that they begin with
}

// amid are those words of the page in hand, by their tokens, where some begin as a word does.
func (r *reader) amid(toks []token, word string) []int {
	if p := &r.capitals; p.of != len(toks) {
		p.of, p.tokens, p.initials = len(toks), p.tokens[:0], 0
		for k := 1; k < len(toks); k++ {
			if toks[k].pause == none && toks[k].has(capital) {
				p.tokens = append(p.tokens, k)
				p.initials |= 1 << (r.text[toks[k].start] & 31)
			}
		}
	}
	if word == "" || !r.capitals.initials.has(word[0]) {
		return nil // as for most
	}
	return r.capitals.tokens
}
