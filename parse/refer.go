package parse

import (
	"slices"
	"strings"
)

// refer replaces the words that name bars and hives by references, and gives
// bare numbers in a list of bars their noun.
func (r *reader) refer(items []item) []item {
	out := items[:0]
	for i := 0; i < len(items); {
		if it, next := r.barRef(items, i, out); next > i {
			out = append(out, it)
			i = next
			continue
		}
		if it, next := r.severalHives(items, i); next > i {
			out = append(out, it)
			i = next
			continue
		}
		if it, back, next := r.hiveRef(items, i, out); next > i {
			out = append(out[:len(out)-back], it)
			i = next
			continue
		}
		out = append(out, items[i])
		i++
	}
	return out
}

// numbered reports whether a line lists bars by bare numbers: three or more
// counts that rise or fall by one, each followed by a finding.
func numbered(items []item) bool {
	last, run := 0, 0
	for i := range items {
		it := &items[i]
		if !barNumber(it) || it.n.lo > maxBar || i+1 >= len(items) || it.n.approx {
			continue
		}
		if next := &items[i+1]; next.pause > comma || !next.any(kContent, kComb, kFull, kHave, kBe, kAmount, kPattern, kSame, kNum, kAdv, kAnd) {
			continue
		}
		n := int(it.n.lo)
		if items[i].pause == none && i > 0 && !items[i+1].any(kBe, kComb, kContent, kFull, kSame, kAnd) && !(items[i+1].is(kNum) && (items[i+1].n.share || barNumber(&items[i+1]))) {
			continue
		}
		if run == 0 || n != last && n >= last-2 && n <= last+2 {
			run++
		} else {
			run = 1
		}
		if last = n; run >= 3 {
			return true
		}
	}
	return false
}

// rowNumber reports whether the line is a row of a list of bars: it begins with
// 1, or with the number after that of the line before, and a finding follows.
func (r *reader) rowNumber(items []item) bool {
	last := r.row
	r.row = 0
	if len(items) < 2 || !barNumber(&items[0]) || items[0].n.ordinal || items[0].n.lo > maxBar || !items[1].any(kContent, kComb, kFull, kAmount, kPattern, kStage, kState, kBe, kHave, kAdv, kNum, kSame) || items[1].any(kCell, kMite) {
		return false
	}
	r.row = int(items[0].n.lo)
	for _, path := range []string{"bars_total", "follower.bar"} { // from the back
		if v, ok := r.cur.get(path); ok && v == formatNumber(items[0].n.lo) {
			return true
		}
	}
	return r.row == 1 || last != 0 && (r.row == last+1 || r.row == last-1)
}

// maxBar bounds what can be a bar's number when no noun says so.
const maxBar = 40

func barNumber(it *item) bool {
	return it.is(kNum) && !it.n.share && !it.n.article && it.n.whole() && it.n.lo >= 1 && it.n.lo <= 99
}

// barRef reads a reference to bars that starts at item i.
func (r *reader) barRef(items []item, i int, before []item) (item, int) {
	it := &items[i]
	switch {
	case it.is(kBar):
		if i+1 < len(items) && strings.HasPrefix(items[i+1].text, "between") && deedNear(before) {
			return item{}, i // "two bars between nine and ten"
		}
		return r.namedBar(items, i)
	case it.is(kNum) && it.n.ordinal && it.n.lo == 1 && i+2 < len(items) && barNumber(&items[i+1]) && items[i+2].is(kBar) && items[i+2].pause == none:
		return r.merged(items, i, i+3, spread(nil, quantity{lo: 1, hi: items[i+1].n.lo})), i + 3 // "the first three bars"
	case it.is(kNum) && it.n.ordinal && i+1 < len(items) && items[i+1].is(kBar) && !items[i+1].plural && items[i+1].pause == none && it.n.lo <= maxBar:
		if i+2 < len(items) && barNumber(&items[i+2]) && items[i+2].pause == none {
			return item{}, i
		}
		return r.merged(items, i, i+2, []int{int(it.n.lo)}), i + 2
	case barNumber(it) && it.n.lo <= maxBar && !it.n.approx && r.bareBar(items, i, before):
		bars, next := r.numberList(items, i, true)
		if len(bars) == 0 {
			return item{}, i
		}
		ref := r.merged(items, i, next, bars)
		return ref, next
	}
	return item{}, i
}

// namedBar reads "bar four", "bars three to seven and nine", "b4".
func (r *reader) namedBar(items []item, i int) (item, int) {
	it := &items[i]
	short := it.end-it.start == 1
	j := i + 1
	if j < len(items) && items[j].is(kWord) && items[j].name == "#" {
		j++
	}
	if j >= len(items) || !barNumber(&items[j]) || items[j].pause > none && !(items[j].pause == comma) {
		return item{}, i
	}
	if short && items[j].start != it.end {
		return item{}, i
	}
	if items[j].n.ordinal {
		return item{}, i
	}
	plural := it.plural || short
	bars, next := r.numberList(items, j, plural)
	if len(bars) == 0 {
		return item{}, i
	}
	r.listing = true
	ref := r.merged(items, i, next, bars)
	ref.plural = it.plural
	ref.ranged = items[j].n.hi > items[j].n.lo && next == j+1 || next == j+4 && r.dashOrTo(&items[j+1])
	return ref, next
}

func (r *reader) merged(items []item, i, next int, bars []int) item {
	ref := items[i]
	ref.kinds = kinds{}
	ref.kinds.add(kBars)
	ref.rules = nil
	ref.name = ""
	ref.to, ref.end = items[next-1].to, items[next-1].end
	ref.text = lower(r.text[ref.start:ref.end])
	ref.colon, ref.asked = items[next-1].colon, items[next-1].asked
	for k := i; k < next; k++ {
		ref.misheard = ref.misheard || items[k].misheard
	}
	ref.bars = bars
	return ref
}

// numberList reads the numbers of bars from item j on: 3, 3-5 and 8, nine ten
// and eleven, two to six except four.
func (r *reader) numberList(items []item, j int, plural bool) ([]int, int) {
	bars := spread(nil, items[j].n)
	j++
	for j < len(items) {
		sep := &items[j]
		k := j
		closing := false
		except := false
		switch {
		case sep.pause > comma:
			return bars, j
		case sep.is(kBut) && r.exceptAt(sep):
			k, except = j+1, true
			if k < len(items) && items[k].is(kBar) {
				k++
			}
		case sep.is(kBar) && sep.pause == comma && r.shortList(items, j):
			k = j + 1
		case r.dashOrTo(sep) && j+1 < len(items) && items[j+1].is(kBar) && j+2 < len(items) && barNumber(&items[j+2]) && items[j+1].pause == none:
			near, far := bars[len(bars)-1], int(items[j+2].n.lo)
			if far <= near {
				return bars, j
			}
			bars = spread(bars, quantity{lo: float64(near), hi: float64(far)})
			j += 3
			continue
		case r.dashOrTo(sep) && j+1 < len(items) && barNumber(&items[j+1]) && items[j+1].pause == none && int(items[j+1].n.lo) < bars[len(bars)-1] && plural && len(bars) == 1:
			bars = spread(nil, quantity{lo: items[j+1].n.lo, hi: float64(bars[0])}) // "three to one"
			j += 2
			continue
		case sep.any(kAnd):
			k, closing = j+1, true
			if k < len(items) && items[k].is(kBar) && (plural || r.pairOfBars(items, j)) {
				plural = true
				k++
			}
		case barNumber(sep) && (plural || r.risingTo(items, j, bars)) && len(bars) < 30:
		default:
			return bars, j
		}
		if k >= len(items) || !barNumber(&items[k]) || items[k].n.ordinal || items[k].n.approx || items[k].n.lo > maxBar {
			return bars, j
		}
		if items[k].pause > comma || closing && items[k].pause != none {
			return bars, j
		}
		if !r.listGoesOn(items, k, plural, closing, sep.pause == comma, bars) {
			return bars, j
		}
		if except {
			drop := spread(nil, items[k].n)
			bars = slices.DeleteFunc(bars, func(b int) bool { return slices.Contains(drop, b) })
		} else {
			bars = spread(bars, items[k].n)
		}
		j = k + 1
	}
	return bars, j
}

// dashOrTo joins the ends of a range whose noun is said twice: b3-b7, "bar
// three to bar seven".
func (r *reader) dashOrTo(it *item) bool {
	return it.pause == none && (it.is(kTo) || r.isWord(it, "down to", "back to", "on to") || r.isWord(it, "-", "–", "through", "thru"))
}

// pairOfBars: "took out bar fifteen and bar sixteen" is a list; "eggs on bar
// four and bar five is capped" is not.
func (r *reader) pairOfBars(items []item, and int) bool {
	k := and - 2
	for k >= 0 && items[k].any(kBar, kNum) {
		k--
	}
	if k >= 0 && items[k].is(kOn) && and+3 < len(items) && items[and+3].pause == none && items[and+3].any(kBe, kHave, kContent, kComb) {
		return false
	}
	return and+2 < len(items) && barNumber(&items[and+2])
}

// risingTo: "bar four five and six" is a list although the noun is singular.
func (r *reader) risingTo(items []item, j int, bars []int) bool {
	n := bars[len(bars)-1]
	for ; j < len(items) && barNumber(&items[j]) && items[j].pause == none && int(items[j].n.lo) == n+1; j++ {
		n++
	}
	return n > bars[len(bars)-1] && j+1 < len(items) && items[j].is(kAnd) && barNumber(&items[j+1]) && int(items[j+1].n.lo) == n+1
}

// shortList: "b5, b6." lists bars where a pause follows, not a finding.
func (r *reader) shortList(items []item, j int) bool {
	return items[j].end-items[j].start == 1 && j+1 < len(items) && barNumber(&items[j+1]) && items[j+1].start == items[j].end &&
		(j+2 >= len(items) || items[j+2].pause >= comma)
}

func (r *reader) exceptAt(it *item) bool {
	s := it.text
	return s == "except" || s == "except for" || s == "but"
}

// listGoesOn tells whether the number at k is another bar of the list or
// counts what follows it ("bar six and two queen cells").
func (r *reader) listGoesOn(items []item, k int, plural, closing, afterComma bool, bars []int) bool {
	n := items[k].n
	if k+1 < len(items) && items[k+1].pause == none {
		next := &items[k+1]
		if next.any(kCell, kStage, kCellKind, kUnit, kMite, kSign) && !next.any(kComb, kState) && !plural {
			return false
		}
		if next.any(kCell, kCellKind, kMite, kSign) || next.is(kStage) && k+2 < len(items) && items[k+2].any(kCell, kCellKind) {
			return false
		}
		if next.is(kBar) && !(k+2 < len(items) && barNumber(&items[k+2])) {
			return false // "bars three and four, two bars of honey"
		}
	}
	if plural {
		return true
	}
	// "bar four and five": singular, but rising by one is a list all the same.
	return closing && len(bars) > 0 && int(n.lo) == bars[len(bars)-1]+1 && !afterComma
}

func spread(bars []int, q quantity) []int {
	lo, hi := int(q.lo), int(q.lo)
	if q.hi > q.lo && !q.or {
		hi = min(int(q.hi), lo+60)
	} else if q.or {
		hi = int(q.hi)
	}
	for b := lo; b <= hi; b++ {
		if !slices.Contains(bars, b) {
			bars = append(bars, b)
		}
	}
	return bars
}

// bareBar tells whether a number without a noun names a bar: behind "on" where
// bars are being numbered, or where it is the next in the count and a finding
// follows.
func (r *reader) bareBar(items []item, i int, before []item) bool {
	if items[i].n.ordinal {
		return false
	}
	var prev, next *item
	if len(before) > 0 {
		prev = &before[len(before)-1]
	}
	if i+1 < len(items) {
		next = &items[i+1]
	}
	if next != nil && next.pause == none && (next.any(kCell, kCellKind, kMite, kSign, kBar, kUnit, kQueen, kWord, kDo, kOf) || next.is(kStage) && !next.is(kComb)) {
		return false
	}
	ends := next == nil || next.pause >= comma
	if prev != nil && items[i].pause == none && prev.is(kOn) && len(before) > 2 && before[len(before)-2].is(kBe) && before[len(before)-3].is(kShe) {
		return true
	}
	if prev != nil && prev.is(kOn) && r.isWord(prev, "on") && items[i].pause == none && prev.pause >= stop && next != nil && (next.pause == comma || next.any(kContent, kComb)) {
		return true // "On 4, a patch of brood."
	}
	if prev != nil && prev.is(kOn) && ends && countedBefore(r, before) {
		return false // "capped honey on seven bars, pollen on two"
	}
	if prev != nil && items[i].pause == none && prev.is(kOn) && len(before) > 1 && before[len(before)-2].any(kContent, kQueen, kSeen, kCell) && r.isWord(prev, "on") {
		return true
	}
	if prev != nil && items[i].pause == none && prev.is(kContent) && ends && (items[i].n.hi > items[i].n.lo && !items[i].n.or || r.listing) {
		return true
	}
	if prev != nil && items[i].pause == none && prev.any(kAfter, kTween) && deedNear(before) {
		return true
	}
	if prev != nil && prev.is(kFrom) && items[i].pause == none && items[i].n.hi > items[i].n.lo && len(before) > 1 && before[len(before)-2].is(kContent) {
		return true // "brood from 4 to 9"
	}
	if !r.listing {
		return false
	}
	if prev != nil && items[i].pause == none && prev.is(kDo) && (r.plainList(items, i) || i+1 < len(items) && barNumber(&items[i+1])) && r.takesBars(r.rule(prev, kDo).Value) {
		return true
	}
	if prev != nil && items[i].pause == none && (prev.is(kDo) && next != nil && r.isWord(next, "free", "loose", "out", "straight") || r.isWord(prev, "off") && deedNear(before)) {
		return true
	}
	if prev != nil && items[i].pause == none && prev.any(kOn, kAfter, kTween) {
		return r.text[prev.start:prev.end] != "for" && r.text[prev.start:prev.end] != "at"
	}
	heads := next != nil && next.pause <= comma && (r.plainList(items, i) || next.any(kContent, kComb, kFull, kHave, kBe, kAmount, kPattern, kSame, kNum, kStage, kAdv, kNo, kArt, kSide, kThere))
	headed := next != nil && items[i].colon
	if items[i].pause >= stop || prev == nil {
		return heads || headed
	}
	if prev.is(kFrom) && items[i].pause == none && (items[i].n.hi > 0 || next != nil && r.dashOrTo(next)) {
		return true
	}
	n := int(items[i].n.lo)
	follows := r.follows(n, before)
	if items[i].pause >= comma || prev.any(kAnd, kThen) {
		return heads && (follows || items[i].n.hi > items[i].n.lo || r.plainList(items, i))
	}
	if r.plainList(items, i) && i+3 < len(items) && items[i+3].any(kContent, kComb) && !prev.any(kArt, kNum, kOf, kHave, kDo, kTo, kOn) {
		return true
	}
	closes := !prev.is(kAdv) || r.isWord(prev, "as well", "too", "again")
	return heads && follows && closes && !prev.any(kArt, kNum, kOf, kHave, kBe, kNo, kDo, kTo)
}

// deedNear reports whether a deed or a bar stands a few words back: "added a
// bar between 8 and 9".
func deedNear(before []item) bool {
	for k := len(before) - 1; k >= 0 && k >= len(before)-6; k-- {
		if before[k].any(kDo, kBar, kFixture) {
			return true
		}
		if before[k].pause >= stop {
			return false
		}
	}
	return false
}

// follows reports whether a bar is the next in the count, up or down, from
// those named last; at the start of a count any bar is.
func (r *reader) follows(n int, before []item) bool {
	lo, hi := r.last, r.last
	if len(r.bars) > 0 {
		lo, hi = slices.Min(r.bars), slices.Max(r.bars)
	}
	steps := 0
	for i := len(before) - 1; i >= 0; i-- {
		if before[i].any(kNext, kPrev, kSkip) {
			steps++
		}
		if before[i].is(kBars) && len(before[i].bars) > 0 {
			lo, hi = slices.Min(before[i].bars)+steps*r.step, slices.Max(before[i].bars)+steps*r.step
			break
		}
	}
	return hi == 0 || n == lo-1 || n == hi+1 || n == hi-1 && hi == lo
}

// countedBefore reports whether the sentence counts bars instead of naming
// them.
func countedBefore(r *reader, before []item) bool {
	for k := len(before) - 1; k >= 0 && before[k].pause < stop; k-- {
		if rule := r.rule(&before[k], kLeaf); rule != nil && rule.ID == "bars-total" {
			return true
		}
		if before[k].is(kBars) {
			return false
		}
	}
	return false
}

// plainList reports whether the number is one of several joined by "and".
func (r *reader) plainList(items []item, i int) bool {
	return i+2 < len(items) && items[i+1].is(kAnd) && barNumber(&items[i+2])
}

// severalHives reads "hives 1 and 3", which opens no inspection.
func (r *reader) severalHives(items []item, i int) (item, int) {
	if !r.isWord(&items[i], "hives", "colonies") || i+1 >= len(items) || !barNumber(&items[i+1]) || items[i+1].pause > none {
		return item{}, i
	}
	list, next := r.numberList(items, i+1, true)
	ref := r.asHive(r.merged(items, i, next, nil), "")
	for _, n := range list {
		ref.hives = append(ref.hives, formatNumber(float64(n)))
	}
	return ref, next
}

// nameHives makes references of the proper names that the note uses for hives.
func (r *reader) nameHives(items []item) []item {
	if len(r.names) == 0 {
		return items
	}
	for i := 0; i < len(items); i++ {
		if !items[i].capital {
			continue
		}
		for n := min(3, len(items)-i); n > 0; n-- {
			name := strings.ToLower(r.text[items[i].start:items[i+n-1].end])
			if !r.names[name] || i+n < len(items) && items[i+n].is(kHive) {
				continue
			}
			items[i] = r.asHive(r.merged(items, i, i+n, nil), name)
			items = slices.Delete(items, i+1, i+n)
			break
		}
	}
	return items
}

// noNames are the words before "hive" that describe it and do not name it.
var noNames = map[string]bool{}

func init() {
	for w := range strings.FieldsSeq(`good bad angry strong weak new old big small other second same whole entire empty next my his their our the a an this that
		these those each every per one two three first last only quiet busy nice lovely grumpy mean hot heavy light happy sad poor little
		great healthy sick queenless queenright booming populous any some which what no bee bar topbar long horizontal observation
		honey bait single in into of at on open opened and or with from to for inside is was it's it me them us up out
		neighbour's neighbor's mother daughter parent donor receiving wooden cedarwood best worst oldest youngest strongest weakest
		certain final main named called numbered both all half full real fine decent dead live wild feral kenyan tbh club's see saw through
		mad crazy sorry lively scruffy splendid dreadful beautiful miserable shared own through i we they around per near by behind
		over around check inspect inspected visited between than as like not so tricky difficult large tall stubborn`) {
		noNames[w] = true
	}
}

// hiveRef reads a hive's name at item i; back is how many items of out it
// takes back, as in "lime tree hive".
func (r *reader) hiveRef(items []item, i int, before []item) (item, int, int) {
	it := &items[i]
	if !it.is(kHive) {
		return item{}, 0, i
	}
	word := it.text
	word = word[strings.LastIndexByte(word, ' ')+1:]
	if j := i + 1; j < len(items) && (items[j].pause == none || it.colon && items[j].pause == colon && it.pause >= line) || word != "h" && i+1 < len(items) && items[i+1].pause == comma {
		if name, ok := r.nameAfter(items, i, word); ok && !r.countsBars(items, i+1, before, it) {
			ref := r.merged(items, i, i+2, nil)
			return r.asHive(ref, name), 0, i + 2
		}
	}
	if word == "h" || word == "stock" {
		return item{}, 0, i
	}
	if i+2 < len(items) && r.isWord(&items[i+1], "no", "nr") && items[i+1].pause == none && items[i+2].pause == none && barNumber(&items[i+2]) {
		return r.asHive(r.merged(items, i, i+3, nil), formatNumber(items[i+2].n.lo)), 0, i + 3 // "hive no. 4"
	}
	if name, back := r.nameBefore(before, it); back > 0 {
		ref := before[len(before)-back]
		ref.to, ref.end, ref.rules, ref.kinds = it.to, it.end, nil, kinds{}
		ref.colon = it.colon
		return r.asHive(ref, name), back, i + 1
	}
	return item{}, 0, i
}

func (r *reader) asHive(ref item, name string) item {
	ref.kinds = kinds{}
	ref.kinds.add(kName)
	ref.name = name
	return ref
}

// countsBars: "the compost hive, nine no ten bars in use": the number counts
// bars, and the name stands before.
func (r *reader) countsBars(items []item, i int, before []item, hive *item) bool {
	if i+1 >= len(items) || !items[i+1].any(kNo, kRepair, kBar, kLeaf) {
		return false
	}
	_, back := r.nameBefore(before, hive)
	return back > 0
}

// nameAfter reads the name in "hive three", "hive B", "hive Maple", "H2".
func (r *reader) nameAfter(items []item, i int, word string) (string, bool) {
	next := &items[i+1]
	if word == "h" {
		if next.start != items[i].end || !barNumber(next) {
			return "", false
		}
	}
	if next.is(kNum) && !next.n.article && !next.n.share && next.n.whole() && next.n.hi == 0 {
		if next.n.ordinal {
			return "", false
		}
		return trimNumber(next.n.lo), true
	}
	name := next.text
	single := len(name) == 1 && name[0] >= 'a' && name[0] <= 'z'
	if single && name != "i" && (name != "a" || next.capital) && next.pause == none {
		return name, true
	}
	quoted := next.start > 0 && (r.text[next.start-1] == '"' || r.text[next.start-1] == 0x9C || r.text[next.start-1] == '\'')
	if next.capital && (next.pause == none || quoted) && (next.any(kWord, kPlant, kColour)) && !noNames[name] {
		return name, true
	}
	if r.names[name] {
		return name, true
	}
	return "", false
}

// nameBefore reads the name in "orchard hive", "the lime tree hive": up to
// three words behind an article, a preposition or the start.
func (r *reader) nameBefore(before []item, hive *item) (string, int) {
	if hive.pause > none {
		return "", 0
	}
	var words []string
	back := 0
	end := hive.start
	for k := len(before) - 1; k >= 0 && back < 3; k-- {
		it := &before[k]
		text := it.text
		if rest, ok := strings.CutPrefix(text, "the "); ok && back > 0 && it.any(kSide, kPlace) && softNames[rest] {
			return strings.Join(append([]string{rest}, words...), " "), back + 1 // "the back fence hive"
		}
		if !r.nameWord(it) || noNames[text] || softNames[text] && back == 0 && !r.nameWordBefore(before, k) || strings.ContainsAny(text, "#%°=/'") {
			break
		}
		if it.end < end-2 {
			break
		}
		words = append([]string{text}, words...)
		back++
		end = it.start
		if it.pause > none {
			break
		}
	}
	// only the words behind the article: "opened up the orchard hive"
	for back > 1 && !r.headsName(before, back) {
		words, back = words[1:], back-1
	}
	if back == 0 || !r.headsName(before, back) {
		return "", 0
	}
	return strings.Join(words, " "), back
}

// softNames describe a hive unless another word makes them part of a name: the
// back fence hive.
var softNames = map[string]bool{"back": true, "front": true, "top": true, "far": true, "near": true, "lower": true, "upper": true, "end": true, "side": true, "low": true, "high": true, "lot": true}

func (r *reader) nameWord(it *item) bool {
	return it.to-it.from == 1 && !it.any(kArt, kOn, kOf, kFrom, kTo, kAfter, kBe, kHave, kWill, kPron, kShe, kAnd, kOr, kBut, kThen, kNum, kNo, kTemper, kStrength, kAdv, kQueen, kDo, kDate, kHive, kBar, kBars, kName, kContent, kCell, kSeen, kUnseen, kPlan, kIf, kAsk, kNow, kPast, kUndone, kStage, kRepair, kScratch, kMite, kSign, kYes)
}

func (r *reader) nameWordBefore(before []item, k int) bool {
	return k > 0 && before[k].pause == none && r.nameWord(&before[k-1]) && !softNames[before[k-1].text] && !noNames[before[k-1].text]
}

// headsName reports whether what stands before the name lets it begin there.
func (r *reader) headsName(before []item, back int) bool {
	k := len(before) - back
	if before[k].pause > none || k == 0 {
		return true
	}
	prev := &before[k-1]
	return prev.any(kDate, kYes, kArt, kOn, kTo, kFrom, kAnd, kThen, kNext, kBe, kHave) || prev.is(kNum) && prev.n.article
}

func trimNumber(v float64) string { return formatNumber(v) }
