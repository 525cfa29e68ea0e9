package tui

import (
	"strings"

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
		if spans := s.ins.Evidence.Of(path); len(spans) > 0 {
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

// leavesAt lists the leaves whose evidence meets the span, in order.
func (s *sheet) leavesAt(span colony.Span) []colony.Leaf {
	var out []colony.Leaf
	for _, l := range colony.Leaves(&s.ins) {
		if overlaps(s.ins.Evidence.Of(l.Path), span) {
			out = append(out, l)
		}
	}
	return out
}

// remarkSpan is where the remark stands in the note: the first place that is
// no leaf's evidence.
func (s *sheet) remarkSpan(text string) []colony.Span {
	var used []colony.Span
	for _, g := range s.ins.Evidence {
		used = append(used, g.Spans...)
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
