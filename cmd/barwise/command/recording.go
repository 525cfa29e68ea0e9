package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"barwise/colony"
	"barwise/voice"
)

// isRecording reports whether the file is sound, by its content or its name.
func isRecording(name string) bool {
	f, err := os.Open(name)
	if err != nil {
		return false
	}
	defer f.Close()
	head := make([]byte, 64)
	n, err := io.ReadFull(f, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		return false
	}
	return voice.IsRecording(name, head[:n])
}

// loadRecording makes a note of what is heard in a recording. One that was taken
// before is not listened to again: its note has the hash and no text.
func (l *loader) loadRecording(ctx context.Context, name string) (note colony.Note, warnings []error, err error) {
	info, err := os.Stat(name)
	if err != nil {
		return note, nil, fmt.Errorf("%s: %w", shown(name), readable(err))
	}
	if l.ears == nil {
		return note, nil, fmt.Errorf("%s: is a recording, not a note", shown(name))
	}
	note = colony.Note{Name: filepath.Base(name), Taken: l.now, Hive: l.hive}
	if note.Hash, err = hashFile(name); err != nil {
		return note, nil, fmt.Errorf("%s: %w", shown(name), err)
	}
	note.Given = l.given(note.Name, info.ModTime())
	if l.taken != nil {
		if known, err := l.taken(note.Hash); err != nil || known {
			return note, nil, err
		}
	}
	heard, err := l.ears.hear(ctx, name, note.Hash)
	if err != nil {
		return note, nil, err
	}
	note.Text, note.Words = heard.Text, heard.Words
	rec := colony.Recording{Hash: note.Hash}
	if l.keep != nil {
		if rec, err = l.keep(name, note.Hash); err != nil {
			return note, heard.Warnings, fmt.Errorf("%s: %w", shown(name), err)
		}
	}
	rec.Seconds = heard.Seconds
	note.Recording = &rec
	return note, heard.Warnings, nil
}
