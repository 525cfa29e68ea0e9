package index_test

import (
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

func noon(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 12, 0, 0, 0, time.UTC) }

// mustTake takes a visit in and returns its records.
func mustTake(t testing.TB, s *index.Store, v indextest.Visit) []colony.Record {
	t.Helper()
	records, err := s.Take(v.Note, v.Read)
	if err != nil {
		t.Fatalf("take: %v", err)
	}
	return records
}

func mustFind(t testing.TB, s *index.Store, q index.Query) index.Hits {
	t.Helper()
	hits, err := s.Find(q)
	if err != nil {
		t.Fatalf("find %+v: %v", q, err)
	}
	return hits
}

func TestSmoke(t *testing.T) {
	s := indextest.MustOpen(t)
	for _, v := range indextest.Visits(1, 100, 5) {
		mustTake(t, s, v)
	}
	hits := mustFind(t, s, index.Query{Words: "chalkbrod", Limit: 3})
	for _, h := range hits.Hits {
		t.Logf("%+v %+v", h.Day, h.Quotes)
	}
	t.Log(hits.Total, hits.Terms)
	hits = mustFind(t, s, index.Query{Where: []index.Clause{{{Path: "bars.*.drone_brood", Value: "yes"}}}, Per: index.Bars, Limit: 3})
	for _, h := range hits.Hits {
		t.Logf("%+v %d %+v", h.Day, h.Bar, h.Quotes)
	}
	t.Log(hits.Total, hits.Terms)
}
