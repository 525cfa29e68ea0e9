package colony

import (
	"fmt"
	"math"
	"slices"
	"strings"
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
	Swarmy bool     `json:"swarmy,omitempty"` // want of room may make a swarm: it is the season, and no young queen is under way
	Notes  []string `json:"notes,omitempty"`

	count barCount // that it rests on
}

// spaceDays is for how long bars are given: two visits of the usual weekly
// interval in swarm season.
const spaceDays = 14

// roomAhead is for how many days ahead the rate of use says when the room ends;
// colonies do not build on for longer as they do in the weeks of the counts.
const roomAhead = 60

// countHolds is for how many days a count of the bars is gone by; common practice.
const countHolds = 90

// rateDays is from how many days the rate of use is read, and for how many it is
// gone by when bars are asked for; common practice.
const rateDays = 42

// shortOfRoom is the number of free bars at which the caution of the swarm
// season is said; common practice.
const shortOfRoom = 3

// judgeSpace works out the free bars before the follower, how fast they are
// taken into use and when they run out. History is of one hive, sorted. A colony
// that is raising a queen is left in peace: no bars are asked for.
func judgeSpace(history []Inspection, today Date, queen QueenEvidence, season Season) Space {
	var s Space
	known := upTo(history, today)
	counts := barCounts(known)
	if len(counts) == 0 {
		return s
	}
	last := counts[len(counts)-1]
	s.AsOf, s.count = last.on, last
	s.Swarmy = season.SwarmTime(today) && !queen.leaveShut()
	inputs := []Input{{"bars", amount(last.found), longDay(last.on)}}
	if last.taken != 0 {
		inputs = append(inputs, Input{"bars of comb taken at that visit or since", amount(last.taken), ""})
	}
	s.Used = because("bars in use", Exactly(last.left(), unitBars), "as said, or the last bar with comb, less those taken", inputs)
	if ago := today.Sub(last.on); ago > countHolds {
		if season.Active(today) {
			s.Notes = append(s.Notes, fmt.Sprintf("counted %d days ago: count the bars again", ago))
		}
		return s
	}
	s.Front = followerAfter(known)
	if s.Front > 0 {
		free := math.Max(0, float64(s.Front)-last.left())
		s.Free = because("free bars before the follower", Exactly(free, unitBars), "bars before the follower − bars in use",
			[]Input{{"follower behind bar", amount(float64(s.Front)), ""}, {"bars in use", amount(last.left()), longDay(last.on)}})
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

// barCount is how many bars of comb were in use on a day, as found, and how many
// were taken at that visit or at later ones that did not count anew: less than
// zero where combs were given.
type barCount struct {
	on           Date
	found, taken float64
	lost         bool // no telling how many were taken
}

func (c barCount) left() float64 { return math.Max(0, c.found-c.taken) }

// barCounts lists how many bars of comb were in use at each inspection that
// tells: said for the whole hive, or else the highest bar with comb where at
// least three bars were spoken of. A visit to the bars at the front does not say
// that those behind them are gone. It tells of fewer bars than are left of the
// count before it only where a bar behind the last comb was found bare, or that
// count is too old to go by.
func barCounts(known []Inspection) []barCount {
	var out []barCount
	for i := range known {
		ins := &known[i]
		last, bare := combEnds(ins.Bars)
		least := 0.0
		if n := len(out); n > 0 && !out[n-1].lost && !bare && dayOf(ins).Sub(out[n-1].on) <= countHolds {
			least = out[n-1].left()
		}
		switch {
		case ins.BarsTotal != nil:
			out = append(out, barCount{on: dayOf(ins), found: float64(*ins.BarsTotal)})
		case last > 0 && len(ins.Bars) >= 3 && float64(last) >= least:
			out = append(out, barCount{on: dayOf(ins), found: float64(last)})
		}
		if n := len(out); n > 0 {
			taken, known := combsTaken(ins.Actions)
			out[n-1].taken += taken
			out[n-1].lost = out[n-1].lost || !known
		}
	}
	return out
}

// combEnds is the highest bar with comb, as far as bars were spoken of, and
// whether one behind it was found bare.
func combEnds(bars []Bar) (last int, bare bool) {
	for i := range bars {
		if bars[i].hasComb() {
			last, bare = max(last, bars[i].Bar), false
		} else if c := bars[i].Comb; c != nil {
			bare = true
		}
	}
	return last, bare
}

// combsTaken is how many combs left the hive at a visit, less those that came
// from another; false where some did and their number was not said. Bars that
// are taken and those that are harvested are the same ones.
func combsTaken(actions []Task) (float64, bool) {
	removed, harvested, moved, known := 0, 0, 0, true
	for _, t := range actions {
		n := t.bars()
		switch {
		case t.Do == "remove_bar":
			removed += max(1, n)
		case t.Do == "harvest":
			harvested += n
			known = known && n > 0
		case t.Do == "move_bar" && t.ToHive != "":
			moved += max(1, n)
		case t.Do == "add_bar" && t.FromHive != "":
			moved -= max(1, n)
		case t.Do == "split", t.Do == "unite":
			known = known && n > 0
			moved += n
		}
	}
	return float64(max(removed, harvested) + moved), known || removed > 0
}

// bars is how many bars the deed was for, 0 where that was not said.
func (t Task) bars() int {
	switch {
	case t.Count != nil:
		return *t.Count
	case t.Bars != "":
		return strings.Count(t.Bars, ",") + 1
	case t.Bar != nil:
		return 1
	}
	return 0
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
// slope, with the least and the most between two neighbouring counts. What was
// taken in between is added again.
func useRate(counts []barCount) Estimate {
	last := counts[len(counts)-1].on
	var points []Point
	var steps []float64
	built := 0.0 // since the first of the counts
	for i, c := range counts {
		if last.Sub(c.on) > rateDays {
			continue
		}
		if n := len(points); n > 0 && counts[i-1].lost {
			points, steps = nil, nil
		} else if n > 0 && c.on != counts[i-1].on {
			built += c.found - counts[i-1].left()
			steps = append(steps, (c.found-counts[i-1].left())/float64(c.on.Sub(counts[i-1].on)))
		}
		points = append(points, Point{c.on, built})
	}
	if len(steps) == 0 {
		return Estimate{}
	}
	slope := theilSen(points, trendAlpha).Slope
	r := Between(slices.Min(steps), slope, slices.Max(steps), "bars a day").AtLeast(0)
	e := because("bars taken into use", r, "median of the slopes between counts of the last six weeks", []Input{{"counts", amount(float64(len(points))), ""}})
	for _, p := range points {
		e.Why.Inputs = append(e.Why.Inputs, Input{"bars more than at the first count", amount(p.Value), longDay(p.On)})
	}
	e.Why.From = from("PRACTICE")
	return e
}

// String tells the space in a sentence.
func (s Space) String() string {
	if s.AsOf.IsZero() {
		return "bars in use: not recorded"
	}
	out := fmt.Sprintf("%s in use on %s", s.Used.Range, longDay(s.AsOf))
	switch taken := s.count.taken; {
	case taken > 0:
		out = fmt.Sprintf("%s in use: %s on %s, less %s taken then or since", s.Used.Range, amount(s.count.found), longDay(s.AsOf), amount(taken))
	case taken < 0:
		out = fmt.Sprintf("%s in use: %s on %s, and %s of other hives given then or since", s.Used.Range, amount(s.count.found), longDay(s.AsOf), amount(-taken))
	}
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
