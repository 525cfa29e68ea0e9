package parse

import (
	"cmp"
	"encoding/binary"
	"fmt"
	"iter"
	"slices"
	"strings"
)

// graph is the network of all ways of saying: from start, each word leads on
// to further nodes, and some nodes end a rule. Its tens of thousands of nodes
// hold no pointers, so that the collector of garbage passes over them.
type graph struct {
	words *vocabulary
	nodes []node
	links []link
	first []int32 // node behind each word that begins a rule, by wordID
	loose wordSet // adverbs that may stand inside any way of saying
}

// node holds where its lists begin among the links; 0 is an empty list.
type node struct {
	next    int32 // nodes behind a word
	slots   int32 // nodes behind a slot
	empty   int32 // nodes reached without a word
	accepts int32 // rules that end here
	plain   bool  // reached from the start by words alone
}

// link is one entry of a node's list: a node with the word or slot that leads
// to it, or a rule.
type link struct {
	to, by int32
	rest   int32 // the link behind it, 0 for none
}

// slot is a part of a way of saying that stands for more than one word.
type slot uint8

const (
	slotNumber slot = iota
	slotDuration
	slotMeasure
	numSlots
)

var slotNames = map[string]slot{"<n>": slotNumber, "<dur>": slotDuration, "<measure>": slotMeasure}

func newGraph(words *vocabulary) *graph {
	return &graph{words: words, nodes: make([]node, 1), links: make([]link, 1)}
}

func (g *graph) node() int32 {
	g.nodes = append(g.nodes, node{})
	return int32(len(g.nodes) - 1)
}

// link adds to a list and returns where it begins now.
func (g *graph) link(list, to, by int32) int32 {
	g.links = append(g.links, link{to, by, list})
	return int32(len(g.links) - 1)
}

// each goes through a list.
func (g *graph) each(list int32) iter.Seq[link] {
	return func(yield func(link) bool) {
		for ; list != 0 && yield(g.links[list]); list = g.links[list].rest {
		}
	}
}

// add threads one way of saying into the graph: words, <slots>, (a|b) for
// either and [a] for a or nothing.
func (g *graph) add(say string, rule int16) error {
	at, rest, err := g.sequence(0, say)
	switch {
	case err != nil:
		return fmt.Errorf("%q: %w", say, err)
	case rest != "":
		return fmt.Errorf("%q: stray %q", say, rest[:1])
	case at == 0:
		return fmt.Errorf("%q: says nothing", say)
	}
	g.nodes[at].accepts = g.link(g.nodes[at].accepts, int32(rule), 0)
	return nil
}

// sequence leads from a node through words and groups up to the end of the
// text or, inside a group, up to its | or closing bracket, and returns the
// rest.
func (g *graph) sequence(at int32, text string) (int32, string, error) {
	for {
		stop := strings.IndexAny(text, "([|])")
		if stop < 0 {
			stop = len(text)
		}
		var err error
		if at, err = g.run(at, text[:stop]); err != nil {
			return 0, "", err
		}
		text = text[stop:]
		if text == "" || text[0] != '(' && text[0] != '[' {
			return at, text, nil
		}
		if at, text, err = g.group(at, text); err != nil {
			return 0, "", err
		}
	}
}

// group leads through (a|b), either of them, or [a], a or nothing.
func (g *graph) group(at int32, text string) (int32, string, error) {
	closing, optional := byte(')'), text[0] == '['
	if optional {
		closing = ']'
	}
	end := g.node()
	for {
		to, rest, err := g.sequence(at, text[1:])
		if err != nil {
			return 0, "", err
		}
		if rest == "" {
			return 0, "", fmt.Errorf("%c is not closed", text[0])
		}
		if to != end {
			g.nodes[to].empty = g.link(g.nodes[to].empty, end, 0)
		}
		if rest[0] == closing {
			if optional {
				g.nodes[at].empty = g.link(g.nodes[at].empty, end, 0)
			}
			return end, rest[1:], nil
		}
		if rest[0] != '|' {
			return 0, "", fmt.Errorf("%c closed by %c", map[bool]byte{true: '[', false: '('}[optional], rest[0])
		}
		text = rest
	}
}

// run leads from a node through plain words and slots.
func (g *graph) run(at int32, text string) (int32, error) {
	for word := range strings.FieldsSeq(text) {
		to := g.node()
		if word[0] == '<' && len(word) > 1 {
			s, ok := slotNames[word]
			if !ok {
				return 0, fmt.Errorf("unknown slot %s", word)
			}
			g.nodes[at].slots = g.link(g.nodes[at].slots, to, int32(s))
			at = to
			continue
		}
		for _, w := range g.asRead(word) {
			at = g.follow(at, w)
		}
	}
	return at, nil
}

// follow is the node behind a word. What begins alike shares its nodes: a node
// reached from the start by words alone stands for those words, whatever
// rule they belong to.
func (g *graph) follow(at int32, w wordID) int32 {
	plain := at == 0 || g.nodes[at].plain
	if plain {
		if to := g.shared(at, w); to != 0 {
			return to
		}
	}
	to := g.node()
	if at == 0 {
		g.first = grown(g.first, w)
		g.first[w] = to
	}
	g.nodes[at].next = g.link(g.nodes[at].next, to, int32(w))
	g.nodes[to].plain = plain
	return to
}

// shared is the node behind a word of a plain node, 0 where there is none yet.
func (g *graph) shared(at int32, w wordID) int32 {
	if at == 0 { // too many words begin a rule to go through
		if int(w) < len(g.first) {
			return g.first[w]
		}
		return 0
	}
	for l := range g.each(g.nodes[at].next) {
		if l.by == int32(w) {
			return l.to
		}
	}
	return 0
}

// asRead cuts a word of a rule as the tokeniser cuts it in a note.
func (g *graph) asRead(word string) []wordID {
	if p := g.words.entries[word].cut; p != nil {
		return []wordID{p.first, p.second}
	}
	if stem, ok := strings.CutSuffix(word, "'s"); ok && stem != "" {
		return []wordID{g.words.add(stem), g.words.add("'s")}
	}
	var ids []wordID
	for part := range strings.SplitSeq(word, "-") {
		if part != "" {
			ids = append(ids, g.words.add(part))
		}
	}
	return ids
}

// matcher walks the graph. It turns sets of nodes into single states as they
// are met, so that a word costs one look-up; it is not safe for concurrent use.
type matcher struct {
	graph  *graph
	states []state
	known  map[string]int32
	starts []int32 // state after a first word, by wordID
	kept   filled  // of the match found last
}

type state struct {
	nodes   []int32
	next    []edge          // sorted by word
	words   uint64          // a bit for the low six bits of each word of next: most words are told by it to lead nowhere
	slots   [numSlots]int32 // -1 none
	slotted bool            // some slot leads on
	accepts []int16
}

// edge leads from a state to another by a word.
type edge struct {
	word wordID
	to   int32
}

// Where a word leads instead of to a state.
const (
	nowhere  int32 = -1
	untrod   int32 = -2 // not yet looked up
	theStart int32 = 0
)

func newMatcher(g *graph) *matcher {
	m := &matcher{graph: g, known: map[string]int32{}, starts: make([]int32, len(g.words.words))}
	m.stateOf([]int32{0})
	for i := range m.starts {
		m.starts[i] = untrod
	}
	return m
}

// stateOf numbers the set of nodes that is reached from the given ones.
func (m *matcher) stateOf(from []int32) int32 {
	nodes := slices.Clone(from)
	for i := 0; i < len(nodes); i++ {
		for l := range m.graph.each(m.graph.nodes[nodes[i]].empty) {
			if !slices.Contains(nodes, l.to) {
				nodes = append(nodes, l.to)
			}
		}
	}
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
	st := state{nodes: nodes}
	m.states = append(m.states, st)
	var slotted [numSlots][]int32
	for _, n := range nodes {
		for l := range m.graph.each(m.graph.nodes[n].accepts) {
			if rule := int16(l.to); !slices.Contains(st.accepts, rule) {
				st.accepts = append(st.accepts, rule)
			}
		}
		for l := range m.graph.each(m.graph.nodes[n].slots) {
			slotted[l.by] = append(slotted[l.by], l.to)
		}
	}
	slices.Sort(st.accepts)
	if id != theStart { // too many words begin a rule to look through
		st.addWords(m.graph)
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

// addWords lists the words that lead on from the state.
func (st *state) addWords(g *graph) {
	for _, n := range st.nodes {
		for l := range g.each(g.nodes[n].next) {
			st.next = append(st.next, edge{wordID(l.by), untrod})
			st.words |= 1 << (l.by & 63)
		}
	}
	slices.SortFunc(st.next, func(a, b edge) int { return cmp.Compare(a.word, b.word) })
	st.next = slices.Compact(st.next)
}

// step is the state behind a word, or nowhere.
func (m *matcher) step(from int32, word wordID) int32 {
	if from == theStart {
		if m.starts[word] == untrod {
			m.starts[word] = m.behind(from, word)
		}
		return m.starts[word]
	}
	st := &m.states[from]
	if st.words>>(word&63)&1 == 0 {
		return nowhere
	}
	low, high := 0, len(st.next)
	for low < high {
		if mid := (low + high) / 2; st.next[mid].word < word {
			low = mid + 1
		} else {
			high = mid
		}
	}
	if low == len(st.next) || st.next[low].word != word {
		return nowhere
	}
	if st.next[low].to == untrod {
		to := m.behind(from, word) // may move the states
		m.states[from].next[low].to = to
		return to
	}
	return st.next[low].to
}

// behind finds the state behind a word in the graph.
func (m *matcher) behind(from int32, word wordID) int32 {
	var targets []int32
	for _, n := range m.states[from].nodes {
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
	rules []int16
	end   int     // index behind its last token
	with  *filled // nil where no slot was passed; good until the next search
}

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
	best := match{end: i}
	at, j := theStart, i
	for { // along plain words; a slot or an adverb within needs the search
		st := &m.states[at]
		if len(st.accepts) > 0 && j > i {
			best.rules, best.end = st.accepts, j
		}
		if j >= len(toks) || at != theStart && parted(toks, j) {
			return best
		}
		word := toks[j].id
		if st.slotted && slots != nil && toks[j].has(numeral) || at != theStart && m.graph.loose.has(word) {
			break
		}
		to := nowhere
		if word >= firstWordID {
			to = m.step(at, word)
		}
		if to < 0 {
			return best
		}
		at, j = to, j+1
	}
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
	if len(st.accepts) > 0 && i > s.best.end && !so.dangling {
		s.best.rules, s.best.end, s.best.with = st.accepts, i, nil
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
		} else if at != theStart && s.graph.loose.has(word) && !so.skipped {
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
		if q, j := s.slots.quantityAt(i); j > i && !q.ordinal {
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
