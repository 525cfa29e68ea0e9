package colony

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
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
// not gone; behind a place where bars were added, taken or moved the numbers no
// longer name the same combs.
func colonyBuilding(before, after *Inspection, box Box) (BuildingRate, bool) {
	span := DateRange{dayOf(before), dayOf(after)}
	if span.Days() <= 0 {
		return BuildingRate{}, false
	}
	same := keepNumbers(before.Actions)
	gain, bars := Exactly(0, unitArea), 0
	for i := range after.Bars {
		was := before.Bar(after.Bars[i].Bar)
		if was == nil || was.Bar > same {
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

// keepNumbers is the last bar of those at the front that keep their numbers when
// bars are added, taken or moved at the end of a visit; none do where it was not
// said at which bar.
func keepNumbers(actions []Task) int {
	last := math.MaxInt
	for _, t := range actions {
		switch t.Do {
		case "add_bar", "remove_bar", "move_bar", "harvest":
			last = min(last, t.firstBar()-1)
		case "split", "unite":
			last = 0
		}
	}
	return last
}

// firstBar is the first bar that the deed was at, or that came to stand behind
// the one it named; 0 where no bar was named.
func (t Task) firstBar() int {
	first := math.MaxInt
	if t.Bar != nil {
		first = *t.Bar
	}
	for name := range strings.SplitSeq(t.Bars, ",") {
		if n, err := strconv.Atoi(name); err == nil {
			first = min(first, n)
		}
	}
	if t.To != nil && (t.Do == "add_bar" || t.Do == "move_bar") {
		first = min(first, *t.To+1)
	}
	if first == math.MaxInt {
		return 0
	}
	return first
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
