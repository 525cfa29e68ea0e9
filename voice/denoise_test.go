package voice

import (
	"math"
	"math/rand/v2"
	"testing"
)

// bursts is a sound with pauses: two tones for a fifth of a second in each half.
func bursts(seconds int) []float32 {
	out := make([]float32, seconds*SampleRate)
	for i := range out {
		if t := float64(i) / SampleRate; math.Mod(t, 0.5) < 0.2 {
			out[i] = float32(0.2*math.Sin(2*math.Pi*610*t) + 0.1*math.Sin(2*math.Pi*1730*t))
		}
	}
	return out
}

// distance is the root mean square of the difference, after the first and last
// frame.
func distance(a, b []float32) float64 {
	sum := 0.0
	for i := noiseFrame; i < len(a)-noiseFrame; i++ {
		sum += float64(a[i]-b[i]) * float64(a[i]-b[i])
	}
	return math.Sqrt(sum / float64(len(a)-2*noiseFrame))
}

func TestDenoiseLeavesQuietSoundAlone(t *testing.T) {
	sound := bursts(4)
	if d := distance(sound, denoise(sound)); d > 0.001 {
		t.Errorf("sound without noise was changed by %.4f, a tone being 0.1 to 0.2", d)
	}
}

func TestDenoiseTakesHumAndHissOff(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	sound := bursts(8)
	noisy := make([]float32, len(sound))
	for i, x := range sound {
		at := float64(i) / SampleRate
		hum := math.Sin(2*math.Pi*250*at) + 0.5*math.Sin(2*math.Pi*500*at)
		noisy[i] = x + float32(0.05*hum+0.01*rnd.NormFloat64())
	}
	before, after := distance(sound, noisy), distance(sound, denoise(noisy))
	if gain := 20 * math.Log10(before/after); gain < 8 {
		t.Errorf("noise fell by %.1f dB only", gain)
	}
}

func TestDenoiseOfAlmostNothing(t *testing.T) {
	for _, n := range []int{1, noiseHop, noiseFrame + 1} {
		if got := denoise(make([]float32, n)); len(got) != n {
			t.Errorf("%d samples became %d", n, len(got))
		}
	}
}
