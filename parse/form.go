package parse

import "strings"

// A form has a label and its value on each of its lines: "Bars added: 2". What a column of a
// table makes of its cells is then what its heading, as a label, makes of the value.

// form is the one whose lines are being read.
type form struct {
	open   bool
	ofBars bool // its contents are told with lists of bars: "eggs 4-6", so "pollen 2" is bar 2
}

// formLine is a line of a form.
type formLine struct {
	label, value cell
	col          *column
}

// formRow turns the line at these offsets into the row that it stands for, if it is one of a
// form, which has two lines or more.
func (r *reader) formRow(from, to int, first pause) bool {
	l, ok := r.formLine(from, to)
	if !ok {
		r.form.open = r.form.open && strings.IndexByte(r.text[from:to], ':') > 0
		return false
	}
	if !r.form.open {
		if r.form = r.formAt(from, to); !r.form.open {
			return false
		}
	}
	cells := []cell{l.label, l.value}
	switch text := r.text[l.value.from:l.value.to]; {
	case l.col.Under != "", l.col.ofDeed() && !isDigit(text[0]):
		return false // "next: empty comb", "treated: yes, thymol" tell more than the column asks for
	case r.form.ofBars && l.col.placed() && isNumber(text):
		r.sayPlaced(l, first)
		return true
	case strings.IndexByte(text, '(') > 0: // "bars removed: 1 (b3)"
		aside := l.value
		aside.from += strings.IndexByte(text, '(')
		_, cells[1].to = r.trimmed(l.value.from, aside.from)
		cells = append(cells, aside)
	}
	r.sayLabelled(cells, first)
	return true
}

// mostOfForm is the number of lines of a form that are looked at for how it is filled in.
const mostOfForm = 16

// formAt is the form that begins with the line at these offsets.
func (r *reader) formAt(from, to int) (f form) {
	lists := 0
	for n := 0; n < mostOfForm; n++ {
		l, ok := r.formLine(from, to)
		if !ok {
			break
		}
		f.open = n > 0
		if value := r.text[l.value.from:l.value.to]; l.col.placed() && isList(value) && (!isNumber(value) || strings.ContainsAny(value, "-,")) {
			lists++
		}
		if to >= len(r.text) {
			break
		}
		from = to + 1
		to = from + len(lineAfter(r.text, to))
	}
	f.ofBars = lists > 1
	return f
}

// formLine cuts a line into a label, which is the heading of a column that says what its
// cells are, and its value: behind a colon or a question mark, or numbers alone.
func (r *reader) formLine(from, to int) (l formLine, ok bool) {
	behind, last := from, min(to, from+r.columns.longest+longestUnit)
	for behind < last && !endsLabel[r.text[behind]] {
		behind++
	}
	if behind == from || behind == last {
		return l, false
	}
	end := behind
	if !isDigit(r.text[behind]) {
		behind++
	} else if !isList(r.text[behind:to]) {
		return l, false
	}
	l.label.from, l.label.to = r.trimmed(from, end)
	l.value.from, l.value.to = r.trimmed(behind, to)
	if l.value.from == l.value.to {
		return l, false
	}
	cols, _ := r.columnsOf(l.label)
	if len(cols) == 0 || cols[0].Key != "" || cols[0].Say == "*" {
		return l, false
	}
	l.col = cols[0]
	return l, true
}

// endsLabel are the bytes at which a label ends. (Looked up one by one: strings.IndexAny
// makes such a table for every line.)
var endsLabel = func() (ends [256]bool) {
	for _, c := range ":?0123456789" {
		ends[c] = true
	}
	return ends
}()

// isList reports whether a text is nothing but numbers: "3, 7-9", "1 2 10".
func isList(text string) bool {
	return strings.Trim(text, "0123456789,-+& ") == ""
}

// placed reports whether what the column tells of is on bars: the contents, the queen.
func (c *column) placed() bool {
	return c.With == "queen" && strings.HasPrefix(c.Say, "queen") || c.OnBars
}

// ofDeed reports whether the column says what was done: "fed *", not "queen: *".
func (c *column) ofDeed() bool { return !strings.Contains(c.Say, ":") && c.With == "" }

// sayPlaced appends the row that a label with the number of a bar stands for.
func (r *reader) sayPlaced(l formLine, first pause) {
	h := r.headingOf(r.written(l.label), nil)
	row := appendAt(nil, h.say.before, l.label.from)
	row[0].pause = first
	r.addRow(append(row, r.sayBars(l.value, none)...), first)
}
