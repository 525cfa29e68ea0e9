package tui

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// someKeys are what a person may press at any moment.
var someKeys = []string{"space", "tab", "up", "down", "left", "right", "enter", "enter", "delete", "ctrl+z", "ctrl+z",
	"ctrl+y", "n", "y", "5", "h", "+", "esc", "ctrl+s", "ctrl+n", "ctrl+x", "end", "home", "ctrl+w", "shift+right", "ctrl+g"}

// lagging runs an app whose keeper answers late: commands lie about until a
// test lets them run, in the order in which they were made.
type lagging struct {
	app  *app
	cmds []tea.Cmd
}

// newLagging begins a review of the sample notes.
func newLagging(t *testing.T) (*lagging, *fakeKeeper) {
	t.Helper()
	k := take(t, sampleNotes...)
	l := &lagging{app: newApp(k, fakeReader{}, options(k), newTheme(nil, noStyle, onDark))}
	l.cmds = append(l.cmds, l.app.Init())
	return l, k
}

// newLaggingOnSecond has the second of the sample notes open, nothing under way.
func newLaggingOnSecond(t *testing.T) (*lagging, *fakeKeeper) {
	t.Helper()
	l, k := newLagging(t)
	l.answerAll()
	l.press("down", "enter")
	l.answerAll()
	return l, k
}

func (l *lagging) press(names ...string) {
	for _, name := range names {
		l.send(keyOf(name))
	}
}

func (l *lagging) send(msg tea.Msg) {
	_, cmd := l.app.Update(msg)
	l.cmds = append(l.cmds, cmd)
}

// answer runs the oldest command; false when there is none.
func (l *lagging) answer() bool {
	if len(l.cmds) == 0 {
		return false
	}
	cmd := l.cmds[0]
	l.cmds = l.cmds[1:]
	if cmd == nil {
		return true
	}
	switch msg := cmd().(type) {
	case nil, tea.QuitMsg:
	case tea.BatchMsg:
		l.cmds = append(l.cmds, msg...)
	default:
		l.send(msg)
	}
	return true
}

func (l *lagging) answerAll() {
	for l.answer() {
	}
}

// TestKilledAtAnyMoment presses random keys with a slow keeper and stops dead
// at a random moment, 200 times. What is kept must then be whole: each record
// is some state that the sheet showed, none that was confirmed is lost, and a
// new review shows exactly what is kept.
func TestKilledAtAnyMoment(t *testing.T) {
	for seed := range uint64(200) {
		random := rand.New(rand.NewPCG(seed, 4))
		l, k := newLagging(t)
		shown := map[string][]string{} // the layers that were shown, by record
		for id, r := range k.now {
			shown[id] = []string{layer(r)}
		}
		for range 20 + random.IntN(120) {
			l.press(someKeys[random.IntN(len(someKeys))])
			for _, item := range l.app.list.items {
				shown[item.ID] = append(shown[item.ID], layer(item.Record))
			}
			if random.IntN(3) > 0 {
				l.answer()
			}
		}
		checkWhole(t, seed, k, shown)
		if t.Failed() {
			return
		}
	}
}

func checkWhole(t *testing.T, seed uint64, k *fakeKeeper, shown map[string][]string) {
	t.Helper()
	for id, now := range k.now {
		untouched := layer(colony.Record{State: colony.Waiting}) // a note typed just before the end
		if !slices.Contains(append(shown[id], untouched), layer(now)) {
			t.Errorf("seed %d: %s is kept in a state that was never shown:\n%s", seed, id, layer(now))
		}
		d := newDriver(t, k, options(k), 80, 24)
		d.run(d.app.open(id))
		if !reflect.DeepEqual(d.app.sheet.rec, copyOf(now)) {
			t.Errorf("seed %d: a new review shows another %s", seed, id)
		}
		undoAll(t, seed, d, k, id)
	}
}

// undoAll goes back to the beginning, where nothing was corrected, and forward
// to where it was.
func undoAll(t *testing.T, seed uint64, d *driver, k *fakeKeeper, id string) {
	t.Helper()
	end := layer(d.app.sheet.rec)
	steps := d.app.sheet.past.at
	for range steps {
		d.press("ctrl+z")
	}
	if r := k.now[id]; len(r.Corrections)+len(r.Accepted) > 0 || r.State != colony.Waiting {
		t.Errorf("seed %d: after %d undos %s is %s", seed, steps, id, layer(r))
	}
	for range steps {
		d.press("ctrl+y")
	}
	if got := layer(k.now[id]); got != end {
		t.Errorf("seed %d: redo leads to\n%s\nnot to\n%s", seed, got, end)
	}
}

func TestStepsAreKeptInOrder(t *testing.T) {
	l, k := newLaggingOnSecond(t)
	l.press("space", "tab", "ctrl+z", "space") // faster than the keeper
	if l.app.saved() != "saving" {
		t.Errorf("the head says %q", l.app.saved())
	}
	l.answerAll()
	r, _ := k.Record(second)
	if len(r.Accepted) != 2 || len(r.Corrections) != 0 || k.saves != 4 {
		t.Errorf("accepted %v, corrections %v, %d saves", r.Accepted, r.Corrections, k.saves)
	}
}

func TestLeavingWaitsForTheLastSave(t *testing.T) {
	l, k := newLaggingOnSecond(t)
	l.press("space", "ctrl+c")
	if k.saves != 0 || !l.app.finished {
		t.Fatalf("saves %d, finished %v", k.saves, l.app.finished)
	}
	l.answerAll()
	if k.saves != 1 {
		t.Errorf("left with %d saves", k.saves)
	}
}

func TestEndedFromOutsideKeepsWhatWasAsked(t *testing.T) {
	l, k := newLaggingOnSecond(t)
	l.press("space", "tab")
	if err := l.app.queue.drain(); err != nil || k.saves != 2 {
		t.Errorf("%d saves, %v", k.saves, err)
	}
	l.cmds[0]() // the job that was under way ends late: it is not done twice
	if k.saves != 2 {
		t.Errorf("%d saves", k.saves)
	}
}
