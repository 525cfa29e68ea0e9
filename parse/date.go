package parse

import (
	"time"

	"barwise/colony"
)

// day is a date as it was said. Where the words leave open whether it lies
// behind or ahead, past and future differ and the tense of the sentence picks:
// reports lie behind, plans ahead.
type day struct {
	past, future colony.Date
	today        bool // today, this morning
	week         bool // only a week, month or season was named, no day
	weak         bool // two readings are common: flag
	ago          bool // said as a distance back, "last …", yesterday
	ahead        bool // said as a distance ahead, "next …", tomorrow
	weekday      bool // a bare weekday
	length       int  // in days, of "in three days"
}

// dateWord is what a word contributes to a date or duration.
type dateWord struct {
	kind  dateKind
	value int
}

type dateKind uint8

const (
	notDate dateKind = iota
	weekdayWord
	monthWord
	spanWord // day 1, week 7, fortnight 14, month -1, year -12, hour 0
	agoWord  // ago, back, since
	inWord
	nextWord
	lastWord
	thisWord
	onWord
	fromWord
	todayWord
	yesterdayWord
	tomorrowWord
	beforeWord
	afterWord
	weekendWord
	dayPartWord // morning, afternoon, evening, night
	theWord
	nowWord
	timeWord // o'clock, am, pm
	everyWord
	endWord       // the end of May
	shortSpanWord // the d of "7d"
)

// stands reports whether such a word can be a date or duration by itself.
func (w dateWord) stands() bool {
	switch w.kind {
	case weekdayWord, todayWord, yesterdayWord, tomorrowWord, weekendWord:
		return true
	}
	return w.kind == spanWord && w.value == fortnight
}

// leads reports whether a date can begin with such a word, if more follows.
func (w dateWord) leads() bool {
	switch w.kind {
	case monthWord, spanWord, inWord, nextWord, lastWord, thisWord, theWord, endWord:
		return true
	}
	return false
}

// mayLead reports whether a date can begin with a word that leads, where another
// follows.
func (d *dates) mayLead(first, next *token) bool {
	if !next.has(dating) {
		return false
	}
	behind := d.of(next.id).kind
	switch d.of(first.id).kind {
	case inWord:
		return next.has(numeral)
	case theWord:
		return next.has(numeral) || behind == endWord || behind == spanWord
	case nextWord, lastWord, thisWord:
		return behind == weekdayWord || behind == weekendWord || behind == spanWord || behind == dayPartWord
	}
	return true
}

// sunday is the value of that weekday, the last of the week.
const sunday = 7

// fortnight is the value of the one span that needs no number before it.
const fortnight = 14

// dates reads days and durations relative to the day of the inspection.
type dates struct {
	numbers   *numbers
	kinds     []dateWord // by wordID
	againID   wordID
	deadlines wordSet // by, since: a day may follow
	counted   wordSet // degrees, bees: the number before is theirs, behind a month too
	slashID   wordID
	orders    wordSet // words that tell what is to be done
	weekly    wordSet // lunch, market: what a weekday before them only tells the kind of
}

func (d *dates) of(id wordID) dateWord {
	if int(id) < len(d.kinds) {
		return d.kinds[id]
	}
	return dateWord{}
}

func (d *dates) is(toks []token, i int, k dateKind) bool {
	return i < len(toks) && d.of(toks[i].id).kind == k
}

// follows reports whether token i is of the kind and no pause separates it.
func (d *dates) follows(toks []token, i int, k dateKind) bool {
	return joined(toks, i) && d.is(toks, i, k)
}

// mayBegin reports whether a day can begin at token i: with a word of dates, or
// with a number, up to token end, behind which one stands.
func (d *dates) mayBegin(toks []token, i, end int) bool {
	if id := toks[i].id; id == idISODate || id == idSlashDate || d.of(toks[i].id).kind != notDate {
		return true
	}
	return end < len(toks) && (toks[end].id == idDash || d.of(toks[end].id).kind != notDate || d.numbers.is(toks, end, ofWord))
}

// read reads the day that starts at token i, or returns i where there is none.
func (d *dates) read(text string, toks []token, i int, ref colony.Date) (day, int) {
	if i >= len(toks) {
		return day{}, i
	}
	q, end := d.numbers.read(text, toks, i)
	return d.readWith(text, toks, i, q, end, ref)
}

// readWith reads a day as read does, where the number q stands from token i to
// end.
func (d *dates) readWith(text string, toks []token, i int, q quantity, end int, ref colony.Date) (day, int) {
	at, j := d.relative(text, toks, i, q, end, ref)
	if j == i {
		at, j = d.calendar(text, toks, i, end, ref)
	}
	if j == i {
		at, j = d.weekday(text, toks, i, ref)
	}
	if j == i {
		return at, i
	}
	for d.follows(toks, j, dayPartWord) {
		j++
	}
	return at, j
}

func both(d colony.Date) day { return day{past: d, future: d} }

// relative reads today, yesterday, "three weeks ago", "in ten days", "a week
// from Saturday", "a fortnight last Tuesday", "next week".
func (d *dates) relative(text string, toks []token, i int, q quantity, end int, ref colony.Date) (day, int) {
	w := d.of(toks[i].id)
	switch w.kind {
	case todayWord:
		at := both(ref)
		at.today = true
		return at, i + 1
	case yesterdayWord:
		at := both(ref.AddDays(-1))
		at.ago = true
		return at, i + 1
	case tomorrowWord:
		at := both(ref.AddDays(1))
		at.ahead = true
		return at, i + 1
	case endWord:
		return d.monthEnd(toks, i, i+1, ref)
	case theWord:
		if d.is(toks, i+1, endWord) {
			return d.monthEnd(toks, i, i+2, ref)
		}
		if at, j := d.nextButOne(toks, i+1, ref); j > i+1 {
			return at, j
		}
		if d.is(toks, i+1, weekendWord) {
			return weekend(ref), i + 2
		}
	case spanWord:
		if at, j := d.nextButOne(toks, i, ref); j > i {
			return at, j
		}
	case weekendWord:
		return weekend(ref), i + 1
	case inWord, onWord:
		if w.kind == inWord {
			if s, j := d.duration(text, toks, i+1); j > i+1 && !s.hours && !d.is(toks, j, agoWord) {
				at := both(s.from(ref, 1))
				at.ahead, at.length = true, s.days
				return at, d.skipTime(toks, j)
			}
		}
		return day{}, i
	case nextWord, lastWord, thisWord:
		return d.named(toks, i, ref)
	}
	return d.distance(text, toks, i, q, end, ref)
}

// nextButOne reads "day before yesterday" and "day after tomorrow".
func (d *dates) nextButOne(toks []token, i int, ref colony.Date) (day, int) {
	if !d.is(toks, i, spanWord) || d.of(toks[i].id).value != 1 {
		return day{}, i
	}
	switch {
	case d.is(toks, i+1, beforeWord) && d.is(toks, i+2, yesterdayWord):
		at := both(ref.AddDays(-2))
		at.ago = true
		return at, i + 3
	case d.is(toks, i+1, afterWord) && d.is(toks, i+2, tomorrowWord):
		at := both(ref.AddDays(2))
		at.ahead = true
		return at, i + 3
	}
	return day{}, i
}

// monthEnd reads the last day of "the end of May", "the end of the month"; j is
// the token behind "end".
func (d *dates) monthEnd(toks []token, i, j int, ref colony.Date) (day, int) {
	if !d.numbers.is(toks, j, ofWord) {
		return day{}, i
	}
	j++
	first := colony.Date{Year: ref.Year, Month: ref.Month, Day: 1}
	switch {
	case d.is(toks, j, monthWord):
		first.Month = time.Month(d.of(toks[j].id).value)
	case d.is(toks, j, theWord), d.is(toks, j, thisWord):
		j++
		if !d.is(toks, j, spanWord) || d.of(toks[j].id).value != -1 {
			return day{}, i
		}
	default:
		return day{}, i
	}
	last := first.AddMonths(1).AddDays(-1)
	past, future := last, last
	if last.Compare(ref) < 0 {
		future = first.AddMonths(13).AddDays(-1)
	} else {
		past = first.AddMonths(-11).AddDays(-1)
	}
	return day{past: past, future: future}, j + 1
}

func weekend(ref colony.Date) day {
	ahead := ref.AddDays((6-int(ref.Weekday())+7)%7 + 0)
	if ahead == ref {
		ahead = ref.AddDays(7)
	}
	return day{past: ahead.AddDays(-7), future: ahead}
}

// skipTime passes the "time" of "in three weeks time" and "from now".
func (d *dates) skipTime(toks []token, j int) int {
	for j < len(toks) && toks[j].pause == none {
		switch d.of(toks[j].id).kind {
		case timeWord:
			j++
			continue
		case fromWord:
			if d.is(toks, j+1, nowWord) || d.is(toks, j+1, todayWord) {
				j += 2
				continue
			}
		}
		break
	}
	return j
}

// distance reads a duration with the point it is counted from: "three days
// ago", "a week from Saturday", "a week on Monday", "two days before that".
func (d *dates) distance(text string, toks []token, i int, q quantity, end int, ref colony.Date) (day, int) {
	s, j := d.length(toks, i, q, end)
	if j == i || s.hours || !joined(toks, j) {
		return day{}, i
	}
	switch d.of(toks[j].id).kind {
	case agoWord:
		at := both(s.from(ref, -1))
		at.ago = true
		// "two weeks ago Friday": the Friday of that week
		if d.follows(toks, j+1, weekdayWord) {
			w := d.of(toks[j+1].id).value
			at = both(at.past.AddDays(w - isoDay(at.past)))
			at.ago = true
			return at, j + 2
		}
		return at, j + 1
	case todayWord, tomorrowWord: // "a week today"
		base, k := d.relative(text, toks, j, quantity{}, j, ref)
		at := both(s.from(base.future, 1))
		at.ahead = true
		return at, k
	case fromWord, onWord:
		if d.is(toks, j+1, nowWord) || d.is(toks, j+1, todayWord) {
			at := both(s.from(ref, 1))
			at.ahead = true
			return at, j + 2
		}
		base, k := d.read(text, toks, j+1, ref)
		if k > j+1 && !base.ago {
			at := both(s.from(base.future, 1))
			at.ahead = true
			return at, k
		}
	case lastWord, yesterdayWord:
		base, k := d.read(text, toks, j, ref)
		if k > j {
			at := both(s.from(base.past, -1))
			at.ago = true
			return at, k
		}
	case beforeWord:
		base, k := d.read(text, toks, j+1, ref)
		if k > j+1 {
			return both(s.from(base.past, -1)), k
		}
	}
	return day{}, i
}

// named reads next, last and this with a week, a weekday or a season.
func (d *dates) named(toks []token, i int, ref colony.Date) (day, int) {
	if !joined(toks, i+1) {
		return day{}, i
	}
	kind := d.of(toks[i].id).kind
	w := d.of(toks[i+1].id)
	monday := ref.AddDays(1 - isoDay(ref))
	switch w.kind {
	case weekdayWord:
		j := i + 2
		switch kind {
		case lastWord:
			at := both(behind(ref, w.value))
			at.ago = true
			return at, j
		case nextWord:
			at := both(monday.AddDays(7 + w.value - 1))
			at.ahead, at.weak = true, ahead(ref, w.value) != at.future
			return at, j
		default:
			return day{past: behind(ref, w.value), future: ahead(ref, w.value)}, j
		}
	case weekendWord:
		at := weekend(ref)
		if kind == lastWord {
			at.future = at.past
			at.ago = true
		}
		return at, i + 2
	case spanWord:
		return d.namedSpan(kind, w.value, ref, i)
	case dayPartWord: // last night, this morning
		if kind == lastWord {
			at := both(ref.AddDays(-1))
			at.ago = true
			return at, i + 2
		}
		at := both(ref)
		at.today = kind == thisWord
		return at, i + 2
	}
	return day{}, i
}

// namedSpan is "this week", "next month" and the like: no day, but before or behind
// today.
func (d *dates) namedSpan(kind dateKind, unit int, ref colony.Date, i int) (day, int) {
	switch {
	case unit == 0:
		return day{}, i
	case kind == nextWord && unit == 7:
		at := both(ref.AddDays(7))
		at.ahead = true
		return at, i + 2
	case kind == nextWord:
		return day{week: true, ahead: true, past: ref, future: ref}, i + 2
	case kind == lastWord:
		return day{week: true, ago: true, past: ref.AddDays(-7), future: ref}, i + 2
	}
	return day{week: true, past: ref, future: ref}, i + 2
}
