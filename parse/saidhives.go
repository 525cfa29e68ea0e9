package parse

import "strings"

// The names of hives in running speech, which a recogniser writes without capitals and
// stops: where they begin and end is told by what stands about them alone.

// unmarked reports whether a line is written without capitals, as recognisers do.
func unmarked(line []item) bool {
	for i := range line {
		if line[i].has(capital) {
			return false
		}
	}
	return true
}

// bareName reports whether the word behind "hive" is a name by where it stands in a text
// without capitals: no article or adjective comes before "hive", and the word is a plant, or
// none that the rules know, "hive gannet under attack".
func (r *reader) bareName(items []item, i int, before []item) bool {
	if !unmarked(items) || items[i].text != "hive" || i+1 == len(items) {
		return false
	}
	hive, next := &items[i], &items[i+1]
	if next.pause > none || next.start > hive.end+1 || next.to != next.from+1 || r.isWord(next, r.wordsOf[hiveGear]...) || next.lists&^(1<<phrases) != 0 && !next.lists.has(plantNames) && !next.is(kColour) {
		return false
	}
	if len(before) > 0 && hive.pause == none && r.toldBeforeHive(before, next) {
		return false
	}
	if next.anyOf(calledAfter) || next.lists.has(plantNames) {
		return i+2 == len(items) || items[i+2].pause > none || !items[i+2].any4(kForage, kBring, kDot, kSubstance) && items[i+2].text != "honey"
	}
	if !next.is(kWord) || len(next.text) < 3 || strings.ContainsAny(next.text, "#%°=/'-") || inflected(next.text) {
		return false
	}
	return r.mended[next.from].id == idUnknown || i+2 < len(items) && items[i+2].any4(kBar, kBars, kNow, kThen)
}

// toldBeforeHive reports whether the words before "hive" tell which it is, or that it is any, and
// so the one behind does not: "the gate hive clover is out", "jetty hive grey pollen".
func (r *reader) toldBeforeHive(before []item, behind *item) bool {
	prev := &before[len(before)-1]
	if prev.any4(kArt, kTheirs, kEach, kNum) || prev.isWord6("whole", "same", "other", "entire", "empty", "another") {
		return true
	}
	first := len(before) == 1 || prev.pause > none || before[len(before)-2].is(kArt)
	if first && r.nameWord(prev) && !prev.lists.has(noNames) && !prev.lists.has(softNames) {
		return true
	}
	return r.callableAlone(prev) && (r.customary(prev) || behind.anyOf(calledAfter) || r.givenNames.has(r.mended[behind.from].id))
}

// calledAfter are the kinds of words after which hives are called.
var calledAfter = setOf(kPlant, kColour)

// inflected reports whether a word ends as a verb, an adverb or an adjective does: "smells",
// "buzzing", "slowly", "hopeless", and not as "moss" and "iris" do.
func inflected(word string) bool {
	if n := len(word); n > 2 && word[n-1] == 's' && strings.IndexByte("sui", word[n-2]) < 0 {
		return true
	}
	return strings.HasSuffix(word, "ing") || strings.HasSuffix(word, "ed") || strings.HasSuffix(word, "ly") || adjectival(word)
}

// adjectival reports whether a word ends as an adjective does: "hopeless", "dangerous".
func adjectival(word string) bool {
	for _, end := range [...]string{"less", "ful", "ous"} {
		if strings.HasSuffix(word, end) {
			return true
		}
	}
	return false
}

// spokenLength are the words of a name of several before "hive" that belong to it in running
// speech: all where the last is what hives stand at, "the pear tree hive", or an article or a
// pause leads them in; the last alone otherwise, "cold and grey copper hive".
func (r *reader) spokenLength(before []item, words []string) ([]string, int) {
	n := len(words)
	if !unmarked(before) || r.isWord(&before[len(before)-1], r.wordsOf[nameHeads]...) || before[len(before)-1].lists.has(placesNear) {
		return words, n
	}
	if lead := &before[len(before)-n]; n == 2 && (r.isWord(lead, r.wordsOf[nameEpithets]...) || len(before) > n && lead.pause == none && before[len(before)-n-1].is(kArt)) {
		return words, n
	}
	if r.callableAlone(&before[len(before)-1]) {
		return words[n-1:], 1
	}
	return words, n
}

// namedInTalk reads a name of one word before "hive" in running speech, whatever comes before
// it, where the talk goes on as behind the name of a hive: "so I can talk thorn hive bar two".
func (r *reader) namedInTalk(items []item, i int, before []item) (string, int) {
	if !unmarked(items) || len(before) == 0 || items[i].text != "hive" || items[i].pause > none || i+1 == len(items) {
		return "", 0
	}
	name, behind := &before[len(before)-1], &items[i+1]
	if !r.callableAlone(name) || !behind.anyOf(ofNamed) {
		return "", 0
	}
	if k := len(before) - 2; k >= 0 && name.pause == none && (before[k].any3(kArt, kTheirs, kEach) || r.isWord(&before[k], comparing...)) {
		return "", 0
	}
	return name.text, 1
}

// ofNamed are the kinds of words with which talk goes on behind the name of a hive.
var ofNamed = setOf(kBar, kBars, kBe, kNo, kNow, kNext, kContent, kUndone, kHave, kSign, kQueen, kPron, kShe, kBees, kTemper, kStrength, kStores, kSky)

// callableAlone reports whether a word may be all of a hive's name: a plant, what hives stand
// at, or a word that the rules know nothing of.
func (r *reader) callableAlone(it *item) bool {
	if !r.nameWord(it) || it.lists.has(noNames) || it.lists.has(softNames) || inflected(it.text) || strings.ContainsAny(it.text, "#%°=/'") {
		return false
	}
	return r.customary(it) || r.mended[it.from].id == idUnknown
}

// customary reports whether hives are called by a word: a plant, what they stand at, a given name.
func (r *reader) customary(it *item) bool {
	return it.is(kPlant) || it.lists.has(plantNames) || it.lists.has(placesNear) || r.givenNames.has(r.mended[it.from].id)
}
