package colony

import (
	"strings"
	"time"
)

// publishedVisits are the intervals between visits, counts and feeds.
var publishedVisits = []figure{
	{"every 5 days where swarming is likely", "Trunch beekeepers", lookWithCells, 5, 0},
	{"7 days in early season", "Mid Bucks beekeepers", lookInSwarming, 7, 0},
	{"last visit 10 May: due 17 May", "derived", day("2025-05-10").AddDays(lookInSwarming), day("2025-05-17"), 0},
	{"a cell sealed on the day before the next visit was an egg at the last one", "derived", lookInSwarming < int(QueenBee.Cap.Value.Best), true, 0},
	{"a board of 3 to 21 days", "EU Pollinator Hub, plausibility of the varroa table", boardDays.Value, Between(3, 7.2, 21, unitDays), 0},
	{"between visits in the season", "practice", lookInSeason, 14, 0},
	{"again after eggs were missing", "practice", lookAgain, 6, 0},
	{"between counts of mites", "practice", miteInterval, 30, 0},
	{"count after a treatment", "practice", miteAfterTreat, 21, 0},
	{"look at the feed", "practice", feederLook, 7, 0},
	{"a caution is said after its sign", "practice", CautionDays, 60, 0},
	{"bars last when given", "practice", spaceDays, 14, 0},
	{"few free bars", "practice", shortOfRoom, 3, 0},
	{"a count of bars holds", "practice", countHolds, 90, 0},
	{"rate of use", "practice", rateDays, 42, 0},
	{"a plan without a day lapses", "practice", planLapses, 90, 0},
	{"a plan with a day is forgotten", "practice", planForgotten, 365, 0},
	{"no routine without a visit", "practice", staleDays, 400, 0},
	{"no winter preparation without a visit", "practice", autumnDays, 120, 0},
	{"heavy for one", "practice", heavyKg, 25, 0},
}

// publishedLimits are the thresholds for mites as each source gives them.
var publishedLimits = []figure{
	{"production colonies in July, a day", "City of Hannover", limits("germany", "drop", time.July), "10", 0},
	{"young colonies in July, a day", "City of Hannover", limits("germany, young colonies", "drop", time.July), "5", 0},
	{"critical, treat, beyond saving in July, a day", "Beekeepers of Weser-Ems", limits("weser-ems", "drop", time.July), "5 10 30", 0},
	{"November, a day", "Beekeepers of Weser-Ems", limits("weser-ems", "drop", time.November), "1", 0},
	{"June, a day", "Swiss bee health service", limits("switzerland", "drop", time.June), "10", 0},
	{"May, a day", "Ontario 2016", limits("ontario", "drop", time.May), "9", 0},
	{"August, a day", "Ontario 2016", limits("ontario", "drop", time.August), "12", 0},
	{"May, a wash", "Ontario 2016", limits("ontario", "wash", time.May), "2", 0},
	{"August, a wash", "Ontario 2016", limits("ontario", "wash", time.August), "3", 0},
	{"February, a wash", "Mississippi State Extension", limits("mississippi", "wash", time.February), "1", 0},
	{"a wash in any month", "USDA bee laboratory Tucson", limits("tucson", "wash", time.January) + limits("tucson", "wash", time.December), "33", 0},
	{"a day, in any month", "USDA bee laboratory Tucson", limits("tucson", "drop", time.June), "30", 0},
	{"a wash", "University of Florida calendar", limits("florida", "wash", time.March), "3", 0},
	{"a day", "Virginia Cooperative Extension", limits("virginia", "drop", time.October), "40", 0},
	{"a day, in any month", "Defra 2005", limits("britain 2005", "drop", time.January), "9", 0},
	{"none in April", "derived", limits("ontario", "drop", time.April), "", 0},
}

// limits are those of a set that hold for the method in a month, in order.
func limits(set, method string, month time.Month) string {
	var out []string
	for _, l := range MiteLimits {
		if l.Set == set && l.Method == method && l.First <= month && month <= l.Last {
			out = append(out, amount(l.Limit))
		}
	}
	return strings.Join(out, " ")
}

// usedAsPractice are the constants, or ends of them, for which no source was
// found, and those that stand in textbooks that were not seen: common practice
// and memory. They are held here so that none changes unawares.
var usedAsPractice = []figure{
	{"worker sealed", "memory", Worker.Cap.Value, Between(8, 9, 10, unitDays), 0},
	{"worker emerges", "memory", Worker.Emerge.Value, Between(19, 21, 24, unitDays), 0},
	{"worker hatches", "practice", Worker.Hatch.Value, Between(2, 3, 4, unitDays), 0},
	{"queen hatches", "practice", QueenBee.Hatch.Value, Between(2, 3, 4, unitDays), 0},
	{"drone hatches", "practice", Drone.Hatch.Value, Between(2, 3, 4, unitDays), 0},
	{"queen cell sealed", "memory", QueenBee.Cap.Value, Between(7, 8, 9, unitDays), 0},
	{"queen emerges", "memory", QueenBee.Emerge.Value, Between(14, 16, 17, unitDays), 0},
	{"drone sealed", "memory", Drone.Cap.Value, Between(9, 10, 11, unitDays), 0},
	{"drone emerges", "memory", Drone.Emerge.Value, Between(22, 24, 28, unitDays), 0},
	{"sealed stage", "practice", SealedDays.Value, Between(11.5, 12, 12.5, unitDays), 0},
	{"an open cell stands", "practice", emergedFor.Value, Between(0, 3, 14, unitDays), 0},
	{"sealed cells beside an open one", "practice", castDays.Value, Between(1, 2, 8, unitDays), 0},
	{"solid brood", "practice", solidBrood.Value, Between(0.85, 0.95, 1, ""), 0},
	{"patchy brood", "practice", patchyBrood.Value, Between(0.4, 0.65, 0.85, ""), 0},
	{"brood of no said pattern", "practice", someBrood.Value, Between(0.5, 0.85, 1, ""), 0},
	{"thin cover of bees", "practice", BeesPerDM2.Value.Low, 100.0, 0},
	{"summer bees, best", "practice", SummerLife.Value.Best, 32.0, 0},
	{"winter bees, best", "practice", WinterLife.Value.Best, 135.0, 0},
	{"fill of a counted bar", "practice", countedFill.Value, Between(0.1, 0.5, 1, ""), 0},
	{"comb of no said size", "practice", someComb.Value, Between(0.25, 0.75, 1, ""), 0},
	{"bare", "practice", combWords["bare"].Value, Exactly(0, ""), 0},
	{"started", "practice", combWords["started"].Value, Between(0.005, 0.05, 0.15, ""), 0},
	{"small comb", "practice", combWords["small"].Value, Between(0.05, 0.2, 0.4, ""), 0},
	{"large comb", "practice", combWords["large"].Value, Between(0.5, 0.75, 1, ""), 0},
	{"a little", "practice", coverWords["little"].Value, Between(0.01, 0.08, 0.25, ""), 0},
	{"a lot", "practice", coverWords["much"].Value, Between(0.35, 0.65, 1, ""), 0},
	{"there, no share said", "practice", coverWords[""].Value, Between(0.05, 0.35, 1, ""), 0},
	{"honey not said to be sealed", "practice", someHoney.Value, Between(60, 115, 200, "g/dm²"), 0},
	{"sealed honey, ends", "practice", sealedHoney.Value, Between(110, 125, 200, "g/dm²"), 0},
	{"open nectar", "practice", openNectar.Value, Between(15, 60, 125, "g/dm²"), 0},
	{"bee bread, ends", "practice", beeBread.Value, Between(80, 100, 120, "g/dm²"), 0},
	{"doubling, ends", "practice", UsualDoubling.Value, Between(18, 21, 30, unitDays), 0},
	{"mites per fallen mite", "memory", dropRatio.Value, Between(20, 30, 54, ""), 0},
	{"emerging within", "definition", EmergingDays, int(SealedDays.Value.Best), 0},
}
