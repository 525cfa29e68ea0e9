package voice

import "math"

// mixture is the language model that is written out: trigram models of the
// trade, interpolated word by word with one of general English, since a model
// of the trade alone hears records in small talk and a general one alone
// garbles the trade.
type mixture struct {
	words   []string // the vocabulary; 0 is <s>, 1 is </s>
	ids     map[string]int32
	trade   []source
	reading [][]reading // what each word may be as a token
	general *trieLM     // nil where there is none
	rest    float64     // share of general: what the sources of the trade leave
	genIDs  []int32     // of each word in general, -1 where it lacks it
}

// source is one kind of text of the trade. Each is counted apart: added up, the
// many sentences that cost nothing would drown the few that people spoke.
type source struct {
	counts *counts
	share  float64 // of the mixture
}

// reading is one way to take a word: as itself, or as a member of a class.
type reading struct {
	token int32
	share float64 // of the token that is this word
}

const (
	sentenceStart = int32(0)
	sentenceEnd   = int32(1)
)

// tokenTable numbers tokens: words and classes.
type tokenTable map[string]int32

func newTokenTable() tokenTable {
	return tokenTable{"<s>": sentenceStart, "</s>": sentenceEnd}
}

func (t tokenTable) id(s string) int32 {
	n, ok := t[s]
	if !ok {
		n = int32(len(t))
		t[s] = n
	}
	return n
}

// count counts the sentences of some phrases; it gives the words they hold.
func (t tokenTable) count(c *counts, classes classSet, phrases []Phrases) {
	for _, p := range phrases {
		for text, weight := range p.Sentences() {
			sentence := []int32{sentenceStart}
			for _, tok := range classes.tokens(text) {
				sentence = append(sentence, t.id(tok))
			}
			if len(sentence) > 1 && weight > 0 {
				c.add(append(sentence, sentenceEnd), weight)
			}
		}
	}
}

// newMixture makes the mixture of sources and a general model, for a vocabulary
// that begins with <s> and </s>. Without a general model the shares must add up
// to 1.
func newMixture(words []string, tokens tokenTable, classes classSet, trade []source, general *trieLM) *mixture {
	m := &mixture{words: words, ids: map[string]int32{}, trade: trade, general: general, rest: 1}
	for _, s := range trade {
		m.rest -= s.share
	}
	shares := map[string]float64{}
	for _, members := range classes.members {
		for _, mem := range members {
			shares[mem.word] = mem.share
		}
	}
	for i, w := range words {
		m.ids[w] = int32(i)
		literal := int32(-1) // counted nowhere
		if t, ok := tokens[w]; ok {
			literal = t
		}
		rs := []reading{{literal, 1}}
		if t, ok := tokens["<"+classes.of[w]+">"]; ok {
			rs = append(rs, reading{t, shares[w]})
		}
		m.reading = append(m.reading, rs)
		g := int32(-1)
		if general != nil {
			if id, ok := general.ids[w]; ok {
				g = id
			}
		}
		m.genIDs = append(m.genIDs, g)
	}
	return m
}

// p1 is the probability of a word with no history.
func (m *mixture) p1(w int32) float64 {
	p := 0.0
	for _, s := range m.trade {
		p += s.share * m.source1(s.counts, w)
	}
	if m.general != nil && m.genIDs[w] >= 0 {
		p += m.rest * math.Exp(m.general.log1(m.genIDs[w]))
	}
	return p
}

// p2 is the probability of w behind b.
func (m *mixture) p2(b, w int32) float64 {
	p := 0.0
	for _, s := range m.trade {
		p += s.share * m.source2(s.counts, b, w)
	}
	if m.general != nil && m.genIDs[w] >= 0 {
		p += m.rest * m.general.p2(m.genIDs[b], m.genIDs[w])
	}
	return p
}

// p3 is the probability of w behind a b.
func (m *mixture) p3(a, b, w int32) float64 {
	p := 0.0
	for _, s := range m.trade {
		p += s.share * m.source3(s.counts, a, b, w)
	}
	if m.general != nil && m.genIDs[w] >= 0 {
		p += m.rest * m.general.p3(m.genIDs[a], m.genIDs[b], m.genIDs[w])
	}
	return p
}

func (m *mixture) source1(c *counts, w int32) float64 {
	p := 0.0
	for _, r := range m.reading[w] {
		p += r.share * c.p1(r.token, len(m.words))
	}
	return p
}

// source2 is the probability of w behind b in one source. A history that may be
// read in two ways counts by how often each was seen.
func (m *mixture) source2(c *counts, b, w int32) float64 {
	sum, seen := 0.0, 0.0
	for _, rb := range m.reading[b] {
		h := c.bi[rb.token]
		if h == nil {
			continue
		}
		weight := h.total * rb.share
		seen += weight
		for _, rw := range m.reading[w] {
			sum += weight * rw.share * c.p2(rb.token, rw.token, len(m.words))
		}
	}
	if seen > 0 {
		return sum / seen
	}
	return m.source1(c, w)
}

func (m *mixture) source3(c *counts, a, b, w int32) float64 {
	sum, seen := 0.0, 0.0
	for _, ra := range m.reading[a] {
		for _, rb := range m.reading[b] {
			h := c.tri[pairKey(ra.token, rb.token)]
			if h == nil {
				continue
			}
			weight := h.total * ra.share * rb.share
			seen += weight
			for _, rw := range m.reading[w] {
				sum += weight * rw.share * c.p3(ra.token, rb.token, rw.token, len(m.words))
			}
		}
	}
	if seen > 0 {
		return sum / seen
	}
	return m.source2(c, b, w)
}
