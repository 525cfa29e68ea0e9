package parse

import "strings"

var (
	// leadToBars are the kinds of words that the bars behind them belong to.
	leadToBars = setOf(kOn, kOf, kFrom, kTo, kAfter, kFore, kTween, kDo, kIf, kAsk, kUnsure, kPlan)
	// hangsThere are the kinds of what can be on a bar that is named behind it.
	hangsThere = setOf(kContent, kCell, kSign, kQueen, kSeen, kUnseen, kComb, kShe, kDo, kNo, kMite, kPattern, kStage, kLeaf, kMaybe)
)

// barsAt is a reference to bars, with what stands around it.
type barsAt struct {
	*reader
	items []item
	i     int   // its place in them
	prev  *item // before it
}

// next is the item k places behind, or one of no kind.
func (b barsAt) next(k int) *item {
	if b.i+k >= len(b.items) {
		return &noItem
	}
	return &b.items[b.i+k]
}

// before is the item k places before, or one of no kind.
func (b barsAt) before(k int) *item {
	if b.i < k {
		return &noItem
	}
	return &b.items[b.i-k]
}

// heads reports whether a reference to bars begins what is said of them; if
// not, it says where something before it was.
func (r *reader) heads(items []item, i int) bool {
	if i == 0 {
		return true
	}
	it := &items[i]
	if it.laid != notLaid {
		return it.laid == beforeTheir
	}
	b := barsAt{r, items, i, &items[i-1]}
	if lead := b.leadIn(); lead != nil {
		return lead.heads
	}
	b.prev = b.beforeAside()
	switch {
	case r.onlyThere(items, i-1), b.tellsWhere(placings[:], placingsOf):
		return false
	case it.pause >= colon:
		return true
	}
	switch before := b.before(2); {
	case i == 1 || it.pause > none:
	case b.prev.is(kArt) && before.any(kDo, kBars):
		return false
	case b.prev.is(kArt) && before.any(kOn, kFrom):
		return r.frontedBar(items, i-2)
	case b.prev.is(kArt):
		b.prev = before
	case b.prev.any4(kAnd, kThen, kBut, kAdv):
		return !b.prev.is(kAnd) || !before.is(kBars) || r.heads(items, i-2) || r.ownVerb(items, i) // "follower behind bar nine, and bar nine is bare"
	}
	switch {
	case b.tellsWhere(closePlacings[:], closePlacingsOf):
		return false
	case b.prev.isWord2("back to", "on to") && !deedNear(items[:i-1]):
		return true // "bar one honey back to bar five"
	case it.pause == none && b.prev.anyOf(leadToBars):
		return b.prev.any(kOn, kFrom) && r.frontedBar(items, i-1)
	}
	return true
}

// beforeAside is what stands before the bars, over a word that tells nothing of them: "queen
// seen again bar six", "eggs yes bar four".
func (b barsAt) beforeAside() *item {
	if b.i > 1 && (b.prev.is(kYes) || b.before(2).is(kSeen) && b.prev.isWord4("afterwards", "later", "again", "after")) {
		return b.before(2)
	}
	return b.prev
}

// ownVerb reports whether the bar at item i is the subject of a verb, or of its being full or
// bare, that stands right behind it, and what came before is not.
func (r *reader) ownVerb(items []item, i int) bool {
	next := i + 1
	if next == len(items) || items[next].pause > none {
		return false
	}
	if len(items[i].bars) > 1 { // "eggs on bars 4 and 5, and bars 8 and 9 are half honey"
		return items[i-1].is(kAnd) && items[i-1].pause == comma && r.isWord(&items[next], pluralVerbs...)
	}
	if items[next].is(kFull) && at(items, next+1).is(kOf) || items[next].is(kComb) && r.closed(items, next) {
		return true // "eggs on bar four and bar seven full of honey"
	}
	return r.isWord(&items[next], singularVerbs...) || items[i-1].pause == comma && items[next].any(kBe, kHave)
}

// howMuchBehind reports whether nothing but how much and where follows a
// reference to bars in its phrase.
func howMuchBehind(items []item, i int) bool {
	k := i + 1
	for k < len(items) && items[k].pause == none && items[k].any4(kSide, kPlace, kFull, kPattern) && !items[k].any(kContent, kComb) {
		k++
	}
	return k > i+1 && (k == len(items) || items[k].pause >= comma || items[k].is(kBars))
}

// labelledCells reports whether the items are a form's answer about queen cells.
func labelledCells(items []item) bool {
	for k := len(items) - 1; k >= 0 && k >= len(items)-5; k-- {
		if items[k].is(kCell) && items[k].colon {
			return true
		}
	}
	return false
}

// segmentFinding reports whether the words since the last comma begin with a
// finding, not with a bar.
func (r *reader) segmentFinding(items []item, i int) bool {
	k := i
	for k > 0 && items[k].pause < comma {
		k--
	}
	return k > 0 && (items[k].pause == comma || items[k].pause == colon) && items[k].any6(kContent, kCell, kPattern, kAmount, kNum, kStage)
}

// endsOnPlace reports whether a phrase ends on a word of place.
func endsOnPlace(text string) bool {
	switch text[strings.LastIndexByte(text, ' ')+1:] {
	case "on", "across", "over", "about", "along", "down", "up":
		return true
	}
	return false
}

// shortRef is a bar written "b4".
func (r *reader) shortRef(it *item) bool {
	return r.text[it.start]|0x20 == 'b' && it.end > it.start+1 && isDigit(r.text[it.start+1])
}

// postposed reports whether the sentence puts its bars behind what they hold.
func (r *reader) postposed(items []item, i int) bool {
	first := i
	for k := i - 1; k >= 0 && items[k+1].pause < stop; k-- {
		if items[k].is(kBars) {
			first = k
		}
	}
	if first > 1 && items[first-1].is(kOn) && items[first-1].pause == none {
		first--
	}
	return first > 0 && items[first].pause == none && items[first-1].any4(kContent, kCell, kSeen, kQueen)
}

// eachBehind reports whether from item i on every reference to bars stands behind a
// content, and the last of them ends the phrase.
func (r *reader) eachBehind(items []item, i int) bool {
	for k := i; k < len(items) && (k == i || items[k].pause == none); k++ {
		switch {
		case !items[k].is(kBars):
			continue
		case !items[k-1].is(kContent):
			return false
		case r.closed(items, k) || items[k+1].is(kBrood):
			return true
		}
	}
	return false
}

// closed reports whether a reference to bars ends its phrase.
func (r *reader) closed(items []item, i int) bool {
	if i+1 < len(items) && items[i+1].pause == none && items[i+1].isWord4("only", "too", "as well", "again") {
		i++ // "capped brood bars 4 and 5 only"
	}
	if i > 0 && i+1 < len(items) && items[i-1].any3(kCell, kStage, kCellKind) && items[i+1].is(kUndone) && strings.HasPrefix(items[i+1].text, "left") {
		return true // "one sealed cell bar six left alone"
	}
	return i+1 >= len(items) || items[i+1].pause >= comma || items[i+1].any3(kColour, kQueenIs, kDot) && !items[i+1].is(kContent)
}

// barBefore reports whether bars were named earlier in the sentence, so that a
// further one begins anew.
func (r *reader) barBefore(items []item, i int) bool {
	for k := i - 1; k >= 0 && items[k+1].pause < stop; k-- {
		if items[k].is(kBars) {
			return !items[i-1].any(kSeen, kQueen)
		}
	}
	return false
}

// frontedBar reports whether "on bar six" begins what is said, as in "on bar
// six I found her": nothing that could hang there stands before it.
func (r *reader) frontedBar(items []item, on int) bool {
	pause := items[on].pause
	counted := on == 1 && items[0].is(kNum) || on == 2 && items[0].is(kNum) && items[1].isWord3("more", "others", "further")
	if counted && pause == none && r.sentenceNo-r.spokeOf.cells == 1 && r.closed(items, on+1) {
		return false // "two sealed cells on bar four. Another on bar six"
	}
	if on > 0 && items[on-1].is(kAnd) {
		pause = max(pause, items[on-1].pause)
	}
	if pause > none && (r.findingBehind(items, on+2) || on+3 < len(items) && items[on+1].is(kArt) && r.findingBehind(items, on+3)) {
		return true // "eggs on bar three, on bar four sealed brood"
	}
	if on > 0 && items[on-1].is(kAnd) && placedTurn(items, on) {
		return true // "bar two has eggs and on bar three a little brood"
	}
	for k := on - 1; k >= 0; k-- {
		it := &items[k]
		if it.anyOf(hangsThere) {
			if it.any3(kContent, kCell, kStage) && items[on].pause == none && r.frontedStyle(items, k) && r.findingBehind(items, on+2) {
				return true // "on bar three I have eggs on bar four larvae"
			}
			return false
		}
		if items[k+1].pause >= colon {
			return true
		}
	}
	return true
}

// frontedStyle reports whether the sentence puts "on bar three" before what is
// found there.
func (r *reader) frontedStyle(items []item, i int) bool {
	for k := i; k > 0 && items[k].pause < stop; k-- {
		if items[k].is(kBars) && items[k-1].is(kOn) {
			opens := k == 1 || items[k-1].pause >= stop // "On bar three, brood and on bar four pollen."
			return k < i && r.frontedBar(items, k-1) && (items[k+1].pause == none || opens && items[k+1].pause == comma)
		}
	}
	return false
}

// findingBehind reports whether a finding follows before the next pause.
func (r *reader) findingBehind(items []item, i int) bool {
	for ; i < len(items) && items[i].pause == none; i++ {
		if items[i].any3(kContent, kCell, kComb) {
			return true
		}
		if items[i].is(kBars) {
			return false
		}
	}
	return false
}

// inBrackets reports whether brackets hold the item and nothing else.
func (r *reader) inBrackets(it *item) bool {
	return it.start > 0 && int(it.end) < len(r.text) && r.text[it.start-1] == '(' && r.text[it.end] == ')'
}
