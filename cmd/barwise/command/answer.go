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
	{words(`(?:the )?(?:most|highest|greatest|maximum|max|strongest)`), asksMost, false},
	{words(`(?:the )?(?:fewest|lowest|smallest|minimum|min)`), asksLeast, false},
	{words(`how (?:many|much)|number of|amount of|total|yield|in all`), asksMuch, true},
	{regexp.MustCompile(`(?i)^\s*(?:who|(?:which|what) (?:hives?|colony|colonies))\b`), asksHives, true},
	{words(`when`), asksWhen, false},
}

func cutForm(question string) (rest string, f form) {
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

// answer is the line that answers the question; "" where the hits say it all.
func (q *asked) answer(hits index.Hits, today colony.Date) string {
	if len(hits.Hits) == 0 {
		return ""
	}
	list := slices.Clone(hits.Hits)
	n := max(hits.Total, len(list))
	if q.Pick != index.All {
		n = len(list)
	}
	slices.SortStableFunc(list, func(a, b index.Hit) int { return a.Day.Compare(b.Day) })
	switch {
	case q.form == asksGaps:
		return gapsLine(list)
	case q.form == asksAgo:
		last := list[len(list)-1]
		return fmt.Sprintf("%s ago: last on %s, %s", amount(today.Sub(last.Day), "day"), longDate(last.Day), hiveOrNone(last.Hive))
	case q.form == asksEach:
		return eachLine(list)
	case q.form == asksNumber:
		return amount(len(hits.Groups), "hive") + ": " + hivesLine(hits.Groups)
	case q.form == asksHives && q.topic == nil:
		return hivesLine(hits.Groups)
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
func (q *asked) span(list []index.Hit, n int) string {
	first, last := list[0].Day, list[len(list)-1].Day
	switch {
	case n > len(list):
		return "last on " + longDate(last)
	case first == last:
		return "on " + longDate(first)
	}
	return longDate(first) + " to " + longDate(last)
}

func (q *asked) whenLine(list []index.Hit, n int, today colony.Date) string {
	last := list[len(list)-1]
	where := hiveOrNone(last.Hive)
	switch {
	case q.Pick == index.First:
		return "First on " + longDate(list[0].Day) + ", " + hiveOrNone(list[0].Hive)
	case n == 1:
		return fmt.Sprintf("On %s, %s ago, %s", longDate(last.Day), amount(today.Sub(last.Day), "day"), where)
	}
	return fmt.Sprintf("%s, last on %s, %s ago, %s", amount(n, "time"), longDate(last.Day), amount(today.Sub(last.Day), "day"), where)
}

// byHive divides the hits by hive, in the order of the hives' names.
func byHive(list []index.Hit) [][]index.Hit {
	at := map[string]int{}
	var out [][]index.Hit
	for _, h := range list {
		i, ok := at[h.Hive]
		if !ok {
			i, at[h.Hive] = len(out), len(out)
			out = append(out, nil)
		}
		out[i] = append(out[i], h)
	}
	slices.SortFunc(out, func(a, b []index.Hit) int { return colony.CompareHives(a[0].Hive, b[0].Hive) })
	return out
}

func hivesLine(groups []index.Group) string {
	var parts []string
	for _, g := range groups {
		parts = append(parts, fmt.Sprintf("%s (%s, last on %s)", hiveOrNone(g.Key), amount(g.Count, "time"), longDate(g.Last)))
	}
	return strings.Join(parts, ", ")
}

func eachLine(list []index.Hit) string {
	var parts []string
	for _, h := range list {
		parts = append(parts, fmt.Sprintf("%d: %s, %s", h.Day.Year, longDate(h.Day), hiveOrNone(h.Hive)))
	}
	return strings.Join(parts, "; ")
}

// gapsLine says for each hive how many days lie between its hits.
func gapsLine(list []index.Hit) string {
	var parts []string
	for _, of := range byHive(list) {
		var gaps []int
		longest := 0
		for i := 1; i < len(of); i++ {
			gap := of[i].Day.Sub(of[i-1].Day)
			if gap == 0 {
				continue // two notes of one day
			}
			if gaps = append(gaps, gap); gap > of[longest+1].Day.Sub(of[longest].Day) {
				longest = i - 1
			}
		}
		if len(gaps) == 0 {
			parts = append(parts, hiveOrNone(of[0].Hive)+": once only, on "+longDate(of[0].Day))
			continue
		}
		slices.Sort(gaps)
		n := len(gaps)
		median := float64(gaps[(n-1)/2]+gaps[n/2]) / 2
		parts = append(parts, fmt.Sprintf("%s: median %s days, %d to %d; longest %s, %s to %s", hiveOrNone(of[0].Hive), decimal(median), gaps[0], gaps[n-1],
			amount(gaps[n-1], "day"), longDate(of[longest].Day), longDate(of[longest+1].Day)))
	}
	return strings.Join(parts, "; ")
}

// reading is a topic's value in a hit.
type reading struct {
	hit   index.Hit
	value float64
	unit  string
	text  string
}

func (q *asked) readings(list []index.Hit) []reading {
	var out []reading
	for _, h := range list {
		ins := &h.Record.Read
		if len(h.Record.Corrections) > 0 {
			corrected := h.Record.Inspection()
			ins = &corrected
		}
		bars := map[string]bool{}
		for _, leaf := range h.Leaves {
			if bar := barOf(leaf.Path); bar != "" {
				bars[bar] = true
			}
		}
		keep := func(path string) bool {
			bar := barOf(path)
			return bar == "" || len(bars) == 0 || bars[bar]
		}
		if v, unit, text, ok := q.topic.valueIn(ins, keep); ok {
			out = append(out, reading{h, v, unit, text})
		}
	}
	return out
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
func (q *asked) measured(list []index.Hit) string {
	values := q.readings(list)
	switch {
	case len(values) == 0:
		return ""
	case q.topic.adds && !q.extreme() && (q.form == asksMost || q.form == asksLeast || q.form == asksHives):
		return sumsByHive(values, q.form == asksLeast)
	case q.topic.adds && !q.extreme():
		return sums(values) + ", " + q.span(list, len(list))
	case q.topic.text():
		last := values[len(values)-1]
		return fmt.Sprintf("%s%s, %s, on %s", q.topic.before(), last, hiveOrNone(last.hit.Hive), longDate(last.hit.Day))
	}
	slices.Reverse(values)
	var parts []string
	for _, r := range values[:min(5, len(values))] {
		parts = append(parts, fmt.Sprintf("%s on %s (%s)", r, longDate(r.hit.Day), hiveOrNone(r.hit.Hive)))
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
		if of[r.hit.Hive] == nil {
			names = append(names, r.hit.Hive)
		}
		of[r.hit.Hive] = append(of[r.hit.Hive], r)
		sum[r.hit.Hive] += r.value
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

// keepExtremes leaves of the hits those with the greatest or least reading.
func (q *asked) keepExtremes(hits *index.Hits) {
	if !q.extreme() {
		return
	}
	values := q.readings(hits.Hits)
	if len(values) == 0 {
		return
	}
	best := values[0].value
	for _, r := range values {
		if q.form == asksMost {
			best = max(best, r.value)
		} else {
			best = min(best, r.value)
		}
	}
	hits.Hits = hits.Hits[:0]
	for _, r := range values {
		if r.value == best {
			hits.Hits = append(hits.Hits, r.hit)
		}
	}
	hits.Total = len(hits.Hits)
}
