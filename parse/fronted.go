package parse

import "slices"

// fronted turns what I did to what stands before me into what was done to it: "two
// further cells I pinched out", "two more bars I have added".
func (r *reader) fronted(items []item) {
	from := 0 // where the phrase begins
	for i := range items {
		if items[i].pause > none {
			from = i
		}
		if i == from || !items[i].is(kPron) {
			continue
		}
		switch object := objectPhrase(items[from:i]); {
		case object && items[i].isWord2("i", "we") && r.didIt(items, i+1) && !(hasKind(items[from:i], kFixture) && hasKind(items[i+1:min(i+3, len(items))], kState)): // but "the entrance I reduced" is read as it stands
			items[i].kinds, items[i].says, items[i].text = setOf(kBe), senseless, "were"
		case (object || i == from+1 && items[from].any(kFixture, kQueen)) && r.mustDo(items, i+1):
			orderAgain(items[from:i+3], i-from)
		}
	}
}

// frontedSight turns what I saw on bars, where it stands before me, into what was seen there:
// "one sealed cell I found on bar 6".
func (r *reader) frontedSight(items []item) {
	from := 0 // where the phrase begins
	for i := range items {
		if items[i].pause > none {
			from = i
		}
		if i > from && items[i].is(kPron) && items[i].isWord2("i", "we") && seenOnBars(items, i+1) && isFinding(items[from:i]) {
			items[i].kinds, items[i].says, items[i].text = setOf(kBe), senseless, "were"
			for k := i + 2; k < len(items) && k <= i+3 && !items[k].is(kOn); k++ {
				if items[k].is(kBut) {
					items[k].kinds, items[k].says = setOf(kAdv), senseless // "found only on bar 6"
				}
			}
		}
	}
}

// seenOnBars reports whether having seen it on bars is told from item i on: "found on bar 6",
// "have found only on bar 6".
func seenOnBars(items []item, i int) bool {
	if i+1 < len(items) && items[i].is(kHave) && items[i].pause == none {
		i++
	}
	if i+1 >= len(items) || !items[i].is(kSeen) || items[i].pause > none {
		return false
	}
	on := i + 1
	if items[on].isWord2("only", "just") && items[on].pause == none && on+1 < len(items) {
		on++
	}
	bars := on + 1
	if bars < len(items) && items[bars].is(kArt) {
		bars++ // "on the bars 5 and 6"
	}
	return bars < len(items) && items[on].is(kOn) && items[bars].is(kBars) && items[on].pause == none
}

// isFinding reports whether items name something found and nothing beside it.
func isFinding(items []item) bool {
	found := false
	for k := range items {
		if !items[k].anyOf(beforeBars) {
			return false
		}
		found = found || items[k].any3(kContent, kCell, kSign)
	}
	return found
}

// mustDo reports whether a verb for what is to be done follows at item i behind "must",
// "will" and the like, with no object but the one before it.
func (r *reader) mustDo(items []item, i int) bool {
	if i+1 >= len(items) || !items[i].any(kWill, kPlan) || !items[i+1].is(kDo) || items[i+1].pause > none || r.rule(&items[i+1], kDo).Form != "todo" {
		return false
	}
	i++
	return r.objectless(items, i) || items[i+1].is(kPlan) || i+2 < len(items) && items[i+1].is(kOn) && items[i+2].is(kDate)
}

// orderAgain puts an object of n items behind its subject and verb: "the entrance I must
// reduce".
func orderAgain(items []item, n int) {
	object := slices.Clone(items[:n])
	pause := object[0].pause
	copy(items, items[n:])
	copy(items[len(items)-n:], object)
	items[0].pause, items[len(items)-n].pause = pause, none
}

// frontedStores puts what they have enough of behind how much they have: "food they have
// enough", "of pollen they have plenty".
func (r *reader) frontedStores(items []item) {
	for i := 0; i+3 < len(items); i++ {
		what := &items[i]
		if !what.any(kStores, kContent) || !items[i+1].any(kPron, kShe) || !items[i+2].is(kHave) || !items[i+3].any(kAmount, kStored) || items[i+1].pause > none || items[i+2].pause > none || items[i+3].pause > none {
			continue
		}
		if i > 0 && what.pause < comma && !items[i-1].is(kName) && !(items[i-1].is(kOf) && (i == 1 || items[i-1].pause >= comma)) || i+4 < len(items) && items[i+4].pause < comma && !items[i+4].any4(kAnd, kBut, kAdv, kThen) {
			continue
		}
		moved, pause := *what, what.pause
		copy(items[i:], items[i+1:i+4])
		items[i+3] = moved
		items[i].pause, items[i+3].pause = pause, none
	}
}

// didIt reports whether a verb for what is done follows at item i, with no object but
// the one before it.
func (r *reader) didIt(items []item, i int) bool {
	if i < len(items) && items[i].is(kHave) {
		i++
	}
	if i >= len(items) || !items[i].is(kDo) || items[i].any(kSeen, kStage) || items[i].pause > none || r.rule(&items[i], kDo).Form != "done" {
		return false
	}
	return r.objectless(items, i) || items[i+1].isWord4("forward", "forwards", "back", "backwards") || toHive(items, i+1)
}

// toHive reports whether "to" and a hive by its name stand at item i: "two bars I gave to the quince
// hive".
func toHive(items []item, i int) bool {
	if !items[i].is(kTo) || items[i].pause > none {
		return false
	}
	if i++; i < len(items) && items[i].is(kArt) {
		i++
	}
	return i < len(items) && items[i].is(kName)
}

// fedOn are the kinds of words for what a colony lives on.
var fedOn = setOf(kStores, kContent)

// thing are the kinds of words for what deeds are done to, phrased those that
// stand with them.
var (
	thing   = setOf(kBar, kCell, kFixture)
	phrased = setOf(kArt, kNum, kAdv, kOf, kContent, kCellKind, kStage, kMeasure, kComb, kWord, kAmount, kOn, kBars, kOther).or(thing)
	fronts  = setOf(kArt, kNum, kCell, kOther, kFixture)
)

// objectPhrase reports whether items are one phrase for what deeds are done to.
func objectPhrase(items []item) bool {
	if !items[0].anyOf(fronts) {
		return false
	}
	things := false
	for i := range items {
		if !items[i].anyOf(phrased) || items[i].any(kDo, kBe) {
			return false
		}
		things = things || items[i].anyOf(thing)
	}
	return things
}
