package voice

import (
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"unicode/utf16"

	"barwise/colony"
)

// read reads a transcript that must be readable.
func read(t *testing.T, name, src string) (string, []colony.TimedWord, []error) {
	t.Helper()
	text, words, warnings, err := ReadTranscript(name, strings.NewReader(src))
	if err != nil {
		t.Fatalf("%s: %v (%v)", name, err, warnings)
	}
	return text, words, warnings
}

// wantText checks the text of a transcript that reads without a warning.
func wantText(t *testing.T, name, src, want string) []colony.TimedWord {
	t.Helper()
	text, words, warnings := read(t, name, src)
	if text != want {
		t.Errorf("%s reads\n%q, want\n%q", name, text, want)
	}
	for _, w := range warnings {
		t.Errorf("%s: unexpected warning: %v", name, w)
	}
	return words
}

// wantTimes checks words and seconds, written "word from-to", one a line.
func wantTimes(t *testing.T, text string, words []colony.TimedWord, want string) {
	t.Helper()
	var b strings.Builder
	for _, w := range words {
		fmt.Fprintf(&b, "%s %.2f-%.2f\n", text[w.Span[0]:w.Span[1]], w.From, w.To)
	}
	if got := strings.TrimSpace(b.String()); got != strings.TrimSpace(want) {
		t.Errorf("words\n%s\nwant\n%s", got, want)
	}
}

// The structure of the first examples of "WebVTT: The Web Video Text Tracks
// Format", W3C, sections 1.1 to 1.4, https://www.w3.org/TR/webvtt1/, with words
// of our own in the place of its interview.
func TestWebVTTSpecificationExamples(t *testing.T) {
	cases := []struct{ name, src, want string }{
		{"1.1 voices, overlapping cues, settings", `WEBVTT

00:11.000 --> 00:13.000
<v Ada>We are at the quince hive

00:13.000 --> 00:16.000
<v Ada>It's warm, just down the lane

00:16.000 --> 00:16.500 align:right size:50%
<v Ada>bar one&mdash;

00:16.500 --> 00:18.500 align:left size:50%
<v Ben>Is it <i>heavy</i>?
`, "We are at the quince hive It's warm, just down the lane bar one— Is it heavy?"},
		{"1.2 cues of several lines", `WEBVTT

00:01.000 --> 00:04.000
Never lift two bars at once.

00:05.000 --> 00:09.000
&mdash; It tears the comb.
&mdash; You could lose her.
`, "Never lift two bars at once.\n— It tears the comb. — You could lose her."},
		{"1.3 style and comment blocks, an identifier", `WEBVTT

STYLE
::cue {
  background-image: linear-gradient(to bottom, dimgray, lightgray);
  color: papayawhip;
}
/* Style blocks cannot use blank lines nor "dash dash greater than" */

NOTE comment blocks can be used between style blocks.

STYLE
::cue(b) {
  color: peachpuff;
}

hello
00:00:00.000 --> 00:00:10.000
Hello <b>bees</b>.

NOTE style blocks cannot appear after the first cue.
`, "Hello bees."},
		{"1.4 identifiers of any kind", `WEBVTT

test
00:00.000 --> 00:02.000
This is a test.

123
00:00.000 --> 00:02.000
That's an, an, that's an egg!

crédit de transcription
00:04.000 --> 00:05.000
Transcrit par Célestes&trade;
`, "This is a test. That's an, an, that's an egg!\nTranscrit par Célestes™"},
		{"1.4 classes and languages", `WEBVTT

04:02.500 --> 04:05.000
J'ai commencé à l'âge de 13, 14 ans

04:05.001 --> 04:07.800
Sur les <i.foreignphrase><lang en>top bars</lang></i>, ici
`, "J'ai commencé à l'âge de 13, 14 ans Sur les top bars, ici"},
		{"1.4 voices with classes", `WEBVTT

00:00.000 --> 00:02.000
<v.first.loud Ada>It's a blue queen!

00:02.000 --> 00:04.000
<v Ben>No way!

00:04.000 --> 00:06.000
<v Ada>Hee!</v> <i>laughter</i>
`, "It's a blue queen! No way! Hee! laughter"},
		{"1.4 regions", `WEBVTT

REGION
id:fred
width:40%
lines:3
regionanchor:0%,100%
viewportanchor:10%,90%
scroll:up

00:00:00.000 --> 00:00:20.000 region:fred align:left
<v Ada>Hi, my name is Ada

00:00:02.500 --> 00:00:22.500 region:bill align:right
<v Ben>Hi, I'm Ben
`, "Hi, my name is Ada Hi, I'm Ben"},
		{"cues not in the order of their start", `WEBVTT

00:05.000 --> 00:06.000
second

00:01.000 --> 00:02.000
first
`, "first\nsecond"},
		{"a comment over several lines, hours of three digits, references", "WEBVTT - a title\n\nNOTE\none line\nanother\n\n100:00:00.000 --> 100:00:01.000\n2 &lt; 3 &amp;&nbsp;4&lrm;\n", "2 < 3 & 4"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { wantText(t, "walk.vtt", c.src, c.want) })
	}
}

// Vectors of the web platform tests for WebVTT, "webvtt/parsing/file-parsing"
// in web-platform-tests/wpt (BSD-3-Clause): newlines, arrows, ids,
// whitespace-chars, signature-bom.
func TestWebPlatformVectors(t *testing.T) {
	const at = "00:00:00.000 --> 00:00:01.000"
	t.Run("newlines", func(t *testing.T) {
		wantText(t, "n.vtt", "WEBVTT\n\ncr\r"+at+"\rtext1\r\rlf\n"+at+"\ntext2\n\ncrlf\r\n"+at+"\r\ntext3\r\n\r\nlfcr\n\r"+at+"\n\rtext4", "text1 text2 text3")
	})
	t.Run("arrows", func(t *testing.T) {
		text, _, warnings := read(t, "a.vtt", "WEBVTT\n\n-->\n"+at+"\ntext1\nfoo-->\n"+at+"\ntext2\n-->foo\n"+at+"\ntext3\n--->\n"+at+"\ntext4\n-->-->\n"+at+"\ntext5\n"+at+"\ntext6\n\n00:00:00.000 -a -->\n")
		if want := "text1 text2 text3 text4 text5 text6"; text != want {
			t.Errorf("text %q, want %q", text, want)
		}
		if len(warnings) != 6 {
			t.Errorf("%d warnings, want one for each of the 6 broken arrows: %v", len(warnings), warnings)
		}
	})
	t.Run("ids", func(t *testing.T) {
		wantText(t, "i.vtt", "WEBVTT\n\n leading space\n"+at+"\ntext1\n\ntrailing space \n"+at+"\ntext2\n\n-- >\n"+at+"\ntext3\n\n->\n"+at+"\ntext4\n\n \n"+at+"\ntext5", "text1 text2 text3 text4 text5")
	})
	t.Run("whitespace-chars", func(t *testing.T) {
		wantText(t, "w.vtt", "WEBVTT\n\nspaces\n   00:00:00.000    -->  00:00:01.000 \n   text1\n\ntabs\n\t\t\t00:00:00.000\t\t\t\t-->\t\t00:00:01.000\t\ntext2\n\nform feed\n00:00:00.000\f-->\f00:00:01.000\f\ntext3\n", "text1 text2 text3")
	})
	t.Run("signature-bom", func(t *testing.T) {
		wantText(t, "noname", "\ufeffWEBVTT\n\n"+at+"\ntext1", "text1")
	})
}

// The example of "The SRT or Subrip subtitle format", VisualSubSync help,
// https://www.visualsubsync.org/help/srt.
func TestSubRipDescriptionExample(t *testing.T) {
	words := wantText(t, "walk.srt", `1
00:00:12,000 --> 00:00:15,123
This is the first subtitle

2
00:00:16,000 --> 00:00:18,000
Another subtitle demonstrating tags:
<b>bold</b>, <i>italic</i>, <u>underlined</u>
<font color="#ff0000">red text</font>

3
00:00:20,000 --> 00:00:22,000  X1:40 X2:600 Y1:20 Y2:50
Another subtitle demonstrating position.
`, "This is the first subtitle Another subtitle demonstrating tags: bold, italic, underlined red text\nAnother subtitle demonstrating position.")
	last := words[len(words)-1]
	if last.To != 22 {
		t.Errorf("the last word ends at %v, want 22", last.To)
	}
}

func TestSubRipAsItIsFound(t *testing.T) {
	cases := []struct{ name, src, want string }{
		{"dots, short fractions, no index", "00:00:01.5 --> 00:00:02.75\nbar four\n\n0:00:03 --> 0:00:04\neggs", "bar four eggs"},
		{"no empty line between cues", "1\n00:00:01,000 --> 00:00:02,000\nbar\n2\n00:00:02,000 --> 00:00:03,000\n4\n3\n00:00:03,000 --> 00:00:04,000\neggs", "bar 4 eggs"},
		{"position code and mark in front", "\ufeff1\r\n00:00:01,000 --> 00:00:02,000\r\n{\\an8}bar four\r\n", "bar four"},
		{"a less-than that is no tag", "1\n00:00:01,000 --> 00:00:02,000\ntemp < 20 > 10", "temp < 20 > 10"},
		{"marks of noise", "1\n00:00:01,000 --> 00:00:02,000\n[BLANK_AUDIO]\n\n2\n00:00:02,000 --> 00:00:03,000\n(wind blowing)\n\n3\n00:00:03,000 --> 00:00:04,000\nbar (four)", "bar (four)"},
		{"escape sequences", "1\n00:00:01,000 --> 00:00:02,000\nbar\x1b[2J four\x00", "bar four"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) { wantText(t, "walk.srt", c.src, c.want) })
	}
}

func TestWordTimesOfCues(t *testing.T) {
	t.Run("spread by letters", func(t *testing.T) {
		text, words, _ := read(t, "a.srt", "00:00:10,000 --> 00:00:12,000\nbar seven")
		wantTimes(t, text, words, "bar 10.00-10.75\nseven 10.75-12.00")
	})
	t.Run("times inside the cue", func(t *testing.T) {
		text, words, _ := read(t, "a.vtt", "WEBVTT\n\n00:10.000 --> 00:14.000\nbar <00:11.000><c> four</c> <00:13.500>eggs")
		wantTimes(t, text, words, "bar 10.00-11.00\nfour 11.00-13.50\neggs 13.50-14.00")
	})
	t.Run("a time outside the cue is ignored", func(t *testing.T) {
		text, words, _ := read(t, "a.vtt", "WEBVTT\n\n00:10.000 --> 00:12.000\nab <00:40.000>cd")
		wantTimes(t, text, words, "ab 10.00-11.00\ncd 11.00-12.00")
	})
}

func TestPauses(t *testing.T) {
	src := func(next string) string {
		return "WEBVTT\n\n00:01.000 --> 00:02.000\nbar four\n\n" + next + " --> 00:09.000\neggs\n"
	}
	if text, _, _ := read(t, "a.vtt", src("00:02.900")); text != "bar four eggs" {
		t.Errorf("a pause of 0.9 s: %q", text)
	}
	if text, _, _ := read(t, "a.vtt", src("00:03.000")); text != "bar four\neggs" {
		t.Errorf("a pause of 1 s: %q", text)
	}
}

func TestBrokenCueIsNamedAndTheRestGoesOn(t *testing.T) {
	text, words, warnings := read(t, "walk.vtt", "WEBVTT\n\n00:01.000 --> 00:02.000\nbar four\n\n00:0x.000 --> 00:03.000\neggs\n\n00:03.000 --> 00:04.000\nbar five\n\n00:61.000 --> 00:04.000\n\n00:05.000 -->\n")
	if text != "bar four eggs\nbar five" {
		t.Errorf("text %q", text)
	}
	wantTimes(t, text, words, "bar 1.00-1.43\nfour 1.43-2.00\nbar 3.00-3.43\nfive 3.43-4.00")
	want := []string{
		`walk.vtt:6: "00:0x.000" is no time like 00:01:02.500; its words are kept without seconds`,
		`walk.vtt:12: "00:61.000" is no time like 00:01:02.500; the cue has no words`,
		`walk.vtt:14: the end time is missing; the cue has no words`,
	}
	if got := fmt.Sprint(errors.Join(warnings...)); got != strings.Join(want, "\n") {
		t.Errorf("warnings\n%s\nwant\n%s", got, strings.Join(want, "\n"))
	}
}

func TestEncodings(t *testing.T) {
	src := "WEBVTT\n\n00:01.000 --> 00:02.000\nbar four 17°\n"
	for name, mark := range map[string]struct{ lo, hi int }{"little endian": {0, 8}, "big endian": {8, 0}} {
		t.Run("UTF-16 "+name, func(t *testing.T) {
			var data []byte
			for _, u := range append([]uint16{0xfeff}, utf16.Encode([]rune(src))...) {
				data = append(data, byte(u>>mark.lo), byte(u>>mark.hi))
			}
			wantText(t, "walk", string(data), "bar four 17°")
			if !IsTranscript("walk", data[:33]) {
				t.Error("the beginning is not taken for a transcript")
			}
		})
	}
	_, _, _, err := ReadTranscript("old.srt", strings.NewReader("1\n00:00:01,000 --> 00:00:02,000\n17\xb0\n"))
	if !errors.Is(err, ErrEncoding) || !strings.HasPrefix(err.Error(), "old.srt:3: ") {
		t.Errorf("an old encoding: %v", err)
	}
}

func TestNotATranscript(t *testing.T) {
	for _, src := range []string{"", "Hive three. Bar four eggs.", "{}", "[1,2]", `{"schema":"barwise/1","hive":"3"}`, "bar 4 --> bar 5", "\x00\x01\x02"} {
		if _, _, _, err := ReadTranscript("note.txt", strings.NewReader(src)); !errors.Is(err, ErrNotTranscript) {
			t.Errorf("%q: %v", src, err)
		}
		if IsTranscript("note.txt", []byte(src)) {
			t.Errorf("%q is taken for a transcript", src)
		}
	}
	for _, src := range []string{"WEBVTT", "WEBVTT\n\n00:01.000 --> 00:02.000\n\n"} {
		if _, _, _, err := ReadTranscript("a.vtt", strings.NewReader(src)); !errors.Is(err, ErrNoWords) {
			t.Errorf("%q: %v", src, err)
		}
	}
	if !IsTranscript("A.SRT", []byte("garbage")) {
		t.Error("a file named .srt is to be read as one, so that its faults are named")
	}
}

func TestJSONForms(t *testing.T) {
	files := []struct{ file, text, times string }{
		{"segments-words.json", "Bar four, capped brood.\nNext one", "Bar 0.00-0.32\nfour, 0.32-0.70\ncapped 0.84-1.20\nbrood. 1.20-1.60\nNext 3.10-3.40\none 3.40-3.62"},
		{"segments.json", "Bar four.\nEggs.", "Bar 0.00-0.75\nfour. 0.75-2.00\nEggs. 4.00-5.00"},
		{"transcription-tokens.json", "supersedure cells", "supersedure 0.10-0.90\ncells 0.90-1.30"},
		{"results.json", "bar four\neggs", "bar 0.10-0.40\nfour 0.40-0.80\neggs 2.30-2.70"},
		{"lines.json", "bar and four\neggs", "bar 0.34-0.55\nand 0.55-0.62\nfour 0.62-0.90\neggs 3.11-3.60"},
		{"words.json", "bar four", "bar 0.10-0.40\nfour 0.40-0.80"},
		{"alternatives.json", "bar four", "bar 1.30-1.40\nfour 1.40-1.90"},
	}
	for _, f := range files {
		t.Run(f.file, func(t *testing.T) {
			data, err := os.ReadFile("testdata/transcripts/" + f.file)
			if err != nil {
				t.Fatal(err)
			}
			if !IsTranscript("noname", data[:min(len(data), 512)]) {
				t.Error("the beginning is not taken for a transcript")
			}
			words := wantText(t, "noname", string(data), f.text)
			wantTimes(t, f.text, words, f.times)
		})
	}
}

func TestJSONConfidence(t *testing.T) {
	_, words, _ := read(t, "a.json", `[{"word":"bar","start":0,"end":1,"conf":0.25},{"word":"four","start":1,"end":2,"conf":1.0001},{"word":"eggs","start":2,"end":3}]`)
	for i, want := range []float64{0.25, 1, 0} {
		if words[i].Confidence != want {
			t.Errorf("word %d: confidence %v, want %v", i, words[i].Confidence, want)
		}
	}
	_, words, _ = read(t, "a.json", `{"transcription":[{"offsets":{"from":0,"to":900},"text":" uncapped","tokens":[{"text":" unc","offsets":{"from":0,"to":300},"p":0.9},{"text":"apped","offsets":{"from":300,"to":900},"p":0.4}]}]}`)
	if len(words) != 1 || words[0].Confidence != 0.4 || words[0].To != 0.9 {
		t.Errorf("two pieces of a word: %+v, want one word as sure as its least sure piece", words)
	}
}

func TestBrokenJSON(t *testing.T) {
	text, _, warnings := read(t, "a.json", "{\"result\":[{\"word\":\"bar\",\"start\":0,\"end\":1,\"conf\":1}]}\n{\"result\":[{\"word\":\"fo")
	if text != "bar" || len(warnings) != 1 || !strings.HasPrefix(warnings[0].Error(), "a.json:2: the JSON that begins here breaks off") {
		t.Errorf("%q %v", text, warnings)
	}
	_, _, warnings, err := ReadTranscript("a.json", strings.NewReader(`{"text":`))
	if !errors.Is(err, ErrNoWords) || len(warnings) != 1 {
		t.Errorf("%v %v", warnings, err)
	}
}

// FuzzReadTranscript holds the promises about spans for any input.
func FuzzReadTranscript(f *testing.F) {
	f.Add("a.vtt", "WEBVTT\n\n00:01.000 --> 00:02.000\nbar <00:01.500>four &amp; <v Ada>five\n")
	f.Add("a.srt", "1\n00:00:01,000 --> 00:00:02,000\n{\\an8}bär\n\n2\n00:00:0 --> x\nfive")
	f.Add("", `[{"word":" b","start":"1.5s","end":2,"conf":2},{"word":"är","b":1e300,"d":-4}]`)
	f.Add("", `{"segments":[{"text":" a","tokens":[{"t":"<s>"}]}],"result":[]}`)
	f.Fuzz(func(t *testing.T, name, src string) {
		text, words, _, err := ReadTranscript(name, strings.NewReader(src))
		if err != nil && text != "" {
			t.Error("text beside an error")
		}
		end := 0
		for _, w := range words {
			if w.Span[0] < end || w.Span[1] <= w.Span[0] || w.Span[1] > len(text) {
				t.Fatalf("span %v behind %d in %d bytes", w.Span, end, len(text))
			}
			word := text[w.Span[0]:w.Span[1]]
			if strings.ToValidUTF8(word, "") != word || strings.ContainsAny(word, " \n\t") {
				t.Fatalf("span %v is not one word on rune edges: %q", w.Span, word)
			}
			if !(w.From >= 0 && w.From <= w.To && !math.IsInf(w.To, 0)) || !(w.Confidence >= 0 && w.Confidence <= 1) {
				t.Fatalf("times or confidence out of order: %+v", w)
			}
			end = w.Span[1]
		}
		if strings.ContainsFunc(text, func(r rune) bool { return r < ' ' && r != '\n' || r == 0x7f }) {
			t.Fatalf("control characters in %q", text)
		}
	})
}
