package index

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"barwise/colony"
)

// Query says what to find. All its parts have to hold; the zero Query finds
// every inspection that is confirmed or waits.
type Query struct {
	Words   string         // each has to stand in the text, in any inflection; of words joined by "or", one
	Where   []Clause       // each has to hold
	Without []Clause       // none may hold, of the whole inspection
	Hive    string         // "" for every hive
	From    colony.Date    // first day of inspection, included; zero for no bound
	To      colony.Date    // last day of inspection, included; zero for no bound
	States  []colony.State // none for confirmed and waiting

	Per   Unit     // what a hit is
	Each  Grouping // count by, and with Pick choose from
	Pick  Pick     // only the first or last hit, of each group where there are groups
	Sort  Order
	Limit int  // most hits to return; 0 for all. Total and Groups count all
	Bare  bool // hits without quotes, where only what is recorded counts: notes are not read
}

// Unit is what a hit is.
type Unit int

// The units of a hit.
const (
	Inspections Unit = iota
	Bars             // conditions on bars.* hold of one and the same bar
)

// Order is what hits are sorted by.
type Order int

// The orders.
const (
	Newest Order = iota // inspection first
	Oldest              // inspection first
	ByName              // of the hive, numbers by their value; the newest of each first
)

// Grouping is what hits are counted by.
type Grouping int

// The groupings.
const (
	Together Grouping = iota
	ByHive
	ByYear  // of the day of inspection, as 2026
	ByMonth // 2026-05
	ByDay   // 2026-05-14
)

// Pick chooses among hits by the time of inspection.
type Pick int

// The picks.
const (
	All Pick = iota
	First
	Last
)

// Clause holds where at least one of its conditions does.
type Clause []Condition

// Condition is something said of a leaf. In Path, a star stands for any one
// part: bars.*.eggs is eggs on any bar, signs.* any sign. A deed's second
// mention (actions.feed#2) is found as the first is.
//
// Only what was said counts: "eggs is no" finds denials, not silence, and
// "temper.score below 3" no inspection without a score.
type Condition struct {
	Path  string
	Op    Op
	Value string // as the record writes it; not for Said and Silent
}

// Op compares a leaf with a condition's value: as numbers where both are, and
// else as text, which is right for dates.
type Op int

// The comparisons.
const (
	Is Op = iota
	IsNot
	Below
	AtMost
	Above
	AtLeast
	Said   // the leaf is there, whatever it says
	Silent // no leaf of that path is there
)

var opText = [...]string{"=", "!=", "<", "<=", ">", ">=", "said", "not said"}

// String is the condition for a person: temper.score<=1.
func (c Condition) String() string {
	if c.Op >= Said {
		return c.Path + " " + opText[c.Op]
	}
	return c.Path + opText[c.Op] + c.Value
}

// check refuses a path that no record can have, and a value that the leaf
// cannot take.
func (c Condition) check() error {
	if c.Op < Is || c.Op > Silent {
		return fmt.Errorf("condition on %s: there is no comparison %d", c.Path, c.Op)
	}
	if strings.Contains(strings.TrimPrefix(c.Path, "bars.*"), "*") {
		return nil // which leaves are meant shows in the index
	}
	field, err := colony.FieldOf(strings.Replace(c.Path, "bars.*", "bars.1", 1))
	if err != nil {
		return fmt.Errorf("condition %v: %w", c, err)
	}
	if c.Op == Is || c.Op == IsNot {
		if err := field.Check(c.Value); err != nil && field.Kind != colony.Text {
			return fmt.Errorf("condition %v: %w", c, err)
		}
	}
	return nil
}

// holds compares a leaf's value; Silent is no matter of a leaf.
func (c Condition) holds(value string) bool {
	if c.Op == Said {
		return true
	}
	order := strings.Compare(value, c.Value)
	if a, err := strconv.ParseFloat(value, 64); err == nil {
		if b, err := strconv.ParseFloat(c.Value, 64); err == nil {
			order = cmp.Compare(a, b)
		}
	}
	switch c.Op {
	case Is:
		return order == 0
	case IsNot:
		return order != 0
	case Below:
		return order < 0
	case AtMost:
		return order <= 0
	case Above:
		return order > 0
	case AtLeast:
		return order >= 0
	}
	return false
}

// Covers reports whether a plain path fits the condition's.
func (c Condition) Covers(path string) bool {
	pattern := plainPath(c.Path)
	for {
		want, moreWanted, more := strings.Cut(pattern, ".")
		got, moreGot, left := strings.Cut(path, ".")
		if want != "*" && want != got {
			return false
		}
		if more != left {
			return false
		}
		if !more {
			return true
		}
		pattern, path = moreWanted, moreGot
	}
}

// check refuses a query that cannot be answered.
func (q Query) check() error {
	for _, clause := range q.Without {
		for _, c := range clause {
			if err := c.check(); err != nil {
				return err
			}
		}
	}
	for _, clause := range q.Where {
		if len(clause) == 0 {
			return fmt.Errorf("an empty clause never holds")
		}
		ofBars := 0
		for _, c := range clause {
			if err := c.check(); err != nil {
				return err
			}
			if strings.HasPrefix(c.Path, "bars.") {
				ofBars++
			}
		}
		if q.Per == Bars && ofBars != 0 && ofBars != len(clause) {
			return fmt.Errorf("where bars are asked for, a clause is about bars or about the colony, not both: %v", clause)
		}
	}
	return nil
}

// Hits is the answer to a query.
type Hits struct {
	Hits   []Hit   `json:"hits"`
	Total  int     `json:"total"`            // found in all, also beyond the limit
	Groups []Group `json:"groups,omitempty"` // in order of their keys
	Terms  []Term  `json:"terms,omitempty"`  // what was made of the words
}

// Similar reports whether words were taken for others of similar spelling,
// since nothing held them as they were given.
func (h Hits) Similar() bool {
	for _, t := range h.Terms {
		if t.Similar {
			return true
		}
	}
	return false
}

// Reading is an inspection that a query found, with what a leaf of it says.
type Reading struct {
	Hive  string
	Day   colony.Date
	Value string // "" where the leaf is not there
}

// Group counts the hits of one hive, year, month or day.
type Group struct {
	Key   string      `json:"key"`
	Count int         `json:"count"`
	First colony.Date `json:"first"` // day of its earliest hit
	Last  colony.Date `json:"last"`
}

// Term is a word of the query as the index knows it: by its stem, or, where
// Similar is set, by stems spelt much like it.
type Term struct {
	Word    string   `json:"word"`
	Stems   []string `json:"stems"`
	Similar bool     `json:"similar,omitempty"`
}

// Hit is an inspection or a bar that the query found.
type Hit struct {
	ID     string        `json:"id"` // of the record
	Hive   string        `json:"hive,omitempty"`
	Day    colony.Date   `json:"day,omitzero"`
	Bar    int           `json:"bar,omitempty"` // the bar that it is about, 0 for the colony
	State  colony.State  `json:"state"`
	Note   string        `json:"note"` // hash
	Leaves []colony.Leaf `json:"-"`    // that fulfil the conditions
	Quotes []Quote       `json:"quotes,omitempty"`
	Record colony.Record `json:"-"`
}

// Quote is a stretch of the note with the words that made the hit. It is text
// as the keeper gave it, and may hold anything.
type Quote struct {
	Text  string        `json:"text"`
	Span  colony.Span   `json:"span"`          // of Text within the note
	Marks []colony.Span `json:"marks"`         // of the words within Text
	Bar   int           `json:"bar,omitempty"` // the bar that the words are about, 0 for the colony
}
