package parse

import (
	"slices"
	"strings"
)

// Queen cells that are counted behind their bars.

// countedBehind puts the counts of queen cells before the bars that they stand behind,
// as in a sentence: "sealed cells: b5 x1, b8 x3", "capped qcs on b3 (2) and b4 (1)".
func (r *reader) countedBehind(items []item) []item {
	items = timesBehind(items)
	cells := false
	for i := 0; i+1 < len(items); i++ {
		it := &items[i]
		cells = (cells || it.is(kCell)) && (i == 0 || it.pause < stop)
		if !cells || !it.is(kBars) || len(it.bars) != 1 {
			continue
		}
		n := i + 1
		if byWord(&items[n]) && items[n].pause <= comma && n+1 < len(items) && items[n+1].pause == none {
			n++
		} else if !r.inBrackets(&items[n]) {
			continue
		}
		if !barNumber(&items[n]) || n+1 < len(items) && items[n+1].pause == none && !items[n+1].any3(kAnd, kBars, kOn) {
			continue
		}
		count, bars := items[n], *it
		on := item{kinds: setOf(kOn), says: senseless, details: &noDetails, text: "on", start: bars.start, end: bars.start, from: bars.from, to: bars.from, used: true}
		if i > 0 && items[i-1].is(kOn) && it.pause == none {
			i--
			on = items[i]
		}
		count.pause, on.pause, bars.pause = items[i].pause, none, none
		items = slices.Replace(items, i, n+1, count, on, bars)
		i += 2
	}
	return items
}

// countedTimes are the kinds of what is counted by a number behind a sign of multiplication,
// and besideCounted those of the words that tell which of them.
var (
	countedTimes  = setOf(kCell, kSign)
	besideCounted = setOf(kStage, kCellKind, kPattern)
)

// timesBehind puts a number that a sign of multiplication joins to what it counts before it:
// "capped QC x2, b7", "QC sealed x2 b5, charged x1 b8", "DWV x3", "x2 QC".
func timesBehind(items []item) []item {
	cells := false
	for i := 0; i+1 < len(items); i++ {
		cells = items[i].is(kCell) || cells && items[i].pause < stop
		if !byWord(&items[i]) || !barNumber(&items[i+1]) || items[i+1].pause > none {
			continue
		}
		if next := i + 2; next < len(items) && items[next].pause == none && items[next].anyOf(countedTimes.or(besideCounted)) && (i == 0 || items[i].pause > none || items[i-1].is(kBars)) {
			items[i+1].pause = items[i].pause
			items = slices.Delete(items, i, i+1)
			continue
		}
		if i == 0 || items[i].pause > comma || !items[i-1].anyOf(countedTimes.or(besideCounted)) {
			continue
		}
		from, counted := i, cells
		for from > 0 && items[from-1].anyOf(countedTimes.or(besideCounted)) && (from == i || items[from].pause == none) {
			from--
			counted = counted || items[from].anyOf(countedTimes)
		}
		if !counted || from > 0 && items[from].pause == none && items[from-1].is(kNum) {
			continue
		}
		count := items[i+1]
		count.pause = items[from].pause
		items[from].pause = none
		copy(items[from+1:i+1], items[from:i])
		items[from] = count
		items = slices.Delete(items, i+1, i+2)
	}
	return items
}

// cellsCalled puts what the cells of a sentence are called, where it stands behind all of them,
// behind each stage that was counted: "three capped on bar 6, two on bar 7, all swarm cells".
func (r *reader) cellsCalled(items []item) []item {
	for k := 1; k < len(items); k++ {
		all := &items[k-1]
		if !items[k].any(kCell, kCellKind) || all.pause < comma || !all.isWord6("all", "both", "all of them", "both of them", "all three", "all four") {
			continue
		}
		end := k
		for end < len(items) && items[end].any(kCell, kCellKind) && items[end].pause == none {
			end++
		}
		if end < len(items) && items[end].pause < comma {
			continue
		}
		from := k - 1
		for from > 0 && items[from].pause < stop && !items[from-1].any(kCell, kCellKind) {
			from--
		}
		called := slices.Clone(items[k:end])
		out := slices.Clone(items[:from])
		for i := from; i < k-1; i++ {
			out = append(out, items[i])
			if items[i].is(kStage) && i > from && barNumber(&items[i-1]) && i+1 < k && items[i+1].any(kOn, kBars) {
				out = append(out, called...)
			}
		}
		if len(out) == k-1 {
			continue
		}
		return append(out, items[end:]...)
	}
	return items
}

// onSoManyBars reports whether the cells at item i only head those told behind: "queen cells on two
// bars, three capped on bar 6, two on bar 7".
func (s *scan) onSoManyBars(i int) bool {
	on := s.at(i + 1)
	return on != nil && on.pause == none && on.is(kLeaf) && on.n.lo > 0 && strings.HasPrefix(on.text, "on ")
}
