package parse

import (
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"barwise/colony"
)

// mixedNotes are the notes of the corpus, typed, dictated and told, over and
// over until there are at least size bytes of them.
func mixedNotes(b *testing.B, size int) []*colony.Note {
	b.Helper()
	paths, err := filepath.Glob("../testdata/notes/*.gold")
	if err != nil || len(paths) == 0 {
		b.Fatalf("no notes to read: %v", err)
	}
	var all []*colony.Note
	for _, path := range paths {
		for _, c := range readGold(b, path) {
			all = append(all, &colony.Note{Text: c.note, Given: c.at})
		}
	}
	var out []*colony.Note
	for i, total := 0, 0; total < size; i++ {
		out = append(out, all[i%len(all)])
		total += len(all[i%len(all)].Text)
	}
	return out
}

func bytesOf(notes []*colony.Note) int {
	n := 0
	for _, note := range notes {
		n += len(note.Text)
	}
	return n
}

// BenchmarkParse reads a megabyte of mixed notes, one after another, on one
// core.
func BenchmarkParse(b *testing.B) {
	notes := mixedNotes(b, 1<<20)
	p := mustNew(b)
	b.SetBytes(int64(bytesOf(notes)))
	b.ReportAllocs()
	for b.Loop() {
		for _, note := range notes {
			p.Parse(note)
		}
	}
}

// BenchmarkSlope reads notes of 10 KB to 10 MB, each a single note; ns/byte
// must stay the same for the cost to be linear.
func BenchmarkSlope(b *testing.B) {
	p := mustNew(b)
	for _, size := range []int{10_000, 100_000, 1_000_000, 10_000_000} {
		b.Run(fmt.Sprintf("%dKB", size/1000), func(b *testing.B) {
			note := oneNote(b, size)
			b.SetBytes(int64(len(note.Text)))
			b.ReportAllocs()
			for b.Loop() {
				p.Parse(note)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(note.Text)), "ns/byte")
		})
	}
}

// BenchmarkRepeated reads a page and ten of one line again and again: what is sought among all lines, or all
// words before, shows in ns/byte that grow.
func BenchmarkRepeated(b *testing.B) {
	p := mustNew(b)
	for _, of := range [...]struct{ what, line string }{{"bars in a list", "4 H\n5 H\n"}, {"plants", "clover "}, {"introductions", "this is banjo bar one eggs\n"}} {
		for _, size := range []int{60_000, 600_000} {
			note := &colony.Note{Text: strings.Repeat(of.line, size/len(of.line)), Given: may14}
			b.Run(fmt.Sprintf("%s/%dKB", of.what, size/1000), func(b *testing.B) {
				for b.Loop() {
					p.Parse(note)
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(note.Text)), "ns/byte")
			})
		}
	}
}

func oneNote(b *testing.B, size int) *colony.Note {
	var text strings.Builder
	for _, note := range mixedNotes(b, size) {
		text.WriteString(note.Text)
	}
	return &colony.Note{Text: text.String(), Given: may14}
}

// BenchmarkOneLine reads a note of 5 MB without a line break.
func BenchmarkOneLine(b *testing.B) {
	p := mustNew(b)
	note := oneNote(b, 5_000_000)
	note.Text = strings.ReplaceAll(note.Text, "\n", " ")
	b.SetBytes(int64(len(note.Text)))
	for b.Loop() {
		p.Parse(note)
	}
}

// BenchmarkPeakHeap reports how much of the heap a note of 10 MB takes at most
// while it is read, beside the note itself.
func BenchmarkPeakHeap(b *testing.B) {
	p := mustNew(b)
	note := oneNote(b, 10_000_000)
	var peak uint64
	for b.Loop() {
		peak = max(peak, peakHeap(func() { p.Parse(note) }))
	}
	b.ReportMetric(float64(peak)/1e6, "peak-MB")
}

// peakHeap is the largest growth of the heap seen while work runs.
func peakHeap(work func()) uint64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	before := m.HeapAlloc
	var done atomic.Bool
	var peak uint64
	var looking sync.WaitGroup
	looking.Go(func() {
		tick := time.NewTicker(2 * time.Millisecond)
		defer tick.Stop()
		for !done.Load() {
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			peak = max(peak, m.HeapAlloc-min(before, m.HeapAlloc))
			<-tick.C
		}
	})
	work()
	done.Store(true)
	looking.Wait()
	return peak
}

// BenchmarkNew measures what every start of the program pays for the rules.
func BenchmarkNew(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		mustNew(b)
	}
}

// BenchmarkFirstNote measures a start and the reading of one note, as by a
// command that reads a single file.
func BenchmarkFirstNote(b *testing.B) {
	note := mixedNotes(b, 1)[0]
	for b.Loop() {
		mustNew(b).Parse(note)
	}
}
