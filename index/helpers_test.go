package index_test

import (
	"bytes"
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

func noon(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 12, 0, 0, 0, time.UTC) }

// write makes a visit to one hive from what was said.
func write(hive string, at time.Time, sentences ...[]string) indextest.Visit {
	var w indextest.Writer
	w.Hive(hive, at)
	for _, s := range sentences {
		w.Say(s[0], s[1:]...)
	}
	v := w.Visit()
	v.Note.Taken = at.Add(time.Hour)
	return v
}

func says(words string, leaves ...string) []string { return append([]string{words}, leaves...) }

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

func mustExport(t testing.TB, s *index.Store) string {
	t.Helper()
	var b bytes.Buffer
	if err := s.Export(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func ids(records []colony.Record) []string {
	list := []string{}
	for _, r := range records {
		list = append(list, r.ID)
	}
	return list
}

func collect(t testing.TB, s *index.Store, f index.Filter) []colony.Record {
	t.Helper()
	var list []colony.Record
	for r, err := range s.Records(f) {
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, r)
	}
	return list
}
