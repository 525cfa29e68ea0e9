package parse

import (
	"slices"
	"strings"
)

// A note that is typed with the capitals locked tells no name from a word by them. It is
// read as it would be written otherwise: with capitals where sentences begin, and where only
// they tell what a word is.

// fewestCapitals is the number of letters below which a note in capitals may be shorthand:
// "QNS, BIAS B4-6".
const fewestCapitals = 24

// shouted reports whether a note has hardly a small letter.
func shouted(note string) bool {
	capitals, small := 0, 0
	for i := range len(note) {
		switch c := note[i]; {
		case c >= 'a' && c <= 'z':
			if small++; small > 2+capitals/32 {
				return false // as most are after a few letters
			}
		case c >= 'A' && c <= 'Z':
			capitals++
		}
	}
	return capitals >= fewestCapitals
}

// unshout takes the capitals of a note that has hardly anything else.
func (r *reader) unshout(t *tidied) {
	if r.manner.shouted = shouted(t.text); !r.manner.shouted {
		return
	}
	out := []byte(t.text)
	begins, last := true, "" // the word before, nothing but spaces behind it
	for at := 0; at < len(out); {
		if c := out[at]; !isASCIILetter(c) {
			begins = (begins || r.endsSentence(t.text, at, last)) && !isDigit(c)
			if c != ' ' {
				last = ""
			}
			at++
			continue
		}
		end := at
		for end < len(out) && (isASCIILetter(out[end]) || out[end] == '\'') {
			end++
		}
		word := strings.ToLower(t.text[at:end])
		if end == at+1 || begins && !r.isSlip(word) || slices.Contains(r.wordsOf[namedBehind], last) || slices.Contains(r.wordsOf[cappedDays], word) {
			at++ // keeps its capital
		}
		copy(out[at:end], word[len(word)-(end-at):])
		begins, last, at = false, word, end
	}
	t.text = string(out)
	if t.shifts == nil {
		t.shifts = []shift{{}}
	}
}

// endsSentence reports whether a sentence ends at an offset, right behind a word: not with
// the stop of one that is cut short.
func (r *reader) endsSentence(text string, at int, last string) bool {
	switch text[at] {
	case '\n':
		return true
	case '.', '!', '?':
		spaced := at+1 < len(text) && (text[at+1] == ' ' || text[at+1] == '\n')
		return spaced && !(text[at] == '.' && r.words.find(last).lists.has(shortForms))
	}
	return false
}

// isSlip reports whether a word is a slip of the finger, and so no name.
func (r *reader) isSlip(word string) bool {
	return r.words.find(word).id == idUnknown && r.slips.find(word) != idUnknown
}
