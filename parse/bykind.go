package parse

import "math/bits"

// byKind tells which rows of a table are for words of a kind, a bit each, so that the
// other rows are passed by.
type byKind [kindCount]uint64

// byKindOf is that of a table with so many rows, at most 64; of tells for which kinds a
// row is.
func byKindOf(rows int, of func(row int) kinds) *byKind {
	var b byKind
	for row := range rows {
		for k := range of(row).each() {
			b[k] |= 1 << row
		}
	}
	return &b
}

// due are the rows for a set of kinds.
func (b *byKind) due(of kinds) (rows uint64) {
	for half := of.low; half != 0; half &= half - 1 {
		rows |= b[bits.TrailingZeros64(half)]
	}
	for half := of.high; half != 0; half &= half - 1 {
		rows |= b[64+bits.TrailingZeros64(half)]
	}
	return rows
}

// all are the kinds for which there is a row.
func (b *byKind) all() (set kinds) {
	for k, rows := range b {
		if rows != 0 {
			set.add(kind(k))
		}
	}
	return set
}
