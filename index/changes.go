package index

import (
	"crypto/rand"
	"encoding/binary"
	"slices"

	bolt "go.etcd.io/bbolt"
)

// The log of changes tells the index what it has not seen yet. A change is a
// number, one more than the last, and a token, so that two copies of a store
// that went their own ways are told apart although their numbers agree.

const tokenLen = 8

// mark names a change; the zero mark is the state before the first one.
type mark struct {
	number uint64
	token  [tokenLen]byte
}

func (m mark) bytes() []byte {
	return append(binary.BigEndian.AppendUint64(nil, m.number), m.token[:]...)
}

func markOf(data []byte) (m mark, ok bool) {
	if len(data) != 8+tokenLen {
		return m, false
	}
	m.number = binary.BigEndian.Uint64(data)
	copy(m.token[:], data[8:])
	return m, true
}

func changeKey(n uint64) []byte { return binary.BigEndian.AppendUint64(nil, n) }

func logChange(tx *bolt.Tx, id string) error {
	b := tx.Bucket(bucketChanges)
	n, err := b.NextSequence()
	if err != nil {
		return err
	}
	value := make([]byte, tokenLen, tokenLen+len(id))
	if _, err := rand.Read(value); err != nil {
		return err
	}
	return b.Put(changeKey(n), append(value, id...))
}

// lastChange is the mark of the store as it stands.
func lastChange(tx *bolt.Tx) mark {
	k, v := tx.Bucket(bucketChanges).Cursor().Last()
	return changeMark(k, v)
}

func changeMark(k, v []byte) (m mark) {
	if k != nil {
		m.number = binary.BigEndian.Uint64(k)
		copy(m.token[:], v)
	}
	return m
}

// known reports whether the log still reaches back to the mark, so that what
// came after it can be told.
func known(tx *bolt.Tx, m mark) bool {
	b := tx.Bucket(bucketChanges)
	if m.number == 0 {
		k, _ := b.Cursor().First()
		return k == nil || binary.BigEndian.Uint64(k) == 1
	}
	k := changeKey(m.number)
	v := b.Get(k)
	return v != nil && changeMark(k, v) == m
}

// changedSince lists up to limit changes after the mark: the records they
// touched, each once, and the mark to go on from.
func changedSince(tx *bolt.Tx, m mark, limit int) (ids []string, next mark) {
	next = m
	seen := map[string]bool{}
	c := tx.Bucket(bucketChanges).Cursor()
	for k, v := c.Seek(changeKey(m.number + 1)); k != nil && len(ids) < limit; k, v = c.Next() {
		next = changeMark(k, v)
		if id := string(v[tokenLen:]); !seen[id] {
			seen[id] = true
			ids = append(ids, id)
		}
	}
	return ids, next
}

// forgetChanges drops up to limit changes before the one that the index has
// seen last.
func forgetChanges(tx *bolt.Tx, seen mark, limit int) error {
	b := tx.Bucket(bucketChanges)
	var old [][]byte
	c := b.Cursor()
	for k, _ := c.First(); k != nil && binary.BigEndian.Uint64(k) < seen.number && len(old) < limit; k, _ = c.Next() {
		old = append(old, slices.Clone(k))
	}
	for _, k := range old {
		if err := b.Delete(k); err != nil {
			return err
		}
	}
	return nil
}
