package parse

import "testing"

// TestHivesInRunningSpeech holds which hive is spoken of where no pause tells it.
func TestHivesInRunningSpeech(t *testing.T) {
	for _, c := range []struct{ said, want string }{
		{"apple hive calm not one sting pear hive a bit snappy had to give them smoke medlar hive ran on the comb", "hive=apple temper.score=4 temper.stings=0 / hive=pear temper.score=2 actions.smoke=yes / hive=medlar temper.runny=yes"},
		{"walnut hive calm moving on to the fig hive nervous", "hive=walnut temper.score=4 / hive=fig temper.score=2"},
		{"Hive 2 is calm. Then I went across to hive 3. Eggs on bar 4.", "hive=2 temper.score=4 / hive=3 bars.4.eggs=yes"},
		{"Hive 2 is calm. Then bar 5 went across to hive 3.", "hive=2 temper.score=4 actions.move_bar=yes actions.move_bar.bar=5 actions.move_bar.to_hive=3"},
		{"hive two calm then went over to hive three eggs on bar four", "hive=2 temper.score=4 / hive=3 bars.4.eggs=yes"},
		{"hive two calm we moved on to hive three bar two eggs", "hive=2 temper.score=4 / hive=3 bars.2.eggs=yes"},
		{"hive two put a bar in behind bar nine over to hive three bar four pollen", "hive=2 actions.add_bar=yes actions.add_bar.count=1 actions.add_bar.to=9 / hive=3 bars.4.pollen=yes"},
		{"no queen cells in hive two none in hive three", "hive=2 queen_cells.any=no / hive=3 queen_cells.any=no"},
		{"chalkbrood in hive two none in hive three no stings", "hive=2 signs.chalkbrood=yes / hive=3 signs.chalkbrood=no temper.stings=0"},
		{"hive two bar four was moved over to hive three", "hive=2 actions.move_bar=yes actions.move_bar.bar=4 actions.move_bar.to_hive=3"},
		{"brook hive bar two eggs next one ferry hive calm back to brook queen on bar four", "hive=brook queen.seen=yes queen.bar=4 bars.2.eggs=yes / hive=ferry temper.score=4"},
		{"upper brook hive bar two eggs next ferry hive calm back at brook queen on bar four", "hive=upper brook queen.seen=yes queen.bar=4 bars.2.eggs=yes / hive=ferry temper.score=4"},
		{"brook hive calm ferry hive nervous i'll unite them with brook on sunday", "hive=brook temper.score=4 / hive=ferry temper.score=2 plans.unite=yes plans.unite.to_hive=brook plans.unite.due=2026-05-17"},
		{"Brook hive is calm. Ferry hive is nervous. I'll unite it with the brook on Sunday.", "hive=brook temper.score=4 / hive=ferry temper.score=2 plans.unite=yes plans.unite.to_hive=brook plans.unite.due=2026-05-17"},
		{"rowan hive calm ferry hive nervous on sunday i'll unite them with the rowan", "hive=rowan temper.score=4 / hive=ferry temper.score=2 plans.unite=yes plans.unite.to_hive=rowan plans.unite.due=2026-05-17"},
		{"Clover hive is calm. Ferry hive is nervous. They are bringing in pollen from the clover.", "hive=clover temper.score=4 / hive=ferry temper.score=2 incoming.pollen=yes incoming.pollen.plant=clover"},
		{"clover hive calm ferry hive no eggs pollen coming in from the clover", "hive=clover temper.score=4 / hive=ferry contents.eggs=no incoming.pollen=yes incoming.pollen.plant=clover"},
		{"brook hive bar three eggs that's brook done now ferry hive bar two larvae", "hive=brook bars.3.eggs=yes / hive=ferry bars.2.open_brood=yes"},
		{"stone bench hive bar three eggs", "hive=stone bench bars.3.eggs=yes"},
		{"next one robin hive two sealed queen cells on bar six", "hive=robin bars.6.queen_cells.capped=yes bars.6.queen_cells.capped.count=2"},
		{"hive two calm bees i gave it a litre of syrup on to hive four nervous", "hive=2 temper.score=4 actions.feed=yes actions.feed.amount=1 actions.feed.unit=l actions.feed.what=syrup / hive=4 temper.score=2"},
		{"hive two calm i moved three bars on to hive four", "hive=2 temper.score=4 actions.move_bar=yes actions.move_bar.count=3 actions.move_bar.to_hive=4"},
		{"barn hive split today four bars to the robin hive temper steady", "hive=barn temper.score=3 actions.split=yes actions.split.count=4 actions.split.to_hive=robin"},
		{"hive six is it no it's nine hive nine calm", "hive=9? temper.score=4"},
		{"hive six no sorry this one's hive nine calm", "hive=9? temper.score=4"},
		{"hive six oh no this one's hive nine calm", "hive=9? temper.score=4"},
		{"bar three no sorry this one's bar four eggs", "bars.4.eggs=yes?"},
		{"went into the far hive late bar three eggs", "hive=far bars.3.eggs=yes"},
		{"at the far end of the hive bar three eggs", "bars.3.eggs=yes"},
		{"hive six no nine bars of bees", "hive=6 strength.bars_of_bees=9"},
		{"hive six it's eleven no twelve degrees and sunny", "hive=6 weather.temp_c=12 weather.sky=sunny"},
		{"bars four and six are crooked i must straighten four and six on tuesday", "bars.4.comb.straight=no bars.6.comb.straight=no plans.straighten=yes plans.straighten.count=2 plans.straighten.bars=4,6 plans.straighten.due=2026-05-19"},
	} {
		readsAs(t, "running speech", c.said, c.want)
	}
}
