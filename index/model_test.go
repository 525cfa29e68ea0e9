package index_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"barwise/colony"
	"barwise/index"
	"barwise/index/indextest"
)

// model is what a store should hold, as plain Go values.
type model struct {
	notes    map[string]colony.Note
	records  map[string]colony.Record
	history  map[string][]colony.Record
	settings map[string]int
	now      time.Time
}

func (m *model) clock() time.Time { return m.now }

// machine runs the same operations on a store and on the model.
type machine struct {
	t     *testing.T
	dir   string
	store *index.Store
	model model
	next  int
}

func (m *machine) open(opts ...index.Option) {
	m.store = indextest.Reopen(m.t, m.dir, append(opts, index.Clock(m.model.clock))...)
}

func (m *machine) ids() []string { return slices.Sorted(maps.Keys(m.model.records)) }

func (m *machine) take(t *rapid.T) {
	var v indextest.Visit
	if again := rapid.IntRange(0, 9).Draw(t, "again"); again == 0 && m.next > 0 {
		v = indextest.MakeVisit(11, rapid.IntRange(0, m.next-1).Draw(t, "visit"), 3)
	} else {
		v = indextest.MakeVisit(11, m.next, 3)
		m.next++
	}
	records, err := m.store.Take(v.Note, v.Read)
	if _, known := m.model.notes[v.Note.Hash]; known != (err != nil) {
		t.Fatalf("take of a note that is known (%v): %v", known, err)
	}
	if err != nil {
		return
	}
	m.model.notes[v.Note.Hash] = v.Note
	for _, r := range records {
		m.model.records[r.ID] = r
	}
}

func (m *machine) save(t *rapid.T) {
	if len(m.model.records) == 0 {
		t.Skip("nothing to save")
	}
	old := m.model.records[rapid.SampledFrom(m.ids()).Draw(t, "record")]
	r := old
	switch rapid.IntRange(0, 4).Draw(t, "change") {
	case 0:
		r.State = rapid.SampledFrom([]colony.State{colony.Waiting, colony.Confirmed, colony.SetAside}).Draw(t, "state")
	case 1:
		r.Corrections = append(slices.Clone(r.Corrections), rapid.SampledFrom([]colony.Correction{
			{Path: "hive", Value: "9"}, {Path: "hive", Value: "orchard"}, {Path: "at", Value: "2025-01-02T10:00:00Z"},
			{Path: "bars.3.eggs", Value: "yes"}, {Path: "bars.1.comb.drawn", Deleted: true}, {Path: "bars.44.empty", Value: "no"},
			{Path: "signs.chalkbrood", Value: "yes"}, {Path: "queen.seen", Value: "no"},
		}).Draw(t, "correction"))
	case 2:
		r.Corrections = nil
	case 3:
		r.Accepted = append(slices.Clone(r.Accepted), "hive")
	case 4: // the same again
	}
	m.model.now = m.model.now.Add(time.Second)
	if err := m.store.Save(r); err != nil {
		t.Fatal(err)
	}
	if reflect.DeepEqual(old, r) {
		return
	}
	r.Changed = m.model.now
	if !same(old, r, func(r *colony.Record) { r.Changed = time.Time{} }) {
		m.model.history[r.ID] = append(m.model.history[r.ID], old)
		m.model.records[r.ID] = r
	}
}

// same compares two records by their JSON, without what strip takes out.
func same(a, b colony.Record, strip func(*colony.Record)) bool {
	strip(&a)
	strip(&b)
	x, _ := json.Marshal(a)
	y, _ := json.Marshal(b)
	return bytes.Equal(x, y)
}

func (m *machine) set(t *rapid.T) {
	name, value := rapid.SampledFrom([]string{"a", "b"}).Draw(t, "name"), rapid.Int().Draw(t, "value")
	if err := m.store.SetSetting(name, value); err != nil {
		t.Fatal(err)
	}
	m.model.settings[name] = value
}

func (m *machine) reopen(t *rapid.T) {
	if err := m.store.Close(); err != nil {
		t.Fatal(err)
	}
	m.open()
}

func (m *machine) crash(t *rapid.T) {
	if err := m.store.Abandon(); err != nil {
		t.Fatal(err)
	}
	m.open()
}

func (m *machine) rebuild(t *rapid.T) {
	if err := m.store.Rebuild(nil); err != nil {
		t.Fatal(err)
	}
}

// fits is what a query finds, told by looking at every record.
func (m *machine) fits(q index.Query, fits func(*colony.Inspection) bool) []string {
	var list []colony.Record
	for _, r := range m.model.records {
		ins := r.Inspection()
		if (q.Hive == "" || ins.Hive == q.Hive) && r.State != colony.SetAside && fits(&ins) {
			list = append(list, r)
		}
	}
	slices.SortFunc(list, func(a, b colony.Record) int {
		x, y := a.Inspection(), b.Inspection()
		if c := y.At.Compare(x.At); c != 0 {
			return c
		}
		return strings.Compare(b.ID, a.ID)
	})
	return ids(list)
}

func (m *machine) find(t *rapid.T) {
	cond := rapid.SampledFrom([]index.Condition{
		{Path: "bars.*.eggs", Value: "yes"}, {Path: "bars.*.eggs", Value: "no"}, {Path: "bars.3.eggs", Value: "yes"},
		{Path: "signs.chalkbrood", Value: "yes"}, {Path: "queen.seen", Op: index.Said}, {Path: "queen.seen", Op: index.Silent},
		{Path: "temper.score", Op: index.AtMost, Value: "2"}, {Path: "bars.*.empty", Value: "no"}, {Path: "bars.1.comb.drawn", Op: index.Above, Value: "0.3"},
	}).Draw(t, "condition")
	q := index.Query{Where: []index.Clause{{cond}}, Hive: rapid.SampledFrom([]string{"", "1", "9", "orchard"}).Draw(t, "hive")}
	want := m.fits(q, func(ins *colony.Inspection) bool { return holds(cond, ins) })
	hits, err := m.store.Find(q)
	if err != nil {
		t.Fatal(err)
	}
	got := []string{}
	for _, h := range hits.Hits {
		got = append(got, h.ID)
	}
	// Of inspections at one instant the order is that in which they came in.
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) || hits.Total != len(want) {
		t.Fatalf("%v in hive %q: %d hits, want %d\n%v\n%v", cond, q.Hive, hits.Total, len(want), got, want)
	}
}

// holds tells a condition by looking at every leaf.
func holds(c index.Condition, ins *colony.Inspection) bool {
	for _, leaf := range colony.Leaves(ins) {
		path := leaf.Path
		if parts := strings.SplitN(path, ".", 3); parts[0] == "bars" && strings.HasPrefix(c.Path, "bars.*.") {
			path = "bars.*." + parts[2]
		}
		if path != c.Path {
			continue
		}
		switch c.Op {
		case index.Said:
			return true
		case index.Silent:
			return false
		case index.Is:
			if leaf.Value == c.Value {
				return true
			}
		case index.AtMost, index.Above:
			var a, b float64
			fmt.Sscan(leaf.Value, &a)
			fmt.Sscan(c.Value, &b)
			if (a <= b) == (c.Op == index.AtMost) {
				return true
			}
		}
	}
	return c.Op == index.Silent
}

// check compares all that the store holds with the model.
func (m *machine) check(t *rapid.T) {
	for hash, want := range m.model.notes {
		if got, err := m.store.Note(hash); err != nil || !reflect.DeepEqual(got, want) {
			t.Fatalf("note %s: %v\n%+v\n%+v", hash, err, got, want)
		}
	}
	listed := map[string]bool{}
	hives, known := map[string]bool{}, map[string]bool{}
	for r, err := range m.store.Records(index.Filter{}) {
		if err != nil {
			t.Fatal(err)
		}
		listed[r.ID] = true
		if want := m.model.records[r.ID]; !same(r, want, func(*colony.Record) {}) {
			t.Fatalf("record %s:\n%+v\n%+v", r.ID, r, want)
		}
		ins := r.Inspection()
		hives[ins.Hive] = true
		if r.State == colony.Confirmed {
			known[ins.Hive] = true
		}
	}
	if len(listed) != len(m.model.records) {
		t.Fatalf("%d records listed, %d kept", len(listed), len(m.model.records))
	}
	if got, err := m.store.Hives(); err != nil || !slices.Equal(got, slices.Sorted(maps.Keys(hives))) {
		t.Fatalf("hives %v, %v, want %v", got, err, hives)
	}
	if got, err := m.store.KnownHives(); err != nil || !slices.Equal(got, slices.Sorted(maps.Keys(known))) {
		t.Fatalf("known hives %v, %v, want %v", got, err, known)
	}
	for id, want := range m.model.history {
		got, err := m.store.History(id)
		if err != nil || !slices.EqualFunc(got, want, func(a, b colony.Record) bool { return same(a, b, func(*colony.Record) {}) }) {
			t.Fatalf("history of %s: %v\n%+v\n%+v", id, err, got, want)
		}
	}
	for name, want := range m.model.settings {
		var got int
		if set, err := m.store.Setting(name, &got); err != nil || !set || got != want {
			t.Fatalf("setting %s: %v %v %d, want %d", name, set, err, got, want)
		}
	}
}

// Any row of operations leaves the store as it leaves plain Go values, with an
// index that agrees, and its export makes an equal store.
func TestAgainstModel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := &machine{t: t, dir: t.TempDir(), model: model{map[string]colony.Note{}, map[string]colony.Record{},
			map[string][]colony.Record{}, map[string]int{}, noon(2026, 1, 1)}}
		m.open()
		defer func() { m.store.Abandon() }()
		rt.Repeat(map[string]func(*rapid.T){
			"take": m.take, "take more": m.take, "save": m.save, "save more": m.save, "set": m.set, "reopen": m.reopen, "crash": m.crash,
			"rebuild": m.rebuild, "find": m.find,
		})
		m.check(rt)
		report, err := m.store.Check()
		if err != nil || len(report.Problems) > 0 {
			rt.Fatalf("%v %q", err, report.Problems)
		}
		roundTrip(t, rt, m.store)
	})
}

func roundTrip(t *testing.T, rt *rapid.T, s *index.Store) {
	first := mustExport(t, s)
	other := indextest.Reopen(t, t.TempDir())
	defer other.Close()
	done, err := other.Import(strings.NewReader(first))
	if err != nil || done.BadLines > 0 || done.Skipped+done.Differ > 0 {
		rt.Fatalf("import: %+v, %v", done, err)
	}
	if second := mustExport(t, other); second != first {
		rt.Fatalf("the export of what was imported differs:\n%s\n%s", first, second)
	}
	if again, err := other.Import(strings.NewReader(first)); err != nil || again.Notes+again.Records+again.Settings+again.Differ+again.BadLines > 0 {
		rt.Fatalf("import again: %+v, %v", again, err)
	}
}
