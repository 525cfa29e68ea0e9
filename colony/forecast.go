package colony

import (
	"fmt"
	"slices"
)

// ForecastWeeks is how far the forecast looks.
const ForecastWeeks = 6

// Week is the colony at the end of a week from the inspection.
type Week struct {
	On     Date  `json:"on"`
	Adults Range `json:"adults"`
	Brood  Range `json:"brood"` // all stages, cells
}

// Forecast is a colony's size over the coming weeks, and on what it rests.
type Forecast struct {
	From        Date        `json:"from"`
	Weeks       []Week      `json:"weeks"`
	Assumptions []string    `json:"assumptions"`
	Why         Explanation `json:"why"`
}

// forecastColony carries the counted brood and the adults forward by six
// weeks: brood emerges at 21 days, the queen goes on laying as the sealed
// brood implies (or not at all, where laying is false), and bees die off
// evenly over the life of a summer or, out of the season, of a winter bee. A
// stage of which nothing was said is filled at the laying rate, one that was
// looked for and not found is empty. The low end takes the low of everything,
// the high end the high. It returns false without adults or without capped
// brood: there is nothing to start from.
func forecastColony(from Date, adults Estimate, brood BroodCount, laying bool, season Season) (Forecast, bool) {
	if !adults.Known() || !brood.Capped.Known() {
		return Forecast{}, false
	}
	rate := layingRate(brood.Capped).AtMost(QueenPeak.Value.High)
	if !laying {
		rate = Exactly(0, unitEggs)
	}
	bees := WinterLife
	if season.Active(from) {
		bees = SummerLife
	}
	life, emerge := bees.Value, Worker.Emerge.Value
	run := func(end func(Range) float64, emerge float64) []endOfWeek {
		return runForecast(end(adults.Range), brood.ages(end, rate, int(emerge)), end(rate), end(life))
	}
	low := run(func(r Range) float64 { return r.Low }, emerge.High)
	best := run(func(r Range) float64 { return r.Best }, emerge.Best)
	high := run(func(r Range) float64 { return r.High }, emerge.Low)

	f := Forecast{From: from, Assumptions: []string{
		fmt.Sprintf("the queen goes on laying %s", rate),
		"no swarm, no sickness, no loss of brood; food and room are enough",
		fmt.Sprintf("bees live %s; they die off evenly", life),
	}}
	if !laying {
		f.Assumptions[0] = "no egg is laid in this time"
	}
	for _, what := range brood.None {
		f.Assumptions = append(f.Assumptions, "no "+broodName(what)+" was overlooked")
	}
	for w := range ForecastWeeks {
		f.Weeks = append(f.Weeks, Week{from.AddDays(7 * (w + 1)),
			Between(low[w].adults, best[w].adults, high[w].adults, unitBees),
			Between(low[w].brood, best[w].brood, high[w].brood, unitCells)})
	}
	f.explain(adults, brood, rate, bees)
	return f, true
}

func (f *Forecast) explain(adults Estimate, brood BroodCount, rate Range, bees Constant) {
	inputs := []Input{{"adults then", adults.Range.String(), ""}, {"capped brood then", brood.Capped.Range.String(), ""}}
	for _, stage := range []struct {
		name  string
		cells Estimate
	}{{"open brood then", brood.Open}, {"eggs then", brood.Eggs}} {
		if stage.cells.Known() {
			inputs = append(inputs, Input{stage.name, stage.cells.Range.String(), ""})
		}
	}
	inputs = append(inputs, Input{"laying", rate.String(), "fills also the stages of which too little was said"})
	for _, w := range f.Weeks {
		inputs = append(inputs, Input{"by " + longDay(w.On), w.Adults.String(), "and brood of all stages, " + w.Brood.String()})
	}
	f.Why = because("bees in six weeks from "+longDay(f.From), f.Weeks[ForecastWeeks-1].Adults,
		"day by day: adults − adults ÷ life + brood that turns 21 days; new eggs as now", inputs, bees, Worker.Emerge, SealedDays).Why
	f.Why.Caveats = f.Assumptions
}

// ages is the brood in day classes of age, up to the day of emergence; index 0
// is laid today. End picks the end of the ranges. Stages of which nothing was
// said are filled at the laying rate, and so is the best of those of which it was
// not said how much.
func (b BroodCount) ages(end func(Range) float64, rate Range, emerge int) []float64 {
	ages := make([]float64, emerge)
	fill := func(what string, cells Estimate, from, to int) {
		each := rate
		switch {
		case cells.Known():
			each = cells.Range.Scale(1 / float64(to-from))
			if cells.Vague() {
				each = Between(each.Low, rate.Best, each.High, "")
			}
		case slices.Contains(b.None, what):
			each = Range{}
		}
		for i := from; i < to; i++ {
			ages[i] = end(each)
		}
	}
	fill("eggs", b.Eggs, 0, 3)
	fill("open_brood", b.Open, 3, 9)
	fill("capped_brood", b.Capped, 9, emerge)
	return ages
}

type endOfWeek struct{ adults, brood float64 }

// runForecast goes day by day, with the brood in day classes of age.
func runForecast(adults float64, ages []float64, rate, life float64) []endOfWeek {
	var weeks []endOfWeek
	last := len(ages) - 1
	for day := 1; day <= 7*ForecastWeeks; day++ {
		out := ages[last]
		copy(ages[1:], ages[:last])
		ages[0] = rate
		adults += out - adults/life
		if day%7 == 0 {
			weeks = append(weeks, endOfWeek{adults, sum(ages)})
		}
	}
	return weeks
}

func sum(values []float64) float64 {
	total := 0.0
	for _, v := range values {
		total += v
	}
	return total
}
