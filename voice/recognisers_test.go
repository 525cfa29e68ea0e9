package voice

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func aPart(t *testing.T) Part {
	t.Helper()
	path := filepath.Join(t.TempDir(), "part.wav")
	if err := os.WriteFile(path, wavBytes(make([]int16, SampleRate)), 0o600); err != nil {
		t.Fatal(err)
	}
	return Part{File: path, Seconds: 1}
}

func show(words []Word) string {
	var b strings.Builder
	for _, w := range words {
		fmt.Fprintf(&b, "%s %.2f-%.2f %.3f; ", w.Text, w.From, w.To, w.Confidence)
	}
	return b.String()
}

// Each command form of PocketSphinx, played by a stand-in that prints what the
// real one prints: CTM, JSON lines, or words a line.
func TestSphinxForms(t *testing.T) {
	for _, program := range sphinxPrograms {
		t.Run(program, func(t *testing.T) {
			fakePrograms(t, true, program)
			s, err := NewSphinx(Model{Key: "k"})
			if err != nil {
				t.Fatal(err)
			}
			words, err := s.Recognise(context.Background(), aPart(t))
			if err != nil {
				t.Fatal(err)
			}
			if got, want := show(words), "bar 0.10-0.40 0.913; four 0.50-0.75 1.000; "; got != want {
				t.Errorf("%s, want %s", got, want)
			}
			t.Setenv("FAKE", "crash")
			if _, err := s.Recognise(context.Background(), aPart(t)); err == nil || !strings.Contains(err.Error(), "out of memory") {
				t.Errorf("a crash: %v", err)
			}
			t.Setenv("FAKE", "hang")
			s.Limit = 50 * time.Millisecond
			if _, err := s.Recognise(context.Background(), aPart(t)); !errors.Is(err, ErrTimeLimit) {
				t.Errorf("hanging: %v", err)
			}
		})
	}
	fakePrograms(t, true)
	if _, err := NewSphinx(Model{}); !errors.Is(err, ErrNoRecogniser) {
		t.Errorf("none installed: %v", err)
	}
}

func TestStockModelIsNamedWhenMissing(t *testing.T) {
	dir := t.TempDir()
	if _, err := StockModel(dir); !errors.Is(err, ErrNoModel) || !strings.Contains(err.Error(), dir) {
		t.Errorf("%v", err)
	}
}

// realSphinx is PocketSphinx with our own model, built once for all tests.
func realSphinx(t *testing.T) *Sphinx {
	t.Helper()
	if testing.Short() {
		t.Skip("recognition is left out of short runs")
	}
	needs(t, "pocketsphinx_batch", "pocketsphinx")
	model, err := BuildModel(context.Background(), stockModel(t), ModelOptions{Dir: modelDir, Phrases: TradePhrases(someSayings)})
	if err != nil {
		t.Fatal(err)
	}
	s, err := NewSphinx(model)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestRealRecognition(t *testing.T) {
	s := realSphinx(t)
	needs(t, "flite", "flite")
	path := filepath.Join(t.TempDir(), "said.wav")
	const said = "hive three. bar four capped brood on both sides. bar five eggs and larvae. the queen is on bar five."
	if msg, err := exec.Command("flite", "-voice", "slt", "-t", said, "-o", path).CombinedOutput(); err != nil {
		t.Skipf("flite does not speak: %s", msg)
	}
	h, err := Recognise(context.Background(), path, s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	e, wrong := CompareWords(said, h.Text)
	t.Logf("%q: word error rate %.2f", h.Text, e.Rate())
	if e.Rate() > 0.15 {
		t.Errorf("heard %q: %+v", h.Text, wrong)
	}
	for _, w := range h.Words {
		if w.Confidence <= 0 || w.Confidence > 1 || w.To > h.Seconds+0.1 {
			t.Errorf("word %q: %+v of %.2f s", h.Text[w.Span[0]:w.Span[1]], w, h.Seconds)
		}
	}
}

// A model that is not there must be an error that says so, not an empty note.
func TestRealRecogniserWithAWrongModel(t *testing.T) {
	s := realSphinx(t)
	bad := *s
	bad.Model.Language = filepath.Join(t.TempDir(), "none.arpa")
	if words, err := bad.Recognise(context.Background(), aPart(t)); err == nil {
		t.Errorf("no error, and %v", words)
	} else {
		t.Log(err)
	}
}

func TestTemplateForms(t *testing.T) {
	fakePrograms(t, true, "hearer")
	cases := []struct{ name, line, want string }{
		{"text on stdout", `hearer {audio} "bar four"`, "bar 0.00-0.43 0.000; four 0.43-1.00 0.000; "},
		{"stamped text on stdout", `hearer {audio} "[00:00:00.500 --> 00:00:00.900]  bar"`, "bar 0.50-0.90 0.000; "},
		{"WebVTT in a file", `hearer {audio} "WEBVTT\n\n00:00.200 --> 00:00.400\nbar" {out}.vtt`, "bar 0.20-0.40 0.000; "},
		{"SubRip in a file", `hearer {audio} '1\n00:00:00,200 --> 00:00:00,400\nbar' {out}.srt`, "bar 0.20-0.40 0.000; "},
		{"JSON in a file of no ending", `hearer {audio} '[{"word":"bar","start":0.1,"end":0.2,"conf":0.7}]' {out}`, "bar 0.10-0.20 0.700; "},
		{"prompt and language", `hearer {audio} "{lang} {prompt}"`, "en 0.00-0.14 0.000; propolis, 0.14-0.79 0.000; bar 0.79-1.00 0.000; "},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r, err := NewTemplate(c.line, "propolis, bar", "")
			if err != nil {
				t.Fatal(err)
			}
			words, err := r.Recognise(context.Background(), aPart(t))
			if err != nil {
				t.Fatal(err)
			}
			// Words spread over a part by their letters.
			if got := show(words); got != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
		})
	}
}

func TestTemplateFaults(t *testing.T) {
	fakePrograms(t, true, "hearer")
	for _, line := range []string{"", "hearer", `hearer {audio} "`, "not-installed {audio}"} {
		if _, err := NewTemplate(line, "", ""); !errors.Is(err, ErrTemplate) {
			t.Errorf("%q: %v", line, err)
		}
	}
	r, err := NewTemplate("hearer {audio} x {out}.doc", "", "")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := r.Recognise(context.Background(), aPart(t)); err == nil || !strings.Contains(err.Error(), "no result at {out}") {
		t.Errorf("no result: %v", err)
	}
	for mode, want := range map[string]string{"crash": "out of memory", "garbage": "not UTF-8", "hang": "time limit"} {
		t.Run(mode, func(t *testing.T) {
			t.Setenv("FAKE", mode)
			r, err := NewTemplate("hearer {audio} x", "", "")
			if err != nil {
				t.Fatal(err)
			}
			r.Limit = 200 * time.Millisecond
			if mode != "hang" {
				r.Limit = time.Minute
			}
			if _, err := r.Recognise(context.Background(), aPart(t)); err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("%v, want %s", err, want)
			}
		})
	}
}

func TestSoundInAndOut(t *testing.T) {
	dir := fakePrograms(t, true, "arecord", "aplay")
	file := filepath.Join(t.TempDir(), "walk.wav")
	levels := 0
	if err := Record(context.Background(), file, nil, Watcher{Level: func(float64) { levels++ }}); err != nil {
		t.Fatal(err)
	}
	if levels != 20 {
		t.Errorf("%d levels, want one each tenth of the 2 seconds", levels)
	}
	if err := Record(context.Background(), file, nil, Watcher{}); !errors.Is(err, os.ErrExist) {
		t.Errorf("over an old recording: %v", err)
	}
	rec, err := openRecording(context.Background(), file)
	if err != nil || rec.seconds != 2 {
		t.Fatalf("the recording is %v s long, %v", rec.seconds, err)
	}
	rec.close()
	played := filepath.Join(dir, "played.wav")
	t.Setenv("PLAYED", played)
	if err := Play(context.Background(), file, 0.5, 1.25, 1); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(played); err != nil || info.Size() != 44+2*SampleRate*3/4 {
		t.Errorf("played %v bytes, %v", info, err)
	}
	if err := Play(context.Background(), file, 0.5, 1.25, 0.5); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(played); err != nil || info.Size() != 44+2*SampleRate*3/2 {
		t.Errorf("at half the tempo %v bytes, %v", info, err)
	}
	if err := Play(context.Background(), file, 5, 6, 1); err == nil {
		t.Error("seconds behind the end were played")
	}
	fakePrograms(t, true)
	if err := Record(context.Background(), filepath.Join(dir, "b.wav"), nil, Watcher{}); !errors.Is(err, ErrNoMicrophone) {
		t.Errorf("%v", err)
	}
	if err := Play(context.Background(), file, 0, 1, 1); !errors.Is(err, ErrNoPlayer) {
		t.Errorf("%v", err)
	}
}

func TestRecordingStopsWhenAsked(t *testing.T) {
	fakePrograms(t, true, "arecord")
	stop := make(chan struct{})
	file := filepath.Join(t.TempDir(), "walk.wav")
	n := 0
	err := Record(context.Background(), file, stop, Watcher{Level: func(float64) {
		if n++; n == 3 {
			close(stop)
		}
	}})
	if err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(file)
	if err != nil || info.Size() < 44+3*levelBytes {
		t.Errorf("%v %v", info, err)
	}
}

func TestProbe(t *testing.T) {
	fakePrograms(t, true)
	tools := Probe()
	if cmd := InstallCommand(tools); !strings.HasPrefix(cmd, "sudo apt-get install pocketsphinx ") {
		t.Errorf("with nothing installed: %q", cmd)
	}
	fakePrograms(t, true, "pocketsphinx", "ffmpeg", "arecord", "aplay")
	for _, tool := range Probe() {
		if tool.Found == "" && tool.Debian != "pocketsphinx-en-us" {
			t.Errorf("%s is not found", tool.Does)
		}
	}
}

// What is said to play or record is what plays and records.
func TestProgramsOfOtherSystemsAreNotProbedFor(t *testing.T) {
	fakePrograms(t, true, "elsewhere")
	other := soundProgram{name: "elsewhere", os: "another system"}
	if _, _, ok := findProgram([]soundProgram{other}); ok {
		t.Error("it is found")
	}
	if got := names([]soundProgram{{name: "aplay"}, other, {name: "aplay"}}); len(got) != 1 || got[0] != "aplay" {
		t.Errorf("looked for are %v", got)
	}
}
