package parse

import "testing"

// layouts are rows of bars and what they hold, with bare numbers.
var layouts = map[string][]saying{
	"contents before their bars": {
		{"Brood: 3-5. Stores: 6-7.", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes bars.6.honey=yes bars.7.honey=yes"},
		{"brood 3-5 honey 6-7 pollen 2", "bars.2.pollen=yes bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes bars.6.honey=yes bars.7.honey=yes"},
		{"brood three to five honey six and seven eight empty", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes bars.6.honey=yes bars.7.honey=yes bars.8.comb.size=bare"},
		{"Honey on bars 6 to 7, 8 and 9 empty.", "bars.6.honey=yes bars.7.honey=yes bars.8.comb.size=bare bars.9.comb.size=bare"},
		{"Nest: 3 to 4, honey: 5 to 6, empty: 7.", "bars.3.brood=yes bars.4.brood=yes bars.5.honey=yes bars.6.honey=yes bars.7.comb.size=bare"},
		{"Brood = 3-4, honey = 5-6.", "bars.3.brood=yes bars.4.brood=yes bars.5.honey=yes bars.6.honey=yes"},
		{"Brood - bars 3-4. Empty - bars 5-6.", "bars.3.brood=yes bars.4.brood=yes bars.5.comb.size=bare bars.6.comb.size=bare"},
		{"Brood bars: 3-4. Bare bars: 6 and 7.", "bars.3.brood=yes bars.4.brood=yes bars.6.comb.size=bare bars.7.comb.size=bare"},
		{"Honey 1-2, brood 3-4, honey again 5-6.", "bars.1.honey=yes bars.2.honey=yes bars.3.brood=yes bars.4.brood=yes bars.5.honey=yes bars.6.honey=yes"},
		{"eggs 3,4 larvae 4,5 sealed 6,7", "bars.3.eggs=yes bars.4.eggs=yes bars.4.open_brood=yes bars.5.open_brood=yes bars.6.capped_brood=yes bars.7.capped_brood=yes"},
	},
	"bars before what they hold": {
		{"3-5 brood 6-7 honey 8 empty", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes bars.6.honey=yes bars.7.honey=yes bars.8.comb.size=bare"},
		{"three to five brood six and seven honey eight empty", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes bars.6.honey=yes bars.7.honey=yes bars.8.comb.size=bare"},
		{"Honey on bars 9 and 10. 11 empty.", "bars.9.honey=yes bars.10.honey=yes bars.11.comb.size=bare"},
		{"3-4 brood; 5-6 stores; rest bare.", "bars.3.brood=yes bars.4.brood=yes bars.5.honey=yes bars.6.honey=yes"},
	},
	"numbers that count": {
		{"Honey 3 bars, brood 5 bars, 2 empty.", "contents.honey=yes contents.honey.bars=3 contents.brood=yes contents.brood.bars=5"},
		{"Brood 5, stores 3.", "contents.brood=yes contents.honey=yes"},
		{"Honey on bars 9, 10 and 11 capped.", "bars.9.capped_honey=yes bars.10.capped_honey=yes bars.11.capped_honey=yes"},
		{"Put one new bar between 5 and 6.", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=5"},
		{"Added two bars, one of honey and one of brood.", "actions.add_bar=yes actions.add_bar.count=2"},
	},
	"comb drawn to no share that is told": {
		{"Bar 9 stores, 10 part drawn.", "bars.9.honey=yes"},
		{"Bar 10 is being drawn out.", ""},
		{"Bar 6: brood on one side, the rest empty.", "bars.6.brood=yes bars.6.brood.side=one"},
	},
	"findings behind a deed": {
		{"Fed 2 l, brood on bars 3 to 4.", "bars.3.brood=yes bars.4.brood=yes actions.feed=yes actions.feed.amount=2 actions.feed.unit=l"},
		{"fed 2 litres brood on bars 3 to 4", "bars.3.brood=yes bars.4.brood=yes actions.feed=yes actions.feed.amount=2 actions.feed.unit=l"},
		{"Added a bar, there is honey on 8 and 9.", "bars.8.honey=yes bars.9.honey=yes actions.add_bar=yes actions.add_bar.count=1"},
		{"Fed 2 l, no eggs.", "contents.eggs=no actions.feed=yes actions.feed.amount=2 actions.feed.unit=l"},
		{"Fed 2 l, eggs on bar 4.", "bars.4.eggs=yes actions.feed=yes actions.feed.amount=2 actions.feed.unit=l"},
	},
}

func TestLayouts(t *testing.T) { readSayings(t, layouts) }
