package parse

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
)

// may14 is the day on which the tests' notes are given.
var may14 = time.Date(2026, 5, 14, 16, 0, 0, 0, time.UTC)

func mustNew(tb testing.TB) *Parser {
	tb.Helper()
	p, err := New(colony.OwnWords{})
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

// lexed returns the items of a one-line note as the lexer makes them, before
// bars, hives and repairs are worked out.
func lexed(p *Parser, text string) ([]item, *reader) {
	r := newReader(p.lexicon)
	r.start(&colony.Note{Text: text, Given: may14})
	toks := r.split.tokens(nil, text, 0, blank)
	toks = r.mend(text, toks, &[]token{})
	return r.lex.items(toks, nil), r
}

// without is the parser that lacks one rule.
func without(p *Parser, rule int) *Parser {
	g := *p.lexicon.graph
	g.nodes, g.links = slices.Clone(g.nodes), slices.Clip(g.links)
	for i := range g.nodes {
		kept := int32(0)
		for l := range g.each(g.nodes[i].accepts) {
			if l.to != int32(rule) {
				kept = g.link(kept, l.to, 0)
			}
		}
		g.nodes[i].accepts = kept
	}
	return parserOf(p.lexicon, func(l *lexicon) { l.graph = &g })
}

func parserOf(l *lexicon, change func(*lexicon)) *Parser {
	changed := *l
	change(&changed)
	p := &Parser{lexicon: &changed}
	p.readers.New = func() any { return newReader(&changed) }
	return p
}

// reading is what a phrase is read as: its leaves and its flags, and with
// remarks also the words that were left over.
func reading(p *Parser, phrase string, remarks bool) string {
	var b strings.Builder
	for _, ins := range p.Parse(&colony.Note{Text: phrase, Given: may14}) {
		for _, l := range colony.Leaves(&ins) {
			fmt.Fprintf(&b, "%s=%s\n", l.Path, l.Value)
		}
		for _, c := range ins.Check {
			fmt.Fprintf(&b, "check %s: %s\n", c.Path, c.Why)
		}
		if remarks {
			fmt.Fprintf(&b, "%q\n", ins.Remarks)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// writes reports whether a leaf of the phrase rests on the rule.
func writes(p *Parser, phrase, id string) bool {
	why := p.Explain(&colony.Note{Text: phrase, Given: may14})
	return slices.ContainsFunc(why, func(r Reason) bool { return r.Rule == id })
}

// TestRulePhrases holds every rule to its own phrases. A phrase uses a rule
// when a leaf rests on it, or when the phrase is read otherwise once the rule
// is taken away: so a cue that no longer does anything fails too.
func TestRulePhrases(t *testing.T) {
	p := mustNew(t)
	for i := range p.lexicon.rules {
		r := &p.lexicon.rules[i]
		lame := without(p, i)
		t.Run(strings.TrimSuffix(r.file, ".toml")+"/"+r.ID, func(t *testing.T) {
			for _, phrase := range r.Yes {
				if !writes(p, phrase, r.ID) && reading(p, phrase, true) == reading(lame, phrase, true) {
					t.Errorf("does not use the rule: %q", phrase)
				}
			}
			for _, phrase := range r.No {
				if writes(p, phrase, r.ID) || reading(p, phrase, false) != reading(lame, phrase, false) {
					t.Errorf("uses the rule, but must not: %q", phrase)
				}
			}
		})
	}
}

// TestEveryDeedIsKnown holds that the code knows the deeds that the rules name, and
// keeps no traits of others.
func TestEveryDeedIsKnown(t *testing.T) {
	named := map[string]bool{"move_follower": true} // made of move_bar
	rules := mustNew(t).lexicon.rules
	for i := range rules {
		if r := &rules[i]; r.Kind == kDo {
			named[r.Value] = true
			if fitsBy[r.Value] == nil {
				t.Errorf("rules/%s: rule %q: unknown deed %q", r.file, r.ID, r.Value)
			}
		}
	}
	for do := range deedTraits {
		if !named[do] {
			t.Errorf("traits of %q, which no rule names", do)
		}
	}
}

// holdsTo holds a part of the rules to its phrases: they are read otherwise by a parser that
// is lame without it (yes), or the same (no).
func holdsTo(t *testing.T, p, lame *Parser, yes, no []string) {
	t.Helper()
	for _, phrase := range yes {
		if reading(p, phrase, true) == reading(lame, phrase, true) {
			t.Errorf("does not hang on it: %q", phrase)
		}
	}
	for _, phrase := range no {
		if reading(p, phrase, false) != reading(lame, phrase, false) {
			t.Errorf("hangs on it, but must not: %q", phrase)
		}
	}
}

// TestListPhrases holds every list of words to its own phrases: they are read
// otherwise where its words stand in it no more.
func TestListPhrases(t *testing.T) {
	leftOutOfShortRuns(t)
	p := knowing(mustNew(t), "june") // of whose hives some lists tell what they are told from
	rules, err := loadRules()
	if err != nil {
		t.Fatal(err)
	}
	for i := range rules.List {
		l := &rules.List[i]
		t.Run(l.Name, func(t *testing.T) {
			lame := knowing(changed(t, func(f *ruleFile) { f.List[i].Words = []string{"nor this word"} }), "june")
			holdsTo(t, p, lame, l.Yes, l.No)
		})
	}
}

// TestWordTablePhrases holds the tables that give words with words to their phrases.
func TestWordTablePhrases(t *testing.T) {
	p := mustNew(t)
	rules, err := loadRules()
	if err != nil {
		t.Fatal(err)
	}
	for _, table := range []struct {
		name    string
		yes, no []string
		without func(l *lexicon)
	}{
		{"lead-ins", rules.LeadIn.Yes, rules.LeadIn.No, func(l *lexicon) { l.leadIns = nil }},
		{"strokes", rules.Stroke.Yes, rules.Stroke.No, func(l *lexicon) { l.strokes = strokes{} }},
		{"opposites", rules.Opposite.Yes, rules.Opposite.No, func(l *lexicon) { l.opposites = nil }},
	} {
		t.Run(table.name, func(t *testing.T) {
			holdsTo(t, p, parserOf(p.lexicon, table.without), table.yes, table.no)
		})
	}
}

// changed is the parser of changed rules.
func changed(tb testing.TB, change func(*ruleFile)) *Parser {
	tb.Helper()
	rules, err := loadRules()
	if err != nil {
		tb.Fatal(err)
	}
	change(&rules)
	l, err := newLexicon(rules)
	if err != nil {
		tb.Fatal(err)
	}
	return parserOf(l, func(*lexicon) {})
}

// TestMishearingPhrases holds every mishearing to its own phrases.
func TestMishearingPhrases(t *testing.T) {
	p := mustNew(t)
	rules, err := loadRules()
	if err != nil {
		t.Fatal(err)
	}
	for i := range rules.Mishearing {
		m := &rules.Mishearing[i]
		t.Run(m.Said+"/"+m.Heard[0], func(t *testing.T) {
			for _, phrase := range m.Yes {
				if !mends(p, phrase, m) {
					t.Errorf("is not mended: %q", phrase)
				}
			}
			for _, phrase := range m.No {
				if mends(p, phrase, m) {
					t.Errorf("is mended, but must not be: %q", phrase)
				}
			}
		})
	}
}

// mends reports whether the mishearing rewrites words of the phrase.
func mends(p *Parser, phrase string, m *mishearing) bool {
	l := p.lexicon
	s := splitter{slips: l.slips, words: l.words}
	toks := s.tokens(nil, phrase, 0, blank)
	var done []token
	for i := 0; i < len(toks); {
		var before *token
		if len(done) > 0 {
			before = &done[len(done)-1]
		}
		h := l.misheardAt(phrase, toks, i, before)
		if h == nil {
			done = append(done, toks[i])
			i++
			continue
		}
		if h.rule.Said == m.Said && slices.Equal(h.rule.Heard, m.Heard) && h.rule.Why == m.Why {
			return true
		}
		done = append(done, l.mend(phrase, toks[i:i+len(h.words)], &[]token{})...)
		i += len(h.words)
	}
	return false
}

// spellings lists runs of words that a way of saying stands for, such that
// every word of it stands in one: each branch by itself with the others at
// their first, and all of them in step. A slot is filled with an example.
func spellings(say string) []string {
	out, rest := spell(say)
	if rest != "" {
		panic("unbalanced: " + say)
	}
	for i, s := range out {
		s = strings.Join(strings.Fields(examples.Replace(s)), " ")
		if s[0] == '\'' {
			s = "it" + s // 's here, 'll
		}
		out[i] = strings.ReplaceAll(s, " 's", "'s")
	}
	return out
}

var examples = strings.NewReplacer("<n>", "eleven", "<dur>", "three weeks", "<measure>", "two litres")

func spell(text string) (out []string, rest string) {
	var parts [][]string
	longest := 1
	for text != "" && text[0] != '|' && text[0] != ')' && text[0] != ']' {
		var part []string
		if text[0] == '(' || text[0] == '[' {
			if text[0] == '[' {
				part = append(part, "")
			}
			for more := true; more; more = text[0] == '|' {
				var some []string
				some, text = spell(text[1:])
				part = append(part, some...)
			}
			text = text[1:]
		} else {
			end := strings.IndexAny(text+"(", "([|])")
			part, text = []string{text[:end]}, text[end:]
		}
		parts = append(parts, part)
		longest = max(longest, len(part))
	}
	join := func(pick func(part int) int) {
		s := ""
		for i, part := range parts {
			s += part[pick(i)%len(part)]
		}
		out = append(out, s)
	}
	for n := range longest {
		join(func(int) int { return n })
		for k := range parts {
			if n < len(parts[k]) {
				join(func(i int) int {
					if i == k {
						return n
					}
					return 0
				})
			}
		}
	}
	return out, text
}

// TestEveryWordIsReached holds that no word of a rule is dead: each must stand
// in a spelling that leads to the rule. A word is dead where the tokeniser cuts
// it otherwise, a mishearing rewrites it, or a longer way of saying always
// takes it. Last week and another are a date and a number first, on purpose.
func TestEveryWordIsReached(t *testing.T) {
	p := mustNew(t)
	for i := range p.lexicon.rules {
		r := &p.lexicon.rules[i]
		for _, say := range r.Say {
			dead := map[string]bool{}
			all := spellings(say)
			for _, words := range all {
				for word := range strings.FieldsSeq(words) {
					dead[word] = true
				}
			}
			for _, words := range all {
				if reached(p, words, i) {
					for word := range strings.FieldsSeq(words) {
						delete(dead, word)
					}
				}
			}
			switch known := slices.Contains(unreached, say); {
			case len(dead) > 0 && !known:
				t.Errorf("rules/%s: rule %q: never reached in %q: %s", r.file, r.ID, say, slices.Sorted(maps.Keys(dead)))
			case len(dead) == 0 && known:
				t.Errorf("rules/%s: rule %q: %q is reached now; take it off the list", r.file, r.ID, say)
			}
		}
	}
}

// unreached ways of saying hold a word that is read as a number before it can be
// a word.
var unreached = []string{
	"temper 4", "stings (none|nil|zero|0)", "(qc|qcs|q/c)", "in 2019", "w2w", "1 side", "1 face",
	"temper (was|is|) (ok|okay|fine|average|acceptable|all right|alright|fair|steady|reasonable|so so|middling|average enough|normal|3|not bad)",
	"temper (was|is|) (poor|bad|short|touchy|not good|not great|iffy|2)",
	"temper (is|was|) (foul|vile|terrible|awful|dreadful|appalling|horrible|1)",
	"not (sure|certain|entirely sure|quite sure|100 percent sure|convinced|positive)",
	"(low|mid|high) <n>", // "high" behind a pause is misheard for "hive"
}

// reached reports whether the words, by themselves, are taken by the rule, or
// by a date or article that they spell as a whole.
func reached(p *Parser, words string, rule int) bool {
	items, _ := lexed(p, words)
	if len(items) == 1 && items[0].any(kArt, kDate) {
		return true
	}
	return slices.ContainsFunc(items, func(it item) bool { return slices.Contains(it.says.rules, int16(rule)) })
}
