package parse

import (
	"slices"
	"strings"
)

// A row of a table becomes rows of a form: what the headings make of its cells is said one
// after another.

// sayRow appends the rows of a form that a row of the table in hand stands for.
func (r *reader) sayRow(cells []cell, first pause) {
	t := &r.table
	if t.key >= 0 && t.key != t.ofBar && t.key < len(cells) && !r.blankCell(cells[t.key]) {
		first = r.sayDay(cells, first)
		r.sayHive(cells[t.key], first)
		first = line
	}
	if t.ofBar >= 0 {
		r.sayBar(cells, first)
		return
	}
	said := ""
	for k, c := range cells {
		if k == t.key || k >= len(t.heads) || t.heads[k].dated && t.key >= 0 || r.blankCell(c) {
			continue
		}
		h := &t.heads[k]
		if h.with != "" && h.with == said {
			r.joinRow(r.sayCell(nil, h, c, comma))
			continue
		}
		r.addRow(r.sayCell(nil, h, c, first), first)
		r.rows[len(r.rows)-1].under = h.under
		said, first = h.with, line
	}
}

// sayDay says the day of a row before its hive, unless the row before has.
func (r *reader) sayDay(cells []cell, first pause) pause {
	for k, c := range cells {
		if k < len(r.table.heads) && r.table.heads[k].dated && !r.blankCell(c) && r.written(c) != r.table.dated {
			r.table.dated = r.written(c)
			r.addRow(r.sayCell(nil, &r.table.heads[k], c, first), first)
			return line
		}
	}
	return first
}

// sayHive appends the row that names a hive.
func (r *reader) sayHive(c cell, first pause) {
	name := r.lowerCell(c)
	if !slices.Contains(r.table.keys, name) {
		r.table.keys = append(r.table.keys, name)
	}
	said := r.split.tokens(nil, r.written(c), c.from, first)
	if isNumber(name) || !r.namesHive(c) || slices.Contains(r.table.keys, name) && !strings.ContainsAny(name, "0123456789") && !strings.Contains(name, "hive") {
		said[0].pause = none
		if len(name) == 1 {
			said[0].flags |= capital // "b", as if "B"
		}
		row := appendAt(nil, r.phrasing("hive *").before, c.from)
		row[0].pause = first
		said = append(row, said...)
	}
	r.addRow(said, first)
}

// sayBar appends the row that tells of the bars which it names.
func (r *reader) sayBar(cells []cell, first pause) {
	t := &r.table
	var row []token
	if c := cells[min(t.ofBar, len(cells)-1)]; t.ofBar < len(cells) && !r.blankCell(c) {
		row = r.sayBars(c, first)
	}
	for k, c := range cells {
		if k == t.ofBar || k == t.key || k >= len(t.heads) || r.blankCell(c) {
			continue
		}
		p := colon
		if len(row) == 0 {
			p = first
		}
		row = r.sayCell(row, &t.heads[k], c, p)
	}
	r.addRow(row, first)
}

// sayBars are the words of a cell that names bars.
func (r *reader) sayBars(c cell, first pause) []token {
	said := r.split.tokens(nil, r.written(c), c.from, first)
	if t := &said[0]; t.has(digits) || r.numbers.of(t.id).kind != notNumber {
		row := appendAt(nil, r.phrasing("bar *").before, c.from)
		row[0].pause, t.pause = first, none
		return append(row, said...)
	}
	return said
}

// isLabelled reports whether cells are a label and its value, as often stand below a
// table: "follower,behind 9", "to do,H3,look again,25 June", "H1,no wax moth".
func (r *reader) isLabelled(cells []cell) bool {
	return len(cells) > 1 && r.isLabel(cells[0])
}

// sayLabelled appends the rows of a form that a labelled row stands for.
func (r *reader) sayLabelled(cells []cell, first pause) {
	if r.namesHive(cells[0]) {
		r.sayHive(cells[0], first)
		cells, first = cells[1:], line
	} else if len(cells) > 2 && r.namesHive(cells[1]) {
		r.sayHive(cells[1], first)
		cells = append([]cell{cells[0]}, cells[2:]...)
		first = line
	}
	var row []token
	p := first
	switch cols, _ := r.columnsOf(cells[0]); {
	case len(cells) < 2:
	case cols != nil:
		h := r.headingOf(r.written(cells[0]), nil)
		if name := r.lowerCell(cells[0]); !h.telling && h.under == noHeading || strings.HasPrefix(name, "next ") {
			h.say, h.telling = r.phrasing(name+": *"), true // "mites | 8 on the board", "next visit | 3 June"
		}
		if cells = cells[1:]; !r.blankCell(cells[0]) {
			row = r.sayCell(nil, &h, cells[0], first)
			p = comma
		}
		cells = cells[1:]
	case isNumber(r.text[cells[0].from:cells[0].to]):
		row, p = r.sayBars(cells[0], first), colon
		cells = cells[1:]
	}
	for _, c := range cells {
		if r.blankCell(c) {
			continue
		}
		said := r.split.tokens(nil, r.written(c), c.from, p)
		row, p = append(row, said...), comma
	}
	r.addRow(row, first)
}

// addRow appends a row of the page.
func (r *reader) addRow(toks []token, first pause) {
	if len(toks) == 0 {
		return
	}
	from := len(r.toks)
	r.toks = append(r.toks, toks...)
	r.rows = append(r.rows, row{from, len(r.toks), first, noHeading})
}

// joinRow appends words to the last row of the page.
func (r *reader) joinRow(toks []token) {
	r.toks = append(r.toks, toks...)
	r.rows[len(r.rows)-1].to = len(r.toks)
}
