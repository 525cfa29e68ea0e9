package command

import (
	"bufio"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
)

type findOptions struct {
	hive, from, to string
	limit          int
	json           bool
}

func (a *app) find() *cobra.Command {
	var o findOptions
	cmd := &cobra.Command{
		Use:   "find WORDS...",
		Short: "Find it again in the words of the trade",
		Long: `Find looks in everything that was taken in, waiting or confirmed, and prints
the newest first: the hive, the date, the bar, and the words as they were said.
The question is read with the same rules as a note, so that "chalkbrood" does
not find "no chalkbrood"; what no rule takes is looked for as words.`,
		Example: `  barwise find queen seen orchard hive since april
  barwise find when did I last see eggs in hive 2
  barwise find --hive barn --from 2026-04-01 chalkbrood
  barwise find --json drone brood`,
		Args: wants(1, many, "word"),
		RunE: func(_ *cobra.Command, words []string) error { return a.runFind(strings.Join(words, " "), o) },
	}
	f := cmd.Flags()
	f.StringVar(&o.hive, "hive", "", "only hive `NAME`")
	f.StringVar(&o.from, "from", "", "only from `DAY` on, such as 2026-04-01")
	f.StringVar(&o.to, "to", "", "only up to `DAY`")
	f.IntVar(&o.limit, "limit", 20, "print at most `N` hits; 0 for all")
	f.BoolVar(&o.json, "json", false, "print JSON Lines, one hit a line")
	cobra.CheckErr(cmd.RegisterFlagCompletionFunc("hive", a.hiveNames))
	return cmd
}

func (a *app) runFind(words string, o findOptions) error {
	from, err := dayFlag("--from", o.from)
	if err != nil {
		return err
	}
	to, err := dayFlag("--to", o.to)
	if err != nil {
		return err
	}
	if o.limit < 0 {
		return wrongUse("--limit is a number of hits, not %d", o.limit)
	}
	return a.withRecords(func(s *index.Store) error {
		parser, err := parserFor(s)
		if err != nil {
			return err
		}
		hives, err := s.Hives()
		if err != nil {
			return err
		}
		q := understand(words, parser, hives, colony.DateOf(a.now()))
		q.narrow(o.hive, period{from, to}, o.limit)
		if text := q.String(); text != "" {
			fmt.Fprintln(a.err, "Looking for: "+clean(text))
		}
		hits, err := s.Find(q.Query)
		if err != nil {
			return err
		}
		if len(hits.Hits) == 0 && len(q.Where) > 0 {
			q.asWords()
			fmt.Fprintln(a.err, "Nothing is recorded so; looking for the words.")
			if hits, err = s.Find(q.Query); err != nil {
				return err
			}
		}
		if len(hits.Hits) == 0 {
			return undone("nothing found for %q", clean(words))
		}
		return a.printHits(hits, o)
	})
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

func (a *app) printHits(hits index.Hits, o findOptions) error {
	out := bufio.NewWriter(a.out)
	if o.json {
		if err := writeJSONLines(out, hits.Hits); err != nil {
			return err
		}
		return out.Flush()
	}
	s := sheet{out: guard{out}, style: stylesFor(a.out), wide: a.width()}
	for _, h := range hits.Hits {
		s.hit(h)
	}
	if err := out.Flush(); err != nil {
		return err
	}
	if rest := hits.Total - len(hits.Hits); rest > 0 && o.limit > 0 {
		fmt.Fprintf(a.err, "%d more; --limit 0 prints all\n", rest)
	}
	return nil
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
	fmt.Fprintf(s.out, "%s  %s\n", h.Day.Time().Format("Mon 2 Jan 2006"), s.style.head.Render(where))
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
