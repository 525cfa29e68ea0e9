package parse

import "strings"

// bringsToBars are the kinds of words behind which a number of bars is of what they tell.
var bringsToBars = setOf(kContent, kStage, kPattern, kAnd, kThere, kAdv, kSeen)

// plainLeaves writes the leaves of rules that say all themselves.
func (r *reader) plainLeaves(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kLeaf) || it.used {
			continue
		}
		rule := r.rule(it, kLeaf)
		if rule.ID == "stores-heavy" && (r.heavyBars(c, i) || it.isWord2("weighs a ton", "heavy as lead") && (c.has(kBars) || r.sameSentence && len(r.bars) > 0)) {
			continue // of a bar in hand, not of the stores
		}
		if rule.ID == "bars-total" && i > 0 && (c.items[i-1].anyOf(bringsToBars) || c.items[i-1].is(kBe) && i > 1 && c.items[i-2].is(kContent) || c.items[i-1].isWord3("counted", "noted", "recorded")) && it.pause == none && hasKind(c.items[:i], kContent) {
			continue // of what stands before: "brood on five bars"
		}
		if rule.ID == "bars-total" && i > 0 && c.items[i-1].any3(kCell, kCellKind, kSign) && it.pause == none && strings.HasPrefix(it.text, "on ") {
			continue // "queen cells on two bars"
		}
		if rule.ID == "bars-of-bees" {
			r.barsCounted, r.subject, r.spokeOf.bees = true, kBees, r.sentenceNo
		}
		if rule.ID == "weight" && i <= 4 && r.harvestWeighed(c, it) {
			continue
		}
		for _, set := range rule.Set {
			path, value, _ := strings.Cut(set, "=")
			if v, ok := r.filled(it, value); ok {
				r.writePlain(c, i, path, v, rule)
				r.sheLast = r.sheLast || path == "queenright" // "QR. Unmarked."
			}
		}
	}
}

// harvestWeighed writes what a harvest told right before weighed: "I took bars three and
// four, which came to 4 kg on the kitchen scale".
func (r *reader) harvestWeighed(c *clause, it *item) bool {
	if !strings.HasPrefix(r.lastDeed, "actions.harvest") || r.spokeOf.deed != r.sentenceNo || it.size.unit == "" || !c.items[0].any3(kThen, kPron, kLeaf) && !c.items[0].isWord3("they", "it", "which") {
		return false
	}
	if _, told := r.cur.get(r.lastDeed + ".amount"); told || it.size.amount.lo >= 10 && strings.HasPrefix(it.text, "weighs ") {
		return false // "took off a bar, weighs 24 kg" is the hive
	}
	it.used = true
	w := r.why("weight", "", it)
	r.cur.put(r.lastDeed+".amount", formatNumber(it.size.amount.lo), w)
	r.cur.put(r.lastDeed+".unit", it.size.unit, w)
	return true
}

// heavyBars writes the honey of "bars one and two are heavy with honey", which tells
// of those bars and not of the colony's stores.
func (r *reader) heavyBars(c *clause, i int) bool {
	it, first := &c.items[i], &c.items[0]
	if !first.is(kBars) || i > 3 || !strings.HasSuffix(it.text, " honey") && !(heavyLeaf(it) && strings.HasSuffix(it.text, " stores")) {
		return false
	}
	it.used = true
	f := r.newFinding(&finding{class: ofComb, what: "honey", present: true, extent: extent{amount: "much"}, bars: first.bars, located: true, items: r.these(first, it), rule: "honey"})
	r.record(f)
	r.remember(f) // "bar nine the same"
	return true
}

// filled puts the number that the words carried in place of $n and the like.
func (r *reader) filled(it *item, value string) (string, bool) {
	switch value {
	case "$n":
		return formatNumber(it.n.lo), !it.n.article && !it.n.share
	case "$kg":
		kg, ok := it.size.kg()
		return formatNumber(round2(kg)), ok && kg >= lightestHive
	case "$t":
		if it.n.lo > 45 {
			return formatNumber(celsius(it.n.lo)), true
		}
		return formatNumber(it.n.lo), true
	case "$c":
		return formatNumber(it.n.lo), true
	case "$f":
		return formatNumber(celsius(it.n.lo)), true
	}
	return value, true
}

// lightestHive is the mass in kilograms below which what is weighed is no hive but a
// comb or a harvest (a rule of thumb: common practice, no source).
const lightestHive = 5

func round2(v float64) float64 { return float64(int(v*100+0.5)) / 100 }

// writePlain writes a leaf that a rule names outright, unless the words beside it turn
// it into another or into none.
func (r *reader) writePlain(c *clause, i int, path, value string, rule *rule) {
	it := &c.items[i]
	if path == "weather.temp_c" {
		if i > 0 && c.items[i-1].isWord4("below", "above", "under", "beyond") && it.pause == none {
			return // "below ten degrees they cluster" is a bound, not a reading
		}
		if r.below(c, i) {
			value = "-" + value
		}
	}
	no := i - 1
	if no > 0 && c.items[no].isWord2("more", "longer") && c.items[no].pause == none {
		no-- // "there were no more drones"
	}
	if no >= 0 && c.items[no].is(kNo) && !c.items[no].used && (value == "yes" || value == "no") {
		value = map[string]string{"yes": "no", "no": "yes"}[value]
		c.items[no].used = true
	}
	if next := i + 1; value == "yes" && next < len(c.items) && c.items[next].is(kPron) && r.lookedInVain(c.items, next) {
		value = "no" // "drones I did not see"
		c.items[next+1].used = true
	}
	if path == "stores.word" && c.undone || i > 0 && path == "stores.word" && c.items[i-1].is(kUndone) {
		it.used = true // "they will not go hungry" tells how much there is not
		return
	}
	if path == "temper.runny" && i > 0 && c.items[i-1].any(kSign, kQueen) && it.pause == none {
		return // "a few beetles running about"
	}
	if path == "drones" && r.dronesAreBrood(c, i) {
		return
	}
	if path == "temper.stings" && r.stingsBefore(value) {
		it.used = true
		return
	}
	r.leaf(path, value, rule.ID, "", c.doubt, it)
	if it.n.hi > it.n.lo {
		r.cur.flag(path, "a range was said", formatNumber(it.n.hi))
	} else if it.n.approx {
		r.cur.flag(path, "an estimate", "")
	}
}

func (r *reader) dronesAreBrood(c *clause, i int) bool {
	return i+1 < len(c.items) && c.items[i+1].pause == none && c.items[i+1].any(kContent, kCell)
}

// stingsBefore keeps the larger of two counts: stings are counted as they
// come.
func (r *reader) stingsBefore(value string) bool {
	old, ok := r.cur.get("temper.stings")
	if !ok {
		return false
	}
	if old == value {
		return true
	}
	if len(old) > len(value) || len(old) == len(value) && old > value {
		return true
	}
	r.cur.drop("temper.stings")
	return false
}

// strength reads the size of the colony in a word.
func (r *reader) strength(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kStrength) || it.used {
			continue
		}
		text := it.text
		rule := r.rule(it, kStrength)
		if r.inList(ambiguousStrengths, text) && !r.ofColony(c, i) {
			continue
		}
		if strings.HasSuffix(text, "bees") && rule.Value == "weak" && r.onlySome(c, i) {
			continue
		}
		if strings.Contains(text, "numbers") && hasKind(c.items[:i], kSign) {
			continue // "wasps in great numbers"
		}
		behind := i > 0 && (c.items[i-1].is(kName) || r.barsOfBees(&c.items[i-1])) || i+1 < len(c.items) && r.barsOfBees(&c.items[i+1])
		behind = behind || r.judgedBy(c, i) || r.judgesBars(c, i)
		behind = behind || r.calledSo(c, i) && !c.has(kStores) && (r.subject == kBees && r.spokeOf.bees+1 >= r.sentenceNo || it.isWord3("moderate", "middling", "medium") && r.coloniesCalled(c, i))
		if rule.Value == "moderate" && !behind && it.any3(kTemper, kStored, kFull) && (it.is(kTemper) || c.has(kStores) || !c.has(kBees)) {
			continue
		}
		if i > 0 && c.items[i-1].is(kNo) || r.denierOf(c, i) != nil || hasKind(c.items[:i], kUndone) && !(c.items[i-1].text == "too" && c.items[i-1].pause > none) || r.wordIn(c.items[:i], "never") {
			continue
		}
		r.leaf("strength.word", rule.Value, rule.ID, "", c.doubt, it)
	}
}

// onlySome reports whether item i, which counts bees as few, tells of some among them and not of
// how many the colony has: "a handful of bees were flying", "a few bees with deformed wings",
// "a few bees ran up my sleeve".
func (r *reader) onlySome(c *clause, i int) bool {
	if r.wordIn(c.items[i+1:min(len(c.items), i+3)], "flying", "fanning", "out", "foraging", "about", "dead") {
		return true
	}
	next := c.next(i)
	if next.pause > none {
		return false
	}
	if next.is(kSign) || next.isWord3("with", "showing", "that") && hasKind(c.items[i+1:min(len(c.items), i+4)], kSign) {
		return true
	}
	few := strings.Contains(c.items[i].text, "few bees") || strings.HasSuffix(c.items[i].text, " of bees")
	return few && next.any(kWord, kTemper) && !r.isWord(next, r.wordsOf[stayingBehind]...)
}

// denierOf is the denial before a word of degree right before item i: "it isn't so strong", "they
// aren't particularly calm"; nil for none.
func (r *reader) denierOf(c *clause, i int) *item {
	if i < 2 || c.items[i].pause > none || c.items[i-1].pause > none || !r.isWord(&c.items[i-1], r.wordsOf[degreesDenied]...) || !c.items[i-2].is(kNo) {
		return nil
	}
	return &c.items[i-2]
}

// judgedBy: "medium I think, bees on seven bars" gives the bars that the word at item i
// is judged by.
func (r *reader) judgedBy(c *clause, i int) bool {
	hedged := false
	for k := range r.told {
		it := &r.told[k]
		if it.start <= c.items[i].start {
			continue
		}
		if r.barsOfBees(it) {
			return hedged
		}
		if !it.any(kMaybe, kAdv) || it.pause > comma {
			return false
		}
		hedged = hedged || it.is(kMaybe)
	}
	return false
}

// judgesBars: "five seams of bees, which is middling", "eight seams so middling", "three bars of bees and no more,
// weak I suppose" judge the bars that the sentence told before the word at item i.
func (r *reader) judgesBars(c *clause, i int) bool {
	if k := i; c.items[i].pause == none {
		for ; k > 0 && c.items[k-1].any3(kBe, kAdv, kMaybe) && c.items[k].pause == none; k-- {
		}
		if k > 0 && (c.items[k].pause > none || !c.items[k-1].is(kThen) || c.items[k-1].pause != comma && c.items[k-1].text != "so") {
			return false
		}
	}
	if next := c.next(i); next.pause == none && (next.anyOf(describable) && next.text != "for" || next.is(kTemper) || next.isWord2("temper", "tempered")) {
		return false
	}
	judged := false
	for k := range r.told {
		switch it := &r.told[k]; {
		case it.start >= c.items[i].start:
			return judged
		case r.barsOfBees(it):
			judged = true
		case it.anyOf(notOfBars):
			judged = false
		}
	}
	return judged
}

// notOfBars are the kinds of words behind which what is judged is no longer the bees.
var notOfBars = setOf(kContent, kStores, kTemper, kSign, kQueen, kShe, kComb, kCell, kDo, kFixture)

// ofColony reports whether a word that is said of other things as well is said of
// the colony's size here.
func (r *reader) ofColony(c *clause, i int) bool {
	if i > 0 && c.items[i-1].text == "too" {
		return c.tooWeak(i)
	}
	if i > 0 && c.items[i-1].is(kArt) && i+1 < len(c.items) && c.items[i+1].is(kHive) && c.items[i+1].pause == none {
		return false // "the big hive by the gate"
	}
	if i+1 < len(c.items) && r.isWord(&c.items[i], r.wordsOf[sizes]...) && c.items[i+1].isWord2("one", "ones") && c.items[i+1].pause == none {
		return false // "this was the big one", of a job or a comb
	}
	if r.plainlyColony(c, i) {
		return true
	}
	if rule := r.rule(&c.items[max(0, i-1)], kLeaf); i > 0 && rule != nil && rule.ID == "bars-of-bees" {
		return true // "fifteen seams strong"
	}
	if next := i + 1; next < len(c.items) && c.items[next].pause == none && c.items[next].anyOf(describable) && !c.items[next].isWord4("still", "yet", "though", "enough") &&
		!r.lightWord(&c.items[next]) && !c.items[next].any(kBees, kHive) {
		return false
	}
	sized := r.isWord(&c.items[i], r.wordsOf[sizes]...)
	for k := range c.items {
		if c.items[k].any3(kBees, kName, kHive) && k != i && !(sized && c.items[k].isWord2("they", "them")) {
			return true
		}
		if c.items[k].is(kShe) && k < i {
			return !sized || hasKind(r.told, kStores) && !hasKind(r.told, kQueen) // "she is huge" is the queen
		}
	}
	for k := range c.items {
		it := &c.items[k]
		if k != i && it.any(kWord, kContent, kComb, kQueen, kFixture, kCell, kMite, kDo, kBars, kBar) && !r.lightWord(it) {
			return false
		}
	}
	return !r.isWord(&c.items[i], "small", "thin", "poor", "big", "wee", "average", "fair", "medium", "decent", "so so")
}

// tooWeak reports whether "weak" or "strong" at item i is said of the colony with "too": "they
// are too weak to split", "not opened, too weak".
func (c *clause) tooWeak(i int) bool {
	if !c.items[i].isWord2("weak", "strong") {
		return false
	}
	if next := c.next(i); next.pause == none && next.anyOf(describable) {
		return false
	}
	if too := &c.items[i-1]; i == 1 || too.pause > none {
		return !c.hasAny(kSubstance, kFixture, kQueen, kContent, kSky, kWind)
	}
	k := i - 2
	for k > 0 && c.items[k].any(kBe, kAdv) && c.items[k].pause == none {
		k--
	}
	return c.items[k].any4(kName, kHive, kBees, kHives)
}

// describable are the kinds of words that a size or strength before them describes.
var describable = setOf(kWord, kContent, kComb, kBar, kQueen, kCell, kPattern, kSign, kFixture, kSky, kWind, kSubstance, kStores, kDot, kDo)

// plainlyColony: "Weak, with patchy brood on bars 3 and 4", "they're weak" whatever
// runs on, "strong bees on twelve bars", "hive three moderate stores light".
func (r *reader) plainlyColony(c *clause, i int) bool {
	it, next := &c.items[i], i+1
	if i == 0 && it.pause >= stop && next < len(c.items) && c.items[next].pause >= comma && it.isWord4("weak", "strong", "booming", "small") {
		return true
	}
	if i > 1 && c.items[i-1].is(kBe) && c.items[i-2].is(kBees) && it.pause == none && !r.isWord(it, r.wordsOf[sizes]...) {
		return true
	}
	if r.calledSo(c, i) || r.judgedBy(c, i) || r.judgesBars(c, i) || r.measuredBehind(c, i) {
		return true
	}
	if next == len(c.items) || c.items[next].pause > none {
		return false
	}
	if r.barsOfBees(&c.items[next]) {
		return true
	}
	return i > 0 && c.items[i-1].is(kName) && (c.items[next].is(kStores) || r.toldDoneBy(&c.items[next]))
}

// calledSo reports whether the word at item i is what the speaker calls the bees: "I'd call
// them strong", "six seams, so medium I'd call them".
func (r *reader) calledSo(c *clause, i int) bool {
	called := func(it *item) bool { return it.is(kMaybe) && strings.Contains(it.text, " call") }
	if i > 1 && c.items[i-1].isWord4("that", "it", "this", "them") && c.items[i-2].isWord5("call", "calls", "called", "rates", "rate") {
		return true
	}
	next := c.next(i)
	return i > 0 && called(&c.items[i-1]) || called(next) && next.pause == none && (i == 0 || c.items[i-1].is(kThen))
}

// coloniesCalled reports whether the bees are what somebody calls what stands at item i, and
// no temper or stores were spoken of before: "I'd call her moderate".
func (r *reader) coloniesCalled(c *clause, i int) bool {
	if r.spokeOf.temper > 0 && r.spokeOf.temper+1 >= r.sentenceNo || hasKind(r.told, kStores) || hasKind(r.told, kTemper) && !hasKind(c.items, kTemper) {
		return false
	}
	return i > 0 && c.items[i-1].isWord6("i'd call her", "i'd call it", "i'd call them", "i would call her", "i would call it", "i would call them")
}

// barsOfBees reports whether an item counts the bars that the bees cover.
func (r *reader) barsOfBees(it *item) bool {
	leaf := r.rule(it, kLeaf)
	return leaf != nil && leaf.ID == "bars-of-bees"
}

// stores reads "stores heavy", "they are light on stores".
func (r *reader) stores(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kStores) || it.used || r.barHere(c, i) {
			continue
		}
		for _, k := range []int{i + 1, i + 2, i + 3, i + 4, i - 1, i - 2} {
			if k < 0 || k >= len(c.items) || !c.items[k].is(kStored) || c.items[k].used {
				continue
			}
			if !r.linked(c, i, k) {
				continue
			}
			word := &c.items[k]
			value := r.rule(word, kStored).Value
			r.leaf("stores.word", value, r.rule(word, kStored).ID, "", c.doubt, it, word)
			break
		}
	}
}

// linked reports whether only verbs, adverbs and articles join stores to the
// word that weighs them.
func (r *reader) linked(c *clause, i, k int) bool {
	lo, hi := min(i, k), max(i, k)
	for j := lo + 1; j <= hi; j++ {
		it := &c.items[j]
		if j < hi && !it.any(kBe, kAdv, kArt, kHave, kOf, kNo, kNow, kAmount, kFull, kOn, kMaybe, kBut, kThere) {
			return false
		}
	}
	return k > i || c.items[i].pause == none
}

// barHere: stores "on bar nine" are that bar's honey.
func (r *reader) barHere(c *clause, i int) bool {
	k := i - 1
	for k >= 0 && c.items[k].any(kHave, kAdv, kBe, kAmount, kStored, kPattern, kFull, kStage) && c.items[k+1].pause == none {
		k--
	}
	return k >= 0 && c.items[k].is(kBars) && c.items[k+1].pause <= comma
}
