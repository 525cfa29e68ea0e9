package command

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"barwise/colony"
)

// This file finds the time that a question is about: "since april", "last
// year", "in july 2025", "before 3 may".

// period is a range of days, both ends included; a zero end is open.
type period struct{ from, to colony.Date }

var monthNames = map[string]time.Month{
	"jan": 1, "feb": 2, "mar": 3, "apr": 4, "may": 5, "jun": 6, "jul": 7, "aug": 8, "sep": 9, "oct": 10, "nov": 11, "dec": 12,
}

const (
	monthForm  = `(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)`
	seasonForm = `(?:spring|summer|autumn|fall|winter)`
	dayForm    = `\d{1,2}(?:st|nd|rd|th)?`
	timeForm   = `(\d{4}-\d\d-\d\d|(?:the )?` + dayForm + ` (?:of )?` + monthForm + `(?: \d{4})?|` + monthForm + ` ` + dayForm + `(?:,? \d{4})?|` +
		monthForm + `(?: \d{4})?|(?:(?:last|this|the) )?` + seasonForm + `(?: (?:of )?20\d\d)?|20\d\d|last month|this month|last week|this week|yesterday|today)`
)

// otherWords are names of months and seasons that have another meaning.
var otherWords = []string{"may", "march", "mar", "dec", "sep", "sept", "jan", "spring", "summer", "autumn", "winter", "fall"}

var (
	periodWords = regexp.MustCompile(`(?i)\b(?:(since|from|after|until|till|before|up to|in|during|on|of) )?` + timeForm + `\b`)
	rangeWords  = regexp.MustCompile(`(?i)\b(?:from|between) ` + timeForm + ` (?:to|and|until|till|up to|through) ` + timeForm + `\b`)
	lastYear    = words(`last year`)
	thisYear    = words(`this year`)
	unyeared    = regexp.MustCompile(`^(?:the )?(?:` + dayForm + ` (?:of )?)?(?:` + monthForm + `(?: ` + dayForm + `)?|` + seasonForm + `)$`)
	someYear    = regexp.MustCompile(`\b20\d\d\b`)
)

// cutPeriod takes every naming of a time out of the words and returns the days
// that all of them leave. What means other things too counts only after a word
// such as since or in. A month or season without a year is of the year that is
// named beside it, as in "last year in may".
func cutPeriod(words string, today colony.Date) (rest string, p period) {
	words = lastYear.ReplaceAllString(words, strconv.Itoa(today.Year-1))
	words = thisYear.ReplaceAllString(words, strconv.Itoa(today.Year))
	years := someYear.FindAllString(words, -1)
	read := func(text string) (period, bool) {
		if len(years) == 1 && unyeared.MatchString(text) {
			if p, ok := readPeriod(text+" "+years[0], today); ok {
				return p, true
			}
		}
		return readPeriod(text, today)
	}
	words = rangeWords.ReplaceAllStringFunc(words, func(found string) string {
		m := rangeWords.FindStringSubmatch(found)
		first, ok := read(strings.ToLower(m[1]))
		last, also := read(strings.ToLower(m[2]))
		if !ok || !also {
			return found
		}
		if last.to.Compare(first.from) < 0 { // from october to march
			first.from = colony.NewDate(first.from.Year-1, first.from.Month, first.from.Day)
		}
		p = period{first.from, last.to}
		return " "
	})
	rest = periodWords.ReplaceAllStringFunc(words, func(found string) string {
		m := periodWords.FindStringSubmatch(found)
		lead, text := strings.ToLower(m[1]), strings.ToLower(m[2])
		if lead == "" && slices.Contains(otherWords, text) {
			return found
		}
		named, ok := read(text)
		if !ok {
			return found
		}
		switch lead {
		case "since", "from":
			named.to = colony.Date{}
		case "after":
			named = period{from: named.to.AddDays(1)}
		case "until", "till", "up to":
			named.from = colony.Date{}
		case "before":
			named = period{to: named.from.AddDays(-1)}
		}
		p = p.and(named)
		return " "
	})
	return strings.Join(strings.Fields(rest), " "), p
}

// and is what both periods leave.
func (p period) and(q period) period {
	if p.from.IsZero() || !q.from.IsZero() && q.from.Compare(p.from) > 0 {
		p.from = q.from
	}
	if p.to.IsZero() || !q.to.IsZero() && q.to.Compare(p.to) < 0 {
		p.to = q.to
	}
	return p
}

// holds reports whether the day is within the period.
func (p period) holds(d colony.Date) bool {
	return (p.from.IsZero() || d.Compare(p.from) >= 0) && (p.to.IsZero() || d.Compare(p.to) <= 0)
}

// earlier is the first of two days, of which the first may be absent.
func earlier(a, b colony.Date) colony.Date {
	if a.IsZero() || b.Compare(a) < 0 {
		return b
	}
	return a
}

// later is the last of two days; an absent one is before all others.
func later(a, b colony.Date) colony.Date {
	if b.Compare(a) > 0 {
		return b
	}
	return a
}

// readPeriod is the range of days that a naming of a time covers. A month or
// day without a year is the latest that has begun.
func readPeriod(text string, today colony.Date) (period, bool) {
	if d, err := colony.ParseDate(text); err == nil {
		return period{d, d}, true
	}
	monday := today.AddDays(-(int(today.Weekday()) + 6) % 7)
	switch text {
	case "today":
		return period{today, today}, true
	case "yesterday":
		return period{today.AddDays(-1), today.AddDays(-1)}, true
	case "this week":
		return period{monday, monday.AddDays(6)}, true
	case "last week":
		return period{monday.AddDays(-7), monday.AddDays(-1)}, true
	case "this month":
		return month(today.Year, today.Month), true
	case "last month":
		before := colony.NewDate(today.Year, today.Month, 1).AddDays(-1)
		return month(before.Year, before.Month), true
	}
	if p, ok := readSeason(text, today); ok {
		return p, true
	}
	return readNamedDay(text, today)
}

// seasonStarts are the months that the northern seasons begin with, by the
// calendar of the weather services.
var seasonStarts = map[string]time.Month{"spring": 3, "summer": 6, "autumn": 9, "fall": 9, "winter": 12}

// readSeason reads "last winter" and "summer 2025". A winter is named by the
// year that it begins in; one without a year is the latest that has begun, and
// the last is the latest that is over.
func readSeason(text string, today colony.Date) (period, bool) {
	for name, start := range seasonStarts {
		if !strings.Contains(text, name) {
			continue
		}
		span := func(year int) period {
			return period{colony.NewDate(year, start, 1), colony.NewDate(year, start+3, 1).AddDays(-1)}
		}
		if digits := number.FindString(text); digits != "" {
			year, _ := strconv.Atoi(digits)
			return span(year), true
		}
		p := span(today.Year)
		for p.from.Compare(today) > 0 || strings.HasPrefix(text, "last") && p.to.Compare(today) >= 0 {
			p = span(p.from.Year - 1)
		}
		return p, true
	}
	return period{}, false
}

var number = regexp.MustCompile(`\d+`)

// readNamedDay reads "3 may 2026", "may 2026", "may" and "2026".
func readNamedDay(text string, today colony.Date) (period, bool) {
	var inMonth time.Month
	for word := range strings.FieldsSeq(text) {
		if m, ok := monthNames[word[:min(3, len(word))]]; ok {
			inMonth = m
		}
	}
	day, inYear := 0, 0
	for _, digits := range number.FindAllString(text, -1) {
		if n, _ := strconv.Atoi(digits); n > 31 {
			inYear = n
		} else {
			day = n
		}
	}
	switch {
	case inMonth == 0:
		return year(inYear), inYear > 0
	case inYear == 0:
		inYear = today.Year
		if colony.NewDate(inYear, inMonth, max(day, 1)).Compare(today) > 0 {
			inYear--
		}
	}
	if day == 0 {
		return month(inYear, inMonth), true
	}
	d := colony.NewDate(inYear, inMonth, day)
	return period{d, d}, d.Month == inMonth
}

func month(y int, m time.Month) period {
	return period{colony.NewDate(y, m, 1), colony.NewDate(y, m+1, 1).AddDays(-1)}
}

func year(y int) period { return period{colony.NewDate(y, 1, 1), colony.NewDate(y, 12, 31)} }

// String is the period for a person, "" for all time.
func (p period) String() string {
	switch {
	case p.from == p.to && !p.from.IsZero():
		return "on " + p.from.String()
	case p.from.IsZero() && p.to.IsZero():
		return ""
	case p.to.IsZero():
		return "from " + p.from.String() + " on"
	case p.from.IsZero():
		return "up to " + p.to.String()
	}
	return "from " + p.from.String() + " to " + p.to.String()
}
