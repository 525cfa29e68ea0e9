package parse

import (
	"maps"
	"slices"
	"strings"
)

// Shorthand joins what is on a comb by strokes: "b3 E/L", "H/P", "Q/E/L/CB". Between
// such letters a stroke is "and".

// strokes are what stands for things on a comb beside a stroke, as the rule files have it.
// The phrases are read otherwise without them (yes), or the same (no).
type strokes struct {
	Letters map[string]string `toml:"letters"` // with the word for each
	Words   []string          `toml:"words"`   // of the rules themselves
	Not     []string          `toml:"not"`     // what means something else
	Yes     []string          `toml:"yes"`
	No      []string          `toml:"no"`

	codes []code // what the letters stand for where no legend says so
}

// makeCodes makes codes of the letters for strips of bars, "1 H | 2 P | 3 E L".
func (s *strokes) makeCodes() {
	for _, letter := range slices.Sorted(maps.Keys(s.Letters)) {
		word := s.Letters[letter]
		if word == "cb" || word == "sb" {
			word = "capped brood"
		}
		s.codes = append(s.codes, code{short: strings.ToUpper(letter), long: word})
	}
}

func (s *strokes) whole() bool {
	return len(s.Letters) > 0 && len(s.Words) > 0 && len(s.Yes) > 0 && len(s.No) > 0
}

// has reports whether letters stand for what is on a comb.
func (s *strokes) has(letters string) bool {
	return s.Letters[letters] != "" || slices.Contains(s.Words, letters)
}

// longestStrokes is the number of bytes in which what strokes join is looked for on either
// side of one.
const longestStrokes = 16

// strokesOf are the letters that strokes join around the one at an offset, with the
// offset of the stroke in them: "E/L/CB".
func (s *splitter) strokesOf(at int) (run string, stroke int) {
	from, to := at, at+1
	for from > 0 && at-from < longestStrokes && (isASCIILetter(s.text[from-1]) || s.text[from-1] == '/') {
		from--
	}
	for to < len(s.text) && to-at < longestStrokes && (isASCIILetter(s.text[to]) || s.text[to] == '/') {
		to++
	}
	if to < len(s.text) && isDigit(s.text[to]) || from > 0 && isDigit(s.text[from-1]) {
		return "", 0 // "b3/b4", "4E/L"
	}
	return strings.ToLower(s.text[from:to]), at - from
}

// joinContents reads the stroke at an offset, just passed, and the letters behind it where
// both it and the others of its run join what is on a comb: "E/L" is eggs and larvae.
func (s *splitter) joinContents(at int) bool {
	n := len(s.out)
	if s.spaced || n == s.head || s.before != none || !isASCIILetter(s.peek(0)) {
		return false
	}
	run, stroke := s.strokesOf(at)
	if run == "" || slices.Contains(s.strokes.Not, run) {
		return false
	}
	for i, part := range strings.Split(run, "/") {
		if !s.strokes.has(part) || i == 0 && (part == "c" || part == "s") {
			return false
		}
	}
	before := run[:stroke]
	before = before[strings.LastIndexByte(before, '/')+1:]
	behind, _, _ := strings.Cut(run[stroke+1:], "/")
	if word := s.strokes.Letters[before]; word != "" {
		s.out[n-1].id = s.words.find(word).id
		s.out[n-1].lists = 0
		s.out[n-1].flags |= respelt | cased | s.words.marks[s.out[n-1].id]
	}
	s.sign('&', at)
	word := s.strokes.Letters[behind]
	from := s.at
	s.at += len(behind)
	if word == "" {
		e := s.words.find(behind)
		s.emit(e.id, e.lists, from, s.at, cased)
	} else {
		s.emit(s.words.find(word).id, 0, from, s.at, respelt|cased)
	}
	return true
}
