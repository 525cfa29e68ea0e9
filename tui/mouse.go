package tui

import tea "github.com/charmbracelet/bubbletea"

// mouse turns the wheel into up and down, and a click on a line of a list into
// a selection. All of it can be done with keys.
func (a *app) mouse(msg tea.MouseMsg) tea.Cmd {
	if a.opening || a.helping || a.line != nil || a.queue.err != nil {
		return nil
	}
	switch {
	case msg.Button == tea.MouseButtonWheelUp:
		return a.press(tea.KeyMsg{Type: tea.KeyUp})
	case msg.Button == tea.MouseButtonWheelDown:
		return a.press(tea.KeyMsg{Type: tea.KeyDown})
	case msg.Button != tea.MouseButtonLeft || msg.Action != tea.MouseActionPress:
		return nil
	}
	const head = 2 // the title and the line below it
	switch a.screen {
	case onSheet:
		a.pickRow(msg.X, msg.Y)
	case onList:
		room := a.listRoom()
		pickLine(&a.list.at, window(len(a.list.items), room, a.list.at)+msg.Y-head, len(a.list.items))
	case onPast:
		room := a.listRoom()
		pickLine(&a.past.at, window(len(a.past.items), room, a.past.at)+msg.Y-head, len(a.past.items))
	}
	return nil
}

// pickRow selects the row of the sheet at a place on the screen.
func (a *app) pickRow(x, y int) {
	l := a.sheetLayout(a.height - len(a.foot()))
	_, owners, top := a.rowsPanel(l.width, l.height)
	line := y - l.y + top
	if x < l.x || y < l.y || y >= l.y+l.height || line >= len(owners) || owners[line] < 0 {
		return
	}
	a.sheet.row, a.sheet.chip, a.sheet.words = owners[line], 0, nil
}

func pickLine(at *int, line, n int) {
	if line >= 0 && line < n {
		*at = line
	}
}
