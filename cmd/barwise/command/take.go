package command

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

type takeOptions struct {
	json    bool
	watch   bool
	link    bool
	partial bool
	private bool
	notes   noteOptions
}

func (a *app) take() *cobra.Command {
	var o takeOptions
	cmd := &cobra.Command{
		Use:   "take FILE|DIR|-...",
		Short: "Keep notes, and what they say, for review",
		Long: `Take keeps each note word for word, hears a recording, reads what was said, and
lets the inspections that it means wait for review. Of a folder it takes every
note, transcript and recording in it and below. What was taken before (the same
text) is passed over; a file that cannot be used is named with the reason, and
the rest goes on. The files themselves are only read.

The time of an inspection is what the note says, else --at, else what the file's
name says (2026-05-14-1603.txt), else when the file was written.`,
		Example: `  barwise take today.txt
  barwise take --watch ~/phone/notes
  barwise take --hive orchard --at "2026-05-14 16:00" -`,
		Args: wants(1, math.MaxInt, "FILE or DIR"),
		RunE: func(_ *cobra.Command, names []string) error {
			return heeding(func(ctx context.Context) error { return a.runTake(ctx, names, o) })
		},
	}
	cmd.Flags().BoolVar(&o.json, "json", false, "print the inspections taken in, one a line")
	cmd.Flags().BoolVar(&o.link, "link", false, "leave recordings where they are, and keep no copy")
	cmd.Flags().BoolVar(&o.partial, "partial", false, "keep a recording even where parts of it could not be heard")
	cmd.Flags().BoolVar(&o.private, "private", false, "leave these notes out of pages to share")
	cmd.Flags().BoolVar(&o.watch, "watch", false, "go on taking in what appears, until stopped")
	o.notes.register(a, cmd)
	return cmd
}

func (a *app) runTake(ctx context.Context, names []string, o takeOptions) error {
	l, err := a.loader(o.notes)
	if err != nil {
		return err
	}
	l.private = o.private
	l.ears = &ears{app: a, command: o.notes.recogniser, partial: o.partial}
	l.keep = func(name, hash string) (colony.Recording, error) { return a.keepRecording(name, hash, o.link) }
	if o.watch {
		return a.watch(ctx, names, l, o.json)
	}
	files, bad := notesUnder(names)
	for _, err := range bad {
		fmt.Fprintln(a.err, "barwise: "+clean(err.Error()))
	}
	if len(files) == 0 {
		if len(bad) > 0 {
			return toldAlready(exitData)
		}
		return undone("there is no note in %s", shown(strings.Join(names, ", ")))
	}
	t := taker{app: a, load: l, json: o.json, failed: len(bad)}
	if err := a.withStore(func(s *index.Store) error { return t.all(ctx, s, files) }); err != nil {
		return err
	}
	return t.outcome(len(files) + len(bad))
}

// taker takes notes into a store and counts what became of them.
type taker struct {
	*app
	load  *loader
	json  bool
	quiet bool // only the outcome, no line a note

	store  *index.Store
	parser *parse.Parser

	taken, known, failed int
	inspections, checks  int
}

// all takes the files in, one after the other. A file that cannot be used is
// told and counted; a store that cannot be written ends the batch.
func (t *taker) all(ctx context.Context, store *index.Store, files []string) error {
	parser, err := parserFor(store)
	if err != nil {
		return err
	}
	t.store, t.parser, t.load.taken = store, parser, store.Knows
	if t.load.ears != nil {
		t.load.ears.knows = func() (keeper, error) { return talk(store) }
	}
	for i, file := range files {
		if ctx.Err() != nil {
			return undone("stopped: %d of %d files were looked at; say take again for the rest", i, len(files))
		}
		note, warnings, err := t.load.load(ctx, file)
		for _, w := range warnings {
			fmt.Fprintln(t.err, "barwise: "+clean(w.Error()))
		}
		if ctx.Err() != nil {
			return undone("stopped at %s: what was heard of it is kept; say take again for the rest", shown(file))
		}
		if err != nil {
			fmt.Fprintln(t.err, "barwise: "+clean(err.Error()))
			t.failed++
			continue
		}
		if err := t.one(note); err != nil {
			return fmt.Errorf("%s: %w", shown(file), err)
		}
	}
	return nil
}

// one takes a loaded note in.
func (t *taker) one(note colony.Note) error {
	note.Private = t.load.private
	records, err := t.store.Take(note, readNote(t.parser, &note))
	if errors.Is(err, index.ErrTaken) {
		before, err := t.store.Note(note.Hash)
		if err != nil {
			return err
		}
		if t.load.tellsApart(&before, &note) {
			note.Hash = hashOf(note.Text, note.Given.Format(time.RFC3339), note.Hive)
			return t.one(note)
		}
		t.known++
		fmt.Fprintf(t.err, "%s: taken before, on %s as %s\n", noteName(note), before.Taken.Format("2006-01-02"), noteName(before))
		return nil
	}
	if err != nil {
		return err
	}
	t.taken++
	var read []colony.Inspection
	var hives []string
	checks := 0
	for i := range records {
		ins := records[i].Inspection()
		read = append(read, ins)
		hives = append(hives, hiveOrNone(ins.Hive))
		checks += len(ins.Check)
	}
	t.inspections += len(read)
	t.checks += checks
	if t.json {
		return writeJSONLines(t.out, read)
	}
	if t.quiet {
		return nil
	}
	_, err = fmt.Fprintf(t.out, "%s  %s: %s, %d to check\n", read[0].At.Format("2006-01-02"), noteName(note),
		strings.Join(hives, ", "), checks)
	return err
}

// outcome prints what became of the batch of that many files.
func (t *taker) outcome(files int) error {
	talk := t.out
	if t.json {
		talk = t.err
	}
	fmt.Fprintf(talk, "%s taken in, %s with %s to check", amount(t.taken, "note"), amount(t.inspections, "inspection"), amount(t.checks, "leaf"))
	if t.known > 0 {
		fmt.Fprintf(talk, "; %d taken before", t.known)
	}
	if t.failed > 0 {
		fmt.Fprintf(talk, "; %d could not be used", t.failed)
	}
	fmt.Fprintln(talk)
	if t.taken > 0 && !t.json {
		fmt.Fprintln(t.err, "Next: "+t.suggest("review", ""))
	}
	switch {
	case t.failed == files:
		return toldAlready(exitData)
	case t.failed > 0:
		return toldAlready(exitUndone)
	}
	return nil
}

func noteName(n colony.Note) string {
	if n.Name == "" {
		return "standard input"
	}
	return oneLine(n.Name)
}

func hiveOrNone(name string) string {
	if name == "" {
		return "hive not named"
	}
	return "hive " + oneLine(name)
}

// amount is a number with its noun.
func amount(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case noun == "leaf":
		return fmt.Sprintf("%d leaves", n)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
