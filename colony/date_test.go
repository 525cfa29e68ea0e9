package colony

import (
	"testing"
	"time"
	_ "time/tzdata"

	"pgregory.net/rapid"
)

func TestDaysOverEndsOfMonthsAndYears(t *testing.T) {
	for _, c := range []struct {
		from, want string
		days       int
	}{
		{"2024-02-28", "2024-02-29", 1}, {"2024-02-28", "2024-03-01", 2}, {"2025-02-28", "2025-03-01", 1},
		{"2000-02-29", "2001-02-28", 365}, {"1900-02-28", "1900-03-01", 1}, {"2025-12-31", "2026-01-01", 1}, {"2026-01-01", "2025-12-31", -1},
	} {
		if got := day(c.from).AddDays(c.days); got != day(c.want) || got.Sub(day(c.from)) != c.days {
			t.Errorf("%s and %d days: %s (%d), want %s", c.from, c.days, got, got.Sub(day(c.from)), c.want)
		}
	}
	for _, c := range []struct {
		from, want string
		months     int
	}{
		{"2025-01-31", "2025-02-28", 1}, {"2024-01-31", "2024-02-29", 1}, {"2025-10-31", "2026-02-28", 4}, {"2025-12-15", "2026-01-15", 1},
		{"2026-03-31", "2026-02-28", -1}, {"2024-02-29", "2025-02-28", 12}, {"2026-01-10", "2025-11-10", -2},
	} {
		if got := day(c.from).AddMonths(c.months); got != day(c.want) {
			t.Errorf("%s and %d months: %s, want %s", c.from, c.months, got, c.want)
		}
	}
	for _, bad := range []string{"2025-02-29", "2026-13-01", "2026-4-1", "today"} {
		if d, err := ParseDate(bad); err == nil {
			t.Errorf("%q is read as %s", bad, d)
		}
	}
}

// Days are counted alike in every zone, and summer time neither adds nor takes
// one; going there and back comes out where it began.
func TestDaysAreDaysEverywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place, err := time.LoadLocation(rapid.SampledFrom([]string{"UTC", "Europe/London", "America/New_York", "Australia/Lord_Howe", "Pacific/Auckland", "Africa/Casablanca"}).Draw(t, "zone"))
		if err != nil {
			t.Fatal(err)
		}
		d := day("1996-01-01").AddDays(rapid.IntRange(0, 20_000).Draw(t, "day"))
		n := rapid.IntRange(-800, 800).Draw(t, "days")
		e := d.AddDays(n)
		if e.Sub(d) != n || e.AddDays(-n) != d || d.Compare(e)*n > 0 {
			t.Fatalf("%s and %d days: %s", d, n, e)
		}
		// Noon of a civil day is on that day, whatever the clocks did in the night.
		noon := time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, place)
		if DateOf(noon) != d || dayOf(&Inspection{At: noon}) != d {
			t.Fatalf("noon of %s in %s is on %s", d, place, DateOf(noon))
		}
		if back, err := ParseDate(d.String()); err != nil || back != d {
			t.Fatalf("%s is read as %s, %v", d, back, err)
		}
	})
}

// What falls due over a leap day and over the end of a year does so on the day
// that a calendar shows.
func TestDueOverEndsOfMonthsAndYears(t *testing.T) {
	south := DefaultSettings()
	south.Season.South = true
	for name, c := range map[string]struct {
		on, kind, want string
		leaves         []string
		set            Settings
	}{
		"a feed before a leap day":        {"2028-02-25", "feeding", "2028-03-03", []string{"actions.feed=yes"}, DefaultSettings()},
		"a feed in another year":          {"2027-02-25", "feeding", "2027-03-04", []string{"actions.feed=yes"}, DefaultSettings()},
		"a treatment before the new year": {"2027-12-20", "treatment", "2028-01-10", []string{"actions.treat=yes"}, DefaultSettings()},
		"summer in the south":             {"2027-12-28", "inspect", "2028-01-04", []string{"bars.4.eggs=yes"}, south},
		"winter in the north":             {"2027-12-28", "inspect", "2028-04-01", []string{"bars.4.eggs=yes"}, DefaultSettings()},
	} {
		found := false
		for _, d := range Due([]Inspection{visit(c.on, c.leaves...)}, day(c.on), c.set, nil) {
			if d.Kind == c.kind {
				if found = true; d.On != day(c.want) {
					t.Errorf("%s: due on %s, want %s", name, d.On, c.want)
				}
			}
		}
		if !found {
			t.Errorf("%s: nothing due", name)
		}
	}
}
