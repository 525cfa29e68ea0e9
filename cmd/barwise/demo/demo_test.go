package demo

import (
	"io/fs"
	"path"
	"regexp"
	"slices"
	"testing"
	"time"
)

// TestNotesAreNamedByTime: the demo dates its notes by their names, so each
// name begins with one and no two share it with their hive.
func TestNotesAreNamedByTime(t *testing.T) {
	name := regexp.MustCompile(`^(20\d\d-\d\d-\d\d-\d{4})-[a-z-]+\.(txt|vtt)$`)
	files, err := fs.Glob(Notes, "notes/*")
	if err != nil || len(files) < 60 {
		t.Fatalf("%d notes, error %v; the demo has about 70", len(files), err)
	}
	seasons := map[int]int{}
	for _, file := range files {
		m := name.FindStringSubmatch(path.Base(file))
		if m == nil {
			t.Errorf("%s is not named time-hive", file)
			continue
		}
		at, err := time.Parse("2006-01-02-1504", m[1])
		if err != nil {
			t.Errorf("%s: %v", file, err)
		}
		seasons[at.Year()]++
	}
	if !slices.IsSorted(files) || seasons[2025] < 25 || seasons[2026] < 25 || len(seasons) != 2 {
		t.Errorf("notes by season: %v; want two seasons of 25 or more", seasons)
	}
}
