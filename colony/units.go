package colony

// Units in which the package's results are counted. Lengths are millimetres,
// areas square decimetres, masses kilograms, spans of time days.
const (
	unitArea  = "dm²"
	unitCells = "cells"
	unitBees  = "bees"
	unitEggs  = "eggs a day"
	unitKg    = "kg"
	unitDays  = "days"
	unitBars  = "bars"
)

// Conversions by definition (pound: international yard and pound agreement
// 1959).
const (
	kgPerPound = 0.45359237
	mm2PerDM2  = 10_000.0
)

// InPounds is a range of kilograms in pounds.
func (r Range) InPounds() Range {
	out := r.Scale(1 / kgPerPound)
	out.Unit = "lb"
	return out
}
