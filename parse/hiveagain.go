package parse

import (
	"slices"
	"strings"
)

// A hive that was named with the word for it may be called by its name alone later: "back
// to canal", "gave her a bar from mill".

// namedAgain makes references of the names of hives told before, where words stand before
// them that turn to a hive, or that tell where something went or came from.
func (r *reader) namedAgain(items []item) {
	for i := 1; i < len(items); i++ {
		it, lead := &items[i], &items[i-1]
		if it.pause > none || !lead.anyOf(leadingBack) && lead.text != "the" {
			continue // as most words
		}
		if lead.anyOf(leadingBack) && r.turnsBack(items, i-1) && r.hiveOfNumber(items, i) {
			*it = *r.asHive(r.merged(items, i, i+1, nil), formatNumber(it.n.lo))
			continue
		}
		k := i - 1
		if k > 0 && lead.text == "the" && lead.pause == none && r.leftThere(items, i+1) {
			k-- // "unite them with the elm"
			lead = &items[k]
		}
		if !lead.anyOf(leadingBack) || !r.nameWord(it) || it.any(kSide, kPlace) {
			continue
		}
		name := r.calledBefore(items[:i], it.text)
		if name == "" || !r.turnsBack(items, k) && !(lead.any(kTo, kFrom) || lead.text == "with") {
			continue
		}
		if !r.turnsBack(items, k) && !r.deedBefore(items, k) {
			continue // "pollen from the clover"
		}
		*it = *r.asHive(r.merged(items, i, i+1, nil), name)
	}
}

// leftThere reports whether what is said of a hive stops before item i: at a pause, or at what tells
// a day or goes on.
func (r *reader) leftThere(items []item, i int) bool {
	return i == len(items) || items[i].pause > none || items[i].any3(kDate, kAnd, kThen) || items[i].text == "on"
}

// hiveOfNumber reports whether a bare number is that of another hive told before, and of none of
// the bars in hand: "back to nine for a second".
func (r *reader) hiveOfNumber(items []item, i int) bool {
	it := &items[i]
	if !barNumber(it) || it.n.hi > it.n.lo || it.n.ordinal || i+1 < len(items) && items[i+1].pause == none && items[i+1].any3(kBar, kUnit, kNum) {
		return false
	}
	name, inHand := formatNumber(it.n.lo), r.cur.hive
	for k := range items[:i] {
		if items[k].is(kName) {
			inHand = items[k].name
		}
	}
	return r.byHive[name] != nil && inHand != name && !slices.Contains(r.bars, int(it.n.lo))
}

// headedAgain makes references of the names of hives that the page tells with the word for
// one, where they stand alone at the head of a sentence and it goes on about a hive: "we moved
// bar four to the waffle hive. Waffle was an empty box".
func (r *reader) headedAgain(items []item) {
	for i := 0; i+2 < len(items); i++ {
		it, be := &items[i], &items[i+1]
		if !be.any(kBe, kHave) || be.pause > none || !it.any(kWord, kPlant) || !r.nameWord(it) || it.lists.has(noNames) || it.lists.has(softNames) {
			continue
		}
		if i > 0 && it.pause < stop && !(items[i-1].any(kAnd, kThen) && it.pause == none && items[i-1].pause >= stop) {
			continue
		}
		name := strings.ToLower(it.text)
		if !slices.Contains(r.hivesOfPage().before, name) || !r.faresAs(items[i+2:], it.is(kPlant)) {
			continue
		}
		*it = *r.asHive(r.merged(items, i, i+1, nil), name)
	}
}

// labelledAgain makes references of the names of hives that the page tells with the word for one,
// where they label what is told or it is their turn: "the pink hive and the grey hive. Pink first,
// calm. Grey: no eggs".
func (r *reader) labelledAgain(items []item) []item {
	for i := 0; i < len(items); i++ {
		from := i
		if items[i].text == "the" && i+1 < len(items) && items[i+1].pause == none {
			from++ // "The grey: …"
		}
		it := &items[from]
		if i > 0 && items[i].pause < stop || it.is(kName) || !it.any6(kWord, kPlant, kColour, kPlace, kSide, kFixture) || it.lists.has(noNames) {
			continue
		}
		end := r.turnEnd(items, from)
		if end == from || it.any3(kPlace, kSide, kFixture) && !(i == 0 && items[end-1].colon) {
			continue // "Bar 4. Top: honey. Bottom: brood."
		}
		name := r.strings.lower(r.text[it.start:items[end-1].end])
		if !r.hiveTold(items[:i], name) && !(end == i+1 && slices.Contains(r.hivesOfPage().before, name)) {
			continue
		}
		colon := items[end-1].colon
		items[i] = *r.asHive(r.merged(items, i, end, nil), name)
		items[i].colon = colon
		items = slices.Delete(items, i+1, end)
	}
	return items
}

// turnEnd is the end of a label of up to three words at item i, before a colon or a word of its
// turn, "Grey:", "Pear tree next."; i where there is none.
func (r *reader) turnEnd(items []item, i int) int {
	for k := i; k < len(items) && k < i+3 && (k == i || items[k].pause == none && items[k].any3(kWord, kPlant, kColour)); k++ {
		if items[k].colon {
			return k + 1
		}
		if k+1 < len(items) && items[k+1].pause == none && items[k+1].isWord3("first", "next", "last") && (k+2 == len(items) || items[k+2].pause > none) {
			return k + 1
		}
	}
	return i
}

// hiveTold reports whether a hive of a name was told before some items or in them.
func (r *reader) hiveTold(items []item, name string) bool {
	return r.byHive[name] != nil || slices.ContainsFunc(items, func(it item) bool { return it.is(kName) && it.name == name })
}

// faresAs reports whether words behind "is" or "has" tell of a hive; of a plant only what no
// plant is or has.
func (r *reader) faresAs(items []item, plant bool) bool {
	for k := 0; k < len(items) && k < 5 && (k == 0 || items[k].pause <= comma); k++ {
		it := &items[k]
		if it.any4(kTemper, kStrength, kCell, kQueen) || it.is(kContent) && (!plant || hasKind(items[k:min(k+4, len(items))], kBars)) || it.isWord6("weak", "strong", "queenless", "queenright", "quiet", "busy") {
			return true
		}
		if !plant && it.any3(kState, kBees, kStores) || it.isWord4("box", "hive", "nuc", "colony") {
			return true
		}
		if it.is(kOn) {
			return false
		}
	}
	return false
}

// movesOn makes "then" of a verb that turns the talk to the next hive: "moving on to the fig
// hive"; bars that were moved stand before or behind it.
func (r *reader) movesOn(items []item) {
	for i := 2; i < len(items); i++ {
		if !items[i].is(kName) {
			continue
		}
		k := i - 1
		if items[k].is(kArt) {
			k--
		}
		if k == 0 || !items[k].is(kTo) || items[k].pause > none {
			continue
		}
		verb := k - 1
		if r.wentOver(items, verb) {
			items[verb].kinds, items[verb].says, items[verb].lists = setOf(kThen), senseless, 0
			items[k].kinds, items[k].says = setOf(kThen), senseless
			continue
		}
		if verb > 0 && items[verb].isWord5("on", "along", "over", "across", "down") && items[verb].pause == none {
			verb--
		}
		if verb == k-1 && !items[verb].isWord3("moving on", "moved on", "move on") || verb < k-1 && !items[verb].isWord3("moving", "move", "moved") {
			continue
		}
		for ; verb <= k; verb++ {
			items[verb].kinds, items[verb].says = setOf(kThen), senseless
		}
	}
}

// wentOver reports whether item i tells that the speaker, and no bar, went on to another hive: "then I
// went over to hive three", "went across to the plum hive".
func (r *reader) wentOver(items []item, i int) bool {
	it := &items[i]
	if !r.isWord(it, r.wordsOf[crossingOver]...) {
		return false
	}
	if i == 0 || it.pause >= stop {
		return it.text != "moved over" && it.text != "moved across"
	}
	prev := &items[i-1]
	return it.pause == none && (prev.isWord2("i", "we") || prev.is(kThen) && (i == 1 || prev.pause >= stop || items[i-2].any3(kTemper, kContent, kSign)))
}

// leadingBack are the kinds of words that can stand before a hive named again.
var leadingBack = setOf(kTo, kFrom, kHave, kOn)

// turnsBack reports whether the words that end with item k turn the talk to the hive
// behind them: "back to", "back in", "as for", "on to".
func (r *reader) turnsBack(items []item, k int) bool {
	lead := &items[k]
	if lead.text == "back to" {
		return true
	}
	if k == 0 || lead.pause > none {
		return false
	}
	before := &items[k-1]
	return lead.any(kOn, kTo) && before.isWord3("back", "return", "returning") || lead.text == "for" && before.text == "as" || lead.text == "to" && before.isWord2("on", "over")
}

// calledBefore is the hive that was named by a word, or whose name ends on it; "" for none.
func (r *reader) calledBefore(items []item, word string) string {
	for k := len(items) - 1; k >= 0; k-- {
		if items[k].is(kName) && endsOn(items[k].name, word) {
			return items[k].name
		}
	}
	if r.byHive[word] != nil {
		return word
	}
	for _, b := range r.all {
		if endsOn(b.hive, word) {
			return b.hive
		}
	}
	return ""
}

// endsOn reports whether a word is a name, or the last of its words.
func endsOn(name, word string) bool {
	rest, ends := strings.CutSuffix(name, word)
	return ends && (rest == "" || strings.HasSuffix(rest, " "))
}
