package index

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"unicode/utf8"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// exportVersion is the form of an export. It is JSON Lines; each line is an
// object whose kind says what else it holds:
//
//	barwise   version: the first line
//	words     words: the keeper's own
//	setting   name and value
//	note      note, and edits, the texts it was given later
//	record    record, and history, its earlier versions; after its note
//
// A text that is no valid UTF-8 stands in bytes, in base64, instead of in text.
const exportVersion = 1

const (
	kindHeader  = "barwise"
	kindWords   = "words"
	kindSetting = "setting"
	kindNote    = "note"
	kindRecord  = "record"
)

type exportLine struct {
	Kind    string            `json:"kind"`
	Version int               `json:"version,omitempty"`
	Words   *colony.OwnWords  `json:"words,omitempty"`
	Name    string            `json:"name,omitempty"`
	Value   json.RawMessage   `json:"value,omitempty"`
	Note    *exportNote       `json:"note,omitempty"`
	Edits   []exportNote      `json:"edits,omitempty"`
	Record  json.RawMessage   `json:"record,omitempty"`
	History []json.RawMessage `json:"history,omitempty"`
}

type exportNote struct {
	colony.Note
	Bytes []byte `json:"bytes,omitempty"`
}

func exportOf(n colony.Note) exportNote {
	if utf8.ValidString(n.Text) {
		return exportNote{Note: n}
	}
	e := exportNote{Note: n, Bytes: []byte(n.Text)}
	e.Text = ""
	return e
}

func (e exportNote) note() colony.Note {
	n := e.Note
	if len(e.Bytes) > 0 {
		n.Text = string(e.Bytes)
	}
	return n
}

// Export writes everything as JSON Lines, as it was at one moment; what Import
// makes of it is exported as the same bytes. Recordings are named, not
// included.
func (s *Store) Export(w io.Writer) error {
	buffered := bufio.NewWriterSize(w, 1<<16)
	out := json.NewEncoder(buffered)
	out.SetEscapeHTML(false)
	err := s.view(func(tx *bolt.Tx) error {
		for _, part := range []func(*bolt.Tx, *json.Encoder) error{exportHead, exportSettings, exportNotes} {
			if err := part(tx, out); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("export: %w", err)
	}
	return buffered.Flush()
}

func exportHead(tx *bolt.Tx, out *json.Encoder) error {
	if err := out.Encode(exportLine{Kind: kindHeader, Version: exportVersion}); err != nil {
		return err
	}
	if tx.Bucket(bucketWords).Get(ownWordsKey) == nil {
		return nil
	}
	own, err := getOwnWords(tx)
	if err != nil {
		return err
	}
	return out.Encode(exportLine{Kind: kindWords, Words: &own})
}

func exportSettings(tx *bolt.Tx, out *json.Encoder) error {
	return tx.Bucket(bucketSettings).ForEach(func(name, value []byte) error {
		return out.Encode(exportLine{Kind: kindSetting, Name: string(name), Value: value})
	})
}

// exportNotes writes the notes in the order of their hashes, each followed by
// its records in the order spoken.
func exportNotes(tx *bolt.Tx, out *json.Encoder) error {
	return tx.Bucket(bucketNotes).ForEach(func(hash, _ []byte) error {
		original, err := getOriginal(tx, string(hash))
		if err != nil {
			return err
		}
		note := exportOf(original)
		line := exportLine{Kind: kindNote, Note: &note}
		later, err := edits(tx, string(hash))
		if err != nil {
			return err
		}
		for _, n := range later {
			line.Edits = append(line.Edits, exportOf(n))
		}
		if err := out.Encode(line); err != nil {
			return err
		}
		return exportRecords(tx, out, string(hash))
	})
}

func exportRecords(tx *bolt.Tx, out *json.Encoder, hash string) error {
	for _, id := range numbered(tx.Bucket(bucketByNote), hash) {
		record := tx.Bucket(bucketRecords).Get(id)
		if record == nil {
			return damaged(tx.DB().Path(), fmt.Sprintf("record %s is missing", id))
		}
		line := exportLine{Kind: kindRecord, Record: record}
		for _, version := range numbered(tx.Bucket(bucketHistory), string(id)) {
			line.History = append(line.History, version)
		}
		if err := out.Encode(line); err != nil {
			return err
		}
	}
	return nil
}
