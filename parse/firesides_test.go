package parse

import "testing"

// firesides are sentences as people write them by the fire, of others' ways and of what was found.
var firesides = map[string][]saying{
	"what was found on opening": {
		{"Last time I fed a litre of syrup, and the feeder was empty when I opened up.", "earlier.fed=yes earlier.fed.amount=1 earlier.fed.unit=l earlier.fed.what=syrup feeder=empty"},
		{"Last week I gave them two litres, but the feeder was half full when I looked.", "earlier.fed=yes earlier.fed.amount=2 earlier.fed.unit=l feeder=part"},
		{"Last time I fed them and the feeder was empty when I left.", "earlier.fed=yes"},
		{"Last time the feeder was empty when I looked.", ""},
	},
	"what others would do": {
		{"My uncle would kill such a colony, I try better: on Friday I will feed it.", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"My neighbour says they are doomed; I will feed them on Friday.", "plans.feed=yes plans.feed.due=2026-05-15"},
		{"He told me: on Friday I will feed them.", ""},
		{"Dad would split it if he could; on Sunday I will feed.", ""},
		{"Dad says they want room, and so I put a bar in.", "actions.add_bar=yes actions.add_bar.count=1"},
	},
	"so many behind a bar": {
		{"They had nine bars, so I added two, behind bar 9.", "actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.to=9"},
		{"I put another in after bar nine.", "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=9"},
		{"They have no room, I must hang one behind bar 10 on Friday.", "plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.to=10 plans.add_bar.due=2026-05-15"},
		{"I had two feeders and put one behind bar 10.", ""},
	},
	"the weather of a visit": {
		{"A, B and C today, cloudy and 16 degrees.\n\nA has eggs on bar 4. A was docile.\n\nB has no eggs. B was cross.\n\nC is calm.", "hive=a bars.4.eggs=yes temper.score=4 weather.sky=cloudy weather.temp_c=16 / hive=b contents.eggs=no temper.score=2 weather.sky=cloudy weather.temp_c=16 / hive=c temper.score=4 weather.sky=cloudy weather.temp_c=16"},
		{"Hive 2 and then hive 3, with a rest between. 16 degrees. Hive 2 has eggs. Hive 3 is calm.", "hive=2 contents.eggs=yes weather.temp_c=16 / hive=3 temper.score=4 weather.temp_c=16"},
		{"Hive 2: calm, sunny. Hive 3: 16 degrees, eggs.", "hive=2 temper.score=4 weather.sky=sunny / hive=3 contents.eggs=yes weather.temp_c=16"},
	},
	"bars that are there for something": {
		{"I've a bar to put in on Saturday, and I must not forget it.", "plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-16"},
		{"Plan: two new bars to go in next week.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-21"},
		{"Two bars are to go on at the weekend.", "plans.add_bar=yes plans.add_bar.count=2 plans.add_bar.due=2026-05-16"},
		{"Two bars to go in the freezer.", ""},
		{"I have ten bars to go through.", ""},
	},
	"a queen who comes out": {
		{"The queen was good enough to show herself.", "queen.seen=yes"},
		{"He was kind enough to show me round.", ""},
	},
	"what the glass said": {
		{"The sky was clear and the thermometer on the shed stood at seventeen.", "weather.sky=sunny weather.temp_c=17"},
		{"The mercury stood at 15 and the sky was blue.", "weather.sky=sunny weather.temp_c=15"},
		{"I broke the glass at 4.", ""},
	},
	"as it had been": {
		{"I opened the entrance, which had been reduced since October.", "actions.open_entrance=yes entrance=reduced"},
		{"Entrance reduced. I went to the shed, which was open.", "entrance=reduced"},
		{"Dead bees, forty by my count.", "signs.dead_bees=yes signs.dead_bees.count=40"},
		{"I shall go back to it in a fortnight.", "plans.inspect=yes plans.inspect.due=2026-05-28"},
		{"I went back to it.", ""},
		{"The bees were on six bars.", "strength.bars_of_bees=6"},
	},
	"how many they are": {
		{"Bees moderate in number.", "strength.word=moderate"},
		{"Bees few in number.", "strength.word=weak"},
		{"The colony is strong in numbers.", "strength.word=strong"},
		{"Combs in use: 12.", "bars_total=12"},
		{"Her laying is patchy.", "brood_pattern=patchy"},
		{"I saw the laying worker. Her laying slowed.", "signs.laying_worker=yes"},
	},
}

func TestFiresides(t *testing.T) { readSayings(t, firesides) }
