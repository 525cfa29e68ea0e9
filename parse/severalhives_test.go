package parse

import "testing"

// TestSeveralHives reads what is told of several hives at once.
func TestSeveralHives(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Both hives are calm. Hive 1 has eggs. Hive 2 has larvae.", "hive=1 temper.score=4 contents.eggs=yes / hive=2 temper.score=4 contents.open_brood=yes"},
		{"both hives are calm hive one has eggs hive two has larvae", "hive=1 temper.score=4 contents.eggs=yes / hive=2 temper.score=4 contents.open_brood=yes"},
		{"Both hives are calm. Hive 1 is edgy. Hive 2 has larvae.", "hive=1 temper.score=2 / hive=2 temper.score=4 contents.open_brood=yes"},
		{"Neither hive had mice. Hive 1 has eggs. Hive 2 has larvae.", "hive=1 signs.mice=no contents.eggs=yes / hive=2 signs.mice=no contents.open_brood=yes"},
		{"Hive 1 has eggs. Hive 2 has larvae. Both are calm and neither had mice.",
			"hive=1 temper.score=4? signs.mice=no? contents.eggs=yes / hive=2 temper.score=4? signs.mice=no? contents.open_brood=yes"},
		{"Hives 1 and 3 are calm. Hive 2 is edgy.", "hive=1 temper.score=4 / hive=3 temper.score=4 / hive=2 temper.score=2"},
		{"H1 + H3: fed 1 l. H2: calm.", "hive=1 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l / hive=3 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l / hive=2 temper.score=4"},
		{"Hive 1 is calm. Hive 2 is edgy. Both hives are to be inspected on Sunday.",
			"hive=1 temper.score=4 plans.inspect=yes plans.inspect.due=2026-05-17 / hive=2 temper.score=2 plans.inspect=yes plans.inspect.due=2026-05-17"},
		{"We have two hives, Juniper and Tansy. Juniper is calm. No eggs in Tansy. Pollen is coming in at both.",
			"hive=juniper temper.score=4 incoming.pollen=yes? / hive=tansy contents.eggs=no incoming.pollen=yes?"},
		{"There are three colonies here: Tansy, Borage and Fennel. Eggs in Tansy and Fennel. No eggs in Borage. None of the three colonies had mice.",
			"hive=tansy contents.eggs=yes signs.mice=no / hive=borage contents.eggs=no signs.mice=no / hive=fennel contents.eggs=yes signs.mice=no"},
		{"Fennel is calm. It is intended to requeen Fennel on Friday.", "hive=fennel temper.score=4 plans.requeen=yes plans.requeen.due=2026-05-15"},
		{"Juniper is calm. Tansy has enough stores, and no treatment either. Mice were in.", "hive=juniper temper.score=4 / hive=tansy stores.word=fair signs.mice=yes"},
		{"I did the lane tonight. Ladle, Sieve, Whisk. They all had eggs. Ladle was strong. Sieve was calm. Whisk was angry.", "hive=ladle contents.eggs=yes strength.word=strong / hive=sieve contents.eggs=yes temper.score=4 / hive=whisk contents.eggs=yes temper.score=1"},
		{"Ladle is strong. Sieve is calm. They both had eggs.", "hive=ladle strength.word=strong contents.eggs=yes? / hive=sieve temper.score=4 contents.eggs=yes?"},
		// bars, not hives
		{"Hive 1 is calm. Hive 2 is calm. Bars 3 and 4 have eggs. Both are full of honey.",
			"hive=1 temper.score=4 / hive=2 temper.score=4 bars.3.eggs=yes bars.3.honey=yes bars.3.honey.cover=1 bars.4.eggs=yes bars.4.honey=yes bars.4.honey.cover=1"},
		{"Hive 1 is calm. Eggs in hive 2 and hive 3 is edgy.", "hive=1 temper.score=4 / hive=2 contents.eggs=yes / hive=3 temper.score=2"},
	} {
		readsAs(t, "several", c.said, c.want)
	}
}
