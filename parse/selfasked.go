package parse

import (
	"slices"
	"strings"
)

// longestReply is how many items the answer to a question may have.
const longestReply = 5

// selfAsked turns a question that the writer answers at once into what it says:
// "Did we find eggs? We did", "Was the queen about? Not a sign of her". A no takes the
// place of the verb that asks, and so does nothing of a yes.
func (r *reader) selfAsked(items []item) []item {
	turnedAbout(items)
	r.askedAloud(items)
	for k := 1; k < len(items); k++ {
		if !items[k-1].asked || items[k].pause < stop {
			continue
		}
		from := sentenceStart(items, k-1)
		if k-from < 2 || !r.asksOfHive(items[from:k]) {
			continue
		}
		yes, no, end := r.reply(items, k)
		if sees := &items[from+1]; (yes || no) && sees.is(kWord) && r.isWord(sees, r.wordsOf[detecting]...) {
			sees.kinds, sees.says = setOf(kSeen), r.seen
		}
		switch {
		case no:
			ask := &items[from]
			ask.kinds, ask.says, ask.used = setOf(kNo), r.denial, false
			items[k-1].asked = false
			items = r.dropReply(items, k, end, stop)
		case yes && end < len(items) && items[end].pause < stop && r.asksAbout(items[end:]):
			// "Yes, it is, one sealed cell on bar seven" says all itself
		case yes:
			items[k-1].asked = false
			items[from+1].pause = items[from].pause
			items = r.dropReply(items, k, end, comma)
			items = slices.Delete(items, from, from+1)
			k--
		}
	}
	return items
}

// turnedAbout takes "is there" for no question behind what it is said of: "eggs are there
// larvae also is there and the queen".
func turnedAbout(items []item) {
	for k := 1; k < len(items); k++ {
		it := &items[k]
		if !it.is(kAsk) || it.pause > none || !strings.HasSuffix(it.text, " there") || it.asked {
			continue
		}
		of := k - 1
		if of > 0 && items[of].is(kAdv) && items[of].pause == none {
			of--
		}
		if items[of].any3(kContent, kQueen, kCell) && !items[of].any(kThere, kAsk) && (of == 0 || !items[of-1].is(kAsk)) {
			it.kinds = it.kinds.without(setOf(kAsk)).or(setOf(kThere))
		}
	}
}

// askedAloud parts a question from its answer where speech has no marks: "did I see the
// queen no I did not and I looked on all of them".
func (r *reader) askedAloud(items []item) {
	for ask := range items {
		if !items[ask].is(kAsk) {
			continue
		}
		if r.tagged(items, ask) {
			continue
		}
		told := ask > 0 && items[ask].pause == none && items[ask-1].anyOf(notAsked)
		for k := ask + 1; k+1 < len(items) && k <= ask+longestReply && items[k].pause == none; k++ {
			if items[k].is(kYes) && items[k+1].pause == none && items[k+1].anyOf(seenToBe) {
				items[ask].pause, items[k-1].asked, items[k].pause = max(items[ask].pause, stop), true, stop // "bar four is that yeah eggs", "is that honey no it's nectar"
				break
			}
			if told || k < ask+2 || k+2 >= len(items) {
				continue
			}
			if items[k].is(kNo) && strings.HasPrefix(items[k+1].text, "no ") {
				items[k-1].asked, items[k].pause, items[k+1].pause = true, stop, stop // "has anyone been stung no no stings"
				break
			}
			if items[k].any(kNo, kYes) && items[k+1].is(kPron) && items[k+2].anyOf(auxiliary) {
				items[k-1].asked, items[k].pause = true, stop
				if end := replyEnd(items, k+2); end < len(items) {
					items[end].pause = max(items[end].pause, stop)
				}
				break
			}
		}
	}
}

// tagged reports whether a question hangs on what was said and asks nothing, "that's supersedure isn't it one
// capped cell on bar four", and parts what comes behind it.
func (r *reader) tagged(items []item, k int) bool {
	tag, next := &items[k], at(items, k+1)
	if k == 0 || tag.pause > comma || tag.asked || !strings.HasPrefix(tag.text, "isn't ") {
		return false
	}
	ends := k+1 == len(items) || next.pause > none || next.is(kBars)
	if !ends && !r.wholeFinding(items, k+1) {
		return false
	}
	tag.kinds = setOf(kAdv)
	if !ends {
		next.pause = comma
	}
	return true
}

// seenToBe are the kinds of words that tell at once what a thing in question is.
var seenToBe = setOf(kContent, kStage, kCell, kCellKind, kSign, kAmount)

// replyEnd is the item behind the verb of an answer, and its denial.
func replyEnd(items []item, k int) int {
	for k < len(items) && items[k].pause == none && items[k].anyOf(auxiliary) {
		k++
	}
	return k
}

// dropReply takes out the words of an answer, and parts what follows it from the
// question by a pause.
func (r *reader) dropReply(items []item, k, end int, p pause) []item {
	if end < len(items) && items[end].pause < stop {
		items[end].pause = p
	}
	return slices.Delete(items, k, end)
}

// asksOfHive reports whether a question asks for something that can be there or
// not, with the verb that asks at its head.
func (r *reader) asksOfHive(items []item) bool {
	first := &items[0]
	if !first.any3(kAsk, kBe, kHave) && !first.isWord3("any", "did", "had") {
		return false
	}
	text := first.text
	for _, opening := range []string{"how", "what", "why", "where", "when", "who", "should", "could", "would", "can", "may", "shall", "will", "must", "might", "do ", "does", "am "} {
		if strings.HasPrefix(text, opening) {
			return false
		}
	}
	return r.asksAbout(items)
}

// asksAbout reports whether a sentence names something that can be there or not.
func (r *reader) asksAbout(items []item) bool {
	for k := range items {
		if k > 0 && items[k].pause >= stop {
			break
		}
		if items[k].anyOf(askable) {
			return true
		}
	}
	return false
}

// askable are the kinds of what a question can be about.
var askable = setOf(kQueen, kShe, kContent, kCell, kSign, kMite, kBring, kComb)

// reply reads the answer that begins at item k and reports where it ends.
func (r *reader) reply(items []item, k int) (yes, no bool, end int) {
	end = k + 1
	for end < len(items) && items[end].pause < comma {
		end++
	}
	words := items[k:end]
	if len(words) == 1 && end < len(items) && items[end].pause == comma && (words[0].any3(kNo, kYes, kNot) || words[0].lists.has(noAnswers) || words[0].lists.has(yesAnswers)) {
		if _, again, last := r.reply(items, end); again == words[0].any(kNo, kNot) && (again || !words[0].any(kNo, kNot)) && r.bareReply(items[end:last]) {
			return !again, again, last // "No, we did not"
		}
		return !words[0].any(kNo, kNot) && !words[0].lists.has(noAnswers), words[0].any(kNo, kNot) || words[0].lists.has(noAnswers), end
	}
	switch first := &words[0]; {
	case len(words) > longestReply:
	case first.is(kNum) && barNumber(first) && (len(words) == 1 || words[1].is(kOf)):
		first.pause = comma // "Two of the rascals" goes on as their number
		return true, false, k
	case r.bareReply(words):
		last := &words[len(words)-1]
		no = last.any4(kNo, kNot, kUndone, kUnseen) || last.text == "not"
		return !no, no, end
	case first.any3(kNo, kNot, kUnseen) && !hasAnyOf(words, saysMore):
		return false, true, end // "Not a trace", "None at all", "Not this time"
	}
	return false, false, end
}

// saysMore are the kinds of words with which an answer tells of something else.
var saysMore = setOf(kContent, kCell, kSign, kMite, kBars, kComb, kDo)

func hasAnyOf(items []item, set kinds) bool {
	for k := range items {
		if items[k].anyOf(set) {
			return true
		}
	}
	return false
}

// bareReply reports whether an answer only repeats the verb: "I did", "she was
// not", "they were".
func (r *reader) bareReply(words []item) bool {
	if len(words) < 1 || len(words) > 4 {
		return false
	}
	subject := false
	for k := range words {
		it := &words[k]
		switch {
		case it.any3(kPron, kShe, kThere):
			subject = true
		case it.anyOf(auxiliary) || it.lists.has(yesAnswers) || it.lists.has(noAnswers) || it.text == "not":
		default:
			return false
		}
	}
	last := &words[len(words)-1]
	return (subject || len(words) == 1 && last.any4(kYes, kNo, kNot, kUnseen)) && !last.any3(kPron, kShe, kThere) && !hasAnyOf(words, saysMore)
}

// auxiliary are the verbs and denials of an answer.
var auxiliary = setOf(kWill, kBe, kHave, kUndone, kNo, kNot, kYes, kAdv, kUnseen)
