package parse

import (
	"slices"
	"strings"
)

// Bars that were taken out of a hive, or came out of it, and whether they were harvested.

func (f *fitting) removeBar() bool {
	switch {
	case f.text == "came out":
		return f.barCameOut()
	case outTurned(f.text):
		return f.outItCame()
	case f.honeyTaken():
		f.d.do = "harvest"
		return true
	case f.whichBar():
		return true
	case f.cellsUndergo(), f.has(kCell), f.has(kStage) && f.cellTalk, f.itThem(f.args) && (hasKind(f.pre, kCell) || f.spokeOf.cells == f.sentenceNo):
		f.d.do = "cut_cells"
		return true
	case f.honeyBars(f.args), (f.has(kBars) || f.looseBars(f.args) || f.itBar(f.args) || len(f.bars) > 0 && strings.Contains(f.text, " it ")) && (weighs(f.args) || f.toEat()):
		f.d.do = "harvest"
		return true
	case len(f.pre) > 1 && f.pre[f.i-1].is(kPron) && f.pre[f.i-2].is(kBar) && (len(f.bars) > 0 || hasKind(f.pre, kBars)):
		return true // "that bar I took away"
	case f.c.items[f.i].text == "pulled" && !f.wordIn(f.args, "out", "away", "off"):
		return false // only to look
	case f.c.items[f.i].isWord4("took", "take", "taken", "taking") && !f.has(kBars) && !f.looseBars(f.args) && !f.wordIn(f.args, "out", "away", "off"):
		return false
	}
	if n := len(f.pre); n > 1 && len(f.args) == 0 && f.pre[n-1].is(kBar) && !f.pre[n-1].plural && f.pre[n-1].pause == comma && f.pre[0].is(kBars) && len(f.pre[0].bars) == 1 {
		return true // "b7 comb fell off, bar removed"
	}
	both := strings.Contains(f.text, " both ") && len(f.bars) == 2
	return f.has(kBars) && !f.onlyPlace(f.args) || f.looseBars(f.args) || f.itBar(f.args) || both || f.allInHand() || f.barsUndergo() || f.barsAdded(f.c, f.i)
}

// whichBar reports whether the bars named right before are those that were taken out: "wax moth in
// bar 11, which I removed". Where cells were told of them, these were.
func (f *fitting) whichBar() bool {
	bars := f.justNamed(f.c, f.i)
	if bars == nil || len(f.args) > 0 && !f.args[0].any3(kDate, kAnd, kAdv) && !f.args[0].isWord3("out", "away", "altogether") {
		return false
	}
	if f.spokeOf.cells == f.sentenceNo {
		f.d.do = "cut_cells"
		return f.lastCells != nil && f.lastCells.present
	}
	f.d.bars = bars
	return true
}

// justNamed are the bars that a verb at item i is done to, where it is told of them right behind:
// "bars 9 and 10, which I harvested"; nil for none.
func (r *reader) justNamed(c *clause, i int) []int {
	which := i - 1
	if which > 0 && c.items[which].is(kPron) {
		which--
	}
	if which < 0 || c.items[which].text != "which" {
		return nil
	}
	for k := 1; k < len(r.told); k++ {
		if r.told[k].start == c.items[which].start && r.told[k-1].is(kBars) {
			return slices.Clone(r.told[k-1].bars)
		}
	}
	return nil
}

// cameOut takes "came out" for no deed where no bar stands before it: "the bees came out".
func (r *reader) cameOut(items []item) {
	for i := range items {
		it := &items[i]
		if it.is(kDo) && it.text == "came out" && (i == 0 || it.pause > none || !items[i-1].any(kBars, kBar) && items[i-1].text != "one") {
			it.kinds, it.says = setOf(kWord), senseless
		}
	}
}

// barCameOut: "wax moth on bar 12, so that bar came out and went on the fire", of which
// nothing more is said, nor that it went back.
func (f *fitting) barCameOut() bool {
	if f.wordIn(f.args, "back") || len(f.args) > 0 && f.args[0].pause == none && !f.args[0].is(kAnd) && !f.args[0].isWord4("for good", "altogether", "today", "entirely") {
		return false
	}
	subject := &f.pre[f.i-1]
	if subject.is(kBars) && subject.pause == none {
		f.d.bars = slices.Clone(subject.bars)
		return true
	}
	that := subject.is(kBar) && f.i > 1 && f.pre[f.i-2].isWord2("that", "this") || subject.text == "one" && f.i > 1 && f.pre[f.i-2].isWord2("that", "this")
	if !that || len(f.bars) != 1 || !f.sameSentence && f.inHand != thisLine {
		return false
	}
	f.d.bars = slices.Clone(f.bars)
	return true
}

// allInHand reports whether a verb is done to all of so many bars as are in hand: "bars 12 to 14
// were bare, so I removed all three".
func (f *fitting) allInHand() bool {
	return len(f.bars) > 1 && len(f.args) > 0 && f.args[0].pause == none && int(howManyOf(f.args[0].text)) == len(f.bars)
}

// itTakenOut: "bar 12 fell when I lifted it, took it out", "bar 12 old comb, took it out for
// good", "bars 1 and 2 are bare, so I took them out".
func (f *fitting) itTakenOut() bool {
	if f.text == "took them out" {
		return f.c.items[0].text == "so" && len(f.bars) > 1 && f.sameSentence
	}
	if strings.HasPrefix(f.text, "took both") && strings.HasSuffix(f.text, " out") && len(f.bars) == 2 && !f.cellTalk && (f.sameSentence || f.inHand == thisLine) {
		f.d.bars = slices.Clone(f.bars)
		return true // "bars 10 and 11 were bare and I took both of them out"
	}
	if f.text != "took it out" || len(f.args) > 0 && !f.args[0].isWord6("for good", "for", "altogether", "too", "today", "again") {
		return false
	}
	if hasKind(f.pre, kBars) {
		return f.pre[0].is(kBars) && len(f.pre[0].bars) == 1 && !hasKind(f.pre[1:], kBars)
	}
	return len(f.bars) == 1 && (f.inHand == thisLine || f.inHand == awaiting)
}

// honeyTaken: "two more bars of honey taken".
func (f *fitting) honeyTaken() bool {
	n := verbChain(f.c.items, f.i) + 1
	if n < 3 || f.c.items[f.i].pause > none || f.has(kNum) || f.c.items[f.i].text == "took" || !f.pre[n-3].is(kBar) || !f.pre[n-2].is(kOf) {
		return false
	}
	what := f.value(&f.pre[n-1], kContent)
	taken := what == "honey" || what == "capped_honey"
	f.pre[n-1].used = f.pre[n-1].used || taken
	return taken
}

// weighs: "took bar 11 for the kitchen, 3 lb" tells of honey.
func weighs(args []item) bool {
	for k := range args {
		if _, ok := args[k].size.kg(); ok && args[k].is(kMeasure) {
			return true
		}
	}
	return false
}

// forHarvest reports whether what was taken was "for harvest", which then is no verb.
func (f *fitting) forHarvest() bool {
	end := f.i + 1 + len(f.args)
	before := end - 1
	if before > f.i && f.c.items[before].is(kArt) {
		before--
	}
	if end >= len(f.c.items) || !f.c.items[end].isWord2("harvest", "harvesting") || f.c.items[end].pause > none || f.c.items[before].text != "for" {
		return false
	}
	f.c.items[end].used = true
	return true
}

// toEat reports whether it is told behind the verb that what was taken, the bar in hand for "it",
// is for the keeper's table: "took ten and eleven for the house", "took the end bar for ourselves".
func (f *fitting) toEat() bool {
	if f.forHarvest() {
		return true
	}
	for k := 1; k < len(f.args); k++ {
		if f.args[k-1].text != "for" || f.args[k-1].pause >= stop {
			continue
		}
		what := &f.args[k]
		if what.is(kArt) && k+1 < len(f.args) {
			what = &f.args[k+1]
		}
		eaten := slices.Contains(f.wordsOf[tables], strings.TrimPrefix(what.text, "the "))
		if eaten && len(f.bars) == 1 && strings.Contains(f.text, " it") {
			f.d.bars = slices.Clone(f.bars) // "took it out for the larder"
		}
		return eaten
	}
	return false
}

// outItCame reports whether "out it came" is told of the bars in hand: "bar one is old and dark, so out
// it came".
func (f *fitting) outItCame() bool {
	if strings.HasPrefix(f.text, "out they ") != (len(f.bars) > 1) || len(f.bars) == 0 || f.inHand == noBar || f.inHand == thisText || f.cellTalk {
		return false
	}
	if (strings.HasSuffix(f.text, "came") || strings.HasSuffix(f.text, "went")) && (len(f.pre) == 0 || f.pre[len(f.pre)-1].text != "so") {
		return false // "she drew the matchstick and out it came"
	}
	f.d.bars = slices.Clone(f.bars)
	return true
}

// turnedOut puts "out it comes next time" as "need to … out it comes next time".
func (r *reader) turnedOut(items []item) []item {
	for i := 0; i < len(items); i++ {
		it := &items[i]
		if !it.is(kDo) || !outTurned(it.text) || strings.HasSuffix(it.text, "came") || strings.HasSuffix(it.text, "went") {
			continue
		}
		end := i + 1
		for end < len(items) && items[end].pause == none {
			end++
		}
		if !hasAhead(items[i+1:end]) && !at(items[:end], i+1).isWord2("next time", "next visit") {
			continue
		}
		plan := *it
		plan.kinds, plan.says, plan.text = setOf(kPlan), r.planning, "need to"
		it.pause = none
		items = slices.Insert(items, i, plan)
		i++
	}
	return items
}

// outTurned reports whether a verb is put behind what went out: "out it comes".
func outTurned(verb string) bool {
	return strings.HasPrefix(verb, "out it ") || strings.HasPrefix(verb, "out they ")
}
