package parse

import (
	"strings"
	"testing"
)

// The repair types are those of google-research-datasets/Disfl-QA (CC BY 4.0):
// a speaker says one thing, a cue, and another; the words are ours.
func TestRepairs(t *testing.T) {
	for _, c := range []struct{ kind, said, want string }{
		{"X no wait Y", "bar five no wait bar six eggs", "bars.6.eggs=yes"},
		{"A or rather B", "bar four eggs or rather larvae", "bars.4.open_brood=yes"},
		{"A sorry B", "bar five sorry bar six eggs", "bars.6.eggs=yes"},
		{"A sorry B, finding", "bar four nectar sorry pollen", "bars.4.pollen=yes"},
		{"A uh no B", "bar five uh no bar six eggs", "bars.6.eggs=yes"},
		{"A make that B", "two make that three sealed queen cells on bar six", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=3"},
		{"no no", "bar five no no bar six eggs", "bars.6.eggs=yes"},
		{"oops", "bar five oops bar six eggs", "bars.6.eggs=yes"},
		{"I meant", "bar five eggs I meant larvae", "bars.5.open_brood=yes"},
		{"no I mean", "bar five no I mean bar six eggs", "bars.6.eggs=yes"},
		{"I mean", "bar four open brood I mean sealed", "bars.4.capped_brood=yes"},
		{"actually", "bar five actually bar six eggs", "bars.6.eggs=yes"},
		{"er", "bar five er six eggs", "bars.6.eggs=yes"},
		{"scratch that", "bar four eggs scratch that bar four nectar", "bars.4.nectar=yes"},
		{"scratch that, at the end", "bar three eggs. bar four nectar scratch that", "bars.3.eggs=yes"},
		{"no sorry", "bar five no sorry bar six eggs", "bars.6.eggs=yes"},
		{"no, plain", "bar five no bar six eggs", "bars.6.eggs=yes"},
		{"fresh start", "bar no what the queen is on bar six", "queen.seen=yes queen.bar=6"},
		{"hive", "hive three no hive four bar two eggs", "hive=4 bars.2.eggs=yes"},
		{"number", "fed them two no three litres of syrup", "actions.feed=yes actions.feed.amount=3 actions.feed.unit=l actions.feed.what=syrup"},
		{"colour", "queen seen marked white no blue", "queen.seen=yes queen.marked=yes queen.colour=blue"},
		{"colour of a dot", "queen on bar 4, red dot. No, green.", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=green"},
		{"side", "bar four eggs on the front I mean the back", "bars.4.eggs=yes bars.4.eggs.side=back"},
		{"only a cup", "bar seven one charged queen cell no sorry that's just a cup", "bars.7.queen_cells.cup=yes bars.7.queen_cells.cup.count=1"},
		{"only cups", "bar three three queen cells no wait only cups", "bars.3.queen_cells.cup=yes bars.3.queen_cells.cup.count=3"},
		{"cells said anew", "bar six two sealed queen cells no i tell a lie there's one sealed queen cell", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1"},
		{"cells said anew, of another stage", "one open queen cell on bar six wait it's one sealed queen cell", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1"},
		{"a sign counted anew", "a wax moth on bar two no actually three wax moths on bar two", "signs.wax_moth=yes signs.wax_moth.count=3 signs.wax_moth.bar=2"},
		{"not that but this", "gave them two litres of syrup no not two litres one litre", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"a belief", "Bar two I thought was nectar but no, it's pollen.", "bars.2.pollen=yes"},
		{"a belief about the same", "Bar two pollen. Bar three I took for the same but it isn't, it's nectar.", "bars.2.pollen=yes bars.3.nectar=yes"},
		{"no, nearer", "bar nine half full of honey no nearer three quarters", "bars.9.honey=yes bars.9.honey.cover=0.75"},
		{"no, call it", "bar nine a quarter drawn no let's call it half", "bars.9.comb.drawn=0.5"},
		{"no, say", "mite board thirty mites no say thirty three in four days", "mites.method=drop mites.count=33 mites.days=4"},
		{"hundredths", "bar five capped brood forty percent no i'd say fifty", "bars.5.capped_brood=yes bars.5.capped_brood.cover=0.5"},
		{"a deed", "i've closed er no reduced the entrance", "actions.reduce_entrance=yes"},
		{"repeated words", "bar bar four four eggs eggs", "bars.4.eggs=yes"},
	} {
		if got := leavesOf(c.said); strings.ReplaceAll(got, "?", "") != c.want {
			t.Errorf("%s: %q\n got %s\nwant %s", c.kind, c.said, got, c.want)
		}
	}
}

// TestRepairsAreFlagged holds that a finding which was corrected aloud is shown
// to the keeper.
func TestRepairsAreFlagged(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"bar four eggs or rather larvae", "bars.4.open_brood=yes?"},
		{"bar five eggs I meant larvae", "bars.5.open_brood=yes?"},
		{"bar four open brood I mean sealed", "bars.4.capped_brood=yes?"},
		{"i closed the floor no i didn't close it i opened it", "actions.open_floor=yes?"},
		{"we opened the entrance no sorry we reduced it", "actions.reduce_entrance=yes?"},
		{"i closed the entrance no wasps about", "signs.wasps=no actions.close_entrance=yes"},
		{"queen seen marked white no blue", "queen.seen=yes queen.marked=yes queen.colour=blue?"},
	} {
		if got := leavesOf(c.said); got != c.want {
			t.Errorf("%q\n got %s\nwant %s", c.said, got, c.want)
		}
	}
}

// TestNoRepairs holds that the cues of a repair leave fluent speech alone. The
// types are those of the fluent questions of Disfl-QA that hold a cue's words,
// and the denials of the contract.
func TestNoRepairs(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"bar five no eggs", "bars.5.eggs=no"},
		{"bar five no eggs bar six eggs", "bars.5.eggs=no bars.6.eggs=yes"},
		{"bar four eggs or larvae no nectar", "bars.4.eggs=yes bars.4.open_brood=yes bars.4.nectar=no"},
		{"bars four and five eggs", "bars.4.eggs=yes bars.5.eggs=yes"},
		{"bars five five and six eggs", "bars.5.eggs=yes bars.6.eggs=yes"},
		{"bar four sorry sight, patchy capped brood", "bars.4.capped_brood=yes bars.4.capped_brood.pattern=patchy"},
		{"bar four mean looking bees eggs", "bars.4.eggs=yes"},
		{"bar four is actually full of nectar", "bars.4.nectar=yes bars.4.nectar.cover=1"},
		{"no queen cells on bar six no drone brood", "bars.6.queen_cells.any=no bars.6.drone_brood=no"},
		{"bar five no eggs no call it a day", "bars.5.eggs=no"},
		{"wait a week then look at bar six", ""},
		{"made that split last week", "earlier.split=yes"},
	} {
		if got := leavesOf(c.said); got != c.want {
			t.Errorf("%q\n got %s\nwant %s", c.said, got, c.want)
		}
	}
}
