package colony

import (
	"fmt"
	"math"
)

// MiteRate is one varroa count as a rate: mites a day for a board, per cent
// for a wash, a sugar roll or opened cells.
type MiteRate struct {
	On     Date     `json:"on"`
	Method string   `json:"method"` // drop, wash, sugar or brood
	Rate   Estimate `json:"rate"`
}

const (
	unitDrop    = "mites a day"
	unitPercent = "%"
)

// rateOf turns a count into a rate with an interval at 95 %: Wilson's for
// shares, Poisson limits for a drop. What lacks the number of bees, cells or
// days, and mites that were merely seen, give false; nothing is assumed for
// them.
func rateOf(ins *Inspection) (MiteRate, bool) {
	m := ins.Mites
	if m == nil || m.Count == nil || *m.Count < 0 {
		return MiteRate{}, false
	}
	r := MiteRate{On: dayOf(ins), Method: m.Method}
	switch {
	case m.Method == "drop" && m.Days != nil && *m.Days > 0:
		r.Rate = dropRate(*m.Count, *m.Days, saidOn(ins, "mites"))
	case (m.Method == "wash" || m.Method == "sugar") && m.Bees != nil && *m.Bees > 0:
		r.Rate = shareRate(*m.Count, *m.Bees, "bees", saidOn(ins, "mites"))
	case m.Method == "brood" && m.Cells != nil && *m.Cells > 0:
		r.Rate = shareRate(*m.Count, *m.Cells, "cells", saidOn(ins, "mites"))
	default:
		return MiteRate{}, false
	}
	return r, true
}

// boardDays is for how long a board is left to catch mites.
var boardDays = Constant{"days that a board is left", Between(3, 7.2, 21, unitDays), "the mean and the plausible ends of 11,124 boards", from("EUPH-VAR")}

func dropRate(count, days int, origin string) Estimate {
	low, high := poissonInterval(count)
	d := float64(days)
	e := because("mites dropped", Between(low/d, float64(count)/d, high/d, unitDrop), "mites ÷ days on the board; Poisson limits at 95 %",
		[]Input{{"mites", amount(float64(count)), origin}, {"days", amount(d), origin}})
	e.Why.From = from("BEEB-VAR", "BYAR")
	e.Why.Caveats = []string{"the drop varies from day to day and with the brood that emerges; read it with the size of the colony"}
	if !boardDays.Value.Contains(d) {
		e.Why.Caveats = append(e.Why.Caveats, "boards are best left for 3 to 21 days")
		e.Why.From = withReferences(e.Why.From, boardDays.From...)
	}
	return e
}

func shareRate(count, of int, name, origin string) Estimate {
	low, high := wilsonInterval(min(count, of), of)
	p := float64(count) / float64(of) * 100
	e := because("mites per 100 "+name, Between(low*100, p, math.Max(high*100, p), unitPercent), "100 × mites ÷ "+name+"; Wilson interval at 95 %",
		[]Input{{"mites", amount(float64(count)), origin}, {name, amount(float64(of)), origin}})
	e.Why.From = from("BEEB-VAR", "WILSON27")
	if name == "bees" {
		e.Why.Caveats = []string{"half a cup is 300 bees in one source and 400 in another: a counted number of bees is better"}
	}
	return e
}

// Growth is how mites multiply between two counts by one method.
type Growth struct {
	From, To MiteRate
	Days     int
	Doubling Estimate // days to double; unknown where the counts do not show growth
	Says     string
}

// treatedBetween takes the doubling time back: after a treatment the counts
// show what it did, not how the mites multiply.
func (g *Growth) treatedBetween() {
	g.Doubling = Estimate{}
	g.Says = fmt.Sprintf("%s on %s, %s on %s, with a treatment in between", g.From.Rate.Range, shortDay(g.From.On), g.To.Rate.Range, shortDay(g.To.On))
}

// growthBetween compares two counts of one method. A doubling time is given
// only where the later rate is the higher; its range follows from the
// intervals of both counts and is unbounded above where these overlap.
func growthBetween(a, b MiteRate) (Growth, bool) {
	g := Growth{From: a, To: b, Days: b.On.Sub(a.On)}
	if a.Method != b.Method || g.Days <= 0 {
		return g, false
	}
	if b.Rate.Best <= a.Rate.Best || a.Rate.Best == 0 {
		g.Says = fmt.Sprintf("no more than before: %s on %s, %s on %s", a.Rate.Range, shortDay(a.On), b.Rate.Range, shortDay(b.On))
		return g, true
	}
	days := func(from, to float64) float64 {
		if to <= from || from == 0 {
			return math.Inf(1)
		}
		return float64(g.Days) * math.Ln2 / math.Log(to/from)
	}
	low := 0.0
	if a.Rate.Low > 0 {
		low = days(a.Rate.Low, b.Rate.High)
	}
	r := Between(low, days(a.Rate.Best, b.Rate.Best), days(a.Rate.High, b.Rate.Low), unitDays).whole()
	g.Doubling = because("doubling time of the mites", r, "days between × ln 2 ÷ ln(later ÷ earlier)", []Input{
		{"earlier", a.Rate.Range.String(), longDay(a.On)}, {"later", b.Rate.Range.String(), longDay(b.On)}})
	g.Doubling.Why.From = from("BEEB-VAR")
	g.Doubling.Why.Caveats = []string{"a treatment, a swarm or a break in the brood between the counts spoils the comparison"}
	g.Says = fmt.Sprintf("%s on %s, %s on %s: doubling in %s", a.Rate.Range, shortDay(a.On), b.Rate.Range, shortDay(b.On), r)
	return g, true
}

// UsualDoubling stands in where only one count is there.
var UsualDoubling = Constant{"usual doubling time", Between(18, 21, 30, unitDays), "March to October; about a month by other authors", from("AUMEIER2", "PRACTICE")}

// daysUntil is how long it takes from a rate to a limit at a doubling time:
// doubling × log₂(limit ÷ rate). A rate at or over the limit gives zero.
func daysUntil(rate MiteRate, limit float64, doubling Range) Estimate {
	days := func(from, twice float64) float64 {
		switch {
		case from >= limit:
			return 0
		case from <= 0:
			return math.Inf(1)
		}
		return twice * math.Log2(limit/from)
	}
	r := Between(days(rate.Rate.High, doubling.Low), days(rate.Rate.Best, doubling.Best), days(rate.Rate.Low, doubling.High), unitDays).whole()
	e := because("days until the limit", r, "doubling time × log₂(limit ÷ rate)", []Input{
		{"rate", rate.Rate.Range.String(), longDay(rate.On)}, {"limit", fmt.Sprintf("%s %s", amount(limit), rate.Rate.Unit), ""}, {"doubling time", doubling.String(), ""}})
	e.Why.From = withReferences(rate.Rate.Why.From, UsualDoubling.From...)
	return e
}

// mitesFromDrop is the mites in a colony that a daily drop stands for. With
// brood the ratio of field counts is 20 to 54 and 30 is in common use; the 300
// of an older rule is not used. Without brood too few mites fall for a
// published figure that could be checked, and false is returned.
func mitesFromDrop(drop MiteRate, brood bool) (Estimate, bool) {
	if drop.Method != "drop" || !brood {
		return Estimate{}, false
	}
	e := because("mites in the colony", drop.Rate.Range.Times(dropRatio.Value, "mites"), "drop a day × mites per fallen mite", []Input{
		{"drop", drop.Rate.Range.String(), longDay(drop.On)}}, dropRatio)
	e.Why.Caveats = []string{"a rough figure; it fails in a collapsing colony"}
	return e, true
}

var dropRatio = Constant{"mites per fallen mite, with brood", Between(20, 30, 54, ""), "27 in one field trial, 23 to 54 in another", from("DELHOOD97", "DELHOOD99", "MARTIN98")}
