package parse

// What a hive weighs in the hand, which tells its stores.

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
