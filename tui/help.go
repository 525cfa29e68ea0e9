package tui

import tea "github.com/charmbracelet/bubbletea"

func (a *app) pressHelp(msg tea.KeyMsg) tea.Cmd {
	room := a.height - helpHead
	if !moved(&a.helpTop, max(len(a.helpLines())-room, 0)+1, room, msg, a.keys) {
		a.helping = false
	}
	return nil
}

// helpHead is how many lines stand above the keys.
const helpHead = 2

// viewHelp draws the keys from the line that was gone to.
func (a *app) viewHelp() []string {
	body, room := a.helpLines(), a.height-helpHead
	top := min(a.helpTop, max(len(body)-room, 0))
	return append([]string{a.headLine(a.theme.title.paint("Keys"), "↓ more · any other key closes"), a.rule("")},
		body[top:min(top+room, len(body))]...)
}

// helpLines lists every key that does something, by place, in as many columns
// as fit.
func (a *app) helpLines() []string {
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
	return body
}
