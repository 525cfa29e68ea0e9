package parse

import (
	"maps"
	"slices"
	"strings"
)

// Hives that the keeper has: their names are known before a note is read, and what is weighed is not
// whether a word is a name but whether it is meant as one where it stands.

// knownHives are the names of the keeper's hives, in lower case and without an article. Numbers and letters are
// not among them, "7", "b", "b2": bars are told so too.
type knownHives struct {
	names    []string // longer ones first
	initials letters
}

// newKnownHives makes ready the names of a keeper's hives.
func newKnownHives(names []string) (known knownHives) {
	for _, name := range names {
		if name = knowable(name); name != "" {
			known.names = append(known.names, name)
			known.initials |= 1 << (name[0] & 31)
		}
	}
	slices.SortFunc(known.names, func(a, b string) int {
		if len(a) != len(b) {
			return len(b) - len(a)
		}
		return strings.Compare(a, b)
	})
	known.names = slices.Compact(known.names)
	return known
}

// knowable is the name of a hive as it is known; "" for one that is not.
func knowable(name string) string {
	name = strings.TrimPrefix(strings.Join(strings.Fields(strings.ToLower(name)), " "), "the ")
	if len(name) < 2 || name[0] < 'a' || !strings.Contains(name, " ") && strings.ContainsAny(name, "0123456789") {
		return ""
	}
	return name
}

// Knows reports whether a hive's name is among those that the parser was made with, or none that it can be
// made with: a number, a letter.
func (p *Parser) Knows(hive string) bool {
	name := knowable(hive)
	return name == "" || slices.Contains(p.lexicon.known.names, name)
}

// seekKnown finds where the page tells of known hives.
func (r *reader) seekKnown(toks []token) {
	clear(r.knownHere)
	if len(r.hives.names) == 0 {
		return
	}
	var doubtful []int
	inCapitals := false
	for i := 0; i < len(toks); i++ {
		name, end := r.knownAt(toks, i)
		switch {
		case end == 0:
		case !r.meantAsHive(toks, i, end):
			doubtful = append(doubtful, i)
		default:
			if r.knownHere == nil {
				r.knownHere = map[int32]string{}
			}
			r.knownHere[toks[i].start] = name
			inCapitals = inCapitals || toks[i].has(capital) && i > 0 && toks[i].pause == none && !r.manner.shouted
			i = end - 1
		}
	}
	r.byOtherMentions(toks, doubtful, inCapitals)
}

// byOtherMentions settles mentions of known hives by those that are sure: a name that begins a sentence with a
// capital is the hive's if it is one elsewhere, and who writes one name with a capital writes all so: "It takes
// patience, but Mercy is coming on".
func (r *reader) byOtherMentions(toks []token, doubtful []int, inCapitals bool) {
	sure := map[string]bool{}
	for _, name := range r.knownHere {
		sure[name] = true
	}
	for _, i := range doubtful {
		if name, end := r.knownAt(toks, i); sure[name] && toks[i].has(capital) && (i == 0 || toks[i].pause >= stop) && !r.titledRun(toks, i) && !r.isPerson(toks, i, end) && !r.meantAsWord(toks, i, end) {
			r.knownHere[toks[i].start] = name
		}
	}
	if inCapitals {
		maps.DeleteFunc(r.knownHere, func(at int32, _ string) bool { return r.text[at] >= 'a' && r.text[at] <= 'z' })
	}
}

// addKnown adds the known hives of the page to those that the note names.
func (r *reader) addKnown() {
	r.onlyKnown = nil
	for _, name := range r.knownHere {
		if r.names[name] {
			continue
		}
		if r.onlyKnown == nil {
			r.onlyKnown = map[string]bool{}
		}
		r.onlyKnown[name] = true
	}
	if r.names == nil && r.onlyKnown != nil {
		r.names = map[string]bool{}
	}
	for name := range r.onlyKnown {
		r.names[name] = true
	}
}

// knownBefore is the name of a known hive that ends right before the word "hive", and of how many items it is:
// "quick jetty hive" tells of the jetty. 0 where there is none.
func (r *reader) knownBefore(before []item) (string, int) {
	if len(r.hives.names) == 0 {
		return "", 0
	}
	end := before[len(before)-1].end
	for back := min(4, len(before)); back > 0; back-- {
		first := &before[len(before)-back]
		text := r.strings.lower(r.text[r.nameStart(first):end])
		if slices.Contains(r.hives.names, text) {
			return text, back
		}
	}
	return "", 0
}

// knownAt is the name of a known hive that stands at token i and the token behind it; 0 where there is none.
func (r *reader) knownAt(toks []token, i int) (string, int) {
	if !r.hives.initials.has(r.text[toks[i].start]) {
		return "", 0
	}
	for _, name := range r.hives.names {
		to := int(toks[i].start) + len(name)
		if to > len(r.text) || !strings.EqualFold(r.text[toks[i].start:to], name) {
			continue
		}
		for end := i + 1; end <= len(toks) && int(toks[end-1].end) <= to; end++ {
			if int(toks[end-1].end) == to {
				return name, end
			}
		}
	}
	return "", 0
}

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
// that was typed amiss, and it is not led in as a thing is, "a kettle".
func (r *reader) meansNoMore(toks []token, i int) bool {
	t := &toks[i]
	if !t.has(capital) && i > 0 && t.pause == none && r.says(toks[i-1], "a", "an", "some", "any", "no", "my", "your") {
		return false
	}
	return t.has(misspelt) || t.lists == 0 && !r.givenNames.has(t.id) && r.lex.matcher.longest(toks[:i+1], i, nil).end == i
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
	if i > 0 && toks[i].pause == none && (r.says(toks[i-1], r.wordsOf[beforeDays]...) || r.isNumber(&toks[i-1])) {
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
	return r.lex.matcher.longest([]token{t}, 0, nil).kinds.meet(weatherKinds) || r.isNumber(&t) || r.says(t, "degrees", "c", "f", "wind")
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
	if i == 0 || toks[i].pause > none || !r.says(toks[i-1], r.wordsOf[turnWords]...) {
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
