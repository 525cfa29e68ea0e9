package index

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// An older store goes through each step up to the present version, and all of
// them or none are kept.
func TestMigrate(t *testing.T) {
	steps := func(names *[]string, fail bool) map[int]func(*bolt.Tx) error {
		step := func(name string) func(*bolt.Tx) error {
			return func(tx *bolt.Tx) error {
				*names = append(*names, name)
				if fail && name == "1 to 2" {
					return errors.New("no")
				}
				return tx.Bucket(bucketSettings).Put([]byte(name), []byte("1"))
			}
		}
		return map[int]func(*bolt.Tx) error{0: step("0 to 1"), 1: step("1 to 2"), 2: step("2 to 3")}
	}
	for name, c := range map[string]struct {
		from, to int
		fail     bool
		ran      string
		version  int
	}{
		"from the first":       {0, 3, false, "0 to 1,1 to 2,2 to 3", 3},
		"from the one before":  {2, 3, false, "2 to 3", 3},
		"nothing to do":        {3, 3, false, "", 3},
		"a step fails":         {0, 3, true, "0 to 1,1 to 2", 0},
		"a step there is none": {-1, 3, false, "", -1},
	} {
		t.Run(name, func(t *testing.T) {
			db, err := bolt.Open(filepath.Join(t.TempDir(), StoreFile), 0o600, nil)
			if err != nil {
				t.Fatal(err)
			}
			defer db.Close()
			if err := db.Update(func(tx *bolt.Tx) error { return errors.Join(create(tx), writeVersion(tx, c.from)) }); err != nil {
				t.Fatal(err)
			}
			var ran []string
			err = db.Update(func(tx *bolt.Tx) error { return migrate(tx, c.from, c.to, steps(&ran, c.fail)) })
			if (err != nil) != (c.version != c.to) || strings.Join(ran, ",") != c.ran {
				t.Errorf("ran %v: %v", ran, err)
			}
			err = db.View(func(tx *bolt.Tx) error {
				version, err := readVersion(tx)
				if version != c.version {
					t.Errorf("version %d, want %d", version, c.version)
				}
				if n := countKeys(tx.Bucket(bucketSettings)); c.version != c.to && n > 0 {
					t.Errorf("%d steps of a migration that failed were kept", n)
				}
				return err
			})
			if err != nil {
				t.Error(err)
			}
		})
	}
}

// Open migrates a store that is older, also where it is asked to read only.
func TestOpenMigrates(t *testing.T) {
	migrations[0] = func(tx *bolt.Tx) error { return tx.Bucket(bucketSettings).Put([]byte("migrated"), []byte("true")) }
	defer delete(migrations, 0)
	for _, opts := range [][]Option{nil, {ReadOnly()}} {
		dir := t.TempDir()
		s, err := Open(dir)
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		SetVersion(t, filepath.Join(dir, StoreFile), 0)
		if s, err = Open(dir, opts...); err != nil {
			t.Fatal(err)
		}
		var done bool
		if set, err := s.Setting("migrated", &done); !set || !done || err != nil {
			t.Error(set, done, err)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

func TestOlderThanAnyIsRefused(t *testing.T) {
	dir := t.TempDir()
	s, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	SetVersion(t, filepath.Join(dir, StoreFile), 0)
	if _, err := Open(dir); !errors.Is(err, ErrDamaged) || !strings.Contains(err.Error(), "never released") {
		t.Errorf("err = %v", err)
	}
}

// The size that the first pages promise is what bbolt uses of the file.
func TestPromisedSize(t *testing.T) {
	path := filepath.Join(t.TempDir(), StoreFile)
	for _, pageSize := range []int{1024, 4096, 16384} {
		os.Remove(path)
		db, err := bolt.Open(path, 0o600, &bolt.Options{PageSize: pageSize})
		if err != nil {
			t.Fatal(err)
		}
		for i := range 5 {
			var size int64
			err := db.Update(func(tx *bolt.Tx) error {
				b, err := tx.CreateBucketIfNotExists([]byte("b"))
				return errors.Join(err, b.Put([]byte{byte(i)}, make([]byte, 10000*i)))
			})
			if err != nil {
				t.Fatal(err)
			}
			if err := db.View(func(tx *bolt.Tx) error { size = tx.Size(); return nil }); err != nil {
				t.Fatal(err)
			}
			f, err := os.Open(path)
			if err != nil {
				t.Fatal(err)
			}
			if got, err := promisedSize(f); got != size || err != nil {
				t.Errorf("pages of %d, write %d: %d, %v, want %d", pageSize, i, got, err, size)
			}
			f.Close()
		}
		db.Close()
	}
}

// A panic of our own is no damage of the store.
func TestGuardedLetsOurPanicsPass(t *testing.T) {
	defer func() {
		if p := recover(); p != "ours" {
			t.Errorf("recovered %v", p)
		}
	}()
	_ = guarded("x", func() error { panic("ours") })
}

func TestTimeKeySortsAsTime(t *testing.T) {
	times := []time.Time{{}, time.Unix(-1, 0), time.Unix(0, 0), time.Unix(0, 1), time.Date(2026, 5, 14, 1, 0, 0, 0, time.FixedZone("", 7200)),
		time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC), time.Date(9999, 12, 31, 0, 0, 0, 0, time.UTC), time.Unix(math.MaxInt32, 5)}
	slices.SortFunc(times, time.Time.Compare)
	for i := 1; i < len(times); i++ {
		if bytes.Compare(timeKey(times[i-1]), timeKey(times[i])) >= 0 {
			t.Errorf("%v does not sort before %v", times[i-1], times[i])
		}
	}
}

func TestOrderKey(t *testing.T) {
	at := time.Date(2026, 5, 14, 23, 0, 0, 1, time.FixedZone("", -3600))
	o := order(orderKey(at, 4711, "käfer / 3"))
	if o.day() != "2026-05-14" || o.number() != 4711 || o.hive() != "käfer / 3" {
		t.Error(o.day(), o.number(), o.hive())
	}
	if a, b := orderKey(at, 0xff, ""), orderKey(at, 0x100, ""); a >= b {
		t.Error("numbers do not sort")
	}
}

func TestStretches(t *testing.T) {
	record := func(id string, state colony.State, spans ...colony.Span) colony.Record {
		return colony.Record{ID: id, State: state, Read: colony.Inspection{Evidence: colony.Evidence{{Path: "x", Spans: spans}}}}
	}
	shared := colony.Span{0, 5}
	a := record("a", colony.Waiting, shared, colony.Span{10, 12}, colony.Span{40, 45})
	b := record("b", colony.Waiting, shared, colony.Span{20, 22}, colony.Span{60, 61}, colony.Span{-3, 4}, colony.Span{900, 999})
	none := record("c", colony.Waiting)
	aside := record("d", colony.SetAside, colony.Span{10, 12})
	for name, c := range map[string]struct {
		records []colony.Record
		id      string
		want    []colony.Span
	}{
		"alone":                            {[]colony.Record{a}, "a", []colony.Span{{0, 100}}},
		"with what comes before":           {[]colony.Record{a, b}, "a", []colony.Span{{0, 20}, {40, 60}}},
		"the other":                        {[]colony.Record{a, b}, "b", []colony.Span{{0, 10}, {20, 40}, {60, 100}}},
		"no evidence":                      {[]colony.Record{a, none}, "c", nil},
		"one that was set aside":           {[]colony.Record{b, aside}, "b", []colony.Span{{0, 100}}},
		"one that was set aside, as asked": {[]colony.Record{b, aside}, "d", []colony.Span{{10, 20}}},
	} {
		if got := stretches(100, c.records, c.id); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

func TestShift(t *testing.T) {
	for name, c := range map[string]struct {
		old, edited string
		span        colony.Span
		want        string // the words that the span stands for after the edit, "" where it is dropped
	}{
		"before":          {"eggs on bar four", "eggs on bar five", colony.Span{0, 4}, "eggs"},
		"after":           {"bar four has eggs", "bar fourteen has eggs", colony.Span{13, 17}, "eggs"},
		"within":          {"bar four has eggs", "bar five has eggs", colony.Span{4, 8}, ""},
		"around":          {"bar four has eggs", "bar five has eggs", colony.Span{0, 17}, ""},
		"nothing changed": {"eggs", "eggs", colony.Span{0, 4}, "eggs"},
		"all gone":        {"eggs", "", colony.Span{0, 4}, ""},
		"inserted before": {"eggs", "no eggs", colony.Span{0, 4}, "eggs"},
		"appended":        {"eggs", "eggs, eggs", colony.Span{0, 4}, "eggs"},
	} {
		span, ok := shiftBetween(c.old, c.edited).of(c.span)
		if got := c.edited[span[0]:span[1]]; ok != (c.want != "") || got != c.want {
			t.Errorf("%s: %q, %v", name, got, ok)
		}
	}
}
