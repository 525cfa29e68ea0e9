package parse

import (
	"slices"
	"strings"
)

// carriedIn makes "in" a verb of bringing where it ends the label of what is carried in:
// "Pollen in: lime and clover".
func (r *reader) carriedIn(items []item) {
	if len(items) == 0 {
		return
	}
	if it := &items[0]; it.colon && it.text == "in" && len(items) > 1 && items[1].any(kContent, kForage) {
		it.kinds, it.says = setOf(kBring), senseless // "In: pollen, water"
	}
	if len(items) > 2 && items[0].is(kBring) && items[1].pause == colon {
		labelledCargo(items)
	}
	for i := 1; i < len(items); i++ {
		it := &items[i]
		if it.any3(kShe, kPron, kBees) {
			r.broughtIn(items, i)
		}
		if !it.colon || it.text != "in" {
			continue
		}
		if v := r.value(&items[i-1], kContent); v == "pollen" || v == "nectar" {
			it.kinds = setOf(kBring)
		}
	}
}

// labelledCargo takes what else stands behind the label of what is carried in for more of it,
// whatever sign parts them: "Incoming: dandelion pollen; water".
func labelledCargo(items []item) {
	for from := 2; from < len(items); from++ {
		if items[from].pause < comma || items[from].pause >= line {
			continue
		}
		to := from
		for to < len(items) && (to == from || items[to].pause == none) && items[to].any5(kColour, kPlant, kForage, kContent, kAmount) {
			to++
		}
		if to == from || to < len(items) && items[to].pause == none || !items[to-1].any(kForage, kContent) {
			return
		}
		items[from].pause = comma
	}
}

// broughtIn joins "ivy pollen she carries in": what "she" at item i carries stands before it.
func (r *reader) broughtIn(items []item, i int) {
	if i+1 >= len(items) || items[i].pause > none || !items[i-1].any(kContent, kForage) {
		return
	}
	if bring := i + 1; r.bringsIt(items, bring) || items[bring].is(kBe) && r.bringsIt(items, bring+1) {
		for ; !items[i].is(kBring); i++ { // "water they are bringing from the tank"
			items[i].kinds, items[i].says = setOf(kWord), senseless
		}
		return
	}
	if i+2 >= len(items) || !items[i+2].is(kOn) {
		return
	}
	if r.isWord(&items[i+1], r.wordsOf[fetching]...) && items[i+2].isWord2("in", "home") {
		items[i].kinds, items[i].says = setOf(kWord), senseless
		items[i+1].kinds, items[i+1].says = setOf(kBring), senseless
	}
}

// bringsIt reports whether item k is a verb of bringing whose object stands before it.
func (r *reader) bringsIt(items []item, k int) bool {
	if k >= len(items) || !items[k].is(kBring) || items[k].any(kDo, kContent) || items[k].pause > none {
		return false
	}
	return k+1 == len(items) || items[k+1].pause > none || items[k+1].any4(kFrom, kAnd, kDate, kNow) || items[k+1].text == "off"
}

// incoming reads what is carried in, with its plant and colour.
func (r *reader) incoming(c *clause) {
	bring := r.bringing(c.items)
	if bring < 0 {
		return
	}
	cargo := r.cargoOf(c.items, bring)
	if len(cargo) == 0 {
		return
	}
	for n, i := range cargo {
		from, to := 0, len(c.items)
		if n > 0 {
			from = cargo[n-1] + 1
		}
		if n+1 < len(cargo) {
			to = r.cargoEnd(c, i, cargo[n+1])
		}
		r.load(c, i, from, to, bring, len(cargo) == 1)
	}
	c.items[bring].used = true
}

// bringing is the first verb of bringing among items, -1 where there is none.
func (r *reader) bringing(items []item) int {
	for i := range items {
		if items[i].used {
			continue
		}
		if rule := r.rule(&items[i], kForage); rule != nil && rule.Form == "bring" || items[i].is(kBring) {
			return i
		}
	}
	return -1
}

// cargoOf are the items that name what is brought in, as the verb at an item tells; none where
// they are what is on bars.
func (r *reader) cargoOf(items []item, bring int) (cargo []int) {
	for i := 0; i < len(items); i++ {
		it := &items[i]
		if it.used {
			continue
		}
		switch v := r.value(it, kContent); {
		case it.is(kForage), v == "pollen", v == "nectar":
			cargo = append(cargo, i)
		case it.is(kBars) && !it.taken:
			and := broughtApart(items, i, bring)
			if and == 0 && len(cargo) == 0 {
				return nil
			}
			if and > 0 {
				cargo, i = cargo[:0], and
			}
		}
	}
	return cargo
}

// cargoEnd is where what is told of the cargo at item i ends, before the next: "water and clover
// nectar".
func (r *reader) cargoEnd(c *clause, i, next int) int {
	to := next
	if own := to - 1; own > i+1 && c.items[own].is(kPlant) && c.items[to].pause == none && c.items[own].pause == none && c.items[own-1].any(kAnd, kColour) {
		to = own
	}
	for c.items[to].pause == none && to > i+1 && c.items[to-1].any4(kColour, kArt, kAdv, kAnd) && !r.source(c, to-1) {
		to--
		if c.items[to].is(kAnd) && c.items[to].pause == comma {
			break // "pollen coming in, yellow, and water too"
		}
	}
	return to
}

// broughtApart is the "and" that begins what is brought in behind bars that tell where
// something else is: "larvae on bar four, and lots of pollen going in", "bar three has pollen
// and ivy nectar coming in"; 0 where there is none.
func broughtApart(items []item, bars, bring int) int {
	told := hasKind(items[:bars], kContent)
	for k := bars + 1; k < bring; k++ {
		if items[k].any(kBars, kOn) || items[k].is(kBe) && k+1 < bring {
			return 0
		}
		if told && items[k].is(kAnd) && (hasKind(items[k:bring], kContent) || hasKind(items[k:bring], kForage)) {
			return k
		}
		told = told || items[k].is(kContent)
	}
	return 0
}

// beforeCargo are the kinds of words that describe what is carried in, before its noun.
var beforeCargo = setOf(kColour, kPlant, kAnd, kAdv, kArt, kNum, kAmount)

// load reads one thing that is carried in, with its colour and plant: item i, among the
// words from and to; only tells that it is all that is.
func (r *reader) load(c *clause, i, from, to, bring int, only bool) {
	it := &c.items[i]
	what := r.value(it, kForage)
	if what == "" {
		what = r.value(it, kContent)
	}
	path := r.paths.under("incoming", what)
	denied := i > 0 && c.items[i-1].is(kNo) || i > 1 && c.items[i-2].is(kNo) && c.items[i-1].any3(kColour, kAdv, kPlant)
	for k := i + 1; k < min(bring, len(c.items)); k++ {
		denied = denied || c.items[k].is(kNo)
	}
	for k := range min(bring, len(c.items)) {
		denied = denied || c.items[k].isWord3("nobody", "no one", "none of them") // "nobody carrying water"
	}
	if denied {
		r.leaf(path, "no", "incoming", "no", c.doubt, it)
		return
	}
	r.leaf(path, "yes", "incoming", "", c.doubt, it, &c.items[bring])
	r.cargo = r.mentions(path)
	lo, hi := i, i
	for lo > from && c.items[lo-1].anyOf(beforeCargo) && c.items[lo].pause == none && !r.source(c, lo-1) {
		lo--
	}
	for hi+1 < to && (only || hi-i < 12) {
		hi++
	}
	if only {
		lo = 0
	}
	r.described(c, path, "colour", kColour, lo, hi)
	r.described(c, path, "plant", kPlant, lo, hi)
	r.unknownPlant(c, path, i)
	if _, ok := r.cur.get(r.paths.under(path, "plant")); ok {
		r.flowering = mentioned{} // "the lime is out, nectar is coming in off it, and pollen"
	} else if what != "water" && what != "propolis" && r.justSaid(r.flowering) {
		r.leaf(path+".plant", r.flowering.what, "plants", "", "", it)
	}
}

// source reports whether the plant at item i is where what stands before it comes
// from: "nectar from the mustard and pollen".
func (r *reader) source(c *clause, i int) bool {
	if !c.items[i].is(kPlant) || i == 0 {
		return false
	}
	if i > 1 && c.items[i-1].is(kArt) {
		i--
	}
	return c.items[i-1].is(kFrom) || c.items[i-1].text == "off"
}

// unknownPlant takes the word right before the load, or behind "from the", for
// a plant that the list lacks; flagged.
func (r *reader) unknownPlant(c *clause, path string, i int) {
	if _, ok := r.cur.get(r.paths.under(path, "plant")); ok || path == "incoming.water" {
		return
	}
	take := func(it *item) {
		if it.used || !it.is(kWord) || it.lists.has(noPlants) || it.lists.has(placesNear) || strings.HasSuffix(it.text, "ing") || strings.HasSuffix(it.text, "ed") || len(it.text) < 4 {
			return
		}
		r.leaf(path+".plant", onePlant(it.text), "plants", "", "", it)
		r.cur.flag(path+".plant", "a plant that the list lacks", "")
	}
	if i > 0 && c.items[i].pause == none && c.items[i-1].is(kWord) && (i == 1 || c.items[i-1].pause > none || c.items[i-2].any(kOf, kThere, kBe, kHave, kAnd, kBring, kArt, kColour, kNow, kName)) {
		take(&c.items[i-1])
		return
	}
	for k := i + 1; k+1 < len(c.items) && k <= i+5; k++ {
		if !c.items[k].is(kFrom) && c.items[k].text != "off" {
			continue
		}
		if k+1 < len(c.items) && c.items[k+1].is(kArt) && k+2 < len(c.items) && (k+3 >= len(c.items) || c.items[k+3].pause > none || c.items[k+3].any3(kAnd, kThen, kBut)) {
			take(&c.items[k+2])
		}
		return
	}
}

// described writes the colours or the plants that are named between two items.
func (r *reader) described(c *clause, path, name string, k kind, lo, hi int) {
	var values []string
	var items []*item
	for j := lo; j <= hi; j++ {
		it := &c.items[j]
		if it.is(k) && !it.used {
			v := r.value(it, k)
			if k == kPlant {
				v = onePlant(v)
			}
			if slices.Contains(values, v) {
				it.used = true
				continue
			}
			if it.is(kPlant) && it.is(kColour) && k == kColour {
				continue
			}
			values = append(values, v)
			items = append(items, it)
		}
	}
	if len(values) > 0 {
		if old, ok := r.cur.get(r.paths.under(path, name)); ok {
			values = append([]string{old}, values...)
			r.cur.drop(path + "." + name)
		}
		r.leaf(r.paths.under(path, name), strings.Join(values, ", "), "incoming", "", "", items...)
	}
}

// onePlant is the name of a plant told as one: "the limes", "lime trees" and "daisies"
// are lime and daisy.
func onePlant(name string) string {
	if name != "tea tree" && name != "tulip tree" {
		name = strings.TrimSuffix(strings.TrimSuffix(name, " trees"), " tree")
	}
	if stem, ok := strings.CutSuffix(name, "ies"); ok {
		return stem + "y"
	}
	for _, one := range []string{"ss", "us", "is", "os"} { // crocus, iris, cosmos
		if strings.HasSuffix(name, one) {
			return name
		}
	}
	if strings.HasSuffix(name, "uses") {
		return strings.TrimSuffix(name, "es") // crocuses
	}
	return strings.TrimSuffix(name, "s")
}
