package parse

import "strings"

// table is the heading row of a table whose rows are being read; the zero
// table is none.
type table struct {
	sep   string
	heads []heading // by column
}

// heading is one column's: its words, and whether they say what a cell is of.
type heading struct {
	words   []token
	telling bool
	side    bool // of the comb, on which the cell's words are
}

// sideHeads are the headings that tell a side of the comb, as it is said in a
// sentence.
var sideHeads = map[string]string{
	"front": "on the front", "front side": "on the front", "front face": "on the front", "entrance side": "on the front",
	"back": "on the back", "back side": "on the back", "back face": "on the back", "rear": "on the back",
	"one side": "on one side", "side 1": "on one side", "side a": "on one side", "left": "on the left side", "left side": "on the left side",
	"other side": "on the other side", "side 2": "on the other side", "side b": "on the other side", "right": "on the other side", "right side": "on the other side",
}

// separators stand between the cells of a row: of a drawn table, of one pasted
// from a spreadsheet, of a file of values. A heading row has at least so many;
// semicolons and commas stand in sentences as well.
var separators = []struct {
	text  string
	least int
}{{"|", 1}, {"\t", 1}, {";", 2}, {",", 2}}

// tableRow turns a row of a table into the words of a form: "3 | eggs | pollen"
// below "bar | brood | stores" is "bar 3; eggs; stores: pollen". It reports
// false where the line is no row; the heading row itself has nothing to say.
func (r *reader) tableRow(text string, base int, first pause) ([]token, bool) {
	if r.table.sep != "" {
		if cells := cellsOf(text, r.table.sep); len(cells) > 1 {
			return r.cells(cells, text, base, first), true
		}
	}
	r.table = table{}
	for _, sep := range separators {
		if strings.Count(text, sep.text) < sep.least {
			continue // no heading row, and most lines are none
		}
		key, _, _ := strings.Cut(inner(text, sep.text), sep.text)
		if key = strings.TrimSpace(key); len(key) > r.longestKey || !r.inList(tableKeys, strings.ToLower(key)) {
			continue
		}
		cells, below := cellsOf(text, sep.text), cellsOf(lineAfter(r.text, base+len(text)), sep.text)
		if len(below) == 1 || len(cells) == 2 && r.isLabel(below[0]) {
			continue
		}
		r.table.sep = sep.text
		for _, cell := range cells {
			r.table.heads = append(r.table.heads, r.columnHead(cell, base))
		}
		return nil, true
	}
	return nil, false
}

// columnHead reads the heading of a column.
func (r *reader) columnHead(cell string, base int) heading {
	head := strings.ToLower(strings.TrimSpace(cell))
	text, side := sideHeads[head]
	if !side {
		text = head
	}
	return heading{r.split.tokens(nil, text, base, none), !r.inList(vagueHeads, head), side}
}

// isLabel reports whether a cell begins a line of a form in two columns, as
// "weather" and "bar 1" do below "hive | lime tree".
func (r *reader) isLabel(cell string) bool {
	cell = strings.ToLower(strings.TrimSpace(cell))
	first, _, several := strings.Cut(cell, " ")
	return r.inList(plainHeadings, cell) || several && r.inList(tableKeys, first)
}

func cellsOf(text, sep string) []string { return strings.Split(inner(text, sep), sep) }

// inner is a row without the strokes that close a drawn one, which begin no
// cell.
func inner(text, sep string) string {
	if sep == "|" {
		return strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(text), sep), sep)
	}
	return text
}

// lineAfter is the line behind the one that ends at the offset.
func lineAfter(text string, end int) string {
	_, rest, _ := strings.Cut(text[end:], "\n")
	rest, _, _ = strings.Cut(rest, "\n")
	return rest
}

// cells gives each cell of a row the words of its heading. Those stand nowhere
// in the row, so they are no part of a leaf's evidence.
func (r *reader) cells(cells []string, text string, base int, first pause) []token {
	var row []token
	from := strings.Index(text, cells[0])
	for k, cell := range cells {
		at := base + from + len(cell) - len(strings.TrimLeft(cell, " \t"))
		from += len(cell) + len(r.table.sep)
		cell = strings.TrimSpace(cell)
		if strings.Trim(cell, "-–—:/ ") == "" {
			continue
		}
		p := colon
		if len(row) == 0 {
			p = first
		}
		said := r.split.tokens(nil, cell, at, none)
		if len(said) == 0 {
			continue
		}
		if k < len(r.table.heads) && r.headsCell(k, said) {
			for _, w := range r.table.heads[k].words {
				w.start, w.end, w.pause, w.flags = int32(at), int32(at), p, w.flags&wordMarks|respelt
				row = append(row, w)
				p = none
			}
			if k > 0 && !r.table.heads[k].side {
				row[len(row)-1].flags |= coloned
				p = colon
			}
		}
		if p == colon && r.tellsExtent(said) {
			p = comma
		}
		said[0].pause = p
		row = append(row, said...)
	}
	return row
}

// tellsExtent reports whether a cell only goes on about what the one before it names:
// on which side it is, or in what pattern.
func (r *reader) tellsExtent(said []token) bool {
	best := r.lex.matcher.longest(said, 0, nil)
	return best.kinds.meet(two(kSide, kPattern)) && !r.namesContent(said)
}

// headsCell reports whether the heading belongs before the words of a cell: not
// where it says nothing, or where both name what is on a comb.
func (r *reader) headsCell(column int, said []token) bool {
	head := r.table.heads[column]
	return head.telling && len(head.words) > 0 && !(r.namesContent(head.words) && r.namesContent(said))
}

func (r *reader) namesContent(toks []token) bool {
	for i := range toks {
		for _, n := range r.lex.matcher.longest(toks, i, nil).rules {
			if k := r.rules[n].Kind; k == kContent || k == kStores {
				return true
			}
		}
	}
	return false
}
