package parse

import (
	"encoding/binary"
	"math/bits"
	"slices"
)

// matcher walks the graph. It turns sets of nodes into single states as they
// are met, so that a word costs one look-up; it is not safe for concurrent use.
type matcher struct {
	graph  *graph
	kindOf []kind // of each rule
	states []state
	nodes  [][]int32 // of the graph, by state
	known  map[string]int32
	starts []int32 // state after a first word, by wordID
	kept   filled  // of the match found last
}

type state struct {
	says    *sense          // what has been said by here, nil where no way of saying ends
	leads   uint64          // a bit for the low six bits of each word that leads on
	slotted bool            // some slot leads on
	slots   [numSlots]int32 // -1 none
	next    []edge          // by the low bits of their words; at least every other is free
}

// mayLead reports whether a word may lead on: for most it is plain that it does not.
func (st *state) mayLead(word wordID) bool { return st.leads>>(word&63)&1 != 0 }

// sense is what a way of saying means.
type sense struct {
	rules []int16 // that say so, in their order
	kinds kinds   // of the rules
}

// senseOf is the sense of one rule alone.
func senseOf(rule int16, of kind) *sense { return &sense{[]int16{rule}, setOf(of)} }

// edge leads from a state to another by a word. That of no word is free.
type edge struct {
	word wordID
	to   int32
}

// noWords are the edges of a state from which no word leads on.
var noWords = make([]edge, 1)

// Where a word leads instead of to a state.
const (
	nowhere  int32 = -1
	untrod   int32 = -2 // not yet looked up
	theStart int32 = 0
)

func newMatcher(g *graph, kindOf []kind) *matcher {
	m := &matcher{graph: g, kindOf: kindOf, known: map[string]int32{}, starts: make([]int32, len(g.words.words))}
	m.stateOf([]int32{0})
	for i := range m.starts {
		m.starts[i] = untrod
	}
	return m
}

// stateOf numbers the set of nodes that is reached from the given ones.
func (m *matcher) stateOf(from []int32) int32 {
	nodes := m.graph.closed(from)
	slices.Sort(nodes)
	nodes = slices.Compact(nodes)
	key := make([]byte, 0, 4*len(nodes))
	for _, n := range nodes {
		key = binary.LittleEndian.AppendUint32(key, uint32(n))
	}
	if known, ok := m.known[string(key)]; ok {
		return known
	}
	id := int32(len(m.states))
	m.known[string(key)] = id
	st := state{next: noWords, says: m.senseOf(nodes)}
	m.states, m.nodes = append(m.states, st), append(m.nodes, nodes)
	var slotted [numSlots][]int32
	for _, n := range nodes {
		for l := range m.graph.each(m.graph.nodes[n].slots) {
			slotted[l.by] = append(slotted[l.by], l.to)
		}
	}
	if id != theStart { // too many words begin a rule to look through
		st.addWords(m.graph, nodes)
	}
	for s := range slotted {
		st.slots[s] = nowhere
		if len(slotted[s]) > 0 {
			st.slots[s] = m.stateOf(slotted[s])
			st.slotted = true
		}
	}
	m.states[id] = st
	return id
}

// senseOf is the sense of the rules that end at some nodes, nil where none does.
func (m *matcher) senseOf(nodes []int32) *sense {
	var s sense
	for _, n := range nodes {
		for l := range m.graph.each(m.graph.nodes[n].accepts) {
			if rule := int16(l.to); !slices.Contains(s.rules, rule) {
				s.rules = append(s.rules, rule)
				s.kinds.add(m.kindOf[rule])
			}
		}
	}
	if len(s.rules) == 0 {
		return nil
	}
	slices.Sort(s.rules)
	return &s
}

// addWords lists the words that lead on from the state.
func (st *state) addWords(g *graph, nodes []int32) {
	var words []wordID
	for _, n := range nodes {
		for l := range g.each(g.nodes[n].next) {
			words = append(words, wordID(l.by))
		}
	}
	if len(words) == 0 {
		return
	}
	st.next = make([]edge, 1<<bits.Len(uint(2*len(words)-1)))
	for _, word := range words {
		*st.edge(word) = edge{word, untrod}
		st.leads |= 1 << (word & 63)
	}
}

// edge is the edge of a word, or a free one where that leads nowhere.
func (st *state) edge(word wordID) *edge {
	mask := len(st.next) - 1
	i := int(word) & mask
	for st.next[i].word != word && st.next[i].word != idUnknown {
		i = (i + 1) & mask
	}
	return &st.next[i]
}

// first is the state behind a first word, or nowhere.
func (m *matcher) first(word wordID) int32 {
	to := &m.starts[word]
	if *to == untrod {
		*to = m.behind(theStart, word)
	}
	return *to
}

// step is the state behind a word, or nowhere.
func (m *matcher) step(from int32, word wordID) int32 {
	if from == theStart {
		return m.first(word)
	}
	e := m.states[from].edge(word)
	switch {
	case e.word == idUnknown:
		return nowhere
	case e.to == untrod:
		e.to = m.behind(from, word)
	}
	return e.to
}

// behind finds the state behind a word in the graph.
func (m *matcher) behind(from int32, word wordID) int32 {
	var targets []int32
	for _, n := range m.nodes[from] {
		if n == 0 {
			if to := m.graph.shared(0, word); to != 0 {
				targets = append(targets, to)
			}
			continue
		}
		for l := range m.graph.each(m.graph.nodes[n].next) {
			if l.by == int32(word) {
				targets = append(targets, l.to)
			}
		}
	}
	if len(targets) == 0 {
		return nowhere
	}
	return m.stateOf(targets)
}

// match is the longest way of saying that starts at a token.
type match struct {
	*sense         // senseless where there is none
	end    int     // index behind its last token
	with   *filled // nil where no slot was passed; good until the next search
}

// senseless is the sense of words that no rule knows.
var senseless = &sense{}

// filled is what stood for the slots of a way of saying.
type filled struct {
	n    quantity
	dur  span
	size measure
}

// slotReader reads what can stand for a slot; nil reads nothing.
type slotReader interface {
	quantityAt(i int) (quantity, int)
	durationAt(i int) (span, int)
	measureAt(i int) (measure, int)
}

// longest finds the longest way of saying from token i on. A pause ends a way
// of saying, but for the colon between a label and its value: "Stings: 2".
func (m *matcher) longest(toks []token, i int, slots slotReader) match {
	first := &toks[i]
	if slots != nil && first.has(numeral) && i+1 < len(toks) && toks[i+1].has(following) {
		return m.search(toks, slots, theStart, i, match{sense: senseless, end: i})
	}
	best := match{sense: senseless, end: i}
	at := m.starts[first.id]
	if at == untrod {
		at = m.first(first.id)
	}
	for j := i + 1; at >= 0; j++ { // along plain words; a slot or an adverb within needs the search
		st := &m.states[at]
		if st.says != nil {
			best.sense, best.end = st.says, j
		}
		if st.leads == 0 && !st.slotted || j >= len(toks) {
			break // as for most words: nothing more can be said
		}
		t := &toks[j]
		if t.pause >= comma && parted(toks, j) {
			break
		}
		if t.flags&(loose|numeral) != 0 && (t.has(loose) || st.slotted && slots != nil) {
			return m.search(toks, slots, at, j, best)
		}
		if !st.mayLead(t.id) {
			break
		}
		at = m.step(at, t.id)
	}
	return best
}

// alone is the sense of a word by itself, whatever follows it.
func (m *matcher) alone(word wordID) *sense {
	if at := m.first(word); at >= 0 && m.states[at].says != nil {
		return m.states[at].says
	}
	return senseless
}

// search goes on from the state at, behind token j-1, where best was found on the
// way to it.
func (m *matcher) search(toks []token, slots slotReader, at int32, j int, best match) match {
	s := search{matcher: m, toks: toks, slots: slots, best: best}
	s.from(at, j, passed{})
	return s.best
}

// parted reports whether a pause parts token i from the one before it.
func parted(toks []token, i int) bool {
	return toks[i].pause >= comma && !(toks[i].pause == colon && toks[i-1].has(coloned))
}

// search tries every way on from a state.
type search struct {
	*matcher
	toks  []token
	slots slotReader
	best  match
}

// passed is what a way of saying has passed over so far.
type passed struct {
	with     *filled
	skipped  bool // an adverb
	dangling bool // it was the last word
}

func (s *search) from(at int32, i int, so passed) {
	st := &s.states[at]
	if st.says != nil && i > s.best.end && !so.dangling {
		s.best = match{sense: st.says, end: i}
		if so.with != nil {
			s.kept = *so.with
			s.best.with = &s.kept
		}
	}
	if i >= len(s.toks) || at != theStart && parted(s.toks, i) {
		return
	}
	slotted, slots := st.slotted, st.slots // the step may move the states
	if word := s.toks[i].id; word >= firstWordID {
		if to := s.step(at, word); to >= 0 {
			s.from(to, i+1, passed{with: so.with, skipped: so.skipped})
		} else if at != theStart && s.toks[i].has(loose) && !so.skipped {
			s.from(at, i+1, passed{so.with, true, true}) // "chewing their way right out", "is still open"
		}
	}
	if slotted && s.slots != nil && s.toks[i].has(numeral) {
		s.fill(slots, i, so)
	}
}

// fill goes on behind a slot.
func (s *search) fill(slots [numSlots]int32, i int, so passed) {
	var with filled
	if so.with != nil {
		with = *so.with
	}
	so.with = &with
	if to := slots[slotNumber]; to >= 0 {
		if q, j := s.slots.quantityAt(i); j > i && !q.ordinal && !q.share && !(s.toks[j-1].has(coloned) && i > 0 && s.toks[i].has(glued)) { // "H4: drone cells
			before := with.n
			with.n = q
			s.from(to, j, so)
			with.n = before
		}
	}
	if to := slots[slotDuration]; to >= 0 {
		if d, j := s.slots.durationAt(i); j > i {
			before := with.dur
			with.dur = d
			s.from(to, j, so)
			with.dur = before
		}
	}
	if to := slots[slotMeasure]; to >= 0 {
		if d, j := s.slots.measureAt(i); j > i {
			with.size = d
			s.from(to, j, so)
		}
	}
}
