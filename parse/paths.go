package parse

import (
	"strconv"

	"barwise/colony"
)

// leafPath is a path of the record with all that is needed to write its leaf.
type leafPath struct {
	id      int32
	text    string
	address colony.Address
	item    bool  // whether the leaf says that a list has an item
	err     error // that no leaf has the path: a fault of the rules
}

// paths keeps one copy of every path that is written, since most notes say the
// same things of the same bars: to make it anew each time, and to take it apart
// again for the record, would cost more than to read what is written there.
type paths struct {
	known   map[string]*leafPath
	last    *leafPath // the one asked for last, which is most often what is asked for next
	scratch []byte
}

// mostPaths is the number of paths above which all are forgotten before the next
// note.
const mostPaths = 1 << 13

func newPaths() *paths { return &paths{known: map[string]*leafPath{}, last: &leafPath{}} }

// reset readies the paths for another note.
func (p *paths) reset() {
	if len(p.known) > mostPaths {
		*p = *newPaths()
	}
}

// of returns the path of that text.
func (p *paths) of(text string) *leafPath {
	if p.last.text == text {
		return p.last
	}
	known := p.known[text]
	if known == nil {
		known = p.add(text)
	}
	p.last = known
	return known
}

// under is the text of head.leaf.
func (p *paths) under(head, leaf string) string {
	p.scratch = append(append(append(p.scratch[:0], head...), '.'), leaf...)
	return p.written()
}

// ofBar is the text of the path of a leaf of a bar.
func (p *paths) ofBar(bar int, leaf string) string {
	p.scratch = strconv.AppendInt(append(p.scratch[:0], "bars."...), int64(bar), 10)
	p.scratch = append(append(p.scratch, '.'), leaf...)
	return p.written()
}

// written is the path that stands in scratch.
func (p *paths) written() string {
	known := p.known[string(p.scratch)]
	if known == nil {
		known = p.add(string(p.scratch))
	}
	p.last = known
	return known.text
}

func (p *paths) add(text string) *leafPath {
	added := &leafPath{id: int32(len(p.known)), text: text}
	if added.address, added.err = colony.AddressOf(text); added.err == nil {
		added.item = added.address.IsItem()
	}
	p.known[text] = added
	return added
}
