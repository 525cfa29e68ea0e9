package parse

import "strings"

var (
	// placedBehind are the kinds of what is told before the bars that it is on.
	placedBehind = setOf(kContent, kCell, kSign, kSeen, kQueen, kQueenIs, kDot, kPattern, kPlace)
	// leadToBars are the kinds of words that the bars behind them belong to.
	leadToBars = setOf(kOn, kOf, kFrom, kTo, kAfter, kFore, kTween, kDo, kIf, kAsk, kUnsure, kPlan)
	// hangsThere are the kinds of what can be on a bar that is named behind it.
	hangsThere = setOf(kContent, kCell, kSign, kQueen, kSeen, kUnseen, kComb, kShe, kDo, kNo, kMite, kPattern, kStage, kLeaf, kMaybe)
)

// heads reports whether a reference to bars begins what is said of them; if
// not, it says where something before it was.
func (r *reader) heads(items []item, i int) bool {
	if i == 0 {
		return true
	}
	prev := &items[i-1]
	if items[i].pause == comma && prev.anyOf(hangsThere) && r.inBrackets(&items[i]) {
		return false // "2 charged (b5)"
	}
	if items[i].pause == none && prev.is(kAsk) && (r.isWord(prev, "shall we") || i > 1 && prev.is(kSeen) && items[i-2].any3(kContent, kCell, kQueen)) {
		return true // "brood is there bar seven …"
	}
	if i > 1 && items[i-2].is(kSame) && r.isWord(prev, "as") {
		return false // "the same as five"
	}
	if items[i].pause == none && (prev.is(kSame) && strings.Contains(prev.text, "so ") || r.exceptAt(prev) && prev.text != "but") {
		return false // "so are bars six and seven", "except bar six"
	}
	if prev.is(kYes) && i > 1 {
		prev = &items[i-2]
	}
	if prev.colon && prev.any6(kContent, kCell, kSign, kQueen, kSeen, kComb) && !r.findingBehind(items, i+1) {
		return false // "larvae: bar six"
	}
	if prev.is(kBe) && i > 1 && items[i-2].any(kContent, kQueen) && r.closed(items, i) {
		return false // "the brood nest is bars four to six"
	}
	if items[i].pause == none && prev.any3(kContent, kCell, kStage) && r.closed(items, i) && r.segmentFinding(items, i) {
		return false // "eggs on bar four, sealed brood bars five and six", "eggs bar 4, sealed bars 5-6"
	}
	if items[i].pause == none && prev.is(kContent) && i+1 < len(items) && items[i+1].any3(kPattern, kSide, kPlace) && len(items[i].bars) > 2 && r.postposed(items, i) {
		return false // "pollen on five then it's capped brood six to nine good and solid"
	}
	if items[i].pause == none && prev.is(kContent) && i+2 < len(items) && items[i+1].is(kAnd) && items[i+2].any3(kArt, kQueen, kShe) && r.postposed(items, i) {
		return false // "eggs on four and five sealed brood six through eight and the queen's on five"
	}
	if prev.any3(kCell, kSign, kContent) && items[i].pause == comma && r.closed(items, i) && !r.barBefore(items, i) && i > 0 {
		return false // "one sealed cell, bar five."
	}
	if items[i].pause == none && prev.is(kContent) && howMuchBehind(items, i) && !r.barBefore(items, i) {
		return false // "capped brood bars 7 and 8 both sides"
	}
	if prev.any(kStage, kCellKind) && items[i].pause == comma && r.closed(items, i) && !r.barBefore(items, i) && (labelledCells(items[:i]) || prev.pause == none && i > 1 && items[i-2].is(kCell)) {
		return false // "Queen cells: 2, sealed, bar 8", "2 queen cells with jelly, bar 8"
	}
	if prev.any4(kSeen, kQueen, kQueenIs, kDot) && items[i].pause == comma && r.closed(items, i) {
		return false // "queen still there, bar five, white mark"
	}
	if items[i].pause == none && prev.any(kContent, kCell) && r.shortRef(&items[i]) && r.postposed(items, i) {
		return false
	}
	if items[i].pause == none && prev.is(kContent) && r.postposed(items, i) && r.eachBehind(items, i) {
		return false // "eggs bar three open brood bars three and four"
	}
	if items[i].pause >= colon {
		return true
	}
	if prev.any5(kAnd, kThen, kBut, kAdv, kArt) && i >= 2 && items[i].pause == none {
		if items[i-2].any(kDo, kBars) && prev.is(kArt) {
			return false
		}
		if prev.is(kAnd) && items[i-2].is(kBars) && !r.heads(items, i-2) {
			return r.ownVerb(items, i) // "follower behind bar nine, and bar nine is bare"
		}
		if !prev.is(kArt) {
			return true
		}
		if items[i-2].any(kOn, kFrom) {
			return r.frontedBar(items, i-2)
		}
		prev = &items[i-2]
	}
	if prev.is(kComb) && items[i].pause == none && strings.HasSuffix(prev.text, "off") {
		return false // "one comb had dropped off bar eight"
	}
	if items[i].pause == none && prev.is(kSeen) && endsOnPlace(prev.text) {
		return false // "strolling across bar four"
	}
	if items[i].pause == none && prev.is(kSeen) && i+1 < len(items) && items[i+1].any5(kNo, kShe, kBees, kPron, kTemper) {
		return false // "queen seen bar six no queen cells"
	}
	if items[i].pause == none && prev.anyOf(placedBehind) && r.closed(items, i) && !r.barBefore(items, i) {
		return false
	}
	if r.isWord(prev, "back to", "on to") && !deedNear(items[:i-1]) {
		return true // "bar one honey back to bar five"
	}
	if items[i].pause == none && prev.anyOf(leadToBars) {
		return prev.any(kOn, kFrom) && r.frontedBar(items, i-1)
	}
	return true
}

// ownVerb reports whether the bar at item i is the subject of a verb that stands right
// behind it, and what came before is not.
func (r *reader) ownVerb(items []item, i int) bool {
	next := i + 1
	if next == len(items) || items[next].pause > none || len(items[i].bars) > 1 {
		return false
	}
	return r.isWord(&items[next], "is", "was", "'s", "has", "had", "holds", "contains", "looks") || items[i-1].pause == comma && items[next].any(kBe, kHave)
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
	case "on", "across", "over", "about", "along":
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
	if i+1 < len(items) && items[i+1].pause == none && r.isWord(&items[i+1], "only", "too", "as well", "again") {
		i++ // "capped brood bars 4 and 5 only"
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
	if on > 0 && items[on-1].is(kAnd) {
		pause = max(pause, items[on-1].pause)
	}
	if pause > none && (r.findingBehind(items, on+2) || on+3 < len(items) && items[on+1].is(kArt) && r.findingBehind(items, on+3)) {
		return true // "eggs on bar three, on bar four sealed brood"
	}
	for k := on - 1; k >= 0; k-- {
		it := &items[k]
		if it.is(kBars) && r.heads(items, k) && items[on].pause > none {
			return true
		}
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

// lookedAt: "I'll look at hive three again", "clean the floor of the yard hive on
// Sunday", "take honey from the yard hive on Sunday" name the hive inside the plan.
func (r *reader) lookedAt(items []item, i int) bool {
	k := i - 1
	for k >= 0 && (items[k].any3(kArt, kOn, kFrom) || r.isWord(&items[k], "into")) && items[k+1].pause == none {
		k--
	}
	if k > 1 && items[k].is(kOf) && items[k-1].is(kFixture) && items[k].pause == none && items[k+1].pause == none {
		k -= 2
	}
	return k >= 0 && k < i-1 && items[k].is(kDo) && r.rule(&items[k], kDo).Form == "todo"
}

// argument reports whether a hive's name is part of what is said of another:
// moved to hive two, united with hive nine, from hive six.
func (r *reader) argument(items []item, i int) bool {
	k := i - 1
	for k >= 0 && items[k].any(kArt, kAdv) && items[k+1].pause == none {
		k--
	}
	if k < 0 || items[k+1].pause >= stop {
		return false
	}
	prev := &items[k]
	text := prev.text
	switch {
	case r.named && items[i].name == r.cur.hive && prev.is(kDo):
		return true // "we will inspect hive 5 again on 7 June", of hive 5
	case prev.is(kOn) && k > 0 && items[k-1].is(kDo) && r.rule(&items[k-1], kDo).Value == "inspect":
		return false
	case text == "back to" || k > 0 && r.isWord(&items[k-1], "back"):
		return false
	case text == "than", text == "like":
		return true
	case text == "of" && k > 0 && !items[k-1].any5(kBar, kBars, kBees, kContent, kNum):
		return false // "the side of the plum hive"
	case r.named && prev.is(kFrom) && k > 0 && prev.pause == none && (items[k-1].any4(kBar, kBars, kBees, kQueen) || k > 2 && items[k-1].is(kContent) && items[k-2].is(kOf) && items[k-3].is(kBar)):
		return true // "three bars from hive eight went in"
	case prev.is(kFrom) && r.byHive[items[i].name] != nil && r.planBefore(items, k):
		return true // "harvest from hive 2 next week", said of hive 3
	case prev.any(kTo, kFrom), text == "with", text == "of", text == "for", text == "onto":
		return r.deedBefore(items, k)
	}
	if !prev.is(kDo) {
		return false
	}
	switch hive := deedTraits[r.rule(prev, kDo).Value].hive; {
	case hive == joinedTo:
		return true
	case !r.named:
		return false
	case hive == lookedInto, hive == tendedTo, hive == openedAt:
		return r.toBeDoneTo(items, i, prev)
	}
	return true
}

// toBeDoneTo reports whether a verb of what is to be done takes another hive of the note
// for its object: "must feed hive 2 on Sunday", said of hive 3.
func (r *reader) toBeDoneTo(items []item, i int, verb *item) bool {
	return r.byHive[items[i].name] != nil && r.rule(verb, kDo).Form == "todo" && !r.twofold(verb)
}

// planBefore reports whether a harvest that is to come is told before item k.
func (r *reader) planBefore(items []item, k int) bool {
	harvest := false
	for k--; k >= 0; k-- {
		harvest = harvest || items[k].is(kDo) && r.rule(&items[k], kDo).Value == "harvest"
		if items[k].any(kPlan, kWill) {
			return harvest
		}
		if items[k].pause >= stop {
			return false
		}
	}
	return false
}

func (r *reader) deedBefore(items []item, k int) bool {
	into := r.isWord(&items[k], "into")
	for ; k >= 0; k-- {
		if items[k].is(kDo) {
			for rule := range r.senses(&items[k]) {
				switch {
				case deedTraits[rule.Value].carries:
					return true
				case rule.Value == "split":
					return into
				}
			}
		}
		if items[k].pause >= stop || items[k].is(kName) && !(k > 0 && items[k-1].any(kDo, kArt)) {
			return false
		}
	}
	return false
}

// inBrackets reports whether brackets hold the item and nothing else.
func (r *reader) inBrackets(it *item) bool {
	return it.start > 0 && int(it.end) < len(r.text) && r.text[it.start-1] == '(' && r.text[it.end] == ')'
}
