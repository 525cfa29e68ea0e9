package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// goodRule is a rule file that loads; the tests below break it.
const goodRule = `[[rule]]
id = "chalk"
kind = "sign"
value = "chalkbrood"
say = ["chalk [brood]"]
yes = ["chalk brood on bar two"]
no = ["a chalk cliff"]
`

const goodMishearing = `[[mishearing]]
heard = ["brewed"]
said = "brood"
why = "same sounds"
yes = ["capped brewed"]
`

func TestRulesLoadStrictly(t *testing.T) {
	cases := []struct {
		what, data string
		want       []string // parts of the message: where, and what is wrong
	}{
		{"unknown key", strings.Replace(goodRule, "value =", "valeu =", 1), []string{"rules/x.toml:4", "valeu"}},
		{"unknown table", goodRule + "[[rul]]\nid = \"a\"\n", []string{"rules/x.toml", "rul"}},
		{"unknown key of a mishearing", goodMishearing + "afer = [\"bar\"]\n", []string{"rules/x.toml:6", "afer"}},
		{"unknown kind", strings.Replace(goodRule, `"sign"`, `"sing"`, 1), []string{"rules/x.toml:3", "sing"}},
		{"wrong type", strings.Replace(goodRule, `"chalkbrood"`, "3", 1), []string{"rules/x.toml:4"}},
		{"not TOML", "[[rule]\nid =", []string{"rules/x.toml:1"}},
		{"empty file", "", []string{"rules/x.toml", "holds no rule"}},
		{"nothing but comments", "# a title\n\n", []string{"rules/x.toml", "holds no rule"}},
		{"no id", strings.Replace(goodRule, `id = "chalk"`, "", 1), []string{"rules/x.toml", "id"}},
		{"no kind", strings.Replace(goodRule, `kind = "sign"`, "", 1), []string{"rules/x.toml", `"chalk"`, "kind"}},
		{"no way of saying", strings.Replace(goodRule, `say = ["chalk [brood]"]`, "say = []", 1), []string{"rules/x.toml", `"chalk"`, "says nothing"}},
		{"no yes", strings.Replace(goodRule, `yes = ["chalk brood on bar two"]`, "", 1), []string{"rules/x.toml", `"chalk"`, "yes"}},
		{"no no", strings.Replace(goodRule, `no = ["a chalk cliff"]`, "", 1), []string{"rules/x.toml", `"chalk"`, "no"}},
		{"mishearing without a reason", strings.Replace(goodMishearing, `why = "same sounds"`, "", 1), []string{"rules/x.toml", `"brood"`, "why"}},
		{"mishearing of nothing", strings.Replace(goodMishearing, `["brewed"]`, "[]", 1), []string{"rules/x.toml", `"brood"`, "heard"}},
	}
	for _, c := range cases {
		t.Run(c.what, func(t *testing.T) {
			_, err := decodeRules("x.toml", c.data)
			wantMessage(t, err, c.want)
		})
	}
}

func wantMessage(t *testing.T, err error, parts []string) {
	t.Helper()
	if err == nil {
		t.Fatal("loads without complaint")
	}
	for _, part := range parts {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("%q does not mention %q", err, part)
		}
	}
}

// TestWaysOfSayingAreChecked holds that a pattern which cannot mean what its
// writer meant is refused, with the file, the rule and the pattern.
func TestWaysOfSayingAreChecked(t *testing.T) {
	cases := []struct{ what, say, want string }{
		{"unclosed choice", "(chalk|stone brood", "not closed"},
		{"unclosed option", "chalk [brood", "not closed"},
		{"closed by the other bracket", "(chalk|stone] brood", "closed by"},
		{"stray closing bracket", "chalk) brood", "stray"},
		{"stray bar", "chalk|stone", "stray"},
		{"unknown slot", "chalk on <m> bars", "<m>"},
		{"nothing", "", "says nothing"},
		{"nothing but space", "  ", "says nothing"},
	}
	for _, c := range cases {
		t.Run(c.what, func(t *testing.T) {
			_, err := newLexicon(ruleFile{Rule: []rule{{ID: "chalk", Kind: kSign, Say: []string{c.say}, file: "x.toml"}}})
			wantMessage(t, err, []string{"rules/x.toml", `"chalk"`, c.want})
		})
	}
}

func TestEmptySayingMatchesNothing(t *testing.T) {
	for _, say := range []string{"[chalk]", "(|chalk)"} {
		if l, err := newLexicon(ruleFile{Rule: []rule{{ID: "chalk", Kind: kSign, Say: []string{say}, file: "x.toml"}}}); err == nil {
			p := parserOf(l, func(*lexicon) {})
			if items, _ := lexed(p, "stone"); items[0].is(kSign) {
				t.Errorf("%q takes a word that it does not hold", say)
			}
		}
	}
}

func TestRepeatedIDIsRefused(t *testing.T) {
	a, err := decodeRules("a.toml", goodRule)
	if err != nil {
		t.Fatal(err)
	}
	b, err := decodeRules("b.toml", goodRule)
	if err != nil {
		t.Fatal(err)
	}
	wantMessage(t, checkIDs(append(a.Rule, b.Rule...)), []string{"rules/b.toml", `"chalk"`, "rules/a.toml"})
}

func TestUnknownPartOfNumbersIsRefused(t *testing.T) {
	for _, f := range []ruleFile{
		{Number: []part{{Kind: "tenths", Words: map[string]float64{"one": 1}}}},
		{Date: []part{{Kind: "moonday", Words: map[string]float64{"one": 1}}}},
	} {
		_, err := newLexicon(f)
		wantMessage(t, err, []string{"unknown kind"})
	}
}

// TestOwnWords holds that the keeper's own aliases and plants are read, and
// that an alias is flagged like any other mishearing.
func TestOwnWords(t *testing.T) {
	p, err := New(colony.OwnWords{Aliases: map[string]string{"wibble": "capped brood"}, Plants: []string{"phacelia"}})
	if err != nil {
		t.Fatal(err)
	}
	got := p.Parse(&colony.Note{Text: "bar four wibble. bringing in pollen from the phacelia", Given: may14})
	if v, _ := colony.Get(&got[0], "bars.4.capped_brood"); v != "yes" {
		t.Errorf("the alias is not read: %+v", colony.Leaves(&got[0]))
	}
	if len(got[0].Check) == 0 || got[0].Check[0].Path != "bars.4.capped_brood" {
		t.Errorf("the alias is not flagged: %+v", got[0].Check)
	}
	if v, _ := colony.Get(&got[0], "incoming.pollen.plant"); v != "phacelia" {
		t.Errorf("the plant is not read: %+v", colony.Leaves(&got[0]))
	}
}

// TestOwnWordsOfAnyShape holds that whatever a keeper writes into the own words
// is either read or refused with the word named, never a crash.
func TestOwnWordsOfAnyShape(t *testing.T) {
	for _, word := range []string{"", " ", "-", "(", "[clover", "clover|", "<n>", "<m>", "o'clock", "Wibble", "7", "b-4", "’s", "\x00", "é", "\xff"} {
		for _, own := range []colony.OwnWords{
			{Aliases: map[string]string{word: "brood"}},
			{Aliases: map[string]string{"wibble": word}},
			{Plants: []string{word}},
			{Hives: []string{word}},
		} {
			p, err := New(own)
			if err != nil {
				if !strings.Contains(err.Error(), "own") {
					t.Errorf("%+v: %q does not say that the own words are at fault", own, err)
				}
				continue
			}
			p.Parse(&colony.Note{Text: "bar four wibble brood, pollen from the Wibble " + word + " clover", Given: may14})
		}
	}
}

func TestListsAreThoseTheCodeKnows(t *testing.T) {
	all, err := loadRules()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what string
		list []wordList
		want string
	}{
		{"one is missing", all.List[1:], "is missing"},
		{"one stands twice", append(all.List[:len(all.List):len(all.List)], all.List[0]), "twice"},
		{"one is unknown", append(all.List[:len(all.List):len(all.List)], wordList{Name: "colours", Why: "are bright", Words: []string{"red"}, Yes: []string{"a red dot"}, No: []string{"a dot"}}), `"colours"`},
		{"one is empty", append([]wordList{{Name: all.List[0].Name, Why: "x", Yes: []string{"x"}, No: []string{"y"}}}, all.List[1:]...), "empty"},
		{"one has no phrases", append([]wordList{{Name: all.List[0].Name, Why: "x", Words: []string{"x"}}}, all.List[1:]...), "without a why, a yes and a no"},
	} {
		t.Run(c.what, func(t *testing.T) {
			_, err := newLists(c.list)
			wantMessage(t, err, []string{"rules/lists.toml", c.want})
		})
	}
}
