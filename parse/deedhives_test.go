package parse

import "testing"

// TestDeedsOnHives reads what was done to a hive that the verb takes for its object, and
// what was given to it along with something else.
func TestDeedsOnHives(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Hive 1 is calm. Fed hive 2.", "hive=1 temper.score=4 / hive=2 actions.feed=yes"},
		{"Hive 1 is calm. I also treated hive 2 with oxalic acid and fed hive 3 a litre.",
			"hive=1 temper.score=4 / hive=2 actions.treat=yes actions.treat.what=oxalic acid / hive=3 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l"},
		{"hive one is calm i fed hive two a litre of syrup",
			"hive=1 temper.score=4 / hive=2 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"Hive 1 is calm. I gave hive 2 a pint of syrup.",
			"hive=1 temper.score=4 / hive=2 actions.feed=yes actions.feed.amount=1 actions.feed.unit=pt actions.feed.what=syrup"},
		{"Hive 1 is calm. Gave hive 2 two empty bars.", "hive=1 temper.score=4 / hive=2 actions.add_bar=yes actions.add_bar.count=2"},
		{"Hive 1 is calm. I gave hive 2 a bar.", "hive=1 temper.score=4 actions.move_bar=yes actions.move_bar.count=1 actions.move_bar.to_hive=2"},
		{"Juniper is calm.\nMarigold is edgy. Need to give Juniper two more bars on Friday.", "hive=juniper temper.score=4 plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-15 / hive=marigold temper.score=2"},
		{"Juniper is calm.\nMarigold is edgy. Gave Juniper two bars of brood.", "hive=juniper temper.score=4 actions.add_bar=yes? actions.add_bar.count=2? actions.add_bar.from_hive=marigold? / hive=marigold temper.score=2 actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.to_hive=juniper"},
		{"Hive 1 is calm. I took bars five and six over to hive 2.", "hive=1 temper.score=4 actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.bars=5,6 actions.move_bar.to_hive=2"},
		{"Hive 1 is calm. I took bars five and six out.", "hive=1 temper.score=4 actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=5,6"},
		{"Hive 1 is calm. I'll feed it on Friday if I'm spared.", "hive=1 temper.score=4 plans.feed=yes plans.feed.due=2026-05-15"},
		{"Hive 1 is calm. I'll feed it on Friday if it is light.", "hive=1 temper.score=4"},
		{"I fed Mulberry hive a litre of syrup.", "hive=mulberry actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"Mulberry has eggs. I fed Juniper a pound of fondant.",
			"hive=mulberry contents.eggs=yes / hive=juniper actions.feed=yes actions.feed.amount=1 actions.feed.unit=lb actions.feed.what=fondant"},
		{"We have three since Tuesday, and all that because I split Juniper on that day. Bar two eggs.", "hive=juniper bars.2.eggs=yes earlier.split=yes earlier.split.on=2026-05-12"},
		// two things given in one breath
		{"Gave them a pint of syrup and two bars.", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=pt actions.feed.what=syrup actions.add_bar=yes actions.add_bar.count=2"},
		{"Added three new bars and a pint of syrup.", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=pt actions.feed.what=syrup actions.add_bar=yes actions.add_bar.count=3"},
		{"On Friday I will give them a pint of syrup and a bar.", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=pt plans.feed.what=syrup plans.feed.due=2026-05-15 plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-15"},
		{"Gave them a pint of syrup and on Friday I mean to feed them again.", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=pt actions.feed.what=syrup plans.feed=yes plans.feed.due=2026-05-15"},
	} {
		readsAs(t, "deed", c.said, c.want)
	}
}

// TestFoundInHives reads what is told before the hive that it was found in.
func TestFoundInHives(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Hive 1 is calm. Larvae in hive 2.", "hive=1 temper.score=4 / hive=2 contents.open_brood=yes"},
		{"Hive 1 is calm, larvae in hive 2.", "hive=1 temper.score=4 / hive=2 contents.open_brood=yes"},
		{"hive one is calm larvae in hive two", "hive=1 temper.score=4 / hive=2 contents.open_brood=yes"},
		{"Hive 1 is calm. Queen seen in hive 2 on bar 5.", "hive=1 temper.score=4 / hive=2 queen.seen=yes queen.bar=5"},
		{"Hive 1 is calm. The queen of hive 2 was on bar 4.", "hive=1 temper.score=4 / hive=2 queen.seen=yes queen.bar=4"},
		{"Hive 1 is calm. The entrance of hive 2 is reduced.", "hive=1 temper.score=4 / hive=2 entrance=reduced"},
		{"Hive 1 is calm. We closed up the entrance of hive 2 at dusk, as she told us to.", "hive=1 temper.score=4 / hive=2 actions.close_entrance=yes"},
		{"Hive 1 is calm. Two stings from hive 2.", "hive=1 temper.score=4 / hive=2 temper.stings=2"},
		{"Hive 1 is calm. Saw eggs in hive 2 on bar 5 and larvae in hive 3.", "hive=1 temper.score=4 / hive=2 bars.5.eggs=yes / hive=3 contents.open_brood=yes"},
		{"Juniper is calm, with eggs on bar 2. Queen seen in Marigold on bar 5.", "hive=juniper temper.score=4 bars.2.eggs=yes / hive=marigold queen.seen=yes queen.bar=5"},
		// what only likens one hive to another
		{"Hive 1 has less pollen than in hive 2.", "hive=1 contents.pollen=yes"},
		{"Hive 1. No eggs, unlike hive 2.", "hive=1 contents.eggs=no"},
		{"Hive 1. As in hive 2, eggs on bar three.", "hive=1 bars.3.eggs=yes"},
		{"Hive 1 is calm. Moved two bars of brood in from hive 2.", "hive=1 temper.score=4 actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.from_hive=2"},
		{"Hive 1 is calm. Moved two bars of brood from hive 1 to hive 2.", "hive=1 temper.score=4 actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.to_hive=2"},
		// the weather before it is every hive's
		{"Sunny, 18 degrees, and eggs on bar four of hive 1. Hive 2 is calm.", "hive=1 weather.sky=sunny weather.temp_c=18 bars.4.eggs=yes / hive=2 weather.sky=sunny weather.temp_c=18 temper.score=4"},
	} {
		readsAs(t, "found", c.said, c.want)
	}
}
