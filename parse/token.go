package parse

import (
	"math/bits"
	"slices"
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

func (t *token) has(f mark) bool { return t.flags&f != 0 }

// splitter cuts a line into tokens.
type splitter struct {
	slips    *slips
	words    *vocabulary
	hives    wordSet // words that the name of a hive follows
	numbered wordSet // and those that a number follows
	numbers  *numbers
	strokes  strokes
	text     string
	at       int // next byte
	base     int // offset of text in the note
	out      []token
	links    wordSet // words that join a sentence to the one before it
	behindSo wordSet // words with which one of those, "so", is another word
	soID     wordID

	beforeWhich []string // words behind "b4" where it is "before"

	head   int // index in out of the line's first token
	lower  []byte
	before pause
	flags  mark
	spaced bool
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
// 0 where it is a longer or another word. A letter in lower case is a byte that
// 0x80-'a' lifts to its high bit and 0x80-'z'-1 does not.
func shortWord(text string) (n int, key wordKey, f mark) {
	var bytes uint64
	if len(text) >= keyLength {
		bytes = bytesAt(text, 0)
	} else {
		bytes = fewBytes(text)
	}
	lower := bytes | 0x20*eachByte
	plain := lower &^ highBits
	letters := (plain + (0x80-'a')*eachByte) &^ (plain + (0x80-'z'-1)*eachByte) &^ bytes & highBits
	n = bits.TrailingZeros64(^letters&highBits) / 8
	if n == 8 || n < len(text) && (text[n] == '\'' || text[n] >= utf8.RuneSelf) {
		return 0, 0, 0
	}
	beyond := 64 - 8*n // bits that are not the word's
	if (bytes^lower)<<beyond != 0 {
		f = cased
	}
	return n, wordKey(bits.ReverseBytes64(lower) >> beyond), f
}

// fewBytes is bytesAt for a text of less than eight, which ends a line: zeros stand for the others.
func fewBytes(text string) (bytes uint64) {
	for i := range len(text) {
		bytes |= uint64(text[i]) << (8 * i)
	}
	return bytes
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
