package tui

import (
	"io"
	"os"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// colours says how much colour to use.
type colours int

// The amounts of colour.
const (
	autoColour     colours = iota // what the terminal can do; none where NO_COLOR is set
	noColour                      // bold, underline and reverse only
	noStyle                       // no escape sequences at all: for files and dumb terminals
	sixteenColours                // the sixteen colours of the terminal's own palette
	fullColour
)

// backdrop says what the terminal's background is.
type backdrop int

// The backgrounds.
const (
	autoBackground backdrop = iota // ask the terminal; dark where it does not say
	onDark
	onLight
)

// ink is one colour of the palette: for terminals of many colours and for
// those of sixteen. An empty one is the terminal's own text colour.
type ink struct{ full, sixteen string }

// tone is a colour on each of the two backgrounds.
type tone struct{ dark, light ink }

// The palette. Each tone stands for one role; contrast_test.go computes its
// contrast on both backgrounds after WCAG 2.2, success criterion 1.4.3.
var (
	quiet   = tone{ink{"#a8a8a8", "7"}, ink{"#5a5a5a", "0"}}   // labels, rules
	title   = tone{ink{"#f0c060", "11"}, ink{"#7a4a00", "4"}}  // headings
	keys    = tone{ink{"#8fd0ff", "14"}, ink{"#00528a", "4"}}  // keys in the key line
	unsure  = tone{ink{"#ffb07a", "11"}, ink{"#9c3200", "1"}}  // left to check
	good    = tone{ink{"#a5d66f", "10"}, ink{"#2c6410", "0"}}  // done, grew
	bad     = tone{ink{"#ff8f8f", "9"}, ink{"#a8001c", "1"}}   // errors, shrank
	own     = tone{ink{"#d7b4ff", "13"}, ink{"#6a2aa0", "5"}}  // written by a person
	onWords = tone{ink{"#1a1400", "0"}, ink{"#1a1400", "0"}}   // text on words
	byWords = tone{ink{"#ffd75f", "11"}, ink{"#ffd75f", "11"}} // the words behind the value
	onPick  = tone{ink{"#101010", "0"}, ink{"#ffffff", "15"}}  // text on pick
	pick    = tone{ink{"#9ecbf5", "14"}, ink{"#2b4a6b", "4"}}  // what is selected
)

// brush paints a run of text. Brushes of one theme differ by their id; 0 is
// plain text. What the style writes before and after a text is found once,
// since a frame has hundreds of runs.
type brush struct {
	id      int
	style   lipgloss.Style
	on, off string
}

func newBrush(id int, style lipgloss.Style) brush {
	on, off, _ := strings.Cut(style.Render("x"), "x")
	return brush{id, style, on, off}
}

func (b brush) paint(text string) string {
	if text == "" {
		return ""
	}
	return b.on + text + b.off
}

// theme holds every brush of the screen, made once.
type theme struct {
	plain    bool // no escape sequences: signs must be written out
	quiet    brush
	title    brush
	key      brush
	unsure   brush // a question
	good     brush
	bad      brush
	own      brush
	bold     brush
	words    brush // the words behind the selected leaf
	hedged   brush // words behind a leaf that is left to check
	faint    brush // words that the recogniser was not sure of
	pick     brush // the selected chip or row
	contents map[string]brush
}

// newTheme makes the brushes for what the writer can show.
func newTheme(out io.Writer, colour colours, background backdrop) theme {
	r := lipgloss.NewRenderer(out)
	profile := r.ColorProfile()
	if colour == autoColour && (os.Getenv("NO_COLOR") != "" || os.Getenv("CLICOLOR") == "0") {
		colour = noColour
		if os.Getenv("TERM") == "dumb" {
			colour = noStyle
		}
	}
	switch colour {
	case noStyle:
		profile = termenv.Ascii
	case noColour, sixteenColours:
		profile = termenv.ANSI
	case fullColour:
		profile = termenv.TrueColor
	case autoColour:
		if profile == termenv.Ascii {
			colour = noStyle
		}
	}
	r.SetColorProfile(profile)
	dark := background == onDark
	if background == autoBackground && colour != noStyle && colour != noColour {
		dark = r.HasDarkBackground()
	}
	return brushes(r, colour != noColour && colour != noStyle, colour == noStyle, dark)
}

// brushes makes the theme of a renderer. Without colour the roles that matter
// keep an attribute: bold, underline or reverse.
func brushes(r *lipgloss.Renderer, colour, plain, dark bool) theme {
	id := 0
	brushOf := func(fore, back tone, more func(lipgloss.Style) lipgloss.Style) brush {
		style := r.NewStyle().Inline(true)
		if colour {
			style = style.Foreground(shade(r, fore, dark))
			if back != (tone{}) {
				style = style.Background(shade(r, back, dark))
			}
		}
		if more != nil {
			style = more(style)
		}
		id++
		return newBrush(id, style)
	}
	bold := func(s lipgloss.Style) lipgloss.Style { return s.Bold(true) }
	under := func(s lipgloss.Style) lipgloss.Style { return s.Underline(true) }
	stand := func(s lipgloss.Style) lipgloss.Style { return s.Bold(true).Reverse(!colour) }
	t := theme{
		plain: plain,
		quiet: brushOf(quiet, tone{}, nil), title: brushOf(title, tone{}, bold), key: brushOf(keys, tone{}, bold),
		unsure: brushOf(unsure, tone{}, bold), good: brushOf(good, tone{}, nil), bad: brushOf(bad, tone{}, bold),
		own: brushOf(own, tone{}, nil), bold: brushOf(tone{}, tone{}, bold),
		words: brushOf(onWords, byWords, stand), hedged: brushOf(unsure, tone{}, under), faint: brushOf(quiet, tone{}, under),
		pick:     brushOf(onPick, pick, stand),
		contents: map[string]brush{},
	}
	for _, m := range marks {
		t.contents[m.what] = brushOf(onWax, m.wax, nil)
	}
	return t
}

// shade is the colour of a tone for the renderer's terminal.
func shade(r *lipgloss.Renderer, t tone, dark bool) lipgloss.TerminalColor {
	c := t.light
	if dark {
		c = t.dark
	}
	switch {
	case c.full == "":
		return lipgloss.NoColor{}
	case r.ColorProfile() == termenv.ANSI:
		return lipgloss.Color(c.sixteen)
	}
	return lipgloss.Color(c.full)
}
