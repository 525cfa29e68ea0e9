package index

import (
	"path/filepath"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Clock replaces the clock that stamps changes.
func Clock(now func() time.Time) Option { return func(o *options) { o.clock = now } }

// Original is the note as it was handed in, byte for byte.
func (s *Store) Original(hash string) (n colony.Note, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		n, err = getOriginal(tx, hash)
		return err
	})
	return n, err
}

// Edits lists the texts that a note was given after it was handed in.
func (s *Store) Edits(hash string) (list []colony.Note, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		list, err = edits(tx, hash)
		return err
	})
	return list, err
}

// OfNote lists the records of a note in the order they were spoken.
func (s *Store) OfNote(hash string) (list []colony.Record, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		list, err = recordsOfNote(tx, hash)
		return err
	})
	return list, err
}

// Reread gives a note another reading of the same text.
func (s *Store) Reread(hash string, read []colony.Inspection) error {
	note, err := s.Note(hash)
	if err != nil {
		return err
	}
	return s.Edit(hash, note.Text, read)
}

// Abandon closes the files of a store as a crash does: what the index has not
// seen yet it does not get.
func (s *Store) Abandon() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.closeAll()
}

// Unseen is how many changes the index has not seen.
func (s *Store) Unseen() uint64 {
	last, err := s.last()
	if err != nil {
		panic(err)
	}
	return last.number - s.words.seen.number
}

// SetVersion writes a version into a closed store's file.
func SetVersion(t *testing.T, path string, version int) {
	t.Helper()
	withFile(t, path, func(tx *bolt.Tx) error { return writeVersion(tx, version) })
}

func withFile(t *testing.T, path string, f func(*bolt.Tx) error) {
	t.Helper()
	db, err := bolt.Open(path, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := db.Update(f); err != nil {
		t.Fatal(err)
	}
}

// Forge logs so many changes of a record that did not change.
func (s *Store) Forge(t *testing.T, id string, changes int) {
	t.Helper()
	err := s.update(func(tx *bolt.Tx) error {
		for range changes {
			if err := logChange(tx, id); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// LogLength is how many changes are logged.
func (s *Store) LogLength() (n int) {
	if err := s.view(func(tx *bolt.Tx) error {
		n = countKeys(tx.Bucket(bucketChanges))
		return nil
	}); err != nil {
		panic(err)
	}
	return n
}

// Disown makes a closed store's index look as if another version had made it.
func Disown(t *testing.T, dir string) {
	t.Helper()
	w := searcher{dir: filepath.Join(dir, IndexDir)}
	if err := w.open(true); err != nil {
		t.Fatal(err)
	}
	if err := w.idx.SetInternal(internalMapping, []byte("0 other")); err != nil {
		t.Fatal(err)
	}
	if err := w.close(); err != nil {
		t.Fatal(err)
	}
}
