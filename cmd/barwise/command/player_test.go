package command

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"barwise/colony"
)

// aSecond writes a second of sound and returns its name.
func aSecond(t *testing.T) string {
	t.Helper()
	const rate = 16000
	wav := []byte("RIFF\x00\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data\x00\x00\x00\x00")
	binary.LittleEndian.PutUint32(wav[4:], 36+2*rate)
	binary.LittleEndian.PutUint32(wav[40:], 2*rate)
	for i := range rate {
		wav = binary.LittleEndian.AppendUint16(wav, uint16(int16(i%100*50)))
	}
	name := filepath.Join(t.TempDir(), "walk.wav")
	if err := os.WriteFile(name, wav, 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestOneStretchPlaysAtATime(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the stand-in for a player is a shell script")
	}
	bin := t.TempDir()
	begun := filepath.Join(bin, "begun")
	script := "#!/bin/sh\necho >> " + begun + "\nexec /bin/sleep 60\n"
	if err := os.WriteFile(filepath.Join(bin, "aplay"), []byte(script), 0o700); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", bin)
	p := &player{}
	rec := colony.Recording{File: aSecond(t), Linked: true}
	ended := make(chan error, 2)
	for n := range 2 {
		go func() { ended <- p.Play(rec, 0, 1, 0.7) }()
		for size := int64(-1); size <= int64(n); { // a byte for each that has begun
			if info, err := os.Stat(begun); err == nil {
				size = info.Size()
			}
			time.Sleep(time.Millisecond)
		}
	}
	if err := <-ended; err != nil { // the second stopped it
		t.Errorf("the first ends with %v", err)
	}
	p.Stop()
	if err := <-ended; err != nil {
		t.Errorf("the second ends with %v", err)
	}
	t.Setenv("PATH", t.TempDir())
	if err := p.Play(rec, 0, 1, 1); err == nil {
		t.Error("played without a player")
	}
}
