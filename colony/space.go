package colony

import (
	"fmt"
	"math"
	"slices"
)

// Space is the room a colony has before its follower board.
type Space struct {
	AsOf   Date     `json:"as_of,omitzero"`
	Used   Estimate `json:"used"`            // bars with comb
	Front  int      `json:"front,omitempty"` // bars before the follower, after the visit
	Free   Estimate `json:"free"`            // bars without comb before the follower
	Rate   Estimate `json:"rate"`            // bars a day taken into use; unknown without two counts
	FullOn Window   `json:"full_on,omitzero"`
	Give   int      `json:"give,omitempty"` // bars to give at the next visit, so that they last a fortnight
	GiveBy Date     `json:"give_by,omitzero"`
	Swarmy bool     `json:"swarmy,omitempty"` // it is the season in which want of room makes swarms
	Notes  []string `json:"notes,omitempty"`
}

// spaceDays is for how long bars are given: two visits of the usual weekly
// interval in swarm season.
const spaceDays = 14

// roomAhead is for how many days ahead the rate of use says when the room ends;
// colonies do not build on for longer as they do in the weeks of the counts.
const roomAhead = 60

// shortOfRoom is the number of free bars at which the caution of the swarm
// season is said; common practice.
const shortOfRoom = 3

// judgeSpace works out the free bars before the follower, how fast they are
// taken into use and when they run out. History is of one hive, sorted.
func judgeSpace(history []Inspection, today Date, season Season) Space {
	var s Space
	known := upTo(history, today)
	counts := barCounts(known)
	if len(counts) == 0 {
		return s
	}
	last := counts[len(counts)-1]
	s.AsOf, s.Swarmy = last.on, season.SwarmTime(today)
	s.Used = because("bars in use", Exactly(last.bars, unitBars), "as said, or the last bar with comb", []Input{{"bars", amount(last.bars), shortDay(last.on)}})
	s.Front = followerAfter(known)
	if s.Front > 0 {
		free := math.Max(0, float64(s.Front)-last.bars)
		s.Free = because("free bars before the follower", Exactly(free, unitBars), "bars before the follower − bars in use",
			[]Input{{"follower behind bar", amount(float64(s.Front)), ""}, {"bars in use", amount(last.bars), shortDay(last.on)}})
	}
	s.Rate = useRate(counts)
	s.plan(today)
	return s
}

func (s *Space) plan(today Date) {
	if !s.Free.Known() {
		s.Notes = append(s.Notes, "where the follower stands was not said, so the free bars are not known")
		return
	}
	if s.Free.Best == 0 {
		s.FullOn, s.GiveBy, s.Give = onDay(s.AsOf), today, 2
	}
	if s.Rate.Known() && s.Rate.High > 0 && s.Free.Best > 0 {
		soon := s.Free.Best / s.Rate.High
		usual := s.Free.Best / math.Max(s.Rate.Best, 1e-9)
		if usual <= roomAhead {
			late := math.Min(365, s.Free.Best/math.Max(s.Rate.Low, 1e-9))
			s.FullOn = Window{DateRange{s.AsOf.AddDays(int(usual)), s.AsOf.AddDays(int(math.Ceil(usual)))},
				DateRange{s.AsOf.AddDays(int(soon)), s.AsOf.AddDays(int(math.Ceil(late)))}}.ordered()
			s.GiveBy = s.FullOn.Outer.From
		}
	}
	if s.Rate.Known() && s.Rate.Best > 0 {
		s.Give = max(1, int(math.Ceil(s.Rate.Best*spaceDays)))
	}
	if s.Swarmy && s.Free.Best <= shortOfRoom {
		s.Notes = append(s.Notes, "swarm season: give room before the last free bar is taken; room alone does not stop a colony that has queen cells")
	}
}

type barCount struct {
	on   Date
	bars float64
}

// barCounts lists how many bars of comb were in use at each inspection that
// tells: said for the whole hive, or else the highest bar with comb where at
// least three bars were spoken of. A visit that spoke of some bars at the front
// does not say that those behind them are gone: it counts for fewer than before
// only where every bar up to the last was spoken of, or bars were taken.
func barCounts(known []Inspection) []barCount {
	var out []barCount
	before, taken := 0, false // the last count, and whether bars were taken since
	for i := range known {
		ins := &known[i]
		if i > 0 {
			taken = taken || renumbers(&known[i-1])
		}
		if ins.BarsTotal != nil {
			out = append(out, barCount{dayOf(ins), float64(*ins.BarsTotal)})
			before, taken = *ins.BarsTotal, false
			continue
		}
		last := 0
		for j := range ins.Bars {
			if ins.Bars[j].hasComb() {
				last = max(last, ins.Bars[j].Bar)
			}
		}
		if last > 0 && len(ins.Bars) >= 3 && (last >= before || taken || len(ins.Bars) >= last) {
			out = append(out, barCount{dayOf(ins), float64(last)})
			before, taken = last, false
		}
	}
	return out
}

// hasComb reports whether there is comb on the bar, as far as said.
func (b *Bar) hasComb() bool {
	if c := b.Comb; c != nil {
		if c.Size == "bare" || c.Drawn != nil && *c.Drawn == 0 {
			return false
		}
		if c.Size != "" || c.Drawn != nil || c.WidthMM != nil || c.DepthMM != nil {
			return true
		}
	}
	return b.holdsComb()
}

// followerAfter is the bar behind which the follower stands after the last
// visit that tells, 0 where none does. Bars added or taken without a word on
// the follower move it along.
func followerAfter(known []Inspection) int {
	at := 0
	for i := range known {
		ins := &known[i]
		if ins.Follower != nil && ins.Follower.Bar != nil {
			at = *ins.Follower.Bar
		}
		at = moveFollower(at, ins.Actions)
	}
	return at
}

func moveFollower(at int, actions []Task) int {
	moved := false
	for _, t := range actions {
		if t.Do != "move_follower" {
			continue
		}
		switch by := t.Count; {
		case t.To != nil:
			at, moved = *t.To, true
		case by != nil && at > 0 && t.Direction == "forward":
			at, moved = max(0, at-*by), true
		case by != nil && at > 0:
			at, moved = at+*by, true
		}
	}
	for _, t := range actions {
		if moved || at == 0 {
			break
		}
		n := 1
		if t.Count != nil {
			n = *t.Count
		}
		switch t.Do {
		case "add_bar":
			at += n
		case "remove_bar":
			at = max(0, at-n)
		}
	}
	return at
}

// useRate is the bars a day taken into use over the last six weeks: the median
// slope, with the least and the most between two neighbouring counts.
func useRate(counts []barCount) Estimate {
	last := counts[len(counts)-1].on
	var points []Point
	var steps []float64
	for i, c := range counts {
		if last.Sub(c.on) > 42 {
			continue
		}
		if n := len(points); n > 0 && c.on != counts[i-1].on {
			steps = append(steps, (c.bars-counts[i-1].bars)/float64(c.on.Sub(counts[i-1].on)))
		}
		points = append(points, Point{c.on, c.bars})
	}
	if len(steps) == 0 {
		return Estimate{}
	}
	slope := theilSen(points, trendAlpha).Slope
	r := Between(slices.Min(steps), slope, slices.Max(steps), "bars a day").AtLeast(0)
	e := because("bars taken into use", r, "median of the slopes between counts of the last six weeks", []Input{{"counts", amount(float64(len(points))), ""}})
	for _, p := range points {
		e.Why.Inputs = append(e.Why.Inputs, Input{"bars in use", amount(p.Value), longDay(p.On)})
	}
	e.Why.From = from("PRACTICE")
	return e
}

// String tells the space in a sentence.
func (s Space) String() string {
	if s.AsOf.IsZero() {
		return "bars in use: not recorded"
	}
	out := fmt.Sprintf("%s in use on %s", s.Used.Range, shortDay(s.AsOf))
	if s.Free.Known() && s.Free.Best == 0 {
		return out + ", none free before the follower"
	}
	if s.Free.Known() {
		out += fmt.Sprintf(", %s free before the follower", amount(s.Free.Best))
	}
	if !s.FullOn.IsZero() {
		out += ", full about " + s.FullOn.Usual.String()
	}
	return out
}
