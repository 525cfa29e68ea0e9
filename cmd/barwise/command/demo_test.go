package command

import (
	"io/fs"
	"path"
	"slices"
	"strings"
	"testing"

	"barwise/cmd/barwise/demo"
	"barwise/colony"
	"barwise/parse"
)

// TestDemoIsReadForItsHives: the name of a note of the demo says which hives it
// is about, and each inspection carries the time of the name.
func TestDemoIsReadForItsHives(t *testing.T) {
	parser, err := parse.New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	files, err := fs.Glob(demo.Notes, "notes/*")
	if err != nil {
		t.Fatal(err)
	}
	l := &loader{open: func(name string) (fs.File, error) { return demo.Notes.Open(name) }, now: noon}
	all := []string{"barn", "hedge", "orchard", "pond"}
	for _, file := range files {
		note, warnings, err := l.load(t.Context(), file)
		if err != nil || len(warnings) > 0 {
			t.Errorf("%s: %v, %v", file, err, warnings)
			continue
		}
		named := strings.Split(strings.TrimSuffix(path.Base(file), path.Ext(file)), "-")[4:]
		for _, ins := range parser.Parse(&note) {
			if !slices.Contains(all, ins.Hive) || slices.Contains(all, named[0]) && !slices.Contains(named, ins.Hive) {
				t.Errorf("%s was read for hive %q", file, ins.Hive)
			}
			if got := ins.At.Format("2006-01-02-1504"); !strings.HasPrefix(note.Name, got) {
				t.Errorf("%s was read for %s", file, got)
			}
		}
	}
}
