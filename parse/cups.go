package parse

// "Cup" measures syrup and bees, and names what a queen cell begins with: where it stands tells
// which.

// placedCups takes "cup" for a queen cup where it stands on a bar: "there was one
// cup on bar six", "queen cells: 1 cup, b6".
func (r *reader) placedCups(items []item) {
	for i := range items {
		if it := &items[i]; it.is(kUnit) && i > 0 && items[i-1].is(kNum) && items[i-1].n.whole() {
			onBar := i+2 < len(items) && items[i+1].is(kOn) && items[i+2].is(kBars)
			if onBar || barBeside(items, i) || foundBeside(items, i) {
				r.readCup(it)
			}
		}
	}
}

// barBeside reports whether the unit at item i stands right beside bars, or is told to be there,
// and nothing was done there: "1 cup b3", "b4 1 cup", "bar six there's just one cup".
func barBeside(items []item, i int) bool {
	if kindsOf(items[:i]).meet(setOf(kDo, kSubstance, kMite, kMethod)) || i+1 < len(items) && (items[i+1].is(kOf) || items[i+1].any(kSubstance, kBees)) {
		return false
	}
	last := i+1 == len(items) || items[i+1].pause >= comma
	behind := i+1 < len(items) && items[i+1].is(kBars) && items[i+1].pause <= comma && (i+2 == len(items) || items[i+2].pause >= comma)
	at, told := i-2, false
	for at > 0 && items[at+1].pause <= comma && items[at].any4(kHave, kThere, kBe, kAdv) {
		at, told = at-1, told || items[at].any(kHave, kThere)
	}
	return behind || at >= 0 && items[at+1].pause <= comma && items[at].is(kBars) && (last || told)
}

// foundBeside: "bar 5 has eggs and a cup", where the unit at item i ends a list of what is there.
func foundBeside(items []item, i int) bool {
	if i+1 < len(items) && items[i+1].pause < comma {
		return false
	}
	if items[i-1].pause == none && i > 2 && items[i-2].is(kAnd) {
		i--
	}
	return i > 1 && items[i-2].is(kContent) && !hasKind(items[:i-2], kDo)
}

// readCups takes "cup", a measure elsewhere, for a queen cup where cells were
// spoken of: "one charged queen cell, no sorry, just a cup".
func (r *reader) readCups(after, before []item) {
	if !hasKind(before, kCell) {
		return
	}
	for i := range after {
		if after[i].is(kUnit) {
			r.readCup(&after[i])
		}
	}
}

// readCup takes an item that says "cup" for a queen cup.
func (r *reader) readCup(it *item) {
	if it.isWord2("cup", "cups") {
		it.kinds, it.says = setOf(kCell), r.queenCups
	}
}

// onlyCup lets the cup at item i stand for the one cell that was told before, where this is said
// to be no more: "there's a queen cell on bar five but it's just a play cup".
func (s *scan) onlyCup(f *finding, i int) {
	if f.what != "cup" {
		return
	}
	told := s.r.told
	be := beginsAt(told, s.at(i).start) - 1
	for be > 0 && told[be].any6(kAdv, kArt, kBut, kStage, kCellKind, kNum) {
		be--
	}
	if be < 1 || !told[be].is(kBe) || !told[be-1].isWord4("it", "that", "which", "this") {
		return
	}
	if last := s.r.lastCells; len(s.found) == 0 && last != nil && s.r.sentenceNo-s.r.spokeOf.cells <= 1 && onlyCell(last) {
		f.bars, f.located, f.count, f.hasCount = last.bars, len(last.bars) > 0, quantity{lo: 1}, true
		s.r.dropCells(last)
	}
}

// onlyCell reports whether one cell of no said stage was told.
func onlyCell(f *finding) bool {
	return f.present && f.what == "any" && (!f.hasCount || f.count.lo == 1)
}
