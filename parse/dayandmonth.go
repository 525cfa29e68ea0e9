package parse

import (
	"strconv"
	"strings"
)

// dayAndMonth reads "23/5" behind "on", "by" or a deed that has no shares ("treated
// 2/5"), in the heading of a note, or where it can be no share; elsewhere it is a
// fraction.
func (l *lexer) dayAndMonth(i int) (day, int) {
	t := l.toks[i]
	if t.id != idFraction || l.numbers.is(l.toks, i+1, ofWord) {
		return day{}, i
	}
	told := i > 0 && t.pause == none && (l.dates.is(l.toks, i-1, onWord) || l.dates.deadlines.has(l.toks[i-1].id) || l.datedDeeds.has(l.toks[i-1].id) && !joined(l.toks, i+1))
	if !told && !l.noShare(i) && !l.datesVisit(i) {
		return day{}, i
	}
	said := l.text[t.start:t.end]
	if first, second, _ := strings.Cut(said, "/"); l.ref.manner.monthFirst {
		said = second + "/" + first // one that is no date so is turned back
	}
	return slashed(said, l.ref.today, i)
}

// tellsMonthFirst reports whether a date of the note can only be a month and a day: "5/16".
func (r *reader) tellsMonthFirst(toks []token) bool {
	if !r.onFront(idFraction) {
		return false
	}
	found := false
	for i := range toks {
		if toks[i].id != idFraction {
			continue
		}
		first, second, _ := strings.Cut(r.text[toks[i].start:toks[i].end], "/")
		a, _ := strconv.Atoi(first)
		b, _ := strconv.Atoi(second)
		if a > 12 && a <= 31 && b >= 1 && b <= 12 {
			return false
		}
		found = found || a >= 1 && a <= 12 && b > 12 && b <= 31
	}
	return found
}

// noShare reports whether the fraction at token i can only be a day and a month:
// it is more than a whole, or nobody halves a comb into so many parts: "treated
// 7/20".
func (l *lexer) noShare(i int) bool {
	above, below, _ := strings.Cut(l.text[l.toks[i].start:l.toks[i].end], "/")
	if len(above) > 2 || len(below) > 2 || i > 0 && l.toks[i].pause == none && l.numbers.barWords.has(l.toks[i-1].id) {
		return false
	}
	if i+1 < len(l.toks) && l.toks[i+1].has(glued) && l.toks[i+1].pause == none {
		return false
	}
	a, _ := strconv.Atoi(above)
	b, _ := strconv.Atoi(below)
	more, less := max(a, b), min(a, b)
	return less >= 1 && less <= 12 && more <= 31 && (more > 12 || a > b)
}

// datesVisit reports whether the fraction at token i stands in the heading of the
// note, beside nothing but the hive: "Hive 4 - 3/5".
func (l *lexer) datesVisit(i int) bool {
	if !l.ref.opening || i > 3 || i+1 < len(l.toks) && l.toks[i+1].pause < colon && !l.hiveWords.has(l.toks[i+1].id) {
		return false
	}
	hive := i+1 < len(l.toks) && l.hiveWords.has(l.toks[i+1].id)
	for _, t := range l.toks[:i] {
		hive = hive || l.hiveWords.has(t.id)
		if !l.hiveWords.has(t.id) && t.id != idNumber && t.id != idDash && l.dates.of(t.id).kind != weekdayWord {
			return false
		}
	}
	return hive
}
