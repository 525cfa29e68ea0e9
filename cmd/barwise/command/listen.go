package command

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"barwise/voice"
)

func (a *app) listen() *cobra.Command {
	var o takeOptions
	cmd := &cobra.Command{
		Use:   "listen",
		Short: "Record from the microphone, and take it in",
		Long: `Listen records until you press Enter, shows how loud you are, and then takes the
recording in as take would. The recording is on the disk from the first second:
whatever stops it, what was said until then stays.`,
		Example: `  barwise listen
  barwise listen --hive orchard`,
		Args: wants(0, 0, ""),
		RunE: func(cmd *cobra.Command, _ []string) error { return a.runListen(cmd.Context(), o) },
	}
	cmd.Flags().BoolVar(&o.partial, "partial", false, "keep the recording even where parts of it could not be heard")
	o.notes.register(a, cmd)
	return cmd
}

func (a *app) runListen(ctx context.Context, o takeOptions) error {
	dir := filepath.Join(a.dataDir(), recordingsDir)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	file := filepath.Join(dir, a.now().Format("2006-01-02-150405")+".wav")
	stop := make(chan struct{})
	go func() {
		defer close(stop)
		_, _ = bufio.NewReader(a.in).ReadString('\n') // the end of the input stops it too
	}()
	fmt.Fprintln(a.err, "Listening; press Enter when you are done.")
	err := voice.Record(ctx, file, stop, func(level float64) { fmt.Fprintf(a.err, "\r%-40s", loudness(level)) })
	fmt.Fprintf(a.err, "\r%40s\r", "")
	if err != nil {
		return errors.Join(fmt.Errorf("nothing was recorded: %w", err), removeSilent(file))
	}
	o.link = true // it lies with the data already
	if err := a.runTake(context.WithoutCancel(ctx), []string{file}, o); err != nil {
		fmt.Fprintf(a.err, "The recording is kept; try it again with: %s\n", a.suggest("take --link", quoted(file)))
		return err
	}
	return nil
}

// wavHeader is the length of a WAV file that holds no sound.
const wavHeader = 44

// removeSilent removes a recording in which there is nothing at all.
func removeSilent(file string) error {
	info, err := os.Stat(file)
	if err != nil || info.Size() > wavHeader {
		return nil // never made, or there is something to keep
	}
	return os.Remove(file)
}

// loudness is a bar for a level of 0 to 1, on the scale on which it is heard.
func loudness(level float64) string {
	const width, quietest = 36.0, -60.0 // decibels
	if level <= 0 {
		return ""
	}
	share := 1 - 20*math.Log10(level)/quietest
	return strings.Repeat("▇", int(width*math.Max(0, math.Min(1, share))))
}
