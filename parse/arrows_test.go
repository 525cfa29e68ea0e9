package parse

import "testing"

// TestArrows: an arrow leads a bar to its new place, parts a thing from what is told of
// it, or marks a line of a list. Beside it are other signs and spellings of typists.
func TestArrows(t *testing.T) {
	for _, c := range []struct{ name, said, want string }{
		{"bars that went to a hive", "H1. Moved b4 -> H2", "hive=1 actions.move_bar=yes actions.move_bar.bar=4 actions.move_bar.to_hive=2"},
		{"a bar that went to another's place", "H1. Moved b4 -> b9", "hive=1 actions.move_bar=yes actions.move_bar.bar=4 actions.move_bar.to=9"},
		{"labels of bars", "b9→empty comb; b10 => bare", "bars.9.empty=yes bars.10.comb.size=bare"},
		{"bare labels of bars", "1 -> honey; 2 --> capped brood", "bars.1.honey=yes bars.2.capped_brood=yes"},
		{"what led to a deed", "Light on stores -> Hilltop hive fed 1 l", "hive=hilltop stores.word=light actions.feed=yes actions.feed.amount=1 actions.feed.unit=l"},
		{"a list mark", "H1\n-> added 2 bars after b9", "hive=1 actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=9"},
		{"a hive's heading", "hive: Foxglove -> b5 -> eggs", "hive=foxglove bars.5.eggs=yes"},
		{"a slash behind a bar", "queen seen b6/ yellow dot", "queen.seen=yes queen.bar=6 queen.marked=yes queen.colour=yellow"},
		{"a plan in a typist's spelling", "gna split it on Monday. b3 full o pollen", "plans.split=yes plans.split.due=2026-05-18 bars.3.pollen=yes bars.3.pollen.cover=1"},
	} {
		readsAs(t, c.name, c.said, c.want)
	}
}

// TestCellsAdded: cells of another stage are added in a sentence of their own.
func TestCellsAdded(t *testing.T) {
	for _, c := range []struct{ name, said, want string }{
		{"where the others were", "b8: 3 sealed QCs, swm. Also 1 chgd.", "bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=3 bars.8.queen_cells.capped.kind=swarm bars.8.queen_cells.charged=yes bars.8.queen_cells.charged.count=1"},
		{"on another bar", "Two capped queen cells on bar 9. And one charged on bar 4.", "bars.9.queen_cells.capped=yes bars.9.queen_cells.capped.count=2 bars.4.queen_cells.charged=yes bars.4.queen_cells.charged.count=1"},
		{"no cells", "Two capped queen cells on bar 9. Also 3 empty bars.", "bars.9.queen_cells.capped=yes bars.9.queen_cells.capped.count=2"},
		{"a number behind a named hive", "Barn hive - 2 swarm cells on bar 4", "hive=barn bars.4.queen_cells.any=yes bars.4.queen_cells.any.count=2 bars.4.queen_cells.any.kind=swarm"},
	} {
		readsAs(t, c.name, c.said, c.want)
	}
}
