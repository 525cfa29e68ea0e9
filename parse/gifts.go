package parse

import "slices"

// What one hive gave another is told once and holds for both: the giver has moved a bar,
// the receiver has one more.

// gift is a move of bars between two hives of the note.
type gift struct {
	from, to string // the hives
	count    quantity
	why      source
}

// give remembers bars that a deed carried from one hive to another.
func (r *reader) give(d *deed, why source) {
	g := gift{from: r.cur.hive, to: d.toHive, count: quantity{lo: float64(len(d.bars))}, why: why}
	if len(d.bars) == 0 && d.count != nil {
		g.count = *d.count
	}
	if d.do == "move_bar" && g.to != "" && g.from != "" && g.to != g.from {
		r.gifts = append(r.gifts, g)
	}
}

// receive gives the hives that had bars from another of the note what was told of that
// one, unless they have been told to be given bars themselves.
func (r *reader) receive() {
	for i := range r.gifts {
		g := &r.gifts[i]
		b := r.byHive[g.to]
		if b == nil || r.byHive[g.from] == nil || b.deeds["actions.add_bar"] > 0 {
			continue
		}
		path := b.deed("actions.add_bar")
		g.why.doubts = append(slices.Clip(g.why.doubts), "taken from what the other hive gave")
		b.put(path, "yes", g.why)
		b.put(r.paths.under(path, "from_hive"), g.from, g.why)
		if g.count.lo > 0 {
			b.put(r.paths.under(path, "count"), formatNumber(g.count.lo), g.why)
		}
	}
}
