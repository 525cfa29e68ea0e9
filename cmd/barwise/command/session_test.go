package command

import (
	"context"
	"io"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"barwise/colony"
	"barwise/index"
)

// session is a review under way: the real screen over a real store, keys going
// in one by one, waited on as a person does.
type session struct {
	tb     testing.TB
	keys   io.Writer
	screen drawn
	saved  chan colony.Record
	ended  chan error
	count  tally
}

// begin starts a review of what waits in the store.
func begin(tb testing.TB, s *index.Store, o reviewOptions) *session {
	in, keys := io.Pipe()
	r := &session{tb: tb, keys: keys, saved: make(chan colony.Record, 1), ended: make(chan error, 1)}
	r.screen.frames = make(chan struct{}, 1)
	a := &app{in: in, out: &r.screen, err: io.Discard, now: time.Now}
	go func() { r.ended <- a.reviewOf(context.Background(), s, saying{s, r.saved}, o) }()
	return r
}

// leave ends the review.
func (s *session) leave() {
	s.tb.Helper()
	s.press("\x03")
	if err := <-s.ended; err != nil {
		s.tb.Fatal(err)
	}
}

// press sends keys as a terminal does, each by itself.
func (s *session) press(keys ...string) {
	s.tb.Helper()
	for _, key := range keys {
		if _, err := io.WriteString(s.keys, key); err != nil {
			s.tb.Fatal(err)
		}
		s.count.keys++
	}
}

// drawn collects what the review draws, and tells of each frame.
type drawn struct {
	mu     sync.Mutex
	text   strings.Builder
	frames chan struct{}
}

func (d *drawn) Write(p []byte) (int, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	select {
	case d.frames <- struct{}{}:
	default:
	}
	return d.text.WriteString(ansi.Strip(string(p)))
}

// has reports whether one of the texts was drawn, and forgets what was drawn if
// so.
func (d *drawn) has(texts ...string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	all := d.text.String()
	if !slices.ContainsFunc(texts, func(text string) bool { return strings.Contains(all, text) }) {
		return false
	}
	d.text.Reset()
	return true
}

// waits until one of the texts was drawn since the last wait.
func (s *session) waits(texts ...string) {
	s.tb.Helper()
	late := time.After(time.Minute)
	for !s.screen.has(texts...) {
		select {
		case <-s.screen.frames:
		case <-late:
			s.tb.Fatalf("%q was not drawn", texts)
		}
	}
}

// saying is a store that passes on what it has kept.
type saying struct {
	*index.Store
	saved chan<- colony.Record
}

func (s saying) Save(r colony.Record) error {
	err := s.Store.Save(r)
	s.saved <- r
	return err
}
