// Package indextest opens throw-away stores and makes up visits to fill them
// with, for tests and benchmarks.
package indextest

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"barwise/colony"
	"barwise/index"
)

// MustOpen opens a new store that is closed, after a check that store and
// index agree, when the test ends; the test leaves it open.
func MustOpen(tb testing.TB, opts ...index.Option) *index.Store {
	tb.Helper()
	s := Reopen(tb, tb.TempDir(), opts...)
	tb.Cleanup(func() {
		MustAgree(tb, s)
		if err := s.Close(); err != nil {
			tb.Errorf("close: %v", err)
		}
	})
	return s
}

// Reopen opens the store in dir; the caller closes it.
func Reopen(tb testing.TB, dir string, opts ...index.Option) *index.Store {
	tb.Helper()
	s, err := index.Open(dir, opts...)
	if err != nil {
		tb.Fatalf("open: %v", err)
	}
	return s
}

// MustAgree fails the test where store and index are not sound or disagree.
func MustAgree(tb testing.TB, s *index.Store) {
	tb.Helper()
	report, err := s.Check()
	if err != nil {
		tb.Errorf("check: %v", err)
	}
	for _, p := range report.Problems {
		tb.Errorf("check: %s", p)
	}
}

// Visit is a note with what it means.
type Visit struct {
	Note colony.Note
	Read []colony.Inspection
}

// NoteOf makes a note of the text, with its hash.
func NoteOf(text string) colony.Note {
	sum := sha256.Sum256([]byte(text))
	return colony.Note{Hash: hex.EncodeToString(sum[:]), Text: text}
}

// Visits makes up the first n visits; see MakeVisit.
func Visits(seed uint64, n, hives int) []Visit {
	list := make([]Visit, n)
	for i := range list {
		list[i] = MakeVisit(seed, i, hives)
	}
	return list
}

// MakeVisit makes up one of a row of visits to the given number of hives, a
// week apart for each hive, the same for the same seed. Every tenth note is
// about two hives.
func MakeVisit(seed uint64, number, hives int) Visit {
	rnd := rand.New(rand.NewPCG(seed, uint64(number)))
	hive := number%hives + 1
	start := time.Date(2024, 3, 1, 9, 0, 0, 0, time.UTC)
	at := start.AddDate(0, 0, 7*(number/hives)).Add(time.Duration(hive) * 20 * time.Minute)
	var w Writer
	w.Hive(fmt.Sprint(hive), at)
	fillVisit(rnd, &w)
	if number%10 == 9 {
		w.Hive(fmt.Sprint(hive%hives+1), at.Add(10*time.Minute))
		fillVisit(rnd, &w)
	}
	w.Say(fmt.Sprintf("Page %d of the book.", number))
	v := w.Visit()
	v.Note.Name = fmt.Sprintf("visit-%05d.txt", number)
	v.Note.Taken = at.Add(5 * time.Hour)
	v.Note.Given = at
	return v
}

// said is a phrase with the leaves it means, B standing for the bar.
type said struct {
	words  string
	leaves []string
}

var ofBars = []said{
	{"eggs and larvae", []string{"bars.B.eggs=yes", "bars.B.open_brood=yes"}},
	{"solid capped brood", []string{"bars.B.capped_brood=yes", "bars.B.capped_brood.pattern=solid"}},
	{"half full of nectar", []string{"bars.B.nectar=yes", "bars.B.nectar.cover=0.5"}},
	{"capped honey along the top", []string{"bars.B.capped_honey=yes", "bars.B.capped_honey.place=top"}},
	{"no eggs", []string{"bars.B.eggs=no"}},
	{"pollen both sides", []string{"bars.B.pollen=yes", "bars.B.pollen.side=both"}},
	{"a patch of drone brood", []string{"bars.B.drone_brood=yes", "bars.B.drone_brood.amount=little"}},
	{"a third drawn", []string{"bars.B.comb.drawn=0.33"}},
	{"two sealed queen cells", []string{"bars.B.queen_cells.capped=yes", "bars.B.queen_cells.capped.count=2"}},
	{"just started", []string{"bars.B.comb.size=started"}},
}

var ofColony = []said{
	{"Queen seen, marked blue.", []string{"queen.seen=yes", "queen.marked=yes", "queen.colour=blue"}},
	{"Did not find the queen.", []string{"queen.seen=no"}},
	{"They were calm.", []string{"temper.score=4"}},
	{"Grumpy today.", []string{"temper.score=2"}},
	{"They followed me to the gate.", []string{"temper.score=1"}},
	{"Stung twice.", []string{"temper.stings=2"}},
	{"Chalkbrood on the floor.", []string{"signs.chalkbrood=yes"}},
	{"No chalkbrood.", []string{"signs.chalkbrood=no"}},
	{"Orange pollen coming in.", []string{"incoming.pollen=yes", "incoming.pollen.colour=orange"}},
	{"Added two bars at the back.", []string{"actions.add_bar=yes", "actions.add_bar.count=2"}},
	{"Fed a litre of syrup.", []string{"actions.feed=yes", "actions.feed.amount=1", "actions.feed.unit=l", "actions.feed.what=syrup"}},
	{"Must feed next time.", []string{"plans.feed=yes"}},
	{"The lime trees are humming and the grass wants cutting.", nil},
	{"Windy, nineteen degrees.", []string{"weather.temp_c=19", "weather.wind=windy"}},
}

func fillVisit(rnd *rand.Rand, w *Writer) {
	for range 2 + rnd.IntN(3) {
		p := ofColony[rnd.IntN(len(ofColony))]
		w.Say(p.words, p.leaves...)
	}
	for bar := range 6 + rnd.IntN(7) {
		words, leaves := []string{fmt.Sprintf("Bar %d", bar+1)}, []string(nil)
		for range 1 + rnd.IntN(2) {
			p := ofBars[rnd.IntN(len(ofBars))]
			words = append(words, p.words)
			for _, leaf := range p.leaves {
				leaves = append(leaves, strings.Replace(leaf, "B", fmt.Sprint(bar+1), 1))
			}
		}
		w.Say(strings.Join(words, ", ")+".", leaves...)
	}
}

// Writer writes a note and, beside it, what it means.
type Writer struct {
	text strings.Builder
	read []colony.Inspection
}

// Hive begins the inspection of a hive.
func (w *Writer) Hive(name string, at time.Time) {
	w.read = append(w.read, colony.Inspection{Schema: colony.Schema, At: at, Evidence: colony.Evidence{}})
	w.Say("Hive "+name+".", "hive="+name)
}

// Say writes a sentence that means the given leaves (path=value), and panics
// on a leaf that cannot be.
func (w *Writer) Say(words string, leaves ...string) {
	if w.text.Len() > 0 {
		w.text.WriteByte(' ')
	}
	span := colony.Span{w.text.Len(), w.text.Len() + len(words)}
	w.text.WriteString(words)
	ins := &w.read[len(w.read)-1]
	for _, leaf := range leaves {
		path, value, _ := strings.Cut(leaf, "=")
		if err := colony.Set(ins, path, value); err != nil {
			panic("indextest: " + err.Error())
		}
		ins.Evidence.Set(path, append(ins.Evidence.Of(path), span))
	}
}

// Visit is what was written, the evidence in the order in which it comes back from
// the store.
func (w *Writer) Visit() Visit {
	for i := range w.read {
		slices.SortFunc(w.read[i].Evidence, func(a, b colony.Grounds) int { return strings.Compare(a.Path, b.Path) })
	}
	return Visit{NoteOf(w.text.String()), w.read}
}
