package colony

import (
	"fmt"
	"slices"
)

// noWorry is said where eggs were seen and the queen was not.
const noWorry = "a queen not seen while there are eggs is no worry: eggs are three days old at most"

// judge turns the track into a verdict. What was seen last decides; the order
// of the cases is from the strongest sign to the weakest.
func (t *queenTrack) judge(today Date) QueenEvidence {
	e := QueenEvidence{State: NoSign, Seen: t.seen}
	if t.last.ins == nil {
		e.Says = "nothing recorded of queen or brood yet"
		e.Why = Explanation{What: "queen", Result: e.Says, Formula: "no inspection says anything of queen, brood or queen cells"}
		return e
	}
	f := t.last
	e.AsOf = f.on
	e.LastEgg = t.lastEggWindow()
	e.Brood = slices.Clone(t.brood[max(0, len(t.brood)-recentFindings):])
	t.chooseState(&e, today)
	t.addNotes(&e)
	t.addAlso(&e, today)
	t.weigh(&e)
	e.explain(today)
	return e
}

// lastEggWindow is when the last egg was laid, as of the last inspection. What
// was denied there ends the usual span; the outer one never trusts a denial.
func (t *queenTrack) lastEggWindow() Window {
	if !t.hasBrood {
		return Window{}
	}
	f := t.last
	until := laidUntil(f.on, f.brood["eggs"] == denied, f.brood["open_brood"] == denied, f.brood["capped_brood"] == denied)
	w := Window{DateRange{t.lastEgg.usual, until}, DateRange{t.lastEgg.outer, f.on}}
	if w.Usual.From.Compare(w.Usual.To) > 0 {
		// Brood seen lately and now denied do not fit; the sighting counts.
		w.Usual = DateRange{w.Outer.From, laterOf(t.lastEgg.usual, until)}
	}
	return w.ordered()
}

func (t *queenTrack) chooseState(e *QueenEvidence, today Date) {
	f := t.last
	// Eggs and larvae that laying workers may have laid are no word of a queen.
	counted := t.eggsOn == f.on
	eggs, open := f.brood["eggs"], f.brood["open_brood"]
	switch {
	case !t.layers.IsZero():
		t.judgeLayingWorkers(e)
	case eggs == shown && counted:
		e.State, e.Sureness = Laying, Sure
		e.Says = fmt.Sprintf("eggs seen on %s, so a queen laid within %s", shortDay(f.on), e.LastEgg.Usual)
	case open == shown && eggs == unsaid && counted:
		e.State, e.Sureness = Laying, Likely
		e.Says = fmt.Sprintf("larvae seen on %s, eggs not spoken of; the last egg was laid within %s", shortDay(f.on), e.LastEgg.Usual)
		if f.queenSeen == shown && !f.virgin {
			e.Sureness = Sure
			e.Says = fmt.Sprintf("larvae and the queen seen on %s, eggs not spoken of; the last egg was laid within %s", shortDay(f.on), e.LastEgg.Usual)
		}
	case f.queenSeen == shown && !f.virgin && t.beforeEmergence():
		e.State, e.Sureness = QueenThere, Sure
		e.Says = fmt.Sprintf("the queen was seen on %s; eggs were not spoken of", shortDay(f.on))
		if eggs == denied {
			e.Says = fmt.Sprintf("the queen was seen on %s, but no eggs: resting, young, or about to swarm", shortDay(f.on))
		}
	case t.cohort != nil:
		t.judgeCohort(e, today)
	case t.hasBrood:
		t.judgeOldBrood(e)
	default:
		t.judgeNothing(e)
	}
}

// beforeEmergence reports whether a queen who was seen last must be the old
// one: there is no young one under way, or she is still in her cell.
func (t *queenTrack) beforeEmergence() bool {
	return t.cohort == nil || t.last.on.Compare(t.cohort.calendar.When(MilestoneEmerges).Outer.From) < 0
}

func (t *queenTrack) judgeLayingWorkers(e *QueenEvidence) {
	e.State, e.Sureness, e.ExpectBy = LayingWorkers, Likely, t.layers
	e.Says = fmt.Sprintf("signs of laying workers on %s: several eggs in a cell, or drone brood in worker cells", shortDay(t.layers))
	e.Notes = append(e.Notes, "a queen that has just begun may also lay twice in a cell for a few days: look again after a week before acting")
}

// judgeCohort judges a colony with queen cells, or a queen put in.
func (t *queenTrack) judgeCohort(e *QueenEvidence, today Date) {
	c := t.cohort
	cal := c.calendar
	e.Calendar = &cal
	eggs := cal.When(MilestoneEggs)
	e.ExpectBy = eggs.Outer.To
	emerges := cal.When(MilestoneEmerges)
	e.Sureness = c.strength
	switch {
	case c.stage == "virgin seen":
		e.State = VirginMating
	case today.Compare(e.ExpectBy) > 0 && t.last.brood["eggs"] == denied && t.last.on.Compare(e.ExpectBy) >= 0:
		e.State, e.Sureness = Queenless, Unsure
		e.Says = fmt.Sprintf("eggs were to be seen by %s and none were found on %s: take it that the young queen is lost, and make sure", longDay(e.ExpectBy), shortDay(t.last.on))
		return
	case today.Compare(e.ExpectBy) > 0:
		e.State, e.Sureness = NoSign, Unsure
		e.Says = fmt.Sprintf("%s: eggs were to be seen by %s and no inspection has spoken of them since: look", cal.Begin, longDay(e.ExpectBy))
		return
	case c.stage == "emerged" || !emerges.IsZero() && today.Compare(emerges.Usual.To) >= 0:
		e.State = VirginMating
		if c.stage != "emerged" && c.stage != "put in" {
			e.Sureness = Unsure
		}
	case c.stage == "put in" && emerges.IsZero() && !cal.When(MilestoneFlies).IsZero():
		e.State = VirginMating
	case c.stage == "put in" && emerges.IsZero():
		e.State, e.Says = QueenThere, fmt.Sprintf("%s: first eggs %s", cal.Begin, eggs.Usual)
		return
	default:
		e.State = RaisingQueen
	}
	e.Says = fmt.Sprintf("%s: first eggs %s; act if there are none by %s", cal.Begin, eggs.Usual, longDay(e.ExpectBy))
	if c.cut {
		e.Notes = append(e.Notes, fmt.Sprintf("queen cells were cut on %s: what is said holds for one that was missed", shortDay(c.seen)))
	}
}

// judgeOldBrood judges a colony without eggs or larvae in which brood was seen
// at some time.
func (t *queenTrack) judgeOldBrood(e *QueenEvidence) {
	f := t.last
	noEggs := f.brood["eggs"] == denied
	switch {
	case f.noBrood():
		e.State, e.ExpectBy = Queenless, f.on
		e.Says = fmt.Sprintf("no brood of any stage on %s: if none was overlooked, the last egg was laid by %s", shortDay(f.on), longDay(e.LastEgg.Usual.To))
		e.Notes = append(e.Notes, "in winter and in a dearth a queen may simply rest")
	case noEggs || f.anyBrood():
		e.State = WasLaying
		if f.brood["open_brood"] == shown {
			e.Sureness = Likely
		}
		if !noEggs {
			e.Says = fmt.Sprintf("by the brood of %s the last egg was laid within %s; eggs and larvae were not spoken of", shortDay(f.on), e.LastEgg.Usual)
			return
		}
		cal := calendarFromLoss("", Window{e.LastEgg.Usual, e.LastEgg.Usual})
		e.Calendar, e.ExpectBy = &cal, cal.When(MilestoneEggs).Outer.To
		e.Says = fmt.Sprintf("no eggs on %s; by the brood the last egg was laid within %s; if the queen was lost then, a young one lays %s", shortDay(f.on), e.LastEgg.Usual, cal.When(MilestoneEggs).Usual)
	default:
		e.State = NoSign
		e.Says = fmt.Sprintf("no sign of a laying queen noted since %s", longDay(t.lastSign()))
	}
}

func (t *queenTrack) judgeNothing(e *QueenEvidence) {
	f := t.last
	e.State = NoSign
	switch {
	case f.noBrood():
		e.State, e.ExpectBy = Queenless, f.on
		e.Says = fmt.Sprintf("no brood of any stage on %s, and none recorded before", shortDay(f.on))
	case !t.seen.IsZero():
		e.Says = fmt.Sprintf("queen seen on %s, nothing of her since", shortDay(t.seen))
	default:
		e.Says = fmt.Sprintf("no sign of a queen recorded up to %s", shortDay(f.on))
	}
}

// anyBrood reports whether brood of any stage was seen in the inspection.
func (f *queenFacts) anyBrood() bool {
	for _, s := range f.brood {
		if s == shown {
			return true
		}
	}
	return false
}

// lastSign is the last day on which the queen, eggs or larvae were seen.
func (t *queenTrack) lastSign() Date {
	sign := laterOf(t.seen, t.eggsOn)
	if sign.IsZero() && len(t.brood) > 0 {
		sign = t.brood[len(t.brood)-1].On
	}
	return sign
}

// weigh lists what speaks for the state and what against it: the cells or the
// gift that a young queen rests on, and what was seen and missed at the last
// inspection. What tells of a laying queen speaks against every state without one.
func (t *queenTrack) weigh(e *QueenEvidence) {
	f := t.last
	laying := e.State == Laying || e.State == QueenThere
	add := func(path, says string, tellsOfQueen bool) {
		list := &e.Against
		if tellsOfQueen == laying {
			list = &e.For
		}
		*list = append(*list, Finding{f.on, path, says})
	}
	if t.cohort != nil && e.Calendar != nil && len(e.Also) == 0 {
		e.For = slices.Clone(t.cohort.shown)
	}
	if e.State == LayingWorkers {
		e.For = append(e.For, Finding{t.layers, "signs.laying_worker", "sign of laying workers"})
	}
	for _, what := range []string{"eggs", "open_brood", "capped_brood"} {
		switch {
		case f.brood[what] == denied:
			add("contents."+what, "no "+broodName(what)+" found", false)
		case f.brood[what] == shown && e.State == Laying && what != "capped_brood":
			add(f.pathOf(what), broodName(what)+" seen", true)
		}
	}
	switch {
	case f.queenSeen == shown && !f.virgin:
		add("queen.seen", "queen seen", true)
	case f.queenSeen == denied && e.State != Laying:
		add("queen.seen", "queen not seen, which by itself says little: she is easily missed", false)
	}
	switch f.queenright {
	case shown:
		add("queenright", "the keeper called the colony queenright", true)
	case denied:
		add("queenright", "the keeper called the colony queenless", false)
	}
	if f.noCells() && e.State == RaisingQueen {
		e.Against = append(e.Against, Finding{f.on, "queen_cells.any", "no queen cells found"})
	}
}

// addNotes calms where the queen was looked for in vain, and tells of both parts
// of a split.
func (t *queenTrack) addNotes(e *QueenEvidence) {
	f := t.last
	if e.State == Laying && f.queenSeen != shown {
		e.Notes = append(e.Notes, noWorry)
	}
	if f.split {
		cal := calendarFromLoss("split", onDay(f.on))
		e.Notes = append(e.Notes, fmt.Sprintf("split on %s: the part without the queen has a new queen out %s and first eggs %s",
			shortDay(f.on), cal.When(MilestoneEmerges).Usual, cal.When(MilestoneEggs).Usual))
	}
}

// addAlso tells of queen cells while the old queen is, or may be, still there:
// swarming or supersedure.
func (t *queenTrack) addAlso(e *QueenEvidence, today Date) {
	c := t.cohort
	if c == nil || c.stage == "put in" || c.stage == "emerged" || c.stage == "virgin seen" || today.Compare(c.calendar.When(MilestoneEggs).Outer.To) > 0 {
		return
	}
	swarm := c.calendar.When(MilestoneSwarm)
	open := !swarm.IsZero() && today.Compare(swarm.Outer.To) <= 0
	switch {
	case e.State == Laying || e.State == QueenThere:
		e.Calendar, e.SwarmRisk = &c.calendar, open
		e.Also = append(e.Also, RaisingQueen)
		e.Notes = append(e.Notes, "queen cells beside a laying queen: swarming or supersedure")
	case e.State == RaisingQueen && t.last.brood["eggs"] != denied && !c.swarmed:
		e.SwarmRisk = open
		e.Notes = append(e.Notes, "whether the old queen is still there was not said")
	}
	if e.SwarmRisk {
		e.Notes = append(e.Notes, "a swarm usually leaves "+swarm.Usual.String())
	}
}

// recentFindings is how many of the latest sightings of brood a verdict lists:
// what was seen before them no longer bears on it.
const recentFindings = 6

func ago(days int) string {
	switch days {
	case 0:
		return "today"
	case 1:
		return "yesterday"
	}
	return fmt.Sprintf("%d days ago", days)
}

func (e *QueenEvidence) explain(today Date) {
	e.Why = Explanation{
		What:    "queen",
		Result:  fmt.Sprintf("%s, %s, as of %s (%s)", e.State, e.Sureness, longDay(e.AsOf), ago(today.Sub(e.AsOf))),
		Formula: "eggs: laid in the last 3 days; open larvae: 3 to 9 days ago; sealed brood: 9 to 21 days ago; the youngest that was seen counts, and what was looked for and not found ends the span",
		Caveats: e.Notes,
	}
	for _, list := range []struct {
		name     string
		findings []Finding
	}{{"speaks for it", e.For}, {"speaks against it", e.Against}, {"brood seen", e.Brood}} {
		for _, f := range list.findings {
			e.Why.Inputs = append(e.Why.Inputs, Input{list.name, f.Says, longDay(f.On) + ", " + f.Path})
		}
	}
	if !e.LastEgg.IsZero() {
		e.Why.Inputs = append(e.Why.Inputs, Input{"last egg", e.LastEgg.String(), "from the brood, and from what was not found"})
	}
	if !e.Seen.IsZero() {
		e.Why.Inputs = append(e.Why.Inputs, Input{"queen last seen", longDay(e.Seen), ""})
	}
	e.Why.From = withReferences(from("CHBR", "TRUNCH1", "UCANR87"), Worker.Emerge.From...)
	if e.Calendar != nil {
		e.Why.From = withReferences(e.Why.From, e.Calendar.Why.From...)
	}
}
