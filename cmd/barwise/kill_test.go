package main

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"barwise/cmd/barwise/command"
	"barwise/cmd/barwise/demo"
	"barwise/index"
	"barwise/index/indextest"
)

var kills = indextest.KillFlags(5, "barwise take")

// A folder of notes is taken in by a process that is killed, again and again,
// until all is in; then another folder begins. After each kill every note that
// was said to be taken is there, and store and index agree; in the end the
// questions are answered as from an index that is built anew.
func TestKilledDuringTake(t *testing.T) {
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	notes := manyNotes(t, 4)
	rnd := kills.Random()
	folders, within, whole := 1, 0, 0
	data := t.TempDir()
	said := map[string]bool{}
	for n := range *kills.Times {
		before := len(said)
		ended := killedTake(t, program, data, notes, rnd, said)
		if len(said) > before && !ended {
			within++
		}
		agrees(t, data, said, fmt.Sprintf("kill %d of seed %d", n, *kills.Seed))
		if ended {
			whole++
			sameAnswers(t, data)
			data, said = t.TempDir(), map[string]bool{}
			folders++
		}
	}
	sameAnswers(t, data)
	t.Logf("%d kills, seed %d: %d between notes that it was taking, %d runs came to their end first; %d folders", *kills.Times, *kills.Seed, within, whole, folders)
	if within == 0 {
		t.Error("no kill fell into the taking: this test shows nothing")
	}
}

// manyNotes writes the demo's notes several times, each time in other words.
func manyNotes(t *testing.T, times int) string {
	t.Helper()
	dir := t.TempDir()
	err := fs.WalkDir(demo.Notes, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := demo.Notes.ReadFile(path)
		if err != nil {
			return err
		}
		for n := range times {
			copied := fmt.Appendf(nil, "%s\nPage %d of the old book.\n", text, n)
			name := strings.Replace(d.Name(), ".", fmt.Sprintf("-%d.", n), 1)
			if err := os.WriteFile(filepath.Join(dir, name), copied, 0o600); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

// killedTake runs barwise take and kills it some milliseconds after one of its
// lines, or after its start, unless it ended before. It adds the names of the
// notes that were said to be taken.
func killedTake(t *testing.T, program, data, notes string, rnd *rand.Rand, said map[string]bool) (ended bool) {
	t.Helper()
	cmd := exec.Command(program, "take", "--data", data, notes)
	cmd.Args[0] = "barwise"
	take := indextest.StartDoomed(t, cmd)
	after, wait := rnd.IntN(60), time.Duration(rnd.IntN(40_000))*time.Microsecond
	for n := 0; ; n++ {
		if n == after {
			defer take.KillIn(wait).Stop()
		}
		line, ok := take.Line()
		if !ok {
			return !take.End()
		}
		if _, rest, ok := strings.Cut(line, "  "); ok {
			name, _, _ := strings.Cut(rest, ": ")
			said[name] = true
		}
	}
}

// agrees checks that the notes said to be taken are there and that store and
// index are sound and agree.
func agrees(t *testing.T, data string, said map[string]bool, when string) {
	t.Helper()
	if _, err := os.Stat(filepath.Join(data, index.StoreFile)); err != nil && len(said) == 0 {
		return // it did not come to make one
	}
	s := indextest.Reopen(t, data)
	defer s.Close()
	there := map[string]bool{}
	for r, err := range s.Records(index.Filter{}) {
		if err != nil {
			t.Fatalf("%s: %v", when, err)
		}
		note, err := s.Note(r.NoteHash)
		if err != nil {
			t.Fatalf("%s: %v", when, err)
		}
		there[note.Name] = true
	}
	for name := range said {
		if !there[name] {
			t.Fatalf("%s: %s was said to be taken and is not there", when, name)
		}
	}
	if indextest.MustAgree(t, s); t.Failed() {
		t.Fatal(when)
	}
}

// sameAnswers asks before and after the index is built anew.
func sameAnswers(t *testing.T, data string) {
	t.Helper()
	if _, err := os.Stat(filepath.Join(data, index.StoreFile)); err != nil {
		return
	}
	ask := func() (answers string) {
		for _, words := range []string{"queen seen", "chalkbrood", "how many stings in 2025", "which hives had no eggs", "old book", "bars with drone brood"} {
			var out strings.Builder
			command.Run([]string{"find", "--data", data, "--limit", "0", words}, strings.NewReader(""), &out, &out)
			answers += out.String()
		}
		return answers
	}
	before := ask()
	var out strings.Builder
	if code := command.Run([]string{"doctor", "--rebuild", "--data", data}, strings.NewReader(""), &out, &out); code != 0 {
		t.Fatalf("doctor --rebuild: %d\n%s", code, out.String())
	}
	if after := ask(); after != before {
		t.Errorf("the answers changed when the index was built anew:\n%s\n\n%s", before, after)
	}
}
