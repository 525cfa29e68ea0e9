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

// vocabulary is the set of words that stand in the rules.
type vocabulary struct {
	ids          map[string]wordID
	words        []string // by id
	contractions map[string]*parts
}

// parts are the two words of a contraction; cut is the number of letters,
// from the end, at which it is cut.
type parts struct {
	first, second wordID
	cut           int
}

func newVocabulary() *vocabulary {
	v := &vocabulary{ids: map[string]wordID{}, contractions: map[string]*parts{}}
	v.words = make([]string, firstWordID)
	return v
}

// add numbers a word, the same number each time.
func (v *vocabulary) add(word string) wordID {
	if id, ok := v.ids[word]; ok {
		return id
	}
	id := wordID(len(v.words))
	v.ids[word] = id
	v.words = append(v.words, word)
	return id
}

// find returns the number of a lower-case word, or idUnknown.
func (v *vocabulary) find(lower []byte) wordID { return v.ids[string(lower)] }

// contraction returns the two words of a contraction, or nil.
func (v *vocabulary) contraction(lower []byte) *parts {
	if p, ok := v.contractions[string(lower)]; ok {
		return p
	}
	// Any word's own 's: is, has or a possessive; the context tells.
	if n := len(lower); n > 2 && lower[n-1] == 's' && lower[n-2] == '\'' {
		return &parts{first: v.ids[string(lower[:n-2])], second: v.ids["'s"], cut: 2}
	}
	return nil
}

// addContractions registers every contraction of the rules' own word forms,
// with the apostrophe and, for the unmistakable ones, without it.
func (v *vocabulary) addContractions(list []contraction) {
	for _, c := range list {
		v.contractions[c.Short] = &parts{first: v.add(c.First), second: v.add(c.Second), cut: c.Cut}
	}
	v.add("'s")
}
