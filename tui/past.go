package tui

import (
	"fmt"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// pastItem is one line of what was looked up or found.
type pastItem struct {
	id   string
	on   colony.Date
	hive string
	text string
}

// past is what was looked up or found.
type past struct {
	title  string
	items  []pastItem
	all    int    // of which items are listed
	answer string // to the question that found them, in a line; "" for none
	at     int
}

// lookUp lists a hive's inspections.
func (d *desk) lookUp(hive string) (past, error) {
	records, err := d.opts.Past(hive)
	items := make([]pastItem, len(records))
	for i := range records {
		name, on := headline(&records[i])
		ins := records[i].Inspection()
		items[i] = pastItem{records[i].ID, on, name, fmt.Sprintf("%-9s  %s", records[i].State, gist(&ins))}
	}
	return past{title: "Inspections of " + hiveName(hive), items: items, all: len(items)}, err
}

// find asks the history.
func (d *desk) find(words string) (past, error) {
	answer, err := d.opts.Find(words)
	items := make([]pastItem, len(answer.Hits))
	for i, h := range answer.Hits {
		where := ""
		if h.Bar > 0 {
			where = fmt.Sprintf("bar %d: ", h.Bar)
		}
		items[i] = pastItem{h.ID, h.On, h.Hive, where + "“" + clean(h.Quote) + "”"}
	}
	if answer.Understood != "" {
		words = answer.Understood
	}
	return past{title: clean(words), items: items, all: answer.All, answer: answer.Line}, err
}

// lookUp shows a hive's inspections, the one that is asked from selected.
func (a *app) lookUp(hive, from string) tea.Cmd {
	return a.queue.add(job{what: "look up " + hiveName(hive), looked: true, run: func() (tea.Msg, error) {
		found, err := a.desk.lookUp(hive)
		found.at = max(slices.IndexFunc(found.items, func(i pastItem) bool { return i.id == from }), 0)
		return pastMsg{found}, err
	}})
}

// find shows what the history has.
func (a *app) find(typed string) tea.Cmd {
	return a.queue.add(job{what: "find " + clean(typed), looked: true, run: func() (tea.Msg, error) {
		found, err := a.desk.find(typed)
		return pastMsg{found}, err
	}})
}

// count tells how many there are, and how many of them are listed.
func (p *past) count() string {
	if p.all > len(p.items) {
		return fmt.Sprintf("%d of %d found", len(p.items), p.all)
	}
	return fmt.Sprintf("%d found", p.all)
}

func (a *app) pressPast(msg tea.KeyMsg) tea.Cmd {
	p, k := &a.past, a.keys
	if moved(&p.at, len(p.items), a.listRoom(), msg, k) {
		return nil
	}
	switch {
	case key.Matches(msg, k.Open) && p.at < len(p.items):
		return a.open(p.items[p.at].id)
	case key.Matches(msg, k.Find):
		a.startFind()
	case key.Matches(msg, k.Back):
		return a.goBack()
	}
	return nil
}

func (a *app) viewPast() []string {
	p := &a.past
	out := []string{a.headLine(a.theme.title.paint(clean(p.title)), p.count()), a.rule("")}
	if len(p.items) == 0 {
		return append(out, "  nothing found")
	}
	room := a.listRoom()
	top := window(len(p.items), room, p.at)
	names := nameColumns(len(p.items), func(i int) string { return p.items[i].hive })
	for i, item := range p.items[top:min(top+room, len(p.items))] {
		name := hiveName(item.hive)
		if i+top == p.at {
			name = a.theme.pick.paint(name)
		}
		out = append(out, fit(pointer(i+top == p.at)+fit(showDay(item.on), 15)+"  "+fit(name, names)+"  "+item.text, a.width))
	}
	return out
}
