package index_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"barwise/index"
	"barwise/index/indextest"
)

// BenchmarkTake takes in typed notes of some 460 bytes, one transaction each.
func BenchmarkTake(b *testing.B) {
	s := indextest.Reopen(b, b.TempDir())
	defer s.Close()
	for i := 0; b.Loop(); i++ {
		b.StopTimer()
		v := indextest.MakeVisit(1, i, 50)
		b.StartTimer()
		mustTake(b, s, v)
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "notes/s")
}

// large opens a store of BARWISE_BENCH_VISITS visits (10,000 where that is not
// set) by 200 keepers. BARWISE_BENCH_DIR keeps it for the next run.
func large(b *testing.B) (s *index.Store, dir string) {
	b.Helper()
	n := 10000
	if text := os.Getenv("BARWISE_BENCH_VISITS"); text != "" {
		var err error
		if n, err = strconv.Atoi(text); err != nil {
			b.Fatal(err)
		}
	}
	dir = b.TempDir()
	if kept := os.Getenv("BARWISE_BENCH_DIR"); kept != "" {
		dir = filepath.Join(kept, fmt.Sprint("visits-", n))
	}
	s = indextest.Reopen(b, dir)
	counts, err := s.Counts()
	if err != nil {
		b.Fatal(err)
	}
	for i := counts.Notes; i < n; i++ {
		mustTake(b, s, indextest.MakeVisit(1, i, 1000))
	}
	if counts.Notes < n {
		if err := s.Rebuild(nil); err != nil {
			b.Fatal(err)
		}
	}
	return s, dir
}

var questions = map[string]index.Query{
	"word":         {Words: "chalkbrood", Limit: 20},
	"words":        {Words: "queen seen", Limit: 20},
	"misspelt":     {Words: "chalkbrod", Limit: 20},
	"hive":         {Hive: "17", Limit: 20},
	"condition":    {Where: []index.Clause{is("queen.seen", "no")}, Limit: 20},
	"at most":      {Where: []index.Clause{op("temper.score", index.AtMost, "2")}, Limit: 20},
	"bars":         {Where: []index.Clause{is("bars.*.drone_brood", "yes")}, Per: index.Bars, Limit: 20},
	"same bar":     {Where: []index.Clause{is("bars.*.eggs", "yes"), is("bars.*.pollen", "yes")}, Per: index.Bars, Limit: 20},
	"first a year": {Where: []index.Clause{is("incoming.pollen", "yes")}, Each: index.ByYear, Pick: index.First},
	"last":         {Where: []index.Clause{is("queen.seen", "yes")}, Hive: "17", Pick: index.Last},
}

// BenchmarkFind asks an open store.
func BenchmarkFind(b *testing.B) {
	s, _ := large(b)
	defer s.Close()
	for name, q := range questions {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				mustFind(b, s, q)
			}
		})
	}
}

// BenchmarkOpenAndFind opens the store for each question, as a process does.
func BenchmarkOpenAndFind(b *testing.B) {
	s, dir := large(b)
	if err := s.Close(); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		s := indextest.Reopen(b, dir, index.ReadOnly())
		mustFind(b, s, questions["words"])
		if err := s.Close(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRebuild builds the index anew, and reports its size.
func BenchmarkRebuild(b *testing.B) {
	s, dir := large(b)
	defer s.Close()
	for b.Loop() {
		if err := s.Rebuild(nil); err != nil {
			b.Fatal(err)
		}
	}
	var size int64
	files, err := filepath.Glob(filepath.Join(dir, index.IndexDir, "store", "*"))
	if err != nil {
		b.Fatal(err)
	}
	for _, file := range files {
		info, err := os.Stat(file)
		if err != nil {
			b.Fatal(err)
		}
		size += info.Size()
	}
	b.ReportMetric(float64(size)/(1<<20), "MiB")
}
