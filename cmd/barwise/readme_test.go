package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"barwise/cmd/barwise/command"
	"barwise/tui"
)

func readme(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(string(data), "\r\n", "\n")
}

// TestReadmeNamesEveryCommand: and names none that is not there.
func TestReadmeNamesEveryCommand(t *testing.T) {
	var help bytes.Buffer
	if code := command.Run([]string{"help"}, strings.NewReader(""), &help, &help); code != 0 {
		t.Fatalf("help exits with %d", code)
	}
	_, list, _ := strings.Cut(help.String(), "Available Commands:\n")
	list, _, _ = strings.Cut(list, "\n\n")
	there := map[string]bool{}
	for line := range strings.SplitSeq(list, "\n") {
		there[strings.Fields(line)[0]] = true
	}
	text := readme(t)
	for name := range there {
		if name != "help" && !strings.Contains(text, "`barwise "+name) {
			t.Errorf("the README does not name barwise %s", name)
		}
	}
	for _, m := range regexp.MustCompile("(?m)(?:`|^    )barwise ([a-z]+)").FindAllStringSubmatch(text, -1) {
		if !there[m[1]] {
			t.Errorf("the README names barwise %s, which is not there", m[1])
		}
	}
}

// TestEveryDependencyHasItsWhy: each module that a Go file of ours imports has a
// line in DEVELOPERS.md, and no line is left over.
func TestEveryDependencyHasItsWhy(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for _, row := range regexp.MustCompile("(?m)^\\| `([a-z]+\\.[a-z.]+/[^`]+)` \\|").FindAllStringSubmatch(string(data), -1) {
		if _, twice := used[row[1]]; twice {
			t.Errorf("DEVELOPERS.md names %s twice", row[1])
		}
		used[row[1]] = false
	}
	eachGoFile(t, func(file string) {
		for _, imported := range importsOf(t, file) {
			first, _, _ := strings.Cut(imported, "/")
			if !strings.Contains(first, ".") {
				continue
			}
			known := false
			for module := range used {
				if imported == module || strings.HasPrefix(imported, module+"/") {
					used[module], known = true, true
				}
			}
			if !known {
				t.Errorf("%s imports %s, which DEVELOPERS.md does not name", file, imported)
			}
		}
	})
	for module, is := range used {
		if !is {
			t.Errorf("DEVELOPERS.md names %s, which nothing imports", module)
		}
	}
}

// TestReadmeListsTheKeys: the keys in the README are those of the bindings.
func TestReadmeListsTheKeys(t *testing.T) {
	if table := strings.TrimSpace(tui.KeyTable()); !strings.Contains(readme(t), table) {
		t.Errorf("the README's keys are out of date; they are now:\n%s", table)
	}
}
