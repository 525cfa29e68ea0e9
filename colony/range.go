package colony

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Range is a quantity that is known within limits: Low and High are the
// plausible ends, both included, Best is the value to name when only one is
// asked for, and lies between them. Unit is how the quantity is counted; the
// empty unit is a plain number.
//
// The arithmetic is interval arithmetic on the ends (inputs taken to be
// independent of one another, which at worst widens a result) and ordinary
// arithmetic on Best.
type Range struct {
	Low  float64 `json:"low"`
	Best float64 `json:"best"`
	High float64 `json:"high"`
	Unit string  `json:"unit,omitempty"`
}

// Exactly is a quantity without doubt.
func Exactly(v float64, unit string) Range { return Range{v, v, v, unit} }

// Between is a quantity between low and high. The ends are put in order and
// best is moved to the nearer end if it lies outside.
func Between(low, best, high float64, unit string) Range {
	if low > high {
		low, high = high, low
	}
	return Range{low, math.Max(low, math.Min(high, best)), high, unit}
}

// Plus adds a quantity of the same unit.
func (r Range) Plus(o Range) Range {
	return Range{r.Low + o.Low, r.Best + o.Best, r.High + o.High, sameUnit(r, o)}
}

// Minus subtracts a quantity of the same unit.
func (r Range) Minus(o Range) Range {
	return Range{r.Low - o.High, r.Best - o.Best, r.High - o.Low, sameUnit(r, o)}
}

// Times multiplies; the product's unit is given, since only the caller knows
// what two units make together.
func (r Range) Times(o Range, unit string) Range {
	return spread(r.Best*o.Best, unit, r.Low*o.Low, r.Low*o.High, r.High*o.Low, r.High*o.High)
}

// Per divides by a quantity that is not zero anywhere in its range; where it
// may be zero the quotient is unbounded and its ends are infinite.
func (r Range) Per(o Range, unit string) Range {
	if o.Low <= 0 && o.High >= 0 {
		return Range{math.Inf(-1), r.Best / o.Best, math.Inf(1), unit}
	}
	return spread(r.Best/o.Best, unit, r.Low/o.Low, r.Low/o.High, r.High/o.Low, r.High/o.High)
}

// Scale multiplies by a plain number.
func (r Range) Scale(f float64) Range {
	return Between(r.Low*f, r.Best*f, r.High*f, r.Unit)
}

// AtLeast raises every part of the range to the floor.
func (r Range) AtLeast(floor float64) Range {
	return Range{math.Max(r.Low, floor), math.Max(r.Best, floor), math.Max(r.High, floor), r.Unit}
}

// AtMost lowers every part of the range to the ceiling.
func (r Range) AtMost(ceiling float64) Range {
	return Range{math.Min(r.Low, ceiling), math.Min(r.Best, ceiling), math.Min(r.High, ceiling), r.Unit}
}

// whole rounds to whole numbers: the best to the nearest, the ends outwards.
func (r Range) whole() Range {
	return Range{math.Floor(r.Low), math.Round(r.Best), math.Ceil(r.High), r.Unit}
}

// Contains reports whether the value lies within the ends.
func (r Range) Contains(v float64) bool { return r.Low <= v && v <= r.High }

// Width is the distance between the ends.
func (r Range) Width() float64 { return r.High - r.Low }

// IsZero reports whether nothing is there: all three parts are zero.
func (r Range) IsZero() bool { return r.Low == 0 && r.Best == 0 && r.High == 0 }

// Bounded reports whether both ends and the best value are finite numbers.
func (r Range) Bounded() bool {
	for _, v := range [...]float64{r.Low, r.Best, r.High} {
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return false
		}
	}
	return true
}

// Vague reports whether the ends are so far apart, more than twenty to one,
// that a best value would pretend to a knowledge that is not there.
func (r Range) Vague() bool { return r.Bounded() && r.Low >= 0 && r.Best > 0 && r.High > 20*r.Low }

// String is for people: "8.2 dm² (7.1 to 8.9)", one number where the ends print
// alike, and only the ends where the range is vague.
func (r Range) String() string {
	low, best, high := r.print(r.Low), r.print(r.Best), r.print(r.High)
	unit := r.Unit
	if unit != "" && unit != "%" {
		unit = " " + unit
	}
	switch {
	case low == high && best == "1":
		return best + singular(unit)
	case low == high:
		return best + unit
	case r.Vague():
		return fmt.Sprintf("%s to %s%s, no closer", low, high, unit)
	}
	return fmt.Sprintf("%s%s (%s to %s)", best, unit, low, high)
}

// singular is the unit for one of it.
func singular(unit string) string {
	noun, rest, found := strings.Cut(strings.TrimPrefix(unit, " "), "s a ")
	if found {
		return " " + noun + " a " + rest
	}
	switch strings.TrimSpace(unit) {
	case unitBars, unitDays, unitCells, unitBees, "weeks", "mites", "stings":
		return strings.TrimSuffix(unit, "s")
	}
	return unit
}

// print is the number without parts of things that come whole.
func (r Range) print(v float64) string {
	switch r.Unit {
	case unitCells, unitBees, unitEggs:
		v = math.Round(v)
	}
	return amount(v)
}

func spread(best float64, unit string, ends ...float64) Range {
	low, high := ends[0], ends[0]
	for _, e := range ends[1:] {
		low, high = math.Min(low, e), math.Max(high, e)
	}
	return Between(low, best, high, unit)
}

// sameUnit returns the unit that both share; adding bees to kilograms is a
// mistake in the program, never in the notes.
func sameUnit(a, b Range) string {
	switch {
	case a.Unit == b.Unit, b.Unit == "" && b.IsZero():
		return a.Unit
	case a.Unit == "" && a.IsZero():
		return b.Unit
	}
	panic("colony: adding " + a.Unit + " and " + b.Unit)
}

// amount prints a number with about three significant digits and thousands
// set apart: 0.27, 8.89, 124, 1,110, 17,000.
func amount(v float64) string {
	switch a := math.Abs(v); {
	case math.IsInf(v, 1):
		return "no limit"
	case math.IsInf(v, -1):
		return "no lower limit"
	case math.IsNaN(v):
		return "unknown"
	case a < 0.005:
		return "0"
	case a < 10:
		return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(v, 'f', 2, 64), "0"), ".")
	case a < 100:
		return strings.TrimSuffix(strconv.FormatFloat(v, 'f', 1, 64), ".0")
	case a < 1000:
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-2)
	digits := strconv.FormatFloat(math.Abs(math.Round(v/step)*step), 'f', 0, 64)
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + "," + digits[i:]
	}
	if v < 0 {
		return "-" + digits
	}
	return digits
}

// MarshalJSON writes an end that has no limit as null, since JSON knows no
// infinity.
func (r Range) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Low  *float64 `json:"low"`
		Best *float64 `json:"best"`
		High *float64 `json:"high"`
		Unit string   `json:"unit,omitempty"`
	}{finite(r.Low), finite(r.Best), finite(r.High), r.Unit})
}

func finite(v float64) *float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return nil
	}
	return &v
}
