package command

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

// A question is read with the same rules as a note: "queen seen hive four" says
// of an inspection what it has to say to be found. What no rule takes is looked
// for as words.

// asked is a question as it was understood.
type asked struct {
	index.Query
	when  period
	said  []string // what each part of Where asks for, in words
	plain string   // all words that mean something, but for time and hive
}

// understand reads a question asked on the given day, of an apiary with the
// given hives.
func understand(words string, parser *parse.Parser, hives []string, today colony.Date) asked {
	var q asked
	rest, when := cutPeriod(words, today)
	q.when, q.From, q.To = when, when.from, when.to
	rest, q.Pick = cutPick(rest)
	rest, named := cutHive(asStatement(rest), hives)
	note := colony.Note{Text: rest, Given: today.Time()}
	read := parser.Parse(&note)
	if len(read) == 0 {
		q.Hive, q.Words = named, unread(rest, nil)
		return q
	}
	ins := &read[0]
	q.Hive = cmp.Or(ins.Hive, named)
	for _, leaf := range colony.Leaves(ins) {
		if clause := clauseOf(leaf); clause != nil {
			q.Where = append(q.Where, clause)
			q.said = append(q.said, inWords(leaf))
		}
	}
	if asksForBars.MatchString(rest) {
		q.Per, q.Where = index.Bars, aboutBars(q.Where)
	}
	q.Words = withoutTopics(unread(rest, ins.Evidence), q.Where)
	q.plain = unread(rest, map[string][]colony.Span{"hive": ins.Evidence["hive"]})
	return q
}

// narrow adds what the flags say; a hive named by a flag counts before one in
// the words.
func (q *asked) narrow(hive string, when period, limit int) {
	if hive != "" {
		q.Hive = strings.ToLower(hive)
	}
	q.when = q.when.and(when)
	q.From, q.To, q.Limit = q.when.from, q.when.to, limit
}

// asWords gives the conditions up and looks for the words of the question.
func (q *asked) asWords() { q.Where, q.said, q.Words = nil, nil, q.plain }

// clauseOf is what a leaf of a question asks for; nil where it asks for
// nothing. What is said of the colony may be recorded of a bar, and what was
// seen "last" is asked of the day it was seen on.
func clauseOf(leaf colony.Leaf) index.Clause {
	is := func(path, value string) index.Condition {
		return index.Condition{Path: path, Op: index.Is, Value: value}
	}
	parts := strings.Split(leaf.Path, ".")
	switch {
	case leaf.Path == "hive" || leaf.Path == "at" || len(parts) > 2 && parts[0] != "bars" && parts[2] != "kind":
		return nil
	case parts[0] == "contents" && leaf.Value == "no":
		return index.Clause{is(leaf.Path, "no")}
	case parts[0] == "contents":
		return index.Clause{is(leaf.Path, leaf.Value), is("bars.*."+parts[1], leaf.Value)}
	case parts[0] == "queen_cells" && parts[1] == "any" && len(parts) == 2 && leaf.Value == "yes":
		return index.Clause{is("queen_cells.*", "yes"), is("bars.*.queen_cells.*", "yes")}
	case parts[0] == "queen_cells" && len(parts) == 3:
		return index.Clause{is("queen_cells.*."+parts[2], leaf.Value), is("bars.*.queen_cells.*."+parts[2], leaf.Value)}
	case parts[0] == "queen_cells" && leaf.Value == "yes":
		return index.Clause{is(leaf.Path, "yes"), is("bars.*."+leaf.Path, "yes")}
	case parts[0] == "earlier":
		return earlierClause(parts[1], leaf.Value)
	}
	return index.Clause{is(leaf.Path, leaf.Value)}
}

// earlierClause asks for an event as it was recorded on its day, or was spoken
// of later.
func earlierClause(event, value string) index.Clause {
	on := map[string][]string{
		"queen_seen": {"queen.seen"},
		"eggs_seen":  {"contents.eggs", "bars.*.eggs"},
		"fed":        {"actions.feed"},
		"treated":    {"actions.treat"},
		"bar_added":  {"actions.add_bar"},
		"split":      {"actions.split"},
		"requeened":  {"actions.requeen"},
		"swarmed":    {"earlier.swarmed"},
	}[event]
	var clause index.Clause
	for _, path := range on {
		clause = append(clause, index.Condition{Path: path, Op: index.Is, Value: value})
	}
	return clause
}

// asksForBars finds a question whose answer is bars, not inspections.
var asksForBars = regexp.MustCompile(`(?i)\b(?:which bars?|bars? (?:with|that|which|of|full))\b`)

// aboutBars leaves in each clause only what is recorded of bars, where there is
// such a thing.
func aboutBars(where []index.Clause) []index.Clause {
	for i, clause := range where {
		ofBars := slices.DeleteFunc(slices.Clone(clause), func(c index.Condition) bool { return !strings.HasPrefix(c.Path, "bars.") })
		if len(ofBars) > 0 {
			where[i] = ofBars
		}
	}
	return where
}

// inWords says what a leaf asks for.
func inWords(leaf colony.Leaf) string {
	p := placeOf(leaf.Path)
	text := strings.TrimLeft(p.wording().of(leaf.Value), ", ")
	switch {
	case p.group == "queen" || p.group == "temper" || p.group == "stores" || p.group == "earlier":
		return p.group + " " + text
	case strings.HasPrefix(p.topic, "bar "):
		return p.topic + " " + text
	}
	return text
}

// cutPick takes out the words that ask for the last or the first time only.
func cutPick(words string) (string, index.Pick) {
	pick := index.All
	var rest []string
	asksWhen := false
	for word := range strings.FieldsSeq(words) {
		switch strings.ToLower(strings.Trim(word, "?,.")) {
		case "when":
			asksWhen = true
			continue
		case "last", "latest":
			pick = index.Last
			continue
		case "first", "earliest":
			pick = index.First
			continue
		}
		rest = append(rest, strings.TrimRight(word, "?"))
	}
	if asksWhen && pick == index.All {
		pick = index.Last
	}
	return strings.Join(rest, " "), pick
}

var (
	asksWho  = regexp.MustCompile(`(?i)^\s*(?:who|which (?:hives?|colony|colonies)) (?:is|are|was|were|has been|had been)\b`)
	asksSeen = regexp.MustCompile(`(?i)^\s*(?:where |how often |how many times )?(?:did|do|have|had|was|were|is|are) (?:i|we|you|they|it)?\s*(?:see|saw|seen|find|found|spot|spotted)?\b`)
	queen    = regexp.MustCompile(`(?i)\bqueen\b`)
	seen     = regexp.MustCompile(`(?i)\b(?:see|saw|seen|find|found|spot|spotted)\b`)
)

// asStatement turns a question round into what it asks for, since the rules of
// notes take a question for no observation: "did I see the queen" → "queen
// seen", "who was nasty" → "bees nasty".
func asStatement(words string) string {
	if asksWho.MatchString(words) {
		return strings.TrimSpace(asksWho.ReplaceAllString(words, "bees"))
	}
	opening := asksSeen.FindString(words)
	if opening == "" {
		return words
	}
	rest := strings.TrimSpace(strings.TrimPrefix(words, opening))
	rest = strings.TrimSpace(strings.TrimPrefix(rest, "the "))
	if seen.MatchString(opening) && !strings.Contains(strings.ToLower(rest), "queen c") {
		rest = queen.ReplaceAllString(rest, "queen seen")
	}
	return rest
}

// cutHive takes out the name of a hive, with the word hive after it or without.
// Numbers are left to the rules: they count too many other things.
func cutHive(words string, hives []string) (rest, hive string) {
	lower := " " + strings.ToLower(words) + " "
	for _, name := range hives {
		if name == "" || strings.Trim(name, "0123456789") == "" {
			continue
		}
		for _, form := range []string{name + " hive", name} {
			if i := strings.Index(lower, " "+form+" "); i >= 0 {
				return strings.TrimSpace(words[:i] + words[min(i+len(form), len(words)):]), name
			}
		}
	}
	return words, ""
}

// asking are words that make a question and ask for nothing by themselves.
var asking = strings.Fields(`a an the i we me my you it its is was were are be been did do does done has have had
	what which who whose where how many much often long show tell find list all any ever every each
	bees of in into on at to with for from by and or that there this these those about see saw seen time times hive hives bar bars`)

// unread joins the words of the question that no rule took and that mean
// something.
func unread(text string, evidence map[string][]colony.Span) string {
	taken := make([]bool, len(text)+1)
	for _, spans := range evidence {
		for _, s := range spans {
			for i := max(s[0], 0); i < min(s[1], len(text)); i++ {
				taken[i] = true
			}
		}
	}
	var out []string
	for i := 0; i < len(text); {
		end := i
		for end < len(text) && text[end] != ' ' {
			end++
		}
		word := strings.Trim(text[i:end], ",.;:?!\"'()")
		if word != "" && !slices.Contains(taken[i:end], true) && !slices.Contains(asking, strings.ToLower(word)) {
			out = append(out, word)
		}
		i = end + 1
	}
	return strings.Join(out, " ")
}

// withoutTopics drops the words that only name what a condition is about: the
// queen of "queen marked".
func withoutTopics(words string, where []index.Clause) string {
	var out []string
	for word := range strings.FieldsSeq(words) {
		topic := strings.ToLower(strings.TrimSuffix(word, "s"))
		if !slices.ContainsFunc(where, func(c index.Clause) bool { return strings.Contains(c[0].Path, topic) }) {
			out = append(out, word)
		}
	}
	return strings.Join(out, " ")
}

// String says in one line how the question was understood.
func (q asked) String() string {
	var parts []string
	if q.Hive != "" {
		parts = append(parts, "hive "+oneLine(q.Hive))
	}
	parts = append(parts, q.said...)
	if q.Words != "" {
		parts = append(parts, "the words “"+oneLine(q.Words)+"”")
	}
	if text := q.when.String(); text != "" {
		parts = append(parts, text)
	}
	switch q.Pick {
	case index.Last:
		parts = append(parts, "the last time")
	case index.First:
		parts = append(parts, "the first time")
	}
	return strings.Join(parts, ", ")
}
