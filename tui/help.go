package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

func (a *app) pressHelp(msg tea.KeyMsg) tea.Cmd {
	switch {
	case key.Matches(msg, a.keys.Down), key.Matches(msg, a.keys.PageDown):
		a.helpTop++
	case key.Matches(msg, a.keys.Up), key.Matches(msg, a.keys.PageUp):
		a.helpTop = max(a.helpTop-1, 0)
	default:
		a.helping = false
	}
	return nil
}

// viewHelp draws every key that does something, by place, in as many columns
// as fit.
func (a *app) viewHelp() []string {
	out := []string{a.headLine(a.theme.title.paint("Keys"), "↓ more · any other key closes"), a.rule("")}
	const column = 38
	columns := max(a.width/column, 1)
	var body []string
	for _, s := range a.keys.sections() {
		body = append(body, a.theme.bold.paint(s.title))
		line, n := "", 0
		for _, k := range s.keys {
			if !k.Enabled() {
				continue
			}
			line += fit("  "+a.theme.key.paint(fit(k.Help().Key, 10))+" "+k.Help().Desc, column)
			if n++; n == columns {
				body, line, n = append(body, line), "", 0
			}
		}
		if n > 0 {
			body = append(body, line)
		}
	}
	room := a.height - len(out)
	top := min(a.helpTop, max(len(body)-room, 0))
	return append(out, body[top:min(top+room, len(body))]...)
}
