package colony

import (
	"math"
	"testing"
	"time"
)

func TestBuilding(t *testing.T) {
	full := DefaultBox.FullComb()
	placed := visit("2025-05-20", "bars.7.placed=2025-05-12", "bars.7.comb.drawn=0.5", "bars.8.placed=2025-05-20", "bars.8.comb.drawn=0")
	rates := barBuilding(&placed, DefaultBox)
	if len(rates) != 1 || rates[0].Bar != 7 || math.Abs(rates[0].Rate.Best-full.Best/8) > 1e-9 {
		t.Errorf("half a comb, both sides, in eight days: %+v", rates)
	}
	// Combs about 5 by 6 inches on three bars, five days after the bees were put
	// in (deweysbees.blogspot.com, April 2009): 1.8 dm² a day in all.
	swarm := visit("2025-05-20", "bars.1.placed=2025-05-15", "bars.1.comb.width_mm=127", "bars.1.comb.depth_mm=152.4")
	if r := barBuilding(&swarm, DefaultBox); math.Abs(3*r[0].Rate.Best-1.824) > 0.001 {
		t.Errorf("three combs of 5 by 6 inches in five days: %v each", r[0].Rate.Range)
	}
	before := visit("2025-05-20", "bars.7.comb.drawn=0.5", "bars.8.comb.drawn=0")
	after := visit("2025-05-30", "bars.7.comb.drawn=1", "bars.8.comb.drawn=0.5", "bars.9.comb.drawn=1")
	r, ok := colonyBuilding(&before, &after, DefaultBox)
	if !ok || math.Abs(r.Rate.Best-2*full.Best/10) > 1e-9 {
		t.Errorf("a comb in ten days: %v", r.Rate.Range)
	}
	moved := visit("2025-05-20", "bars.7.comb.drawn=0.5", "actions.move_bar=yes")
	if _, ok := colonyBuilding(&moved, &after, DefaultBox); ok {
		t.Error("bars were compared by number after they were moved")
	}
	for name, c := range map[string]struct {
		deed []string
		bars float64 // of the two, that are compared
	}{
		"added behind bar 8":             {[]string{"actions.add_bar=yes", "actions.add_bar.to=8"}, 2},
		"added behind bar 7":             {[]string{"actions.add_bar=yes", "actions.add_bar.to=7"}, 1},
		"added, where was not said":      {[]string{"actions.add_bar=yes", "actions.add_bar.count=2"}, 0},
		"taken behind them":              {[]string{"actions.remove_bar=yes", "actions.remove_bar.bars=9,10"}, 2},
		"the last of them taken":         {[]string{"actions.remove_bar=yes", "actions.remove_bar.bar=8"}, 1},
		"harvested, which was not said":  {[]string{"actions.harvest=yes", "actions.harvest.count=2"}, 0},
		"moved from behind to the front": {[]string{"actions.move_bar=yes", "actions.move_bar.bar=12", "actions.move_bar.to=2"}, 0},
		"split":                          {[]string{"actions.split=yes"}, 0},
		"fed":                            {[]string{"actions.feed=yes"}, 2},
	} {
		was := visit("2025-05-20", append([]string{"bars.7.comb.drawn=0.5", "bars.8.comb.drawn=0"}, c.deed...)...)
		r, ok := colonyBuilding(&was, &after, DefaultBox)
		if ok != (c.bars > 0) || math.Abs(r.Rate.Best-c.bars*full.Best/10) > 1e-9 {
			t.Errorf("%s: %v, want half a comb on each of %v bars", name, r.Rate.Range, c.bars)
		}
	}
	curve := BuildingCurve(DefaultSettings(), []Inspection{before, after}, []Inspection{placed})
	if len(curve) != 1 || curve[0].Month != time.May || curve[0].Count != 2 {
		t.Errorf("curve %+v", curve)
	}
}

func TestSpace(t *testing.T) {
	history := []Inspection{
		visit("2025-05-06", "bars_total=8", "follower.bar=14"),
		visit("2025-05-13", "bars_total=10"),
		visit("2025-05-20", "bars_total=12"),
	}
	s := judgeSpace(history, day("2025-05-20"), QueenEvidence{}, Season{})
	if s.Free.Best != 2 || math.Abs(s.Rate.Best-2.0/7) > 1e-9 {
		t.Fatalf("free %v, rate %v", s.Free.Range, s.Rate.Range)
	}
	if s.FullOn.Usual.From != day("2025-05-27") || s.Give != 4 || !s.Swarmy {
		t.Errorf("full on %s, give %d, swarmy %v", s.FullOn, s.Give, s.Swarmy)
	}
	// One bar in five days is 2.8 in a fortnight: three are given.
	slow := judgeSpace([]Inspection{visit("2025-05-15", "bars_total=8", "follower.bar=14"), visit("2025-05-20", "bars_total=9")}, day("2025-05-20"), QueenEvidence{}, Season{})
	if slow.Give != 3 {
		t.Errorf("give %d bars at a bar in five days, want 3", slow.Give)
	}
	for name, c := range map[string]struct {
		leaves []string
		front  int
	}{
		"moved to a bar":                {[]string{"actions.move_follower=yes", "actions.move_follower.to=18"}, 18},
		"moved back by two":             {[]string{"actions.move_follower=yes", "actions.move_follower.count=2", "actions.move_follower.direction=back"}, 16},
		"moved forward by two":          {[]string{"actions.move_follower=yes", "actions.move_follower.count=2", "actions.move_follower.direction=forward"}, 12},
		"three bars added":              {[]string{"actions.add_bar=yes", "actions.add_bar.count=3"}, 17},
		"one bar taken":                 {[]string{"actions.remove_bar=yes"}, 13},
		"bars added and follower moved": {[]string{"actions.add_bar=yes", "actions.move_follower=yes", "actions.move_follower.to=15"}, 15},
	} {
		h := append(history[:2:2], visit("2025-05-20", append([]string{"bars_total=12"}, c.leaves...)...))
		if got := judgeSpace(h, day("2025-05-20"), QueenEvidence{}, Season{}).Front; got != c.front {
			t.Errorf("%s: %d bars before the follower, want %d", name, got, c.front)
		}
	}
	if s := judgeSpace([]Inspection{visit("2025-05-20", "queen.seen=yes")}, day("2025-05-20"), QueenEvidence{}, Season{}); s.Used.Known() || s.String() != "bars in use: not recorded" {
		t.Errorf("space from nothing: %s", s)
	}
	// Bars that were passed over are not gone; bars that were taken are.
	some := []string{"bars.2.eggs=yes", "bars.3.eggs=yes", "bars.6.honey=yes"}
	for name, c := range map[string]struct {
		deed []string
		then []string
		want float64
	}{
		"nothing taken":                    {nil, some, 11},
		"one taken":                        {[]string{"actions.remove_bar=yes"}, some, 10},
		"three taken and harvested":        {[]string{"actions.remove_bar=yes", "actions.remove_bar.bars=9,10,11", "actions.harvest=yes", "actions.harvest.count=3"}, some, 8},
		"harvested, how many was not said": {[]string{"actions.harvest=yes"}, some, 6},
		"a comb given to another hive":     {[]string{"actions.move_bar=yes", "actions.move_bar.to_hive=pond"}, some, 10},
		"moved within the hive":            {[]string{"actions.move_bar=yes", "actions.move_bar.to=4"}, some, 11},
		"a comb of another hive":           {[]string{"actions.add_bar=yes", "actions.add_bar.from_hive=pond"}, some, 12},
		"half of it split off":             {[]string{"actions.split=yes"}, some, 6},
		"a bare bar behind the last comb":  {nil, append(some[:3:3], "bars.7.comb.size=bare"), 6},
		"cross comb is comb":               {nil, append(some[:3:3], "bars.12.comb.cross=yes"), 12},
	} {
		h := []Inspection{visit("2025-05-10", append([]string{"bars_total=11"}, c.deed...)...), visit("2025-05-20", c.then...)}
		if got := judgeSpace(h, day("2025-05-20"), QueenEvidence{}, Season{}).Used.Best; got != c.want {
			t.Errorf("%s: %v bars in use, want %v", name, got, c.want)
		}
	}
	// Combs that were taken were built all the same: four in ten days.
	built := judgeSpace([]Inspection{visit("2025-05-10", "bars_total=11", "actions.harvest=yes", "actions.harvest.count=3"), visit("2025-05-20", "bars_total=12")},
		day("2025-05-20"), QueenEvidence{}, Season{})
	if math.Abs(built.Rate.Best-0.4) > 1e-9 {
		t.Errorf("%v taken into use, want 0.4 bars a day", built.Rate.Range)
	}
	// A count of last summer says nothing of the room there is now.
	if old := judgeSpace(history, day("2026-05-20"), QueenEvidence{}, Season{}); old.Free.Known() || len(old.Notes) != 1 {
		t.Errorf("a year after the count: free %v, notes %q", old.Free.Range, old.Notes)
	}
	if anew := judgeSpace(append(history[:3:3], visit("2026-05-20", some...)), day("2026-05-20"), QueenEvidence{}, Season{}); anew.Used.Best != 6 {
		t.Errorf("counted anew a year after: %v", anew.Used.Range)
	}
	// A colony that is raising a queen is left in peace.
	if young := judgeSpace(history, day("2025-05-20"), QueenEvidence{State: VirginMating}, Season{}); young.Swarmy || len(young.Notes) > 0 {
		t.Errorf("with a virgin queen: %q", young.Notes)
	}
	// Five free bars at a bar in ten days last 50 days, in thirteen days 65.
	for before, known := range map[string]bool{"2025-05-10": true, "2025-05-07": false} {
		h := []Inspection{visit(before, "bars_total=8", "follower.bar=14"), visit("2025-05-20", "bars_total=9")}
		if s := judgeSpace(h, day("2025-05-20"), QueenEvidence{}, Season{}); s.FullOn.IsZero() == known || s.GiveBy.IsZero() == known {
			t.Errorf("a bar since %s: full on %s, to be given by %s", before, s.FullOn, s.GiveBy)
		}
	}
	full := judgeSpace([]Inspection{visit("2025-05-20", "bars_total=14", "follower.bar=14")}, day("2025-05-21"), QueenEvidence{}, Season{})
	if full.GiveBy != day("2025-05-21") || full.Give == 0 {
		t.Errorf("no free bar: give %d by %s", full.Give, full.GiveBy)
	}
}
