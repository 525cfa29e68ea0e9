package parse

import (
	"slices"
	"strings"
)

// The talk goes from hive to hive: what is told belongs to the inspection in hand.

// enter follows a hive's name at the head of a clause into its inspection, and
// takes the day of the inspection from the opening words.
func (r *reader) enter(c *clause, plansNext bool) {
	named := c.has(kName)
	several := (named || r.atOnce.home != nil) && r.gather(c)
	for k := 0; named && !several && k < len(c.items); k++ {
		it := &c.items[k]
		if it.is(kName) && !it.used && !it.several() && !r.argument(c.items, k) && (c.mood != unasked || k == 0 && it.colon) {
			r.goTo(it)
			break
		}
	}
	if c.has(kSide) {
		r.setOut(c)
	}
	day := c.onlyDate()
	if day == nil && plansNext {
		if day = r.visitorsDate(c); day == nil {
			day = c.dayAndHow()
		}
	}
	if plansNext && day != nil {
		r.planDay, day.used = &day.day, true
	} else if c.mood == asserted && (r.opening || c.has(kDate) && r.todaySpelt(c)) {
		r.openingDay(c)
		r.openingClock(c)
	}
}

// setOut: "starting at the back" counts the bars down, from the front up.
func (r *reader) setOut(c *clause) {
	for k := 1; k < len(c.items); k++ {
		it, prev := &c.items[k], &c.items[k-1]
		if it.text == "front" && prev.text == "back to" && r.last == 0 {
			r.outset, r.step = -1, -1 // "going back to front"
			continue
		}
		if !it.is(kSide) || !prev.is(kFrom) && !r.isWord(prev, r.wordsOf[settingOut]...) {
			continue
		}
		switch r.value(it, kSide) {
		case "back", "far end":
			r.outset = -1
		case "front", "near end":
			r.outset = 1
		default:
			continue
		}
		if r.last == 0 {
			r.step = r.outset
		}
	}
}

// goTo opens the inspection of a hive, or goes back to it.
func (r *reader) goTo(it *item) {
	it.used = true
	r.apart()
	name := strings.TrimSpace(it.name)
	if !r.named {
		r.cur = r.inspectionOf(name)
		r.hiveLeaf(it)
		return
	}
	if r.cur.hive == name {
		return
	}
	if r.cur.empty() && r.cur.named == r.sentenceNo && r.takenBack(it) { // "the greenhouse hive, no, this is the compost hive"
		r.rename(it, name)
		r.cur.flag("hive", "corrected aloud", "")
		return
	}
	if r.site && r.isSite() {
		r.cur.remarks = append(r.cur.remarks, r.quoted(r.cur.spans))
		delete(r.names, r.cur.hive)
		r.rename(it, name)
		r.pre = r.weatherSoFar()
		return
	}
	if b := r.byHive[name]; b != nil {
		r.cur = b
		r.leaveBars()
		return
	}
	r.cur = r.inspectionOf(name)
	r.hiveLeaf(it)
	r.leaveBars()
}

// inspectionOf returns the inspection of a hive: the one in hand at first, else a new one
// with the weather that was told before.
func (r *reader) inspectionOf(name string) *builder {
	b := r.byHive[name]
	switch {
	case b != nil:
		return b
	case !r.named:
		r.named, b = true, r.cur
		b.hive = name
		r.pre, r.sampling = r.weatherSoFar(), r.samplingSoFar()
	default:
		b = r.builder()
		b.hive, b.at, b.atFrom = name, r.all[0].at, r.all[0].atFrom
		for _, e := range r.pre {
			b.put(e.text, e.value, source{spans: e.spans, rule: e.rule})
		}
		r.all = append(r.all, b)
	}
	r.byHive[name] = b
	return b
}

// isSite reports whether the name given to the inspection in hand is that of the place,
// where nothing but the weather or the day was told: "Allotment, 24C, sunny."
func (r *reader) isSite() bool {
	pre := len(r.weatherSoFar())
	return r.names[r.cur.hive] && pre == len(r.cur.entries) && (pre > 0 || r.cur.atFrom == "spoken day")
}

// rename gives the inspection in hand another hive.
func (r *reader) rename(it *item, name string) {
	delete(r.byHive, r.cur.hive)
	r.cur.hive = name
	r.byHive[name] = r.cur
	r.hiveLeaf(it)
}

// takenBack reports whether the hive named before is taken back: "no, this is" or
// "sorry" stands between.
func (r *reader) takenBack(it *item) bool {
	if len(r.cur.spans) == 0 || r.cur.spans[0][1] > int(it.start) {
		return false
	}
	between := strings.ToLower(r.text[r.cur.spans[0][1]:it.start])
	if !strings.Contains(between, " no ") && !strings.Contains(between, " not ") {
		return false
	}
	if slices.ContainsFunc(r.wordsOf[takingBack], func(words string) bool { return strings.Contains(between, " "+words+" ") }) {
		return true // "hive three, no, that's not right, the swarm went in hive five"
	}
	said := strings.TrimSuffix(strings.TrimSpace(between), " the")
	return slices.ContainsFunc(r.wordsOf[meaning], func(words string) bool { return strings.HasSuffix(said, " "+words) })
}

// hiveLeaf notes where the hive was named, and what is doubtful about its name.
func (r *reader) hiveLeaf(it *item) {
	r.cur.named = r.sentenceNo
	r.cur.passing = r.inPassing(it)
	r.cur.spans = r.spanOf(it)
	switch {
	case it.mended:
		r.cur.flag("hive", "corrected aloud", "")
	case it.has(misheard):
		r.cur.flag("hive", "may be misheard", "")
	}
}

// inPassing reports whether a sentence only has to do with a hive, which it names behind a
// word for that: "your letter about the plum hive", "on the way past Juniper".
func (r *reader) inPassing(it *item) bool {
	at := 0
	for at < len(r.told) && r.told[at].start < it.start {
		at++
	}
	if at == len(r.told) {
		return false
	}
	for at--; at > 0 && r.told[at].is(kArt); at-- {
	}
	return at > 0 && r.isWord(&r.told[at], r.wordsOf[concerning]...)
}

// dropPassing leaves out the hives of which nothing is told but the weather, where something is told of
// others: those that were only named in passing, and those of names for which hardly anything speaks,
// which may be of anything. What was not read of them stays with the next.
func (r *reader) dropPassing() {
	told := func(b *builder) bool { return len(b.entries) > r.weatherOf(b) }
	if len(r.all) < 2 || !slices.ContainsFunc(r.all, told) {
		return
	}
	kept := r.all[:0]
	var left []string
	for i, b := range r.all {
		if (b.passing || r.unsureNames[b.hive]) && len(b.entries) == r.weatherOf(b) && (i+1 < len(r.all) || len(kept) > 0) {
			left = append(left, b.remarks...)
			delete(r.byHive, b.hive)
			continue
		}
		b.remarks = append(left, b.remarks...)
		left = nil
		kept = append(kept, b)
	}
	if last := kept[len(kept)-1]; len(left) > 0 {
		last.remarks = append(last.remarks, left...)
	}
	r.all = kept
}

// inOrderTold puts the hives of which something is told in the order in which it is: some are named
// beside another before. A list of them is in their order.
func (r *reader) inOrderTold() {
	if r.atOnce.first != nil || len(r.all) < 2 {
		return
	}
	type told struct {
		of    *builder
		first int
	}
	var hives []told
	var places []int // theirs among all
	for i, b := range r.all {
		if first := firstTold(b); first >= 0 {
			hives, places = append(hives, told{b, first}), append(places, i)
		}
	}
	slices.SortStableFunc(hives, func(a, b told) int { return a.first - b.first })
	for k, i := range places {
		r.all[i] = hives[k].of
	}
}

// firstTold is where in the note the first leaf of an inspection is told behind its hive's name, and not of
// the weather, which may have been told for all; -1 where there is none.
func firstTold(b *builder) int {
	named, first := 0, -1
	if len(b.spans) > 0 {
		named = b.spans[0][0]
	}
	for i := range b.entries {
		e := &b.entries[i]
		if len(e.spans) > 0 && e.spans[0][0] >= named && (first < 0 || e.spans[0][0] < first) && !strings.HasPrefix(e.text, "weather.") {
			first = e.spans[0][0]
		}
	}
	return first
}

// weatherOf is how many leaves of an inspection tell of the weather.
func (r *reader) weatherOf(b *builder) (n int) {
	for _, e := range b.entries {
		if strings.HasPrefix(e.text, "weather.") {
			n++
		}
	}
	return n
}

// weatherOfVisit gives every hive the weather that is told behind the names of the first two, where one
// sentence names both and nothing is told of any before: "Walnut, then Medlar, before lunch. Cloudy."
func (r *reader) weatherOfVisit() {
	if len(r.all) < 2 || r.all[0].named == 0 || r.all[0].named != r.all[1].named || len(r.all[1].spans) == 0 {
		return
	}
	named, told := r.all[1].spans[0][0], len(r.text)
	for _, b := range r.all {
		for _, e := range b.entries {
			if len(e.spans) > 0 && e.text != "hive" && !strings.HasPrefix(e.text, "weather.") {
				told = min(told, e.spans[0][0])
			}
		}
	}
	for _, e := range r.all[1].entries {
		if !strings.HasPrefix(e.text, "weather.") || len(e.spans) == 0 || e.spans[0][0] < named || e.spans[0][0] > told {
			continue
		}
		for _, b := range r.all {
			if b.find(b.paths.of(e.text)) == nil {
				b.put(e.text, e.value, source{spans: e.spans, rule: e.rule})
			}
		}
	}
}

// leaveBars forgets the bars in hand when the talk goes to another hive.
func (r *reader) leaveBars() {
	r.bars, r.last, r.step, r.inHand = nil, 0, r.outset, noBar
	r.lastFind, r.saidBar, r.combOf = nil, 0, 0
	r.saidOf.forget()
	r.sheLast, r.cellTalk, r.mites.method, r.barsCounted = false, false, "", false
	r.heading = asserted
	r.sameSentence = false
}

func (r *reader) weatherSoFar() []entry {
	var out []entry
	for _, e := range r.cur.entries {
		if strings.HasPrefix(e.text, "weather.") {
			out = append(out, e)
		}
	}
	return out
}
