package parse

import "testing"

// turnsOfPhrase are ways of telling in few words, as a recogniser writes them, without stops, and
// as they are typed.
var turnsOfPhrase = map[string][]saying{
	"a day and what it belongs to": {
		{"no drones now yesterday i gave them a litre of syrup", "drones=no earlier.fed=yes earlier.fed.on=2026-05-13 earlier.fed.amount=1 earlier.fed.unit=l earlier.fed.what=syrup"},
		{"no queen cells so far last sunday we fed them", "queen_cells.any=no earlier.fed=yes earlier.fed.on=2026-05-10"},
		{"i give them fondant in ten days i must inspect them", "actions.feed=yes? actions.feed.what=fondant plans.inspect=yes plans.inspect.due=2026-05-24"},
		{"i fed them on sunday i think", "earlier.fed=yes? earlier.fed.on=2026-05-10"},
		{"the queen was seen last time not found today", "queen.seen=no earlier.queen_seen=yes"},
		{"gotta put three more bars in on monday", "plans.add_bar=yes plans.add_bar.count=3 plans.add_bar.due=2026-05-18"},
		{"got to bar six and it has eggs", "bars.6.eggs=yes"},
	},
	"numbers": {
		{"bar nine comb two thirds drawn eggs on it", "bars.9.comb.drawn=0.667 bars.9.eggs=yes"},
		{"new comb two thirds drawn on bar nine", "bars.9.comb.new=yes bars.9.comb.drawn=0.667"},
		{"comb nine has eggs", "bars.9.eggs=yes"},
		{"moved bar twelve to eight no sorry to ten", "actions.move_bar=yes? actions.move_bar.bar=12 actions.move_bar.to=10"},
		{"moved bar twelve to eight no to ten", "actions.move_bar=yes? actions.move_bar.bar=12 actions.move_bar.to=10"},
		{"i move bar three to six sorry to seven", "actions.move_bar=yes? actions.move_bar.bar=3 actions.move_bar.to=7"},
		{"took out eleven and twelve", "actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=11,12"},
		{"harvested nine ten eleven follower moved to eight", "actions.harvest=yes actions.harvest.count=3 actions.harvest.bars=9,10,11 actions.move_follower=yes actions.move_follower.to=8"},
		{"moved the follower to nine sugar shake half a cup nine mites", "mites.method=sugar mites.count=9 mites.bees=300 actions.move_follower=yes actions.move_follower.to=9"},
	},
	"one thing behind the other": {
		{"stores light half a kilo fondant given swept floor", "stores.word=light actions.feed=yes actions.feed.amount=0.5 actions.feed.unit=kg actions.feed.what=fondant actions.clean_floor=yes"},
		{"has anybody been stung no no stings and the floor is open", "temper.stings=0 floor=open"},
		{"bar three some larvae feeders empty", "bars.3.open_brood=yes feeder=empty"},
	},
	"cups": {
		{"bar eight has one cup", "bars.8.queen_cells.cup=yes bars.8.queen_cells.cup.count=1"},
		{"bar eight there's just one cup nothing in it", "bars.8.queen_cells.cup=yes bars.8.queen_cells.cup.count=1"},
		{"bar eight there's a cup with an egg in it", "bars.8.queen_cells.charged=yes bars.8.queen_cells.charged.count=1"},
		{"from bar eight one cup of bees eleven mites", "mites.count=11 mites.method=seen"},
	},
	"what one comes for": {
		{"I'll come back on Friday and harvest bar 9.", "plans.harvest=yes plans.harvest.bar=9 plans.harvest.due=2026-05-15"},
		{"I'll come back on Friday.", "plans.inspect=yes plans.inspect.due=2026-05-15"},
		{"took out eleven and twelve and closed up", "actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=11,12"},
	},
	"what was meant": {
		{"eggs on bars six and seven no six and eight", "bars.6.eggs=yes? bars.8.eggs=yes?"},
		{"honey on bars six to ten no eight to ten", "bars.8.honey=yes? bars.9.honey=yes? bars.10.honey=yes?"},
		{"bar nine sealed blood i mean brood", "bars.9.capped_brood=yes"},
		{"granny says split them so remind me to do it on saturday", ""},
	},
	"bars put in for the bees": {
		{"i've put you in a new bar behind nine", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=9"},
		{"added two bars and i put them in after bar three", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=3"},
		{"they are calm and come friday we'll have another look", "temper.score=4 plans.inspect=yes plans.inspect.due=2026-05-15"},
		{"i'll inspect hive five on friday", "hive=5 plans.inspect=yes plans.inspect.due=2026-05-15"},
	},
	"how they bore it": {
		{"not a peep out of them", "temper.score=4"},
		{"they took no notice of me", "temper.score=4"},
	},
	"told shortly": {
		{"two bars i gave to the quince hive. eggs on bar three.", "bars.3.eggs=yes actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to_hive=quince"},
		{"bars six and seven are heavy with stores", "bars.6.honey=yes bars.6.honey.amount=much bars.7.honey=yes bars.7.honey.amount=much"},
		{"bar four queen no mark so i dabbed a green dot on her", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=green actions.mark_queen=yes"},
		{"took nine and ten off", "actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=9,10"},
		{"stings received three", "temper.stings=3"},
		{"the follower's sat tight behind nine", "follower.bar=9"},
		{"repeat the thymol in five days", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-19"},
		{"i shall repeat the wash next week", ""},
		{"Wind calm. 31 kg.", "weather.wind=calm weight_kg=31?"},
		{"Harvested two bars. 16 kg.", "actions.harvest=yes actions.harvest.count=2"},
		{"Follower back 1, one bar added.", "actions.move_follower=yes actions.move_follower.count=1 actions.move_follower.direction=back actions.add_bar=yes actions.add_bar.count=1"},
		{"Visit of the linden hive. Eggs on bar 2.", "hive=linden bars.2.eggs=yes"},
	},
	"all of those in hand": {
		{"Bars 10 to 12 were bare so I removed all three.", "bars.10.comb.size=bare bars.11.comb.size=bare bars.12.comb.size=bare actions.remove_bar=yes actions.remove_bar.count=3 actions.remove_bar.bars=10,11,12"},
		{"Bars 5 and 9 are stuck to the wall, I freed both.", "bars.5.comb.attached=wall bars.9.comb.attached=wall actions.free_comb=yes actions.free_comb.count=2 actions.free_comb.bars=5,9"},
		{"Bars 5 and 9 are bent, straightened both.", "bars.5.comb.straight=no bars.9.comb.straight=no actions.straighten=yes actions.straighten.count=2 actions.straighten.bars=5,9"},
		{"Bar 8 has old comb. Will take it out on Friday.", "bars.8.comb.old=yes plans.remove_bar=yes plans.remove_bar.bar=8 plans.remove_bar.due=2026-05-15"},
	},
	"by the way": {
		{"The comb on 7 has glued itself to the wall.", "bars.7.comb.attached=wall"},
		{"The sheep were dosed this morning. Bees calm.", "temper.score=4"},
		{"I dosed them with oxalic acid.", "actions.treat=yes actions.treat.what=oxalic acid"},
		{"The German one is short: the quince hive is queenless.", "hive=quince queenright=no"},
		{"The old wife was on bar 6, clipped.", "queen.seen=yes queen.bar=6 queen.clipped=yes"},
		{"there are eggs though on bar three", "bars.3.eggs=yes"},
		{"Two bars of sealed brood, less pollen than last time, calm.", "contents.capped_brood=yes contents.capped_brood.bars=2 contents.pollen=yes temper.score=4"},
		{"I treated myself to a cake. Bees calm.", "temper.score=4"},
		{"Medlar: QNS. Eggs on bar 3.\n\nQuince: calm. Eggs on bar 2.\n\nTeasel, which came from a friend, I requeened on 2 May. Larvae on bar 4.", "hive=medlar queen.seen=no bars.3.eggs=yes / hive=quince temper.score=4 bars.2.eggs=yes / hive=teasel earlier.requeened=yes earlier.requeened.on=2026-05-02 bars.4.open_brood=yes"},
		{"On Friday I'm going to treat myself to a cake and cut out the spare cells.", "plans.cut_cells=yes plans.cut_cells.due=2026-05-15"},
		{"Thymol on, 40 g. Bees calm.", "temper.score=4 actions.treat=yes actions.treat.what=thymol actions.treat.amount=40 actions.treat.unit=g"},
		{"The nest runs from b3 to b5.", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes"},
		{"sugar roll three hundred bees and i make that nine mites", "mites.method=sugar mites.count=9 mites.bees=300"},
	},
	"what they need": {
		{"It needs syrup. Bees calm.", "temper.score=4 plans.feed=yes plans.feed.what=syrup"},
		{"Needs fondant, will give it on Friday.", "plans.feed=yes plans.feed.what=fondant plans.feed.due=2026-05-15"},
		{"Needs a litre of syrup, bees calm.", "temper.score=4 plans.feed=yes plans.feed.what=syrup plans.feed.amount=1 plans.feed.unit=l"},
		{"Needs 2 bars, will put them in on Friday.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-15"},
		{"thymol for them in a fortnight", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-28"},
		{"a second round of thymol next week", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-21"},
		{"I need syrup from the shop.", ""},
		{"They had their first treatment on 6 May.", "earlier.treated=yes earlier.treated.on=2026-05-06"},
		{"They had a feed on Sunday.", "earlier.fed=yes earlier.fed.on=2026-05-10"},
	},
	"the queen on her way": {
		{"bar five is eggs and the queen slipped round the side", "bars.5.eggs=yes queen.seen=yes queen.bar=5"},
		{"on bar six the queen is scurrying about", "queen.seen=yes queen.bar=6"},
		{"bar seven is where the queen is", "queen.seen=yes queen.bar=7"},
		{"i wonder where the queen is", ""},
	},
}

func TestTurnsOfPhrase(t *testing.T) { readSayings(t, turnsOfPhrase) }
