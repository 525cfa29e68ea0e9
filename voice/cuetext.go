package voice

import (
	"html"
	"regexp"
	"strings"
)

var (
	// A tag of either format: letters, a slash or a time behind "<"; "2 < 3" is
	// no tag.
	tag = regexp.MustCompile(`<[A-Za-z/0-9][^>]*>`)
	// Position codes that SubRip took over from another format: {\an8}.
	braceCode = regexp.MustCompile(`\{\\[^}]*\}`)
	// What is no speech, as recognisers mark it: [BLANK_AUDIO], [ Silence ].
	soundMark = regexp.MustCompile(`\[[^\]]*\]|♪+`)
)

// cuePieces gives the words of a cue. A time inside the text (WebVTT timestamp
// tag) starts a new piece that lasts to the next one or to the cue's end.
func cuePieces(c cue) []piece {
	var out []piece
	p := piece{from: c.from, to: c.to, timed: c.timed}
	var text strings.Builder
	flush := func(until float64) {
		p.text = plainWords(text.String())
		p.to = until
		if p.text != "" {
			out = append(out, p)
		}
		text.Reset()
	}
	rest := braceCode.ReplaceAllString(c.text, "")
	for {
		loc := tag.FindStringIndex(rest)
		if loc == nil {
			break
		}
		text.WriteString(rest[:loc[0]])
		at, err := parseTime(rest[loc[0]+1 : loc[1]-1])
		if err == nil && c.timed && at > p.from && at <= c.to {
			flush(at)
			p.from = at
		}
		rest = rest[loc[1]:]
	}
	text.WriteString(rest)
	flush(c.to)
	return out
}

// plainWords decodes character references and drops what was not said: marks
// of silence or noise in square brackets, and a text that is one remark in
// round brackets.
func plainWords(s string) string {
	s = strings.TrimSpace(soundMark.ReplaceAllString(html.UnescapeString(s), " "))
	if strings.HasPrefix(s, "(") && strings.Index(s, ")") == len(s)-1 {
		return ""
	}
	return s
}
