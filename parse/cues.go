package parse

import (
	"math/bits"
	"strings"
)

// cuesBy are the rules by which a word is a cue of its clause: of the rules for its
// kinds, in this order, the first that knows the word settles what it cues, if anything.
var cuesBy = [...]struct {
	of    kinds
	knows func(*reader, *clause, int) bool
}{
	{setOf(kDate), (*reader).cueDay},
	{setOf(kSay, kTheirs), (*reader).cueOthers},
	{setOf(kUnsure), (*reader).cueUnsure},
	{setOf(kIf), (*reader).cueCondition},
	{setOf(kAsk), (*reader).cueQuestion},
	{setOf(kUndone), (*reader).cueUndone},
	{setOf(kMaybe), (*reader).cueMust},
	{setOf(kWill), (*reader).cueMight},
	{setOf(kTo), (*reader).cueTo},
	{setOf(kPlan), (*reader).cuePlan},
	{setOf(kPast), (*reader).cuePast},
}

// cueRules tells which rules of cuesBy are for a word, and cueing for which words there
// are any.
var (
	cueRules = byKindOf(len(cuesBy), func(row int) kinds { return cuesBy[row].of })
	cueing   = cueRules.all()
)

// cues reads the clause's own cues.
func (r *reader) cues(c *clause) {
	for k := range c.items {
		it := &c.items[k]
		if !it.anyOf(cueing) {
			continue
		}
		for due := cueRules.due(it.kinds); due != 0; due &= due - 1 {
			if cuesBy[bits.TrailingZeros64(due)].knows(r, c, k) {
				break
			}
		}
		if it.is(kMaybe) && c.doubt == "" && !r.mustBe(c, k) {
			c.doubt = r.quote(it)
		}
	}
}

// quote is the text of an item as it stands in the note.
func (r *reader) quote(it *item) string { return r.text[it.start:it.end] }

// cueDay: the day that a clause tells of; "back in six days" is a plan.
func (r *reader) cueDay(c *clause, k int) bool {
	it := &c.items[k]
	switch {
	case c.when != nil:
		return false
	case it.day.ago && (r.placedBefore(c, k) || stemsFrom(c, k)), c.next(k).text == "'s":
		return true
	}
	c.when = &it.day
	switch {
	case c.mood != asserted:
	case it.day.ahead && (c.items[0].text == "back" || r.foodFor(c, k) || r.barsToGoIn(c)), it.day.weekday && it.day.future != r.today && k == len(c.items)-1 && r.barsToGoIn(c):
		c.mood, c.cue = planned, r.quote(it) // "Back in six days to check that cell"
	case it.day.ahead && !it.day.ago && (r.twofoldBefore(c, k) || r.twofold(c.next(k)) && c.next(k).pause == none):
		c.mood, c.cue = planned, r.quote(it) // "split it tomorrow", "tomorrow split it"
	case it.day.weekday && k == len(c.items)-1 && it.day.future != r.today && !hasKind(c.items[:k], kBees) && r.foodFor(c, k):
		c.mood, c.cue, c.doubt = planned, r.quote(it), r.quote(it) // "OA Fri"
	case it.day.weekday && it.day.future != r.today && c.items[0].text == "back" && k <= 2 && r.toLook(c, k+1):
		c.mood, c.cue = planned, r.quote(it) // "Back on Thursday to check"
	}
	return true
}

// stemsFrom reports whether the day at item k tells how old a thing is that is there today: "white dot from
// last year", "bar two has honey from last autumn".
func stemsFrom(c *clause, k int) bool {
	return k > 1 && c.items[k-1].is(kFrom) && c.items[k-1].pause == none && c.items[k-2].any4(kDot, kColour, kContent, kComb)
}

// twofoldBefore reports whether the deed before the day at item k may be one to come: "put two
// bars in tomorrow", but "added two bars".
func (r *reader) twofoldBefore(c *clause, k int) bool {
	for i := k - 1; i >= 0 && c.items[i+1].pause == none; i-- {
		if c.items[i].is(kDo) {
			return r.twofold(&c.items[i])
		}
	}
	return false
}

// toLook reports whether the words from item k on are what somebody comes back for: "to check",
// "for another look".
func (r *reader) toLook(c *clause, k int) bool {
	if k < len(c.items) && c.items[k].is(kTo) {
		k++
	}
	if k >= len(c.items) || !c.items[k].is(kDo) {
		return false
	}
	return r.rule(&c.items[k], kDo).Form == "todo" && (c.items[k-1].is(kTo) || strings.HasPrefix(c.items[k].text, "for "))
}

// foodFor reports whether all that stands before the day at item k is food or medicine, how
// much, and that it goes on: "1.5 l syrup tomorrow", "thymol goes on tomorrow".
func (r *reader) foodFor(c *clause, k int) bool {
	food := false
	for i := range c.items[:k] {
		it := &c.items[i]
		food = food || it.is(kSubstance)
		if it.is(kDo) || !it.any6(kSubstance, kMeasure, kOf, kArt, kNum, kBees) && !r.isWord(it, r.wordsOf[goingOn]...) {
			return false
		}
	}
	return food
}

// cueOthers: what is said of hives at large, and of somebody else's.
func (r *reader) cueOthers(c *clause, k int) bool {
	it := &c.items[k]
	switch {
	case it.is(kSay) && k > 0 && c.items[k-1].is(kBe) && it.pause == none && strings.HasPrefix(it.text, "a "):
		return true // "it is a strong colony with plenty of brood" speaks of this one
	case it.is(kSay) && it.is(kStrength) && it.pause >= stop && r.onlyHas(it):
		return true // "A weak colony with chalkbrood."
	case it.is(kSay) && it.pause < stop && it.text == "thanks to":
		return true // "we found it open, thanks to the wind, and closed it"
	case it.is(kSay) && k == 0 && it.pause <= comma && r.before(c, k).is(kYes):
		return true // "is that pollen … yes, he says it's pollen"
	case it.is(kSay) && k == 0 && it.pause == none && r.before(c, k).text == "as":
		return true // "two degrees, as my mother says"
	case it.isWord4("i heard", "we heard", "i hear", "we hear") && c.next(k).is(kSign) && c.next(k).pause == none:
		return true // "I heard the queenless roar"
	case it.text == "according to" && c.next(k).isWord2("my", "our") && r.isWord(c.next(k+1), r.wordsOf[writings]...):
		return true // "according to my diary I treated them on the second"
	case it.is(kTheirs) && k > 1 && it.isWord3("mother's", "daughter's", "sister's") && c.items[k-1].text == "her" && c.items[k-2].is(kOf):
		return true // "all that remains of her mother's work"
	case it.is(kSay) && atLarge(it.text) && !bareAhead(c.items[:k]):
		return true // "two swarm cells mean that I must split"
	case it.is(kTheirs) && k > 0 && ofUs(c.items, k-1):
		return true // "I bought three hives from a farm"
	case it.is(kTheirs) && r.hersByName(it):
		return true // "Tansy is queenless. Her bees went for me"
	case it.is(kTheirs) && k > 0 && c.items[k-1].text == "than":
		return true // "less honey than next door"
	case it.is(kTheirs) && r.isWord(c.next(k), r.wordsOf[writings]...):
		return true // "Mentor's report"
	}
	c.mood, c.cue = unasked, r.quote(it)
	it.used = false
	return true
}

// atLarge reports whether a cue tells what things mean or are as a rule, where it stands behind them.
func atLarge(cue string) bool {
	return strings.Contains(cue, "mean") || strings.HasPrefix(cue, "are ")
}

// bareAhead reports whether some items are cells or a sign by name alone, with no number and no
// bar, of which what they mean is then told at large: "swarm cells mean they are going".
func bareAhead(items []item) bool {
	if n := len(items); n > 1 {
		return n == 2 && items[0].any(kCellKind, kStage) && items[1].is(kCell)
	}
	return len(items) == 1 && items[0].any(kCell, kSign)
}

// onlyHas reports whether what stands behind "a strong colony with" only names what it has, up to the
// next pause: nothing is told of such colonies at large.
func (r *reader) onlyHas(colony *item) bool {
	named := false
	for k := range r.told {
		it := &r.told[k]
		if it.start <= colony.start {
			continue
		}
		if named && it.pause > none {
			return true
		}
		if !it.anyOf(had) || it.is(kDo) && !it.any4(kContent, kCell, kStage, kQueenIs) {
			return false
		}
		named = true
	}
	return named
}

// had are the kinds of words that name what a colony has.
var had = setOf(kContent, kCell, kCellKind, kStage, kSign, kQueen, kQueenIs, kAmount, kPattern, kNum, kArt, kNo, kOf, kAnd, kOn, kBars, kBar, kLeaf, kAdv, kColour, kDot)

// hersByName reports whether "her bees" are those of a hive called by a name, with no person
// in the line whose they could be.
func (r *reader) hersByName(it *item) bool {
	if it.text != "her bees" && it.text != "her lot" || r.cur.hive == "" || r.cur.hive[0] <= '9' {
		return false
	}
	for k := range r.mended[:it.from] {
		initial := k+1 < int(it.from) && r.mended[k].has(capital) && r.mended[k].end-r.mended[k].start == 1 && r.mended[k+1].pause == stop
		if t := &r.mended[k]; initial || t.lists.has(kin) || t.lists&anyTitle != 0 || t.lists.has(speaking) {
			return false // "M. rang. Her bees have swarmed"
		}
	}
	return true
}

// cueUnsure: "could not tell", of the queen or of all.
func (r *reader) cueUnsure(c *clause, k int) bool {
	it := &c.items[k]
	if r.value(it, kUnsure) == "queen" && !r.unseenOther(c, k) {
		c.queenUnsure = true
	} else {
		c.mood, c.cue, c.alone = unasked, r.quote(it), true
	}
	return true
}

func (r *reader) cueCondition(c *clause, k int) bool {
	if c.mood == unasked {
		return false
	}
	if day := r.whenThen(c, k); day != nil {
		c.when = day
		return true // "on Saturday, when I intend to requeen them"
	}
	if !r.plainWhen(c, k) && !r.granted(c, k) {
		c.mood, c.cue = unasked, r.quote(&c.items[k])
		c.alone = c.alone || r.likened(&c.items[k])
	}
	return true
}

// whenThen is the day to come that stands right before a clause that begins with "when" and
// goes on about it; nil where none does.
func (r *reader) whenThen(c *clause, k int) *day {
	if k > 0 || c.items[0].text != "when" || c.items[0].pause != comma || !c.next(0).isWord2("i", "we") || !c.has(kPlan) && !c.has(kWill) {
		return nil
	}
	for i := 1; i < len(r.told); i++ {
		if day := &r.told[i-1]; r.told[i].start == c.items[0].start && day.is(kDate) && !day.day.ago && !day.day.today {
			return &day.day
		}
	}
	return nil
}

// granted: "even if I was stung twice" owns that it was so.
func (r *reader) granted(c *clause, k int) bool {
	return c.items[k].text == "even if" && c.next(k).any4(kPron, kBees, kShe, kArt) && ownedSo(c.items[k+1:]) && !c.has(kWill) && !c.has(kPlan)
}

// ownedSo reports whether a verb that tells what was so follows the subject.
func ownedSo(items []item) bool {
	for k := range items {
		if word, _, _ := strings.Cut(items[k].text, " "); k < 4 && (word == "was" || word == "is" || word == "did" || word == "got") {
			return true
		}
	}
	return false
}

// likened reports whether "if" follows "as": "she lays as if she were paid for it" likens
// and sets no condition for what comes behind.
func (r *reader) likened(it *item) bool {
	return it.from > 0 && it.pause == none && r.words.words[r.mended[it.from-1].id] == "as"
}

// cueQuestion: "should I feed them", at the head of a clause or behind one word.
func (r *reader) cueQuestion(c *clause, k int) bool {
	it := &c.items[k]
	if it.is(kNot) || k > 1 || c.mood != asserted || k == 1 && c.items[0].any(kPron, kShe, kQueen, kContent, kStores, kBees, kCell, kSign) {
		return false
	}
	c.mood, c.cue, c.asks = unasked, r.quote(it), true
	return true
}

// cueUndone: "did not feed them".
func (r *reader) cueUndone(c *clause, k int) bool {
	if !r.doesFollow(c, k) {
		return false
	}
	c.undone, c.cue = true, r.quote(&c.items[k])
	return true
}

// cueMust: "bar nine must be removed" is a plan and no guess.
func (r *reader) cueMust(c *clause, k int) bool {
	if !r.mustBe(c, k) {
		return false
	}
	c.mood, c.cue = planned, r.quote(&c.items[k])
	return true
}

// mustBe reports whether "must" at item k tells what is to be done or given: "bar nine must be
// removed", "they must have syrup on Friday".
func (r *reader) mustBe(c *clause, k int) bool {
	return r.toBeDone(c.items, k) && c.items[k].isWord2("must be", "must") || c.items[k].text == "must have" && givesAhead(c, k)
}

// cueMight: "might split them" is a plan in doubt, "I might read up on it" none.
func (r *reader) cueMight(c *clause, k int) bool {
	it := &c.items[k]
	switch {
	case c.mood != asserted:
		return false
	case r.mightDo(c, k):
		c.mood, c.cue, c.doubt = planned, r.quote(it), r.quote(it)
		return true
	case k > 0 && c.items[k-1].isWord2("i", "we") && it.isWord2("might", "may") && c.next(k).is(kWord):
		c.mood, c.cue = unasked, r.quote(it)
		return true
	}
	return false
}

// cueTo: "To inspect again on Tuesday."
func (r *reader) cueTo(c *clause, k int) bool {
	it, next := &c.items[k], c.next(k)
	if k > 0 || it.pause < stop || c.mood != asserted || !next.is(kDo) || r.rule(next, kDo).Form != "todo" && !r.twofold(next) {
		return false
	}
	c.mood, c.cue = planned, r.quote(it)
	return true
}

func (r *reader) cuePlan(c *clause, k int) bool {
	it := &c.items[k]
	switch {
	case c.mood != asserted:
		return false
	case r.hasDeed(c) || it.colon && it.text != "better" || r.foodAhead(c, k) || foodPlanned(c, k) > 0 || foodNeeded(c, k) || r.barsToGoIn(c) && c.next(k).text != "done", (toHave(c.items, k) || c.next(k).pause == none && k+1 < len(c.items) && toHave(c.items, k+1)) && givesAhead(c, k):
		c.mood, c.cue = planned, r.quote(it)
		return true
	case r.sureFuture(it):
		c.mood, c.cue, c.alone = unasked, r.quote(it), true
		return true
	}
	return false
}

func (r *reader) cuePast(c *clause, k int) bool {
	it := &c.items[k]
	if k > 0 && c.items[k-1].any(kFrom, kOf) && it.pause == none && strings.HasPrefix(it.text, "last ") {
		return true // "honey from last August"
	}
	if it.text == "before that" && hasKind(r.told, kPlan) {
		return true // "before that, on Tuesday, I must add two bars"
	}
	if c.mood == asserted && !r.thisMonth(it) && !r.monthAhead(c, it) && !r.sinceThen(c, k) && !c.next(k).isWord2("'s", "s") {
		c.mood, c.cue = past, r.quote(it)
	}
	return true
}

// tellsOfThen: the clause goes on about the day that the one before told: "last
// visit, when there were eggs", "a week ago, when she was laying".
func (r *reader) tellsOfThen(c, before *clause) bool {
	last := &c.items[len(c.items)-1]
	when := c.items[0].text == "when"
	if when && c.items[0].pause == comma || c.has(kSeen) && last.text == "then" {
		return r.lastVisit(before) || when && daysGoneBy(before)
	}
	return false
}

// mightDo: the word at item k makes a plan of what may be done: "might split them
// next week".
func (r *reader) mightDo(c *clause, k int) bool {
	if k+1 == len(c.items) || !c.items[k+1].is(kDo) || !c.items[k].isWord2("might", "may") {
		return false
	}
	return r.rule(&c.items[k+1], kDo).Form == "todo" || r.twofold(&c.items[k+1])
}

// sinceThen: "her mark has rubbed off over the winter" tells how it is now.
func (r *reader) sinceThen(c *clause, k int) bool {
	if !strings.HasPrefix(c.items[k].text, "over ") && !strings.HasPrefix(c.items[k].text, "since ") {
		return false
	}
	for i := range k {
		if text := c.items[i].text; text == "has" || text == "have" || text == "'ve" || strings.Contains(text, " has ") {
			return true
		}
	}
	return false
}

// thisMonth: "wasps already, in June" said in June is said of now.
func (r *reader) thisMonth(it *item) bool {
	w := r.dates.of(r.mended[it.to-1].id)
	return !strings.HasPrefix(it.text, "last ") && it.to-it.from == 2 && w.kind == monthWord && w.value == int(r.today.Month)
}

// monthAhead: "treat in December" is to come; only a deed done or a sighting
// puts a bare month behind us.
func (r *reader) monthAhead(c *clause, it *item) bool {
	if r.dates.of(r.mended[it.to-1].id).kind != monthWord || strings.HasPrefix(it.text, "back in ") || strings.HasPrefix(it.text, "last ") {
		return false
	}
	for k := range c.items {
		if d := &c.items[k]; d.any(kSeen, kUndone) || d.text == "had" || d.is(kDo) && r.rule(d, kDo).Form == "done" {
			return false
		}
	}
	return true
}

// sureFuture: a clause about what is to come that names no deed of the trade
// says nothing of today.
func (r *reader) sureFuture(it *item) bool {
	return r.isWord(it, r.wordsOf[toCome]...)
}

// placedBefore: the date belongs to a bar's putting-in.
func (r *reader) placedBefore(c *clause, k int) bool {
	bars := false
	for i := 0; i < k; i++ {
		bars = bars || c.items[i].is(kBars)
		if bars && k-i <= 3 && r.placedRule(&c.items[i]) != nil {
			return true
		}
	}
	return false
}

// plainWhen: "when I arrived" tells the time and sets no condition, unless
// something is to come.
func (r *reader) plainWhen(c *clause, k int) bool {
	text := c.items[k].text
	if strings.HasSuffix(text, "long as") && !c.has(kPlan) {
		return true
	}
	if text != "when" && text != "once" && text != "as soon as" && text != "until" && text != "whenever" {
		return false
	}
	if k == 0 && r.regretted(c.items[0].start) {
		return false
	}
	for i := range c.items {
		if c.items[i].any(kPlan, kWill) && c.items[i].text != "'d" || c.items[i].is(kDate) && c.items[i].day.ahead {
			return false
		}
	}
	return true
}

// regretted reports whether what is told right before a place in the sentence should have been done, and
// so what follows with "when" was so then: "should have treated when there was no brood".
func (r *reader) regretted(at int32) bool {
	should := false
	for i := range r.told {
		it := &r.told[i]
		if it.start >= at {
			break
		}
		should = it.is(kUndone) && strings.HasSuffix(it.text, " have") || should && it.pause == none && !it.anyOf(joiners)
	}
	return should
}

// doesFollow reports whether a deed that is not done follows the cue.
func (r *reader) doesFollow(c *clause, k int) bool {
	for i := k + 1; i < len(c.items) && i <= k+4; i++ {
		if c.items[i].is(kDo) {
			return true
		}
		if c.items[i].any3(kContent, kCell, kSign) {
			return false
		}
	}
	return false
}
