package command

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

var kills = indextest.KillFlags(25, "a review in the middle of editing")

// Run with reviewRole, the test binary is a review of that folder, or with no
// folder does nothing; with reviewDraws it draws on the standard output.
const (
	reviewRole  = "BARWISE_TEST_REVIEW"
	reviewDraws = "BARWISE_TEST_DRAWS"
)

// TestMain lets the test binary be the review that is killed. What the caller's
// environment says of colours, and of the recogniser, is no part of any test.
func TestMain(m *testing.M) {
	for _, name := range []string{"CLICOLOR", "CLICOLOR_FORCE", "COLORTERM", "NO_COLOR", "BARWISE_RECOGNISER"} {
		os.Unsetenv(name)
	}
	if dir, is := os.LookupEnv(reviewRole); is {
		os.Exit(reviewAloud(dir))
	}
	os.Exit(m.Run())
}

// reviewAloud runs the review on the keys of the standard input and says on the
// standard output what it is about to keep, and what it has kept.
func reviewAloud(dir string) int {
	a := &app{in: os.Stdin, out: io.Discard, err: os.Stderr, now: time.Now, data: dir}
	if os.Getenv(reviewDraws) != "" {
		a.out = os.Stdout
	}
	if dir == "" {
		fmt.Println("begins")
		return 0
	}
	err := a.withStore(func(s *index.Store) error {
		fmt.Println("begins")
		return a.reviewOf(context.Background(), s, aloud{s}, reviewOptions{})
	})
	fmt.Fprintln(os.Stderr, "the review ended by itself:", err)
	return 0
}

// aloud is a store that says what it keeps.
type aloud struct{ *index.Store }

func (a aloud) Save(r colony.Record) error {
	return a.tell(r, func() error { return a.Store.Save(r) })
}

func (a aloud) EditAndSave(hash, text string, read []colony.Inspection, first, last *colony.Record) error {
	r := first
	if r == nil {
		r = last
	}
	if r == nil {
		return a.Store.EditAndSave(hash, text, read, nil, nil)
	}
	return a.tell(*r, func() error { return a.Store.EditAndSave(hash, text, read, first, last) })
}

func (a aloud) tell(r colony.Record, keep func() error) error {
	fmt.Println("keeping", r.ID, workOn(r))
	if err := keep(); err != nil {
		return err
	}
	fmt.Println("kept", r.ID, workOn(r))
	return nil
}

// workOn is what a person did on the record, on one line. Where its words stand
// is left out: that moves when the note is edited.
func workOn(r colony.Record) string {
	corrections := slices.Clone(r.Corrections)
	for i := range corrections {
		corrections[i].Span = nil
	}
	data, err := json.Marshal(colony.Record{Corrections: corrections, Accepted: r.Accepted, State: r.State})
	if err != nil {
		panic(err)
	}
	return string(data)
}

// keysOfReview are what a terminal sends for the keys of an evening: opening,
// answering, correcting, moving, undoing, editing the note, confirming.
var keysOfReview = []string{"\r", "\r", "\r", " ", " ", " ", "\t", "\x1b[A", "\x1b[B", "\x1b[C", "\x1b[F", "\x1b[3~", "\x1a", "\x1a", "\x19",
	"sp\r", "no\r", "7\r", "bar 9 honey half\r", "+queen seen\r", "\x05bar 3 pollen. \x13", "\x05x\x13", "\x13", "\x13\r", "\x0e", "\x18", "\x7f"}

// TestKilledInTheMiddleOfEditing kills a review with signal 9 at random moments
// while keys rush in. Each time, every record must then be exactly what the
// review said last that it kept, or what it was keeping just then; the note and
// what was read from it must belong together; store and index must be sound.
func TestKilledInTheMiddleOfEditing(t *testing.T) {
	const shared = 20 // kills of one store: each review goes on where the one before was killed
	random := kills.Random()
	var all killed
	var known map[string]string
	dir := ""
	for n := range *kills.Times {
		if n%shared == 0 {
			dir, known = demoWaiting(t)
		}
		k := killReview(t, dir, random)
		checkKilled(t, dir, k, known)
		if t.Failed() {
			t.Fatalf("kill %d of seed %d", n, *kills.Seed)
		}
		all.steps, all.confirmed, all.between = all.steps+k.steps, all.confirmed+k.confirmed, all.between+len(k.keeping)
	}
	t.Logf("%d kills with seed %d: %d steps kept, %d of them on a confirmed inspection; %d kills fell between the beginning and the end of keeping",
		*kills.Times, *kills.Seed, all.steps, all.confirmed, all.between)
	if all.steps == 0 || all.between == 0 && *kills.Times > 50 {
		t.Error("the kills hardly fell into editing: this shows nothing")
	}
}

// demoWaiting is a folder with the notes of the demonstration, none reviewed,
// and the work on each record.
func demoWaiting(t *testing.T) (dir string, work map[string]string) {
	t.Helper()
	dir, work = t.TempDir(), map[string]string{}
	a := &app{out: io.Discard, err: io.Discard, now: time.Now, data: dir}
	if err := a.runDemo(t.Context(), false, false); err != nil {
		t.Fatal(err)
	}
	s := indextest.Reopen(t, dir)
	defer s.Close()
	for r, err := range s.Records(index.Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		work[r.ID] = workOn(r)
	}
	return dir, work
}

// killed is what a review said before it was killed.
type killed struct {
	kept, keeping    map[string]string // the work last kept; that being kept, by record
	steps, confirmed int
	between          int
}

// killReview runs a review under a rush of keys and kills it some milliseconds
// after one of its first words, however slow the machine is.
func killReview(t *testing.T, dir string, random *rand.Rand) killed {
	t.Helper()
	cmd := reviewProcess(dir)
	keys, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	review := indextest.StartDoomed(t, cmd)
	review.Begins()
	defer review.KillIn(1500 * time.Millisecond).Stop() // the keys may have led where nothing is kept any more
	go rush(keys, rand.New(rand.NewPCG(random.Uint64(), 0)))
	moment, after := time.Duration(random.IntN(30_000))*time.Microsecond, random.IntN(5)
	k := listen(review, func(said int) {
		if said == after {
			review.KillIn(moment)
		}
	})
	if !review.End() || review.Talk() != "" {
		t.Fatalf("the review was not killed:\n%s", review.Talk())
	}
	return k
}

// reviewProcess is this test binary as the review of a folder.
func reviewProcess(dir string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), reviewRole+"="+dir)
	return cmd
}

// rush types until nobody reads any more.
func rush(keys io.Writer, random *rand.Rand) {
	for {
		if _, err := io.WriteString(keys, keysOfReview[random.IntN(len(keysOfReview))]); err != nil {
			return
		}
		time.Sleep(time.Duration(random.IntN(2000)) * time.Microsecond)
	}
}

// listen collects what a review says, and tells how many lines it has said so
// far.
func listen(review *indextest.Doomed, heard func(said int)) killed {
	k := killed{kept: map[string]string{}, keeping: map[string]string{}}
	for said := 0; ; said++ {
		heard(said)
		line, ok := review.Line()
		if !ok {
			return k
		}
		does, rest, _ := strings.Cut(line, " ")
		id, work, _ := strings.Cut(rest, " ")
		if does == "keeping" {
			k.keeping[id] = work
			continue
		}
		delete(k.keeping, id)
		k.kept[id] = work
		k.steps++
		if strings.Contains(work, `"state":"confirmed"`) {
			k.confirmed++
		}
	}
}

// checkKilled compares what is in the store with what the review said, and
// notes in known what is there now.
func checkKilled(t *testing.T, dir string, k killed, known map[string]string) {
	t.Helper()
	s := indextest.Reopen(t, dir)
	defer s.Close()
	indextest.MustAgree(t, s)
	parser, err := parserFor(s)
	if err != nil {
		t.Fatal(err)
	}
	for id, work := range k.kept {
		known[id] = work
	}
	left := len(known)
	for r, err := range s.Records(index.Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		if is := workOn(r); is != known[r.ID] && is != k.keeping[r.ID] {
			t.Errorf("%s holds\n%s\nkept was\n%s\nand being kept\n%s", r.ID, is, known[r.ID], k.keeping[r.ID])
		} else {
			known[r.ID] = is
		}
		left--
		note, err := s.Note(r.NoteHash)
		if err != nil {
			t.Fatal(err)
		}
		read := readNote(parser, &note)
		if r.Seq > len(read) || !slices.Equal(colony.Leaves(&r.Read), colony.Leaves(&read[r.Seq-1])) {
			t.Errorf("%s: what was read is not of the note as it is kept", r.ID)
		}
	}
	if left != 0 {
		t.Errorf("%d records are lost", left)
	}
}
