package colony

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"time"
)

// Leaf is one value of an inspection: its path and the value as text (yes or
// no for a truth, yyyy-mm-dd for a day, RFC 3339 for a time).
type Leaf struct {
	Path  string
	Value string
}

// Leaves lists every leaf of the inspection, in the order of the record, bars
// by number. The second of two deeds of one kind is named actions.feed#2.
func Leaves(ins *Inspection) []Leaf {
	var out []Leaf
	walkStruct(reflect.ValueOf(ins).Elem(), "", &out)
	return out
}

// Get returns the leaf's value as text and whether the record holds it.
func Get(ins *Inspection, path string) (string, bool) {
	a, err := AddressOf(path)
	if err != nil {
		return "", false
	}
	holder, err := a.follow(ins, a.route.steps, nil)
	if err != nil {
		return "", false
	}
	return a.route.text(holder)
}

// Set writes the leaf, making the bar or list item that it belongs to where
// that is missing. It refuses a path that the record does not know and a value
// that cannot stand there; it does not judge whether a number is plausible.
func Set(ins *Inspection, path, value string) error {
	a, err := AddressOf(path)
	if err != nil {
		return err
	}
	byNumber := func(a, b Bar) int { return a.Bar - b.Bar }
	if !slices.IsSortedFunc(ins.Bars, byNumber) {
		slices.SortStableFunc(ins.Bars, byNumber)
	}
	pen := NewPen(ins)
	_, err = pen.Set(&a, value)
	return err
}

// Delete removes the leaf, and with a list item everything said of it. Bars
// and groups that are left with nothing go too. A leaf that is not there is no
// error.
func Delete(ins *Inspection, path string) {
	a, err := AddressOf(path)
	if err != nil {
		return
	}
	if a.route.item {
		err = a.deleteItem(ins)
	} else {
		err = a.deleteLeaf(ins)
	}
	if err == nil {
		prune(reflect.ValueOf(ins).Elem())
	}
}

func (a *Address) deleteLeaf(ins *Inspection) error {
	holder, err := a.follow(ins, a.route.steps, nil)
	if err != nil {
		return err
	}
	holder.Field(a.route.leaf).SetZero()
	return nil
}

// deleteItem removes the item of a list whose presence the leaf is.
func (a *Address) deleteItem(ins *Inspection) error {
	last := len(a.route.steps) - 1
	owner, err := a.follow(ins, a.route.steps[:last], nil)
	if err != nil {
		return err
	}
	step := &a.route.steps[last]
	list := owner.Field(step.index)
	if i, _ := step.list.find(list, a.itemNth); i >= 0 {
		list.Set(reflect.AppendSlice(list.Slice(0, i), list.Slice(i+1, list.Len())))
	}
	return nil
}

// text is the leaf as it stands in its holder.
func (r *route) text(holder reflect.Value) (string, bool) {
	if r.item {
		return presenceText(holder), true
	}
	return scalarText(holder.Field(r.leaf))
}

// set writes a value that was read from text.
func (r *route) set(holder reflect.Value, text string, m *meaning) {
	if r.leaf == absent {
		return // that the deed is there says it
	}
	at := holder.Field(r.leaf)
	switch r.field.Kind {
	case Bool:
		switch {
		case at.Kind() == reflect.Bool:
			at.SetBool(m.yes)
		case r.item && m.yes:
			at.SetZero() // an item that is there and not denied says nothing
		default:
			at.Set(reflect.ValueOf(new(m.yes)))
		}
	case Int:
		at.Set(reflect.ValueOf(new(m.whole)))
	case Number:
		at.Set(reflect.ValueOf(new(m.number)))
	case Day:
		at.Set(reflect.ValueOf(DateOf(m.time)))
	case Time:
		at.Set(reflect.ValueOf(m.time))
	default:
		at.SetString(text)
	}
}

func inlineList(t reflect.Type) (member, bool) {
	for _, m := range membersOf(t) {
		if m.inline {
			return m, true
		}
	}
	return member{}, false
}

func isGroup(t reflect.Type) bool {
	return t.Kind() == reflect.Pointer && t.Elem().Kind() == reflect.Struct
}

func keyText(v reflect.Value) string {
	if v.Kind() == reflect.Int {
		return strconv.FormatInt(v.Int(), 10)
	}
	return v.String()
}

func presenceText(item reflect.Value) string {
	p := item.FieldByName("Present")
	if !p.IsValid() || p.Kind() == reflect.Pointer && p.IsNil() {
		return "yes"
	}
	return yesNo(reflect.Indirect(p).Bool())
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// scalarText is the value as text, and false where it is absent.
func scalarText(v reflect.Value) (string, bool) {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return "", false
		}
		v = v.Elem()
	} else if v.IsZero() {
		return "", false
	}
	switch x := v.Interface().(type) {
	case bool:
		return yesNo(x), true
	case float64:
		return strconv.FormatFloat(x, 'f', -1, 64), true
	case time.Time:
		return x.Format(time.RFC3339), true
	default:
		return fmt.Sprint(x), true
	}
}

func walkStruct(v reflect.Value, path string, out *[]Leaf) {
	for _, m := range membersOf(v.Type()) {
		f := v.Field(m.index)
		at := join(path, m.name)
		switch {
		case m.key != "":
			if m.inline {
				at = path
			}
			walkList(f, m.key, at, out)
		case isGroup(f.Type()):
			if !f.IsNil() {
				walkStruct(f.Elem(), at, out)
			}
		default:
			if text, ok := scalarText(f); ok && m.name != "present" {
				*out = append(*out, Leaf{at, text})
			}
		}
	}
}

func walkList(list reflect.Value, key, path string, out *[]Leaf) {
	seen := map[string]int{}
	for i := range list.Len() {
		item := list.Index(i)
		m, _ := memberNamed(item.Type(), key)
		name := keyText(item.Field(m.index))
		if seen[name]++; seen[name] > 1 {
			name = fmt.Sprintf("%s#%d", name, seen[name])
		}
		at := join(path, name)
		if key != "bar" {
			*out = append(*out, Leaf{at, presenceText(item)})
		}
		from := len(*out)
		walkStruct(item, at, out)
		dropKey(out, from, join(at, key))
	}
}

// dropKey removes the item's own key, which its path already says.
func dropKey(out *[]Leaf, from int, path string) {
	for i := from; i < len(*out); i++ {
		if (*out)[i].Path == path {
			*out = slices.Delete(*out, i, i+1)
			return
		}
	}
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// prune removes bars without a leaf and groups without a value.
func prune(v reflect.Value) {
	for _, m := range membersOf(v.Type()) {
		f := v.Field(m.index)
		switch {
		case m.name == "bars" && m.key != "":
			for i := f.Len() - 1; i >= 0; i-- {
				bar := f.Index(i)
				prune(bar)
				if len(leavesUnder(bar)) == 0 {
					f.Set(reflect.AppendSlice(f.Slice(0, i), f.Slice(i+1, f.Len())))
				}
			}
		case isGroup(f.Type()) && !f.IsNil():
			if prune(f.Elem()); f.Elem().IsZero() {
				f.SetZero()
			}
		}
	}
}

func leavesUnder(bar reflect.Value) []Leaf {
	var out []Leaf
	walkStruct(bar, "bar", &out)
	dropKey(&out, 0, "bar.bar")
	return out
}
