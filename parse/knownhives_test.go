package parse

import (
	"strings"
	"testing"

	"barwise/colony"
)

// knowing is the parser of a keeper whose hives have these names.
func knowing(p *Parser, hives ...string) *Parser {
	return parserOf(p.lexicon, func(l *lexicon) { l.known = newKnownHives(hives) })
}

// TestKnownHives reads notes of a keeper whose hives are known: their names are hives wherever they are
// meant so, and everyday words elsewhere.
func TestKnownHives(t *testing.T) {
	p := knowing(mustNew(t), "juniper", "june", "friday", "sunny", "willow", "Grumpy", "the Old Mill", "nora", "brindle", "honey", "b2", "patience", "colander")
	for _, c := range [...]struct{ said, hives string }{
		// dictated, without capitals and stops
		{"okay brindle eggs on bar three now juniper capped brood on bar five", "brindle / juniper"},
		{"june's on six bars of bees eggs on bar four\nnow friday\nfriday's short of food", "june / friday"},
		{"so that was willow done eggs on bar four then grumpy grumpy has no eggs", "grumpy"},
		{"here's juniper hive no eggs they had one bar from brindle today and they're a bit edgy", "juniper"},
		{"nora has eggs on bar three fed the old mill a litre of syrup", "nora / old mill"},
		{"harvested two bars off june and eggs on bar three in june", "june"},
		{"quick juniper hive eggs on bar three", "juniper"},
		{"okay willow two capped swarm cells on bar eight", "willow"},
		{"uh juniper to begin with bees on six bars eggs on bar three", "juniper"},
		// typed
		{"Grumpy: eggs on bar 3.\nSunny: calm.\nThe Old Mill, four seams.", "grumpy / sunny / old mill"},
		{"It takes patience and Juniper has it. Patience wanted room. I have had Juniper for years, and Patience is calm. Eggs on bar three.", "juniper / patience"},
		{"Juniper is calm. Colander keeps its five bars of capped honey. I opened Juniper.", "juniper / colander"},
		{"Brindle, now, that one is hot. Brindle has eggs on bar 3.", "brindle"},
		{"I opened June on Sunday. June has eggs on bar three.", "june"},
		{"Willow is strong, bees on nine bars.", "willow"},
		// in their everyday sense
		{"hive 4 sunny and dry eggs on bar three", "4"},
		{"hive 4 eggs on bar three look again in june or on friday", "4"},
		{"Hive 4. Sunny, no wind, 24 degrees. Eggs on bar three, 11 June.", "4"},
		{"hive 4 yellow pollen coming in from the willow eggs on bar three", "4"},
		{"hive 4 the willow is out willow pollen coming in", "4"},
		{"hive 4 a bit grumpy today eggs on bar three", "4"},
		{"hive 4 honey on bar three honey is capped b2 has eggs", "4"},
		{"Hive 4. The June gap is here. Mrs Nora came to help. Eggs on bar three.", "4"},
		{"hive 4 nora from next door came to help eggs on bar three", "4"},
	} {
		var hives []string
		for _, ins := range p.Parse(&colony.Note{Text: c.said, Given: may14}) {
			hives = append(hives, ins.Hive)
		}
		if got := strings.Join(hives, " / "); got != c.hives {
			t.Errorf("%q tells of %q, want %q", c.said, got, c.hives)
		}
	}
}

// TestKnownHiveOfALaterPage names a known hive for the first time where the note has gone on for a page.
func TestKnownHiveOfALaterPage(t *testing.T) {
	p := knowing(mustNew(t), "grumpy", "brindle")
	said := "brindle has eggs on bar three\n" + strings.Repeat("and it was a long day with tea and a sit down\n", pageSize/40) + "grumpy has eggs on bar seven\n"
	read := p.Parse(&colony.Note{Text: said, Given: may14})
	if len(read) != 2 || read[0].Hive != "brindle" || read[1].Hive != "grumpy" || len(read[1].Bars) != 1 || read[1].Bars[0].Bar != 7 {
		t.Errorf("reads %+v, want eggs on bar 3 of brindle and on bar 7 of grumpy", read)
	}
}

// TestOwnHives holds that the names that a keeper taught are known, and that a parser without them does not
// know them.
func TestOwnHives(t *testing.T) {
	note := &colony.Note{Text: "grumpy has eggs on bar three", Given: may14}
	taught, err := New(colony.OwnWords{Hives: []string{"Grumpy"}})
	if err != nil {
		t.Fatal(err)
	}
	if got := taught.Parse(note)[0].Hive; got != "grumpy" {
		t.Errorf("the hive is %q, want grumpy", got)
	}
	if got := mustNew(t).Parse(note)[0].Hive; got != "" {
		t.Errorf("untaught, the hive is %q, want none", got)
	}
}

// TestCorpusOfKnownHives reads the notes of keepers whose hives are told with them, as a keeper does who has
// confirmed a note of each, and without that. The files stand in the floors of TestCorpus too.
func TestCorpusOfKnownHives(t *testing.T) {
	p := mustNew(t)
	for _, c := range [...]struct {
		file  string
		floor float64 // of F1 with the hives known
	}{
		{"../testdata/notes/seen/apiaries.gold", .928},
		{"../testdata/notes/heldout/apiaries.gold", .923},
	} {
		var unknown, known tally
		quiet := func(string, ...any) {}
		for _, note := range readGold(t, c.file) {
			unknown.add(score(p, note, map[string]*tally{}, quiet))
			known.add(score(knowing(p, note.hives...), note, map[string]*tally{}, quiet))
		}
		t.Logf("%-42s F1 %.3f, with the hives known %.3f", c.file, unknown.f1(), known.f1())
		if known.f1() < c.floor {
			t.Errorf("%s: F1 is %.3f with the hives known, below %.3f", c.file, known.f1(), c.floor)
		}
	}
}
