package index

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// Imported says what an import did.
type Imported struct {
	Notes, Records, Settings int
	Words                    bool    // own words were added
	Skipped                  int     // lines whose content was there already
	Differ                   int     // lines that are here in another version; what is here was kept
	Bad                      []error // lines that could not be read, with their numbers
	BadLines                 int     // how many those are, of which Bad holds the first
}

const (
	importLines = 500      // lines stored in one transaction, unless they are
	importBytes = 16 << 20 // more bytes than this
	maxLine     = 1 << 30  // bytes; a note has at most a fraction of it
	badKept     = 100      // errors told
	badHopeless = 100      // bad lines before the first good one that end the import
)

// Import adds what Export wrote. What is here already is skipped, and where it
// differs the version here is kept; own words are joined. A bad line is told in
// the result, and the rest goes on. An error means that the import ended early;
// the result says what was stored until then.
func (s *Store) Import(r io.Reader) (Imported, error) {
	in := importer{lines: bufio.NewReaderSize(r, 1<<16)}
	defer s.nudge()
	for {
		batch, err := in.read()
		if len(batch) > 0 {
			before := in.done
			if err := s.update(func(tx *bolt.Tx) error { return in.store(tx, batch) }); err != nil {
				return before, fmt.Errorf("import ended before line %d: %w", batch[0].number, err)
			}
		}
		if in.hopeless() {
			return in.done, fmt.Errorf("import: this is no export of barwise: %w", in.done.Bad[0])
		}
		if errors.Is(err, io.EOF) {
			return in.done, nil
		}
		if err != nil {
			return in.done, fmt.Errorf("import ended after line %d: %w", in.number, err)
		}
	}
}

type importer struct {
	lines  *bufio.Reader
	number int // of the line read last
	done   Imported
}

type numberedLine struct {
	number int
	data   []byte
}

// read returns the next lines that go into one transaction.
func (in *importer) read() (batch []numberedLine, err error) {
	for size := 0; err == nil && len(batch) < importLines && size < importBytes; {
		var data []byte
		data, err = in.line()
		if len(data) > 0 {
			in.number++
		}
		if in.number == 1 {
			data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
		}
		if data = bytes.TrimSpace(data); len(data) > 0 {
			batch = append(batch, numberedLine{in.number, data})
			size += len(data)
		}
	}
	return batch, err
}

// line reads up to the next line's end. What never ends is no export, and would
// fill the memory.
func (in *importer) line() (data []byte, err error) {
	for {
		part, err := in.lines.ReadSlice('\n')
		data = append(data, part...)
		if len(data) > maxLine {
			return nil, fmt.Errorf("the next line is longer than %d MiB, as none of an export is", maxLine>>20)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return data, err
		}
	}
}

func (in *importer) hopeless() bool {
	d := in.done
	return d.BadLines >= badHopeless && d.Notes+d.Records+d.Settings+d.Skipped+d.Differ == 0
}

func (in *importer) bad(line int, err error) {
	in.done.BadLines++
	if len(in.done.Bad) < badKept {
		in.done.Bad = append(in.done.Bad, fmt.Errorf("line %d: %w", line, err))
	}
}

// errWrite marks an error of the store, which ends an import, where all others
// are the line's.
var errWrite = errors.New("not stored")

func (in *importer) store(tx *bolt.Tx, batch []numberedLine) error {
	for _, line := range batch {
		err := in.storeLine(tx, line.data)
		if errors.Is(err, errWrite) || errors.Is(err, ErrDamaged) {
			return err
		}
		if err != nil {
			in.bad(line.number, err)
		}
	}
	return nil
}

func (in *importer) storeLine(tx *bolt.Tx, data []byte) error {
	var line exportLine
	if err := json.Unmarshal(data, &line); err != nil {
		return fmt.Errorf("this is no JSON object of an export: %w", err)
	}
	switch {
	case line.Kind == kindHeader:
		if line.Version > exportVersion {
			return fmt.Errorf("the export has version %d, this barwise reads up to %d; what it knows of it is read", line.Version, exportVersion)
		}
		return nil
	case line.Kind == kindWords && line.Words != nil:
		return in.words(tx, *line.Words)
	case line.Kind == kindSetting && line.Name != "" && len(line.Value) > 0:
		return in.setting(tx, line)
	case line.Kind == kindNote && line.Note != nil:
		return in.note(tx, line)
	case line.Kind == kindRecord && len(line.Record) > 0:
		return in.record(tx, line)
	}
	return fmt.Errorf("a line of kind %q with nothing that belongs to it", line.Kind)
}

// put counts a value as stored, once it is.
func put(count *int, err error) error {
	if err != nil {
		return fmt.Errorf("%w: %w", errWrite, err)
	}
	*count++
	return nil
}

func (in *importer) words(tx *bolt.Tx, own colony.OwnWords) error {
	here, err := getOwnWords(tx)
	if err != nil {
		return err
	}
	joined := colony.OwnWords{
		Aliases: joinMaps(here.Aliases, own.Aliases), Sounds: joinMaps(here.Sounds, own.Sounds),
		Plants: join(here.Plants, own.Plants), Hives: join(here.Hives, own.Hives),
	}
	before, _ := json.Marshal(here)
	after, err := json.Marshal(joined)
	if err != nil || bytes.Equal(before, after) && tx.Bucket(bucketWords).Get(ownWordsKey) != nil {
		in.done.Skipped++
		return err
	}
	in.done.Words = true
	var n int
	return put(&n, tx.Bucket(bucketWords).Put(ownWordsKey, after))
}

// joinMaps adds to what is here; where both know a word, what is here stays.
func joinMaps(here, more map[string]string) map[string]string {
	if len(more) == 0 {
		return here
	}
	joined := maps.Clone(more)
	maps.Copy(joined, here)
	return joined
}

func join(here, more []string) []string {
	for _, word := range more {
		if !slices.Contains(here, word) {
			here = append(here, word)
		}
	}
	return here
}

func (in *importer) setting(tx *bolt.Tx, line exportLine) error {
	b := tx.Bucket(bucketSettings)
	if here := b.Get([]byte(line.Name)); here != nil {
		in.there(bytes.Equal(here, line.Value))
		return nil
	}
	return put(&in.done.Settings, b.Put([]byte(line.Name), line.Value))
}

// there counts a line whose content is here, in the same version or not.
func (in *importer) there(same bool) {
	if same {
		in.done.Skipped++
	} else {
		in.done.Differ++
	}
}

func (in *importer) note(tx *bolt.Tx, line exportLine) error {
	hash := line.Note.Hash
	if hash == "" {
		return errors.New("the note has no hash")
	}
	var packed [][]byte
	for _, e := range append([]exportNote{*line.Note}, line.Edits...) {
		if e.Hash != hash {
			return errors.New("an edit of the note has another hash")
		}
		n := e.note()
		data, err := packNote(&n)
		if err != nil {
			return err
		}
		packed = append(packed, data)
	}
	if here := tx.Bucket(bucketNotes).Get([]byte(hash)); here != nil {
		in.there(slices.EqualFunc(append([][]byte{here}, numbered(tx.Bucket(bucketEdits), hash)...), packed, bytes.Equal))
		return nil
	}
	err := tx.Bucket(bucketNotes).Put([]byte(hash), packed[0])
	for i := 1; err == nil && i < len(packed); i++ {
		err = tx.Bucket(bucketEdits).Put(numberKey(hash, uint64(i)), packed[i])
	}
	return put(&in.done.Notes, err)
}

func (in *importer) record(tx *bolt.Tx, line exportLine) error {
	r, err := readRecord(line.Record)
	if err != nil {
		return err
	}
	var history []colony.Record
	for _, data := range line.History {
		earlier, err := readRecord(data)
		if err == nil && (earlier.ID != r.ID || earlier.NoteHash != r.NoteHash) {
			err = errors.New("it is of another record")
		}
		if err != nil {
			return fmt.Errorf("history: %w", err)
		}
		history = append(history, earlier)
	}
	if tx.Bucket(bucketNotes).Get([]byte(r.NoteHash)) == nil {
		return fmt.Errorf("record %s: its note %q is neither here nor on an earlier line", r.ID, r.NoteHash)
	}
	if here := tx.Bucket(bucketRecords).Get([]byte(r.ID)); here != nil {
		in.there(bytes.Equal(here, line.Record))
		return nil
	}
	if tx.Bucket(bucketByNote).Get(numberKey(r.NoteHash, uint64(r.Seq))) != nil {
		in.there(false) // the same note was taken in here too
		return nil
	}
	for i := range history {
		if err == nil {
			err = keepVersion(tx, &history[i])
		}
	}
	if err == nil {
		err = putRecord(tx, nil, &r)
	}
	return put(&in.done.Records, err)
}

// readRecord decodes a record and refuses one that no store can hold.
func readRecord(data []byte) (r colony.Record, err error) {
	if err := json.Unmarshal(data, &r); err != nil {
		return r, err
	}
	switch {
	case r.ID == "":
		return r, errors.New("the record has no ID")
	case r.Seq < 1:
		return r, fmt.Errorf("record %s: its place in the note is %d, and the first is 1", r.ID, r.Seq)
	case r.State != colony.Waiting && r.State != colony.Confirmed && r.State != colony.SetAside:
		return r, fmt.Errorf("record %s: there is no state %q", r.ID, r.State)
	}
	return r, nil
}
