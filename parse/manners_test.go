package parse

import "testing"

// TestShortForms reads words cut short with a full stop, which ends no sentence.
func TestShortForms(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"b2 cap. honey. b5 cap. brood, spotty. b6 larv. and eggs. b7 pol.", "bars.2.capped_honey=yes bars.5.capped_brood=yes bars.5.capped_brood.pattern=patchy bars.6.open_brood=yes bars.6.eggs=yes bars.7.pollen=yes"},
		{"11 bars in use, foll. behind b11. 16C, o/cast", "bars_total=11 follower.bar=11 weather.temp_c=16 weather.sky=overcast"},
		{"Foll. moved fwd. 2 bars. Reduced ent. No mice.", "actions.move_follower=yes actions.move_follower.count=2 actions.move_follower.direction=forward actions.reduce_entrance=yes signs.mice=no"},
		{"Insp. again Sat.", "plans.inspect=yes plans.inspect.due=2026-05-16"},
		{"Next insp. Sat.", "plans.inspect=yes plans.inspect.due=2026-05-16"},
		{"Fdr empty. Q seen w/o a mark.", "feeder=empty queen.seen=yes queen.marked=no"},
		{"packed w bees n added 1 bar", "strength.word=strong actions.add_bar=yes actions.add_bar.count=1"},
		{"b8-10 1/2 drawn", "bars.8.comb.drawn=0.5 bars.9.comb.drawn=0.5 bars.10.comb.drawn=0.5"},
		{"fed 1 1/2 l of syrup", "actions.feed=yes actions.feed.amount=1.5 actions.feed.unit=l actions.feed.what=syrup"},
	} {
		readsAs(t, "short form", c.said, c.want)
	}
}

// TestTakenBack reads corrections in words of their own, and counts that are put
// right behind what they count.
func TestTakenBack(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"bar two was nectar no I'm telling a fib it was honey", "bars.2.honey=yes?"},
		{"on bar four nine mummies of chalkbrood no excuse me seven", "signs.chalkbrood=yes? signs.chalkbrood.bar=4 signs.chalkbrood.count=7"},
		{"hive beetles I counted eight of the wretches no nine", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=9?"},
		{"I found three mites no four", "mites.method=seen mites.count=4?"},
		{"three wasps no robbing", "signs.wasps=yes signs.wasps.count=3 signs.robbing=no"},
		{"I won't I'm going to close the floor on Friday", "plans.close_floor=yes plans.close_floor.due=2026-05-15"},
	} {
		readsAs(t, "taken back", c.said, c.want)
	}
}

// TestLookedInVain reads what was looked for and not found, told behind its name.
func TestLookedInVain(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"ants I have not seen any", "signs.ants=no"},
		{"larvae we could not find", "contents.open_brood=no"},
		{"drones I did not see", "drones=no"},
		{"on bar two pollen, eggs I did not see", "bars.2.pollen=yes bars.2.eggs=no"},
		{"bar two pollen I did not see the queen", "bars.2.pollen=yes queen.seen=no"},
		{"ants, no sign of mice", "signs.ants=yes signs.mice=no"},
		{"two beetles and no trace of wax moth", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=2 signs.wax_moth=no"},
		{"bar ten not a thing on it", "bars.10.comb.size=bare"},
		{"sunny, no cloud at all", "weather.sky=sunny"},
		{"overcast, but the rain has held off", "weather.sky=overcast"},
		{"I wondered about taking a bar of honey but left it", ""},
		{"I had hoped to do a sugar roll", ""},
		{"I'm not taking any honey", ""},
	} {
		readsAs(t, "in vain", c.said, c.want)
	}
}

// TestOtherPeoplesHives leaves alone what is told of them, and reads what is said of
// this one beside it.
func TestOtherPeoplesHives(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"the neighbour down the lane has foulbrood, they say", ""},
		{"Rita rang to say hers had swarmed", ""},
		{"a beginner's colony swarmed on Monday", ""},
		{"grandad reckons he saw a queen cell in his", ""},
		{"the hive next door was not opened, though ants were all over it", ""},
		{"my cousin lost three colonies to foulbrood", ""},
		{"my mates lot have sacbrood, none in mine", "signs.sacbrood=no"},
		{"my aunt has mice but there are none here", "signs.mice=no"},
		{"Joan has seen drones in hers; no drones here", "drones=no"},
	} {
		readsAs(t, "somebody else's", c.said, c.want)
	}
}

// TestWhichBars reads bars left out of several, taken in with them, and named again.
func TestWhichBars(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Bars 2 to 4 have honey except bar 3, which is bare.", "bars.2.honey=yes bars.3.comb.size=bare bars.4.honey=yes"},
		{"bars two to four are pollen apart from three, that's nectar", "bars.2.pollen=yes bars.3.nectar=yes bars.4.pollen=yes"},
		{"Bar 9 is full of nectar, and so are bars 7 and 8.", "bars.9.nectar=yes bars.9.nectar.cover=1 bars.7.nectar=yes? bars.7.nectar.cover=1 bars.8.nectar=yes? bars.8.nectar.cover=1"},
		{"bar two has eggs and so do I hope", "bars.2.eggs=yes"},
		{"The follower is behind bar 10, and bar 10 is bare.", "follower.bar=10 bars.10.comb.size=bare"},
		{"eggs on bar two and bar three has pollen", "bars.2.eggs=yes bars.3.pollen=yes"},
		{"the queen cells on bar two and bar three are capped", "bars.2.queen_cells.capped=yes bars.3.queen_cells.capped=yes"},
		{"on Friday I will remove bars nine and ten those are empty comb", "plans.remove_bar=yes plans.remove_bar.bars=9,10 plans.remove_bar.count=2 plans.remove_bar.due=2026-05-15 bars.9.empty=yes bars.10.empty=yes"},
		{"two bees with deformed wings, chalkbrood on bars 3 and 4", "signs.deformed_wings=yes signs.deformed_wings.count=2 signs.chalkbrood=yes signs.chalkbrood.bars=3,4"},
		{"a queen cup on bar six but it is empty", "bars.6.queen_cells.cup=yes bars.6.queen_cells.cup.count=1"},
		{"seven seams of bees, medium", "strength.bars_of_bees=7 strength.word=moderate"},
		{"the elm hive, this was the big one I had put off", "hive=elm"},
	} {
		readsAs(t, "bars", c.said, c.want)
	}
}
