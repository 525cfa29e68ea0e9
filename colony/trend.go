package colony

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"slices"
)

// Point is a measure on a day.
type Point struct {
	On    Date    `json:"on"`
	Value float64 `json:"value"`
}

// Slope is a robust straight line through points: the median of the slopes of
// all pairs (Theil 1950, Sen 1968). Slope and its limits are per day.
type Slope struct {
	Slope     float64 `json:"slope"`
	Low       float64 `json:"low"` // 95 % limits by Sen's method; infinite where there are too few points
	High      float64 `json:"high"`
	Intercept float64 `json:"intercept"` // value at the first point's day: median value less slope × median day
	Pairs     int     `json:"pairs"`
}

// Kendall is a Mann–Kendall test for a trend.
type Kendall struct {
	S        int     `json:"s"`        // rises less falls over all pairs
	Variance float64 `json:"variance"` // of S if there is no trend, ties counted
	Z        float64 `json:"z"`        // with the correction for continuity
	P        float64 `json:"p"`        // two-sided
	Exact    bool    `json:"exact"`    // P is exact: ten points or fewer, no ties
}

// theilSen fits the median slope, with limits at 1 − alpha. Pairs on the same
// day are left out. With no pair left the slope is zero and its limits infinite.
func theilSen(points []Point, alpha float64) Slope {
	out := Slope{Low: math.Inf(-1), High: math.Inf(1)}
	if len(points) == 0 {
		return out
	}
	first := slices.MinFunc(points, func(a, b Point) int { return a.On.Compare(b.On) }).On
	var slopes, days, values []float64
	for i, p := range points {
		days = append(days, float64(p.On.Sub(first)))
		values = append(values, p.Value)
		for _, q := range points[:i] {
			if dt := p.On.Sub(q.On); dt != 0 {
				slopes = append(slopes, (p.Value-q.Value)/float64(dt))
			}
		}
	}
	if out.Pairs = len(slopes); out.Pairs == 0 {
		out.Intercept = median(values)
		return out
	}
	slices.Sort(slopes)
	out.Slope = median(slopes)
	out.Intercept = median(values) - out.Slope*median(days)
	half := normalQuantile(1-alpha/2) * math.Sqrt(kendallVariance(len(points), values, days))
	low := int(math.Round((float64(out.Pairs)-half)/2)) - 1
	high := int(math.Round((float64(out.Pairs) + half) / 2))
	if low >= 0 && high < len(slopes) {
		out.Low, out.High = slopes[low], slopes[high]
	}
	return out
}

// mannKendall tests whether the values rise or fall with time. Points of the
// same day count as tied in time.
func mannKendall(points []Point) Kendall {
	var k Kendall
	sorted := slices.Clone(points)
	slices.SortStableFunc(sorted, func(a, b Point) int { return a.On.Compare(b.On) })
	ties := false
	var values, days []float64
	for i, p := range sorted {
		values, days = append(values, p.Value), append(days, float64(p.On.Sub(sorted[0].On)))
		for _, q := range sorted[:i] {
			if p.On == q.On {
				ties = true
				continue
			}
			s := cmp.Compare(p.Value, q.Value)
			ties = ties || s == 0
			k.S += s
		}
	}
	k.Variance = kendallVariance(len(points), values, days)
	if k.Variance > 0 && k.S != 0 {
		k.Z = (float64(k.S) - math.Copysign(1, float64(k.S))) / math.Sqrt(k.Variance)
	}
	k.P = math.Erfc(math.Abs(k.Z) / math.Sqrt2)
	if !ties && len(points) <= 10 {
		k.Exact, k.P = true, kendallExact(len(points), k.S)
	}
	return k
}

// kendallVariance is the variance of S, with the usual terms for ties in value
// and in time.
func kendallVariance(n int, values, days []float64) float64 {
	f := func(t float64) float64 { return t * (t - 1) * (2*t + 5) }
	g := func(t float64) float64 { return t * (t - 1) }
	h := func(t float64) float64 { return t * (t - 1) * (t - 2) }
	var fv, fd, gv, gd, hv, hd float64
	for _, t := range tieSizes(values) {
		fv, gv, hv = fv+f(t), gv+g(t), hv+h(t)
	}
	for _, t := range tieSizes(days) {
		fd, gd, hd = fd+f(t), gd+g(t), hd+h(t)
	}
	m := float64(n)
	v := (f(m) - fv - fd) / 18
	if n > 1 {
		v += gv * gd / (2 * m * (m - 1))
	}
	if n > 2 {
		v += hv * hd / (9 * m * (m - 1) * (m - 2))
	}
	return math.Max(0, v)
}

func tieSizes(values []float64) []float64 {
	count := map[float64]float64{}
	for _, v := range values {
		count[v]++
	}
	var out []float64
	for _, n := range count {
		out = append(out, n)
	}
	return out
}

// kendallExact is the chance of an S at least that far from zero among all
// orders of n different values, counted by the number of inversions.
func kendallExact(n, s int) float64 {
	ways := []float64{1}
	for k := 2; k <= n; k++ {
		next := make([]float64, len(ways)+k-1)
		for i, w := range ways {
			for j := range k {
				next[i+j] += w
			}
		}
		ways = next
	}
	pairs := n * (n - 1) / 2
	var all, far float64
	for inversions, w := range ways {
		all += w
		if abs(pairs-2*inversions) >= abs(s) {
			far += w
		}
	}
	return far / all
}

// Trend is what the points say: nothing where they do not carry it.
type Trend struct {
	Points  []Point `json:"points"`
	Slope   Slope   `json:"slope"`
	Test    Kendall `json:"test"`
	Carries bool    `json:"carries"` // five points or more and p below 0.05
}

// trendPoints is the least number of points that a trend is read from: with
// four, no order of the values can reach p < 0.05.
const trendPoints = 5

// trendAlpha is the chance at which a trend is read from points that have none,
// and at which the true slope lies outside the limits.
const trendAlpha = 0.05

// TrendOf fits and tests the points; they need not be in order.
func TrendOf(points []Point) Trend {
	sorted := slices.Clone(points)
	slices.SortStableFunc(sorted, func(a, b Point) int { return a.On.Compare(b.On) })
	t := Trend{Points: sorted, Slope: theilSen(sorted, trendAlpha), Test: mannKendall(sorted)}
	t.Carries = len(sorted) >= trendPoints && t.Test.P < trendAlpha
	return t
}

// Says tells the trend in words, "falling since 3 May 2025, about 1.5 bars a
// week; 8 inspections", or says that there is none to be read.
func (t Trend) Says(unit string) string {
	n := len(t.Points)
	switch {
	case n < trendPoints:
		return fmt.Sprintf("too few values for a trend (%d, it takes %d)", n, trendPoints)
	case !t.Carries:
		return fmt.Sprintf("no trend to be read; %d inspections since %s", n, longDay(t.Points[0].On))
	}
	word := "rising"
	if t.Test.S < 0 {
		word = "falling"
	}
	weekly := math.Abs(t.Slope.Slope) * 7
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Sprintf("%s since %s, about %s%s a week; %d inspections", word, longDay(t.Points[0].On), amount(weekly), unit, n)
}

// Explain shows the making of the trend.
func (t Trend) Explain(what, unit string) Explanation {
	e := Explanation{What: "trend of " + what, Result: t.Says(unit),
		Formula: "slope: median of the slopes of all pairs (Theil–Sen), limits by Sen; test: Mann–Kendall, two-sided",
		From:    from("SEN68", "GILBERT87"),
		Inputs: []Input{
			{"slope a week", fmt.Sprintf("%s (%s to %s)", amount(7*t.Slope.Slope), amount(7*t.Slope.Low), amount(7*t.Slope.High)), ""},
			{"S, p", fmt.Sprintf("%d, %.3f", t.Test.S, t.Test.P), ""}}}
	for _, p := range t.Points {
		e.Inputs = append(e.Inputs, Input{"value", amount(p.Value), longDay(p.On)})
	}
	return e
}

func median(values []float64) float64 {
	s := slices.Sorted(slices.Values(values))
	n := len(s)
	if n == 0 {
		return 0
	}
	return (s[(n-1)/2] + s[n/2]) / 2
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}

// normalQuantile is the value below which the standard normal distribution has
// the share p.
func normalQuantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

// MarshalJSON writes limits that do not exist as null.
func (s Slope) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Slope     float64  `json:"slope"`
		Low       *float64 `json:"low"`
		High      *float64 `json:"high"`
		Intercept float64  `json:"intercept"`
		Pairs     int      `json:"pairs"`
	}{s.Slope, finite(s.Low), finite(s.High), s.Intercept, s.Pairs})
}
