package parse

import "strings"

// temper reads the temper score; the last word said wins.
func (r *reader) temper(c *clause) {
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kTemper) || it.used {
			continue
		}
		text := it.text
		if r.notOfTemper(c, i) {
			continue
		}
		if r.inList(assent, text) && !r.ratherThan(c, i) && !c.has(kBees) && !(r.subject == kBees && r.sameStatement(c)) {
			continue
		}
		if r.inList(ambiguousTempers, text) && !r.ratherThan(c, i) && !r.ofBees(c, i) {
			continue
		}
		if it.is(kWind) && r.rule(it, kWind).Form != "sky" && !r.beesBefore(c, i) {
			continue // "dead calm out there", but "they're dead calm"
		}
		rule := r.rule(it, kTemper)
		score := rule.Value
		if i > 0 && c.items[i-1].is(kNo) && !c.items[i-1].used {
			c.items[i-1].used = true
			if r.spokeOf.temper == r.sentenceNo {
				it.used = true // "nervous but not evil"
				continue
			}
			if score = r.deniedTemper(score); text == "bad" {
				score = "3" // "they aren't bad"
			}
		}
		if no := r.denierOf(c, i); no != nil && !no.used {
			no.used = true
			score = r.hardlySo(score)
		}
		if text == "no problem" && i+1 < len(c.items) && c.items[i+1].pause == none && (c.items[i+1].any3(kSeen, kWord, kDo) || c.hasAny(kQueen, kContent, kCell, kComb)) {
			continue
		}
		w := r.why(rule.ID, "", it)
		if c.doubt != "" {
			w.doubts = append(w.doubts, "hedged: "+c.doubt)
		}
		if old, ok := r.cur.get("temper.score"); ok && !r.ratherThan(c, i) && r.milder(old, score) {
			it.used = true
			continue
		}
		r.cur.put("temper.score", score, w)
		r.spokeOf.temper = r.sentenceNo
	}
}

// notOfTemper reports whether a word of temper is no more than that here: it is said
// of the day or of people, or belongs to another phrase.
func (r *reader) notOfTemper(c *clause, i int) bool {
	it, next := &c.items[i], c.next(i)
	if it.is(kStrength) && r.barsCounted && r.spokeOf.bees == r.sentenceNo && (r.calledSo(c, i) || r.judgesBars(c, i)) {
		return true // "six seams of bees, and I'd call that average"
	}
	if i > 0 && r.temperOfBefore(c, i, c.before(i), next) || next.pause == none && r.temperOfNext(c, i, next) {
		return true
	}
	return r.ofPeople(c, i) || r.otherSense(c, i, next) // "I was cross"
}

// temperOfBefore reports whether what stands before a word of temper makes another phrase of it.
func (r *reader) temperOfBefore(c *clause, i int, before, next *item) bool {
	it := &c.items[i]
	close := it.pause == none
	switch {
	case before.text == "to", before.is(kPlan) && strings.HasSuffix(before.text, " to"):
		return true // "not to chill them"
	case strings.Contains(it.text, "bother") && r.heldBack(c, i):
		return true // "was going to feed them but didn't bother"
	case before.text == "something":
		return true // "bearding something awful"
	case close && before.is(kQueen) && (strings.HasPrefix(it.text, "s") && strings.Contains(it.text, " ")):
		return true // "the queen sat quiet on bar four"
	case close && it.is(kTemper) && r.isWord(before, r.wordsOf[comingThrough]...) && r.rule(it, kTemper).Value == "3":
		return true // "they've come through all right", "they wintered fine"
	case it.text == "a handful" && before.any3(kContent, kCell, kBars):
		return true // "there is capped brood, a handful, on bar two"
	case close && before.isWord3("nothing", "anything", "everything"):
		return true // "nothing nasty in there"
	case before.is(kArt) && next.any(kDur, kDate):
		return true // "a bad half hour"
	}
	return close && before.is(kArt) && !it.is(kWind) && r.ofTheAir(it) // "a gentle shower came over"
}

// ratherThan reports whether the word of temper at item i tells what the bees were in place of what
// was denied of them right before: "not nasty though just fine", "not cross, just a bit busy".
func (r *reader) ratherThan(c *clause, i int) bool {
	k := i - 1
	for k > 0 && (c.items[k].any3(kAdv, kAmount, kArt) || c.items[k].isWord4("bit", "wee", "little", "tad")) && c.items[k].text != "just" {
		k--
	}
	if k < 0 || c.items[k].text != "just" || r.spokeOf.temper != r.sentenceNo {
		return false
	}
	for k := range r.told {
		if it := &r.told[k]; it.start < c.items[i].start && it.is(kTemper) && (strings.HasPrefix(it.text, "not ") || k > 0 && r.told[k-1].any3(kNo, kNot, kUndone)) {
			return true
		}
	}
	return false
}

// heldBack reports whether it is told at item i, behind "but", of something that was meant to be done
// that nobody troubled to: of bees as what does so nothing is said before.
func (r *reader) heldBack(c *clause, i int) bool {
	meant := false
	for k := range r.told {
		it := &r.told[k]
		if it.start >= c.items[i].start {
			break
		}
		if it.is(kBees) && it.text != "them" && it.text != "em" {
			return false
		}
		meant = meant || it.any3(kPlan, kWill, kDo)
	}
	return meant && (c.before(i).is(kBut) || c.items[0].is(kBut) && i <= 3)
}

// temperOfNext reports whether the word close behind a word of temper makes another phrase of
// it.
func (r *reader) temperOfNext(c *clause, i int, next *item) bool {
	it, behind := &c.items[i], c.next(i+1)
	switch {
	case next.text == "for":
		return behind.any4(kDur, kNow, kDate, kStores) || r.isWord(behind, "room", "space", "food", "bars") // "they're fine for a week", "all right for room"
	case strings.HasSuffix(it.text, "bother"):
		return next.any3(kTo, kDo, kUnsure) || strings.HasSuffix(next.text, "ing") // "didn't bother hunting for her"
	case next.is(kTemper):
		return r.isWord(it, r.wordsOf[degreesOfTemper]...) // "awful grumpy" are grumpy
	}
	return r.isWord(next, r.wordsOf[weatherTimes]...) && !(i > 0 && c.items[i-1].any(kBees, kBe)) // "the first decent day"
}

// otherSense reports whether a word of temper that has another sense has that here.
func (r *reader) otherSense(c *clause, i int, next *item) bool {
	before, close := c.before(i), c.items[i].pause == none
	switch c.items[i].text {
	case "not happy":
		return next.isWord2("about", "with")
	case "on edge":
		return before.is(kContent) && close // "drone brood on edge"
	case "undisturbed":
		return before.is(kDo) // "the nest I left undisturbed"
	case "got up": // "it got up to 30 degrees", "a breeze got up"
		return i > 0 && (next.is(kTo) && next.pause == none || !before.any4(kBees, kAdv, kAnd, kPron))
	case "never mind":
		return !c.has(kBees)
	case "busy":
		if before.text == "been" && close && i > 1 && c.items[i-2].any(kHave, kBees) && !c.next(i).is(kDate) {
			return true // "they have been busy, bars eight and nine are capped"
		}
		return i > 1 && before.any(kBees, kPron) && strings.HasPrefix(c.items[i-2].text, "keep") // "gave them syrup to keep them busy"
	case "hot":
		return r.hotBecause(c, i) || r.dayBefore(c, i) || r.hotForUs(c, i)
	case "fair":
		return before.is(kArt) && next.pause == none // "you'd think there was a fair on"
	case "mean":
		return before.any4(kNo, kPron, kUndone, kWill) // "I don't mean the weather"
	}
	return false
}

// hotBecause: "nervous, because is hot".
func (r *reader) hotBecause(c *clause, i int) bool {
	return i > 0 && c.items[i-1].is(kBe) && (i == 1 || c.items[i-2].text == "because") && c.items[0].isWord4("because", "is", "as", "since") && hasKind(r.told, kTemper)
}

// ofTheAir reports whether a word for the sky or the wind stands right behind a word of
// temper, in its clause or at the head of the next: "a gentle | shower".
func (r *reader) ofTheAir(it *item) bool {
	for k := range r.told {
		if next := &r.told[k]; next.start > it.start {
			return r.text[it.end:next.start] == " " && (next.any(kSky, kWind) || r.isWord(next, r.wordsOf[ofAir]...))
		}
	}
	return false
}

// ofPeople: "we are always twitchy", "I was cross".
func (r *reader) ofPeople(c *clause, i int) bool {
	k := i - 1
	for k >= 0 && (c.items[k].any(kAdv, kBe) || c.items[k].isWord6("always", "never", "a", "bit", "in", "such") || amNot(&c.items[k])) {
		k--
	}
	return k >= 0 && k < i-1 && c.items[k].isWord2("i", "we") && (hasKind(c.items[k:i], kBe) || amNot(&c.items[k+1]))
}

// amNot reports whether an item denies what a person is: "I'm not grumbling".
func amNot(it *item) bool {
	return it.is(kUndone) && (strings.HasSuffix(it.text, "m not") || it.text == "are not" || it.text == "was not" || it.text == "were not")
}

// dayBefore: "before the day became too hot".
func (r *reader) dayBefore(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if r.isWord(&c.items[k], "day", "weather", "afternoon", "morning", "sun", "it", "i") {
			return true
		}
	}
	return false
}

// hotForUs: "27 degrees, so hot that I sweated" is of the day.
func (r *reader) hotForUs(c *clause, i int) bool {
	next := c.next(i)
	if i > 0 && c.items[i-1].text == "so" && hasKind(r.told, kSky) && !hasKind(r.told, kBees) {
		return true
	}
	return next.pause == none && !c.has(kBees) && next.isWord5("i", "we", "that i", "my", "enough") || next.pause == none && next.text == "that" && c.next(i+1).isWord4("i", "we", "my", "the")
}

// milder: "gentle as usual" names one temper in two words; within one sentence
// the plainer one stands.
func (r *reader) milder(old, score string) bool {
	return r.spokeOf.temper == r.sentenceNo && (old == "1" && score == "2" || old == "4" && score == "3")
}

func (r *reader) deniedTemper(score string) string {
	switch score {
	case "4", "3":
		return "2"
	}
	return "4"
}

// hardlySo is the temper that is left where no more than a degree of one is denied: "they aren't too
// grumpy" are acceptable.
func (r *reader) hardlySo(score string) string {
	if score == "1" || score == "2" {
		return "3"
	}
	return r.deniedTemper(score)
}

// standsAlone reports whether nothing but pauses is beside an item.
func (r *reader) standsAlone(c *clause, i int) bool {
	return c.items[i].pause >= comma && (i+1 == len(c.items) || c.items[i+1].pause >= comma)
}

// ofBees reports whether an ambiguous word is said of the bees: they stand in
// the clause, or the clause holds nothing else.
func (r *reader) ofBees(c *clause, i int) bool {
	if r.spokeOf.temper == r.sentenceNo && i+1 < len(c.items) && (i == 0 || c.items[i-1].any4(kBut, kThen, kAdv, kAnd)) && r.isWord(&c.items[i+1], "by", "by the end", "in the end", "at the end", "once", "when", "after", "again") {
		return true // "grumpy at first, gentle by the end"
	}
	for k := max(0, i-3); k < i; k++ {
		if (c.items[k].is(kBees) || c.items[k].text == "you") && c.items[i].pause == none && r.onlyAdverbs(c, k, i, kHave) {
			return true // "bees very calm", "you've been calm", whatever runs on
		}
		if c.items[k].is(kName) && (i > k+1 && c.items[i-1].any(kBe, kAdv) || i == k+1 && r.toldDoneBy(c.next(i))) && c.items[i].pause == none && r.onlyAdverbs(c, k, i) && c.next(i).is(kDo) {
			return true // "hive one is calm gave it a litre"
		}
	}
	switch next := c.next(i); {
	case next.pause == none && next.anyOf(ofTheirOwn) && c.next(i+1).text != "than" && !next.any(kBees, kHive) && !(next.is(kWord) && r.lightWord(next)):
		return false // "calm weather"
	case c.items[i].is(kWind) && r.besideSky(c, i):
		return false
	case i == 1 && c.items[0].isWord5("getting", "got", "turning", "turned", "went"):
		return true // "getting nervous now"
	case next.text == "as", i > 1 && c.items[i-1].text == "as" && c.items[i-2].isWord4("bit", "just", "quite", "still"):
		return true // "gentle as puppies", "every bit as gentle"
	case r.besideBees(c, i), r.subject == kBees && r.sameStatement(c), next.is(kLeaf) && strings.Contains(next.text, "sting") && next.pause <= comma:
		return true // "gentle, not one sting, and my wife looked on"
	}
	return r.closesOn(c, i) || r.nothingElse(c, i)
}

// toldDoneBy reports whether an item is a verb for what was done: "hive one calm gave it
// a litre", which no word of temper or strength describes.
func (r *reader) toldDoneBy(it *item) bool {
	return it.is(kDo) && it.pause == none && r.rule(it, kDo).Form == "done"
}

// ofTheirOwn are the kinds of words that a word of temper before them belongs to.
var ofTheirOwn = setOf(kWord, kContent, kComb, kBar, kQueen, kSky, kFixture, kHive, kCell, kDo)

// besideBees reports whether the bees or their hive stand where the word at item i is
// said of them.
func (r *reader) besideBees(c *clause, i int) bool {
	for k := range c.items {
		it := &c.items[k]
		switch {
		case it.is(kName) && k < i && r.onlyAdverbs(c, k, i):
			return true
		case it.is(kLeaf) && k < i && r.rule(it, kLeaf).ID == "bars-of-bees" && r.onlyAdverbs(c, k, i, kAnd, kEach):
			return true // "eight bars of bees, all quiet"
		case it.is(kBees) && (k < i || k == i+1 || k == i+2):
			return true
		case it.isWord2("everyone", "everybody") && k < i && (k == 0 || it.pause > none) && r.onlyAdverbs(c, k, i, kBe):
			return true // "everyone very calm"
		case (it.any(kName, kShe) || it.isWord2("mine", "ours") || it.text == "ones" && c.before(k).isWord3("these", "those", "the")) && k < i && k+3 >= i-3 && r.beBetween(c, k, i):
			return true
		}
	}
	return false
}

// closesOn reports whether the word at item i is the last of what a clause tells of a
// hive, or stands by itself in the list.
func (r *reader) closesOn(c *clause, i int) bool {
	it, last := &c.items[i], i == len(c.items)-1
	switch {
	case last && it.kinds == setOf(kTemper) && c.items[0].is(kName) && c.has(kCell):
		return true // "hive one no queen cells gentle"
	case r.weatherNear(c, i):
		return false
	case last && i > 1 && c.items[i-1].is(kBe) && c.items[i-2].is(kAnd) && c.items[i-2].pause <= comma:
		return true // "bar 3 has eggs and is calm"
	case last && it.pause == comma && c.items[0].is(kName):
		return true // "Hive 4: brood on five bars, calm"
	case last && i > 1 && it.pause == none && c.items[i-1].pause == comma && c.items[i-1].isWord5("all", "very", "all very", "all quite", "quite") && (c.items[0].is(kName) || c.kinds.meet(besideTemper)):
		return true // "Hive 6: queen seen, all gentle"
	case r.standsAlone(c, i) && (c.kinds.meet(besideTemper) || i == 0 && c.next(0).any(kNo, kNot)):
		return true // "BIAS, queen not seen, calm, 7 seams", "Gentle, BIAS.", "Calm, no followers."
	}
	return i > 1 && c.items[i-1].is(kAdv) && c.items[i-1].isWord5("very", "really", "quite", "lovely and", "nice and") && c.hasAny(kContent, kEnd) // "eggs on bar five very calm stores fair"
}

// besideTemper are the kinds of what else is listed of a hive beside its temper.
var besideTemper = setOf(kQueen, kUnseen, kContent, kCell, kStores, kMite, kDo)

// nothingElse reports whether the clause speaks of nothing that the word at item i could
// be said of.
func (r *reader) nothingElse(c *clause, i int) bool {
	for k := range c.items {
		it := &c.items[k]
		switch {
		case it.is(kPron) && k < i && !it.isWord4("they", "it", "all of them", "some of them"):
			return false // "somebody's been busy"
		case k == i, it.is(kDo) && k > i && c.items[k-1].is(kNo): // "calm, no smoke"
		case it.anyOf(notOfBees) && !it.is(kTemper) && !r.lightWord(it):
			return false
		case it.is(kLeaf) && !strings.HasPrefix(r.rule(it, kLeaf).ID, "st") && !strings.HasPrefix(r.rule(it, kLeaf).ID, "no-") && !strings.HasPrefix(r.rule(it, kLeaf).Set[0], "temper."):
			return false
		}
	}
	return !r.weatherNear(c, i)
}

// notOfBees are the kinds of words for what may have a temper's words said of it.
var notOfBees = setOf(kWord, kContent, kComb, kQueen, kSky, kWind, kStores, kFixture, kCell, kMite, kPlan, kDo, kSeen)

// sameStatement: the clause goes on about the bees of the one before: it
// names nothing else.
func (r *reader) sameStatement(c *clause) bool {
	if !c.items[0].any3(kAnd, kThen, kBut) && r.sentenceNo != r.spokeOf.bees {
		return false
	}
	for k := range c.items {
		if c.items[k].any(kContent, kQueen, kShe, kComb, kCell, kFixture, kSky, kStores, kDo) && !c.items[k].is(kTemper) {
			return false
		}
	}
	return r.sentenceNo == r.spokeOf.bees
}

func (r *reader) onlyAdverbs(c *clause, k, i int, more ...kind) bool {
	for j := k + 1; j < i; j++ {
		if !c.items[j].any(kAdv, kBe, more...) {
			return false
		}
	}
	return true
}

func (r *reader) beBetween(c *clause, k, i int) bool {
	for j := k + 1; j < i; j++ {
		if c.items[j].is(kBe) {
			return true
		}
	}
	return false
}

// lightWord is a word that leaves "calm" about the bees: "calm today", "calm
// the whole time", "calm with me".
func (r *reader) lightWord(it *item) bool {
	return it.lists.has(lightWords)
}
