package colony

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// Standing says how a source stands behind a number.
type Standing string

// The standings, from strong to weak.
const (
	Published Standing = "published"                      // read in the source itself
	Quoted    Standing = "quoted"                         // read where another quotes the source
	Derived   Standing = "worked out here"                // arithmetic on published values
	Practice  Standing = "common practice, no source"     // what keepers do and say
	Recalled  Standing = "textbook figure, not looked up" // the source itself was not seen
)

// Reference is where a number comes from.
type Reference struct {
	Key      string   `json:"key"`
	Text     string   `json:"text"`
	Standing Standing `json:"standing"`
}

// Constant is a number of the trade: its range with unit, when it holds, and
// who says so.
type Constant struct {
	Name  string      `json:"name"`
	Value Range       `json:"value"`
	When  string      `json:"when,omitempty"`
	From  []Reference `json:"from"`
}

// Input is one thing that went into a result: From names the inspection's day
// and leaf, or "setting"; for a constant it says when that holds.
type Input struct {
	Name  string `json:"name"`
	Value string `json:"value"`
	From  string `json:"from,omitempty"`
}

// Explanation shows how a result came about.
type Explanation struct {
	What    string      `json:"what"`
	Result  string      `json:"result"`
	Formula string      `json:"formula"`
	Inputs  []Input     `json:"inputs,omitempty"`
	From    []Reference `json:"from,omitempty"`
	Caveats []string    `json:"caveats,omitempty"`
}

// Estimate is a number with its making.
type Estimate struct {
	Range
	Why Explanation `json:"why"`
}

// Known reports whether the estimate says anything.
func (e Estimate) Known() bool { return e.Why.What != "" }

// askForShare says, of a number from comb areas that is too vague to be of use,
// what would have told it more closely.
func (e *Estimate) askForShare() {
	if e.Vague() {
		e.Why.Caveats = append(e.Why.Caveats, "how much of the combs it takes was not said; \"two thirds of each\" would tell")
	}
}

// String lays the explanation out for a terminal, two columns, no line longer
// than its own words.
func (e Explanation) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n", e.What, e.Result)
	if e.Formula != "" {
		fmt.Fprintf(&b, "  how      %s\n", e.Formula)
	}
	for i, in := range e.Inputs {
		fmt.Fprintf(&b, "  %s %s = %s", label("from", i), in.Name, in.Value)
		if in.From != "" {
			fmt.Fprintf(&b, " [%s]", in.From)
		}
		b.WriteByte('\n')
	}
	for i, r := range e.From {
		fmt.Fprintf(&b, "  %s %s\n", label("source", i), r)
	}
	for i, c := range e.Caveats {
		fmt.Fprintf(&b, "  %s %s\n", label("mind", i), c)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func label(word string, i int) string {
	if i > 0 {
		word = ""
	}
	return fmt.Sprintf("%-8s", word)
}

// String names the source and how it stands.
func (r Reference) String() string {
	if r.Text == "" {
		return string(r.Standing)
	}
	if r.Standing == Published {
		return r.Text
	}
	return fmt.Sprintf("%s (%s)", r.Text, r.Standing)
}

// input is the constant as an input of an explanation.
func (c Constant) input() Input {
	return Input{c.Name, c.Value.String(), c.When}
}

// because builds the explanation of a number from the constants that went in.
func because(what string, result Range, formula string, inputs []Input, used ...Constant) Estimate {
	why := Explanation{What: what, Result: result.String(), Formula: formula, Inputs: inputs}
	for _, c := range used {
		why.Inputs = append(why.Inputs, c.input())
		why.From = withReferences(why.From, c.From...)
	}
	return Estimate{result, why}
}

// withReferences appends those that are not there yet.
func withReferences(have []Reference, more ...Reference) []Reference {
	for _, r := range more {
		if !slices.Contains(have, r) {
			have = append(have, r)
		}
	}
	return have
}

// dayOf is the civil day of an inspection, in the zone in which it was said.
func dayOf(ins *Inspection) Date { return DateOf(ins.At) }

// saidOn names a leaf of an inspection as an origin: "20 May, bars.4.eggs".
func saidOn(ins *Inspection, path string) string {
	return shortDay(dayOf(ins)) + ", " + path
}

// MarshalJSON writes the range with its explanation, or null where nothing is
// known.
func (e Estimate) MarshalJSON() ([]byte, error) {
	if !e.Known() {
		return []byte("null"), nil
	}
	return json.Marshal(struct {
		Range Range       `json:"range"`
		Why   Explanation `json:"why"`
	}{e.Range, e.Why})
}
