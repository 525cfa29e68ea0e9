package parse

import (
	"slices"
	"strings"
)

// lexer turns tokens into items: numbers, dates and the words of the rules,
// the longest match first.
type lexer struct {
	*lexicon
	matcher *matcher
	text    string // the whole note
	toks    []token
	ref     *reader

	// The number read last, since each slot and then figure ask for it anew.
	number    quantity
	numberEnd int
	numberOf  int // one above its token; 0 for none
}

func (l *lexer) quantityAt(i int) (quantity, int) {
	if l.numberOf != i+1 {
		l.number, l.numberEnd = l.numbers.read(l.text, l.toks, i)
		l.numberOf = i + 1
	}
	return l.number, l.numberEnd
}

func (l *lexer) durationAt(i int) (span, int) {
	q, j := l.quantityAt(i)
	return l.dates.length(l.toks, i, q, j)
}

func (l *lexer) measureAt(i int) (measure, int) {
	q, j := l.quantityAt(i)
	return l.measures.of(l.text, l.toks, i, q, j)
}

// items appends the items of the tokens to out.
func (l *lexer) items(toks []token, out []item) []item {
	l.toks, l.numberOf = toks, 0
	for i := 0; i < len(toks); {
		if len(out) == cap(out) {
			out = slices.Grow(out, 1)
		}
		out = out[:len(out)+1] // an item is filled in where it stands: it is too large to be handed about
		i = l.item(i, out)
	}
	return out
}

// beforeItem is what stands right before the item at token i, the last of some, and what
// it tells may be of; an item of no kind behind a pause.
func (l *lexer) beforeItem(i int, items []item) *item {
	n := len(items) - 1
	if n == 0 || l.toks[i].pause > none {
		return &noItem
	}
	if before := &items[n-1]; !before.is(kBe) || n == 1 || before.pause > none {
		return before
	}
	return &items[n-2] // "the floor's closed"
}

// item fills in the last of some items, which begins at token i, and returns the index
// behind it.
func (l *lexer) item(i int, items []item) int {
	it := &items[len(items)-1]
	*it = item{}
	it.says, it.details = senseless, &noDetails
	best := l.matcher.longest(l.toks, i, l)
	if best.end > i+1 {
		best = l.shortened(best, i, l.beforeItem(i, items))
	}
	end := best.end
	if end > i {
		it.says, it.kinds = best.sense, best.kinds
		if with := best.with; with != nil {
			it.n = with.n
			it.details = l.detail(&details{dur: with.dur, size: with.size})
		}
	}
	if first := &l.toks[i]; first.has(numeral) || first.has(leading) && i+1 < len(l.toks) && l.dates.mayLead(first, &l.toks[i+1]) {
		end = l.numeric(it, i, end)
	}
	if end == i {
		it.kinds.add(kWord)
		end = i + 1
	}
	l.place(it, i, end)
	return end
}

// shortened is a way of saying of several words from token i on, or a shorter one where
// its end belongs to what follows, or its beginning to what stands before it.
func (l *lexer) shortened(best match, i int, before *item) match {
	if t := &l.toks[i]; t.has(coloned) && t.end-t.start == 1 || l.endsName(i) {
		best = l.matcher.longest(l.toks[:i+1], i, l) // "Hive A: sugar roll" and "South hive is light" name it first
	}
	bitOf := best.kinds.has(kComb) && best.end > i+2 && l.numbers.is(l.toks, best.end-2, ofWord) // "two is a bit of comb three honey"
	if end := best.end; end > i+2 && !bitOf && l.numbersBars(end-1) {
		best = l.matcher.longest(l.toks[:end-1], i, l) // "honey on three bars nine and ten …"
	}
	if best.end == i+2 && best.kinds.has(kComb) && before.any(kSide, kPlace) && l.numbers.is(l.toks, i, ofWord) && l.combNumbered(i+1) {
		best = l.matcher.longest(l.toks[:i+1], i, l) // "on both sides of comb 7"
	}
	if best.end == i+2 && best.kinds.has(kPlace) && l.topBar(i, before) {
		best = l.matcher.longest(l.toks[:i+1], i, l) // "eggs on top bar 3"
	}
	if best.end > i+2 && best.kinds.meet(places) && (l.toks[i].pause >= comma || before.any(kAnd, kBut)) && l.hiveStands(best.end) {
		best = l.matcher.longest(l.toks[:i+1], i, l) // "in the bottom hive eggs on bar 3"
	}
	if alone := l.stateOf(before, i, best); alone.end > i {
		return alone
	}
	return best
}

// stateOf is the word at token i alone, where it tells how what stands before it is and a
// longer way of saying would take it for something found: "floor closed honey on nine".
func (l *lexer) stateOf(before *item, i int, best match) match {
	tells := best.end > i+1 && before.any3(kFixture, kBrood, kStores) && best.kinds.meet(foundOrSeen)
	if !tells || best.kinds.meet(setOf(kState, kPattern, kStored)) {
		return match{}
	}
	alone := l.matcher.longest(l.toks[:i+1], i, l)
	if before.is(kFixture) && !strings.HasPrefix(before.text, "the ") && alone.kinds.has(kState) || before.is(kBrood) && alone.kinds.has(kPattern) || before.is(kStores) && alone.kinds.has(kStored) {
		return alone
	}
	return match{}
}

// foundOrSeen are the kinds of longer ways of saying that such a word can begin.
var foundOrSeen = setOf(kContent, kComb, kColour, kLeaf)

// numeric makes a figure of the item of the tokens from i to end, if a longer one
// begins at i, or one as long that is what the words mean. It returns the index
// behind it.
func (l *lexer) numeric(it *item, i, end int) int {
	if n, ok := l.loneNumber(i); ok && end <= i+1 && !it.any3(kColour, kSeen, kNo) { // as most are
		it.says, it.kinds, it.n, it.details = senseless, numberKinds(n), n, &noDetails
		return i + 1
	}
	var alt figure
	j := l.figure(i, &alt)
	switch {
	case j < end || j == i || j == end && it.any(kColour, kSeen):
		return end
	case j == end && it.is(kNo) && alt.kind != kDate && alt.n.lo == 0: // "zero eggs" denies and counts
		it.n = alt.n
		it.kinds.add(kNum)
		return end
	}
	it.says, it.kinds = senseless, alt.kinds()
	it.n, it.details = alt.n, &noDetails
	if alt.kind != kNum {
		it.details = l.detail(&details{dur: alt.dur, size: alt.size, day: alt.day})
	}
	return j
}

// places are the kinds of words for a place on a comb, by which a hive may be told as well.
var places = setOf(kPlace, kSide, kFixture)

// hiveStands reports whether the word for a hive, or "one" where the note calls its hives so, stands at
// token i, behind the place that it is told by: "in the bottom hive", not "at the bottom hive 3 eggs".
func (l *lexer) hiveStands(i int) bool {
	if !joined(l.toks, i) {
		return false
	}
	switch l.toks[i].id {
	case l.hiveID, l.colonyID:
		return i+1 == len(l.toks) || !l.toks[i+1].has(numeral)
	case l.oneID:
		return len(l.ref.ones) > 0
	}
	return false
}

// combNumbered reports whether token i is a word for bars with a number of its own.
func (l *lexer) combNumbered(i int) bool {
	if !l.numbers.barWords.has(l.toks[i].id) || !joined(l.toks, i+1) {
		return false
	}
	_, end := l.quantityAt(i + 1)
	return end > i+1 && (end == len(l.toks) || l.measures.unit(l.toks, end) == "")
}

// seenOn are the kinds of words behind which "on top" tells where the queen is, not where on
// the comb something is.
var seenOn = setOf(kBe, kSeen, kQueen, kShe)

// topBar reports whether "on top" at token i, and the number of a bar behind it, speak of a
// top bar by that number: it begins what is told, tells where the queen was, or ends the
// phrase. Not in "honey on top bar five eggs".
func (l *lexer) topBar(i int, before *item) bool {
	if l.toks[i+1].id != l.numbers.topID || !joined(l.toks, i+1) || !joined(l.toks, i+2) || !l.combNumbered(i+2) {
		return false
	}
	_, end := l.quantityAt(i + 3)
	return l.toks[i].pause >= comma || before.anyOf(seenOn) || end == len(l.toks) || l.toks[end].pause >= comma || l.numbers.is(l.toks, end, andWord)
}

// numbersBars reports whether token i is a word for bars and their number follows, which
// counts nothing itself: not in "bees on nine bars two queen cups".
func (l *lexer) numbersBars(i int) bool {
	if counts := &l.toks[i-1]; (counts.id == idNumber || l.numbers.of(counts.id).kind == unitWord) && joined(l.toks, i+2) && l.numbers.endsAt(l.toks, i+2) {
		return false
	}
	if !l.numbers.barWords.has(l.toks[i].id) || !joined(l.toks, i+1) || !l.toks[i+1].has(numeral) {
		return false
	}
	return l.numbers.of(l.toks[i+1].id).kind == unitWord || l.toks[i+1].id == idNumber && !l.numbers.endsAt(l.toks, i+2) // "on 3 bars 9 and 10"
}

// detail keeps the details of an item.
func (l *lexer) detail(d *details) *details {
	place := &l.ref.detailed.take(1)[0]
	*place = *d
	return place
}

// figure is a date, a measure, a duration or a number.
type figure struct {
	kind kind
	n    quantity
	dur  span
	size measure
	day  day
}

func numberKinds(n quantity) kinds {
	if n.article {
		return two(kNum, kArt)
	}
	return setOf(kNum)
}

// loneNumber reads a number of a single token that nothing goes on with.
func (l *lexer) loneNumber(i int) (quantity, bool) {
	if i+1 < len(l.toks) && (l.toks[i+1].has(dating) || l.measures.unit(l.toks, i+1) != "") || l.dates.of(l.toks[i].id).kind != notDate {
		return quantity{}, false
	}
	return l.numbers.plain(l.text, &l.toks[i])
}

// endsName reports whether token i is the word hive behind a name of its own.
func (l *lexer) endsName(i int) bool {
	if t := l.toks[i]; t.id != l.hiveID && t.id != l.colonyID || i == 0 || t.pause > none {
		return false
	}
	name := l.toks[i-1]
	if name.lists.has(noNames) || name.lists&anyTitle != 0 || name.id == l.theID {
		return false
	}
	return name.has(capital) || i > 1 && l.toks[i-2].id == l.theID && l.ref.wordNames(name)
}

// figure reads a date, a measure, a duration or a number into out, and returns the
// index behind it.
func (l *lexer) figure(i int, out *figure) (j int) {
	if out.day, j = l.dayAndMonth(i); j > i {
		out.kind = kDate
		return j
	}
	q, end := l.quantityAt(i)
	if end > i && l.plainNumber(i, end) {
		out.kind, out.n = kNum, q
		return end
	}
	if l.dates.mayBegin(l.toks, i, end) {
		if out.day, j = l.dates.readWith(l.text, l.toks, i, q, end, l.ref.today); j > i {
			out.kind = kDate
			return j
		}
	}
	if out.day, out.n, j = l.dayOfMonth(i); j > i {
		out.kind = kDate
		return j
	}
	if m, j := l.measures.of(l.text, l.toks, i, q, end); j > i && !l.queenCups(m, i, j) {
		out.kind, out.size = kMeasure, m
		return j
	}
	if out.dur, j = l.dates.length(l.toks, i, q, end); j > i {
		out.kind = kDur
		return j
	}
	out.kind, out.n = kNum, q
	return max(end, i)
}

// plainNumber reports whether the number that ends before token end can be
// nothing more: no unit, length of time, month or the like follows, and no day
// begins with it.
func (l *lexer) plainNumber(i, end int) bool {
	if first := l.toks[i]; first.id == idISODate || first.id == idSlashDate || l.dates.of(first.id).kind != notDate {
		return false
	}
	if end >= len(l.toks) || l.toks[end].pause > comma {
		return true
	}
	next := l.toks[end]
	if next.id < firstWordID {
		return next.id == idUnknown
	}
	if l.mayVerb(end) {
		return true
	}
	k := l.numbers.of(next.id).kind
	return l.dates.of(next.id).kind == notDate && next.id != l.measures.moreID && l.measures.unit(l.toks, end) == "" && k != ofWord && k != articleWord && k != andWord
}

// mayVerb reports whether "may" at token k is the verb and no month: "bar 6 may have eggs".
func (l *lexer) mayVerb(k int) bool {
	if k+1 >= len(l.toks) || l.toks[k+1].pause > none || l.text[l.toks[k].start:l.toks[k].end] != "may" {
		return false
	}
	switch l.text[l.toks[k+1].start:l.toks[k+1].end] {
	case "have", "be", "hold", "contain", "need", "still", "well", "yet", "also":
		return true
	}
	return false
}

// queenCups: "two cups" without "of" are queen cups, not a measure, but in "2 cups syrup" and
// "fed 2 cups".
func (l *lexer) queenCups(m measure, i, j int) bool {
	if m.unit != "cup" || !m.amount.whole() || l.numbers.is(l.toks, j, ofWord) || i > 0 && joined(l.toks, i) && l.datedDeeds.has(l.toks[i-1].id) {
		return false
	}
	return !joined(l.toks, j) || !l.matcher.longest(l.toks, j, nil).kinds.has(kSubstance)
}

// dayOfMonth reads "the 3rd" behind "on", "by" or "since", where no noun
// follows that it could count.
func (l *lexer) dayOfMonth(i int) (d day, nth quantity, j int) {
	if i == 0 {
		return day{}, quantity{}, i
	}
	planned := l.toks[i-1].id == l.forID // "planned for the twentieth", not "for the first time"
	if !planned && !l.dates.is(l.toks, i-1, onWord) && !l.dates.deadlines.has(l.toks[i-1].id) && !l.nearDays.has(l.toks[i-1].id) {
		return day{}, quantity{}, i
	}
	d, nth, j = l.dates.dayOfMonth(l.text, l.toks, i, l.ref.today)
	if planned && joined(l.toks, j) {
		return day{}, quantity{}, i
	}
	if j > i && joined(l.toks, j) {
		next := l.matcher.longest(l.toks, j, l)
		for _, n := range next.rules {
			if l.rules[n].Kind == kBar || l.rules[n].Kind == kSide {
				return day{}, quantity{}, i
			}
		}
		if next.end == j {
			return day{}, quantity{}, i
		}
	}
	return d, nth, j
}

// place says where the item of the tokens from i to end stands, and what its words
// are.
func (l *lexer) place(it *item, i, end int) {
	first := &l.toks[i]
	it.from, it.to = uint16(i), uint16(end)
	it.start, it.pause = first.start, first.pause
	if end == i+1 && first.flags&^(wordMarks|glued) == 0 { // as most words are
		it.end, it.lists = first.end, first.lists
		it.text = l.text[first.start:first.end]
	} else {
		l.read(it, i, end)
	}
	if it.is(kBar) {
		it.plural = it.end > 0 && l.text[it.end-1]|0x20 == 's' // a column's heading may stand before the whole note
	}
}

// read takes over the marks of an item's tokens, and spells it in lower case.
func (l *lexer) read(it *item, i, end int) {
	first, last := &l.toks[i], &l.toks[end-1]
	it.end = last.end
	it.asked, it.colon = last.has(asked), last.has(coloned)
	marks := first.flags
	for k := i + 1; k < end; k++ {
		marks |= l.toks[k].flags
	}
	it.marks = first.flags&(capital|bullet) | marks&(misheard|misspelt)
	it.text = l.text[it.start:it.end]
	switch {
	case marks&respelt != 0:
		it.text = l.spelt(l.toks[i:end])
	case marks&cased != 0 && end == i+1:
		it.text = l.lowerAs(l.words.words[first.id], it.text)
	case marks&cased != 0:
		it.text = l.ref.strings.lower(it.text)
	}
	switch known := marks&(misheard|respelt|digits) == 0; {
	case known && end == i+1:
		it.lists = first.lists // looked up with the word
	case !known || first.lists.has(phrases):
		it.lists = l.words.find(it.text).lists
	}
}

// lowerAs is text in lower case: word itself, which is, where only the case of
// letters tells them apart, since most capitals begin a known word.
func (l *lexer) lowerAs(word, text string) string {
	if len(word) != len(text) {
		return l.ref.strings.lower(text)
	}
	for k := range len(text) {
		c := text[k]
		if c >= 'A' && c <= 'Z' {
			c |= 0x20
		}
		if c != word[k] {
			return l.ref.strings.lower(text)
		}
	}
	return word
}

// spelt is what tokens say once they are mended.
func (l *lexicon) spelt(toks []token) string {
	words := make([]string, len(toks))
	for k, t := range toks {
		words[k] = l.words.words[t.id]
	}
	return strings.Join(words, " ")
}
