package index

import (
	"errors"
	"strings"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/mapping"
	"github.com/blevesearch/bleve/v2/search/query"
	bleveindex "github.com/blevesearch/bleve_index_api"

	"barwise/colony"
)

// compiler makes index queries out of a Query. It looks into the index's
// dictionary, so that a comparison becomes the list of terms that fulfil it.
type compiler struct {
	mapping mapping.IndexMapping
	reader  bleveindex.IndexReader
	values  map[uint64]string // of the leaf that is asked for, by the index's number of an entry
}

func termQuery(field, term string) query.Query {
	q := bleve.NewTermQuery(term)
	q.SetField(field)
	return q
}

func anyOf(list []query.Query) query.Query {
	switch len(list) {
	case 0:
		return bleve.NewMatchNoneQuery()
	case 1:
		return list[0]
	}
	return bleve.NewDisjunctionQuery(list...)
}

// frame is what a query says of hive, day and state, for entries of one kind.
func (c compiler) frame(q Query, kind string) ([]query.Query, error) {
	parts := []query.Query{termQuery(fieldKind, kind)}
	if q.Hive != "" {
		parts = append(parts, termQuery(fieldHive, q.Hive))
	}
	states := q.States
	if len(states) == 0 {
		states = []colony.State{colony.Confirmed, colony.Waiting}
	}
	var list []query.Query
	for _, state := range states {
		list = append(list, termQuery(fieldState, string(state)))
	}
	parts = append(parts, anyOf(list))
	if !q.From.IsZero() || !q.To.IsZero() {
		last := "9999-99-99"
		if !q.To.IsZero() {
			last = q.To.String()
		}
		stretch, err := c.daysBetween(q.From.String(), last)
		if err != nil {
			return nil, err
		}
		parts = append(parts, stretch)
	}
	return parts, nil
}

// daysBetween finds the entries of a stretch of days, both ends included, by the
// years and months that lie in it whole, and by the days at its ends.
func (c compiler) daysBetween(from, to string) (query.Query, error) {
	padded := func(term, tail string) string { return term + tail[len(term)-len(yearForm):] }
	var list []query.Query
	covered := "-" // the year or month taken last
	err := c.eachTerm(fieldDay, "", func(term string) error {
		// In their order a year stands before its months, and a month before its days.
		if !strings.HasPrefix(term, covered) && padded(term, "-01-01") >= from && padded(term, "-12-31") <= to {
			covered = term
			list = append(list, termQuery(fieldDay, term))
		}
		return nil
	})
	return anyOf(list), err
}

// clause compiles the alternatives of one clause, for entries of one kind.
func (c compiler) clause(clause Clause, kind string) (query.Query, error) {
	var list []query.Query
	for _, cond := range clause {
		q, err := c.condition(cond, kind)
		if err != nil {
			return nil, err
		}
		list = append(list, q)
	}
	return anyOf(list), nil
}

func (c compiler) condition(cond Condition, kind string) (query.Query, error) {
	var bar query.Query
	if kind == kindBar {
		number, rest, _ := barPath(cond.Path)
		cond.Path = rest
		if number != "*" {
			bar = termQuery(fieldBar, barTerm(number))
		}
	}
	terms, err := c.terms(cond)
	if err != nil {
		return nil, err
	}
	q := anyOf(terms)
	if cond.Op == Silent {
		not := bleve.NewBooleanQuery()
		not.AddMust(termQuery(fieldKind, kind))
		not.AddMustNot(q)
		q = not
	}
	if bar != nil {
		q = bleve.NewConjunctionQuery(bar, q)
	}
	return q, nil
}

// terms lists the index's terms that fulfil a condition; for Silent, those
// that break it.
func (c compiler) terms(cond Condition) ([]query.Query, error) {
	path := plainPath(cond.Path)
	fixed := literalPart(path)
	if fixed == path && cond.Op == Is {
		switch cond.Value {
		case "yes":
			return []query.Query{termQuery(fieldPresent, path)}, nil
		case "no":
			return []query.Query{termQuery(fieldDenied, path)}, nil
		}
	}
	if cond.Op == Silent {
		cond.Op = Said
	}
	var list []query.Query
	for _, source := range []struct{ field, value string }{{fieldPresent, "yes"}, {fieldDenied, "no"}, {fieldValue, ""}} {
		err := c.eachTerm(source.field, fixed, func(term string) error {
			leaf, value := term, source.value
			if source.field == fieldValue {
				leaf, value, _ = strings.Cut(term, "=")
			}
			if cond.Covers(leaf) && anyBarOnly(path, leaf) && cond.holds(value) {
				list = append(list, termQuery(source.field, term))
			}
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	return list, nil
}

// literalPart is the beginning of a pattern that terms share with it.
func literalPart(path string) string {
	const anyBar = "bars.*."
	start := 0
	if strings.HasPrefix(path, anyBar) {
		start = len(anyBar)
	}
	if at := strings.IndexByte(path[start:], '*'); at >= 0 {
		return path[:start+at]
	}
	return path
}

// anyBarOnly skips the numbered bars' terms, for which a bars.* term stands.
func anyBarOnly(pattern, leaf string) bool {
	return !strings.HasPrefix(leaf, "bars.") || strings.HasPrefix(leaf, "bars.*.") == strings.HasPrefix(pattern, "bars.*.")
}

func (c compiler) eachTerm(field, prefix string, f func(term string) error) error {
	dict, err := c.reader.FieldDictPrefix(field, []byte(prefix))
	if err != nil {
		return err
	}
	return eachOf(dict, func(e *bleveindex.DictEntry) error { return f(e.Term) })
}

// eachOf calls f for every term of a dictionary, in order, and closes it.
func eachOf(dict bleveindex.FieldDict, f func(*bleveindex.DictEntry) error) (err error) {
	defer func() { err = errors.Join(err, dict.Close()) }()
	for {
		e, err := dict.Next()
		if err != nil || e == nil {
			return err
		}
		if err := f(e); err != nil {
			return err
		}
	}
}
