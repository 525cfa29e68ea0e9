package parse

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

const unitInWords = `(?:one|two|three|four|five|six|seven|eight|nine)`

var tensInWords = strings.Fields("twenty thirty forty fifty sixty seventy eighty ninety")

var (
	yearInWords = regexp.MustCompile(`\btwenty (?:twenty[ -]` + unitInWords + `|sixteen|seventeen|eighteen|nineteen|twenty)\b`)
	numberedOne = regexp.MustCompile(`\b((?:[Bb]ar|[Hh]ive|[Ff]rame|[Cc]omb|[Cc]olony)s? (?:number )?)one\b( [^hp]|[^ ])`)
	saidNumber  = regexp.MustCompile(`(\bhundred and |-|/)?\b((?:` + strings.Join(tensInWords, "|") + `)[ -]` + unitInWords + `|` +
		strings.Join(tensInWords, "|") + `|` + strings.Join(numbersInWords[2:], "|") + `)\b` +
		`( hundred(?: and ((?:` + strings.Join(tensInWords, "|") + `)(?:[ -]` + unitInWords + `)?|` + strings.Join(numbersInWords[1:], "|") + `))?\b)?` +
		`([ -](?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)\b)?`)
)

// inDigits writes the numbers in words that a recogniser hands over in digits: from two on,
// one only as a number of a bar or hive; no ordinal's part and nothing behind "a hundred and".
func inDigits(note string) string {
	note = yearInWords.ReplaceAllStringFunc(note, func(said string) string {
		return strconv.Itoa(2000 + amountInWords(said[len("twenty "):]))
	})
	note = numberedOne.ReplaceAllString(note, "${1}1$2")
	return saidNumber.ReplaceAllStringFunc(note, func(said string) string {
		part := saidNumber.FindStringSubmatch(said)
		if part[1] != "" || part[5] != "" {
			return said
		}
		n := amountInWords(part[2])
		if part[3] != "" {
			n = 100*n + amountInWords(part[4])
		}
		return strconv.Itoa(n)
	})
}

// amountInWords is the sum of the number words: sixty-eight is 68.
func amountInWords(said string) (n int) {
	for _, word := range strings.FieldsFunc(strings.ToLower(said), func(r rune) bool { return r == ' ' || r == '-' }) {
		if tens := slices.Index(tensInWords, word); tens >= 0 {
			n += 10 * (tens + 2)
		} else {
			n += slices.Index(numbersInWords, word)
		}
	}
	return n
}

// rewordings put other everyday words for the same thing.
var rewordings = []variant{
	{"spotted for saw", 112, replacing(`\b(I|we|We) saw the queen\b`, "$1 spotted the queen", `\bqueen seen\b`, "queen spotted", `\bQueen seen\b`, "Queen spotted")},
	{"noticed for saw", 22, replacing(`\b(I|i|we|We) (?:saw|found) (some|a few|no|two|three|\d)\b`, "$1 noticed $2")},
	{"there were for saw", 13, replacing(`\b(?:I|we) saw (some|a few|no|two|three|\d) `, "there were $1 ", `\b(?:We) saw (some|a few|no|two|three|\d) `, "There were $1 ")},
	{"put in for added", 131, replacing(`\b[Aa]dded (a|one|two|three|\d|another)( new| empty| more)? (bars?)\b`, "put in $1$2 $3")},
	{"popped in for added", 130, replacing(`\b[Aa]dded (a|one|two|three|\d|another)( new| empty| more)? (bars?)\b`, "popped in $1$2 $3")},
	{"slid in for added", 130, replacing(`\b[Aa]dded (a|one|two|three|\d|another)( new| empty| more)? (bars?)\b`, "slid in $1$2 $3")},
	{"gave them for added", 131, replacing(`\b[Aa]dded (a|one|two|three|\d|another)( new| empty| more)? (bars?)\b`, "gave them $1$2 $3")},
	{"took out for removed", 49, replacing(`\b[Rr]emoved (bars? )`, "took out $1")},
	{"removed for took out", 2, replacing(`\b[Tt]ook out (bars? )`, "removed $1")},
	{"gave for fed", 175, replacing(`\b[Ff]ed (them )?(a|an|one|two|three|half|\d)`, "gave them $2")},
	{"shifted for moved", 98, replacing(`\b([Mm])oved (bar|the follower)`, "shifted $2")},
	{"top bars", 599, replacing(`\bbar(s?) (\d)`, "top bar$1 $2", `\bBar(s?) (\d)`, "Top bar$1 $2")},
	{"young larvae", 77, replacing(`\b(and|has|some|with) larvae\b`, "$1 young larvae")},
	{"open brood for larvae", 118, replacing(`\b(and|has|some|with|no) larvae\b`, "$1 open brood")},
	{"uncapped brood for open brood", 33, replacing(`\bopen brood\b`, "uncapped brood")},
	{"gentle for calm", 41, replacing(`\b(bees|they|They|Bees|were|are|girls|temper) (were |are |is )?calm\b`, "$1 ${2}gentle")},
	{"quiet for calm", 37, replacing(`\b(bees|they|They|Bees|were|are|girls) (were |are )?calm\b`, "$1 ${2}quiet")},
	{"docile for gentle", 107, replacing(`\bgentle\b`, "docile")},
	{"testy for grumpy", 53, replacing(`\bgrumpy\b`, "testy")},
	{"QC for queen cell", 262, replacing(`\b[Qq]ueen cell(s?)\b`, "QC$1")},
	{"either side for both sides", 222, replacing(`\bboth sides\b`, "either side")},
	{"each side for both sides", 222, replacing(`\bboth sides\b`, "each side")},
	{"front and back for both sides", 218, replacing(`\bboth sides\b`, "front and back")},
	{"50% for half full", 33, replacing(`\bhalf full of (honey|nectar|pollen|capped honey)\b`, "50% full of $1")},
	{"per cent", 55, replacing(`(\d)%`, "$1 per cent")},
	{"chalk brood", 79, replacing(`\b([Cc])halkbrood\b`, "${1}halk brood")},
	{"chalkbrood", 5, replacing(`\b([Cc])halk brood\b`, "${1}halkbrood")},
	{"varroa for mites", 157, replacing(`\b(\d+|no|No|of|few) mites\b`, "$1 varroa")},
	{"varroa mites", 157, replacing(`\b(\d+|no|No|of|few) mites\b`, "$1 varroa mites")},
	{"in a week for next week", 63, replacing(`\bnext week\b`, "in a week", `\bNext week\b`, "In a week")},
	{"in 7 days for in a week", 22, replacing(`\bin a week\b`, "in 7 days", `\bIn a week\b`, "In 7 days")},
	{"going to for will", 78, replacing(`\bI(?:'ll| will) (add|feed|treat|look|move|put|check|give|take|inspect|remove|unite|split|requeen|harvest)\b`, "I'm going to $1")},
	{"will for going to", 50, replacing(`\bI(?:'m| am) going to (add|feed|treat|look|move|put|check|give|take|inspect|remove|unite|split|requeen|harvest)\b`, "I will $1")},
	{"must for need to", 56, replacing(`\bneed to (add|feed|treat|look|move|put|check|give|take|inspect|remove|unite|split|requeen|harvest)\b`, "must $1", `\bNeed to (add|feed|treat|look|move|put|check|give|take|inspect|remove|unite|split|requeen|harvest)\b`, "Must $1")},
	{"should for must", 77, replacing(`\b(?:must|need to) (add|feed|treat|look|move|put|check|give|take|inspect|remove|unite|split|requeen|harvest)\b`, "should $1")},
	{"plan to for will", 78, replacing(`\bI(?:'ll| will) (add|feed|treat|look|move|put|check|give|take|inspect|remove|unite|split|requeen|harvest)\b`, "I plan to $1")},
	{"ought to for must", 77, replacing(`\b(?:must|need to) (add|feed|treat|look|move|put|check|give|take|inspect|remove|unite|split|requeen|harvest)\b`, "ought to $1")},
	{"I reckon for I think", 49, replacing(`\b(I|i) think\b`, "$1 reckon")},
	{"maybe for about", 16, replacing(`\babout (\d)`, "maybe $1")},
	{"without eggs", 196, replacing(`\bno eggs\b`, "not a single egg", `\bNo eggs\b`, "Not a single egg")},
	{"no sign of", 385, replacing(`\b(n|N)o (eggs|chalkbrood|drones|robbing|wax moth|queen cells|ants|wasps)\b`, "${1}o sign of $2")},
	{"zero eggs", 199, replacing(`\bno eggs\b`, "zero eggs", `\bNo eggs\b`, "Zero eggs")},
	{"couldn't find any eggs", 75, replacing(`([.;] |\n)[Nn]o eggs\b`, "${1}I couldn't find any eggs")},
	{"didn't see any", 59, replacing(`([.;] |\n)[Nn]o (eggs|drones|queen cells|chalkbrood|wax moth)([.,;\n])`, "${1}I didn't see any $2$3")},
	{"didn't spot the queen", 35, replacing(`\bdidn't (?:see|find) the queen\b`, "didn't spot the queen", `\bdid not (?:see|find) the queen\b`, "couldn't find the queen")},
	{"no sign of the queen", 29, replacing(`([.;] |\n)[Qq]ueen not seen\b`, "${1}No sign of the queen")},
	{"light rain for drizzle", 12, replacing(`\b(and|,) drizzle\b`, "$1 light rain")},
	{"clear skies for sunny", 163, replacing(`(degrees|\d ?°?[CF]),? (?:and )?sunny\b`, "$1 and clear skies")},
	{"closed brood", 564, replacing(`\b(?:capped|sealed) brood\b`, "closed brood")},
	{"a lot of for lots of", 44, replacing(`\blots of\b`, "a lot of", `\bLots of\b`, "A lot of")},
	{"a bit of for a little", 36, replacing(`\ba little (honey|nectar|pollen|brood|capped)\b`, "a bit of $1")},
	{"loads of for lots of", 102, replacing(`\b(?:lots|plenty) of\b`, "loads of")},
	{"follower for follower board", 66, replacing(`\bfollower board\b`, "follower")},
	{"contains for has", 183, replacing(`\b([Bb]ar \w+) has\b`, "$1 contains")},
	{"has got", 183, replacing(`\b([Bb]ar \w+) has\b`, "$1 has got")},
}
