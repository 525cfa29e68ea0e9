package main

import (
	"context"
	"encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"slices"
)

const rate = 16000

// samplesOf reads a WAV file at 16 kHz through sox.
func samplesOf(ctx context.Context, path string) ([]float64, error) {
	raw, err := exec.CommandContext(ctx, "sox", "-G", path, "-t", "raw", "-e", "signed", "-b", "16", "-c", "1", "-r", "16000", "-").Output()
	if err != nil {
		return nil, fmt.Errorf("sox %s: %w", path, err)
	}
	return decode(raw), nil
}

// decode gives 16-bit samples as -1 to 1.
func decode(raw []byte) []float64 {
	out := make([]float64, len(raw)/2)
	for i := range out {
		out[i] = float64(int16(binary.LittleEndian.Uint16(raw[2*i:]))) / (1 << 15)
	}
	return out
}

// noisy adds half wind and half the hum of a hive, so loud that the speech
// stands db decibels above it. Wind is low-passed noise in gusts of some
// seconds; the hum is 250 Hz with harmonics, wavering, under a hiss of wings.
func noisy(samples []float64, db float64, seed uint64) []float64 {
	rnd := rand.New(rand.NewPCG(seed, 7))
	wind, hum := make([]float64, len(samples)), make([]float64, len(samples))
	low, lower, gust, phase, waver := 0.0, 0.0, 1.0, 0.0, 0.0
	for i := range samples {
		low += 0.1 * (rnd.NormFloat64() - low) // about 270 Hz
		lower += 0.1 * (low - lower)
		gust += 0.00004 * (rnd.NormFloat64()*40 - (gust - 1))
		wind[i] = lower * math.Abs(gust)
		waver += 0.001 * (rnd.NormFloat64() - waver)
		phase += 2 * math.Pi * 250 * (1 + 0.5*waver) / rate
		hum[i] = 0.05 * rnd.NormFloat64()
		for h := 1.0; h <= 6; h++ {
			hum[i] += math.Sin(h*phase) / h
		}
	}
	want := loudness(samples) / math.Pow(10, db/20)
	w, h := want*math.Sqrt(0.5)/rms(wind), want*math.Sqrt(0.5)/rms(hum)
	out := make([]float64, len(samples))
	for i, x := range samples {
		out[i] = x + w*wind[i] + h*hum[i]
	}
	return out
}

func rms(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v * v
	}
	return math.Sqrt(sum / float64(max(len(x), 1)))
}

// loudness is the root mean square of the louder half of the recording, which
// leaves out the pauses.
func loudness(x []float64) float64 {
	var frames []float64
	for i := 0; i+rate/50 <= len(x); i += rate / 50 {
		frames = append(frames, rms(x[i:i+rate/50]))
	}
	slices.Sort(frames)
	return rms(frames[len(frames)/2:])
}

// writeWAV writes samples as 16-bit WAV, turned down where they would clip.
func writeWAV(path string, samples []float64) error {
	peak := 1.0
	for _, x := range samples {
		peak = max(peak, math.Abs(x))
	}
	b := wavHead(2 * len(samples))
	for _, x := range samples {
		b = binary.LittleEndian.AppendUint16(b, uint16(int16(x/peak*math.MaxInt16)))
	}
	return os.WriteFile(path, b, 0o600)
}

// wavHead is the header of a WAV file of so many bytes of 16-bit sound.
func wavHead(size int) []byte {
	b := []byte("RIFF\x00\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data\x00\x00\x00\x00")
	binary.LittleEndian.PutUint32(b[4:], uint32(size+36))
	binary.LittleEndian.PutUint32(b[40:], uint32(size))
	return b
}
