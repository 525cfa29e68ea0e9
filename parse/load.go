package parse

import (
	"embed"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

//go:embed rules/*.toml
var ruleFiles embed.FS

// rule is one entry of the rule files: the ways of saying one thing. A way of
// saying is a run of words; (a|b) stands for either, [a] for a or nothing, and
// <n> for a number, <dur> for a length of time, <measure> for an amount with
// its unit, <date> for a day. A rule names what it must hit and what it must
// not; a test holds both.
type rule struct {
	ID    string   `toml:"id"`
	Kind  kind     `toml:"kind"`
	Value string   `toml:"value"`
	Form  string   `toml:"form"`  // of a deed: done, todo or doing; of a substance: its name in the record
	Set   []string `toml:"set"`   // leaves that it writes, path=value; $n, $days are filled in
	With  string   `toml:"with"`  // leaves of the same content that it implies, such as cover=1
	Needs string   `toml:"needs"` // what must be spoken of in the clause
	Say   []string `toml:"say"`
	Why   string   `toml:"why"`
	Yes   []string `toml:"yes"`
	No    []string `toml:"no"`

	file string
	fits func(*fitting) bool // of a deed: whether the words around its verb are those of it
}

// mishearing is a word or two that a recogniser writes for another, and where
// the context makes sure of it: Before and After list words (or <n>, <start>,
// <end>) of which one must stand there.
type mishearing struct {
	Heard  []string `toml:"heard"`
	Said   string   `toml:"said"`
	Before []string `toml:"before"`
	After  []string `toml:"after"`
	Then   []string `toml:"then"`   // and those of which one must stand behind the word that follows
	Not    []string `toml:"not"`    // words that must not follow
	Unless []string `toml:"unless"` // words that must not stand before
	Series bool     `toml:"series"` // it is a number that those beside it call for: before opens the series, not must not follow its next number, after follows its last
	// Unended are words that must not follow the last number of a series behind "and".
	Unended []string `toml:"unended"`
	Dotted  bool     `toml:"dotted"` // a full stop must follow
	Sure    bool     `toml:"sure"`   // no reading of the words as written fits a hive: not flagged
	Why     string   `toml:"why"`
	Yes     []string `toml:"yes"`
	No      []string `toml:"no"`
}

// abbreviation lists words that keepers cut short, and what they stand for. A full
// stop behind one ends no sentence unless a capital follows.
type abbreviation struct {
	Why    string            `toml:"why"`
	Dotted bool              `toml:"dotted"` // only with its full stop
	Words  map[string]string `toml:"words"`
}

// mishearings are its words as such of which nobody needs to be asked.
func (a abbreviation) mishearings() (out []mishearing) {
	for _, short := range slices.Sorted(maps.Keys(a.Words)) {
		out = append(out, mishearing{Heard: []string{short}, Said: a.Words[short], Dotted: a.Dotted, Sure: true, Why: a.Why})
	}
	return out
}

// contraction is a short form and the two words it stands for; cut is the
// number of letters, from its end, that the second one takes.
type contraction struct {
	Short  string `toml:"short"`
	First  string `toml:"first"`
	Second string `toml:"second"`
	Cut    int    `toml:"cut"`
}

// part is a word of the number or date grammar.
type part struct {
	Kind  string             `toml:"kind"`
	Words map[string]float64 `toml:"words"`
}

// ruleFile is the shape of a rule file; a key that is not listed here is an
// error.
type ruleFile struct {
	Rule         []rule         `toml:"rule"`
	Mishearing   []mishearing   `toml:"mishearing"`
	Abbreviation []abbreviation `toml:"abbreviation"`
	Contraction  []contraction  `toml:"contraction"`
	Number       []part         `toml:"number"`
	Date         []part         `toml:"date"`
	List         []wordList     `toml:"list"`
	Column       []column       `toml:"column"`
	LeadIn       wordTable      `toml:"lead_in"`
	Opposite     wordTable      `toml:"opposite"`
	Stroke       strokes        `toml:"stroke"`
}

// wordTable gives words with each of its words. The phrases are read otherwise without
// it (yes), or the same (no).
type wordTable struct {
	Words map[string][]string `toml:"words"`
	Yes   []string            `toml:"yes"`
	No    []string            `toml:"no"`
}

func (w wordTable) whole() bool { return len(w.Words) > 0 && len(w.Yes) > 0 && len(w.No) > 0 }

// loadRules reads the embedded rule files strictly.
func loadRules() (ruleFile, error) {
	var all ruleFile
	names, err := ruleFiles.ReadDir("rules")
	if err != nil {
		return all, err
	}
	for _, entry := range names {
		data, err := ruleFiles.ReadFile("rules/" + entry.Name())
		if err != nil {
			return all, err
		}
		f, err := decodeRules(entry.Name(), string(data))
		if err != nil {
			return all, err
		}
		all.Rule = append(all.Rule, f.Rule...)
		all.Mishearing = append(all.Mishearing, f.Mishearing...)
		all.Abbreviation = append(all.Abbreviation, f.Abbreviation...)
		all.Contraction = append(all.Contraction, f.Contraction...)
		all.Number = append(all.Number, f.Number...)
		all.Date = append(all.Date, f.Date...)
		all.List = append(all.List, f.List...)
		all.Column = append(all.Column, f.Column...)
		if f.LeadIn.Words != nil {
			all.LeadIn = f.LeadIn
		}
		if f.Opposite.Words != nil {
			all.Opposite = f.Opposite
		}
		if f.Stroke.Letters != nil {
			all.Stroke = f.Stroke
		}
	}
	if !all.LeadIn.whole() || !all.Opposite.whole() || !all.Stroke.whole() {
		return all, errors.New("rules: the lead-ins, the opposites or the strokes are missing, or without a yes and a no")
	}
	return all, checkIDs(all.Rule)
}

// decodeRules reads one file; errors name it and, where it is known, the line.
func decodeRules(name, data string) (ruleFile, error) {
	var f ruleFile
	d := toml.NewDecoder(strings.NewReader(data)).DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		var strict *toml.StrictMissingError
		var decode *toml.DecodeError
		switch {
		case errors.As(err, &strict):
			row, _ := strict.Errors[0].Position()
			return f, fmt.Errorf("rules/%s:%d: unknown key %s", name, row, strings.Join(strict.Errors[0].Key(), "."))
		case errors.As(err, &decode):
			row, _ := decode.Position()
			return f, fmt.Errorf("rules/%s:%d: %w", name, row, err)
		}
		return f, fmt.Errorf("rules/%s: %w", name, err)
	}
	if len(f.Rule)+len(f.Mishearing)+len(f.Abbreviation)+len(f.Contraction)+len(f.Number)+len(f.Date)+len(f.List)+len(f.Column) == 0 {
		return f, fmt.Errorf("rules/%s: holds no rule", name)
	}
	for i := range f.Rule {
		f.Rule[i].file = name
		if err := f.Rule[i].check(); err != nil {
			return f, fmt.Errorf("rules/%s: rule %q: %w", name, f.Rule[i].ID, err)
		}
	}
	for _, m := range f.Mishearing {
		if len(m.Heard) == 0 || m.Said == "" || m.Why == "" || len(m.Yes) == 0 {
			return f, fmt.Errorf("rules/%s: mishearing of %q: needs heard, said, why and yes", name, m.Said)
		}
		if m.Series && (len(m.Before) == 0 || len(m.After) == 0 || len(m.Not) == 0) {
			return f, fmt.Errorf("rules/%s: mishearing of %q: in a series it needs before, after and not", name, m.Said)
		}
	}
	return f, nil
}

func (r *rule) check() error {
	switch {
	case r.ID == "":
		return errors.New("has no id")
	case len(r.Say) == 0:
		return errors.New("says nothing")
	case r.Kind == noKind:
		return errors.New("has no kind")
	case !r.Kind.grammatical() && (len(r.Yes) == 0 || len(r.No) == 0):
		return errors.New("needs phrases that it must hit (yes) and must not (no)")
	}
	return nil
}

func checkIDs(rules []rule) error {
	seen := map[string]string{}
	for _, r := range rules {
		if other, ok := seen[r.ID]; ok {
			return fmt.Errorf("rules/%s: rule %q stands in rules/%s already", r.file, r.ID, other)
		}
		seen[r.ID] = r.file
	}
	return nil
}
