package colony

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Kind is the type of a leaf's value.
type Kind int

// The kinds of leaf.
const (
	Bool   Kind = iota // yes or no
	Int                // a whole number
	Number             // a decimal number
	Word               // one of Field.Values
	Text               // free text
	Day                // yyyy-mm-dd
	Time               // RFC 3339
)

// Field describes one leaf: what may stand there.
type Field struct {
	Path   string // as asked for
	Kind   Kind
	Values []string // the allowed words of a Word, "yes no" of a Bool
	Min    float64  // plausible range of Int and Number, both ends included;
	Max    float64  // Min == Max == 0 means unbounded
}

// FieldOf describes the leaf of the given path, or says why there is none.
func FieldOf(path string) (Field, error) {
	a, err := AddressOf(path)
	if err != nil {
		return Field{}, err
	}
	return a.Field(), nil
}

// Check reports whether text can stand in the field: an error where its type
// is wrong or the word is not allowed. A value outside the plausible range is
// no error here; see [Field.Plausible].
func (f *Field) Check(text string) error { return f.check(f.Path, text) }

// check is Check for the leaf of a path.
func (f *Field) check(path, text string) error {
	if _, ok := f.read(text); !ok {
		return f.refusal(path, text)
	}
	return nil
}

// meaning is what the text of a leaf means: that of its kind is set.
type meaning struct {
	yes    bool
	whole  int
	number float64   // of whole numbers, too
	time   time.Time // of days, too
}

// read returns what text means in the field, and whether it can stand there.
func (f *Field) read(text string) (m meaning, ok bool) {
	var err error
	switch f.Kind {
	case Bool:
		m.yes = text == "yes"
		return m, m.yes || text == "no" && len(f.Values) > 1
	case Word:
		return m, slices.Contains(f.Values, text)
	case Int:
		m.whole, err = strconv.Atoi(text)
		m.number = float64(m.whole)
	case Number:
		m.number, err = strconv.ParseFloat(text, 64)
	case Day:
		m.time, err = time.Parse(time.DateOnly, text)
	case Time:
		m.time, err = time.Parse(time.RFC3339, text)
	case Text:
		return m, strings.TrimSpace(text) != ""
	}
	return m, err == nil
}

// refusal says why text cannot stand at the path.
func (f *Field) refusal(path, text string) error {
	switch f.Kind {
	case Bool, Word:
		return fmt.Errorf("%s is one of %s, not %q", path, strings.Join(f.Values, ", "), text)
	case Text:
		return fmt.Errorf("%s is empty", path)
	default:
		return fmt.Errorf("%s takes %s, not %q", path, f.Kind, text)
	}
}

// Plausible reports whether a number lies in the field's plausible range;
// values of other kinds always do.
func (f *Field) Plausible(text string) bool {
	if !f.bounded() {
		return true
	}
	n, err := strconv.ParseFloat(text, 64)
	return err == nil && f.holds(n)
}

// bounded reports whether the field has a plausible range.
func (f *Field) bounded() bool {
	return (f.Kind == Int || f.Kind == Number) && (f.Min != 0 || f.Max != 0)
}

func (f *Field) holds(n float64) bool { return n >= f.Min && n <= f.Max }

// String names the kind for a person.
func (k Kind) String() string {
	return [...]string{"yes or no", "a whole number", "a number", "a word", "text",
		"a date such as 2026-05-14", "a time such as 2026-05-14T16:00:00Z"}[k]
}

// member is one field of a record struct, as its tags describe it.
type member struct {
	name   string
	index  int
	key    string // of a keyed list: the JSON name of the item's key
	inline bool   // the list's items stand right under the parent in paths
	values []string
	min    float64
	max    float64
}

// unpathed are the parts of an inspection that hold no leaf.
var unpathed = []string{"schema", "id", "source", "remarks", "evidence", "check"}

var members sync.Map // reflect.Type → []member

// membersOf lists the fields of a record struct in order.
func membersOf(t reflect.Type) []member {
	if known, ok := members.Load(t); ok {
		return known.([]member)
	}
	var list []member
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if t == reflect.TypeFor[Inspection]() && slices.Contains(unpathed, name) {
			continue
		}
		m := member{name: name, index: i, key: f.Tag.Get("key"), inline: f.Tag.Get("inline") != "",
			values: strings.Fields(f.Tag.Get("values"))}
		m.min, _ = strconv.ParseFloat(f.Tag.Get("min"), 64)
		m.max, _ = strconv.ParseFloat(f.Tag.Get("max"), 64)
		list = append(list, m)
	}
	members.Store(t, list)
	return list
}

func memberNamed(t reflect.Type, name string) (member, bool) {
	for _, m := range membersOf(t) {
		if m.name == name && !m.inline {
			return m, true
		}
	}
	return member{}, false
}

// Keys lists the keys that a keyed list allows: Keys("signs"), or
// Keys("contents") for what a comb holds.
func Keys(list string) []string {
	for _, owner := range []reflect.Type{reflect.TypeFor[Inspection](), reflect.TypeFor[Bar]()} {
		for _, m := range membersOf(owner) {
			if m.name == list && m.key != "" {
				key, _ := memberNamed(owner.Field(m.index).Type.Elem(), m.key)
				return key.values
			}
		}
	}
	return nil
}
