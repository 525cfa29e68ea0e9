package parse

import (
	"slices"
	"strconv"
)

// The bar that the queen was seen on.

// queenBar finds the bar she was on: the next one named behind her, the head
// of the clause, or the bar in hand.
func (r *reader) queenBar(c *clause, from int) {
	var ref *item
	for k := max(from, 0); k < len(c.items); k++ {
		it := &c.items[k]
		if it.is(kBars) && !it.taken && len(it.bars) == 1 && !(k > 0 && c.items[k-1].text == "as") {
			if k > from+4 && c.items[k-1].is(kAnd) {
				break
			}
			ref = it
			break
		}
		if k > from && it.any4(kContent, kCell, kSign, kMite) && !it.is(kQueenIs) {
			break
		}
	}
	if ref == nil {
		for k := min(from, len(c.items)-1); k >= 0; k-- {
			if it := &c.items[k]; it.is(kBars) && !it.taken && len(it.bars) == 1 && !(k > 0 && c.items[k-1].text == "as") {
				ref = it
				break
			}
		}
	}
	if ref != nil {
		switch {
		case ref.mended:
			r.cur.flag("queen.bar", "corrected aloud", "")
		case ref.has(misheard):
			r.cur.flag("queen.bar", "bar may be misheard", "")
		}
		r.cur.put("queen.bar", strconv.Itoa(ref.bars[0]), source{spans: r.spanOf(ref), rule: "queen"})
		return
	}
	if len(r.bars) == 1 && (r.inHand == thisLine && (r.sameSentence || r.headedBars && r.saysHere(c, from) || r.wordIn(c.items, onTheBar...) || thereToo(c.items)) || (r.inHand == thisText || r.inHand == thisLine) && r.onThatBar(c.items) || r.inHand == awaiting) {
		if _, ok := r.cur.get("queen.bar"); !ok {
			r.cur.put("queen.bar", strconv.Itoa(r.bars[0]), source{spans: r.spanOf(&c.items[max(from, 0)]), rule: "queen"})
		}
	}
}

// thatSameBar reports whether "on the same bar", or "on that bar", ends at item k.
func thatSameBar(items []item, k int) bool {
	return k > 1 && items[k].is(kBar) && !items[k].plural && (items[k-1].isWord4("this", "that", "same", "the same") || items[k-1].isWord4("very same", "the very same", "selfsame", "the selfsame")) && (items[k-2].is(kOn) || items[k-2].is(kArt) && k > 2 && items[k-3].is(kOn))
}

// onThatBar reports whether the bar in hand is pointed at: "that's the queen on it",
// "there's the queen on this bar".
func (r *reader) onThatBar(items []item) bool {
	for k := range items {
		if slices.Contains(onTheBar, items[k].text) || thatSameBar(items, k) {
			return true
		}
	}
	return false
}

// sheIsHere reports whether she is told to be on the bar in hand: "bar seven and she's on this
// one".
func (r *reader) sheIsHere(c *clause) bool {
	if len(r.bars) != 1 || r.inHand == noBar || c.hasAny(kNo, kNot) {
		return false
	}
	for k := 0; k+2 < len(c.items); k++ {
		if c.items[k].is(kShe) && c.items[k].text == "she" && c.items[k+1].isWord3("is", "'s", "was") && r.onThatBar(c.items[k+2:]) {
			return true
		}
	}
	return false
}

// herThere reports whether a bar and the queen on it, with what she carries at most, are told at item
// i: "and on bar 8 a queen with no mark", "on bar 9, behold, the new queen".
func herThere(items []item, i int) bool {
	if i+2 >= len(items) || !items[i].is(kOn) || !items[i+1].is(kBars) || len(items[i+1].bars) != 1 || items[i+1].pause > none {
		return false
	}
	k := i + 2
	for k < len(items) && k < i+7 && items[k].pause <= comma && items[k].anyOf(leadsToHer) && !items[k].is(kQueen) {
		k++
	}
	return k < len(items) && items[k].is(kQueen) && items[k].pause <= comma && endsOnHer(items, k)
}

// leadsToHer are the kinds of words between a bar and the queen on it: "was the fine old".
var leadsToHer = setOf(kArt, kAdv, kFill, kBe, kThere, kWord)

// onBars: "on bar five the queen", "bar four brood and the queen" and no more, "on bar six, eggs,
// and the queen".
func (r *reader) onBars(c *clause, noun int) bool {
	if herThere(c.items, 0) || herThere(c.items, 1) || r.onThatBar(c.items[:noun]) && endsOnHer(c.items, noun) {
		return true // "and on that comb the queen"
	}
	if r.missedBehind(c) {
		return false
	}
	k := noun - 1
	for k > 0 && c.items[k].anyOf(besideHer) && c.items[k+1].pause <= colon {
		k--
	}
	return k >= 0 && (k <= 2 || k == 3 && c.items[0].is(kAnd)) && c.items[k].is(kBars) && len(c.items[k].bars) == 1 && endsOnHer(c.items, noun)
}

// besideHer are the kinds of words between a bar and the queen that say what else is on it.
var besideHer = setOf(kArt, kThere, kBe, kAnd, kContent, kStage, kAmount, kPattern, kSide)

// endsOnHer reports whether nothing but what she carries, or what else is there, goes on behind the
// queen at item i: "the queen and eggs".
func endsOnHer(items []item, i int) bool {
	if i+2 < len(items) && items[i+1].is(kAnd) && items[i+2].is(kContent) && items[i+2].pause == none {
		return i+3 == len(items) || items[i+3].pause >= comma
	}
	return i+1 == len(items) || items[i+1].pause >= comma || items[i+1].any3(kQueenIs, kDot, kColour) || withMark(items, i+1) > 0
}

// withMark is the end of "with a blue dot", "with no mark" or the like at item i; 0 where none
// stands there.
func withMark(items []item, i int) int {
	if i >= len(items) || items[i].pause > none || !items[i].isWord4("with", "wearing", "bearing", "sporting") {
		return 0
	}
	for k := i + 1; k < len(items) && k < i+7 && items[k].pause == none; k++ {
		if items[k].is(kDot) || items[k].is(kQueenIs) && k == i+1 {
			return k + 1
		}
		if !items[k].any6(kArt, kNum, kColour, kAdv, kQueenIs, kShe) && !items[k].any(kComb, kWord) {
			return 0
		}
	}
	return 0
}

// placedByColon reports whether a clause behind a colon is her bar and no more than what she carries: "found
// her: bar 5, no dot".
func placedByColon(c *clause) bool {
	first := &c.items[0]
	return first.is(kBars) && first.pause == colon && len(first.bars) == 1 && (len(c.items) == 1 || c.items[1].pause >= comma || carriedOnly(c.items[1:]))
}

// thereToo reports whether she is told to be where something was found before: "I saw the queen there",
// "she was there too".
func thereToo(items []item) bool {
	for k := 1; k < len(items); k++ {
		if items[k].text != "there" || items[k].pause > none {
			continue
		}
		ends := k+1 == len(items) || items[k+1].pause > none
		if items[k-1].any(kQueen, kShe) && hasKind(items[:k-1], kSeen) && (ends || items[k+1].isWord4("too", "as well", "also", "again")) {
			return true
		}
		if items[k-1].is(kBe) && !ends && items[k+1].isWord3("too", "as well", "also") {
			return true
		}
	}
	return false
}

// placeFirst reports whether the sentence begins with the bar on which all that follows is.
func (r *reader) placeFirst() bool {
	return len(r.told) > 2 && r.told[0].is(kOn) && r.told[1].is(kBars) && len(r.told[1].bars) == 1
}

// crossesBar puts the queen who walks over a bar on it: "the queen crossed bar 7".
func (r *reader) crossesBar(items []item) {
	for i := 1; i+1 < len(items); i++ {
		if it := &items[i]; it.any4(kWord, kDo, kTemper, kComb) && items[i+1].any(kBar, kBars) && items[i-1].any3(kQueen, kShe, kBe) && it.pause <= comma && items[i+1].pause == none && r.isWord(it, r.wordsOf[roaming]...) {
			it.kinds, it.says, it.text = setOf(kOn), senseless, "on"
		}
	}
}

// leadsToHerBar are the kinds of words right before the bar that she is on.
var leadsToHerBar = setOf(kOn, kBe, kQueen, kSeen, kAdv, kDot, kQueenIs)

// queenPlaced: naming the bar she is on says that she was seen.
func (r *reader) queenPlaced(c *clause, noun int) bool {
	far := noun + 6
	if noun+1 < len(c.items) && c.items[noun+1].pause == comma {
		far += 10 // "the queen, a 2024 lady with no mark, was on bar four"
	}
	if end := withMark(c.items, noun+1); end > 0 {
		far = end + 6 // "the queen with a blue dot was on bar six"
	}
	for k := noun + 1; k < len(c.items) && k <= far; k++ {
		it := &c.items[k]
		if k <= noun+4 && thatSameBar(c.items, k) && (len(r.bars) == 1 && r.inHand == thisLine || hasKind(c.items[:noun], kBars)) {
			return true // "eggs on bar 4, and the queen on the same bar"
		}
		if it.is(kBars) {
			return !it.taken && (c.items[k-1].anyOf(leadsToHerBar) || r.closesHere(c, k))
		}
		if it.any6(kContent, kCell, kSign, kMite, kFore, kFrom) || it.is(kDo) && !it.any(kDot, kQueenIs) {
			return false
		}
	}
	return false
}
