package command

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
	"time"
	"unicode/utf8"

	"golang.org/x/text/encoding/unicode"

	"barwise/colony"
	"barwise/voice"
)

// noteLimit is the size of the largest note that is read. A year of talking
// stays well below it; what is larger is some other kind of file.
const noteLimit = 16 << 20

// loader turns what the caller names into notes. The files themselves are only
// ever read.
type loader struct {
	stdin io.Reader
	open  func(name string) (fs.File, error)
	now   time.Time
	at    time.Time // as the caller gave it, for every note
	hive  string    // likewise

	private bool // notes are left out of what is shared

	ears  *ears                                             // nil: recordings are refused
	keep  func(name, hash string) (colony.Recording, error) // nil: recordings are not kept
	taken func(hash string) (bool, error)                   // nil: none was; saves hearing a recording again
}

// load reads one note. The name "-" is the standard input. The error names the
// file, the place in it where there is one, the reason and what would help.
func (l *loader) load(ctx context.Context, name string) (note colony.Note, warnings []error, err error) {
	if isRecording(name) {
		return l.loadRecording(ctx, name)
	}
	data, changed, err := l.bytesOf(name)
	if err != nil {
		return note, nil, fmt.Errorf("%s: %w", shown(name), err)
	}
	note = colony.Note{Name: filepath.Base(name), Taken: l.now, Hive: l.hive}
	if name == "-" {
		note.Name = ""
	}
	if voice.IsTranscript(name, data[:min(len(data), headBytes)]) {
		note.Text, note.Words, warnings, err = voice.ReadTranscript(shown(name), bytes.NewReader(data))
		if err != nil {
			return note, warnings, err // names the file and the line
		}
	} else if note.Text, err = decode(data); err != nil {
		return note, nil, fmt.Errorf("%s: %w", shown(name), err)
	}
	if len(bytes.TrimSpace([]byte(note.Text))) == 0 {
		return note, warnings, fmt.Errorf("%s: holds no words, so there is nothing to take from it", shown(name))
	}
	note.Hash = hashOf(note.Text)
	note.Given = l.given(note.Name, changed)
	return note, warnings, nil
}

// given is the time of the inspection as far as it can be known without the
// words: what the caller said, what the file's name says, when it was written.
func (l *loader) given(name string, changed time.Time) time.Time {
	if !l.at.IsZero() {
		return l.at
	}
	if t, ok := whenNamed(name, l.now.Location()); ok {
		return t
	}
	return changed.In(l.now.Location()).Truncate(time.Second)
}

// tellsApart reports whether a note of the same text as one before is of
// another visit all the same: short notes repeat ("hive 3, all well"), and where
// the caller or the file's name gives another day or hive, the words were said
// again. A time that is merely the file's own says nothing, since copying
// changes it.
func (l *loader) tellsApart(before, note *colony.Note) bool {
	if before.Recording != nil {
		return false // the same sound is the same visit
	}
	_, named := whenNamed(note.Name, l.now.Location())
	otherDay := (named || !l.at.IsZero()) && colony.DateOf(before.Given) != colony.DateOf(note.Given)
	return otherDay || l.hive != "" && before.Hive != l.hive
}

// hashOf is the SHA-256 of the parts, in hex.
func hashOf(parts ...string) string {
	sum := sha256.Sum256([]byte(strings.Join(parts, "\x00")))
	return hex.EncodeToString(sum[:])
}

// bytesOf reads the file whole, up to the limit, and tells when it was written.
func (l *loader) bytesOf(name string) ([]byte, time.Time, error) {
	if name == "-" {
		data, err := readLimited(l.stdin)
		return data, l.now, err
	}
	f, err := l.open(name)
	if err != nil {
		return nil, time.Time{}, readable(err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, time.Time{}, readable(err)
	}
	switch {
	case info.IsDir():
		return nil, time.Time{}, errors.New("is a folder; name the notes in it, or take the whole folder with: barwise take DIR")
	case !info.Mode().IsRegular() && info.Mode()&fs.ModeNamedPipe == 0 && info.Mode()&fs.ModeCharDevice == 0:
		return nil, time.Time{}, errors.New("is not a file that can be read as a note")
	case info.Size() > noteLimit:
		return nil, time.Time{}, tooLarge(fmt.Sprintf("%d MiB, larger", info.Size()>>20))
	}
	data, err := readLimited(f)
	return data, info.ModTime(), err
}

func readLimited(r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, noteLimit+1))
	if err != nil {
		return nil, readable(err)
	}
	if len(data) > noteLimit {
		return nil, tooLarge("longer")
	}
	return data, nil
}

func tooLarge(size string) error {
	return fmt.Errorf("is %s than a note may be, which is %d MiB; split it into smaller files", size, noteLimit>>20)
}

// readable says in plain words why the system would not hand over a file.
func readable(err error) error {
	var pathErr *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such file")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("may not be read: permission denied; give yourself the right to read it")
	case errors.As(err, &pathErr):
		return fmt.Errorf("cannot be read: %w", pathErr.Err)
	default:
		return fmt.Errorf("cannot be read: %w", err)
	}
}

// decode gives the text of a note: UTF-8, or UTF-16 with its mark. The mark is
// no part of the text; line ends and everything else stay as they are.
func decode(data []byte) (string, error) {
	switch {
	case len(data) == 0:
		return "", errors.New("is empty, so there is nothing to take from it")
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return decodeUTF16(data)
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if voice.IsRecording("", data[:min(len(data), 64)]) {
		return "", errors.New("is a recording; barwise hears one that is named as a file")
	}
	if kind := knownBinary(data); kind != "" {
		return "", fmt.Errorf("is %s, not a note; barwise reads plain text and transcripts", kind)
	}
	if i := bytes.IndexByte(data, 0); i >= 0 {
		return "", fmt.Errorf("%s is a NUL: this is a binary file, not a note; barwise reads plain text and transcripts", placeIn(data, i))
	}
	if i := firstInvalid(data); i >= 0 {
		return "", fmt.Errorf("%s (0x%02x) is not UTF-8; save the note as UTF-8, for instance with: iconv -f WINDOWS-1252 -t UTF-8",
			placeIn(data, i), data[i])
	}
	return string(data), nil
}

func decodeUTF16(data []byte) (string, error) {
	if len(data)%2 != 0 {
		return "", fmt.Errorf("byte %d: the UTF-16 text ends in the middle of a character; save the note again, best as UTF-8", len(data))
	}
	text, err := unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().Bytes(data)
	if err != nil {
		return "", fmt.Errorf("the UTF-16 text cannot be read (%w); save the note as UTF-8", err)
	}
	if i := bytes.IndexByte(text, 0); i >= 0 {
		return "", fmt.Errorf("%s is a NUL: this is a binary file, not a note", placeIn(text, i))
	}
	return string(text), nil
}

// knownBinary names the kind of file that people hand in by mistake, by its
// opening bytes; "" where there is none of them.
func knownBinary(data []byte) string {
	for _, k := range []struct{ magic, kind string }{
		{"%PDF-", "a PDF"},
		{"PK\x03\x04", "a zip archive or an office document"},
		{"\x89PNG", "a picture"},
		{"\xff\xd8\xff", "a picture"},
		{"{\\rtf", "a rich text document"},
		{"SQLite format 3\x00", "a database"},
		{"\x1f\x8b", "a compressed file"},
	} {
		if bytes.HasPrefix(data, []byte(k.magic)) {
			return k.kind
		}
	}
	return ""
}

func firstInvalid(data []byte) int {
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return -1
}

// placeIn names a byte for a person: line and column, and the offset.
func placeIn(data []byte, i int) string {
	line := 1 + bytes.Count(data[:i], []byte("\n"))
	column := i - bytes.LastIndexByte(data[:i], '\n')
	return fmt.Sprintf("line %d, column %d, byte %d", line, column, i+1)
}

// headBytes is how much of a file tells what it is.
const headBytes = 4096

// shown is a file name as it may be printed.
func shown(name string) string {
	if name == "-" {
		return "standard input"
	}
	return clean(name)
}
