package parse

import (
	"slices"
	"strconv"
	"strings"
)

// argue gathers the deed's arguments from the items behind the verb, and for a
// few from those before it ("bar nine removed").
func (r *reader) argue(c *clause, d *deed, i, end int) {
	for k := i + 1; k < end; k++ {
		r.argumentAt(c, d, i, k)
	}
	r.whereToBehind(c, d, end)
	if bars := r.justNamed(c, i); bars != nil && len(d.bars) == 0 && d.count == nil && d.do == "harvest" {
		d.bars = bars
	}
	if d.do == "move_bar" && d.fromHive != "" && d.toHive == "" && len(d.bars) == 0 && r.named {
		d.do = "add_bar" // "moved two bars in from hive six"
	}
	for k := i - 1; k >= 0 && k >= i-6; k-- {
		it := &c.items[k]
		switch {
		case it.is(kDate) && d.due == nil && !it.used:
			day := it.day
			d.due = &day
			d.items = append(d.items, it)
		case it.is(kBars) && len(d.bars) == 0 && d.traits().bars && d.do != "add_bar" && !r.looseBars(c.items[i+1:end]):
			d.bars = it.bars
			d.items = append(d.items, it)
		case it.is(kMeasure) && d.size == nil && d.traits().amount && !it.used && !c.next(k).is(kBees):
			if _, length := it.size.mm(); !length {
				size := it.size
				d.size = &size
				it.used = true
				d.items = append(d.items, it)
			}
		case it.is(kSubstance) && d.what == "" && d.traits().substance && k >= i-3:
			d.what = r.substance(it)
			it.used = true
			d.items = append(d.items, it)
		case it.is(kNum) && d.count == nil && d.traits().count && r.barsAhead(c.items[k+1:i]):
			if part := partOf(c.items, k); part != nil {
				it.used, it = true, part
			}
			q := it.n
			d.count = &q
			it.used = true
			d.items = append(d.items, it)
		case r.emptyBar(it) && d.count == nil && d.traits().count && strings.HasPrefix(it.text, "a"):
			d.count = &quantity{lo: 1} // "an empty bar was put in"
			it.used = true
			d.items = append(d.items, it)
		case it.is(kName) && k > 0 && (c.items[k-1].is(kFrom) || k > 1 && c.items[k-1].is(kArt) && c.items[k-2].is(kFrom)) && d.do == "add_bar" && it.name != r.cur.hive:
			d.fromHive = it.name // "a bar from hive two was put in"
			it.used = true
			d.items = append(d.items, it)
		case it.is(kDo):
			return
		}
	}
}

// ofBarsDone are the kinds of words between a number of bars or cells and the verb that
// tells what was done to them.
var ofBarsDone = helping.or(setOf(kBar, kComb, kOf, kContent, kName, kFrom, kThen, kCell, kStage, kCellKind, kOn, kBars, kArt))

// barsAhead reports whether a number's bars, with what they hold, and a helping verb
// at most stand between it and the verb: "three new bars were added", "two more
// bars of honey taken".
func (r *reader) barsAhead(items []item) bool {
	bars := false
	for k := range items {
		if items[k].pause > none || !items[k].anyOf(ofBarsDone) && !r.isWord(&items[k], r.wordsOf[newOnes]...) {
			return false
		}
		bars = bars || items[k].any(kBar, kCell) || r.emptyBar(&items[k])
	}
	return bars
}

// use counts an item among the words of the deed.
func (d *deed) use(it *item) {
	it.used = true
	d.items = append(d.items, it)
}

// argumentAt takes what the item at k, behind the verb at item i, says of the deed.
func (r *reader) argumentAt(c *clause, d *deed, i, k int) {
	it, prev := &c.items[k], &c.items[k-1]
	if it.used && !it.is(kBars) {
		return
	}
	switch {
	case it.is(kDate):
		if d.due == nil && c.next(k).text != "'s" { // "last year's honey" tells no day; another is of what follows: "a quart on Monday and a quart today"
			day := it.day
			d.due = &day
			d.use(it)
		}
	case it.is(kBars):
		r.barArgument(c, d, k)
	case it.several():
		if r.atOnce.home == nil {
			d.hives = it.hives
		}
		d.use(it)
	case it.is(kName):
		r.hiveArgument(c, d, i, k)
	case it.is(kMeasure) && r.ofAnother(c, d, k):
	case (it.is(kMeasure) || it.size.unit != "") && d.size == nil && d.traits().amount:
		d.takeSize(it)
	case it.is(kSubstance) && d.traits().substance && d.what == "":
		d.what = r.substance(it)
		d.use(it)
	case it.is(kContent) && d.traits().content:
		if d.do == "inspect" && c.mood != past || d.do != "inspect" && (d.size == nil || k < i+6) {
			d.use(it)
		}
	case r.isObject(d, it):
		d.use(it)
	case it.is(kDur) && d.do == "inspect" && d.due == nil && c.mood != past:
		day := both(it.dur.from(r.today, 1))
		day.ahead = true
		d.due = &day
		d.use(it)
	case it.is(kNum) && r.numberArgument(c, d, k):
		d.use(it)
	case d.traits().count && (r.emptyBar(it) || it.is(kBar)):
		if d.count == nil && (r.emptyBar(it) || prev.is(kNum) && prev.n.article || prev.text == "another") {
			d.count = &quantity{lo: 1}
		}
		if n := c.next(k + 1); c.next(k).is(kOr) && barNumber(n) && n.n.lo > 1 && d.count != nil && d.count.lo == 1 && d.count.hi == 0 {
			d.count = &quantity{lo: 1, hi: n.n.lo, or: true} // "another bar or two"
			n.used = true
		}
		d.use(it)
	case d.do == "cut_cells" && d.count == nil && howManyOf(it.text) > 0:
		d.count = &quantity{lo: howManyOf(it.text)}
		d.use(it)
	case d.do == "move_follower" && r.directionArgument(d, it, prev):
		d.use(it)
	case it.any3(kAmount, kFull, kPattern) && k <= i+4 && !(it.is(kState) && prev.is(kFixture)), it.is(kBees) && k <= i+2:
		it.used = true
	}
}

// ofAnother reports whether the measure at item k is of another food or medicine than
// the deed's.
func (r *reader) ofAnother(c *clause, d *deed, k int) bool {
	next, what := c.next(k), c.next(k+1)
	if next.is(kOf) && what.is(kSubstance) && d.traits().amount && d.do != "harvest" && r.rule(what, kSubstance).Value != d.do {
		return true
	}
	return d.what != "" && c.items[k-1].is(kAnd) && next.any(kOf, kSubstance)
}

// takeSize takes an amount, unless it is a length.
func (d *deed) takeSize(it *item) {
	if d.what != "" && strings.HasSuffix(it.text, " mil") {
		size := it.size
		size.unit, d.size = "ml", &size
		d.use(it)
		return
	}
	if _, length := it.size.mm(); !length {
		size := it.size
		d.size = &size
		d.use(it)
	}
}

// isObject reports whether a word names what the deed was done to, and no more than its
// verb does.
func (r *reader) isObject(d *deed, it *item) bool {
	switch d.do {
	case "cut_cells":
		return it.any3(kCell, kStage, kCellKind)
	case "move_follower", "clean_floor":
		return it.is(kFixture)
	case "feed":
		return r.value(it, kFixture) == "feeder"
	case "straighten":
		return it.is(kComb)
	}
	return it.any(kQueen, kShe) && strings.HasSuffix(d.do, "_queen")
}

// numberArgument takes a number for where the deed puts its bars, or for how many they
// are.
func (r *reader) numberArgument(c *clause, d *deed, k int) bool {
	it, prev := &c.items[k], &c.items[k-1]
	ranged, follower := it.n.hi > it.n.lo, d.do == "move_follower" && d.to == 0
	switch {
	case ranged && (d.do == "add_bar" || d.do == "move_bar") && strings.HasPrefix(it.text, "between"):
		d.to = int(it.n.lo)
	case follower && prev.any(kAfter, kTo) && barNumber(it):
		d.to = int(it.n.lo)
		r.backTo(d, prev)
	case follower && prev.is(kFrom) && ranged:
		d.to = int(it.n.hi) // "from 10 to 12"
		r.followerWas(c, int(it.n.lo), it)
	case follower && prev.is(kFrom) && barNumber(it) && c.next(k).is(kTo):
		r.followerWas(c, int(it.n.lo), it) // "from 12 to 9"
	case d.count == nil && d.traits().count && r.countHere(c, d, k):
		q := it.n
		d.count = &q
	default:
		return false
	}
	return true
}

// directionArgument takes the direction in which the follower went: "two bars back", "a
// bar to the rear".
func (r *reader) directionArgument(d *deed, it, prev *item) bool {
	way := ""
	switch side := r.value(it, kSide); {
	case it.isWord4("back", "backwards", "out", "rearward"):
		way = "back"
	case it.isWord5("forward", "forwards", "up", "in", "towards"):
		way = "forward"
	case d.direction != "" || !it.is(kSide) || !prev.is(kTo) && !strings.HasPrefix(it.text, "to "):
		return false
	case side == "back":
		way = "back"
	case side == "front":
		way = "forward"
	}
	if d.direction == "" {
		d.direction = way
	}
	return true
}

// backTo: "moved the follower back to 10" tells the direction, unless the board stood farther
// back, where it went back to its old place.
func (r *reader) backTo(d *deed, to *item) {
	if to.text != "back to" || d.direction != "" {
		return
	}
	if was, ok := r.cur.get("follower.bar"); ok {
		if bar, err := strconv.Atoi(was); err == nil && bar > d.to {
			return
		}
	}
	d.direction = "back"
}

// howManyOf is the number that "both of them", "all three" and the like stand for;
// 0 for other words.
func howManyOf(text string) float64 {
	text, _, _ = strings.Cut(text, " of")
	switch text {
	case "both", "the pair":
		return 2
	case "all three", "the three":
		return 3
	case "all four", "the four":
		return 4
	case "all five":
		return 5
	case "all six":
		return 6
	}
	return 0
}

// partOf is the number that were taken out of those counted at item k: "two of the
// five cells were cut out".
func partOf(items []item, k int) *item {
	if k < 3 || !items[k-1].is(kArt) || !items[k-2].is(kOf) || !items[k-3].is(kNum) || items[k-3].n.share {
		return nil
	}
	return &items[k-3]
}

// countHere: a number counts the object only where it stands with it.
func (r *reader) countHere(c *clause, d *deed, k int) bool {
	it := &c.items[k]
	if it.n.share || it.n.ordinal || !it.n.whole() {
		return false
	}
	for j := k + 1; j < len(c.items) && j <= k+5; j++ {
		next := &c.items[j]
		if next.any3(kBar, kCell, kBars) {
			return true
		}
		if next.isWord3("more", "of", "them") || next.any(kStage, kCellKind, kComb, kState, kAdv, kOf, kArt, kPattern, kContent, kColour, kFull, kAmount, kWord, kSign) {
			if next.text == "more" || (d.do == "cut_cells" || d.do == "harvest") && next.isWord2("of", "them") {
				return true
			}
			continue
		}
		break
	}
	return !it.n.article && (d.do == "cut_cells" || d.do == "move_follower")
}

// barArgument takes the bars at item k for what the deed was done to, or for where to.
func (r *reader) barArgument(c *clause, d *deed, k int) {
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
		if prev.any3(kTo, kAfter, kOn) {
			d.to = it.bars[0]
			it.taken = true
			r.backTo(d, prev)
		}
		if prev.is(kFrom) && it.ranged {
			r.followerFromTo(c, d, it)
		}
	case prev.any(kAfter, kTween) || prev.is(kTo) && (d.do == "move_bar" || d.do == "add_bar") || prev.is(kOn) && d.do == "add_bar" && prev.isWord2("at", "in"):
		d.to = slices.Min(it.bars)
		it.taken = true
		d.items = append(d.items, it)
	case prev.is(kFore) && (d.do == "add_bar" || d.do == "move_bar"):
		d.to = slices.Min(it.bars) - 1
		it.taken = true
		d.items = append(d.items, it)
	case d.traits().bars && len(d.bars) == 0:
		if d.do == "add_bar" && !c.has(kName) {
			return
		}
		d.bars = it.bars
		if n := len(it.bars); d.do == "move_bar" && it.ranged && n > 1 && !wentToHive(c.items[k:]) { // "moved bar three to nine"
			d.bars, d.to = it.bars[:1], it.bars[n-1]
		}
		r.take(it.bars, len(it.bars) == 1)
		r.inHand, r.sameSentence = thisLine, true
		it.taken = d.do == "remove_bar" || d.do == "harvest" || d.do == "move_bar"
		d.items = append(d.items, it)
	}
}

// wentToHive reports whether a hive that they went to is named behind the bars at the head
// of some items: "moved bars four to six over to hive nine".
func wentToHive(items []item) bool {
	for k := 1; k < len(items) && items[k].any3(kTo, kAdv, kName) || k < len(items) && items[k].text == "over"; k++ {
		if items[k].is(kName) {
			return items[k-1].is(kTo)
		}
	}
	return false
}

// substance is the name of a food or medicine in the record: that of its rule,
// else as it was said.
func (r *reader) substance(it *item) string {
	if name := r.rule(it, kSubstance).Form; name != "" {
		return name
	}
	if it.has(misheard) {
		return r.spelt(r.mended[it.from:it.to])
	}
	return it.text
}
