package page

import (
	"time"

	"barwise/colony"
)

// Timeline is what happened in a hive, day by day, as marks in rows.
type Timeline struct {
	Rows   []Row
	Months []Month
	Height int
}

// Row is one kind of event.
type Row struct {
	Name  string
	Y     int
	Marks []Mark
}

// Mark is an event on its day; hollow where it was looked for in vain.
type Mark struct {
	X      float64
	Hollow bool
	Tip    string
}

// Month is a line across the timeline at the first of a month; those without
// room for a name have none.
type Month struct {
	X    float64
	Name string
}

// The geometry of a timeline, in the units of its drawing.
const (
	timelineLeft  = 130
	timelineWidth = 760
	rowHeight     = 22
)

// kinds are the rows of a timeline, and what each looks for.
var kinds = []struct {
	name string
	of   func(ins *colony.Inspection) (said, present bool)
}{
	{"inspection", func(*colony.Inspection) (bool, bool) { return true, true }},
	{"queen seen", leaf("queen.seen")},
	{"eggs", content("eggs")},
	{"queen cells", queenCells},
	{"swarmed", leaf("earlier.swarmed")},
	{"fed", leaf("actions.feed")},
	{"treated", leaf("actions.treat")},
	{"harvested", leaf("actions.harvest")},
	{"requeened", leaf("actions.requeen")},
}

func leaf(path string) func(*colony.Inspection) (bool, bool) {
	return func(ins *colony.Inspection) (said, present bool) {
		value, said := colony.Get(ins, path)
		return said, value == "yes"
	}
}

func content(what string) func(*colony.Inspection) (bool, bool) {
	return func(ins *colony.Inspection) (said, present bool) {
		if c := ins.Content(what); c != nil {
			said, present = true, c.Present
		}
		for i := range ins.Bars {
			if c := ins.Bars[i].Content(what); c != nil {
				said, present = true, present || c.Present
			}
		}
		return said, present
	}
}

// queenCells looks for cells with a queen in them, now or before; an empty cup
// is none.
func queenCells(ins *colony.Inspection) (said, present bool) {
	all := ins.QueenCells
	for i := range ins.Bars {
		all = append(all[:len(all):len(all)], ins.Bars[i].QueenCells...)
	}
	for _, c := range all {
		if c.Stage != "cup" {
			said, present = true, present || c.Present
		}
	}
	return said, present
}

// NewTimeline lays a hive's inspections out between two days. Rows of which
// nothing was ever said are left out.
func NewTimeline(history []colony.Inspection, from, to colony.Date) Timeline {
	days := max(to.Sub(from), 1)
	x := func(d colony.Date) float64 {
		return timelineLeft + float64(d.Sub(from))/float64(days)*timelineWidth
	}
	var t Timeline
	for _, kind := range kinds {
		row := Row{Name: kind.name, Y: rowHeight * (len(t.Rows) + 1)}
		for i := range history {
			if said, present := kind.of(&history[i]); said {
				d := colony.DateOf(history[i].At)
				tip := d.Time().Format("2 January 2006") + ": " + kind.name
				if !present {
					tip += ", no"
				}
				row.Marks = append(row.Marks, Mark{x(d), !present, tip})
			}
		}
		if len(row.Marks) > 0 {
			t.Rows = append(t.Rows, row)
		}
	}
	t.Height = rowHeight*(len(t.Rows)+1) + 20
	end := -100.0
	for d := colony.NewDate(from.Year, from.Month+1, 1); d.Compare(to) <= 0; d = d.AddMonths(1) {
		m := Month{X: x(d)}
		form := "Jan"
		if d.Month == time.January || end < 0 {
			form = "Jan 2006"
		}
		if m.X-end > 60 {
			m.Name, end = d.Time().Format(form), m.X
		}
		t.Months = append(t.Months, m)
	}
	return t
}
