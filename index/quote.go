package index

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"barwise/colony"
)

const (
	maxQuotes  = 3   // of the words of a query, and of the leaves, in one hit
	quoteReach = 100 // bytes around the words, at most
)

func newQuoter(terms []Term) *quoter {
	w := &quoter{stems: map[string]int{}, words: len(terms)}
	for i, t := range terms {
		for _, stem := range t.Stems {
			w.stems[stem] = i
		}
	}
	return w
}

// match is a word of the note that the query asked for.
type match struct {
	span colony.Span
	word int // which of the query's words
}

// textQuotes quotes the stretches where the query's words stand: first the
// quote that has most of them, then those that have others.
func (w *quoter) textQuotes(text string, parts []colony.Span, ins *colony.Inspection) []Quote {
	type candidate struct {
		quote Quote
		words map[int]bool
	}
	var list []candidate
	for _, m := range w.matches(text, parts) {
		if n := len(list); n > 0 && m.span[1] <= list[n-1].quote.Span[1] {
			list[n-1].quote.mark(m.span)
			list[n-1].words[m.word] = true
			continue
		}
		q := quoteAround(text, m.span)
		q.Bar = barAt(ins, text, m.span)
		list = append(list, candidate{q, map[int]bool{m.word: true}})
	}
	var quotes []Quote
	said := map[int]bool{}
	for len(quotes) < maxQuotes {
		best, gain := -1, 0
		for i, c := range list {
			fresh := 0
			for word := range c.words {
				if !said[word] {
					fresh++
				}
			}
			if fresh > gain {
				best, gain = i, fresh
			}
		}
		if best < 0 {
			break
		}
		for word := range list[best].words {
			said[word] = true
		}
		quotes = append(quotes, list[best].quote)
	}
	return quotes
}

// english analyses a text as the index does.
var english = newMapping().AnalyzerNamed(noteAnalyzer)

// matches finds the words of the query in the text; in a large one not all of
// them, but each at least once.
func (w *quoter) matches(text string, parts []colony.Span) []match {
	var list []match
	missing := map[int]bool{}
	for i := range w.words {
		missing[i] = true
	}
	read := 0
	for _, part := range parts {
		for piece := range pieces(text, part) {
			if read > largeText && len(missing) == 0 {
				return list
			}
			read += piece[1] - piece[0]
			for _, token := range english.Analyze([]byte(text[piece[0]:piece[1]])) {
				if word, ok := w.stems[string(token.Term)]; ok {
					list = append(list, match{colony.Span{piece[0] + token.Start, piece[0] + token.End}, word})
					delete(missing, word)
				}
			}
		}
	}
	return list
}

// evidenceQuotes quotes the words that leaves rest on.
func evidenceQuotes(text string, ins *colony.Inspection, leaves []colony.Leaf) []Quote {
	var quotes []Quote
	for _, leaf := range leaves {
		for _, span := range evidenceOf(ins, leaf.Path) {
			if span[0] < 0 || span[0] >= span[1] || span[1] > len(text) {
				continue
			}
			bar := barOfLeaf(leaf.Path)
			same := func(q Quote) bool { return q.Bar == bar && q.Span[0] <= span[0] && span[1] <= q.Span[1] }
			if i := slices.IndexFunc(quotes, same); i >= 0 {
				quotes[i].mark(span)
				continue
			}
			if len(quotes) < maxQuotes {
				q := quoteAround(text, span)
				q.Bar = bar
				quotes = append(quotes, q)
			}
		}
	}
	return quotes
}

// mark adds words of the note to what the quote marks.
func (q *Quote) mark(span colony.Span) {
	inner := colony.Span{span[0] - q.Span[0], span[1] - q.Span[0]}
	if slices.Contains(q.Marks, inner) {
		return
	}
	q.Marks = append(q.Marks, inner)
	slices.SortFunc(q.Marks, func(a, b colony.Span) int { return cmp.Or(a[0]-b[0], a[1]-b[1]) })
}

// quoteAround takes the sentence that the span stands in, or as much of it as
// lies near.
func quoteAround(text string, span colony.Span) Quote {
	from, to := quoteStart(text, span[0]), quoteEnd(text, span[1])
	q := Quote{Text: text[from:to], Span: colony.Span{from, to}}
	q.mark(span)
	return q
}

const space = " \t\r\n"

func quoteStart(text string, at int) int {
	low := max(0, at-quoteReach)
	near := text[low:at]
	switch end := lastSentenceEnd(near); {
	case end >= 0:
		low += end
	case low > 0:
		if i := strings.IndexAny(near, space); i >= 0 {
			low += i
		}
	}
	for low < at && (strings.IndexByte(space, text[low]) >= 0 || !utf8.RuneStart(text[low])) {
		low++
	}
	return low
}

func quoteEnd(text string, at int) int {
	high := min(len(text), at+quoteReach)
	near := text[at:high]
	switch end := firstSentenceEnd(near); {
	case at > 0 && endsSentence(text, at-1):
		high = at
	case end >= 0:
		high = at + end
	case high < len(text):
		if i := strings.LastIndexAny(near, space); i >= 0 {
			high = at + i
		}
	}
	for high > at && strings.IndexByte(space, text[high-1]) >= 0 {
		high--
	}
	for high > at && high < len(text) && !utf8.RuneStart(text[high]) {
		high--
	}
	return high
}

// endsSentence reports whether a sentence ends with the byte at i: at a line's
// end, or at a full stop with space after it, which that in "3.5" is not.
func endsSentence(text string, i int) bool {
	switch text[i] {
	case '\n':
		return true
	case '.', '!', '?', ';':
		return i+1 == len(text) || strings.IndexByte(space, text[i+1]) >= 0
	}
	return false
}

func lastSentenceEnd(text string) int {
	for i := len(text) - 1; i >= 0; i-- {
		// A stop right before the words is not followed by space and part of them.
		if endsSentence(text, i) && (i+1 < len(text) || text[i] == '\n') {
			return i + 1
		}
	}
	return -1
}

func firstSentenceEnd(text string) int {
	for i := range len(text) {
		if endsSentence(text, i) {
			return i + 1
		}
	}
	return -1
}

// barAt is the bar that words of the note are about: that whose evidence they
// are part of, else that whose evidence stands last before them in the same
// sentence; 0 where there is none, or where the evidence is of several bars.
func barAt(ins *colony.Inspection, text string, at colony.Span) int {
	start := quoteStart(text, at[0])
	bar, nearest := 0, -1
	for _, g := range ins.Evidence {
		n := barSaid(ins, g.Path)
		if n == 0 {
			continue
		}
		for _, span := range g.Spans {
			switch {
			case span[0] < start || span[0] >= at[1] || span[0] < nearest:
			case span[0] > nearest:
				bar, nearest = n, span[0]
			case n != bar:
				bar = 0
			}
		}
	}
	return bar
}

// barSaid is the bar that a leaf is about: bars.4.eggs, or the 4 of queen.bar.
func barSaid(ins *colony.Inspection, path string) int {
	if strings.HasSuffix(path, ".bar") && path != "follower.bar" {
		value, _ := colony.Get(ins, path)
		n, _ := strconv.Atoi(value)
		return n
	}
	return barOfLeaf(path)
}
