package command

import (
	"bufio"
	"errors"
	"fmt"
	"math"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

type findOptions struct {
	scope
	limit       int
	sort        string
	json, plain bool
}

func (a *app) find() *cobra.Command {
	var o findOptions
	cmd := &cobra.Command{
		Use:   "find WORDS...",
		Short: "Find it again in the words of the trade",
		Long: `Find looks in everything that was taken in, waiting or confirmed, and prints
the newest first: the hive, the date, the bar, and the words as they were said.
The question is read with the same rules as a note, so that "chalkbrood" does
not find "no chalkbrood"; what no rule takes is looked for as words. A question
for when, how many or how long is answered in a line, with the evidence below.
How the question was understood is said first; --hive, --from and --to say it
better, and --plain looks for nothing but the words.`,
		Example: `  barwise find queen seen orchard hive since april
  barwise find when did I last see eggs in hive 2
  barwise find how much honey did I harvest last year
  barwise find days between queen sightings
  barwise find --hive barn --from 2026-04-01 chalkbrood
  barwise find how many days from the swarm to the first eggs
  barwise find --sort oldest --json drone brood`,
		Args: wants(1, math.MaxInt, "word"),
		RunE: func(_ *cobra.Command, words []string) error { return a.runFind(strings.Join(words, " "), o) },
	}
	o.register(a, cmd)
	f := cmd.Flags()
	f.IntVar(&o.limit, "limit", 20, "print at most `N` hits; 0 for all")
	f.StringVar(&o.sort, "sort", "newest", "print in this `ORDER`: newest first, oldest first, or by hive")
	cobra.CheckErr(cmd.RegisterFlagCompletionFunc("sort", cobra.FixedCompletions([]string{"newest", "oldest", "hive"}, cobra.ShellCompDirectiveNoFileComp)))
	f.BoolVar(&o.plain, "plain", false, "look for the words as they stand, whatever they mean")
	f.BoolVar(&o.json, "json", false, "print JSON Lines: how it was understood and the answer, then one hit a line")
	return cmd
}

func (a *app) runFind(words string, o findOptions) error {
	when, err := o.period()
	if err != nil {
		return err
	}
	order, ok := orders[o.sort]
	if !ok {
		return wrongUse("--sort is newest, oldest or hive, not %q", o.sort)
	}
	if o.limit < 0 {
		return wrongUse("--limit is a number of hits, not %d", o.limit)
	}
	// A question is answered before what it leaves behind is worth cleaning up.
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	return a.withRecords(func(s *index.Store) error {
		parser, hives, err := readerOfQuestions(s)
		if err != nil {
			return err
		}
		q := understand(words, parser, hives, colony.DateOf(a.now()))
		if o.plain {
			q = asked{plain: words}
			q.asWords()
		}
		q.narrow(o.hive, when, o.limit)
		q.Sort = order
		understood := q.String()
		if understood != "" && !o.json {
			fmt.Fprintln(a.err, "Looking for: "+clean(understood))
		}
		r, err := q.reply(s, colony.DateOf(a.now()))
		if err != nil {
			return err
		}
		if r.all == 0 && q.Hive != "" && !slices.Contains(hives, q.Hive) {
			fmt.Fprintf(a.err, "There is no hive %s; there are %s.\n", oneLine(q.Hive), oneLine(some(hives)))
		}
		if o.json {
			return a.printJSON(r, words, understood, o)
		}
		return a.printReply(r, words, o)
	})
}

// readerOfQuestions makes what a question is read with: the parser, while the
// names of the hives are looked up.
func readerOfQuestions(s *index.Store) (parser *parse.Parser, hives []string, err error) {
	made := make(chan error, 1)
	go func() {
		var err error
		parser, err = parserFor(s)
		made <- err
	}()
	hives, err = s.Hives()
	return parser, hives, errors.Join(<-made, err)
}

// some names the first of a list, and how many more there are.
func some(names []string) string {
	const most = 8
	names = slices.SortedFunc(slices.Values(names), colony.CompareHives)
	if more := len(names) - most; more > 0 {
		names = append(names[:most], fmt.Sprintf("%d more", more))
	}
	return strings.Join(names, ", ")
}

// orders are the values of --sort.
var orders = map[string]index.Order{"newest": index.Newest, "oldest": index.Oldest, "hive": index.ByName}

// reply is what the records answer.
type reply struct {
	line string // the answer in a line, "" where there is none
	note string // how it was come by, if not as asked
	hits index.Hits
	all  int // hits that there are, listed or not
}

func (q *asked) replyOf(hits index.Hits) reply {
	r := reply{hits: hits, all: len(hits.Hits)}
	if q.Pick == index.All {
		r.all = max(r.all, hits.Total)
	}
	return r
}

// reply asks the records. What is not found is looked for denied or planned,
// and else as words: silence, denial and intention are three answers.
func (q *asked) reply(s *index.Store, today colony.Date) (reply, error) {
	if q.form == asksSpan {
		return q.spans(s)
	}
	found := q.fromHits
	if q.fromReadings() {
		found = q.reckoned
	}
	if r, err := found(s, today); err != nil || r.all > 0 {
		return r, err
	}
	if len(q.Where) == 0 {
		return reply{}, nil
	}
	for _, other := range []struct {
		words string
		of    func(asked) (asked, bool)
	}{{"Said only to be absent: ", asked.denied}, {"Not done, but planned: ", asked.planned}} {
		turned, ok := other.of(*q)
		if !ok {
			continue
		}
		hits, err := s.Find(turned.Query)
		if err != nil {
			return reply{}, err
		}
		if n := len(hits.Hits); n > 0 {
			return reply{line: fmt.Sprintf("%s%s, %s, last on %s, %s", other.words, strings.Join(turned.said, ", "), amount(hits.Total, "time"),
				longDate(hits.Hits[0].Day), hiveOrNone(hits.Hits[0].Hive))}, nil
		}
	}
	return q.loosely(s, today)
}

// fromReadings reports whether the answer is worked out from days and values
// that stand in the index: no record need be read for it.
func (q *asked) fromReadings() bool {
	return (q.form == asksGaps && q.Per == index.Inspections || q.reckons() || q.extreme()) && (q.topic == nil || q.topic.single())
}

// reckoned answers from all readings, and shows of the hits as many as are
// wanted.
func (q *asked) reckoned(s *index.Store, today colony.Date) (reply, error) {
	path := ""
	if q.topic != nil {
		path = q.topic.paths[0]
	}
	list, err := s.Readings(q.Query, path)
	if err != nil || len(list) == 0 {
		return reply{}, err
	}
	readings := q.topic.readings(list)
	query := q.Query
	if q.extreme() {
		var best string
		if readings, best = q.extremes(readings); best == "" {
			return reply{}, nil
		}
		query.Where = append(slices.Clone(query.Where), index.Clause{is(path, best)})
	}
	query.Limit = q.shown
	hits, err := s.Find(query)
	r := q.replyOf(hits)
	r.line = q.answer(readings, len(readings), nil, today)
	return r, err
}

// fromHits answers from the hits, with values that only the records have.
func (q *asked) fromHits(s *index.Store, today colony.Date) (reply, error) {
	query := q.Query
	query.Bare = q.reckons() && q.shown > 0
	hits, err := s.Find(query)
	if err != nil || len(hits.Hits) == 0 {
		return reply{}, err
	}
	readings := q.readingsOf(hits.Hits)
	if q.extreme() {
		of, best := q.extremes(readings)
		bound, _ := strconv.ParseFloat(best, 64)
		kept := hits.Hits[:0]
		for i, h := range hits.Hits {
			if readings[i].said && readings[i].value == bound {
				kept = append(kept, h)
			}
		}
		hits.Hits, hits.Total, readings = kept, len(kept), of
	}
	r := q.replyOf(hits)
	r.line = q.answer(readings, max(hits.Total, len(readings)), hits.Groups, today)
	if query.Bare { // the evidence is only what is shown
		query.Bare, query.Limit = false, q.shown
		r.hits, err = s.Find(query)
	}
	return r, err
}

// loosely looks for the words of the question, whatever they mean, and where
// nothing has them all, for what was understood of it alone.
func (q *asked) loosely(s *index.Store, today colony.Date) (reply, error) {
	understood := *q
	q.asWords()
	if strings.TrimSpace(q.Words) != "" {
		hits, err := s.Find(q.Query)
		if err != nil || len(hits.Hits) > 0 {
			r := q.replyOf(hits)
			r.note = "Nothing is recorded so; looking for the words."
			return r, err
		}
	}
	if understood.Words == "" {
		return reply{}, nil
	}
	dropped := understood.Words
	understood.Words = ""
	r, err := understood.reply(s, today)
	if r.note == "" {
		r.note = "Nowhere stands “" + clean(dropped) + "” with it; left out."
	}
	return r, err
}

func dayFlag(name, value string) (colony.Date, error) {
	if value == "" {
		return colony.Date{}, nil
	}
	d, err := colony.ParseDate(value)
	if err != nil {
		return d, wrongUse("%s: %w", name, err)
	}
	return d, nil
}

func (a *app) printReply(r reply, words string, o findOptions) error {
	shown := r.shown(o.limit)
	if r.note != "" && len(shown) > 0 {
		fmt.Fprintln(a.err, r.note)
	}
	out := bufio.NewWriter(a.out)
	s := sheet{out: guard{out}, style: stylesFor(a.out), wide: a.width()}
	if r.line != "" {
		line := r.line
		if s.wide > 0 {
			line = ansi.Wordwrap(line, s.wide, "")
		}
		fmt.Fprintln(s.out, s.style.head.Render(line))
	}
	for _, h := range shown {
		s.hit(h)
	}
	if err := out.Flush(); err != nil {
		return err
	}
	if rest := r.all - len(shown); rest > 0 && len(shown) > 0 {
		fmt.Fprintf(a.err, "%d more; --limit 0 prints all\n", rest)
	}
	if len(shown) == 0 {
		return undone("nothing found for %q", clean(words))
	}
	return nil
}

// shown are the hits that are printed.
func (r reply) shown(limit int) []index.Hit {
	if limit > 0 && len(r.hits.Hits) > limit {
		return r.hits.Hits[:limit]
	}
	return r.hits.Hits
}

// printJSON prints a line about the question, and the hits.
func (a *app) printJSON(r reply, words, understood string, o findOptions) error {
	about := struct {
		Question   string `json:"question"`
		Understood string `json:"understood"`
		Answer     string `json:"answer,omitempty"`
		Note       string `json:"note,omitempty"`
		Total      int    `json:"total"` // hits, printed or not
	}{words, understood, r.line, r.note, r.all}
	shown := r.shown(o.limit)
	out := bufio.NewWriter(a.out)
	err := errors.Join(writeJSONLines(out, []any{about}), writeJSONLines(out, shown), out.Flush())
	if err == nil && len(shown) == 0 {
		return undone("nothing found for %q", clean(words))
	}
	return err
}

// hit prints where and when, and below the words with what was found in them
// set off.
func (s sheet) hit(h index.Hit) {
	where := hiveOrNone(h.Hive)
	if h.Bar > 0 {
		where += fmt.Sprintf(", bar %d", h.Bar)
	}
	if h.State == colony.Waiting {
		where += " (waiting for review)"
	}
	fmt.Fprintf(s.out, "%s  %s\n", longDate(h.Day), s.style.head.Render(where))
	for i, q := range h.Quotes {
		if i == 0 || q.Span != h.Quotes[i-1].Span { // one sentence may say it twice
			fmt.Fprintf(s.out, "    “%s”\n", s.marked(q))
		}
	}
}

// marked is the quote in one line, with the words of the hit underlined.
func (s sheet) marked(q index.Quote) string {
	var out strings.Builder
	at := 0
	for _, m := range q.Marks {
		if m[0] < at || m[1] > len(q.Text) {
			continue
		}
		out.WriteString(inline(q.Text[at:m[0]]))
		out.WriteString(s.style.mark.Render(inline(q.Text[m[0]:m[1]])))
		at = m[1]
	}
	out.WriteString(inline(q.Text[at:]))
	return out.String()
}
