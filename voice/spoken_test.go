package voice

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

// goldTexts gives the texts of the notes in a gold file, line by line.
func goldTexts(t *testing.T, path string) []string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, part := range strings.Split(string(data), "\nnote\n")[1:] {
		text, _, _ := strings.Cut(part, "\nwant")
		lines = append(lines, strings.Split(text, "\n")...)
	}
	return lines
}

// perplexity is that of texts by a model, sentence by sentence; words that it
// lacks are left out, and counted.
func (m *mixture) perplexity(lines []string) (perplexity float64, unknown, words int) {
	sum := 0.0
	for _, line := range lines {
		a, b := int32(-1), sentenceStart
		for _, word := range append(plainTokens(line), "</s>") {
			words++
			w, ok := m.ids[word]
			if !ok {
				unknown++
				a, b = -1, -1
				continue
			}
			switch {
			case b < 0:
				sum += math.Log(m.p1(w))
			case a < 0:
				sum += math.Log(m.p2(b, w))
			default:
				sum += math.Log(m.p3(a, b, w))
			}
			a, b = b, w
		}
	}
	return math.Exp(-sum / float64(words-unknown)), unknown, words
}

// What others said foretells what is said in notes that were held out.
func TestSpokenNotesForetellOthers(t *testing.T) {
	general, dict := stockLM(t), stockDictionary(t)
	lines := goldTexts(t, "../testdata/notes/heldout/spoken.gold")
	of := func(spoken ...Phrases) float64 {
		o := ModelOptions{Phrases: TradePhrases(someSayings), Spoken: spoken}
		tokens, classes := newTokenTable(), builtinClasses()
		trade := o.sources(tokens, classes)
		m := newMixture(vocabulary(tokens, classes, general, 5000, dict), tokens, classes, trade, general)
		p, unknown, words := m.perplexity(lines)
		t.Logf("perplexity %.0f, %d of %d words unknown", p, unknown, words)
		return p
	}
	with, without := of(SpokenNotes()), of()
	if with > 0.6*without {
		t.Errorf("with them the perplexity is %.0f, without %.0f", with, without)
	}
}

// The notes that recognition is measured on are kept apart from those that the
// model is counted from.
func TestSpokenNotesAreNotTheBenchs(t *testing.T) {
	const run = 8 // words; shorter phrases are what everybody says
	said := map[string]bool{}
	for line := range SpokenNotes().Sentences() {
		words := plainTokens(line)
		for i := 0; i+run <= len(words); i++ {
			said[strings.Join(words[i:i+run], " ")] = true
		}
	}
	runs, shared := 0, []string{}
	for _, line := range goldTexts(t, "../testdata/bench/voice/notes.gold") {
		words := plainTokens(line)
		for i := 0; i+run <= len(words); i++ {
			runs++
			if s := strings.Join(words[i:i+run], " "); said[s] {
				shared = append(shared, s)
			}
		}
	}
	t.Logf("%d of %d runs: %v", len(shared), runs, slices.Compact(shared))
	if len(shared)*50 > runs {
		t.Errorf("%d of the bench's %d runs of %d words stand in the notes", len(shared), runs, run)
	}
}
