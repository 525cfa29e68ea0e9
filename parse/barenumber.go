package parse

import (
	"slices"
	"strings"
)

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
	r.row, r.listed = 0, false
	if len(items) < 2 {
		return false
	}
	if _, found := slices.BinarySearch(r.numbered, items[0].start); found && (barNumber(&items[0]) || hashNumber(items, 0)) && !countsNext(items) {
		r.row, r.listed = int(items[0].n.lo), true
		return true // "#4 eggs" has its number behind the sign
	}
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

// shortestList is how many lines in a row that each begin with the next number
// make a list of bars.
const shortestList = 3

// numberedLines are the offsets of the lines that list bars by number, up or
// down: "14 bare", "13 just started", "12 nectar". A number with a full stop or
// a bracket behind it only counts paragraphs.
func numberedLines(text string) []int32 {
	var rows, run []int32
	last, step := 0, 0
	flush := func() {
		if len(run) >= shortestList {
			rows = append(rows, run...)
		}
		run, step = run[:0], 0
	}
	for at := 0; at < len(text); {
		end := strings.IndexByte(text[at:], '\n')
		if end < 0 {
			end = len(text) - at
		}
		from, lo, hi := leadingNumbers(text[at : at+end])
		switch {
		case lo == 0:
			flush()
		case len(run) == 0:
		case lo == last || lo-last > 2 || last-lo > 2, step != 0 && (lo > last) != (step > 0):
			flush()
		default:
			step = lo - last
		}
		if lo > 0 {
			run, last = append(run, int32(at+from)), hi
		}
		at += end + 1
	}
	flush()
	return rows
}

// leadingNumbers are the number, or the range, that a line begins with and where
// it stands; 0 where there is none that could be a bar's.
func leadingNumbers(line string) (at, lo, hi int) {
	for at < len(line) && (line[at] == ' ' || line[at] == '\t') {
		at++
	}
	end := at
	if end < len(line) && line[end] == '#' {
		end++
	}
	lo, end = shortNumber(line, end)
	hi = lo
	if n, far := 0, end; lo > 0 && far < len(line) && line[far] == '-' {
		if n, far = shortNumber(line, far+1); n > 0 {
			hi, end = n, far
		}
	}
	if lo == 0 || end == len(line) || max(lo, hi) > maxBar || line[end] != ' ' && line[end] != '\t' && line[end] != ':' && line[end] != '-' {
		return at, 0, 0
	}
	return at, lo, hi
}

// shortNumber is the number of at most two digits at an offset, and the offset
// behind it.
func shortNumber(s string, at int) (n, end int) {
	for end = at; end < len(s) && end < at+2 && isDigit(s[end]); end++ {
		n = 10*n + int(s[end]-'0')
	}
	return n, end
}

// bareBar tells whether a number without a noun names a bar: behind "on" where
// bars are being numbered, or where it is the next in the count and a finding
// follows.
func (r *reader) bareBar(items []item, i int, before []item) bool {
	if items[i].n.ordinal {
		return false
	}
	if i == 0 && r.listed {
		return true
	}
	if countsBars(items, i) {
		return false
	}
	var prev, next *item
	if len(before) > 0 {
		prev = &before[len(before)-1]
	}
	if i+1 < len(items) {
		next = &items[i+1]
	}
	if next != nil && r.nextLine(items, i, before) && next.any(kPron, kSeen, kWord, kThere) && !next.any(kUnit, kCell, kMite, kOf) {
		return true // "twelve they've made a start"
	}
	if next != nil && r.listing && next.start == items[i].end && next.any(kBe, kHave) && items[i].n.lo > 1 {
		return true // "three's got a bit of sealed brood"
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
	if prev != nil && items[i].pause == none && prev.is(kOn) && len(before) > 1 && before[len(before)-2].any(kContent, kQueen, kSeen, kCell, kComb) && r.isWord(prev, "on") {
		return true
	}
	if prev != nil && items[i].pause == none && prev.is(kContent) && ends && (items[i].n.hi > items[i].n.lo && !items[i].n.or || r.listing) {
		return true
	}
	if prev != nil && items[i].pause == none && prev.is(kContent) && r.listing && r.plainList(items, i) {
		return true // "capped brood 7 and 8 both sides"
	}
	if prev != nil && items[i].pause == none && r.isWord(prev, "as") && len(before) > 1 && before[len(before)-2].is(kSame) {
		return true // "six same as five"
	}
	if prev != nil && items[i].pause == none && prev.any(kAfter, kTween) && deedNear(before) {
		return true
	}
	if prev != nil && prev.is(kTo) && items[i].pause == none && len(before) > 2 && before[len(before)-2].is(kBars) && before[len(before)-3].is(kDo) {
		return true // "moved bar ten to seven"
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

// countsNext reports whether the number at the head of a line counts what
// follows: "5 frames of bees", "2 stings".
func countsNext(items []item) bool {
	if len(items) < 2 || items[0].colon {
		return false
	}
	next := &items[1]
	return next.pause == none && (next.any(kCell, kCellKind, kMite, kSign, kUnit, kQueen, kOf) || next.is(kBar) && (next.plural || len(items) == 2 || items[2].is(kOf)))
}

// countsBars reports whether the number counts bars: "four new bars in".
func countsBars(items []item, i int) bool {
	k := i + 1
	for k < len(items) && items[k].pause == none && items[k].any(kComb, kAdv) && !items[k].is(kBar) {
		k++
	}
	return k < len(items) && items[k].pause == none && items[k].is(kBar) && items[k].plural
}

// nextLine reports whether a number begins a line, and is the neighbour of the
// bar last spoken of in lines that each begin with theirs.
func (r *reader) nextLine(items []item, i int, before []item) bool {
	head := items[i].pause >= line || len(before) == 1 && before[0].is(kAnd) && before[0].pause >= line
	n := int(items[i].n.lo)
	return head && r.listing && r.last > 0 && items[i].n.hi == 0 && items[i].n.whole() && (n == r.last+1 || n == r.last-1)
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
	steps, near := 0, false
	for i := len(before) - 1; i >= 0; i-- {
		if before[i].any(kNext, kPrev, kSkip) {
			steps++
		}
		if i > 0 && r.isWord(&before[i-1], "as") {
			continue // "same as five" counts nothing
		}
		if before[i].is(kBars) && len(before[i].bars) > 1 && n == slices.Max(before[i].bars)+1 && i < len(before)-1 {
			return true // "two to six except four brood, four is pollen, seven has nectar"
		}
		if before[i].is(kBars) && len(before[i].bars) > 0 && !near {
			near = true
			lo, hi = slices.Min(before[i].bars)+steps*r.step, slices.Max(before[i].bars)+steps*r.step
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
