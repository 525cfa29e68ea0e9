package parse

import (
	"slices"
	"strings"
)

// What stands among the words around a verb: of which kinds they are, and what they mean.

// kindBefore reports whether an item of some kinds stands among the last so many before item i,
// with no pause since that is as great as one.
func kindBefore(items []item, i, among int, end pause, of kinds) bool {
	for k := i - 1; k >= max(0, i-among) && items[k+1].pause < end; k-- {
		if items[k].anyOf(of) {
			return true
		}
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

// beginsAt is the item that begins at an offset of the note; -1 where none does.
func beginsAt(items []item, start int32) int {
	for k := range items {
		if items[k].start == start {
			return k
		}
	}
	return -1
}

// allOf reports whether items are all of some kinds.
func allOf(items []item, some kinds) bool {
	for i := range items {
		if !items[i].anyOf(some) {
			return false
		}
	}
	return true
}

func hasFixture(r *reader, items []item, what string) bool {
	for i := range items {
		if items[i].is(kFixture) && r.value(&items[i], kFixture) == what {
			return true
		}
	}
	return false
}

// looseBars: bars that are counted, not numbered ("two bars", "a bar", "one
// more").
func (r *reader) looseBars(args []item) bool {
	for k := range args {
		if r.emptyBar(&args[k]) {
			return true
		}
		if args[k].is(kBar) && !args[k].is(kBars) {
			return true
		}
		if args[k].any3(kAfter, kOn, kFore) {
			break
		}
		if args[k].is(kNum) && k+1 < len(args) && args[k+1].text == "more" {
			return true
		}
	}
	return false
}

// emptyBar: "an empty bar" that is put in says nothing of a comb.
func (r *reader) emptyBar(it *item) bool {
	return it.is(kComb) && strings.HasSuffix(it.text, " bar")
}

// isWord2 to isWord6 report whether an item is one of just as many words, without a list of
// them.
func (it *item) isWord2(a, b string) bool { return it.text == a || it.text == b }

func (it *item) isWord3(a, b, c string) bool { return it.text == a || it.text == b || it.text == c }

func (it *item) isWord4(a, b, c, d string) bool {
	return it.text == a || it.text == b || it.text == c || it.text == d
}

func (it *item) isWord5(a, b, c, d, e string) bool { return it.isWord3(a, b, c) || it.isWord2(d, e) }

func (it *item) isWord6(a, b, c, d, e, f string) bool {
	return it.isWord3(a, b, c) || it.isWord3(d, e, f)
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

// honeyBars: bars of honey that were taken are a harvest.
func (r *reader) honeyBars(args []item) bool {
	for k := range args {
		if k > 0 && args[k-1].is(kAnd) && args[k].is(kThere) {
			return false // "removed the bar and there was honey down my sleeve"
		}
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
			return k > 0 && args[k-1].any4(kAfter, kFore, kTween, kOn)
		}
	}
	return false
}

// itBar: "it" behind a verb means the bar in hand.
func (r *reader) itBar(args []item) bool {
	if len(r.bars) == 0 {
		return false
	}
	for k := range args {
		if k > 2 {
			break
		}
		if r.isWord(&args[k], r.wordsOf[thatBar]...) {
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
		if args[k].any(kShe, kQueen) && args[k].text != "she" || args[k].isWord2("her", "herself") {
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
