package parse

import "barwise/colony"

// weekday reads a weekday; "Saturday week" is the one after the coming, and a day of the
// month behind it says which is meant.
func (d *dates) weekday(text string, toks []token, i int, ref colony.Date) (day, int) {
	j := i
	if !d.is(toks, j, weekdayWord) || j+1 < len(toks) && joined(toks, j+1) && d.weekly.has(toks[j+1].id) {
		return day{}, i
	}
	if at, end := d.ofThatMonth(text, toks, j+1, ref); end > j+1 {
		return at, end
	}
	w := d.of(toks[j].id).value
	if toks[j].end-toks[j].start == 3 && (w >= 6 || w == 3) && !d.plainShort(toks, j) {
		return day{}, i
	}
	j++
	if d.follows(toks, j, spanWord) && d.of(toks[j].id).value == 7 {
		at := both(ahead(ref, w).AddDays(7))
		at.ahead = true
		return at, j + 1
	}
	return day{past: behind(ref, w), future: ahead(ref, w), weekday: true}, j
}

// ofThatMonth reads the day of the month that stands behind a weekday: "Saturday the 23rd",
// "Sat 23 May", "Sunday, 3rd of May".
func (d *dates) ofThatMonth(text string, toks []token, i int, ref colony.Date) (day, int) {
	if i >= len(toks) || toks[i].pause > comma {
		return day{}, i
	}
	first := i
	if d.is(toks, i, theWord) && joined(toks, i+1) {
		first++
	}
	q, end := d.numbers.single(text, toks, first)
	if at, k := d.calendar(text, toks, i, max(end, i), ref); k > i {
		return at, k
	}
	if end == first || !q.ordinal || !q.whole() || q.lo < 1 || q.lo > 31 || toks[i].pause > none {
		return day{}, i
	}
	if joined(toks, end) && (!toks[first].has(digits) || d.numbers.combWords.has(toks[end].id)) {
		return day{}, i // "on Monday the second bar had eggs"
	}
	return ofMonth(int(q.lo), ref), end
}

// plainShort tells Sun, Sat and Wed the days from the sun, what sat and who wed:
// "on", "next" and the like stand before the day, or it heads a line, or it ends
// a phrase with its capital: "feed 1 L syrup Sun".
func (d *dates) plainShort(toks []token, j int) bool {
	if j > 0 && toks[j].pause == none {
		if d.deadlines.has(toks[j-1].id) {
			return true // "nothing since sun"
		}
		switch d.of(toks[j-1].id).kind {
		case onWord, nextWord, lastWord, thisWord, agoWord, fromWord, afterWord, beforeWord:
			return true
		}
	}
	if j+1 == len(toks) || toks[j+1].pause >= comma {
		if d.endsPhrase(toks, j) {
			return true
		}
	} else if j > 0 && toks[j-1].has(coloned) && toks[j].has(capital) && d.of(toks[j].id).value != sunday && toks[j+1].pause == none {
		return true // "To do: Sat feed them", but "Weather: Sun and cloud"
	}
	return toks[j].has(coloned) || toks[j].pause >= stop && j+1 < len(toks) && (toks[j+1].pause >= comma || toks[j+1].has(digits))
}

// endsPhrase tells such a day at the end of a phrase by what stands before it.
func (d *dates) endsPhrase(toks []token, j int) bool {
	if j == 0 {
		return false
	}
	prev, number := toks[j-1], d.numbers.of(toks[j-1].id).kind
	switch {
	case toks[j].pause == comma:
		return toks[j].has(capital) && d.of(toks[j].id).value != sunday || d.ordered(toks, j) // "To do: add two bars, Sat."
	case toks[j].pause > comma:
		return false
	case prev.id == d.againID:
		return true // "will look again sat"
	case toks[j].has(capital) && (prev.id == idNumber && d.numbers.ofBars(toks, j-1) || prev.id >= firstWordID && number == notNumber && prev.end-prev.start > 1):
		return true // "add 1 bar from H12 Wed."
	}
	return d.of(prev.id).kind == notDate && number == notNumber && (d.ordered(toks, j) || d.amongDays(toks, j))
}

// amongDays reports whether the phrase before that of token j ends with a weekday too:
// "requeened last tues, fed sat".
func (d *dates) amongDays(toks []token, j int) bool {
	k := j
	for k > 0 && toks[k].pause < comma {
		k--
	}
	return k > 0 && toks[k].pause == comma && d.of(toks[k-1].id).kind == weekdayWord
}

// ordered reports whether the phrase that token j ends gives an order: "todo add 2
// bars sat".
func (d *dates) ordered(toks []token, j int) bool {
	for k := j - 1; k >= 0; k-- {
		if d.orders.has(toks[k].id) {
			return true
		}
		if toks[k+1].pause >= stop {
			return false
		}
	}
	return false
}

func isoDay(d colony.Date) int { return (int(d.Weekday())+6)%7 + 1 }

// behind is the nearest such weekday before ref, never ref itself.
func behind(ref colony.Date, weekday int) colony.Date {
	return ref.AddDays(-((isoDay(ref)-weekday+6)%7 + 1))
}

// ahead is the nearest such weekday after ref, never ref itself.
func ahead(ref colony.Date, weekday int) colony.Date {
	return ref.AddDays((weekday-isoDay(ref)+6)%7 + 1)
}
