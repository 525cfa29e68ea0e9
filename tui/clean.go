package tui

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"barwise/colony"
)

// Escape sequences longer than these are taken for text that happens to
// follow an escape character: dropping it would hide what someone said.
const (
	longestControl = 64
	longestString  = 512
)

// cell is what one stretch of a text shows on the screen: a grapheme cluster,
// or nothing for what must not reach a terminal.
type cell struct {
	span  colony.Span // in the text as it was handed in
	show  string
	width int
}

// cellsOf takes a text apart into what may be shown. Escape sequences, control
// characters, marks that turn the direction of text and invisible format
// characters show nothing; a broken byte shows the replacement character; a
// line feed, a carriage return and the two together show as "\n" of no width.
// The spans cover the text without a gap.
func cellsOf(text string) []cell {
	cells := make([]cell, 0, len(text))
	for at := 0; at < len(text); {
		c := cellAt(text, at)
		cells = append(cells, c)
		at = c.span[1]
	}
	return cells
}

func cellAt(text string, at int) cell {
	rest := text[at:]
	to := func(n int) colony.Span { return colony.Span{at, at + n} }
	switch b := rest[0]; {
	case b >= 0x20 && b < 0x7f && (len(rest) == 1 || rest[1] < 0x80):
		return cell{to(1), rest[:1], 1}
	case b == 0x1b:
		return cell{span: to(escapeLen(rest))}
	case b == '\r' && strings.HasPrefix(rest, "\r\n"):
		return cell{span: to(2), show: "\n"}
	case b == '\r' || b == '\n':
		return cell{span: to(1), show: "\n"}
	case b == '\t':
		return cell{to(1), " ", 1}
	case b < 0x20 || b == 0x7f:
		return cell{span: to(1)}
	}
	r, size := utf8.DecodeRuneInString(rest)
	switch {
	case r == utf8.RuneError && size == 1:
		return cell{to(1), "\uFFFD", 1}
	case !showable(r):
		return cell{span: to(size)}
	}
	return clusterAt(rest, to)
}

// clusterAt takes the next grapheme cluster, without the parts of it that must
// not be shown.
func clusterAt(rest string, to func(int) colony.Span) cell {
	cluster, width := ansi.FirstGraphemeCluster(rest, ansi.GraphemeWidth)
	if cluster == "" {
		_, size := utf8.DecodeRuneInString(rest)
		cluster = rest[:size]
	}
	show := strings.Map(func(r rune) rune {
		if showable(r) || r == '\u200d' {
			return r
		}
		return -1
	}, strings.ToValidUTF8(cluster, "\uFFFD"))
	return cell{to(len(cluster)), show, min(width, 2)}
}

// showable reports whether the rune may reach a terminal: no control
// character, and no format character (direction marks, zero-width ones, tags).
func showable(r rune) bool {
	return !unicode.IsControl(r) && !unicode.Is(unicode.Cf, r) && r != '\u2028' && r != '\u2029'
}

// escapeLen is the length of the escape sequence that the text begins with, or
// 1, the escape character alone, where no whole sequence follows.
func escapeLen(text string) int {
	if len(text) < 2 {
		return 1
	}
	switch text[1] {
	case '[':
		for i := 2; i < min(len(text), longestControl); i++ {
			if text[i] >= 0x40 && text[i] <= 0x7e {
				return i + 1
			}
			if text[i] < 0x20 || text[i] > 0x7e {
				return 1
			}
		}
	case ']', 'P', 'X', '^', '_':
		for i := 2; i < min(len(text), longestString); i++ {
			if text[i] == 0x07 {
				return i + 1
			}
			if text[i] == 0x1b {
				if i+1 < len(text) && text[i+1] == '\\' {
					return i + 2
				}
				return 1
			}
			if text[i] == '\n' || text[i] == '\r' {
				return 1
			}
		}
	}
	return 1
}

// clean makes one line of a text that may be shown: names, reasons, values.
func clean(text string) string {
	if plainASCII(text) {
		return text
	}
	var b strings.Builder
	for _, c := range cellsOf(text) {
		if c.show == "\n" {
			b.WriteByte(' ')
			continue
		}
		b.WriteString(c.show)
	}
	return b.String()
}

// cleanLines makes a text that may be shown, its lines kept.
func cleanLines(text string) string {
	var b strings.Builder
	for _, c := range cellsOf(text) {
		b.WriteString(c.show)
	}
	return b.String()
}

func plainASCII(text string) bool {
	for i := range len(text) {
		if text[i] < 0x20 || text[i] > 0x7e {
			return false
		}
	}
	return true
}
