package colony

import (
	"fmt"
	"slices"
)

// Appraisal is one colony as of a day: everything that the inspections carry.
type Appraisal struct {
	Hive      string         `json:"hive"`
	Today     Date           `json:"today"`
	Last      Date           `json:"last,omitzero"` // last inspection
	Queen     QueenEvidence  `json:"queen"`
	Colour    *ColourFinding `json:"colour,omitempty"`
	BroodOn   Date           `json:"brood_on,omitzero"` // the inspection that the brood was counted in
	Brood     BroodCount     `json:"brood"`
	Laying    Estimate       `json:"laying"`
	Emerging  Estimate       `json:"emerging"` // within EmergingDays of BroodOn
	Adults    Estimate       `json:"adults"`
	Forecast  *Forecast      `json:"forecast,omitempty"`
	Comb      Estimate       `json:"comb"`
	Building  []BuildingRate `json:"building,omitempty"`
	Space     Space          `json:"space"`
	Food      Food           `json:"food"`
	Gap       Estimate       `json:"gap"`                     // to the winter target, from July to October
	Target    string         `json:"winter_target,omitempty"` // that the gap is to
	Weeks     Estimate       `json:"weeks"`                   // of winter use, from November to March
	Mites     *MiteRate      `json:"mites,omitempty"`
	MiteLoad  Estimate       `json:"mite_load"` // mites in the colony, from a drop while there was brood
	Verdicts  []MiteVerdict  `json:"verdicts,omitempty"`
	MiteSays  string         `json:"mite_says,omitempty"` // the rate beside the limits; empty for a count too old to go by
	MiteNote  string         `json:"mite_note,omitempty"` // kinds of means, where a limit is or may be passed
	Growth    *Growth        `json:"growth,omitempty"`
	MiteLimit Estimate       `json:"mite_limit"` // days until the first limit not yet reached
	Cautions  []Caution      `json:"cautions,omitempty"`
	Due       []DueItem      `json:"due,omitempty"` // open ones

	limits Explanation // of all published limits, for an explanation
}

// Appraise works everything out for one hive, whose inspections are sorted by
// time; those after today are left out.
func Appraise(history []Inspection, today Date, set Settings, answers []Answer) Appraisal {
	known := upTo(history, today)
	a := Appraisal{Today: today}
	if len(known) == 0 {
		return a
	}
	last := &known[len(known)-1]
	a.Hive, a.Last = last.Hive, dayOf(last)
	set = set.forHive(a.Hive)
	queens := judgeLast(known, today, recentVisits)
	a.Queen = queens[len(queens)-1]
	a.Space = judgeSpace(known, today, a.Queen, set.Season)
	a.Cautions = cautionsFor(known, today, set.Season)
	a.Due = OpenItems(dueWith(queens, known, today, set, answers))
	a.readColour(known)
	a.readBrood(known, set)
	a.readComb(known, set)
	a.readFood(known, set)
	a.readMites(known, set)
	return a
}

// readColour reads the mark of the queen that is there: not of one that left
// with a swarm, was replaced or is being replaced.
func (a *Appraisal) readColour(known []Inspection) {
	switch a.Queen.State {
	case RaisingQueen, VirginMating, Queenless, LayingWorkers:
		return
	}
	for i := len(known) - 1; i >= 0; i-- {
		if q := known[i].Queen; q != nil && (q.Colour != "" || q.Year != nil) {
			f := checkColour(q, dayOf(&known[i]))
			a.Colour = &f
			return
		}
		if newQueen(&known[i]) {
			return
		}
	}
}

// newQueen reports whether a mark that was seen before this visit is of another
// queen, or gone.
func newQueen(ins *Inspection) bool {
	f := factsOf(ins)
	unmarked := ins.Queen != nil && ins.Queen.Marked != nil && !*ins.Queen.Marked
	replaced := slices.ContainsFunc(f.earlier, func(e pastFact) bool { return e.event == "swarmed" || e.event == "requeened" })
	return unmarked || replaced || f.virgin || f.given != "" || f.cells["emerged"] == shown
}

// readBrood takes the last inspection that tells an area of brood.
func (a *Appraisal) readBrood(known []Inspection, set Settings) {
	for i := len(known) - 1; i >= 0; i-- {
		ins := &known[i]
		b := countBrood(ins, set.Box)
		if !b.Capped.Known() && !b.Open.Known() && !b.Mixed.Known() {
			continue
		}
		a.BroodOn, a.Brood, a.Adults = dayOf(ins), b, countAdults(ins, set.Box)
		if b.Capped.Vague() {
			return // what would follow from it is vaguer still
		}
		a.Laying, a.Emerging = layingRate(b.Capped), emergingWithin(b, EmergingDays)
		if a.Adults.Known() {
			laying := a.Queen.State == Laying || a.Queen.State == QueenThere
			if f, ok := forecastColony(dayOf(ins), a.Adults, b, laying, set.Season); ok {
				a.Forecast = &f
			}
		}
		return
	}
}

func (a *Appraisal) readComb(known []Inspection, set Settings) {
	last := &known[len(known)-1]
	a.Comb = drawnComb(last, set.Box)
	a.Building = barBuilding(last, set.Box)
	if len(known) > 1 {
		if r, ok := colonyBuilding(&known[len(known)-2], last, set.Box); ok {
			a.Building = append(a.Building, r)
		}
	}
}

func (a *Appraisal) readFood(known []Inspection, set Settings) {
	for i := len(known) - 1; i >= 0; i-- {
		if f := countFood(&known[i], set.Box); f.Honey.Known() || f.Word != "" {
			a.Food = f
			if f.Honey.Vague() {
				return // what would follow from it is vaguer still
			}
			if set.Season.Storing(a.Today) {
				a.Gap, a.Target = storesGap(f, set.Target), set.Target.Name
			}
			if set.Season.Wintering(a.Today) {
				a.Weeks = weeksOfFood(f, WinterUse)
			}
			return
		}
	}
}

func (a *Appraisal) readMites(known []Inspection, set Settings) {
	for i := len(known) - 1; i >= 0; i-- {
		r, ok := rateOf(&known[i])
		switch {
		case !ok:
		case a.Mites == nil:
			a.Mites = &r
			a.Verdicts = againstLimits(r, set.MiteSet, set.Season)
			a.MiteLoad, _ = mitesFromDrop(r, broodAbout(known[:i+1]))
			a.limits = explainLimits(r, set.Season)
			if a.Today.Sub(r.On) <= CautionDays {
				if !treatedSince(known, r.On) {
					a.MiteLimit = untilLimit(r, a.Verdicts, UsualDoubling.Value)
				}
				a.MiteSays = limitsInWords(a.Verdicts, set.MiteSet)
				a.MiteNote = miteNote(a.Verdicts, honeyOn(&known[len(known)-1]))
			}
		case r.Method == a.Mites.Method:
			if g, ok := growthBetween(r, *a.Mites); ok {
				a.Growth = &g
				if treatedSince(upTo(known, g.To.On), g.From.On) {
					g.treatedBetween()
				}
				if g.Doubling.Known() && a.MiteLimit.Known() {
					a.MiteLimit = untilLimit(*a.Mites, a.Verdicts, g.Doubling.Range)
				}
			}
			return
		}
	}
}

// treatedSince reports whether the colony was treated at a visit from the day
// on.
func treatedSince(known []Inspection, from Date) bool {
	for i := len(known) - 1; i >= 0 && dayOf(&known[i]).Compare(from) >= 0; i-- {
		if hasDeed(&known[i], "treat") {
			return true
		}
	}
	return false
}

// broodAbout reports whether brood was seen in the last inspection that speaks
// of any, within the life of worker brood before the last one.
func broodAbout(known []Inspection) bool {
	last := dayOf(&known[len(known)-1])
	for i := len(known) - 1; i >= 0 && last.Sub(dayOf(&known[i])) <= int(Worker.Emerge.Value.Best); i-- {
		f := factsOf(&known[i])
		if f.anyBrood() {
			return true
		}
		if f.brood["capped_brood"] == denied {
			return false
		}
	}
	return false
}

// untilLimit is the time to the lowest limit, where none is passed yet.
func untilLimit(r MiteRate, verdicts []MiteVerdict, doubling Range) Estimate {
	var next *MiteLimit
	for i := range verdicts {
		if verdicts[i].Over == "over" {
			return Estimate{} // one is passed; the rest is no comfort
		}
		if l := &verdicts[i].Limit; l.Limit > r.Rate.Best && (next == nil || l.Limit < next.Limit) {
			next = l
		}
	}
	if next == nil {
		return Estimate{}
	}
	e := daysUntil(r, next.Limit, doubling)
	e.Why.What += fmt.Sprintf(" of %s %s (%s)", amount(next.Limit), r.Rate.Unit, next.Set)
	e.Why.From = withReferences(e.Why.From, next.From)
	return e
}

// Explanations lists the making of every number in the appraisal, in its
// order.
func (a *Appraisal) Explanations() []Explanation {
	var out []Explanation
	add := func(e Explanation) {
		if e.What != "" {
			out = append(out, e)
		}
	}
	add(a.Queen.Why)
	if a.Queen.Calendar != nil {
		add(a.Queen.Calendar.Why)
	}
	for _, e := range []Estimate{a.Brood.Eggs, a.Brood.Open, a.Brood.Capped, a.Brood.Drone, a.Brood.Mixed, a.Laying, a.Emerging, a.Adults} {
		add(e.Why)
	}
	if a.Forecast != nil {
		add(a.Forecast.Why)
	}
	add(a.Comb.Why)
	for _, b := range a.Building {
		add(b.Rate.Why)
	}
	for _, e := range []Estimate{a.Space.Used, a.Space.Free, a.Space.Rate, a.Food.Honey, a.Food.Pollen, a.Gap, a.Weeks} {
		add(e.Why)
	}
	if a.Mites != nil {
		add(a.Mites.Rate.Why)
		add(a.limits)
		add(a.MiteLoad.Why)
	}
	if a.Growth != nil {
		add(a.Growth.Doubling.Why)
	}
	add(a.MiteLimit.Why)
	return out
}
