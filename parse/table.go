package parse

import (
	"slices"
	"strings"
)

// table is the one whose rows are being read; the zero table is none.
type table struct {
	sep   byte      // between cells; it stays when the rows end, for labels with their values
	close bool      // no space stands behind the separators of its heading
	heads []heading // by column; none behind its last row
	key   int       // the column that names hives, or else bars
	ofBar int       // the column that names bars
	keys  []string  // the hives that its rows have named, in lower case
	at    []int     // where its headings begin in their line
	dated string    // the day that its rows have told
}

// separators stand between the cells of a row: of a drawn table, of one pasted
// from a spreadsheet, of a file of values. A heading row has at least so many where
// they are spaced; semicolons and commas stand in sentences as well.
var separators = []separator{{'|', 1}, {'\t', 1}, {';', 2}, {',', 2}, {wide, 1}}

type separator struct {
	is    byte
	least int
}

// separatorsIn appends to out those that stand anywhere in a note: most have a comma and no
// more, and none of their lines is searched for the others.
func separatorsIn(note *tidied, out []separator) []separator {
	for _, s := range separators {
		if s.is == wide && note.gaps || s.is != wide && strings.IndexByte(note.text, s.is) >= 0 {
			out = append(out, s)
		}
	}
	return out
}

// wide stands for two spaces or more, which part the cells of a table that is aligned by
// them.
const wide = 1

// sepAt is where the next separator begins in a text, and where it ends; -1 for none.
func sepAt(text string, sep byte) (from, to int) {
	if sep != wide {
		k := strings.IndexByte(text, sep)
		return k, k + 1
	}
	if !strings.Contains(text, "  ") {
		return -1, 0 // as in most lines
	}
	text = strings.TrimRight(text, " \r")
	lead := len(text) - len(strings.TrimLeft(text, " "))
	k := strings.Index(text[lead:], "  ")
	if k < 0 {
		return -1, 0
	}
	k += lead
	return k, len(text) - len(strings.TrimLeft(text[k:], " "))
}

// tableRow turns a row of a table, of which the first line stands at these offsets,
// into rows as of a form: "3 | eggs | pollen" below "bar | brood | stores" is "bar 3;
// eggs; stores: pollen", and a row that names a hive is a heading and a line for each
// cell. A heading row has nothing to say. It returns the end of the row; 0 where the
// line is none.
func (r *reader) tableRow(from, to int, first pause) int {
	if sep := r.table.sep; sep != 0 && hasSep(r.text[from:to], sep) {
		end := r.rowEnd(from, to)
		cells := r.aligned(r.cellsOf(from, end, sep), from)
		switch {
		case r.beginsTable(cells, sep, from, to):
			return end
		case r.table.heads != nil && r.isRow(cells):
			r.sayRow(r.fitted(cells), first)
			return end
		case r.isLabelled(cells):
			r.table.heads = nil
			r.sayLabelled(cells, first)
			return end
		}
	}
	r.table.heads = nil
	if from == 0 {
		from += len(r.text[:to]) - len(strings.TrimPrefix(r.text[:to], "\uFEFF"))
	}
	for _, s := range r.parted {
		if s.is == r.table.sep || !hasSep(r.text[from:to], s.is) {
			continue // as most lines have none
		}
		close := unspaced(r.text[from:to], s.is)
		if least := s.least; least > 1 && !close && strings.Count(r.text[from:to], string(s.is)) < least {
			continue
		}
		key, known := r.firstCell(from, to, s.is)
		if !known {
			continue
		}
		if r.beginsTable(r.cellsOf(from, to, s.is), s.is, from, to) {
			return to
		}
		if close && s.is != '\t' && r.isLabelledNext(to, s.is) && r.isLabel(key) {
			r.table.sep = s.is
			r.sayLabelled(r.cellsOf(from, to, s.is), first)
			return to
		}
	}
	return 0
}

// firstCell is the first cell of a line, and whether a row may begin with it.
func (r *reader) firstCell(from, to int, sep byte) (c cell, known bool) {
	if sep == '|' {
		from, to = r.innerRow(from, to)
	}
	c, _ = r.cellAt(from, to, sep)
	if c.to == c.from || c.to-c.from > r.columns.longest+longestUnit {
		return c, false
	}
	return c, r.isLabel(c)
}

// isLabel reports whether a cell may be the first of a labelled row: the heading of a
// column, a hive or bars by number.
func (r *reader) isLabel(c cell) bool {
	if cols, _ := r.columnsOf(c); cols != nil {
		return true
	}
	return isNumber(r.text[c.from:c.to]) && c.to-c.from < 6 || r.namesHive(c)
}

// isLabelledNext reports whether the line behind an offset is cut up in the same way.
func (r *reader) isLabelledNext(end int, sep byte) bool {
	if end == len(r.text) {
		return false
	}
	from := end + 1
	to := from + len(lineAfter(r.text, end))
	if k := strings.IndexByte(r.text[from:to], sep); k < 0 || !unspaced(r.text[from:to], sep) {
		return false
	}
	_, known := r.firstCell(from, to, sep)
	return known
}

// beginsTable reports whether the cells of a row are headings, and begins their table.
func (r *reader) beginsTable(cells []cell, sep byte, from, to int) bool {
	if len(cells) < 2 {
		return false
	}
	first, _ := r.columnsOf(cells[0])
	if first == nil {
		return false
	}
	heads := r.headingsOf(cells)
	key, ofBar, known := -1, -1, 0
	at := make([]int, len(cells))
	for k := range heads {
		at[k] = cells[k].from - from
		switch h := &heads[k]; {
		case h.key == "hive" && key < 0:
			key = k
		case h.key == "bar" && ofBar < 0:
			ofBar = k
		}
		if heads[k].known {
			known++
		}
	}
	below := r.cellsOf(min(to+1, len(r.text)), min(to+1, len(r.text))+len(lineAfter(r.text, to)), sep)
	switch {
	case len(below) == 1:
		return false
	case known == 1 && r.table.key == 0 && r.table.sep == sep && len(cells) == len(r.table.heads) && cells[0].to == cells[0].from+1:
		return false // a row of hive B
	case sep == wide && (known < len(cells) || len(cells) == 2 && cells[1].to == cells[1].from+1 || key != 0 && ofBar != 0 || !r.namesBar(below[0]) && !r.namesHive(below[0]) && key != 0):
		return false
	case len(cells) == 2 && (r.isLabel(below[0]) && !isNumber(r.text[below[0].from:below[0].to]) && !r.namesHive(below[0])):
		return false // a form in two columns
	case key != 0 && ofBar != 0 && (known < len(cells) || len(cells) < 3 || len(below) != len(cells) || key < 0 && ofBar < 0 && sep == ',' && !unspaced(r.text[from:to], sep)):
		return false
	}
	if key < 0 {
		key = ofBar
	}
	r.table = table{sep: sep, close: unspaced(r.text[from:to], sep), heads: heads, key: key, ofBar: ofBar, keys: r.table.keys, at: at}
	return true
}

// hasSep reports whether a separator stands in a line.
func hasSep(line string, sep byte) bool {
	k, _ := sepAt(line, sep)
	return k >= 0
}

// aligned puts the cells of a row that is parted by spaces below the headings that they
// stand under, with empty ones where nothing does; from is where its line begins.
func (r *reader) aligned(cells []cell, from int) []cell {
	at := r.table.at
	if r.table.sep != wide || r.table.heads == nil || len(cells) >= len(at) || len(cells) < 2 {
		return cells
	}
	out := make([]cell, len(at))
	for k := range out {
		out[k] = cell{from: from, to: from}
	}
	for _, c := range cells {
		best := 0
		for k := range at {
			if abs(c.from-from-at[k]) < abs(c.from-from-at[best]) {
				best = k
			}
		}
		if out[best].to > out[best].from {
			return cells
		}
		out[best] = c
	}
	return out
}

func abs(n int) int { return max(n, -n) }

// lineAfter is the line behind the one that ends at the offset.
func lineAfter(text string, end int) string {
	_, rest, _ := strings.Cut(text[end:], "\n")
	rest, _, _ = strings.Cut(rest, "\n")
	return rest
}

// isRow reports whether cells are a row of the table in hand: what names its hive or
// bars is told as such, or left out for those of the row before.
func (r *reader) isRow(cells []cell) bool {
	if len(cells) < 2 {
		return false
	}
	k := r.table.key
	if k < 0 {
		return len(cells) == len(r.table.heads)
	}
	if k >= len(cells) {
		return false
	}
	c := cells[k]
	if r.blankCell(c) {
		return true
	}
	if k != r.table.ofBar {
		cols, _ := r.columnsOf(c)
		return r.namesHive(c) || isNumber(r.text[c.from:c.to]) || len(strings.Fields(r.written(c))) <= 4 && (cols == nil || len(cells) == len(r.table.heads) && (c.to == c.from+1 || strings.Contains(cols[0].Say, " side")))
	}
	return r.namesBar(c)
}

// namesBar reports whether a cell names bars: "3", "b4", "bars 5-7", "seven".
func (r *reader) namesBar(c cell) bool {
	said := r.split.tokens(nil, r.written(c), c.from, none)
	for _, t := range said {
		if t.has(digits) || r.numbers.of(t.id).kind != notNumber {
			return true
		}
	}
	return false
}

// namesHive reports whether a cell names a hive: "H3", "hive 12", the name in a row
// before.
func (r *reader) namesHive(c cell) bool {
	if c.to == c.from || c.to-c.from > r.columns.longest+longestUnit {
		return false
	}
	name := r.lowerCell(c)
	if slices.Contains(r.table.keys, name) {
		return true
	}
	for _, mark := range r.wordsOf[hiveMarks] {
		rest, ok := strings.CutPrefix(name, mark)
		if !ok {
			continue
		}
		if rest = strings.TrimLeft(rest, " .#"); rest != "" && isDigit(rest[0]) && len(rest) <= 3 {
			return true
		}
	}
	return strings.HasPrefix(name, "hive ") || strings.HasSuffix(name, " hive")
}

// fitted joins cells that an unquoted comma has parted, where a row has more of them
// than its table: "seen b4, red dot" between commas without a space.
func (r *reader) fitted(cells []cell) []cell {
	for k := 1; r.table.close && k < len(cells) && len(cells) > len(r.table.heads); {
		if at := cells[k].from; at > 0 && r.text[at-1] == ' ' && !cells[k].quoted && !cells[k-1].quoted {
			cells[k-1].to = cells[k].to
			cells = slices.Delete(cells, k, k+1)
			continue
		}
		k++
	}
	return cells
}

// namedInTable counts the hives that a table names by a word among the names of the note:
// "Copper | calm", and below the table "Copper: add a bar".
func (r *reader) namedInTable() {
	for _, name := range r.table.keys {
		if strings.ContainsAny(name, "0123456789 ") {
			continue
		}
		if r.names == nil {
			r.names = map[string]bool{}
		}
		r.names[name] = true
	}
}
