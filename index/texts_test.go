package index

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"barwise/colony"
)

func TestPieces(t *testing.T) {
	for name, text := range map[string]string{
		"empty":          "",
		"short":          "eggs",
		"words":          strings.Repeat("eggs and larvae ", 20000),
		"one long word":  strings.Repeat("ä", 100000),
		"odd long word":  "x" + strings.Repeat("ä", 100000),
		"no valid UTF-8": strings.Repeat("\x80", 200000),
		"just too long":  strings.Repeat("a", pieceSize+1),
	} {
		t.Run(name, func(t *testing.T) {
			at := 0
			for piece := range pieces(text, colony.Span{0, len(text)}) {
				if piece[0] != at || piece[1]-piece[0] > pieceSize {
					t.Fatalf("piece %v after %d", piece, at)
				}
				if at = piece[1]; at < len(text) && utf8.ValidString(text) && !utf8.RuneStart(text[at]) {
					t.Errorf("cut within a rune at %d", at)
				}
			}
			if at != len(text) {
				t.Errorf("ends at %d of %d", at, len(text))
			}
		})
	}
}

// A note of several hives gives each its own words.
func TestWords(t *testing.T) {
	s, err := Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	at := time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)
	text := "Both today. Hive 3 calm. Hive 4 hot."
	read := []colony.Inspection{
		{Hive: "3", At: at, Evidence: colony.Evidence{{Path: "hive", Spans: []colony.Span{{12, 18}}}, {Path: "temper.score", Spans: []colony.Span{{19, 23}}}}},
		{Hive: "4", At: at, Evidence: colony.Evidence{{Path: "hive", Spans: []colony.Span{{25, 31}}}, {Path: "temper.score", Spans: []colony.Span{{32, 35}}}}},
	}
	records, err := s.Take(colony.Note{Hash: "both", Text: text}, read)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"Both today. Hive 3 calm. ", "Both today. |Hive 4 hot."} {
		words, err := s.Words(records[i].ID)
		if got := strings.Join(words, "|"); err != nil || got != want {
			t.Errorf("hive %s: %q, %v; want %q", records[i].Read.Hive, got, err, want)
		}
	}
	if _, err := s.Words("none"); !errors.Is(err, ErrUnknown) {
		t.Errorf("of no record: %v", err)
	}
}

// A large text is found by the same words as a small one.
func TestLargeNote(t *testing.T) {
	s, err := Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	small := "The hive's bees were bearding, 3.5 bars of stores. Übergabe am Dienstag. "
	note := colony.Note{Hash: "large", Text: strings.Repeat(small, 2*largeText/len(small)) + "The willow stands last."}
	if _, err := s.Take(note, []colony.Inspection{{Hive: "3", At: time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)}}); err != nil {
		t.Fatal(err)
	}
	stems := func(texts []string) []string {
		list := []string{}
		for _, text := range texts {
			for _, token := range english.Analyze([]byte(text)) {
				list = append(list, string(token.Term))
			}
		}
		slices.Sort(list)
		return slices.Compact(list)
	}
	whole := []colony.Span{{0, len(note.Text)}}
	if got, want := stems(vocabulary(note.Text, whole)), stems([]string{note.Text}); !slices.Equal(got, want) {
		t.Errorf("words %q\nwant  %q", got, want)
	}
	for _, words := range []string{"beards 3.5", "hive übergabe", "willow bees"} {
		hits, err := s.Find(Query{Words: words})
		if err != nil || hits.Total != 1 || hits.Similar() || len(hits.Hits[0].Quotes) == 0 {
			t.Errorf("%s: %+v, %v", words, hits.Total, err)
		}
	}
}
