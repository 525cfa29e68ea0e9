package command

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"barwise/colony"
)

// sheet prints inspections for a person: a heading, a line a topic and a bar,
// and under a line the flagged leaves that stand on it, with the reason.
type sheet struct {
	out   io.Writer
	style styles
	wide  int                      // columns to wrap at; 0 is no wrapping
	taker func(topic, text string) // gets the entries instead of out, where there is one
}

// styles are the few that the commands use. On anything but a colour terminal,
// and under NO_COLOR, they write plain text.
type styles struct{ head, topic, flag, quote, mark lipgloss.Style }

func stylesFor(out io.Writer) styles {
	r := lipgloss.NewRenderer(out)
	return styles{
		head:  r.NewStyle().Bold(true),
		topic: r.NewStyle().Faint(true),
		flag:  r.NewStyle().Foreground(lipgloss.ANSIColor(3)),
		quote: r.NewStyle().Italic(true),
		mark:  r.NewStyle().Underline(true).UnderlineSpaces(true),
	}
}

const topicWidth = 13

// inspection prints one sheet.
func (s sheet) inspection(ins *colony.Inspection) {
	fmt.Fprintln(s.out, s.style.head.Render(heading(ins)))
	s.body(ins)
}

// body prints the sheet below its heading.
func (s sheet) body(ins *colony.Inspection) {
	s.checks(ins.Check, func(path string) bool { return path == "hive" || path == "at" })
	said := phrases(ins)
	for len(said) > 0 {
		n := 1
		for n < len(said) && said[n].topic == said[0].topic {
			n++
		}
		s.line(said[:n], ins.Check)
		said = said[n:]
	}
	s.checks(ins.Check, func(path string) bool {
		_, there := colony.Get(ins, path)
		return !there && path != "hive" && path != "at"
	})
	s.remarks(ins.Remarks)
}

// heading names the hive and the time.
func heading(ins *colony.Inspection) string {
	hive := "hive " + oneLine(ins.Hive)
	if ins.Hive == "" {
		hive = "hive not named"
	}
	if ins.At.IsZero() {
		return hive + ", time not known"
	}
	return hive + ", " + ins.At.Format("Mon 2 January 2006, 15:04")
}

func (s sheet) line(said []phrase, checks []colony.Check) {
	var texts, flags []string
	for _, p := range said {
		text := p.text
		for _, c := range flagged(p, checks) {
			text = p.text + " ?"
			flags = append(flags, s.flag(c))
		}
		texts = append(texts, text)
	}
	s.entry(said[0].topic, strings.Join(texts, "; "))
	for _, f := range flags {
		s.entry("", f)
	}
}

// entry prints a topic with its text, wrapped beside it.
func (s sheet) entry(topic, text string) {
	if s.taker != nil {
		s.taker(topic, text)
		return
	}
	if s.wide > topicWidth+20 {
		text = ansi.Wordwrap(text, s.wide-topicWidth-4, "")
	}
	for i, line := range strings.Split(text, "\n") {
		if i > 0 {
			topic = ""
		}
		fmt.Fprintf(s.out, "  %s  %s\n", s.style.topic.Render(fmt.Sprintf("%-*s", topicWidth, topic)), strings.TrimSpace(line))
	}
}

// explained is how a number came about, wrapped below the column in which its
// texts stand; width 0 is no wrapping.
func explained(e colony.Explanation, wide int) string {
	const column = 11
	text := clean(e.String())
	if wide <= column+20 {
		return text
	}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		label := ""
		if i > 0 && len(line) > column {
			label, line = line[:column], line[column:]
		}
		lines[i] = label + strings.ReplaceAll(ansi.Wordwrap(line, wide-column, ""), "\n", "\n"+strings.Repeat(" ", column))
	}
	return strings.Join(lines, "\n")
}

// flagged lists the checks of the phrase's leaves.
func flagged(p phrase, checks []colony.Check) []colony.Check {
	var out []colony.Check
	for _, c := range checks {
		if slices.Contains(p.paths, c.Path) {
			out = append(out, c)
		}
	}
	return out
}

// checks prints the flags of leaves that stand on no line of the sheet.
func (s sheet) checks(checks []colony.Check, which func(path string) bool) {
	for _, c := range checks {
		if which(c.Path) {
			s.entry("", s.flag(c))
		}
	}
}

// flag says what should be looked at, and why.
func (s sheet) flag(c colony.Check) string {
	text := fmt.Sprintf("? %s: %s", oneLine(c.Path), oneLine(c.Why))
	if c.Alt != "" {
		text += fmt.Sprintf(" (or %s)", oneLine(c.Alt))
	}
	return s.style.flag.Render(text)
}

func (s sheet) remarks(remarks []string) {
	for i, r := range remarks {
		s.entry(first(i, "remarks"), s.style.quote.Render("“"+oneLine(r)+"”"))
	}
}
