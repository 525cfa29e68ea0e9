package parse

import "fmt"

// lineWords are the words of a line without which some rewrites have nothing to do: a bit
// for each of them, or for a few that one rewrite looks for.
type lineWords uint16

const (
	saysCame lineWords = 1 << iota
	saysFor
	saysIt
	saysNext
	saysNothing
	saysOut
	saysWhat
	saysWhich // or another word without which no clause hangs on what is told
)

// lineWordBits are the words with their bits.
var lineWordBits = map[string]lineWords{
	"came": saysCame, "for": saysFor, "it": saysIt | saysWhich, "next": saysNext, "nothing": saysNothing, "out": saysOut, "what": saysWhat,
	"which": saysWhich, "used": saysWhich, "first": saysWhich,
}

// addLineWords notes the bits of the words by their numbers. They must be known ones: what is
// not may be taken for a slip of the finger.
func (l *lexicon) addLineWords() error {
	l.lineWords = make([]lineWords, len(l.words.words))
	for word, bits := range lineWordBits {
		id := l.words.find(word).id
		if id == idUnknown {
			return fmt.Errorf("rewrites ask for %q, which no rule knows", word)
		}
		l.lineWords[id] = bits
	}
	return nil
}

// wordsIn are the lists in which some words stand, one by one, and the bits of the words.
func (l *lexicon) wordsIn(toks []token) (in listSet, said lineWords) {
	bits := l.lineWords
	for i := range toks {
		in |= toks[i].lists
		said |= bits[toks[i].id]
	}
	return in, said
}
