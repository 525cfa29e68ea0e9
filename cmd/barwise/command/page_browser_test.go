package command

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"
)

// browse opens the page in a real browser without a window and returns the
// document as its scripts left it.
func browse(t *testing.T, address string) *html.Node {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes seconds")
	}
	chromium, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("there is no chromium here")
	}
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	profile := t.TempDir()
	cmd := exec.CommandContext(ctx, chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir="+profile, "--dump-dom", address)
	var out, talk bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &talk
	if err := cmd.Run(); err != nil {
		t.Skipf("chromium does not run here: %v: %s", err, talk.String())
	}
	doc, err := html.Parse(&out)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func attribute(n *html.Node, key string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val, true
		}
	}
	return "", false
}

func textOf(n *html.Node) string {
	var out strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			out.WriteString(d.Data)
		}
	}
	return out.String()
}

func elements(doc *html.Node, name string) (out []*html.Node) {
	for n := range doc.Descendants() {
		if n.Type == html.ElementNode && n.Data == name {
			out = append(out, n)
		}
	}
	return out
}

// TestPageInABrowser: the search leaves the inspections that hold the words and
// marks them, and what a note says is never run.
func TestPageInABrowser(t *testing.T) {
	dir := t.TempDir()
	data, out := filepath.Join(dir, "data"), filepath.Join(dir, "page")
	notes := filepath.Join(dir, "notes")
	if err := os.Mkdir(notes, 0o700); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"2026-05-02-1600.txt": "Barn hive. Chalkbrood on bar 4. Calm.",
		"2026-05-09-1600.txt": "Orchard hive. Bees gentle. <img src=x onerror=\"document.title='run'\"><script>document.title='run'</script>",
	} {
		if err := os.WriteFile(filepath.Join(notes, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, args := range [][]string{{"take", notes}, {"page", "--out", out}} {
		var talk bytes.Buffer
		if code := Run(append(args, "--data", data), strings.NewReader(""), &talk, &talk); code != 0 {
			t.Fatalf("%v exits with %d: %s", args, code, talk.String())
		}
	}
	doc := browse(t, "file://"+filepath.ToSlash(filepath.Join(out, pageFile))+"#find=CHALK")
	var left []string
	for _, article := range elements(doc, "article") {
		if _, hidden := attribute(article, "hidden"); !hidden {
			left = append(left, textOf(elements(article, "h4")[0]))
		}
	}
	if len(left) != 1 || !strings.Contains(left[0], "Sat 2 May 2026") {
		t.Errorf("the search leaves %q", left)
	}
	if found := textOf(elements(doc, "output")[0]); found != "1 inspection" {
		t.Errorf("the search says %q", found)
	}
	if marks := elements(doc, "mark"); len(marks) == 0 || !strings.EqualFold(textOf(marks[0]), "chalk") {
		t.Errorf("%d marks", len(marks))
	}
	if title := textOf(elements(doc, "title")[0]); !strings.HasPrefix(title, "Hives, ") {
		t.Errorf("a note was run: the title is %q", title)
	}
	if n := len(elements(doc, "img")); n > 0 {
		t.Errorf("a note made %d images", n)
	}
}
