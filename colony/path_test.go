package colony

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"
)

// everyKind sets one leaf of every shape that a path can have.
var everyKind = []Leaf{
	{"hive", "3"},
	{"at", "2026-05-14T16:00:00Z"},
	{"bars.4.comb.drawn", "0.5"},
	{"bars.4.placed", "2026-05-06"},
	{"bars.4.queen_cells.capped", "yes"},
	{"bars.4.queen_cells.capped.count", "2"},
	{"bars.4.capped_brood", "yes"},
	{"bars.4.capped_brood.cover", "0.8"},
	{"bars.4.eggs", "no"},
	{"bars.12.honey", "yes"},
	{"contents.drone_brood", "no"},
	{"brood_pattern", "solid"},
	{"queen.seen", "no"},
	{"queenright", "yes"},
	{"queen_cells.any", "no"},
	{"temper.score", "4"},
	{"temper.stings", "0"},
	{"signs.chalkbrood", "no"},
	{"weather.temp_c", "17.8"},
	{"actions.feed", "yes"},
	{"actions.feed.amount", "2"},
	{"actions.feed#2", "yes"},
	{"actions.feed#2.what", "fondant"},
	{"plans.inspect", "yes"},
	{"plans.inspect.due", "2026-05-17"},
	{"earlier.fed", "no"},
	{"earlier.fed.on", "2026-05-03"},
}

func filled(t *testing.T) Inspection {
	t.Helper()
	var ins Inspection
	for _, l := range everyKind {
		if err := Set(&ins, l.Path, l.Value); err != nil {
			t.Fatalf("Set(%s, %s): %v", l.Path, l.Value, err)
		}
	}
	return ins
}

func TestLeavesGiveBackWhatWasSet(t *testing.T) {
	ins := filled(t)
	if got := Leaves(&ins); !reflect.DeepEqual(got, everyKind) {
		t.Errorf("Leaves:\n got %v\nwant %v", got, everyKind)
	}
}

func TestJSONRoundTrip(t *testing.T) {
	ins := filled(t)
	data, err := json.Marshal(ins)
	if err != nil {
		t.Fatal(err)
	}
	var back Inspection
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(ins, back) {
		t.Errorf("round trip changed the record:\n%s", data)
	}
}

func TestDeleteLeavesNothingBehind(t *testing.T) {
	ins := filled(t)
	for _, l := range slices.Backward(everyKind) {
		Delete(&ins, l.Path)
	}
	if got := Leaves(&ins); len(got) > 0 {
		t.Errorf("left over: %v", got)
	}
	if !reflect.DeepEqual(ins, Inspection{Bars: []Bar{}, Contents: []Content{}, QueenCells: []QueenCells{},
		Signs: []Sign{}, Actions: []Task{}, Plans: []Task{}, Earlier: []Event{}}) {
		t.Errorf("left over: %+v", ins)
	}
}

func TestSetRefuses(t *testing.T) {
	for path, value := range map[string]string{
		"bars.4":                   "yes",
		"bars.x.eggs":              "yes",
		"bars.4.egg":               "yes",
		"bars.4.eggs.bar":          "4",
		"bars.4.eggs.what":         "eggs",
		"bars.4.eggs.present":      "yes",
		"bars.4.capped_brood.side": "left",
		"queen.seen":               "true",
		"queen.bar":                "four",
		"actions.feed":             "no",
		"actions.feed#1":           "yes",
		"actions.feed#2":           "yes",
		"actions.feed#2.what":      "fondant",
		"actions.feed#x":           "yes",
		"bars.4.eggs#2":            "yes",
		"bars.4#2.eggs":            "yes",
		"actions.fe#2ed":           "yes",
		"queen#2.seen":             "yes",
		"plans.inspect.due":        "2026-02-30",
		"signs.plague":             "yes",
		"temper":                   "4",
		"evidence.hive":            "3",
		"":                         "x",
	} {
		var ins Inspection
		if err := Set(&ins, path, value); err == nil {
			t.Errorf("Set(%q, %q) was accepted", path, value)
		}
		if n := len(Leaves(&ins)); n != 0 || len(ins.Bars) > 0 {
			t.Errorf("Set(%q, %q) left %d leaves, %d bars", path, value, n, len(ins.Bars))
		}
	}
}

func TestRecordAppliesCorrections(t *testing.T) {
	r := Record{ID: "r1", Read: filled(t)}
	r.Read.Check = []Check{{Path: "queen.seen", Why: "hedged"}, {Path: "hive", Why: "inferred"}, {Path: "temper.score", Why: "hedged"}}
	r.Corrections = []Correction{{Path: "queen.seen", Value: "yes"}, {Path: "bars.12.honey", Deleted: true}}
	r.Accepted = []string{"hive"}
	now := r.Inspection()
	if v, _ := Get(&now, "queen.seen"); v != "yes" {
		t.Errorf("queen.seen = %q", v)
	}
	if now.Bar(12) != nil {
		t.Error("bar 12 should be gone with its only leaf")
	}
	if len(now.Check) != 1 || now.Check[0].Path != "temper.score" {
		t.Errorf("open checks: %v", now.Check)
	}
	if v, _ := Get(&r.Read, "queen.seen"); v != "no" {
		t.Error("the reading itself was changed")
	}
}
