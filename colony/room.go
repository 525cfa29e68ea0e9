package colony

import (
	"reflect"
	"sync"
)

// Room is memory for what inspections hold. To make each truth, number, group and
// list item by itself takes longer than to write it, and gives the collector of
// garbage as much to do: a room makes many of a type at a time, for one inspection
// after another. Inspections of one room may keep some of each other's memory from
// being freed, but share no value. The zero Room is ready; it is for one goroutine
// at a time.
type Room struct{ slabs []slab } // by the number of their shape

// shape is a type of which a room makes values.
type shape struct {
	number int
	size   uintptr
	slice  reflect.Type // of such values
}

// shapes are those of all types for which there was a route so far.
var shapes = struct {
	sync.Mutex
	of map[reflect.Type]*shape
}{of: map[reflect.Type]*shape{}}

func shapeOf(t reflect.Type) *shape {
	shapes.Lock()
	defer shapes.Unlock()
	s := shapes.of[t]
	if s == nil {
		s = &shape{number: len(shapes.of), size: t.Size(), slice: reflect.SliceOf(t)}
		shapes.of[t] = s
	}
	return s
}

// slab is a row of values of one shape, the first of which are in use.
type slab struct {
	row  []struct{} // as in a list
	used int
}

// mostAhead is the number of values of a shape that are made at a time once many
// were asked for.
const mostAhead = 64

func (r *Room) slab(s *shape) (*slab, list) {
	for s.number >= len(r.slabs) {
		r.slabs = append(r.slabs, slab{})
	}
	b := &r.slabs[s.number]
	return b, list{&b.row, s}
}

// take returns the place of the first of n zero values that stand side by side.
func (r *Room) take(s *shape, n int) place {
	b, row := r.slab(s)
	if made := row.len(); b.used+n > made {
		more := max(2*n-1, min(2*made+1, mostAhead))
		row.value().Set(reflect.MakeSlice(s.slice, more, more))
		b.used = 0
	}
	b.used += n
	return row.item(b.used - n)
}

// lengthen puts a zero item behind the last of the list and returns its place.
func (r *Room) lengthen(l list) place {
	n := l.len()
	if n < l.cap() {
		l.lengthen()
		l.value().Index(n).SetZero() // what was deleted may lie there
		return l.item(n)
	}
	b, row := r.slab(l.items)
	if n > 0 && b.used > 0 && b.used < row.len() && l.item(n-1) == row.item(b.used-1) {
		b.used++ // the list ends where the next value lies
		l.move(l.item(0), n+1)
	} else {
		room := n + n/2 + 1
		first := r.take(l.items, room)
		if n > 0 {
			reflect.Copy(row.value().Slice(b.used-room, b.used), l.value())
		}
		l.move(first, room)
	}
	l.lengthen()
	return l.item(n)
}
