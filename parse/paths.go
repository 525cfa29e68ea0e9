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

	below []*leafPath // what was asked for below it
	name  string      // by which it was asked for
}

// paths keeps one copy of every path that is written, since most notes say the
// same things of the same bars: to make it anew each time, and to take it apart
// again for the record, would cost more than to read what is written there.
type paths struct {
	known map[string]*leafPath
	bars  []leafPath               // by number: no leaves themselves
	last  [longestRecent]*leafPath // those of each length that were asked for last, which most often are asked for next
}

// longestRecent is above the length of most paths.
const longestRecent = 64

// mostPaths is the number of paths above which all are forgotten before the next
// note.
const mostPaths = 1 << 13

func newPaths() *paths { return &paths{known: map[string]*leafPath{}} }

// reset readies the paths for another note.
func (p *paths) reset() {
	if len(p.known) > mostPaths {
		*p = *newPaths()
	}
}

// of returns the path of that text.
func (p *paths) of(text string) *leafPath {
	last := &p.last[len(text)%longestRecent]
	if *last != nil && (*last).text == text {
		return *last
	}
	known := p.known[text]
	if known == nil {
		known = p.add(text)
	}
	*last = known
	return known
}

// under is the text of head.leaf.
func (p *paths) under(head, leaf string) string { return p.below(p.of(head), leaf) }

// ofBar is the text of the path of a leaf of a bar.
func (p *paths) ofBar(bar int, leaf string) string {
	for len(p.bars) <= bar && bar < mostBars {
		p.bars = append(p.bars, leafPath{text: "bars." + strconv.Itoa(len(p.bars))})
	}
	if bar < 0 || bar >= mostBars {
		return p.of("bars." + strconv.Itoa(bar) + "." + leaf).text
	}
	return p.below(&p.bars[bar], leaf)
}

// mostBars bounds the numbers of the bars whose paths are kept by number.
const mostBars = 100

// below is the text of the path of a leaf right below another, which knows the few that
// were asked for: to find it among them takes a third of the time of the map.
func (p *paths) below(head *leafPath, leaf string) string {
	for _, known := range head.below {
		if known.name == leaf {
			p.last[len(known.text)%longestRecent] = known
			return known.text
		}
	}
	added := p.of(head.text + "." + leaf)
	added.name = added.text[len(head.text)+1:]
	head.below = append(head.below, added)
	return added.text
}

func (p *paths) add(text string) *leafPath {
	added := &leafPath{id: int32(len(p.known)), text: text}
	if added.address, added.err = colony.AddressOf(text); added.err == nil {
		added.item = added.address.IsItem()
	}
	p.known[text] = added
	return added
}
