package voice

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"barwise/colony"
)

// Pause is the silence between two words, in seconds, from which the text
// breaks the line. Common practice with no source: within a phrase pauses stay
// well under it, and a keeper who turns to the next bar takes longer.
const Pause = 1.0

// piece is a stretch of words with the seconds they were said in.
type piece struct {
	text       string
	from, to   float64 // seconds; both zero where timed is false
	timed      bool
	confidence float64 // of each word, 0 where none was given
}

// join writes the pieces as one text and gives each word of a timed piece its
// span and seconds. The seconds of a piece are spread over its words by their
// length in letters.
func join(pieces []piece) (string, []colony.TimedWord) {
	var b strings.Builder
	var words []colony.TimedWord
	last := 0.0    // end of the latest timed piece
	known := false // whether last means anything
	for _, p := range pieces {
		fields := strings.Fields(cleanText(p.text))
		if len(fields) == 0 {
			continue
		}
		sep := " "
		if known && p.timed && p.from-last >= Pause {
			sep = "\n"
		}
		if p.timed {
			last, known = max(p.to, last), true
		}
		times := spread(fields, p.from, p.to)
		for i, f := range fields {
			if b.Len() > 0 {
				b.WriteString(sep)
			}
			sep = " "
			start := b.Len()
			b.WriteString(f)
			if p.timed {
				words = append(words, colony.TimedWord{
					Span: colony.Span{start, b.Len()},
					From: times[i], To: times[i+1],
					Confidence: p.confidence,
				})
			}
		}
	}
	return b.String(), words
}

// spread gives the len(words)+1 bounds of words said one after the other
// between two times, each as long as its letters are many.
func spread(words []string, from, to float64) []float64 {
	total := 0
	for _, w := range words {
		total += utf8.RuneCountInString(w)
	}
	bounds := make([]float64, 0, len(words)+1)
	done := 0
	for _, w := range words {
		bounds = append(bounds, from+(to-from)*float64(done)/float64(total))
		done += utf8.RuneCountInString(w)
	}
	return append(bounds, to)
}

// escapes are the sequences that would steer a terminal.
var escapes = regexp.MustCompile(`\x1b\[[0-?]*[ -/]*[@-~]`)

// cleanText makes spaces of escape sequences and control characters and drops
// invisible format characters (marks of direction, soft hyphens, byte order
// marks): they carry no word, and a text that was said has no business steering
// a terminal.
func cleanText(s string) string {
	s = escapes.ReplaceAllString(s, " ")
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsControl(r), unicode.Is(unicode.Zl, r), unicode.Is(unicode.Zp, r):
			return ' '
		case unicode.Is(unicode.Cf, r):
			return -1
		}
		return r
	}, s)
}
