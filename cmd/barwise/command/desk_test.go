package command

import (
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
	"barwise/tui"
)

func TestMishearingsAreCountedUntilTaught(t *testing.T) {
	s := indextest.MustOpen(t)
	corrected := func(want int) {
		t.Helper()
		evening := &desk{store: s}
		if n, err := evening.Slip("hunny", "honey"); n != want || err != nil {
			t.Errorf("corrected %d times, %v; want %d", n, err, want)
		}
	}
	corrected(1)
	corrected(2)
	if err := (&desk{store: s}).Teach("hunny", "honey"); err != nil {
		t.Fatal(err)
	}
	corrected(1)
}

// TestConfirmedHiveIsKnown holds that a hive's name is known as soon as a person confirmed an inspection of it.
func TestConfirmedHiveIsKnown(t *testing.T) {
	s := indextest.MustOpen(t)
	parser, err := parserFor(s)
	if err != nil {
		t.Fatal(err)
	}
	first, later := indextest.NoteOf("brindle hive, bar four eggs"), indextest.NoteOf("brindle has eggs on bar five")
	records, err := s.Take(first, readNote(parser, &first))
	if err != nil {
		t.Fatal(err)
	}
	d := &desk{store: s, parser: parser, now: time.Now}
	if news, err := d.Meet([]string{"4", "b", ""}); len(news) > 0 || err != nil {
		t.Errorf("numbers and letters are news: %q, %v", news, err)
	}
	if got := d.Parse(&later)[0].Hive; got != "" {
		t.Errorf("before anybody confirmed it the hive is %q", got)
	}
	if news, err := d.Meet([]string{"brindle"}); len(news) > 0 || err != nil {
		t.Errorf("before anybody confirmed it, news are %q, %v", news, err)
	}
	records[0].State = colony.Confirmed
	if err := s.Save(records[0]); err != nil {
		t.Fatal(err)
	}
	for _, want := range [][]string{{"brindle"}, nil} {
		if news, err := d.Meet([]string{"brindle"}); !slices.Equal(news, want) || err != nil {
			t.Errorf("news are %q, %v; want %q", news, err, want)
		}
	}
	if got := d.Parse(&later)[0].Hive; got != "brindle" {
		t.Errorf("the hive is %q, want brindle", got)
	}
	if err := d.Teach("hunny", "honey"); err != nil {
		t.Fatal(err)
	}
	if got := d.Parse(&later)[0].Hive; got != "brindle" {
		t.Errorf("with one alias more the hive is %q, want brindle", got)
	}
	if own, err := s.OwnWords(); err != nil || len(own.Hives) > 0 {
		t.Errorf("what was only confirmed is kept among the own words: %q, %v", own.Hives, err)
	}
}

func TestReviewFindsAsTheCommandDoes(t *testing.T) {
	s := indextest.MustOpen(t)
	parser, err := parserFor(s)
	if err != nil {
		t.Fatal(err)
	}
	note := indextest.NoteOf("hive three bar four eggs. I didn't see the queen")
	note.Given = time.Date(2026, 7, 18, 16, 0, 0, 0, time.UTC)
	if _, err := s.Take(note, readNote(parser, &note)); err != nil {
		t.Fatal(err)
	}
	d := &desk{store: s, parser: parser, now: func() time.Time { return note.Given.AddDate(0, 0, 10) }}
	got, err := d.find("queen not seen since june")
	if err != nil || got.All != 1 || len(got.Hits) != 1 || got.Hits[0].Hive != "3" || got.Understood != "queen not seen, from 2026-06-01 on" {
		t.Errorf("%+v, %v", got, err)
	}
	if got, err = d.find("how many days since I saw eggs in hive 3"); err != nil || !strings.HasPrefix(got.Line, "10 days ago") {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestDifferencesBetweenTwoReadings(t *testing.T) {
	at := []string{"hive=3", "at=2026-05-14T16:00:00Z"}
	was := []colony.Inspection{*inspectionOf(t, append(at, "bars.4.eggs=yes", "temper.score=2")...)}
	will := []colony.Inspection{*inspectionOf(t, append(at, "bars.4.eggs=no", "bars.5.nectar=yes")...)}
	on := colony.NewDate(2026, 5, 14)
	want := []tui.Effect{
		{Hive: "3", On: on, Path: "bars.4.eggs", Was: "yes", Will: "no"},
		{Hive: "3", On: on, Path: "temper.score", Was: "2"},
		{Hive: "3", On: on, Path: "bars.5.nectar", Will: "yes"},
	}
	got := differences(was, will)
	if len(got) != len(want) {
		t.Fatalf("%+v", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%d: %+v, want %+v", i, got[i], want[i])
		}
	}
	if got := differences(was, was); len(got) != 0 {
		t.Errorf("the same reading twice: %+v", got)
	}
}

// A quote begins shortly before the words that made the hit.
func TestQuoteShowsTheWordsThatWereFound(t *testing.T) {
	const text = "bar one honey bar two pollen both sides bar three eggs"
	at := strings.Index(text, "eggs")
	for want, q := range map[string]index.Quote{
		"… bar three eggs":   {Text: text, Marks: []colony.Span{{at, at + 4}}},
		"bar one honey here": {Text: "bar one honey here", Marks: []colony.Span{{8, 13}}},
		"no mark in it":      {Text: "no mark in it"},
	} {
		if got := quoteOf(index.Hit{Quotes: []index.Quote{q}}); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
