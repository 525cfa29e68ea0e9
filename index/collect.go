package index

import (
	"cmp"
	"container/heap"
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/mapping"
	"github.com/blevesearch/bleve/v2/search"
	"github.com/blevesearch/bleve/v2/search/query"
	bleveindex "github.com/blevesearch/bleve_index_api"

	"barwise/colony"
)

// place is a hit as the index tells it.
type place struct {
	order string // see orderKey
	bar   string // see barTerm
}

func (p place) number() int {
	n, _ := strconv.Atoi(p.bar)
	return n
}

// visit calls f for every entry that the query finds, in no order.
func visit(reader bleveindex.IndexReader, m mapping.IndexMapping, q query.Query, f func(place)) (err error) {
	ctx := context.Background()
	searcher, err := q.Searcher(ctx, reader, m, search.SearcherOptions{Score: "none"})
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, searcher.Close()) }()
	values, err := reader.DocValueReader([]string{fieldOrder, fieldBar})
	if err != nil {
		return err
	}
	search := &search.SearchContext{DocumentMatchPool: search.NewDocumentMatchPool(searcher.DocumentMatchPoolSize()+1, 0), IndexReader: reader}
	for {
		match, err := searcher.Next(search)
		if err != nil || match == nil {
			return err
		}
		var p place
		if err := values.VisitDocValues(match.IndexInternalID, func(field string, term []byte) {
			if field == fieldOrder {
				p.order = string(term)
			} else {
				p.bar = string(term)
			}
		}); err != nil {
			return err
		}
		search.DocumentMatchPool.Put(match)
		f(p)
	}
}

// ranking keeps the best places, the worst of them on top; limit 0 keeps all.
type ranking struct {
	places []place
	oldest bool
	limit  int
}

// before orders hits: by time, then by ID, and the bars of an inspection as
// they hang.
func (r *ranking) before(a, b place) int {
	if order := strings.Compare(a.order, b.order); order != 0 {
		if r.oldest {
			return order
		}
		return -order
	}
	return cmp.Compare(a.bar, b.bar)
}

func (r *ranking) Len() int           { return len(r.places) }
func (r *ranking) Less(i, j int) bool { return r.before(r.places[i], r.places[j]) > 0 }
func (r *ranking) Swap(i, j int)      { r.places[i], r.places[j] = r.places[j], r.places[i] }
func (r *ranking) Push(x any)         { r.places = append(r.places, x.(place)) }
func (r *ranking) Pop() any {
	last := r.places[len(r.places)-1]
	r.places = r.places[:len(r.places)-1]
	return last
}

func (r *ranking) add(p place) {
	switch {
	case r.limit == 0:
		r.places = append(r.places, p)
	case len(r.places) < r.limit:
		heap.Push(r, p)
	case r.before(p, r.places[0]) < 0:
		r.places[0] = p
		heap.Fix(r, 0)
	}
}

func (r *ranking) sorted() []place {
	slices.SortFunc(r.places, r.before)
	return r.places
}

// tally counts hits by group, and remembers each group's ends.
type tally struct {
	by     Grouping
	total  int
	groups map[string]*ends
}

type ends struct {
	count       int
	first, last place
}

func (t *tally) add(p place) {
	t.total++
	if t.by == Together {
		return
	}
	key := t.key(p)
	g := t.groups[key]
	if g == nil {
		g = &ends{first: p, last: p}
		t.groups[key] = g
	}
	g.count++
	if p.order < g.first.order || p.order == g.first.order && p.bar < g.first.bar {
		g.first = p
	}
	if p.order > g.last.order || p.order == g.last.order && p.bar < g.last.bar {
		g.last = p
	}
}

func (t *tally) key(p place) string {
	o := orderOf(p.order)
	width := map[Grouping]int{ByYear: 4, ByMonth: 7, ByDay: 10}[t.by]
	if t.by == ByHive {
		return o.hive
	}
	return o.day[:min(width, len(o.day))]
}

func (t *tally) list() []Group {
	var list []Group
	for key, g := range t.groups {
		list = append(list, Group{Key: key, Count: g.count, First: dayOf(g.first), Last: dayOf(g.last)})
	}
	slices.SortFunc(list, func(a, b Group) int { return strings.Compare(a.Key, b.Key) })
	return list
}

func dayOf(p place) colony.Date {
	d, _ := colony.ParseDate(orderOf(p.order).day)
	return d
}

// found is the index's part of an answer.
type found struct {
	places []place
	total  int
	groups []Group
	terms  []Term
}

// search answers a query from the index. Where the words as given find
// nothing, it tries those spelt like the ones that the index does not know,
// and then those spelt like any of them.
func (s *Store) search(q Query) (f found, err error) {
	m := s.words.idx.Mapping()
	err = s.words.read(func(reader bleveindex.IndexReader) error {
		c := compiler{mapping: m, reader: reader}
		terms := c.wordTerms(q.Words)
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
	limit := q.Limit
	if q.Pick != All && q.Each == Together {
		limit = 1
	}
	best := ranking{oldest: q.Oldest || q.Pick == First, limit: limit}
	count := tally{by: q.Each, groups: map[string]*ends{}}
	chosen := q.Pick == All || q.Each == Together
	err = visit(c.reader, c.mapping, what, func(p place) {
		if fits != nil && !fits[orderOf(p.order).id] {
			return
		}
		count.add(p)
		if chosen {
			best.add(p)
		}
	})
	if err != nil {
		return found{}, err
	}
	if !chosen {
		best.oldest = q.Oldest
		for _, g := range count.groups {
			if q.Pick == First {
				best.add(g.first)
			} else {
				best.add(g.last)
			}
		}
	}
	return found{places: best.sorted(), total: count.total, groups: count.list(), terms: terms}, nil
}

// plan makes the index query. Where bars are asked for, what concerns the
// colony is asked first, and only the bars of inspections in fits are hits.
func (c compiler) plan(q Query, terms []Term) (what query.Query, fits map[string]bool, err error) {
	whole := c.frame(q, kindInspection)
	bars := c.frame(q, kindBar)
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
	if q.Per == Inspections {
		return bleve.NewConjunctionQuery(whole...), nil, nil
	}
	if colonyParts > 0 {
		fits = map[string]bool{}
		err = visit(c.reader, c.mapping, bleve.NewConjunctionQuery(whole...), func(p place) { fits[orderOf(p.order).id] = true })
	}
	return bleve.NewConjunctionQuery(bars...), fits, err
}
