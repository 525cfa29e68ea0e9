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
		{"The queen, who I had not set eyes on since March, was on bar 6.", "queen.seen=yes queen.bar=6"},
		{"The queen, missed at the last two visits, was on bar 4.", "queen.seen=yes queen.bar=4"},
		{"The queen who was clipped in April is on bar 6.", "queen.seen=yes queen.bar=6"},
		{"The queen, who wears a red dot, is on bar 3.", "queen.seen=yes queen.bar=3 queen.marked=yes queen.colour=red"},
		{"The comb on bar 7, which came down last month, is straight now.", "bars.7.comb.straight=yes"},
		{"Bar 7, which was empty last time, is full of honey.", "bars.7.honey=yes bars.7.honey.cover=1"},
		// what was then done to what stands before "and"
		{"The follower was found behind bar 9 and has been moved back to bar 12.", "follower.bar=9 actions.move_follower=yes actions.move_follower.to=12 actions.move_follower.direction=back"},
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
		// where an earlier day is told of a bar, and how tight the brood is
		{"On bar 6, where I saw eggs last time, there is sealed brood.", "bars.6.capped_brood=yes earlier.eggs_seen=yes"},
		{"Bar 6 has sealed brood, as tight as anyone could ask.", "bars.6.capped_brood=yes bars.6.capped_brood.pattern=solid"},
		{"Bar 6 has sealed brood, in as even a pattern as you could want.", "bars.6.capped_brood=yes bars.6.capped_brood.pattern=solid"},
		{"The bees were flighty (last year they were calm), and I intend therefore to requeen them on Friday.", "temper.score=2 plans.requeen=yes plans.requeen.due=2026-05-15"},
		// to and from another hive
		{"The barn hive is strong. I moved bar 6, larvae both sides, to the yard hive.", "hive=barn strength.word=strong bars.6.open_brood=yes bars.6.open_brood.side=both actions.move_bar=yes actions.move_bar.bar=6 actions.move_bar.to_hive=yard"},
		{"The barn hive is calm.\nThe mill hive now owns one bar from the barn hive, which I added after bar 4.", "hive=barn temper.score=4 / hive=mill actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=4 actions.add_bar.from_hive=barn"},
		{"i must add another bar or two next week", "plans.add_bar=yes plans.add_bar.count=1? plans.add_bar.count_max=2 plans.add_bar.due=2026-05-21"},
		{"Six capped cells, of which I cut out two with a firmer grip than I had expected.", "queen_cells.capped=yes queen_cells.capped.count=6 actions.cut_cells=yes actions.cut_cells.count=2"},
		{"I'd have treated in March.", ""},
		{"We did not treat in March.", "earlier.treated=no"},
		{"hive two i forgot to close the screened floor so that's still open", "hive=2 floor=open"},
		// what is denied of the hive while a bar is in hand
		{"bar six is drawn\nour vicar next door says his has chalkbrood but there's no chalkbrood here", "bars.6.comb.drawn=1 signs.chalkbrood=no"},
		{"two bees with deformed wings on bar four\nno foul smell i had a good sniff all over it and no ropy larva", "signs.deformed_wings=yes signs.deformed_wings.count=2 signs.deformed_wings.bar=4 signs.foul_smell=no signs.ropy_larva=no"},
		{"bar six patchy but no foul smell and no ropy larva", "signs.foul_smell=no signs.foul_smell.bar=6 signs.ropy_larva=no signs.ropy_larva.bar=6"},
		{"bar five larvae\nbut there's no queen cells in here none", "bars.5.open_brood=yes queen_cells.any=no"},
		{"It got up to 33 degrees. Gave them syrup to keep them busy.", "weather.temp_c=33 actions.feed=yes actions.feed.what=syrup"},
		{"hive two never mind the mud", "hive=2"},
		// what they are to have, where bars went, what others report
		{"They shall have a litre of syrup on Sunday.", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=l plans.feed.what=syrup plans.feed.due=2026-05-17"},
		{"She will get a kilo of fondant next week.", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=kg plans.feed.what=fondant plans.feed.due=2026-05-21"},
		{"They are to have a litre of syrup on Sunday.", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=l plans.feed.what=syrup plans.feed.due=2026-05-17"},
		{"They'll get two litres of syrup on Sunday if it is dry. They have a litre of syrup left.", ""},
		{"Willow was busy, bees on nine bars. I moved bars 3 and 4 to Aspen.", "hive=willow temper.score=3 strength.bars_of_bees=9 actions.move_bar=yes actions.move_bar.bars=3,4 actions.move_bar.count=2 actions.move_bar.to_hive=aspen"},
		{"so i treated them there and then with thymol no it was oxalic acid", "actions.treat=yes? actions.treat.what=oxalic acid"},
		{"It was reported that the bees in Mr Pell's garden are being robbed.", ""},
	} {
		readsAs(t, "aside", c.said, c.want)
	}
}
