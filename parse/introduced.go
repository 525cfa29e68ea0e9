package parse

import "strings"

// Hives that are introduced by name in running speech, which has neither capitals nor stops: "this
// is banjo twenty eight degrees", "then maeve bar two no comb".

// introduced is where the name that ends with token i begins, if the talk turns to the hive of that
// name there; -1 elsewhere. It is the word that the note begins with or a place where these are told to
// be hives (saidAtOutset, placeIntroduced), a given name, or behind "this is" and the like a word that no rule
// knows, and what follows is told of a hive. Others tells whether the note has introduced one before.
func (r *reader) introduced(toks []token, i int, others bool) int {
	t := &toks[i]
	given := r.givenNames.has(t.id)
	if i > 1 && r.placeIntroduced(toks, i) {
		return i
	}
	if i <= 1 && (i == 0 || r.says(toks[0], "the") && t.pause == none) && r.saidAtOutset(toks, i, given) {
		return i
	}
	if t.pause > comma && i > 0 || !given && !r.unheardOf(t) && !r.afterPlant(toks, i) {
		return -1
	}
	if !r.handOver(toks, i+1) {
		return -1
	}
	begin := i
	if i > 0 && t.pause == none && r.among(&toks[i-1], nameEpithets) {
		begin--
	}
	if begin == 0 {
		if given || r.afterPlant(toks, i) || begin < i && t.id == idUnknown || r.unheardOf(t) && r.says(toks[1], "first", "today", "now") {
			return begin
		}
		return -1
	}
	said := r.leadingUp(toks, begin)
	for _, words := range r.wordsOf[introducing] {
		if strings.HasSuffix(said, " "+words+" ") && (given || others || r.fromOutset(toks, begin)) {
			return begin
		}
	}
	prev := toks[begin-1]
	if !r.among(&prev, turnWords) || r.says(prev, "and") || !given && !(others && r.unheardOf(t) && r.says(prev, "now", "then", "next")) {
		return -1
	}
	return begin
}

// placeIntroduced reports whether the hive that stands at a place is opened, "did the orchard first", or the talk
// turns to it, "then the gatehouse which is slower", "then down to the millpond bar two eggs".
func (r *reader) placeIntroduced(toks []token, i int) bool {
	if t := &toks[i]; t.pause > none || toks[i-1].pause > none || !r.says(toks[i-1], "the") || !t.lists.has(placesNear) && !r.isNameToo(toks, i) || i+1 == len(toks) || r.front.words.has(r.hiveID) {
		return false
	}
	next := &toks[i+1]
	if r.says(toks[i-2], "did", "done", "opened", "inspected", "checked") {
		return next.pause <= comma && r.says(*next, "first", "next", "last", "today", "tonight", "too") && r.talksOfHive(toks, i+2, nextSentences)
	}
	k := i - 2
	for k > 0 && r.says(toks[k], "to", "at", "in", "into", "down", "up", "over", "across", "along", "round", "out", "back", "on", "onto") {
		k--
	}
	if !r.among(&toks[k], turnWords) || r.says(toks[k], "and", "back") {
		return false
	}
	told := next.pause <= comma && (r.says(*next, "which", "'s", "is", "was", "has") || next.lists.has(hiveDoings))
	return (told || r.handOver(toks, i+1)) && r.talksOfHive(toks, i+1, nextSentences)
}

// afterPlant reports whether the word at token i is a plant or a colour, after which hives are
// called, and a bar with its number follows: "this is thistle bar one eggs".
func (r *reader) afterPlant(toks []token, i int) bool {
	if i > longestGreeting {
		return false
	}
	m := r.lex.matcher.longest(toks, i, nil)
	if m.end != i+1 || !m.kinds.meet(calledAfter) && !toks[i].lists.has(plantNames) {
		return false
	}
	for k := range toks[:i] {
		if r.weighSaid(toks, k) > 0 {
			return false // "nectar coming in this is clover bar two honey"
		}
	}
	k := i + 1
	for k < len(toks) && toks[k].pause <= comma && r.says(toks[k], hesitations...) {
		k++
	}
	return k+1 < len(toks) && (r.barNouns.has(toks[k].id) && r.saysNumber(&toks[k+1]) || r.isNumber(&toks[k]) && r.handOver(toks, k))
}

// leadingUp is what stands before token i, in lower case, with a space about it: " so this is ".
func (r *reader) leadingUp(toks []token, i int) string {
	said := " "
	for k := max(0, i-5); k < i; k++ {
		if r.says(toks[k], hesitations...) || r.says(toks[k], "eh", "like") {
			continue
		}
		if k > 0 && toks[k].start == toks[k-1].end {
			said = strings.TrimSuffix(said, " ")
		}
		said += strings.ToLower(r.text[toks[k].start:toks[k].end]) + " "
	}
	return said
}

// fromOutset reports whether nothing has been told before token i but greetings: no bar, and no more
// words than a greeting has.
func (r *reader) fromOutset(toks []token, i int) bool {
	if i > longestGreeting {
		return false
	}
	for k := range toks[:i] {
		if r.barNouns.has(toks[k].id) {
			return false
		}
	}
	return true
}

// longestGreeting is the number of words before the first hive is named, at most.
const longestGreeting = 12

// unheardOf reports whether a token is a word that no rule knows and that may be a name: "banjo", not
// "unbelievably".
func (r *reader) unheardOf(t *token) bool {
	if t.id != idUnknown || t.lists != 0 || t.end-t.start < 3 || t.has(digits) {
		return false
	}
	text := strings.ToLower(r.text[t.start:t.end])
	if strings.ContainsAny(text, "#%°=/'-") {
		return false
	}
	return !inflected(strings.TrimRight(text, "s"))
}

// handOver reports whether the talk goes on at token k as behind the name of a hive: with a bar and
// its number, the warmth, the weather, or with what is found in hives.
func (r *reader) handOver(toks []token, k int) bool {
	for n := 0; k < len(toks) && n < 4 && toks[k].pause <= comma && r.among(&toks[k], behindIntroduced); n++ {
		k++
	}
	if k >= len(toks) || toks[k].pause > comma {
		return false
	}
	if r.barNouns.has(toks[k].id) {
		return k+1 < len(toks) && r.saysNumber(&toks[k+1])
	}
	if r.isNumber(&toks[k]) {
		for n := k + 1; n < len(toks) && n <= k+3; n++ {
			if r.barNouns.has(toks[n].id) || r.says(toks[n], "degrees", "combs") {
				return true
			}
		}
		return false
	}
	return r.lex.matcher.longest(toks, k, nil).kinds.meet(toldOfNamed)
}

// saysNumber reports whether a token behind "bar" is a number, as it is or as it is misheard.
func (r *reader) saysNumber(t *token) bool {
	return r.isNumber(t) || r.says(*t, "won", "to", "too", "for", "ate", "tree")
}

// toldOfNamed are the kinds of words that are told of a hive right behind its name.
var toldOfNamed = setOf(kContent, kTemper, kStrength, kStores, kSky, kWind, kBees, kSign, kQueen, kNo)
