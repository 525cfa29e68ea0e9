package voice

// This file estimates a trigram model over tokens: words and classes of words.
// Smoothing is interpolated Witten–Bell (I. H. Witten and T. C. Bell, "The
// zero-frequency problem", IEEE Trans. Information Theory 37(4), 1991, method
// C, in the interpolated form of S. F. Chen and J. Goodman, "An empirical study
// of smoothing techniques for language modeling", TR-10-98, Harvard, 1998):
//
//	p(w|h) = (c(h w) + t(h) p(w|h')) / (c(h) + t(h))
//
// with c counts, t(h) the number of different words seen behind h, and h' the
// history without its oldest word. It is preferred to Kneser–Ney here because
// our sentences are drawn from templates: counts of counts, which Kneser–Ney
// takes its discounts from, say how often we drew, not how people speak.

// history holds what was seen behind one history.
type history struct {
	total float64
	next  map[int32]float64
}

// counts are n-gram counts over token ids. Histories are keyed by the ids of
// their words, the older one in the upper half; -1 stands for none.
type counts struct {
	uni history
	bi  map[int32]*history
	tri map[int64]*history
}

func newCounts() *counts {
	return &counts{
		uni: history{next: map[int32]float64{}},
		bi:  map[int32]*history{},
		tri: map[int64]*history{},
	}
}

func pairKey(a, b int32) int64 { return int64(a)<<32 | int64(uint32(b)) }

// add counts the n-grams of one sentence, which begins with the token for its
// start; that token itself is never predicted.
func (c *counts) add(sentence []int32, weight float64) {
	for i := 1; i < len(sentence); i++ {
		w := sentence[i]
		c.uni.add(w, weight)
		b := sentence[i-1]
		if c.bi[b] == nil {
			c.bi[b] = &history{next: map[int32]float64{}}
		}
		c.bi[b].add(w, weight)
		if i < 2 {
			continue
		}
		k := pairKey(sentence[i-2], b)
		if c.tri[k] == nil {
			c.tri[k] = &history{next: map[int32]float64{}}
		}
		c.tri[k].add(w, weight)
	}
}

func (h *history) add(w int32, weight float64) {
	h.total += weight
	h.next[w] += weight
}

// p1 is the probability of w with no history: seen share, with the unseen share
// spread over size words.
func (c *counts) p1(w int32, size int) float64 {
	t := float64(len(c.uni.next))
	return (c.uni.next[w] + t/float64(size)) / (c.uni.total + t)
}

// p2 is the probability of w behind b.
func (c *counts) p2(b, w int32, size int) float64 {
	return c.bi[b].smooth(w, c.p1(w, size))
}

// p3 is the probability of w behind a b.
func (c *counts) p3(a, b, w int32, size int) float64 {
	return c.tri[pairKey(a, b)].smooth(w, c.p2(b, w, size))
}

// smooth applies Witten–Bell over the probability from the shorter history. A
// history that was never seen (nil) leaves it as it is.
func (h *history) smooth(w int32, lower float64) float64 {
	if h == nil || h.total == 0 {
		return lower
	}
	t := float64(len(h.next))
	return (h.next[w] + t*lower) / (h.total + t)
}
