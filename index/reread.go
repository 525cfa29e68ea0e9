package index

import (
	"bytes"
	"encoding/json"
	"reflect"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Edit keeps a new text for a note, next to all texts before, and puts the
// reading of it in place of the old one; the text may be the same as before,
// read anew. Corrections, answers and history stay. A reading goes to the
// record of the same hive, else to the next one in order. A confirmed record
// that would now say something else waits again; a further inspection waits
// too; a record that the reading no longer has is set aside if it waited and
// nobody corrected it, and else kept as it is. Where corrections are tied to
// words, and timed words to the text, they move with it; ties to words that
// were edited away are dropped.
func (s *Store) Edit(hash, text string, read []colony.Inspection) error {
	return s.EditAndSave(hash, text, read, nil, nil)
}

// EditAndSave is Edit that keeps, in the same transaction, what a person did on
// a record: corrections, answers and state of first before the edit, so that
// they move with the words, and those of last after it, so that they stand as
// they are. Either may be nil.
func (s *Store) EditAndSave(hash, text string, read []colony.Inspection, first, last *colony.Record) error {
	err := s.update(func(tx *bolt.Tx) error {
		if err := s.layOn(tx, first); err != nil {
			return err
		}
		note, err := getNote(tx, hash)
		if err != nil {
			return err
		}
		var move shift
		if note.Text != text {
			move = shiftBetween(note.Text, text)
			if err := putEdit(tx, &note, text, move); err != nil {
				return err
			}
		}
		if err := s.reread(tx, &note, read, move); err != nil {
			return err
		}
		return s.layOn(tx, last)
	})
	if err == nil {
		s.nudge()
	}
	return err
}

// layOn lays what a person did in the record given, if one is, on the reading
// that is kept.
func (s *Store) layOn(tx *bolt.Tx, work *colony.Record) error {
	if work == nil {
		return nil
	}
	old, err := getRecord(tx, work.ID)
	if err != nil {
		return err
	}
	r := old
	r.Corrections, r.Accepted, r.State = work.Corrections, work.Accepted, work.State
	return s.replace(tx, &old, &r)
}

func putEdit(tx *bolt.Tx, note *colony.Note, text string, move shift) error {
	note.Text = text
	var words []colony.TimedWord
	for _, w := range note.Words {
		if span, ok := move.of(w.Span); ok {
			w.Span = span
			words = append(words, w)
		}
	}
	note.Words = words
	data, err := packNote(note)
	if err != nil {
		return err
	}
	edits := tx.Bucket(bucketEdits)
	n, _ := lastNumbered(edits, note.Hash)
	return edits.Put(numberKey(note.Hash, n+1), data)
}

// edits lists the texts that a note was given after it was handed in, the oldest
// first.
func edits(tx *bolt.Tx, hash string) (list []colony.Note, err error) {
	for _, data := range numbered(tx.Bucket(bucketEdits), hash) {
		n, err := unpackNote(tx, hash, data)
		if err != nil {
			return nil, err
		}
		list = append(list, n)
	}
	return list, nil
}

func (s *Store) reread(tx *bolt.Tx, note *colony.Note, read []colony.Inspection, move shift) error {
	records, err := recordsOfNote(tx, note.Hash)
	if err != nil {
		return err
	}
	goesTo := pair(records, read)
	for i := range read {
		if goesTo[i] >= 0 {
			if err := s.renew(tx, note, &records[goesTo[i]], read[i], i+1, move); err != nil {
				return err
			}
			continue
		}
		r, err := s.newRecord(note, read[i], i+1)
		if err != nil {
			return err
		}
		r.Changed = s.opts.clock()
		if err := putRecord(tx, nil, &r); err != nil {
			return err
		}
	}
	if err := s.retire(tx, records, goesTo, len(read), move); err != nil {
		return err
	}
	return relist(tx, note.Hash)
}

// relist has the index look at every inspection of a note, since which words
// belong to which of them may have changed although a record did not.
func relist(tx *bolt.Tx, hash string) error {
	records, err := recordsOfNote(tx, hash)
	for i := 0; err == nil && i < len(records); i++ {
		err = logChange(tx, records[i].ID)
	}
	return err
}

// pair says for each reading which record it goes to, or -1 for a new one:
// first to records of the same hive, then to those left over, both in order.
func pair(records []colony.Record, read []colony.Inspection) []int {
	goesTo := make([]int, len(read))
	used := make([]bool, len(records))
	for i := range goesTo {
		goesTo[i] = -1
	}
	assign := func(fits func(r *colony.Record, ins *colony.Inspection) bool) {
		for i := range read {
			for j := range records {
				if goesTo[i] < 0 && !used[j] && fits(&records[j], &read[i]) {
					goesTo[i], used[j] = j, true
				}
			}
		}
	}
	assign(func(r *colony.Record, ins *colony.Inspection) bool { return r.Read.Hive == ins.Hive })
	assign(func(r *colony.Record, ins *colony.Inspection) bool { return true })
	return goesTo
}

// renew gives a record its new reading.
func (s *Store) renew(tx *bolt.Tx, note *colony.Note, old *colony.Record, read colony.Inspection, seq int, move shift) error {
	r := *old
	settle(&r, note, read, seq)
	r.Corrections = move.corrections(old.Corrections)
	if r.State == colony.Confirmed {
		before, now := current(old), current(&r)
		if !reflect.DeepEqual(colony.Leaves(&before), colony.Leaves(&now)) {
			r.State = colony.Waiting
		}
	}
	return s.replace(tx, old, &r)
}

// retire deals with the records that no reading went to, and gives them places
// after those that one did.
func (s *Store) retire(tx *bolt.Tx, records []colony.Record, goesTo []int, seq int, move shift) error {
	used := map[int]bool{}
	for _, j := range goesTo {
		used[j] = true
	}
	for j := range records {
		if used[j] {
			continue
		}
		seq++
		r := records[j]
		r.Seq = seq
		r.Read.Source.Seq = seq
		r.Corrections = move.corrections(r.Corrections)
		r.Read.Evidence = move.evidence(r.Read.Evidence)
		if r.State == colony.Waiting && len(r.Corrections) == 0 {
			r.State = colony.SetAside
		}
		if err := s.replace(tx, &records[j], &r); err != nil {
			return err
		}
	}
	return nil
}

// equal reports whether two records have the same JSON form.
func equal(a, b *colony.Record) (bool, error) {
	x, err := json.Marshal(a)
	if err != nil {
		return false, err
	}
	y, err := json.Marshal(b)
	return bytes.Equal(x, y), err
}
