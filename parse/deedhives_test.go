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
