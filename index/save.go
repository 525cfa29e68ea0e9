package index

import (
	"bytes"
	"fmt"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Save keeps a changed record, stamps it with the clock, and keeps the version
// before it in the history. A record that says what is stored already is left
// alone. The note and the place in it cannot be changed.
func (s *Store) Save(r colony.Record) error {
	err := s.update(func(tx *bolt.Tx) error {
		old, err := getRecord(tx, r.ID)
		if err != nil {
			return err
		}
		if r.NoteHash != old.NoteHash || r.Seq != old.Seq {
			return fmt.Errorf("record %s belongs to inspection %d of note %s, not %d of %s", r.ID, old.Seq, old.NoteHash, r.Seq, r.NoteHash)
		}
		return s.replace(tx, &old, &r)
	})
	if err == nil {
		s.nudge()
	}
	return err
}

// replace writes r over old unless they say the same.
func (s *Store) replace(tx *bolt.Tx, old, r *colony.Record) error {
	r.Changed = old.Changed
	same, err := equal(old, r)
	if err != nil || same {
		return err
	}
	r.Changed = s.opts.clock()
	if err := keepVersion(tx, old); err != nil {
		return err
	}
	if err := putRecord(tx, old, r); err != nil {
		return err
	}
	if (old.State == colony.SetAside) != (r.State == colony.SetAside) {
		return relist(tx, r.NoteHash) // the others have its words now, or no longer
	}
	return nil
}

// keepVersion adds a record as it stands to its history.
func keepVersion(tx *bolt.Tx, r *colony.Record) error {
	history := tx.Bucket(bucketHistory)
	n, _ := lastNumbered(history, r.ID)
	return putJSON(history, numberKey(r.ID, n+1), r)
}

// putRecord writes a record with its keys and notes the change; old is the
// version it replaces, or nil.
func putRecord(tx *bolt.Tx, old, r *colony.Record) error {
	data, err := stored(r)
	if err != nil {
		return err
	}
	number, err := numberFor(tx, old, r)
	if err != nil {
		return err
	}
	if old != nil {
		for _, e := range keyEntries(tx, old, number) {
			// A place in a note may have passed to another record by now.
			if e.value != nil && !bytes.Equal(e.bucket.Get(e.key), e.value) {
				continue
			}
			if err := e.bucket.Delete(e.key); err != nil {
				return err
			}
		}
	}
	if err := tx.Bucket(bucketRecords).Put([]byte(r.ID), data); err != nil {
		return err
	}
	for _, e := range keyEntries(tx, r, number) {
		if err := e.bucket.Put(e.key, e.value); err != nil {
			return err
		}
	}
	return logChange(tx, r.ID)
}

// numberFor returns the number that a record has had, or the next one for a
// record that is new.
func numberFor(tx *bolt.Tx, old, r *colony.Record) (number, error) {
	if old != nil {
		return getNumber(tx, old)
	}
	numbers := tx.Bucket(bucketNumbers)
	next, err := numbers.NextSequence()
	if err != nil {
		return 0, err
	}
	return number(next), numbers.Put(number(next).key(), []byte(r.ID))
}

// getNumber returns the number of a record as it is stored.
func getNumber(tx *bolt.Tx, r *colony.Record) (number, error) {
	key := tx.Bucket(bucketByTime).Get(sortKeysOf(r).time)
	if len(key) != 8 {
		return 0, damaged(tx.DB().Path(), "record "+r.ID+" has no number")
	}
	return numberOf(key), nil
}

// recordOf returns the record of a number, or ErrUnknown.
func recordOf(tx *bolt.Tx, n number) (colony.Record, error) {
	id := tx.Bucket(bucketNumbers).Get(n.key())
	if id == nil {
		return colony.Record{}, unknown("record number", fmt.Sprint(n))
	}
	return getRecord(tx, string(id))
}

type keyEntry struct {
	bucket     *bolt.Bucket
	key, value []byte
}

func keyEntries(tx *bolt.Tx, r *colony.Record, n number) []keyEntry {
	keys := sortKeysOf(r)
	return []keyEntry{
		{tx.Bucket(bucketByTime), keys.time, n.key()},
		{tx.Bucket(bucketByHive), keys.hive, nil},
		{tx.Bucket(bucketByState), keys.state, nil},
		{tx.Bucket(bucketByNote), numberKey(r.NoteHash, uint64(r.Seq)), []byte(r.ID)},
	}
}

// History returns the earlier versions of a record, the oldest first; none for
// one that was never changed.
func (s *Store) History(id string) (list []colony.Record, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		if _, err := getRecord(tx, id); err != nil {
			return err
		}
		list, err = versions(tx, id)
		return err
	})
	return list, err
}

func versions(tx *bolt.Tx, id string) (list []colony.Record, err error) {
	for _, data := range numbered(tx.Bucket(bucketHistory), id) {
		var r colony.Record
		if err := decode(tx, "history of "+id, data, &r); err != nil {
			return nil, err
		}
		list = append(list, r)
	}
	return list, nil
}
