package parse

import "slices"

// Where a statement turns from one time to another.

// bracketOfThen reports whether brackets open at item i in which something is told to have
// been seen on a day of its own.
func (r *reader) bracketOfThen(items []item, i int) bool {
	if at := items[i].start; at == 0 || r.text[at-1] != '(' || !items[i].any3(kContent, kQueen, kShe) {
		return false
	}
	seen := false
	for k := i + 1; k < len(items) && items[k].pause == none; k++ {
		seen = seen || items[k].is(kSeen)
		if seen && items[k].is(kDate) && !items[k].day.today && !items[k].day.ahead {
			return true
		}
	}
	return false
}

// thenOtherwise: "they are nervous last time they were sweet" begins anew with how it was,
// where all before tells how it is.
func thenOtherwise(items []item, i int) bool {
	if i+3 < len(items) && items[i+1].is(kArt) && items[i+2].is(kQueen) {
		i++ // "last time the queen was on bar five"
	}
	if i+2 >= len(items) || !items[i+1].any5(kPron, kShe, kThere, kBees, kQueen) || items[i+2].text != "were" && items[i+2].text != "was" {
		return false
	}
	for k := i - 1; k >= 0 && (k+1 == i || items[k+1].pause < comma); k-- {
		if items[k].any(kUnseen, kBars) {
			return true // "I didn't see her today, last time she was on bar three"
		}
		if items[k].is(kBe) {
			return items[k].text != "were" && items[k].text != "was"
		}
	}
	return false
}

// isByNow reports whether the verb at item i tells how it is, behind how it was: "bar four was
// honey last time and is sealed brood".
func isByNow(items []item, i int) bool {
	if i+1 < len(items) && items[i].isWord4("it", "that", "they", "she") && items[i].pause == none {
		i++ // "and that's sealed brood now"
	}
	if items[i].pause > none || !slices.Contains(presentVerbs, items[i].text) {
		return false
	}
	for k := i - 1; k >= 0 && items[k+1].pause < stop; k-- {
		switch {
		case items[k].is(kPast), items[k].is(kDate) && items[k].day.ago:
			return true
		case items[k].isWord4("is", "are", "has", "have"):
			return false
		}
	}
	return false
}

// itNow hands the bar of which an earlier day was told on to a clause that goes on about it: "last
// time there were eggs on bar five and it's capped brood now".
func (r *reader) itNow(before, c *clause) {
	k := 0
	if c.items[0].any(kAnd, kNow) {
		k = 1
	}
	if before.mood != past || c.mood != asserted || c.has(kBars) || k+2 >= len(c.items) || !c.items[k].isWord2("it", "that") || !c.items[k+1].isWord2("is", "'s") {
		return
	}
	for i := range before.items {
		if it := &before.items[i]; it.is(kBars) && len(it.bars) == 1 {
			r.take(it.bars, true)
			r.inHand = awaiting
		}
	}
}

// toldBefore reports whether the statement that a word of the past ends has a verb
// before it: "it was queenless last week, bar four has eggs".
func (r *reader) toldBefore(items []item, past int) bool {
	return kindBefore(items, past, past, comma, setOf(kBe, kHave, kDo))
}

// afterAside are the kinds that the main statement can go on with behind an aside.
var afterAside = setOf(kBe, kHave, kContent, kQueen, kArt, kNo, kStage, kStrength, kStores, kComb, kFixture)

// backToNow: after something of an earlier day, a comma and "today" begin
// anew.
func (r *reader) backToNow(items []item, i int) bool {
	now := false
	for k := i; k < len(items) && k <= i+4 && items[k].text != "which"; k++ { // "a litre of syrup, which now looks hasty"
		now = now || items[k].is(kNow) || items[k].is(kDate) && items[k].day.today
	}
	for k := i - 1; now && k >= 0 && items[k+1].pause < stop; k-- {
		it := &items[k]
		if it.is(kPast) || it.is(kDate) && it.day.ago || k > 0 && it.is(kDate) && items[k-1].is(kOn) && !it.day.ahead && !it.day.today && (it.day.weekday || items[k-1].pause >= stop) {
			return true // "on 5 April I gave them fondant and today nothing was left"
		}
	}
	return false
}

// sinceDone puts "three weeks ago" for the time that has gone since something was done or seen: "three
// weeks since I treated them", "it's ten days since we saw the queen".
func (r *reader) sinceDone(items []item) {
	for i := 0; i+3 < len(items); i++ {
		it, since, who := &items[i], &items[i+1], &items[i+2]
		if !it.is(kDur) || it.dur.hours || since.text != "since" || since.pause > none || who.pause > none || !who.isWord4("i", "we", "they", "she") {
			continue
		}
		verb := i + 3
		for verb+1 < len(items) && items[verb].pause == none && (items[verb].any(kAdv, kHave) || items[verb].isWord2("last", "first")) {
			verb++
		}
		if !items[verb].any(kDo, kSeen) || items[verb].pause > none || items[verb].is(kDo) && r.rule(&items[verb], kDo).Form != "done" {
			continue
		}
		day := both(it.dur.from(r.today, -1))
		day.ago = true
		it.kinds, it.says, it.details = setOf(kDate), senseless, &details{day: day}
		since.kinds, since.says, since.text = setOf(kAdv), senseless, "ago"
	}
}
