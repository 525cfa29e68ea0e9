package parse

import "testing"

// ordinary are sentences that nobody would think hard to read.
var ordinary = map[string][]saying{
	// An ampersand is "and", in numbers and in ways of saying too.
	"ampersands": {
		{"Fed two & a half litres of syrup, weight 31 & a half kg.", "actions.feed=yes actions.feed.amount=2.5 actions.feed.unit=l actions.feed.what=syrup weight_kg=31.5"},
		{"Bars 3 & 4 eggs & grubs, bar 9 capped honey front & back.", "bars.3.eggs=yes bars.3.open_brood=yes bars.4.eggs=yes bars.4.open_brood=yes bars.9.capped_honey=yes bars.9.capped_honey.side=both"},
		{"Bars 3&4 eggs. The bees were running up & down the combs.", "bars.3.eggs=yes bars.4.eggs=yes temper.runny=yes"},
	},
	"left and right": {
		{"Bar 6 capped brood left and right.", "bars.6.capped_brood=yes bars.6.capped_brood.side=both"},
		{"Bar 6 has eggs on the left and right sides.", "bars.6.eggs=yes bars.6.eggs.side=both"},
	},
	// Signs counted on bees, and their bar behind a comma.
	"signs on bees": {
		{"Deformed wings on three bees, bar 5.", "signs.deformed_wings=yes signs.deformed_wings.count=3 signs.deformed_wings.bar=5"},
		{"Deformed wings on two bees, bar 5 eggs.", "signs.deformed_wings=yes signs.deformed_wings.count=2 bars.5.eggs=yes"},
	},
	// Mites with the bees of their sample.
	"samples": {
		{"Sugar roll 6/300.", "mites.method=sugar mites.count=6 mites.bees=300"},
		{"Mites: AW 3/300", "mites.method=wash mites.count=3 mites.bees=300"},
		{"SR 0/300", "mites.method=sugar mites.count=0 mites.bees=300"},
		{"Alcohol wash, 4 out of 300.", "mites.method=wash mites.count=4 mites.bees=300"},
		{"Soapy wash of 300 bees: 2 mites.", "mites.method=wash mites.count=2 mites.bees=300"},
		{"Varroa 3/300", "mites.count=3 mites.bees=300"},
		{"Bar 5 is 3/4 honey.", "bars.5.honey=yes bars.5.honey.cover=0.75"},
	},
	// Nothing done, and what is to be done without a verb.
	"nothing and lists": {
		{"Fed nil.", ""},
		{"Fed 0, added 0 bars", ""},
		{"Fed 0.5 l", "actions.feed=yes actions.feed.amount=0.5 actions.feed.unit=l"},
		{"To do: syrup, a mouse guard", "plans.feed=yes plans.feed.what=syrup"},
		{"To do: OA in Dec", "plans.treat=yes plans.treat.what=oxalic acid"},
		{"They need no syrup.", ""},
	},
	// Labels of comb, bars told of as those, a board at the back of a bar.
	"those and labels": {
		{"Festooning: bar 8", "bars.8.festooning=yes"},
		{"b7 drone brood on edge", "bars.7.drone_brood=yes bars.7.drone_brood.place=edge"},
		{"Sealed brood on 4, bees on edge", "bars.4.capped_brood=yes temper.score=2"},
		{"Cross comb: bars 6-7", "bars.6.comb.cross=yes bars.7.comb.cross=yes"},
		{"Mould on bars 10 and 11, so I took those two bars out.", "signs.mould=yes signs.mould.bars=10,11 actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=10,11"},
		{"Nine bars in use, follower at back of 9.", "bars_total=9 follower.bar=9"},
		{"The lime is over and they are fetching water.", "incoming.water=yes"},
		{"She is on bar three nae paint on her.", "queen.seen=yes queen.bar=3 queen.marked=no"},
		{"No eggs to be seen, no larvae either, only sealed brood on 6.", "contents.eggs=no contents.open_brood=no bars.6.capped_brood=yes"},
		{"H4. b7 -> H5.", "hive=4 actions.move_bar=yes actions.move_bar.bar=7 actions.move_bar.to_hive=5"},
		{"H4. b11 → b9", "hive=4 actions.move_bar=yes actions.move_bar.bar=11 actions.move_bar.to=9"},
	},
	// What was seen stands before who saw it.
	"seen there": {
		{"Eggs I saw on bar 4.", "bars.4.eggs=yes"},
		{"One sealed swarm cell we found on bar 6.", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1 bars.6.queen_cells.capped.kind=swarm"},
		{"bar four eggs I found on bar five larvae", "bars.4.eggs=yes bars.5.open_brood=yes"},
	},
	// A top bar by its number, and the top of a comb.
	"top bars": {
		{"Eggs on top bar 3.", "bars.3.eggs=yes"},
		{"On top bar 3 are fresh eggs.", "bars.3.eggs=yes"},
		{"Queen seen on top bar 5 white dot", "queen.seen=yes queen.bar=5 queen.marked=yes queen.colour=white"},
		{"Honey on top bars 5 and 6.", "bars.5.honey=yes bars.6.honey=yes"},
		{"honey on top bar five eggs", "contents.honey=yes bars.5.eggs=yes"},
	},
	// Temper beside other words of it, weather at the head, a deed or a state behind "and".
	"temper, weather and what stands behind and": {
		{"Calm, not runny.", "temper.score=4 temper.runny=no"},
		{"H2. Calm, no followers.", "hive=2 temper.score=4"},
		{"hive three quiet bunch no brood anywhere", "hive=3 contents.brood=no temper.score=4"},
		{"I didn't sight the queen.", "queen.seen=no"},
		{"Middling in strength.", "strength.word=moderate"},
		{"Bar 11: grown onto the side wall.", "bars.11.comb.attached=wall"},
		{"Clear and calm this morning. Fence hive: eggs on bar 3", "hive=fence bars.3.eggs=yes weather.sky=sunny weather.wind=calm"},
		{"The last visit of the year, 12 degrees and cloudy.", "weather.temp_c=12 weather.sky=cloudy"},
		{"Brood pepperpot on 3 and 4.", "bars.3.brood=yes bars.3.brood.pattern=patchy bars.4.brood=yes bars.4.brood.pattern=patchy"},
		{"I marked her yellow and let her go.", "queen.marked=yes queen.colour=yellow actions.mark_queen=yes"},
		{"Eggs on bar 4 and added a bar last week.", "bars.4.eggs=yes earlier.bar_added=yes earlier.bar_added.count=1"},
		{"Fed 2 litres and take out bar 13 next time.", "actions.feed=yes actions.feed.amount=2 actions.feed.unit=l plans.remove_bar=yes plans.remove_bar.bar=13"},
		{"Cleaned the floor and stores are light.", "actions.clean_floor=yes stores.word=light"},
		{"Bars 4 to 6 larvae and festooning on bar 11.", "bars.4.open_brood=yes bars.5.open_brood=yes bars.6.open_brood=yes bars.11.festooning=yes"},
		{"I found no sign of chalkbrood.", "signs.chalkbrood=no"},
	},

	"few words": {
		{"hive 2 going back to front bar fifteen is empty next one has nectar", "hive=2 bars.14.nectar=yes bars.15.comb.size=bare"},
		{"they swarmed on saturday i was at a wedding", "earlier.swarmed=yes earlier.swarmed.on=2026-05-09"},
		{"frame ate is cross comb", "bars.8.comb.cross=yes"},
		{"Honey, 9 to 10.", "bars.9.honey=yes bars.10.honey=yes"},
		{"Sealed cells, four on 5 and one on 8.", "bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=4 bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=1"},
		{"3 cups on 4, 2 on 7", "bars.4.queen_cells.cup=yes bars.4.queen_cells.cup.count=3 bars.7.queen_cells.cup=yes bars.7.queen_cells.cup.count=2"},
		{"Overcast, 16, no wind.", "weather.temp_c=16 weather.sky=overcast weather.wind=calm"},
		{"No. 3. Monday. Eggs on bar 4.", "hive=3 bars.4.eggs=yes"},
		{"Of wasps, not a sign.", "signs.wasps=no"},
		{"Will put it in with hive 1 on Sunday.", "plans.unite=yes plans.unite.to_hive=1 plans.unite.due=2026-05-17"},
		{"bar 8 capped and uncapped honey", "bars.8.capped_honey=yes bars.8.honey=yes"},
	},
	"words of many places": {
		{"It was 24 and cloudy.", "weather.temp_c=24 weather.sky=cloudy"},
		{"95 out + sunny", "weather.temp_c=35 weather.sky=sunny"},
		{"Removed two mouldy bars.", "signs.mould=yes actions.remove_bar=yes actions.remove_bar.count=2"},
		{"Not a speck of pollen on bars 3 to 5.", "bars.3.pollen=no bars.4.pollen=no bars.5.pollen=no"},
		{"I searched for the queen without success.", "queen.seen=no"},
		{"I'm fixing to feed them on Friday.", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"Bar 9 hand-sized bit of new comb.", "bars.9.comb.size=small bars.9.comb.new=yes"},
		{"bar sixteen capped honey at the top nectar lower down", "bars.16.capped_honey=yes bars.16.capped_honey.place=top bars.16.nectar=yes bars.16.nectar.place=bottom"},
	},
	"a finding behind and": {
		{"No drones, last week they had eggs on bar 4.", "drones=no earlier.eggs_seen=yes earlier.eggs_seen.bar=4"},
		{"Strong colony, remove bar 13 next time.", "strength.word=strong plans.remove_bar=yes plans.remove_bar.bar=13"},
		{"Fed them, added a bar last week.", "actions.feed=yes earlier.bar_added=yes earlier.bar_added.count=1"},
		{"Bar 4: two sealed cells. Cut one out.", "bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=2 actions.cut_cells=yes actions.cut_cells.count=1 actions.cut_cells.bar=4"},
		{"Took out bar 13 and there's honey on 9 and 10.", "bars.9.honey=yes bars.10.honey=yes actions.remove_bar=yes actions.remove_bar.bar=13"},
		{"fed them a pint of syrup and the feeder was still half full", "feeder=part actions.feed=yes actions.feed.amount=1 actions.feed.unit=pt actions.feed.what=syrup"},
		{"Split them and saw eggs on bar 4.", "bars.4.eggs=yes actions.split=yes"},
		{"Bar 3 has pollen and ivy nectar coming in.", "bars.3.pollen=yes incoming.nectar=yes incoming.nectar.plant=ivy"},
		{"Bar 9 is stuck to the wall and chalkbrood on bar 8.", "bars.9.comb.attached=wall signs.chalkbrood=yes signs.chalkbrood.bar=8"},
	},
	"a sentence joined to the one before": {
		{"Bar 4 has eggs and brood. So bar 5 is empty comb. And on 6, a patch of honey.", "bars.4.eggs=yes bars.4.brood=yes bars.5.empty=yes bars.6.honey=yes bars.6.honey.amount=little"},
		{"Hive 2. So weak, and stores low. And wax moth? None.", "hive=2 strength.word=weak stores.word=light signs.wax_moth=no"},
		{"Opened Juniper, all calm. And Bertha is booming, bees on ten bars.", "hive=juniper temper.score=4 / hive=bertha strength.word=strong strength.bars_of_bees=10"},
		{"Juniper was calm, eggs on bar four. And Tim was late. Fed her.", "hive=juniper temper.score=4 bars.4.eggs=yes actions.feed=yes"},
		{"Hive 2. So did I see the queen? I did not.", "hive=2 queen.seen=no"},
		{"Bar 5 is full of eggs. So is bar 6.", "bars.5.eggs=yes bars.5.eggs.cover=1 bars.6.eggs=yes? bars.6.eggs.cover=1"},
		{"Two sealed queen cells on bar 9. One charged on bar 4.", "bars.9.queen_cells.capped=yes bars.9.queen_cells.capped.count=2 bars.4.queen_cells.charged=yes bars.4.queen_cells.charged.count=1"},
	},
	"hers": {
		{"hive willow sunny", "hive=willow weather.sky=sunny"},
		{"I did not find her queen this time.", "queen.seen=no"},
		{"Tansy hive is weak. Her bees are cross.", "hive=tansy strength.word=weak temper.score=2"},
		{"We are to add a bar on the twentieth.", "plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-20"},
		{"1/2 cup of bees, 11 mites by sugar roll, so treated with thymol.", "mites.method=sugar mites.count=11 mites.bees=300 actions.treat=yes actions.treat.what=thymol"},
		{"comb ten has joined itself to comb eleven", "bars.10.comb.attached=bar"},
	},
	"others' words for the same": {
		{"bar #4 and bar #5 have eggs, honey from bar #8 to bar #10", "bars.4.eggs=yes bars.5.eggs=yes bars.8.honey=yes bars.9.honey=yes bars.10.honey=yes"},
		{"Hive #5 - 29 kg, stores low.\nHive no. 6 - 33 kg", "hive=5 weight_kg=29 stores.word=light / hive=6 weight_kg=33"},
		{"No ropy grubs on bar 5.", "signs.ropy_larva=no signs.ropy_larva.bar=5"},
		{"Let her ladyship out of the cage today.", "actions.release_queen=yes"},
		{"Nine seams of bees, which we'd call middling.", "strength.word=moderate? strength.bars_of_bees=9"},
		{"We gave them a pint of syrup and on Sunday we'll give them a bar.", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=pt actions.feed.what=syrup plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-17"},
		{"I couldn't tell if there were eggs, and the queen was out of sight.", "queen.seen=no"},
		{"Eggs on both sides of comb 7, drone brood along the bottom of comb eight.", "bars.7.eggs=yes bars.7.eggs.side=both bars.8.drone_brood=yes bars.8.drone_brood.place=bottom"},
		{"comb eleven bear comb ten nectar", "bars.11.comb.size=bare? bars.10.nectar=yes"},
		{"No. one: calm, eggs on bar 3.\nNo. two: queenless.", "hive=1 temper.score=4 bars.3.eggs=yes / hive=2 queenright=no"},
		{"Hive no. three is calm. Larvae? No. Four stings.", "hive=3 contents.open_brood=no temper.score=4 temper.stings=4"},
		{"Hive 3\n- Brood\n  - Sealed on 5 and 6\n- Queen\n  - Seen on bar 7", "hive=3 bars.5.capped_brood=yes bars.6.capped_brood=yes queen.seen=yes queen.bar=7"},
		{"#1–2 honey\n#3 eggs\n#4 larvae", "bars.1.honey=yes bars.2.honey=yes bars.3.eggs=yes bars.4.open_brood=yes"},
	},
	"the next several": {
		{"Bar 12 nectar, the next three bare.", "bars.12.nectar=yes bars.13.comb.size=bare bars.14.comb.size=bare bars.15.comb.size=bare"},
		{"bar four eggs next two the same", "bars.4.eggs=yes bars.5.eggs=yes? bars.6.eggs=yes?"},
		{"bar four eggs the two after that larvae", "bars.4.eggs=yes bars.5.open_brood=yes bars.6.open_brood=yes"},
		{"bar four eggs the next one and the one after that larvae", "bars.4.eggs=yes bars.5.open_brood=yes bars.6.open_brood=yes"},
		{"bar two has eggs and on bar three there's a little nectar", "bars.2.eggs=yes bars.3.nectar=yes bars.3.nectar.amount=little"},
		{"eggs on bar two and on bar three honey on bar four", "bars.2.eggs=yes bars.3.eggs=yes bars.4.honey=yes"},
		{"bars five and six multiple eggs per cell", "bars.5.eggs=yes bars.6.eggs=yes signs.laying_worker=yes signs.laying_worker.bars=5,6"},
	},
	// What is said of a bar and of the next in one breath.
	"and the next": {
		{"Pollen on bar 8 and on the one behind it. No smoke needed.", "bars.8.pollen=yes bars.9.pollen=yes"},
		{"Larvae on bar 3 and the next one.", "bars.3.open_brood=yes bars.4.open_brood=yes"},
		{"bar four nectar and the next one bar seven honey", "bars.4.nectar=yes bars.5.nectar=yes bars.7.honey=yes"},
		{"bar four nectar and the next one no eggs", "bars.4.nectar=yes bars.5.eggs=no"},
		{"Saw the queen on bar 8. Larvae on that comb and the next.", "queen.seen=yes queen.bar=8 bars.8.open_brood=yes bars.9.open_brood=yes"},
		{"Saw the queen on bar 8. Larvae there and on the one behind.", "queen.seen=yes queen.bar=8 bars.8.open_brood=yes bars.9.open_brood=yes"},
		{"Bar 9 is full of nectar, and so is the next one.", "bars.9.nectar=yes bars.9.nectar.cover=1 bars.10.nectar=yes? bars.10.nectar.cover=1"},
		{"Bars 2 and 3 are pollen, as are bars 11 and 12.", "bars.2.pollen=yes bars.3.pollen=yes bars.11.pollen=yes? bars.12.pollen=yes?"},
		{"Bar 7 and the one behind it hold eggs. Left bar 9 as is.", "bars.7.eggs=yes bars.8.eggs=yes"},
		{"Bar 7 and the next are capped honey.", "bars.7.capped_honey=yes bars.8.capped_honey=yes"},
	},
	"another cell": {
		{"On bar 4 I found a sealed queen cell, and on bar 7 another.", "bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=1 bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=1"},
		{"There is one charged queen cell on bar 4. On bar 7 two more.", "bars.4.queen_cells.charged=yes bars.4.queen_cells.charged.count=1 bars.7.queen_cells.charged=yes bars.7.queen_cells.charged.count=2"},
		{"Bar 4 has one queen cell, sealed; bar 7 has another.", "bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=1 bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=1"},
		{"On bar 4 I saw one open queen cell, and on bar 7 another, sealed.", "bars.4.queen_cells.charged=yes bars.4.queen_cells.charged.count=1 bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=1"},
	},
	"a mark put on her": {
		{"Queen on 4, unpainted, so I put a drop of yellow on her.", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=yellow actions.mark_queen=yes"},
		{"She had no mark, so I gave her a red one.", "queen.marked=yes queen.colour=red actions.mark_queen=yes"},
		{"dabbed some white paint on her", "queen.marked=yes queen.colour=white actions.mark_queen=yes"},
		{"Let her out of the cage, a 2025 queen with a blue dot.", "actions.release_queen=yes queen.year=2025 queen.marked=yes queen.colour=blue"},
	},
}

func TestOrdinary(t *testing.T) { readSayings(t, ordinary) }
