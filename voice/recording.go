package voice

import (
	"bufio"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// ErrNoFFmpeg says that a recording needs ffmpeg to be read.
var ErrNoFFmpeg = errors.New("ffmpeg is needed for this kind of recording and is not installed (Debian package ffmpeg)")

// recordingExts are names of sound files that phones and recorders make.
var recordingExts = map[string]bool{
	".wav": true, ".m4a": true, ".aac": true, ".mp3": true, ".ogg": true, ".oga": true, ".opus": true,
	".flac": true, ".amr": true, ".3gp": true, ".3ga": true, ".mp4": true, ".wma": true, ".aif": true,
	".aiff": true, ".caf": true, ".webm": true, ".mka": true, ".awb": true,
}

// soundMarks are what sound files begin with; the offset is of the mark.
var soundMarks = []struct {
	at   int
	mark string
}{
	{0, "RIFF"}, {0, "RF64"}, {0, "OggS"}, {0, "fLaC"}, {0, "ID3"}, {0, "#!AMR"}, {4, "ftyp"},
	{0, "\xff\xfb"}, {0, "\xff\xf3"}, {0, "\xff\xf1"}, {0, "\xff\xf9"}, {0, "FORM"}, {0, "caff"}, {0, "\x1aE\xdf\xa3"},
}

// IsRecording reports whether a file that begins with head is a sound file, by
// its content or, failing that, its name.
func IsRecording(name string, head []byte) bool {
	for _, m := range soundMarks {
		if len(head) >= m.at+len(m.mark) && string(head[m.at:m.at+len(m.mark)]) == m.mark {
			return true
		}
	}
	return recordingExts[strings.ToLower(filepath.Ext(name))]
}

// recording is an open sound file, as a stream of samples at [SampleRate] in
// one channel.
type recording struct {
	seconds float64 // as stated by the file, 0 where it is not
	pull    func() ([]float32, error)
	close   func() error
	warning func() error // what was wrong once all was read, or nil
}

// blockSeconds is how much is read at a time.
const blockSeconds = 1

// openRecording opens a sound file: plain WAV by our own reader, everything
// else, whatever its name says, through ffmpeg.
func openRecording(ctx context.Context, path string) (*recording, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		f.Close()
		return nil, fmt.Errorf("%s: not a file", path)
	}
	if info.Size() == 0 {
		f.Close()
		return nil, fmt.Errorf("%s: the file is empty", path)
	}
	w, err := newWAVReader(bufio.NewReaderSize(f, 1<<16))
	if err != nil {
		f.Close()
		return openThroughFFmpeg(ctx, path, err)
	}
	rec := &recording{seconds: min(w.seconds(), float64(info.Size())/float64(w.frame)/float64(w.rate)), close: f.Close}
	rec.pull = wavPull(w)
	rec.warning = func() error {
		if w.short {
			return fmt.Errorf("%s: the recording is cut off: its header promises more sound than the file holds; what is there was used", path)
		}
		return nil
	}
	return rec, nil
}

// wavPull reads a WAV file block by block at the recogniser's rate.
func wavPull(w *wavReader) func() ([]float32, error) {
	res := newResampler(w.rate)
	block := make([]float32, blockSeconds*w.rate)
	ended := false
	return func() ([]float32, error) {
		if ended {
			return nil, io.EOF
		}
		n, err := w.read(block)
		out := block[:n]
		ended = errors.Is(err, io.EOF)
		if res != nil {
			out = res.push(out)
			if ended {
				out = append(out, res.flush()...)
			}
		}
		if ended {
			err = nil
		}
		return out, err
	}
}

// openThroughFFmpeg lets ffmpeg decode and resample. why is what our own reader
// said.
func openThroughFFmpeg(ctx context.Context, path string, why error) (*recording, error) {
	ffmpeg, err := exec.LookPath("ffmpeg")
	if err != nil {
		return nil, fmt.Errorf("%s: %w: %w", path, why, ErrNoFFmpeg)
	}
	ctx, stop := context.WithCancel(ctx)
	r, w := io.Pipe()
	done := make(chan error, 1)
	go func() {
		args := []string{"-nostdin", "-v", "error", "-i", fileArg(path), "-vn", "-ac", "1", "-ar", strconv.Itoa(SampleRate), "-f", "s16le", "-"}
		err := command{path: ffmpeg, args: args}.run(ctx, w)
		done <- err
		w.CloseWithError(err) // nil becomes io.EOF
	}()
	var failure error
	got := 0
	rec := &recording{seconds: probeSeconds(ctx, path)}
	buf := make([]byte, 2*blockSeconds*SampleRate)
	rec.pull = func() ([]float32, error) {
		n, err := io.ReadFull(r, buf)
		out := make([]float32, n/2)
		for i := range out {
			out[i] = float32(int16(binary.LittleEndian.Uint16(buf[2*i:]))) / (1 << 15)
		}
		got += len(out)
		if errors.Is(err, io.ErrUnexpectedEOF) {
			err = nil
		}
		var pe *ProcessError
		switch {
		case err == nil || errors.Is(err, io.EOF):
		case got == 0 && errors.As(err, &pe):
			err = fmt.Errorf("%s: %w: %s", path, ErrNotAudio, lastLine(pe.Stderr))
		case errors.As(err, &pe) && ctx.Err() == nil:
			failure, err = err, io.EOF // what came before the damage is used
		}
		return out, err
	}
	rec.warning = func() error {
		if failure != nil {
			return fmt.Errorf("%s: the recording is damaged; what could be read was used: %w", path, failure)
		}
		return nil
	}
	rec.close = func() error {
		stop()
		r.Close()
		<-done
		return nil
	}
	return rec, nil
}

// fileArg keeps a name that begins with a dash, or that holds a colon, from
// being taken for an option or an address.
func fileArg(path string) string { return "file:" + path }

// probeSeconds asks ffprobe for the length of a sound file; 0 where it cannot
// say.
func probeSeconds(ctx context.Context, path string) float64 {
	ffprobe, err := exec.LookPath("ffprobe")
	if err != nil {
		return 0
	}
	var out strings.Builder
	args := []string{"-v", "error", "-show_entries", "format=duration", "-of", "csv=p=0", fileArg(path)}
	if err := (command{path: ffprobe, args: args, limit: 10 * time.Second}).run(ctx, &out); err != nil {
		return 0
	}
	s, err := strconv.ParseFloat(strings.TrimSpace(out.String()), 64)
	if err != nil || s < 0 {
		return 0
	}
	return s
}
