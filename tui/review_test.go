package tui

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// second is the second of the sample notes: two leaves are left to check.
const second = "r002"

func openSecond(t *testing.T) (*driver, *fakeKeeper) {
	t.Helper()
	k := take(t, sampleNotes...)
	d := newDriver(t, k, options(k), 80, 24)
	d.press("down", "enter")
	d.sees("To check: 2", "? bar 3 eggs: yes")
	return d, k
}

func TestOneKeyEachConfirmsAFlaggedInspection(t *testing.T) {
	d, k := openSecond(t)
	d.press("space", "tab", "enter")
	if got := state(t, k, second); got != colony.Confirmed {
		t.Errorf("state is %q", got)
	}
	if got := leaf(t, k, second, "bars.3.eggs"); got != "yes" {
		t.Errorf("the accepted leaf is %q", got)
	}
	if got := leaf(t, k, second, "bars.5.capped_brood"); got != "no" {
		t.Errorf("the alternative was not taken: %q", got)
	}
	d.sees("hive 5") // the next that waits
}

func TestHeldSpaceConfirmsNothing(t *testing.T) {
	d, k := openSecond(t)
	for range 20 {
		d.press("space")
	}
	if got := state(t, k, second); got != colony.Waiting {
		t.Errorf("state is %q", got)
	}
	d.sees("Nothing left to check: enter confirms")
}

func TestConfirmingWithQuestionsLeftAsksOnce(t *testing.T) {
	d, k := openSecond(t)
	d.press("ctrl+s")
	if got := state(t, k, second); got != colony.Waiting {
		t.Fatalf("confirmed at the first key")
	}
	d.sees("2 leaves are left to check")
	d.press("enter")
	if got := state(t, k, second); got != colony.Confirmed {
		t.Errorf("state is %q", got)
	}
}

func TestTypingStartsACorrection(t *testing.T) {
	d, k := openSecond(t)
	d.press("n")
	d.sees("bar 3 eggs: n", "▸ no", "nectar", "not eggs")
	d.press("enter")
	if got := leaf(t, k, second, "bars.3.eggs"); got != "no" {
		t.Errorf("eggs on bar 3: %q", got)
	}
}

func TestTypedNumberMovesToAnotherBar(t *testing.T) {
	d, k := openSecond(t)
	d.press("9")
	d.sees("eggs is on bar 9", "all of bar 3 is bar 9")
	d.press("enter")
	if was, is := leaf(t, k, second, "bars.3.eggs"), leaf(t, k, second, "bars.9.eggs"); was != "" || is != "yes" {
		t.Errorf("bar 3 has %q, bar 9 %q", was, is)
	}
}

func TestWholeBarMovesWithItsQueen(t *testing.T) {
	d, k := openSecond(t)
	at, _, ok := rowOfPath(d.app.sheet.rows, "bars.7.eggs")
	if !ok {
		t.Fatal("no row for bar 7")
	}
	for d.app.sheet.row != at {
		d.press("down")
	}
	d.press("10", "down", "enter")
	for path, want := range map[string]string{"bars.7.eggs": "", "bars.10.eggs": "yes", "queen.bar": "10"} {
		if got := leaf(t, k, second, path); got != want {
			t.Errorf("%s = %q, want %q", path, got, want)
		}
	}
}

func TestKindIsCorrectedByItsName(t *testing.T) {
	d, k := openSecond(t)
	d.press("down", "ho")
	d.sees("not capped brood")
	d.press("enter")
	for path, want := range map[string]string{"bars.5.capped_brood": "", "bars.5.honey": "yes", "bars.5.honey.side": "both"} {
		if got := leaf(t, k, second, path); got != want {
			t.Errorf("%s = %q, want %q", path, got, want)
		}
	}
	d.sees("To check: 1")
}

func TestHiveAndDateAreSet(t *testing.T) {
	d, k := openSecond(t)
	d.press("down", "down")
	d.press("Orchard", "enter")
	d.press("down", "12 may 16:05", "enter")
	if got := leaf(t, k, second, "hive"); got != "orchard" {
		t.Errorf("hive = %q", got)
	}
	if got := leaf(t, k, second, "at"); got != "2026-05-12T16:05:00Z" {
		t.Errorf("at = %q", got)
	}
}

func TestLeafIsAddedInOnesOwnWords(t *testing.T) {
	d, k := openSecond(t)
	d.press("+", "bar 10 sealed brood both")
	d.sees("bar 10 capped brood yes, bar 10 capped brood side both")
	d.press("enter")
	if got := leaf(t, k, second, "bars.10.capped_brood.side"); got != "both" {
		t.Errorf("side = %q", got)
	}
}

func TestLeafIsAddedByItsName(t *testing.T) {
	d, k := openSecond(t)
	d.press("end", "stores", "enter", "he", "enter")
	if got := leaf(t, k, second, "stores.word"); got != "heavy" {
		t.Errorf("stores = %q", got)
	}
}

func TestLeafIsTakenAway(t *testing.T) {
	d, k := openSecond(t)
	d.press("delete")
	if got := leaf(t, k, second, "bars.3.eggs"); got != "" {
		t.Errorf("eggs on bar 3: %q", got)
	}
	d.sees("To check: 1")
}

func TestWordsBecomeALeafAndLeavesShowTheirWords(t *testing.T) {
	d, k := openSecond(t)
	d.press("ctrl+w")
	d.sees("became: bar 3 eggs yes")
	for range 5 {
		d.press("right")
	}
	d.press("home", "right", "right", "right", "right", "shift+right")
	d.sees("“windy up”", "no rule used these words")
	d.press("+")
	d.sees("add: windy up")
	for range len("windy up") {
		d.press("backspace")
	}
	d.press("wind", "enter", "win", "enter")
	if got := leaf(t, k, second, "weather.wind"); got != "windy" {
		t.Errorf("wind = %q", got)
	}
}

func TestUndoAndRedoSurviveARestart(t *testing.T) {
	d, k := openSecond(t)
	d.press("no", "enter", "space")
	again := newDriver(t, k, options(k), 80, 24)
	again.press("down", "enter")
	again.press("ctrl+z")
	again.sees("undone: bar 5 capped brood is right", "To check: 1")
	again.press("ctrl+z")
	again.sees("undone: bar 3 eggs: no", "To check: 2")
	third := newDriver(t, k, options(k), 80, 24)
	third.press("down", "enter", "ctrl+y", "ctrl+y", "ctrl+y")
	third.sees("there is nothing to redo")
	if got := leaf(t, k, second, "bars.3.eggs"); got != "no" {
		t.Errorf("eggs on bar 3: %q", got)
	}
}

func TestConfirmIsUndoneInTheList(t *testing.T) {
	d, k := openSecond(t)
	d.press("space", "space", "enter")
	d.press("esc", "up")
	d.sees("confirmed")
	d.press("ctrl+z")
	if got := state(t, k, second); got != colony.Waiting {
		t.Errorf("state is %q:\n%s", got, d.view())
	}
}

func TestSetAsideAndBack(t *testing.T) {
	d, k := openSecond(t)
	d.press("ctrl+x")
	if got := state(t, k, second); got != colony.SetAside {
		t.Errorf("state is %q", got)
	}
	d.press("esc", "up", "ctrl+z")
	if got := state(t, k, second); got != colony.Waiting {
		t.Errorf("state is %q", got)
	}
}

func TestCleanOnesAreConfirmedTogetherAfterALook(t *testing.T) {
	k := take(t, sampleNotes...)
	d := newDriver(t, k, options(k), 80, 24)
	d.press("c")
	d.sees("look 1 of 3")
	d.press("enter")
	d.sees("look 2 of 3")
	d.press("ctrl+n") // not this one
	d.sees("look 3 of 3")
	d.press("enter")
	d.sees("2 of 3 looked right")
	if got := state(t, k, "r001"); got != colony.Waiting {
		t.Fatalf("confirmed before the question: %q", got)
	}
	d.press("enter")
	for id, want := range map[string]colony.State{"r001": colony.Confirmed, "r003": colony.Waiting, "r004": colony.Confirmed} {
		if got := state(t, k, id); got != want {
			t.Errorf("%s is %q, want %q", id, got, want)
		}
	}
}

func TestCleanOneThatIsSetAsideLeadsToTheNextCleanOne(t *testing.T) {
	k := take(t, sampleNotes...)
	d := newDriver(t, k, options(k), 80, 24)
	d.press("c", "ctrl+x")
	d.sees("look 2 of 3")
	d.press("enter", "enter", "enter")
	for id, want := range map[string]colony.State{"r001": colony.SetAside, second: colony.Waiting, "r003": colony.Confirmed, "r004": colony.Confirmed} {
		if got := state(t, k, id); got != want {
			t.Errorf("%s is %q, want %q", id, got, want)
		}
	}
}

func TestTenInspectionsInTwentyKeys(t *testing.T) {
	notes := make([]string, 10)
	for i := range notes {
		notes[i] = fmt.Sprintf("Hive %d. Bar 1 honey. Bar 2 maybe eggs.", i+1)
	}
	k := take(t, notes...)
	d := newDriver(t, k, options(k), 80, 24)
	d.press("enter")
	for range 10 {
		d.press("space", "enter")
	}
	d.sees("Nothing waits")
	if waiting, _ := k.Waiting(); len(waiting) != 0 {
		t.Errorf("%d still wait", len(waiting))
	}
}

func TestFailedSaveStopsAndIsTriedAgain(t *testing.T) {
	d, k := openSecond(t)
	k.failing = errors.New("disk full")
	d.press("space")
	d.sees("disk full", "NOT SAVED", "ctrl+r")
	d.press("tab")
	if got := len(d.app.sheet.rec.Corrections); got != 0 {
		t.Errorf("a step was taken on top of one that is not kept")
	}
	d.press("ctrl+c")
	d.press("down", "ctrl+c")
	if d.quit {
		t.Fatal("left with a step unsaved and no warning")
	}
	k.failing = nil
	d.press("ctrl+r")
	d.sees("saved", "To check: 1")
	r, _ := k.Record(second)
	if len(r.Accepted) != 1 {
		t.Errorf("the step was lost: %v", r.Accepted)
	}
}

func TestOlderInspectionsAreLookedUp(t *testing.T) {
	d, _ := openSecond(t)
	d.press("ctrl+o")
	d.sees("Inspections of hive 3", "Sun 10 May 2026", "waiting")
	d.press("down", "enter")
	d.sees("hive 3 · Sun 10 May 2026")
	d.press("esc")
	d.sees("Inspections of hive 3")
}

func TestNewerReadingThatDisagreesIsAsked(t *testing.T) {
	d, k := openSecond(t)
	d.press("no", "enter")
	r, _ := k.Record(second)
	note, _ := k.Note(r.NoteHash)
	read := fakeReader{}.Parse(&note)
	colony.Delete(&read[0], "bars.3.eggs")
	if err := k.EditAndSave(note.Hash, note.Text, read, nil, nil); err != nil {
		t.Fatal(err)
	}
	again := newDriver(t, k, options(k), 80, 24)
	again.press("down", "enter")
	again.sees("you wrote no, the newer reading has nothing")
	again.press("space")
	if strings.Contains(again.view(), "newer reading") {
		t.Errorf("asked again after the answer:\n%s", again.view())
	}
	if got := leaf(t, k, second, "bars.3.eggs"); got != "no" {
		t.Errorf("eggs on bar 3: %q", got)
	}
}

func TestFailedSearchBlocksNothing(t *testing.T) {
	k := take(t, sampleNotes...)
	o := options(k)
	o.Find = func(string) (Answer, error) { return Answer{}, errors.New("no such month: febtober") }
	d := newDriver(t, k, o, 80, 24)
	d.press("/", "since febtober", "enter")
	d.sees("no such month", "saved")
	o.Find = func(string) (Answer, error) {
		return Answer{Hits: []Found{{ID: second, Hive: "3", On: colony.DateOf(evening), Bar: 4, Quote: "larvae, eggs"}}, All: 1}, nil
	}
	d = newDriver(t, k, o, 80, 24)
	d.press("/", "eggs", "enter")
	d.sees("1 found", "bar 4: “larvae, eggs”")
	d.press("enter")
	d.sees("hive 3 · Mon 11 May")
	d.press("/") // from the sheet too, and back to where one was
	d.sees("find:")
	d.press("larvae", "enter")
	d.sees("larvae")
	d.press("esc")
	d.sees("hive 3 · Mon 11 May")
}

func TestPastedNameOfAKeyIsText(t *testing.T) {
	d, k := openSecond(t)
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("ctrl+s")})
	d.sees("bar 3 eggs: ctrl+s")
	if got := state(t, k, second); got != colony.Waiting {
		t.Errorf("state is %q", got)
	}
}

func TestBarsAreWalked(t *testing.T) {
	d, _ := openSecond(t)
	at := func() string {
		_, path := d.app.sheet.current()
		return path
	}
	for _, step := range [][2]string{{"end", ""}, {"shift+right", "bars.1.honey"}, {"shift+right", "bars.2.honey"}, {"shift+left", "bars.1.honey"},
		{"shift+left", "bars.1.honey"}, {"end", ""}, {"shift+left", "bars.9.empty"}, {"shift+right", "bars.9.empty"}} {
		if d.press(step[0]); at() != step[1] {
			t.Fatalf("after %s at %q, want %q", step[0], at(), step[1])
		}
	}
}

func TestTradeWordOnAThingSaysMoreOfIt(t *testing.T) {
	d, k := openSecond(t)
	d.press("down", "sp")
	d.sees("pattern patchy", "spotty")
	d.press("enter")
	if got := leaf(t, k, second, "bars.5.capped_brood.pattern"); got != "patchy" {
		t.Errorf("pattern = %q", got)
	}
}

func TestRemarkBecomesALeaf(t *testing.T) {
	k := newFakeKeeper()
	n := newNote("Hive 3. Bar 4 eggs and hunny. Eggs and hunny everywhere.", evening)
	read := fakeReader{}.Parse(&n)
	read[0].Remarks = []string{"hunny everywhere"}
	if _, err := k.Take(n, read); err != nil {
		t.Fatal(err)
	}
	d := newDriver(t, k, options(k), 80, 24)
	d.press("enter", "up")
	d.sees("▸ hunny everywhere", "^^^^^^^^^^^^^^^^", "make a leaf of it")
	d.press("enter")
	d.sees("add: hunny everywhere")
	for range len("hunny everywhere") {
		d.press("backspace")
	}
	d.press("honey", "enter")
	if got := leaf(t, k, "r001", "contents.honey"); got != "yes" {
		t.Errorf("honey: %q", got)
	}
	ins := d.app.sheet.ins
	if spans := ins.Evidence.Of("contents.honey"); len(spans) != 1 || n.Text[spans[0][0]:spans[0][1]] != "hunny everywhere" {
		t.Errorf("the words behind it: %v", spans)
	}
}
