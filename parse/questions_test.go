package parse

import (
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"barwise/colony"
)

// TestManyAtOnce holds a parser to what its readers say one after another, while as many
// of them read as there are cores.
func TestManyAtOnce(t *testing.T) {
	p := mustNew(t)
	notes := readGold(t, "../testdata/notes/typed.gold")
	alone := make([][]colony.Inspection, len(notes))
	for i, c := range notes {
		alone[i] = p.Parse(&colony.Note{Text: c.note, Given: c.at})
	}
	beside := make([][]colony.Inspection, 4*len(notes))
	onEachCore(len(beside), func(i int) {
		c := notes[i%len(notes)]
		beside[i] = p.Parse(&colony.Note{Text: c.note, Given: c.at})
	})
	for i, got := range beside {
		if want := alone[i%len(notes)]; !reflect.DeepEqual(got, want) {
			t.Errorf("%s, read beside others:\n%+v\nalone:\n%+v", notes[i%len(notes)].id, got, want)
		}
	}
}

// TestNothingNeedfulIsPassedBy reads every note of the corpus twice, the second
// time with every question asked of every clause, and again without its
// punctuation and capitals: what is passed by must have had nothing to say.
func TestNothingNeedfulIsPassedBy(t *testing.T) {
	leftOutOfShortRuns(t)
	usual, thorough := mustNew(t), mustNew(t)
	thorough.readers.New = func() any {
		r := newReader(thorough.lexicon)
		r.askAll = true
		return r
	}
	bare := strings.NewReplacer(".", " ", ",", " ", ";", " ", ":", " ", "?", " ", "!", " ", "\n", " ")
	paths, err := filepath.Glob("../testdata/notes/*.gold")
	deeper, err2 := filepath.Glob("../testdata/notes/*/*.gold")
	paths = append(paths, deeper...)
	if err != nil || err2 != nil || len(paths) == 0 {
		t.Fatalf("no notes to read: %v %v", err, err2)
	}
	for _, path := range paths {
		for _, c := range readGold(t, path) {
			for _, text := range []string{c.note, bare.Replace(strings.ToLower(c.note))} {
				note := &colony.Note{Text: text, Given: c.at}
				want, got := thorough.Parse(note), usual.Parse(note)
				if !reflect.DeepEqual(want, got) {
					t.Errorf("%s: %s: a question was passed by that had an answer:\n%+v\nasked all:\n%+v\n%s", path, c.id, got, want, text)
				}
			}
		}
	}
}
