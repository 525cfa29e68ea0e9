package index

import (
	"errors"
	"fmt"

	"github.com/blevesearch/bleve/v2"
	bolt "go.etcd.io/bbolt"
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
		return failed(s.startOver(why))
	}
	return failed(s.catchUp())
}

// catchUp hands the index what it has not seen, and builds it anew where it
// breaks on that.
func (s *Store) catchUp() error {
	err := s.flush()
	if errors.Is(err, errIndex) {
		err = s.startOver(err)
	}
	return err
}

// startOver builds the index anew, and says why.
func (s *Store) startOver(why error) error {
	s.opts.log(fmt.Sprintf("the search index is built anew: %v", why))
	return s.rebuild(nil)
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

// nudge hands changes on when enough have come together.
func (s *Store) nudge() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.asked != nil {
		return
	}
	last, err := s.last()
	if err != nil || last.number-s.words.seen.number < flushAt {
		return // a store that cannot be read says so when it is asked
	}
	if err := s.catchUp(); err != nil {
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
	if missing := last.number - s.words.seen.number; missing > rebuildAt {
		n, err := s.countRecords()
		if err != nil {
			return err
		}
		if missing > uint64(n/4) {
			return s.startOver(fmt.Errorf("%d changes came together", missing))
		}
	}
	if err := s.makeWritable(); err != nil {
		return fmt.Errorf("%w (%w)", errIndex, err)
	}
	for s.words.seen != last {
		if err := s.flushSome(); err != nil {
			return err
		}
	}
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
		return fmt.Errorf("%w (%w)", errIndex, err)
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

func (s *Store) countRecords() (n int, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		n = countKeys(tx.Bucket(bucketByTime))
		return nil
	})
	return n, err
}
