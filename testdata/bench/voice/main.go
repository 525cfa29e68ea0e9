// Command voice measures recognition: it has synthetic voices speak the notes
// of notes.gold, clean and in noise, and recognises them in the same run in
// three ways: as the program does with a voice that it meets for the first time
// (ours), after the voice has spoken four other notes (known), and with the
// recogniser's stock model alone (stock). It prints word error rates, the leaves
// that become of the notes, the time taken and the words most often misheard.
//
//	go run ./testdata/bench/voice            all notes, two voices each
//	go run ./testdata/bench/voice -every 8   one note in eight, for a quick look
//	go run ./testdata/bench/voice -long 2    the memory that two hours of sound take
//	go run ./testdata/bench/voice -human /usr/share/asterisk/sounds/en_US_f_Allison/digits
//	go run ./testdata/bench/voice -say testdata/bench/voice/walk.gold -out walk.wav -voice slt
//
// It needs pocketsphinx, pocketsphinx-en-us, espeak-ng, flite, festival with
// festvox-kallpc16k and festvox-kdlpc16k, and sox; -human needs ffmpeg. The head
// of notes.gold says how far the notes are apart from what the model is built
// from.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"

	"barwise/colony"
	"barwise/parse"
	"barwise/voice"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx); err != nil {
		fmt.Fprintln(os.Stderr, "voice bench:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context) error {
	notesFile := flag.String("notes", "testdata/bench/voice/notes.gold", "notes to speak, with their answers")
	every := flag.Int("every", 1, "take one note in so many")
	voices := flag.Int("voices", 2, "voices for each note, in turn")
	only := flag.String("voice", "", "only the voices whose name contains this")
	say := flag.String("say", "", "only speak the first note of this file, into -out")
	out := flag.String("out", "walk.wav", "with -say: the WAV file to write")
	pause := flag.Float64("pause", 1.2, "seconds of silence after each line of a note")
	human := flag.String("human", "", "instead of notes, the folder of a person's recordings of numbers, days and months")
	long := flag.Float64("long", 0, "only measure what a recording of so many hours needs, without the recogniser")
	harvest := flag.Bool("harvest", false, "only print what is misheard of the model's own templates, for the rules of mishearings")
	keep := flag.String("keep", "", "folder to keep what was heard in, a text file a recording")
	conditions := flag.String("noise", "clean,20,10", "conditions: clean, or decibels of speech over noise")
	models := flag.String("models", "ours,known,stock", "models to compare")
	learnFrom := flag.String("learn", "testdata/notes/spoken.gold", "notes that the voices speak before those measured, for the model \"known\"")
	learnNotes := flag.Int("learn-notes", 4, "how many of them")
	flag.Parse()

	dir, err := os.MkdirTemp("", "barwise-bench-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	speakers := pick(*only)
	if len(speakers) == 0 {
		return fmt.Errorf("no voice is called %s", *only)
	}
	b := &bench{dir: dir, keep: *keep, speakers: speakers, voices: *voices, pause: *pause}
	if *say != "" {
		notes, err := readNotes(*say)
		if err != nil {
			return err
		}
		if len(notes) == 0 {
			return fmt.Errorf("%s holds no note", *say)
		}
		samples, err := b.said(ctx, speakers[0], notes[0].text)
		if err != nil {
			return err
		}
		return writeWAV(*out, samples)
	}
	notes, err := readNotes(*notesFile)
	if err != nil {
		return err
	}
	for i, n := range notes {
		if i%*every == 0 {
			b.notes = append(b.notes, n)
		}
	}
	if *long > 0 {
		samples, err := b.said(ctx, speakers[0], b.notes[0].text)
		if err != nil {
			return err
		}
		return measureLong(ctx, dir, samples, *long)
	}
	if *harvest {
		// it speaks sentences of its own
	} else if *human != "" {
		b.speakers = []speaker{{name: "human"}}
		b.spoken, err = humanRecordings(ctx, *human)
	} else {
		err = b.speak(ctx)
	}
	if err != nil {
		return err
	}
	stock, err := voice.StockModel("")
	if err != nil {
		return err
	}
	sayings, err := parse.Sayings()
	if err != nil {
		return err
	}
	if *harvest {
		ours, err := voice.BuildModel(ctx, stock, voice.ModelOptions{Dir: filepath.Join(dir, "model"), Phrases: voice.TradePhrases(sayings), Spoken: []voice.Phrases{voice.SpokenNotes()}})
		if err != nil {
			return err
		}
		return b.harvest(ctx, map[string]voice.Model{"ours": ours, "stock": stock}, voice.TradePhrases(sayings)[0])
	}
	if b.parser, err = parse.New(colony.OwnWords{}); err != nil {
		return err
	}
	var written leafCount
	for _, n := range b.notes {
		written.score(b.parser, n, n.text)
	}
	fmt.Printf("leaves of the written notes: F1 %.3f, which is what hearing them perfectly would give\n", written.f1())
	for _, name := range strings.Split(*models, ",") {
		model := stock
		if name != "stock" {
			if model, err = voice.BuildModel(ctx, stock, voice.ModelOptions{Dir: filepath.Join(dir, "model"), Phrases: voice.TradePhrases(sayings), Spoken: []voice.Phrases{voice.SpokenNotes()}}); err != nil {
				return err
			}
		}
		if name == "known" {
			others, err := readNotes(*learnFrom)
			if err != nil {
				return err
			}
			if err := b.learn(ctx, model, others[:min(*learnNotes, len(others))]); err != nil {
				return err
			}
		}
		for _, c := range strings.Split(*conditions, ",") {
			if err := b.measure(ctx, name, model, c); err != nil {
				return err
			}
		}
	}
	return nil
}
