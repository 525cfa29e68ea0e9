package parse

import "testing"

// wholes are statements that tell of several things at once, and then of one of them.
var wholes = map[string][]saying{
	"one of a range": {
		{"Bars 2 to 6 sealed brood, though 4 was rather spotty.", "bars.2.capped_brood=yes bars.3.capped_brood=yes bars.4.capped_brood=yes bars.4.capped_brood.pattern=patchy bars.5.capped_brood=yes bars.6.capped_brood=yes"},
		{"Bars 5 to 7 capped brood, 6 a bit gappy.", "bars.5.capped_brood=yes bars.6.capped_brood=yes bars.6.capped_brood.pattern=patchy bars.7.capped_brood=yes"},
		{"Bars 3 to 5 straight, but 4 is slightly wavy.", "bars.3.comb.straight=yes bars.4.comb.straight=no? bars.5.comb.straight=yes"},
	},
	"shares of several": {
		{"Sealed brood 50% on bar 5, 30% on bar 6.", "bars.5.capped_brood=yes bars.5.capped_brood.cover=0.5 bars.6.capped_brood=yes bars.6.capped_brood.cover=0.3"},
		{"Bar 4 is half nectar, and a quarter on bar 5.", "bars.4.nectar=yes bars.4.nectar.cover=0.5 bars.5.nectar=yes bars.5.nectar.cover=0.25"},
		{"Bar 3 20% pollen, and 60% of bar 4 is honey.", "bars.3.pollen=yes bars.3.pollen.cover=0.2 bars.4.honey=yes bars.4.honey.cover=0.6"},
	},
	"more of one of them": {
		{"Honey on bars 8 and 9, on 9 at the top.", "bars.8.honey=yes bars.9.honey=yes bars.9.honey.place=top"},
		{"Larvae on bars four and five, and on four on one side only.", "bars.4.open_brood=yes bars.4.open_brood.side=one bars.5.open_brood=yes"},
		{"Eggs on bars 3 and 4, and on the latter on both sides.", "bars.3.eggs=yes bars.4.eggs=yes bars.4.eggs.side=both"},
		{"Bars 6 and 7 have brood; the former is patchy and the latter solid.", "bars.6.brood=yes bars.6.brood.pattern=patchy bars.7.brood=yes bars.7.brood.pattern=solid"},
		{"Nectar on bars 8 and 9, and on 10 honey.", "bars.8.nectar=yes bars.9.nectar=yes bars.10.honey=yes"},
	},
	"the honey's on nine": {
		{"the pollen's on two and the honey's on eight and nine", "bars.2.pollen=yes bars.8.honey=yes bars.9.honey=yes"},
		{"larvae on bar four, the sealed's on five and six", "bars.4.open_brood=yes bars.5.capped_brood=yes bars.6.capped_brood=yes"},
		{"The honey is on 4 bars.", "contents.honey=yes contents.honey.bars=4"},
	},
	"cells cut from their bar": {
		{"four sealed queen cells on bar eight and I have cut all four from bar eight", "bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=4 actions.cut_cells=yes actions.cut_cells.count=4 actions.cut_cells.bar=8"},
		{"I cut two from bar 8.", ""},
	},
	"one that had hatched": {
		{"On bar 4 there were three sealed queen cells and on bar 6 one that had hatched.", "bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=3 bars.6.queen_cells.emerged=yes bars.6.queen_cells.emerged.count=1"},
	},
	// Hives told by their number before the word, by their name alone, and by "one".
	"hives told otherwise": {
		{"number six hive larvae on bar two", "hive=6 bars.2.open_brood=yes"},
		{"The plum hive has eggs on bar 3. We gave bar 6 to the crumpet hive. Crumpet was quiet, nectar on bar 4.", "hive=plum bars.3.eggs=yes actions.move_bar=yes actions.move_bar.bar=6 actions.move_bar.to_hive=crumpet / hive=crumpet temper.score=4 bars.4.nectar=yes actions.add_bar=yes? actions.add_bar.count=1? actions.add_bar.from_hive=plum?"},
		{"hive seven eggs on bar three\nhive eight honey on bar five\nback to seven for a moment the queen's on bar two", "hive=7 bars.3.eggs=yes queen.seen=yes queen.bar=2 / hive=8 bars.5.honey=yes"},
		{"The clover hive is calm, eggs on bar 3. Clover is in flower.", "hive=clover temper.score=4 bars.3.eggs=yes"},
		{"The plum hive has eggs on bar 3. The rowan one is the hive my aunt built. Honey on bar 6.", "hive=plum bars.3.eggs=yes / hive=rowan bars.6.honey=yes"},
		{"Under the lid they were calm. Round the back, ants. Eggs on bar 3.", "temper.score=4 signs.ants=yes bars.3.eggs=yes"},
	},
	"back to look": {
		{"Back on Tuesday to check.", "plans.inspect=yes plans.inspect.due=2026-05-19"},
		{"I'll be over for another look on Sunday.", "plans.inspect=yes plans.inspect.due=2026-05-17"},
		{"Back on Tuesday they were calm.", "temper.score=4"},
	},
	"what they are fit for": {
		{"They are too weak to split.", "strength.word=weak"},
		{"Not sampled, too weak.", "strength.word=weak"},
		{"The syrup is too weak.", ""},
	},
	"the entrance, which": {
		{"Wasps at the entrance, which I have now reduced.", "signs.wasps=yes actions.reduce_entrance=yes"},
		{"The floor was shut, which I opened.", "floor=closed actions.open_floor=yes"},
	},
	// How mites are counted, told before the first hive, holds for each whose mites are.
	"a way of counting for all": {
		{"Alcohol washes, 300 bees each.\nHive 1: 8 mites.\nHive 2: 5 mites.", "hive=1 mites.method=wash mites.count=8 mites.bees=300 / hive=2 mites.method=wash mites.count=5 mites.bees=300"},
		{"Drop boards in for three days. H1 11 mites, H2 28 mites.", "hive=1 mites.method=drop mites.count=11 mites.days=3 / hive=2 mites.method=drop mites.count=28 mites.days=3"},
		{"Mite wash day. Half a cup per colony.\nHive 1: 8 mites\nHive 2: no mites seen", "hive=1 mites.method=wash mites.count=8 mites.bees=300 / hive=2 mites.method=seen mites.count=0"},
		{"Mite round.\nHive 1: 8 mites on the tray in 2 days.\nHive 2: 5 mites in a sugar roll.", "hive=1 mites.method=drop? mites.count=8 mites.days=2 / hive=2 mites.method=sugar mites.count=5"},
	},
	"the last visit": {
		{"Into this one I last looked on the second of May.", "earlier.inspected=yes earlier.inspected.on=2026-05-02"},
		{"I last opened hive six on 1 May.", "hive=6 earlier.inspected=yes earlier.inspected.on=2026-05-01"},
		{"We were last in here on the 3rd of May.", "earlier.inspected=yes earlier.inspected.on=2026-05-03"},
	},
	"the queen besides": {
		{"Queen out for a wander on bar 3. Never been dotted.", "queen.seen=yes queen.bar=3 queen.marked=no"},
		{"The queen, a plump madam with a blue spot, ran over my glove on bar 6.", "queen.seen=yes queen.bar=6 queen.marked=yes queen.colour=blue"},
	},
}

func TestWholes(t *testing.T) { readSayings(t, wholes) }
