package colony

import (
	"reflect"
	"unsafe"
)

// place is where a part of an inspection stands in memory. Reflection tells once
// for each route how far behind the start of its struct each part stands; to ask it
// again for each of the millions of leaves that are read took longer than most else
// that is done for a leaf. This file is the only one that knows memory by address.
type place struct{ at unsafe.Pointer }

func placeOf[T any](v *T) place { return place{unsafe.Pointer(v)} }

// in is the T that stands at the place.
func in[T any](p place) *T { return (*T)(p.at) }

// value is what stands at the place, of the type given.
func (p place) value(t reflect.Type) reflect.Value { return reflect.NewAt(t, p.at).Elem() }

func (p place) plus(offset uintptr) place { return place{unsafe.Add(p.at, offset)} }

// part is a group, a list or a leaf as a field of a struct.
type part struct {
	offset uintptr
	typ    reflect.Type
	of     *shape // what it points to, or has for items; nil for a value that stands there itself
}

func partOf(f reflect.StructField) part {
	p := part{offset: f.Offset, typ: f.Type}
	if k := f.Type.Kind(); k == reflect.Pointer || k == reflect.Slice {
		p.of = shapeOf(f.Type.Elem())
	}
	return p
}

// list is a list of the record, whatever its items are: how many there are is the
// same if each is taken for something without a size.
type list struct {
	slice *[]struct{}
	items *shape
}

func listAt(p place, items *shape) list { return list{in[[]struct{}](p), items} }

func (l list) len() int { return len(*l.slice) }
func (l list) cap() int { return cap(*l.slice) }

// item is the place of the item of that index.
func (l list) item(i int) place {
	return place{unsafe.Pointer(unsafe.SliceData(*l.slice))}.plus(uintptr(i) * l.items.size)
}

// lengthen has the list hold one item more of those that it has room for.
func (l list) lengthen() { *l.slice = (*l.slice)[:len(*l.slice)+1] }

// move has the list lie at that place, where there is room for so many items.
func (l list) move(first place, room int) {
	*l.slice = unsafe.Slice(in[struct{}](first), room)[:len(*l.slice)]
}

// value is the list for reflection.
func (l list) value() reflect.Value { return placeOf(l.slice).value(l.items.slice) }
