package tui

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"time"

	"barwise/colony"
)

// desk is what every way of reviewing works with: the screen and the plain
// mode share it.
type desk struct {
	keeper Keeper
	reader Reader
	opts   Options
}

func (d *desk) now() time.Time { return d.opts.Now() }

// opened is one record with all that is shown of it.
type opened struct {
	rec  colony.Record
	note colony.Note // its words as last edited
	past timeline
	prev *colony.Inspection // the hive's inspection before this one; nil for none

	ins   colony.Inspection // what the record says now
	asked []question
	rows  []row
}

// open loads a record, its note and its history.
func (d *desk) open(id string) (*opened, error) {
	rec, err := d.keeper.Record(id)
	if err != nil {
		return nil, err
	}
	history, err := d.keeper.History(id)
	if err != nil {
		return nil, err
	}
	note, err := d.keeper.Note(rec.NoteHash)
	if err != nil {
		return nil, err
	}
	o := &opened{note: note, past: timelineOf(history, rec)}
	o.become(rec)
	o.prev, err = d.before(&o.ins)
	return o, err
}

// become shows the record as it stands after a step.
func (o *opened) become(rec colony.Record) {
	o.rec = rec
	o.past.push(rec)
	o.ins = rec.Inspection()
	o.asked = questions(&rec, &o.ins)
	o.rows = sheetRows(&rec, &o.ins, o.asked)
}

// questionOf is what is asked about the leaf; nil for nothing.
func (o *opened) questionOf(path string) *question {
	if i := slices.IndexFunc(o.asked, func(q question) bool { return q.path == path }); i >= 0 {
		return &o.asked[i]
	}
	return nil
}

// The steps that answer a question. Each returns the record as it stands after
// the step, and what to say of it.

func (o *opened) accepted(path string, now time.Time) (colony.Record, string) {
	return accept(o.rec, path, now), fullName(path) + " is right"
}

func (o *opened) removed(path string, now time.Time) (colony.Record, string) {
	return remove(o.rec, path, now), fullName(path) + " is taken away"
}

func (o *opened) otherTaken(q *question, now time.Time) (colony.Record, string, error) {
	rec, err := o.corrected(q.path, q.alt, now)
	return rec, fullName(q.path) + ": " + showValue(q.path, q.alt), err
}

// corrected is the record with another value for what the leaf's words say.
func (o *opened) corrected(path, value string, now time.Time) (colony.Record, error) {
	return correct(o.rec, path, value, firstSpan(&o.ins, path), now)
}

// before finds the hive's inspection that came before this one.
func (d *desk) before(ins *colony.Inspection) (*colony.Inspection, error) {
	if d.opts.Past == nil || ins.Hive == "" {
		return nil, nil
	}
	records, err := d.opts.Past(ins.Hive)
	if err != nil {
		return nil, err
	}
	for _, r := range records {
		if r.State == colony.SetAside || r.ID == ins.ID || r.Read.At.After(ins.At) && len(r.Corrections) == 0 {
			continue
		}
		if was := r.Inspection(); was.Hive == ins.Hive && was.At.Before(ins.At) {
			return &was, nil
		}
	}
	return nil, nil
}

// edit gives the note new words, and keeps with the record what it was before
// so that undo finds its way back after a restart. A confirmed record waits
// again. It loads the record anew.
func (d *desk) edit(o *opened, text string) (*opened, error) {
	rec := add(o.rec, colony.Correction{Path: noteText, Value: text, Was: o.note.Text, At: d.now()})
	if rec.State == colony.Confirmed {
		rec.State = colony.Waiting
	}
	if err := d.keeper.EditAndSave(o.note.Hash, text, d.readAs(&o.note, text), &rec, nil); err != nil {
		return nil, err
	}
	return d.open(o.rec.ID)
}

// walk goes one step back or forward and saves. It returns the record loaded
// anew, and what was undone or redone; "" where there is nothing.
func (d *desk) walk(o *opened, back bool) (*opened, string, error) {
	rec, what, ok := o.past.step(back)
	if !ok {
		return o, "", nil
	}
	var err error
	if text, edited := wordsBetween(&o.rec, &rec); edited {
		err = d.keeper.EditAndSave(o.note.Hash, text, d.readAs(&o.note, text), nil, &rec)
	} else {
		err = d.keeper.Save(rec)
	}
	if err != nil {
		return nil, "", err
	}
	next, err := d.open(rec.ID)
	return next, what, err
}

// wordsBetween tells whether the note's words change on the way from one
// version to the other, and what they become.
func wordsBetween(from, to *colony.Record) (text string, edited bool) {
	n := len(from.Corrections)
	if m := len(to.Corrections); m > n {
		for _, c := range to.Corrections[n:] {
			if c.Path == noteText {
				text, edited = c.Value, true
			}
		}
		return text, edited
	}
	for _, c := range slices.Backward(from.Corrections[len(to.Corrections):]) {
		if c.Path == noteText {
			text, edited = c.Was, true
		}
	}
	return text, edited
}

// readAs reads the note with other words. Timed words stay with the parts
// that are the same from the front and from the back.
func (d *desk) readAs(note *colony.Note, text string) []colony.Inspection {
	as := *note
	as.Text, as.Words = text, wordsAround(note, text)
	return d.reader.Parse(&as)
}

func wordsAround(note *colony.Note, text string) []colony.TimedWord {
	short := min(len(note.Text), len(text))
	head, tail := 0, 0
	for head < short && note.Text[head] == text[head] {
		head++
	}
	for tail < short-head && note.Text[len(note.Text)-1-tail] == text[len(text)-1-tail] {
		tail++
	}
	var words []colony.TimedWord
	for _, w := range note.Words {
		switch by := len(text) - len(note.Text); {
		case w.Span[1] <= head:
			words = append(words, w)
		case w.Span[0] >= len(note.Text)-tail:
			w.Span = colony.Span{w.Span[0] + by, w.Span[1] + by}
			words = append(words, w)
		}
	}
	return words
}

// editedText reports whether the note's words were edited through this record.
func editedText(r *colony.Record) bool {
	return slices.ContainsFunc(r.Corrections, func(c colony.Correction) bool { return c.Path == noteText })
}

// take keeps a note that was typed, and what it says.
func (d *desk) take(text string) ([]colony.Record, error) {
	note := newNote(text, d.now())
	return d.keeper.Take(note, d.reader.Parse(&note))
}

// newNote makes a note of typed words. The moment is part of its hash: the same
// few words typed after another visit are another note.
func newNote(text string, now time.Time) colony.Note {
	sum := sha256.Sum256([]byte(text + "\x00" + now.Format(time.RFC3339)))
	return colony.Note{Hash: hex.EncodeToString(sum[:]), Name: "typed " + now.Format("2006-01-02 15:04"),
		Text: text, Taken: now, Given: now}
}
