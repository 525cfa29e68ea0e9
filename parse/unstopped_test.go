package parse

import "testing"

// unstoppedSayings are told one behind the other without a stop.
var unstoppedSayings = map[string][]saying{
	"a place with its verb": {
		{"bars 3 to 4 have brood with pollen at the edge on bar 6 i found the queen", "bars.3.brood=yes bars.3.pollen=yes bars.3.pollen.place=edge bars.4.brood=yes bars.4.pollen=yes bars.4.pollen.place=edge queen.seen=yes queen.bar=6"},
		{"bars 3 and 4 have spotty sealed brood on bar 8 there were two charged cells", "bars.3.capped_brood=yes bars.3.capped_brood.pattern=patchy bars.4.capped_brood=yes bars.4.capped_brood.pattern=patchy bars.8.queen_cells.charged=yes bars.8.queen_cells.charged.count=2"},
		{"on bar 5 are many eggs on bar 6 is sealed brood on both sides bar 7 has a little nectar", "bars.5.eggs=yes bars.5.eggs.amount=much bars.6.capped_brood=yes bars.6.capped_brood.side=both bars.7.nectar=yes bars.7.nectar.amount=little"},
		{"eggs on bar 3 and larvae on bar 4", "bars.3.eggs=yes bars.4.open_brood=yes"},
	},
	"a temper behind none at all": {
		{"bar 8 bare no queen cells quiet", "bars.8.comb.size=bare queen_cells.any=no temper.score=4"},
		{"no eggs no larvae grumpy", "contents.eggs=no contents.open_brood=no temper.score=2"},
	},
	"what is coming in": {
		{"eggs on bar 3 which is fine ivy pollen is coming in yellow", "bars.3.eggs=yes incoming.pollen=yes incoming.pollen.plant=ivy incoming.pollen.colour=yellow"},
		{"stores heavy water coming in", "stores.word=heavy incoming.water=yes"},
		{"bars 4 and 5 have sealed brood bees are working the lime nectar coming in", "bars.4.capped_brood=yes bars.5.capped_brood=yes incoming.nectar=yes incoming.nectar.plant=lime"},
	},
	"today behind another day": {
		{"i split them on friday today i saw the queen on bar 4", "queen.seen=yes queen.bar=4 earlier.split=yes earlier.split.on=2026-05-08"},
		{"three days ago i saw the queen on bar 5 today i looked for her and could not find her", "queen.seen=no earlier.queen_seen=yes earlier.queen_seen.on=2026-05-11 earlier.queen_seen.bar=5"},
	},
	"a deed that has had its object": {
		{"bar 7 was wavy straightened it bar 8 cross comb", "bars.7.comb.straight=no bars.8.comb.cross=yes actions.straighten=yes actions.straighten.bar=7"},
		{"bar 9 stuck to the wall cut it free bar 10 capped honey", "bars.9.comb.attached=wall bars.10.capped_honey=yes actions.free_comb=yes actions.free_comb.bar=9"},
		{"moved it to bar 8", "actions.move_bar=yes actions.move_bar.to=8"},
	},
	"signs of the hive behind a bar": {
		{"bar 8 empty comb bar 9 mould no mice no dysentery", "bars.8.empty=yes signs.mould=yes signs.mould.bar=9 signs.mice=no signs.dysentery=no"},
		{"bar 9 has eggs wasps about", "bars.9.eggs=yes signs.wasps=yes"},
	},
	"bars behind each thing": {
		{"eggs b5 b6 sealed brood b3-b4 tight", "bars.3.capped_brood=yes bars.3.capped_brood.pattern=solid bars.4.capped_brood=yes bars.4.capped_brood.pattern=solid bars.5.eggs=yes bars.6.eggs=yes"},
		{"q b4 blue dot eggs b4 b5 larvae b6 good laying pattern", "bars.4.eggs=yes bars.5.eggs=yes bars.6.open_brood=yes brood_pattern=solid queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=blue"},
		{"b4 eggs b5 b6 sealed brood b7 nectar", "bars.4.eggs=yes bars.5.capped_brood=yes bars.6.capped_brood=yes bars.7.nectar=yes"},
	},
	"what was done behind the day of a plan": {
		{"need to reduce the entrance on saturday treated with oxalic acid 50 ml", "plans.reduce_entrance=yes plans.reduce_entrance.due=2026-05-16 actions.treat=yes actions.treat.what=oxalic acid actions.treat.amount=50 actions.treat.unit=ml"},
	},
	"a plan behind hearsay or a condition": {
		{"my neighbour lost his to wasps i will feed them on saturday", "plans.feed=yes plans.feed.due=2026-05-16"},
		{"if it turns cold i will feed them need to close the floor on sunday", "plans.close_floor=yes plans.close_floor.due=2026-05-17"},
		{"my friend says i must feed them on sunday", ""},
		{"if they swarm i will split them on sunday", ""},
		{"need to feed them tomorrow if i put it off any longer they'll be dead", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"going to treat them on sunday if we wait any longer there will be mites on every bee", "plans.treat=yes plans.treat.due=2026-05-17"},
		{"must reduce the entrance on friday if i don't the wasps have them", "plans.reduce_entrance=yes plans.reduce_entrance.due=2026-05-15"},
		{"must reduce the entrance on friday if the wasps have them", ""},
		{"so thymol goes on friday we looked for eggs and saw none", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-15 contents.eggs=no"},
		{"oxalic acid goes on friday i fed them a litre of syrup", "plans.treat=yes? plans.treat.what=oxalic acid plans.treat.due=2026-05-15 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"bar two nectar or maybe syrup i couldn't say bar three larvae", "bars.3.open_brood=yes"},
		{"bar two eggs or maybe light hard to tell bar three is bare", "bars.3.comb.size=bare"},
		{"feed them tomorrow if it is dry", ""},
	},
	"what was done and seen behind hearsay or a question": {
		{"should i give them more room i saw the queen on bar 4", "queen.seen=yes queen.bar=4"},
		{"the leaflet says bees dislike dark wool the bees were calm", "temper.score=4"},
		{"my uncle says his bees have chalkbrood every spring i fed them a litre of syrup", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"my uncle says i fed them too late", ""},
		{"if it is hot the bees were cross", ""},
	},
	"what belongs to the words beside it": {
		{"i could smell the hive from the gate propolis coming in", "incoming.propolis=yes"},
		{"as soon as the roof came off bar 4 has larvae", "bars.4.open_brood=yes"},
		{"bees on 12 bars three charged supersedure cells in all", "strength.bars_of_bees=12 queen_cells.charged=yes queen_cells.charged.count=3 queen_cells.charged.kind=supersedure"},
	},
	"hives by a plant or a place": {
		{"18 degrees and sunny hive 4 bees on 6 bars", "hive=4 strength.bars_of_bees=6 weather.temp_c=18 weather.sky=sunny"},
		{"overcast and windy hive maple queen not seen", "hive=maple queen.seen=no weather.sky=overcast weather.wind=windy"},
		{"larch hive b1-2 honey b3 eggs", "hive=larch bars.1.honey=yes bars.2.honey=yes bars.3.eggs=yes"},
		{"opened pavilion hive calm bees", "hive=pavilion temper.score=4"},
		{"no foul smell from the hive 5 chalkbrood mummies on the floor", "signs.foul_smell=no signs.chalkbrood=yes signs.chalkbrood.count=5"},
		{"orchard hive queen on bar 3 meadow hive one torn down queen cell on bar 7", "hive=orchard queen.seen=yes queen.bar=3 / hive=meadow bars.7.queen_cells.torn=yes bars.7.queen_cells.torn.count=1"},
		{"i gave one bar to the larch hive maple hive is calm and quiet", "hive=maple temper.score=4 actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to_hive=larch"},
		{"the children lifted no lids garden hive 24.6 kg on the scale", "hive=garden weight_kg=24.6"},
		{"hive pond\nbar 4 eggs", "hive=pond bars.4.eggs=yes"},
		{"windy hive a\nqueen not seen", "hive=a queen.seen=no weather.wind=windy"},
		{"looked at the back fence hive", "hive=back fence"},
	},
}

func TestUnstopped(t *testing.T) { readSayings(t, unstoppedSayings) }
