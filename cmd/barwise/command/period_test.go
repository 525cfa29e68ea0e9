package command

import (
	"testing"

	"barwise/colony"
)

func TestCutPeriod(t *testing.T) {
	today := colony.NewDate(2026, 5, 14) // a Thursday
	for words, want := range map[string][2]string{
		"queen seen since april":          {"queen seen", "from 2026-04-01 on"},
		"queen seen since november":       {"queen seen", "from 2025-11-01 on"},
		"nasty in July":                   {"nasty", "from 2025-07-01 to 2025-07-31"},
		"nasty in may":                    {"nasty", "from 2026-05-01 to 2026-05-31"},
		"eggs in February 2024":           {"eggs", "from 2024-02-01 to 2024-02-29"},
		"supersedure cells last year":     {"supersedure cells", "from 2025-01-01 to 2025-12-31"},
		"chalkbrood 2025":                 {"chalkbrood", "from 2025-01-01 to 2025-12-31"},
		"fed before 3 may":                {"fed", "up to 2026-05-02"},
		"fed after may 3rd, 2026":         {"fed", "from 2026-05-04 on"},
		"fed from 2026-04-01 until today": {"fed", "from 2026-04-01 to 2026-05-14"},
		"swarmed on the 22nd of may 2025": {"swarmed", "on 2025-05-22"},
		"eggs last year in may":           {"eggs", "from 2025-05-01 to 2025-05-31"},
		"eggs in may last year":           {"eggs", "from 2025-05-01 to 2025-05-31"},
		"eggs since april last year":      {"eggs", "from 2025-04-01 on"},
		"eggs between april and june":     {"eggs", "from 2025-04-01 to 2025-06-30"},
		"eggs from april to may":          {"eggs", "from 2026-04-01 to 2026-05-31"},
		"eggs from october to march":      {"eggs", "from 2025-10-01 to 2026-03-31"},
		"eggs between june and july 2025": {"eggs", "from 2025-06-01 to 2025-07-31"},
		"eggs yesterday":                  {"eggs", "on 2026-05-13"},
		"eggs this week":                  {"eggs", "from 2026-05-11 to 2026-05-17"},
		"eggs last week":                  {"eggs", "from 2026-05-04 to 2026-05-10"},
		"eggs last month":                 {"eggs", "from 2026-04-01 to 2026-04-30"},
		"they may swarm":                  {"they may swarm", ""},
		"bar 12 of 20":                    {"bar 12 of 20", ""},
		"ants in the marsh hive":          {"ants in the marsh hive", ""},
		"eggs in hive 4 on 31 february":   {"eggs in hive 4 on 31 february", ""},
	} {
		rest, p := cutPeriod(words, today)
		if rest != want[0] || p.String() != want[1] {
			t.Errorf("%q: %q, %q; want %q", words, rest, p, want)
		}
	}
}
