package parse

import "testing"

// TestNarratives reads what is told at length, by the ways in which a story says it.
func TestNarratives(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Eggs on bars three and four, and nectar on both sides of six.", "bars.3.eggs=yes bars.4.eggs=yes bars.6.nectar=yes bars.6.nectar.side=both"},
		{"I'd seen her only on Tuesday. No eggs.", "contents.eggs=no earlier.queen_seen=yes earlier.queen_seen.on=2026-05-12"},
		{"Juniper, a gift from my aunt as you will recall, is heaving.", "hive=juniper strength.word=strong"},
		{"Juniper was calm. Tansy was calm. A child, with sight better than all of ours, found the queen on bar five.", "hive=juniper temper.score=4 / hive=tansy queen.seen=yes queen.bar=5 temper.score=4"},
		// the brood just told, of one of its bars
		{"Brood on bars 2 to 4, but on bar 3 it is patchy.", "bars.2.brood=yes bars.3.brood=yes bars.3.brood.pattern=patchy bars.4.brood=yes"},
		{"Brood on bars 2 and 3, and on three it is sealed.", "bars.2.brood=yes bars.3.brood=yes bars.3.capped_brood=yes"},
		// a day of the month before an order
		{"They were calm. On 3 June, add two bars.", "temper.score=4 plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-06-03"},
		{"They were calm. I shall inspect once more on Friday.", "temper.score=4 plans.inspect=yes plans.inspect.due=2026-05-15"},
		// what comes in, behind bars of something else
		{"Larvae on bars three and four, and lots of maple pollen going in.", "bars.3.open_brood=yes bars.4.open_brood=yes incoming.pollen=yes incoming.pollen.plant=maple"},
		{"Eggs on bar 3. Ivy pollen still coming.", "bars.3.eggs=yes incoming.pollen=yes incoming.pollen.plant=ivy"},
		// bars taken, of those just told
		{"Honey on bars 8 and 9. I harvested nine for the fair.", "bars.8.honey=yes bars.9.honey=yes actions.harvest=yes actions.harvest.bar=9"},
		{"Honey on bars 2 and 3. I harvested 3 kg.", "bars.2.honey=yes bars.3.honey=yes actions.harvest=yes actions.harvest.amount=3 actions.harvest.unit=kg"},
		// the next in the order, behind bars with numbers
		{"Bars one, two and three are pollen; the fourth half full of nectar.", "bars.1.pollen=yes bars.2.pollen=yes bars.3.pollen=yes bars.4.nectar=yes bars.4.nectar.cover=0.5"},
		{"Seven bars are covered with bees.", "strength.bars_of_bees=7"},
		{"Juniper is calm. Eggs on bar three.\nTansy is weak. Gave it a bar off Juniper.", "hive=juniper bars.3.eggs=yes temper.score=4 / hive=tansy strength.word=weak actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.from_hive=juniper"},
		// a thing of today behind a day of the past
		{"Follower behind bar 9, where it went in November, and there are bees on seven combs.", "strength.bars_of_bees=7 follower.bar=9"},
		{"They were real terrors last August, but they are quiet today.", "temper.score=4"},
		{"Proper little terrors they were last September.", ""},
		{"Bar 1 has honey from last August.", "bars.1.honey=yes"},
		// the last time that they got something
		{"The last feed was given on 2 May, a litre of syrup.", "earlier.fed=yes earlier.fed.on=2026-05-02 earlier.fed.amount=1 earlier.fed.unit=l earlier.fed.what=syrup"},
		{"The last treatment was on 2 May, with thymol.", "earlier.treated=yes earlier.treated.on=2026-05-02 earlier.treated.what=thymol"},
		// nor
		{"No ants were seen, nor any wax moth. Nor was there a foul smell.", "signs.ants=no signs.wax_moth=no signs.foul_smell=no"},
		// the same, of the bar in hand
		{"Bar 5 is all nectar.\nEggs lay on the front of bar 6 and grubs on the back of the same.", "bars.5.nectar=yes bars.5.nectar.cover=1 bars.6.eggs=yes bars.6.eggs.side=front bars.6.open_brood=yes bars.6.open_brood.side=back"},
		{"Bar 6 has sealed brood, likewise scattered.", "bars.6.capped_brood=yes bars.6.capped_brood.pattern=patchy"},
		{"Bar 5 has eggs. Bar 6 likewise.", "bars.5.eggs=yes bars.6.eggs=yes?"},
		// how much of it, judged in words of its own
		{"Bar 5 has sealed brood, and I would put the area at 60 per cent of the comb.", "bars.5.capped_brood=yes bars.5.capped_brood.cover=0.6"},
		{"Bar 5 has sealed brood, which I judged to cover 70 per cent of the face.", "bars.5.capped_brood=yes bars.5.capped_brood.cover=0.7"},
		{"On bar 5 brood occupies perhaps half the comb.", "bars.5.brood=yes bars.5.brood.cover=0.5"},
		{"Nectar takes up a third of the comb on bar 5.", "bars.5.nectar=yes bars.5.nectar.cover=0.333"},
		{"On bar 5 some 80 percent of the comb is under sealed brood.", "bars.5.capped_brood=yes bars.5.capped_brood.cover=0.8"},
		{"On bar 5 half the comb is built.", "bars.5.comb.drawn=0.5"},
		{"Bar 5 has eggs in the middle, and round the edge are drone cells.", "bars.5.eggs=yes bars.5.eggs.place=middle bars.5.drone_brood=yes bars.5.drone_brood.place=edge"},
		// what they have of it, told first
		{"Food they have enough. Pollen they have plenty.", "contents.pollen=yes contents.pollen.amount=much stores.word=fair"},
		// the bars of bees, judged behind
		{"Six seams of bees, which is decent for June.", "strength.word=moderate strength.bars_of_bees=6"},
		{"Two bars of bees and not one more, weak I suppose.", "strength.word=weak strength.bars_of_bees=2"},
		{"She is small and her stores are short.", "strength.word=weak stores.word=light"},
		// questions whose condition stands behind
		{"Would a bar of brood cheer them up, if I took it on Sunday?", ""},
		{"Bar 1 carries honey, untouched since the autumn. Bar 2 untouched.", "bars.1.honey=yes bars.2.comb.size=bare"},
		{"They've built cross comb on bars six and seven, and five is bent like a bow.", "bars.5.comb.straight=no bars.6.comb.cross=yes bars.7.comb.cross=yes"},
		{"They have gone and built cross comb on bar six.", "bars.6.comb.cross=yes"},
		// mites in drone cells
		{"Thirty drone cells were opened with a fork and 4 mites were found in them.", "mites.method=brood mites.count=4 mites.cells=30"},
		// what one could not but do
		{"So there was nothing else for it but to take out bar ten.", "actions.remove_bar=yes actions.remove_bar.bar=10"},
		{"I had no choice but to remove bar ten.", "actions.remove_bar=yes actions.remove_bar.bar=10"},
		{"I saw fit to reduce the entrance.", "actions.reduce_entrance=yes"},
		{"I thought it best to close the entrance.", "actions.close_entrance=yes"},
		{"Mould on bars 8 and 9, and I held my nose and removed both of those.", "signs.mould=yes signs.mould.bars=8,9 actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=8,9"},
		{"I harvested bar 12, which weighed 3 lb on the kitchen scales.", "actions.harvest=yes actions.harvest.bar=12 actions.harvest.amount=3 actions.harvest.unit=lb"},
		{"I harvested bars 7 and 8, which came to 8.2 kg on the kitchen scale.", "actions.harvest=yes actions.harvest.count=2 actions.harvest.bars=7,8 actions.harvest.amount=8.2 actions.harvest.unit=kg"},
		{"The hive came to 28 kg on the scale.", "weight_kg=28"},
		// general talk, people and other things
		{"Eggs on bar 5. As Dora says, eggs are as good as seeing her.", "bars.5.eggs=yes"},
		{"Eggs on bar 5. The queen was not looked for, the eggs being proof enough.", "bars.5.eggs=yes"},
		{"The lady at the egg stall lost hers. Bar 4 pollen.", "bars.4.pollen=yes"},
		{"I was in a foul temper. Bar 4 pollen.", "bars.4.pollen=yes"},
		{"They went for me. The nest I left undisturbed.", "temper.score=1"},
		{"Six seams of bees, and Dora calls that average for May.", "strength.word=moderate strength.bars_of_bees=6"},
		{"This entry was written late. Bar 4 pollen.", "bars.4.pollen=yes"},
		{"They're bringing in pollen like there's no tomorrow, orange stuff off the dandelions, and water from the pond too.", "incoming.pollen=yes incoming.pollen.plant=dandelion incoming.pollen.colour=orange incoming.water=yes"},
	} {
		if got := leavesOf(c.said); got != c.want {
			t.Errorf("%q\n  gives %s\n  want  %s", c.said, got, c.want)
		}
	}
}
