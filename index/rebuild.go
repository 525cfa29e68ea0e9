package index

import (
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"slices"

	"github.com/blevesearch/bleve/v2"
	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Rebuild makes the index anew from the store. It calls progress, which may be
// nil, now and then with how many steps are done, of which each record takes
// two.
func (s *Store) Rebuild(progress func(done, total int)) error {
	if s.opts.readOnly {
		return ErrReadOnly
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if last, err := s.last(); err == nil && s.asked == nil && last == s.built && last != (mark{}) {
		return nil // it was built anew at Open
	}
	s.asked = failed(s.rebuild(progress))
	return s.asked
}

// rebuild builds an index beside the old one, and puts it in its place when it
// is whole.
func (s *Store) rebuild(progress func(done, total int)) error {
	if err := s.words.close(); err != nil {
		s.opts.log(fmt.Sprintf("the old search index did not close (%v)", err))
	}
	seen, err := s.last()
	if err != nil {
		return err
	}
	if seen == (mark{}) {
		return s.words.create() // the builder cannot make an empty index
	}
	fresh := searcher{dir: s.words.dir + ".new"}
	if err := os.RemoveAll(fresh.dir); err != nil {
		return err
	}
	if err := s.build(fresh.dir, progress); err != nil {
		return errors.Join(err, os.RemoveAll(fresh.dir))
	}
	if err := sheltered(func() (err error) {
		if fresh.idx, err = bleve.OpenUsing(fresh.dir, map[string]any{"bolt_timeout": "1s"}); err != nil {
			return err
		}
		return errors.Join(fresh.claim(seen), fresh.close())
	}); err != nil {
		return err
	}
	if err := os.RemoveAll(s.words.dir); err != nil {
		return err
	}
	if err := os.Rename(fresh.dir, s.words.dir); err != nil {
		return err
	}
	s.built = seen
	return s.words.open(false)
}

// sparing lets the heap grow by less before it is cleaned, until the function
// that it returns is called: work on the whole store leaves much behind that is
// soon of no use. It halves the memory for some more work.
func sparing() func() {
	before := debug.SetGCPercent(40)
	return func() { debug.SetGCPercent(before) }
}

// build writes all entries into a new index in dir.
func (s *Store) build(dir string, progress func(done, total int)) error {
	total, err := s.countRecords()
	if err != nil {
		return err
	}
	if err := os.Mkdir(dir, 0o700); err != nil {
		return err
	}
	builder, err := bleve.NewBuilder(dir, newMapping(), map[string]any{"batchSize": 4000, "mergeMax": 20})
	if err != nil {
		return err
	}
	defer sparing()()
	done := 0
	step := func(records int) {
		if done += records; progress != nil {
			progress(done, 2*total)
		}
	}
	// Inspections first, so that they lie together: reading them one after
	// the other, as grouping does, is then several times faster.
	for _, kind := range []string{kindInspection, kindBar} {
		if err := s.buildKind(builder, kind, step); err != nil {
			return errors.Join(err, sheltered(builder.Close))
		}
	}
	return sheltered(builder.Close)
}

// buildKind writes all entries of one kind.
func (s *Store) buildKind(builder bleve.Builder, kind string, step func(records int)) error {
	for from := []byte{}; from != nil; {
		var entries map[string]*entry
		records := 0
		err := s.view(func(tx *bolt.Tx) (err error) {
			entries, from, err = entriesFrom(tx, from, kind, &records)
			return err
		})
		if err != nil {
			return err
		}
		for id, e := range entries {
			if err := builder.Index(id, *e); err != nil {
				return err
			}
		}
		step(records)
	}
	return nil
}

// entriesFrom makes the entries of one kind for a stretch of records from the
// given key on, and returns where to go on, or nil at the end.
func entriesFrom(tx *bolt.Tx, from []byte, kind string, done *int) (map[string]*entry, []byte, error) {
	all := map[string]*entry{}
	texts := texts{tx: tx}
	c := tx.Bucket(bucketRecords).Cursor()
	n := 0
	for k, data := c.Seek(from); k != nil; k, data = c.Next() {
		if n++; n > flushAt {
			return all, slices.Clone(k), nil
		}
		var r colony.Record
		if err := decode(tx, "record "+string(k), data, &r); err != nil {
			return nil, nil, err
		}
		var text []string
		if kind == kindInspection {
			var err error
			if text, err = texts.of(&r); err != nil {
				return nil, nil, err
			}
		}
		number, err := getNumber(tx, &r)
		if err != nil {
			return nil, nil, err
		}
		for id, e := range entriesOf(&r, number, text) {
			if e.Kind == kind {
				all[id] = e
			}
		}
		*done++
	}
	return all, nil, nil
}
