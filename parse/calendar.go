package parse

import (
	"barwise/colony"
	"strconv"
	"strings"
	"time"
)

// calendar reads a day of a month: May 30, 30th of May 2026, the 3rd,
// 2026-05-30, 30/5/2026. Day before month is the reading of slashes unless only
// the other exists; where both do, it is flagged. A number, if any, stands from
// token i to end.
func (d *dates) calendar(text string, toks []token, i, end int, ref colony.Date) (day, int) {
	switch toks[i].id {
	case idISODate:
		at, err := colony.ParseDate(text[toks[i].start:toks[i].end])
		if err != nil {
			return day{}, i
		}
		return both(at), i + 1
	case idSlashDate:
		return slashed(text[toks[i].start:toks[i].end], ref, i)
	}
	j := i
	if d.is(toks, j, theWord) && joined(toks, j+1) {
		j++
	}
	if d.is(toks, j, monthWord) && j == i && joined(toks, j+1) {
		if d.is(toks, j+1, theWord) && joined(toks, j+2) {
			j++
		}
		q, k := d.numbers.single(text, toks, j+1)
		if n := int(q.lo); k > j+1 && q.whole() && !q.article && n >= 1 && n <= 31 && (q.ordinal || k == j+2 || n > 20) {
			if !q.ordinal && joined(toks, k) && d.counted.has(toks[k].id) {
				return day{}, i // "since october eleven degrees"
			}
			return d.inYear(text, toks, n, d.of(toks[i].id).value, k, i, ref)
		}
		return day{}, i
	}
	if j == i && end == i {
		return day{}, i
	}
	q, k := d.numbers.single(text, toks, j)
	n := int(q.lo)
	if k == j || !q.whole() || q.share || q.article || n < 1 || n > 31 || !joined(toks, k) && !q.ordinal {
		return day{}, i
	}
	m := k
	if d.numbers.is(toks, m, ofWord) {
		m++
	}
	if d.follows(toks, m, monthWord) {
		return d.inYear(text, toks, n, d.of(toks[m].id).value, m+1, i, ref)
	}
	if d.follows(toks, m, thisWord) && d.is(toks, m+1, spanWord) && m > k {
		return ofMonth(n, ref), m + 2
	}
	return day{}, i
}

// dayOfMonth reads "the 3rd" where the context says that a date stands there;
// it gives the ordinal too, which may be another thing's.
func (d *dates) dayOfMonth(text string, toks []token, i int, ref colony.Date) (day, quantity, int) {
	if !d.is(toks, i, theWord) || !joined(toks, i+1) {
		return day{}, quantity{}, i
	}
	q, k := d.numbers.single(text, toks, i+1)
	if k == i+1 || !q.ordinal || q.lo < 1 || q.lo > 31 {
		return day{}, quantity{}, i
	}
	if d.numbers.is(toks, k, ofWord) && (d.is(toks, k+1, theWord) || d.is(toks, k+1, thisWord)) && d.is(toks, k+2, spanWord) && d.of(toks[k+2].id).value == -1 {
		k += 3 // "the 3rd of the month"
	}
	return ofMonth(int(q.lo), ref), q, k
}

// ofMonth is the nearest such day of a month behind (today included) and
// ahead.
func ofMonth(n int, ref colony.Date) day {
	return day{past: nearestOf(n, ref, -1), future: nearestOf(n, ref, 1)}
}

// nearestOf is the nearest existing nth day of a month on that side of ref.
func nearestOf(n int, ref colony.Date, sign int) colony.Date {
	for step := range 4 {
		first := colony.Date{Year: ref.Year, Month: ref.Month, Day: 1}.AddMonths(sign * step)
		at := colony.NewDate(first.Year, first.Month, n)
		if at.Month != first.Month {
			continue
		}
		if sign < 0 && at.Compare(ref) <= 0 || sign > 0 && at.Compare(ref) > 0 {
			return at
		}
	}
	return ref
}

// inYear completes a day and month with the year that follows, else with the
// nearest year on either side.
func (d *dates) inYear(text string, toks []token, n, month, j, i int, ref colony.Date) (day, int) {
	if joined(toks, j) || j < len(toks) && toks[j].pause == comma {
		if toks[j].id == idNumber && toks[j].end-toks[j].start == 4 {
			if year, err := strconv.Atoi(text[toks[j].start:toks[j].end]); err == nil && year > 1900 && year < 2200 {
				at := colony.NewDate(year, time.Month(month), n)
				if at.Day != n {
					return day{}, i
				}
				return both(at), j + 1
			}
		}
	}
	at := day{past: nearestYear(n, month, ref, -1), future: nearestYear(n, month, ref, 1)}
	if at.past.IsZero() || at.future.IsZero() {
		return day{}, i
	}
	return at, j
}

func nearestYear(n, month int, ref colony.Date, sign int) colony.Date {
	for step := range 9 { // 29 February may be eight years off
		at := colony.NewDate(ref.Year+sign*step, time.Month(month), n)
		if at.Day == n && (sign < 0 && at.Compare(ref) <= 0 || sign > 0 && at.Compare(ref) > 0) {
			return at
		}
	}
	return colony.Date{}
}

func slashed(s string, ref colony.Date, i int) (day, int) {
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == '/' || r == '.' })
	if len(parts) < 2 {
		return day{}, i
	}
	a, _ := strconv.Atoi(parts[0])
	b, _ := strconv.Atoi(parts[1])
	weak := a <= 12 && b <= 12 && a != b
	if b > 12 && a <= 12 {
		a, b = b, a
	}
	if a < 1 || a > 31 || b < 1 || b > 12 {
		return day{}, i
	}
	if len(parts) == 3 {
		year, _ := strconv.Atoi(parts[2])
		if year < 100 {
			year += 2000
		}
		at := both(colony.NewDate(year, time.Month(b), a))
		at.weak = weak
		return at, i + 1
	}
	at := day{past: nearestYear(a, b, ref, -1), future: nearestYear(a, b, ref, 1), weak: weak}
	if at.past.IsZero() || at.future.IsZero() {
		return day{}, i
	}
	return at, i + 1
}
