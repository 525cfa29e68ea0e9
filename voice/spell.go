package voice

import "strings"

// spellings are rules from letters to phones, tried in order at each place of
// the word, the first that fits taken. Before and after are the letters that
// must stand around them: "^" the beginning, "$" the end, "V" a vowel, "C"
// anything else; several stand one behind the other. A small set in the manner
// of letter-to-sound rules (H. S. Elovitz and others, "Letter-to-sound rules for
// automatic translation of English text to phonetics", IEEE Trans. ASSP 24(6),
// 1976); the rules themselves are our own.
var spellings = []struct{ before, letters, after, phones string }{
	{"", "augh", "", "AO"}, {"", "eigh", "", "EY"}, {"", "ough", "", "AO"}, {"", "tion", "", "SH AH N"}, {"", "sion", "", "ZH AH N"},
	{"", "ture", "$", "CH ER"}, {"", "dure", "$", "JH ER"}, {"", "ious", "$", "IY AH S"}, {"", "eous", "$", "IY AH S"}, {"", "ous", "$", "AH S"},
	{"C", "ia", "$", "IY AH"}, {"C", "ium", "$", "IY AH M"}, {"", "ium", "$", "IY AH M"}, {"", "ae", "$", "IY"}, {"", "igh", "", "AY"},
	{"^", "kn", "", "N"}, {"^", "wr", "", "R"}, {"^", "ps", "", "S"}, {"^", "rh", "", "R"}, {"^", "x", "", "Z"}, {"", "gn", "$", "N"},
	{"", "tch", "", "CH"}, {"", "sch", "", "SH"}, {"", "ch", "r", "K"}, {"", "ch", "", "CH"}, {"", "sh", "", "SH"}, {"", "ph", "", "F"}, {"", "th", "", "TH"},
	{"", "wh", "", "W"}, {"", "ck", "", "K"}, {"", "qu", "", "K W"}, {"", "ng", "$", "NG"}, {"", "nk", "", "NG K"}, {"", "dge", "", "JH"}, {"", "mb", "$", "M"},
	{"", "eer", "", "IH R"}, {"", "ear", "", "IH R"}, {"", "air", "", "EH R"}, {"", "are", "$", "EH R"}, {"", "our", "", "AO R"}, {"", "oor", "", "AO R"}, {"", "oar", "", "AO R"},
	{"", "ire", "$", "AY R"}, {"", "ure", "$", "Y UH R"}, {"", "ore", "$", "AO R"}, {"^C", "er", "V", "EH R"}, {"", "ar", "", "AA R"}, {"", "or", "", "AO R"}, {"", "er", "", "ER"}, {"", "ir", "", "ER"}, {"", "ur", "", "ER"},
	{"", "ee", "", "IY"}, {"", "ea", "", "IY"}, {"", "oo", "", "UW"}, {"", "ou", "", "AW"}, {"", "ow", "$", "OW"}, {"", "ow", "", "AW"}, {"", "oa", "", "OW"}, {"", "oi", "", "OY"}, {"", "oy", "", "OY"},
	{"", "ai", "", "EY"}, {"", "ay", "", "EY"}, {"", "au", "", "AO"}, {"", "aw", "", "AO"}, {"", "ew", "", "UW"}, {"", "ei", "", "IY"}, {"", "ey", "$", "IY"}, {"", "ie", "$", "IY"}, {"", "ie", "", "IY"}, {"", "ue", "$", "UW"}, {"", "eu", "", "Y UW"}, {"", "ui", "", "UW"},
	{"", "a", "Ce$", "EY"}, {"", "i", "Ce$", "AY"}, {"", "o", "Ce$", "OW"}, {"", "u", "Ce$", "UW"}, {"", "e", "Ce$", "IY"},
	{"", "le", "$", "AH L"}, {"C", "re", "$", "ER"}, {"", "es", "$", "Z"}, {"^C", "e", "$", "IY"}, {"", "e", "$", ""},
	{"^", "a", "", "AE"}, {"", "a", "$", "AH"}, {"", "a", "CV", "EY"}, {"", "a", "", "AE"},
	{"", "e", "CVC", "EH"}, {"", "e", "", "EH"},
	{"", "i", "$", "IY"}, {"", "i", "V", "IY"}, {"", "i", "", "IH"},
	{"", "o", "$", "OW"}, {"", "o", "CV", "OW"}, {"", "o", "", "AA"},
	{"", "u", "$", "UW"}, {"", "u", "CV", "UW"}, {"", "u", "", "AH"},
	{"^", "y", "", "Y"}, {"", "y", "$", "IY"}, {"", "y", "", "IH"},
	{"", "bb", "", "B"}, {"", "cc", "", "K"}, {"", "dd", "", "D"}, {"", "ff", "", "F"}, {"", "gg", "", "G"}, {"", "ll", "", "L"}, {"", "mm", "", "M"}, {"", "nn", "", "N"}, {"", "pp", "", "P"}, {"", "rr", "", "R"}, {"", "ss", "", "S"}, {"", "tt", "", "T"}, {"", "zz", "", "Z"},
	{"", "c", "e", "S"}, {"", "c", "i", "S"}, {"", "c", "y", "S"}, {"", "c", "", "K"}, {"", "g", "e", "JH"}, {"", "g", "i", "JH"}, {"", "g", "", "G"},
	{"V", "s", "V", "Z"}, {"", "s", "", "S"}, {"", "x", "", "K S"}, {"", "h", "V", "HH"}, {"", "h", "", ""}, {"", "w", "V", "W"}, {"", "w", "", ""},
	{"", "b", "", "B"}, {"", "d", "", "D"}, {"", "f", "", "F"}, {"", "j", "", "JH"}, {"", "k", "", "K"}, {"", "l", "", "L"}, {"", "m", "", "M"}, {"", "n", "", "N"}, {"", "p", "", "P"}, {"", "q", "", "K"}, {"", "r", "", "R"}, {"", "t", "", "T"}, {"", "v", "", "V"}, {"", "z", "", "Z"},
}

// spell gives phones for a word from its letters, or "" where it holds none
// that the rules know.
func spell(word string) string {
	var phones []string
	for i := 0; i < len(word); {
		n := 1
		for _, r := range spellings {
			if strings.HasPrefix(word[i:], r.letters) && fitsBefore(word[:i], r.before) && fitsAfter(word[i+len(r.letters):], r.after) {
				phones = append(phones, strings.Fields(r.phones)...)
				n = len(r.letters)
				break
			}
		}
		i += n
	}
	return strings.Join(phones, " ")
}

func isVowel(b byte) bool { return strings.IndexByte("aeiouy", b) >= 0 }

// fits reports whether a letter is what a rule's sign wants.
func fits(sign, letter byte) bool {
	switch sign {
	case 'V':
		return isVowel(letter)
	case 'C':
		return !isVowel(letter)
	}
	return sign == letter
}

func fitsAfter(rest, want string) bool {
	for i := range len(want) {
		if want[i] == '$' {
			return i == len(rest)
		}
		if i >= len(rest) || !fits(want[i], rest[i]) {
			return false
		}
	}
	return true
}

func fitsBefore(done, want string) bool {
	for i := len(want) - 1; i >= 0; i-- {
		if want[i] == '^' {
			return done == ""
		}
		if done == "" || !fits(want[i], done[len(done)-1]) {
			return false
		}
		done = done[:len(done)-1]
	}
	return true
}
