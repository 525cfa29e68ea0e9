package voice

import (
	"errors"
	"slices"
	"testing"
)

// Every warp is tried and then the accent at the best of them, since the way
// from one warp to the next may lead downhill.
func TestTheLikeliestSpeakerIsFound(t *testing.T) {
	for _, want := range []speaker{{0.9, false}, {1, true}, {1.2, false}, {1.2, true}} {
		var tried []speaker
		got, err := likeliest(func(speakers ...speaker) ([]float64, error) {
			tried = append(tried, speakers...)
			var scores []float64
			for _, s := range speakers {
				score := map[float64]float64{0.9: -30, 1: -20, 1.1: -40, 1.2: -25}[s.Warp]
				if s.Warp == want.Warp {
					score = -10
				}
				if s.British {
					score--
				}
				if s == want {
					score = -5
				}
				scores = append(scores, score)
			}
			return scores, nil
		})
		if err != nil || got != want {
			t.Errorf("found %v, want %v: %v", got, want, err)
		}
		if len(tried) != len(warps)+1 || !slices.Contains(tried, speaker{want.Warp, true}) {
			t.Errorf("tried %v", tried)
		}
	}
	broken := errors.New("it fell over")
	if _, err := likeliest(func(...speaker) ([]float64, error) { return nil, broken }); !errors.Is(err, broken) {
		t.Errorf("a recogniser that fails: %v", err)
	}
}

// The ways to say words come from J. C. Wells, "Longman Pronunciation
// Dictionary" (its British forms, from memory), in the phones nearest to them.
func TestBritishPronunciation(t *testing.T) {
	for _, c := range []struct{ american, british string }{
		{"B AA R", "B AA"},                     // bar
		{"F AO R", "F AO"},                     // four
		{"L AA R V IY", "L AA V IY"},           // larvae
		{"N EH K T ER", "N EH K T AH"},         // nectar
		{"HH IY R", "HH IY AH"},                // here
		{"K AE P T", "K AA P T"},               // capped
		{"P AA L AH N", "P AO L AH N"},         // pollen
		{"B R UW D", "B R UW D"},               // brood: r before a vowel stays
		{"K W IH R IY", "K W IH R IY"},         // query, said with a short vowel
		{"HH ER", "HH ER"},                     // her: the vowel is all there is
		{"F ER S T", "F ER S T"},               // first
		{"K AE R IY IH NG", "K AE R IY IH NG"}, // carrying
	} {
		if got := british(c.american); got != c.british {
			t.Errorf("%s became %s, want %s", c.american, got, c.british)
		}
	}
}
