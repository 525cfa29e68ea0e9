package parse

// arena hands out values that last until the reader turns to the next note;
// then their place is used again. What goes into the record must be copied.
type arena[T any] struct {
	chunk []T // made last
	used  int // of it
}

// chunkSize is how many values are made at a time.
const chunkSize = 256

// take returns n values, which hold what was there before.
func (a *arena[T]) take(n int) []T {
	if len(a.chunk)-a.used < n {
		a.more(n)
	}
	from := a.used
	a.used += n
	return a.chunk[from:a.used:a.used]
}

// more is seldom called, and so has no part in the code of those who take.
//
//go:noinline
func (a *arena[T]) more(n int) { a.chunk, a.used = make([]T, max(n, chunkSize)), 0 }

func (a *arena[T]) reset() { a.used = 0 }
