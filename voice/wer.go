package voice

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
	e := WordErrors{Words: len(ref)}
	var out []Confusion
	for i, j := len(ref), len(hyp); i > 0 || j > 0; {
		switch {
		case i > 0 && j > 0 && ref[i-1] == hyp[j-1] && cost[i][j] == cost[i-1][j-1]:
			i, j = i-1, j-1
		case i > 0 && j > 0 && cost[i][j] == cost[i-1][j-1]+1:
			i, j = i-1, j-1
			e.Substituted++
			out = append(out, Confusion{ref[i], hyp[j]})
		case i > 0 && cost[i][j] == cost[i-1][j]+1:
			i--
			e.Deleted++
			out = append(out, Confusion{ref[i], ""})
		default:
			j--
			e.Inserted++
			out = append(out, Confusion{"", hyp[j]})
		}
	}
	return e, out
}

// plainTokens are the words of a text in lower case, digits spelt out.
func plainTokens(text string) []string {
	return classSet{}.tokens(text)
}
