package parse

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"barwise/colony"
)

// TestNamings tells hives apart by the ways in which keepers call them. Each note is wanted
// as its hives, in order, with the bars of each.
func TestNamings(t *testing.T) {
	p := mustNew(t)
	for _, c := range []struct{ said, want string }{
		{"A: eggs on bar 3, calm.\nB: honey on bar 5, grumpy.", "a:3 / b:5"},
		{"A: BIAS b3-4. QS b5.\nB: QNS. Eggs b4.\nC: No eggs. 2 QC b6.", "a:3,4 / b:4 / c:6"},
		{"A - eggs on bar 3.\nB - honey on bar 5.", "a:3 / b:5"},
		{"A) eggs on bar 3.\nB) honey on bar 5.", "a:3 / b:5"},
		{"A. Eggs on bar 3.\nB. Honey on bar 5.", "a:3 / b:5"},
		{"A\nEggs on bar 3.\nB\nHoney on bar 5.", "a:3 / b:5"},
		{"Two hives, A and B. A has eggs on bar 3. B has honey on bar 5.", "a:3 / b:5"},
		{"Hives A and B. A: eggs on bar 3. B: honey on bar 5.", "a:3 / b:5"},
		{"No. 1: eggs on bar 3.\nNo. 2: honey on bar 5.", "1:3 / 2:5"},
		{"Number One has eggs on bar 3. Number Two has honey on bar 5.", "1:3 / 2:5"},
		{"I opened the blue one first. There were eggs on bar 3. Then the white one. Honey on bar 5.", "blue:3 / white:5"},
		{"The blue hive has eggs on bar 3. The white one has honey on bar 5.", "blue:3 / white:5"},
		{"North: eggs on bar 3. Temper steady.\n\nSouth: honey on bar 5. Temper edgy.", "north:3 / south:5"},
		{"Figures only today.\n\nNorth: eggs on bar 3.\n\nSouth: honey on bar 5.", "north:3 / south:5"},
		{"North had eggs on bar 3. South had honey on bar 5.", "north:3 / south:5"},
		{"Naomi\nEggs on bar 3.\nRuth\nHoney on bar 5.", "naomi:3 / ruth:5"},
		{"hive ruth eggs on bar three\nnaomi\nhoney on bar five", "ruth:3 / naomi:5"},
		{"ruth first eggs on bar three\nnow naomi honey on bar five", "ruth:3 / naomi:5"},
		{"hive ruth eggs on bar three now hive naomi honey on bar five", "ruth:3 / naomi:5"},
		{"Matilda has eggs on bar 3. The lemon tree mob have honey on bar 5.", "matilda:3 / lemon tree:5"},
		{"The plum tree lot are calm, eggs on bar 3. The gate lot are cross, honey on bar 5.", "plum tree:3 / gate:5"},
		{"parked the trailer so we can begin comet hive bar three eggs", "comet:3"},
		{"cold and grey copper hive bar three eggs", "copper:3"},
		{"now the pear tree hive bar three eggs", "pear tree:3"},
		{"now lady copper hive has eggs on bar four", "lady copper:4"},
		{"nettle hive eggs on bar three they hang all down the front cider hive honey on bar five", "nettle:3 / cider:5"},
		{"hive walrus under siege eggs on bar three hive bittern lying quiet honey on bar five", "walrus:3 / bittern:5"},
		{"short one tonight hive chervil eggs on bar three hive lovage bar five honey", "chervil:3 / lovage:5"},
		{"today we look in hive purple eggs on bar three", "purple:3"},
		{"the meadow hive walrus tusks on the lid eggs on bar three", "meadow:3"},
		{"left the hive tool in the shed eggs on bar three", ":3"},
		{"hive noisy eggs on bar three", ":3"},
		{"a hopeless hive eggs on bar three", ":3"},
		{"Update on the problem colony, hive 6. Eggs on bar 3.", "6:3"},
		{"The problem child, hive 6, has eggs on bar 3.", "6:3"},
		{"A quick look at my favourite, hive 2: eggs on bar 3.", "2:3"},
		{"Brigid swarmed on Friday. Eggs on bar 3.", "brigid:3"},
		{"Brigid has swarmed again. Eggs on bar 3 though.", "brigid:3"},
		{"Well, Brigid is booming. Eggs on bar 3.", "brigid:3"},
		{"Juno:\nExpected: eggs on bar 3.\nActual: none.\nVesta:\nHoney on bar 5.\nBacklog: harvest bar 5.", "juno:3 / vesta:5"},
		{"Juno:\nEggs on bar 3.\nKnown issue: bar 4 is crooked.\nVesta:\nHoney on bar 5.", "juno:3,4 / vesta:5"},
		{"The vestry hive. Eggs on bar 3. The Methodists' bees across the road have swarmed. Honey on bar 5.", "vestry:3,5"},
		{"Hive 21. Eggs on b3. Split done: b5 b6 b7 to hive 22. Honey on b16.", "21:3,16"},
		{"Hive 21. Eggs on b3. b5 to hive 22. Honey on b16.", "21:3,16"},
		{"H1. Eggs b3. Gave b5 to H2. Honey b6.", "1:3,6"},
		{"Boadicea is bursting, eggs on bar 3.", "boadicea:3"},
		{"You asked after Boadicea, so I opened her up. Eggs on bar 3.", "boadicea:3"},
		{"Went into Juniper. Eggs on bar 3. Then into Hazel, honey on bar 5.", "juniper:3 / hazel:5"},
		{"Started with Juniper. Eggs on bar 3. Moved on to Hazel. Honey on bar 5.", "juniper:3 / hazel:5"},
		{"Juniper\n- eggs on bar 3\n- calm\nHazel\n- honey on bar 5", "juniper:3 / hazel:5"},
		{"**Juniper**\nEggs on bar 3.\n**Hazel**\nHoney on bar 5.", "juniper:3 / hazel:5"},
		{"In hive one there are eggs on bar 3. In hive two there is honey on bar 5.", "1:3 / 2:5"},
		{"Top hive: eggs bar 3. Bottom hive: honey bar 5.", "top:3 / bottom:5"},
		{"The top hive has eggs on bar 3. The bottom one has honey on bar 5.", "top:3 / bottom:5"},
		{"The left-hand hive has eggs on bar 3. The right-hand one: honey on bar 5.", "left-hand:3 / right-hand:5"},
		{"The left hand one is calm, eggs on bar 3. In the right hand one the brood is patchy. Honey on bar 5.", "left hand:3 / right hand:5"},
		{"I did the upper hive and the lower hive. In the upper one there were eggs on bar 3. In the lower one it was bedlam. Honey on bar 5.", "upper:3 / lower:5"},
		{"The front hive is calm, eggs on bar 3. At the back hive I found honey on bar 5.", "front:3 / back:5"},
		{"The bottom hive is calm. Bar 3 has two queen cells, and at the bottom one that is sealed.", "bottom:3"},
		{"The pink hive and the grey hive. Pink first. Eggs on bar 3.\nGrey: honey on bar 5.", "pink:3 / grey:5"},
		{"I did the fig tree hive and the plum hive. Fig tree: eggs on bar 3. The plum: honey on bar 5.", "fig tree:3 / plum:5"},
		{"The white hive, then the top hive.\nWhite next. Eggs on bar 3.\nTop: honey on bar 5.", "white:3 / top:5"},
		{"The top hive is calm. Bar 4.\nHoney:\nTop edge and corners.", "top:4"},
		{"The yellow hive is calm, eggs on bar 3. Pollen: yellow. Honey on bar 5.", "yellow:3,5"},
		{"The big hive has eggs on bar 3. The little hive has honey on bar 5.", "big:3 / little:5"},
		{"Orchard: eggs on bar 3. / Meadow: honey on bar 5.", "orchard:3 / meadow:5"},
		{"Orchard (calm): eggs on bar 3\nMeadow (cross): honey on bar 5", "orchard:3 / meadow:5"},
		{"Orchard hive - 14 May - eggs on bar 3\nMeadow hive - 14 May - honey on bar 5", "orchard:3 / meadow:5"},
		{"Hive: Orchard\nEggs on bar 3\nHive: Meadow\nHoney on bar 5", "orchard:3 / meadow:5"},
		{"Colony: 4\nEggs on bar 3\nColony: 5\nHoney on bar 5", "4:3 / 5:5"},
		{"Did Thistle and Bramble tonight. Thistle: eggs on bar 3. Bramble: honey on bar 5.", "thistle:3 / bramble:5"},
		{"Thistle's got eggs on bar 3. Bramble's got honey on bar 5.", "thistle:3 / bramble:5"},
		{"Eggs on bar 3 in Thistle. In Bramble, honey on bar 5.", "thistle:3 / bramble:5"},
		{"Poor Thistle. No queen, honey on bar 3. Bramble, on the other hand, has eggs on bar 5.", "thistle:3 / bramble:5"},
		{"hive one eggs on bar three hive two honey on bar five", "1:3 / 2:5"},
		{"Visited all three. Biscuit was quiet, Treacle was cross, and Crumpet has honey on bar 8.", "biscuit: / treacle: / crumpet:8"},
		{"Opened the Red Kite first: eggs on bar 3. Then the Golden Plover, where sealed brood was on bar 4.", "red kite:3 / golden plover:4"},
		{"Basil, opened at noon: eggs on bar 3. Parsley, opened at one: honey on bar 5.", "basil:3 / parsley:5"},
		{"Barley; eggs bar 6; calm\nSpelt; honey bar 2; cross", "barley:6 / spelt:2"},
		{"As for Wensleydale, calm, brood on bar 6. As for Gouda, cross, honey on bar 7.", "wensleydale:6 / gouda:7"},
		{"One of mine, Hyacinth, had eggs on bar 3. The other, Marigold, had honey on bar 7.", "hyacinth:3 / marigold:7"},
		{"Ceres is calm with eggs on bar 3. Her neighbour Pomona is queenless with honey on bar 5.", "ceres:3 / pomona:5"},
		{"K4 calm, eggs on bar 3.\nK5 cross, honey on bar 5.", "k4:3 / k5:5"},
		{"Hive 3A: eggs on bar 3. Hive 3B: honey on bar 5.", "3a:3 / 3b:5"},
		{"In hive G eggs on bar 3, whereas in K there was honey on bar 5.", "g:3 / k:5"},
		{"The nuc has eggs on bar 3. The split is calm with honey on bar 5.", "nuc:3 / split:5"},
		{"Larch\n-----\nEggs on bar 3.\nPoplar\n-----\nBar 5 bare.", "larch:3 / poplar:5"},
		{"-- Walnut --\nEggs on bar 3.\n-- Chestnut --\nBar 5 bare.", "walnut:3 / chestnut:5"},
		{"right this is agnes\neggs on bar three\nright this is edna\nhoney on bar five", "agnes:3 / edna:5"},
		{"neptune eggs on bar three\nsaturn honey on bar five", "neptune:3 / saturn:5"},
		{"so ethel eggs on bar three and then over to maud honey on bar five", "ethel:3 / maud:5"},
		{"okay rosie you hold the brush this is hive three\neggs on bar four", "3:4"},
		{"Hooray, they are calm. Eggs on bar 3.", ":3"},
		{"Hive 3. Eggs on b3. Their old queen lives in Aldo's yard. Honey on b5.", "3:3,5"},
		{"hive a a few eggs on bar three\nhive b honey on bar five", "a:3 / b:5"},
		{"Hive A: sugar roll, 9 mites. Eggs on bar 3.\nHive B: honey on bar 5.", "a:3 / b:5"},
		{"Sycamore: eggs on 3.\nHornbeam: honey on 5. It got a bar out of hive 3.", "sycamore:3 / hornbeam:5"},
		{"The stable hive. Larvae on bar 3 and the one behind it. Honey on 9.", "stable:3,4,9"},
		{"Today: #1 eggs on bar 3. #2 honey on bar 5.", "1:3 / 2:5"},
		{"Last autumn Phil gave me a swarm, and I have named the colony Wharf. Eggs on bar 3.", "wharf:3"},
		{"First look with Priya from the club. I've christened my hive Teacup. Eggs on bar 3.", "teacup:3"},
		{"Opened the hive my daughter calls Biscuit. Eggs on bar 3.", "biscuit:3"},
		{"It's my second hive, so I'm calling it Deuce. Eggs on bar 3.", "deuce:3"},
		{"Garden diary: bees. I went into the hive we call Lantern. Eggs on bar 3.", "lantern:3"},
		{"Lantern (that's the hive by the gate) was calm. Eggs on bar 3.", "lantern:3"},
		{"Went through Old Bert today (this is the hive, not the landlord). Eggs on bar 3.", "old bert:3"},
		{"Lantern is what we call the hive. Eggs on bar 3.", "lantern:3"},
		{"They sit by the wall, they're down as Lantern in my notes. Eggs on bar 3.", "lantern:3"},
		{"Started with the ones by the wall, that's Lantern in the book. Eggs on bar 3.\n\nThen Dibble. Honey on bar 5.", "lantern:3 / dibble:5"},
		{"We've a dog called Biscuit. He hates the hive. Eggs on bar 3.", ":3"},
		{"The queen in this hive is called Beatrix. Eggs on bar 3.", ":3"},
		{"I called Phil and opened the hive. Eggs on bar 3.", ":3"},
		{"We got a puppy and called it Biscuit. The hive was calm, eggs on bar 3.", ":3"},
		{"I had a look at it with Priya. Eggs on bar 3.", ":3"},
		{"St George's Day. Only Lantern got opened. Eggs on bar 3. Lantern lives up to the name, but today they were sweet.", "lantern:3"},
		{"Lantern was calm. Eggs on bar 3. Walter never treats. Walter also buys queens. Honey on bar 5.", "lantern:3,5"},
		{"Lantern was calm. Eggs on bar 3. Idris's over the brook are robbing each other. Honey on bar 5.", "lantern:3,5"},
		{"Hive C7 first. Eggs on bar 3. Hive D2: honey on bar 5.", "c7:3 / d2:5"},
		{"Elder hive B3 honey", "elder:3"},
		{"I had put off Crumble for a week. They were cross. Eggs on bar 3.", "crumble:3"},
		{"Today Crumble earned its name. Cross from the start. Eggs on bar 3.", "crumble:3"},
		{"Where temper is concerned Crumble is my problem child. Eggs on bar 3.", "crumble:3"},
		{"Nora is my best friend. The bees were calm. Eggs on bar 3.", ":3"},
		{"When it comes to cake Nora is my best friend. The bees were calm. Eggs on bar 3.", ":3"},
		{"The hive by the gate has eggs on bar 3. The hive by the shed has honey on bar 5.", "gate:3 / shed:5"},
		{"The hive by the gate, Nipper, has eggs on bar 3.", "nipper:3"},
		{"The hive by the gate (hive 3) has eggs on bar 3.", "3:3"},
		{"I watched the hive by the entrance. Eggs on bar 3.", ":3"},
		{"The hive by the back door, known to all as Nipper, had eggs on bar 3.", "nipper:3"},
		{"TBH 2: eggs on bar 3.\nTBH 3: honey on bar 5.", "2:3 / 3:5"},
		{"TBH I saw eggs on bar 3.", ":3"},
		{"Writing up Gladys before bed. Eggs on bar 3.", "gladys:3"},
		{"Only got round to Gladys this evening. Eggs on bar 3.", "gladys:3"},
		{"It's Gladys's turn today. Eggs on bar 3.", "gladys:3"},
		{"Finally opened poor old Gladys. Eggs on bar 3.", "gladys:3"},
		{"We went round to Walter for tea. Eggs on bar 3.", ":3"},
		{"Wharf hive: eggs on bar 3. Depot hive: calm. Wharf had honey on bar 5 as well.", "wharf:3,5 / depot:"},
		{"Hive Stump is calm. Hive Dibble has eggs on bar 3. Stump again: honey on bar 5.", "stump:5 / dibble:3"},
		{"Maple hive: eggs on bar 3. Maple pollen coming in. Honey on bar 5.", "maple:3,5"},
		{"Hive 2 is calm. Number four is cross. Eggs on bar 3.", "2: / 4:3"},
		{"Hive 2 is calm. Eggs on bar 3. Number four is full of honey.", "2:3,4"},
		{"1) Bandit - eggs on bar 3\n2) Rascal - honey on bar 5", "bandit:3 / rascal:5"},
		{"1) Weather - sunny\n2) Bandit - eggs on bar 3\n3) Jobs - feed on Friday", "bandit:3"},
		{"Bandit → eggs on bar 3\nRascal → honey on bar 5", "bandit:3 / rascal:5"},
		{"Bandit > eggs on bar 3\nRascal > honey on bar 5", "bandit:3 / rascal:5"},
		{"Bandit 14/5. Eggs on bar 3.", "bandit:3"},
		{"We only have the one hive, Bandit. Eggs on bar 3.", "bandit:3"},
		{"The hive was calm, Derek. Eggs on bar 3.", ":3"},
		{"we're at number seven bar three eggs now into number eight bar five honey", "7:3 / 8:5"},
		{"bar number seven eggs", ":7"},
		{"Plot 22 hive. Eggs on bar 3.", "plot 22:3"},
		{"Long Acre: eggs on bar 3.\n\nShort Furlong: honey on bar 5.", "long acre:3 / short furlong:5"},
		{"Long story: the bees were calm. Eggs on bar 3.", ":3"},
		{"Short Version: eggs on bar 3, calm.", ":3"},
		{"off to the plot nine hive eggs on bar three then the plot ten hive honey on bar five", "plot 9:3 / plot 10:5"},
		{"I gave the afternoon to the west hive, which had been cross. Eggs on bar 3.", "west:3"},
		{"Hive 2. Eggs on bar 3. I devoted the last hour to the red hive. Honey on bar 5.", "2:3 / red:5"},
		{"The book says Lantern hive, so Lantern hive it is. Eggs on bar 3.", "lantern:3"},
	} {
		if got := hivesWithBars(p.Parse(&colony.Note{Text: c.said, Given: may14})); got != c.want {
			t.Errorf("%q reads %s, want %s", c.said, got, c.want)
		}
	}
}

// hivesWithBars are the hives of inspections, each with the numbers of its bars.
func hivesWithBars(read []colony.Inspection) string {
	var hives []string
	for i := range read {
		ins := &read[i]
		bars := make([]string, len(ins.Bars))
		for k, b := range ins.Bars {
			bars[k] = fmt.Sprint(b.Bar)
		}
		hives = append(hives, ins.Hive+":"+strings.Join(slices.Compact(bars), ","))
	}
	return strings.Join(hives, " / ")
}

// TestBeesOfOthers reads what is told of the bees of people, which is nothing of one's own hive.
func TestBeesOfOthers(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Hive 3 is calm. Old Mr Tibbs has varroa.", "hive=3 temper.score=4"},
		{"Hive 3 is calm. The Hendersons have wax moth.", "hive=3 temper.score=4"},
		{"Hive 3 is calm. Derek has nosema in two of his.", "hive=3 temper.score=4"},
		{"Hive 3 is calm. I went to help Nora, whose two are full of swarm cells.", "hive=3 temper.score=4"},
		{"Hive 3 is calm. Idris's across the brook are robbing each other.", "hive=3 temper.score=4"},
		{"hive three is calm\nnora's swarmed on tuesday\ni'll have to ask nora", "hive=3 temper.score=4"},
		{"hive nora is calm\nnora's swarmed on tuesday", "hive=nora temper.score=4 earlier.swarmed=yes earlier.swarmed.on=2026-05-12"},
		{"Hive 3 is calm. The combs have wax moth.", "hive=3 temper.score=4 signs.wax_moth=yes"},
		{"Mrs Danvers hive is calm, with eggs on bar 4.", "hive=mrs danvers temper.score=4 bars.4.eggs=yes"},
		{"Hive 3 is calm. Mr Tibbs had a look and found eggs on bar 4.", "hive=3 temper.score=4 bars.4.eggs=yes"},
	} {
		readsAs(t, "others", c.said, c.want)
	}
}
