package main

import (
	"fmt"
	"os"
	"strings"
	"time"
)

// note is a text to be spoken, each line a phrase, with the leaves that it must
// become: one set for each inspection.
type note struct {
	name, text string
	at         time.Time
	want       []map[string]string
}

// readNotes reads the cases of a gold file.
func readNotes(path string) ([]note, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	var out []note
	for _, part := range strings.Split("\n"+string(data), "\n== id ")[1:] {
		n, err := goldNote(part)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
		out = append(out, n)
	}
	return out, nil
}

// goldNote reads one case, from its name on.
func goldNote(part string) (note, error) {
	head, rest, ok := strings.Cut(part, "\nnote\n")
	if !ok {
		return note{}, fmt.Errorf("%s has no text", head)
	}
	name, at, _ := strings.Cut(head, "\nat ")
	n := note{name: name}
	if at == "" {
		at = "2026-05-14T16:00:00Z"
	}
	var err error
	if n.at, err = time.Parse(time.RFC3339, strings.TrimSpace(at)); err != nil {
		return note{}, err
	}
	texts := strings.Split(rest, "\nwant")
	n.text = texts[0]
	for _, answer := range texts[1:] {
		leaves := map[string]string{}
		for line := range strings.Lines(answer) {
			if path, value, ok := strings.Cut(strings.TrimSpace(line), "="); ok && line[0] != '#' {
				leaves[path] = value
			}
		}
		n.want = append(n.want, leaves)
	}
	return n, nil
}
