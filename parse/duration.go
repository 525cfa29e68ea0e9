package parse

import "barwise/colony"

// Lengths of time: three weeks, a fortnight, 5 d.

// span is a length of time in days; months are kept apart.
type span struct {
	days, months int
	hours        bool
}

// duration reads "three weeks", "a fortnight", "48 hours", "ten days".
func (d *dates) duration(text string, toks []token, i int) (span, int) {
	q, j := d.numbers.read(text, toks, i)
	return d.length(toks, i, q, j)
}

// length reads a duration whose number, if any, stands from token i to j.
func (d *dates) length(toks []token, i int, q quantity, j int) (span, int) {
	if j == i {
		if d.is(toks, i, spanWord) && d.of(toks[i].id).value == fortnight {
			return span{days: fortnight}, i + 1
		}
		return span{}, i
	}
	if q.ordinal || !joined(toks, j) {
		return span{}, i
	}
	if toks[j].id == idDash {
		j++
	}
	if !d.is(toks, j, spanWord) && !d.shortSpan(toks, i, j) && !d.wholeDays(toks, i, q, j) {
		return span{}, i
	}
	return d.lengthOf(q, d.of(toks[j].id).value), j + 1
}

// shortSpan reports whether the letter at j stands for a span behind the number
// at i: "7d", "63 mites / 7 d", "40 in 24 h".
func (d *dates) shortSpan(toks []token, i, j int) bool {
	if !d.is(toks, j, shortSpanWord) {
		return false
	}
	return toks[j].has(glued) && d.of(toks[j].id).value > 0 || i > 0 && (toks[i-1].id == d.slashID || d.is(toks, i-1, inWord))
}

// wholeDays reports whether the letter at j stands for hours that make up days: "24h drop 11",
// but not for the honey of "b24h".
func (d *dates) wholeDays(toks []token, i int, q quantity, j int) bool {
	return d.is(toks, j, shortSpanWord) && d.of(toks[j].id).value == 0 && toks[j].has(glued) && !toks[i].has(glued) && q.whole() && q.lo > 0 && int(q.lo)%24 == 0
}

func (d *dates) lengthOf(q quantity, unit int) span {
	switch {
	case unit > 0:
		return span{days: int(q.lo*float64(unit) + 0.5)}
	case unit == 0:
		return span{days: max(1, int(q.lo/24+0.5)), hours: true}
	default:
		return span{months: int(q.lo * float64(-unit))}
	}
}

func (s span) from(ref colony.Date, sign int) colony.Date {
	return ref.AddMonths(sign * s.months).AddDays(sign * s.days)
}
