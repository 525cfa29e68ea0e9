package tui

import (
	"fmt"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"
)

// The relative luminance and the contrast ratio are those of WCAG 2.2
// (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance, #dfn-contrast-ratio);
// success criterion 1.4.3 asks for 4.5:1 for text.
const enough = 4.5

func luminance(hex string) float64 {
	var c [3]int
	if _, err := fmt.Sscanf(hex, "#%02x%02x%02x", &c[0], &c[1], &c[2]); err != nil {
		panic(err)
	}
	var l [3]float64
	for i, v := range c {
		s := float64(v) / 255
		if s <= 0.04045 {
			l[i] = s / 12.92
		} else {
			l[i] = math.Pow((s+0.055)/1.055, 2.4)
		}
	}
	return 0.2126*l[0] + 0.7152*l[1] + 0.0722*l[2]
}

func contrast(a, b string) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestContrastFormula(t *testing.T) {
	// Worked values: black on white is 21:1, and #767676 is the lightest grey
	// that passes on white (4.54:1), as the W3C's technique G18 explains.
	if got := contrast("#000000", "#ffffff"); math.Abs(got-21) > 0.001 {
		t.Errorf("black on white is %.3f", got)
	}
	if got := contrast("#767676", "#ffffff"); math.Abs(got-4.54) > 0.01 {
		t.Errorf("#767676 on white is %.3f", got)
	}
}

// xterm is the palette of sixteen that most terminals begin with
// (XTerm-col.ad of the X.Org xterm).
var xterm = strings.Fields("#000000 #cd0000 #00cd00 #cdcd00 #0000ee #cd00cd #00cdcd #e5e5e5 #7f7f7f #ff0000 #00ff00 #ffff00 #5c5cff #ff00ff #00ffff #ffffff")

func sixteenOf(n string) string {
	var i int
	if _, err := fmt.Sscan(n, &i); err != nil {
		panic(err)
	}
	return xterm[i]
}

// backgrounds are the darkest and the palest that terminals commonly have.
var backgrounds = map[string][]string{"dark": {"#000000", "#1e1e1e"}, "light": {"#ffffff", "#f2f2f2"}}

func TestPaletteContrast(t *testing.T) {
	roles := map[string]tone{"quiet": quiet, "title": title, "keys": keys, "unsure": unsure, "good": good, "bad": bad, "own": own}
	worst := 21.0
	for name, role := range roles {
		for side, grounds := range backgrounds {
			c := role.dark
			if side == "light" {
				c = role.light
			}
			for _, ground := range grounds {
				got := contrast(c.full, ground)
				if worst = min(worst, got); got < enough {
					t.Errorf("%s on %s: %.2f", name, ground, got)
				}
			}
			if got := contrast(sixteenOf(c.sixteen), grounds[0]); got < enough {
				t.Errorf("%s of sixteen on %s: %.2f", name, grounds[0], got)
			}
		}
	}
	t.Logf("lowest contrast of text: %.2f:1", worst)
}

// NO_COLOR (https://no-color.org) asks for no colour; bold, underline and
// reverse are none.
func TestNoColourIsHonoured(t *testing.T) {
	colour := regexp.MustCompile(`\x1b\[(?:[0-9;]*;)?(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])[;m]`)
	painted := func() string {
		th := newTheme(io.Discard, autoColour, onDark)
		out := ""
		for _, b := range []brush{th.quiet, th.title, th.key, th.unsure, th.good, th.bad, th.own, th.words, th.hedged, th.faint, th.pick, th.contents["honey"]} {
			out += b.paint("x")
		}
		return out
	}
	if loud := newTheme(io.Discard, sixteenColours, onDark).unsure.paint("x"); !colour.MatchString(loud) {
		t.Fatalf("%q is not seen to be coloured", loud)
	}
	t.Setenv("NO_COLOR", "1")
	t.Setenv("TERM", "xterm-256color")
	if got := painted(); colour.MatchString(got) || !strings.Contains(got, "\x1b[1;7m") {
		t.Errorf("under NO_COLOR: %q", got)
	}
	t.Setenv("TERM", "dumb")
	if got := painted(); strings.Contains(got, "\x1b") {
		t.Errorf("on a dumb terminal: %q", got)
	}
}

func TestContrastOnColouredCells(t *testing.T) {
	pairs := map[string][2]tone{"words": {onWords, byWords}, "pick": {onPick, pick}}
	for _, m := range marks {
		pairs[m.what] = [2]tone{onWax, m.wax}
	}
	for name, p := range pairs {
		for _, side := range [][2]ink{{p[0].dark, p[1].dark}, {p[0].light, p[1].light}} {
			if got := contrast(side[0].full, side[1].full); got < enough {
				t.Errorf("%s: %.2f", name, got)
			}
			if got := contrast(sixteenOf(side[0].sixteen), sixteenOf(side[1].sixteen)); got < enough {
				t.Errorf("%s of sixteen: %.2f", name, got)
			}
		}
	}
}
