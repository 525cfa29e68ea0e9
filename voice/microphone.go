package voice

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"runtime"
	"strconv"
)

// ErrNoMicrophone says that no program to record with is installed.
var ErrNoMicrophone = errors.New("no program to record with is installed (Debian packages pipewire-bin, alsa-utils or ffmpeg)")

// ErrNoPlayer says that no program to play sound with is installed.
var ErrNoPlayer = errors.New("no program to play sound with is installed (Debian packages pipewire-bin, alsa-utils or ffmpeg)")

// soundProgram is a program that records or plays, with its arguments.
type soundProgram struct {
	name string
	args []string
	os   string // only there, where not empty
}

var rate = strconv.Itoa(SampleRate)

// recorders write 16-bit samples at SampleRate in one channel to stdout.
var recorders = []soundProgram{
	{name: "pw-record", args: []string{"--rate", rate, "--channels", "1", "--format", "s16", "-"}},
	{name: "arecord", args: []string{"-q", "-t", "raw", "-f", "S16_LE", "-r", rate, "-c", "1"}},
	{name: "ffmpeg", args: []string{"-nostdin", "-v", "error", "-f", "pulse", "-i", "default", "-ac", "1", "-ar", rate, "-f", "s16le", "-"}, os: "linux"},
	{name: "ffmpeg", args: []string{"-nostdin", "-v", "error", "-f", "avfoundation", "-i", ":default", "-ac", "1", "-ar", rate, "-f", "s16le", "-"}, os: "darwin"},
}

// runsHere reports whether the program does its work on this system.
func (p soundProgram) runsHere() bool { return p.os == "" || p.os == runtime.GOOS }

// findProgram gives the first of the programs that is installed.
func findProgram(programs []soundProgram) (path string, args []string, ok bool) {
	for _, p := range programs {
		if !p.runsHere() {
			continue
		}
		if path, err := exec.LookPath(p.name); err == nil {
			return path, p.args, true
		}
	}
	return "", nil, false
}

// Watcher is told of a recording while it is made. Both may be nil, and must
// return at once.
type Watcher struct {
	Level func(float64)      // about ten times a second, the loudness, 0 to 1 of full scale
	Pause func(last []int16) // when somebody spoke and then paused, the last seconds at [SampleRate]
}

// Record records from the microphone into a new WAV file until stop is closed
// or the context ends; what was recorded until then stays. The file must not be
// there yet.
func Record(ctx context.Context, file string, stop <-chan struct{}, watch Watcher) error {
	path, args, ok := findProgram(recorders)
	if !ok {
		return ErrNoMicrophone
	}
	out, err := os.OpenFile(file, os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
	if err != nil {
		return err
	}
	rec := &recordingFile{file: out, level: watch.Level}
	if watch.Pause != nil {
		rec.pauses = &pauseWatch{pause: watch.Pause, floor: 1}
	}
	err = rec.begin()
	if err == nil {
		inner, cancel := context.WithCancel(ctx)
		defer cancel()
		go func() {
			select {
			case <-stop:
				cancel()
			case <-inner.Done():
			}
		}()
		err = command{path: path, args: args}.run(inner, rec)
		if inner.Err() != nil {
			err = nil // stopped, as it should be
		}
	}
	if e := rec.end(); err == nil {
		err = e
	}
	if err == nil && rec.bytes == 0 {
		err = fmt.Errorf("%s recorded nothing; is a microphone connected?", path)
	}
	return err
}

// recordingFile is a WAV file that grows, its header always true to what is in
// it, so that a recording survives whatever stops it.
type recordingFile struct {
	file   *os.File
	bytes  int64
	level  func(float64)
	pauses *pauseWatch
	block  []byte // samples of the level that is being measured
}

const levelBytes = 2 * SampleRate / 10

func (r *recordingFile) begin() error {
	_, err := r.file.Write(wavBytes(nil))
	return err
}

func (r *recordingFile) Write(p []byte) (int, error) {
	n, err := r.file.WriteAt(p, 44+r.bytes)
	r.bytes += int64(n)
	if err != nil {
		return n, err
	}
	r.block = append(r.block, p...)
	if len(r.block) < levelBytes {
		return n, nil
	}
	for len(r.block) >= levelBytes {
		loud := loudness(r.block[:levelBytes])
		if r.level != nil {
			r.level(loud)
		}
		if r.pauses != nil {
			r.pauses.block(r.block[:levelBytes], loud)
		}
		r.block = r.block[levelBytes:]
	}
	return n, r.header()
}

// header writes the sizes of what is there.
func (r *recordingFile) header() error {
	for _, field := range []struct{ at, value int64 }{{4, 36 + r.bytes}, {40, r.bytes}} {
		v := min(field.value, math.MaxUint32)
		if _, err := r.file.WriteAt(binary.LittleEndian.AppendUint32(nil, uint32(v)), field.at); err != nil {
			return err
		}
	}
	return nil
}

func (r *recordingFile) end() error {
	return errors.Join(r.header(), r.file.Sync(), r.file.Close())
}

// loudness is the root mean square of 16-bit samples, 0 to 1 of full scale.
func loudness(block []byte) float64 {
	sum, n := 0.0, 0
	for i := 0; i+1 < len(block); i += 2 {
		x := float64(int16(binary.LittleEndian.Uint16(block[i:]))) / (1 << 15)
		sum += x * x
		n++
	}
	return math.Sqrt(sum / float64(max(n, 1)))
}

// players play a WAV file given as the last argument.
var players = []soundProgram{
	{name: "pw-play"},
	{name: "aplay", args: []string{"-q"}},
	{name: "paplay"},
	{name: "ffplay", args: []string{"-nodisp", "-autoexit", "-v", "error"}},
	{name: "afplay", os: "darwin"},
	{name: "play", args: []string{"-q"}}, // of SoX
}

// Play plays the seconds from..to of a recording of any kind, with the player
// that is installed; ErrNoPlayer where there is none. Tempo is 1 for as fast as
// it was said, less for slower; the voice stays as high. It returns when the
// sound has ended or the context does.
func Play(ctx context.Context, recordingPath string, from, to, tempo float64) error {
	path, args, ok := findProgram(players)
	if !ok {
		return ErrNoPlayer
	}
	samples, err := clip(ctx, recordingPath, from, to, tempo)
	if err != nil {
		return err
	}
	tmp, err := os.CreateTemp("", "barwise-clip-*.wav")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name())
	_, err = tmp.Write(wavBytes(samples))
	if err = errors.Join(err, tmp.Close()); err != nil {
		return err
	}
	return command{path: path, args: append(args[:len(args):len(args)], tmp.Name())}.run(ctx, io.Discard)
}

// clip reads some seconds of a recording, to be played at the tempo.
func clip(ctx context.Context, path string, from, to, tempo float64) ([]int16, error) {
	rec, err := openRecording(ctx, path)
	if err != nil {
		return nil, err
	}
	defer rec.close()
	var p soundPart
	first, last := int(max(0, from)*SampleRate), int(max(0, to)*SampleRate)
	for at := 0; at < last; {
		samples, err := rec.pull()
		a, b := max(first-at, 0), min(last-at, len(samples))
		if a < b {
			p.samples = append(p.samples, samples[a:b]...)
		}
		at += len(samples)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
	}
	if len(p.samples) == 0 {
		return nil, fmt.Errorf("%s: no sound between second %.1f and %.1f", path, from, to)
	}
	p.samples = atTempo(p.samples, tempo)
	return p.levelled(), nil
}
