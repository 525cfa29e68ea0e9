package parse

import (
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
	capital  mark = 1 << iota // begins with an upper-case letter
	asked                     // a question mark follows
	misheard                  // rewritten by a mishearing rule
	coloned                   // a colon follows
	digits                    // a number written in digits
	glued                     // no space before it
	bullet                    // first token after a list dash
	respelt                   // written out from shorthand or a slip of the finger
	openword                  // an opening quotation mark or bracket stands before it
)

// token is one word, number or symbol of a line. Offsets count bytes of the
// whole note.
type token struct {
	id         wordID
	start, end int32
	pause      pause
	flags      mark
}

func (t token) has(f mark) bool { return t.flags&f != 0 }

// splitter cuts a line into tokens.
type splitter struct {
	abbreviations map[string]bool // that end in a full stop which ends no sentence
	words         *vocabulary
	text          string
	at            int // next byte
	base          int // offset of text in the note
	out           []token
	lower         []byte
	before        pause
	flags         mark
	spaced        bool
}

// tokens appends the tokens of text to out[:0]; first is the pause before the
// first of them.
func (s *splitter) tokens(text string, base int, first pause) []token {
	s.text, s.base, s.at, s.out, s.before, s.flags, s.spaced = text, base, 0, s.out[:0], first, 0, true
	for s.at < len(s.text) {
		r, size := utf8.DecodeRuneInString(s.text[s.at:])
		switch {
		case r >= '0' && r <= '9':
			s.number()
		case isLetter(r):
			s.word()
		case r == ' ' || r == '\t' || r == '\r' || r == 0xA0 || r == 0xFEFF:
			s.spaced = true
			s.at += size
		default:
			s.symbol(r, size)
		}
	}
	return s.out
}

func isLetter(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= 0x80 && (unicode.IsLetter(r) || unicode.Is(unicode.Mn, r))
}

func (s *splitter) emit(id wordID, from, to int, f mark) {
	if !s.spaced {
		f |= glued
	}
	s.out = append(s.out, token{id: id, start: int32(s.base + from), end: int32(s.base + to), pause: s.before, flags: f | s.flags})
	s.before, s.flags, s.spaced = none, 0, false
}

// number takes 12, 2.5, 1,000, 1/4, 14:30, 2026-05-30 and 3rd as one token.
func (s *splitter) number() {
	from := s.at
	s.digits()
	id := idNumber
	switch {
	case s.isDate(from):
		id = idISODate
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
		id = idUnknown
	case s.peek(0) == ',' && isDigit(s.peek(1)) && isDigit(s.peek(2)) && isDigit(s.peek(3)) && !isDigit(s.peek(4)):
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
	s.emit(id, from, end, digits)
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
	from := s.at
	s.lower = s.lower[:0]
	for s.at < len(s.text) {
		c := s.text[s.at]
		if c < utf8.RuneSelf {
			if isASCIILetter(c) {
				if c < 'a' {
					c += 'a' - 'A'
				}
				s.lower = append(s.lower, c)
				s.at++
				continue
			}
			if c == '\'' && s.at > from && isASCIILetter(s.peek(1)) {
				s.lower = append(s.lower, c)
				s.at++
				continue
			}
			break
		}
		r, size := utf8.DecodeRuneInString(s.text[s.at:])
		if r == '’' && s.at > from && s.at+size < len(s.text) && isASCIILetter(s.text[s.at+size]) {
			s.lower = append(s.lower, '\'')
		} else if isLetter(r) {
			s.lower = utf8.AppendRune(s.lower, unicode.ToLower(r))
		} else {
			break
		}
		s.at += size
	}
	var f mark
	if first, _ := utf8.DecodeRuneInString(s.text[from:]); unicode.IsUpper(first) {
		f = capital
	}
	if parts := s.words.contraction(s.lower); parts != nil {
		cut := from + apostrophe(s.text[from:s.at], parts.cut)
		s.emit(parts.first, from, cut, f)
		s.emit(parts.second, cut, s.at, 0)
		return
	}
	s.emit(s.words.find(s.lower), from, s.at, f)
}

// symbol turns punctuation into the pause before the next token, and the few
// symbols that stand for words into tokens.
func (s *splitter) symbol(r rune, size int) {
	from := s.at
	s.at += size
	switch r {
	case ',', '(', '[':
		s.breakAt(comma)
		if r == '(' {
			s.flags |= openword
		}
	case ')', ']', '"', '“', '”', '*', '|':
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
		s.breakAt(stop)
	case '\n':
		if s.before == line {
			s.before = blank
		}
		s.breakAt(line)
	case '-', '–', '—', '‑':
		s.dash(from)
	case '½', '¼', '¾', '⅓', '⅔', '⅛':
		s.emit(idVulgar, from, s.at, digits)
	case '%', '°', '#', '+', '&', '=', '~', '/', '@', 'º', '>', '<', '✓', '✔', '☑', '✗', '✘', '☒':
		s.emit(s.words.find([]byte(string(r))), from, s.at, 0)
		return
	case '\'', '’':
		if len(s.out) > 0 && s.out[len(s.out)-1].has(digits) && !s.spaced && s.peek(0)|0x20 == 's' && !isASCIILetter(s.peek(1)) {
			s.at++
			s.emit(s.words.find([]byte("'s")), from, s.at, 0)
			return
		}
	case '•', '·':
		s.breakAt(stop)
		s.flags |= bullet
	}
	s.spaced = true
}

// dash is a range or hyphen when it stands close on both sides, else a pause;
// at the head of a line it is a list mark.
func (s *splitter) dash(from int) {
	tight := !s.spaced && s.at < len(s.text) && s.text[s.at] != ' ' && s.text[s.at] != '\n'
	afterDigit := len(s.out) > 0 && s.out[len(s.out)-1].has(digits)
	next := s.peek(0)
	spacedRange := afterDigit && s.spaced && next == ' ' && isDigit(s.peek(1)) && s.before == none
	switch {
	case tight && (afterDigit || isDigit(next)) || spacedRange:
		s.emit(idDash, from, s.at, 0)
	case tight && s.text[from] == '-':
		s.spaced = true // hyphenated words are two words
	case s.before >= line || len(s.out) == 0:
		s.flags |= bullet
	case isDigit(next) && !s.spaced:
		s.emit(idDash, from, s.at, 0)
	default:
		s.breakAt(comma)
	}
}

func (s *splitter) breakAt(p pause) { s.before = max(s.before, p) }

func (s *splitter) markLast(f mark) {
	if n := len(s.out); n > 0 && s.before == none {
		s.out[n-1].flags |= f
	}
}

// abbreviated reports whether the full stop just read belongs to the word
// before it.
func (s *splitter) abbreviated() bool {
	n := len(s.out)
	if n == 0 || s.before != none || s.spaced {
		return false
	}
	last := s.out[n-1]
	word := s.text[int(last.start)-s.base : int(last.end)-s.base]
	if s.at < len(s.text) && isASCIILetter(s.text[s.at]) && len(word) == 1 {
		return true // e.g., a.m.
	}
	s.lower = s.lower[:0]
	for i := range len(word) {
		s.lower = append(s.lower, word[i]|0x20)
	}
	if string(s.lower) == "no" { // "hive no. 4", but "No. Four stings."
		return isDigit(s.peek(0)) || s.peek(0) == ' ' && isDigit(s.peek(1))
	}
	return s.abbreviations[string(s.lower)]
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
