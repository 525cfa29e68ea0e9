package parse

import (
	"slices"
	"strconv"
	"strings"
)

// miteTalk is how mites are being spoken of.
type miteTalk struct {
	method  string // by which those of the hive in hand were counted last
	sampled string // and that of the last sample of bees, in whichever hive
	here    bool   // this sentence speaks of them
}

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
		r.beesSampled(c, r.mites.method, r.why("mites", ""))
	}
	if method < 0 && mite < 0 && r.mites.method == "drop" {
		r.boardLayBehind(c)
	}
	if method < 0 && mite < 0 || method >= 0 && hasKind(c.items[:method], kUndone) && !c.counts() {
		return
	}
	if method >= 0 && mite < 0 && r.boardTime(c) && c.onlyTimeBefore(method) {
		r.mites.here = true
	}
	if method >= 0 && mite < 0 && r.mites.method == "" && !r.mites.here && !r.sampled(c) {
		if !r.sureMethod(&c.items[method]) && !c.items[method].colon && !r.boardToldOf(c, method) && !c.timeThenCount(method) {
			return
		}
	}
	if method < 0 && hasKind(c.items, kUndone) && !c.counts() {
		return // "for varroa I did not look"
	}
	if mite >= 0 && method < 0 && !c.counts() && r.leftUncounted(c, mite) {
		return
	}
	if mite < 0 && r.mites.method != "" && !c.counts() && !c.has(kNot) {
		return // "a wash would have been more honest"
	}
	kindOf := ""
	if method >= 0 {
		kindOf = r.value(&c.items[method], kMethod)
		r.mites.method = kindOf
		if kindOf == "wash" || kindOf == "sugar" {
			r.mites.sampled = kindOf
		}
	}
	r.miteDetails(c, method, mite, kindOf)
}

// otherMethod reports whether the method at item i is denied, and another one told behind it:
// "no wash here, the board says five a day".
func (r *reader) otherMethod(c *clause, i int) bool {
	return i > 0 && c.items[i-1].is(kNo) && c.items[i].pause == none && r.value(&c.items[i], kMethod) != "drop" && hasKind(c.items[i+1:], kMethod)
}

// counts reports whether a number other than "a" stands in the clause.
func (c *clause) counts() bool {
	return c.has(kNum) && slices.ContainsFunc(c.items, func(it item) bool { return it.is(kNum) && !it.n.article })
}

// leftUncounted reports whether mites are only named, and behind them it is said that nobody
// counted: "varroa I did not count today", "mites not checked".
func (r *reader) leftUncounted(c *clause, mite int) bool {
	for k := range r.told {
		it := &r.told[k]
		switch {
		case it.start <= c.items[mite].start:
		case it.any(kUndone, kUnsure):
			return true
		case it.pause > comma || !it.any3(kPron, kAdv, kBe):
			return false
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
		return r.mites.method != "" || r.mites.here || r.sampled(c) || i == 0 && c.items[0].colon || c.timeThenCount(i) || r.boardTime(c) && c.onlyTimeBefore(i) && (c.items[i].colon || c.next(i).any(kNum, kNo, kNot) && !c.next(i).n.article)
	}
	return true
}

// timeThenCount reports whether a length of time and a number, with a verb of being before it, are
// told of the board at item i: "the drop over five days was sixty".
func (c *clause) timeThenCount(i int) bool {
	k, timed := i+1, false
	for k < len(c.items) && c.items[k].any4(kOn, kArt, kDur, kAdv) && c.items[k].pause <= comma {
		timed = timed || c.items[k].is(kDur)
		k++
	}
	return timed && k+1 < len(c.items) && c.items[k].is(kBe) && c.items[k+1].is(kNum) && !c.items[k+1].n.article && !c.items[k+1].n.share
}

// onlyTimeBefore reports whether nothing but a length of time stands before item i: "24h drop:
// 11", "3 day drop 18".
func (c *clause) onlyTimeBefore(i int) bool { return allOf(c.items[:i], setOf(kDur, kDate, kAdv)) }

// miteDetails writes a count of mites: how it was made, of how many bees or days, and
// what it gave. method and mite are their items, -1 where there is none.
func (r *reader) miteDetails(c *clause, method, mite int, kindOf string) {
	count, countItem := r.mitesCounted(c, mite, method)
	if count == nil {
		count, countItem = c.mitesOfSample()
	}
	days := r.boardDays(c)
	if days == 0 && method < 0 && mite >= 0 && (r.mites.method == "drop" || r.mites.method == "" && count != nil) {
		days = r.boardLay(c)
	}
	if kindOf == "" {
		kindOf = r.methodMeant(c, count, days)
	}
	w := r.miteWords(c, method, mite)
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

// miteWords are the words that tell of mites, and of the method by which they were counted.
func (r *reader) miteWords(c *clause, method, mite int) source {
	var items []*item
	if method >= 0 {
		items = append(items, &c.items[method])
	}
	if mite >= 0 {
		items = append(items, &c.items[mite])
	}
	w := r.why("mites", "", items...)
	if c.doubt != "" {
		w.doubts = append(w.doubts, "hedged: "+c.doubt)
	}
	return w
}

// methodMeant is how mites were counted where the clause does not tell: as was told before, on a
// board if it lay so many days, or they were only seen; "" where that is not known.
func (r *reader) methodMeant(c *clause, count *quantity, days int) string {
	method := r.mites.method
	if method == "" && count != nil && !c.has(kSeen) && !c.has(kUnseen) {
		method = r.sampling.method
	}
	switch {
	case method != "":
		return method
	case days > 0:
		return "drop"
	case c.sample() == nil:
		return "seen"
	}
	return ""
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
			if it.is(kNum) && !it.n.share && !it.n.ordinal && !it.n.article && !r.beesCount(c, k) {
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

// usePer marks the word that leads to the time at item k: "3/day", "11 per 24h".
func (c *clause) usePer(k int) {
	if k > 0 && c.items[k-1].isWord3("/", "per", "in") {
		c.items[k-1].used = true
	}
}

// ofMites are the kinds of words for mites and for how they are counted.
var ofMites = setOf(kMethod, kMite)
