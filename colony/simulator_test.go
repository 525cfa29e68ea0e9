package colony

import (
	"math/rand/v2"
	"time"
)

// The simulator runs one colony through a season, in days and parts of days
// from 1 April, and lets a keeper look in who overlooks things, does not speak
// of everything, and now and then denies what he did not find. It knows what
// is true; what it hands out are inspections.
//
// Its biology is drawn from inside the published spreads, not from the
// package's constants, so that the two can disagree. When a young queen begins
// to lay is not drawn at all: it comes of her age and of the weather.

const simSeasonDays = 180

var simStart = Date{2025, time.April, 1}

// simSpell is a time of laying; that of laying workers is marked.
type simSpell struct {
	from, to float64
	workers  bool
}

// simCell is one queen cell: the times of its egg, sealing and emergence, and
// when it is gone (cut, torn down, or collapsed after the queen has left it).
type simCell struct {
	egg, capped, emerges, gone float64
}

// simColony is the truth of a season.
type simColony struct {
	rng    *rand.Rand
	hatch  float64 // stage ends of worker brood, days from laying
	cap    float64
	emerge float64

	event    string // what befell it
	spells   []simSpell
	cells    []simCell
	oldQueen float64                  // the old queen is in the hive until then
	virgin   float64                  // a young queen walks the comb from then; +Inf for none
	newEggs  float64                  // the young queen lays from then; +Inf if never
	deeds    []simDeed                // what the keeper did, in order of time
	fine     [simSeasonDays + 60]bool // days fit for a mating flight
}

type simDeed struct {
	at   float64
	task Task
}

const never = 1e9

func newSimColony(rng *rand.Rand) *simColony {
	c := &simColony{rng: rng, hatch: uniform(rng, 2.7, 3.6), cap: uniform(rng, 8.3, 9.6), emerge: uniform(rng, 19.4, 23.0),
		oldQueen: never, virgin: never, newEggs: never}
	c.makeWeather()
	start := uniform(rng, 25, 110)
	switch p := rng.Float64(); {
	case p < 0.30:
		c.swarm(start)
	case p < 0.45:
		c.supersede(start)
	case p < 0.60:
		c.lose(start, "lost")
	case p < 0.72:
		c.lose(start, "split")
		c.deeds = append(c.deeds, simDeed{start, Task{Do: "split"}})
	case p < 0.82:
		c.requeen(start)
	default:
		c.event = "steady"
		c.lay(-60, never)
	}
	return c
}

// makeWeather draws days fit for mating flights and others in spells: each day
// is like the one before in seven of ten cases, and six of ten are fine.
func (c *simColony) makeWeather() {
	fine := true
	for i := range c.fine {
		if c.rng.Float64() > 0.7 {
			fine = c.rng.Float64() < 0.6
		}
		c.fine[i] = fine
	}
}

// beginsToLay is when a queen who left her cell at a time lays her first egg:
// she is fit to fly at five to eight days [McNeil 2015; Connor], flies on one to
// three fine days, and lays two to four days after the last of them [Connor: 3;
// eversweetapiaries.com: within two]. If the weather keeps her in for more than
// three weeks she never mates [wildflowermeadows.com].
func (c *simColony) beginsToLay(emerged float64) float64 {
	ready := emerged + uniform(c.rng, 5, 8)
	flights := 1 + c.rng.IntN(3)
	last := never
	for day := int(ready) + 1; flights > 0 && day < len(c.fine) && float64(day) < emerged+21; day++ {
		if c.fine[day] {
			last = float64(day) + 0.6 // in the afternoon
			flights--
		}
	}
	if last == never {
		return never
	}
	return last + uniform(c.rng, 2, 4)
}

func uniform(rng *rand.Rand, low, high float64) float64 { return low + rng.Float64()*(high-low) }

func (c *simColony) lay(from, to float64) { c.spells = append(c.spells, simSpell{from, to, false}) }

func (c *simColony) addCell(egg float64) *simCell {
	c.cells = append(c.cells, simCell{egg: egg, capped: egg + uniform(c.rng, 7.6, 8.5), emerges: egg + uniform(c.rng, 15.2, 16.8), gone: never})
	return &c.cells[len(c.cells)-1]
}

// swarm: eggs in cups over some days, the old queen slows, and leaves with the
// first sealed cell, weather permitting. Now and then the keeper cuts the
// cells before that, and the colony begins again or gives up.
func (c *simColony) swarm(start float64) {
	c.event = "swarm"
	for range 3 + c.rng.IntN(10) {
		c.addCell(start + uniform(c.rng, 0, 5))
	}
	if c.rng.Float64() < 0.15 {
		cut := start + uniform(c.rng, 3, 7)
		c.deeds = append(c.deeds, simDeed{cut, Task{Do: "cut_cells"}})
		for i := range c.cells {
			c.cells[i].gone = cut
		}
		if c.rng.Float64() < 0.5 {
			c.event = "cut"
			c.lay(-60, never)
			return
		}
		from := len(c.cells)
		for range 3 + c.rng.IntN(6) {
			c.addCell(cut + uniform(c.rng, 0.5, 6))
		}
		c.leave(c.cells[from:])
		return
	}
	c.leave(c.cells)
}

func (c *simColony) leave(cells []simCell) {
	first, sealed := never, never
	for _, cell := range cells {
		first, sealed = min(first, cell.emerges), min(sealed, cell.capped)
	}
	c.oldQueen = min(sealed+uniform(c.rng, -0.5, 5), first-0.2)
	c.lay(-60, c.oldQueen-uniform(c.rng, 0, 2))
	c.raise(first)
}

func (c *simColony) supersede(start float64) {
	c.event = "supersedure"
	for range 1 + c.rng.IntN(3) {
		c.addCell(start + uniform(c.rng, 0, 2))
	}
	first := never
	for _, cell := range c.cells {
		first = min(first, cell.emerges)
	}
	c.oldQueen = first + uniform(c.rng, -6, 30)
	c.lay(-60, c.oldQueen)
	c.raise(first)
}

// lose: the queen is gone at once, and larvae 3 to 5 days from laying become
// queens.
func (c *simColony) lose(start float64, event string) {
	c.event, c.oldQueen = event, start
	c.lay(-60, start)
	first := never
	for range 3 + c.rng.IntN(8) {
		first = min(first, c.addCell(start-uniform(c.rng, 2.8, 5)).emerges)
	}
	c.raise(first)
}

// raise: the first virgin tears the other cells down, or after a swarm they stand
// for some days, kept sealed, to lead casts; she flies and lays, or is lost, and then
// workers lay when the brood is long gone.
func (c *simColony) raise(first float64) {
	c.virgin = first
	stand := 3.0
	if c.event == "swarm" && c.rng.Float64() < 0.25 {
		stand = 7.5
	}
	for i := range c.cells {
		cell := &c.cells[i]
		if cell.emerges == first {
			cell.gone = min(cell.gone, first+uniform(c.rng, 1, 10))
		} else {
			cell.gone = min(cell.gone, first+uniform(c.rng, 0, stand))
		}
	}
	lost := c.rng.Float64() < 0.06
	if c.newEggs = c.beginsToLay(first); lost || c.newEggs == never {
		c.newEggs = never
		c.spells = append(c.spells, simSpell{first + uniform(c.rng, 24, 40), never, true})
		return
	}
	c.lay(c.newEggs, never)
}

func (c *simColony) requeen(start float64) {
	c.event, c.oldQueen = "requeened", start
	c.lay(-60, start)
	c.deeds = append(c.deeds, simDeed{start, Task{Do: "requeen"}})
	c.newEggs = start + uniform(c.rng, 2, 6) + uniform(c.rng, 0.5, 7)
	c.lay(c.newEggs, never)
}

// broodAt reports whether brood between two ages is there, and whether all of
// it is laying workers'.
func (c *simColony) broodAt(t, young, old float64) (there, workersOnly bool) {
	workersOnly = true
	for _, s := range c.spells {
		if s.from < t-young && s.to > t-old {
			there = true
			workersOnly = workersOnly && s.workers
		}
	}
	return there, there && workersOnly
}

// lastEgg is the time of the last egg laid before t, by anyone.
func (c *simColony) lastEgg(t float64) float64 {
	last := -never
	for _, s := range c.spells {
		if s.from < t {
			last = max(last, min(s.to, t))
		}
	}
	return last
}

func (c *simColony) layingAt(t float64) bool {
	for _, s := range c.spells {
		if !s.workers && s.from <= t && t < s.to {
			return true
		}
	}
	return false
}

// hopeless reports whether the colony has no queen and no way to get one.
func (c *simColony) hopeless(t float64) bool {
	return c.newEggs == never && c.virgin != never && t > c.virgin+24 && t > c.oldQueen
}

// oldestLive is the cell that will be, or was, the first to emerge among those
// that stand at t; false where none stands.
func (c *simColony) oldestLive(t float64) (simCell, bool) {
	var out simCell
	found := false
	for _, cell := range c.cells {
		if t >= cell.egg && t < cell.gone && (!found || cell.emerges < out.emerges) {
			out, found = cell, true
		}
	}
	return out, found
}
