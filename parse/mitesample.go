package parse

import (
	"strconv"
	"strings"
)

// The sample of bees that is washed or rolled for mites: its size, and what it gave.

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

// sampling is how mites are counted in every hive of the note, told before the first of them:
// "alcohol washes, 300 bees per sample".
type sampling struct {
	method string
	sizes  []entry // the bees of a sample, the days of a board
}

// samplingSoFar is how mites are counted, where it was told without a count.
func (r *reader) samplingSoFar() (s sampling) {
	if r.cur.empty() {
		return sampling{}
	}
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

// beesCount: a number of bees in the sample, or of what else is counted.
func (r *reader) beesCount(c *clause, k int) bool {
	if k+1 < len(c.items) && c.items[k+1].pause == none && c.items[k+1].any(kSign, kCell) {
		return true
	}
	if it := &c.items[k]; it.n.lo >= smallestSample && it.n.whole() && k > 0 && r.isWord(&c.items[k-1], "in", "per", "of", "off", "out of", "from", "/") {
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
		} else if it.is(kMeasure) && it.size.unit == "cup" && r.beesCount(c, k) {
			return true
		}
	}
	return c.sample() != nil
}

// sampleGave reads what a sample held where the way of counting was told before the hive: "Mite wash
// on the garden hive: 5 in 300. The orchard hive: 14 in 300."
func (r *reader) sampleGave(c *clause) {
	if r.mites.sampled == "" || c.hasAny(kMethod, kMite) {
		return
	}
	if _, told := r.cur.get("mites.count"); told {
		return // a second count is another hive's, named behind it: "12/300 H2. 3/300 H1."
	}
	for k := 2; k < len(c.items); k++ {
		it, count := &c.items[k], &c.items[k-2]
		if it.is(kNum) && it.n.lo >= smallestSample && r.beesCount(c, k) && count.is(kNum) && count.n.whole() && count.n.lo < it.n.lo {
			r.sampleHeld(c, &count.n, count, it)
			count.used, it.used = true, true
		}
	}
}

// sampleHeld writes how many mites the sample held that some items tell.
func (r *reader) sampleHeld(c *clause, count *quantity, items ...*item) {
	w := r.why("mites", "", items...)
	r.cur.put("mites.method", r.mites.sampled, w)
	r.cur.put("mites.count", formatNumber(count.lo), w)
	r.beesSampled(c, r.mites.sampled, w)
}

// ofSample reads "6/300".
func ofSample(it *item) (mites, bees int, ok bool) {
	if !it.is(kWord) {
		return 0, 0, false
	}
	over, under, ok := strings.Cut(it.text, "/")
	if !ok {
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
