package tui

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// batch is a walk through the inspections with nothing to check. Each is
// looked at; at the end those that looked right are confirmed together.
type batch struct {
	ids   []string
	at    int
	right []string
}

// startBatch opens the first of the clean ones.
func (a *app) startBatch() tea.Cmd {
	b := &batch{}
	for i := range a.list.items {
		if r := &a.list.items[i]; r.State == colony.Waiting && r.open == 0 {
			b.ids = append(b.ids, r.ID)
		}
	}
	if len(b.ids) == 0 {
		return nil
	}
	a.batch = b
	return a.open(b.ids[0])
}

// lookedRight marks the inspection on the sheet and goes on.
func (a *app) lookedRight() tea.Cmd {
	id := a.sheet.rec.ID
	if !slices.Contains(a.batch.right, id) {
		a.batch.right = append(a.batch.right, id)
	}
	return a.lookedOver()
}

// lookedOver goes on to the next of the clean ones, or to the end of them.
func (a *app) lookedOver() tea.Cmd {
	b := a.batch
	if b.at++; b.at < len(b.ids) {
		return a.open(b.ids[b.at])
	}
	a.screen, a.back = onList, nil
	n := len(b.right)
	if n == 0 {
		a.batch = nil
		a.say("none was marked as right; all go on waiting")
		return nil
	}
	l := a.startLine(fmt.Sprintf("%d of %d looked right. Confirm them? y or n", n, len(b.ids)), "y")
	l.take = func(typed string) tea.Cmd {
		if !startsLike("yes", typed) {
			a.batch = nil
			a.say("not confirmed; they go on waiting")
			return nil
		}
		return a.confirmBatch()
	}
	return nil
}

// confirmBatch confirms all that looked right, a save each.
func (a *app) confirmBatch() tea.Cmd {
	b := a.batch
	a.batch = nil
	var cmds []tea.Cmd
	var hives []string
	for i := range a.list.items {
		if r := a.list.items[i].Record; slices.Contains(b.right, r.ID) && r.State == colony.Waiting {
			r = stand(r, colony.Confirmed, a.desk.now())
			a.list.put(r)
			cmds = append(cmds, a.queue.add(a.saveJob(r)))
			ins := r.Inspection()
			hives = append(hives, ins.Hive)
		}
	}
	a.say("%s confirmed", plural(len(b.right), "inspection is", "inspections are"))
	return tea.Batch(append(cmds, a.meet(hives...))...)
}
