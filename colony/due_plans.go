package colony

import (
	"fmt"
	"strings"
)

// planLapses is for how many days a plan without a day stays due.
const planLapses = 90

// doneBy names what else than the same deed shows a plan done.
var doneBy = map[string]struct{ deeds, events []string }{
	"feed":          {nil, []string{"fed"}},
	"treat":         {nil, []string{"treated"}},
	"add_bar":       {[]string{"move_follower"}, []string{"bar_added"}},
	"move_follower": {[]string{"add_bar"}, nil},
	"requeen":       {nil, []string{"requeened"}},
	"split":         {nil, []string{"split"}},
	"inspect":       {nil, []string{"inspected"}},
}

// plans lists what the keeper said was to be done.
func (l *dueList) plans(known []Inspection, today Date) {
	for i := range known {
		count := map[string]int{}
		for _, p := range known[i].Plans {
			count[p.Do]++
			path := p.Do
			if n := count[p.Do]; n > 1 {
				path = fmt.Sprintf("%s#%d", p.Do, n)
			}
			l.plan(known, i, p, path, today)
		}
	}
}

func (l *dueList) plan(known []Inspection, i int, p Task, path string, today Date) {
	said := dayOf(&known[i])
	on, why := p.Due, "planned on "+longDay(said)
	if on.IsZero() {
		on = said.AddDays(7)
		why += ", no day said: at the next visit"
	}
	d := l.add("plan", said, path, on, p.words(), why)
	if closer, how := showsDone(known[i+1:], p); closer != nil {
		d.Status, d.Closed = StatusDone, how+" on "+longDay(dayOf(closer))
	} else if p.Due.IsZero() && today.Sub(said) > planLapses || today.Sub(on) > 365 {
		d.Status, d.Closed = StatusLapsed, "no word of it since"
	}
}

// showsDone finds the later inspection by which the plan is done.
func showsDone(later []Inspection, p Task) (*Inspection, string) {
	also := doneBy[p.Do]
	for i := range later {
		ins := &later[i]
		if p.Do == "inspect" {
			return ins, "inspected"
		}
		for _, a := range ins.Actions {
			if a.Do == p.Do || contains(also.deeds, a.Do) {
				return ins, "done"
			}
		}
		for _, e := range ins.Earlier {
			if contains(also.events, e.Event) && (e.Present == nil || *e.Present) {
				return ins, "told of"
			}
		}
		if p.Do == "mark_queen" && ins.Queen != nil && ins.Queen.Marked != nil && *ins.Queen.Marked {
			return ins, "queen marked as seen"
		}
	}
	return nil, ""
}

func contains(list []string, s string) bool {
	for _, v := range list {
		if v == s {
			return true
		}
	}
	return false
}

// words puts a deed into words: "feed 2 l syrup", "add 2 bars", "inspect".
func (t Task) words() string {
	verb := strings.ReplaceAll(t.Do, "_", " ")
	parts := []string{verb}
	if t.Amount != nil {
		parts = append(parts, strings.TrimSpace(amount(*t.Amount)+" "+t.Unit))
	}
	if t.What != "" {
		parts = append(parts, t.What)
	}
	if t.Count != nil {
		n := amount(float64(*t.Count))
		if t.CountMax != nil {
			n += " or " + amount(float64(*t.CountMax))
		}
		parts = append(parts, "("+n+")")
	}
	switch {
	case t.Bars != "":
		parts = append(parts, "bars "+t.Bars)
	case t.Bar != nil:
		parts = append(parts, fmt.Sprintf("bar %d", *t.Bar))
	}
	if t.FromHive != "" {
		parts = append(parts, "from hive "+t.FromHive)
	}
	if t.ToHive != "" {
		parts = append(parts, "to hive "+t.ToHive)
	}
	return strings.Join(parts, " ")
}
