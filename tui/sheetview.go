package tui

import (
	"fmt"
	"slices"
	"strings"

	"barwise/colony"
)

// wide is from how many columns the note stands beside the leaves; tall is
// from how many lines the hive is drawn as well as the note.
const (
	wide = 110
	tall = 38
)

// viewSheet draws the record: note and hive above or at the left, the rows of
// leaves below or at the right.
func (a *app) viewSheet(room int) []string {
	out := []string{a.sheetHead()}
	room -= len(out)
	left := a.leftWidth()
	note, hive := a.panels(left, room)
	panels := append(note, hive...)
	if a.width >= wide {
		return append(out, beside(panels, left, a.rowsPanel(a.width-left-gap, room), room, a.theme)...)
	}
	return append(append(out, panels...), a.rowsPanel(left, room-len(panels))...)
}

// gap is how many columns lie between two panels.
const gap = 3

// leftWidth is how wide the panel at the left is, or the only one.
func (a *app) leftWidth() int {
	if a.width >= wide {
		return a.width * 9 / 20
	}
	return a.width
}

// beside puts two panels next to each other with a line between.
func beside(left []string, width int, right []string, room int, th theme) []string {
	out := make([]string, 0, room)
	at := func(lines []string, i int) string {
		if i < len(lines) {
			return lines[i]
		}
		return ""
	}
	for i := range room {
		out = append(out, fit(at(left, i), width)+th.quiet.paint(" │ ")+at(right, i))
	}
	return out
}

func (a *app) sheetHead() string {
	s := a.sheet
	state := string(s.rec.State)
	switch {
	case a.batch != nil:
		state = fmt.Sprintf("look %d of %d", a.batch.at+1, len(a.batch.ids))
	case s.rec.State == colony.Waiting:
		state = fmt.Sprintf("%d of %d waiting", a.list.place(s.rec.ID), a.list.waiting())
	}
	state += " · " + a.saved()
	head := hiveName(s.ins.Hive)
	if at := s.ins.At; !at.IsZero() {
		when := " · " + showTime(at)
		if visible(head+when)+1+visible(state) > a.width {
			when = " · " + showDay(colony.DateOf(at)) // the hour stands below, among what was said
		}
		head += when
	}
	return a.headLine(a.theme.title.paint(head), state)
}

// panels are the note and the hive. At the left of the rows the hive gets what
// the note leaves, the note what the hive must leave it. Above the rows there is
// mostly room for one of the two.
func (a *app) panels(width, room int) (note, hive []string) {
	share := max(room*2/5, 5)
	switch {
	case a.width >= wide:
		spare := room - 1 - len(a.sheet.pageOf(width).lines)
		hive = a.hivePanel(width, max(spare, room/3))
		return a.notePanel(width, max(room-len(hive), 4)), hive
	case a.height >= tall:
		hive = a.hivePanel(width, room/3)
		return a.notePanel(width, min(share, max(room-len(hive)-12, 4))), hive
	case a.hive:
		return nil, a.hivePanel(width, share+2)
	}
	return a.notePanel(width, share), nil
}

// notePanel shows the stretch of the note around the words that matter now.
func (a *app) notePanel(width, room int) []string {
	s := a.sheet
	title := "The note"
	if editedText(&s.rec) {
		title = "The note, as you edited it"
	}
	out := []string{a.ruleOf(title, width)}
	p := s.pageOf(width)
	chosen := s.chosen()
	room--
	top := a.noteTop(p, room)
	hedged := a.hedgedSpans()
	ink := func(span colony.Span) brush {
		one := colony.Span{span[0], max(span[1], span[0]+1)}
		switch {
		case overlaps(chosen, one):
			return a.theme.words
		case overlaps(hedged, one):
			return a.theme.hedged
		case s.doubtful(one):
			return a.theme.faint
		}
		return brush{}
	}
	for _, line := range p.lines[top:min(top+room, len(p.lines))] {
		out = append(out, paintLine(line, ink))
		if under := underline(line, chosen); a.theme.plain && under != "" {
			out = append(out, under)
		}
	}
	return out[:min(len(out), room+1)]
}

// noteTop is the first line of the note that is shown in the room.
func (a *app) noteTop(p *page, room int) int {
	at := 0
	if chosen := a.sheet.chosen(); len(chosen) > 0 {
		at = p.lineOf(chosen[0][0])
	}
	return window(len(p.lines), room, at)
}

// underline is a line of carets under the chosen words, for terminals that
// can set nothing off.
func underline(line []cell, chosen []colony.Span) string {
	var b strings.Builder
	any := false
	for _, c := range line {
		sign := " "
		if overlaps(chosen, c.span) && c.width > 0 {
			sign, any = "^", true
		}
		b.WriteString(strings.Repeat(sign, c.width))
	}
	if !any {
		return ""
	}
	return strings.TrimRight(b.String(), " ")
}

// hedgedSpans are the words behind the leaves that are left to check.
func (a *app) hedgedSpans() []colony.Span {
	var out []colony.Span
	for _, q := range a.sheet.asked {
		out = append(out, a.sheet.ins.Evidence.Of(q.path)...)
	}
	return out
}

// lowConfidence is below which a recogniser's word is marked. A rule of thumb:
// common practice, no source.
const lowConfidence = 0.6

// doubtful reports whether the recogniser was not sure of the words.
func (s *sheet) doubtful(span colony.Span) bool {
	for _, w := range s.note.Words {
		if w.Confidence > 0 && w.Confidence < lowConfidence && w.Span[0] < span[1] && span[0] < w.Span[1] {
			return true
		}
	}
	return false
}

// The combs are drawn this tall, in lines, as far as there is room.
const (
	lowestComb  = 3
	tallestComb = 12
)

// hivePanel draws the hive with combs as tall as the room allows.
func (a *app) hivePanel(width, room int) []string {
	low := a.hiveLines(width, lowestComb)
	if rows := min(room-len(low)+lowestComb, tallestComb); rows > lowestComb && len(low) > 2 {
		return a.hiveLines(width, rows)
	}
	return low
}

// hiveLines draws the hive, what changed at the selected bar or, where none is
// selected, in the colony, and what the marks mean.
func (a *app) hiveLines(width, rows int) []string {
	s := a.sheet
	bar := s.bar()
	h := newHive(&s.ins, s.prev, width, rows, bar, a.theme)
	title := "The hive"
	if s.prev != nil {
		title += ", beside " + showDay(colony.DateOf(s.prev.At))
	}
	out := append([]string{a.ruleOf(title, width)}, h.lines()...)
	if h.last == 0 {
		return out
	}
	legend := h.legend()
	if changes := changeLines(h.changes, bar); len(changes) > 0 {
		text := wrapText(strings.Join(changes, "; "), width)
		if n := max(3-len(legend), 1); len(text) > n {
			text = append(text[:n-1], fit(text[n-1]+" "+text[n], width))
		}
		for i, line := range text {
			legend = slices.Insert(legend, i, a.theme.quiet.paint(line))
		}
	}
	return append(out, legend[:min(len(legend), 4)]...)
}

// rowsPanel draws the rows around the cursor.
func (a *app) rowsPanel(width, room int) []string {
	lines, _ := a.rowsShown(width, room)
	return lines
}

// rowsShown are the lines of the rows around the cursor, and which row each is
// of.
func (a *app) rowsShown(width, room int) (lines []string, owners []int) {
	lines, owners = a.rowLines(width)
	from := slices.Index(owners, a.sheet.row)
	to := len(owners) - 1
	for to > from && owners[to] != a.sheet.row {
		to--
	}
	top := min(window(len(lines), room, (from+to)/2), from)
	end := min(top+room, len(lines))
	return lines[top:end], owners[top:end]
}

// rowLines lays all rows out and tells which row each line is of, -1 for a
// heading.
func (a *app) rowLines(width int) (lines []string, owners []int) {
	s := a.sheet
	group, kind := "", rowKind(-1)
	for i, r := range s.rows {
		if r.kind != kind {
			lines, owners = append(lines, a.ruleOf(a.kindTitle(r.kind), width)), append(owners, -1)
			kind, group = r.kind, ""
		}
		lines = append(lines, a.rowLine(&r, i == s.row, r.group != group, width)...)
		for len(owners) < len(lines) {
			owners = append(owners, i)
		}
		group = r.group
	}
	return lines, owners
}

func (a *app) kindTitle(k rowKind) string {
	switch k {
	case rowQuestion:
		return fmt.Sprintf("To check: %d", len(a.sheet.asked))
	case rowItem:
		return "All that was said"
	case rowRemark:
		return "Words that no rule used"
	}
	return ""
}

const (
	groupWidth = 15
	labelWidth = 20
)

func (a *app) rowLine(r *row, selected, first bool, width int) []string {
	switch r.kind {
	case rowQuestion:
		return a.questionLines(r, selected, width)
	case rowRemark:
		text := wrapText(clean(r.text), width-2)
		out := []string{pointer(selected) + text[0]}
		for _, more := range text[1:] {
			out = append(out, "  "+more)
		}
		return out
	case rowEnd:
		return []string{pointer(selected) + a.endText(selected)}
	}
	head := ""
	if first || selected {
		head = r.group
	}
	indent := groupWidth + labelWidth
	chips := make([]string, len(r.chips))
	for i, c := range r.chips {
		chips[i] = a.chipText(c, selected && i == a.sheet.chip)
	}
	body := flow(chips, " · ", max(width-2-indent, 10))
	out := []string{pointer(selected) + fit(a.theme.bold.paint(head), groupWidth) + fit(r.label, labelWidth) + body[0]}
	for _, more := range body[1:] {
		out = append(out, strings.Repeat(" ", 2+indent)+more)
	}
	return out
}

// chipText writes one leaf: its label and value, a mark where a question is
// left and one where a person wrote it.
func (a *app) chipText(c chip, selected bool) string {
	text := showValue(c.path, c.value)
	if c.value == "" {
		text = "not said"
	}
	if c.label != "" {
		text = c.label + " " + text
	}
	if c.open {
		text = "? " + text
	}
	if c.own {
		text += "*"
	}
	switch {
	case selected && a.theme.plain:
		return "[" + text + "]"
	case selected:
		return a.theme.pick.paint(text)
	case c.open:
		return a.theme.unsure.paint(text)
	case c.own:
		return a.theme.own.paint(text)
	}
	return text
}

// questionLines are what stands there, why it is asked, and the other value.
func (a *app) questionLines(r *row, selected bool, width int) []string {
	q := r.ask
	name := "? " + fullName(q.path) + ": " + showValue(q.path, orNothing(q.value))
	if selected {
		name = a.theme.pick.paint(name)
	} else {
		name = a.theme.unsure.paint(name)
	}
	out := []string{pointer(selected) + name}
	why := clean(strings.Join(q.why, "; "))
	if q.alt != "" {
		why += " · or " + showValue(q.path, q.alt)
	}
	if room := width - visible(out[0]) - 2; visible(why) <= room {
		out[0] += "  " + why
		return out
	}
	for _, line := range wrapText(why, width-6) {
		out = append(out, "      "+line)
	}
	return out
}

func (a *app) endText(selected bool) string {
	s := a.sheet
	enter := a.keys.Confirm.Help().Key
	var text string
	switch n := len(s.asked); {
	case s.rec.State == colony.Confirmed:
		text = "Confirmed. Type to add a leaf."
	case s.rec.State == colony.SetAside:
		text = "Set aside: " + enter + " confirms all the same. Type to add a leaf."
	case a.batch != nil:
		text = "Nothing left to check: " + enter + " if it looks right."
	case n > 0:
		text = fmt.Sprintf("%d left to check. Type to add a leaf.", n)
	default:
		text = "Nothing left to check: " + enter + " confirms. Type to add a leaf."
	}
	if selected {
		return a.theme.pick.paint(text)
	}
	return text
}
