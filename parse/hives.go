package parse

import (
	"slices"
	"strings"
)

// namesHives reports whether item i makes the number behind it the first of
// several hives'.
func (r *reader) namesHives(items []item, i int) bool {
	if !barNumber(&items[i+1]) || items[i+1].pause > none {
		return false
	}
	return items[i].isWord2("hives", "colonies") || items[i].isWord2("hive", "colony") && andAnother(items, i+2)
}

// andAnother reports whether "and" and a number that counts nothing stand from item k on: "hive 1
// and 2 were calm", "hive 1 and 2: fed".
func andAnother(items []item, k int) bool {
	if k+1 >= len(items) || !items[k].is(kAnd) || items[k].pause > none || !barNumber(&items[k+1]) || items[k+1].pause > none {
		return false
	}
	next := at(items, k+2)
	return next == &noItem || next.pause > none || next.any(kBe, kHave) || next.text == "both"
}

// severalHives reads "hives 1 and 3", which opens no inspection.
func (r *reader) severalHives(items []item, i int) (*item, int) {
	list, next := r.numberList(items, i+1, true)
	ref := r.asHive(r.merged(items, i, next, nil), "")
	var names []string
	for _, n := range list {
		names = append(names, formatNumber(float64(n)))
	}
	ref.details = r.lex.detail(&details{hives: names})
	return ref, next
}

// nameHives makes references of the proper names that the note uses for hives.
func (r *reader) nameHives(items []item) []item {
	if len(r.names) == 0 {
		return items
	}
	for i := 0; i < len(items); i++ {
		start := r.nameStart(&items[i])
		if !r.initials.has(r.text[start]) {
			continue // as most words
		}
		known := r.knownHere[int32(start)]
		if known == "" && !items[i].has(capital) && !r.smallNames {
			continue
		}
		for n := min(3, len(items)-i); n > 0; n-- {
			r.strings.scratch = lowerCase(r.strings.scratch, r.text[start:items[i+n-1].end])
			if !r.names[string(r.strings.scratch)] || i+n < len(items) && items[i+n].is(kHive) && items[i+n].pause == none {
				continue
			}
			called := known == string(r.strings.scratch)
			if r.onlyKnown[string(r.strings.scratch)] && !called {
				continue
			}
			if n == 1 && len(items[i].text) == 1 && !r.letterAlone(items, i) || !called && !items[i].has(capital) && !r.smallName(items, i, i+n) || i > 0 && items[i].pause == none && items[i-1].lists.has(personTitles) {
				continue
			}
			if i > 1 && items[i-1].text == "off" && items[i-1].pause == none && items[i-2].any(kBar, kBars) {
				items[i-1].kinds, items[i-1].says = setOf(kFrom), senseless // "gave it a bar off Juniper"
			}
			name := string(r.strings.scratch)
			if full, short := r.shortNames[name]; short {
				name = full
			}
			if n == 1 && barNumber(&items[i]) {
				name = formatNumber(items[i].n.lo) // "opened Seventeen"
			}
			items[i] = *r.asHive(r.merged(items, i, i+n, nil), name)
			items = slices.Delete(items, i+1, i+n)
			break
		}
	}
	return items
}

// nameStart is where a name would begin in an item: behind the article that some words are told with, "the
// other", "the first".
func (r *reader) nameStart(it *item) int {
	if it.to-it.from == 2 && strings.HasPrefix(it.text, "the ") {
		return int(r.mended[it.from+1].start)
	}
	return int(it.start)
}

// smallName reports whether a hive's name in lower case stands where no plant does:
// alone at the head of a line, or as where something went or came from.
func (r *reader) smallName(items []item, i, end int) bool {
	if r.inItsTurn(items, i) {
		return true
	}
	if i == 0 {
		return end == len(items) || items[end-1].colon
	}
	if the := &items[i-1]; strings.HasSuffix(the.text, "the") && end < len(items) && items[end].pause == none && r.isWord(&items[end], r.wordsOf[lots]...) {
		return true // "last of all the orchard lot"
	} else if the.text == "the" && (i == 1 || the.pause >= stop || items[i-2].any(kTo, kFrom)) {
		return true
	}
	return items[i].pause == none && (items[i-1].any(kTo, kFrom) || items[i-1].isWord2("with", "into")) && (end == len(items) || items[end].pause > none || !items[end].is(kContent))
}

// hiveRef reads a hive's name at item i; back is how many items of out it
// takes back, as in "lime tree hive".
func (r *reader) hiveRef(items []item, i int, before []item) (*item, int, int) {
	it := &items[i]
	word := it.text
	word = word[strings.LastIndexByte(word, ' ')+1:]
	end := r.labelledName(items, i)
	if end == 0 {
		end = r.capitalsBehind(items, i)
	}
	if end > 0 {
		ref := r.merged(items, i, end, nil)
		return r.asHive(ref, strings.TrimPrefix(strings.ToLower(r.text[items[i+1].start:items[end-1].end]), "the ")), 0, end
	}
	// of "booming colony, five beetles" the number counts what stands behind it
	if j := i + 1; j < len(items) && (items[j].pause == none || it.colon && items[j].pause == colon && it.pause >= stop) || word != "h" && i+1 < len(items) && items[i+1].pause == comma && !countsNoun(phraseAt(items, i+1)) {
		if name, ok := r.nameAfter(items, i, word); ok && !r.countsBars(items, i+1, before, it) && !strings.HasPrefix(items[i+1].text, "a ") && !(strings.HasPrefix(it.text, "the ") && (countsBars(items, i+1) || i+2 < len(items) && items[i+2].is(kSign))) {
			end := i + 2
			if letter := r.gluedLetter(items, end); letter != "" {
				name, end = name+letter, end+1 // "hive 7A"
			}
			ref := r.merged(items, i, end, nil)
			return r.asHive(ref, name), 0, end
		}
	}
	if r.bareName(items, i, before) {
		return r.asHive(r.merged(items, i, i+2, nil), items[i+1].text), 0, i + 2
	}
	if word == "h" || word == "stock" {
		return nil, 0, i
	}
	if r.labelledNumber(items, i) {
		return r.asHive(r.merged(items, i, i+3, nil), formatNumber(items[i+2].n.lo)), 0, i + 3
	}
	name, back := r.numberedBefore(before, it)
	if back == 0 {
		name, back = r.nameBefore(before, it)
	}
	if back == 0 {
		name, back = r.placedHive(items, i, before)
	}
	if back == 0 {
		name, back = r.namedInTalk(items, i, before)
	}
	if back > 0 && (r.toldByNumber(items, i, before) || r.calledBehind(items, i) || r.theirsBehind(items, i)) {
		return nil, 0, i
	}
	if back > 0 {
		ref := &r.ref
		*ref = before[len(before)-back]
		ref.to, ref.end, ref.says, ref.kinds = it.to, it.end, senseless, kinds{}
		ref.colon = it.colon
		return r.asHive(ref, name), back, i + 1
	}
	return nil, 0, i
}

// numberedBefore reads "number four hive", "the number 2 colony", "plot 22 hive".
func (r *reader) numberedBefore(before []item, hive *item) (string, int) {
	n := len(before)
	if n < 2 || hive.pause > none || !barNumber(&before[n-1]) || before[n-1].n.hi > 0 || before[n-1].pause > none {
		return "", 0
	}
	if r.isWord(&before[n-2], r.wordsOf[numberedPlaces]...) {
		return before[n-2].text + " " + formatNumber(before[n-1].n.lo), 2 // "plot 22 hive"
	}
	if !r.isWord(&before[n-2], "number", "no", "no.", "nr", "the number") {
		return "", 0
	}
	if n > 2 && before[n-2].pause == none && before[n-3].is(kArt) {
		return formatNumber(before[n-1].n.lo), 3
	}
	return formatNumber(before[n-1].n.lo), 2
}

// gluedLetter is the letter at item i that stands right behind the number of a hive; "" where
// there is none.
func (r *reader) gluedLetter(items []item, i int) string {
	if i == len(items) || !items[i-1].is(kNum) || items[i].start != items[i-1].end || items[i].end != items[i].start+1 || i+1 < len(items) && items[i+1].start == items[i].end {
		return ""
	}
	if c := r.text[items[i].start] | 0x20; c < 'a' || c > 'f' {
		return ""
	}
	return strings.ToLower(r.text[items[i].start:items[i].end])
}

// toldByNumber reports whether the hive at item i is named behind a comma, so that what stands
// before it only describes it: "the problem colony, hive 6".
func (r *reader) toldByNumber(items []item, i int, before []item) bool {
	if i+2 >= len(items) || !items[i+1].is(kHive) || items[i+1].pause != comma || !barNumber(&items[i+2]) || items[i+2].pause > none {
		return false
	}
	word := &before[len(before)-1]
	return !word.any3(kPlant, kColour, kSide) && !word.lists.has(placesNear) && !(i+3 < len(items) && (items[i+3].is(kAnd) || items[i+3].is(kHive)))
}

// placedHive reads "top hive" alone at the head of a line or sentence, or before a verb.
func (r *reader) placedHive(items []item, i int, before []item) (string, int) {
	if len(before) == 0 || items[i].pause > none || i+1 < len(items) && items[i+1].pause < colon && !items[i+1].any(kBe, kHave) {
		return "", 0
	}
	place := &before[len(before)-1]
	name := strings.TrimPrefix(place.text, "the ")
	back := 1
	if len(before) > 1 && before[len(before)-2].is(kArt) && place.pause == none {
		back, place = 2, &before[len(before)-2]
	}
	if len(before) > back && place.pause < stop || !slices.Contains(r.wordsOf[endPlaces], name) {
		return "", 0
	}
	return name, back
}

func (r *reader) asHive(ref *item, name string) *item {
	ref.kinds = kinds{}
	ref.kinds.add(kName)
	ref.details = r.lex.detail(&details{name: name})
	return ref
}

// countsBars: "the compost hive, nine no ten bars in use", "Barn hive - 2 swarm cells":
// the number counts bars or what follows, and the name stands before.
func (r *reader) countsBars(items []item, i int, before []item, hive *item) bool {
	if i+1 >= len(items) || strings.HasSuffix(hive.text, "number") {
		return false
	}
	switch next := &items[i+1]; {
	case next.is(kBar) && !next.plural && i+2 < len(items) && items[i+2].pause == none && barNumber(&items[i+2]):
		return false // "the kids are in the bath hive three bar one pollen"
	case next.is(kRepair), next.is(kBar), items[i].pause == comma && next.pause == none, r.isWord(next, r.wordsOf[newOnes]...) && i+2 < len(items) && items[i+2].is(kBar), next.is(kNo) && i+2 < len(items) && items[i+2].any(kNum, kLeaf):
	case next.is(kLeaf) && !strings.HasPrefix(r.rule(next, kLeaf).ID, "temperature"):
	case countsCells(items, i+1): // "heron hive three sealed queen cells"
	default:
		return false
	}
	_, back := r.nameBefore(before, hive)
	return back > 0
}

// labelledName is the end of a name of two or three words behind "Hive:" at the
// head of a line or sentence; 0 where there is none.
func (r *reader) labelledName(items []item, i int) int {
	if !items[i].colon || items[i].pause < stop {
		return 0
	}
	for k := i + 1; k <= len(items) && k <= i+4; k++ {
		switch {
		case k > i+2 && (k == len(items) || items[k].pause >= comma):
			return k
		case k == len(items) || k > i+1 && items[k].pause > none || !items[k].any3(kWord, kPlant, kColour) && !(k == i+1 && items[k].text == "the"):
			return 0
		}
	}
	return 0
}

// nameAfter reads the name in "hive three", "hive B", "hive Maple", "H2", "Hive:
// Fig".
func (r *reader) nameAfter(items []item, i int, word string) (string, bool) {
	next := &items[i+1]
	if word == "h" {
		if next.start != items[i].end && !spokenH(items, i) || !next.is(kNum) || next.n.share || !next.n.whole() {
			return "", false
		}
	}
	if next.is(kNum) && !next.n.article && !next.n.approx && !next.n.share && next.n.whole() && next.n.hi == 0 {
		if next.n.ordinal {
			return "", false
		}
		return formatNumber(next.n.lo), true
	}
	name := next.text
	labelled := items[i].colon && items[i].pause >= stop && (i+2 == len(items) || items[i+2].pause >= comma) // "Hive: Fig"
	single := len(name) == 1 && name[0] >= 'a' && name[0] <= 'z'
	numbered := i+2 < len(items) && items[i+2].start == next.end && items[i+2].is(kNum) // "elder hive b1-2 honey"
	if single && !numbered && name != "i" && (name != "a" || r.letterA(items, i+1) || (i == 0 || items[i].pause >= line || !items[i-1].is(kArt)) && r.hivesOfPage().otherLetter) && (next.pause == none || labelled) {
		return name, true
	}
	if numbered && (name == "b" || name == "f") {
		return "", false // "Elder hive B1 honey"
	}
	quoted := next.start > 0 && (r.text[next.start-1] == '"' || r.text[next.start-1] == 0x9C || r.text[next.start-1] == '\'')
	if (next.has(capital) && (next.pause == none || quoted) || labelled) && (next.any3(kWord, kPlant, kColour)) && !next.lists.has(noNames) {
		return name, true
	}
	if r.names[name] || next.pause == none && next.isWord4("north", "south", "east", "west") || r.spokenName(items, i) {
		return name, true
	}
	return "", false
}

// spokenName reports whether the word behind "hive" is a name that a recogniser wrote
// small: "hive lilac sunny", "a bar from hive hibiscus".
func (r *reader) spokenName(items []item, i int) bool {
	hive, next := &items[i], &items[i+1]
	if hive.text == "hive" && next.pause == none && next.to == next.from+1 && r.givenNames.has(r.mended[next.from].id) {
		return true // "now hive ruth"
	}
	if hive.text != "hive" && !(hive.text == "colony" && (next.is(kPlant) || next.lists.has(plantNames))) || next.pause > none || !next.any3(kWord, kPlant, kColour) || next.lists.has(noNames) || next.lists.has(softNames) {
		return false
	}
	weather := i > 0 && items[i-1].any(kSky, kWind) // "33 C sunny windy hive fig"
	if hive.pause < stop && i > 0 && !weather && !items[i-1].any5(kFrom, kTo, kBe, kYes, kState) {
		return false
	}
	if hive.pause >= line && i+2 == len(items) && next.lists.has(placesNear) {
		return true // a line by itself
	}
	behind := &noItem
	if i+2 < len(items) {
		behind = &items[i+2]
	}
	if next.is(kPlant) || next.lists.has(plantNames) {
		return !behind.any(kForage, kBring) || behind.pause > none
	}
	return i > 0 && items[i-1].any(kFrom, kTo) && next.is(kWord) && next.lists == 0 && (behind == &noItem || behind.pause > none || behind.any3(kOn, kDate, kAnd))
}

// nameBefore reads the name in "orchard hive", "the lime tree hive": up to
// three words behind an article, a preposition or the start.
func (r *reader) nameBefore(before []item, hive *item) (string, int) {
	if hive.pause > none || strings.Contains(hive.text, "the ") || strings.HasPrefix(hive.text, "this ") || strings.HasPrefix(hive.text, "my ") || strings.HasPrefix(hive.text, "our ") {
		return "", 0 // "on the scale the hive has …"
	}
	if name, n := r.knownBefore(before); n > 0 {
		return name, n
	}
	if name, n := r.capitalsBefore(before); n > 0 {
		return name, n
	}
	var words []string
	back := 0
	end := hive.start
	for k := len(before) - 1; k >= 0 && back < 3; k-- {
		it := &before[k]
		text := it.text
		if name, n := r.standingName(before, k, words); n > 0 {
			return name, n
		}
		ofPlace := back > 0 && it.has(capital) && before[k+1].has(capital) && before[k+1].lists.has(placesNear) // "the Long Meadow hive"
		if !r.nameWord(it) || it.lists.has(noNames) && !ofPlace || it.lists.has(softNames) && back == 0 && !r.nameWordBefore(before, k) || strings.ContainsAny(text, "#%°=/'") || !it.has(capital) && adjectival(text) {
			break
		}
		if it.end < end-2 || it.any(kSky, kWind) && !it.has(capital) && k > 0 && before[k-1].any4(kAnd, kSky, kWind, kLeaf) {
			break // "cloudy and windy plum hive", "18 degrees and sunny hive 4"
		}
		words = append([]string{text}, words...)
		back++
		end = it.start
		if it.pause > none {
			break
		}
	}
	// only the words behind the article: "opened up the orchard hive"
	for back > 1 && !r.headsName(before, back) {
		words, back = words[1:], back-1
	}
	if back == 0 || !r.headsName(before, back) {
		return "", 0
	}
	if back > 1 {
		words, back = r.spokenLength(before, words)
	}
	return strings.Join(words, " "), back
}

// standingName is the name that ends with some words, and how many items it is, where item k, right
// before them, tells where the hive stands in a row, which of two it is or that it is at the back:
// "the middle hive", "left-hand hive", "the back fence hive"; 0 where it is none.
func (r *reader) standingName(before []item, k int, words []string) (string, int) {
	it := &before[k]
	if rest, ok := strings.CutPrefix(it.text, "the "); ok && it.any(kSide, kPlace) {
		switch {
		case len(words) > 0 && !strings.Contains(rest, " "):
			if spoken, n := r.spokenLength(before, append([]string{rest}, words...)); n == len(words) {
				return strings.Join(spoken, " "), n // "bearding down the front boathouse hive"
			}
			return r.spelling(it, &before[len(before)-1], len("the ")), len(words) + 1
		case len(words) == 0 && (slices.Contains(r.wordsOf[rowPlaces], rest) || slices.Contains(r.wordsOf[endPlaces], rest)):
			return r.spelling(it, it, len("the ")), 1
		}
	}
	if len(words) > 0 {
		return "", 0
	}
	switch {
	case k > 0 && before[k-1].text == "the" && it.pause == none && slices.Contains(r.wordsOf[endPlaces], it.text):
		return r.spelling(it, it, 0), 1 // "into the far hive"
	case it.text == "hand" && k > 0 && before[k-1].isWord2("left", "right"):
		return r.spelling(&before[k-1], it, 0), 2
	case r.opposed(it.text):
		return it.text, 1 // "the little hive", and elsewhere "the big hive"
	}
	return "", 0
}

// spelling is how items are written, but for capitals and without so many letters of the first:
// "left-hand", whose text is "left hand".
func (r *reader) spelling(first, last *item, without int) string {
	return r.strings.lower(r.text[int(first.start)+without : last.end])
}

// told are the kinds of words that can end what is told of a hive in running speech.
var told = setOf(kContent, kTemper, kSign, kCell, kStrength, kStores, kStored, kSide, kPlace, kPattern, kLeaf, kComb, kState, kSubstance, kDo)

// nameless are the kinds of words that stand in no name.
var nameless = setOf(kArt, kOn, kOf, kFrom, kTo, kAfter, kBe, kHave, kWill, kPron, kShe, kAnd, kOr, kBut, kThen, kNum, kNo, kTemper, kStrength, kAdv, kQueen, kDo, kDate, kHive, kBar, kBars, kName, kContent, kCell, kSeen, kUnseen, kPlan, kIf, kAsk, kNow, kPast, kUndone, kStage, kRepair, kScratch, kMite, kSign, kYes)

func (r *reader) nameWord(it *item) bool {
	return it.to-it.from == 1 && it.text != "hives" && it.text != "colonies" && (!it.anyOf(nameless) || it.text == "stone") // "stone dead", "the stone wall hive"
}

func (r *reader) nameWordBefore(before []item, k int) bool {
	return k > 0 && before[k].pause == none && r.nameWord(&before[k-1]) && !before[k-1].lists.has(softNames) && !before[k-1].lists.has(noNames)
}

// ownName reports whether the words from item k on are the name of a hive wherever they
// stand before the word: a plant or a place near, "apple tree", "top gate".
func ownName(before []item, k int) bool {
	first, last := &before[k], &before[len(before)-1]
	if first.has(capital) || k > 0 && before[k-1].any(kSide, kPlace) || k == 1 && before[0].is(kWord) {
		return false // "at the back fence hive", "kitchen garden hive"
	}
	switch plant := first.is(kPlant) || first.lists.has(plantNames); len(before) - k {
	case 1:
		return plant || first.lists.has(placesNear) && first.text != "tree"
	case 2:
		return plant && last.text == "tree" || first.lists.has(softNames) && first.text != "lot" && last.lists.has(placesNear)
	}
	return false
}

// headsName reports whether what stands before the name lets it begin there.
func (r *reader) headsName(before []item, back int) bool {
	k := len(before) - back
	if before[k].pause > none || k == 0 {
		return true
	}
	prev := &before[k-1]
	if before[k].has(capital) && !prev.has(capital) && prev.any(kWord, kDo) {
		return true // "looked through Nursery hive", "fed Nursery hive"
	}
	if !r.named && k <= 10 && (prev.any6(kPron, kTemper, kAdv, kSky, kWind, kLeaf) || prev.isWord2("for", "with")) {
		return true // at the head of a note: "let me see you, willow hive"
	}
	placed := prev.is(kBar) || prev.is(kBars) && k > 1 && before[k-2].is(kOn)
	if back == 1 && (prev.anyOf(told) || prev.any(kName, kWhole) || placed) && (r.named || hasKind(before, kName)) && (before[k].is(kPlant) || before[k].lists.has(plantNames) || before[k].lists.has(placesNear)) {
		return true // "apple hive calm not one sting pear hive snappy", "… no mark on bar 4 gate hive …"
	}
	if prev.isWord4("over at the", "in my own", "of my own", "own") || ownName(before, k) && !r.isWord(prev, comparing...) {
		return true // ours, where a hive's name follows; "no lids today garden hive 24.6 kg"
	}
	return prev.any(kDate, kYes, kArt, kOn, kOf, kTo, kFrom, kAnd, kThen, kNext, kBe, kHave, kRepair) || prev.is(kNum) && prev.n.article ||
		prev.is(kNow) || r.isWord(prev, "one", "next", "finally", "lastly", "right", "okay", "ok", "hives", "colonies") // "now willow hive", "the little one shed hive"
}
