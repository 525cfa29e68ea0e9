package parse

// Cells that were counted together and whose stage is said afterwards: "three
// queen cells on bar five, two of them are sealed and one is open".

// toldApart reads the stage at item i as one of cells that were spoken of
// before, in this clause or the one before it.
func (s *scan) toldApart(i int) bool {
	of := s.lastCell()
	here := of != nil
	if !here && len(s.found) == 0 && s.r.sentenceNo-s.r.spokeOf.cells <= 1 {
		of = s.r.lastCells
	}
	if of == nil || !of.present || of.what != "any" && of.rest == 0 {
		return false
	}
	n, ok := s.cellsMeant(i, of)
	if !ok {
		return false
	}
	s.r.spokeOf.cells = s.r.sentenceNo
	stage := s.r.newFinding(&finding{class: ofCells, what: s.r.value(s.at(i), kStage), kind: of.kind, present: true, bars: of.bars, located: of.located || !here,
		count: n, hasCount: n.lo > 0, rest: of.countLeft() - n.lo, at: i, items: s.r.these(s.at(i)), rule: s.r.rule(s.at(i), kStage).ID})
	s.num = nil
	switch {
	case of.what != "any":
		s.found = append(s.found, stage)
	case here:
		stage.items = append(stage.items, of.items...)
		s.found[len(s.found)-1] = stage
	default:
		s.r.dropCells(of)
		s.found = append(s.found, stage)
	}
	return true
}

// countLeft is how many of the cells that were counted together have no stage
// yet.
func (f *finding) countLeft() float64 {
	if f.what == "any" && f.hasCount {
		return f.count.lo
	}
	return f.rest
}

// cellsMeant tells how many of the cells the words before a stage mean: a number
// of them, all, or those that are left.
func (s *scan) cellsMeant(i int, of *finding) (quantity, bool) {
	left := quantity{lo: of.countLeft()}
	for k := i - 1; k >= 0 && s.at(k+1).pause <= comma; k-- {
		it := s.at(k)
		switch {
		case barNumber(it) || it.is(kNum) && it.n.article:
			return it.n, of.countLeft() == 0 || it.n.lo <= of.countLeft()
		case s.r.isWord(it, "they", "both", "all", "the rest", "the others", "others", "rest", "all of them", "both of them", "all of which", "both of which"):
			return left, true
		case left.lo == 1 && it.isWord2("it", "that"): // "one queen cell on bar six and it's hatched"
			return left, true
		case !it.any(kBe, kAdv, kHave, kPron, kBees, kOther, kOf, kArt, kEach, kAnd):
			return quantity{}, false
		}
	}
	return quantity{}, false
}

// dropCells takes back cells that were kept without their stage.
func (r *reader) dropCells(f *finding) {
	path := "queen_cells." + f.what
	if len(f.bars) == 0 {
		r.cur.drop(path)
	}
	for _, b := range f.bars {
		r.cur.drop(r.barPath(b, path))
	}
}
