package voice

import (
	"slices"
	"strings"
)

// british gives a British way to say what the phones of the dictionary, which
// are American, say: no r but before a vowel, the open vowel of "pot" rounded,
// and that of "trap" further back, for which the model has no phone of its own
// (J. C. Wells, "Accents of English", Cambridge 1982, on the lexical sets and on
// rhoticity; which phones stand for them was tried out on the voices of
// testdata/bench/voice).
func british(phones string) string {
	in := strings.Fields(phones)
	var out []string
	for i, p := range in {
		beforeR := i+1 < len(in) && in[i+1] == "R"
		last := i+1 == len(in)
		switch {
		case p == "R" && i > 0 && isVowelPhone(in[i-1]) && (last || !isVowelPhone(in[i+1])):
			if slices.Contains([]string{"IH", "IY", "EH", "UH"}, in[i-1]) {
				out = append(out, "AH") // here, there, poor
			}
		case p == "ER" && last && len(in) > 2:
			out = append(out, "AH")
		case p == "AA" && !beforeR:
			out = append(out, "AO")
		case p == "AE" && !beforeR:
			out = append(out, "AA")
		default:
			out = append(out, p)
		}
	}
	return strings.Join(out, " ")
}

// isVowelPhone tells vowels by their first letter, as the set's names allow.
func isVowelPhone(p string) bool { return strings.IndexByte("AEIOU", p[0]) >= 0 }

// british has each word said both ways.
func (d dictionary) british(words []string) dictionary {
	out := dictionary{}
	for _, w := range words {
		ways := d.pronounce(w)
		for _, p := range ways {
			out.add(w, p)
		}
		for _, p := range ways {
			out.add(w, british(p))
		}
	}
	return out
}
