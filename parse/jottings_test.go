package parse

import "testing"

// TestJottings reads what is typed in haste: short words, bullets, ticked boxes.
func TestJottings(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// short words
		{"b7 bb at the edge, b8 BB", "bars.7.pollen=yes bars.7.pollen.place=edge bars.8.pollen=yes"},
		{"chk again on Tues", "plans.inspect=yes plans.inspect.due=2026-05-19"},
		{"chk for eggs in 2 wks", "plans.inspect=yes plans.inspect.due=2026-05-28"},
		{"willow pollen comin in, nectar goin in too", "incoming.pollen=yes incoming.pollen.plant=willow incoming.nectar=yes"},
		{"hive 6: strong n gentle, grubs n eggs on b4", "hive=6 bars.4.eggs=yes bars.4.open_brood=yes temper.score=4 strength.word=strong"},
		{"Eggs N, grubs N, nectar Y", "contents.eggs=no contents.open_brood=no contents.nectar=yes"},
		{"Hive 6 done b4 church, all calm. Eggs b4.", "hive=6 bars.4.eggs=yes temper.score=4"},
		{"did hive 6 b4 it got dark. Eggs on b4", "hive=6 bars.4.eggs=yes"},
		{"fed hive 6 b4 the match", "hive=6 actions.feed=yes"},
		{"Larvae on b4, rain coming", "bars.4.open_brood=yes weather.sky=rain"},
		// one bar of several
		{"b2-b4 CB, b3 patchy. b5 E", "bars.2.capped_brood=yes bars.3.capped_brood=yes bars.3.capped_brood.pattern=patchy bars.4.capped_brood=yes bars.5.eggs=yes"},
		// bars without a verb, and bars in hand
		{"• 1 fresh bar in behind 8", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=8"},
		{"- two spare bars in after 4", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=4"},
		{"b12 old comb, took it out for good", "bars.12.comb.old=yes actions.remove_bar=yes actions.remove_bar.bar=12"},
		{"b12 dark comb, took it out. b13 nectar", "bars.12.comb.old=yes actions.remove_bar=yes actions.remove_bar.bar=12 bars.13.nectar=yes"},
		// a medicine again, and no more than a patch
		{"put thymol in today. thymol again on 26 May", "actions.treat=yes actions.treat.what=thymol plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-26"},
		{"b6 CB, only a patch", "bars.6.capped_brood=yes bars.6.capped_brood.amount=little"},
		// the board, a day; bees that are counted; cells that are
		{"drop board 6/day", "mites.method=drop mites.count=6 mites.days=1"},
		{"Drop: 9 per day", "mites.method=drop mites.count=9 mites.days=1"},
		{"b4 deformed wings on three bees", "signs.deformed_wings=yes signs.deformed_wings.count=3 signs.deformed_wings.bar=4"},
		{"One torn QC b6, two still capped b9.", "bars.6.queen_cells.torn=yes bars.6.queen_cells.torn.count=1 bars.9.queen_cells.capped=yes bars.9.queen_cells.capped.count=2"},
		{"Queen cells - play cups only, four", "queen_cells.cup=yes queen_cells.cup.count=4"},
		{"Done - two fresh bars in, after bar 7", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=7"},
		// bars at the head of a sentence, and one by another
		{"6-8 heavy with honey. 9 nectar, a third full.", "bars.6.honey=yes bars.6.honey.amount=much bars.7.honey=yes bars.7.honey.amount=much bars.8.honey=yes bars.8.honey.amount=much bars.9.nectar=yes bars.9.nectar.cover=0.333"},
		{"b2 eggs; CB, compact\nb3 CB 70%\nb4 ditto b2", "bars.2.eggs=yes bars.2.capped_brood=yes bars.2.capped_brood.pattern=solid bars.3.capped_brood=yes bars.3.capped_brood.cover=0.7 bars.4.eggs=yes? bars.4.capped_brood=yes? bars.4.capped_brood.pattern=solid"},
		{"Follower moved forward 3, one bar added after b6.", "actions.move_follower=yes actions.move_follower.count=3 actions.move_follower.direction=forward actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=6"},
		{"No 1: calm.\nNo 2: testy.\nBack to No 1 for my gloves: Q on b5.", "hive=1 queen.seen=yes queen.bar=5 temper.score=4 / hive=2 temper.score=2"},
		// a name and a day above
		{"HAWTHORN, Thursday 14 May\nWeather - sunny, 18C\nQueen - seen", "hive=hawthorn weather.temp_c=18 weather.sky=sunny queen.seen=yes"},
		{"APIARY, 14 May\nbar 4 eggs.", "bars.4.eggs=yes"},
		{"H1 BIAS b3-b4. Follower moved back 2, two bars added after b6.", "hive=1 bars.3.eggs=yes bars.3.open_brood=yes bars.3.capped_brood=yes bars.4.eggs=yes bars.4.open_brood=yes bars.4.capped_brood=yes actions.move_follower=yes actions.move_follower.count=2 actions.move_follower.direction=back actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=6"},
		// answers
		{"Queen seen? Y, bar 4\nMarked? N", "queen.seen=yes queen.bar=4 queen.marked=no"},
		{"Queen cells? Y, 2 sealed swarm cells on bar 8", "bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=2 bars.8.queen_cells.capped.kind=swarm"},
		{"Bees: 7 bars", "strength.bars_of_bees=7"},
		// hives by the names of numbers, nearly
		{"Hive: Tin\nCalm.", "hive=tin temper.score=4"},
		{"hive | temper | bees\nTin | calm | 7 bars\nIron | edgy | 5 bars\n\nIron: add a bar on Sunday.\nTin: bar 3 eggs.", "hive=tin bars.3.eggs=yes temper.score=4 strength.bars_of_bees=7 / hive=iron temper.score=2 strength.bars_of_bees=5 plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-17"},
		{"bar | comb | brood\n4 | drawn | capped, grubs\n5 | old | eggs\n\nmites | 9 on the board, 3 days\nnext visit | 28 May", "bars.4.comb.drawn=1 bars.4.capped_brood=yes bars.4.open_brood=yes bars.5.comb.old=yes bars.5.eggs=yes mites.method=drop mites.count=9 mites.days=3 plans.inspect=yes plans.inspect.due=2026-05-28"},
		// strokes between the letters of what is on a comb, and the signs of multiplication
		{"b2 P/H, b6 L/E/S", "bars.2.pollen=yes bars.2.honey=yes bars.6.open_brood=yes bars.6.eggs=yes bars.6.capped_brood=yes"},
		{"b7 Q/L/CB, 13C, wind N/E", "queen.seen=yes queen.bar=7 bars.7.open_brood=yes bars.7.capped_brood=yes weather.temp_c=13"},
		{"no E/L/CB", "contents.eggs=no contents.open_brood=no contents.capped_brood=no"},
		{"sealed QC x4, b9", "bars.9.queen_cells.capped=yes bars.9.queen_cells.capped.count=4"},
		{"QC charged x2 b3, sealed x1 b4", "bars.3.queen_cells.charged=yes bars.3.queen_cells.charged.count=2 bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=1"},
		{"b8 3xQC torn down", "bars.8.queen_cells.torn=yes bars.8.queen_cells.torn.count=3"},
		{"DWV x5, b6", "signs.deformed_wings=yes signs.deformed_wings.count=5 signs.deformed_wings.bar=6"},
		{"Q/C open b6", "bars.6.queen_cells.charged=yes"},
		{"3 x fresh bars in, b11 14 x 9 cm", "actions.add_bar=yes actions.add_bar.count=3 bars.11.comb.width_mm=140 bars.11.comb.depth_mm=90"},
		{"bees on 6 bars in the lee", "strength.bars_of_bees=6"},
		{"1 cup, b4", "bars.4.queen_cells.cup=yes bars.4.queen_cells.cup.count=1"},
		{"fed 3 cups syrup", "actions.feed=yes actions.feed.amount=3 actions.feed.unit=cup actions.feed.what=syrup"},
		// mites by the hour
		{"drop 8/24h", "mites.method=drop mites.count=8 mites.days=1"},
		{"varroa fall 19/72 hrs", "mites.method=drop mites.count=19 mites.days=3"},
		{"48h drop: 6", "mites.method=drop mites.count=6 mites.days=2"},
		{"mites per day: 7", "mites.method=drop mites.count=7 mites.days=1"},
		{"b8 1/2 h", "bars.8.honey=yes bars.8.honey.cover=0.5"},
		// a comb that is empty in part
		{"b10 one third nectar, rest empty", "bars.10.nectar=yes bars.10.nectar.cover=0.333 bars.10.empty=yes"},
		{"b8 20% pollen 80% empty", "bars.8.pollen=yes bars.8.pollen.cover=0.2 bars.8.empty=yes bars.8.empty.cover=0.8"},
		{"b6 CB one side, other side empty", "bars.6.capped_brood=yes bars.6.capped_brood.side=one bars.6.empty=yes bars.6.empty.side=one"},
		{"b8 honey, b9 empty", "bars.8.honey=yes bars.9.comb.size=bare"},
		// labels and answers on one line
		{"Pollen: y  Nectar: n  Sealed: y  QCs: n", "contents.pollen=yes contents.nectar=no contents.capped_brood=yes queen_cells.any=no"},
		{"Queen? Y (b7)  Larvae? Y  Cells? N  Temper? 4", "queen.seen=yes queen.bar=7 contents.open_brood=yes queen_cells.any=no temper.score=4"},
		{"wasps n SHB n ants y", "signs.wasps=no signs.small_hive_beetle=no signs.ants=yes"},
		{"larvae ✔ sealed ✘ cups x", "contents.open_brood=yes contents.capped_brood=no queen_cells.cup=no"},
		{"Eggs: b6 Larvae: b4-5 QCs: n", "bars.6.eggs=yes bars.4.open_brood=yes bars.5.open_brood=yes queen_cells.any=no"},
		// deeds by their labels, and counts behind them
		{"H6 bars added 3", "hive=6 actions.add_bar=yes actions.add_bar.count=3"},
		{"Harvest: 3 bars (11, 12, 13), 7 lb", "actions.harvest=yes actions.harvest.count=3 actions.harvest.bars=11,12,13 actions.harvest.amount=7 actions.harvest.unit=lb"},
		{"Feed: 2 l 1:1", "actions.feed=yes actions.feed.amount=2 actions.feed.unit=l"},
		{"Feed given: 3 kg fondant", "actions.feed=yes actions.feed.amount=3 actions.feed.unit=kg actions.feed.what=fondant"},
		{"Harvest: Saturday", "plans.harvest=yes plans.harvest.due=2026-05-16"},
		{"feed on Friday, 2 l syrup", "plans.feed=yes plans.feed.amount=2 plans.feed.unit=l plans.feed.what=syrup plans.feed.due=2026-05-15"},
		{"treated: OA dribble 30 ml", "actions.treat=yes actions.treat.what=oxalic acid actions.treat.amount=30 actions.treat.unit=ml"},
		{"to do Fri: +1 bar", "plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-15"},
		{"b4 stuck to R wall, cut free", "bars.4.comb.attached=wall actions.free_comb=yes actions.free_comb.bar=4"},
		{"b9 comb collapsed, bar removed", "bars.9.comb.broken=yes actions.remove_bar=yes actions.remove_bar.bar=9"},
		{"7 bars brood 4 stores", "contents.brood=yes contents.brood.bars=7 contents.honey=yes contents.honey.bars=4"},
		{"DWV 4 bees", "signs.deformed_wings=yes signs.deformed_wings.count=4"},
		{"cross comb 5+6, b7 E", "bars.5.comb.cross=yes bars.6.comb.cross=yes bars.7.eggs=yes"},
		{"old comb b1-2", "bars.1.comb.old=yes bars.2.comb.old=yes"},
		{"SB 2-7 except 5", "bars.2.capped_brood=yes bars.3.capped_brood=yes bars.4.capped_brood=yes bars.6.capped_brood=yes bars.7.capped_brood=yes"},
		{"shifted b11 -> 8", "actions.move_bar=yes actions.move_bar.bar=11 actions.move_bar.to=8"},
		// the queen by her letters, the bees, the wind
		{"VQ b6, lt wind", "queen.seen=yes queen.bar=6 queen.virgin=yes weather.wind=breezy"},
		{"QR, unmarked", "queenright=yes queen.marked=no"},
		{"v gentle, 1 sting, no smoke", "temper.score=4 temper.stings=1"},
		// the last time
		{"Eggs on bar 4. Our last visit was on the 3rd.", "bars.4.eggs=yes earlier.inspected=yes earlier.inspected.on=2026-05-03"},
	} {
		readsAs(t, "jotting", c.said, c.want)
	}
}
