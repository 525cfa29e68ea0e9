package index

import (
	"iter"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	bolt "go.etcd.io/bbolt"

	"barwise/colony"
)

// texts finds the stretches of notes that records are about. It keeps the last
// note, since a note's records mostly come one after the other.
type texts struct {
	tx      *bolt.Tx
	hash    string
	note    colony.Note
	records []colony.Record
}

// of returns the words that belong to the record.
func (t *texts) of(r *colony.Record) ([]string, error) {
	spans, err := t.stretches(r)
	if err != nil {
		return nil, err
	}
	var text []string
	size := 0
	for _, span := range spans {
		text = append(text, t.note.Text[span[0]:span[1]])
		size += span[1] - span[0]
	}
	if size > largeText {
		return vocabulary(t.note.Text, spans), nil
	}
	return text, nil
}

// Words returns the stretches of its note that a record is about, as the keeper
// gave them, or ErrUnknown. Of a note of one hive that is all of it.
func (s *Store) Words(id string) (words []string, err error) {
	err = s.view(func(tx *bolt.Tx) error {
		r, err := getRecord(tx, id)
		if err != nil {
			return err
		}
		t := texts{tx: tx}
		spans, err := t.stretches(&r)
		for _, span := range spans {
			words = append(words, t.note.Text[span[0]:span[1]])
		}
		return err
	})
	return words, err
}

const (
	// largeText is from how many bytes on a text goes into the index as the
	// list of its words. It finds the same, and a note of a hundred megabytes
	// would otherwise take gigabytes of memory.
	largeText = 1 << 20
	// maxWords is how many different words of a large text can be found.
	maxWords = 200_000
	// pieceSize is how much of a text is analysed at once.
	pieceSize = 1 << 16
)

// vocabulary lists the words of a text, each stem once, in one string.
func vocabulary(text string, parts []colony.Span) []string {
	seen := map[string]bool{}
	var words strings.Builder
	for _, part := range parts {
		for piece := range pieces(text, part) {
			here := text[piece[0]:piece[1]]
			for _, token := range english.Analyze([]byte(here)) {
				if stem := string(token.Term); !seen[stem] && len(seen) < maxWords {
					seen[stem] = true
					words.WriteString(here[token.Start:token.End])
					words.WriteByte(' ')
				}
			}
		}
	}
	return []string{words.String()}
}

// pieces cuts a stretch of text between words into pieces of about pieceSize.
// Where there are no words, as in a line of five megabytes without a space, it
// cuts between runes.
func pieces(text string, span colony.Span) iter.Seq[colony.Span] {
	return func(yield func(colony.Span) bool) {
		from, end := span[0], span[1]
		for end-from > pieceSize {
			to := from + pieceSize
			if i := strings.LastIndexAny(text[from:to], space); i > 0 {
				to = from + i
			} else {
				for to > from+pieceSize-utf8.UTFMax && !utf8.RuneStart(text[to]) {
					to--
				}
			}
			if !yield(colony.Span{from, to}) {
				return
			}
			from = to
		}
		yield(colony.Span{from, end})
	}
}

// stretches returns where in its note the record's words stand.
func (t *texts) stretches(r *colony.Record) ([]colony.Span, error) {
	if t.hash != r.NoteHash {
		note, err := getNote(t.tx, r.NoteHash)
		if err != nil {
			return nil, err
		}
		t.hash, t.note, t.records = r.NoteHash, note, nil
		// A record that is alone in its note needs no look at the others.
		if countOfNote(t.tx, r.NoteHash) > 1 {
			if t.records, err = recordsOfNote(t.tx, r.NoteHash); err != nil {
				return nil, err
			}
		}
	}
	return stretches(len(t.note.Text), t.records, r.ID), nil
}

// stretches divides a note of the given length among its inspections and
// returns the part of one of them. The evidence decides: the words from one
// inspection's evidence up to another's belong to the first, and what comes
// before any belongs to all. Evidence that several share, such as the weather,
// makes no turn. A note's only inspection has all of it. Inspections that were
// set aside do not count, unless it is theirs that is asked for.
func stretches(length int, records []colony.Record, id string) []colony.Span {
	var owners []*colony.Record
	for i := range records {
		if r := &records[i]; r.State != colony.SetAside || r.ID == id {
			owners = append(owners, r)
		}
	}
	if len(owners) < 2 {
		return []colony.Span{{0, length}}
	}
	marks := ownersOf(length, owners)
	var spans []colony.Span
	for i, m := range marks {
		end := length
		if i+1 < len(marks) {
			end = marks[i+1].at
		}
		if m.id != id && m.id != "" || m.at == end {
			continue
		}
		if n := len(spans); n > 0 && spans[n-1][1] == m.at {
			spans[n-1][1] = end
			continue
		}
		spans = append(spans, colony.Span{m.at, end})
	}
	return spans
}

// turn is a place in a note from which on it is about the record; an empty ID
// stands for all of them.
type turn struct {
	at int
	id string
}

// ownersOf lists the places where a note turns from one inspection to another.
func ownersOf(length int, records []*colony.Record) []turn {
	claims := map[colony.Span]map[string]bool{}
	for _, r := range records {
		for _, g := range r.Read.Evidence {
			for _, span := range g.Spans {
				if span[0] < 0 || span[0] >= length {
					continue
				}
				if claims[span] == nil {
					claims[span] = map[string]bool{}
				}
				claims[span][r.ID] = true
			}
		}
	}
	places := slices.SortedFunc(maps.Keys(claims), func(a, b colony.Span) int {
		if a[0] != b[0] {
			return a[0] - b[0]
		}
		return b[1] - a[1]
	})
	turns := []turn{{0, ""}}
	for _, span := range places {
		if len(claims[span]) > 1 {
			continue
		}
		for id := range claims[span] {
			if turns[len(turns)-1].id != id {
				turns = append(turns, turn{span[0], id})
			}
		}
	}
	return turns
}
