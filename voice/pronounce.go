package voice

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
)

// dictionary gives the phones of words, each way to say one as a line of phones
// in the set of the CMU pronouncing dictionary (39 phones, no stress).
type dictionary map[string][]string

// readDictionary reads a dictionary file: a word, white space, phones.
func readDictionary(path string) (dictionary, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	d := dictionary{}
	if err := d.read(f); err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	if len(d) == 0 {
		return nil, fmt.Errorf("%s: no pronunciation in it", path)
	}
	return d, nil
}

func (d dictionary) read(r io.Reader) error {
	in := bufio.NewScanner(r)
	for in.Scan() {
		f := strings.Fields(in.Text())
		if len(f) < 2 || strings.HasPrefix(f[0], "#") {
			continue
		}
		d.add(variant.ReplaceAllString(f[0], ""), strings.Join(f[1:], " "))
	}
	return in.Err()
}

// add adds a way to say a word, once.
func (d dictionary) add(word, phones string) {
	if !slices.Contains(d[word], phones) {
		d[word] = append(d[word], phones)
	}
}

// builtinPronunciations are ours: words of the trade that the general
// dictionary lacks.
func builtinPronunciations() dictionary {
	f, err := data.Open("data/pronunciations.dict")
	if err != nil {
		panic("voice: " + err.Error())
	}
	defer f.Close()
	d := dictionary{}
	if err := d.read(f); err != nil {
		panic("voice: " + err.Error())
	}
	return d
}

// pronounce gives the phones of a word that no dictionary holds: from words it
// is made of, or by rules of spelling.
func (d dictionary) pronounce(word string) []string {
	if p := d[word]; len(p) > 0 {
		return p
	}
	if p := d.compound(word); p != "" {
		return []string{p}
	}
	if p := spell(word); p != "" {
		return []string{p}
	}
	return nil
}

// sound gives the phones of a word that is spelt as it sounds, in pieces that
// are words or that the rules of spelling can say.
func (d dictionary) sound(spelt string) string {
	var phones []string
	for _, piece := range plainTokens(spelt) {
		if p := d.pronounce(piece); len(p) > 0 {
			phones = append(phones, p[0])
		}
	}
	return strings.Join(phones, " ")
}

// Endings and beginnings that a new word may put to a known one.
var (
	endings    = []struct{ letters, phones string }{{"less", "L AH S"}, {"ness", "N AH S"}, {"ly", "L IY"}, {"ing", "IH NG"}, {"ish", "IH SH"}, {"er", "ER"}, {"s", "Z"}, {"'s", "Z"}, {"y", "IY"}}
	beginnings = []struct{ letters, phones string }{{"un", "AH N"}, {"re", "R IY"}, {"non", "N AA N"}, {"pre", "P R IY"}, {"mis", "M IH S"}}
)

// compound pronounces a word made of two known words, or of a known word and an
// ending or beginning.
func (d dictionary) compound(word string) string {
	for _, b := range beginnings {
		if rest, ok := strings.CutPrefix(word, b.letters); ok && len(rest) > 2 && len(d[rest]) > 0 {
			return b.phones + " " + d[rest][0]
		}
	}
	for _, e := range endings {
		if rest, ok := strings.CutSuffix(word, e.letters); ok && len(rest) > 2 && len(d[rest]) > 0 {
			return d[rest][0] + " " + e.phones
		}
	}
	if rest, ok := strings.CutSuffix(word, "ed"); ok && len(rest) > 2 && len(d[rest]) > 0 {
		return d[rest][0] + " " + pastPhones(d[rest][0])
	}
	for i := len(word) - 3; i >= 3; i-- {
		if a, b := d[word[:i]], d[word[i:]]; len(a) > 0 && len(b) > 0 {
			return a[0] + " " + b[0]
		}
	}
	return ""
}

// pastPhones is how -ed sounds behind the last phone of a verb.
func pastPhones(verb string) string {
	switch verb[strings.LastIndex(verb, " ")+1:] {
	case "T", "D":
		return "IH D"
	case "P", "K", "F", "S", "SH", "CH", "TH":
		return "T"
	}
	return "D"
}
