package parse

import "testing"

// evenings are sentences as people write them in the evening, with bars and shares told once
// for several.
var evenings = map[string][]saying{
	// One of the bars named before.
	"one of them": {
		{"Sealed brood on bars 2, 3 and 4, and my queen walked on the last of these.", "bars.2.capped_brood=yes bars.3.capped_brood=yes bars.4.capped_brood=yes queen.seen=yes queen.bar=4"},
		{"Eggs on three and four, and I saw her majesty on the first of them.", "bars.3.eggs=yes bars.4.eggs=yes queen.seen=yes queen.bar=3"},
		{"Larvae on bars 5 to 7, with the queen on the last one.", "bars.5.open_brood=yes bars.6.open_brood=yes bars.7.open_brood=yes queen.seen=yes queen.bar=7"},
		{"Bars 9 and 10 have honey. Two sealed cells, the last of them on bar 5.", "bars.9.honey=yes bars.10.honey=yes bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=2"},
		{"Bars 9 and 10 have honey. They ate the last of their fondant.", "bars.9.honey=yes bars.10.honey=yes"},
	},
	// Bars counted, and then named.
	"counted and named": {
		{"There were two bare bars at the back, ten and eleven, and I took both of them out.", "bars.10.comb.size=bare bars.11.comb.size=bare actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=10,11"},
		{"I counted three bars of sealed brood: four, five and six.", "bars.4.capped_brood=yes bars.5.capped_brood=yes bars.6.capped_brood=yes"},
		{"Three bars of sealed brood, 4 to 6, and two of honey.", "contents.capped_brood=yes contents.capped_brood.bars=3 contents.honey=yes contents.honey.bars=2"},
		{"Two bars of honey, nine stings.", "contents.honey=yes contents.honey.bars=2 temper.stings=9"},
	},
	// A share told of one bar after another.
	"shares alone": {
		{"Bar 4 is three quarters sealed brood and bar 5 a half.", "bars.4.capped_brood=yes bars.4.capped_brood.cover=0.75 bars.5.capped_brood=yes bars.5.capped_brood.cover=0.5"},
		{"Bar 4 sealed brood 60%, bar 5 40%, bar 6 10%", "bars.4.capped_brood=yes bars.4.capped_brood.cover=0.6 bars.5.capped_brood=yes bars.5.capped_brood.cover=0.4 bars.6.capped_brood=yes bars.6.capped_brood.cover=0.1"},
		{"Bar 9 is two thirds drawn, bar 10 half.", "bars.9.comb.drawn=0.667 bars.10.comb.drawn=0.5"},
		{"Bar 9 is half full of honey, bar 10 a third drawn.", "bars.9.honey=yes bars.9.honey.cover=0.5 bars.10.comb.drawn=0.333"},
		{"Bar 9 half honey half nectar, bar 10 a third.", "bars.9.honey=yes bars.9.honey.cover=0.5 bars.9.nectar=yes bars.9.nectar.cover=0.5"},
	},
	// What holds of some bars, and of others too.
	"and others too": {
		{"Bars 6 and 7 are full of honey, 8 too.", "bars.6.honey=yes bars.6.honey.cover=1 bars.7.honey=yes bars.7.honey.cover=1 bars.8.honey=yes bars.8.honey.cover=1"},
		{"Larvae on bar 3, bars 5 and 6 as well.", "bars.3.open_brood=yes bars.5.open_brood=yes bars.6.open_brood=yes"},
		{"Bar 11 is bare and bar 12 is too.", "bars.11.comb.size=bare bars.12.comb.size=bare"},
		{"Bars 2 and 3 have pollen. Bar 8 also.", "bars.2.pollen=yes bars.3.pollen=yes bars.8.pollen=yes"},
		{"Queen on bar 4, bar 5 too small to bother with.", "queen.seen=yes queen.bar=4 bars.5.comb.size=small"},
		{"Bars 2 and 3 have pollen, two stings too.", "bars.2.pollen=yes bars.3.pollen=yes temper.stings=2"},
		{"Bars 2 and 3 have pollen, nectar too.", "bars.2.pollen=yes bars.2.nectar=yes bars.3.pollen=yes bars.3.nectar=yes"},
	},
	"counted and told": {
		{"Two of the combs are crooked, seven and eight.", "bars.7.comb.straight=no bars.8.comb.straight=no"},
		{"Three bars have larvae, 5 to 7.", "bars.5.open_brood=yes bars.6.open_brood=yes bars.7.open_brood=yes"},
		{"3 of the bars r stuck to the wall: 4, 5 n 9", "bars.4.comb.attached=wall bars.5.comb.attached=wall bars.9.comb.attached=wall"},
		{"Two bars are bare, nine and ten are full of honey.", "bars.9.honey=yes bars.9.honey.cover=1 bars.10.honey=yes bars.10.honey.cover=1"},
	},
	// So many bars of one thing, and another thing on bars that are named.
	"counted beside named": {
		{"Five bars of sealed brood and honey on bars 9 and 10.", "contents.capped_brood=yes contents.capped_brood.bars=5 bars.9.honey=yes bars.10.honey=yes"},
		{"Three bars of brood, plenty of pollen, and eggs on bar 6.", "contents.brood=yes contents.brood.bars=3 contents.pollen=yes contents.pollen.amount=much bars.6.eggs=yes"},
		{"Three bars of eggs and larvae, bars 4, 5 and 6.", "bars.4.eggs=yes bars.4.open_brood=yes bars.5.eggs=yes bars.5.open_brood=yes bars.6.eggs=yes bars.6.open_brood=yes"},
		{"I harvested bars 9 and 10 and left 11 because it is only half capped honey.", "actions.harvest=yes actions.harvest.count=2 actions.harvest.bars=9,10 bars.11.capped_honey=yes bars.11.capped_honey.cover=0.5"},
		{"Pollen on bars 3 and 4, and I saw one bee with deformed wings.", "bars.3.pollen=yes bars.4.pollen=yes signs.deformed_wings=yes signs.deformed_wings.count=1"},
		{"Her highness the queen on bar 6 with eggs all round her.", "queen.seen=yes queen.bar=6 bars.6.eggs=yes"},
	},
	// What is not meant to be done, whose turn it is, and temper beside stings.
	"not meant": {
		{"I do not mean to feed them.", ""},
		{"I don't intend to treat on Sunday.", ""},
		{"Juniper tonight, the other three tomorrow.\n\nCalm. Eggs on bar 4.", "hive=juniper temper.score=4 bars.4.eggs=yes"},
		{"Frost this morning, the bees were quiet. Eggs on bar 4.", "temper.score=4 bars.4.eggs=yes"},
		{"Gentle, no stings, and my wife watched from the gate.", "temper.score=4 temper.stings=0"},
	},
	// What bars are taken for, and who else is fed.
	"for the house": {
		{"Bar nine was ripe and I took it out for the larder.", "actions.harvest=yes actions.harvest.bar=9"},
		{"I took one bar out for the fire.", "actions.remove_bar=yes actions.remove_bar.count=1"},
		{"Then I fed the hens.", ""},
		{"So it got a big feed of four pints of syrup.", "actions.feed=yes actions.feed.amount=4 actions.feed.unit=pt actions.feed.what=syrup"},
		{"They need a feed of two litres of syrup.", ""},
	},
	// What they will have built by a day sets a condition.
	"built none": {
		{"I fed them, and if they've built no cells by Sunday I'll unite them.", "actions.feed=yes"},
		{"They have drawn no queen cells.", "queen_cells.any=no"},
		{"bar nine fully drawn no queen cells", "bars.9.comb.drawn=1 queen_cells.any=no"},
		{"Bar 12 is half drawn and bar 13 has not been started.", "bars.12.comb.drawn=0.5 bars.13.comb.size=bare"},
	},
	// Sugar in which bees are rolled, and sugar that they eat.
	"sugar": {
		{"Sugar again: 300 bees, four mites.", "mites.method=sugar mites.count=4 mites.bees=300"},
		{"Fed them sugar, 2 kg. Two mites on the board.", "actions.feed=yes actions.feed.amount=2 actions.feed.unit=kg actions.feed.what=sugar mites.method=drop mites.count=2"},
	},
	"combs and boards": {
		{"Bar four was crooked and had caught its neighbour, so I freed it.", "bars.4.comb.straight=no bars.4.comb.attached=bar actions.free_comb=yes actions.free_comb.bar=4"},
		{"The follower sat behind bar eight and I moved it back to ten.", "follower.bar=8 actions.move_follower=yes actions.move_follower.to=10 actions.move_follower.direction=back"},
		{"Follower behind 12. Moved it back to 9.", "follower.bar=12 actions.move_follower=yes actions.move_follower.to=9"},
		{"The colony occupies nine bars.", "bars_total=9"},
		{"They occupy nine bars.", "strength.bars_of_bees=9"},
		{"They were nervous by the end.", "temper.score=2"},
		{"Everybody quiet, including the smoker.", "temper.score=4"},
		{"Everybody in the street was quiet.", ""},
		{"Those ones were testy.", "temper.score=2"},
	},
	// A place, and what was found there, behind what was done on an earlier day.
	"found there": {
		{"Last Sunday I requeened them, and there on bar four was the new lady, a green dot on her.", "earlier.requeened=yes earlier.requeened.on=2026-05-10 queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=green"},
		{"Last Sunday I requeened them, and there on bar four was the queen.", "earlier.requeened=yes earlier.requeened.on=2026-05-10 queen.seen=yes queen.bar=4"},
		{"Sealed brood I have found only on bar five.", "bars.5.capped_brood=yes"},
		{"The brood is only on bar five.", "bars.5.brood=yes"},
		{"There were no more drones.", "drones=no"},
		{"Queen on bar six. Robbing had begun by noon.", "queen.seen=yes queen.bar=6 signs.robbing=yes"},
		{"I inspect them again on Wednesday.", "plans.inspect=yes plans.inspect.due=2026-05-20"},
		{"Our queen is there though on bar three.", "queen.seen=yes queen.bar=3"},
		{"I spotted her though, on bar three.", "queen.seen=yes queen.bar=3"},
		{"Queen seen though on bar three there were two cups.", "queen.seen=yes bars.3.queen_cells.cup=yes bars.3.queen_cells.cup.count=2"},
		{"There was no lack of pollen on bar three.", "bars.3.pollen=yes bars.3.pollen.amount=much"},
		{"Bar five has brood at the larval stage, bar six brood in the pupal stage.", "bars.5.open_brood=yes bars.6.capped_brood=yes"},
		{"Bar nine was broken down from the heat, so I took it out.", "bars.9.comb.broken=yes actions.remove_bar=yes actions.remove_bar.bar=9"},
		{"They swarmed on Monday while I was hanging out the sheets.", "earlier.swarmed=yes earlier.swarmed.on=2026-05-11"},
		{"The bees were hanging out at the entrance.", "signs.bearding=yes"},
		{"I marked her, so she is yellow now.", "queen.marked=yes queen.colour=yellow actions.mark_queen=yes"},
		{"I marked her and she went white with fright.", "queen.marked=yes actions.mark_queen=yes"},
		{"She has taken well. Spotted on bar 3, red dot.", "queen.seen=yes queen.bar=3 queen.marked=yes queen.colour=red"},
		{"She has taken well. Found on bar 3: one play cup.", "bars.3.queen_cells.cup=yes bars.3.queen_cells.cup.count=1"},
		{"Bar 3 was just as it should be, straight, and full of honey.", "bars.3.honey=yes bars.3.honey.cover=1 bars.3.comb.straight=yes"},
		{"I found the lost hive tool. Larvae on bar 3.", "bars.3.open_brood=yes"},
		{"No larvae and an ant nest under the lid.", "contents.open_brood=no signs.ants=yes"},
		{"No wasps and a queenless moan.", "signs.wasps=no signs.queenless_roar=yes"},
		{"No ants or a queenless moan.", "signs.ants=no signs.queenless_roar=no"},
		{"At Fold hive a dozen dead bees lay about.", "hive=fold signs.dead_bees=yes signs.dead_bees.count=12"},
	},
	"both of two things": {
		{"We found both larvae and eggs on bar three.", "bars.3.eggs=yes bars.3.open_brood=yes"},
		{"Bar 8 holds both pollen and capped honey.", "bars.8.capped_honey=yes bars.8.pollen=yes"},
		{"Bar 4 has both a little nectar and some pollen.", "bars.4.nectar=yes bars.4.nectar.amount=little bars.4.pollen=yes"},
		{"On bar 7 there was pollen and nectar both.", "bars.7.nectar=yes bars.7.pollen=yes"},
	},
	"a sign of the hive before a comb": {
		{"Wasps were at the door, and the comb on bar 6 is crooked.", "bars.6.comb.straight=no signs.wasps=yes"},
		{"Ants had got into the roof, and there is sealed brood on bar 5.", "bars.5.capped_brood=yes signs.ants=yes"},
		{"Dead bees on the step, the combs on bars 2 and 3 are broken.", "bars.2.comb.broken=yes bars.3.comb.broken=yes signs.dead_bees=yes"},
		{"Ants, lots of them, on bar 3.", "signs.ants=yes signs.ants.bar=3"},
		{"There were mice in the hive and wax moth on bar 9.", "signs.mice=yes signs.wax_moth=yes signs.wax_moth.bar=9"},
	},
	"what they are to have": {
		{"Hazel hive. Calm. Hazel shall have two more bars on Sunday.", "hive=hazel temper.score=4 plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-17"},
		{"They must have another bar on Friday.", "plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-15"},
		{"They are to have a bit more fondant on Sunday.", "plans.feed=yes plans.feed.what=fondant plans.feed.due=2026-05-17"},
		{"They must have more syrup on Friday.", "plans.feed=yes plans.feed.what=syrup plans.feed.due=2026-05-15"},
		{"I'm supposed to add a bar on Sunday.", "plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-17"},
		{"By Friday they will have two bars of brood.", ""},
		{"Drones are supposed to leave by autumn. Eggs on bar 4.", "bars.4.eggs=yes"},
	},
	"what others hold should be done": {
		{"Eggs on bar 4. Mabel thinks they should be fed.", "bars.4.eggs=yes"},
		{"It has been suggested to me by the secretary that I should split them.", ""},
		{"My sister proposed by letter that we should unite them.", ""},
		{"Mabel wishes them fed, so I will feed them on Friday.", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"People at the club will say to treat them now. Bar 5 honey.", "bars.5.honey=yes"},
		{"I think they should be fed on Friday.", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"I ought to be able to mark a queen without trembling.", ""},
		{"Whoever has been feeding them, please stop. Bar 3 pollen.", "bars.3.pollen=yes"},
	},
	"how she was seen, and how not": {
		{"The queen was pointed out by my niece, on bar 4, with a red dot.", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=red"},
		{"Larvae on bar 6, and there she stood, the queen, unmarked.", "bars.6.open_brood=yes queen.seen=yes queen.bar=6 queen.marked=no"},
		{"The old queen came marching over bar 5.", "queen.seen=yes queen.bar=5"},
		{"The queen has not shown herself.", "queen.seen=no"},
		{"I called for the queen but she did not appear.", "queen.seen=no"},
		{"Of the queen I know nothing, not having looked for her.", ""},
		{"Never saw the queen, but I only see her when I want a cell.", "queen.seen=no"},
	},
	"eggs that prove something": {
		{"Queen not seen, but with all those eggs I do not mind.", "queen.seen=no"},
		{"Bar 4 has eggs. No queen seen, but the eggs tell me enough.", "bars.4.eggs=yes queen.seen=no"},
		{"There is no queen in sight, with brood like that I can wait.", "queen.seen=no"},
		{"There are eggs and larvae on bar 4, and a virgin does not lay.", "bars.4.eggs=yes bars.4.open_brood=yes"},
		{"Bars 4 and 5 with eggs.", "bars.4.eggs=yes bars.5.eggs=yes"},
		{"The stores struck us as plentiful.", "stores.word=heavy"},
	},
	"what goes on still": {
		{"It was still 19 degrees at seven.", "weather.temp_c=19"},
		{"It is still cloudy.", "weather.sky=cloudy"},
		{"Twenty degrees, and my asters are still blooming.", "weather.temp_c=20"},
		{"Sunny and still.", "weather.sky=sunny weather.wind=calm"},
	},
	"where she was then": {
		{"The queen was not seen. Last Sunday she was on bar four.", "queen.seen=no earlier.queen_seen=yes earlier.queen_seen.on=2026-05-10 earlier.queen_seen.bar=4"},
		{"No queen found; a week ago she was on bar six, unmarked.", "queen.seen=no earlier.queen_seen=yes earlier.queen_seen.on=2026-05-07 earlier.queen_seen.bar=6"},
	},
	"how much of a comb": {
		{"Bar 5 had brood that covers three quarters of the comb.", "bars.5.brood=yes bars.5.brood.cover=0.75"},
		{"Bar 6 has honey which covers half the comb.", "bars.6.honey=yes bars.6.honey.cover=0.5"},
		{"Nowt but honey on bar nine.", "bars.9.honey=yes bars.9.honey.cover=1"},
		{"Bar nine was naught but pollen.", "bars.9.pollen=yes bars.9.pollen.cover=1"},
	},
	"words that mean another thing": {
		{"I shall look in again in a week. Before that, on Friday, I must feed them.", "plans.inspect=yes plans.inspect.due=2026-05-21 plans.feed=yes plans.feed.due=2026-05-15"},
		{"Wasps were about, and I sat down with one of my books.", "signs.wasps=yes"},
		{"They need no further treatment.", ""},
		{"Testy bees, bouncing off my hood.", "temper.score=2"},
		{"Bouncing bees, eight bars of them.", "strength.word=strong"},
		{"As quiet as a mouse. No mites seen.", "temper.score=4 mites.method=seen mites.count=0"},
	},
	"what was done to none, to some, and by what": {
		{"I cut no queen cells.", ""},
		{"None of the cells was cut out.", ""},
		{"No bars were added today.", ""},
		{"Four sealed cells on bar 6. I took down none of them.", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=4"},
		{"No queen cells, and I cut out no comb.", "queen_cells.any=no"},
		{"Five sealed cells on bar 7. Three of the cells were then cut out.", "bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=5 actions.cut_cells=yes actions.cut_cells.count=3 actions.cut_cells.bar=7"},
		{"I gave them room by adding two bars.", "actions.add_bar=yes actions.add_bar.count=2"},
		{"One keeps them warm by closing the floor.", ""},
		{"Robbing had begun, so the entrance was closed.", "signs.robbing=yes actions.close_entrance=yes"},
		{"The nights are cold and therefore the floor was closed.", "floor=closed"},
		{"It is cold, so the floor is closed.", "floor=closed"},
	},
	"where a comb is stuck": {
		{"Bar nine has grown down to the floor.", "bars.9.comb.attached=floor"},
		{"The comb on bar three sticks fast to the side wall.", "bars.3.comb.attached=wall"},
		{"Bar four has grown a bit. Bees were on the floor.", ""},
	},
	"the bees on the comb": {
		{"The bees were running up and down the combs.", "temper.runny=yes"},
		{"They ran back and forth across the comb.", "temper.runny=yes"},
		{"There are eggs on bar three, a handful, and pollen on bar four.", "bars.3.eggs=yes bars.3.eggs.amount=little bars.4.pollen=yes"},
		{"The bees were a handful today.", "temper.score=2"},
		{"The bars in use are fourteen.", "bars_total=14"},
		{"The combs in use come to eleven.", "bars_total=11"},
	},
	// How big a colony is, measured in bars right behind, and what else such a one has.
	"sizes with their measure": {
		{"It is weak, three seams, brood but no eggs.", "strength.word=weak strength.bars_of_bees=3 contents.brood=yes contents.eggs=no"},
		{"Heaving, with bees on twelve bars and lots of sealed brood.", "strength.word=strong strength.bars_of_bees=12 contents.capped_brood=yes contents.capped_brood.amount=much"},
		{"It is small still, four seams of bees and sealed brood on two bars.", "strength.word=weak strength.bars_of_bees=4 contents.capped_brood=yes contents.capped_brood.bars=2"},
		{"The queen is huge, nine seams of bees, eggs.", "strength.bars_of_bees=9 contents.eggs=yes"},
		{"A small patch of brood, three seams of bees.", "strength.bars_of_bees=3 contents.brood=yes contents.brood.amount=little"},
		{"The entrance was packed, nine seams of bees and eggs.", "strength.bars_of_bees=9 contents.eggs=yes"},
		{"Packed to the rafters. No stings.", "strength.word=strong temper.stings=0"},
		{"It is a small colony with a sealed cell on bar 6.", "strength.word=weak bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1"},
		{"A strong colony with three swarm cells.", "strength.word=strong queen_cells.any=yes queen_cells.any.count=3 queen_cells.any.kind=swarm"},
		{"A strong colony with sealed queen cells will swarm.", ""},
		{"A weak colony with wax moth is soon lost.", ""},
	},
	"plants told as many": {
		{"They are carrying in pollen off the willows.", "incoming.pollen=yes incoming.pollen.plant=willow?"},
		{"They are carrying in pollen from the crocus.", "incoming.pollen=yes incoming.pollen.plant=crocus"},
	},
}

func TestEvenings(t *testing.T) { readSayings(t, evenings) }
