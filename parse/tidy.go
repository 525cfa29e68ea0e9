package parse

import (
	"slices"
	"strings"
	"unicode/utf8"

	"barwise/colony"
)

// tidied is a note as the rules expect it: plain apostrophes, quotes and hyphens, lines
// that end alike, and one space between words, so that no rule needs to know of others.
type tidied struct {
	text   string
	whole  string  // the note as it is
	shifts []shift // where it differs from the note; none in most
	gaps   bool    // more than one space stands somewhere in the text
}

// shift says how far on in the note everything from a byte of the tidied text on stands.
type shift struct{ from, by int }

// tidy makes the text of a note tidy. Spaces stay where they part the cells of a table.
func (r *reader) tidy(note string) tidied {
	wired := telegram(note)
	key := r.legendOf(note)
	nested := r.nestedKeys(note)
	if plain(note) && !wired && key == nil && nested == nil {
		return tidied{text: note, whole: note}
	}
	t := tidier{note: note, wired: wired, key: key, nested: nested}
	if strings.Contains(note, "  ") {
		t.tables = r.tables(note)
	}
	for t.at < len(note) {
		t.next()
	}
	if t.shifts == nil {
		return tidied{text: note, whole: note, gaps: strings.Contains(note, "  ")}
	}
	text := string(append(t.out, note[t.kept:]...))
	return tidied{text, note, t.shifts, strings.Contains(text, "  ")}
}

// wiredStop ends a sentence of a telegram.
const wiredStop = " STOP"

// stopWord reports whether a text begins with that word, and not with a longer one.
func stopWord(text string) bool {
	return strings.HasPrefix(text, wiredStop) && (len(text) == len(wiredStop) || !isASCIILetter(text[len(wiredStop)]))
}

// telegram reports whether the sentences of a note end with that word instead of a sign.
func telegram(note string) bool {
	return shouted(note) && strings.Count(note, wiredStop) >= fewestStops
}

// fewestStops is the number of times that the word stands in a telegram at least.
const fewestStops = 2

// plain reports whether nothing in a text may be untidy, as in most.
func plain(text string) bool {
	if strings.IndexByte(text, '\r') >= 0 || strings.Contains(text, "  ") || strings.Contains(text, "**") {
		return false
	}
	at := 0
	for ; at+keyLength <= len(text); at += keyLength {
		if bytesAt(text, at)&highBits != 0 {
			return false
		}
	}
	for ; at < len(text); at++ {
		if text[at] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// tables are where the tables stand whose cells are parted by wide gaps, each up to the
// next empty line.
func (r *reader) tables(text string) (in [][2]int) {
	said := r.text
	defer func() { r.text, r.table = said, table{} }()
	r.text = text
	open := false
	for at := 0; at < len(text); {
		end := strings.IndexByte(text[at:], '\n')
		if end < 0 {
			end = len(text) - at
		}
		end += at
		switch {
		case open:
			in[len(in)-1][1] = end
			open = strings.TrimSpace(text[at:end]) != ""
		case hasSep(text[at:end], wide):
			_, known := r.firstCell(at, end, wide)
			if open = known && r.beginsTable(r.cellsOf(at, end, wide), wide, at, end); open {
				in = append(in, [2]int{at, end})
			}
		}
		at = end + 1
	}
	return in
}

// tidier goes through a note.
type tidier struct {
	note   string
	tables [][2]int // left to come: in them gaps mean something
	at     int
	wired  bool // it is a telegram
	key    *legend
	nested []respelling // left to come
	inner  bool         // the line has begun with a word
	kept   int          // up to here the note has been taken over
	out    []byte
	shifts []shift
}

// next passes over what stands at the next byte.
func (t *tidier) next() {
	if len(t.nested) > 0 && t.nested[0].at == t.at {
		as := t.nested[0]
		t.nested = t.nested[1:]
		t.spell(min(as.size, len(t.note)-t.at), as.by)
		t.inner = as.by != ""
		return
	}
	if t.key != nil {
		if size, by := t.key.at(t.note, t.at); size > 0 {
			t.spell(size, by)
			return
		}
	}
	switch c := t.note[t.at]; {
	case c == ' ' && t.wired && stopWord(t.note[t.at:]):
		t.replace(len(wiredStop), ".")
	case c == ' ':
		t.gap(1)
	case c == '\r' && strings.HasPrefix(t.note[t.at+1:], "\n"):
		t.replace(2, "\n")
		t.inner = false
	case c == '\r':
		t.replace(1, "\n")
		t.inner = false
	case c == '\n':
		t.at++
		t.inner = false
	case c == '*' && strings.HasPrefix(t.note[t.at:], "**") && t.embolds():
		t.replace(2, "")
	case c < utf8.RuneSelf:
		t.at++
		t.inner = true
	default:
		r, size := utf8.DecodeRuneInString(t.note[t.at:])
		switch to, ok := plainSign[r]; {
		case !ok:
			t.at += size
			t.inner = true
		case to == " ":
			t.gap(size)
		default:
			t.replace(size, to)
		}
	}
}

// embolds reports whether two stars at the next byte begin or end what is set in bold: they
// touch a word on one side alone, "**bar 4** eggs", "**Temper:** calm".
func (t *tidier) embolds() bool {
	touches := func(at int) bool {
		return at >= 0 && at < len(t.note) && t.note[at] > ' ' && t.note[at] != '*'
	}
	return touches(t.at-1) != touches(t.at+2) || touches(t.at-1) && !isASCIILetter(t.note[t.at+2])
}

// gap passes over the space of so many bytes at the next one, and over those behind it
// unless they indent the line.
func (t *tidier) gap(size int) {
	if size > 1 {
		t.replace(size, " ")
	} else {
		t.at++
	}
	if !t.inner || t.inTable() {
		return
	}
	from := t.at
	for t.at < len(t.note) {
		if t.note[t.at] == ' ' {
			t.at++
			continue
		}
		if r, size := utf8.DecodeRuneInString(t.note[t.at:]); plainSign[r] == " " {
			t.at += size
			continue
		}
		break
	}
	if size := t.at - from; size > 0 {
		t.at = from
		t.replace(size, "")
	}
}

// inTable reports whether the next byte stands in a table.
func (t *tidier) inTable() bool {
	for len(t.tables) > 0 && t.tables[0][1] <= t.at {
		t.tables = t.tables[1:]
	}
	return len(t.tables) > 0 && t.tables[0][0] <= t.at
}

// replace writes other bytes for the next ones.
func (t *tidier) replace(size int, by string) {
	t.out = append(append(t.out, t.note[t.kept:t.at]...), by...)
	t.at += size
	t.kept = t.at
	if n := len(t.shifts); size != len(by) {
		if n > 0 && t.shifts[n-1].from == len(t.out) {
			t.shifts = t.shifts[:n-1]
		}
		t.shifts = append(t.shifts, shift{len(t.out), t.at - len(t.out)})
	} else if t.shifts == nil {
		t.shifts = []shift{{}} // the note is another one all the same
	}
}

// spell writes words for the code of so many bytes that is next. Each of them stands where the code
// does.
func (t *tidier) spell(size int, words string) {
	code := t.at
	t.replace(size, words)
	t.inner = true
	if n := len(t.shifts); n > 0 && t.shifts[n-1].from == len(t.out) {
		t.shifts = t.shifts[:n-1]
	}
	from := len(t.out) - len(words)
	for i := range words {
		to := t.at // a word begins where the code does, and ends where it ends
		if isASCIILetter(words[i]) && (i == 0 || !isASCIILetter(words[i-1])) {
			to = code
		}
		t.shifts = append(t.shifts, shift{from + i, to - from - i})
	}
	t.shifts = append(t.shifts, shift{len(t.out), t.at - len(t.out)})
}

// plainSign are the signs for which the rules know a plain one.
var plainSign = map[rune]string{
	'’': "'", '‘': "'", 'ʼ': "'", '“': `"`, '”': `"`, '„': `"`, // typographic quotes
	'‐': "-", '‑': "-", // hyphens
	0xA0: " ", 0x2002: " ", 0x2003: " ", 0x2007: " ", 0x2009: " ", 0x200A: " ", 0x202F: " ", 0x3000: " ", // spaces
	0xAD: "", 0x200B: "", 0x200C: "", 0x200D: "", 0x2060: "", 0xFE0F: "", 0xFEFF: "", // unseen
}

// inNote is where a byte of the tidied text stands in the note.
func (t *tidied) inNote(at int) int {
	k, found := slices.BinarySearchFunc(t.shifts, at, func(s shift, at int) int { return s.from - at })
	if !found {
		k--
	}
	if k < 0 {
		return at
	}
	return at + t.shifts[k].by
}

// inText is where a byte of the note stands in the tidied text.
func (t *tidied) inText(at int) int {
	k, found := slices.BinarySearchFunc(t.shifts, at, func(s shift, at int) int { return s.from + s.by - at })
	if !found {
		k--
	}
	if k < 0 {
		return at
	}
	return at - t.shifts[k].by
}

// spans moves places in the tidied text to where they are in the note.
func (t *tidied) spans(of []colony.Span) []colony.Span {
	for i := range of {
		of[i] = colony.Span{t.inNote(of[i][0]), t.inNote(of[i][1])}
	}
	return of
}

// ground moves the evidence of an inspection.
func (t *tidied) ground(ins *colony.Inspection) {
	if t.shifts == nil {
		return
	}
	for _, g := range ins.Evidence {
		t.spans(g.Spans)
	}
}

// inNote is what the note has between two places of the tidied text.
func (r *reader) inNote(from, to int) string {
	if r.note.shifts == nil {
		return r.text[from:to]
	}
	return r.note.whole[r.note.inNote(from):r.note.inNote(to)]
}
