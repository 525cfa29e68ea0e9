package index_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

// season is a small history that the questions below are asked of.
func season(t *testing.T) *index.Store {
	t.Helper()
	s := indextest.MustOpen(t)
	for _, v := range []indextest.Visit{
		write("2", noon(2024, 7, 1), says("Found chalkbrood on bar 3.", "signs.chalkbrood=yes", "signs.chalkbrood.bar=3"),
			says("Bar 3: spotty capped brood.", "bars.3.capped_brood=yes", "bars.3.capped_brood.pattern=patchy")),
		write("2", noon(2025, 4, 10), says("No chalkbrood.", "signs.chalkbrood=no"),
			says("Queen seen on bar 4, marked yellow.", "queen.seen=yes", "queen.bar=4", "queen.marked=yes", "queen.colour=yellow"),
			says("Bar 4 has eggs.", "bars.4.eggs=yes"), says("Bar 5 sealed brood.", "bars.5.capped_brood=yes"),
			says("Bar 6: eggs and capped brood.", "bars.6.eggs=yes", "bars.6.capped_brood=yes")),
		write("4", noon(2025, 5, 2), says("They went for me, stung three times.", "temper.score=1", "temper.stings=3"),
			says("Didn't see the queen.", "queen.seen=no"), says("No eggs on bar 4.", "bars.4.eggs=no"),
			says("Two supersedure cells on bar 7.", "bars.7.queen_cells.any=yes", "bars.7.queen_cells.any.count=2", "bars.7.queen_cells.any.kind=supersedure")),
		write("4", noon(2025, 5, 20), says("Calm today.", "temper.score=4"), says("Fed two litres of syrup.", "actions.feed=yes", "actions.feed.what=syrup", "actions.feed.amount=2"),
			says("Fed fondant too.", "actions.feed#2=yes", "actions.feed#2.what=fondant"),
			says("Drone brood on bars 9 and 10.", "bars.9.drone_brood=yes", "bars.10.drone_brood=yes", "bars.10.drone_brood.cover=0.5")),
		write("willow", noon(2026, 3, 30), says("First pollen from the willows, café-coloured, 3.5 of a bar.", "incoming.pollen=yes", "incoming.pollen.plant=willow"),
			says("Touchy.", "temper.score=2"), says("Queen seen.", "queen.seen=yes")),
	} {
		mustTake(t, s, v)
	}
	return s
}

// brief writes hits as hive/date[/bar].
func brief(hits index.Hits) string {
	var list []string
	for _, h := range hits.Hits {
		text := h.Hive + "/" + h.Day.String()[2:]
		if h.Bar > 0 {
			text += fmt.Sprintf("/%d", h.Bar)
		}
		list = append(list, text)
	}
	return strings.Join(list, " ")
}

func is(path, value string) index.Clause { return index.Clause{{Path: path, Value: value}} }

func op(path string, o index.Op, value string) index.Clause { return index.Clause{{path, o, value}} }

func TestFind(t *testing.T) {
	s := season(t)
	where := func(list ...index.Clause) index.Query { return index.Query{Where: list} }
	bars := func(list ...index.Clause) index.Query { return index.Query{Where: list, Per: index.Bars} }
	d := func(y, m, day int) colony.Date { return colony.NewDate(y, time.Month(m), day) }
	for name, c := range map[string]struct {
		query index.Query
		want  string
	}{
		"nothing asked finds all":          {index.Query{}, "willow/26-03-30 4/25-05-20 4/25-05-02 2/25-04-10 2/24-07-01"},
		"a word, also where it is denied":  {index.Query{Words: "chalkbrood"}, "2/25-04-10 2/24-07-01/3"},
		"inflected otherwise":              {index.Query{Words: "pollens"}, "willow/26-03-30"},
		"all words":                        {index.Query{Words: "queen see"}, "4/25-05-02"},
		"all words, no order":              {index.Query{Words: "cells supersedure"}, "4/25-05-02/7"},
		"words never together":             {index.Query{Words: "syrup chalkbrood"}, ""},
		"capitals and accents":             {index.Query{Words: "CAFÉ"}, "willow/26-03-30"},
		"words too common":                 {index.Query{Words: "on the"}, ""},
		"oldest first":                     {index.Query{Words: "chalkbrood", Sort: index.Oldest}, "2/24-07-01/3 2/25-04-10"},
		"by hive":                          {index.Query{Sort: index.ByName}, "2/25-04-10 2/24-07-01 4/25-05-20 4/25-05-02 willow/26-03-30"},
		"by hive, limited":                 {index.Query{Sort: index.ByName, Limit: 1}, "2/25-04-10"},
		"either word":                      {index.Query{Words: "pollens or chalkbrood"}, "willow/26-03-30 2/25-04-10 2/24-07-01/3"},
		"either word, and another":         {index.Query{Words: "chalkbrood or syrup yellow"}, "2/25-04-10"},
		"limit":                            {index.Query{Words: "bar", Limit: 2}, "willow/26-03-30 4/25-05-20"},
		"hive":                             {index.Query{Hive: "4"}, "4/25-05-20 4/25-05-02"},
		"no such hive":                     {index.Query{Hive: "40"}, ""},
		"from":                             {index.Query{From: d(2025, 5, 20)}, "willow/26-03-30 4/25-05-20"},
		"to":                               {index.Query{To: d(2025, 4, 10)}, "2/25-04-10 2/24-07-01"},
		"one day":                          {index.Query{From: d(2025, 5, 2), To: d(2025, 5, 2)}, "4/25-05-02"},
		"words in a hive and a time":       {index.Query{Words: "queen", Hive: "2", From: d(2025, 1, 1)}, "2/25-04-10/4"},
		"present is not denied":            {where(is("signs.chalkbrood", "yes")), "2/24-07-01"},
		"denied is not present":            {where(is("signs.chalkbrood", "no")), "2/25-04-10"},
		"said either way":                  {where(op("signs.chalkbrood", index.Said, "")), "2/25-04-10 2/24-07-01"},
		"not said":                         {where(op("signs.chalkbrood", index.Silent, "")), "willow/26-03-30 4/25-05-20 4/25-05-02"},
		"not said of any bar":              {where(op("bars.*.eggs", index.Silent, "")), "willow/26-03-30 4/25-05-20 2/24-07-01"},
		"queen seen":                       {where(is("queen.seen", "yes")), "willow/26-03-30 2/25-04-10"},
		"queen not seen":                   {where(is("queen.seen", "no")), "4/25-05-02"},
		"at most":                          {where(op("temper.score", index.AtMost, "2")), "willow/26-03-30 4/25-05-02"},
		"below":                            {where(op("temper.score", index.Below, "2")), "4/25-05-02"},
		"above":                            {where(op("temper.score", index.Above, "2")), "4/25-05-20"},
		"at least, as a number":            {where(op("bars.*.drone_brood.cover", index.AtLeast, "0.50")), "4/25-05-20/10"},
		"another value":                    {where(op("temper.score", index.IsNot, "1")), "willow/26-03-30 4/25-05-20"},
		"a word's value":                   {where(is("bars.*.queen_cells.*.kind", "supersedure")), "4/25-05-02/7"},
		"any sign":                         {where(is("signs.*", "yes")), "2/24-07-01"},
		"one bar":                          {where(is("bars.4.eggs", "no")), "4/25-05-02/4"},
		"any bar":                          {where(is("bars.*.eggs", "yes")), "2/25-04-10"},
		"a second deed":                    {where(is("actions.feed.what", "fondant")), "4/25-05-20"},
		"both":                             {where(is("queen.seen", "yes"), is("signs.chalkbrood", "no")), "2/25-04-10"},
		"either":                           {where(index.Clause{{Path: "queen.seen", Value: "yes"}, {Path: "signs.chalkbrood", Value: "yes"}}), "willow/26-03-30 2/25-04-10 2/24-07-01"},
		"condition and words":              {index.Query{Words: "willow", Where: []index.Clause{is("queen.seen", "yes")}}, "willow/26-03-30"},
		"bars":                             {bars(is("bars.*.drone_brood", "yes")), "4/25-05-20/9 4/25-05-20/10"},
		"bars, limited":                    {index.Query{Where: []index.Clause{is("bars.*.drone_brood", "yes")}, Per: index.Bars, Limit: 1}, "4/25-05-20/9"},
		"the same bar":                     {bars(is("bars.*.eggs", "yes"), is("bars.*.capped_brood", "yes")), "2/25-04-10/6"},
		"bars of a number":                 {bars(is("bars.4.eggs", "yes")), "2/25-04-10/4"},
		"a bar that lacks a word":          {bars(is("bars.*.capped_brood", "yes"), op("bars.*.eggs", index.Silent, "")), "2/25-04-10/5 2/24-07-01/3"},
		"bars where the colony fits":       {bars(is("bars.*.capped_brood", "yes"), is("queen.seen", "yes")), "2/25-04-10/5 2/25-04-10/6"},
		"bars where words fit":             {index.Query{Words: "yellow", Per: index.Bars, Where: []index.Clause{is("bars.*.eggs", "yes")}}, "2/25-04-10/4 2/25-04-10/6"},
		"without":                          {index.Query{Where: []index.Clause{is("queen.seen", "yes")}, Without: []index.Clause{is("bars.*.eggs", "yes")}}, "willow/26-03-30"},
		"bars without":                     {index.Query{Per: index.Bars, Where: []index.Clause{is("bars.*.capped_brood", "yes")}, Without: []index.Clause{is("queen.seen", "yes")}}, "2/24-07-01/3"},
		"last":                             {index.Query{Where: []index.Clause{is("queen.seen", "yes")}, Pick: index.Last}, "willow/26-03-30"},
		"first":                            {index.Query{Where: []index.Clause{is("queen.seen", "yes")}, Pick: index.First}, "2/25-04-10"},
		"last for each hive":               {index.Query{Each: index.ByHive, Pick: index.Last}, "willow/26-03-30 4/25-05-20 2/25-04-10"},
		"first each year, oldest first":    {index.Query{Each: index.ByYear, Pick: index.First, Sort: index.Oldest}, "2/24-07-01 2/25-04-10 willow/26-03-30"},
		"first each year, limited":         {index.Query{Each: index.ByYear, Pick: index.First, Limit: 1}, "willow/26-03-30"},
		"what is waiting is no set aside":  {index.Query{States: []colony.State{colony.SetAside}}, ""},
		"what is waiting is not confirmed": {index.Query{States: []colony.State{colony.Confirmed}}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			hits := mustFind(t, s, c.query)
			if got := brief(hits); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
			if hits.Similar() {
				t.Errorf("words were taken for others: %v", hits.Terms)
			}
			if hits.Total < len(hits.Hits) {
				t.Errorf("%d hits of %d", len(hits.Hits), hits.Total)
			}
		})
	}
}

func TestBareHitsHaveNoQuotes(t *testing.T) {
	s := season(t)
	q := index.Query{Where: []index.Clause{is("queen.seen", "yes")}}
	full := mustFind(t, s, q)
	q.Bare = true
	bare := mustFind(t, s, q)
	if len(bare.Hits) != len(full.Hits) || len(bare.Hits[0].Quotes) != 0 || len(full.Hits[0].Quotes) == 0 {
		t.Errorf("%d hits with quotes, %d without: %+v", len(full.Hits), len(bare.Hits), bare.Hits)
	}
	if got := bare.Hits[0].Leaves; len(got) != 1 || got[0].Path != "queen.seen" {
		t.Errorf("leaves %v", got)
	}
}

func TestFindCounts(t *testing.T) {
	s := season(t)
	hits := mustFind(t, s, index.Query{Each: index.ByYear, Limit: 1})
	var got []string
	for _, g := range hits.Groups {
		got = append(got, fmt.Sprint(g.Key, " ", g.Count, " ", g.First, " ", g.Last))
	}
	want := []string{"2024 1 2024-07-01 2024-07-01", "2025 3 2025-04-10 2025-05-20", "2026 1 2026-03-30 2026-03-30"}
	if !slices.Equal(got, want) || hits.Total != 5 {
		t.Errorf("%d in all\n%s", hits.Total, strings.Join(got, "\n"))
	}
	for by, n := range map[index.Grouping]int{index.ByHive: 3, index.ByMonth: 4, index.ByDay: 5, index.Together: 0} {
		if got := len(mustFind(t, s, index.Query{Each: by}).Groups); got != n {
			t.Errorf("grouping %d: %d groups, want %d", by, got, n)
		}
	}
}

func TestFindForgivesSpelling(t *testing.T) {
	s := season(t)
	for words, want := range map[string]string{
		"chalkbrod":            "2/25-04-10 2/24-07-01/3",
		"superscedure sells":   "4/25-05-02/7",
		"quene seen":           "willow/26-03-30 2/25-04-10/4",
		"fondent":              "4/25-05-20",
		"egs":                  "4/25-05-02/4 2/25-04-10/4",
		"hi":                   "", // too short to guess
		"1999":                 "", // a number is meant as it is
		"xylophone":            "",
		"chalkbrood xylophone": "",
	} {
		hits := mustFind(t, s, index.Query{Words: words})
		if got := brief(hits); got != want || hits.Similar() != (want != "") {
			t.Errorf("%s: got %q, similar %v, want %q; %v", words, got, hits.Similar(), want, hits.Terms)
		}
	}
}

func TestFindRefuses(t *testing.T) {
	s := season(t)
	for name, q := range map[string]index.Query{
		"a path no record has":       {Where: []index.Clause{is("bars.*.egg", "yes")}},
		"a value the leaf never has": {Where: []index.Clause{is("queen.seen", "maybe")}},
		"an empty clause":            {Where: []index.Clause{{}}},
		"a mixed clause of bars":     {Per: index.Bars, Where: []index.Clause{{{Path: "bars.*.eggs", Value: "yes"}, {Path: "drones", Value: "yes"}}}},
		"an unknown comparison":      {Where: []index.Clause{op("drones", 99, "yes")}},
	} {
		if _, err := s.Find(q); err == nil {
			t.Errorf("%s was accepted", name)
		}
	}
}

// quoted writes a hit's quotes with the marked words in brackets.
func quoted(h index.Hit) string {
	var list []string
	for _, q := range h.Quotes {
		text := q.Text
		for _, m := range slices.Backward(q.Marks) {
			text = text[:m[0]] + "[" + text[m[0]:m[1]] + "]" + text[m[1]:]
		}
		list = append(list, fmt.Sprintf("%d:%s", q.Bar, text))
	}
	return strings.Join(list, " | ")
}

func TestQuotes(t *testing.T) {
	s := season(t)
	for name, c := range map[string]struct {
		query index.Query
		want  string
	}{
		"a word in its sentence":       {index.Query{Words: "syrup"}, "0:Fed two litres of [syrup]."},
		"words of one sentence":        {index.Query{Words: "queen marked"}, "4:[Queen] seen on bar 4, [marked] yellow."},
		"words of two":                 {index.Query{Words: "queen eggs", Hive: "4"}, "0:Didn't see the [queen]. | 4:No [eggs] on bar 4."},
		"a point within a number":      {index.Query{Words: "café"}, "0:First pollen from the willows, [café]-coloured, 3.5 of a bar."},
		"evidence of a leaf":           {index.Query{Where: []index.Clause{is("temper.stings", "3")}}, "0:[They went for me, stung three times.]"},
		"evidence of a bar":            {index.Query{Per: index.Bars, Where: []index.Clause{is("bars.*.eggs", "no")}}, "4:[No eggs on bar 4.]"},
		"evidence, then words":         {index.Query{Words: "calm", Where: []index.Clause{is("actions.feed.what", "syrup")}}, "0:[Fed two litres of syrup.] | 0:[Calm] today."},
		"one sentence for two leaves":  {index.Query{Where: []index.Clause{is("queen.seen", "yes"), is("queen.colour", "yellow")}}, "0:[Queen seen on bar 4, marked yellow.]"},
		"one sentence for two bars":    {index.Query{Where: []index.Clause{is("bars.*.drone_brood", "yes")}}, "9:[Drone brood on bars 9 and 10.] | 10:[Drone brood on bars 9 and 10.]"},
		"nothing said, nothing quoted": {index.Query{Where: []index.Clause{op("queen.seen", index.Silent, "")}, Limit: 1}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			hits := mustFind(t, s, c.query)
			if len(hits.Hits) == 0 {
				t.Fatal("no hit")
			}
			h := hits.Hits[0]
			if got := quoted(h); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
			note, err := s.Note(h.Note)
			if err != nil {
				t.Fatal(err)
			}
			for _, q := range h.Quotes {
				if note.Text[q.Span[0]:q.Span[1]] != q.Text {
					t.Errorf("%q is not what stands at %v", q.Text, q.Span)
				}
			}
		})
	}
}

// A note without full stops is quoted by what is near.
func TestQuotesOfUnpunctuatedSpeech(t *testing.T) {
	s := indextest.MustOpen(t)
	before, after := strings.Repeat("und so weiter ", 40), strings.Repeat(" – и так далее", 40)
	mustTake(t, s, write("3", noon(2026, 5, 1), says(before+"chalkbrood"+after)))
	q := mustFind(t, s, index.Query{Words: "chalkbrood"}).Hits[0].Quotes[0]
	if len(q.Text) > 250 || !strings.HasPrefix(q.Text, "weiter") && !strings.HasPrefix(q.Text, "so") && !strings.HasPrefix(q.Text, "und") ||
		strings.ToValidUTF8(q.Text, "?") != q.Text {
		t.Errorf("%q", q.Text)
	}
}

// A note about several hives is divided among them.
func TestWordsBelongToTheirHive(t *testing.T) {
	s := indextest.MustOpen(t)
	var w indextest.Writer
	at := noon(2026, 5, 14)
	w.Hive("3", at)
	w.Say("Calm.", "temper.score=4")
	w.Hive("5", at)
	w.Say("Nasty, and the lid is cracked.", "temper.score=1")
	w.Hive("6", at)
	w.Say("Nothing much.")
	mustTake(t, s, w.Visit())
	for words, want := range map[string]string{"calm": "3/26-05-14", "nasty": "5/26-05-14", "cracked": "5/26-05-14", "nothing": "6/26-05-14", "hive": "6/26-05-14 5/26-05-14 3/26-05-14"} {
		if got := brief(mustFind(t, s, index.Query{Words: words})); got != want {
			t.Errorf("%s: got %q, want %q", words, got, want)
		}
	}
}

// The window of days that a limited search looks through first gives what a
// full search gives.
func TestLimitAgreesWithAll(t *testing.T) {
	s := indextest.MustOpen(t)
	for _, v := range indextest.Visits(9, 700, 3) {
		mustTake(t, s, v)
	}
	for _, q := range []index.Query{{}, {Words: "chalkbrood"}, {Words: "page 17"}, {Where: []index.Clause{is("bars.*.eggs", "yes")}, Per: index.Bars}} {
		for _, q.Sort = range []index.Order{index.Newest, index.Oldest, index.ByName} {
			q.Limit = 0
			all := mustFind(t, s, q)
			for _, q.Limit = range []int{1, 20, 450} {
				some := mustFind(t, s, q)
				if want := brief(index.Hits{Hits: all.Hits[:min(q.Limit, len(all.Hits))]}); brief(some) != want || some.Total != all.Total {
					t.Errorf("%+v: %d of %d, want %d", q, len(some.Hits), some.Total, all.Total)
				}
			}
		}
	}
}

// What the index says of a leaf is what the records say.
func TestReadingsAgreeWithTheRecords(t *testing.T) {
	s := indextest.MustOpen(t)
	for _, v := range indextest.Visits(12, 200, 4) {
		mustTake(t, s, v)
	}
	told := 0
	for _, q := range []index.Query{{}, {Hive: "2", Sort: index.Oldest}, {Where: []index.Clause{is("bars.*.eggs", "yes")}, Limit: 30}} {
		hits := mustFind(t, s, q).Hits
		list, err := s.Readings(q, "temper.score")
		if err != nil || len(list) != len(hits) {
			t.Fatalf("%+v: %d readings of %d hits: %v", q, len(list), len(hits), err)
		}
		for i, h := range hits {
			ins := h.Record.Inspection()
			value, _ := colony.Get(&ins, "temper.score")
			if want := (index.Reading{Hive: h.Hive, Day: h.Day, Value: value}); list[i] != want {
				t.Errorf("%+v: reading %d is %+v, want %+v", q, i, list[i], want)
			}
			if value != "" {
				told++
			}
		}
	}
	if told == 0 {
		t.Error("no visit has a score: this test shows nothing")
	}
}
