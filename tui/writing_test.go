package tui

import (
	"errors"
	"strings"
	"testing"
	"time"

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

func TestNoteIsEditedAndCorrectionsStay(t *testing.T) {
	d, k := openSecond(t)
	d.press("no", "enter") // bar 3 eggs: no
	d.press("ctrl+e")
	d.sees("The note of hive 3", "nothing yet")
	d.press(" Bar 11 honey.")
	d.sees("+ bar 11 honey yes")
	d.press("ctrl+s")
	d.sees("the note was read again")
	if got := leaf(t, k, second, "bars.11.honey"); got != "yes" {
		t.Errorf("bar 11: %q", got)
	}
	if got := leaf(t, k, second, "bars.3.eggs"); got != "no" {
		t.Errorf("the correction is lost: %q", got)
	}
	again := newDriver(t, k, options(k), 80, 24)
	again.press("down", "enter", "ctrl+z")
	again.sees("undone: the note was edited")
	if got := leaf(t, k, second, "bars.11.honey"); got != "" {
		t.Errorf("bar 11 after undo: %q", got)
	}
	note, _ := k.Note(again.app.sheet.rec.NoteHash)
	if note.Text != sampleNotes[1] {
		t.Errorf("the words after undo: %q", note.Text)
	}
	again.press("ctrl+y")
	if got := leaf(t, k, second, "bars.11.honey"); got != "yes" {
		t.Errorf("bar 11 after redo: %q", got)
	}
}

func TestNewNoteIsTypedAndTaken(t *testing.T) {
	k := take(t)
	d := newDriver(t, k, options(k), 80, 24)
	d.sees("Nothing waits")
	d.press("n", "hive 9 bar 1 honey bar 2 eggs")
	d.sees("What it says so far", "bar 2", "eggs")
	d.press("ctrl+s")
	d.sees("hive 9", "Nothing left to check")
	if got := leaf(t, k, "r001", "bars.2.eggs"); got != "yes" {
		t.Errorf("bar 2: %q", got)
	}
	if r := record(t, k, "r001"); r.Read.Source.Note != r.NoteHash || r.Read.Source.Name == "" {
		t.Errorf("the reading is of note %q, not of %q", r.Read.Source.Note, r.NoteHash)
	}
}

func TestSameWordsOfAnotherVisitAreAnotherNote(t *testing.T) {
	k := take(t, "hive 9 calm")
	o := options(k)
	o.Now = func() time.Time { return evening.AddDate(0, 0, 7) }
	d := newDriver(t, k, o, 80, 24)
	d.press("n", "hive 9 calm", "ctrl+s")
	if got := leaf(t, k, "r002", "at"); got != "2026-05-21T20:30:00Z" {
		t.Errorf("the second is of %q:\n%s", got, d.view())
	}
}
