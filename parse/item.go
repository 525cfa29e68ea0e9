package parse

// item is a run of tokens with one role, or several where the words alone do
// not tell. It fills two lines of the processor's cache: items are gone through
// again and again.
type item struct {
	kinds    kinds
	says     *sense  // whose rules its words match; never nil
	text     string  // its words, lower case
	lists    listSet // in which the text stands
	start    int32   // bytes of the note
	end      int32
	from, to uint16 // tokens of the line: a row of a table has at most twice the bytes of the longest line
	marks    mark   // of its tokens: capital and bullet of the first, misheard and misspelt of any
	pause    pause  // before it
	mended   bool   // a repair put it here
	asked    bool   // a question mark follows
	colon    bool   // a colon follows
	plural   bool   // of a bar word
	ranged   bool   // of bars: one range, from one to another
	falling  bool   // of bars: a range told from the far end
	used     bool   // some rule took it
	taken    bool   // of bars: an argument of a deed, not a place of findings
	laid     laid   // of bars, and numbers that are: where they stand in a row

	n    quantity
	bars []int // of kBars

	*details // never nil
}

// details are what few items have. They stand apart, since an item is cleared
// for every word of a note and copied for most; they are shared by its copies and
// do not change once they are read.
type details struct {
	dur   span
	size  measure
	day   day
	name  string   // of kName
	hives []string // of kName, where several are named at once
	group int      // of kName: how many hives it stands for that are not named; 0 for none, anyNumber where not said
}

// noDetails are those of every item that has none.
var noDetails details

// gist is what some items are, taken together: most questions about them are
// answered by it.
type gist struct {
	kinds kinds
	lists listSet
	asked bool // a question mark follows one
}

func gistOf(items []item) gist {
	var g gist
	for i := range items {
		g = g.with(&items[i])
	}
	return g
}

// everything is the gist for which no question is passed by.
var everything = gist{everyKind, ^listSet(0), true}

func (it *item) has(f mark) bool { return it.marks&f != 0 }

func (it *item) is(k kind) bool { return it.kinds.has(k) }

func (it *item) anyOf(set kinds) bool { return it.kinds.meet(set) }

// any reports whether the item is of one of the kinds. any3 to any6 are any for
// just as many: of kinds that are known when the program is built, the compiler
// then makes one mask, while to go through a list takes several times as long and
// as much room. More kinds than these are a set with a name.
func (it *item) any(a, b kind, more ...kind) bool {
	return it.kinds.meet(two(a, b)) || it.kinds.hasOne(more)
}

func (it *item) any3(a, b, c kind) bool {
	return it.kinds.low&(1<<a|1<<b|1<<c)|it.kinds.high&(1<<(a-64)|1<<(b-64)|1<<(c-64)) != 0
}

func (it *item) any4(a, b, c, d kind) bool {
	return it.kinds.low&(1<<a|1<<b|1<<c|1<<d)|it.kinds.high&(1<<(a-64)|1<<(b-64)|1<<(c-64)|1<<(d-64)) != 0
}

func (it *item) any5(a, b, c, d, e kind) bool {
	return it.kinds.low&(1<<a|1<<b|1<<c|1<<d|1<<e)|it.kinds.high&(1<<(a-64)|1<<(b-64)|1<<(c-64)|1<<(d-64)|1<<(e-64)) != 0
}

func (it *item) any6(a, b, c, d, e, f kind) bool {
	return it.kinds.low&(1<<a|1<<b|1<<c|1<<d|1<<e|1<<f)|it.kinds.high&(1<<(a-64)|1<<(b-64)|1<<(c-64)|1<<(d-64)|1<<(e-64)|1<<(f-64)) != 0
}

// value is the value of the item's rule of the given kind.
func (r *reader) value(it *item, k kind) string {
	if rule := r.rule(it, k); rule != nil {
		if rule.Value == "=" {
			return it.text
		}
		return rule.Value
	}
	return ""
}

// rule is the item's rule of the given kind, nil where it has none.
func (r *reader) rule(it *item, k kind) *rule {
	for _, n := range it.says.rules {
		if r.kindOf[n] == k {
			return &r.rules[n]
		}
	}
	return nil
}
