package tui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"barwise/colony"
)

// noteText is the path under which an edit of the note lies in the
// corrections. The record holds no such leaf, so it changes no value; it is
// there for undo to know which words the note had.
const noteText = "note"

// The steps. Each returns the record as it stands after the step and leaves
// the one handed in alone, so versions can be kept and compared.

// accept lets a flagged leaf stand as it is.
func accept(r colony.Record, path string, now time.Time) colony.Record {
	if !slices.Contains(r.Accepted, path) {
		r.Accepted = append(slices.Clone(r.Accepted), path)
	}
	if said, read, conflict := disputed(&r, path); conflict {
		// Saying it again against the newer reading settles the dispute.
		r = add(r, colony.Correction{Path: path, Value: said.Value, Deleted: said.Deleted, Was: read, Span: said.Span, At: now})
	}
	r.Changed = now
	return r
}

// correct writes a value. Span, where not nil, is the words it comes from.
func correct(r colony.Record, path, value string, span *colony.Span, now time.Time) (colony.Record, error) {
	field, err := colony.FieldOf(path)
	if err != nil {
		return r, err
	}
	if err := field.Check(value); err != nil {
		return r, err
	}
	ins := r.Inspection()
	was, _ := colony.Get(&ins, path)
	r = add(r, colony.Correction{Path: path, Value: value, Was: was, Span: span, At: now})
	r.Changed = now
	return r, nil
}

// remove takes a leaf away, and with an item what is said of it.
func remove(r colony.Record, path string, now time.Time) colony.Record {
	ins := r.Inspection()
	was, _ := colony.Get(&ins, path)
	r = add(r, colony.Correction{Path: path, Deleted: true, Was: was, At: now})
	r.Changed = now
	return r
}

// moveItem carries an item, such as bars.4.eggs, with all that is said of it
// to another bar. What stood there of the same thing is overwritten.
func moveItem(r colony.Record, item string, bar int, now time.Time) (colony.Record, error) {
	from, rest, ok := splitBar(item)
	if !ok {
		return r, fmt.Errorf("%s stands on no bar", item)
	}
	if from == bar {
		return r, fmt.Errorf("it is on bar %d already", bar)
	}
	return moveUnder(r, item, fmt.Sprintf("bars.%d.%s", bar, rest), now)
}

// moveBar carries all that is said of a bar to another number, with the queen
// and the signs that were seen on it.
func moveBar(r colony.Record, from, to int, now time.Time) (colony.Record, error) {
	if from == to {
		return r, fmt.Errorf("it is bar %d already", to)
	}
	prefix := fmt.Sprintf("bars.%d", from)
	r, err := moveUnder(r, prefix, fmt.Sprintf("bars.%d", to), now)
	if err != nil {
		return r, err
	}
	ins := r.Inspection()
	for _, l := range colony.Leaves(&ins) {
		if l.Value != strconv.Itoa(from) || !(l.Path == "queen.bar" || strings.HasPrefix(l.Path, "signs.") && strings.HasSuffix(l.Path, ".bar")) {
			continue
		}
		if r, err = correct(r, l.Path, strconv.Itoa(to), firstSpan(&ins, l.Path), now); err != nil {
			return r, err
		}
	}
	return r, nil
}

func moveUnder(r colony.Record, from, to string, now time.Time) (colony.Record, error) {
	ins := r.Inspection()
	var moved []colony.Leaf
	for _, l := range colony.Leaves(&ins) {
		if l.Path == from || strings.HasPrefix(l.Path, from+".") {
			moved = append(moved, l)
		}
	}
	if len(moved) == 0 {
		return r, fmt.Errorf("nothing is recorded under %s", from)
	}
	var err error
	for _, l := range moved {
		if r, err = correct(r, to+strings.TrimPrefix(l.Path, from), l.Value, firstSpan(&ins, l.Path), now); err != nil {
			return r, err
		}
	}
	for _, l := range moved {
		r = remove(r, l.Path, now)
	}
	return r, nil
}

// stand sets the state.
func stand(r colony.Record, state colony.State, now time.Time) colony.Record {
	r.State, r.Changed = state, now
	return r
}

func add(r colony.Record, c colony.Correction) colony.Record {
	r.Corrections = append(slices.Clone(r.Corrections), c)
	return r
}

// splitBar takes bars.4.eggs apart into 4 and eggs.
func splitBar(path string) (bar int, rest string, ok bool) {
	list, after, _ := strings.Cut(path, ".")
	number, rest, _ := strings.Cut(after, ".")
	bar, err := strconv.Atoi(number)
	return bar, rest, list == "bars" && err == nil
}

// firstSpan is where the leaf's words begin, or those of the item it is said of.
func firstSpan(ins *colony.Inspection, path string) *colony.Span {
	for ; path != ""; path = parent(path) {
		if spans := ins.Evidence.Of(path); len(spans) > 0 {
			span := spans[0]
			return &span
		}
	}
	return nil
}

func parent(path string) string {
	if i := strings.LastIndexByte(path, '.'); i >= 0 {
		return path[:i]
	}
	return ""
}
