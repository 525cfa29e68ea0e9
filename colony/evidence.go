package colony

import (
	"encoding/json"
	"maps"
	"slices"
	"strconv"
	"strings"
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
// [start, end]. Each record that is kept or shown passes through here and through
// UnmarshalJSON, so neither leaves it to reflection.
func (e Evidence) MarshalJSON() ([]byte, error) {
	sorted := slices.Clone(e)
	slices.SortFunc(sorted, func(a, b Grounds) int { return strings.Compare(a.Path, b.Path) })
	out := append(make([]byte, 0, 48*len(e)+2), '{')
	for i := range sorted {
		if i > 0 {
			out = append(out, ',')
		}
		out = append(appendPath(out, sorted[i].Path), ':')
		out = appendSpans(out, sorted[i].Spans)
	}
	return append(out, '}'), nil
}

func appendPath(out []byte, path string) []byte {
	for i := range len(path) {
		if c := path[i]; c-'a' > 'z'-'a' && c-'#' > '_'-'#' || c == '<' || c == '>' || c == '&' || c == '\\' {
			quoted, _ := json.Marshal(path) // no leaf has such a path, but a file may say anything
			return append(out, quoted...)
		}
	}
	out = append(out, '"')
	out = append(out, path...)
	return append(out, '"')
}

func appendSpans(out []byte, spans []Span) []byte {
	out = append(out, '[')
	for i, s := range spans {
		if i > 0 {
			out = append(out, ',')
		}
		out = append(out, '[')
		out = strconv.AppendInt(out, int64(s[0]), 10)
		out = append(out, ',')
		out = strconv.AppendInt(out, int64(s[1]), 10)
		out = append(out, ']')
	}
	return append(out, ']')
}

// UnmarshalJSON reads what [Evidence.MarshalJSON] writes, and any other JSON of
// the same meaning.
func (e *Evidence) UnmarshalJSON(data []byte) error {
	plain := plainEvidence{data: string(data)}
	if plain.read(); plain.at == len(data) {
		*e = plain.out
		return nil
	}
	var read map[string][]Span
	if err := json.Unmarshal(data, &read); err != nil {
		return err
	}
	*e = nil
	for _, path := range slices.Sorted(maps.Keys(read)) {
		*e = append(*e, Grounds{path, read[path]})
	}
	return nil
}

// plainEvidence reads evidence as it is written here, without spaces, and stops
// where it is written otherwise.
type plainEvidence struct {
	data string
	at   int // all is read where it is the end
	out  Evidence
}

func (p *plainEvidence) read() {
	more := p.take('{')
	for more {
		path, ok := p.path()
		if !ok || !p.take(':') {
			return
		}
		spans, ok := p.spans()
		if !ok {
			return
		}
		p.out = append(p.out, Grounds{path, spans})
		more = p.take(',')
	}
	p.take('}')
}

func (p *plainEvidence) path() (string, bool) {
	if !p.take('"') {
		return "", false
	}
	from := p.at
	for p.at < len(p.data) && p.data[p.at] != '"' && p.data[p.at] != '\\' && p.data[p.at] < 0x80 {
		p.at++
	}
	return p.data[from:p.at], p.take('"')
}

func (p *plainEvidence) spans() ([]Span, bool) {
	if !p.take('[') {
		return nil, false
	}
	var out []Span
	for more := true; more; more = p.take(',') {
		var s Span
		if !(p.take('[') && p.number(&s[0]) && p.take(',') && p.number(&s[1]) && p.take(']')) {
			return nil, false
		}
		out = append(out, s)
	}
	return out, p.take(']')
}

func (p *plainEvidence) number(n *int) bool {
	from := p.at
	p.take('-')
	for p.at < len(p.data) && p.data[p.at]-'0' <= 9 {
		p.at++
	}
	var err error
	*n, err = strconv.Atoi(p.data[from:p.at])
	return err == nil
}

func (p *plainEvidence) take(c byte) bool {
	if p.at == len(p.data) || p.data[p.at] != c {
		return false
	}
	p.at++
	return true
}
