package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"barwise/parse"
	"barwise/voice"
)

// bench holds the recordings and what was measured on them.
type bench struct {
	dir, keep string
	notes     []note
	speakers  []speaker
	voices    int     // a note
	pause     float64 // seconds of silence after each line
	spoken    []spoken
	parser    *parse.Parser
	known     map[string][]string // by voice: what was learned of it
}

// spoken is a note as one voice spoke it.
type spoken struct {
	note    note
	voice   string
	samples []float64
}

// speak makes the recordings: each note by some voices in turn.
func (b *bench) speak(ctx context.Context) error {
	for i, n := range b.notes {
		for v := range min(b.voices, len(b.speakers)) {
			// The voices of a note lie half a round apart, in another engine.
			s := b.speakers[(i+v*len(b.speakers)/b.voices)%len(b.speakers)]
			samples, err := b.said(ctx, s, n.text)
			if err != nil {
				return err
			}
			b.spoken = append(b.spoken, spoken{n, s.name, samples})
		}
	}
	return nil
}

// said is a text as a voice speaks it, line by line with a pause after each.
func (b *bench) said(ctx context.Context, s speaker, text string) ([]float64, error) {
	path := filepath.Join(b.dir, "said.wav")
	var out []float64
	for line := range strings.Lines(strings.TrimSpace(text)) {
		if err := speakTo(ctx, s, line, path); err != nil {
			return nil, err
		}
		samples, err := samplesOf(ctx, path)
		if err != nil {
			return nil, err
		}
		out = append(out, samples...)
		out = append(out, make([]float64, int(b.pause*rate))...)
	}
	return out, nil
}

// learn has each voice that is measured speak some other notes first, as a
// keeper whose earlier notes were confirmed.
func (b *bench) learn(ctx context.Context, model voice.Model, notes []note) error {
	rec, err := voice.NewSphinx(model)
	if err != nil {
		return err
	}
	b.known = map[string][]string{}
	for _, s := range b.speakers {
		if !slices.ContainsFunc(b.spoken, func(x spoken) bool { return x.voice == s.name }) {
			continue
		}
		for i, n := range notes {
			samples, err := b.said(ctx, s, n.text)
			if err != nil {
				return err
			}
			path := filepath.Join(b.dir, "learn.wav")
			if err := writeWAV(path, samples); err != nil {
				return err
			}
			file := filepath.Join(b.dir, fmt.Sprint("voice-", s.name, "-", i))
			if _, err := voice.Recognise(ctx, path, rec, voice.Options{Voice: file, Known: b.known[s.name]}); err != nil {
				return err
			}
			b.known[s.name] = append(b.known[s.name], file)
		}
	}
	return nil
}

// measured is what was counted of some recordings.
type measured struct {
	words  voice.WordErrors
	leaves leafCount
}

// plain is a recogniser that is not fitted to voices.
type plain struct{ voice.Recogniser }

// measure recognises all recordings in one condition with one model and prints
// the result.
func (b *bench) measure(ctx context.Context, name string, model voice.Model, condition string) error {
	sphinx, err := voice.NewSphinx(model)
	if err != nil {
		return err
	}
	var rec voice.Recogniser = sphinx
	if name == "stock" {
		rec = plain{sphinx}
	}
	var total measured
	byVoice := map[string]*measured{}
	confusions := map[voice.Confusion]int{}
	seconds, wall, cpu := 0.0, time.Duration(0), childCPU()
	for i, s := range b.spoken {
		samples := s.samples
		if condition != "clean" {
			db, err := strconv.ParseFloat(condition, 64)
			if err != nil {
				return fmt.Errorf("-noise %s: neither clean nor decibels", condition)
			}
			samples = noisy(samples, db, uint64(i))
		}
		path := filepath.Join(b.dir, "heard.wav")
		if err := writeWAV(path, samples); err != nil {
			return err
		}
		var o voice.Options
		if name == "known" {
			o.Known = b.known[s.voice]
		}
		start := time.Now()
		heard, err := voice.Recognise(ctx, path, rec, o)
		if err != nil && !errors.Is(err, voice.ErrNoSpeech) {
			return err
		}
		wall += time.Since(start)
		seconds += heard.Seconds
		e, wrong := voice.CompareWords(s.note.text, heard.Text)
		if byVoice[s.voice] == nil {
			byVoice[s.voice] = &measured{}
		}
		for _, m := range []*measured{&total, byVoice[s.voice]} {
			m.words.Add(e)
			m.leaves.score(b.parser, s.note, heard.Text)
		}
		for _, c := range wrong {
			confusions[c]++
		}
		if b.keep != "" {
			file := filepath.Join(b.keep, strings.Join([]string{s.note.name, s.voice, name, condition}, "."))
			if err := os.WriteFile(file+".txt", []byte(heard.Text+"\n"), 0o600); err != nil {
				return err
			}
		}
	}
	cpu = childCPU() - cpu
	words, leaves := total.words, total.leaves
	fmt.Printf("%-5s %-5s  word error rate %.3f  (%d of %d words; sub %d, del %d, ins %d)  %.0f s of sound, %.2f x real time on the clock, %.2f of one core\n",
		name, condition, words.Rate(), words.Substituted+words.Deleted+words.Inserted, words.Words,
		words.Substituted, words.Deleted, words.Inserted, seconds, wall.Seconds()/seconds, cpu.Seconds()/seconds)
	fmt.Printf("    leaves: F1 %.3f (precision %.3f, recall %.3f; %d right, %d made up, %d missed)\n",
		leaves.f1(), leaves.precision(), leaves.recall(), leaves.right, leaves.madeUp, leaves.missed)
	for _, s := range b.speakers {
		if m := byVoice[s.name]; m != nil {
			fmt.Printf("    %-15s %.3f of %d words, leaves F1 %.3f\n", s.name, m.words.Rate(), m.words.Words, m.leaves.f1())
		}
	}
	fmt.Println("    most often:", commonest(confusions, 14))
	return nil
}

// commonest lists the words most often misheard, said>heard; "-" is nothing.
func commonest(confusions map[voice.Confusion]int, n int) string {
	type pair struct {
		c voice.Confusion
		n int
	}
	var all []pair
	for c, k := range confusions {
		all = append(all, pair{c, k})
	}
	slices.SortFunc(all, func(a, b pair) int {
		return cmp.Or(cmp.Compare(b.n, a.n), cmp.Compare(a.c.Said+" "+a.c.Heard, b.c.Said+" "+b.c.Heard))
	})
	var out []string
	for _, p := range all[:min(n, len(all))] {
		out = append(out, fmt.Sprintf("%s>%s %d", cmp.Or(p.c.Said, "-"), cmp.Or(p.c.Heard, "-"), p.n))
	}
	return strings.Join(out, ", ")
}
