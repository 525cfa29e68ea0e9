package index

import (
	"strings"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search/query"
	bleveindex "github.com/blevesearch/bleve_index_api"
)

// found is the index's part of an answer.
type found struct {
	places []place
	total  int
	groups []Group
	terms  []Term
}

// search answers a query from the index, with the value of the leaf of the given
// path, if there is one. Where the words as given find
// nothing, it tries those spelt like the ones that the index does not know,
// and then those spelt like any of them.
func (s *Store) search(q Query, value string) (f found, err error) {
	m := s.words.idx.Mapping()
	err = s.words.read(func(reader bleveindex.IndexReader) error {
		c := compiler{mapping: m, reader: reader}
		if value != "" {
			if c.values, err = c.valuesOf(value); err != nil {
				return err
			}
		}
		terms := wordTerms(q.Words)
		if len(terms) == 0 && strings.TrimSpace(q.Words) != "" {
			return nil
		}
		f, err = c.run(q, terms)
		for _, all := range []bool{false, true} {
			if err != nil || f.total > 0 || len(terms) == 0 {
				return err
			}
			loose, err := c.loosen(terms, all)
			if err != nil {
				return err
			}
			if f, err = c.run(q, loose); err != nil {
				return err
			}
		}
		return nil
	})
	return f, err
}

// run executes a query with the words as they are.
func (c compiler) run(q Query, terms []Term) (found, error) {
	what, fits, err := c.plan(q, terms)
	if err != nil {
		return found{}, err
	}
	best := ranking{sort: q.Sort, limit: q.Limit}
	if q.Pick != All && q.Each == Together {
		best.limit, best.sort = 1, Newest
		if q.Pick == First {
			best.sort = Oldest
		}
	}
	if q.Each == Together && best.limit > 0 && best.sort != ByName && fits == nil {
		total, err := c.nearEnd(what, &best)
		return found{places: best.sorted(), total: total, terms: terms}, err
	}
	count := tally{by: q.Each, groups: map[string]*ends{}}
	err = c.visit(what, func(p place) {
		if fits != nil && !fits[p.order.number()] {
			return
		}
		count.add(p)
		if q.Pick == All || q.Each == Together {
			best.add(p)
		}
	})
	if err != nil {
		return found{}, err
	}
	if q.Each != Together {
		count.choose(q.Pick, &best)
	}
	return found{places: best.sorted(), total: count.total, groups: count.list(), terms: terms}, nil
}

// plan makes the index query. Where bars are asked for, what concerns the
// colony is asked first, and only the bars of inspections in fits are hits.
func (c compiler) plan(q Query, terms []Term) (what query.Query, fits map[number]bool, err error) {
	whole, err := c.frame(q, kindInspection)
	if err != nil {
		return nil, nil, err
	}
	bars, err := c.frame(q, kindBar)
	if err != nil {
		return nil, nil, err
	}
	colonyParts := len(terms)
	whole = append(whole, textQueries(terms)...)
	for _, clause := range q.Where {
		if q.Per == Bars && strings.HasPrefix(clause[0].Path, "bars.") {
			part, err := c.clause(clause, kindBar)
			if err != nil {
				return nil, nil, err
			}
			bars = append(bars, part)
			continue
		}
		part, err := c.clause(clause, kindInspection)
		if err != nil {
			return nil, nil, err
		}
		whole = append(whole, part)
		colonyParts++
	}
	if len(q.Without) > 0 {
		not := bleve.NewBooleanQuery()
		not.AddMust(termQuery(fieldKind, kindInspection))
		for _, clause := range q.Without {
			part, err := c.clause(clause, kindInspection)
			if err != nil {
				return nil, nil, err
			}
			not.AddMustNot(part)
		}
		whole = append(whole, not)
		colonyParts++
	}
	if q.Per == Inspections {
		return bleve.NewConjunctionQuery(whole...), nil, nil
	}
	if colonyParts > 0 {
		fits = map[number]bool{}
		err = c.visit(bleve.NewConjunctionQuery(whole...), func(p place) { fits[p.order.number()] = true })
	}
	return bleve.NewConjunctionQuery(bars...), fits, err
}
