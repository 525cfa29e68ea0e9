package voice

import (
	"math"
	"strings"
	"testing"

	"github.com/asticode/go-astisub"
)

// On well-formed files the cue reader agrees with go-astisub, an independent
// reader (MIT, https://github.com/asticode/go-astisub), in words and seconds.
func TestCuesAgreeWithAnIndependentReader(t *testing.T) {
	vtt := "WEBVTT\n\nNOTE walk\n\n1\n00:00:01.000 --> 00:00:02.500 align:start\n<v Ada>Hive <b>three</b>\n\n2\n01:00:03.250 --> 01:00:04.000\nbar four\neggs &amp; brood\n"
	srt := "1\n00:00:01,000 --> 00:00:02,500\nHive <i>three</i>\n\n2\n01:00:03,250 --> 01:00:04,000\nbar four\neggs\n"
	open := map[string]func() (*astisub.Subtitles, error){
		vtt: func() (*astisub.Subtitles, error) { return astisub.ReadFromWebVTT(strings.NewReader(vtt)) },
		srt: func() (*astisub.Subtitles, error) { return astisub.ReadFromSRT(strings.NewReader(srt)) },
	}
	for src, other := range open {
		want, err := other()
		if err != nil {
			t.Fatal(err)
		}
		got, faults := readCues(src)
		if len(got) != len(want.Items) || len(faults) > 0 {
			t.Fatalf("%d cues and %d faults, want %d cues", len(got), len(faults), len(want.Items))
		}
		for i, item := range want.Items {
			var lines []string
			for _, line := range item.Lines {
				var b strings.Builder
				for _, part := range line.Items {
					b.WriteString(part.Text)
				}
				lines = append(lines, b.String())
			}
			words := strings.Join(strings.Fields(strings.Join(lines, " ")), " ")
			if g := strings.Join(strings.Fields(got[i].text), " "); g != words {
				t.Errorf("cue %d: %q, want %q", i+1, g, words)
			}
			if math.Abs(got[i].from-item.StartAt.Seconds()) > 1e-9 || math.Abs(got[i].to-item.EndAt.Seconds()) > 1e-9 {
				t.Errorf("cue %d: %v to %v, want %v to %v", i+1, got[i].from, got[i].to, item.StartAt, item.EndAt)
			}
		}
	}
}
