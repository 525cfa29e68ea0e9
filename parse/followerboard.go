package parse

// The follower board, which is the board too that mites fall on where nobody tells which.

// boardMoved takes "the board" for the follower where it is moved, or stands behind a bar: "moved
// the board back", "the board is behind bar nine".
func (r *reader) boardMoved(items []item) {
	for i := range items {
		it := &items[i]
		if !it.is(kMethod) || it.text != "board" && it.text != "the board" {
			continue
		}
		if r.isMoved(items, i) || standsBehind(items, i+1) {
			it.kinds, it.says = setOf(kFixture), r.followerBoard
		}
	}
}

// isMoved reports whether a verb of moving stands before the board at item i and tells behind it
// whereto: "slid the board forward one bar", "pushed the board out to bar fourteen".
func (r *reader) isMoved(items []item, i int) bool {
	verb := i - 1
	if verb > 0 && items[verb].is(kArt) && items[i].pause == none {
		verb--
	}
	next := at(items, i+1)
	if r.isWord(at(items, i+2), "under", "underneath", "below", "beneath", "in") {
		return false // "moved the board back under the hive"
	}
	return verb >= 0 && items[verb+1].pause == none && r.isWord(&items[verb], r.wordsOf[shifting]...) && next.pause == none &&
		(next.any3(kSide, kAfter, kTo) || r.isWord(next, "back", "forward", "forwards", "out", "up", "along", "in", "on"))
}

// standsBehind reports whether it is told from item k on behind which bar something is.
func standsBehind(items []item, k int) bool {
	for k < len(items) && items[k].any(kBe, kAdv) && items[k].pause == none {
		k++
	}
	return k+1 < len(items) && items[k].text == "behind" && items[k].pause <= comma && items[k+1].any(kBars, kBar)
}
