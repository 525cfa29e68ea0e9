package colony

import "fmt"

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
// evenly over the life of a summer or, out of the season, of a winter bee. The
// low end takes the low of everything, the high end the high. It returns false
// without adults or without capped brood: there is nothing to start from.
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
	low := runForecast(adults.Low, lowOf(brood), rate.Low, life.Low, int(emerge.High))
	best := runForecast(adults.Best, bestOf(brood), rate.Best, life.Best, int(emerge.Best))
	high := runForecast(adults.High, highOf(brood), rate.High, life.High, int(emerge.Low))

	f := Forecast{From: from, Assumptions: []string{
		fmt.Sprintf("the queen goes on laying %s", rate),
		"no swarm, no sickness, no loss of brood; food and room are enough",
		fmt.Sprintf("bees live %s; they die off evenly", life),
	}}
	if !laying {
		f.Assumptions[0] = "no egg is laid in this time"
	}
	for w := range ForecastWeeks {
		f.Weeks = append(f.Weeks, Week{from.AddDays(7 * (w + 1)),
			Between(low[w].adults, best[w].adults, high[w].adults, unitBees),
			Between(low[w].brood, best[w].brood, high[w].brood, unitCells)})
	}
	last := f.Weeks[ForecastWeeks-1]
	f.Why = because("bees in six weeks", last.Adults, "day by day: adults − adults ÷ life + brood that turns 21 days; new eggs as now", []Input{
		{"adults now", adults.Range.String(), ""}, {"capped brood now", brood.Capped.Range.String(), ""}, {"laying", rate.String(), ""}},
		bees, Worker.Emerge, SealedDays).Why
	f.Why.Caveats = f.Assumptions
	return f, true
}

// startBrood is the brood at the start, in cells.
type startBrood struct{ eggs, open, capped float64 }

func lowOf(b BroodCount) startBrood  { return startBrood{b.Eggs.Low, b.Open.Low, b.Capped.Low} }
func bestOf(b BroodCount) startBrood { return startBrood{b.Eggs.Best, b.Open.Best, b.Capped.Best} }
func highOf(b BroodCount) startBrood { return startBrood{b.Eggs.High, b.Open.High, b.Capped.High} }

type endOfWeek struct{ adults, brood float64 }

// runForecast keeps the brood in day classes of age; index 0 is laid today.
// Stages of which nothing was counted are filled with the laying rate.
func runForecast(adults float64, b startBrood, rate, life float64, emerge int) []endOfWeek {
	ages := make([]float64, emerge)
	spreadOver(ages, 0, 3, b.eggs, rate)
	spreadOver(ages, 3, 9, b.open, rate)
	spreadOver(ages, 9, emerge, b.capped, rate)
	var weeks []endOfWeek
	for day := 1; day <= 7*ForecastWeeks; day++ {
		out := ages[emerge-1]
		copy(ages[1:], ages[:emerge-1])
		ages[0] = rate
		adults += out - adults/life
		if day%7 == 0 {
			weeks = append(weeks, endOfWeek{adults, sum(ages)})
		}
	}
	return weeks
}

func spreadOver(ages []float64, from, to int, cells, rate float64) {
	each := cells / float64(to-from)
	if cells == 0 {
		each = rate
	}
	for i := from; i < to; i++ {
		ages[i] = each
	}
}

func sum(values []float64) float64 {
	total := 0.0
	for _, v := range values {
		total += v
	}
	return total
}
