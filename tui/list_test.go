package tui

import (
	"slices"
	"testing"

	"barwise/colony"
)

// What waits no more leaves the list; what was dealt with here stays.
func TestListFollowsWhatWaits(t *testing.T) {
	record := func(id string, state colony.State) colony.Record { return colony.Record{ID: id, State: state} }
	var l list
	l.load([]colony.Record{record("a", colony.Waiting), record("b", colony.Waiting), record("c", colony.Waiting)})
	l.put(record("a", colony.Confirmed))
	l.at = 2
	l.load([]colony.Record{record("c", colony.Waiting), record("d", colony.Waiting)})
	var ids []string
	for _, item := range l.items {
		ids = append(ids, item.ID)
	}
	if !slices.Equal(ids, []string{"a", "c", "d"}) || l.selected().ID != "c" || l.waiting() != 2 {
		t.Errorf("%v, at %s, %d wait", ids, l.selected().ID, l.waiting())
	}
	l.at = 2
	l.load([]colony.Record{record("c", colony.Waiting)})
	if l.selected() == nil || l.selected().ID != "c" {
		t.Errorf("selected is %v", l.selected())
	}
}

// What was read before a step was kept does not take the step's place.
func TestListIsReadAgainWhileStepsWait(t *testing.T) {
	k := take(t, sampleNotes...)
	a := newApp(k, fakeReader{}, options(k), theme{})
	old, err := k.Waiting()
	if err != nil {
		t.Fatal(err)
	}
	a.list.load(old)
	first := old[0]
	first.State = colony.SetAside
	a.list.put(first)
	a.queue.add(a.saveJob(first))
	a.bring(waitingMsg{old})
	if a.list.items[0].State != colony.SetAside {
		t.Error("the step was forgotten")
	}
	if n := len(a.queue.jobs); n != 2 {
		t.Errorf("%d jobs, want the step and a new look", n)
	}
}
