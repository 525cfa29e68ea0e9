package parse

import "testing"

// TestAsides reads long written sentences: what stands between commas of another day, a
// wish or somebody else, deeds that go on behind "and", and how the day was for people.
func TestAsides(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// behind an aside the statement goes on
		{"Bars 12 and 13, which I had meant to harvest, are only half full of capped honey.", "bars.12.capped_honey=yes bars.12.capped_honey.cover=0.5 bars.13.capped_honey=yes bars.13.capped_honey.cover=0.5"},
		{"Bar 8, which I hope to remove next month, is empty comb.", "bars.8.empty=yes"},
		{"The feeder, which I filled on Monday, was empty.", "feeder=empty"},
		{"The feeder, into which I had put a litre of syrup on Monday, was still full.", "feeder=full earlier.fed=yes earlier.fed.on=2026-05-11 earlier.fed.amount=1 earlier.fed.unit=l earlier.fed.what=syrup"},
		// what was then done to what stands before "and"
		{"The follower was found behind bar 9 and has been moved back to bar 12.", "follower.bar=9 actions.move_follower=yes actions.move_follower.to=12"},
		{"The floor was shut on arrival and has been opened.", "floor=closed actions.open_floor=yes"},
		{"The entrance was open when I came and has been reduced.", "entrance=open actions.reduce_entrance=yes"},
		{"The entrance was narrowed as a precaution.", "actions.reduce_entrance=yes"},
		{"The follower board I moved one bar back.", "actions.move_follower=yes actions.move_follower.count=1 actions.move_follower.direction=back"},
		{"I cut bar 7 free of the wall.", "actions.free_comb=yes actions.free_comb.bar=7"},
		{"I harvested two bars of honey for the sale, which came, when my wife had weighed them, to nine pounds.", "actions.harvest=yes actions.harvest.count=2 actions.harvest.amount=9 actions.harvest.unit=lb"},
		{"harvested three bars six seven and eight twelve pounds", "actions.harvest=yes actions.harvest.bars=6,7,8 actions.harvest.count=3 actions.harvest.amount=12 actions.harvest.unit=lb"},
		{"i treated them with thymol no it was oxalic acid oxalic acid that's right", "actions.treat=yes? actions.treat.what=oxalic acid"},
		// likened, granted, foretold, general, of then
		{"She lays as if there were a prize: eggs on bars 6 and 7, and no queen cells.", "bars.6.eggs=yes bars.7.eggs=yes queen_cells.any=no"},
		{"They were gentle, even if I was stung twice.", "temper.score=4 temper.stings=2"},
		{"Even if they were angry I would not mind.", ""},
		{"Although the forecast had promised rain, the day was sunny.", "weather.sky=sunny"},
		{"They were quiet throughout, which is more than can be said for 5C on a Monday.", "temper.score=4"},
		{"hive two i reduced the entrance because a little colony can't hold a wide door", "hive=2 actions.reduce_entrance=yes"},
		{"They were sweet. Back in April this lot chased me indoors.", "temper.score=4"},
		{"if there's eggs she was here three days back that's the rule", ""},
		{"It was 31 degrees, sunny, so hot I wanted to lie down.", "weather.temp_c=31 weather.sky=sunny"},
		{"They were so hot I gave up.", "temper.score=1"},
		{"They were quiet, you'd think there was a fair on.", "temper.score=4"},
		{"they were so calm calmer than me", "temper.score=4"},
		// the colony, and what is counted behind
		{"The plum hive is on eight bars of bees.", "hive=plum strength.bars_of_bees=8"},
		{"Bees were found on nine bars.", "strength.bars_of_bees=9"},
		{"moderate i'd call that five seams of bees", "strength.word=moderate strength.bars_of_bees=5?"},
		{"medium i think bees on seven bars", "strength.word=moderate strength.bars_of_bees=7?"},
		{"Dorcas is small still.", "hive=dorcas strength.word=weak"},
		{"Weight today is 28 kg.", "weight_kg=28"},
		{"Never did clap eyes on her.", "queen.seen=no"},
		{"I rolled half a cup of bees in icing sugar and counted six mites.", "mites.method=sugar mites.count=6 mites.bees=300"},
		{"The shed hive is being robbed.", "hive=shed signs.robbing=yes"},
		{"dead bees on the slab about thirty i'd say", "signs.dead_bees=yes? signs.dead_bees.count=30?"},
		{"bar four has eggs three to a cell so it's laying workers and drone brood scattered over five and six", "bars.4.eggs=yes bars.5.drone_brood=yes bars.5.drone_brood.pattern=patchy bars.6.drone_brood=yes bars.6.drone_brood.pattern=patchy signs.laying_worker=yes signs.laying_worker.bar=4"},
		{"They are drawing in white pollen from the bramble.", "incoming.pollen=yes incoming.pollen.colour=white incoming.pollen.plant=bramble"},
		{"The lime trees have flowers now and they carry in nectar from them.", "incoming.nectar=yes incoming.nectar.plant=lime trees"},
	} {
		readsAs(t, "aside", c.said, c.want)
	}
}
