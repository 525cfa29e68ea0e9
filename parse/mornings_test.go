package parse

import "testing"

// mornings are turns of phrase of keepers who talk as they go and of those who write in the
// evening, each said otherwise than in the notes where it was first met.
var mornings = map[string][]saying{
	"what is done tomorrow is a plan": {
		{"put three bars in tomorrow", "plans.add_bar=yes plans.add_bar.count=3 plans.add_bar.due=2026-05-15"},
		{"split them next week", "plans.split=yes plans.split.due=2026-05-21"},
		{"we'd best feed them on Friday", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"Will treat them around the 26th.", "plans.treat=yes plans.treat.due=2026-05-26"},
		{"Calm. On Thursday after school I'll add a bar.", "temper.score=4 plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-21"},
		{"Calm. On Sunday, all being well, I'll add a bar.", "temper.score=4 plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-17"},
		{"Calm. In three weeks I must dig through this one properly.", "temper.score=4 plans.inspect=yes plans.inspect.due=2026-06-04"},
	},
	"how it was and how it is": {
		{"bar seven was all pollen last time and is full of honey now", "bars.7.honey=yes bars.7.honey.cover=1"},
		{"bar seven which used to be pollen is capped honey", "bars.7.capped_honey=yes"},
		{"they used to be sweet and are now nasty", "temper.score=1"},
		{"on monday the queen was on bar two but today i looked and did not see her", "queen.seen=no earlier.queen_seen=yes earlier.queen_seen.bar=2 earlier.queen_seen.on=2026-05-11"},
	},
	"what has not come": {
		{"it was about to rain so I was quick, eggs on bar two", "bars.2.eggs=yes"},
		{"eggs on bar two, done before the rain gets here", "bars.2.eggs=yes"},
		{"bars nine and ten are cross comb and they stay till the honey's off", "bars.9.comb.cross=yes bars.10.comb.cross=yes"},
		{"capped brood on five, fingers crossed for eggs next week", "bars.5.capped_brood=yes"},
		{"capped brood on bar five, hoping for eggs by then", "bars.5.capped_brood=yes"},
	},
	"denied one by one": {
		{"ants no wasps no mice no", "signs.ants=no signs.wasps=no signs.mice=no"},
		{"eggs on bar four ants no wasps no", "bars.4.eggs=yes signs.ants=no signs.wasps=no"},
		{"no ants no wasps", "signs.ants=no signs.wasps=no"},
		{"we have not a single egg and i have not one queen cell", "contents.eggs=no queen_cells.any=no"},
		{"Grandma says you look for swarm cells every week; well, there were no queen cells today.", "queen_cells.any=no"},
	},
	"told of the bar in hand, and of a sample": {
		{"bar six eggs and she's on this one", "bars.6.eggs=yes queen.bar=6 queen.seen=yes"},
		{"bar six is honey. she's not on it", "bars.6.honey=yes"},
		{"Marked her. Green, for the year.", "actions.mark_queen=yes queen.marked=yes queen.colour=green"},
		{"Fed 3 litres on Thursday, all gone. Gave them 2 more.", "actions.feed=yes earlier.fed=yes earlier.fed.amount=3 earlier.fed.unit=l earlier.fed.on=2026-05-07"},
		{"Mite wash on the garden hive: 4 in 300.", "hive=garden mites.method=wash mites.count=4 mites.bees=300"},
		{"Nothing nasty in there, and they are fine for another week.", ""},
	},
	"typed on a phone": {
		{"bees calm. nxt look in 9 days", "temper.score=4 plans.inspect=yes plans.inspect.due=2026-05-23"},
		{"today cant find her", "queen.seen=no"},
		{"shouldve split em", ""},
	},
	"put right at once": {
		{"bars two to five capped brood oh hang on not five five is eggs", "bars.2.capped_brood=yes? bars.3.capped_brood=yes? bars.4.capped_brood=yes? bars.5.eggs=yes"},
		{"honey on 8, 9 and 10, sorry, not 10", "bars.8.honey=yes? bars.9.honey=yes?"},
		{"capped brood bars two to five and three empty cups on bar seven", "bars.2.capped_brood=yes bars.3.capped_brood=yes bars.4.capped_brood=yes bars.5.capped_brood=yes bars.7.queen_cells.cup=yes bars.7.queen_cells.cup.count=3"},
		{"last time there were eggs on bar six and that's capped brood now", "bars.6.capped_brood=yes earlier.eggs_seen=yes earlier.eggs_seen.bar=6"},
		{"i put bar nine in a week ago and that's half drawn already", "bars.9.placed=2026-05-07 bars.9.comb.drawn=0.5"},
	},
	"taken back, and asked": {
		{"saw the queen no i didn't that was a drone", "drones=yes"},
		{"fed them no we didn't so feed them on friday", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"capped honey on bar six the rest nectar piet can you see her no so queen not seen", "bars.6.capped_honey=yes bars.6.nectar=yes queen.seen=no"},
		{"my neighbour's hive is calm i need to requeen this one before the winter", "plans.requeen=yes"},
		{"i fed them a kilo of fondant my old father never fed a drop", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=kg actions.feed.what=fondant"},
		{"stores i'd call fair and temper i'd call fine", "stores.word=fair temper.score=3"},
	},
	"how full and how heavy": {
		{"bar six half a comb nectar in it", "bars.6.comb.drawn=0.5 bars.6.nectar=yes"},
		{"bar six half a comb of nectar", "bars.6.nectar=yes bars.6.nectar.cover=0.5"},
		{"hefted it and it's light", "stores.word=light"},
		{"Hive 4 hefted, heavy.", "hive=4 stores.word=heavy"},
		{"bars all covered in bees", ""},
		{"must mark her next time bar two honey", "plans.mark_queen=yes bars.2.honey=yes"},
		{"sugar roll hive four nine off three hundred", "hive=4 mites.method=sugar mites.count=9 mites.bees=300"},
	},
	"what was given and taken": {
		{"they've finished the syrup so gave them another two litres", "actions.feed=yes actions.feed.amount=2 actions.feed.unit=l actions.feed.what=syrup"},
		{"gave them half a kilo", "actions.feed=yes actions.feed.amount=0.5 actions.feed.unit=kg"},
		{"gave them ten minutes to settle", ""},
		{"feeder half empty topped it up with a litre", "feeder=part actions.feed=yes actions.feed.amount=1 actions.feed.unit=l"},
		{"wasps about so i closed the entrance to a finger's width", "signs.wasps=yes actions.reduce_entrance=yes"},
		{"bars six and seven went to the empty hive", ""},
		{"the drop over four days was thirty", "mites.method=drop mites.count=30 mites.days=4"},
	},
	"the board, and which": {
		{"moved the board back two bars", "actions.move_follower=yes actions.move_follower.count=2 actions.move_follower.direction=back"},
		{"the board is behind bar eleven", "follower.bar=11"},
		{"i need to move the board back next week", "plans.move_follower=yes plans.move_follower.direction=back plans.move_follower.due=2026-05-21"},
		{"moved the board back under the hive", ""},
		{"the board gave fourteen in three days", "mites.method=drop mites.count=14 mites.days=3"},
		{"i made the entrance two bees wide", "actions.reduce_entrance=yes"},
	},
	"numbers in running talk": {
		{"bar eight nothing bar seven nectar", "bars.8.comb.size=bare bars.7.nectar=yes"},
		{"Bar 8: nothing. Bar 7: nothing but honey.", "bars.8.comb.size=bare bars.7.honey=yes bars.7.honey.cover=1"},
		{"bar five all brood six all brood seven i can see her eight eggs", "bars.5.brood=yes bars.5.brood.cover=1 bars.6.brood=yes bars.6.brood.cover=1 bars.8.eggs=yes queen.seen=yes queen.bar=7"},
		{"bar five brood and on six i saw the queen", "bars.5.brood=yes queen.seen=yes queen.bar=6"},
	},
	"told shortly": {
		{"Hive 3 and 4 both calm", "hive=3 temper.score=4 / hive=4 temper.score=4"},
		{"hive 3 and two cells on bar four", "hive=3 bars.4.queen_cells.any=yes bars.4.queen_cells.any.count=2"},
		{"b6 two sup cells", "bars.6.queen_cells.any=yes bars.6.queen_cells.any.count=2 bars.6.queen_cells.any.kind=supersedure"},
		{"Drone comb on 8 cut out for varroa control.", "bars.8.drone_brood=yes"},
	},
	"who is meant": {
		{"so i am not grumbling", ""},
		{"the bees were awful grumpy", "temper.score=2"},
		{"bar six larvae these are a bit nervous", "bars.6.open_brood=yes temper.score=2"},
		{"that's mummy's veil", ""},
		{"one hard mummy on bar six", "signs.chalkbrood=yes signs.chalkbrood.count=1 signs.chalkbrood.bar=6"},
		{"bees quiet on the comb", "temper.score=4 temper.runny=no"},
		{"the last treatment i gave on the third of may", "earlier.treated=yes earlier.treated.on=2026-05-03"},
		{"eggs on eight so she was there before me", "bars.8.eggs=yes"},
		{"i'm fixing to look in the mesquite hive bar two honey", "hive=mesquite bars.2.honey=yes"},
	},
	"cells that are pointed at": {
		{"two cells on bar eight, knocked them down", "bars.8.queen_cells.any=yes bars.8.queen_cells.any.count=2 actions.cut_cells=yes actions.cut_cells.bar=8"},
		{"One capped cell on bar 8, so they are in earnest. I took it out.", "bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=1 actions.cut_cells=yes actions.cut_cells.bar=8"},
		{"Two cells on bar 8. Wax moth on bar 11, took it out.", "bars.8.queen_cells.any=yes bars.8.queen_cells.any.count=2 signs.wax_moth=yes signs.wax_moth.bar=11 actions.remove_bar=yes actions.remove_bar.bar=11"},
	},
	"deeds that are led up to": {
		{"the first thing I did was close the floor", "actions.close_floor=yes"},
		{"all we did was reduce the entrance", "actions.reduce_entrance=yes"},
		{"dribbled in 35 ml of oxalic acid", "actions.treat=yes actions.treat.amount=35 actions.treat.unit=ml actions.treat.what=oxalic acid"},
		{"trickled in half a litre of syrup", "actions.feed=yes actions.feed.amount=0.5 actions.feed.unit=l actions.feed.what=syrup"},
		{"my father cut out every cell he ever saw", ""},
	},
	"the people and their mood": {
		{"the bees were nervous, fair play to them", "temper.score=2"},
		{"it is packed with bees and the stores are light", "strength.word=strong stores.word=light"},
		{"hive two medium and steady leave them to it", "hive=2 strength.word=moderate temper.score=3"},
		{"hive two is only middling", "hive=2 strength.word=moderate"},
		{"they were calm and i shut the lid down sharpish", "temper.score=4"},
		{"she is still laying a lovely pattern", "brood_pattern=solid"},
		{"she lays a patchy pattern", "brood_pattern=patchy"},
		{"her dot has worn right away", "queen.marked=no queen.worn=yes"},
		{"three charged cells, fat grubs in every one", "queen_cells.charged=yes queen_cells.charged.count=3"},
	},
}

func TestMornings(t *testing.T) { readSayings(t, mornings) }
