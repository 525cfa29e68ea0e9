package parse

import "strings"

func (f *fitting) fixture() bool { return f.fixtureDeed(f.d, f.c, f.i, f.args) }

// fixtureDeed: opened, closed or reduced, of the entrance or the floor.
func (r *reader) fixtureDeed(d *deed, c *clause, i int, args []item) bool {
	last := r.lastFixture
	for k := range c.items[:i] {
		if c.items[k].is(kFixture) {
			last = r.value(&c.items[k], kFixture)
		}
	}
	if doneTo(d.do, last) && (ofIt(args) || r.ofLastFixture(c.items, i)) {
		d.do += "_" + last
		return true
	}
	if what := r.fixtureBefore(c, i, args); doneTo(d.do, what) {
		d.do += "_" + what
		return true
	}
	if k := fixtureAmong(args); k >= 0 {
		return r.ofFixture(d, c.items, i, args, k)
	}
	switch text := c.items[i].text; {
	case strings.Contains(text, " it ") && doneTo(d.do, last):
		d.do += "_" + last // "the entrance was wide so I made it smaller"
	case strings.Contains(text, "entrance"), strings.Contains(text, "the door"), strings.Contains(text, "reducer"), strings.Contains(text, "mouse guard"):
		d.do += "_entrance"
	default:
		return false
	}
	return true
}

// doneTo reports whether a fixture can have been opened, closed or reduced: floors are not
// reduced.
func doneTo(do, fixture string) bool {
	return fixture == "entrance" || fixture == "floor" && do != "reduce"
}

// ofIt reports whether a deed is of what was named before: "the entrance was reduced so I
// opened it", but not "reduced, that's fine".
func ofIt(args []item) bool {
	if len(args) == 0 {
		return false
	}
	that := args[0].text == "that" && (len(args) == 1 || !args[1].is(kBe))
	return that || args[0].isWord3("it", "same", "the same")
}

// ofLastFixture reports whether the verb at item i goes on about the fixture that the sentence
// named: "robbing at the entrance, which I reduced", "the entrance I found reduced, and opened",
// "the floor was closed on arrival and has been opened".
func (r *reader) ofLastFixture(items []item, i int) bool {
	if (whichI(items, i) || r.goesOn(items, i)) && hasKind(r.told, kFixture) {
		return true
	}
	return i > 0 && items[i-1].is(kAnd) && items[i].pause == none && r.objectless(items, i) && r.onlyFixtures()
}

// fixtureAmong is where a fixture not yet told of is the object of a verb, -1 where none is:
// "up the big entrance".
func fixtureAmong(args []item) int {
	for k := range args[:min(len(args), 5)] {
		it := &args[k]
		switch {
		case it.is(kFixture) && !it.used:
			return k
		case it.text == "at" && k > 0 && args[k-1].is(kWord): // "closed it up at the entrance"
		case it.any6(kArt, kAdv, kAnd, kFixture, kComb, kWord), it.any(kState, kPron):
		case it.is(kName) && k+1 < len(args) && args[k+1].is(kFixture):
		default:
			return -1
		}
	}
	return -1
}

// ofFixture makes the verb at item i one of the fixture that is its object, the argument k.
func (r *reader) ofFixture(d *deed, items []item, i int, args []item, k int) bool {
	what := r.value(&args[k], kFixture)
	if !doneTo(d.do, what) {
		return false
	}
	if i > 0 && items[i].pause == none && items[i-1].any(kBe, kFixture) && !strings.HasSuffix(items[i].text, "ing") {
		return false // "the entrance is closed", not "I am closing the entrance"
	}
	if d.do == "close" && what == "entrance" && r.downTo(args[k+1:]) {
		d.do = "reduce" // "shut the entrance down to a bee's width"
	}
	d.do += "_" + what
	args[k].used = true
	d.items = append(d.items, &args[k])
	return true
}

// whichI reports whether the verb at item i tells what I did to what was named before:
// "which I reduced", "which we have now opened", "which I must close".
func whichI(items []item, i int) bool {
	k := i - 1
	for k > 0 && (items[k].any6(kHave, kAdv, kNow, kThen, kPlan, kWill) || items[k].isWord2("since", "therefore")) && !items[k].is(kPron) {
		k--
	}
	return k > 0 && items[k].is(kPron) && items[k-1].text == "which"
}

// goesOn reports whether the verb at item i tells what was then done to what the words
// before "and" are about: "… and has been opened", "… and was then moved".
func (r *reader) goesOn(items []item, i int) bool {
	k := verbChain(items, i)
	return k >= 0 && k < i-1 && items[k].is(kAnd) && passive(items[k+1:i]) && r.rule(&items[i], kDo).Form == "done" &&
		(r.wordIn(items[k+1:i], "has been", "have been", "then", "been") || !items[i].is(kState))
}

// onlyFixtures reports whether the sentence names a fixture and tells of no deed but
// those that are states of fixtures as well, or one that opens or closes them.
func (r *reader) onlyFixtures() bool {
	for k := range r.told {
		if it := &r.told[k]; it.is(kDo) && !it.is(kState) && traitsOf(r.rule(it, kDo).Value).hive != openedAt && !it.isWord3("left", "closed", "shut") {
			return false
		}
	}
	return hasKind(r.told, kFixture)
}

// fixtureBefore is the entrance or floor that stands before a verb of today: "the
// entrance I've reduced", "entrance reduced today"; "" for none.
func (r *reader) fixtureBefore(c *clause, i int, args []item) string {
	k := i - 1
	today := len(args) > 0 && args[0].is(kDate) && args[0].day.today
	if passive := r.fixtureUndergoes(c, i, args); passive >= 0 {
		k = passive
	} else if !today {
		for k > 0 && c.items[k].any(kPron, kHave) && c.items[k+1].pause == none {
			k--
		}
		if k > i-2 || !hasKind(c.items[k:i], kPron) {
			return ""
		}
	}
	if k < 0 || !c.items[k].is(kFixture) || c.items[k].used {
		return ""
	}
	what := r.value(&c.items[k], kFixture)
	if what != "entrance" && what != "floor" {
		return ""
	}
	c.items[k].used = true
	return what
}

// fixtureUndergoes is the item of a fixture that something was done to: "the
// entrance was then closed", "the floor has been opened", "the entrance was reduced to
// a finger's width". "The entrance was closed" alone tells how it was found: -1.
func (r *reader) fixtureUndergoes(c *clause, i int, args []item) int {
	it, k := &c.items[i], verbChain(c.items, i)
	if k < 0 || !c.items[k].is(kFixture) {
		return -1
	}
	chain := c.items[k+1 : i]
	done := r.wordIn(chain, "then", "accordingly", "therefore", "also", "so") || r.wordIn(chain, "has", "have") && r.wordIn(chain, "been") || c.mood == planned
	done = done || r.soThen(c, k) && !r.wordIn(chain, "is", "are", "'s")
	if len(args) > 0 {
		done = done || args[0].is(kTo) && !r.wordIn(chain, "is", "are", "'s") || r.wordIn(args, "accordingly", "afterwards", "precaution", "immediately", "at once")
	}
	switch {
	case len(chain) == 0: // "the floor was swept and the entrance reduced"
		if k > 0 && c.items[k-1].isWord4("left", "leave", "leaving", "kept") {
			return -1 // "cleaned the floor and left the entrance reduced"
		}
		if r.under == wereDone && k == 0 {
			return k // "Done", and below it "entrance opened"
		}
		if c.items[0].is(kAnd) && r.spokeOf.deed == r.sentenceNo && it.is(kDo) && !c.kinds.meet(offFixtures) {
			return k
		}
	case hasKind(chain, kBe) && (done || !it.is(kState)) || c.mood == planned && hasKind(chain, kBe):
		return k
	}
	return -1
}

// soThen reports whether what is told from item k on follows from what the sentence told before:
// "wasps were about, so the entrance was reduced".
func (r *reader) soThen(c *clause, k int) bool {
	if k > 0 && c.items[k-1].is(kArt) {
		k--
	}
	lead := r.before(c, k)
	return r.isWord(lead, "so", "and so", "accordingly", "therefore", "hence") && lead.start > r.told[0].start && lead.pause == comma
}

// downTo: the entrance closed "down to a finger's width", or "to one bee wide", is reduced.
func (r *reader) downTo(args []item) bool {
	for k := range args {
		if strings.HasPrefix(args[k].text, "down") || args[k].is(kTo) && r.wordIn(args[k+1:min(len(args), k+6)], "width", "wide", "gap", "slot", "inch") {
			return true
		}
	}
	return false
}

func (f *fitting) cleanFloor() bool {
	swept := f.i > 1 && passive(f.pre[verbChain(f.c.items, f.i)+1:]) && hasFixture(f.reader, f.pre, "floor")
	it := f.lastFixture == "floor" && f.c.items[0].text == "which" && len(f.args) == 0 && f.i > 0 && f.pre[f.i-1].isWord2("i", "we") || f.lastFixture == "floor" && len(f.args) > 0 && f.args[0].isWord2("it", "that") || f.lastFixture == "floor" && strings.HasSuffix(f.text, " clean") // "floor had 30 dead bees, cleaned it"
	return it || strings.Contains(f.text, " floor ") || hasFixture(f.reader, f.args, "floor") || f.wordIn(f.args, "tray", "board") || swept || f.i > 0 && hasFixture(f.reader, f.pre[f.i-1:], "floor")
}

// bothFixtures writes the deed of the second of two: "opened up the floor and the
// entrance".
func (r *reader) bothFixtures(list string, c *clause, d *deed) {
	if !strings.HasPrefix(d.do, "open_") && !strings.HasPrefix(d.do, "close_") {
		return
	}
	verb, first, _ := strings.Cut(d.do, "_")
	other := "entrance"
	if first == other {
		other = "floor"
	}
	for k := d.at + 2; k+1 < len(c.items) && k <= d.at+4; k++ {
		if !c.items[k].is(kAnd) {
			continue
		}
		if k++; c.items[k].is(kArt) && k+1 < len(c.items) {
			k++
		}
		if it := &c.items[k]; it.is(kFixture) && !it.used && r.value(it, kFixture) == other {
			it.used = true
			r.write(list, c, &deed{do: verb + "_" + other, at: d.at, items: []*item{&c.items[d.at], it}, rule: d.rule, due: d.due})
		}
		return
	}
}
