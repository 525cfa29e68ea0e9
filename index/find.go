package index

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Find answers a query. It fails where the query makes no sense, and where the
// index cannot be used and cannot be mended either.
func (s *Store) Find(q Query) (Hits, error) {
	if err := q.check(); err != nil {
		return Hits{}, err
	}
	f, err := s.ask(q, "")
	if err != nil {
		return Hits{}, err
	}
	hits := Hits{Total: f.total, Groups: f.groups, Terms: f.terms, Hits: make([]Hit, 0, len(f.places))}
	quoter := newQuoter(f.terms)
	err = s.view(func(tx *bolt.Tx) error {
		quoter.texts = texts{tx: tx}
		for _, p := range f.places {
			hit, err := quoter.hit(q, p)
			if errors.Is(err, ErrUnknown) {
				continue // the index knows more than the store: Check tells
			}
			if err != nil {
				return err
			}
			hits.Hits = append(hits.Hits, hit)
		}
		return nil
	})
	return hits, err
}

// Readings lists the inspections that a query finds with what their leaf of the
// given path says, which may be none. It looks into the index alone, so that many
// thousands take no longer than a few; that serves a leaf that an inspection has
// once, and no yes or no. Quotes and bars are left out.
func (s *Store) Readings(q Query, path string) ([]Reading, error) {
	if err := q.check(); err != nil {
		return nil, err
	}
	f, err := s.ask(q, path)
	list := make([]Reading, 0, len(f.places))
	for _, p := range f.places {
		list = append(list, Reading{Hive: p.order.hive(), Day: dayOf(p), Value: p.value})
	}
	return list, err
}

// ask has the index answer, after it was brought up to date. An index that
// breaks on the way is built anew, once.
func (s *Store) ask(q Query, value string) (found, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return found{}, errors.New("the store is closed")
	}
	if s.asked != nil {
		return found{}, s.asked
	}
	if !s.opts.readOnly {
		if err := s.catchUp(); err != nil {
			return found{}, failed(err)
		}
	}
	if s.words.idx == nil {
		return found{}, nil
	}
	f, err := s.search(q, value)
	if err == nil {
		return f, nil
	}
	if s.opts.readOnly {
		return found{}, fmt.Errorf("the search index cannot be read and has to be built anew: %w", err)
	}
	if err := s.startOver(err); err != nil {
		s.asked = failed(err)
		return found{}, s.asked
	}
	return s.search(q, value)
}

// quoter turns places into hits with the words that made them.
type quoter struct {
	stems map[string]int // stem → which of the query's words
	words int
	texts texts
}

// hit reads a hit's record and note.
func (w *quoter) hit(q Query, p place) (Hit, error) {
	r, err := recordOf(w.texts.tx, p.order.number())
	if err != nil {
		return Hit{}, err
	}
	ins := current(&r)
	hit := Hit{ID: r.ID, Hive: ins.Hive, Bar: p.barNumber(), State: r.State, Note: r.NoteHash, Record: r}
	if !ins.At.IsZero() {
		hit.Day = colony.DateOf(ins.At)
	}
	hit.Leaves = fulfilling(q, &ins, hit.Bar)
	if q.Bare {
		return hit, nil
	}
	parts, err := w.texts.stretches(&r)
	if err != nil {
		return Hit{}, err
	}
	text := w.texts.note.Text
	hit.Quotes = evidenceQuotes(text, &ins, hit.Leaves)
	if w.words > 0 {
		hit.Quotes = append(hit.Quotes, w.textQuotes(text, parts, &ins)...)
	}
	if hit.Bar == 0 {
		hit.Bar = oneBar(hit.Leaves, hit.Quotes)
	}
	return hit, nil
}

// fulfilling lists the leaves that make the query's conditions hold, of the
// given bar alone where that is not zero.
func fulfilling(q Query, ins *colony.Inspection, bar int) []colony.Leaf {
	if len(q.Where) == 0 {
		return nil
	}
	var list []colony.Leaf
	for _, leaf := range colony.Leaves(ins) {
		path := plainPath(leaf.Path)
		if number, _, ok := barPath(path); ok && bar != 0 && number != strconv.Itoa(bar) {
			continue
		}
		if slices.ContainsFunc(q.Where, func(clause Clause) bool {
			return slices.ContainsFunc(clause, func(c Condition) bool {
				return c.Op != Silent && c.Covers(path) && c.holds(leaf.Value)
			})
		}) {
			list = append(list, leaf)
		}
	}
	return list
}

// oneBar is the bar that a hit of an inspection is about: that of all the
// leaves it was found by, else that of the first words quoted.
func oneBar(leaves []colony.Leaf, quotes []Quote) int {
	if len(leaves) == 0 {
		if len(quotes) > 0 {
			return quotes[0].Bar
		}
		return 0
	}
	bar := -1
	for _, leaf := range leaves {
		n := barOfLeaf(leaf.Path)
		if bar >= 0 && n != bar {
			return 0
		}
		bar = n
	}
	return bar
}

func barOfLeaf(path string) int {
	number, _, _ := barPath(path)
	n, _ := strconv.Atoi(number)
	return n
}

// evidenceOf returns the words that a leaf rests on. A leaf of a list's item
// that has none of its own rests on the item's.
func evidenceOf(ins *colony.Inspection, path string) []colony.Span {
	if spans := ins.Evidence.Of(path); len(spans) > 0 {
		return spans
	}
	if at := strings.LastIndexByte(path, '.'); at > 0 {
		return ins.Evidence.Of(path[:at])
	}
	return nil
}
