package parse

import (
	"slices"
	"strings"
)

// A sentence may begin with a place on a bar, "in the corners of bar four, as is their way,
// was honey": notes have the bar first, and then the place.

// placesFirst puts the bars before the places that begin a sentence or a part of one.
func (r *reader) placesFirst(items []item) []item {
	for i := 0; i < len(items); i++ {
		if !items[i].any3(kPlace, kSide, kOther) && !items[i].isWord2("side", "face") {
			continue
		}
		if p, found := r.placeAhead(items, i); found {
			items = r.barFirst(items, p)
		}
	}
	return items
}

// placeAhead is a place that begins what is told.
type placeAhead struct {
	head, at int  // the item it begins with, and the one that tells it
	bars     int  // the item of its bars; 0 where the bar in hand is meant
	facing   bool // it is the face that looks to the entrance
	end      int  // the item behind it
	verb     int  // the item that leads to what was found, behind an idle aside at most
}

// placeAhead finds it around the place at item i.
func (r *reader) placeAhead(items []item, i int) (p placeAhead, found bool) {
	p = placeAhead{head: i, at: i, end: i + 1}
	for p.head > 0 && items[p.head].pause == none && (items[p.head-1].any3(kOn, kTo, kArt) || items[p.head-1].text == "tucked") {
		p.head--
	}
	if p.head > 0 && items[p.head].pause < comma && !items[p.head-1].any(kAnd, kBut) || strings.HasSuffix(r.value(&items[i], kSide), " end") {
		return p, false
	}
	r.ofBars(items, &p)
	if items[i].isWord2("side", "face") { // no place until it is told which
		if p.bars == 0 {
			return p, false
		}
		if p.end = r.facing(items, p.end); p.end == 0 {
			return p, false
		}
		p.facing = true
	}
	p.verb = r.idleAside(items, p.end)
	return p, (p.bars > 0 || p.verb > i+1) && r.leadsToFind(items, p.verb)
}

// ofBars takes "of bar four" or "of the same comb" behind the place.
func (r *reader) ofBars(items []item, p *placeAhead) {
	rest := items[p.end:]
	switch {
	case len(rest) < 2 || rest[0].text != "of":
	case rest[0].pause == none && rest[1].is(kBars) && rest[1].pause == none:
		p.bars = p.end + 1
		p.end += 2
	case len(rest) > 2 && rest[1].isWord4("the same", "same", "that", "this") && rest[2].is(kBar) && !rest[2].plural:
		p.end += 3
	}
}

// barFirst puts the bars before the place, and the aside behind what was found.
func (r *reader) barFirst(items []item, p placeAhead) []item {
	end := sentenceEnd(items, p.verb)
	fresh := slices.Concat(r.barAndPlace(items, p), foundBehind(items[p.verb:end]), asideBehind(items[p.end:p.verb]))
	return slices.Replace(items, p.head, end, fresh...)
}

// barAndPlace are the bars with the place behind them; of the bar in hand it is the place as
// it stands.
func (r *reader) barAndPlace(items []item, p placeAhead) []item {
	if p.bars == 0 {
		return items[p.head : p.at+1]
	}
	bars, place := items[p.bars], items[p.at]
	if p.facing {
		place.kinds, place.says = setOf(kSide), r.sideFront
	}
	bars.pause, place.pause = items[p.head].pause, comma
	return []item{bars, place}
}

// foundBehind is what was found, from its verb on, which is "was" where it is "I could see".
func foundBehind(items []item) []item {
	if items[0].isWord2("i", "we") {
		if seen := slices.IndexFunc(items, func(it item) bool { return it.is(kSeen) }); seen > 0 {
			items = items[seen:]
			items[0].kinds, items[0].says = setOf(kBe), senseless
		}
	}
	items[0].pause = none
	return items
}

// asideBehind makes words of an aside that tells nothing of the hive.
func asideBehind(items []item) []item {
	for k := range items {
		items[k].kinds, items[k].says, items[k].pause = setOf(kWord), senseless, none
	}
	if len(items) > 0 {
		items[0].pause = colon
	}
	return items
}

// facing is the end of "that faces the entrance" at item k, 0 where it does not stand there.
func (r *reader) facing(items []item, k int) int {
	if k < len(items) && items[k].isWord2("that", "which") {
		k++
	}
	if k < len(items) && items[k].is(kBe) {
		k++
	}
	if k >= len(items) || !r.isWord(&items[k], r.wordsOf[fronting]...) {
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
