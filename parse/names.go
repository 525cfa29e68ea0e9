package parse

import "strings"

// namesWithin is how much of a note is searched for the names of its hives.
const namesWithin = 1 << 16

// enough is the weight of evidence at which a proper name is a hive's.
const enough = 3

// properNames finds the names that the note gives its hives without the word
// hive: "opened Juniper", "Clementine was bursting at the seams". A name is
// weighed by the words around it; people are told from hives by their titles
// and by what they do.
func (r *reader) properNames() map[string]bool {
	text := r.text[:min(len(r.text), namesWithin)]
	if text == strings.ToLower(text) {
		return nil
	}
	toks := r.split.tokens(text, 0, blank)
	byWord := r.namedByWord(toks)
	weight, hint := map[string]int{}, map[string]bool{}
	for i := 0; i < len(toks); i++ {
		end := r.properRun(toks, i)
		if end == i {
			continue
		}
		name := strings.ToLower(r.text[toks[i].start:toks[end-1].end])
		weight[name] += r.weigh(toks, i, end, byWord)
		hint[name] = hint[name] || !byWord && (r.isSubject(toks, i, end) || r.beginsWithIn(toks, i))
		i = end - 1
	}
	names := map[string]bool{}
	for name, w := range weight {
		if w >= enough {
			names[name] = true
		}
	}
	if len(names) == 0 && !byWord {
		if name := likeliest(weight); name != "" {
			names[name] = true
		}
	}
	for name := range hint { // "Lightning was another story", "In Marigold she found nothing", where one hive has a name
		if len(names) > 0 && hint[name] && weight[name] >= 0 {
			names[name] = true
		}
	}
	return names
}

// likeliest is the one name that some words speak for, where no name is sure;
// "" where there are two as good.
func likeliest(weight map[string]int) string {
	best, name, tied := enough-2, "", false
	for n, w := range weight {
		switch {
		case w > best:
			best, name, tied = w, n, false
		case w == best:
			tied = true
		}
	}
	if tied {
		return ""
	}
	return name
}

// namedByWord reports whether the note names its hives with the word hive
// ("hive 3", "H2", "the orchard hive"); then a capital at the head of a
// sentence is no hive's.
func (r *reader) namedByWord(toks []token) bool {
	for i := range toks {
		word := strings.ToLower(r.text[toks[i].start:toks[i].end])
		next := i+1 < len(toks) && toks[i+1].pause <= comma
		switch word {
		case "hive", "colony":
			if toks[i].has(coloned) {
				return true
			}
			if next && (toks[i+1].has(digits) || r.numbers.of(toks[i+1]).kind == unitWord || toks[i+1].end-toks[i+1].start == 1 && toks[i+1].has(capital) && r.text[toks[i+1].start] != 'I') {
				return true
			}
			if next && toks[i+1].has(capital) && toks[i+1].pause == none && r.mayName(toks, i+1) {
				return true
			}
			if word == "hive" && i > 1 && toks[i].pause == none && r.wordNames(toks[i-1]) {
				return true
			}
		case "h":
			if next && toks[i+1].has(digits) && toks[i+1].has(glued) {
				return true
			}
		}
	}
	return false
}

// wordNames reports whether a word before "hive" names it.
func (r *reader) wordNames(t token) bool {
	word := strings.ToLower(r.text[t.start:t.end])
	if r.lists.in(noNames, word) || r.numbers.of(t).kind != notNumber || r.dates.of(t).kind != notDate {
		return false
	}
	return t.id == idUnknown || r.plantOrColour(t)
}

func (r *reader) plantOrColour(t token) bool {
	best := r.lex.matcher.longest([]token{t}, 0, plainWalk{})
	for _, n := range best.rules {
		if r.rules[n].Kind == kPlant || r.rules[n].Kind == kColour {
			return true
		}
	}
	return false
}

// isSubject reports whether a run begins a sentence and a verb of being
// follows.
func (r *reader) isSubject(toks []token, i, end int) bool {
	k := r.beFollows(toks, end)
	return (i == 0 || toks[i].pause >= stop) && k >= 0 && strings.ToLower(r.text[toks[k].start:toks[k].end]) != "'s"
}

// beginsWithIn reports whether a sentence begins with "in" and the run.
func (r *reader) beginsWithIn(toks []token, i int) bool {
	return i > 0 && toks[i].pause == none && (i == 1 || toks[i-1].pause >= stop) && strings.EqualFold(r.text[toks[i-1].start:toks[i-1].end], "in")
}

// beFollows is the index of the verb of being or having behind a name, over an
// aside in commas or brackets; -1 where there is none.
func (r *reader) beFollows(toks []token, end int) int {
	k := end
	for k < len(toks) && k < end+16 && toks[k].pause == comma && !r.isBe(toks[k]) {
		for k++; k < len(toks) && k < end+16 && toks[k].pause < comma; k++ {
		}
	}
	if k >= len(toks) || toks[k].pause >= stop || !r.isBe(toks[k]) {
		return -1
	}
	return k
}

func (r *reader) isBe(t token) bool {
	return r.lists.in(being, strings.ToLower(r.text[t.start:t.end]))
}

// properRun is the end of a run of up to three words that may be a proper
// name: capitals, and no word of the trade or of grammar.
func (r *reader) properRun(toks []token, i int) int {
	end := i
	for end < len(toks) && end < i+3 && toks[end].has(capital) && (end == i || toks[end].pause == none && !toks[end].has(glued)) && r.mayName(toks, end) {
		end++
	}
	return end
}

func (r *reader) mayName(toks []token, i int) bool {
	word := strings.ToLower(r.text[toks[i].start:toks[i].end])
	if r.lists.in(noNames, word) || r.lists.in(plainHeadings, word) || r.lists.in(titles, word) || r.lists.in(plainWords, word) || len(word) < 3 && word != "st" {
		return false
	}
	if r.dates.of(toks[i]).kind != notDate || r.numbers.of(toks[i]).kind != notNumber {
		return false
	}
	if toks[i].id == idUnknown {
		return true
	}
	best := r.lex.matcher.longest(toks[:i+1], i, plainWalk{})
	if best.end == i {
		return true
	}
	for _, n := range best.rules {
		if r.rules[n].Kind != kPlant && r.rules[n].Kind != kColour {
			return false
		}
	}
	return true
}

// weigh adds up what the words around a run say for a hive's name.
func (r *reader) weigh(toks []token, i, end int, byWord bool) int {
	word := func(k int) string {
		if k < 0 || k >= len(toks) {
			return ""
		}
		return strings.ToLower(r.text[toks[k].start:toks[k].end])
	}
	if i > 0 && toks[i].pause == none && r.lists.in(titles, word(i-1)) || r.lists.in(handles, word(end)) && toks[min(end, len(toks)-1)].pause == none {
		return -enough
	}
	w := 0
	prev := word(i - 1)
	first := i == 0 || toks[i].pause >= stop
	switch {
	case first && !byWord:
		w += r.weighSubject(toks, i, end)
	case prev == "how" && r.beFollows(toks, end) == end:
		w += enough
	case toks[i].pause == comma && (prev == "colony" || prev == "hive") && (end >= len(toks) || toks[end].pause == comma):
		w += enough
	case prev == "with" && (word(i-2) == "day" || word(i-2) == "trouble"):
		w += enough
	case prev == "see" || prev == "about" || prev == "saw":
		w += enough - 1
	case prev == "opened" || prev == "inspected" || prev == "called" || prev == "named" || prev == "call" || prev == "into" || prev == "check" || prev == "visited":
		w += enough
	case (word(i-2) == "call" || word(i-2) == "called" || word(i-2) == "named") && (prev == "her" || prev == "him" || prev == "it" || prev == "them" || prev == "we"):
		w += enough
	case prev == "of" && (word(i-2) == "bees" || word(i-2) == "colony" || word(i-2) == "entrance" || word(i-2) == "wall" || word(i-2) == "roof" || word(i-2) == "floor" || word(i-2) == "lid" || word(i-2) == "front"):
		w += enough
	case prev == "in" && (i == 1 || toks[i-1].pause >= stop || word(i-2) == "but"):
		w += enough - 1
	case prev == "had" && word(end) == "open":
		w += enough
	case prev == "in" || prev == "on" || prev == "of" || prev == "at" || prev == "with" || prev == "through" || prev == "inside" || prev == "to" || prev == "off" || prev == "up" || prev == "did" || prev == "checked":
		for k := i - 2; k >= 0 && k >= i-4; k-- {
			if r.lists.in(visits, word(k)) {
				w += enough
				break
			}
		}
	}
	return w
}

// weighSubject weighs a name that begins a sentence by what is said of it: a
// heading of its own, or a verb of being and a word for bees.
func (r *reader) weighSubject(toks []token, i, end int) int {
	if toks[i].pause >= line && end < len(toks) {
		if toks[end-1].has(coloned) && end-i <= 2 {
			return enough
		}
		if toks[end].pause >= line && r.linesAfter(toks, end) {
			return enough
		}
	}
	if end == len(toks) {
		return 0
	}
	if word := strings.ToLower(r.text[toks[end].start:toks[end].end]); word == "first" || word == "next" {
		return enough - 1
	}
	k := r.beFollows(toks, end)
	if k < 0 {
		return 0
	}
	for last := k + 14; k < len(toks) && k < last && toks[k].pause < stop; k++ {
		for _, n := range r.lex.matcher.longest(toks, k, plainWalk{}).rules {
			switch rule := &r.rules[n]; rule.Kind {
			case kTemper, kStrength, kStores, kBees, kDo, kSign:
				return enough
			case kQueen, kContent, kMite:
				return enough - 1
			case kLeaf:
				if rule.ID != "stung-once" && rule.ID != "stung-twice" && rule.ID != "no-stings" && rule.ID != "drones" {
					return enough
				}
			}
		}
		if word := strings.ToLower(r.text[toks[k].start:toks[k].end]); word == "weighed" || word == "weighs" {
			return enough
		}
	}
	return 0
}

// linesAfter reports whether a text follows a line that is only a name: a
// heading has one, a signature has not.
func (r *reader) linesAfter(toks []token, end int) bool {
	n := 0
	for k := end; k < len(toks); k++ {
		if k > end && toks[k].pause >= line {
			break
		}
		n++
	}
	return n >= 5
}

// plainWalk matches words alone, without numbers.
type plainWalk struct{}

func (plainWalk) mayStart(int) bool                { return false }
func (plainWalk) quantityAt(i int) (quantity, int) { return quantity{}, i }
func (plainWalk) durationAt(i int) (span, int)     { return span{}, i }
func (plainWalk) measureAt(i int) (measure, int)   { return measure{}, i }
