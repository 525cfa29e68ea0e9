package parse

import "testing"

// strangers are manners that notes by strangers were found to have, in sentences that are
// none of theirs.
var strangers = map[string][]saying{
	"hives by letters": {
		{"let's begin at hive a bar two eggs\nhive b bar seven pollen", "hive=a bars.2.eggs=yes / hive=b bars.7.pollen=yes"},
		{"then into hive a bar two eggs\nhive d bar seven pollen", "hive=a bars.2.eggs=yes / hive=d bars.7.pollen=yes"},
		{"this is hive six no i'm joking it's hive nine eggs on bar two", "hive=9? bars.2.eggs=yes"},
		{"On Sunday I had given the quince hive two bars. Bar 9 is bare.", "hive=quince bars.9.comb.size=bare earlier.bar_added=yes earlier.bar_added.count=2 earlier.bar_added.on=2026-05-10"},
		{"Hive 3 eggs on bar 2. Hive 7 no eggs. Must get back into hive 3 on Friday.", "hive=3 bars.2.eggs=yes plans.inspect=yes plans.inspect.due=2026-05-15 / hive=7 contents.eggs=no"},
		{"Before mine I gave Bertrand a hand with his, brood from end to end. Eggs on bar 4.", "bars.4.eggs=yes"},
	},
	"hives told one by one": {
		{"Two colonies today, the quince hive and the medlar hive. The former is calm, eggs on bar 5. The latter is queenless.", "hive=quince temper.score=4 bars.5.eggs=yes / hive=medlar queenright=no"},
		{"The quince hive and the medlar hive were opened. The former has eggs on bar 2, the latter has larvae on bar 4.", "hive=quince bars.2.eggs=yes / hive=medlar bars.4.open_brood=yes"},
		{"My three, the quince hive, the medlar hive and the sloe hive.\nThe first is calm. Eggs on bar 4.\nThe middle one is weak.\nThe third weighed 31 kg.", "hive=quince temper.score=4 bars.4.eggs=yes / hive=medlar strength.word=weak / hive=sloe weight_kg=31"},
		{"The quince hive has eggs on bar 2. The medlar hive is calm. The other one is short of stores.", "hive=quince bars.2.eggs=yes stores.word=light / hive=medlar temper.score=4"},
		{"Hive 1 was calm.\nHive 2 was queenless.\nThe third hive has larvae on bar 3.", "hive=1 temper.score=4 / hive=2 queenright=no / hive=3 bars.3.open_brood=yes"},
		{"Hive 3. The first bar has eggs. The second is honey.", "hive=3 bars.1.eggs=yes bars.2.honey=yes"},
		{"The quince hive has eggs on bars 2 and 3, and the latter is full of pollen too.", "hive=quince bars.2.eggs=yes bars.3.eggs=yes bars.3.pollen=yes bars.3.pollen.cover=1"},
		{"Thinking about the quince hive today. In the medlar hive bar 5 has eggs.", "hive=medlar bars.5.eggs=yes"},
		{"Both were fine at noon, and on the Chapel one I shut the entrance. The Quay hive was calm.", "hive=chapel actions.close_entrance=yes / hive=quay temper.score=4"},
	},
	"bars": {
		{"From the second bar to the fifth there was pollen.", "bars.2.pollen=yes bars.3.pollen=yes bars.4.pollen=yes bars.5.pollen=yes"},
		{"bar eleven fresh comb three quarters built", "bars.11.comb.new=yes bars.11.comb.drawn=0.75"},
		{"Bar 11: new comb 2/3 built", "bars.11.comb.new=yes bars.11.comb.drawn=0.667"},
		{"bar eleven three quarters built", "bars.11.comb.drawn=0.75"},
		{"Bars 1 and 2 pollen; 5 has brood of every stage.", "bars.1.pollen=yes bars.2.pollen=yes bars.5.eggs=yes bars.5.open_brood=yes bars.5.capped_brood=yes"},
		{"bar three larvae bar four ditto bar five capped honey both sides", "bars.3.open_brood=yes bars.4.open_brood=yes? bars.5.capped_honey=yes bars.5.capped_honey.side=both"},
		{"I went on to bar 9, which was half pollen, and to bar 8, where the drone brood was patchy.", "bars.9.pollen=yes bars.9.pollen.cover=0.5 bars.8.drone_brood=yes bars.8.drone_brood.pattern=patchy"},
		{"Bar 12 has a nub of new comb.", "bars.12.comb.size=started bars.12.comb.new=yes"},
		{"Long chains of bees hang off bar 12.", "bars.12.festooning=yes"},
	},
	"cells": {
		{"queen cups on bar four five of them no eggs in them bar six honey", "bars.4.queen_cells.cup=yes bars.4.queen_cells.cup.count=5 bars.6.honey=yes"},
		{"swarm cells six of them on bar two", "bars.2.queen_cells.any=yes bars.2.queen_cells.any.count=6 bars.2.queen_cells.any.kind=swarm"},
		{"Queen cells, four of them, all sealed, on bar 2.", "bars.2.queen_cells.capped=yes bars.2.queen_cells.capped.count=4"},
		{"a little play cup on bar two", "bars.2.queen_cells.cup=yes bars.2.queen_cells.cup.count=1"},
		{"Cut two cells off bar 2.", "actions.cut_cells=yes actions.cut_cells.count=2 actions.cut_cells.bar=2"},
	},
	"signs": {
		{"small hive beetle i saw five", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=5"},
		{"Hive beetles, saw five of them on bar 2.", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=5 signs.small_hive_beetle.bar=2"},
		{"No chalkbrood, saw four queen cups on bar 2.", "signs.chalkbrood=no bars.2.queen_cells.cup=yes bars.2.queen_cells.cup.count=4"},
		{"No dung streaks.", "signs.dysentery=no"},
	},
	"deeds": {
		{"Bar 4 ran into the wall, so I carved it off the wall and shaved the bottom edge.", "bars.4.comb.attached=wall actions.free_comb=yes actions.free_comb.bar=4 actions.trim_comb=yes actions.trim_comb.bar=4"},
		{"I closed the entrance, which I must open tomorrow.", "actions.close_entrance=yes plans.open_entrance=yes plans.open_entrance.due=2026-05-15"},
		{"We opened the entrance, which had stood reduced all winter.", "actions.open_entrance=yes"},
		{"I harvested three bars, which gave me nine pounds.", "actions.harvest=yes actions.harvest.count=3 actions.harvest.amount=9 actions.harvest.unit=lb"},
		{"I moved the follower board forward from bar 11 to bar 8.", "follower.bar=11 actions.move_follower=yes actions.move_follower.to=8 actions.move_follower.direction=forward"},
		{"Moved the follower from 8 to 11.", "follower.bar=8 actions.move_follower=yes actions.move_follower.to=11"},
		{"We split them none too soon.", "actions.split=yes"},
		{"i ladled in one litre of syrup", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"The new queen I introduced on 2 May is about.", "earlier.requeened=yes earlier.requeened.on=2026-05-02"},
	},
	"queen": {
		{"bar four larvae and she's there no paint on her", "bars.4.open_brood=yes queen.seen=yes queen.bar=4 queen.marked=no"},
		{"she's still there bar five", "queen.seen=yes queen.bar=5"},
		{"She's still in her cage. Larvae on bar 5.", "bars.5.open_brood=yes"},
		{"I found eggs on bar 4 and the queen, who has a red dot, on bar 5.", "bars.4.eggs=yes queen.seen=yes queen.bar=5 queen.marked=yes queen.colour=red"},
	},
	"plans": {
		{"Needs two more bars on Saturday.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-16"},
		{"Eleven seams. Another bar wanted on Saturday.", "strength.bars_of_bees=11 plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-16"},
		{"Needs two bars of honey for winter.", "contents.honey=yes contents.honey.bars=2"},
		{"Two bars needed straightening.", ""},
		{"Leonie thinks I should split them. We shall see.", ""},
		{"Plan is thymol on Monday.", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-18"},
		{"look at it again on the twenty fifth", "plans.inspect=yes plans.inspect.due=2026-05-25"},
	},
}

func TestStrangers(t *testing.T) { readSayings(t, strangers) }
