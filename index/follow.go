package index

import (
	"errors"
	"fmt"
	"os"
	"slices"

	"github.com/blevesearch/bleve/v2"
	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

const (
	// flushAt is how many changes may wait for the index. More make bigger
	// and so cheaper batches, and a longer mend after a crash.
	flushAt = 1000
	// rebuildAt is from how many missing changes on a new index is cheaper
	// than a mended one, unless that is large.
	rebuildAt = 5000
)

var errBehind = errors.New("the search index is behind the store")

// behind is the sentence for an index that could not be written.
func behind(err error) string {
	return fmt.Sprintf("the search index could not follow the store (%v); what was stored is safe, and the index is mended at the next start", err)
}

// follow opens the index and brings it up to the store. A store open for
// reading returns errBehind instead of writing.
func (s *Store) follow() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	last, err := s.last()
	if err != nil {
		return err
	}
	if !s.words.exists() && last == (mark{}) {
		return nil
	}
	why := s.openIndex()
	if why == nil && s.words.seen == last {
		return nil
	}
	if s.opts.readOnly {
		return errBehind
	}
	if why != nil {
		s.opts.log(fmt.Sprintf("the search index is built anew, since %v", why))
		return failed(s.rebuild(nil))
	}
	return failed(s.flush())
}

func failed(err error) error {
	if err == nil {
		return nil
	}
	return errors.New(behind(err))
}

// openIndex opens an index that can be brought up to date, or says why there
// is none.
func (s *Store) openIndex() error {
	if !s.words.exists() {
		return errors.New("it is missing")
	}
	if err := s.words.open(false); err != nil {
		return fmt.Errorf("it cannot be used: %w", err)
	}
	reaches := false
	err := s.view(func(tx *bolt.Tx) error {
		reaches = known(tx, s.words.seen)
		return nil
	})
	if err == nil && !reaches {
		err = errors.New("it does not belong to this state of the store")
	}
	return err
}

func (s *Store) last() (m mark, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		m = lastChange(tx)
		return nil
	})
	return m, err
}

// nudge counts changes, and hands them on when enough have come together.
func (s *Store) nudge(changes int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.words.unseen += changes; s.words.unseen < flushAt || s.asked != nil {
		return
	}
	if err := s.flush(); err != nil {
		s.asked = failed(err)
		s.opts.log(s.asked.Error())
	}
}

// flush hands the index all changes that it has not seen.
func (s *Store) flush() error {
	last, err := s.last()
	if err != nil || last == s.words.seen && (s.words.idx != nil || last == mark{}) {
		return err
	}
	if last.number-s.words.seen.number > rebuildAt {
		if n, err := s.countRecords(); err != nil || last.number-s.words.seen.number > uint64(n/4) {
			return errors.Join(err, s.rebuild(nil))
		}
	}
	if err := s.makeWritable(); err != nil {
		return err
	}
	for s.words.seen != last {
		if err := s.flushSome(); err != nil {
			return err
		}
	}
	s.words.unseen = 0
	if err := s.words.tidy(); err != nil {
		return err
	}
	return s.forget()
}

func (s *Store) makeWritable() error {
	switch {
	case s.words.idx == nil && !s.words.exists():
		return s.words.create()
	case s.words.idx == nil || !s.words.writable:
		return s.words.open(true)
	}
	return nil
}

// flushSome hands on one batch of changes, with the mark that says so.
func (s *Store) flushSome() error {
	batch := s.words.idx.NewBatch()
	var next mark
	err := s.view(func(tx *bolt.Tx) error {
		var ids []string
		ids, next = changedSince(tx, s.words.seen, flushAt)
		texts := texts{tx: tx}
		for _, id := range ids {
			if err := addToBatch(tx, batch, id, &texts); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	batch.SetInternal(internalSeen, next.bytes())
	if err := sheltered(func() error { return s.words.idx.Batch(batch) }); err != nil {
		return err
	}
	s.words.seen = next
	return nil
}

// addToBatch replaces a record's entries. Bars that an earlier version had and
// this one has not lose theirs.
func addToBatch(tx *bolt.Tx, batch *bleve.Batch, id string, texts *texts) error {
	r, err := getRecord(tx, id)
	if err != nil {
		return err
	}
	text, err := texts.of(&r)
	if err != nil {
		return err
	}
	n, err := getNumber(tx, &r)
	if err != nil {
		return err
	}
	entries := entriesOf(&r, n, text)
	earlier, err := versions(tx, id)
	if err != nil {
		return err
	}
	for i := range earlier {
		for old := range entriesOf(&earlier[i], n, nil) {
			if entries[old] == nil {
				batch.Delete(old)
			}
		}
	}
	for entryID, e := range entries {
		if err := batch.Index(entryID, *e); err != nil {
			return err
		}
	}
	return nil
}

// forget shortens the log of changes once that is worth a write.
func (s *Store) forget() error {
	var oldest uint64
	err := s.view(func(tx *bolt.Tx) error {
		k, v := tx.Bucket(bucketChanges).Cursor().First()
		oldest = changeMark(k, v).number
		return nil
	})
	if err != nil || s.words.seen.number < oldest+flushAt {
		return err
	}
	return s.update(func(tx *bolt.Tx) error { return forgetChanges(tx, s.words.seen, 20*flushAt) })
}

// Rebuild makes the index anew from the store. It calls progress, which may be
// nil, now and then with how many records are done.
func (s *Store) Rebuild(progress func(done, total int)) error {
	if s.opts.readOnly {
		return ErrReadOnly
	}
	s.mu.Lock()
	defer s.mu.Unlock()
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
	s.words.unseen = 0
	return s.words.open(false)
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
	builder, err := bleve.NewBuilder(dir, newMapping(), map[string]any{"batchSize": 10000, "mergeMax": 20})
	if err != nil {
		return err
	}
	done := 0
	for from := []byte{}; from != nil; {
		var entries map[string]*entry
		err := s.view(func(tx *bolt.Tx) (err error) {
			entries, from, err = entriesFrom(tx, from, &done)
			return err
		})
		if err != nil {
			return errors.Join(err, sheltered(builder.Close))
		}
		for id, e := range entries {
			if err := builder.Index(id, *e); err != nil {
				return errors.Join(err, sheltered(builder.Close))
			}
		}
		if progress != nil {
			progress(done, total)
		}
	}
	return sheltered(builder.Close)
}

// entriesFrom makes the entries of a stretch of records from the given key on,
// and returns where to go on, or nil at the end.
func entriesFrom(tx *bolt.Tx, from []byte, done *int) (map[string]*entry, []byte, error) {
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
		text, err := texts.of(&r)
		if err != nil {
			return nil, nil, err
		}
		number, err := getNumber(tx, &r)
		if err != nil {
			return nil, nil, err
		}
		for id, e := range entriesOf(&r, number, text) {
			all[id] = e
		}
		*done++
	}
	return all, nil, nil
}

func (s *Store) countRecords() (n int, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		c := tx.Bucket(bucketByTime).Cursor()
		for k, _ := c.First(); k != nil; k, _ = c.Next() {
			n++
		}
		return nil
	})
	return n, err
}
