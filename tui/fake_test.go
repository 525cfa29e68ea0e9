package tui

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"barwise/colony"
)

// evening is when all tests take place.
var evening = time.Date(2026, 5, 14, 20, 30, 0, 0, time.UTC)

// fakeReader reads a small language: hive N, bar N, contents, no, both sides,
// half, queen seen, calm. "brewed" is a misheard "brood" and flagged; "maybe"
// flags what follows it.
type fakeReader struct{}

var fakeWords = map[string]string{"eggs": "eggs", "larvae": "open_brood", "sealed": "capped_brood", "honey": "honey",
	"nectar": "nectar", "pollen": "pollen", "empty": "empty", "brood": "capped_brood", "brewed": "capped_brood"}

var fakeToken = regexp.MustCompile(`[\pL\pN]+`)

func (fakeReader) Parse(note *colony.Note) []colony.Inspection {
	r := reading{note: note}
	r.begin(note.Hive)
	words := fakeToken.FindAllStringIndex(note.Text, -1)
	for i, at := range words {
		next := ""
		if i+1 < len(words) {
			next = note.Text[words[i+1][0]:words[i+1][1]]
		}
		r.word(strings.ToLower(note.Text[at[0]:at[1]]), next, colony.Span{at[0], at[1]})
	}
	return r.all
}

// reading is the state of one reading.
type reading struct {
	note         *colony.Note
	all          []colony.Inspection
	bar          int
	barSpan      colony.Span
	deny, hedged bool
	last         string
}

func (r *reading) begin(hive string) {
	r.all = append(r.all, colony.Inspection{Schema: colony.Schema, Hive: hive, At: r.note.Given, Evidence: colony.Evidence{},
		Source: colony.Source{Note: r.note.Hash, Name: r.note.Name}})
}

func (r *reading) now() *colony.Inspection { return &r.all[len(r.all)-1] }

func (r *reading) set(path, value string, spans ...colony.Span) {
	if err := colony.Set(r.now(), path, value); err != nil {
		panic(err)
	}
	r.now().Evidence.Set(path, spans)
}

func (r *reading) flag(path, why, alt string) {
	r.now().Check = append(r.now().Check, colony.Check{Path: path, Why: why, Alt: alt})
}

func (r *reading) word(word, next string, span colony.Span) {
	number, err := strconv.Atoi(next)
	switch {
	case word == "hive" && next != "":
		if r.now().Hive != "" && r.now().Hive != next {
			r.begin("")
		}
		r.set("hive", strings.ToLower(next), span)
	case word == "bar" && err == nil && number > 0 && number <= 60:
		r.bar, r.barSpan = number, span
		r.deny, r.last = false, ""
	case word == "no":
		r.deny = true
	case word == "maybe":
		r.hedged = true
	case word == "but":
		r.deny = false
	case word == "both" && r.last != "":
		r.set(r.last+".side", "both", span)
	case word == "half" && r.last != "":
		r.set(r.last+".cover", "0.5", span)
	case word == "queen":
		r.set("queen.seen", "yes", span)
		if r.bar > 0 {
			r.set("queen.bar", strconv.Itoa(r.bar), span, r.barSpan)
		}
	case word == "calm":
		r.set("temper.score", "4", span)
	case word == "syrup":
		r.set("actions.feed", "yes", span)
		r.set("actions.feed.what", "syrup", span)
	case fakeWords[word] != "":
		r.content(word, span)
	}
}

func (r *reading) content(word string, span colony.Span) {
	path := "contents." + fakeWords[word]
	if r.bar > 0 {
		path = fmt.Sprintf("bars.%d.%s", r.bar, fakeWords[word])
	}
	r.set(path, map[bool]string{true: "no", false: "yes"}[r.deny], span)
	r.last = path
	if word == "brewed" {
		r.flag(path, "heard “brewed”; “brood” fits", "no")
	}
	if r.hedged {
		r.flag(path, "said with “maybe”", "no")
		r.hedged = false
	}
}

// fakeKeeper keeps everything in memory, the way the store does.
type fakeKeeper struct {
	mu      sync.Mutex
	order   []string
	now     map[string]colony.Record
	before  map[string][]colony.Record
	notes   map[string]colony.Note
	saves   int
	failing error // returned by Save while set
}

func newFakeKeeper() *fakeKeeper {
	return &fakeKeeper{now: map[string]colony.Record{}, before: map[string][]colony.Record{}, notes: map[string]colony.Note{}}
}

// copyOf goes through JSON, as a store does, so that nothing is shared.
func copyOf(r colony.Record) colony.Record {
	data, err := json.Marshal(r)
	if err != nil {
		panic(err)
	}
	var out colony.Record
	if err := json.Unmarshal(data, &out); err != nil {
		panic(err)
	}
	return out
}

func (k *fakeKeeper) Take(note colony.Note, read []colony.Inspection) ([]colony.Record, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.failing != nil {
		return nil, k.failing
	}
	if _, there := k.notes[note.Hash]; there {
		return nil, fmt.Errorf("%s is kept already", note.Name)
	}
	k.notes[note.Hash] = note
	var out []colony.Record
	for i, ins := range read {
		out = append(out, k.put(note.Hash, i+1, ins))
	}
	return out, nil
}

func (k *fakeKeeper) put(hash string, seq int, ins colony.Inspection) colony.Record {
	r := copyOf(colony.Record{ID: fmt.Sprintf("r%03d", len(k.order)+1), NoteHash: hash, Seq: seq, Read: ins, State: colony.Waiting})
	k.now[r.ID] = r
	k.order = append(k.order, r.ID)
	return r
}

func (k *fakeKeeper) Waiting() ([]colony.Record, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	var out []colony.Record
	for _, id := range k.order {
		if r := k.now[id]; r.State == colony.Waiting {
			out = append(out, r)
		}
	}
	return out, nil
}

func (k *fakeKeeper) Record(id string) (colony.Record, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	r, ok := k.now[id]
	if !ok {
		return r, fmt.Errorf("no record %s", id)
	}
	return copyOf(r), nil
}

func (k *fakeKeeper) Note(hash string) (colony.Note, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.notes[hash], nil
}

func (k *fakeKeeper) Save(r colony.Record) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.failing != nil {
		return k.failing
	}
	k.saves++
	k.before[r.ID] = append(k.before[r.ID], k.now[r.ID])
	k.now[r.ID] = copyOf(r)
	return nil
}

func (k *fakeKeeper) History(id string) ([]colony.Record, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	return slices.Clone(k.before[id]), nil
}

func (k *fakeKeeper) EditAndSave(hash, text string, read []colony.Inspection, first, last *colony.Record) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.failing != nil {
		return k.failing
	}
	layOn := func(work *colony.Record) {
		if work != nil {
			k.before[work.ID] = append(k.before[work.ID], k.now[work.ID])
			k.now[work.ID] = copyOf(over(k.now[work.ID], *work))
		}
	}
	layOn(first)
	defer layOn(last)
	note := k.notes[hash]
	note.Text = text
	k.notes[hash] = note
	for _, id := range slices.Clone(k.order) {
		r := k.now[id]
		if r.NoteHash != hash || r.Seq > len(read) {
			continue
		}
		k.before[id] = append(k.before[id], r)
		r.Read = read[r.Seq-1]
		k.now[id] = copyOf(r)
	}
	return nil
}

// past is what Options.Past needs: any state, newest first.
func (k *fakeKeeper) past(hive string) ([]colony.Record, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	var out []colony.Record
	for _, id := range slices.Backward(k.order) {
		r := k.now[id]
		if name, _ := headline(&r); hive == "" || name == hive {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(a, b colony.Record) int { return b.Read.At.Compare(a.Read.At) })
	return out, nil
}

// take puts notes into a new keeper, a day apart, the last one on the evening.
func take(tb testing.TB, notes ...string) *fakeKeeper {
	tb.Helper()
	k := newFakeKeeper()
	for i, text := range notes {
		n := newNote(text, evening.AddDate(0, 0, i-len(notes)+1))
		if _, err := k.Take(n, fakeReader{}.Parse(&n)); err != nil {
			tb.Fatal(err)
		}
	}
	return k
}

// options are those of the tests, with all that can be looked up.
func options(k *fakeKeeper) Options {
	return Options{Now: func() time.Time { return evening }, Past: k.past}
}
