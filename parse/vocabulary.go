package parse

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
	entries map[string]spelling // by lower-case spelling
	words   []string            // by id
	numeric wordSet             // can begin a number, date or measure
}

// spelling is all that is known of a word as it is written, so that a word of a
// note costs one look-up.
type spelling struct {
	id    wordID
	lists listSet
	cut   *parts // of a contraction
}

// parts are the two words of a contraction; cut is the number of letters,
// from the end, at which it is cut.
type parts struct {
	first, second wordID
	cut           int
}

func newVocabulary() *vocabulary {
	return &vocabulary{entries: map[string]spelling{}, words: make([]string, firstWordID)}
}

// add numbers a word, the same number each time.
func (v *vocabulary) add(word string) wordID {
	e := v.entries[word]
	if e.id == idUnknown {
		e.id = wordID(len(v.words))
		v.entries[word] = e
		v.words = append(v.words, word)
	}
	return e.id
}

// addAll makes a set of words.
func (v *vocabulary) addAll(words ...string) wordSet {
	var set wordSet
	for _, w := range words {
		set.add(v.add(w))
	}
	return set
}

// look returns what is known of a lower-case word and, where it is to be cut
// in two, its parts.
func (v *vocabulary) look(lower []byte) (s spelling, cut parts) {
	s = v.entries[string(lower)]
	if s.cut != nil {
		return s, *s.cut
	}
	// Any word's own 's: is, has or a possessive; the context tells.
	if n := len(lower); n > 2 && lower[n-1] == 's' && lower[n-2] == '\'' {
		return s, parts{first: v.entries[string(lower[:n-2])].id, second: v.entries["'s"].id, cut: 2}
	}
	return s, parts{}
}

// addContractions registers every contraction of the rules' own word forms,
// with the apostrophe and, for the unmistakable ones, without it.
func (v *vocabulary) addContractions(list []contraction) {
	for _, c := range list {
		cut := &parts{first: v.add(c.First), second: v.add(c.Second), cut: c.Cut}
		e := v.entries[c.Short]
		e.cut = cut
		v.entries[c.Short] = e
	}
	v.add("'s")
}

// numeral reports whether a token can begin a number, date or measure.
func (v *vocabulary) numeral(id wordID) bool {
	return id != idUnknown && (id < firstWordID || v.numeric.has(id))
}

// addLists notes in which lists each word stands.
func (v *vocabulary) addLists(l lists) {
	for word, in := range l {
		e := v.entries[word]
		e.lists = in
		v.entries[word] = e
	}
}
