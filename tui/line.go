package tui

import (
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// line is one line of typing at the bottom of the screen, with what it can
// mean offered below it.
type line struct {
	input   textinput.Model
	head    string // on the rule above it
	title   string
	choices []choice
	at      int
	offer   func(typed string) []choice // nil: nothing is offered
	take    func(typed string) tea.Cmd  // what Enter does where no choice is taken
	empty   string                      // said when Enter finds nothing to take
}

func (a *app) startLine(title, typed string) *line {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = 2000
	in.Cursor.SetMode(cursor.CursorStatic)
	in.Cursor.Style = a.theme.pick.style
	in.Cursor.TextStyle = a.theme.bold.style
	in.Width = max(a.width-visible(title)-6, 10)
	in.SetValue(typed)
	in.CursorEnd()
	in.Focus()
	a.line = &line{input: in, title: title, empty: "nothing typed"}
	return a.line
}

// startValue begins a correction of the leaf with what was typed.
func (a *app) startValue(path, typed string) {
	l := a.startLine(fullName(path), typed)
	l.offer = func(typed string) []choice { return choicesFor(a.sheet.opened, path, typed, a.desk.now()) }
	l.empty = "that cannot stand here"
	if field, err := colony.FieldOf(path); err == nil {
		l.empty = "it takes " + kindHelp(field)
	}
	l.refresh()
}

// kindHelp says what a field takes.
func kindHelp(f colony.Field) string {
	switch {
	case len(f.Values) > 0:
		return strings.Join(f.Values, ", ")
	case f.Kind == colony.Day:
		return "a day: 14 may, 2026-05-14, yesterday, +3"
	case f.Kind == colony.Time:
		return "a day, a time such as 16:30, or both"
	}
	return f.Kind.String()
}

// startAdd begins a new leaf, in the words of the trade; span is where the
// words stand in the note as it was handed in, if they do.
func (a *app) startAdd(typed string, span *colony.Span) {
	l := a.startLine("add", typed)
	l.offer = func(typed string) []choice { return a.desk.addChoices(a.sheet.opened, typed, span) }
	l.empty = "no leaf can be made of that: try “bar 4 eggs” or “queen seen yes”"
	l.refresh()
}

// startFind begins a search.
func (a *app) startFind() {
	l := a.startLine("find", "")
	l.take = func(typed string) tea.Cmd { return a.find(typed) }
}

// chooses reports whether Enter takes one of what is listed; else the list is
// only to be read.
func (l *line) chooses() bool { return l.take == nil && len(l.choices) > 0 }

func (l *line) refresh() {
	l.at = 0
	if l.offer != nil {
		l.choices = l.offer(l.input.Value())
	}
}

func (a *app) pressLine(msg tea.KeyMsg) tea.Cmd {
	l, k := a.line, a.keys
	switch {
	case key.Matches(msg, k.Back):
		a.line = nil
		if a.screen == onList && a.batch != nil {
			a.batch = nil
			a.say("not confirmed; they go on waiting")
		}
		return nil
	case key.Matches(msg, k.Take):
		return a.takeLine()
	case key.Matches(msg, k.NextChoice) && l.chooses():
		l.at = (l.at + 1) % len(l.choices)
		return nil
	case key.Matches(msg, k.PrevChoice) && l.chooses():
		l.at = (l.at + len(l.choices) - 1) % len(l.choices)
		return nil
	}
	before := l.input.Value()
	l.input, _ = l.input.Update(msg)
	switch {
	case l.input.Value() != before:
		l.refresh()
	case before == "" && msg.Type == tea.KeyBackspace:
		a.line = nil
	}
	return nil
}

// takeLine takes the chosen meaning of what was typed.
func (a *app) takeLine() tea.Cmd {
	l := a.line
	if l.take != nil {
		typed := strings.TrimSpace(l.input.Value())
		if typed == "" {
			a.say("%s", l.empty)
			return nil
		}
		a.line = nil
		return l.take(typed)
	}
	if len(l.choices) == 0 {
		a.fail("%s", l.empty)
		return nil
	}
	c := l.choices[l.at]
	if c.ask != "" {
		a.startValue(c.ask, "")
		return nil
	}
	rec, err := c.do(a.desk.now())
	if err != nil {
		a.fail("%v", err)
		return nil
	}
	a.line = nil
	s := a.sheet
	was, heard := s.rec, s.quote(s.evidence())
	return tea.Batch(a.step(rec, describe(&was, &rec)), a.noteSlip(heard, c.said))
}

// viewLine draws the line of typing and what is offered.
func (a *app) viewLine() []string {
	l := a.line
	out := []string{a.rule(l.head), a.theme.title.paint(l.title) + ": " + l.input.View()}
	for i, c := range l.choices {
		text, chosen := c.show, i == l.at && l.chooses()
		if chosen {
			text = a.theme.pick.paint(text)
		}
		if c.hint != "" {
			text = fit(text, max(24, visible(text))) + "  " + a.theme.quiet.paint(c.hint)
		}
		out = append(out, pointer(chosen)+text)
	}
	if len(l.choices) == 0 && l.offer != nil {
		out = append(out, "  "+a.theme.quiet.paint(l.empty))
	}
	return out
}

// addChoices offers the leaves that the typed words make: as path=value, as
// the reader understands them, or by the name of a leaf.
func (d *desk) addChoices(o *opened, typed string, span *colony.Span) []choice {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return nil
	}
	var out []choice
	if path, value, ok := strings.Cut(typed, "="); ok {
		if f, err := colony.FieldOf(strings.TrimSpace(path)); err == nil && f.Check(strings.TrimSpace(value)) == nil {
			leaf := colony.Leaf{Path: strings.TrimSpace(path), Value: strings.TrimSpace(value)}
			out = append(out, d.addLeaves(o, []colony.Leaf{leaf}, span))
		}
	}
	if leaves := d.understood(o, typed); len(leaves) > 0 {
		out = append(out, d.addLeaves(o, leaves, span))
		if len(leaves) > 1 {
			for _, l := range leaves {
				out = append(out, d.addLeaves(o, []colony.Leaf{l}, span))
			}
		}
	}
	for _, path := range leavesNamed(typed) {
		if len(out) >= mostChoices {
			break
		}
		was, _ := colony.Get(&o.ins, path)
		c := choice{show: fullName(path), hint: "now: " + showValue(path, orNothing(was)), ask: path}
		if was == "" {
			c.hint = "then its value"
		}
		out = append(out, c)
	}
	return out[:min(len(out), mostChoices)]
}

// understood reads the words as part of this inspection and returns the leaves
// that it does not have yet. What is said of a second hive is not this one's.
func (d *desk) understood(o *opened, typed string) []colony.Leaf {
	note := colony.Note{Text: typed, Given: o.ins.At, Hive: o.ins.Hive, Taken: d.now()}
	read := d.reader.Parse(&note)
	if len(read) == 0 {
		return nil
	}
	var out []colony.Leaf
	for _, l := range colony.Leaves(&read[0]) {
		was, _ := colony.Get(&o.ins, l.Path)
		if l.Path != "at" && l.Path != "hive" && was != l.Value {
			out = append(out, l)
		}
	}
	return out
}

func (d *desk) addLeaves(o *opened, leaves []colony.Leaf, span *colony.Span) choice {
	var names []string
	for _, l := range leaves {
		names = append(names, fullName(l.Path)+" "+showValue(l.Path, l.Value))
	}
	return choice{show: strings.Join(names, ", "), do: func(now time.Time) (colony.Record, error) {
		rec := o.rec
		var err error
		for _, l := range leaves {
			if rec, err = correct(rec, l.Path, l.Value, span, now); err != nil {
				return o.rec, err
			}
		}
		return rec, nil
	}}
}
