package voice

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"sync"

	"barwise/colony"
)

// Heard is what was recognised in a recording.
type Heard struct {
	Text     string             // as the parser reads it, empty where nobody spoke
	Words    []colony.TimedWord // of the text, with seconds of the recording
	Seconds  float64            // length of the recording
	Warnings []error            // what was wrong and could be passed over
}

// Errors of recognition beside those of the file and the recogniser.
var (
	// ErrNoSpeech comes with an empty result: silence, or noise alone.
	ErrNoSpeech = errors.New("nobody is heard speaking in it")
	// ErrIncomplete comes with a result that lacks some parts.
	ErrIncomplete = errors.New("parts of the recording were not recognised")
)

// Options of [Recognise]. The zero value works.
type Options struct {
	Cache    string         // folder for results of parts, so that a second run takes up where one was stopped; none where empty
	Workers  int            // parts at a time; 0 takes 2
	Voice    string         // file for what is learned of the voice in this recording; not kept where empty
	Known    []string       // such files of other recordings of the same voice
	Progress func(Progress) // called after each part, never by two at once
}

func (o *Options) workers() int {
	if o.Workers < 1 {
		return 2
	}
	return o.Workers
}

// Progress says how far recognition has come.
type Progress struct {
	Done  float64 // seconds of the recording that are done
	Total float64 // its length, 0 while that is not known
	Parts int     // parts that are done
	Kept  int     // of these, how many were taken from an earlier run
}

// Recognise hears a recording: split at its pauses, several parts at a time.
// The whole is never in memory.
//
// A part that fails does not lose the others: the result then comes with
// [ErrIncomplete], which names the seconds and the reason, and parts that are
// done are kept in the cache. Where the first parts all fail, or the context
// ends, it stops early. Silence gives an empty result and [ErrNoSpeech].
func Recognise(ctx context.Context, path string, r Recogniser, o Options) (*Heard, error) {
	rec, err := openRecording(ctx, path)
	if err != nil {
		return nil, err
	}
	defer rec.close()
	voices, err := os.MkdirTemp("", "barwise-voice-")
	if err != nil {
		return nil, fmt.Errorf("%s: no room for what is learned of the voice: %w", path, err)
	}
	defer os.RemoveAll(voices)
	r, notKept, err := fit(ctx, path, voices, r, o)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	run, err := newRun(r, o, rec.seconds)
	if err != nil {
		return nil, err
	}
	defer run.close()
	seconds, err := run.all(ctx, rec)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	heard := run.result(seconds)
	if notKept != nil {
		heard.Warnings = append(heard.Warnings, notKept)
	}
	if w := rec.warning(); w != nil {
		heard.Warnings = append(heard.Warnings, w)
	}
	switch {
	case seconds == 0:
		return heard, fmt.Errorf("%s: %w", path, ErrNoSound)
	case len(run.failed) > 0:
		return heard, fmt.Errorf("%s: %w: %w", path, ErrIncomplete, errors.Join(run.failed...))
	case heard.Text == "":
		return heard, fmt.Errorf("%s: %w", path, ErrNoSpeech)
	}
	return heard, nil
}

// run is the recognition of one recording.
type run struct {
	rec      Recogniser
	store    *partStore
	workers  int
	progress func(Progress)

	mu       sync.Mutex
	state    Progress
	parts    []partWords
	failed   []error
	warnings []error
}

// partWords are the words of one part, in seconds of the recording.
type partWords struct {
	from  float64
	words []Word
}

func newRun(r Recogniser, o Options, total float64) (*run, error) {
	store, err := newPartStore(o.Cache, r.Key())
	if err != nil {
		return nil, err
	}
	return &run{rec: r, store: store, workers: o.workers(), progress: o.Progress, state: Progress{Total: total}}, nil
}

func (r *run) close() { r.store.close() }

// giveUpAfter is how many parts may fail before one was recognised.
const giveUpAfter = 3

// all splits the recording and has the parts recognised. It gives the seconds
// that it read. The error is one after which nothing more can be had.
func (r *run) all(ctx context.Context, rec *recording) (float64, error) {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	parts := make(chan soundPart)
	var wg sync.WaitGroup
	for range r.workers {
		wg.Go(func() {
			for p := range parts {
				if err := r.part(ctx, p); err != nil {
					stop(err)
				}
			}
		})
	}
	s := splitter{emit: func(p soundPart) error {
		select {
		case parts <- p:
			return nil
		case <-ctx.Done():
			return context.Cause(ctx)
		}
	}}
	err := pour(rec, &s)
	close(parts)
	wg.Wait()
	if cause := context.Cause(ctx); err == nil || cause != nil {
		err = cause
	}
	return s.seconds, err
}

// pour reads a recording into a splitter.
func pour(rec *recording, s *splitter) error {
	for {
		samples, err := rec.pull()
		if e := s.push(samples); e != nil {
			return e
		}
		if errors.Is(err, io.EOF) {
			return s.end()
		}
		if err != nil {
			return err
		}
	}
}

// part recognises one part, or finds what was recognised before. Its error
// ends the whole run.
func (r *run) part(ctx context.Context, p soundPart) error {
	if ctx.Err() != nil {
		return nil
	}
	to := p.to()
	length := to - p.from
	p.trim()
	var words []Word
	var kept bool
	var err error
	if len(p.samples) > 0 {
		words, kept, err = r.store.recognise(ctx, r.rec, &p)
	}
	if ctx.Err() != nil {
		return nil // stopped, not failed
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	var storing *storeError
	switch {
	case errors.As(err, &storing):
		r.warnings = append(r.warnings, err)
	case err != nil:
		r.failed = append(r.failed, fmt.Errorf("seconds %.0f to %.0f: %w", p.from, to, err))
		if len(r.failed) >= giveUpAfter && len(r.parts) == 0 {
			return fmt.Errorf("%w: %w", ErrIncomplete, err)
		}
		return nil
	}
	r.parts = append(r.parts, partWords{p.from, spokenWords(words, p.speech)})
	r.state.Done += length
	r.state.Parts++
	if kept {
		r.state.Kept++
	}
	if r.progress != nil {
		r.progress(r.state)
	}
	return nil
}

// result joins the parts in the order of the recording.
func (r *run) result(seconds float64) *Heard {
	slices.SortFunc(r.parts, func(a, b partWords) int { return cmp.Compare(a.from, b.from) })
	var pieces []piece
	for _, p := range r.parts {
		for _, w := range p.words {
			pieces = append(pieces, piece{text: w.Text, from: w.From, to: w.To, timed: true, confidence: w.Confidence})
		}
	}
	h := &Heard{Seconds: seconds, Warnings: r.warnings}
	h.Text, h.Words = join(pieces)
	return h
}
