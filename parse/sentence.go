package parse

import (
	"slices"
	"strings"
)

// sentence is one of the line.
type sentence struct {
	items []item
	told  []item // with subjects said again
	again []again
	met   kinds
	cut   [2]int // its clauses among those of the line; none before it is cut
}

// hear makes ready the sentences of the line, and cuts those into clauses that can be cut
// whatever is told before them. (What cuts and what reads take so much code that each would
// have to come anew into the processor's cache for every sentence.)
func (r *reader) hear() {
	r.heard, r.list = r.heard[:0], r.list[:0]
	for rest := r.items; len(rest) > 0; {
		n, met := firstSentence(rest)
		items := rest[:n]
		rest = rest[n:]
		r.heard = append(r.heard, sentence{items: items, met: met})
		s := &r.heard[len(r.heard)-1]
		if r.askAll {
			s.met = everyKind
		}
		if !s.met.has(kName) && !(s.met.has(kDo) && s.met.has(kDate)) && !s.items[0].is(kNum) {
			r.cut(s)
		}
	}
}

// cut cuts a sentence into clauses. What is told before it is asked where it names a hive,
// or may name the day of the visit, and of a number at its head.
func (r *reader) cut(s *sentence) {
	s.told = s.items
	if s.met.meet(actors) && s.met.meet(actorsVerb) {
		s.told, s.again = r.subjectsAgain(s.items)
	}
	r.othersBees(s.told)
	if r.opening && s.met.has(kDo) && s.met.has(kDate) {
		r.visitOf(s.told)
	}
	if s.met.has(kBut) {
		r.onlyThenOrThere(s.told)
	}
	if s.met.has(kContent) && s.met.has(kBars) && s.met.has(kBe) {
		r.broodAgain(s.told)
	}
	from := len(r.list)
	r.list = r.clauses(s.told, r.list)
	s.cut = [2]int{from, len(r.list)}
}

// sentence reads one sentence: its clauses in order, each with its mood.
func (r *reader) sentence(s *sentence) {
	r.sameSentence = false
	r.sentenceNo++
	r.mendedBars = nil
	r.labelled = nil
	r.planDay = nil
	r.hereColon = false
	if s.cut[1] == 0 {
		r.cut(s)
	}
	r.told = s.told
	list := r.list[s.cut[0]:s.cut[1]]
	var kinds kinds
	for i := range list {
		kinds = kinds.or(list[i].kinds)
	}
	r.wholeSentence, r.mites.here = kinds.has(kBrood), kinds.has(kMite)
	r.askedOnly = false
	if kinds.meet(cueing) || r.mayBeMeant(s) {
		r.judge(list)
	}
	for i := range list {
		c := &list[i]
		if i > 0 {
			r.itNow(&list[i-1], c)
		}
		r.enter(c, i+1 < len(list) && list[i+1].mood == planned)
		r.clause(c)
		if c.has(kBars) || r.stepped {
			r.sameSentence = true
			r.stepped = false
		}
		if c.kinds.meet(ofFixtures) {
			r.followFixture(c)
		}
		if c.mood == unasked && c.has(kQueen) && youAsked(c.items) {
			r.sheLast, r.spokeOf.queen = true, r.sentenceNo // "you ask after the queen: she was raised in 2025"
		}
	}
	if s.again != nil {
		useSpoken(s.items, s.told, s.again)
	}
	r.site = (r.site || r.cur.named == r.sentenceNo) && len(r.all) == 1 && r.onlyWeather(s.told)
	if r.sentenceNo > 3 {
		r.opening = false
	}
}

// mayBeMeant reports whether a sentence without the words for it may be meant otherwise than as a
// statement of today: as an order or a question, or by the heading above it.
func (r *reader) mayBeMeant(s *sentence) bool {
	return s.told[0].is(kDo) || s.told[len(s.told)-1].asked || r.heading != asserted || r.askAll
}

// offFixtures are the kinds of words that lead the talk away from a fixture, and ofFixtures those
// that lead there or away.
var (
	offFixtures = setOf(kContent, kCell, kQueen)
	ofFixtures  = offFixtures.or(setOf(kFixture))
)

// followFixture keeps the fixture that was spoken of last.
func (r *reader) followFixture(c *clause) {
	if !c.has(kFixture) {
		r.lastFixture = ""
		return
	}
	for k := range c.items {
		if c.items[k].anyOf(offFixtures) {
			r.lastFixture = ""
		}
		if c.items[k].is(kFixture) {
			r.lastFixture = r.value(&c.items[k], kFixture)
		}
	}
}

// plantInFlower keeps the plant of "red gum's out and they're bringing in
// nectar" for the load that follows.
func (r *reader) plantInFlower(c *clause) {
	if c.has(kContent) {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if it.is(kPlant) && !it.used && i+1 == len(c.items) && r.worksOn(c.items[:i]) {
			r.flowering = r.mentions(onePlant(r.value(it, kPlant)))
		}
		if c.has(kBring) {
			continue
		}
		if it.is(kPlant) && i+1 < len(c.items) && (c.items[i+1].is(kBe) || c.items[i+1].is(kHave) && r.wordIn(c.items[i+2:], r.wordsOf[blooms]...)) && !it.used && !(i+2 < len(c.items) && r.isWord(&c.items[i+2], r.wordsOf[outOfFlower]...)) {
			r.flowering = r.mentions(r.value(it, kPlant))
		}
	}
}

// worksOn reports whether the words before a plant tell that the bees are at it: "they're
// working the hawthorn", "they are all over the borage".
func (r *reader) worksOn(items []item) bool {
	k := len(items) - 1
	if k > 0 && items[k].is(kArt) {
		k--
	}
	return k > 0 && (items[k].is(kOn) || items[k].isWord4("working", "visiting", "mobbing", "foraging")) && hasKind(items[:k], kBees)
}

// weighed: a hive's name with nothing but a mass of ten kilograms or more is
// its weight ("hive five twenty six kilos", going down the row with the scale).
func (r *reader) weighed(c *clause) {
	if r.spokeOf.deed == r.sentenceNo && strings.HasPrefix(r.lastDeed, "actions.harvest") {
		return // "four bars, which came, when weighed, to nine pounds"
	}
	if first := &c.items[0]; first.is(kMeasure) && r.spokeOf.scale == r.sentenceNo && first.pause == colon && !first.used {
		if kg, ok := first.size.kg(); ok && kg >= 10 {
			r.leaf("weight_kg", formatNumber(round2(kg)), "weight", "", c.doubt, first)
		}
	}
	r.weightAlone(c)
	for i := range c.items {
		it := &c.items[i]
		if it.is(kMeasure) && !it.used && i > 0 && (c.items[i-1].any(kBe, kHave) || it.pause == comma || !c.has(kDo) && r.afterReading(&c.items[i-1])) && r.spokeOf.scale == r.sentenceNo {
			if kg, ok := it.size.kg(); ok && kg >= 5 {
				r.leaf("weight_kg", formatNumber(round2(kg)), "weight", "", c.doubt, it)
			}
		}
		if it.is(kMeasure) && !it.used && i > 2 && i < 10 && c.items[i-1].text == "at" && it.pause == none && c.items[0].any(kName, kPron) && c.items[1].is(kBe) && !hasKind(c.items[:i], kDo) && !hasKind(c.items[:i], kSubstance) {
			if kg, ok := it.size.kg(); ok && kg >= 10 {
				r.leaf("weight_kg", formatNumber(round2(kg)), "weight", "", c.doubt, it) // "Juniper is the lightest at 18 kg"
			}
		}
		if !it.is(kMeasure) || it.used || i == 0 || !c.items[i-1].any6(kName, kAdv, kBe, kTo, kHave, kBut) || i > 4 || hasKind(c.items[:i], kDo) || !c.items[0].is(kName) && !(c.items[0].is(kArt) && c.items[1].is(kName)) {
			continue
		}
		if kg, ok := it.size.kg(); ok && kg >= 10 {
			r.leaf("weight_kg", formatNumber(round2(kg)), "weight", "", c.doubt, it)
		}
	}
}

// afterReading reports whether what a scale tells follows a word: "on the scales it
// came to 31 kg", "mass 28 kg".
func (r *reader) afterReading(it *item) bool {
	return it.any(kTo, kOn) || it.lists.has(scales) || r.isWord(it, r.wordsOf[readings]...)
}

// afterthoughts are counts, plants and amounts told in a clause of their own:
// "beetles, we counted eight", "pollen, I think from phacelia", "harvested bar
// eleven: three pounds".
func (r *reader) afterthoughts(c *clause) {
	ofHer := r.spokeOf.queen > 0 && r.spokeOf.queen >= r.sentenceNo-1
	if r.lastSign == "" && r.cargo.what == "" && !ofHer && r.spokeOf.deed != r.sentenceNo {
		return // there is nothing that they could be of
	}
	for i := range c.items {
		it := &c.items[i]
		if it.used || !it.any4(kNum, kColour, kPlant, kMeasure) {
			continue
		}
		switch {
		case it.is(kNum) && r.lastSign != "" && r.justSoMany(c, i):
			r.putCount("signs."+r.lastSign, it.n, r.why("count", "", it))
		case it.is(kNum) && it.n.approx && r.lastSign != "" && i <= 2 && it.n.whole():
			r.putCount("signs."+r.lastSign, it.n, r.why("count", "", it))
		case it.is(kNum) && r.lastSign != "" && i > 0 && barNumber(it) && (strings.HasPrefix(c.items[i-1].text, "count") || c.items[i-1].is(kHave) && c.items[i-1].text != "with" && i+1 < len(c.items) && c.items[i+1].is(kOf)):
			r.putCount("signs."+r.lastSign, it.n, r.why("count", "", it))
		case it.is(kNum) && ofHer && i > 0 && i == len(c.items)-1 && r.raisedIn(c.items[:i]) && it.n.lo >= 1990 && it.n.lo < 2100:
			r.leaf("queen.year", formatNumber(it.n.lo), "queen-year", "", c.doubt, &c.items[0], it)
		case it.is(kColour) && r.cargo.what != "" && !c.has(kQueen) && !c.has(kContent) && !c.has(kDot) && (r.colonBefore(c) || c.items[0].text == "which"):
			r.described(c, r.cargo.what, "colour", kColour, i, len(c.items)-1)
			r.described(c, r.cargo.what, "plant", kPlant, i, len(c.items)-1)
		case it.is(kPlant) && r.cargo.what != "" && c.has(kMaybe) && guesses(c.items[:i]):
			r.described(c, r.cargo.what, "plant", kPlant, i, i)
			r.cur.flag(r.cargo.what+".plant", "hedged: "+c.doubt, "")
		case it.is(kPlant) && r.cargo.what != "" && i > 0 && (c.items[i-1].is(kFrom) || c.items[i-1].text == "off"):
			r.described(c, r.cargo.what, "plant", kPlant, i, i)
		case it.is(kMeasure) && strings.HasPrefix(r.lastDeed, "actions.harvest") && r.spokeOf.deed == r.sentenceNo:
			if _, ok := r.cur.get(r.lastDeed + ".amount"); !ok && it.size.unit != "mm" && it.size.unit != "cm" && it.size.unit != "in" {
				w := r.why("harvest-done", "", it)
				r.cur.put(r.lastDeed+".amount", formatNumber(it.size.amount.lo), w)
				r.cur.put(r.lastDeed+".unit", it.size.unit, w)
			}
		}
	}
}

// justSoMany reports whether the number at item i is all that a clause tells, as of how many there
// were of what was told before: "a bee with deformed wings on bar four, just the one".
func (r *reader) justSoMany(c *clause, i int) bool {
	only := c.items[0].is(kBut) && !c.items[0].isWord2("but", "except") || c.items[0].isWord3("just", "only", "maybe")
	if only && i > 0 && barNumber(&c.items[i]) && r.spokeOf.cells != r.sentenceNo {
		for k := 1; k < len(c.items); k++ {
			if k != i && !c.items[k].any4(kArt, kBees, kOf, kPron) {
				return false
			}
		}
		return true
	}
	return r.didAway(c.items, i)
}

// didAway reports whether the number at item i tells how many pests somebody did away with:
// "small hive beetles, I smashed four of them", "wasps about, we swatted three".
func (r *reader) didAway(items []item, i int) bool {
	if !barNumber(&items[i]) || i == 0 || items[i].pause > none {
		return false
	}
	behind := at(items, i+1)
	if ofThem := behind.is(kOf) && at(items, i+2).isWord4("them", "those", "these", "the things"); !ofThem && behind != &noItem && behind.pause == none && !behind.any(kAnd, kBut) {
		return false
	}
	for k := i - 1; k >= max(0, i-2); k-- {
		two := items[k].text + " " + items[i-1].text
		if k == i-1 && slices.Contains(r.wordsOf[doingAway], items[k].text) || k == i-2 && slices.Contains(r.wordsOf[doingAway], two) {
			return k < 3
		}
	}
	return false
}

// raisedIn reports whether the words before a year tell of a birth: "raised", "bred in".
func (r *reader) raisedIn(items []item) bool {
	if len(items) > 1 && items[0].is(kPron) {
		items = items[1:] // "the one I raised in 2025"
	}
	return r.isWord(&items[0], r.wordsOf[births]...) && (len(items) == 1 || len(items) == 2 && items[1].is(kOn))
}

// guesses reports whether nothing but a hedge and little words stand there: "pollen
// coming in, I think it's the rape".
func guesses(items []item) bool { return allOf(items, setOf(kMaybe, kPron, kBe, kArt, kAdv, kFrom)) }

// colonBefore: the clause spells out what the one before it named.
func (r *reader) colonBefore(c *clause) bool { return c.items[0].pause == colon }

// nowQueen remembers whether the queen is still the subject.
func (r *reader) nowQueen(c *clause) {
	if c.has(kBees) {
		r.subject, r.spokeOf.bees = kBees, r.sentenceNo
	}
	if c.has(kBees) || c.has(kBars) && !c.has(kQueen) && !c.has(kShe) {
		r.markLast = false
		r.sheLast = r.sheLast && (!c.has(kBees) || r.spokeOf.deed == r.sentenceNo && strings.HasSuffix(r.lastDeed, ".requeen"))
	}
}

// swarmed is always told of an earlier day, or of today's.
func (r *reader) swarmed(c *clause) {
	if !c.lists.has(swarming) && !r.askAll {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if r.swarmedAt(c, i) && !it.used && !hasKind(phraseSoFar(c.items, i), kNo) && !hasKind(c.items[:i], kIf) {
			r.earlier(c, "swarmed", "swarmed", nil, it)
		}
	}
}

// swarmedAt reports whether item i tells that the hive swarmed: "swarmed", "threw out a
// swarm".
func (r *reader) swarmedAt(c *clause, i int) bool {
	it := &c.items[i]
	switch {
	case !it.lists.has(swarming):
		return false
	case it.text != "swarm":
		return true
	}
	k := i - 1
	for k > 0 && (c.items[k].any(kArt, kAdv) || c.items[k].isWord2("out", "off")) {
		k--
	}
	return k >= 0 && r.isWord(&c.items[k], r.wordsOf[castingOff]...)
}

// barsOnly follows the bars that an unasserted clause names, so that what
// comes after is not tied to the wrong one.
func (r *reader) barsOnly(c *clause) {
	for i := range c.items {
		if it := &c.items[i]; it.is(kBars) && (i == 0 || c.asks && c.items[i-1].is(kOn)) {
			r.take(it.bars, len(it.bars) == 1)
			r.inHand = awaiting
		}
	}
}

// weightAlone takes a mass that is all of a sentence for what the hive weighs, where nothing that
// was harvested or fed may be meant: "Wind calm. 31 kg."
func (r *reader) weightAlone(c *clause) {
	it := &c.items[0]
	if len(c.items) > 1 || it.pause < stop || it.used || len(r.ahead) > 0 && r.ahead[0].pause < stop || r.spokeOf.deed > 0 && r.spokeOf.deed >= r.sentenceNo-1 {
		return
	}
	if _, told := r.cur.get("weight_kg"); told {
		return
	}
	if kg, ok := it.size.kg(); ok && kg >= 15 {
		r.leaf("weight_kg", formatNumber(round2(kg)), "weight", "", "a weight without a word for what weighs it", it)
	}
}
