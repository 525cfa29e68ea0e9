package parse

import (
	"slices"
	"strings"
)

// Sentences that begin with a denial or with what was found, as prose turns them about: they
// are put as notes say them. Those that begin with a place are in placefirst.go.

// turning are the kinds of words without which most sentences are not turned about.
var turning = setOf(kAsk, kOther, kPlace, kSide, kNot)

// turnAbout puts them so.
func (r *reader) turnAbout(items []item) []item {
	for from := 0; from < len(items); {
		end := sentenceEnd(items, from)
		r.turnDenial(items[from:end])
		from = end
	}
	return r.placesFirst(items)
}

// foundThere puts what was found before its bars: "sealed brood in one tight sheet: that is
// what I found on bar six".
func (r *reader) foundThere(items []item) []item {
	for i := 3; i+4 < len(items); i++ {
		if items[i].text != "what" || !items[i-1].is(kBe) || !items[i-2].isWord2("that", "this") || items[i-2].pause < comma || !items[i+1].isWord2("i", "we") {
			continue
		}
		seen := i + 2
		for seen < len(items) && items[seen].any(kHave, kWill) {
			seen++
		}
		if seen+2 >= len(items) || !items[seen].is(kSeen) || !items[seen+1].is(kOn) || !items[seen+2].is(kBars) || !kindsOf(items[sentenceStart(items, i-3):i-2]).meet(setOf(kContent, kCell)) {
			continue
		}
		items = slices.Delete(items, i-2, seen+1)
		items[i-2].pause = none
	}
	return items
}

// turnDenial puts a denial before what its sentence denies, where notes have it.
func (r *reader) turnDenial(s []item) {
	denial, denies := r.denialAhead(s)
	if denies == nil {
		denial, denies = r.denialBehind(s)
	}
	if denies != nil {
		unsay(denial)
		denies.kinds, denies.says = setOf(kNo), r.denial
	}
}

// unsay makes words of items that tell nothing where they stand.
func unsay(items []item) {
	for k := range items {
		items[k].kinds, items[k].says, items[k].used = setOf(kWord), senseless, true
	}
}

// denyingHeads begin a sentence whose verb stands before its subject and so looks like a
// question.
var denyingHeads = []string{"nowhere", "never", "at no point", "at no time", "not once", "not anywhere", "on no bar", "on no comb", "in no comb"}

// turnedVerbs are the verbs of such a sentence.
var turnedVerbs = []string{"was ", "were ", "is ", "are ", "did ", "could "}

// denialAhead is the denial of "nowhere in the hive was there an egg", "never did I see an
// egg", and the verb that is to deny instead; nil where the sentence is none.
func (r *reader) denialAhead(s []item) (denial []item, verb *item) {
	atNo := s[0].text == "at" && len(s) > 1 && s[1].isWord2("no point", "no time")
	if !atNo && !r.isWord(&s[0], denyingHeads...) {
		return nil, nil
	}
	k := 1
	for k < len(s) && !(s[k].is(kAsk) && slices.ContainsFunc(turnedVerbs, func(verb string) bool { return strings.HasPrefix(s[k].text, verb) })) {
		k++
	}
	if k == len(s) {
		return nil, nil
	}
	return s[:1], &s[k]
}

// denialBehind is the denial of "of foulbrood, sacbrood and the rest there was no trace", and
// the word before the list that is to deny it instead; nil where the sentence is none.
func (r *reader) denialBehind(s []item) (denial []item, of *item) {
	if s[0].text != "of" || len(s) < 3 || !s[1].any3(kSign, kCell, kContent) {
		return nil, nil
	}
	there := 1
	for there < len(s) && s[there].pause <= comma && !strings.HasPrefix(s[there].text, "there") && !s[there].any3(kBars, kDo, kPron) {
		there++
	}
	if there == len(s) || !strings.HasPrefix(s[there].text, "there") || !onlyThings(s[1:there]) {
		return nil, nil
	}
	end := r.noneAhead(s, there)
	if end == 0 {
		return nil, nil
	}
	for k := 1; k < there; k++ {
		if s[k].is(kAnd) || s[k].text == "of" {
			s[k].kinds, s[k].says = setOf(kOr), senseless
		}
	}
	s[there].pause = comma
	return s[there:end], &s[0]
}

// onlyThings reports whether items name signs, cells or contents, with others of which the
// trade knows nothing.
func onlyThings(items []item) bool {
	return allOf(items, setOf(kSign, kCell, kContent, kAnd, kOr, kOf, kArt, kOther, kWord, kStage, kCellKind, kOn, kAdv, kColour))
}

// noneAhead is the end of "there was, I am glad to say, no trace" at item k; 0 where it does
// not stand there.
func (r *reader) noneAhead(items []item, k int) int {
	denied := items[k].any(kNo, kNot)
	if !denied && (k+1 == len(items) || !items[k].is(kThere) || !items[k+1].is(kBe)) {
		return 0
	}
	none, end := items[k].is(kNot), k+1
	for ; end < len(items) && end < k+12 && items[end].pause <= comma; end++ {
		it := &items[end]
		if none {
			break
		}
		if it.any6(kSign, kCell, kContent, kBars, kQueen, kAmount) || it.is(kDo) {
			return 0
		}
		denied = denied || it.is(kNo)
		none = none || it.is(kNot) || r.isWord(it, "nothing", "none") || denied && r.isWord(it, r.wordsOf[traces]...)
	}
	if !none {
		return 0
	}
	return end
}
