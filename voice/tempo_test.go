package voice

import (
	"encoding/binary"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// someSyllables is a voice of the pitch that says three syllables a second.
func someSyllables(pitch, seconds float64) []float32 {
	out := make([]float32, int(seconds*SampleRate))
	for i := range out {
		t := float64(i) / SampleRate
		loud := math.Pow(math.Sin(math.Pi*3*t), 2)
		for n := 1.0; n < 12; n++ { // overtones, louder near 700 Hz
			out[i] += float32(0.2 * loud * math.Sin(2*math.Pi*pitch*n*t) * math.Exp(-math.Pow((n*pitch-700)/500, 2)))
		}
	}
	return out
}

// pitchOf is the pitch of the samples in Hz: where they are most like
// themselves a little later.
func pitchOf(samples []float32) float64 {
	best, most := 1, 0.0
	for lag := SampleRate / 400; lag < SampleRate/70; lag++ {
		sum := 0.0
		for i := lag; i < len(samples); i++ {
			sum += float64(samples[i]) * float64(samples[i-lag])
		}
		if sum > most {
			best, most = lag, sum
		}
	}
	return SampleRate / float64(best)
}

// loudnessOver is the loudness of the samples at n even steps.
func loudnessOver(samples []float32, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		for _, x := range samples[i*len(samples)/n : (i+1)*len(samples)/n] {
			out[i] += float64(x) * float64(x)
		}
		out[i] = math.Sqrt(out[i] / (float64(len(samples)) / float64(n)))
	}
	return out
}

// alike is the correlation of two series, 1 for the same shape.
func alike(a, b []float64) float64 {
	mean := func(x []float64) (sum float64) {
		for _, v := range x {
			sum += v / float64(len(x))
		}
		return sum
	}
	ma, mb := mean(a), mean(b)
	var ab, aa, bb float64
	for i := range a {
		ab, aa, bb = ab+(a[i]-ma)*(b[i]-mb), aa+(a[i]-ma)*(a[i]-ma), bb+(b[i]-mb)*(b[i]-mb)
	}
	return ab / math.Sqrt(aa*bb)
}

func TestSlowerIsLongerAndAsHigh(t *testing.T) {
	for _, pitch := range []float64{90, 125, 220} {
		said := someSyllables(pitch, 2)
		for _, tempo := range []float64{0.5, 0.7, 1} {
			got := atTempo(said, tempo)
			if want := int(float64(len(said)) / tempo); len(got) != want {
				t.Errorf("%g Hz at %g: %d samples, want %d", pitch, tempo, len(got), want)
			}
			if p := pitchOf(got); math.Abs(p/pitch-1) > 0.02 {
				t.Errorf("%g Hz at %g is %.0f Hz high", pitch, tempo, p)
			}
			if like := alike(loudnessOver(said, 120), loudnessOver(got, 120)); like < 0.95 {
				t.Errorf("%g Hz at %g: the syllables are alike by %.3f", pitch, tempo, like)
			}
		}
	}
}

func TestTempoOfLittleAndOfNothing(t *testing.T) {
	for _, n := range []int{0, 1, 100, tempoFrame} {
		if got := atTempo(make([]float32, n), 0.5); len(got) != 2*n || pitchOf(got) == 0 {
			t.Errorf("%d samples of silence become %d", n, len(got))
		}
	}
}

// ffmpeg has a filter of its own for this, atempo.
func TestSlowerAgreesWithAnotherProgram(t *testing.T) {
	needs(t, "ffmpeg", "ffmpeg")
	said := someSyllables(125, 2)
	b := make([]byte, 0, 2*len(said))
	for _, x := range said {
		b = binary.LittleEndian.AppendUint16(b, uint16(int16(x*math.MaxInt16/4)))
	}
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in"), filepath.Join(dir, "out")
	if err := os.WriteFile(in, b, 0o600); err != nil {
		t.Fatal(err)
	}
	raw := []string{"-f", "s16le", "-ar", rate, "-ac", "1"}
	args := append(append([]string{"-nostdin", "-v", "error"}, raw...), "-i", in, "-af", "atempo=0.7")
	if msg, err := exec.Command("ffmpeg", append(append(args, raw...), out)...).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, msg)
	}
	b, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	theirs := make([]float32, len(b)/2)
	for i := range theirs {
		theirs[i] = float32(int16(binary.LittleEndian.Uint16(b[2*i:]))) / math.MaxInt16
	}
	ours := atTempo(said, 0.7)
	if d := float64(len(ours)-len(theirs)) / SampleRate; math.Abs(d) > 0.05 {
		t.Errorf("ours is %.3f s longer", d)
	}
	if a, b := pitchOf(ours), pitchOf(theirs); math.Abs(a/b-1) > 0.01 {
		t.Errorf("ours is %.1f Hz high, theirs %.1f", a, b)
	}
	like := alike(loudnessOver(ours, 120), loudnessOver(theirs, 120))
	if like < 0.95 {
		t.Errorf("alike by %.3f", like)
	}
	t.Logf("the syllables are alike by %.3f", like)
}
