package parse

import (
	"slices"
	"strings"
)

// A note may tell what its codes stand for: "(H honey, P pollen, E eggs)", "+ yes, - no, o
// didn't look". The codes are then read as the words, and the line that tells of them is no
// finding. Such marks are known where a note has several of both as well.

// legend is what codes stand for in a note.
type legend struct {
	codes  []code
	told   [][2]int // left to come: the lines that tell of them
	strips [][2]int // and those of bars with their codes
	usual  bool     // the letters are those of strips, which stand for nothing elsewhere
}

// code is a letter or two, or a sign, and what it stands for.
type code struct {
	short, long string
	mark        bool // it stands behind what it tells of: "eggs +"
	untold      bool // that this was not looked for
}

// fewestMarks is the number of marks by which a note without a legend shows that it has some.
const fewestMarks = 4

// mostOfMeaning is the number of words that a code stands for at most.
const mostOfMeaning = 4

// usualMarks are those that need no legend.
var usualMarks = []code{{short: "+", long: "yes", mark: true}, {short: "-", long: "no", mark: true}}

// legendOf is the legend of a note; nil where it has none, as most.
func (l *lexicon) legendOf(note string) *legend {
	var key legend
	if holdsOne(note, "=:([") {
		l.legendLines(note, &key)
	}
	if !key.has("+") && !key.has("-") && marked(note) {
		key.codes = append(key.codes, usualMarks...)
	}
	letters := key.letters()
	if key.usual = len(letters) == 0; key.usual {
		letters = l.strokes.codes
	}
	rows := codedRows(note, letters)
	eachLine(note, func(from, to int) {
		if _, coded := slices.BinarySearch(rows, int32(from)); coded || isStrip(note[from:to], letters) {
			key.strips = append(key.strips, [2]int{from, to})
		}
	})
	if key.usual && len(key.strips) > 0 {
		key.codes = append(key.codes, letters...)
	}
	if len(key.codes) == 0 {
		return nil
	}
	return &key
}

// legendLines keeps the codes that lines of a note tell of.
func (l *lexicon) legendLines(note string, key *legend) {
	eachLine(note, func(from, to int) {
		if line := note[from:to]; mayLegend(line) {
			if codes := l.legendIn(line); codes != nil {
				key.codes = append(key.codes, codes...)
				key.told = append(key.told, [2]int{from, to})
			}
		}
	})
}

// holdsOne reports whether a text has one of some signs. Each is sought by itself, which takes
// far less than to go through the text once.
func holdsOne(text, signs string) bool {
	for k := range len(signs) {
		if strings.IndexByte(text, signs[k]) >= 0 {
			return true
		}
	}
	return false
}

// eachLine calls a function with where each line of a note stands.
func eachLine(note string, do func(from, to int)) {
	for at := 0; at < len(note); {
		to := at + strings.IndexByte(note[at:], '\n')
		if to < at {
			to = len(note)
		}
		do(at, to)
		at = to + 1
	}
}

// marked reports whether a note without a legend marks what there is and what is not: "queen +,
// eggs +, cells -, drones -".
func marked(note string) bool {
	if strings.IndexByte(note, '+') < 0 {
		return false // as most
	}
	plus, minus := 0, 0
	for k := range len(note) {
		switch c := note[k]; {
		case c != '+' && c != '-' || !marksBehind(note, k, 1):
		case c == '+':
			plus++
		default:
			minus++
		}
	}
	return plus > 0 && minus > 0 && plus+minus >= fewestMarks
}

// letters are the codes that are no marks.
func (key *legend) letters() (of []code) {
	for _, c := range key.codes {
		if !c.mark {
			of = append(of, c)
		}
	}
	return of
}

// has reports whether a legend has a code.
func (key *legend) has(short string) bool {
	return slices.ContainsFunc(key.codes, func(c code) bool { return c.short == short })
}

// mayLegend reports whether a line may tell what codes stand for: it is set in brackets, begins
// with a label, or has signs of equality.
func mayLegend(line string) bool {
	if len(line) < len("E=x,P=y") {
		return false
	}
	equals := strings.IndexByte(line, '=')
	if line[0] != '(' && line[0] != '[' && equals <= 0 && strings.IndexByte(line, ':') <= 0 {
		return false // as most
	}
	return equals >= 0 || holdsOne(line, ",;/")
}

// legendIn are the codes that a line tells of, where it tells of nothing else.
func (l *lexicon) legendIn(line string) []code {
	line = strings.TrimSpace(line)
	inner := strings.TrimRight(strings.TrimLeft(line, "(["), ")].")
	framed, labelled := len(inner) < len(line) && (line[0] == '(' || line[0] == '['), false
	if label, rest, ok := strings.Cut(inner, ":"); ok {
		if !slices.Contains(l.wordsOf[legendLabels], strings.ToLower(strings.TrimSpace(label))) {
			return nil
		}
		inner, framed, labelled = rest, true, true
	}
	var codes []code
	for part := range strings.FieldsFuncSeq(inner, func(c rune) bool { return c == ',' || c == ';' || c == '/' || c == '|' }) {
		c, told := l.codeIn(strings.TrimSpace(part))
		if !told && !framed || !(told && labelled) && !c.fits() || c.short == "" {
			return nil // "Q = seen, T = calm" has values
		}
		codes = append(codes, c)
	}
	if len(codes) < 2 {
		return nil
	}
	return codes
}

// codeIn is the code that a part of a legend tells of, and whether a sign of equality says so.
func (l *lexicon) codeIn(part string) (c code, told bool) {
	short, long, told := strings.Cut(part, "=")
	if !told {
		short, long, _ = strings.Cut(part, " ")
	}
	short, long = strings.TrimSpace(short), strings.ToLower(strings.TrimSpace(long))
	c = code{short: short, long: long}
	c.mark = len(short) == 1 && strings.Contains("+-oxyn?*0", short)
	letters := strings.IndexFunc(short, func(r rune) bool { return r >= 0x80 || !isASCIILetter(byte(r)) }) < 0
	if short == "" || len(short) > 4 || !letters && !c.mark || long == "" || strings.ContainsAny(long, "0123456789:") || strings.Count(long, " ") >= mostOfMeaning {
		return code{}, false
	}
	if c.mark {
		switch {
		case slices.Contains(l.wordsOf[legendYes], long):
			c.long = "yes"
		case slices.Contains(l.wordsOf[legendNo], long):
			c.long = "no"
		default:
			c.untold = true
		}
	}
	return c, told
}

// fits reports whether a code can be known for one without a sign of equality: it is a mark, or
// its letter begins one of its words.
func (c *code) fits() bool {
	if c.short == "" || c.mark {
		return c.short != ""
	}
	if c.short != strings.ToUpper(c.short) {
		return false
	}
	for word := range strings.FieldsSeq(c.long) {
		if word[0] == c.short[0]|0x20 {
			return true
		}
	}
	return false
}

// marksBehind reports whether a mark of so many bytes at an offset of a line stands behind a word, and
// nothing but a bracket before the next pause: "eggs + (bar 3), cells -".
func marksBehind(line string, at, size int) bool {
	k := at
	if k > 0 && line[k-1] == ' ' {
		k--
	}
	if k == 0 || !isASCIILetter(line[k-1]) {
		return false
	}
	rest := line[at+size:]
	if k == at && strings.HasPrefix(rest, " ") {
		return len(rest) > 1 && isASCIILetter(rest[1]) // "eggs+ larvae+"
	}
	if strings.HasPrefix(rest, " \n") || rest == " " {
		return true
	}
	return rest == "" || strings.IndexByte(",;.\n\r|", rest[0]) >= 0 || strings.HasPrefix(rest, " (")
}

// at is how many bytes at an offset of a note are a code, and what is read for it; size 0 where none
// is there. Lines that tell of the codes are passed over.
func (key *legend) at(note string, at int) (size int, by string) {
	for len(key.told) > 0 && key.told[0][1] < at {
		key.told = key.told[1:]
	}
	for len(key.strips) > 0 && key.strips[0][1] <= at {
		key.strips = key.strips[1:]
	}
	if len(key.told) > 0 && key.told[0][0] == at {
		return key.told[0][1] - at, ""
	}
	strip := len(key.strips) > 0 && key.strips[0][0] <= at
	if run := lettersAt(note, at); strip && run > 1 && run <= mostJoined {
		if words := eachStands(note[at:at+run], key.codes); words != nil {
			return run, strings.Join(words, " and ") // "3 EL"
		}
	}
	for i := range key.codes {
		c := &key.codes[i]
		switch {
		case c.mark:
			size, by = c.markAt(note, at)
		case strings.HasPrefix(note[at:], c.short) && alone(note, at, len(c.short)) && (strip || !key.usual && !degrees(note, at, len(c.short))):
			size, by = len(c.short), c.long
		}
		if size > 0 {
			return size, by
		}
	}
	return 0, ""
}

// markAt is a mark behind a word at an offset of a note, with the space before it: " +" is ": yes".
func (c *code) markAt(note string, at int) (size int, by string) {
	from := at
	if note[from] == ' ' {
		from++
	}
	end := from + len(c.short)
	if at == 0 || !isASCIILetter(note[at-1]) || !strings.HasPrefix(note[from:], c.short) || from == at && isASCIILetter(c.short[0]) || !marksBehind(note, from, len(c.short)) {
		return 0, ""
	}
	by = ": " + c.long
	switch {
	case c.untold && end < len(note) && note[end] == ',':
		return end + 1 - at, by + ";" // nothing of what follows
	case from == at && end < len(note) && note[end] == ' ':
		by += ";"
	}
	return end - at, by
}

// alone reports whether so many bytes of a note at an offset are a word of their own.
func alone(note string, at, n int) bool {
	if at > 0 && (isASCIILetter(note[at-1]) || note[at-1] == '\'') {
		return false
	}
	return at+n == len(note) || !isASCIILetter(note[at+n]) && !isDigit(note[at+n]) && note[at+n] != '\'' && note[at+n] != '-'
}

// degrees reports whether a code at an offset of a note is the unit of the number before it: "12 C".
func degrees(note string, at, n int) bool {
	before := strings.TrimRight(note[:at], " ")
	return n == 1 && (note[at] == 'C' || note[at] == 'F') && before != "" && isDigit(before[len(before)-1])
}

// codedRows are the offsets of the lines that list bars by number where those have nothing but
// codes for what is on most of them.
func codedRows(note string, codes []code) []int32 {
	rows := numberedLines(note)
	coded := 0
	for _, at := range rows {
		line, _, _ := strings.Cut(note[at:], "\n")
		if isCoded(line, codes) {
			coded++
		}
	}
	if coded < shortestList || 2*coded <= len(rows) {
		return nil
	}
	return rows
}

// mostJoined is the number of codes that are written as one at most.
const mostJoined = 4

// lettersAt is how many letters stand at an offset of a note, with none before them.
func lettersAt(note string, at int) int {
	if at > 0 && isASCIILetter(note[at-1]) {
		return 0
	}
	end := at
	for end < len(note) && isASCIILetter(note[end]) {
		end++
	}
	return end - at
}

// eachStands are the words for letters each of which is a code, where they are none together: "EL";
// nil where one is not.
func eachStands(run string, codes []code) (words []string) {
	for i := range codes {
		if codes[i].short == run {
			return nil
		}
	}
	for i := range run {
		k := slices.IndexFunc(codes, func(c code) bool { return !c.mark && c.short == run[i:i+1] })
		if k < 0 {
			return nil
		}
		words = append(words, codes[k].long)
	}
	return words
}

// isCoded reports whether codes alone stand behind the number of a bar: "3 E L".
func isCoded(part string, codes []code) bool {
	fields := strings.FieldsFunc(strings.TrimLeft(part, "0123456789-: "), func(c rune) bool { return c == ' ' || c == ',' || c == '+' || c == '&' || c == '/' || c == '\r' })
	for _, f := range fields {
		if !slices.ContainsFunc(codes, func(c code) bool { return c.short == f }) && (len(f) > mostJoined || eachStands(f, codes) == nil) {
			return false
		}
	}
	return len(fields) > 0
}

// isStrip reports whether a line has nothing but bars by number, in order, with codes for what is
// on most of them: "1 H | 2 P | 3 E L | 4 C".
func isStrip(line string, codes []code) bool {
	if line == "" || isASCIILetter(line[0]) && line[0]|0x20 != 'b' {
		return false // as most
	}
	if strings.Count(line, "|") < shortestList-1 && strings.Count(line, ",") < shortestList-1 {
		return false
	}
	last, coded, parts := 0, 0, 0
	for part := range strings.FieldsFuncSeq(line, func(c rune) bool { return c == ',' || c == ';' || c == '|' }) {
		part = strings.TrimLeft(strings.TrimSpace(part), "Bb")
		_, lo, hi := leadingNumbers(part + " ")
		if lo == 0 || last > 0 && lo != last+1 && lo != last-1 {
			return false
		}
		last = hi
		parts++
		if isCoded(part, codes) {
			coded++
		}
	}
	return coded >= shortestList && 2*coded > parts
}
