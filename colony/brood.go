package colony

import (
	"fmt"
	"math"
)

// Constants of brood and bees.
var (
	// SealedDays is how long worker brood stays sealed.
	SealedDays = Constant{"sealed stage of worker brood", Between(11.5, 12, 12.5, unitDays), "", from("WADE22", "NEMNBA", "AMBEE")}

	// BeesPerDM2 is the number of bees on a dm² of one side of a covered comb.
	BeesPerDM2 = Constant{"bees on a covered dm², one side", Between(100, 125, 130, "bees/dm²"), "125 and 130 read; the low end is a thin cover", from("BOA20", "MUEGG", "FELSER", "PRACTICE")}

	// The share of cells within a brood patch that are filled.
	solidBrood  = Constant{"cells filled in solid brood", Between(0.85, 0.95, 1, ""), "", from("PRACTICE")}
	patchyBrood = Constant{"cells filled in patchy brood", Between(0.4, 0.65, 0.85, ""), "", from("PRACTICE")}
	someBrood   = Constant{"cells filled, pattern not said", Between(0.5, 0.85, 1, ""), "", from("PRACTICE")}

	// Lives of workers after emergence.
	SummerLife = Constant{"life of a summer bee", Between(15, 32, 42, unitDays), "3 to 6 weeks in one source, 15 to 38 days in another", from("AGROLIFE", "AMBEE")}
	WinterLife = Constant{"life of a winter bee", Between(90, 135, 320, unitDays), "3 to 6 months in one source, 140 to 320 days in another", from("AGROLIFE", "AMBEE")}

	// QueenPeak bounds what a queen can lay in a day.
	QueenPeak = Constant{"most eggs a day", Between(1440, 2000, 2000, unitEggs), "", from("UCANR87", "FELSER")}
)

// BroodCount is the brood of a colony in cells, by stage; stages of which
// nothing was said, and those that were not found, are unknown.
type BroodCount struct {
	Eggs   Estimate `json:"eggs"`
	Open   Estimate `json:"open"`
	Capped Estimate `json:"capped"` // or emerging, where only that was said
	Drone  Estimate `json:"drone"`
	Mixed  Estimate `json:"mixed"`          // brood of no said stage
	None   []string `json:"none,omitempty"` // of eggs, open_brood, capped_brood: looked for and not found
}

// countBrood works the brood cells out from the areas that were said.
func countBrood(ins *Inspection, box Box) BroodCount {
	count := func(width Constant, name string, what ...string) Estimate {
		return broodCells(ins, box, width, name, what...)
	}
	sealed := []string{"capped_brood"}
	if !box.CombTotal(ins, "capped_brood").Known() {
		sealed = []string{"emerging_brood"} // else it is part of what was called capped
	}
	facts := factsOf(ins)
	var none []string
	for _, what := range []string{"eggs", "open_brood", "capped_brood"} {
		if facts.brood[what] == denied {
			none = append(none, what)
		}
	}
	return BroodCount{
		None:   none,
		Eggs:   count(WorkerCell, "cells with eggs", "eggs"),
		Open:   count(WorkerCell, "open brood", "open_brood"),
		Capped: count(WorkerCell, "capped brood", sealed...),
		Drone:  count(DroneCell, "drone brood", "drone_brood"),
		Mixed:  count(WorkerCell, "brood of no said stage", "brood"),
	}
}

func broodCells(ins *Inspection, box Box, width Constant, name string, kinds ...string) Estimate {
	density := cellsPerDM2(width.Value)
	total := Exactly(0, unitCells)
	var inputs []Input
	var refs []Reference
	for _, what := range kinds {
		area := box.CombTotal(ins, what)
		if !area.Known() {
			continue
		}
		fill := filling(ins, what)
		total = total.Plus(area.Range.Times(density, unitCells).Times(fill.Value, unitCells))
		inputs = append(inputs, Input{broodName(what), area.Range.String(), shortDay(dayOf(ins))}, fill.input())
		refs = withReferences(refs, append(area.Why.From, fill.From...)...)
	}
	if len(inputs) == 0 {
		return Estimate{}
	}
	inputs = append(inputs, Input{"cells on a dm²", density.String(), "from the cell width"})
	e := because(name, total, "comb area of both sides × cells per dm² × share filled", inputs, width)
	e.Why.From = withReferences(e.Why.From, refs...)
	e.askForShare()
	return e
}

// filling is the share of cells filled, by the pattern said of the bars with
// that brood or of the colony. Eggs and drone brood have none.
func filling(ins *Inspection, what string) Constant {
	solid, patchy := ins.BroodPattern == "solid", ins.BroodPattern == "patchy"
	for i := range ins.Bars {
		if c := ins.Bars[i].Content(what); c != nil && c.Present {
			solid = solid || c.Pattern == "solid"
			patchy = patchy || c.Pattern == "patchy"
		}
	}
	switch {
	case solid && !patchy:
		return solidBrood
	case patchy && !solid:
		return patchyBrood
	}
	return someBrood
}

// layingRate is the eggs a day that the sealed brood implies: cells ÷ 12. It
// is an average of the days from 21 to 9 days before the inspection and takes
// no account of brood that was lost, so it lags.
func layingRate(capped Estimate) Estimate {
	if !capped.Known() {
		return Estimate{}
	}
	e := because("eggs a day", capped.Range.Per(SealedDays.Value, unitEggs), "capped worker cells ÷ 12 days",
		[]Input{{"capped brood", capped.Range.String(), ""}}, SealedDays)
	e.Why.From = withReferences(e.Why.From, capped.Why.From...)
	e.Why.Caveats = []string{"an average of 9 to 21 days before the inspection; brood that was lost is not counted"}
	if e.Best > QueenPeak.Value.High {
		e.Why.Caveats = append(e.Why.Caveats, "more than a queen lays: the share or the number of bars is probably too high")
	}
	return e
}

// EmergingDays is for how many days ahead an appraisal tells the bees to
// emerge: the sealed stage, so that what is capped today is out by then.
const EmergingDays = 12

// emergingWithin is the number of workers that leave their cells within days days of
// the inspection, from capped, open and egg cells, each taken as evenly spread
// over the ages of its stage, the youngest of them laid today. Every worker
// that was sealed emerges within 12 days by the model.
func emergingWithin(b BroodCount, days int) Estimate {
	total := Exactly(0, unitBees)
	var inputs []Input
	for _, s := range []struct {
		name      string
		cells     Estimate
		youngest  float64
		oldestAge float64
	}{{"capped", b.Capped, 9, 21}, {"open", b.Open, 3, 9}, {"egg", b.Eggs, 0, 3}, {"unstaged", b.Mixed, 0, 21}} {
		if !s.cells.Known() {
			continue
		}
		by := func(life float64) float64 { return emergedShare(s.youngest, s.oldestAge, life, float64(days)) }
		share := Between(by(Worker.Emerge.Value.High), by(Worker.Emerge.Value.Best), by(Worker.Emerge.Value.Low), "")
		if share.High == 0 {
			continue
		}
		total = total.Plus(s.cells.Range.Times(share, unitBees))
		inputs = append(inputs, Input{s.name + " cells", s.cells.Range.String(), ""}, Input{"share out by then", share.String(), ""})
	}
	if len(inputs) == 0 {
		return Estimate{}
	}
	return because(fmt.Sprintf("bees to emerge within %d days", days), total, "cells × share that is 21 days old by then (19 to 24)", inputs, Worker.Emerge)
}

// emergedShare is the share of a stage, evenly spread over ages from youngest
// to oldest, that reaches the age life within days.
func emergedShare(youngest, oldest, life, days float64) float64 {
	return math.Max(0, math.Min(1, (oldest+days-life)/(oldest-youngest)))
}

// countAdults is the number of adult bees from the bars (seams) covered: a seam has
// the facing sides of two combs, the same as both sides of one.
func countAdults(ins *Inspection, box Box) Estimate {
	if ins.Strength == nil || ins.Strength.BarsOfBees == nil || *ins.Strength.BarsOfBees < 0 {
		return Estimate{}
	}
	bars := Exactly(*ins.Strength.BarsOfBees, "")
	comb := box.FullComb()
	bees := comb.Scale(2).Times(BeesPerDM2.Value, unitBees).Times(bars, unitBees)
	e := because("adult bees", bees, "bars covered × 2 sides × comb × bees per dm²", []Input{
		{"bars covered", bars.String(), saidOn(ins, "strength.bars_of_bees")}, {"full comb, one side", comb.String(), box.Name}}, BeesPerDM2)
	e.Why.From = withReferences(e.Why.From, from("TRAPEZOID", "GREGORY03B")...)
	e.Why.Caveats = []string{"bees in the field are not counted; compare counts of the same time of day"}
	return e
}
