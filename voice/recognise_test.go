package voice

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// speechLike is a recording of bursts of a voiced buzz, each a second long,
// with pauses of the given seconds behind them, over a little noise.
func speechLike(pauses ...float64) []float64 {
	rnd := rand.New(rand.NewPCG(1, 2))
	var out []float64
	for _, p := range pauses {
		for i := range SampleRate {
			x := 0.0
			for h := 1.0; h < 20; h++ {
				x += math.Sin(2*math.Pi*120*h*float64(i)/SampleRate) / h
			}
			out = append(out, 0.2*x)
		}
		out = append(out, make([]float64, int(p*SampleRate))...)
	}
	for i := range out {
		out[i] += 0.001 * rnd.NormFloat64()
	}
	return out
}

func soundFile(t *testing.T, samples []float64) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "walk.wav")
	if err := os.WriteFile(path, wavFile(wavPCM, 16, 1, SampleRate, samples), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// counter is a recogniser that says one word in the middle of each part.
type counter struct {
	calls atomic.Int64
	fail  func(call int64) error
}

func (c *counter) Key() string { return "counter" }

func (c *counter) Recognise(ctx context.Context, p Part) ([]Word, error) {
	n := c.calls.Add(1)
	if c.fail != nil {
		if err := c.fail(n); err != nil {
			return nil, err
		}
	}
	return []Word{{Text: "bar", From: 0.3, To: 0.6, Confidence: 0.5}}, nil
}

func TestLongRecordingIsHeardInParts(t *testing.T) {
	pauses := make([]float64, 40)
	for i := range pauses {
		pauses[i] = 0.5 + float64(i%3)
	}
	path := soundFile(t, speechLike(pauses...))
	cache := t.TempDir()
	r := &counter{}
	var last Progress
	h, err := Recognise(context.Background(), path, r, Options{Cache: cache, Progress: func(p Progress) {
		if p.Done < last.Done || p.Parts != last.Parts+1 {
			t.Errorf("progress goes from %+v to %+v", last, p)
		}
		last = p
	}})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(last.Done-h.Seconds) > 0.01 || math.Abs(last.Total-h.Seconds) > 0.01 {
		t.Errorf("progress ends at %+v of %.2f s", last, h.Seconds)
	}
	if last.Parts < 4 || len(h.Words) != last.Parts {
		t.Errorf("%d parts, %d words", last.Parts, len(h.Words))
	}
	for i, w := range h.Words {
		if i > 0 && w.From <= h.Words[i-1].To {
			t.Errorf("word %d begins at %.2f, the one before ends at %.2f", i, w.From, h.Words[i-1].To)
		}
		if h.Text[w.Span[0]:w.Span[1]] != "bar" {
			t.Errorf("word %d has span %v", i, w.Span)
		}
	}
	before := r.calls.Load()
	again, err := Recognise(context.Background(), path, r, Options{Cache: cache})
	if err != nil || again.Text != h.Text || r.calls.Load() != before {
		t.Errorf("the second run: %v, %d more calls", err, r.calls.Load()-before)
	}
}

func TestStoppedRecognitionIsTakenUpAgain(t *testing.T) {
	path := soundFile(t, speechLike(1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1))
	cache := t.TempDir()
	ctx, cancel := context.WithCancel(context.Background())
	r := &counter{}
	_, err := Recognise(ctx, path, r, Options{Cache: cache, Workers: 1, Progress: func(p Progress) {
		if p.Parts == 2 {
			cancel()
		}
	}})
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("stopped: %v", err)
	}
	var end Progress
	if _, err := Recognise(context.Background(), path, r, Options{Cache: cache, Progress: func(p Progress) { end = p }}); err != nil {
		t.Fatal(err)
	}
	if end.Kept != 2 || end.Parts <= 2 {
		t.Errorf("%d of %d parts were kept from the first run, want 2", end.Kept, end.Parts)
	}
}

func TestOneFailingPartLosesNoOther(t *testing.T) {
	path := soundFile(t, speechLike(1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1))
	r := &counter{fail: func(n int64) error {
		if n == 2 {
			return errors.New("the recogniser fell over")
		}
		return nil
	}}
	h, err := Recognise(context.Background(), path, r, Options{Workers: 1})
	if !errors.Is(err, ErrIncomplete) || !strings.Contains(err.Error(), "the recogniser fell over") || !strings.Contains(err.Error(), "seconds ") {
		t.Errorf("error %v", err)
	}
	if h == nil || int64(len(h.Words)) != r.calls.Load()-1 {
		t.Errorf("%+v after %d calls", h, r.calls.Load())
	}
}

func TestHopelessRecogniserIsGivenUp(t *testing.T) {
	pauses := make([]float64, 100)
	for i := range pauses {
		pauses[i] = 1
	}
	r := &counter{fail: func(int64) error { return errors.New("wrong model") }}
	h, err := Recognise(context.Background(), soundFile(t, speechLike(pauses...)), r, Options{Workers: 1})
	if !errors.Is(err, ErrIncomplete) || h != nil || r.calls.Load() != giveUpAfter {
		t.Errorf("%v after %d calls", err, r.calls.Load())
	}
}

func TestNothingIsHeardInSilenceAndNoise(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	sounds := map[string]func(i int) float64{
		"silence":     func(int) float64 { return 0 },
		"white noise": func(int) float64 { return 0.2 * rnd.NormFloat64() },
		"bee hum": func(i int) float64 {
			x := 0.02 * rnd.NormFloat64()
			for h := 1.0; h < 6; h++ {
				x += 0.1 / h * math.Sin(2*math.Pi*250*h*float64(i)/SampleRate)
			}
			return x
		},
	}
	low := 0.0
	sounds["wind"] = func(int) float64 {
		low += 0.02 * (rnd.NormFloat64() - low)
		return 2 * low
	}
	for name, sound := range sounds {
		t.Run(name, func(t *testing.T) {
			samples := make([]float64, 30*SampleRate)
			for i := range samples {
				samples[i] = max(-1, min(1, sound(i)))
			}
			r := &counter{}
			h, err := Recognise(context.Background(), soundFile(t, samples), r, Options{})
			if !errors.Is(err, ErrNoSpeech) || h.Text != "" || r.calls.Load() > 0 {
				t.Errorf("%v, %+v, %d calls", err, h, r.calls.Load())
			}
		})
	}
}

func TestUnusableRecordings(t *testing.T) {
	r := &counter{}
	if _, err := Recognise(context.Background(), soundFile(t, nil), r, Options{}); !errors.Is(err, ErrNoSound) {
		t.Errorf("no samples: %v", err)
	}
	if _, err := Recognise(context.Background(), filepath.Join(t.TempDir(), "none.wav"), r, Options{}); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
}

// Where results cannot be kept, as on a full disk, the words still come out.
func TestFullCacheIsAWarning(t *testing.T) {
	cache := filepath.Join(t.TempDir(), "cache")
	if err := os.WriteFile(cache, nil, 0o600); err != nil { // a file where the folder should be
		t.Fatal(err)
	}
	h, err := Recognise(context.Background(), soundFile(t, speechLike(1, 1)), &counter{}, Options{Cache: cache})
	if err != nil || h.Text != "bar" || len(h.Warnings) != 1 {
		t.Errorf("%v, %+v", err, h)
	}
}

func TestNoRoomForSoundIsAnError(t *testing.T) {
	if os.PathSeparator != '/' {
		t.Skip("TMPDIR is not looked at here")
	}
	path := soundFile(t, speechLike(1))
	t.Setenv("TMPDIR", filepath.Join(t.TempDir(), "gone"))
	if _, err := Recognise(context.Background(), path, &counter{}, Options{}); err == nil || !strings.Contains(err.Error(), "no room") {
		t.Errorf("%v", err)
	}
}

func TestWordsInSilenceAndLoopsAreDropped(t *testing.T) {
	words := func(text string, from float64) []Word {
		var out []Word
		for i, w := range strings.Fields(text) {
			at := from + float64(i)/10
			out = append(out, Word{Text: w, From: at, To: at + 0.1})
		}
		return out
	}
	cases := []struct {
		name string
		in   []Word
		want string
	}{
		{"said", words("bar four no no eggs", 1), "bar four no no eggs"},
		{"a word three times", words("bar the the the the eggs", 1), "bar the eggs"},
		{"a phrase three times", words("bar four eggs bar four eggs bar four eggs bar five", 1), "bar four eggs bar five"},
		{"a phrase twice", words("bar four bar four eggs", 1), "bar four bar four eggs"},
		{"over silence", append(words("bar four", 1), words("thank you for watching", 20)...), "bar four"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, w := range spokenWords(c.in, []stretch{{0.5, 3}}) {
				got = append(got, w.Text)
			}
			if s := strings.Join(got, " "); s != c.want {
				t.Errorf("%q, want %q", s, c.want)
			}
		})
	}
}

func TestPartsCoverTheRecording(t *testing.T) {
	for seed := range uint64(20) {
		rnd := rand.New(rand.NewPCG(seed, 0))
		pauses := make([]float64, 3+rnd.IntN(30))
		for i := range pauses {
			pauses[i] = rnd.ExpFloat64()
		}
		samples := speechLike(pauses...)
		var parts []soundPart
		s := splitter{emit: func(p soundPart) error { parts = append(parts, p); return nil }}
		for i := 0; i < len(samples); {
			n := min(len(samples)-i, 1+rnd.IntN(3*SampleRate))
			block := make([]float32, n)
			for j := range block {
				block[j] = float32(samples[i+j])
			}
			if err := s.push(block); err != nil {
				t.Fatal(err)
			}
			i += n
		}
		if err := s.end(); err != nil {
			t.Fatal(err)
		}
		at, spoken := 0.0, 0.0
		for _, p := range parts {
			for _, s := range p.speech {
				spoken += s.to - s.from
			}
			if math.Abs(p.from-at) > 1e-6 || p.to()-p.from > longestPart+0.01 {
				t.Fatalf("seed %d: a part from %.3f to %.3f, the one before ends at %.3f", seed, p.from, p.to(), at)
			}
			at = p.to()
		}
		if math.Abs(at-float64(len(samples))/SampleRate) > 1e-6 {
			t.Errorf("seed %d: the parts end at %.3f", seed, at)
		}
		want := float64(len(pauses)) // each burst is a second long
		for _, p := range pauses {
			if p < shortPause {
				want += p
			}
		}
		if math.Abs(spoken-want) > 0.05*want {
			t.Errorf("seed %d: %.2f seconds of speech, want about %.2f", seed, spoken, want)
		}
	}
}

func TestLevelling(t *testing.T) {
	p := soundPart{samples: make([]float32, 1000)}
	for i := range p.samples {
		p.samples[i] = 0.05 * float32(i%2*2-1)
	}
	if got := p.levelled()[501]; math.Abs(float64(got)-0.8*math.MaxInt16) > 0.05*math.MaxInt16 {
		t.Errorf("a quiet part comes out at %d", got)
	}
	for i := range p.samples {
		p.samples[i] *= 0.001
	}
	if got := p.levelled()[501]; got > 100 {
		t.Errorf("silence is raised to %d", got)
	}
}

func TestProcessLimits(t *testing.T) {
	dir := fakePrograms(t, false, "hearer")
	t.Setenv("FAKE", "hang")
	start := time.Now()
	err := command{path: filepath.Join(dir, "hearer"), limit: 50 * time.Millisecond}.run(context.Background(), &tail{})
	if !errors.Is(err, ErrTimeLimit) || time.Since(start) > 30*time.Second {
		t.Errorf("%v after %v", err, time.Since(start))
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if err := (command{path: filepath.Join(dir, "hearer")}).run(ctx, &tail{}); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
	t.Setenv("FAKE", "crash")
	err = command{path: filepath.Join(dir, "hearer"), args: []string{"x"}}.run(context.Background(), &tail{})
	var pe *ProcessError
	if !errors.As(err, &pe) || !strings.HasPrefix(pe.Stderr, "loading\n") || !strings.HasSuffix(err.Error(), "FATAL: out of memory") {
		t.Errorf("%q", fmt.Sprint(err))
	}
}
