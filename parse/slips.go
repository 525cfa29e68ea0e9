package parse

import (
	"math/bits"
	"unicode/utf8"
)

// shortestSlip is the length of the shortest word that is looked at for a slip
// of the finger: shorter ones are too often another word.
const shortestSlip = 4

// longestSlip is the length of the longest.
const longestSlip = 24

// slips finds the word of the trade that a misspelt one was meant for: one letter
// missing, too many or wrong, or two that changed places. The first letter is
// taken for right, so that few words are to be compared.
type slips struct {
	meant [1 << 8][]meant // by first letter, in the order of the vocabulary
}

// meant is a word of the trade, and the letters in it.
type meant struct {
	word    string
	id      wordID
	letters letters
}

func newSlips(v *vocabulary, l lists) *slips {
	s := &slips{}
	for id, word := range v.words {
		if l[word].has(oftenMisspelt) {
			s.meant[word[0]] = append(s.meant[word[0]], meant{word, wordID(id), lettersOf(word)})
		}
	}
	return s
}

// find returns the word meant by an unknown one, or idUnknown. Of several that are as near
// it takes the first in the vocabulary that ends alike, or else the first: "harvestd" is
// "harvested", and no "harvest".
func (s *slips) find(unknown string) wordID {
	if len(unknown) < shortestSlip || len(unknown) > longestSlip {
		return idUnknown
	}
	of, first := lettersOf(unknown), idUnknown
	for i := range s.meant[unknown[0]] {
		m := &s.meant[unknown[0]][i]
		if bits.OnesCount32(uint32(m.letters^of)) > 2 {
			continue // more than one letter is another
		}
		if d := len(m.word) - len(unknown); d >= -1 && d <= 1 && oneSlip(m.word, unknown) {
			if m.word[len(m.word)-1] == unknown[len(unknown)-1] {
				return m.id
			}
			if first == idUnknown {
				first = m.id
			}
		}
	}
	return first
}

// oneSlip reports whether one edit makes the words equal: a letter inserted,
// left out or replaced, or two neighbours swapped.
func oneSlip(a, b string) bool {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	rest, other := a[i:], b[i:]
	switch {
	case rest == "" || other == "":
		return len(rest)+len(other) == 1
	case rest[1:] == other, rest == other[1:], rest[1:] == other[1:]:
		return true
	}
	return len(rest) > 1 && len(other) > 1 && rest[0] == other[1] && rest[1] == other[0] && rest[2:] == other[2:]
}

// letters is a set of letters, a bit each. It may hold more than was put in, since
// no letter is told from another in case and none beyond ASCII from another.
type letters uint32

func (s letters) has(c byte) bool { return c >= utf8.RuneSelf || s>>(c&31)&1 != 0 }

// lettersOf is the set of the letters in a word.
func lettersOf(word string) (s letters) {
	for i := range len(word) {
		s |= 1 << (word[i] & 31)
	}
	return s
}

// initialsOf is the set of the letters that names begin with.
func initialsOf(names map[string]bool) (s letters) {
	for name := range names {
		s |= 1 << (name[0] & 31)
	}
	return s
}
