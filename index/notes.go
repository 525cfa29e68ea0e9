package index

import (
	"encoding/binary"
	"errors"
	"fmt"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// A note is stored as the length of its JSON form without the text, that form,
// and the text as it is, which need not be valid UTF-8.

func packNote(n *colony.Note) ([]byte, error) {
	bare := *n
	bare.Text = ""
	head, err := stored(&bare)
	if err != nil {
		return nil, err
	}
	data := make([]byte, 0, binary.MaxVarintLen64+len(head)+len(n.Text))
	data = binary.AppendUvarint(data, uint64(len(head)))
	return append(append(data, head...), n.Text...), nil
}

func unpackNote(tx *bolt.Tx, hash string, data []byte) (colony.Note, error) {
	var n colony.Note
	size, used := binary.Uvarint(data)
	if used <= 0 || uint64(len(data)-used) < size {
		return n, damaged(tx.DB().Path(), "note "+hash+" is cut short")
	}
	head := data[used : used+int(size)]
	if err := decode(tx, "note "+hash, head, &n); err != nil {
		return n, err
	}
	n.Text = string(data[used+int(size):])
	return n, nil
}

// Note returns the note as it stands: with its latest edit, if it was edited.
func (s *Store) Note(hash string) (n colony.Note, err error) {
	err = s.view(func(tx *bolt.Tx) (err error) {
		n, err = getNote(tx, hash)
		return err
	})
	return n, err
}

// Knows reports whether a note of this hash was taken in.
func (s *Store) Knows(hash string) (known bool, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		known = tx.Bucket(bucketNotes).Get([]byte(hash)) != nil
		return nil
	})
	return known, err
}

// getOriginal returns the note as it was handed in, byte for byte.
func getOriginal(tx *bolt.Tx, hash string) (colony.Note, error) {
	data := tx.Bucket(bucketNotes).Get([]byte(hash))
	if data == nil {
		return colony.Note{}, unknown("note", hash)
	}
	return unpackNote(tx, hash, data)
}

func getNote(tx *bolt.Tx, hash string) (colony.Note, error) {
	if _, data := lastNumbered(tx.Bucket(bucketEdits), hash); data != nil {
		return unpackNote(tx, hash, data)
	}
	return getOriginal(tx, hash)
}

// Take keeps a note with the inspections that were read in it, which wait to
// be confirmed, in one transaction. A note without a time of taking gets the
// clock's. It returns ErrTaken where the note's hash is known.
func (s *Store) Take(note colony.Note, read []colony.Inspection) ([]colony.Record, error) {
	if note.Hash == "" {
		return nil, errors.New("a note without its hash cannot be kept")
	}
	if note.Taken.IsZero() {
		note.Taken = s.opts.clock()
	}
	var records []colony.Record
	err := s.update(func(tx *bolt.Tx) (err error) {
		records, err = s.take(tx, note, read)
		return err
	})
	if err != nil {
		return nil, err
	}
	s.nudge()
	return records, nil
}

func (s *Store) take(tx *bolt.Tx, note colony.Note, read []colony.Inspection) ([]colony.Record, error) {
	if tx.Bucket(bucketNotes).Get([]byte(note.Hash)) != nil {
		return nil, fmt.Errorf("%s: %w", nameOf(note), ErrTaken)
	}
	data, err := packNote(&note)
	if err != nil {
		return nil, err
	}
	if err := tx.Bucket(bucketNotes).Put([]byte(note.Hash), data); err != nil {
		return nil, err
	}
	records := make([]colony.Record, 0, len(read))
	for i := range read {
		r, err := s.newRecord(&note, read[i], i+1)
		if err != nil {
			return nil, err
		}
		if err := putRecord(tx, nil, &r); err != nil {
			return nil, err
		}
		records = append(records, r)
	}
	return records, nil
}

// newRecord makes a record that waits, from one reading of a note.
func (s *Store) newRecord(note *colony.Note, read colony.Inspection, seq int) (colony.Record, error) {
	id, err := s.newID(note.Taken)
	if err != nil {
		return colony.Record{}, err
	}
	r := colony.Record{ID: id, State: colony.Waiting, Changed: note.Taken}
	settle(&r, note, read, seq)
	return r, nil
}

// settle puts a reading into a record, marked with where it came from.
func settle(r *colony.Record, note *colony.Note, read colony.Inspection, seq int) {
	r.NoteHash, r.Seq = note.Hash, seq
	r.Read = read
	r.Read.ID = r.ID
	r.Read.Schema = colony.Schema
	r.Read.Source.Note, r.Read.Source.Name, r.Read.Source.Seq = note.Hash, note.Name, seq
}

func nameOf(n colony.Note) string {
	if n.Name != "" {
		return n.Name
	}
	return "note " + n.Hash
}
