package parse

import (
	"math/bits"
	"strings"
)

// wordID numbers the words that the rules know; zero is every other word.
type wordID int32

// The numbers of tokens that are no words.
const (
	idUnknown   wordID = iota
	idNumber           // 12, 2.5, 1,000
	idOrdinal          // 3rd
	idFraction         // 1/4
	idVulgar           // ½
	idClock            // 14:30
	idISODate          // 2026-05-30
	idSlashDate        // 30/5/2026, 30.5.
	idDash             // the hyphen of a range
	firstWordID
)

// wordSet is a set of words, by number. It spends a byte on every word of the
// vocabulary, so it is for the few sets that are asked about at each word.
type wordSet struct{ in []bool }

func (s wordSet) has(id wordID) bool { return int(id) < len(s.in) && s.in[id] }

func (s *wordSet) add(id wordID) {
	s.in = grown(s.in, id)
	s.in[id] = true
}

// vocabulary holds the words that stand in the rules and in the lists.
type vocabulary struct {
	spellings []spelling // in the order in which they were met, behind one of no word
	places    []int32    // of the spellings, by the hash of their key; 0 is free, as at least every other is
	words     []string   // by id
	marks     []mark     // of each word, by id: what its tokens always have
	ownID     wordID     // of 's
}

// wordKey tells words apart. Of a word of less than keyLength bytes it is these
// bytes, so that such words are the same where their keys are.
type wordKey uint64

// keyLength is how many bytes a key holds; of a word that fills it the first and the last
// so many are mixed, and its highest bit is set.
const keyLength = 8

// hash spreads keys (multiplicative hashing, after Knuth).
func (k wordKey) hash() uint32 { return uint32(uint64(k) * 0x9E3779B97F4A7C15 >> 32) }

func keyOf(word string) (k wordKey) {
	if n := len(word); n >= keyLength {
		first, last := bytesAt(word, 0), bytesAt(word, n-keyLength)
		return wordKey(bits.RotateLeft64(first, 24)^last^uint64(n)) | 1<<63
	}
	for i := range len(word) {
		k = k<<8 | wordKey(word[i])
	}
	return k
}

// bytesAt are the keyLength bytes of a text from an offset on.
func bytesAt(text string, at int) uint64 {
	text = text[at : at+keyLength]
	return uint64(text[0]) | uint64(text[1])<<8 | uint64(text[2])<<16 | uint64(text[3])<<24 |
		uint64(text[4])<<32 | uint64(text[5])<<40 | uint64(text[6])<<48 | uint64(text[7])<<56
}

// spelling is all that is known of a word as it is written, so that a word of a
// note costs one look-up.
type spelling struct {
	word  string // lower case
	key   wordKey
	id    wordID
	marks mark // of the word of that number
	lists listSet
	cut   *parts // of a contraction
}

// parts are the two words of a contraction; cut is the number of letters,
// from the end, at which it is cut.
type parts struct {
	first, second wordID
	cut           int
}

// usualWords is about the number of words of the built-in rules, a power of two.
const usualWords = 1 << 12

func newVocabulary() *vocabulary {
	return &vocabulary{spellings: make([]spelling, 1, usualWords), places: make([]int32, 4*usualWords), words: make([]string, firstWordID, usualWords)}
}

// find returns what is known of a lower-case word, and nothing but zeros of an
// unknown one.
func (v *vocabulary) find(lower string) *spelling { return v.findKey(lower, keyOf(lower)) }

// findKey is find for a word whose key is known. The table is our own, with the
// next place for those that collide, since half of the time that a map takes to
// look up a word goes to what a table that only grows does not need.
func (v *vocabulary) findKey(lower string, key wordKey) *spelling {
	if len(lower) < keyLength {
		return v.findShort(key)
	}
	mask := uint32(len(v.places) - 1)
	for i := key.hash() & mask; v.places[i] != 0; i = (i + 1) & mask {
		if s := &v.spellings[v.places[i]]; s.key == key && s.word == lower {
			return s
		}
	}
	return &v.spellings[0]
}

// findShort is findKey for a word of less than keyLength bytes.
func (v *vocabulary) findShort(key wordKey) *spelling {
	mask := uint32(len(v.places) - 1)
	for i := key.hash() & mask; ; i = (i + 1) & mask {
		at := v.places[i]
		if s := &v.spellings[at]; s.key == key || at == 0 {
			return s
		}
	}
}

// spelling returns the place for what is known of a lower-case word; it is good
// until the next word is added.
func (v *vocabulary) spelling(word string) *spelling {
	if s := v.find(word); s.word == word {
		return s
	}
	v.spellings = append(v.spellings, spelling{word: word, key: keyOf(word)})
	if 2*len(v.spellings) > len(v.places) {
		v.places = make([]int32, 2*len(v.places))
		for at := 1; at < len(v.spellings); at++ {
			v.settle(at)
		}
	} else {
		v.settle(len(v.spellings) - 1)
	}
	return &v.spellings[len(v.spellings)-1]
}

// pack moves all words into one string, so that they are a single thing in memory
// and the rules that they were cut from can go. What marks they have is settled.
func (v *vocabulary) pack() {
	var all strings.Builder
	for i := range v.spellings {
		all.WriteString(v.spellings[i].word)
	}
	rest := all.String()
	for i := range v.spellings {
		s := &v.spellings[i]
		s.word, rest = rest[:len(s.word)], rest[len(s.word):]
		if s.id != idUnknown {
			s.marks = v.marks[s.id]
			v.words[s.id] = s.word
		}
	}
}

// settle gives a spelling its place.
func (v *vocabulary) settle(at int) {
	mask := uint32(len(v.places) - 1)
	i := v.spellings[at].key.hash() & mask
	for v.places[i] != 0 {
		i = (i + 1) & mask
	}
	v.places[i] = int32(at)
}

// add numbers a word, the same number each time.
func (v *vocabulary) add(word string) wordID {
	s := v.spelling(word)
	if s.id == idUnknown {
		s.id = wordID(len(v.words))
		v.words = append(v.words, word)
	}
	return s.id
}

// addAll makes a set of words.
func (v *vocabulary) addAll(words ...string) wordSet {
	var set wordSet
	for _, w := range words {
		set.add(v.add(w))
	}
	return set
}

// possessive reports whether a word ends on an 's of its own: is, has or a
// possessive; the context tells.
func possessive(lower string) bool {
	n := len(lower)
	return n > 2 && lower[n-1] == 's' && lower[n-2] == '\''
}

// halves are the words in which a contraction or a possessive is read.
func (v *vocabulary) halves(lower string, e *spelling) parts {
	if e.cut != nil {
		return *e.cut
	}
	return parts{first: v.find(lower[:len(lower)-2]).id, second: v.ownID, cut: 2}
}

// addContractions registers every contraction of the rules' own word forms,
// with the apostrophe and, for the unmistakable ones, without it.
func (v *vocabulary) addContractions(list []contraction) {
	for _, c := range list {
		cut := &parts{first: v.add(c.First), second: v.add(c.Second), cut: c.Cut}
		v.spelling(c.Short).cut = cut
	}
	v.ownID = v.add("'s")
}

// mark gives every token of a word a mark.
func (v *vocabulary) mark(id wordID, m mark) {
	v.marks = grown(v.marks, id)
	v.marks[id] |= m
}

// addLists notes in which lists each word stands.
func (v *vocabulary) addLists(l lists) {
	for word, in := range l {
		v.spelling(word).lists = in
	}
}

// addPhrases notes with which words the entries of more than one word begin.
func (v *vocabulary) addPhrases(l lists, s *splitter) {
	for entry := range l {
		if words := s.tokens(nil, entry, 0, none); len(words) > 1 {
			v.spelling(entry[:words[0].end]).lists |= 1 << phrases
		}
	}
}
