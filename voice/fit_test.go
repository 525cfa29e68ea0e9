package voice

import (
	"context"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// mimic is a recogniser that can be fitted: it says how often it was, and
// learns one frame from each part. All that it hears is likeliest in britishWoman.
type mimic struct {
	learned, compared *counter
	known             string // what it was fitted to
	who               speaker
	sure              float64 // posterior of its words
	broken            bool
}

var britishWoman = speaker{Warp: 1.1, British: true}

func (m *mimic) Key() string { return "mimic " + m.known }

func (m *mimic) learn(ctx context.Context, p Part) (*speech, error) {
	m.learned.calls.Add(1)
	if m.broken {
		return nil, errors.New("it fell over")
	}
	return &speech{Speaker: m.who, Frames: []float32{1}, Sums: make([]float32, dims), Words: 2, Sureness: 2 * m.sure}, nil
}

func (m *mimic) fitted(_ string, s *speech) (fitter, error) {
	return &mimic{m.learned, m.compared, strings.Repeat("i", int(s.Frames[0])), s.Speaker, m.sure, m.broken}, nil
}

func (m *mimic) as(who speaker) fitter {
	out := *m
	out.who = who
	return &out
}

func (m *mimic) likelihood(context.Context, Part) (float64, error) {
	m.compared.calls.Add(1)
	likely := -math.Abs(m.who.Warp - britishWoman.Warp)
	if m.who.British {
		likely += 0.01
	}
	return likely, nil
}

func (m *mimic) Recognise(context.Context, Part) ([]Word, error) {
	text := "v" + m.known
	if m.who == britishWoman {
		text = "w" + m.known
	}
	return []Word{{Text: text, From: 0.3, To: 0.6}}, nil
}

// Little being heard clearly, the speaker is told; the first minutes are learned
// from and no more, as often as there are rounds; then all is heard fitted. A
// second run knows the voice, and another recording of it knows voice and speaker
// from the start.
func TestVoiceIsLearnedOnce(t *testing.T) {
	pauses := make([]float64, 70)
	for i := range pauses {
		pauses[i] = 1
	}
	long, short := soundFile(t, speechLike(pauses...)), soundFile(t, speechLike(1, 1))
	dir := t.TempDir()
	o := Options{Voice: filepath.Join(dir, "long"), Workers: 1}
	m := &mimic{learned: &counter{}, compared: &counter{}}
	h, err := Recognise(context.Background(), long, m, o)
	if err != nil {
		t.Fatal(err)
	}
	n := m.learned.calls.Load()
	parts := int(n) / (1 + rounds)
	if parts < 5 || float64(parts-1)*shortestPart > fitSeconds || parts*(1+rounds) != int(n) {
		t.Errorf("learned %d times", n)
	}
	compared := m.compared.calls.Load()
	want := "w" + strings.Repeat("i", parts)
	if slices.ContainsFunc(strings.Fields(h.Text), func(w string) bool { return w != want }) {
		t.Errorf("heard %q, want %q all along", h.Text, want)
	}
	again, err := Recognise(context.Background(), long, m, o)
	if err != nil || again.Text != h.Text || m.learned.calls.Load() != n {
		t.Errorf("the second run: %v, %q, %d more parts learned from", err, again.Text, m.learned.calls.Load()-n)
	}
	other, err := Recognise(context.Background(), short, m, Options{Known: []string{o.Voice, filepath.Join(dir, "gone")}})
	if want := "w" + strings.Repeat("i", parts+1); err != nil || other.Text != want {
		t.Errorf("another recording: %v, %q, want %q", err, other.Text, want)
	}
	if m.compared.calls.Load() != compared {
		t.Error("a known speaker was told anew")
	}
}

func TestClearVoiceIsNotSearched(t *testing.T) {
	m := &mimic{learned: &counter{}, compared: &counter{}, who: plainSpeaker, sure: 0.8}
	h, err := Recognise(context.Background(), soundFile(t, speechLike(1, 1)), m, Options{})
	if err != nil || h.Text != "vi" || m.learned.calls.Load() != 1 || m.compared.calls.Load() != 0 {
		t.Errorf("%v, %q, learned from %d parts, compared %d", err, h.Text, m.learned.calls.Load(), m.compared.calls.Load())
	}
}

func TestFailingToLearnIsNoFailure(t *testing.T) {
	m := &mimic{learned: &counter{}, compared: &counter{}, broken: true}
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
	if err != nil || h.Text != "wi" || len(h.Warnings) != 1 {
		t.Errorf("nowhere to keep it: %v, %q, warnings %v", err, h.Text, h.Warnings)
	}
}
