package colony

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
	"time"
)

// splitColony is a row of testdata/splits.csv; numbers that the data lack are
// -1.
type splitColony struct {
	id, means        string
	brood18, brood30 string
	layDay           int
	mites, bees      [2]int // of the washes after the split
}

var (
	splitDay   = day("2022-03-08")
	washedDays = [2]Date{day("2022-05-24"), day("2022-07-01")}
)

func readSplits(t *testing.T) []splitColony {
	t.Helper()
	f, err := os.Open("testdata/splits.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []splitColony
	for _, row := range rows[1:] {
		c := splitColony{id: row[0], means: row[1], brood18: row[4], brood30: row[5], layDay: number(row[6])}
		for i, at := range [2]int{7, 9} {
			c.mites[i], c.bees[i] = number(row[at]), number(row[at+1])
		}
		out = append(out, c)
	}
	return out
}

func number(s string) int {
	if n, err := strconv.Atoi(s); err == nil {
		return n
	}
	return -1
}

// inspections puts a row into records: the cell given at the split, the two
// looks at the brood, and the washes.
func (c splitColony) inspections() []Inspection {
	noon := func(d Date) time.Time { return d.Time().Add(12 * time.Hour) }
	gift := Inspection{Hive: c.id, At: noon(splitDay), Actions: []Task{{Do: "requeen", What: "cell"}}}
	out := []Inspection{gift}
	look := func(d Date, brood string) {
		ins := Inspection{Hive: c.id, At: noon(d)}
		if brood == "none" {
			ins.Contents = []Content{{What: "eggs"}, {What: "open_brood"}, {What: "capped_brood"}}
		} else {
			ins.Contents = []Content{{What: "eggs", Present: true}}
			if brood != "eggs" {
				ins.Contents = append(ins.Contents, Content{What: "open_brood", Present: true})
			}
		}
		out = append(out, ins)
	}
	look(day("2022-03-26"), c.brood18)
	look(day("2022-04-07"), c.brood30)
	for i, d := range washedDays {
		if c.mites[i] >= 0 {
			m, b := c.mites[i], c.bees[i]
			out = append(out, Inspection{Hive: c.id, At: noon(d), Mites: &Mites{Method: "wash", Count: &m, Bees: &b}})
		}
	}
	return out
}

// The day on which the young queens of real splits began to lay lies within
// the calendar of a ripe cell that was given on the day of the split.
func TestOpenDataQueenCalendar(t *testing.T) {
	when := calendarFromGift("cell", splitDay).When(MilestoneEggs)
	laid, usual := 0, 0
	for _, c := range readSplits(t) {
		if c.layDay < 0 {
			continue
		}
		laid++
		first := splitDay.AddDays(c.layDay)
		if !when.Outer.Contains(first) {
			t.Errorf("colony %s began to lay on %s, outside %s", c.id, first, when.Outer)
		}
		if when.Usual.Contains(first) {
			usual++
		}
	}
	t.Logf("%d young queens: all within %s, %d within %s", laid, when.Outer, usual, when.Usual)
	if laid != 28 {
		t.Errorf("%d colonies with a day of laying, want 28", laid)
	}
}

// The judgement after the second look agrees with the authors': laying, or
// failed to mate.
func TestOpenDataQueenEvidence(t *testing.T) {
	for _, c := range readSplits(t) {
		e := judgeQueen(c.inspections(), day("2022-04-08"))
		if c.brood30 == "none" {
			if e.State == Laying {
				t.Errorf("colony %s failed to mate, judged %s", c.id, e.State)
			}
			late := judgeQueen(append(c.inspections()[:3], lookInVain("2022-04-17")), day("2022-04-17"))
			if late.State != Queenless {
				t.Errorf("colony %s, still no brood on 17 April: judged %s (%s)", c.id, late.State, late.Says)
			}
			continue
		}
		if e.State != Laying || e.Sureness != Sure {
			t.Errorf("colony %s: judged %s, %s", c.id, e.State, e.Sureness)
		}
	}
}

func lookInVain(on string) Inspection {
	return Inspection{At: day(on).Time().Add(12 * time.Hour), Contents: []Content{{What: "eggs"}, {What: "open_brood"}, {What: "capped_brood"}}}
}

// The untreated colonies' mites double in about three weeks, as the source of
// the usual doubling time says.
func TestOpenDataMiteGrowth(t *testing.T) {
	controls := 0
	for _, c := range readSplits(t) {
		var rates []MiteRate
		for _, ins := range c.inspections() {
			if r, ok := rateOf(&ins); ok {
				rates = append(rates, r)
			}
		}
		if c.means != "control" || len(rates) < 2 {
			continue
		}
		controls++
		g, ok := growthBetween(rates[0], rates[1])
		if !ok || !g.Doubling.Known() {
			t.Fatalf("control %s: no growth: %s", c.id, g.Says)
		}
		t.Logf("control %s: %s", c.id, g.Says)
		if !g.Doubling.Contains(UsualDoubling.Value.Best) {
			t.Errorf("control %s: doubling %s does not hold 21 days", c.id, g.Doubling.Range)
		}
	}
	if controls != 3 {
		t.Errorf("%d controls with two washes, want 3", controls)
	}
}
