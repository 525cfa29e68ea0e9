package colony

import "time"

// The keeper of a simulated colony, who looks in about weekly and writes down
// what is found, or not.

// simVisit is an inspection, with its time in days of the season, and whether a
// cell that a queen had left was overlooked at it beside sealed ones.
type simVisit struct {
	at         float64
	ins        Inspection
	overlooked bool
}

// visits lets the keeper look in about weekly, with gaps.
func (c *simColony) visits() []simVisit {
	var out []simVisit
	for t := uniform(c.rng, 0, 10); t < simSeasonDays; {
		at := float64(int(t)) + uniform(c.rng, 9, 19)/24
		var deeds []Task
		for _, d := range c.deeds {
			// The keeper's own deeds are visits too; here they are told at the next one.
			if d.at <= at && (len(out) == 0 || d.at > out[len(out)-1].at) {
				deeds = append(deeds, d.task)
			}
		}
		ins, overlooked := c.look(at, deeds)
		out = append(out, simVisit{at, ins, overlooked})
		step := uniform(c.rng, 5, 9)
		if c.rng.Float64() < 0.15 {
			step = uniform(c.rng, 12, 24)
		}
		t += step
	}
	return out
}

// look writes down what is seen at a time. Deeds done since the last visit are
// put as events of their day, or as an action for what was just done.
func (c *simColony) look(t float64, deeds []Task) (ins Inspection, overlooked bool) {
	ins = Inspection{Hive: "7", At: simTime(t)}
	for _, d := range deeds {
		c.tell(&ins, d, t)
	}
	spoken := func() bool { return c.rng.Float64() < 0.75 }
	workersLay := false
	for _, stage := range []struct {
		what       string
		young, old float64
		found      float64
	}{{"eggs", 0, c.hatch, 0.9}, {"open_brood", c.hatch, c.cap, 0.96}, {"capped_brood", c.cap, c.emerge, 0.99}} {
		there, workersOnly := c.broodAt(t, stage.young, stage.old)
		if workersOnly && stage.what == "eggs" {
			workersLay = true
		}
		if workersOnly && stage.what == "capped_brood" {
			stage.what = "drone_brood"
		}
		c.note(&ins, stage.what, there, stage.found, spoken())
	}
	if workersLay && c.rng.Float64() < 0.6 {
		ins.Signs = append(ins.Signs, Sign{Sign: "laying_worker", Present: true})
	}
	c.lookForQueen(&ins, t)
	overlooked = c.lookForCells(&ins, t, spoken())
	return ins, overlooked
}

// note writes one content: there and found; or not found, and denied or passed
// over.
func (c *simColony) note(ins *Inspection, what string, there bool, found float64, spoken bool) {
	if !spoken {
		return
	}
	if there && c.rng.Float64() < found {
		if c.rng.Float64() < 0.5 {
			ins.Contents = append(ins.Contents, Content{What: what, Present: true})
			return
		}
		number := 3 + c.rng.IntN(5)
		bar := ins.Bar(number)
		if bar == nil {
			ins.Bars = append(ins.Bars, Bar{Bar: number})
			bar = &ins.Bars[len(ins.Bars)-1]
		}
		bar.Contents = append(bar.Contents, Content{What: what, Present: true})
		return
	}
	if what != "drone_brood" && c.rng.Float64() < 0.6 {
		ins.Contents = append(ins.Contents, Content{What: what, Present: false})
	}
}

func (c *simColony) lookForQueen(ins *Inspection, t float64) {
	yes, no := true, false
	mated := t < c.oldQueen || c.newEggs != never && t >= c.newEggs
	switch p := c.rng.Float64(); {
	case mated && p < 0.3:
		ins.Queen = &Queen{Seen: &yes}
	case !mated && t >= c.virgin && c.newEggs != never && p < 0.08:
		ins.Queen = &Queen{Seen: &yes, Virgin: &yes}
	case p > 0.7:
		ins.Queen = &Queen{Seen: &no}
	}
}

// lookForCells writes down the stages of queen cells that are found, and reports
// whether one that a queen had left was overlooked beside others.
func (c *simColony) lookForCells(ins *Inspection, t float64, spoken bool) (overlooked bool) {
	stages := map[string]bool{}
	for _, cell := range c.cells {
		switch {
		case t < cell.egg || t >= cell.gone:
		case t >= cell.emerges && cell.emerges == c.virgin:
			stages["emerged"] = true
		case t >= cell.capped:
			stages["capped"] = true
		default:
			stages["charged"] = true
		}
	}
	if stages["emerged"] && len(stages) > 1 && c.rng.Float64() < 0.15 {
		delete(stages, "emerged")
		overlooked = true
	}
	if len(stages) == 0 || c.rng.Float64() > 0.9 {
		if spoken && c.rng.Float64() < 0.4 {
			ins.QueenCells = []QueenCells{{Stage: "any"}}
		}
		return false
	}
	for _, stage := range []string{"charged", "capped", "emerged"} {
		if stages[stage] {
			ins.QueenCells = append(ins.QueenCells, QueenCells{Stage: stage, Present: true})
		}
	}
	if c.rng.Float64() < 0.15 && !stages["emerged"] {
		ins.QueenCells = []QueenCells{{Stage: "any", Present: true}}
	}
	return overlooked
}

// tell puts a deed of an earlier day into the record, as a keeper would.
func (c *simColony) tell(ins *Inspection, d Task, t float64) {
	at := t
	for _, deed := range c.deeds {
		if deed.task.Do == d.Do {
			at = deed.at
		}
	}
	switch d.Do {
	case "requeen":
		ins.Earlier = append(ins.Earlier, Event{Event: "requeened", On: simDay(at)})
	case "split":
		ins.Earlier = append(ins.Earlier, Event{Event: "split", On: simDay(at)})
	default:
		ins.Actions = append(ins.Actions, d)
	}
}

func simTime(t float64) time.Time {
	return simStart.Time().Add(time.Duration(t * 24 * float64(time.Hour)))
}

func simDay(t float64) Date { return DateOf(simTime(t)) }
