package parse

import (
	"slices"
	"strings"
)

// denies decides whether the denial in force reaches the finding at i. It
// does over bare nouns joined by "or", "and" or commas in a list with "or"; a
// noun with its own article, count, amount or place ends it.
func (s *scan) denies(i int) bool {
	if s.no < 0 {
		return s.deniedAfter(i)
	}
	commas := false
	for k := s.noLast + 1; k < i; k++ {
		it := s.at(k)
		switch {
		case it.pause == comma && k > s.no+1:
			commas = true
		case it.pause > comma:
			s.no = -1
			return s.deniedAfter(i)
		}
		ok := it.any(kOr, kAnd, kContent, kCell, kSign, kStage, kCellKind, kAdv, kColour, kPattern, kAmount, kOf, kNo) || it.is(kArt) && !it.n.article || it.is(kSeen) || it.is(kComb) && !it.is(kSame)
		if s.noLast > s.no && it.any(kAmount, kPattern) || it.is(kArt) && k > s.no+2 && s.noLast > s.no {
			ok = false
		}
		if it.is(kNum) && it.n.article && k == s.no+1 {
			ok = true
		}
		if !ok {
			s.no = -1
			return s.deniedAfter(i)
		}
	}
	if s.at(i).pause == comma && i > s.no+1 {
		commas = true
	}
	if s.noLast > s.no { // a further noun
		joined := s.at(i - 1)
		if commas && !s.orAhead(i) && !(joined.is(kOr)) {
			s.no = -1
			return s.deniedAfter(i)
		}
		if joined.is(kAnd) && (!s.bareBehind(i) || withArticle(s.at(i))) {
			s.no = -1
			return s.deniedAfter(i)
		}
		if !commas && !joined.any5(kOr, kAnd, kStage, kCellKind, kNo) {
			s.no = -1
			return s.deniedAfter(i)
		}
	}
	s.noLast = i
	s.denier = s.at(s.no)
	s.denier.used = true
	return true
}

// orAhead reports whether what is denied goes on with "or".
func (s *scan) orAhead(i int) bool {
	for k := i; k < len(s.c.items) && k <= i+6; k++ {
		if s.at(k).is(kOr) {
			return true
		}
		if !s.at(k).any6(kContent, kAnd, kCell, kSign, kStage, kCellKind) {
			return false
		}
	}
	return false
}

// withArticle reports whether what an item names has its article with it: "that queenless roar",
// "an ant nest".
func withArticle(it *item) bool {
	word, _, _ := strings.Cut(it.text, " ")
	return word == "a" || word == "an" || word == "the" || word == "that"
}

// tellsOfComb are the kinds of words that go on about a comb named before them.
var tellsOfComb = setOf(kPlace, kSide, kFull, kBe, kHave, kNum, kAmount)

// bareBehind reports whether nothing is told of the comb behind item i.
func (s *scan) bareBehind(i int) bool {
	next := s.at(i + 1)
	return next == nil || next.pause > none || !next.anyOf(tellsOfComb)
}

// beforeDenial are the kinds of words over which a denial reaches back to a finding.
var beforeDenial = setOf(kBe, kAdv, kOr, kContent, kThere, kAnd, kBut, kAsk)

// deniedAfter: "drone brood none", "eggs not seen".
func (s *scan) deniedAfter(i int) bool {
	for k := i + 1; k < len(s.c.items) && k <= i+3; k++ {
		it := s.at(k)
		if it.is(kNo) && strings.HasSuffix(it.text, " of") && s.at(k+1) != nil && s.at(k+1).pause == none {
			return false // "wasps, no sign of robbing"
		}
		if it.is(kUnseen) && s.at(i).is(kSign) && s.hidesSomewhere(k) {
			return false
		}
		if it.is(kNot) || it.is(kUnseen) && !it.used && !s.r.bareQNS(s.c, k) {
			it.used = true
			s.noCue = s.r.text[it.start:it.end]
			s.denier = it
			return true
		}
		if !it.anyOf(beforeDenial) && !(it.is(kPron) && k == i+1 && s.r.lookedInVain(s.c.items, k)) {
			return false
		}
	}
	return false
}

// hidesSomewhere reports whether the word at item k tells where something hid, which so was found:
// "beetles hiding under the lid".
func (s *scan) hidesSomewhere(k int) bool {
	next := s.at(k + 1)
	return strings.HasPrefix(s.at(k).text, "hid") && next != nil && next.pause == none && (next.any4(kPlace, kOn, kAfter, kTween) || slices.Contains(prepositionsOfShelter, next.text))
}

// noneInMine reads what is denied of this hive after it was told of another: "my
// neighbour has chalkbrood, but there is none in mine".
func (r *reader) noneInMine(c *clause) {
	for k := range c.items {
		it := &c.items[k]
		if it.is(kSign) && c.mood == unasked {
			r.theirs = r.mentions(r.value(it, kSign))
			if c.has(kTheirs) {
				r.bars, r.inHand = nil, noBar
			}
		}
		if k == 0 || r.theirs.what == "" || r.theirs.sentence < r.sentenceNo-1 || !it.isWord6("in mine", "in ours", "in my own", "here", "in here", "in this one") {
			continue
		}
		if none := &c.items[k-1]; none.any(kNot, kNo) && !r.bareNo(none) {
			r.leaf("signs."+r.theirs.what, "no", "denial-after", none.text, c.doubt, none, it)
		}
	}
}
