package colony

import (
	"fmt"
	"math"
)

// Cell widths from wall to wall in mm, and what follows for the number of
// cells on one side of a dm² of comb. A regular hexagon of width d has the
// area (√3/2)·d².
var (
	WorkerCell = Constant{"worker cell", Between(4.6, 5.2, 5.7, "mm"), "natural comb; 4.64 in Ethiopia, 5.2 European, up to 5.67 along a top bar",
		from("SEELEY76", "BANDASII19", "FELSER", "BEEL05", "HEXAGON")}
	DroneCell = Constant{"drone cell", Between(6.2, 6.6, 7.1, "mm"), "natural comb 6.2; 6.66 to 7.09 from counts",
		from("SEELEY76", "BEEB-STR", "HEXAGON")}
)

// hexagonsPerDM2 is the number of cells on one side of a dm² of comb, for cells d
// mm wide: 11547/d².
func hexagonsPerDM2(d float64) float64 { return mm2PerDM2 / (math.Sqrt(3) / 2 * d * d) }

// cellsPerDM2 carries a range of widths through: wide cells are few.
func cellsPerDM2(width Range) Range {
	return Between(hexagonsPerDM2(width.High), hexagonsPerDM2(width.Best), hexagonsPerDM2(width.Low), "cells/dm²")
}

// Words for how much of a comb a content takes, as a share of the comb.
var coverWords = map[string]Constant{
	"little": {"a little", Between(0.01, 0.08, 0.25, ""), "share of the comb", from("PRACTICE")},
	"much":   {"a lot", Between(0.35, 0.65, 1, ""), "share of the comb", from("PRACTICE")},
	"":       {"there, no share said", Between(0.05, 0.35, 1, ""), "share of the comb", from("PRACTICE")},
}

// cover is the share of both sides together that the content takes, and how it
// was said.
func (c *Content) cover() (Range, string, *Constant) {
	var share Range
	var words *Constant
	said := ""
	if c.Cover != nil {
		share, said = Exactly(share01(*c.Cover), ""), amount(*c.Cover)
	} else {
		k := coverWords[c.Amount]
		share, said, words = k.Value, k.Name, &k
	}
	switch c.Side {
	case "one", "front", "back":
		return share.Scale(0.5), said + ", " + c.Side + " side", words
	case "":
		return share, said, words
	}
	return share, said + ", " + c.Side + " sides", words
}

// share01 keeps a share within 0 and 1; records can hold others, which the
// keeper was asked about.
func share01(v float64) float64 { return math.Max(0, math.Min(1, v)) }

// ContentArea is the comb area that a content takes on a bar, both sides
// together, in dm². It is unknown where the content is absent or denied.
func (b Box) ContentArea(bar *Bar, what, origin string) Estimate {
	c := bar.Content(what)
	if c == nil || !c.Present {
		return Estimate{}
	}
	comb := b.CombArea(bar, origin)
	share, said, words := c.cover()
	inputs := []Input{
		{"one side of the comb", comb.Range.String(), fmt.Sprintf("%s, bar %d", origin, bar.Bar)},
		{"share", said, fmt.Sprintf("%s, bars.%d.%s", origin, bar.Bar, what)},
	}
	e := because(broodName(what)+fmt.Sprintf(" on bar %d", bar.Bar), comb.Range.Scale(2).Times(share, unitArea),
		"2 sides × comb × share", inputs)
	if words != nil {
		e.Why.From = withReferences(e.Why.From, words.From...)
	}
	e.Why.From = withReferences(e.Why.From, comb.Why.From...)
	return e
}

// CombTotal is the area of a content over all bars, both sides, in dm². Where
// bars were only counted ("five bars of brood"), it is that many combs, each
// filled in part.
func (b Box) CombTotal(ins *Inspection, what string) Estimate {
	origin := shortDay(dayOf(ins))
	total, known := Exactly(0, unitArea), 0
	var inputs []Input
	var refs []Reference
	for i := range ins.Bars {
		e := b.ContentArea(&ins.Bars[i], what, origin)
		if !e.Known() {
			continue
		}
		known++
		total = total.Plus(e.Range)
		inputs = append(inputs, Input{fmt.Sprintf("bar %d", ins.Bars[i].Bar), e.Range.String(), origin})
		refs = withReferences(refs, e.Why.From...)
	}
	formula := "sum over the bars of 2 sides × comb × share"
	if c := ins.Content(what); known == 0 && c != nil && c.Present && c.Bars != nil {
		bars := Exactly(math.Max(0, *c.Bars), "")
		if c.BarsMax != nil && *c.BarsMax > *c.Bars && *c.Bars >= 0 {
			bars = Between(*c.Bars, *c.Bars, *c.BarsMax, "")
		}
		fill := countedFill.Value
		total = b.FullComb().Scale(2).Times(bars, unitArea).Times(fill, unitArea)
		inputs = []Input{{"bars", bars.String(), origin + ", contents." + what + ".bars"}, countedFill.input(), {"full comb", b.FullComb().String(), b.Name}}
		refs, formula, known = countedFill.From, "bars × 2 sides × full comb × share filled", 1
	}
	if known == 0 {
		return Estimate{}
	}
	e := because(broodName(what)+", all bars", total, formula, inputs)
	e.Why.From = refs
	return e
}

// countedFill is how full a comb is that was only counted as a bar of
// something.
var countedFill = Constant{"share filled of a counted bar", Between(0.1, 0.5, 1, ""), "", from("PRACTICE")}
