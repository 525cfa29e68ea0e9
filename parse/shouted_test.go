package parse

import "testing"

// shoutedNotes are typed with the capitals locked.
var shoutedNotes = map[string][]saying{
	"shouted": {
		{"JUNIPER: SAW THE QUEEN ON BAR SIX. NO QUEEN CELLS ANYWHERE.", "hive=juniper queen.seen=yes queen.bar=6 queen_cells.any=no"},
		{"LOOKED INTO THE POND HIVE AT LAST, SWARMED ON SUNDAY, CALM NOW.", "hive=pond earlier.swarmed=yes earlier.swarmed.on=2026-05-10 temper.score=4"},
		{"A GOOD LAYING PATTERN ALL OVER, AND THEY RUN ON THE COMB LIKE ANTS ON JAM.", "brood_pattern=solid temper.runny=yes"},
		{"HIVE B. BAR 4 HAS SEVERAL EGGS IN EACH CELL, LAYING WORKERS THEN.", "hive=b bars.4.eggs=yes signs.laying_worker=yes signs.laying_worker.bar=4"},
		{"QEEN SEEN ON BAR 3, LARVEA ON BAR 4. LARVEA ON BAR 6 TOO.", "queen.seen=yes? queen.bar=3 bars.4.open_brood=yes? bars.6.open_brood=yes?"},
		{"OPENED MABEL AFTER LUNCH. CAP. BROOD ON BAR 5. WILL FEED THEM SAT.", "hive=mabel bars.5.capped_brood=yes plans.feed=yes plans.feed.due=2026-05-16"},
		{"FED THEM ON THE SECOND AND PUT ONE BAR IN THAT DAY. EGGS ON BAR 3.", "bars.3.eggs=yes earlier.fed=yes earlier.fed.on=2026-05-02 earlier.bar_added=yes earlier.bar_added.on=2026-05-02 earlier.bar_added.count=1"},
	},
}

func TestShouted(t *testing.T) { readSayings(t, shoutedNotes) }
