package parse

import "strings"

// headings reads lines that only set what follows: "Next time:", "To do". The line has words of
// some kinds.
func (r *reader) headings(met kinds) {
	items := r.items
	if len(items) == 0 {
		return
	}
	if r.nextVisit(items) {
		return
	}
	r.dashedLabel(items)
	r.nextHeading(items)
	if met.has(kNum) && r.lineSaid&saysNext != 0 {
		r.nextSeveral(items)
	}
	if r.topicHeading(items) {
		for k := range items {
			items[k].kinds, items[k].says = setOf(kWord), senseless
		}
		return
	}
	last := &items[len(items)-1]
	if len(items) <= 3 && (last.colon || items[0].pause >= line) {
		switch {
		case items[0].is(kPlan) && r.allGrammar(items[1:]) && !hasKind(items, kDate):
			r.heading, r.headedHere = planned, false
			return
		}
	}
	if items[0].pause == blank || items[0].any(kBars, kName) && items[0].pause >= line || !items[0].has(bullet) && items[0].pause >= line && r.heading != asserted {
		r.heading = asserted
	}
	r.headedHere = false
	if first := &items[0]; first.is(kPlan) && first.colon && r.isWord(first, r.wordsOf[plannedHeads]...) && len(items) > 1 {
		r.heading, r.headedHere = planned, true // "To do: feed them. At the weekend put in two bars."
	}
	if first := &items[0]; first.is(kPlan) && r.isWord(first, r.wordsOf[plannedHeads]...) && len(items) > 3 && items[1].text == "for" && items[2].is(kName) && items[2].colon {
		r.heading, r.headedHere = planned, true // "Plan for hive 2: split on 20 May."
	}
	if name, ok := r.headingName(items); ok {
		it := &items[0]
		it.kinds = kinds{}
		it.kinds.add(kName)
		it.details = r.lex.detail(&details{name: name})
		r.headed = true
		it.end = last.end
		for k := 1; k < len(items); k++ {
			items[k].used = true
		}
		r.items = items[:1]
	}
}

// underHeading follows the heading of the section, the box or the label "Done:" that
// tells how the deeds of the line are meant.
func (r *reader) underHeading() {
	if len(r.items) == 0 {
		return
	}
	first := &r.items[0]
	if r.under == noHeading && first.colon && len(r.items) > 1 {
		if cols := r.columns.byHead[first.text]; cols != nil && underOf[cols[0].Under] == wereDone {
			first.used = true
			r.under = wereDone
		}
	}
	switch {
	case first.is(kName) && first.pause >= line: // the talk goes to another hive
		r.under = noHeading
	case r.under == areToDo:
		r.heading, r.headedHere = planned, false
	case r.under == wereDone:
		r.heading = asserted
	}
}

// dashedLabel takes a dash behind a label at the head of a line for a colon: "Brood - eggs on
// bars 4 to 7", "Done - two bars in".
func (r *reader) dashedLabel(items []item) {
	if len(items) < 2 || items[0].pause < line || items[0].colon || items[1].pause != comma {
		return
	}
	cols := r.columns.byHead[items[0].text]
	switch {
	case items[0].text == "brood" && items[1].any3(kContent, kStage, kNo):
	case items[0].isWord2("queen cells", "cells") && items[1].any4(kCell, kNum, kStage, kNo):
	case cols != nil && underOf[cols[0].Under] == wereDone:
	default:
		return
	}
	if dashed(r.text, &items[0], &items[1]) {
		items[0].colon, items[1].pause = true, colon
	}
}

// nextHeading reads "Next: same again" as the bar behind the one in hand, and
// "Next: add a bar" as what is planned.
func (r *reader) nextHeading(items []item) {
	first := &items[0]
	switch {
	case !first.colon || first.text != "next" || len(items) == 1:
	case hasKind(items, kDo):
		first.kinds, first.says = setOf(kPlan), senseless
	case r.last > 0 && (hasKind(items, kContent) || hasKind(items, kSame) || hasKind(items, kComb)):
		first.kinds, first.says = setOf(kNext), senseless
	}
}

// nextSeveral reads "next two" as the bars behind the one in hand where it is told what they
// are like: "next two the same", "next three bars bare".
func (r *reader) nextSeveral(items []item) {
	for i := 1; i+1 < len(items); i++ {
		count := &items[i]
		if !count.is(kNum) || items[i-1].text != "next" || !barNumber(count) || count.n.lo < 2 || count.n.hi > 0 || count.pause > none {
			continue
		}
		k := i + 1
		if items[k].is(kBar) && k+1 < len(items) {
			k++
		}
		if items[k].pause <= comma && items[k].any6(kSame, kContent, kComb, kState, kFull, kBe) && !items[k].any(kDo, kPlan) {
			items[i-1].kinds, items[i-1].says = setOf(kNext), senseless
		}
	}
}

// topicHeading reports whether a line of its own only says what the paragraph
// below it is about: "Queen and brood".
func (r *reader) topicHeading(items []item) bool {
	if items[0].pause < blank || !items[0].has(capital) || len(items) > 3 {
		return false
	}
	topics := 0
	for k := range items {
		it := &items[k]
		switch {
		case it.is(kAnd) || k == 0 && it.is(kQueen):
		case r.isWord(it, r.wordsOf[topicWords]...):
			topics++
		default:
			return false
		}
		if it.colon || k > 0 && it.pause > none {
			return false
		}
	}
	last := int(items[len(items)-1].end)
	return topics > 0 && strings.HasPrefix(r.text[last:], "\n") && len(strings.Fields(lineAfter(r.text, last))) > shortLine
}

// shortLine is the most words of a line that may be a value below a label of its
// own, and no paragraph.
const shortLine = 4

// nextVisit reads a line such as "Next visit: 2 June", a plan to inspect that
// names no deed.
func (r *reader) nextVisit(items []item) bool {
	date := -1
	for k := 1; k < len(items); k++ {
		switch it := &items[k]; {
		case it.is(kDate) && date < 0:
			date = k
		case !it.any(kOn, kArt):
			return false
		}
	}
	if date < 0 || !items[0].isWord3("next", "next time", "next visit") {
		return false
	}
	c := newClause(items)
	c.mood = planned
	d := &deed{do: "inspect", rule: "inspect-todo", due: &items[date].day, items: []*item{&items[0], &items[date]}}
	r.write("plans", &c, d)
	return true
}

// allGrammar reports whether only words that hold others together are left.
func (r *reader) allGrammar(items []item) bool {
	for i := range items {
		if items[i].any3(kWord, kContent, kDo) {
			return false
		}
	}
	return true
}

// headingName reads a line that is only a name, such as "Willow:".
func (r *reader) headingName(items []item) (string, bool) {
	first, last := &items[0], &items[len(items)-1]
	if first.pause < line || len(items) > 3 || !first.has(capital) || last.end < first.end { // a repair moved a later word forward
		return "", false
	}
	text := r.text[first.start:last.end]
	lower := strings.ToLower(text)
	if r.names[lower] {
		return lower, true
	}
	if !last.colon {
		return "", false
	}
	for k := range items {
		it := &items[k]
		if it.any(kQueen, kBees, kStores, kContent, kPlan, kMite, kMethod, kBar, kBars, kHive, kName, kFixture, kSky, kDate, kTemper, kCell, kNow, kPast, kNum, kDo, kStrength) && !it.is(kDot) || !it.has(capital) && k > 0 && !(r.headed && it.any5(kWord, kPlant, kColour, kPlace, kSide)) || r.inList(plainHeadings, strings.ToLower(r.text[it.start:it.end])) {
			return "", false
		}
	}
	return lower, true
}
