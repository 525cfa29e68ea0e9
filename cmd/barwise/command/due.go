package command

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
)

type dueOptions struct {
	on, hive, ics           string
	done, drop, later, till string
	json, all               bool
}

func (a *app) due() *cobra.Command {
	var o dueOptions
	cmd := &cobra.Command{
		Use:   "due",
		Short: "What falls due, over all hives",
		Long: `Due lists what falls due, the earliest first: what you said you would do, and
what follows from queen cells, swarms, treatments, counts and the season, each
with why. A later inspection that shows it done closes it by itself; else close
it by its code. --ics writes a calendar whose entries keep their identity, so
that importing it again updates them and takes back what is done.`,
		Example: `  barwise due
  barwise due --done 3fa2c
  barwise due --later 3fa2c --until 2026-05-30
  barwise due --ics bees.ics`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error { return a.runDue(o) },
	}
	a.hiveFlag(cmd, &o.hive, "only hive `NAME`")
	f := cmd.Flags()
	f.StringVar(&o.on, "on", "", "as of `DAY` (default today)")
	f.StringVar(&o.done, "done", "", "mark the item of that `CODE` done")
	f.StringVar(&o.drop, "drop", "", "drop the item of that `CODE`")
	f.StringVar(&o.later, "later", "", "put the item of that `CODE` off, to --until")
	f.StringVar(&o.till, "until", "", "the new `DAY` of --later")
	f.StringVar(&o.ics, "ics", "", "write a calendar to `FILE`; - is standard output")
	f.BoolVar(&o.json, "json", false, "print JSON Lines, one item a line")
	f.BoolVar(&o.all, "all", false, "closed items too, with how they were closed")
	return cmd
}

func (a *app) runDue(o dueOptions) error {
	today, err := a.dayOr(o.on)
	if err != nil {
		return err
	}
	answer, code, err := o.answer(today)
	if err != nil {
		return err
	}
	if code != "" {
		return a.withStore(func(s *index.Store) error { return a.answerDue(s, answer, code, today) })
	}
	return a.withRecords(func(s *index.Store) error {
		if err := knownHive(s, hiveNamed(o.hive)); err != nil {
			return err
		}
		ap, err := loadApiary(s, hiveNamed(o.hive))
		if err != nil {
			return err
		}
		items := ap.due(today)
		if o.ics != "" {
			return a.writeCalendar(o.ics, items, today)
		}
		if !o.all {
			items = colony.OpenItems(items)
		}
		if len(items) == 0 {
			return undone("nothing falls due as of %s", today)
		}
		if o.json {
			return writeJSONLines(a.out, items)
		}
		a.printDue(items, today)
		return nil
	})
}

// afterReview bounds what the end of a review tells: items that fall due within
// so many days, and so many of them.
const (
	afterReviewDays  = 14
	afterReviewItems = 10
)

// dueAfterReview tells what falls due soon, once the review is left.
func (a *app) dueAfterReview(s *index.Store) error {
	ap, err := loadApiary(s, "")
	if err != nil {
		return err
	}
	today := colony.DateOf(a.now())
	last := today.AddDays(afterReviewDays)
	items := slices.DeleteFunc(colony.OpenItems(ap.due(today)), func(d colony.DueItem) bool { return d.On.Compare(last) > 0 })
	if len(items) == 0 {
		return nil
	}
	fmt.Fprintf(a.out, "Due by %s:\n", fullDate(last))
	a.printDue(items[:min(len(items), afterReviewItems)], today)
	if more := len(items) - afterReviewItems; more > 0 {
		fmt.Fprintf(a.out, "and %d more: %s\n", more, a.suggest("due", ""))
	}
	return nil
}

// due lists the items of all hives that were loaded, by day.
func (ap *apiary) due(today colony.Date) []colony.DueItem {
	var out []colony.DueItem
	for _, name := range ap.names() {
		out = append(out, colony.Due(ap.upTo(name, today), today, ap.settings, ap.answers)...)
	}
	colony.SortDue(out)
	return out
}

func (a *app) printDue(items []colony.DueItem, today colony.Date) {
	out, style, wide := guard{a.out}, stylesFor(a.out), a.width()
	names := 0
	for _, d := range items {
		names = max(names, ansi.StringWidth(oneLine(d.Hive)))
	}
	below := "\n" + strings.Repeat(" ", names+26)
	for _, d := range items {
		what := oneLine(d.What)
		switch {
		case d.Status != colony.StatusOpen:
			what += fmt.Sprintf("  [%s: %s]", d.Status, oneLine(d.Closed))
		case isOverdue(d, today):
			what += ", " + style.flag.Render("overdue")
		}
		lines := what + "\n" + oneLine(d.Why)
		if wide > len(below)+20 {
			lines = ansi.Wordwrap(lines, wide-len(below)+1, "")
		}
		fmt.Fprintf(out, "%s  %-15s  %s  %s\n", style.topic.Render(shortCode(d)), longDate(d.On),
			style.head.Render(fmt.Sprintf("%-*s", names, oneLine(d.Hive))), strings.ReplaceAll(lines, "\n", below))
	}
}

// shortCode names an item for --done: the opening of its calendar identifier,
// which is the same on every machine.
func shortCode(d colony.DueItem) string { return d.UID()[:5] }

// answer is what the flags say to an item, and its code, "" for nothing.
func (o dueOptions) answer(today colony.Date) (colony.Answer, string, error) {
	answer := colony.Answer{On: today}
	said, code := 0, ""
	for _, s := range []struct{ say, code string }{{"done", o.done}, {"drop", o.drop}, {"later", o.later}} {
		if s.code != "" {
			answer.Say, code = s.say, s.code
			said++
		}
	}
	if said > 1 {
		return answer, "", wrongUse("--done, --drop and --later: one at a time")
	}
	if (o.later == "") != (o.till == "") {
		return answer, "", wrongUse("--later CODE and --until DAY go together")
	}
	until, err := dayFlag("--until", o.till)
	if err != nil {
		return answer, "", err
	}
	answer.Until = until
	return answer, code, nil
}

func (a *app) answerDue(s *index.Store, answer colony.Answer, code string, today colony.Date) error {
	ap, err := loadApiary(s, "")
	if err != nil {
		return err
	}
	var meant []colony.DueItem
	for _, d := range ap.due(today) {
		if strings.HasPrefix(d.UID(), strings.ToLower(code)) {
			meant = append(meant, d)
		}
	}
	if len(meant) != 1 {
		return undone("%d items have the code %q; barwise due lists the codes", len(meant), clean(code))
	}
	answer.ID = meant[0].ID
	if err := s.SetSetting(settingAnswers, append(ap.answers, answer)); err != nil {
		return err
	}
	fmt.Fprintf(a.out, "%s: %s, hive %s\n", answer.Say, oneLine(meant[0].What), oneLine(meant[0].Hive))
	return nil
}

func (a *app) writeCalendar(file string, items []colony.DueItem, today colony.Date) error {
	text := calendar(items, today, a.now())
	if file == "-" {
		_, err := io.WriteString(a.out, text)
		return err
	}
	if err := replaceFile(file, text); err != nil {
		return fmt.Errorf("%s was not written: %w", shown(file), err)
	}
	return nil
}
