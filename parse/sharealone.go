package parse

import (
	"slices"
	"strings"
)

// A share told alone of the bar that is named next: "bar 4 three quarters capped, bar 5 a half".

// shareOfBar reports whether the share before the bars at item i is one of them.
func (s *scan) shareOfBar(i int) bool {
	of := s.at(i - 1)
	return of != nil && (s.before.at == i-1 && strings.HasSuffix(of.text, " of") || s.before.at == i-2 && of.is(kOf))
}

// shareHereToo: "sealed brood covers a third of bar four and half of bar five".
func (s *scan) shareHereToo(i int) {
	n := len(s.found) - 1
	if n < 0 || !s.found[n].hasCover || s.found[n].class != ofComb || s.found[n].form == "before" || s.contentAhead(i) || !s.adjacentAnd(s.found[n].at, i) {
		return
	}
	twin := *s.found[n]
	twin.bars, twin.located, twin.cover, twin.at = s.at(i).bars, true, s.before.cover, i
	twin.items = append(s.r.these(s.at(i)), s.before.items...)
	s.found = append(s.found, &twin)
	s.bound, s.before = len(s.found), modifiers{}
}

// withShare are the kinds of words that may stand beside a bar and the share alone.
var withShare = setOf(kBars, kNum, kOn, kAdv, kMaybe, kOf, kBe, kHave, kArt, kAnd, kPron)

// sharedLike is the content of which the bar before had a share, told in the same sentence,
// where of this bar there is a share alone: "bar 4 is three quarters sealed brood and bar 5
// a half".
func (s *scan) sharedLike() *finding {
	r := s.r
	last := r.lastContent
	if last == nil || !last.present || !last.hasCover || len(last.bars) == 0 || !allOf(s.c.items, withShare) {
		return nil
	}
	shared, content, before := false, 0, 0
	for k := range r.told {
		it := &r.told[k]
		if it.start >= s.c.items[0].start {
			break
		}
		switch {
		case it.is(kBars):
			if content > 0 {
				before = content
			}
			shared, content = false, 0
		case it.is(kContent):
			content++
		case it.is(kNum):
			shared = shared || it.n.share
		case it.any6(kCell, kSign, kQueen, kFixture, kDo, kComb):
			return nil
		}
	}
	if !shared || content > 1 || content == 0 && before != 1 {
		return nil
	}
	return last
}

// drawnLike reports whether a share alone is how much is built of this comb, as was told of the
// one before in the same sentence: "bar 9 is two thirds drawn and bar 10 a half".
func (s *scan) drawnLike() bool {
	if !allOf(s.c.items, withShare) {
		return false
	}
	drawn := false
	for k := range s.r.told {
		it := &s.r.told[k]
		if it.start >= s.c.items[0].start {
			break
		}
		switch {
		case it.is(kContent):
			return false
		case it.is(kComb):
			drawn = k > 0 && s.r.told[k-1].is(kNum) && s.r.told[k-1].n.share && strings.HasPrefix(s.r.value(it, kComb), "drawn")
		case it.any6(kCell, kSign, kQueen, kFixture, kDo, kStage):
			return false
		}
	}
	return drawn
}

// shareOfBefore: "bars 9 to 12 honey, 12 only half full": a bar named again with
// a share alone says how much of what it holds.
func (s *scan) shareOfBefore() {
	r := s.r
	if !s.before.hasCover || len(s.found) > 0 || !s.headed || s.combSpoken {
		return
	}
	like := s.sharedLike()
	if like == nil && s.drawnLike() {
		r.comb(r.bars, "drawn", formatNumber(s.before.cover), r.why("share", "", s.before.items...))
		return
	}
	for _, b := range r.bars {
		said := r.saidOf.about(b)
		if like != nil && !slices.Contains(like.bars, b) {
			r.record(r.newFinding(&finding{class: ofComb, what: like.what, present: true, extent: s.before.extent, at: like.at, items: s.before.items, rule: like.rule, bars: []int{b}, located: true}))
			continue
		}
		if len(said) == 0 || said[len(said)-1].class != ofComb || said[len(said)-1].hasCover {
			continue
		}
		r.cur.put(r.paths.under(r.barPath(b, said[len(said)-1].what), "cover"), formatNumber(s.before.cover), r.why("share", "", s.before.items...))
	}
}
