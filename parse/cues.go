package parse

import "strings"

// cueing are the kinds of words that can be a clause's cue.
var cueing = setOf(kDate, kTheirs, kSay, kUnsure, kIf, kAsk, kUndone, kMaybe, kPlan, kSeen, kPast, kTo, kWill)

// cues reads the clause's own cues.
func (r *reader) cues(c *clause) {
	for k := range c.items {
		it := &c.items[k]
		if !it.anyOf(cueing) {
			continue
		}
		words := r.text[it.start:it.end]
		switch {
		case it.is(kDate) && c.when == nil:
			if it.day.ago && r.placedBefore(c, k) || k+1 < len(c.items) && r.isWord(&c.items[k+1], "'s") {
				continue
			}
			c.when = &it.day
			if it.day.ahead && c.mood == asserted && r.isWord(&c.items[0], "back") {
				c.mood, c.cue = planned, words // "Back in six days to check that cell"
			}
		case it.is(kSay) && k > 0 && c.items[k-1].is(kBe) && it.pause == none && strings.HasPrefix(it.text, "a "):
			continue // "it is a strong colony with plenty of brood" speaks of this one
		case it.is(kSay) && it.pause < stop && it.text == "thanks to":
			continue // "we found it open, thanks to the wind, and closed it"
		case it.is(kTheirs) && k > 0 && r.isWord(&c.items[k-1], "than"):
			continue // "less honey than next door"
		case it.is(kTheirs) && k+1 < len(c.items) && r.isWord(&c.items[k+1], "report", "notes", "note", "log", "visit", "diary", "advice", "letter"):
			continue // "Mentor's report"
		case it.is(kTheirs), it.is(kSay):
			c.mood, c.cue = unasked, words
			it.used = false
		case it.is(kUnsure):
			if r.value(it, kUnsure) == "queen" && !r.unseenOther(c, k) {
				c.queenUnsure = true
			} else {
				c.mood, c.cue, c.alone = unasked, words, true
			}
		case it.is(kIf) && c.mood != unasked && !(it.is(kUnsure)):
			if r.plainWhen(c, k) {
				continue
			}
			c.mood, c.cue = unasked, words
		case it.is(kAsk) && !it.is(kNot) && k <= 1 && c.mood == asserted && !(k == 1 && c.items[0].any(kPron, kShe, kQueen, kContent, kStores, kBees, kCell, kSign)):
			c.mood, c.cue, c.asks = unasked, words, true
		case it.is(kUndone) && r.doesFollow(c, k):
			c.undone, c.cue = true, words
		case it.is(kMaybe) && k > 0 && c.items[k-1].is(kBars) && r.toBeDone(c.items, k) && r.isWord(it, "must be", "must"):
			c.mood, c.cue = planned, words
			continue
		case it.is(kWill) && c.mood == asserted && r.mightDo(c, k):
			c.mood, c.cue, c.doubt = planned, words, words
		case it.is(kWill) && c.mood == asserted && k > 0 && k+1 < len(c.items) && r.isWord(&c.items[k-1], "i", "we") && r.isWord(it, "might", "may") && c.items[k+1].is(kWord):
			c.mood, c.cue = unasked, words // "I might read up on the sugar roll"
		case it.is(kTo) && k == 0 && it.pause >= stop && c.mood == asserted && len(c.items) > 1 && c.items[1].is(kDo) && r.rule(&c.items[1], kDo).Form == "todo":
			c.mood, c.cue = planned, words // "To inspect again on Tuesday."
		case it.is(kPlan) && c.mood == asserted && (r.hasDeed(c) || it.colon):
			c.mood, c.cue = planned, words
		case it.is(kPlan) && c.mood == asserted && r.sureFuture(it):
			c.mood, c.cue, c.alone = unasked, words, true
		case it.is(kSeen) && k > 0 && r.isWord(&c.items[k-1], "last", "last time i"):
			c.mood, c.cue = past, words
		case it.is(kPast) && (r.thisMonth(it) || r.monthAhead(c, it) || r.sinceThen(c, k)):
		case it.is(kPast) && c.mood == asserted && !(k+1 < len(c.items) && r.isWord(&c.items[k+1], "'s", "s")):
			c.mood, c.cue = past, words
		}
		if it.is(kMaybe) && c.doubt == "" {
			c.doubt = words
		}
	}
}

// tellsOfThen: the clause goes on about the day that the one before told: "last
// visit, when there were eggs", "a week ago, when she was laying".
func (r *reader) tellsOfThen(c, before *clause) bool {
	last := &c.items[len(c.items)-1]
	when := r.isWord(&c.items[0], "when")
	if when && c.items[0].pause == comma || c.has(kSeen) && r.isWord(last, "then") {
		return r.lastVisit(before) || when && daysGoneBy(before)
	}
	return false
}

// mightDo: the word at item k makes a plan of what may be done: "might split them
// next week".
func (r *reader) mightDo(c *clause, k int) bool {
	if k+1 == len(c.items) || !c.items[k+1].is(kDo) || !r.isWord(&c.items[k], "might", "may") {
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
	return it.to-it.from == 2 && w.kind == monthWord && w.value == int(r.today.Month)
}

// monthAhead: "treat in December" is to come; only a deed done or a sighting
// puts a bare month behind us.
func (r *reader) monthAhead(c *clause, it *item) bool {
	if r.dates.of(r.mended[it.to-1].id).kind != monthWord {
		return false
	}
	for k := range c.items {
		if d := &c.items[k]; d.is(kSeen) || d.is(kDo) && r.rule(d, kDo).Form == "done" {
			return false
		}
	}
	return true
}

// sureFuture: a clause about what is to come that names no deed of the trade
// says nothing of today.
func (r *reader) sureFuture(it *item) bool {
	return r.isWord(it, "next time", "next visit", "going to", "will", "'ll", "shall", "must", "should", "need to", "needs to", "want to", "wants to", "hope to", "hoping to", "have to", "time to", "next inspection", "would like to", "i'd like to", "ought to")
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
	for i := range c.items {
		if c.items[i].any(kPlan, kWill) && c.items[i].text != "'d" || c.items[i].is(kDate) && c.items[i].day.ahead {
			return false
		}
	}
	return true
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
