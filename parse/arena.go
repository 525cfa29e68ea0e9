package parse

// arena hands out values that last until the reader turns to the next note;
// then their place is used again. What goes into the record must be copied.
type arena[T any] struct {
	chunk []T // made last
	free  []T // the rest of it
}

// chunkSize is how many values are made at a time.
const chunkSize = 256

// take returns n values, which hold what was there before.
func (a *arena[T]) take(n int) []T {
	if len(a.free) < n {
		a.chunk = make([]T, max(n, chunkSize))
		a.free = a.chunk
	}
	out := a.free[:n:n]
	a.free = a.free[n:]
	return out
}

func (a *arena[T]) reset() { a.free = a.chunk }
