package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// TestOddNotes holds that notes which once upset the reader are read, and leave
// only what the contract knows.
func TestOddNotes(t *testing.T) {
	p, err := New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"not been touched as far as wait bees hanging in a curtain",
		"twisted im so sorry wee bitty bit of comb",
		"bar three eggs right yeah those are definitely eggs and um larvae. so is this side",
		"hive 2. bar four not hanging free",
		"hive 2. bar 2 nectar, bar 1 honey, leave one out, new comb",
		"hive 2. bar 3 nectar, bar 2 honey, bar 1 bare, next one eggs",
	} {
		for _, ins := range p.Parse(&colony.Note{Text: text, Given: may14}) {
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

// TestDenialsThatLookLikeSomethingElse holds that a zero denies, that a doubt
// is flagged, and that winter is cold.
func TestDenialsThatLookLikeSomethingElse(t *testing.T) {
	p, err := New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ said, path, want string }{
		{"zero eggs on bar nine", "bars.9.eggs", "no"},
		{"bar six eggs nil", "bars.6.eggs", "no"},
		{"hive 2. queen seen. um no eggs on bar six", "bars.6.eggs", "no"},
		{"hive 2. bar four eggs er no larvae", "bars.4.eggs", "yes"},
		{"hive 2. bar six honey. er bees calm", "temper.score", "4"},
		{"hive 2. no current chalkbrood", "signs.chalkbrood", "no"},
		{"hive 2. last time bar eight had eggs", "bars.8.eggs", ""},
		{"hive 2. last time bar eight had eggs", "earlier.eggs_seen", "yes"},
		{"hive 2. no problem with the brood on bar four", "temper.score", ""},
		{"hive 2. -2 degrees celsius", "weather.temp_c", "-2"},
		{"hive 2. 2 degrees below zero", "weather.temp_c", "-2"},
		{"hive 2. minus two degrees", "weather.temp_c", "-2"},
		{"hive 2. 8-12 degrees", "weather.temp_c", "8"},
	} {
		ins := p.Parse(&colony.Note{Text: c.said, Given: may14})
		if got, _ := colony.Get(&ins[0], c.path); got != c.want {
			t.Errorf("%q: %s = %q, want %q", c.said, c.path, got, c.want)
		}
	}
}
