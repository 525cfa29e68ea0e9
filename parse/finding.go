package parse

import (
	"slices"
	"strconv"
	"strings"
)

// class is the family of a finding.
type class uint8

const (
	ofComb class = iota // contents of a comb or of the colony
	ofCells
	ofSign
)

// finding is one thing found, before it is known where.
type finding struct {
	class   class
	what    string // content, cell stage or sign
	present bool

	bars    []int
	located bool     // its bars were named with it
	whole   bool     // said of the colony as a whole
	counted quantity // bars that hold it, counted but not numbered

	extent
	count    quantity
	hasCount bool
	kind     string  // of queen cells
	rest     float64 // cells counted with these, whose stage is still to come
	form     string

	at     int // index of its item in the clause
	items  []*item
	rule   string
	cue    string
	doubts []string
	list   int // findings joined by "and" share a number
}

func (f *finding) brood() bool {
	return f.class == ofComb && strings.HasSuffix(f.what, "brood") || f.what == "eggs"
}

// record writes a finding to the bars it belongs to, or to the colony.
func (r *reader) record(f *finding) {
	why := r.why(f.rule, f.cue, f.items...)
	if len(f.doubts) > 0 {
		why.doubts = append(f.doubts, why.doubts...)
	}
	if len(f.bars) > 0 && slices.Contains(r.mendedBars, f.bars[0]) && !slices.Contains(why.doubts, "corrected aloud") {
		why.doubts = append(why.doubts, "corrected aloud")
	}
	switch f.class {
	case ofSign:
		r.recordSign(f, why)
	case ofCells:
		r.recordCells(f, why)
	default:
		r.recordContent(f, why)
	}
}

func (r *reader) recordContent(f *finding, why source) {
	if len(f.bars) == 0 && !f.present && r.justSaid(r.cargo) && (f.what == "pollen" || f.what == "nectar") {
		r.cur.put(r.paths.under("incoming", f.what), "no", why) // "they bring in water but no pollen"
		return
	}
	if len(f.bars) == 0 {
		r.writeContent(r.paths.under("contents", f.what), f, why)
		return
	}
	for _, b := range f.bars {
		r.writeContent(r.barPath(b, f.what), f, why)
	}
}

// barPath is the path of a leaf of a bar.
func (r *reader) barPath(bar int, leaf string) string {
	return r.paths.ofBar(bar, leaf)
}

// writeContent writes a content and what is known of it at a path, of one bar or of the
// colony.
func (r *reader) writeContent(path string, f *finding, why source) {
	b := r.cur
	b.put(path, yesNo(f.present), why)
	why.doubts = nil
	if !f.present {
		return
	}
	if f.hasCover && (len(f.bars) > 0 || !f.allOfIt()) {
		b.put(r.paths.under(path, "cover"), formatNumber(f.cover), why)
	}
	set := func(name, value string) {
		if value != "" {
			b.put(r.paths.under(path, name), value, why)
		}
	}
	if !f.hasCover || f.amount != "much" {
		set("amount", f.amount)
	}
	if f.brood() {
		set("pattern", f.pattern)
	}
	if len(f.bars) > 0 && f.side != "" {
		if old, ok := b.get(r.paths.under(path, "side")); ok && sidesMeet(old, f.side) {
			b.drop(path + ".side")
			set("side", "both")
		} else {
			set("side", oneSide(f.side))
		}
	}
	if len(f.bars) > 0 {
		set("place", f.place)
	}
	if f.counted.lo > 0 && len(f.bars) == 0 { // not of "nine bars of brood (b3 to b11)"
		r.barsCounted = true
		b.put(r.paths.under(path, "bars"), formatNumber(f.counted.lo), why)
		if f.counted.hi > f.counted.lo {
			b.put(path+".bars_max", formatNumber(f.counted.hi), why)
			b.flag(path+".bars", "a range was said", formatNumber(f.counted.hi))
		}
	}
}

// allOfIt reports whether the share comes of "all the brood is sealed", which of a
// colony tells no share of a comb.
func (f *finding) allOfIt() bool {
	return slices.ContainsFunc(f.items, func(it *item) bool { return strings.HasPrefix(it.text, "all") })
}

// oneSide is the side as the record has it: where only the other is named, it is
// one of the two.
func oneSide(side string) string {
	if side == "other" {
		return "one"
	}
	return side
}

// sidesMeet: the same said first of one side and then of the other is said of
// both.
func sidesMeet(a, b string) bool {
	return a == "front" && b == "back" || a == "back" && b == "front" || a == "one" && b == "other"
}

// recordCells writes queen cells of one stage, on bars or of the colony.
func (r *reader) recordCells(f *finding, why source) {
	path := r.paths.under("queen_cells", f.what)
	if len(f.bars) == 0 {
		r.writeCells(path, f, why)
	}
	for _, b := range f.bars {
		r.writeCells(r.barPath(b, path), f, why)
	}
}

// writeCells writes queen cells of one stage and what is known of them at a path.
func (r *reader) writeCells(path string, f *finding, why source) {
	r.cur.put(path, yesNo(f.present), why)
	if !f.present {
		return
	}
	why.doubts = nil
	if f.hasCount && f.count.whole() {
		r.putCount(path, f.count, why)
	}
	if f.kind != "" {
		r.cur.put(r.paths.under(path, "kind"), f.kind, why)
	}
}

// putCount writes a count; a range gives the smaller and the larger, flagged.
func (r *reader) putCount(path string, q quantity, why source) {
	r.cur.put(r.paths.under(path, "count"), formatNumber(q.lo), why)
	if q.hi > q.lo {
		r.cur.put(path+".count_max", formatNumber(q.hi), why)
		r.cur.flag(path+".count", "a range was said", formatNumber(q.hi))
	}
	if q.approx {
		r.cur.flag(path+".count", "an estimate", "")
	}
}

// recordSign writes a sign; of several bars that have it the record lists all.
func (r *reader) recordSign(f *finding, why source) {
	path := r.paths.under("signs", f.what)
	if old, ok := r.cur.get(path); ok && old == "yes" && !f.present && len(f.bars) > 0 {
		return // seen on one bar, denied of another: it was seen
	}
	r.cur.put(path, yesNo(f.present), why)
	why.doubts = nil
	if f.hasCount && f.present {
		r.putCount(path, f.count, why)
	}
	bars := f.bars
	if old, ok := r.cur.get(r.paths.under(path, "bar")); ok && len(bars) > 0 {
		if n, _ := strconv.Atoi(old); !slices.Contains(bars, n) {
			bars = append([]int{n}, bars...)
		}
	}
	switch len(bars) {
	case 0:
	case 1:
		r.cur.put(r.paths.under(path, "bar"), strconv.Itoa(bars[0]), why)
	default:
		r.cur.drop(path + ".bar")
		r.cur.put(path+".bars", joinBars(bars), why)
	}
}

func joinBars(bars []int) string {
	parts := make([]string, len(bars))
	for i, b := range bars {
		parts[i] = strconv.Itoa(b)
	}
	return strings.Join(parts, ",")
}

func yesNo(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// formatNumber writes shares and amounts without a tail of binary digits.
func formatNumber(v float64) string {
	if n := int(v); n >= 0 && v == float64(n) {
		return strconv.Itoa(n)
	}
	s := strconv.FormatFloat(v, 'f', 3, 64)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// comb writes a leaf below the comb (or the bar itself, for ../ values) of
// each bar.
func (r *reader) comb(bars []int, name, value string, why source) {
	r.combOf = bars[0]
	if len(r.lastFind) > 0 && !slices.Contains(r.lastFind[0].bars, bars[0]) {
		r.lastFind = nil // "bar five honey, bar six bare, bar seven the same" is like bar six
	}
	for _, b := range bars {
		if rest, ok := strings.CutPrefix(name, "../"); ok {
			r.cur.put(r.barPath(b, rest), value, why)
		} else {
			r.cur.put(r.barPath(b, r.paths.under("comb", name)), value, why)
		}
	}
}

// why is the source of a leaf that rests on some items, which are used by it.
func (r *reader) why(rule, cue string, items ...*item) source {
	w := source{spans: r.spanOf(items...), rule: rule, cue: cue}
	for _, it := range items {
		if it == nil {
			continue
		}
		it.used = true
		if it.has(misheard) {
			w.doubts = append(w.doubts, "may be misheard")
		}
		if it.has(misspelt) {
			w.doubts = append(w.doubts, "may be misspelt")
		}
		if it.mended {
			w.doubts = append(w.doubts, "corrected aloud")
		}
	}
	return w
}

// leaf writes a leaf of the colony.
func (r *reader) leaf(path, value, rule, cue, doubt string, items ...*item) {
	w := r.why(rule, cue, items...)
	if doubt != "" {
		w.doubts = append(w.doubts, "hedged: "+doubt)
	}
	r.cur.put(path, value, w)
}
