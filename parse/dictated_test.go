package parse

import "testing"

// TestDictated reads what is told to a machine while the hands are busy: with
// corrections to somebody who stands by, and in the English of many places.
func TestDictated(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// taken back
		{"the pear tree hive nineteen no tell a lie twenty degrees", "hive=pear tree weather.temp_c=20"},
		{"queen on bar three no sir four", "queen.seen=yes queen.bar=4?"},
		{"willow pollen coming in green no more of a yellow", "incoming.pollen=yes incoming.pollen.plant=willow incoming.pollen.colour=yellow?"},
		// full, strong, unstung
		{"bar six sealed honey full up", "bars.6.capped_honey=yes bars.6.capped_honey.cover=1"},
		{"bar six sealed brood full both sides", "bars.6.capped_brood=yes bars.6.capped_brood.cover=1 bars.6.capped_brood.pattern=solid bars.6.capped_brood.side=both"},
		{"they are strong as a horse", "strength.word=strong"},
		{"none of us got stung", "temper.stings=0"},
		{"six bars have got bees on them", "strength.bars_of_bees=6"},
		{"stores grand", "stores.word=fair"},
		// the entrance
		{"the entrance was open so i made it narrower", "entrance=open actions.reduce_entrance=yes"},
		{"on saturday i will make the entrance narrower", "plans.reduce_entrance=yes plans.reduce_entrance.due=2026-05-16"},
	} {
		readsAs(t, "dictated", c.said, c.want)
	}
}
