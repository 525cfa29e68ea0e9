package command

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"barwise/colony"
	"barwise/index"
)

// A question for when, how many or how long is answered in one line, from the
// hits that then follow as the evidence.

// form is the kind of answer that a question wants.
type form int

const (
	asksEvidence form = iota // to see what there is
	asksWhen
	asksOften  // how many times
	asksMuch   // how many or how much
	asksHives  // which hives, who
	asksNumber // of hives
	asksGaps   // days between
	asksAgo    // days since
	asksEach   // each year
	asksMost
	asksLeast
	asksSpan // days from one thing to the next
)

// forms are tried in their order; what is found is taken out of the question.
var forms = []struct {
	words *regexp.Regexp
	form  form
	keep  bool // leave the words, which say more than the form
}{
	{words(`(?:how (?:many days|long)|number of days|days|time|gaps?) between`), asksGaps, false},
	{words(`how (?:long|many days) (?:is it )?(?:since|ago)|(?:days|time) since`), asksAgo, false},
	{words(`(?:in )?(?:each|every) (?:spring|summer|autumn|fall|winter|year|season)`), asksEach, false},
	{words(`how often|how many times|number of times`), asksOften, false},
	{words(`how many (?:hives|colonies)`), asksNumber, true},
	{words(`(?:the )?(?:most|highest|greatest|biggest|largest|maximum|max)`), asksMost, false},
	{words(`(?:the )?(?:fewest|lowest|smallest|minimum|min)`), asksLeast, false},
	{words(`how (?:many|much|hot|warm|cold|heavy)|number of|amount of|total|yield|in all`), asksMuch, true},
	{regexp.MustCompile(`(?i)^\s*(?:who|(?:which|what) (?:hives?|colony|colonies))\b`), asksHives, true},
	{words(`when`), asksWhen, false},
}

// superlatives are the adjectives that name what is measured as well.
var superlatives = []struct {
	words *regexp.Regexp
	as    string
}{
	{words(`(?:the )?(?:hottest|warmest)(?: (?:day|visit))?`), "highest temperature"},
	{words(`(?:the )?(?:coldest|coolest)(?: (?:day|visit))?`), "lowest temperature"},
	{words(`(?:the )?strongest`), "most seams"},
	{words(`(?:the )?weakest`), "fewest seams"},
	{words(`(?:the )?heaviest`), "highest kg"},
	{words(`(?:the )?lightest`), "lowest kg"},
}

func cutForm(question string) (rest string, f form) {
	for _, s := range superlatives {
		question = s.words.ReplaceAllString(question, s.as)
	}
	for _, known := range forms {
		if !known.words.MatchString(question) {
			continue
		}
		if !known.keep {
			question = oneSpaced(known.words.ReplaceAllString(question, " "))
		}
		return question, known.form
	}
	return question, asksEvidence
}

// measures reports whether the form wants a topic's values.
func (f form) measures() bool {
	return f == asksMuch || f == asksMost || f == asksLeast || f == asksOften
}

// answer is the line that answers the question from what was found, of which n
// are all that there are; "" where the hits say it all.
func (q *asked) answer(list []reading, n int, groups []index.Group, today colony.Date) string {
	if q.Pick != index.All {
		n = len(list)
	}
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(a, b reading) int { return a.day.Compare(b.day) })
	switch {
	case q.form == asksGaps:
		return gapsLine(list)
	case q.form == asksAgo:
		last := list[len(list)-1]
		return fmt.Sprintf("%s ago: last on %s, %s", amount(today.Sub(last.day), "day"), longDate(last.day), hiveOrNone(last.hive))
	case q.form == asksEach:
		return eachLine(list)
	case q.form == asksNumber:
		return amount(len(groups), "hive") + ": " + hivesLine(groups)
	case q.form == asksHives && q.topic == nil:
		return hivesLine(groups)
	case q.form == asksOften:
		return amount(n, "time") + ", " + q.span(list, n)
	case q.topic != nil:
		return q.measured(list)
	case q.Per == index.Bars && q.form == asksMuch:
		return amount(n, "bar") + ", " + q.span(list, n)
	case q.form == asksMuch:
		return amount(n, "inspection") + ", " + q.span(list, n)
	case q.form == asksWhen || q.Pick != index.All:
		return q.whenLine(list, n, today)
	}
	return ""
}

func longDate(d colony.Date) string { return d.Time().Format("Mon 2 Jan 2006") }

// span says when the hits were; of n hits where only the latest are listed, when
// the last was.
func (q *asked) span(list []reading, n int) string {
	first, last := list[0].day, list[len(list)-1].day
	switch {
	case n > len(list):
		return "last on " + longDate(last)
	case first == last:
		return "on " + longDate(first)
	}
	return longDate(first) + " to " + longDate(last)
}

func (q *asked) whenLine(list []reading, n int, today colony.Date) string {
	last := list[len(list)-1]
	where := hiveOrNone(last.hive)
	switch {
	case q.Pick == index.First:
		return "First on " + longDate(list[0].day) + ", " + hiveOrNone(list[0].hive)
	case n == 1:
		return fmt.Sprintf("On %s, %s ago, %s", longDate(last.day), amount(today.Sub(last.day), "day"), where)
	}
	return fmt.Sprintf("%s, last on %s, %s ago, %s", amount(n, "time"), longDate(last.day), amount(today.Sub(last.day), "day"), where)
}

// byHive divides the hits by hive, in the order of the hives' names.
func byHive(list []reading) [][]reading {
	at := map[string]int{}
	var out [][]reading
	for _, h := range list {
		i, ok := at[h.hive]
		if !ok {
			i, at[h.hive] = len(out), len(out)
			out = append(out, nil)
		}
		out[i] = append(out[i], h)
	}
	slices.SortFunc(out, func(a, b []reading) int { return colony.CompareHives(a[0].hive, b[0].hive) })
	return out
}

func hivesLine(groups []index.Group) string {
	var parts []string
	for _, g := range groups {
		parts = append(parts, fmt.Sprintf("%s (%s, last on %s)", hiveOrNone(g.Key), amount(g.Count, "time"), longDate(g.Last)))
	}
	return strings.Join(parts, ", ")
}

func eachLine(list []reading) string {
	var parts []string
	for _, h := range list {
		parts = append(parts, fmt.Sprintf("%d: %s, %s", h.day.Year, longDate(h.day), hiveOrNone(h.hive)))
	}
	return strings.Join(parts, "; ")
}

// gapsLine says for each hive how many days lie between its hits.
func gapsLine(list []reading) string {
	var parts []string
	for _, of := range byHive(list) {
		var gaps []int
		longest := 0
		for i := 1; i < len(of); i++ {
			gap := of[i].day.Sub(of[i-1].day)
			if gap == 0 {
				continue // two notes of one day
			}
			if gaps = append(gaps, gap); gap > of[longest+1].day.Sub(of[longest].day) {
				longest = i - 1
			}
		}
		if len(gaps) == 0 {
			parts = append(parts, hiveOrNone(of[0].hive)+": once only, on "+longDate(of[0].day))
			continue
		}
		slices.Sort(gaps)
		n := len(gaps)
		median := float64(gaps[(n-1)/2]+gaps[n/2]) / 2
		parts = append(parts, fmt.Sprintf("%s: median %s days, %d to %d; longest %s, %s to %s", hiveOrNone(of[0].hive), decimal(median), gaps[0], gaps[n-1],
			amount(gaps[n-1], "day"), longDate(of[longest].day), longDate(of[longest+1].day)))
	}
	return strings.Join(parts, "; ")
}

// reading is an inspection that was found, with the topic's value in it, if
// there is a topic.
type reading struct {
	hive  string
	day   colony.Date
	said  bool // there is a value
	value float64
	unit  string
	text  string // the value where it is no number
}

// readings takes the values that the index gives; t may be nil.
func (t *topic) readings(list []index.Reading) []reading {
	out := make([]reading, 0, len(list))
	for _, in := range list {
		r := reading{hive: in.Hive, day: in.Day, said: in.Value != ""}
		if t != nil {
			r.unit = t.unit
		}
		r.add(in.Value)
		out = append(out, r)
	}
	return out
}

// add adds a value as the record writes it.
func (r *reading) add(value string) {
	n, err := strconv.ParseFloat(value, 64)
	if err != nil {
		r.text = value
		return
	}
	r.value += n
}

// readingsOf takes the values from the records of hits.
func (q *asked) readingsOf(hits []index.Hit) []reading {
	var out []reading
	for _, h := range hits {
		r := reading{hive: h.Hive, day: h.Day}
		if q.topic != nil {
			ins := &h.Record.Read
			if len(h.Record.Corrections) > 0 {
				corrected := h.Record.Inspection()
				ins = &corrected
			}
			q.topic.valueIn(ins, sameBars(h.Leaves), &r)
		}
		out = append(out, r)
	}
	return out
}

// sameBars reports of a leaf whether it is of the bars that a hit is about.
func sameBars(leaves []colony.Leaf) func(path string) bool {
	bars := map[string]bool{}
	for _, leaf := range leaves {
		if bar := barOf(leaf.Path); bar != "" {
			bars[bar] = true
		}
	}
	return func(path string) bool {
		bar := barOf(path)
		return bar == "" || len(bars) == 0 || bars[bar]
	}
}

// barOf is the number in bars.4.eggs, "" where a leaf is of no bar.
func barOf(path string) string {
	rest, ofBar := strings.CutPrefix(path, "bars.")
	if !ofBar {
		return ""
	}
	bar, _, _ := strings.Cut(rest, ".")
	return bar
}

func (r reading) String() string {
	if r.text != "" {
		return oneLine(r.text)
	}
	return strings.TrimSpace(quantity(r.value, r.unit))
}

// quantity is a number with its unit, "1 bar" and "2 bars" for "bar(s)".
func quantity(v float64, unit string) string {
	if v == 1 {
		unit = strings.ReplaceAll(unit, "(s)", "")
	}
	return strconv.FormatFloat(v, 'g', 6, 64) + " " + strings.TrimSpace(strings.ReplaceAll(unit, "(s)", "s"))
}

// measured answers with the topic's values: a sum of deeds, the greatest or
// least, or the readings, the latest first.
func (q *asked) measured(list []reading) string {
	values := slices.DeleteFunc(slices.Clone(list), func(r reading) bool { return !r.said })
	switch {
	case len(values) == 0:
		return ""
	case q.topic.adds && !q.extreme() && (q.form == asksMost || q.form == asksLeast || q.form == asksHives):
		return sumsByHive(values, q.form == asksLeast)
	case q.topic.adds && !q.extreme():
		return sums(values) + ", " + q.span(list, len(list))
	case q.topic.text():
		last := values[len(values)-1]
		return fmt.Sprintf("%s%s, %s, on %s", q.topic.before(), last, hiveOrNone(last.hive), longDate(last.day))
	}
	slices.Reverse(values)
	var parts []string
	for _, r := range values[:min(5, len(values))] {
		parts = append(parts, fmt.Sprintf("%s on %s (%s)", r, longDate(r.day), hiveOrNone(r.hive)))
	}
	if more := len(values) - 5; more > 0 {
		parts = append(parts, fmt.Sprintf("and %d before", more))
	}
	return strings.Join(parts, "; ")
}

// text reports whether the values are words, or numbers that only name.
func (t *topic) text() bool { return t.unit == "" && t.unitsAt == "" }

func (t *topic) before() string {
	if t.paths[0] == "queen.bar" {
		return "bar "
	}
	return ""
}

// sums adds values up, those of one unit.
func sums(values []reading) string {
	total := map[string]float64{}
	var units []string
	for _, r := range values {
		if _, ok := total[r.unit]; !ok {
			units = append(units, r.unit)
		}
		total[r.unit] += r.value
	}
	var parts []string
	for _, unit := range units {
		parts = append(parts, quantity(total[unit], unit))
	}
	return strings.Join(parts, " and ")
}

func sumsByHive(values []reading, leastFirst bool) string {
	of := map[string][]reading{}
	sum := map[string]float64{}
	var names []string
	for _, r := range values {
		if of[r.hive] == nil {
			names = append(names, r.hive)
		}
		of[r.hive] = append(of[r.hive], r)
		sum[r.hive] += r.value
	}
	slices.SortStableFunc(names, func(a, b string) int {
		if leastFirst {
			a, b = b, a
		}
		return cmp.Compare(sum[b], sum[a])
	})
	var parts []string
	for _, name := range names {
		parts = append(parts, hiveOrNone(name)+": "+sums(of[name]))
	}
	return strings.Join(parts, ", ")
}

// extremes leaves of the readings those with the greatest or least value, which
// it returns too.
func (q *asked) extremes(list []reading) (of []reading, best string) {
	list = slices.DeleteFunc(slices.Clone(list), func(r reading) bool { return !r.said })
	if len(list) == 0 {
		return nil, ""
	}
	by := func(a, b reading) int { return cmp.Compare(a.value, b.value) }
	bound := slices.MinFunc(list, by)
	if q.form == asksMost {
		bound = slices.MaxFunc(list, by)
	}
	of = slices.DeleteFunc(list, func(r reading) bool { return r.value != bound.value })
	return of, strconv.FormatFloat(bound.value, 'f', -1, 64)
}
