package parse

import "strings"

// What tells the stores without naming them: what a hive weighs in the hand, or that it needs no feed.

// hefted: "hive 6 is light" weighs it by its stores, as one who lifts it does (common
// practice; no source), and so does "hefted it and it's light", which leaves no doubt of it.
func (r *reader) hefted(c *clause) {
	last := len(c.items) - 1
	word := &c.items[last]
	if word.used || !word.isWord4("light", "heavy", "very light", "very heavy") {
		return
	}
	lifted := allOf(c.items[:last], besideHefted) && r.heftedBefore(word)
	if !lifted && (last == 0 || !c.items[0].is(kName) || !allOf(c.items[1:last], ofHowHeavy)) {
		return
	}
	r.leaf("stores.word", r.value(word, kStored), "hefted", "", c.doubt, word)
	if !lifted {
		r.cur.flag("stores.word", "said of the hive, not of its stores", "")
	}
}

// ofHowHeavy are the kinds of words between a hive's name and how heavy it is.
var ofHowHeavy = setOf(kBe, kAdv, kAmount, kArt)

// provided: "did not feed, they have enough" tells the stores where it is told before it of feeding.
func (r *reader) provided(c *clause) {
	last := len(c.items) - 1
	word := &c.items[last]
	if word.used || last < 1 || !word.isWord3("enough", "plenty", "loads") || !c.items[last-1].is(kHave) || word.pause > none || last > 1 && !c.items[last-2].any4(kBees, kAdv, kPron, kName) {
		return
	}
	value := "heavy"
	if word.text == "enough" {
		value = "fair"
	}
	if r.spokeOf.deed == r.sentenceNo && strings.HasPrefix(r.lastDeed, "actions.feed") {
		return // "fed them a litre so they have enough"
	}
	for k := range r.told {
		it := &r.told[k]
		if it.start >= word.start {
			return
		}
		if it.is(kDo) && r.rule(it, kDo).Value == "feed" {
			r.leaf("stores.word", value, "provided", "", c.doubt, word)
			return
		}
	}
}

// besideHefted are the kinds of words in which it is told how heavy a hive is that was hefted.
var besideHefted = setOf(kName, kAnd, kPron, kBe, kAdv, kAmount, kThen, kBut, kWord, kBees, kStored)

// heftedBefore reports whether it is told before a word of the sentence that the hive was lifted at
// its back: "hefted it and it's light".
func (r *reader) heftedBefore(word *item) bool {
	for k := range r.told {
		if r.told[k].start >= word.start {
			return false
		}
		if r.isWord(&r.told[k], r.wordsOf[hefting]...) {
			return true
		}
	}
	return false
}
