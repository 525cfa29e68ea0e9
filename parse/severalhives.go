package parse

import (
	"maps"
	"slices"
	"strconv"
	"strings"
)

// What is told of several hives at once, "both hives are calm", "BIAS in Juniper and
// Tansy", "neither had mice", is written to each. It is gathered in a builder of its own
// and handed out when the note ends, since hives may be named only later; what is told
// of one of them alone goes before it.

// atOnce is what a note told so far of several hives at once, and which it named together.
type atOnce struct {
	groups   []group
	sentence int      // that named the last of them
	home     *builder // the inspection in hand before; nil where none of them are spoken of
	last     []string // the hives that were named together last
	first    []string // those named together before anything was told of one
}

// group is what was told of several hives at once.
type group struct {
	told     *builder
	after    *builder // the inspection in hand before
	names    []string // of the hives; nil for all of the note
	inferred bool     // "both", "each": they were not called hives there
}

// anyNumber is the number of hives of "all hives".
const anyNumber = -1

// pointers are words for hives that were named before, and how many of them.
var pointers = map[string]int{
	"both": 2, "both of them": 2, "they both": 2, "either": 2, "either of them": 2, "neither": 2, "neither of them": 2,
	"all three": 3, "all three of them": 3, "all four": 4, "all four of them": 4, "all five": 5, "all five of them": 5,
	"neither of the two": 2, "none of the three": 3, "none of the four": 4, "none of the five": 5,
	"each": anyNumber, "each of them": anyNumber, "any of them": anyNumber, "none of them": anyNumber,
}

// longestPointer is the number of bytes of the longest of them, behind "in ".
var longestPointer = func() (most int) {
	for words := range pointers {
		most = max(most, len("in ")+len(words))
	}
	return most
}()

// several makes one item of the words that stand for several hives.
func (r *reader) several(items []item) []item {
	points := r.lineLists.has(pointing)
	if !points && !kindsOf(items).meet(two(kHives, kName)) {
		return items // as in most lines
	}
	for i := 0; i < len(items); i++ {
		if !items[i].any(kHives, kName) && !(points && r.mayPoint(&items[i])) {
			continue
		}
		names, n, end := r.severalAt(items, i)
		if end == i || i > 0 && items[i].is(kHives) && items[i].pause == none && items[i-1].text == "than" { // "better than all of ours"
			continue
		}
		denies := items[i].is(kHives) && r.rule(&items[i], kHives).Form == "none" || n != 0 && items[i].text[0] == 'n'
		items[i] = *r.merged(items, i, end, nil)
		items[i].kinds = setOf(kName)
		if len(names) > 1 {
			r.listHives(names, items[:i])
		} else if n == len(r.atOnce.last) {
			names = r.atOnce.last
		}
		items[i].details = r.lex.detail(&details{hives: names, group: n})
		items = slices.Delete(items, i+1, end)
		if denies {
			items = r.denyOfAll(items, i)
		}
	}
	return items
}

// listHives keeps hives that were named together behind some items of their line.
func (r *reader) listHives(names []string, before []item) {
	r.atOnce.last = names
	if !r.named && r.atOnce.first == nil && !hasKind(before, kName) {
		r.atOnce.first = names
	}
}

// severalAt reads the words from item i on as several hives, by their names or by how many
// they are; end is i where they are not.
func (r *reader) severalAt(items []item, i int) (names []string, n, end int) {
	switch it := &items[i]; {
	case it.is(kHives):
		n = anyNumber
		if said, err := strconv.Atoi(r.rule(it, kHives).Value); err == nil {
			n = said
		}
		return nil, n, i + 1
	case !it.is(kName):
		n, end = r.pointer(items, i)
		return nil, n, end
	case len(it.hives) > 0:
		return nil, 0, i
	}
	names, end = r.namedTogether(items, i)
	return names, 0, end
}

// namedTogether reads "Juniper, Tansy and Marigold" from item i on.
func (r *reader) namedTogether(items []item, i int) ([]string, int) {
	if i > 0 && items[i].pause == none && items[i-1].any4(kFrom, kTo, kTween, kAfter) {
		return nil, i
	}
	if i+1 == len(items) || items[i+1].pause > comma || !items[i+1].is(kAnd) && items[i+1].pause < comma {
		return nil, i // as most stand alone
	}
	names, end, closed := []string{items[i].name}, i+1, false
	for end < len(items) && !closed {
		next := end
		if items[next].is(kAnd) && items[next].pause <= comma {
			closed = true
			next++
		} else if items[next].pause != comma {
			break
		}
		if next < len(items) && items[next].is(kArt) {
			next++
		}
		if next == len(items) || !items[next].is(kName) || len(items[next].hives) > 0 || slices.Contains(names, items[next].name) {
			return nil, i // "that is Juniper, and Juniper worries me"
		}
		names, end = append(names, items[next].name), next+1
	}
	closed = closed || len(names) > 2 && (end == len(items) || items[end].pause >= colon) // "Ada, Ivy, Maud."
	if !closed || end < len(items) && items[end].pause == none && items[end].isWord5("is", "has", "was", "'s", "had") {
		return nil, i // "eggs in Juniper and Tansy is weak"
	}
	return names, end
}

// mayPoint reports whether words for several hives can begin at an item, at most behind a
// word of place.
func (r *reader) mayPoint(it *item) bool {
	toks := r.mended[it.from:]
	return toks[0].lists.has(pointing) || len(toks) > 1 && toks[1].lists.has(pointing) && (toks[0].end-toks[0].start == int32(len("in")) || r.says(toks[0], "they"))
}

// pointer reads words for hives named before, where they stand as the subject of a
// statement, as what was fed or treated, or for where something was found, and no bars
// or cells may be meant.
func (r *reader) pointer(items []item, i int) (int, int) {
	for end := min(len(items), i+4); end > i; end-- {
		words := r.text[items[i].start:items[end-1].end]
		if len(words) > longestPointer {
			continue // as most are
		}
		words = strings.ToLower(words)
		led := ledAway(words)
		if led {
			words = words[len("in "):]
		}
		n, known := pointers[words]
		if !known || led && words[0] == 'n' || !r.knowsHives(items[:i], n) {
			continue
		}
		if r.pointsAtBars(items[:i], n, led) || !led && !r.takesHives(items, i, end) || led && end < len(items) && items[end].pause == none && !items[end].any(kAnd, kBut) {
			break
		}
		return n, end
	}
	return 0, i
}

// ledAway reports whether words for several hives begin with a word of place: "in both".
func ledAway(words string) bool {
	return strings.HasPrefix(words, "in ") || strings.HasPrefix(words, "on ") || strings.HasPrefix(words, "at ")
}

// knowsHives reports whether so many hives were named, in the line before its items or
// in them.
func (r *reader) knowsHives(items []item, n int) bool {
	names := slices.Collect(maps.Keys(r.byHive))
	for k := range items {
		if it := &items[k]; it.is(kName) {
			names = append(names, it.hives...)
			if it.name != "" {
				names = append(names, it.name)
			}
		}
	}
	slices.Sort(names)
	known := max(len(slices.Compact(names)), len(r.atOnce.last))
	return known > 1 && (n == anyNumber || n == known || n == len(r.atOnce.last))
}

// pointsAtBars reports whether bars or cells may be meant by words for so many: those
// named since the last hive, or in hand.
func (r *reader) pointsAtBars(items []item, n int, led bool) bool {
	for k := len(items) - 1; k >= 0; k-- {
		switch it := &items[k]; {
		case it.is(kName):
			return false
		case it.is(kBars) && (n == anyNumber || len(it.bars) == n), it.is(kCell) && !led:
			return true
		}
	}
	return len(r.bars) > 1 || r.cellTalk && !led
}

// takesHives reports whether the words from item i to end are the subject of a statement,
// or what was fed or treated.
func (r *reader) takesHives(items []item, i, end int) bool {
	if i > 0 && items[i].pause == none && !items[i-1].any3(kAnd, kBut, kThen) {
		whole := items[i].isWord2("both", "all") || strings.HasPrefix(items[i].text, "both ") || strings.HasPrefix(items[i].text, "all ")
		return whole && items[i-1].is(kDo) && traitsOf(r.rule(&items[i-1], kDo).Value).hive == tendedTo
	}
	return end < len(items) && items[end].pause == none && items[end].any5(kBe, kHave, kSeen, kBring, kDo)
}

// denyOfAll puts "no" behind the verb of "neither hive had mice".
func (r *reader) denyOfAll(items []item, i int) []item {
	at := i + 1
	for at < len(items) && at < i+3 && items[at].pause == none && (items[at].any3(kBe, kHave, kSeen) || strings.HasSuffix(items[at].text, "ed")) {
		at++
	}
	no := items[i]
	no.kinds, no.text, no.pause, no.details = setOf(kNo), "no", none, &noDetails
	no.lists = r.words.find(no.text).lists
	return slices.Insert(items, at, no)
}

// several reports whether an item stands for more hives than one.
func (it *item) several() bool { return it.is(kName) && (len(it.hives) > 0 || it.group != 0) }

// gather turns to the hives that a clause tells of together; false where it names none
// such.
func (r *reader) gather(c *clause) bool {
	for k := 0; c.has(kName) && c.mood != unasked && k < len(c.items); k++ {
		if it := &c.items[k]; it.several() && !it.used {
			it.used = true
			r.together(it)
			return true
		}
	}
	if r.atOnce.home != nil && r.atOnce.sentence != r.sentenceNo && (c.has(kBars) || r.atOnce.groups[len(r.atOnce.groups)-1].inferred) {
		r.apart() // bars are one hive's, and "both" holds for its sentence
	}
	return false
}

func (r *reader) together(it *item) {
	r.apart()
	g := group{told: r.builder(), after: r.cur, names: it.hives, inferred: it.group != 0 && !strings.Contains(it.text, "hive") && !strings.Contains(it.text, "colon")}
	g.told.spans = r.spanOf(it)
	r.atOnce.groups = append(r.atOnce.groups, g)
	r.atOnce.home, r.cur = r.cur, g.told
	r.atOnce.sentence = r.sentenceNo
	r.leaveBars()
}

// apart goes back to the hive that was in hand before several were spoken of, and
// begins the inspections of those that were named and told something of.
func (r *reader) apart() {
	if r.atOnce.home == nil {
		return
	}
	r.cur, r.atOnce.home = r.atOnce.home, nil
	r.leaveBars()
	g := &r.atOnce.groups[len(r.atOnce.groups)-1]
	if g.told.empty() {
		r.putAway(g.told)
		r.atOnce.groups = r.atOnce.groups[:len(r.atOnce.groups)-1]
		return
	}
	names := g.names
	if names == nil {
		names = r.atOnce.first
	}
	for _, name := range names {
		if b := r.inspectionOf(name); len(b.spans) == 0 {
			b.spans = g.told.spans
		}
	}
}

func (r *reader) putAway(b *builder) {
	b.forget()
	r.spare = append(r.spare, b)
}

// handOut gives each hive what was told of several, and puts the hives that were listed
// before anything was told of one in the order of that list.
func (r *reader) handOut() {
	r.apart()
	if len(r.atOnce.groups) > 0 && r.atOnce.first != nil {
		slices.SortStableFunc(r.all, func(a, b *builder) int { return r.listPlace(a) - r.listPlace(b) })
	}
	for i := range r.atOnce.groups {
		g := &r.atOnce.groups[i]
		for _, b := range r.members(g) {
			b.take(g)
		}
		r.putAway(g.told)
	}
	r.atOnce.groups = nil
}

// mostHives is the number of hives above which a note is a heap of notes, where "all
// hives" are not all of it (common practice; no source).
const mostHives = 64

// members are the inspections of the hives that something is told of together.
func (r *reader) members(g *group) (of []*builder) {
	if g.names == nil && len(r.byHive) > mostHives || len(r.byHive) == 0 {
		return []*builder{g.after}
	}
	if g.names != nil {
		for _, name := range g.names {
			of = append(of, r.byHive[name])
		}
		return of
	}
	for _, b := range r.all {
		if b.hive != "" {
			of = append(of, b)
		}
	}
	return of
}

// listPlace is the place of a hive in the list that the note began with; behind it for
// one that is not there.
func (r *reader) listPlace(b *builder) int {
	if at := slices.Index(r.atOnce.first, b.hive); at >= 0 {
		return at
	}
	return len(r.atOnce.first)
}

// take adds what was told of several hives to one, where it is not told of it alone.
func (b *builder) take(g *group) {
	renamed := map[string]string{} // "actions.feed" where the hive has a feed already
	for _, e := range g.told.entries {
		path := b.pathFor(e.text, renamed)
		if path == "" || b.find(b.paths.of(path)) != nil {
			continue
		}
		b.put(path, e.value, source{spans: e.spans, rule: e.rule, cue: e.cue})
		if g.inferred {
			b.flag(path, "told of several hives at once", "")
		}
		if i, ok := g.told.flagged[e.text]; ok {
			b.flag(path, g.told.checks[i].Why, g.told.checks[i].Alt)
		}
	}
}

// pathFor is the path of a leaf of several hives in one; "" for what is told of a deed
// that it has already.
func (b *builder) pathFor(path string, renamed map[string]string) string {
	list, rest, _ := strings.Cut(path, ".")
	if list != "actions" && list != "plans" && list != "earlier" {
		return path
	}
	name, detail, detailed := strings.Cut(rest, ".")
	key := list + "." + name
	own, known := renamed[key]
	if !known {
		plain, _, _ := strings.Cut(key, "#")
		if b.deeds[plain] == 0 || traitsOf(strings.TrimPrefix(plain, list+".")).twice {
			own = b.deed(plain)
		}
		renamed[key] = own
	}
	if own == "" || !detailed {
		return own
	}
	return own + "." + detail
}
