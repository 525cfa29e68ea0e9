package parse

import "strings"

// cell is one of a row: its words stand at these offsets of the note.
type cell struct {
	from, to int
	quoted   bool // and doubled quotes inside stand for one (RFC 4180)
}

// cellsOf cuts the row at these offsets into its cells.
func (r *reader) cellsOf(from, to int, sep byte) []cell {
	if sep == '|' {
		from, to = r.innerRow(from, to)
	}
	var cells []cell
	for at := from; ; {
		c, next := r.cellAt(at, to, sep)
		cells = append(cells, c)
		if next >= to {
			if next == to {
				cells = append(cells, cell{from: to, to: to})
			}
			return cells
		}
		at = next
	}
}

// innerRow is a drawn row without the strokes that close it, which begin no cell.
func (r *reader) innerRow(from, to int) (int, int) {
	from, to = r.trimmed(from, to)
	if from < to && r.text[from] == '|' {
		from++
	}
	if from < to && r.text[to-1] == '|' {
		to--
	}
	return from, to
}

// cellAt is the cell at an offset and where the next one begins; beyond the end where
// there is none.
func (r *reader) cellAt(at, to int, sep byte) (c cell, next int) {
	if sep != '|' && sep != wide {
		if c, next, ok := r.quotedCell(at, to, sep); ok {
			return c, next
		}
	}
	end, next := sepAt(r.text[at:to], sep)
	if end < 0 {
		end, next = to, to+1
	} else {
		end, next = at+end, at+next
	}
	c.from, c.to = r.trimmed(at, end)
	return c, next
}

// quotedCell is cellAt for one in quotes, behind which nothing but the separator stands.
func (r *reader) quotedCell(at, to int, sep byte) (c cell, next int, ok bool) {
	for at < to && r.text[at] == ' ' {
		at++
	}
	if at == to || r.text[at] != '"' {
		return cell{}, 0, false
	}
	end := at + 1
	for ; end < to; end++ {
		if r.text[end] != '"' {
			continue
		}
		if end+1 == to || r.text[end+1] != '"' {
			break
		}
		end++
	}
	if end >= to {
		return cell{}, 0, false
	}
	next = end + 1
	for next < to && (r.text[next] == ' ' || r.text[next] == '\r') {
		next++
	}
	if next < to && r.text[next] != sep {
		return cell{}, 0, false
	}
	c.from, c.to = r.trimmed(at+1, end)
	c.quoted = true
	return c, next + 1, true
}

// mostQuoted is the number of bytes that a cell of several lines may have.
const mostQuoted = 1 << 12

// rowEnd is the end of a row of which the first line ends at the offset: a quoted cell
// may go on over several.
func (r *reader) rowEnd(from, to int) int {
	if strings.Count(r.text[from:to], `"`)%2 == 0 {
		return to
	}
	rest := r.text[to:min(to+mostQuoted, len(r.text))]
	closing := strings.IndexByte(rest, '"')
	if closing < 0 {
		return to
	}
	end := strings.IndexByte(rest[closing:], '\n')
	if end < 0 {
		end = len(rest) - closing
	}
	if far := to + closing + end; strings.Count(r.text[from:far], `"`)%2 == 0 {
		return far
	}
	return to
}

func (r *reader) trimmed(from, to int) (int, int) {
	for from < to && isSpace(r.text[from]) {
		from++
	}
	for from < to && isSpace(r.text[to-1]) {
		to--
	}
	return from, to
}

func isSpace(b byte) bool { return b == ' ' || b == '\t' || b == '\r' || b == '\n' }

// written is the text of a cell, as long as it stands in the note: a line that ends
// inside ends a sentence.
func (r *reader) written(c cell) string {
	text := r.text[c.from:c.to]
	if c.quoted && strings.ContainsAny(text, "\"\n") {
		b := []byte(text)
		for i := range b {
			switch {
			case b[i] == '"' && i+1 < len(b) && b[i+1] == '"':
				b[i] = ' '
			case b[i] == '\n':
				b[i] = '.'
			}
		}
		text = string(b)
	}
	return text
}

// blankCell reports whether nothing stands in a cell: no more than a dash.
func (r *reader) blankCell(c cell) bool {
	return strings.Trim(r.text[c.from:c.to], "-–—−:/. ") == ""
}

// lowerCell is what stands in a cell, in lower case.
func (r *reader) lowerCell(c cell) string { return r.strings.lower(r.written(c)) }

// unspaced reports whether the first separator of a line has no space behind it, as in a
// file of values and hardly in a sentence.
func unspaced(text string, sep byte) bool {
	k := strings.IndexByte(text, sep)
	return k > 0 && k+1 < len(text) && text[k+1] != ' '
}
