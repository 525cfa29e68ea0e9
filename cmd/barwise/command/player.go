package command

import (
	"context"
	"path/filepath"
	"sync"

	"barwise/colony"
	"barwise/voice"
)

// player plays what was said, one stretch at a time, beside the review.
type player struct {
	dataDir string
	mu      sync.Mutex
	stop    context.CancelFunc // of what is playing, or nil
}

// Play plays a stretch, to its end or until another one or Stop ends it; what
// was playing stops.
func (p *player) Play(rec colony.Recording, from, to, tempo float64) error {
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	p.instead(stop)
	file := rec.File
	if !rec.Linked {
		file = filepath.Join(p.dataDir, file)
	}
	if err := voice.Play(ctx, file, from, to, tempo); ctx.Err() == nil {
		return err
	}
	return nil
}

// Stop ends what is playing.
func (p *player) Stop() { p.instead(nil) }

// instead ends what is playing and remembers how to end what comes next.
func (p *player) instead(stop context.CancelFunc) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.stop != nil {
		p.stop()
	}
	p.stop = stop
}
