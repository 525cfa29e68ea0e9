package voice

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"math/bits"
	"os"
	"slices"
)

// trieLM is the general English trigram model that comes with a recogniser, in
// the binary form of PocketSphinx ("Trie Language Model": cmusphinx/pocketsphinx,
// src/lm/lm_trie.c and lm_trie_quant.c, read for the layout). The file holds,
// little endian: the signature, the order (one byte), the number of n-grams of
// each order; an int, then tables of 65536 floats (bigram probabilities, bigram
// backoffs, trigram probabilities); a record of probability, backoff and first
// child for each word and one more; bit-packed bigrams and trigrams; the words,
// each ended by NUL. Logarithms are to the base 1.0001. A bigram stands below
// its second word: the trie runs backwards.
type trieLM struct {
	words  []string
	ids    map[string]int32
	uni    []trieUnigram
	prob2  []float32
	back2  []float32
	prob3  []float32
	bi     packed
	tri    packed
	nextAt uint // bits: the number of a bigram's first trigram
}

type trieUnigram struct {
	Prob, Backoff float32
	Next          uint32
}

// packed is an array of records of the same number of bits.
type packed struct {
	data  []byte
	width uint
	word  uint // bits of the word's number, at the front
	n     uint32
}

const trieSignature = "Trie Language Model"

var errTrie = errors.New("not a PocketSphinx trigram model")

// logBase is the natural logarithm of the base of the model's logarithms.
var logBase = math.Log(1.0001)

// readTrieLM reads a model file.
func readTrieLM(path string) (*trieLM, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	m, err := parseTrieLM(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return m, nil
}

func parseTrieLM(data []byte) (*trieLM, error) {
	if !bytes.HasPrefix(data, []byte(trieSignature)) || len(data) < len(trieSignature)+13 || data[len(trieSignature)] != 3 {
		return nil, errTrie
	}
	r := bytes.NewReader(data[len(trieSignature)+1:])
	var n [3]uint32
	var kind int32
	if err := readAll(r, &n, &kind); err != nil {
		return nil, err
	}
	if uint64(n[0])*12 > uint64(len(data)) || uint64(n[1])*8 > uint64(len(data)) || uint64(n[2])*4 > uint64(len(data)) {
		return nil, fmt.Errorf("%w: it ends before its n-grams do", errTrie)
	}
	m := &trieLM{
		prob2: make([]float32, 1<<16), back2: make([]float32, 1<<16), prob3: make([]float32, 1<<16),
		uni: make([]trieUnigram, n[0]+1),
	}
	if err := readAll(r, m.prob2, m.back2, m.prob3, m.uni); err != nil {
		return nil, err
	}
	wordBits := uint(bits.Len32(n[0]))
	nextBits := uint(bits.Len32(n[2]))
	m.nextAt = wordBits + 32
	m.bi = packed{width: wordBits + 32 + nextBits, word: wordBits, n: n[1]}
	m.tri = packed{width: wordBits + 16, word: wordBits, n: n[2]}
	for _, p := range []*packed{&m.bi, &m.tri} {
		p.data = make([]byte, (uint64(1+p.n)*uint64(p.width)+7)/8+8)
		if _, err := io.ReadFull(r, p.data); err != nil {
			return nil, fmt.Errorf("%w: %v", errTrie, err)
		}
	}
	return m, m.readWords(r, n[0])
}

// readAll reads fixed-size values one after the other.
func readAll(r io.Reader, values ...any) error {
	for _, v := range values {
		if err := binary.Read(r, binary.LittleEndian, v); err != nil {
			return fmt.Errorf("%w: %v", errTrie, err)
		}
	}
	return nil
}

func (m *trieLM) readWords(r io.Reader, n uint32) error {
	var size uint32
	if err := readAll(r, &size); err != nil {
		return err
	}
	m.ids = make(map[string]int32, n)
	in := bufio.NewReader(r)
	for range n {
		w, err := in.ReadString(0)
		if err != nil {
			return fmt.Errorf("%w: its word list breaks off", errTrie)
		}
		w = w[:len(w)-1]
		m.ids[w] = int32(len(m.words))
		m.words = append(m.words, w)
	}
	return nil
}

// bitsAt reads up to 57 bits of record i from a bit offset inside it.
func (p *packed) bitsAt(i uint32, offset, length uint) uint64 {
	at := uint64(i)*uint64(p.width) + uint64(offset)
	return binary.LittleEndian.Uint64(p.data[at/8:]) >> (at % 8) & (1<<length - 1)
}

// find searches the records [from, to), which are ordered by word.
func (p *packed) find(from, to uint32, word int32) (uint32, bool) {
	to = min(to, p.n)
	for from < to {
		mid := from + (to-from)/2
		switch got := int32(p.bitsAt(mid, 0, p.word)); {
		case got == word:
			return mid, true
		case got < word:
			from = mid + 1
		default:
			to = mid
		}
	}
	return 0, false
}

func (m *trieLM) bigram(b, w int32) (uint32, bool) {
	return m.bi.find(m.uni[w].Next, m.uni[w+1].Next, b)
}

func (m *trieLM) trigramRange(bi uint32) (from, to uint32) {
	next := func(i uint32) uint32 { return uint32(m.bi.bitsAt(i, m.nextAt, m.bi.width-m.nextAt)) }
	return next(bi), next(bi + 1)
}

// The stored values as natural logarithms.
func (m *trieLM) log1(w int32) float64 { return float64(m.uni[w].Prob) * logBase }

// often is how often a word comes up. The start of a sentence, which is never
// predicted, is as frequent as its end.
func (m *trieLM) often(w int32) float64 {
	if m.words[w] == "<s>" {
		w = m.ids["</s>"]
	}
	return math.Exp(m.log1(w))
}

func (m *trieLM) log2(bi uint32) float64 {
	return float64(m.prob2[m.bi.bitsAt(bi, m.bi.word+16, 16)]) * logBase
}
func (m *trieLM) backoff2(bi uint32) float64 {
	return float64(m.back2[m.bi.bitsAt(bi, m.bi.word, 16)]) * logBase
}
func (m *trieLM) log3(tri uint32) float64 {
	return float64(m.prob3[m.tri.bitsAt(tri, m.tri.word, 16)]) * logBase
}

// p2 is the probability of w behind b; b below 0 is a word it does not know.
func (m *trieLM) p2(b, w int32) float64 {
	if b < 0 {
		return math.Exp(m.log1(w))
	}
	if i, ok := m.bigram(b, w); ok {
		return math.Exp(m.log2(i))
	}
	return math.Exp(m.log1(w) + float64(m.uni[b].Backoff)*logBase)
}

// p3 is the probability of w behind a b.
func (m *trieLM) p3(a, b, w int32) float64 {
	if a < 0 || b < 0 {
		return m.p2(b, w)
	}
	if i, ok := m.bigram(b, w); ok {
		from, to := m.trigramRange(i)
		if j, ok := m.tri.find(from, to, a); ok {
			return math.Exp(m.log3(j))
		}
	}
	p := m.p2(b, w)
	if i, ok := m.bigram(a, b); ok {
		p *= math.Exp(m.backoff2(i))
	}
	return p
}

// commonWords gives the n most probable words for which keep is true.
func (m *trieLM) commonWords(n int, keep func(string) bool) []string {
	order := make([]int32, 0, len(m.words))
	for i, w := range m.words {
		if keep(w) {
			order = append(order, int32(i))
		}
	}
	slices.SortFunc(order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(m.uni[b].Prob, m.uni[a].Prob), cmp.Compare(a, b))
	})
	var out []string
	for _, i := range order[:min(n, len(order))] {
		out = append(out, m.words[i])
	}
	return out
}
