package parse

import "testing"

// saying is what somebody said, and the leaves that it gives.
type saying struct{ said, want string }

// manners are ways of speaking and writing that many have, by what they share.
var manners = map[string][]saying{
	// brood told by the nest.
	"the nest": {
		{"I ought to say that they were calm.", "temper.score=4"},
		{"Nest b3 to b5, not disturbed.", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes"},
		{"A wasps' nest in the hedge.", "signs.wasps=yes"},
	},
	// where she was and is, counts put right, and what nobody brings.
	"then and now, and what is put right": {
		{"I did not see the queen, last time she was on bar three.", "queen.seen=no earlier.queen_seen=yes earlier.queen_seen.bar=3"},
		{"Queen on bar 4, last time she was on bar three.", "queen.seen=yes queen.bar=4 earlier.queen_seen=yes earlier.queen_seen.bar=3"},
		{"bees on four bars no make that five bars bar seven honey", "bars.7.honey=yes strength.bars_of_bees=5?"},
		{"nobody carrying water", "incoming.water=no"},
	},
	// a weekday and the day of the month that it is.
	"weekdays with their day": {
		{"Add two bars on Saturday the 23rd.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-23"},
		{"Fed Sat 2nd.", "earlier.fed=yes earlier.fed.on=2026-05-02"},
		{"on monday the second bar had eggs", "bars.2.eggs=yes"},
	},
	// a range of bars that ends what is told of them, and things that moved.
	"ranges behind what is there": {
		{"sealed brood on bar 5, a good half of it", "bars.5.capped_brood=yes bars.5.capped_brood.cover=0.5"},
		{"Bars 9 and 10 are bare, so I took them out.", "bars.9.comb.size=bare bars.10.comb.size=bare actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=9,10"},
		{"I pushed the follower forward to bar 8.", "actions.move_follower=yes actions.move_follower.to=8 actions.move_follower.direction=forward"},
		{"eggs on four and five sealed brood six through eight good as gold this lot", "bars.4.eggs=yes bars.5.eggs=yes bars.6.capped_brood=yes bars.7.capped_brood=yes bars.8.capped_brood=yes temper.score=4"},
		{"capped brood four to six kind of spotty and honey on seven", "bars.4.capped_brood.pattern=patchy bars.4.capped_brood=yes bars.5.capped_brood.pattern=patchy bars.5.capped_brood=yes bars.6.capped_brood.pattern=patchy bars.6.capped_brood=yes bars.7.honey=yes"},
		{"3 l of 2:1 syrup in.", "actions.feed.amount=3 actions.feed.unit=l actions.feed.what=syrup actions.feed=yes"},
		{"Follower was behind 15, brought it forward to 12.", "actions.move_follower.direction=forward actions.move_follower.to=12 actions.move_follower=yes follower.bar=15"},
		{"floor is open right now remind me to close the floor on thursday", "floor=open plans.close_floor.due=2026-05-21 plans.close_floor=yes"},
	},
	// where it is and nowhere else.
	"pointed at": {
		{"I added one bar after 8 and one after 12.", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=8 actions.add_bar#2=yes actions.add_bar#2.count=1 actions.add_bar#2.to=12"},
		{"Added two bars after bar 6, one after bar 10.", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=6 actions.add_bar#2=yes actions.add_bar#2.count=1 actions.add_bar#2.to=10"},
		{"b9/b10 eggs, bars 11/12 honey", "bars.9.eggs=yes bars.10.eggs=yes bars.11.honey=yes bars.12.honey=yes"},
		{"I'll nip back in nine days.", "plans.inspect=yes plans.inspect.due=2026-05-23"},
		{"It was too cold to pull brood.", ""},
		{"Eggs only on bar 3, none on 4.", "bars.3.eggs=yes bars.4.eggs=no"},
		{"Larvae, but only on bar 3.", "bars.3.open_brood=yes"},
		{"Brood only b2 & b3, spotty.", "bars.2.brood.pattern=patchy bars.2.brood=yes bars.3.brood.pattern=patchy bars.3.brood=yes"},
		{"Bar 7 capped brood, gave that bar to hive 5.", "bars.7.capped_brood=yes actions.move_bar=yes actions.move_bar.bar=7 actions.move_bar.to_hive=5"},
		{"The queen is on bar nine and there's drone brood on that bar too.", "bars.9.drone_brood=yes queen.bar=9 queen.seen=yes"},
		{"I wasn't going to open them today.", ""},
	},
	// what is said of one comb is said of another.
	"combs that are the same": {
		{"b2 sealed stores wall to wall, ditto b3", "bars.2.capped_honey=yes bars.2.capped_honey.cover=1 bars.3.capped_honey=yes? bars.3.capped_honey.cover=1"},
		{"Oxalic acid went on 3 January.", "earlier.treated=yes earlier.treated.on=2026-01-03 earlier.treated.what=oxalic acid"},
		{"Bar 16 is bare, and so is bar 15.", "bars.15.comb.size=bare bars.16.comb.size=bare"},
		{"Bar 5 honey. Bar 6 bare. Bar 7 same.", "bars.5.honey=yes bars.6.comb.size=bare bars.7.comb.size=bare?"},
		{"She is laying, though I did not see her.", "queen.seen=no"},
	},
	// how she lays, told of the colony, and whose year it is.
	"of the colony, and of a year": {
		{"Hive 4. They are strong, with a patchy brood pattern, and calm.", "hive=4 strength.word=strong brood_pattern=patchy temper.score=4"},
		{"BIAS, a good brood pattern, queen seen.", "contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes brood_pattern=solid queen.seen=yes"},
		{"Sealed brood on bars 4 and 5, good brood pattern.", "bars.4.capped_brood=yes bars.4.capped_brood.pattern=solid bars.5.capped_brood=yes bars.5.capped_brood.pattern=solid"},
		{"We fed them last year's syrup and took three bars of last summer's honey.", "actions.feed=yes actions.feed.what=syrup actions.harvest=yes actions.harvest.count=3"},
	},
	// halves and edges of a comb, and what they are themselves.
	"halves and edges": {
		{"Bar 6 is half nectar, the other half is brood.", "bars.6.nectar=yes bars.6.nectar.cover=0.5 bars.6.brood=yes bars.6.brood.cover=0.5"},
		{"Bar 7 has drone brood along its lower edge and honey along the upper edge.", "bars.7.drone_brood=yes bars.7.drone_brood.place=bottom bars.7.honey=yes bars.7.honey.place=top"},
		{"Bar 5: eggs on one side, the other side half nectar.", "bars.5.eggs=yes bars.5.eggs.side=one bars.5.nectar=yes bars.5.nectar.cover=0.5 bars.5.nectar.side=one"},
		{"They were gentleness itself.", "temper.score=4"},
		{"A colony wants at least ten bars of stores.", ""},
	},
	// what a hive gives its keeper, and what it has besides.
	"given up": {
		{"Juniper gave up five bars, 11 kg, and still has four bars of sealed honey.", "hive=juniper actions.harvest=yes actions.harvest.count=5 actions.harvest.amount=11 actions.harvest.unit=kg contents.capped_honey=yes contents.capped_honey.bars=4"},
		{"Hive 3. It gave us bars 9 and 10, 5 kg.", "hive=3 actions.harvest=yes actions.harvest.count=2 actions.harvest.bars=9,10 actions.harvest.amount=5 actions.harvest.unit=kg"},
		{"Hive 3. They yielded two bars of honey.", "hive=3 actions.harvest=yes actions.harvest.count=2"},
		{"Hive 2 gave up two bars of brood to hive 3.", "hive=2 actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.to_hive=3"},
		{"Hive 3. It was given two bars and still has four bars of brood.", "hive=3 actions.add_bar=yes actions.add_bar.count=2 contents.brood=yes contents.brood.bars=4"},
	},
	// hives that are left as they are or get brood, and what could not be found.
	"left alone": {
		{"Juniper is weak. We mean to keep Juniper closed and feed on Sunday.", "hive=juniper strength.word=weak plans.feed=yes plans.feed.due=2026-05-17"},
		{"Juniper swarmed on Friday. Eggs on bar 3. I'll leave Juniper shut and look in on Sunday.", "hive=juniper earlier.swarmed=yes earlier.swarmed.on=2026-05-08 bars.3.eggs=yes plans.inspect=yes plans.inspect.due=2026-05-17"},
		{"Juniper is strong. I gave two bars of brood to Hazel.", "hive=juniper strength.word=strong actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.to_hive=hazel"},
		{"Sealed brood on bars 4 and 5, but no larvae that I could spot.", "bars.4.capped_brood=yes bars.5.capped_brood=yes contents.open_brood=no"},
		{"Bar 4 has brood but no eggs that I could see.", "bars.4.brood=yes bars.4.eggs=no"},
		{"Eggs on bar 5. I'd call her moderate now.", "bars.5.eggs=yes strength.word=moderate?"},
	},
	// what bars that head the sentence underwent, and what goes in besides.
	"and was": {
		{"Bar 7 was stuck to the wall and was cut free.", "bars.7.comb.attached=wall actions.free_comb=yes actions.free_comb.bar=7"},
		{"Bars 9 and 10 were bare and have been taken out.", "bars.9.comb.size=bare bars.10.comb.size=bare actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=9,10"},
		{"Bar 4 had a queen cell and the queen was unmarked.", "bars.4.queen_cells.any=yes bars.4.queen_cells.any.count=1 queen.marked=no"},
		{"Larvae on bar 4, and propolis is going in.", "bars.4.open_brood=yes incoming.propolis=yes"},
	},
	// cells of which one hangs elsewhere, and bees on some of the bars.
	"another on a bar": {
		{"A sealed cell on bar 6, another on bar 8.", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1 bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=1"},
		{"Two sealed cells on bar 4. Two more on bar 6.", "bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=2 bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=2"},
		{"Two charged cells on bar 3, a third on bar 5. Another on bar 7.", "bars.3.queen_cells.charged=yes bars.3.queen_cells.charged.count=2 bars.5.queen_cells.charged=yes bars.5.queen_cells.charged.count=1 bars.7.queen_cells.charged=yes bars.7.queen_cells.charged.count=1"},
		{"Two swarm cells on bar 4 and three more on bar 6.", "bars.4.queen_cells.any=yes bars.4.queen_cells.any.count=2 bars.4.queen_cells.any.kind=swarm bars.6.queen_cells.any=yes bars.6.queen_cells.any.count=3 bars.6.queen_cells.any.kind=swarm"},
		{"Eight of its combs are covered with bees.", "strength.bars_of_bees=8"},
	},
	// what ends a list of what was found.
	"places and cups told last": {
		{"Fed them, honey on bars 8 to 10.", "bars.8.honey=yes bars.9.honey=yes bars.10.honey=yes actions.feed=yes"},
		{"Did not feed them, brood on bar 5.", "bars.5.brood=yes"},
		{"Hive 3. The sealed brood is spotty, bars 5 and 7.", "hive=3 bars.5.capped_brood.pattern=patchy bars.5.capped_brood=yes bars.7.capped_brood.pattern=patchy bars.7.capped_brood=yes"},
		{"Bar 5 has eggs and a cup.", "bars.5.eggs=yes bars.5.queen_cells.cup=yes bars.5.queen_cells.cup.count=1"},
	},
	// what they get, by day.
	"food on a day to come": {
		{"H2. OA Fri, 1.5 l syrup tmrw.", "hive=2 plans.feed.amount=1.5 plans.feed.due=2026-05-15 plans.feed.unit=l plans.feed.what=syrup plans.feed=yes plans.treat.due=2026-05-15 plans.treat.what=oxalic acid plans.treat=yes?"},
	},
	// numbers with a colon behind them head a line about bars.
	"numbers as labels of bars": {
		{"7: eggs, larvae", "bars.7.eggs=yes bars.7.open_brood=yes"},
		{"3, 4 and 9: sealed honey", "bars.3.capped_honey=yes bars.4.capped_honey=yes bars.9.capped_honey=yes"},
		{"2-4: patchy brood", "bars.2.brood=yes bars.2.brood.pattern=patchy bars.3.brood=yes bars.3.brood.pattern=patchy bars.4.brood=yes bars.4.brood.pattern=patchy"},
	},
	// what is to be done to what stands in front of the subject.
	"object before its subject": {
		{"Hive 4 threw out a swarm on Monday.", "hive=4 earlier.swarmed=yes earlier.swarmed.on=2026-05-11"},
		{"Bars 4 and 7 went in on Sunday. 4 is half drawn, 7 is bare.", "bars.4.placed=2026-05-10 bars.4.comb.drawn=0.5 bars.7.placed=2026-05-10 bars.7.comb.size=bare"},
		{"The entrance I must narrow on the 17th.", "plans.reduce_entrance=yes plans.reduce_entrance.due=2026-05-17"},
		{"Two bars I shall add on Monday.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-18"},
		{"We harvested three bars, which gave 5 kg.", "actions.harvest=yes actions.harvest.count=3 actions.harvest.amount=5 actions.harvest.unit=kg"},
		{"Wax moth have invaded bar 12.", "signs.wax_moth=yes signs.wax_moth.bar=12"},
		{"I fed them and will feed again on Monday, reduced the entrance and left.", "actions.feed=yes plans.feed=yes plans.feed.due=2026-05-18 actions.reduce_entrance=yes"},
	},
	// so many bars that something is spread over, and what somebody gets on a day to come.
	"spread over bars": {
		{"Hive 1. BIAS over five bars, QNS.", "hive=1 contents.eggs=yes contents.eggs.bars=5 contents.open_brood=yes contents.open_brood.bars=5 contents.capped_brood=yes contents.capped_brood.bars=5 queen.seen=no"},
		{"Sealed brood stretches across four bars.", "contents.capped_brood=yes contents.capped_brood.bars=4"},
		{"Bees spread over eight bars.", "strength.bars_of_bees=8"},
		{"Clover gets requeened next week.", "hive=clover plans.requeen=yes plans.requeen.due=2026-05-21"},
		{"They get fed tomorrow.", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"A clipped 2024 queen on bar 7.", "queen.seen=yes queen.bar=7 queen.clipped=yes queen.year=2024"},
		{"The bees could not be calmer.", "temper.score=4"},
		{"Mrs Hartle's bees swarmed twice and she has fed them all.", ""},
	},
	// bars from another hive, and the food beside them.
	"bars got from a hive": {
		{"Hive 1. Got a bar of brood from hive 4.", "hive=1 actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.from_hive=4"},
		{"Hive 4 is calm.\nHive 6 got two bars of brood from hive 4, in behind bar 6, and a pint of syrup.", "hive=4 temper.score=4 / hive=6 actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=6 actions.add_bar.from_hive=4 actions.feed=yes actions.feed.amount=1 actions.feed.unit=pt actions.feed.what=syrup"},
		{"Hive 4 is calm.\nHive 6 is weak. Gave it a bar of brood from hive 4 and a litre of syrup.", "hive=4 temper.score=4 / hive=6 strength.word=weak actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.from_hive=4 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"Hive 1. Put two bars in behind bar 6, and a litre of syrup.", "hive=1 actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=6 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
	},
	// what is told behind its place, or points back at it.
	"pointing back": {
		{"The brood nest is bars 3 to 5, no eggs on any of them.", "bars.3.brood=yes bars.3.eggs=no bars.4.brood=yes bars.4.eggs=no bars.5.brood=yes bars.5.eggs=no"},
		{"Hive 2. Bar 9 is sealed brood, and I gave that one to hive 5.", "hive=2 bars.9.capped_brood=yes actions.move_bar=yes actions.move_bar.bar=9 actions.move_bar.to_hive=5"},
		{"Hive 2. Bar 9 is sealed brood, and I gave that bar to hive 5.", "hive=2 bars.9.capped_brood=yes actions.move_bar=yes actions.move_bar.bar=9 actions.move_bar.to_hive=5"},
		{"The nest is bars 6 and 7. No larvae on any of these.", "bars.6.brood=yes bars.6.open_brood=no bars.7.brood=yes bars.7.open_brood=no"},
		{"Bar 5: sacbrood on two larvae.", "bars.5.open_brood=yes signs.sacbrood=yes signs.sacbrood.count=2 signs.sacbrood.bar=5"},
		{"Cups only - five, no charged cells.", "queen_cells.cup=yes queen_cells.cup.count=5 queen_cells.charged=no"},
		{"Hive 2. Wax moth on bar 11, and this bar I took away.", "hive=2 signs.wax_moth=yes signs.wax_moth.bar=11 actions.remove_bar=yes actions.remove_bar.bar=11"},
		{"On bar 6 there is sealed brood, a little, and larvae I found on bar 7.", "bars.6.capped_brood=yes bars.6.capped_brood.amount=little bars.7.open_brood=yes"},
		{"Sealed brood is now on three bars only.", "contents.capped_brood=yes contents.capped_brood.bars=3"},
		{"Queen not found (eggs were seen on Sunday).", "queen.seen=no earlier.eggs_seen=yes earlier.eggs_seen.on=2026-05-10"},
		{"Queen - seen, unmarked; now marked, white", "queen.seen=yes queen.marked=yes queen.colour=white actions.mark_queen=yes"},
		{"On 30 May we treat, thymol.", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-30"},
		{"They have not got much food: bar 8 is half honey.", "bars.8.honey=yes bars.8.honey.cover=0.5 stores.word=light"},
		{"Bar 6 is fastened on the right wall. Bar 7 has a bunch of larvae.", "bars.6.comb.attached=wall bars.7.open_brood=yes bars.7.open_brood.amount=much"},
	},
	// what was looked for and not found is denied where it was looked for.
	"looked for in vain": {
		{"I looked for swarm cells on bars 6 to 8 and found none.", "bars.6.queen_cells.any=no bars.7.queen_cells.any=no bars.8.queen_cells.any=no"},
		{"Hunted for the queen on all the bars, found nothing.", "queen.seen=no"},
		{"Searched for chalkbrood and sacbrood and found neither.", "signs.chalkbrood=no signs.sacbrood=no"},
		{"looked for larvae on bar four no joy bar five has eggs", "bars.4.open_brood=no bars.5.eggs=yes"},
		{"Looked for drones and saw none.", "drones=no"},
		{"I looked for eggs on bar 4 and found plenty.", "bars.4.eggs=yes"},
		{"We never set eyes on the queen, but on bar 5 I found her eggs.", "queen.seen=no bars.5.eggs=yes"},
	},
	// what was tried or done by nobody, and what stands between an article and its noun.
	"not done, and adjectives": {
		{"An undotted lanky queen strolled about on bar 8.", "queen.seen=yes queen.bar=8 queen.marked=no"},
		{"The unmarked young queen is on bar 3.", "queen.seen=yes queen.bar=3 queen.marked=no"},
		{"I tried to straighten bar 6 and gave it up.", ""},
		{"Nobody fed them.", ""},
		{"I lifted them with bare hands, bar 4 had eggs.", "bars.4.eggs=yes"},
		{"Bar 9 went in on Sunday, third built.", "bars.9.placed=2026-05-10 bars.9.comb.drawn=0.333"},
		{"treated last mon, fed thurs, split sat", "earlier.treated=yes earlier.treated.on=2026-05-11 earlier.fed=yes earlier.fed.on=2026-05-07 earlier.split=yes earlier.split.on=2026-05-09"},
		{"moved bars two to five over to hive six", "actions.move_bar=yes actions.move_bar.count=4 actions.move_bar.bars=2,3,4,5 actions.move_bar.to_hive=6"},
	},
	// words cut short with a full stop, which ends no sentence.
	"short form": {
		{"b2 cap. honey. b5 cap. brood, spotty. b6 larv. and eggs. b7 pol.", "bars.2.capped_honey=yes bars.5.capped_brood=yes bars.5.capped_brood.pattern=patchy bars.6.open_brood=yes bars.6.eggs=yes bars.7.pollen=yes"},
		{"11 bars in use, foll. behind b11. 16C, o/cast", "bars_total=11 follower.bar=11 weather.temp_c=16 weather.sky=overcast"},
		{"Foll. moved fwd. 2 bars. Reduced ent. No mice.", "actions.move_follower=yes actions.move_follower.count=2 actions.move_follower.direction=forward actions.reduce_entrance=yes signs.mice=no"},
		{"Insp. again Sat.", "plans.inspect=yes plans.inspect.due=2026-05-16"},
		{"Next insp. Sat.", "plans.inspect=yes plans.inspect.due=2026-05-16"},
		{"Fdr empty. Q seen w/o a mark.", "feeder=empty queen.seen=yes queen.marked=no"},
		{"packed w bees n added 1 bar", "strength.word=strong actions.add_bar=yes actions.add_bar.count=1"},
		{"Add 2 bars from H6 Wed.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.from_hive=6 plans.add_bar.due=2026-05-20"},
		{"Hive 1. Give 2 bars to H3 on Sunday.", "hive=1 plans.move_bar=yes plans.move_bar.count=2 plans.move_bar.to_hive=3 plans.move_bar.due=2026-05-17"},
		{"b8-10 1/2 drawn", "bars.8.comb.drawn=0.5 bars.9.comb.drawn=0.5 bars.10.comb.drawn=0.5"},
		{"fed 1 1/2 l of syrup", "actions.feed=yes actions.feed.amount=1.5 actions.feed.unit=l actions.feed.what=syrup"},
	},
	// corrections in words of their own, and counts put right behind what they count.
	"taken back": {
		{"bar two was nectar no I'm telling a fib it was honey", "bars.2.honey=yes?"},
		{"on bar four nine mummies of chalkbrood no excuse me seven", "signs.chalkbrood=yes? signs.chalkbrood.bar=4 signs.chalkbrood.count=7"},
		{"hive beetles I counted eight of the wretches no nine", "signs.small_hive_beetle=yes signs.small_hive_beetle.count=9?"},
		{"I found three mites no four", "mites.method=seen mites.count=4?"},
		{"three wasps no robbing", "signs.wasps=yes signs.wasps.count=3 signs.robbing=no"},
		{"okay hive twelve no sorry eleven hive eleven bar one eggs", "hive=11? bars.1.eggs=yes"},
		{"there she's on that one bar eight she's not got any paint", "queen.seen=yes queen.bar=8 queen.marked=no"},
		{"it's only ate degrees and raining", "weather.temp_c=8? weather.sky=rain"},
		{"hive 3. bees grumpy at first but gentle by the end", "hive=3 temper.score=4?"},
		{"Old Wat says his bees have foulbrood.", ""},
		{"Bar six I mistook for honey, but it was capped brood.", "bars.6.capped_brood=yes"},
		{"Brood was counted on four bars.", "contents.brood=yes contents.brood.bars=4"},
		{"h2 b4 moved to h3", "hive=2 actions.move_bar=yes actions.move_bar.bar=4 actions.move_bar.to_hive=3"},
		{"Hive 3. It received two bars from hive 2.", "hive=3 actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.from_hive=2"},
		{"Bees on nine bars, eggs and larvae on six.", "strength.bars_of_bees=9 contents.eggs=yes contents.eggs.bars=6 contents.open_brood=yes contents.open_brood.bars=6"},
		{"Nectar is coming in from the lime trees and pollen from the daisies.", "incoming.nectar=yes incoming.nectar.plant=lime incoming.pollen=yes incoming.pollen.plant=daisy"},
		{"four queen cells on bar two, cut out two, no, all three", "bars.2.queen_cells.any=yes bars.2.queen_cells.any.count=4 actions.cut_cells=yes? actions.cut_cells.bar=2 actions.cut_cells.count=3"},
		{"is that brood on bar two no it's honey", "bars.2.honey=yes"},
		{"is that a queen cell on seven no that's an empty cup", "bars.7.queen_cells.cup=yes bars.7.queen_cells.cup.count=1"},
		{"I won't I'm going to close the floor on Friday", "plans.close_floor=yes plans.close_floor.due=2026-05-15"},
	},
	// bars told by where they stand to the one before.
	"bar by bar": {
		{"Bar 4 has larvae. Skipped one. The next one has honey, the one after is bare.", "bars.4.open_brood=yes bars.6.honey=yes bars.7.comb.size=bare"},
		{"bar four larvae left one out bar six honey and the one after nectar", "bars.4.open_brood=yes bars.6.honey=yes bars.7.nectar=yes"},
		{"Worked from the far end. Bar 11 honey. Next one larvae. Next again, eggs.", "bars.9.eggs=yes bars.10.open_brood=yes bars.11.honey=yes"},
		{"Hive 2\nBar 3: honey\nNext: empty comb\nNext: add a bar", "hive=2 bars.3.honey=yes bars.4.empty=yes plans.add_bar=yes plans.add_bar.count=1"},
	},
	// food and medicine told by who gets them, or by where they went.
	"given without a giver": {
		{"Hive 3. Calm. They had thymol on the 4th.", "hive=3 temper.score=4 earlier.treated=yes earlier.treated.on=2026-05-04 earlier.treated.what=thymol"},
		{"Twelve mites on the bees, so oxalic acid went in.", "mites.method=seen mites.count=12 actions.treat=yes actions.treat.what=oxalic acid"},
		{"Hive 3. Those will get fondant on Sunday.", "hive=3 plans.feed=yes plans.feed.what=fondant plans.feed.due=2026-05-17"},
		{"Hive 3. They get syrup tomorrow.", "hive=3 plans.feed=yes plans.feed.what=syrup plans.feed.due=2026-05-15"},
		{"Hive 3. They had fondant left.", "hive=3"},
		{"I will get syrup from the shop tomorrow", ""},
	},
	// what is to do, in the line of its heading.
	"to do": {
		{"To do: more syrup tomorrow. At the weekend put in two more bars.", "plans.feed=yes plans.feed.what=syrup plans.feed.due=2026-05-15 plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-16"},
		{"Hive 7. To do on Friday: split", "hive=7 plans.split=yes plans.split.due=2026-05-15"},
		{"Hive 2 calm. I fed them syrup on 5/9. Open again 5/30", "hive=2 temper.score=4 plans.inspect=yes plans.inspect.due=2026-05-30 earlier.fed=yes earlier.fed.on=2026-05-09 earlier.fed.what=syrup"},
		{"Hive 2\nBrood: bar 5 sealed brood, spotty; bar 6 larvae", "hive=2 bars.5.capped_brood=yes bars.5.capped_brood.pattern=patchy bars.6.open_brood=yes"},
		{"Hive 2 is heaving, ten bars covered with bees, and there is honey on 9 through 11.", "hive=2 strength.word=strong strength.bars_of_bees=10 bars.9.honey=yes bars.10.honey=yes bars.11.honey=yes"},
		{"Hive 2 is heaving, ten bars covered with bees, and there is honey on two to three.", "hive=2 strength.word=strong strength.bars_of_bees=10 contents.honey=yes contents.honey.bars=2? contents.honey.bars_max=3"},
		{"Brood - eggs on bars 4 to 6, larvae on 5", "bars.4.eggs=yes bars.5.eggs=yes bars.5.open_brood=yes bars.6.eggs=yes"},
		{"To do: feed them. Bar 4 has eggs.", "bars.4.eggs=yes plans.feed=yes"},
	},
	// what is told in few words beside what was told before.
	"in brief": {
		{"Bar 4 two sealed queen cells. Pinched out both of them.", "bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=2 actions.cut_cells=yes actions.cut_cells.count=2 actions.cut_cells.bar=4"},
		{"The follower went back two bars.", "actions.move_follower=yes actions.move_follower.count=2 actions.move_follower.direction=back"},
		{"Follower was behind 5, now shifted back one bar to stand behind 6.", "follower.bar=5 actions.move_follower=yes actions.move_follower.count=1 actions.move_follower.to=6 actions.move_follower.direction=back"},
		{"Bar 3: 14 inches wide and 9 deep.", "bars.3.comb.width_mm=355.6 bars.3.comb.depth_mm=228.6"},
		{"Gave them a new queen with a red dot.", "queen.marked=yes queen.colour=red actions.requeen=yes"},
		{"Requeened today with a blue marked queen.", "queen.marked=yes queen.colour=blue actions.requeen=yes"},
		{"They are bringing in water but no pollen at all.", "incoming.water=yes incoming.pollen=no"},
		{"Gave the moor hive two more bars.", "hive=moor actions.add_bar=yes actions.add_bar.count=2"},
	},
	// what is told with its words turned about.
	"turned about": {
		{"Lime nectar they bring in.", "incoming.nectar=yes incoming.nectar.plant=lime"},
		{"Bar 4 is old comb. It was heavy with nectar.", "bars.4.comb.old=yes bars.4.nectar=yes? bars.4.nectar.amount=much"},
		{"Hive 3. Calm. Tomorrow she gets three litres of syrup.", "hive=3 temper.score=4 plans.feed=yes plans.feed.amount=3 plans.feed.unit=l plans.feed.what=syrup plans.feed.due=2026-05-15"},
		{"Brood is there in all stages, and there is no more robbing.", "contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes signs.robbing=no"},
		{"Book says a queenless colony is hot.", ""},
	},
	// what was done told behind what it was done to.
	"done to it": {
		{"Hive 3. Calm. They have eaten the syrup I gave them on Thursday.", "hive=3 temper.score=4 earlier.fed=yes earlier.fed.on=2026-05-07 earlier.fed.what=syrup"},
		{"The floor was open and I have shut that.", "floor=open actions.close_floor=yes"},
		{"Entrance is reduced, that's fine.", "entrance=reduced"},
		{"Hive 3. Calm. Bar 2 has honey. No mites seen. On 2 May I saw eggs on bar three, and last time I added two bars.", "hive=3 bars.2.honey=yes mites.method=seen mites.count=0 temper.score=4 earlier.eggs_seen=yes earlier.eggs_seen.on=2026-05-02 earlier.eggs_seen.bar=3 earlier.bar_added=yes earlier.bar_added.count=2"},
	},
	// bars told by where they went.
	"bars that went": {
		{"Two fresh bars went in behind 4.", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=4"},
		{"Two empty bars added.", "actions.add_bar=yes actions.add_bar.count=2"},
		{"Hive 2. A bar from hive 1 went in between 2 and 3.", "hive=2 actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.from_hive=1 actions.add_bar.to=2"},
		{"Hive 1. Bar 4 was carried over to hive 2.", "hive=1 actions.move_bar=yes actions.move_bar.bar=4 actions.move_bar.to_hive=2"},
		{"Hive 1. We carried bar 4 over to hive 2.", "hive=1 actions.move_bar=yes actions.move_bar.bar=4 actions.move_bar.to_hive=2"},
		{"Hive 1. Bar 7, sealed brood both sides, went across to the plum hive.", "hive=1 bars.7.capped_brood=yes bars.7.capped_brood.side=both actions.move_bar=yes actions.move_bar.bar=7 actions.move_bar.to_hive=plum"},
		{"Hive 1. Bar 4 I took down and carried to hive 2.", "hive=1 actions.move_bar=yes actions.move_bar.bar=4 actions.move_bar.to_hive=2"},
		{"Hive 3. Bar nine went in twelve days ago.", "hive=3 bars.9.placed=2026-05-02"},
		{"Bar 7 sealed brood throughout. Bar 8 honey. Eggs throughout.", "bars.7.capped_brood=yes bars.8.honey=yes contents.eggs=yes"},
		{"The brood goes from bar three right through to seven except for five.", "bars.3.brood=yes bars.4.brood=yes bars.6.brood=yes bars.7.brood=yes"},
		{"Bars 8 to 11, all but 10, hold nectar.", "bars.8.nectar=yes bars.9.nectar=yes bars.11.nectar=yes"},
		{"Bar 6 carried two sealed cells.", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=2"},
	},
	// what was looked for and not found, told behind its name.
	"in vain": {
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
	},
	// what is told of other people's hives, and of this one beside it.
	"somebody else's": {
		{"the neighbour down the lane has foulbrood, they say", ""},
		{"Rita rang to say hers had swarmed", ""},
		{"a beginner's colony swarmed on Monday", ""},
		{"grandad reckons he saw a queen cell in his", ""},
		{"the hive next door was not opened, though ants were all over it", ""},
		{"my cousin lost three colonies to foulbrood", ""},
		{"my mates lot have sacbrood, none in mine", "signs.sacbrood=no"},
		{"my aunt has mice but there are none here", "signs.mice=no"},
		{"Joan has seen drones in hers; no drones here", "drones=no"},
	},
	// bars left out of several, taken in with them, and named again.
	"bars": {
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
	},
	// what stands behind a label or a dash.
	"label": {
		{"Hive no.: 8\nPopulation: small", "hive=8 strength.word=weak"},
		{"Colony size: medium", "strength.word=moderate"},
		{"Treatment: oxalic acid", "actions.treat=yes actions.treat.what=oxalic acid"},
		{"Treatment: none", ""},
		{"Treatment: thymol on 1 June", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-06-01"},
		{"Feed: 1 kg fondant", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=kg actions.feed.what=fondant"},
		{"Plan: feed 1 kg fondant", "plans.feed=yes plans.feed.amount=1 plans.feed.unit=kg plans.feed.what=fondant"},
		{"Chalkbrood - 6, mice - none", "signs.chalkbrood=yes signs.chalkbrood.count=6 signs.mice=no"},
	},
	// a statement whose subject and verb are parted, or that leans on the
	// one before.
	"aside": {
		{"The queen, marked white, was on bar 3.", "queen.seen=yes queen.bar=3 queen.marked=yes queen.colour=white"},
		{"The queen, a big 2025 girl with no paint, strolled across bar 6.", "queen.seen=yes queen.bar=6 queen.year=2025 queen.marked=no"},
		{"queen on bar two, her dot is half gone but it's green", "queen.seen=yes queen.bar=2 queen.marked=yes queen.worn=yes queen.colour=green"},
		{"queen on bar two and bar three is pollen and it's green", "queen.seen=yes queen.bar=2 bars.3.pollen=yes"},
		{"The heath hive came to 31 kilos.", "hive=heath weight_kg=31"},
		{"The heath hive is heavy to heft.", "hive=heath stores.word=heavy"},
		{"The whole hive came to 31 kg.", "weight_kg=31"},
		{"I closed its floor and reduced its entrance.", "actions.close_floor=yes actions.reduce_entrance=yes"},
		{"on the scale its 31 kilos", "weight_kg=31"},
		{"Closed the entrance. Need to open it again on Sunday.", "actions.close_entrance=yes plans.open_entrance=yes plans.open_entrance.due=2026-05-17"},
		{"I'm closing the entrance.", "actions.close_entrance=yes"},
		{"the entrance is closed", "entrance=closed"},
		{"last opened on the fifth and we saw eggs then", "earlier.inspected=yes earlier.inspected.on=2026-05-05 earlier.eggs_seen=yes earlier.eggs_seen.on=2026-05-05"},
		{"might split them next week", "plans.split=yes? plans.split.due=2026-05-21"},
		{"might split them if they make cells", ""},
		{"Hazel pollen coming in, grey, and water too.", "incoming.pollen=yes incoming.pollen.plant=hazel incoming.pollen.colour=grey incoming.water=yes"},
		{"They were quiet until I reached the brood.", "temper.score=4"},
		{"a patch of larvae on bar four no bigger than a fist", "bars.4.open_brood=yes bars.4.open_brood.amount=little"},
		{"bar five lovely, it weighs a ton, full of honey", "bars.5.honey=yes bars.5.honey.cover=1"},
		{"bar six sealed brood but it's scattered, what we used to call shotgun", "bars.6.capped_brood=yes bars.6.capped_brood.pattern=patchy"},
		{"on bar five there were ants", "signs.ants=yes signs.ants.bar=5"},
		{"bar five two empty cups no charged cells", "bars.5.queen_cells.cup=yes bars.5.queen_cells.cup.count=2 bars.5.queen_cells.charged=no"},
		{"you've been very gentle girls", "temper.score=4"},
		{"The brood pattern is poor.", "brood_pattern=patchy"},
		{"The scale said 27 kg.", "weight_kg=27"},
		{"The weight was down to 22 kg.", "weight_kg=22"},
		{"We gave the colony two new bars.", "actions.add_bar=yes actions.add_bar.count=2"},
		{"Bar 9 I moved to the Sorrel hive.", "actions.move_bar=yes actions.move_bar.bar=9 actions.move_bar.to_hive=sorrel"},
		{"Bees on six of the bars, and the follower is behind the tenth.", "strength.bars_of_bees=6 follower.bar=10"},
		{"Bars 2 and 3 were crossed.", "bars.2.comb.cross=yes bars.3.comb.cross=yes"},
		{"A breeze got up.", "weather.wind=breezy"},
		{"two fifths of bar four is honey", "bars.4.honey=yes bars.4.honey.cover=0.4"},
		{"eggs on bar four, so she was here within three days", "bars.4.eggs=yes"},
		{"I was last there on 2 May, when I fed them", "earlier.fed=yes earlier.fed.on=2026-05-02"},
		{"The honey is still uncapped on bar 5.", "bars.5.honey=yes"},
		{"eggs in bar two, larvae in three, sealed in four", "bars.2.eggs=yes bars.3.open_brood=yes bars.4.capped_brood=yes"},
		{"eggs on bar two. The lid was sealed on bar four", "bars.2.eggs=yes"},
		{"pollen coming in grey I think it's bramble", "incoming.pollen=yes incoming.pollen.colour=grey incoming.pollen.plant=bramble?"},
		{"I reckon they swarmed", "earlier.swarmed=yes?"},
		{"found two cells on bar six, one of them sealed", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1"},
		{"one ought to feed in autumn", ""},
		{"bar three's got brood in it all sealed", "bars.3.capped_brood=yes"},
		{"bar one nothing but wood, bar two nothing but honey", "bars.1.comb.size=bare bars.2.honey=yes bars.2.honey.cover=1"},
		{"Brood on bars 2 and 3, all stages.", "bars.2.eggs=yes bars.2.open_brood=yes bars.2.capped_brood=yes bars.3.eggs=yes bars.3.open_brood=yes bars.3.capped_brood=yes"},
		{"There is a queen cup on bar 4, but nothing in it.", "bars.4.queen_cells.cup=yes bars.4.queen_cells.cup.count=1"},
		{"A quarter of bar 7 is drawn, bar 8 is drawn to about half.", "bars.7.comb.drawn=0.25 bars.8.comb.drawn=0.5"},
		{"The Sorrel hive stands at 28 kilos.", "hive=sorrel weight_kg=28"},
	},
	// what something is not, said once more before what it is.
	"not that at all": {
		{"queen on six with a red dot on her no it's not red at all it's blue", "queen.seen=yes queen.bar=6 queen.marked=yes? queen.colour=blue?"},
		{"bar 3 is nectar, no, that is not nectar, it's honey, and bar 4 is nectar", "bars.3.honey=yes? bars.4.nectar=yes"},
		{"no larvae on bar six no it's not six it's bar seven", "bars.7.open_brood=no?"},
	},
	// the follower that stays, and last numbers of lists misheard.
	"left where it was": {
		{"I meant to shift the follower but left it where it was, behind bar 11.", "follower.bar=11"},
		{"The follower stayed where it was, behind 9.", "follower.bar=9"},
		{"two to tree nectar and six and tin sealed brood with never a gap in it", "bars.2.nectar=yes bars.3.nectar=yes bars.6.capped_brood=yes bars.6.capped_brood.pattern=solid bars.10.capped_brood=yes bars.10.capped_brood.pattern=solid"},
		{"hive four is boiling over with bees, so tomorrow I'll throw in a bar", "hive=4 strength.word=strong plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-15"},
	},
	// how much there is on some of the bars just named, and the one of them that was seen to.
	"some of those bars": {
		{"honey on three four and five, heaps on four", "bars.3.honey=yes bars.4.honey=yes bars.4.honey.amount=much bars.5.honey=yes"},
		{"Bars 8 to 9 have nectar, only a little on 9.", "bars.8.nectar=yes bars.9.nectar=yes bars.9.nectar.amount=little"},
		{"bars three and four are crooked so I straightened three but left four", "bars.3.comb.straight=no bars.4.comb.straight=no actions.straighten=yes actions.straighten.bar=3"},
		{"bar six it's about a third drawn", "bars.6.comb.drawn=0.333"},
	},
	"a clean, a door and poor devils": {
		{"I gave their floor a good scrub.", "actions.clean_floor=yes"},
		{"Wasps are robbing the poor devils. I shut it up at the entrance.", "signs.wasps=yes signs.robbing=yes actions.close_entrance=yes"},
		{"they're working the lime there is nectar coming in and pollen coming in as well a white sort that's from the bramble", "incoming.nectar=yes incoming.nectar.plant=lime incoming.pollen=yes incoming.pollen.colour=white incoming.pollen.plant=bramble"},
	},
	// bars that came out, and what is said of the bar before.
	"came out, and the same": {
		{"Mould on bar 11, so that one came out.", "signs.mould=yes signs.mould.bar=11 actions.remove_bar=yes actions.remove_bar.bar=11"},
		{"Mould on bar 11, but that bar came out and went back in. The bees came out to look.", "signs.mould=yes signs.mould.bar=11"},
		{"Bar 4 larvae. Bar 6 is heavy with honey, and bar 7 the same.", "bars.4.open_brood=yes bars.6.honey=yes bars.6.honey.amount=much bars.7.honey=yes? bars.7.honey.amount=much"},
		{"It was 95 in the shade. Bar 3 is stuck to right wall, and on bar 4 the bees are hanging from it in chains.", "weather.temp_c=35 bars.3.comb.attached=wall bars.4.festooning=yes"},
		{"Bar 6 has eggs. The new lady was on it.", "bars.6.eggs=yes queen.seen=yes queen.bar=6"},
	},
	// what a hive is called, with an epithet that it is never without.
	"Old Tom": {
		{"Clover first, eggs on bar 4.\n\nOld Barney came next. He is weak, four seams.", "hive=clover bars.4.eggs=yes / hive=old barney strength.word=weak strength.bars_of_bees=4"},
	},
	// a number at the end of a sentence and another at the head of the next.
	"cut three. Two cups": {
		{"H5. Five sealed cells on bar 7, cut four. Three cups on bar 9.", "hive=5 bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=5 actions.cut_cells=yes actions.cut_cells.count=4 actions.cut_cells.bar=7 bars.9.queen_cells.cup=yes bars.9.queen_cells.cup.count=3"},
	},
	// what is no finding of this hive, and what tells of the colony as a whole.
	"of whom": {
		{"Hive 4. Eggs on bar 2. Rowena found wax moth in her own stock.", "hive=4 bars.2.eggs=yes"},
		{"Gossip of sacbrood is going round. There is chalkbrood at Gorse Bank, four miles away.", ""},
		{"Hive 4. On the 3rd the tray had 8 mites in 2 days. Nectar on bar 6.", "hive=4 bars.6.nectar=yes"},
		{"Thunder was growling behind us. She is slim as a wasp. We had our foulbrood inspection.", ""},
		{"They were cross as hornets, and I had a bad ten minutes. There was not one sting.", "temper.score=1 temper.stings=0"},
		{"The wasps have stayed away. Foulbrood test negative.", "signs.wasps=no signs.foulbrood=no"},
		{"Nine seams of bees. I'm calling that moderate. A few bees were out flying.", "strength.bars_of_bees=9 strength.word=moderate?"},
		{"The yard hive has nectar on bar 6 and is gentle.", "hive=yard bars.6.nectar=yes temper.score=4"},
		{"hive 2 ran out of icing sugar after the first lot weak", "hive=2 strength.word=weak"},
		{"In March the tray had 14 mites in 5 days. Word has it there is sacbrood about. Foulbrood is said to be in the next parish.", ""},
		{"Mice have been kept out. EFB check clear. Nobody took a sting.", "signs.mice=no signs.foulbrood=no temper.stings=0"},
		{"I checked for sacbrood and mice. Looked for wax moth, none.", "signs.wax_moth=no"},
		{"They have enough to be getting on with.", "stores.word=fair"},
		{"Thirteen combs are currently in use. I set out from the follower, which stands behind bar 13.", "bars_total=13 follower.bar=13"},
		{"Nectar in: lime and clover. Grey pollen is coming in, it's bound to be bramble.", "incoming.nectar=yes incoming.nectar.plant=lime, clover incoming.pollen=yes incoming.pollen.colour=grey incoming.pollen.plant=bramble?"},
	},
}

func TestManners(t *testing.T) { readSayings(t, manners) }

func readSayings(t *testing.T, by map[string][]saying) {
	t.Helper()
	for name, sayings := range by {
		for _, s := range sayings {
			readsAs(t, name, s.said, s.want)
		}
	}
}
