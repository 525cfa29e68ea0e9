package colony

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"

	"pgregory.net/rapid"
)

// anyPaths are leaves of every kind that the arithmetic reads.
var anyPaths = func() []string {
	out := []string{"queen.seen", "queen.virgin", "queen.year", "queen.colour", "queenright", "strength.bars_of_bees", "stores.word",
		"mites.method", "mites.count", "mites.days", "mites.bees", "mites.cells", "follower.bar", "bars_total", "weight_kg", "entrance",
		"temper.stings", "temper.score", "weather.sky", "brood_pattern"}
	for _, what := range Keys("contents") {
		out = append(out, "contents."+what, "contents."+what+".bars", "contents."+what+".bars_max")
		for _, bar := range []int{1, 4, 60} {
			at := fmt.Sprintf("bars.%d.%s", bar, what)
			out = append(out, at, at+".cover", at+".amount", at+".side", at+".pattern")
		}
	}
	for _, bar := range []int{1, 4, 60} {
		for _, leaf := range []string{"drawn", "size", "width_mm", "depth_mm", "length_mm"} {
			out = append(out, fmt.Sprintf("bars.%d.comb.%s", bar, leaf))
		}
		out = append(out, fmt.Sprintf("bars.%d.placed", bar))
	}
	for _, stage := range Keys("queen_cells") {
		out = append(out, "queen_cells."+stage, "queen_cells."+stage+".count", "queen_cells."+stage+".kind", "bars.4.queen_cells."+stage)
	}
	for _, sign := range Keys("signs") {
		out = append(out, "signs."+sign)
	}
	for _, do := range Keys("actions") {
		out = append(out, "actions."+do, "actions."+do+".count", "actions."+do+".to", "actions."+do+".what", "plans."+do, "plans."+do+".due")
	}
	for _, event := range Keys("earlier") {
		out = append(out, "earlier."+event, "earlier."+event+".on")
	}
	return out
}()

// anyInspection holds any leaves at all, also numbers far outside the
// plausible, which a record can hold.
func anyInspection(t *rapid.T) Inspection {
	ins := Inspection{Hive: "3"}
	if rapid.IntRange(0, 20).Draw(t, "timed") > 0 {
		ins.At = day("2020-01-01").Time().Add(time.Duration(rapid.IntRange(0, 24*900).Draw(t, "hours")) * time.Hour)
	}
	for range rapid.IntRange(0, 25).Draw(t, "leaves") {
		path := rapid.SampledFrom(anyPaths).Draw(t, "path")
		f, err := FieldOf(path)
		if err != nil {
			t.Fatal(err)
		}
		value := ""
		switch f.Kind {
		case Bool, Word:
			value = rapid.SampledFrom(f.Values).Draw(t, "word")
		case Int:
			value = fmt.Sprint(rapid.IntRange(-5, 100_000).Draw(t, "int"))
		case Number:
			value = fmt.Sprint(rapid.Float64Range(-10, 1e5).Draw(t, "number"))
		case Day:
			value = day("2019-12-01").AddDays(rapid.IntRange(0, 1000).Draw(t, "day")).String()
		default:
			value = rapid.SampledFrom([]string{"syrup", "queen cell", "\x1b[31m", "virgin"}).Draw(t, "text")
		}
		if err := Set(&ins, path, value); err != nil {
			t.Fatal(err)
		}
	}
	return ins
}

// Whatever a record holds, the arithmetic neither fails nor contradicts
// itself: best values lie in their ranges, outer spans hold usual ones,
// identifiers differ, and everything prints and marshals.
func TestAnyRecordIsReckonedWith(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := rapid.SliceOfN(rapid.Custom(anyInspection), 0, 6).Draw(t, "history")
		slices.SortFunc(history, func(a, b Inspection) int { return a.At.Compare(b.At) })
		today := day("2020-01-01").AddDays(rapid.IntRange(0, 1000).Draw(t, "today"))
		a := Appraise(history, today, DefaultSettings(), nil)
		if _, err := json.Marshal(a); err != nil {
			t.Fatal(err)
		}
		for _, e := range []Estimate{a.Brood.Capped, a.Laying, a.Emerging, a.Adults, a.Comb, a.Food.Honey, a.Gap, a.Weeks, a.Space.Rate} {
			if e.Known() && e.Bounded() && !e.Contains(e.Best) {
				t.Fatalf("%s: %v", e.Why.What, e.Range)
			}
		}
		checkWindows(t, a)
		ids := map[string]bool{}
		for _, d := range Due(history, today, DefaultSettings(), nil) {
			if ids[d.ID] || d.On.IsZero() {
				t.Fatalf("item %+v: twice, or without a day", d)
			}
			ids[d.ID] = true
			if strings.ContainsFunc(d.String()+d.ID, unicode.IsControl) {
				t.Fatalf("control characters in %q", d.String())
			}
		}
		for _, m := range Measures {
			for _, s := range m.Series(history, DefaultSettings()) {
				if !s.Value.Contains(s.Value.Best) {
					t.Fatalf("%s: %v", m.Name, s.Value)
				}
			}
		}
		for _, e := range a.Explanations() {
			if strings.Contains(e.String(), "%!") {
				t.Fatalf("badly printed: %s", e)
			}
		}
	})
}

func checkWindows(t *rapid.T, a Appraisal) {
	windows := []Window{a.Queen.LastEgg, a.Space.FullOn}
	if a.Queen.Calendar != nil {
		for _, m := range a.Queen.Calendar.Milestones {
			windows = append(windows, m.When)
		}
	}
	for _, w := range windows {
		if !w.IsZero() && (!nested(w.Usual, w.Outer) || w.Usual.From.Compare(w.Usual.To) > 0) {
			t.Fatalf("window %+v", w)
		}
	}
}
