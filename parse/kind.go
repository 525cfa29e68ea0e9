package parse

import (
	"fmt"
	"iter"
	"math/bits"
)

// kind says what role an item plays.
type kind uint8

const (
	noKind kind = iota

	// Grammar: words that hold others together.
	kWord  // any word without a rule
	kArt   // a, an, the, this, her, …
	kAnd   // and, plus, comma between nouns
	kOr    // or, nor
	kBut   // but, only, however: ends a denial
	kThen  // then, so: begins a clause
	kBe    // is, are, was
	kHave  // has, have, had, with
	kWill  // will, shall
	kPron  // i, we, they, it: subjects
	kShe   // she, her
	kOn    // on, in, at, along
	kOf    // of
	kFrom  // from
	kTo    // to, into, onto
	kAfter // after, behind
	kFore  // before, in front of
	kTween // between
	kWithX // with, against
	kAdv   // very, quite, still, just
	kThere // there, here
	kFill  // um, uh, er, well, okay
	kNum
	kDur
	kDate
	kMeasure
	kUnit

	// References.
	kBar   // bar, frame, comb
	kBars  // a reference to numbered bars, made from the above
	kHive  // hive, colony
	kName  // a hive by name, made from the above, or several of them
	kHives // both hives, all three colonies
	kNext  // the next one
	kPrev  // the one before
	kSkip  // skip one
	kSame  // same again, ditto
	kOther // the other side
	kEach  // each, every one of them, both

	// Findings.
	kContent
	kStage
	kCellKind
	kCell
	kPattern
	kBrood // brood pattern, laying pattern
	kAmount
	kFull
	kSide
	kPlace
	kComb
	kQueen
	kQueenIs
	kDot
	kColour
	kSeen
	kUnseen
	kSign
	kBring
	kForage
	kPlant
	kTemper
	kBees
	kStrength
	kStores
	kStored
	kSky
	kWind
	kLeaf
	kMite
	kMethod
	kFixture
	kState
	kDo
	kSubstance

	// Assertion.
	kNo      // no, not, without: denies what follows
	kNot     // not seen, absent: denies what went before
	kUndone  // did not, forgot to: the deed was not done
	kMaybe   // I think, maybe: flags
	kUnsure  // could not tell: nothing is asserted
	kPast    // last time, ago
	kNow     // today, now, still
	kPlan    // need to, going to, next time
	kIf      // if, unless
	kAsk     // should I, is that
	kSay     // the books say, as a rule
	kTheirs  // next door's, my neighbour's
	kWhole   // anywhere, overall, in all
	kRepair  // no sorry, I mean
	kScratch // scratch that
	kEnd     // that's the last one
	kYes     // yes, yeah: an answer

	kindCount
)

var kindNames = map[string]kind{
	"art": kArt, "and": kAnd, "or": kOr, "but": kBut, "then": kThen, "be": kBe, "have": kHave, "will": kWill,
	"pron": kPron, "she": kShe, "on": kOn, "of": kOf, "from": kFrom, "to": kTo, "after": kAfter, "before": kFore,
	"between": kTween, "with": kWithX, "adv": kAdv, "there": kThere, "fill": kFill, "unit": kUnit, "word": kWord,
	"bar": kBar, "hive": kHive, "hives": kHives, "next": kNext, "prev": kPrev, "skip": kSkip, "same": kSame, "other side": kOther, "each": kEach,
	"content": kContent, "stage": kStage, "cell kind": kCellKind, "cell": kCell, "pattern": kPattern, "brood pattern": kBrood,
	"amount": kAmount, "full": kFull, "side": kSide, "place": kPlace, "comb": kComb, "queen": kQueen, "queen is": kQueenIs,
	"dot": kDot, "colour": kColour, "seen": kSeen, "unseen": kUnseen, "sign": kSign, "bring": kBring, "forage": kForage,
	"plant": kPlant, "temper": kTemper, "bees": kBees, "strength": kStrength, "stores": kStores, "stored": kStored,
	"sky": kSky, "wind": kWind, "leaf": kLeaf, "mite": kMite, "method": kMethod, "fixture": kFixture, "state": kState,
	"do": kDo, "substance": kSubstance,
	"no": kNo, "not": kNot, "undone": kUndone, "maybe": kMaybe, "unsure": kUnsure, "past": kPast, "now": kNow,
	"plan": kPlan, "if": kIf, "ask": kAsk, "say": kSay, "theirs": kTheirs, "whole": kWhole, "repair": kRepair,
	"scratch": kScratch, "yes": kYes, "end": kEnd,
}

// UnmarshalText reads the kind's name in the rule files.
func (k *kind) UnmarshalText(text []byte) error {
	known, ok := kindNames[string(text)]
	if !ok {
		return fmt.Errorf("unknown kind %q", text)
	}
	*k = known
	return nil
}

// grammatical kinds hold words together; they are listed without phrases of
// their own, since every phrase tests them.
func (k kind) grammatical() bool { return k < kBars || k == kHive || k == kUnit }

// kinds is a set of kinds, a bit each. It is a struct and no array since the
// compiler keeps a struct in registers: asking for a kind that is known when
// the program is built then costs a single test, and the parser asks hundreds
// of times per word.
type kinds struct{ low, high uint64 }

// setOf is the set of some kinds. Where an item is asked for many kinds, or very
// often, the set is made once and not by [item.any] each time.
func setOf(list ...kind) kinds {
	var set kinds
	for _, k := range list {
		set.add(k)
	}
	return set
}

// add puts a kind into the set. A shift by 64 or more leaves nothing, and so does
// one by a number below zero, which wraps around: only one half changes.
func (s *kinds) add(k kind) {
	s.low |= 1 << k
	s.high |= 1 << (k - 64)
}

// has reports whether a kind is in the set; again only one half can answer.
func (s kinds) has(k kind) bool { return (s.low>>k|s.high>>(k-64))&1 != 0 }

func (s kinds) hasOne(list []kind) bool {
	for _, k := range list {
		if s.has(k) {
			return true
		}
	}
	return false
}

// two is the set of two kinds.
func two(a, b kind) kinds { return kinds{1<<a | 1<<b, 1<<(a-64) | 1<<(b-64)} }

func (s kinds) or(t kinds) kinds { return kinds{s.low | t.low, s.high | t.high} }

func (s kinds) without(t kinds) kinds { return kinds{s.low &^ t.low, s.high &^ t.high} }

// meet reports whether two sets have a kind in common.
func (s kinds) meet(t kinds) bool { return s.low&t.low|s.high&t.high != 0 }

// each goes through the kinds of a set.
func (s kinds) each() iter.Seq[kind] {
	return func(yield func(kind) bool) {
		for half := s.low; half != 0; half &= half - 1 {
			if !yield(kind(bits.TrailingZeros64(half))) {
				return
			}
		}
		for half := s.high; half != 0; half &= half - 1 {
			if !yield(kind(64 + bits.TrailingZeros64(half))) {
				return
			}
		}
	}
}

func kindsOf(items []item) (set kinds) {
	for i := range items {
		set = set.or(items[i].kinds)
	}
	return set
}

// with is the gist of one item more. It is handed on and not changed in its place, which keeps
// it in registers.
func (g gist) with(it *item) gist {
	return gist{g.kinds.or(it.kinds), g.lists | it.lists, g.asked || it.asked}
}

func (f *figure) kinds() kinds {
	if f.kind == kNum {
		return numberKinds(f.n)
	}
	return setOf(f.kind)
}
