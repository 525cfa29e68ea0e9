package command

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"barwise/voice"
)

// noteEndings are the file names that are taken from a folder, beside those of
// recordings. A file that is named outright is taken whatever it is called.
var noteEndings = []string{"", ".txt", ".text", ".md", ".note", ".vtt", ".srt", ".json"}

// notesUnder lists the files to take: those named, and of a folder every note
// in it and below, by name. Hidden files are left out; a folder that cannot be
// read is an error, and the rest is listed.
func notesUnder(names []string) (files []string, bad []error) {
	for _, name := range names {
		info, err := os.Stat(name)
		if name == "-" || err != nil || !info.IsDir() {
			files = append(files, name)
			continue
		}
		_ = filepath.WalkDir(name, func(path string, entry fs.DirEntry, err error) error {
			hidden := path != name && strings.HasPrefix(filepath.Base(path), ".")
			switch {
			case hidden && entry != nil && entry.IsDir():
				return fs.SkipDir
			case hidden:
				return nil
			case err != nil:
				bad = append(bad, fmt.Errorf("%s: %w", shown(path), readable(err)))
				return nil
			case entry.Type().IsRegular() && isNoteName(path):
				files = append(files, path)
			}
			return nil
		})
	}
	return files, bad
}

func isNoteName(path string) bool {
	return slices.Contains(noteEndings, strings.ToLower(filepath.Ext(path))) || voice.IsRecording(path, nil)
}
