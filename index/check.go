package index

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"

	bleveindex "github.com/blevesearch/bleve_index_api"
	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Report says whether store and index are sound and agree.
type Report struct {
	Version  int      // of the store
	Counts   Counts   // of the store
	Hives    int      // with a name
	Entries  int      // of the index: inspections and their bars
	Problems []string // what is wrong, a sentence each; none when all is well
	Damaged  bool     // the store itself has a problem; else Rebuild mends all
}

const maxProblems = 20

func (r *Report) problem(format string, args ...any) {
	if len(r.Problems) < maxProblems {
		r.Problems = append(r.Problems, fmt.Sprintf(format, args...))
	}
}

// Check reads the whole store and the whole index, and compares them term by
// term. It changes nothing, but brings the index up to date first where the
// store is open for writing. An error means that the check itself failed.
func (s *Store) Check() (Report, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	defer sparing()()
	r := Report{Version: storeVersion}
	wanted := map[string]digest{}
	err := s.view(func(tx *bolt.Tx) error {
		for err := range tx.Check() {
			r.Damaged = true
			r.problem("%s: %v", StoreFile, err)
		}
		return checkRecords(tx, &r, wanted)
	})
	if err != nil {
		return r, err
	}
	if r.Counts, err = s.Counts(); err != nil {
		return r, err
	}
	hives, err := s.Hives()
	if err != nil {
		return r, err
	}
	r.Hives = len(hives)
	s.checkIndex(&r, wanted)
	return r, nil
}

// checkRecords decodes all records, looks their keys up, and digests the
// entries that the index should have, by ID.
func checkRecords(tx *bolt.Tx, r *Report, wanted map[string]digest) error {
	texts := texts{tx: tx}
	listed := 0
	err := tx.Bucket(bucketRecords).ForEach(func(id, data []byte) error {
		listed++
		var rec colony.Record
		err := json.Unmarshal(data, &rec)
		if err == nil {
			err = checkRecord(tx, &rec, &texts, wanted)
		}
		if err != nil {
			r.Damaged = true
			r.problem("record %s: %v", id, err)
		}
		return nil
	})
	for _, b := range [][]byte{bucketByTime, bucketByHive, bucketByState, bucketByNote, bucketNumbers} {
		if n := countKeys(tx.Bucket(b)); n != listed {
			r.Damaged = true
			r.problem("there are %d records, but %d in the list %q", listed, n, b)
		}
	}
	return err
}

func checkRecord(tx *bolt.Tx, r *colony.Record, texts *texts, wanted map[string]digest) error {
	n, err := getNumber(tx, r)
	if err != nil {
		return err
	}
	for _, e := range keyEntries(tx, r, n) {
		if v := e.bucket.Get(e.key); v == nil || !bytes.Equal(v, e.value) {
			return errors.New("a list lacks it")
		}
	}
	text, err := texts.of(r)
	if err != nil {
		return err
	}
	for id, e := range entriesOf(r, n, text) {
		wanted[id] = e.digest()
	}
	return nil
}

func countKeys(b *bolt.Bucket) (n int) {
	c := b.Cursor()
	for k, _ := c.First(); k != nil; k, _ = c.Next() {
		n++
	}
	return n
}

// checkIndex compares the index's entries with those it should have.
func (s *Store) checkIndex(r *Report, wanted map[string]digest) {
	if s.asked == nil && !s.opts.readOnly {
		s.asked = failed(s.catchUp())
	}
	if s.asked != nil {
		r.problem("%v", s.asked)
		return
	}
	if s.words.idx == nil {
		if len(wanted) > 0 {
			r.problem("the search index is missing")
		}
		return
	}
	var others, extras []string
	err := s.words.read(func(reader bleveindex.IndexReader) error {
		return digests(reader, func(id string, d digest) {
			r.Entries++
			switch want, ok := wanted[id]; {
			case !ok:
				extras = append(extras, id)
			case d != want:
				others = append(others, id)
			}
			delete(wanted, id)
		})
	})
	if err != nil {
		r.problem("the search index cannot be read: %v", err)
		return
	}
	for _, wrong := range []struct {
		ids  []string
		says string
	}{{slices.Collect(maps.Keys(wanted)), "the search index lacks entry %s"},
		{others, "the search index has entry %s otherwise than the store"},
		{extras, "the search index has entry %s, which the store has not"}} {
		slices.Sort(wrong.ids)
		for _, id := range wrong.ids {
			r.problem(wrong.says, id)
		}
	}
}
