package colony

import (
	"fmt"
	"maps"
	"reflect"
	"strings"
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

// TestLeavesInAnyOrder writes and deletes leaves in any order and keeps by itself
// which there are: what was deleted does not come back with an item that is made
// in its place.
func TestLeavesInAnyOrder(t *testing.T) {
	paths := everyLeaf(reflect.TypeFor[Inspection](), "")
	for _, path := range everyLeaf(reflect.TypeFor[Bar](), "bars.2") {
		if path != "bars.2.bar" {
			paths = append(paths, path)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		var ins Inspection
		pen := NewPen(&ins)
		want := map[string]string{}
		for range rapid.IntRange(1, 300).Draw(t, "steps") {
			path := rapid.SampledFrom(paths).Draw(t, "path")
			a, err := AddressOf(path)
			if err != nil {
				t.Fatal(err)
			}
			if rapid.IntRange(0, 9).Draw(t, "delete") == 0 {
				Delete(&ins, path)
				pen = NewPen(&ins)
				maps.DeleteFunc(want, func(at, _ string) bool {
					return at == path || a.IsItem() && strings.HasPrefix(at, path+".")
				})
				continue
			}
			value := rapid.SampledFrom(valuesOf(a.Field())).Draw(t, "value")
			item, ofItem := itemOf(&a)
			if told := pen.Told(&a); told != (!ofItem || want[item] != "") {
				t.Fatalf("%s: told %v", path, told)
			}
			if _, err := pen.Set(&a, value); err != nil {
				t.Fatal(err)
			}
			if ofItem && want[item] == "" {
				want[item] = "yes"
			}
			want[path] = value
		}
		got := map[string]string{}
		for _, l := range Leaves(&ins) {
			got[l.Path] = l.Value
		}
		if !maps.Equal(got, want) {
			t.Fatalf("got  %v\nwant %v", got, want)
		}
	})
}

// itemOf is the path of the item that the leaf belongs to.
func itemOf(a *Address) (string, bool) {
	if a.route.keyed == absent {
		return "", false
	}
	parts := a.route.keyed + 1
	if a.ofBar {
		parts += 2
	}
	return strings.Join(strings.Split(a.path, ".")[:parts], "."), true
}

// Two long lists that grow by turns, of items of one type, are not copied for each.
func TestLongListSeldomMoves(t *testing.T) {
	var ins Inspection
	pen := NewPen(&ins)
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
			if _, err := pen.Set(&a, "yes"); err != nil {
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
