package parse

import "testing"

// diaries are sentences as keepers write them in a diary, to a mentor or for a club.
var diaries = map[string][]saying{
	"the hive that the note begins with, by number": {
		{"Came to number four today, this being the third try. Brood on six bars.", "hive=4 contents.brood=yes contents.brood.bars=6"},
		{"Got round to number seven at last. No queen cells.", "hive=7 queen_cells.any=no"},
		{"A raw afternoon, and number three again since nobody else would. Bees calm.", "hive=3 temper.score=4"},
		{"Number six this evening, with the milking done. The bees were calm.", "hive=6 temper.score=4"},
		{"I had the roof off number two. Eggs on bar five.", "hive=2 bars.5.eggs=yes"},
		{"I read page number four at last. Brood on six bars.", "contents.brood=yes contents.brood.bars=6"},
		{"Bar number four again. Full of honey.", "bars.4.honey=yes bars.4.honey.cover=1"},
		{"We live at number nine, this street. The bees are calm.", "temper.score=4"},
	},
	"in so many bars": {
		{"Brood in four bars, and stores fair.", "contents.brood=yes contents.brood.bars=4 stores.word=fair"},
		{"Eggs in two bars.", "contents.eggs=yes contents.eggs.bars=2"},
		{"Eggs in bar two.", "bars.2.eggs=yes"},
		{"No brood in two bars.", "contents.brood=no"},
	},
	"taken for the honey": {
		{"Took three bars for harvest, twelve pound all told.", "actions.harvest=yes actions.harvest.count=3 actions.harvest.amount=12 actions.harvest.unit=lb"},
		{"Took bar nine for the show.", "actions.harvest=yes actions.harvest.bar=9"},
		{"Took two bars to the show.", "actions.remove_bar=yes actions.remove_bar.count=2"},
	},
	"asides": {
		{"Mouse droppings on the floor, the wee devils.", "signs.mice=yes"},
		{"They were devils today.", "temper.score=1"},
		{"I venture no opinion on the brood.", ""},
		{"No comment on the brood, for I did not get so far.", ""},
		{"Chalkbrood on bar 5, a dozen mummies. BIAS.", "signs.chalkbrood=yes signs.chalkbrood.bar=5 signs.chalkbrood.count=12 contents.eggs=yes contents.open_brood=yes contents.capped_brood=yes"},
	},
}

func TestDiaries(t *testing.T) { readSayings(t, diaries) }
