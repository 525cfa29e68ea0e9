package tui

import (
	"strings"
	"testing"
	"unicode"

	"barwise/colony"
)

func TestCleanShowsWordsAndNothingThatActs(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "bar 4 eggs", "bar 4 eggs"},
		{"colour", "bar \x1b[31m4\x1b[0m eggs", "bar 4 eggs"},
		{"title", "bar\x1b]0;owned\x07 4", "bar 4"},
		{"title ended by a string terminator", "bar\x1b]0;owned\x1b\\ 4", "bar 4"},
		{"sequence without an end hides no words", "bar\x1b]0;all the rest is still shown", "bar]0;all the rest is still shown"},
		{"escape at the end", "bar 4\x1b", "bar 4"},
		{"escape before an accent", "bar\x1b[é", "bar[é"},
		{"bell, NUL, backspace", "b\x07a\x00r\x08 4", "bar 4"},
		{"eight-bit control", "bar \u009b31m4", "bar 31m4"},
		{"direction turned", "bar \u202e4 eggs", "bar 4 eggs"},
		{"zero width", "b\u200bar 4", "bar 4"},
		{"broken byte", "bar \xff 4", "bar \uFFFD 4"},
		{"lines", "bar 4\r\neggs\rlarvae\nhoney", "bar 4 eggs larvae honey"},
		{"tab", "bar\t4", "bar 4"},
		{"wide", "蜂 4", "蜂 4"},
		{"combining", "cafe\u0301", "cafe\u0301"},
		{"family", "👩‍👩‍👧 4", "👩‍👩‍👧 4"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := clean(c.in); got != c.want {
				t.Errorf("clean(%q) = %q, want %q", c.in, got, c.want)
			}
		})
	}
}

func TestSpansStayOnTheWordsOfTheNote(t *testing.T) {
	text := "bär \x1b[1m蜂\x1b[0m\t4\r\ncafe\u0301 eggs"
	at := strings.Index(text, "eggs")
	span := colony.Span{at, at + 4}
	p := layOut(text, 40)
	shown := ""
	for _, line := range p.lines {
		for _, c := range line {
			if overlaps([]colony.Span{span}, c.span) {
				shown += c.show
			}
		}
	}
	if shown != "eggs" {
		t.Errorf("the span shows %q", shown)
	}
	if len(p.lines) != 2 || p.lineOf(at) != 1 {
		t.Errorf("%d lines, eggs on line %d", len(p.lines), p.lineOf(at))
	}
}

func TestLinesAreNeverWiderThanAsked(t *testing.T) {
	for _, width := range []int{1, 2, 7, 60} {
		p := layOut("蜂蜂蜂蜂 incomprehensibilities and a few short words\n\n  two   spaces ", width)
		for i, line := range p.lines {
			w := 0
			for _, c := range line {
				w += c.width
			}
			if w > max(width, 2) { // a wide rune needs two columns
				t.Errorf("width %d: line %d takes %d", width, i, w)
			}
		}
	}
}

func FuzzCells(f *testing.F) {
	for _, text := range []string{"bar 4", "\x1b[31mred\x1b[0m", "\x1b]8;;x\x07", "a\r\nb\rc", "\xff\xfe", "👩‍👩‍👧 e\u0301 \u202e", "\u009b1m"} {
		f.Add(text, 20)
	}
	f.Fuzz(func(t *testing.T, text string, width int) {
		at := 0
		for _, c := range cellsOf(text) {
			if c.span[0] != at || c.span[1] <= at {
				t.Fatalf("cell %v does not begin at %d", c.span, at)
			}
			at = c.span[1]
			for _, r := range c.show {
				if r != '\n' && unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
					t.Fatalf("%q reaches the terminal", c.show)
				}
			}
		}
		if at != len(text) {
			t.Fatalf("cells end at %d of %d", at, len(text))
		}
		p := layOut(text, width%200)
		n := 0
		for _, line := range p.lines {
			n += len(line)
		}
		for _, c := range cellsOf(text) {
			if c.show == "\n" {
				n++
			}
		}
		if n != len(cellsOf(text)) {
			t.Fatalf("%d cells laid out of %d", n, len(cellsOf(text)))
		}
	})
}
