package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// list is what waits, with what was dealt with since the review began.
type list struct {
	items  []listed
	at     int
	loaded bool
}

// listed is a record with its hive, its day and how many questions it has:
// found when it comes in, since a thousand records are drawn and gone through at
// every key.
type listed struct {
	colony.Record
	hive string
	on   colony.Date
	open int
}

func listedOf(r colony.Record) listed {
	hive, on := headline(&r)
	return listed{r, hive, on, openCount(&r)}
}

// load takes over what waits; what this review has confirmed or set aside
// stays in its place, so that it can be brought back. What waits no more, since
// its words were edited away, leaves the list.
func (l *list) load(waiting []colony.Record) {
	l.loaded = true
	waits := map[string]bool{}
	for _, r := range waiting {
		waits[r.ID] = true
	}
	for i := len(l.items) - 1; i >= 0; i-- {
		if l.items[i].State == colony.Waiting && !waits[l.items[i].ID] {
			l.items = slices.Delete(l.items, i, i+1)
			if l.at > i || l.at == len(l.items) && i > 0 {
				l.at--
			}
		}
	}
	place := map[string]int{}
	for i, r := range l.items {
		place[r.ID] = i
	}
	for _, r := range waiting {
		if i, ok := place[r.ID]; ok {
			l.items[i] = listedOf(r)
		} else {
			l.items = append(l.items, listedOf(r))
		}
	}
}

// put keeps the list in step with a record that changed.
func (l *list) put(r colony.Record) {
	for i := range l.items {
		if l.items[i].ID == r.ID {
			l.items[i] = listedOf(r)
			return
		}
	}
}

func (l *list) selected() *colony.Record {
	if l.at >= len(l.items) {
		return nil
	}
	return &l.items[l.at].Record
}

// next is the record to go on with after the given one: the next that waits,
// going round once; nil when none does.
func (l *list) next(id string) *colony.Record {
	from := 0
	for i := range l.items {
		if l.items[i].ID == id {
			from = i + 1
		}
	}
	for n := range l.items {
		i := (from + n) % len(l.items)
		if l.items[i].State == colony.Waiting && l.items[i].ID != id {
			l.at = i
			return &l.items[i].Record
		}
	}
	return nil
}

// place is which of the waiting the record is, from 1.
func (l *list) place(id string) int {
	n := 0
	for i := range l.items {
		if l.items[i].State == colony.Waiting {
			n++
		}
		if l.items[i].ID == id {
			return max(n, 1)
		}
	}
	return 0
}

// notes are the notes of the records that wait, by their hashes; nil before the
// list is loaded.
func (l *list) notes() []string {
	if !l.loaded {
		return nil
	}
	notes, seen := []string{}, map[string]bool{}
	for i := range l.items {
		if hash := l.items[i].NoteHash; l.items[i].State == colony.Waiting && !seen[hash] {
			seen[hash] = true
			notes = append(notes, hash)
		}
	}
	return notes
}

func (l *list) waiting() int { return l.count(func(*listed) bool { return true }) }

// clean is how many wait with nothing to check.
func (l *list) clean() int { return l.count(func(r *listed) bool { return r.open == 0 }) }

func (l *list) count(which func(*listed) bool) int {
	n := 0
	for i := range l.items {
		if l.items[i].State == colony.Waiting && which(&l.items[i]) {
			n++
		}
	}
	return n
}

func (a *app) pressList(msg tea.KeyMsg) tea.Cmd {
	l, k := &a.list, a.keys
	if moved(&l.at, len(l.items), a.listRoom(), msg, k) {
		return nil
	}
	r := l.selected()
	switch {
	case key.Matches(msg, k.New):
		a.startPage(nil)
	case key.Matches(msg, k.Clean):
		return a.startBatch()
	case key.Matches(msg, k.Find):
		a.startFind()
	case key.Matches(msg, k.Back):
		a.say("%s leaves", k.Leave.Help().Key)
	case r == nil:
	case key.Matches(msg, k.Open):
		return a.open(r.ID)
	case key.Matches(msg, k.Older):
		hive, _ := headline(r)
		return a.lookUp(hive, r.ID)
	case key.Matches(msg, k.Aside):
		return a.keepOf(stand(*r, colony.SetAside, a.desk.now()), "set aside; "+k.Undo.Help().Key+" brings it back")
	case key.Matches(msg, k.Undo):
		return a.undoOf(r.ID, true)
	case key.Matches(msg, k.Redo):
		return a.undoOf(r.ID, false)
	}
	return nil
}

// keepOf saves a step on a record that is not on the sheet.
func (a *app) keepOf(r colony.Record, text string) tea.Cmd {
	a.list.put(r)
	a.say("%s", text)
	return a.queue.add(a.saveJob(r))
}

// undoOf undoes or redoes the last step of a record that is not on the sheet:
// it is loaded first, since the list holds no history.
func (a *app) undoOf(id string, back bool) tea.Cmd {
	return a.queue.add(job{what: "undo", run: func() (tea.Msg, error) {
		o, err := a.desk.open(id)
		if err != nil {
			return nil, err
		}
		o, what, err := a.desk.walk(o, back)
		if what == "" || err != nil {
			return savedMsg{"there is nothing to undo or redo"}, err
		}
		return undoneMsg{o.rec, walked(back) + what}, nil
	}})
}

// undoneMsg is a record of the list after undo or redo.
type undoneMsg struct {
	rec  colony.Record
	what string
}

// moved handles the moving keys of every list.
func moved(at *int, n, room int, msg tea.KeyMsg, k keyMap) bool {
	switch {
	case key.Matches(msg, k.Up):
		*at--
	case key.Matches(msg, k.Down):
		*at++
	case key.Matches(msg, k.PageUp):
		*at -= room
	case key.Matches(msg, k.PageDown):
		*at += room
	case key.Matches(msg, k.First):
		*at = 0
	case key.Matches(msg, k.Last):
		*at = n - 1
	default:
		return false
	}
	*at = max(min(*at, n-1), 0)
	return true
}

// listHead is how many lines stand above a list.
const listHead = 2

// listRoom is how many lines of a list fit between its head and the foot.
func (a *app) listRoom() int {
	return max(a.height-len(a.foot())-listHead, 1)
}

// viewList draws the list of what waits.
func (a *app) viewList() []string {
	l := &a.list
	head := fmt.Sprintf("%s, %d with nothing to check", plural(l.waiting(), "inspection waits", "inspections wait"), l.clean())
	if l.loaded && l.waiting() == 0 {
		head = "Nothing waits."
	} else if !l.loaded {
		head = "Looking for what waits"
	}
	out := []string{a.headLine(a.theme.title.paint(head), a.saved()), a.rule("")}
	room := a.listRoom()
	top := window(len(l.items), room, l.at)
	names := nameColumns(len(l.items), func(i int) string { return l.items[i].hive })
	for i := top; i < min(top+room, len(l.items)); i++ {
		out = append(out, a.listLine(&l.items[i], i == l.at, names))
	}
	return out
}

// nameColumns is how wide the column of the hives' names is: as the widest
// name, within bounds.
func nameColumns(n int, hive func(i int) string) int {
	widest := 10
	for i := range n {
		widest = max(widest, visible(hiveName(hive(i))))
	}
	return min(widest, 24)
}

func (a *app) listLine(r *listed, selected bool, names int) string {
	state, brush := "nothing to check", a.theme.good
	switch n := r.open; {
	case r.State == colony.Confirmed:
		state = "✓ confirmed"
	case r.State == colony.SetAside:
		state, brush = "set aside", a.theme.quiet
	case n > 0:
		state, brush = fmt.Sprintf("? %d to check", n), a.theme.unsure
	}
	name := hiveName(r.hive)
	if selected {
		name = a.theme.pick.paint(name)
	}
	return fit(pointer(selected)+fit(showDay(r.on), 15)+"  "+fit(name, names)+"  "+brush.paint(fit(state, 17))+" "+
		a.theme.quiet.paint(gist(&r.Read)), a.width)
}

// pointer marks the selected line in a way that needs no colour.
func pointer(selected bool) string {
	if selected {
		return "▸ "
	}
	return "  "
}

func hiveName(hive string) string {
	if hive == "" {
		return "hive not said"
	}
	return "hive " + clean(hive)
}

// gist is an inspection in a few words.
func gist(ins *colony.Inspection) string {
	var parts []string
	if n := len(ins.Bars); n > 0 {
		parts = append(parts, plural(n, "bar", "bars"))
	}
	if brood := broodBars(ins); len(brood) > 0 {
		parts = append(parts, "brood on "+barList(brood))
	}
	if q := ins.Queen; q != nil && q.Seen != nil {
		parts = append(parts, map[bool]string{true: "queen seen", false: "queen not seen"}[*q.Seen])
	}
	if n := len(ins.Actions); n > 0 {
		parts = append(parts, plural(n, "thing done", "things done"))
	}
	if len(parts) < 2 {
		parts = append(parts, topics(ins)...)
	}
	if len(parts) == 0 {
		parts = append(parts, plural(len(ins.Remarks), "remark", "remarks"))
	}
	return strings.Join(parts, ", ")
}

// topics names what an inspection speaks of besides its bars.
func topics(ins *colony.Inspection) []string {
	var out []string
	for _, l := range colony.Leaves(ins) {
		name := groupOf(l.Path)
		if _, _, onBar := splitBar(l.Path); !onBar && l.Path != "hive" && l.Path != "at" && !slices.Contains(out, name) &&
			name != "queen" && name != "done" {
			out = append(out, name)
		}
	}
	return out
}
