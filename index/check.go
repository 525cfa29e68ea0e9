package index

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"github.com/blevesearch/bleve/v2"
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

// Check reads the whole store and the index's list of entries. It changes
// nothing, but brings the index up to date first where the store is open for
// writing. An error means that the check itself failed.
func (s *Store) Check() (Report, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	r := Report{Version: storeVersion}
	wanted := map[string]string{}
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
	return r, s.checkIndex(&r, wanted)
}

// checkRecords decodes everything, looks the keys up, and collects which
// entries the index should have, by ID, with a sum of what they hold.
func checkRecords(tx *bolt.Tx, r *Report, wanted map[string]string) error {
	texts := texts{tx: tx}
	listed := 0
	err := tx.Bucket(bucketRecords).ForEach(func(id, data []byte) error {
		var rec colony.Record
		if err := json.Unmarshal(data, &rec); err != nil {
			r.Damaged = true
			r.problem("record %s cannot be read: %v", id, err)
			return nil
		}
		listed++
		for _, e := range keyEntries(tx, sortKeysOf(&rec), &rec) {
			if v := e.bucket.Get(e.key); v == nil || !bytes.Equal(v, e.value) {
				r.Damaged = true
				r.problem("record %s is not listed as it should be", id)
			}
		}
		text, err := texts.of(&rec)
		if err != nil {
			r.Damaged = true
			r.problem("record %s: %v", id, err)
			return nil
		}
		for entryID, e := range entriesOf(&rec, text) {
			wanted[entryID] = e.Order
		}
		return nil
	})
	for _, b := range [][]byte{bucketByTime, bucketByHive, bucketByState, bucketByNote} {
		if n := countKeys(tx.Bucket(b)); n != listed {
			r.Damaged = true
			r.problem("%d records, but %d are listed %s", listed, n, b)
		}
	}
	return err
}

func countKeys(b *bolt.Bucket) (n int) {
	c := b.Cursor()
	for k, _ := c.First(); k != nil; k, _ = c.Next() {
		n++
	}
	return n
}

// checkIndex compares the index's entries with those it should have.
func (s *Store) checkIndex(r *Report, wanted map[string]string) error {
	if s.asked != nil {
		r.problem("%v", s.asked)
		return nil
	}
	if !s.opts.readOnly {
		if err := s.flush(); err != nil {
			r.problem("%s", behind(err))
			return nil
		}
	}
	if s.words.idx == nil {
		if len(wanted) > 0 {
			r.problem("the search index is missing")
		}
		return nil
	}
	err := s.words.read(func(reader bleveindex.IndexReader) error {
		return visit(reader, s.words.idx.Mapping(), bleve.NewMatchAllQuery(), func(p place) {
			r.Entries++
			id := orderOf(p.order).id
			if p.bar != "" {
				id = barEntryID(id, fmt.Sprint(p.number()))
			}
			switch order, ok := wanted[id]; {
			case !ok:
				r.problem("the search index has %s, which the store has not", id)
			case order != p.order:
				r.problem("the search index has an outdated %s", id)
			}
			delete(wanted, id)
		})
	})
	if err != nil {
		r.problem("the search index cannot be read: %v", err)
		return nil
	}
	for _, id := range slices.Sorted(maps.Keys(wanted)) {
		r.problem("the search index lacks %s", id)
	}
	return nil
}
