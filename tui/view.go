package tui

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"
)

func outOf(o Options) io.Writer {
	if o.Out != nil {
		return o.Out
	}
	return os.Stdout
}

// View draws the screen: what fills it, what is being typed, a message and the
// keys. It only reads.
func (a *app) View() string {
	if a.width < narrowest || a.height < lowest {
		return a.tooSmall()
	}
	if a.helping {
		return a.screenOf(a.viewHelp(), nil)
	}
	foot := a.foot()
	room := a.height - len(foot)
	var body []string
	switch a.screen {
	case onSheet:
		body = a.viewSheet(room)
	case onPage:
		body = a.viewPage(room)
	case onPast:
		body = a.viewPast()
	default:
		body = a.viewList()
	}
	return a.screenOf(body[:min(len(body), room)], foot)
}

// screenOf fills the height and keeps every line within the width.
func (a *app) screenOf(body, foot []string) string {
	lines := make([]string, 0, a.height)
	for _, line := range body {
		if visible(line) > a.width {
			line = fit(line, a.width)
		}
		lines = append(lines, strings.TrimRight(line, " "))
	}
	for len(lines)+len(foot) < a.height {
		lines = append(lines, "")
	}
	for _, line := range foot {
		lines = append(lines, strings.TrimRight(fit(line, a.width), " "))
	}
	return strings.Join(lines[:min(len(lines), a.height)], "\n")
}

// tooSmall says what is missing.
func (a *app) tooSmall() string {
	lines := []string{fmt.Sprintf("This window has %d columns and %d lines.", a.width, a.height),
		fmt.Sprintf("The review needs %d and %d: widen it, or make the letters smaller.", narrowest, lowest),
		"Without a screen, say:", "  barwise review --plain",
		"Nothing is lost: every step is saved. " + a.keys.Leave.Help().Key + " leaves."}
	var out []string
	for _, l := range lines {
		out = append(out, wrapText(l, max(a.width, 10))...)
	}
	return strings.Join(out[:min(len(out), max(a.height, 1))], "\n")
}

// foot is the line of typing with its choices, the details of what is
// selected, the message and the keys.
func (a *app) foot() []string {
	var out []string
	switch {
	case a.line != nil:
		out = append(out, a.viewLine()...)
	case a.screen == onSheet && a.sheet.words != nil:
		out = append(out, a.wordDetails()...)
	case a.screen == onSheet:
		out = append(out, a.details())
	}
	brush := a.theme.good
	if a.trouble {
		brush = a.theme.bad
	}
	message := a.message
	if message != "" && a.trouble {
		message = "! " + message
	}
	out = append(out, brush.paint(ansi.Truncate(message, a.width, "…")))
	return append(out, keyLine(a.theme, a.width, a.keysNow()...))
}

// details is the selected leaf in full: its words and what it was before.
func (a *app) details() string {
	s := a.sheet
	_, path := s.current()
	if path == "" {
		return ""
	}
	parts := []string{fullName(path)}
	if words := s.quote(s.evidence()); words != "" {
		parts = append(parts, "from “"+words+"”")
	}
	for _, c := range latest(s.rec.Corrections) {
		if c.Path == path {
			parts = append(parts, "you wrote it; before: "+showValue(path, orNothing(c.Was)))
		}
	}
	return a.theme.quiet.paint(ansi.Truncate(strings.Join(parts, " · "), a.width, "…"))
}

// keysNow are the bindings that matter most where the cursor is, help last.
func (a *app) keysNow() []key.Binding {
	k := a.keys
	switch {
	case a.queue.err != nil:
		return []key.Binding{k.Again, k.Drop, k.Leave}
	case a.line != nil && !a.line.chooses():
		return []key.Binding{k.Take, k.Back}
	case a.line != nil:
		return []key.Binding{k.Take, k.NextChoice, k.PrevChoice, k.Back}
	case a.screen == onPage:
		return []key.Binding{k.Keep, k.Back}
	case a.screen == onPast:
		return []key.Binding{k.Open, k.Find, k.Back, k.Help}
	case a.screen == onList:
		return []key.Binding{k.Open, k.Clean, k.New, k.Aside, k.Older, k.Find, k.Undo, k.Leave, k.Help}
	case a.sheet.words != nil:
		return []key.Binding{k.WordLeft, k.WordRight, k.Grow, k.ToLeaf, k.FromWords, k.Play, k.Back, k.Help}
	}
	r, _ := a.sheet.current()
	if r.kind == rowEnd {
		return []key.Binding{k.Confirm, k.Add, k.Skip, k.Undo, k.Edit, k.Words, k.Back, k.Help}
	}
	if r.kind == rowRemark {
		return []key.Binding{k.Change, k.Add, k.Undo, k.Edit, k.Words, k.Hive, k.Back, k.Help}
	}
	if r.kind == rowQuestion {
		return []key.Binding{k.Yes, k.Other, k.Type, k.Remove, k.Play, k.Slower, k.Undo, k.Edit, k.Hive, k.Back, k.Help}
	}
	return []key.Binding{k.Type, k.Remove, k.Yes, k.Add, k.Play, k.Slower, k.Undo, k.Edit, k.Words, k.Hive, k.Back, k.Help}
}

// headLine is a title at the left and a state at the right.
func (a *app) headLine(left, right string) string {
	room := a.width - visible(right)
	return fit(left, max(room-1, 0)) + " " + a.theme.quiet.paint(right)
}

// saved tells how it stands with keeping.
func (a *app) saved() string {
	switch {
	case a.queue.err != nil:
		return "NOT SAVED"
	case !a.queue.idle():
		return "saving"
	}
	return "saved"
}

func (a *app) rule(title string) string { return a.ruleOf(title, a.width) }

// ruleOf is a line across with a title in it.
func (a *app) ruleOf(title string, width int) string {
	if title != "" {
		title = " " + title + " "
	}
	return a.theme.quiet.paint("──" + title + strings.Repeat("─", max(width-2-visible(title), 0)))
}
