package parse

import "strings"

// This file reads what stands between the words: which marks part phrases, which
// belong to a word, and which join two numbers.

// symbol turns punctuation into the pause before the next token, and the few
// symbols that stand for words into tokens.
func (s *splitter) symbol(r rune, size int) {
	from := s.at
	s.at += size
	if s.parts(r) || !s.stands(r, from) {
		s.spaced = true
	}
}

// parts takes a mark that does nothing but part what stands on its two sides, and reports
// whether it is one: "eggs; no larvae (yet)".
func (s *splitter) parts(r rune) bool {
	switch r {
	case ',', '(', '[', ')', ']', '"', '“', '”', '*', '|':
		s.breakAt(comma)
	case ';':
		s.breakAt(colon)
	case ':':
		s.markLast(coloned)
		s.breakAt(colon)
	case '.':
		if !s.abbreviated() {
			s.breakAt(stop)
		}
	case '!', '…':
		s.breakAt(stop)
	case '?':
		s.markLast(asked)
		s.asksInBrackets()
		s.breakAt(stop)
	case '\n':
		if s.before == line {
			s.before = blank
		}
		s.breakAt(line)
	case '•', '·':
		s.breakAt(stop)
		s.flags |= bullet
	default:
		return false
	}
	return true
}

// stands takes a mark from an offset that can stand for a word or join two, and reports
// whether what follows stands close behind that word: "E+L", "20°C", "b3&4".
func (s *splitter) stands(r rune, from int) bool {
	switch r {
	case '-', '–', '—', '‑', '=':
		return s.dashOrArrow(r, from)
	case '→', '⇒', '➔', '➜':
		s.arrow(from)
	case '½', '¼', '¾', '⅓', '⅔', '⅛':
		s.emit(idVulgar, 0, from, s.at, digits|cased)
	case '+':
		return s.plus(from)
	case '×':
		return s.emitWord("x", from, cased)
	case '/':
		return s.slash(from)
	case '#':
		return s.numberSign(r, from)
	case '&':
		if s.spaced && s.peek(0) == ' ' {
			return s.emitWord("and", from, respelt|cased)
		}
		return s.sign(r, from)
	case '%', '°', '~', '@', 'º', '>', '<', '✓', '✔', '☑', '✗', '✘', '☒':
		return s.sign(r, from)
	case '\'', '’':
		return s.owns(from)
	}
	return false
}

// emitWord emits the word that a mark stands for, close behind which the next one stands:
// it is always true, for stands.
func (s *splitter) emitWord(word string, from int, f mark) bool {
	e := s.words.find(word)
	s.emit(e.id, e.lists, from, s.at, f)
	return true
}

// sign emits a symbol that stands for a word.
func (s *splitter) sign(r rune, from int) bool { return s.emitWord(string(r), from, cased) }

// dashOrArrow reads an arrow, "b4 -> H2", an equals sign, "b4 = eggs", or a dash.
func (s *splitter) dashOrArrow(r rune, from int) bool {
	switch {
	case s.pointed():
		s.arrow(from)
	case r == '=':
		return s.sign(r, from)
	default:
		s.dash(from)
	}
	return false
}

// plus reads all of "pollen +++", and the tick of "Q+".
func (s *splitter) plus(from int) bool {
	for s.peek(0) == '+' {
		s.at++
	}
	return s.emitWord(s.plusOrTick(from), from, cased)
}

// slash joins bars, "b9/b10", or contents, "E/L", parts what is said, "seen/not clipped",
// or is a sign of its own, "21 mites / 3 d".
func (s *splitter) slash(from int) bool {
	switch {
	case s.joinsBars():
		return s.sign('&', from)
	case s.joinContents(from):
		return true
	case s.partsWords(from), s.partsBar(), s.partsSpaced():
		s.breakAt(comma)
		return false
	}
	return s.numberSign('/', from)
}

// partsSpaced reports whether the slash just read stands between spaces and parts what is
// said: "eggs / larvae", but not "drop 21 / 3" or "21 mites / 3 d".
func (s *splitter) partsSpaced() bool {
	return s.spaced && s.peek(0) == ' ' && !(isDigit(s.peek(1)) && (s.afterDigits() || s.daysAhead()))
}

// numberSign passes over the sign between a word and its number, "bar #4", and else emits it.
func (s *splitter) numberSign(r rune, from int) bool {
	if s.before == none && len(s.out) > s.head && s.numbered.has(s.out[len(s.out)-1].id) && s.digitNext() {
		return false
	}
	return s.sign(r, from)
}

// owns reads the ending of what a number owns: "4's queen".
func (s *splitter) owns(from int) bool {
	if !s.afterDigits() || s.spaced || s.peek(0)|0x20 != 's' || isASCIILetter(s.peek(1)) {
		return false
	}
	s.at++
	s.emit(s.words.ownID, 0, from, s.at, cased)
	return true
}

// pointed passes over the rest of an arrow, "->", "-->" or "=>"; false where there is
// none.
func (s *splitter) pointed() bool {
	n := 0
	for s.peek(n) == '-' || s.peek(n) == '=' {
		n++
	}
	if s.peek(n) != '>' {
		return false
	}
	s.at += n + 1
	return true
}

// arrow reads the arrow from an offset to the next byte: the way to a hive or a bar,
// "b4 -> H2"; at the head of a line a list mark; else what parts a thing from what is
// told of it, "b9 -> empty comb", or a deed from what led to it.
func (s *splitter) arrow(from int) {
	switch {
	case s.before >= line || len(s.out) == s.head:
		s.flags |= bullet
	case s.before == none && s.placeNext():
		s.spaced = true
		s.emitWord("to", from, cased)
	default:
		s.breakAt(comma)
		if s.out[len(s.out)-1].pause == comma { // the end of a list is no label: "b3, capped -> patchy"
			s.sign('>', from)
		}
	}
}

// placeNext reports whether an arrow leads from bars to a hive, which is told by its
// number or the word alone, or to another bar.
func (s *splitter) placeNext() bool {
	rest := strings.TrimLeft(s.text[s.at:], " ")
	n := 0
	for n < len(rest) && isASCIILetter(rest[n]) {
		n++
	}
	word := strings.ToLower(rest[:n])
	rest = strings.TrimPrefix(rest[n:], " ")
	numbered := rest != "" && isDigit(rest[0])
	switch word {
	case "":
		return numbered && s.afterDigits() && !s.afterHive() && s.moved() // "moved b12 -> 7"
	case "b", "bar":
		return numbered && s.afterDigits() && !s.afterHive()
	case "h", "hive", "hv", "nuc":
		return (numbered || word == "nuc") && (s.afterDigits() && !s.afterHive() || s.numbered.has(s.out[len(s.out)-1].id))
	}
	return false
}

// moved reports whether a verb of moving stands before the bar just read.
func (s *splitter) moved() bool {
	for k := len(s.out) - 1; k >= s.head && k >= len(s.out)-4; k-- {
		switch strings.ToLower(s.wordAt(k)) {
		case "moved", "move", "mvd", "shifted", "moving", "swapped":
			return true
		}
	}
	return false
}

// partsWords reports whether the slash at an offset parts two things said:
// "seen/not clipped", "b4/yellow dot"; "w/out", "E/L" and "b/s" are short for one.
func (s *splitter) partsWords(at int) bool {
	word := 0
	for isASCIILetter(s.peek(word)) {
		word++
	}
	before := 0
	for before < at && before < 2 && (isASCIILetter(s.text[at-before-1]) || isDigit(s.text[at-before-1])) {
		before++
	}
	none := word == 2 && strings.EqualFold(s.text[s.at:s.at+2], "no") && s.peek(2) == ' '
	day := word == 3 && strings.EqualFold(s.text[s.at:s.at+3], "day") // "drop/day 4"
	return (word > 2 || none) && !day && before == 2 && isASCIILetter(s.text[at-2])
}

// partsBar reports whether the slash just read ends what is said of a bar before it:
// "queen b6/ yellow dot".
func (s *splitter) partsBar() bool {
	return !s.spaced && s.afterDigits() && s.peek(0) == ' ' && isASCIILetter(s.peek(1)) && !s.daysAhead()
}

// joinsBars reports whether the stroke just read stands between two bars: "b9/b10", "bars
// 9/10".
func (s *splitter) joinsBars() bool {
	n := len(s.out)
	if s.spaced || n < s.head+2 || s.out[n-1].id != idNumber || !s.countsBars(&s.out[n-2]) {
		return false
	}
	return isDigit(s.peek(0)) || s.peek(0)|0x20 == 'b' && isDigit(s.peek(1))
}

// countsBars reports whether a number behind a word is that of a bar even where a stroke
// follows: "b9/10", not "bar 3/4 full". A stroke that joined two bars goes on: "9/10/11".
func (s *splitter) countsBars(word *token) bool {
	switch strings.ToLower(s.text[word.start-int32(s.base) : word.end-int32(s.base)]) {
	case "b", "bars", "combs", "/":
		return true
	}
	return false
}

// daysAhead reports whether a figure and a letter for days follow: "21 mites / 3 d".
func (s *splitter) daysAhead() bool {
	rest := strings.TrimLeft(s.text[s.at:], " 0123456789")
	return rest != "" && rest[0]|0x20 == 'd' && (len(rest) == 1 || !isASCIILetter(rest[1]))
}

// dash is a range or hyphen when it stands close on both sides, else a pause;
// at the head of a line it is a list mark.
func (s *splitter) dash(from int) {
	tight := !s.spaced && s.at < len(s.text) && s.text[s.at] != ' ' && s.text[s.at] != '\n'
	afterDigit := s.afterDigits()
	next := s.peek(0)
	spacedRange := afterDigit && s.spaced && next == ' ' && isDigit(s.peek(1)) && s.before == none && !s.afterHive() && s.rangesTo(1)
	switch {
	case s.text[from] == '-' && s.answers(from):
		s.emitWord("✗", from, cased)
	case tight && (afterDigit || isDigit(next)) || spacedRange:
		s.emit(idDash, 0, from, s.at, cased)
	case tight && s.text[from] == '-':
		s.spaced = true // hyphenated words are two words
	case s.before >= line || len(s.out) == s.head:
		s.flags |= bullet
	case isDigit(next) && !s.spaced:
		s.emit(idDash, 0, from, s.at, cased)
	default:
		s.breakAt(comma)
	}
}

// answers reports whether the sign that ends at the next byte stands close behind
// one or two letters and ends a phrase: "Q+", "E-".
func (s *splitter) answers(from int) bool {
	if s.spaced || len(s.out) == s.head {
		return false
	}
	prev := &s.out[len(s.out)-1]
	size := int(prev.end - prev.start)
	if next := s.peek(0); size > 2 || prev.has(digits) || int(prev.end) != s.base+from {
		return false
	} else if next == ' ' {
		return prev.has(capital) && s.at+1 < len(s.text) && isASCIILetter(s.text[s.at+1])
	} else {
		return next == 0 || next == ',' || next == '.' || next == ';' || next == ')'
	}
}

// plusOrTick is the plus sign at an offset, of several two, or the tick that it stands
// for: "Q+, E+".
func (s *splitter) plusOrTick(from int) string {
	if s.at > from+1 {
		return "++"
	}
	if s.answers(from) {
		return "✓"
	}
	return "+"
}

// afterHive reports whether the token before is the name of a hive: "Hive 5 - 31 kg".
func (s *splitter) afterHive() bool {
	n := len(s.out) - 2
	return n >= s.head && s.hives.has(s.out[n].id)
}

// rangesTo reports whether the number before and a whole one n bytes ahead are the
// ends of a range: "b3 - 5", "bars 10 - 6", but not in "b6 - 1 cup", "b8 - 3/4
// drawn", "b9 - 2.5 kg".
func (s *splitter) rangesTo(n int) bool {
	from := s.at + n
	for isDigit(s.peek(n)) {
		n++
	}
	if (s.peek(n) == '.' || s.peek(n) == '/') && isDigit(s.peek(n+1)) {
		return false
	}
	last := len(s.out) - 1
	before, after := s.wordAt(last), s.text[from:s.at+n]
	rises := len(after) > len(before) || len(after) == len(before) && after > before
	return rises || last > s.head && strings.HasSuffix(s.wordAt(last-1), "s")
}

// wordAt is how token i of the line is written.
func (s *splitter) wordAt(i int) string {
	return s.text[int(s.out[i].start)-s.base : int(s.out[i].end)-s.base]
}

// afterDigits reports whether the token before was written in digits.
func (s *splitter) afterDigits() bool { return len(s.out) > s.head && s.out[len(s.out)-1].has(digits) }

func (s *splitter) breakAt(p pause) { s.before = max(s.before, p) }

func (s *splitter) markLast(f mark) {
	if n := len(s.out); n > s.head && s.before == none {
		s.out[n-1].flags |= f
	}
}

// asksInBrackets parts a question in brackets, which ends at the sign just read, from what it
// stands behind: "eggs in the middle (tiny commas??)" asks nothing of the eggs.
func (s *splitter) asksInBrackets() {
	if s.peek(0) != ')' {
		return
	}
	open := strings.LastIndexByte(s.text[:s.at], '(')
	for k := len(s.out) - 1; open > 0 && k > s.head && int(s.out[k].start) >= s.base+open; k-- {
		if int(s.out[k-1].start) < s.base+open {
			s.out[k].pause = max(s.out[k].pause, stop)
			return
		}
	}
}

// abbreviated reports whether the full stop just read belongs to the word
// before it.
func (s *splitter) abbreviated() bool {
	n := len(s.out)
	if n == s.head || s.before != none || s.spaced {
		return false
	}
	last, word := s.out[n-1], s.wordAt(n-1)
	if s.at < len(s.text) && isASCIILetter(s.text[s.at]) && len(word) == 1 {
		return true // e.g., a.m.
	}
	var prev token // of the same line
	if n-1 > s.head {
		prev = s.out[n-2]
	}
	next := s.peek(0)
	switch {
	case len(word) == 2 && strings.EqualFold(word, "no") && last.pause == none && prev.end > 0 && s.numbered.has(prev.id) && (s.digitNext() || s.countNext()):
		s.out = s.out[:n-1] // "bar no. 4" is bar 4
		return true
	case len(word) == 2 && strings.EqualFold(word, "no"): // "hive no. 4", "No. four: calm", but "No. Four stings.", "robbing no. 4 wasps"
		return last.has(capital) && s.countNext() || s.digitNext() && (prev.end == 0 || last.pause > none || last.has(capital) || s.numbered.has(prev.id)) || next == ':'
	case word == "b", word == "B": // "b. 4", but "Hive B. 3 bars"
		return s.digitNext() && !s.afterHive()
	}
	initials := len(word) == 1 && prev.has(respelt) && prev.end-prev.start == 1 // "s. h. beetle"
	short := initials || last.lists&(1<<abbreviations|1<<shortForms) != 0
	if short && last.id >= firstWordID {
		s.out[n-1].flags |= respelt // "cap." is written so, not misheard
	}
	switch {
	case next == ',' || next == ';' || next == ':':
		return short || isASCIILetter(word[0]) // no sentence ends so
	case last.lists.has(abbreviations):
		return true
	case short:
		return !s.capitalNext() && !(s.digitNext() && prev.has(digits)) // "6 hon. 12 C"
	}
	return prev.has(digits) && unitNames[word] != "" && s.words.find(s.nextWord()).lists.has(measured)
}

// digitNext reports whether a digit follows, next to it or behind a space.
func (s *splitter) digitNext() bool {
	return isDigit(s.peek(0)) || s.peek(0) == ' ' && isDigit(s.peek(1))
}

// countNext reports whether a number follows that is a word in small letters.
func (s *splitter) countNext() bool {
	return s.numbers != nil && s.numbers.of(s.words.find(s.nextWord()).id).kind == unitWord
}

// nextWord is the word that follows, if it is written in small letters.
func (s *splitter) nextWord() string {
	rest := strings.TrimLeft(s.text[s.at:], " ")
	end := 0
	for end < len(rest) && rest[end] >= 'a' && rest[end] <= 'z' {
		end++
	}
	return rest[:end]
}

// capitalNext reports whether the next word begins with a capital, or the line ends.
func (s *splitter) capitalNext() bool {
	rest := strings.TrimLeft(s.text[s.at:], " ")
	return rest == "" || rest[0] >= 'A' && rest[0] <= 'Z'
}
