package colony

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"strings"
	"sync"
	"testing"
)

// overlookedClaim is the part of the claims of emergence in which the keeper
// passed over the cell that a queen had left, beside sealed ones: they lie before
// the usual span, which is of the cells that were seen.
const overlookedClaim = "emergence, where its open cell was overlooked"

// tally counts, per kind of claim, how often the simulated truth lies within
// the usual and the outer span.
type tally struct {
	n, usual, outer int
}

type simReport struct {
	seasons, visits   int
	claims            map[string]*tally
	wrongAlarms       int // a colony with a laying queen called queenless or overdue
	alarms            int
	wrongAlarmSeasons int
	missed            int // a hopeless colony called laying, and sure of it
	hopelessVisits    int
	hopelessFound     int // hopeless colonies that were alarmed for at some visit before the season's end
	hopelessSeasons   int
	lookAgain         int // a colony with a laying queen of which it is said to look again, eggs having been denied
	unequal           int // seasons judged otherwise at once than visit by visit
	firstBad          []string
}

func newSimReport() *simReport { return &simReport{claims: map[string]*tally{}} }

func (r *simReport) claim(name string, w Window, truth Date, context func() string) {
	t := r.claims[name]
	if t == nil {
		t = &tally{}
		r.claims[name] = t
	}
	t.n++
	if w.Usual.Contains(truth) {
		t.usual++
	}
	if w.Outer.Contains(truth) {
		t.outer++
	} else if len(r.firstBad) < 5 {
		r.firstBad = append(r.firstBad, fmt.Sprintf("%s: %s, truth %s; %s", name, w, truth, context()))
	}
}

func (r *simReport) merge(o *simReport) {
	r.seasons, r.visits = r.seasons+o.seasons, r.visits+o.visits
	r.wrongAlarms, r.alarms, r.wrongAlarmSeasons = r.wrongAlarms+o.wrongAlarms, r.alarms+o.alarms, r.wrongAlarmSeasons+o.wrongAlarmSeasons
	r.missed, r.hopelessVisits = r.missed+o.missed, r.hopelessVisits+o.hopelessVisits
	r.hopelessFound, r.hopelessSeasons = r.hopelessFound+o.hopelessFound, r.hopelessSeasons+o.hopelessSeasons
	r.lookAgain, r.unequal = r.lookAgain+o.lookAgain, r.unequal+o.unequal
	r.firstBad = append(r.firstBad, o.firstBad...)
	for name, t := range o.claims {
		if r.claims[name] == nil {
			r.claims[name] = &tally{}
		}
		mine := r.claims[name]
		mine.n, mine.usual, mine.outer = mine.n+t.n, mine.usual+t.usual, mine.outer+t.outer
	}
}

// season runs one colony and judges it after every visit.
func (r *simReport) season(seed uint64) {
	c := newSimColony(rand.New(rand.NewPCG(seed, 20250401)))
	r.seasons++
	var history []Inspection
	wrong, hopeless, found := false, false, false
	track := &queenTrack{}
	for _, v := range c.visits() {
		history = append(history, v.ins)
		r.visits++
		today := simDay(v.at)
		// The same as judgeQueen over the history so far, without reading the
		// earlier visits again; checked at the season's end.
		if f := factsOf(&v.ins); f.informative() {
			track.take(f)
		}
		e := track.judge(today)
		context := func() string { return fmt.Sprintf("seed %d, %s, day %.1f, %s", seed, c.event, v.at, e.Says) }
		if !e.LastEgg.IsZero() {
			r.claim("last egg", e.LastEgg, simDay(c.lastEgg(asOf(history, e.AsOf, v.at))), context)
		}
		r.calendar(c, v, e, context)

		alarm := e.State == Queenless || !e.ExpectBy.IsZero() && today.Compare(e.ExpectBy) > 0
		if alarm {
			r.alarms++
			if c.layingAt(v.at) {
				r.wrongAlarms++
				wrong = true
			}
		}
		if e.State == WasLaying && !e.ExpectBy.IsZero() && c.layingAt(v.at) {
			r.lookAgain++
		}
		if c.hopeless(v.at) {
			r.hopelessVisits++
			hopeless = true
			found = found || alarm || e.State == LayingWorkers
			if e.State == Laying && e.Sureness == Sure {
				r.missed++
			}
		}
	}
	r.count(wrong, hopeless, found)
	end := simDay(simSeasonDays + 1)
	if whole := judgeQueen(history, end); whole.Says != track.judge(end).Says {
		r.firstBad = append(r.firstBad, fmt.Sprintf("seed %d: read at once it says %q, visit by visit %q", seed, whole.Says, track.judge(end).Says))
		r.unequal++
	}
}

func (r *simReport) count(wrong, hopeless, found bool) {
	if wrong {
		r.wrongAlarmSeasons++
	}
	if hopeless {
		r.hopelessSeasons++
	}
	if found {
		r.hopelessFound++
	}
}

// asOf is the time of the inspection of a day; the evidence speaks of then.
func asOf(history []Inspection, on Date, now float64) float64 {
	for i := len(history) - 1; i >= 0; i-- {
		if dayOf(&history[i]) == on {
			return history[i].At.Sub(simTime(0)).Hours() / 24
		}
	}
	return now
}

// calendar compares what is said of cells with the fate of the oldest of them
// that stood when they were last seen. What becomes of cells that are then cut
// or torn down is nothing that a calendar can say.
func (r *simReport) calendar(c *simColony, v simVisit, e QueenEvidence, context func() string) {
	f := factsOf(&v.ins)
	cell, live := c.oldestLive(v.at)
	if e.Calendar == nil || f.oldestCell() == "" || f.cut || !live || cell.gone < min(cell.emerges, c.virgin) {
		return
	}
	cal := e.Calendar
	first := min(cell.emerges, c.virgin) // of a queen whose cell may be gone
	r.claim("emergence", cal.When(MilestoneEmerges), simDay(first), context)
	if v.overlooked {
		r.claim(overlookedClaim, cal.When(MilestoneEmerges), simDay(first), context)
	}
	if first == c.virgin && c.newEggs != never {
		r.claim("first eggs", cal.When(MilestoneEggs), simDay(c.newEggs), context)
		r.claim("first sealed brood", cal.When(MilestoneSealed), simDay(c.newEggs+c.cap), context)
		r.claim("first new bees", cal.When(MilestoneNewBees), simDay(c.newEggs+c.emerge), context)
	}
	if c.event == "swarm" && v.at < c.oldQueen && !cal.When(MilestoneSwarm).IsZero() {
		r.claim("prime swarm", cal.When(MilestoneSwarm), simDay(c.oldQueen), context)
	}
}

// claimsASeason is how many claims of a kind a season yields at the least: spans
// that nobody claims would hold the truth every time.
var claimsASeason = map[string]float64{
	"last egg": 15, "emergence": 1, "first eggs": 1, "first sealed brood": 1, "first new bees": 1, "prime swarm": 0.2,
}

// TestSimulatedSeasons compares the conclusions with the truth of simulated
// seasons. The outer spans are built so that the truth cannot fall outside;
// the usual ones are to hold it 95 times in a hundred. Nor is silence a way to
// be right: so many claims are made, hopeless colonies are found, and alarms
// are seldom wrong.
func TestSimulatedSeasons(t *testing.T) {
	seasons := 10_000
	if testing.Short() {
		seasons = 500
	}
	r := runSeasons(seasons)
	t.Log("\n" + r.String())
	for name, claim := range r.claims {
		if claim.outer != claim.n {
			t.Errorf("%s: the outer span excluded the truth %d times of %d", name, claim.n-claim.outer, claim.n)
		}
		// 95 in a hundred, less what chance does to the smallest samples.
		share, slack := float64(claim.usual)/float64(claim.n), 2*math.Sqrt(0.05*0.95/float64(claim.n))
		if share < 0.95-slack && name != overlookedClaim {
			t.Errorf("%s: the usual span holds the truth in %.1f %%, want 95", name, 100*share)
		}
	}
	for name, floor := range claimsASeason {
		if claim := r.claims[name]; claim == nil || float64(claim.n) < floor*float64(r.seasons) {
			t.Errorf("%s: claims %+v in %d seasons, want %g a season", name, claim, r.seasons, floor)
		}
	}
	for name, c := range map[string]struct {
		n, of       int
		least, most float64
	}{
		"alarms at a laying queen, of visits":           {r.wrongAlarms, r.visits, 0, 0.001},
		"hopeless colonies found":                       {r.hopelessFound, r.hopelessSeasons, 0.95, 1},
		"workers' eggs passed for a queen's, of visits": {r.missed, r.hopelessVisits, 0, 0.06},
		"told to look again for eggs, of visits":        {r.lookAgain, r.visits, 0, 0.04},
	} {
		if share := float64(c.n) / float64(c.of); !(c.least <= share && share <= c.most) {
			t.Errorf("%s: %d of %d, want %g to %g %%", name, c.n, c.of, 100*c.least, 100*c.most)
		}
	}
	if r.unequal > 0 {
		t.Errorf("%d seasons are judged otherwise at once than visit by visit", r.unequal)
	}
	for _, bad := range r.firstBad[:min(5, len(r.firstBad))] {
		t.Log(bad)
	}
}

func runSeasons(seasons int) *simReport {
	const workers = 2
	var wg sync.WaitGroup
	parts := make([]*simReport, workers)
	for w := range workers {
		parts[w] = newSimReport()
		wg.Go(func() {
			for seed := w; seed < seasons; seed += workers {
				parts[w].season(uint64(seed))
			}
		})
	}
	wg.Wait()
	total := newSimReport()
	for _, p := range parts {
		total.merge(p)
	}
	return total
}

// String is the report of the simulation.
func (r *simReport) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d seasons, %d visits\n", r.seasons, r.visits)
	var names []string
	for name := range r.claims {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		t := r.claims[name]
		fmt.Fprintf(&b, "  %-45s %7d claims  usual %5.1f %%  outer %6.2f %%\n", name, t.n, 100*float64(t.usual)/float64(t.n), 100*float64(t.outer)/float64(t.n))
	}
	fmt.Fprintf(&b, "  alarms at %d visits, wrong at %d (%.2f %% of visits, in %.1f %% of seasons)\n", r.alarms, r.wrongAlarms,
		100*float64(r.wrongAlarms)/float64(r.visits), 100*float64(r.wrongAlarmSeasons)/float64(r.seasons))
	fmt.Fprintf(&b, "  told to look again for eggs that were overlooked at %d visits (%.1f %%)\n", r.lookAgain, 100*float64(r.lookAgain)/float64(r.visits))
	fmt.Fprintf(&b, "  hopelessly queenless: %d seasons, found in %d; at %d of %d such visits eggs of workers passed for a queen's",
		r.hopelessSeasons, r.hopelessFound, r.missed, r.hopelessVisits)
	return b.String()
}
