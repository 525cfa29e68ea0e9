package parse

import "testing"

// proseClauses are what prose tells of a thing in a clause that hangs on it.
var proseClauses = map[string][]saying{
	"of which": {
		{"Ten bars in use, of which six hold brood.", "contents.brood=yes contents.brood.bars=6 bars_total=10"},
		{"Nine bars drawn, four of which have capped brood.", "contents.capped_brood=yes contents.capped_brood.bars=4 bars_total=9"},
		{"Two sealed cells, of which I cut one.", "queen_cells.capped=yes queen_cells.capped.count=2 actions.cut_cells=yes actions.cut_cells.count=1"},
	},
	"which went in": {
		{"I had saved three new bars, which went in after bar 9.", "actions.add_bar=yes actions.add_bar.count=3 actions.add_bar.to=9"},
	},
	"all of it": {
		{"There is brood on three bars, every scrap of it capped.", "contents.capped_brood=yes contents.capped_brood.bars=3"},
		{"Brood on bars 5 and 6, all of it sealed, and honey on 8.", "bars.5.capped_brood=yes bars.6.capped_brood=yes bars.8.honey=yes"},
		{"Brood on bar 5, some of it sealed.", "bars.5.brood=yes"},
	},
	"what the board held": {
		{"The mite board produced 17 in two days.", "mites.method=drop mites.count=17 mites.days=2"},
		{"The board there gave 33 over five days.", "mites.method=drop mites.count=33 mites.days=5"},
		{"The follower board came to bar 9.", "follower.bar=9"},
	},
	"a weight with at": {
		{"Hive 6 is the heaviest at 34 kg.", "hive=6 weight_kg=34"},
		{"Hive 6 is calm. I harvested two bars at 3 kg.", "hive=6 temper.score=4 actions.harvest=yes actions.harvest.count=2 actions.harvest.amount=3 actions.harvest.unit=kg"},
	},
	"the queen with her mark": {
		{"Our queen with a white dot was on bar four.", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=white"},
		{"Bar five: the queen with a yellow spot.", "queen.seen=yes queen.bar=5 queen.marked=yes queen.colour=yellow"},
		{"The queen crossed bar 3 while I watched.", "queen.seen=yes queen.bar=3"},
		{"I spotted the old lass on bar 8, no mark.", "queen.seen=yes queen.bar=8 queen.marked=no"},
	},
	"a few bees with a sign": {
		{"A few bees with deformed wings.", "signs.deformed_wings=yes"},
		{"Two wretched creatures with crumpled wings on bar 4.", "signs.deformed_wings=yes signs.deformed_wings.count=2 signs.deformed_wings.bar=4"},
		{"A few bees left, no eggs.", "strength.word=weak contents.eggs=no"},
	},
	"cells of another stage": {
		{"Two charged cells on bar 6 though, and one sealed on bar 7.", "bars.6.queen_cells.charged=yes bars.6.queen_cells.charged.count=2 bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=1"},
	},
	"may and does": {
		{"Bar 8 may have larvae; bar 9 certainly does.", "bars.8.open_brood=yes? bars.9.open_brood=yes?"},
		{"Fed 1 l syrup on 4 may.", "earlier.fed=yes earlier.fed.on=2026-05-04 earlier.fed.amount=1 earlier.fed.unit=l earlier.fed.what=syrup"},
		{"Honey on bar 10, and bar 11 does too.", "bars.10.honey=yes? bars.11.honey=yes?"},
	},
	"looks": {
		{"I shall look at a sample under the lens tonight.", ""},
		{"I shall look at the bees again on Friday.", "plans.inspect=yes plans.inspect.due=2026-05-15"},
		{"They will manage if nobody meddles; will inspect in a week.", "plans.inspect=yes plans.inspect.due=2026-05-21"},
	},
	"plans behind hearsay": {
		{"A queen is on order, and I'm going to requeen on Saturday.", "plans.requeen=yes plans.requeen.due=2026-05-16"},
		{"If the weather holds, and if I'm going to requeen on Saturday, I shall need help.", ""},
	},
	"the first bar up": {
		{"They boiled over the moment the first bar was out. Eggs there were.", "temper.score=1 contents.eggs=yes"},
		{"The first bar was honey, the second pollen.", "bars.1.honey=yes bars.2.pollen=yes"},
	},
	"how she lays": {
		{"BIAS, and the queen laying in a tight pattern.", "contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes brood_pattern=solid"},
		{"The queen is laying in a patchy pattern.", "brood_pattern=patchy"},
	},
	"other": {
		{"The drones have all gone.", "drones=no"},
		{"Pollen arrived in two colours, grey from bramble and yellow from gorse.", "incoming.pollen=yes incoming.pollen.colour=grey, yellow incoming.pollen.plant=bramble, gorse"},
		{"Dead bees lay on the floor, which I swept.", "signs.dead_bees=yes actions.clean_floor=yes"},
		{"The queen was on bar 2. The thymol went in on the 4th of May.", "queen.seen=yes queen.bar=2 earlier.treated=yes earlier.treated.on=2026-05-04 earlier.treated.what=thymol"},
		{"Tea tree pollen coming in.", "incoming.pollen=yes incoming.pollen.plant=tea tree"},
	},
}

func TestProseClauses(t *testing.T) { readSayings(t, proseClauses) }
