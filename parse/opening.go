package parse

import (
	"strings"

	"barwise/colony"
)

// onlyDate is the date of a clause that says no more: "on Saturday", before
// "I'll add two bars", is the day of that.
func (c *clause) onlyDate() (date *item) {
	if !c.has(kDate) {
		return nil
	}
	for k := range c.items {
		switch it := &c.items[k]; {
		case it.is(kDate) && date == nil:
			date = it
		case !it.any5(kOn, kArt, kBut, kAnd, kThen) && it.text != "come":
			return nil
		}
	}
	return date
}

// dayAndHow is the date at the head of a clause that only tells beside it when on that day, or in
// what case: "on Wednesday after work", "on Sunday, weather permitting", before "I'll feed them".
func (c *clause) dayAndHow() *item {
	at := 0
	if c.items[0].is(kOn) {
		at = 1
	}
	if date := &c.items[min(at, len(c.items)-1)]; date.is(kDate) && !date.day.today && !date.day.ago && len(c.items) <= at+4 && allOf(c.items[at+1:], lightBehindDay) {
		return date
	}
	return nil
}

// lightBehindDay are the kinds of words in which nothing is told of a hive.
var lightBehindDay = setOf(kWord, kAdv, kArt, kAfter, kFore, kHave, kNum)

// tellsMore are the kinds of what else a clause may tell beside who comes.
var tellsMore = setOf(kDo, kContent, kCell, kQueen, kSign, kBars, kFixture, kNo, kIf)

// visitorsDate is the date of a clause that tells of nobody but who comes on it: "on
// Saturday my son comes to help", before "and we'll add two bars".
func (r *reader) visitorsDate(c *clause) (date *item) {
	comes := false
	if c.items[0].is(kOn) && c.next(0).is(kDate) && c.next(0).day.weekday && c.next(1).pause == none && !c.hasAny(kShe, kQueen) {
		for k := 2; k < len(c.items); k++ {
			it := &c.items[k]
			if k > 2 && (it.is(kBe) || it.is(kSeen) && strings.HasPrefix(it.text, "is ")) {
				return &c.items[1] // "on Sunday my son is here and we will feed them"
			}
			if !it.any(kArt, kWord, kAdv) || it.pause > none {
				break
			}
		}
	}
	for k := range c.items {
		switch it := &c.items[k]; {
		case it.is(kDate) && it.day.weekday && date == nil:
			date = it
		case it.isWord3("comes", "arrives", "visits"):
			comes = true
		case it.anyOf(tellsMore):
			return nil
		}
	}
	if !comes {
		return nil
	}
	return date
}

// todaySpelt: "this evening, June 8" gives the day of the inspection wherever it
// stands.
func (r *reader) todaySpelt(c *clause) bool {
	for k := 1; k < len(c.items); k++ {
		if it := &c.items[k]; it.is(kDate) && c.items[k-1].is(kDate) && c.items[k-1].day.today && !it.day.today {
			return true
		}
	}
	return false
}

// visitOf makes a noun of "visit" in the opening words, where the day of the visit
// follows: "Visit of 2 May", "Walnut hive, inspection on 3 June".
func (r *reader) visitOf(items []item) {
	for k := 0; k+2 < len(items); k++ {
		it, link, date := &items[k], &items[k+1], &items[k+2]
		if it.is(kDo) && link.any(kOf, kOn) && date.is(kDate) && !date.day.ahead && link.pause == none && r.isWord(it, r.wordsOf[visitNouns]...) &&
			(k == 0 || it.pause > none || items[k-1].is(kName)) && (link.is(kOf) || r.today.Sub(date.day.past) < 30) {
			it.kinds, it.says = setOf(kWord), senseless
			return
		}
	}
}

// openingDay takes a date in the opening words as the day of the inspection:
// one that stands alone or beside the hive's name or the weather.
func (r *reader) openingDay(c *clause) {
	if !c.has(kDate) {
		return
	}
	for k := range c.items {
		it := &c.items[k]
		if !it.is(kDate) || it.used || it.day.week || it.day.ahead {
			continue
		}
		if r.hasDeed(c) && !r.onlyVisits(c) || c.hasAny(kSeen, kContent, kBars) || c.has(kPast) || c.has(kPlan) {
			return
		}
		if own := c.next(k); own.text == "'s" && it.day.ago && own.pause == none && !c.next(k+1).is(kDo) && !c.next(k+1).lists.has(visiting) && !r.isWord(c.next(k+1), r.wordsOf[visitNouns]...) {
			return // "yesterday's gale", but "yesterday's visit"
		}
		if it.day.ago && r.sentenceNo > 2 || r.verbal(c) {
			return
		}
		if it.day.past.Compare(r.today) > 0 || c.before(k).text == "since" {
			return
		}
		on := it.day.past
		if it.day.future == r.today || r.weekdayToday(it) {
			on = r.today
		}
		if it.day.today {
			it.used = true
			if r.todaySpelt(c) {
				continue
			}
			return
		}
		if it.day.past != it.day.future && r.today.Sub(on) > 180 {
			return // "7 June" said in May is to come
		}
		r.newToday(on, it.day.weekday)
		for _, b := range r.all {
			b.at = atDay(b.at, on)
			b.atFrom = "spoken day"
		}
		it.used = true
		r.opening = false
		return
	}
}

// newToday takes a day as that of the inspection, and reckons the others that the line tells from it:
// "12 May. Hive 2 calm. Feed again in a week." A bare weekday may be that of something else that
// was told, "after that talk on Thursday", and moves no other.
func (r *reader) newToday(on colony.Date, weekday bool) {
	moved := r.today != on && !weekday
	r.today = on
	if !moved {
		return
	}
	toks := r.lex.toks
	r.lex.toks = r.mended
	for k := range r.items {
		it, read := &r.items[k], figure{}
		if it.is(kDate) && it.to > it.from && r.lex.figure(int(it.from), &read) == int(it.to) && read.kind == kDate {
			it.day = read.day
		}
	}
	r.lex.toks = toks
}

// verbal reports whether the clause tells of something that happened, so that
// a day in it is the day of that.
func (r *reader) verbal(c *clause) bool {
	words := 0
	told := false // "on Friday I was pegging the washing out"
	for k := range c.items {
		it := &c.items[k]
		told = told || it.is(kPron)
		if it.is(kWord) {
			words++
			if it.lists.has(visiting) {
				return false
			}
			if strings.HasSuffix(it.text, "ed") || r.isWord(it, r.wordsOf[callers]...) {
				return true // "on Saturday my son comes"
			}
		}
		if it.any6(kTemper, kQueen, kSign, kUnseen, kWill, kIf) {
			return true
		}
	}
	return words > 8 || told && words > 0
}

// onlyVisits reports whether the deeds of the clause are inspections: the day of
// "on Saturday I went through them" is the day of that.
func (r *reader) onlyVisits(c *clause) bool {
	for k := range c.items {
		it := &c.items[k]
		if !it.is(kDo) || it.is(kState) || r.headsNote(c.items, k) || it.lists.has(visiting) && !c.has(kFixture) {
			continue
		}
		if rule := r.rule(it, kDo); rule.Value != "inspect" || rule.Form != "done" || tellsLast(it.text) {
			return false
		}
	}
	return true
}

// weekdayToday: a bare weekday in the opening words may be today.
func (r *reader) weekdayToday(it *item) bool {
	return it.day.weekday && it.day.future.AddDays(-7) == r.today
}
