package voice

import (
	"math"
	"slices"
	"strings"
)

// This file fits the means of the acoustic model by maximum likelihood linear
// regression (C. J. Leggetter and P. C. Woodland, "Maximum likelihood linear
// regression for speaker adaptation of continuous density hidden Markov models",
// Computer Speech and Language 9, 1995), one transform for each stream and phone,
// kept near that of the phones of its kind (O. Siohan, T. A. Myrvoll and C.-H.
// Lee, "Structural maximum a posteriori linear regression for fast HMM
// adaptation", Computer Speech and Language 16(1), 2002).
//
// In trials on six dictated notes by four formant voices (737 words) one transform
// for sonorants and one for the rest left 171 words wrong, one for each group of
// phones 158, one for each phone 143, and with the prior at 100 instead of 200
// frames 133. Fitting the variances as well made it worse (186).
//
//	go run ./testdata/bench/voice -notes testdata/notes/seen/strangers-spoken-2.gold -every 8 -voices 1 -voice espeak- -noise clean -models ours

// prior is how many frames the transform that is known before counts for, so
// that little speech changes little.
const prior = 100.0

// transformRow makes one component of a new mean: the weights of the old mean's
// components, and a constant.
type transformRow [dims + 1]float64

func (r *transformRow) of(mean []float32) float64 {
	x := r[dims]
	for k, m := range mean {
		x += r[k] * float64(m)
	}
	return x
}

// regress fits one row of a stream's transform to some codebooks.
func (a *acoustics) regress(s *speech, stream, j int, books []int, before transformRow) transformRow {
	var g [dims + 1][dims + 2]float64
	total := 0.0
	old := transformRow{dims: 1}
	for _, book := range books {
		for d := range a.means.densities {
			i := a.means.index(book, stream, d)
			n := float64(s.Frames[i])
			if n == 0 {
				continue
			}
			total += n
			for k, m := range a.means.vector(i) {
				old[k] = float64(m)
			}
			precision := float64(a.inverse.vector(i)[j])
			for k := range old {
				for l := range old {
					g[k][l] += n * precision * old[k] * old[l]
				}
				g[k][dims+1] += precision * float64(s.Sums[i*dims+j]) * old[k]
			}
		}
	}
	if total == 0 {
		return before
	}
	scale := prior / total
	for k := range g {
		g[k][dims+1] += scale * g[k][k] * before[k]
		g[k][k] *= 1 + scale
	}
	if row, ok := solve(g); ok {
		return row
	}
	return before
}

// phoneClass is some codebooks that change alike with a voice, and the classes
// that they fall into.
type phoneClass struct {
	books []int
	parts []phoneClass
}

// phoneGroups are the phones by how they are made: those in which the whole vocal
// tract sounds, which a voice changes otherwise than it does hisses and stops;
// of the former front, back and gliding vowels, liquids and nasals.
var phoneGroups = [][]string{
	{"IY IH EY EH AE", "AA AO OW UH UW AH", "AY AW OY ER", "L R W Y", "M N NG"},
	{"F V TH DH S Z SH ZH HH CH JH", "P B T D K G"},
}

// phoneClasses gives the tree of classes: all codebooks, the halves, the groups,
// and each phone. Codebooks of no phone (silence, noises) go by all.
func (a *acoustics) phoneClasses() phoneClass {
	var all phoneClass
	for book := range a.means.books {
		all.books = append(all.books, book)
	}
	grouped := map[int]bool{}
	for _, groups := range phoneGroups {
		var half phoneClass
		for _, phones := range groups {
			var group phoneClass
			for _, phone := range strings.Fields(phones) {
				if book, ok := a.phones[phone]; ok {
					grouped[book] = true
					group.add(phoneClass{books: []int{book}})
				}
			}
			half.add(group)
		}
		all.parts = append(all.parts, half)
	}
	others := slices.DeleteFunc(slices.Clone(all.books), func(book int) bool { return grouped[book] })
	all.parts = append(all.parts, phoneClass{books: others})
	return all
}

func (c *phoneClass) add(part phoneClass) {
	c.books = append(c.books, part.books...)
	c.parts = append(c.parts, part)
}

// transform moves one component of the means of a class, each part of it by a
// transform near the whole's.
func (a *acoustics) transform(out *gaussians, s *speech, stream, j int, class phoneClass, before transformRow) {
	row := a.regress(s, stream, j, class.books, before)
	for _, part := range class.parts {
		a.transform(out, s, stream, j, part, row)
	}
	if len(class.parts) > 0 {
		return
	}
	for _, book := range class.books {
		for d := range a.means.densities {
			i := a.means.index(book, stream, d)
			out.vector(i)[j] = float32(row.of(a.means.vector(i)))
		}
	}
}

// solve solves linear equations by elimination; the last column is the right
// side.
func solve(g [dims + 1][dims + 2]float64) (x transformRow, ok bool) {
	const n = dims + 1
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(g[r][c]) > math.Abs(g[p][c]) {
				p = r
			}
		}
		if math.Abs(g[p][c]) < 1e-12 {
			return x, false
		}
		g[c], g[p] = g[p], g[c]
		for r := c + 1; r < n; r++ {
			f := g[r][c] / g[c][c]
			for k := c; k <= n; k++ {
				g[r][k] -= f * g[c][k]
			}
		}
	}
	for c := n - 1; c >= 0; c-- {
		x[c] = g[c][n]
		for k := c + 1; k < n; k++ {
			x[c] -= g[c][k] * x[k]
		}
		x[c] /= g[c][c]
	}
	return x, true
}
