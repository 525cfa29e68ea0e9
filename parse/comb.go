package parse

import (
	"slices"
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
		if next := s.at(k + 1); it.is(kSame) && strings.Contains(it.text, "so ") && next != nil && next.is(kBars) && len(r.bars) > 0 {
			it.used, next.used, next.taken = true, true, true
			return append(slices.Clone(r.bars), next.bars...) // "bar 16 is bare, and so is bar 15"
		}
		if it.any6(kContent, kCell, kBut, kDo, kNo, kThere) || s.headed && it.any3(kSign, kMeasure, kComb) {
			break
		}
	}
	if len(r.bars) == 0 || r.inHand == noBar {
		return nil
	}
	for k := i + 1; k < len(s.c.items) && k <= i+2; k++ {
		if s.at(k).is(kThere) && !s.at(k).isWord2("there", "here") {
			return r.bars // "there was no comb on either"
		}
	}
	if s.headed || s.here || r.inHand == thisLine || r.inHand == awaiting || s.leansBack() || r.inHand == thisText && strings.HasSuffix(s.at(i).text, " it") {
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
	if s.inPart(i) {
		it.used = true
		if i > 0 {
			s.at(i - 1).used = true
		}
		return true
	}
	taken, denied := false, s.no >= 0
	for _, n := range it.says.rules {
		rule := &r.rules[n]
		if rule.Kind == kComb && !(rule.Value == "drawn=1" && s.shared(i)) {
			taken = s.combRule(i, rule) || taken
		}
		if denied && taken && s.no < 0 {
			break // "not yet drawn" is so in all its senses
		}
	}
	return taken
}

// inPart reports whether comb is drawn to no share that is told: "10 part drawn", "being
// drawn out".
func (s *scan) inPart(i int) bool {
	before := s.at(i - 1)
	if next := s.at(i + 1); next != nil && next.text == "so far" && s.at(i+2) != nil && s.at(i+2).text == "that" {
		return true // "built down so far that it is stuck to the floor"
	}
	if before == nil || s.at(i).pause > none || !s.r.isWord(s.at(i), s.r.wordsOf[comingOn]...) {
		return false
	}
	return before.isWord3("part", "partly", "partially") || before.is(kBe) && strings.HasSuffix(before.text, "being")
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

// combRule writes what a rule says of the comb at item i, and reports whether it took
// the word.
func (s *scan) combRule(i int, rule *rule) bool {
	it, r := s.at(i), s.r
	name, value, _ := strings.Cut(rule.Value, "=")
	switch {
	case name == "../placed", s.ofOther(i, rule), s.ofCover(i, rule), s.untouched(i, rule):
		return false
	case s.asLargeAs(i):
		it.used = true
		return true
	case s.begunBy(i, rule):
		return false
	}
	bars := s.combBars(i)
	if s.weakAlone(i, name) || len(bars) == 0 {
		return false
	}
	if value == "share" && s.no >= 0 && s.no == i-1 && it.text == "comb" {
		r.comb(bars, "size", "bare", r.why("comb-bare", s.noCue, it, s.at(s.no)))
		s.no = -1
		s.touch()
		return true
	}
	if value == "share" {
		return s.drawn(i, rule, bars, it.text)
	}
	cue := ""
	if s.no >= 0 && i-s.no <= 3 {
		if cue, value = s.combDenied(name, value); value == "" {
			it.used = true
			return true
		}
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

// combDenied ends the denial in force of something told of a comb. It returns the words of the
// denial, and what the comb is instead; "" where that is not told: a comb that is not new need
// not be old.
func (s *scan) combDenied(name, value string) (cue, instead string) {
	denier := s.at(s.no)
	cue, s.no = s.noCue, -1
	if name == "new" || name == "old" || name == "broken" {
		return cue, ""
	}
	denier.used = true
	return cue, notSo(name, value)
}

// ofCover: "when the lid came off bar 3 has eggs".
func (s *scan) ofCover(i int, rule *rule) bool {
	return rule.Value == "broken=yes" && i > 0 && s.at(i-1).isWord4("lid", "roof", "cover", "strap")
}

// untouched: "honey on bar one, untouched since the autumn".
func (s *scan) untouched(i int, rule *rule) bool {
	return rule.Value == "size=bare" && len(s.found) > 0 && s.at(i).isWord3("untouched", "not touched", "not been touched")
}

// asLargeAs: "a patch of brood on bar four no bigger than a saucer".
func (s *scan) asLargeAs(i int) bool {
	text, n := s.at(i).text, len(s.found)
	return n > 0 && s.found[n-1].amount != "" && !strings.Contains(text, "comb") && (strings.Contains(text, " than ") || strings.HasPrefix(text, "as big as "))
}

// begunBy: "robbing had begun".
func (s *scan) begunBy(i int, rule *rule) bool {
	return rule.Value == "size=started" && !s.headed && i > 0 && s.at(i).pause == none && hasKind(s.c.items[:i], kSign)
}

// ofOther reports whether a word of comb is said of something else.
func (s *scan) ofOther(i int, rule *rule) bool {
	it, next := s.at(i), s.at(i+1)
	switch {
	case rule.Value == "size=bare" && s.ofTheRest(i):
		return true
	case rule.Value == "attached=floor" && next == nil && s.r.thereBehind(it):
		return true // "down on the floor there's a beetle"
	case rule.ID == "comb-broken" && !s.combInHand(i) && !strings.Contains(it.text, "comb"):
		return true
	case strings.Contains(it.text, "size") && next != nil && next.pause == none && next.any(kAmount, kContent) && s.r.value(next, kContent) != "empty" && !(s.at(i+2) != nil && s.at(i+2).is(kComb)):
		return true // "a palm-sized patch of brood"
	}
	return s.ofHer(i)
}

// ofTheRest reports whether a word is said of bars that are not told: "9-12 stores; rest
// bare".
func (s *scan) ofTheRest(i int) bool {
	k := i - 1
	for s.at(k) != nil && s.at(k).any(kBe, kAdv) && s.at(k+1).pause == none {
		k--
	}
	rest := s.at(k)
	return rest != nil && s.at(k+1).pause == none && s.r.isWord(rest, "rest", "the rest", "the others", "others", "remainder", "the remainder", "all the rest")
}

// thereBehind reports whether "there" stands right behind an item of the sentence.
func (r *reader) thereBehind(it *item) bool {
	for k := 1; k < len(r.told); k++ {
		if r.told[k-1].start == it.start {
			return r.told[k].pause == none && strings.HasPrefix(r.told[k].text, "there")
		}
	}
	return false
}

// weakAlone reports whether a word that tells of comb beside one only stands beside none.
func (s *scan) weakAlone(i int, name string) bool {
	text, next := s.at(i).text, s.at(i+1)
	weak := s.r.inList(weakCombWords, text)
	if weak && !s.combInHand(i) || strings.Contains(text, "size") && (len(s.found) > s.bound || !s.combInHand(i)) {
		return true
	}
	return weak && name != "broken" && next != nil && next.pause == none && next.any6(kWord, kBar, kContent, kCell, kSign, kQueen) && text != "drawn" && text != "built" && text != "comb"
}

// notSo is the value of a leaf that is denied: "not straight"; "" where it may be any
// other: a comb that is not free may be fast anywhere.
func notSo(leaf, value string) string {
	switch {
	case value == "yes":
		return "no"
	case value == "no" && leaf != "attached":
		return "yes"
	}
	return ""
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
	if s.headed || s.combSpoken && s.r.inHand == thisLine && s.r.headedBars {
		return true // "bar 12: put in last week; new comb, half drawn"
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
	if s.r.inHand == thisLine && s.r.sameSentence && s.r.headedBars && len(s.r.bars) == 1 && s.at(0).any3(kBe, kHave, kNow) {
		return true // "bar 9, which I put in a fortnight ago, is half built"
	}
	return s.r.inHand == awaiting || s.r.inHand == thisLine && (first == "it" || first == "that" || first == "comb" || s.here)
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
	case alone && next != nil && next.is(kComb) && next.pause == none && strings.HasPrefix(r.value(next, kComb), "cross"):
		return false // "they have built cross comb"
	case next != nil && next.is(kNum) && next.n.share && next.pause == none && alone && !s.fullLeadsOn(i+1):
		v = next.n.lo
		items = append(items, next)
		next.used = true
	case !alone:
		return false
	case s.at(i-1) != nil && it.pause == none && s.at(i-1).n.ordinal && s.at(i-1).isWord2("third", "fifth"):
		v = 1 / s.at(i-1).n.lo // "went in on Thursday, third drawn"
		items = append(items, s.at(i-1))
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
