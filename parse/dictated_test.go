package parse

import "testing"

// TestDictated reads what is told to a machine while the hands are busy: with
// corrections to somebody who stands by, and in the English of many places.
func TestDictated(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// taken back
		{"the pear tree hive nineteen no tell a lie twenty degrees", "hive=pear tree weather.temp_c=20"},
		{"queen on bar three no sir four", "queen.seen=yes queen.bar=4?"},
		{"willow pollen coming in green no more of a yellow", "incoming.pollen=yes incoming.pollen.plant=willow incoming.pollen.colour=yellow?"},
		// full, strong, unstung
		{"bar six sealed honey full up", "bars.6.capped_honey=yes bars.6.capped_honey.cover=1"},
		{"bar six sealed brood full both sides", "bars.6.capped_brood=yes bars.6.capped_brood.cover=1 bars.6.capped_brood.pattern=solid bars.6.capped_brood.side=both"},
		{"they are strong as a horse", "strength.word=strong"},
		{"none of us got stung", "temper.stings=0"},
		{"six bars have got bees on them", "strength.bars_of_bees=6"},
		{"stores grand", "stores.word=fair"},
		// the entrance
		{"the entrance was open so i made it narrower", "entrance=open actions.reduce_entrance=yes"},
		{"on saturday i will make the entrance narrower", "plans.reduce_entrance=yes plans.reduce_entrance.due=2026-05-16"},
		// the same again
		{"bar three pollen forty percent same as three for bar two", "bars.3.pollen=yes bars.3.pollen.cover=0.4 bars.2.pollen=yes? bars.2.pollen.cover=0.4"},
		{"bar three pollen\nsame again for bars four and five", "bars.3.pollen=yes bars.4.pollen=yes? bars.5.pollen=yes?"},
		{"the divided hive\ni split them bars two and three went over to the plum hive", "actions.split=yes actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.bars=2,3 actions.move_bar.to_hive=plum"},
		// said behind what it is said of
		{"bar two nectar is there bar three pollen also is there queen i saw", "bars.2.nectar=yes bars.3.pollen=yes queen.seen=yes queen.bar=3"},
		{"queen seen on bar two she is not having a mark", "queen.seen=yes queen.bar=2 queen.marked=no"},
		{"bar two larvae and who's standing on it but the queen", "bars.2.open_brood=yes queen.seen=yes queen.bar=2"},
		{"water the bees are bringing from the pond", "incoming.water=yes"},
		{"bar two chalkbrood my lad reckons seven of them", "signs.chalkbrood=yes signs.chalkbrood.count=7 signs.chalkbrood.bar=2"},
		{"there was about a quarter left in the feeder", "feeder=part"},
		{"bar six er is that nectar yes he says it is nectar", "bars.6.nectar=yes"},
		// the count goes down from the last bar
		{"hive two nine bars in use\nbar nine bare\nnext one just started", "hive=2 bars_total=9 bars.9.comb.size=bare bars.8.comb.size=started"},
		{"bar five eggs\nfour queen red dot larvae dead center", "bars.5.eggs=yes queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=red bars.4.open_brood=yes bars.4.open_brood.place=middle"},
		{"there's a virgin queen bar six and no eggs yet", "queen.seen=yes queen.bar=6 queen.virgin=yes contents.eggs=no"},
		{"hello folks willow hive it's warm", "hive=willow"},
		// a hive to begin with, and one lost to wasps
		{"plum hive to begin with bar two eggs", "hive=plum bars.2.eggs=yes"},
		{"cloudy and windy plum hive now bar two eggs", "hive=plum weather.sky=cloudy weather.wind=windy bars.2.eggs=yes"},
		{"hive a\ncalm today", "hive=a temper.score=4"},
		// amounts and counts
		{"gave them two more pints of syrup", "actions.feed=yes actions.feed.amount=2 actions.feed.unit=pt actions.feed.what=syrup"},
		{"bar five eggs\nthree wee empty cups on five", "bars.5.eggs=yes bars.5.queen_cells.cup=yes bars.5.queen_cells.cup.count=3"},
		{"four bars of sealed brood eggs present", "contents.capped_brood=yes contents.capped_brood.bars=4 contents.eggs=yes"},
		{"nine bars in use\nseven to nine half capped honey", "bars_total=9 bars.7.capped_honey=yes bars.7.capped_honey.cover=0.5 bars.8.capped_honey=yes bars.8.capped_honey.cover=0.5 bars.9.capped_honey=yes bars.9.capped_honey.cover=0.5"},
		// where one thing ends and the next begins
		{"bar two nectar both sides now if you ever find cells there you worry", "bars.2.nectar=yes bars.2.nectar.side=both"},
		{"two sealed cells left alone inspect again on saturday", "queen_cells.capped=yes queen_cells.capped.count=2 plans.inspect=yes plans.inspect.due=2026-05-16"},
		{"last time our queen was on bar two well today she's on three", "earlier.queen_seen=yes earlier.queen_seen.bar=2 queen.seen=yes queen.bar=3"},
		{"on saturday i'll close the entrance and tomorrow feed them a kilo of fondant", "plans.close_entrance=yes plans.close_entrance.due=2026-05-16 plans.feed=yes plans.feed.due=2026-05-15 plans.feed.amount=1 plans.feed.unit=kg plans.feed.what=fondant"},
		{"bar five eggs\nfour no sorry three is bare\nfour is started", "bars.5.eggs=yes bars.3.comb.size=bare bars.4.comb.size=started"},
		{"bar nine is bear they are calm", "bars.9.comb.size=bare? temper.score=4"},
		{"bar nine bear with me", ""},
		// pointed at
		{"bar three larvae\nthere's the queen on this bar", "bars.3.open_brood=yes queen.seen=yes queen.bar=3"},
		// deeds
		{"in goes an empty bar between three and four", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=3"},
		{"so opened the floor no correction closed the floor", "actions.close_floor=yes?"},
		{"i've given them a few puffs", "actions.smoke=yes"},
		{"droppings on the floor so i swept that clean", "actions.clean_floor=yes"},
		{"caged queen put in today", "actions.requeen=yes"},
		{"bar six is joined on to seven", "bars.6.comb.attached=bar"},
		{"queen on bar two red dot but it's gone a bit dull", "queen.seen=yes queen.bar=2 queen.marked=yes queen.colour=red queen.worn=yes"},
		{"combs all over here. comb three no comb four is sealed brood", "bars.4.capped_brood=yes"},
		{"two sealed on bar three no sorry three sealed on three", ""},
		{"bar eight two thirds drawn\nfestooning off it", "bars.8.comb.drawn=0.667 bars.8.festooning=yes"},
		{"bar four eggs\nthree heavy with honey", "bars.4.eggs=yes bars.3.honey=yes bars.3.honey.amount=much"},
		{"ten seams strong", "strength.bars_of_bees=10 strength.word=strong"},
		{"the queen we didn't find stores are low", "queen.seen=no stores.word=light"},
		{"brought the follower forward to nine", "actions.move_follower=yes actions.move_follower.to=9 actions.move_follower.direction=forward"},
		{"queen not looked for and feed these on saturday", "plans.feed=yes plans.feed.due=2026-05-16"},
		{"droppings on the floor so i brushed that clean the mesh was open and i have closed it", "floor=open actions.close_floor=yes actions.clean_floor=yes"},
		{"gave them a puff bar one is honey", "actions.smoke=yes bars.1.honey=yes"},
		{"my neighbour lost two colonies last week so we'll close this entrance tomorrow", "plans.close_entrance=yes plans.close_entrance.due=2026-05-15"},
		{"did not open the plum hive too cold", "hive=plum"},
		{"reduced the entrance feeder full", "actions.reduce_entrance=yes feeder=full"},
		{"caged queen put in today red dot feeder empty release her on saturday", "actions.requeen=yes queen.marked=yes queen.colour=red feeder=empty plans.release_queen=yes plans.release_queen.due=2026-05-16"},
		{"they're bringing in white pollen off the apple last time the queen was on bar two", "incoming.pollen=yes incoming.pollen.plant=apple incoming.pollen.colour=white earlier.queen_seen=yes earlier.queen_seen.bar=2"},
		{"at the weekend i'll open the entrance and tomorrow treat them", "plans.open_entrance=yes plans.open_entrance.due=2026-05-16 plans.treat=yes plans.treat.due=2026-05-15"},
	} {
		readsAs(t, "dictated", c.said, c.want)
	}
}
