package command

import (
	"bytes"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

var noon = time.Date(2026, 5, 14, 12, 0, 0, 0, time.UTC)

// loading makes a loader over a folder in memory.
func loading(files fstest.MapFS) *loader {
	return &loader{open: files.Open, now: noon, stdin: strings.NewReader("")}
}

func TestLoadRefuses(t *testing.T) {
	big := &fstest.MapFile{Data: bytes.Repeat([]byte("bar one eggs "), 8<<20)} // 104 MB
	for name, c := range map[string]struct {
		file *fstest.MapFile
		want string
	}{
		"empty.txt":   {&fstest.MapFile{}, "empty.txt: is empty"},
		"mark.txt":    {&fstest.MapFile{Data: []byte("\xef\xbb\xbf")}, "mark.txt: holds no words"},
		"blank.txt":   {&fstest.MapFile{Data: []byte(" \r\n\t\n")}, "blank.txt: holds no words"},
		"nul.txt":     {&fstest.MapFile{Data: []byte("hive 3\neggs\x00 bar 4")}, "nul.txt: line 2, column 5, byte 12 is a NUL: this is a binary file"},
		"picture.txt": {&fstest.MapFile{Data: []byte("\x89PNG\r\n\x1a\n\x00\x00")}, "picture.txt: is a picture, not a note"},
		"paper.txt":   {&fstest.MapFile{Data: []byte("%PDF-1.7\n")}, "paper.txt: is a PDF, not a note"},
		"latin.txt":   {&fstest.MapFile{Data: []byte("hive 3\n17\xb0C")}, "latin.txt: line 2, column 3, byte 10 (0xb0) is not UTF-8; save the note as UTF-8"},
		"half.txt":    {&fstest.MapFile{Data: []byte("\xff\xfeh\x00i")}, "half.txt: byte 5: the UTF-16 text ends in the middle"},
		"folder":      {&fstest.MapFile{Mode: fs.ModeDir}, "folder: is a folder"},
		"device":      {&fstest.MapFile{Mode: fs.ModeSocket}, "device: is not a file that can be read"},
		"huge.txt":    {big, "huge.txt: is 104 MiB, larger than a note may be, which is 16 MiB; split it"},
		"broken.vtt":  {&fstest.MapFile{Data: []byte("WEBVTT\n\nno time --> at all\n")}, "broken.vtt"},
		"esc\x1b[2J":  {&fstest.MapFile{}, "esc·[2J: is empty"},
	} {
		_, _, err := loading(fstest.MapFS{name: c.file}).load(t.Context(), name)
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%q:\n got %v\nwant %s…", name, err, c.want)
		}
	}
}

func TestLoadSaysWhyAFileCannotBeOpened(t *testing.T) {
	for want, cause := range map[string]error{
		"x: there is no such file":                  fs.ErrNotExist,
		"x: may not be read: permission denied":     fs.ErrPermission,
		"x: cannot be read: the disk is on holiday": &fs.PathError{Op: "open", Path: "x", Err: errorText("the disk is on holiday")},
	} {
		l := loading(nil)
		l.open = func(string) (fs.File, error) { return nil, cause }
		if _, _, err := l.load(t.Context(), "x"); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
	}
}

type errorText string

func (e errorText) Error() string { return string(e) }

func TestLoadKeepsTheTextAsItIs(t *testing.T) {
	long := strings.Repeat("bar one honey bar two honey ", 5<<20/28)
	for name, c := range map[string]struct{ data, want string }{
		"crlf.txt":    {"Hive 3.\r\nBar 4: eggs.\r\n", "Hive 3.\r\nBar 4: eggs.\r\n"},
		"bom.txt":     {"\xef\xbb\xbfHive 3", "Hive 3"},
		"utf16le.txt": {"\xff\xfe1\x007\x00\xb0\x00C\x00", "17°C"},
		"utf16be.txt": {"\xfe\xff\x001\x007\x00\xb0\x00C", "17°C"},
		"escape.txt":  {"hive \x1b[31m3\x07", "hive \x1b[31m3\x07"},
		"long.txt":    {long, long},
	} {
		note, warnings, err := loading(fstest.MapFS{name: {Data: []byte(c.data)}}).load(t.Context(), name)
		if err != nil || len(warnings) > 0 || note.Text != c.want {
			t.Errorf("%s: %.40q, %v, %v", name, note.Text, warnings, err)
		}
	}
}

func TestLoadReadsATranscriptPastABrokenCue(t *testing.T) {
	vtt := "WEBVTT\n\n00:01.000 --> 00:02.000\nhive three\n\n00:0x.000 --> 00:04.000\nbar four eggs\n"
	note, warnings, err := loading(fstest.MapFS{"walk.vtt": {Data: []byte(vtt)}}).load(t.Context(), "walk.vtt")
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(note.Text, "hive three") || !strings.Contains(note.Text, "bar four eggs") || len(note.Words) == 0 {
		t.Errorf("text %q, %d timed words", note.Text, len(note.Words))
	}
	if len(warnings) != 1 || !strings.Contains(warnings[0].Error(), "walk.vtt:6") {
		t.Errorf("warnings: %v", warnings)
	}
}

func TestGivenTime(t *testing.T) {
	written := time.Date(2026, 4, 1, 8, 30, 0, 0, time.UTC)
	file := &fstest.MapFile{Data: []byte("eggs"), ModTime: written}
	at := time.Date(2025, 1, 2, 3, 4, 0, 0, time.UTC)
	for name, c := range map[string]struct {
		at, want time.Time
	}{
		"note.txt":            {time.Time{}, written},
		"2026-03-02-1405.txt": {time.Time{}, time.Date(2026, 3, 2, 14, 5, 0, 0, time.UTC)},
		"2026-03-02-1406.txt": {at, at},
	} {
		l := loading(fstest.MapFS{name: file})
		l.at = c.at
		note, _, err := l.load(t.Context(), name)
		if err != nil || !note.Given.Equal(c.want) {
			t.Errorf("%s: %v, %v; want %v", name, note.Given, err, c.want)
		}
	}
	l := loading(nil)
	l.stdin = strings.NewReader("eggs on bar four")
	if note, _, err := l.load(t.Context(), "-"); err != nil || !note.Given.Equal(noon) || note.Name != "" {
		t.Errorf("standard input: %v, %q, %v", note.Given, note.Name, err)
	}
}

func TestSameTextSameHash(t *testing.T) {
	l := loading(fstest.MapFS{"a.txt": {Data: []byte("eggs")}, "b.txt": {Data: []byte("\xef\xbb\xbfeggs")}, "c.txt": {Data: []byte("Eggs")}})
	hash := func(name string) string {
		note, _, err := l.load(t.Context(), name)
		if err != nil {
			t.Fatal(err)
		}
		return note.Hash
	}
	if hash("a.txt") != hash("b.txt") || hash("a.txt") == hash("c.txt") || len(hash("a.txt")) != 64 {
		t.Error("the hash is that of the text")
	}
}

func TestStandardInputIsLimited(t *testing.T) {
	l := loading(nil)
	l.stdin = strings.NewReader(strings.Repeat("a ", noteLimit/2+1))
	if _, _, err := l.load(t.Context(), "-"); err == nil || !strings.Contains(err.Error(), "standard input: is longer than a note may be, which is 16 MiB") {
		t.Error(err)
	}
}
