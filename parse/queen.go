package parse

import (
	"slices"
	"strings"
)

// ofHer are the kinds of words that tell of a queen.
var ofHer = setOf(kQueen, kShe, kSeen, kUnseen, kQueenIs, kDot, kColour)

// queen reads whether she was seen, where, and what she carries.
func (r *reader) queen(c *clause) {
	if r.notToday(c) {
		r.leaf("queen.seen", "no", "queen", "", c.doubt, &c.items[1])
		return
	}
	if !c.kinds.meet(ofHer) && (r.queenWaits == 0 || r.queenWaits < r.sentenceNo-1) {
		return
	}
	if first := &c.items[0]; first.any(kShe, kQueen) || first.any(kAnd, kArt) && c.next(0).any(kShe, kQueen) {
		r.spokeOf.she = r.sentenceNo
	}
	r.markIs(c)
	r.paintTold(c)
	r.sheIsNow(c)
	r.markLast = c.kinds.meet(two(kDot, kQueenIs))
	noun, named := r.queenNoun(c)
	seen, unseen := r.sightings(c, noun)
	if noun < 0 && r.queenWaits > 0 && (r.queenWaits == r.sentenceNo-1 && r.placesHer(c) || r.queenWaits == r.sentenceNo && placedByColon(c)) {
		r.wasSeen(c, -1, 0) // "and the queen! On bar four"
	}
	if noun >= 0 && seen < 0 && unseen < 0 && len(c.items) <= 4 {
		r.queenWaits = r.sentenceNo
	}
	if !r.speaksOfHer(c, noun, seen, unseen) {
		return
	}
	if named {
		r.sheLast = true
		r.spokeOf.queen = r.sentenceNo
	}
	if noun < 0 && seen >= 0 {
		r.attributes(c, seen)
	} else {
		r.attributes(c, noun)
	}
	switch {
	case c.queenUnsure:
		r.useQueen(c, noun)
		return
	case unseen >= 0 || r.queenDenied(c, noun) || r.soughtInVain(c):
		r.notSeen(c, noun, unseen)
	case seen >= 0 || noun >= 0 && r.inHand == awaiting && r.sameSentence && len(r.bars) == 1 || noun >= 0 && (r.queenPlaced(c, noun) || r.thereIs(c, noun) || r.onBars(c, noun) || r.alsoHer(c, noun)) || r.shePlaced(c):
		r.wasSeen(c, noun, seen)
		if _, placed := r.cur.get("queen.bar"); !placed && len(c.items) <= 4 {
			r.queenWaits = r.sentenceNo
		}
	case noun > 0 && r.value(&c.items[noun], kQueen) == "virgin=yes" && hasKind(c.items[:noun], kHave) && !c.has(kNo): // "the colony has a virgin queen"
		r.leaf("queen.virgin", "yes", "virgin", "", c.doubt, &c.items[noun])
	}
}

// placesHer reports whether a sentence behind one about the queen only tells her bar: "On
// bar four", or a bar that heads nothing, "Bar 8."
func (r *reader) placesHer(c *clause) bool {
	if len(c.items) > 1 && c.items[0].is(kOn) {
		return c.items[1].is(kBars) && !c.hasAny(kContent, kCell, kComb, kSign)
	}
	told := r.told
	if told[0].is(kOn) {
		told = told[1:]
	}
	if len(told) == 0 || !told[0].is(kBars) || !c.items[0].is(kBars) {
		return false
	}
	if len(told) > 1 { // "Queen: on b2, unmarked"
		return !slices.ContainsFunc(told[1:], func(it item) bool { return !it.anyOf(ofHer) })
	}
	return len(r.ahead) == 0 || hasKind(r.ahead, kColour) || hasKind(r.ahead, kQueenIs) || hasKind(r.ahead, kShe)
}

// barely reports whether a clause says no more than that something was not seen, and when.
func barely(c *clause) bool {
	now := false
	for i := range c.items {
		it := &c.items[i]
		now = now || it.is(kNow) || it.is(kDate) && it.day.today
		if !it.any5(kUnseen, kNow, kDate, kAdv, kBut) {
			return false
		}
	}
	return now
}

// soughtInVain: "Looked for the queen. Nothing."
func (r *reader) soughtInVain(c *clause) bool {
	if len(r.ahead) == 0 || len(r.ahead) > 2 {
		return false
	}
	answer := strings.ToLower(r.text[r.ahead[0].start:r.ahead[len(r.ahead)-1].end])
	return slices.Contains(r.wordsOf[nothingFound], answer) && slices.ContainsFunc(c.items, func(it item) bool { return r.isWord(&it, r.wordsOf[seeking]...) })
}

// sightings are the items by which a queen was seen and was not, each -1 where none is.
func (r *reader) sightings(c *clause, noun int) (seen, unseen int) {
	seen, unseen = -1, -1
	for i := range c.items {
		it := &c.items[i]
		if it.used {
			continue
		}
		switch {
		case it.is(kUnseen) && unseen < 0 && !r.unseenOther(c, i):
			unseen = i
		case it.is(kSeen) && i > 0 && (c.items[i-1].isWord3("neither", "never", "not") || c.items[i-1].is(kNo) && it.pause == none) && unseen < 0:
			unseen = i
		case it.is(kSeen) && seen < 0 && r.seenHere(c, i, noun) && !r.lately(c, i):
			seen = i
		}
	}
	return seen, unseen
}

// speaksOfHer reports whether the queen is what a clause is about, named in it or not.
func (r *reader) speaksOfHer(c *clause, noun, seen, unseen int) bool {
	switch {
	case noun >= 0, r.herself(c), r.shePlaced(c):
		return true
	case seen >= 0 && c.items[seen].lists.has(queenInView):
		return true
	case c.items[0].isWord2("the", "her") && c.has(kQueenIs) && r.markHeads(c):
		return true // "the mark has rubbed off altogether"
	case unseen >= 0 && r.sheLast && r.spokeOf.queen == r.sentenceNo && !c.has(kContent):
		return true // "the queen I searched but did not see"
	case unseen >= 0 && r.spokeOf.queen > 0 && r.spokeOf.queen+1 >= r.sentenceNo && barely(c):
		return true // "the queen was seen last time not found today"
	case unseen >= 0 && r.bareQNS(c, unseen), c.has(kShe) && r.soughtInVain(c):
		return true
	}
	if first := &c.items[0]; first.is(kLeaf) && r.rule(first, kLeaf).ID == "queenright" {
		return r.onlyAttributes(c) // "QR, no dot"
	}
	return r.sheLast && r.onlyAttributes(c) || seen >= 0 && r.seenAgain(c, seen)
}

// markHeads reports whether a clause begins with her mark and how it is.
func (r *reader) markHeads(c *clause) bool {
	word, _, _ := strings.Cut(c.next(0).text, " ")
	if word != "mark" && word != "dot" {
		return false
	}
	return c.next(0).is(kQueenIs) || c.next(0).is(kDot) && c.next(1).any3(kBe, kHave, kQueenIs)
}

// notToday: "saw the queen on 19 April but not today".
func (r *reader) notToday(c *clause) bool {
	if len(c.items) != 3 || !c.items[0].is(kBut) || !c.items[1].is(kNo) || r.spokeOf.queen != r.sentenceNo {
		return false
	}
	last := &c.items[2]
	return last.is(kNow) || last.is(kDate) && last.day.today
}

// unseenOther: "did not see any eggs" is said of eggs.
func (r *reader) unseenOther(c *clause, i int) bool {
	for k := i + 1; k < len(c.items) && k <= i+3; k++ {
		it := &c.items[k]
		if it.pause >= comma {
			return false // "QNS, eggs on bar 4"
		}
		if it.any6(kContent, kCell, kSign, kMite, kStage, kCellKind) && !it.is(kQueen) {
			return true
		}
		if !it.any5(kArt, kAdv, kNum, kPattern, kAmount) {
			return k == i+1 && it.is(kWord) && strings.HasSuffix(c.items[i].text, " of") // "no sign of disease"
		}
	}
	return false
}

// queenNoun finds the queen among the items, not a queen of cells or of plans.
func (r *reader) queenNoun(c *clause) (int, bool) {
	for i := range c.items {
		it := &c.items[i]
		if it.used || !it.is(kQueen) {
			continue
		}
		if i+1 < len(c.items) && c.items[i+1].pause == none && c.items[i+1].any(kCell, kCellKind) {
			continue
		}
		return i, true
	}
	return -1, false
}

// herself reports whether "she" stands for the queen here.
func (r *reader) herself(c *clause) bool {
	for i := range c.items {
		it := &c.items[i]
		if r.spokeOf.queen == r.sentenceNo && it.isWord2("whom", "who") {
			return true
		}
		if !it.is(kShe) || it.used {
			continue
		}
		if i+1 < len(c.items) && c.items[i+1].pause == none && c.items[i+1].isWord4("found", "saw", "spotted", "noticed") {
			continue // who finds is no queen
		}
		if next := c.next(i); it.text == "her" && next.any5(kContent, kStage, kAmount, kPattern, kBrood) && next.pause == none {
			continue // "found her eggs"
		}
		if r.callsVirgin(c, i) || r.sheLast || i+1 < len(c.items) && c.items[i+1].any(kSeen, kUnseen) || i > 0 && c.items[i-1].any(kSeen, kUnseen) {
			return true
		}
	}
	return false
}

// callsVirgin reports whether it is told of "she" at item i whether she is a virgin, which nobody tells
// of a hive: "she's a virgin no longer".
func (r *reader) callsVirgin(c *clause, i int) bool {
	for i++; i < len(c.items) && c.items[i].pause == none; i++ {
		if c.items[i].is(kQueenIs) {
			return strings.HasPrefix(r.value(&c.items[i], kQueenIs), "virgin")
		}
		if !c.items[i].any4(kBe, kAdv, kArt, kMaybe) {
			return false
		}
	}
	return false
}

// bareQNS reports whether a word says by itself that she was not seen.
func (r *reader) bareQNS(c *clause, i int) bool {
	text := c.items[i].text
	return text == "qns" || text == "q n s" || text == "missed her" || text == "never did see" && r.sheLast
}

// seenHere: "saw" and the like speak of the queen only where she is the object
// or the subject.
func (r *reader) seenHere(c *clause, i, noun int) bool {
	inView := c.items[i].lists.has(queenInView)
	if inView && hersOnly(c, i) || r.seesOther(c, i) {
		return false
	}
	if inView || noun < 0 {
		return inView || r.herself(c) || r.seenAgain(c, i)
	}
	if i < noun { // a verb with its object: nothing but words between
		for k := i + 1; k < noun; k++ {
			if c.items[k].any5(kContent, kCell, kSign, kBars, kMite) {
				return false
			}
		}
		return true
	}
	for k := noun + 1; k < i; k++ {
		if c.items[k].any4(kContent, kCell, kSign, kMite) {
			return false
		}
	}
	return true
}

// behindSheIs are the kinds of words that stand behind "that's her" where it is she herself.
var behindSheIs = setOf(kBars, kOn, kColour, kDot, kQueenIs, kSeen, kAnd, kThere, kPlace, kBar, kArt, kBut, kThen, kHave, kSide)

// hersOnly reports whether "that's her" at item i points at a thing of hers: "that's her third round of
// brood".
func hersOnly(c *clause, i int) bool {
	next := c.next(i)
	return strings.HasSuffix(c.items[i].text, " her") && strings.HasPrefix(c.items[i].text, "that") && next.pause == none && next.kinds != kinds{} && !next.anyOf(behindSheIs) && !next.isWord5("down", "up", "over", "right", "again")
}

// seesOther reports whether the verb of seeing at item i has an object of its own that is not the
// queen: "looked for her twice and found my glasses instead", "looked for her and found a wasp".
func (r *reader) seesOther(c *clause, i int) bool {
	k := i + 1
	if k+1 >= len(c.items) || !c.items[i].isWord4("found", "saw", "spotted", "find") || c.items[k].pause > none || c.items[k+1].pause > none {
		return false
	}
	next := &c.items[k+1]
	if c.items[k].isWord4("my", "our", "his", "their") {
		return !next.any5(kQueen, kQueenIs, kDot, kColour, kAdv)
	}
	return c.items[k].any(kArt, kNum) && next.any4(kSign, kCell, kContent, kBees) && !next.is(kQueen)
}

// seenAgain: "Queen: released today; seen later, bar 5" goes on about her, as does "She has settled
// in. Seen on bar 6."
func (r *reader) seenAgain(c *clause, i int) bool {
	if i == 0 && c.items[0].pause >= stop && r.spokeOf.she > 0 && r.spokeOf.she == r.sentenceNo-1 && c.items[0].isWord3("seen", "found", "spotted") {
		return c.next(0).text == "on" && c.next(1).is(kBars) && !c.hasAny(kContent, kCell, kSign)
	}
	return i == 0 && c.items[0].pause >= colon && r.sheLast && r.spokeOf.queen == r.sentenceNo && r.told[0].is(kQueen) && r.told[0].colon && c.items[0].isWord3("seen", "found", "spotted") && !c.hasAny(kContent, kCell, kSign)
}

// lately reports whether "she was here" tells of days gone by, as eggs show: "so she
// was here within three days".
func (r *reader) lately(c *clause, i int) bool {
	if !strings.HasPrefix(c.items[i].text, "was ") || i+1 == len(c.items) {
		return false
	}
	next := &c.items[i+1]
	return next.any3(kDur, kPast, kDate) || r.isWord(next, "within", "this week", "this", "lately", "recently", "until", "till", "up to", "in")
}

// queenDenied reports whether the words beside the noun say that she was not seen.
func (r *reader) queenDenied(c *clause, noun int) bool {
	if noun < 1 {
		if noun == 0 && len(c.items) > 1 {
			return c.items[1].is(kNot) || c.items[1].is(kNo) && len(c.items) == 2
		}
		return false
	}
	prev := &c.items[noun-1]
	if prev.is(kArt) && noun >= 2 {
		prev = &c.items[noun-2]
	}
	if prev.is(kNo) {
		prev.used = true
		return true
	}
	if noun+1 < len(c.items) {
		next := &c.items[noun+1]
		if next.is(kNot) || next.is(kNo) && r.bareNo(next) && c.items[noun].colon {
			next.used = true
			return true
		}
	}
	return false
}

// thereIs: "and there's herself".
func (r *reader) thereIs(c *clause, noun int) bool {
	if noun+2 < len(c.items) && c.items[noun+1].is(kAdv) && c.items[noun+2].is(kThere) {
		return true // "the queen also there"
	}
	if noun+1 < len(c.items) && c.items[noun+1].is(kThere) && c.items[noun+1].pause == none {
		return true // "queen here"
	}
	for k := 1; k < len(c.items); k++ {
		if c.items[k].is(kThere) && !c.items[k].isWord2("there", "here") && k > 1 && c.items[k-1].is(kBe) && c.items[k-2].is(kShe) {
			return true // "she's on it, the queen"
		}
	}
	if noun+2 < len(c.items) && c.items[noun+1].is(kBe) && c.items[noun+2].is(kThere) && !r.missedBehind(c) || strings.HasSuffix(c.items[noun].text, "here") {
		return true // "and the missus is on it", "queen right there"
	}
	if k := noun + 1; k < len(c.items) && c.items[k].text == "somewhere" {
		return false // "there is a queen somewhere, for I found eggs"
	}
	if noun >= 3 && c.items[noun-1].is(kArt) {
		noun--
	}
	return noun >= 2 && c.items[noun-1].is(kBe) && c.items[noun-2].is(kThere) || noun >= 1 && c.items[noun-1].isWord2("there's", "here's")
}

// missedBehind reports whether it is told behind a clause that she was not seen there: "the
// queen is in there but I couldn't find her".
func (r *reader) missedBehind(c *clause) bool {
	end := c.items[len(c.items)-1].start
	for k := range r.told {
		if it := &r.told[k]; it.start > end && it.start < end+40 && it.is(kUnseen) {
			return k > 1 && r.told[k-1].any4(kBut, kPron, kAnd, kMaybe) && (k+1 == len(r.told) || r.told[k+1].any(kShe, kAnd) || r.told[k+1].pause > none)
		}
	}
	return false
}

// alsoHer: "comb 4 eggs and queen, unmarked", "Bar 5: eggs; queen, green dot", "On six eggs, and the
// queen".
func (r *reader) alsoHer(c *clause, noun int) bool {
	if !r.headedBars && !r.placeFirst() || !r.sameSentence || len(r.bars) != 1 || !endsOnHer(c.items, noun) {
		return false
	}
	return noun > 0 && noun <= 2 && c.items[0].any(kAnd, kArt) && allOf(c.items[:noun], setOf(kAnd, kArt)) || noun == 0 && !c.items[0].colon && c.items[0].pause <= colon && carriedOnly(c.items[1:])
}

func (r *reader) closesHere(c *clause, k int) bool {
	return k+1 >= len(c.items) || c.items[k+1].pause >= comma
}

// shePlaced reports whether "she" is put on a bar: "she was on five".
func (r *reader) shePlaced(c *clause) bool {
	if !c.has(kBars) {
		return r.sheIsHere(c)
	}
	for i := range c.items {
		if c.items[i].is(kShe) || r.sheLast && r.spokeOf.queen == r.sentenceNo && c.items[i].text == "who" {
			for k := i + 2; k < len(c.items) && k <= i+5; k++ {
				if c.items[k].any4(kContent, kCell, kHave, kFrom) {
					break // "she was hot from the first bar"
				}
				if c.items[k].is(kBars) && (c.items[k-1].any3(kOn, kBe, kArt) || c.items[k-1].is(kOf) && c.items[k-2].any3(kSide, kOther, kPlace)) {
					return true
				}
			}
		}
	}
	return false
}

func (r *reader) useQueen(c *clause, noun int) {
	if noun >= 0 {
		c.items[noun].used = true
	}
}

// notSeen writes that she was not seen, unless she was elsewhere.
func (r *reader) notSeen(c *clause, noun, unseen int) {
	r.sheLast = true
	items := r.pick(c, noun, unseen)
	if noun >= 0 && noun > 0 && c.items[noun-1].is(kNo) {
		items = append(items, &c.items[noun-1])
	}
	if old, ok := r.cur.get("queen.seen"); ok && old == "yes" {
		for _, it := range items {
			it.used = true
		}
		return // seen elsewhere: "no queen on this bar" says nothing more
	}
	cue := ""
	if unseen >= 0 {
		cue = r.text[c.items[unseen].start:c.items[unseen].end]
	}
	r.leaf("queen.seen", "no", "queen", cue, c.doubt, items...)
}

func (r *reader) pick(c *clause, indices ...int) []*item {
	out := r.these()
	for _, i := range indices {
		if i >= 0 {
			out = append(out, &c.items[i])
		}
	}
	return out
}

// wasSeen writes that she was seen, and on which bar.
func (r *reader) wasSeen(c *clause, noun, seen int) {
	r.sheLast = true
	items := r.pick(c, noun, seen)
	if old, ok := r.cur.get("queen.seen"); ok && old == "no" {
		r.cur.drop("queen.seen")
	}
	if len(items) == 0 {
		for i := range c.items {
			if c.items[i].is(kShe) {
				items = append(items, &c.items[i])
				break
			}
		}
	}
	r.leaf("queen.seen", "yes", "queen", "", c.doubt, items...)
	if noun >= 0 && r.value(&c.items[noun], kQueen) == "virgin=yes" {
		r.leaf("queen.virgin", "yes", "virgin", "", c.doubt, &c.items[noun])
	}
	r.queenBar(c, max(noun, seen))
}

// saysHere reports whether "here" stands right behind the word for her: "b6 eggs. Q
// here", "she's here".
func (r *reader) saysHere(c *clause, her int) bool {
	for k := max(her, 0); k < len(c.items) && k <= max(her, 0)+2; k++ {
		if c.items[k].isWord3("here", "right here", "on this") {
			return true
		}
	}
	return false
}
