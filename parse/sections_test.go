package parse

import "testing"

// TestSections reads what stands below headings on lines of their own, and boxes to tick.
func TestSections(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"BARN HIVE\n\nQueen\nSpotted on bar 5. Marked green.", "hive=barn queen.seen=yes queen.bar=5 queen.marked=yes queen.colour=green"},
		{"Barn hive\n\nQueen\nNot found.\n\nBrood\nEggs on 4 and 5. Sealed on 6 and 7, compact. Open on 3.", "hive=barn queen.seen=no bars.3.open_brood=yes bars.4.eggs=yes bars.5.eggs=yes bars.6.capped_brood=yes bars.6.capped_brood.pattern=solid bars.7.capped_brood=yes bars.7.capped_brood.pattern=solid"},
		{"Barn hive\n\nBrood\nEggs on bar 4.\nSealed on 6, spotty.", "hive=barn bars.4.eggs=yes bars.6.capped_brood=yes bars.6.capped_brood.pattern=patchy"},
		{"Barn hive\n\nQueen cells\nThree sealed on bar 4. One open on bar 7.", "hive=barn bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=3 bars.7.queen_cells.charged=yes bars.7.queen_cells.charged.count=1"},
		{"Barn hive\n\nFollower board\nBehind 9.", "hive=barn follower.bar=9"},
		{"Barn hive\n\nStores\nBar 2 half full of honey. Plenty overall.", "hive=barn bars.2.honey=yes bars.2.honey.cover=0.5 stores.word=heavy"},
		{"Barn hive\n\nTemper\nTesty. Three stings.", "hive=barn temper.score=2 temper.stings=3"},
		{"Barn hive\n\nBrood\n- b3 sealed brood, spotty\n- b4 ditto", "hive=barn bars.3.capped_brood=yes bars.3.capped_brood.pattern=patchy bars.4.capped_brood=yes? bars.4.capped_brood.pattern=patchy"},
		{"Barn hive\n\nBees\nFive bars of bees.\n\nBrood\nSealed brood on 7. Grubs on 8, one side.", "hive=barn strength.bars_of_bees=5 bars.7.capped_brood=yes bars.8.open_brood=yes bars.8.open_brood.side=one"},
		// what was done, and what is to be
		{"Barn hive\n\nDone\nOne bar added behind bar 8. Entrance reduced. Fondant given, 1 kg.", "hive=barn actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=8 actions.reduce_entrance=yes actions.feed=yes actions.feed.amount=1 actions.feed.unit=kg actions.feed.what=fondant"},
		{"Barn hive\n\nDone\nTwo cells on bar 5 cut out. Bar 11 removed.", "hive=barn actions.cut_cells=yes actions.cut_cells.count=2 actions.cut_cells.bar=5 actions.remove_bar=yes actions.remove_bar.bar=11"},
		{"Barn hive\n\nEntrance\nReduced.", "hive=barn entrance=reduced"},
		{"Barn hive\n\nTo do\nThymol on 2 June. Add a bar.", "hive=barn plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-06-02 plans.add_bar=yes plans.add_bar.count=1"},
		{"Done: entrance opened, queen seen.", "actions.open_entrance=yes queen.seen=yes"},
		// boxes
		{"Jobs\n[x] fed 2 litres syrup\n[ ] thymol 30 May\n[ ] clip queen", "actions.feed=yes actions.feed.amount=2 actions.feed.unit=l actions.feed.what=syrup plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-30 plans.clip_queen=yes"},
		{"Hive 3\n- [ ] inspect on Sunday\n- [x] floor closed", "hive=3 plans.inspect=yes plans.inspect.due=2026-05-17 actions.close_floor=yes"},
		// no headings
		{"Queen seen. Brood on bar 4.", "bars.4.brood=yes queen.seen=yes"},
	} {
		readsAs(t, "section", c.said, c.want)
	}
}
