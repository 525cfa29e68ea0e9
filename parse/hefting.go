package parse

// What a hive weighs in the hand, which tells its stores.

// hefted: "hive 6 is light" weighs it by its stores, as one who lifts it does (common
// practice; no source).
func (r *reader) hefted(c *clause) {
	word := &c.items[len(c.items)-1]
	if !word.used && word.isWord4("light", "heavy", "very light", "very heavy") && allOf(c.items[:len(c.items)-1], besideHefted) && r.heftedBefore(word) {
		r.leaf("stores.word", r.value(word, kStored), "hefted", "", c.doubt, word)
		return
	}
	if len(c.items) < 2 || !c.items[0].is(kName) || word.used || !word.isWord4("light", "heavy", "very light", "very heavy") {
		return
	}
	for k := 1; k < len(c.items)-1; k++ {
		if !c.items[k].any4(kBe, kAdv, kAmount, kArt) {
			return
		}
	}
	r.leaf("stores.word", r.value(word, kStored), "hefted", "", c.doubt, word)
	r.cur.flag("stores.word", "said of the hive, not of its stores", "")
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
