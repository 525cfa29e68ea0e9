package parse

import (
	"slices"
	"strings"
)

// What prose tells of a thing in a clause that hangs on it, "of which seven carry brood",
// "which went in after bar 7", "every bit of it sealed": it is put as notes say it.

// relatives puts such clauses so.
func (r *reader) relatives(items []item) []item {
	for i := 0; i+2 < len(items); i++ {
		it := &items[i]
		switch items[i+1].text { // most words are told off by the one behind them
		case "the":
			if it.isWord4("minute", "moment", "instant", "second") {
				firstBarUp(items, i+2)
			}
		case "used to":
			if it.isWord2("which", "that") {
				usedToBe(items, i+2)
			}
		case "it":
			if items[i+2].is(kStage) && (it.is(kOf) || strings.HasSuffix(it.text, " of")) {
				items = r.allOfItStaged(items, i)
			}
		default:
			items = r.withWhich(items, i)
		}
	}
	return items
}

// withWhich puts what a clause with "which" tells, where one stands at item i or behind it.
func (r *reader) withWhich(items []item, i int) []item {
	switch it := &items[i]; {
	case it.is(kOf) && items[i+1].text == "which" && i+4 < len(items):
		return r.ofWhichBars(items, i, i+2)
	case it.is(kNum) && items[i+1].is(kOf) && items[i+2].text == "which" && i+4 < len(items):
		return r.ofWhichBars(items, i, i)
	case it.text == "which" && it.pause == comma && i > 1:
		return r.whichWentIn(items, i)
	}
	return items
}

// usedToBe parts what is now from what was, in the clause that goes on from item i: "bar four
// which used to be honey is sealed brood".
func usedToBe(items []item, i int) {
	for k := i + 1; k < len(items) && items[k].pause == none; k++ {
		if slices.Contains(presentVerbs, items[k].text) && !items[k-1].is(kThen) {
			items[k].pause = comma
			return
		}
	}
}

// ofWhichBars: "eleven bars in use, of which seven carry brood" counts seven bars of brood. The
// clause begins at item from, and n is the number.
func (r *reader) ofWhichBars(items []item, from, n int) []item {
	verb := from + 3
	if !barNumber(&items[n]) || items[n].n.hi > 0 || !items[verb].any(kHave, kBe) && !r.isWord(&items[verb], "carry", "contain", "carried", "contained", "store") || !countsBarsBehind(items[:from]) {
		return items
	}
	what := verb + 1
	for what < len(items) && items[what].any4(kAdv, kStage, kPattern, kAmount) && items[what].pause == none {
		what++
	}
	if what == len(items) || !items[what].is(kContent) || items[what].pause > none {
		return items
	}
	count, bars, of := items[n], items[n], items[verb]
	bars.kinds, bars.says, bars.text, bars.plural = setOf(kBar), senseless, "bars", true
	of.kinds, of.says, of.text = setOf(kOf), senseless, "of"
	count.pause, bars.pause, of.pause = max(items[from].pause, comma), none, none
	items[verb] = of
	items = slices.Delete(items, from, verb)
	return slices.Insert(items, from, count, bars)
}

// countsBarsBehind reports whether bars are counted in the last words of some items.
func countsBarsBehind(items []item) bool {
	for k := len(items) - 1; k >= 0 && k >= len(items)-5; k-- {
		it := &items[k]
		if it.is(kBar) && it.plural || it.is(kLeaf) && (strings.Contains(it.text, "bars") || strings.Contains(it.text, "combs") || strings.Contains(it.text, "frames")) {
			return true
		}
		if it.pause >= stop {
			return false
		}
	}
	return false
}

// whichWentIn: "I invested in two new bars, which went in after bar 7" adds the bars.
func (r *reader) whichWentIn(items []item, i int) []item {
	verb := i + 1
	for verb < len(items) && items[verb].any3(kBe, kHave, kAdv) && items[verb].pause == none {
		verb++
	}
	if verb == len(items) || items[verb].pause > none || !r.isWord(&items[verb], r.wordsOf[gettingIn]...) {
		return items
	}
	bar := i - 1
	from := bar
	for from > 0 && items[from].pause == none && !items[from].is(kNum) {
		from--
	}
	if !items[bar].is(kBar) || !items[from].is(kNum) || bar-from > 2 || hasKind(items[sentenceStart(items, from):from], kDo) {
		return items
	}
	items[from].pause = max(items[from].pause, comma)
	items = slices.Delete(items, i, i+1)
	items[i].pause = none
	return items
}

// allOfItStaged: "brood on two bars, every bit of it sealed" is capped brood.
func (r *reader) allOfItStaged(items []item, of int) []item {
	all := of - 1
	for all > 0 && items[all].pause == none {
		all--
	}
	if all == 0 || !slices.Contains(r.wordsOf[wholeOf], strings.ToLower(r.text[items[all].start:items[of].end])) {
		return items
	}
	brood := all - 1
	for brood > 0 && items[brood].pause < stop && !items[brood].is(kContent) {
		brood--
	}
	stage := items[of+2]
	if r.value(&items[brood], kContent) != "brood" || brood > 0 && items[brood-1].is(kStage) {
		return items
	}
	stage.pause, items[brood].pause = items[brood].pause, none
	end := of + 3
	items = slices.Delete(items, all, end)
	if all < len(items) {
		items[all].pause = max(items[all].pause, comma)
	}
	return slices.Insert(items, brood, stage)
}

// firstBarUp makes no reference of the first bar where it tells when something began: "they went
// for me the minute the first bar was up".
func firstBarUp(items []item, i int) {
	if !strings.HasPrefix(items[i].text, "first") {
		return
	}
	for k := i; k < len(items) && k <= i+1 && items[k].any4(kNum, kBar, kBars, kDate); k++ {
		items[k].kinds, items[k].says = setOf(kWord), senseless
	}
}
