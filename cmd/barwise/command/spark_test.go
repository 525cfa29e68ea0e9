package command

import (
	"testing"

	"barwise/colony"
)

func TestSparkMeasuresExist(t *testing.T) {
	for _, show := range sparkMeasures {
		if _, err := colony.MeasureNamed(show.name); err != nil {
			t.Error(err)
		}
	}
}

func TestSparkShowsMonthsAndGaps(t *testing.T) {
	strength, err := colony.MeasureNamed("strength")
	if err != nil {
		t.Fatal(err)
	}
	at := func(day, bars string) colony.Inspection {
		return *inspectionOf(t, "hive=3", "at="+day+"T12:00:00Z", "strength.bars_of_bees="+bars)
	}
	history := []colony.Inspection{at("2025-05-01", "14"), at("2025-11-20", "7"), at("2026-03-03", "0"), at("2026-05-02", "14"), at("2026-05-30", "14")}
	today := colony.NewDate(2026, 6, 1)
	if got, want := spark(strength, history, colony.DefaultSettings(), today), "····▅···▁·█·"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := spark(strength, history[:2], colony.DefaultSettings(), today); got != "" {
		t.Errorf("one month is drawn as %s", got)
	}
}
