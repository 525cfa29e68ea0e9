package parse

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"testing"
	"time"

	"barwise/colony"
)

var misses = flag.String("misses", "", "print every miss of the gold files whose name contains this")

// leftOutOfShortRuns skips a test that reads thousands of notes.
func leftOutOfShortRuns(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("many notes, one after the other: left out of short runs")
	}
}

// goldCase is one note with the leaves it must become.
type goldCase struct {
	hives    []string // that the keeper has, where that is told
	id, note string
	at       time.Time
	want     []map[string]string
}

func readGold(t testing.TB, path string) []goldCase {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var out []goldCase
	part := ""
	at := "2026-05-14T16:00:00Z"
	var hives []string // of the keeper, where a comment tells them
	for n, line := range strings.Split(string(data), "\n") {
		switch {
		case strings.HasPrefix(line, "# apiary "):
			_, names, _ := strings.Cut(line, ": ")
			hives = strings.Split(names, ", ")
		case strings.HasPrefix(line, "== id "):
			out = append(out, goldCase{id: strings.TrimSpace(line[6:]), hives: hives})
			part, at = "", "2026-05-14T16:00:00Z"
		case len(out) == 0:
		case part == "" && strings.HasPrefix(line, "at "):
			at = strings.TrimSpace(line[3:])
		case line == "note":
			part = "note"
			if out[len(out)-1].at, err = time.Parse(time.RFC3339, at); err != nil {
				t.Fatalf("%s:%d: %v", path, n+1, err)
			}
		case line == "want":
			part = "want"
			out[len(out)-1].want = append(out[len(out)-1].want, map[string]string{})
		case part == "note":
			out[len(out)-1].note += line + "\n"
		case part == "want" && strings.TrimSpace(line) != "" && line[0] != '#':
			key, value, ok := strings.Cut(line, "=")
			if !ok {
				t.Fatalf("%s:%d: not path=value: %s", path, n+1, line)
			}
			want := out[len(out)-1].want
			want[len(want)-1][strings.TrimSpace(key)] = strings.TrimSpace(value)
		}
	}
	return out
}

// tolerance by the last name of a path, as the contract's scorer has it.
var tolerance = map[string]float64{"cover": .05, "drawn": .05, "width_mm": 3, "depth_mm": 3, "length_mm": 3, "temp_c": .6, "weight_kg": .1, "amount": .01}

func sameLeaf(path, want, got string) bool {
	if want == got {
		return true
	}
	if path == "at" {
		return len(want) >= 16 && len(got) >= 16 && want[:16] == got[:16] || len(want) == 10 && strings.HasPrefix(got, want)
	}
	tol, ok := tolerance[path[strings.LastIndexByte(path, '.')+1:]]
	if !ok {
		return false
	}
	w, err1 := strconv.ParseFloat(want, 64)
	g, err2 := strconv.ParseFloat(got, 64)
	return err1 == nil && err2 == nil && w-g <= tol && g-w <= tol
}

// tally counts leaves right, invented and missed.
type tally struct{ right, invented, missed, flagged, quiet, quietWrong int }

func (c tally) precision() float64 { return ratio(c.right, c.right+c.invented) }
func (c tally) recall() float64    { return ratio(c.right, c.right+c.missed) }
func (c tally) f1() float64 {
	p, r := c.precision(), c.recall()
	if p+r == 0 {
		return 0
	}
	return 2 * p * r / (p + r)
}

func ratio(a, b int) float64 {
	if b == 0 {
		return 0
	}
	return float64(a) / float64(b)
}

func (c *tally) add(o tally) {
	c.right += o.right
	c.invented += o.invented
	c.missed += o.missed
	c.flagged += o.flagged
	c.quiet += o.quiet
	c.quietWrong += o.quietWrong
}

func topic(path string) string {
	parts := strings.Split(path, ".")
	if parts[0] != "bars" || len(parts) < 3 {
		return parts[0]
	}
	switch parts[2] {
	case "comb", "queen_cells", "placed", "festooning":
		return "bars." + parts[2]
	}
	return "bars.contents"
}

// score compares one note's reading with its answer, and adds to the topics.
func score(p *Parser, c goldCase, topics map[string]*tally, say func(format string, args ...any)) tally {
	var total tally
	count := func(path string, t tally) {
		total.add(t)
		if topics[topic(path)] == nil {
			topics[topic(path)] = &tally{}
		}
		topics[topic(path)].add(t)
	}
	got := p.Parse(&colony.Note{Text: c.note, Given: c.at})
	for i := range max(len(got), len(c.want)) {
		want, have, flags := map[string]string{}, map[string]string{}, []string{}
		if i < len(c.want) {
			want = c.want[i]
		}
		if i < len(got) {
			for _, l := range colony.Leaves(&got[i]) {
				have[l.Path] = l.Value
			}
			for _, ch := range got[i].Check {
				flags = append(flags, ch.Path)
			}
		}
		if _, ok := want["at"]; !ok {
			delete(have, "at")
		}
		for _, path := range sortedKeys(have) {
			w, known := want[path]
			ok := known && sameLeaf(path, w, have[path])
			asked := false
			for _, f := range flags {
				asked = asked || path == f || strings.HasPrefix(path, f+".")
			}
			t := tally{}
			if asked {
				t.flagged = 1
			} else {
				t.quiet = 1
			}
			if ok {
				t.right = 1
			} else {
				t.invented = 1
				if !asked {
					t.quietWrong = 1
				}
				mark := ""
				if asked {
					mark = " [flagged]"
				}
				say("%s[%d] got  %s=%s  (want %q)%s", c.id, i, path, have[path], w, mark)
			}
			count(path, t)
		}
		for _, path := range sortedKeys(want) {
			if g, ok := have[path]; !ok || !sameLeaf(path, want[path], g) {
				count(path, tally{missed: 1})
				if !ok {
					say("%s[%d] miss %s=%s", c.id, i, path, want[path])
				}
			}
		}
	}
	return total
}

func sortedKeys(m map[string]string) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// readFloors reads lines of a file's name and the least F1 that it may score.
func readFloors(t *testing.T, path string) map[string]float64 {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	floors := map[string]float64{}
	for n, line := range strings.Split(string(data), "\n") {
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		var name string
		var floor float64
		if _, err := fmt.Sscan(line, &name, &floor); err != nil {
			t.Fatalf("%s:%d: want a file and a number: %q", path, n+1, line)
		}
		floors[name] = floor
	}
	return floors
}

// TestCorpus prints precision, recall and F1 by file and topic, and holds the
// floors of testdata/notes/floors.txt.
func TestCorpus(t *testing.T) {
	p, err := New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, folder := range []string{"../testdata/notes", "../testdata/notes/seen", "../testdata/notes/heldout", "../../shared/gold"} {
		found, err := filepath.Glob(folder + "/*.gold")
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, found...)
	}
	floors := readFloors(t, "../testdata/notes/floors.txt")
	topics := map[string]*tally{}
	for _, path := range paths {
		var total tally
		exact, n := 0, 0
		for _, c := range readGold(t, path) {
			say := func(string, ...any) {}
			if *misses != "" && strings.Contains(path, *misses) {
				say = func(f string, a ...any) { fmt.Printf(f+"\n", a...) }
			}
			one := score(p, c, topics, say)
			n++
			if one.invented+one.missed == 0 {
				exact++
			}
			total.add(one)
		}
		if floor, ok := floors[strings.TrimPrefix(path, "../testdata/notes/")]; ok && total.f1() < floor {
			t.Errorf("%s: F1 %.4f is below the floor of %.3f", path, total.f1(), floor)
		}
		t.Logf("%-42s P %.3f R %.3f F1 %.3f  exact %d/%d  flagged %.3f  unflagged wrong %.4f", path, total.precision(), total.recall(), total.f1(), exact, n,
			ratio(total.flagged, total.right+total.invented), ratio(total.quietWrong, total.quiet))
	}
	names := make([]string, 0, len(topics))
	for name := range topics {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		c := topics[name]
		t.Logf("%-20s right %5d invented %4d missed %4d  P %.3f R %.3f F1 %.3f", name, c.right, c.invented, c.missed, c.precision(), c.recall(), c.f1())
	}
}
