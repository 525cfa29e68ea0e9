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
	failure error              // of the last stretch, told at the next
}

// Play starts a stretch and returns; what was playing stops. A player that
// could not play says why at the next call, since the first has returned by
// then.
func (p *player) Play(rec colony.Recording, from, to, tempo float64) error {
	p.Stop()
	p.mu.Lock()
	defer p.mu.Unlock()
	if err := p.failure; err != nil {
		p.failure = nil
		return err
	}
	file := rec.File
	if !rec.Linked {
		file = filepath.Join(p.dataDir, file)
	}
	ctx, stop := context.WithCancel(context.Background())
	p.stop = stop
	go func() {
		if err := voice.Play(ctx, file, from, to, tempo); err != nil && ctx.Err() == nil {
			p.mu.Lock()
			p.failure = err
			p.mu.Unlock()
		}
	}()
	return nil
}

// Stop ends what is playing.
func (p *player) Stop() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.stop != nil {
		p.stop()
		p.stop = nil
	}
}
