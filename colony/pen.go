package colony

import "reflect"

// Pen writes leaves into an inspection, one after another, while nothing else
// changes it; its bars stand in order of number already. What holds one leaf most
// often holds the next, and is not looked for again.
type Pen struct {
	ins    *Inspection
	last   *Address // of the leaf written last
	holder reflect.Value
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
	if err := p.find(a, true); err != nil {
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
			return p.find(a, false) == nil
		}
	}
	return true
}

// find looks for what holds the leaf.
func (p *Pen) find(a *Address, create bool) (err error) {
	if p.last != nil && p.last.besides(a) {
		return nil
	}
	p.last = nil
	if p.holder, err = a.follow(p.ins, a.route.steps, create); err == nil {
		p.last = a
	}
	return err
}

// besides reports whether two leaves have the same holder.
func (a *Address) besides(b *Address) bool {
	return a.bar == b.bar && a.ofBar == b.ofBar && a.barNth == b.barNth && a.itemNth == b.itemNth && a.route.to == b.route.to
}
