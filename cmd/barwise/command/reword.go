package command

import (
	"regexp"
	"strings"
)

// The rules of notes read statements and take a question for no observation.
// This file turns a question round into what it asks for.

// pastOf gives the verbs that are done to a hive as a note has them.
var pastOf = map[string]string{
	"add": "added", "clean": "cleaned", "clip": "clipped", "close": "closed", "cut": "cut", "feed": "fed", "give": "gave",
	"harvest": "harvested", "mark": "marked", "move": "moved", "open": "opened", "put": "put", "reduce": "reduced",
	"release": "released", "remove": "removed", "requeen": "requeened", "smoke": "smoked", "split": "split",
	"straighten": "straightened", "swarm": "hive swarmed", "take": "took", "treat": "treated", "unite": "united",
}

var (
	asksWho     = regexp.MustCompile(`(?i)^\s*(?:who|(?:which|how many|what) (?:hives?|colony|colonies))\b`)
	asksDid     = regexp.MustCompile(`(?i)^\s*(?:(?:what|where|how often|how many times)\s+)?(?:did|do|have|has|had|was|were|is|are)\b(?:\s+(?:i|we|you|they|it|she|the|there|hives?|ever)\b)*\s*`)
	asksForBars = regexp.MustCompile(`(?i)^\s*(?:how many|which|what)?\s*(?:bars?|combs?)\s+(?:with|that|which|have|had|has|of|(?:were |are |was |is )?full(?: of)?|were|are|was|is)\b|^\s*which bars?\b`)
	sees        = regexp.MustCompile(`(?i)^(?:last )?(?:see|saw|seen|find|found|spot|spotted|notice|noticed)\s+(?:the |any |a )?`)
)

// rewordings are turns of speech for which the rules of notes have another.
var rewordings = []struct {
	words *regexp.Regexp
	as    string
}{
	{words(`queen(?:'s)? sightings?|sightings? of the queen`), "queen seen"},
	{words(`queen (?:been )?(?:seen|spotted|found|noticed)|(?:saw|seen|spotted|found) the queen`), "queen seen"},
	{words(`no (?:sign|sight) of (?:the |a )?queen|(?:didn't|did not|couldn't) (?:see|find) (?:the |a )?queen|queen unseen`), "queen not seen"},
	{words(`(eggs?|brood|larvae?) sightings?|sightings? of (eggs?|brood|larvae)`), "$1$2"},
	{words(`(?:(?:the )?queen (?:been )?|last )?marked(?: the)? queen|queen (?:been )?marked`), "marked the queen"},
	{words(`(?:planned|plan|plans|planning|meant|intended) to`), "need to"},
	{words(`(?:planned|plans? for) (syrup|fondant|feed(?:ing)?)`), "need to feed $1"},
	{words(`(?:planned|plans? for) (thymol|oxalic acid|formic acid|treatments?)`), "need to treat with $1"},
	{words(`(first|last) pollen`), "$1 pollen coming in"},
	{words(`nectar from (?:the )?([a-z]+)`), "bringing in nectar from the $1"},
	{words(`(?:put|putting|added?|adding) (?:in )?(?:(?:some|any|new|more) )+bars?(?: in)?`), "added bars"},
	{words(`follower(?: board)? moved (back|forward)`), "moved the follower board $1"},
	{words(`harvests`), "harvested"},
	{words(`swarms`), "hive swarmed"},
	{words(`treatments?`), "treated"},
	{words(`re-queened`), "requeened"},
	{words(`(floor|entrance|feeder|follower board|queen)s`), "$1"}, // of several hives
}

// reword says the question in the words that notes use.
func reword(question string) string {
	for _, r := range rewordings {
		question = r.words.ReplaceAllString(question, r.as)
	}
	return oneSpaced(question)
}

// asStatement turns a question round: "did I see the queen" → "queen seen",
// "who was nasty" → "bees nasty", "did I feed syrup" → "fed syrup".
func asStatement(question string) string {
	if opening := asksWho.FindString(question); opening != "" {
		rest := strings.TrimSpace(question[len(opening):])
		if rest == "" {
			return ""
		}
		if verb := asksDid.FindString(rest); verb != "" {
			rest = rest[len(verb):]
		}
		return "bees " + inPast(rest)
	}
	if bars := asksForBars.FindString(question); bars != "" {
		rest := strings.TrimSpace(question[len(bars):])
		if strings.Contains(strings.ToLower(bars), "full") {
			return "full of " + rest
		}
		return rest
	}
	opening := asksDid.FindString(question)
	rest := question[len(opening):]
	if saw := sees.FindString(rest); saw != "" {
		rest = rest[len(saw):]
		if strings.EqualFold(rest, "queen") || strings.HasPrefix(strings.ToLower(rest), "queen ") && !strings.HasPrefix(strings.ToLower(rest), "queen c") {
			return "queen seen" + rest[len("queen"):]
		}
		return rest
	}
	if opening != "" && strings.EqualFold(rest, "queen") {
		return "queen seen"
	}
	return inPast(rest)
}

// inPast puts the verb that a question opens with as a note has it.
func inPast(rest string) string {
	first, more, _ := strings.Cut(rest, " ")
	if past, ok := pastOf[strings.ToLower(first)]; ok {
		return strings.TrimSpace(past + " " + more)
	}
	return rest
}
