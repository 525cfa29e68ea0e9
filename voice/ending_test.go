package voice

import (
	"context"
	"encoding/binary"
	"math"
	"testing"
)

// A pause is told once, with what was said before it, however long it lasts;
// silence from the beginning is none.
func TestPausesWhileRecording(t *testing.T) {
	var told []float64
	w := &pauseWatch{floor: 1}
	at := 0.0
	w.pause = func(last []int16) {
		told = append(told, at)
		if len(last) == 0 || len(last) > endSeconds*SampleRate {
			t.Errorf("%d samples handed over", len(last))
		}
	}
	say := func(seconds, level float64) {
		for range int(seconds * 10) {
			at += 0.1
			var raw []byte
			for i := range levelBytes / 2 {
				x := level * math.Sin(float64(i)) * math.MaxInt16
				raw = binary.LittleEndian.AppendUint16(raw, uint16(int16(x)))
			}
			w.block(raw, loudness(raw))
		}
	}
	say(4, 0.01)  // wind
	say(5, 0.3)   // speech
	say(1, 0.01)  // too short a pause
	say(3, 0.3)   // until 13
	say(10, 0.01) // told at 14.5
	say(2, 0.3)   // until 25
	say(2, 0.01)  // told at 26.5
	if len(told) != 2 || math.Abs(told[0]-14.5) > 0.15 || math.Abs(told[1]-26.5) > 0.15 {
		t.Errorf("pauses at %.1f, want 14.5 and 26.5", told)
	}
}

func TestEndIsSaid(t *testing.T) {
	words := func(confidence float64, texts ...string) (out []Word) {
		for _, text := range texts {
			out = append(out, Word{Text: text, Confidence: confidence})
		}
		return out
	}
	for _, c := range []struct {
		words []Word
		want  bool
	}{
		{words(0.9, "bar", "four", "honey", "that's", "all"), true},
		{words(0.9, "That's", "all", "for", "today"), true},
		{words(0, "that's", "all"), true}, // no posteriors from this recogniser
		{words(0.3, "that's", "all"), false},
		{words(0.9, "that's", "all", "honey"), false},
		{words(0.9, "all"), false},
		{nil, false},
	} {
		if got := SaysEnd(c.words); got != c.want {
			t.Errorf("%v: %v", c.words, got)
		}
	}
}

func TestNothingIsHeardInAPause(t *testing.T) {
	fakePrograms(t, true, "pocketsphinx_batch")
	s, err := NewSphinx(Model{})
	if err != nil {
		t.Fatal(err)
	}
	if words, err := Hear(context.Background(), s, make([]int16, 2*SampleRate)); err != nil || len(words) > 0 {
		t.Errorf("%v, %v", words, err)
	}
}
