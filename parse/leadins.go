package parse

import (
	"math/bits"
	"slices"
	"strings"
)

// leadIn is a rule by which a few words right before a reference to bars tell whether it
// begins what is said of them.
type leadIn struct {
	behind kinds // of the item before it
	pause  pause // between the two
	heads  bool  // whether it begins that
	asks   func(barsAt) bool
}

// leadIns are the rules, of which the first that holds tells.
var leadIns = [...]leadIn{
	{everyKind, comma, true, barsAt.isLabel},
	{everyKind, none, false, barsAt.excluded},
	{everyKind, none, false, barsAt.given},
	{everyKind, none, false, barsAt.cellsOff},
	{hangsThere, comma, false, barsAt.bracketed},
	{setOf(kAsk), none, true, barsAt.behindQuestion},
	{setOf(kDo), none, true, barsAt.behindObject},
	{everyKind, anyPause, false, barsAt.likened},
	{setOf(kSame), none, false, barsAt.copied},
	{setOf(kSame), none, false, barsAt.soAre},
	{setOf(kBe), none, false, barsAt.asAre},
	{setOf(kBut), none, false, barsAt.excepted},
	{setOf(kUnsure), none, true, barsAt.behindUntold},
}

// leadInsOf tells which of the rules are for an item.
var leadInsOf = byKindOf(len(leadIns), func(row int) kinds { return leadIns[row].behind })

// leadIn is the first of the rules that holds, nil for none.
func (b barsAt) leadIn() *leadIn {
	pause := b.items[b.i].pause
	for due := leadInsOf.due(b.prev.kinds); due != 0; due &= due - 1 {
		l := &leadIns[bits.TrailingZeros64(due)]
		if (l.pause == pause || l.pause == anyPause) && l.asks(b) {
			return l
		}
	}
	return nil
}

// isLabel: "queen clipped, bar 3: pollen".
func (b barsAt) isLabel() bool { return b.next(0).colon }

// excluded: "eggs on bars three and four, not five".
func (b barsAt) excluded() bool {
	return b.prev.text == "not" && b.i > 1 && (b.before(2).any(kBars, kBut) || b.prev.pause == comma)
}

// given: "hive two gave us bars five and six".
func (b barsAt) given() bool {
	return b.prev.isWord3("up", "us", "me") && b.before(2).text == "gave"
}

// cellsOff: "cut two cells off bar five", "cut two of them off bar five".
func (b barsAt) cellsOff() bool {
	if b.prev.text != "off" || b.prev.pause > none {
		return false
	}
	what := b.before(2)
	return what.is(kCell) || (what.any(kNum, kEach) || strings.HasSuffix(what.text, "them") || what.isWord2("those", "these")) && hasKind(b.items[max(0, b.i-6):b.i-2], kDo)
}

// bracketed: "2 charged (b5)".
func (b barsAt) bracketed() bool { return b.inBrackets(b.next(0)) }

// behindQuestion: "brood is there bar seven …".
func (b barsAt) behindQuestion() bool {
	return b.prev.text == "shall we" || b.prev.is(kSeen) && b.before(2).any3(kContent, kCell, kQueen)
}

// behindObject: "bar 4 curved straightened it bars 5 and 6 cross comb".
func (b barsAt) behindObject() bool {
	return b.hadObject(b.prev) && b.rule(b.prev, kDo).Value != "add_bar"
}

// likened: "the same as five", "same as four for five".
func (b barsAt) likened() bool {
	return b.prev.text == "as" && b.before(2).is(kSame) || b.sameFor(b.items, b.i) >= 0
}

// copied: "b5 ditto b3".
func (b barsAt) copied() bool {
	alone := b.i+1 == len(b.items) || b.next(1).pause >= comma
	return alone && b.prev.isWord3("ditto", "same", "same as")
}

// soAre: "and so are bars six and seven".
func (b barsAt) soAre() bool { return saysSoOf(b.prev) }

// asAre: "bars 4 and 5 are honey, as are 7 and 8".
func (b barsAt) asAre() bool { return asAre(b.items, b.i) }

// excepted: "eggs throughout except bar six".
func (b barsAt) excepted() bool { return b.exceptAt(b.prev) && b.prev.text != "but" }

// behindUntold: "eggs or maybe it's pollen i couldn't tell bar four larvae".
func (b barsAt) behindUntold() bool {
	from := max(0, b.i-12)
	return b.next(1).pause == none && b.next(1).anyOf(toldOfBar) && kindsOf(b.items[from:b.i]).meet(foundThings) && slices.ContainsFunc(tellVerbs, func(verb string) bool { return strings.HasSuffix(b.prev.text, verb) })
}

// toldOfBar are the kinds of words that tell of the bar right before them.
var toldOfBar = foundThings.or(setOf(kBe, kHave, kAmount, kStage, kPattern, kFull, kWord, kNum, kNo))

// hadObject reports whether a verb holds the pronoun that is its object: "straightened it",
// "cut it free".
func (r *reader) hadObject(deed *item) bool {
	for k := deed.from + 1; k < deed.to; k++ {
		if r.says(r.mended[k], "it", "them", "that", "those") {
			return true
		}
	}
	return false
}
