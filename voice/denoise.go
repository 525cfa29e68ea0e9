package voice

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/dsp/fourier"
)

// noisyBelow is the level of speech over noise, in decibels, under which noise
// is removed from a part; the place between 10 and 20 is a guess. At 10 dB, by
// voices that were not learned (clearVoice at 0), the recogniser's own removal,
// which stood here before, left 251 of 1,075 words wrong and 153 leaves right, a
// gain like the one below 232 and 185, and one that bends less at low levels (the
// logarithmic estimator of the same authors) 220 and 184:
//
//	go run ./testdata/bench/voice -notes testdata/notes/seen/strangers-spoken.gold -every 14 -voices 1 -noise 10 -models ours
const noisyBelow = 18.0

// How noise is removed. The frames are longer than the recogniser's own, so that
// the hum of a hive, which is some narrow lines, is told from the voice between
// them: the recogniser's own removal, in bands as wide as the ear's, is left off.
const (
	noiseFrame    = SampleRate * 64 / 1000 // samples
	noiseHop      = noiseFrame / 4
	noiseQuantile = 0.4   // of the frames, the part that is taken to be no louder than noise in a band
	noiseKept     = 0.18  // a band is turned down to this share at most: about -15 dB
	snrMemory     = 0.96  // of the clean frame before, in what a frame's speech is taken to be
	leastSNR      = 0.003 // speech over noise, as powers
)

// denoise removes steady noise: a Wiener filter in each band, the speech being
// estimated from the frame before and this one (Y. Ephraim and D. Malah, "Speech
// enhancement using a minimum mean-square error short-time spectral amplitude
// estimator", IEEE Trans. ASSP 32(6), 1984, its "decision-directed" rule), the
// noise from the quieter frames of the whole part (V. Stahl, A. Fischer and R.
// Bippus, "Quantile based noise estimation for spectral subtraction and Wiener
// filtering", ICASSP 2000).
func denoise(samples []float32) []float32 {
	fft, window := fourier.NewFFT(noiseFrame), noiseWindow()
	spectra := spectraOf(samples, fft, window)
	noise := noiseIn(spectra)
	clean := make([]float64, len(noise)) // power over noise, of the frame before
	for _, bands := range spectra {
		for b, x := range bands {
			now := power(x) / noise[b]
			snr := max(leastSNR, snrMemory*clean[b]+(1-snrMemory)*max(0, now-1))
			gain := snr / (1 + snr)
			clean[b] = gain * gain * now
			bands[b] *= complex(max(noiseKept, gain), 0)
		}
	}
	return overlapped(spectra, fft, window, len(samples))
}

// noiseWindow is the root of Hann's window, by which a frame is weighted on the
// way in and again on the way out.
func noiseWindow() []float64 {
	w := make([]float64, noiseFrame)
	for i := range w {
		w[i] = math.Sin(math.Pi * float64(i) / noiseFrame)
	}
	return w
}

// spectraOf gives the spectrum of each frame; the first begins before the
// samples and the last ends after them, so that all are seen as often.
func spectraOf(samples []float32, fft *fourier.FFT, window []float64) [][]complex128 {
	var out [][]complex128
	frame := make([]float64, noiseFrame)
	for start := noiseHop - noiseFrame; start < len(samples); start += noiseHop {
		for i := range frame {
			frame[i] = 0
			if at := start + i; at >= 0 && at < len(samples) {
				frame[i] = window[i] * float64(samples[at])
			}
		}
		out = append(out, fft.Coefficients(nil, frame))
	}
	return out
}

func power(x complex128) float64 { return real(x)*real(x) + imag(x)*imag(x) }

// noiseIn gives the mean power of the noise in each band. Power of noise is
// distributed exponentially, by which the mean follows from a quantile.
func noiseIn(spectra [][]complex128) []float64 {
	out := make([]float64, noiseFrame/2+1)
	powers := make([]float64, len(spectra))
	for b := range out {
		for t, bands := range spectra {
			powers[t] = power(bands[b])
		}
		slices.Sort(powers)
		out[b] = max(1e-12, powers[int(noiseQuantile*float64(len(powers)))]/-math.Log(1-noiseQuantile))
	}
	return out
}

// overlapped adds the frames up again.
func overlapped(spectra [][]complex128, fft *fourier.FFT, window []float64, n int) []float32 {
	// What a transform there and back, and the windows of the four frames over
	// each sample, multiply by.
	const scale = noiseFrame * noiseFrame / noiseHop / 2
	out := make([]float32, n)
	for t, bands := range spectra {
		start := noiseHop - noiseFrame + t*noiseHop
		for i, x := range fft.Sequence(nil, bands) {
			if at := start + i; at >= 0 && at < n {
				out[at] += float32(x * window[i] / scale)
			}
		}
	}
	return out
}
