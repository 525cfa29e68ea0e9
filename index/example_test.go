package index_test

import (
	"fmt"
	"os"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

// A note is taken in with what was read in it, and found again.
func ExampleStore_Find() {
	dir, err := os.MkdirTemp("", "barwise")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(dir)
	s, err := index.Open(dir)
	if err != nil {
		fmt.Println(err)
		return
	}
	defer s.Close()

	var w indextest.Writer
	w.Hive("3", time.Date(2026, 5, 14, 16, 0, 0, 0, time.UTC))
	w.Say("Bar 4 has eggs.", "bars.4.eggs=yes")
	w.Say("No eggs on bar 5.", "bars.5.eggs=no")
	v := w.Visit()
	if _, err := s.Take(v.Note, v.Read); err != nil {
		fmt.Println(err)
		return
	}

	hits, err := s.Find(index.Query{
		Where: []index.Clause{{{Path: "bars.*.eggs", Value: "no"}}},
		From:  colony.NewDate(2026, time.April, 1),
		Per:   index.Bars,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range hits.Hits {
		fmt.Printf("hive %s, %s, bar %d: %q\n", h.Hive, h.Day, h.Bar, h.Quotes[0].Text)
	}
	// Output: hive 3, 2026-05-14, bar 5: "No eggs on bar 5."
}
