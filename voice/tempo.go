package voice

import "math"

// Sizes of overlap-add, in samples. The lowest voices swing 80 times a second
// (200 samples): a frame holds two swings, and the search finds the best place
// for it anywhere within one.
const (
	tempoFrame  = SampleRate * 32 / 1000
	tempoHop    = tempoFrame / 2
	tempoSearch = SampleRate / 80
)

// atTempo plays the samples at another tempo, 1 as they were, 0.5 half as fast,
// the voice as high as it was. It is waveform similarity overlap-add (W. Verhelst
// and M. Roelands, "An overlap-add technique based on waveform similarity (WSOLA)
// for high quality time-scale modification of speech", ICASSP 1993): frames are
// taken from the recording at the new tempo, each from where it best goes on with
// the frame before, and faded into one another.
func atTempo(samples []float32, tempo float64) []float32 {
	if tempo == 1 || len(samples) == 0 {
		return samples
	}
	in := make([]float32, tempoSearch+len(samples)+tempoSearch+2*tempoFrame)
	copy(in[tempoSearch:], samples)
	length := int(float64(len(samples)) / tempo)
	out := make([]float32, length+tempoFrame)
	fade := make([]float32, tempoFrame) // two, a hop apart, add up to 1
	for i := range fade {
		fade[i] = float32(0.5 - 0.5*math.Cos(2*math.Pi*float64(i)/tempoFrame))
	}
	from := tempoSearch
	for to := 0; to < length; to += tempoHop {
		if to > 0 {
			goesOn := in[from+tempoHop : from+tempoHop+tempoFrame]
			from = likest(in, int(float64(to)*tempo), goesOn)
		}
		for i, f := range fade {
			out[to+i] += f * in[from+i]
		}
	}
	return out[:length]
}

// likest is where in the samples, from the given place on and as far as the
// search goes, a frame is most like the one that is wanted.
func likest(in []float32, from int, want []float32) int {
	best, most := from+tempoSearch, -1.0
	for at := from; at <= from+2*tempoSearch; at++ {
		product, energy := float32(0), float32(1e-9)
		for i, x := range in[at : at+len(want)] {
			product += x * want[i]
			energy += x * x
		}
		if like := float64(product) / math.Sqrt(float64(energy)); like > most {
			best, most = at, like
		}
	}
	return best
}
