package parse

import (
	"slices"
	"strings"
)

// Lines that list bars by bare numbers, "3 eggs", "4. brood", and how they are known.

// barLines are the lines of a note that list bars.
type barLines struct {
	row      int     // the number at the head of the line before, or 0
	listed   bool    // the line in hand is one of them
	numbered []int32 // where the lines begin that list bars by number
}

// behindRow are the kinds of what stands behind the number of a bar in a list.
var behindRow = setOf(kContent, kComb, kFull, kHave, kBe, kAmount, kPattern, kSame, kNum, kAdv, kAnd)

// numbered reports whether a line lists bars by bare numbers: three or more
// counts that rise or fall by one, each followed by a finding.
func numbered(items []item) bool {
	last, run := 0, 0
	for i := range items {
		it := &items[i]
		if !barNumber(it) || it.n.lo > maxBar || i+1 >= len(items) || it.n.approx {
			continue
		}
		if next := &items[i+1]; next.pause > comma || !next.anyOf(behindRow) {
			continue
		}
		n := int(it.n.lo)
		if items[i].pause == none && i > 0 && !items[i+1].any6(kBe, kComb, kContent, kFull, kSame, kAnd) && !(items[i+1].is(kNum) && (items[i+1].n.share || barNumber(&items[i+1]))) {
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
	last := r.barLines.row
	r.barLines.row, r.barLines.listed = 0, false
	if len(items) < 2 {
		return false
	}
	if r.dotted(items) {
		if !barNumber(&items[0]) || items[1].colon || !items[1].any5(kContent, kComb, kFull, kAmount, kPattern) || gistOf(items).kinds.meet(notInRows) {
			return false // "1. Eggs: bars 4 and 5", "2. Honey coming in"
		}
		items[1].pause = comma // "1. honey, capped"
	}
	if labelsBars(items) {
		r.barLines.row, r.barLines.listed = int(items[0].n.lo), true
		return true
	}
	if _, found := slices.BinarySearch(r.barLines.numbered, items[0].start); found && (barNumber(&items[0]) || hashNumber(items, 0)) && !countsNext(items) {
		r.barLines.row, r.barLines.listed = int(items[0].n.lo), true
		return true // "#4 eggs" has its number behind the sign
	}
	if !barNumber(&items[0]) || items[0].n.ordinal || items[0].n.lo > maxBar || !items[1].any(kContent, kComb, kFull, kAmount, kPattern, kStage, kState, kBe, kHave, kAdv, kNum, kSame) || items[1].any(kCell, kMite) {
		return false
	}
	r.barLines.row = int(items[0].n.lo)
	for _, path := range []string{"bars_total", "follower.bar"} { // from the back
		if v, ok := r.cur.get(path); ok && v == formatNumber(items[0].n.lo) {
			return true
		}
	}
	return r.barLines.row == 1 || last != 0 && (r.barLines.row == last+1 || r.barLines.row == last-1)
}

// labelsBars reports whether numbers with a colon behind them head a line about what is on
// bars: "7: eggs", "5, 6 and 8: sealed brood".
func labelsBars(items []item) bool {
	k := 0
	for k < len(items) && (rowBars(&items[k]) || k > 0 && items[k].is(kAnd)) && !items[k].colon {
		k++
	}
	if k+1 >= len(items) || !items[k].colon || !rowBars(&items[k]) {
		return false
	}
	what := &items[k+1]
	return what.any6(kContent, kComb, kStage, kPattern, kAmount, kFull) && !what.colon
}

// rowBars reports whether a number, or a range of them, can be that of bars.
func rowBars(it *item) bool {
	n := &it.n
	return it.is(kNum) && n.whole() && !n.ordinal && !n.approx && !n.article && n.lo >= 1 && max(n.lo, n.hi) <= maxBar
}

// notInRows are the kinds of words that a line of a list of bars has not.
var notInRows = setOf(kBar, kHive, kBring)

// dotted reports whether a line of a list has a full stop behind its number.
func (r *reader) dotted(items []item) bool {
	_, found := slices.BinarySearch(r.barLines.numbered, items[0].start)
	return found && items[1].pause == stop && r.text[items[0].end] == '.'
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
		case len(run) == 0:
		case lo == 0:
			flush()
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
	if lo, end = shortNumber(line, end); lo == 0 {
		return at, 0, 0
	}
	hi = lo
	for _, to := range []string{"-", "–", " to "} {
		if rest, ok := strings.CutPrefix(line[end:], to); ok && hi == lo {
			if n, far := shortNumber(rest, 0); n > 0 {
				hi, end = n, end+len(to)+far
			}
		}
	}
	if end+1 < len(line) && line[end] == '.' && line[end+1] == ' ' {
		end++
	}
	if end == len(line) || max(lo, hi) > maxBar || line[end] != ' ' && line[end] != '\t' && line[end] != ':' && line[end] != '-' {
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
