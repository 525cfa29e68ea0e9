package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"barwise/cmd/barwise/command"
	"barwise/tui"
)

var update = flag.Bool("update", false, "rewrite the README's picture and keys as they are now")

var readmeFile = filepath.Join("..", "..", "README.md")

func readme(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(readmeFile)
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(string(data), "\r\n", "\n")
}

// isShown holds that the README shows what is so now at the place of was, or
// with -update writes it there.
func isShown(t *testing.T, what, was, now string) {
	t.Helper()
	switch text := readme(t); {
	case was == "":
		t.Errorf("the README has no place for what its %s", what)
	case was == now:
	case !*update:
		t.Errorf("the README's %s out of date, go test ./cmd/barwise -run Readme -update; now:\n%s", what, now)
	default:
		if err := os.WriteFile(readmeFile, []byte(strings.Replace(text, was, now, 1)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
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
	_, table, _ := strings.Cut(readme(t), "## Keys of the review\n\n")
	table, _, _ = strings.Cut(table, "\n## ")
	isShown(t, "keys are", table, tui.KeyTable())
}

// TestReadmeShowsTheReview: the picture in the README is what a terminal of its
// size shows of a note of the demo.
func TestReadmeShowsTheReview(t *testing.T) {
	tmux, err := exec.LookPath("tmux")
	if err != nil {
		t.Skip("there is no tmux here")
	}
	_, picture, _ := strings.Cut(readme(t), "```text\n")
	picture, _, _ = strings.Cut(picture, "```\n")
	dir, err := os.MkdirTemp("", "barwise-") // a socket takes no long name
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(dir)
	var talk bytes.Buffer
	note := filepath.Join("demo", "notes", "2026-04-04-1450-orchard.txt")
	if code := command.Run([]string{"take", "--data", dir, note}, strings.NewReader(""), &talk, &talk); code != 0 {
		t.Fatalf("take exits with %d: %s", code, talk.String())
	}
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	terminal := func(args ...string) string {
		cmd := exec.CommandContext(ctx, tmux, append([]string{"-u", "-S", filepath.Join(dir, "terminal")}, args...)...)
		// The review draws by TERM, NO_COLOR, CI and their like: the picture
		// must not hang on who runs the test.
		cmd.Env = []string{"PATH=" + os.Getenv("PATH"), "HOME=" + dir, "LANG=C.UTF-8"}
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("tmux %q: %v: %s", args, err, out)
		}
		return string(out)
	}
	shows := func(want string) (screen string) {
		for !strings.Contains(screen, want) {
			screen = terminal("capture-pane", "-p")
		}
		return screen
	}
	height := strconv.Itoa(strings.Count(picture, "\n"))
	// The status line is off before there is a window: switched off later, it
	// would leave the review's first frames a line short.
	settings := filepath.Join(dir, "settings")
	if err := os.WriteFile(settings, []byte("set-option -g status off\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	terminal("-f", settings, "new-session", "-d", "-x", "80", "-y", height, "barwise review --data "+dir)
	defer terminal("kill-server")
	shows("1 inspection waits")
	terminal("send-keys", "Enter")
	screen := shows("space it is right") // the last line
	isShown(t, "picture is", picture, regexp.MustCompile(` +\n`).ReplaceAllString(screen, "\n"))
}
