package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// walk goes one step back or forward in the record's own history.
func (a *app) walk(back bool) tea.Cmd {
	s := a.sheet
	rec, what, ok := s.past.step(back)
	if !ok {
		a.say("there is nothing to %s", map[bool]string{true: "undo", false: "redo"}[back])
		return nil
	}
	if _, edited := wordsBetween(&s.rec, &rec); !edited {
		path := changedPath(&s.rec, &rec)
		cmd := a.step(rec, walked(back)+what)
		s.goToChange(path)
		return cmd
	}
	a.opening = true
	return a.queue.add(job{what: "read the note again", run: func() (tea.Msg, error) {
		again, what, err := a.desk.walk(s.opened, back)
		return rereadMsg{opened: again, text: walked(back) + what}, err
	}})
}

// changedPath is the leaf that two versions differ in, "" where it is none.
func changedPath(from, to *colony.Record) string {
	short, long := from, to
	if len(from.Corrections)+len(from.Accepted) > len(to.Corrections)+len(to.Accepted) {
		short, long = to, from
	}
	switch {
	case len(long.Corrections) > len(short.Corrections):
		return long.Corrections[len(short.Corrections)].Path
	case len(long.Accepted) > len(short.Accepted):
		return long.Accepted[len(short.Accepted)]
	}
	return ""
}

// goToChange selects what a step back or forward changed: its question, where
// it is asked again, else where it stands.
func (s *sheet) goToChange(path string) {
	for i, r := range s.rows {
		if r.kind == rowQuestion && r.ask.path == path {
			s.row, s.chip = i, 0
			return
		}
	}
	if !s.goToPath(path) {
		s.toWork()
	}
}

// walked introduces what was undone or redone.
func walked(back bool) string {
	if back {
		return "undone: "
	}
	return "done again: "
}
