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
	when   period
	form   form
	topic  *topic        // what is counted or measured, nil for nothing
	leaves []colony.Leaf // that the rules of notes read in it
	said   []string      // what each part of Where asks for, in words
	shown  int           // most hits that are shown, 0 for all
	visit  bool          // what is counted is asked of one visit, not of all together
	until  *asked        // what the days are counted up to
	plain  string        // all words that mean something, but for time and hive
}

// understand reads a question asked on the given day, of an apiary with the
// given hives.
func understand(question string, parser *parse.Parser, hives []string, today colony.Date) asked {
	var q asked
	rest, when := cutPeriod(strings.TrimRight(strings.TrimSpace(question), "?!. "), today)
	q.when, q.From, q.To = when, when.from, when.to
	rest, hive := cutHive(rest, hives)
	if from, to, ok := cutSpan(rest); ok {
		begin, end := understandEnd(from, parser, today), understandEnd(to, parser, today)
		if begin.asks() && end.asks() {
			begin.form, begin.until, begin.Hive, begin.when, begin.From, begin.To = asksSpan, &end, hive, when, when.from, when.to
			return begin
		}
	}
	rest, q.visit = cutVisit(rest)
	rest = q.takeForm(rest)
	rest, comparison, compared := cutComparison(rest)
	q.must(compared, comparison...)
	if q.topic = topicOf(rest, q.form.measures()); q.topic != nil {
		var where []index.Clause
		rest, where = q.topic.cut(rest)
		q.must(q.topic.name, where...)
	}
	if asksForBars.MatchString(rest) && (q.topic == nil || q.topic.ofBars()) {
		q.Per = index.Bars
	}
	plain := rest
	rest = amountAsked.ReplaceAllString(reword(asStatement(reword(rest))), "")
	rest, namings, named := cutNamings(rest)
	for i, clause := range namings {
		q.must(named[i], clause)
	}
	q.Hive = hive
	q.read(rest, parser, today)
	if len(q.Where) == 0 {
		q.readTopic(rest)
	}
	if q.Per == index.Bars {
		q.Where = aboutBars(q.Where)
	}
	q.plain = unread(plain, nil)
	return q
}

// takeForm notes what kind of answer is wanted, and takes the words for it out.
func (q *asked) takeForm(question string) string {
	question, q.form = cutForm(question)
	question, q.Pick = cutPick(question)
	switch {
	case q.form == asksAgo:
		q.Pick = index.Last
	case q.form == asksEach:
		q.Each = index.ByYear
		if q.Pick == index.All {
			q.Pick = index.First
		}
	case q.form == asksGaps:
		q.Pick = index.All
	case q.form == asksHives || q.form == asksNumber:
		q.Each = index.ByHive
	}
	return question
}

// ofOneVisit are the words that ask what was counted of a single visit.
var ofOneVisit = words(`(?:in|on|at|from|per|for) (?:(?:just |only )?(?:one|a|any|any one|a single|one single|the same) )?(?:go|visit|inspection|day)|at once`)

func cutVisit(question string) (rest string, visit bool) {
	if !ofOneVisit.MatchString(question) {
		return question, false
	}
	return oneSpaced(ofOneVisit.ReplaceAllString(question, " ")), true
}

// fillers are words of a question that ask for nothing beside something that
// was understood.
var fillers = words(`give|gave|given|come|came|comes|go|goes|went|off|out|up|there|altogether|overall|together|so far|until now|in total|sort of|kind of|my|our`)

// hull is the stretch from the first of the words to the last.
func hull(spans []colony.Span) (h colony.Span) {
	for i, s := range spans {
		if i == 0 {
			h = s
		}
		h = colony.Span{min(h[0], s[0]), max(h[1], s[1])}
	}
	return h
}

// joinedByOr reports whether only "or" stands between two stretches.
func joinedByOr(text string, a, b colony.Span) bool {
	if a[0] > b[0] {
		a, b = b, a
	}
	return a[1] < b[0] && b[1] <= len(text) && strings.EqualFold(strings.TrimSpace(text[a[1]:b[0]]), "or")
}

// amountAsked is left of a question for an amount once its topic is known.
var amountAsked = words(`how (?:many|much)|number of|amount of|total|in all`)

// must adds conditions, with the words for them.
func (q *asked) must(said string, where ...index.Clause) {
	if len(where) == 0 {
		return
	}
	q.Where = append(q.Where, where...)
	q.said = append(q.said, said)
}

// read has the rules of notes read what is left of the question.
func (q *asked) read(rest string, parser *parse.Parser, today colony.Date) {
	note := colony.Note{Text: rest, Given: today.Time()}
	read := parser.Parse(&note)
	if len(read) == 0 {
		q.Words = unread(rest, nil)
		return
	}
	ins := &read[0]
	q.Hive = cmp.Or(ins.Hive, q.Hive)
	q.leaves = colony.Leaves(ins)
	var last colony.Span
	for _, leaf := range q.leaves {
		clause := clauseOf(leaf)
		if clause == nil || madeBy(leaf, q.leaves) {
			continue
		}
		here := hull(ins.Evidence.Of(leaf.Path))
		if n := len(q.Where); n > 0 && joinedByOr(rest, last, here) {
			q.Where[n-1] = append(q.Where[n-1], clause...)
			q.said[len(q.said)-1] += " or " + inWords(leaf)
		} else {
			q.must(inWords(leaf), clause)
			q.Without = append(q.Without, presence(leaf)...)
		}
		last = here
	}
	q.Words = withoutTopics(unread(rest, ins.Evidence), q.Where)
	if len(q.Where) > 0 {
		q.Words = fillers.ReplaceAllString(q.Words, " ")
	}
	q.Words = oneSpaced(q.Words)
}

// readTopic has a thing that is measured looked for where it is only named.
func (q *asked) readTopic(rest string) {
	t := topicOf(rest, true)
	if t == nil || t.keeps {
		return
	}
	rest, where := t.cut(rest)
	q.must(t.name, where...)
	q.Words = unread(rest, nil)
}

// narrow adds what the flags say; a hive named by a flag counts before one in
// the words. All hits are needed where their values or days are reckoned with.
func (q *asked) narrow(hive string, when period, limit int) {
	if hive != "" {
		q.Hive = hiveNamed(hive)
	}
	q.when = q.when.and(when)
	q.From, q.To = q.when.from, q.when.to
	if q.shown = limit; !q.reckons() && !q.extreme() {
		q.Limit = limit
	}
}

// reckons reports whether the answer is worked out from all hits, of which then
// some are shown.
func (q *asked) reckons() bool {
	return (q.form == asksGaps || q.form == asksSpan || q.topic != nil) && !q.extreme()
}

// extreme reports whether only the hits with the greatest or least value are
// wanted.
func (q *asked) extreme() bool {
	return q.topic != nil && (!q.topic.adds || q.visit) && (q.form == asksMost || q.form == asksLeast)
}

// asWords gives the conditions up and looks for the words of the question.
func (q *asked) asWords() {
	q.Where, q.Without, q.said, q.Words, q.Per = nil, nil, nil, q.plain, index.Inspections
}

// eventOf names what is said of a deed on another day than its own, or of one
// that was not done.
var eventOf = map[string]string{"feed": "fed", "treat": "treated", "add_bar": "bar_added", "split": "split", "requeen": "requeened"}

// denied asks for the denial of what the question asks for, where that can be
// denied.
func (q asked) denied() (asked, bool) {
	if none, ok := q.none(); ok {
		return none, true
	}
	return q.turned(func(leaf colony.Leaf) (colony.Leaf, bool) {
		group, what, _ := strings.Cut(leaf.Path, ".")
		if event := eventOf[what]; group == "actions" && event != "" && leaf.Value == "yes" {
			return colony.Leaf{Path: "earlier." + event, Value: "no"}, true
		}
		ok := leaf.Value == "yes" && (leaf.Path == "queen.seen" || slices.Contains([]string{"signs", "contents", "queen_cells", "drones", "incoming"}, group))
		return colony.Leaf{Path: leaf.Path, Value: "no"}, ok
	})
}

// none asks for a count of nought where one above that is asked for.
func (q asked) none() (asked, bool) {
	counted := false
	q.Where = slices.Clone(q.Where)
	for i, clause := range q.Where {
		clause = slices.Clone(clause)
		for j, c := range clause {
			if c.Op == index.Above && c.Value == "0" {
				clause[j], counted = is(c.Path, "0"), true
			}
		}
		q.Where[i] = clause
	}
	q.Pick, q.Each = index.All, index.Together
	return q, counted
}

// planned asks for the plan of a deed that was not done.
func (q asked) planned() (asked, bool) {
	return q.turned(func(leaf colony.Leaf) (colony.Leaf, bool) {
		deed, ok := strings.CutPrefix(leaf.Path, "actions.")
		return colony.Leaf{Path: "plans." + deed, Value: leaf.Value}, ok
	})
}

// turned asks for other leaves instead; not where one has no counterpart.
func (q asked) turned(to func(colony.Leaf) (colony.Leaf, bool)) (asked, bool) {
	q.Where, q.Without, q.said, q.Per, q.Pick, q.Each = nil, nil, nil, index.Inspections, index.All, index.Together
	for _, leaf := range q.leaves {
		if leaf.Path == "hive" || leaf.Path == "at" {
			continue
		}
		other, ok := to(leaf)
		if !ok {
			return q, false
		}
		if clause := clauseOf(other); clause != nil {
			q.must(inWords(other), clause)
			q.Without = append(q.Without, presence(other)...)
		}
	}
	return q, len(q.Where) > 0
}

// inWords says what a leaf asks for.
func inWords(leaf colony.Leaf) string {
	p := placeOf(leaf.Path)
	text := strings.TrimLeft(p.wording().of(leaf.Value), ", ")
	switch {
	case leaf.Path == "temper.score" && leaf.Value == touchy:
		return "temper " + text + " or worse"
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
	for word := range strings.FieldsSeq(words) {
		switch strings.ToLower(strings.Trim(word, "?,.")) {
		case "last", "latest", "recently":
			pick = index.Last
			continue
		case "first", "earliest":
			pick = index.First
			continue
		}
		rest = append(rest, word)
	}
	return strings.Join(rest, " "), pick
}

// cutHive takes out the name of a hive, with the words that belong to it.
// Numbers are left to the rules: they count too many other things.
func cutHive(question string, hives []string) (rest, hive string) {
	lower := strings.ToLower(question)
	for _, name := range hives {
		if isNumber(name) || !strings.Contains(lower, strings.ToLower(name)) {
			continue // most are not named: an expression is dear to make
		}
		naming := words(`(?:(?:in|at|for|from|of|on|about|with) )?(?:the )?(?:hive )?` + regexp.QuoteMeta(name) + `(?:'s)?(?: (?:hive|colony))?`)
		if naming.MatchString(question) {
			return oneSpaced(naming.ReplaceAllString(question, " ")), name
		}
	}
	return question, ""
}

// asking are words that make a question and ask for nothing by themselves.
var asking = strings.Fields(`a an the i we me my you it its they them their is was were are be been did do does done has have had
	what which who whose when where how many much often long happened anything something note notes so still ever me us
	record recorded ago since get got say said look looked like visit visits inspection inspections show tell find list all any ever every each
	bees of in into on at to with for from by and or that there this these those about see saw seen time times really please need year hive hives bar bars`)

// unread joins the words of the question that no rule took and that mean
// something.
func unread(text string, evidence colony.Evidence) string {
	taken := make([]bool, len(text)+1)
	for _, g := range evidence {
		for _, s := range g.Spans {
			for i := max(s[0], 0); i < min(s[1], len(text)); i++ {
				taken[i] = true
			}
		}
	}
	var out []string
	either := false // the last word of out, or the next
	for i := 0; i < len(text); {
		end := i
		for end < len(text) && text[end] != ' ' {
			end++
		}
		word := strings.Trim(text[i:end], ",.;:?!\"'()")
		lower := strings.ToLower(word)
		switch {
		case word == "" || slices.Contains(taken[i:end], true):
		case lower == "or" && len(out) > 0:
			either = true
		case !slices.Contains(asking, lower):
			if either {
				out = append(out, "or")
			}
			out, either = append(out, word), false
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
	if q.until != nil {
		parts = append(parts, "until "+q.until.String())
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
