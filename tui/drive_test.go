package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"barwise/colony"
)

// driver presses keys on an app without a terminal: every command is run as it
// comes, so that a test sees the screen as a person does between two keys.
type driver struct {
	tb   testing.TB
	app  *app
	quit bool
}

func newDriver(tb testing.TB, k Keeper, o Options, width, height int) *driver {
	tb.Helper()
	d := &driver{tb: tb, app: newApp(k, fakeReader{}, o, newTheme(nil, noStyle, onDark))}
	d.run(d.app.Init())
	d.send(tea.WindowSizeMsg{Width: width, Height: height})
	return d
}

func (d *driver) send(msg tea.Msg) {
	_, cmd := d.app.Update(msg)
	d.run(cmd)
}

func (d *driver) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.BatchMsg:
		for _, c := range msg {
			d.run(c)
		}
	case tea.QuitMsg:
		d.quit = true
	default:
		d.send(msg)
	}
}

var keyNames = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "tab": tea.KeyTab, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown,
	"left": tea.KeyLeft, "right": tea.KeyRight, "shift+right": tea.KeyShiftRight, "shift+left": tea.KeyShiftLeft,
	"home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown,
	"delete": tea.KeyDelete, "backspace": tea.KeyBackspace, "ctrl+c": tea.KeyCtrlC, "ctrl+e": tea.KeyCtrlE,
	"ctrl+g": tea.KeyCtrlG, "ctrl+n": tea.KeyCtrlN, "ctrl+o": tea.KeyCtrlO, "ctrl+r": tea.KeyCtrlR,
	"ctrl+s": tea.KeyCtrlS, "ctrl+t": tea.KeyCtrlT, "ctrl+p": tea.KeyCtrlP, "ctrl+l": tea.KeyCtrlL,
	"ctrl+w": tea.KeyCtrlW, "ctrl+x": tea.KeyCtrlX, "ctrl+y": tea.KeyCtrlY, "ctrl+z": tea.KeyCtrlZ, "ctrl+k": tea.KeyCtrlK,
}

// keyOf makes the message of a key by its name; other text is typed.
func keyOf(name string) tea.KeyMsg {
	if name == "space" {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	if t, ok := keyNames[name]; ok {
		return tea.KeyMsg{Type: t}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// keysOf makes the messages of keys by name; a text that is no key's name is
// typed letter by letter.
func keysOf(names ...string) []tea.KeyMsg {
	var out []tea.KeyMsg
	for _, name := range names {
		if _, ok := keyNames[name]; ok || name == "space" {
			out = append(out, keyOf(name))
			continue
		}
		for _, r := range name {
			if r == ' ' {
				out = append(out, keyOf("space"))
			} else {
				out = append(out, keyOf(string(r)))
			}
		}
	}
	return out
}

func (d *driver) press(names ...string) {
	for _, msg := range keysOf(names...) {
		d.send(msg)
	}
}

func (d *driver) view() string { return ansi.Strip(d.app.View()) }

func (d *driver) sees(parts ...string) {
	d.tb.Helper()
	for _, part := range parts {
		if !strings.Contains(d.view(), part) {
			d.tb.Fatalf("the screen does not show %q:\n%s", part, d.view())
		}
	}
}

// leaf is a value of the record as it is kept; "" where nothing stands.
func leaf(tb testing.TB, k *fakeKeeper, id, path string) string {
	tb.Helper()
	return value(record(tb, k, id), path)
}

func state(tb testing.TB, k *fakeKeeper, id string) colony.State {
	tb.Helper()
	return record(tb, k, id).State
}

func record(tb testing.TB, k *fakeKeeper, id string) colony.Record {
	tb.Helper()
	r, err := k.Record(id)
	if err != nil {
		tb.Fatal(err)
	}
	return r
}
