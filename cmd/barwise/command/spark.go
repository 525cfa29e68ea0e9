package command

import (
	"math"
	"strings"

	"barwise/colony"
)

// sparkMonths is how far back a small plot looks.
const sparkMonths = 12

// spark draws the measure over the twelve months up to the day in a character a
// month, from ▁ to █ on a scale that begins at zero and ends at the greatest
// value; a point is a month that does not tell it. It is "" where fewer than
// two months do.
func spark(m colony.Measure, history []colony.Inspection, set colony.Settings, today colony.Date) string {
	months, err := colony.GroupBy(m.Series(history, set), "month")
	if err != nil {
		return ""
	}
	first := colony.NewDate(today.Year, today.Month, 1).AddMonths(1 - sparkMonths)
	values := make([]float64, sparkMonths)
	told, most := 0, 0.0
	for i := range values {
		values[i] = math.NaN()
		for _, s := range months {
			if s.On == first.AddMonths(i) {
				values[i] = s.Value.Best
				most = max(most, s.Value.Best)
				told++
			}
		}
	}
	if told < 2 {
		return ""
	}
	steps := []rune("▁▂▃▄▅▆▇█")
	var out strings.Builder
	for _, v := range values {
		switch {
		case math.IsNaN(v):
			out.WriteRune('·')
		case most <= 0:
			out.WriteRune(steps[0])
		default:
			out.WriteRune(steps[int(math.Round(max(v, 0)/most*float64(len(steps)-1)))])
		}
	}
	return out.String()
}

// sparkMeasures are what the list of hives draws small.
var sparkMeasures = []struct{ name, as string }{{"strength", "bees"}, {"temper", "temper"}}

// sparks are the small plots of one hive, for its line in the list.
func sparks(ap *apiary, hive string, today colony.Date) []string {
	var out []string
	for _, show := range sparkMeasures {
		m, err := colony.MeasureNamed(show.name)
		if err != nil {
			continue // held by TestSparkMeasuresExist
		}
		if text := spark(m, ap.upTo(hive, today), ap.settings, today); text != "" {
			out = append(out, show.as+" "+text)
		}
	}
	return out
}
