package colony

import (
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// everyLeaf lists the paths of all leaves that a struct of the record can hold, an
// item of a list before what is told of it.
func everyLeaf(t reflect.Type, path string) []string {
	var out []string
	for _, m := range membersOf(t) {
		at := t.Field(m.index).Type
		switch {
		case m.name == "bars" && m.key != "":
			out = append(out, everyLeaf(at.Elem(), "bars.4")...)
		case m.key != "":
			key, _ := memberNamed(at.Elem(), m.key)
			for _, word := range key.values {
				item := join(path, m.name+"."+word)
				if m.inline {
					item = join(path, word)
				}
				out = append(out, item)
				for _, leaf := range everyLeaf(at.Elem(), item) {
					if leaf != join(item, m.key) && leaf != item+".present" {
						out = append(out, leaf)
					}
				}
			}
		case isGroup(at):
			out = append(out, everyLeaf(at.Elem(), join(path, m.name))...)
		case join(path, m.name) != "bars.4.bar":
			out = append(out, join(path, m.name))
		}
	}
	return out
}

// valuesOf are some values that can stand in the field.
func valuesOf(f Field) []string {
	return map[Kind][]string{Bool: f.Values, Word: f.Values, Int: {"1", "7"}, Number: {"0.5", "1"},
		Text: {"3", "something"}, Day: {"2026-05-14", "2025-12-31"}, Time: {"2026-05-14T16:00:00Z"}}[f.Kind]
}

func TestEveryLeafStandsAlone(t *testing.T) {
	for _, path := range everyLeaf(reflect.TypeFor[Inspection](), "") {
		f, err := FieldOf(path)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, value := range valuesOf(f) {
			var ins Inspection
			if err := Set(&ins, path, value); err != nil {
				t.Error(err)
			}
			if got, ok := Get(&ins, path); !ok || got != value {
				t.Errorf("%s: set to %q, got %q, %v", path, value, got, ok)
			}
			a, _ := AddressOf(path)
			if got := Leaves(&ins); len(got) > 1+len(a.route.steps) || got[len(got)-1] != (Leaf{path, value}) {
				t.Errorf("%s: set to %q, leaves %v", path, value, got)
			}
		}
	}
}

// TestRoomSharesNoValue writes the same leaves in any order into inspections that
// share a room and into others that share nothing, and changes some again.
func TestRoomSharesNoValue(t *testing.T) {
	paths := everyLeaf(reflect.TypeFor[Inspection](), "")
	for _, path := range everyLeaf(reflect.TypeFor[Bar](), "bars.2") {
		if path != "bars.2.bar" {
			paths = append(paths, path)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		var room Room
		var together, alone [3]Inspection
		for range rapid.IntRange(1, 300).Draw(t, "steps") {
			i := rapid.IntRange(0, 2).Draw(t, "inspection")
			path := rapid.SampledFrom(paths).Draw(t, "path")
			if rapid.IntRange(0, 9).Draw(t, "delete") == 0 {
				Delete(&together[i], path)
				Delete(&alone[i], path)
				continue
			}
			a, err := AddressOf(path)
			if err != nil {
				t.Fatal(err)
			}
			value := rapid.SampledFrom(valuesOf(a.Field())).Draw(t, "value")
			if _, err := a.Set(&together[i], value, &room); err != nil {
				t.Fatal(err)
			}
			if err := Set(&alone[i], path, value); err != nil {
				t.Fatal(err)
			}
		}
		if !reflect.DeepEqual(together, alone) {
			t.Fatalf("got  %v\nwant %v", leavesOfAll(together[:]), leavesOfAll(alone[:]))
		}
	})
}

func leavesOfAll(all []Inspection) (out [][]Leaf) {
	for i := range all {
		out = append(out, Leaves(&all[i]))
	}
	return out
}

// Two long lists that grow by turns, of items of one type, are not copied for each.
func TestLongListSeldomMoves(t *testing.T) {
	var ins Inspection
	var room Room
	moved, first := 0, (*Task)(nil)
	for n := range 1000 {
		for _, path := range []string{"actions.inspect", "plans.inspect"} {
			if n > 0 {
				path = fmt.Sprintf("%s#%d", path, n+1)
			}
			a, err := AddressOf(path)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := a.Set(&ins, "yes", &room); err != nil {
				t.Fatal(err)
			}
		}
		if first != &ins.Actions[0] {
			first = &ins.Actions[0]
			moved++
		}
	}
	if moved > 30 {
		t.Errorf("a list of 1000 deeds was moved %d times", moved)
	}
}

func TestDeniedEventIsAffirmed(t *testing.T) {
	var ins Inspection
	for _, value := range []string{"no", "yes"} {
		if err := Set(&ins, "earlier.fed", value); err != nil {
			t.Fatal(err)
		}
		if got, _ := Get(&ins, "earlier.fed"); got != value {
			t.Errorf("earlier.fed was set to %s and is %s", value, got)
		}
	}
}
