package colony

import (
	"fmt"
	"math"
	"testing"
)

// figure is one published value or worked example beside what the package
// makes of it. Source is where the value was read; a figure that starts with
// "derived" is arithmetic on read values, "definition" holds by definition,
// "practice" is common practice without a source, and "memory" a textbook figure
// whose source was not seen. None of these four counts as a published check.
type figure struct {
	what   string
	source string
	got    any
	want   any
	within float64 // for numbers, how far off
}

// held is a range that is to hold a published value.
type held struct {
	r Range
	v float64
}

func day(s string) Date {
	d, err := ParseDate(s)
	if err != nil {
		panic(err)
	}
	return d
}

func laid(what, seen string) Window {
	w, ok := laidWindow(what, day(seen))
	if !ok {
		panic(what)
	}
	return w
}

// emerges and sealed are the days from laying, as the calendar has them.
func emerges(d Development) Range { return daysAfter(d.EmergeWindow) }

func sealed(d Development) Range { return daysAfter(d.CapWindow) }

func daysAfter(follow func(Window) Window) Range {
	egg := day("2025-05-01")
	w := follow(onDay(egg))
	days := func(d Date) float64 { return float64(d.Sub(egg)) }
	return Between(days(w.Outer.From), days(w.Usual.From), days(w.Outer.To), unitDays)
}

var publishedDevelopment = []figure{
	{"queen emerges", "UC ANR, Mussen et al. 1987", emerges(QueenBee).Best, 16.0, 0},
	{"worker emerges", "UC ANR, Mussen et al. 1987", emerges(Worker).Best, 21.0, 0},
	{"drone emerges", "UC ANR, Mussen et al. 1987", emerges(Drone).Best, 24.0, 0},
	{"egg hatches", "UC ANR, Mussen et al. 1987", laidUntil(day("2025-05-20"), true, false, false), day("2025-05-17"), 0},
	{"worker emerges", "Sevenoaks beekeepers", emerges(Worker).Best, 21.0, 0},
	{"sealed worker stage of 12 days, 12,000 cells", "NEMN beekeepers", layingRate(cellsOf(12000)).Best, 1000.0, 0},
	{"queen from sealing to emergence", "NEMN beekeepers", emerges(QueenBee).Best - sealed(QueenBee).Best, 8.0, 0},
	{"worker sealed about day 8", "NEMN beekeepers", held{sealed(Worker), 8}, true, 0},
	{"queen cell sealed day 8", "Tribes beekeepers", held{sealed(QueenBee), 8}, true, 0},
	{"queen cell sealed day 9", "Tribes beekeepers", held{sealed(QueenBee), 9}, true, 0},
	{"first virgin day 15", "Tribes beekeepers", held{emerges(QueenBee), 15}, true, 0},
	{"queen 15 days", "americasbeekeeper.com", held{emerges(QueenBee), 15}, true, 0},
	{"queen 17 days", "americasbeekeeper.com", held{emerges(QueenBee), 17}, true, 0},
	{"worker 19 days", "americasbeekeeper.com", held{emerges(Worker), 19}, true, 0},
	{"worker 22 days", "americasbeekeeper.com", held{emerges(Worker), 22}, true, 0},
	{"drone 25 days", "americasbeekeeper.com", held{emerges(Drone), 25}, true, 0},
	{"worker sealed stage plus open stages", "americasbeekeeper.com", sealed(Worker).Best, 3 + 6.0, 0},
	{"eggs: laid within the last 3 days", "chbr.org", laid("eggs", "2025-05-20").Usual.Days(), 3, 0},
	{"open larvae: laid within the last 10 days", "chbr.org", laid("open_brood", "2025-05-20").Outer.Contains(day("2025-05-10")), true, 0},
	{"only sealed brood: 9 days since laying stopped", "Trunch beekeepers", laidUntil(day("2025-05-20"), true, true, false), day("2025-05-11"), 0},
	{"eggs 20 May", "derived", laid("eggs", "2025-05-20").Usual.String(), "17 to 20 May 2025", 0},
	{"open larvae 20 May", "derived", laid("open_brood", "2025-05-20").Usual.String(), "11 to 17 May 2025", 0},
	{"sealed brood 20 May", "derived", laid("capped_brood", "2025-05-20").Usual.String(), "29 Apr to 11 May 2025", 0},
	{"no worker brood: more than 21 days", "derived", laidUntil(day("2025-05-22"), true, true, true), day("2025-05-01"), 0},
	{"drone brood up to 24 days", "derived", laid("drone_brood", "2025-05-25").Usual.From, day("2025-05-01"), 0},
	{"eggs : open : sealed", "Wade 2022", fmt.Sprint(stageDays("eggs"), stageDays("open_brood"), stageDays("capped_brood")), "3 6 12", 0},
}

func stageDays(what string) int { return int(broodAges[what].usual.Width()) }

// cellLaid is the calendar of a queen whose egg was laid on the day.
func cellLaid(on string) QueenCalendar {
	w := onDay(day(on))
	return calendar("swarm", w, QueenBee.EmergeWindow(w))
}

func fromCell(stage, on string) QueenCalendar {
	c, ok := calendarFromCell(stage, "swarm", day(on))
	if !ok {
		panic(stage)
	}
	return c
}

var publishedQueens = []figure{
	{"egg 1 May, first eggs 29 May", "Connor, Bee Culture", cellLaid("2025-05-01").When(MilestoneEggs).Usual.Contains(day("2025-05-29")), true, 0},
	{"queen emerges day 16", "Connor, Bee Culture", cellLaid("2025-05-01").When(MilestoneEmerges).Usual.From, day("2025-05-17"), 0},
	{"able to lay from about day 23", "Sevenoaks beekeepers", cellLaid("2025-05-01").When(MilestoneEggs).Outer.Contains(day("2025-05-24")), true, 0},
	{"virgin lays after at least 8 days", "Tribes beekeepers", firstEggsUsually.Low, 8.0, 0},
	{"brood 2 weeks after emergence", "killowen.com", held{firstEggsUsually, 14}, true, 0},
	{"brood 3 weeks after emergence", "killowen.com", held{firstEggsUsually, 21}, true, 0},
	{"mature at about 10 days", "UC ANR, Mussen et al. 1987", held{virginFlies.Value, 10}, true, 0},
	{"mature at 5 days", "McNeil 2015", held{virginFlies.Value, 5}, true, 0},
	{"too old to mate after three weeks", "wildflowermeadows.com", virginFlies.Value.High, 21.0, 0},
	{"eggs within two days of the last flight", "eversweetapiaries.com", firstEggs.Value.Low <= virginFlies.Value.Low+2 && virginFlies.Value.High+2 <= firstEggs.Value.High, true, 0},
	{"first eggs from 7 days in May", "goodhoneyguide.com", held{firstEggs.Value, 7}, true, 0},
	{"first eggs after 15 days in July", "goodhoneyguide.com", held{firstEggs.Value, 15}, true, 0},
	{"first eggs up to 25 days in August", "goodhoneyguide.com", held{firstEggs.Value, 25}, true, 0},
	{"swarm when the first cell is sealed, day 8", "Somerset beekeepers", cellLaid("2025-05-01").When(MilestoneSwarm).Usual.From, day("2025-05-09"), 0},
	{"swarm can leave earlier", "Welsh Beekeepers' Association", cellLaid("2025-05-01").When(MilestoneSwarm).Outer.From.Compare(day("2025-05-09")) < 0, true, 0},
	{"sealed cell found: virgin out within 8 days", "Mid Bucks beekeepers", fromCell("capped", "2025-05-17").When(MilestoneEmerges).Usual.To, day("2025-05-25"), 0},
	{"sealed cell on 17 May: egg laid by 9 May", "derived", fromCell("capped", "2025-05-17").When(MilestoneLaid).Usual.To, day("2025-05-09"), 0},
	{"emergency queen out 11 days after the loss", "derived", calendarFromLoss("emergency", onDay(day("2025-05-01"))).When(MilestoneEmerges).Usual.From, day("2025-05-12"), 0},
	{"emergency queen out 13 days after the loss", "derived", calendarFromLoss("emergency", onDay(day("2025-05-01"))).When(MilestoneEmerges).Usual.To, day("2025-05-14"), 0},
}

var publishedComb = []figure{
	{"Cameroon hive, side of a comb, cm²", "derived", DefaultBox.Trapezoid() * 100, 889.0, 0.5},
	{"Cameroon hive, wall from vertical", "derived", BoxFromAngle(DefaultBox.Top, DefaultBox.Depth, 24.5).Bottom, DefaultBox.Bottom, 1},
	{"Cameroon hive, side board 305 mm", "Gregory 2003, Bees for Development 68", math.Hypot(DefaultBox.Depth, (DefaultBox.Top-DefaultBox.Bottom)/2), 305.0, 4},
	{"bar for northern bees, mm", "Gregory 2003, Bees for Development 66", DefaultBox.Bar, 35.0, 0},
	{"bee space 7 to 9 mm", "Gregory 2003, Bees for Development 66", held{Between(7, 8, 9, "mm"), DefaultBox.BeeSpace}, true, 0},
	{"walls at 30° from vertical", "derived", BoxFromAngle(450, 250, 30).Bottom, 450 - 500/math.Sqrt(3), 1e-9},
	{"half ellipse 6 by 4 in, dm²", "derived", DefaultBox.MeasuredComb(152.4, 101.6).Best, math.Pi / 4 * 1.524 * 1.016, 1e-9},
	{"parabola 6 by 4 in, dm²", "derived", DefaultBox.MeasuredComb(152.4, 101.6).Low, 2.0 / 3 * 1.524 * 1.016, 1e-9},
	{"no more than the box, 600 by 300 mm, dm²", "derived", DefaultBox.MeasuredComb(600, 300).High, 12.0, 1e-9},
}

var publishedCells = []figure{
	{"12.8 cells on 10 cm, both sides", "Betts 1938", math.Floor(2 * hexagonsPerDM2(100/12.8)), 378.0, 0},
	{"20 cells on 10 cm, both sides", "Betts 1938", math.Floor(2 * hexagonsPerDM2(100/20.0)), 923.0, 0},
	// The source gives 4.64 ± 0.13 mm and 1060.92 ± 14.24 cells: the count lies
	// within its spread, and as close as the rounding of the width to 0.01 mm and the
	// walls let it.
	{"4.64 mm, both sides", "A. m. bandasii 2019", 2 * hexagonsPerDM2(4.64), 1060.92, 14.24},
	{"width of 1060.92 cells, both sides", "A. m. bandasii 2019", math.Sqrt(mm2PerDM2 * 2 / 1060.92 * 2 / math.Sqrt(3)), 4.64, 0.03},
	{"5.4 mm: up to 400 a side", "imker.felser.ch", hexagonsPerDM2(5.4), 400.0, 5},
	{"worker cells 5.2 mm", "Seeley and Morse 1976", WorkerCell.Value.Best, 5.2, 0},
	{"cells along a top bar up to 5.67 mm", "BEE-L 2005", held{WorkerCell.Value, 5.67}, true, 0},
	{"drone cells 6.2 mm", "Seeley and Morse 1976", held{DroneCell.Value, 6.2}, true, 0},
	{"drone cells 2.6 on a cm²", "Delaplane et al. 2013", held{cellsPerDM2(DroneCell.Value), 260}, true, 0},
	{"drone cells 230 on a dm²", "bees-online.at 2020", held{cellsPerDM2(DroneCell.Value), 230}, true, 0},
	{"worker cells 400 on a dm²", "bees-online.at 2020", held{cellsPerDM2(WorkerCell.Value), 400}, true, 0},
	{"5.4 mm a side", "derived", hexagonsPerDM2(5.4), 396.0, 0.05},
	{"5.2 mm a side", "derived", hexagonsPerDM2(5.2), 427.0, 0.05},
	{"6.2 mm a side", "derived", hexagonsPerDM2(6.2), 300.4, 0.05},
	{"5.4 mm on a square inch", "derived", hexagonsPerDM2(5.4) / 100 * 6.4516, 25.5, 0.06},
	{"5.2 mm on a square inch", "derived", hexagonsPerDM2(5.2) / 100 * 6.4516, 27.6, 0.06},
	{"6.2 mm on a square inch", "derived", hexagonsPerDM2(6.2) / 100 * 6.4516, 19.4, 0.06},
	{"6.9 mm on a square inch", "derived", hexagonsPerDM2(6.9) / 100 * 6.4516, 15.7, 0.06},
}

func cellsOf(n float64) Estimate { return Estimate{Exactly(n, unitCells), Explanation{What: "cells"}} }

var publishedBees = []figure{
	{"bees on a dm²", "bees-online.at 2020", BeesPerDM2.Value.Best, 125.0, 0},
	{"bees on a Zander side of 8 dm²", "bees-online.at 2020", 8 * BeesPerDM2.Value.Best, 1000.0, 0},
	{"17,000 bees in eighths", "imkerei.mueggelland.de", 17000 / BeesPerDM2.Value.Best, 136.0, 0},
	{"130 bees on a dm²", "imker.felser.ch", held{BeesPerDM2.Value, 130}, true, 0},
	{"most eggs a day", "UC ANR, Mussen et al. 1987", QueenPeak.Value.High, 2000.0, 0},
	{"an egg a minute", "imker.felser.ch", QueenPeak.Value.Low, 1440.0, 0},
	{"most brood, 21 days of it", "imker.felser.ch", 21 * QueenPeak.Value.High, 42000.0, 0},
	{"summer bees live 3 weeks", "Agroscope", held{SummerLife.Value, 21}, true, 0},
	{"summer bees live 6 weeks", "Agroscope", held{SummerLife.Value, 42}, true, 0},
	{"summer bees live 15 days", "americasbeekeeper.com", held{SummerLife.Value, 15}, true, 0},
	{"winter bees live 3 months", "Agroscope", held{WinterLife.Value, 90}, true, 0},
	{"winter bees live 6 months", "Agroscope", held{WinterLife.Value, 180}, true, 0},
	{"winter bees live 320 days", "americasbeekeeper.com", held{WinterLife.Value, 320}, true, 0},
	{"3,200 sealed cells", "derived", layingRate(cellsOf(3200)).Best, 267.0, 0.5},
	{"comb side of 8.89 dm²", "derived", DefaultBox.Trapezoid() * BeesPerDM2.Value.Best, 1111.0, 0.5},
}

func winterNeed(target string) Range {
	t, err := WinterTargetNamed(target)
	if err != nil {
		panic(err)
	}
	return t.Need.Value
}

var publishedStores = []figure{
	{"4 of 8 eighths of sealed food, g", "bees-online.at 2020", 4 * sealedHoney.Value.Best, 500.0, 0},
	{"a full Zander side, g", "bees-online.at 2020", 8 * sealedHoney.Value.Best, 1000.0, 0},
	{"an eighth of food, g", "imkerei.mueggelland.de", sealedHoney.Value.Best, 125.0, 0},
	{"bee bread on an eighth, g", "Aumeier, bienenjournal.de", beeBread.Value.Best, 100.0, 0},
	{"90 lb in October", "USDA, Overwintering, part 4", winterNeed("northern usa").InPounds().Best, 90.0, 0.12},
	{"45 lb from season to season", "Phillips and Demuth", winterNeed("usa, outdoors").InPounds().Best, 45.0, 0.12},
	{"15 lb in a cellar", "Phillips and Demuth", winterNeed("usa, cellar").InPounds().Low, 15.0, 0.12},
	{"20 lb in a cellar", "Phillips and Demuth", winterNeed("usa, cellar").InPounds().High, 20.0, 0.12},
	{"40 to 50 lb in Britain", "cotswoldbees.co.uk", held{winterNeed("britain").InPounds(), 45}, true, 0},
	{"15 kg for a strong colony", "pgs-holzwickede.de", winterNeed("central europe").Best, 15.0, 0},
	{"12 to 17 kg fed", "imkerei-goldbluete.de", held{winterNeed("central europe"), 17}, true, 0},
	{"1 kg a month", "hymenoptera.de 2018", WinterUse.Value.Low * 365 / 12 / 7, 1.0, 0.01},
	{"1.5 kg a month", "quarrylifeaward.cz 2018", WinterUse.Value.High * 365 / 12 / 7, 1.5, 0.03},
	{"full comb at 250 g/dm², kg", "derived", DefaultBox.Trapezoid() * 2 * sealedHoney.Value.Best / 1000, 2.22, 0.005},
	{"thick honey on a dm², g", "derived", held{sealedHoney.Value, 160}, true, 0},
	{"30 lb", "definition", Exactly(13.6, unitKg).InPounds().Best, 30.0, 0.12},
	{"60 lb", "definition", Exactly(27.2, unitKg).InPounds().Best, 60.0, 0.12},
}

func washed(mites, bees int) float64 { return shareRate(mites, bees, "bees", "").Best }

func wilson(count, n int) string {
	low, high := wilsonInterval(count, n)
	return fmt.Sprintf("%.4f %.4f", low, high)
}

var publishedMites = []figure{
	// The standard prints 14.3 for this example, which is 43/300.
	{"43 mites on 310 bees", "Dietemann et al. 2013 (misprint mended)", washed(43, 310), 13.87, 0.005},
	{"15 of 212 cells", "Dietemann et al. 2013", shareRate(15, 212, "cells", "").Best, 7.1, 0.05},
	{"20 mites in 5 days", "Beekeepers of Weser-Ems", dropRate(20, 5, "").Best, 4.0, 0},
	{"61 mites in 72 hours", "Ontario 2016", dropRate(61, 3, "").Best, 20.3, 0.05},
	{"15 on 300 bees", "Delaplane and Hood 1997", washed(15, 300), 5.0, 0},
	{"15 and 38 on 300 bees", "Delaplane and Hood 1999", washed(38, 300), 12.7, 0.05},
	{"3,172 mites, 117 overnight", "Delaplane and Hood 1997", held{dropRatio.Value, 3172.0 / 117}, true, 0},
	{"4,261 mites, 187 overnight", "Delaplane and Hood 1999", held{dropRatio.Value, 4261.0 / 187}, true, 0},
	{"3,172 mites, 59 overnight", "Delaplane and Hood 1999", held{dropRatio.Value, 3172.0 / 59}, true, 0},
	{"doubling in about 3 weeks", "Aumeier, bienenjournal.de", UsualDoubling.Value.Best, 21.0, 0},
	{"81 of 263", "Newcombe 1998", wilson(81, 263), "0.2553 0.3662", 0},
	{"15 of 148", "Newcombe 1998", wilson(15, 148), "0.0624 0.1605", 0},
	{"0 of 20", "Newcombe 1998", wilson(0, 20), "0.0000 0.1611", 0},
	{"1 of 29", "Newcombe 1998", wilson(1, 29), "0.0061 0.1718", 0},
	{"29 of 29", "Newcombe 1998", wilson(29, 29), "0.8830 1.0000", 0},
	{"9 on 300 bees", "derived", washed(9, 300), 3.0, 1e-9},
	{"9 on 400 bees", "derived", washed(9, 400), 2.25, 1e-9},
	{"9 on 310 bees", "derived", washed(9, 310), 2.90, 0.005},
}

var publishedColours = []figure{
	{"1 and 6", "BEE-L 2000", queenColour(2011) + queenColour(2006), "whitewhite", 0},
	{"2 and 7", "BEE-L 2000", queenColour(2012) + queenColour(1997), "yellowyellow", 0},
	{"3 and 8", "BEE-L 2000", queenColour(2013) + queenColour(2028), "redred", 0},
	{"4 and 9", "BEE-L 2000", queenColour(2014) + queenColour(1999), "greengreen", 0},
	{"5 and 0", "BEE-L 2000", queenColour(2015) + queenColour(2030), "blueblue", 0},
	{"2020", "Launceston beekeepers", queenColour(2020), "blue", 0},
	{"2021", "Launceston beekeepers", queenColour(2021), "white", 0},
	{"2025", "derived", queenColour(2025), "blue", 0},
}

var publishedTrends = []figure{
	{"Sen's example: slope", "Sen 1968, as in the tests of SciPy", theilSen(senData, 0.07).Slope, 4.0, 0},
	{"Sen's example: intercept at day 1 less one", "Sen 1968, as in the tests of SciPy", theilSen(senData, 0.07).Intercept - 4, 4.0, 1e-9},
	{"Sen's example: lower limit 26/7", "Sen 1968, corrected in the R package deming", theilSen(senData, 0.07).Low, 26.0 / 7, 1e-9},
	{"Sen's example: upper limit 35/8", "Sen 1968, corrected in the R package deming", theilSen(senData, 0.07).High, 35.0 / 8, 1e-9},
	{"by hand: S", "Little, Holy Cross, A Mann-Kendall example", mannKendall(littleData).S, 54, 0},
	{"by hand: Z", "Little, Holy Cross, A Mann-Kendall example", mannKendall(littleData).Z, 2.9058, 0.00005},
	{"by hand: one-sided p", "Little, Holy Cross, A Mann-Kendall example", mannKendall(littleData).P / 2, 0.0018, 0.00005},
}

func series(days []int, values []float64) []Point {
	var out []Point
	for i, v := range values {
		d := i
		if days != nil {
			d = days[i]
		}
		out = append(out, Point{day("2025-01-01").AddDays(d), v})
	}
	return out
}

var (
	senData    = series([]int{1, 2, 3, 4, 10, 12, 18}, []float64{9, 15, 19, 20, 45, 55, 78})
	littleData = series(nil, []float64{12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7})
)

func TestPublishedFigures(t *testing.T) {
	checks, sources := 0, map[string]int{}
	for topic, figures := range map[string][]figure{
		"development": publishedDevelopment, "queens": publishedQueens, "comb": publishedComb, "cells": publishedCells,
		"bees": publishedBees, "stores": publishedStores, "mites": publishedMites, "colours": publishedColours, "trends": publishedTrends,
		"visits": publishedVisits, "limits": publishedLimits, "practice": usedAsPractice,
	} {
		for _, f := range figures {
			if !f.holds() {
				t.Errorf("%s: %s: got %v, want %v (%s)", topic, f.what, f.got, f.want, f.source)
			}
			switch f.source {
			case "derived", "definition", "practice", "memory":
			default:
				checks++
				sources[f.source]++
			}
		}
	}
	t.Logf("%d published checks from %d sources", checks, len(sources))
	if checks < 60 || len(sources) < 15 {
		t.Errorf("%d published checks from %d sources: at least 60 from 15 are wanted", checks, len(sources))
	}
}

func (f figure) holds() bool {
	if h, ok := f.got.(held); ok {
		return h.r.Contains(h.v) == f.want
	}
	got, isNumber := f.got.(float64)
	want, both := f.want.(float64)
	if isNumber && both {
		return math.Abs(got-want) <= f.within+1e-12
	}
	return f.got == f.want
}

// Every constant and every limit of the package names its source.
func TestReferencesStand(t *testing.T) {
	for key, r := range library {
		if r.Standing == "" || r.Text == "" && r.Standing != Practice {
			t.Errorf("source %s says neither what it is nor how it stands", key)
		}
	}
	for _, c := range allConstants() {
		if len(c.From) == 0 || c.Name == "" {
			t.Errorf("constant %q has no name or no source", c.Name)
		}
		if !c.Value.Contains(c.Value.Best) || c.Value.Low > c.Value.High {
			t.Errorf("constant %q: %v is no range", c.Name, c.Value)
		}
	}
	for _, l := range MiteLimits {
		if l.From.Standing == "" {
			t.Errorf("limit of %s: its source is not in the library", l.Set)
		}
	}
}

func allConstants() []Constant {
	out := []Constant{virginFlies, firstEggs, emergedFor, castDays, WorkerCell, DroneCell, countedFill, someComb, SealedDays, BeesPerDM2, solidBrood, patchyBrood, someBrood,
		SummerLife, WinterLife, QueenPeak, sealedHoney, someHoney, openNectar, beeBread, WinterUse, UsualDoubling, dropRatio, boardDays}
	for _, d := range []Development{Worker, QueenBee, Drone} {
		out = append(out, d.Hatch, d.Cap, d.Emerge)
	}
	for _, w := range WinterTargets {
		out = append(out, w.Need)
	}
	for _, m := range []map[string]Constant{combWords, coverWords} {
		for _, c := range m {
			out = append(out, c)
		}
	}
	return out
}
