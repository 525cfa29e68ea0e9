package colony

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// dueLines gives the items as "kind day status", sorted as Due sorts them.
func dueLines(items []DueItem) []string {
	var out []string
	for _, d := range items {
		out = append(out, d.Kind+" "+d.On.String()+" "+string(d.Status))
	}
	return out
}

func itemOfKind(t *testing.T, items []DueItem, kind string) DueItem {
	t.Helper()
	for _, d := range items {
		if d.Kind == kind {
			return d
		}
	}
	t.Fatalf("no item of kind %s among %v", kind, dueLines(items))
	return DueItem{}
}

func due(today string, history ...Inspection) []DueItem {
	return Due(history, day(today), DefaultSettings(), nil)
}

func TestDue(t *testing.T) {
	for name, c := range map[string]struct {
		today   string
		history []Inspection
		want    []string
		not     []string
	}{
		"swarm season: look again in seven days": {"2025-05-10", []Inspection{visit("2025-05-10", "bars.4.eggs=yes")},
			[]string{"inspect 2025-05-17 open"}, []string{"queen", "swarm"}},
		"later in the season: two weeks": {"2025-08-10", []Inspection{visit("2025-08-10", "bars.4.eggs=yes")}, []string{"inspect 2025-08-24 open"}, nil},
		"autumn: the next spring":        {"2025-09-25", []Inspection{visit("2025-09-25", "bars.4.eggs=yes")}, []string{"inspect 2026-04-01 open"}, nil},
		"cells beside eggs: five days, and the swarm": {"2025-05-10", []Inspection{visit("2025-05-10", "bars.4.eggs=yes", "queen_cells.charged=yes")},
			[]string{"inspect 2025-05-15 open", "swarm 2025-05-10 open"}, nil},
		"a queen being raised: leave it shut, then look for eggs": {"2025-05-20", []Inspection{visit("2025-05-20", "queen_cells.capped=yes", "contents.eggs=no")},
			[]string{"queen 2025-06-18 open"}, []string{"inspect"}},
		"cells, and whether the queen is there was not said": {"2025-05-20", []Inspection{visit("2025-05-20", "queen_cells.capped=yes")},
			[]string{"queen 2025-06-18 open", "swarm 2025-05-20 open", "inspect 2025-05-25 open"}, nil},
		"the swarm has left": {"2025-05-20", []Inspection{visit("2025-05-20", "queen_cells.capped=yes", "earlier.swarmed=yes", "earlier.swarmed.on=2025-05-18")},
			[]string{"queen 2025-06-16 open"}, []string{"swarm", "inspect"}},
		"eggs missed: look again soon": {"2025-05-20", []Inspection{visit("2025-05-20", "bars.3.capped_brood=yes", "contents.eggs=no")}, []string{"queen 2025-05-26 open"}, nil},
		"a plan with its day":          {"2025-05-10", []Inspection{visit("2025-05-10", "plans.feed=yes", "plans.feed.due=2025-05-13")}, []string{"plan 2025-05-13 open"}, nil},
		"a plan without a day":         {"2025-05-10", []Inspection{visit("2025-05-10", "plans.straighten=yes")}, []string{"plan 2025-05-17 open"}, nil},
		"a planned visit takes the place of the routine": {"2025-05-10", []Inspection{visit("2025-05-10", "plans.inspect=yes", "plans.inspect.due=2025-05-14")},
			[]string{"plan 2025-05-14 open"}, []string{"inspect"}},
		"a plan done by the same deed": {"2025-05-20", []Inspection{visit("2025-05-10", "plans.feed=yes"), visit("2025-05-18", "actions.feed=yes")},
			[]string{"plan 2025-05-17 done", "feeding 2025-05-25 open"}, nil},
		"a plan told of as done": {"2025-05-20", []Inspection{visit("2025-05-10", "plans.feed=yes"), visit("2025-05-18", "earlier.fed=yes", "earlier.fed.on=2025-05-14")},
			[]string{"plan 2025-05-17 done"}, nil},
		"a plan that was denied stays": {"2025-05-20", []Inspection{visit("2025-05-10", "plans.feed=yes"), visit("2025-05-18", "earlier.fed=no")},
			[]string{"plan 2025-05-17 open"}, nil},
		"a visit closes the planned visit": {"2025-05-20", []Inspection{visit("2025-05-10", "plans.inspect=yes"), visit("2025-05-18", "weather.sky=sunny")},
			[]string{"plan 2025-05-17 done"}, nil},
		"a mark seen closes the marking": {"2025-05-20", []Inspection{visit("2025-05-10", "plans.mark_queen=yes"), visit("2025-05-18", "queen.marked=yes")},
			[]string{"plan 2025-05-17 done"}, nil},
		"a split planned before the swarm": {"2025-05-30", []Inspection{visit("2025-05-17", "plans.split=yes", "plans.split.due=2025-05-24"), visit("2025-05-22", "earlier.swarmed=yes", "earlier.swarmed.on=2025-05-22")},
			[]string{"plan 2025-05-24 done"}, nil},
		"a split planned and made": {"2025-05-30", []Inspection{visit("2025-05-17", "plans.split=yes"), visit("2025-05-22", "actions.split=yes")},
			[]string{"plan 2025-05-24 done"}, nil},
		"a split planned of a hive that was united": {"2025-05-30", []Inspection{visit("2025-05-17", "plans.split=yes"), visit("2025-05-22", "actions.unite=yes")},
			[]string{"plan 2025-05-24 done"}, nil},
		"a split planned, and no swarm left": {"2025-05-30", []Inspection{visit("2025-05-17", "plans.split=yes"), visit("2025-05-22", "earlier.swarmed=no")},
			[]string{"plan 2025-05-24 open"}, nil},
		"a plan with its day lapses by a much later visit": {"2025-09-10", []Inspection{visit("2025-05-10", "plans.add_bar=yes", "plans.add_bar.due=2025-05-13"), visit("2025-09-01", "bars.4.eggs=yes")},
			[]string{"plan 2025-05-13 lapsed"}, nil},
		"nobody came since: the plan with its day stays": {"2025-09-10", []Inspection{visit("2025-05-10", "plans.add_bar=yes", "plans.add_bar.due=2025-05-13")},
			[]string{"plan 2025-05-13 open"}, nil},
		"an old plan without a day lapses": {"2025-09-10", []Inspection{visit("2025-05-10", "plans.straighten=yes")}, []string{"plan 2025-05-17 lapsed"}, nil},
		"a feed is looked after":           {"2025-05-12", []Inspection{visit("2025-05-10", "actions.feed=yes")}, []string{"feeding 2025-05-17 open"}, nil},
		"a visit closes the look at the feed": {"2025-05-20", []Inspection{visit("2025-05-10", "actions.feed=yes"), visit("2025-05-18", "weather.sky=sunny")},
			[]string{"feeding 2025-05-17 done"}, nil},
		"mites are counted after a treatment": {"2025-08-12", []Inspection{visit("2025-08-10", "actions.treat=yes", "actions.treat.what=thymol")}, []string{"treatment 2025-08-31 open"}, nil},
		"the count closes it": {"2025-09-12", []Inspection{visit("2025-08-10", "actions.treat=yes"), visit("2025-09-01", "mites.method=drop", "mites.count=2", "mites.days=3")},
			[]string{"treatment 2025-08-31 done"}, nil},
		"a first count is asked for":   {"2025-05-10", []Inspection{visit("2025-05-10", "bars.4.eggs=yes")}, []string{"mites 2025-06-09 open"}, nil},
		"the next count is a month on": {"2025-05-10", []Inspection{visit("2025-05-10", "mites.method=wash", "mites.count=0", "mites.bees=300")}, []string{"mites 2025-06-09 open"}, nil},
		"near a limit it is a week on": {"2025-05-10", []Inspection{visit("2025-05-10", "mites.method=wash", "mites.count=12", "mites.bees=300")}, []string{"mites 2025-05-17 open"}, nil},
		"after a treatment the count that follows it takes the place of the next": {"2025-08-20", []Inspection{visit("2025-08-03", "mites.method=wash", "mites.count=12", "mites.bees=300"), visit("2025-08-16", "actions.treat=yes")},
			[]string{"treatment 2025-09-06 open"}, []string{"mites"}},
		"a season without a count: a month into the next": {"2026-05-10", []Inspection{visit("2025-08-10", "mites.method=wash", "mites.count=0", "mites.bees=300"), visit("2026-04-10", "bars.4.eggs=yes")},
			[]string{"mites 2026-05-01 open"}, nil},
		"in autumn the count is put to spring": {"2025-11-10", []Inspection{visit("2025-08-10", "mites.method=wash", "mites.count=0", "mites.bees=300"), visit("2025-10-10", "stores.word=heavy")},
			[]string{"mites 2026-05-01 open"}, nil},
		"no bars are asked for where the follower is not known": {"2025-05-20", []Inspection{visit("2025-05-13", "bars_total=10"), visit("2025-05-20", "bars_total=12")}, nil, []string{"space"}},
		"no bars are asked for in August":                       {"2025-08-20", []Inspection{visit("2025-08-13", "bars_total=10", "follower.bar=14"), visit("2025-08-20", "bars_total=12")}, nil, []string{"space"}},
		"winter stores and entrance":                            {"2025-08-20", []Inspection{visit("2025-08-10", "bars.4.eggs=yes")}, []string{"stores 2025-09-15 open", "winter 2025-10-01 open"}, nil},
		"heavy stores close the stores":                         {"2025-09-20", []Inspection{visit("2025-09-10", "stores.word=heavy", "entrance=reduced")}, []string{"stores 2025-09-15 done", "winter 2025-10-01 done"}, nil},
		"no winter work in May":                                 {"2025-05-20", []Inspection{visit("2025-05-10", "bars.4.eggs=yes")}, nil, []string{"stores", "winter"}},
		"signs that must be reported":                           {"2025-05-20", []Inspection{visit("2025-05-20", "signs.ropy_larva=yes")}, []string{"disease 2025-05-20 open"}, nil},
		"room is given before it ends": {"2025-05-20", []Inspection{visit("2025-05-13", "bars_total=10", "follower.bar=14"), visit("2025-05-20", "bars_total=12")},
			[]string{"space 2025-05-27 open"}, nil},
		"nothing is due at a hive without a record": {"2025-05-20", nil, nil, []string{"inspect"}},
		"what lies ahead does not count":            {"2025-05-01", []Inspection{visit("2025-05-10", "bars.4.eggs=yes")}, nil, []string{"inspect"}},
		"a hive left alone for over a year":         {"2026-08-01", []Inspection{visit("2025-05-10", "bars.4.eggs=yes")}, nil, []string{"inspect", "mites", "stores"}},
	} {
		t.Run(strings.ReplaceAll(name, " ", "_"), func(t *testing.T) {
			items := due(c.today, c.history...)
			lines := dueLines(items)
			for _, want := range c.want {
				if !slices.Contains(lines, want) {
					t.Errorf("want %q among %q", want, lines)
				}
			}
			for _, d := range OpenItems(items) {
				if slices.Contains(c.not, d.Kind) {
					t.Errorf("%s falls due: %s", d.Kind, d)
				}
				if d.Why == "" || d.What == "" || strings.Contains(d.String(), "\n") {
					t.Errorf("not one line with why: %q", d)
				}
			}
		})
	}
}

func TestAnswersCloseAndPutOff(t *testing.T) {
	h := []Inspection{visit("2025-05-10", "plans.feed=yes", "plans.feed.due=2025-05-13")}
	plan := itemOfKind(t, due("2025-05-12", h...), "plan")
	for say, want := range map[string]string{"done": "plan 2025-05-13 done", "drop": "plan 2025-05-13 dropped", "later": "plan 2025-05-20 open"} {
		items := Due(h, day("2025-05-12"), DefaultSettings(), []Answer{{ID: plan.ID, Say: say, On: day("2025-05-12"), Until: day("2025-05-20")}})
		got := itemOfKind(t, items, "plan")
		if !slices.Contains(dueLines(items), want) {
			t.Errorf("%s: %v, want %s", say, dueLines(items), want)
		}
		if got.ID != plan.ID || got.UID() != plan.UID() || got.Revision <= plan.Revision {
			t.Errorf("%s: id %s revision %d, was %s revision %d", say, got.ID, got.Revision, plan.ID, plan.Revision)
		}
	}
}

// An item that a later visit overtook is still listed, closed, with the same
// identifier, so that a calendar can take it back.
func TestOvertakenItemsAreTakenBack(t *testing.T) {
	first := visit("2025-05-10", "queen_cells.capped=yes", "contents.eggs=no")
	was := itemOfKind(t, due("2025-05-10", first), "queen")
	now := due("2025-06-02", first, visit("2025-06-01", "bars.4.eggs=yes"))
	i := slices.IndexFunc(now, func(d DueItem) bool { return d.ID == was.ID })
	if i < 0 || now[i].Status != StatusDone || now[i].Revision <= was.Revision || now[i].UID() != was.UID() {
		t.Errorf("%s was overtaken: %v", was.ID, now)
	}
}

// What was overtaken two visits ago is still taken back: the calendar may not
// have been written in between.
func TestOvertakenItemsAreTakenBackLater(t *testing.T) {
	first := visit("2025-05-10", "queen_cells.capped=yes", "contents.eggs=no")
	was := itemOfKind(t, due("2025-05-10", first), "queen")
	now := due("2025-06-10", first, visit("2025-06-01", "bars.4.eggs=yes"), visit("2025-06-09", "bars.4.eggs=yes"))
	i := slices.IndexFunc(now, func(d DueItem) bool { return d.ID == was.ID })
	if i < 0 || now[i].Status != StatusDone || !strings.Contains(now[i].Closed, "1 Jun 2025") {
		t.Errorf("%s was overtaken on 1 June: %v", was.ID, now)
	}
}

// What was due after the last visit and has had its time is taken back.
func TestWhatHadItsTimeHasLapsed(t *testing.T) {
	h := visit("2025-05-10", "queen_cells.capped=yes", "contents.eggs=no")
	was := itemOfKind(t, due("2025-05-10", h), "queen")
	now := due("2025-07-30", h)
	i := slices.IndexFunc(now, func(d DueItem) bool { return d.ID == was.ID })
	if i < 0 || now[i].Status != StatusLapsed || now[i].Revision <= was.Revision {
		t.Errorf("%s has had its time: %v", was.ID, now)
	}
}

// A hive's own measures go before those of the others.
func TestHivesHaveMeasuresOfTheirOwn(t *testing.T) {
	h := []Inspection{visit("2025-05-20", "bars.4.comb.drawn=1")}
	set := DefaultSettings()
	common := Appraise(h, day("2025-05-20"), set, nil).Comb.Best
	wide := DefaultBox
	wide.Top, wide.Bottom = 2*wide.Top, 2*wide.Bottom
	set.Boxes = map[string]Box{"3": wide}
	own := Appraise(h, day("2025-05-20"), set, nil).Comb.Best
	h[0].Hive = "4"
	if other := Appraise(h, day("2025-05-20"), set, nil).Comb.Best; own < 1.9*common || other != common {
		t.Errorf("comb %v by the common box, %v twice as wide, %v of another hive", common, own, other)
	}
	m, err := MeasureNamed("comb_area")
	if err != nil {
		t.Fatal(err)
	}
	h[0].Hive = "3"
	if got := m.Series(h, set)[0].Value.Best; got != own {
		t.Errorf("followed over time it is %v, appraised %v", got, own)
	}
}

func TestLimitsInOneLine(t *testing.T) {
	r, _ := rateOf(ptr(visit("2025-08-09", "mites.method=drop", "mites.count=36", "mites.days=3")))
	for set, want := range map[string]string{
		"":            "beside the published limits, which disagree: perhaps over 9 (britain 2005), 12 (ontario); under 30 (tucson), 40 (virginia)",
		"ontario":     "perhaps over the limit of 12 mites a day for ontario (treatment advised)",
		"switzerland": "no limit for switzerland is known for this method and month",
	} {
		if got := limitsInWords(againstLimits(r, set, Season{}), set); got != want {
			t.Errorf("%q: %q, want %q", set, got, want)
		}
	}
}

func ptr[T any](v T) *T { return &v }

// A mark is read as long as its queen can be there.
func TestMarksLeaveWithTheirQueen(t *testing.T) {
	marked := visit("2025-05-10", "queen.seen=yes", "queen.colour=green", "bars.4.eggs=yes")
	for name, c := range map[string]struct {
		then Inspection
		want bool
	}{
		"still there":       {visit("2025-06-20", "bars.4.eggs=yes"), true},
		"swarmed":           {visit("2025-06-20", "bars.4.eggs=yes", "earlier.swarmed=yes", "earlier.swarmed.on=2025-05-20"), false},
		"an unmarked queen": {visit("2025-06-20", "bars.4.eggs=yes", "queen.seen=yes", "queen.marked=no"), false},
		"raising another":   {visit("2025-06-20", "contents.eggs=no", "queen_cells.capped=yes"), false},
	} {
		if a := Appraise([]Inspection{marked, c.then}, day("2025-06-21"), DefaultSettings(), nil); (a.Colour != nil) != c.want {
			t.Errorf("%s: %+v", name, a.Colour)
		}
	}
}

func TestDeedsInWords(t *testing.T) {
	for leaves, want := range map[string]string{
		"plans.add_bar.count=1":                                       "add 1 bar",
		"plans.add_bar.count=2 plans.add_bar.count_max=3":             "add 2 or 3 bars",
		"plans.add_bar=yes":                                           "add bars",
		"plans.remove_bar.bar=8":                                      "remove bar 8",
		"plans.move_bar.bars=8,9 plans.move_bar.to_hive=2":            "move bars 8, 9 to hive 2",
		"plans.cut_cells.count=1":                                     "cut 1 queen cell",
		"plans.straighten.bar=9":                                      "straighten comb, bar 9",
		"plans.feed.amount=2 plans.feed.unit=l plans.feed.what=syrup": "feed 2 l syrup",
		"plans.split=yes":                                             "split",
	} {
		ins := visit("2025-05-10", strings.Fields(leaves)...)
		if got := ins.Plans[0].words(); got != want {
			t.Errorf("%s: %q, want %q", leaves, got, want)
		}
	}
}

func TestTwoPlansOfAKindAreTwoItems(t *testing.T) {
	items := due("2025-05-10", visit("2025-05-10", "plans.feed=yes", "plans.feed#2=yes", "plans.feed#2.what=fondant"))
	seen := map[string]bool{}
	for _, d := range items {
		if seen[d.UID()] {
			t.Errorf("%s twice", d.ID)
		}
		seen[d.UID()] = true
	}
}

// Identifiers are unique and do not move when the day moves on or visits are
// added that leave the item open.
func TestDueIdentifiersAreStable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := someHistory(t)
		today := dayOf(&h[len(h)-1])
		set := DefaultSettings()
		a, b := Due(h, today, set, nil), Due(h, today.AddDays(1), set, nil)
		ids := map[string]bool{}
		for _, d := range a {
			if ids[d.ID] {
				t.Fatalf("%s twice", d.ID)
			}
			ids[d.ID] = true
		}
		if judgeQueen(h, today).State != judgeQueen(h, today.AddDays(1)).State {
			return
		}
		for _, d := range OpenItems(b) {
			// A day later only the calendar itself can have brought something new.
			if d.Kind != "queen" && d.Kind != "swarm" && d.Kind != "stores" && d.Kind != "winter" && d.Kind != "space" && !ids[d.ID] {
				t.Fatalf("%s is new a day later", d.ID)
			}
		}
		if !slices.IsSortedFunc(a, func(x, y DueItem) int { return x.On.Compare(y.On) }) {
			t.Fatal("not sorted by day")
		}
	})
}

func TestCautions(t *testing.T) {
	for name, c := range map[string]struct {
		today   string
		history []Inspection
		kinds   string
		says    string
	}{
		"nothing calls for one":           {"2025-05-20", []Inspection{visit("2025-05-20", "bars.4.eggs=yes", "signs.chalkbrood=yes", "temper.stings=0")}, "", ""},
		"sunken caps":                     {"2025-05-20", []Inspection{visit("2025-05-20", "signs.sunken_caps=yes", "signs.foul_smell=yes")}, "disease", "apiary inspector"},
		"a sign denied":                   {"2025-05-20", []Inspection{visit("2025-05-20", "signs.foulbrood=no")}, "", ""},
		"a sign denied later":             {"2025-05-28", []Inspection{visit("2025-05-20", "signs.foul_smell=yes"), visit("2025-05-27", "signs.foul_smell=no")}, "", ""},
		"a treatment":                     {"2025-08-20", []Inspection{visit("2025-08-20", "actions.treat=yes", "actions.treat.what=formic acid")}, "treatment", "label"},
		"a treatment with honey":          {"2025-08-20", []Inspection{visit("2025-08-20", "plans.treat=yes", "bars.9.capped_honey=yes")}, "treatment", "honey on the hive"},
		"stings":                          {"2025-05-20", []Inspection{visit("2025-05-20", "temper.stings=3")}, "stings", "emergency number"},
		"old stings are not brought up":   {"2025-06-20", []Inspection{visit("2025-05-20", "temper.stings=3")}, "", ""},
		"a hive for one":                  {"2025-05-20", []Inspection{visit("2025-05-20", "weight_kg=24")}, "", ""},
		"a hive for two":                  {"2025-05-20", []Inspection{visit("2025-05-20", "weight_kg=25")}, "lifting", "alone"},
		"smoke in a dry month":            {"2025-07-20", []Inspection{visit("2025-07-20", "actions.smoke=yes")}, "fire", "bans"},
		"smoke in the rain":               {"2025-07-20", []Inspection{visit("2025-07-20", "actions.smoke=yes", "weather.sky=rain")}, "", ""},
		"each kind once over many visits": {"2025-05-20", []Inspection{visit("2025-05-18", "temper.stings=3"), visit("2025-05-20", "temper.stings=1")}, "stings", "emergency"},
	} {
		var kinds, says []string
		for _, caution := range cautionsFor(c.history, day(c.today), Season{}) {
			kinds, says = append(kinds, caution.Kind), append(says, caution.Says)
		}
		if got := strings.Join(kinds, " "); got != c.kinds || !strings.Contains(strings.Join(says, " "), c.says) {
			t.Errorf("%s: %q %q, want %q %q", name, got, says, c.kinds, c.says)
		}
	}
}

// The appraisal of any history prints, marshals and explains every number by a
// formula.
func TestAppraiseAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := someHistory(t)
		a := Appraise(h, dayOf(&h[len(h)-1]), DefaultSettings(), nil)
		if _, err := json.Marshal(a); err != nil {
			t.Fatal(err)
		}
		for _, e := range a.Explanations() {
			if e.Result == "" || e.Formula == "" || strings.Contains(e.String(), "%!") {
				t.Fatalf("explanation without result or formula: %s", e)
			}
		}
	})
	if a := Appraise(nil, day("2025-05-20"), DefaultSettings(), nil); a.Queen.State != "" || len(a.Explanations()) != 0 {
		t.Errorf("an appraisal of nothing: %+v", a)
	}
}

func TestAppraisalOfMites(t *testing.T) {
	h := []Inspection{
		visit("2025-06-19", "mites.method=drop", "mites.count=20", "mites.days=5", "bars.4.capped_brood=yes"),
		visit("2025-07-10", "mites.method=drop", "mites.count=75", "mites.days=5", "bars.9.capped_honey=yes"),
	}
	set := DefaultSettings()
	set.MiteSet = "germany"
	a := Appraise(h, day("2025-07-11"), set, nil)
	switch {
	case a.Mites == nil || a.Mites.Rate.Best != 15:
		t.Errorf("rate %+v", a.Mites)
	case len(a.Verdicts) != 1 || a.Verdicts[0].Over != "over":
		t.Errorf("verdicts %+v", a.Verdicts)
	case !strings.Contains(a.MiteNote, "follow the label") || !strings.Contains(a.MiteNote, "honey on the hive"):
		t.Errorf("note %q", a.MiteNote)
	case a.Growth == nil || !a.Growth.Doubling.Known():
		t.Errorf("growth %+v", a.Growth)
	case a.MiteLimit.Known():
		t.Errorf("days until a limit that is passed: %v", a.MiteLimit.Range)
	case !a.MiteLoad.Contains(450):
		t.Errorf("load %v", a.MiteLoad.Range)
	}
	if late := Appraise(h, day("2025-12-11"), set, nil); late.MiteNote != "" {
		t.Errorf("a July count advises in December: %q", late.MiteNote)
	}
	bare := append(h, visit("2025-08-10", "contents.brood=no"), visit("2025-08-11", "mites.method=drop", "mites.count=5", "mites.days=5"))
	if e := Appraise(bare, day("2025-08-12"), set, nil).MiteLoad; e.Known() {
		t.Errorf("a load without brood: %v", e.Range)
	}
}

// The forecast lets the queen lay on only where the evidence says that she
// does.
func TestAppraisalForecastsByTheQueen(t *testing.T) {
	brood := []string{"strength.bars_of_bees=6", "bars.4.comb.drawn=1", "bars.4.capped_brood=yes", "bars.4.capped_brood.cover=0.8"}
	forecast := func(leaves ...string) Forecast {
		a := Appraise([]Inspection{visit("2025-05-20", append(brood[:4:4], leaves...)...)}, day("2025-05-20"), DefaultSettings(), nil)
		if a.Forecast == nil {
			t.Fatal("no forecast")
		}
		return *a.Forecast
	}
	laying, not := forecast("bars.4.eggs=yes"), forecast("contents.eggs=no", "contents.open_brood=no")
	if laying.Weeks[5].Brood.Best == 0 || not.Weeks[5].Brood.Best != 0 {
		t.Errorf("brood in six weeks: %v laying, %v not", laying.Weeks[5].Brood, not.Weeks[5].Brood)
	}
}
