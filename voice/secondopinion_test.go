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

// The reasons that [ReadTranscript] gives for a reader of our own: of each file
// it keeps all words, and the independent reader does not. Where that one has
// learned to, a reason is gone.
func TestOnlyOurReaderKeepsTheWordsOfDamagedFiles(t *testing.T) {
	const want = "bar four eggs"
	for name, src := range map[string]string{
		"a bad time":            "WEBVTT\n\n00:00:01.000 --> 00:00:02.000\nbar four\n\n00:00:0x.000 --> 00:00:03.000\neggs\n",
		"a region of new style": "WEBVTT\n\nREGION\nid:fred\n\n00:00:01.000 --> 00:00:02.000 region:fred\nbar four eggs\n",
		"no end":                "WEBVTT\n\n00:00:01.000 -->\nbar four eggs\n",
		"no header":             "00:00:01.000 --> 00:00:02.000\nbar four eggs\n",
	} {
		t.Run(name, func(t *testing.T) {
			if text, _, _ := read(t, "walk.vtt", src); text != want {
				t.Errorf("we read %q, want %q", text, want)
			}
			if text := independentWords(src); text == want {
				t.Error("the independent reader keeps all words")
			}
		})
	}
}

// independentWords are the words that the independent reader finds, "" where it
// panics.
func independentWords(src string) (text string) {
	defer func() {
		if recover() != nil {
			text = ""
		}
	}()
	subtitles, err := astisub.ReadFromWebVTT(strings.NewReader(src))
	if err != nil {
		return ""
	}
	var words []string
	for _, item := range subtitles.Items {
		words = append(words, item.String())
	}
	return strings.Join(words, " ")
}
