package voice

import (
	"context"
	"encoding/gob"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
)

// This file fits a recogniser to whoever speaks in a recording: its first
// minutes are heard once by the recogniser as it is, and the rest, beginning
// anew, by one whose acoustic model was moved towards that voice and
// microphone. What was learned of a voice can be kept, so that the keeper's
// next recording is heard by a recogniser that knows it from the start.
//
// In trials on six dictated notes by four formant voices (regress.go has the
// command), 143 of 737 words were wrong after three rounds of learning and 124
// after five, at a fifth more time.

// fitter is a recogniser that can be fitted to a voice.
type fitter interface {
	Recogniser
	// learn recognises a part and tells what its clear words say of the voice.
	learn(ctx context.Context, part Part) (*speech, error)
	// fitted gives the recogniser for a voice; what it needs is kept in a file.
	fitted(file string, s *speech) (fitter, error)
	// as gives the recogniser for a speaker of whom no speech is known.
	as(who speaker) fitter
	// likelihood tells how well the recogniser's best reading fits a part, as a
	// logarithm.
	likelihood(ctx context.Context, part Part) (float64, error)
}

// fitSeconds is how much of a recording is heard to fit the recogniser to it.
const fitSeconds = 120.0

// fit gives the recogniser fitted to the voice in a recording, where it can be.
// A recogniser that fails on the way is left as it is: it will tell why. What
// was learned and could not be kept is a warning.
func fit(ctx context.Context, path, dir string, r Recogniser, o Options) (fitted Recogniser, notKept, err error) {
	f, ok := r.(fitter)
	if !ok {
		return r, nil, nil
	}
	known := &speech{}
	for _, file := range o.Known {
		if s, err := readSpeech(file); err == nil {
			known.join(s)
		}
	}
	own, err := readSpeech(o.Voice)
	if err != nil {
		if own, err = learnVoice(ctx, path, dir, f, known, o); err != nil {
			return nil, nil, err
		}
		notKept = own.keep(o.Voice)
	}
	known.join(own)
	if known.empty() {
		return r, notKept, nil
	}
	fitted, err = f.fitted(filepath.Join(dir, "fitted"), known)
	return fitted, notKept, err
}

// clearVoice is the mean posterior of the words heard from which a voice is taken
// to be heard well enough as a plain speaker's. Of nine synthetic voices it left
// the five built from recordings and the American formant voice above (0.72 to
// 0.88), and the other three below (0.48 to 0.68).
const clearVoice = 0.7

// rounds is how often the first minutes are heard to learn a voice that is not
// heard clearly.
const rounds = 5

// learnVoice hears the first minutes, beginning with what is known of the voice.
// Where nothing is, and little was heard clearly, it tells the speaker and hears
// them again as that speaker's, then with what was learned.
func learnVoice(ctx context.Context, path, dir string, f fitter, known *speech, o Options) (*speech, error) {
	if !known.empty() {
		f, err := f.fitted(filepath.Join(dir, "known"), known)
		if err != nil {
			return nil, err
		}
		return learnFrom(ctx, path, f, o)
	}
	own, err := learnFrom(ctx, path, f, o)
	if err != nil || own.clarity() >= clearVoice {
		return own, err
	}
	who, err := tellSpeaker(ctx, path, f, o)
	if err != nil {
		return own, ctx.Err() // the plain speaker will do
	}
	f = f.as(who)
	for round := range rounds {
		if own, err = learnFrom(ctx, path, f, o); err != nil || own.empty() {
			return own, err
		}
		if round+1 < rounds {
			if f, err = f.fitted(filepath.Join(dir, fmt.Sprint("round", round)), own); err != nil {
				return nil, err
			}
		}
	}
	return own, nil
}

// learnFrom hears the first minutes of a recording.
func learnFrom(ctx context.Context, path string, f fitter, o Options) (*speech, error) {
	rec, err := openRecording(ctx, path)
	if err != nil {
		return nil, err
	}
	defer rec.close()
	store, err := newPartStore("", "")
	if err != nil {
		return nil, err
	}
	defer store.close()
	var learned []*speech // in the order of the parts, so that sums come out the same each time
	var mu sync.Mutex
	var wg sync.WaitGroup
	var failed atomic.Bool // what fails once is not waited for again
	free := make(chan struct{}, o.workers())
	s := splitter{emit: func(p soundPart) error {
		if p.from >= fitSeconds || failed.Load() {
			return io.EOF
		}
		p.trim()
		if len(p.samples) == 0 {
			return nil
		}
		free <- struct{}{}
		mu.Lock()
		i := len(learned)
		learned = append(learned, nil)
		mu.Unlock()
		wg.Go(func() {
			defer func() { <-free }()
			got, err := learnPart(ctx, f, store, &p, i)
			if err != nil {
				failed.Store(true)
				return
			}
			mu.Lock()
			defer mu.Unlock()
			learned[i] = got
		})
		return nil
	}}
	err = pour(rec, &s)
	wg.Wait()
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	sum := &speech{}
	for _, l := range learned {
		if l != nil {
			sum.join(l)
		}
	}
	return sum, ctx.Err()
}

func learnPart(ctx context.Context, f fitter, store *partStore, p *soundPart, i int) (*speech, error) {
	file, err := store.write(fmt.Sprint(i), wavBytes(p.levelled()))
	if err != nil {
		return nil, err
	}
	defer os.Remove(file)
	return f.learn(ctx, p.in(file))
}

// join adds what another recording told; what does not fit is left out.
func (s *speech) join(o *speech) {
	if len(s.Frames) == 0 {
		s.Speaker = o.Speaker
		s.Frames, s.Sums = make([]float32, len(o.Frames)), make([]float32, len(o.Sums))
	}
	if len(s.Frames) != len(o.Frames) || s.Speaker != o.Speaker {
		return // of another acoustic model, or heard another way
	}
	s.Words += o.Words
	s.Sureness += o.Sureness
	for i, n := range o.Frames {
		s.Frames[i] += n
	}
	for i, x := range o.Sums {
		s.Sums[i] += x
	}
}

// keep writes what was learned to a file, whole or not at all.
func (s *speech) keep(file string) error {
	if file == "" || s.empty() {
		return nil
	}
	if err := s.write(file); err != nil {
		return fmt.Errorf("what was learned of the voice could not be kept for another run: %w", err)
	}
	return nil
}

func (s *speech) write(file string) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return err
	}
	tmp := file + ".tmp"
	if err := writeFile(tmp, func(w io.Writer) error { return gob.NewEncoder(w).Encode(s) }); err != nil {
		return errors.Join(err, os.Remove(tmp))
	}
	return os.Rename(tmp, file)
}

var errNoVoice = errors.New("nothing is known of this voice")

// readSpeech reads what was kept.
func readSpeech(file string) (*speech, error) {
	if file == "" {
		return nil, errNoVoice
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	s := &speech{}
	if err := gob.NewDecoder(f).Decode(s); err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	if len(s.Frames)*dims != len(s.Sums) || s.Speaker == (speaker{}) {
		return nil, fmt.Errorf("%s: %w", file, errNoVoice)
	}
	return s, nil
}
