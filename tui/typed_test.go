package tui

import (
	"slices"
	"testing"
	"time"

	"barwise/colony"
)

func TestNumberTyped(t *testing.T) {
	for typed, want := range map[string]float64{"4": 4, "4.5": 4.5, "4,5": 4.5, "four": 4, "half": 0.5, "80%": 0.8, "80 %": 0.8,
		"3/4": 0.75, "a third": 0.333, "full": 1, "-3": -3, "0": 0} {
		if got, ok := numberTyped(typed); !ok || got != want {
			t.Errorf("%q is %v, %v; want %v", typed, got, ok, want)
		}
	}
	for _, typed := range []string{"", "lots", "1/0", "4 5", "NaN", "inf", "1e99", "%"} {
		if got, ok := numberTyped(typed); ok {
			t.Errorf("%q is %v", typed, got)
		}
	}
}

func TestDayAndTimeTyped(t *testing.T) {
	about := time.Date(2026, 5, 12, 16, 0, 0, 0, time.UTC)
	for typed, want := range map[string]string{"2026-05-14": "2026-05-14", "14 may": "2026-05-14", "May 3": "2026-05-03",
		"14.5.": "2026-05-14", "yesterday": "2026-05-13", "+3": "2026-05-15", "-12": "2026-04-30", "29.2.2028": "2028-02-29"} {
		if got, ok := dayTyped(typed, about, evening); !ok || got.String() != want {
			t.Errorf("%q is %v, %v; want %s", typed, got, ok, want)
		}
	}
	for _, typed := range []string{"", "soon", "31.2.2026", "2026-13-01", "+", "+99999"} {
		if got, ok := dayTyped(typed, about, evening); ok {
			t.Errorf("%q is %v", typed, got)
		}
	}
	for typed, want := range map[string]string{"9:30": "2026-05-12T09:30:00Z", "14 may": "2026-05-14T16:00:00Z",
		"14 may 9:30": "2026-05-14T09:30:00Z", "2026-05-14, 09:30": "2026-05-14T09:30:00Z", "2026-05-14T16:00:00Z": "2026-05-14T16:00:00Z"} {
		if got, ok := timeTyped(typed, about, evening); !ok || got.Format(time.RFC3339) != want {
			t.Errorf("%q is %v, %v; want %s", typed, got, ok, want)
		}
	}
}

func TestWordsOfTheTradeOfferTheValue(t *testing.T) {
	for _, c := range []struct {
		path, typed string
		want        string
	}{
		{"bars.4.capped_brood.pattern", "sp", "patchy"},
		{"bars.4.capped_brood.pattern", "pep", "patchy"},
		{"brood_pattern", "tig", "solid"},
		{"temper.score", "gri", ""},
		{"temper.score", "gru", "2"},
		{"strength.word", "boom", "strong"},
		{"stores.word", "ple", "heavy"},
		{"bars.4.comb.size", "none", "bare"},
		{"entrance", "narr", "reduced"},
		{"queen.seen", "y", "yes"},
		{"bars.4.eggs.cover", "80%", "0.8"},
		{"hive", "Orchard", "orchard"},
		{"plans.inspect.due", "+7", "2026-05-21"},
	} {
		f, err := colony.FieldOf(c.path)
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		if all := valuesFor(f, c.typed, &colony.Inspection{At: evening}, evening); len(all) > 0 {
			got = all[0].value
		}
		if got != c.want {
			t.Errorf("%s, %q: %q, want %q", c.path, c.typed, got, c.want)
		}
	}
}

func TestEveryAllowedValueIsOffered(t *testing.T) {
	for _, path := range slices.Concat(singleLeaves, []string{"bars.4.comb.size", "bars.4.eggs.place", "plans.feed.unit"}) {
		f, err := colony.FieldOf(path)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		var offered []string
		for _, v := range valuesFor(f, "", &colony.Inspection{}, evening) {
			offered = append(offered, v.value)
			if err := f.Check(v.value); err != nil {
				t.Error(err)
			}
		}
		for _, v := range f.Values {
			if !slices.Contains(offered, v) {
				t.Errorf("%s does not offer %s", path, v)
			}
		}
	}
}

func TestTradeWordsLeadToAllowedValues(t *testing.T) {
	fields := map[string][]string{"pattern": {"bars.1.eggs.pattern"}, "brood_pattern": {"brood_pattern"}, "amount": {"bars.1.eggs.amount"},
		"side": {"bars.1.eggs.side"}, "place": {"bars.1.eggs.place"}, "size": {"bars.1.comb.size"}, "attached": {"bars.1.comb.attached"},
		"score": {"temper.score"}, "word": {"strength.word", "stores.word"}, "method": {"mites.method"}, "sky": {"weather.sky"},
		"wind": {"weather.wind"}, "entrance": {"entrance"}, "floor": {"floor"}, "kind": {"queen_cells.any.kind"}, "direction": {"actions.move_follower.direction"}}
	for name, values := range tradeWords {
		for value := range values {
			ok := false
			for _, path := range fields[name] {
				f, err := colony.FieldOf(path)
				ok = ok || err == nil && f.Check(value) == nil
			}
			if !ok {
				t.Errorf("%s: %q stands in no field", name, value)
			}
		}
	}
	all := slices.Concat(colony.Keys("contents"), colony.Keys("actions"), colony.Keys("queen_cells"), colony.Keys("signs"))
	for key := range kindWords {
		if !slices.Contains(all, key) {
			t.Errorf("%q is in no list", key)
		}
	}
}

func TestNamesOfLeaves(t *testing.T) {
	for typed, want := range map[string]string{"queen col": "queen.colour", "stores": "stores.word", "bar 4 egg": "bars.4.eggs",
		"bar four comb siz": "bars.4.comb.size", "ants": "signs.ants", "to do feed": "plans.feed", "bees of bars": "strength.bars_of_bees"} {
		if got := leavesNamed(typed); !slices.Contains(got, want) {
			t.Errorf("%q offers %v, want %s", typed, got, want)
		}
	}
	for _, bar := range barLeaves {
		if _, err := colony.FieldOf("bars.1." + bar); err != nil {
			t.Error(err)
		}
	}
}

func TestReplacedWords(t *testing.T) {
	for _, c := range [][4]string{
		{"bear three, eggs", "bar three, eggs", "bear", "bar"},
		{"so bar ate. Eggs", "so bar 8. Eggs", "ate", "8"},
		{"bar 1 eggs", "bar 1 no eggs", "", ""},
		{"bar 1 eggs", "bar 1 eggs", "", ""},
		{"a b c d", "a x c y", "b c d", "x c y"},
	} {
		if heard, said := replaced(c[0], c[1]); heard != c[2] || said != c[3] {
			t.Errorf("%q → %q: %q, %q", c[0], c[1], heard, said)
		}
	}
}

func TestShowValue(t *testing.T) {
	for _, c := range [][3]string{
		{"bars.4.eggs.cover", "0.333", "33.3 %"}, {"bars.4.comb.drawn", "1", "100 %"}, {"bars.4.comb.drawn", "0.07", "7 %"},
		{"temper.score", "4", "4 (gentle)"}, {"temper.score", "9", "9"}, {"plans.feed.due", "2026-05-17", "Sun 17 May 2026"},
		{"at", "2026-05-14T16:00:00Z", "Thu 14 May 2026, 16:00"}, {"bars.4.comb.length_mm", "150", "150 mm"}, {"queen.colour", "green", "green"},
	} {
		if got := showValue(c[0], c[1]); got != c[2] {
			t.Errorf("%s=%s shows %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

func TestFullName(t *testing.T) {
	for path, want := range map[string]string{"bars.4.capped_brood.cover": "bar 4 capped brood cover", "queen.seen": "queen seen",
		"actions.feed#2.what": "done feed (2) what", "contents.eggs": "colony eggs", "bars.7.queen_cells.capped.count": "bar 7 queen cells capped count"} {
		if got := fullName(path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
}
