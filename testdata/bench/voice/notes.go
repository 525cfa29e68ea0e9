package main

import (
	"fmt"
	"os"
	"strings"
)

// note is a text to be spoken; each line is a phrase.
type note struct {
	name, text string
}

// readNotes reads paragraphs whose first line is a name, or the notes of a gold
// file.
func readNotes(path string) ([]note, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	if strings.HasSuffix(path, ".gold") {
		return goldNotes(string(data)), nil
	}
	var out []note
	for _, par := range strings.Split(string(data), "\n\n") {
		par = strings.TrimSpace(par)
		if par == "" || strings.HasPrefix(par, "#") {
			continue
		}
		name, text, ok := strings.Cut(par, "\n")
		if !ok {
			return nil, fmt.Errorf("%s: %s has no text", path, name)
		}
		out = append(out, note{name, text})
	}
	return out, nil
}

// goldNotes takes the texts between "note" and "want" of each case.
func goldNotes(data string) []note {
	var out []note
	for _, part := range strings.Split(data, "== id ")[1:] {
		name, rest, _ := strings.Cut(part, "\n")
		_, rest, _ = strings.Cut(rest, "\nnote\n")
		text, _, _ := strings.Cut(rest, "\nwant")
		out = append(out, note{strings.TrimSpace(name), text})
	}
	return out
}
