package parse

import "testing"

// TestGifts reads bars that went from one hive of the note to another, of which both have
// something to tell.
func TestGifts(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Hive 1 is calm. Moved bar six to hive 2. Hive 2 is calm.",
			"hive=1 temper.score=4 actions.move_bar=yes actions.move_bar.bar=6 actions.move_bar.to_hive=2 / hive=2 temper.score=4 actions.add_bar=yes? actions.add_bar.count=1? actions.add_bar.from_hive=1?"},
		{"Hive 1 is calm. Three bars went from hive 1 to hive 2. Hive 2 is calm.",
			"hive=1 temper.score=4 actions.move_bar=yes actions.move_bar.count=3 actions.move_bar.to_hive=2 / hive=2 temper.score=4 actions.add_bar=yes? actions.add_bar.count=3? actions.add_bar.from_hive=1?"},
		{"Hive 1 is calm. Bars 4 and 5 have gone into hive 2.", "hive=1 temper.score=4 actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.bars=4,5 actions.move_bar.to_hive=2"},
		{"Hive 1 is calm. Moved bar six to hive 2. Hive 2: added one bar from hive 1 after bar 3.",
			"hive=1 temper.score=4 actions.move_bar=yes actions.move_bar.bar=6 actions.move_bar.to_hive=2 / hive=2 actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=3 actions.add_bar.from_hive=1"},
		{"Hive 1 is calm. I went to hive 2. Hive 2 is calm.", "hive=1 temper.score=4 / hive=2 temper.score=4"},
		{"Hive 1 is calm. The nest went to bar six, and I went to hive 2.", "bars.6.brood=yes hive=1 temper.score=4 / hive=2"},
	} {
		readsAs(t, "gifts", c.said, c.want)
	}
}
