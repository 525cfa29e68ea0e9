package voice

import (
	"encoding/json"
	"errors"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// The names under which recognisers keep the same things. Lists are tried in
// this order, so that phrases with their words win over a bare list of words
// beside them, which has lost the punctuation.
var (
	listKeys  = []string{"segments", "transcription", "utterances", "results", "result", "channels", "alternatives", "words", "w", "tokens"}
	textKeys  = []string{"punctuated_word", "word", "text", "t", "transcript"}
	startKeys = []string{"start", "b", "start_time", "startTime", "begin"}
	endKeys   = []string{"end", "end_time", "endTime"}
	lenKeys   = []string{"d", "duration"}
	sureKeys  = []string{"conf", "confidence", "probability", "p"}
)

// firstOnly are lists of which the rest are second guesses or copies.
var firstOnly = map[string]bool{"alternatives": true, "channels": true}

// readTimedJSON reads timed words from JSON: one value, several one after the
// other, or one a line. It knows phrases with words or word pieces (segments,
// transcription), lists of results with words, PocketSphinx 5 (b, d, p, t, w)
// and plain lists of words. Times are seconds, as numbers or as "1.5s", or
// milliseconds under "offsets".
func readTimedJSON(src string) ([]piece, []fault) {
	var out []piece
	dec := json.NewDecoder(strings.NewReader(src))
	for {
		start := int(dec.InputOffset())
		start = len(src) - len(strings.TrimLeft(src[start:], " \t\n"))
		var v any
		err := dec.Decode(&v)
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			what := "the JSON that begins here breaks off or is damaged: " + err.Error()
			if len(out) > 0 {
				what += "; what stands before it is kept"
			}
			return out, []fault{{1 + strings.Count(src[:start], "\n"), what}}
		}
		out = append(out, timedIn(v)...)
	}
}

// timedIn gives the words below a JSON value.
func timedIn(v any) []piece {
	switch v := v.(type) {
	case []any:
		return timedList(v)
	case map[string]any:
		for _, key := range listKeys {
			child := v[key]
			if list, ok := child.([]any); ok && firstOnly[key] && len(list) > 1 {
				child = list[:1]
			}
			switch child.(type) {
			case []any, map[string]any:
				if below := timedIn(child); len(below) > 0 {
					return below
				}
			}
		}
		if p, ok := timedLeaf(v); ok {
			return []piece{p}
		}
	}
	return nil
}

// timedList gives the words below a list. Where its texts carry their spaces in
// front, a text without one continues the word before it: recognisers that
// work in pieces of words write them so.
func timedList(list []any) []piece {
	spaced := false
	for _, v := range list {
		if m, ok := v.(map[string]any); ok {
			text, _ := firstString(m, textKeys)
			spaced = spaced || strings.HasPrefix(text, " ")
		}
	}
	var out []piece
	for _, v := range list {
		found := timedIn(v)
		m, _ := v.(map[string]any)
		text, _ := firstString(m, textKeys)
		glue := spaced && len(found) == 1 && len(out) > 0 && !strings.HasPrefix(text, " ")
		if !glue {
			out = append(out, found...)
			continue
		}
		last := &out[len(out)-1]
		last.text += found[0].text
		last.to = max(last.to, found[0].to)
		if c := found[0].confidence; c > 0 {
			last.confidence = min(last.confidence, c)
		}
	}
	return out
}

// markers are what recognisers write between words: sentence ends, silence,
// noise, special pieces.
var markers = regexp.MustCompile(`^(<[^>]*>|\[[^\]]*\]|\+\+[^+]*\+\+)$`)

// variant is the number of a pronunciation behind a word: and(2).
var variant = regexp.MustCompile(`\(\d+\)$`)

// timedLeaf reads one word or phrase.
func timedLeaf(m map[string]any) (piece, bool) {
	text, ok := firstString(m, textKeys)
	trimmed := strings.TrimSpace(text)
	if !ok || trimmed == "" || markers.MatchString(trimmed) {
		return piece{}, false
	}
	p := piece{text: variant.ReplaceAllString(soundMark.ReplaceAllString(text, " "), "")}
	if offsets, ok := m["offsets"].(map[string]any); ok {
		from, okFrom := number(offsets["from"])
		to, okTo := number(offsets["to"])
		p.from, p.to, p.timed = from/1000, to/1000, okFrom && okTo
	} else if from, ok := firstNumber(m, startKeys); ok {
		to, okTo := firstNumber(m, endKeys)
		if length, ok := firstNumber(m, lenKeys); ok && !okTo {
			to = from + length
		}
		p.from, p.to, p.timed = from, to, true
	}
	p.from = max(p.from, 0)
	p.to = max(p.to, p.from)
	if c, ok := firstNumber(m, sureKeys); ok {
		p.confidence = min(max(c, 0), 1) // some posteriors reach 1.0001
	}
	return p, true
}

func firstString(m map[string]any, keys []string) (string, bool) {
	for _, k := range keys {
		if s, ok := m[k].(string); ok {
			return s, true
		}
	}
	return "", false
}

func firstNumber(m map[string]any, keys []string) (float64, bool) {
	for _, k := range keys {
		if n, ok := number(m[k]); ok {
			return n, true
		}
	}
	return 0, false
}

// number reads 1.5, "1.5" and "1.5s".
func number(v any) (float64, bool) {
	switch v := v.(type) {
	case float64:
		return v, v < 1e9
	case string:
		n, err := strconv.ParseFloat(strings.TrimSuffix(v, "s"), 64)
		return n, err == nil && n < 1e9
	}
	return 0, false
}
