package voice

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"sync"
)

// speaker is how somebody speaks, as far as the recogniser can be told of it
// beforehand.
type speaker struct {
	// Warp stretches the frequencies: above 1 for a short vocal tract, as women
	// and children have, below 1 for a long one (L. Lee and R. Rose, "A frequency
	// warping approach to speaker normalization", IEEE Trans. Speech and Audio
	// Processing 6(1), 1998). 0 where the speaker is not known.
	Warp    float64
	British bool // words may be said the British way, too
}

// plainSpeaker is whom the acoustic model was made for.
var plainSpeaker = speaker{Warp: 1}

// warps are the factors that are tried. On the way from one to another the
// likelihood has more than one peak, so that all are.
var warps = []float64{0.9, 1, 1.1, 1.2}

// hearkenSeconds is how much speech is heard to tell the speaker. With 8 one of
// three formant voices was taken for another kind in half of its notes.
const hearkenSeconds = 12.0

// likeliest gives the speaker under whom the sound is likeliest: the warp first,
// then the accent.
func likeliest(score func(...speaker) ([]float64, error)) (speaker, error) {
	var tried []speaker
	for _, w := range warps {
		tried = append(tried, speaker{Warp: w})
	}
	scores, err := score(tried...)
	if err != nil {
		return speaker{}, err
	}
	top := slices.Max(scores)
	best := tried[slices.Index(scores, top)]
	british := speaker{best.Warp, true}
	if scores, err = score(british); err != nil {
		return speaker{}, err
	}
	if scores[0] > top {
		return british, nil
	}
	return best, nil
}

// tellSpeaker hears the first seconds of speech in a recording as several
// speakers might have said them, and gives the likeliest.
func tellSpeaker(ctx context.Context, path string, f fitter, o Options) (speaker, error) {
	store, err := newPartStore("", "")
	if err != nil {
		return speaker{}, err
	}
	defer store.close()
	parts, err := firstParts(ctx, path, store, hearkenSeconds)
	if err != nil || len(parts) == 0 {
		return plainSpeaker, err
	}
	free := make(chan struct{}, o.workers())
	return likeliest(func(speakers ...speaker) ([]float64, error) {
		scores, faults := make([]float64, len(speakers)), make([]error, len(speakers))
		var wg sync.WaitGroup
		for i, who := range speakers {
			wg.Go(func() {
				free <- struct{}{}
				defer func() { <-free }()
				as := f.as(who)
				for _, p := range parts {
					score, err := as.likelihood(ctx, p)
					scores[i] += score
					faults[i] = errors.Join(faults[i], err)
				}
			})
		}
		wg.Wait()
		return scores, errors.Join(faults...)
	})
}

// firstParts writes the parts that hold the first seconds of speech.
func firstParts(ctx context.Context, path string, store *partStore, seconds float64) ([]Part, error) {
	rec, err := openRecording(ctx, path)
	if err != nil {
		return nil, err
	}
	defer rec.close()
	var parts []Part
	s := splitter{emit: func(p soundPart) error {
		p.trim()
		p.samples = p.samples[:min(len(p.samples), int(seconds*SampleRate))]
		if len(p.samples) == 0 {
			return nil
		}
		file, err := store.write(fmt.Sprint(len(parts)), wavBytes(p.levelled()))
		if err != nil {
			return err
		}
		parts = append(parts, p.in(file))
		if seconds -= p.to() - p.from; seconds < 1 {
			return io.EOF
		}
		return nil
	}}
	if err := pour(rec, &s); err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	return parts, ctx.Err()
}
