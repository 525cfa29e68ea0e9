package voice

import (
	"math"
	"slices"
	"strings"
)

// This file gathers what is heard of a speaker and a microphone, and moves the
// means of the acoustic model towards it: by linear regression (regress.go), and
// then each mean that was heard often on its own (J.-L. Gauvain and C.-H. Lee,
// "Maximum a posteriori estimation for multivariate Gaussian mixture observations
// of Markov chains", IEEE Trans. Speech and Audio Processing 2(2), 1994).

// speech is what is known of a voice: for each Gaussian, how many frames it
// accounts for and the sum of these, as the recogniser hears that speaker.
type speech struct {
	Speaker speaker
	Frames  []float32 // by Gaussian
	Sums    []float32 // of each dims

	Words    float64 // how many were heard, clear or not
	Sureness float64 // sum of their posteriors
}

// clarity is the mean posterior of the words heard; 1 where there are none.
func (s *speech) clarity() float64 {
	if s.Words == 0 {
		return 1
	}
	return s.Sureness / s.Words
}

func newSpeech(a *acoustics) *speech {
	n := a.means.count()
	return &speech{Speaker: plainSpeaker, Frames: make([]float32, n), Sums: make([]float32, n*dims)}
}

// empty reports whether nothing is known.
func (s *speech) empty() bool {
	return !slices.ContainsFunc(s.Frames, func(n float32) bool { return n > 0 })
}

// feature is a frame as the model sees it: cepstra, differences, and their
// differences.
type feature [3][dims]float32

// features takes the mean off the cepstra and adds the differences, over the
// distances that the recogniser takes them (its feature type "1s_c_d_dd").
func features(cepstra [][dims]float32) []feature {
	var mean [dims]float64
	for _, c := range cepstra {
		for i, x := range c {
			mean[i] += float64(x) / float64(len(cepstra))
		}
	}
	at := func(t, i int) float32 {
		return cepstra[max(0, min(len(cepstra)-1, t))][i]
	}
	out := make([]feature, len(cepstra))
	for t := range cepstra {
		for i := range dims {
			out[t][0][i] = at(t, i) - float32(mean[i])
			out[t][1][i] = at(t+2, i) - at(t-2, i)
			out[t][2][i] = (at(t+3, i) - at(t-1, i)) - (at(t+1, i) - at(t-3, i))
		}
	}
	return out
}

// add takes in the frames of one word, aligned with the phones of the way of
// saying it that fits best.
func (s *speech) add(a *acoustics, frames []feature, pronunciations []string) {
	var best []int
	bestScore := math.Inf(-1)
	scores := map[int][]float64{}
	for _, p := range pronunciations {
		var books []int
		for _, phone := range strings.Fields(p) {
			b, ok := a.phones[phone]
			if !ok {
				return
			}
			books = append(books, b)
			if scores[b] == nil {
				for t := range frames {
					scores[b] = append(scores[b], a.score(b, &frames[t]))
				}
			}
		}
		if at, score := align(books, scores, len(frames)); score > bestScore {
			best, bestScore = at, score
		}
	}
	for t, book := range best {
		s.addFrame(a, book, &frames[t])
	}
}

// shortestPhone is how many frames a phone takes at least: one for each state.
const shortestPhone = 3

// align gives the codebook of each frame on the best way through the phones.
func align(books []int, scores map[int][]float64, frames int) ([]int, float64) {
	states := len(books) * shortestPhone
	if states == 0 || frames < states {
		return nil, math.Inf(-1)
	}
	score := make([]float64, states)
	for i := range score {
		score[i] = math.Inf(-1)
	}
	moved := make([][]bool, frames)
	for t := range frames {
		moved[t] = make([]bool, states)
		for s := states - 1; s >= 0; s-- {
			from := math.Inf(-1)
			if s > 0 {
				from = score[s-1]
			} else if t == 0 {
				from = 0
			}
			if from > score[s] {
				score[s], moved[t][s] = from, true
			}
			score[s] += scores[books[s/shortestPhone]][t]
		}
	}
	at := make([]int, frames)
	s := states - 1
	for t := frames - 1; t >= 0; t-- {
		at[t] = books[s/shortestPhone]
		if moved[t][s] {
			s--
		}
	}
	return at, score[states-1]
}

// score is the likelihood of a frame in a phone, as a logarithm.
func (a *acoustics) score(book int, f *feature) float64 {
	sum := 0.0
	for stream := range f {
		best := math.Inf(-1)
		for d := range a.means.densities {
			best = max(best, a.gauss(a.means.index(book, stream, d), f[stream][:]))
		}
		sum += best
	}
	return sum
}

// gauss is the logarithm of a Gaussian, but for a constant.
func (a *acoustics) gauss(i int, x []float32) float64 {
	mean, inverse := a.means.vector(i), a.inverse.vector(i)
	sum := float32(0)
	for j, v := range x {
		d := v - mean[j]
		sum += d * d * inverse[j]
	}
	return -a.norms[i] - 0.5*float64(sum)
}

// addFrame shares a frame out among the Gaussians of a codebook.
func (s *speech) addFrame(a *acoustics, book int, f *feature) {
	likely := make([]float64, a.means.densities)
	for stream := range f {
		x := f[stream][:]
		for d := range likely {
			likely[d] = a.gauss(a.means.index(book, stream, d), x)
		}
		top, sum := slices.Max(likely), 0.0
		for d := range likely {
			likely[d] = math.Exp(likely[d] - top)
			sum += likely[d]
		}
		for d := range likely {
			share := likely[d] / sum
			if share < 0.01 {
				continue
			}
			i := a.means.index(book, stream, d)
			s.Frames[i] += float32(share)
			for j, v := range x {
				s.Sums[i*dims+j] += float32(share) * v
			}
		}
	}
}

// adapted gives the means as they are for a speaker.
func (a *acoustics) adapted(s *speech) *gaussians {
	out := &gaussians{books: a.means.books, streams: a.means.streams, densities: a.means.densities, data: slices.Clone(a.means.data)}
	all := a.phoneClasses()
	for stream := range a.means.streams {
		for j := range dims {
			unchanged := transformRow{}
			unchanged[j] = 1
			a.transform(out, s, stream, j, all, unchanged)
		}
	}
	for i, n := range s.Frames {
		for j, m := range out.vector(i) {
			out.vector(i)[j] += (s.Sums[i*dims+j] - n*m) / (n + ownWeight)
		}
	}
	return out
}

// ownWeight is how many frames of a Gaussian the transformed mean counts for
// against those heard. Chosen by trial on two notes by three formant voices that
// are not the bench's notes (573 words): 192 errors without, 155 with 20, 166
// with 8, 171 with 3.
const ownWeight = 20
