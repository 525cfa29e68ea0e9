package parse

import (
	"slices"
	"strconv"
	"strings"
)

// Numbers in digits as the splitter cuts them: a count, a share, a date, a time of day, how
// much in so many hours.

// digitWord takes a word whose first sound is written as a digit: "2day".
func (s *splitter) digitWord() bool {
	if s.text[s.at] == '4' && s.beforeThat() {
		return true
	}
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

// beforeThat takes the 4 of "b4" for the end of "before", where what it was before stands behind
// it: "b4 dinner", "b4 the rain", "b4 it got dark".
func (s *splitter) beforeThat() bool {
	n := len(s.out) - 1
	if n <= s.head || s.spaced || s.peek(1) != ' ' || int(s.out[n].end) != s.base+s.at || s.out[n].end-s.out[n].start != 1 || s.text[s.at-1]|0x20 != 'b' || s.out[n].pause > none {
		return false
	}
	behind := n - 1
	if s.out[behind].has(digits) && behind > s.head && !s.hives.has(s.out[behind-1].id) {
		return false // "b3 b4"
	}
	if slices.Contains(placesOfBars, s.words.words[s.out[behind].id]) {
		return false // "queen on b4 the rain came"
	}
	word, rest, _ := strings.Cut(strings.TrimLeft(s.text[s.at+1:], " "), " ")
	for rest != "" && slices.Contains(beforeWhat, word) {
		word, rest, _ = strings.Cut(rest, " ")
	}
	if !slices.Contains(s.beforeWhich, strings.ToLower(strings.TrimRight(word, ".,;:!?)\r\n"))) {
		return false
	}
	e := s.words.find("before")
	s.at++
	s.out[n].id, s.out[n].lists, s.out[n].end = e.id, e.lists, int32(s.base+s.at)
	s.out[n].flags |= respelt | cased | s.words.marks[e.id]
	return true
}

// beforeWhat are the words between "before" and what it was before, placesOfBars those that lead
// to a bar.
var (
	beforeWhat   = []string{"the", "my", "our", "it", "a", "got", "gets", "starts", "started", "we", "i", "go", "went", "going", "to"}
	placesOfBars = []string{"on", "in", "and", "to", "from", "after", "behind", "between", "of", "at", "bar", "or"}
)

// number takes 12, 2.5, 1,000, 1/4, 14:30, 2026-05-30 and 3rd as one token.
func (s *splitter) number() {
	from := s.at
	s.digits()
	if s.peek(0) == '/' && isDigit(s.peek(1)) && !s.afterBarWord() && s.perTime(from) {
		return
	}
	id := s.numberKind(from)
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

// afterBarWord reports whether the word before is one that numbers bars: "b9/10".
func (s *splitter) afterBarWord() bool {
	return len(s.out) > s.head && s.countsBars(&s.out[len(s.out)-1])
}

// numberKind passes over what belongs to the digits from an offset that were just read, and
// tells what they all are.
func (s *splitter) numberKind(from int) wordID {
	if s.isDate(from) {
		return idISODate
	}
	if !isDigit(s.peek(1)) {
		return idNumber
	}
	switch s.peek(0) {
	case '/':
		if !s.afterBarWord() {
			return s.fraction()
		}
	case ':':
		return s.clockOrRatio(from)
	case ',':
		if isDigit(s.peek(2)) && isDigit(s.peek(3)) && !isDigit(s.peek(4)) || s.decimalComma() {
			s.moreDigits() // "1,000", "2,5 kg"
		}
	case '.':
		s.moreDigits()
		if s.peek(0) == '.' && (isDigit(s.peek(1)) || s.at-from <= 5) {
			s.moreDigits()
			return idSlashDate // 30.5. or 30.5.26
		}
	}
	return idNumber
}

// moreDigits passes over a mark and the digits behind it.
func (s *splitter) moreDigits() {
	s.at++
	s.digits()
}

// fraction: "3/4", or a date, "30/5/26".
func (s *splitter) fraction() wordID {
	s.moreDigits()
	if s.peek(0) != '/' || !isDigit(s.peek(1)) {
		return idFraction
	}
	s.moreDigits()
	return idSlashDate
}

// clockOrRatio: "14:30", or a strength, "2:1".
func (s *splitter) clockOrRatio(from int) wordID {
	switch many := isDigit(s.peek(2)); {
	case many && s.at-from <= 2:
		s.moreDigits()
		return idClock
	case !many && s.at-from == 1:
		s.moreDigits()
		return s.words.find(s.text[from:s.at]).id
	}
	return idNumber
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

// behindTimes are words that no number counts, behind how many times something happened: "stung
// 2x on the wrist", "fed 2x already".
var behindTimes = []string{"on", "in", "through", "today", "again", "already", "so", "and", "but", "this", "since", "by", "then", "at", "before", "while", "when", "tho", "though"}

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
	word := strings.ToLower(s.text[s.at+at : s.at+n])
	if slices.Contains(behindTimes, word) {
		return
	}
	if e := s.words.find(word); n > at && e.id != idUnknown && s.numbers != nil && s.numbers.of(e.id).kind == notNumber {
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
