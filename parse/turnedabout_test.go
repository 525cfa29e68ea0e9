package parse

import "testing"

// turnedSayings are sentences whose words stand the other way about than in a note, and
// what their speakers add or take back.
var turnedSayings = map[string][]saying{
	"a place before its bar": {
		{"In the corners of bar nine was capped honey, and in the middle of the same comb I found larvae.", "bars.9.capped_honey=yes bars.9.capped_honey.place=corners bars.9.open_brood=yes bars.9.open_brood.place=middle"},
		{"At the bottom of bar eight hung drone brood.", "bars.8.drone_brood=yes bars.8.drone_brood.place=bottom"},
		{"In the middle of bar five, as neat as a pin, sat a patch of eggs.", "bars.5.eggs=yes bars.5.eggs.amount=little bars.5.eggs.place=middle"},
		{"On the face of bar six that is nearest the entrance I saw eggs, and on the other face larvae.", "bars.6.eggs=yes bars.6.eggs.side=front bars.6.open_brood=yes bars.6.open_brood.side=back"},
		{"On both sides of bar three there were eggs.", "bars.3.eggs=yes bars.3.eggs.side=both"},
		{"At the back of bar three was the follower.", ""},
	},
	"a denial before or behind its list": {
		{"Of mice, wasps and ants there is not a trace.", "signs.mice=no signs.wasps=no signs.ants=no"},
		{"Of wax moth and of beetles there was, thank heaven, nothing.", "signs.wax_moth=no signs.small_hive_beetle=no"},
		{"Of eggs, larvae and sealed brood there was no sign.", "contents.eggs=no contents.open_brood=no contents.capped_brood=no"},
		{"of beetles there is no sign so they are queenright still", "signs.small_hive_beetle=no queenright=yes"},
		{"Of queen cells there were two on bar six.", "bars.6.queen_cells.any=yes bars.6.queen_cells.any.count=2"},
		{"Nowhere on the combs of hive 2, old or new, were there any larvae.", "hive=2 contents.open_brood=no"},
		{"At no point did I see the queen.", "queen.seen=no"},
		{"Neither of us managed to find the queen.", "queen.seen=no"},
	},
	"what was found before its bar": {
		{"A slab of capped honey: that's what we found on bar twelve.", "bars.12.capped_honey=yes"},
		{"Two sealed queen cells: this is what I saw on bar five.", "bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=2"},
		{"On bar eight was all that was left of a queen cell, torn down.", "bars.8.queen_cells.torn=yes bars.8.queen_cells.torn.count=1"},
		{"On bar seven, larvae, and lots of them.", "bars.7.open_brood=yes bars.7.open_brood.amount=much"},
	},
	"what somebody holds before what was done": {
		{"Whatever the books say, I gave them two litres of syrup.", "actions.feed=yes actions.feed.amount=2 actions.feed.unit=l actions.feed.what=syrup"},
		{"Having heard from the club that it was time, I removed bar nine.", "actions.remove_bar=yes actions.remove_bar.bar=9"},
		{"According to my notes I added a bar on the third of May.", "earlier.bar_added=yes earlier.bar_added.count=1 earlier.bar_added.on=2026-05-03"},
		{"According to my neighbour they swarmed on Sunday.", ""},
		{"You ask after the queen: she was raised in 2024 and I did not look for her, there being eggs on bar six.", "queen.year=2024 bars.6.eggs=yes"},
		{"I did not treat the plum hive on Monday.", "hive=plum earlier.treated=no earlier.treated.on=2026-05-11"},
		{"My uncle says his bees have chalkbrood; in my own holly hive there are eggs on bar four.", "hive=holly bars.4.eggs=yes"},
	},
	"days told first": {
		{"On Tuesday, when I hope to treat hive 5, my son will help.", "hive=5 plans.treat=yes plans.treat.due=2026-05-19"},
		{"On Tuesday my brother is over and we'll add two bars.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-19"},
		{"Hive 4. Next week: a bar in between four and five.", "hive=4 plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.to=4 plans.add_bar.due=2026-05-21"},
		{"Hive 4. Must remember, two bars in after bar eight.", "hive=4 plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.to=8"},
		{"Jobs done: two bars in after bar eight.", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=8"},
		{"the queen was on bar six last week today I couldn't find her", "queen.seen=no earlier.queen_seen=yes earlier.queen_seen.bar=6"},
		{"The board had been in for four days, and when I pulled it out I counted twelve mites.", "mites.method=drop mites.count=12 mites.days=4"},
		{"On Friday we shall unite hive 2 with hive 6.", "hive=2 plans.unite=yes plans.unite.to_hive=6 plans.unite.due=2026-05-15"},
	},
	"there but not here": {
		{"hive 2 larvae on five and six but not seven", "hive=2 bars.5.open_brood=yes bars.6.open_brood=yes bars.7.open_brood=no"},
		{"Pollen on bars two and three but none on bar four.", "bars.2.pollen=yes bars.3.pollen=yes bars.4.pollen=no"},
		{"Nectar on bars 6 and 7, not 8.", "bars.6.nectar=yes bars.7.nectar=yes bars.8.nectar=no"},
		{"Bars 3 and 4 have eggs but not bar 5.", "bars.3.eggs=yes bars.4.eggs=yes bars.5.eggs=no"},
		{"The queen was on bar 4, not 5.", "queen.seen=yes queen.bar=4"},
		{"Bars 8 to 10 are cross comb and 9 snapped off.", "bars.8.comb.cross=yes bars.9.comb.cross=yes bars.10.comb.cross=yes bars.9.comb.broken=yes"},
	},
	"taken back by another figure": {
		{"bar three that's half drawn no more like two thirds", "bars.3.comb.drawn=0.667?"},
		{"hive two seven mites no it's more like nine", "hive=2 mites.method=seen mites.count=9?"},
		{"on the scale twenty eight no twenty nine kilos", "weight_kg=29?"},
	},
	"on the next line": {
		{"bar six is next\nhalf of it pollen", "bars.6.pollen=yes bars.6.pollen.cover=0.5"},
		{"bar six honey\nlovely white comb it is", "bars.6.honey=yes bars.6.comb.new=yes"},
		{"bar nine they've joined it to the floor\nso I cut it loose", "bars.9.comb.attached=floor actions.free_comb=yes actions.free_comb.bar=9"},
	},
	"said of the bees, their queen or their brood": {
		{"They were nervous at first, and gentle by the end.", "temper.score=4?"},
		{"Hive 6: eggs on 4, all calm", "hive=6 bars.4.eggs=yes temper.score=4"},
		{"A gentle breeze got up.", "weather.wind=breezy"},
		{"hive two calm so i'll keep it short fourteen degrees and sunny", "hive=2 temper.score=4 weather.temp_c=14 weather.sky=sunny"},
		{"Larvae on bar five, and the queen on the same bar.", "bars.5.open_brood=yes queen.seen=yes queen.bar=5"},
		{"Queen on bar 4, white dot getting rather pale.", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=white queen.worn=yes"},
		{"The mark, which was so bright last year, has worn off completely. She was on bar 6.", "queen.seen=yes queen.bar=6 queen.marked=no queen.worn=yes"},
		{"Bars 4 and 5 were open brood, and tight brood at that.", "bars.4.open_brood=yes bars.4.open_brood.pattern=solid bars.5.open_brood=yes bars.5.open_brood.pattern=solid"},
		{"nut hive stores wise they've plenty so no feed today", "hive=nut stores.word=heavy"},
		{"I watched them fly home with white pollen from the bramble.", "incoming.pollen=yes incoming.pollen.colour=white incoming.pollen.plant=bramble"},
		{"hive for we went through it and found eggs on bar three", "hive=4? bars.3.eggs=yes"},
	},
}

func TestTurnedAbout(t *testing.T) { readSayings(t, turnedSayings) }
