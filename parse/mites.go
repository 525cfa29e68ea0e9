package parse

import (
	"slices"
	"strconv"
	"strings"
)

// miteCount reads a count of mites with its method, over what was spoken of
// together in a sentence.
func (r *reader) miteCount(c *clause) {
	method, mite := -1, -1
	for i := range c.items {
		it := &c.items[i]
		if it.used {
			continue
		}
		if it.is(kMethod) && method < 0 && r.methodHere(c, i) && !r.otherMethod(c, i) {
			method = i
		}
		if it.is(kMite) && mite < 0 && !(c.next(i).is(kTemper) && c.next(i).pause == none) { // "a mite testy"
			mite = i
		}
	}
	if mite < 0 && method > 0 && strings.HasPrefix(c.items[method].text, "mites ") && c.items[method-1].is(kNum) {
		mite = method // "two mites dropped in a week"
	}
	if method < 0 && mite < 0 && !r.named && c.eachSample() {
		r.beesSampled(c, r.miteMethod, r.why("mites", ""))
	}
	if method < 0 && mite < 0 || method >= 0 && hasKind(c.items[:method], kUndone) && !c.counts() {
		return
	}
	if method >= 0 && mite < 0 && r.boardTime(c) && c.onlyTimeBefore(method) {
		r.miteSentence = true
	}
	if method >= 0 && mite < 0 && r.miteMethod == "" && !r.miteSentence && !r.miteAhead(c, method) && !r.sampled(c) {
		if !r.sureMethod(&c.items[method]) && !c.items[method].colon && !r.boardToldOf(c, method) {
			return
		}
	}
	if method < 0 && hasKind(c.items, kUndone) && !c.counts() {
		return // "for varroa I did not look"
	}
	if mite < 0 && r.miteMethod != "" && !c.counts() && !c.has(kNot) {
		return // "a wash would have been more honest"
	}
	kindOf := ""
	if method >= 0 {
		kindOf = r.value(&c.items[method], kMethod)
		r.miteMethod = kindOf
	}
	r.miteDetails(c, method, mite, kindOf)
}

// otherMethod reports whether the method at item i is denied, and another one told behind it:
// "no wash here, the board says five a day".
func (r *reader) otherMethod(c *clause, i int) bool {
	return i > 0 && c.items[i-1].is(kNo) && c.items[i].pause == none && r.value(&c.items[i], kMethod) != "drop" && hasKind(c.items[i+1:], kMethod)
}

// eachSample reports whether the clause tells of what was taken from each hive: "half a cup
// per colony".
func (c *clause) eachSample() bool {
	for k := range c.items {
		if it := &c.items[k]; it.isWord4("per", "each", "every", "from each") {
			return true
		}
	}
	return false
}

// counts reports whether a number other than "a" stands in the clause.
func (c *clause) counts() bool {
	return c.has(kNum) && slices.ContainsFunc(c.items, func(it item) bool { return it.is(kNum) && !it.n.article })
}

// boardTime reports whether a length of time stands in the clause: "drop 18 in
// 3 days".
func (r *reader) boardTime(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDur) || c.items[k].is(kDate) && c.items[k].day.length > 0 {
			return true
		}
	}
	return false
}

// sureMethod is a method that nothing else in a hive is called.
func (r *reader) sureMethod(it *item) bool {
	return it.n.lo > 0 || slices.ContainsFunc(r.wordsOf[sureMethods], func(word string) bool { return strings.Contains(it.text, word) })
}

// methodHere reports whether a word for a way of counting mites is one here.
func (r *reader) methodHere(c *clause, i int) bool {
	text := c.items[i].text
	if r.boardToldOf(c, i) {
		return true
	}
	if r.inList(ambiguousMethods, text) {
		for k := range c.items {
			if c.items[k].is(kMite) || c.items[k].is(kMethod) && k != i {
				return true
			}
		}
		return r.miteMethod != "" || r.miteSentence || r.sampled(c) || i == 0 && c.items[0].colon || r.boardTime(c) && c.onlyTimeBefore(i) && (c.items[i].colon || c.next(i).any(kNum, kNo, kNot) && !c.next(i).n.article)
	}
	return true
}

// boardToldOf reports whether it is told behind the board at item i, in words that boardGave
// settled, what it held: "the board there gave 41 over four days".
func (r *reader) boardToldOf(c *clause, i int) bool {
	next := c.next(i)
	return next.any(kBe, kAdv) && next.says == senseless && r.boardTime(c)
}

// onlyTimeBefore reports whether nothing but a length of time stands before item i: "24h drop:
// 11", "3 day drop 18".
func (c *clause) onlyTimeBefore(i int) bool { return allOf(c.items[:i], setOf(kDur, kDate, kAdv)) }

func (r *reader) miteAhead(c *clause, i int) bool {
	for k := range c.items {
		if c.items[k].is(kNum) && !c.items[k].n.article || c.items[k].is(kNo) {
			return r.sureMethod(&c.items[i])
		}
	}
	return false
}

// miteDetails writes a count of mites: how it was made, of how many bees or days, and
// what it gave. method and mite are their items, -1 where there is none.
func (r *reader) miteDetails(c *clause, method, mite int, kindOf string) {
	var items []*item
	if method >= 0 {
		items = append(items, &c.items[method])
	}
	if mite >= 0 {
		items = append(items, &c.items[mite])
	}
	count, countItem := r.mitesCounted(c, mite, method)
	if count == nil {
		count, countItem = c.mitesOfSample()
	}
	days := r.boardDays(c)
	if days == 0 && method < 0 && mite >= 0 && r.miteMethod == "drop" {
		days = r.boardLay(c)
	}
	if kindOf == "" {
		kindOf = r.miteMethod
		if kindOf == "" && count != nil && !c.has(kSeen) && !c.has(kUnseen) {
			kindOf = r.sampling.method
		}
		switch {
		case kindOf != "":
		case days > 0:
			kindOf = "drop"
		case c.sample() == nil:
			kindOf = "seen"
		}
	}
	w := r.why("mites", "", items...)
	if c.doubt != "" {
		w.doubts = append(w.doubts, "hedged: "+c.doubt)
	}
	if kindOf != "" {
		r.cur.put("mites.method", kindOf, w)
	}
	w.doubts = nil
	if count != nil {
		if countItem != nil {
			w = r.why("mites", "", countItem)
		}
		r.cur.put("mites.count", formatNumber(count.lo), w)
		if count.approx || count.hi > count.lo {
			r.cur.flag("mites.count", "an estimate", "")
		}
	}
	if days > 0 && (count != nil || kindOf == "drop") {
		r.cur.put("mites.days", strconv.Itoa(days), w)
	}
	if kindOf == "brood" && method >= 0 && c.items[method].n.lo > 0 {
		r.cur.put("mites.cells", formatNumber(c.items[method].n.lo), w)
	}
	r.beesSampled(c, kindOf, w)
	if count != nil && kindOf == r.sampling.method {
		r.sampledAlike()
	}
}

// sugarFor settles of each word for sugar whether bees were rolled in it to count their mites,
// as a sentence does that tells of mites or of a sample and of no deed: "sugar again, 300
// bees, two mites". Elsewhere it is food.
func (r *reader) sugarFor(items []item) {
	for i := range items {
		it := &items[i]
		if !it.is(kMethod) || !it.is(kSubstance) {
			continue
		}
		from, to := i, i+1
		for from > 0 && items[from].pause < stop {
			from--
		}
		for to < len(items) && items[to].pause < stop {
			to++
		}
		sentence := items[from:to]
		food := hasKind(sentence, kDo) || i > from && items[i-1].any3(kMeasure, kOf, kNum) && it.pause == none
		if !food && hasKind(sentence, kMite) && hasKind(sentence, kNum) {
			it.kinds = it.kinds.without(setOf(kSubstance))
		} else {
			it.kinds = it.kinds.without(setOf(kMethod))
		}
	}
}

// sampling is how mites are counted in every hive of the note, told before the first of them:
// "alcohol washes, 300 bees per sample".
type sampling struct {
	method string
	sizes  []entry // the bees of a sample, the days of a board
}

// samplingSoFar is how mites are counted, where it was told without a count.
func (r *reader) samplingSoFar() (s sampling) {
	_, counted := r.cur.get("mites.count")
	if method, _ := r.cur.get("mites.method"); counted || method == "seen" {
		return sampling{}
	}
	for _, e := range r.cur.entries {
		switch e.text {
		case "mites.method":
			s.method = e.value
		case "mites.bees", "mites.days":
			s.sizes = append(s.sizes, e)
		}
	}
	return s
}

// sampledAlike gives mites that were counted as in every hive the size of the sample.
func (r *reader) sampledAlike() {
	for _, e := range r.sampling.sizes {
		if _, said := r.cur.get(e.text); !said {
			r.cur.put(e.text, e.value, source{spans: e.spans, rule: e.rule})
		}
	}
}

// mitesCounted is the count that stands with the mites: before them, behind
// "was" or "count", or alone with the method.
func (r *reader) mitesCounted(c *clause, mite, method int) (*quantity, *item) {
	if mite >= 0 {
		for k := mite - 1; k >= 0 && k >= mite-5; k-- {
			it := &c.items[k]
			if it.is(kNo) {
				it.used = true
				return &quantity{}, it
			}
			if it.is(kUnseen) {
				it.used = true
				return &quantity{}, it
			}
			if it.is(kNum) && !it.n.share {
				if it.n.article && k < mite-1 {
					continue
				}
				if it.n.article {
					return nil, nil
				}
				return &it.n, it
			}
			if it.any5(kBars, kBees, kMeasure, kDo, kContent) {
				break
			}
		}
		for k := mite + 1; k < len(c.items) && k <= mite+6; k++ {
			it := &c.items[k]
			if it.any(kNot, kUnseen) || it.is(kNo) && (k+1 >= len(c.items) || c.items[k+1].pause > none) {
				it.used = true
				return &quantity{}, it
			}
			if it.is(kNum) && !it.n.share && !it.n.article && !r.beesCount(c, k) {
				return &it.n, it
			}
			if it.any3(kDo, kBars, kContent) {
				break
			}
		}
	}
	if method >= 0 {
		for k := method + 1; k < len(c.items) && k <= method+8; k++ {
			it := &c.items[k]
			if it.is(kNum) && !it.n.share && !it.n.article && !r.beesCount(c, k) && !r.countedElse(c, k) {
				return &it.n, it
			}
			if it.is(kNo) && r.bareNo(it) && k+1 >= len(c.items) || it.is(kNot) {
				return &quantity{}, it
			}
		}
	}
	return nil, nil
}

// countedElse: the mites have been counted, and the number at item k is of something
// else: "the wash being trouble enough for one evening".
func (r *reader) countedElse(c *clause, k int) bool {
	_, counted := r.cur.get("mites.count")
	return counted && k+1 < len(c.items) && c.items[k+1].pause == none && c.items[k+1].is(kWord)
}

// beesCount: a number of bees in the sample, or of what else is counted.
func (r *reader) beesCount(c *clause, k int) bool {
	if k+1 < len(c.items) && c.items[k+1].pause == none && c.items[k+1].any(kSign, kCell) {
		return true
	}
	if it := &c.items[k]; it.n.lo >= smallestSample && it.n.whole() && k > 0 && r.isWord(&c.items[k-1], "in", "per", "of", "out of", "from", "/") {
		return true // "3 in 300"
	}
	for j := k + 1; j < len(c.items) && j <= k+2; j++ {
		if c.items[j].is(kBees) {
			return true
		}
		if !c.items[j].any3(kOf, kAdv, kWord) {
			return false
		}
	}
	return false
}

// boardDays is for how many days mites fell on a board, 0 where it is not told.
func (r *reader) boardDays(c *clause) int {
	for k := range c.items {
		it := &c.items[k]
		text := it.text
		switch {
		case it.is(kDur) && it.dur.days > 0:
			it.used = true
			c.usePer(k)
			return it.dur.days
		case it.is(kDate) && it.day.length > 0:
			it.used = true
			return it.day.length
		case text == "overnight":
			it.used = true
			return 1
		case text == "daily" || (text == "day" || text == "d") && k > 0 && (c.items[k-1].is(kArt) && text == "day" || c.items[k-1].isWord2("per", "/")):
			it.used = true
			c.usePer(k)
			return 1
		}
	}
	return 0
}

// boardLay is for how many days the board lay, told before the clause that counts: "the board
// had been under hive six for a week, and when I pulled it there were ten mites"; else 0.
func (r *reader) boardLay(c *clause) int {
	board := false
	for k := range r.told {
		it := &r.told[k]
		switch {
		case it.start >= c.items[0].start, it.is(kNum) && it.n.lo > 1:
			return 0
		case it.is(kMethod):
			board = true
		case board && it.is(kDur) && it.dur.days > 0 && k > 0 && r.told[k-1].isWord3("for", "over", "after"):
			it.used = true
			return it.dur.days
		}
	}
	return 0
}

// boardGave lets a number that tells what a board held stand behind its verb: "the mite board
// yielded 14 in four days".
func (r *reader) boardGave(items []item) {
	for i := 0; i+2 < len(items); i++ {
		if !items[i].is(kMethod) || r.value(&items[i], kMethod) != "drop" {
			continue
		}
		verb := i + 1
		for verb < len(items) && (items[verb].any(kThere, kAdv) || items[verb].isWord4("underneath", "below", "beneath", "again")) && !items[verb].is(kDo) && items[verb].pause == none {
			verb++
		}
		if verb+1 >= len(items) || items[verb].pause > none || !r.isWord(&items[verb], r.wordsOf[boardVerbs]...) || !barNumber(&items[verb+1]) || items[verb+1].pause > none {
			continue
		}
		timed := false
		for k := verb + 2; k < len(items) && k < verb+5 && items[k].pause == none; k++ {
			timed = timed || items[k].is(kDur) || items[k].is(kDate) && items[k].day.length > 0 || items[k].is(kMite)
		}
		if timed {
			items[verb].kinds, items[verb].says = setOf(kBe), senseless
			for k := i + 1; k < verb; k++ {
				items[k].kinds, items[k].says = setOf(kAdv), senseless
			}
		}
	}
}

// usePer marks the word that leads to the time at item k: "3/day", "11 per 24h".
func (c *clause) usePer(k int) {
	if k > 0 && c.items[k-1].isWord3("/", "per", "in") {
		c.items[k-1].used = true
	}
}

// ofMites are the kinds of words for mites and for how they are counted.
var ofMites = setOf(kMethod, kMite)

// boardLabels lets the count of mites go on behind a label that tells the time as well: "mite
// drop (48h): 14", "mites per day: 4".
func boardLabels(items []item) {
	for i := 2; i < len(items); i++ {
		it, last := &items[i], &items[i-1]
		if it.pause != colon || !last.colon || !it.is(kNum) && !it.any(kNo, kNot) {
			continue
		}
		k := i - 1
		if !last.is(kDur) && !last.isWord2("day", "d") {
			continue
		}
		for k > 0 && (items[k].any3(kDur, kArt, kOn) || items[k].isWord4("day", "d", "per", "/")) {
			k--
		}
		if k >= i-3 && items[k].any(kMethod, kMite) {
			last.colon, it.pause = false, none
		}
	}
}

// beesSampled reads the size of the sample; half a cup of bees is about 300
// (record.md; extension leaflets give 300, some 400).
func (r *reader) beesSampled(c *clause, kindOf string, w source) {
	if kindOf != "wash" && kindOf != "sugar" && (kindOf != "" || !c.hasAny(kMite, kMethod)) {
		return
	}
	sample := c.sample()
	for k := range c.items {
		it := &c.items[k]
		switch {
		case it.is(kMethod) && strings.Contains(it.text, "half a cup"):
			r.cur.put("mites.bees", "300", w)
		case it.is(kNum) && it.n.lo >= 20 && r.beesCount(c, k):
			it.used = true
			r.cur.put("mites.bees", formatNumber(it.n.lo), w)
		case it == sample:
			_, bees, _ := ofSample(it)
			r.cur.put("mites.bees", strconv.Itoa(bees), w)
		case it.is(kMeasure) && it.size.unit == "cup":
			it.used = true
			r.cur.put("mites.bees", formatNumber(float64(int(it.size.amount.lo*600+0.5))), w)
		}
	}
}

// smallestSample is the least number that tells of bees in a sample by itself: samples of
// 100 to 400 bees are common practice, and few counts of mites go so high.
const smallestSample = 100

// sample is the item that tells mites and the bees of their sample as one, "6/300"; nil
// where there is none.
func (c *clause) sample() *item {
	for k := range c.items {
		if _, _, ok := ofSample(&c.items[k]); ok {
			return &c.items[k]
		}
	}
	return nil
}

// sampled reports whether the bees of a sample are counted: "6/300", "wash of 300 bees".
func (r *reader) sampled(c *clause) bool {
	for k := range c.items {
		if it := &c.items[k]; it.is(kNum) && it.n.lo >= smallestSample && r.beesCount(c, k) {
			return true
		}
	}
	return c.sample() != nil
}

// ofSample reads "6/300".
func ofSample(it *item) (mites, bees int, ok bool) {
	over, under, ok := strings.Cut(it.text, "/")
	if !ok || !it.is(kWord) {
		return 0, 0, false
	}
	mites, err := strconv.Atoi(over)
	if err != nil {
		return 0, 0, false
	}
	bees, err = strconv.Atoi(under)
	return mites, bees, err == nil && bees >= smallestSample
}

// mitesOfSample is the count of mites that stands with the bees of their sample.
func (c *clause) mitesOfSample() (*quantity, *item) {
	it := c.sample()
	if it == nil {
		return nil, nil
	}
	mites, _, _ := ofSample(it)
	it.used = true
	return &quantity{lo: float64(mites), hi: float64(mites)}, it
}
