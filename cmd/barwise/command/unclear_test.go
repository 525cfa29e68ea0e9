package command

import (
	"slices"
	"strings"
	"testing"

	"barwise/colony"
	"barwise/parse"
)

// heardNote is a note as it was heard: words with "?" behind them unclearly, a
// pause of half a second at each comma.
func heardNote(said string) *colony.Note {
	note := &colony.Note{Recording: &colony.Recording{Hash: "x"}}
	at := 0.0
	for _, f := range strings.Fields(said) {
		word, confidence := strings.Trim(f, ",?"), 0.9
		if strings.Contains(f, "?") {
			confidence = 0.2
		}
		if note.Text != "" {
			note.Text += " "
		}
		start := len(note.Text)
		note.Text += word
		note.Words = append(note.Words, colony.TimedWord{Span: colony.Span{start, len(note.Text)}, From: at, To: at + 0.3, Confidence: confidence})
		at += 0.35
		if strings.Contains(f, ",") {
			at += 0.5
		}
	}
	return note
}

func TestDoubtBecomesRemarksAndChecks(t *testing.T) {
	parser, err := parse.New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, said, leaves, check, remark string }{
		{"clear", "hive two, bar four eggs", "bars.4.eggs=yes hive=2", "", ""},
		{"one word in doubt", "hive two, bar four? eggs", "bars.4.eggs=yes hive=2", "bars.4.eggs", ""},
		{"a phrase in doubt", "hive two, bar? nine? larvae?, bar four eggs", "bars.4.eggs=yes hive=2", "", "bar nine larvae (heard unclearly at 0:01)"},
		{"the second hive in doubt", "hive two, bar four eggs, hive three, bar? one? eggs?, bar six pollen", "bars.4.eggs=yes hive=2 | bars.6.pollen=yes hive=3", "", "bar one eggs (heard unclearly at 0:04)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			note := heardNote(c.said)
			var all, remarks []string
			for _, ins := range readNote(parser, note) {
				var leaves []string
				for _, leaf := range colony.Leaves(&ins) {
					if leaf.Path != "at" {
						leaves = append(leaves, leaf.Path+"="+leaf.Value)
					}
				}
				all = append(all, strings.Join(slices.Sorted(slices.Values(leaves)), " "))
				remarks = append(remarks, ins.Remarks...)
				for _, check := range ins.Check {
					if check.Path != c.check {
						t.Errorf("check of %s: %s", check.Path, check.Why)
					}
				}
			}
			if got := strings.Join(remarks, "; "); got != c.remark {
				t.Errorf("remarks %q, want %q", got, c.remark)
			}
			if got := strings.Join(all, " | "); got != c.leaves {
				t.Errorf("%s, want %s", got, c.leaves)
			}
		})
	}
}
