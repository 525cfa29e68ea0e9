package voice

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// readCues reads the cues of a WebVTT or SubRip text in the order of their
// start. It follows the block rule of the WebVTT parser (W3C WebVTT, section
// 6.1 "WebVTT file parsing"): a block ends at an empty line or before the next
// line with an arrow; a block without an arrow (header, NOTE, STYLE, REGION) is
// no cue. SubRip fits the same rule. Times are read more leniently than either
// format writes them.
func readCues(src string) ([]piece, []fault) {
	lines := strings.Split(src, "\n")
	var cues []cue
	var faults []fault
	for i := 0; i < len(lines); i++ {
		if !strings.Contains(lines[i], "-->") {
			continue
		}
		c := cue{line: i + 1}
		from, to, err := parseTiming(lines[i])
		if err == nil {
			c.from, c.to, c.timed = from, to, true
		}
		end := i + 1
		for end < len(lines) && !isBlank(lines[end]) && !strings.Contains(lines[end], "-->") {
			end++
		}
		c.text = cueBody(lines[i+1:end], end < len(lines) && !isBlank(lines[end]))
		if err != nil {
			fate := "its words are kept without seconds"
			if isBlank(c.text) {
				fate = "the cue has no words"
			}
			faults = append(faults, fault{c.line, err.Error() + "; " + fate})
		}
		cues = append(cues, c)
		i = end - 1
	}
	if len(cues) == 0 {
		faults = append(faults, fault{1, "no cue: a line like 00:00:01.000 --> 00:00:04.000 is missing"})
	}
	return timedPieces(cues), faults
}

// cue is one cue as it stands in the file.
type cue struct {
	line     int // of its times, from 1
	from, to float64
	timed    bool
	text     string // lines joined by a space, markup still in it
}

// cueBody joins the lines of a cue. Where the next cue follows without an empty
// line, a last line that is only a number is that cue's index.
func cueBody(lines []string, nextFollows bool) string {
	if n := len(lines); nextFollows && n > 1 {
		if _, err := strconv.Atoi(strings.TrimSpace(lines[n-1])); err == nil {
			lines = lines[:n-1]
		}
	}
	return strings.Join(lines, " ")
}

// timedPieces orders the cues by start and strips their markup. A cue without
// times stays behind the one it follows in the file.
func timedPieces(cues []cue) []piece {
	at := 0.0
	starts := map[int]float64{}
	for _, c := range cues {
		if c.timed {
			at = c.from
		}
		starts[c.line] = at
	}
	slices.SortStableFunc(cues, func(a, b cue) int { return cmp.Compare(starts[a.line], starts[b.line]) })
	var out []piece
	for _, c := range cues {
		out = append(out, cuePieces(c)...)
	}
	return out
}

func isBlank(line string) bool { return strings.TrimSpace(line) == "" }

// parseTiming reads "start --> end", with whatever settings or coordinates
// follow. An end before the start is a cue of no length.
func parseTiming(line string) (from, to float64, err error) {
	left, right, _ := strings.Cut(line, "-->")
	if from, err = parseTime(strings.TrimSpace(left)); err != nil {
		return 0, 0, err
	}
	fields := strings.Fields(right)
	if len(fields) == 0 {
		return 0, 0, fmt.Errorf("the end time is missing")
	}
	if to, err = parseTime(fields[0]); err != nil {
		return 0, 0, err
	}
	return from, max(from, to), nil
}

// parseTime reads a cue time in seconds: hours optional and of any width up to
// four digits, minutes and seconds of one or two digits below 60, a comma or a
// dot before one to three digits of a second, or none.
func parseTime(s string) (float64, error) {
	bad := fmt.Errorf("%s is no time like 00:01:02.500", quoteShort(s))
	whole, frac, _ := strings.Cut(strings.Replace(s, ",", ".", 1), ".")
	parts := strings.Split(whole, ":")
	if len(parts) < 2 || len(parts) > 3 || len(frac) > 3 {
		return 0, bad
	}
	seconds := 0.0
	for i, p := range parts {
		n, ok := digits(p)
		hours := len(parts) == 3 && i == 0
		if !ok || len(p) > 4 || !hours && (len(p) > 2 || n > 59) {
			return 0, bad
		}
		seconds = seconds*60 + float64(n)
	}
	if frac != "" {
		n, ok := digits(frac)
		if !ok {
			return 0, bad
		}
		scale := map[int]float64{1: 10, 2: 100, 3: 1000}[len(frac)]
		seconds += float64(n) / scale
	}
	return seconds, nil
}

// digits reads a plain run of ASCII digits.
func digits(s string) (int, bool) {
	if s == "" || strings.Trim(s, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

// quoteShort quotes foreign text for a message, at most 40 bytes of it.
func quoteShort(s string) string {
	if len(s) > 40 {
		s = s[:40] + "…"
	}
	return strconv.Quote(strings.ToValidUTF8(s, ""))
}
