package command

import (
	"math"
	"strconv"
	"time"

	"barwise/colony"
)

// tick is a mark on an axis.
type tick struct {
	at    float64
	label string
}

// dayNumber is a day on the axis of time.
func dayNumber(d colony.Date) float64 { return float64(d.Sub(colony.NewDate(1970, 1, 1))) }

// valueSteps is about how many steps there are between the values of an axis.
const valueSteps = 4

// valueTicks are values at steps of 1, 2 or 5 times a power of ten that span low
// to high.
func valueTicks(low, high float64) []tick {
	if high <= low {
		high = low + 1
	}
	rough := (high - low) / valueSteps
	power := math.Pow(10, math.Floor(math.Log10(rough)))
	step := power
	for _, m := range []float64{1, 2, 5, 10} {
		if step = m * power; step >= rough*0.999 {
			break
		}
	}
	var out []tick
	for i := math.Floor(low/step + 1e-9); i*step < high+step*0.999; i++ {
		v := i * step
		out = append(out, tick{v, strconv.FormatFloat(v, 'g', 6, 64)})
	}
	return out
}

// timeTicks are days, months, quarters or years that span from first to last in
// at most the given number of labels. The first label and the first of each
// year name the year.
func timeTicks(first, last colony.Date, most int) []tick {
	days := last.Sub(first) + 1
	every := 0 // months between two ticks; 0 for weeks
	for _, months := range []int{0, 1, 2, 3, 6, 12, 24, 60, 120} {
		if every = months; months == 0 && days/7 < most || months > 0 && days/(months*30) < most {
			break
		}
	}
	var out []tick
	year := 0
	name := func(d colony.Date, format string) {
		if d.Year != year {
			format += " 2006"
		}
		year = d.Year
		out = append(out, tick{dayNumber(d), d.Time().Format(format)})
	}
	if every == 0 {
		for d := first.AddDays(-(int(first.Weekday()) + 6) % 7); d.Compare(last) <= 0; d = d.AddDays(7) {
			if d.Compare(first) >= 0 {
				name(d, "2 Jan")
			}
		}
		if len(out) == 0 {
			name(first, "2 Jan")
		}
		return out
	}
	d := colony.NewDate(first.Year, time.Month((int(first.Month)-1)/min(every, 12)*min(every, 12)+1), 1)
	for ; d.Compare(last) <= 0; d = d.AddMonths(every) {
		if d.Compare(first) >= 0 {
			name(d, "Jan")
		}
	}
	if len(out) == 0 {
		name(first, "Jan")
	}
	return out
}

// scale is the room that trends take up on both axes.
type scale struct {
	first, last colony.Date
	low, high   float64
}

// scaleOf spans all values with their ranges, as far as these are finite. It
// begins at zero, unless values lie below it or count from one.
func scaleOf(trends []hiveTrend) scale {
	s := scale{low: math.Inf(1), high: math.Inf(-1)}
	for _, t := range trends {
		for _, p := range t.Samples {
			s.first, s.last = earlier(s.first, p.On), later(s.last, p.On)
			for _, v := range []float64{p.Value.Low, p.Value.Best, p.Value.High} {
				if !math.IsInf(v, 0) && !math.IsNaN(v) {
					s.low, s.high = min(s.low, v), max(s.high, v)
				}
			}
		}
	}
	if trends[0].Unit == "of 4" {
		s.low, s.high = 1, 4
	}
	if s.low > 0 && trends[0].Unit != "of 4" && trends[0].Unit != "°C" {
		s.low = 0
	}
	if s.high <= s.low {
		s.high = s.low + 1
	}
	return s
}

// gapDays is the length of a gap between two inspections over which no line is
// drawn as if it were known: a rule of thumb.
const gapDays = 45
