package voice

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// small is a model of a few sentences, without general English.
func small(t *testing.T, texts ...string) (*mixture, *backoffModel) {
	t.Helper()
	tokens, trade, classes := newTokenTable(), newCounts(), builtinClasses()
	tokens.count(trade, classes, []Phrases{Texts(texts)})
	set := map[string]bool{}
	for tok := range tokens {
		for _, m := range classes.members[strings.Trim(tok, "<>")] {
			set[m.word] = true
		}
		if !strings.HasPrefix(tok, "<") {
			set[tok] = true
		}
	}
	words := append([]string{"<s>", "</s>"}, slices.Sorted(maps.Keys(set))...)
	m := newMixture(words, tokens, classes, []source{{trade, 1}}, nil)
	return m, m.explicit(modelSizes{expand: 1000}, spellOut(tokens, classes, m.ids))
}

// The sentences "a b", "a b", "a c" worked by hand with the formula of Witten
// and Bell: behind a, b was seen twice, c once, two different words; of the nine
// words seen in all, b is two, with four different ones in a vocabulary of five.
func TestWittenBellByHand(t *testing.T) {
	tokens, c := newTokenTable(), newCounts()
	tokens.count(c, classSet{}, []Phrases{Texts{"a b", "a b", "a c"}})
	const size = 5
	id := tokens.id
	p1 := (2 + 4.0/size) / (9 + 4)
	if got := c.p1(id("b"), size); math.Abs(got-p1) > 1e-12 {
		t.Errorf("p(b) = %v, want %v", got, p1)
	}
	p2 := (2 + 2*p1) / (3 + 2)
	if got := c.p2(id("a"), id("b"), size); math.Abs(got-p2) > 1e-12 {
		t.Errorf("p(b|a) = %v, want %v", got, p2)
	}
	p3 := (2 + 2*p2) / (3 + 2)
	if got := c.p3(sentenceStart, id("a"), id("b"), size); math.Abs(got-p3) > 1e-12 {
		t.Errorf("p(b|<s> a) = %v, want %v", got, p3)
	}
}

// prob3 is the probability as a reader of the file works it out.
func (m *backoffModel) prob3(a, b, w int32) float64 {
	if p, ok := m.p3[trigram(a, b, w)]; ok {
		return p
	}
	bow, ok := m.bow2[bigram(a, b)]
	if !ok {
		bow = 1
	}
	return bow * m.prob2(bigram(b, w))
}

func TestProbabilitiesAddUpToOne(t *testing.T) {
	_, lm := small(t, "bar four eggs", "bar five capped brood", "the next one after bar one", "on the one side larvae", "eggs")
	words := int32(len(lm.words))
	for a := range words {
		for b := range words {
			sum := 0.0
			for w := range words {
				sum += lm.prob3(a, b, w)
			}
			if math.Abs(sum-1) > 1e-6 {
				t.Fatalf("behind %q %q the words add up to %v", lm.words[a], lm.words[b], sum)
			}
		}
	}
}

func TestNumbersStandForOneAnother(t *testing.T) {
	m, lm := small(t, "bar four eggs", "bar five eggs", "the next one")
	p := func(w string) float64 { return lm.prob3(m.ids["<s>"], m.ids["bar"], m.ids[w]) }
	if p("seventeen") == 0 || math.Abs(p("seventeen")/p("four")-0.3) > 0.02 {
		t.Errorf("four has %v and seventeen %v, want shares as in the class", p("four"), p("seventeen"))
	}
	next := lm.prob3(m.ids["the"], m.ids["next"], m.ids["one"])
	if next < 10*lm.prob3(m.ids["the"], m.ids["next"], m.ids["two"]) {
		t.Errorf("the next one has %v, which is no number", next)
	}
}

func TestARPAFile(t *testing.T) {
	_, lm := small(t, "bar four eggs", "bar five brood")
	var b bytes.Buffer
	if err := lm.write(&b); err != nil {
		t.Fatal(err)
	}
	sections := map[string]int{}
	section := ""
	in := bufio.NewScanner(&b)
	stated := map[string]int{}
	for in.Scan() {
		line := in.Text()
		var n, count int
		switch {
		case strings.HasPrefix(line, "\\"):
			section = line
		case line == "":
		case section == "\\data\\":
			if _, err := fmt.Sscanf(line, "ngram %d=%d", &n, &count); err != nil {
				t.Fatal(line)
			}
			stated[fmt.Sprintf("\\%d-grams:", n)] = count
		default:
			sections[section]++
			if n := len(strings.Fields(line)); n != map[string]int{"\\1-grams:": 3, "\\2-grams:": 4, "\\3-grams:": 4}[section] {
				t.Errorf("%s: %q has %d fields", section, line, n)
			}
		}
	}
	if section != "\\end\\" || fmt.Sprint(sections) != fmt.Sprint(stated) {
		t.Errorf("ends with %q, holds %v, says %v", section, sections, stated)
	}
}

// stockModel is the recogniser's model as it was installed; a test that needs it
// is skipped where it is not.
func stockModel(t *testing.T) Model {
	t.Helper()
	stock, err := StockModel("")
	if err != nil {
		t.Skip(err)
	}
	return stock
}

// stockLM reads the recogniser's general model.
func stockLM(t *testing.T) *trieLM {
	t.Helper()
	stock := stockModel(t)
	m, err := readTrieLM(stock.Language)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// stockDictionary reads the pronunciations that come with the recogniser.
func stockDictionary(t *testing.T) dictionary {
	t.Helper()
	dict, err := readDictionary(stockModel(t).Dictionary)
	if err != nil {
		t.Fatal(err)
	}
	return dict
}

// A model that was read wrongly does not add up, and does not know that states
// follow united.
func TestGeneralEnglishIsReadRightly(t *testing.T) {
	m := stockLM(t)
	for _, h := range [][2]string{{"one", "of"}, {"the", "united"}, {"zyman", "propose"}} {
		s1, s2, s3 := 0.0, 0.0, 0.0
		for w := range int32(len(m.words)) {
			s1 += math.Exp(m.log1(w))
			s2 += m.p2(m.ids[h[1]], w)
			s3 += m.p3(m.ids[h[0]], m.ids[h[1]], w)
		}
		if math.Abs(s1-1) > 0.01 || math.Abs(s2-1) > 0.02 || math.Abs(s3-1) > 0.02 {
			t.Errorf("behind %v: %v, %v and %v, want 1", h, s1, s2, s3)
		}
	}
	if p := m.p3(m.ids["the"], m.ids["united"], m.ids["states"]); p < 0.5 {
		t.Errorf("p(states|the united) = %v", p)
	}
	if m.p3(-1, m.ids["united"], m.ids["states"]) != m.p2(m.ids["united"], m.ids["states"]) {
		t.Error("an unknown word is more than no history")
	}
}

func TestDamagedGeneralModel(t *testing.T) {
	for name, data := range map[string]string{
		"empty": "", "text": "\\data\\", "cut off": trieSignature + "\x03\x10\x00\x00\x00\x10\x00\x00\x00\x10\x00\x00\x00",
		"counts beyond the file": trieSignature + "\x03\xff\xff\xff\x7f\xff\xff\xff\x7f\xff\xff\xff\x7f\x01\x00\x00\x00",
	} {
		if _, err := parseTrieLM([]byte(data)); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestMixtureKnowsBoth(t *testing.T) {
	general := stockLM(t)
	tokens, trade, classes := newTokenTable(), newCounts(), builtinClasses()
	tokens.count(trade, classes, TradePhrases(someSayings))
	dict := stockDictionary(t)
	words := vocabulary(tokens, classes, general, 1000, dict)
	m := newMixture(words, tokens, classes, []source{{trade, 0.75}}, general)
	lm := m.explicit(modelSizes{expand: 100, threshold: 1e-6}, spellOut(tokens, classes, m.ids))
	for _, h := range [][2]string{{"<s>", "bar"}, {"i", "don't"}, {"capped", "brood"}, {"brood", "though"}} {
		sum := 0.0
		for w := range int32(len(words)) {
			sum += lm.prob3(m.ids[h[0]], m.ids[h[1]], w)
		}
		if math.Abs(sum-1) > 1e-3 {
			t.Errorf("behind %v the words add up to %v", h, sum)
		}
	}
	if p := lm.prob3(m.ids["i"], m.ids["don't"], m.ids["know"]); p < 0.05 {
		t.Errorf("p(know|i don't) = %v", p)
	}
	if p := lm.prob3(m.ids["bar"], m.ids["four"], m.ids["capped"]); p < 0.005 {
		t.Errorf("p(capped|bar four) = %v", p)
	}
}

func TestBuiltModelIsKept(t *testing.T) {
	stock := stockModel(t)
	dir := t.TempDir()
	o := ModelOptions{Dir: dir, Phrases: []Phrases{Texts{"the zorblefritz hive", "bar four eggs"}}, Sounds: map[string]string{"Zorblefritz": "zor bull frits", "eggs": "aches"}, General: 200}
	m, err := BuildModel(context.Background(), stock, o)
	if err != nil {
		t.Fatal(err)
	}
	words, err := os.ReadFile(m.Dictionary)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"zorblefritz Z AO R B UH L F R IH T S\n", "\neggs EH G Z\neggs(2) EY K S\n", "\nseventeen "} {
		if !strings.Contains("\n"+string(words), want) {
			t.Errorf("the dictionary lacks %q", want)
		}
	}
	british, err := os.ReadFile(m.British)
	if err != nil || !strings.Contains(string(british), "\nbar B AA R\nbar(2) B AA\n") || strings.Contains(string(words), "bar(2)") {
		t.Errorf("the British ways to say words: %v", err)
	}
	before, err := os.Stat(m.Language)
	if err != nil {
		t.Fatal(err)
	}
	again, err := BuildModel(context.Background(), stock, o)
	if err != nil || again != m {
		t.Errorf("%+v, %v", again, err)
	}
	if after, err := os.Stat(m.Language); err != nil || !os.SameFile(before, after) {
		t.Errorf("the model was built anew: %v", err)
	}
	o.Phrases = []Phrases{Texts{"bar five"}}
	other, err := BuildModel(context.Background(), stock, o)
	if err != nil || other.Key == m.Key {
		t.Errorf("other phrases: %+v, %v", other, err)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "*")); len(left) != 1 {
		t.Errorf("%v are left, want the last model alone", left)
	}
}

func TestTokens(t *testing.T) {
	for text, want := range map[string]string{
		"Bar 4: eggs, larvae.":      "bar <num> eggs larvae",
		"the next one, on one side": "the next one on one side",
		"bar one, 22 mites":         "bar <num> <num> <num> mites",
		"it's 105 on May 3rd":       "it's <num> hundred and <num> on may 3rd",
		"Tuesday the third":         "<day> the <ord>",
		"<num> bars":                "<num> bars",
	} {
		if got := strings.Join(builtinClasses().tokens(text), " "); got != want {
			t.Errorf("%q gives %q, want %q", text, got, want)
		}
	}
}

func TestTemplateRules(t *testing.T) {
	tmpl, err := parseTemplates("x", "# comment\nnote = {who} sees {num} bars*2 | nothing\nwho = he | she\n", nil)
	if err != nil {
		t.Fatal(err)
	}
	tmpl.n = 300
	counts := map[string]int{}
	for s := range tmpl.Sentences() {
		counts[s]++
	}
	if len(counts) != 3 || counts["nothing"] < 60 || counts["nothing"] > 140 {
		t.Errorf("drew %v", counts)
	}
	for text, want := range map[string]string{
		"note = a | {b}":     "x:1: {b} is defined nowhere",
		"note = a\nnote = b": "x:2: note stands on line 1 already",
		"a = b":              "x: no rule named note",
		"note = a |":         "x:1: an empty alternative",
		"note":               "x:1: no \"=\" behind the name",
		"note = a {b":        "x:1: \"a {b\" is neither words nor a {name}",
		"note = {note} a":    "",
	} {
		tmpl, err := parseTemplates("x", text, nil)
		if want != "" && (err == nil || err.Error() != want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
		if want == "" {
			tmpl.n = 1
			for range tmpl.Sentences() { // a rule that calls itself ends
			}
		}
	}
}

func TestPronunciation(t *testing.T) {
	d := dictionary{"queen": {"K W IY N"}, "lock": {"L AA K"}, "cap": {"K AE P"}, "capped": {"K AE P T"}, "heather": {"HH EH DH ER"}, "moor": {"M UH R"}}
	for word, want := range map[string]string{
		"queen":       "K W IY N",
		"queenless":   "K W IY N L AH S",
		"uncapped":    "AH N K AE P T",
		"locked":      "L AA K T",
		"heathermoor": "HH EH DH ER M UH R",
		"phlox":       "F L AA K S",
		"nepeta":      "N EH P EH T AH",
		"gorse":       "G AO R S",
	} {
		if got := d.pronounce(word); len(got) != 1 || got[0] != want {
			t.Errorf("%s: %v, want %s", word, got, want)
		}
	}
	if got := d.pronounce("123"); got != nil {
		t.Errorf("digits sound like %v", got)
	}
}

// The spelling rules are measured against the CMU pronouncing dictionary as the
// recogniser's package ships it.
func TestSpellingRulesAgainstCMUdict(t *testing.T) {
	dict := stockDictionary(t)
	var total WordErrors
	for i, w := range slices.Sorted(maps.Keys(dict)) {
		if i%50 != 0 || len(w) < 4 || strings.ContainsAny(w, "'.-") {
			continue
		}
		best := WordErrors{Words: 1, Inserted: 99}
		for _, p := range dict[w] {
			if e, _ := CompareWords(p, spell(w)); e.Rate() < best.Rate() {
				best = e
			}
		}
		total.Add(best)
	}
	t.Logf("phone error rate of the spelling rules: %.2f over %d phones", total.Rate(), total.Words)
	if total.Rate() > 0.25 { // Debian's dictionary gives 0.22
		t.Errorf("more than one phone in four is wrong")
	}
	for w, phones := range builtinPronunciations() {
		for _, p := range phones {
			for _, phone := range strings.Fields(p) {
				if !slices.Contains(cmuPhones, phone) {
					t.Errorf("%s: %s is no phone", w, phone)
				}
			}
		}
	}
}

// cmuPhones are the phones of the CMU pronouncing dictionary.
var cmuPhones = strings.Fields("AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH")

// Every word of the templates and classes has a pronunciation, in a dictionary
// and not by guess.
func TestTemplateWordsCanBePronounced(t *testing.T) {
	dict := stockDictionary(t)
	ours := builtinPronunciations()
	for rule, alts := range TradePhrases(someSayings)[0].(*Templates).rules {
		for _, a := range alts {
			for _, p := range a.parts {
				for _, w := range strings.Fields(p.text) {
					if !p.ref && len(dict[w]) == 0 && len(ours[w]) == 0 {
						t.Errorf("%s: %s is in no dictionary", rule, w)
					}
				}
			}
		}
	}
}

// someSayings stand in for the parser's.
func someSayings(yield func(kind, words string) bool) {
	for _, s := range [][2]string{
		{"plant", "phacelia"}, {"plant", "ivy"}, {"sign", "chalkbrood"}, {"sky", "sunny"}, {"wind", "no wind"},
		{"content", "capped brood"}, {"example", "bar four eggs"},
	} {
		if !yield(s[0], s[1]) {
			return
		}
	}
}
