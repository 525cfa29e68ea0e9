package command

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
)

type trendOptions struct {
	scope
	by, svg, png       string
	json, csv, explain bool
	dark, together     bool
}

func (a *app) trend() *cobra.Command {
	var o trendOptions
	var list strings.Builder
	var names []string
	for _, m := range colony.Measures {
		fmt.Fprintf(&list, "  %-12s %s (%s)\n", m.Name, m.What, m.Unit)
		names = append(names, m.Name)
	}
	cmd := &cobra.Command{
		Use:   "trend MEASURE",
		Short: "A measure over time, by hive",
		Long: `Trend prints a measure over the inspections of each hive, and in words what the
values carry: a robust slope where there are enough of them and they rise or
fall by more than chance, and nothing where not. An inspection that did not say
is a gap, never a zero.

The measures:
` + list.String(),
		Example: `  barwise trend mite_drop --hive orchard
  barwise trend temper --by month
  barwise trend brood_bars --from 2026-03-01 --csv
  barwise trend mite_drop --svg mites.svg --png mites.png`,
		Args:      wants(1, 1, "MEASURE"),
		ValidArgs: names,
		RunE:      func(_ *cobra.Command, args []string) error { return a.runTrend(args[0], o) },
	}
	o.register(a, cmd)
	f := cmd.Flags()
	f.StringVar(&o.by, "by", "", "gather by `PERIOD`: week, month or season")
	f.StringVar(&o.svg, "svg", "", "draw it into `FILE` as SVG")
	f.StringVar(&o.png, "png", "", "draw it into `FILE` as PNG")
	f.BoolVar(&o.dark, "dark", false, "draw on dark paper")
	f.BoolVar(&o.together, "together", false, "all hives as one")
	f.BoolVar(&o.json, "json", false, "print JSON Lines, one hive a line")
	f.BoolVar(&o.csv, "csv", false, "print a table: hive, day, value and its range")
	f.BoolVar(&o.explain, "explain", false, "how the trend was worked out")
	cobra.CheckErr(cmd.RegisterFlagCompletionFunc("by", cobra.FixedCompletions([]string{"week", "month", "season"}, cobra.ShellCompDirectiveNoFileComp)))
	return cmd
}

// hiveTrend is the course of a measure in one hive.
type hiveTrend struct {
	Hive    string          `json:"hive"`
	Measure string          `json:"measure"`
	Unit    string          `json:"unit"`
	Says    string          `json:"says"`
	Samples []colony.Sample `json:"samples"`
	trend   colony.Trend
	gap     int  // days between two values over which a line is not drawn
	all     bool // of all hives as one
}

// head names whose trend it is.
func (t hiveTrend) head() string {
	if t.all {
		return "all hives"
	}
	return "hive " + oneLine(t.Hive)
}

func (a *app) runTrend(name string, o trendOptions) error {
	m, err := colony.MeasureNamed(strings.ReplaceAll(name, "-", "_"))
	if err != nil {
		return wrongUse("%w", err)
	}
	when, err := o.period()
	if err != nil {
		return err
	}
	return a.withRecords(func(s *index.Store) error {
		if err := knownHive(s, hiveNamed(o.hive)); err != nil {
			return err
		}
		ap, err := loadApiary(s, hiveNamed(o.hive))
		if err != nil {
			return err
		}
		trends, err := ap.trends(m, when, o.by, o.together)
		if err != nil {
			return wrongUse("--by: %w", err)
		}
		if len(trends) == 0 {
			return undone("no inspection says anything of %s (%s)", m.Name, m.What)
		}
		if err := a.drawTrends(trends, m, o); err != nil {
			return err
		}
		switch {
		case o.json:
			return writeJSONLines(a.out, trends)
		case o.csv:
			return printTrendTable(a.out, trends)
		}
		return a.printTrends(trends, m, o.explain)
	})
}

// trends follows the measure through each hive that speaks of it, or through
// all of them as one.
func (ap *apiary) trends(m colony.Measure, when period, by string, together bool) ([]hiveTrend, error) {
	var out []hiveTrend
	var all []colony.Sample
	for _, name := range ap.names() {
		samples := slices.DeleteFunc(m.Series(ap.hives[name], ap.settings), func(s colony.Sample) bool { return !when.holds(s.On) })
		all = append(all, samples...)
		if together {
			continue
		}
		t, err := trendOf(name, m, samples, by)
		if err != nil {
			return nil, err
		}
		if len(t.Samples) > 0 {
			out = append(out, t)
		}
	}
	if !together || len(all) == 0 {
		return out, nil
	}
	slices.SortStableFunc(all, func(a, b colony.Sample) int { return a.On.Compare(b.On) })
	t, err := trendOf("all", m, all, by)
	t.all = true
	return []hiveTrend{t}, err
}

func trendOf(name string, m colony.Measure, samples []colony.Sample, by string) (hiveTrend, error) {
	gap := gapDays
	if by != "" {
		var err error
		if samples, err = colony.GroupBy(samples, by); err != nil {
			return hiveTrend{}, err
		}
		gap = map[string]int{"week": gapDays, "month": 62, "season": 184}[by]
	}
	points := colony.Points(samples)
	t := colony.TrendOf(points)
	says := t.Says(m.Unit)
	if vague := len(samples) - len(points); vague > 0 {
		says += fmt.Sprintf("; %s too vague to go by", amount(vague, "value"))
	}
	return hiveTrend{Hive: name, Measure: m.Name, Unit: m.Unit, Says: says, Samples: samples, trend: t, gap: gap}, nil
}

// drawTrends writes the images that were asked for.
func (a *app) drawTrends(trends []hiveTrend, m colony.Measure, o trendOptions) error {
	th := light
	if o.dark {
		th = dark
	}
	d := chart(trends, m.What, th)
	for _, image := range []struct {
		file  string
		write func(drawing, io.Writer) error
	}{{o.svg, drawing.writeSVG}, {o.png, drawing.writePNG}} {
		if image.file == "" {
			continue
		}
		if err := newFile(image.file, func(out io.Writer) error { return image.write(d, out) }); err != nil {
			return err
		}
		fmt.Fprintln(a.err, "Drawn: "+shown(image.file))
	}
	return nil
}

// printTrends prints a line a value with a bar as long as the value, on one
// scale for all hives, and what it comes to; then all of it as a plot.
func (a *app) printTrends(trends []hiveTrend, m colony.Measure, explain bool) error {
	out, style := guard{a.out}, stylesFor(a.out)
	most := 0.0
	for _, t := range trends {
		for _, s := range t.Samples {
			most = math.Max(most, s.Value.Best)
		}
	}
	for _, t := range trends {
		fmt.Fprintf(out, "%s, %s\n", style.head.Render(t.head()), m.What)
		for _, s := range t.Samples {
			fmt.Fprintf(out, "  %s  %-*s %s%s\n", s.On, trendColumns, strings.Repeat("▇", barLength(s.Value.Best, most)), s.Value, gathered(s))
		}
		fmt.Fprintf(out, "  %s\n\n", t.Says)
		if explain {
			fmt.Fprintln(out, explained(t.trend.Explain(m.What, m.Unit), a.width()))
		}
	}
	width := 78
	if w := a.width(); w > 0 {
		width = min(w, 110)
	}
	return printPlot(out, trends, m.What, width)
}

// gathered says of how many inspections a value is the median.
func gathered(s colony.Sample) string {
	if s.Count < 2 {
		return ""
	}
	return fmt.Sprintf(", %d inspections", s.Count)
}

// trendColumns is the length of the longest bar.
const trendColumns = 32

func barLength(value, most float64) int {
	if most == 0 || value <= 0 {
		return 0
	}
	return max(1, int(math.Round(trendColumns*value/most)))
}

func printTrendTable(out io.Writer, trends []hiveTrend) error {
	rows := [][]string{{"hive", "day", trends[0].Measure, "low", "high"}}
	for _, t := range trends {
		for _, s := range t.Samples {
			rows = append(rows, []string{oneLine(t.Hive), s.On.String(), decimal(s.Value.Best), decimal(s.Value.Low), decimal(s.Value.High)})
		}
	}
	w := csv.NewWriter(out)
	w.UseCRLF = true // RFC 4180
	return w.WriteAll(rows)
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
