package index

import (
	"bytes"
	"iter"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Filter says which records to list; the zero Filter takes all of them.
type Filter struct {
	Hive   string         // "" for every hive
	States []colony.State // none for every state
	From   colony.Date    // first day of inspection, included; zero for no bound
	To     colony.Date    // last day of inspection, included; zero for no bound
}

func (f Filter) takes(r *colony.Record) bool {
	if len(f.States) > 0 && !slices.Contains(f.States, r.State) {
		return false
	}
	if f.Hive == "" && f.From.IsZero() && f.To.IsZero() {
		return true
	}
	ins := current(r)
	day := colony.DateOf(ins.At)
	return (f.Hive == "" || ins.Hive == f.Hive) &&
		(f.From.IsZero() || day.Compare(f.From) >= 0) && (f.To.IsZero() || day.Compare(f.To) <= 0)
}

// zoneSpan is more than any zone lies away from UTC, so that the instants of a
// civil day in every zone are within it.
const zoneSpan = 15 * time.Hour

// list returns the bucket and the key range [low, high) that hold what the
// filter can take, and the prefix of its keys.
func (f Filter) list(tx *bolt.Tx) (b *bolt.Bucket, prefix, low, high []byte) {
	switch {
	case f.Hive != "":
		b, prefix = tx.Bucket(bucketByHive), textKey(f.Hive)
	case len(f.States) == 1:
		b, prefix = tx.Bucket(bucketByState), textKey(string(f.States[0]))
	default:
		b = tx.Bucket(bucketByTime)
	}
	low = prefix
	if !f.From.IsZero() {
		low = append(bytes.Clone(prefix), timeKey(f.From.Time().Add(-zoneSpan))...)
	}
	high = append(bytes.Clone(prefix), 0xff)
	if !f.To.IsZero() {
		high = append(bytes.Clone(prefix), timeKey(f.To.Time().Add(24*time.Hour+zoneSpan))...)
	}
	return b, prefix, low, high
}

// page is how many records are read in one transaction while listing, so that
// the caller may write between two of them.
const page = 128

// Record returns the record of the given ID, or ErrUnknown.
func (s *Store) Record(id string) (r colony.Record, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		r, err = getRecord(tx, id)
		return err
	})
	return r, err
}

// Records lists what the filter takes, the newest inspection first. The store
// may be changed on the way; a record that moves may then be seen twice or not
// at all. An error ends the list.
func (s *Store) Records(f Filter) iter.Seq2[colony.Record, error] {
	return func(yield func(colony.Record, error) bool) {
		var from []byte
		for {
			var found []colony.Record
			err := s.view(func(tx *bolt.Tx) (err error) {
				found, from, err = f.page(tx, from)
				return err
			})
			for _, r := range found {
				if !yield(r, nil) {
					return
				}
			}
			if err != nil {
				yield(colony.Record{}, err)
				return
			}
			if from == nil {
				return
			}
		}
	}
}

// page reads the records below the key from (nil for the beginning), newest
// first, and returns where to go on, or nil at the end.
func (f Filter) page(tx *bolt.Tx, from []byte) (found []colony.Record, next []byte, err error) {
	b, prefix, low, high := f.list(tx)
	if from != nil {
		high = from
	}
	c := b.Cursor()
	for k := seekBelow(c, high); k != nil && bytes.Compare(k, low) >= 0; k, _ = c.Prev() {
		r, err := getRecord(tx, keyID(k, prefix))
		if err != nil {
			return found, nil, err
		}
		if f.takes(&r) {
			found = append(found, r)
		}
		if next = bytes.Clone(k); len(found) == page {
			return found, next, nil
		}
	}
	return found, nil, nil
}

// seekBelow moves to the last key before the given one.
func seekBelow(c *bolt.Cursor, key []byte) []byte {
	if k, _ := c.Seek(key); k == nil {
		k, _ = c.Last()
		return k
	}
	k, _ := c.Prev()
	return k
}

// Waiting lists what waits to be confirmed, the oldest inspection first.
func (s *Store) Waiting() (list []colony.Record, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		var ids []string
		prefix := textKey(string(colony.Waiting))
		c := tx.Bucket(bucketByState).Cursor()
		for k, _ := c.Seek(prefix); bytes.HasPrefix(k, prefix); k, _ = c.Next() {
			ids = append(ids, keyID(k, prefix))
		}
		list, err = getRecords(tx, ids)
		return err
	})
	return list, err
}

// getRecords reads many records, on every core: most of the time goes into
// taking their JSON apart, and somebody waits for the first picture.
func getRecords(tx *bolt.Tx, ids []string) ([]colony.Record, error) {
	data := make([][]byte, len(ids)) // a transaction is for one goroutine; the bytes it gave are not
	for i, id := range ids {
		if data[i] = tx.Bucket(bucketRecords).Get([]byte(id)); data[i] == nil {
			return nil, unknown("record", id)
		}
	}
	records, errs := make([]colony.Record, len(ids)), make([]error, len(ids))
	var next atomic.Int64
	var all sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		all.Go(func() {
			for i := next.Add(1) - 1; i < int64(len(ids)); i = next.Add(1) - 1 {
				errs[i] = decode(tx, "record "+ids[i], data[i], &records[i])
			}
		})
	}
	all.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return records, nil
}

// recordsOfNote lists the records of a note in the order they were spoken.
func recordsOfNote(tx *bolt.Tx, hash string) (list []colony.Record, err error) {
	for _, id := range numbered(tx.Bucket(bucketByNote), hash) {
		r, err := getRecord(tx, string(id))
		if err != nil {
			return nil, err
		}
		list = append(list, r)
	}
	return list, nil
}

func countOfNote(tx *bolt.Tx, hash string) int { return len(numbered(tx.Bucket(bucketByNote), hash)) }

// Hives lists the names of all hives that a record is about, in order.
func (s *Store) Hives() (names []string, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		c := tx.Bucket(bucketByHive).Cursor()
		for k, _ := c.First(); k != nil; {
			name := hiveOf(k)
			if name != "" {
				names = append(names, name)
			}
			k, _ = c.Seek(append(textKey(name), 0xff))
		}
		return nil
	})
	slices.Sort(names)
	return names, err
}

// KnownHives lists the names of the hives that a confirmed record is about, in order: a person vouched for
// them.
func (s *Store) KnownHives() (names []string, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		confirmed := textKey(string(colony.Confirmed))
		byState := tx.Bucket(bucketByState)
		c := tx.Bucket(bucketByHive).Cursor()
		for k, _ := c.First(); k != nil; {
			name := hiveOf(k)
			prefix := textKey(name)
			for ; bytes.HasPrefix(k, prefix); k, _ = c.Next() {
				// both lists go on with the time and the ID
				if name != "" && byState.Get(append(bytes.Clone(confirmed), k[len(prefix):]...)) != nil {
					names = append(names, name)
					k, _ = c.Seek(append(prefix, 0xff))
					break
				}
			}
		}
		return nil
	})
	slices.Sort(names)
	return names, err
}

// Counts are how many records stand where.
type Counts struct{ Notes, Waiting, Confirmed, SetAside int }

// Counts counts notes and records; it reads keys only.
func (s *Store) Counts() (n Counts, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		n.Notes = countKeys(tx.Bucket(bucketNotes))
		for state, count := range map[colony.State]*int{colony.Waiting: &n.Waiting, colony.Confirmed: &n.Confirmed, colony.SetAside: &n.SetAside} {
			prefix := textKey(string(state))
			c := tx.Bucket(bucketByState).Cursor()
			for k, _ := c.Seek(prefix); bytes.HasPrefix(k, prefix); k, _ = c.Next() {
				*count++
			}
		}
		return nil
	})
	return n, err
}
