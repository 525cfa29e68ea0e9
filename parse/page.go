package parse

import "strings"

// longestLine is the number of bytes of a line that are read at a time; a
// longer line is cut at a space.
const longestLine = 1 << 14

// pageSize is the number of bytes that are cut into tokens at a time, give or
// take a line; the first page is searched for the names of the hives.
const pageSize = 1 << 16

// row is a line of the note, or a part of a long one, as tokens of its page.
type row struct {
	from, to int
	first    pause // before it
	under    under // the heading of its section, or its box
}

// read reads the whole note, page by page.
func (r *reader) read() {
	first := blank
	for at := 0; at < len(r.text); {
		top := at
		r.toks, r.rows, r.pageHives.sought, r.capitals.of = r.toks[:0], r.rows[:0], false, 0
		for at < min(top+pageSize, len(r.text)) {
			at, first = r.cutRow(at, first)
		}
		if top == 0 {
			r.front.take(r.toks, r.givenNames)
			r.hives = r.known.with(r.toldInSpeech(r.toks))
		}
		r.seekKnown(r.toks)
		if top == 0 {
			r.names = r.properNames(r.toks)
			r.addKnown()
			r.namedInTable()
			r.initials = initialsOf(r.names)
			r.manner.monthFirst = r.tellsMonthFirst(r.toks)
			r.manner.severalHives = r.front.words.has(r.hivesID) || r.front.words.has(r.coloniesID)
			r.manner.hivesByCount = r.tellsByCount(r.toks)
			combs := r.tellsCombsByNumber(r.toks)
			r.manner.barsBySign = combs || r.tellsBarsBySign(r.toks)
			r.manner.hivesByNumber = !combs && r.tellsByNumber(r.toks)
			r.manner.barsByOrder = r.tellsByOrder(r.toks)
			r.listing = r.manner.barsByOrder
			r.ones = r.calledOnes(r.toks)
		} else {
			r.addKnown()
		}
		r.sections()
		for i := 0; i < len(r.rows); {
			today := r.today
			r.lexRows(i)
			for k := range r.lexed {
				r.line(&r.lexed[k])
				if i = r.lexed[k].next; r.today != today {
					break // days were reckoned from another one
				}
			}
		}
	}
	r.weatherOfVisit()
	r.handOut()
	r.receive()
	r.nameLone()
	r.dropPassing()
	r.inOrderTold()
}

// manner is how a note names things, as its first page shows.
type manner struct {
	severalHives  bool // it speaks of hives, not of one
	hivesByNumber bool // of which it tells by numbers alone: "No. 4"
	hivesByCount  bool // or by numbers that head lines: "One. Nine bars in use."
	barsBySign    bool // it tells its bars by "number": "bar number one", then "number two"
	barsByOrder   bool // or by their order: "the second" may be a bar
	monthFirst    bool // it writes the month before the day: "5/16"
	shouted       bool // it is typed with the capitals locked
}

// front is what stands on the first page: most of what is sought there hangs on a few
// words.
type front struct {
	words wordSet
	lists listSet // in which they stand
	marks mark    // that some of them have
	given bool    // some are given names
}

// take makes ready for a page.
func (f *front) take(toks []token, givenNames wordSet) {
	in := f.words.in
	clear(in)
	lists, marks, given := listSet(0), mark(0), false
	for i := range toks {
		t := &toks[i]
		in[t.id] = true
		lists |= t.lists
		marks |= t.flags
		given = given || givenNames.has(t.id)
	}
	f.lists, f.marks, f.given = lists, marks, given
}

// onFront reports whether one of some words stands on the first page.
func (r *reader) onFront(words ...wordID) bool {
	for _, id := range words {
		if r.front.words.has(id) {
			return true
		}
	}
	return r.askAll
}

// lexedRow is a row as items.
type lexedRow struct {
	toks  []token // as they were meant
	items []item
	words listSet // in which they stand one by one
	said  lineWords
	met   gist  // of the items
	first pause // before it
	next  int   // the row behind it
	under under
}

// rowsAtOnce is the number of rows that are lexed, before they are read one by one:
// each of the two takes so much code that the processor's cache would have to be
// filled anew for it at every line. (Measured: more rows push one another's items
// out of the cache.)
const rowsAtOnce = 8

// lexRows lexes the next rows from row i on.
func (r *reader) lexRows(i int) {
	r.lexed, r.lexing, r.room = r.lexed[:0], r.lexing[:0], r.room[:0]
	for i < len(r.rows) && len(r.lexed) < rowsAtOnce {
		row := r.rows[i]
		if i++; i < len(r.rows) && r.asks(row, r.rows[i]) {
			row.to = r.rows[i].to
			i++
		}
		r.lexed = append(r.lexed, r.lexRow(row))
		r.lexed[len(r.lexed)-1].next = i
	}
}

// lexRow turns a row into items.
func (r *reader) lexRow(row row) lexedRow {
	toks := r.toks[row.from:row.to]
	r.addPauses(toks)
	r.partLabels(toks)
	words, said := r.wordsIn(toks)
	if mended := r.mend(r.text, toks, &r.room); &mended[0] != &toks[0] {
		lists, meant := r.wordsIn(mended)
		toks, words, said = mended, lists, said|meant
	}
	if r.askAll {
		markAll(toks)
	}
	from := len(r.lexing)
	r.lexing = r.lex.items(toks, r.lexing)
	items := r.lexing[from:len(r.lexing):len(r.lexing)]
	met := gistOf(items)
	if r.askAll {
		words, said, met = everything.lists, ^lineWords(0), everything
	}
	if met.kinds.has(kFill) {
		items = dropFillers(items)
	}
	if said&saysIt != 0 && met.kinds.has(kBe) {
		items = r.possessive(items)
	}
	return lexedRow{toks: toks, items: items, words: words, said: said, met: met, first: row.first, under: row.under}
}

// asks reports whether a row is a label alone, and makes the short row below it
// its answer: "temper" and below it "calm", "any eggs" and below it "none".
func (r *reader) asks(label, answer row) bool {
	last := r.toks[label.to-1]
	first := &r.toks[answer.from]
	if label.to-label.from > 3 || answer.to-answer.from > 4 || answer.first != line || !last.lists.has(labels) || last.has(asked|coloned) {
		return false
	}
	for _, t := range r.toks[label.from : label.to-1] {
		if !r.says(t, "any", "queen", "the") {
			return false
		}
	}
	best := r.lex.matcher.longest(r.toks[:answer.to], answer.from, nil)
	if !best.kinds.meet(answering) {
		return false
	}
	r.toks[label.to-1].flags |= coloned
	first.pause = colon
	return true
}

// answering are the kinds of words that answer a label.
var answering = setOf(kState, kTemper, kStored, kStrength, kNo, kNot, kYes)

// cutRow cuts the line at an offset into tokens, and returns where the next one
// begins and the pause before it.
func (r *reader) cutRow(at int, first pause) (int, pause) {
	end := strings.IndexByte(r.text[at:], '\n')
	next := at + end + 1
	if end < 0 {
		end, next = len(r.text)-at, len(r.text)
	}
	if end > longestLine {
		end = cutAt(r.text[at : at+longestLine])
		next = at + end
	}
	text := r.text[at : at+end]
	if strings.TrimSpace(text) == "" {
		return next, blank
	}
	if strings.IndexByte("-=_*~", text[0]) >= 0 && len(text) > 2 && strings.Trim(text, "-=_*~ \r") == "" {
		return next, first // a stroke under a heading, or between paragraphs
	}
	if to := r.tableRow(at, at+end, first); to > 0 {
		if to > at+end {
			return min(to+1, len(r.text)), line // a cell goes on over the lines below
		}
	} else if !r.formRow(at, at+end, first) {
		from := len(r.toks)
		says, box := boxed(text)
		switch {
		case text[0] == '#' || text[0] == '=' || framed(text):
			r.markedHeading(text, at, first)
		case box > 0:
			r.toks = r.split.tokens(r.toks, text[box:], at+box, first)
			r.toks[from].flags |= bullet
		default:
			r.toks = r.split.tokens(r.toks, text, at, first)
		}
		if len(r.toks) > from {
			r.rows = append(r.rows, row{from, len(r.toks), first, says})
		}
	}
	if next == at+end && next < len(r.text) {
		return next, none // a long line goes on
	}
	return next, line
}

// markedHeading cuts a line into tokens without the signs that mark it as a heading:
// "# Larch", "== Larch ==". "#4 eggs" tells of bar 4.
func (r *reader) markedHeading(text string, at int, first pause) {
	from := len(r.toks)
	inner := strings.TrimLeft(text, text[:1])
	name := strings.TrimLeft(inner, " ")
	if name == "" || len(name) == len(inner) || isDigit(name[0]) {
		r.toks = r.split.tokens(r.toks, text, at, first)
		return
	}
	at += len(text) - len(name)
	r.toks = r.split.tokens(r.toks, strings.TrimRight(name, "#=-*~ \r"), at, first)
	n := len(r.toks)
	if n == from || n > from+3 {
		return
	}
	for k := from; k < n; k++ {
		if !r.mayName(r.toks, k) {
			return
		}
	}
	r.toks[n-1].flags |= coloned // as behind the name of a hive
}

// framed reports whether a line is set off by signs on both sides: "-- Larch --".
func framed(text string) bool {
	const frames = "-*~"
	text = strings.TrimRight(text, " \r")
	n := len(text)
	return n > 6 && strings.IndexByte(frames, text[0]) >= 0 && text[1] == text[0] && text[n-1] == text[0] && text[n-2] == text[0]
}

// cutAt finds where a long line may be cut: behind its last space.
func cutAt(s string) int {
	if i := strings.LastIndexByte(s, ' '); i > 0 {
		return i + 1
	}
	end := len(s)
	for end > len(s)-4 && end > 1 && s[end-1]&0xC0 == 0x80 {
		end--
	}
	if end > 1 && s[end-1] >= 0xC0 {
		end--
	}
	return end
}
