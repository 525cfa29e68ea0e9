package command

import (
	"fmt"
	"slices"

	"barwise/colony"
	"barwise/parse"
)

// unclearBelow is the confidence of a heard word below which what rests on it is
// to be looked at. In trials the least of a phrase lay below it for nine in ten
// phrases that were not said, and for one in a hundred that were.
const unclearBelow = 0.5

// readNote parses a note and flags what rests on words that were heard
// unclearly. A phrase of which no word was clear is kept as a remark and read as
// nothing. Everything that reads a note for a keeper goes through it.
func readNote(parser *parse.Parser, note *colony.Note) []colony.Inspection {
	if note.Recording == nil {
		return parser.Parse(note) // nobody listened for us, so nothing is known of how clear it was
	}
	doubtful := doubtfulPhrases(note.Words)
	sure := *note
	sure.Text = blanked(note.Text, doubtful)
	read := parser.Parse(&sure)
	for i := range read {
		flagUnclear(&read[i], note.Words)
	}
	for _, p := range doubtful {
		if i := inspectionAt(read, p.span[0]); i >= 0 {
			read[i].Remarks = append(read[i].Remarks, fmt.Sprintf("%s (heard unclearly at %s)", note.Text[p.span[0]:p.span[1]], clock(p.from)))
		}
	}
	return read
}

// utterance is a run of words without a pause.
type utterance struct {
	span colony.Span
	from float64 // seconds
}

// Phrases end at a pause of this many seconds, shorter than the one that ends a
// line. A single unclear word is no phrase: its leaf is flagged.
const (
	phrasePause = 0.3
	phraseWords = 2
)

// doubtfulPhrases are the phrases of which no word was heard clearly.
func doubtfulPhrases(words []colony.TimedWord) []utterance {
	var out []utterance
	for i := 0; i < len(words); {
		from, clear := i, false
		for ; i == from || i < len(words) && words[i].From-words[i-1].To < phrasePause; i++ {
			clear = clear || !unclear(&words[i])
		}
		if !clear && i-from >= phraseWords {
			out = append(out, utterance{colony.Span{words[from].Span[0], words[i-1].Span[1]}, words[from].From})
		}
	}
	return out
}

// blanked is the text with the phrases made line breaks, so that everything else
// stays where it is and nothing is read across them.
func blanked(text string, phrases []utterance) string {
	b := []byte(text)
	for _, p := range phrases {
		for i := p.span[0]; i < p.span[1]; i++ {
			b[i] = '\n'
		}
	}
	return string(b)
}

// inspectionAt is the inspection that is spoken of at a place of the note: the
// last whose words begin before it, else the first; -1 where there is none.
func inspectionAt(read []colony.Inspection, at int) int {
	best, bestStart := min(0, len(read)-1), -1
	for i := range read {
		start := -1
		for _, g := range read[i].Evidence {
			for _, s := range g.Spans {
				if start < 0 || s[0] < start {
					start = s[0]
				}
			}
		}
		if start >= 0 && start <= at && start > bestStart {
			best, bestStart = i, start
		}
	}
	return best
}

// unclear reports whether a word was heard with a posterior that is too low.
func unclear(w *colony.TimedWord) bool { return w.Confidence > 0 && w.Confidence < unclearBelow }

// flagUnclear adds a check, with the seconds to listen to, for each leaf that
// rests on an unclear word and is not flagged already.
func flagUnclear(ins *colony.Inspection, words []colony.TimedWord) {
	for _, leaf := range colony.Leaves(ins) {
		if slices.ContainsFunc(ins.Check, func(c colony.Check) bool { return c.Path == leaf.Path }) {
			continue
		}
		for _, span := range ins.Evidence.Of(leaf.Path) {
			if w := leastClear(words, span); w != nil {
				ins.Check = append(ins.Check, colony.Check{Path: leaf.Path, Why: fmt.Sprintf("heard unclearly at %s", clock(w.From))})
				break
			}
		}
	}
}

// leastClear is the word within the span that was heard worst, if unclearly.
func leastClear(words []colony.TimedWord, span colony.Span) *colony.TimedWord {
	var worst *colony.TimedWord
	from, _ := slices.BinarySearchFunc(words, span[0], func(w colony.TimedWord, at int) int { return w.Span[1] - at - 1 })
	for i := from; i < len(words) && words[i].Span[0] < span[1]; i++ {
		w := &words[i]
		if unclear(w) && (worst == nil || w.Confidence < worst.Confidence) {
			worst = w
		}
	}
	return worst
}
