package parse

import (
	"fmt"
	"strings"
)

// column is what the headings of a column of a table make of the cells below: the
// words of a form. A star stands for the cell.
type column struct {
	Heads  []string  `toml:"heads"`
	Key    string    `toml:"key"`     // what its cells name: hive, bar, or either
	Say    string    `toml:"say"`     // for a cell of words, or any
	Number string    `toml:"number"`  // for a cell that holds a bare number
	With   string    `toml:"with"`    // the columns whose cells are said in one breath with its own
	Under  string    `toml:"under"`   // of deeds: done or to do
	OnBars bool      `toml:"on bars"` // its cells may list the bars where it is
	Beside string    `toml:"beside"`  // holds only beside a column said with these, or one of hives, or behind one of bars
	Yes    []example `toml:"yes"`
	No     []string  `toml:"no"`
}

// example is a table, and the leaves that it must become, with the day where it tells one;
// " / " parts those of its hives.
type example struct {
	Table  string `toml:"table"`
	Leaves string `toml:"leaves"`
}

// columns tells for each heading, in lower case, what it makes of its cells. One of
// several stands beside other columns.
type columns struct {
	byHead  map[string][]*column
	longest int // heading, in bytes
}

// newColumns takes the columns of the rule files.
func newColumns(read []column) (columns, error) {
	c := columns{byHead: map[string][]*column{}}
	for i := range read {
		col := &read[i]
		if len(col.Heads) == 0 || strings.Count(col.Say, "*") != 1 || strings.Count(col.Number, "*") > 1 || len(col.Yes) == 0 || len(col.No) == 0 || col.Under != "" && underOf[col.Under] == noHeading {
			return c, fmt.Errorf("rules/columns.toml: column of %q: needs heads, a star in what is said, a yes and a no", col.Say)
		}
		for _, head := range col.Heads {
			for _, other := range c.byHead[head] {
				if other.Beside == col.Beside {
					return c, fmt.Errorf("rules/columns.toml: heading %q stands twice", head)
				}
			}
			c.byHead[head] = append(c.byHead[head], col)
			c.longest = max(c.longest, len(head))
		}
	}
	return c, nil
}

// longestUnit is the number of bytes by which a unit may lengthen a heading.
const longestUnit = 8

// find is the column of a heading in lower case, with the unit that it names: "weight
// (kg)".
func (c *columns) find(head string) (cols []*column, unit string) {
	if len(head) > c.longest+longestUnit {
		return nil, ""
	}
	if cols := c.byHead[head]; cols != nil {
		return cols, ""
	}
	head = strings.TrimRight(head, ".:?")
	name, unit, ok := strings.Cut(head, "(")
	if ok {
		unit = strings.TrimSuffix(unit, ")")
	} else if k := strings.LastIndexByte(head, ' '); k > 0 {
		name, unit = head[:k], head[k+1:]
	} else {
		return c.byHead[head], ""
	}
	if !isUnit(unit) {
		return nil, ""
	}
	return c.byHead[strings.TrimSpace(name)], unit
}

func isUnit(word string) bool {
	switch word {
	case "c", "°c", "f", "°f", "%":
		return true
	}
	return unitNames[word] != ""
}

// heading is one column's of the table in hand.
type heading struct {
	known       bool
	key         string
	say, number phrasing
	with        string
	telling     bool // it says what a cell is of
	dated       bool // its cells are the day of the visit
	under       under
}

// phrasing is a column's words, around those of the cell.
type phrasing struct {
	before, behind []token
	colon          bool // behind the words before
}

// columnsOf are those of a cell, as a heading.
func (r *reader) columnsOf(c cell) ([]*column, string) { return r.columns.find(r.lowerCell(c)) }

// headingsOf reads the headings of a row.
func (r *reader) headingsOf(cells []cell) []heading {
	beside := map[string]bool{}
	for _, c := range cells {
		cols, _ := r.columnsOf(c)
		for _, col := range cols {
			if col.Beside == "" {
				beside[col.With] = true
				beside["hive"] = beside["hive"] || col.Key == "hive"
			}
		}
	}
	heads := make([]heading, len(cells))
	for k, c := range cells {
		heads[k] = r.headingOf(r.written(c), beside)
		beside["bar"] = beside["bar"] || heads[k].key == "bar"
	}
	return heads
}

// headingOf reads the heading of a column that stands beside others.
func (r *reader) headingOf(text string, beside map[string]bool) heading {
	cols, unit := r.columns.find(r.strings.lower(text))
	var col *column
	for _, c := range cols {
		if c.Beside == "" && col == nil || c.Beside != "" && beside[c.Beside] {
			col = c
		}
	}
	if col == nil {
		say := r.phrasing(strings.ToLower(text) + ": *")
		return heading{say: say, number: say, telling: true}
	}
	number := col.Number
	switch {
	case unit == "%":
		number = strings.Replace(col.Say, "*", "*%", 1)
	case unit != "" && number != "" && strings.HasSuffix(number, " *"):
		number += " " + unit
	case unit != "":
		number = strings.Replace(col.Say, "*", "* "+unit, 1)
	case number == "":
		number = col.Say
	}
	return heading{known: true, key: col.Key, say: r.phrasing(col.Say), number: r.phrasing(number), with: col.With, telling: col.Say != "*", dated: strings.HasPrefix(col.Say, "date"), under: underOf[col.Under]}
}

// phrasing cuts the words around a star into tokens.
func (r *reader) phrasing(text string) phrasing {
	before, behind, _ := strings.Cut(text, "*")
	before, colon := strings.CutSuffix(strings.TrimSpace(before), ":")
	return phrasing{r.split.tokens(nil, before, 0, none), r.split.tokens(nil, behind, 0, none), colon}
}

// sayCell appends the words of a cell and of its heading. The heading's stand nowhere
// in the row, so they are no part of a leaf's evidence.
func (r *reader) sayCell(row []token, h *heading, c cell, p pause) []token {
	said := r.split.tokens(nil, r.written(c), c.from, none)
	if len(said) == 0 {
		return row
	}
	say := h.say
	if isNumber(r.text[c.from:c.to]) {
		say = h.number
	}
	if h.telling && !(r.namesContent(say.before) && r.namesContent(firstPart(said))) {
		from := len(row)
		row = appendAt(row, say.before, c.from)
		if len(row) > from {
			row[from].pause = p
			if p = none; say.colon {
				row[len(row)-1].flags |= coloned
				p = colon
			}
		}
	}
	if p == colon && r.tellsExtent(said) {
		p = comma
	}
	said[0].pause = p
	row = append(row, said...)
	return appendAt(row, say.behind, c.to)
}

// firstPart are the words of a cell before its first pause.
func firstPart(said []token) []token {
	for k := range said {
		if k > 0 && said[k].pause > none {
			return said[:k]
		}
	}
	return said
}

// appendAt appends words that stand nowhere, as if at the offset.
func appendAt(row, words []token, at int) []token {
	for _, w := range words {
		w.start, w.end, w.flags = int32(at), int32(at), w.flags&wordMarks|respelt
		row = append(row, w)
	}
	return row
}

// isNumber reports whether a cell holds a bare number or a range of two.
func isNumber(cell string) bool {
	digits := false
	for i := range len(cell) {
		switch b := cell[i]; {
		case isDigit(b):
			digits = true
		case strings.IndexByte(".,-", b) < 0:
			return false
		}
	}
	return digits
}

// tellsExtent reports whether a cell only goes on about what the one before it names:
// on which side it is, or in what pattern.
func (r *reader) tellsExtent(said []token) bool {
	best := r.lex.matcher.longest(said, 0, nil)
	return best.kinds.meet(two(kSide, kPattern)) && !r.namesContent(said)
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
