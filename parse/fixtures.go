package parse

import (
	"slices"
	"strconv"
	"strings"
)

// fixtures reads entrance, floor, feeder and follower as they were found.
func (r *reader) fixtures(c *clause) {
	if r.lastFixture == "" && !c.has(kFixture) {
		return
	}
	for i := range c.items {
		it := &c.items[i]
		if it.is(kUndone) && r.lastFixture == "follower" && strings.HasPrefix(it.text, "left it where") {
			r.follower(c, i) // "I meant to move the follower but left it where it was, behind 9"
			continue
		}
		if it.text == "it" && r.lastFixture == "follower" && !hasKind(c.items[:i], kFixture) && r.staysBehind(c, i) {
			r.follower(c, i)
			continue
		}
		leftSo := it.text == "it" && r.lastFixture != "" && i > 0 && c.items[i-1].isWord4("left", "leaving", "found", "kept") || r.lastFixture != "" && (r.stillSo(c, i) || r.hadBeenSo(c, i) || i == 0 && r.whichWasSo(c))
		if !leftSo && !it.is(kFixture) || it.used {
			continue
		}
		what := r.value(it, kFixture)
		if leftSo {
			what = r.lastFixture // "I looked at the entrance and left it open"
		}
		if what == "follower" {
			r.follower(c, i)
			continue
		}
		k := r.stateOf(c, i, what)
		if k < 0 || leftSo && hasKind(c.items[i:k], kFixture) {
			continue
		}
		state := &c.items[k]
		value := r.stateValue(state, what)
		if k > 0 && value == "full" && c.items[k-1].is(kNum) && c.items[k-1].n.share {
			value = "part" // "a half-full feeder"
		}
		r.leaf(what, value, "fixture", "", c.doubt, it, state)
	}
}

// staysBehind: "never got to the follower board, so it's still sitting behind bar nine" tells of the
// follower that was spoken of and not moved.
func (r *reader) staysBehind(c *clause, i int) bool {
	k := i + 1
	for k < len(c.items) && k < i+4 && c.items[k].pause == none && (c.items[k].any3(kBe, kAdv, kNow) || r.isWord(&c.items[k], r.wordsOf[sitting]...)) {
		k++
	}
	moved := strings.HasPrefix(r.lastDeed, "actions.move_follower") && r.spokeOf.deed == r.sentenceNo
	return k > i+1 && !moved && c.next(k-1).is(kAfter) && c.next(k-1).pause == none && (c.next(k).is(kBars) || barNumber(c.next(k)))
}

// stillSo: "I forgot to close the floor, so it's still open" tells of the fixture that
// was spoken of.
func (r *reader) stillSo(c *clause, i int) bool {
	return c.items[i].isWord2("it", "that") && c.next(i).is(kBe) && (strings.HasPrefix(c.next(i+1).text, "still ") && c.next(i+1).is(kState) || c.next(i+1).text == "still" && c.next(i+2).is(kState))
}

// hadBeenSo: "I opened the entrance, it was reduced till now" tells how the fixture was found that a deed
// of this sentence or the one before made otherwise; "closed the floor, it was open again by tea" does not.
func (r *reader) hadBeenSo(c *clause, i int) bool {
	be, state := c.next(i), c.next(i+1)
	if c.items[i].text != "it" || !r.isWord(be, "was", "had been", "has been") || r.spokeOf.deed+1 < r.sentenceNo || !strings.HasPrefix(r.lastDeed, "actions.") {
		return false
	}
	if state.is(kAdv) {
		state = c.next(i + 2) // "it was still shut"
	}
	value := r.stateValue(state, r.lastFixture)
	doing := map[string]string{"open": "open", "reduced": "reduce", "closed": "close"}[value]
	deed := strings.TrimPrefix(r.lastDeed, "actions.")
	if r.lastFixture == "feeder" {
		return value != "" && value != "full" && strings.HasPrefix(deed, "feed")
	}
	return doing != "" && strings.HasSuffix(deed, "_"+r.lastFixture) && !strings.HasPrefix(deed, doing) && !r.wordIn(c.items[i:], "again")
}

// whichWasSo: "I opened the entrance, which had been reduced since October" tells how the fixture right
// before it was found.
func (r *reader) whichWasSo(c *clause) bool {
	if !c.items[0].isWord2("which", "that") || !c.next(0).any(kBe, kHave) {
		return false
	}
	k := 2
	for k < len(c.items) && c.items[k].any(kBe, kAdv) && !c.items[k].is(kState) {
		k++
	}
	if k >= len(c.items) || !c.items[k].is(kState) {
		return false
	}
	which := beginsAt(r.told, c.items[0].start)
	return which > 0 && r.told[which-1].is(kFixture)
}

var fixtureStates = map[string][]string{
	"entrance": {"reduced", "open", "closed"}, "floor": {"open", "closed"}, "feeder": {"part", "full", "empty"},
}

// stateValue is the state among the word's senses that the fixture can have.
func (r *reader) stateValue(it *item, what string) string {
	for _, n := range it.says.rules {
		if rule := &r.rules[n]; rule.Kind == kState {
			for _, s := range fixtureStates[what] {
				if rule.Value == s {
					return s
				}
			}
		}
	}
	if it.is(kNum) && what == "feeder" {
		return "part"
	}
	return ""
}

// stateOf is the item that tells the state of the fixture at item i, -1 where none does.
func (r *reader) stateOf(c *clause, i int, what string) int {
	for k := i + 1; k < len(c.items) && k <= i+5; k++ {
		it := &c.items[k]
		if it.is(kState) && r.stateValue(it, what) != "" && !it.used {
			if it.is(kNo) {
				return -1
			}
			return k
		}
		if it.is(kNum) && it.n.share && what == "feeder" {
			return k
		}
		if !it.any(kBe, kAdv, kArt, kAnd, kFixture, kNow, kHave, kPron, kBees, kThere, kOn, kYes) && !r.isWord(it, "left", "found", "kept", "run", "gone", "ran", "licked", "now", "down", "to", "as") {
			break
		}
	}
	if i > 0 && c.items[i-1].is(kState) && !c.items[i-1].is(kDo) && c.items[i].pause == none && r.stateValue(&c.items[i-1], what) != "" {
		return i - 1
	}
	if k := i - 2; k >= 0 && what == "feeder" && c.items[i-1].text == "in" && c.items[i].pause == none {
		if c.items[k].isWord3("left", "remaining", "still") && k > 0 {
			k--
		}
		if share := &c.items[k]; share.is(kNum) && share.n.share && !r.wordIn(c.items[:k], "i", "we") {
			return k // "they'd left about a third in the feeder"
		}
	}
	// "left the floor open" and "screened floor (open)" stand behind; "open
	// entrance" before.
	return -1
}

// followerNow reads where the follower stands once it was moved: "moved it back one
// bar, so now it's behind ten".
func (r *reader) followerNow(c *clause) {
	if !strings.HasPrefix(r.lastDeed, "actions.move_follower") || r.spokeOf.deed != r.sentenceNo || !c.has(kNow) && !r.wordIn(c.items, "it") {
		return
	}
	verb := 0 // "was behind 5, now moved back one, to stand behind 6"
	for k := range c.items {
		if c.items[k].is(kDo) {
			verb = k
		}
	}
	for k := verb + 1; k < len(c.items); k++ {
		it := &c.items[k]
		if !c.items[k-1].is(kAfter) || !(it.is(kBars) && len(it.bars) == 1 || barNumber(it)) {
			continue
		}
		bar := int(it.n.lo)
		if it.is(kBars) {
			bar, it.taken = it.bars[0], true
		}
		r.cur.put(r.lastDeed+".to", strconv.Itoa(bar), r.why("follower", "", it))
		return
	}
}

// followerFromTo reads both ends of a range of bars along which the follower was moved:
// "from bar 12 to bar 9".
func (r *reader) followerFromTo(c *clause, d *deed, it *item) {
	from, to := slices.Min(it.bars), slices.Max(it.bars)
	if it.falling {
		from, to = to, from
	}
	d.to, it.taken = to, true
	r.followerWas(c, from, it)
}

// followerWas writes where the follower was found that was moved today.
func (r *reader) followerWas(c *clause, bar int, it *item) {
	if c.mood == asserted {
		r.leaf("follower.bar", strconv.Itoa(bar), "follower", "", c.doubt, it)
	}
}

// follower reads the bar that the follower board stands behind, as found.
func (r *reader) follower(c *clause, i int) {
	for k := i + 1; k < len(c.items) && k <= i+6; k++ {
		it := &c.items[k]
		if it.is(kBars) && len(it.bars) == 1 {
			it.taken = true
			r.leaf("follower.bar", formatNumber(float64(it.bars[0])), "follower", "", c.doubt, &c.items[i], it)
			return
		}
		nth := it.any(kNum, kDate) && it.n.ordinal && it.n.lo <= maxBar // "behind the tenth"
		if prev := &c.items[k-1]; barNumber(it) && !nth && prev.any(kAfter, kOn) || nth && (prev.is(kAfter) || prev.is(kArt) && c.items[k-2].is(kAfter)) {
			r.leaf("follower.bar", formatNumber(it.n.lo), "follower", "", c.doubt, &c.items[i], it)
			return
		}
		if it.is(kOf) && (c.items[k-1].is(kSide) || c.items[k-1].text == "back") {
			if next := c.next(k); barNumber(next) {
				r.leaf("follower.bar", formatNumber(next.n.lo), "follower", "", c.doubt, &c.items[i], next)
				return // "follower at back of 12"
			}
			continue
		}
		if !it.any(kBe, kAdv, kAfter, kArt, kOn, kNow, kBees, kWord, kThere, kBar, kFill, kTo, kSeen, kThen, kSide) && !it.isWord5("where", "it", "left", "stayed", "put") && !it.isWord4("tight", "snug", "flush", "hard") {
			return
		}
	}
}
