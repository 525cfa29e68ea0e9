package colony

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// Intervals between visits and counts, in days; common practice where no
// source stands beside them.
const (
	lookWithCells  = 5   // swarm signs: every 5 days [TRUNCH1]
	lookInSwarming = 7   // a gap of 7 days sees every queen cell before it is sealed [MBBKA]
	lookInSeason   = 14  // common practice
	lookAgain      = 6   // after eggs were missing: queen cells show within days
	miteInterval   = 30  // between counts in the season; common practice
	miteAfterTreat = 21  // after a treatment; common practice, the label may say otherwise
	feederLook     = 7   // after feeding; common practice
	staleDays      = 400 // without a visit, after which no routine is asked for
	autumnDays     = 120 // without a visit, after which no winter preparation is
)

// queen lists what the queen evidence asks for.
func (l *dueList) queen(q QueenEvidence) {
	switch q.State {
	case RaisingQueen, VirginMating:
		eggs := q.Calendar.When(MilestoneEggs)
		what := "look for eggs; leave the hive shut until then"
		if q.SwarmRisk {
			what = "look for eggs"
		}
		d := l.add("queen", q.Calendar.Anchor, "eggs", eggs.Usual.To, what,
			fmt.Sprintf("%s, first eggs %s; act if there are none by %s", q.Calendar.Begin, eggs.Usual, longDay(q.ExpectBy)))
		d.Until = q.ExpectBy
	case QueenThere:
		if q.Calendar != nil && len(q.Also) == 0 {
			eggs := q.Calendar.When(MilestoneEggs)
			l.add("queen", q.Calendar.Anchor, "eggs", eggs.Usual.To, "look for eggs of the new queen", q.Says).Until = q.ExpectBy
		}
	case WasLaying:
		if !q.ExpectBy.IsZero() {
			l.add("queen", q.AsOf, "again", q.AsOf.AddDays(lookAgain), "look again for eggs and for queen cells", q.Says).Until = q.ExpectBy
		}
	case Queenless:
		l.add("queen", q.AsOf, "test", q.AsOf.AddDays(1), "make sure whether there is a queen: a comb with eggs from another hive shows it within days", q.Says)
	case LayingWorkers:
		l.add("queen", q.AsOf, "workers", q.AsOf.AddDays(7), "look again: still several eggs in a cell?", q.Says)
	case NoSign:
		if !q.ExpectBy.IsZero() {
			l.add("queen", q.ExpectBy, "overdue", q.ExpectBy, "look for eggs now", q.Says)
		}
	}
}

// leaveShut reports whether a young queen is under way who is not to be
// disturbed, and no swarm is to be feared.
func (e *QueenEvidence) leaveShut() bool {
	return e.State == RaisingQueen && !e.SwarmRisk || e.State == VirginMating
}

// swarm warns where there are queen cells and the old queen is or may be there.
func (l *dueList) swarm(q QueenEvidence) {
	if !q.SwarmRisk {
		return
	}
	swarm := q.Calendar.When(MilestoneSwarm)
	on := laterOf(q.AsOf, earlierOf(swarm.Usual.From, q.AsOf.AddDays(lookWithCells)))
	d := l.add("swarm", q.Calendar.Anchor, "", on, "decide on the queen cells before a swarm leaves",
		fmt.Sprintf("%s; the swarm usually leaves %s", q.Calendar.Begin, swarm.Usual))
	d.Until = swarm.Outer.To
}

// nextInspection gives the next routine visit, anchored to the last one. A
// visit that the keeper planned stands in its place, and a hive in which a
// queen is being raised is left in peace.
func (l *dueList) nextInspection(known []Inspection, today Date, q QueenEvidence, set Settings) {
	last := &known[len(known)-1]
	on := dayOf(last)
	if today.Sub(on) > staleDays || q.leaveShut() {
		return
	}
	for _, p := range last.Plans {
		if p.Do == "inspect" {
			return
		}
	}
	next, why := on.AddDays(lookInSeason), "every two weeks in the season"
	switch {
	case len(q.Also) > 0 || q.SwarmRisk:
		next, why = on.AddDays(lookWithCells), "queen cells: every five days"
	case set.Season.SwarmTime(on):
		next, why = on.AddDays(lookInSwarming), "swarm season: every seven days sees each queen cell before it is sealed"
	case !set.Season.Active(next):
		next, why = set.Season.Next(on, time.April), "first look of the season, when it is warm enough for shirt sleeves"
	}
	l.add("inspect", on, "", next, "inspect", fmt.Sprintf("last on %s; %s", longDay(on), why))
}

// space asks for bars while colonies grow and build; later in the year empty
// bars before the follower are of no use to them.
func (l *dueList) space(known []Inspection, today Date, queen QueenEvidence, set Settings) {
	s := judgeSpace(known, today, queen, set.Season)
	if s.GiveBy.IsZero() {
		return
	}
	on := s.GiveBy
	if s.Free.Best == 0 {
		on = s.AsOf
	}
	if !s.Swarmy || !set.Season.SwarmTime(on) || today.Sub(s.AsOf) > rateDays {
		return
	}
	l.add("space", s.AsOf, "", on, fmt.Sprintf("give %d %s", s.Give, plural(s.Give, "bar")), s.String())
}

// followUps lists what feedings and treatments ask for. A feed is looked at by
// the next visit; a treatment by the first count that comes late enough to show
// what it did.
func (l *dueList) followUps(known []Inspection, today Date) {
	counted := 0 // the first visit that may count for the treatment at hand
	for i := range known {
		on := dayOf(&known[i])
		for counted < len(known) && (dayOf(&known[counted]).Compare(on.AddDays(feederLook)) < 0 || !counts(&known[counted])) {
			counted++
		}
		for _, t := range known[i].Actions {
			switch t.Do {
			case "feed":
				d := l.add("feeding", on, t.What, on.AddDays(feederLook), "look whether the feed is taken", "fed on "+longDay(on))
				switch {
				case i+1 < len(known):
					d.Status, d.Closed = StatusDone, "inspected on "+longDay(dayOf(&known[i+1]))
				case today.Sub(d.On) > planLapses:
					d.lapse()
				}
			case "treat":
				d := l.add("treatment", on, t.What, on.AddDays(miteAfterTreat), "count mites after the treatment",
					strings.TrimSpace("treated "+t.What)+" on "+longDay(on)+"; when it ends or is repeated, the label says")
				switch {
				case counted < len(known):
					d.Status, d.Closed = StatusDone, "counted on "+longDay(dayOf(&known[counted]))
				case today.Sub(d.On) > planLapses:
					d.lapse()
				}
			}
		}
	}
}

// counts reports whether mites were counted at the visit.
func counts(ins *Inspection) bool {
	m := ins.Mites
	return m != nil && m.Count != nil && m.Method != "" && m.Method != "seen"
}

// mites asks for the next count: a month after the last one in the season, in a
// week where the last one is near a limit, and a month into the next season
// where a season has gone by without. After a treatment the count that is to
// follow it stands in its place, and a colony that is raising a queen is left
// in peace.
func (l *dueList) mites(known []Inspection, today Date, q QueenEvidence, set Settings) {
	visit := dayOf(&known[len(known)-1])
	if today.Sub(visit) > staleDays || q.leaveShut() {
		return
	}
	on, detail, since := dayOf(&known[0]), "first", "no count recorded yet"
	why := since
	next := on.AddDays(miteInterval)
	if last := lastCount(known); last != nil {
		on, detail = dayOf(last), ""
		since = "last count on " + longDay(on)
		next, why = on.AddDays(miteInterval), since
		if r, ok := rateOf(last); ok {
			verdicts := againstLimits(r, set.MiteSet, set.Season)
			if nearLimit(verdicts) {
				next, why = on.AddDays(7), fmt.Sprintf("%s on %s, %s", r.Rate.Range, longDay(on), limitsInWords(verdicts, set.MiteSet))
			}
		}
	}
	season := set.Season.seasonOf(today)
	if next.Compare(season) < 0 || !set.Season.Active(next) {
		spring := set.Season.Next(laterOf(next, season), time.May)
		l.add("mites", on, "season "+spring.String()[:4], spring, "count mites", "first count of the season; "+since)
		return
	}
	if !treatedSince(known, on) {
		l.add("mites", on, detail, next, "count mites", why)
	}
}

func nearLimit(verdicts []MiteVerdict) bool {
	return slices.ContainsFunc(verdicts, func(v MiteVerdict) bool { return v.Over != "under" })
}

func lastCount(known []Inspection) *Inspection {
	for i := len(known) - 1; i >= 0; i-- {
		if counts(&known[i]) {
			return &known[i]
		}
	}
	return nil
}

// winter lists the preparations for the coming winter: stores by mid September,
// in time for syrup to be ripened (in the north it is to be finished by mid
// October [USDA-OW6]), and the entrance against mice by October.
func (l *dueList) winter(known []Inspection, today Date, set Settings) {
	if !set.Season.Preparing(today) || today.Sub(dayOf(&known[len(known)-1])) > autumnDays {
		return
	}
	august := set.Season.Next(today.AddMonths(-3).AddDays(1), time.August)
	stores := l.add("stores", august, "", august.AddMonths(1).AddDays(14), "make up the winter stores", set.Target.words())
	if ins := firstSince(known, august, func(ins *Inspection) bool { return storesEnough(ins, set) }); ins != nil {
		stores.Status, stores.Closed = StatusDone, "stores enough on "+longDay(dayOf(ins))
	}
	guard := l.add("winter", august, "entrance", august.AddMonths(2), "reduce the entrance against mice and robbing", "winter preparation; common practice")
	reduced := func(ins *Inspection) bool { return ins.Entrance == "reduced" || hasDeed(ins, "reduce_entrance") }
	if ins := firstSince(known, august, reduced); ins != nil {
		guard.Status, guard.Closed = StatusDone, "entrance reduced on "+longDay(dayOf(ins))
	}
}

// firstSince is the first inspection from a day on that answers.
func firstSince(known []Inspection, from Date, answers func(*Inspection) bool) *Inspection {
	for i := range known {
		if dayOf(&known[i]).Compare(from) >= 0 && answers(&known[i]) {
			return &known[i]
		}
	}
	return nil
}

func storesEnough(ins *Inspection, set Settings) bool {
	gap := storesGap(countFood(ins, set.Box), set.Target)
	return ins.Stores != nil && ins.Stores.Word == "heavy" || gap.Known() && gap.High <= 0
}

func hasDeed(ins *Inspection, do string) bool {
	for _, t := range ins.Actions {
		if t.Do == do {
			return true
		}
	}
	return false
}

// disease keeps the call to the inspector in view until it is answered or the
// sign is denied.
func (l *dueList) disease(known []Inspection, today Date) {
	for _, f := range diseaseSigns(within(known, today, CautionDays)) {
		l.add("disease", f.On, f.Says, f.On, "have the apiary inspector look at it; move nothing off the site until then", "seen: "+f.Says)
	}
}
