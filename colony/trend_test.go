package colony

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/combin"
	"pgregory.net/rapid"
)

// The exact chance of S is counted against every order of the values.
func TestKendallExactAgainstAllOrders(t *testing.T) {
	for n := 2; n <= 6; n++ {
		counts := map[int]int{}
		orders := combin.Permutations(n, n)
		for _, order := range orders {
			values := make([]float64, n)
			for i, v := range order {
				values[i] = float64(v)
			}
			counts[mannKendall(series(nil, values)).S]++
		}
		for s := range counts {
			far := 0
			for other, c := range counts {
				if abs(other) >= abs(s) {
					far += c
				}
			}
			if got, want := kendallExact(n, s), float64(far)/float64(len(orders)); math.Abs(got-want) > 1e-12 {
				t.Errorf("n %d, S %d: %v, want %v", n, s, got, want)
			}
		}
	}
}

// The variance of S with ties in value and in time is the mean of S² over every
// order of the values.
func TestKendallVarianceAgainstAllOrders(t *testing.T) {
	for _, c := range []struct {
		days   []int
		values []float64
	}{
		{[]int{0, 1, 2, 3, 4, 5}, []float64{1, 2, 3, 4, 5, 6}},
		{[]int{0, 1, 2, 3, 4, 5}, []float64{1, 1, 2, 2, 2, 3}},
		{[]int{0, 0, 2, 3, 3, 3}, []float64{1, 2, 3, 4, 5, 6}},
		{[]int{0, 0, 2, 3, 3, 3}, []float64{1, 1, 2, 2, 2, 3}},
	} {
		n, squares := len(c.values), 0.0
		orders := combin.Permutations(n, n)
		for _, order := range orders {
			values := make([]float64, n)
			for i, v := range order {
				values[i] = c.values[v]
			}
			s := float64(mannKendall(series(c.days, values)).S)
			squares += s * s
		}
		if got, want := mannKendall(series(c.days, c.values)).Variance, squares/float64(len(orders)); math.Abs(got-want) > 1e-9 {
			t.Errorf("days %v, values %v: variance %v, over all orders %v", c.days, c.values, got, want)
		}
	}
}

// S over the number of pairs is Kendall's tau, which gonum computes too.
func TestKendallAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 25).Draw(t, "n")
		values := rapid.SliceOfNDistinct(rapid.Float64Range(-50, 50), n, n, rapid.ID[float64]).Draw(t, "values")
		at := make([]float64, n)
		for i := range at {
			at[i] = float64(i)
		}
		k := mannKendall(series(nil, values))
		if tau := stat.Kendall(at, values, nil); math.Abs(float64(k.S)/float64(n*(n-1)/2)-tau) > 1e-9 {
			t.Fatalf("S %d of %d values, tau %v", k.S, n, tau)
		}
		if k.P < 0 || k.P > 1 {
			t.Fatalf("p %v", k.P)
		}
	})
}

func TestTheilSenProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 20).Draw(t, "n")
		slope := rapid.Float64Range(-5, 5).Draw(t, "slope")
		days := rapid.SliceOfNDistinct(rapid.IntRange(0, 400), n, n, rapid.ID[int]).Draw(t, "days")
		values := make([]float64, n)
		for i, d := range days {
			values[i] = 3 + slope*float64(d)
		}
		line := theilSen(series(days, values), trendAlpha)
		if math.Abs(line.Slope-slope) > 1e-9 {
			t.Fatalf("on a line of slope %v: %v", slope, line.Slope)
		}
		if n >= 8 {
			// One wild value does not move a median slope far from a line.
			values[n/2] += 1e6
			if wild := theilSen(series(days, values), trendAlpha); math.Abs(wild.Slope-slope) > 1e-6 {
				t.Fatalf("one outlier in %d moved %v to %v", n, slope, wild.Slope)
			}
		}
		if line.Low > line.Slope+1e-9 || line.High < line.Slope-1e-9 {
			t.Fatalf("limits %v to %v do not hold %v", line.Low, line.High, line.Slope)
		}
	})
}

func TestTrendSays(t *testing.T) {
	fall := series([]int{0, 7, 14, 21, 28, 35, 42, 49}, []float64{12, 11, 9.5, 8, 6.5, 5, 3, 2})
	for want, tr := range map[string]Trend{
		"falling since 1 Jan 2025, about 1.5 bars a week; 8 inspections": TrendOf(fall),
		"too few values for a trend (2, it takes 5)":                     TrendOf(fall[:2]),
		"no trend to be read; 6 inspections since 1 Jan 2025":            TrendOf(series(nil, []float64{3, 1, 4, 2, 5, 1.5})),
	} {
		if got := tr.Says("bars"); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	shuffled := slices.Clone(fall)
	slices.Reverse(shuffled)
	if a, b := TrendOf(fall), TrendOf(shuffled); a.Slope != b.Slope || a.Test != b.Test {
		t.Error("the order in which the points are handed in matters")
	}
	if text := TrendOf(fall).Explain("brood", "bars").String(); !strings.Contains(text, "Theil–Sen") || !strings.Contains(text, "Sen 1968") {
		t.Errorf("explanation:\n%s", text)
	}
	for _, points := range [][]Point{nil, fall[:1], {fall[0], fall[0]}} {
		if tr := TrendOf(points); tr.Carries || tr.Test.S != 0 || !math.IsInf(tr.Slope.High, 1) {
			t.Errorf("%d points carry a trend: %+v", len(points), tr)
		}
		if _, err := json.Marshal(TrendOf(points)); err != nil {
			t.Errorf("%d points: %v", len(points), err)
		}
	}
}
