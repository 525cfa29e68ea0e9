package colony

import (
	"encoding/json"
	"maps"
	"slices"
)

// Evidence tells which words of the note each leaf rests on. It is a list, no
// map: each reading makes one, few leaves are ever looked up, and a map would be
// the greater part of an inspection. In JSON it is an object by path.
type Evidence []Grounds

// Grounds are the words that one leaf rests on.
type Grounds struct {
	Path  string
	Spans []Span
}

// Of returns the words that the leaf rests on.
func (e Evidence) Of(path string) []Span {
	if i := e.index(path); i >= 0 {
		return e[i].Spans
	}
	return nil
}

// Set has the leaf rest on other words than before.
func (e *Evidence) Set(path string, spans []Span) {
	if i := e.index(path); i >= 0 {
		(*e)[i].Spans = spans
		return
	}
	*e = append(*e, Grounds{path, spans})
}

func (e Evidence) index(path string) int {
	return slices.IndexFunc(e, func(g Grounds) bool { return g.Path == path })
}

// MarshalJSON writes an object of the paths, in their order, each with a list of
// [start, end].
func (e Evidence) MarshalJSON() ([]byte, error) {
	byPath := make(map[string][]Span, len(e))
	for _, g := range e {
		byPath[g.Path] = append([]Span{}, g.Spans...) // none is an empty list
	}
	return json.Marshal(byPath)
}

// UnmarshalJSON reads what [Evidence.MarshalJSON] writes.
func (e *Evidence) UnmarshalJSON(data []byte) error {
	var byPath map[string][]Span
	if err := json.Unmarshal(data, &byPath); err != nil {
		return err
	}
	*e = nil
	for _, path := range slices.Sorted(maps.Keys(byPath)) {
		*e = append(*e, Grounds{path, byPath[path]})
	}
	return nil
}
