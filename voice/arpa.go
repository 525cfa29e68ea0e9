package voice

import (
	"bufio"
	"fmt"
	"io"
	"maps"
	"math"
	"slices"
)

// gram is an n-gram of the written model, its words packed 21 bits each, the
// last lowest.
type gram uint64

const gramBits = 21

func bigram(b, w int32) gram     { return gram(b)<<gramBits | gram(w) }
func trigram(a, b, w int32) gram { return gram(a)<<(2*gramBits) | gram(b)<<gramBits | gram(w) }
func (g gram) last() int32       { return int32(g & (1<<gramBits - 1)) }
func (g gram) history() gram     { return g >> gramBits }
func (g gram) suffix() gram      { return g & (1<<(2*gramBits) - 1) } // of a trigram, without its oldest word

// backoffModel is a model as an ARPA file holds it: explicit n-grams, and for
// every other the probability behind the shorter history times a weight.
type backoffModel struct {
	words []string
	p1    []float64
	p2    map[gram]float64
	p3    map[gram]float64
	bow1  []float64
	bow2  map[gram]float64
}

// explicit chooses the n-grams that the written model holds and works out its
// backoff weights so that every history's probabilities add up to one.
func (m *mixture) explicit(sizes modelSizes, classes tokenClasses) *backoffModel {
	out := &backoffModel{words: m.words, p2: map[gram]float64{}, p3: map[gram]float64{}, bow2: map[gram]float64{}}
	for w := range m.words {
		out.p1 = append(out.p1, m.p1(int32(w)))
	}
	out.p1[sentenceStart] = 0
	total := 0.0
	for _, p := range out.p1 {
		total += p
	}
	for w := range out.p1 {
		out.p1[w] /= total // the general model knows words that are left out here
	}
	for _, s := range m.trade {
		s.grams(out, sizes, classes)
	}
	if m.general != nil {
		m.generalGrams(out, sizes)
	}
	for g := range out.p3 { // a trigram needs the bigrams it backs off through
		out.p2[g.history()] = 0
		out.p2[g.suffix()] = 0
	}
	for g := range out.p2 {
		out.p2[g] = m.p2(int32(g.history()), g.last())
	}
	for g := range out.p3 {
		out.p3[g] = m.p3(int32(g>>(2*gramBits)), int32(g.history()&(1<<gramBits-1)), g.last())
	}
	out.backoffs()
	out.prune(sizes.threshold)
	out.backoffs()
	return out
}

// prune drops the n-grams that say little more than the shorter history does
// once its weight is taken into account, weighted by how often they come up.
func (m *backoffModel) prune(threshold float64) {
	often := func(w gram) float64 {
		if w == gram(sentenceStart) { // never predicted, and as often as the end
			w = gram(sentenceEnd)
		}
		return m.p1[w]
	}
	kept := map[gram]bool{}
	for g, p := range m.p3 {
		h := g.history()
		before := often(h.history()) * m.p2[h]
		if before*p*math.Abs(math.Log(p/(m.bow2[h]*m.prob2(g.suffix())))) > threshold {
			kept[h], kept[g.suffix()] = true, true
		} else {
			delete(m.p3, g)
		}
	}
	for g, p := range m.p2 {
		b := g.history()
		if !kept[g] && often(b)*p*math.Abs(math.Log(p/(m.bow1[b]*m.p1[g.last()]))) <= threshold {
			delete(m.p2, g)
		}
	}
	m.bow1, m.bow2 = nil, map[gram]float64{}
}

// modelSizes bound what is written.
type modelSizes struct {
	expand    int     // n-grams that one n-gram over classes may stand for
	threshold float64 // what a general n-gram must add to be written, in nats
}

// tokenClasses gives for a token id the words it may be: itself, or all of a
// class.
type tokenClasses [][]int32

// grams notes the n-grams that were counted, classes spelt out.
func (s source) grams(out *backoffModel, sizes modelSizes, classes tokenClasses) {
	for b, h := range s.counts.bi {
		for w := range h.next {
			for _, wb := range classes[b] {
				for _, ww := range classes[w] {
					out.p2[bigram(wb, ww)] = 0
				}
			}
		}
	}
	for ab, h := range s.counts.tri {
		as, bs := classes[ab>>32], classes[int32(uint32(ab))]
		for w := range h.next {
			ws := classes[w]
			if len(as)*len(bs)*len(ws) > sizes.expand {
				continue
			}
			for _, a := range as {
				for _, b := range bs {
					for _, c := range ws {
						out.p3[trigram(a, b, c)] = 0
					}
				}
			}
		}
	}
}

// generalGrams notes those n-grams of general English that say more than their
// shorter histories do, weighted by how often they come up (after A. Stolcke,
// "Entropy-based pruning of backoff language models", DARPA Broadcast News
// Workshop, 1998, without the change of the other weights).
func (m *mixture) generalGrams(out *backoffModel, sizes modelSizes) {
	g := m.general
	ours := make([]int32, len(g.words))
	for i := range ours {
		ours[i] = -1
	}
	for w, id := range m.genIDs {
		if id >= 0 {
			ours[id] = int32(w)
		}
	}
	for _, gw := range m.genIDs {
		if gw < 0 {
			continue
		}
		for i := g.uni[gw].Next; i < g.uni[gw+1].Next; i++ {
			gb := int32(g.bi.bitsAt(i, 0, g.bi.word))
			if ours[gb] < 0 {
				continue
			}
			pb := g.often(gb)
			p := math.Exp(g.log2(i))
			short := math.Exp(g.log1(gw) + float64(g.uni[gb].Backoff)*logBase)
			if pb*p*math.Abs(math.Log(p/short)) > sizes.threshold {
				out.p2[bigram(ours[gb], ours[gw])] = 0
			}
			from, to := g.trigramRange(i)
			for j := from; j < to; j++ {
				ga := int32(g.tri.bitsAt(j, 0, g.tri.word))
				if ours[ga] < 0 {
					continue
				}
				back := 0.0
				pab := g.often(ga) * g.p2(ga, gb)
				if k, ok := g.bigram(ga, gb); ok {
					back = g.backoff2(k)
				}
				p3 := math.Exp(g.log3(j))
				if pab*p3*math.Abs(math.Log(p3/(p*math.Exp(back)))) > sizes.threshold {
					out.p3[trigram(ours[ga], ours[gb], ours[gw])] = 0
				}
			}
		}
	}
}

// backoffs works out the weights: what a history's explicit words leave, over
// what the shorter history leaves behind the same words.
func (m *backoffModel) backoffs() {
	left := make([]float64, len(m.words))
	lower := make([]float64, len(m.words))
	for i := range left {
		left[i], lower[i] = 1, 1
	}
	for g, p := range m.p2 {
		b := g.history()
		left[b] -= p
		lower[b] -= m.p1[g.last()]
	}
	for b := range left {
		m.bow1 = append(m.bow1, weight(left[b], lower[b]))
	}
	left2, lower2 := map[gram]float64{}, map[gram]float64{}
	for g, p := range m.p3 {
		left2[g.history()] += p
		lower2[g.history()] += m.prob2(g.suffix())
	}
	for h, sum := range left2 {
		m.bow2[h] = weight(1-sum, 1-lower2[h])
	}
}

// weight keeps a backoff weight above zero, which rounding can miss where the
// explicit words take everything.
func weight(left, lower float64) float64 {
	const least = 1e-6
	return max(left, least) / max(lower, least)
}

// prob2 is the probability as a reader of the file works it out.
func (m *backoffModel) prob2(g gram) float64 {
	if p, ok := m.p2[g]; ok {
		return p
	}
	return m.bow1[g.history()] * m.p1[g.last()]
}

// write writes the model in the ARPA form: base-10 logarithms of probability
// and backoff weight ("ngram-format", SRILM manual pages).
func (m *backoffModel) write(w io.Writer) error {
	out := bufio.NewWriterSize(w, 1<<16)
	fmt.Fprintf(out, "\n\\data\\\nngram 1=%d\nngram 2=%d\nngram 3=%d\n", len(m.words), len(m.p2), len(m.p3))
	fmt.Fprint(out, "\n\\1-grams:\n")
	for i, word := range m.words {
		fmt.Fprintf(out, "%.4f %s %.4f\n", log10(m.p1[i]), word, log10(m.bow1[i]))
	}
	fmt.Fprint(out, "\n\\2-grams:\n")
	for _, g := range slices.Sorted(maps.Keys(m.p2)) {
		fmt.Fprintf(out, "%.4f %s %s", log10(m.p2[g]), m.words[g.history()], m.words[g.last()])
		if bow, ok := m.bow2[g]; ok {
			fmt.Fprintf(out, " %.4f", log10(bow))
		} else {
			fmt.Fprint(out, " 0.0000")
		}
		fmt.Fprintln(out)
	}
	fmt.Fprint(out, "\n\\3-grams:\n")
	for _, g := range slices.Sorted(maps.Keys(m.p3)) {
		fmt.Fprintf(out, "%.4f %s %s %s\n", log10(m.p3[g]), m.words[g>>(2*gramBits)], m.words[g.history()&(1<<gramBits-1)], m.words[g.last()])
	}
	fmt.Fprint(out, "\n\\end\\\n")
	return out.Flush()
}

// log10 writes impossible as -99, as ARPA files do.
func log10(p float64) float64 {
	if p <= 0 {
		return -99
	}
	return math.Log10(p)
}
