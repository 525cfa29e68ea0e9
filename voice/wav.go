package voice

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
)

// Errors of a recording that cannot be used.
var (
	ErrNotAudio = errors.New("no sound could be read from it")
	ErrNoSound  = errors.New("the recording holds no sound")
	errNotWAV   = errors.New("not a WAV file of plain samples")
)

// wavReader reads the samples of a WAV file from its chunks (Microsoft and IBM,
// "Multimedia Programming Interface and Data Specifications 1.0", 1991; the
// extensible format of "Multiple channel audio data and WAVE files", 2001; RF64
// of EBU Tech 3306). Sizes in the header are hints: a writer that was cut off,
// or that wrote to a pipe, left wrong ones.
type wavReader struct {
	rate, channels int
	r              io.Reader
	frame          int                  // bytes of one sample of all channels
	sample         func([]byte) float32 // decodes one sample of one channel
	left           int64                // bytes of the data chunk still to come; -1 to the end of the file
	short          bool                 // the file ended before its data chunk did
	buf            []byte
}

// Tags of the "fmt " chunk.
const (
	wavPCM        = 1
	wavFloat      = 3
	wavExtensible = 0xfffe
)

// newWAVReader reads the header. It is errNotWAV where the file is none, or
// holds compressed samples.
func newWAVReader(r io.Reader) (*wavReader, error) {
	var head [12]byte
	if _, err := io.ReadFull(r, head[:]); err != nil {
		return nil, errNotWAV
	}
	if id := string(head[:4]); id != "RIFF" && id != "RF64" || string(head[8:]) != "WAVE" {
		return nil, errNotWAV
	}
	w := &wavReader{r: r}
	for {
		var chunk [8]byte
		if _, err := io.ReadFull(r, chunk[:]); err != nil {
			return nil, fmt.Errorf("%w: the file ends before its sound begins", errNotWAV)
		}
		size := int64(binary.LittleEndian.Uint32(chunk[4:]))
		switch string(chunk[:4]) {
		case "fmt ":
			if size > 1<<16 {
				return nil, errNotWAV
			}
			format := make([]byte, size+size%2)
			if _, err := io.ReadFull(r, format); err != nil {
				return nil, errNotWAV
			}
			if err := w.setFormat(format); err != nil {
				return nil, err
			}
		case "data":
			if w.sample == nil {
				return nil, fmt.Errorf("%w: its format chunk is missing", errNotWAV)
			}
			w.left = size
			if size == 0 || size >= 0xffffff00 { // written to a pipe, or RF64
				w.left = -1
			}
			return w, nil
		default:
			if _, err := io.CopyN(io.Discard, r, size+size%2); err != nil {
				return nil, fmt.Errorf("%w: the file ends before its sound begins", errNotWAV)
			}
		}
	}
}

// setFormat takes the format chunk.
func (w *wavReader) setFormat(f []byte) error {
	if len(f) < 16 {
		return errNotWAV
	}
	tag := int(binary.LittleEndian.Uint16(f))
	w.channels = int(binary.LittleEndian.Uint16(f[2:]))
	w.rate = int(binary.LittleEndian.Uint32(f[4:]))
	bits := int(binary.LittleEndian.Uint16(f[14:]))
	if tag == wavExtensible && len(f) >= 26 {
		tag = int(binary.LittleEndian.Uint16(f[24:]))
	}
	w.sample = sampleDecoder(tag, bits)
	if w.sample == nil || w.channels < 1 || w.channels > 64 || w.rate < minRate || w.rate > maxRate {
		return fmt.Errorf("%w: format %d with %d bits, %d channels, %d samples a second", errNotWAV, tag, bits, w.channels, w.rate)
	}
	w.frame = w.channels * ((bits + 7) / 8)
	return nil
}

// sampleDecoder gives the function that reads one sample as -1 to 1, nil for
// formats that are not plain samples.
func sampleDecoder(tag, bits int) func([]byte) float32 {
	switch {
	case tag == wavPCM && bits == 8:
		return func(b []byte) float32 { return (float32(b[0]) - 128) / 128 }
	case tag == wavPCM && bits == 16:
		return func(b []byte) float32 { return float32(int16(binary.LittleEndian.Uint16(b))) / (1 << 15) }
	case tag == wavPCM && bits == 24:
		return func(b []byte) float32 {
			return float32(int32(b[0])<<8|int32(b[1])<<16|int32(b[2])<<24) / (1 << 31)
		}
	case tag == wavPCM && bits == 32:
		return func(b []byte) float32 { return float32(int32(binary.LittleEndian.Uint32(b))) / (1 << 31) }
	case tag == wavFloat && bits == 32:
		return func(b []byte) float32 { return finite(math.Float32frombits(binary.LittleEndian.Uint32(b))) }
	case tag == wavFloat && bits == 64:
		return func(b []byte) float32 {
			return finite(float32(math.Float64frombits(binary.LittleEndian.Uint64(b))))
		}
	}
	return nil
}

// finite makes silence of what is no number, and bounds the rest.
func finite(x float32) float32 {
	if x != x {
		return 0
	}
	return max(-8, min(8, x))
}

// seconds is the length that the header states, 0 where it does not.
func (w *wavReader) seconds() float64 {
	if w.left < 0 {
		return 0
	}
	return float64(w.left) / float64(w.frame) / float64(w.rate)
}

// read fills dst with samples, the channels averaged. It gives io.EOF with the
// last of them.
func (w *wavReader) read(dst []float32) (int, error) {
	want := int64(len(dst) * w.frame)
	if w.left >= 0 {
		want = min(want, w.left)
	}
	if int64(cap(w.buf)) < want {
		w.buf = make([]byte, want)
	}
	n, err := io.ReadFull(w.r, w.buf[:want])
	if errors.Is(err, io.ErrUnexpectedEOF) {
		err = io.EOF
	}
	if w.left >= 0 {
		w.left -= int64(n)
		w.short = err != nil && w.left > 0
		if w.left == 0 {
			err = io.EOF
		}
	}
	width := w.frame / w.channels
	frames := n / w.frame
	for i := range frames {
		sum := float32(0)
		for c := range w.channels {
			sum += w.sample(w.buf[i*w.frame+c*width:])
		}
		dst[i] = sum / float32(w.channels)
	}
	return frames, err
}

// wavBytes is a 16-bit mono WAV file of samples at 16 kHz.
func wavBytes(samples []int16) []byte {
	size := uint32(2 * len(samples))
	b := make([]byte, 0, 44+size)
	b = append(b, "RIFF"...)
	b = binary.LittleEndian.AppendUint32(b, 36+size)
	b = append(b, "WAVEfmt "...)
	b = binary.LittleEndian.AppendUint32(b, 16)
	b = binary.LittleEndian.AppendUint16(b, wavPCM)
	b = binary.LittleEndian.AppendUint16(b, 1)
	b = binary.LittleEndian.AppendUint32(b, SampleRate)
	b = binary.LittleEndian.AppendUint32(b, 2*SampleRate)
	b = binary.LittleEndian.AppendUint16(b, 2)
	b = binary.LittleEndian.AppendUint16(b, 16)
	b = append(b, "data"...)
	b = binary.LittleEndian.AppendUint32(b, size)
	for _, s := range samples {
		b = binary.LittleEndian.AppendUint16(b, uint16(s))
	}
	return b
}
