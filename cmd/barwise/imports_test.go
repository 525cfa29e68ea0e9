package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// mayImport says which of our own packages each top-level folder may import:
// cmd wires the four, the four know only the record, the record knows nothing.
// None of them may speak with the network.
var mayImport = map[string][]string{
	"cmd":    {"cmd", "colony", "index", "parse", "tui", "voice"},
	"index":  {"colony"},
	"parse":  {"colony"},
	"tui":    {"colony"},
	"voice":  {"colony"},
	"colony": {},
}

// eachGoFile visits every Go file of the module, tests too.
func eachGoFile(t *testing.T, visit func(file string)) {
	t.Helper()
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(file string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (entry.Name() == "testdata" || strings.HasPrefix(entry.Name(), ".") && file != root):
			return fs.SkipDir
		case strings.HasSuffix(file, ".go"):
			visit(file)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestImportDirections(t *testing.T) {
	seen := map[string]int{}
	eachGoFile(t, func(file string) {
		rel := strings.TrimPrefix(filepath.ToSlash(file), "../../")
		if strings.HasSuffix(rel, "_test.go") {
			return
		}
		top, _, _ := strings.Cut(rel, "/")
		seen[top]++
		for _, imported := range importsOf(t, file) {
			if why := wrongImport(top, path.Dir(rel), imported); why != "" {
				t.Errorf("%s imports %s: %s", rel, imported, why)
			}
		}
	})
	for top := range mayImport {
		if seen[top] == 0 {
			t.Errorf("no Go file under %s: this test looks in the wrong place", top)
		}
	}
}

// wrongImport says why code in the folder may not import the package, or "".
func wrongImport(top, folder, imported string) string {
	allowed, known := mayImport[top]
	if !known {
		return "the folder " + top + " has no place in the directions"
	}
	rest, ours := strings.CutPrefix(imported, "barwise/")
	if !ours {
		if imported == "net" || strings.HasPrefix(imported, "net/") && imported != "net/url" {
			return "barwise opens no connection"
		}
		if top == "colony" && strings.Contains(imported, ".") {
			return "colony takes nothing but the standard library"
		}
		return ""
	}
	target, _, _ := strings.Cut(rest, "/")
	if target == top && folder != top {
		return "" // a package below may use its neighbours
	}
	if slices.Contains(allowed, target) {
		return ""
	}
	return "cmd imports index, parse, tui and voice; these import colony and not one another"
}

func importsOf(t *testing.T, file string) []string {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, spec := range f.Imports {
		name, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, name)
	}
	return out
}

// TestWrongImportSeesWhatItShould: the rule above can fail.
func TestWrongImportSeesWhatItShould(t *testing.T) {
	for _, c := range []struct {
		top, folder, imported string
		wrong                 bool
	}{
		{"tui", "tui", "barwise/index", true},
		{"parse", "parse", "barwise/voice", true},
		{"colony", "colony", "barwise/parse", true},
		{"colony", "colony", "gonum.org/v1/gonum/stat", true},
		{"index", "index", "barwise/cmd/barwise/command", true},
		{"stray", "stray", "fmt", true},
		{"voice", "voice", "net/http", true},
		{"colony", "colony", "encoding/json", false},
		{"index", "index", "github.com/blevesearch/bleve/v2", false},
		{"index", "index/indextest", "barwise/index", false},
		{"cmd", "cmd/barwise/command", "barwise/tui", false},
	} {
		if got := wrongImport(c.top, c.folder, c.imported); (got != "") != c.wrong {
			t.Errorf("%s importing %s: %q", c.folder, c.imported, got)
		}
	}
}
