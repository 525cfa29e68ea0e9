package voice

import (
	"math"
	"testing"
)

// Worked examples: D. Jurafsky and J. H. Martin, "Speech and Language
// Processing", third edition draft, "Automatic Speech Recognition", section on
// evaluation (six substitutions, three insertions, one deletion in 13 words:
// 76.9 %); README of jiwer (https://github.com/jitsi/jiwer), "hello duck".
func TestWorkedExamplesOfWordErrorRate(t *testing.T) {
	cases := []struct {
		said, heard string
		want        WordErrors
		rate        float64
	}{
		{"i um the phone is i left the portable phone upstairs last night", "i got it to the fullest i love to portable form of stores last night", WordErrors{13, 6, 1, 3}, 0.769},
		{"hello world", "hello duck", WordErrors{2, 1, 0, 0}, 0.5},
		{"Bar 22: eggs.", "bar twenty two eggs", WordErrors{4, 0, 0, 0}, 0},
		{"", "", WordErrors{}, 0},
		{"", "bar", WordErrors{0, 0, 0, 1}, 1},
		{"bar four", "", WordErrors{2, 0, 2, 0}, 1},
	}
	for _, c := range cases {
		got, wrong := CompareWords(c.said, c.heard)
		if n := got.Substituted + got.Deleted + got.Inserted; n != c.want.Substituted+c.want.Deleted+c.want.Inserted || len(wrong) != n || got.Words != c.want.Words {
			t.Errorf("%q heard as %q: %+v, want %+v", c.said, c.heard, got, c.want)
		}
		if math.Abs(got.Rate()-c.rate) > 0.0005 {
			t.Errorf("%q heard as %q: rate %.4f, want %.4f", c.said, c.heard, got.Rate(), c.rate)
		}
	}
	_, wrong := CompareWords("bar four brood", "bar for brood eggs")
	if len(wrong) != 2 || wrong[0] != (Confusion{"four", "for"}) || wrong[1] != (Confusion{"", "eggs"}) {
		t.Errorf("confusions %v", wrong)
	}
}
