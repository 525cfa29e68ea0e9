package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
)

// keyMap holds every binding of the screen. Help, the key line and [KeyTable]
// are made from it; a binding that is off appears in none of them.
type keyMap struct {
	// everywhere
	Help, Leave, Back, Undo, Redo, Find, Again, Drop key.Binding
	// moving
	Up, Down, PageUp, PageDown, First, Last key.Binding
	// the list
	Open, Clean, New, Aside, Older key.Binding
	// the sheet
	Left, Right, Yes, Other, Change, Confirm, ConfirmNow, Remove, Type, Add key.Binding
	Skip, Edit, Words, Hive, SheetAside, SheetOlder, Teach, Play, Slower    key.Binding
	BarBefore, BarAfter                                                     key.Binding
	// words
	WordLeft, WordRight, Grow, Shrink, ToLeaf, FromWords key.Binding
	// a line of typing
	Take, NextChoice, PrevChoice key.Binding
	// a page of typing
	Keep key.Binding
}

func bind(help string, does string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(help, does))
}

func newKeyMap() keyMap {
	return keyMap{
		Help:  bind("?", "help", "?", "f1"),
		Leave: bind("ctrl+c", "leave; all is saved", "ctrl+c", "ctrl+q"),
		Back:  bind("esc", "back", "esc"),
		Undo:  bind("ctrl+z", "undo", "ctrl+z"),
		Redo:  bind("ctrl+y", "redo", "ctrl+y"),
		Find:  bind("/", "find", "/"),
		Again: bind("ctrl+r", "try to save again", "ctrl+r"),
		Drop:  bind("ctrl+k", "give up the failed step", "ctrl+k"),

		Up:       bind("↑", "up", "up"),
		Down:     bind("↓", "down", "down"),
		PageUp:   bind("page up", "a screen up", "pgup"),
		PageDown: bind("page down", "a screen down", "pgdown"),
		First:    bind("home", "first", "home"),
		Last:     bind("end", "last: confirm", "end"),

		Open:  bind("enter", "open", "enter"),
		Clean: bind("c", "look at the clean ones", "c"),
		New:   bind("n", "write a new note", "n"),
		Aside: bind("x", "set aside", "x"),
		Older: bind("o", "the hive's inspections", "o"),

		Left:       bind("←", "value to the left", "left"),
		Right:      bind("→", "value to the right", "right"),
		Yes:        bind("space", "it is right", " "),
		Other:      bind("tab", "take the other", "tab"),
		Change:     bind("enter", "change", "enter"),
		Confirm:    bind("enter", "confirm", "enter"),
		ConfirmNow: bind("ctrl+s", "confirm from anywhere", "ctrl+s"),
		Remove:     bind("delete", "take it away", "delete", "backspace"),
		Type:       bind("type", "correct it", "a-z"),
		Add:        bind("+", "add, in your own words", "+"),
		Skip:       bind("ctrl+n", "next inspection", "ctrl+n"),
		Edit:       bind("ctrl+e", "edit the note", "ctrl+e"),
		Words:      bind("ctrl+w", "walk the note's words", "ctrl+w"),
		Hive:       bind("ctrl+g", "hive or note", "ctrl+g"),
		SheetAside: bind("ctrl+x", "set aside", "ctrl+x"),
		SheetOlder: bind("ctrl+o", "the hive's inspections", "ctrl+o"),
		Teach:      bind("ctrl+t", "remember a mishearing", "ctrl+t"),
		Play:       bind("ctrl+p", "play the words", "ctrl+p"),
		Slower:     bind("ctrl+l", "play them slower", "ctrl+l"),

		BarBefore: bind("shift+←", "the bar before", "shift+left"),
		BarAfter:  bind("shift+→", "the bar after", "shift+right"),

		WordLeft:  bind("←", "word to the left", "left"),
		WordRight: bind("→", "word to the right", "right"),
		Grow:      bind("shift+→", "more words", "shift+right"),
		Shrink:    bind("shift+←", "fewer words", "shift+left"),
		ToLeaf:    bind("enter", "go to what they became", "enter"),
		FromWords: bind("+", "make a leaf from them", "+"),

		Take:       bind("enter", "take it", "enter"),
		NextChoice: bind("↓", "next", "down", "tab"),
		PrevChoice: bind("↑", "previous", "up", "shift+tab"),

		Keep: bind("ctrl+s", "keep it", "ctrl+s"),
	}
}

// keySection is the keys of one place, for help.
type keySection struct {
	title string
	keys  []key.Binding
}

// sections lists the bindings by place.
func (k keyMap) sections() []keySection {
	return []keySection{
		{"On the sheet", []key.Binding{k.Yes, k.Other, k.Type, k.Change, k.Remove, k.Add, k.Confirm, k.ConfirmNow, k.Skip,
			k.Left, k.Right, k.BarBefore, k.BarAfter, k.Edit, k.Words, k.Hive, k.SheetAside, k.SheetOlder, k.Teach, k.Play, k.Slower}},
		{"In the list", []key.Binding{k.Open, k.Clean, k.New, k.Aside, k.Older}},
		{"On the words of the note", []key.Binding{k.WordLeft, k.WordRight, k.Grow, k.Shrink, k.ToLeaf, k.FromWords}},
		{"While typing", []key.Binding{k.Take, k.NextChoice, k.PrevChoice, k.Keep}},
		{"Everywhere", []key.Binding{k.Up, k.Down, k.PageUp, k.PageDown, k.First, k.Last, k.Undo, k.Redo, k.Find, k.Back, k.Again, k.Drop, k.Help, k.Leave}},
	}
}

// KeyTable is the table of all keys as Markdown, for the README.
func KeyTable() string {
	var b strings.Builder
	for i, s := range newKeyMap().sections() {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString("| " + s.title + " | |\n| --- | --- |\n")
		for _, k := range s.keys {
			b.WriteString("| `" + k.Help().Key + "` | " + k.Help().Desc + " |\n")
		}
	}
	return b.String()
}

// keyLine shows as many of the bindings as fit, help always among them.
func keyLine(th theme, width int, bindings ...key.Binding) string {
	var items []string
	for _, k := range bindings {
		if k.Enabled() {
			items = append(items, th.key.paint(k.Help().Key)+" "+k.Help().Desc)
		}
	}
	if len(items) == 0 {
		return ""
	}
	last := items[len(items)-1]
	lines := flow(items[:len(items)-1], "  ", max(width-visible(last)-2, 1))
	if len(lines) == 0 {
		return fit(last, width)
	}
	return fit(lines[0]+"  "+last, width)
}
