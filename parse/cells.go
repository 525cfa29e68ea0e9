package parse

import (
	"slices"
	"strings"
)

// stageMatters reports whether "sealed", "open" or "empty" speaks of a queen
// cell here: a cell, a kind of cell or another stage stands near, or cells were
// the last thing named.
func (s *scan) stageMatters(i int) bool {
	form := s.r.rule(s.at(i), kStage).Form
	if form == "after" {
		return s.lastCell() != nil
	}
	for k := i + 1; k < len(s.c.items) && k <= i+5; k++ {
		next := s.at(k)
		if next.any(kCell, kCellKind) {
			return true
		}
		if next.pause > comma || !next.any(kAnd, kOr, kNum, kStage, kAdv, kPattern, kComb, kState) {
			break
		}
	}
	counted := i - 1
	if still := s.at(i - 1); still != nil && still.is(kAdv) && still.pause == none {
		counted--
	}
	if prev := s.at(counted); prev != nil && prev.is(kNum) && !prev.n.share && s.lastCell() != nil && s.cellAhead(i) < 0 {
		return true // "four sealed queen cells and one torn down"
	}
	if s.cellsGoOn(i) || s.cellsAdded(i) {
		return true
	}
	if last := s.lastCell(); last != nil && (last.what == "any" || last.form == "more") && s.onlyBetween(last.at, i, kAdv, kBe, kHave, kEach, kBars, kOn, kThere, kAnd, kNum, kArt, kPron) {
		return true
	}
	return false
}

// cellsGoOn: in "swarm cells: b6 2 capped, b9 3 capped" a count and a stage on a
// further bar are cells again, and so at the head of the next line, "and bar eight one capped".
func (s *scan) cellsGoOn(i int) bool {
	prev, next := s.at(i-1), s.at(i+1)
	if !s.headed || prev == nil || !barNumber(prev) || s.r.lastCells == nil || len(s.found) > 0 {
		return false
	}
	near := s.r.spokeOf.cells == s.r.sentenceNo || i > 1 && s.at(i-2).is(kBars) && s.r.spokeOf.cells == s.r.sentenceNo-1
	return near && (next == nil || next.pause >= comma || next.is(kAnd))
}

// cellsAdded: "two sealed queen cells. Also one charged" counts cells of another stage
// where those of the sentence before were.
func (s *scan) cellsAdded(i int) bool {
	of, count, next := s.r.lastCells, s.at(i-1), s.at(i+1)
	if of == nil || count == nil || !barNumber(count) || s.headed || len(s.found) > 0 || s.r.sentenceNo-s.r.spokeOf.cells > 1 || !of.present || of.what == "any" || next != nil && next.pause < comma && !next.any(kOn, kBars) {
		return false
	}
	if i > 2 && s.r.sameSentence && s.r.sentenceNo == s.r.spokeOf.cells && s.at(i-2).is(kAnd) && allOf(s.c.items[:i-2], setOf(kBut, kAdv)) {
		return true // "three charged cells on bar 7 though, and one sealed on bar 8"
	}
	return i == 1 || i == 2 && (s.at(0).is(kAnd) || s.at(0).text == "also")
}

// lastCell is the finding before, if it is of queen cells; nil otherwise.
func (s *scan) lastCell() *finding {
	if len(s.found) == 0 {
		return nil
	}
	f := s.found[len(s.found)-1]
	if f.class != ofCells {
		return nil
	}
	return f
}

// cell reads queen cells from their parts: a count, a stage, a kind and the
// noun, in whatever order they come.
func (s *scan) cell(i int) {
	switch it := s.at(i); {
	case it.is(kCell):
		s.cellNoun(i)
	case it.is(kCellKind):
		s.cellKind(i)
	default:
		s.cellStage(i)
	}
}

// cellKind reads what queen cells are for: that of the cells told last, "two cells, looks like
// supersedure", or of those that follow, "two swarm cells".
func (s *scan) cellKind(i int) {
	it, r := s.at(i), s.r
	ahead, last := s.cellAhead(i), s.lastCell()
	if prev := s.at(i - 1); prev != nil && prev.isWord6("to", "the", "a", "they", "will", "might") && ahead < 0 {
		return // "whether they mean to swarm"
	}
	switch {
	case last != nil && (ahead < 0 || s.at(ahead).text == "ones"):
		last.kind = r.value(it, kCellKind)
		last.items = append(last.items, it)
	case ahead < 0 && r.kindOfBefore(it):
	default:
		s.kindAt, s.kindItem = r.value(it, kCellKind), it
	}
}

// cellStage reads the stage of queen cells: that of the cells told last, "both of them sealed",
// of more of them, "five cells, two sealed", or of those that follow, "two sealed cells".
func (s *scan) cellStage(i int) {
	it, r := s.at(i), s.r
	alone := s.cellAhead(i) < 0
	if alone && s.toldApart(i) {
		return
	}
	stage := r.value(it, kStage)
	if last := s.lastCell(); last != nil {
		if alone && s.num != nil && (s.numAt == i-1 || s.numAt == i-2 && s.at(i-1).is(kAdv)) && last.what != "any" {
			s.countedStage(i, stage)
			return
		}
		if ofAll := i > 0 && s.at(i-1).is(kEach); alone || ofAll {
			s.stageOfLast(i, last, stage)
			return
		}
	}
	if s.num != nil && s.cellsGoOn(i) {
		s.countedStage(i, stage).kind = r.lastCells.kind
		r.spokeOf.cells = r.sentenceNo
		return
	}
	if s.num != nil && s.cellsAdded(i) {
		if f := s.countedStage(i, stage); !s.c.has(kBars) {
			f.bars, f.located = r.lastCells.bars, true
		}
		return
	}
	if s.stageIx >= 0 && s.stageAt != "" { // "two sealed and one open queen cell"
		s.holdCell(i)
	}
	s.stageAt, s.stageIx, s.stageItem = stage, i, it
	if s.num != nil && s.numAt >= i-2 {
		s.stageNum, s.num = s.num, nil
	}
}

// countedStage finds as many more cells of a stage as the number before it says: "five cells,
// two sealed".
func (s *scan) countedStage(i int, stage string) *finding {
	it := s.at(i)
	f := s.r.newFinding(&finding{class: ofCells, what: stage, present: true, count: *s.num, hasCount: true, at: i, items: s.r.these(it), rule: s.r.rule(it, kStage).ID})
	s.found, s.num = append(s.found, f), nil
	return f
}

// stageOfLast tells the stage of the cells found last, where it was not told or is made more
// of: "five queen cells: three sealed and two open", "a cup with an egg".
func (s *scan) stageOfLast(i int, last *finding, stage string) {
	if last.what != "any" && last.form != "more" && !(last.what == "cup" && stage == "charged") && !(last.what == "charged" && stage == "cup") {
		return
	}
	last.what = stage
	last.items = append(last.items, s.at(i))
	if s.num != nil && s.numAt == i-1 {
		last.count, last.hasCount, s.num = *s.num, true, nil
	}
}

// kindOfBefore: "one sealed cell, looks like supersedure".
func (r *reader) kindOfBefore(it *item) bool {
	f := r.lastCells
	if f == nil || f.kind != "" || r.sentenceNo != r.spokeOf.cells {
		return false
	}
	base := "queen_cells." + f.what
	paths := []string{base}
	if len(f.bars) > 0 {
		paths = nil
		for _, b := range f.bars {
			paths = append(paths, r.barPath(b, base))
		}
	}
	for _, p := range paths {
		r.cur.put(p+".kind", r.value(it, kCellKind), r.why("cell-kind", "", it))
	}
	f.kind = r.value(it, kCellKind)
	return true
}

// cellAhead is the item of the cell noun that follows, or -1.
func (s *scan) cellAhead(i int) int {
	for k := i + 1; k < len(s.c.items) && k <= i+6; k++ {
		it := s.at(k)
		if it.is(kCell) {
			return k
		}
		if it.pause > comma || !it.any(kAnd, kOr, kNum, kStage, kAdv, kPattern, kCellKind, kQueen, kComb, kState) {
			return -1
		}
	}
	return -1
}

// holdCell keeps a count and stage whose noun is still to come.
func (s *scan) holdCell(i int) {
	f := s.r.newFinding(&finding{class: ofCells, what: s.stageAt, present: true, at: i - 1, items: s.r.these(s.stageItem), rule: s.r.rule(s.stageItem, kStage).ID})
	if s.stageNum != nil {
		f.count, f.hasCount = *s.stageNum, true
	}
	s.cells = append(s.cells, f)
	s.stageAt, s.stageNum, s.stageItem = "", nil, nil
}

// cellNoun reads the noun of queen cells, and with it the stages, kinds and counts that
// waited for it.
func (s *scan) cellNoun(i int) {
	it, r := s.at(i), s.r
	if !s.ofQueens(i) {
		return
	}
	s.dropLabel(i)
	rule := r.rule(it, kCell)
	what := "any"
	if rule.Value == "cup" {
		what = "cup"
	}
	if s.stageAt != "" && !(what == "cup" && s.stageAt == "cup") {
		what = s.stageAt
	}
	r.cellTalk = true
	r.spokeOf.cells = r.sentenceNo
	denied := s.denies(i) || s.countsNone(i)
	f := s.r.newFinding(&finding{class: ofCells, what: what, present: !denied, at: i, items: s.r.these(it), rule: rule.ID, kind: s.kindAt})
	if s.stageItem != nil {
		f.items = append(f.items, s.stageItem)
	}
	if s.kindItem != nil {
		f.items = append(f.items, s.kindItem)
	}
	if denied {
		f.cue, f.kind = s.noCue, ""
		f.items = append(f.items, s.denier)
	} else {
		s.countCells(f, i)
	}
	if it.text == "ones" && r.lastCells != nil && f.kind == "" {
		f.kind = r.lastCells.kind
	}
	if s.c.doubt != "" {
		f.doubts = append(f.doubts, "hedged: "+s.c.doubt)
	}
	s.onlyCup(f, i)
	if last := s.lastCell(); last != nil && what != "any" && last.what == "any" && last.present && !last.hasCount && s.onSoManyBars(last.at) {
		s.found = s.found[:len(s.found)-1]
	}
	for _, held := range s.cells {
		held.kind = s.kindAt
		if denied {
			held.present, held.cue = false, s.noCue
		}
		s.found = append(s.found, held)
	}
	s.found = append(s.found, f)
	s.cells, s.before = nil, modifiers{}
	s.forgetCell()
	if !f.present {
		s.colonyWide(f)
	}
}

// ofQueens reports whether the noun at item i is of queen cells that are told anew: not
// of the cells of a comb, of those told before, or of such as would be.
func (s *scan) ofQueens(i int) bool {
	it, r := s.at(i), s.r
	bare, last := r.value(it, kCell) == "cells", s.lastCell()
	staged, kinded, counted := s.stageAt != "", s.kindAt != "", s.num != nil && s.numAt == i-1
	deniedAlone := s.no >= 0 && s.no == i-1 && it.text == "cells" // "no cells on bar seven" are queen cells
	next := s.at(i + 1)
	switch {
	case it.text == "ones" && (r.spokeOf.cells != r.sentenceNo || !staged):
		return false
	case bare && !staged && !kinded && last == nil && !(counted && (r.cellTalk || s.cellsOnBar(i))) && !deniedAlone:
		return false
	case bare && !staged && kinded && last != nil && last.kind == "" && s.num == nil && s.no < 0:
		last.kind = s.kindAt // "one queen cell, an emergency cell I think"
		last.items = append(last.items, it)
		last.at, s.kindAt, s.kindItem = i, "", nil
		return false
	case bare && !staged && kinded && s.kindItem != nil && len(s.found) == 0 && s.no < 0 && r.kindOfBefore(s.kindItem):
		s.kindAt, s.kindItem, s.num = "", nil, nil
		return false
	case next != nil && next.pause == none && next.isWord4("would", "could", "might", "should"):
		s.forgetCell() // "a swarm cell would hang here"
		return false
	}
	return true
}

// forgetCell drops the stage, the kind and the count that waited for a noun.
func (s *scan) forgetCell() {
	s.kindAt, s.kindItem, s.stageAt, s.stageItem, s.stageNum, s.num = "", nil, "", nil, nil, nil
}

// countCells gives the cells at item i their number, from before or behind the noun.
func (s *scan) countCells(f *finding, i int) {
	next, third := s.at(i+1), s.at(i+2)
	switch n := s.countFor(i); {
	case n != nil:
		f.count, f.hasCount = *n, true
	case s.at(i).colon && next != nil && barNumber(next) && (third == nil || !third.is(kBar)):
		f.count, f.hasCount = next.n, true // "Queen cells: 2, sealed"
		next.used = true
	case s.countTrails(i) != nil:
		n := s.countTrails(i)
		f.count, f.hasCount = n.n, true // "play cups only, six"
		n.used = true
	case next != nil && barNumber(next) && next.pause == none && third != nil && third.is(kOn) && third.pause == none && s.at(i+3) != nil && s.at(i+3).is(kBars) && s.trailsAlone(i+4):
		f.count, f.hasCount = next.n, true // "queen cells one on bar six capped"
		next.used = true
	}
}

// trailsAlone reports whether nothing but the stage and kind of cells, in a phrase, stands at
// item i and behind it.
func (s *scan) trailsAlone(i int) bool {
	for ; i < len(s.c.items) && s.at(i).pause <= comma; i++ {
		if !s.at(i).any3(kStage, kCellKind, kAdv) && s.at(i).text != "type" {
			return false
		}
	}
	return i > len(s.c.items)-1
}

// countTrails is the number behind a comma that counts the cells at item i and ends its
// phrase; nil where none does.
func (s *scan) countTrails(i int) *item {
	k := i + 1
	if only := s.at(k); only != nil && only.pause == none && only.any(kAdv, kBut) {
		k++
	}
	n := s.at(k)
	if n == nil || s.headed || !barNumber(n) || n.pause != comma || s.at(k+1) != nil && s.at(k+1).pause < comma {
		return nil
	}
	return n
}

// countsNone: "QCs 0" denies them.
func (s *scan) countsNone(i int) bool {
	n, next := s.at(i+1), s.at(i+2)
	if n == nil || !n.is(kNum) || n.n.lo > 0 || n.n.hi > 0 || n.n.article || n.pause > none || next != nil && next.pause == none {
		return false
	}
	s.denier, s.noCue = n, n.text
	return true
}

// cellsOnBar: "three cells on bar six" counts queen cells; nobody counts others.
func (s *scan) cellsOnBar(i int) bool {
	on, bars := s.at(i+1), s.at(i+2)
	return bars != nil && !s.num.article && s.num.whole() && on.is(kOn) && on.pause == none && bars.is(kBars) && s.at(i).isWord2("cells", "cell") && !hasKind(s.c.items[:i], kSign)
}

// dropLabel takes back the cells that a label named: "Queen cells: 1 empty cup".
func (s *scan) dropLabel(i int) {
	last := s.lastCell()
	if last == nil || last.what != "any" || !s.at(last.at).colon || !s.onlyBetween(last.at, i, kNum, kStage, kState, kAdv, kCellKind, kPattern) {
		return
	}
	s.found = s.found[:len(s.found)-1]
	if last.hasCount {
		s.num, s.numAt = &last.count, last.at+1
	}
}

// colonyWide: "no queen cells" said for itself denies them of the colony, not
// of the bar in hand.
func (s *scan) colonyWide(f *finding) {
	if f.what != "any" && s.headed && s.cellsFound() {
		return // "bar six two empty cups, no charged cells"
	}
	spoken := s.denier != nil && s.denier.pause == none && s.denier != s.at(0) || s.denier == s.at(0) && s.denier.pause == none
	for k := f.at + 1; k < len(s.c.items); k++ {
		if s.at(k).any3(kBars, kBar, kThere) {
			return
		}
	}
	if !s.here && (spoken || !s.headed && !s.r.sameSentence) {
		f.located = true
	}
}

// cellsFound reports whether the clause has found queen cells already.
func (s *scan) cellsFound() bool {
	return slices.ContainsFunc(s.found, func(f *finding) bool { return f.class == ofCells && f.present })
}

func (s *scan) countFor(i int) *quantity {
	if s.stageNum != nil {
		return s.stageNum
	}
	if before := s.at(i - 1); s.num == nil && before != nil && before.text == "a little" && !s.at(i).plural && s.at(i).pause == none {
		return &quantity{lo: 1} // "a little play cup"
	}
	if s.num != nil && s.num.article && !s.onlyBetween(s.numAt, i, kStage, kCellKind, kAdv, kPattern, kQueen, kComb, kState) {
		if s.r.isWord(s.at(s.numAt+1), s.r.wordsOf[cellSizes]...) && s.onlyBetween(s.numAt+1, i, kStage, kCellKind, kAdv, kQueen, kState) {
			return s.num // "a tiny queen cup"
		}
		return nil // "a row of empty cups"
	}
	if s.num != nil && s.onlyBetween(s.numAt, i, kStage, kCellKind, kAdv, kPattern, kQueen, kComb, kState, kOf, kArt, kAmount, kWord, kFull) && i-s.numAt <= 4 {
		return s.num
	}
	return nil
}

// severalEggs: more than one egg to a cell is a sign of laying workers, and
// eggs all the same.
func (s *scan) severalEggs(i int) {
	it, r := s.at(i), s.r
	rule := r.rule(it, kSign)
	if s.denies(i) || it.n.lo == 1 && it.n.hi == 0 {
		return
	}
	if strings.Contains(it.text, "egg") || strings.Contains(it.text, "ex") {
		s.found = append(s.found, s.r.newFinding(&finding{class: ofComb, what: "eggs", present: true, at: i, items: s.r.these(it), rule: rule.ID}))
	}
	s.found = append(s.found, s.r.newFinding(&finding{class: ofSign, what: rule.Value, present: true, at: i, items: s.r.these(it), rule: rule.ID}))
	s.whereEggsAre()
	s.num = nil
}

// whereEggsAre gives the sign found last the bars of the eggs that were told right before it, of
// which it is a sign: "eggs on bars 4 and 5, two to a cell", "eggs on 4 but several to a cell".
func (s *scan) whereEggsAre() {
	n := len(s.found) - 1
	eggs := s.r.lastContent
	if n > 0 {
		eggs = s.found[n-1]
	}
	if eggs != nil && eggs.what == "eggs" && eggs.present && len(eggs.bars) > 0 && (n > 0 || s.r.sameSentence || s.found[n].at <= 1) {
		s.found[n].bars, s.found[n].located = eggs.bars, true
	}
}

// allOf takes the number of "all three queen cells".
func (s *scan) allOf(i int) {
	last := s.r.mended[s.at(i).to-1]
	w := s.r.numbers.of(last.id)
	if w.kind == unitWord && w.value > 1 && s.cellAhead(i) >= 0 {
		s.num, s.numAt = &quantity{lo: w.value}, i
	}
}
