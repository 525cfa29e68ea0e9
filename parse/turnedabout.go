package parse

import (
	"slices"
	"strings"
)

// Sentences that begin with a place, a denial or what was found, as prose turns them about:
// they are put as notes say them.

// turned reports whether a line may hold such a sentence.
func turned(met *gist) bool {
	return met.kinds.meet(setOf(kContent, kCell, kSign, kQueen)) && (met.kinds.meet(turning) || met.kinds.has(kOf) && met.kinds.meet(setOf(kThere, kNo)) || met.kinds.has(kBe) && met.kinds.has(kSeen))
}

// turning are the kinds of words without which most sentences are not turned about.
var turning = setOf(kAsk, kOther, kPlace, kSide, kNot)

// turnAbout puts them so.
func (r *reader) turnAbout(items []item) []item {
	items = r.foundThere(items)
	r.neverWasThere(items)
	r.ofNone(items)
	for i := 0; i < len(items); i++ {
		if items[i].any3(kPlace, kSide, kOther) || items[i].isWord2("side", "face") {
			items = r.placeFirst(items, i)
		}
	}
	return items
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
		if seen+2 >= len(items) || !items[seen].is(kSeen) || !items[seen+1].is(kOn) || !items[seen+2].is(kBars) || !hasKind(phraseFrom(items, i-2), kContent) && !hasKind(phraseFrom(items, i-2), kCell) {
			continue
		}
		items = slices.Delete(items, i-2, seen+1)
		items[i-2].pause = none
	}
	return items
}

// phraseFrom are the items before item i, back to the beginning of the sentence.
func phraseFrom(items []item, i int) []item {
	from := i - 1
	for from > 0 && items[from].pause < stop {
		from--
	}
	return items[from:i]
}

// denyingHeads begin a sentence whose verb stands before its subject and so looks like a
// question.
var denyingHeads = []string{"nowhere", "never", "at no point", "at no time", "not once", "not anywhere", "on no bar", "on no comb", "in no comb"}

// neverWasThere makes a denial of "nowhere in the hive was there an egg", "never did I see an
// egg".
func (r *reader) neverWasThere(items []item) {
	for i := range items {
		atNo := items[i].text == "at" && i+1 < len(items) && items[i+1].isWord2("no point", "no time")
		if i > 0 && items[i].pause < stop || !atNo && !r.isWord(&items[i], denyingHeads...) {
			continue
		}
		for k := i + 1; k < len(items) && items[k].pause < stop; k++ {
			ask := &items[k]
			if !ask.is(kAsk) || !strings.HasPrefix(ask.text, "was ") && !strings.HasPrefix(ask.text, "were ") && !strings.HasPrefix(ask.text, "is ") && !strings.HasPrefix(ask.text, "are ") && !strings.HasPrefix(ask.text, "did ") && !strings.HasPrefix(ask.text, "could ") {
				continue
			}
			items[i].kinds, items[i].says = setOf(kAdv), senseless
			ask.kinds, ask.says = setOf(kNo), r.denial
			if seen := k + 1; seen+1 < len(items) && items[seen].is(kSeen) && !hasKind(items[seen:min(len(items), seen+4)], kQueen) {
				items[seen].kinds, items[seen].says = setOf(kAdv), senseless
			}
			break
		}
	}
}

// ofNone denies before its list what "of foulbrood, sacbrood and the rest there was no trace"
// denies behind it.
func (r *reader) ofNone(items []item) {
	for i := range items {
		of := &items[i]
		if of.text != "of" || i > 0 && of.pause < stop || i+2 >= len(items) || !items[i+1].any3(kSign, kCell, kContent) {
			continue
		}
		there := i + 1
		for there < len(items) && items[there].pause <= comma && !strings.HasPrefix(items[there].text, "there") && !items[there].any3(kBars, kDo, kPron) {
			there++
		}
		if there == len(items) || !strings.HasPrefix(items[there].text, "there") || !onlyThings(items[i+1:there]) {
			continue
		}
		end := r.noneAhead(items, there)
		if end == 0 {
			continue
		}
		of.kinds, of.says = setOf(kNo), r.denial
		for k := i + 1; k < there; k++ {
			if items[k].is(kAnd) || items[k].text == "of" {
				items[k].kinds, items[k].says = setOf(kOr), senseless
			}
		}
		for k := there; k < end; k++ {
			items[k].kinds, items[k].says = setOf(kWord), senseless
			items[k].used = true
		}
		items[there].pause = comma
	}
}

// onlyThings reports whether items name signs, cells or contents, with others of which the
// trade knows nothing.
func onlyThings(items []item) bool {
	return !slices.ContainsFunc(items, func(it item) bool {
		return !it.any6(kSign, kCell, kContent, kAnd, kOr, kOf) && !it.any6(kArt, kOther, kWord, kStage, kCellKind, kOn) && !it.any(kAdv, kColour)
	})
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
		none = none || it.is(kNot) || r.isWord(it, "nothing", "none") || denied && it.isWord6("trace", "sign", "hint", "evidence", "whiff", "sight")
	}
	if !none {
		return 0
	}
	return end
}

// placeFirst puts the bars before a place on them that begins what is told, "in the corners
// of bar four, as is their way, was honey", and an idle aside behind it all; item i is the
// place.
func (r *reader) placeFirst(items []item, i int) []item {
	head := i
	for head > 0 && items[head].pause == none && (items[head-1].any3(kOn, kTo, kArt) || items[head-1].text == "tucked") {
		head--
	}
	if head > 0 && items[head].pause < comma && !items[head-1].any(kAnd, kBut) || strings.HasSuffix(r.value(&items[i], kSide), " end") {
		return items
	}
	named := items[i].isWord2("side", "face")
	end, bars := i+1, 0
	if end+1 < len(items) && items[end].text == "of" && items[end].pause == none && items[end+1].is(kBars) && items[end+1].pause == none {
		bars = end + 1
		end = bars + 1
	} else if end+2 < len(items) && items[end].text == "of" && items[end+1].isWord4("the same", "same", "that", "this") && items[end+2].is(kBar) && !items[end+2].plural {
		end += 3
	}
	front := 0
	if bars > 0 && named {
		if front = r.facing(items, end); front == 0 {
			return items
		}
		end = front
	}
	verb, aside := end, r.idleAside(items, end)
	if aside > end {
		verb = aside
	}
	if bars == 0 && verb == i+1 || named && front == 0 || !r.leadsToFind(items, verb) {
		return items
	}
	idle := slices.Clone(items[end:verb])
	place := items[i]
	if named {
		place.kinds, place.says = setOf(kSide), r.sideFront
	}
	var fresh []item
	if bars > 0 {
		ref := items[bars]
		ref.pause, place.pause = items[head].pause, comma
		fresh = []item{ref, place}
	} else {
		fresh = slices.Clone(items[head : i+1])
	}
	items[verb].pause = none
	stopAt := verb + 1
	for stopAt < len(items) && items[stopAt].pause < stop {
		stopAt++
	}
	for k := range idle {
		idle[k].kinds, idle[k].says = setOf(kWord), senseless
		idle[k].pause = none
	}
	if len(idle) > 0 {
		idle[0].pause = colon
	}
	told := verb
	if items[verb].isWord2("i", "we") { // "I could see" for "was"
		for !items[told].is(kSeen) {
			told++
		}
		items[told].kinds, items[told].says, items[told].pause = setOf(kBe), senseless, none
	}
	rest := slices.Concat(fresh, items[told:stopAt], idle)
	gone := stopAt - head - len(rest)
	copy(items[head:], rest)
	return slices.Delete(items, stopAt-gone, stopAt)
}

// facing is the end of "that faces the entrance" at item k, 0 where it does not stand there.
func (r *reader) facing(items []item, k int) int {
	if k < len(items) && items[k].isWord2("that", "which") {
		k++
	}
	if k < len(items) && items[k].is(kBe) {
		k++
	}
	if k >= len(items) || !r.isWord(&items[k], "faces", "facing", "faced", "fronts", "nearest", "towards", "toward", "next to") {
		return 0
	}
	for k++; k < len(items) && items[k].is(kArt); k++ {
	}
	if k < len(items) && (r.value(&items[k], kFixture) == "entrance" || items[k].isWord3("door", "front", "the door")) {
		return k + 1
	}
	return 0
}

// idle are the kinds of words that tell nothing of a hive where they stand in an aside.
var idle = setOf(kWord, kArt, kOf, kTo, kOn, kAnd, kOr, kBe, kHave, kAdv, kPron, kShe, kIf, kSay, kPast, kSide, kPattern, kAfter, kFore, kWill, kNo, kThen, kBut, kThere, kFill, kPlace, kBar)

// idleAside is the item behind an aside that begins at item k between commas and tells nothing
// of the hive: "as neat as piping on a cushion"; k where none does.
func (r *reader) idleAside(items []item, k int) int {
	if k >= len(items) || items[k].pause != comma || !items[k].isWord4("as", "when", "like", "while") {
		return k
	}
	for end := k + 1; end < len(items) && end < k+16; end++ {
		if items[end].pause == comma {
			return end
		}
		if items[end].pause > comma || !items[end].anyOf(idle) || items[end].any3(kContent, kQueen, kDo) {
			break
		}
	}
	return k
}

// leadsToFind reports whether a verb of being, lying or seeing stands at item k, and soon
// behind it what is found.
func (r *reader) leadsToFind(items []item, k int) bool {
	if k >= len(items) || !items[k].any(kBe, kThere) && !r.isWord(&items[k], r.wordsOf[lying]...) {
		if !(k+1 < len(items) && items[k].isWord2("i", "we") && hasKind(items[k+1:min(len(items), k+3)], kSeen)) {
			return false
		}
	}
	for n := k + 1; n < len(items) && n <= k+6 && items[n].pause == none; n++ {
		if items[n].is(kContent) {
			return true
		}
		if items[n].any4(kQueen, kBars, kDo, kFixture) {
			break
		}
	}
	return false
}
