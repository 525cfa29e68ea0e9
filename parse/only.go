package parse

// "Only" and its like, where they set no limit and begin nothing.

// notOnly: "not only eggs but larvae" is one statement.
func (r *reader) notOnly(items []item, i int) bool {
	for k := i - 1; k >= 0 && k >= i-5; k-- {
		if items[k].isWord4("not only", "not just", "not merely", "who should be") {
			return true
		}
	}
	return false
}

// ofDegree are the kinds of words that tell how much or how good something is.
var ofDegree = setOf(kStored, kNum, kMeasure, kTemper, kStrength, kAmount, kFull, kComb)

// onlySo: "stores only fair", "just four".
func (r *reader) onlySo(items []item, i int) bool {
	if items[i].pause == none && i > 0 && items[i-1].any(kCell, kAmount) && items[i].text == "only" && (i+1 == len(items) || items[i+1].pause >= comma) {
		return true // "play cups only, six", "a little bit only"
	}
	return items[i].pause == none && i+1 < len(items) && items[i+1].pause == none && items[i].text == "only" && items[i+1].anyOf(ofDegree)
}

// onlyShare: "sealed brood on bar six but only about half of it" is how much there is.
func onlyShare(items []item, i int) bool {
	for i > 1 && items[i-1].is(kBut) {
		i-- // "but just a …"
	}
	k := i + 1
	for k < len(items) && items[k].any(kBut, kAdv) {
		k++
	}
	if k+1 < len(items) && items[k].is(kAmount) && items[k+1].text == "only" && items[k+1].pause == none && items[i-1].anyOf(hangsThere) {
		return true // "capped brood but little bit only"
	}
	if k < len(items) && items[k].is(kAmount) && !items[k].is(kContent) && (items[i-1].anyOf(hangsThere) || items[i-1].is(kBars)) {
		return k+1 == len(items) || items[k+1].pause >= comma || items[k+1].any(kBars, kBar) // "capped honey, but only a little"
	}
	if k+1 >= len(items) || !items[k].is(kNum) || !items[k].n.share || items[i-1].is(kBe) {
		return false
	}
	for k++; k < len(items) && items[k].pause == none && items[k].any3(kOf, kPron, kArt); k++ {
	}
	return k == len(items) || items[k].pause >= comma || items[k].any(kBars, kBar)
}

// onlyThenOrThere makes an adverb of "only" right before a day or the bars where something
// is, which so begins nothing.
func (r *reader) onlyThenOrThere(items []item) {
	for i := 1; i+1 < len(items); i++ {
		if it := &items[i]; it.text == "only" && it.pause == none && (onlyThen(items, i) || r.onlyThere(items, i)) {
			it.kinds, it.says = setOf(kAdv), senseless
			if but := &items[i-1]; but.is(kBut) {
				but.kinds, but.says, but.pause = setOf(kAdv), senseless, none
			}
		}
	}
}

// onlyThen: "I had seen her only on Thursday".
func onlyThen(items []item, i int) bool {
	if !items[i-1].any4(kShe, kPron, kSeen, kQueen) {
		return false
	}
	return items[i+1].is(kDate) || items[i+1].is(kOn) && i+2 < len(items) && items[i+2].is(kDate)
}

// onlyThere: "eggs only on bar 3", "larvae, but only on bar 4", "brood only b2 & b3".
func (r *reader) onlyThere(items []item, i int) bool {
	if i < 1 || items[i].text != "only" || items[i].pause > none {
		return false
	}
	what, at := i-1, i+1
	if what > 0 && items[what].text == "but" && items[what].pause <= comma {
		what--
	}
	if what > 0 && items[what].is(kBe) && items[what].pause == none {
		what-- // "the brood is only on bar 5"
	}
	if at >= len(items) || !items[what].any3(kContent, kCell, kStage) {
		return false
	}
	on := items[at].is(kOn) && items[at].pause == none
	if on {
		at++
	}
	return at < len(items) && items[at].is(kBars) && items[at].pause == none && (on || r.closed(items, at) && !r.barBefore(items, at))
}
