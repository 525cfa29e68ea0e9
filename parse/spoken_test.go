package parse

import "testing"

// TestRunningSpeech reads what speakers say without a pause to part it.
func TestRunningSpeech(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// temper and strength between a hive and a verb
		{"hive two nervous gave it a litre of syrup", "hive=2 temper.score=2 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"hive two strong split them today", "hive=2 strength.word=strong actions.split=yes"},
		// a plan whose cue comes last
		{"a litre of syrup for them on friday remind me", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=l plans.feed.what=syrup plans.feed.due=2026-05-15"},
		{"open the entrance on saturday don't let me forget", "plans.open_entrance=yes plans.open_entrance.due=2026-05-16"},
		// not seen after all
		{"queen is in there but i couldn't find her", "queen.seen=no"},
		{"the queen is in there bar two eggs", "queen.seen=yes bars.2.eggs=yes"},
		{"not an egg anywhere the old queen was on bar three", "queen.seen=yes queen.bar=3 contents.eggs=no"},
		{"no eggs anywhere on bar three", "bars.3.eggs=no"},
		// repairs and answers
		{"bar six larvae patchy no no that's the sun on it solid", "bars.6.open_brood=yes? bars.6.open_brood.pattern=solid"},
		{"bar six capped brood patchy no that's bar seven", "bars.7.capped_brood=yes? bars.7.capped_brood.pattern=patchy"},
		{"is that wasps no no wasps", "signs.wasps=no"},
		{"stores are what would you say fair", "stores.word=fair"},
		// counts behind what they count, and places that are no bar's
		{"wasps at the entrance six of them", "signs.wasps=yes signs.wasps.count=6"},
		{"wasps at the entrance six counted", "signs.wasps=yes signs.wasps.count=6"},
		{"bar eight dark comb chalkbrood mummies nine on the floor", "bars.8.comb.old=yes signs.chalkbrood=yes signs.chalkbrood.count=9"},
		{"bar seven eggs there's burr comb under the roof", "bars.7.eggs=yes signs.burr_comb=yes"},
		{"bar four eggs and down on the floor there's small hive beetle", "bars.4.eggs=yes signs.small_hive_beetle=yes"},
		{"small hive beetles i smashed four of em", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=4"},
		{"wasps about i swatted three", "signs.wasps=yes signs.wasps.count=3"},
		{"small hive beetles on bar four i stepped on two of them", "signs.small_hive_beetle=yes signs.small_hive_beetle.bar=4 signs.small_hive_beetle.count=2"},
		{"small hive beetles i moved two bars", "signs.small_hive_beetle=yes actions.move_bar=yes actions.move_bar.count=2"},
		{"bar ten has no comb ants are climbing the legs of the stand", "bars.10.comb.size=bare signs.ants=yes"},
		{"bar ten has no comb ants are coming up the posts", "bars.10.comb.size=bare signs.ants=yes"},
		{"bar six eggs you can see them if you tilt it and the queen was on six", "bars.6.eggs=yes queen.seen=yes queen.bar=6"},
		{"bar six eggs you can see them if you hold it up to the sun and the queen was on six too bar seven the comb is wavy", "bars.6.eggs=yes queen.seen=yes queen.bar=6 bars.7.comb.straight=no"},
		{"they're gentle if you go slow and we saw the queen on bar three", "temper.score=4 queen.seen=yes queen.bar=3"},
		{"leave them if you see eggs and the queen is there", ""},
		{"left the entrance reduced i'll need to look again in ten days", "entrance=reduced plans.inspect=yes plans.inspect.due=2026-05-24"},
		{"floor left open i'm going to feed them on friday", "floor=open plans.feed=yes plans.feed.due=2026-05-15"},
		{"bar four half full of honey no maybe a third", "bars.4.honey=yes? bars.4.honey.cover=0.333"},
		{"bar four is capped brood ninety percent no wait there's a big hole in it so like seventy percent", "bars.4.capped_brood=yes? bars.4.capped_brood.cover=0.7"},
		{"bar six eggs five eggs for is drone brood three pollen", "bars.6.eggs=yes bars.5.eggs=yes bars.4.drone_brood=yes bars.3.pollen=yes"},
		{"brood on just the two bars now", "contents.brood=yes contents.brood.bars=2"},
		{"the bees a mite testy", "temper.score=2"},
		// what was done to "that one", and what follows
		{"bar nine is empty so i took that one out a bit of brood on bar four", "bars.4.brood=yes bars.4.brood.amount=little bars.9.comb.size=bare actions.remove_bar=yes actions.remove_bar.bar=9"},
		{"gave them syrup five hundred mil of it", "actions.feed=yes actions.feed.amount=500 actions.feed.unit=ml actions.feed.what=syrup"},
		{"bar nine three quarters drawn comb", "bars.9.comb.drawn=0.75"},
	} {
		readsAs(t, "running speech", c.said, c.want)
	}
}
