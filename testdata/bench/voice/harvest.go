package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"barwise/voice"
)

// sentencesEach is how many sentences of the templates each voice speaks to be
// harvested.
const sentencesEach = 12

// mishearing is what was heard for some words, behind the word that was said
// before them.
type mishearing struct{ heard, said, after string }

// harvest has the voices speak sentences drawn from the model's templates, hears
// them with the stock model and with ours, and prints what was misheard and
// could be put right: the words heard never stand behind that word in any
// sentence of the templates, so that the context tells them apart.
func (b *bench) harvest(ctx context.Context, models map[string]voice.Model, templates voice.Phrases) error {
	var sentences []string
	known := map[string]bool{}
	for text := range templates.Sentences() {
		words := strings.Fields(strings.ReplaceAll(spokenClasses.Replace(text), "  ", " "))
		for i := range words {
			known[wordBefore(words, i)+" "+words[i]] = true
		}
		if len(words) > 3 && len(sentences) < sentencesEach*len(b.speakers) {
			sentences = append(sentences, strings.Join(words, " "))
		}
	}
	for name, model := range models {
		counts := map[mishearing]int{}
		for i, s := range b.speakers {
			text := strings.Join(sentences[i*sentencesEach:(i+1)*sentencesEach], "\n")
			heard, err := b.hearPlain(ctx, s, text, model)
			if err != nil {
				return err
			}
			for _, m := range misheard(text, heard) {
				if !known[m.after+" "+strings.Fields(m.heard)[0]] {
					counts[m]++
				}
			}
		}
		b.printHarvest(name, counts)
	}
	return nil
}

func wordBefore(words []string, i int) string {
	if i == 0 {
		return "<start>"
	}
	return words[i-1]
}

// spokenClasses puts one word of each class where a template leaves it open.
var spokenClasses = strings.NewReplacer("<num>", "four", "<ord>", "third", "<day>", "friday", "<month>", "june", "<colour>", "blue")

func (b *bench) hearPlain(ctx context.Context, s speaker, text string, model voice.Model) (string, error) {
	samples, err := b.said(ctx, s, text)
	if err != nil {
		return "", err
	}
	path := filepath.Join(b.dir, "harvest.wav")
	if err := writeWAV(path, samples); err != nil {
		return "", err
	}
	rec, err := voice.NewSphinx(model)
	if err != nil {
		return "", err
	}
	heard, err := voice.Recognise(ctx, path, plain{rec}, voice.Options{})
	if err != nil && !errors.Is(err, voice.ErrNoSpeech) {
		return "", err
	}
	return heard.Text, nil
}

// misheard joins neighbouring errors of an alignment. Words that were not heard
// at all, or made up, are left out: nothing stands there to be put right.
func misheard(said, heard string) []mishearing {
	var out []mishearing
	before := "<start>"
	var m mishearing
	flush := func() {
		m.said, m.heard = strings.TrimSpace(m.said), strings.TrimSpace(m.heard)
		if m.said != "" && m.heard != "" && len(strings.Fields(m.said)) <= 2 && len(strings.Fields(m.heard)) <= 3 {
			out = append(out, m)
		}
		m = mishearing{}
	}
	for _, p := range voice.AlignWords(said, heard) {
		if p.Said == p.Heard {
			flush()
			before = p.Said
			continue
		}
		if m == (mishearing{}) {
			m.after = before
		}
		m.said, m.heard = m.said+" "+p.Said, m.heard+" "+p.Heard
		m.said, m.heard = strings.Join(strings.Fields(m.said), " "), strings.Join(strings.Fields(m.heard), " ")
		before = cmp.Or(p.Said, before)
	}
	flush()
	return out
}

func (b *bench) printHarvest(model string, counts map[mishearing]int) {
	var all []mishearing
	for m := range counts {
		all = append(all, m)
	}
	slices.SortFunc(all, func(x, y mishearing) int {
		return cmp.Or(cmp.Compare(counts[y], counts[x]), cmp.Compare(x.said, y.said), cmp.Compare(x.heard, y.heard), cmp.Compare(x.after, y.after))
	})
	for _, m := range all {
		fmt.Printf("%s %d\t%s → %s\tafter %s\n", model, counts[m], m.heard, m.said, m.after)
	}
}
