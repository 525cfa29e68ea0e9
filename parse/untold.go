package parse

import (
	"slices"
	"strings"
)

// takeBackUntold: "bar 8 nectar or syrup, couldn't tell" asserts neither, and "thought
// I had the queen but that was a drone" no queen.
func (r *reader) takeBackUntold(list []clause) {
	for i := 1; i < len(list); i++ {
		c, told := &list[i], &list[i-1]
		switch {
		case told.mood == asserted && c.items[0].is(kBut) && strings.HasPrefix(told.items[0].text, "thought"):
			told.mood, told.cue = unasked, told.items[0].text
		case told.mood == asserted && c.items[0].pause == comma && r.heardOf(c.items):
			told.mood, told.cue = unasked, c.items[0].text
		case told.mood == asserted && c.items[0].is(kTheirs) && c.items[0].pause == comma && told.has(kSign) && told.items[len(told.items)-1].has(capital):
			told.mood, told.cue = unasked, c.cue // "foulbrood at Long Acre, three miles off"
		case c.mood == unasked && c.items[0].pause <= comma && r.untold(c.items):
			for k := i - 1; k >= 0 && list[k].mood == asserted && !list[k].kinds.meet(surely); k-- {
				list[k].mood, list[k].cue = unasked, c.cue
				if !list[k].items[0].any(kMaybe, kOr) {
					break
				}
			}
		}
	}
}

// othersBees takes the owner at the head of a sentence for what tells that it is of
// somebody else's bees: "Alma's lot are queenless", "Bert has wax moth. None here."
func (r *reader) othersBees(items []item) {
	first := &items[0]
	if len(items) < 3 || !first.any3(kWord, kOn, kArt) {
		return
	}
	if r.titled(items) > 0 || r.peopleHave(items) {
		first.kinds = setOf(kTheirs)
		return
	}
	lot := first.has(capital) && items[1].text == "'s" && items[2].text == "lot" ||
		r.mended[first.from].id == idUnknown && strings.HasSuffix(first.text, "s") && items[1].text == "lot"
	if lot || first.has(capital) && r.contrasted(r.mended, int(first.to)) || items[1].text == "'s" && r.isAsked(first) {
		first.kinds = setOf(kTheirs)
	}
}

// peopleHave reports whether the people that some items begin with are told to have what bees have:
// "Old Mr Tibbs has varroa", "The Hendersons have wax moth", and not "Mr Tibbs has a look".
func (r *reader) peopleHave(items []item) bool {
	i := 0
	if items[i].isWord3("old", "the", "poor") {
		i++
	}
	titled := items[i].lists.has(personTitles)
	if titled {
		i++
	}
	if i+2 >= len(items) || !items[i].has(capital) || items[i].is(kName) {
		return false
	}
	family := items[0].text == "the" && r.mended[items[i].from].id == idUnknown && strings.HasSuffix(items[i].text, "s") && items[i+1].isWord2("have", "had")
	if hasKind(items, kBars) || !family && !(titled && items[i+1].isWord4("has", "had", "lost", "keeps")) {
		return false
	}
	return items[i+2].any6(kSign, kMite, kCell, kContent, kNum, kBees) || i+3 < len(items) && items[i+2].any3(kArt, kAmount, kNo) && items[i+3].any5(kSign, kMite, kCell, kContent, kHive)
}

// isAsked reports whether an item is a given name and the page has somebody of that name asked, so
// that it is a person's whatever the letters: "i'll have to ask gwen … gwen's swarmed on tuesday".
func (r *reader) isAsked(it *item) bool {
	if it.to != it.from+1 || !r.givenNames.has(r.mended[it.from].id) {
		return false
	}
	for k := 1; k < len(r.toks); k++ {
		if t := &r.toks[k]; t.id == r.mended[it.from].id && t.pause == none && r.says(r.toks[k-1], r.wordsOf[addressing]...) {
			return true
		}
	}
	return false
}

// titled is the item behind "Mrs Abney's bees" or "at Mr Abney's" at the head of some
// items; 0 where they begin otherwise.
func (r *reader) titled(items []item) int {
	i := 0
	if items[0].is(kOn) {
		i = 1
	}
	if i+3 >= len(items) || !items[i].lists.has(personTitles) || !items[i+1].has(capital) || items[i+2].text != "'s" {
		return 0
	}
	if i > 0 || items[i+3].text == "lot" || items[i+3].any3(kBees, kHive, kHives) {
		return i + 3
	}
	return 0
}

// heardOf reports whether nothing is said but that one has it from others: "…, I hear".
func (r *reader) heardOf(items []item) bool {
	return len(items) == 1 && r.isWord(&items[0], r.wordsOf[hearsay]...)
}

// untold reports whether nothing is said but that one could not tell.
func (r *reader) untold(items []item) bool {
	if items[0].is(kPron) {
		items = items[1:]
	}
	if len(items) == 0 || !items[0].is(kUnsure) || !slices.ContainsFunc(tellVerbs, func(verb string) bool { return strings.Contains(items[0].text, verb) }) {
		return false // "drones present, not counted"
	}
	return len(items) == 1 || len(items) == 2 && items[1].isWord6("you", "which", "which one", "really", "either", "for sure")
}

// tellVerbs are the verbs of what nobody could tell.
var tellVerbs = []string{"tell", "say", "sure", "idea", "make out", "judge", "know"}

// surely are the kinds of what is known, whatever else in the clause is not.
var surely = setOf(kDo, kQueen, kTemper, kNo)
