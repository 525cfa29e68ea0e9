package parse

// Bars named each with an article or a place of its own, as people do whose first
// language is another: "the bar four and the bar five".

// barWithArticle reports whether "the bar five" stands at item k, and no verb of its own
// behind it.
func (r *reader) barWithArticle(items []item, k int) bool {
	return k+2 < len(items) && items[k].text == "the" && items[k+1].is(kBar) && items[k+1].pause == none &&
		!(k+3 < len(items) && r.isWord(&items[k+3], singularVerbs...))
}

// onBoth is where the second of two bars is named that what follows is on, 0 where it
// is not: "On bar three and on the bar four are eggs".
func (r *reader) onBoth(items []item, and int) int {
	first, k := and-2, and+2
	if first > 0 && items[first-1].is(kArt) {
		first--
	}
	if k < len(items) && items[k].is(kArt) {
		k++
	}
	if first < 1 || k+2 >= len(items) || !items[and].is(kAnd) || !items[first-1].is(kOn) || !items[and+1].is(kOn) || !items[k].is(kBar) {
		return 0
	}
	opens := first == 1 || items[first-1].pause >= comma
	if !opens || !barNumber(&items[k+1]) {
		return 0
	}
	found := items[k+2].isWord2("are", "were")
	if first == 1 || items[first-1].pause >= colon {
		found = found || items[k+2].pause == none && items[k+2].anyOf(foundThere)
	}
	if !found {
		return 0
	}
	return k + 1
}

// foundThere are the kinds of words that begin what is found in a place told before: "it has
// eggs", "there are two cups", "larvae".
var foundThere = setOf(kPron, kThere, kContent, kCell, kAmount, kStage)
