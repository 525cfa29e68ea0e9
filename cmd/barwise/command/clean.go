package command

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Notes and file names are untrusted text: a control sequence in them could
// move the cursor, retitle the window or hide what was written. Whatever is
// printed of them goes through clean, and where much of it is printed a guard
// holds the line a second time.

// clean replaces what a terminal would act on by a visible mark, and leaves
// line breaks and tabs.
func clean(s string) string {
	if strings.IndexFunc(s, acts) < 0 && utf8.ValidString(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		if acts(r) {
			return '·'
		}
		return r
	}, strings.ToValidUTF8(s, "·"))
}

// oneLine is clean text with each run of white space as one blank.
func oneLine(s string) string { return strings.Join(strings.Fields(clean(s)), " ") }

// inline is clean text whose line breaks and tabs have become blanks.
func inline(s string) string {
	return strings.NewReplacer("\r\n", " ", "\n", " ", "\t", " ").Replace(clean(s))
}

// acts reports whether a terminal may act on the rune rather than show it:
// control characters, and the marks that reorder what is displayed.
func acts(r rune) bool {
	switch {
	case r == '\n' || r == '\t':
		return false
	case unicode.IsControl(r):
		return true
	}
	return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0x200e || r == 0x200f || r == 0x061c
}

// guard passes text on and takes out every control sequence but the colour
// changes that our own styles write. It works on whole writes: the commands
// print by the line.
type guard struct{ out io.Writer }

func (g guard) Write(p []byte) (int, error) {
	if bytes.IndexFunc(p, acts) < 0 && utf8.Valid(p) {
		return g.out.Write(p)
	}
	kept := make([]byte, 0, len(p))
	for i := 0; i < len(p); {
		if n := colourChange(p[i:]); n > 0 {
			kept = append(kept, p[i:i+n]...)
			i += n
			continue
		}
		r, size := utf8.DecodeRune(p[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			// A stray byte could make a control character with its neighbour
			// once what stands between them is gone.
			kept = append(kept, "·"...)
		case !acts(r):
			kept = append(kept, p[i:i+size]...)
		}
		i += size
	}
	if _, err := g.out.Write(kept); err != nil {
		return 0, err
	}
	return len(p), nil
}

// colourChange is the length of the "ESC [ digits m" that p opens with, or 0.
func colourChange(p []byte) int {
	if len(p) < 3 || p[0] != 0x1b || p[1] != '[' {
		return 0
	}
	for i := 2; i < len(p); i++ {
		switch c := p[i]; {
		case c == 'm':
			return i + 1
		case c != ';' && (c < '0' || c > '9'):
			return 0
		}
	}
	return 0
}

// escapeControls writes the control characters that encoding/json leaves bare
// as \u escapes: the JSON says the same, and a terminal shows it.
func escapeControls(json []byte) []byte {
	if bytes.IndexFunc(json, acts) < 0 {
		return json
	}
	var out bytes.Buffer
	for _, r := range string(json) {
		if acts(r) {
			fmt.Fprintf(&out, `\u%04x`, r)
			continue
		}
		out.WriteRune(r)
	}
	return out.Bytes()
}
