package main

import (
	"bufio"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"barwise/voice"
)

// counted is a recogniser that only counts: what the program itself needs for a
// recording is measured with it, since the recogniser is a process for each part
// and needs the same for each.
type counted struct{ parts chan struct{} }

func (c counted) Key() string { return "counted" }

func (c counted) Recognise(_ context.Context, p voice.Part) ([]voice.Word, error) {
	c.parts <- struct{}{}
	return []voice.Word{{Text: "bar", From: p.Seconds / 3, To: p.Seconds / 2}}, nil
}

// measureLong writes a recording of so many hours, a spoken note over and over
// with pauses, and prints what splitting and levelling it needs.
func measureLong(ctx context.Context, dir string, note []float64, hours float64) error {
	path := filepath.Join(dir, "long.wav")
	seconds, err := writeLong(path, note, hours)
	if err != nil {
		return err
	}
	before := peakMemory()
	c := counted{make(chan struct{}, 1<<16)}
	start := time.Now()
	if _, err := voice.Recognise(ctx, path, c, voice.Options{}); err != nil {
		return err
	}
	fmt.Printf("%.2f hours of sound in %d parts: %.4f x real time without the recogniser, peak memory %d MiB (%d MiB before)\n",
		seconds/3600, len(c.parts), time.Since(start).Seconds()/seconds, peakMemory()>>20, before>>20)
	return nil
}

func writeLong(path string, note []float64, hours float64) (seconds float64, err error) {
	head := make([]byte, 44)
	f, err := os.Create(path)
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	w := bufio.NewWriter(f)
	w.Write(head)
	n := 0
	for float64(n) < hours*3600*rate {
		for _, x := range append(note, make([]float64, 2*rate)...) {
			binary.Write(w, binary.LittleEndian, int16(x*32000))
			n++
		}
	}
	if err := w.Flush(); err != nil {
		return 0, err
	}
	_, err = f.WriteAt(wavHead(2*n), 0)
	return float64(n) / rate, err
}
