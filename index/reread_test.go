package index_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

// twoHives is a note about hives 3 and 5.
func twoHives() indextest.Visit {
	var w indextest.Writer
	at := noon(2026, 5, 14)
	w.Hive("3", at)
	w.Say("Eggs on bar 4.", "bars.4.eggs=yes")
	w.Hive("5", at)
	w.Say("They were grumpy.", "temper.score=2")
	v := w.Visit()
	v.Note.Taken = at
	v.Note.Words = []colony.TimedWord{{Span: colony.Span{0, 7}, To: 1}, {Span: colony.Span{8, 12}, From: 1, To: 2}, {Span: colony.Span{23, 30}, From: 3, To: 4}}
	return v
}

func save(t *testing.T, s *index.Store, r colony.Record) {
	t.Helper()
	if err := s.Save(r); err != nil {
		t.Fatal(err)
	}
}

func mustRecord(t *testing.T, s *index.Store, id string) colony.Record {
	t.Helper()
	r, err := s.Record(id)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestRereadKeepsCorrections(t *testing.T) {
	s := indextest.MustOpen(t)
	v := twoHives()
	records := mustTake(t, s, v)
	corrected := records[0]
	corrected.Corrections = []colony.Correction{{Path: "temper.score", Value: "4"}}
	corrected.Accepted = []string{"hive"}
	save(t, s, corrected)

	better := twoHives().Read
	if err := colony.Set(&better[0], "bars.4.eggs.amount", "much"); err != nil {
		t.Fatal(err)
	}
	better[0].Source.Parser = "2"
	if err := s.Reread(v.Note.Hash, better); err != nil {
		t.Fatal(err)
	}
	got := mustRecord(t, s, records[0].ID)
	ins := got.Inspection()
	for path, want := range map[string]string{"temper.score": "4", "bars.4.eggs.amount": "much"} {
		if value, _ := colony.Get(&ins, path); value != want {
			t.Errorf("%s = %q, want %q", path, value, want)
		}
	}
	if got.Read.Source.Parser != "2" || !slices.Equal(got.Accepted, corrected.Accepted) || got.State != colony.Waiting {
		t.Errorf("%+v", got)
	}
	if history, _ := s.History(got.ID); len(history) != 2 {
		t.Errorf("%d earlier versions", len(history))
	}
	if untouched := mustRecord(t, s, records[1].ID); !reflect.DeepEqual(untouched, records[1]) {
		t.Error("a record whose reading is the same was changed")
	}
}

func TestRereadOfConfirmed(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*colony.Inspection)
		want   colony.State
	}{
		"stays where it says the same": {func(ins *colony.Inspection) { ins.Remarks = []string{"lovely day"} }, colony.Confirmed},
		"waits where it does not":      {func(ins *colony.Inspection) { colony.Set(ins, "drones", "yes") }, colony.Waiting},
	} {
		t.Run(name, func(t *testing.T) {
			s := indextest.MustOpen(t)
			v := twoHives()
			r := mustTake(t, s, v)[1]
			r.State = colony.Confirmed
			save(t, s, r)
			read := twoHives().Read
			c.change(&read[1])
			if err := s.Reread(v.Note.Hash, read); err != nil {
				t.Fatal(err)
			}
			if got := mustRecord(t, s, r.ID).State; got != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
		})
	}
}

func TestRereadFollowsTheHive(t *testing.T) {
	s := indextest.MustOpen(t)
	v := twoHives()
	records := mustTake(t, s, v)
	read := twoHives().Read
	slices.Reverse(read)
	read = append(read, colony.Inspection{Hive: "7", At: noon(2026, 5, 14)})
	if err := s.Reread(v.Note.Hash, read); err != nil {
		t.Fatal(err)
	}
	now, err := s.OfNote(v.Note.Hash)
	if err != nil || len(now) != 3 {
		t.Fatal(now, err)
	}
	if now[0].ID != records[1].ID || now[1].ID != records[0].ID || now[2].Read.Hive != "7" || now[2].State != colony.Waiting {
		t.Errorf("%v, was %v", ids(now), ids(records))
	}
	for i, r := range now {
		if r.Seq != i+1 {
			t.Errorf("record %d has place %d", i+1, r.Seq)
		}
	}
}

func TestRereadWithFewerInspections(t *testing.T) {
	s := indextest.MustOpen(t)
	v := twoHives()
	records := mustTake(t, s, v)
	if err := s.Reread(v.Note.Hash, v.Read[:1]); err != nil {
		t.Fatal(err)
	}
	if got := mustRecord(t, s, records[1].ID); got.State != colony.SetAside {
		t.Errorf("the record nobody worked on is %s", got.State)
	}
	if hits := mustFind(t, s, index.Query{Words: "grumpy"}); hits.Total != 1 || hits.Hits[0].Hive != "3" {
		t.Errorf("the words did not pass to the inspection that is left: %+v", hits.Hits)
	}
	r := mustRecord(t, s, records[0].ID)
	r.Corrections = []colony.Correction{{Path: "drones", Value: "yes"}}
	save(t, s, r)
	if err := s.Reread(v.Note.Hash, nil); err != nil {
		t.Fatal(err)
	}
	if got := mustRecord(t, s, r.ID); got.State != colony.Waiting || len(got.Corrections) != 1 {
		t.Errorf("a corrected record was set aside: %+v", got)
	}
}

func TestEdit(t *testing.T) {
	s := indextest.MustOpen(t)
	v := twoHives()
	r := mustTake(t, s, v)[0]
	tied := func(words string) *colony.Span {
		at := strings.Index(v.Note.Text, words)
		return &colony.Span{at, at + len(words)}
	}
	r.Corrections = []colony.Correction{
		{Path: "bars.4.pollen", Value: "yes", Span: tied("Hive 3")},
		{Path: "bars.4.eggs.amount", Value: "much", Span: tied("Eggs")},
		{Path: "drones", Value: "yes", Span: tied("grumpy")},
	}
	save(t, s, r)
	text := strings.Replace(v.Note.Text, "Eggs", "Many eggs", 1)
	if err := s.Edit(v.Note.Hash, text, twoHives().Read); err != nil {
		t.Fatal(err)
	}
	if n, _ := s.Original(v.Note.Hash); n.Text != v.Note.Text {
		t.Errorf("the original is now %q", n.Text)
	}
	n, err := s.Note(v.Note.Hash)
	if err != nil || n.Text != text {
		t.Fatal(n.Text, err)
	}
	if edits, _ := s.Edits(v.Note.Hash); len(edits) != 1 || edits[0].Text != text {
		t.Errorf("edits %v", edits)
	}
	if len(n.Words) != 2 || n.Words[1].Span != (colony.Span{28, 35}) {
		t.Errorf("timed words %v", n.Words)
	}
	var moved []string
	for _, c := range mustRecord(t, s, r.ID).Corrections {
		if c.Span == nil {
			moved = append(moved, "")
			continue
		}
		moved = append(moved, text[c.Span[0]:c.Span[1]])
	}
	if !slices.Equal(moved, []string{"Hive 3", "", "grumpy"}) {
		t.Errorf("corrections are tied to %q", moved)
	}
	if hits := mustFind(t, s, index.Query{Words: "many"}); hits.Total != 1 {
		t.Error("the edited text is not found")
	}
}

// What a person did is kept with an edit, or the edit is not: before it, tied to
// the words as they were, or after it, tied to the new ones.
func TestEditAndSaveIsOneStep(t *testing.T) {
	s := indextest.MustOpen(t)
	v := twoHives()
	r := mustTake(t, s, v)[0]
	at := strings.Index(v.Note.Text, "Eggs")
	r.Corrections = []colony.Correction{{Path: "bars.4.pollen", Value: "yes", Span: &colony.Span{at, at + 4}}}
	text := "Today: " + v.Note.Text
	wrong := r
	wrong.ID = "none such"
	for _, work := range [][2]*colony.Record{{&wrong, nil}, {nil, &wrong}} {
		if err := s.EditAndSave(v.Note.Hash, text, v.Read, work[0], work[1]); err == nil {
			t.Error("work on no record was kept")
		}
		if n, _ := s.Note(v.Note.Hash); n.Text != v.Note.Text || len(mustRecord(t, s, r.ID).Corrections) != 0 {
			t.Errorf("half of it was kept: %q", n.Text)
		}
	}
	for _, step := range []struct {
		text        string
		first, last *colony.Record
		from        int
	}{{text, &r, nil, at + len("Today: ")}, {v.Note.Text, nil, &r, at}} {
		if err := s.EditAndSave(v.Note.Hash, step.text, v.Read, step.first, step.last); err != nil {
			t.Fatal(err)
		}
		if got := mustRecord(t, s, r.ID).Corrections; len(got) != 1 || got[0].Span[0] != step.from {
			t.Errorf("%q: the correction is tied to %v, want from %d", step.text, got, step.from)
		}
	}
}

// What is set aside gives its words to the note's other inspections, and takes
// them back: the index must hear of both.
func TestSettingAsideChangesWhatTheOthersAreAbout(t *testing.T) {
	s := indextest.MustOpen(t)
	records := mustTake(t, s, twoHives())
	indextest.MustAgree(t, s)
	for _, state := range []colony.State{colony.SetAside, colony.Waiting} {
		r := mustRecord(t, s, records[1].ID)
		r.State = state
		save(t, s, r)
		indextest.MustAgree(t, s)
	}
}

// A record that the edited note no longer has keeps its evidence where its
// words still stand.
func TestEditMovesTheEvidenceOfWhatItNoLongerHas(t *testing.T) {
	s := indextest.MustOpen(t)
	v := twoHives()
	records := mustTake(t, s, v)
	text := v.Note.Text
	for _, step := range []struct{ edited, want string }{
		{"Today: " + text, "map[hive:[Hive 5.] temper.score:[They were grumpy.]]"},
		{"Today: " + strings.Replace(text, "grumpy", "calm", 1), "map[hive:[Hive 5.]]"},
		{"Today we left.", "map[]"},
	} {
		if err := s.Edit(v.Note.Hash, step.edited, v.Read[:1]); err != nil {
			t.Fatal(err)
		}
		rests := map[string][]string{}
		for _, g := range mustRecord(t, s, records[1].ID).Read.Evidence {
			for _, span := range g.Spans {
				rests[g.Path] = append(rests[g.Path], step.edited[span[0]:span[1]])
			}
		}
		if got := fmt.Sprint(rests); got != step.want {
			t.Errorf("%q: rests on %s, want %s", step.edited, got, step.want)
		}
	}
}
