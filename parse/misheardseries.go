package parse

// A word that sounds like a number is one where a series of bars' numbers wants it: next to numbers
// that it goes on from, or comes before, by one.

// besides is the number beside a word in a series.
type besides struct {
	at     int // its token
	value  float64
	known  bool // there is one
	direct bool // nothing stands between
	ranges bool // "to" or "through" stands between
	heard  bool // it is a word that only sounds like a number
}

// steps reports whether the series goes by one from a to b.
func steps(a, b float64) bool { return a-b == 1 || b-a == 1 }

// fitsSeries reports whether the word at token i is the number h in a series: "bars three for and
// five", "on for five and six", "six seven ate and nine", "bars to to for", "one two three for
// pollen". The words before h open a series, those that must not follow do not follow its next
// number, those that must follow end it.
func (l *lexicon) fitsSeries(h *heard, text string, toks []token, i int, before *token) bool {
	v := l.numbers.of(h.said[0]).value
	left, right := l.beside(text, toks, i, -1), l.beside(text, toks, i, 1)
	switch {
	case !right.known:
		return left.known && l.endsSeries(h, text, toks, i, left)
	case right.at+1 < len(toks) && h.not.fits(l, &toks[right.at+1], false, false):
		return false // "on for five days"
	case !left.known && right.direct && !right.heard && l.numbers.of(toks[i].id).kind != toWord && l.countsOn(text, toks, v, right):
		return true // "thirteen bars for five and six capped brood"
	case left.known:
		return l.fitsBetween(toks[i], v, left, right)
	case !h.before.fits(l, before, h.before.start, toks[i].pause >= colon):
		return false
	case right.ranges:
		return right.value != v
	case right.direct && (before == nil || toks[i].pause >= colon || l.numbers.of(toks[i].id).kind == toWord):
		return false // "for five days of rain"
	}
	named := before != nil && l.barNouns.has(before.id) // "bars won and to"
	return (!right.heard || named && !right.direct) && steps(v, right.value)
}

// countsOn reports whether two numbers go on from v by one each.
func (l *lexicon) countsOn(text string, toks []token, v float64, next besides) bool {
	last := l.beside(text, toks, next.at, 1)
	return last.known && !last.heard && !last.ranges && steps(v, next.value) && last.value-next.value == next.value-v
}

// fitsBetween reports whether v lies between two numbers of a series, a step from one of them. A word
// of ranges does so only beside "and": "one to three" is a range.
func (l *lexicon) fitsBetween(t token, v float64, left, right besides) bool {
	if left.ranges || right.ranges || left.heard && right.heard || (left.value < v) != (v < right.value) {
		return false
	}
	if left.direct && right.direct {
		return l.numbers.of(t.id).kind != toWord && steps(left.value, v) && steps(v, right.value)
	}
	return steps(left.value, v) || steps(v, right.value)
}

// endsSeries reports whether the word at token i is the last number of a series before what is on its
// bars: "six seven ate capped honey", "bars three for pollen", "bars three and for there's grubs".
func (l *lexicon) endsSeries(h *heard, text string, toks []token, i int, left besides) bool {
	v := l.numbers.of(h.said[0]).value
	if left.heard && (left.at == 0 || !l.barNouns.has(toks[left.at-1].id)) || left.ranges || !steps(left.value, v) {
		return false
	}
	if i+1 == len(toks) {
		return !left.direct && left.at > 0 && h.before.fits(l, &toks[left.at-1], false, false) // "honey on bars one and to"
	}
	next := &toks[i+1]
	if !left.direct {
		return next.pause > none || h.after.fits(l, next, false, false) || h.unended != nil && !h.unended.fits(l, next, false, false)
	}
	if !h.after.fits(l, next, false, false) {
		return false
	}
	first := l.beside(text, toks, left.at, -1)
	return first.known && steps(first.value, left.value) && first.value != v ||
		left.at > 0 && h.before.fits(l, &toks[left.at-1], false, false)
}

// beside is the number on one side of token i, the way that by goes: next to it or behind "and" or
// "to".
func (l *lexicon) beside(text string, toks []token, i, by int) (b besides) {
	k := i + by
	in := func(k int) bool { return k >= 0 && k < len(toks) && toks[max(k, k-by)].pause <= comma } // the pause of the second of two
	if !in(k) {
		return b
	}
	if kind := l.numbers.of(toks[k].id).kind; (kind == andWord || kind == toWord) && in(k+by) {
		if n := l.soundOf(text, &toks[k+by]); n.known {
			n.at, n.ranges = k+by, kind == toWord
			return n
		}
	}
	b = l.soundOf(text, &toks[k])
	b.at, b.direct = k, true
	return b
}

// soundOf is the number that a token is or sounds like.
func (l *lexicon) soundOf(text string, t *token) (b besides) {
	switch n := l.numbers.of(t.id); {
	case t.id == idNumber:
		return besides{value: figures(text[t.start:t.end]), known: true}
	case n.kind == unitWord:
		return besides{value: n.value, known: true}
	}
	v, ok := l.sounds[t.id]
	return besides{value: v, known: ok, heard: ok}
}
