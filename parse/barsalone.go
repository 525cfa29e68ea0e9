package parse

import "slices"

// Numbers alone that name bars by how they follow on each other, or on what was told: numbers
// that go up, a line that is only the next one, as many as were counted.

// risingTold reports whether several numbers begin that go up one by one, and what all of them
// hold, or is found on them, is told behind: "only lifted four and five, both had larvae", "on
// six and seven there's honey". Bars so named are no hives of that number.
func (n *bareNumber) risingTold() bool {
	end, many := risingNumbers(n.items, n.i)
	if many < 2 || int(n.items[end-1].n.lo-n.items[n.i].n.lo) != many-1 || end+1 >= len(n.items) || n.items[end].pause > comma || n.manner.severalHives || len(n.all) > 1 && n.cur.hive != "" && n.cur.hive[0] <= '9' {
		return false
	}
	all, told := &n.items[end], &n.items[end+1]
	if all.isWord2("both", "all") {
		return told.pause == none && told.any4(kHave, kBe, kContent, kFull) && !(n.close && n.prev.any(kHive, kOf))
	}
	opens := n.close && n.prev.text == "on" && (n.prev.pause >= comma || n.back(2).any3(kAnd, kThen, kBut) || len(n.before) == 1)
	return opens && all.any6(kThere, kPron, kShe, kArt, kQueen, kContent)
}

// lineAlone reports whether a number that is all of its line is the bar behind the one told
// before, and no answer: "bar one", "honey", "two", "pollen", "and three".
func (n *bareNumber) lineAlone() bool {
	if n.i+1 != len(n.items) || n.askedOnly || n.cellTalk && n.lastContent == nil || n.items[n.i].colon {
		return false
	}
	for k := range n.items[:n.i] {
		if !n.items[k].any3(kAnd, kThen, kNow) && n.items[k].text != "number" {
			return false
		}
	}
	return n.listing && n.last > 0 && int(n.items[n.i].n.lo) == n.last+1 && n.items[n.i].n.hi == 0
}

// herBar reports whether the number behind "on" is the bar in hand, on which the queen is,
// whatever is said then: "there's the queen on six go on point to her".
func (n *bareNumber) herBar() bool {
	return n.close && n.prev.text == "on" && n.back(2).any3(kQueen, kShe, kSeen) && !n.ranged() && slices.Contains(n.bars, int(n.items[n.i].n.lo)) && !(n.next != nil && n.next.any6(kBar, kBees, kOf, kUnit, kNum, kDate))
}

// sealedBar reports whether the number is the next of bars that are told one by one, and what is
// on it is sealed, where no cells are spoken of: "bar five eggs six sealed seven sealed".
func (n *bareNumber) sealedBar() bool {
	if !n.listing || n.cellTalk || hasKind(n.items, kCell) || hasKind(n.items, kCellKind) || hasKind(n.before, kCell) || n.value(n.next, kStage) != "capped" || n.ranged() || !n.follows(int(n.items[n.i].n.lo), n.before) {
		return false
	}
	k := n.i + 2
	return k >= len(n.items) || n.items[k].pause >= comma || barNumber(&n.items[k]) || n.items[k].any6(kPattern, kBut, kAnd, kAdv, kBar, kSide)
}

// placesRise reports whether the number behind "on" at the head of a sentence is followed by the
// next one behind "on" in the same sentence: "on two I've got honey on three pollen".
func (n *bareNumber) placesRise() bool {
	if !n.close || n.prev.text != "on" || len(n.before) > 1 && n.prev.pause < stop || n.ranged() || n.next == nil || n.next.pause > comma || !n.next.any6(kPron, kThere, kShe, kContent, kArt, kHave) {
		return false
	}
	for k := n.i + 2; k < len(n.items) && n.items[k].pause < stop; k++ {
		if it := &n.items[k]; n.items[k-1].text == "on" && barNumber(it) && it.pause == none && it.n.lo == n.items[n.i].n.lo+1 {
			return k+1 < len(n.items) && !n.items[k+1].any3(kBar, kBees, kUnit)
		}
	}
	return false
}

// asMany reports whether numbers that go up one by one begin, as many as the bars that were counted
// before them in the sentence, which they so name: "took three bars off, eight nine and ten".
func (n *bareNumber) asMany() bool {
	end, many := risingNumbers(n.items, n.i)
	if many < 2 || int(n.items[end-1].n.lo-n.items[n.i].n.lo) != many-1 || end < len(n.items) && n.items[end].pause == none && n.items[end].anyOf(neverBare) {
		return false
	}
	for k := len(n.before) - 2; k >= 0 && n.before[k+1].pause < stop; k-- {
		if it := &n.before[k]; barNumber(it) && n.before[k+1].is(kBar) && n.before[k+1].pause == none {
			return n.before[k+1].plural && int(it.n.lo) == many
		}
	}
	return false
}
