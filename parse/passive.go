package parse

import "strings"

// barsUndergo: "bar two was removed", "bar two must come out".
func (f *fitting) barsUndergo() bool {
	if len(f.args) == 0 && f.i > 1 && f.pre[0].is(kBars) && f.c.items[f.i].pause == comma {
		return true // "12 empty comb, removed"
	}
	alone := len(f.args) == 0 || f.args[0].pause > none || f.args[0].any(kDate, kAdv, kAnd, kBut, kTo, kAfter, kFore) || f.args[0].isWord3("because", "since", "as")
	k := verbChain(f.c.items, f.i)
	if len(f.bars) > 1 && f.sameSentence && passive(f.pre[k+1:]) && f.wordIn(f.pre[k+1:], "both", "all") && (k < 0 || !f.pre[k].any(kBars, kBar)) {
		return true // "bars two and three are bare, so both were removed"
	}
	if k >= 0 && k < f.i-1 && passive(f.pre[k+1:]) && (f.pre[k].is(kBars) && f.pre[k+1].pause == comma || len(f.bars) > 0 && f.sameSentence && f.stillThose(k)) {
		return true
	}
	if f.rule.Form == "done" && f.stillTheBars(k) {
		return true // "bar two was bare and was taken out"
	}
	for k = f.i - 1; k >= 0 && (f.pre[k].any6(kBe, kHave, kAdv, kPlan, kWill, kMaybe) || alone && f.pre[k].is(kPron)) && !f.pre[k].is(kBars); k-- {
	}
	return k >= 0 && f.pre[k].is(kBars) && (k == f.i-1 || f.rule.Form == "done" || f.c.mood == planned)
}

// stillThose reports whether the subject at item k stands for the bars in hand:
// "bar six was bare, so it was removed", "bar six, which is old, was removed".
func (f *fitting) stillThose(k int) bool {
	it := &f.pre[k]
	if f.rule.Value == "move_bar" && !f.has(kTo) && !f.has(kAfter) && !f.has(kName) {
		return false // "so that's moved along nicely"
	}
	return f.isWord(it, "it", "they", "both", "both of them", "all", "these", "those", "this", "that", "all of them", "the lot") ||
		f.pre[k+1].pause == comma && f.wordIn(f.pre[:k], "which")
}

// barsAdded: "more bars were added", "a bar from hive two has been put in".
func (r *reader) barsAdded(c *clause, i int) bool {
	k := verbChain(c.items, i)
	if k == i-1 || !passive(c.items[k+1:i]) {
		return false
	}
	k = behindBars(c.items, k)
	return k >= 0 && (c.items[k].is(kBar) || r.emptyBar(&c.items[k]))
}

// behindBars is the last item before it is told, up to item k, what bars hold or which hive they come
// from: "a bar | of honey from the plum hive".
func behindBars(items []item, k int) int {
	for k > 1 && items[k].any(kName, kContent) {
		link := k - 1
		if items[k].is(kName) && items[link].is(kArt) && items[k].pause == none && link > 1 {
			link--
		}
		if !items[link].any(kFrom, kOf) {
			break
		}
		k = link - 1
	}
	return k
}

// verbChain is the last item before the helping verbs of the verb at item i: the
// subject of "was then", "has also been".
//
// An aside between the two is passed over: "bar six, mostly honey, was moved".
func verbChain(items []item, i int) int {
	k := i - 1
	for k >= 0 && (items[k].anyOf(helping) || items[k].text == "must be") && items[k+1].pause == none {
		k--
	}
	if k >= 0 && k < i-1 && items[k+1].pause == comma {
		return beforeAside(items, k)
	}
	return k
}

// beforeAside is the last item before the aside that ends with item k, and k where none
// does.
func beforeAside(items []item, k int) int {
	j := k
	for j > 0 && items[j].pause == none && !items[j].any(kDo, kPron) {
		j--
	}
	if j == 0 || items[j].any5(kDo, kPron, kAnd, kBut, kThen) {
		return k
	}
	return j - 1
}

// passive reports whether helping verbs make something undergo what the verb tells.
func passive(chain []item) bool {
	for k := range chain {
		if text := chain[k].text; chain[k].is(kBe) || strings.HasSuffix(text, " be") || strings.HasSuffix(text, " been") {
			return true
		}
	}
	return false
}

// undergoes: "and the entrance was then narrowed", "and the follower board has been
// moved" begin what was done to a fixture.
func (r *reader) undergoes(items []item, i int) bool {
	k := i + 1
	for k < len(items) && items[k].any4(kHave, kBe, kAdv, kThen) && items[k].pause == none {
		k++
	}
	return k > i+1 && k < len(items) && items[i].is(kFixture) && items[k-1].any3(kBe, kAdv, kThen) && items[k].is(kDo) && items[k].pause == none && r.rule(&items[k], kDo).Form == "done"
}

// toBeDone: "bar two needs to be removed", "three bars will be added" are plans whose object stands before the verb.
func (r *reader) toBeDone(items []item, i int) bool {
	subject := i - 1
	if i > 0 && items[i].pause == comma {
		subject = beforeAside(items, subject) // "formic acid, 60 ml, will be applied"
	}
	if i == 0 || items[i].pause > none && subject == i-1 || subject > 0 && items[subject].is(kBars) && items[subject-1].any6(kOn, kAfter, kFore, kTween, kTo, kDo) && items[subject].pause == none {
		return false // "brood on bar four going to feed them"
	}
	k := i + 1
	for k < len(items) && items[k].any3(kBe, kAdv, kThen) && items[k].pause == none {
		k++
	}
	undergoes := passive(items[i:k])
	if !items[subject].is(kBars) && !(undergoes && (items[subject].anyOf(undergoing) || r.emptyBar(&items[subject]))) {
		return false
	}
	return k < len(items) && items[k].is(kDo) && items[k].pause == none
}

// undergoing are the kinds of words for what things are done to.
var undergoing = setOf(kBar, kFixture, kQueen, kSubstance, kCell, kShe, kBees, kPron)

// helping are the kinds of words between a subject and its verb.
var helping = setOf(kBe, kHave, kAdv, kThen, kWill, kPlan, kNow)

// cellsUndergo: "the swarm cells on bar six were then cut out".
func (f *fitting) cellsUndergo() bool {
	k := verbChain(f.c.items, f.i)
	if k >= 2 && k < f.i-1 && f.pre[k].is(kBars) && f.pre[k-1].is(kOn) {
		k -= 2
	}
	if k == f.i-1 && f.cellsFirst() {
		return true // "two sealed cells on bar 5 cut out"
	}
	if k < 0 || k == f.i-1 || !passive(f.pre[k+1:]) || !f.pre[k].is(kCell) || f.rule.Form != "done" {
		return false
	}
	f.pre[k].used = true
	f.d.items = append(f.d.items, &f.pre[k])
	f.soManyOf(k)
	return true
}

// soManyOf takes how many of the cells at item k it was: "two of the cells were cut out".
func (f *fitting) soManyOf(k int) {
	for k > 1 && f.pre[k-1].any4(kArt, kCellKind, kStage, kNum) && f.pre[k].pause == none {
		k--
	}
	if k > 1 && f.pre[k-1].is(kOf) && barNumber(&f.pre[k-2]) {
		f.d.count = &f.pre[k-2].n
		f.d.use(&f.pre[k-2])
	}
}

// cellsFirst reports whether the clause is nothing but cells, where they were and a verb
// that tells what was done to them, with "out" or the like.
func (f *fitting) cellsFirst() bool {
	_, off, _ := strings.Cut(f.text, " ")
	if f.rule.Form != "done" || !f.onlyCells(f.pre) || off != "out" && off != "down" && off != "off" && off != "away" && f.text != "removed" && f.text != "destroyed" || len(f.args) > 0 && f.args[0].pause == none && !f.args[0].any(kDate, kAdv) {
		return false
	}
	for k := range f.pre {
		f.pre[k].used = true
	}
	f.d.items = append(f.d.items, &f.pre[0])
	return true
}

// onlyCells reports whether items are so many queen cells, and at most where they are.
func (r *reader) onlyCells(items []item) bool {
	cells := false
	for k := range items {
		it := &items[k]
		if k > 0 && it.pause > none || !it.any6(kNum, kCell, kCellKind, kStage, kOn, kBars) && !it.any(kArt, kEach) {
			return false
		}
		cells = cells || it.is(kCell)
	}
	return cells && items[0].any(kNum, kEach)
}

// substanceGiven: "two kilos of fondant were laid on the bars".
func (f *fitting) substanceGiven() *rule {
	k := verbChain(f.c.items, f.i)
	if k < 0 || k == f.i-1 || !f.pre[k].is(kSubstance) || f.pre[k].used {
		return nil
	}
	return f.reader.rule(&f.pre[k], kSubstance)
}

// substanceOf: "the syrup that I gave them on Thursday".
func (f *fitting) substanceOf() *rule {
	k := f.i - 1
	for k > 0 && f.pre[k].any(kAdv, kHave) && f.pre[k].pause == none {
		k--
	}
	if k < 0 || !f.pre[k].is(kPron) || f.pre[k].pause > none {
		return nil
	}
	food := f.before(f.c, k)
	if k > 1 && food.isWord2("that", "which") {
		food = &f.pre[k-2]
	}
	if !food.is(kSubstance) || food.used {
		return nil
	}
	if k == 0 { // the clause begins behind it
		f.d.what = f.substance(food)
		f.d.use(food)
	}
	return f.reader.rule(food, kSubstance)
}

// before is the item before that at k, of the sentence if it begins the clause; one of no
// kind where none is.
func (r *reader) before(c *clause, k int) *item {
	if k > 0 {
		return &c.items[k-1]
	}
	for j := 1; j < len(r.told); j++ {
		if r.told[j].start == c.items[0].start {
			return &r.told[j-1]
		}
	}
	return &noItem
}

// foodLaid reports whether that was food.
func (f *fitting) foodLaid() bool {
	given := f.substanceGiven()
	return given != nil && given.Value == "feed"
}

// combUndergoes: "the comb on bar five was then cut free".
func (f *fitting) combUndergoes() bool {
	k := verbChain(f.c.items, f.i)
	if k < 0 || k == f.i-1 || !passive(f.pre[k+1:]) {
		return false
	}
	return f.pre[k].any3(kBars, kComb, kBar) || f.stillTheBars(k)
}

// stillTheBars reports whether the item at k is the "and" behind which more was done to the
// bars that head the clause: "bar seven was stuck to the wall and was cut free".
func (f *fitting) stillTheBars(k int) bool {
	if k < 2 || !f.pre[k].is(kAnd) || !f.pre[0].is(kBars) || !passive(f.pre[k+1:]) || !f.pre[1].any(kBe, kHave) || f.pre[1].pause > none {
		return false
	}
	for j := 2; j < k; j++ {
		if f.pre[j].any6(kQueen, kShe, kCell, kFixture, kDo, kPron) && !f.pre[j].any(kComb, kState) {
			return false
		}
	}
	return true
}

// queenUndergoes: "she is to be clipped", "the queen was then released".
func (f *fitting) queenUndergoes() bool {
	k := verbChain(f.c.items, f.i)
	return k >= 0 && f.pre[k].any(kQueen, kShe) && passive(f.pre[k+1:])
}

// queenMarked: "she was unmarked and was duly marked blue" tells of a deed; "she was
// marked blue" only how she is.
func (f *fitting) queenMarked() bool {
	k := verbChain(f.c.items, f.i)
	chain := f.pre[k+1:]
	if f.doneToday(k) {
		return true
	}
	if len(chain) == 0 || f.rule.Form != "done" || !passive(chain) || k >= 0 && !f.pre[k].any3(kQueen, kShe, kAnd) {
		return false
	}
	plain, _ := f.cur.get("queen.marked")
	return f.c.mood == planned || f.wordIn(chain, "then", "duly", "accordingly", "therefore") || plain == "no" && f.spokeOf.queen == f.sentenceNo
}

// doneToday: "Queen: found, marked white and clipped today", "found unmarked; marked
// blue" tell of deeds, where nobody is named who did them; item k stands before the verb.
func (f *fitting) doneToday(k int) bool {
	if f.rule.Form != "done" || f.c.mood != asserted || k >= 0 && k < f.i-1 && !passive(f.pre[k+1:]) || f.i > 0 && f.pre[f.i-1].is(kUndone) {
		return false
	}
	if k >= 0 && !f.pre[k].any6(kQueen, kShe, kAnd, kColour, kDot, kQueenIs) || k < 0 && f.spokeOf.queen != f.sentenceNo && f.i > 0 {
		return false
	}
	for n := f.i; n < len(f.c.items); n++ {
		if it := &f.c.items[n]; it.is(kDate) && it.day.today {
			return true
		}
	}
	plain, _ := f.cur.get("queen.marked")
	return f.d.do == "mark_queen" && (f.c.items[f.i].pause >= comma || f.i > 0 && f.pre[f.i-1].is(kNow) && f.pre[f.i-1].pause >= comma) && plain == "no" && f.spokeOf.queen == f.sentenceNo
}
