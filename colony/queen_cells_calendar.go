package colony

import "fmt"

// How a young queen goes on, in days after she has left her cell. Weather that
// keeps her in shifts everything to the late ends.
var (
	virginFlies = Constant{"mating flights after emergence", Between(5, 8, 21, unitDays), "5 to 6 days read, about 10 in another source; three weeks at most",
		from("MCNEIL15", "UCANR87", "WILDFLOWER")}
	virginFliesUsually = Between(6, 8, 10, unitDays)

	firstEggs = Constant{"first eggs after emergence", Between(6, 11, 28, unitDays), "two to three weeks in one source, 7 to 25 days by season in another; observed 10 to 25 days after ripe cells were given",
		from("KILLOWEN", "GOODHG", "TRIBES", "CONNOR", "EVERSWEET", "AURELL25")}
	// From 8 days, the least that one source gives [TRIBES], to three weeks [KILLOWEN].
	firstEggsUsually = Between(8, 11, 21, unitDays)
)

// cellAges are the ages of the bee in a queen cell of a stage, in days since
// laying. A cell of no said stage may be anything with a bee in it.
var cellAges = map[string]broodAge{
	"charged": {Between(0, 4, 8, unitDays), Between(0, 4, 9, unitDays)},
	"capped":  {Between(8, 12, 16, unitDays), Between(7, 12, 17, unitDays)},
	"any":     {Between(0, 8, 16, unitDays), Between(0, 8, 17, unitDays)},
}

// emergedFor is how long ago the queen may have left a cell that is found
// open: bees tear such cells down within days, as a rule.
var emergedFor = Constant{"an open queen cell still stands", Between(0, 3, 14, unitDays), "", from("PRACTICE")}

// castDays is for how long after the first queen has left her cell sealed cells
// may still stand, with a queen in each: as a rule the bees tear them down in a
// day or two, but they keep them while casts are to leave.
var castDays = Constant{"sealed cells stand on after the first queen is out", Between(1, 2, 8, unitDays), "longest while casts are to leave", from("PRACTICE")}

// Milestone is one date of a queen's way from egg to laying.
type Milestone struct {
	Name string `json:"name"`
	When Window `json:"when"`
	Note string `json:"note,omitempty"`
}

// QueenCalendar is what follows from queen cells, or from a queen put in.
type QueenCalendar struct {
	Kind       string      `json:"kind"` // swarm, supersedure, emergency, split, introduced, or "" where not said
	Begin      string      `json:"begin"`
	Anchor     Date        `json:"anchor,omitzero"` // first day on which these cells or this queen were recorded
	Milestones []Milestone `json:"milestones"`
	Why        Explanation `json:"why"`
}

// The names of milestones.
const (
	MilestoneLaid     = "egg laid"
	MilestoneCapped   = "queen cell sealed"
	MilestoneSwarm    = "prime swarm, weather permitting"
	MilestoneEmerges  = "queen emerges"
	MilestoneCasts    = "casts possible"
	MilestoneFlies    = "mating flights"
	MilestoneEggs     = "first eggs"
	MilestoneSealed   = "first sealed brood"
	MilestoneNewBees  = "first new workers"
	MilestoneReleased = "queen free among the bees"
)

// When returns the window of the named milestone, zero where there is none.
func (c QueenCalendar) When(name string) Window {
	for _, m := range c.Milestones {
		if m.Name == name {
			return m.When
		}
	}
	return Window{}
}

// cellLaidWindow says when the egg in a queen cell of the stage was laid, for
// a cell seen on the day. Cups, torn cells and cells that a queen has left do
// not tell, and give false.
func cellLaidWindow(stage string, seen Date) (Window, bool) {
	age, ok := cellAges[stage]
	if !ok {
		return Window{}, false
	}
	return age.laidBefore(seen), true
}

// calendarFromCell works out what follows from queen cells of a stage seen on
// a day; kind is swarm, supersedure, emergency or empty. Stages that do not
// tell an age give false.
func calendarFromCell(stage, kind string, seen Date) (QueenCalendar, bool) {
	var c QueenCalendar
	if laid, ok := cellLaidWindow(stage, seen); ok {
		c = calendar(kind, laid, firstOut(stage, laid, seen))
	} else if stage == "emerged" {
		back := emergedFor.Value
		emerged := Window{DateRange{seen.AddDays(-7), seen}, DateRange{seen.AddDays(-int(back.High)), seen}}
		c = calendar(kind, Window{}, emerged)
	} else {
		return c, false
	}
	c.Anchor, c.Begin = seen, fmt.Sprintf("%s queen cell seen on %s", stageWord(stage), longDay(seen))
	c.explain()
	return c, true
}

// firstOut is when the first queen leaves her cell, where cells of a stage whose
// eggs were laid in the window were seen on a day. Usually it is a queen of
// these cells; at the outermost a cell that a queen has left was overlooked
// beside sealed ones.
func firstOut(stage string, laid Window, seen Date) Window {
	w := QueenBee.EmergeWindow(laid).notBefore(seen)
	if stage == "capped" || stage == "any" {
		w.Outer.From = w.Outer.From.AddDays(-int(castDays.Value.High))
	}
	return w
}

// calendarFromLoss works out what follows when a colony lost its queen, or a
// split was left without one, between two days: it raises one from a larva
// that is hatched and not yet two days old.
func calendarFromLoss(kind string, lost Window) QueenCalendar {
	// The egg of the larva was laid 3 to 5 days before the loss; eggs present at
	// the loss may be used too, so the outermost is an egg laid on the last day.
	laid := Window{lost.Usual.After(-5, -3), lost.Outer.After(-6, 0)}
	c := calendar(kind, laid, QueenBee.EmergeWindow(laid))
	c.Anchor, c.Begin = lost.Usual.To, "queen gone "+lost.Usual.String()
	c.explain()
	c.Why.From = withReferences(c.Why.From, from("EMERGENCY", "FATD")...)
	return c
}

// calendarFromGift works out what follows when a queen was put in on a day.
// What is "mated", "virgin" or "cell" (a sealed cell, ripe or not).
func calendarFromGift(what string, on Date) QueenCalendar {
	var c QueenCalendar
	switch what {
	case "virgin":
		free := onDay(on).After(Between(0, 2, 4, unitDays), Between(0, 2, 7, unitDays))
		c = calendar("introduced", Window{}, free)
		c.Milestones[0].Name = MilestoneReleased
	case "cell":
		laid, _ := cellLaidWindow("capped", on)
		c = calendar("introduced", Window{}, QueenBee.EmergeWindow(laid).notBefore(on))
	default:
		free := onDay(on).After(Between(0, 3, 5, unitDays), Between(0, 3, 8, unitDays))
		eggs := free.After(Between(1, 3, 5, unitDays), Between(0, 3, 14, unitDays))
		c.Kind = "introduced"
		c.Milestones = append([]Milestone{{MilestoneReleased, free, "from her cage"}}, afterEggs(eggs)...)
		c.Why.From = from("PRACTICE")
	}
	c.Anchor, c.Begin = on, fmt.Sprintf("%s put in on %s", giftWord(what), longDay(on))
	c.explain()
	return c
}

// calendar lists the milestones from the laying and emergence windows; a zero
// laid window leaves out what lies before emergence.
func calendar(kind string, laid, emerges Window) QueenCalendar {
	c := QueenCalendar{Kind: kind}
	add := func(name string, when Window, note string) {
		c.Milestones = append(c.Milestones, Milestone{name, when, note})
	}
	if !laid.IsZero() {
		capped := QueenBee.CapWindow(laid)
		add(MilestoneLaid, laid, "")
		add(MilestoneCapped, capped, "")
		if kind == "swarm" || kind == "" {
			// The prime swarm usually goes when the first cell is sealed, or within
			// some days of it as the weather allows (common practice: four); it can go
			// earlier, above all after cells were cut, or later in bad weather, but
			// hardly after the first virgin is out.
			swarm := Window{capped.Usual.After(0, 4), DateRange{capped.Outer.From.AddDays(-5), emerges.Outer.To}}.ordered()
			add(MilestoneSwarm, swarm, "earlier after cells were cut, later in bad weather")
		}
	}
	add(MilestoneEmerges, emerges, "")
	if kind == "swarm" || kind == "" {
		add(MilestoneCasts, emerges.After(Between(0, 2, 4, unitDays), Between(0, 2, castDays.Value.High, unitDays)), "only if a prime swarm has left")
	}
	add(MilestoneFlies, emerges.After(virginFliesUsually, virginFlies.Value), "do not open the hive in the afternoon of a fine day")
	eggs := emerges.After(firstEggsUsually, firstEggs.Value)
	c.Milestones = append(c.Milestones, afterEggs(eggs)...)
	return c
}

func afterEggs(eggs Window) []Milestone {
	return []Milestone{
		{MilestoneEggs, eggs, ""},
		{MilestoneSealed, eggs.After(aDayEitherWay(Worker.Cap), Worker.Cap.Value), ""},
		{MilestoneNewBees, eggs.After(aDayEitherWay(Worker.Emerge), Worker.Emerge.Value), ""},
	}
}

// aDayEitherWay is the usual span of a development in calendar days.
func aDayEitherWay(c Constant) Range {
	return Between(c.Value.Best-1, c.Value.Best, c.Value.Best+1, unitDays)
}

// notBefore cuts off what lies before the day on which the bee was still seen
// in her cell.
func (w Window) notBefore(d Date) Window {
	w.Usual.From = laterOf(w.Usual.From, d)
	w.Usual.To = laterOf(w.Usual.To, d)
	w.Outer.From = laterOf(w.Outer.From, d)
	w.Outer.To = laterOf(w.Outer.To, d)
	return w
}

func (c *QueenCalendar) explain() {
	c.Why.What = "queen calendar"
	c.Why.Result = "first eggs " + c.When(MilestoneEggs).String()
	c.Why.Formula = "day 0 is the day of laying; sealed day 8, emerged day 16; first flight 6 to 10 and first eggs 8 to 21 days after that"
	c.Why.Inputs = append(c.Why.Inputs, Input{Name: "begins with", Value: c.Begin})
	for _, m := range c.Milestones {
		c.Why.Inputs = append(c.Why.Inputs, Input{m.Name, m.When.String(), m.Note})
	}
	for _, k := range []Constant{QueenBee.Cap, QueenBee.Emerge, castDays, virginFlies, firstEggs, Worker.Cap, Worker.Emerge} {
		c.Why.Inputs = append(c.Why.Inputs, k.input())
		c.Why.From = withReferences(c.Why.From, k.From...)
	}
	c.Why.Caveats = append(c.Why.Caveats, "usual days are those of the cells that were seen; the outermost allow for a cell that a queen has left, overlooked beside sealed ones")
}

func stageWord(stage string) string {
	return map[string]string{"charged": "open charged", "capped": "sealed", "any": "a", "emerged": "emerged"}[stage]
}

func giftWord(what string) string {
	return map[string]string{"virgin": "virgin queen", "cell": "queen cell", "mated": "mated queen"}[what]
}
