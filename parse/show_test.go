package parse

import (
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
)

var show = flag.String("show", "", "print how this note is read: its items, clauses and leaves")

// kindName is the name under which the rule files know a kind.
func kindName(k kind) string {
	for name, known := range kindNames {
		if known == k {
			return name
		}
	}
	return map[kind]string{kNum: "number", kDur: "duration", kDate: "date", kMeasure: "measure", kBars: "BARS", kName: "HIVE", kWord: "-"}[k]
}

func describeItem(r *reader, it *item) string {
	var names []string
	for k := noKind + 1; k <= kYes; k++ {
		if it.is(k) {
			names = append(names, kindName(k))
		}
	}
	out := fmt.Sprintf("%s<%s>", r.text[it.start:it.end], strings.Join(names, "|"))
	if it.is(kBars) {
		out += fmt.Sprint(it.bars)
	}
	if it.pause > none {
		out = strings.Repeat("'", int(it.pause)) + out
	}
	return out
}

// TestShow prints the stages for one note, for whoever works on the rules:
// go test -run TestShow -show 'bar four eggs'.
func TestShow(t *testing.T) {
	if *show == "" {
		t.Skip("no note given with -show")
	}
	p, err := New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	note := &colony.Note{Text: strings.ReplaceAll(*show, `\n`, "\n"), Given: time.Date(2026, 5, 14, 16, 0, 0, 0, time.UTC)}
	r := p.readers.Get().(*reader)
	r.start(note)
	r.onClause = func(c *clause) {
		var parts []string
		for i := range c.items {
			parts = append(parts, describeItem(r, &c.items[i]))
		}
		fmt.Printf("  [%s %q undone=%v doubt=%q] %s\n", [...]string{"asserted", "planned", "past", "unasked"}[c.mood], c.cue, c.undone, c.doubt, strings.Join(parts, " "))
	}
	r.read()
	for i, b := range r.all {
		fmt.Printf("-- %d hive=%s at=%s\n", i, b.hive, b.at.Format(time.RFC3339))
		for _, e := range b.entries {
			fmt.Printf("%s=%s   (%s: %s)\n", e.path, e.value, e.rule, r.quoted(e.spans))
		}
		for _, c := range b.checks {
			fmt.Println("  check", c.Path, c.Why)
		}
		fmt.Println("  remarks", slices.Clip(b.remarks))
	}
}
