package colony

import (
	"fmt"
	"slices"
	"strings"
)

// QueenState is what the records say of a colony's queen.
type QueenState string

// The states of a queen. Laying and QueenThere are of the day of the last
// inspection, not of today.
const (
	Laying        QueenState = "laying"
	QueenThere    QueenState = "queen there"
	WasLaying     QueenState = "was laying"
	NoSign        QueenState = "no sign of a queen"
	RaisingQueen  QueenState = "raising a queen"
	VirginMating  QueenState = "virgin or mating"
	Queenless     QueenState = "queenless and brood-less as far as seen"
	LayingWorkers QueenState = "laying workers"
)

// Sureness orders how well a state is borne out. It rests on what was seen;
// what was not seen never raises it.
type Sureness int

// The degrees of sureness.
const (
	Unsure Sureness = iota // by what was not seen, by the calendar, or by old brood
	Likely                 // by larvae or queen cells
	Sure                   // by eggs, or the queen herself
)

// String names the degree.
func (s Sureness) String() string { return [...]string{"unsure", "likely", "sure"}[s] }

// MarshalText writes the degree's name.
func (s Sureness) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Finding is one observation that speaks for or against a state.
type Finding struct {
	On   Date   `json:"on"`
	Path string `json:"path,omitempty"`
	Says string `json:"says"`
}

// QueenEvidence is what all inspections together say of the queen.
type QueenEvidence struct {
	AsOf      Date           `json:"as_of,omitzero"` // last inspection that says anything of queen or brood
	State     QueenState     `json:"state"`
	Also      []QueenState   `json:"also,omitempty"` // at the same time: raising a queen while the old one lays
	Sureness  Sureness       `json:"sureness"`
	LastEgg   Window         `json:"last_egg,omitzero"` // when the last egg was laid, as of AsOf; zero where no brood was ever seen
	Seen      Date           `json:"queen_seen,omitzero"`
	For       []Finding      `json:"for,omitempty"`        // the state
	Against   []Finding      `json:"against,omitempty"`    // the state
	Brood     []Finding      `json:"brood,omitempty"`      // the latest that date the last egg
	Calendar  *QueenCalendar `json:"calendar,omitempty"`   // of the queen being raised or put in
	ExpectBy  Date           `json:"expect_by,omitzero"`   // eggs or a queen should be seen by then; act after it
	SwarmRisk bool           `json:"swarm_risk,omitempty"` // queen cells, and the old queen is or may be there
	Says      string         `json:"says"`
	Notes     []string       `json:"notes,omitempty"`
	Why       Explanation    `json:"why"`
}

// judgeLast weighs all inspections of one hive, sorted by time. It judges the
// queen before each of the last visits, as of the day of that visit, and after
// all of them, as of the day of the last one and as of today: two verdicts more
// than visits, from one pass over the history. It claims only what the records
// carry: eggs say that a queen laid within the last three days, not that she is
// there now.
func judgeLast(known []Inspection, today Date, visits int) []QueenEvidence {
	t := &queenTrack{}
	var out []QueenEvidence
	for i := range known {
		if len(known)-i <= visits {
			out = append(out, t.judge(dayOf(&known[i])))
		}
		if f := factsOf(&known[i]); f.informative() {
			t.take(f)
		}
	}
	if len(known) > 0 {
		out = append(out, t.judge(dayOf(&known[len(known)-1])))
	}
	return append(out, t.judge(today))
}

// queenTrack follows the evidence through the inspections.
type queenTrack struct {
	last     queenFacts // the last that says anything
	lastEgg  earliest   // the last egg was laid no earlier than this
	hasBrood bool
	seen     Date // queen, not virgin
	eggsOn   Date // last day with eggs or larvae of a queen
	layers   Date // laying workers since
	cohort   *cellCohort
	brood    []Finding
}

// earliest is the earliest day that observations leave open: by the usual
// figures, and at the outermost.
type earliest struct{ usual, outer Date }

// cellCohort is one lot of queen cells, or a queen put in, that is still on
// its way.
type cellCohort struct {
	calendar QueenCalendar
	laid     Window // zero where the cells do not tell
	stage    string
	seen     Date
	shown    []Finding // the sightings that it rests on
	strength Sureness  // Sure only where the virgin herself was seen
	cut      bool
	swarmed  bool // a swarm has left since
}

func (t *queenTrack) take(f queenFacts) {
	for _, e := range f.earlier {
		t.takeEarlier(e)
	}
	if f.layers == shown {
		t.layers = f.on
	}
	if f.queenSeen == shown && !f.virgin {
		t.seen, t.layers = f.on, Date{}
	}
	t.takeBrood(f)
	t.takeCells(f)
	t.takeGift(f)
	t.last = f
}

func (t *queenTrack) takeEarlier(e pastFact) {
	switch e.event {
	case "eggs_seen":
		t.raise("eggs", e.on, "earlier.eggs_seen")
		t.eggsOn = laterOf(t.eggsOn, e.on)
	case "queen_seen":
		t.seen = laterOf(t.seen, e.on)
	case "requeened":
		t.startGift("mated", Finding{e.on, "earlier.requeened", "requeened"})
	case "swarmed":
		t.startSwarmed(e.on)
	}
}

// startSwarmed begins a lot of cells that nobody saw: a prime swarm usually
// leaves when the first cell is sealed.
func (t *queenTrack) startSwarmed(on Date) {
	if t.cohort != nil {
		t.cohort.swarmed = true
		return
	}
	laid := Window{DateRange{on.AddDays(-10), on.AddDays(-8)}, DateRange{on.AddDays(-17), on.AddDays(-3)}}
	cal := calendar("swarm", laid, QueenBee.EmergeWindow(laid).notBefore(on))
	cal.Anchor, cal.Begin = on, "swarmed on "+longDay(on)
	cal.explain()
	t.cohort = &cellCohort{calendar: cal, laid: laid, stage: "capped", seen: on, strength: Unsure, swarmed: true,
		shown: []Finding{{on, "earlier.swarmed", "swarmed"}}}
}

// takeBrood moves the earliest day of the last egg forward. While laying
// workers are about, eggs and larvae are no word of a queen.
func (t *queenTrack) takeBrood(f queenFacts) {
	for _, what := range broodWords {
		if f.brood[what] != shown {
			continue
		}
		young := what == "eggs" || what == "open_brood"
		if !t.layers.IsZero() && (young || what == "drone_brood" || what == "brood") {
			continue
		}
		t.raise(what, f.on, f.pathOf(what))
		if young {
			t.eggsOn = f.on
		}
	}
}

func (t *queenTrack) raise(what string, on Date, path string) {
	w, _ := laidWindow(what, on)
	t.hasBrood = true
	t.lastEgg.usual = laterOf(t.lastEgg.usual, w.Usual.From)
	t.lastEgg.outer = laterOf(t.lastEgg.outer, w.Outer.From)
	t.brood = append(t.brood, Finding{on, path,
		fmt.Sprintf("%s: laid %s or later", broodName(what), shortDay(w.Usual.From))})
}

func (t *queenTrack) takeCells(f queenFacts) {
	t.settle(f)
	if stage := f.oldestCell(); stage != "" {
		t.joinCohort(f, stage)
	} else if f.virgin {
		t.startGift("virgin", Finding{f.on, "queen.virgin", "virgin queen seen"})
		t.cohort.stage, t.cohort.strength = "virgin seen", Sure
	} else if f.noCells() && t.cohort != nil {
		t.cohort.strength = Unsure
	}
	if f.cut && t.cohort != nil {
		t.cohort.cut, t.cohort.strength = true, Unsure
	}
}

// settle ends a cohort once brood is seen that its queen can have laid, or long
// after she should have begun.
func (t *queenTrack) settle(f queenFacts) {
	if t.cohort == nil || t.layers == f.on {
		return
	}
	eggs := t.cohort.calendar.When(MilestoneEggs).Outer
	if _, inCell := cellAges[t.cohort.stage]; inCell {
		// Eggs sooner after the sighting are rather the old queen's than those of a
		// young one whose cell was overlooked.
		eggs.From = laterOf(eggs.From, t.cohort.seen.AddDays(int(firstEggs.Value.Low)))
	}
	if f.on.Compare(eggs.To.AddDays(int(Worker.Emerge.Value.High))) > 0 ||
		f.brood["eggs"] == shown && f.on.Compare(eggs.From) >= 0 {
		t.cohort = nil
		return
	}
	for _, what := range broodWords {
		laid, _ := laidWindow(what, f.on)
		if f.brood[what] == shown && what != "drone_brood" && laid.Outer.From.Compare(eggs.From) >= 0 {
			t.cohort = nil
			return
		}
	}
}

// joinCohort adds cells to the lot that is under way if both can be the same,
// and starts a new lot if they cannot.
func (t *queenTrack) joinCohort(f queenFacts, stage string) {
	fresh, _ := calendarFromCell(stage, f.kind, f.on)
	next := &cellCohort{calendar: fresh, laid: fresh.When(MilestoneLaid), stage: stage, seen: f.on, strength: Likely,
		shown: []Finding{{f.on, f.pathOfCells(stage), stageWord(stage) + " queen cell"}}}
	if old := t.cohort; old != nil && !old.cut {
		next.narrow(old)
	}
	t.cohort = next
}

// narrow makes use of what was known of the same cells before. Cells that
// cannot be the same leave the cohort as it is.
func (c *cellCohort) narrow(old *cellCohort) {
	c.swarmed = old.swarmed
	emerges := c.calendar.When(MilestoneEmerges)
	if !old.laid.IsZero() && !c.laid.IsZero() {
		both, ok := old.laid.Meet(c.laid)
		if !ok {
			return
		}
		c.laid, emerges = both, firstOut(c.stage, both, c.seen)
	} else {
		both, ok := old.calendar.When(MilestoneEmerges).Meet(emerges)
		if !ok {
			return
		}
		c.laid, emerges = Window{}, both
	}
	c.shown = append(slices.Clone(old.shown), c.shown...)
	kind, begin, anchor := c.calendar.Kind, old.calendar.Begin+", "+c.calendar.Begin, old.calendar.Anchor
	if kind == "" {
		kind = old.calendar.Kind
	}
	c.calendar = calendar(kind, c.laid, emerges)
	c.calendar.Begin, c.calendar.Anchor = begin, anchor
	c.calendar.explain()
}

func (t *queenTrack) takeGift(f queenFacts) {
	switch {
	case f.given != "":
		t.startGift(f.given, Finding{f.on, "actions.requeen", giftWord(f.given) + " put in"})
	case f.released && t.cohort != nil && t.cohort.stage == "put in":
		t.startGift("mated", Finding{f.on, "actions.release_queen", "queen released"})
	}
}

func (t *queenTrack) startGift(what string, shown Finding) {
	t.layers = Date{}
	t.cohort = &cellCohort{calendar: calendarFromGift(what, shown.On), stage: "put in", seen: shown.On, strength: Likely, shown: []Finding{shown}}
}

// pathOf names the first leaf that shows the content.
func (f *queenFacts) pathOf(what string) string {
	for i := range f.ins.Bars {
		if c := f.ins.Bars[i].Content(what); c != nil && c.Present {
			return fmt.Sprintf("bars.%d.%s", f.ins.Bars[i].Bar, what)
		}
	}
	return "contents." + what
}

// pathOfCells names the first leaf that shows queen cells of the stage.
func (f *queenFacts) pathOfCells(stage string) string {
	for i := range f.ins.Bars {
		for _, c := range presentCells(f.ins.Bars[i].QueenCells) {
			if c.Stage == stage {
				return fmt.Sprintf("bars.%d.queen_cells.%s", f.ins.Bars[i].Bar, stage)
			}
		}
	}
	return "queen_cells." + stage
}

func broodName(what string) string { return strings.ReplaceAll(what, "_", " ") }
