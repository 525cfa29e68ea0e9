package voice

import (
	"bufio"
	"embed"
	"fmt"
	"iter"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
)

//go:embed data
var data embed.FS

// Phrases are sentences that a keeper may say, each with its weight: how often
// it is to count. Case, punctuation and digits do not matter. A word of the
// form <num> stands for any word of a class of data/classes.txt.
type Phrases interface {
	Sentences() iter.Seq2[string, float64]
}

// Texts are phrases given one by one, each counting once: confirmed notes, own
// words, names of hives.
type Texts []string

// Sentences gives the texts line by line.
func (t Texts) Sentences() iter.Seq2[string, float64] {
	return func(yield func(string, float64) bool) {
		for _, text := range t {
			for line := range strings.Lines(text) {
				if !yield(line, 1) {
					return
				}
			}
		}
	}
}

// SpokenNotes are dictated notes by many keepers, which are part of the program.
func SpokenNotes() Phrases {
	text, err := data.ReadFile("data/spoken.txt")
	if err != nil {
		panic("voice: " + err.Error())
	}
	var notes Texts
	for line := range strings.Lines(string(text)) {
		if !strings.HasPrefix(line, "#") {
			notes = append(notes, line)
		}
	}
	return notes
}

// Templates are rules from which sentences are drawn.
type Templates struct {
	rules map[string][]alternative
	n     int // sentences to draw
}

type alternative struct {
	parts  []part // literal words and references, in order
	weight int
}

type part struct {
	text string
	ref  bool
}

// weighted are phrases that each count the same, so many times.
type weighted struct {
	texts  []string
	weight float64
}

func (w weighted) Sentences() iter.Seq2[string, float64] {
	return func(yield func(string, float64) bool) {
		for _, text := range w.texts {
			if !yield(text, w.weight) {
				return
			}
		}
	}
}

// How much the sentences drawn from our templates and the parser's sayings
// count. Chosen by the perplexity of notes that are neither in the model nor in
// the bench: 126 without the sayings, 120 with them, and 133 of 8,575 words that
// the model does not know, where there were 265.
const (
	drawn         = 20000
	sayingWeight  = 2
	exampleWeight = 20
)

// wordLists are the names that data/phrases.txt uses without defining them: the
// words stand in the parser's rules of that kind.
var wordLists = []string{"plant", "sign", "sky", "wind"}

// classMarks are classes for what the parser's sayings leave open.
var classMarks = strings.NewReplacer("<n>", "<num>", "<dur>", "<num> days", "<measure>", "<num> litres", "<date>", "<day>")

// TradePhrases are what is said at hives: sentences drawn from the templates of
// data/phrases.txt, and the parser's sayings by their kind, of which "example"
// are whole notes. It panics where a kind that the templates name is missing,
// since both are part of the program.
func TradePhrases(sayings iter.Seq2[string, string]) []Phrases {
	kinds := map[string][]string{}
	says := weighted{weight: sayingWeight}
	for kind, words := range sayings {
		words = classMarks.Replace(words)
		kinds[kind] = append(kinds[kind], words)
		if kind != "example" {
			says.texts = append(says.texts, words)
		}
	}
	return []Phrases{builtinTemplates(drawn, kinds), says, weighted{kinds["example"], exampleWeight}}
}

// builtinTemplates are the templates of data/phrases.txt, drawn n times, with
// the words of the kinds that they name.
func builtinTemplates(n int, kinds map[string][]string) *Templates {
	text, err := data.ReadFile("data/phrases.txt")
	if err != nil {
		panic("voice: " + err.Error())
	}
	lists := map[string][]string{}
	for _, name := range wordLists {
		if lists[name] = kinds[name]; len(kinds[name]) == 0 {
			panic("voice: no words for " + name)
		}
	}
	t, err := parseTemplates("data/phrases.txt", string(text), lists)
	if err != nil {
		panic("voice: " + err.Error())
	}
	t.n = n
	return t
}

// parseTemplates reads templates; data/phrases.txt shows the form. A name that
// is used but not defined, defined twice or without alternatives is an error.
func parseTemplates(name, text string, lists map[string][]string) (*Templates, error) {
	t := &Templates{rules: map[string][]alternative{}}
	for rule, words := range lists {
		for _, w := range words {
			t.rules[rule] = append(t.rules[rule], alternative{parts: []part{{text: w}}, weight: 1})
		}
	}
	classes := builtinClasses()
	in := bufio.NewScanner(strings.NewReader(text))
	in.Buffer(nil, 1<<20)
	line := 0
	where := map[string]int{}
	for in.Scan() {
		line++
		s := strings.TrimSpace(in.Text())
		if s == "" || strings.HasPrefix(s, "#") {
			continue
		}
		rule, body, ok := strings.Cut(s, "=")
		rule = strings.TrimSpace(rule)
		switch {
		case !ok:
			return nil, fmt.Errorf("%s:%d: no \"=\" behind the name", name, line)
		case lists[rule] != nil:
			return nil, fmt.Errorf("%s:%d: %s is a list of words that stands elsewhere", name, line, rule)
		case where[rule] > 0:
			return nil, fmt.Errorf("%s:%d: %s stands on line %d already", name, line, rule, where[rule])
		}
		where[rule] = line
		for _, alt := range strings.Split(body, "|") {
			a, err := parseAlternative(alt)
			if err != nil {
				return nil, fmt.Errorf("%s:%d: %w", name, line, err)
			}
			t.rules[rule] = append(t.rules[rule], a)
		}
	}
	for rule, alts := range t.rules {
		for _, a := range alts {
			for _, p := range a.parts {
				if p.ref && t.rules[p.text] == nil && !classes.has(p.text) {
					return nil, fmt.Errorf("%s:%d: {%s} is defined nowhere", name, where[rule], p.text)
				}
			}
		}
	}
	if t.rules["note"] == nil {
		return nil, fmt.Errorf("%s: no rule named note", name)
	}
	return t, nil
}

var (
	timesSuffix = regexp.MustCompile(`\*(\d+)$`)
	reference   = regexp.MustCompile(`\{([a-z]+)\}`)
)

func parseAlternative(s string) (alternative, error) {
	s = strings.TrimSpace(s)
	a := alternative{weight: 1}
	if m := timesSuffix.FindStringSubmatch(s); m != nil {
		a.weight, _ = strconv.Atoi(m[1])
		s = strings.TrimSpace(strings.TrimSuffix(s, m[0]))
	}
	if s == "" || a.weight == 0 {
		return a, fmt.Errorf("an empty alternative")
	}
	for s != "" {
		loc := reference.FindStringSubmatchIndex(s)
		if loc == nil {
			loc = []int{len(s), len(s), len(s), len(s)}
		}
		if lit := strings.TrimSpace(s[:loc[0]]); lit != "" {
			if strings.ContainsAny(lit, "{}*") {
				return a, fmt.Errorf("%q is neither words nor a {name}", lit)
			}
			a.parts = append(a.parts, part{text: lit})
		}
		if loc[0] < len(s) {
			a.parts = append(a.parts, part{text: s[loc[2]:loc[3]], ref: true})
		}
		s = s[loc[1]:]
	}
	return a, nil
}

// Sentences draws sentences, each with weight one, always the same.
func (t *Templates) Sentences() iter.Seq2[string, float64] {
	return func(yield func(string, float64) bool) {
		rnd := rand.New(rand.NewPCG(1, 0))
		for range t.n {
			var words []string
			t.draw(rnd, "note", &words, 0)
			if !yield(strings.Join(words, " "), 1) {
				return
			}
		}
	}
}

// maxDepth ends rules that call themselves.
const maxDepth = 20

func (t *Templates) draw(rnd *rand.Rand, rule string, out *[]string, depth int) {
	alts := t.rules[rule]
	if alts == nil { // a class
		*out = append(*out, "<"+rule+">")
		return
	}
	total := 0
	for _, a := range alts {
		total += a.weight
	}
	pick := rnd.IntN(total)
	for _, a := range alts {
		if pick -= a.weight; pick >= 0 {
			continue
		}
		for _, p := range a.parts {
			switch {
			case !p.ref:
				*out = append(*out, p.text)
			case depth < maxDepth:
				t.draw(rnd, p.text, out, depth+1)
			}
		}
		return
	}
}
