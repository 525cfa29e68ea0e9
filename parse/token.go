package parse

import (
	"math/bits"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// pause is what separates a token from the one before it.
type pause uint8

const (
	none  pause = iota
	comma       // comma, bracket, dash, or a short silence
	colon       // colon or semicolon
	stop        // full stop, question or exclamation mark
	line        // line break: a long silence in a dictated note
	blank       // empty line
)

type mark uint16

const (
	capital   mark = 1 << iota // begins with an upper-case letter
	asked                      // a question mark follows
	misheard                   // rewritten by a mishearing rule
	coloned                    // a colon follows
	digits                     // a number written in digits
	glued                      // no space before it
	bullet                     // first token after a list dash
	misspelt                   // a slip of the finger, mended
	respelt                    // written out from shorthand
	numeral                    // can begin a number, date or measure, or be one
	leading                    // can begin a date, with more behind it: the, in, next
	following                  // can stand behind the first word of a number, date or measure
	dating                     // can stand behind one that is leading
	cased                      // not written in small letters, or not in ASCII
	doubtful                   // may be another word, misheard
	loose                      // an adverb that may stand inside any way of saying
)

// wordMarks are the marks that tell of a word, wherever it stands.
const wordMarks = numeral | leading | following | dating | doubtful | loose

// token is one word, number or symbol of a line. Offsets count bytes of the
// whole note.
type token struct {
	lists      listSet // in which its spelling stands; none of a mended word
	id         wordID
	start, end int32
	pause      pause
	flags      mark
}

// listsOf are the lists in which some words stand, one by one.
func listsOf(toks []token) (in listSet) {
	for i := range toks {
		in |= toks[i].lists
	}
	return in
}

func (t *token) has(f mark) bool { return t.flags&f != 0 }

// splitter cuts a line into tokens.
type splitter struct {
	slips    *slips
	words    *vocabulary
	hives    wordSet // words that the name of a hive follows
	numbered wordSet // and those that a number follows
	numbers  *numbers
	text     string
	at       int // next byte
	base     int // offset of text in the note
	out      []token
	links    wordSet // words that join a sentence to the one before it
	behindSo wordSet // words with which one of those, "so", is another word
	soID     wordID
	head     int // index in out of the line's first token
	lower    []byte
	before   pause
	flags    mark
	spaced   bool
}

// tokens appends the tokens of a line to out; base is the offset of the line in
// the note, first the pause before the first token.
func (s *splitter) tokens(out []token, text string, base int, first pause) []token {
	out = slices.Grow(out, len(text)+1) // a line has no more tokens, even if all its words are cut in two
	s.text, s.base, s.at, s.out, s.head = text, base, 0, out, len(out)
	s.before, s.flags, s.spaced = first, 0, true
	for s.at < len(s.text) {
		if lowered[s.text[s.at]] != 0 {
			s.word()
			if s.peek(0) == ' ' { // as behind most words
				s.spaced = true
				s.at++
			}
			continue
		}
		r, size := utf8.DecodeRuneInString(s.text[s.at:])
		switch {
		case r == ' ':
			s.spaced = true
			s.at++
		case isDigit(s.text[s.at]) && s.digitWord():
		case isDigit(s.text[s.at]):
			s.number()
		case isLetter(r):
			s.word()
		case r == '\t' && len(s.out) > s.head:
			s.tab()
		case r == '\t' || r == '\r' || r == 0xA0 || r == 0xFEFF:
			s.spaced = true
			s.at += size
		default:
			s.symbol(r, size)
		}
	}
	return s.out
}

// tab parts the columns of a form: the first of a line a label from its value.
func (s *splitter) tab() {
	if strings.IndexByte(strings.TrimLeft(s.text[:s.at], " \t"), '\t') < 0 {
		s.markLast(coloned)
		s.breakAt(colon)
	} else {
		s.breakAt(comma)
	}
	s.spaced = true
	s.at++
}

func isLetter(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= 0x80 && (unicode.IsLetter(r) || unicode.Is(unicode.Mn, r))
}

func (s *splitter) emit(id wordID, lists listSet, from, to int, f mark) {
	s.put(id, lists, from, to, f|s.words.marks[id])
}

// put is emit for a word whose own marks are among the given ones.
func (s *splitter) put(id wordID, lists listSet, from, to int, f mark) {
	if !s.spaced {
		f |= glued
	}
	n := len(s.out)
	if s.before == none && n > s.head && s.out[n-1].pause == stop && s.links.has(s.out[n-1].id) && s.linksTo(id) {
		n-- // "And the queen is on bar four."
		s.before, s.flags = s.out[n].pause, s.out[n].flags&bullet
	}
	s.out = s.out[:n+1]
	t := &s.out[n] // filled in where it stands: this is done for every word
	t.id, t.lists, t.start, t.end = id, lists, int32(s.base+from), int32(s.base+to)
	t.pause, t.flags = s.before, f|s.flags
	s.before, s.flags, s.spaced = none, 0, false
}

// linksTo reports whether the word behind one that joins sentences begins the second of
// them: "so" may belong to it instead, "So is bar six", "So far", but not in a question.
func (s *splitter) linksTo(id wordID) bool {
	if s.out[len(s.out)-1].id != s.soID || !s.behindSo.has(id) {
		return true
	}
	end := strings.IndexAny(s.text[s.at:], ".!?")
	return end >= 0 && s.text[s.at+end] == '?'
}

// digitWord takes a word whose first sound is written as a digit: "2day".
func (s *splitter) digitWord() bool {
	n := 1
	for isASCIILetter(s.peek(n)) {
		n++
	}
	if n < 4 {
		return false
	}
	e := s.words.find(strings.ToLower(s.text[s.at : s.at+n]))
	if e.id == idUnknown || s.words.marks[e.id]&doubtful == 0 {
		return false
	}
	s.at += n
	s.emit(e.id, e.lists, s.at-n, s.at, cased)
	return true
}

// number takes 12, 2.5, 1,000, 1/4, 14:30, 2026-05-30 and 3rd as one token.
func (s *splitter) number() {
	from := s.at
	s.digits()
	id := idNumber
	switch {
	case s.isDate(from):
		id = idISODate
	case s.peek(0) == '/' && isDigit(s.peek(1)) && len(s.out) > s.head && s.countsBars(&s.out[len(s.out)-1]):
	case s.peek(0) == '/' && isDigit(s.peek(1)) && s.perTime(from):
		return
	case s.peek(0) == '/' && isDigit(s.peek(1)):
		s.at++
		s.digits()
		id = idFraction
		if s.peek(0) == '/' && isDigit(s.peek(1)) {
			s.at++
			s.digits()
			id = idSlashDate
		}
	case s.peek(0) == ':' && isDigit(s.peek(1)) && isDigit(s.peek(2)) && s.at-from <= 2:
		s.at++
		s.digits()
		id = idClock
	case s.peek(0) == ':' && isDigit(s.peek(1)) && !isDigit(s.peek(2)) && s.at-from == 1:
		s.at++ // 2:1, a strength
		s.digits()
		id = s.words.find(s.text[from:s.at]).id
	case s.peek(0) == ',' && isDigit(s.peek(1)) && isDigit(s.peek(2)) && isDigit(s.peek(3)) && !isDigit(s.peek(4)):
		s.at++
		s.digits()
	case s.peek(0) == ',' && isDigit(s.peek(1)) && s.decimalComma():
		s.at++
		s.digits()
	case s.peek(0) == '.' && isDigit(s.peek(1)):
		s.at++
		s.digits()
		if s.peek(0) == '.' && (isDigit(s.peek(1)) || s.at-from <= 5) {
			id = idSlashDate // 30.5. or 30.5.26
			s.at++
			s.digits()
		}
	}
	end := s.at
	if id == idNumber {
		if n := s.ordinalSuffix(); n > 0 {
			s.at += n
			id, end = idOrdinal, s.at
		}
	}
	if id == idNumber && end == from+1 {
		if word := s.countWord(s.text[from]); word != idUnknown {
			s.emit(word, 0, from, end, respelt|cased)
			return
		}
	}
	s.emit(id, 0, from, end, digits|cased)
	if id == idNumber {
		s.passTimes()
	}
}

// perTime reads the number from an offset and the time behind a stroke, if such a one follows:
// "11/24h", "9/48 hrs", "21/3d". It is a whole number of days, not the "3/4 h" of what is on a
// comb.
func (s *splitter) perTime(from int) bool {
	n := 1
	for isDigit(s.peek(n)) {
		n++
	}
	over, end := s.at, s.at+n
	count, _ := strconv.Atoi(s.text[from:over])
	time, err := strconv.Atoi(s.text[over+1 : end])
	if s.peek(n) == ' ' {
		n++
	}
	unit := s.at + n
	for isASCIILetter(s.peek(n)) {
		n++
	}
	word := strings.ToLower(s.text[unit : s.at+n])
	switch word {
	case "h", "hr", "hrs", "hour", "hours":
		if err != nil || time == 0 || time%24 > 0 {
			return false
		}
		word = "hours"
	case "d", "day", "days":
		if err != nil || count <= time {
			return false
		}
		word = "days"
	default:
		return false
	}
	s.emit(idNumber, 0, from, over, digits|cased)
	s.sign('/', over)
	s.spaced = true
	s.emit(idNumber, 0, over+1, end, digits|cased)
	s.at += n
	e := s.words.find(word)
	s.emit(e.id, 0, unit, s.at, respelt|cased)
	return true
}

// passTimes passes over the sign of multiplication between a number and what it counts:
// "2 x sealed cells", "3xQC", but not in "22 x 18 cm".
func (s *splitter) passTimes() {
	at := 0
	if s.peek(0) == ' ' {
		at = 1
	}
	switch {
	case s.peek(at)|0x20 == 'x':
		at++
	case strings.HasPrefix(s.text[s.at+at:], "×"):
		at += len("×")
	default:
		return
	}
	if s.peek(at) == ' ' {
		at++
	}
	n := at
	for isASCIILetter(s.peek(n)) {
		n++
	}
	if e := s.words.find(strings.ToLower(s.text[s.at+at : s.at+n])); n > at && e.id != idUnknown && s.numbers != nil && s.numbers.of(e.id).kind == notNumber {
		s.at += at
		s.spaced = true
	}
}

// countWord is the word for a digit that no bar or hive has for its number, as in "all 3" and
// "none of the 2", which the rules have in words; idUnknown elsewhere.
func (s *splitter) countWord(digit byte) wordID {
	n := len(s.out) - 1
	if n < s.head || !s.spaced || s.before != none || digit < '2' || digit > '6' {
		return idUnknown
	}
	switch s.words.words[s.out[n].id] {
	case "all":
	case "the":
		if n == s.head || s.out[n].pause != none || s.words.words[s.out[n-1].id] != "of" {
			return idUnknown
		}
	default:
		return idUnknown
	}
	return s.words.find(countWords[digit-'2']).id
}

var countWords = [...]string{"two", "three", "four", "five", "six"}

// decimalComma reports whether the comma in "1,5 litres" stands for a point: one or
// two digits and then a unit follow it, so that "bars 1,5 and 7" stays a list.
func (s *splitter) decimalComma() bool {
	rest := s.text[s.at+1:]
	n := 0
	for n < len(rest) && isDigit(rest[n]) {
		n++
	}
	rest = strings.TrimPrefix(rest[n:], " ")
	end := 0
	for end < len(rest) && isASCIILetter(rest[end]) {
		end++
	}
	return n <= 2 && unitNames[strings.ToLower(rest[:end])] != "" && !strings.EqualFold(rest[:end], "in")
}

func (s *splitter) digits() {
	for isDigit(s.peek(0)) {
		s.at++
	}
}

func (s *splitter) peek(n int) byte {
	if s.at+n < len(s.text) {
		return s.text[s.at+n]
	}
	return 0
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// isDate takes the rest of yyyy-mm-dd.
func (s *splitter) isDate(from int) bool {
	if s.at-from != 4 || from+10 > len(s.text) {
		return false
	}
	d := s.text[from : from+10]
	if d[4] != '-' || d[7] != '-' || !isDigit(d[5]) || !isDigit(d[6]) || !isDigit(d[8]) || !isDigit(d[9]) {
		return false
	}
	s.at = from + 10
	return true
}

func (s *splitter) ordinalSuffix() int {
	if s.at+2 > len(s.text) || s.at+2 < len(s.text) && isASCIILetter(s.text[s.at+2]) {
		return 0
	}
	switch s.text[s.at : s.at+2] {
	case "st", "nd", "rd", "th", "ST", "ND", "RD", "TH":
		return 2
	}
	return 0
}

func isASCIILetter(b byte) bool { return b|0x20 >= 'a' && b|0x20 <= 'z' }

// word takes letters with inner apostrophes; contractions are cut in two so
// that "didn't" is did and not, and "queen's" is queen and is.
func (s *splitter) word() {
	if n, key, f := shortWord(s.text[s.at:]); n > 0 { // as most words are
		if e := s.words.findShort(key); e.id != idUnknown && e.cut == nil {
			from := s.at
			s.at += n
			if s.text[from] < 'a' {
				f |= capital
			}
			s.put(e.id, e.lists, from, s.at, f|e.marks)
			return
		}
	}
	s.anyWord()
}

// anyWord is word for one of any length and script, known or not.
func (s *splitter) anyWord() {
	from := s.at
	f, key := s.passWord()
	lower := s.text[from:s.at]
	if f != 0 {
		lower, f = string(s.lower), f|s.capitalAt(from)
	}
	e := s.words.findKey(lower, key)
	if e.cut != nil || possessive(lower) {
		s.halves(from, lower, s.words.halves(lower, e), f)
		return
	}
	id := e.id
	if id == idUnknown && e.lists&^(1<<phrases) == 0 && f&capital == 0 {
		if id = s.slips.find(lower); id != idUnknown {
			f |= misspelt
		}
	}
	s.emit(id, e.lists, from, s.at, f)
}

// halves emits the two words of a contraction.
func (s *splitter) halves(from int, lower string, cut parts, f mark) {
	at := from + apostrophe(s.text[from:s.at], cut.cut)
	stem := apostrophe(lower, cut.cut)
	s.emit(cut.first, s.words.find(lower[:stem]).lists, from, at, f)
	var lists listSet
	if s.text[at] < utf8.RuneSelf { // the lists write a plain apostrophe
		lists = s.words.find(lower[stem:]).lists
	}
	s.emit(cut.second, lists, at, s.at, f&^capital)
}

// lowered are the letters of ASCII in lower case, 0 for every other byte.
var lowered = func() (to [256]byte) {
	for c := byte('a'); c <= 'z'; c++ {
		to[c], to[c-'a'+'A'] = c, c
	}
	return to
}()

// A byte each of eight.
const (
	eachByte = 0x0101010101010101
	highBits = 0x80 * eachByte
)

// shortWord reads a word of less than eight letters of ASCII, all of them at once:
// its length, its key and the mark of one that is not in lower case. The length is
// 0 where it is a longer or another word, or less than eight bytes are left. A
// letter in lower case is a byte that 0x80-'a' lifts to its high bit and 0x80-'z'-1
// does not.
func shortWord(text string) (n int, key wordKey, f mark) {
	if len(text) < 8 {
		return 0, 0, 0
	}
	bytes := bytesAt(text, 0)
	lower := bytes | 0x20*eachByte
	plain := lower &^ highBits
	letters := (plain + (0x80-'a')*eachByte) &^ (plain + (0x80-'z'-1)*eachByte) &^ bytes & highBits
	n = bits.TrailingZeros64(^letters&highBits) / 8
	if n == 8 || text[n] == '\'' || text[n] >= utf8.RuneSelf {
		return 0, 0, 0
	}
	beyond := 64 - 8*n // bits that are not the word's
	if (bytes^lower)<<beyond != 0 {
		f = cased
	}
	return n, wordKey(bits.ReverseBytes64(lower) >> beyond), f
}

// passWord passes over a word. It returns the key of the word in lower case, and
// the mark of a word that is not written so; that one it keeps in lower case.
func (s *splitter) passWord() (f mark, key wordKey) {
	text, at := s.text, s.at
	for at < len(text) {
		c := text[at]
		l := lowered[c]
		if l == 0 {
			if c != '\'' || at == s.at || at+1 == len(text) || !isASCIILetter(text[at+1]) {
				break
			}
			l = c
		}
		if l != c {
			f = cased
		}
		at++
	}
	if at < len(text) && text[at] >= utf8.RuneSelf {
		return s.passRunes()
	}
	word := text[s.at:at]
	s.at = at
	if f == 0 {
		return 0, keyOf(word)
	}
	s.lower = lowerCase(s.lower, word)
	return f, keyOf(string(s.lower))
}

// passRunes is passWord for a word with letters beyond ASCII.
func (s *splitter) passRunes() (f mark, key wordKey) {
	text, at, lower := s.text, s.at, s.lower[:0]
	for at < len(text) {
		r, size := utf8.DecodeRuneInString(text[at:])
		switch inner := at > s.at && at+size < len(text) && isASCIILetter(text[at+size]); {
		case (r == '’' || r == '\'') && inner:
			lower = append(lower, '\'')
		case isLetter(r):
			lower = utf8.AppendRune(lower, unicode.ToLower(r))
		default:
			s.at, s.lower = at, lower
			return cased, keyOf(string(lower))
		}
		at += size
	}
	s.at, s.lower = at, lower
	return cased, keyOf(string(lower))
}

func (s *splitter) capitalAt(at int) mark {
	c := rune(s.text[at])
	if c >= utf8.RuneSelf {
		c, _ = utf8.DecodeRuneInString(s.text[at:])
	}
	if unicode.IsUpper(c) {
		return capital
	}
	return 0
}

// apostrophe finds where a contraction is cut: cut letters from its end,
// counting a typographic apostrophe as one letter.
func apostrophe(word string, fromEnd int) int {
	at := len(word)
	for range fromEnd {
		_, size := utf8.DecodeLastRuneInString(word[:at])
		at -= size
	}
	return at
}
