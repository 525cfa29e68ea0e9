package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// TestOddNotes holds that notes which once upset the reader are read, and leave
// only what the contract knows.
func TestOddNotes(t *testing.T) {
	for _, text := range []string{
		"not been touched as far as wait bees hanging in a curtain",
		"twisted im so sorry wee bitty bit of comb",
		"bar three eggs right yeah those are definitely eggs and um larvae. so is this side",
		"hive 2. bar four not hanging free",
		"hive 2. bar 2 nectar, bar 1 honey, leave one out, new comb",
		"seen none came in none of hives",
		"hive 2. bar 3 nectar, bar 2 honey, bar 1 bare, next one eggs",
		"new stores on the bars\n3/4 full of brood",
		"put back both of the combs\n3/b4 swapped over",
		"4,drawn,brood 70%,,\"calm\"\n5,half drawn,,nectar,\n6,bare,,,\n",
	} {
		for _, ins := range sharedParser().Parse(&colony.Note{Text: text, Given: may14}) {
			checkInspection(t, text, &ins)
			for _, remark := range ins.Remarks {
				path, _, leaf := strings.Cut(remark, "=")
				if leaf && strings.HasPrefix(path, "bars.") {
					t.Errorf("%q: a refused leaf among the remarks: %q", text, remark)
				}
			}
		}
	}
}
