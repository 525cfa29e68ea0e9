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
		Long: `Listen records until you press Enter, or say "that's all" and then nothing for
two seconds. It shows how loud you are, and takes the recording in as take
would. The recording is on the disk from the first second: whatever stops it,
what was said until then stays.`,
		Example: `  barwise listen
  barwise listen --hive orchard`,
		Args: wants(0, 0, ""),
		RunE: func(*cobra.Command, []string) error {
			return heeding(func(ctx context.Context) error { return a.runListen(ctx, o) })
		},
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
	listening, stop := context.WithCancel(ctx)
	defer stop()
	go func() {
		defer stop()
		_, _ = bufio.NewReader(a.in).ReadString('\n') // the end of the input stops it too
	}()
	watch := voice.Watcher{Level: func(level float64) { fmt.Fprintf(a.err, "\r%-40s", loudness(level)) }}
	if ears := a.earsFor(o.notes.recogniser); ears.command != "" || canHear() {
		watch.Pause = ears.endAt(listening, stop)
		fmt.Fprintln(a.err, "Listening; press Enter when you are done, or say \"that's all\" and wait.")
	} else {
		fmt.Fprintln(a.err, "Listening; press Enter when you are done.")
	}
	err := voice.Record(ctx, file, listening.Done(), watch)
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

// endAt hears what is said before each pause, and stops where it was the end.
// While it hears one, the next pause is passed over.
func (e *ears) endAt(ctx context.Context, stop func()) func(last []int16) {
	said := make(chan []int16)
	go func() {
		if e.wake(ctx) != nil {
			return // taking the recording in will tell why
		}
		for {
			select {
			case <-ctx.Done():
				return
			case last := <-said:
				if words, err := voice.Hear(ctx, e.rec, last); err == nil && voice.SaysEnd(words) {
					stop()
				}
			}
		}
	}()
	return func(last []int16) {
		select {
		case said <- last:
		default:
		}
	}
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
