package voice

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// mimic is a recogniser that can be fitted: it says how often it was, and
// learns one frame from each part.
type mimic struct {
	learned *counter
	known   string // what it was fitted to
	broken  bool
}

func (m *mimic) Key() string { return "mimic " + m.known }

func (m *mimic) learn(ctx context.Context, p Part) (*speech, error) {
	m.learned.calls.Add(1)
	if m.broken {
		return nil, errors.New("it fell over")
	}
	return &speech{Frames: []float32{1}, Sums: make([]float32, dims)}, nil
}

func (m *mimic) fitted(_ string, s *speech) (fitter, error) {
	return &mimic{learned: m.learned, known: strings.Repeat("i", int(s.Frames[0]))}, nil
}

func (m *mimic) Recognise(context.Context, Part) ([]Word, error) {
	return []Word{{Text: "v" + m.known, From: 0.3, To: 0.6}}, nil
}

// The first minutes are learned from and no more, then all is heard fitted; a
// second run knows the voice, and another recording of it knows it from the
// start.
func TestVoiceIsLearnedOnce(t *testing.T) {
	pauses := make([]float64, 70)
	for i := range pauses {
		pauses[i] = 1
	}
	long, short := soundFile(t, speechLike(pauses...)), soundFile(t, speechLike(1, 1))
	dir := t.TempDir()
	o := Options{Voice: filepath.Join(dir, "long"), Workers: 1}
	m := &mimic{learned: &counter{}}
	h, err := Recognise(context.Background(), long, m, o)
	if err != nil {
		t.Fatal(err)
	}
	n := m.learned.calls.Load()
	if n < 5 || float64(n-1)*shortestPart > fitSeconds {
		t.Errorf("learned from %d parts", n)
	}
	want := "v" + strings.Repeat("i", int(n))
	if slices.ContainsFunc(strings.Fields(h.Text), func(w string) bool { return w != want }) {
		t.Errorf("heard %q, want %q all along", h.Text, want)
	}
	again, err := Recognise(context.Background(), long, m, o)
	if err != nil || again.Text != h.Text || m.learned.calls.Load() != n {
		t.Errorf("the second run: %v, %q, %d more parts learned from", err, again.Text, m.learned.calls.Load()-n)
	}
	other, err := Recognise(context.Background(), short, m, Options{Known: []string{o.Voice, filepath.Join(dir, "gone")}})
	if want := "v" + strings.Repeat("i", int(n)+1); err != nil || other.Text != want {
		t.Errorf("another recording: %v, %q, want %q", err, other.Text, want)
	}
}

func TestFailingToLearnIsNoFailure(t *testing.T) {
	m := &mimic{learned: &counter{}, broken: true}
	h, err := Recognise(context.Background(), soundFile(t, speechLike(1, 1)), m, Options{})
	if err != nil || h.Text != "v" {
		t.Errorf("%v, %q", err, h.Text)
	}
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	m.broken = false
	h, err = Recognise(context.Background(), soundFile(t, speechLike(1, 1)), m, Options{Voice: filepath.Join(blocked, "x")})
	if err != nil || h.Text != "vi" || len(h.Warnings) != 1 {
		t.Errorf("nowhere to keep it: %v, %q, warnings %v", err, h.Text, h.Warnings)
	}
}
