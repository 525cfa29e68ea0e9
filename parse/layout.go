package parse

import "strings"

// What the combs hold, told in a row with bare numbers for the bars: "brood 3-8, honey
// 9-12, 13 empty", "three to eight brood nine to twelve honey".

// laid is where bars stand in such a row.
type laid uint8

const (
	notLaid     laid = iota
	behindTheir      // what is on them
	beforeTheir
)

// numberGroup is the numbers of bars that stand together in such a row.
type numberGroup struct {
	at, end int  // items of the line
	lo, hi  int  // least and greatest bar
	several bool // a range, or more than one
	way     laid
}

// laidOut are the groups of the line in hand, in order.
type laidOut []numberGroup

// endOf is where the group that begins at an item ends, and 0 where none does.
func (l laidOut) endOf(at int) int {
	for i := range l {
		if l[i].at == at {
			return l[i].end
		}
	}
	return 0
}

// layout finds the rows of a line and parts what they tell.
func (r *reader) layout(items []item) {
	for i := 0; i < len(items); {
		if first := &items[i]; !first.anyOf(rowStarts) || i > 0 && first.pause == none && !items[i-1].anyOf(beforeRow) {
			i++ // as most items
			continue
		}
		row := layoutRow{reader: r, items: items, from: i}
		row.read()
		if len(row.groups) > 0 && row.convinces() {
			r.laid = append(r.laid, row.groups...)
			row.mark()
			for _, at := range row.parts {
				items[at].pause = max(items[at].pause, comma)
			}
		}
		i = max(row.end, i+1)
	}
	r.listing = r.listing || len(r.laid) > 0
}

// layoutRow is a row while it is read.
type layoutRow struct {
	*reader
	items     []item
	from, end int
	groups    []numberGroup
	parts     []int // where the pairs of a content and its bars begin
	labelled  bool  // a content has a colon behind it
}

// read takes the row that begins at an item: contents each with its bars behind them, or
// bars each with what is on them behind.
func (l *layoutRow) read() {
	l.end = l.from
	if !l.opens() {
		return
	}
	if l.what(l.from) > l.from {
		l.contentsFirst()
	} else {
		l.barsFirst()
	}
}

// beforeRow are the kinds of words of which one stands before a row that no pause parts
// from them.
var beforeRow = setOf(kNum, kHive, kHave)

// opens reports whether a row can begin at the item: nothing before it leads to a number.
func (l *layoutRow) opens() bool {
	it := &l.items[l.from]
	if l.from == 0 || it.pause > none {
		return true
	}
	before := &l.items[l.from-1]
	return barNumber(before) && l.from > 1 && l.items[l.from-2].is(kHive) || before.any(kHive, kHave) && !barNumber(it)
}

// contentsFirst reads "brood 3-8 honey 9-12", and what may stand behind the last bars,
// the other way round: "13 and 14 empty".
func (l *layoutRow) contentsFirst() {
	for at := l.from; at < len(l.items); {
		end := l.what(at)
		if end == at || end == len(l.items) {
			return
		}
		on := l.place(end)
		label := l.items[on-1].colon || l.items[on].pause == comma && dashed(l.text, &l.items[on-1], &l.items[on]) ||
			l.items[end].pause == comma && dashed(l.text, &l.items[end-1], &l.items[end])
		group, ok := l.numbers(on)
		group.way = behindTheir
		label = label || ok && l.closing(group)
		if !ok || l.items[on].pause > none && !label {
			return
		}
		l.labelled = l.labelled || label
		tail := l.tail(group)
		if tail > 0 {
			group = l.cut(group, tail)
		}
		l.take(at, group)
		if tail > 0 {
			l.end = tail
			l.fromTail(tail)
			return
		}
		at = group.end
		if at < len(l.items) && l.items[at].pause == none && l.items[at].is(kAnd) {
			at++
		}
	}
}

// closing reports whether a comma leads to several bars that end the sentence: "Honey, 9
// to 12."
func (l *layoutRow) closing(g numberGroup) bool {
	return g.several && l.items[g.at].pause == comma && l.items[l.from].pause >= stop && (g.end == len(l.items) || l.items[g.end].pause >= stop)
}

// place is the item behind the words between a content and its bars, "on bars".
func (l *layoutRow) place(at int) int {
	if at+1 < len(l.items) && (l.items[at].is(kAdv) || l.items[at].text == "=") && l.items[at].pause == none {
		at++ // "honey again 9-12", "honey = 9-12"
	}
	for _, word := range []kind{kOn, kBar} {
		if at+1 < len(l.items) && l.items[at].is(word) && (l.items[at].pause <= comma || l.items[at-1].colon) {
			at++
		}
	}
	return at
}

// take adds a pair that begins at an item.
func (l *layoutRow) take(at int, group numberGroup) {
	l.groups = append(l.groups, group)
	l.parts = append(l.parts, at)
	l.end = group.end
}

// fromTail reads the bars, each with what is on them behind, that end a row.
func (l *layoutRow) fromTail(at int) {
	rest := layoutRow{reader: l.reader, items: l.items, from: at}
	rest.barsFirst()
	l.groups, l.parts, l.end = append(l.groups, rest.groups...), append(l.parts, rest.parts...), max(l.end, rest.end)
}

// barsFirst reads "3-8 brood 9-12 honey 13 empty".
func (l *layoutRow) barsFirst() {
	for at := l.from; at < len(l.items); {
		group, ok := l.numbers(at)
		group.way = beforeTheir
		if !ok || group.end == len(l.items) || l.items[group.end].pause > none {
			return
		}
		end := l.what(group.end)
		if end == group.end || end < len(l.items) && l.items[end].pause == none && !barNumber(&l.items[end]) && !l.items[end].is(kAnd) {
			return
		}
		l.take(at, group)
		l.end = end
		at = end
		if at < len(l.items) && l.items[at].is(kAnd) {
			at++
		}
	}
}

// whatWords are the kinds of words that tell what is on bars.
var whatWords = setOf(kContent, kStage, kComb, kState)

// tells reports whether an item tells what is on bars.
func (l *layoutRow) tells(it *item) bool {
	return it.any3(kContent, kStage, kComb) || it.is(kState) && it.text == "empty"
}

// rowStarts are the kinds of words of which one stands where a row begins.
var rowStarts = whatWords.or(besideWhat).or(setOf(kNum))

// besideWhat are those that may stand with them.
var besideWhat = setOf(kAdv, kAmount, kFull)

// what is where the words that begin at an item and tell what is on bars end: at itself
// where they do not.
func (l *layoutRow) what(at int) int {
	end, found := at, false
	for k := at; k < len(l.items); k++ {
		it := &l.items[k]
		if k > at && (it.pause > none || l.items[k-1].colon) || it.any5(kCell, kCellKind, kBar, kQueen, kDo) {
			break
		}
		share := it.is(kNum) && it.n.share
		if !l.tells(it) && !it.anyOf(besideWhat) && !share {
			break
		}
		if l.tells(it) {
			found = true
			end = k + 1
		}
	}
	if !found || end < len(l.items) && (l.items[end].pause == none && l.items[end].any4(kCell, kCellKind, kOf, kQueen) || l.items[end].pause <= comma && l.items[end].is(kBar) && l.place(end) == end) {
		return at
	}
	return end
}

// numbers reads the group of numbers that begins at an item.
func (l *layoutRow) numbers(at int) (numberGroup, bool) {
	g := numberGroup{at: at, end: at}
	for k := at; k < len(l.items); {
		it := &l.items[k]
		if !rowBars(it) || it.n.or || strings.HasPrefix(it.text, "between") || k > at && (it.pause > comma || int(it.n.lo) <= g.hi) {
			break
		}
		if k == at {
			g.lo = int(it.n.lo)
		}
		g.several = g.several || k > at || it.n.hi > it.n.lo
		g.hi, g.end = max(int(it.n.lo), int(it.n.hi)), k+1
		if k++; k < len(l.items) && l.items[k].is(kAnd) && l.items[k].pause <= comma {
			k++
		}
	}
	if g.end == at {
		return g, false
	}
	if g.end < len(l.items) {
		next := &l.items[g.end]
		if next.pause == none && (next.any6(kCell, kCellKind, kMite, kSign, kBar, kUnit) || next.any4(kOf, kQueen, kDo, kTo) || next.is(kBees) && !g.several || next.is(kNum) && !next.n.share) {
			return g, false
		}
	}
	return g, true
}

// tail is the item where the last of a group's numbers begin to belong to what stands
// behind them: "9-12, 13 and 14 empty", "nine and ten eleven empty"; 0 where none do.
func (l *layoutRow) tail(g numberGroup) int {
	end := l.what(g.end)
	if !g.several || end == g.end || l.items[g.end].pause > none {
		return 0
	}
	told := gistOf(l.items[g.end:end]).kinds
	if !told.meet(setOf(kContent, kComb, kState)) {
		return 0 // "honey on 9, 10 and 11 capped"
	}
	if end < len(l.items) && l.items[end].pause == none && (barNumber(&l.items[end]) || l.items[end].is(kOn)) && told.has(kContent) {
		return 0 // "brood 3-8 honey 9-12"
	}
	for k := g.end - 1; k > g.at; k-- {
		it, before := &l.items[k], &l.items[k-1]
		if !barNumber(it) || before.is(kAnd) {
			continue
		}
		closed := before.n.hi > before.n.lo || k > g.at+2 && l.items[k-2].is(kAnd)
		if it.pause == comma || closed {
			return k
		}
	}
	return 0
}

// cut is the part of a group before an item.
func (l *layoutRow) cut(g numberGroup, end int) numberGroup {
	part := layoutRow{reader: l.reader, items: l.items[:end]}
	before, _ := part.numbers(g.at)
	before.way = g.way
	return before
}

// mark tells the items of the groups, and the noun before them, where they stand.
func (l *layoutRow) mark() {
	for _, g := range l.groups {
		l.items[g.at].laid = g.way
		if g.at > 0 && l.items[g.at-1].is(kBar) {
			l.items[g.at-1].laid = g.way
		}
	}
}

// convinces reports whether the numbers of a row must be bars: they are ranges and lists.
func (l *layoutRow) convinces() bool {
	several := 0
	for i := range l.groups {
		if l.groups[i].several {
			several++
		}
	}
	if len(l.groups) == 1 {
		named := l.items[max(l.groups[0].at-1, 0)].is(kBar)
		return l.labelled && (several > 0 || named) && (l.end == len(l.items) || l.items[l.end].pause >= comma)
	}
	return several > 1 || several > 0 && l.listing
}
