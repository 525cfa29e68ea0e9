package voice

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// wavFile writes samples, -1 to 1, as a WAV file of some format, each channel
// the same.
func wavFile(tag, bits, channels, rate int, samples []float64) []byte {
	var data []byte
	for _, x := range samples {
		for range channels {
			switch {
			case tag == wavFloat && bits == 32:
				data = binary.LittleEndian.AppendUint32(data, math.Float32bits(float32(x)))
			case tag == wavFloat:
				data = binary.LittleEndian.AppendUint64(data, math.Float64bits(x))
			case bits == 8:
				data = append(data, byte(128+127*x))
			default:
				v := int64(x * float64(int64(1)<<(bits-1)-1))
				for b := 0; b < bits; b += 8 {
					data = append(data, byte(v>>b))
				}
			}
		}
	}
	frame := channels * bits / 8
	var b bytes.Buffer
	b.WriteString("RIFF")
	binary.Write(&b, binary.LittleEndian, uint32(4+8+16+8+6+8+len(data)))
	b.WriteString("WAVELIST\x05\x00\x00\x00abcde\x00fmt ") // a chunk of odd length first
	binary.Write(&b, binary.LittleEndian, uint32(16))
	binary.Write(&b, binary.LittleEndian, []uint16{uint16(tag), uint16(channels)})
	binary.Write(&b, binary.LittleEndian, []uint32{uint32(rate), uint32(rate * frame)})
	binary.Write(&b, binary.LittleEndian, []uint16{uint16(frame), uint16(bits)})
	b.WriteString("data")
	binary.Write(&b, binary.LittleEndian, uint32(len(data)))
	b.Write(data)
	return b.Bytes()
}

func tone(hz float64, rate int, seconds float64) []float64 {
	out := make([]float64, int(seconds*float64(rate)))
	for i := range out {
		out[i] = 0.5 * math.Sin(2*math.Pi*hz*float64(i)/float64(rate))
	}
	return out
}

// samplesOf reads a recording whole.
func samplesOf(t *testing.T, name string, data []byte) ([]float32, error, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	rec, err := openRecording(context.Background(), path)
	if err != nil {
		return nil, nil, err
	}
	defer rec.close()
	var out []float32
	for {
		s, err := rec.pull()
		out = append(out, s...)
		if errors.Is(err, io.EOF) {
			return out, rec.warning(), nil
		}
		if err != nil {
			return out, nil, err
		}
	}
}

// amplitude is how much of a tone is in some samples, its edges left out.
func amplitude(samples []float32, hz float64) float64 {
	samples = samples[800 : len(samples)-800]
	var re, im float64
	for i, x := range samples {
		a := 2 * math.Pi * hz * float64(i) / SampleRate
		re += float64(x) * math.Cos(a)
		im += float64(x) * math.Sin(a)
	}
	return 2 * math.Hypot(re, im) / float64(len(samples))
}

func TestEveryPlainWAVIsRead(t *testing.T) {
	formats := []struct{ tag, bits int }{{wavPCM, 8}, {wavPCM, 16}, {wavPCM, 24}, {wavPCM, 32}, {wavFloat, 32}, {wavFloat, 64}}
	for _, f := range formats {
		for _, rate := range []int{8000, 11025, 16000, 22050, 44100, 48000, 96000} {
			for _, channels := range []int{1, 2} {
				samples, warning, err := samplesOf(t, "a.wav", wavFile(f.tag, f.bits, channels, rate, tone(1000, rate, 1)))
				if err != nil || warning != nil {
					t.Fatalf("format %d, %d bits, %d a second: %v %v", f.tag, f.bits, rate, err, warning)
				}
				if len(samples) < 15990 || len(samples) > 16010 {
					t.Errorf("format %d, %d bits, %d a second: %d samples for a second", f.tag, f.bits, rate, len(samples))
				}
				if a := amplitude(samples, 1000); math.Abs(a-0.5) > 0.01 {
					t.Errorf("format %d, %d bits, %d a second: the tone comes out %.3f loud, want 0.5", f.tag, f.bits, rate, a)
				}
			}
		}
	}
}

func TestResamplingLeavesNoGhosts(t *testing.T) {
	for _, rate := range []int{22050, 44100, 48000} {
		samples, _, err := samplesOf(t, "a.wav", wavFile(wavFloat, 32, 1, rate, tone(9500, rate, 1)))
		if err != nil {
			t.Fatal(err)
		}
		if a := amplitude(samples, 16000-9500); a > 0.5e-3 {
			t.Errorf("from %d: a tone above the range comes back at %.6f, want 60 dB less than it was", rate, a)
		}
	}
}

// ffmpeg resamples with a filter of its own; both must give the same speech
// band.
func TestResamplingAgreesWithFFmpeg(t *testing.T) {
	needs(t, "ffmpeg", "ffmpeg")
	data := wavFile(wavPCM, 16, 2, 44100, tone(440, 44100, 1))
	ours, _, err := samplesOf(t, "a.wav", data)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "a.wav")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	rec, err := openThroughFFmpeg(context.Background(), path, errNotWAV)
	if err != nil {
		t.Fatal(err)
	}
	defer rec.close()
	theirs, err := rec.pull()
	if err != nil {
		t.Fatal(err)
	}
	for i := 1000; i < 15000; i++ {
		if math.Abs(float64(ours[i]-theirs[i])) > 0.01 {
			t.Fatalf("sample %d: %v, want %v", i, ours[i], theirs[i])
		}
	}
}

func TestBadRecordings(t *testing.T) {
	whole := wavFile(wavPCM, 16, 1, 16000, tone(440, 16000, 1))
	t.Run("empty file", func(t *testing.T) {
		if _, _, err := samplesOf(t, "a.wav", nil); err == nil || !strings.Contains(err.Error(), "the file is empty") {
			t.Error(err)
		}
	})
	t.Run("header alone", func(t *testing.T) {
		samples, _, err := samplesOf(t, "a.wav", wavBytes(nil))
		if err != nil || len(samples) != 0 {
			t.Errorf("%d samples, %v", len(samples), err)
		}
	})
	t.Run("cut off", func(t *testing.T) {
		samples, warning, err := samplesOf(t, "a.wav", whole[:len(whole)/2])
		if err != nil || len(samples) < 7900 || warning == nil || !strings.Contains(warning.Error(), "cut off") {
			t.Errorf("%d samples, warning %v, %v", len(samples), warning, err)
		}
	})
	t.Run("written to a pipe", func(t *testing.T) {
		piped := bytes.Clone(whole)
		at := bytes.Index(piped, []byte("data"))
		copy(piped[at+4:], "\xff\xff\xff\xff")
		samples, warning, err := samplesOf(t, "a.wav", piped)
		if err != nil || warning != nil || len(samples) != 16000 {
			t.Errorf("%d samples, warning %v, %v", len(samples), warning, err)
		}
	})
	t.Run("no samples in it, no ffmpeg", func(t *testing.T) {
		fakePrograms(t, true)
		if _, _, err := samplesOf(t, "a.wav", []byte("this is a note, not a sound")); !errors.Is(err, ErrNoFFmpeg) {
			t.Error(err)
		}
	})
	t.Run("no samples in it, ffmpeg", func(t *testing.T) {
		needs(t, "ffmpeg", "ffmpeg")
		if _, _, err := samplesOf(t, "a.wav", []byte("this is a note, not a sound")); !errors.Is(err, ErrNotAudio) {
			t.Error(err)
		}
	})
	t.Run("another format under the wrong name", func(t *testing.T) {
		needs(t, "ffmpeg", "ffmpeg")
		dir := t.TempDir()
		in, out := filepath.Join(dir, "in.wav"), filepath.Join(dir, "out.ogg")
		if err := os.WriteFile(in, whole, 0o600); err != nil {
			t.Fatal(err)
		}
		if msg, err := exec.Command("ffmpeg", "-nostdin", "-v", "error", "-i", in, "-c:a", "flac", out).CombinedOutput(); err != nil {
			t.Skipf("this ffmpeg cannot write the test's file: %s", msg)
		}
		data, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		samples, _, err := samplesOf(t, "really-ogg.wav", data)
		if err != nil || len(samples) < 15900 || math.Abs(amplitude(samples[:15900], 440)-0.5) > 0.01 {
			t.Errorf("%d samples, %v", len(samples), err)
		}
	})
	t.Run("a folder", func(t *testing.T) {
		if _, err := openRecording(context.Background(), t.TempDir()); err == nil {
			t.Error("a folder was opened")
		}
	})
}

func FuzzWAV(f *testing.F) {
	f.Add(wavFile(wavPCM, 24, 2, 44100, tone(440, 44100, 0.01)))
	f.Add(wavFile(wavFloat, 32, 1, 8000, tone(440, 8000, 0.01)))
	f.Fuzz(func(t *testing.T, data []byte) {
		w, err := newWAVReader(bytes.NewReader(data))
		if err != nil {
			return
		}
		pull := wavPull(&wavReader{rate: SampleRate, channels: w.channels, r: w.r, frame: w.frame, sample: w.sample, left: w.left})
		for range len(data) + 2 {
			samples, err := pull()
			for _, x := range samples {
				if x != x || x > 8 || x < -8 {
					t.Fatalf("sample %v", x)
				}
			}
			if err != nil {
				return
			}
		}
		t.Fatal("reading does not end")
	})
}

func TestIsRecording(t *testing.T) {
	for name, head := range map[string]string{"a.m4a": "", "walk": "RIFF....WAVE", "x.bin": "\x00\x00\x00\x20ftypM4A ", "B.OGG": "OggS"} {
		if !IsRecording(name, []byte(head)) {
			t.Errorf("%s is not taken for a recording", name)
		}
	}
	for name, head := range map[string]string{"note.txt": "Hive three", "walk.vtt": "WEBVTT", "a.json": "{}"} {
		if IsRecording(name, []byte(head)) {
			t.Errorf("%s is taken for a recording", name)
		}
	}
}
