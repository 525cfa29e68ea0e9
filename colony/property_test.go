package colony

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"
	_ "time/tzdata"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func anyRange(t *rapid.T, name string, low, high float64) (Range, float64) {
	a := rapid.Float64Range(low, high).Draw(t, name+" a")
	b := rapid.Float64Range(low, high).Draw(t, name+" b")
	best := rapid.Float64Range(low, high).Draw(t, name+" best")
	r := Between(a, best, b, "")
	at := rapid.Float64Range(0, 1).Draw(t, name+" at")
	return r, math.Min(r.High, r.Low+at*(r.High-r.Low))
}

func TestRangeArithmeticHoldsEveryPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, x := anyRange(t, "a", -100, 100)
		b, y := anyRange(t, "b", -100, 100)
		near := func(r Range, v float64) bool {
			slack := 1e-9 * (1 + math.Abs(v))
			return r.Low-slack <= v && v <= r.High+slack
		}
		for name, c := range map[string]struct {
			r Range
			v float64
		}{"sum": {a.Plus(b), x + y}, "difference": {a.Minus(b), x - y}, "product": {a.Times(b, ""), x * y}, "scaled": {a.Scale(y), x * y},
			"floor": {a.AtLeast(y), math.Max(x, y)}, "ceiling": {a.AtMost(y), math.Min(x, y)}} {
			if !near(c.r, c.v) || !near(c.r, c.r.Best) {
				t.Fatalf("%s of %v and %v: %v does not hold %v or its own best", name, a, b, c.r, c.v)
			}
		}
		if b.Low > 0 || b.High < 0 {
			if q := a.Per(b, ""); !near(q, x/y) {
				t.Fatalf("quotient of %v and %v: %v does not hold %v", a, b, q, x/y)
			}
		} else if a.Per(b, "").Bounded() {
			t.Fatalf("%v ÷ %v is bounded", a, b)
		}
	})
}

func TestAddingDifferentUnitsIsRefused(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("bees were added to kilograms")
		}
	}()
	Exactly(1, unitBees).Plus(Exactly(1, unitKg))
}

func TestRangePrints(t *testing.T) {
	for want, r := range map[string]Range{
		"8.89 dm²":                        Exactly(8.89, unitArea),
		"8.2 dm² (7.1 to 8.89)":           Between(7.1, 8.2, 8.889, unitArea),
		"1,110 bees":                      Exactly(1111, unitBees),
		"17,000 bees (12,300 to 124,000)": Between(12345, 17000, 123567, unitBees),
		"9 to 19,400 cells, no closer":    Between(9.02, 2970, 19432, unitCells),
		"0 kg (0 to 3)":                   Between(0, 0, 3, unitKg),
		"3% (1.2 to 6.46)":                Between(1.2, 3, 6.46, "%"),
		"20 days (12 to no limit)":        Between(12, 20, math.Inf(1), unitDays),
		"-5 kg":                           Exactly(-5, unitKg),
		"0":                               Exactly(0, ""),
		"0 kg":                            Exactly(-0.004, unitKg),
		"0.01 kg":                         Exactly(0.005, unitKg),
		"999 cells":                       Exactly(999.4, unitCells),
		"124 g (99.6 to 200)":             Between(99.6, 124, 200, "g"),
	} {
		if got := r.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestWilsonProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 2000).Draw(t, "n")
		k := rapid.IntRange(0, n).Draw(t, "k")
		low, high := wilsonInterval(k, n)
		if p := float64(k) / float64(n); low < 0 || high > 1 || low-1e-12 > p || p > high+1e-12 {
			t.Fatalf("%d of %d: %v to %v", k, n, low, high)
		}
		if k < n {
			if l2, h2 := wilsonInterval(k+1, n); l2 < low || h2 < high {
				t.Fatalf("%d of %d: not monotonic", k, n)
			}
		}
		if l2, h2 := wilsonInterval(3*k, 3*n); h2-l2 > high-low+1e-12 {
			t.Fatalf("%d of %d: a larger sample widened the interval", k, n)
		}
		// The exact interval of Clopper and Pearson, from the beta distribution, is
		// seldom narrower and never far off.
		if k > 0 && k < n {
			exactLow := distuv.Beta{Alpha: float64(k), Beta: float64(n - k + 1)}.Quantile(0.025)
			if math.Abs(exactLow-low) > 0.25/math.Sqrt(float64(n)) {
				t.Fatalf("%d of %d: low %v, exact %v", k, n, low, exactLow)
			}
		}
	})
}

// Byar's limits against the exact ones from the gamma distribution.
func TestPoissonAgainstExact(t *testing.T) {
	for k := 1; k < 2000; k += 1 + k/10 {
		low, high := poissonInterval(k)
		exactLow := distuv.Gamma{Alpha: float64(k), Beta: 1}.Quantile(0.025)
		exactHigh := distuv.Gamma{Alpha: float64(k + 1), Beta: 1}.Quantile(0.975)
		slack := 0.02 * exactLow
		if k < 4 {
			slack = 0.02
		}
		if math.Abs(high/exactHigh-1) > 0.002 || math.Abs(low-exactLow) > slack {
			t.Errorf("%d: %.3f to %.3f, exact %.3f to %.3f", k, low, high, exactLow, exactHigh)
		}
		if low > float64(k) || high < float64(k) {
			t.Errorf("%d not within its limits", k)
		}
	}
	if _, high := poissonInterval(0); math.Abs(high-distuv.Gamma{Alpha: 1, Beta: 1}.Quantile(0.975)) > 1e-3 {
		t.Errorf("zero: %v", high)
	}
}

func TestNormalQuantileAgainstGonum(t *testing.T) {
	for _, p := range []float64{0.001, 0.025, 0.5, 0.9, 0.975, 0.9999} {
		if got, want := normalQuantile(p), distuv.UnitNormal.Quantile(p); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v: %v, want %v", p, got, want)
		}
	}
}

// The calendar moves with the day: what is said of a day is said of every
// other, shifted, over ends of months and years and over leap days.
func TestCalendarsShiftWithTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := Date{2025, time.May, 20}
		shift := rapid.IntRange(-4000, 4000).Draw(t, "shift")
		moved := base.AddDays(shift)
		same := func(name string, a, b Window) {
			for _, d := range [][2]Date{{a.Usual.From, b.Usual.From}, {a.Usual.To, b.Usual.To}, {a.Outer.From, b.Outer.From}, {a.Outer.To, b.Outer.To}} {
				if d[1].Sub(d[0]) != shift {
					t.Fatalf("%s moved by %d days, want %d", name, d[1].Sub(d[0]), shift)
				}
			}
			if a.Outer.From.Compare(a.Usual.From) > 0 || a.Outer.To.Compare(a.Usual.To) < 0 {
				t.Fatalf("%s: outer %s does not hold usual %s", name, a.Outer, a.Usual)
			}
		}
		for _, what := range broodWords {
			a, _ := laidWindow(what, base)
			b, _ := laidWindow(what, moved)
			same(what, a, b)
		}
		for _, stage := range []string{"charged", "capped", "any", "emerged"} {
			a, _ := calendarFromCell(stage, "swarm", base)
			b, _ := calendarFromCell(stage, "swarm", moved)
			for i := range a.Milestones {
				same(stage+" "+a.Milestones[i].Name, a.Milestones[i].When, b.Milestones[i].When)
			}
		}
		for _, what := range []string{"mated", "virgin", "cell"} {
			a, b := calendarFromGift(what, base), calendarFromGift(what, moved)
			for i := range a.Milestones {
				same(what+" "+a.Milestones[i].Name, a.Milestones[i].When, b.Milestones[i].When)
			}
		}
	})
}

// An inspection belongs to the civil day on which it was made, wherever that
// was and whether or not the clocks changed in between.
func TestCivilDaysIgnoreZonesAndSummerTime(t *testing.T) {
	want := judgeQueen([]Inspection{visit("2025-03-28", "bars.4.eggs=yes"), visit("2025-04-02", "contents.eggs=no")}, day("2025-04-02"))
	for _, zone := range []string{"Europe/London", "America/Los_Angeles", "Australia/Sydney", "Pacific/Kiritimati"} {
		place, err := time.LoadLocation(zone)
		if err != nil {
			t.Fatal(err)
		}
		for _, hour := range []int{0, 23} {
			a, b := visit("2025-03-28", "bars.4.eggs=yes"), visit("2025-04-02", "contents.eggs=no")
			a.At = time.Date(2025, 3, 28, hour, 30, 0, 0, place)
			b.At = time.Date(2025, 4, 2, hour, 30, 0, 0, place)
			got := judgeQueen([]Inspection{a, b}, day("2025-04-02"))
			if got.LastEgg != want.LastEgg || got.State != want.State || got.ExpectBy != want.ExpectBy {
				t.Errorf("%s at %d:30: %s, %s, want %s, %s", zone, hour, got.State, got.LastEgg, want.State, want.LastEgg)
			}
		}
	}
}

// denials are leaves that deny, to be added where nothing is said.
var denials = []struct{ path, value string }{
	{"contents.eggs", "no"}, {"contents.open_brood", "no"}, {"contents.capped_brood", "no"}, {"contents.drone_brood", "no"},
	{"queen.seen", "no"}, {"queen_cells.any", "no"}, {"queenright", "no"}, {"signs.laying_worker", "no"},
}

var showings = []struct{ path, value string }{
	{"contents.eggs", "yes"}, {"contents.open_brood", "yes"}, {"contents.capped_brood", "yes"}, {"contents.drone_brood", "yes"}, {"queen.seen", "yes"},
}

// someHistory is part of a simulated season, with the sequence of visits cut
// short at random.
func someHistory(t *rapid.T) []Inspection {
	seed := rapid.Uint64Range(0, 1<<20).Draw(t, "seed")
	visits := newSimColony(rand.New(rand.NewPCG(seed, 7))).visits()
	n := rapid.IntRange(1, len(visits)).Draw(t, "visits")
	var out []Inspection
	for _, v := range visits[:n] {
		out = append(out, v.ins)
	}
	return out
}

// silent reports whether the inspection says nothing of what the leaf tells.
func silent(ins *Inspection, path string) bool {
	f := factsOf(ins)
	switch path {
	case "queen.seen":
		return ins.Queen == nil
	case "queen_cells.any":
		return len(f.cells) == 0
	case "queenright":
		return ins.Queenright == nil
	case "signs.laying_worker":
		return f.layers == unsaid
	}
	return f.brood[path[len("contents."):]] == unsaid
}

func TestDenialNeverMakesAStateSurer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := someHistory(t)
		today := dayOf(&history[len(history)-1]).AddDays(rapid.IntRange(0, 20).Draw(t, "later"))
		before := judgeQueen(history, today)
		i := rapid.IntRange(0, len(history)-1).Draw(t, "which")
		d := rapid.SampledFrom(denials).Draw(t, "denial")
		if !silent(&history[i], d.path) {
			return
		}
		more := append([]Inspection{}, history...)
		more[i] = clone(more[i])
		if err := Set(&more[i], d.path, d.value); err != nil {
			t.Fatal(err)
		}
		after := judgeQueen(more, today)
		if after.Sureness > before.Sureness {
			t.Fatalf("%s=%s on visit %d of %d: %q (%s) became %q (%s)", d.path, d.value, i+1, len(history), before.State, before.Sureness, after.State, after.Sureness)
		}
	})
}

// The last egg is dated no less closely for one more observation, as long as
// the observations do not contradict one another.
func TestMoreEvidenceNeverWidensTheLastEgg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := someHistory(t)
		today := dayOf(&history[len(history)-1])
		before := judgeQueen(history, today)
		i := rapid.IntRange(0, len(history)-1).Draw(t, "which")
		leaf := rapid.SampledFrom(append(denials[:4:4], showings...)).Draw(t, "leaf")
		if !silent(&history[i], leaf.path) {
			return
		}
		more := append([]Inspection{}, history...)
		more[i] = clone(more[i])
		if err := Set(&more[i], leaf.path, leaf.value); err != nil {
			t.Fatal(err)
		}
		after := judgeQueen(more, today)
		if before.LastEgg.IsZero() || before.AsOf != after.AsOf {
			return
		}
		if after.LastEgg.Outer.Days() > before.LastEgg.Outer.Days() {
			t.Fatalf("%s=%s: outer %s became %s", leaf.path, leaf.value, before.LastEgg.Outer, after.LastEgg.Outer)
		}
		if !nested(after.LastEgg.Usual, before.LastEgg.Usual) && !contradicts(before.LastEgg.Usual, &more[i], leaf.path, leaf.value, today) {
			t.Fatalf("%s=%s: usual %s became %s", leaf.path, leaf.value, before.LastEgg.Usual, after.LastEgg.Usual)
		}
	})
}

func nested(in, out DateRange) bool {
	return in.From.Compare(out.From) >= 0 && in.To.Compare(out.To) <= 0
}

// contradicts reports whether a new leaf leaves nothing of what was known:
// brood laid after its end, or nothing laid since before its beginning.
func contradicts(known DateRange, ins *Inspection, path, value string, today Date) bool {
	f := factsOf(ins)
	if value == "no" {
		until := laidUntil(f.on, f.brood["eggs"] == denied, f.brood["open_brood"] == denied, f.brood["capped_brood"] == denied)
		return f.on == today && until.Compare(known.From) < 0
	}
	for _, what := range broodWords {
		if w, _ := laidWindow(what, f.on); f.brood[what] == shown && w.Usual.From.Compare(known.To) > 0 {
			return true
		}
	}
	return false
}
