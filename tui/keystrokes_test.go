package tui

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"barwise/colony"
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

// tally is one way of keeping an inspection.
type tally struct{ keys, decisions, reads int }

func (c tally) seconds() float64 {
	return float64(c.keys)*keyTime + float64(c.decisions)*decideTime + float64(c.reads)*readTime
}

func (c *tally) add(o tally) {
	c.keys, c.decisions, c.reads = c.keys+o.keys, c.decisions+o.decisions, c.reads+o.reads
}

// form is what typing the record into an ideal form costs: the cursor goes
// from each field that is filled straight to the next with one key, a yes or a
// no is one key, a word of a list as many letters as tell it from the others.
func form(ins *colony.Inspection) tally {
	var c tally
	for _, l := range colony.Leaves(ins) {
		c.decisions++
		c.keys += 1 + shortest(l)
	}
	return c
}

func shortest(l colony.Leaf) int {
	f, err := colony.FieldOf(l.Path)
	if err != nil || len(f.Values) == 0 {
		if f.Kind == colony.Time {
			return len("14.5. 16:00")
		}
		return len(l.Value)
	}
	for n := 1; n < len(l.Value); n++ {
		same := 0
		for _, v := range f.Values {
			if strings.HasPrefix(v, l.Value[:n]) {
				same++
			}
		}
		if same == 1 {
			return n
		}
	}
	return len(l.Value)
}

// gridRow is what typing it into a row of a spreadsheet costs: each value in full
// into its own cell, empty cells skipped for nothing.
func gridRow(ins *colony.Inspection) tally {
	var c tally
	for _, l := range colony.Leaves(ins) {
		c.decisions++
		c.keys += 1 + len(l.Value)
	}
	return c
}

// review drives the screen through everything that waits. Of the questions,
// every wrong-th is answered with a correction and the rest let stand; 0 means
// that all are right.
func review(t *testing.T, k *fakeKeeper, wrong int) tally {
	t.Helper()
	d := newDriver(t, k, options(k), 80, 24)
	c := tally{keys: 1}
	d.press("enter")
	for asked := 0; ; {
		s := d.app.sheet
		if d.app.screen != onSheet || s.rec.State != colony.Waiting {
			return c
		}
		r, path := s.current()
		c.decisions++
		if r.kind == rowEnd {
			c.reads += len(colony.Leaves(&s.ins))
			c.keys++
			d.press("enter")
			continue
		}
		if asked++; wrong > 0 && asked%wrong == 0 {
			c.keys += correctIt(t, d, path)
			continue
		}
		c.keys++
		d.press("space")
	}
}

// correctIt takes the other value where one is offered, else types one.
func correctIt(t *testing.T, d *driver, path string) int {
	s := d.app.sheet
	for _, q := range s.asked {
		if q.path == path && q.alt != "" {
			d.press("tab")
			return 1
		}
	}
	f, err := colony.FieldOf(path)
	if err != nil {
		t.Fatal(err)
	}
	typed := "4"
	was, _ := colony.Get(&s.ins, path)
	for _, v := range f.Values {
		if v != was {
			typed = v[:min(len(v), shortest(colony.Leaf{Path: path, Value: v}))]
		}
	}
	if len(f.Values) == 1 || f.Kind == colony.Day || f.Kind == colony.Time {
		d.press("delete")
		return 1
	}
	d.press(typed, "enter")
	return len(typed) + 1
}

// demoSeason is what was read from the notes of the demonstration's May and
// June 2026: barwise demo --data DIR, then barwise export --data DIR, and of
// that the notes and records of those months. It is a copy as of the day it was
// made: rules that read more since do not move the figures until it is made anew.
func demoSeason(t *testing.T) *fakeKeeper {
	t.Helper()
	file, err := os.Open("testdata/keystrokes.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	k := newFakeKeeper()
	lines := bufio.NewScanner(file)
	lines.Buffer(nil, 1<<20)
	for lines.Scan() {
		var line struct {
			Note   *colony.Note
			Record *colony.Record
		}
		if err := json.Unmarshal(lines.Bytes(), &line); err != nil {
			t.Fatal(err)
		}
		if line.Note != nil {
			k.notes[line.Note.Hash] = *line.Note
		} else {
			k.order = append(k.order, line.Record.ID)
			k.now[line.Record.ID] = *line.Record
		}
	}
	if err := lines.Err(); err != nil || len(k.order) == 0 {
		t.Fatalf("%d records, %v", len(k.order), err)
	}
	return k
}

// TestKeystrokes prints what an inspection costs by each way of keeping it,
// per inspection, and holds the aims: ten times fewer keys than typing, and
// twelve bars with four things to check in twelve keys.
func TestKeystrokes(t *testing.T) {
	var out strings.Builder
	line := func(name string, n int, c tally) {
		fmt.Fprintf(&out, "%-44s %6.1f %6.1f %7.1f\n", name, float64(c.keys)/float64(n), float64(c.decisions)/float64(n), c.seconds()/float64(n))
	}
	table := func(title string, fresh func() *fakeKeeper) (typing, reviewing tally) {
		k := fresh()
		var byForm, byRow tally
		leaves, asked := 0, 0
		for _, r := range k.now {
			ins := r.Inspection()
			byForm.add(form(&ins))
			byRow.add(gridRow(&ins))
			leaves += len(colony.Leaves(&ins))
			asked += len(questions(&r, &ins))
		}
		n := len(k.order)
		fmt.Fprintf(&out, "%s: %s, %d leaves, %d to check\n", title, plural(n, "inspection", "inspections"), leaves, asked)
		fmt.Fprintf(&out, "%-44s %6s %6s %7s\n", "each inspection", "keys", "M", "seconds")
		line("review, all that is asked is right", n, review(t, fresh(), 0))
		reviewing = review(t, fresh(), 2)
		line("review, every second one is corrected", n, reviewing)
		line("review, every one is corrected", n, review(t, fresh(), 1))
		line("an ideal form, leaf by leaf", n, byForm)
		line("a row of a spreadsheet", n, byRow)
		out.WriteByte('\n')
		return byForm, reviewing
	}
	typing, reviewing := table("Notes of the demonstration", func() *fakeKeeper { return demoSeason(t) })
	if typing.keys < 10*reviewing.keys {
		t.Errorf("%d keys by form, %d by review: less than ten times fewer", typing.keys, reviewing.keys)
	}
	_, twelve := table("Twelve bars", func() *fakeKeeper { return take(t, longNote()) })
	if twelve.keys > 12 {
		t.Errorf("twelve bars with four things to check take %d keys", twelve.keys)
	}
	t.Log("\n" + out.String())
	golden.RequireEqual(t, []byte(out.String()))
}
