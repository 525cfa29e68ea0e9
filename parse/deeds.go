package parse

import (
	"slices"
	"strings"

	"barwise/colony"
)

// deed is something done or to be done, on its way to the record.
type deed struct {
	do        string
	at        int // its verb in the clause
	items     []*item
	rule      string
	count     *quantity
	bars      []int
	to        int
	fromHive  string
	toHive    string
	direction string
	size      *measure
	what      string
	due       *day
	hives     []string // of a deed done to several
}

// deeds reads what was done or is to be done in a clause.
func (r *reader) deeds(c *clause) {
	for i := 0; i < len(c.items); i++ {
		it := &c.items[i]
		if !it.is(kDo) || it.used {
			continue
		}
		if d := r.deed(c, i); d != nil {
			r.settleDeed(c, d)
		}
	}
	r.moreFood(c)
	r.moreBars(c)
	r.bareFood(c)
}

// moreBars reads a second bar told without its verb: "put a bar in after six and
// another after eight".
func (r *reader) moreBars(c *clause) {
	if !strings.HasPrefix(r.lastDeed, "actions.add_bar") && !strings.HasPrefix(r.lastDeed, "plans.add_bar") || r.deedSentence != r.sentenceNo {
		return
	}
	list, _, _ := strings.Cut(r.lastDeed, ".")
	for i := range c.items {
		it := &c.items[i]
		counted := it.is(kNum) && it.n.lo == 1 && i+1 < len(c.items) && (c.items[i+1].is(kBar) || i+2 < len(c.items) && c.items[i+2].is(kBar))
		if !r.isWord(it, "another") && !counted || it.used {
			continue
		}
		d := &deed{do: "add_bar", at: i, items: []*item{it}, rule: "add-done", count: &quantity{lo: 1}}
		it.used = true
		for k := i + 1; k < len(c.items) && k <= i+5; k++ {
			if ref := &c.items[k]; ref.is(kBars) && c.items[k-1].is(kAfter) {
				d.to = ref.bars[0]
				ref.used, ref.taken = true, true
				d.items = append(d.items, ref)
			}
		}
		r.write(list, c, d)
	}
}

// bareFood reads "so she got half a litre of syrup", "care given: 1 kg
// fondant": an amount of food in a clause without another verb was fed.
func (r *reader) bareFood(c *clause) {
	if c.mood != asserted || c.undone || hasKind(c.items, kDo) && !r.givenWord(c) || hasKind(c.items, kBars) || hasKind(c.items, kNo) {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kMeasure) || it.used {
			continue
		}
		k := i + 1
		for k < len(c.items) && c.items[k].any(kOf, kArt, kComb, kAdv, kNum, kTo) {
			k++
		}
		if k < len(c.items) && c.items[k].is(kSubstance) && !c.items[k].used && r.rule(&c.items[k], kSubstance).Value == "feed" {
			size := it.size
			d := &deed{do: "feed", at: i, items: []*item{it, &c.items[k]}, rule: "food", size: &size, what: r.substance(&c.items[k])}
			r.write("actions", c, d)
			return
		}
	}
}

func (r *reader) givenWord(c *clause) bool {
	for k := range c.items {
		if c.items[k].is(kDo) && !r.isWord(&c.items[k], "given", "had", "got", "fed") {
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
	if do != "feed" && do != "treat" {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if !it.is(kMeasure) || it.used {
			continue
		}
		k := i + 1
		if k < len(c.items) && c.items[k].is(kOf) {
			k++
		}
		if k >= len(c.items) || !c.items[k].is(kSubstance) || c.items[k].used || r.rule(&c.items[k], kSubstance).Value != do {
			continue
		}
		size := it.size
		d := &deed{do: do, at: i, items: []*item{it, &c.items[k]}, rule: do, size: &size, what: r.substance(&c.items[k])}
		it.used, c.items[k].used = true, true
		r.write(list, c, d)
	}
}

// senses are the deeds that a verb can stand for, in the order in which they
// are tried.
func (r *reader) senses(it *item) []*rule {
	var out []*rule
	for _, n := range it.rules {
		if r.rules[n].Kind == kDo {
			out = append(out, &r.rules[n])
		}
	}
	return out
}

// end is where the deed's arguments end: the next verb, or the clause.
func (r *reader) argumentsEnd(c *clause, i int) int {
	for k := i + 1; k < len(c.items); k++ {
		it := &c.items[k]
		if it.pause >= colon && it.is(kDo) {
			return k
		}
		if it.is(kDo) && !it.used && !it.any(kState, kComb, kQueenIs) && k > i+1 && !r.isWord(it, "free", "loose") {
			return k
		}
		if it.any(kQueen) && k > i+3 && it.pause > none {
			return k
		}
	}
	return len(c.items)
}

func (r *reader) deed(c *clause, i int) *deed {
	end := r.argumentsEnd(c, i)
	if end > i+1 && r.isWord(&c.items[i+1], "nothing", "none", "no", "nowt") {
		c.items[i].used = true // "fed nothing"
		return nil
	}
	if i >= 2 && c.items[i-1].is(kBe) && r.isWord(&c.items[i-2], "nothing", "none", "nobody") {
		c.items[i].used = true // "nothing was harvested"
		return nil
	}
	for _, rule := range r.senses(&c.items[i]) {
		d := &deed{do: rule.Value, at: i, items: []*item{&c.items[i]}, rule: rule.ID}
		if r.fits(c, d, i, end, rule) {
			r.argue(c, d, i, end)
			return d
		}
	}
	return nil
}

// fits reports whether the objects behind the verb are those of the deed, and
// settles which deed a verb of several is.
func (r *reader) fits(c *clause, d *deed, i, end int, rule *rule) bool {
	args := c.items[i+1 : end]
	text := c.items[i].text
	has := func(k kind) bool { return hasKind(args, k) }
	pre := c.items[:i]
	switch rule.Value {
	case "add_bar":
		if s := r.substanceIn(args, ""); s != nil && !has(kBars) && !has(kQueen) {
			d.do = s.Value
			return true
		}
		if has(kFixture) || has(kMite) || c.placed {
			return false
		}
		return r.looseBars(args) || r.passive(c, i, kBar) || (has(kBars) && hasKind(args, kName)) || r.beforeIs(pre, kBar) && c.mood == planned
	case "remove_bar":
		if has(kCell) || has(kStage) && r.cellTalk {
			d.do = "cut_cells"
			return true
		}
		if r.honeyBars(c, args) {
			d.do = "harvest"
			return true
		}
		if r.onlyToLook(args) {
			return false
		}
		if len(pre) > 1 && pre[i-1].any(kPron) && pre[i-2].is(kBar) && len(r.bars) > 0 {
			return true // "that bar I took away"
		}
		if r.isWord(&c.items[i], "took", "take", "taken") && !has(kBars) && !r.looseBars(args) && !r.wordIn(args, "out", "away", "off") {
			return false
		}
		return has(kBars) && !r.onlyPlace(args) || r.looseBars(args) || r.itBar(c, args)
	case "move_bar":
		if hasFixture(r, args, "follower") || r.lastFixture == "follower" && len(args) > 0 && r.isWord(&args[0], "it") {
			d.do = "move_follower"
			return true
		}
		return has(kBars) || r.looseBars(args) || r.itBar(c, args) && (has(kTo) || has(kName))
	case "harvest":
		return has(kBars) || r.looseBars(args) || has(kMeasure) || r.contentIn(args, "honey") || r.contentIn(args, "capped_honey") || strings.Contains(text, "honey") || len(args) <= 2 && !has(kBees)
	case "feed":
		if strings.HasPrefix(text, "fill") || text == "left" || text == "poured" || text == "laid" || strings.HasPrefix(text, "refill") && false || strings.HasPrefix(text, "top") {
			return r.substanceIn(args, "feed") != nil || strings.Contains(text, "feeder") || hasFixture(r, args, "feeder") && text != "left"
		}
		if text == "feed" && i > 0 && c.items[i-1].any(kArt, kOf, kNo) && !c.items[i-1].is(kTo) {
			return false
		}
		return true
	case "treat":
		if text == "hung" || text == "applied" || text == "apply" || text == "dribbled" || text == "trickled" || text == "sprayed" || text == "gassed" || text == "dribble" || text == "trickle" {
			return r.substanceIn(args, "treat") != nil || r.substanceIn(pre, "treat") != nil
		}
		return true
	case "mark_queen":
		return r.herQueen(c, i, args)
	case "clip_queen":
		return r.herQueen(c, i, args) || strings.Contains(text, "wing")
	case "release_queen":
		return strings.Contains(text, "her") || strings.Contains(text, "queen") || r.herQueen(c, i, args) || has(kQueen) || text == "opened the cage"
	case "requeen":
		return true
	case "split":
		return !has(kContent) || has(kBees) || has(kHive)
	case "unite":
		return has(kName) || has(kHive) || has(kBees) || r.wordIn(args, "two", "both", "colonies", "nuc") || len(args) <= 1 && text != "joined"
	case "cut_cells":
		if r.wordIn(args, "loose", "free", "away", "clear") && !has(kCell) {
			d.do = "free_comb"
			return true
		}
		if r.cellTalk && r.wordIn(args, "all three", "all four", "both", "all two", "all five") {
			return true
		}
		return has(kCell) || r.wordIn(args, "cups") || r.cellTalk && (r.itThem(args) || has(kNum) && !has(kBars) && !has(kMeasure) && len(args) <= 5 || r.wordIn(args, "ones")) || has(kStage) && r.cellTalk
	case "straighten":
		return len(r.bars) > 0 || has(kBars) || has(kBar)
	case "trim_comb":
		return !has(kCell) && (has(kBars) || has(kBar) || r.itBar(c, args) || text != "shaved")
	case "free_comb":
		return has(kBars) || has(kBar) || r.itBar(c, args) || strings.Contains(text, " it") || len(r.bars) > 0 && !has(kQueen)
	case "open", "close", "reduce":
		return r.fixtureDeed(d, c, i, args)
	case "clean_floor":
		return hasFixture(r, args, "floor") || r.wordIn(args, "tray", "board") || i > 1 && pre[i-1].is(kBe) && hasFixture(r, pre, "floor") || i > 0 && hasFixture(r, pre[i-1:], "floor")
	case "smoke":
		return text != "smoke" || c.mood == planned || i == 0
	case "inspect":
		if c.mood == past || rule.Form == "done" && r.lastLooked(c, i) {
			return true
		}
		if hasKind(pre, kQueen) && rule.Form == "doing" {
			return false // "another new queen going in on Thursday"
		}
		if rule.Form == "doing" && c.when != nil && !c.when.ago && !c.when.today {
			return true
		}
		if rule.Form == "todo" && c.when != nil && c.when.ahead {
			return true
		}
		return c.mood == planned || r.imperative(c, i)
	}
	return false
}

func hasKind(items []item, k kind) bool {
	for i := range items {
		if items[i].is(k) {
			return true
		}
	}
	return false
}

func hasFixture(r *reader, items []item, what string) bool {
	for i := range items {
		if items[i].is(kFixture) && r.value(&items[i], kFixture) == what {
			return true
		}
	}
	return false
}

func (r *reader) beforeIs(items []item, k kind) bool {
	return len(items) > 0 && items[len(items)-1].is(k)
}

// looseBars: bars that are counted, not numbered ("two bars", "a bar", "one
// more").
func (r *reader) looseBars(args []item) bool {
	for k := range args {
		if r.emptyBar(&args[k]) {
			return true
		}
		if args[k].is(kBar) && !args[k].is(kBars) {
			return k == 0 || args[k-1].any(kNum, kArt, kAdv, kComb, kContent, kWord, kAmount, kState, kStage, kPattern, kOf) || true
		}
		if args[k].any(kAfter, kOn, kFore) {
			break
		}
		if args[k].is(kNum) && k+1 < len(args) && r.isWord(&args[k+1], "more") {
			return true
		}
	}
	return false
}

// emptyBar: "an empty bar" that is put in says nothing of a comb.
func (r *reader) emptyBar(it *item) bool {
	return it.is(kComb) && strings.HasSuffix(it.text, " bar")
}

func (r *reader) isWord(it *item, words ...string) bool {
	return slices.Contains(words, it.text)
}

func (r *reader) wordIn(args []item, words ...string) bool {
	for k := range args {
		if r.isWord(&args[k], words...) {
			return true
		}
	}
	return false
}

func (r *reader) contentIn(args []item, what string) bool {
	for k := range args {
		if r.value(&args[k], kContent) == what {
			return true
		}
	}
	return false
}

// onlyToLook: a bar pulled "to look for eggs" goes back in.
func (r *reader) onlyToLook(args []item) bool {
	for k := 1; k < len(args); k++ {
		if args[k].is(kDo) && r.rule(&args[k], kDo).Value == "inspect" && r.isWord(&args[k-1], "to", "and") || r.isWord(&args[k], "show", "see", "look") && r.isWord(&args[k-1], "to") {
			return true
		}
	}
	return false
}

// passive: "more bars were added".
func (r *reader) passive(c *clause, i int, subject kind) bool {
	return i >= 2 && c.items[i-1].is(kBe) && c.items[i-2].is(subject)
}

// honeyBars: bars of honey that were taken are a harvest.
func (r *reader) honeyBars(c *clause, args []item) bool {
	for k := range args {
		v := r.value(&args[k], kContent)
		if (v == "honey" || v == "capped_honey") && !hasKind(args, kBars) {
			return true
		}
	}
	return false
}

func (r *reader) onlyPlace(args []item) bool {
	for k := range args {
		if args[k].is(kBars) {
			return k > 0 && args[k-1].any(kAfter, kFore, kTween, kOn)
		}
	}
	return false
}

// itBar: "it" behind a verb means the bar in hand.
func (r *reader) itBar(c *clause, args []item) bool {
	if len(r.bars) == 0 {
		return false
	}
	for k := range args {
		if k > 2 {
			break
		}
		if r.isWord(&args[k], "it", "that", "this", "that one", "this one", "them", "the comb", "comb") {
			return true
		}
	}
	return false
}

func (r *reader) itThem(args []item) bool {
	for k := range args {
		if k <= 2 && r.isWord(&args[k], "it", "them", "one", "both", "ones", "those", "that one") {
			return true
		}
	}
	return false
}

func (r *reader) herQueen(c *clause, i int, args []item) bool {
	for k := range args {
		if k > 1 || args[k].pause > none {
			break
		}
		if args[k].any(kShe, kQueen) || r.isWord(&args[k], "her", "herself") {
			return true
		}
	}
	text := c.items[i].text
	return strings.Contains(text, "her") && r.sheLast
}

func (r *reader) substanceIn(args []item, family string) *rule {
	for k := range args {
		if args[k].is(kSubstance) {
			if rule := r.rule(&args[k], kSubstance); family == "" || rule.Value == family {
				return rule
			}
		}
	}
	return nil
}

// fixtureDeed: opened, closed or reduced, of the entrance or the floor.
func (r *reader) fixtureDeed(d *deed, c *clause, i int, args []item) bool {
	if len(args) > 0 && r.isWord(&args[0], "it") && (r.lastFixture == "entrance" || r.lastFixture == "floor" && d.do != "reduce") {
		d.do += "_" + r.lastFixture // "the entrance was reduced so I opened it"
		return true
	}
	for k := range args {
		if k > 4 {
			break
		}
		if !args[k].is(kFixture) || args[k].used {
			if !args[k].any(kArt, kAdv, kAnd, kFixture, kComb, kWord, kState, kPron) {
				break
			}
			continue
		}
		what := r.value(&args[k], kFixture)
		if what != "entrance" && what != "floor" || what == "floor" && d.do == "reduce" {
			return false
		}
		if i > 0 && c.items[i].pause == none && c.items[i-1].any(kBe, kFixture) {
			return false
		}
		if d.do == "close" && what == "entrance" && r.downTo(args[k+1:]) {
			d.do = "reduce" // "shut the entrance down to a bee's width"
		}
		d.do += "_" + what
		args[k].used = true
		d.items = append(d.items, &args[k])
		return true
	}
	text := c.items[i].text
	if strings.Contains(text, "entrance") || strings.Contains(text, "reducer") || strings.Contains(text, "mouse guard") {
		d.do += "_entrance"
		return true
	}
	return false
}

// downTo: the entrance closed "down to a finger's width" is reduced.
func (r *reader) downTo(args []item) bool {
	for k := range args {
		if strings.HasPrefix(args[k].text, "down") {
			return true
		}
	}
	return false
}

// imperative: an order to oneself, "check again in three weeks".
func (r *reader) imperative(c *clause, i int) bool {
	for k := 0; k < i; k++ {
		if !c.items[k].any(kAnd, kThen, kAdv, kNum, kBut, kDate, kSubstance) {
			return false
		}
	}
	if c.when != nil && !c.when.ago && !c.when.today {
		return true
	}
	for k := i + 1; k < len(c.items); k++ {
		if r.isWord(&c.items[k], "again") {
			return true
		}
	}
	return false
}

// argue gathers the deed's arguments from the items behind the verb, and for a
// few from those before it ("bar nine removed").
func (r *reader) argue(c *clause, d *deed, i, end int) {
	for k := i + 1; k < end; k++ {
		r.argumentAt(c, d, i, k)
	}
	for k := i - 1; k >= 0 && k >= i-6; k-- {
		it := &c.items[k]
		switch {
		case it.is(kDate) && d.due == nil && !it.used:
			day := it.day
			d.due = &day
			d.items = append(d.items, it)
		case it.is(kBars) && len(d.bars) == 0 && r.takesBars(d.do) && d.do != "add_bar" && !r.looseBars(c.items[i+1:end]):
			d.bars = it.bars
		case it.is(kMeasure) && d.size == nil && r.takesAmount(d.do) && !it.used && k >= i-4:
			if _, length := it.size.mm(); !length {
				size := it.size
				d.size = &size
				it.used = true
				d.items = append(d.items, it)
			}
		case it.is(kSubstance) && d.what == "" && (d.do == "feed" || d.do == "treat") && k >= i-3:
			d.what = r.substance(it)
			it.used = true
			d.items = append(d.items, it)
		case it.is(kDo):
			return
		}
	}
}

func (r *reader) takesBars(do string) bool {
	switch do {
	case "remove_bar", "move_bar", "harvest", "cut_cells", "straighten", "trim_comb", "free_comb", "add_bar":
		return true
	}
	return false
}

func (r *reader) argumentAt(c *clause, d *deed, i, k int) {
	it := &c.items[k]
	if it.used && !it.is(kBars) {
		return
	}
	prev := &c.items[k-1]
	use := func() { it.used = true; d.items = append(d.items, it) }
	switch {
	case it.is(kDate):
		if d.due == nil {
			day := it.day
			d.due = &day
		}
		use()
	case it.is(kBars):
		r.barArgument(c, d, i, k)
	case it.is(kName) && len(it.hives) > 0:
		d.hives = it.hives
		use()
	case it.is(kName):
		r.hiveArgument(c, d, i, k)
	case it.is(kMeasure) && d.size == nil && r.takesAmount(d.do):
		if _, length := it.size.mm(); !length {
			size := it.size
			d.size = &size
			use()
		}
	case it.is(kSubstance) && (d.do == "feed" || d.do == "treat") && d.what == "":
		d.what = r.substance(it)
		use()
	case it.is(kCell) && d.do == "cut_cells", it.is(kStage) && d.do == "cut_cells", it.is(kCellKind) && d.do == "cut_cells":
		use()
	case it.is(kContent) && (d.do == "harvest" || d.do == "move_bar" || d.do == "add_bar" || d.do == "remove_bar" || d.do == "inspect" || d.do == "feed" || d.do == "unite" || d.do == "smoke"):
		if d.do == "inspect" && c.mood != past || d.do != "inspect" && (d.size == nil || k < i+6) {
			use()
		}
	case it.any(kQueen, kShe) && strings.HasSuffix(d.do, "_queen"):
		use()
	case it.is(kFixture) && (d.do == "move_follower" || d.do == "clean_floor" || d.do == "feed" && r.value(it, kFixture) == "feeder"):
		use()
	case it.is(kDur) && d.do == "inspect" && d.due == nil && c.mood != past:
		day := both(it.dur.from(r.today, 1))
		day.ahead = true
		d.due = &day
		use()
	case it.is(kComb) && d.do == "straighten":
		use()
	case it.is(kNum) && it.n.hi > it.n.lo && (d.do == "add_bar" || d.do == "move_bar") && strings.HasPrefix(it.text, "between"):
		d.to = int(it.n.lo)
		use()
	case it.is(kNum) && d.count == nil && r.takesCount(d.do) && r.countHere(c, d, k):
		q := it.n
		d.count = &q
		use()
	case r.emptyBar(it) && r.takesCount(d.do):
		if d.count == nil {
			d.count = &quantity{lo: 1}
		}
		use()
	case it.is(kEach) && d.do == "harvest" && len(d.bars) == 0 && d.count == nil && r.inHand == thisLine:
		d.bars = slices.Clone(r.bars)
		use()
	case it.is(kBar) && r.takesCount(d.do):
		if k > 0 && prev.is(kNum) && prev.n.article && d.count == nil {
			d.count = &quantity{lo: 1}
		}
		if r.isWord(prev, "another") && d.count == nil {
			d.count = &quantity{lo: 1}
		}
		use()
	case d.do == "cut_cells" && d.count == nil && r.isWord(it, "both", "both of", "all three", "all four", "the pair"):
		d.count = &quantity{lo: map[string]float64{"all three": 3, "all four": 4}[it.text]}
		if d.count.lo == 0 {
			d.count.lo = 2
		}
		use()
	case it.is(kNum) && d.do == "move_follower" && d.to == 0 && prev.is(kAfter) && barNumber(it):
		d.to = int(it.n.lo)
		use()
	case d.do == "move_follower" && r.isWord(it, "back", "backwards", "forward", "forwards", "up", "in", "out", "towards", "rearward"):
		if d.direction == "" {
			d.direction = map[bool]string{true: "back", false: "forward"}[r.isWord(it, "back", "backwards", "out", "rearward")]
		}
		use()
	case it.any(kAmount, kFull, kPattern) && k <= i+4:
		it.used = true
	case it.any(kBees) && k <= i+2:
		it.used = true
	}
}

func (r *reader) takesAmount(do string) bool {
	return do == "feed" || do == "treat" || do == "harvest"
}

func (r *reader) takesCount(do string) bool {
	switch do {
	case "add_bar", "remove_bar", "move_bar", "harvest", "cut_cells", "move_follower":
		return true
	}
	return false
}

// countHere: a number counts the object only where it stands with it.
func (r *reader) countHere(c *clause, d *deed, k int) bool {
	it := &c.items[k]
	if it.n.share || !it.n.whole() {
		return false
	}
	for j := k + 1; j < len(c.items) && j <= k+5; j++ {
		next := &c.items[j]
		if next.any(kBar, kCell, kBars) {
			return true
		}
		if r.isWord(next, "more", "of", "them") || next.any(kStage, kCellKind, kComb, kState, kAdv, kOf, kArt, kPattern, kContent, kColour, kFull, kAmount, kWord) {
			if r.isWord(next, "more") || (d.do == "cut_cells" || d.do == "harvest") && r.isWord(next, "of", "them") {
				return true
			}
			continue
		}
		break
	}
	return !it.n.article && (d.do == "cut_cells" || d.do == "move_follower")
}

func (r *reader) barArgument(c *clause, d *deed, i, k int) {
	it := &c.items[k]
	prev := &c.items[k-1]
	if prev.is(kArt) && k >= 2 {
		prev = &c.items[k-2]
	}
	if d.do == "add_bar" && d.to > 0 {
		return // of another bar
	}
	it.used = true
	switch {
	case d.do == "move_follower":
		if prev.any(kTo, kAfter, kOn) {
			d.to = it.bars[0]
			it.taken = true
		}
	case prev.any(kAfter, kTween) || prev.is(kTo) && (d.do == "move_bar" || d.do == "add_bar") || prev.is(kOn) && d.do == "add_bar" && r.isWord(prev, "at", "in"):
		d.to = slices.Min(it.bars)
		it.taken = true
		d.items = append(d.items, it)
	case prev.is(kFore) && (d.do == "add_bar" || d.do == "move_bar"):
		d.to = slices.Min(it.bars) - 1
		it.taken = true
		d.items = append(d.items, it)
	case r.takesBars(d.do) && len(d.bars) == 0:
		if d.do == "add_bar" && !r.giving(c, d) {
			return
		}
		d.bars = it.bars
		if n := len(it.bars); d.do == "move_bar" && it.ranged && n > 1 { // "moved bar three to nine"
			d.bars, d.to = it.bars[:1], it.bars[n-1]
		}
		r.take(it.bars, len(it.bars) == 1)
		r.inHand, r.sameSentence = thisLine, true
		it.taken = d.do == "remove_bar" || d.do == "harvest" || d.do == "move_bar"
		d.items = append(d.items, it)
	}
}

// giving: bars given to another hive leave this one.
func (r *reader) giving(c *clause, d *deed) bool { return hasKind(c.items, kName) }

func (r *reader) hiveArgument(c *clause, d *deed, i, k int) {
	it := &c.items[k]
	if !r.argument(c.items, k) && k == 0 {
		return
	}
	prev := &c.items[k-1]
	if prev.is(kArt) && k >= 2 {
		prev = &c.items[k-2]
	}
	it.used = true
	d.items = append(d.items, it)
	text := prev.text
	switch {
	case it.name == r.cur.hive: // this hive itself
	case prev.is(kFrom):
		d.fromHive = it.name
	case d.do == "unite" && prev.is(kDo):
		if k+1 < len(c.items) && (c.items[k+1].any(kTo) || r.isWord(&c.items[k+1], "onto", "with", "into", "in")) {
			d.fromHive = it.name
		} else {
			d.toHive = it.name
		}
	case prev.any(kTo) || text == "with" || text == "onto":
		d.toHive = it.name
	case d.do == "add_bar" && prev.is(kDo):
		d.toHive = it.name
	default:
		d.toHive = it.name
	}
	if d.do == "add_bar" && d.toHive != "" && len(d.bars) > 0 {
		d.do = "move_bar"
	}
}

// substance is the bare name of a food or medicine.
func (r *reader) substance(it *item) string {
	text := it.text
	if it.misheard {
		text = r.said(it)
	}
	switch text {
	case "oxalic", "oa", "oxalic acid vapour":
		return "oxalic acid"
	case "formic", "formic acid pads", "formic pads":
		return "formic acid"
	case "pollen patties":
		return "pollen patty"
	case "protein patties":
		return "protein patty"
	case "sugar syrup", "inverted syrup", "invert syrup":
		return "syrup"
	case "thymol strips", "thymol gel", "thymol pads":
		return "thymol"
	case "candy board", "sugar candy", "bee candy":
		return "candy"
	}
	return text
}

// said is what misheard words were mended to.
func (r *reader) said(it *item) string {
	var words []string
	for k := it.from; k < it.to; k++ {
		words = append(words, r.words.words[r.mended[k].id])
	}
	return strings.Join(words, " ")
}

// settleDeed decides whether the deed was done, is planned, was done earlier or
// not at all, and writes it.
func (r *reader) settleDeed(c *clause, d *deed) {
	rule := r.senseOf(&c.items[d.at], d)
	it := &c.items[d.at]
	before := r.beforeVerb(c, d.at)
	if len(d.hives) > 0 {
		r.inEach(c, d)
		return
	}
	switch {
	case c.undone && r.undoneAt(c, d.at) && c.mood == past && earlierEvents[d.do] != "" && strings.Contains(c.cue, "last"):
		path := r.earlier(c, earlierEvents[d.do], d.rule, d.due, d.items...)
		r.cur.put(path, "no", source{spans: r.spanOf(d.items...), rule: d.rule, cue: c.cue})
	case before == kNo && c.mood == past && earlierEvents[d.do] != "":
		path := r.earlier(c, earlierEvents[d.do], d.rule, d.due, d.items...)
		r.cur.put(path, "no", source{spans: r.spanOf(d.items...), rule: d.rule, cue: c.cue})
	case c.undone && r.undoneAt(c, d.at), before == kUndone, before == kNo:
		it.used = true
		return
	case c.mood == planned || c.mood == asserted && rule.Form == "todo" && !r.twofold(it) && (r.imperative(c, d.at) || before == kPlan):
		r.write("plans", c, d)
	case c.mood == past || d.due != nil && d.due.ago || d.due != nil && !d.due.today && !d.due.ahead && rule.Form == "done":
		r.earlierDeed(c, d)
	case d.due != nil && (d.due.ahead || rule.Form == "doing" && !d.due.today) && rule.Form != "done":
		r.write("plans", c, d)
	case rule.Form == "done" || before == kHave || r.twofold(it):
		if d.do == "inspect" {
			return
		}
		r.write("actions", c, d)
	}
}

// inEach writes a deed of several hives to each of them: "treated hives 1 and
// 3".
func (r *reader) inEach(c *clause, d *deed) {
	here, hives := r.cur, d.hives
	for _, name := range hives {
		for _, b := range r.all {
			if b.hive == name {
				one := *d
				one.hives = nil
				r.cur = b
				r.settleDeed(c, &one)
			}
		}
	}
	r.cur = here
}

func (r *reader) senseOf(it *item, d *deed) *rule {
	first := r.rule(it, kDo)
	for _, n := range it.rules {
		if r.rules[n].ID == d.rule {
			return &r.rules[n]
		}
	}
	return first
}

func (r *reader) undoneAt(c *clause, at int) bool {
	for k := at - 1; k >= 0; k-- {
		if c.items[k].is(kUndone) {
			return true
		}
	}
	return false
}

// beforeVerb is the cue right before the verb, over adverbs.
func (r *reader) beforeVerb(c *clause, at int) kind {
	for k := at - 1; k >= 0 && k >= at-3; k-- {
		it := &c.items[k]
		switch {
		case it.is(kUndone):
			return kUndone
		case it.is(kNo):
			return kNo
		case it.is(kPlan):
			return kPlan
		case it.is(kHave):
			return kHave
		}
		if !it.any(kAdv, kWill, kShe, kPron, kBe) {
			break
		}
	}
	return noKind
}

// write puts the deed into actions or plans.
func (r *reader) write(list string, c *clause, d *deed) {
	if d.do == "inspect" && list != "plans" {
		return
	}
	r.deedSentence = r.sentenceNo
	b := r.cur
	if path, again := r.repeated(list, d); again {
		for _, it := range d.items {
			it.used = true
		}
		r.details(path, list, c, d)
		return
	}
	path := b.deed(list, d.do)
	why := r.why(d.rule, c.cue, d.items...)
	if c.doubt != "" && list == "actions" {
		why.doubts = append(why.doubts, "hedged: "+c.doubt)
	}
	b.put(path, "yes", why)
	r.lastDeed = path
	r.details(path, list, c, d)
	r.consequences(list, d, why)
}

// repeated: the same deed told twice is one; two that differ are two.
func (r *reader) repeated(list string, d *deed) (string, bool) {
	key := list + "." + d.do
	if r.cur.deeds[key] == 0 {
		return "", false
	}
	switch d.do {
	case "feed", "treat", "move_bar", "add_bar", "remove_bar", "harvest", "cut_cells", "straighten", "trim_comb", "free_comb":
		what, _ := r.cur.get(key + ".what")
		amount, _ := r.cur.get(key + ".amount")
		bar, _ := r.cur.get(key + ".bar")
		same := (d.what == "" || what == d.what) && (d.size == nil || amount == formatNumber(d.size.amount.lo)) &&
			(len(d.bars) == 0 || bar == joinBars(d.bars)) && d.count == nil
		return key, same
	}
	return key, true
}

// details writes what was said of the deed.
func (r *reader) details(path, list string, c *clause, d *deed) {
	b := r.cur
	why := source{spans: r.spanOf(d.items...), rule: d.rule}
	if d.do == "mark_queen" || d.do == "clip_queen" || d.do == "requeen" || d.do == "release_queen" {
		d.bars, d.count = nil, nil
	}
	if len(d.bars) == 0 && d.count == nil {
		switch d.do {
		case "straighten", "trim_comb", "free_comb", "cut_cells":
			if len(r.bars) == 1 && (r.inHand == thisLine || r.inHand == awaiting) {
				d.bars = r.bars
			}
		case "remove_bar", "move_bar":
			if len(r.bars) > 0 && (r.inHand == thisLine || r.inHand == awaiting) {
				d.bars = r.bars
			}
		}
	}
	if d.do == "cut_cells" && len(d.bars) == 0 && len(r.bars) == 1 && r.inHand == thisLine {
		d.bars = r.bars
	}
	switch len(d.bars) {
	case 0:
	case 1:
		b.put(path+".bar", joinBars(d.bars), why)
		if d.do != "cut_cells" {
			d.count = nil
		}
	default:
		b.put(path+".bars", joinBars(d.bars), why)
		if d.do == "remove_bar" || d.do == "move_bar" || d.do == "harvest" {
			d.count = &quantity{lo: float64(len(d.bars))}
		}
	}
	if d.count != nil {
		r.putCount(path, *d.count, why)
	}
	if d.to > 0 {
		b.put(path+".to", formatNumber(float64(d.to)), why)
	}
	if d.fromHive != "" {
		b.put(path+".from_hive", d.fromHive, why)
	}
	if d.toHive != "" {
		b.put(path+".to_hive", d.toHive, why)
	}
	if d.direction != "" {
		b.put(path+".direction", d.direction, why)
	}
	if d.size != nil {
		b.put(path+".amount", formatNumber(d.size.amount.lo), why)
		b.put(path+".unit", d.size.unit, why)
		if d.size.amount.approx {
			b.flag(path+".amount", "an estimate", "")
		}
	}
	if d.what != "" {
		b.put(path+".what", d.what, why)
	}
	if list == "plans" {
		r.dueOn(path, c, d, why)
	}
}

func (r *reader) dueOn(path string, c *clause, d *deed, why source) {
	due := d.due
	if due == nil && c.when != nil && !c.when.ago {
		due = c.when
	}
	if due == nil && c.mood == planned && r.planDay != nil {
		due = r.planDay
	}
	if due == nil || due.week {
		return
	}
	r.cur.put(path+".due", due.future.String(), why)
	if due.weak {
		r.cur.flag(path+".due", "the day can be read in two ways", "")
	}
}

// consequences are states that a deed of today leaves behind.
func (r *reader) consequences(list string, d *deed, why source) {
	if list != "actions" {
		return
	}
	why.doubts = nil
	switch d.do {
	case "mark_queen":
		r.setAfter("queen.marked", "yes", why)
		r.sheLast = true
	case "clip_queen":
		r.setAfter("queen.clipped", "yes", why)
		r.sheLast = true
	case "requeen", "release_queen":
		r.sheLast = true
	}
}

func (r *reader) setAfter(path, value string, why source) {
	r.cur.drop(path)
	r.cur.put(path, value, why)
}

// earlierEvents are the deeds that count as events of an earlier day.
var earlierEvents = map[string]string{"feed": "fed", "treat": "treated", "add_bar": "bar_added", "split": "split", "requeen": "requeened", "inspect": "inspected"}

func (r *reader) earlierDeed(c *clause, d *deed) {
	event, ok := earlierEvents[d.do]
	if !ok {
		return
	}
	if d.do == "inspect" && !r.lastLooked(c, d.at) {
		return
	}
	path := r.earlier(c, event, d.rule, d.due, d.items...)
	why := source{spans: r.spanOf(d.items...), rule: d.rule}
	if d.count != nil && d.do == "add_bar" {
		r.putCount(path, *d.count, why)
	}
	if d.size != nil {
		r.cur.put(path+".amount", formatNumber(d.size.amount.lo), why)
		r.cur.put(path+".unit", d.size.unit, why)
	}
	if d.what != "" {
		r.cur.put(path+".what", d.what, why)
	}
}

// lastLooked: an earlier inspection counts only when that is the point.
func (r *reader) lastLooked(c *clause, at int) bool {
	for k := 0; k <= at; k++ {
		if strings.HasPrefix(c.items[k].text, "last") {
			return true
		}
	}
	return false
}

// earlier writes an event of an earlier day and returns its path.
func (r *reader) earlier(c *clause, event, rule string, on *day, items ...*item) string {
	path := "earlier." + event
	if _, ok := r.cur.get(path); ok && on != nil {
		if old, dated := r.cur.get(path + ".on"); dated && old != on.past.String() {
			path = r.cur.deed("earlier", event)
			if path == "earlier."+event {
				path = r.cur.deed("earlier", event)
			}
		}
	}
	if r.cur.deeds["earlier."+event] == 0 {
		r.cur.deeds["earlier."+event] = 1
	}
	why := r.why(rule, c.cue, items...)
	r.cur.put(path, "yes", why)
	var date colony.Date
	switch {
	case on != nil && !on.week:
		date = on.past
	case c.when != nil && !c.when.week && !c.when.ahead:
		date = c.when.past
	case !c.pastOn.IsZero():
		date = c.pastOn
	}
	if !date.IsZero() && date.Compare(r.today) <= 0 {
		r.cur.put(path+".on", date.String(), source{spans: why.spans, rule: rule})
	}
	return path
}

// earlierFindings reads sightings of an earlier day.
func (r *reader) earlierFindings(c *clause) {
	noun, _ := r.queenNoun(c)
	for i := range c.items {
		it := &c.items[i]
		if it.used {
			continue
		}
		if _, ok := r.cur.get("earlier.queen_seen"); ok && it.is(kShe) && noun < 0 && !hasKind(c.items, kSeen) && !hasKind(c.items, kContent) {
			r.earlierBar(c, "earlier.queen_seen") // "last time I saw her she was on bar nine"
			continue
		}
		switch {
		case it.is(kSeen) && (noun >= 0 || r.herself(c)):
			on, _ := r.dateNear(c, i)
			path := r.earlier(c, "queen_seen", "queen", on, append(r.pick(c, noun), it)...)
			r.earlierBar(c, path)
		case r.value(it, kContent) == "eggs" && (hasKind(c.items, kSeen) || hasKind(c.items, kHave) || hasKind(c.items, kBe)):
			path := r.earlier(c, "eggs_seen", "eggs", nil, it)
			r.earlierBar(c, path)
		case r.isWord(it, "swarmed"):
			r.earlier(c, "swarmed", "swarmed", nil, it)
		}
	}
}

func (r *reader) earlierBar(c *clause, path string) {
	for i := range c.items {
		if it := &c.items[i]; it.is(kBars) && len(it.bars) == 1 && !it.taken {
			r.cur.put(path+".bar", joinBars(it.bars), source{spans: r.spanOf(it), rule: "earlier"})
			it.used = true
			return
		}
	}
}
