package index_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

func TestTake(t *testing.T) {
	t.Run("keeps the note byte for byte", func(t *testing.T) {
		s := indextest.MustOpen(t)
		v := write("3", noon(2026, 5, 14), says("eggs \xff\xfe on bar 4\x00\x1b[31m"))
		v.Note.Words = []colony.TimedWord{{Span: colony.Span{0, 4}, From: 1, To: 2}}
		mustTake(t, s, v)
		for _, get := range []func(string) (colony.Note, error){s.Note, s.Original} {
			got, err := get(v.Note.Hash)
			if err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(got, v.Note) {
				t.Errorf("got %+v\nwant %+v", got, v.Note)
			}
		}
	})
	t.Run("the records wait, in the order spoken, and say where they came from", func(t *testing.T) {
		s := indextest.MustOpen(t)
		v := indextest.Visits(1, 10, 4)[9]
		records := mustTake(t, s, v)
		if len(records) != 2 {
			t.Fatalf("%d records", len(records))
		}
		for i, r := range records {
			if r.State != colony.Waiting || r.Seq != i+1 || r.NoteHash != v.Note.Hash || r.Read.ID != r.ID ||
				r.Read.Source.Name != v.Note.Name || r.Read.Source.Seq != i+1 || !r.Changed.Equal(v.Note.Taken) {
				t.Errorf("record %d: %+v", i, r)
			}
			kept, err := s.Record(r.ID)
			if err != nil || !reflect.DeepEqual(kept, r) {
				t.Errorf("kept %+v, %v\nwant %+v", kept, err, r)
			}
		}
		if records[0].ID >= records[1].ID {
			t.Error("IDs do not rise within a note")
		}
		if of, err := s.OfNote(v.Note.Hash); err != nil || !slices.Equal(ids(of), ids(records)) {
			t.Errorf("of the note: %v, %v", ids(of), err)
		}
	})
	t.Run("the same note again is refused", func(t *testing.T) {
		s := indextest.MustOpen(t)
		v := write("3", noon(2026, 5, 14))
		mustTake(t, s, v)
		if _, err := s.Take(v.Note, v.Read); !errors.Is(err, index.ErrTaken) {
			t.Errorf("err = %v", err)
		}
		if known, err := s.Knows(v.Note.Hash); !known || err != nil {
			t.Error(known, err)
		}
		if n, _ := s.Counts(); n != (index.Counts{Notes: 1, Waiting: 1}) {
			t.Errorf("%+v", n)
		}
	})
	t.Run("a note without inspections, hash or time", func(t *testing.T) {
		at := noon(2026, 5, 1)
		s := indextest.MustOpen(t, index.Clock(func() time.Time { return at }))
		records, err := s.Take(indextest.NoteOf(""), nil)
		if err != nil || len(records) != 0 {
			t.Error(records, err)
		}
		if n, _ := s.Note(indextest.NoteOf("").Hash); !n.Taken.Equal(at) {
			t.Errorf("taken %v", n.Taken)
		}
		if _, err := s.Take(colony.Note{Text: "x"}, nil); err == nil {
			t.Error("a note without a hash was taken")
		}
	})
}

func TestClosed(t *testing.T) {
	s := indextest.Reopen(t, t.TempDir())
	v := write("3", noon(2026, 5, 14))
	r := mustTake(t, s, v)[0]
	for range 2 {
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
	_, errRecord := s.Record(r.ID)
	_, errFind := s.Find(index.Query{})
	for i, err := range []error{errRecord, errFind, s.Save(r)} {
		if err == nil || errors.Is(err, index.ErrDamaged) {
			t.Errorf("%d: %v", i, err)
		}
	}
}

func TestUnknown(t *testing.T) {
	s := indextest.MustOpen(t)
	_, errNote := s.Note("x")
	_, errRecord := s.Record("x")
	_, errHistory := s.History("x")
	errSave := s.Save(colony.Record{ID: "x"})
	errReread := s.Reread("x", nil)
	for i, err := range []error{errNote, errRecord, errHistory, errSave, errReread} {
		if !errors.Is(err, index.ErrUnknown) {
			t.Errorf("%d: %v", i, err)
		}
	}
}

func TestSave(t *testing.T) {
	now := noon(2026, 6, 1)
	s := indextest.MustOpen(t, index.Clock(func() time.Time { return now }))
	first := mustTake(t, s, write("3", noon(2026, 5, 14), says("eggs", "bars.4.eggs=yes")))[0]

	second := first
	second.Corrections = []colony.Correction{{Path: "hive", Value: "9", Was: "3"}}
	if err := s.Save(second); err != nil {
		t.Fatal(err)
	}
	second.Changed = now
	now = now.Add(time.Minute)
	third := second
	third.State = colony.Confirmed
	if err := s.Save(third); err != nil {
		t.Fatal(err)
	}
	third.Changed = now
	if err := s.Save(third); err != nil {
		t.Fatal(err)
	}
	history, err := s.History(first.ID)
	if err != nil || !reflect.DeepEqual(history, []colony.Record{first, second}) {
		t.Errorf("history %+v, %v", history, err)
	}
	if got, _ := s.Record(first.ID); !reflect.DeepEqual(got, third) {
		t.Errorf("got %+v", got)
	}
	if hives, _ := s.Hives(); !slices.Equal(hives, []string{"9"}) {
		t.Errorf("hives %q", hives)
	}
	if hits := mustFind(t, s, index.Query{Hive: "9", States: []colony.State{colony.Confirmed}}); hits.Total != 1 {
		t.Errorf("%d hits for the corrected hive", hits.Total)
	}
	third.Seq = 2
	if err := s.Save(third); err == nil {
		t.Error("a record moved within its note")
	}
}

func TestRecords(t *testing.T) {
	s := indextest.MustOpen(t)
	var all []colony.Record
	for _, v := range indextest.Visits(5, 150, 7) {
		all = append(all, mustTake(t, s, v)...)
	}
	for i := range all {
		if i%3 == 0 {
			all[i].State = colony.Confirmed
			if err := s.Save(all[i]); err != nil {
				t.Fatal(err)
			}
		}
	}
	day := func(y, m, d int) colony.Date { return colony.NewDate(y, time.Month(m), d) }
	for _, f := range []index.Filter{
		{},
		{Hive: "3"},
		{Hive: "none"},
		{States: []colony.State{colony.Waiting}},
		{States: []colony.State{colony.Confirmed, colony.SetAside}},
		{From: day(2024, 3, 15)},
		{To: day(2024, 4, 5)},
		{From: day(2024, 3, 15), To: day(2024, 3, 15)},
		{Hive: "2", States: []colony.State{colony.Waiting}, From: day(2024, 4, 1), To: day(2024, 6, 1)},
	} {
		var want []colony.Record
		for _, r := range all {
			d := colony.DateOf(r.Read.At)
			if (f.Hive == "" || r.Read.Hive == f.Hive) && (f.States == nil || slices.Contains(f.States, r.State)) &&
				(f.From.IsZero() || d.Compare(f.From) >= 0) && (f.To.IsZero() || d.Compare(f.To) <= 0) {
				want = append(want, r)
			}
		}
		slices.SortStableFunc(want, func(a, b colony.Record) int {
			if c := b.Read.At.Compare(a.Read.At); c != 0 {
				return c
			}
			return strings.Compare(b.ID, a.ID)
		})
		if got := ids(collect(t, s, f)); !slices.Equal(got, ids(want)) {
			t.Errorf("%+v: %d records, want %d:\n%v\n%v", f, len(got), len(want), got, ids(want))
		}
	}
	waiting, err := s.Waiting()
	if err != nil || len(waiting) == 0 || !slices.IsSortedFunc(waiting, func(a, b colony.Record) int { return a.Read.At.Compare(b.Read.At) }) {
		t.Errorf("waiting is not oldest first: %v", err)
	}
}

// A civil day is that of the inspection's own zone.
func TestRecordsAtTheEdgesOfADay(t *testing.T) {
	s := indextest.MustOpen(t)
	late := time.Date(2026, 5, 14, 23, 30, 0, 0, time.FixedZone("", -11*3600))
	early := time.Date(2026, 5, 14, 0, 30, 0, 0, time.FixedZone("", 14*3600))
	mustTake(t, s, write("late", late))
	mustTake(t, s, write("early", early))
	day := colony.DateOf(late)
	if got := collect(t, s, index.Filter{From: day, To: day}); len(got) != 2 {
		t.Errorf("%d records on the day", len(got))
	}
	if hits := mustFind(t, s, index.Query{From: day, To: day}); hits.Total != 2 {
		t.Errorf("%d hits on the day", hits.Total)
	}
}

func TestRecordsMayBeSavedWhileListing(t *testing.T) {
	s := indextest.MustOpen(t)
	for _, v := range indextest.Visits(2, 300, 3) {
		mustTake(t, s, v)
	}
	seen := 0
	for r, err := range s.Records(index.Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		seen++
		r.State = colony.Confirmed
		if err := s.Save(r); err != nil {
			t.Fatal(err)
		}
	}
	if n, _ := s.Counts(); n.Confirmed != seen || n.Waiting != 0 {
		t.Errorf("%+v after %d", n, seen)
	}
}

func TestHiveNamesDoNotRunIntoEachOther(t *testing.T) {
	s := indextest.MustOpen(t)
	names := []string{"a", "a\x00", "a\x00b", "ab", "ä", "\xffz"}
	for i, name := range names {
		v := write("x", noon(2026, 1, i+1), says(fmt.Sprint("The name is hard to write: ", i)))
		v.Read[0].Hive = name
		mustTake(t, s, v)
	}
	names[5] = "\ufffdz" // JSON has no other way to say it
	slices.Sort(names)
	if got, _ := s.Hives(); !slices.Equal(got, names) {
		t.Errorf("%q", got)
	}
	for _, name := range names {
		if got := collect(t, s, index.Filter{Hive: name}); len(got) != 1 || got[0].Read.Hive != name {
			t.Errorf("%q: %v", name, ids(got))
		}
	}
}

func TestSettings(t *testing.T) {
	s := indextest.MustOpen(t)
	type form struct{ Width int }
	got := form{7}
	if set, err := s.Setting("hive form", &got); set || err != nil || got.Width != 7 {
		t.Error(set, err, got)
	}
	if err := s.SetSetting("hive form", form{480}); err != nil {
		t.Fatal(err)
	}
	if set, err := s.Setting("hive form", &got); !set || err != nil || got.Width != 480 {
		t.Error(set, err, got)
	}
	if err := s.SetSetting("hive form", nil); err != nil {
		t.Fatal(err)
	}
	if set, _ := s.Setting("hive form", &got); set {
		t.Error("still set")
	}
	own := colony.OwnWords{Aliases: map[string]string{"bear": "bar"}, Plants: []string{"phacelia"}}
	if err := s.SetOwnWords(own); err != nil {
		t.Fatal(err)
	}
	if back, err := s.OwnWords(); err != nil || !reflect.DeepEqual(back, own) {
		t.Error(back, err)
	}
}

func TestModes(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("modes are not kept there")
	}
	dir := filepath.Join(t.TempDir(), "data", "barwise")
	s := indextest.Reopen(t, dir)
	mustTake(t, s, write("3", noon(2026, 5, 14)))
	if err := s.Rebuild(nil); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]os.FileMode{"": 0o700, index.StoreFile: 0o600, index.IndexDir: 0o700} {
		info, err := os.Stat(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if got := info.Mode().Perm(); got != want {
			t.Errorf("%q has mode %o, want %o", name, got, want)
		}
	}
}

func TestReadingLeavesTheBytesAlone(t *testing.T) {
	dir := t.TempDir()
	s := indextest.Reopen(t, dir)
	for _, v := range indextest.Visits(1, 30, 3) {
		mustTake(t, s, v)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	before := bytesOf(t, dir)
	for _, opts := range [][]index.Option{{index.ReadOnly()}, nil} {
		s := indextest.Reopen(t, dir, opts...)
		mustFind(t, s, index.Query{Words: "queen"})
		collect(t, s, index.Filter{})
		mustExport(t, s)
		indextest.MustAgree(t, s)
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		if after := bytesOf(t, dir); !reflect.DeepEqual(before, after) {
			t.Errorf("files changed: %v", opts)
		}
	}
}

// bytesOf reads all files under a directory.
func bytesOf(t *testing.T, dir string) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		files[path] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func TestReadOnly(t *testing.T) {
	dir := t.TempDir()
	v := write("3", noon(2026, 5, 14))
	s := indextest.Reopen(t, dir)
	r := mustTake(t, s, v)[0]
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	one := indextest.Reopen(t, dir, index.ReadOnly())
	defer one.Close()
	two := indextest.Reopen(t, dir, index.ReadOnly())
	defer two.Close()
	if hits := mustFind(t, two, index.Query{}); hits.Total != 1 {
		t.Errorf("%d hits", hits.Total)
	}
	r.State = colony.Confirmed
	for _, err := range []error{one.Save(r), one.SetSetting("x", 1), one.Rebuild(nil)} {
		if !errors.Is(err, index.ErrReadOnly) {
			t.Errorf("err = %v", err)
		}
	}
}

// What a record's words are hangs on the other records of its note: one that is
// set aside leaves its words to them, and the index sees it.
func TestSetAsideLeavesItsWordsToTheOthers(t *testing.T) {
	s := indextest.MustOpen(t)
	var w indextest.Writer
	w.Hive("3", noon(2026, 5, 1))
	w.Say("Queen seen.", "queen.seen=yes")
	w.Hive("4", noon(2026, 5, 1))
	w.Say("Chalkbrood.", "signs.chalkbrood=yes")
	records := mustTake(t, s, w.Visit())
	if hits := mustFind(t, s, index.Query{Words: "chalkbrood"}); hits.Total != 1 || hits.Hits[0].Hive != "4" {
		t.Fatalf("%+v", hits)
	}
	records[1].State = colony.SetAside
	save(t, s, records[1])
	if hits := mustFind(t, s, index.Query{Words: "chalkbrood"}); hits.Total != 1 || hits.Hits[0].Hive != "3" {
		t.Errorf("%+v", hits)
	}
	indextest.MustAgree(t, s)
}
