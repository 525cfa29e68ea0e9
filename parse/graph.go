package parse

import (
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
	first []int32  // node behind each word that begins a rule, by wordID
	ids   []wordID // of the word that is threaded in
	loose wordSet  // adverbs that may stand inside any way of saying
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

// usualNodes is about the number of nodes of the built-in rules, which have twice
// as many links: to grow to it step by step would take longer than to fill it.
const usualNodes = 1 << 14

func newGraph(words *vocabulary) *graph {
	return &graph{words: words, nodes: make([]node, 1, usualNodes), links: make([]link, 1, 2*usualNodes)}
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
		if word[0] == '<' && len(word) > 1 {
			s, ok := slotNames[word]
			if !ok {
				return 0, fmt.Errorf("unknown slot %s", word)
			}
			to := g.node()
			g.nodes[at].slots = g.link(g.nodes[at].slots, to, int32(s))
			at = to
			continue
		}
		g.ids = g.asRead(g.ids[:0], word)
		for _, w := range g.ids {
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

// closed are the nodes that are reached from the given ones without a word, and
// they themselves.
func (g *graph) closed(nodes []int32) []int32 {
	nodes = slices.Clone(nodes)
	for i := 0; i < len(nodes); i++ {
		for l := range g.each(g.nodes[nodes[i]].empty) {
			if !slices.Contains(nodes, l.to) {
				nodes = append(nodes, l.to)
			}
		}
	}
	return nodes
}

// behindSlots are the words that go on with a way of saying that begins with a
// slot.
func (g *graph) behindSlots() iter.Seq[wordID] {
	return func(yield func(wordID) bool) {
		for _, start := range g.closed([]int32{0}) {
			for slot := range g.each(g.nodes[start].slots) {
				for _, behind := range g.closed([]int32{slot.to}) {
					for l := range g.each(g.nodes[behind].next) {
						if !yield(wordID(l.by)) {
							return
						}
					}
				}
			}
		}
	}
}

// asRead cuts a word of a rule as the tokeniser cuts it in a note, and appends
// the parts to out.
func (g *graph) asRead(out []wordID, word string) []wordID {
	if p := g.words.find(word).cut; p != nil {
		return append(out, p.first, p.second)
	}
	if stem, ok := strings.CutSuffix(word, "'s"); ok && stem != "" {
		return append(out, g.words.add(stem), g.words.add("'s"))
	}
	for part := range strings.SplitSeq(word, "-") {
		if part != "" {
			out = append(out, g.words.add(part))
		}
	}
	return out
}
