package parse

import "strings"

// Bars told by their numbers alone behind what is on them, "capped brood twelve down to nine", "sealed
// honey ten eleven and twelve", and those counted down before it, "eleven through nine full of honey".

// spanOpens reports whether the number begins a range that is counted down, with what is on its bars behind.
func (n *bareNumber) spanOpens() bool {
	it, far, what := &n.items[n.i], at(n.items, n.i+2), at(n.items, n.i+3)
	if n.prev != nil && it.pause < stop && !n.prev.any5(kContent, kComb, kSide, kPlace, kPattern) {
		return false
	}
	counted := barNumber(it) && n.next != nil && n.dashOrTo(n.next) && barNumber(far) && far.pause == none && far.n.hi == 0 && !far.n.ordinal && far.n.lo < it.n.lo
	return counted && what.pause == none && what.any3(kContent, kComb, kFull) && !strings.Contains(what.text, "egg")
}

// spanBehind reports whether the number begins a range in words behind what is on it: "sealed brood nine
// down to six", "eggs from three up to five".
func (n *bareNumber) spanBehind() bool {
	what, k := n.prev, n.i+2
	if what.is(kFrom) {
		what = n.back(2)
	}
	if !what.is(kContent) || k >= len(n.items) || !n.dashOrTo(n.next) || !strings.HasSuffix(n.next.text, " to") {
		return false
	}
	far := &n.items[k]
	return barNumber(&n.items[n.i]) && barNumber(far) && far.pause == none && !far.n.ordinal && far.n.hi == 0 && far.n.lo != n.items[n.i].n.lo && endsBars(n.items, k+1)
}

// listBehind reports whether the number begins a list of bars in their order behind what is on them, "sealed
// honey ten eleven and twelve"; two are next to each other, "nectar seven and eight".
func (n *bareNumber) listBehind() bool {
	first := &n.items[n.i]
	end, many := risingNumbers(n.items, n.i)
	if !n.prev.is(kContent) || many < 2 || first.n.lo < 2 || first.n.ordinal || first.n.approx || !endsBars(n.items, end) {
		return false
	}
	return many > 2 || n.plainList(n.items, n.i) && n.items[end-1].n.lo == first.n.lo+1
}

// endsBars reports whether numbers that end before item k count nothing: the phrase ends there, or goes on
// with what the bars are like.
func endsBars(items []item, k int) bool {
	return k >= len(items) || items[k].pause >= comma || items[k].any4(kPattern, kSide, kPlace, kPron)
}
