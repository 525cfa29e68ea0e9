package parse

import (
	"encoding/binary"
	"fmt"
	"slices"
	"strings"
)

// graph is the network of all ways of saying: from start, each word leads on
// to further nodes, and some nodes end a rule.
type graph struct {
	words  *vocabulary
	nodes  []node
	shared map[prefix]int32
	loose  map[wordID]bool // adverbs that may stand inside any way of saying
}

type node struct {
	next    []edge
	slots   [numSlots][]int32 // <n>, <dur>, <measure>, <date>
	empty   []int32           // nodes reached without a word
	accepts []int16           // rules that end here
	plain   bool              // reached from the start by words alone
}

// prefix is a step from a plain node.
type prefix struct {
	at   int32
	word wordID
}

// edge leads from a node to another by a word.
type edge struct {
	word wordID
	to   int32
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
	return &graph{words: words, nodes: make([]node, 1, 1<<16), shared: map[prefix]int32{}}
}

func (g *graph) node() int32 {
	g.nodes = append(g.nodes, node{})
	return int32(len(g.nodes) - 1)
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
	g.nodes[at].accepts = append(g.nodes[at].accepts, rule)
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
			g.nodes[to].empty = append(g.nodes[to].empty, end)
		}
		if rest[0] == closing {
			if optional {
				g.nodes[at].empty = append(g.nodes[at].empty, end)
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
			g.nodes[at].slots[s] = append(g.nodes[at].slots[s], to)
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
	key := prefix{at, w}
	if plain {
		if to, ok := g.shared[key]; ok {
			return to
		}
	}
	to := g.node()
	g.nodes[at].next = append(g.nodes[at].next, edge{w, to})
	if plain {
		g.nodes[to].plain = true
		g.shared[key] = to
	}
	return to
}

// asRead cuts a word of a rule as the tokeniser cuts it in a note.
func (g *graph) asRead(word string) []wordID {
	if p := g.words.contractions[word]; p != nil {
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
	starts []int32 // state after a first word, by wordID; -1 none, -2 not yet known
}

type state struct {
	nodes   []int32
	next    map[wordID]int32
	slots   [numSlots]int32 // -1 none
	slotted bool            // some slot leads on
	accepts []int16
}

func newMatcher(g *graph) *matcher {
	m := &matcher{graph: g, known: map[string]int32{}, starts: make([]int32, len(g.words.words))}
	m.stateOf([]int32{0})
	for i := range m.starts {
		m.starts[i] = -2
	}
	return m
}

// stateOf numbers the set of nodes that is reached from the given ones.
func (m *matcher) stateOf(from []int32) int32 {
	nodes := slices.Clone(from)
	for i := 0; i < len(nodes); i++ {
		for _, to := range m.graph.nodes[nodes[i]].empty {
			if !slices.Contains(nodes, to) {
				nodes = append(nodes, to)
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
	st := state{nodes: nodes, next: map[wordID]int32{}}
	m.states = append(m.states, st)
	var slotted [numSlots][]int32
	for _, n := range nodes {
		for _, rule := range m.graph.nodes[n].accepts {
			if !slices.Contains(st.accepts, rule) {
				st.accepts = append(st.accepts, rule)
			}
		}
		for s := range slotted {
			slotted[s] = append(slotted[s], m.graph.nodes[n].slots[s]...)
		}
	}
	slices.Sort(st.accepts)
	for s := range slotted {
		st.slots[s] = -1
		if len(slotted[s]) > 0 {
			st.slots[s] = m.stateOf(slotted[s])
			st.slotted = true
		}
	}
	m.states[id] = st
	return id
}

// step is the state behind a word, or -1.
func (m *matcher) step(from int32, word wordID) int32 {
	if from == 0 {
		if to := m.starts[word]; to != -2 {
			return to
		}
	} else if to, ok := m.states[from].next[word]; ok {
		return to
	}
	var targets []int32
	for _, n := range m.states[from].nodes {
		if n == 0 { // too many words begin a rule to look through
			if to, ok := m.graph.shared[prefix{0, word}]; ok {
				targets = append(targets, to)
			}
			continue
		}
		for _, e := range m.graph.nodes[n].next {
			if e.word == word {
				targets = append(targets, e.to)
			}
		}
	}
	to := int32(-1)
	if len(targets) > 0 {
		to = m.stateOf(targets)
	}
	if from == 0 {
		m.starts[word] = to
	} else {
		m.states[from].next[word] = to
	}
	return to
}

// match is the longest way of saying that starts at a token.
type match struct {
	rules    []int16
	end      int      // index behind its last token
	n        quantity // what stood for <n>
	dur      span     // what stood for <dur>
	skipped  bool     // an adverb was passed over
	dangling bool     // it was the last word
	size     measure  // what stood for <measure>
}

// slotReader reads what can stand for a slot.
type slotReader interface {
	mayStart(i int) bool // whether anything for a slot can begin at a token
	quantityAt(i int) (quantity, int)
	durationAt(i int) (span, int)
	measureAt(i int) (measure, int)
}

// longest finds the longest way of saying from token i on. A pause ends a way
// of saying, but for the colon between a label and its value: "Stings: 2".
func (m *matcher) longest(toks []token, i int, slots slotReader) match {
	best := match{end: i}
	at, j := int32(0), i
	for { // along plain words; a slot or an adverb within needs the search
		st := &m.states[at]
		if len(st.accepts) > 0 && j > i {
			best.rules, best.end = st.accepts, j
		}
		if j >= len(toks) || at != 0 && parted(toks, j) {
			return best
		}
		word := toks[j].id
		if st.slotted && slots.mayStart(j) || at != 0 && m.graph.loose[word] {
			break
		}
		to := int32(-1)
		if word >= firstWordID {
			to = m.step(at, word)
		}
		if to < 0 {
			return best
		}
		at, j = to, j+1
	}
	m.walk(at, toks, j, slots, match{end: i}, &best)
	return best
}

// parted reports whether a pause parts token i from the one before it.
func parted(toks []token, i int) bool {
	return toks[i].pause >= comma && !(toks[i].pause == colon && toks[i-1].has(coloned))
}

func (m *matcher) walk(at int32, toks []token, i int, slots slotReader, soFar match, best *match) {
	st := &m.states[at]
	if len(st.accepts) > 0 && i > best.end && !soFar.dangling {
		*best = soFar
		best.rules, best.end = st.accepts, i
	}
	if i >= len(toks) || at != 0 && parted(toks, i) {
		return
	}
	slotted := st.slots
	if word := toks[i].id; word >= firstWordID {
		if to := m.step(at, word); to >= 0 {
			next := soFar
			next.dangling = false
			m.walk(to, toks, i+1, slots, next, best)
		} else if at != 0 && m.graph.loose[word] && !soFar.skipped {
			next := soFar // "chewing their way right out", "is still open"
			next.skipped, next.dangling = true, true
			m.walk(at, toks, i+1, slots, next, best)
		}
	}
	if to := slotted[slotNumber]; to >= 0 {
		if q, j := slots.quantityAt(i); j > i && !q.ordinal {
			next := soFar
			next.n = q
			m.walk(to, toks, j, slots, next, best)
		}
	}
	if to := slotted[slotDuration]; to >= 0 {
		if d, j := slots.durationAt(i); j > i {
			next := soFar
			next.dur = d
			m.walk(to, toks, j, slots, next, best)
		}
	}
	if to := slotted[slotMeasure]; to >= 0 {
		if d, j := slots.measureAt(i); j > i {
			next := soFar
			next.size = d
			m.walk(to, toks, j, slots, next, best)
		}
	}
}
