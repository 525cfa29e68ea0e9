package tui

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// longNote is a note of 250 words on twelve bars, with four things to check.
func longNote() string {
	var b strings.Builder
	b.WriteString("Hive 3. Calm.")
	for bar := 1; bar <= 12; bar++ {
		doubt := ""
		if bar%3 == 0 {
			doubt = "maybe "
		}
		fmt.Fprintf(&b, " Bar %d %seggs, larvae and pollen on it, and I took my time with this one since it was so sunny.", bar, doubt)
	}
	words := strings.Fields(b.String())
	for len(words) < 250 {
		words = append(words, "fine")
	}
	return strings.Join(words[:250], " ")
}

// The benchmarks here are of the screen alone, with stand-ins for store and
// parser and at sizes that a test can set; the whole program's, beside their
// aims, are in cmd/barwise/command.

// BenchmarkFirstFrame is from nothing to the drawn list of 1,000 waiting.
func BenchmarkFirstFrame(b *testing.B) {
	notes := make([]string, 1000)
	for i := range notes {
		notes[i] = fmt.Sprintf("%s Hive %d.", longNote(), i%40+1)
	}
	k := take(b, notes...)
	th := newTheme(io.Discard, fullColour, onDark)
	for b.Loop() {
		d := &driver{tb: b, app: newApp(k, fakeReader{}, options(k), th)}
		d.run(d.app.Init())
		d.send(tea.WindowSizeMsg{Width: 160, Height: 50})
		if !strings.Contains(d.app.View(), "inspections wait") {
			b.Fatal("no list")
		}
	}
}

// BenchmarkKeystroke is from a key to its frame, with a note of 250 words; the
// 95th percentile is reported beside the mean.
func BenchmarkKeystroke(b *testing.B) {
	for _, c := range []struct {
		name  string
		begin []string
		keys  []string
	}{
		{"moving", []string{"enter"}, []string{"down"}},
		{"accepting", []string{"enter"}, []string{"space", "ctrl+z"}},
		{"correcting", []string{"enter"}, []string{"n", "backspace"}},
		{"words", []string{"enter", "ctrl+w"}, []string{"right"}},
		{"editing", []string{"enter", "ctrl+e"}, []string{"x", "backspace"}},
	} {
		for _, size := range [][2]int{{80, 24}, {160, 50}} {
			b.Run(fmt.Sprintf("%s/%d", c.name, size[0]), func(b *testing.B) {
				k := take(b, longNote(), longNote())
				d := newDriver(b, k, options(k), size[0], size[1])
				d.app.theme = newTheme(io.Discard, fullColour, onDark)
				d.press(c.begin...)
				var times []time.Duration
				for i := 0; b.Loop(); i++ {
					began := time.Now()
					d.press(c.keys[i%len(c.keys)])
					_ = d.app.View()
					times = append(times, time.Since(began))
				}
				slices.Sort(times)
				b.ReportMetric(float64(times[len(times)*95/100].Microseconds())/1000, "p95-ms")
			})
		}
	}
}
