package parse

import "testing"

// TestWriteUps reads what people write up afterwards: deeds in the passive, questions
// that they answer themselves, hives named without the word.
func TestWriteUps(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// deeds in the passive
		{"Two further bars were added behind bar ten.", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=10"},
		{"An empty bar was placed between bars four and five.", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=4"},
		{"One new bar was added.", "actions.add_bar=yes actions.add_bar.count=1"},
		{"Two bars will be added on Saturday.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-16"},
		{"The entrance was then closed.", "actions.close_entrance=yes"},
		{"The entrance has been narrowed.", "actions.reduce_entrance=yes"},
		{"The entrance was closed.", "entrance=closed"},
		{"The entrance is reduced.", "entrance=reduced"},
		{"The entrance was reduced with a strip drilled to 8 mm.", "entrance=reduced"},
		{"The floor has been cleaned and the entrance reduced.", "actions.clean_floor=yes actions.reduce_entrance=yes"},
		{"Two bars were taken out, and the follower was moved forward by two bars.", "actions.remove_bar=yes actions.remove_bar.count=2 actions.move_follower=yes actions.move_follower.count=2 actions.move_follower.direction=forward"},
		{"Bars 8 and 9 were bare, so both were removed.", "bars.8.comb.size=bare bars.9.comb.size=bare actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=8,9"},
		{"Hive 4. Bar six, which has eggs, was moved to hive two.", "hive=4 bars.6.eggs=yes actions.move_bar=yes actions.move_bar.bar=6 actions.move_bar.to_hive=2"},
		{"The three sealed cells on bar seven were cut down.", "actions.cut_cells=yes actions.cut_cells.bar=7 actions.cut_cells.count=3"},
		{"The comb on bar five was cut free of the wall.", "actions.free_comb=yes actions.free_comb.bar=5"},
		{"A kilo of fondant has been laid on the bars.", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=kg actions.feed.what=fondant"},
		{"She was unmarked, so she was duly marked blue.", "queen.marked=yes queen.colour=blue actions.mark_queen=yes"},
		// what one had to do, and turned phrases
		{"I had to remove bar twelve.", "actions.remove_bar=yes actions.remove_bar.bar=12"},
		{"I took the liberty of adding two bars.", "actions.add_bar=yes actions.add_bar.count=2"},
		{"Out came bar nine.", "actions.remove_bar=yes actions.remove_bar.bar=9"},
		{"Bar nine was ripe, so that one came home with me, six pounds of it.", "actions.harvest=yes actions.harvest.bar=9 actions.harvest.amount=6 actions.harvest.unit=lb"},
		{"My intention is to inspect again in a fortnight.", "plans.inspect=yes plans.inspect.due=2026-05-28"},
		// the writer answers
		{"Did I see the queen? I did not.", "queen.seen=no"},
		{"Did we find eggs? We did, on bars four and five.", "bars.4.eggs=yes bars.5.eggs=yes"},
		{"Did we find the queen? No, we did not.", "queen.seen=no"},
		{"Was there any chalkbrood? Not a trace.", "signs.chalkbrood=no"},
		{"Did I see hive beetles? Three of the brutes.", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=3"},
		{"Did they like me? They did not. Is it my fault?", ""},
		// days gone by, and what is general or somebody else's
		{"Hive 4 is calm. Three litres of syrup went in. They had two litres of syrup on Tuesday as well.", "hive=4 temper.score=4 actions.feed=yes actions.feed.amount=3 actions.feed.unit=l actions.feed.what=syrup earlier.fed=yes earlier.fed.on=2026-05-12 earlier.fed.amount=2 earlier.fed.unit=l earlier.fed.what=syrup"},
		{"The queen was on bar 4; her mark has rubbed off over the winter.", "queen.seen=yes queen.bar=4 queen.marked=no queen.worn=yes"},
		{"BIAS still on five bars.", "contents.eggs=yes contents.eggs.bars=5 contents.open_brood=yes contents.open_brood.bars=5 contents.capped_brood=yes contents.capped_brood.bars=5"},
		{"Half a cup is reckoned as 300 bees, and anything over nine mites in a wash is said to be too many.", ""},
		{"Ash is weak. Stan's bees over the road have foulbrood.", "hive=ash strength.word=weak"},
		{"Hive 4 is calm. Your own bees sound fierce, my dear, four stings and all.", "hive=4 temper.score=4"},
		{"Hive 4. I kept the lid on, so nothing to say of the brood.", "hive=4"},
		{"Hive 6 is a bit light. Hive 7 is light on bees.", "hive=6 stores.word=light? / hive=7 strength.word=weak"},
		// hives of a round
		{"No. 4 first. QNS.\nNo. 7. Got stung once.\nNo. 4 again: no eggs. Must feed No. 7 on Sunday.", "hive=4 queen.seen=no contents.eggs=no / hive=7 temper.stings=1 plans.feed=yes plans.feed.due=2026-05-17"},
		{"In the hive number one I have seen the queen.\nIn the number two I have not seen her.", "hive=1 queen.seen=yes / hive=2 queen.seen=no"},
		{"Hive 2 is calm. Hive 3: no eggs. I must feed hive 2 on Sunday.", "hive=2 temper.score=4 plans.feed=yes plans.feed.due=2026-05-17 / hive=3 contents.eggs=no"},
		{"Hive 2 is calm. Hive 3: no eggs. I am going to harvest from hive 2 again next week.", "hive=2 temper.score=4 plans.harvest=yes plans.harvest.due=2026-05-21 / hive=3 contents.eggs=no"},
		{"Lodge: calm.\nNumber 6: eggs.\nPaddock: no eggs.", "hive=lodge temper.score=4 / hive=6 contents.eggs=yes / hive=paddock contents.eggs=no"},
		{"Walnut first. They are bursting.\nNow Damson, of which I am less proud. I saw the queen on bar 3.", "hive=walnut strength.word=strong / hive=damson queen.seen=yes queen.bar=3"},
		{"Two colonies, North and South. 24C and no wind.\n\nNORTH: calm.\n\nSOUTH: no eggs.", "hive=north weather.temp_c=24 weather.wind=calm temper.score=4 / hive=south weather.temp_c=24 weather.wind=calm contents.eggs=no"},
		// hives without the word
		{"The colony known as Bracken covers six bars.", "hive=bracken strength.bars_of_bees=6"},
		{"Not a breath of wind, and Biscuit was bearding.", "hive=biscuit weather.wind=calm signs.bearding=yes"},
		{"I walked over to Gorse. Sealed brood on bar four.", "hive=gorse bars.4.capped_brood=yes"},
		{"The colony by the gate, Janus, is weak.", "hive=janus strength.word=weak"},
		{"Saffron first. Saffron has eggs on bar four. Then Cinnamon, who is another matter: no eggs.", "hive=saffron bars.4.eggs=yes / hive=cinnamon contents.eggs=no"},
		{"The middle hive has eggs on bar two.", "hive=middle bars.2.eggs=yes"},
		// findings
		{"Bars two to four contain brood in all stages, and the laying pattern as a whole is most satisfactory.", "bars.2.eggs=yes bars.2.open_brood=yes bars.2.capped_brood=yes bars.3.eggs=yes bars.3.open_brood=yes bars.3.capped_brood=yes bars.4.eggs=yes bars.4.open_brood=yes bars.4.capped_brood=yes brood_pattern=solid"},
		{"Eggs on the fourth and fifth bars.", "bars.4.eggs=yes bars.5.eggs=yes"},
		{"The brood reaches from the third comb to the fifth.", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes"},
		{"Bar nine is given over entirely to honey.", "bars.9.honey=yes bars.9.honey.cover=1"},
		{"Bars one and two were heavy with honey.", "bars.1.honey=yes bars.1.honey.amount=much bars.2.honey=yes bars.2.honey.amount=much"},
		{"On the sill I found dead bees, twelve in all.", "signs.dead_bees=yes signs.dead_bees.count=12"},
		{"Below 12 °C a long look does harm.", ""},
		{"Mass 31.8 kg, stores judged adequate.", "weight_kg=31.8 stores.word=fair"},
		{"The combs weighed six pounds.", ""},
		{"Hive 2, which was split last month, has eggs on bar three.", "hive=2 bars.3.eggs=yes earlier.split=yes"},
		{"Bars six and eight are full of sealed brood.", "bars.6.capped_brood=yes bars.6.capped_brood.cover=1 bars.6.capped_brood.pattern=solid bars.8.capped_brood=yes bars.8.capped_brood.cover=1 bars.8.capped_brood.pattern=solid"},
		{"Bar six is all sealed brood.", "bars.6.capped_brood=yes bars.6.capped_brood.cover=1"},
		{"Bar six is half full of sealed brood.", "bars.6.capped_brood=yes bars.6.capped_brood.cover=0.5"},
		{"I took bars 8 and 9 for the kitchen.\nBoth were full of honey.", "actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=8,9 bars.8.honey=yes bars.8.honey.cover=1 bars.9.honey=yes bars.9.honey.cover=1"},
		{"Harvested bars 9 and 10.\nThey were capped honey on the front.", "actions.harvest=yes actions.harvest.count=2 actions.harvest.bars=9,10 bars.9.capped_honey=yes bars.9.capped_honey.side=front bars.10.capped_honey=yes bars.10.capped_honey.side=front"},
		{"Harvested bars 9 and 10.\nThey have plenty of honey.", "actions.harvest=yes actions.harvest.count=2 actions.harvest.bars=9,10 contents.honey=yes contents.honey.amount=much"},
		{"Bars 2 to 5 have pollen.\nAll three had eggs.", "bars.2.pollen=yes bars.3.pollen=yes bars.4.pollen=yes bars.5.pollen=yes contents.eggs=yes"},
		{"Sealed brood on six bars, QS on b4.", "contents.capped_brood=yes contents.capped_brood.bars=6 queen.seen=yes queen.bar=4"},
		{"Saw her stroll off along bar 7.\nNo eggs yet.", "queen.seen=yes queen.bar=7 contents.eggs=no"},
		{"Gentle enough that the gloves stayed in the shed.", "temper.score=4"},
		{"Calm enough.", "temper.score=3"},
		// conditions by the order of words
		{"Had there been sealed cells I would have made a split.", ""},
		{"Were there to be eggs on bar four I would be surprised.", ""},
		{"Had they been short of stores I would have fed them.", ""},
		// plans that name the hive inside
		{"We are going to clean the floor of the yard hive on Sunday.", "hive=yard plans.clean_floor=yes plans.clean_floor.due=2026-05-17"},
		{"I must look into the yard hive again next Tuesday.", "hive=yard plans.inspect=yes plans.inspect.due=2026-05-19"},
		// word order from other tongues
		{"The bar two and the bar three are full of pollen.", "bars.2.pollen=yes bars.2.pollen.cover=1 bars.3.pollen=yes bars.3.pollen.cover=1"},
		{"Eggs on bar two and the bar three is full of pollen.", "bars.2.eggs=yes bars.3.pollen=yes bars.3.pollen.cover=1"},
		{"From the acacia trees they are bringing in nectar.", "incoming.nectar=yes incoming.nectar.plant=acacia"},
		{"They are a very strong people, on nine bars sit the bees.", "strength.word=strong strength.bars_of_bees=9"},
		{"The comb on the bar eight is new and white.", "bars.8.comb.new=yes"},
		{"It has eggs on bar three, and was bringing in hazel pollen.", "bars.3.eggs=yes incoming.pollen=yes incoming.pollen.plant=hazel"},
	} {
		readsAs(t, "write-up", c.said, c.want)
	}
}
