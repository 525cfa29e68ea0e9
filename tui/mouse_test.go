package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// clickOn clicks on the n-th place where the screen shows the text.
func (d *driver) clickOn(text string, n int) {
	d.tb.Helper()
	for y, line := range strings.Split(d.view(), "\n") {
		for at := 0; ; {
			i := strings.Index(line[at:], text)
			if i < 0 {
				break
			}
			at += i
			if n--; n == 0 {
				d.send(tea.MouseMsg{X: ansi.StringWidth(line[:at]), Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
				return
			}
			at += len(text)
		}
	}
	d.tb.Fatalf("the screen does not show %q so often:\n%s", text, d.view())
}

func TestMouseSelects(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {80, 45}, {160, 50}} {
		d := newDriver(t, take(t, sampleNotes...), options(take(t)), size[0], size[1])
		d.app.theme = newTheme(nil, noColour, onDark)
		selected := func(want string) {
			t.Helper()
			if _, path := d.app.sheet.current(); path != want || d.app.sheet.words != nil {
				t.Errorf("%v: %q is selected, want %q:\n%s", size, path, want, d.view())
			}
		}
		d.clickOn("Mon 11 May", 1)
		d.clickOn("Mon 11 May", 1) // the second opens it
		selected("bars.3.eggs")
		d.clickOn("? bar 5 capped brood", 1)
		selected("bars.5.capped_brood")
		d.clickOn("there is the queen", 1)
		if d.app.sheet.words == nil {
			t.Errorf("%v: the cursor is not on the word that became nothing", size)
		}
		d.clickOn("queen. Bar 8", 1)
		selected("queen.seen")
		if size[1] < tall {
			d.press("ctrl+g")
		}
		for y, line := range strings.Split(d.view(), "\n") {
			if strings.Contains(line, "━") {
				d.send(tea.MouseMsg{X: 2, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
				break
			}
		}
		selected("bars.1.honey")
		d.send(tea.MouseMsg{Button: tea.MouseButtonWheelDown, Action: tea.MouseActionPress})
		selected("bars.2.honey")
		d.send(tea.MouseMsg{Button: tea.MouseButtonWheelUp, Action: tea.MouseActionPress})
		d.send(tea.MouseMsg{X: 500, Y: 500, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}) // falls on nothing
		selected("bars.1.honey")
	}
}
