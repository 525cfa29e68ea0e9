package colony

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func anyBox(t *rapid.T) Box {
	b := DefaultBox
	b.Top = rapid.Float64Range(250, 600).Draw(t, "top")
	b.Bottom = rapid.Float64Range(50, b.Top).Draw(t, "bottom")
	b.Depth = rapid.Float64Range(150, 450).Draw(t, "depth")
	return b
}

func TestFullCombIsWithinTheBoxAndGrowsWithIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBox(t)
		full := b.FullComb()
		if !(0 < full.Low && full.Low <= full.Best && full.Best <= full.High) || full.High > b.Trapezoid()+1e-9 {
			t.Fatalf("%+v: %v, trapezoid %v", b, full, b.Trapezoid())
		}
		wider, deeper := b, b
		wider.Bottom = math.Min(b.Top, b.Bottom+20)
		deeper.Depth += 20
		for _, bigger := range []Box{wider, deeper} {
			if g := bigger.FullComb(); g.Low < full.Low-1e-9 || g.Best < full.Best-1e-9 || g.High < full.High-1e-9 {
				t.Fatalf("%+v: %v shrank to %v", bigger, full, g)
			}
		}
		double := Box{Top: 2 * b.Top, Bottom: 2 * b.Bottom, Depth: 2 * b.Depth, BeeSpace: 2 * b.BeeSpace}
		if g := double.FullComb(); math.Abs(g.Best/full.Best-4) > 1e-6 || math.Abs(g.High/full.High-4) > 1e-6 {
			t.Fatalf("twice the lengths: %v, want four times %v", g, full)
		}
	})
}

// The closed forms agree with adding up thin slices.
func TestFullCombAgainstSlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBox(t)
		b.BeeSpace = rapid.Float64Range(0, 20).Draw(t, "bee space")
		b.Bottom = rapid.Float64Range(0, b.Top).Draw(t, "bottom")
		depth := rapid.Float64Range(10, b.Depth).Draw(t, "depth")
		for name, c := range map[string]struct {
			got   float64
			shape func(float64) float64
		}{
			"ellipse":  {b.ellipse(depth), func(u float64) float64 { return math.Sqrt(1 - u*u) }},
			"parabola": {b.parabola(depth), func(u float64) float64 { return 1 - u*u }},
		} {
			const slices = 4000
			sum := 0.0
			for i := range slices {
				u := (float64(i) + 0.5) / slices
				sum += math.Min(math.Max(0, b.widthAt(u*depth)-2*b.BeeSpace), b.Top*c.shape(u))
			}
			if want := sum / slices * depth / mm2PerDM2; math.Abs(c.got-want) > 1e-3 {
				t.Fatalf("%s in %+v down to %v mm: %v, by slices %v", name, b, depth, c.got, want)
			}
		}
	})
}

// Where walls do not narrow it, a full comb is exactly a half ellipse of the
// bar's width and the depth (π/4 of the rectangle), and at the least a
// parabola (2/3). In the default box the walls cut the ellipse: walls of
// 429 − 0.9107·y mm and an ellipse of 445·√(1−(y/272)²) mm are both 210.9 mm
// wide at y = 239.5 mm; a trapezoid of 7.66 dm² lies above and 0.46 dm² of the
// ellipse below, 8.13 dm² in all.
func TestFullCombWorkedFigures(t *testing.T) {
	straight := Box{Top: 400, Bottom: 400, Depth: 300, BeeSpace: 0}
	full := straight.FullComb()
	for name, c := range map[string][2]float64{
		"half ellipse": {full.Best, math.Pi / 4 * 12}, "parabola": {full.Low, 8}, "rectangle": {full.High, 12},
	} {
		if math.Abs(c[0]-c[1]) > 0.002 {
			t.Errorf("%s: %v, want %v", name, c[0], c[1])
		}
	}
	cross := crossing(DefaultBox)
	walls := (429 + (429 - (445.0-190)/280*cross)) / 2 * cross / 1e4
	u := cross / 272
	ellipse := 445 * 272 * (math.Pi/4 - (u*math.Sqrt(1-u*u)+math.Asin(u))/2) / 1e4
	if got := DefaultBox.FullComb().Best; math.Abs(got-(walls+ellipse)) > 0.005 || math.Abs(got-8.13) > 0.005 {
		t.Errorf("default box: %v, by parts %v + %v (crossing at %v mm)", got, walls, ellipse, cross)
	}
}

// crossing finds the depth in mm below which the ellipse is narrower than the
// walls, by halving.
func crossing(b Box) float64 {
	low, high := b.Depth/2, b.Depth-b.BeeSpace
	for range 60 {
		y := (low + high) / 2
		if b.widthAt(y)-2*b.BeeSpace < b.Top*math.Sqrt(1-math.Pow(y/(b.Depth-b.BeeSpace), 2)) {
			low = y
		} else {
			high = y
		}
	}
	return low
}

func TestBoxCheck(t *testing.T) {
	if err := DefaultBox.Check(); err != nil {
		t.Errorf("default box: %v", err)
	}
	for name, spoil := range map[string]func(*Box){
		"centimetres":     func(b *Box) { b.Top = 44.5 },
		"wider below":     func(b *Box) { b.Bottom = 500 },
		"no depth":        func(b *Box) { b.Depth = 0 },
		"bar of an inch":  func(b *Box) { b.Bar = 1 },
		"huge bee space":  func(b *Box) { b.BeeSpace = 80 },
		"not a bar in it": func(b *Box) { b.Bars = 0 },
	} {
		b := DefaultBox
		spoil(&b)
		if b.Check() == nil {
			t.Errorf("%s: accepted", name)
		}
	}
	// The least and the most of each measure, and a little beyond.
	for name, c := range map[string]struct {
		of          func(*Box) *float64
		least, most float64
	}{
		"top":       {func(b *Box) *float64 { return &b.Top }, 100, 1000},
		"bottom":    {func(b *Box) *float64 { return &b.Bottom }, 0, 100},
		"depth":     {func(b *Box) *float64 { return &b.Depth }, 100, 800},
		"bar":       {func(b *Box) *float64 { return &b.Bar }, 20, 60},
		"bee space": {func(b *Box) *float64 { return &b.BeeSpace }, 0, 20},
	} {
		for mm, good := range map[float64]bool{c.least: true, c.most: true, c.least - 0.1: false, c.most + 0.1: false} {
			b := Box{Top: 100, Bottom: 0, Depth: 280, Bar: 35, BeeSpace: 8, Bars: 1}
			if *c.of(&b) = mm; (b.Check() == nil) != good {
				t.Errorf("%s of %v mm: %v", name, mm, b.Check())
			}
		}
	}
}

func TestCombArea(t *testing.T) {
	full := DefaultBox.FullComb()
	area := func(leaves ...string) Estimate {
		ins := visit("2025-05-20", leaves...)
		return DefaultBox.CombArea(ins.Bar(4), "20 May")
	}
	for name, c := range map[string]struct {
		got  Estimate
		want float64
	}{
		"half drawn":     {area("bars.4.comb.drawn=0.5"), full.Best / 2},
		"bare":           {area("bars.4.comb.size=bare"), 0},
		"150 by 100 mm":  {area("bars.4.comb.width_mm=150", "bars.4.comb.depth_mm=100"), math.Pi / 4 * 1.5},
		"large, by word": {area("bars.4.comb.size=large"), 0.75 * full.Best},
	} {
		if !c.got.Known() || math.Abs(c.got.Best-c.want) > 1e-9 || !c.got.Contains(c.want) {
			t.Errorf("%s: %v, want %v", name, c.got.Range, c.want)
		}
	}
	if e := area("bars.4.festooning=yes"); e.Known() {
		t.Errorf("a bar of which nothing was said has comb %v", e.Range)
	}
	if e := area("bars.4.honey=yes"); !e.Known() || e.High < full.High {
		t.Errorf("a bar with honey has some comb, up to a full one: %v", e.Range)
	}
	if deep := area("bars.4.comb.depth_mm=100"); deep.Best > full.Best || !deep.Contains(1.5) {
		t.Errorf("100 mm deep: %v", deep.Range)
	}
}

func TestContentsToCellsAndFood(t *testing.T) {
	full := DefaultBox.FullComb()
	ins := visit("2025-05-20", "bars.4.comb.drawn=1", "bars.4.capped_brood=yes", "bars.4.capped_brood.cover=0.5", "bars.4.capped_brood.pattern=solid",
		"bars.5.comb.drawn=1", "bars.5.capped_honey=yes", "bars.5.capped_honey.cover=1", "bars.5.capped_honey.side=one",
		"bars.6.eggs=no")
	brood := countBrood(&ins, DefaultBox)
	if want := full.Best * 2 * 0.5 * hexagonsPerDM2(5.2) * 0.95; math.Abs(brood.Capped.Best-want) > 1e-6 {
		t.Errorf("capped brood %v, want %v", brood.Capped.Range, want)
	}
	if brood.Eggs.Known() || brood.Open.Known() {
		t.Error("denied eggs, and larvae nobody spoke of, were counted")
	}
	if got, want := layingRate(brood.Capped).Best, brood.Capped.Best/12; math.Abs(got-want) > 1e-9 {
		t.Errorf("laying rate %v, want %v", got, want)
	}
	for cells, caveats := range map[float64]int{24000: 1, 25000: 2} {
		if got := layingRate(cellsOf(cells)).Why.Caveats; len(got) != caveats {
			t.Errorf("%v sealed cells, of a queen that lays 2,000 a day at the most: %q", cells, got)
		}
	}
	food := countFood(&ins, DefaultBox)
	if want := full.Best * 0.125; math.Abs(food.Honey.Best-want) > 1e-6 {
		t.Errorf("one side of honey: %v, want %v kg", food.Honey.Range, want)
	}
	gap := storesGap(food, OwnWinterTarget(10))
	if math.Abs(gap.Best-(10-food.Honey.Best)) > 1e-9 {
		t.Errorf("gap %v", gap.Range)
	}
	if weeks := weeksOfFood(food, WinterUse); math.Abs(weeks.Best-food.Honey.Best/WinterUse.Value.Best) > 1e-9 {
		t.Errorf("weeks %v", weeks.Range)
	}
}

// The pattern said of a bar, or of the colony, fills the cells; both words
// together say nothing.
func TestPatternFillsCells(t *testing.T) {
	brood := []string{"bars.4.comb.drawn=1", "bars.4.capped_brood=yes", "bars.4.capped_brood.cover=0.5"}
	for name, c := range map[string]struct {
		leaves []string
		fill   Constant
	}{
		"nothing said":       {nil, someBrood},
		"solid on the bar":   {[]string{"bars.4.capped_brood.pattern=solid"}, solidBrood},
		"patchy on the bar":  {[]string{"bars.4.capped_brood.pattern=patchy"}, patchyBrood},
		"patchy as a whole":  {[]string{"brood_pattern=patchy"}, patchyBrood},
		"one solid, all not": {[]string{"bars.4.capped_brood.pattern=solid", "brood_pattern=patchy"}, someBrood},
	} {
		ins := visit("2025-05-20", append(brood[:3:3], c.leaves...)...)
		if got := filling(&ins, "capped_brood"); got.Name != c.fill.Name {
			t.Errorf("%s: %s", name, got.Name)
		}
		want := DefaultBox.FullComb().Best * hexagonsPerDM2(5.2) * c.fill.Value.Best
		if got := countBrood(&ins, DefaultBox).Capped.Best; math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %v cells, want %v", name, got, want)
		}
	}
}

func TestCountedBars(t *testing.T) {
	ins := visit("2025-05-20", "contents.capped_brood=yes", "contents.capped_brood.bars=3", "contents.capped_brood.bars_max=4")
	area := DefaultBox.CombTotal(&ins, "capped_brood")
	full := DefaultBox.FullComb()
	if !area.Contains(3*2*full.Best*0.5) || area.High > 4*2*full.High+1e-9 {
		t.Errorf("three or four bars of brood: %v", area.Range)
	}
}

func TestAreasGrowWithWhatIsSaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBox(t)
		low := rapid.Float64Range(0, 1).Draw(t, "low")
		high := rapid.Float64Range(low, 1).Draw(t, "high")
		comb := func(drawn, cover float64) (Estimate, Estimate, Estimate) {
			ins := Inspection{At: day("2025-05-20").Time(), Bars: []Bar{{Bar: 1, Comb: &Comb{Drawn: &drawn},
				Contents: []Content{{What: "honey", Present: true, Cover: &cover}, {What: "capped_brood", Present: true, Cover: &cover}}}}}
			return b.CombArea(&ins.Bars[0], ""), countFood(&ins, b).Honey, countBrood(&ins, b).Capped
		}
		a1, f1, c1 := comb(low, 0.5)
		a2, f2, c2 := comb(high, 0.5)
		_, f3, c3 := comb(high, 0.9)
		for name, pair := range map[string][2]Range{"comb": {a1.Range, a2.Range}, "food": {f1.Range, f2.Range}, "brood": {c1.Range, c2.Range},
			"food by cover": {f2.Range, f3.Range}, "brood by cover": {c2.Range, c3.Range}} {
			x, y := pair[0], pair[1]
			if x.Low > y.Low+1e-9 || x.Best > y.Best+1e-9 || x.High > y.High+1e-9 {
				t.Fatalf("%s fell from %v to %v", name, x, y)
			}
			if !y.Contains(y.Best) {
				t.Fatalf("%s: %v does not hold its best", name, y)
			}
		}
	})
}

func TestEmerging(t *testing.T) {
	b := BroodCount{Capped: cellsOf(1200), Open: cellsOf(600), Eggs: cellsOf(300)}
	for days, want := range map[int]float64{0: 0, 6: 600, 12: 1200, 18: 1800, 21: 2100, 40: 2100} {
		if got := emergingWithin(b, days).Best; math.Abs(got-want) > 1e-9 {
			t.Errorf("%d days: %v, want %v", days, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.IntRange(0, 40).Draw(t, "days")
		x, y := emergingWithin(b, d), emergingWithin(b, d+1)
		if y.Low < x.Low || y.Best < x.Best || y.High < x.High || y.High > 2100+1e-9 {
			t.Fatalf("day %d: %v then %v", d, x.Range, y.Range)
		}
	})
	if emergingWithin(BroodCount{}, 12).Known() {
		t.Error("bees emerge from brood that nobody saw")
	}
}

func TestForecast(t *testing.T) {
	bees := 10000.0
	adults := Estimate{Exactly(bees, unitBees), Explanation{What: "adults"}}
	rate := 12000.0 / 12
	steady := BroodCount{Capped: cellsOf(12000), Open: cellsOf(6000), Eggs: cellsOf(3000)}
	f, ok := forecastColony(day("2025-05-20"), adults, steady, true, Season{})
	if !ok || len(f.Weeks) != ForecastWeeks || f.Weeks[5].On != day("2025-07-01") {
		t.Fatalf("forecast %v %+v", ok, f.Weeks)
	}
	// With 1,000 eggs a day throughout, adults tend to 1,000 × life; after n days
	// they are A·qⁿ + 1000·(1−qⁿ)/(1−q) with q = 1 − 1/life.
	q := 1 - 1/SummerLife.Value.Best
	qn := math.Pow(q, 42)
	if got, want := f.Weeks[5].Adults.Best, bees*qn+rate*(1-qn)/(1-q); math.Abs(got-want) > 1 {
		t.Errorf("steady laying: %v after six weeks, want %v", got, want)
	}
	for i, w := range f.Weeks {
		if !w.Adults.Contains(w.Adults.Best) || w.Adults.Low < 0 {
			t.Errorf("week %d: %v", i, w.Adults)
		}
	}
	// Larvae and eggs that were not counted are as many as the queen lays.
	if alone, _ := forecastColony(day("2025-05-20"), adults, BroodCount{Capped: cellsOf(12000)}, true, Season{}); math.Abs(alone.Weeks[5].Adults.Best-f.Weeks[5].Adults.Best) > 1e-6 {
		t.Errorf("from sealed brood alone: %v, want %v", alone.Weeks[5].Adults, f.Weeks[5].Adults)
	}
	// Eggs that were looked for and not found are none: the 3,000 bees that they
	// would have become are wanting, less those that die in the meantime.
	gap, _ := forecastColony(day("2025-05-20"), adults, BroodCount{Capped: cellsOf(12000), Open: cellsOf(6000), None: []string{"eggs"}}, true, Season{})
	if missing := f.Weeks[5].Adults.Best - gap.Weeks[5].Adults.Best; missing < 1000 || missing >= 3000 {
		t.Errorf("without eggs on the day: %v bees fewer, want some of 3,000", missing)
	}
	none, _ := forecastColony(day("2025-05-20"), adults, steady, false, Season{})
	if none.Weeks[5].Brood.Best != 0 || none.Weeks[5].Adults.Best >= f.Weeks[5].Adults.Best {
		t.Errorf("without a queen: %v", none.Weeks[5])
	}
	winter, _ := forecastColony(day("2025-12-20"), adults, steady, false, Season{})
	if winter.Weeks[5].Adults.Best <= none.Weeks[5].Adults.Best {
		t.Errorf("winter bees die off as fast as summer bees: %v", winter.Weeks[5])
	}
	if _, ok := forecastColony(day("2025-05-20"), Estimate{}, steady, true, Season{}); ok {
		t.Error("a forecast without adults")
	}
}

func TestSeasons(t *testing.T) {
	north, south := Season{}, Season{South: true}
	if !north.SwarmTime(day("2025-05-20")) || south.SwarmTime(day("2025-05-20")) || !south.SwarmTime(day("2025-11-20")) {
		t.Error("swarm season is April to July in the north, October to January in the south")
	}
	if got := north.Next(day("2025-05-20"), time.April); got != day("2026-04-01") {
		t.Errorf("next April: %s", got)
	}
	if got := south.Next(day("2025-05-20"), time.April); got != day("2025-10-01") {
		t.Errorf("next southern spring: %s", got)
	}
}

func TestCheckColour(t *testing.T) {
	year := func(y int) *int { return &y }
	for name, c := range map[string]struct {
		q    *Queen
		year int
		fits bool
	}{
		"no queen":          {nil, 0, true},
		"colour alone":      {&Queen{Colour: "green"}, 2024, true},
		"this year's":       {&Queen{Colour: "blue"}, 2025, true},
		"colour and year":   {&Queen{Colour: "red", Year: year(2023)}, 2023, true},
		"they disagree":     {&Queen{Colour: "red", Year: year(2024)}, 2024, false},
		"year alone":        {&Queen{Year: year(2022)}, 2022, true},
		"no colour of code": {&Queen{Colour: "pink"}, 0, true},
	} {
		f := checkColour(c.q, day("2025-06-01"))
		if f.Year != c.year || f.Fits != c.fits {
			t.Errorf("%s: %+v", name, f)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		y := rapid.IntRange(1900, 2200).Draw(t, "year")
		if queenColour(y) != queenColour(y+5) || queenYears(queenColour(y), y)[0] != y {
			t.Fatalf("%d: %s", y, queenColour(y))
		}
	})
}
