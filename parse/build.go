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
	*leafPath
	value     string
	spans     []colony.Span
	rule, cue string
}

// builder gathers the leaves of one inspection.
type builder struct {
	hive    string
	named   int           // the sentence that named it
	passing bool          // it was only named in passing
	spans   []colony.Span // the words that named it
	at      time.Time
	atFrom  string
	paths   *paths
	entries []entry
	places  []int32 // of the entries, one above their index, by the number of their path; at least every other is free
	checks  []colony.Check
	remarks []string
	flagged map[string]int // path → index in checks
	deeds   map[string]int // "actions.feed" → how many
}

func newBuilder(p *paths) *builder {
	return &builder{paths: p, places: make([]int32, 2*usualLeaves), flagged: map[string]int{}, deeds: map[string]int{}}
}

// usualLeaves is about the number of leaves of an inspection, a power of two.
const usualLeaves = 1 << 5

// mostKept is the number of leaves above which a builder is not used again: the
// room of a very long note would be carried along for ever.
const mostKept = 1 << 12

// forget readies the builder for another inspection.
func (b *builder) forget() {
	if len(b.entries) > mostKept {
		*b = *newBuilder(b.paths)
		return
	}
	clear(b.places)
	clear(b.flagged)
	clear(b.remarks) // they are parts of the note
	clear(b.deeds)
	*b = builder{paths: b.paths, entries: b.entries[:0], checks: b.checks[:0], places: b.places, remarks: b.remarks[:0], flagged: b.flagged, deeds: b.deeds}
}

// find returns the entry of a path, or nil.
func (b *builder) find(of *leafPath) *entry {
	mask := int32(len(b.places) - 1)
	for i := of.id & mask; b.places[i] != 0; i = (i + 1) & mask {
		if e := &b.entries[b.places[i]-1]; e.leafPath == of {
			return e
		}
	}
	return nil
}

// add appends an entry, whose path must have none yet.
func (b *builder) add(e entry) {
	b.entries = append(b.entries, e)
	if 2*len(b.entries) > len(b.places) {
		b.places = make([]int32, 2*len(b.places))
		b.placeAll()
		return
	}
	b.settle(len(b.entries) - 1)
}

// placeAll gives each entry its place.
func (b *builder) placeAll() {
	clear(b.places)
	for at := range b.entries {
		b.settle(at)
	}
}

func (b *builder) settle(at int) {
	mask := int32(len(b.places) - 1)
	i := b.entries[at].id & mask
	for b.places[i] != 0 {
		i = (i + 1) & mask
	}
	b.places[i] = int32(at + 1)
}

func (b *builder) empty() bool { return len(b.entries) == 0 }

// put writes a leaf. A second, different value wins and is flagged, since what
// was said last is what was meant; the first stays on offer.
func (b *builder) put(path, value string, why source) {
	of := b.paths.of(path)
	if e := b.find(of); e != nil {
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
		b.add(entry{of, value, slices.Clip(why.spans), why.rule, why.cue})
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
	below := func(at string) bool {
		rest, ok := strings.CutPrefix(at, path)
		return ok && (rest == "" || rest[0] == '.')
	}
	b.entries = slices.DeleteFunc(b.entries, func(e entry) bool { return below(e.text) })
	b.placeAll()
	b.checks = slices.DeleteFunc(b.checks, func(c colony.Check) bool { return below(c.Path) })
	for i, c := range b.checks {
		b.flagged[c.Path] = i
	}
}

func (b *builder) get(path string) (string, bool) {
	if e := b.find(b.paths.of(path)); e != nil {
		return e.value, true
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
	*ins = colony.Inspection{Schema: colony.Schema, Hive: b.hive, At: b.at, Remarks: append([]string(nil), b.remarks...),
		Source: colony.Source{Note: note.Hash, Name: note.Name, Seq: seq, Parser: Version(), AtFrom: b.atFrom}}
	b.write(ins)
	ins.Check = slices.Concat(b.checks, beyond(ins))
	slices.SortStableFunc(ins.Check, func(x, y colony.Check) int { return cmp.Compare(x.Path, y.Path) })
}

// write sets the leaves, the items of lists before what is told of them: that
// mostly comes right behind, and else waits for the end.
func (b *builder) write(ins *colony.Inspection) {
	spans := len(b.spans)
	for i := range b.entries {
		spans += len(b.entries[i].spans)
	}
	if spans > 0 {
		ins.Evidence = make(colony.Evidence, 0, len(b.entries)+1)
	}
	copies := make([]colony.Span, 0, spans)
	keep := func(path string, of []colony.Span) {
		if n := len(copies); len(of) > 0 {
			copies = append(copies, of...)
			ins.Evidence = append(ins.Evidence, colony.Grounds{Path: path, Spans: copies[n:len(copies):len(copies)]})
		}
	}
	pen := colony.NewPen(ins)
	set := func(e *entry) {
		usual, err := false, e.err
		if err == nil {
			usual, err = pen.Set(&e.address, e.value)
		}
		if err != nil {
			// A rule that names a leaf wrongly is a fault of the rules, which
			// their tests find; the words still reach the keeper.
			ins.Remarks = append(ins.Remarks, e.text+"="+e.value)
			return
		}
		if !usual {
			b.flag(e.text, "out of the usual range", "")
		}
		keep(e.text, e.spans)
	}
	var waiting []*entry
	for i := range b.entries {
		if e := &b.entries[i]; e.item || e.err != nil || pen.Told(&e.address) {
			set(e)
		} else {
			waiting = append(waiting, e)
		}
	}
	for _, e := range waiting {
		set(e)
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
