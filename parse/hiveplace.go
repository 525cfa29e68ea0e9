package parse

import (
	"slices"
	"strings"
)

// What is found may be told before the hive that it was found in: "BIAS in hive two",
// "the queen of Juniper was on bar four". Such a hive is moved to the head of what is
// told of it, where hives are read.

// inHives are the kinds of what is found in a hive or about it.
var inHives = setOf(kContent, kCell, kQueen, kSign, kMite, kBees, kStores, kFixture, kBring, kTemper, kLeaf, kBars, kStrength)

// ofPhrases are the kinds of words in what is found, told without a verb.
var ofPhrases = setOf(kContent, kStage, kCell, kCellKind, kQueen, kSign, kMite, kBees, kStores, kFixture, kBars, kBar, kNum, kArt, kNo, kSeen, kUnseen, kOn, kOf, kAmount, kThere, kSide, kPlace, kPattern, kAdv, kComb, kColour, kBring, kSubstance, kLeaf)

// unplaced are the kinds of words that let a hive behind them place nothing.
var unplaced = setOf(kIf, kAsk, kSay, kTheirs, kUnsure, kPast, kName)

// placeHives moves the hives of a line that stand behind what was found in them.
func (r *reader) placeHives(items []item) []item {
	for i := 1; i < len(items); i++ {
		if !items[i].is(kName) {
			continue
		}
		if from := r.visitFrom(items, i); from >= 0 {
			hive := items[i]
			hive.pause = items[from].pause
			items[from].pause = comma
			copy(items[from+1:i+1], items[from:i])
			items[from] = hive
			continue
		}
		lead := leadBefore(items, i)
		led := items[i].several() && ledAway(items[i].text)
		if led {
			lead = i
		}
		if lead < 1 || !led && !items[lead].any3(kOn, kOf, kFrom) || !items[i].several() && (r.argument(items, i) || r.lookedAt(items, i)) {
			continue
		}
		from := r.foundFrom(items, lead)
		if from < 0 {
			continue
		}
		hive := items[i]
		hive.pause = items[from].pause
		items[from].pause = comma
		items = slices.Delete(items, lead, i+1)
		items = slices.Insert(items, from, hive)
		i = lead
	}
	return items
}

// visitFrom is where what tells of the last visit to the hive at item i begins: "I last opened
// hive three on the ninth"; -1 where nothing does.
func (r *reader) visitFrom(items []item, i int) int {
	last := leadBefore(items, i)
	if last < 0 || !items[last].is(kDo) || items[i].several() || r.value(&items[last], kDo) != "inspect" || !tellsLast(items[last].text) {
		return -1
	}
	from := last
	if from > 0 && items[from].pause == none && items[from-1].is(kPron) {
		from--
	}
	if items[from].pause < stop && from > 0 {
		return -1
	}
	return from
}

// leadBefore is the item before the hive at item i, over an article; -1 where a pause
// or nothing stands there.
func leadBefore(items []item, i int) int {
	k := i - 1
	for k >= 0 && items[k].is(kArt) && items[k+1].pause == none {
		k--
	}
	if k < 0 || items[k+1].pause > none || items[k].pause > none {
		return -1
	}
	return k
}

// foundFrom is where what was found in the hive behind a lead-in begins; -1 where nothing
// is told that a hive can be the place of.
func (r *reader) foundFrom(items []item, lead int) int {
	from, found := lead, false
	other := kindBefore(items, lead, lead, stop, setOf(kName))
	for k := lead - 1; k >= 0; k-- {
		it := &items[k]
		if it.anyOf(unplaced) || it.is(kDo) && items[lead].is(kFrom) {
			return -1
		}
		if it.any(kBut, kThen) || r.ofWeather(it) && (items[k+1].pause > none || items[k+1].any(kAnd, kWord)) || other && !it.anyOf(ofPhrases) && !(it.is(kBe) && k > 0 && items[k-1].is(kThere)) {
			break
		}
		from, found = k, found || it.anyOf(inHives)
		if it.pause >= stop || it.pause >= comma && other {
			break
		}
	}
	if !found {
		return -1
	}
	return from
}

// ofWeather reports whether an item is of the weather.
func (r *reader) ofWeather(it *item) bool {
	rule := r.rule(it, kLeaf)
	return it.any(kSky, kWind) || rule != nil && strings.HasPrefix(rule.ID, "temperature")
}

// noneElsewhere puts what was told of one hive behind the "none" that tells of another: "no queen cells
// in hive two, none in hive three".
func (r *reader) noneElsewhere(items []item) []item {
	var thing *item
	for i := 0; i+2 < len(items); i++ {
		switch it := &items[i]; {
		case it.any3(kCell, kSign, kContent):
			told := *it
			thing = &told
		case thing != nil && it.text == "none" && items[i+1].text == "in" && items[i+2].is(kName):
			it.kinds, it.says, it.pause = setOf(kNo), r.denial, max(it.pause, comma)
			told := *thing
			told.pause = none
			items = slices.Insert(items, i+1, told)
			i++
		}
	}
	return items
}
