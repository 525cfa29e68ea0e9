package parse

import "math/bits"

// question is something that clauses are asked.
type question struct {
	ask func(*reader, *clause)
	of  kinds // only a clause with a word of one of these kinds can have an answer
}

// everyKind is for what does not hang on the kinds of the words.
var everyKind = kinds{^uint64(0), 1<<(kindCount-64) - 1}

// questions are those that a clause is asked by its mood, in their order. Most
// clauses hold a few kinds of words, so most questions are passed by.
var questions = [...][]question{
	asserted: {
		{(*reader).placements, setOf(kComb)},
		{(*reader).swarmed, setOf(kWord)},
		{(*reader).barsIn, setOf(kBar)},
		{(*reader).followerWent, setOf(kFixture)},
		{(*reader).deeds, setOf(kDo, kMeasure, kSubstance, kAfter)},
		{(*reader).namesTaken, setOf(kBars)},
		{(*reader).miteCount, setOf(kMethod, kMite, kMeasure, kDur)},
		{(*reader).sampleGave, setOf(kNum, kWord)},
		{(*reader).queen, setOf(kQueen, kShe, kSeen, kUnseen, kQueenIs, kDot, kColour, kBars, kBut)},
		{(*reader).incoming, setOf(kBring, kForage)},
		{(*reader).fixtures, setOf(kFixture, kState, kUndone, kAfter)},
		{(*reader).followerNow, setOf(kAfter)},
		{(*reader).stores, setOf(kStores)},
		{(*reader).hefted, setOf(kStored)},
		{(*reader).provided, setOf(kHave)},
		{(*reader).plainLeaves, setOf(kLeaf)},
		{(*reader).temper, setOf(kTemper)},
		{(*reader).strength, setOf(kStrength)},
		{(*reader).weather, setOf(kSky, kWind)},
		{(*reader).plantInFlower, setOf(kPlant)},
		{(*reader).weighed, setOf(kMeasure)},
		{(*reader).noneInMine, setOf(kWhole, kThere)},
		{(*reader).finds, scanned},
		{(*reader).afterthoughts, setOf(kNum, kPlant, kMeasure, kColour)},
		{(*reader).nowQueen, setOf(kBees, kBars)},
	},
	past: {
		{(*reader).placements, setOf(kComb)},
		{(*reader).deeds, setOf(kDo, kMeasure, kSubstance)},
		{(*reader).swarmed, setOf(kWord)},
		{(*reader).earlierFindings, setOf(kShe, kQueen, kSeen, kContent, kWord)},
		{(*reader).barsOnly, setOf(kBars)},
	},
	planned: {
		{(*reader).barsIn, setOf(kBar)},
		{(*reader).followerWent, setOf(kFixture)},
		{(*reader).dueBehind, setOf(kDate)},
		{(*reader).deeds, setOf(kDo, kMeasure, kSubstance)},
	},
	unasked: {
		{(*reader).noneInMine, setOf(kSign, kWhole, kThere)},
		{(*reader).barsOnly, setOf(kBars)},
	},
}

// questionsOf tells which questions of each mood a word can be the answer to.
var questionsOf = func() (of [len(questions)]*byKind) {
	for mood, list := range questions {
		of[mood] = byKindOf(len(list), func(row int) kinds { return list[row].of })
	}
	return of
}()

// clause reads one clause by its mood.
func (r *reader) clause(c *clause) {
	if c.mood == planned && c.when != nil && !c.when.ago {
		r.planDay = c.when
	}
	if c.mood == asserted && c.lists.has(scales) {
		r.spokeOf.scale = r.sentenceNo // or a weight is
	}
	list := questions[c.mood] // an answer may change the mood
	for due := r.due(c); due != 0; due &= due - 1 {
		list[bits.TrailingZeros64(due)].ask(r, c)
	}
}

// due are the questions that a clause is to be asked, a bit each.
func (r *reader) due(c *clause) uint64 {
	if r.askAll {
		return 1<<len(questions[c.mood]) - 1
	}
	return questionsOf[c.mood].due(c.kinds)
}

// finds reads what was found; nothing is in a clause that only says what was
// not done.
func (r *reader) finds(c *clause) {
	if !c.undone || c.has(kSeen) || c.has(kUnseen) || c.has(kBars) {
		r.scan(c)
	}
}
