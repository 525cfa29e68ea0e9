package tui

import (
	tea "github.com/charmbracelet/bubbletea"
)

// click takes the mouse where it is wanted ([Options.Mouse]). The wheel goes up
// and down. A click selects what it falls on: a line of a list, a row of the
// sheet, a bar of the hive, a word of the note; on a line of a list that is
// selected already it opens it. Nothing else is done by mouse: what changes a
// record is a key.
func (a *app) click(msg tea.MouseMsg) tea.Cmd {
	switch {
	case a.opening || a.queue.err != nil || a.helping || a.line != nil || a.screen == onPage:
		return nil
	case msg.Button == tea.MouseButtonWheelUp:
		return a.press(tea.KeyMsg{Type: tea.KeyUp})
	case msg.Button == tea.MouseButtonWheelDown:
		return a.press(tea.KeyMsg{Type: tea.KeyDown})
	case msg.Button != tea.MouseButtonLeft || msg.Action != tea.MouseActionPress:
		return nil
	case a.screen == onSheet:
		a.clickSheet(msg.X, msg.Y)
		return nil
	case a.screen == onPast:
		return a.clickList(&a.past.at, len(a.past.items), msg.Y)
	}
	return a.clickList(&a.list.at, len(a.list.items), msg.Y)
}

func (a *app) clickList(at *int, n, y int) tea.Cmd {
	to := window(n, a.listRoom(), *at) + y - listHead
	switch {
	case y < listHead || y >= listHead+a.listRoom() || to >= n:
		return nil
	case to == *at:
		return a.press(tea.KeyMsg{Type: tea.KeyEnter})
	}
	*at = to
	return nil
}

// clickSheet finds the panel that was clicked; they lie as viewSheet lays them.
func (a *app) clickSheet(x, y int) {
	y-- // the head
	left, room := a.leftWidth(), a.height-len(a.foot())-1
	note, hive := a.panels(left, room)
	panels := len(note) + len(hive)
	switch {
	case a.width >= wide && x >= left+gap:
		a.clickRow(y, a.width-left-gap, room)
	case a.width < wide && y >= panels:
		a.clickRow(y-panels, left, room-panels)
	case y > 0 && y < len(note):
		a.clickWord(x, y-1, len(note)-1)
	case y > len(note) && y < panels:
		s := a.sheet
		s.words = nil
		s.toBar(newHive(&s.ins, s.prev, left, lowestComb, s.bar(), a.theme).barUnder(x))
	}
}

func (a *app) clickRow(y, width, room int) {
	if _, owners := a.rowsShown(width, room); y >= 0 && y < len(owners) && owners[y] >= 0 {
		a.sheet.row, a.sheet.chip, a.sheet.words = owners[y], 0, nil
	}
}

// clickWord selects what the word became; one that became nothing it puts the
// cursor on.
func (a *app) clickWord(x, y, room int) {
	s := a.sheet
	p := s.pageOf(a.leftWidth())
	y += a.noteTop(p, room)
	if y >= len(p.lines) {
		return
	}
	for _, c := range p.lines[y] {
		if x -= c.width; x >= 0 {
			continue
		}
		word := p.wordAt(c.span[0])
		s.words = &wordWalk{from: word, to: word, leaf: -1}
		if leaves := s.leavesAt(p.words[word]); len(leaves) > 0 {
			s.words = nil
			s.goToPath(leaves[0].Path)
		}
		return
	}
}
