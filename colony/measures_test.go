package colony

import (
	"slices"
	"testing"
)

func TestMeasures(t *testing.T) {
	full := DefaultBox.FullComb().Best
	for name, c := range map[string]struct {
		measure string
		leaves  []string
		want    float64
		known   bool
	}{
		"brood bars counted":        {"brood_bars", []string{"bars.3.eggs=yes", "bars.4.capped_brood=yes", "bars.4.eggs=yes", "bars.5.honey=yes"}, 2, true},
		"brood bars said":           {"brood_bars", []string{"contents.capped_brood=yes", "contents.capped_brood.bars=5"}, 5, true},
		"no brood is none":          {"brood_bars", noBrood, 0, true},
		"brood not spoken of":       {"brood_bars", []string{"bars.5.honey=yes"}, 0, false},
		"capped area":               {"capped_area", []string{"bars.4.comb.drawn=1", "bars.4.capped_brood=yes", "bars.4.capped_brood.cover=0.5"}, full, true},
		"no capped brood":           {"capped_area", []string{"contents.capped_brood=no"}, 0, true},
		"open brood not spoken of":  {"open_area", []string{"contents.capped_brood=no"}, 0, false},
		"honey":                     {"honey", []string{"bars.4.comb.drawn=1", "bars.4.capped_honey=yes", "bars.4.capped_honey.cover=1"}, full * 2 * 0.125, true},
		"bars of comb":              {"comb_bars", []string{"bars_total=11"}, 11, true},
		"drawn comb":                {"comb_area", []string{"bars.4.comb.drawn=0.5", "bars.5.comb.drawn=1"}, 3 * full, true},
		"strength":                  {"strength", []string{"strength.bars_of_bees=7.5"}, 7.5, true},
		"temper":                    {"temper", []string{"temper.score=4"}, 4, true},
		"no stings":                 {"stings", []string{"temper.stings=0"}, 0, true},
		"stings not spoken of":      {"stings", []string{"temper.score=4"}, 0, false},
		"mite drop":                 {"mite_drop", []string{"mites.method=drop", "mites.count=20", "mites.days=5"}, 4, true},
		"a wash is no drop":         {"mite_drop", []string{"mites.method=wash", "mites.count=9", "mites.bees=300"}, 0, false},
		"mite share":                {"mite_share", []string{"mites.method=sugar", "mites.count=9", "mites.bees=300"}, 3, true},
		"queen not seen":            {"queen_seen", []string{"queen.seen=no"}, 0, true},
		"queen cells over the bars": {"queen_cells", []string{"queen_cells.cup=yes", "queen_cells.charged=yes", "queen_cells.charged.count=2", "bars.5.queen_cells.capped=yes", "bars.6.queen_cells.torn=yes"}, 3, true},
		"no queen cells":            {"queen_cells", []string{"queen_cells.any=no"}, 0, true},
		"none on one bar":           {"queen_cells", []string{"bars.5.queen_cells.any=no"}, 0, false},
		"temperature":               {"temperature", []string{"weather.temp_c=17.8"}, 17.8, true},
		"weight":                    {"weight", []string{"weight_kg=31"}, 31, true},
	} {
		m, err := MeasureNamed(c.measure)
		if err != nil {
			t.Fatal(err)
		}
		got := m.Series([]Inspection{visit("2025-05-20", c.leaves...)}, DefaultSettings())
		if (len(got) == 1) != c.known {
			t.Errorf("%s: %v, want known %v", name, got, c.known)
		} else if c.known && (abs(int((got[0].Value.Best-c.want)*1e6)) > 0 || got[0].Value.Unit != m.Unit) {
			t.Errorf("%s: %v, want %v %s", name, got[0].Value, c.want, m.Unit)
		}
	}
	if _, err := MeasureNamed("mood"); err == nil {
		t.Error("a measure of mood")
	}
}

func TestGroupBy(t *testing.T) {
	var samples []Sample
	for i, on := range []string{"2024-12-30", "2025-01-05", "2025-01-06", "2025-02-28", "2025-03-01", "2025-12-01"} {
		samples = append(samples, Sample{day(on), Exactly(float64(i), unitBars), 1})
	}
	for span, want := range map[string][]string{
		"week":   {"2024-12-30 0.5 2", "2025-01-06 2 1", "2025-02-24 3.5 2", "2025-12-01 5 1"},
		"month":  {"2024-12-01 0 1", "2025-01-01 1.5 2", "2025-02-01 3 1", "2025-03-01 4 1", "2025-12-01 5 1"},
		"season": {"2024-12-01 1.5 4", "2025-03-01 4 1", "2025-12-01 5 1"},
	} {
		groups, err := GroupBy(samples, span)
		var got []string
		for _, g := range groups {
			got = append(got, g.On.String()+" "+amount(g.Value.Best)+" "+amount(float64(g.Count)))
		}
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("by %s: %q, want %q", span, got, want)
		}
	}
	if _, err := GroupBy(samples, "fortnight"); err == nil {
		t.Error("gathered by fortnight")
	}
}

// A share that was not said makes no trend; a few mites that were counted do.
func TestPointsLeaveOutWhatIsTooVague(t *testing.T) {
	history := []Inspection{
		visit("2025-05-10", "bars.4.capped_brood=yes", "mites.method=drop", "mites.count=1", "mites.days=3"),
		visit("2025-05-20", "bars.4.comb.drawn=1", "bars.4.capped_brood=yes", "bars.4.capped_brood.cover=0.5"),
	}
	for name, want := range map[string]int{"laying": 1, "mite_drop": 1} {
		m, err := MeasureNamed(name)
		if err != nil {
			t.Fatal(err)
		}
		if got := Points(m.Series(history, DefaultSettings())); len(got) != want {
			t.Errorf("%s: %d points, want %d", name, len(got), want)
		}
	}
}
