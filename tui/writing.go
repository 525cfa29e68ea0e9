package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textarea"
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// writing is a note being typed, with what it means so far. The text is the
// form: what is typed is read at every key.
type writing struct {
	of     *opened // the record whose note is edited; nil for a new note
	area   textarea.Model
	began  string // the text as the editing began
	read   []colony.Inspection
	sure   bool // leaving with changes was asked for once
	saving bool // a draft is being written
	draft  string
}

// longestEdit is the longest note that can be edited on the screen, in bytes.
// Longer ones are better edited as a file and taken in again.
const longestEdit = 256 << 10

// startPage begins a new note, or the editing of a record's.
func (a *app) startPage(of *opened) {
	if of != nil && len(of.note.Text) > longestEdit {
		a.fail("a note of %d bytes is too long to edit here: edit the file and take it in again", len(of.note.Text))
		return
	}
	area := textarea.New()
	area.ShowLineNumbers, area.Prompt, area.CharLimit, area.MaxHeight = false, "", 0, 0
	area.Cursor.SetMode(cursor.CursorStatic)
	area.Cursor.Style = a.theme.pick.style
	plain := textarea.Style{}
	area.FocusedStyle, area.BlurredStyle = plain, plain
	w := &writing{of: of, area: area}
	text, draft := "", a.draftFor(of)
	if of != nil {
		text = cleanLines(of.note.Text)
	}
	w.area.SetValue(text)
	w.began = w.area.Value()
	if draft = cleanLines(draft); draft != "" && draft != text {
		w.area.SetValue(draft)
		a.say("taken up where it was left; %s drops it", a.keys.Back.Help().Key)
	}
	w.area.Focus()
	w.draft = w.area.Value()
	a.page = w
	a.readPage()
	a.goTo(onPage)
}

// draftName is under what name the unfinished text is kept.
func draftName(of *opened) string {
	if of == nil {
		return "new"
	}
	return of.rec.ID
}

// draftFor is the text that an earlier review left unfinished.
func (a *app) draftFor(of *opened) string {
	if a.desk.opts.Drafts == nil {
		return ""
	}
	text, err := a.desk.opts.Drafts.Draft(draftName(of))
	if err != nil {
		a.fail("the draft could not be read: %v", err)
	}
	return text
}

// readPage reads what is typed so far.
func (a *app) readPage() {
	w := a.page
	text := w.area.Value()
	if strings.TrimSpace(text) == "" {
		w.read = nil
		return
	}
	if w.of != nil {
		w.read = a.desk.readAs(&w.of.note, text)
		return
	}
	note := colony.Note{Text: text, Given: a.desk.now(), Taken: a.desk.now()}
	w.read = a.desk.reader.Parse(&note)
}

func (a *app) pressPage(msg tea.KeyMsg) tea.Cmd {
	w := a.page
	switch {
	case key.Matches(msg, a.keys.Keep):
		return a.keepPage()
	case key.Matches(msg, a.keys.Back):
		return a.dropPage()
	}
	w.sure = false
	before := w.area.Value()
	w.area, _ = w.area.Update(msg)
	if w.area.Value() == before {
		return nil
	}
	a.readPage()
	return a.keepDraft()
}

// keepPage takes a new note in, or rereads the edited one.
func (a *app) keepPage() tea.Cmd {
	w := a.page
	text := w.area.Value()
	switch {
	case strings.TrimSpace(text) == "":
		a.say("nothing is typed yet")
		return nil
	case w.of != nil && text == w.began:
		a.say("the note is as it was")
		return tea.Batch(a.goBack(), a.endDraft(w))
	}
	a.opening = true
	keep := a.rereadJob(w.of, text)
	if w.of == nil {
		keep = job{what: "keep the note", run: func() (tea.Msg, error) {
			records, err := a.desk.take(text)
			return takenMsg{records}, err
		}}
	}
	a.page = nil
	return tea.Batch(a.goBack(), a.queue.add(a.desk.thenNoDraft(keep, draftName(w.of))))
}

// thenNoDraft is a job that removes the draft once its text is kept, so that no
// end in the middle loses both. Tried again, it keeps nothing twice.
func (d *desk) thenNoDraft(keep job, name string) job {
	if d.opts.Drafts == nil {
		return keep
	}
	var msg tea.Msg
	kept, run := false, keep.run
	keep.run = func() (_ tea.Msg, err error) {
		if !kept {
			if msg, err = run(); err != nil {
				return nil, err
			}
			kept = true
		}
		return msg, d.opts.Drafts.KeepDraft(name, "")
	}
	return keep
}

func (a *app) rereadJob(o *opened, text string) job {
	return job{what: "read the note again", run: func() (tea.Msg, error) {
		again, err := a.desk.edit(o, text)
		heard, said := replaced(o.note.Text, text)
		return rereadMsg{again, "the note was read again; what you had corrected stays", heard, said}, err
	}}
}

// dropPage leaves the page; with something typed it asks once more.
func (a *app) dropPage() tea.Cmd {
	w := a.page
	if w.area.Value() != w.began && !w.sure {
		w.sure = true
		a.say("%s again drops what you typed; %s keeps it", a.keys.Back.Help().Key, a.keys.Keep.Help().Key)
		return nil
	}
	return tea.Batch(a.goBack(), a.endDraft(w))
}

// draftMsg says that a draft was written.
type draftMsg struct {
	of  *writing
	err error
}

// keepDraft writes the unfinished text, one write at a time: when one is under
// way the next begins as it ends, with the text as it is by then.
func (a *app) keepDraft() tea.Cmd {
	w := a.page
	drafts := a.desk.opts.Drafts
	if drafts == nil || w.saving || w.area.Value() == w.draft {
		return nil
	}
	w.saving, w.draft = true, w.area.Value()
	name, text := draftName(w.of), w.draft
	return func() tea.Msg { return draftMsg{w, drafts.KeepDraft(name, text)} }
}

func (a *app) draftKept(m draftMsg) tea.Cmd {
	m.of.saving = false
	if m.err != nil {
		a.fail("the draft could not be kept: %v", m.err)
	}
	if a.page == m.of {
		return a.keepDraft()
	}
	return a.endDraft(m.of)
}

// endDraft removes the draft of a page that was dropped, or written down again
// after its text was kept. It waits for a write that is under way.
func (a *app) endDraft(w *writing) tea.Cmd {
	a.page = nil
	drafts := a.desk.opts.Drafts
	if drafts == nil || w.saving {
		return nil
	}
	name := draftName(w.of)
	return a.queue.add(job{what: "remove the draft", run: func() (tea.Msg, error) { return savedMsg{}, drafts.KeepDraft(name, "") }})
}

// viewPage draws the text and what it means so far.
func (a *app) viewPage(room int) []string {
	w := a.page
	title := "A new note"
	if w.of != nil {
		title = "The note of " + hiveName(w.of.ins.Hive)
	}
	out := []string{a.headLine(a.theme.title.paint(title), a.draftState()), a.rule("")}
	room -= len(out)
	left := a.leftWidth()
	if a.width >= wide {
		return append(out, beside(w.lines(left, room), left, a.meaning(a.width-left-gap, room), room, a.theme)...)
	}
	upper := room / 2
	out = append(out, w.lines(left, upper)...)
	return append(out, a.meaning(left, room-upper)...)
}

// lines draws the text area at a size; the model itself stays as it is.
func (w *writing) lines(width, height int) []string {
	area := w.area
	area.SetWidth(width)
	area.SetHeight(height)
	area.View()                // tells it how many lines there are to scroll,
	area, _ = area.Update(nil) // so that this brings the cursor's line into view
	return strings.Split(area.View(), "\n")
}

func (a *app) draftState() string {
	if a.desk.opts.Drafts == nil {
		return "not kept yet"
	}
	return "kept as a draft"
}

// meaning is what the typed text says so far: for an edited note what would
// change, for a new one everything.
func (a *app) meaning(width, room int) []string {
	w := a.page
	out := []string{a.ruleOf("What it says so far", width)}
	if len(w.read) == 0 {
		return append(out, a.theme.quiet.paint("Say it as you would at the hive: hive 3, bar 4 eggs and"), a.theme.quiet.paint("larvae, bar 5 solid capped brood both sides, queen seen."))
	}
	var lines []string
	if w.of != nil {
		out[0] = a.ruleOf("What would change", width)
		lines = a.differences(w)
	} else {
		for i := range w.read {
			lines = append(lines, a.summary(&w.read[i], width)...)
		}
	}
	if len(lines) > room-1 {
		lines = append(lines[:max(room-2, 0)], fmt.Sprintf("… and %d more", len(lines)-room+2))
	}
	return append(out, lines...)
}

// differences lists what the edited words read otherwise.
func (a *app) differences(w *writing) []string {
	before := &w.of.rec.Read
	var after colony.Inspection
	if n := w.of.rec.Seq; n >= 1 && n <= len(w.read) {
		after = w.read[n-1]
	}
	var out []string
	for _, l := range colony.Leaves(&after) {
		if was, ok := colony.Get(before, l.Path); !ok {
			out = append(out, a.theme.good.paint("+ "+fullName(l.Path)+" "+showValue(l.Path, l.Value)))
		} else if was != l.Value {
			out = append(out, a.theme.title.paint("± "+fullName(l.Path)+" "+showValue(l.Path, l.Value)+", was "+showValue(l.Path, was)))
		}
	}
	for _, l := range colony.Leaves(before) {
		if _, ok := colony.Get(&after, l.Path); !ok {
			out = append(out, a.theme.bad.paint("- "+fullName(l.Path)+" "+showValue(l.Path, l.Value)))
		}
	}
	if len(out) == 0 {
		out = append(out, "nothing yet")
	}
	return out
}

// summary lists what an inspection says, a line a thing.
func (a *app) summary(ins *colony.Inspection, width int) []string {
	r := colony.Record{Read: *ins}
	var out []string
	group := ""
	for _, row := range sheetRows(&r, ins, questions(&r, ins)) {
		if row.kind == rowItem || row.kind == rowRemark {
			out = append(out, a.rowLine(&row, false, row.group != group, width)...)
			group = row.group
		}
	}
	return out
}
