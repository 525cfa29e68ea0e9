package index

import (
	"bytes"
	"encoding/binary"
	"strings"
	"time"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// The buckets of the store.
var (
	bucketMeta     = []byte("meta")     // version
	bucketNotes    = []byte("notes")    // hash → note as it was handed in
	bucketEdits    = []byte("edits")    // hash, number → later texts of the note
	bucketRecords  = []byte("records")  // id → record
	bucketHistory  = []byte("history")  // id, number → earlier version
	bucketByNote   = []byte("by note")  // hash, place → id
	bucketByTime   = []byte("by time")  // time, id → number
	bucketByHive   = []byte("by hive")  // hive, time, id
	bucketByState  = []byte("by state") // state, time, id
	bucketNumbers  = []byte("numbers")  // number → id
	bucketSettings = []byte("settings") // name → JSON
	bucketWords    = []byte("words")    // "own" → JSON
	bucketChanges  = []byte("changes")  // number → token, id

	buckets = [][]byte{bucketMeta, bucketNotes, bucketEdits, bucketRecords, bucketHistory, bucketByNote,
		bucketByTime, bucketByHive, bucketByState, bucketNumbers, bucketSettings, bucketWords, bucketChanges}
)

const timeKeyLen = 12

// number is the short name that the store gives a record when it first sees
// it; the index knows records by it. It never changes within a store.
type number uint64

func (n number) key() []byte { return binary.BigEndian.AppendUint64(nil, uint64(n)) }

func numberOf(key []byte) number { return number(binary.BigEndian.Uint64(key)) }

// timeKey sorts as time does: seconds with the sign turned, then nanoseconds.
func timeKey(t time.Time) []byte {
	key := binary.BigEndian.AppendUint64(nil, uint64(t.Unix())^1<<63)
	return binary.BigEndian.AppendUint32(key, uint32(t.Nanosecond()))
}

// textKey makes a name the first part of a key, so that no name is the
// beginning of another one's keys: it ends with a zero byte, and a zero byte
// within it is followed by 0xff.
func textKey(name string) []byte {
	return append([]byte(strings.ReplaceAll(name, "\x00", "\x00\xff")), 0)
}

// numberKey makes the key of the n-th of a thing's versions or parts.
func numberKey(name string, n uint64) []byte {
	return binary.BigEndian.AppendUint64(textKey(name), n)
}

func keyNumber(key []byte) uint64 { return binary.BigEndian.Uint64(key[len(key)-8:]) }

// numbered lists the values kept under a name, in order of their numbers.
func numbered(b *bolt.Bucket, name string) (values [][]byte) {
	prefix := textKey(name)
	c := b.Cursor()
	for k, v := c.Seek(prefix); len(k) == len(prefix)+8 && bytes.HasPrefix(k, prefix); k, v = c.Next() {
		values = append(values, v)
	}
	return values
}

// lastNumbered returns the highest number kept under a name, and its value;
// zero and nil where there is none.
func lastNumbered(b *bolt.Bucket, name string) (uint64, []byte) {
	c := b.Cursor()
	var key, value []byte
	if next, _ := c.Seek(append(textKey(name), 0xff)); next == nil {
		key, value = c.Last()
	} else {
		key, value = c.Prev()
	}
	if key == nil || len(key) != len(textKey(name))+8 || string(key[:len(key)-8]) != string(textKey(name)) {
		return 0, nil
	}
	return keyNumber(key), value
}

// sortKeys are the keys under which a record is listed.
type sortKeys struct{ time, hive, state []byte }

func sortKeysOf(r *colony.Record) sortKeys {
	ins := current(r)
	tail := append(timeKey(ins.At), r.ID...)
	return sortKeys{
		time:  tail,
		hive:  append(textKey(ins.Hive), tail...),
		state: append(textKey(string(r.State)), tail...),
	}
}

// keyID is the record that a key of the given prefix lists.
func keyID(key, prefix []byte) string { return string(key[len(prefix)+timeKeyLen:]) }

// hiveOf takes the name out of a by-hive key.
func hiveOf(key []byte) string {
	for i := 0; i < len(key); i++ {
		if key[i] != 0 {
			continue
		}
		if i+1 < len(key) && key[i+1] == 0xff {
			i++
			continue
		}
		return string(bytes.ReplaceAll(key[:i], []byte("\x00\xff"), []byte{0}))
	}
	return ""
}

// current is what the record says now, to be read only: without corrections it
// shares the reading.
func current(r *colony.Record) colony.Inspection {
	if len(r.Corrections) == 0 {
		ins := r.Read
		ins.ID = r.ID
		return ins
	}
	return r.Inspection()
}
