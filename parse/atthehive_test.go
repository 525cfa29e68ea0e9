package parse

import "testing"

// TestAtTheHive reads what is said with a comb in the hand: asked and answered, counted on, pointed
// at.
func TestAtTheHive(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"okay number seven er they are packed in here\nbar four eggs", "bars.4.eggs=yes hive=7 strength.word=strong"},
		{"right so hive a um i did a sugar roll of 300 bees and got six mites", "hive=a mites.bees=300 mites.count=6 mites.method=sugar"},
		{"hive a er they're gentle", "hive=a temper.score=4"},
		{"two sealed supersedure cells bar four\none charged bar nine", "bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=2 bars.4.queen_cells.capped.kind=supersedure bars.9.queen_cells.charged=yes bars.9.queen_cells.charged.count=1"},
		{"bar six one charged queen cell\nand bar eight one capped so they are off soon", "bars.6.queen_cells.charged=yes bars.6.queen_cells.charged.count=1 bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=1"},
		{"bar five a queen cell bar six two more of those", "bars.5.queen_cells.any=yes bars.5.queen_cells.any.count=1 bars.6.queen_cells.any=yes bars.6.queen_cells.any.count=2"},
		{"bar three is that no wait is that eggs yeah eggs lots of eggs", "bars.3.eggs=yes bars.3.eggs.amount=much"},
		{"bar two is that honey no it's nectar on one side", "bars.2.nectar=yes bars.2.nectar.side=one"},
		{"that's emergency isn't it one capped emergency cell on bar six", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1 bars.6.queen_cells.capped.kind=emergency"},
		{"it's warm isn't it bar two pollen", "bars.2.pollen=yes"},
		{"bar four eggs yes i'm holding it up to the light", "bars.4.eggs=yes"},
		{"should have fed them when stores were low and i didn't", ""},
		{"hive ten now if i can get the lid off bar three honey", "bars.3.honey=yes hive=10"},
		{"queen's on four blue dot from last year", "queen.bar=4 queen.colour=blue queen.marked=yes queen.seen=yes"},
		{"bar two has honey from last autumn", "bars.2.honey=yes"},
		{"plan is two more bars on saturday", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-16"},
		{"next job is three new bars", "plans.add_bar=yes plans.add_bar.count=3"},
		{"bar five eggs\nbar six the same\nbar seven has a gap\ni can't find the queen i never do", "bars.5.eggs=yes bars.6.eggs=yes? queen.seen=no"},
		{"no eggs on bar two no eggs on three either", "bars.2.eggs=no bars.3.eggs=no"},
		{"oh bar six that's her yellow dot", "queen.bar=6 queen.colour=yellow queen.marked=yes queen.seen=yes"},
		{"that's her best pattern yet", ""},
		{"wasps yes ants no", "signs.ants=no signs.wasps=yes"},
		{"eggs no larvae yes", "contents.eggs=no contents.open_brood=yes"},
		{"pollen yes nectar no queen cells none", "contents.nectar=no contents.pollen=yes queen_cells.any=no"},
		{"honey yes no more to say", "contents.honey=yes"},
		{"Stores: bars 1 and 2 capped honey, bar 3 nectar", "bars.1.capped_honey=yes bars.2.capped_honey=yes bars.3.nectar=yes"},
		{"Stores: bars 1 and 2", "bars.1.honey=yes bars.2.honey=yes"},
		{"stores bars one and two full of honey", "bars.1.honey=yes bars.1.honey.cover=1 bars.2.honey=yes bars.2.honey.cover=1"},
		{"brood eggs on bar six", "bars.6.eggs=yes"},
		{"queen cells one capped supersedure cell on bar six", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1 bars.6.queen_cells.capped.kind=supersedure"},
		{"queen cells on bar four", "bars.4.queen_cells.any=yes"},
		{"she came walking down bar four", "queen.bar=4 queen.seen=yes"},
		{"the queen walked down bar five", "queen.bar=5 queen.seen=yes"},
		{"a few bees ran up my sleeve", ""},
		{"stores fair no sorry stores are heavy", "stores.word=heavy?"},
		{"stores light no i tell a lie heavy", "stores.word=heavy?"},
		{"bar seven brood one empty cup on eight mary thought it was an acorn", "bars.7.brood=yes bars.8.queen_cells.cup=yes bars.8.queen_cells.cup.count=1"},
		{"bar nine put in yesterday bear as expected", "bars.9.comb.size=bare? bars.9.placed=2026-05-13"},
		{"nine to five brood nice and solid", "bars.5.brood=yes bars.5.brood.pattern=solid bars.6.brood=yes bars.6.brood.pattern=solid bars.7.brood=yes bars.7.brood.pattern=solid bars.8.brood=yes bars.8.brood.pattern=solid bars.9.brood=yes bars.9.brood.pattern=solid"},
		{"bar twelve eggs eleven through nine full of honey", "bars.10.honey=yes bars.10.honey.cover=1 bars.11.honey=yes bars.11.honey.cover=1 bars.12.eggs=yes bars.9.honey=yes bars.9.honey.cover=1"},
		{"ten to five honey jars", ""},
		{"hive ten between the years as my mother says two degrees and overcast", "hive=10 weather.temp_c=2 weather.sky=overcast"},
		{"need to give hive four a litre of syrup on saturday", "hive=4 plans.feed=yes plans.feed.amount=1 plans.feed.unit=l plans.feed.what=syrup plans.feed.due=2026-05-16"},
		{"must give hive four two more bars on saturday", "hive=4 plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-16"},
		{"i must get hive two sorted out", "hive=2"},
		{"bar twelve i removed while i was in there", "actions.remove_bar=yes actions.remove_bar.bar=12"},
	} {
		readsAs(t, "at the hive", c.said, c.want)
	}
}
