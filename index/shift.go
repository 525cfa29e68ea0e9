package index

import "barwise/colony"

// shift says how spans move when a text is edited: those before the edit
// stay, those after it move by as much as the text grew. The zero shift moves
// nothing.
type shift struct {
	from, to int // the edited stretch of the old text
	by       int
}

func shiftBetween(old, edited string) shift {
	n := min(len(old), len(edited))
	head := 0
	for head < n && old[head] == edited[head] {
		head++
	}
	tail := 0
	for tail < n-head && old[len(old)-1-tail] == edited[len(edited)-1-tail] {
		tail++
	}
	return shift{head, len(old) - tail, len(edited) - len(old)}
}

// of moves a span, and reports false for one whose words were edited.
func (m shift) of(span colony.Span) (colony.Span, bool) {
	switch {
	case m == shift{} || span[1] <= m.from:
		return span, true
	case span[0] >= m.to:
		return colony.Span{span[0] + m.by, span[1] + m.by}, true
	}
	return colony.Span{}, false
}

func (m shift) corrections(list []colony.Correction) []colony.Correction {
	var moved []colony.Correction
	for _, c := range list {
		if c.Span != nil {
			span, ok := m.of(*c.Span)
			if c.Span = &span; !ok {
				c.Span = nil
			}
		}
		moved = append(moved, c)
	}
	return moved
}

func (m shift) evidence(old colony.Evidence) colony.Evidence {
	if m == (shift{}) || old == nil {
		return old
	}
	moved := colony.Evidence{}
	for _, g := range old {
		var spans []colony.Span
		for _, span := range g.Spans {
			if now, ok := m.of(span); ok {
				spans = append(spans, now)
			}
		}
		if len(spans) > 0 {
			moved = append(moved, colony.Grounds{Path: g.Path, Spans: spans})
		}
	}
	return moved
}
