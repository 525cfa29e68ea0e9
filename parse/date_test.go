package parse

import (
	"strings"
	"testing"
	"time"

	"barwise/colony"
)

// The vectors below come from public English corpora. Each names its source:
//
//	duckling: facebook/duckling, Duckling/Time/EN/Corpus.hs (BSD); Tuesday 2013-02-12
//	recognizers: microsoft/Recognizers-Text, Specs/DateTime/English/DateParser.json (MIT); day as given
//	chrono: wanasit/chrono, test/en (MIT); day as given
//
// A day is written past|future where the words leave open on which side of the
// inspection it lies, since reports look back and plans ahead.
const chrono = "chrono"

// daysIn lists the days that a note of that date names, as past|future, or
// once where both are one; a week or season without a day is "week".
func daysIn(text, ref string) string {
	at, err := time.Parse(time.DateOnly, ref)
	if err != nil {
		panic(err)
	}
	r := newReader(sharedParser().lexicon)
	r.start(&colony.Note{Text: text, Given: at})
	items := r.lex.items(r.split.tokens(nil, text, 0, blank), nil)
	var out []string
	for i := range items {
		switch d := items[i].day; {
		case !items[i].is(kDate):
		case d.week:
			out = append(out, "week")
		case d.past == d.future:
			out = append(out, d.past.String())
		default:
			out = append(out, d.past.String()+"|"+d.future.String())
		}
	}
	return strings.Join(out, " ")
}

const tuesday = "2013-02-12"

func TestDates(t *testing.T) {
	for _, c := range []struct{ ref, said, want, source, ours string }{
		{tuesday, "today", "2013-02-12", duckling, ""},
		{tuesday, "yesterday", "2013-02-11", duckling, ""},
		{tuesday, "tomorrow", "2013-02-13", duckling, ""},
		{tuesday, "the day before yesterday", "2013-02-10", duckling, ""},
		{tuesday, "the day after tomorrow", "2013-02-14", duckling, ""},
		{tuesday, "yesterday evening", "2013-02-11", duckling, ""},
		{tuesday, "tomorrow afternoon", "2013-02-13", duckling, ""},
		{tuesday, "this morning", "2013-02-12", duckling, ""},
		{tuesday, "tonight", "2013-02-12", duckling, ""},
		{tuesday, "a week ago", "2013-02-05", duckling, ""},
		{tuesday, "one week ago", "2013-02-05", duckling, ""},
		{tuesday, "1 week ago", "2013-02-05", duckling, ""},
		{tuesday, "7 days ago", "2013-02-05", duckling, ""},
		{tuesday, "14 days Ago", "2013-01-29", duckling, ""},
		{tuesday, "a fortnight ago", "2013-01-29", duckling, ""},
		{tuesday, "three weeks ago", "2013-01-22", duckling, ""},
		{tuesday, "three months ago", "2012-11-12", duckling, ""},
		{tuesday, "in 1 week", "2013-02-19", duckling, ""},
		{tuesday, "in a week", "2013-02-19", duckling, ""},
		{tuesday, "in 7 days", "2013-02-19", duckling, ""},
		{tuesday, "in a day", "2013-02-13", duckling, ""},
		{tuesday, "a day from now", "2013-02-13", duckling, ""},
		{tuesday, "3 years from today", "2016-02-12", duckling, ""},
		{tuesday, "within 2 weeks", "2013-02-26", duckling, ""},

		{tuesday, "monday", "2013-02-11|2013-02-18", duckling, "ahead only there"},
		{tuesday, "tuesday", "2013-02-05|2013-02-19", duckling, "ahead only there"},
		{tuesday, "thursday", "2013-02-07|2013-02-14", duckling, "ahead only there"},
		{tuesday, "on fri.", "2013-02-08|2013-02-15", duckling, "ahead only there"},
		{tuesday, "monday mOrnIng", "2013-02-11|2013-02-18", duckling, ""},
		{tuesday, "last tuesday", "2013-02-05", duckling, ""},
		{tuesday, "last sunday", "2013-02-10", duckling, ""},
		{tuesday, "next monday", "2013-02-18", duckling, ""},
		{tuesday, "next tuesday", "2013-02-19", duckling, ""},
		{tuesday, "next wednesday", "2013-02-20", duckling, ""},
		{tuesday, "this monday", "2013-02-11|2013-02-18", duckling, "02-18 there; the tense decides here"},
		{tuesday, "this past weekend", "2013-02-09", duckling, ""},
		{tuesday, "at the weekend", "2013-02-09|2013-02-16", duckling, ""},
		{tuesday, "last week", "week", duckling, ""},
		{tuesday, "next week", "2013-02-19", duckling, "the week of 02-18 there; a plan for next week is due in 7 days"},
		{tuesday, "last month", "week", duckling, ""},
		{tuesday, "next month", "week", duckling, ""},
		{tuesday, "last year", "week", duckling, ""},

		{tuesday, "the 1st of march", "2012-03-01|2013-03-01", duckling, "ahead only there"},
		{tuesday, "first of march", "2012-03-01|2013-03-01", duckling, ""},
		{tuesday, "march first", "2012-03-01|2013-03-01", duckling, ""},
		{tuesday, "march 3", "2012-03-03|2013-03-03", duckling, ""},
		{tuesday, "march 3 2015", "2015-03-03", duckling, ""},
		{tuesday, "march 3rd 2015", "2015-03-03", duckling, ""},
		{tuesday, "march third 2015", "2015-03-03", duckling, ""},
		{tuesday, "3/3/2015", "2015-03-03", duckling, ""},
		{tuesday, "3/3/15", "2015-03-03", duckling, ""},
		{tuesday, "2015-03-03", "2015-03-03", duckling, ""},
		{tuesday, "on the 15th", "2013-01-15|2013-02-15", duckling, ""},
		{tuesday, "the 15th of february", "2012-02-15|2013-02-15", duckling, ""},
		{tuesday, "15 of february", "2012-02-15|2013-02-15", duckling, ""},
		{tuesday, "february the 15th", "2012-02-15|2013-02-15", duckling, ""},
		{tuesday, "february 15", "2012-02-15|2013-02-15", duckling, ""},
		{tuesday, "15th february", "2012-02-15|2013-02-15", duckling, ""},
		{tuesday, "Aug 8", "2012-08-08|2013-08-08", duckling, ""},
		{tuesday, "April 14, 2015", "2015-04-14", duckling, ""},
		{tuesday, "14april 2015", "2015-04-14", duckling, ""},
		{tuesday, "14th April 15", "2012-04-14|2013-04-14", duckling, "2015 there; a year behind a day has four figures"},
		{tuesday, "10/31/1974", "1974-10-31", duckling, ""},
		{tuesday, "10.31.1974", "1974-10-31", duckling, ""},
		{tuesday, "Sunday, Feb 10", "2013-02-10|2014-02-10", duckling, ""},
		{tuesday, "Monday, Feb 18", "2012-02-18|2013-02-18", duckling, ""},
		{tuesday, "on the first", "2013-02-01|2013-03-01", duckling, ""},
		{tuesday, "4th of July", "2012-07-04|2013-07-04", duckling, ""},
		{tuesday, "4 of july", "2012-07-04|2013-07-04", duckling, ""},
		{tuesday, "last 2 days", "", duckling, "02-10 to 02-11 there; a stretch of days is no day"},
		{tuesday, "July 13 through 15", "2012-07-13|2013-07-13", duckling, "three days there; a day of the record is one day: the first"},

		{"2016-11-07", "next Sunday", "2016-11-20", recognizers, ""},
		{"2016-11-07", "last Sunday", "2016-11-06", recognizers, ""},
		{"2016-11-07", "Oct 2", "2016-10-02|2017-10-02", recognizers, ""},
		{"2018-05-31", "two days before yesterday", "2018-05-28", recognizers, ""},
		{"2018-05-31", "three weeks from tomorrow", "2018-06-22", recognizers, ""},
		{"2012-08-09", "Monday", "2012-08-06|2012-08-13", chrono, "the nearest there; ours by tense"},
		{"2012-08-09", "Sunday", "2012-08-05|2012-08-12", chrono, "the nearest there; ours by tense"},
		{"2012-08-10", "10 days ago", "2012-07-31", chrono, ""},
		{"2022-08-02", "last Sunday", "2022-07-31", chrono, ""},
		{"2022-08-02", "last Wednesday", "2022-07-27", chrono, ""},

		{tuesday, "a week last tuesday", "2013-01-29", ours, ""},
		{tuesday, "saturday week", "2013-02-23", ours, ""},
		{"2024-03-31", "a month ago", "2024-02-29", ours, ""},
		{"2023-01-31", "in a month", "2023-02-28", ours, ""},
		{"2026-01-02", "three days ago", "2025-12-30", ours, ""},
		{"2026-05-14", "on the 31st", "2026-03-31|2026-05-31", ours, ""},
		{"2026-05-14", "29 february", "2024-02-29|2028-02-29", ours, ""},
	} {
		if got := daysIn(c.said, c.ref); got != c.want {
			t.Errorf("%q on %s: %q, want %q (%s)", c.said, c.ref, got, c.want, c.source)
		}
	}
}

// TestNoDates holds what only looks like a day.
func TestNoDates(t *testing.T) {
	for _, c := range []struct{ said, source string }{
		{"laughing out loud", duckling}, {"1 adult", duckling}, {"we are separated", duckling}, {"25", duckling},
		{"this is the one", duckling}, {"in 61", duckling}, {"this one", duckling}, {"this past one", duckling},
		{"at single", duckling}, {"at a couple of", duckling}, {"at pairs", duckling}, {"at a few", duckling},
		{"at dozens", duckling}, {"Rat 6", duckling}, {"3 30", duckling}, {"three twenty", duckling},
		{"two three", duckling}, {"at 650-650-6500", duckling}, {"at 650.650.6500", duckling},
		{"for the year", chrono}, {"1-2", chrono}, {"at 6.5 kilograms", chrono}, {"February 29, 2022", chrono},
		{"the first", ours}, {"the second bar", ours}, {"they may swarm", ours}, {"march on the floor", ours},
		{"she sat on bar six", ours}, {"out in the sun", ours}, {"the third of the comb", ours}, {"wed", ours},
	} {
		if got := daysIn(c.said, tuesday); got != "" {
			t.Errorf("%q: finds the day %s (%s)", c.said, got, c.source)
		}
	}
}
