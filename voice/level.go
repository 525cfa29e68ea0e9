package voice

import (
	"math"
	"math/rand/v2"
	"slices"
)

// fillLevel is how far below the speech, in decibels, a steady noise is laid
// under a part.
//
// Recognisers learned from recordings of rooms, in which no band is ever quite
// silent. Codecs, noise gates and synthetic voices leave bands with nothing in
// them, whose logarithm says something only about rounding. A noise too soft to
// matter elsewhere fills them. 40 was chosen by trial on clean synthetic voices,
// with and without it (this constant at 200) in
//
//	go run ./testdata/bench/voice -every 4 -noise clean -models ours
//
// It took a third of the errors off the four formant voices (181 to 124 of 289
// words; nearly all for one, next to none for another), and the six voices built
// from recordings had 40 of 425 words wrong where they had 37. Not tried on
// people.
const fillLevel = 40.0

// levelled gives the samples as 16-bit numbers, with noise laid under them and
// raised or lowered so that the loudest thousandth is near full scale. What is
// much too quiet is raised by a factor of 30 at most.
func (p *soundPart) levelled() []int16 {
	samples := slices.Clone(p.samples)
	if level := speechLevel(samples); level > 0 {
		fill(samples, level*math.Pow(10, -fillLevel/20))
	}
	gain := min(30, 0.8/max(peakOf(samples), 1e-6))
	out := make([]int16, len(samples))
	for i, x := range samples {
		out[i] = int16(max(-1, min(1, x*gain)) * math.MaxInt16)
	}
	return out
}

// peakOf is what a thousandth of the samples surpass.
func peakOf(samples []float32) float32 {
	if len(samples) == 0 {
		return 0
	}
	loud := make([]float32, len(samples))
	for i, x := range samples {
		loud[i] = max(x, -x)
	}
	slices.Sort(loud)
	return loud[len(loud)*999/1000]
}

// speechLevel is the root mean square of the louder half of the frames.
func speechLevel(samples []float32) float64 {
	powers := framePowers(samples)
	return rootMean(powers[len(powers)/2:])
}

// overNoise is how many decibels the louder half of the frames stands above the
// quietest tenth, 0 to 100.
func overNoise(samples []float32) float64 {
	powers := framePowers(samples)
	quiet, loud := rootMean(powers[:(len(powers)+9)/10]), rootMean(powers[len(powers)/2:])
	return max(0, min(100, 20*math.Log10(max(loud, 1e-9)/max(quiet, 1e-9))))
}

// framePowers gives the mean squares of the frames, the quietest first.
func framePowers(samples []float32) []float64 {
	var powers []float64
	for i := 0; i+frameSamples <= len(samples); i += frameSamples {
		sum := 0.0
		for _, x := range samples[i : i+frameSamples] {
			sum += float64(x) * float64(x)
		}
		powers = append(powers, sum/frameSamples)
	}
	slices.Sort(powers)
	return powers
}

func rootMean(powers []float64) float64 {
	sum := 0.0
	for _, p := range powers {
		sum += p
	}
	return math.Sqrt(sum / float64(max(len(powers), 1)))
}

// fill adds noise that falls by about three decibels an octave, always the
// same, with a root mean square of level. Three one-pole filters approximate
// the slope (the "economy" filter of P. Kellet, in R. Bristow-Johnson, "DSP
// generation of pink noise", musicdsp.org archive, file 76).
func fill(samples []float32, level float64) {
	const unit = 2.95 // root mean square of the filter's output for noise of one
	rnd := rand.New(rand.NewPCG(1, 1))
	a, b, c := 0.0, 0.0, 0.0
	for i := range samples {
		white := rnd.NormFloat64()
		a = 0.99765*a + white*0.0990460
		b = 0.96300*b + white*0.2965164
		c = 0.57000*c + white*1.0526913
		samples[i] += float32(level / unit * (a + b + c + white*0.1848))
	}
}
