package index

import (
	"cmp"
	"container/heap"
	"slices"
	"strconv"
	"strings"

	"barwise/colony"
)

// place is a hit as the index tells it.
type place struct {
	order order
	bar   string // see barTerm
	value string // of the leaf that is asked for
}

func (p place) barNumber() int {
	n, _ := strconv.Atoi(p.bar)
	return n
}

// ranking keeps the best places, the worst of them on top; limit 0 keeps all.
type ranking struct {
	places []place
	sort   Order
	limit  int
}

// before orders hits: by hive where that is asked for, by time, then by ID, and the bars of an inspection as
// they hang.
func (r *ranking) before(a, b place) int {
	if r.sort == ByName {
		if c := colony.CompareHives(a.order.hive(), b.order.hive()); c != 0 {
			return c
		}
	}
	if c := strings.Compare(string(a.order), string(b.order)); c != 0 {
		if r.sort == Oldest {
			return c
		}
		return -c
	}
	return cmp.Compare(a.bar, b.bar)
}

func (r *ranking) Len() int           { return len(r.places) }
func (r *ranking) Less(i, j int) bool { return r.before(r.places[i], r.places[j]) > 0 }
func (r *ranking) Swap(i, j int)      { r.places[i], r.places[j] = r.places[j], r.places[i] }
func (r *ranking) Push(x any)         { r.places = append(r.places, x.(place)) }
func (r *ranking) Pop() any {
	last := r.places[len(r.places)-1]
	r.places = r.places[:len(r.places)-1]
	return last
}

func (r *ranking) add(p place) {
	switch {
	case r.limit == 0:
		r.places = append(r.places, p)
	case len(r.places) < r.limit:
		heap.Push(r, p)
	case r.before(p, r.places[0]) < 0:
		r.places[0] = p
		heap.Fix(r, 0)
	}
}

func (r *ranking) sorted() []place {
	slices.SortFunc(r.places, r.before)
	return r.places
}

// tally counts hits by group, and remembers each group's ends.
type tally struct {
	by     Grouping
	total  int
	groups map[string]*ends
}

type ends struct {
	count       int
	first, last place
}

func (t *tally) add(p place) {
	t.total++
	if t.by == Together {
		return
	}
	key := t.key(p)
	g := t.groups[key]
	if g == nil {
		g = &ends{first: p, last: p}
		t.groups[key] = g
	}
	g.count++
	if p.order < g.first.order || p.order == g.first.order && p.bar < g.first.bar {
		g.first = p
	}
	if p.order > g.last.order || p.order == g.last.order && p.bar < g.last.bar {
		g.last = p
	}
}

func (t *tally) key(p place) string {
	switch t.by {
	case ByHive:
		return p.order.hive()
	case ByYear:
		return p.order.day()[:len("2006")]
	case ByMonth:
		return p.order.day()[:len("2006-01")]
	}
	return p.order.day()
}

// choose ranks the first or last hit of every group.
func (t *tally) choose(pick Pick, best *ranking) {
	for _, g := range t.groups {
		switch pick {
		case First:
			best.add(g.first)
		case Last:
			best.add(g.last)
		}
	}
}

func (t *tally) list() []Group {
	var list []Group
	for key, g := range t.groups {
		list = append(list, Group{Key: key, Count: g.count, First: dayOf(g.first), Last: dayOf(g.last)})
	}
	slices.SortFunc(list, func(a, b Group) int { return strings.Compare(a.Key, b.Key) })
	return list
}

// dayOf is the civil day of a place's inspection.
func dayOf(p place) colony.Date {
	d, _ := colony.ParseDate(p.order.day())
	return d
}
