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

// Conversions by definition (international yard and pound agreement 1959; US
// gallon of 231 cubic inches; imperial gallon of 4.54609 l).
const (
	kgPerPound        = 0.45359237
	gramsPerOunce     = 28.349523125
	litresPerUSGallon = 3.785411784
	litresPerGallon   = 4.54609
	mm2PerDM2         = 10_000.0
	cm2PerSquareInch  = 6.4516
)

// Pounds is a mass given in kilograms, in pounds.
func Pounds(kg float64) float64 { return kg / kgPerPound }

// Kilograms is a mass given in pounds, in kilograms.
func Kilograms(pounds float64) float64 { return pounds * kgPerPound }

// InPounds is a range of kilograms in pounds.
func (r Range) InPounds() Range {
	out := r.Scale(1 / kgPerPound)
	out.Unit = "lb"
	return out
}

// Mass is the amount as a range of kilograms, and false where the unit is one
// of volume. The units are those of a [Task].
func Mass(amount float64, unit string) (Range, bool) {
	per, ok := map[string]float64{"kg": 1, "g": 1e-3, "lb": kgPerPound, "oz": gramsPerOunce / 1000}[unit]
	return Exactly(amount*per, unitKg), ok
}

// Volume is the amount as a range of litres, and false where the unit is one
// of mass. Quarts, gallons, pints and cups are said on both sides of the
// ocean, so the range runs from the US measure to the imperial one; the best
// value is the US one for quarts and cups and the imperial one for pints.
func Volume(amount float64, unit string) (Range, bool) {
	const usQuart, quart = litresPerUSGallon / 4, litresPerGallon / 4
	switch unit {
	case "l":
		return Exactly(amount, "l"), true
	case "ml":
		return Exactly(amount/1000, "l"), true
	case "gal":
		return Between(amount*litresPerUSGallon, amount*litresPerUSGallon, amount*litresPerGallon, "l"), true
	case "qt":
		return Between(amount*usQuart, amount*usQuart, amount*quart, "l"), true
	case "pt":
		return Between(amount*usQuart/2, amount*quart/2, amount*quart/2, "l"), true
	case "cup":
		return Between(amount*usQuart/4, amount*usQuart/4, amount*quart/4, "l"), true
	}
	return Range{}, false
}
