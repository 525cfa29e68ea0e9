package colony

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// route is how a leaf is reached from an inspection, or from one of its bars.
// All bars share their routes, and so do all deeds of a kind: there are some
// hundreds of routes, and millions of leaves.
type route struct {
	field Field  // without its path
	steps []step // down to what holds the leaf
	to    string // the part of the path that they stand for
	leaf  int    // the leaf's field there; absent for the presence of an item that is never denied
	item  bool   // whether the leaf is the presence of a list's item
	keyed int    // which part of the path is the key of a list's item, absent for none
}

const absent = -1

// step leads into a group or to an item of a keyed list.
type step struct {
	index    int        // of the group or list among the fields
	list     *keyedList // nil for a group
	contents bool       // the list is one of contents
}

// keyedList is a list with the item that a route passes.
type keyedList struct {
	key     int // the field that holds the item's key
	word    string
	present int           // the field that says whether the item was denied; absent where it is never denied
	fresh   reflect.Value // an item of the word of which nothing is said yet
}

// Address is the path of a leaf taken apart: its route, and which bar and which of
// several items of one key it means.
type Address struct {
	path    string
	route   *route
	ofBar   bool
	bar     int
	barNth  int
	itemNth int
}

// AddressOf takes a path apart, or says why no leaf has it.
func AddressOf(path string) (Address, error) {
	a := Address{path: path, barNth: 1, itemNth: 1}
	leaf := path
	if rest, ok := strings.CutPrefix(path, "bars."); ok {
		var err error
		if leaf, err = a.takeBar(rest); err != nil {
			return a, err
		}
	}
	before, after, several := strings.Cut(leaf, "#")
	var number string
	if several {
		var below string
		var deeper bool
		number, below, deeper = strings.Cut(after, ".")
		if leaf = before; deeper {
			leaf += "." + below
		}
	}
	var err error
	if a.route, err = routeTo(leaf, a.ofBar); a.route == nil {
		return a, a.unknown(err)
	}
	if !several {
		return a, nil
	}
	if strings.Count(before, ".") != a.route.keyed {
		return a, a.unknown(nil)
	}
	if a.itemNth, err = nth(number); err != nil {
		return a, a.unknown(err)
	}
	return a, nil
}

// takeBar takes the bar's number from "4.eggs" and returns the leaf behind it.
func (a *Address) takeBar(rest string) (string, error) {
	name, leaf, ok := strings.Cut(rest, ".")
	if !ok {
		return "", a.unknown(nil)
	}
	word, after, several := strings.Cut(name, "#")
	n, err := strconv.Atoi(word)
	if err != nil || n < 0 {
		return "", a.unknown(fmt.Errorf("%q is no number", word))
	}
	a.ofBar, a.bar = true, n
	if several {
		if a.barNth, err = nth(after); err != nil {
			return "", a.unknown(err)
		}
	}
	return leaf, nil
}

// nth reads the number in "feed#2", the second of the feeds.
func nth(number string) (int, error) {
	n, err := strconv.Atoi(number)
	if err != nil || n < 2 {
		return 0, fmt.Errorf("%q: the number after # starts at 2", "#"+number)
	}
	return n, nil
}

func (a *Address) unknown(why error) error {
	if why == nil {
		return fmt.Errorf("no such leaf: %q", a.path)
	}
	return fmt.Errorf("no such leaf: %q: %w", a.path, why)
}

// routes are those found so far, by leaf, of an inspection and of a bar. A map
// is never written to once it stands here: a longer one takes its place.
var (
	routes     [2]atomic.Pointer[map[string]*route]
	routesLock sync.Mutex
)

func routeTo(leaf string, ofBar bool) (*route, error) {
	known, from := &routes[0], reflect.TypeFor[Inspection]()
	if ofBar {
		if leaf == "bar" {
			return nil, nil // the path says it already
		}
		known, from = &routes[1], reflect.TypeFor[Bar]()
	}
	if m := known.Load(); m != nil {
		if r := (*m)[leaf]; r != nil {
			return r, nil
		}
	}
	r, err := findRoute(from, leaf)
	if r == nil {
		return nil, err
	}
	routesLock.Lock()
	defer routesLock.Unlock()
	longer := map[string]*route{}
	if m := known.Load(); m != nil {
		longer = maps.Clone(*m)
	}
	longer[strings.Clone(leaf)] = r
	known.Store(&longer)
	return r, nil
}

// Field describes the leaf.
func (a *Address) Field() Field {
	f := a.route.field
	f.Path = a.path
	return f
}

// IsItem reports whether the leaf says that a list has an item, or has not.
func (a *Address) IsItem() bool { return a.route.item }

// findRoute follows a leaf's path through the record's types. Where there is
// none, it returns nil, and an error if there is more to say.
func findRoute(here reflect.Type, leaf string) (*route, error) {
	r := &route{keyed: absent}
	rest := strings.Split(leaf, ".")
	for {
		m, ok := memberNamed(here, rest[0])
		if ok {
			rest = rest[1:]
		} else if m, ok = inlineList(here); !ok {
			return nil, nil
		}
		at := here.Field(m.index).Type
		switch {
		case m.key != "":
			if len(rest) == 0 || m.name == "bars" {
				return nil, nil
			}
			list, err := listOf(at.Elem(), m, rest[0])
			if err != nil {
				return nil, err
			}
			r.keyed = strings.Count(leaf, ".") - len(rest) + 1
			r.steps = append(r.steps, step{m.index, list, at == reflect.TypeFor[[]Content]()})
			here, rest = at.Elem(), rest[1:]
			if len(rest) == 0 {
				r.leaf, r.item, r.to = list.present, true, leaf
				r.field = presenceField(list.present != absent)
				return r, nil
			}
			if rest[0] == m.key || rest[0] == "present" {
				return nil, nil
			}
		case isGroup(at):
			if len(rest) == 0 {
				return nil, nil
			}
			r.steps = append(r.steps, step{index: m.index})
			here = at.Elem()
		default:
			if len(rest) > 0 {
				return nil, nil
			}
			r.leaf, r.field = m.index, scalarField(m, at)
			r.to = leaf[:max(strings.LastIndexByte(leaf, '.'), 0)]
			return r, nil
		}
	}
}

// listOf is the step into the item of a keyed list.
func listOf(item reflect.Type, m member, word string) (*keyedList, error) {
	key, _ := memberNamed(item, m.key)
	if !slices.Contains(key.values, word) {
		return nil, fmt.Errorf("%q is none of %s", word, strings.Join(key.values, ", "))
	}
	list := &keyedList{key: key.index, word: word, present: absent}
	if present, ok := memberNamed(item, "present"); ok {
		list.present = present.index
	}
	list.fresh = reflect.New(item).Elem()
	list.fresh.Field(list.key).SetString(word)
	if list.present != absent {
		if p := list.fresh.Field(list.present); p.Kind() == reflect.Bool {
			p.SetBool(true)
		}
	}
	return list, nil
}

func presenceField(deniable bool) Field {
	if !deniable {
		return Field{Kind: Bool, Values: []string{"yes"}}
	}
	return Field{Kind: Bool, Values: []string{"yes", "no"}}
}

func scalarField(m member, t reflect.Type) Field {
	f := Field{Values: m.values, Min: m.min, Max: m.max}
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
	case t.Kind() != reflect.String:
		panic("colony: no kind of leaf is a " + t.String())
	case len(f.Values) > 0:
		f.Kind = Word
	default:
		f.Kind = Text
	}
	return f
}

// follow goes down some steps, from the bar if the path names one; a pen makes what is
// missing on the way, and nil makes nothing.
func (a *Address) follow(ins *Inspection, steps []step, pen *Pen) (reflect.Value, error) {
	holder, contents := reflect.ValueOf(ins), &ins.Contents
	if a.ofBar {
		bar, err := a.barOf(ins, pen != nil)
		if err != nil {
			return holder, err
		}
		holder, contents = reflect.ValueOf(bar), &bar.Contents
	}
	holder = holder.Elem()
	for i := range steps {
		s := &steps[i]
		if s.contents {
			c := s.list.content(contents, a.itemNth, pen)
			if c == nil {
				return holder, a.unknown(s.list.missing())
			}
			holder = reflect.ValueOf(c).Elem()
			continue
		}
		at := holder.Field(s.index)
		if s.list != nil {
			var err error
			if holder, err = s.list.item(at, a.itemNth, pen != nil); err != nil {
				return holder, a.unknown(err)
			}
			continue
		}
		if at.IsNil() {
			if pen == nil {
				return holder, a.unknown(nil)
			}
			at.Set(reflect.New(at.Type().Elem()))
		}
		holder = at.Elem()
	}
	return holder, nil
}

// fewBars is the number of bars that room is made for at a time: a visit seldom
// tells of one alone.
const fewBars = 6

// barOf is the bar that the address means, kept in order of number where it is
// made.
func (a *Address) barOf(ins *Inspection, create bool) (*Bar, error) {
	found := 0
	for i := range ins.Bars {
		if ins.Bars[i].Bar == a.bar {
			if found++; found == a.barNth {
				return &ins.Bars[i], nil
			}
		}
	}
	if !create || found < a.barNth-1 {
		return nil, a.unknown(fmt.Errorf("%d is not there", a.bar))
	}
	at := len(ins.Bars)
	for at > 0 && ins.Bars[at-1].Bar > a.bar {
		at--
	}
	if len(ins.Bars) == cap(ins.Bars) {
		ins.Bars = slices.Grow(ins.Bars, fewBars)
	}
	ins.Bars = slices.Insert(ins.Bars, at, Bar{Bar: a.bar})
	return &ins.Bars[at], nil
}

// item finds the nth item of the key in the list; with create the item after the
// last of its key is made, and no other.
func (l *keyedList) item(list reflect.Value, nth int, create bool) (reflect.Value, error) {
	i, before := l.find(list, nth)
	if i >= 0 {
		return list.Index(i), nil
	}
	if !create || before < nth-1 {
		return list, l.missing()
	}
	n := list.Len()
	list.Grow(1)
	list.SetLen(n + 1)
	item := list.Index(n)
	item.Set(l.fresh)
	return item, nil
}

func (l *keyedList) missing() error { return fmt.Errorf("%q is not there", l.word) }

// content is item for contents, nil where it is not there: most leaves of a note tell of
// them, and to reach them by reflection takes several times as long.
func (l *keyedList) content(list *[]Content, nth int, pen *Pen) *Content {
	before := 0
	for i := range *list {
		if c := &(*list)[i]; c.What == l.word {
			if before++; before == nth {
				return c
			}
		}
	}
	if pen == nil || before < nth-1 {
		return nil
	}
	if *list == nil {
		*list = pen.takeRoom()
	}
	*list = append(*list, Content{What: l.word, Present: true})
	return &(*list)[len(*list)-1]
}

// find returns the index of the nth item of the key, or -1 and how many there are.
func (l *keyedList) find(list reflect.Value, nth int) (index, before int) {
	for i := range list.Len() {
		if list.Index(i).Field(l.key).String() == l.word {
			if before++; before == nth {
				return i, before - 1
			}
		}
	}
	return -1, before
}
