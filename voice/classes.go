package voice

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// classSet holds classes of words that are counted as one in the language
// model, so that every number is as likely behind "bar" as the few that a
// sample happened to hold.
type classSet struct {
	members map[string][]member // by class
	of      map[string]string   // class of a word
}

type member struct {
	word  string
	share float64 // of its class; a class's shares add up to 1
}

// builtinClasses reads data/classes.txt, which is part of the program: a fault
// in it is a fault of ours.
func builtinClasses() classSet {
	text, err := data.ReadFile("data/classes.txt")
	if err != nil {
		panic("voice: " + err.Error())
	}
	c := classSet{members: map[string][]member{}, of: map[string]string{}}
	totals := map[string]float64{}
	for line := range strings.Lines(string(text)) {
		f := strings.Fields(line)
		if len(f) == 0 || f[0] == "#" {
			continue
		}
		weight, err := strconv.ParseFloat(f[2], 64)
		if err != nil || len(f) != 3 || c.of[f[1]] != "" {
			panic("voice: data/classes.txt: " + line)
		}
		c.members[f[0]] = append(c.members[f[0]], member{f[1], weight})
		c.of[f[1]] = f[0]
		totals[f[0]] += weight
	}
	for class, members := range c.members {
		for i := range members {
			members[i].share /= totals[class]
		}
	}
	return c
}

func (c classSet) has(class string) bool { return c.members[class] != nil }

// notAWord is what separates words; apostrophes, and the marks of a class, are
// part of one.
var notAWord = regexp.MustCompile(`[^\p{L}\p{N}'<>]+`)

// keepOne are words beside which "one" is no number that another could replace:
// the next one, one side, one of them.
var (
	beforeOne = []string{"next", "this", "that", "the", "no", "each", "last", "another", "every", "other", "good", "on"}
	afterOne  = []string{"side", "of", "after", "or", "more", "another", "before"}
)

// tokens splits a sentence into words and classes, in lower case, digits as
// number words.
func (c classSet) tokens(sentence string) []string {
	var words []string
	for _, w := range strings.Fields(notAWord.ReplaceAllString(strings.ToLower(sentence), " ")) {
		w = strings.Trim(w, "'")
		if n, err := strconv.Atoi(w); err == nil && n >= 0 && n < 1000 {
			words = append(words, numberWords(n)...)
		} else if w != "" {
			words = append(words, w)
		}
	}
	out := slices.Clone(words)
	for i, w := range words {
		class := c.of[w]
		if class == "" || class == "month" && (w == "may" || w == "march") {
			continue // rather the verbs, unless a template says the month
		}
		if w == "one" && (i > 0 && slices.Contains(beforeOne, words[i-1]) ||
			i+1 < len(words) && slices.Contains(afterOne, words[i+1])) {
			continue
		}
		if w == "second" || w == "first" {
			continue
		}
		out[i] = "<" + class + ">"
	}
	return out
}

var (
	smallNumbers = strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen")
	tensNumbers  = strings.Fields("- - twenty thirty forty fifty sixty seventy eighty ninety")
)

// numberWords spells a number below 1000.
func numberWords(n int) []string {
	switch {
	case n < 20:
		return []string{smallNumbers[n]}
	case n < 100:
		out := []string{tensNumbers[n/10]}
		if n%10 > 0 {
			out = append(out, smallNumbers[n%10])
		}
		return out
	}
	out := []string{smallNumbers[n/100], "hundred"}
	if n%100 > 0 {
		out = append(out, "and")
		out = append(out, numberWords(n%100)...)
	}
	return out
}
