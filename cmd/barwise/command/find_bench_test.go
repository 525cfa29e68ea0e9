package command

import (
	"os"
	"testing"

	"barwise/colony"
	"barwise/index"
	"barwise/parse"
)

// BenchmarkFindWarm asks an open store, from the words to the answer. The
// folder BARWISE_SCALE holds the records; testdata/bench/scale makes them.
func BenchmarkFindWarm(b *testing.B) {
	dir := os.Getenv("BARWISE_SCALE")
	if dir == "" {
		b.Skip("BARWISE_SCALE names no folder with records")
	}
	s, err := index.Open(dir, index.ReadOnly())
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	parser, err := parse.New(colony.OwnWords{})
	if err != nil {
		b.Fatal(err)
	}
	hives, err := s.Hives()
	if err != nil {
		b.Fatal(err)
	}
	for _, words := range []string{"chalkbrood", "neighbour swarmed", "supersedure cells", "queen seen", "drone brood", "patchy brood hive 17",
		"which hives had chalkbrood", "how many stings in 2021", "highest mite count", "days between queen sightings"} {
		b.Run(words, func(b *testing.B) {
			for b.Loop() {
				q := understand(words, parser, hives, askedOn)
				q.narrow("", period{}, 20)
				if _, err := q.reply(s, askedOn); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
