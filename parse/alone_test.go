package parse

import "testing"

// barsAlone are bars told by their order or their number alone.
var barsAlone = map[string][]saying{
	"by their order": {
		{"first one's bare second one's just a bit of comb third is nectar", "bars.1.comb.size=bare bars.2.comb.size=started bars.3.nectar=yes"},
		{"the first is bare the second has some honey and the third is nectar the fourth and fifth are brood and the queen was on the sixth", "queen.seen=yes queen.bar=6 bars.1.comb.size=bare bars.2.honey=yes bars.3.nectar=yes bars.4.brood=yes bars.5.brood=yes"},
		{"one's empty two has a bit of comb third's honey fourth now here we have eggs", "bars.1.comb.size=bare bars.2.comb.size=started bars.3.honey=yes bars.4.eggs=yes"},
		{"First, the weather. Second, the bees have honey. Third, no brood.", "contents.brood=no contents.honey=yes"},
		{"We opened three hives. The first has eggs, the second has larvae, the third has honey.", "contents.eggs=yes contents.open_brood=yes contents.honey=yes"},
	},
	"by the word number": {
		{"bar number one it is honey\nnumber two pollen\nnumber three four and five it is the sealed brood", "bars.1.honey=yes bars.2.pollen=yes bars.3.capped_brood=yes bars.4.capped_brood=yes bars.5.capped_brood=yes"},
		{"number one\nbar number three eggs\nnumber two\nweak and bar number three bare", "hive=1 bars.3.eggs=yes / hive=2 strength.word=weak bars.3.comb.size=bare"},
		{"number one hive calm\nbar number two pollen\nnumber three larvae", "hive=1 temper.score=4 bars.2.pollen=yes bars.3.open_brood=yes"},
		{"In the hive number one bar number three has eggs. In the number two I saw larvae.", "hive=1 bars.3.eggs=yes / hive=2 contents.open_brood=yes"},
	},
	"by a line of their own": {
		{"bar five\nhoney\nsix\npollen\nand seven\nlarvae", "bars.5.honey=yes bars.6.pollen=yes bars.7.open_brood=yes"},
		{"bar two honey\nhow many cells\nthree\ncalm", "bars.2.honey=yes temper.score=4"},
	},
	"by numbers that go up": {
		{"only lifted six and seven both had eggs", "bars.6.eggs=yes bars.7.eggs=yes"},
		{"on two and three there's pollen", "bars.2.pollen=yes bars.3.pollen=yes"},
		{"The hives: two and three both had pollen.", "contents.pollen=yes"},
		{"two is a bit of comb three nectar four pollen", "bars.2.comb.size=started bars.3.nectar=yes bars.4.pollen=yes"},
	},
	"what a board held": {
		{"the board had been in for four days and we counted 31", "mites.method=drop mites.count=31 mites.days=4"},
		{"I pulled the mite board, which had been in for a week, and counted 60 on it.", "mites.method=drop mites.count=60 mites.days=7"},
		{"the board was in two days and i made it eleven", "mites.method=drop mites.count=11 mites.days=2"},
		{"Board out after five days, 40 counted.", "mites.method=drop mites.count=40 mites.days=5"},
		{"doing the soap wash half a cup of bees off bar two\nthat's seven mites", "mites.method=wash mites.count=7 mites.bees=300"},
		{"varroa i did not count today", ""},
		{"The mite board was clean, and on bar four I found two queen cups.", "mites.method=drop bars.4.queen_cells.cup=yes bars.4.queen_cells.cup.count=2"},
		{"The board had been in for two days and we counted 6 bars of bees.", "strength.bars_of_bees=6"},
	},
	"how many there were": {
		{"bee with deformed wings on bar nine just the one", "signs.deformed_wings=yes signs.deformed_wings.count=1 signs.deformed_wings.bar=9"},
		{"Wax moth on bar two, just one.", "signs.wax_moth=yes signs.wax_moth.count=1 signs.wax_moth.bar=2"},
		{"bar six wax moth bar seven eggs just one", "bars.7.eggs=yes signs.wax_moth=yes signs.wax_moth.bar=6"},
		{"There were twelve beetles hiding under the lid.", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=12"},
		{"beetles i saw four or five under the lid no moth", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=4? signs.small_hive_beetle.count_max=5 signs.wax_moth=no"},
		{"bar two has two queen cups and one with an egg in", "bars.2.queen_cells.cup=yes bars.2.queen_cells.cup.count=2 bars.2.queen_cells.charged=yes bars.2.queen_cells.charged.count=1"},
		{"put two empties in after bar nine", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=9"},
		{"The queen was hiding.", "queen.seen=no"},
		{"two capped on bar 2, one charged on bar 3, all supersedure cells", "bars.2.queen_cells.capped=yes bars.2.queen_cells.capped.count=2 bars.2.queen_cells.capped.kind=supersedure bars.3.queen_cells.charged=yes bars.3.queen_cells.charged.count=1 bars.3.queen_cells.charged.kind=supersedure"},
		{"Queen cells on two bars, one capped on bar 2, one charged on bar 3, both swarm cells.", "bars.2.queen_cells.capped=yes bars.2.queen_cells.capped.count=1 bars.2.queen_cells.capped.kind=swarm bars.3.queen_cells.charged=yes bars.3.queen_cells.charged.count=1 bars.3.queen_cells.charged.kind=swarm"},
		{"Two swarm cells on bar 3, both capped.", "bars.3.queen_cells.capped=yes bars.3.queen_cells.capped.count=2 bars.3.queen_cells.capped.kind=swarm"},
		{"One hatched QC on b9, one torn down beside it.", "bars.9.queen_cells.emerged=yes bars.9.queen_cells.emerged.count=1 bars.9.queen_cells.torn=yes bars.9.queen_cells.torn.count=1"},
		{"They have queen cells on three bars.", "queen_cells.any=yes"},
		{"nine bars in use bees on all of them", "strength.bars_of_bees=9 bars_total=9"},
		{"twelve bars in use and bees on every one", "strength.bars_of_bees=12 bars_total=12"},
	},
	"how much is told behind": {
		{"Capped brood only on bar 2, and only a little.", "bars.2.capped_brood=yes bars.2.capped_brood.amount=little"},
		{"on bar nine is nectar but little bit only", "bars.9.nectar=yes bars.9.nectar.amount=little"},
		{"larvae on bar three just a patch bar four honey", "bars.3.open_brood=yes bars.3.open_brood.amount=little bars.4.honey=yes"},
		{"eggs on bar two just a handful", "bars.2.eggs=yes bars.2.eggs.amount=little"},
		{"Bar 2 is full of nectar, bit of a job to lift.", "bars.2.nectar=yes bars.2.nectar.cover=1"},
		{"Bars 2 and 3 honey, both a third full.", "bars.2.honey=yes bars.2.honey.cover=0.333 bars.3.honey=yes bars.3.honey.cover=0.333"},
		{"Bars 2 and 3 honey, both sides.", "bars.2.honey=yes bars.2.honey.side=both bars.3.honey=yes bars.3.honey.side=both"},
		{"bar two brood a third full", "bars.2.brood=yes bars.2.brood.cover=0.333"},
		{"bar nine nothing only pollen on it", "bars.9.pollen=yes bars.9.pollen.cover=1"},
		{"bar nine's straight enough full of honey", "bars.9.comb.straight=yes bars.9.honey=yes bars.9.honey.cover=1"},
		{"bar two sealed brood i'd say forty percent and the rest of it larvae", "bars.2.capped_brood=yes? bars.2.capped_brood.cover=0.4 bars.2.open_brood=yes?"},
	},
	"brood in all stages behind the queen": {
		{"Queen seen on bar 9, red dot. BIAS.", "queen.seen=yes queen.bar=9 queen.marked=yes queen.colour=red contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes"},
		{"Found her on bar 9, clipped. Brood in all stages.", "queen.seen=yes queen.bar=9 queen.clipped=yes contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes"},
		{"Queen on bar 9. BIAS there too.", "queen.seen=yes queen.bar=9 bars.9.eggs=yes bars.9.open_brood=yes bars.9.capped_brood=yes"},
		{"Bar 9: BIAS. Queen on bar 9.", "queen.seen=yes queen.bar=9 bars.9.eggs=yes bars.9.open_brood=yes bars.9.capped_brood=yes"},
	},
	"bars that were taken": {
		{"Bar 9 I lost: the comb broke off, half full of nectar, so I removed the bar and there was honey everywhere.", "bars.9.comb.broken=yes bars.9.nectar=yes bars.9.nectar.cover=0.5 actions.remove_bar=yes actions.remove_bar.bar=9"},
		{"Mould on bar 9, which I took out.", "signs.mould=yes signs.mould.bar=9 actions.remove_bar=yes actions.remove_bar.bar=9"},
		{"Wax moth in bar 9, which I scraped off.", "signs.wax_moth=yes signs.wax_moth.bar=9"},
		{"One sealed cell on bar 9, which I removed.", "bars.9.queen_cells.capped=yes bars.9.queen_cells.capped.count=1 actions.cut_cells=yes actions.cut_cells.bar=9"},
		{"Capped honey on bars 2 and 3, which I harvested.", "bars.2.capped_honey=yes bars.3.capped_honey=yes actions.harvest=yes actions.harvest.bars=2,3 actions.harvest.count=2"},
		{"Then the harvest: two bars, 9 lb, and a sticky table.", "actions.harvest=yes actions.harvest.count=2 actions.harvest.amount=9 actions.harvest.unit=lb"},
		{"i cut bar two free\nbar nine's attached to the wall i cut that one free too", "bars.9.comb.attached=wall actions.free_comb=yes actions.free_comb.bar=2 actions.free_comb#2=yes actions.free_comb#2.bar=9"},
		{"Freed bar two. It took ages to free it.", "actions.free_comb=yes actions.free_comb.bar=2"},
	},
	"sealed behind a number": {
		{"bar five eggs six sealed seven capped eight nectar", "bars.5.eggs=yes bars.6.capped_brood=yes bars.7.capped_brood=yes bars.8.nectar=yes"},
		{"bar five eggs bar six sealed bar seven sealed but patchy", "bars.5.eggs=yes bars.6.capped_brood=yes bars.7.capped_brood=yes bars.7.capped_brood.pattern=patchy"},
		{"bar five larvae bar six honey bar seven sealed", "bars.5.open_brood=yes bars.6.honey=yes"},
		{"bar six has eggs bar seven capped no i mean open brood bar eight pollen", "bars.6.eggs=yes bars.7.open_brood=yes? bars.8.pollen=yes"},
		{"bar two three queen cells two sealed", "bars.2.queen_cells.capped=yes bars.2.queen_cells.capped.count=2"},
	},
	"each place before what is on it": {
		{"on bar two i've got honey on bar three honey and a little pollen on bar four eggs", "bars.2.honey=yes bars.3.honey=yes bars.3.pollen=yes bars.3.pollen.amount=little bars.4.eggs=yes"},
		{"on two i've got honey on three pollen on four eggs and that's where she is", "queen.seen=yes queen.bar=4 bars.2.honey=yes bars.3.pollen=yes bars.4.eggs=yes"},
		{"eggs on bar two honey on bar three", "bars.2.eggs=yes bars.3.honey=yes"},
	},
	"one cell that is a cup": {
		{"there's a queen cell on bar nine it's just a play cup", "bars.9.queen_cells.cup=yes bars.9.queen_cells.cup.count=1"},
		{"there is one queen cell on bar two but it is an empty cup only", "bars.2.queen_cells.cup=yes bars.2.queen_cells.cup.count=1"},
		{"two queen cells on bar two and a play cup on bar three", "bars.2.queen_cells.any=yes bars.2.queen_cells.any.count=2 bars.3.queen_cells.cup=yes bars.3.queen_cells.cup.count=1"},
	},
}

func TestBarsAlone(t *testing.T) { readSayings(t, barsAlone) }
