// Package parse reads a beekeeper's note, typed or dictated, into the
// inspections that it tells of.
//
// A note goes through these stages, a line at a time:
//
//	text        spaces, quotes, line ends and locked capitals as the rules expect them
//	            (tidy.go, shouted.go)
//	tokens      words, numbers and pauses with their offsets (token.go, figures.go); slips
//	            of the finger in a word of the trade (slips.go); the rows of a
//	            table with their headings (table.go, tablerows.go), of a form with
//	            their labels (form.go); headings on lines of their own, and boxes to tick
//	            (sections.go)
//	mending     misheard words and shorthand where the context makes sure of
//	            them (misheard.go)
//	items       numbers, dates, measures and the ways of saying of the rule
//	            files, longest first (lexer.go, match.go, number.go, date.go)
//	rewriting   the items of a line are put as notes put them, by the table of
//	            rewrites.go, row by row: the next five stages stand in it
//	statements  parted where they run on without a stroke (runon.go) or are
//	            complete behind a comma (wholefinding.go)
//	references  which bars and hives are named, a bare number included
//	            (refer.go, layout.go, barlists.go, barenumber.go, hives.go);
//	            several hives at once, and one named before (severalhives.go,
//	            hiveagain.go, letters.go). Which capitals name hives is settled
//	            over the first page: runs of words that may be a name
//	            (nameruns.go) are weighed by what stands around them (names.go,
//	            mention.go, nameleads.go, namestands.go) and chosen together
//	            (namechoice.go)
//	turns       what is told with its words turned about: bars that went
//	            somewhere, what I did to it, a place before its bar (barswent.go,
//	            fronted.go, turnedabout.go, placefirst.go)
//	answers     "Queen cells: N", "Eggs - yes" (answers.go), "Did I see her? I did
//	            not" (selfasked.go)
//	repairs     "bar five no sorry bar six", "scratch that" (repair.go, replace.go)
//	clauses     where a statement begins, with punctuation or without, and how
//	            it is meant: asserted, planned, past, or not asserted (begins.go,
//	            only.go, thenandnow.go, heads.go, leadins.go, placings.go, clause.go,
//	            moodends.go)
//	findings    what each clause says: the combs (scan.go and the files it
//	            leans on), the queen, the colony, mites, weather, deeds
//	assembly    leaves with their evidence, conflicts flagged, the residue kept
//	            as remarks (finding.go, build.go, remarks.go)
//
// Finding a thing and judging it are separate. The words of the trade, the cues
// and the mishearings stand in rules/*.toml, each rule with phrases that it
// must hit and phrases that it must not, and so do the lists of words that the
// code asks about (lists.go). The code itself names a word where that word
// alone decides between two readings.
// Punctuation may be missing entirely: a bar, a subject with its verb, a deed
// or a cue ends a clause.
//
// Promises: the same note gives the same reading; no note makes the parser
// panic; every leaf points at its words in [colony.Inspection.Evidence]; what
// is unsure is in Check, and what no rule used is in Remarks. An error means
// that the rules are broken, never that a person spoke oddly.
package parse
