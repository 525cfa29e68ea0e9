package parse

import (
	"slices"
	"strings"
)

// mending are the kinds of words that take back what was said.
var mending = setOf(kScratch, kRepair, kNo)

// repair mends what the speaker took back: "bar five no sorry bar six", "three
// no four", "scratch that". The new word takes the place of the last one of
// its kind; what it replaced stays in the evidence and the leaf is flagged.
func (r *reader) repair(items []item) []item {
	for k := 0; k < len(items); k++ {
		if !items[k].anyOf(mendsAt) {
			continue
		}
		if mended, ok := r.mendAt(items, k); ok {
			items, k = mended, -1
		}
	}
	return items
}

// mendsAt are the kinds of words that can be a cue to mend.
var mendsAt = mending.or(setOf(kComb, kBut))

// mendAt mends what item k takes back, if it is a cue that does.
func (r *reader) mendAt(items []item, k int) ([]item, bool) {
	it := &items[k]
	if it.anyOf(mending) && (!it.is(kNo) || r.bareNo(it)) && listAgain(items, k) {
		return slices.Delete(items, k, k+4), true
	}
	if it.is(kRepair) || it.is(kNo) && r.bareNo(it) {
		if from := r.deniedAgain(items, k); from > 0 {
			return r.replace(items, k, from, false)
		}
	}
	switch {
	case it.is(kScratch):
		return r.scratch(items, k), true
	case it.text == "hang on" && cellsHang(items, k):
		it.kinds, it.says = setOf(kOn), senseless
	case it.is(kRepair) && r.answersSelf(items, k):
		it.kinds, it.says = setOf(kYes), senseless
	case it.is(kComb) && r.noComb(items, k):
		items[k+1].pause = items[k-1].pause
		return slices.Delete(items, k-1, k+1), true
	case it.is(kBut):
		if from := belied(items, k); from > 0 {
			return r.replace(items, k, from, false)
		}
	case it.is(kRepair) && misspoken(items, k):
		return slices.Delete(items, k-1, k+1), true
	case (it.is(kRepair) || it.is(kNo) && r.bareNo(it)) && butNotThat(items, k):
		return slices.Delete(items, k, k+3), true
	case it.is(kRepair) && otherEnd(items, k):
		return slices.Delete(items, k, k+3), true
	case it.is(kRepair):
		if mended, ok := r.restated(items, k); ok {
			return mended, true
		}
		if deed := redone(items, k); deed > 0 {
			return didInstead(items, k, deed), true
		}
		return r.replace(items, k, k+1, false)
	case it.is(kNo) && r.bareNo(it) && answeredNo(items, k):
		items[k+1].pause = items[k-2].pause
		return slices.Delete(items, k-2, k+1), true
	case it.is(kNo) && r.bareNo(it) && sawNot(items, k) >= 0:
		return untold(items, sawNot(items, k), k+3), true
	case it.is(kNo) && r.bareNo(it):
		if deed := redone(items, k); deed > 0 {
			return didInstead(items, k, deed), true
		}
		if notThatBut(items, k) {
			return r.replace(items, k, k+3, false)
		}
		return r.replace(items, k, k+1, true)
	}
	return items, false
}

// listAgain reports whether a list of two bars is told anew behind item k, with one of the two in
// it, and takes it: "on bars nine and ten, no, nine and eleven".
func listAgain(items []item, k int) bool {
	if k == 0 || k+3 >= len(items) || !items[k+2].is(kAnd) || items[k+3].pause > none || !barNumber(&items[k+1]) || !barNumber(&items[k+3]) {
		return false
	}
	old := &items[k-1]
	first, last := int(items[k+1].n.lo), int(items[k+3].n.lo)
	if !old.is(kBars) || old.ranged || len(old.bars) != 2 || old.bars[0] != first && old.bars[1] != last {
		return false
	}
	old.bars, old.mended = []int{first, last}, true
	return true
}

// misspoken reports whether the word that item k takes back is none of the trade, behind one that
// asks for what is told right: "capped blood I mean brood".
func misspoken(items []item, k int) bool {
	return k > 1 && k+1 < len(items) && items[k].pause == none && items[k-1].is(kWord) && items[k-1].pause == none && items[k-2].any(kStage, kCellKind) && items[k+1].any(kContent, kCell)
}

// butNotThat reports whether a bar is taken back behind item k from the bars told before it, and
// takes it from them: "bars three to six capped brood, hang on, not six".
func butNotThat(items []item, k int) bool {
	if k == 0 || k+2 >= len(items) || items[k+1].text != "not" || !barNumber(&items[k+2]) || items[k+2].pause > none {
		return false
	}
	for i := k - 1; i >= 0 && i >= k-reach; i-- {
		old := &items[i]
		if !old.is(kBars) {
			continue
		}
		at := slices.Index(old.bars, int(items[k+2].n.lo))
		if at < 0 || len(old.bars) < 2 {
			return false
		}
		old.bars, old.mended = slices.Delete(slices.Clone(old.bars), at, at+1), true
		return true
	}
	return false
}

// sawNot is where what was seen or done begins that a bare "no" at item k takes back, with "I
// didn't" behind it: "saw the queen no I didn't that was a drone"; -1 where nothing is.
func sawNot(items []item, k int) int {
	if k+2 >= len(items) || items[k].pause > comma || !items[k+1].isWord2("i", "we") || items[k+1].pause > comma || !items[k+2].is(kUndone) || items[k+2].pause > none || !strings.HasPrefix(items[k+2].text, "did") {
		return -1
	}
	if next := at(items, k+3); next != &noItem && next.pause == none && !next.isWord4("that", "it", "so", "there") && !next.is(kThen) {
		return -1
	}
	for i := k - 1; i >= 0 && i >= k-reach && !items[i].any(kBars, kName); i-- {
		if items[i].any(kSeen, kDo) {
			for i > 0 && items[i].pause == none && items[i-1].any3(kPron, kAdv, kHave) {
				i--
			}
			return i
		}
		if items[i].pause >= stop {
			break
		}
	}
	return -1
}

// untold takes out the items that a speaker takes back, and lets what follows begin anew.
func untold(items []item, from, end int) []item {
	first := items[from].pause
	items = slices.Delete(items, from, end)
	if from < len(items) {
		items[from].pause = max(items[from].pause, first, colon)
	}
	return items
}

// otherEnd reports whether a range of bars gets another end behind item k, and gives it:
// "moved bar two to seven no sorry to eight".
func otherEnd(items []item, k int) bool {
	if k == 0 || k+2 >= len(items) || !items[k-1].is(kBars) || !items[k-1].ranged || !items[k+1].is(kTo) || !barNumber(&items[k+2]) {
		return false
	}
	first, last := items[k-1].bars[0], int(items[k+2].n.lo)
	if last <= first {
		return false
	}
	items[k-1].bars, items[k-1].mended = spread(nil, quantity{lo: float64(first), hi: float64(last)}), true
	return true
}

// cellsHang reports whether item k tells where queen cells are and takes nothing back:
// "two sealed cells hang on bar 9".
func cellsHang(items []item, k int) bool {
	return k > 0 && k+1 < len(items) && items[k].pause == none && items[k+1].pause == none && items[k+1].is(kBars) && items[k-1].any3(kCell, kThen, kPron)
}

// answersSelf reports whether "no it's" answers a question of the same sentence, and
// takes nothing back: "is that a queen cell on six no it's an empty cup".
func (r *reader) answersSelf(items []item, k int) bool {
	if !items[k].isWord5("no it's", "no it is", "no that's", "no that is", "no there's") {
		return false
	}
	for k--; k >= 0 && items[k+1].pause < stop; k-- {
		if items[k].is(kAsk) {
			return true
		}
	}
	return false
}

// answeredNo reports whether the "no" at item k answers what was asked aloud right before,
// and is said again with what was asked for: "is that mice, no, no mice".
func answeredNo(items []item, k int) bool {
	return k > 1 && k+2 < len(items) && items[k-2].is(kAsk) && items[k+1].is(kNo) && items[k+2].text == items[k-1].text
}

func (r *reader) bareNo(it *item) bool {
	return it.end-it.start == 2 && r.text[it.start]|0x20 == 'n'
}

// slots are the kinds by which a repair is aligned, most telling first.
var slots = []kind{kBars, kName, kMeasure, kDate, kNum, kColour, kSky, kWind, kContent, kCell, kStage, kComb, kPattern, kSide, kPlace, kTemper, kStrength, kSubstance}

// sureSlots are those that a bare "no" can repair; elsewhere it denies. Of
// deeds it repairs the one right before it: "closed no reduced the entrance".
var sureSlots = []kind{kBars, kName, kMeasure, kDate, kNum, kColour, kDo}

func slotOf(it *item, of []kind) (kind, bool) {
	for _, s := range of {
		if it.is(s) && !(s == kNum && it.n.article) {
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
	if s == kNum && old.is(kBars) { // "bar five no six"
		fresh.kinds, fresh.bars = kinds{}, spread(nil, fresh.n)
		fresh.kinds.add(kBars)
		s = kBars
	}
	if s == kNum && old.is(kLeaf) { // "bees on four bars, no, make that five bars"
		old.n, old.mended = fresh.n, true
		if to+1 < len(items) && items[to+1].is(kBar) && items[to+1].pause == none && !items[to+1].is(kBars) {
			to++
		}
		return slices.Delete(items, cue, to+1), true
	}
	if s == kNum && old.is(kName) { // "hive seven, is it, no, it's eight"
		fresh, s = *r.asHive(&fresh, formatNumber(fresh.n.lo)), kName
	}
	if s == kStage && old.is(kContent) { // "open brood, I mean sealed"
		fresh = r.restaged(*old, r.value(&fresh, kStage))
	}
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

// correction is the item that stands for another before the cue, and the slot that it
// fills; of a bare "no" it must be the next, or go on as the words before do. The slot is
// noKind where there is none.
func (r *reader) correction(items []item, cue, from int, bare bool) (to int, slot kind) {
	of, to := slots, from
	if bare {
		of = sureSlots
		if to+1 < len(items) && items[to].is(kOn) && cue > 1 && items[cue-2].is(kOn) && items[cue].pause >= comma {
			from, to = from+1, to+1 // "on seven, no, on eight"
		}
		if r.sheIsOn(items, from) {
			from, to = from+3, to+3 // "the queen's on bar six, no, she's on bar eight"
		}
	} else {
		to = max(to, r.toldRight(items, from))
	}
	if to == from && to+1 < len(items) && items[to].is(kTo) && cue > 1 && items[cue-2].is(kTo) && items[cue-1].any(kNum, kBars) {
		from, to = from+1, to+1 // "moved bar nine to six, no, to five"
	}
	for to < len(items) && to < from+4 && (items[to].any(kRepair, kPron, kBe, kArt, kAdv, kThere, kNo, kMaybe, kOn, kShe, kBut, kAfter, kTween) || !bare && items[to].is(kAmount) || thisOne(items, to)) {
		if _, ok := slotOf(&items[to], of); ok && !thisOne(items, to) {
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
		if at == cue-1 && it.is(kNo) && r.bareNo(it) {
			continue // "pollen. No, wait, that's nectar"
		}
		if s == kDo && at < cue-1 {
			return -1
		}
		if it.is(s) && !(s == kNum && it.n.article) {
			return at
		}
		if s == kMeasure && at == cue-1 && barNumber(it) {
			return at // "thirty one no thirty two kilos"
		}
		if s == kNum && it.is(kBars) && at >= cue-2 && barNumber(&items[to]) && (to+1 >= len(items) || !items[to+1].any3(kCell, kStage, kMite)) {
			return at
		}
		if s == kNum && it.is(kLeaf) && it.n.lo > 0 && at >= cue-2 {
			return at
		}
		if s == kStage && it.is(kContent) || s == kContent && it.is(kSame) || s == kNum && it.is(kName) && (at == cue-1 || at == cue-2 && items[cue-1].is(kAsk)) && r.namesAnother(items, at, to) {
			return at
		}
		if s == kContent && it.is(kStage) && at > 0 && items[at-1].is(kBars) && it.pause == none {
			return at // "bar seven sealed, no, I mean open brood"
		}
		if bare && it.is(kAsk) && it.text == "is it" {
			continue // "hive three, is it, no, four"
		}
		if bare && s == kNum && it.any3(kCell, kStage, kCellKind) && to+1 < len(items) && items[to+1].is(kRepair) {
			continue // "one capped queen cell no two make it two"
		}
		if bare && s == kNum && at >= cue-5 && it.anyOf(countable) && countsAlone(items, to) {
			continue // "five of the little beggars no six"
		}
		if bare && s == kColour && at == cue-1 && it.is(kDot) {
			continue // "white dot. No, yellow"
		}
		if bare && s == kMeasure && at >= cue-2 && it.any3(kSubstance, kContent, kOf) {
			continue // "two litres of syrup, no, one litre"
		}
		if bare || s != kName && s != kBars && items[at].pause >= stop && items[at].pause < line {
			return -1
		}
	}
	return -1
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

// scratch drops the last thing said: back to the bar, the pause or the
// beginning.
func (r *reader) scratch(items []item, k int) []item {
	from := k
	for from > 0 && from > k-reach {
		from--
		if items[from].any(kBars, kName) || items[from].pause >= comma || items[from].any(kAnd, kThen) {
			break
		}
	}
	if k+1 < len(items) { // what follows may show what is meant
		if mended, ok := r.replace(items, k, k+1, false); ok {
			return mended
		}
	}
	first := items[from].pause
	items = slices.Delete(items, from, k+1)
	if from < len(items) {
		items[from].pause = max(items[from].pause, first)
		items[from].mended = true
	}
	return items
}

// noComb reports whether "no comb" between two bars takes back the first, where combs are
// what the bars are called: "comb three no comb four is honey".
func (r *reader) noComb(items []item, k int) bool {
	if it := &items[k]; it.text != "no comb" || it.pause > none || k == 0 || k+2 >= len(items) || items[k+1].pause > none {
		return false
	}
	bar, next := &items[k-1], &items[k+1]
	return bar.is(kBars) && strings.HasPrefix(bar.text, "comb ") && len(bar.bars) == 1 && next.is(kBars) && len(next.bars) == 1 && !strings.HasPrefix(next.text, "comb") && items[k+2].any4(kBe, kHave, kContent, kFull)
}
