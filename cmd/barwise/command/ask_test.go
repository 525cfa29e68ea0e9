package command

import (
	"strings"
	"testing"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

func TestUnderstand(t *testing.T) {
	parser, err := parse.New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	today := colony.NewDate(2026, 5, 14)
	for words, want := range map[string]string{
		"queen seen hive four since april":             "hive 4, queen seen, from 2026-04-01 on",
		"supersedure cells last year":                  "queen cells, supersedure, from 2025-01-01 to 2025-12-31",
		"who was nasty in July":                        "temper stinging (1 of 4), from 2025-07-01 to 2025-07-31",
		"which bars with drone brood":                  "drone brood",
		"no eggs":                                      "no eggs",
		"chalkbrood ever":                              "chalkbrood",
		"when did I last see eggs in hive 2?":          "hive 2, eggs, the last time",
		"when did I last see the queen in the orchard": "hive orchard, queen seen, the last time",
		"bees moved into the lilac":                    "the words “moved lilac”",
		"washing line":                                 "the words “washing line”",
		"did I find the queen in pond":                 "hive pond, queen seen",
		"was the queen seen in the pond hive":          "hive pond, queen seen",
		"did I see queen cells":                        "queen cells",
		"snowdrops or crocus":                          "the words “snowdrops or crocus”",
		"chalkbrood or dysentery":                      "chalkbrood or dysentery",
		"who was bad tempered":                         "temper touchy (2 of 4) or worse",
		"how many stings did they give me in pond":     "hive pond, stings",
		"how many days from the swarm to eggs in pond": "hive pond, earlier swarmed, until eggs",
		"when did I open the floors":                   "floor opened",
		"two or more stings in pond":                   "hive pond, two or more stings",
		"3+ stings":                                    "3+ stings",
		"mites 10 or more":                             "mites 10 or more",
		"mites over ten":                               "mites over ten",
		"fed at least 2 litres":                        "feed given at least 2 litres, fed",
		"how many swarms":                              "earlier swarmed",
		"stings":                                       "stings",
		"hottest day in 2025":                          "temperature, from 2025-01-01 to 2025-12-31",
		"how many bars of honey did I take":            "bars harvested",
		"fed in 2025":                                  "fed, from 2025-01-01 to 2025-12-31",
		"":                                             "",
	} {
		if got := understand(words, parser, []string{"2", "orchard", "pond"}, today).String(); got != want {
			t.Errorf("%q:\n got %q\nwant %q", words, got, want)
		}
	}
}

func TestClausesFindWhatIsRecordedElsewhere(t *testing.T) {
	for leaf, want := range map[string]string{
		"contents.eggs=yes":           "contents.eggs=yes or bars.*.eggs=yes",
		"contents.eggs=no":            "contents.eggs=no or bars.*.eggs=no",
		"contents.eggs.amount=little": "",
		"queen_cells.any=yes": "queen_cells.any=yes or bars.*.queen_cells.any=yes or queen_cells.charged=yes or bars.*.queen_cells.charged=yes or " +
			"queen_cells.capped=yes or bars.*.queen_cells.capped=yes or queen_cells.emerged=yes or bars.*.queen_cells.emerged=yes or queen_cells.torn=yes or bars.*.queen_cells.torn=yes",
		"queen_cells.any=no":           "queen_cells.any=no or bars.*.queen_cells.any=no",
		"queen_cells.capped=yes":       "queen_cells.capped=yes or bars.*.queen_cells.capped=yes",
		"queen_cells.any.kind=swarm":   "queen_cells.*.kind=swarm or bars.*.queen_cells.*.kind=swarm",
		"earlier.queen_seen=yes":       "queen.seen=yes",
		"earlier.eggs_seen=yes":        "contents.eggs=yes or bars.*.eggs=yes",
		"bars.4.eggs=yes":              "bars.4.eggs=yes",
		"temper.score=1":               "temper.score=1",
		"actions.feed=yes":             "actions.feed=yes",
		"actions.feed.what=syrup":      "actions.feed.what=syrup",
		"hive=3":                       "",
		"at=2026-05-14T00:00:00Z":      "",
		"earlier.queen_seen.bar=6":     "",
		"bars.4.capped_brood.cover=.5": "bars.4.capped_brood.cover=.5",
	} {
		path, value, _ := strings.Cut(leaf, "=")
		got := ""
		for i, c := range clauseOf(colony.Leaf{Path: path, Value: value}) {
			if i > 0 {
				got += " or "
			}
			got += c.String()
		}
		if got != want {
			t.Errorf("%s asks for %q, want %q", leaf, got, want)
		}
	}
}

func TestAQuestionForBarsIsOfBars(t *testing.T) {
	parser, err := parse.New(colony.OwnWords{})
	if err != nil {
		t.Fatal(err)
	}
	q := understand("which bars with drone brood", parser, nil, colony.NewDate(2026, 5, 14))
	if q.Per != index.Bars || len(q.Where) != 1 || len(q.Where[0]) != 1 || q.Where[0][0].Path != "bars.*.drone_brood" {
		t.Errorf("per %v, where %v", q.Per, q.Where)
	}
}
