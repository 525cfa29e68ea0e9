package parse

import "testing"

// reworded are sentences whose words are other ones for the same thing.
var reworded = map[string][]saying{
	"numbers in digits as recognisers write them": {
		{"Bar 5 2 thirds drawn, bar 6 3 quarters capped brood.", "bars.5.comb.drawn=0.667 bars.6.capped_brood=yes bars.6.capped_brood.cover=0.75"},
		{"bars 8 and 9 3 quarters full of honey", "bars.8.honey=yes bars.8.honey.cover=0.75 bars.9.honey=yes bars.9.honey.cover=0.75"},
		{"bar 3 5 eighths honey", "bars.3.honey=yes bars.3.honey.cover=0.625"},
		{"Bar 8 is 3-quarters drawn.", "bars.8.comb.drawn=0.75"},
		{"weight 22 point 5 kilos", "weight_kg=22.5"},
		{"hive 4 19 and a half kilos on the scale", "hive=4 weight_kg=19.5"},
		{"2 dozen mites on the board after 3 days", "mites.method=drop mites.count=24 mites.days=3"},
		{"sugar roll 3 hundred bees 6 mites", "mites.method=sugar mites.count=6 mites.bees=300"},
		{"3 swarm cells on bar 7 and i cut out all 3", "bars.7.queen_cells.any=yes bars.7.queen_cells.any.count=3 bars.7.queen_cells.any.kind=swarm actions.cut_cells=yes actions.cut_cells.count=3 actions.cut_cells.bar=7"},
		{"bars 3 4 and 5 eggs in all 3", "bars.3.eggs=yes bars.4.eggs=yes bars.5.eggs=yes"},
		{"honey on bar 2 pollen on 3 bars 9 and 10 are bare", "bars.2.honey=yes bars.3.pollen=yes bars.9.comb.size=bare bars.10.comb.size=bare"},
	},
}

func TestReworded(t *testing.T) { readSayings(t, reworded) }
