package parse

import (
	"barwise/colony"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func BenchmarkZZ(b *testing.B) {
	paths, _ := filepath.Glob("../testdata/notes/*.gold")
	var notes []colony.Note
	n := 0
	for _, p := range paths {
		for _, c := range readGold(b, p) {
			notes = append(notes, colony.Note{Text: c.note, Given: c.at})
			n += len(c.note)
		}
	}
	p, _ := New(colony.OwnWords{})
	b.SetBytes(int64(n))
	b.ReportAllocs()
	for b.Loop() {
		for i := range notes {
			p.Parse(&notes[i])
		}
	}
}
func BenchmarkZZBig(b *testing.B) {
	paths, _ := filepath.Glob("../testdata/notes/*.gold")
	var sb strings.Builder
	for sb.Len() < 1<<20 {
		for _, p := range paths {
			for _, c := range readGold(b, p) {
				sb.WriteString(c.note + "\n")
			}
		}
	}
	p, _ := New(colony.OwnWords{})
	note := colony.Note{Text: sb.String(), Given: time.Now()}
	b.SetBytes(int64(sb.Len()))
	b.ReportAllocs()
	for b.Loop() {
		p.Parse(&note)
	}
}
func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		New(colony.OwnWords{})
	}
}
