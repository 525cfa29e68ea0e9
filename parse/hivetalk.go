package parse

// stretch is how far the talk behind a name is followed: so many words, and not beyond
// the last of so many pauses of a strength.
type stretch struct {
	words  int
	pause  pause
	pauses int
}

var (
	ownSentence   = stretch{words: 8, pause: stop, pauses: 1}
	nextSentences = stretch{words: 40, pause: stop, pauses: 3}
	ownLine       = stretch{words: 30, pause: line, pauses: 1}
	ownParagraph  = stretch{words: 25, pause: blank, pauses: 1}
)

// talksOfHive reports whether the words from k on soon speak of what is found in a
// hive. The pause before k itself ends nothing.
func (r *reader) talksOfHive(toks []token, k int, within stretch) bool {
	left := within.pauses
	for i := k; i < len(toks) && i < k+within.words; i++ {
		if i > k && toks[i].pause >= within.pause {
			left--
		}
		if left == 0 {
			return false
		}
		if r.weighSaid(toks, i) > 0 || i > k && r.barsInUse(toks, i) {
			return true
		}
	}
	return false
}

// barsInUse reports whether it is told at token k how many bars are in use: "Eleven bars in use".
func (r *reader) barsInUse(toks []token, k int) bool {
	return k+2 < len(toks) && toks[k+1].pause == none && toks[k+2].pause == none && r.barNouns.has(toks[k].id) && r.isNumber(&toks[k-1]) && (r.says(toks[k+1], "in") && r.says(toks[k+2], "use") || r.says(toks[k+1], "covered", "drawn"))
}

// weighSaid weighs what begins at a word that is said of a name.
func (r *reader) weighSaid(toks []token, k int) int {
	for _, n := range r.lex.matcher.longest(toks, k, nil).rules {
		switch r.kindOf[n] {
		case kTemper, kStrength, kStores, kBees, kDo, kSign:
			return enough
		case kQueen, kContent, kMite, kCell:
			return enough - 1
		case kLeaf:
			if id := r.rules[n].ID; id != "stung-once" && id != "stung-twice" && id != "no-stings" && id != "drones" {
				return enough
			}
		}
	}
	if r.says(toks[k], "weighed", "weighs") {
		return enough
	}
	return 0
}

// ofMine reports whether a line begins with a name and what its bees did to the writer,
// or the writer with them: "Sorrel went for me", "Heron I did not open".
func (r *reader) ofMine(toks []token, i, end int) bool {
	if i > 0 && toks[i].pause < line || end >= len(toks) || toks[end].pause > comma || toks[end].lists.has(handles) || r.plural(toks, end) {
		return false
	}
	mine := toks[end].pause == none && r.says(toks[end], "i", "we") && end+1 < len(toks) && toks[end+1].lists.has(keeping)
	return (mine || r.doneToMe(toks, end)) && r.talksOfHive(toks, end, ownParagraph)
}

// doneToMe reports whether what a hive does to its keeper is told of a name: "Sorrel went
// for me", "Sorrel has paid me back".
func (r *reader) doneToMe(toks []token, end int) bool {
	verb := end
	if verb < len(toks) && toks[verb].pause == comma { // "Sorrel, I fear, went for me"
		for verb++; verb < len(toks) && verb < end+5 && toks[verb].pause == none; verb++ {
		}
		if verb >= len(toks) || toks[verb].pause != comma {
			return false
		}
	}
	for k := verb + 1; k < len(toks) && k <= verb+5 && toks[k].pause == none && toks[verb].lists.has(moving); k++ {
		if r.says(toks[k], "me", "us") && (k <= verb+2 || r.says(toks[k-1], "on", "at", "for")) {
			return true
		}
	}
	return false
}
