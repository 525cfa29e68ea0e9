package parse

// Queen cells of which only the number is told again: "another on bar six", "three of them".

// moreCells: "three queen cells on bar seven and one on bar nine", "a sealed cell on bar
// two, another on bar three, a third on bar five", "bar 5 has one, and bar 6 has two more".
func (s *scan) moreCells(i int) bool {
	last := s.cellsBefore(i)
	if last == nil || !last.present || !s.countsMoreOn(i) && !(s.countsMore(i) && s.barsBefore(i)) {
		return false
	}
	count := s.at(i).n
	if s.at(i).isWord2("another", "a third") || count.ordinal {
		count = quantity{lo: 1}
	} else if count.article || count.share {
		return false
	}
	s.found = append(s.found, s.r.newFinding(&finding{class: ofCells, what: last.what, kind: last.kind, present: true, count: count, hasCount: true, at: i, items: s.r.these(s.at(i)), rule: last.rule, form: "more"}))
	return true
}

// cellsBefore are the queen cells that a number at item i may count more of: those told
// before it, in this clause or right before it.
func (s *scan) cellsBefore(i int) *finding {
	last := s.lastCell()
	switch ago := s.r.sentenceNo - s.r.spokeOf.cells; {
	case last != nil || len(s.found) > 0:
		return last
	case i == 0 && ago == 1: // "… on bar four. Another on bar six."
		return s.r.lastCells
	case i > 0 && ago <= 1 && s.barsBefore(i) && s.countsMore(i):
		return s.r.lastCells
	}
	return nil
}

// countsMoreOn reports whether the number at item i tells how many are on the bars behind
// it: "one on bar nine", "and two more on bar six".
func (s *scan) countsMoreOn(i int) bool {
	on, bars := s.at(i+1), s.at(i+2)
	if on != nil && on.pause == none && on.isWord3("more", "others", "further") {
		on, bars = bars, s.at(i+3)
	}
	return on != nil && bars != nil && on.is(kOn) && bars.is(kBars)
}

// countsMore reports whether "another", "one more" or "two more" stands at item k with
// nothing behind it that it would count.
func (s *scan) countsMore(k int) bool {
	it := s.at(k)
	if it == nil || !it.is(kNum) || it.n.share {
		return false
	}
	more := s.at(k + 1)
	if it.text == "one" && s.at(k-1) != nil && s.at(k-1).is(kBars) && more != nil && more.pause == none && more.isWord2("that", "which") && s.stageSoon(k+2) {
		return true // "two sealed queen cells, and on bar eight one that had hatched"
	}
	another := it.text == "another"
	if more != nil && more.pause == none && (more.isWord3("more", "others", "further") || another && more.text == "one") {
		another, more = true, s.at(k+2)
		if these := s.at(k + 3); more != nil && more.is(kOf) && these != nil && these.isWord3("those", "these", "them") {
			more = s.at(k + 4) // "bar seven two more of those"
		}
	}
	return another && (more == nil || more.pause >= comma)
}

// barsBefore reports whether bars stand right before item i, or with "has" between.
func (s *scan) barsBefore(i int) bool {
	if have := s.at(i - 1); have != nil && have.is(kHave) {
		i--
	}
	bars := s.at(i - 1)
	return bars != nil && bars.is(kBars)
}

// soManyOfThem counts the cells told before by the number at item i: "swarm cells, seven of
// them", "queen cups on bar six, three of them". Behind their bars it counts part of them
// where a stage follows: "… three of them sealed".
func (s *scan) soManyOfThem(i int) bool {
	last, of, them := s.lastCell(), s.at(i+1), s.at(i+2)
	if last == nil || last.hasCount || !last.present || of == nil || them == nil || of.text != "of" || !them.any(kPron, kBees) || !barNumber(s.at(i)) {
		return false
	}
	if next := s.at(i + 3); last.at < i-1 && next != nil && next.pause < comma && !next.any3(kNo, kAnd, kThen) {
		return false
	}
	last.count, last.hasCount = s.at(i).n, true
	last.items = append(last.items, s.at(i))
	return true
}
