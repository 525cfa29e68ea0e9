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
	if len(r.bars) == 1 && (r.inHand == thisLine && (r.sameSentence || r.headedBars && r.saysHere(c, from) || r.wordIn(c.items, onTheBar...)) || (r.inHand == thisText || r.inHand == thisLine) && r.onThatBar(c.items) || r.inHand == awaiting) {
		if _, ok := r.cur.get("queen.bar"); !ok {
			r.cur.put("queen.bar", strconv.Itoa(r.bars[0]), source{spans: r.spanOf(&c.items[max(from, 0)]), rule: "queen"})
		}
	}
}

// thatSameBar reports whether "on the same bar", or "on that bar", ends at item k.
func thatSameBar(items []item, k int) bool {
	return k > 1 && items[k].is(kBar) && !items[k].plural && items[k-1].isWord4("this", "that", "same", "the same") && (items[k-2].is(kOn) || items[k-2].is(kArt) && k > 2 && items[k-3].is(kOn))
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

// crossesBar puts the queen who walks over a bar on it: "the queen crossed bar 7".
func (r *reader) crossesBar(items []item) {
	for i := 1; i+1 < len(items); i++ {
		if it := &items[i]; it.is(kWord) && r.isWord(it, r.wordsOf[roaming]...) && items[i-1].any3(kQueen, kShe, kBe) && it.pause <= comma && items[i+1].any(kBar, kBars) && items[i+1].pause == none {
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
