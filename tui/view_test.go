package tui

import (
	"fmt"
	"io"
	"reflect"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"barwise/colony"
)

// views are the screens and how to come to them from the list.
var views = []struct {
	name string
	keys []string
}{
	{"list", nil},
	{"sheet", []string{"down", "enter"}},
	{"hive", []string{"down", "enter", "ctrl+g"}},
	{"clean", []string{"enter"}},
	{"value", []string{"down", "enter", "down", "so"}},
	{"add", []string{"down", "enter", "+", "bar 10 honey both"}},
	{"words", []string{"down", "enter", "ctrl+w", "shift+right"}},
	{"edit", []string{"down", "enter", "ctrl+e", " Bar 11 honey. "}},
	{"new", []string{"n", "hive 9 bar 1 honey, bar 2 maybe eggs, bar 3 nectar half."}},
	{"past", []string{"o"}},
	{"help", []string{"down", "enter", "?"}},
	{"look", []string{"c", "enter"}},
	{"question", []string{"c", "enter", "enter", "enter"}},
	{"find", []string{"/", "eggs in may"}},
	{"found", []string{"/", "eggs in may", "enter", "down"}},
	{"alias", []string{"down", "enter", "down", "ctrl+t", "brood", "enter"}},
	{"edited", []string{"down", "enter", "ctrl+e", " Bar 11 honey. ", "ctrl+s", "end", "up"}},
	{"confirmed", []string{"enter", "enter", "esc", "up"}},
}

// viewOptions are with everything that the screen can show.
func viewOptions(k *fakeKeeper) Options {
	o := options(k)
	o.Teacher, o.Drafts, o.Player = &fakeTeacher{}, fakeDrafts{}, &fakePlayer{}
	o.Find = func(string) (Answer, error) {
		return Answer{Hits: []Found{{ID: second, Hive: "3", On: colony.DateOf(evening), Bar: 3, Quote: "eggs"}, {ID: "r005", Hive: "orchard", On: colony.DateOf(evening), Quote: "eggs … no larvae"}}, All: 2}, nil
	}
	return o
}

func TestViewGolden(t *testing.T) {
	for _, v := range views {
		for _, size := range [][2]int{{60, 20}, {80, 24}, {120, 30}, {160, 50}} {
			for name, colour := range map[string]colours{"plain": noStyle, "colour": fullColour} {
				t.Run(fmt.Sprintf("%s/%d/%s", v.name, size[0], name), func(t *testing.T) {
					k := take(t, sampleNotes...)
					d := newDriver(t, k, viewOptions(k), size[0], size[1])
					d.app.theme = newTheme(io.Discard, colour, onDark)
					d.press(v.keys...)
					golden.RequireEqual(t, []byte(d.app.View()))
				})
			}
		}
	}
}

func TestNoViewIsLargerThanTheTerminal(t *testing.T) {
	for _, v := range views {
		for width := narrowest; width <= 170; width += 11 {
			for _, height := range []int{lowest, 24, 45} {
				k := take(t, sampleNotes...)
				d := newDriver(t, k, viewOptions(k), width, height)
				d.press(v.keys...)
				lines := strings.Split(d.view(), "\n")
				if len(lines) > height {
					t.Errorf("%s at %d×%d: %d lines", v.name, width, height, len(lines))
				}
				for _, line := range lines {
					if w := ansi.StringWidth(line); w > width {
						t.Errorf("%s at %d×%d: a line takes %d: %q", v.name, width, height, w, line)
					}
				}
			}
		}
	}
}

func TestViewSaysTheSameWithoutColour(t *testing.T) {
	for _, v := range views {
		k := take(t, sampleNotes...)
		d := newDriver(t, k, viewOptions(k), 80, 24)
		d.app.theme = newTheme(io.Discard, noColour, onDark)
		d.press(v.keys...)
		mono := d.view()
		d.app.theme = newTheme(io.Discard, fullColour, onLight)
		if d.view() != mono {
			t.Errorf("%s differs:\n%s\n%s", v.name, mono, d.view())
		}
	}
}

func TestTooSmallSaysWhatIsMissing(t *testing.T) {
	k := take(t, sampleNotes...)
	for _, size := range [][2]int{{59, 24}, {80, 15}, {1, 1}, {12, 40}} {
		d := newDriver(t, k, options(k), size[0], size[1])
		if lines := strings.Split(d.view(), "\n"); len(lines) > size[1] {
			t.Errorf("%v: %d lines", size, len(lines))
		}
	}
	d := newDriver(t, k, options(k), 50, 24)
	d.sees("50 columns", "needs 60", "--plain", "every step is saved")
	d.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	d.sees("5 inspections wait")
}

func TestResizeInTheMiddleOfTypingKeepsIt(t *testing.T) {
	k := take(t, sampleNotes...)
	d := newDriver(t, k, options(k), 80, 24)
	d.press("down", "enter", "n")
	for _, width := range []int{40, 200, 61} {
		d.send(tea.WindowSizeMsg{Width: width, Height: 24})
	}
	d.sees("bar 3 eggs: n")
}

func TestHostileNoteReachesNoTerminal(t *testing.T) {
	hostile := "Hive \x1b]0;gotcha\x07 bar 4 eggs\x1b[2J \u202e maybe honey \x00\x9b31m"
	k := newFakeKeeper()
	n := newNote(hostile, evening)
	n.Name = "x\x1b[31m"
	read := fakeReader{}.Parse(&n)
	read[0].Remarks = []string{"\x1b[2Jboom"}
	read[0].Hive = "3\x1b[31m"
	if _, err := k.Take(n, read); err != nil {
		t.Fatal(err)
	}
	for _, keys := range [][]string{nil, {"enter"}, {"enter", "ctrl+w"}, {"enter", "ctrl+e"}, {"o"}, {"enter", "end", "hi", "enter", "4"}} {
		d := newDriver(t, k, options(k), 120, 40)
		d.press(keys...)
		out := d.app.View()
		for _, bad := range []string{"\x1b", "\x07", "\u202e", "\x00", "\x9b", "gotcha\x07"} {
			if strings.Contains(out, bad) {
				t.Errorf("after %v the screen has %q:\n%q", keys, bad, out)
			}
		}
	}
}

func TestKeyTableHasEveryBindingOnce(t *testing.T) {
	table := KeyTable()
	all := reflect.ValueOf(newKeyMap())
	for i := range all.NumField() {
		k := all.Field(i).Interface().(key.Binding)
		if n := strings.Count(table, "| `"+k.Help().Key+"` | "+k.Help().Desc+" |\n"); n != 1 {
			t.Errorf("the table has %s %d times", all.Type().Field(i).Name, n)
		}
	}
}

func TestHelpScrollsNoFurtherThanItsEnd(t *testing.T) {
	k := take(t, sampleNotes...)
	d := newDriver(t, k, options(k), 60, 16)
	d.press("?", "end")
	end := d.view()
	for range 5 {
		d.press("down")
	}
	d.press("up")
	if up := d.view(); up == end {
		t.Errorf("up does not move from the end:\n%s", up)
	}
	d.press("down")
	if d.view() != end {
		t.Errorf("the end is not where it was:\n%s", d.view())
	}
}

func TestKeysThatAreOffAreNotInHelp(t *testing.T) {
	k := take(t, sampleNotes...)
	d := newDriver(t, k, options(k), 160, 50)
	d.press("?")
	if strings.Contains(d.view(), "play the words") || strings.Contains(d.view(), "find") {
		t.Errorf("help offers what is not there:\n%s", d.view())
	}
}
