package index

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search"
	"github.com/blevesearch/bleve/v2/search/query"
	bleveindex "github.com/blevesearch/bleve_index_api"
)

// visit calls f for every entry that the query finds, in no order.
func (c compiler) visit(q query.Query, f func(place)) error {
	values, err := c.reader.DocValueReader([]string{fieldOrder, fieldBar})
	if err != nil {
		return err
	}
	return c.each(q, func(id bleveindex.IndexInternalID) error {
		p := place{value: c.values[binary.BigEndian.Uint64(id)]}
		err := values.VisitDocValues(id, func(field string, term []byte) {
			if field == fieldOrder {
				p.order = order(term)
			} else {
				p.bar = string(term)
			}
		})
		if err == nil && len(p.order) < orderHive {
			err = fmt.Errorf("entry %x has no place in time", id)
		}
		if err == nil {
			f(p)
		}
		return err
	})
}

// valuesOf reads what a leaf says in all entries.
func (c compiler) valuesOf(path string) (map[uint64]string, error) {
	values := map[uint64]string{}
	err := c.eachTerm(fieldValue, path+"=", func(term string) error {
		return eachPosting(c.reader, fieldValue, term, func(doc uint64) { values[doc] = term[len(path)+1:] })
	})
	return values, err
}

// eachPosting calls f with the index's number of every entry that has the term.
func eachPosting(reader bleveindex.IndexReader, field, term string, f func(doc uint64)) (err error) {
	postings, err := reader.TermFieldReader(context.Background(), []byte(term), field, false, false, false)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, postings.Close()) }()
	var doc bleveindex.TermFieldDoc
	for {
		next, err := postings.Next(&doc)
		if err != nil || next == nil {
			return err
		}
		f(binary.BigEndian.Uint64(next.ID))
	}
}

// count counts the entries that the query finds.
func (c compiler) count(q query.Query) (n int, err error) {
	err = c.each(q, func(bleveindex.IndexInternalID) error {
		n++
		return nil
	})
	return n, err
}

// each calls f for every entry that the query finds, by the index's own number.
func (c compiler) each(q query.Query, f func(bleveindex.IndexInternalID) error) (err error) {
	searcher, err := q.Searcher(context.Background(), c.reader, c.mapping, search.SearcherOptions{Score: "none"})
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, searcher.Close()) }()
	pool := search.NewDocumentMatchPool(searcher.DocumentMatchPoolSize()+1, 0)
	ctx := &search.SearchContext{DocumentMatchPool: pool, IndexReader: c.reader}
	for {
		match, err := searcher.Next(ctx)
		if err != nil || match == nil {
			return err
		}
		if err := f(match.IndexInternalID); err != nil {
			return err
		}
		pool.Put(match)
	}
}

// nearEnd fills a ranking that has a limit. It looks at the days nearest to
// the end that is asked for, and at more and more of them until they hold
// enough hits: to read when every hit took place is much dearer than to count
// them.
func (c compiler) nearEnd(what query.Query, best *ranking) (total int, err error) {
	if total, err = c.count(what); err != nil {
		return 0, err
	}
	days, err := c.days(best.sort == Oldest)
	if err != nil {
		return 0, err
	}
	for entries, taken := 2000, 0; taken < len(days) && len(best.places) < min(best.limit, total); entries *= 4 {
		first, sum := taken, 0
		for taken < len(days) && (sum < entries || taken == first) {
			sum += days[taken].entries
			taken++
		}
		from, to := days[first].day, days[taken-1].day
		if best.sort != Oldest {
			from, to = to, from
		}
		stretch, err := c.daysBetween(from, to)
		if err != nil {
			return 0, err
		}
		if err := c.visit(bleve.NewConjunctionQuery(what, stretch), best.add); err != nil {
			return 0, err
		}
	}
	return total, nil
}

// dayCount is a day with how many entries it has in the index.
type dayCount struct {
	day     string
	entries int
}

// days lists the days of all inspections, the newest first or the oldest.
func (c compiler) days(oldest bool) (list []dayCount, err error) {
	dict, err := c.reader.FieldDict(fieldDay)
	if err != nil {
		return nil, err
	}
	err = eachOf(dict, func(e *bleveindex.DictEntry) error {
		if len(e.Term) == len(dayForm) {
			list = append(list, dayCount{e.Term, int(e.Count)})
		}
		return nil
	})
	if !oldest {
		slices.Reverse(list)
	}
	return list, err
}
