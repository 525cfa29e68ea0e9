package parse

import (
	"strings"
	"unicode/utf8"
)

// interned keeps one copy of strings that are made over and over, such as paths
// and "bar 4" of "Bar 4": most notes say the same things of the same bars, and a
// new string each time is work for the collector of garbage.
type interned struct {
	known   map[string]string
	scratch []byte
}

// mostInterned is the number of strings above which all are forgotten.
const mostInterned = 1 << 13

// lower is text in lower case.
func (n *interned) lower(text string) string {
	if isLower(text) {
		return text
	}
	n.scratch = lowerCase(n.scratch, text)
	return n.kept()
}

// isLower reports whether text is ASCII without capitals, as most words are.
func isLower(text string) bool {
	for i := range len(text) {
		if c := text[i]; c >= utf8.RuneSelf || 'A' <= c && c <= 'Z' {
			return false
		}
	}
	return true
}

func (n *interned) kept() string {
	if s, ok := n.known[string(n.scratch)]; ok {
		return s
	}
	if n.known == nil || len(n.known) >= mostInterned {
		n.known = map[string]string{}
	}
	s := string(n.scratch)
	n.known[s] = s
	return s
}

// lowerCase writes text in lower case to out[:0].
func lowerCase(out []byte, text string) []byte {
	out = out[:0]
	for i := range len(text) {
		c := text[i]
		if c >= utf8.RuneSelf {
			return append(out[:0], strings.ToLower(text)...)
		}
		if l := lowered[c]; l != 0 {
			c = l
		}
		out = append(out, c)
	}
	return out
}
