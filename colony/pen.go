package colony

import "reflect"

// Pen writes leaves into an inspection, one after another, while nothing else
// changes it; its bars stand in order of number already. What holds one leaf most
// often holds the next, and is not looked for again.
type Pen struct {
	ins    *Inspection
	last   *Address // of the leaf written last
	holder reflect.Value
	room   []Content // not yet taken
}

// fewContents is the number of contents that room is made for at a time: most combs hold
// one, so that each would have a list of one made for it alone.
const fewContents = 8

// takeRoom is an empty list of contents with room for one.
func (p *Pen) takeRoom() []Content {
	if len(p.room) == 0 {
		p.room = make([]Content, fewContents)
	}
	taken := p.room[:0:1]
	p.room = p.room[1:]
	return taken
}

// NewPen begins to write into an inspection.
func NewPen(ins *Inspection) Pen { return Pen{ins: ins} }

// Set writes a leaf as the function [Set] does. It reports also whether the value is
// plausible.
func (p *Pen) Set(a *Address, value string) (plausible bool, err error) {
	field := &a.route.field
	m, ok := field.read(value)
	if !ok {
		return false, field.refusal(a.path, value)
	}
	if err := p.find(a, p); err != nil {
		prune(reflect.ValueOf(p.ins).Elem()) // of a bar made on the way
		return false, err
	}
	a.route.set(p.holder, value, &m)
	return !field.bounded() || field.holds(m.number), nil
}

// Told reports whether the item of a list that the leaf tells of is there already;
// it is true of a leaf that tells of none.
func (p *Pen) Told(a *Address) bool {
	for i := range a.route.steps {
		if a.route.steps[i].list != nil {
			return p.find(a, nil) == nil
		}
	}
	return true
}

// find looks for what holds the leaf, which the given pen makes where it is missing.
func (p *Pen) find(a *Address, by *Pen) (err error) {
	if p.last != nil && p.last.besides(a) {
		return nil
	}
	p.last = nil
	if p.holder, err = a.follow(p.ins, a.route.steps, by); err == nil {
		p.last = a
	}
	return err
}

// besides reports whether two leaves have the same holder.
func (a *Address) besides(b *Address) bool {
	return a.bar == b.bar && a.ofBar == b.ofBar && a.barNth == b.barNth && a.itemNth == b.itemNth && a.route.to == b.route.to
}
