package command

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"runtime/debug"
	"strings"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

type readOptions struct {
	json    bool
	explain bool
	notes   noteOptions
}

// noteOptions are the flags of every command that is handed notes.
type noteOptions struct{ at, hive, recogniser string }

func (o *noteOptions) register(a *app, cmd *cobra.Command) {
	cmd.Flags().StringVar(&o.at, "at", "", "`TIME` of the inspection, where the note does not say it: 2026-05-14, \"2026-05-14 16:00\" or RFC 3339")
	a.hiveFlag(cmd, &o.hive, "`NAME` of the hive, where the note does not say it")
	cmd.Flags().StringVar(&o.recogniser, "recogniser", os.Getenv(recogniserEnv), "`COMMAND` line of another recogniser, with {audio} in it (default $"+recogniserEnv+")")
}

func (a *app) loader(o noteOptions) (*loader, error) {
	l := &loader{stdin: a.in, open: openFile, now: a.now(), hive: hiveNamed(o.hive)}
	if o.at == "" {
		return l, nil
	}
	at, err := parseWhen(o.at, time.Local)
	if err != nil {
		return nil, wrongUse("--at: %w", err)
	}
	l.at = at
	return l, nil
}

func (a *app) read() *cobra.Command {
	var o readOptions
	cmd := &cobra.Command{
		Use:   "read FILE...",
		Short: "Print what a note says, and keep nothing",
		Long: `Read prints the inspections that a note means: a sheet for a person, or with
--json one object a line. A leaf marked with ? should be looked at; the line
below says why. FILE is plain text, WebVTT, SubRip, a recogniser's JSON, or a
recording; - is the standard input. Nothing is stored.`,
		Example: `  barwise read note.txt
  echo "H2 b4 CB both, b5 E+L, Q seen b6 wht" | barwise read -
  barwise read --json --at 2026-05-14T16:00:00Z note.txt
  barwise read --explain note.txt`,
		Args: wants(1, math.MaxInt, "FILE"),
		RunE: func(_ *cobra.Command, files []string) error {
			return heeding(func(ctx context.Context) error { return a.runRead(ctx, files, o) })
		},
	}
	cmd.Flags().BoolVar(&o.json, "json", false, "print JSON Lines, one inspection a line")
	cmd.Flags().BoolVar(&o.explain, "explain", false, "for each leaf its words, rule and cue")
	o.notes.register(a, cmd)
	return cmd
}

func (a *app) runRead(ctx context.Context, files []string, o readOptions) error {
	if o.json && o.explain {
		return wrongUse("--json prints the record and --explain says where it comes from; choose one")
	}
	l, err := a.loader(o.notes)
	if err != nil {
		return err
	}
	parser, err := a.parserForReading()
	if err != nil {
		return err
	}
	l.ears = a.earsFor(o.notes.recogniser)
	l.ears.partial = true
	// Half as many cleanings save a twentieth of the time over many notes. Fewer still
	// would save more, but take over 100 MB for a note of 10 MB.
	defer debug.SetGCPercent(debug.SetGCPercent(200))
	out := bufio.NewWriter(a.out)
	defer out.Flush()
	failed := 0
	for i, file := range files {
		note, warnings, err := l.load(ctx, file)
		for _, w := range warnings {
			fmt.Fprintln(a.err, "barwise: "+clean(w.Error()))
		}
		if err != nil {
			fmt.Fprintln(a.err, "barwise: "+clean(err.Error()))
			failed++
			continue
		}
		if len(files) > 1 && !o.json {
			fmt.Fprintf(out, "%s%s:\n", strings.Repeat("\n", min(i, 1)), shown(file))
		}
		if err := a.printReading(out, parser, &note, o); err != nil {
			return err
		}
	}
	if err := out.Flush(); err != nil {
		return err
	}
	switch {
	case failed == len(files):
		return toldAlready(exitData)
	case failed > 0:
		return undone("%d of %d files could not be read", failed, len(files))
	}
	return nil
}

// parserForReading knows the keeper's own words and hives where there is a store that can
// be opened. Reading a note must not depend on one, so any other store is
// passed over with a word.
func (a *app) parserForReading() (*parse.Parser, error) {
	var own colony.OwnWords
	if !a.hasStore() {
		return parse.New(own)
	}
	err := a.withStore(func(s *index.Store) (err error) {
		own, err = wordsOf(s)
		return err
	}, index.ReadOnly(), index.LockWait(200*time.Millisecond))
	if err != nil {
		fmt.Fprintf(a.err, "barwise: reading without your own words: %s\n", clean(err.Error()))
	}
	return parse.New(own)
}

func (a *app) printReading(out io.Writer, parser *parse.Parser, note *colony.Note, o readOptions) error {
	read := readNote(parser, note)
	if o.json {
		return writeJSONLines(out, read)
	}
	safe := guard{out}
	s := sheet{out: safe, style: stylesFor(a.out), wide: a.width()}
	for i := range read {
		if i > 0 {
			fmt.Fprintln(safe)
		}
		s.inspection(&read[i])
	}
	if o.explain {
		fmt.Fprintln(safe)
		s.reasons(parser.Explain(note), len(read))
	}
	return nil
}

// reasons prints for each leaf the words that it stands on, the rule that read
// them and the cue that judged them.
func (s sheet) reasons(reasons []parse.Reason, inspections int) {
	for _, r := range reasons {
		of := ""
		if inspections > 1 {
			of = fmt.Sprintf("%d: ", r.Inspection+1)
		}
		fmt.Fprintf(s.out, "%s%s = %s\n", of, s.style.head.Render(r.Path), oneLine(r.Value))
		fmt.Fprintf(s.out, "    words  %s%s\n", s.style.quote.Render("“"+oneLine(r.Words)+"”"), places(r.Spans))
		fmt.Fprintf(s.out, "    rule   %s\n", r.Rule)
		if r.Cue != "" {
			fmt.Fprintf(s.out, "    cue    %s\n", oneLine(r.Cue))
		}
	}
}

// places names where in the note the words stand.
func places(spans []colony.Span) string {
	var out []string
	for _, s := range spans {
		out = append(out, fmt.Sprintf("%d to %d", s[0], s[1]))
	}
	if len(out) == 0 {
		return ""
	}
	return " (bytes " + strings.Join(out, ", ") + ")"
}

// writeJSONLines prints one value a line, in characters that no terminal acts
// on.
func writeJSONLines[T any](out io.Writer, values []T) error {
	for _, v := range values {
		line, err := json.Marshal(v)
		if err != nil {
			return err
		}
		if _, err := out.Write(append(escapeControls(line), '\n')); err != nil {
			return err
		}
	}
	return nil
}

// width is the number of columns to wrap at, 0 where the output is no terminal.
func (a *app) width() int {
	f, ok := a.out.(*os.File)
	if !ok {
		return 0
	}
	columns, _, err := term.GetSize(f.Fd())
	if err != nil {
		return 0
	}
	return columns
}

func openFile(name string) (fs.File, error) { return os.Open(name) }
