package index_test

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

var kills = indextest.KillFlags(12, "a process that takes notes in")

// TestMain lets the test binary be the process that takes in, to be killed or
// to run out of room.
func TestMain(m *testing.M) {
	if role := os.Getenv("INDEX_TEST_ROLE"); role != "" {
		os.Exit(play(role))
	}
	// Each check of the model writes to the disk many times; the command line
	// can ask for more.
	if err := flag.Set("rapid.checks", "25"); err != nil {
		panic(err)
	}
	flag.Parse()
	os.Exit(m.Run())
}

// failure is the exit code of a child that did not do what it should.
const failure = 7

func play(role string) int {
	dir := os.Getenv("INDEX_TEST_DIR")
	if role == "full" {
		limitFileSize(1 << 20)
	}
	s, err := index.Open(dir, index.Log(func(m string) { fmt.Fprintln(os.Stderr, m) }))
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return failure
	}
	counts, err := s.Counts()
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return failure
	}
	fmt.Println("begins")
	for i := max(0, counts.Notes-3); i < 20000; i++ {
		v := indextest.MakeVisit(8, i, 5)
		records, err := s.Take(v.Note, v.Read)
		switch {
		case errors.Is(err, index.ErrTaken):
			continue
		case errors.Is(err, index.ErrFull):
			fmt.Println("full", i)
			return closed(s)
		case err != nil:
			fmt.Fprintln(os.Stderr, err)
			return failure
		}
		if i%3 == 0 {
			records[0].State = colony.Confirmed
			if err := s.Save(records[0]); err != nil && !errors.Is(err, index.ErrFull) {
				fmt.Fprintln(os.Stderr, err)
				return failure
			}
		}
		fmt.Println("taken", v.Note.Hash)
		if i%40 == 39 { // so that some kills fall into the writing of the index
			if _, err := s.Find(index.Query{Words: "queen", Limit: 1}); err != nil {
				fmt.Fprintln(os.Stderr, err)
				return failure
			}
		}
	}
	return closed(s)
}

func closed(s *index.Store) int {
	if err := s.Close(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return failure
	}
	return 0
}

func child(role, dir string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "INDEX_TEST_ROLE="+role, "INDEX_TEST_DIR="+dir)
	return cmd
}

// What the child said it took is there after each kill, whole, and the index
// answers as one that is built anew.
func TestKilledWhileTaking(t *testing.T) {
	dir := t.TempDir()
	rnd := kills.Random()
	taken := map[string]bool{}
	t.Logf("%d kills, seed %d", *kills.Times, *kills.Seed)
	for n := range *kills.Times {
		if n%50 == 49 { // the checks below take longer the more there is
			dir, taken = t.TempDir(), map[string]bool{}
		}
		killAfter(t, dir, time.Duration(rnd.IntN(300))*time.Millisecond, taken)
		s := indextest.Reopen(t, dir)
		for hash := range taken {
			if known, err := s.Knows(hash); err != nil || !known {
				t.Fatalf("kill %d: note %s was said to be kept and is not: %v", n, hash, err)
			}
		}
		indextest.MustAgree(t, s)
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		if t.Failed() {
			t.Fatalf("after kill %d", n)
		}
	}
	s := indextest.Reopen(t, dir)
	defer s.Close()
	queries := []index.Query{{Words: "queen"}, {Words: "chalkbrood", Hive: "3"}, {Per: index.Bars, Where: []index.Clause{is("bars.*.eggs", "no")}}}
	var before []index.Hits
	for _, q := range queries {
		before = append(before, mustFind(t, s, q))
	}
	if err := s.Rebuild(nil); err != nil {
		t.Fatal(err)
	}
	for i, q := range queries {
		if after := mustFind(t, s, q); !reflect.DeepEqual(before[i], after) {
			t.Errorf("%+v: %d hits, and %d from an index built anew", q, before[i].Total, after.Total)
		}
	}
	t.Logf("%d notes in the end", len(taken))
}

// killAfter runs the child, kills it some time after its first word, and
// collects what the child said it took in.
func killAfter(t *testing.T, dir string, wait time.Duration, taken map[string]bool) {
	t.Helper()
	take := indextest.StartDoomed(t, child("take", dir))
	take.Begins()
	defer take.KillIn(wait).Stop()
	for {
		line, ok := take.Line()
		if !ok {
			break
		}
		if hash, ok := strings.CutPrefix(line, "taken "); ok {
			taken[hash] = true
		}
	}
	if !take.End() {
		t.Fatalf("the process came to its end before it was killed:\n%s", take.Talk())
	}
}

// A disk that fills up costs the change that did not fit, and nothing else.
func TestDiskFull(t *testing.T) {
	if !canLimitFileSize {
		t.Skip("this system has no limit on the size of files")
	}
	dir := t.TempDir()
	out, err := child("full", dir).Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			t.Fatalf("%v\n%s", err, exit.Stderr)
		}
		t.Fatal(err)
	}
	said := strings.Fields(string(out))
	said = said[1:]
	if len(said) < 4 || said[len(said)-2] != "full" {
		t.Fatalf("the disk did not fill up: %q", said[max(0, len(said)-4):])
	}
	s := indextest.Reopen(t, dir)
	defer s.Close()
	for i, word := range said {
		if word != "taken" {
			continue
		}
		if known, err := s.Knows(said[i+1]); err != nil || !known {
			t.Fatalf("note %s is lost: %v", said[i+1], err)
		}
	}
	indextest.MustAgree(t, s)
	if n, _ := s.Counts(); n.Notes != (len(said)-2)/2 {
		t.Errorf("%d notes, %d were said to be kept", n.Notes, (len(said)-2)/2)
	}
}

// A crash between store and index is mended at the next start.
func TestCrashBeforeTheIndex(t *testing.T) {
	for _, mode := range [][]index.Option{nil, {index.ReadOnly()}} {
		dir := t.TempDir()
		visits := indextest.Visits(6, 40, 4)
		for round := range 4 {
			s := indextest.Reopen(t, dir, mode...)
			if s.Unseen() != 0 {
				t.Errorf("round %d: %d changes were not mended at start", round, s.Unseen())
			}
			if err := s.Close(); err != nil {
				t.Fatal(err)
			}
			s = indextest.Reopen(t, dir)
			for _, v := range visits[10*round : 10*round+10] {
				r := mustTake(t, s, v)[0]
				colony.Delete(&r.Read, "bars.1.eggs")
				r.Corrections = append(r.Corrections, colony.Correction{Path: "bars.40.eggs", Value: "yes"})
				save(t, s, r)
			}
			if s.Unseen() == 0 {
				t.Fatal("the index saw the changes already: this test shows nothing")
			}
			if err := s.Abandon(); err != nil {
				t.Fatal(err)
			}
		}
		s := indextest.Reopen(t, dir, mode...)
		indextest.MustAgree(t, s)
		if hits := mustFind(t, s, index.Query{Where: []index.Clause{is("bars.40.eggs", "yes")}}); hits.Total != 40 {
			t.Errorf("%d hits", hits.Total)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// A store that was put back from a copy does not keep the index of what came
// after it.
func TestStorePutBack(t *testing.T) {
	dir := filled(t, 20)
	path := filepath.Join(dir, index.StoreFile)
	old, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	more := func(hive string) {
		s := indextest.Reopen(t, dir)
		mustTake(t, s, write(hive, noon(2026, 5, 1)))
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
	more("after")
	later := filepath.Join(dir, index.IndexDir)
	kept := snapshotDir(t, later)
	if err := os.WriteFile(path, old, 0o600); err != nil {
		t.Fatal(err)
	}
	more("instead") // as many changes as the index has seen, but others
	restoreDir(t, later, kept)
	s := indextest.Reopen(t, dir)
	defer s.Close()
	indextest.MustAgree(t, s)
	for hive, want := range map[string]int{"after": 0, "instead": 1} {
		if hits := mustFind(t, s, index.Query{Hive: hive}); hits.Total != want {
			t.Errorf("%s: %d hits", hive, hits.Total)
		}
	}
}

// A rebuild that was interrupted leaves nothing in the way.
func TestInterruptedRebuild(t *testing.T) {
	dir := filled(t, 5)
	if err := os.CopyFS(filepath.Join(dir, index.IndexDir+".new"), os.DirFS(filepath.Join(dir, index.IndexDir))); err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(filepath.Join(dir, index.IndexDir)); err != nil {
		t.Fatal(err)
	}
	s := indextest.Reopen(t, dir)
	defer s.Close()
	indextest.MustAgree(t, s)
	if list, _ := os.ReadDir(dir); len(list) != 2 {
		t.Errorf("left over: %v", list)
	}
}

// Far behind, the index is built anew instead of mended.
func TestFarBehind(t *testing.T) {
	var said []string
	s := indextest.MustOpen(t, index.Log(func(m string) { said = append(said, m) }))
	v := write("3", noon(2026, 5, 1))
	r := mustTake(t, s, v)[0]
	mustFind(t, s, index.Query{})
	s.Forge(t, r.ID, 6000)
	indextest.MustAgree(t, s)
	if len(said) != 1 || !strings.Contains(said[0], "6000 changes came together") {
		t.Errorf("said %q", said)
	}
	if s.Unseen() != 0 {
		t.Errorf("%d changes not seen", s.Unseen())
	}
}

// The log of changes does not grow for ever, and still mends after it was cut.
func TestLogOfChangesIsShortened(t *testing.T) {
	dir := t.TempDir()
	s := indextest.Reopen(t, dir)
	r := mustTake(t, s, write("3", noon(2026, 5, 1)))[0]
	mustFind(t, s, index.Query{})
	s.Forge(t, r.ID, 3000)
	mustFind(t, s, index.Query{})
	if n := s.LogLength(); n > 1 {
		t.Errorf("%d changes are still logged", n)
	}
	mustTake(t, s, write("4", noon(2026, 5, 2)))
	if err := s.Abandon(); err != nil {
		t.Fatal(err)
	}
	var said []string
	s = indextest.Reopen(t, dir, index.Log(func(m string) { said = append(said, m) }))
	defer s.Close()
	indextest.MustAgree(t, s)
	if len(said) > 0 {
		t.Errorf("mending one change took more: %q", said)
	}
}

// An index of another version of the program is built anew.
func TestOtherMapping(t *testing.T) {
	dir := filled(t, 3)
	index.Disown(t, dir)
	var said []string
	s := indextest.Reopen(t, dir, index.Log(func(m string) { said = append(said, m) }))
	defer s.Close()
	indextest.MustAgree(t, s)
	if len(said) != 1 || !strings.Contains(said[0], "another version") {
		t.Errorf("said %q", said)
	}
}

// While another process reads, the index cannot be mended; the records can be
// read all the same.
func TestReadingWhileTheIndexCannotBeMended(t *testing.T) {
	dir := t.TempDir()
	s := indextest.Reopen(t, dir)
	mustTake(t, s, write("3", noon(2026, 5, 1)))
	if err := s.Abandon(); err != nil {
		t.Fatal(err)
	}
	other, err := bolt.Open(filepath.Join(dir, index.StoreFile), 0o600, &bolt.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	var said []string
	s = indextest.Reopen(t, dir, index.ReadOnly(), index.LockWait(10*time.Millisecond), index.Log(func(m string) { said = append(said, m) }))
	defer s.Close()
	if got := collect(t, s, index.Filter{}); len(got) != 1 {
		t.Errorf("%d records", len(got))
	}
	if _, err := s.Find(index.Query{}); err == nil || !strings.Contains(err.Error(), "behind") {
		t.Errorf("err = %v", err)
	}
	if len(said) != 1 || !strings.Contains(said[0], "in use by another process") {
		t.Errorf("said %q", said)
	}
}
