package command

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"
)

// signs are the marks of the hives in a plot, in their order; a star is where
// two meet.
var signs = []rune("ox+#@%&=")

const meeting = '*'

// plotRows is about the height of a terminal plot without its axis: it is fitted
// to the ticks, so that each stands at its value.
const plotRows = 12

// printPlot draws the trends into a text of the given width, with axes: the
// values as they are, no line between them.
func printPlot(out io.Writer, trends []hiveTrend, what string, width int) error {
	s := scaleOf(trends)
	values := valueTicks(s.low, s.high)
	s.low, s.high = min(s.low, values[0].at), max(s.high, values[len(values)-1].at)
	margin := 0
	for _, v := range values {
		margin = max(margin, utf8.RuneCountInString(v.label))
	}
	columns := max(20, width-margin-5)
	steps := len(values) - 1
	rows := max(1, plotRows/steps)*steps + 1
	grid := make([][]rune, rows)
	for i := range grid {
		grid[i] = []rune(strings.Repeat(" ", columns))
	}
	row := func(v float64) int {
		return rows - 1 - int(math.Round((v-s.low)/(s.high-s.low)*float64(rows-1)))
	}
	column := func(day float64) int {
		return int(math.Round((day - dayNumber(s.first)) / math.Max(1, float64(s.last.Sub(s.first))) * float64(columns-1)))
	}
	for i, t := range trends {
		for _, p := range t.Samples {
			cell := &grid[row(p.Value.Best)][column(dayNumber(p.On))]
			sign := signs[i%len(signs)]
			if *cell != ' ' && *cell != sign {
				sign = meeting
			}
			*cell = sign
		}
	}
	labels := map[int]string{}
	for _, v := range values {
		labels[row(v.at)] = v.label
	}
	fmt.Fprintf(out, "  %s\n", heads(what, trends[0].Unit))
	for i, line := range grid {
		edge := "│"
		if labels[i] != "" {
			edge = "┤"
		}
		fmt.Fprintf(out, "  %*s %s%s\n", margin, labels[i], edge, strings.TrimRight(string(line), " "))
	}
	axis, below := []rune(strings.Repeat("─", columns)), []rune(strings.Repeat(" ", columns+12))
	end := -1
	for _, t := range timeTicks(s.first, s.last, columns/9) {
		at := column(t.at)
		if at <= end || at+utf8.RuneCountInString(t.label) > columns+8 {
			continue // no room beside the label before
		}
		axis[at] = '┬'
		copy(below[at:], []rune(t.label))
		end = at + utf8.RuneCountInString(t.label)
	}
	fmt.Fprintf(out, "  %*s └%s\n  %*s  %s\n", margin, "", string(axis), margin, "", strings.TrimRight(string(below), " "))
	_, err := fmt.Fprintln(out, "  "+legend(trends))
	return err
}

func legend(trends []hiveTrend) string {
	var parts []string
	for i, t := range trends {
		parts = append(parts, string(signs[i%len(signs)])+" "+oneLine(t.Hive))
	}
	if len(trends) > 1 {
		parts = append(parts, string(meeting)+" several")
	}
	return strings.Join(parts, "   ")
}
