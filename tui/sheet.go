package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"barwise/colony"
)

// sheet is the record that is being looked at.
type sheet struct {
	*opened
	row, chip int
	words     *wordWalk
	sure      bool // confirming with questions left was asked for once
	pace      int  // at which of the tempos was played last

	page  *page // the note laid out for pageW columns; nil before the first
	pageW int
}

func newSheet(o *opened) *sheet {
	s := &sheet{opened: o}
	s.toWork()
	return s
}

// toWork puts the cursor where the work is: the first question, else the end.
func (s *sheet) toWork() {
	s.chip = 0
	if s.row = firstQuestion(s.rows, 0); s.row < 0 {
		s.row = len(s.rows) - 1
	}
}

// current is the selected row and the leaf selected in it; "" where the row
// holds none.
func (s *sheet) current() (*row, string) {
	r := &s.rows[s.row]
	if s.chip < len(r.chips) {
		return r, r.chips[s.chip].path
	}
	return r, ""
}

// bar is the bar that the selected row speaks of, or 0.
func (s *sheet) bar() int {
	r, path := s.current()
	if r.kind == rowEnd || r.kind == rowRemark {
		return 0
	}
	if n, _, ok := splitBar(path); ok {
		return n
	}
	if path == "queen.bar" {
		return queenBar(&s.ins)
	}
	return 0
}

// goToBar selects the first leaf of the next bar that something is said of, up
// or down in number; from no bar, of the first or the last.
func (s *sheet) goToBar(way int) {
	bars := s.ins.Bars
	if len(bars) == 0 {
		return
	}
	here, at := s.bar(), 0
	if way < 0 {
		at = len(bars) - 1
	}
	for ; here > 0 && at >= 0 && at < len(bars) && (bars[at].Bar-here)*way <= 0; at += way {
	}
	if at >= 0 && at < len(bars) {
		s.toBar(bars[at].Bar)
	}
}

// toBar selects the first leaf of the bar, where something is said of it.
func (s *sheet) toBar(bar int) {
	for i, r := range s.rows {
		if n, _, ok := splitBar(r.item); r.kind == rowItem && ok && n == bar {
			s.row, s.chip = i, 0
			return
		}
	}
}

// evidence is the words behind the selected leaf: its own, else those of the
// thing it is said of; or the words of the selected remark.
func (s *sheet) evidence() []colony.Span {
	r, path := s.current()
	if r.kind == rowRemark {
		return s.remarkSpan(r.text)
	}
	for ; path != ""; path = parent(path) {
		if spans := s.ins.Evidence[path]; len(spans) > 0 {
			return spans
		}
	}
	return nil
}

// chosen is the words that are set off in the note: those under the cursor on
// the words, else those behind the selected leaf.
func (s *sheet) chosen() []colony.Span {
	if s.words != nil && s.page != nil {
		return []colony.Span{s.words.span(s.page)}
	}
	return s.evidence()
}

// pageOf is the note laid out for the width; it is kept until that changes.
func (s *sheet) pageOf(width int) *page {
	if s.page == nil || s.pageW != width {
		p := layOut(s.note.Text, width)
		s.page, s.pageW = &p, width
	}
	return s.page
}

// step shows and saves the record after a step, and keeps the cursor on what
// it was on, or on the next question where that one is answered.
func (a *app) step(r colony.Record, text string) tea.Cmd {
	s := a.sheet
	was, path := s.current()
	kind, at := was.kind, s.row
	s.become(r)
	s.sure = false
	a.list.put(r)
	if text != "" {
		a.say("%s", text)
	}
	switch at = firstQuestion(s.rows, at); {
	case kind == rowQuestion && at >= 0:
		s.row, s.chip = at, 0
	case kind == rowQuestion:
		s.toWork()
	case kind == rowEnd:
		s.row, s.chip = len(s.rows)-1, 0
	default:
		s.goToPath(path)
	}
	return a.queue.add(a.saveJob(r))
}

// goToPath selects the leaf where it stands, else stays as near as can be.
func (s *sheet) goToPath(path string) bool {
	at, chip, ok := rowOfPath(s.rows, path)
	if ok {
		s.row, s.chip = at, chip
		return true
	}
	s.row = min(s.row, len(s.rows)-1)
	s.chip = max(min(s.chip, len(s.rows[s.row].chips)-1), 0)
	return false
}

func (a *app) saveJob(r colony.Record) job {
	hive, _ := headline(&r)
	return job{what: "save " + hiveName(hive), run: func() (tea.Msg, error) { return savedMsg{}, a.desk.keeper.Save(r) }}
}

func (a *app) pressSheet(msg tea.KeyMsg) tea.Cmd {
	s, k := a.sheet, a.keys
	if s.words != nil {
		return a.pressWords(msg)
	}
	if !key.Matches(msg, k.Confirm) && !key.Matches(msg, k.ConfirmNow) {
		s.sure = false
	}
	r, path := s.current()
	switch {
	case key.Matches(msg, k.Left):
		s.chip = max(s.chip-1, 0)
		return nil
	case key.Matches(msg, k.Right):
		s.chip = max(min(s.chip+1, len(r.chips)-1), 0)
		return nil
	case key.Matches(msg, k.BarBefore):
		s.goToBar(-1)
		return nil
	case key.Matches(msg, k.BarAfter):
		s.goToBar(+1)
		return nil
	case moved(&s.row, len(s.rows), max(a.height/3, 1), msg, k):
		s.chip = 0
		return nil
	}
	switch {
	case key.Matches(msg, k.Yes):
		return a.accept(path)
	case key.Matches(msg, k.Other):
		return a.takeOther(path)
	case key.Matches(msg, k.Confirm) && r.kind == rowEnd, key.Matches(msg, k.ConfirmNow):
		return a.confirm()
	case key.Matches(msg, k.Remove) && path != "":
		if _, there := colony.Get(&s.ins, path); there {
			return a.step(s.removed(path, a.desk.now()))
		}
	case key.Matches(msg, k.Change) && r.kind == rowRemark:
		a.startAdd(clean(r.text), firstOf(s.remarkSpan(r.text)))
	case key.Matches(msg, k.Change) && path != "":
		a.startValue(path, "")
	case key.Matches(msg, k.Add):
		a.startAdd("", nil)
	case key.Matches(msg, k.Find):
		a.startFind()
	case typedText(msg) != "":
		if path == "" {
			a.startAdd(typedText(msg), nil)
		} else {
			a.startValue(path, typedText(msg))
		}
	default:
		return a.pressSheetMore(msg)
	}
	return nil
}

// pressSheetMore handles the keys that lead away from the leaves.
func (a *app) pressSheetMore(msg tea.KeyMsg) tea.Cmd {
	s, k := a.sheet, a.keys
	switch {
	case key.Matches(msg, k.Undo):
		return a.walk(true)
	case key.Matches(msg, k.Redo):
		return a.walk(false)
	case key.Matches(msg, k.Skip):
		return a.skip()
	case key.Matches(msg, k.Edit):
		a.startPage(s.opened)
	case key.Matches(msg, k.Words):
		a.startWords()
	case key.Matches(msg, k.Hive):
		a.hive = !a.hive
	case key.Matches(msg, k.SheetAside):
		cmd := a.step(stand(s.rec, colony.SetAside, a.desk.now()), "")
		a.say("%s is set aside", hiveName(s.ins.Hive))
		return tea.Batch(cmd, a.goOn())
	case key.Matches(msg, k.SheetOlder):
		return a.lookUp(s.ins.Hive, s.rec.ID)
	case key.Matches(msg, k.Teach):
		return a.startTeach()
	case key.Matches(msg, k.Play):
		return a.play(0)
	case key.Matches(msg, k.Slower):
		return a.play(s.pace + 1)
	case key.Matches(msg, k.Back):
		return a.goBack()
	}
	return nil
}

// typedText is what a key types, or "" for a key that is no text. What is
// pasted counts as typed.
func typedText(msg tea.KeyMsg) string {
	if msg.Type != tea.KeyRunes || msg.Alt {
		return ""
	}
	return clean(string(msg.Runes))
}

// accept lets a flagged leaf stand.
func (a *app) accept(path string) tea.Cmd {
	s := a.sheet
	if s.questionOf(path) != nil {
		return a.step(s.accepted(path, a.desk.now()))
	}
	if at := firstQuestion(s.rows, 0); at >= 0 {
		s.row, s.chip = at, 0
		return nil
	}
	s.row, s.chip = len(s.rows)-1, 0
	a.say("nothing is left to check here")
	return nil
}

// takeOther takes the alternative that a question offers.
func (a *app) takeOther(path string) tea.Cmd {
	q := a.sheet.questionOf(path)
	switch {
	case q == nil:
		return nil
	case q.alt == "":
		a.say("no other value is offered: type one")
		return nil
	}
	next, text, err := a.sheet.otherTaken(q, a.desk.now())
	if err != nil {
		a.fail("%v", err)
		return nil
	}
	return a.step(next, text)
}

// confirm vouches for the inspection; with questions left it asks once more.
func (a *app) confirm() tea.Cmd {
	s := a.sheet
	if n := len(s.asked); n > 0 && !s.sure {
		s.sure = true
		s.row, s.chip = len(s.rows)-1, 0
		a.say("%s left to check. %s again confirms all the same.", plural(n, "leaf is", "leaves are"), a.keys.Confirm.Help().Key)
		return nil
	}
	switch {
	case a.batch != nil:
		return a.lookedRight()
	case s.rec.State == colony.Confirmed:
		a.say("it is confirmed already")
		return nil
	}
	cmd := a.step(stand(s.rec, colony.Confirmed, a.desk.now()), "")
	a.say("%s is confirmed; %s brings it back", hiveName(s.ins.Hive), a.keys.Undo.Help().Key)
	return tea.Batch(cmd, a.goOn())
}

// goOn opens the next inspection that waits, of the clean ones while those are
// looked through, or the list when none does.
func (a *app) goOn() tea.Cmd {
	if a.batch != nil {
		return a.lookedOver()
	}
	id := a.sheet.rec.ID
	if next := a.list.next(id); next != nil {
		return a.open(next.ID)
	}
	a.screen, a.back = onList, nil
	return nil
}

// skip goes on without confirming.
func (a *app) skip() tea.Cmd {
	if a.batch != nil {
		return a.lookedOver()
	}
	if next := a.list.next(a.sheet.rec.ID); next != nil {
		return a.open(next.ID)
	}
	a.say("no other inspection waits")
	return nil
}

// leavesAt lists the leaves whose evidence meets the span, in order.
func (s *sheet) leavesAt(span colony.Span) []colony.Leaf {
	var out []colony.Leaf
	for _, l := range colony.Leaves(&s.ins) {
		if overlaps(s.ins.Evidence[l.Path], span) {
			out = append(out, l)
		}
	}
	return out
}

// remarkSpan is where the remark stands in the note: the first place that is
// no leaf's evidence.
func (s *sheet) remarkSpan(text string) []colony.Span {
	var used []colony.Span
	for _, spans := range s.ins.Evidence {
		used = append(used, spans...)
	}
	for from := 0; text != ""; {
		at := strings.Index(s.note.Text[from:], text)
		if at < 0 {
			break
		}
		span := colony.Span{from + at, from + at + len(text)}
		if !overlaps(used, span) {
			return []colony.Span{span}
		}
		from += at + len(text)
	}
	return nil
}

func firstOf(spans []colony.Span) *colony.Span {
	if len(spans) == 0 {
		return nil
	}
	return &spans[0]
}

// quote is the words of some spans, for a line of text.
func (o *opened) quote(spans []colony.Span) string {
	var parts []string
	for _, s := range spans {
		if s[0] >= 0 && s[0] < s[1] && s[1] <= len(o.note.Text) {
			parts = append(parts, clean(o.note.Text[s[0]:s[1]]))
		}
	}
	return strings.Join(parts, " … ")
}

// switchSheetKeys names what the keys of the sheet do at the cursor.
func (a *app) switchSheetKeys() {
	s := a.sheet
	r, path := s.current()
	q := s.questionOf(path)
	a.keys.Other.SetEnabled(q != nil && q.alt != "")
	a.keys.Other.SetHelp("tab", "take the other")
	if a.keys.Other.Enabled() {
		a.keys.Other.SetHelp("tab", "take “"+showValue(path, q.alt)+"”")
	}
	a.keys.Yes.SetHelp("space", "it is right")
	if q == nil {
		a.keys.Yes.SetHelp("space", "to what is left")
	}
	a.keys.Confirm.SetHelp("enter", "confirm")
	if a.batch != nil {
		a.keys.Confirm.SetHelp("enter", "looks right")
	}
	a.keys.Confirm.SetEnabled(r.kind == rowEnd)
	a.keys.Change.SetEnabled(path != "" || r.kind == rowRemark)
	a.keys.Change.SetHelp("enter", "change")
	if r.kind == rowRemark {
		a.keys.Change.SetHelp("enter", "make a leaf of it")
	}
	a.keys.Remove.SetEnabled(path != "")
}
