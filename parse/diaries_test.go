package parse

import "testing"

// diaries are sentences as keepers write them in a diary, to a mentor or for a club.
var diaries = map[string][]saying{
	"the hive that the note begins with, by number": {
		{"Came to number four today, this being the third try. Brood on six bars.", "hive=4 contents.brood=yes contents.brood.bars=6"},
		{"Got round to number seven at last. No queen cells.", "hive=7 queen_cells.any=no"},
		{"A raw afternoon, and number three again since nobody else would. Bees calm.", "hive=3 temper.score=4"},
		{"Number six this evening, with the milking done. The bees were calm.", "hive=6 temper.score=4"},
		{"I had the roof off number two. Eggs on bar five.", "hive=2 bars.5.eggs=yes"},
		{"I read page number four at last. Brood on six bars.", "contents.brood=yes contents.brood.bars=6"},
		{"Bar number four again. Full of honey.", "bars.4.honey=yes bars.4.honey.cover=1"},
		{"We live at number nine, this street. The bees are calm.", "temper.score=4"},
	},
	"in so many bars": {
		{"Brood in four bars, and stores fair.", "contents.brood=yes contents.brood.bars=4 stores.word=fair"},
		{"Eggs in two bars.", "contents.eggs=yes contents.eggs.bars=2"},
		{"Eggs in bar two.", "bars.2.eggs=yes"},
		{"No brood in two bars.", "contents.brood=no"},
	},
	"taken for the honey": {
		{"Took three bars for harvest, twelve pound all told.", "actions.harvest=yes actions.harvest.count=3 actions.harvest.amount=12 actions.harvest.unit=lb"},
		{"Took bar nine for the show.", "actions.harvest=yes actions.harvest.bar=9"},
		{"Took two bars to the show.", "actions.remove_bar=yes actions.remove_bar.count=2"},
	},
	"days reckoned from the one that the line names": {
		{"12 May. Hive 2: calm. Feed again in a week.", "hive=2 temper.score=4 plans.feed=yes plans.feed.due=2026-05-19"},
		{"Hive 2, 10 May. Calm. Inspect again in a fortnight.", "hive=2 temper.score=4 plans.inspect=yes plans.inspect.due=2026-05-24"},
	},
	"bars told to come out": {
		{"Bar one is old and dark, so out it comes next time.", "bars.1.comb.old=yes plans.remove_bar=yes plans.remove_bar.bar=1"},
		{"Bar nine is crooked. Out it goes on Sunday.", "bars.9.comb.straight=no plans.remove_bar=yes plans.remove_bar.bar=9 plans.remove_bar.due=2026-05-17"},
		{"Bar one is old and dark, so out it went.", "bars.1.comb.old=yes actions.remove_bar=yes actions.remove_bar.bar=1"},
		{"The queen was on bar one, and out she came.", "queen.seen=yes queen.bar=1"},
		{"I lifted bar one and out it came with a jerk.", ""},
	},
	"the queen, and what was found instead": {
		{"QNS; looked for her twice and found my gloves instead.", "queen.seen=no"},
		{"Looked for her twice and found her on bar six.", "queen.seen=yes queen.bar=6"},
		{"Looked for the queen and found a wasp.", "signs.wasps=yes"},
		{"She was very nearly the first thing I saw, on bar six.", "queen.seen=yes queen.bar=6"},
		{"The first thing I saw was wasps at the entrance.", "signs.wasps=yes"},
		{"Queen not sought, fresh eggs are proof enough for us.", ""},
		{"Two swarm cells on bar 7, open, larva in it.", "bars.7.queen_cells.charged=yes bars.7.queen_cells.charged.count=2 bars.7.queen_cells.charged.kind=swarm"},
	},
	"food to go on": {
		{"Another litre of syrup to go on Friday.", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=l plans.feed.what=syrup plans.feed.due=2026-05-15"},
		{"Thymol to go on tomorrow.", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-15"},
		{"A kilo of fondant to follow on Tuesday.", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=kg plans.feed.what=fondant plans.feed.due=2026-05-19"},
		{"More syrup to go with it.", ""},
		{"Syrup to go on the shopping list for Friday.", ""},
	},
	"degrees and the sky": {
		{"Hive 4, 18 and cloudy.", "hive=4 weather.temp_c=18 weather.sky=cloudy"},
		{"A breezy evening, 14 and overcast.", "weather.temp_c=14 weather.wind=breezy weather.sky=overcast"},
		{"I counted 18 and sunny it was.", "weather.sky=sunny"},
	},
	"how long since": {
		{"Three weeks since I treated them.", "earlier.treated=yes earlier.treated.on=2026-04-23"},
		{"It's been two weeks since I fed them.", "earlier.fed=yes earlier.fed.on=2026-04-30"},
		{"Ten days since we saw the queen.", "earlier.queen_seen=yes earlier.queen_seen.on=2026-05-04"},
		{"Three weeks since the last rain. Eggs on bar 3.", "bars.3.eggs=yes"},
	},
	"seen by others, and what a cell is like": {
		{"The queen was shown to the beginners on bar five.", "queen.seen=yes queen.bar=5"},
		{"She's about, though I'm blowed if I could find her.", "queen.seen=no"},
		{"Bar five has a queen cell the size of a thimble, sealed.", "bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=1"},
		{"Bees on bars three to nine and thin on the rest.", ""},
	},
	"asides": {
		{"Bar 3 is nectar (wet and shiny).", "bars.3.nectar=yes"},
		{"Wet and windy. Bar 3 is nectar.", "weather.sky=rain weather.wind=windy bars.3.nectar=yes"},
		{"Hive 4. Calm. Morag has bought two hives off a man in town and they're all mad.", "hive=4 temper.score=4"},
		{"Bar four is sealed brood from edge to edge.", "bars.4.capped_brood=yes bars.4.capped_brood.cover=1 bars.4.capped_brood.pattern=solid"},
		{"Mice in the lid, the sly little devils.", "signs.mice=yes"},
		{"They were devils today.", "temper.score=1"},
		{"I venture no opinion on the brood.", ""},
		{"No comment on the brood, for I did not get so far.", ""},
		{"Chalkbrood on bar 5, a dozen mummies. BIAS.", "signs.chalkbrood=yes signs.chalkbrood.bar=5 signs.chalkbrood.count=12 contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes"},
	},
}

func TestDiaries(t *testing.T) { readSayings(t, diaries) }
