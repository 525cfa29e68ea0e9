package tui

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"barwise/colony"
)

// RenderHive draws the hive from the side as a row of bars, the entrance at the
// left: each comb as tall as it is built, rows lines when it is whole, and
// filled with what it holds, the front face left and the back face right where
// they differ; the queen and queen cells below their comb; the follower board in
// its place; then what the marks mean. With an earlier inspection it says what
// changed since. It is plain text; no line is wider than width, as long as width
// is 20 or more.
func RenderHive(ins, prev *colony.Inspection, width, rows int) string {
	return newHive(ins, prev, width, rows, 0, newTheme(io.Discard, noStyle, onDark)).picture()
}

// hive is the drawing of one inspection.
type hive struct {
	ins, prev *colony.Inspection
	changes   []change
	width     int
	rows      int // of a whole comb
	selected  int
	theme     theme
	first     int // the bars that fit, both ends included
	last      int
	column    int // cells across one comb
	used      map[string]bool
	combs     map[int][]face // by bar, filled as they are drawn
}

const wall = 2 // columns of the front wall with the entrance

func newHive(ins, prev *colony.Inspection, width, rows, selected int, th theme) *hive {
	h := &hive{ins: ins, prev: prev, width: width, rows: max(rows, 2), selected: selected, theme: th, used: map[string]bool{}, combs: map[int][]face{}}
	if prev != nil {
		h.changes = compare(prev, ins)
	}
	bars := barCount(ins)
	room := max(width-wall-2, 4)
	h.column = min(max(room/max(bars, 1)-1, 1), 6)
	fits := max(room/(h.column+1), 1)
	h.first, h.last = 1, bars
	if fits < bars {
		h.first = min(max(selected-fits/2, 1), bars-fits+1)
		h.last = h.first + fits - 1
	}
	return h
}

// barUnder is the bar that is drawn in the column of the screen, or 0.
func (h *hive) barUnder(x int) int {
	bar := h.first + (x-wall)/(h.column+1)
	if x < wall || bar > h.last {
		return 0
	}
	return bar
}

// barCount is the highest bar that the inspection knows of.
func barCount(ins *colony.Inspection) int {
	n := 0
	for _, b := range ins.Bars {
		n = max(n, b.Bar)
	}
	if ins.BarsTotal != nil {
		n = max(n, *ins.BarsTotal)
	}
	return min(max(n, followerBar(ins), queenBar(ins)), 99)
}

// picture is the drawing with what its marks mean.
func (h *hive) picture() string {
	lines := h.lines() // first: the legend is of what was drawn
	return strings.Join(append(lines, h.legend()...), "\n")
}

// lines draws the hive; none where no bar is known.
func (h *hive) lines() []string {
	if h.last == 0 {
		return []string{h.theme.quiet.paint("no bar was spoken of")}
	}
	out := []string{h.numbers(), h.topBars()}
	for row := range h.rows {
		out = append(out, h.combLine(row))
	}
	for _, hanging := range []func(int) string{h.queenAt, h.cellsAt, h.changeAt} {
		if line, any := h.across(" ", hanging); any {
			out = append(out, line)
		}
	}
	return out
}

// across draws one line of the hive bar by bar and tells whether any bar had
// something to show.
func (h *hive) across(front string, draw func(bar int) string) (line string, any bool) {
	var b strings.Builder
	b.WriteString(fit(front, wall))
	for bar := h.first; bar <= h.last; bar++ {
		text := draw(bar)
		any = any || strings.TrimSpace(text) != ""
		b.WriteString(fit(text, h.column))
		b.WriteString(h.gapAfter(bar))
	}
	return strings.TrimRight(b.String(), " "), any
}

// gapAfter is the room between two combs, or the follower board.
func (h *hive) gapAfter(bar int) string {
	if followerBar(h.ins) == bar {
		return "║"
	}
	return " "
}

func (h *hive) numbers() string {
	front := " "
	if h.first > 1 {
		front = "<"
	}
	line, _ := h.across(front, func(bar int) string {
		text := strconv.Itoa(bar)
		if len(text) > h.column { // the tens are left out where there is no room
			text = text[len(text)-1:]
		}
		if bar == h.selected {
			return h.theme.pick.paint(text)
		}
		return text
	})
	if bars := barCount(h.ins); h.last < bars {
		line += ">"
	}
	return line
}

func (h *hive) topBars() string {
	line, _ := h.across("┌─", func(bar int) string {
		if bar == h.selected {
			return h.theme.unsure.paint(strings.Repeat("▼", h.column))
		}
		return strings.Repeat("━", h.column)
	})
	return line
}

// combLine draws one line of all the combs.
func (h *hive) combLine(row int) string {
	front := "│"
	if row == h.rows-1 {
		front = h.entrance()
	}
	line, _ := h.across(front, func(bar int) string { return h.comb(bar, row) })
	return line
}

// entrance is the hole in the front wall.
func (h *hive) entrance() string {
	switch h.ins.Entrance {
	case "open":
		return ">"
	case "reduced":
		return "›"
	case "closed":
		return "x"
	}
	return "│"
}

// comb draws one line of one comb.
func (h *hive) comb(number, row int) string {
	bar := h.ins.Bar(number)
	tall := combRows(bar, h.rows)
	if row >= tall {
		return ""
	}
	if h.combs[number] == nil {
		h.combs[number] = h.newComb(bar.Contents, tall)
	}
	out := ""
	for _, f := range h.combs[number] {
		out += h.cells(f, row)
	}
	return out
}

// face is what is drawn of a comb: all of it, or one of its sides.
type face struct {
	cells       []string // from the top bar down, what each holds
	width       int
	left, right int // cells that the lowest line lacks on each side
}

// newComb fills a comb, both faces as one where they are the same.
func (h *hive) newComb(contents []colony.Content, tall int) []face {
	front, back, differ := faces(contents)
	slim := h.slim(tall)
	if !differ || h.column < 2 {
		return []face{{fill(front, tall*h.column-2*slim), h.column, slim, slim}}
	}
	left := (h.column + 1) / 2
	right := h.column - left
	return []face{{fill(front, tall*left-slim), left, slim, 0}, {fill(back, tall*right-slim), right, 0, slim}}
}

// slim is how much narrower the lowest line of a comb is on each side: combs
// hang in a curve. Small and narrow ones are drawn straight.
func (h *hive) slim(tall int) int {
	if h.column >= 5 && tall >= 4 {
		return 1
	}
	return 0
}

// cells paints one line of a face, runs of one content together.
func (h *hive) cells(f face, row int) string {
	line := f.cells[row*f.width : min((row+1)*f.width, len(f.cells))]
	var b strings.Builder
	if len(line) < f.width {
		b.WriteString(strings.Repeat(" ", f.left))
	}
	for at := 0; at < len(line); {
		to := at
		for to < len(line) && line[to] == line[at] {
			to++
		}
		h.used[line[at]] = true
		sign := markOf(line[at]).sign
		b.WriteString(h.theme.contents[line[at]].paint(strings.Repeat(string(sign), to-at)))
		at = to
	}
	return b.String()
}

func (h *hive) queenAt(bar int) string {
	if queenBar(h.ins) == bar {
		h.used["queen"] = true
		return h.theme.title.paint("Q")
	}
	return ""
}

// cellsAt shows the queen cells of a bar, those that matter most first, each
// with its count where there is room.
func (h *hive) cellsAt(number int) string {
	bar := h.ins.Bar(number)
	if bar == nil {
		return ""
	}
	text := ""
	for _, s := range cellSigns {
		for _, c := range bar.QueenCells {
			if c.Stage != s.stage || !c.Present || len(text) >= h.column {
				continue
			}
			h.used["cells "+s.stage] = true
			text += string(s.sign)
			if c.Count != nil && len(text)+len(strconv.Itoa(*c.Count)) <= h.column {
				text += strconv.Itoa(*c.Count)
			}
		}
	}
	if text == "" {
		return ""
	}
	return h.theme.unsure.paint(text)
}

func (h *hive) changeAt(bar int) string {
	sign := signOf(h.changes, bar)
	switch sign {
	case "+":
		return h.theme.good.paint(sign)
	case "-":
		return h.theme.bad.paint(sign)
	}
	return sign
}

// legend explains the marks that occur in the drawing, and what was drawn by
// convention. It is filled in while the lines are drawn.
func (h *hive) legend() []string {
	var items []string
	for _, m := range marks {
		if h.used[m.what] {
			items = append(items, h.theme.contents[m.what].paint(string(m.sign))+" "+plainWord(m.what))
		}
	}
	if h.used[""] {
		items = append(items, string(unsaid)+" comb, nothing said")
	}
	if h.used["queen"] {
		items = append(items, "Q queen")
	}
	for _, s := range cellSigns {
		if h.used["cells "+s.stage] {
			items = append(items, fmt.Sprintf("%c %s", s.sign, s.name))
		}
	}
	if followerBar(h.ins) > 0 {
		items = append(items, "║ follower board")
	}
	if h.ins.Entrance != "" {
		items = append(items, h.entrance()+" entrance "+h.ins.Entrance)
	}
	if h.prev != nil {
		items = append(items, "+ - ± = grew, shrank, both, the same")
	}
	return flow(items, "  ", h.width)
}
