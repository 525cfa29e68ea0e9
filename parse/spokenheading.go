package parse

// Words that head what is told behind them, and tell nothing themselves: "Stores: bars 1 and 2 capped honey,
// bar 3 nectar", "queen cells one capped cell on bar six".

// headings takes such words for no findings.
func headings(items []item) {
	for k := 0; k+1 < len(items); k++ {
		it := &items[k]
		heads := it.pause >= stop && it.colon && it.is(kContent) || k == 0 && it.pause >= line && it.isWord4("stores", "brood", "queen cells", "cells")
		if heads && toldBehind(items, k) {
			it.kinds, it.says, it.used = setOf(kWord), senseless, true
			items[k+1].pause = max(items[k+1].pause, colon)
		}
	}
}

// toldBehind reports whether what the word at item k heads is told in full right behind it.
func toldBehind(items []item, k int) bool {
	head, first := &items[k], &items[k+1]
	if first.is(kContent) && !head.colon {
		return head.text == "brood" && !first.is(kBrood) && first.pause == none
	}
	if !first.is(kBar) && !head.is(kCell) {
		return false
	}
	for i := k + 1; i < len(items) && (i == k+1 || items[i].pause == none); i++ {
		if items[i].is(kContent) && !head.is(kCell) || items[i].is(kCell) && head.is(kCell) {
			return i > k+1
		}
	}
	return false
}
