package command

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path"

	"github.com/spf13/cobra"

	"barwise/cmd/barwise/demo"
	"barwise/colony"
	"barwise/index"
	"barwise/voice"
)

func (a *app) demo() *cobra.Command {
	var review, sound bool
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Take in an invented apiary to look at",
		Long: `Demo takes in the notes of an invented apiary, four hives over two seasons, the
way take would, into a new folder for temporary files (or into --data DIR, which
must hold no records), and says what to try. Your own records are not touched.
One of the notes is a recording, which is left out where nothing is installed to
hear it with.`,
		Example: `  barwise demo
  barwise demo --review
  barwise demo --data /tmp/bees`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error {
			return heeding(func(ctx context.Context) error { return a.runDemo(ctx, review, sound) })
		},
	}
	cmd.Flags().BoolVar(&sound, "sound", true, "take in the recording too; hearing it takes some seconds")
	cmd.Flags().BoolVar(&review, "review", false, "open the review at once")
	return cmd
}

func (a *app) runDemo(ctx context.Context, review, sound bool) error {
	if a.data == "" {
		dir, err := os.MkdirTemp("", "barwise-demo-")
		if err != nil {
			return fmt.Errorf("no folder for the demo: %w", err)
		}
		a.data = dir
	} else if a.hasStore() {
		return wrongUse("--data %s holds records already, or cannot be looked into; the demo wants a folder of its own", shown(a.data))
	}
	files, err := fs.Glob(demo.Notes, "notes/*")
	if err != nil {
		return err
	}
	l := &loader{open: func(name string) (fs.File, error) { return demo.Notes.Open(path.Clean(name)) }, now: a.now()}
	t := taker{app: a, load: l, quiet: true}
	if err := a.withStore(func(s *index.Store) error { return t.all(ctx, s, files) }); err != nil {
		return err
	}
	if t.failed > 0 {
		return fmt.Errorf("%d of %d notes of the demo could not be used", t.failed, len(files))
	}
	if sound {
		a.hearDemo(ctx, &t)
	}
	a.tellDemo(&t)
	if review {
		return a.runReview(ctx, reviewOptions{})
	}
	return nil
}

// hearDemo takes in the demo's recording. The demo is worth its while without
// one, so what stands in the way is told and no error.
func (a *app) hearDemo(ctx context.Context, t *taker) {
	ears := &ears{app: a, command: os.Getenv(recogniserEnv)}
	if ears.command == "" && !canHear() {
		fmt.Fprintln(a.err, "Its recording was left out: there is no recogniser; barwise doctor says what to install.")
		return
	}
	dir, err := os.MkdirTemp("", "barwise-recording-")
	if err == nil {
		defer os.RemoveAll(dir)
		err = os.CopyFS(dir, demo.Recordings)
	}
	if err == nil {
		fmt.Fprintln(a.err, "Listening to the recording among its notes …")
		l := &loader{open: openFile, now: a.now(), ears: ears}
		l.keep = func(name, hash string) (colony.Recording, error) { return a.keepRecording(name, hash, false) }
		t.load = l
		files, _ := notesUnder([]string{dir})
		err = a.withStore(func(s *index.Store) error { return t.all(ctx, s, files) })
	}
	if err != nil {
		fmt.Fprintln(a.err, "barwise: its recording was left out: "+clean(err.Error()))
	}
}

// canHear reports whether what is built in can recognise a recording here.
func canHear() bool {
	for _, tool := range voice.Probe() {
		if tool.Needed && tool.Found == "" {
			return false
		}
	}
	return true
}

// tellDemo says what was made and what to try on it.
func (a *app) tellDemo(t *taker) {
	fmt.Fprintf(a.out, `An invented apiary, 2025 and 2026: the hives orchard, barn, hedge and pond.
%s taken in: %s, %s to check. They lie in %s

Try:
`, amount(t.taken, "note"), amount(t.inspections, "inspection"), amount(t.checks, "leaf"), clean(a.data))
	for _, try := range []struct{ verb, rest string }{
		{"review", ""},
		{"find", "when did I last see the queen in the pond hive"},
		{"find", "chalkbrood since july"},
		{"hive", "pond --on 2026-05-12"},
		{"due", "--on 2026-05-12"},
		{"trend", "temper --hive hedge"},
	} {
		fmt.Fprintln(a.out, "  "+a.suggest(try.verb, try.rest))
	}
}
