package parse

import (
	"math"
	"strings"
	"sync"
	"testing"

	"barwise/colony"
)

// The vectors below come from public English corpora. Each names its source:
//
//	duckling: facebook/duckling, Duckling/{Numeral,Ordinal,Quantity,Duration}/EN/Corpus.hs (BSD)
//	recognizers: microsoft/Recognizers-Text, Specs/{Number,NumberWithUnit,DateTime}/English (MIT)
//	ours: no outside source; a case of the contract
//
// Where the contract of a note decides otherwise than the source, the case
// stays, with our reading and in `ours` what the source has and why we differ.
const (
	duckling    = "duckling"
	recognizers = "recognizers"
	ours        = "ours"
)

// readAll reads text with one of the readers and reports the index behind the
// reading and the number of tokens.
func readAll[T any](text string, read func(l *lexer) (T, int)) (value T, end, all int) {
	p := sharedParser()
	r := newReader(p.lexicon)
	r.start(&colony.Note{Text: text, Given: may14})
	r.lex.toks = r.split.tokens(nil, text, 0, blank)
	value, end = read(&r.lex)
	return value, end, len(r.lex.toks)
}

var sharedParser = sync.OnceValue(func() *Parser {
	p, err := New(colony.OwnWords{})
	if err != nil {
		panic(err)
	}
	return p
})

type numberCase struct {
	said   string
	lo, hi float64 // hi 0: no range
	source string
	ours   string
}

func TestNumbers(t *testing.T) {
	cases := []numberCase{
		{"nought", 0, 0, duckling, ""},
		{"zero", 0, 0, duckling, ""},
		{"nil", 0, 0, duckling, ""},
		{"single", 1, 0, duckling, ""},
		{"a pair", 2, 0, duckling, ""},
		{"a couple", 2, 0, duckling, ""},
		{"a couple of", 2, 0, duckling, ""},
		{"a dozen", 12, 0, duckling, ""},
		{"two dozen", 24, 0, duckling, ""},
		{"Two dozen", 24, 0, duckling, ""},
		{"half a dozen", 6, 0, recognizers, ""},
		{"fourteen", 14, 0, duckling, ""},
		{"33", 33, 0, duckling, ""},
		{"thirty three", 33, 0, duckling, ""},
		{"thirty-three", 33, 0, duckling, ""},
		{"0033", 33, 0, duckling, ""},
		{"1.1", 1.1, 0, duckling, ""},
		{"1.10", 1.1, 0, duckling, ""},
		{"01.10", 1.1, 0, duckling, ""},
		{"one point one", 1.1, 0, duckling, ""},
		{"0.77", .77, 0, duckling, ""},
		{"100,000", 100000, 0, duckling, ""},
		{"100000", 100000, 0, duckling, ""},
		{"five thousand", 5000, 0, duckling, ""},
		{"twenty-one thousand Eleven", 21011, 0, duckling, ""},
		{"one hundred and sixteen", 116, 0, recognizers, ""},
		{"1/5", .2, 0, duckling, ""},
		{"2/10", .2, 0, duckling, ""},
		{"3/15", .2, 0, duckling, ""},
		{"two thirds", 2. / 3, 0, recognizers, ""},
		{"a half", .5, 0, recognizers, ""},
		{"three quarters", .75, 0, recognizers, ""},
		{"one and a half", 1.5, 0, recognizers, ""},
		{"five and a quarter", 5.25, 0, recognizers, ""},
		{"a fifth", .2, 0, recognizers, ""},
		{"2 1/4", 2.25, 0, recognizers, ""},
		{"2 ¼", 2.25, 0, recognizers, ""},
		{"twenty and three fifths", 20.6, 0, recognizers, ""},
		{"three fifths", .6, 0, recognizers, ""},
		{"eighty percent", .8, 0, recognizers, ""},
		{"eighty per cent", .8, 0, recognizers, ""},
		{"80%", .8, 0, recognizers, ""},

		{"between 20 and 30", 20, 30, recognizers, "without the 30 there; as above"},
		{"20 through 100", 20, 100, recognizers, "without the 100 there; ranges of bars hold both ends"},
		{"2-7", 2, 7, duckling, ""},
		{"2 - 7", 2, 7, duckling, ""},
		{"~2-7", 2, 7, duckling, ""},
		{"100 to 1000", 100, 1000, duckling, ""},
		{"two or three", 2, 3, ours, ""},
		{"a dozen or so", 12, 0, ours, ""},
	}
	for _, c := range cases {
		t.Run(c.said, func(t *testing.T) {
			q, end, all := readAll(c.said, func(l *lexer) (quantity, int) { return l.quantityAt(0) })
			if end != all || math.Abs(q.lo-c.lo) > 1e-6 || math.Abs(q.hi-c.hi) > 1e-6 {
				t.Errorf("%q: read %d of %d words as %v to %v, want %v to %v (%s)", c.said, end, all, q.lo, q.hi, c.lo, c.hi, c.source)
			}
		})
	}
}

func TestOrdinals(t *testing.T) {
	for said, want := range map[string]float64{
		"first": 1, "1st": 1, "second": 2, "2nd": 2, "third": 3, "3rd": 3, "fourth": 4, "4th": 4, "eighth": 8, "8th": 8,
		"twenty-fifth": 25, "twenty fifth": 25, "25th": 25, "thirty-first": 31, "thirty first": 31, "31st": 31,
		"forty-second": 42, "42nd": 42, "seventy third": 73, "73rd": 73, "90th": 90,
	} {
		q, end, all := readAll(said, func(l *lexer) (quantity, int) { return l.quantityAt(0) })
		if end != all || q.lo != want || !q.ordinal {
			t.Errorf("%q: read %d of %d words as %+v, want the ordinal %v (%s)", said, end, all, q, want, duckling)
		}
	}
}

func numbersIn(text string) string {
	items, _ := lexed(sharedParser(), text)
	var out []string
	for _, it := range items {
		if it.is(kNum) && !it.n.article {
			s := formatNumber(it.n.lo)
			if it.n.hi > 0 {
				s += "-" + formatNumber(it.n.hi)
			}
			out = append(out, s)
		}
	}
	return strings.Join(out, " ")
}

func TestNumbersInSpeech(t *testing.T) {
	for _, c := range []struct{ said, want, source, ours string }{
		{"a few", "", duckling, "3 there; a few is an amount here, not a count"},
		{"one twenty two", "1 22", duckling, "122 there; a spoken list of bars stays a list"},
		{"bars one two and three", "1 2 3", ours, ""},
		{"bars four five and six", "4 5 6", ours, ""},
		{"100K", "100", duckling, "100000 there; K, M and G are refused: 30 l is litres"},
		{"3M", "3", duckling, "3000000 there; as above"},
		{"more than thirty", "30", recognizers, "open above there; no leaf of the record holds an open bound"},
		{"no less than thirty", "30", recognizers, "[30,∞) there; as above"},
		{"five hundred or more", "500", recognizers, "[500,∞) there; as above"},
		{"at most 100 and at least 20", "100 20", recognizers, "[20,100] there; as above"},
		{"forty-five (45)", "45 45", duckling, "once there; no note says a number twice"},
		{"two point two million", "2.2", duckling, "2200000 there; nothing in a hive is counted in millions"},
		{"negative five hundred and four", "504", duckling, "-504 there; counts and amounts have no sign"},
		{"minus 5", "", duckling, "-5 there; a temperature here, no count"},
		{"-504", "504", duckling, "-504 there; as above"},
		{"twenty-three fifths", "23 0.2", recognizers, "4.6 there; a share of a comb is below one"},
		{"1995-01", "1995 1", recognizers, "no range there; none here, two numbers"},
		{".77", "77", duckling, "0.77 there; a full stop before a number ends a sentence"},
		{"point 77", "77", duckling, "0.77 there; no share is said without its nought"},
		{"20/100", "", duckling, "0.2 there; only fractions that are said of a comb, down to sixteenths"},
		{"above one quarter and below a half", "0.25 0.5", recognizers, "an open range there; as above"},
	} {
		if got := numbersIn(c.said); got != c.want {
			t.Errorf("%q: %q, want %q (%s)", c.said, got, c.want, c.source)
		}
	}
}

type measureCase struct {
	said   string
	lo, hi float64
	unit   string
	source string
	ours   string
}

func TestMeasures(t *testing.T) {
	for _, c := range []measureCase{
		{"two pounds", 2, 0, "lb", duckling, ""},
		{"2 grams", 2, 0, "g", duckling, ""},
		{"0.002 kg", .002, 0, "kg", duckling, ""},
		{"a kilogram", 1, 0, "kg", duckling, ""},
		{"a kg", 1, 0, "kg", duckling, ""},
		{"a Pound", 1, 0, "lb", duckling, ""},
		{"1 lb", 1, 0, "lb", duckling, ""},
		{"a lb", 1, 0, "lb", duckling, ""},
		{"2 ounces", 2, 0, "oz", duckling, ""},
		{"2oz", 2, 0, "oz", duckling, ""},
		{"3 Cups", 3, 0, "cup", duckling, ""},
		{"3/4 cup", .75, 0, "cup", duckling, ""},
		{"0.75 cup", .75, 0, "cup", duckling, ""},
		{"500g", 500, 0, "g", duckling, ""},
		{"0.5 kilograms", .5, 0, "kg", duckling, ""},
		{"100-1000 gram", 100, 1000, "g", duckling, ""},
		{"between 100 and 1000 grams", 100, 1000, "g", duckling, ""},
		{"100 - 1000 g", 100, 1000, "g", duckling, ""},
		{"~2-7 grams", 2, 7, "g", duckling, ""},
		{"half a gallon", .5, 0, "gal", duckling, ""},
		{"an inch and a half", 1.5, 0, "in", duckling, ""},
		{"10 1/2 inches", 10.5, 0, "in", recognizers, ""},
		{"six-inch", 6, 0, "in", recognizers, ""},
	} {
		m, end, all := readAll(c.said, func(l *lexer) (measure, int) { return l.measureAt(0) })
		if end != all || math.Abs(m.amount.lo-c.lo) > 1e-6 || math.Abs(m.amount.hi-c.hi) > 1e-6 || m.unit != c.unit {
			t.Errorf("%q: read %d of %d words as %v to %v %q, want %v to %v %q (%s)", c.said, end, all, m.amount.lo, m.amount.hi, m.unit, c.lo, c.hi, c.unit, c.source)
		}
	}
}

func TestDurations(t *testing.T) {
	for _, c := range []struct {
		said         string
		days, months int
		source, ours string
	}{
		{"30 days", 30, 0, duckling, ""},
		{"seven weeks", 49, 0, duckling, ""},
		{"1 month", 0, 1, duckling, ""},
		{"a month", 0, 1, duckling, ""},
		{"2 years", 0, 24, duckling, ""},
		{"a fortnight", 14, 0, duckling, ""},
		{"48 hours", 2, 0, ours, ""},
		{"ten-day", 10, 0, ours, ""},
	} {
		s, end, all := readAll(c.said, func(l *lexer) (span, int) { return l.durationAt(0) })
		if end != all || s.days != c.days || s.months != c.months {
			t.Errorf("%q: read %d of %d words as %d days and %d months, want %d and %d (%s)", c.said, end, all, s.days, s.months, c.days, c.months, c.source)
		}
	}
	for _, said := range []string{"for months", "in days", "secretary", "minutes", "I second that"} { // duckling, negative corpus
		items, _ := lexed(sharedParser(), said)
		for _, it := range items {
			if it.is(kDur) || it.is(kDate) && !it.day.week {
				t.Errorf("%q: finds a length of time", said)
			}
		}
	}
}

func TestTemperatures(t *testing.T) {
	for _, c := range []struct{ said, want, source, ours string }{
		{"37 degrees Celsius", "37", duckling, ""},
		{"37° C", "37", duckling, ""},
		{"37 celsius", "37", duckling, ""},
		{"seventy Fahrenheit", "21.1", duckling, ""},
		{"70 degrees Fahrenheit", "21.1", duckling, ""},
		{"70°F", "21.1", duckling, ""},
		{"45 degrees", "45", duckling, ""},
		{"45°", "45", duckling, ""},
		{"10.5 celcius", "10.5", recognizers, ""},
		{"100.2 farenheit", "37.9", recognizers, ""},
		{"-2 degrees celsius", "-2", duckling, ""},
		{"2 degrees below zero", "-2", duckling, ""},
		{"minus two degrees", "-2", ours, ""},
		{"8-12 degrees", "8", ours, "no sign: a range"},
		{"between 30 and 40 degrees", "30", duckling, "30 to 40 there; the record holds one number, the smaller"},
	} {
		ins := sharedParser().Parse(&colony.Note{Text: c.said, Given: may14})
		if got, _ := colony.Get(&ins[0], "weather.temp_c"); got != c.want {
			t.Errorf("%q: %q, want %q (%s) %v", c.said, got, c.want, c.source, ins[0].Remarks)
		}
	}
}
