package tui

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"barwise/colony"
)

// kept is a record of the given leaves, of which some are to check.
func kept(t *testing.T, lines string, checks ...colony.Check) colony.Record {
	t.Helper()
	ins := made(t, lines)
	ins.Check = checks
	return colony.Record{ID: "r1", Read: *ins, State: colony.Waiting}
}

func asked(r colony.Record) []string {
	ins := r.Inspection()
	var paths []string
	for _, q := range questions(&r, &ins) {
		paths = append(paths, q.path)
	}
	return paths
}

func value(r colony.Record, path string) string {
	ins := r.Inspection()
	v, _ := colony.Get(&ins, path)
	return v
}

func TestStepsLeaveTheVersionBeforeAlone(t *testing.T) {
	was := kept(t, "bars.4.eggs=yes", colony.Check{Path: "bars.4.eggs", Why: "hedged"})
	copied := copyOf(was)
	one := accept(was, "bars.4.eggs", evening)
	two, err := correct(one, "bars.4.eggs", "no", nil, evening)
	if err != nil {
		t.Fatal(err)
	}
	remove(two, "bars.4.eggs", evening)
	stand(two, colony.Confirmed, evening)
	if !reflect.DeepEqual(copyOf(was), copied) {
		t.Error("the first version changed")
	}
	if one.State != colony.Waiting || len(one.Corrections) != 0 || value(two, "bars.4.eggs") != "no" {
		t.Errorf("versions share something: %+v %+v", one, two)
	}
}

func TestCorrectRefuses(t *testing.T) {
	r := kept(t, "bars.4.eggs=yes")
	for path, v := range map[string]string{"bars.4.eggs": "maybe", "bars.4.egg": "yes", "queen.bar": "four", "note": "x"} {
		if _, err := correct(r, path, v, nil, evening); err == nil {
			t.Errorf("%s=%s was taken", path, v)
		}
	}
	if _, err := moveItem(r, "queen", 5, evening); err == nil {
		t.Error("the queen is no thing of a bar")
	}
	if _, err := moveItem(r, "bars.4.eggs", 4, evening); err == nil {
		t.Error("moved to where it was")
	}
	if _, err := moveBar(r, 9, 10, evening); err == nil {
		t.Error("moved what is not there")
	}
}

func TestMoveCarriesAllThatIsSaid(t *testing.T) {
	r := kept(t, "bars.4.capped_brood=yes bars.4.capped_brood.cover=0.8 bars.4.capped_brood.side=both bars.4.eggs=yes queen.bar=4 signs.chalkbrood=yes signs.chalkbrood.bar=4",
		colony.Check{Path: "bars.4.capped_brood.cover", Why: "hedged"})
	r.Read.Evidence = colony.Evidence{{Path: "bars.4.capped_brood", Spans: []colony.Span{{3, 9}}}}
	moved, err := moveItem(r, "bars.4.capped_brood", 6, evening)
	if err != nil {
		t.Fatal(err)
	}
	ins := moved.Inspection()
	for path, want := range map[string]string{"bars.6.capped_brood": "yes", "bars.6.capped_brood.cover": "0.8",
		"bars.6.capped_brood.side": "both", "bars.4.capped_brood": "", "bars.4.eggs": "yes", "queen.bar": "4"} {
		if got, _ := colony.Get(&ins, path); got != want {
			t.Errorf("%s = %q, want %q", path, got, want)
		}
	}
	if spans := ins.Evidence.Of("bars.6.capped_brood"); len(spans) != 1 || spans[0] != (colony.Span{3, 9}) {
		t.Errorf("the words did not go along: %v", spans)
	}
	if left := asked(moved); len(left) != 0 {
		t.Errorf("still asked: %v", left)
	}
	whole, err := moveBar(r, 4, 6, evening)
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{"bars.6.eggs": "yes", "queen.bar": "6", "signs.chalkbrood.bar": "6", "bars.4.eggs": ""} {
		if got := value(whole, path); got != want {
			t.Errorf("%s = %q, want %q", path, got, want)
		}
	}
}

func TestQuestions(t *testing.T) {
	r := kept(t, "hive=3 bars.4.eggs=yes bars.4.eggs.cover=0.5 bars.9.honey=yes",
		colony.Check{Path: "bars.9.honey", Why: "inferred"}, colony.Check{Path: "bars.4.eggs.cover", Why: "hedged"},
		colony.Check{Path: "queen.seen", Why: "two things were said"}, colony.Check{Path: "bars.9.honey", Why: "misheard", Alt: "no"})
	if got, want := asked(r), []string{"bars.4.eggs.cover", "bars.9.honey", "queen.seen"}; !slices.Equal(got, want) {
		t.Errorf("asked %v, want %v", got, want)
	}
	if n := openCount(&r); n != 3 {
		t.Errorf("counted %d", n)
	}
	ins := r.Inspection()
	if q := questions(&r, &ins)[1]; len(q.why) != 2 || q.alt != "no" || q.value != "yes" {
		t.Errorf("%+v", q)
	}
	gone := remove(r, "bars.4.eggs", evening) // takes the question about its cover along
	if got, want := asked(gone), []string{"bars.9.honey", "queen.seen"}; !slices.Equal(got, want) || openCount(&gone) != 2 {
		t.Errorf("asked %v, counted %d", got, openCount(&gone))
	}
	done := accept(accept(gone, "bars.9.honey", evening), "queen.seen", evening)
	if got := asked(done); len(got) != 0 || openCount(&done) != 0 {
		t.Errorf("asked %v", got)
	}
}

func TestDispute(t *testing.T) {
	r := kept(t, "bars.4.eggs=yes bars.5.honey=yes")
	r, err := correct(r, "bars.4.eggs", "no", nil, evening)
	if err != nil {
		t.Fatal(err)
	}
	same, agrees, differs := r, r, r
	agrees.Read = *made(t, "bars.4.eggs=no bars.5.honey=yes")
	differs.Read = *made(t, "bars.5.honey=yes")
	for name, c := range map[string]struct {
		r    colony.Record
		want int
	}{"the same reading": {same, 0}, "a reading that agrees": {agrees, 0}, "a reading that has neither": {differs, 1}} {
		if got := asked(c.r); len(got) != c.want || openCount(&c.r) != c.want {
			t.Errorf("%s: asked %v", name, got)
		}
	}
}

func TestHeadlineFollowsCorrections(t *testing.T) {
	r := kept(t, "hive=3 at=2026-05-14T16:00:00Z")
	r, _ = correct(r, "hive", "orchard", nil, evening)
	r, _ = correct(r, "at", "2026-05-12T10:00:00Z", nil, evening)
	if hive, on := headline(&r); hive != "orchard" || on.String() != "2026-05-12" {
		t.Errorf("%s on %s", hive, on)
	}
	if _, on := headline(new(remove(r, "at", evening))); !on.IsZero() {
		t.Errorf("a day that was taken away is shown: %s", on)
	}
}

func TestTimelineFindsItsPlace(t *testing.T) {
	v0 := kept(t, "bars.4.eggs=yes")
	v1 := accept(v0, "bars.4.eggs", evening)
	v2 := stand(v1, colony.Confirmed, evening.Add(time.Minute))
	v3 := remove(v0, "bars.4.eggs", evening)
	for _, c := range []struct {
		name     string
		versions []colony.Record
		back, on bool // a step back, a step forward is there
	}{
		{"new", []colony.Record{v0}, false, false},
		{"two steps", []colony.Record{v0, v1, v2}, true, false},
		{"one undone", []colony.Record{v0, v1, v2, v1}, true, true},
		{"all undone", []colony.Record{v0, v1, v2, v1, v0}, false, true},
		{"undone and redone", []colony.Record{v0, v1, v2, v1, v2}, true, false},
		{"another way after undo", []colony.Record{v0, v1, v0, v3}, true, false},
		{"saved twice", []colony.Record{v0, v1, v1}, true, false},
	} {
		tl := timelineOf(c.versions[:len(c.versions)-1], c.versions[len(c.versions)-1])
		_, _, back := tl.step(true)
		_, _, on := tl.step(false)
		if back != c.back || on != c.on {
			t.Errorf("%s: back %v, forward %v", c.name, back, on)
		}
	}
}

func TestUndoKeepsANewerReading(t *testing.T) {
	v0 := kept(t, "bars.4.eggs=yes")
	v1 := remove(v0, "bars.4.eggs", evening)
	v2 := v1
	v2.Read = *made(t, "bars.4.eggs=yes bars.5.honey=yes") // read again by a newer version
	tl := timelineOf([]colony.Record{v0, v1}, v2)
	r, what, ok := tl.step(true)
	if !ok || what != "bar 4 eggs removed" || value(r, "bars.5.honey") != "yes" || value(r, "bars.4.eggs") != "yes" {
		t.Errorf("%v %q %v", ok, what, r)
	}
}
