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
// unclearly. Everything that reads a note for a keeper goes through it.
func readNote(parser *parse.Parser, note *colony.Note) []colony.Inspection {
	read := parser.Parse(note)
	if note.Recording == nil {
		return read // nobody listened for us, so nothing is known of how clear it was
	}
	for i := range read {
		flagUnclear(&read[i], note.Words)
	}
	return read
}

// flagUnclear adds a check, with the seconds to listen to, for each leaf that
// rests on an unclear word and is not flagged already.
func flagUnclear(ins *colony.Inspection, words []colony.TimedWord) {
	for _, leaf := range colony.Leaves(ins) {
		if slices.ContainsFunc(ins.Check, func(c colony.Check) bool { return c.Path == leaf.Path }) {
			continue
		}
		for _, span := range ins.Evidence[leaf.Path] {
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
		if w.Confidence > 0 && w.Confidence < unclearBelow && (worst == nil || w.Confidence < worst.Confidence) {
			worst = w
		}
	}
	return worst
}
