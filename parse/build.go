package parse

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"barwise/colony"
)

// entry is one leaf on its way into the record.
type entry struct {
	path, value string
	depth       int // of the path: how many dots it has
	spans       []colony.Span
	rule, cue   string
}

// builder gathers the leaves of one inspection.
type builder struct {
	hive    string
	named   int           // the sentence that named it
	spans   []colony.Span // the words that named it
	at      time.Time
	atFrom  string
	entries []entry
	place   map[string]int // path → index in entries
	checks  []colony.Check
	remarks []string
	flagged map[string]int // path → index in checks
	deeds   map[string]int // "actions.feed" → how many
}

func newBuilder() *builder {
	return &builder{place: map[string]int{}, flagged: map[string]int{}, deeds: map[string]int{}}
}

// mostKept is the number of leaves above which a builder is not used again: the
// room of a very long note would be carried along for ever.
const mostKept = 1 << 12

// forget readies the builder for another inspection.
func (b *builder) forget() {
	if len(b.entries) > mostKept {
		*b = *newBuilder()
		return
	}
	clear(b.place)
	clear(b.flagged)
	clear(b.deeds)
	*b = builder{entries: b.entries[:0], checks: b.checks[:0], place: b.place, flagged: b.flagged, deeds: b.deeds}
}

func (b *builder) empty() bool { return len(b.entries) == 0 }

// put writes a leaf. A second, different value wins and is flagged, since what
// was said last is what was meant; the first stays on offer.
func (b *builder) put(path, value string, why source) {
	if i, ok := b.place[path]; ok {
		e := &b.entries[i]
		if e.value != value {
			b.flag(path, "said in two ways: "+e.value+", then "+value, e.value)
			e.value, e.rule, e.cue, e.spans = value, why.rule, why.cue, nil
		}
		for _, s := range why.spans {
			if !slices.Contains(e.spans, s) && len(e.spans) < maxSpans {
				e.spans = append(e.spans, s)
			}
		}
	} else {
		b.place[path] = len(b.entries)
		b.entries = append(b.entries, entry{path, value, strings.Count(path, "."), slices.Clip(why.spans), why.rule, why.cue})
	}
	for _, w := range why.doubts {
		b.flag(path, w, "")
	}
}

// maxSpans bounds the evidence of one leaf: a note that says a thing more
// often than this says nothing new.
const maxSpans = 16

// drop removes a leaf and all below it.
func (b *builder) drop(path string) {
	for i := range b.entries {
		if e := &b.entries[i]; e.path == path || strings.HasPrefix(e.path, path+".") {
			delete(b.place, e.path)
			e.path = ""
		}
	}
	b.entries = slices.DeleteFunc(b.entries, func(e entry) bool { return e.path == "" })
	for i, e := range b.entries {
		b.place[e.path] = i
	}
	b.checks = slices.DeleteFunc(b.checks, func(c colony.Check) bool {
		return c.Path == path || strings.HasPrefix(c.Path, path+".")
	})
	for i, c := range b.checks {
		b.flagged[c.Path] = i
	}
}

func (b *builder) get(path string) (string, bool) {
	if i, ok := b.place[path]; ok {
		return b.entries[i].value, true
	}
	return "", false
}

// flag asks a person to look at a leaf.
func (b *builder) flag(path, why, alt string) {
	if i, ok := b.flagged[path]; ok && i < len(b.checks) && b.checks[i].Path == path {
		if !strings.Contains(b.checks[i].Why, why) && len(b.checks[i].Why) < 200 {
			b.checks[i].Why += "; " + why
		}
		if b.checks[i].Alt == "" {
			b.checks[i].Alt = alt
		}
		return
	}
	b.flagged[path] = len(b.checks)
	b.checks = append(b.checks, colony.Check{Path: path, Why: why, Alt: alt})
}

// deed opens an item of actions, plans or earlier, such as actions.feed, and
// returns its path; the second of a kind is numbered.
func (b *builder) deed(key string) string {
	b.deeds[key]++
	if n := b.deeds[key]; n > 1 {
		return key + "#" + strconv.Itoa(n)
	}
	return key
}

// source is why a leaf was written: the words, the rule, the cue that judged
// them, and what makes it doubtful.
type source struct {
	spans     []colony.Span
	rule, cue string
	doubts    []string
}

// inspection fills in the record; implausible values are kept and flagged.
func (b *builder) inspection(ins *colony.Inspection, note *colony.Note, seq int) {
	*ins = colony.Inspection{Schema: colony.Schema, Hive: b.hive, At: b.at, Remarks: b.remarks,
		Source: colony.Source{Note: note.Hash, Name: note.Name, Seq: seq, Parser: Version(), AtFrom: b.atFrom}}
	b.write(ins)
	ins.Check = append(ins.Check, b.checks...)
	ins.Check = append(ins.Check, beyond(ins)...)
	slices.SortStableFunc(ins.Check, func(x, y colony.Check) int { return cmp.Compare(x.Path, y.Path) })
}

// write sets the leaves, a group or an item of a list before what is told of it.
func (b *builder) write(ins *colony.Inspection) {
	spans, deepest := len(b.spans), 0
	for i := range b.entries {
		spans += len(b.entries[i].spans)
		deepest = max(deepest, b.entries[i].depth)
	}
	if spans > 0 {
		ins.Evidence = make(map[string][]colony.Span, len(b.entries)+1)
	}
	copies := make([]colony.Span, 0, spans)
	keep := func(path string, of []colony.Span) {
		if n := len(copies); len(of) > 0 {
			copies = append(copies, of...)
			ins.Evidence[path] = copies[n:len(copies):len(copies)]
		}
	}
	for depth := 0; depth <= deepest; depth++ {
		for i := range b.entries {
			e := &b.entries[i]
			if e.depth != depth {
				continue
			}
			field, err := colony.SetField(ins, e.path, e.value)
			if err != nil {
				// A rule that names a leaf wrongly is a fault of the rules, which
				// their tests find; the words still reach the keeper.
				ins.Remarks = append(ins.Remarks, e.path+"="+e.value)
				continue
			}
			if !field.Plausible(e.value) {
				b.flag(e.path, "out of the usual range", "")
			}
			keep(e.path, e.spans)
		}
	}
	keep("hive", b.spans)
}

// beyond flags bars behind the last one in use.
func beyond(ins *colony.Inspection) []colony.Check {
	if ins.BarsTotal == nil {
		return nil
	}
	var out []colony.Check
	for _, bar := range ins.Bars {
		if bar.Bar > *ins.BarsTotal+2 {
			p := "bars." + strconv.Itoa(bar.Bar)
			out = append(out, colony.Check{Path: p, Why: "beyond the " + strconv.Itoa(*ins.BarsTotal) + " bars in use"})
		}
	}
	return out
}
