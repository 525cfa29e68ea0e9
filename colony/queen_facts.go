package colony

import "slices"

// said is what a record holds of one thing: nothing, that it is not there, or
// that it is.
type said int

const (
	unsaid said = iota
	denied
	shown
)

// queenFacts is what one inspection says that bears on the queen.
type queenFacts struct {
	ins   *Inspection
	on    Date
	brood map[string]said // by content: eggs, open_brood, capped_brood, …
	cells map[string]said // by stage
	kind  string          // of the queen cells, where said

	queenSeen  said
	virgin     bool
	queenright said
	layers     said // laying workers

	given    string // a queen put in on that day: mated, virgin or cell
	released bool
	split    bool
	cut      bool // queen cells cut

	earlier []pastFact
}

// pastFact is a sighting of an earlier day that the keeper spoke of.
type pastFact struct {
	event string
	on    Date
}

var broodWords = []string{"eggs", "open_brood", "capped_brood", "emerging_brood", "brood", "drone_brood"}

// factsOf reads one inspection. That a bar holds no eggs says nothing of the
// colony; only what is said of the colony as a whole denies.
func factsOf(ins *Inspection) queenFacts {
	f := queenFacts{ins: ins, on: dayOf(ins), brood: map[string]said{}, cells: map[string]said{}}
	for _, what := range broodWords {
		f.brood[what] = saidAnywhere(ins, what)
	}
	f.spreadDenial()
	f.readCells(ins.QueenCells)
	for i := range ins.Bars {
		f.readCells(presentCells(ins.Bars[i].QueenCells))
	}
	f.readQueen(ins)
	f.readDeeds(ins)
	return f
}

// saidAnywhere is what is said of a content: shown on any bar, or as said of the
// colony as a whole.
func saidAnywhere(ins *Inspection, what string) said {
	for i := range ins.Bars {
		if saidOf(ins.Bars[i].Content(what)) == shown {
			return shown
		}
	}
	return saidOf(ins.Content(what))
}

// spreadDenial lets "no brood" stand for every stage that was not shown.
func (f *queenFacts) spreadDenial() {
	if f.brood["brood"] != denied {
		return
	}
	for _, what := range []string{"eggs", "open_brood", "capped_brood", "emerging_brood"} {
		if f.brood[what] == unsaid {
			f.brood[what] = denied
		}
	}
}

func (f *queenFacts) readCells(list []QueenCells) {
	for _, c := range list {
		if c.Present && (c.Count == nil || *c.Count > 0) {
			f.cells[c.Stage] = shown
			if c.Kind != "" {
				f.kind = c.Kind
			}
		} else if f.cells[c.Stage] == unsaid {
			f.cells[c.Stage] = denied
		}
	}
}

// presentCells drops denials: none on this bar is not none in the hive.
func presentCells(list []QueenCells) []QueenCells {
	return slices.DeleteFunc(slices.Clone(list), func(c QueenCells) bool { return !c.Present })
}

func (f *queenFacts) readQueen(ins *Inspection) {
	if q := ins.Queen; q != nil {
		f.queenSeen = saidBool(q.Seen)
		f.virgin = q.Virgin != nil && *q.Virgin
	}
	f.queenright = saidBool(ins.Queenright)
	for _, s := range ins.Signs {
		if s.Sign == "laying_worker" {
			f.layers = denied
			if s.Present {
				f.layers = shown
			}
		}
	}
}

func (f *queenFacts) readDeeds(ins *Inspection) {
	for _, t := range ins.Actions {
		switch t.Do {
		case "requeen":
			f.given = giftOf(t.What)
		case "release_queen":
			f.released = true
		case "split":
			f.split = true
		case "cut_cells":
			f.cut = true
		}
	}
	for _, e := range ins.Earlier {
		if e.On.IsZero() || e.Present != nil && !*e.Present {
			continue
		}
		f.earlier = append(f.earlier, pastFact{e.Event, e.On})
	}
}

// giftOf reads what kind of queen was put in; a queen of no said kind is taken
// for a mated one.
func giftOf(what string) string {
	switch what {
	case "virgin", "virgin queen", "unmated queen":
		return "virgin"
	case "cell", "queen cell", "capped cell", "ripe cell", "capped queen cell", "ripe queen cell":
		return "cell"
	}
	return "mated"
}

// noBrood reports whether eggs, larvae and sealed brood were all looked for and
// not there.
func (f *queenFacts) noBrood() bool {
	return f.brood["eggs"] == denied && f.brood["open_brood"] == denied && f.brood["capped_brood"] == denied
}

// informative reports whether the inspection says anything of queen or brood.
func (f *queenFacts) informative() bool {
	for _, s := range f.brood {
		if s != unsaid {
			return true
		}
	}
	for _, s := range f.cells {
		if s != unsaid {
			return true
		}
	}
	return f.queenSeen != unsaid || f.virgin || f.queenright != unsaid || f.layers != unsaid ||
		f.given != "" || f.released || f.split || len(f.earlier) > 0
}

// oldestCell is the most advanced stage of queen cell that was found with a
// bee in it, or left by one; empty where there is none.
func (f *queenFacts) oldestCell() string {
	for _, stage := range []string{"emerged", "capped", "charged", "any"} {
		if f.cells[stage] == shown {
			return stage
		}
	}
	return ""
}

// noCells reports whether queen cells of every kind were denied.
func (f *queenFacts) noCells() bool { return f.cells["any"] == denied && f.oldestCell() == "" }

func saidOf(c *Content) said {
	if c == nil {
		return unsaid
	}
	return saidBool(&c.Present)
}

func saidBool(b *bool) said {
	switch {
	case b == nil:
		return unsaid
	case *b:
		return shown
	}
	return denied
}
