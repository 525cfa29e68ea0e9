package parse

import "strings"

// plainNest takes "nest" for no brood where no bars stand behind it: "a wasps' nest in the
// hedge", but "Nest b3 to b8", "Nest: 3 to 8".
func plainNest(items []item) {
	for i := range items {
		it := &items[i]
		if len(it.text) != len("nest") || !strings.EqualFold(it.text, "nest") {
			continue
		}
		at := i + 1
		if at < len(items) && items[at].is(kOn) {
			at++
		}
		if i > 0 && it.pause == none || at >= len(items) || !items[at].is(kBars) {
			it.kinds, it.says = setOf(kWord), senseless
		}
	}
}

// content reads what is on the combs: the words at item i, with the measure and the
// place that waited for them.
func (s *scan) content(i int) {
	it, r := s.at(i), s.r
	rule := r.rule(it, kContent)
	if s.noContent(i, rule) || s.inCells(i) || it.is(kStage) && s.restage(i) { // "the honey is still uncapped on bar eight"
		return
	}
	if s.headsBrood(i, rule) {
		r.topic, it.used = "brood", true
		return
	}
	if rule.Value == "brood" && s.likeBefore(i) {
		return
	}
	stages := s.stagesOf(i, rule.ID)
	denied := s.denies(i)
	besideHer := s.besideHer(i)
	s.list++
	if s.joins(i) {
		s.list--
	}
	for what, more := "", rule.Value; more != ""; {
		what, more, _ = strings.Cut(more, " ")
		f := r.newFinding(&finding{class: ofComb, what: s.staged(what, i), present: !denied, at: i, items: r.these(it), rule: rule.ID, list: s.list})
		s.describe(f, i)
		if f.side == "" && s.sideFirst != "both" {
			f.side = s.sideFirst
		}
		if denied {
			f.cue = s.noCue
			f.items = append(f.items, s.denier)
		}
		if besideHer > 0 {
			f.bars, f.located = []int{besideHer}, true
		}
		if stages != nil {
			f.bars, f.located = stages.bars, stages.located
		}
		s.found = append(s.found, f)
		if s.labels(i) {
			r.labelled = f
		}
	}
	s.before = modifiers{}
	s.num = nil
}

// noContent reports whether the words for a content at item i tell of none: "never made it to the
// brood", an empty cell, "the nest".
func (s *scan) noContent(i int, rule *rule) bool {
	it := s.at(i)
	if s.elsewhere(i) || rule.ID == "empty-comb" && (s.lastCell() != nil || s.ofCells(i)) {
		it.used = it.used || rule.ID == "empty-comb"
		return true
	}
	return it.text == "the nest" && !s.c.has(kBars)
}

// inCells reports whether the content at item i is that of queen cells, and tells it of them:
// "two queen cells on bar six, larvae in both". "Three cups, no eggs in them" are empty, as a cup
// is unless that is told.
func (s *scan) inCells(i int) bool {
	if s.inCell(i) {
		return true
	}
	it, last := s.at(i), s.lastFound(i)
	if !it.is(kStage) || last == nil || last.class != ofCells {
		return false
	}
	it.used = true
	if !s.denies(i) {
		s.cell(i)
	}
	return true
}

// headsBrood reports whether "Brood:" at item i is the heading of what follows, and no finding.
func (s *scan) headsBrood(i int, rule *rule) bool {
	it := s.at(i)
	return it.colon && i == 0 && it.pause >= line && rule.Value == "brood" && (!s.c.has(kBars) || s.toldByStage()) && !countsBars(s.c.items, 1)
}

// likeBefore gives brood of a stage the pattern that is told of brood without one right
// behind it: "sealed brood, and compact brood too".
func (s *scan) likeBefore(i int) bool {
	last, next := s.lastFound(i), s.at(i+1)
	if that := s.at(i + 2); next != nil && next.text == "at" && that != nil && that.text == "that" {
		next = nil // "and tight brood at that"
	}
	if last == nil || s.before.pattern == "" || last.class != ofComb || !last.present || last.pattern != "" || s.before.amount != "" || s.before.hasCover || s.no >= 0 {
		return false
	}
	if last.what != "capped_brood" && last.what != "open_brood" || next != nil && next.pause == none && !next.isWord3("too", "as well", "at that") || !s.onlyBetween(last.at, i, kAnd, kAdv, kArt, kPattern) {
		return false
	}
	last.pattern = s.before.pattern
	last.items = append(append(last.items, s.before.items...), s.at(i))
	s.at(i).used, s.before, s.num = true, modifiers{}, nil
	return true
}

// toldByStage reports whether brood of a stage, or eggs, stands behind a label before any
// bars: "Brood: a little sealed brood, bar 3".
func (s *scan) toldByStage() bool {
	if told := s.r.told; len(told) > 2 && told[0].colon && told[1].is(kBars) && told[2].pause == none && told[2].any(kContent, kStage) && s.broodItem(&told[2]) {
		return true // "Brood: bar 5 sealed brood"
	}
	for k := 1; k < len(s.c.items) && !s.at(k).is(kBars); k++ {
		if it := s.at(k); it.is(kContent) && s.broodItem(it) {
			return true
		}
	}
	return false
}

// labels reports whether the item heads a sentence about bars that follow: "Sealed
// brood: bar 3", "Eggs b5".
func (s *scan) labels(i int) bool {
	it, next := s.at(i), s.at(i+1)
	return i == 0 && it.pause >= stop && (it.colon || next != nil && next.is(kBars) && next.pause == none)
}

// stagesOf takes back the brood whose stages the item tells, and returns it: "brood on
// bars three to six, all stages".
func (s *scan) stagesOf(i int, rule string) *finding {
	n := len(s.found) - 1
	if rule != "all-stages" || n < 0 || s.found[n].what != "brood" || !s.found[n].present || !s.onlyBetween(s.found[n].at, i, kBars, kOn, kBe, kAdv) {
		return nil
	}
	brood := s.found[n]
	s.found = s.found[:n]
	s.bound = min(s.bound, n)
	return brood
}

// ofCells: "a queen cup on bar six, but nothing in it" is said of the cup.
func (s *scan) ofCells(i int) bool {
	return s.r.spokeOf.cells == s.r.sentenceNo && len(s.found) == 0 && strings.Contains(s.at(i).text, " in ") && !s.headed
}

// inCell: "two queen cells with larvae" are charged cells, not open brood.
func (s *scan) inCell(i int) bool {
	last := s.lastCell()
	if last == nil || !last.present {
		return false
	}
	what := s.r.value(s.at(i), kContent)
	if what != "open_brood" && what != "eggs" || last.what == "capped" || last.what == "emerged" {
		return false
	}
	with := i - 1
	for with > last.at && (s.at(with).any6(kArt, kNum, kAdv, kAmount, kPattern, kColour) || s.r.isWord(s.at(with), s.r.wordsOf[larvaLooks]...)) {
		with--
	}
	if (with != last.at+1 && !s.endsIn(i, last.at, with) || !s.at(with).isWord3("with", "containing", "contains")) && !s.inEach(i) {
		return false
	}
	last.what = "charged"
	last.items = append(last.items, s.at(i))
	s.num, s.before = nil, modifiers{}
	return true
}

// inEach: "five charged cells, fat grubs in every one".
func (s *scan) inEach(i int) bool {
	in, each := s.at(i+1), s.at(i+2)
	return in != nil && each != nil && in.text == "in" && in.pause == none && each.is(kEach) && each.pause == none
}

// endsIn: "a cup on bar nine with eggs in" ends on what the cell has in it.
func (s *scan) endsIn(i, cell, with int) bool {
	in, after := s.at(i+1), s.at(i+2)
	return in != nil && in.text == "in" && (after == nil || after.pause > none) && s.onlyBetween(cell, with, kOn, kArt, kBars)
}

// staged applies a stage said apart from its noun: "sealed and open brood".
func (s *scan) staged(what string, i int) string {
	prev := s.at(i - 1)
	if prev == nil || !prev.is(kStage) || prev.used || s.at(i).pause > none {
		return what
	}
	stage := s.r.value(prev, kStage)
	switch {
	case what == "brood" && stage == "capped":
		prev.used = true
		return "capped_brood"
	case what == "brood" && stage == "charged":
		prev.used = true
		return "open_brood"
	case what == "honey" && stage == "capped":
		prev.used = true
		return "capped_honey"
	}
	return what
}

// elsewhere: contents that are spoken of without having been found: honey to
// harvest, pollen on the wing.
func (s *scan) elsewhere(i int) bool {
	it := s.at(i)
	next := s.at(i + 1)
	text := it.text
	if i > 1 && it.pause == none && s.at(i-1).is(kArt) && s.at(i-1).pause == none && s.r.isWord(s.at(i-2), s.r.wordsOf[goingAsFar]...) {
		return true // "never made it to the brood", "until I reached the brood"
	}
	if next != nil && next.is(kBe) && s.at(i+2) != nil && s.at(i+2).isWord4("ready", "ripe", "theirs", "delicious") {
		return true
	}
	if text == "drone" && (next == nil || !next.is(kBe) && next.pause == none && !next.any3(kAnd, kOn, kPlace)) && !(next == nil && i > 0) {
		return next != nil
	}
	if next != nil && next.pause == none && next.any(kWord, kDo) {
		return next.lists.has(notOnComb)
	}
	return false
}

// joins reports whether the content at i is joined to the one before by "and".
func (s *scan) joins(i int) bool {
	if len(s.found) == 0 {
		return false
	}
	last := s.found[len(s.found)-1]
	if last.at < s.boundAt() || last.ofItself() && s.at(i).pause == comma {
		return false
	}
	return s.at(i).pause <= comma && s.onlyBetween(last.at, i, kAnd, kOr, kAdv, kArt, kPattern, kAmount, kNum, kFull)
}

func (s *scan) boundAt() int {
	if s.bound == 0 || s.bound > len(s.found) {
		return 0
	}
	return s.found[s.bound-1].at
}

// describe gives the finding what was said before it.
func (s *scan) describe(f *finding, i int) {
	m := &s.before
	if m.set() {
		f.extent = m.extent
		f.items = append(f.items, m.items...)
		if m.hasCover {
			f.form = "before"
		}
	}
	if s.num != nil && s.bars != nil && s.numAt > s.barsAt && s.at(s.numAt+1) != nil && (s.at(s.numAt+1).text == "more" || s.at(s.numAt+1).is(kOf)) {
		s.bars, s.barsAt = s.num, s.numAt+1 // "five bars of brood, two more of honey"
	}
	if n, bar := s.at(i+1), s.at(i+2); s.at(i).colon && n != nil && bar != nil && n.is(kNum) && bar.is(kBar) {
		f.counted = n.n // "sealed brood: 7 bars"
		f.items = append(f.items, n, bar)
		return
	}
	if next := s.at(i + 1); next != nil && next.is(kBar) && next.pause == none && s.num != nil && s.numAt == i-1 && !s.num.article {
		f.counted = *s.num // "seven brood bars"
		f.items = append(f.items, s.at(s.numAt), next)
		return
	}
	if s.bars != nil && s.near(s.barsAt, i) && !s.presentAnew(i) && (m.amount == "" || len(s.found) == 0 || s.found[len(s.found)-1].at < s.barsAt) {
		f.counted = *s.bars
		f.items = append(f.items, s.at(s.barsAt-1), s.at(s.barsAt))
	} else if n := len(s.found); n > 0 && s.found[n-1].counted.lo > 0 && s.countsAnew(i) {
		f.counted = *s.num // "5 bars brood 3 stores"
		f.items = append(f.items, s.at(s.numAt))
	} else if n := len(s.found); n > 0 && s.found[n-1].counted.lo > 0 && s.joins(i) && m.amount == "" && !s.presentAnew(i) {
		f.counted = s.found[n-1].counted
	}
	if s.c.doubt != "" {
		f.doubts = append(f.doubts, "hedged: "+s.c.doubt)
	}
}

// countsAnew reports whether a number of its own stands right before the content at item i.
func (s *scan) countsAnew(i int) bool {
	return s.num != nil && s.numAt == i-1 && s.at(i).pause == none && s.num.whole() && !s.num.article && !s.num.share && s.num.lo < manyBars
}

// presentAnew: "three bars of open brood eggs present" counts no bars of eggs.
func (s *scan) presentAnew(i int) bool {
	next := s.at(i + 1)
	return next != nil && next.pause == none && next.text == "present" && i > 0 && s.at(i-1).is(kContent)
}

// near reports whether "of", "with" or "have" at most stand between a number of
// bars and the content.
func (s *scan) near(from, to int) bool {
	return to-from <= 7 && s.onlyBetween(from, to, kOf, kHave, kAdv, kPattern, kOn, kArt, kStage, kAmount, kFull, kAnd, kContent, kBe, kThere, kBut, kPron, kSide, kPlace)
}

// notThere: "eggs on three and four but not on five", "… but none on five", "…, not five"
// denies there what was just told of other bars.
func (s *scan) notThere(i int) bool {
	it, k := s.at(i), i+1
	if !it.isWord3("not", "none", "but not") {
		return false
	}
	if on := s.at(k); on != nil && on.is(kOn) && on.pause == none {
		k++
	}
	bars, after, r := s.at(k), s.at(k+1), s.r
	if bars == nil || !bars.is(kBars) || bars.taken || bars.pause > none || k == i+1 && it.text == "none" || after != nil && after.pause < comma && !after.any(kBut, kThen) {
		return false
	}
	f := s.lastFound(i)
	if f == nil && len(s.found) == 0 && r.sameSentence && (i == 0 || i == 1 && s.at(0).any(kBut, kAnd)) && r.spokeOf.queen != r.sentenceNo {
		f = r.lastContent
	}
	if f == nil || f.class != ofComb || !f.present || len(f.bars) == 0 {
		return false
	}
	it.used, bars.used, bars.taken = true, true, true
	s.found = append(s.found, r.newFinding(&finding{class: ofComb, what: f.what, at: i, items: r.these(it, bars), rule: f.rule, cue: r.quote(it), bars: bars.bars, located: true}))
	return true
}

// noneAtAll: "bar fifteen: none" says that no comb hangs there.
func (s *scan) noneAtAll(i int) {
	it := s.at(i)
	if s.notThere(i) {
		return
	}
	if on, bars, f := s.at(i+1), s.at(i+2), s.lastFound(i); bars != nil && f != nil && on.is(kOn) && bars.is(kBars) && f.class == ofComb {
		s.found = append(s.found, s.r.newFinding(&finding{class: ofComb, what: f.what, at: i, items: s.r.these(it), rule: f.rule, cue: it.text}))
		return // "eggs on bar four, absent on bar six"
	}
	if s.headed && i == len(s.c.items)-1 && i <= 1 && len(s.r.bars) > 0 {
		s.r.comb(s.r.bars, "size", "bare", s.r.why("comb-bare", "", it))
		s.touch()
	}
}

// restage: "honey, capped", "brood on bars three to five, all sealed".
func (s *scan) restage(i int) bool {
	last := s.lastFound(i)
	if last == nil || last.class != ofComb || !s.onlyBetween(last.at, i, kBars, kAdv, kBe, kOn, kFull, kYes, kSide, kThere, kEach) {
		return false
	}
	to := map[string]string{"honey capped": "capped_honey", "honey charged": "honey", "brood capped": "capped_brood", "brood charged": "open_brood"}[last.what+" "+s.r.value(s.at(i), kStage)]
	if to == "" {
		return false
	}
	last.what = to
	last.items = append(last.items, s.at(i))
	return true
}

// sealedOn: "eggs in two, larvae in three, sealed in four" tells of brood.
func (s *scan) sealedOn(i int) bool {
	bars := s.at(i + 1)
	if s.sealedBehind(i) {
		return true
	}
	the, at := false, i+1
	if prev := s.at(i - 1); prev != nil && prev.text == "the" && s.at(i).pause == none && bars != nil && bars.is(kBe) {
		the, at = true, at+1 // "the sealed's on six and seven"
		bars = s.at(at)
	}
	if bars != nil && bars.is(kOn) && bars.pause == none {
		bars = s.at(at + 1)
	}
	if bars == nil || !bars.is(kBars) || bars.pause > none && !s.r.inBrackets(bars) || s.r.cellTalk {
		return false
	}
	if prev := s.at(i - 1); prev != nil && !prev.any(kBars, kAnd) && s.at(i).pause == none && !the {
		return false // "the lid was sealed on bar four"
	}
	last := s.r.prevBrood
	if n := len(s.found); n > 0 {
		last = s.found[n-1]
	} else if !s.r.sameSentence && !(i == 0 && s.at(i).pause >= line) && !the {
		return false // but "Larvae: bars 4, 5", and below it "Capped: bars 3, 6"
	}
	return last != nil && last.class == ofComb && (last.what == "eggs" || last.what == "open_brood" || the && last.what == "brood")
}

// sealedBehind: "frame four eggs, frame five grubs, frame six sealed", and so on from bar to bar.
func (s *scan) sealedBehind(i int) bool {
	bars, next, last := s.at(i-1), s.at(i+1), s.r.prevBrood
	if bars == nil || !bars.is(kBars) || bars.pause < comma && i > 1 || s.at(i).pause > none || next != nil && next.pause < comma || len(s.found) > 0 {
		return false
	}
	goesOn := last != nil && last.what == "capped_brood" && s.r.lastContent == last && last.rule == s.r.rule(s.at(i), kStage).ID
	if bars.pause < comma && s.r.lastContent != last {
		return false // "bar five larvae bar six honey bar seven sealed"
	}
	return s.r.sameSentence && !s.r.cellTalk && last != nil && (last.what == "eggs" || last.what == "open_brood" || goesOn)
}

// amongBrood: "eggs and larvae and capped", "bar five capped, patchy" tell of brood.
func (s *scan) amongBrood(i int) bool {
	prev, next := s.at(i-1), s.at(i+1)
	if prev == nil || s.cellAhead(i) >= 0 || next != nil && next.pause == none && !next.any6(kPattern, kSide, kBars, kAnd, kFull, kPlace) {
		return false
	}
	if prev.is(kBars) && s.headed && len(s.found) == 0 {
		return next != nil && next.is(kPattern) && next.pause <= comma
	}
	last := s.lastFound(i)
	joined := prev.is(kAnd) && last != nil && last.at == i-2 || s.at(i).pause == comma && last != nil && last.at == i-1
	return joined && last.class == ofComb && last.present && (last.what == "eggs" || last.what == "open_brood")
}

// stagedBrood reads "sealed" below a heading that says brood.
func (s *scan) stagedBrood(i int) {
	it := s.at(i)
	what := map[string]string{"capped": "capped_brood", "charged": "open_brood"}[s.r.value(it, kStage)]
	if what == "" {
		return
	}
	f := s.r.newFinding(&finding{class: ofComb, what: what, present: true, at: i, items: s.r.these(it), rule: s.r.rule(it, kStage).ID, list: s.list})
	s.describe(f, i)
	s.found = append(s.found, f)
	s.before = modifiers{}
}
