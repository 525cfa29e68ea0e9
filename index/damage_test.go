package index_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

// filled makes a closed store and returns its directory.
func filled(t *testing.T, visits int) string {
	t.Helper()
	dir := t.TempDir()
	s := indextest.Reopen(t, dir)
	for _, v := range indextest.Visits(4, visits, 5) {
		mustTake(t, s, v)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return dir
}

// refused checks that a store is not opened, with the right error and words
// that name the file, and that its file stays as it is.
func refused(t *testing.T, dir string, want error, words ...string) {
	t.Helper()
	path := filepath.Join(dir, index.StoreFile)
	before, _ := os.ReadFile(path)
	// Reading comes first: a panic in the midst of opening to write leaves the
	// lock with the process until it ends.
	for _, opts := range [][]index.Option{{index.ReadOnly()}, {}} {
		s, err := index.Open(dir, append(opts, index.LockWait(50*time.Millisecond))...)
		if err == nil {
			s.Close()
		}
		if !errors.Is(err, want) {
			t.Errorf("err = %v, want %v", err, want)
			continue
		}
		for _, word := range append(words, path) {
			if !strings.Contains(err.Error(), word) {
				t.Errorf("%q does not say %q", err, word)
			}
		}
	}
	if after, _ := os.ReadFile(path); string(after) != string(before) {
		t.Error("the file was changed")
	}
}

func TestLocked(t *testing.T) {
	dir := t.TempDir()
	s := indextest.Reopen(t, dir)
	refused(t, dir, index.ErrLocked, "close the other")
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	indextest.Reopen(t, dir).Close()
}

func TestNewer(t *testing.T) {
	dir := filled(t, 1)
	index.SetVersion(t, filepath.Join(dir, index.StoreFile), 99)
	refused(t, dir, index.ErrNewer, "99", "update barwise")
}

func TestDamagedStore(t *testing.T) {
	whole, err := os.ReadFile(filepath.Join(filled(t, 40), index.StoreFile))
	if err != nil {
		t.Fatal(err)
	}
	zeroed := func(from, to int) []byte {
		data := append([]byte(nil), whole...)
		clear(data[from:to])
		return data
	}
	for name, data := range map[string][]byte{
		"cut in half":           whole[:len(whole)/2],
		"cut after a page":      whole[:4096],
		"cut within a page":     whole[:len(whole)/2+100],
		"a few bytes":           whole[:10],
		"text":                  []byte(strings.Repeat("these are not the bytes you want. ", 2000)),
		"first pages cleared":   zeroed(0, 8192),
		"zeros":                 make([]byte, 65536),
		"all after the metas":   zeroed(8192, len(whole)),
		"another bbolt's magic": append([]byte("\x00\x00\x00\x00"), whole[4:]...)[:4096],
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			if err := os.WriteFile(filepath.Join(dir, index.StoreFile), data, 0o600); err != nil {
				t.Fatal(err)
			}
			refused(t, dir, index.ErrDamaged, "restore a backup")
		})
	}
}

// inUse reports whether a page of the store's file holds anything.
func inUse(t *testing.T, path string, page int) (used bool) {
	t.Helper()
	db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true, PreLoadFreelist: true})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	err = db.View(func(tx *bolt.Tx) error {
		info, err := tx.Page(page)
		used = info != nil && info.Type != "free"
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return used
}

// Wherever a file is damaged, each operation answers, or says so: none panics,
// and one of them notices.
func TestDamageAnywhere(t *testing.T) {
	dir := filled(t, 12)
	path := filepath.Join(dir, index.StoreFile)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var used []int
	for page := 2; page*4096 < len(whole); page++ {
		if inUse(t, path, page) {
			used = append(used, page)
		}
	}
	for _, page := range used {
		data := append([]byte(nil), whole...)
		for i := range 4096 {
			data[page*4096+i] ^= byte(0xa5 + i)
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := index.Open(dir)
		if err != nil {
			continue
		}
		var said []error
		for r, err := range s.Records(index.Filter{}) {
			said = append(said, err)
			if err == nil {
				_, err := s.Note(r.NoteHash)
				r.State = colony.Confirmed
				said = append(said, err, s.Save(r))
			}
			break
		}
		_, errFind := s.Find(index.Query{Words: "queen"})
		_, errTake := s.Take(indextest.NoteOf("new"), nil)
		report, errCheck := s.Check()
		if errors.Join(append(said, errFind, errTake, errCheck)...) == nil && len(report.Problems) == 0 {
			t.Errorf("nothing noticed that page %d is damaged", page)
		}
		_ = s.Abandon()
	}
	if len(used) < 8 {
		t.Errorf("only %d pages were damaged: this test shows nothing", len(used))
	}
}

func TestEmptyStoreFile(t *testing.T) {
	t.Run("of a first start that was interrupted", func(t *testing.T) {
		dir := t.TempDir()
		if err := os.WriteFile(filepath.Join(dir, index.StoreFile), nil, 0o600); err != nil {
			t.Fatal(err)
		}
		s := indextest.Reopen(t, dir)
		mustTake(t, s, write("3", noon(2026, 5, 1)))
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	})
	t.Run("beside an index", func(t *testing.T) {
		dir := filled(t, 1)
		if err := os.Truncate(filepath.Join(dir, index.StoreFile), 0); err != nil {
			t.Fatal(err)
		}
		refused(t, dir, index.ErrDamaged, "empty")
	})
}

// A first start that was interrupted before anything was written into its file
// stands in nobody's way, not even of one who only looks.
func TestFirstStartInterrupted(t *testing.T) {
	dir := t.TempDir()
	db, err := bolt.Open(filepath.Join(dir, index.StoreFile), 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	s := indextest.Reopen(t, dir, index.ReadOnly())
	defer s.Close()
	indextest.MustAgree(t, s)
}

func TestStoreThatIsNoFile(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, index.StoreFile), 0o700); err != nil {
		t.Fatal(err)
	}
	if _, err := index.Open(dir); err == nil || !strings.Contains(err.Error(), "is no file") {
		t.Errorf("err = %v", err)
	}
	file := filepath.Join(t.TempDir(), "data")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := index.Open(file); err == nil {
		t.Error("a file was taken for a data directory")
	}
}

// A damaged index is built anew, and answers as it did.
func TestDamagedIndex(t *testing.T) {
	zap := func(t *testing.T, dir string) string {
		t.Helper()
		list, err := filepath.Glob(filepath.Join(dir, "store", "*.zap"))
		if err != nil || len(list) == 0 {
			t.Fatal(list, err)
		}
		return list[0]
	}
	overwrite := func(t *testing.T, path string, from, to float64) {
		t.Helper()
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for i := int(from * float64(len(data))); i < int(to*float64(len(data))); i++ {
			data[i] ^= 0x5a
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	// Some damage leaves bleve an older state of the index, which is mended
	// without a word.
	silent := map[string]bool{"no segment": true, "an empty segment": true, "a short segment": true, "a garbled segment": true}
	for name, damage := range map[string]func(t *testing.T, dir string) error{
		"missing":         func(t *testing.T, dir string) error { return os.RemoveAll(dir) },
		"an empty folder": func(t *testing.T, dir string) error { return errors.Join(os.RemoveAll(dir), os.Mkdir(dir, 0o700)) },
		"a file": func(t *testing.T, dir string) error {
			return errors.Join(os.RemoveAll(dir), os.WriteFile(dir, nil, 0o600))
		},
		"no description": func(t *testing.T, dir string) error { return os.Remove(filepath.Join(dir, "index_meta.json")) },
		"bad description": func(t *testing.T, dir string) error {
			return os.WriteFile(filepath.Join(dir, "index_meta.json"), []byte("{"), 0o600)
		},
		"no root":       func(t *testing.T, dir string) error { return os.Remove(filepath.Join(dir, "store", "root.bolt")) },
		"an empty root": func(t *testing.T, dir string) error { return os.Truncate(filepath.Join(dir, "store", "root.bolt"), 0) },
		"a short root": func(t *testing.T, dir string) error {
			return os.Truncate(filepath.Join(dir, "store", "root.bolt"), 20000)
		},
		"no segment":        func(t *testing.T, dir string) error { return os.Remove(zap(t, dir)) },
		"an empty segment":  func(t *testing.T, dir string) error { return os.Truncate(zap(t, dir), 0) },
		"a short segment":   func(t *testing.T, dir string) error { return os.Truncate(zap(t, dir), 3000) },
		"a garbled segment": func(t *testing.T, dir string) error { overwrite(t, zap(t, dir), 0, 1); return nil },
		"a garbled root": func(t *testing.T, dir string) error {
			overwrite(t, filepath.Join(dir, "store", "root.bolt"), 0, 1)
			return nil
		},
	} {
		t.Run(name, func(t *testing.T) {
			dir := filled(t, 30)
			s := indextest.Reopen(t, dir)
			want := brief(mustFind(t, s, index.Query{Words: "queen seen"}))
			if err := s.Close(); err != nil {
				t.Fatal(err)
			}
			if err := damage(t, filepath.Join(dir, index.IndexDir)); err != nil {
				t.Fatal(err)
			}
			var said []string
			s = indextest.Reopen(t, dir, index.ReadOnly(), index.Log(func(m string) { said = append(said, m) }))
			if got := brief(mustFind(t, s, index.Query{Words: "queen seen"})); got != want || want == "" {
				t.Errorf("got %q, want %q", got, want)
			}
			indextest.MustAgree(t, s)
			if !silent[name] && (len(said) == 0 || !strings.Contains(said[0], "built anew")) {
				t.Errorf("said %q", said)
			}
			if err := s.Close(); err != nil {
				t.Fatal(err)
			}
		})
	}
}

// Wherever a segment of the index is damaged, a search answers.
func TestIndexDamageAnywhere(t *testing.T) {
	dir := filled(t, 20)
	list, err := filepath.Glob(filepath.Join(dir, index.IndexDir, "store", "*.zap"))
	if err != nil || len(list) == 0 {
		t.Fatal(list, err)
	}
	whole, err := os.ReadFile(list[0])
	if err != nil {
		t.Fatal(err)
	}
	other := snapshotDir(t, dir)
	for at := 0; at < len(whole); at += len(whole)/40 + 1 {
		restoreDir(t, dir, other)
		data := append([]byte(nil), whole...)
		for i := at; i < min(at+64, len(data)); i++ {
			data[i] ^= 0x5a
		}
		if err := os.WriteFile(list[0], data, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := index.Open(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, q := range []index.Query{{Words: "queen"}, {Each: index.ByYear}, {Per: index.Bars, Where: []index.Clause{is("bars.*.eggs", "yes")}}} {
			mustFind(t, s, q) // an index that breaks is built anew
		}
		if err := s.Rebuild(nil); err != nil {
			t.Fatal(err)
		}
		indextest.MustAgree(t, s)
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

func snapshotDir(t *testing.T, dir string) string {
	t.Helper()
	to := t.TempDir()
	if err := os.CopyFS(to, os.DirFS(dir)); err != nil {
		t.Fatal(err)
	}
	return to
}

func restoreDir(t *testing.T, dir, from string) {
	t.Helper()
	if err := errors.Join(os.RemoveAll(dir), os.CopyFS(dir, os.DirFS(from))); err != nil {
		t.Fatal(err)
	}
	_ = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			err = os.Chmod(path, 0o600)
		}
		return err
	})
}

// A store that cannot be written for its modes says so.
func TestNoPermission(t *testing.T) {
	if os.Getuid() <= 0 {
		t.Skip("modes do not hold root")
	}
	dir := filled(t, 1)
	if err := os.Chmod(filepath.Join(dir, index.StoreFile), 0); err != nil {
		t.Fatal(err)
	}
	if _, err := index.Open(dir); !errors.Is(err, fs.ErrPermission) {
		t.Errorf("err = %v", err)
	}
}
