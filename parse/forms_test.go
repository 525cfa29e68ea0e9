package parse

import (
	"slices"
	"strings"
	"testing"

	"barwise/colony"
)

// TestForms reads what people fill in: answers behind a label, tables, lists by
// number.
func TestForms(t *testing.T) {
	for _, c := range []struct{ name, said, want string }{
		{"a letter denies", "Queen cells: N", "queen_cells.any=no"},
		{"a letter affirms and goes on", "Queen seen: Y, bar 5, white mark", "queen.seen=yes queen.bar=5 queen.marked=yes queen.colour=white"},
		{"a dash before the answer", "Eggs - no", "contents.eggs=no"},
		{"an equals sign before it", "Eggs=yes larvae=no", "contents.eggs=yes contents.open_brood=no"},
		{"a question mark before it", "Eggs? no. Larvae? yes", "contents.eggs=no contents.open_brood=yes"},
		{"ticks and crosses", "Eggs ✓ larvae ✗", "contents.eggs=yes contents.open_brood=no"},
		{"ticks and crosses before what they stand for", "Hive 2\n✓ larvae\n✗ queen (both sides checked)\n✗ wasps\n✓ queen cells: 2 capped, b7", "hive=2 bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=2 contents.open_brood=yes queen.seen=no signs.wasps=no"},
		{"a cell that goes on about the one before it", "Hive 3\nbar; comb; contents; remarks\n2; fully drawn; larvae; one side only\n4; half drawn; sealed brood; patchy", "hive=3 bars.2.open_brood=yes bars.2.open_brood.side=one bars.2.comb.drawn=1 bars.4.capped_brood=yes bars.4.capped_brood.pattern=patchy bars.4.comb.drawn=0.5"},
		{"a plus between bars", "b2 + b3 capped honey, b8 + b9 bare", "bars.2.capped_honey=yes bars.3.capped_honey=yes bars.8.comb.size=bare bars.9.comb.size=bare"},
		{"several pluses", "b5 nectar ++, b6 pollen+++. Stores ++", "bars.5.nectar=yes bars.5.nectar.amount=much bars.6.pollen=yes bars.6.pollen.amount=much stores.word=heavy"},
		{"short bars in a row", "h4\nb3 b4 b5 sealed brood\ngave b9 b10 to h6", "hive=4 bars.3.capped_brood=yes bars.4.capped_brood=yes bars.5.capped_brood=yes actions.move_bar=yes actions.move_bar.count=2 actions.move_bar.bars=9,10 actions.move_bar.to_hive=6"},
		{"an infinitive for a plan", "Q'less. To split on Friday. To cut cells on Sunday.", "queenright=no plans.split=yes plans.split.due=2026-05-15 plans.cut_cells=yes plans.cut_cells.due=2026-05-17"},
		{"nought of them", "Eggs: 0", "contents.eggs=no"},
		{"a no that is no answer", "eggs on bar 4, no, bar 5", "bars.5.eggs=yes?"},
		{"counted cells", "Queen cells: 2, sealed, bar 8", "bars.8.queen_cells.capped=yes bars.8.queen_cells.capped.count=2"},
		{"bars behind the noun", "Honey 3 bars, pollen 2 bars", "contents.honey=yes contents.honey.bars=3 contents.pollen=yes contents.pollen.bars=2"},
		{"a name behind its label", "Hive: Fig\nEggs: Y\n\nHive: Olive\nEggs: N", "hive=fig contents.eggs=yes / hive=olive contents.eggs=no"},
		// what clerks and note-takers write behind labels
		{"a pattern for each bar behind a label", "Brood: bar 3, spotty; bar 4, tight; bar 7, spotty.\nTemper: calm.", "bars.3.brood=yes bars.3.brood.pattern=patchy bars.4.brood=yes bars.4.brood.pattern=solid bars.7.brood=yes bars.7.brood.pattern=patchy temper.score=4"},
		{"how much on each bar behind a label", "Honey: bar 1, two thirds full; bar 2, a little; bar 9.", "bars.1.honey=yes bars.1.honey.cover=0.667 bars.2.honey=yes bars.2.honey.amount=little bars.9.honey=yes"},
		{"a side for each bar behind a label", "Eggs: b3, front; b4, both sides", "bars.3.eggs=yes bars.3.eggs.side=front bars.4.eggs=yes bars.4.eggs.side=both"},
		{"one bar holds more than the label", "Sealed brood: bars 5 and 6, even; bar 8, gappy, with drone brood", "bars.5.capped_brood=yes bars.5.capped_brood.pattern=solid bars.6.capped_brood=yes bars.6.capped_brood.pattern=solid bars.8.capped_brood=yes bars.8.capped_brood.pattern=patchy bars.8.drone_brood=yes"},
		{"brood of a stage behind a label", "Brood: eggs and a patch of larvae, bar 5; no sealed brood anywhere.", "bars.5.eggs=yes bars.5.open_brood=yes bars.5.open_brood.amount=little contents.capped_brood=no"},
		{"short bars in a row with their pattern", "CB b4 b5 patchy. E b6", "bars.4.capped_brood=yes bars.4.capped_brood.pattern=patchy bars.5.capped_brood=yes bars.5.capped_brood.pattern=patchy bars.6.eggs=yes"},
		{"a test is no hive", "Hawthorn hive.\nRope test: bars 3 and 6, no ropy larva.\nLarval sample: sent off.\nTemper: calm.", "hive=hawthorn signs.ropy_larva=no signs.ropy_larva.bars=3,6 temper.score=4"},
		{"a label for the colony", "Hawthorn hive.\nColony: strong.\nDone: united Bramley into this hive.", "hive=hawthorn strength.word=strong actions.unite=yes actions.unite.from_hive=bramley"},
		{"cells counted behind short bars", "capped cells: b2 x3, b6 x1", "bars.2.queen_cells.capped=yes bars.2.queen_cells.capped.count=3 bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1"},
		{"cells counted in brackets", "supersedure cells on b4 (2) and b5 (1)", "bars.4.queen_cells.any=yes bars.4.queen_cells.any.count=2 bars.4.queen_cells.any.kind=supersedure bars.5.queen_cells.any=yes bars.5.queen_cells.any.count=1 bars.5.queen_cells.any.kind=supersedure"},
		{"a cross before the cells", "b8 ×2 charged swarm cells, b9 x4 cups", "bars.8.queen_cells.charged=yes bars.8.queen_cells.charged.count=2 bars.8.queen_cells.charged.kind=swarm bars.9.queen_cells.cup=yes bars.9.queen_cells.cup.count=4"},
		{"a stage behind the cells and their bar last", "Queen cells: three supersedure cells, capped, bar 9. Two swarm cells, hatched, bar 2.", "bars.9.queen_cells.capped=yes bars.9.queen_cells.capped.count=3 bars.9.queen_cells.capped.kind=supersedure bars.2.queen_cells.emerged=yes bars.2.queen_cells.emerged.count=2 bars.2.queen_cells.emerged.kind=swarm"},
		{"a kind before a short bar", "QCs: 3 sealed emergency b6", "bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=3 bars.6.queen_cells.capped.kind=emergency"},
		{"a cup behind the label for cells", "Queen cells: 1 cup, b4", "bars.4.queen_cells.cup=yes bars.4.queen_cells.cup.count=1"},
		{"the queen here on the bar before", "b4 larvae and eggs. Queen here, green dot\nb5 honey", "bars.4.open_brood=yes bars.4.eggs=yes queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=green bars.5.honey=yes"},
		{"a queen marked today", "Queen: seen, bar 2; unmarked; marked yellow.\nEggs: present.", "queen.seen=yes queen.bar=2 queen.marked=yes queen.colour=yellow actions.mark_queen=yes contents.eggs=yes"},
		{"a queen clipped today", "Queen: on bar 8, red mark, clipped today.", "queen.seen=yes queen.bar=8 queen.marked=yes queen.colour=red queen.clipped=yes actions.clip_queen=yes"},
		{"a queen that is marked and clipped", "Queen: on bar 8, marked red, clipped.", "queen.seen=yes queen.bar=8 queen.marked=yes queen.colour=red queen.clipped=yes"},
		{"a queen seen later", "Queen: clipped today; seen later, bar 3; green mark.", "actions.clip_queen=yes queen.clipped=yes queen.seen=yes queen.bar=3 queen.marked=yes queen.colour=green"},
		{"comb told behind what else the bar has", "Bar 11: festooning; fresh white comb, one third built; nectar.", "bars.11.festooning=yes bars.11.comb.new=yes bars.11.comb.drawn=0.333 bars.11.nectar=yes"},
		{"a comb that fell and was taken out", "b10 collapsed when I turned it, took it out", "bars.10.comb.broken=yes actions.remove_bar=yes actions.remove_bar.bar=10"},
		{"inches before another word", "b12 5 × 3 in fresh comb", "bars.12.comb.width_mm=127 bars.12.comb.depth_mm=76.2 bars.12.comb.new=yes"},
		{"a fixture of another hive", "H2 calm.\nH5 weak.\nreduce H2 entrance on Sunday", "hive=2 temper.score=4 plans.reduce_entrance=yes plans.reduce_entrance.due=2026-05-17 / hive=5 strength.word=weak"},
		{"a floor of another hive", "H2 calm.\nH5 weak. Cleaned H2 floor. No eggs.", "hive=2 temper.score=4 actions.clean_floor=yes / hive=5 strength.word=weak contents.eggs=no"},
		{"a crossed deed", "Fed today ✗. Bars added: no. Treated ✗. Feeder empty.", "feeder=empty"},
		{"what was not done on a day gone by", "Didn't treat them on Tuesday. Not fed last Sunday.", "earlier.treated=no earlier.treated.on=2026-05-12 earlier.fed=no earlier.fed.on=2026-05-10"},
		{"what he would not do", "He would not feed them on Sunday.", ""},
		{"in for what comes in", "In: water ✓, nectar (clover), pollen orange", "incoming.water=yes incoming.nectar=yes incoming.nectar.plant=clover incoming.pollen=yes incoming.pollen.colour=orange"},
		{"a sign counted under the lid", "wax moth 4 under lid", "signs.wax_moth=yes signs.wax_moth.count=4"},
		{"cells opened and counted", "H7: drone cells opened 30, 4 mites", "hive=7 mites.method=brood mites.cells=30 mites.count=4"},
		{"short words for strength", "H1 med strength. H2: av strength. H3, low strength.", "hive=1 strength.word=moderate / hive=2 strength.word=moderate / hive=3 strength.word=weak"},
		{"marked headings", "# Medlar\n- b4 eggs\n## Queen\n- not seen\n# Damson\n- calm", "hive=medlar bars.4.eggs=yes queen.seen=no / hive=damson temper.score=4"},
		{"headings between signs", "== Medlar ==\nno eggs\n== To do ==\nadd 2 bars", "hive=medlar contents.eggs=no plans.add_bar=yes plans.add_bar.count=2"},
		{"marks that head nothing", "#3 eggs\n#4 eggs\n#5 honey\n# Hive 8 (allotment)\ncalm", "hive=8 bars.3.eggs=yes bars.4.eggs=yes bars.5.honey=yes temper.score=4"},
		{"a table of bars", "Hive 7\nbar | brood | stores\n5 | capped, solid | honey\n6 | | pollen", "hive=7 bars.5.capped_brood=yes bars.5.capped_brood.pattern=solid bars.5.honey=yes bars.6.pollen=yes"},
		{"a table of hives", "hive\tqueen\teggs\n1\tseen\tyes\n2\tnot seen\tno", "hive=1 queen.seen=yes contents.eggs=yes / hive=2 queen.seen=no contents.eggs=no"},
		{"a drawn table", "Hive 2\n| bar | content |\n|---|---|\n| 1 | honey |\n| 2 | pollen |", "hive=2 bars.1.honey=yes bars.2.pollen=yes"},
		{"a list by number, from the back", "Hive 3\n14 bare\n13 just started\n12 nectar", "hive=3 bars.12.nectar=yes bars.13.comb.size=started bars.14.comb.size=bare"},
		{"a list with full stops", "Hive 3\n1. honey, capped\n2. eggs/larvae\n3. new comb, palm sized", "hive=3 bars.1.capped_honey=yes bars.2.eggs=yes bars.2.open_brood=yes bars.3.comb.size=small bars.3.comb.new=yes"},
		{"paragraphs with full stops", "1. Eggs: bars 4 and 5\n2. Nectar coming in\n3. Stores: fair", "bars.4.eggs=yes bars.5.eggs=yes incoming.nectar=yes stores.word=fair"},
		{"a list with number signs", "Hive 3\n#1-2 honey\n#3 pollen\n#4 eggs", "hive=3 bars.1.honey=yes bars.2.honey=yes bars.3.pollen=yes bars.4.eggs=yes"},
		{"counts that fall by chance", "Hive 3\n5 frames of bees\n4 frames of brood\n3 frames of honey", "hive=3 contents.brood=yes contents.brood.bars=4 contents.honey=yes contents.honey.bars=3 strength.bars_of_bees=5"},
		{"columns of a comb's sides", "Hive 4\nbar | front | back\n1 | pollen | pollen\n2 | eggs, patchy | larvae 30%\n3 | | nectar", "hive=4 bars.1.pollen=yes bars.1.pollen.side=both bars.2.eggs=yes bars.2.eggs.side=front bars.2.eggs.pattern=patchy bars.2.open_brood=yes bars.2.open_brood.side=back bars.2.open_brood.cover=0.3 bars.3.nectar=yes bars.3.nectar.side=back"},
		{"columns of sides by letter", "Hive 4\nbar\tside A\tside B\n5\teggs\tpollen", "hive=4 bars.5.eggs=yes bars.5.eggs.side=one bars.5.pollen=yes bars.5.pollen.side=one"},
		{"names in lower case on lines of their own", "breezy\nrowan:\na weak colony, 4 seams\ngave b7 to aspen\naspen:\nb2 nectar\nadded 1 bar from rowan", "hive=rowan weather.wind=breezy strength.word=weak strength.bars_of_bees=4 actions.move_bar=yes actions.move_bar.bar=7 actions.move_bar.to_hive=aspen / hive=aspen weather.wind=breezy bars.2.nectar=yes actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.from_hive=rowan"},
		{"one name in lower case at the head", "hazel:\nhazel pollen coming in\nb3 eggs", "hive=hazel incoming.pollen=yes incoming.pollen.plant=hazel bars.3.eggs=yes"},
		{"lines of their own that name no hive", "eggs on bar 2\ngear:\nfed 1 l syrup", "bars.2.eggs=yes actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup"},
		{"a hive beside a well", "The well hive is weak. It is doing well. Well, the barn hive is strong.", "hive=well strength.word=weak / hive=barn strength.word=strong"},
		{"cells counted by bar with no comma", "open emergency cells, 2 on b5 1 on b7; a cup on b8 and two on b9", "bars.5.queen_cells.charged=yes bars.5.queen_cells.charged.count=2 bars.5.queen_cells.charged.kind=emergency bars.7.queen_cells.charged=yes bars.7.queen_cells.charged.count=1 bars.7.queen_cells.charged.kind=emergency bars.8.queen_cells.cup=yes bars.8.queen_cells.cup.count=1 bars.9.queen_cells.cup=yes bars.9.queen_cells.cup.count=2"},
		{"stages before their bars", "Hive | queen | brood\nIvy | seen, bar 4 | eggs bars 2-3, sealed bar 6", "hive=ivy queen.seen=yes queen.bar=4 bars.2.eggs=yes bars.3.eggs=yes bars.6.capped_brood=yes"},
		{"a label of what is past", "Last visit: queen seen, bar 6, 3 May\nQueen: not seen", "earlier.queen_seen=yes earlier.queen_seen.bar=6 earlier.queen_seen.on=2026-05-03 queen.seen=no"},
		{"names at the heads of lines", "Maple - BIAS, calm.\nRowan - no eggs.", "hive=maple contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes temper.score=4 / hive=rowan contents.eggs=no"},
		{"bars counted down", "b6-b4 sealed brood", "bars.4.capped_brood=yes bars.5.capped_brood=yes bars.6.capped_brood=yes"},
		{"a form in two columns", "Hive\tPlum bank\nWeather\tsunny, 19 C\nBar 3\teggs\nTemper\tcalm", "hive=plum bank weather.sky=sunny weather.temp_c=19 bars.3.eggs=yes temper.score=4"},
		{"a table whose first column names hives", "Hive\tNotes\n4\teggs on bar 2\n5\tno eggs", "hive=4 bars.2.eggs=yes / hive=5 contents.eggs=no"},
		{"a name of two words behind its label", "Hive: Mill stream, calm\nBar 2: honey", "hive=mill stream temper.score=4 bars.2.honey=yes"},
		{"a heading of a paragraph", "Olive hive\n\nBrood and stores\nBar 4 is one third full of nectar, bar 5 is bare.", "hive=olive bars.4.nectar=yes bars.4.nectar.cover=0.333 bars.5.comb.size=bare"},
		{"a word asked for", "Stores? Heavy. Feeder? Empty", "stores.word=heavy feeder=empty"},
		{"a label's content with shares", "Sealed brood: bar 3 30%, bar 4 80%", "bars.3.capped_brood=yes bars.3.capped_brood.cover=0.3 bars.4.capped_brood=yes bars.4.capped_brood.cover=0.8"},
		{"a deed of today answered", "Entrance reduced today: yes", "actions.reduce_entrance=yes"},
		{"short days at the end of an order", "todo feed sat, add a bar wed", "plans.feed=yes plans.feed.due=2026-05-16 plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-20"},
		{"the sun at the end of an order", "Feed syrup, Sun.", "plans.feed=yes plans.feed.what=syrup plans.feed.due=2026-05-17"},
		{"the sun at the end of the weather", "19 C, sun. Add a bar.", "weather.temp_c=19 weather.sky=sunny plans.add_bar=yes plans.add_bar.count=1"},
		{"days as fractions behind deeds", "treated 2/5, fed 10/5", "earlier.treated=yes earlier.treated.on=2026-05-02 earlier.fed=yes earlier.fed.on=2026-05-10"},
		{"orders without a day", "Hive 4. Calm. Add two bars. Check for queen cells.\nReduce entrance.", "hive=4 temper.score=4 plans.add_bar=yes plans.add_bar.count=2 plans.inspect=yes plans.reduce_entrance=yes"},
		{"nouns that are no orders", "Harvest, none. Check eggs: none. Drop 18 in 3 days.", "contents.eggs=no mites.method=drop mites.count=18 mites.days=3"},
		{"what is told of today behind its label", "Today: queen on bar 4, white dot.", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=white"},
		{"deeds done to none", "Left the cells alone and cut out none of them. Added no bars.", ""},
		{"deeds not done all year", "Not treated this year, not fed this spring.", "earlier.treated=no earlier.fed=no"},
		{"bars with nothing but how much and where", "Eggs b5 (both sides), b6 (one side). Chalkbrood b7 (few), b8.", "bars.5.eggs=yes bars.5.eggs.side=both bars.6.eggs=yes bars.6.eggs.side=one signs.chalkbrood=yes signs.chalkbrood.bars=7,8"},
		{"what is good enough for the keeper", "There were eggs on bar 3 and that was good enough for me.", "bars.3.eggs=yes"},
		{"signs close behind letters", "H4: Q+, E+, L-. b4 E+L", "hive=4 queen.seen=yes contents.eggs=yes contents.open_brood=no bars.4.eggs=yes bars.4.open_brood=yes"},
		{"a queen affirmed", "Queen: yes, bar 7\nEggs: yes", "queen.seen=yes queen.bar=7 contents.eggs=yes"},
		{"bars in brackets", "QCs: 2 charged (b5), 1 capped (b6). Eggs (b3), sealed brood (7, 8)", "bars.5.queen_cells.charged=yes bars.5.queen_cells.charged.count=2 bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1 bars.3.eggs=yes bars.7.capped_brood=yes bars.8.capped_brood=yes"},
		{"a place behind a comma that is a fixture elsewhere", "b4 drone brood, bottom. Floor closed", "bars.4.drone_brood=yes bars.4.drone_brood.place=bottom floor=closed"},
		{"a queen in a bar's list", "Bar 5: eggs; queen, green dot", "bars.5.eggs=yes queen.seen=yes queen.bar=5 queen.marked=yes queen.colour=green"},
		{"comb told before it is empty", "Bar 10: dark old comb; empty", "bars.10.comb.old=yes bars.10.empty=yes"},
		{"a year behind a semicolon", "Queen: seen; raised in 2025", "queen.seen=yes queen.year=2025"},
		{"a follower told twice", "Follower: found behind bar 12; moved to bar 10", "follower.bar=12 actions.move_follower=yes actions.move_follower.to=10"},
		{"what could not be told", "b7 sealed brood, b8 nectar or old syrup, couldn't tell which", "bars.7.capped_brood=yes"},
		{"what might be read up on", "I might read up on the sugar roll.", ""},
		{"others' hives without an apostrophe", "my flatmates hive swarmed. The shed hive is calm.", "hive=shed temper.score=4"},
		{"a question mark of doubt", "b6 eggs?", "bars.6.eggs=yes?"},
		{"none counted", "Q seen b5, QCs 0, calm", "queen.seen=yes queen.bar=5 queen_cells.any=no temper.score=4"},
		{"a follower's new place without the word bar", "Follower at 10, moved to 12", "follower.bar=10 actions.move_follower=yes actions.move_follower.to=12"},
		{"bars counted and named", "9 bars brood (b3–b5)", "bars.3.brood=yes bars.4.brood=yes bars.5.brood=yes"},
		{"a range that opens", "4-6 brood. 7 half drawn.", "bars.4.brood=yes bars.5.brood=yes bars.6.brood=yes bars.7.comb.drawn=0.5"},
		{"a comma for a point", "fed 2,5 litres of syrup; bars 1,5 and 7 honey", "actions.feed=yes actions.feed.amount=2.5 actions.feed.unit=l actions.feed.what=syrup bars.1.honey=yes bars.5.honey=yes bars.7.honey=yes"},
		{"a size behind a short name", "b8 20 x 15 cm", "bars.8.comb.width_mm=200 bars.8.comb.depth_mm=150"},
		{"inches behind the word comb", "bar 6 comb 5 inches deep", "bars.6.comb.depth_mm=127"},
		{"a dash behind a hive's number", "Hive 5 - 27.5 kg on the scale", "hive=5 weight_kg=27.5"},
		{"a letter behind what it stands beside", "b2 old comb, 2/3 H. b3 drawn, N. b4 full of cap H. b5 P+N", "bars.2.comb.old=yes bars.2.honey=yes bars.2.honey.cover=0.667 bars.3.comb.drawn=1 bars.3.nectar=yes bars.4.capped_honey=yes bars.4.capped_honey.cover=1 bars.5.pollen=yes bars.5.nectar=yes"},
		{"a letter behind a label", "Eggs N, larvae Y. Breezy, N.", "contents.eggs=no contents.open_brood=yes weather.wind=breezy"},
		{"a count behind a dash", "b9 - 2 cups, larvae", "bars.9.queen_cells.cup=yes bars.9.queen_cells.cup.count=2 bars.9.open_brood=yes"},
		{"a letter behind bars that are written out", "Bars 2-4: H\nBar 5 E, bar 6 P", "bars.2.honey=yes bars.3.honey=yes bars.4.honey=yes bars.5.eggs=yes bars.6.pollen=yes"},
		{"cells by kind and bar", "QC 2 open on b5, 1 sealed on b6", "bars.5.queen_cells.charged=yes bars.5.queen_cells.charged.count=2 bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=1"},
		{"bars told downwards with a spaced dash", "Bars 9 - 7: capped honey", "bars.7.capped_honey=yes bars.8.capped_honey=yes bars.9.capped_honey=yes"},
		{"a share behind a dash", "b12 - 1/2 drawn / honey", "bars.12.comb.drawn=0.5 bars.12.honey=yes"},
		{"a count behind a slash", "bees - edgy / 2 stings", "temper.score=2 temper.stings=2"},
		{"a day of a month that is no share", "Fed 5/13. Going to split 28/5.", "earlier.fed=yes earlier.fed.on=2026-05-13 plans.split=yes plans.split.due=2026-05-28"},
		{"bars and nothing else", "larvae bars 6 and 7 only. Eggs bar 6 too.", "bars.6.open_brood=yes bars.7.open_brood=yes bars.6.eggs=yes"},
		{"how much behind the bar", "Nectar: bar 11, lots", "bars.11.nectar=yes bars.11.nectar.amount=much"},
		{"a bare word for a side", "bar 4 - eggs front / pollen back", "bars.4.eggs=yes bars.4.eggs.side=front bars.4.pollen=yes bars.4.pollen.side=back"},
		{"put back", "bar 4: honey. Put it straight back.", "bars.4.honey=yes"},
		{"it for a floor with something on it", "Floor: 40 dead bees, cleaned it", "signs.dead_bees=yes signs.dead_bees.count=40 actions.clean_floor=yes"},
		{"same for it", "Entrance wide open, reduced same", "entrance=open actions.reduce_entrance=yes"},
		{"a label for what comes in", "Coming in: nectar (lime), pollen (grey)", "incoming.nectar=yes incoming.nectar.plant=lime incoming.pollen=yes incoming.pollen.colour=grey"},
		{"bars counted behind a label", "Brood: 6 bars", "contents.brood=yes contents.brood.bars=6"},
		{"an answer that ends a sentence", "Ants yes, mice no. 3 stings.", "signs.ants=yes signs.mice=no temper.stings=3"},
		{"a measure taken back", "Fed 2 l syrup, no, 3 l", "actions.feed=yes? actions.feed.amount=3 actions.feed.unit=l actions.feed.what=syrup"},
		{"a hive of a person", "Hive 8 strong. Hive 9 of Mr. Alder has chalkbrood.", "hive=8 strength.word=strong"},
		{"an event that only dates", "hive 5 / since the split\nbees calm", "hive=5 temper.score=4"},
		{"a short day behind a comma", "To do: clean floor, Sat.", "plans.clean_floor=yes plans.clean_floor.due=2026-05-16"},
		{"a letter for days", "drop board 21 mites / 3 d", "mites.method=drop mites.count=21 mites.days=3"},
		{"a plus that joins", "4 + 9 eggs", "bars.4.eggs=yes bars.9.eggs=yes"},
		{"a pattern of one of several", "capped brood on bars 3 to 5 (patchy on 5)", "bars.3.capped_brood=yes bars.4.capped_brood=yes bars.5.capped_brood=yes bars.5.capped_brood.pattern=patchy"},
		{"a follower without a verb", "follower back two bars, now behind bar 9", "actions.move_follower=yes actions.move_follower.count=2 actions.move_follower.direction=back actions.move_follower.to=9"},
		{"bars counted up behind one noun", "sealed brood bar 4 5 6.", "bars.4.capped_brood=yes bars.5.capped_brood=yes bars.6.capped_brood=yes"},
		{"bars by their order", "The first comb is honey. The second, pollen. The third and fourth have sealed brood.", "bars.1.honey=yes bars.2.pollen=yes bars.3.capped_brood=yes bars.4.capped_brood=yes"},
		{"bars by their order, dictated", "first bar honey second one's got pollen and the third eggs", "bars.1.honey=yes bars.2.pollen=yes bars.3.eggs=yes"},
		{"an order of something else", "first bar honey, second time lucky, pollen", "bars.1.honey=yes bars.1.pollen=yes"},
		{"one letter behind a short name", "b2 P; b6 half N; b7 H, top; b8 L, few E", "bars.2.pollen=yes bars.6.nectar=yes bars.6.nectar.cover=0.5 bars.7.honey=yes bars.7.honey.place=top bars.8.open_brood=yes bars.8.eggs=yes bars.8.eggs.amount=little"},
		{"a side in digits", "b5 CB 1 side, E other side", "bars.5.capped_brood=yes bars.5.capped_brood.side=one bars.5.eggs=yes bars.5.eggs.side=one"},
		{"slashes that part", "Hive 2: strong/bees on 9 bars. Q seen b4/yellow dot/not clipped", "hive=2 strength.word=strong strength.bars_of_bees=9 queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=yellow queen.clipped=no"},
		{"a short day behind its label", "To do: Sat feed them", "plans.feed=yes plans.feed.due=2026-05-16"},
		{"a short word for the sky", "Weather: Sun and cloud", "weather.sky=cloudy"},
		{"a form of a numbered hive", "Hive no. 12\nSky: overcast\nWind: calm\nDisease: none", "hive=12 weather.sky=overcast weather.wind=calm"},
		{"a size in inches behind comb", "b10 - comb 8 in wide, 5 in deep", "bars.10.comb.width_mm=203.2 bars.10.comb.depth_mm=127"},
		{"a bar moved to a lower place", "moved b9 to 6", "actions.move_bar=yes actions.move_bar.bar=9 actions.move_bar.to=6"},
		{"labels on lines of their own", "temper\nbit grumpy\nentrance\nwide open\nany queen cells\nnone", "temper.score=2 entrance=open queen_cells.any=no"},
		{"a heading that asks nothing", "Feeder\nBar 4 honey", "bars.4.honey=yes"},
		{"shorthand for stages", "E b3, L b4, no E b5", "bars.3.eggs=yes bars.4.open_brood=yes bars.5.eggs=no"},
	} {
		readsAs(t, c.name, c.said, c.want)
	}
}

// TestAbbreviations reads words that are cut short, with a full stop that ends no
// sentence, and leaves alone what ends one.
func TestAbbreviations(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"Hv. 9. Q. seen b. 3. B. 5: cap. br., solid. B. 6, 7: hon. & nec., both s.", "hive=9 queen.seen=yes queen.bar=3 bars.5.capped_brood=yes bars.5.capped_brood.pattern=solid bars.6.honey=yes bars.6.honey.side=both bars.6.nectar=yes bars.6.nectar.side=both bars.7.honey=yes bars.7.honey.side=both bars.7.nectar=yes bars.7.nectar.side=both"},
		{"Hv. D. Str. weak, 4 seams of bees. Ent. reduced.", "hive=d strength.word=weak strength.bars_of_bees=4 entrance=reduced"},
		{"Hive B. 3 bars of brood.", "hive=b contents.brood=yes contents.brood.bars=3"},
		{"B. 11: op. br., larv. at edge. B. 12: dr. br. at bot.", "bars.11.open_brood=yes bars.11.open_brood.place=edge bars.12.drone_brood=yes bars.12.drone_brood.place=bottom"},
		{"B. 2: eggs in mid. B. 3: poll. at edge.", "bars.2.eggs=yes bars.2.eggs.place=middle bars.3.pollen=yes bars.3.pollen.place=edge"},
		{"Foll. bd. behind b. 12. Scr. floor open.", "follower.bar=12 floor=open"},
		{"Wx. cldy., 14 C. Q. seen, wh. dot, clipd.", "weather.sky=cloudy weather.temp_c=14 queen.seen=yes queen.marked=yes queen.colour=white queen.clipped=yes"},
		{"No s. h. beetle, no def. wings, 1 sting.", "signs.small_hive_beetle=no signs.deformed_wings=no temper.stings=1"},
		{"Tr. w. oxalic acid. Fed 4 lb. fondant.", "actions.treat=yes actions.treat.what=oxalic acid actions.feed=yes actions.feed.amount=4 actions.feed.unit=lb actions.feed.what=fondant"},
		{"2 q. cells w. jelly, b. 7.", "bars.7.queen_cells.charged=yes bars.7.queen_cells.charged.count=2"},
		{"B 4: honey. B 5 eggs, b 6 larvae.", "bars.4.honey=yes bars.5.eggs=yes bars.6.open_brood=yes"},
		{"Hive B 3 stings", "hive=b temper.stings=3"},
		{"Qn. seen b. 8, yel. dot. Rem. b. 12.", "queen.seen=yes queen.bar=8 queen.marked=yes queen.colour=yellow actions.remove_bar=yes actions.remove_bar.bar=12"},
		{"E on 3, 4. H on b1. P on b2", "bars.3.eggs=yes bars.4.eggs=yes bars.1.honey=yes bars.2.pollen=yes"},
		{"Bar 4 in b. Three stings.", "temper.stings=3"},
	} {
		readsAs(t, "abbreviation", c.said, c.want)
	}
}

// TestTellings reads sentences in which something stands between a word and what
// it belongs to, or looks like what it is not.
func TestTellings(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"moved bars six seven and ate to hive two\nadded for new bars after bar five", "actions.move_bar=yes? actions.move_bar.count=3 actions.move_bar.bars=6,7,8 actions.move_bar.to_hive=2 actions.add_bar=yes? actions.add_bar.count=4 actions.add_bar.to=5"},
		{"hive five calm\nnow willow hive two bars of honey", "hive=5 temper.score=4 / hive=willow contents.honey=yes contents.honey.bars=2"},
		{"bar seven might be nectar might be water i couldn't tell you", ""},
		{"thought i had the queen on bar six but that was the light so no queen seen", "queen.seen=no"},
		{"hive one no queen cells gentle\nhive two no eggs", "hive=1 queen_cells.any=no temper.score=4 / hive=2 contents.eggs=no"},
		{"hive six no supersedure cells quiet\nwillow hive no cups feisty", "hive=6 queen_cells.any=no temper.score=4 / hive=willow queen_cells.cup=no temper.score=2"},
		{"hive three no queen cells quiet day", "hive=3 queen_cells.any=no"},
		{"hive four calm, no wasps\nformic acid's gone in, treated today", "hive=4 temper.score=4 signs.wasps=no actions.treat=yes actions.treat.what=formic acid"},
		{"bar six eggs and larvae and capped bar five capped patchy", "bars.6.eggs=yes bars.6.open_brood=yes bars.6.capped_brood=yes bars.5.capped_brood=yes bars.5.capped_brood.pattern=patchy"},
		{"we put a new queen in ten days ago\nshe's marked green", "earlier.requeened=yes earlier.requeened.on=2026-05-04 queen.marked=yes queen.colour=green"},
		{"hive three queen not seen eggs bar three open brood bars three and four capped brood bars five and six", "hive=3 queen.seen=no bars.3.eggs=yes bars.3.open_brood=yes bars.4.open_brood=yes bars.5.capped_brood=yes bars.6.capped_brood=yes"},
		{"queen seen bar four marked yellow eggs bars four and five", "queen.seen=yes queen.bar=4 queen.marked=yes queen.colour=yellow bars.4.eggs=yes bars.5.eggs=yes"},
		{"hive one calm\ni forgot to say added a bar after bar eleven", "hive=1 temper.score=4 actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=11"},
		{"the queen came strolling across bar six as if she owned the place green spot and all", "queen.seen=yes queen.bar=6 queen.marked=yes queen.colour=green"},
		{"the queen's on bar six no she's on bar eight", "queen.seen=yes queen.bar=8?"},
		{"added one bar after bar nine i mean after bar ten", "actions.add_bar=yes? actions.add_bar.count=1 actions.add_bar.to=10"},
		{"drones present not counted", "drones=yes"},
		{"On bar three, brood and on bar four pollen.", "bars.3.brood=yes bars.4.pollen=yes"},
		{"The first comb is bare. On the second I saw the queen, and there are eggs on the third.", "bars.1.comb.size=bare queen.seen=yes queen.bar=2 bars.3.eggs=yes"},
		{"bar three eggs\nskip one because it's stuck to the wall\nbar five honey", "bars.3.eggs=yes bars.4.comb.attached=wall bars.5.honey=yes"},
		{"bar five sealed brood\nsame again on the next one\nand the one after is pollen", "bars.5.capped_brood=yes bars.6.capped_brood=yes? bars.7.pollen=yes"},
		{"bar six larvae on this side flip it over larvae on that side too", "bars.6.open_brood=yes bars.6.open_brood.side=both"},
		{"bar six one side eggs and larvae, the other side pollen", "bars.6.eggs=yes bars.6.eggs.side=one bars.6.open_brood=yes bars.6.open_brood.side=one bars.6.pollen=yes bars.6.pollen.side=one"},
		{"bar six solid sealed brood\nand the same on the other side", "bars.6.capped_brood=yes bars.6.capped_brood.pattern=solid bars.6.capped_brood.side=both"},
		{"bars two and three have honey, about half a comb each", "bars.2.honey=yes bars.2.honey.cover=0.5 bars.3.honey=yes bars.3.honey.cover=0.5"},
		{"bar four brood, tight, about half the comb", "bars.4.brood=yes bars.4.brood.cover=0.5 bars.4.brood.pattern=solid"},
		{"bar seven no cells on that one just pollen", "bars.7.queen_cells.any=no bars.7.pollen=yes"},
		{"a swarm cell would be hanging here, but there are no queen cells", "queen_cells.any=no"},
		{"the entrance is reduced and next week I need to open it", "entrance=reduced plans.open_entrance=yes plans.open_entrance.due=2026-05-21"},
		{"bars eleven and twelve both I have removed", "actions.remove_bar=yes actions.remove_bar.count=2 actions.remove_bar.bars=11,12"},
		{"from bar nine down to bar seven there is sealed brood", "bars.9.capped_brood=yes bars.8.capped_brood=yes bars.7.capped_brood=yes"},
		{"of laying workers there is no sign", "signs.laying_worker=no"},
		{"eggs present on bar four, absent on bar six", "bars.4.eggs=yes bars.6.eggs=no"},
		{"treatment with thymol planned for the twentieth", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-20"},
		{"perforated caps two cells, dead bees at the entrance thirty", "signs.perforated_caps=yes signs.perforated_caps.count=2 signs.dead_bees=yes signs.dead_bees.count=30"},
		{"they bring nectar from the lime and white pollen from the clover", "incoming.nectar=yes incoming.nectar.plant=lime incoming.pollen=yes incoming.pollen.colour=white incoming.pollen.plant=clover"},
		{"fed them a pollen patty and two litres of syrup", "actions.feed=yes actions.feed.what=pollen patty actions.feed#2=yes actions.feed#2.amount=2 actions.feed#2.unit=l actions.feed#2.what=syrup"},
		{"hive 8 brood on bar 3\nnow this is hive eleven, the two bars from hive eight went in, queenless for now", "hive=8 bars.3.brood=yes / hive=11 queenright=no actions.add_bar=yes actions.add_bar.count=2 actions.add_bar.from_hive=8"},
		{"bar six capped brood no wait those are bumpy that's drone brood", "bars.6.drone_brood=yes?"},
		{"bar two eggs sorry not bar two bar three", "bars.3.eggs=yes?"},
		{"hive 2 gave a bar to hive 3, moved the follower one bar to the back", "hive=2 actions.move_bar=yes actions.move_bar.count=1 actions.move_bar.to_hive=3 actions.move_follower=yes actions.move_follower.count=1 actions.move_follower.direction=back"},
		{"brood on bar four going to feed them on monday", "bars.4.brood=yes plans.feed=yes plans.feed.due=2026-05-18"},
		{"treated with thymol gave it two litres of syrup", "actions.treat=yes actions.treat.what=thymol actions.feed=yes actions.feed.amount=2 actions.feed.unit=l actions.feed.what=syrup"},
		{"hive 6 this was queenless last week bar four has two capped emergency cells", "hive=6 bars.4.queen_cells.capped=yes bars.4.queen_cells.capped.count=2 bars.4.queen_cells.capped.kind=emergency"},
		{"I'm feeding them a litre of syrup, and we're adding a bar on Friday", "actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup plans.add_bar=yes plans.add_bar.count=1 plans.add_bar.due=2026-05-15"},
		{"she's this year's queen", "queen.year=2026"},
		{"the queen's in there somewhere but I didn't see her", "queen.seen=no"},
		{"bar four that's sealed brood, it goes wall to wall", "bars.4.capped_brood=yes bars.4.capped_brood.cover=1 bars.4.capped_brood.pattern=solid"},
		{"Bars 2 and 3 sealed brood, and eggs on bar 5.", "bars.2.capped_brood=yes bars.3.capped_brood=yes bars.5.eggs=yes"},
		{"eggs on bars 2, 3 and 4, and bars 6 and 7 are honey", "bars.2.eggs=yes bars.3.eggs=yes bars.4.eggs=yes bars.6.honey=yes bars.7.honey=yes"},
		{"honey on every bar from three to six except four, and four is all pollen", "bars.3.honey=yes bars.5.honey=yes bars.6.honey=yes bars.4.pollen=yes bars.4.pollen.cover=1"},
		{"eggs on bar two and on bar four", "bars.2.eggs=yes bars.4.eggs=yes"},
		{"All stages of brood, and the queen on bar 7.", "contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes queen.seen=yes queen.bar=7"},
		{"The queen, who is unmarked, was on bar 2.", "queen.seen=yes queen.bar=2 queen.marked=no"},
		{"Saw the queen on 19/4 but not today.", "earlier.queen_seen=yes earlier.queen_seen.on=2026-04-19 queen.seen=no"},
		{"Last inspected on the 2nd, when we saw eggs.", "earlier.inspected=yes earlier.inspected.on=2026-05-02 earlier.eggs_seen=yes earlier.eggs_seen.on=2026-05-02"},
		{"Bar 4, which I put in last Saturday, is half drawn, and there's no comb on bar 5.", "bars.4.placed=2026-05-09 bars.4.comb.drawn=0.5 bars.5.comb.size=bare"},
		{"The follower was then moved to bar 12.", "actions.move_follower=yes actions.move_follower.to=12"},
		{"Two bars were added.", "actions.add_bar=yes actions.add_bar.count=2"},
		{"A small colony with a wide doorway can be robbed.", ""},
		{"It was the first decent day, and honey waits for no man.", ""},
		{"They ran about like ants.", "temper.runny=yes"},
		{"A few beetles running about.", "signs.small_hive_beetle=yes"},
		{"Field visit 2 May. Hive 4: strong.", "hive=4 strength.word=strong"},
		{"Went back in today. Eggs on bar 3.", "bars.3.eggs=yes"},
		{"bar four bear with me it's capped honey", "bars.4.capped_honey=yes"},
		{"bars two and three eggs bar five capped brood solid the queen is on bar seven", "bars.2.eggs=yes bars.3.eggs=yes bars.5.capped_brood=yes bars.5.capped_brood.pattern=solid queen.seen=yes queen.bar=7"},
		{"bar three pollen lots of larvae on the next one bar five honey", "bars.3.pollen=yes bars.4.open_brood=yes bars.4.open_brood.amount=much bars.5.honey=yes"},
		{"I'll treat next week with thymol brood's on bars two to four looks solid", "plans.treat=yes plans.treat.what=thymol plans.treat.due=2026-05-21 bars.2.brood=yes bars.2.brood.pattern=solid bars.3.brood=yes bars.3.brood.pattern=solid bars.4.brood=yes bars.4.brood.pattern=solid"},
		{"stores fair in five days we will check again", "stores.word=fair plans.inspect=yes plans.inspect.due=2026-05-19"},
		{"QNS, eggs on bar 4", "queen.seen=no bars.4.eggs=yes"},
		{"on the scale the hive has 31 kilos", "weight_kg=31"},
		{"found one charged queen cell on bar 6 and removed it", "bars.6.queen_cells.charged=yes bars.6.queen_cells.charged.count=1 actions.cut_cells=yes actions.cut_cells.bar=6"},
		{"I gave them a pint of syrup on Sunday and the feeder is empty already", "earlier.fed=yes earlier.fed.on=2026-05-10 earlier.fed.amount=1 earlier.fed.unit=pt earlier.fed.what=syrup feeder=empty"},
		{"All my colonies. Number one: weak. Number two: eggs on bar 4.", "hive=1 strength.word=weak / hive=2 bars.4.eggs=yes"},
		{"Two more bars of honey taken.", "actions.harvest=yes actions.harvest.count=2"},
		{"we opened the quarry hive to see what was left", "hive=quarry"},
	} {
		readsAs(t, "telling", c.said, c.want)
	}
}

// TestCellsToldApart reads the stages of cells that were counted together.
func TestCellsToldApart(t *testing.T) {
	const two, one = "bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=2", " bars.5.queen_cells.charged=yes bars.5.queen_cells.charged.count=1"
	for _, c := range []struct{ said, want string }{
		{"three queen cells on bar five two are sealed and one is open", two + one},
		{"Bar 5 has three queen cells. Two of them are sealed, the other one is open.", two + one},
		{"bar five one two three queen cells, two are sealed, one's open", two + one},
		{"Three queen cells on bar 5. Two are capped, the rest are charged.", two + one},
		{"Three queen cells on bar 5. They are all sealed.", "bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=3"},
		{"Two supersedure cells on bar 5, one of them capped and one still open.", "bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=1 bars.5.queen_cells.capped.kind=supersedure" +
			one + " bars.5.queen_cells.charged.kind=supersedure"},
		{"Three queen cells on bar 5. Four is sealed brood.", "bars.5.queen_cells.any=yes bars.5.queen_cells.any.count=3 bars.4.capped_brood=yes"},
	} {
		readsAs(t, "cells", c.said, c.want)
	}
}

// TestTableEvidence: the words of a column's heading stand in another line, and
// are no evidence of a cell.
func TestTableEvidence(t *testing.T) {
	text := "Hive 7\nbar | brood\n5 | capped"
	for _, ins := range sharedParser().Parse(&colony.Note{Text: text, Given: may14}) {
		for _, g := range ins.Evidence {
			for _, s := range g.Spans {
				if g.Path != "hive" && s[0] < len("Hive 7\nbar | brood\n") {
					t.Errorf("%s rests on %q", g.Path, text[s[0]:s[1]])
				}
			}
		}
	}
}

// TestSlips mends a letter in a word of the trade, flagged, and leaves words
// alone that are only like one.
func TestSlips(t *testing.T) {
	for said, want := range map[string]string{
		"quenn seen on bar four":      "queen.seen=yes? queen.bar=4",
		"caped brood on bar seven":    "bars.7.capped_brood=yes?",
		"nector on bar nine":          "bars.9.nectar=yes?",
		"larvea on bar five":          "bars.5.open_brood=yes?",
		"teh queen on bar 4":          "queen.seen=yes queen.bar=4",
		"brokn comb on bar three":     "bars.3.comb.broken=yes?",
		"suger roll 4 mites":          "mites.method=sugar? mites.count=4",
		"1 bar added aftr bar 9":      "actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=9",
		"the otter slid by the flour": "",
		"Pollon came by":              "",
		"the market was cold":         "",
		"we crossed the brook twice":  "",
		"swam in the pond, then rang": "",
	} {
		readsAs(t, "slip", said, want)
	}
}

// TestDayOfTheVisit: the day of an inspection is one that its opening words give
// for it, never the day of a plan or one to come.
func TestDayOfTheVisit(t *testing.T) {
	for said, want := range map[string]string{
		"On Saturday I opened hive 3.":                    "2026-05-09",
		"I visited my two hives yesterday.":               "2026-05-13",
		"On Saturday we will harvest three bars.":         "2026-05-14",
		"On June 6 we will harvest three bars.":           "2026-05-14",
		"Hive 5. We will inspect hive 5 again on 7 June.": "2026-05-14",
		"Hive 5. Fed them on 2 May.":                      "2026-05-14",
		"bar nine went in on monday":                      "2026-05-14",
		"they swarmed on friday i was out in the garden":  "2026-05-14",
		"Hive 4 - 12/5\nBar 3: eggs":                      "2026-05-12",
		"H4 (3/5)\nBar 3: eggs":                           "2026-05-03",
		"3/5, hive 4\nBar 3: eggs":                        "2026-05-03",
		"H4 3/5 full of honey on bar 2":                   "2026-05-14",
	} {
		for _, ins := range sharedParser().Parse(&colony.Note{Text: said, Given: may14}) {
			if got := colony.DateOf(ins.At).String(); got != want {
				t.Errorf("%q is of %s, want %s", said, got, want)
			}
		}
	}
}

// readsAs holds a text against the leaves that it is to give, in any order.
func readsAs(t *testing.T, name, said, want string) {
	t.Helper()
	if got := sorted(leavesOf(said)); got != sorted(want) {
		t.Errorf("%s: %q reads\n%s, want\n%s", name, said, got, sorted(want))
	}
}

// sorted puts the leaves of each inspection in order.
func sorted(leaves string) string {
	all := strings.Split(leaves, " / ")
	for i := range all {
		words := strings.Fields(all[i])
		slices.Sort(words)
		all[i] = strings.Join(words, " ")
	}
	return strings.Join(all, " / ")
}
