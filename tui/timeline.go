package tui

import (
	"encoding/json"
	"fmt"
	"slices"

	"barwise/colony"
)

// timeline holds the versions of one record that undo and redo walk through.
//
// The history only ever grows: undoing saves an earlier version again as the
// newest. Where the walk stands is found by replaying the history: a version
// equal to the one before the present is an undo, one equal to the one after
// it is a redo, and any other is a new step that ends what could be redone.
// So the same place is found again after a restart. Versions that differ only
// in what was read count as one.
type timeline struct {
	versions []colony.Record
	forms    []string // the layer of each version, to compare
	at       int
}

// timelineOf replays the earlier versions and the present one.
func timelineOf(history []colony.Record, present colony.Record) timeline {
	var t timeline
	for _, r := range history {
		t.push(r)
	}
	t.push(present)
	return t
}

// push adds the version that was saved last.
func (t *timeline) push(r colony.Record) {
	form := layer(r)
	switch {
	case len(t.versions) == 0:
	case t.forms[t.at] == form:
		t.versions[t.at] = r
		return
	case t.at > 0 && t.forms[t.at-1] == form:
		t.at--
		t.versions[t.at] = r
		return
	case t.at+1 < len(t.forms) && t.forms[t.at+1] == form:
		t.at++
		t.versions[t.at] = r
		return
	}
	keep := min(t.at+1, len(t.versions))
	t.versions = append(t.versions[:keep:keep], r)
	t.forms = append(t.forms[:keep:keep], form)
	t.at = len(t.versions) - 1
}

// step is the record one step back or forward, and what that takes away or
// brings back; false where there is no such step. What was read is as it is
// now: undo takes back what a person did, not what a parser did.
func (t *timeline) step(back bool) (colony.Record, string, bool) {
	to := t.at + 1
	if back {
		to = t.at - 1
	}
	if to < 0 || to >= len(t.versions) {
		return colony.Record{}, "", false
	}
	early, late := min(t.at, to), max(t.at, to)
	return over(t.versions[t.at], t.versions[to]), describe(&t.versions[early], &t.versions[late]), true
}

// over lays what a person did in one version over the reading of another.
func over(now, then colony.Record) colony.Record {
	now.Corrections, now.Accepted, now.State = then.Corrections, then.Accepted, then.State
	return now
}

// layer is what a person did, in a form that can be compared. Where the words
// stand is left out, since it moves when the note is edited.
func layer(r colony.Record) string {
	corrections := slices.Clone(r.Corrections)
	for i := range corrections {
		corrections[i].Span = nil
	}
	data, err := json.Marshal(colony.Record{Corrections: corrections, Accepted: r.Accepted, State: r.State})
	if err != nil {
		panic("tui: a record always has a JSON form: " + err.Error())
	}
	return string(data)
}

// describe names the step from one version to the next.
func describe(from, to *colony.Record) string {
	if n := len(to.Corrections) - len(from.Corrections); n > 0 {
		first := to.Corrections[len(from.Corrections)]
		switch {
		case first.Path == noteText:
			return "the note was edited"
		case n > 1:
			return fmt.Sprintf("%s and %d more", describeCorrection(first), n-1)
		}
		return describeCorrection(first)
	}
	switch {
	case len(to.Accepted) > len(from.Accepted):
		return fullName(to.Accepted[len(to.Accepted)-1]) + " is right"
	case from.State != to.State:
		return "the inspection is " + string(to.State)
	}
	return "a step"
}

func describeCorrection(c colony.Correction) string {
	if c.Deleted {
		return fullName(c.Path) + " removed"
	}
	return fullName(c.Path) + ": " + showValue(c.Path, c.Value)
}
