package parse

import "testing"

// sideBySide are sentences of two findings or deeds that have nothing to do with each other.
var sideBySide = map[string][]saying{
	"a finding behind what is to be done": {
		{"Want to put a bar in on Saturday, feeder dry.", "plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-16 feeder=empty"},
		{"Must feed them on Sunday; queenright.", "plans.feed=yes plans.feed.due=2026-05-17 queenright=yes"},
		{"Must feed them on Sunday; shut the entrance.", "plans.feed=yes plans.feed.due=2026-05-17 plans.close_entrance=yes plans.close_entrance.due=2026-05-17"},
		{"Must feed them on Sunday; opened the floor.", "plans.feed=yes plans.feed.due=2026-05-17 actions.open_floor=yes"},
	},
	"a finding behind a deed of another day": {
		{"Put a bar in last week, two play cups on bar 3.", "earlier.bar_added=yes earlier.bar_added.count=1 bars.3.queen_cells.cup=yes bars.3.queen_cells.cup.count=2"},
		{"Put a bar in last week, colony strong.", "earlier.bar_added=yes earlier.bar_added.count=1 strength.word=strong"},
		{"Last week they had larvae on bar 5, honey on bar 9.", ""},
	},
	"bars that belong to the second alone": {
		{"No play cups, comb on bar 6 collapsed.", "queen_cells.cup=no bars.6.comb.broken=yes"},
		{"Chalkbrood on bar 4, three play cups on bar 9.", "signs.chalkbrood=yes signs.chalkbrood.bar=4 bars.9.queen_cells.cup=yes bars.9.queen_cells.cup.count=3"},
		{"Bar 3 stuck to the wall, sacbrood on bar 6.", "bars.3.comb.attached=wall signs.sacbrood=yes signs.sacbrood.bar=6"},
		{"Queen marked, cross comb on bar 12.", "queen.marked=yes bars.12.comb.cross=yes"},
		{"Wasps at the entrance, festooning on bar 10.", "signs.wasps=yes bars.10.festooning=yes"},
		{"Three play cups, one sealed cell on bar 7.", "bars.7.queen_cells.cup=yes bars.7.queen_cells.cup.count=3 bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=1"},
		{"Eggs, larvae on bar 5.", "bars.5.eggs=yes bars.5.open_brood=yes"},
	},
	"what is carried in": {
		{"Capped honey on bar 2, yellow pollen coming in.", "bars.2.capped_honey=yes incoming.pollen=yes incoming.pollen.colour=yellow"},
		{"Harvested 2 kg of honey, lime nectar coming in.", "actions.harvest=yes actions.harvest.amount=2 actions.harvest.unit=kg incoming.nectar=yes incoming.nectar.plant=lime"},
		{"Yellow pollen coming in, clover nectar coming in.", "incoming.pollen=yes incoming.pollen.colour=yellow incoming.nectar=yes incoming.nectar.plant=clover"},
		{"Pollen, nectar coming in.", "incoming.pollen=yes incoming.nectar=yes"},
	},
	"a finding behind a deed": {
		{"Put in two bars, robbing at the entrance.", "actions.add_bar=yes actions.add_bar.count=2 signs.robbing=yes"},
		{"Trimmed bar 9, no queen cells.", "actions.trim_comb=yes actions.trim_comb.bar=9 queen_cells.any=no"},
		{"Fed 1 litre of syrup, brood on four bars.", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup contents.brood=yes contents.brood.bars=4"},
		{"Cut out three queen cells, no queen cells.", "actions.cut_cells=yes actions.cut_cells.count=3 queen_cells.any=no"},
		{"Treated with thymol, brood pattern good.", "actions.treat=yes actions.treat.what=thymol brood_pattern=solid"},
	},
	"words that only look misheard or sought together": {
		{"Bar 9 is half drawn. Brood on six bars.", "bars.9.comb.drawn=0.5 contents.brood=yes contents.brood.bars=6"},
		{"Queen on bar 4, no sign of disease.", "queen.seen=yes queen.bar=4"},
		{"Clipped the queen, no sign of illness.", "queen.clipped=yes actions.clip_queen=yes"},
	},
	"a phrase of its own that was drawn into the one before": {
		{"Bar 9 half drawn, clipped the queen.", "bars.9.comb.drawn=0.5 queen.clipped=yes actions.clip_queen=yes"},
		{"Bar 4 stuck to the wall, requeened with a mated queen.", "bars.4.comb.attached=wall actions.requeen=yes"},
		{"Running on the comb, two play cups on bar 3.", "temper.runny=yes bars.3.queen_cells.cup=yes bars.3.queen_cells.cup.count=2"},
		{"Queen marked blue, sunny and calm.", "queen.marked=yes queen.colour=blue weather.sky=sunny weather.wind=calm"},
		{"No wax moth, swarmed in May.", "signs.wax_moth=no earlier.swarmed=yes"},
		{"A few ants, sacbrood on bar 4.", "signs.ants=yes signs.sacbrood=yes signs.sacbrood.bar=4"},
		{"Harvested bar 12, weighs 26 kg.", "actions.harvest=yes actions.harvest.bar=12 weight_kg=26"},
		{"Must look again on Sunday; gave them a puff of smoke.", "plans.inspect=yes plans.inspect.due=2026-05-17 actions.smoke=yes"},
	},
	"signs and brood of the hive behind something else": {
		{"Bar 12 is bare, wasps at the entrance.", "bars.12.comb.size=bare signs.wasps=yes"},
		{"Deformed wings on three bees, sacbrood on bar 6.", "signs.deformed_wings=yes signs.deformed_wings.count=3 signs.sacbrood=yes signs.sacbrood.bar=6"},
		{"Two bees with ragged, deformed wings.", "signs.deformed_wings=yes signs.deformed_wings.count=2"},
		{"Shut the entrance, brood pattern good.", "actions.close_entrance=yes brood_pattern=solid"},
		{"Queen not seen, comb on bar 7 collapsed.", "queen.seen=no bars.7.comb.broken=yes"},
		{"Must feed on Sunday, swarmed in May.", "plans.feed=yes plans.feed.due=2026-05-17 earlier.swarmed=yes"},
		{"Queen marked white, 16 degrees and overcast.", "queen.marked=yes queen.colour=white weather.temp_c=16 weather.sky=overcast"},
	},
	"what is denied behind bars": {
		{"Larvae on bars 3 and 4, no eggs.", "bars.3.open_brood=yes bars.4.open_brood=yes contents.eggs=no"},
		{"Chalkbrood on bar 3, no eggs.", "signs.chalkbrood=yes signs.chalkbrood.bar=3 contents.eggs=no"},
		{"Bar 3 larvae, no eggs.", "bars.3.open_brood=yes bars.3.eggs=no"},
		{"Took out bar 9, no brood.", "actions.remove_bar=yes actions.remove_bar.bar=9 bars.9.brood=no"},
		{"Harvested bar 12, no eggs.", "actions.harvest=yes actions.harvest.bar=12 contents.eggs=no"},
	},
	"told in other words": {
		{"b4 eggs, yellow pollen going in.", "bars.4.eggs=yes incoming.pollen=yes incoming.pollen.colour=yellow"},
		{"One bar added, bringing in willow pollen.", "actions.add_bar=yes actions.add_bar.count=1 incoming.pollen=yes incoming.pollen.plant=willow"},
		{"Fed them 1 litre of syrup, eggs both sides of bar 4.", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup bars.4.eggs=yes bars.4.eggs.side=both"},
		{"Six bars of brood, larvae on bar 4.", "contents.brood=yes contents.brood.bars=6 bars.4.open_brood=yes"},
		{"Bar 10 bare, drones on bar 9.", "bars.10.comb.size=bare drones=yes"},
		{"Must feed on Sunday, feeder still half full.", "plans.feed=yes plans.feed.due=2026-05-17 feeder=part"},
		{"Must feed on Sunday, QNS.", "plans.feed=yes plans.feed.due=2026-05-17 queen.seen=no"},
		{"Swarmed three weeks ago, feeder dry.", "earlier.swarmed=yes earlier.swarmed.on=2026-04-23 feeder=empty"},
		{"Queen marked, bar 3: pollen.", "queen.marked=yes bars.3.pollen=yes"},
		{"Booming colony, five small hive beetles.", "strength.word=strong signs.small_hive_beetle=yes signs.small_hive_beetle.count=5"},
	},
}

func TestSideBySide(t *testing.T) { readSayings(t, sideBySide) }
