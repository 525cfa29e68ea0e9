package parse

import (
	"slices"
	"strings"

	"barwise/colony"
)

// reader reads one note, line by line, and carries from each to the next which
// hive and bar are in hand.
type reader struct {
	*lexicon
	desk
	memory
}

// memory is what a reader knows of the note in hand.
type memory struct {
	note  tidied
	text  string      // of it
	today colony.Date // of the inspection

	all          []*builder // inspections in the order their hives were named
	byHive       map[string]*builder
	cur          *builder
	pre          []entry           // weather said before the first hive, which holds for each
	sampling     sampling          // told before it too
	named        bool              // a hive has been named
	manner       manner            // in which the note tells
	names        map[string]bool   // proper names that the note uses for hives
	shortNames   map[string]string // which of them are short for which
	onlyName     *namedAt          // if it has but one
	hives        knownHives        // those that are known: the keeper's, and those that running speech tells of
	knownHere    map[int32]string  // the keeper's hives that the page tells of, by where their names begin
	onlyKnown    map[string]bool   // which of the names are told by those alone
	introducedAt []int32           // where running speech introduces one
	unsureNames  map[string]bool   // and for which hardly anything speaks
	initials     letters           // that they begin with
	smallNames   bool              // some are written in lower case
	namesAlone   bool              // some head what is told of a hive from a line of their own
	ones         []calledOne       // hives that it tells by colour or place
	pageHives    pageHives         // of the page in hand

	gifts  []gift // of bars from one hive to another
	atOnce atOnce // of several hives

	bars        []int // the bars in hand
	step        int   // direction of travel, +1 or -1
	last        int   // the last single bar
	skippedTo   int   // the bar behind one that was skipped, until something is said of it
	inHand      inHand
	listing     bool       // the note numbers its bars: a bare number may be a bar
	falls       bool       // the list of bars read last was a range told from its far end
	laid        laidOut    // the rows of bars in the line
	barsCounted bool       // the note counts bars of the hive in hand: "bees on nine bars"
	lastFind    []*finding // what the bar before was said to hold
	heading     mood       // set by a heading such as "Next time:"
	headedHere  bool       // that heads what stands on its own line
	under       under      // the heading of the section in hand, or the box of the line
	sheLast     bool       // the queen was the last subject
	markLast    bool       // so was her mark
	mendedBars  []int      // bars that were corrected aloud in this sentence
	outset      int        // the direction in which a hive is begun: 1 from the front, -1 from the back
	opening     bool       // still in the opening words, where a date is the inspection's
	lastDeed    string
	pauses      []int32 // offsets behind which a timed silence follows

	saidOf        talk
	saidBar       int
	combOf        int  // the bar whose comb was told last, if nothing was told of another since
	sameSentence  bool // the bars in hand were named in this sentence
	stepped       bool
	askedOnly     bool   // the last clause was a question
	told          []item // the sentence
	ahead         []item // the one behind it on the line
	sentenceNo    int    // of the sentence in hand, counted from the beginning of the note
	spokeOf       spokeOf
	headedBars    bool // the bars in hand head what is said, not just place one thing
	cellTalk      bool // queen cells are being spoken of
	mites         miteTalk
	lastFixture   string
	hereColon     bool // "did the test on it:", the bar in hand goes on
	wholeSentence bool // the sentence speaks of the colony as a whole
	lastContent   *finding
	lastCells     *finding
	labelled      *finding // a content at the head of the sentence, with a colon
	lastSign      string
	theirs        mentioned // a sign seen in somebody else's hive
	flowering     mentioned // a plant said to be out, for the load that follows
	cargo         mentioned // the path of what was last said to be carried in
	barLines      barLines
	headed        bool     // a line that is only a name has headed a hive
	site          bool     // nothing but the weather or the day was told of the hive named first
	topic         string   // of a line that begins with "Brood:"
	prevBrood     *finding // the brood named last
	subject       kind     // kBees or kQueen, whichever was spoken of last
	queenWaits    int      // the sentence that named her and said no more
	planDay       *day
	table         table
	form          form
}

// spokeOf are the numbers of the sentences that spoke last of this or that; 0 where none did.
type spokeOf struct {
	temper, deed, queen, bees, cells int

	she     int // with her at the head of a clause
	scale   int // on which the hive stands
	pattern int // of the brood, which has not been told yet
	thatBar int // "on that bar", with which it begins
	noSign  int // of the hive, and denied one
}

// mentioned is something that a sentence told, and the number of that sentence.
type mentioned struct {
	what     string
	sentence int
}

// mentions is something that the sentence in hand tells.
func (r *reader) mentions(what string) mentioned { return mentioned{what, r.sentenceNo} }

// justSaid reports whether the sentence in hand told it.
func (r *reader) justSaid(m mentioned) bool { return m.what != "" && m.sentence == r.sentenceNo }

// desk is what a reader works with and keeps from note to note.
type desk struct {
	lex       lexer
	split     splitter
	toks      []token // of the page
	front     front
	capitals  amidPage
	rows      []row
	parted    []separator // that stand in the note
	lexed     []lexedRow  // some of them
	lexing    []item      // theirs
	room      []token     // for their tokens that are not as they were heard
	mended    []token     // of the line in hand
	lineLists listSet     // in which they stand
	lineSaid  lineWords
	items     []item
	ref       item       // the reference read last
	heard     []sentence // its sentences
	list      []clause   // of them

	spans    arena[colony.Span]
	refs     arena[*item]
	findings arena[finding]
	said     arena[*finding]
	found    []*finding // of the clause in hand
	acts     arena[deed]
	detailed arena[details]
	barLists arena[int]
	strings  interned
	paths    *paths
	fit      fitting
	opener   opener
	mention  mention
	spoken   []spokenAt
	scanner  scan
	askAll   bool // for tests: nothing is passed by
	spare    []*builder
}

// clear forgets the note that was read, and keeps the desk.
func (r *reader) clear() {
	if len(r.all) > mostSpare {
		r.all, r.byHive = nil, map[string]*builder{}
	}
	for _, b := range r.all {
		r.putAway(b)
	}
	clear(r.byHive)
	r.saidOf.forget()
	r.spans.reset()
	r.refs.reset()
	r.findings.reset()
	r.said.reset()
	r.acts.reset()
	r.detailed.reset()
	r.barLists.reset()
	r.paths.reset()
	all, byHive, saidOf := r.all[:0], r.byHive, r.saidOf
	r.memory = memory{}
	r.all, r.byHive, r.saidOf = all, byHive, saidOf
}

// mostSpare is the number of inspections of a note above which what they took
// is not kept: no keeper writes so many into one.
const mostSpare = 256

// builder returns one that has gathered nothing.
func (r *reader) builder() *builder {
	n := len(r.spare)
	if n == 0 {
		return newBuilder(r.paths)
	}
	b := r.spare[n-1]
	r.spare = r.spare[:n-1]
	return b
}

// inHand says how surely the bars in hand are still meant.
type inHand uint8

const (
	noBar    inHand = iota
	thisLine        // named in this line
	thisText        // named in an earlier line, nothing has taken the talk elsewhere
	awaiting        // named, and nothing said of it yet
)

// line reads a row.
func (r *reader) line(l *lexedRow) {
	r.mended, r.lineLists, r.lineSaid = l.toks, l.words, l.said
	r.topic, r.under = "", l.under
	if r.inHand == thisLine && l.first >= line {
		r.inHand = thisText
	}
	if len(l.items) > 0 {
		l.items[0].pause = max(l.items[0].pause, l.first)
	}
	r.listing = r.rowNumber(l.items) || r.listing || l.met.kinds.has(kNum) && numbered(l.items)
	r.laid = r.laid[:0]
	r.items = r.rewrite(l)
	r.headings(l.met.kinds)
	above := r.heading
	r.underHeading()
	r.lastSign, r.cargo = "", mentioned{}
	r.hear()
	for i := range r.heard {
		r.ahead = nil
		if i+1 < len(r.heard) {
			r.ahead = r.heard[i+1].items
		}
		if s := &r.heard[i]; len(r.heard) == 1 || !r.nextVisit(s.items) {
			r.sentence(s)
		}
	}
	if r.under != noHeading {
		r.heading = above
	}
	r.apart()
	r.remark(r.items)
}

// markAll marks every token as one that may begin and go on with anything.
func markAll(toks []token) {
	for i := range toks {
		toks[i].flags |= numeral | leading | following | dating
		toks[i].lists |= 1 << phrases
	}
}

// lookAgain reports whether "look" is to be done, as the words behind it tell: "look at it
// again on Friday".
func lookAgain(behind []item) bool {
	if len(behind) < 3 || behind[0].text != "at" || behind[0].pause > none {
		return false
	}
	for k := 1; k < len(behind) && k <= 5 && behind[k].pause == none; k++ {
		if behind[k].text == "again" {
			return true
		}
	}
	return false
}

// dropFillers leaves out um and er, and hands the pause before them to what
// follows; "well" between an article and "hive" is a name.
func dropFillers(items []item) []item {
	out, dropped := items[:0], none
	for i := range items {
		it := &items[i]
		if it.is(kFill) && !it.is(kSame) && !(it.is(kQueen) && it.has(capital)) {
			if it.any(kStored, kTemper) && len(out) > 0 && (out[len(out)-1].any3(kStores, kBees, kBe) || out[len(out)-1].text == "just") && (it.pause == none || out[len(out)-1].colon) {
				it.kinds = it.kinds.without(setOf(kFill)) // "stores okay"
				out = append(out, *it)
				continue
			}
			if it.is(kDo) && (len(out) > 0 && out[len(out)-1].any4(kPlan, kWill, kTo, kUndone) || lookAgain(items[i+1:])) {
				it.kinds = it.kinds.without(setOf(kFill)) // "I'll look at hive three", not "look, there she is"
				out = append(out, *it)
				continue
			}
			named := i > 0 && it.pause == none && it.has(capital) && items[i-1].has(capital) && it.end-it.start > 2 // "the First Mate"
			if !named && (i == 0 || i+1 >= len(items) || !items[i-1].is(kArt) || !items[i+1].is(kHive)) {
				dropped = max(dropped, it.pause)
				continue
			}
			it.kinds, it.says = kinds{}, senseless
			it.kinds.add(kWord)
		}
		if dropped >= colon {
			it.pause = max(it.pause, dropped)
		}
		dropped = none
		if len(out) == i {
			out = items[:i+1] // in its place already
		} else {
			out = append(out, *it)
		}
	}
	return out
}

// owned are the kinds of words for what a hive, a bar or a queen has.
var owned = setOf(kBees, kQueen, kFixture, kStores, kContent, kCell, kBar, kBrood)

// possessive takes "its", read as "it is" since many leave the apostrophe out, for
// an article where a noun follows: "closed its entrance".
func (r *reader) possessive(items []item) []item {
	for i := 0; i+2 < len(items); i++ {
		it, s := &items[i], &items[i+1]
		if !s.is(kBe) || it.text != "it" || s.start != it.end || r.text[s.start]|0x20 != 's' || items[i+2].pause > none {
			continue // as most words
		}
		if items[i+2].anyOf(owned) || items[i+2].any(kColour, kPlant) && behindIts(items, i) {
			it.kinds, it.says, it.text, it.end, it.to = setOf(kArt), senseless, "its", s.end, s.to
			items = slices.Delete(items, i+1, i+2)
		}
	}
	return items
}

// behindIts reports whether a word that a possessive goes on with stands before item i: "back with
// its yellow pollen".
func behindIts(items []item, i int) bool {
	if i == 0 || items[i].pause > none {
		return false
	}
	before := &items[i-1]
	return before.isWord4("of", "from", "with", "through") || before.is(kBring) && strings.HasSuffix(before.text, " with")
}

// addPauses marks silences of timed words as weak punctuation.
func (r *reader) addPauses(toks []token) {
	if len(r.pauses) == 0 {
		return
	}
	for i := range toks {
		if _, found := slices.BinarySearch(r.pauses, toks[i].start); found && toks[i].pause == none {
			toks[i].pause = comma
		}
	}
}

// firstSentence is how many of some items belong to the first sentence, up to a full stop, and
// the kinds of its words.
func firstSentence(items []item) (n int, met kinds) {
	for n = range items {
		if n > 0 && items[n].pause >= stop {
			return n, met
		}
		met = met.or(items[n].kinds)
	}
	return len(items), met
}

func (r *reader) spanOf(items ...*item) []colony.Span {
	out := r.spans.take(len(items))[:0]
	for _, it := range items {
		if it != nil && it.end > it.start { // a column's heading stands elsewhere
			out = append(out, colony.Span{int(it.start), int(it.end)})
		}
	}
	if len(out) == 0 {
		return nil
	}
	return out
}

// these lists items, with room for a few more.
func (r *reader) these(items ...*item) []*item {
	return append(r.refs.take(len(items) + 3)[:0], items...)
}

func (r *reader) newFinding(f *finding) *finding {
	place := &r.findings.take(1)[0]
	*place = *f
	return place
}

func (r *reader) newDeed(d *deed) *deed {
	place := &r.acts.take(1)[0]
	*place = *d
	return place
}
