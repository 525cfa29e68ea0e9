package command

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
)

type hiveOptions struct {
	on      string
	json    bool
	explain bool
}

func (a *app) hive() *cobra.Command {
	var o hiveOptions
	cmd := &cobra.Command{
		Use:   "hive [NAME]",
		Short: "One colony today, or all of them in a line each",
		Long: `Hive shows what the inspections of one colony come to: its combs as last found,
the evidence of a queen, brood and bees, room, food, mites, and what falls due.
A number is given as a range where what was said leaves one; --explain shows how
each came about and who says so. Without a name every hive gets a line, the one
that most needs a look first.`,
		Example: `  barwise hive orchard
  barwise hive
  barwise hive pond --on 2026-05-20 --explain`,
		Args:              wants(0, 1, "hive"),
		ValidArgsFunction: a.hiveNames,
		RunE:              func(_ *cobra.Command, args []string) error { return a.runHive(args, o) },
	}
	cmd.Flags().StringVar(&o.on, "on", "", "as it looked on `DAY` (default today)")
	cmd.Flags().BoolVar(&o.json, "json", false, "print JSON Lines, one hive a line")
	cmd.Flags().BoolVar(&o.explain, "explain", false, "how each number came about, with its source")
	return cmd
}

func (a *app) runHive(args []string, o hiveOptions) error {
	today, err := a.dayOr(o.on)
	if err != nil {
		return err
	}
	name := ""
	if len(args) > 0 {
		name = hiveNamed(args[0])
	}
	return a.withRecords(func(s *index.Store) error {
		ap, err := loadApiary(s, name)
		if err != nil {
			return err
		}
		all := ap.appraise(today)
		switch {
		case len(all) == 0 && name != "":
			return a.noSuchHive(s, name, today)
		case len(all) == 0:
			return undone("no inspection of a named hive up to %s", today)
		case o.json:
			return writeJSONLines(a.out, all)
		case name == "":
			a.printHives(all, ap, today)
			a.printBuilding(ap, today)
			return nil
		}
		h := hiveSheet{sheet: sheet{out: guard{a.out}, style: stylesFor(a.out), wide: a.width()}}
		h.print(&all[0], ap, o.explain)
		return nil
	})
}

// appraise works out every loaded hive that had been inspected by the day.
func (ap *apiary) appraise(today colony.Date) []colony.Appraisal {
	var all []colony.Appraisal
	for _, name := range ap.names() {
		if history := ap.upTo(name, today); len(history) > 0 {
			all = append(all, colony.Appraise(history, today, ap.settings, ap.answers))
		}
	}
	return all
}

// knownHive fails where a hive is named that no record is about.
func knownHive(s *index.Store, name string) error {
	names, err := s.Hives()
	if err != nil || name == "" || slices.Contains(names, name) {
		return err
	}
	return undone("there is no hive %s; there are %s", clean(name), clean(some(names)))
}

func (a *app) noSuchHive(s *index.Store, name string, today colony.Date) error {
	names, err := s.Hives()
	if err != nil {
		return err
	}
	return undone("no inspection of hive %q up to %s; there are: %s", clean(name), today, clean(strings.Join(names, ", ")))
}

// dayOr reads --on; without it the day is today.
func (a *app) dayOr(text string) (colony.Date, error) {
	if text == "" {
		return colony.DateOf(a.now()), nil
	}
	return dayFlag("--on", text)
}

// printHives prints a line a hive, the one that most needs a look first, with
// small plots of the last twelve months.
func (a *app) printHives(all []colony.Appraisal, of *apiary, today colony.Date) {
	slices.SortStableFunc(all, func(x, y colony.Appraisal) int { return cmp.Compare(urgency(&y, today), urgency(&x, today)) })
	style := stylesFor(a.out)
	out := guard{a.out}
	wide, width := a.width(), 0
	for i := range all {
		width = max(width, ansi.StringWidth(oneLine(all[i].Hive)))
	}
	for i := range all {
		name := oneLine(all[i].Hive)
		plots := strings.Join(sparks(of, all[i].Hive, today), "  ")
		line := style.head.Render(name) + strings.Repeat(" ", width-ansi.StringWidth(name)) + "  " + plots + "  " + inShort(&all[i], style, today)
		if wide > 0 {
			line = ansi.Truncate(line, wide, "…")
		}
		fmt.Fprintln(out, line)
	}
}

// inShort says of a colony what counts most first: a line may be cut off.
func inShort(ap *colony.Appraisal, style styles, today colony.Date) string {
	var parts []string
	for _, c := range ap.Cautions {
		if c.Kind == "disease" {
			parts = append(parts, style.flag.Render("signs of disease: "+oneLine(c.Why)))
		}
	}
	if n := overdue(ap, today); n > 0 {
		parts = append(parts, fmt.Sprintf("%d overdue", n))
	}
	queen := string(ap.Queen.State)
	if !strings.HasPrefix(queen, "queen") {
		queen = "queen: " + queen
	}
	if on := ap.Queen.AsOf; !on.IsZero() && on != ap.Last {
		queen += " on " + longDay(on)
	}
	parts = append(parts, queen)
	if len(ap.Due) > 0 {
		parts = append(parts, "first: "+oneLine(ap.Due[0].What)+", "+longDay(ap.Due[0].On))
	}
	if ap.MiteSays != "" {
		parts = append(parts, "mites: "+ap.Mites.Rate.Range.String()+" on "+longDay(ap.Mites.On))
	}
	return strings.Join(append(parts, "last inspected "+longDay(ap.Last)), "; ")
}

// urgency orders hives for a look: trouble with the queen and signs of disease
// before things overdue. It is an order of this list and no measure of
// anything.
func urgency(ap *colony.Appraisal, today colony.Date) int {
	n := overdue(ap, today)
	switch ap.Queen.State {
	case colony.LayingWorkers, colony.Queenless:
		n += 100
	case colony.NoSign:
		n += 50
	case colony.RaisingQueen, colony.VirginMating:
		n += 10
	}
	for _, c := range ap.Cautions {
		if c.Kind == "disease" {
			n += 200
		}
	}
	return n
}

func overdue(ap *colony.Appraisal, today colony.Date) (n int) {
	for _, d := range ap.Due {
		if isOverdue(d, today) {
			n++
		}
	}
	return n
}

func isOverdue(d colony.DueItem, today colony.Date) bool {
	return cmp.Or(d.Until, d.On).Compare(today) < 0
}

// printBuilding prints how fast the apiary has drawn comb by the month of the
// year, where the inspections tell.
func (a *app) printBuilding(ap *apiary, today colony.Date) {
	var hives [][]colony.Inspection
	for _, name := range ap.names() {
		hives = append(hives, ap.upTo(name, today))
	}
	var months []string
	for _, m := range colony.BuildingCurve(ap.settings, hives...) {
		months = append(months, fmt.Sprintf("%s %s from %s", m.Month, m.Rate, amount(m.Count, "span")))
	}
	if len(months) > 0 {
		fmt.Fprintf(a.out, "comb drawn, all hives by month: %s\n", strings.Join(months, "; "))
	}
}
