package parse

import (
	"slices"
	"strconv"
	"strings"
)

// Bars that go in without a verb: "four new bars in after bar nine", "two more bars wanted".

// barsToGoIn reports whether a clause only counts bars that are to go in, and where: "two
// bars in after bar nine".
func (r *reader) barsToGoIn(c *clause) bool {
	return c.has(kBar) && c.hasAny(kAfter, kTween) && !c.hasAny(kDo, kContent, kCell) && slices.ContainsFunc(c.items, func(it item) bool { return it.isWord3("in", "to go in", "in between") })
}

// barsIn reads bars added without a verb: "four new bars in after bar
// fourteen", "next time: one bar in between four and five".
func (r *reader) barsIn(c *clause) {
	if !c.has(kBar) || c.hasAny(kDo, kContent, kCell) || c.mood != asserted && c.mood != planned {
		return
	}
	for i := range c.items {
		count := &c.items[i]
		if !barNumber(count) && !(count.is(kNum) && count.n.article && count.n.whole()) || count.used {
			continue
		}
		k := i + 1
		for k < len(c.items) && (c.items[k].any(kComb, kAdv) && !c.items[k].is(kBar) || r.isWord(&c.items[k], r.wordsOf[newOnes]...)) && c.items[k].text != "in" {
			k++
		}
		at, place := r.inPlace(c.items, k), 0
		switch {
		case at >= 0:
			place = c.items[at].bars[0]
			c.items[at].taken = true
		case inAlone(c.items, i, k):
			at = k + 1
		case barsWanted(c.items, i, k) > 0:
			at, c.mood = barsWanted(c.items, i, k), planned
		case k > i+1 && plansMore(c, i, k):
			at, c.mood = k, planned
		default:
			continue
		}
		d := r.newDeed(&deed{do: "add_bar", at: i, rule: "add-done", count: &count.n, to: place})
		for j := i; j <= at; j++ {
			c.items[j].used = true
			d.items = append(d.items, &c.items[j])
		}
		list := "actions"
		if c.mood == planned {
			list = "plans"
			d.due = c.when
			for j := range c.items {
				if c.items[j].is(kDate) && c.when != nil && c.items[j].day == *c.when {
					c.items[j].used = true
				}
			}
		}
		r.write(list, c, d)
		return
	}
}

// barsToGo puts "to be added" for what counted bars are there for: "I've a bar to put in on Wednesday",
// "two bars to go in next week".
func (r *reader) barsToGo(items []item) {
	for i := 2; i+1 < len(items); i++ {
		to, verb, bar := &items[i], &items[i+1], i-1
		if items[bar].is(kBe) && items[bar].pause == none {
			bar--
		}
		if to.text != "to" || to.pause > none || verb.pause > none || !items[bar].is(kBar) || items[bar].is(kBars) || bar == 0 || !items[bar-1].any(kNum, kComb) && items[bar-1].text != "another" && !r.isWord(&items[bar-1], r.wordsOf[newOnes]...) {
			continue
		}
		end := i + 2
		if verb.text == "go" && end < len(items) && items[end].pause == none && items[end].isWord2("in", "on") {
			end++
		}
		if end == i+2 && !r.isWord(verb, r.wordsOf[goingIn]...) || end < len(items) && items[end].pause == none && (items[end].is(kArt) || items[end].any(kFrom, kTo)) {
			continue // "two bars to go in the freezer", "two bars to add to hive 4"
		}
		to.kinds, to.says, to.text = setOf(kPlan), r.planning, "to be"
		verb.kinds, verb.says, verb.text = setOf(kDo), r.added, "added"
		if end > i+2 {
			items[i+2].kinds, items[i+2].says, items[i+2].text = setOf(kWord), senseless, "in"
		}
	}
}

// foodToGo puts "to be given" for food or medicine that is to go on at a day to come: "another litre of
// syrup to go on Friday", "a kilo of fondant to follow on Tuesday".
func (r *reader) foodToGo(items []item) {
	for i := 1; i+1 < len(items); i++ {
		to, verb := &items[i], &items[i+1]
		if to.text != "to" || to.pause > none || verb.pause > none || !items[i-1].is(kSubstance) || !verb.isWord6("go", "follow", "come", "go on", "go in", "go into") {
			continue
		}
		end := i + 2
		for end < len(items) && end < i+5 && items[end].pause == none && items[end].any3(kOn, kWord, kArt) {
			end++
		}
		if end == len(items) || items[end].pause > none || !items[end].is(kDate) && !items[end].isWord2("next time", "next visit") || hasKind(items[end:end+1], kDate) && !hasAhead(items[end:end+1]) {
			continue
		}
		to.kinds, to.says, to.text = setOf(kPlan), r.planning, "to be"
		verb.kinds, verb.says, verb.text = setOf(kDo), r.added, "given"
	}
}

// inAlone reports whether "two new bars in", with the number at item i, the word for a bar at
// item bar, is all that is told: "H4: calm, 2 bars in", "2 bars in today".
func inAlone(items []item, i, bar int) bool {
	if i > 0 && items[i].pause == none && !items[i-1].any(kName, kPlan, kDate) || bar+1 >= len(items) || !items[bar].is(kBar) || items[bar].pause > none || items[bar+1].text != "in" || items[bar+1].pause > none {
		return false
	}
	return bar+2 == len(items) || items[bar+2].pause >= comma || items[bar+2].is(kDate)
}

// plansMore reports whether more bars, counted at item i and named at item bar, are all that a plan
// tells: "plan is two more bars on Thursday", "next job is two new bars".
func plansMore(c *clause, i, bar int) bool {
	lead := i - 1
	if lead > 0 && c.items[lead].is(kBe) {
		lead--
	}
	leads := lead >= 0 && c.items[lead].is(kPlan) && c.items[i].pause == none || i == 0 && c.mood == planned
	after := at(c.items, bar+1)
	return leads && at(c.items, bar).is(kBar) && (bar+1 == len(c.items) || after.pause >= comma || after.any4(kDate, kOn, kAnd, kBut))
}

// barsWanted is where it ends that bars are wanted, counted at item i and named at item bar:
// "two more bars wanted on Thursday", "needs another bar by Friday"; -1 where they are not.
func barsWanted(items []item, i, bar int) int {
	if bar >= len(items) || !items[bar].is(kBar) || items[bar].pause > none {
		return -1
	}
	opens := i == 0 || items[i].pause >= comma || items[i-1].any(kName, kAnd)
	if opens && bar+1 < len(items) && items[bar+1].pause == none && items[bar+1].isWord4("wanted", "needed", "required", "to go in") {
		return bar + 1
	}
	needs := i > 0 && items[i].pause == none && (items[i-1].isWord4("needs", "need", "wants", "want") || toHave(items, i-1) && hasAhead(items[bar:]))
	if !needs || bar+1 < len(items) && items[bar+1].pause < comma && !items[bar+1].any4(kDate, kOn, kAnd, kBut) && !items[bar+1].isWord2("by", "in") {
		return -1 // "needs two bars of honey"
	}
	ends := bar+1 == len(items) || items[bar+1].pause >= comma
	if more := bar > i+1 || items[i].text == "another"; more || ends || hasKind(items[bar:], kDate) {
		return bar
	}
	return -1
}

// toHave reports whether the words that end with item k tell what somebody is to have: "shall
// have", "must have", "are to get".
func toHave(items []item, k int) bool {
	it := &items[k]
	if it.isWord5("must have", "is to have", "are to have", "is to get", "are to get") {
		return !ofUs(items, k-1)
	}
	plans := k > 0 && it.pause == none && it.isWord3("have", "get", "receive") && (items[k-1].is(kPlan) || items[k-1].isWord4("shall", "will", "must", "should"))
	return plans && !ofUs(items, k-1) && !ofUs(items, k-2)
}

// ofUs reports whether item k names the keeper, alone or with a verb: "I", "we'll".
func ofUs(items []item, k int) bool {
	if k < 0 {
		return false
	}
	who, _, _ := strings.Cut(strings.ReplaceAll(items[k].text, "'", " "), " ")
	return who == "i" || who == "we" || who == "you"
}

// givesAhead reports whether what somebody is to have behind item k is bars or food, for a day
// to come: "must have two more bars on Tuesday".
func givesAhead(c *clause, k int) bool {
	return hasAhead(c.items[k:]) && !c.hasAny(kContent, kNo, kNot, kDo, kCell) && (c.has(kBar) || c.has(kSubstance))
}

// inPlace is where "bars in after bar fourteen", "bar in between four and five"
// name their place, from the word for a bar on; -1 where they do not.
func (r *reader) inPlace(items []item, bar int) int {
	if bar+2 >= len(items) || !items[bar].is(kBar) {
		return -1
	}
	k := bar + 1
	if items[k].text == "in" {
		k++
	} else if !strings.HasPrefix(items[k].text, "in ") {
		return -1
	}
	if k+1 < len(items) && items[k].any(kAfter, kTween) && items[k+1].is(kBars) {
		return k + 1
	}
	return -1
}

// addedThere takes where the bars just added went from the verb at item i: "I added two bars.
// I put them in after bar three", "… they went in behind bar three".
func (r *reader) addedThere(c *clause, i int) bool {
	it := &c.items[i]
	if c.mood != asserted || r.spokeOf.deed < r.sentenceNo-1 || !strings.HasPrefix(r.lastDeed, "actions.add_bar") {
		return false
	}
	k := i + 1
	switch {
	case it.is(kDo) && r.value(it, kComb) == "../placed" && r.rule(it, kDo).Form == "done" && c.next(i).isWord4("them", "those", "these", "both"):
		k++
	case it.is(kDo) && strings.HasSuffix(it.text, " them in"):
	case i > 0 && it.isWord2("went in", "went") && c.items[i-1].isWord4("they", "those", "these", "both"):
	default:
		return false
	}
	if at := k; at < len(c.items) && c.items[at].isWord3("in", "on", "right") {
		k++
	}
	if k+1 >= len(c.items) || !c.items[k].any(kAfter, kTween) || c.items[k].pause > none || !c.items[k+1].is(kBars) {
		return false
	}
	path := r.lastDeed + ".to"
	if _, told := r.cur.get(path); told {
		return false
	}
	if _, added := r.cur.get(r.lastDeed); !added {
		return false // of another hive
	}
	bars := &c.items[k+1]
	r.leaf(path, strconv.Itoa(slices.Min(bars.bars)), "add-done", "", c.doubt, it, bars)
	bars.used, bars.taken, c.items[k].used = true, true, true
	return true
}
