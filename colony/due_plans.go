package colony

import (
	"fmt"
	"slices"
	"strings"
)

// planLapses is for how many days a plan stays due: after it was spoken of
// where no day was named, else after its day if the hive was visited since.
const planLapses = 90

// planForgotten is for how many days a plan with a day stays due at a hive that
// nobody visits.
const planForgotten = 365

// doneBy names what else than the same deed shows a plan done, or leaves
// nothing to do: a colony that has swarmed, been split or been united is not
// split for want of room as was planned before.
var doneBy = map[string]struct{ deeds, events []string }{
	"feed":          {nil, []string{"fed"}},
	"treat":         {nil, []string{"treated"}},
	"add_bar":       {[]string{"move_follower"}, []string{"bar_added"}},
	"move_follower": {[]string{"add_bar"}, nil},
	"requeen":       {nil, []string{"requeened"}},
	"split":         {[]string{"unite"}, []string{"split", "swarmed"}},
	"unite":         {[]string{"split"}, []string{"split"}},
	"inspect":       {nil, []string{"inspected"}},
}

// openPlan is a plan that no visit so far has shown done.
type openPlan struct {
	item int // its place in the list
	task Task
	said Date
}

// plans lists what the keeper said was to be done. It goes through the visits
// once, with the plans that are open at the time.
func (l *dueList) plans(known []Inspection, today Date) {
	var open []openPlan
	for i := range known {
		ins := &known[i]
		open = slices.DeleteFunc(open, func(p openPlan) bool { return l.settled(p, ins) })
		open = append(open, l.planned(ins)...)
	}
	for _, p := range open {
		if d := &l.items[p.item]; p.task.Due.IsZero() && today.Sub(p.said) > planLapses || today.Sub(d.On) > planForgotten {
			d.lapse()
		}
	}
}

// planned adds the plans of one visit.
func (l *dueList) planned(ins *Inspection) []openPlan {
	var out []openPlan
	count := map[string]int{}
	said := dayOf(ins)
	for _, p := range ins.Plans {
		count[p.Do]++
		path := p.Do
		if n := count[p.Do]; n > 1 {
			path = fmt.Sprintf("%s#%d", p.Do, n)
		}
		on, why := p.Due, "planned on "+longDay(said)
		if on.IsZero() {
			on = said.AddDays(7)
			why += ", no day said: at the next visit"
		}
		if p.Do == "treat" {
			why += "; the label and the local rules say how and when"
		}
		l.add("plan", said, path, on, p.words(), why)
		out = append(out, openPlan{len(l.items) - 1, p, said})
	}
	return out
}

// settled closes the plan if the visit shows it done, or comes so late without
// a word of it that it has lapsed.
func (l *dueList) settled(p openPlan, ins *Inspection) bool {
	d := &l.items[p.item]
	if how := showsDone(ins, p.task); how != "" {
		d.Status, d.Closed = StatusDone, how+" on "+longDay(dayOf(ins))
		return true
	}
	from := p.task.Due
	if from.IsZero() {
		from = p.said
	}
	if dayOf(ins).Sub(from) > planLapses {
		d.lapse()
		return true
	}
	return false
}

func (d *DueItem) lapse() { d.Status, d.Closed = StatusLapsed, "no word of it since" }

// showsDone says how a visit shows that the plan is done, "" if it does not.
func showsDone(ins *Inspection, p Task) string {
	also := doneBy[p.Do]
	if p.Do == "inspect" {
		return "inspected"
	}
	for _, a := range ins.Actions {
		if a.Do == p.Do || slices.Contains(also.deeds, a.Do) {
			return "done"
		}
	}
	for _, e := range ins.Earlier {
		if slices.Contains(also.events, e.Event) && (e.Present == nil || *e.Present) {
			return e.Event + ", as told"
		}
	}
	if p.Do == "mark_queen" && ins.Queen != nil && ins.Queen.Marked != nil && *ins.Queen.Marked {
		return "queen marked as seen"
	}
	return ""
}

// deedWords are deeds in words, where no number or bar is named.
var deedWords = map[string]string{
	"add_bar": "add bars", "remove_bar": "remove bars", "move_bar": "move bars",
	"mark_queen": "mark the queen", "clip_queen": "clip the queen", "release_queen": "release the queen",
	"cut_cells": "cut queen cells", "straighten": "straighten comb", "trim_comb": "trim comb",
	"free_comb": "cut comb free", "move_follower": "move the follower board",
	"open_entrance": "open the entrance", "reduce_entrance": "reduce the entrance", "close_entrance": "close the entrance",
	"open_floor": "open the floor", "close_floor": "close the floor", "clean_floor": "clean the floor",
	"smoke": "use smoke",
}

// words puts a deed into words: "feed 2 l syrup", "add 2 bars", "inspect".
func (t Task) words() string {
	parts := []string{t.deed()}
	if t.Amount != nil {
		parts = append(parts, strings.TrimSpace(amount(*t.Amount)+" "+t.Unit))
	}
	if t.What != "" {
		parts = append(parts, t.What)
	}
	if t.FromHive != "" {
		parts = append(parts, "from hive "+t.FromHive)
	}
	if t.ToHive != "" {
		parts = append(parts, "to hive "+t.ToHive)
	}
	return strings.Join(parts, " ")
}

// deed is the deed with the bars it is for, or with how many.
func (t Task) deed() string {
	words, ok := deedWords[t.Do]
	if !ok {
		words = t.Do
	}
	verb, ofBars := strings.CutSuffix(words, " bars")
	bars := ""
	switch {
	case t.Bars != "":
		bars = "bars " + strings.ReplaceAll(t.Bars, ",", ", ")
	case t.Bar != nil:
		bars = fmt.Sprintf("bar %d", *t.Bar)
	}
	switch {
	case bars != "" && ofBars:
		return verb + " " + bars
	case bars != "":
		return words + ", " + bars
	case t.Count == nil:
		return words
	case ofBars:
		return verb + " " + t.howMany("bar")
	case t.Do == "cut_cells":
		return "cut " + t.howMany("queen cell")
	}
	return words + " (" + t.howMany("") + ")"
}

// howMany is the count with its noun: "1 bar", "2 or 3 bars".
func (t Task) howMany(noun string) string {
	n, text := *t.Count, amount(float64(*t.Count))
	if t.CountMax != nil && *t.CountMax > n {
		n = *t.CountMax
		text += " or " + amount(float64(n))
	}
	if noun == "" {
		return text
	}
	return text + " " + plural(n, noun)
}

// plural is the noun for so many.
func plural(n int, noun string) string {
	if n == 1 {
		return noun
	}
	return noun + "s"
}
