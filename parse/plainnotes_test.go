package parse

import "testing"

// TestPlainNotes reads what notes typed in a hurry and evenings' tales have in common: what is so as
// a rule, what befell the keeper, abbreviations, and what a sign is of.
func TestPlainNotes(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		// what cells and signs mean as a rule, what sticks to the keeper, and what is looked up
		{"Swarm cells mean they are off. Supersedure cells mean the old queen is failing. Queen on bar 3.", "queen.seen=yes queen.bar=3"},
		{"Queen cells usually mean they will swarm.", ""},
		{"Chalkbrood means damp, they say. This one has sacbrood.", "signs.sacbrood=yes"},
		{"Two swarm cells mean I have to split on Sunday.", "queen_cells.any=yes queen_cells.any.count=2 queen_cells.any.kind=swarm plans.split=yes plans.split.due=2026-05-17"},
		{"Two supersedure cells on bar 3 mean the old queen is going.", "bars.3.queen_cells.any=yes bars.3.queen_cells.any.count=2 bars.3.queen_cells.any.kind=supersedure"},
		{"Bees mean the whole time.", "temper.score=1"},
		{"Cut bar 9 free, with honey all down my sleeves.", "actions.free_comb=yes actions.free_comb.bar=9"},
		{"Honey on both sides of bar 4, propolis on both hands.", "bars.4.honey=yes bars.4.honey.side=both"},
		{"Did I treat it in March? Must look that up. Stores fair.", "stores.word=fair"},
		{"I need to look for my veil. Must look again on Sunday.", "plans.inspect=yes plans.inspect.due=2026-05-17"},
		{"Orange pollen coming in, from what tree I could not tell you.", "incoming.pollen=yes incoming.pollen.colour=orange"},
		{"Eggs on bar 4, how she does it I cannot say.", "bars.4.eggs=yes"},
		{"She was hot from the first bar and stung me twice.", "temper.score=1 temper.stings=2"},
		{"She was on the first bar.", "queen.seen=yes queen.bar=1"},
		// several eggs to a cell are where the eggs are
		{"Eggs on bars 4 and 5, two and three to a cell.", "bars.4.eggs=yes bars.5.eggs=yes signs.laying_worker=yes signs.laying_worker.bars=4,5"},
		{"There were eggs on bar 3, but sometimes two or three to a cell.", "bars.3.eggs=yes signs.laying_worker=yes signs.laying_worker.bar=3"},
		{"Eggs on bar 4. Several to a cell.", "bars.4.eggs=yes signs.laying_worker=yes signs.laying_worker.bar=4"},
		{"Eggs on bar 4, and three to a cell on bar 5.", "bars.4.eggs=yes signs.laying_worker=yes signs.laying_worker.bar=5"},
		{"drone brood on bars two and three and three eggs to a cell on bar two", "bars.2.drone_brood=yes bars.3.drone_brood=yes bars.2.eggs=yes signs.laying_worker=yes signs.laying_worker.bar=2"},
		{"Eggs on bar 4, one to a cell.", "bars.4.eggs=yes"},
		// questions in brackets, counts taken again, and hands
		{"Bar 2 is half drawn, eggs in the middle (tiny specks??). Bar 3 honey.", "bars.2.comb.drawn=0.5 bars.2.eggs=yes bars.2.eggs.place=middle bars.3.honey=yes"},
		{"Queen on bar 4 (or was it 5?)", "queen.seen=yes queen.bar=4"},
		{"Bar 2 brood (eggs?)", "bars.2.brood=yes"},
		{"I did a wash and counted eleven mites, no, I counted again, twelve.", "mites.method=wash mites.count=12?"},
		{"Hive 2. I counted again on Sunday. Bees calm.", "hive=2 temper.score=4"},
		{"I clipped her, my hand as steady as ever.", "actions.clip_queen=yes queen.clipped=yes"},
		// Scots, shorthand, and what is edited
		{"Bars 4 tae 6 sealed brood, bonnie pattern.", "bars.4.capped_brood=yes bars.4.capped_brood.pattern=solid bars.5.capped_brood=yes bars.5.capped_brood.pattern=solid bars.6.capped_brood=yes bars.6.capped_brood.pattern=solid"},
		{"Nae queen cells. I cannae see eggs.", "queen_cells.any=no contents.eggs=no"},
		{"brood on bars 4 til 6", "bars.4.brood=yes bars.5.brood=yes bars.6.brood=yes"},
		{"B3 eggs + lv. B4 lvs, pol.", "bars.3.eggs=yes bars.3.open_brood=yes bars.4.open_brood=yes bars.4.pollen=yes"},
		{"Queen on bar 6. EDIT: bar 7.", "queen.seen=yes queen.bar=7?"},
		{"EDIT: bar 3 had honey as well.", "bars.3.honey=yes"},
	} {
		readsAs(t, "plain note", c.said, c.want)
	}
}

// TestLegends reads notes in which codes and marks stand for words, as a legend or use has it.
func TestLegends(t *testing.T) {
	const three = "bars.1.honey=yes bars.2.pollen=yes bars.3.eggs=yes bars.3.open_brood=yes bars.4.capped_brood=yes"
	for _, c := range []struct{ said, want string }{
		{"Hive 4\n1 H | 2 P | 3 E L | 4 C\n(H honey, P pollen, E eggs, L larvae, C capped brood)", "hive=4 " + three},
		{"Key: H = honey; P = pollen; E = eggs; L = larvae; C = capped brood\nHive 4. 14 C, sunny.\n1 H\n2 P\n3 E, L\n4 C", "hive=4 weather.sky=sunny weather.temp_c=14 " + three},
		{"Overcast, 12 C\nB1 H | B2 P | B3 EL | B4 C", "weather.sky=overcast weather.temp_c=12 " + three},
		{"Hive 2\n1 H, 2 P, 3 E, 4 C, 5 bare", "hive=2 bars.1.honey=yes bars.2.pollen=yes bars.3.eggs=yes bars.4.capped_brood=yes bars.5.comb.size=bare"},
		{"E = eggs, CB = capped brood, Q = queen\nHive 6\nBar 3 E. Bars 4-6 CB. Q on bar 4.", "hive=6 bars.3.eggs=yes bars.4.capped_brood=yes bars.5.capped_brood=yes bars.6.capped_brood=yes queen.seen=yes queen.bar=4"},
		// marks
		{"Marks: + yes, - no, o didn't look\nHive 1: queen o, eggs + (bars 3, 4), queen cells -, chalkbrood o\nbees calm", "hive=1 bars.3.eggs=yes bars.4.eggs=yes queen_cells.any=no temper.score=4"},
		{"x = present, o = absent\nHive 3: eggs x, drones x, wasps o, queen cells x (bar 5, one, sealed)", "hive=3 contents.eggs=yes drones=yes signs.wasps=no bars.5.queen_cells.capped=yes bars.5.queen_cells.capped.count=1"},
		{"Hive 1: queen +, eggs +, queen cells -, drones +, chalkbrood -", "hive=1 queen.seen=yes contents.eggs=yes queen_cells.any=no drones=yes signs.chalkbrood=no"},
		{"queen +\neggs +\nqueen cells -\ndrones -", "queen.seen=yes contents.eggs=yes queen_cells.any=no drones=no"},
		{"eggs+ larvae+ queen- drones+", "contents.eggs=yes contents.open_brood=yes queen.seen=no drones=yes"},
		// what is none
		{"Bar 4 eggs + larvae, bar 5 honey - not much", "bars.4.eggs=yes bars.4.open_brood=yes bars.5.honey=yes bars.5.honey.amount=little"},
		{"Bars 4 and 5 (E eggs, L larvae).", "bars.4.eggs=yes bars.4.open_brood=yes bars.5.eggs=yes bars.5.open_brood=yes"},
		{"Signs: chalkbrood, mice", "signs.chalkbrood=yes signs.mice=yes"},
		{"Q = seen, T = calm", "queen.seen=yes"},
	} {
		readsAs(t, "legend", c.said, c.want)
	}
}

// TestNestedKeys reads keys that stand below others.
func TestNestedKeys(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"hive: oak\nqueen:\n  seen: yes\n  bar: 6\n  mark: blue\n  clipped: no\ntemper: gentle", "hive=oak queen.seen=yes queen.bar=6 queen.marked=yes queen.colour=blue queen.clipped=no temper.score=4"},
		{"Hive 3\nQueen\n- present: yes\n- location: bar 5\nBar 4: eggs", "hive=3 queen.seen=yes queen.bar=5 bars.4.eggs=yes"},
		{"hive: elm\nqueen:\n  seen: no\n  marked: no\nbar 3: eggs", "hive=elm queen.seen=no queen.marked=no bars.3.eggs=yes"},
		{"hive: elm\nbrood:\n  bars: 4-6\n  pattern: solid\ntemper: calm", "hive=elm bars.4.brood=yes bars.5.brood=yes bars.6.brood=yes brood_pattern=solid temper.score=4"},
		{"hive: elm\nqueen_seen: yes\nqueen_bar: 5\nqueen_cells: none", "hive=elm queen.seen=yes queen.bar=5 queen_cells.any=no"},
		{"hive: elm\nqueen.seen: no\nqueen.marked: yes", "hive=elm queen.seen=no queen.marked=yes"},
		{"Hive 7\nBars:\n  3: eggs\n  4: brood\nNext:\n  inspect: Sunday", "hive=7 bars.3.eggs=yes bars.4.brood=yes plans.inspect=yes plans.inspect.due=2026-05-17"},
		{"Hive | Queen | Eggs | Temper\nA | seen on bar 4 | bars 4 and 5 | calm\nB | not seen | none | touchy", "hive=a queen.seen=yes queen.bar=4 bars.4.eggs=yes bars.5.eggs=yes temper.score=4 / hive=b queen.seen=no contents.eggs=no temper.score=2"},
	} {
		readsAs(t, "nested key", c.said, c.want)
	}
}
