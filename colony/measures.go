package colony

import (
	"fmt"
	"slices"
	"strconv"
)

// Measure is something of an inspection that can be followed over time.
type Measure struct {
	Name string `json:"name"`
	Unit string `json:"unit"`
	What string `json:"what"` // in words
	of   func(known []Inspection, i int, set Settings) (Range, bool)
}

// Sample is a measure's value on a day, with its range.
type Sample struct {
	On    Date  `json:"on"`
	Value Range `json:"value"`
	Count int   `json:"count"` // inspections that went in
}

// Measures lists what can be followed, in the order in which it is offered.
var Measures = []Measure{
	{"brood_bars", unitBars, "bars with brood", broodBars},
	{"brood_area", unitArea, "brood of all stages, both sides", areaOf("eggs", "open_brood", "capped_brood", "emerging_brood", "brood")},
	{"open_area", unitArea, "open brood, both sides", areaOf("open_brood")},
	{"capped_area", unitArea, "capped brood, both sides", areaOf("capped_brood")},
	{"drone_area", unitArea, "drone brood, both sides", areaOf("drone_brood")},
	{"laying", unitEggs, "eggs a day, from the capped brood", single(func(ins *Inspection, set Settings) Estimate { return layingRate(countBrood(ins, set.Box).Capped) })},
	{"honey", unitKg, "honey and nectar", single(func(ins *Inspection, set Settings) Estimate { return countFood(ins, set.Box).Honey })},
	{"pollen", unitKg, "bee bread", single(func(ins *Inspection, set Settings) Estimate { return countFood(ins, set.Box).Pollen })},
	{"comb_bars", unitBars, "bars of comb in use", combBars},
	{"comb_area", unitArea, "drawn comb, both sides", single(func(ins *Inspection, set Settings) Estimate { return drawnComb(ins, set.Box) })},
	{"building", unitBuilding, "comb drawn since the inspection before", building},
	{"strength", unitBars, "bars covered with bees", leafNumber("strength.bars_of_bees")},
	{"temper", "of 4", "temper, 4 gentle to 1 stinging", leafNumber("temper.score")},
	{"stings", "stings", "stings taken", leafNumber("temper.stings")},
	{"mite_drop", unitDrop, "mites dropped", mitesBy("drop")},
	{"mite_share", unitPercent, "mites per 100 bees", mitesBy("wash", "sugar")},
	{"queen_seen", "of 1", "queen seen, 1, or not seen, 0", leafTruth("queen.seen")},
	{"queen_cells", "cells", "queen cells with something in them", queenCellCount},
	{"temperature", "°C", "temperature at the hive", leafNumber("weather.temp_c")},
	{"weight", unitKg, "hive on the scale", leafNumber("weight_kg")},
}

// MeasureNamed finds a measure, or says which there are.
func MeasureNamed(name string) (Measure, error) {
	for _, m := range Measures {
		if m.Name == name {
			return m, nil
		}
	}
	return Measure{}, fmt.Errorf("no measure %q: there are %s", name, namesOf(Measures, func(m Measure) string { return m.Name }))
}

// Series is the measure over one hive's inspections, sorted by time.
// Inspections that do not tell it, or are without a time, are left out; nothing
// is filled in.
func (m Measure) Series(history []Inspection, set Settings) []Sample {
	var out []Sample
	if len(history) > 0 {
		set = set.forHive(history[0].Hive)
	}
	for i := range history {
		if history[i].At.IsZero() {
			continue
		}
		if r, ok := m.of(history, i, set); ok {
			r.Unit = m.Unit
			out = append(out, Sample{dayOf(&history[i]), r, 1})
		}
	}
	return out
}

// Points are the best values of the samples, for a trend. Values from comb areas
// that are too vague to have one are left out; few mites are a vague rate, but
// they were counted.
func Points(samples []Sample) []Point {
	var out []Point
	for _, s := range samples {
		switch s.Value.Unit {
		case unitEggs, unitKg, unitArea, unitBuilding:
			if s.Value.Vague() {
				continue
			}
		}
		out = append(out, Point{s.On, s.Value.Best})
	}
	return out
}

// GroupBy gathers samples, of one hive or several, by week (from Monday),
// month or season (quarters from March), as the median of their best values
// with the widest ends. A group is dated by its first day; empty ones are left
// out.
func GroupBy(samples []Sample, span string) ([]Sample, error) {
	begin, ok := map[string]func(Date) Date{"week": weekOf, "month": monthOf, "season": quarterOf}[span]
	if !ok {
		return nil, fmt.Errorf("samples are gathered by week, month or season, not by %q", span)
	}
	groups := map[Date][]Sample{}
	for _, s := range samples {
		groups[begin(s.On)] = append(groups[begin(s.On)], s)
	}
	var out []Sample
	for on, group := range groups {
		low, high, count := group[0].Value.Low, group[0].Value.High, 0
		var best []float64
		for _, s := range group {
			low, high, count = min(low, s.Value.Low), max(high, s.Value.High), count+s.Count
			best = append(best, s.Value.Best)
		}
		out = append(out, Sample{on, Between(low, median(best), high, group[0].Value.Unit), count})
	}
	slices.SortFunc(out, func(a, b Sample) int { return a.On.Compare(b.On) })
	return out, nil
}

func weekOf(d Date) Date { return d.AddDays(-(int(d.Weekday()) + 6) % 7) }

func monthOf(d Date) Date { return Date{d.Year, d.Month, 1} }

func quarterOf(d Date) Date { return monthOf(d).AddMonths(-int(d.Month) % 3) }

func single(f func(*Inspection, Settings) Estimate) func([]Inspection, int, Settings) (Range, bool) {
	return func(known []Inspection, i int, set Settings) (Range, bool) {
		e := f(&known[i], set)
		return e.Range, e.Known()
	}
}

func areaOf(kinds ...string) func([]Inspection, int, Settings) (Range, bool) {
	return func(known []Inspection, i int, set Settings) (Range, bool) {
		total, any := Exactly(0, unitArea), false
		for _, what := range kinds {
			if e := set.Box.CombTotal(&known[i], what); e.Known() {
				total, any = total.Plus(e.Range), true
			} else if saidOf(known[i].Content(what)) == denied {
				any = true // denied is none, not unknown
			}
		}
		return total, any
	}
}

// broodBars counts the bars on which brood was seen, or takes the number that
// was said for the hive; brood denied for the hive is none.
func broodBars(known []Inspection, i int, _ Settings) (Range, bool) {
	ins := &known[i]
	bars := 0
	for j := range ins.Bars {
		for _, what := range broodWords {
			if c := ins.Bars[j].Content(what); c != nil && c.Present {
				bars++
				break
			}
		}
	}
	if bars > 0 {
		return Exactly(float64(bars), unitBars), true
	}
	said, low, high := false, 0.0, 0.0
	for _, what := range broodWords {
		if c := ins.Content(what); c != nil && c.Present && c.Bars != nil {
			said, low, high = true, max(low, *c.Bars), max(high, *c.Bars)
			if c.BarsMax != nil {
				high = max(high, *c.BarsMax)
			}
		}
	}
	if !said {
		f := factsOf(ins)
		return Exactly(0, unitBars), f.noBrood()
	}
	return Between(low, low, high, unitBars), true
}

func combBars(known []Inspection, i int, _ Settings) (Range, bool) {
	counts := barCounts(known[i : i+1])
	if len(counts) == 0 {
		return Range{}, false
	}
	return Exactly(counts[0].found, unitBars), true
}

func building(known []Inspection, i int, set Settings) (Range, bool) {
	if i == 0 {
		return Range{}, false
	}
	r, ok := colonyBuilding(&known[i-1], &known[i], set.Box)
	return r.Rate.Range, ok
}

func mitesBy(methods ...string) func([]Inspection, int, Settings) (Range, bool) {
	return func(known []Inspection, i int, _ Settings) (Range, bool) {
		r, ok := rateOf(&known[i])
		return r.Rate.Range, ok && slices.Contains(methods, r.Method)
	}
}

// queenCellCount counts queen cells with a bee in them; cups and empty cells
// do not count, and cells of no said number are at least one.
func queenCellCount(known []Inspection, i int, _ Settings) (Range, bool) {
	ins := &known[i]
	total, said := Exactly(0, "cells"), false
	add := func(list []QueenCells, colony bool) {
		for _, c := range list {
			if c.Stage == "cup" || c.Stage == "torn" || c.Stage == "emerged" {
				continue
			}
			said = said || c.Present || colony && c.Stage == "any"
			if c.Present {
				total = total.Plus(cellCount(c))
			}
		}
	}
	add(ins.QueenCells, true)
	for j := range ins.Bars {
		add(ins.Bars[j].QueenCells, false)
	}
	return total, said
}

func cellCount(c QueenCells) Range {
	low := 1.0
	if c.Count != nil {
		low = float64(*c.Count)
	}
	high := low
	if c.CountMax != nil {
		high = float64(*c.CountMax)
	}
	return Between(low, low, high, "cells")
}

func leafNumber(path string) func([]Inspection, int, Settings) (Range, bool) {
	return func(known []Inspection, i int, _ Settings) (Range, bool) {
		text, ok := Get(&known[i], path)
		if !ok {
			return Range{}, false
		}
		v, err := strconv.ParseFloat(text, 64)
		return Exactly(v, ""), err == nil
	}
}

func leafTruth(path string) func([]Inspection, int, Settings) (Range, bool) {
	return func(known []Inspection, i int, _ Settings) (Range, bool) {
		switch v, ok := Get(&known[i], path); {
		case !ok:
			return Range{}, false
		case v == "yes":
			return Exactly(1, ""), true
		}
		return Exactly(0, ""), true
	}
}
