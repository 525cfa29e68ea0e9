package parse

// The queen begins a statement, unless the words before her are about her or lead to her.

func (r *reader) opensShe(o *opener) verdict {
	return verdictOf(!o.needs && !o.prev.any6(kSeen, kBe, kHave, kQueenIs, kDot, kColour) && o.next(1).any6(kBe, kHave, kSeen, kUnseen, kQueenIs, kWill))
}

func (r *reader) opensQueen(o *opener) verdict {
	if o.pause == none && o.prev.is(kShe) && o.prev.text == "her" && o.i > 1 && o.items[o.i-2].any3(kSeen, kUnseen, kOf) {
		return doesNot // "I did not find her queen"
	}
	return verdictOf(!o.needs && !o.prev.any5(kNum, kSeen, kBe, kHave, kAdv) && !(o.pause == none && (o.prev.is(kColour) || r.looks(o.prev) || described(o.items, o.i) || givenQueen(o.items, o.i))))
}

// givenQueen reports whether an article and unknown words lead from a deed to the queen at
// item i: "requeened with a bought queen".
func givenQueen(items []item, i int) bool {
	k := i - 1
	for k > 0 && k > i-3 && items[k].is(kWord) && items[k].pause == none {
		k--
	}
	return k > 1 && items[k].is(kArt) && items[k].pause == none && items[k-1].is(kHave) && items[k-2].is(kDo)
}

// described reports whether an article leads to the queen at item i with what she is
// among the adjectives between: "a slim unmarked queen".
func described(items []item, i int) bool {
	told := false
	for k := i - 1; k > 0 && i-k <= 3 && items[k].pause == none && items[k].any4(kWord, kAdv, kQueenIs, kColour); k-- {
		told = told || items[k].is(kQueenIs)
		if items[k-1].is(kArt) {
			return told
		}
	}
	return false
}
