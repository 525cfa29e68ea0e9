package colony

import (
	"fmt"
	"slices"
	"time"
)

// BuildingRate is comb drawn in a span of days.
type BuildingRate struct {
	Bar  int       `json:"bar,omitempty"` // 0 for the whole colony
	Span DateRange `json:"span"`
	Rate Estimate  `json:"rate"` // dm² of comb a day, both sides
}

const unitBuilding = "dm² a day"

// barBuilding is the comb drawn a day on bars whose putting-in was told with
// the day: area now ÷ days since. Bars placed on the day itself give nothing.
func barBuilding(ins *Inspection, box Box) []BuildingRate {
	var out []BuildingRate
	for i := range ins.Bars {
		bar := &ins.Bars[i]
		days := dayOf(ins).Sub(bar.Placed)
		if bar.Placed.IsZero() || days <= 0 {
			continue
		}
		area := box.CombArea(bar, shortDay(dayOf(ins)))
		if !area.Known() {
			continue
		}
		rate := area.Range.Scale(2 / float64(days))
		rate.Unit = unitBuilding
		e := because(fmt.Sprintf("comb drawn on bar %d", bar.Bar), rate, "2 sides × comb ÷ days since it was put in", []Input{
			{"one side of the comb", area.Range.String(), shortDay(dayOf(ins))},
			{"put in", longDay(bar.Placed), saidOn(ins, fmt.Sprintf("bars.%d.placed", bar.Bar))}})
		e.Why.From = area.Why.From
		out = append(out, BuildingRate{bar.Bar, DateRange{bar.Placed, dayOf(ins)}, e})
	}
	return out
}

// drawnComb is the area of all comb of which something was said, both sides.
func drawnComb(ins *Inspection, box Box) Estimate {
	total, bars := Exactly(0, unitArea), 0
	for i := range ins.Bars {
		if area := box.CombArea(&ins.Bars[i], shortDay(dayOf(ins))); area.Known() {
			total = total.Plus(area.Range.Scale(2))
			bars++
		}
	}
	if bars == 0 {
		return Estimate{}
	}
	e := because("drawn comb", total, "sum over the bars of 2 sides × comb", []Input{{"bars spoken of", amount(float64(bars)), shortDay(dayOf(ins))}})
	e.Why.From = from("TRAPEZOID", "GREGORY03B")
	return e
}

// colonyBuilding is the comb drawn a day between two inspections. Bars that
// were spoken of both times are compared, since a bar that is passed over is
// not gone; after bars were added, removed or moved the numbers no longer name
// the same combs, and nothing is compared.
func colonyBuilding(before, after *Inspection, box Box) (BuildingRate, bool) {
	span := DateRange{dayOf(before), dayOf(after)}
	if span.Days() <= 0 || renumbers(before) {
		return BuildingRate{}, false
	}
	gain, bars := Exactly(0, unitArea), 0
	for i := range after.Bars {
		was := before.Bar(after.Bars[i].Bar)
		if was == nil {
			continue
		}
		a, b := box.CombArea(was, ""), box.CombArea(&after.Bars[i], "")
		if a.Known() && b.Known() && saysSize(was) && saysSize(&after.Bars[i]) {
			gain = gain.Plus(b.Range.Minus(a.Range).AtLeast(0).Scale(2))
			bars++
		}
	}
	if bars == 0 {
		return BuildingRate{}, false
	}
	rate := gain.Scale(1 / float64(span.Days()))
	rate.Unit = unitBuilding
	e := because("comb drawn by the colony", rate, "2 sides × (comb now − comb then) ÷ days, over the bars of which the size was said both times", []Input{
		{"bars compared", amount(float64(bars)), ""}, {"days", amount(float64(span.Days())), span.String()}})
	e.Why.From = from("BEEB-STR", "TRAPEZOID")
	e.Why.Caveats = []string{"bars that were not spoken of both times are left out, so the colony may have built more"}
	return BuildingRate{0, span, e}, true
}

func saysSize(b *Bar) bool {
	c := b.Comb
	return c != nil && (c.Drawn != nil || c.Size != "" || c.DepthMM != nil)
}

// renumbers reports whether bars were moved about at the end of the visit, so
// that the next one counts them differently. Bars added behind the last one
// leave the numbers as they are, but the record seldom says so.
func renumbers(ins *Inspection) bool {
	return slices.ContainsFunc(ins.Actions, func(t Task) bool {
		switch t.Do {
		case "add_bar", "remove_bar", "move_bar", "harvest", "split", "unite":
			return true
		}
		return false
	})
}

// MonthRate is how fast an apiary builds in one month of the year.
type MonthRate struct {
	Month time.Month `json:"month"`
	Rate  Range      `json:"rate"` // median of the best values, least and most of them
	Count int        `json:"count"`
}

// BuildingCurve gathers the building rates of an apiary's hives by month of
// the year, the month in which a span ends. Months without any are left out.
func BuildingCurve(set Settings, hives ...[]Inspection) []MonthRate {
	byMonth := map[time.Month][]float64{}
	for _, history := range hives {
		if len(history) == 0 {
			continue
		}
		box := set.forHive(history[0].Hive).Box
		for i := range history {
			for _, r := range barBuilding(&history[i], box) {
				byMonth[r.Span.To.Month] = append(byMonth[r.Span.To.Month], r.Rate.Best)
			}
			if i > 0 {
				if r, ok := colonyBuilding(&history[i-1], &history[i], box); ok {
					byMonth[r.Span.To.Month] = append(byMonth[r.Span.To.Month], r.Rate.Best)
				}
			}
		}
	}
	var out []MonthRate
	for m := time.January; m <= time.December; m++ {
		if rates := byMonth[m]; len(rates) > 0 {
			out = append(out, MonthRate{m, Between(slices.Min(rates), median(rates), slices.Max(rates), unitBuilding), len(rates)})
		}
	}
	return out
}
