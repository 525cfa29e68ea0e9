package parse

import (
	"strconv"
	"strings"
)

// quantity is a number as it was said. A range has hi above lo.
type quantity struct {
	lo, hi  float64
	ordinal bool // third, 3rd
	share   bool // a fraction of one or a percentage
	or      bool // "two or three", not "two to three"
	approx  bool // about, roughly, -ish
	article bool // nothing but "a" or "an"
	bare    bool // written or said as one plain number
}

func (q quantity) whole() bool { return q.lo == float64(int(q.lo)) }

// numberWord is what a number word contributes.
type numberWord struct {
	kind  numberKind
	value float64
}

type numberKind uint8

const (
	notNumber numberKind = iota
	unitWord             // one … nineteen
	tensWord             // twenty … ninety
	scaleWord            // hundred, thousand
	ordinalWord
	partWord  // half, third, quarter, … as a part of one
	groupWord // couple, pair, dozen
	aboutWord // about, roughly
	andWord
	articleWord // a, an
	percentWord
	ofWord
	orWord // or
	toWord // to, through, thru
	pointWord
	betweenWord
	oddWord // -ish, odd, or so
)

// begins reports whether a number can begin with such a word.
func (k numberKind) begins() bool {
	switch k {
	case unitWord, tensWord, scaleWord, ordinalWord, partWord, groupWord, aboutWord, articleWord, betweenWord:
		return true
	}
	return false
}

// numbers reads quantities from tokens.
type numbers struct {
	kinds         []numberWord // by wordID
	perID, centID wordID       // per cent
	soID          wordID
	topID         wordID // "top" of "top bar"
	inID          wordID // the word "in", which may mean inches
	dimension     wordSet
	combWords     wordSet // comb, bar, frame
	barWords      wordSet // bar, b, frame: a whole number follows
	combsTold     wordSet // new, white: before a comb that no number follows
	counting      uint64  // a bit for the low six bits of each unit and ten
	months        func(token) bool
}

func (n *numbers) of(id wordID) numberWord {
	if int(id) < len(n.kinds) {
		return n.kinds[id]
	}
	return numberWord{}
}

func (n *numbers) is(toks []token, i int, k numberKind) bool {
	return i < len(toks) && n.of(toks[i].id).kind == k
}

// joined reports whether token i continues the number before it: no
// punctuation stands between.
func joined(toks []token, i int) bool { return i < len(toks) && toks[i].pause == none }

// read reads the quantity that starts at token i and returns it with the index
// behind it, or i itself where there is none.
func (n *numbers) read(text string, toks []token, i int) (quantity, int) {
	if i >= len(toks) || toks[i].id >= firstWordID && n.of(toks[i].id).kind == notNumber {
		return quantity{}, i
	}
	if n.endsAt(toks, i+1) {
		if q, ok := n.plain(text, &toks[i]); ok { // as most are
			return q, i + 1
		}
	}
	approx, start := false, i
	for n.is(toks, i, aboutWord) && joined(toks, i+1) {
		approx = true
		i++
	}
	if n.is(toks, i, betweenWord) {
		return n.between(text, toks, i)
	}
	q, j := n.single(text, toks, i)
	if j == i {
		return q, start
	}
	q.bare = j == i+1 && !q.article
	q.approx = approx
	if !q.ordinal {
		q, j = n.upTo(text, toks, q, j)
	}
	if n.is(toks, j, orWord) && joined(toks, j) && joined(toks, j+1) && toks[j+1].id == n.soID {
		q.approx = true // "a dozen or so"
		j += 2
	}
	if n.is(toks, j, oddWord) && joined(toks, j) && !(joined(toks, j+1) && toks[j+1].has(digits)) && (text[toks[j].start] != '+' || toks[j].has(glued)) { // "3 + 8 eggs", "b3 + b4" add
		q.approx = true
		j++
	}
	return n.percent(toks, q, j)
}

// endsAt reports whether no number goes on at token i.
func (n *numbers) endsAt(toks []token, i int) bool {
	if !joined(toks, i) {
		return true
	}
	next := toks[i]
	return (next.id >= firstWordID || next.id == idUnknown) && next.id != n.perID && n.of(next.id).kind == notNumber
}

// plain is the number of a token with no other part: in digits, or a word such as
// "twelve" or "a".
func (n *numbers) plain(text string, t *token) (quantity, bool) {
	if t.id == idNumber {
		return quantity{lo: figures(text[t.start:t.end]), bare: true}, true
	}
	switch w := n.of(t.id); w.kind {
	case unitWord, tensWord:
		return quantity{lo: w.value, bare: true}, true
	case articleWord:
		return quantity{lo: 1, article: true}, true
	}
	return quantity{}, false
}

// upTo reads the far end of a range: 3-5, three to five, two or three.
func (n *numbers) upTo(text string, toks []token, q quantity, j int) (quantity, int) {
	if !joined(toks, j) || j+1 >= len(toks) || toks[j+1].pause != none {
		return q, j
	}
	sep := n.of(toks[j].id).kind
	if toks[j].id != idDash && sep != toWord && sep != orWord {
		return q, j
	}
	if q.article {
		return q, j
	}
	far, k := n.single(text, toks, j+1)
	if toks[j].id == idDash && !toks[j].has(glued) && k < len(toks) && n.months(toks[k]) {
		return q, j // "hive 3 - 15 June"
	}
	if k == j+1 || far.ordinal || far.article || far.lo <= q.lo || far.share != q.share && n.percentWords(toks, k) == 0 {
		return q, j
	}
	q.hi, q.or, q.bare, q.share = far.lo, sep == orWord, false, far.share
	return q, k
}

func (n *numbers) between(text string, toks []token, i int) (quantity, int) {
	lo, j := n.single(text, toks, i+1)
	if j == i+1 || !n.is(toks, j, andWord) {
		return quantity{}, i
	}
	hi, k := n.single(text, toks, j+1)
	if k == j+1 || hi.lo <= lo.lo || lo.ordinal || hi.ordinal {
		return quantity{}, i
	}
	lo.hi = hi.lo
	return n.percent(toks, lo, k)
}

// percent turns "80 %" and "eighty per cent" into shares of one.
func (n *numbers) percent(toks []token, q quantity, j int) (quantity, int) {
	words := n.percentWords(toks, j)
	if words == 0 {
		return q, j
	}
	q.lo, q.hi, q.share = q.lo/100, q.hi/100, true
	return q, j + words
}

// percentWords is the number of words that "percent" or "per cent" takes at token j; 0
// where it does not stand there.
func (n *numbers) percentWords(toks []token, j int) int {
	switch {
	case !joined(toks, j):
		return 0
	case n.is(toks, j, percentWord):
		return 1
	case toks[j].id == n.perID && joined(toks, j+1) && toks[j+1].id == n.centID:
		return 2
	}
	return 0
}

// single reads one number without a range.
func (n *numbers) single(text string, toks []token, i int) (quantity, int) {
	if i >= len(toks) {
		return quantity{}, i
	}
	q, j := n.one(text, toks, i)
	if q.share {
		j = n.passComb(toks, j)
	}
	return q, j
}

// passComb passes by "a comb" behind a share: "half a comb of honey".
func (n *numbers) passComb(toks []token, j int) int {
	noun := n.skipOf(toks, j) + 1
	if noun >= len(toks) || !joined(toks, noun-1) || !joined(toks, noun) || !n.is(toks, noun-1, articleWord) || !n.combWords.has(toks[noun].id) {
		return j
	}
	return n.skipOf(toks, noun+1)
}

// one reads a number without what its share is of.
func (n *numbers) one(text string, toks []token, i int) (quantity, int) {
	switch toks[i].id {
	case idNumber:
		v := figures(text[toks[i].start:toks[i].end])
		if q, j := n.ofFigures(text, toks, i, v); j > i {
			return q, j
		}
		if n.ofBars(toks, i) { // "b10 1/2 drawn" is bar ten
			return quantity{lo: v}, i + 1
		}
		if joined(toks, i+1) && toks[i+1].id == idDash && joined(toks, i+2) && toks[i+2].id == idFraction { // 9-1/2
			if part, ok := fraction(text[toks[i+2].start:toks[i+2].end]); ok {
				return quantity{lo: v + part}, i + 3
			}
		}
		return n.withPart(text, toks, quantity{lo: v}, i+1)
	case idOrdinal:
		if toks[i].start == toks[i].end {
			return quantity{}, i // of a column's heading, which stands elsewhere
		}
		v, _ := strconv.ParseFloat(text[toks[i].start:toks[i].end-2], 64)
		return quantity{lo: v, ordinal: true}, i + 1
	case idFraction:
		if v, ok := fraction(text[toks[i].start:toks[i].end]); ok {
			return quantity{lo: v, share: v < 1}, i + 1
		}
		return quantity{}, i
	case idVulgar:
		return quantity{lo: vulgar[text[toks[i].start:toks[i].end]], share: true}, i + 1
	}
	return n.spoken(text, toks, i)
}

// ofFigures reads "2 thirds", "3 hundred", "2 dozen" and "31 point 5": v, in digits at token
// i, with the words behind it. Behind the word "bar" the number is the bar's, but in "bar 7
// 3 quarters full" only the first one.
func (n *numbers) ofFigures(text string, toks []token, i int, v float64) (quantity, int) {
	if !joined(toks, i+1) || n.ofBars(toks, i) && toks[i-1].id != idNumber {
		return quantity{}, i
	}
	j := i + 1
	if toks[j].id == idDash && toks[j].has(glued) && joined(toks, j+1) && toks[j+1].start == toks[j].end {
		j++ // 3-quarters
	}
	switch next := n.of(toks[j].id); next.kind {
	case partWord:
		if v >= 2 && v*next.value <= 1.01 && text[toks[j].end-1] == 's' {
			return quantity{lo: v * next.value, share: true}, j + 1
		}
	case scaleWord:
		return n.onScale(text, toks, v*next.value, j+1)
	case groupWord:
		if next.value > 2 {
			return quantity{lo: v * next.value}, n.skipOf(toks, j+1)
		}
	case pointWord:
		if q, end := n.decimals(text, toks, v, j+1); end > j+1 {
			return q, end
		}
	case andWord:
		if i > 0 && joined(toks, i) && toks[i-1].id == idNumber && n.is(toks, j+1, articleWord) && n.is(toks, j+2, partWord) {
			return n.withPart(text, toks, quantity{lo: v}, j) // "hive 6 23 and a half kilos"
		}
	}
	return quantity{}, i
}

// onScale reads what "and" adds to hundreds or thousands in digits: "2 thousand and 24".
func (n *numbers) onScale(text string, toks []token, v float64, j int) (quantity, int) {
	if n.is(toks, j, andWord) && joined(toks, j) && joined(toks, j+1) {
		if toks[j+1].id == idNumber {
			if more := figures(text[toks[j+1].start:toks[j+1].end]); more < 100 {
				return quantity{lo: v + more}, j + 2
			}
		} else if more, end := n.belowHundred(toks, j+1); end > j+1 {
			return quantity{lo: v + more}, end
		}
	}
	return quantity{lo: v}, j
}

// ofBars reports whether a number in digits is that of a bar, or the last of several:
// "b9-11 1/3 drawn".
func (n *numbers) ofBars(toks []token, i int) bool {
	for ; i > 0 && joined(toks, i); i-- {
		before := toks[i-1]
		if k := n.of(before.id).kind; before.id != idNumber && before.id != idDash && k != toWord && k != andWord {
			return n.behindBar(toks, i)
		}
	}
	return false
}

// figures is the value of a number in digits, such as 12, 2.5 or 1,000.
func figures(s string) float64 {
	if n, end := shortNumber(s, 0); end == len(s) { // most are bars and counts
		return float64(n)
	}
	v, _ := strconv.ParseFloat(point(s), 64)
	return v
}

var vulgar = map[string]float64{"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1.0 / 3, "⅔": 2.0 / 3, "⅛": 0.125}

func fraction(s string) (float64, bool) {
	over, under, _ := strings.Cut(s, "/")
	a, _ := strconv.ParseFloat(over, 64)
	b, _ := strconv.ParseFloat(under, 64)
	if b == 0 || b > 16 || a >= b {
		return 0, false
	}
	return a / b, true
}
