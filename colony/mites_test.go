package colony

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestRateOf(t *testing.T) {
	for name, c := range map[string]struct {
		leaves []string
		rate   float64
		known  bool
	}{
		"drop":                      {[]string{"mites.method=drop", "mites.count=20", "mites.days=5"}, 4, true},
		"wash":                      {[]string{"mites.method=wash", "mites.count=9", "mites.bees=300"}, 3, true},
		"sugar roll":                {[]string{"mites.method=sugar", "mites.count=6", "mites.bees=300"}, 2, true},
		"drone cells":               {[]string{"mites.method=brood", "mites.count=5", "mites.cells=50"}, 10, true},
		"none found":                {[]string{"mites.method=wash", "mites.count=0", "mites.bees=300"}, 0, true},
		"more mites than cells":     {[]string{"mites.method=brood", "mites.count=12", "mites.cells=10"}, 120, true},
		"days not said":             {[]string{"mites.method=drop", "mites.count=20"}, 0, false},
		"bees not said":             {[]string{"mites.method=wash", "mites.count=9"}, 0, false},
		"merely seen":               {[]string{"mites.method=seen", "mites.count=2"}, 0, false},
		"nothing said of any mites": {[]string{"queen.seen=yes"}, 0, false},
	} {
		ins := visit("2025-07-10", c.leaves...)
		r, ok := rateOf(&ins)
		if ok != c.known || math.Abs(r.Rate.Best-c.rate) > 1e-9 || ok && !r.Rate.Contains(c.rate) {
			t.Errorf("%s: %v %v, want %v %v", name, r.Rate.Range, ok, c.rate, c.known)
		}
	}
}

func drop(count, days int, on string) MiteRate {
	return MiteRate{day(on), "drop", dropRate(count, days, "")}
}

func TestGrowth(t *testing.T) {
	g, ok := growthBetween(drop(20, 5, "2025-06-01"), drop(40, 5, "2025-06-22"))
	if !ok || math.Abs(g.Doubling.Best-21) > 1e-9 || !g.Doubling.Contains(21) {
		t.Errorf("from 4 to 8 a day in 21 days: %v", g.Doubling.Range)
	}
	if g, ok := growthBetween(drop(40, 5, "2025-06-01"), drop(20, 5, "2025-06-22")); !ok || g.Doubling.Known() {
		t.Errorf("a fall has a doubling time: %+v", g)
	}
	if _, ok := growthBetween(drop(1, 1, "2025-06-01"), MiteRate{day("2025-06-22"), "wash", shareRate(9, 300, "bees", "")}); ok {
		t.Error("a drop was compared with a wash")
	}
	if g, _ := growthBetween(drop(2, 5, "2025-06-01"), drop(3, 5, "2025-06-22")); g.Doubling.Bounded() {
		t.Errorf("two against three mites bound the doubling time: %v", g.Doubling.Range)
	}
}

func TestDaysUntilLimit(t *testing.T) {
	r := drop(25, 5, "2025-06-01")
	if got := daysUntil(r, 20, Exactly(21, unitDays)); math.Abs(got.Best-42) > 1e-9 {
		t.Errorf("from 5 to 20 a day, doubling in 21 days: %v, want 42", got.Range)
	}
	if got := daysUntil(r, 4, Exactly(21, unitDays)); got.Best != 0 {
		t.Errorf("over the limit already: %v", got.Range)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 200).Draw(t, "mites")
		limit := rapid.Float64Range(0.5, 100).Draw(t, "limit")
		a, b := daysUntil(drop(n, 5, "2025-06-01"), limit, UsualDoubling.Value), daysUntil(drop(n+1, 5, "2025-06-01"), limit, UsualDoubling.Value)
		if b.Best > a.Best || !a.Contains(a.Best) {
			t.Fatalf("%d mites: %v, one more: %v", n, a.Range, b.Range)
		}
	})
}

func TestAgainstLimits(t *testing.T) {
	july := againstLimits(drop(75, 5, "2025-07-10"), "germany", Season{})
	if len(july) != 1 || july[0].Over != "over" {
		t.Errorf("15 a day in July: %+v", july)
	}
	if unsure := againstLimits(drop(10, 1, "2025-07-10"), "germany", Season{}); unsure[0].Over != "perhaps over" {
		t.Errorf("10 mites in one day: %s", unsure[0].Over)
	}
	if none := againstLimits(drop(1, 1, "2025-03-10"), "germany", Season{}); len(none) != 0 {
		t.Errorf("a March limit that the source has not: %+v", none)
	}
	if south := againstLimits(drop(75, 5, "2025-01-10"), "germany", Season{South: true}); len(south) != 1 {
		t.Errorf("southern January is July: %+v", south)
	}
	all := againstLimits(MiteRate{day("2025-08-10"), "wash", shareRate(12, 300, "bees", "")}, "", Season{})
	if len(all) < 3 {
		t.Errorf("a wash in August against all sets: %d verdicts", len(all))
	}
	for _, set := range MiteLimitSets() {
		if set == "" {
			t.Error("a set without a name")
		}
	}
}

func TestMitesFromDrop(t *testing.T) {
	e, ok := mitesFromDrop(drop(117, 1, "2025-08-15"), true)
	if !ok || !e.Contains(3172) {
		t.Errorf("117 overnight: %v, the colony had 3,172", e.Range)
	}
	if _, ok := mitesFromDrop(drop(117, 1, "2025-12-15"), false); ok {
		t.Error("an estimate without brood")
	}
}

// Counts before and after a treatment show what it did, not how mites multiply.
func TestTreatmentBetweenCountsSpoilsTheDoubling(t *testing.T) {
	wash := func(on, count string, leaves ...string) Inspection {
		return visit(on, append([]string{"mites.method=wash", "mites.count=" + count, "mites.bees=300"}, leaves...)...)
	}
	for name, c := range map[string]struct {
		history []Inspection
		known   bool
	}{
		"no treatment":           {[]Inspection{wash("2025-06-01", "3"), wash("2025-07-01", "18")}, true},
		"treated in between":     {[]Inspection{wash("2025-06-01", "3"), visit("2025-06-10", "actions.treat=yes"), wash("2025-07-01", "18")}, false},
		"treated at the first":   {[]Inspection{wash("2025-06-01", "3", "actions.treat=yes"), wash("2025-07-01", "18")}, false},
		"treated before the two": {[]Inspection{visit("2025-05-10", "actions.treat=yes"), wash("2025-06-01", "3"), wash("2025-07-01", "18")}, true},
	} {
		a := Appraise(c.history, day("2025-07-02"), DefaultSettings(), nil)
		if a.Growth == nil || a.Growth.Doubling.Known() != c.known || c.known == strings.Contains(a.Growth.Says, "treatment in between") {
			t.Errorf("%s: %+v", name, a.Growth)
		}
	}
}
