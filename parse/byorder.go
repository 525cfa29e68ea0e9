package parse

// Bars are told by their order alone in some notes: "first one's empty, second's just
// started, third is honey", and some of them by a number, "one's empty, two has eggs". Whether a
// note does so is settled on its first page.

// leastInOrder is how many places in the order that go up one by one tell bars without a
// word for them.
const leastInOrder = 3

// tellsByOrder reports whether the note tells what is on bars by their order alone.
func (r *reader) tellsByOrder(toks []token) bool {
	if r.manner.severalHives || !r.onFront(r.nthIDs...) {
		return false // "the first has eggs" is a hive
	}
	last, run, nths := 0, 0, false
	for i := range toks {
		w := r.numbers.of(toks[i].id)
		if w.kind != ordinalWord && w.kind != unitWord {
			continue // as most words
		}
		if i > 0 && toks[i].pause == none && r.numbers.of(toks[i-1].id).kind == ordinalWord {
			continue // "second one"
		}
		counts := w.kind == ordinalWord || w.kind == unitWord && i+1 < len(toks) && toks[i+1].pause == none && r.says(toks[i+1], "'s", "s", "is", "has", "was", "had")
		if !counts || !r.ranksBar(toks, i) {
			continue
		}
		nths = nths || w.kind == ordinalWord
		switch nth := int(w.value); nth {
		case last:
			continue
		case last + 1:
			run++
		default:
			run = 1
		}
		if last = int(w.value); run >= leastInOrder && nths {
			return true
		}
	}
	return false
}

// ranksBar reports whether a place in the order at token i is that of a bar, as what stands
// behind it tells: "the third one is nectar", not "the third of May", "on the third".
func (r *reader) ranksBar(toks []token, i int) bool {
	if i > 1 && toks[i].pause == none && r.says(toks[i-1], "the") && toks[i-1].pause == none && r.says(toks[i-2], "on", "since", "until", "by") {
		return false
	}
	k := i + 1
	if k < len(toks) && toks[k].pause == none && r.says(toks[k], "one") {
		k++
	}
	for end := min(k+7, len(toks)); k < end && toks[k].pause <= comma; k++ {
		switch told := r.lex.matcher.longest(toks, k, nil).kinds; {
		case told.meet(onComb):
			return true
		case told.meet(offBars) || r.numbers.of(toks[k].id).kind == unitWord || r.numbers.of(toks[k].id).kind == ordinalWord:
			return false
		}
	}
	return false
}

// onComb are the kinds of words for what is on a comb, and offBars of those that are not
// said of one.
var (
	onComb  = setOf(kContent, kComb, kState, kFull)
	offBars = setOf(kOf, kHive, kStrength, kTemper, kStores, kUnit, kDate, kCell, kSign, kMite, kDo)
)

// behindNth are the kinds of words that begin what is told of a bar that is the next in order,
// though they tell nothing of a comb themselves: "fifth now we're getting somewhere".
var behindNth = setOf(kNow, kArt, kQueen, kPron, kShe, kSeen, kUnseen)

// nextNth reports whether a place in the order is that behind the bar named last.
func (r *reader) nextNth(nth int, before []item) bool {
	for k := len(before) - 1; k >= 0; k-- {
		if bars := before[k].bars; len(bars) > 0 {
			return nth == bars[len(bars)-1]+1
		}
	}
	return nth == r.last+1
}
