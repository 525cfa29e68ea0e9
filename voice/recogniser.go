package voice

import (
	"context"
	"errors"
	"slices"
)

// Word is one recognised word.
type Word struct {
	Text       string  `json:"text"`
	From       float64 `json:"from"` // seconds; of the part in a Recogniser's answer
	To         float64 `json:"to"`
	Confidence float64 `json:"confidence,omitempty"` // posterior, 0 to 1; 0 where none is given
}

// Part is a stretch of a recording for a recogniser: a WAV file of 16-bit
// samples at [SampleRate] in one channel.
type Part struct {
	File    string
	Seconds float64 // length
}

// Recogniser turns sound into words. It is used by several goroutines at once.
type Recogniser interface {
	// Recognise gives the words of a part in the order said, none where there
	// are none.
	Recognise(ctx context.Context, part Part) ([]Word, error)
	// Key names the recogniser with its model and settings: parts that were
	// recognised under the same key need not be again.
	Key() string
}

// ErrNoRecogniser says that there is no program to recognise with.
var ErrNoRecogniser = errors.New("no speech recogniser is installed (Debian packages pocketsphinx and pocketsphinx-en-us)")

// spokenWords drops what a recogniser made up: words that lie in silence, and
// the same words over and over.
func spokenWords(words []Word, speech []stretch) []Word {
	const slack = 0.3 // seconds by which recognisers place words beside the sound
	heard := slices.DeleteFunc(slices.Clone(words), func(w Word) bool {
		return !slices.ContainsFunc(speech, func(s stretch) bool {
			return w.From < s.to+slack && w.To > s.from-slack
		})
	})
	return dropLoops(heard)
}

// A loop is a group of up to longestLoop words said loopTimes or more in a row.
// Nobody says a bar's contents like that; recognisers caught in their own output
// do.
const (
	longestLoop = 12
	loopTimes   = 3
)

// dropLoops keeps one round of each loop. Two "no no" stay. Numbers and their
// like may be counted out three times, but not said three times the same.
func dropLoops(words []Word) []Word {
	out := make([]Word, 0, len(words))
	for i := 0; i < len(words); {
		size, rounds := loopAt(words[i:])
		if rounds < loopTimes {
			out = append(out, words[i])
			i++
			continue
		}
		out = append(out, words[i:i+size]...)
		i += size * rounds
	}
	return out
}

// loopAt finds the loop that words begin with that covers the most.
func loopAt(words []Word) (size, rounds int) {
	for n := 1; n <= longestLoop && n*loopTimes <= len(words); n++ {
		k := 1
		for (k+1)*n <= len(words) && sameWords(words[:n], words[k*n:(k+1)*n]) {
			k++
		}
		if k >= loopTimes && n*k > size*rounds {
			size, rounds = n, k
		}
	}
	return size, rounds
}

func sameWords(a, b []Word) bool {
	return slices.EqualFunc(a, b, func(x, y Word) bool { return x.Text == y.Text })
}
