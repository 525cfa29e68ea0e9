package colony

import (
	"fmt"
	"math"
)

// DateRange is a span of civil days, both ends included. The zero DateRange
// means "not known".
type DateRange struct {
	From Date `json:"from,omitzero"`
	To   Date `json:"to,omitzero"`
}

// Window says when something happens or happened: Usual is the span that the
// textbook figures give, Outer the one beyond which it is not to be expected.
// Outer always holds Usual.
type Window struct {
	Usual DateRange `json:"usual,omitzero"`
	Outer DateRange `json:"outer,omitzero"`
}

// IsZero reports whether the span is not known.
func (r DateRange) IsZero() bool { return r.From.IsZero() && r.To.IsZero() }

// Contains reports whether the day lies in the span.
func (r DateRange) Contains(d Date) bool {
	return !r.IsZero() && r.From.Compare(d) <= 0 && d.Compare(r.To) <= 0
}

// Days is the length of the span: 0 for a single day.
func (r DateRange) Days() int { return r.To.Sub(r.From) }

// Meet returns the days that both spans hold, and whether there are any.
func (r DateRange) Meet(o DateRange) (DateRange, bool) {
	both := DateRange{laterOf(r.From, o.From), earlierOf(r.To, o.To)}
	return both, both.From.Compare(both.To) <= 0
}

// After returns the span in which something falls that follows a day of r
// after the given days; parts of days are rounded outwards.
func (r DateRange) After(low, high float64) DateRange {
	return DateRange{r.From.AddDays(int(math.Floor(low))), r.To.AddDays(int(math.Ceil(high)))}
}

// String is "17 to 20 May 2025" or "30 Dec 2025 to 2 Jan 2026".
func (r DateRange) String() string {
	switch {
	case r.IsZero():
		return "not known"
	case r.From == r.To:
		return longDay(r.From)
	case r.From.Year != r.To.Year:
		return longDay(r.From) + " to " + longDay(r.To)
	case r.From.Month != r.To.Month:
		return fmt.Sprintf("%d %s to %s", r.From.Day, r.From.Month.String()[:3], longDay(r.To))
	}
	return fmt.Sprintf("%d to %s", r.From.Day, longDay(r.To))
}

// IsZero reports whether the window is not known.
func (w Window) IsZero() bool { return w.Outer.IsZero() }

// After returns the window of something that follows w after the days usual,
// or at the outermost after the days outer.
func (w Window) After(usual, outer Range) Window {
	return Window{w.Usual.After(usual.Low, usual.High), w.Outer.After(outer.Low, outer.High)}.ordered()
}

// Meet returns what both windows allow, and whether their outer spans meet at
// all. Where only the usual spans fail to meet, the usual one becomes the
// outer one: the two observations fit, but not by the textbook.
func (w Window) Meet(o Window) (Window, bool) {
	outer, ok := w.Outer.Meet(o.Outer)
	if !ok {
		return Window{}, false
	}
	usual, fits := w.Usual.Meet(o.Usual)
	if !fits {
		usual = outer
	}
	return Window{usual, outer}.ordered(), true
}

// String is for people: the usual span, and the outer one where it differs.
func (w Window) String() string {
	if w.Usual == w.Outer {
		return w.Outer.String()
	}
	return fmt.Sprintf("%s (at the outermost %s)", w.Usual, w.Outer)
}

// ordered widens Outer where rounding left it inside Usual.
func (w Window) ordered() Window {
	w.Outer.From = earlierOf(w.Outer.From, w.Usual.From)
	w.Outer.To = laterOf(w.Outer.To, w.Usual.To)
	return w
}

func onDay(d Date) Window {
	return Window{DateRange{d, d}, DateRange{d, d}}
}

func earlierOf(a, b Date) Date {
	if a.Compare(b) <= 0 {
		return a
	}
	return b
}

func laterOf(a, b Date) Date {
	if a.Compare(b) >= 0 {
		return a
	}
	return b
}

// longDay is "20 May 2025".
func longDay(d Date) string {
	if d.IsZero() {
		return "an unknown day"
	}
	return fmt.Sprintf("%d %s %d", d.Day, d.Month.String()[:3], d.Year)
}

// shortDay is "20 May".
func shortDay(d Date) string { return fmt.Sprintf("%d %s", d.Day, d.Month.String()[:3]) }
