package tui

import (
	"errors"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// fakeDrafts keeps drafts in memory.
type fakeDrafts map[string]string

func (d fakeDrafts) Draft(name string) (string, error) { return d[name], nil }

func (d fakeDrafts) KeepDraft(name, text string) error {
	if d[name] = text; text == "" {
		delete(d, name)
	}
	return nil
}

func withDrafts(t *testing.T) (*driver, *fakeKeeper, Options) {
	t.Helper()
	k := take(t)
	o := options(k)
	o.Drafts = fakeDrafts{}
	return newDriver(t, k, o, 80, 24), k, o
}

func TestUnfinishedNoteIsTakenUpAgain(t *testing.T) {
	d, k, o := withDrafts(t)
	d.press("n", "hive 9 bar 1 hon") // and the terminal is closed
	again := newDriver(t, k, o, 80, 24)
	again.press("n")
	again.sees("hive 9 bar 1 hon", "taken up where it was left")
	again.press("ey", "ctrl+s")
	again.sees("hive 9", "bar 1", "honey")
	if text, _ := o.Drafts.Draft("new"); text != "" {
		t.Errorf("the draft is left over: %q", text)
	}
}

func TestWhatIsTypedStaysInSight(t *testing.T) {
	for _, size := range [][2]int{{60, 16}, {80, 24}, {160, 50}} {
		d := newDriver(t, take(t), options(take(t)), size[0], size[1])
		d.press("n")
		d.send(keyOf(strings.Repeat("hive three bar one honey bar two eggs ", 80)))
		d.press("zebra")
		d.sees("zebra")
		for range 80 {
			d.press("up")
		}
		d.press("yak ")
		d.sees("yak")
		d.send(tea.WindowSizeMsg{Width: 70, Height: 20})
		d.sees("yak")
	}
}

func TestDraftGoesOnlyOnceItsTextIsKept(t *testing.T) {
	d, k, o := withDrafts(t)
	k.failing = errors.New("disk full")
	d.press("n", "hive 9 bar 1 honey", "ctrl+s")
	d.sees("disk full", "NOT SAVED")
	if text, _ := o.Drafts.Draft("new"); text != "hive 9 bar 1 honey" {
		t.Errorf("the draft is %q before the note is kept", text)
	}
	d.press("ctrl+k", "n")
	d.sees("taken up where it was left")
	k.failing = nil
	d.press("ctrl+s")
	if text, _ := o.Drafts.Draft("new"); text != "" || leaf(t, k, "r001", "bars.1.honey") != "yes" {
		t.Errorf("the draft is %q after the note is kept", text)
	}
}

func TestDroppedNoteAsksOnce(t *testing.T) {
	d, _, o := withDrafts(t)
	d.press("n", "hive 9", "esc")
	d.sees("esc again drops what you typed")
	d.press("esc")
	d.sees("Nothing waits")
	if text, _ := o.Drafts.Draft("new"); text != "" {
		t.Errorf("the draft is left over: %q", text)
	}
}
