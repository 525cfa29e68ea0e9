package voice

import "math"

// SampleRate is the rate, in samples a second, that recognisers are given.
const SampleRate = 16000

// Rates that are taken; beyond them lies no recording of speech.
const (
	minRate = 4000
	maxRate = 384000
)

// resampler changes the rate of a stream to [SampleRate] by a sinc filter under
// a Kaiser window (J. O. Smith, "Digital Audio Resampling", CCRMA, Stanford),
// one set of taps for each of the places an output sample can take between two
// input samples. With 16 zero crossings a side and beta 9 what lies above half
// the output rate is damped by more than 80 dB.
type resampler struct {
	in, out int         // rates without their common divisor
	taps    [][]float32 // by place
	half    int         // taps before the place
	buf     []float32   // input not yet used up; its first sample is number base
	base    int64
	next    int64 // number of the next output sample
}

const (
	zeroCrossings = 16
	kaiserBeta    = 9.0
)

// newResampler gives nil where nothing is to be done.
func newResampler(rate int) *resampler {
	if rate == SampleRate {
		return nil
	}
	g := gcd(rate, SampleRate)
	r := &resampler{in: rate / g, out: SampleRate / g}
	cutoff := min(1, float64(SampleRate)/float64(rate)) * 0.95 // of half the input rate
	r.half = int(math.Ceil(zeroCrossings / cutoff))
	r.taps = make([][]float32, r.out)
	for place := range r.taps {
		r.taps[place] = make([]float32, 2*r.half)
		offset := float64(place) / float64(r.out)
		for i := range r.taps[place] {
			x := float64(i-r.half+1) - offset
			r.taps[place][i] = float32(cutoff * sinc(cutoff*x) * kaiser(x/float64(r.half)))
		}
	}
	r.buf = make([]float32, r.half-1) // silence before the first sample
	r.base = -int64(r.half - 1)
	return r
}

// push takes input and gives the output that it completes.
func (r *resampler) push(in []float32) []float32 {
	r.buf = append(r.buf, in...)
	var out []float32
	for {
		at := r.next * int64(r.in)
		first := at/int64(r.out) - int64(r.half) + 1 - r.base
		if first+int64(2*r.half) > int64(len(r.buf)) {
			used := min(first, int64(len(r.buf)))
			r.buf = append(r.buf[:0], r.buf[used:]...)
			r.base += used
			return out
		}
		sum := float32(0)
		window := r.buf[first : first+int64(2*r.half)]
		for i, t := range r.taps[at%int64(r.out)] {
			sum += t * window[i]
		}
		out = append(out, sum)
		r.next++
	}
}

// flush gives what is left when the input has ended.
func (r *resampler) flush() []float32 { return r.push(make([]float32, r.half)) }

func sinc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}

// kaiser is the Kaiser window at x from -1 to 1.
func kaiser(x float64) float64 {
	if x <= -1 || x >= 1 {
		return 0
	}
	return bessel0(kaiserBeta*math.Sqrt(1-x*x)) / bessel0(kaiserBeta)
}

// bessel0 is the modified Bessel function of order 0, by its power series.
func bessel0(x float64) float64 {
	sum, term := 1.0, 1.0
	for k := 1.0; term > 1e-12*sum; k++ {
		term *= x * x / (4 * k * k)
		sum += term
	}
	return sum
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
