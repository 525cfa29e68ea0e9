// Package command is the command line of barwise: one file a verb, and a few
// that the verbs share (input, place, sheet, exit).
package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	_ "barwise/cmd/barwise/calm" // before anything that draws
	"barwise/parse"
)

// app is what every command works with: the streams, the clock and the flags
// that all commands share.
type app struct {
	in      io.Reader
	out     io.Writer // data
	err     io.Writer // talk
	now     func() time.Time
	data    string        // --data
	started bool          // the arguments were right and a command has begun
	every   time.Duration // between two looks at a watched folder
}

// heeding runs what ends in good order when it is told to stop, as by ctrl+c. All
// else the system stops at once, which costs nothing that was said to be kept.
func heeding(run func(context.Context) error) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return run(ctx)
}

// Run carries out one command line and returns the exit code.
func Run(args []string, in io.Reader, out, errOut io.Writer) int {
	a := &app{in: in, out: out, err: errOut, now: time.Now, every: watchEvery}
	root := a.root()
	root.SetArgs(args)
	err := root.Execute()
	if err == nil {
		return exitDone
	}
	switch {
	case errors.Is(err, syscall.EPIPE):
		return exitDone // whoever read the output has seen enough
	case errors.Is(err, context.Canceled):
		return exitUndone // stopped by the keeper, who knows
	}
	if text := err.Error(); text != "" {
		fmt.Fprintln(errOut, "barwise: "+clean(text))
	}
	if !a.started {
		fmt.Fprintln(errOut, "For help with an example: "+helpFor(root, args))
		return exitUsage
	}
	return codeOf(err)
}

// version names the build and the rules that it reads with.
func version() string {
	v := "built from source"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		v = info.Main.Version
	}
	return v + ", rules " + parse.Version()
}

// helpFor is the command line that prints the help of what was attempted.
func helpFor(root *cobra.Command, args []string) string {
	cmd, _, err := root.Find(args)
	if err != nil {
		cmd = root
	}
	return cmd.CommandPath() + " --help"
}

// wants checks that a command got its arguments, and names what is missing.
func wants(least, most int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return fmt.Errorf("%s: no %s was named", cmd.Name(), what)
		case len(args) > most:
			return fmt.Errorf("%s: %q is one too many", cmd.Name(), args[most])
		}
		return nil
	}
}

func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "barwise",
		Short: "Records of a top-bar hive from what was said at it",
		Long: `Barwise turns what a top-bar beekeeper says at the hive into records that can
be trusted, searched and computed with: a typed note or a transcript goes in,
the inspection that it means comes out, a person confirms it, and it is found
again in the words of the trade.

Exit codes: 0 done; 1 nothing found, or something left undone; 2 wrong use;
3 the data cannot be used.`,
		Example: `  barwise demo                            an invented apiary to look at
  barwise read note.txt                   what barwise makes of a note
  barwise take notes/                     keep a folder of notes
  barwise review                          confirm what was read
  barwise find queen seen orchard hive    ask the history`,
		Version:          version(),
		SilenceUsage:     true,
		SilenceErrors:    true,
		PersistentPreRun: func(*cobra.Command, []string) { a.started = true },
	}
	root.SetIn(a.in)
	root.SetOut(a.out)
	root.SetErr(a.err)
	root.SetUsageTemplate(strings.ReplaceAll(root.UsageTemplate(), ".FlagUsages", ".FlagUsagesWrapped 80"))
	root.PersistentFlags().StringVar(&a.data, "data", "", "`DIR` that holds the records (default $BARWISE_DATA, else the system's place for data)")
	root.AddCommand(a.read(), a.take(), a.listen(), a.review(), a.find(), a.hive(), a.due(), a.trend(), a.page(), a.words(),
		a.export(), a.importing(), a.doctor(), a.demo())
	return root
}
