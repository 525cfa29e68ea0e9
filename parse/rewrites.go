package parse

import "math/bits"

// rewrite puts what a line tells in one way as notes tell it in another. It is looked for only
// where the words are that it needs, since most lines have little of what could be rewritten.
type rewrite struct {
	all   kinds                                // that the line must have
	any   kinds                                // of which it must have one, if there are some
	more  kinds                                // and one of these
	list  listSet                              // and a word of these lists
	said  lineWords                            // and one of these words
	when  func(r *reader, l *lexedRow) bool    // and must answer to this
	put   func(r *reader, items []item) []item // rewrites it
	amend func(r *reader, items []item)        // does so in place
}

// rewrites stand in the order in which they are made: each reads what those before it have put.
var rewrites = []rewrite{
	{put: (*reader).nameHives},
	{put: (*reader).nameOnes},
	{amend: (*reader).runOn},
	{all: setOf(kNum), any: setOf(kContent, kCell), amend: ofItems(headings)},
	{all: setOf(kNum), any: whatWords, amend: (*reader).layout},
	{all: setOf(kBar, kNum), put: (*reader).apposed},
	{any: referring, put: (*reader).refer},
	{any: referring, said: saysNothing, amend: (*reader).barNothing},
	{any: referring, list: 1 << ofTwo, put: (*reader).oneOfTwo},
	{all: setOf(kOf, kOn), any: referring, put: (*reader).nthOfMany},
	{all: setOf(kAdv), any: referring, put: (*reader).alsoOn},
	{any: leadingBack, when: leadsToHive, amend: (*reader).namedAgain},
	{any: setOf(kBe, kHave), more: setOf(kWord, kPlant), when: hivesHead, amend: (*reader).headedAgain},
	{when: hivesHead, put: (*reader).labelledAgain},
	{all: setOf(kHave, kBar, kFrom), amend: (*reader).gotBars},
	{put: (*reader).several},
	{when: speaksOfHives, put: (*reader).oneByOne},
	{all: setOf(kNot), any: setOf(kCell, kSign, kContent), when: namesHive, put: (*reader).noneElsewhere},
	{put: (*reader).placeHives},
	{all: setOf(kDo, kTo), amend: (*reader).movesOn},
	{all: setOf(kBar), list: 1 << going, put: (*reader).barsWent},
	{all: setOf(kTo, kBar), amend: (*reader).barsToGo},
	{all: setOf(kTo, kSubstance), amend: (*reader).foodToGo},
	{all: setOf(kTo, kBar), when: namesHive, put: (*reader).barsTo},
	{all: setOf(kPron, kDo), any: thing, amend: (*reader).fronted},
	{all: setOf(kPron, kSeen), amend: (*reader).frontedSight},
	{all: setOf(kHave), any: fedOn, more: setOf(kAmount, kStored), amend: (*reader).frontedStores},
	{all: setOf(kNum), any: ofMites, amend: ofItems(boardLabels)},
	{all: setOf(kNum), any: ofMites, amend: (*reader).boardGave},
	{all: setOf(kNum, kMethod), amend: (*reader).boardTally},
	{all: setOf(kMethod), any: setOf(kDo, kAfter), amend: (*reader).boardMoved},
	{all: setOf(kUnit), amend: (*reader).placedCups},
	{all: setOf(kNum), any: countedTimes, put: (*reader).countedBehind},
	{any: setOf(kOn, kBring), more: setOf(kContent, kForage), amend: (*reader).carriedIn},
	{all: setOf(kNum, kStage, kCell), put: (*reader).cellsCalled},
	{all: setOf(kDo), any: countedOrWeighed, put: (*reader).deedLabels},
	{all: setOf(kDo, kMeasure, kSubstance), amend: (*reader).feedOf},
	{all: setOf(kDo), said: saysCame, amend: (*reader).cameOut},
	{all: setOf(kDo), said: saysOut, put: (*reader).turnedOut},
	{all: setOf(kMethod, kSubstance), amend: (*reader).sugarFor},
	{all: setOf(kContent), amend: ofItems(plainNest)},
	{all: setOf(kBar, kNum, kContent, kOf), amend: ofItems(barsCountedBehind)},
	{all: setOf(kOn), any: ofSought, said: saysFor, put: (*reader).soughtItems},
	{all: setOf(kPron, kContent), said: saysIt, amend: (*reader).ofIt},
	{any: setOf(kStage, kBar, kThen), more: setOf(kOf, kAmount, kThen, kBe), said: saysWhich, put: (*reader).relatives},
	{all: setOf(kBar), any: setOf(kQueen, kShe), amend: (*reader).crossesBar},
	{any: setOf(kContent, kCell, kSign, kQueen), said: saysWhat, when: turned, put: (*reader).foundThere},
	{any: setOf(kContent, kCell, kSign, kQueen), when: turned, put: (*reader).turnAbout},
	{when: asks, put: (*reader).selfAsked},
	{when: mayAnswer, put: (*reader).answers},
	{when: takesBack, put: (*reader).repair},
	{all: setOf(kDur, kThen, kDo), put: (*reader).lookAfter},
	{all: setOf(kDur), any: setOf(kDo, kSeen), amend: (*reader).sinceDone},
	{list: 1 << inOrder, put: (*reader).respectively},
	{any: unstopping, amend: (*reader).unstopped},
}

// ofItems is one that needs nothing of the reader.
func ofItems(amend func(items []item)) func(*reader, []item) {
	return func(_ *reader, items []item) { amend(items) }
}

// rewrite makes the rewrites that a line may need.
func (r *reader) rewrite(l *lexedRow) []item {
	items := l.items
	for due := rewritesFor.due(l.met.kinds); due != 0; due &= due - 1 {
		switch w := &rewrites[bits.TrailingZeros64(due)]; {
		case w.more != kinds{} && !l.met.kinds.meet(w.more), w.list != 0 && l.met.lists&w.list == 0, w.said != 0 && l.said&w.said == 0, w.when != nil && !w.when(r, l):
		case w.put != nil:
			items = w.put(r, items)
		default:
			w.amend(r, items)
		}
	}
	return items
}

// rewritesFor tells which rewrites lines are looked through for.
var rewritesFor = func() (f rewriteRows) {
	f.any = byKindOf(len(rewrites), func(row int) kinds { return rewrites[row].any })
	f.all = byKindOf(len(rewrites), func(row int) kinds { return rewrites[row].all })
	f.needed = f.all.all()
	for row := range rewrites {
		if rewrites[row].any == (kinds{}) {
			f.free |= 1 << row
		}
	}
	return f
}()

// rewriteRows are the rows of a table of rewrites by what they need, a bit each.
type rewriteRows struct {
	any, all *byKind // those of which one kind must be there, and each of which must
	needed   kinds   // of which one must each be there
	free     uint64  // the rows that need no kind of any
}

// due are the rows for a line with words of some kinds: those of which it lacks nothing.
func (f *rewriteRows) due(met kinds) uint64 {
	return (f.any.due(met) | f.free) &^ f.all.due(f.needed.without(met))
}

// namesHive reports whether a line may name a hive.
func namesHive(r *reader, l *lexedRow) bool { return l.met.kinds.has(kHive) || len(r.names) > 0 }

// leadsToHive reports whether it may lead back to a hive that was named.
func leadsToHive(r *reader, l *lexedRow) bool { return l.met.kinds.has(kHive) || len(r.byHive) > 0 }

// speaksOfHives reports whether it may be told of hives in turn.
func speaksOfHives(r *reader, l *lexedRow) bool {
	return l.met.kinds.has(kHive) || len(r.byHive) > 1 || len(r.names) > 1 || r.atOnce.last != nil
}

// hivesHead reports whether hives of its page are named at the heads of sentences.
func hivesHead(r *reader, _ *lexedRow) bool { return len(r.hivesOfPage().before) > 0 }

// asks reports whether it asks something.
func asks(_ *reader, l *lexedRow) bool { return l.met.asked || l.met.kinds.has(kAsk) }

// mayAnswer reports whether it may answer what was asked.
func mayAnswer(_ *reader, l *lexedRow) bool { return l.met.asked || l.met.lists&anyAnswer != 0 }

// takesBack reports whether it may take something back.
func takesBack(_ *reader, l *lexedRow) bool {
	met := l.met.kinds
	return met.meet(mending) || met.has(kComb) && met.has(kBar) || met.has(kBut) && met.has(kMaybe)
}

// turned reports whether it may be turned about.
func turned(_ *reader, l *lexedRow) bool {
	met := l.met.kinds
	return met.meet(turning) || met.has(kOf) && met.meet(two(kThere, kNo)) || met.has(kBe) && met.has(kSeen)
}
