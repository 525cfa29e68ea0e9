package command

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/cmd/barwise/demo"
	"barwise/index/indextest"
)

// The aims that the figures are given beside.
const (
	firstFrameAim = 100 * time.Millisecond
	keystrokeAim  = 16 * time.Millisecond // a frame at 60 a second
)

// thousandWaiting is a folder in which a thousand inspections wait: those of the
// demonstration's notes, again and again with another last line.
func thousandWaiting(b *testing.B) (dir string) {
	b.Helper()
	dir = b.TempDir()
	s := indextest.Reopen(b, dir)
	defer s.Close()
	parser, err := parserFor(s)
	if err != nil {
		b.Fatal(err)
	}
	files, err := fs.Glob(demo.Notes, "notes/*.txt")
	if err != nil {
		b.Fatal(err)
	}
	for n, waiting := 0, 0; waiting < 1000; n++ {
		text, err := fs.ReadFile(demo.Notes, files[n%len(files)])
		if err != nil {
			b.Fatal(err)
		}
		note := indextest.NoteOf(fmt.Sprintf("%s\nPage %d of the book.\n", text, n))
		note.Given = time.Date(2026, 1, 1, 12, n, 0, 0, time.UTC)
		records, err := s.Take(note, readNote(parser, &note))
		if err != nil {
			b.Fatal(err)
		}
		waiting += len(records)
	}
	return dir
}

// BenchmarkReviewFirstFrame is the whole process, from its start to the drawn
// list of a thousand inspections that wait: the fastest, which other programs
// disturbed least, and the median. Beside them, in the same run, stand the aim
// and a process of the same program that does nothing.
func BenchmarkReviewFirstFrame(b *testing.B) {
	dir := thousandWaiting(b)
	var review, nothing []time.Duration
	for b.Loop() {
		review = append(review, untilDrawn(b, dir, "inspections wait"))
		nothing = append(nothing, untilDrawn(b, "", "begins"))
	}
	slices.Sort(review)
	slices.Sort(nothing)
	half := len(review) / 2
	b.ReportMetric(review[0].Seconds()*1000, "fastest-ms")
	b.ReportMetric(review[half].Seconds()*1000, "median-ms")
	b.ReportMetric(review[0].Seconds()/firstFrameAim.Seconds(), "fastest-x-aim")
	b.ReportMetric(review[half].Seconds()/nothing[half].Seconds(), "median-x-start")
}

// untilDrawn starts a review as a process of its own and returns how long it
// took until it had drawn the text.
func untilDrawn(b *testing.B, dir, text string) time.Duration {
	b.Helper()
	cmd := reviewProcess(dir)
	cmd.Env = append(cmd.Env, reviewDraws+"=yes")
	out, err := cmd.StdoutPipe()
	if err != nil {
		b.Fatal(err)
	}
	keys, err := cmd.StdinPipe()
	if err != nil {
		b.Fatal(err)
	}
	began := time.Now()
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	var all []byte
	block := make([]byte, 1<<16)
	for !bytes.Contains(all, []byte(text)) {
		n, err := out.Read(block)
		if all = append(all, block[:n]...); err != nil {
			b.Fatalf("%v, drawn was %q", err, all)
		}
	}
	took := time.Since(began)
	_, _ = io.WriteString(keys, "\x03") // one that does nothing is gone already
	_, _ = io.Copy(io.Discard, out)
	_ = cmd.Wait() // how it ends is no part of the figure
	return took
}

// longNote is a dictated note of 250 words.
func longNote() string {
	words := strings.Fields(strings.Repeat(twelveBars+" ", 5))
	return strings.Join(words[:250], " ")
}

// BenchmarkReviewKeystroke is from a key to its frame on the terminal, with the
// real parser and store and the wait for the next beat of the screen: a note of
// 250 words typed in anew, which every key has read again; moving on its sheet;
// answering and taking that back. The 95th percentile stands beside the aim.
func BenchmarkReviewKeystroke(b *testing.B) {
	for _, c := range []struct {
		name        string
		begin, keys []string
	}{
		{"typing", nil, []string{"x", "y", "\x7f", "\x7f"}},
		{"moving", []string{"\x13"}, []string{"\x1b[B", "\x1b[A"}},
		{"answering", []string{"\x13"}, []string{" ", "\x1a"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := indextest.MustOpen(b)
			r := begin(b, s, reviewOptions{blank: true})
			r.waits("What it says so far")
			r.press(longNote())
			r.waits("and ")
			for _, key := range c.begin {
				r.press(key)
				r.waits("To check")
			}
			go drain(r)
			r.settle()
			var times []time.Duration
			for i := 0; b.Loop(); i++ {
				began := time.Now()
				r.press(c.keys[i%len(c.keys)])
				select {
				case <-r.screen.frames:
				case <-time.After(time.Minute):
					b.Fatal("the key drew nothing")
				}
				times = append(times, time.Since(began))
				r.settle()
			}
			r.leave()
			slices.Sort(times)
			p95 := times[len(times)*95/100]
			b.ReportMetric(p95.Seconds()*1000, "p95-ms")
			b.ReportMetric(p95.Seconds()/keystrokeAim.Seconds(), "p95-x-aim")
		})
	}
}

// settle waits until the screen has been still for some frames.
func (s *session) settle() {
	for {
		select {
		case <-s.screen.frames:
		case <-time.After(40 * time.Millisecond):
			return
		}
	}
}

// drain takes what the review saves.
func drain(s *session) {
	for range s.saved {
	}
}
