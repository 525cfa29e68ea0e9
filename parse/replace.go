package parse

import (
	"slices"
	"strings"
)

// What is said in place of what a speaker takes back: which of the words behind "no" or "I mean"
// it is, and which before them it replaces.

// slots are the kinds by which a repair is aligned, most telling first.
var slots = []kind{kBars, kName, kMeasure, kDate, kNum, kColour, kSky, kWind, kContent, kCell, kStage, kComb, kPattern, kSide, kPlace, kTemper, kStrength, kStored, kSubstance}

// sureSlots are those that a bare "no" can repair; elsewhere it denies. Of
// deeds it repairs the one right before it: "closed no reduced the entrance".
var sureSlots = []kind{kBars, kName, kMeasure, kDate, kNum, kColour, kDo}

func slotOf(it *item, of []kind) (kind, bool) {
	for _, s := range of {
		if it.is(s) && !(s == kNum && it.n.article) && !(s == kStored && it.is(kNo)) {
			return s, true
		}
	}
	return noKind, false
}

// reach is how many items back a repair looks for what it replaces.
const reach = 12

// replace aligns the first slot behind the cue with the last of its kind
// before it.
func (r *reader) replace(items []item, cue, from int, bare bool) ([]item, bool) {
	r.readCups(items[from:min(len(items), from+4)], items[max(0, cue-3):cue])
	to, s := r.correction(items, cue, from, bare)
	if s == noKind {
		return items, false
	}
	at := r.replaced(items, cue, to, s, bare)
	if at < 0 {
		return items, false
	}
	old, fresh := &items[at], items[to]
	if all := howManyOf(fresh.text); !fresh.is(kNum) && all > 0 {
		fresh.kinds, fresh.says, fresh.n = setOf(kNum), senseless, quantity{lo: all}
	}
	if s == kNum && old.is(kLeaf) && !old.is(kBars) { // "bees on four bars, no, make that five bars"
		old.n, old.mended = fresh.n, true
		if to+1 < len(items) && items[to+1].is(kBar) && items[to+1].pause == none && !items[to+1].is(kBars) {
			to++
		}
		return slices.Delete(items, cue, to+1), true
	}
	fresh, s = r.inPlaceOf(old, fresh, s)
	if s == kCell && r.value(&fresh, kCell) == "cup" { // a cup has no stage
		for at > 0 && items[at-1].is(kStage) && old.pause == none {
			items = slices.Delete(items, at-1, at)
			at, cue, to = at-1, cue-1, to-1
			old = &items[at]
		}
	}
	fresh.mended = true
	fresh.pause = old.pause
	fresh.marks = fresh.marks&^bullet | old.marks&bullet
	if s == kContent && to-1 > cue && items[to-1].is(kAmount) { // "pollen on bar two, no, sorry, lots of nectar"
		items[to], items[to-1].pause = fresh, old.pause
		items[to].pause = none
		return slices.Concat(items[:at], items[at+1:cue], items[to-1:]), true
	}
	if (s == kBars || s == kName) && r.findingAhead(items, to+1) {
		return append(items[:at], append([]item{fresh}, items[to+1:]...)...), true
	}
	items[at] = fresh
	if bare && items[cue-1].is(kAsk) {
		cue-- // "is it", of what was said first
	}
	return slices.Delete(items, cue, to+1), true
}

// inPlaceOf is an item as it is read in place of another, and of which kind it then is: the number
// of "bar five no six" is a bar, that of "hive seven, is it, no, it's eight" a hive, the stage of
// "open brood, I mean sealed" brood.
func (r *reader) inPlaceOf(old *item, fresh item, s kind) (item, kind) {
	switch {
	case s == kNum && old.is(kBars):
		fresh.kinds, fresh.bars = setOf(kBars), spread(nil, fresh.n)
		return fresh, kBars
	case s == kNum && old.n.share && isPercentage(old.text) && barNumber(&fresh) && fresh.n.lo >= 10 && fresh.n.lo <= 100:
		fresh.n.lo, fresh.n.share = fresh.n.lo/100, true // "seventy percent, no, eighty"
	case s == kNum && old.is(kName):
		return *r.asHive(&fresh, formatNumber(fresh.n.lo)), kName
	case s == kStage && old.is(kContent):
		return r.restaged(*old, r.value(&fresh, kStage)), s
	}
	return fresh, s
}

// isPercentage reports whether a share is told in hundredths: "seventy percent".
func isPercentage(text string) bool {
	return strings.HasSuffix(text, "%") || strings.HasSuffix(text, "percent") || strings.HasSuffix(text, "per cent")
}

// correction is the item that stands for another before the cue, and the slot that it
// fills; of a bare "no" it must be the next, or go on as the words before do. The slot is
// noKind where there is none.
func (r *reader) correction(items []item, cue, from int, bare bool) (to int, slot kind) {
	of, to := slots, from
	if bare {
		of = sureSlots
		if r.sheIsOn(items, from) {
			from, to = from+3, to+3 // "the queen's on bar six, no, she's on bar eight"
		}
	} else {
		to = max(to, r.toldRight(items, from))
	}
	if to == from && to+1 < len(items) && items[to].is(kTo) && cue > 1 && items[cue-2].is(kTo) && items[cue-1].any(kNum, kBars) {
		from, to = from+1, to+1 // "moved bar nine to six, no, to five"
	}
	for to < len(items) && to < from+4 && (items[to].any(kRepair, kPron, kBe, kArt, kAdv, kThere, kNo, kMaybe, kOn, kShe, kBut, kAfter, kTween) || !bare && items[to].is(kAmount) || thisOne(items, to) || storesAgain(items, to)) {
		if _, ok := slotOf(&items[to], of); ok && !thisOne(items, to) && !storesAgain(items, to) {
			break
		}
		to++
	}
	if to >= len(items) || bare && to != from {
		return to, noKind
	}
	slot, ok := slotOf(&items[to], of)
	if !ok && howManyOf(items[to].text) > 0 {
		slot, ok = kNum, true // "cut out three, no, all four"
	}
	if !ok {
		return to, noKind
	}
	if !bare && to+1 < len(items) && items[to-1].is(kNo) && !r.bareNo(&items[to-1]) && items[to+1].is(slot) {
		to++ // "sorry, not bar two, bar three"
	}
	return to, slot
}

// thisOne reports whether the "one" at item i is no number, but what one is at: "hive six, no sorry,
// this one's hive eight".
func thisOne(items []item, i int) bool {
	return i > 0 && i+1 < len(items) && items[i].text == "one" && items[i-1].isWord2("this", "that") && items[i].pause == none && items[i+1].is(kBe)
}

// storesAgain reports whether the stores are named once more before how they are: "stores fair, no, sorry,
// stores are heavy".
func storesAgain(items []item, i int) bool {
	return items[i].is(kStores) && i+1 < len(items) && items[i+1].any(kBe, kStored)
}

// sheIsOn reports whether "she is on" and bars stand at item i.
func (r *reader) sheIsOn(items []item, i int) bool {
	return i+3 < len(items) && items[i].is(kShe) && items[i+1].is(kBe) && items[i+2].is(kOn) && items[i+3].is(kBars)
}

// toldRight is the item behind "that's" where a correction first says why: "no
// wait those are bumpy that's drone brood"; from where there is none.
func (r *reader) toldRight(items []item, from int) int {
	if cue := &items[from-1]; cue.is(kRepair) && (strings.HasSuffix(cue.text, "that's") || strings.HasSuffix(cue.text, "it's")) {
		return patternBehind(items, from)
	}
	for k := from + 2; k < len(items) && k < from+9 && items[k].pause <= comma; k++ {
		switch {
		case (items[k].is(kContent) || barNumber(&items[k])) && items[k-1].is(kBe) && items[k-2].isWord6("that", "it", "this", "these", "those", "they"):
			return k
		case items[k].any4(kContent, kBars, kCell, kNum):
			return from
		}
	}
	return from
}

// patternBehind is the item of another pattern behind the reason why the one before was
// taken back: "spotty, no, that's the light on it, solid"; from where there is none.
func patternBehind(items []item, from int) int {
	if !hasKind(items[max(0, from-4):from], kPattern) {
		return from
	}
	for k := from; k < len(items) && k < from+7 && items[k].pause <= comma; k++ {
		if items[k].is(kPattern) {
			return k
		}
		if items[k].any5(kContent, kBars, kCell, kNum, kQueen) {
			break
		}
	}
	return from
}

// replaced finds the item that a repair replaces, or -1.
func (r *reader) replaced(items []item, cue, to int, s kind, bare bool) int {
	for at := cue - 1; at >= 0 && at >= cue-reach; at-- {
		it := &items[at]
		switch {
		case at == cue-1 && it.is(kNo) && r.bareNo(it): // "pollen. No, wait, that's nectar"
		case r.fillsSlot(items, at, cue, to, s):
			return at
		case bare && passedBack(items, at, cue, to, s):
		case bare, s != kName && s != kBars && it.pause >= stop && it.pause < line:
			return -1
		}
	}
	return -1
}

// fillsSlot reports whether item at is what the item behind the cue, of a kind, is said in place
// of.
func (r *reader) fillsSlot(items []item, at, cue, to int, s kind) bool {
	it, close := &items[at], at >= cue-2
	if it.is(s) && !(s == kNum && it.n.article) && !(s == kStored && it.is(kNo)) {
		return true
	}
	switch s {
	case kMeasure:
		return at == cue-1 && barNumber(it) // "thirty one no thirty two kilos"
	case kStage:
		return it.is(kContent) // "open brood, I mean sealed"
	case kContent:
		return it.is(kSame) || it.is(kStage) && at > 0 && items[at-1].is(kBars) && it.pause == none // "bar seven sealed, no, I mean open brood"
	case kNum:
		ofBars := close && it.is(kBars) && barNumber(&items[to]) && (to+1 >= len(items) || !items[to+1].any3(kCell, kStage, kMite))
		ofHive := it.is(kName) && (at == cue-1 || at == cue-2 && items[cue-1].is(kAsk)) && r.namesAnother(items, at, to)
		return ofBars || ofHive || close && it.is(kLeaf) && it.n.lo > 0
	}
	return false
}

// passedBack reports whether a bare "no" is said of something before item at, which tells more of
// it: "two litres of syrup, no, one litre".
func passedBack(items []item, at, cue, to int, s kind) bool {
	it := &items[at]
	switch {
	case it.is(kAsk) && it.text == "is it":
		return true // "hive three, is it, no, four"
	case s == kNum && it.any3(kCell, kStage, kCellKind) && to+1 < len(items) && items[to+1].is(kRepair):
		return true // "one capped queen cell no two make it two"
	case s == kNum && at >= cue-5 && it.anyOf(countable) && countsAlone(items, to):
		return true // "five of the little beggars no six"
	case s == kColour && at == cue-1 && it.is(kDot):
		return true // "white dot. No, yellow"
	}
	return s == kMeasure && at >= cue-2 && it.any3(kSubstance, kContent, kOf)
}

// namesAnother reports whether the number at item to is that of another hive than the one
// at item at, and counts nothing.
func (r *reader) namesAnother(items []item, at, to int) bool {
	if name := items[at].name; name == "" || !isDigit(name[0]) || !barNumber(&items[to]) {
		return false
	}
	return to+1 == len(items) || !items[to+1].anyOf(counted) && !items[to+1].any4(kNum, kStage, kLeaf, kComb)
}

// countable are the kinds of words for what a number counts.
var countable = setOf(kWord, kOf, kArt, kSign, kMite, kAmount, kPron, kBees, kEach, kCell, kStage, kCellKind)

// countsAlone reports whether nothing that the number at item i could count is new:
// its phrase ends there, or goes on "of them" or with the number once more.
func countsAlone(items []item, i int) bool {
	if i+1 == len(items) || items[i+1].pause >= comma {
		return true
	}
	next := &items[i+1]
	return next.is(kNum) && next.n.lo == items[i].n.lo || next.is(kOf) && i+2 < len(items) && items[i+2].any(kBees, kPron)
}

// restaged turns brood or honey of one stage into that of another.
func (r *reader) restaged(it item, stage string) item {
	want := map[string]string{"capped open_brood": "capped_brood", "capped nectar": "capped_honey", "capped honey": "capped_honey",
		"capped brood": "capped_brood", "charged capped_brood": "open_brood", "charged capped_honey": "nectar"}[stage+" "+r.value(&it, kContent)]
	for i := range r.rules {
		if want != "" && r.rules[i].Kind == kContent && r.rules[i].Value == want {
			it.says = senseOf(int16(i), kContent)
			it.kinds = it.says.kinds
			break
		}
	}
	return it
}

// findingAhead reports whether something is found between item i and the next
// bar or full stop.
func (r *reader) findingAhead(items []item, i int) bool {
	for ; i < len(items) && items[i].pause < stop && !items[i].any(kBars, kName); i++ {
		if items[i].any6(kContent, kComb, kCell, kQueen, kSame, kSign) {
			return true
		}
	}
	return false
}
