package colony

import (
	"cmp"
	"fmt"
	"time"
)

// Date is a civil day without a time zone. The zero Date means "not said".
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// DateOf returns the civil day of t in t's own zone.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date{y, m, d}
}

// NewDate returns the day, carrying months and days beyond their range as
// [time.Date] does.
func NewDate(year int, month time.Month, day int) Date {
	return DateOf(time.Date(year, month, day, 0, 0, 0, 0, time.UTC))
}

// ParseDate reads yyyy-mm-dd and refuses days that do not exist.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return Date{}, fmt.Errorf("not a date of the form 2026-05-14: %q", s)
	}
	return DateOf(t), nil
}

// IsZero reports whether the date is absent.
func (d Date) IsZero() bool { return d == Date{} }

// Time is the first instant of the day in UTC, for arithmetic only.
func (d Date) Time() time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

// AddDays returns the day n days later, or earlier for a negative n.
func (d Date) AddDays(n int) Date { return DateOf(d.Time().AddDate(0, 0, n)) }

// AddMonths returns the same day n months later; a day that the month lacks
// becomes its last one (31 January plus one month is 28 or 29 February).
func (d Date) AddMonths(n int) Date {
	first := time.Date(d.Year, d.Month+time.Month(n), 1, 0, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1).Day()
	return Date{first.Year(), first.Month(), min(d.Day, last)}
}

// Sub is the number of days from other to d.
func (d Date) Sub(other Date) int { return int(d.Time().Sub(other.Time()) / (24 * time.Hour)) }

// Compare orders days: negative before, zero equal, positive after.
func (d Date) Compare(other Date) int {
	return cmp.Or(cmp.Compare(d.Year, other.Year), cmp.Compare(d.Month, other.Month), cmp.Compare(d.Day, other.Day))
}

// Weekday is the day of the week.
func (d Date) Weekday() time.Weekday { return d.Time().Weekday() }

// String is yyyy-mm-dd, or "" for the zero date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return d.Time().Format(time.DateOnly)
}

// MarshalText writes yyyy-mm-dd.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads yyyy-mm-dd; the empty text is the zero date.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Date{}
		return nil
	}
	parsed, err := ParseDate(string(text))
	if err != nil {
		return err
	}
	*d = parsed
	return nil
}
