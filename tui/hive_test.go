package tui

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"barwise/colony"
)

// made builds an inspection from lines of path=value.
func made(tb testing.TB, lines string) *colony.Inspection {
	tb.Helper()
	var ins colony.Inspection
	for line := range strings.FieldsSeq(lines) {
		path, value, _ := strings.Cut(line, "=")
		if err := colony.Set(&ins, path, strings.ReplaceAll(value, "_", " ")); err != nil {
			if err := colony.Set(&ins, path, value); err != nil {
				tb.Fatal(err)
			}
		}
	}
	return &ins
}

const fullHive = `entrance=reduced follower.bar=12 queen.seen=yes queen.bar=6
	bars.1.capped_honey=yes bars.1.capped_honey.cover=1
	bars.2.capped_honey=yes bars.2.honey=yes bars.2.nectar=yes
	bars.3.pollen=yes bars.3.pollen.side=front bars.3.nectar=yes bars.3.nectar.side=back
	bars.4.eggs=yes bars.4.eggs.side=one bars.4.capped_brood=yes bars.4.capped_brood.side=one
	bars.5.capped_brood=yes bars.5.capped_brood.cover=0.8 bars.5.capped_honey=yes bars.5.capped_honey.place=corners
	bars.6.eggs=yes bars.6.open_brood=yes bars.6.eggs.amount=little
	bars.7.capped_brood=yes bars.7.emerging_brood=yes bars.7.queen_cells.capped=yes bars.7.queen_cells.capped.count=2
	bars.8.drone_brood=yes bars.8.queen_cells.cup=yes bars.8.comb.drawn=0.75
	bars.9.comb.drawn=0.5 bars.9.nectar=yes bars.9.nectar.cover=0.25
	bars.10.comb.size=small bars.10.empty=yes
	bars.11.comb.size=started
	bars.12.comb.size=bare`

const hiveBefore = `follower.bar=10 queen.seen=yes queen.bar=7
	bars.1.capped_honey=yes bars.1.capped_honey.cover=0.5
	bars.4.eggs=yes bars.4.open_brood=yes
	bars.5.capped_brood=yes
	bars.6.pollen=yes
	bars.9.comb.drawn=0.2 bars.9.empty=yes
	bars.10.comb.size=bare`

func TestHiveGolden(t *testing.T) {
	ins, prev := made(t, fullHive), made(t, hiveBefore)
	for _, width := range []int{60, 80, 120, 160} {
		for name, colour := range map[string]colours{"plain": noStyle, "mono": noColour, "sixteen": sixteenColours, "full": fullColour} {
			t.Run(fmt.Sprintf("%d/%s", width, name), func(t *testing.T) {
				out := newHive(ins, prev, width, 6, 7, newTheme(io.Discard, colour, onDark)).picture()
				golden.RequireEqual(t, []byte(out))
			})
		}
	}
}

func TestHiveReadsTheSameWithoutColour(t *testing.T) {
	ins := made(t, fullHive)
	plain := RenderHive(ins, nil, 80, 6)
	full := newHive(ins, nil, 80, 6, 0, newTheme(io.Discard, fullColour, onDark)).picture()
	if ansi.Strip(full) != plain {
		t.Errorf("without colour:\n%s\nwith colour:\n%s", plain, ansi.Strip(full))
	}
}

func TestHiveFitsAnyWidth(t *testing.T) {
	ins := made(t, fullHive)
	*ins.Follower.Bar = 30
	for width := 20; width <= 200; width++ {
		for _, selected := range []int{0, 1, 12, 30} {
			out := newHive(ins, ins, width, 6, selected, newTheme(io.Discard, noStyle, onDark)).picture()
			for line := range strings.SplitSeq(out, "\n") {
				if w := ansi.StringWidth(line); w > width {
					t.Fatalf("width %d, bar %d: a line takes %d: %q", width, selected, w, line)
				}
			}
		}
	}
}

func TestSelectedBarIsInSight(t *testing.T) {
	ins := made(t, "bars_total=40 bars.40.eggs=yes")
	if out := newHive(ins, nil, 40, 6, 40, newTheme(io.Discard, noStyle, onDark)).picture(); !strings.Contains(out, "▼") || !strings.Contains(out, "'") {
		t.Errorf("bar 40 is not drawn:\n%s", out)
	}
}

func TestEveryMarkDiffers(t *testing.T) {
	seen := map[rune]string{unsaid: "nothing said"}
	for _, what := range colony.Keys("contents") {
		m := markOf(what)
		if m.sign == unsaid {
			t.Errorf("%s has no mark", what)
		}
		if other := seen[m.sign]; other != "" {
			t.Errorf("%s and %s are both %c", what, other, m.sign)
		}
		seen[m.sign] = what
	}
	for _, stage := range colony.Keys("queen_cells") {
		found := false
		for _, s := range cellSigns {
			found = found || s.stage == stage
		}
		if !found {
			t.Errorf("queen cells %s have no sign", stage)
		}
	}
}

func TestCombIsAsTallAsItIsBuilt(t *testing.T) {
	for lines, want := range map[string]int{
		"bars.4.comb.drawn=0": 0, "bars.4.comb.drawn=0.1": 1, "bars.4.comb.drawn=0.5": 6, "bars.4.comb.drawn=1": 12,
		"bars.4.comb.size=bare": 0, "bars.4.comb.size=started": 1, "bars.4.comb.size=small": 4, "bars.4.comb.size=large": 12,
		"bars.4.eggs=yes": 12, "bars.4.placed=2026-05-01": 0, "bars.4.comb.new=yes": 12,
	} {
		if got := combRows(made(t, lines).Bar(4), 12); got != want {
			t.Errorf("%s: %d rows of 12, want %d", lines, got, want)
		}
	}
}

func TestFillDrawsSharesAsTheyWereSaid(t *testing.T) {
	for lines, want := range map[string]map[string]int{
		"bars.4.eggs=yes": {"eggs": 100},
		"bars.4.nectar=yes bars.4.nectar.cover=0.25":                                     {"nectar": 25, "": 75},
		"bars.4.eggs=yes bars.4.honey=yes":                                               {"eggs": 50, "honey": 50},
		"bars.4.honey=yes bars.4.honey.cover=0.8 bars.4.pollen=yes":                      {"honey": 76, "pollen": 24},
		"bars.4.honey=yes bars.4.honey.amount=much bars.4.eggs=yes":                      {"honey": 67, "eggs": 33},
		"bars.4.honey=yes bars.4.honey.cover=1 bars.4.eggs=yes bars.4.eggs.cover=1":      {"honey": 50, "eggs": 50},
		"bars.4.eggs=yes bars.4.eggs.cover=0 bars.4.honey=yes bars.4.honey.cover=0.0001": {"eggs": 1, "honey": 1, "": 98},
	} {
		got := map[string]int{}
		for _, what := range fill(made(t, lines).Bar(4).Contents, 100) {
			got[what]++
		}
		for what, n := range want {
			if d := got[what] - n; d < -4 || d > 4 {
				t.Errorf("%s: %d cells of %q, want about %d", lines, got[what], what, n)
			}
		}
	}
}

func TestFillFollowsThePlace(t *testing.T) {
	b := made(t, "bars.4.eggs=yes bars.4.eggs.place=top bars.4.honey=yes bars.4.pollen=yes bars.4.pollen.place=bottom bars.4.nectar=yes bars.4.nectar.place=edge").Bar(4)
	cells := slices.Compact(fill(b.Contents, 40))
	if want := []string{"eggs", "honey", "nectar", "pollen"}; !slices.Equal(cells, want) {
		t.Errorf("from the top %v, want %v", cells, want)
	}
}

func TestCompare(t *testing.T) {
	changes := compare(made(t, hiveBefore), made(t, fullHive))
	var got []string
	for _, c := range changes {
		got = append(got, fmt.Sprintf("%d %+d %s", c.bar, c.way, c.text))
	}
	for _, want := range []string{
		"0 +1 brood on bars 4-7, was on bars 4-5",
		"0 +0 queen on bar 6, was on 7",
		"0 +1 follower board behind bar 12, was behind 10",
		"1 +1 capped honey 100 %, was 50 %",
		"4 -1 open brood not named now",
		"4 +1 capped brood now",
		"9 +1 comb 50 %, was 20 %",
		"10 +1 comb 33 %, was 0 %",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("missing %q in\n%s", want, strings.Join(got, "\n"))
		}
	}
	if signOf(changes, 4) != "±" || signOf(changes, 9) != "±" || signOf(changes, 1) != "+" || signOf(changes, 3) != "" {
		t.Errorf("signs: 1 %q 3 %q 4 %q 9 %q", signOf(changes, 1), signOf(changes, 3), signOf(changes, 4), signOf(changes, 9))
	}
}

func TestSilenceIsNoChange(t *testing.T) {
	if got := compare(made(t, "bars.4.eggs=yes"), made(t, "bars.5.eggs=yes queen.seen=no")); len(got) != 1 || got[0].bar != 0 {
		t.Errorf("changes: %v", got)
	}
	if got := compare(made(t, "bars.4.eggs=yes"), made(t, "bars.4.comb.new=yes")); len(got) != 0 {
		t.Errorf("changes: %v", got)
	}
}

func TestSmallChangeHasItsSign(t *testing.T) {
	got := compare(made(t, "bars.4.eggs=yes bars.4.eggs.cover=0.333"), made(t, "bars.4.eggs=yes bars.4.eggs.cover=0.3335"))
	if signOf(got, 4) != "+" {
		t.Errorf("changes: %v", got)
	}
}

func TestMovedCombIsRecognised(t *testing.T) {
	const was = "bars.4.eggs=yes bars.4.pollen=yes bars.4.nectar=yes bars.4.nectar.place=top"
	got := compare(made(t, was), made(t, strings.ReplaceAll(was, "bars.4", "bars.6")))
	if !slices.ContainsFunc(got, func(c change) bool { return c.bar == 6 && c.text == "looks like bar 4 of last time" }) {
		t.Errorf("changes: %v", got)
	}
}

func ExampleRenderHive() {
	var ins colony.Inspection
	for _, l := range []colony.Leaf{{Path: "bars.1.honey", Value: "yes"}, {Path: "bars.2.eggs", Value: "yes"},
		{Path: "bars.2.open_brood", Value: "yes"}, {Path: "bars.3.comb.drawn", Value: "0.5"}, {Path: "queen.bar", Value: "2"}} {
		if err := colony.Set(&ins, l.Path, l.Value); err != nil {
			fmt.Println(err)
		}
	}
	fmt.Println(RenderHive(&ins, nil, 30, 4))
	// Output:
	//   1      2      3
	// ┌─━━━━━━ ━━━━━━ ━━━━━━
	// │ ------ cccccc ::::::
	// │ ------ ccccc' ::::::
	// │ ------ ''''''
	// │  ----   ''''
	//          Q
	// - honey  c open brood  ' eggs
	// : comb, nothing said  Q queen
}
