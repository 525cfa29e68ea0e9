package parse

// shortestSlip is the length of the shortest word that is looked at for a slip
// of the finger: shorter ones are too often another word.
const shortestSlip = 5

// longestSlip is the length of the longest.
const longestSlip = 24

// slips finds the word of the trade that a misspelt one was meant for: one letter
// missing, too many or wrong, or two that changed places. The first letter is
// taken for right. It looks words up by what is left of them when a letter is
// taken out, as in the symmetric delete algorithm.
type slips struct {
	meant map[string][]wordID // by spelling, whole or with a letter left out
	words []string            // by wordID
}

func newSlips(v *vocabulary, l lists) *slips {
	s := &slips{meant: map[string][]wordID{}, words: v.words}
	for word, in := range l {
		id := v.entries[word].id
		if !in.has(oftenMisspelt) || id == idUnknown {
			continue
		}
		s.meant[word] = append(s.meant[word], id)
		for i := range word {
			rest := word[:i] + word[i+1:]
			s.meant[rest] = append(s.meant[rest], id)
		}
	}
	return s
}

// find returns the word meant by an unknown one, or idUnknown. Of several that
// are as near it takes the first in the vocabulary.
func (s *slips) find(unknown []byte) wordID {
	if len(unknown) < shortestSlip || len(unknown) > longestSlip {
		return idUnknown
	}
	var short [longestSlip]byte
	best := s.nearest(unknown, unknown, idUnknown)
	for i := range unknown {
		best = s.nearest(append(append(short[:0], unknown[:i]...), unknown[i+1:]...), unknown, best)
	}
	return best
}

func (s *slips) nearest(rest, unknown []byte, best wordID) wordID {
	for _, id := range s.meant[string(rest)] {
		if (best == idUnknown || id < best) && s.words[id][0] == unknown[0] && oneSlip(s.words[id], unknown) {
			best = id
		}
	}
	return best
}

// oneSlip reports whether one edit makes the words equal: a letter inserted,
// left out or replaced, or two neighbours swapped.
func oneSlip(a string, b []byte) bool {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	rest, other := a[i:], string(b[i:])
	switch {
	case rest == "" || other == "":
		return len(rest)+len(other) == 1
	case rest[1:] == other, rest == other[1:], rest[1:] == other[1:]:
		return true
	}
	return len(rest) > 1 && len(other) > 1 && rest[0] == other[1] && rest[1] == other[0] && rest[2:] == other[2:]
}
