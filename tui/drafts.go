package tui

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// DraftDir keeps drafts as files of a directory, readable by their owner only.
// Each is written beside the old one and then put in its place, so there is
// always a whole draft.
type DraftDir string

// Draft returns the draft, or "" where there is none.
func (d DraftDir) Draft(name string) (string, error) {
	text, err := os.ReadFile(d.file(name))
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	return string(text), err
}

// KeepDraft writes the draft, or removes it for an empty text.
func (d DraftDir) KeepDraft(name, text string) error {
	if text == "" {
		err := os.Remove(d.file(name))
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		return err
	}
	if err := os.MkdirAll(string(d), 0o700); err != nil {
		return err
	}
	next := d.file(name) + ".next"
	if err := os.WriteFile(next, []byte(text), 0o600); err != nil {
		return err
	}
	return os.Rename(next, d.file(name))
}

// file is the draft's file. Names are record ids; anything else in one is
// written as "_" so that no name leads out of the directory.
func (d DraftDir) file(name string) string {
	safe := strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' {
			return r
		}
		return '_'
	}, name)
	return filepath.Join(string(d), safe+".txt")
}
