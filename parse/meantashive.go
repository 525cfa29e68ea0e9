package parse

import "slices"

// Whether the name of a known hive is meant as that where it stands, or as the person, the plant, the day or the
// thing that has the name too.

// meantAsHive reports whether the known name at token i is said of the hive: one that means nothing else
// wherever it is no person's, an everyday word where something speaks for it.
func (r *reader) meantAsHive(toks []token, i, end int) bool {
	if r.titledRun(toks, i) {
		return false
	}
	if slices.Contains(r.introducedAt, toks[i].start) || i > 0 && toks[i].pause == none && r.hiveWords.has(toks[i-1].id) || end > i+1 || r.meansNoMore(toks, i) {
		return true
	}
	if toks[end-1].has(coloned) && (i == 0 || toks[i].pause >= line) {
		return r.talksOfHive(toks, end, ownSentence)
	}
	if r.isPerson(toks, i, end) || r.meantAsWord(toks, i, end) || !toks[i].has(capital) && r.lex.matcher.longest(toks[:end], i, nil).kinds.meet(toldOfHives) {
		return false
	}
	r.mention = mention{reader: r, toks: toks, i: i, end: end}
	weight := r.mention.weigh()
	if weight < 0 {
		return false
	}
	if weight >= enough-1 || r.spokenOf(toks, i, end) || r.takenUp(toks, i, end) {
		return true
	}
	amid := i > 0 && toks[i].pause == none && toks[i].has(capital) && !r.manner.shouted
	return !r.isCalendarWord(toks[i]) && (amid || r.givenNames.has(toks[i].id))
}

// toldOfHives are the kinds of words that are told of a hive in every note: "honey" in small letters is no hive.
var toldOfHives = tradeKinds.or(grammarKinds).or(setOf(kContent, kSubstance, kComb, kNum))

// meansNoMore reports whether a word means nothing but a name: no rule knows it alone, or it was taken for another
// that was typed amiss, and it is not led in as a thing or a verb is, "a kettle", "did not fiddle".
func (r *reader) meansNoMore(toks []token, i int) bool {
	t := &toks[i]
	if !t.has(capital) && i > 0 && t.pause == none && r.says(toks[i-1], "a", "an", "some", "any", "no", "my", "your", "not", "n't") {
		return false
	}
	return t.has(misspelt) || t.lists == 0 && !r.givenNames.has(t.id) && r.lex.matcher.alone(t.id) == senseless
}

// meantAsWord reports whether the words around a hive's name that is an everyday word too tell that it is
// meant as that: "by june", "11 june", "sunny and dry", "pollen is coming in from the willow".
func (r *reader) meantAsWord(toks []token, i, end int) bool {
	if r.isCalendarWord(toks[i]) {
		return r.tellsDay(toks, i, end)
	}
	switch {
	case r.lex.matcher.longest(toks[:end], i, nil).kinds.meet(weatherKinds):
		return r.amidWeather(toks, i, end)
	case r.isPlant(toks, i, end):
		return r.broughtFrom(toks, i) || r.flowers(toks, end) || end+1 < len(toks) && toks[end].lists.has(being) && r.says(toks[end+1], "out", "over", "flowering", "blooming")
	}
	return false
}

// tellsDay reports whether a month or a day of the week stands where one does: "by june", "11 june".
func (r *reader) tellsDay(toks []token, i, end int) bool {
	if i > 0 && toks[i].pause == none && (r.among(&toks[i-1], beforeDays) || r.isNumber(&toks[i-1])) {
		return true
	}
	return end < len(toks) && toks[end].pause == none && r.dates.of(toks[end].id).kind != notDate
}

// weatherKinds are the kinds of words that tell the weather.
var weatherKinds = setOf(kSky, kWind)

// amidWeather reports whether the weather is told right before or behind a word: "sunny and dry", "Sunny, no
// wind, 24 degrees".
func (r *reader) amidWeather(toks []token, i, end int) bool {
	for k := i - 1; k >= 0 && k >= i-2 && toks[k+1].pause < stop; k-- {
		if r.tellsWeather(toks[k]) {
			return true
		}
	}
	for k := end; k < len(toks) && k < end+2 && toks[k].pause < stop; k++ {
		if r.tellsWeather(toks[k]) || k == end && r.says(toks[k], "weather", "day", "morning", "afternoon", "evening", "spell") {
			return true
		}
	}
	return false
}

// tellsWeather reports whether a word tells the weather, or how warm it is.
func (r *reader) tellsWeather(t token) bool {
	return r.lex.matcher.alone(t.id).kinds.meet(weatherKinds) || r.isNumber(&t) || r.says(t, "degrees", "c", "f", "wind")
}

// broughtFrom reports whether what is told before token i in its sentence is brought in from there, or flown
// to: "yellow pollen is coming in from the willow", "working the willow".
func (r *reader) broughtFrom(toks []token, i int) bool {
	if i == 0 || toks[i].pause > none || !r.says(toks[i-1], "from", "on", "off", "the", "and", "of", "some", "working") {
		return false
	}
	for k := i - 1; k >= 0 && k >= i-12 && toks[k+1].pause < stop; k-- {
		if r.lex.matcher.longest(toks, k, nil).kinds.meet(setOf(kForage, kBring)) || r.says(toks[k], "pollen", "nectar", "working", "carry", "carried") {
			return true
		}
	}
	return false
}

// takenUp reports whether running speech, which has neither capitals nor stops, turns to the name at token i
// or has it where a hive is: "now friday", "june's on six bars", "two bars off june".
func (r *reader) takenUp(toks []token, i, end int) bool {
	alone := end == len(toks) || toks[end].pause >= comma
	within := ownSentence
	if alone || i == 0 {
		within = nextSentences
	}
	if !r.talksOfHive(toks, end, within) {
		return false
	}
	head := i == 0 || toks[i].pause >= line
	if head || r.turnedTo(toks, i) || r.plantSetOff(toks, i, end) {
		if alone || r.headsTalk(toks, i, end) {
			return true
		}
	}
	if !alone && (toks[end].lists.has(being) || r.says(toks[end], "'s", "first", "next", "now", "again")) {
		return true
	}
	return i > 0 && toks[i].pause == none && (r.tended(toks, i) || r.opensBefore(toks, i) || r.barsBefore(toks, i))
}

// plantSetOff reports whether the name of a plant at token i stands by itself amid running speech, with nothing
// before it that would lead in a plant: "uh borage to begin with bees on six bars".
func (r *reader) plantSetOff(toks []token, i, end int) bool {
	if i == 0 || !r.isPlant(toks, i, end) {
		return false
	}
	return !r.lex.matcher.longest(toks[:i], i-1, nil).kinds.meet(leadingPlants)
}

// isPlant reports whether a word is the name of a plant.
func (r *reader) isPlant(toks []token, i, end int) bool {
	return toks[i].lists.has(plantNames) || r.lex.matcher.longest(toks[:end], i, nil).kinds.has(kPlant)
}

// leadingPlants are the kinds of words that lead in the name of a plant, "on the willow", "willow and hazel".
var leadingPlants = setOf(kArt, kOn, kOf, kFrom, kTo, kAnd, kOr, kBring, kForage, kPlant, kColour, kPron, kBe, kHave, kNo, kNum)

// turnedTo reports whether a word that turns to the next hive stands before the name at token i; one that joins
// clauses as well does so only at the head of a sentence.
func (r *reader) turnedTo(toks []token, i int) bool {
	if i == 0 || toks[i].pause > none || !r.among(&toks[i-1], turnWords) {
		return false
	}
	return i == 1 || toks[i-1].pause >= stop || !r.says(toks[i-1], "and", "so")
}

// headsTalk reports whether the talk goes on behind a name at the head of a line as about a hive, and neither
// about a day, the weather nor what plants bring: "juniper two sealed cells on bar three".
func (r *reader) headsTalk(toks []token, i, end int) bool {
	if r.isCalendarWord(toks[i]) || r.lex.matcher.longest(toks[:end], i, nil).kinds.meet(weatherKinds) {
		return r.text[toks[end].start:toks[end].end] == r.text[toks[i].start:toks[i].end] // "june june is on six bars"
	}
	for k := end; k < len(toks) && k < end+4 && toks[k].pause < stop; k++ {
		if r.says(toks[k], "pollen", "nectar", "honey", "flow", "berries", "flower", "bloom") {
			return false
		}
	}
	return true
}

// barsBefore reports whether bars are told to be those of the name at token i, or to go there: "the bar broke in june",
// "moved two bars to june".
func (r *reader) barsBefore(toks []token, i int) bool {
	if !r.says(toks[i-1], "in", "off", "from", "to", "into") || r.says(toks[i-1], "in", "from") && r.isCalendarWord(toks[i]) && !r.isBarNumber(toks, i-2) {
		return false
	}
	for k := i - 2; k >= 0 && k >= i-6 && toks[k+1].pause < stop; k-- {
		if r.barNouns.has(toks[k].id) {
			return true
		}
	}
	return false
}

// isBarNumber reports whether the words up to token k are a bar and its number: "bar eleven".
func (r *reader) isBarNumber(toks []token, k int) bool {
	return k > 0 && r.isNumber(&toks[k]) && r.barNouns.has(toks[k-1].id)
}
