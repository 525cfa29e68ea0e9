package tui

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// fit makes a painted text exactly width columns wide: longer ones end in "…".
func fit(text string, width int) string {
	w := ansi.StringWidth(text)
	switch {
	case w == width:
		return text
	case w < width:
		return text + strings.Repeat(" ", width-w)
	case width <= 0:
		return ""
	}
	text = ansi.Truncate(text, width, "…")
	return text + strings.Repeat(" ", max(width-ansi.StringWidth(text), 0))
}

// flow lays items out in lines no wider than width.
func flow(items []string, gap string, width int) []string {
	var lines []string
	line := ""
	for _, item := range items {
		switch {
		case line == "":
			line = item
		case ansi.StringWidth(line)+len(gap)+ansi.StringWidth(item) > width:
			lines = append(lines, line)
			line = item
		default:
			line += gap + item
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	for i := range lines {
		lines[i] = ansi.Truncate(lines[i], width, "…")
	}
	return lines
}

// wrapText breaks a clean text into lines no wider than width.
func wrapText(text string, width int) []string {
	return strings.Split(ansi.Wrap(text, max(width, 1), ""), "\n")
}

// window is the first of n lines to show in a room of the given height so that
// line at stands in the middle, or as near to it as the ends allow.
func window(n, room, at int) int { return max(min(at-room/2, n-room), 0) }

// plural writes "1 bar" and "2 bars".
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// visible is the width of a painted text in columns.
func visible(text string) int { return ansi.StringWidth(text) }
