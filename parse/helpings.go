package parse

import "strings"

// Food and medicine told without a verb of feeding or treating, by their amounts or by who
// got them.

// bareFood reads "so she got half a litre of syrup", "care given: 1 kg
// fondant": an amount of food in a clause without another verb was fed.
func (r *reader) bareFood(c *clause) {
	if c.mood == unasked || c.undone || c.has(kDo) && !r.givenWord(c) || c.has(kBars) || c.has(kNo) {
		return
	}
	gets := getsIt(c)
	for i := range c.items {
		d := r.helping(c, i, "feed", kOf, kArt, kComb, kAdv, kNum, kTo)
		if d == nil {
			d = r.measured(c, i)
		}
		if d == nil {
			d = r.received(c, i)
		}
		switch {
		case d == nil:
			continue
		case r.fedThen(c) && !gets:
			d.due = c.when
			r.earlierDeed(c, d)
		case c.mood == planned:
			d.due = c.when
			r.write("plans", c, d)
		case gets && r.comingDay(c) != nil:
			d.due = r.comingDay(c)
			r.write("plans", c, d)
		default:
			r.write("actions", c, d)
		}
	}
}

// foodAhead: "they shall have a litre of syrup", where the word at item k tells what is to
// come.
func (r *reader) foodAhead(c *clause, k int) bool {
	_, verb := strings.CutSuffix(c.items[k].text, " to have") // "they are to have"
	if !verb && !c.items[k].isWord5("shall", "will", "'ll", "next time", "next visit") {
		return false
	}
	for k++; k < len(c.items) && c.items[k].pause == none; k++ {
		it := &c.items[k]
		if it.is(kMeasure) {
			food := c.next(k)
			if food.is(kOf) {
				food = c.next(k + 1)
			}
			return verb && food.is(kSubstance) && r.rule(food, kSubstance).Value == "feed"
		}
		if it.is(kSubstance) && it.text != "feed" {
			return verb
		}
		verb = verb || it.is(kHave) || it.isWord3("get", "receive", "have")
		if !it.any5(kHave, kAdv, kArt, kPron, kBees) && !it.isWord4("get", "receive", "more", "some") {
			return false
		}
	}
	return false
}

// fedThen reports whether food in a clause without a verb of feeding was given on an
// earlier day: "they had two litres on Tuesday".
func (r *reader) fedThen(c *clause) bool {
	return c.mood == past || c.when != nil && (c.when.weekday || c.lists.has(receiving)) && !c.when.today && !r.opening && c.mood == asserted
}

// inside reports whether words for going end with where it went: "gone in", "went on".
func inside(words string) bool {
	last := words[strings.LastIndexByte(words, ' ')+1:]
	return last == "in" || last == "on" || last == "into" || last == "onto"
}

// comingDay is the day ahead that a clause tells, or that stands right before it: "tomorrow
// she gets two litres"; nil for none.
func (r *reader) comingDay(c *clause) *day {
	when := c.when
	if last := r.before(c, 0); when == nil && last.is(kDate) {
		when = &last.day
	}
	if when == nil || when.ago || when.today {
		return nil
	}
	return when
}

// getsIt: "they get thymol on Friday", "fondant goes in next week" tell what is to come.
func getsIt(c *clause) bool {
	for k := range c.items {
		if word, _, _ := strings.Cut(c.items[k].text, " "); word == "get" || word == "gets" || word == "goes" {
			return c.items[k].lists.has(receiving) || c.items[k].lists.has(going)
		}
	}
	return false
}

// measured is the deed that a food or medicine at item i and an amount right
// behind it tell of: "oxalic acid, 30 ml".
func (r *reader) measured(c *clause, i int) *deed {
	at := i + 1
	if r.isWord(c.next(i), r.wordsOf[dosing]...) {
		at++ // "fondant given, 2 kg"
	}
	if r.justOn(c, i) {
		at++ // "thymol on, 50 g"
	}
	if at >= len(c.items) || !c.items[i].is(kSubstance) || c.items[i].used || !c.items[at].is(kMeasure) || c.items[at].used {
		return nil
	}
	rule, size := r.rule(&c.items[i], kSubstance), c.items[at].size
	return &deed{do: rule.Value, at: i, items: []*item{&c.items[i], &c.items[at]}, rule: rule.ID, size: &size, what: r.substance(&c.items[i])}
}

// justOn reports whether the food or medicine at item i heads a sentence and is told to be on:
// "Thymol on, 50 g."
func (r *reader) justOn(c *clause, i int) bool {
	return i == 0 && c.items[0].is(kSubstance) && c.items[0].pause >= stop && c.next(0).text == "on" && c.next(0).pause == none && (len(c.items) == 2 || c.items[2].pause >= comma && c.items[2].is(kMeasure)) && r.rule(&c.items[0], kSubstance).Value == "treat"
}

// received is the deed that "they got a pollen patty", "these had thymol on the 2nd" tell of
// where item i is the food or medicine and no amount is said; nil for none.
func (r *reader) received(c *clause, i int) *deed {
	it := &c.items[i]
	if !it.is(kSubstance) || it.used || it.text == "feed" || c.next(i).isWord4("left", "over", "remaining", "still") {
		return nil
	}
	if when := c.when; when != nil && c.next(i).text == "again" && c.mood == asserted && !when.today && !when.ago && (when.ahead || when.weekday || when.future.Compare(r.today) > 0 && when.future.Compare(r.today.AddDays(soonAgain)) < 0) {
		c.mood = planned // "thymol again in ten days"
	}
	if c.mood == planned && c.next(i).text == "again" && c.when != nil {
		rule := r.rule(it, kSubstance)
		return r.newDeed(&deed{do: rule.Value, at: i, items: r.these(it, c.next(i)), rule: rule.ID, what: r.substance(it)})
	}
	if !r.comesToThem(c, i) && !r.wentIn(c, i) && !r.justOn(c, i) && !r.listedToDo(c, i) && !(c.mood == planned && (c.when != nil && (r.heading == planned || r.foodFor(c, i+1)) || r.heading == planned && r.under == areToDo)) { // "To do: more syrup tomorrow"
		return nil
	}
	if when := c.when; when != nil && c.mood == asserted && (when.weekday || when.ahead) && r.wordIn(c.items, "goes", "goes on", "goes in", "go on", "go in") {
		c.mood = planned // "so thymol goes on on Wednesday"
	}
	if when := c.when; when != nil && c.mood == asserted && !when.today && !when.ahead && !when.week {
		c.mood = past // "oxalic acid went on 3 January"
	}
	rule := r.rule(it, kSubstance)
	return r.newDeed(&deed{do: rule.Value, at: i, items: r.these(it), rule: rule.ID, what: r.substance(it)})
}

// listedToDo reports whether the food or medicine at item i stands in a list of what is to be
// done, without a verb: "to do: syrup, a mouse guard", "needs syrup".
func (r *reader) listedToDo(c *clause, i int) bool {
	if c.mood != planned {
		return false
	}
	for k := range c.items[:i] {
		if c.items[k].is(kPlan) && foodPlanned(c, k) == i {
			return true
		}
	}
	for i > 0 && c.items[i].pause == none && (c.items[i-1].any3(kArt, kAmount, kAdv) || c.items[i-1].isWord2("some", "more")) {
		i--
	}
	if i > 0 && toHave(c.items, i-1) && hasAhead(c.items) {
		return true // "they shall have more syrup on Tuesday"
	}
	before := r.before(c, i)
	return before.is(kPlan) && (before.colon || r.isWord(before, "needs", "need", "todo", "to do"))
}

// foodNeeded reports whether food or medicine is what the bees are told to need by the word at
// item k: "it needs syrup", and not "I need syrup", which is to be bought.
func foodNeeded(c *clause, k int) bool {
	if !c.items[k].isWord4("needs", "need", "wants", "want") || k > 0 && c.items[k-1].isWord2("i", "we") || c.hasAny(kNo, kUndone) {
		return false
	}
	for k++; k < len(c.items) && c.items[k].pause == none && (c.items[k].any6(kArt, kAmount, kAdv, kNum, kMeasure, kOf) || c.items[k].isWord2("some", "more")); k++ {
	}
	return k < len(c.items) && c.items[k].pause == none && c.items[k].is(kSubstance)
}

// foodPlanned is the food or medicine that is planned for a day by the word at item k: "plan
// is thymol on Monday", "plan for Monday is syrup"; -1 where none is.
func foodPlanned(c *clause, k int) int {
	dated := false
	for i := range c.items {
		dated = dated || c.items[i].is(kDate) && !c.items[i].day.ago && !c.items[i].day.today
	}
	if !dated || !c.items[k].isWord5("plan is", "plan", "next job", "needs", "need") {
		return -1
	}
	for i := k + 1; i < len(c.items) && c.items[i].pause == none; i++ {
		it := &c.items[i]
		if it.is(kSubstance) && it.text != "feed" {
			return i
		}
		if !it.any6(kBe, kArt, kAdv, kOn, kDate, kOf) && !it.is(kMeasure) && it.text != "for" {
			break
		}
	}
	return -1
}

// soonAgain is the number of days ahead within which a day of a month is one to come where
// a medicine is to be given again (common practice; no source).
const soonAgain = 60

// comesToThem reports whether the bees are told to get what stands at item i: "they got a
// patty", "these will have thymol".
func (r *reader) comesToThem(c *clause, i int) bool {
	verb := i - 1
	for verb > 0 && (c.items[verb].any3(kArt, kAdv, kAmount) || c.items[verb].is(kNum) && c.items[verb].n.article) && !c.items[verb].lists.has(receiving) {
		verb--
	}
	if verb < 1 || !c.items[verb].lists.has(receiving) {
		return false
	}
	who := verb - 1
	for who > 0 && c.items[who].any3(kWill, kPlan, kAdv) {
		who--
	}
	return c.items[who].any6(kBees, kShe, kName, kHive, kWill, kPlan) || c.items[who].isWord6("it", "these", "those", "both", "this one", "this lot")
}

// wentIn reports whether what stands at item i was put in: "so thymol went in".
func (r *reader) wentIn(c *clause, i int) bool {
	next := c.next(i)
	return next.lists.has(going) && inside(next.text) || next.isWord2("went", "goes") && inside(c.next(i+1).text)
}

// helping is the deed that an amount at item i and a food or medicine behind it
// tell of, over words of the given kinds; nil where they do not.
func (r *reader) helping(c *clause, i int, do string, over ...kind) *deed {
	it := &c.items[i]
	if !it.is(kMeasure) || it.used {
		return nil
	}
	k := i + 1
	for k < len(c.items) && c.items[k].anyOf(setOf(over...)) {
		k++
	}
	if k >= len(c.items) || !c.items[k].is(kSubstance) || c.items[k].used || r.rule(&c.items[k], kSubstance).Value != do {
		return nil
	}
	size := it.size
	return r.newDeed(&deed{do: do, at: i, items: r.these(it, &c.items[k]), rule: r.rule(&c.items[k], kSubstance).ID, size: &size, what: r.substance(&c.items[k])})
}

func (r *reader) givenWord(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDo) && !r.isWord(&c.items[k], r.wordsOf[dosing]...) && !c.items[k].isWord2("had", "got") {
			return false
		}
	}
	return true
}

// moreFood reads a second helping told without its verb: "two litres of syrup
// and then half a kilo of fondant".
func (r *reader) moreFood(c *clause) {
	list, do, _ := strings.Cut(r.lastDeed, ".")
	do, _, _ = strings.Cut(do, "#")
	if !traitsOf(do).substance {
		return
	}
	for i := range c.items {
		d := r.helping(c, i, do, kOf)
		if d == nil && list != "earlier" {
			d = r.oneMore(c, i, do)
		}
		if d == nil {
			continue
		}
		if list == "earlier" && !r.dated(c, d) {
			continue
		}
		for _, it := range d.items {
			it.used = true
		}
		switch {
		case list == "actions" && r.fedThen(c):
			d.due = c.when
			r.earlierDeed(c, d)
		case list != "earlier":
			r.write(list, c, d)
		case d.due.today:
			r.write("actions", c, d)
		default:
			r.earlierDeed(c, d)
		}
	}
}

// oneMore is the deed that "and a pollen patty" adds; nil for none.
func (r *reader) oneMore(c *clause, i int, do string) *deed {
	if i+2 >= len(c.items) || !c.items[i].is(kAnd) || !c.items[i+1].is(kArt) || !c.items[i+2].is(kSubstance) || c.items[i+2].used || r.spokeOf.deed != r.sentenceNo {
		return nil
	}
	it := &c.items[i+2]
	if r.rule(it, kSubstance).Value != do {
		return nil
	}
	return r.newDeed(&deed{do: do, at: i, items: r.these(it), rule: r.rule(it, kSubstance).ID, what: r.substance(it)})
}

// dated gives a helping the day that follows it: "a quart on Monday and a quart
// today".
func (r *reader) dated(c *clause, d *deed) bool {
	for k := d.at + 1; k < len(c.items) && k <= d.at+5; k++ {
		if it := &c.items[k]; it.is(kDate) && !it.used {
			d.due = &it.day
			d.items = append(d.items, it)
			return true
		}
	}
	return false
}
