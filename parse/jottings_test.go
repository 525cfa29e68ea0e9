package parse

import "testing"

// TestJottings reads what is typed in haste: short words, bullets, ticked boxes.
func TestJottings(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// short words
		{"b7 bb at the edge, b8 BB", "bars.7.pollen=yes bars.7.pollen.place=edge bars.8.pollen=yes"},
		{"chk again on Tues", "plans.inspect=yes plans.inspect.due=2026-05-19"},
		{"chk for eggs in 2 wks", "plans.inspect=yes plans.inspect.due=2026-05-28"},
		{"willow pollen comin in, nectar goin in too", "incoming.pollen=yes incoming.pollen.plant=willow incoming.nectar=yes"},
		// one bar of several
		{"b2-b4 CB, b3 patchy. b5 E", "bars.2.capped_brood=yes bars.3.capped_brood=yes bars.3.capped_brood.pattern=patchy bars.4.capped_brood=yes bars.5.eggs=yes"},
		// bars without a verb, and bars in hand
		{"• 1 fresh bar in behind 8", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=8"},
		{"- two spare bars in after 4", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=4"},
		{"b12 old comb, took it out for good", "bars.12.comb.old=yes actions.remove_bar=yes actions.remove_bar.bar=12"},
		{"b12 dark comb, took it out. b13 nectar", "bars.12.comb.old=yes actions.remove_bar=yes actions.remove_bar.bar=12 bars.13.nectar=yes"},
		// the last time
		{"Eggs on bar 4. Our last visit was on the 3rd.", "bars.4.eggs=yes earlier.inspected=yes earlier.inspected.on=2026-05-03"},
	} {
		readsAs(t, "jotting", c.said, c.want)
	}
}
