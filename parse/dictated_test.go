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
		// the same again
		{"bar three pollen forty percent same as three for bar two", "bars.3.pollen=yes bars.3.pollen.cover=0.4 bars.2.pollen=yes? bars.2.pollen.cover=0.4"},
		{"bar three pollen\nsame again for bars four and five", "bars.3.pollen=yes bars.4.pollen=yes? bars.5.pollen=yes?"},
		{"the divided hive\ni split them bars two and three went over to the plum hive", "actions.split=yes actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.bars=2,3 actions.move_bar.to_hive=plum"},
		// said behind what it is said of
		{"bar two nectar is there bar three larvae also is there and queen i saw", "bars.2.nectar=yes bars.3.open_brood=yes queen.seen=yes queen.bar=3"},
		{"queen seen on bar two she is not having a mark", "queen.seen=yes queen.bar=2 queen.marked=no"},
		{"bar two larvae and who's standing on it but the queen", "bars.2.open_brood=yes queen.seen=yes queen.bar=2"},
		{"water the bees are bringing from the pond", "incoming.water=yes"},
		{"bar two chalkbrood my lad reckons seven of them", "signs.chalkbrood=yes signs.chalkbrood.count=7 signs.chalkbrood.bar=2"},
		{"there was about a quarter left in the feeder", "feeder=part"},
		{"bar six er is that nectar yes he says it is nectar", "bars.6.nectar=yes"},
		// the count goes down from the last bar
		{"hive two nine bars in use\nbar nine bare\nnext one just started", "hive=2 bars_total=9 bars.9.comb.size=bare bars.8.comb.size=started"},
		{"bar five eggs\nfour queen red dot larvae dead center", "bars.5.eggs=yes queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=red bars.4.open_brood=yes bars.4.open_brood.place=middle"},
		{"there's a virgin queen bar six and no eggs yet", "queen.seen=yes queen.bar=6 queen.virgin=yes contents.eggs=no"},
		{"hello folks willow hive it's warm", "hive=willow"},
	} {
		readsAs(t, "dictated", c.said, c.want)
	}
}
