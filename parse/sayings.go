package parse

import (
	"iter"
	"regexp"
	"strings"
)

// Example is the kind under which [Sayings] gives the examples of the rules.
const Example = "example"

// Sayings gives the ways of saying of every rule, spelt out, by the kind of the
// rule, and whole notes that a rule must hit, as [Example]: what a recogniser's
// language model is built from, so that the words stand in the rules alone. In
// them <n>, <dur>, <measure> and <date> stand for any number, length of time,
// amount and day.
func Sayings() (iter.Seq2[string, string], error) {
	all, err := loadRules()
	if err != nil {
		return nil, err
	}
	names := map[kind]string{}
	for name, k := range kindNames {
		names[k] = name
	}
	return func(yield func(string, string) bool) {
		for _, r := range all.Rule {
			for _, say := range r.Say {
				for words := range spelt(say) {
					if !yield(names[r.Kind], words) {
						return
					}
				}
			}
			for _, words := range r.Yes {
				if !yield(Example, words) {
					return
				}
			}
		}
	}, nil
}

// choice is the innermost choice of a way of saying: (a|b) or [a].
var choice = regexp.MustCompile(`\(([^()\[\]]*)\)|\[([^()\[\]]*)\]`)

// spelt spells a way of saying out as often as its widest choice is wide, so
// that each choice is made; there are far more combinations.
func spelt(say string) iter.Seq[string] {
	return func(yield func(string) bool) {
		for n, width := 0, 1; n < width; n++ {
			words := say
			for {
				at := choice.FindStringSubmatchIndex(words)
				if at == nil {
					break
				}
				options := strings.Split(words[at[0]+1:at[1]-1], "|")
				if words[at[0]] == '[' {
					options = append(options, "")
				}
				width = max(width, len(options))
				words = words[:at[0]] + " " + options[n%len(options)] + " " + words[at[1]:]
			}
			if words = strings.Join(strings.Fields(words), " "); words != "" && !yield(words) {
				return
			}
		}
	}
}
