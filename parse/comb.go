package parse

import (
	"strings"
)

// combBars are the bars that a word about comb speaks of: those in hand, or
// those named behind it.
func (s *scan) combBars(i int) []int {
	r := s.r
	for k := i + 1; k < len(s.c.items) && k <= i+5; k++ {
		it := s.at(k)
		if it.is(kBars) && !it.taken {
			if !r.heads(s.c.items, k) || !s.headed && s.closes(k) {
				return it.bars
			}
			break
		}
		if it.any6(kContent, kCell, kBut, kDo, kNo, kThere) {
			break
		}
	}
	if len(r.bars) == 0 || r.inHand == noBar {
		return nil
	}
	for k := i + 1; k < len(s.c.items) && k <= i+2; k++ {
		if s.at(k).is(kThere) && !r.isWord(s.at(k), "there", "here") {
			return r.bars // "there was no comb on either"
		}
	}
	if s.headed || s.here || r.inHand == thisLine || r.inHand == awaiting || s.leansBack() {
		return r.bars
	}
	return nil
}

// comb reads the state of the wax at item i and reports whether it took it.
func (s *scan) comb(i int) bool {
	it, r := s.at(i), s.r
	if it.used {
		return false
	}
	taken := false
	for _, n := range it.says.rules {
		rule := &r.rules[n]
		if rule.Kind == kComb && !(rule.Value == "drawn=1" && s.shared(i)) {
			taken = s.combRule(i, rule) || taken
		}
	}
	return taken
}

// shared reports whether a share of the comb is said with "drawn", which alone
// means all of it.
func (s *scan) shared(i int) bool {
	next := s.at(i + 1)
	if next != nil && next.is(kTo) {
		next = s.at(i + 2)
	}
	return s.before.hasCover && s.before.at >= i-3 || next != nil && next.is(kNum) && next.n.share && next.pause == none && !s.fullLeadsOn(i+1)
}

func (s *scan) combRule(i int, rule *rule) bool {
	it, r := s.at(i), s.r
	name, value, _ := strings.Cut(rule.Value, "=")
	text := it.text
	if name == "../placed" {
		return false
	}
	if rule.ID == "comb-broken" && !s.combInHand(i) && !strings.Contains(text, "comb") {
		return false
	}
	if next := s.at(i + 1); strings.Contains(text, "size") && next != nil && next.pause == none && next.any(kAmount, kContent) && r.value(next, kContent) != "empty" {
		return false // "a palm-sized patch of brood"
	}
	if s.ofHer(i) {
		return false
	}
	if n := len(s.found); n > 0 && s.found[n-1].amount != "" && !strings.Contains(text, "comb") && (strings.Contains(text, " than ") || strings.HasPrefix(text, "as big as ")) {
		it.used = true
		return true // "a patch of brood on bar four no bigger than a saucer"
	}
	if s.r.inList(weakCombWords, text) && !s.combInHand(i) || strings.Contains(text, "size") && (len(s.found) > s.bound || !s.combInHand(i)) {
		return false
	}
	bars := s.combBars(i)
	if len(bars) == 0 {
		return false
	}
	if next := s.at(i + 1); s.r.inList(weakCombWords, text) && name != "broken" && next != nil && next.pause == none && next.any6(kWord, kBar, kContent, kCell, kSign, kQueen) && text != "drawn" && text != "built" && text != "comb" {
		return false
	}
	if value == "share" && s.no >= 0 && s.no == i-1 && r.isWord(it, "comb") {
		r.comb(bars, "size", "bare", r.why("comb-bare", s.noCue, it, s.at(s.no)))
		s.no = -1
		s.touch()
		return true
	}
	if value == "share" {
		return s.drawn(i, rule, bars, text)
	}
	denied := s.no >= 0 && i-s.no <= 3
	cue := ""
	if denied {
		cue = s.noCue
		switch {
		case value == "yes":
			value = "no"
		case value == "no" && name != "attached": // not free: where it is fast was not said
			value = "yes"
		default:
			it.used = true
			s.at(s.no).used = true
			s.no = -1
			return true
		}
		if name == "new" || name == "old" || name == "broken" {
			s.no = -1
			it.used = true
			return true
		}
		s.at(s.no).used = true
		s.no = -1
	}
	if name == "attached" && s.c.has(kNow) && r.tells(bars[0], "comb.attached") {
		it.used = true
		return true // "cut it free and it now hangs clear": the record has it as found
	}
	w := r.why(rule.ID, cue, it)
	if s.c.doubt != "" {
		w.doubts = append(w.doubts, "hedged: "+s.c.doubt)
	}
	r.comb(bars, name, value, w)
	s.combSpoken = true
	s.touch()
	return true
}

// tells reports whether a leaf of a bar has been written.
func (r *reader) tells(bar int, leaf string) bool {
	_, ok := r.cur.get(r.barPath(bar, leaf))
	return ok
}

// ofHer reports whether the word describes the queen or the bees: "a small dark
// queen".
func (s *scan) ofHer(i int) bool {
	for k := i + 1; k < len(s.c.items) && s.at(k).pause == none; k++ {
		if !s.at(k).any3(kComb, kAdv, kColour) || s.at(k).is(kBar) {
			return s.at(k).any(kQueen, kBees) && !s.at(k).any(kContent, kCell)
		}
	}
	return false
}

// touch marks the bar in hand as spoken of.
func (s *scan) touch() {
	if s.r.inHand == awaiting {
		s.r.inHand = thisLine
	}
}

// combInHand reports whether a bar or comb is spoken of right here.
func (s *scan) combInHand(i int) bool {
	if s.c.has(kShe) || s.c.has(kQueen) {
		return false
	}
	if s.headed {
		return true
	}
	for k := max(0, i-4); k < len(s.c.items) && k <= i+4; k++ {
		if s.at(k).any(kBar, kBars) {
			return true
		}
	}
	head := s.at(0)
	if head.any3(kAnd, kThen, kBut) && len(s.c.items) > 1 {
		head = s.at(1)
	}
	first := head.text
	if s.r.inHand == thisLine && s.r.sameSentence && s.r.headedBars && len(s.r.bars) == 1 && s.at(0).is(kBe) {
		return true // "bar 9, which I put in a fortnight ago, is half built"
	}
	return s.r.inHand == awaiting || s.r.inHand == thisLine && (first == "it" || first == "comb" || s.here)
}

// drawn writes the share of the comb that is built: "a third drawn", "half
// built"; "drawn" alone is all of it.
func (s *scan) drawn(i int, rule *rule, bars []int, text string) bool {
	it, r := s.at(i), s.r
	v := 1.0
	items := []*item{it}
	alone := text == "drawn" || text == "built" || text == "drawn out" || text == "built out" || text == "drawn down"
	next := s.at(i + 1)
	if next != nil && next.is(kTo) && next.pause == none && s.at(i+2) != nil {
		next = s.at(i + 2) // "drawn to about a quarter"
	}
	switch {
	case s.before.hasCover && s.before.at >= i-3:
		v = s.before.cover
		items = append(items, s.before.items...)
		s.before = modifiers{}
	case next != nil && next.is(kMeasure):
		return false // "built down 13 cm"
	case s.sizedBehind(i):
		return false // "just built a small comb"
	case next != nil && next.is(kNum) && next.n.share && next.pause == none && alone && !s.fullLeadsOn(i+1):
		v = next.n.lo
		items = append(items, next)
		next.used = true
	case !alone:
		return false
	case s.at(i-1) != nil && s.at(i-1).any3(kPron, kHave, kBe) && text != "drawn" && text != "drawn out":
		return false
	}
	if s.no >= 0 {
		s.no = -1
		it.used = true
		return true
	}
	w := r.why(rule.ID, "", items...)
	if s.c.doubt != "" {
		w.doubts = append(w.doubts, "hedged: "+s.c.doubt)
	}
	r.comb(bars, "drawn", formatNumber(v), w)
	s.combSpoken = true
	s.touch()
	return true
}

// sizedBehind reports whether a comb of some size is what was built.
func (s *scan) sizedBehind(i int) bool {
	k := i + 1
	if art := s.at(k); art != nil && art.is(kArt) && art.pause == none {
		k++
	}
	it := s.at(k)
	return it != nil && it.pause == none && strings.HasPrefix(s.r.value(it, kComb), "size=")
}

// length reads the size of a comb: "six by four inches" is width by depth; a
// single measure is its named direction.
func (s *scan) length(i int) {
	it, r := s.at(i), s.r
	mm, ok := it.size.mm()
	if !ok || it.used {
		return
	}
	bars := s.combBars(i)
	if len(bars) == 0 || s.ofFixture(i) {
		return
	}
	w := r.why("comb-length", "", it)
	if it.size.amount.approx {
		w.doubts = append(w.doubts, "an estimate")
	}
	put := func(name string, v float64) { r.comb(bars, name, formatNumber(v), w) }
	if by := s.at(i - 1); by != nil && byWord(by) {
		if first := s.at(i - 2); first != nil && first.any(kNum, kMeasure) {
			wide, ok := first.size.mm()
			if first.is(kNum) {
				wide, ok = first.n.lo*millimetres[it.size.unit], true
			}
			if ok {
				first.used, by.used = true, true
				w.spans = append(w.spans, r.spanOf(first)...)
				put("width_mm", wide)
				put("depth_mm", mm)
				s.num = nil
				s.touch()
				return
			}
		}
	}
	if next := s.at(i + 1); next != nil && byWord(next) {
		if far := s.at(i + 2); far != nil && far.is(kNum) && !far.n.article { // "five inches by four"
			far.used, next.used = true, true
			w.spans = append(w.spans, r.spanOf(far)...)
			put("width_mm", mm)
			put("depth_mm", far.n.lo*millimetres[it.size.unit])
			s.touch()
			return
		}
		return // the width of "12 cm by 7 cm", read with the depth
	}
	put(s.direction(i), mm)
	s.touch()
}

// ofFixture reports whether a length is that of an entrance, floor or the like
// named before it: "closed the entrance to a gap of 8 mm", "and I reduced it to 40 mm".
func (s *scan) ofFixture(i int) bool {
	for k := i - 1; k >= 0; k-- {
		switch it := s.at(k); {
		case it.is(kFixture):
			return true
		case it.any3(kBars, kComb, kBar):
			return false
		}
	}
	return s.r.lastFixture != "" && s.c.has(kDo)
}

func byWord(it *item) bool {
	return it.text == "by" || it.text == "x" || it.text == "×"
}

// direction is the leaf of the direction named with a single measure.
func (s *scan) direction(i int) string {
	for _, k := range []int{i + 1, i + 2, i - 1, i - 2} {
		it := s.at(k)
		if it == nil || k > i && it.pause > none {
			continue
		}
		switch it.text {
		case "wide", "across", "width", "in width", "wide across":
			it.used = true
			return "width_mm"
		case "deep", "depth", "tall", "down", "high", "in depth", "built down", "drawn down":
			it.used = true
			return "depth_mm"
		case "long", "length", "in length":
			it.used = true
			return "length_mm"
		}
		if it.any(kMeasure, kContent) && k > i {
			break
		}
	}
	return "length_mm"
}

// broodPattern reads the laying pattern of the colony as a whole, or of the
// bars in hand where brood was just spoken of there.
func (s *scan) broodPattern(i int) {
	it, r := s.at(i), s.r
	for _, k := range []int{i + 1, i + 2, i + 3, i + 4, i - 1, i - 2} {
		p := s.at(k)
		if p == nil || p.used || !p.is(kPattern) && !(k > i && r.isWord(p, "poor", "bad", "terrible", "dreadful")) {
			continue
		}
		if k > i && !s.onlyBetween(i, k, kBe, kAdv, kWhole, kOn, kThere, kMaybe, kPron, kWill, kWord) {
			continue
		}
		if last := s.lastFound(i); last != nil && s.patternIsOf(last, i) {
			last.pattern = r.patternOf(p)
			last.items = append(last.items, it, p)
			it.used, p.used = true, true
			return
		}
		r.leaf("brood_pattern", r.patternOf(p), r.rule(it, kBrood).ID, "", s.c.doubt, it, p)
		return
	}
}

// patternIsOf reports whether the pattern at item i is that of brood found on bars:
// those that head the clause, or whose pattern hangs on them, "the pattern being
// tight".
func (s *scan) patternIsOf(f *finding, i int) bool {
	it, next := s.at(i), s.at(i+1)
	text := s.r.text[it.start:it.end]
	if !f.brood() || f.pattern != "" || s.whole || it.pause > comma || strings.Contains(text, "verall") || strings.Contains(text, "laying") {
		return false
	}
	return s.headed || len(f.bars) > 0 && next != nil && s.r.isWord(next, "being")
}

// patternOf is the pattern that a word means behind "the brood pattern is": a poor one
// is patchy.
func (r *reader) patternOf(it *item) string {
	if it.is(kPattern) {
		return r.value(it, kPattern)
	}
	return "patchy"
}

// placements reads "put in five days ago" of the bars in hand; it comes before
// the deeds, which would take it for one of today.
func (r *reader) placements(c *clause) {
	if !c.has(kDate) {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kComb) || it.used {
			continue
		}
		rule := r.placedRule(it)
		if rule == nil {
			continue
		}
		when, w := r.dateNear(c, i)
		if when == nil || !(w.day.ago || w.day.past.Compare(r.today) <= 0 && !w.day.ahead) || w.day.week {
			continue
		}
		bars := r.barsOf(c, i)
		if len(bars) == 0 {
			continue
		}
		why := r.why(rule.ID, "", it, w)
		r.comb(bars, "../placed", w.day.past.String(), why)
		r.inHand = thisLine
		c.placed = true
		if c.when != nil && *c.when == w.day {
			c.when = nil
			if c.mood == past {
				c.mood = asserted
			}
		}
	}
}

func (r *reader) placedRule(it *item) *rule {
	for _, n := range it.says.rules {
		if rule := &r.rules[n]; rule.Kind == kComb && rule.Value == "../placed" {
			return rule
		}
	}
	return nil
}

// dateNear is the date within a few words of item i.
func (r *reader) dateNear(c *clause, i int) (*day, *item) {
	for k := i + 1; k < len(c.items) && k <= i+4; k++ {
		if it := &c.items[k]; it.is(kDate) {
			return &it.day, it
		}
	}
	return nil, nil
}

// barsOf are the numbered bars that the words at item i are about: named
// before them in the clause, or in hand.
func (r *reader) barsOf(c *clause, i int) []int {
	for k := i - 1; k >= 0; k-- {
		if it := &c.items[k]; it.is(kBars) {
			return it.bars
		}
		if c.items[k].is(kDo) && !c.items[k].is(kComb) {
			return nil
		}
	}
	for k := i + 1; k < len(c.items) && k <= i+2; k++ {
		if c.items[k].is(kBars) {
			return c.items[k].bars
		}
		if c.items[k].is(kBar) || c.items[k].is(kNum) {
			return nil
		}
	}
	if r.inHand == thisLine || r.inHand == awaiting {
		return r.bars
	}
	return nil
}
