package command

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

func write(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestWatchedTakesAFileOnceItStandsStill(t *testing.T) {
	file := filepath.Join(t.TempDir(), "note.txt")
	w := watched{seen: map[string]stamp{}, done: map[string]stamp{}}
	look := func() []string { return w.fresh([]string{file}) }
	if got := look(); got != nil {
		t.Fatalf("a file that is not there: %v", got)
	}
	write(t, file, "")
	look()
	if got := look(); got != nil {
		t.Fatalf("an empty file is still being written: %v", got)
	}
	write(t, file, "Hive 3. ")
	if got := look(); got != nil {
		t.Fatalf("at the first look: %v", got)
	}
	write(t, file, "Hive 3. Bar 4: eggs.")
	if got := look(); got != nil {
		t.Fatalf("it grew between two looks: %v", got)
	}
	if got := look(); !slices.Equal(got, []string{file}) {
		t.Fatalf("it stood still: %v", got)
	}
	if got := look(); !slices.Equal(got, []string{file}) {
		t.Fatalf("it was not dealt with yet: %v", got)
	}
	w.settle([]string{file})
	if got := look(); got != nil {
		t.Fatalf("it was dealt with: %v", got)
	}
	write(t, file, "Hive 3. Bar 4: eggs. Bar 5: nectar.")
	look()
	if got := look(); !slices.Equal(got, []string{file}) {
		t.Fatalf("it changed afterwards: %v", got)
	}
}

// onWrite calls done once the text was written.
type onWrite struct {
	bytes.Buffer
	text string
	done func()
}

func (w *onWrite) Write(p []byte) (int, error) {
	n, err := w.Buffer.Write(p)
	if strings.Contains(w.String(), w.text) {
		w.done()
	}
	return n, err
}

func TestWatchTakesWhatAppearsAndEndsQuietly(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "a.txt"), "Hive 3. Bar 4: eggs.")
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	out := &onWrite{text: "b.txt", done: cancel}
	first := &onWrite{text: "a.txt", done: func() { write(t, filepath.Join(folder, "b.txt"), "Hive 4. Bar 5: nectar.") }}
	a := &app{in: strings.NewReader(""), out: &both{first, out}, err: &bytes.Buffer{}, now: time.Now,
		every: time.Millisecond, data: filepath.Join(t.TempDir(), "bees")}
	if err := a.runTake(ctx, []string{folder}, takeOptions{watch: true}); err != nil {
		t.Fatal(err)
	}
	if got := strings.Count(out.String(), "\n"); got != 2 {
		t.Errorf("two notes were to be taken, each once:\n%s", out.String())
	}
}

// both writes to two.
type both [2]interface{ Write([]byte) (int, error) }

func (b *both) Write(p []byte) (int, error) {
	for _, w := range b {
		if n, err := w.Write(p); err != nil {
			return n, err
		}
	}
	return len(p), nil
}
