package command

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

// The keystroke-level model counts what an expert who makes no slips does:
// keys K and acts of deciding M. Operators and times are those of Card, Moran
// and Newell, "The keystroke-level model for user performance time with
// interactive systems", Communications of the ACM 23(7), 1980: K 0.28 s for an
// average typist who is no secretary (40 words a minute), M 1.35 s. Reading a
// value on the sheet is taken as 0.3 s, a guess of ours with no source; it is
// counted for the review alone, so against it.
const (
	keyTime    = 0.28
	decideTime = 1.35
	readTime   = 0.30
)

// tally is what one way of keeping inspections costs.
type tally struct{ keys, decisions, reads int }

func (c tally) seconds() float64 {
	return float64(c.keys)*keyTime + float64(c.decisions)*decideTime + float64(c.reads)*readTime
}

func (c *tally) add(o tally) {
	c.keys, c.decisions, c.reads = c.keys+o.keys, c.decisions+o.decisions, c.reads+o.reads
}

// typing is what it costs to type every leaf of a record: the value, and one key
// to the next field that is filled, empty ones skipped for nothing.
func typing(ins *colony.Inspection, keysOf func(colony.Leaf) int) (c tally) {
	for _, l := range colony.Leaves(ins) {
		c.decisions++
		c.keys += 1 + keysOf(l)
	}
	return c
}

// inForm is what a value costs in an ideal form: a yes or a no is one key, a
// word of a list as many letters as tell it from the others.
func inForm(l colony.Leaf) int {
	f, err := colony.FieldOf(l.Path)
	switch {
	case err == nil && f.Kind == colony.Time:
		return len("14.5. 16:00")
	case err == nil && len(f.Values) > 0:
		return len(shortest(f, l.Value))
	}
	return len(l.Value)
}

// inCell is what it costs in a row of a spreadsheet: all of it.
func inCell(l colony.Leaf) int { return len(l.Value) }

// shortest is the beginning of the value that tells it from the field's others.
func shortest(f colony.Field, value string) string {
	for n := 1; n < len(value); n++ {
		same := 0
		for _, v := range f.Values {
			if strings.HasPrefix(v, value[:n]) {
				same++
			}
		}
		if same == 1 {
			return value[:n]
		}
	}
	return value
}

// decide presses the keys of one decision and gives the record as it is kept
// then.
func (s *session) decide(keys ...string) colony.Record {
	s.tb.Helper()
	s.count.decisions++
	s.press(keys...)
	return <-s.saved
}

// run reviews everything that waits in the store, from the first key to the last
// confirmation. Of the questions every wrong-th is answered with a correction
// and the rest let stand; 0 means that all are right.
func run(t *testing.T, s *index.Store, wrong int) tally {
	t.Helper()
	waiting, err := s.Waiting()
	if err != nil {
		t.Fatal(err)
	}
	r := begin(t, s, reviewOptions{})
	r.waits(fmt.Sprintf("%d inspection", len(waiting)))
	r.press("\r")
	asked := 0
	for i, rec := range waiting {
		r.waits(fmt.Sprintf("1 of %d waiting", len(waiting)-i))
		for path, alt := r.question(&rec); path != ""; path, alt = r.question(&rec) {
			if asked++; wrong > 0 && asked%wrong == 0 {
				rec = r.correct(&rec, path, alt)
			} else {
				rec = r.decide(" ")
			}
		}
		r.count.reads += len(colony.Leaves(&rec.Read))
		if rec = r.decide("\r"); rec.State != colony.Confirmed {
			t.Fatalf("%s is %s at the end", rec.ID, rec.State)
		}
	}
	r.waits("Nothing waits.")
	keys := r.count
	r.leave()
	return keys
}

// question is the first leaf that the sheet asks about, and the other value that
// it offers: leaves in the order of the record, then what stands nowhere.
func (s *session) question(r *colony.Record) (path, alt string) {
	ins := r.Inspection()
	var paths []string
	for _, l := range colony.Leaves(&ins) {
		paths = append(paths, l.Path)
	}
	for _, c := range ins.Check {
		paths = append(paths, c.Path)
	}
	for _, path := range paths {
		if i := slices.IndexFunc(ins.Check, func(c colony.Check) bool { return c.Path == path }); i >= 0 {
			return path, ins.Check[i].Alt
		}
	}
	return "", ""
}

// correct takes the other value where one is offered; else it types another one
// that can stand there, or takes the leaf away where none can.
func (s *session) correct(r *colony.Record, path, alt string) colony.Record {
	s.tb.Helper()
	if alt != "" {
		return s.isNow(s.decide("\t"), path, alt)
	}
	f, err := colony.FieldOf(path)
	if err != nil {
		s.tb.Fatal(err)
	}
	ins := r.Inspection()
	was, _ := colony.Get(&ins, path)
	value := "4"
	if i := slices.IndexFunc(f.Values, func(v string) bool { return v != was }); i >= 0 {
		value = f.Values[i]
	}
	if len(f.Values) == 1 || f.Kind == colony.Day || f.Kind == colony.Time {
		return s.isNow(s.decide("\x1b[3~"), path, "")
	}
	return s.isNow(s.decide(append(strings.Split(shortest(f, value), ""), "\r")...), path, value)
}

func (s *session) isNow(r colony.Record, path, want string) colony.Record {
	s.tb.Helper()
	ins := r.Inspection()
	if got, _ := colony.Get(&ins, path); got != want {
		s.tb.Fatalf("%s is %q after its correction, want %q", path, got, want)
	}
	return r
}

// twelveBars is an invented note, as dictated.
const twelveBars = `hive three sunny and calm bar one honey bar two honey and pollen bar three eggs and lava
bar four capped brewed both sides bar five eggs and the queen blue dot bar six capped brood about half
bar seven capped brood both sides bar eight eggs bar nine neck tar bar ten pollen maybe
bar eleven honey bar twelve empty comb`

// TestKeystrokes reviews real stores with real keys, prints what an inspection
// costs by each way of keeping it, and holds the aims: ten times fewer keys than
// typing, and twelve bars with four things to check in twelve keys.
func TestKeystrokes(t *testing.T) {
	byForm, byReview := costs(t, "All notes of the demonstration", func(dir string) *index.Store {
		a := &app{out: io.Discard, err: io.Discard, now: time.Now, data: dir}
		if err := a.runDemo(t.Context(), false, false); err != nil {
			t.Fatal(err)
		}
		return indextest.Reopen(t, dir)
	}, 0)
	if byForm.keys < 10*byReview.keys {
		t.Errorf("%d keys by form, %d by review: less than ten times fewer", byForm.keys, byReview.keys)
	}
	_, byReview = costs(t, "Twelve bars", func(dir string) *index.Store {
		s := indextest.Reopen(t, dir)
		parser, err := parserFor(s)
		if err != nil {
			t.Fatal(err)
		}
		note := indextest.NoteOf(twelveBars)
		note.Given = time.Date(2026, 5, 14, 16, 0, 0, 0, time.UTC)
		if _, err := s.Take(note, readNote(parser, &note)); err != nil {
			t.Fatal(err)
		}
		return s
	}, 4)
	if byReview.keys > 12 {
		t.Errorf("twelve bars with four things to check take %d keys", byReview.keys)
	}
}

// costs prints what the inspections of a store cost by each way, and returns
// what they cost in the form and in a review with every question corrected. The
// store is filled anew for each review.
func costs(t *testing.T, title string, fill func(dir string) *index.Store, checks int) (byForm, byReview tally) {
	t.Helper()
	var out strings.Builder
	s := fill(t.TempDir())
	n, asked, byForm, byRow := written(t, s)
	if checks > 0 && asked != checks {
		t.Errorf("%d to check, want %d", asked, checks)
	}
	fmt.Fprintf(&out, "\n%s: %s, %s, %d to check\n%-44s %6s %6s %7s\n", title, amount(n, "inspection"), amount(byForm.decisions, "leaf"), asked,
		"each inspection", "keys", "M", "seconds")
	for wrong, name := range []string{"review, all that is asked is right", "review, every second one is corrected", "review, every one is corrected"} {
		if wrong > 0 {
			s, wrong = fill(t.TempDir()), 3-wrong
		}
		byReview = run(t, s, wrong)
		line(&out, name, n, byReview)
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}
	line(&out, "an ideal form, leaf by leaf", n, byForm)
	line(&out, "a row of a spreadsheet", n, byRow)
	fmt.Fprintf(&out, "form and row take %.1f and %.1f times the keys of the review with every question corrected\n",
		float64(byForm.keys)/float64(byReview.keys), float64(byRow.keys)/float64(byReview.keys))
	t.Log(out.String())
	return byForm, byReview
}

// written counts what waits, and what typing it costs.
func written(t *testing.T, s *index.Store) (inspections, asked int, byForm, byRow tally) {
	t.Helper()
	waiting, err := s.Waiting()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range waiting {
		byForm.add(typing(&r.Read, inForm))
		byRow.add(typing(&r.Read, inCell))
		asked += len(r.Read.Check)
	}
	return len(waiting), asked, byForm, byRow
}

func line(out io.Writer, name string, n int, c tally) {
	fmt.Fprintf(out, "%-44s %6.1f %6.1f %7.1f\n", name, float64(c.keys)/float64(n), float64(c.decisions)/float64(n), c.seconds()/float64(n))
}
