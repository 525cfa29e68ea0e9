package command

import (
	"regexp"
	"slices"
	"strings"

	"barwise/colony"
	"barwise/index"
)

// What a question is about is not always a statement that a note could hold:
// "over 20 mites", "white queen", "how many stings". The topics are the things
// that are counted, measured or named so; they are looked for before the rules
// of notes read the rest.

// topic is something with a value that can be asked for.
type topic struct {
	name    string
	named   *regexp.Regexp // in a question
	paths   []string       // of the leaves that hold the value
	unit    string         // of a number, with (s) where it takes an s
	unitsAt string         // path of the leaf that holds the unit instead
	adds    bool           // values of several days add up; others are readings
	with    *regexp.Regexp // has to stand in the question too
	always  bool           // being named asks for it; others only with "how many"
	keeps   bool           // its name says as well what to find
	kinds   *regexp.Regexp // of what it is, where the question says so, held by the leaf
	kindsAt string
}

func words(form string) *regexp.Regexp { return regexp.MustCompile(`(?i)\b(?:` + form + `)\b`) }

// topics are tried in their order.
var topics = []*topic{
	{name: "mites counted", named: words(`(?:mite|mites?) (?:counts?|numbers?)|mites?`), paths: []string{"mites.count"}, unit: "mite(s)"},
	{name: "stings", named: words(`stings?|stung`), paths: []string{"temper.stings"}, unit: "sting(s)", adds: true},
	{name: "bees on bars", named: words(`seams?(?: of bees)?|bars of bees|how strong|how big`), paths: []string{"strength.bars_of_bees"}, unit: "bar(s) of bees", always: true},
	{name: "temperature", named: words(`degrees(?: celsius)?|temperatures?|how (?:warm|cold|hot)(?: (?:was|is) it)?`), paths: []string{"weather.temp_c"}, unit: "°C"},
	{name: "bars in use", named: words(`bars in use`), paths: []string{"bars_total"}, unit: "bar(s) in use"},
	{name: "weight", named: words(`how heavy|kilos?|kg`), paths: []string{"weight_kg"}, unit: "kg"},
	{name: "colour of the queen", named: words(`what colou?r`), paths: []string{"queen.colour"}, always: true},
	{name: "temper", named: words(`(?:how (?:was|is) the )?temper|how (?:calm|gentle|nasty)`), paths: []string{"temper.score"}, unit: "of 4", always: true},
	{name: "honey harvested", named: words(`honey|yield|crop|harvest|pounds?|lbs?`), with: words(`harvest(?:ed)?|take|took|taken|yield(?:ed)?|crop|get|got|gave|give|given|made|(?:came|come|comes|taken) off|off`),
		paths: []string{"actions.harvest.amount"}, unitsAt: "actions.harvest.unit", adds: true},
	{name: "feed given", named: words(`syrup|fondant|lit(?:re|er)s?|kilos?|kg|food`), with: words(`fed|feed|get|got|given|give|syrup|fondant`),
		paths: []string{"actions.feed.amount"}, unitsAt: "actions.feed.unit", adds: true,
		kinds: words(`syrup|fondant`), kindsAt: "actions.feed.what"},
	{name: "bars added", named: words(`bars?`), with: words(`add(?:ed)?|put`), paths: []string{"actions.add_bar.count"}, unit: "bar(s)", adds: true},
	{name: "bars harvested", named: words(`(?:bars?|combs?)(?: of (?:capped |ripe )?honey)?`), with: words(`harvest(?:ed)?|take|took|taken`), paths: []string{"actions.harvest.count"}, unit: "bar(s)", adds: true},
	{name: "queen cells counted", named: words(`cells?|cups?`), paths: []string{"queen_cells.*.count", "bars.*.queen_cells.*.count"}, unit: "cell(s)", keeps: true},
	{name: "place of the queen", named: words(`where (?:was|is|were|did)|(?:which|what) bar (?:was|is|did)`), paths: []string{"queen.bar"}, always: true, keeps: true},
}

// topicOf is what the question names to be measured, nil for nothing. It need
// not ask for an amount where the topic alone asks for one. Of several the one
// named first is asked for: how many bars of honey are bars.
func topicOf(question string, measured bool) (of *topic) {
	first := len(question)
	for _, t := range topics {
		if !measured && !t.always || t.with != nil && !t.with.MatchString(question) {
			continue
		}
		if at := t.named.FindStringIndex(question); at != nil && at[0] < first {
			of, first = t, at[0]
		}
	}
	return of
}

// cut takes the topic out of the question, and returns what has to hold.
func (t *topic) cut(question string) (rest string, where []index.Clause) {
	if t.keeps {
		return question, nil
	}
	where = append(where, t.said())
	if t.kinds != nil {
		if kind := t.kinds.FindString(question); kind != "" {
			where = append(where, index.Clause{is(t.kindsAt, strings.ToLower(kind))})
		}
	}
	rest = t.named.ReplaceAllString(question, " ")
	if t.with != nil {
		rest = t.with.ReplaceAllString(rest, " ")
	}
	return oneSpaced(rest), where
}

// said is the clause that the value is told at all.
func (t *topic) said() index.Clause {
	var c index.Clause
	for _, path := range t.paths {
		c = append(c, index.Condition{Path: path, Op: index.Said})
	}
	if t.adds {
		for i := range c {
			c[i].Op, c[i].Value = index.Above, "0"
		}
	}
	return c
}

const numeral = `(\d+(?:\.\d+)?|a|an|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|hundred)`

var numerals = map[string]string{
	"a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8",
	"nine": "9", "ten": "10", "eleven": "11", "twelve": "12", "fifteen": "15", "twenty": "20", "thirty": "30", "forty": "40",
	"fifty": "50", "hundred": "100",
}

const measured = `(mites?(?: on the board| in the wash)?|stings?|seams?(?: of bees)?|bars of bees|degrees(?: celsius)?|bars in use|kg|kilos?|lbs?|pounds?|lit(?:re|er)s?|l)`

const than = `(more than|over|above|at least|less than|fewer than|under|below|at most)`

var (
	thanNumber   = regexp.MustCompile(`(?i)\b` + than + ` ` + numeral + ` ` + measured + `\b`)
	measureThan  = regexp.MustCompile(`(?i)\b` + measured + ` (?:of )?` + than + ` ` + numeral + `\b`)
	measureMore  = regexp.MustCompile(`(?i)\b` + measured + ` (?:of )?` + numeral + ` or (more|less|fewer)\b`)
	plusNumber   = regexp.MustCompile(`(?i)\b` + numeral + `(\+| plus) ` + measured + `\b`)
	numberOrMore = regexp.MustCompile(`(?i)\b` + numeral + ` ` + measured + ` or (more|less|fewer)\b`)
	orMoreNumber = regexp.MustCompile(`(?i)\b` + numeral + ` or (more|less|fewer) ` + measured + `\b`)
)

var comparisons = map[string]index.Op{
	"more than": index.Above, "over": index.Above, "above": index.Above, "at least": index.AtLeast, "more": index.AtLeast,
	"less than": index.Below, "fewer than": index.Below, "under": index.Below, "below": index.Below, "at most": index.AtMost,
	"less": index.AtMost, "fewer": index.AtMost, "+": index.AtLeast, " plus": index.AtLeast,
}

// cutComparison takes out "more than 12 seams" and returns what has to hold, and
// in words.
func cutComparison(question string) (rest string, where []index.Clause, said string) {
	for _, form := range []struct {
		words         *regexp.Regexp
		op, num, what int
	}{{thanNumber, 1, 2, 3}, {measureThan, 2, 3, 1}, {measureMore, 3, 2, 1}, {plusNumber, 2, 1, 3}, {numberOrMore, 3, 1, 2}, {orMoreNumber, 2, 1, 3}} {
		at := form.words.FindStringSubmatchIndex(question)
		if at == nil {
			continue
		}
		group := func(n int) string { return strings.ToLower(question[at[2*n]:at[2*n+1]]) }
		t := comparedTopic(group(form.what), question)
		if t == nil {
			continue
		}
		number := group(form.num)
		if digits, ok := numerals[number]; ok {
			number = digits
		}
		var clause index.Clause
		for _, path := range t.paths {
			clause = append(clause, index.Condition{Path: path, Op: comparisons[group(form.op)], Value: number})
		}
		where = append(where, clause)
		said = strings.ToLower(question[at[0]:at[1]])
		if unit := unitsOf[group(form.what)]; unit != "" {
			said = t.name + " " + said
			if t.unitsAt != "" {
				where = append(where, index.Clause{is(t.unitsAt, unit)})
			}
		}
		return oneSpaced(question[:at[0]] + " " + question[at[1]:]), where, said
	}
	return question, nil, ""
}

// unitsOf are the record's units by what they are called.
var unitsOf = map[string]string{
	"lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "kg": "kg", "kilo": "kg", "kilos": "kg",
	"l": "l", "litre": "l", "litres": "l", "liter": "l", "liters": "l",
}

// comparedTopic finds what a number with this noun is of; pounds and litres are
// of what the rest of the question does with them.
func comparedTopic(noun, question string) *topic {
	for _, t := range topics {
		if t.named.MatchString(noun) && (t.with == nil || t.with.MatchString(question)) {
			return t
		}
	}
	return nil
}

func oneSpaced(s string) string { return strings.Join(strings.Fields(s), " ") }

// naming is a way to name what the rules of notes read only in a sentence.
type naming struct {
	words *regexp.Regexp
	where func(found []string) index.Clause
}

func yes(paths ...string) func([]string) index.Clause {
	return func([]string) index.Clause {
		var c index.Clause
		for _, path := range paths {
			c = append(c, index.Condition{Path: path, Op: index.Is, Value: "yes"})
		}
		return c
	}
}

func is(path, value string) index.Condition {
	return index.Condition{Path: path, Op: index.Is, Value: value}
}

const (
	markColour = `(white|yellow|red|green|blue)`
	anyColour  = `(white|yellow|orange|red|green|blue|grey|gray|brown|black|cream|pink|purple)`
)

var namings = []naming{
	{words(`queen (?:with|has|had|of) (?:a |an |the )?` + markColour + `(?: dots?| marks?)?`), colourOfQueen},
	{words(markColour + ` (?:dot |marked )?queen`), colourOfQueen},
	{words(`unmarked queens?|queens? (?:is |was )?(?:unmarked|not marked)`), func([]string) index.Clause { return index.Clause{is("queen.marked", "no")} }},
	{words(`(?:cross|crossed) combs?`), yes("bars.*.comb.cross")},
	{words(`broken combs?|combs? (?:broke|broken|collapsed)`), yes("bars.*.comb.broken")},
	{words(`new (?:white )?combs?`), yes("bars.*.comb.new")},
	{words(`old combs?`), yes("bars.*.comb.old")},
	{words(anyColour + ` pollen`), func(m []string) index.Clause {
		return index.Clause{is("incoming.pollen.colour", strings.ToLower(m[1]))}
	}},
	{words(`pollen (?:coming|going|carried|brought) in|(?:first|last) pollen`), yes("incoming.pollen")},
	{words(`(?:alcohol |soapy )?wash(?:es)?`), func([]string) index.Clause { return index.Clause{is("mites.method", "wash")} }},
	{words(`sugar (?:rolls?|shakes?)`), func([]string) index.Clause { return index.Clause{is("mites.method", "sugar")} }},
	{words(`drop boards?|mite (?:drops?|boards?|falls?)|boards? only`), func([]string) index.Clause { return index.Clause{is("mites.method", "drop")} }},
}

func colourOfQueen(m []string) index.Clause {
	return index.Clause{is("queen.colour", strings.ToLower(m[1]))}
}

// cutNamings takes out what is named so, and returns the conditions, and
// their words.
func cutNamings(question string) (rest string, where []index.Clause, said []string) {
	for _, n := range namings {
		at := n.words.FindStringIndex(question)
		if at == nil {
			continue
		}
		where = append(where, n.where(n.words.FindStringSubmatch(question)))
		said = append(said, strings.ToLower(question[at[0]:at[1]]))
		question = oneSpaced(question[:at[0]] + " " + question[at[1]:])
	}
	return question, where, said
}

// valueIn adds the topic's values in an inspection to the reading, with their
// unit.
func (t *topic) valueIn(ins *colony.Inspection, keep func(path string) bool, r *reading) {
	r.unit = t.unit
	for _, leaf := range colony.Leaves(ins) {
		if !t.has(leaf.Path) || !keep(leaf.Path) {
			continue
		}
		r.said = true
		r.add(leaf.Value)
		if t.unitsAt != "" {
			r.unit, _ = colony.Get(ins, strings.TrimSuffix(leaf.Path, "amount")+"unit")
		}
	}
}

// ofBars reports whether the value is one of a bar.
func (t *topic) ofBars() bool {
	return slices.ContainsFunc(t.paths, func(path string) bool { return strings.HasPrefix(path, "bars.") })
}

// single reports whether an inspection has the value once at most, in one leaf.
func (t *topic) single() bool { return len(t.paths) == 1 && !strings.HasPrefix(t.paths[0], "actions.") }

func (t *topic) has(path string) bool {
	for _, p := range t.paths {
		if (index.Condition{Path: p}).Covers(path) {
			return true
		}
	}
	return false
}
