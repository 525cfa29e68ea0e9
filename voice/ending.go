package voice

import (
	"context"
	"encoding/binary"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// pauseWatch finds the pauses of a recording as it grows, and hands over what
// was said right before each.
type pauseWatch struct {
	pause  func(last []int16)
	last   []int16 // the latest endSeconds
	floor  float64 // loudness of the quiet
	quiet  int     // tenths of a second since somebody spoke
	spoken bool    // since the last pause
}

// How a pause is told from speech while recording. Common practice with no
// source: a keeper between two sentences pauses for less.
const (
	endPause   = 15  // tenths of a second
	endSeconds = 6   // of speech that are handed over
	endRise    = 3.0 // times the loudness of the quiet that speech has
	endFloor   = 0.003
	endRecover = 1.01 // by which the floor rises in a tenth of a second
)

// block takes a tenth of a second of samples.
func (w *pauseWatch) block(raw []byte, loud float64) {
	for i := 0; i+1 < len(raw); i += 2 {
		w.last = append(w.last, int16(binary.LittleEndian.Uint16(raw[i:])))
	}
	if extra := len(w.last) - endSeconds*SampleRate; extra > 0 {
		w.last = slices.Delete(w.last, 0, extra)
	}
	w.floor = math.Max(endFloor, math.Min(loud, w.floor*endRecover))
	if loud > endRise*w.floor {
		w.quiet, w.spoken = 0, true
		return
	}
	if w.quiet++; w.quiet == endPause && w.spoken {
		w.spoken = false
		w.pause(slices.Clone(w.last))
	}
}

// Hear recognises some seconds of sound at [SampleRate].
func Hear(ctx context.Context, r Recogniser, samples []int16) ([]Word, error) {
	p := soundPart{samples: make([]float32, len(samples))}
	for i, x := range samples {
		p.samples[i] = float32(x) / (1 << 15)
	}
	if p.speech = speechIn(p.samples, 0); len(p.speech) == 0 {
		return nil, nil
	}
	dir, err := os.MkdirTemp("", "barwise-end-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "said.wav")
	if err := os.WriteFile(file, wavBytes(p.levelled()), 0o600); err != nil {
		return nil, err
	}
	words, err := r.Recognise(ctx, p.in(file))
	return spokenWords(words, p.speech), err
}

// closings are what ends a recording when it is said last, before a pause.
var closings = [][]string{
	{"that's", "all"}, {"that's", "all", "for", "today"}, {"that's", "all", "for", "now"}, {"that's", "all", "folks"},
}

// sureEnding is the posterior that each word of a closing must have: what is not
// heard clearly ends nothing, since the keeper goes on talking unheard.
const sureEnding = 0.5

// SaysEnd reports whether the last words are a closing ("that's all").
func SaysEnd(words []Word) bool {
	return slices.ContainsFunc(closings, func(closing []string) bool {
		if len(words) < len(closing) {
			return false
		}
		last := words[len(words)-len(closing):]
		for i, w := range last {
			if !strings.EqualFold(w.Text, closing[i]) || w.Confidence > 0 && w.Confidence < sureEnding {
				return false
			}
		}
		return true
	})
}
