package colony

import (
	"slices"
	"strings"
	"testing"
)

func TestJudgeQueen(t *testing.T) {
	for name, c := range map[string]struct {
		history []Inspection
		today   string
		state   QueenState
		sure    Sureness
		lastEgg string // usual span
		by      string // ExpectBy
		says    string // part of Says and Notes
	}{
		"nothing is known of an empty record": {nil, "2025-05-20", NoSign, Unsure, "not known", "", "nothing recorded"},
		"weather tells nothing of the queen": {[]Inspection{visit("2025-05-20", "weather.sky=sunny")},
			"2025-05-20", NoSign, Unsure, "not known", "", "nothing recorded"},
		"eggs mean that a queen laid in the last three days": {[]Inspection{visit("2025-05-20", "bars.4.eggs=yes")},
			"2025-05-20", Laying, Sure, "17 to 20 May 2025", "", noWorry},
		"a queen not seen while there are eggs is no worry": {[]Inspection{visit("2025-05-20", "bars.4.eggs=yes", "queen.seen=no")},
			"2025-05-25", Laying, Sure, "17 to 20 May 2025", "", noWorry},
		"larvae alone leave the eggs open": {[]Inspection{visit("2025-05-20", "bars.4.open_brood=yes")},
			"2025-05-20", Laying, Likely, "11 to 20 May 2025", "", "larvae seen on 20 May"},
		"larvae and the queen herself": {[]Inspection{visit("2025-05-20", "bars.4.open_brood=yes", "queen.seen=yes")},
			"2025-05-20", Laying, Sure, "11 to 20 May 2025", "", "larvae and the queen seen on 20 May"},
		"no cell is no cell, however it is said": {[]Inspection{visit("2025-05-20", "queen_cells.charged=yes", "queen_cells.charged.count=0", "contents.eggs=no")},
			"2025-05-20", NoSign, Unsure, "not known", "", "no sign"},
		"brood after the cells that the old queen cannot have laid": {[]Inspection{visit("2025-05-20", "queen_cells.capped=yes", "contents.eggs=no"), visit("2025-07-20", "bars.4.brood=yes")},
			"2025-07-20", WasLaying, Unsure, "29 Jun to 20 Jul 2025", "", "not spoken of"},
		"larvae and no eggs: she stopped": {[]Inspection{visit("2025-05-20", "bars.4.open_brood=yes", "contents.eggs=no")},
			"2025-05-20", WasLaying, Likely, "11 to 17 May 2025", "2025-07-01", "no eggs on 20 May; by the brood"},
		"only sealed brood": {[]Inspection{visit("2025-05-20", "bars.4.capped_brood=yes", "contents.eggs=no", "contents.open_brood=no")},
			"2025-05-20", WasLaying, Unsure, "29 Apr to 11 May 2025", "2025-06-25", "no eggs on 20 May; by the brood"},
		"sealed brood with the rest not spoken of claims little": {[]Inspection{visit("2025-05-20", "bars.4.capped_brood=yes")},
			"2025-05-20", WasLaying, Unsure, "29 Apr to 20 May 2025", "", "not spoken of"},
		"no eggs on one bar says nothing of the hive": {[]Inspection{visit("2025-05-20", "bars.4.eggs=no", "bars.5.capped_brood=yes")},
			"2025-05-20", WasLaying, Unsure, "29 Apr to 20 May 2025", "", "not spoken of"},
		"no brood at all after brood": {[]Inspection{visit("2025-04-20", "bars.4.capped_brood=yes"), visit("2025-05-20", noBrood...)},
			"2025-05-20", Queenless, Unsure, "30 Mar to 29 Apr 2025", "2025-05-20", "no brood of any stage"},
		"no brood as one word": {[]Inspection{visit("2025-05-20", "contents.brood=no")},
			"2025-05-20", Queenless, Unsure, "not known", "2025-05-20", "none recorded before"},
		"a later visit that is silent leaves the day": {[]Inspection{visit("2025-05-01", "bars.4.eggs=yes"), visit("2025-05-20", "bars.4.honey=yes")},
			"2025-05-20", Laying, Sure, "28 Apr to 1 May 2025", "", "eggs seen on 1 May"},
		"eggs then none": {[]Inspection{visit("2025-05-10", "bars.4.eggs=yes"), visit("2025-05-17", "contents.eggs=no", "bars.4.open_brood=yes")},
			"2025-05-17", WasLaying, Likely, "8 to 14 May 2025", "2025-06-28", "by the brood"},
		"queen seen, no eggs spoken of": {[]Inspection{visit("2025-05-20", "queen.seen=yes")},
			"2025-05-20", QueenThere, Sure, "not known", "", "the queen was seen"},
		"queen seen, no eggs": {[]Inspection{visit("2025-05-20", "queen.seen=yes", "contents.eggs=no")},
			"2025-05-20", QueenThere, Sure, "not known", "", "about to swarm"},
		"queen not seen, nothing else": {[]Inspection{visit("2025-05-20", "queen.seen=no")},
			"2025-05-20", NoSign, Unsure, "not known", "", "no sign of a queen recorded"},
		"told of eggs on an earlier day": {[]Inspection{visit("2025-05-20", "earlier.eggs_seen=yes", "earlier.eggs_seen.on=2025-05-16")},
			"2025-05-20", NoSign, Unsure, "13 to 20 May 2025", "", "16 May"},
		"charged cells and no eggs": {[]Inspection{visit("2025-05-20", "queen_cells.charged=yes", "contents.eggs=no")},
			"2025-05-20", RaisingQueen, Likely, "not known", "2025-07-04", "act if there are none by"},
		"a virgin seen": {[]Inspection{visit("2025-05-20", "queen.seen=yes", "queen.virgin=yes")},
			"2025-05-20", VirginMating, Sure, "not known", "2025-06-24", "first eggs"},
		"a cell that a queen has left": {[]Inspection{visit("2025-05-20", "queen_cells.emerged=yes")},
			"2025-05-20", VirginMating, Likely, "not known", "2025-06-17", "first eggs"},
		"sealed cells, and the days have gone by": {[]Inspection{visit("2025-05-20", "queen_cells.capped=yes")},
			"2025-05-29", VirginMating, Unsure, "not known", "2025-06-27", "first eggs"},
		"sealed cells, and nothing heard for long": {[]Inspection{visit("2025-05-20", "queen_cells.capped=yes")},
			"2025-07-10", NoSign, Unsure, "not known", "2025-06-27", "no inspection has spoken"},
		"no eggs after the last day for them": {[]Inspection{visit("2025-05-20", "queen_cells.capped=yes"), visit("2025-06-28", "contents.eggs=no")},
			"2025-06-28", Queenless, Unsure, "not known", "2025-06-27", "make sure"},
		"eggs after the cells: settled": {[]Inspection{visit("2025-05-20", "queen_cells.capped=yes"), visit("2025-06-10", "bars.3.eggs=yes")},
			"2025-06-10", Laying, Sure, "7 to 10 Jun 2025", "", noWorry},
		"cells cut": {[]Inspection{visit("2025-05-20", "queen_cells.capped=yes", "actions.cut_cells=yes", "contents.eggs=no")},
			"2025-05-20", RaisingQueen, Unsure, "not known", "2025-06-27", "one that was missed"},
		"cups are no cells": {[]Inspection{visit("2025-05-20", "queen_cells.cup=yes", "contents.eggs=no")},
			"2025-05-20", NoSign, Unsure, "not known", "", "no sign"},
		"requeened": {[]Inspection{visit("2025-05-20", "actions.requeen=yes")},
			"2025-05-20", QueenThere, Likely, "not known", "2025-06-11", "mated queen put in"},
		"released a week after she was put in": {[]Inspection{visit("2025-05-20", "actions.requeen=yes"), visit("2025-05-27", "actions.release_queen=yes")},
			"2025-05-27", QueenThere, Likely, "not known", "2025-06-18", "mated queen put in on 27 May"},
		"a virgin put in": {[]Inspection{visit("2025-05-20", "actions.requeen=yes", "actions.requeen.what=virgin queen")},
			"2025-05-20", VirginMating, Likely, "not known", "2025-06-24", "virgin queen put in"},
		"told that it was requeened": {[]Inspection{visit("2025-05-20", "earlier.requeened=yes", "earlier.requeened.on=2025-05-10")},
			"2025-05-20", QueenThere, Likely, "not known", "2025-06-01", "mated queen put in on 10 May"},
		"told that it swarmed": {[]Inspection{visit("2025-05-20", "earlier.swarmed=yes", "earlier.swarmed.on=2025-05-18", "contents.eggs=no")},
			"2025-05-20", RaisingQueen, Unsure, "not known", "2025-06-29", "swarmed on 18 May"},
		"laying workers": {[]Inspection{visit("2025-06-20", "signs.laying_worker=yes", "bars.4.eggs=yes")},
			"2025-06-20", LayingWorkers, Likely, "not known", "2025-06-20", "twice in a cell"},
		"laying workers, and a queen put in the same day": {[]Inspection{visit("2025-06-20", "signs.laying_worker=yes", "bars.4.eggs=yes", "actions.requeen=yes")},
			"2025-06-20", QueenThere, Likely, "not known", "2025-07-12", "mated queen put in"},
		"laying workers, then the queen herself": {[]Inspection{visit("2025-06-20", "signs.laying_worker=yes"), visit("2025-06-27", "queen.seen=yes", "bars.4.eggs=yes")},
			"2025-06-27", Laying, Sure, "24 to 27 Jun 2025", "", "eggs seen on 27 Jun"},
		"a split is told of both parts": {[]Inspection{visit("2025-05-20", "bars.4.eggs=yes", "actions.split=yes")},
			"2025-05-20", Laying, Sure, "17 to 20 May 2025", "", "part without the queen"},
		"inspections after the day do not count": {[]Inspection{visit("2025-05-20", "bars.4.eggs=yes"), visit("2025-06-20", noBrood...)},
			"2025-05-25", Laying, Sure, "17 to 20 May 2025", "", "eggs"},
	} {
		t.Run(strings.ReplaceAll(name, " ", "_"), func(t *testing.T) {
			e := judgeQueen(c.history, day(c.today))
			if e.State != c.state || e.Sureness != c.sure {
				t.Errorf("judged %q, %s; want %q, %s\n%s", e.State, e.Sureness, c.state, c.sure, e.Says)
			}
			if got := e.LastEgg.Usual.String(); got != c.lastEgg {
				t.Errorf("last egg %s, want %s", got, c.lastEgg)
			}
			if e.ExpectBy.String() != c.by {
				t.Errorf("expected by %q, want %q", e.ExpectBy, c.by)
			}
			if all := e.Says + " " + strings.Join(e.Notes, " "); !strings.Contains(all, c.says) {
				t.Errorf("says %q, want %q in it", all, c.says)
			}
			if e.Why.What == "" {
				t.Error("no explanation")
			}
		})
	}
}

func TestCellsBesideALayingQueen(t *testing.T) {
	e := judgeQueen([]Inspection{visit("2025-05-20", "bars.4.eggs=yes", "queen_cells.charged=yes", "queen_cells.charged.kind=swarm")}, day("2025-05-20"))
	if e.State != Laying || !slices.Contains(e.Also, RaisingQueen) {
		t.Fatalf("judged %s also %v", e.State, e.Also)
	}
	swarm := e.Calendar.When(MilestoneSwarm)
	if got, want := swarm.Usual.String(), "20 May to 1 Jun 2025"; got != want {
		t.Errorf("swarm %s, want %s", got, want)
	}
}

// Two looks at the same cells say more than one: charged on the 12th and
// sealed on the 17th leaves five days for the laying of the egg.
func TestTwoLooksAtCellsNarrow(t *testing.T) {
	one := judgeQueen([]Inspection{visit("2025-05-17", "queen_cells.capped=yes", "contents.eggs=no")}, day("2025-05-17"))
	two := judgeQueen([]Inspection{visit("2025-05-12", "queen_cells.charged=yes"), visit("2025-05-17", "queen_cells.capped=yes", "contents.eggs=no")}, day("2025-05-17"))
	if got, want := one.Calendar.When(MilestoneLaid).Usual.String(), "1 to 9 May 2025"; got != want {
		t.Errorf("one look: %s, want %s", got, want)
	}
	if got, want := two.Calendar.When(MilestoneLaid).Usual.String(), "4 to 9 May 2025"; got != want {
		t.Errorf("two looks: %s, want %s", got, want)
	}
	if got, want := two.Calendar.When(MilestoneEmerges).Usual.String(), "20 to 25 May 2025"; got != want {
		t.Errorf("two looks: emerges %s, want %s", got, want)
	}
}

func TestQueenOverYearEnd(t *testing.T) {
	e := judgeQueen([]Inspection{visit("2024-01-02", "bars.4.eggs=yes")}, day("2024-01-02"))
	if got, want := e.LastEgg.Usual.String(), "30 Dec 2023 to 2 Jan 2024"; got != want {
		t.Errorf("last egg %s, want %s", got, want)
	}
	leap := judgeQueen([]Inspection{visit("2024-03-02", "bars.4.eggs=yes")}, day("2024-03-02"))
	if got, want := leap.LastEgg.Usual.From, day("2024-02-28"); got != want {
		t.Errorf("over a leap day: %s, want %s", got, want)
	}
	if plain := judgeQueen([]Inspection{visit("2025-03-02", "bars.4.eggs=yes")}, day("2025-03-02")); plain.LastEgg.Usual.From != day("2025-02-27") {
		t.Errorf("without a leap day: %s", plain.LastEgg.Usual.From)
	}
}

// What speaks for a state and what against it, by the leaf; brood of long ago
// dates the last egg and speaks for neither.
func TestWhatSpeaksForAState(t *testing.T) {
	sealed := []string{"bars.2.queen_cells.capped=yes", "contents.eggs=no", "queen.seen=no"}
	for name, c := range map[string]struct {
		history      []Inspection
		fits, speaks string // paths for it, and against it
		brood        int
	}{
		"eggs and the queen": {[]Inspection{visit("2025-05-20", "bars.4.eggs=yes", "queen.seen=yes")}, "bars.4.eggs queen.seen", "", 1},
		"larvae, called queenless": {[]Inspection{visit("2025-05-20", "bars.4.open_brood=yes", "queenright=no")},
			"bars.4.open_brood", "queenright", 1},
		"the queen and no eggs": {[]Inspection{visit("2025-05-20", "queen.seen=yes", "contents.eggs=no")}, "queen.seen", "contents.eggs", 0},
		"sealed cells after eggs": {[]Inspection{visit("2025-05-01", "bars.4.eggs=yes"), visit("2025-05-10", sealed...)},
			"bars.2.queen_cells.capped contents.eggs queen.seen", "", 1},
		"open cells, then sealed ones": {[]Inspection{visit("2025-05-05", "queen_cells.charged=yes"), visit("2025-05-10", sealed...)},
			"queen_cells.charged bars.2.queen_cells.capped contents.eggs queen.seen", "", 0},
		"cells that are gone": {[]Inspection{visit("2025-05-10", "queen_cells.charged=yes"), visit("2025-05-12", "queen_cells.any=no", "contents.eggs=no")},
			"queen_cells.charged contents.eggs", "queen_cells.any", 0},
		"no brood, called queenright": {[]Inspection{visit("2025-05-20", append(noBrood, "queenright=yes")...)},
			"contents.eggs contents.open_brood contents.capped_brood", "queenright", 0},
		"a queen put in":       {[]Inspection{visit("2025-05-20", "actions.requeen=yes")}, "actions.requeen", "", 0},
		"laying workers":       {[]Inspection{visit("2025-05-20", "signs.laying_worker=yes")}, "signs.laying_worker", "", 0},
		"told that it swarmed": {[]Inspection{visit("2025-05-20", "earlier.swarmed=yes", "earlier.swarmed.on=2025-05-18")}, "earlier.swarmed", "", 0},
	} {
		e := judgeQueen(c.history, dayOf(&c.history[len(c.history)-1]))
		paths := func(list []Finding) string {
			var out []string
			for _, f := range list {
				out = append(out, f.Path)
			}
			return strings.Join(out, " ")
		}
		if got := paths(e.For); got != c.fits {
			t.Errorf("%s: %s speaks for %q, want %s", name, got, e.State, c.fits)
		}
		if got := paths(e.Against); got != c.speaks {
			t.Errorf("%s: %s speaks against %q, want %s", name, got, e.State, c.speaks)
		}
		if len(e.Brood) != c.brood {
			t.Errorf("%s: %d sightings of brood, want %d", name, len(e.Brood), c.brood)
		}
	}
}
