package main

import (
	"strconv"
	"strings"

	"barwise/colony"
	"barwise/parse"
)

// leafCount counts the leaves that were right, made up, and missed; a wrong
// value is both of the latter.
type leafCount struct{ right, madeUp, missed int }

func (c leafCount) precision() float64 { return float64(c.right) / float64(max(1, c.right+c.madeUp)) }
func (c leafCount) recall() float64    { return float64(c.right) / float64(max(1, c.right+c.missed)) }

// f1 is the harmonic mean of precision and recall.
func (c leafCount) f1() float64 {
	return 2 * float64(c.right) / float64(max(1, 2*c.right+c.madeUp+c.missed))
}

// score reads a text as the program does and compares its leaves with the
// note's answer.
func (c *leafCount) score(p *parse.Parser, n note, text string) {
	got := p.Parse(&colony.Note{Text: text + "\n", Given: n.at})
	for i := range max(len(got), len(n.want)) {
		var want map[string]string
		if i < len(n.want) {
			want = n.want[i]
		}
		right := 0
		if i < len(got) {
			for _, leaf := range colony.Leaves(&got[i]) {
				if _, asked := want["at"]; leaf.Path == "at" && !asked {
					continue
				}
				if w, ok := want[leaf.Path]; ok && sameValue(leaf.Path, w, leaf.Value) {
					right++
				} else {
					c.madeUp++
				}
			}
		}
		c.right += right
		c.missed += len(want) - right
	}
}

// tolerances are how far a measure may be off, by the last name of its path, as
// testdata/README.md says.
var tolerances = map[string]float64{"cover": 0.05, "drawn": 0.05, "width_mm": 3, "depth_mm": 3, "length_mm": 3, "temp_c": 0.6, "weight_kg": 0.1, "amount": 0.01}

func sameValue(path, want, got string) bool {
	if want == got {
		return true
	}
	if path == "at" {
		return len(want) >= 16 && len(got) >= 16 && want[:16] == got[:16] || len(want) == 10 && strings.HasPrefix(got, want)
	}
	w, err1 := strconv.ParseFloat(want, 64)
	g, err2 := strconv.ParseFloat(got, 64)
	tolerance, ok := tolerances[path[strings.LastIndexByte(path, '.')+1:]]
	return ok && err1 == nil && err2 == nil && w-g <= tolerance && g-w <= tolerance
}
