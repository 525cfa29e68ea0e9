package tui

import (
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"barwise/colony"
)

// page is a text broken into lines of a given width. It is made once for a
// text and width; what is highlighted is decided when lines are shown.
type page struct {
	lines [][]cell
	words []colony.Span // the words of the text, for the cursor
}

// layOut breaks the text at spaces, and words longer than a line wherever the
// line ends.
func layOut(text string, width int) page {
	width = max(width, 1)
	p := page{words: wordSpans(text)}
	var line, word []cell
	lineWidth, wordWidth := 0, 0
	endLine := func() {
		p.lines = append(p.lines, line)
		line, lineWidth = nil, 0
	}
	endWord := func() {
		if lineWidth+wordWidth > width && lineWidth > 0 {
			endLine()
		}
		for _, c := range word {
			if lineWidth+c.width > width {
				endLine()
			}
			line = append(line, c)
			lineWidth += c.width
		}
		word, wordWidth = word[:0], 0
	}
	for _, c := range cellsOf(text) {
		switch {
		case c.show == "\n":
			endWord()
			endLine()
		case c.show == " ":
			endWord()
			if lineWidth >= width { // a space at the edge needs no room
				c.width, c.show = 0, ""
			}
			line = append(line, c)
			lineWidth += c.width
		default:
			word = append(word, c)
			wordWidth += c.width
		}
	}
	endWord()
	if len(line) > 0 || len(p.lines) == 0 {
		endLine()
	}
	return p
}

// lineOf is the line on which the byte at the offset is shown.
func (p *page) lineOf(offset int) int {
	at := sort.Search(len(p.lines), func(i int) bool {
		line := p.lines[i]
		return len(line) > 0 && line[len(line)-1].span[1] > offset
	})
	return min(at, max(len(p.lines)-1, 0))
}

// wordAt is the index of the word at the offset, or the next one.
func (p *page) wordAt(offset int) int {
	at := sort.Search(len(p.words), func(i int) bool { return p.words[i][1] > offset })
	return min(at, max(len(p.words)-1, 0))
}

// wordSpans are the runs between white space.
func wordSpans(text string) []colony.Span {
	var spans []colony.Span
	start := -1
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		if unicode.IsSpace(r) {
			if start >= 0 {
				spans = append(spans, colony.Span{start, i})
			}
			start = -1
		} else if start < 0 {
			start = i
		}
		i += size
	}
	if start >= 0 {
		spans = append(spans, colony.Span{start, len(text)})
	}
	return spans
}

// paintLine joins the cells of a line, each in the style that ink picks for
// it; runs of one style are painted together.
func paintLine(line []cell, ink func(colony.Span) brush) string {
	var out, run strings.Builder
	var hand brush
	flush := func() {
		if run.Len() > 0 {
			out.WriteString(hand.paint(run.String()))
			run.Reset()
		}
	}
	for i, c := range line {
		if c.show == "" {
			continue
		}
		next := ink(c.span)
		if c.show == " " && i+1 < len(line) && next.id != 0 && ink(line[i+1].span).id != next.id {
			next = brush{} // the space after a highlighted word is plain
		}
		if next.id != hand.id {
			flush()
			hand = next
		}
		run.WriteString(c.show)
	}
	flush()
	return out.String()
}

func overlaps(spans []colony.Span, s colony.Span) bool {
	for _, e := range spans {
		if s[0] < e[1] && e[0] < s[1] {
			return true
		}
	}
	return false
}
