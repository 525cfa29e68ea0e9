package parse

import "testing"

// TestFormLines reads labels with their values, a line each.
func TestFormLines(t *testing.T) {
	readSayings(t, map[string][]saying{
		"numbers": {
			{"Bars added: 2\nStings: 1\nSeams: 8", "actions.add_bar=yes actions.add_bar.count=2 temper.stings=1 strength.bars_of_bees=8"},
			{"Temper: 3\nBars removed: 1 (b3)\nFed: nil", "temper.score=3 actions.remove_bar=yes actions.remove_bar.count=1"},
			{"Wind: none\nFollower: 12\nWeight: 31", "weather.wind=calm follower.bar=12 weight_kg=31"},
			{"Harvested: 0\nAdded: 0\nTemper 4", "temper.score=4"},
		},
		"answers": {
			{"Larvae: y\nCapped: y\nQC: 0", "contents.open_brood=yes contents.capped_brood=yes queen_cells.any=no"},
			{"Eggs: y\nLarvae: n\nHive stand: oak\nSealed: n", "contents.eggs=yes contents.open_brood=no contents.capped_brood=no"},
			{"Treated: yes, thymol\nEggs: no", "actions.treat=yes actions.treat.what=thymol contents.eggs=no"},
		},
		"bars": {
			{"Eggs 4-6\nSealed 3, 7\nPollen 2\nQueen 5", "bars.2.pollen=yes bars.3.capped_brood=yes bars.4.eggs=yes bars.5.eggs=yes bars.6.eggs=yes bars.7.capped_brood=yes queen.seen=yes queen.bar=5"},
			{"larvae: 4-6\nhoney: 1, 2, 9\ndrone: 8", "bars.1.honey=yes bars.2.honey=yes bars.4.open_brood=yes bars.5.open_brood=yes bars.6.open_brood=yes bars.8.drone_brood=yes bars.9.honey=yes"},
		},
		"one line is none": {
			{"Honey 5", "contents.honey=yes"},
		},
	})
}
