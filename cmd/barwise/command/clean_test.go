package command

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"eggs on bar 4\n\tand 5":     "eggs on bar 4\n\tand 5",
		"17 °C, Käthe 🐝":             "17 °C, Käthe 🐝",
		"\x1b[2J\x1b]0;title\x07hi":  "·[2J·]0;title·hi",
		"a\x00b\x7fc\u009bd":         "a·b·c·d",
		"over\rwritten":              "over·written",
		"right\u202eto left\u2066.":  "right·to left·.",
		"not \xff UTF-8":             "not · UTF-8",
		"\x1b[31mred\x1b[0m is ours": "·[31mred·[0m is ours",
	} {
		if got := clean(in); got != want {
			t.Errorf("clean(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestGuardLetsOnlyColourThrough(t *testing.T) {
	var out bytes.Buffer
	in := "\x1b[1;33mflag\x1b[0m \x1b[2Jwiped\x1b]0;title\x07 \x1b[3 q\x1b[m\n"
	n, err := guard{&out}.Write([]byte(in))
	if err != nil || n != len(in) {
		t.Fatalf("%d, %v", n, err)
	}
	if want := "\x1b[1;33mflag\x1b[0m [2Jwiped]0;title [3 q\x1b[m\n"; out.String() != want {
		t.Errorf("%q, want %q", out.String(), want)
	}
}

// FuzzNothingActsOnTheTerminal: whatever a note holds, what is printed of it
// holds no control character, and JSON still says the same.
func FuzzNothingActsOnTheTerminal(f *testing.F) {
	f.Add("\x1b[31mbar 4\x1b[0m\x07")
	f.Add("\u009b2J\u202e")
	f.Add("\xff\x1b[")
	f.Add("\xc2\x14\x940")
	colour := regexp.MustCompile("\x1b\\[[0-9;]*m")
	f.Fuzz(func(t *testing.T, s string) {
		if got := clean(s); strings.IndexFunc(got, acts) >= 0 || !utf8.ValidString(got) {
			t.Errorf("clean left %q", got)
		}
		var out bytes.Buffer
		if _, err := (guard{&out}).Write([]byte(s)); err != nil {
			t.Fatal(err)
		}
		if left := colour.ReplaceAllString(out.String(), ""); strings.IndexFunc(left, acts) >= 0 {
			t.Errorf("the guard left %q", left)
		}
		line, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		safe := escapeControls(line)
		var was, is string
		if json.Unmarshal(line, &was) != nil || json.Unmarshal(safe, &is) != nil || was != is || bytes.IndexFunc(safe, acts) >= 0 {
			t.Errorf("%q became %q", line, safe)
		}
	})
}
