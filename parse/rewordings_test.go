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
