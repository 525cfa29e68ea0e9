package colony

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
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
	at, err := locate(ins, path, false)
	if err != nil {
		return "", false
	}
	return at.text()
}

// Set writes the leaf, making the bar or list item that it belongs to where
// that is missing. It refuses a path that the record does not know and a value
// that cannot stand there; it does not judge whether a number is plausible.
func Set(ins *Inspection, path, value string) error {
	field, err := FieldOf(path)
	if err != nil {
		return err
	}
	if err := field.Check(value); err != nil {
		return err
	}
	at, err := locate(ins, path, true)
	if err != nil {
		return err
	}
	at.set(value)
	slices.SortStableFunc(ins.Bars, func(a, b Bar) int { return a.Bar - b.Bar })
	return nil
}

// Delete removes the leaf, and with a list item everything said of it. Bars
// and groups that are left with nothing go too. A leaf that is not there is no
// error.
func Delete(ins *Inspection, path string) {
	at, err := locate(ins, path, false)
	if err != nil {
		return
	}
	if at.list.IsValid() && !at.value.IsValid() {
		at.list.Set(reflect.AppendSlice(at.list.Slice(0, at.place), at.list.Slice(at.place+1, at.list.Len())))
	} else {
		at.value.SetZero()
	}
	prune(reflect.ValueOf(ins).Elem())
}

// position is where a path leads: a scalar field (value), or a list item
// itself (list and place), whose leaf is its presence.
type position struct {
	member member
	value  reflect.Value
	list   reflect.Value
	place  int
}

func (p position) item() reflect.Value { return p.list.Index(p.place) }

func (p position) presence() reflect.Value { return p.item().FieldByName("Present") }

func (p position) text() (string, bool) {
	if p.value.IsValid() {
		return scalarText(p.value)
	}
	return presenceText(p.item()), true
}

func (p position) field(path string) Field {
	f := Field{Path: path, Values: p.member.values, Min: p.member.min, Max: p.member.max}
	if !p.value.IsValid() {
		f.Kind, f.Values, f.Min, f.Max = Bool, []string{"yes", "no"}, 0, 0
		if !p.presence().IsValid() {
			f.Values = []string{"yes"}
		}
		return f
	}
	t := p.value.Type()
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case t == reflect.TypeFor[Date]():
		f.Kind = Day
	case t == reflect.TypeFor[time.Time]():
		f.Kind = Time
	case t.Kind() == reflect.Bool:
		f.Kind, f.Values = Bool, []string{"yes", "no"}
	case t.Kind() == reflect.Int:
		f.Kind = Int
	case t.Kind() == reflect.Float64:
		f.Kind = Number
	case len(f.Values) > 0:
		f.Kind = Word
	default:
		f.Kind = Text
	}
	return f
}

// set writes a value that Field.Check has passed.
func (p position) set(text string) {
	v := p.value
	if !v.IsValid() {
		v = p.presence()
		if !v.IsValid() || (v.Kind() == reflect.Pointer && text == "yes") {
			return
		}
	}
	if v.Kind() == reflect.Pointer {
		v.Set(reflect.New(v.Type().Elem()))
		v = v.Elem()
	}
	switch v.Interface().(type) {
	case Date:
		d, _ := ParseDate(text)
		v.Set(reflect.ValueOf(d))
	case time.Time:
		t, _ := time.Parse(time.RFC3339, text)
		v.Set(reflect.ValueOf(t))
	case bool:
		v.SetBool(text == "yes")
	case int:
		n, _ := strconv.Atoi(text)
		v.SetInt(int64(n))
	case float64:
		n, _ := strconv.ParseFloat(text, 64)
		v.SetFloat(n)
	default:
		v.SetString(text)
	}
}

// locate follows a path; with create it makes what is missing on the way.
func locate(ins *Inspection, path string, create bool) (position, error) {
	fail := func() (position, error) { return position{}, fmt.Errorf("no such leaf: %q", path) }
	here := reflect.ValueOf(ins).Elem()
	rest := strings.Split(path, ".")
	for {
		name := rest[0]
		m, ok := memberNamed(here.Type(), name)
		if !ok {
			if m, ok = inlineList(here.Type()); !ok {
				return fail()
			}
		} else if rest = rest[1:]; m.key == "" && !isGroup(here.Field(m.index)) {
			if len(rest) > 0 {
				return fail()
			}
			return position{member: m, value: here.Field(m.index)}, nil
		}
		if len(rest) == 0 {
			return fail()
		}
		if m.key == "" {
			group := here.Field(m.index)
			if group.IsNil() {
				if !create {
					return fail()
				}
				group.Set(reflect.New(group.Type().Elem()))
			}
			here = group.Elem()
			continue
		}
		list := here.Field(m.index)
		place, err := itemOf(list, m.key, rest[0], create)
		if err != nil {
			return position{}, fmt.Errorf("no such leaf: %q: %w", path, err)
		}
		if rest = rest[1:]; len(rest) == 0 {
			if m.name == "bars" {
				return fail()
			}
			return position{member: m, list: list, place: place}, nil
		}
		here = list.Index(place)
		if rest[0] == m.key || rest[0] == "present" {
			return fail()
		}
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

func isGroup(v reflect.Value) bool {
	return v.Kind() == reflect.Pointer && v.Type().Elem().Kind() == reflect.Struct
}

// itemOf finds the item of a keyed list by "key" or "key#n", the nth of them.
func itemOf(list reflect.Value, key, name string, create bool) (int, error) {
	word, nth := name, 1
	if before, after, ok := strings.Cut(name, "#"); ok {
		n, err := strconv.Atoi(after)
		if err != nil || n < 2 {
			return 0, fmt.Errorf("%q: the number after # starts at 2", name)
		}
		word, nth = before, n
	}
	m, _ := memberNamed(list.Type().Elem(), key)
	if len(m.values) > 0 && !slices.Contains(m.values, word) {
		return 0, fmt.Errorf("%q is none of %s", word, strings.Join(m.values, ", "))
	}
	found := 0
	for i := range list.Len() {
		if keyText(list.Index(i).Field(m.index)) == word {
			if found++; found == nth {
				return i, nil
			}
		}
	}
	if !create || nth > 2 && found < nth-1 && list.Len() > 0 {
		return 0, fmt.Errorf("%q is not there", name)
	}
	return appendItem(list, m, word)
}

func appendItem(list reflect.Value, key member, word string) (int, error) {
	item := reflect.New(list.Type().Elem()).Elem()
	if f := item.Field(key.index); f.Kind() == reflect.Int {
		n, err := strconv.Atoi(word)
		if err != nil || n < 0 {
			return 0, fmt.Errorf("%q is no number", word)
		}
		f.SetInt(int64(n))
	} else {
		f.SetString(word)
	}
	if p := item.FieldByName("Present"); p.IsValid() && p.Kind() == reflect.Bool {
		p.SetBool(true)
	}
	list.Set(reflect.Append(list, item))
	return list.Len() - 1, nil
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
		case isGroup(f):
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
		case isGroup(f) && !f.IsNil():
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
