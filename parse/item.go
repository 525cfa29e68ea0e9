package parse

import "strings"

// kinds is a set of kinds.
type kinds [2]uint64

func (k *kinds) add(x kind)     { k[x>>6] |= 1 << (x & 63) }
func (k kinds) has(x kind) bool { return k[x>>6]&(1<<(x&63)) != 0 }

// item is a run of tokens with one role, or several where the words alone do
// not tell.
type item struct {
	kinds    kinds
	rules    []int16 // the rules that its words match
	from, to int32   // tokens
	text     string  // its words, lower case
	start    int32   // bytes of the note
	end      int32
	pause    pause // before it
	misheard bool
	mended   bool  // a repair put it here
	was      int32 // where the words it replaced began
	asked    bool  // a question mark follows
	capital  bool
	colon    bool // a colon follows
	bullet   bool
	plural   bool // of a bar word
	ranged   bool // of bars: one range, from one to another
	used     bool // some rule took it
	taken    bool // of bars: an argument of a deed, not a place of findings

	n     quantity
	dur   span
	size  measure
	day   day
	bars  []int    // of kBars
	hives []string // of kName, where several are named at once
	name  string   // of kName, and the text of an unknown word that may be one
}

func (it *item) is(k kind) bool { return it.kinds.has(k) }

func (it *item) any(list ...kind) bool {
	for _, k := range list {
		if it.kinds.has(k) {
			return true
		}
	}
	return false
}

// lexer turns tokens into items: numbers, dates and the words of the rules,
// the longest match first.
type lexer struct {
	*lexicon
	matcher *matcher
	text    string // the whole note
	toks    []token
	ref     *reader
}

func (l *lexer) quantityAt(i int) (quantity, int) { return l.numbers.read(l.text, l.toks, i) }
func (l *lexer) durationAt(i int) (span, int)     { return l.dates.duration(l.text, l.toks, i) }
func (l *lexer) measureAt(i int) (measure, int)   { return l.measures.read(l.text, l.toks, i) }

func (l *lexer) mayStart(i int) bool { return l.mayBeNumber(l.toks[i]) }

// items appends the items of the tokens to out[:0].
func (l *lexer) items(toks []token, out []item) []item {
	l.toks, out = toks, out[:0]
	for i := 0; i < len(toks); {
		it, next := l.item(i)
		out = append(out, it)
		i = next
	}
	return out
}

func (l *lexer) item(i int) (item, int) {
	best := l.matcher.longest(l.toks, i, l)
	var it item
	end := best.end
	if best.end > i {
		it.rules, it.n, it.dur, it.size = best.rules, best.n, best.dur, best.size
		for _, r := range best.rules {
			it.kinds.add(l.rules[r].Kind)
		}
	}
	if l.mayBeNumber(l.toks[i]) {
		if alt, j := l.figure(i); j > end || j == end && j > i && !it.any(kColour, kSeen) {
			if j == end && it.is(kNo) && !alt.is(kDate) && alt.n.lo == 0 { // "zero eggs" denies and counts
				it.n = alt.n
				it.kinds.add(kNum)
			} else {
				it, end = alt, j
			}
		}
	}
	if end == i {
		it.kinds.add(kWord)
		end = i + 1
	}
	l.place(&it, i, end)
	return it, end
}

// figure reads a date, a measure, a duration or a number.
func (l *lexer) figure(i int) (item, int) {
	var it item
	q, end := l.numbers.read(l.text, l.toks, i)
	if end > i && l.plainNumber(i, end) {
		it.n = q
		it.kinds.add(kNum)
		if q.article {
			it.kinds.add(kArt)
		}
		return it, end
	}
	if d, j := l.dates.read(l.text, l.toks, i, l.ref.today); j > i {
		it.kinds.add(kDate)
		it.day = d
		return it, j
	}
	if d, j := l.dayOfMonth(i); j > i {
		it.kinds.add(kDate)
		it.day = d
		return it, j
	}
	if m, j := l.measures.read(l.text, l.toks, i); j > i && !l.queenCups(m, j) {
		it.kinds.add(kMeasure)
		it.size = m
		return it, j
	}
	if d, j := l.dates.duration(l.text, l.toks, i); j > i {
		it.kinds.add(kDur)
		it.dur = d
		return it, j
	}
	if end > i {
		it.n = q
		it.kinds.add(kNum)
		if q.article {
			it.kinds.add(kArt)
		}
	}
	return it, max(end, i)
}

// plainNumber reports whether the number that ends before token end can be
// nothing more: no unit, length of time, month or the like follows, and no day
// begins with it.
func (l *lexer) plainNumber(i, end int) bool {
	if first := l.toks[i]; first.id == idISODate || first.id == idSlashDate || l.dates.of(first).kind != notDate {
		return false
	}
	if end >= len(l.toks) || l.toks[end].pause > comma {
		return true
	}
	next := l.toks[end]
	if next.id < firstWordID {
		return next.id == idUnknown
	}
	k := l.numbers.of(next).kind
	return l.dates.of(next).kind == notDate && l.measures.unit(l.toks, end) == "" && k != ofWord && k != articleWord && k != andWord
}

// queenCups: "two cups" without "of" are queen cups, not a measure.
func (l *lexer) queenCups(m measure, j int) bool {
	return m.unit == "cup" && m.amount.whole() && !l.numbers.is(l.toks, j, ofWord)
}

// dayOfMonth reads "the 3rd" behind "on", "by" or "since", where no noun
// follows that it could count.
func (l *lexer) dayOfMonth(i int) (day, int) {
	if i == 0 || !l.dates.is(l.toks, i-1, onWord) && !l.byWords[l.toks[i-1].id] {
		return day{}, i
	}
	d, j := l.dates.dayOfMonth(l.text, l.toks, i, l.ref.today)
	if j > i && joined(l.toks, j) {
		next := l.matcher.longest(l.toks, j, l)
		for _, n := range next.rules {
			if l.rules[n].Kind == kBar || l.rules[n].Kind == kSide {
				return day{}, i
			}
		}
		if next.end == j {
			return day{}, i
		}
	}
	return d, j
}

func (l *lexer) place(it *item, i, end int) {
	first, last := l.toks[i], l.toks[end-1]
	it.from, it.to = int32(i), int32(end)
	it.start, it.end = first.start, last.end
	it.pause = first.pause
	it.capital, it.bullet = first.has(capital), first.has(bullet)
	it.asked, it.colon = last.has(asked), last.has(coloned)
	for _, t := range l.toks[i:end] {
		it.misheard = it.misheard || t.has(misheard)
	}
	it.text = strings.ToLower(l.text[it.start:it.end])
	for _, t := range l.toks[i:end] {
		if t.has(respelt) {
			it.text = l.spelt(l.toks[i:end])
			break
		}
	}
	if it.is(kWord) {
		it.name = l.text[it.start:it.end]
	}
	if it.is(kBar) {
		c := l.text[it.end-1] | 0x20
		it.plural = c == 's'
	}
}

// spelt is what tokens say once they are mended.
func (l *lexicon) spelt(toks []token) string {
	words := make([]string, len(toks))
	for k, t := range toks {
		words[k] = l.words.words[t.id]
	}
	return strings.Join(words, " ")
}

// value is the value of the item's rule of the given kind.
func (r *reader) value(it *item, k kind) string {
	if rule := r.rule(it, k); rule != nil {
		if rule.Value == "=" {
			return it.text
		}
		return rule.Value
	}
	return ""
}

func (r *reader) rule(it *item, k kind) *rule {
	for _, n := range it.rules {
		if r.lexicon.rules[n].Kind == k {
			return &r.lexicon.rules[n]
		}
	}
	return nil
}
