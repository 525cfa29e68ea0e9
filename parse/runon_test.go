package parse

import "testing"

// runOn are findings dictated one behind the other without a stroke.
var runOn = map[string][]saying{
	"each has its own place": {
		{"larvae on bar 6 chalk brood on bar 7", "bars.6.open_brood=yes signs.chalkbrood=yes signs.chalkbrood.bar=7"},
		{"pollen on 11 and 12 cross comb on bar 13", "bars.11.pollen=yes bars.12.pollen=yes bars.13.comb.cross=yes"},
		{"bar 5 full of nectar comb on bar 6 broken", "bars.5.nectar=yes bars.5.nectar.cover=1 bars.6.comb.broken=yes"},
		{"bar 9 is bare festooning on bar 8", "bars.9.comb.size=bare bars.8.festooning=yes"},
		{"eggs on bar 3 wasps at the entrance", "bars.3.eggs=yes signs.wasps=yes"},
		{"honey on bars 8 and 9 ants on the stand", "bars.8.honey=yes bars.9.honey=yes signs.ants=yes"},
		{"larvae on bar 4 red pollen coming in", "bars.4.open_brood=yes incoming.pollen=yes incoming.pollen.colour=red"},
		{"entrance reduced one sealed queen cell on bar 5", "entrance=reduced bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=1"},
	},
	"a deed has its object before them": {
		{"harvested bars 14 and 15 larvae on bar 5", "actions.harvest=yes actions.harvest.count=2 actions.harvest.bars=14,15 bars.5.open_brood=yes"},
		{"added two bars one sealed queen cell on bar 5", "actions.add_bar=yes actions.add_bar.count=2 bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=1"},
		{"cut bar 9 free robbing at the entrance", "actions.free_comb=yes actions.free_comb.bar=9 signs.robbing=yes"},
		{"fed 1 litre of syrup pollen on bars 2 and 3", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup bars.2.pollen=yes bars.3.pollen=yes"},
		{"moved bar 11 to 7 bar 3 has eggs", "actions.move_bar=yes actions.move_bar.bar=11 actions.move_bar.to=7 bars.3.eggs=yes"},
		{"moved the follower back three bars eggs on bar 5", "actions.move_follower=yes actions.move_follower.count=3 actions.move_follower.direction=back bars.5.eggs=yes"},
		{"cleaned the floor follower behind bar 11", "actions.clean_floor=yes follower.bar=11"},
		{"trimmed bar 7 brood pattern good", "actions.trim_comb=yes actions.trim_comb.bar=7 brood_pattern=solid"},
		{"took out bar 12 15 bars in use", "actions.remove_bar=yes actions.remove_bar.bar=12 bars_total=15"},
	},
	"none at all behind a deed": {
		{"took out bar 12 no larvae", "actions.remove_bar=yes actions.remove_bar.bar=12 contents.open_brood=no"},
		{"fed 1 litre of syrup no queen cells", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup queen_cells.any=no"},
		{"marked the queen no sign of disease", "actions.mark_queen=yes queen.marked=yes"},
	},
	"the queen, the weather and the hive's fate": {
		{"saw the queen red dot bar 10 is bare", "queen.seen=yes queen.marked=yes queen.colour=red bars.10.comb.size=bare"},
		{"queen marked blue sunny and calm", "queen.marked=yes queen.colour=blue weather.sky=sunny weather.wind=calm"},
		{"moved bar 11 to 7 queen not seen", "actions.move_bar=yes actions.move_bar.bar=11 actions.move_bar.to=7 queen.seen=no"},
		{"no larvae swarmed last week", "contents.open_brood=no earlier.swarmed=yes"},
		{"bees on eight bars two queen cups on bar 5", "strength.bars_of_bees=8 bars.5.queen_cells.cup=yes bars.5.queen_cells.cup.count=2"},
	},
	"how a thing is": {
		{"floor closed honey on bars 8 and 9", "floor=closed bars.8.honey=yes bars.9.honey=yes"},
		{"brood pattern good stores light", "brood_pattern=solid stores.word=light"},
		{"feeder empty comb on bar 7 broken", "feeder=empty bars.7.comb.broken=yes"},
		{"stores enough for now", "stores.word=fair"},
	},
	"as it is spoken": {
		{"took bar twelve out brood on bar five", "actions.remove_bar=yes actions.remove_bar.bar=12 bars.5.brood=yes"},
		{"closed up the floor larvae both sides on bar five", "actions.close_floor=yes bars.5.open_brood=yes bars.5.open_brood.side=both"},
		{"eggs on bar five bringing in loads of orange pollen", "bars.5.eggs=yes incoming.pollen=yes incoming.pollen.colour=orange"},
		{"pollen on bar two comb's broken on bar nine", "bars.2.pollen=yes bars.9.comb.broken=yes"},
		{"bar ten's empty larvae on bar three", "bars.10.comb.size=bare bars.3.open_brood=yes"},
		{"stores are low eight seams of bees", "stores.word=light strength.bars_of_bees=8"},
		{"put three empty bars in honey on bar nine", "actions.add_bar=yes actions.add_bar.count=3 bars.9.honey=yes"},
	},
	"bars with an article": {
		{"larvae on the bars five to seven sealed brood on eight and nine", "bars.5.open_brood=yes bars.6.open_brood=yes bars.7.open_brood=yes bars.8.capped_brood=yes bars.9.capped_brood=yes"},
		{"pollen on the bar two larvae on the bar three", "bars.2.pollen=yes bars.3.open_brood=yes"},
		{"took off the bar one sealed cell on bar 4", "actions.remove_bar=yes bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=1"},
	},
	"each place before what is found": {
		{"on bar three it has little nectar on bar four and on bar five it has larvae", "bars.3.nectar=yes bars.3.nectar.amount=little bars.4.open_brood=yes bars.5.open_brood=yes"},
		{"on bars two and three it has pollen on bars five to seven it has grubs", "bars.2.pollen=yes bars.3.pollen=yes bars.5.open_brood=yes bars.6.open_brood=yes bars.7.open_brood=yes"},
		{"on the bar two and on the bar three larvae", "bars.2.open_brood=yes bars.3.open_brood=yes"},
		{"larvae on bar two and on bar three honey", "bars.2.open_brood=yes bars.3.honey=yes"},
	},
	"one statement yet": {
		{"eggs larvae and sealed brood on bar 4", "bars.4.eggs=yes bars.4.open_brood=yes bars.4.capped_brood=yes"},
		{"bar 4 solid sealed brood", "bars.4.capped_brood=yes bars.4.capped_brood.pattern=solid"},
		{"cut out two queen cells on bar 5", "actions.cut_cells=yes actions.cut_cells.count=2 actions.cut_cells.bar=5"},
		{"harvested 2 kg of honey", "actions.harvest=yes actions.harvest.amount=2 actions.harvest.unit=kg"},
		{"one virgin queen running about on bar 5", "queen.seen=yes queen.bar=5 queen.virgin=yes"},
		{"sealed brood on bars 5 and 6 scattered eggs on bar 7", "bars.5.capped_brood=yes bars.5.capped_brood.pattern=patchy bars.6.capped_brood=yes bars.6.capped_brood.pattern=patchy bars.7.eggs=yes"},
	},
}

func TestRunOn(t *testing.T) { readSayings(t, runOn) }
