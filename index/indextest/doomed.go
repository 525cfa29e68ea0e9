package indextest

import (
	"bufio"
	"flag"
	"math/rand/v2"
	"os/exec"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// Kills says how often a test kills a process, and by which seed it chooses
// the moments.
type Kills struct {
	Times *int
	Seed  *uint64
}

// KillFlags adds the flags -kills and -killseed to a test binary; times is how
// often is killed where nobody says.
func KillFlags(times int, what string) Kills {
	return Kills{
		Times: flag.Int("kills", times, "how often "+what+" is killed"),
		Seed:  flag.Uint64("killseed", 1, "seed of the moments at which it is killed"),
	}
}

// Random is the source that the seed gives.
func (k Kills) Random() *rand.Rand { return rand.New(rand.NewPCG(*k.Seed, 0)) }

// Doomed is a process that is killed, and says line by line on its standard
// output how far it has come.
type Doomed struct {
	tb    testing.TB
	cmd   *exec.Cmd
	lines *bufio.Reader
	talk  strings.Builder
	sent  atomic.Bool
}

// StartDoomed starts the process; its standard output and standard error are
// taken.
func StartDoomed(tb testing.TB, cmd *exec.Cmd) *Doomed {
	tb.Helper()
	d := &Doomed{tb: tb, cmd: cmd}
	cmd.Stderr = &d.talk
	out, err := cmd.StdoutPipe()
	if err != nil {
		tb.Fatal(err)
	}
	d.lines = bufio.NewReader(out)
	if err := cmd.Start(); err != nil {
		tb.Fatal(err)
	}
	return d
}

// Line is the next line that was said, or false where nothing more comes. A
// last line without its end was cut off by the kill, and does not count.
func (d *Doomed) Line() (string, bool) {
	line, err := d.lines.ReadString('\n')
	return strings.TrimSuffix(line, "\n"), err == nil
}

// Begins waits for the word "begins", so that the moments of killing do not
// hang on how long this machine takes to start a process.
func (d *Doomed) Begins() {
	d.tb.Helper()
	if line, ok := d.Line(); !ok || line != "begins" {
		_ = d.cmd.Process.Kill()
		_ = d.cmd.Wait()
		d.tb.Fatalf("the process says %q\n%s", line, d.talk.String())
	}
}

// KillIn kills the process after that time, unless the timer is stopped.
func (d *Doomed) KillIn(wait time.Duration) *time.Timer {
	return time.AfterFunc(wait, func() {
		d.sent.Store(true)
		_ = d.cmd.Process.Kill()
	})
}

// End waits for the end and says whether the process was killed before it had
// done all. One that failed by itself fails the test.
func (d *Doomed) End() (killed bool) {
	d.tb.Helper()
	err := d.cmd.Wait()
	state := d.cmd.ProcessState
	byItself := state.Exited() && runtime.GOOS != "windows" // where a killed process exits as any other
	if err != nil && (byItself || !d.sent.Load()) {
		d.tb.Fatalf("the process ended by itself: %v\n%s", err, d.talk.String())
	}
	return !state.Success()
}

// Talk is what the process said on its standard error; to be asked for after
// End.
func (d *Doomed) Talk() string { return d.talk.String() }
