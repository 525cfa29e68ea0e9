package voice

import "slices"

// WordErrors counts how far a recognised text is from what was said: the words
// of the reference, and the substitutions, deletions and insertions of the
// alignment that needs fewest of them (NIST sclite; D. Jurafsky and J. H.
// Martin, "Speech and Language Processing", chapter on speech recognition).
type WordErrors struct {
	Words, Substituted, Deleted, Inserted int
}

// Rate is the word error rate. With many insertions it passes 1; with an empty
// reference it is 0, or 1 where anything was heard.
func (e WordErrors) Rate() float64 {
	n := e.Substituted + e.Deleted + e.Inserted
	if e.Words == 0 {
		return float64(min(n, 1))
	}
	return float64(n) / float64(e.Words)
}

// Add adds the counts of another text.
func (e *WordErrors) Add(o WordErrors) {
	e.Words += o.Words
	e.Substituted += o.Substituted
	e.Deleted += o.Deleted
	e.Inserted += o.Inserted
}

// Confusion is a place at which an alignment differs: Said is empty for an
// inserted word, Heard for a deleted one.
type Confusion struct{ Said, Heard string }

// CompareWords aligns what was said with what was heard. Case, punctuation and
// digits or number words make no difference.
func CompareWords(said, heard string) (WordErrors, []Confusion) {
	var e WordErrors
	var out []Confusion
	for _, p := range AlignWords(said, heard) {
		switch {
		case p.Said == p.Heard:
		case p.Said == "":
			e.Inserted++
		case p.Heard == "":
			e.Deleted++
		default:
			e.Substituted++
		}
		if p.Said != "" {
			e.Words++
		}
		if p.Said != p.Heard {
			out = append(out, p)
		}
	}
	return e, out
}

// AlignWords gives the alignment that needs fewest errors, in the order said:
// pairs of the same word where it was heard rightly.
func AlignWords(said, heard string) []Confusion {
	ref, hyp := plainTokens(said), plainTokens(heard)
	cost := make([][]int, len(ref)+1)
	for i := range cost {
		cost[i] = make([]int, len(hyp)+1)
		cost[i][0] = i
	}
	for j := range cost[0] {
		cost[0][j] = j
	}
	for i, r := range ref {
		for j, h := range hyp {
			swap := cost[i][j]
			if r != h {
				swap++
			}
			cost[i+1][j+1] = min(swap, cost[i][j+1]+1, cost[i+1][j]+1)
		}
	}
	var out []Confusion
	for i, j := len(ref), len(hyp); i > 0 || j > 0; {
		switch {
		case i > 0 && j > 0 && (ref[i-1] == hyp[j-1] && cost[i][j] == cost[i-1][j-1] || cost[i][j] == cost[i-1][j-1]+1):
			i, j = i-1, j-1
			out = append(out, Confusion{ref[i], hyp[j]})
		case i > 0 && cost[i][j] == cost[i-1][j]+1:
			i--
			out = append(out, Confusion{ref[i], ""})
		default:
			j--
			out = append(out, Confusion{"", hyp[j]})
		}
	}
	slices.Reverse(out)
	return out
}

// plainTokens are the words of a text in lower case, digits spelt out.
func plainTokens(text string) []string {
	return classSet{}.tokens(text)
}
